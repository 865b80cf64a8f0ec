"""Quantities: an exact number with its unit that knows how it came about, so that a value and its working are one thing.

Arithmetic on quantities gives a quantity. What does not fit (in + lb) is refused where the formula is written. What a
quantity goes back to travels with it: the sources of every figure that went into it, in the order they were met.
"""

from fractions import Fraction

from calc.numbers.exact import ceiling, square_root
from calc.numbers.units import UnitFault, kind_of, made_of, ratio, together

YOURS = "your-figure"
_WHOLE = ("up", "greatest", "least")  # told by a sentence of their own, so another formula takes them as a number


class Quantity:
    """A quantity. `value` is exact, in the product of units `made`; `unit` is the name it is shown in, '' for a pure number or
    for what has no name yet. `how` says how it came about: 'figure', 'told', '×', '+', 'root', 'up', 'greatest' or 'least'; `parts` are
    (sign, quantity) pairs; `label` is a name for people, of what was 'told' what was done; `nouns` are what is counted, one and several;
    `steps` are quantities that are told before it; `sources` are ids of the register, in the order they were met."""

    __slots__ = ("how", "label", "made", "nouns", "parts", "sources", "steps", "unit", "value")

    def __init__(
        self,
        value: Fraction,
        unit: str,
        made: tuple[tuple[str, int], ...],
        how: str = "figure",
        parts: tuple[tuple[str, "Quantity"], ...] = (),
        sources: tuple[str, ...] = (),
        label: str = "",
        steps: tuple["Quantity", ...] = (),
        nouns: tuple[str, str] = ("", ""),
    ) -> None:
        self.value = value
        self.unit = unit
        self.made = made
        self.how = how
        self.parts = parts
        self.sources = sources
        self.label = label
        self.steps = steps
        self.nouns = nouns

    def __mul__(self, other: object) -> "Quantity":
        return _product(self, "×", _of(other))

    def __rmul__(self, other: object) -> "Quantity":
        return _product(_of(other), "×", self)

    def __truediv__(self, other: object) -> "Quantity":
        return _product(self, "÷", _of(other))

    def __rtruediv__(self, other: object) -> "Quantity":
        return _product(_of(other), "÷", self)

    def __add__(self, other: object) -> "Quantity":
        return _sum(self, "+", _of(other))

    def __radd__(self, other: object) -> "Quantity":
        return _sum(_of(other), "+", self)

    def __sub__(self, other: object) -> "Quantity":
        return _sum(self, "−", _of(other))

    def __rsub__(self, other: object) -> "Quantity":
        return _sum(_of(other), "−", self)

    def to(self, unit: str) -> Fraction:
        """Return the exact value in `unit`. Raises UnitFault where the unit measures something else."""
        want = made_of(unit)
        value = self.value if self.made == want else self.value * ratio(self.made, want)
        return value * 100 if unit == "%" else value

    def named(self, label: str, unit: str = "") -> "Quantity":
        """Return this as one number that is told before whatever is made of it, under `label`, in `unit`."""
        shown_in = unit or self.unit
        value = self.to(shown_in)
        if shown_in == "%":
            value = value / 100
        made, steps = made_of(shown_in), self.steps
        if self.how != "figure":  # a figure has nothing to tell before it
            steps += (self._like(unit=shown_in, label=label),)
            return Quantity(value, shown_in, made, "figure", (), self.sources, "", steps)
        return Quantity(value, shown_in, made, "figure", (), self.sources, self.label, steps)

    def cited(self, *sources: str) -> "Quantity":
        """Return this with `sources` [ids of the register] behind it too: of the rule, where its figures do not tell them."""
        return self._like(sources=_joined(self.sources, sources))

    def _like(
        self, unit: str | None = None, label: str | None = None, sources: tuple[str, ...] | None = None
    ) -> "Quantity":
        """The same, but for what is given."""
        return Quantity(
            self.value, self.unit if unit is None else unit, self.made, self.how, self.parts, self.sources if sources is None else sources,
            self.label if label is None or self.how == "told" else label, self.steps, self.nouns,
        )  # fmt: skip


def given(value: Fraction | int, unit: str, source: str = YOURS, label: str = "") -> Quantity:
    """Return a figure [in `unit`] as somebody gave it; `source` [id of the register] where it was left as the book has it,
    `label` what it belongs to, where several are added."""
    exact = Fraction(value)
    return Quantity(exact / 100 if unit == "%" else exact, unit, made_of(unit), "figure", (), (source,), label)


def fact(value: Fraction | int, unit: str, source: str) -> Quantity:
    """Return a constant [in `unit`] of the trade or of nature, with its source [id of the register]."""
    return given(value, unit, source)


def from_line(value: Fraction, unit: str, sources: tuple[str, ...]) -> Quantity:
    """Return a figure [in `unit`] that a line has told already, with all that went into it."""
    return given(value, unit).cited(*sources)


