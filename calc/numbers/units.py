"""Units: what each is made of, its metric counterpart, and the exact factor between any two of one kind.

A unit is a product of simple ones: lb/sq ft is one lb over one sq ft. Each simple unit is a whole number, or a part, of the
base of its system: inch, pound, hour, psi, Btu, degree; millimeter, kilogram, hour, kilopascal, kilowatt hour, kelvin.
"""

from fractions import Fraction

from calc.numbers import measure
from calc.numbers.exact import square_root

# name -> what it measures, to which power, and how many of its system's base it is, by definition
_SIMPLE = (
    ("in", "length", 1, Fraction(1)), ("ft", "length", 1, Fraction(12)), ("mil", "length", 1, Fraction(1, 1000)),
    ("sqin", "length", 2, Fraction(1)), ("sqft", "length", 2, Fraction(144)), ("100sqft", "length", 2, Fraction(14400)), ("1000sqft", "length", 2, Fraction(144000)),
    ("cuin", "length", 3, Fraction(1)), ("cuft", "length", 3, Fraction(1728)), ("cuyd", "length", 3, Fraction(46656)),
    ("gal", "length", 3, Fraction(231)), ("pt", "length", 3, Fraction(231, 8)), ("floz", "length", 3, Fraction(231, 128)),
    ("lb", "weight", 1, Fraction(1)), ("gr", "weight", 1, Fraction(1, 7000)),
    ("h", "time", 1, Fraction(1)), ("min", "time", 1, Fraction(1, 60)), ("day", "time", 1, Fraction(24)),
    ("psi", "pressure", 1, Fraction(1)), ("inwc", "gauge", 1, Fraction(1)), ("rootinwc", "root", 1, Fraction(1)),
    ("Btu", "heat", 1, Fraction(1)), ("kW h", "heat", 1, measure.BTU_PER_H_PER_KILOWATT), ("dF", "warmth", 1, Fraction(1)),
    ("mm", "length", 1, Fraction(1)), ("m", "length", 1, Fraction(1000)), ("µm", "length", 1, Fraction(1, 1000)),
    ("cm²", "length", 2, Fraction(100)), ("m²", "length", 2, Fraction(10**6)), ("100m²", "length", 2, Fraction(10**8)),
    ("cm³", "length", 3, Fraction(1000)), ("mL", "length", 3, Fraction(1000)), ("m³", "length", 3, Fraction(10**9)), ("L", "length", 3, Fraction(10**6)),
    ("kg", "weight", 1, Fraction(1)), ("g", "weight", 1, Fraction(1, 1000)),
    ("kPa", "pressure", 1, Fraction(1)), ("Pa", "gauge", 1, Fraction(1)), ("rootPa", "root", 1, Fraction(1)),
    ("kWh", "heat", 1, Fraction(1)), ("Wh", "heat", 1, Fraction(1, 1000)), ("K", "warmth", 1, Fraction(1)),
)  # fmt: skip
_OF = dict([(name, (kind, power, scale)) for name, kind, power, scale in _SIMPLE])

# what is measured -> how many of the metric base one of the customary base is
_METRIC = (
    ("length", measure.MILLIMETERS_PER_INCH), ("weight", measure.KILOGRAMS_PER_POUND), ("time", Fraction(1)),
    ("pressure", measure.KILOPASCALS_PER_PSI), ("gauge", measure.PASCALS_PER_INCH_OF_WATER),
    ("root", square_root(measure.PASCALS_PER_INCH_OF_WATER)), ("heat", 1 / measure.BTU_PER_H_PER_KILOWATT), ("warmth", 1 / measure.FAHRENHEIT_PER_CELSIUS),
)  # fmt: skip
_TO_METRIC = dict(_METRIC)

