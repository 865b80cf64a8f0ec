"""The working of a quantity: the sum that it came from, with the numbers as they are shown, in either system of units.

`280 sq ft × 0.2188 in ÷ (1 − 25 %) × (1 + 10 %) × 144 ÷ 231 = 56 gal`: each number with its unit, the factors between the units that meet, and
what it comes to. Numbers are told to four figures, whole ones in full.
"""

from fractions import Fraction

from calc.numbers import units, words
from calc.numbers.quantity import Quantity
from calc.text.door import say

CENTS = 2  # decimals of money
_FIGURE, _CHAIN, _SUM = 0, 1, 2  # how tightly a text holds together


def working(found: Quantity, unit: str, metric: bool) -> str:
    """Return how `found` came about, ending in what it is [in `unit`, or its metric counterpart]."""
    told = [_clause(step, step.unit, metric) for step in found.steps]
    if found.how == "figure" and found.steps and found.unit == unit:
        return "; ".join(told)  # the last step tells it
    return "; ".join(told + [_clause(found, unit, metric)])


def number(value: Fraction, unit: str, metric: bool) -> str:
    """Return `value` [in `unit`] to four figures with the unit's name, in `unit` or its metric counterpart; money to the cent."""
    if unit == "money":
        return words.decimal(value, CENTS)
    name = units.name_of(unit, metric)
    text = words.figures(units.in_metric(value, unit) if metric else value)
    return text + " " + name if name else text


def _clause(found: Quantity, unit: str, metric: bool) -> str:
    """One sum and what it comes to, under its label where it has one."""
    how = found.how
    if how == "told":
        return found.label
    result = number(found.to(unit), unit, metric)
    if how == "up":
        one, several = found.nouns
        count = words.plural(int(found.value), one, several) if one else words.whole(int(found.value))
        sum_told = _equation(found.parts[0][1], "", metric)
        return _label(found) + say("working.up", "{sum}, up to {count}", sum=sum_told, count=count)
    if how in ("greatest", "least"):
        shown = [_quoted(one) + number(one.to(unit), unit, metric) for _, one in found.parts]
        of = words.listed(shown)
        if how == "greatest":
            key, text = "greatest", "the greatest of {all} is {one}"
            if len(shown) == 2:
                key, text = "greater", "the greater of {all} is {one}"
        else:
            key, text = "least", "the least of {all} is {one}"
            if len(shown) == 2:
                key, text = "smaller", "the smaller of {all} is {one}"
        return _label(found) + say("working." + key, text, all=of, one=result)
    return _label(found) + _equation(found, unit, metric)


def _label(found: Quantity) -> str:
    return found.label + ": " if found.label and found.how != "figure" else ""


def _equation(found: Quantity, unit: str, metric: bool) -> str:
    if found.how == "figure" and found.unit == unit:
        return _shown(found, metric)
    result = number(found.to(unit), unit, metric)
    text, _ = _told(found, units.made_of(unit, metric), metric)
    return text if text == result else text + " = " + result


def _shown(one: Quantity, metric: bool) -> str:
    """A figure with its unit, and what it belongs to in quotes before it."""
    text = number(one.value * 100 if one.unit == "%" else one.value, one.unit, metric)
    return _quoted(one) + text


def _quoted(one: Quantity) -> str:
    return "“" + one.label + "” " if one.label and one.how == "figure" else ""


def _made(one: Quantity, metric: bool) -> tuple[tuple[str, int], ...]:
    """What the text of `one` measures in, before any factor."""
    if not metric:
        return one.made
    if one.how == "×":
        found: tuple[tuple[str, int], ...] = ()
        for sign, part in one.parts:
            found = units.together(found, _made(part, metric), 1 if sign == "×" else -1)
        return found
    if one.how == "+":
        return (("K", 1),) if one.unit == "dF" else _made(one.parts[0][1], metric)
    if one.how == "root":
        return tuple([("rootPa" if name == "rootinwc" else name, power) for name, power in one.made])
    return units.made_of(one.unit, True)


def _told(one: Quantity, target: tuple[tuple[str, int], ...], metric: bool) -> tuple[str, int]:
    """The text of `one` in `target`, and how tightly it holds together."""
    if one.how == "+":
        return _told_sum(one, target, metric)
    made = _made(one, metric)
    if one.how == "×":
        text = ""
        for sign, part in one.parts:
            inner, holds = _told(part, _made(part, metric), metric)
            if holds == _SUM or (holds == _CHAIN and sign == "÷"):
                inner = "(" + inner + ")"
            text = text + " " + sign + " " + inner if text else inner
        holds = _CHAIN
    elif one.how == "root":
        inner, holds = _told(one.parts[0][1], units.made_of("inwc", metric) if one.made else (), metric)
        text, holds = "√" + (inner if holds == _FIGURE else "(" + inner + ")"), _FIGURE
    else:
        text, holds = _shown(one, metric), _FIGURE
    if made != target:
        for sign, value in units.steps(units.together(made, target, -1)):
            text, holds = text + " " + sign + " " + words.figures(value), _CHAIN
    return text, holds


def _told_sum(one: Quantity, target: tuple[tuple[str, int], ...], metric: bool) -> tuple[str, int]:
    """Each part in the unit of the first one, then the factor to `target` behind the whole."""
    heat = one.unit == "dF"
    own = _made(one.parts[0][1], metric)
    text = ""
    for sign, part in one.parts:
        inner, holds = _told(part, _made(part, metric) if heat else own, metric)
        if holds == _SUM:
            inner = "(" + inner + ")"
        text = text + " " + sign + " " + inner if text else inner
    if heat:
        own = (("K", 1),) if metric else (("dF", 1),)
    further = units.steps(units.together(own, target, -1)) if own != target else []
    if not further:
        return text, _SUM
    text = "(" + text + ")"
    for sign, value in further:
        text = text + " " + sign + " " + words.figures(value)
    return text, _CHAIN
