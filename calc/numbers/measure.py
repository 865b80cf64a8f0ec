"""Lengths and other quantities, as the trade writes them.

Reads `14' 6 1/2"`, `14-6.5`, `14.54 ft`, `4.43 m`, `443 cm` and the like into exact fractions, and
writes them back as feet, inches and sixteenths, or metric. Unit factors are the exact definitions
(international yard and pound agreement of 1959; the US gallon is 231 cubic inches).
"""

from fractions import Fraction

from calc.numbers import words
from calc.numbers.exact import round_half_up
from calc.text.door import say

INCHES_PER_FOOT = 12
SQUARE_INCHES_PER_SQUARE_FOOT = 144
CUBIC_INCHES_PER_CUBIC_FOOT = 1728
CUBIC_INCHES_PER_GALLON = 231  # US gallon, by definition
MILLIMETERS_PER_INCH = Fraction(254, 10)  # by definition
METERS_PER_FOOT = Fraction(3048, 10000)
SQUARE_METERS_PER_SQUARE_FOOT = METERS_PER_FOOT * METERS_PER_FOOT
CUBIC_METERS_PER_CUBIC_FOOT = SQUARE_METERS_PER_SQUARE_FOOT * METERS_PER_FOOT
LITERS_PER_GALLON = Fraction(3785411784, 1000000000)  # by definition
KILOGRAMS_PER_POUND = Fraction(45359237, 100000000)  # by definition
MICROMETERS_PER_MIL = Fraction(254, 10)  # by definition
MINUTES_PER_HOUR = 60
PINTS_PER_GALLON = 8
BTU_PER_H_PER_KILOWATT = Fraction(3412142, 1000)  # international table Btu, to seven figures
PASCALS_PER_INCH_OF_WATER = Fraction(249089, 1000)  # the conventional inch: water of 1,000 kg/m³
KILOPASCALS_PER_PSI = Fraction(6894757, 1000000)  # to seven figures
GRAINS_PER_POUND = 7000  # by definition
SIXTEENTHS = 16
FINER_PARTS = (32, 64)  # parts of an inch that are still written as a fraction

# Words for a unit, and how many of the field's own unit (the first in the row) one of it is.
_LENGTH_UNITS = (
    ("in", ("in", "in.", "inch", "inches", '"'), Fraction(1)),
    ("ft", ("ft", "ft.", "foot", "feet", "'"), Fraction(INCHES_PER_FOOT)),
    ("mm", ("mm", "millimeter", "millimeters", "millimetre", "millimetres"), 1 / MILLIMETERS_PER_INCH),
    ("cm", ("cm", "centimeter", "centimeters", "centimetre", "centimetres"), 10 / MILLIMETERS_PER_INCH),
    ("m", ("m", "meter", "meters", "metre", "metres"), 1000 / MILLIMETERS_PER_INCH),
)
_OTHER_UNITS = (
    ("sqft", ("sqft", "sq ft", "sq. ft", "sq. ft.", "ft2", "ft²", "square feet", "square foot", "sf"), Fraction(1)),
    ("sqft", ("m2", "m²", "sqm", "sq m", "square meters", "square metres"), 1 / SQUARE_METERS_PER_SQUARE_FOOT),
    ("gal", ("gal", "gal.", "gallon", "gallons"), Fraction(1)),
    ("gal", ("l", "liter", "liters", "litre", "litres"), 1 / LITERS_PER_GALLON),
    ("lb/gal", ("lb/gal", "lb per gal", "lbs/gal", "lb/gallon"), Fraction(1)),
    ("lb/gal", ("kg/l", "kg per l", "kg/liter", "kg/litre"), LITERS_PER_GALLON / KILOGRAMS_PER_POUND),
    ("%", ("%", "percent", "pct"), Fraction(1)),
    ("cuft", ("cuft", "cu ft", "cu. ft.", "ft3", "ft³", "cubic feet", "cubic foot"), Fraction(1)),
    ("cuft", ("m3", "m³", "cubic meters", "cubic metres"), 1 / CUBIC_METERS_PER_CUBIC_FOOT),
    ("lb", ("lb", "lb.", "lbs", "pound", "pounds"), Fraction(1)),
    ("lb", ("kg", "kilogram", "kilograms"), 1 / KILOGRAMS_PER_POUND),
    ("psf", ("psf", "lb/sq ft", "lb/sqft", "lb/ft2", "lb/ft²"), Fraction(1)),
    ("psf", ("kg/m2", "kg/m²"), SQUARE_METERS_PER_SQUARE_FOOT / KILOGRAMS_PER_POUND),
    ("cfm", ("cfm", "cu ft/min", "ft3/min", "ft³/min"), Fraction(1)),
    ("cfm", ("m3/h", "m³/h"), 1 / CUBIC_METERS_PER_CUBIC_FOOT / MINUTES_PER_HOUR),
    ("mil", ("mil", "mils"), Fraction(1)),
    ("mil", ("µm", "um", "micron", "microns"), 1 / MICROMETERS_PER_MIL),
    ("gal/100sqft", ("gal/100sqft", "gal per 100 sq ft", "gal/100 sq ft"), Fraction(1)),
    ("gal/100sqft", ("l/m2", "l/m²"), 100 * SQUARE_METERS_PER_SQUARE_FOOT / LITERS_PER_GALLON),
    ("sqft/gal", ("sqft/gal", "sq ft/gal", "sq ft per gal", "ft2/gal", "ft²/gal"), Fraction(1)),
    ("sqft/gal", ("m2/l", "m²/l"), LITERS_PER_GALLON / SQUARE_METERS_PER_SQUARE_FOOT),
    ("pt/day", ("pt/day", "pints a day", "pints/day", "pint/day"), Fraction(1)),
    ("pt/day", ("l/day", "l a day", "liters a day", "litres a day"), PINTS_PER_GALLON / LITERS_PER_GALLON),
    ("Btu/h", ("btu/h", "btu", "btuh"), Fraction(1)),
    ("Btu/h", ("kw",), BTU_PER_H_PER_KILOWATT),
    ("per_h", ("an hour", "per hour", "/h", "ach"), Fraction(1)),
)
_CELSIUS = ("°c", "deg c", "c")  # the longest first
_FAHRENHEIT = ("°f", "deg f", "f")
FAHRENHEIT_PER_CELSIUS = Fraction(9, 5)
FAHRENHEIT_AT_ZERO_CELSIUS = 32

