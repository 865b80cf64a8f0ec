"""Quantities: units by a reference library, refusals where a formula puts together what does not fit, and workings of any formula."""

from fractions import Fraction as F

import pytest
import reader
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.numbers import units
from calc.numbers.quantity import added, fact, greatest, least, root, rounded_up, sources_of
from calc.numbers.quantity import given as figure
from calc.numbers.working import number, working

EXPRESSIONS = {  # what each unit of the table is, for the reference library
    "": ("", ""), "money": ("", ""), "%": ("percent", "percent"), "in": ("inch", "millimeter"), "ft": ("foot", "meter"), "mil": ("inch/1000", "micrometer"),
    "sqin": ("inch**2", "centimeter**2"), "sqft": ("foot**2", "meter**2"), "cuin": ("inch**3", "centimeter**3"), "cuft": ("foot**3", "meter**3"),
    "cuyd": ("yard**3", "meter**3"), "gal": ("gallon", "liter"), "floz": ("fluid_ounce", "milliliter"), "lb": ("pound", "kilogram"), "h": ("hour", "hour"),
    "day": ("day", "day"), "psi": ("psi", "kilopascal"), "h psi": ("hour*psi", "hour*kilopascal"), "inwc": ("inch_H2O", "pascal"),
    "psf": ("pound/foot**2", "kilogram/meter**2"), "lb/gal": ("pound/gallon", "kilogram/liter"), "lb/cuft": ("pound/foot**3", "kilogram/meter**3"),
    "lb/cuyd": ("pound/yard**3", "kilogram/meter**3"), "lb/sqin": ("pound/inch**2", "kilogram/centimeter**2"), "sqin/sqft": ("inch**2/foot**2", "centimeter**2/meter**2"),
    "gr/lb": ("grain/pound", "gram/kilogram"), "cfm": ("foot**3/minute", "meter**3/hour"),
    "cfm/sqft/rootinwc": ("foot**3/minute/foot**2/inch_H2O**0.5", "meter**3/hour/meter**2/pascal**0.5"), "per_h": ("1/hour", "1/hour"),
    "pt/day": ("pint/day", "liter/day"), "gal/100sqft": ("gallon/(100*foot**2)", "liter/meter**2"), "gal/1000sqft": ("gallon/(1000*foot**2)", "liter/(100*meter**2)"),
    "ft/1000sqft": ("foot/(1000*foot**2)", "meter/(100*meter**2)"), "lb/1000sqft": ("pound/(1000*foot**2)", "kilogram/(100*meter**2)"),
    "per_1000sqft": ("1/(1000*foot**2)", "1/(100*meter**2)"), "sqft/gal": ("foot**2/gallon", "meter**2/liter"), "Btu/h": ("Btu/hour", "watt"),
    "kW": ("kilowatt", "kilowatt"), "lb/Btu": ("pound/Btu", "kilogram/kilowatt/hour"), "Btu/lb": ("Btu/pound", "watt*hour/kilogram"),
    "Btu/cuft/dF": ("Btu/foot**3/delta_degF", "watt*hour/meter**3/delta_degC"), "dF": ("delta_degF", "delta_degC"),
}  # fmt: skip


def parsed(expression):
    return reader.UNITS.parse_expression(expression or "1") * reader.UNITS.dimensionless


def test_the_table_of_units_is_looked_at_whole():
    assert set(units._ROWS) == set(EXPRESSIONS) | {"F"}


@pytest.mark.parametrize("unit", EXPRESSIONS)
def test_a_unit_is_what_the_reference_library_says(unit):
    customary, metric = EXPRESSIONS[unit]
    assert units.kind_of(units.made_of(unit)) == units.kind_of(units.made_of(unit, True))
    wanted = (parsed(customary) / parsed(metric)).to_base_units()
    assert wanted.dimensionless
    # kPa, kWh and water stand to seven figures
    assert float(units.in_metric(F(1), unit)) == pytest.approx(float(wanted.magnitude), rel=1e-6)