def sources_of(found: Quantity) -> tuple[str, ...]:
    """Return the ids of all that went into `found`; that somebody gave a figure is told only where nothing else stands behind it."""
    return tuple([one for one in found.sources if one != YOURS]) or found.sources


def told(value: Fraction | int, unit: str, text: str, *sources: str) -> Quantity:
    """Return a figure [in `unit`] that was counted, read off or searched for, and not worked out by a formula: `text` says what
    was done, `sources` [ids of the register] what it stands on."""
    found = given(value, unit, "", text)
    return Quantity(found.value, unit, found.made, "told", (), sources, text)


def added(parts: list[Quantity]) -> Quantity:
    """Return the sum of at least one part."""
    found = parts[0]
    for part in parts[1:]:
        found = found + part
    return found


def rounded_up(amount: Quantity, noun: str = "", several: str = "") -> Quantity:
    """Return the least whole number that is not under `amount`, which measures nothing: packages to buy, called `noun` and
    `several`."""
    value, nouns = Fraction(ceiling(amount.to(""))), (noun, several or noun + "s")
    return Quantity(value, "", (), "up", (("", amount),), amount.sources, "", amount.steps, nouns)


def greatest(*amounts: Quantity) -> Quantity:
    """Return the greatest of `amounts`, which measure the same."""
    return _picked("greatest", amounts)


def least(*amounts: Quantity) -> Quantity:
    """Return the least of `amounts`, which measure the same."""
    return _picked("least", amounts)


def root(amount: Quantity, unit: str) -> Quantity:
    """Return the square root of `amount` [in `unit`], to 12 places; `unit` is one whose root has a name: inwc, or ''."""
    made = (("rootinwc", 1),) if unit == "inwc" else ()
    one = _operand(amount)
    return Quantity(square_root(one.to(unit)), "", made, "root", (("", one),), one.sources, "", one.steps)


def _picked(how: str, amounts: tuple[Quantity, ...]) -> Quantity:
    unit = amounts[0].unit  # all are compared, and told, in the unit of the first
    ones = [one if one.how == "figure" and one.unit == unit else one.named("", unit) for one in amounts]
    best = ones[0]
    value = best.value
    for one in ones[1:]:
        if (one.value > value) if how == "greatest" else (one.value < value):
            value = one.value
    parts = tuple([("", one) for one in ones])
    return Quantity(value, ones[0].unit, best.made, how, parts, _all_sources(ones), "", _all_steps(ones))


def _of(other: object) -> Quantity:
    if isinstance(other, Quantity):
        return other
    if isinstance(other, (int, Fraction)):
        return Quantity(Fraction(other), "", ())
    raise TypeError("a quantity goes with quantities and exact numbers only")


def _operand(one: Quantity) -> Quantity:
    return one.named("", one.unit) if one.how in _WHOLE else one


def _product(left: Quantity, sign: str, right: Quantity) -> Quantity:
    left, right = _operand(left), _operand(right)
    value = left.value * right.value if sign == "×" else left.value / right.value
    made = together(left.made, right.made, 1 if sign == "×" else -1)
    parts = left.parts if left.how == "×" else (("×", left),)
    parts += right.parts if right.how == "×" and sign == "×" else ((sign, right),)
    return Quantity(value, "", made, "×", parts, _joined(left.sources, right.sources), "", _steps(left, right))


def _sum(left: Quantity, sign: str, right: Quantity) -> Quantity:
    left, right = _operand(left), _operand(right)
    if left.made == (("F", 1),) and right.made == left.made and sign == "−":
        made: tuple[tuple[str, int], ...] = (("dF", 1),)
        unit, other = "dF", right.value
    else:
        if (left.made != right.made and kind_of(together(left.made, right.made, -1))) or left.made == (("F", 1),):
            raise UnitFault(
                "cannot add or take off: " + str(left.made) + " and " + str(right.made) + " measure different things"
            )
        made, unit = left.made, left.unit
        other = right.value if right.made == made else right.value * ratio(right.made, made)
    value = left.value + other if sign == "+" else left.value - other
    parts = left.parts if left.how == "+" else (("+", left),)
    parts += ((sign, right),)
    return Quantity(value, unit, made, "+", parts, _joined(left.sources, right.sources), "", _steps(left, right))


def _joined(first: tuple[str, ...], second: tuple[str, ...]) -> tuple[str, ...]:
    if first == second or not second:
        return first
    return first + tuple([one for one in second if one not in first])


def _all_sources(ones: list[Quantity]) -> tuple[str, ...]:
    found: tuple[str, ...] = ()
    for one in ones:
        found = _joined(found, one.sources)
    return found


def _steps(left: Quantity, right: Quantity) -> tuple[Quantity, ...]:
    if not right.steps:
        return left.steps
    return left.steps + tuple([one for one in right.steps if not [known for known in left.steps if known is one]])


def _all_steps(ones: list[Quantity]) -> tuple[Quantity, ...]:
    found: tuple[Quantity, ...] = ()
    for one in ones:
        found = found + tuple([step for step in one.steps if not [known for known in found if known is step]])
    return found
