"""Lengths and quantities as people write them; unit factors against the pint library."""

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.numbers import measure, words

F = Fraction

WAYS = [
    ("14' 6 1/2\"", F(349, 2)), ("14'6.5\"", F(349, 2)), ("14-6.5", F(349, 2)), ("14-6 1/2", F(349, 2)), ("14' 6-1/2\"", F(349, 2)),
    ("14’ 6½″", F(349, 2)), ("14'-6\"", F(174)), ("14ft 6in", F(174)), ("14 feet 6 inches", F(174)), ("14' 6", F(174)),
    ("14'", F(168)), ("14", F(168)), ("14.54 ft", F("174.48")), ("6\"", F(6)), ("6 1/2 in", F(13, 2)), ("1/16 in", F(1, 16)),
    ("254 mm", F(10)), ("25.4cm", F(10)), ("4.43 m", F(443000, 2540)), ("443 cm", F(443000, 2540)), ("  3 ' ", F(36)), ("0", F(0)),
    ("1,000 mm", F(10000, 254)), ("14' 0\"", F(168)), ("½\"", F(1, 2)), ("14 FT", F(168)), (".5'", F(6)),
    ("1-1/2 in", F(3, 2)), ('1-1/2"', F(3, 2)), ("6-1/2 inches", F(13, 2)), ("14-6 in", F(174)), ("14-6-1/2", F(349, 2)), ("6-1/2 ft", F(78)), ("6½ in", F(13, 2)), ("14ft2in", F(170)), ("14 ft 2", F(170)),
]  # fmt: skip


@pytest.mark.parametrize(("text", "inches"), WAYS)
def test_ways_of_writing_a_length(text, inches):
    assert measure.read_length(text, "ft") == inches


NOT_LENGTHS = [
    ("14' 13\"", "less than 12"), ("1/0", "0 below the line"), ("-3", "negative"), ("−3'", "negative"), ("", "missing"), ("14.5' 6\"", "whole feet"),
    ("abc", "not a number"), ("14' 3 m", "only inches"), ("3,5", "point, not a comma"), ("14-", "missing"), ("1 2 3", "not a number"), ("1 5/4", "not a number"),
    ("9" * 30, "too many digits"), ("1e5", "not a number"), ("nan", "not a number"), ("inf", "not a number"), (".", "not a number"), ("²", "not a number"), ("٣", "not a number"),
    ("1-1/2", "it can mean 1 1/2 ft or 1' 1/2\""), ("11½2", "not a number"), ("0½10", "not a number"), ("½½", "not a number"), ("10 ft2", "an area"), ("10 ft²", "an area"), ("10 ft3", "a volume"), ("1/1001 in", "at most 1,000"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "says"), NOT_LENGTHS)
def test_what_is_no_length_says_why(text, says):
    with pytest.raises(measure.MeasureFault, match=says):
        measure.read_length(text, "ft")


@given(st.integers(min_value=0, max_value=200 * 12 * 16))
def test_feet_and_inches_read_back_as_written(sixteenths):
    inches = F(sixteenths, 16)
    assert measure.read_length(measure.feet_and_inches(inches), "in") == inches


@given(st.text(max_size=12))
def test_any_text_is_a_length_or_a_sentence(text):
    try:
        assert measure.read_length(text, "in") >= 0
    except measure.MeasureFault as fault:
        sentence = str(fault)
        assert sentence


UNITS = pint.UnitRegistry(non_int_type=F)


@pytest.mark.parametrize(
    ("text", "unit", "pint_from", "pint_to"),
    [
        ("1 m", "in", "meter", "inch"),
        ("1 m", "ft", "meter", "foot"),
        ("1 m2", "sqft", "meter**2", "foot**2"),
        ("1 L", "gal", "liter", "gallon"),
        ("1 kg/l", "lb/gal", "kilogram/liter", "pound/gallon"),
    ],
)
def test_units_agree_with_pint(text, unit, pint_from, pint_to):
    theirs = UNITS.Quantity(F(1), pint_from).to(pint_to).magnitude
    assert measure.read_quantity(text, unit) == F(theirs)


@pytest.mark.parametrize(
    ("text", "degrees"),
    [("20 C", F(68)), ("-40 °C", F(-40)), ("68", F(68)), ("68 °F", F(68)), ("−10", F(-10)), ("37.5 c", F("99.5"))],
)
def test_temperatures(text, degrees):
    assert measure.read_quantity(text, "F") == degrees


@pytest.mark.parametrize(
    ("unit", "pint_from", "pint_to", "ending"),
    [
        ("sqft", "foot**2", "meter**2", " m²"),
        ("cuft", "foot**3", "meter**3", " m³"),
        ("gal", "gallon", "liter", " L"),
        ("lb", "pound", "kilogram", " kg"),
        ("psf", "pound/foot**2", "kilogram/meter**2", " kg/m²"),
    ],
)
def test_metric_output_agrees_with_pint(unit, pint_from, pint_to, ending):
    theirs = F(UNITS.Quantity(F(1234), pint_from).to(pint_to).magnitude)
    assert measure.shown(F(1234), unit, 2, "metric") == words.short_decimal(theirs, 2) + ending


@pytest.mark.parametrize(
    ("value", "unit", "places", "show_in", "text"),
    [
        (F(349, 24), "ft", 2, "customary", "14' 6 1/2\""),
        (F(1, 16), "in", 4, "customary", "1/16 in"),
        (F(3, 64), "in", 4, "customary", "3/64 in"),
        (F("0.07"), "in", 4, "customary", "0.07 in"),
        (F(9, 4), "in", 4, "customary", "2 1/4 in"),
        (F(1, 16), "in", 4, "metric", "1.6 mm"),
        (F(14), "ft", 2, "metric", "4.267 m"),
        (F(68), "F", 0, "metric", "20 °C"),
        (F(68), "F", 0, "customary", "68 °F"),
        (F(1, 2), "%", 1, "metric", "0.5 %"),
        (F(12345), "", 0, "customary", "12,345"),
    ],
)
def test_shown(value, unit, places, show_in, text):
    assert measure.shown(value, unit, places, show_in) == text


@given(st.fractions(min_value=-(10**6), max_value=10**6, max_denominator=10**4), st.integers(min_value=0, max_value=6))
def test_decimals_round_once_and_keep_the_value(value, places):
    text = words.plain_decimal(value, places)
    assert abs(F(text) - value) <= F(1, 2 * 10**places)
    grouped = words.decimal(value, places).replace(",", "").replace(words.MINUS, "-")
    assert F(grouped) == F(text)


def test_json_text_is_json():
    import json

    value = {"z": [1, None, True, False, words.Number("38.96")], "a": 'tab\t"q" \\ \x01 é ″'}
    assert json.loads(words.json_text(value)) == {"z": [1, None, True, False, 38.96], "a": 'tab\t"q" \\ \x01 é ″'}
    with pytest.raises(TypeError):
        words.json_text(0.5)
