"""Drawings and HTML: coordinates, escapes, and that nothing leaves the sheet."""

import re
import xml.etree.ElementTree as ElementTree
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import catalogue
from calc.evidence.sources import SOURCES
from calc.numbers import words
from calc.render import form, html, svg

ROOMS = "A: 20' x 14'; B: E 14' S 6' W 4' S 5' W 10' N 11'; C: 3' x 40' slope 4:12; D: 40' x 3'"


@given(st.integers(min_value=0, max_value=10_000))
def test_a_coordinate_is_written_in_tenths(tenths):
    assert svg._number(tenths) == words.plain_decimal(Fraction(tenths, 10), 1)


ANSWERS = [
    ("takeoff", {"rooms": ROOMS}),
    ("takeoff", {"rooms": "A: 1' x 1'", "show_in": "metric"}),
    ("skim", {"area_sqft": "10", "texture_depth_in": "0", "coats": "6", "coat_thickness_in": "1/4"}),
    ("skim", {"area_sqft": "10", "texture_depth_in": "1", "coats": "1", "coat_thickness_in": "1/64"}),
    ("skim", {"area_sqft": "10", "texture_depth_in": "1/16", "coats": "1"}),
    ("drying", {"temperature_f": "33", "humidity_pct": "97"}),
    ("drying", {"temperature_f": "98", "humidity_pct": "0"}),
    ("carry", {}),
    ("carry", {"hall_beyond_ft": "6", "room_along_ft": "30", "show_in": "metric"}),
    ("carry", {"hall_length_ft": "4", "hall_width_in": "200", "room_deep_ft": "4"}),
]


def drawn(name, inputs):
    answer, faults = catalogue.work_out(name, inputs)
    assert answer is not None, faults
    return ElementTree.fromstring(svg.svg(answer.drawing, "x"))


@pytest.mark.parametrize(("name", "inputs"), ANSWERS)
def test_a_drawing_stays_on_its_sheet(name, inputs):
    root = drawn(name, inputs)
    _, _, width, height = (float(part) for part in root.get("viewBox").split())
    for shape in root.iter("polygon"):
        for x, y in (point.split(",") for point in shape.get("points").split()):
            assert 0 <= float(x) <= width and 0 <= float(y) <= height
    for text in root.iter("text"):
        x, y, long = float(text.get("x")), float(text.get("y")), 7 * len(text.text)
        left = {"start": x, "middle": x - long / 2, "end": x - long}[text.get("text-anchor")]
        assert left >= -4 and left + long <= width + 4, text.text
        assert 8 <= y <= height, text.text


@pytest.mark.parametrize(("name", "inputs"), ANSWERS)
def test_no_two_letterings_cover_each_other(name, inputs):
    boxes = []
    for text in drawn(name, inputs).iter("text"):
        x, y, long = float(text.get("x")), float(text.get("y")), 6.5 * len(text.text)
        left = {"start": x, "middle": x - long / 2, "end": x - long}[text.get("text-anchor")]
        boxes.append((left, y - 9, left + long, y, text.text))
    for at, one in enumerate(boxes):
        for other in boxes[at + 1 :]:
            apart = one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]
            assert apart, (one[4], other[4])


def test_a_plan_is_to_scale():
    root = drawn("takeoff", {"rooms": "A: 20' x 14'"})
    points = [tuple(map(float, point.split(","))) for point in root.find(".//polygon").get("points").split()]
    wide, deep = (
        max(x for x, _ in points) - min(x for x, _ in points),
        max(y for _, y in points) - min(y for _, y in points),
    )
    assert wide / deep == pytest.approx(20 / 14, rel=0.005)


def test_typed_markup_is_escaped_everywhere():
    answer, _ = catalogue.work_out("takeoff", {"rooms": '<i onclick="x">&: 10 x 10'})
    for text in (html.answer(answer), svg.svg(answer.drawing, "x")):
        assert "<i " not in text and "&lt;i onclick=&quot;x&quot;&gt;&amp;" in text


DRAWN = ("takeoff", "reach", "sheeting", "skim", "carry", "board", "panels", "drying", "humidity")


def test_what_is_drawn():
    found = [
        one.name for one in catalogue.every() if catalogue.work_out(one.name, dict(one.example))[0].drawing is not None
    ]
    assert tuple(found) == DRAWN


@pytest.mark.parametrize("name", DRAWN)
def test_the_text_form_of_a_drawing_says_its_figures(name):
    answer, _ = catalogue.work_out(name, dict(catalogue.find(name).example))
    assert answer.drawing.description
    for dimension in answer.drawing.dimensions:
        assert dimension.text in answer.drawing.description


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_a_form_has_a_label_and_an_example_for_each_field(calculator):
    answer, _ = catalogue.work_out(calculator.name, dict(calculator.example))
    text = form.section(calculator, calculator.example, answer)
    for field in calculator.fields:
        key = f"{calculator.name}-{field.name}"
        assert f'<label for="{key}">' in text and f'id="{key}-fault"' in text
    assert "placeholder" not in text and 'type="number"' not in text


def test_marks_are_numbered_by_the_register():
    assert [html.number_of(one.id) for one in SOURCES] == list(range(1, len(SOURCES) + 1))
    assert re.search(r'href="#source-geometry"[^>]*><span class="unseen">Source </span>3<', html.mark_of("geometry"))


def test_a_fraction_of_a_sixteenth_is_not_rounded_away():
    from calc.numbers.measure import inches_and_sixteenths

    assert inches_and_sixteenths(Fraction(1, 64)) == "1/64 in"