_DIGITS = "0123456789"
_BARE = _DIGITS + "./, "  # marks of a number without a unit
_FRACTION_MARKS = (
    ("½", " 1/2 "), ("¼", " 1/4 "), ("¾", " 3/4 "), ("⅛", " 1/8 "), ("⅜", " 3/8 "), ("⅝", " 5/8 "), ("⅞", " 7/8 "), ("⁄", "/"),
)  # fmt: skip
_DOUBLED_MARKS = (("``", '"'), ("''", '"'))
_QUOTE_MARKS = (("′", "'"), ("’", "'"), ("‘", "'"), ("″", '"'), ("”", '"'), ("“", '"'))
_DASHES = (("−", "-"), ("–", "-"), ("‐", "-"), ("‑", "-"), ("—", "-"))
_WIDE_MARKS = (_QUOTE_MARKS, _DOUBLED_MARKS, _DASHES, _FRACTION_MARKS)  # two single marks may become a double one
_PLAIN_MARKS = (_DOUBLED_MARKS,)
_POWERS = ("2", "²", "3", "³")
_LARGEST_BELOW = (
    1000  # the largest number below the line of a fraction [-]: thousandths are the finest that a gauge shows
)
_LONGEST_NUMBER = 18  # digits in one number; longer is a slip of the finger, and slow to work with


class MeasureFault(ValueError):
    """Raised when a text is no quantity; the message is one sentence for the person who typed it."""

    walls: tuple[int, ...] = ()  # the numbers of the walls of a room that are at fault, where they are known


def tidy(text: str) -> str:
    """Return what was typed in plain marks: straight quotes, a hyphen for each dash, 1/2 for ½, single spaces."""
    for marks in _PLAIN_MARKS if words.is_ascii(text) else _PLAIN_MARKS + _WIDE_MARKS:
        for mark, plain in marks:
            if mark in text:
                text = text.replace(mark, plain)
    return words.tidy(text)


def read_number(text: str) -> Fraction:
    """Return the number written in `text`: 12, 1,000, 0.5, 3/8, 1 1/2. Raises MeasureFault."""
    return _number(tidy(text), text)


def read_bound(text: str) -> Fraction:
    """Return a bound of a declared range: a bare number in the field's own unit, which may be negative."""
    return -_number(text[1:], text) if text.startswith("-") else _number(text, text)


