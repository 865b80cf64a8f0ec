"""Reads a printed working as a person with a pocket calculator does, and says what does not add up.

It shares nothing with what writes workings: it takes the text apart by a grammar of its own, does each sum with the printed
numbers, each of which may stand for anything that rounds to it at four figures, and compares with the printed result.
Units are left aside in the sums (factors between units are printed as numbers), and `pint` says whether the last result is
the value of the answer.
"""

import re
from fractions import Fraction

import pint

UNITS = pint.UnitRegistry()
NUMBER = re.compile(r"−?\d[\d,]*(?:\.\d+)?")
AFTER = re.compile(r"[^×÷+−=;()√“]*")  # what stands behind a number: its unit, or what is counted
PICKED = re.compile(r"the (greater|smaller|greatest|least) of (.+) is (.+)")
UP = re.compile(r"(.+), up to (−?[\d,]+)(?: [^\d;]+)?")
IN_PINT = {
    "": "", "money": "", "%": "percent", "in": "inch", "ft": "foot", "mil": "mil_length", "sq in": "inch**2", "sq ft": "foot**2", "cu in": "inch**3", "cu ft": "foot**3",
    "cu yd": "yard**3", "gal": "gallon", "lb": "pound", "h": "hour", "days": "day", "psi": "psi", "in of water": "inch_H2O", "lb/sq ft": "pound/foot**2",
    "lb/gal": "pound/gallon", "lb/cu ft": "pound/foot**3", "lb/cu yd": "pound/yard**3", "grains/lb": "grain/pound", "cu ft/min": "foot**3/minute", "an hour": "1/hour",
    "pints a day": "pint/day", "gal per 100 sq ft": "gallon/(100*foot**2)", "sq ft/gal": "foot**2/gallon", "Btu/h": "Btu/hour", "kW": "kilowatt",
    "h psi": "hour*psi", "h kPa": "hour*kilopascal", "mm": "millimeter", "m": "meter", "µm": "micrometer", "cm²": "centimeter**2", "m²": "meter**2",
    "m³": "meter**3", "cm³": "centimeter**3", "L": "liter", "mL": "milliliter", "kg": "kilogram", "kPa": "kilopascal", "Pa": "pascal", "kg/m²": "kilogram/meter**2",
    "kg/L": "kilogram/liter", "kg/m³": "kilogram/meter**3", "g/kg": "gram/kilogram", "m³/h": "meter**3/hour", "L a day": "liter/day", "L/m²": "liter/meter**2",
    "m²/L": "meter**2/liter", "W": "watt", "lb/h": "pound/hour", "kg/h": "kilogram/hour", "°F": "degF", "°C": "degC",
}  # fmt: skip
OF_LINES = {  # the units of an answer's values, as its JSON writes them
    "sqft": "sq ft", "cuft": "cu ft", "psf": "lb/sq ft", "sqin": "sq in", "cuyd": "cu yd", "cfm": "cu ft/min", "per_h": "an hour", "pt/day": "pints a day",
    "gal/100sqft": "gal per 100 sq ft", "sqft/gal": "sq ft/gal", "gr/lb": "grains/lb", "inwc": "in of water", "F": "°F",
}  # fmt: skip


class DoesNotAddUp(Exception):
    """What is wrong with a working, in words."""


class NoSum(Exception):
    """The text holds no sum that can be read."""


def check(working: str, value: str, unit: str, places: int) -> bool:
    """Read `working` and compare its end with `value` [in `unit`, as in the JSON, to `places`]; whether there was a sum in it.

    Raises DoesNotAddUp, or NoSum where a clause is no sum."""
    sums = False
    low = high = Fraction(0)
    ending = ""
    for clause in working.split("; "):
        low, high, ending, summed = _clause(clause)
        sums = sums or summed
    half = Fraction(1, 2 * 10**places)
    least, most = _in_unit(Fraction(value) - half, unit, ending), _in_unit(Fraction(value) + half, unit, ending)
    low, high = (low * 100, high * 100) if ending == "%" else (low, high)
    if high + _slack(high) < least or low - _slack(low) > most:
        raise DoesNotAddUp(f"ends in {float(low):.6g} to {float(high):.6g} {ending}, the answer is {value}")
    return sums


def _slack(end: Fraction) -> Fraction:
    return abs(end) / 10**6  # factors that pint holds to seven figures


def _in_unit(value: Fraction, unit: str, ending: str) -> Fraction:
    have = IN_PINT[OF_LINES.get(unit, unit)]
    if ending not in IN_PINT or IN_PINT[ending] == have or not have:
        if have and ending not in IN_PINT:
            raise DoesNotAddUp(f"ends in {ending!r}, the answer is in {unit}")
        return value
    return Fraction(UNITS.Quantity(float(value), have).to(IN_PINT[ending]).magnitude)


