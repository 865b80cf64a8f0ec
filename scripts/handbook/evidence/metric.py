"""Examples in the units of an edition's readers: what stands in feet in the book stands in metric in a metric edition.

An example is converted by the calculators' own words for a quantity, and taken only where the field itself takes it.
"""

import copy
import dataclasses
import json
import re
from fractions import Fraction
from pathlib import Path

from calc.core import fields
from calc.core.answer import Calculator
from calc.core.fields import Field
from calc.numbers import measure
from calc.numbers.measure import MeasureFault

EDITION = Path(__file__).resolve().parents[3] / "edition.json"  # written where a firm's edition is laid out
METRIC = EDITION.exists() and json.loads(EDITION.read_text(encoding="utf-8"))["units"] == "metric"
ONE_QUANTITY = ("length", "area", "volume", "temperature", "rate")
AS_BUILT = (
    "joist_spacing_in",
    "furring_spacing_in",
)  # set in inches when the house was built: 610 mm would be over 24 in
METERS = re.compile(r"\d+\.\d+(?= (?:m|°C)$)")  # nobody measures a room to the millimeter, or its air to a tenth
WITHIN = re.compile(r"""\d+' \d+"|\d+'|\d+(?:/\d+)? in\b|\d+ sq ft|(?<=: )\d+(?=;|$)""")  # a quantity inside an entry


def example_of(field: Field, text: str) -> str:
    """Return the example `text` of `field` in metric; as it is where it holds no quantity, or the field would not take it."""
    found = text
    if field.name in AS_BUILT:
        return text
    if field.kind in ONE_QUANTITY:
        found = _shown(text, field.unit)
    elif field.kind in ("rooms", "list"):
        found = WITHIN.sub(
            lambda one: _shown(one.group(), "in" if "in" in one.group() else "ft" if "'" in one.group() else "sqft"),
            text,
        )
    return text if fields.read((field,), {field.name: found})[1] else found


def _shown(text: str, unit: str) -> str:
    try:
        value = measure.read_quantity(text, unit)
    except MeasureFault:
        return text
    told = [measure.shown(value, unit, 1, show) for show in ("metric", "customary")]
    if told[0] == told[1]:
        return text
    return METERS.sub(lambda one: f"{float(one.group()):.2f}".rstrip("0").rstrip("."), told[0])


def in_metric(calculator: Calculator) -> Calculator:
    """Return the calculator with the examples of its fields in metric, for a page; its answers are the same."""
    found = copy.copy(calculator)
    found.fields = tuple(dataclasses.replace(one, example=example_of(one, one.example)) for one in calculator.fields)
    return found


def degrees(fahrenheit: tuple[int, ...]) -> tuple[str, ...]:
    """Return the temperatures of a table as this edition's readers type them: in metric every 5 °C from the first on."""
    if not METRIC:
        return tuple(f"{one} °F" for one in fahrenheit)
    first = round(Fraction(fahrenheit[0] - 32) * 5 / 9)
    return tuple(f"{first + 5 * at} °C" for at in range(len(fahrenheit)))