def read_length(text: str, bare_unit: str) -> Fraction:
    """Return the length in `text` as inches [in, >= 0].

    `bare_unit` ('in' or 'ft') is what a number without a unit means. Raises MeasureFault for inches of
    12 or more beside feet, a fraction over 0, a negative length, or anything that is no length.
    """
    plain = words.lower(tidy(text))
    if not plain:
        raise MeasureFault(say("measure.length.missing", "a length is missing"))
    if plain.startswith("-"):
        raise MeasureFault(say("measure.length.negative", "a length cannot be negative"))
    feet_text, rest = _split_feet(plain, bare_unit)
    if feet_text is None:
        number_text, factor = _split_unit(plain, _LENGTH_UNITS)
        if factor is None:
            factor = Fraction(INCHES_PER_FOOT) if bare_unit == "ft" else Fraction(1)
        return _number(number_text, text) * factor
    feet = _number(feet_text, text)
    if not rest:
        return feet * INCHES_PER_FOOT
    if feet.denominator != 1:
        raise MeasureFault(say("measure.feet.whole", "give whole feet when inches follow them"))
    number_text, factor = _split_unit(rest, _LENGTH_UNITS)
    if factor is not None and factor != 1:
        raise MeasureFault(say("measure.feet.inches", "only inches may follow feet"))
    inches = _number(number_text, text)
    if inches >= INCHES_PER_FOOT:
        raise MeasureFault(say("measure.inches.many", "inches beside feet must be less than 12 (12 inches are a foot)"))
    return feet * INCHES_PER_FOOT + inches


def is_bare(text: str) -> bool:
    """Return whether `text` is a number without any unit."""
    return all([mark in _BARE for mark in tidy(text)])


def is_in_other_unit(text: str) -> bool:
    """Return whether `text` ends in a unit of length that is not feet: inches or metric."""
    plain = words.lower(tidy(text))
    if [mark for mark in ("'", "feet", "foot", "ft") if plain.find(mark) > 0]:
        return False
    return _split_unit(plain, _LENGTH_UNITS)[1] is not None


def read_quantity(text: str, unit: str) -> Fraction:
    """Return the quantity in `text` in `unit` ('in', 'ft', 'sqft', 'gal', 'lb/gal', '%', 'F' or '' for a number).

    A bare number is taken in `unit`; metric units are converted exactly. Only a temperature may be
    negative. Raises MeasureFault.
    """
    if unit == "in":
        return read_length(text, "in")
    if unit == "ft":
        return read_length(text, "ft") / INCHES_PER_FOOT
    plain = words.lower(tidy(text))
    if not plain:
        raise MeasureFault(say("measure.number.missing", "a number is missing"))
    negative = plain.startswith("-")
    if negative and unit != "F":
        raise MeasureFault(say("measure.number.negative", "the number cannot be negative"))
    body = words.tidy(plain[1:]) if negative else plain
    if unit == "F":
        return _temperature(body, text, negative)
    number_text, factor = _split_unit(body, tuple([row for row in _OTHER_UNITS if row[0] == unit]))
    return _number(number_text, text) * (Fraction(1) if factor is None else factor)


def feet_and_inches(inches: Fraction) -> str:
    """Return a length [in, >= 0] to the nearest sixteenth as `14' 6 1/2"`, the trade's own form."""
    sixteenths = round_half_up(inches * SIXTEENTHS)
    feet, rest = divmod(sixteenths, INCHES_PER_FOOT * SIXTEENTHS)
    inch_text = _inches_text(rest)
    return (words.whole(feet) + "' " if feet else "") + inch_text + '"'


def inches_and_sixteenths(inches: Fraction) -> str:
    """Return a small length [in, >= 0] to the nearest sixteenth as `3/16 in`; finer ones as a decimal."""
    sixteenths = round_half_up(inches * SIXTEENTHS)
    if Fraction(sixteenths, SIXTEENTHS) == inches:
        return _inches_text(sixteenths) + " in"
    for denominator in FINER_PARTS:
        if (inches * denominator).denominator == 1:
            whole, rest = divmod(inches.numerator, inches.denominator)
            return (str(whole) + " " if whole else "") + str(rest) + "/" + str(inches.denominator) + " in"
    return words.short_decimal(inches, 3) + " in"