# unit -> what it is made of and its name for people, and the same of its metric counterpart. The rows with nothing are pure
# numbers. "F" is a heat on the scale; what lies between two of them is "dF".
_UNITS: tuple[tuple[str, tuple[tuple[str, int], ...], str, tuple[tuple[str, int], ...], str], ...] = (
    ("", (), "", (), ""),
    ("%", (), "%", (), "%"),
    ("money", (), "", (), ""),
    ("in", (("in", 1),), "in", (("mm", 1),), "mm"),
    ("ft", (("ft", 1),), "ft", (("m", 1),), "m"),
    ("mil", (("mil", 1),), "mil", (("µm", 1),), "µm"),
    ("sqin", (("sqin", 1),), "sq in", (("cm²", 1),), "cm²"),
    ("sqft", (("sqft", 1),), "sq ft", (("m²", 1),), "m²"),
    ("cuin", (("cuin", 1),), "cu in", (("cm³", 1),), "cm³"),
    ("cuft", (("cuft", 1),), "cu ft", (("m³", 1),), "m³"),
    ("cuyd", (("cuyd", 1),), "cu yd", (("m³", 1),), "m³"),
    ("gal", (("gal", 1),), "gal", (("L", 1),), "L"),
    ("floz", (("floz", 1),), "fl oz", (("mL", 1),), "mL"),
    ("lb", (("lb", 1),), "lb", (("kg", 1),), "kg"),
    ("h", (("h", 1),), "h", (("h", 1),), "h"),
    ("day", (("day", 1),), "days", (("day", 1),), "days"),
    ("psi", (("psi", 1),), "psi", (("kPa", 1),), "kPa"),
    ("h psi", (("h", 1), ("psi", 1)), "h psi", (("h", 1), ("kPa", 1)), "h kPa"),
    ("inwc", (("inwc", 1),), "in of water", (("Pa", 1),), "Pa"),
    ("psf", (("lb", 1), ("sqft", -1)), "lb/sq ft", (("kg", 1), ("m²", -1)), "kg/m²"),
    ("lb/gal", (("gal", -1), ("lb", 1)), "lb/gal", (("L", -1), ("kg", 1)), "kg/L"),
    ("lb/cuft", (("cuft", -1), ("lb", 1)), "lb/cu ft", (("kg", 1), ("m³", -1)), "kg/m³"),
    ("lb/cuyd", (("cuyd", -1), ("lb", 1)), "lb/cu yd", (("kg", 1), ("m³", -1)), "kg/m³"),
    ("lb/sqin", (("lb", 1), ("sqin", -1)), "lb/sq in", (("cm²", -1), ("kg", 1)), "kg/cm²"),
    ("sqin/sqft", (("sqft", -1), ("sqin", 1)), "sq in/sq ft", (("cm²", 1), ("m²", -1)), "cm²/m²"),
    ("gr/lb", (("gr", 1), ("lb", -1)), "grains/lb", (("g", 1), ("kg", -1)), "g/kg"),
    ("cfm", (("cuft", 1), ("min", -1)), "cu ft/min", (("h", -1), ("m³", 1)), "m³/h"),
    ("cfm/sqft/rootinwc", (("cuft", 1), ("min", -1), ("rootinwc", -1), ("sqft", -1)), "cu ft/min for 1 sq ft at 1 in of water",
     (("h", -1), ("m²", -1), ("m³", 1), ("rootPa", -1)), "m³/h for 1 m² at 1 Pa"),
    ("per_h", (("h", -1),), "an hour", (("h", -1),), "an hour"),
    ("pt/day", (("day", -1), ("pt", 1)), "pints a day", (("L", 1), ("day", -1)), "L a day"),
    ("gal/100sqft", (("100sqft", -1), ("gal", 1)), "gal per 100 sq ft", (("L", 1), ("m²", -1)), "L/m²"),
    ("gal/1000sqft", (("1000sqft", -1), ("gal", 1)), "gal per 1,000 sq ft", (("100m²", -1), ("L", 1)), "L per 100 m²"),
    ("ft/1000sqft", (("1000sqft", -1), ("ft", 1)), "ft per 1,000 sq ft", (("100m²", -1), ("m", 1)), "m per 100 m²"),
    ("lb/1000sqft", (("1000sqft", -1), ("lb", 1)), "lb per 1,000 sq ft", (("100m²", -1), ("kg", 1)), "kg per 100 m²"),
    ("per_1000sqft", (("1000sqft", -1),), "per 1,000 sq ft", (("100m²", -1),), "per 100 m²"),
    ("sqft/gal", (("gal", -1), ("sqft", 1)), "sq ft/gal", (("L", -1), ("m²", 1)), "m²/L"),
    ("Btu/h", (("Btu", 1), ("h", -1)), "Btu/h", (("Wh", 1), ("h", -1)), "W"),
    ("kW", (("h", -1), ("kW h", 1)), "kW", (("h", -1), ("kWh", 1)), "kW"),
    ("lb/Btu", (("Btu", -1), ("lb", 1)), "lb/Btu", (("kWh", -1), ("kg", 1)), "kg/kWh"),
    ("Btu/lb", (("Btu", 1), ("lb", -1)), "Btu/lb", (("Wh", 1), ("kg", -1)), "Wh/kg"),
    ("Btu/cuft/dF", (("Btu", 1), ("cuft", -1), ("dF", -1)), "Btu/cu ft and °F", (("K", -1), ("Wh", 1), ("m³", -1)), "Wh/m³ and °C"),
    ("F", (("F", 1),), "°F", (("C", 1),), "°C"),
    ("dF", (("dF", 1),), "°F", (("K", 1),), "°C"),
)  # fmt: skip
_ROWS = dict([(row[0], row[1:]) for row in _UNITS])