@pytest.mark.parametrize("unit", [name for name in EXPRESSIONS if name not in ("", "%", "money")])
@pytest.mark.parametrize("other", ["in", "sqft", "gal", "lb", "h", "psi", "inwc", "Btu/h", "dF"])
def test_what_may_be_added_is_what_measures_the_same(unit, other):
    def dimension(name):
        return parsed(EXPRESSIONS[name][0]).dimensionality

    special = {"inwc", "cfm/sqft/rootinwc", "psi", "h psi", "lb/sqin"}  # a gauge, a press and a weight are kept apart
    if unit in special or other in special:
        return
    if dimension(unit) == dimension(other):
        left = figure(1, unit) + figure(1, other)
        wanted = 1 + (parsed(EXPRESSIONS[other][0]) / parsed(EXPRESSIONS[unit][0])).to_base_units().magnitude
        assert float(left.to(unit)) == pytest.approx(float(wanted), rel=1e-6)
    else:
        with pytest.raises(units.UnitFault):
            figure(1, unit) + figure(1, other)
        with pytest.raises(units.UnitFault):
            figure(1, unit).to(other)


def test_a_unit_that_does_not_fit_is_refused_where_it_is_asked_for():
    for wrong in (lambda: figure(1, "sqft") + figure(1, "ft"), lambda: (figure(1, "sqft") * figure(1, "in")).to("sqft"), lambda: figure(1, "gal").to("lb"), lambda: 1 + figure(1, "in"), lambda: figure(1, "moons"), lambda: figure(68, "F") + figure(50, "F")):  # fmt: skip
        with pytest.raises((units.UnitFault, KeyError)):
            wrong()
    with pytest.raises(TypeError):
        figure(1, "in") * 0.5


def test_sources_travel_and_a_line_told_before_keeps_its_own():
    area, rate = figure(280, "sqft"), fact(F(9, 10), "gal/100sqft", "common-practice")
    assert sources_of(area * rate) == ("common-practice",)
    assert sources_of(area * 2) == ("your-figure",)
    assert sources_of((area * rate).cited("iapws-water")) == ("common-practice", "iapws-water")


def test_metric_workings_are_metric():
    volume = figure(100, "sqft") * figure(F(1, 2), "in")
    assert working(volume, "gal", True).count("mm") == 1
    assert "ft" not in working(volume, "gal", True)
    assert working(volume, "gal", False) == "100 sq ft × 0.5 in × 144 ÷ 231 = 31.17 gal"


def test_a_number_keeps_four_figures_and_whole_ones_stand_in_full():
    shown = {
        "1604.1667": "1,604",
        "0.000094": "0.000094",
        "12.34567": "12.35",
        "280": "280",
        "123456.7": "123,457",
        "9.99996": "10",
    }
    for text, wanted in shown.items():
        assert number(F(text), "", False) == wanted
    assert number(F(-5), "dF", True) == "−2.778 °C"


LENGTHS = st.builds(figure, st.fractions(F(1, 64), 400), st.sampled_from(["in", "ft"]))
PURE = st.one_of(
    st.builds(figure, st.integers(1, 40), st.just("")), st.builds(lambda pct: 1 + figure(pct, "%"), st.integers(0, 90))
)
LONG = st.recursive(
    LENGTHS,
    lambda inner: st.one_of(
        st.builds(lambda a, b: a + b, inner, inner),
        st.builds(lambda a, b: a * b, inner, PURE),
        st.builds(lambda a, b: a / b, inner, PURE),
        st.builds(lambda a, b, c: a * (b / c), PURE, inner, PURE),
        st.builds(lambda a, b: greatest(a.named("one", "ft"), b.named("other", "ft")), inner, inner),
        st.builds(lambda a, b: least(a.named("one", "ft"), b.named("other", "in")), inner, inner),
        st.builds(lambda a: a.named("first", "ft"), inner),
        st.builds(lambda a, b: rounded_up(a / b) * b, inner, inner),
        st.builds(lambda a, b: added([a, b, a]), inner, inner),
        st.builds(lambda a: root((a / figure(1, "ft")).cited("geometry"), "") * figure(1, "ft"), inner),
    ),
    max_leaves=5,
)


@settings(max_examples=300)
@given(LONG, st.booleans())
def test_the_working_of_any_formula_adds_up(length, metric):
    """Formulas put together at random, read back by the reader of workings."""
    value = length.to("ft")
    reader.check(working(length, "ft", metric), str(round(value, 6)), "ft", 6)