def metric_length(inches: Fraction) -> str:
    """Return a length [in, >= 0] as metric: millimeters under one meter, else meters to the millimeter."""
    millimeters = inches * MILLIMETERS_PER_INCH
    if millimeters < 10:
        return words.short_decimal(millimeters, 1) + " mm"
    if millimeters < 1000:
        return words.decimal(millimeters, 0) + " mm"
    return words.decimal(millimeters / 1000, 3) + " m"


def limit(inches: Fraction, customary: str, show_in: str) -> str:
    """Return a limit of `inches` [in, >= 0] as its rule writes it, `customary`, or in metric without any rounding."""
    if show_in != "metric":
        return customary
    millimeters = inches * MILLIMETERS_PER_INCH
    if millimeters < 1000:
        return words.short_decimal(millimeters, 3) + " mm"
    return words.short_decimal(millimeters / 1000, 5) + " m"


# unit of a value -> its name for people, the metric name, and metric units in one of it
_SHOWN = (
    ("sqft", "sq ft", "m²", SQUARE_METERS_PER_SQUARE_FOOT),
    ("cuft", "cu ft", "m³", CUBIC_METERS_PER_CUBIC_FOOT),
    ("gal", "gal", "L", LITERS_PER_GALLON),
    ("lb", "lb", "kg", KILOGRAMS_PER_POUND),
    ("psf", "lb/sq ft", "kg/m²", KILOGRAMS_PER_POUND / SQUARE_METERS_PER_SQUARE_FOOT),
    ("lb/gal", "lb/gal", "kg/L", KILOGRAMS_PER_POUND / LITERS_PER_GALLON),
    ("psi", "psi", "kPa", KILOPASCALS_PER_PSI),
    ("cuyd", "cu yd", "m³", 27 * CUBIC_METERS_PER_CUBIC_FOOT),
    ("cfm", "cu ft/min", "m³/h", MINUTES_PER_HOUR * CUBIC_METERS_PER_CUBIC_FOOT),
    ("mil", "mil", "µm", MICROMETERS_PER_MIL),
    ("gal/100sqft", "gal per 100 sq ft", "L/m²", LITERS_PER_GALLON / 100 / SQUARE_METERS_PER_SQUARE_FOOT),
    ("sqft/gal", "sq ft/gal", "m²/L", SQUARE_METERS_PER_SQUARE_FOOT / LITERS_PER_GALLON),
    ("pt/day", "pints a day", "L a day", LITERS_PER_GALLON / PINTS_PER_GALLON),
    ("gr/lb", "grains/lb", "g/kg", Fraction(1000, GRAINS_PER_POUND)),
    ("inwc", "in of water", "Pa", PASCALS_PER_INCH_OF_WATER),
    ("sqin", "sq in", "cm²", Fraction(64516, 10000)),
    ("per_h", "an hour", "an hour", Fraction(1)),
)


def shown(value: Fraction, unit: str, places: int, show_in: str) -> str:
    """Return `value` in `unit` as a person reads it, in 'customary' or 'metric' units.

    Units: those of `read_quantity` and 'cuft', 'lb', 'psf', 'psi', 'h', 'mil'; any other stands as it is.
    """
    metric = show_in == "metric"
    if unit == "ft":
        return metric_length(value * INCHES_PER_FOOT) if metric else feet_and_inches(value * INCHES_PER_FOOT)
    if unit == "in":
        return metric_length(value) if metric else inches_and_sixteenths(value)
    if unit == "F":
        if metric:
            return words.decimal((value - FAHRENHEIT_AT_ZERO_CELSIUS) / FAHRENHEIT_PER_CELSIUS, places) + " °C"
        return words.decimal(value, places) + " °F"
    if unit == "%":
        return words.short_decimal(value, places) + " %"
    if unit == "money":
        return words.decimal(value, places)
    for name, customary_name, metric_name, factor in _SHOWN:
        if unit == name:
            if metric:
                return words.short_decimal(value * factor, max(places, 1)) + " " + metric_name
            return words.short_decimal(value, places) + " " + customary_name
    return words.short_decimal(value, places) + (" " + unit if unit else "")


def _inches_text(sixteenths: int) -> str:
    whole, rest = divmod(sixteenths, SIXTEENTHS)
    if not rest:
        return str(whole)
    part = Fraction(rest, SIXTEENTHS)
    return (str(whole) + " " if whole else "") + str(part.numerator) + "/" + str(part.denominator)


