"""Drying: the law's shape, the edges where it refuses, and PsychroLib as the oracle for moist air."""

from fractions import Fraction

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import catalogue
from calc.air import vapor_pressure_psi
from calc.drying import band_text, drying_band_h

F = Fraction
BASIS = F(1, 16)
psychrolib.SetUnitSystem(psychrolib.IP)


@given(st.fractions(min_value=33, max_value=212, max_denominator=100))
def test_vapor_pressure_agrees_with_psychrolib(temperature_f):
    theirs = psychrolib.GetSatVapPres(float(temperature_f))
    assert float(vapor_pressure_psi(temperature_f)) == pytest.approx(theirs, rel=2e-8)


def test_vapor_pressure_refuses_ice():
    with pytest.raises(ValueError, match="32 to 392"):
        vapor_pressure_psi(F(31))


def test_published_ratios():
    """Formula ratios: t(50 F)/t(70 F) = 2.040, t(90 %)/t(50 %) at 70 F = 5.00 (computed with PsychroLib 2.5.0)."""
    at_50, at_70 = drying_band_h(F(50), F(50), BASIS).law_h, drying_band_h(F(70), F(50), BASIS).law_h
    assert abs(at_50 / at_70 - F("2.040")) <= F("0.0005")
    assert drying_band_h(F(70), F(90), BASIS).law_h / at_70 == 5


temperatures = st.integers(min_value=32, max_value=98).map(F)
humidities = st.integers(min_value=0, max_value=97).map(F)
thicknesses = st.fractions(min_value=F(1, 64), max_value=F(5, 4), max_denominator=64)


@given(st.integers(min_value=40, max_value=90).map(F), st.integers(min_value=0, max_value=90).map(F))
def test_the_published_range(temperature_f, humidity_pct):
    """The graph's contours run from 2 h to 5 days and its axes on; 40-90 F, 0-90 % should fall in about 2 h to 10 d."""
    band = drying_band_h(temperature_f, humidity_pct, BASIS)
    assert 2 <= band.law_h <= 11 * 24


@given(temperatures, humidities, thicknesses)
def test_the_band_holds_the_law(temperature_f, humidity_pct, thickness_in):
    band = drying_band_h(temperature_f, humidity_pct, thickness_in)
    assert 0 < band.low_h < band.law_h < band.high_h


@given(temperatures, humidities, thicknesses)
def test_warmer_drier_thinner_is_never_slower(temperature_f, humidity_pct, thickness_in):
    here = drying_band_h(temperature_f, humidity_pct, thickness_in).high_h
    assert drying_band_h(min(temperature_f + 5, F(98)), humidity_pct, thickness_in).high_h <= here
    assert drying_band_h(temperature_f, max(humidity_pct - 5, F(0)), thickness_in).high_h <= here
    assert drying_band_h(temperature_f, humidity_pct, thickness_in / 2).high_h <= here


def test_humidity_matters_more_than_heat():
    """The Drywall Finishing Council's finding: over the usual range, humidity moves the time more."""
    middle = drying_band_h(F(70), F(50), BASIS).law_h
    by_heat = drying_band_h(F(60), F(50), BASIS).law_h / middle
    by_humidity = drying_band_h(F(70), F(80), BASIS).law_h / middle
    assert by_humidity > by_heat > 1


def ask(**inputs):
    answer, faults = catalogue.work_out("drying", {name: str(value) for name, value in inputs.items()})
    return answer, faults


@pytest.mark.parametrize(
    ("inputs", "field", "says"),
    [
        ({"temperature_f": 31.9}, "temperature_f", "freezes"),
        ({"temperature_f": "-5 C"}, "temperature_f", "freezes"),
        ({"temperature_f": 99}, "temperature_f", "ends at 98"),
        ({"humidity_pct": 98}, "humidity_pct", "cannot dry"),
        ({"humidity_pct": 100}, "humidity_pct", "cannot dry"),
        ({"humidity_pct": 140}, "humidity_pct", "0 to 100"),
    ],
)
def test_what_cannot_dry_is_refused(inputs, field, says):
    answer, faults = ask(**inputs)
    assert answer is None
    assert [fault.field for fault in faults] == [field]
    assert says in faults[0].message
    assert faults[0].example


def test_frozen_and_soaked_are_both_told():
    _, faults = ask(temperature_f=20, humidity_pct=99)
    assert [fault.field for fault in faults] == ["temperature_f", "humidity_pct"]


@pytest.mark.parametrize(("temperature_f", "warned"), [("54.9", True), ("55", False)])
def test_cold_is_warned_of_at_its_edge(temperature_f, warned):
    answer, _ = ask(temperature_f=temperature_f)
    assert ("cold-compound" in [one.id for one in answer.cautions]) is warned


def test_the_thickness_basis_is_stated_in_every_answer():
    answer, _ = ask(temperature_f=68)
    assert any("1/16 in" in note for note in answer.notes)


def test_a_deep_texture_makes_the_first_coat_slow():
    flat, _ = ask(texture_depth_in=0, coats=2)
    deep, _ = ask(texture_depth_in="3/16", coats=2)
    values = {line.name: line.value for line in deep.lines}
    assert values["first_coat_hours_high"] > values["hours_high"]
    assert "thick-fill" in [one.id for one in deep.cautions]
    assert "thick-fill" not in [one.id for one in flat.cautions]


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [
        ("2.3", "4.1", "2 to 4.5 hours"),
        ("18.07", "30.1", "18 to 31 hours"),
        ("60", "100", "2.5 to 4.5 days"),
        ("9.9", "10", "9 to 10 hours"),
    ],
)
def test_a_band_rounds_outward(low, high, text):
    assert band_text(F(low), F(high)) == text
