"""Units by definition, and the edges of published tables and formulas: what no printed figure of a calculator holds.

Nothing here is taken from the book: a unit is told in meters, kilograms and seconds, an edge as its source has it.
"""

from fractions import Fraction

import psychrolib
import pytest

from calc.common.inputs import SHEET_WIDTH, SHEET_WIDTHS_IN
from calc.drying import drying, law
from calc.drying.air import outdoor_pressure_psi, vapor_pressure_psi
from calc.drying.three_ways import removal_lb_per_h
from calc.hazards.samples import read_result
from calc.numbers import measure
from calc.rooms.rooms import read_rooms

F = Fraction
psychrolib.SetUnitSystem(psychrolib.IP)

INCH = F("0.0254")  # [m], international yard and pound agreement of 1959, as are foot and pound
FOOT, POUND = 12 * INCH, F("0.45359237")
GALLON, LITER = 231 * INCH**3, F(1, 1000)  # [m³]
MINUTE, HOUR, DAY = 60, 3600, 86400
BTU = F("1055.05585262")  # [J], international table

LENGTHS = {
    INCH: ("in", "in.", "inch", "inches", '"'),
    FOOT: ("ft", "ft.", "foot", "feet", "'"),
    F(1, 1000): ("mm", "millimeter", "millimeters", "millimetre", "millimetres"),
    F(1, 100): ("cm", "centimeter", "centimeters", "centimetre", "centimetres"),
    F(1): ("m", "meter", "meters", "metre", "metres"),
}
# the unit of a field, and what each word that may be typed there is
OTHERS = {
    "sqft": {FOOT**2: ("sqft", "sq ft", "sq. ft", "sq. ft.", "ft2", "ft²", "square feet", "square foot", "sf"),
             F(1): ("m2", "m²", "sqm", "sq m", "square meters", "square metres")},
    "gal": {GALLON: ("gal", "gal.", "gallon", "gallons"), LITER: ("l", "liter", "liters", "litre", "litres")},
    "lb/gal": {POUND / GALLON: ("lb/gal", "lb per gal", "lbs/gal", "lb/gallon"),
               1 / LITER: ("kg/l", "kg per l", "kg/liter", "kg/litre")},
    "%": {F(1, 100): ("%", "percent", "pct")},
    "cuft": {FOOT**3: ("cuft", "cu ft", "cu. ft.", "ft3", "ft³", "cubic feet", "cubic foot"),
             F(1): ("m3", "m³", "cubic meters", "cubic metres")},
    "lb": {POUND: ("lb", "lb.", "lbs", "pound", "pounds"), F(1): ("kg", "kilogram", "kilograms")},
    "psf": {POUND / FOOT**2: ("psf", "lb/sq ft", "lb/sqft", "lb/ft2", "lb/ft²"), F(1): ("kg/m2", "kg/m²")},
    "cfm": {FOOT**3 / MINUTE: ("cfm", "cu ft/min", "ft3/min", "ft³/min"), F(1, HOUR): ("m3/h", "m³/h")},
    "mil": {INCH / 1000: ("mil", "mils"), F(1, 10**6): ("µm", "um", "micron", "microns")},
    "gal/100sqft": {GALLON / (100 * FOOT**2): ("gal/100sqft", "gal per 100 sq ft", "gal/100 sq ft"), LITER: ("l/m2", "l/m²")},
    "sqft/gal": {FOOT**2 / GALLON: ("sqft/gal", "sq ft/gal", "sq ft per gal", "ft2/gal", "ft²/gal"),
                 1 / LITER: ("m2/l", "m²/l")},
    "pt/day": {GALLON / 8 / DAY: ("pt/day", "pints a day", "pints/day", "pint/day"),
               LITER / DAY: ("l/day", "l a day", "liters a day", "litres a day")},
    "Btu/h": {BTU / HOUR: ("btu/h", "btu", "btuh"), F(1000): ("kw",)},
    "per_h": {F(1, HOUR): ("an hour", "per hour", "/h", "ach")},
}  # fmt: skip


def test_every_word_for_a_length_is_its_length_by_definition():
    for meters, named in LENGTHS.items():
        for word in named:
            assert measure.read_quantity("7 " + word, "in") == 7 * meters / INCH, word
            assert measure.read_quantity("7 " + word, "ft") == 7 * meters / FOOT, word
    known = {word for _, named, _ in measure._LENGTH_UNITS for word in named}
    assert known == {word for named in LENGTHS.values() for word in named}


def test_every_other_word_is_its_unit_by_definition():
    """All are exact but the kilowatt, which the book has in Btu an hour to seven figures."""
    for unit, amounts in OTHERS.items():
        one = next(iter(amounts))
        for amount, named in amounts.items():
            for word in named:
                found, theirs = measure.read_quantity("7 " + word, unit), 7 * amount / one
                assert found == theirs or (word == "kw" and abs(found / theirs - 1) < F(1, 5 * 10**6)), word
    known = {(unit, word) for unit, named, _ in measure._OTHER_UNITS for word in named}
    assert known == {(unit, word) for unit, amounts in OTHERS.items() for named in amounts.values() for word in named}