def _temperature(body: str, typed: str, negative: bool) -> Fraction:
    sign = -1 if negative else 1
    for name in _CELSIUS:
        if body.endswith(name):
            celsius = _number(words.tidy(body[: -len(name)]), typed) * sign
            return celsius * FAHRENHEIT_PER_CELSIUS + FAHRENHEIT_AT_ZERO_CELSIUS
    for name in _FAHRENHEIT:
        if body.endswith(name):
            return _number(words.tidy(body[: -len(name)]), typed) * sign
    return _number(body, typed) * sign


def _split_feet(plain: str, bare_unit: str) -> tuple[str | None, str]:
    """Return the text before a foot mark and what follows, or (None, '') where no feet are written."""
    for mark in ("'", "feet", "foot", "ft.", "ft"):
        at = plain.find(mark)
        if at > 0:
            rest = plain[at + len(mark) :]
            if mark != "'" and rest in _POWERS:
                raise MeasureFault(say("measure.length.area", "that is an area or a volume, not a length"))
            rest = words.tidy(rest)
            if rest.startswith("-"):
                rest = words.tidy(rest[1:])
            return words.tidy(plain[:at]), rest
    at = plain.find("-")  # 14-6.5 is 14 feet 6.5 inches
    if at > 0 and all([mark in _DIGITS for mark in plain[:at]]):
        rest = words.tidy(plain[at + 1 :])
        if not rest:
            raise MeasureFault(say("measure.inches.missing", "inches are missing after the hyphen"))
        number_text, factor = _split_unit(rest, _LENGTH_UNITS)
        if "/" in number_text and " " not in number_text and "-" not in number_text:
            if factor is not None:  # 1-1/2 in is one and a half inches
                return None, ""
            unit = " " + bare_unit
            raise MeasureFault(
                say(
                    "measure.hyphen",
                    "it can mean {one} or {other}; write the one that you mean",
                    one=plain.replace("-", " ", 1) + unit,
                    other=plain.replace("-", "' ", 1) + '"',
                )
            )
        return plain[:at], rest
    return None, ""


def _split_unit(plain: str, units: tuple[tuple[str, tuple[str, ...], Fraction], ...]) -> tuple[str, Fraction | None]:
    if all([mark in _BARE for mark in plain]):
        return plain, None
    best, factor = "", None
    for _, names, value in units:
        for name in names:
            if plain.endswith(name) and len(name) > len(best):
                best, factor = name, value
    return (words.tidy(plain[: -len(best)]) if best else plain), factor


def _number(plain: str, typed: str) -> Fraction:
    parts = plain.split(" ")
    if len(parts) == 1 and parts[0].count("-") == 1 and "/" in parts[0]:
        parts = parts[0].split("-")  # 6-1/2 for six and a half
    if len(parts) == 1:
        if "/" in plain:
            return _ratio(plain, typed)
        return _decimal(plain, typed)
    if len(parts) == 2 and "/" in parts[1] and "/" not in parts[0]:
        whole, part = _decimal(parts[0], typed), _ratio(parts[1], typed)
        if whole.denominator == 1 and part < 1:
            return whole + part
    raise _no_number(typed)


def _ratio(plain: str, typed: str) -> Fraction:
    top, _, bottom = plain.partition("/")
    below = _decimal(bottom, typed)
    if below == 0:
        raise MeasureFault(say("measure.fraction.zero", "a fraction cannot have 0 below the line"))
    if below > _LARGEST_BELOW:
        raise MeasureFault(say("measure.fraction.fine", "a fraction may have at most 1,000 below the line"))
    return _decimal(top, typed) / below


def _decimal(plain: str, typed: str) -> Fraction:
    if "," in plain:
        whole, _, rest = plain.partition(".")
        groups = whole.split(",")
        if len(groups[0]) not in (1, 2, 3) or any([len(group) != 3 for group in groups[1:]]) or "," in rest:
            raise MeasureFault(say("measure.comma", "write decimals with a point, not a comma"))
        plain = plain.replace(",", "")
    whole, point, rest = plain.partition(".")
    if not (whole or rest) or any([mark not in _DIGITS for mark in whole + rest]) or (point and not rest and not whole):
        raise _no_number(typed)
    if len(whole + rest) > _LONGEST_NUMBER:
        raise MeasureFault(say("measure.digits", "the number has too many digits"))
    return Fraction(int((whole or "0") + rest), 10 ** len(rest))


def _no_number(typed: str) -> MeasureFault:
    return MeasureFault(say("measure.number", "it is not a number that can be read"))