class UnitFault(ValueError):
    """Raised where a formula puts units together that do not fit; a fault of the formula, never of a person."""


def made_of(unit: str, metric: bool = False) -> tuple[tuple[str, int], ...]:
    """Return what `unit`, or its metric counterpart, is made of. Raises UnitFault for a unit that is not in the table."""
    row = _ROWS.get(unit)
    if row is None:
        raise UnitFault("no such unit: " + unit)
    return row[2] if metric else row[0]


def name_of(unit: str, metric: bool) -> str:
    """Return the name of `unit`, or of its metric counterpart, for people."""
    row = _ROWS[unit]
    return row[3] if metric else row[1]


def together(
    first: tuple[tuple[str, int], ...], second: tuple[tuple[str, int], ...], sign: int
) -> tuple[tuple[str, int], ...]:
    """Return the product of two products, or their quotient where `sign` is -1."""
    if not second:
        return first
    if not first and sign == 1:
        return second
    powers = dict(first)
    for name, power in second:
        powers[name] = powers.get(name, 0) + sign * power
    return tuple([(name, powers[name]) for name in sorted(powers) if powers[name]])


def kind_of(product: tuple[tuple[str, int], ...]) -> tuple[tuple[str, int], ...]:
    """Return what a product measures: (kind, power) pairs, none for a pure number."""
    powers: dict[str, int] = {}
    for name, power in product:
        kind, own, _ = _OF.get(name, (name, 1, 1))  # a heat on its scale is a kind of its own
        powers[kind] = powers.get(kind, 0) + own * power
    return tuple([(kind, powers[kind]) for kind in sorted(powers) if powers[kind]])


def factor(product: tuple[tuple[str, int], ...]) -> Fraction:
    """Return how many of its system's bases a product is [-], exactly."""
    top = bottom = 1
    for name, power in product:
        if name in _OF:
            scale = _OF[name][2]
            up, down = (scale.numerator, scale.denominator) if power > 0 else (scale.denominator, scale.numerator)
            for _ in range(abs(power)):
                top, bottom = top * up, bottom * down
    return Fraction(top, bottom)


def ratio(have: tuple[tuple[str, int], ...], want: tuple[tuple[str, int], ...]) -> Fraction:
    """Return how many of `want` one of `have` is [-], exactly; both of one system. Raises UnitFault where they measure
    different things."""
    if have == want:
        return Fraction(1)
    between = together(have, want, -1)
    if kind_of(between):
        raise UnitFault("units do not fit: " + told(have) + " where " + told(want) + " is wanted")
    return factor(between)


def in_metric(value: Fraction, unit: str) -> Fraction:
    """Return `value` [in `unit`] in the unit's metric counterpart, exactly; roots to 12 places."""
    if unit == "F":
        return (value - measure.FAHRENHEIT_AT_ZERO_CELSIUS) / measure.FAHRENHEIT_PER_CELSIUS
    have, want = made_of(unit), made_of(unit, True)
    if have == want:
        return value
    found = value * factor(together(have, want, -1))
    for kind, power in kind_of(have):
        for _ in range(abs(power)):
            found = found * _TO_METRIC[kind] if power > 0 else found / _TO_METRIC[kind]
    return found


def told(product: tuple[tuple[str, int], ...]) -> str:
    """Return a product in words, for a message: 'gal × sqft^-1'."""
    parts = [name + ("" if power == 1 else "^" + str(power)) for name, power in product]
    return " × ".join(parts) if parts else "a pure number"


def steps(product: tuple[tuple[str, int], ...]) -> list[tuple[str, Fraction]]:
    """Return what has to be multiplied by and divided by to take `product`, which measures nothing, to a pure number:
    ('×' or '÷', number) pairs, as few and as round as they come."""
    whole = factor(product)
    if whole == 1:
        return []
    if whole.denominator == 1:
        return [("×", whole)]
    if whole.numerator == 1:
        return [("÷", 1 / whole)]
    scales = [_OF[name][2] ** power for name, power in product]
    times = [("×", scale) for scale in scales if scale > 1]
    return times + [("÷", 1 / scale) for scale in scales if scale < 1]