def _clause(text: str) -> tuple[Fraction, Fraction, str, bool]:
    """The printed result of one clause as what it may stand for, its unit, and whether there was a sum before it."""
    label = re.match(r"[^\d“”:]*[A-Za-z][^“”:=×÷]*: ", text)
    if label:
        text = text[label.end() :]
    picked = PICKED.fullmatch(text)
    if picked:
        kind, parts, result = picked.groups()
        ranges = [_number_alone(part)[:2] for part in re.split(r", | and ", _grouped(re.sub(r"“[^”]*” ", "", parts)))]
        pick = max if kind in ("greater", "greatest") else min
        low, high, unit = _number_alone(result)
        _compare(pick(low for low, _ in ranges), pick(high for _, high in ranges), low, high, text)
        return low, high, unit, True
    up = UP.fullmatch(text)
    if up:
        low, high, _, summed = _clause(up[1])
        count = Fraction(up[2].replace(",", "").replace("−", "-"))
        if not low - 1 < count <= high + 1 or count < low:
            raise DoesNotAddUp(f"{text!r}: {float(low)} to {float(high)} is not rounded up to {count}")
        return count, count, "", summed
    body, equals, result = text.rpartition(" = ")
    if not equals:
        low, high, unit = _number_alone(text) if "“" not in text else _labelled(text)
        return low, high, unit, False
    low, high, unit = _number_alone(result)
    scale = 100 if unit == "%" else 1
    found = _Sum(body).whole()
    _compare(*found, low / scale, high / scale, text)
    return low / scale, high / scale, unit, True


def _grouped(text: str) -> str:
    return re.sub(r"(?<=\d),(?=\d)", "", text)


def _labelled(text: str) -> tuple[Fraction, Fraction, str]:
    return _number_alone(text.partition("” ")[2])


def _compare(low: Fraction, high: Fraction, printed_low: Fraction, printed_high: Fraction, text: str) -> None:
    if high < printed_low - _slack(printed_low) or low > printed_high + _slack(printed_high):
        raise DoesNotAddUp(
            f"{text!r} comes to {float(low):.6g} to {float(high):.6g}, not to {float(printed_low):.6g} to {float(printed_high):.6g}"
        )


def _number_alone(text: str) -> tuple[Fraction, Fraction, str]:
    found = NUMBER.match(text)
    if not found:
        raise NoSum(text)
    rest = text[found.end() :].strip()
    if re.search(r"[×÷+=√\d]", re.sub(r"\d+(,\d+)? ?(sq|m²|cu|L|in|ft)", "", rest)):
        raise NoSum(text)
    return *_may_be(found[0]), rest


def _may_be(digits: str) -> tuple[Fraction, Fraction]:
    """All that rounds to a printed number at four figures; whole numbers stand in full."""
    exact = Fraction(digits.replace(",", "").replace("−", "-"))
    step = Fraction(1, 10**4)
    size = abs(exact)
    if not size:
        return exact - step / 2, exact + step / 2
    places = 4
    while size < 1:
        size *= 10
        places += 1
    while size >= 10:
        size /= 10
        places -= 1
    half = Fraction(1, 2 * 10 ** max(0, places - 1))
    return exact - half, exact + half


class _Sum:
    """A sum by its grammar: terms of + and −, factors of × and ÷, roots and brackets."""

    def __init__(self, text: str) -> None:
        self.text, self.at = text, 0

    def whole(self) -> tuple[Fraction, Fraction]:
        found = self.terms()
        if self.text[self.at :].strip():
            raise NoSum(self.text)
        return found

    def _next(self, marks: str) -> str:
        while self.text[self.at : self.at + 1] == " ":
            self.at += 1
        mark = self.text[self.at : self.at + 1]
        if mark and mark in marks:
            self.at += 1
            return mark
        return ""

    def terms(self) -> tuple[Fraction, Fraction]:
        low, high = self.factors()
        while mark := self._next("+−"):
            other_low, other_high = self.factors()
            low, high = (low + other_low, high + other_high) if mark == "+" else (low - other_high, high - other_low)
        return low, high

    def factors(self) -> tuple[Fraction, Fraction]:
        low, high = self.single()
        while mark := self._next("×÷"):
            other_low, other_high = self.single()
            if mark == "÷":
                if other_low <= 0 <= other_high:
                    raise NoSum(self.text)
                other_low, other_high = 1 / other_high, 1 / other_low
            ends = [one * other for one in (low, high) for other in (other_low, other_high)]
            low, high = min(ends), max(ends)
        return low, high

    def single(self) -> tuple[Fraction, Fraction]:
        if self._next("√"):
            low, high = self.single()
            return tuple(Fraction(float(max(end, 0)) ** 0.5) for end in (low, high))
        if self._next("("):
            found = self.terms()
            if not self._next(")"):
                raise NoSum(self.text)
            return self._with_unit(found)
        if self._next("“"):
            self.at = self.text.index("”", self.at) + 1
        self._next("")
        number = NUMBER.match(self.text, self.at)
        if not number:
            raise NoSum(self.text)
        self.at = number.end()
        return self._with_unit(_may_be(number[0]))

    def _with_unit(self, found: tuple[Fraction, Fraction]) -> tuple[Fraction, Fraction]:
        behind = AFTER.match(self.text, self.at)
        self.at = behind.end()
        return tuple(end / 100 for end in found) if behind[0].strip() == "%" else found