# how a value is shown: its unit in customary and in metric letters, and the amount of each
PSI = POUND * F("9.80665") / INCH**2  # [Pa]
SHOWN = {
    "sqft": ("sq ft", FOOT**2, "m²", 1), "cuft": ("cu ft", FOOT**3, "m³", 1), "gal": ("gal", GALLON, "L", LITER),
    "lb": ("lb", POUND, "kg", 1), "psf": ("lb/sq ft", POUND / FOOT**2, "kg/m²", 1), "lb/gal": ("lb/gal", POUND / GALLON, "kg/L", 1 / LITER),
    "psi": ("psi", PSI, "kPa", 1000), "cuyd": ("cu yd", (3 * FOOT) ** 3, "m³", 1), "cfm": ("cu ft/min", FOOT**3 / MINUTE, "m³/h", F(1, HOUR)),
    "mil": ("mil", INCH / 1000, "µm", F(1, 10**6)), "gal/100sqft": ("gal per 100 sq ft", GALLON / (100 * FOOT**2), "L/m²", LITER),
    "sqft/gal": ("sq ft/gal", FOOT**2 / GALLON, "m²/L", 1 / LITER), "pt/day": ("pints a day", GALLON / 8 / DAY, "L a day", LITER / DAY),
    "gr/lb": ("grains/lb", F(1, 7000), "g/kg", F(1, 1000)), "inwc": ("in of water", INCH * 1000 * F("9.80665"), "Pa", 1),
    "sqin": ("sq in", INCH**2, "cm²", F(1, 10**4)), "per_h": ("an hour", 1, "an hour", 1),
}  # fmt: skip


def test_every_unit_is_shown_as_it_is_by_definition():
    """Pressures are in the book to six or seven figures. The inch of water is the conventional one: 1,000 kg/m³, 9.80665 m/s²."""
    assert {row[0] for row in measure._SHOWN} == set(SHOWN)
    for unit, (customary, one, metric, each) in SHOWN.items():
        assert measure.shown(F(1000), unit, 6, "customary") == "1,000 " + customary
        number, _, letters = measure.shown(F(1000), unit, 6, "metric").partition(" ")
        assert letters == metric
        exact = F(number.replace(",", "")) / (1000 * one / each)
        assert abs(exact - 1) < (F(1, 2 * 10**6) if unit in ("psi", "inwc") else F(1, 10**7)), unit


def test_freezing_and_boiling_by_definition():
    for celsius, fahrenheit in ((0, 32), (100, 212)):
        for word in ("°c", "deg c", "c"):
            assert measure.read_quantity(f"{celsius} {word}", "F") == fahrenheit
        for word in ("°f", "deg f", "f", ""):
            assert measure.read_quantity(f"{fahrenheit} {word}", "F") == fahrenheit
        assert measure.shown(F(fahrenheit), "F", 0, "metric") == f"{celsius} °C"


# Vapor pressure

EDGES_F = (-148, 32, 392)  # ASHRAE Fundamentals 2017, chapter 1: equation 5 to 32 degF, equation 6 from there


def test_vapor_pressure_goes_as_far_as_the_published_formulas():
    coldest, freezing, hottest = EDGES_F
    assert outdoor_pressure_psi(F(coldest)) < outdoor_pressure_psi(F(0))
    assert vapor_pressure_psi(F(hottest)) == outdoor_pressure_psi(F(hottest))
    for heat_f, asked in ((F(coldest), outdoor_pressure_psi), (F(freezing), vapor_pressure_psi)):
        asked(heat_f)
        with pytest.raises(ValueError, match="vapor pressure"):
            asked(heat_f - F(1, 10))
    for asked in (vapor_pressure_psi, outdoor_pressure_psi):
        with pytest.raises(ValueError, match="392"):
            asked(F(hottest) + F(1, 10))


@pytest.mark.parametrize("temperature_f", [-60, -20, 0, 20, 31])
def test_vapor_pressure_over_ice_agrees_with_psychrolib(temperature_f):
    """To half of the last decimal that is kept, and what their own rounding of a logarithm may do."""
    theirs = psychrolib.GetSatVapPres(temperature_f)
    assert float(outdoor_pressure_psi(F(temperature_f))) == pytest.approx(theirs, rel=2e-8, abs=6e-10)


# The drying law

# Time x vapor pressure x missing humidity at the rows of the table, typed from our record of it [h psi].
ROWS = {
    0: "3.30", 20: "3.29", 40: "3.11", 50: "3.09", 60: "2.94", 70: "2.91", 80: "2.78", 85: "2.73", 90: "2.50", 95: "2.48", 98: "2.20",
}  # fmt: skip


def test_the_rows_of_the_drying_table():
    assert {pct for pct, _ in law.DRYING_ROWS} == set(ROWS)
    for pct, constant in ROWS.items():
        assert law.drying_constant_h_psi(F(pct)) == F(constant)
    assert law.drying_constant_h_psi(F(100)) == F(ROWS[98])


def test_days_have_24_hours():
    assert drying.band_text(F(4 * 24), F(10 * 24)) == "4 to 10 days"
    gallon_a_day_lb_per_h = removal_lb_per_h(F(8))
    assert float(gallon_a_day_lb_per_h * 24) == pytest.approx(float(GALLON / POUND) * 997.97, rel=1e-4)  # at 70 degF


# What a laboratory writes, and slopes


@pytest.mark.parametrize("written", ["trace", "<1"])
def test_a_trace_is_some_and_under_one_percent(written):
    assert 0 < read_result("texture: " + written).percent < 1


def test_a_slope_rises_over_twelve_inches():
    """24:12 is the steepest that is read: two inches for each inch."""
    rooms, faults = read_rooms("A: 10 x 10 slope 2:1 N")
    assert rooms and not faults
    rooms, faults = read_rooms("A: 10 x 10 slope 2.01:1 N")
    assert faults


def test_a_choice_of_sheet_width_means_the_inches_that_it_is_called():
    named = {name: int(label.removesuffix(" in")) for name, label in SHEET_WIDTH.choices if name != "both"}
    assert set(named) == {"48", "54"}
    assert dict(SHEET_WIDTHS_IN) == {name: (wide,) for name, wide in named.items()} | {"both": tuple(named.values())}
