"""Drawings and HTML: coordinates, escapes, and that nothing leaves the sheet."""

import json
import re
import sys
import xml.etree.ElementTree as ElementTree
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import browser, catalogue
from calc.evidence import cautions
from calc.evidence.sources import SOURCES
from calc.numbers import words
from calc.render import form, html, svg
from calc.render.escape import escaped
from handbook.evidence import check_table

sys.path.append(str(Path(__file__).resolve().parents[1] / "engines"))
from questions import questions

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
    return ElementTree.fromstring(re.search("<svg.*?</svg>", svg.figure(answer.drawing, "x"), re.DOTALL).group())


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


SKETCHED = (
    "A: 20' x 14' slope 4:12 E", "Hall: 4' 6 1/2\" x 30'", "60 x 5", "20 x", "x 14", "Den: E 14' S 6' W 4' S 5' W 10' N 11'", "Den: E 14' S 6' W 4' S 5' W 10' N 10'",
    "E 14 S 6 W 4", "E 14", "E 10 N ten", "A: E 2 N 30 W 2 S 29", "1 x 1", "200' x 200'", "A: 5' x 40' slope 4:12 N less 1 x 1 at 1 x 1",
)  # fmt: skip


@pytest.mark.parametrize("text", SKETCHED)
@pytest.mark.parametrize("show", ["customary", "metric"])
def test_a_sketch_stays_on_its_sheet_its_lettering_apart_and_in_the_room_kept_for_it(text, show):
    (found,) = json.loads(browser.answer("sketch", json.dumps({"rooms": text, "show_in": show})))["sketch"]
    root = ElementTree.fromstring(found["plan"])
    _, _, width, height = (float(part) for part in root.get("viewBox").split())
    assert height <= 202, "the page keeps 11.25rem for it"
    for one in [*root.iter("polygon"), *root.iter("polyline")]:
        for x, y in (point.split(",") for point in one.get("points").split()):
            assert 0 <= float(x) <= width and 0 <= float(y) <= height
    boxes = []
    for one in root.iter("text"):
        x, y, long = float(one.get("x")), float(one.get("y")), 7 * len(one.text)
        left = {"start": x, "middle": x - long / 2, "end": x - long}[one.get("text-anchor")]
        assert left >= -4 and left + long <= width + 4 and 8 <= y <= height, one.text
        boxes.append((left, y - 9, left + long, y, one.text))
    for at, one in enumerate(boxes):
        for other in boxes[at + 1 :]:
            apart = one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]
            assert apart, (one[4], other[4])


@pytest.mark.parametrize(
    ("text", "marked", "named"),
    [
        ("Den: E 14' S 6' W 4' S 5' W 10' N 10'", 2, "wall 6: 10' 0\""), ("E 14 S 6 W 4", 2, "wall 4?"), ("E 14 S 6", 2, "wall 3?"), ("20 x", 1, "side 2?"), ("x 14", 1, "side 1?"),
        ("A: E 10 N 10 W 5 S 12 W 5 N 2", 1, "wall 4: 12' 0\""), ("E 10 N ten", 1, "wall 2?"), ("20 x 14", 0, "20' 0\""),
    ],
)  # fmt: skip
def test_a_sketch_marks_the_wall_at_fault_and_names_it(text, marked, named):
    (found,) = json.loads(browser.answer("sketch", json.dumps({"rooms": text})))["sketch"]
    root = ElementTree.fromstring(found["plan"])
    assert len([one for one in root.iter("polyline") if one.get("class").startswith("wrong")]) == marked
    assert named in [one.text for one in root.iter("text")]


@pytest.mark.parametrize("text", ["", "junk", "; ;", "x" * 20_000, "1 x 1;" * 41])
def test_a_sketch_of_nothing_is_nothing(text):
    found = json.loads(browser.answer("sketch", json.dumps({"rooms": text})))["sketch"]
    assert not [one for one in found if one["plan"]]


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


DRAWN = ("takeoff", "reach", "sheeting", "skim", "carry", "board", "panels", "drying", "humidity", "plan", "compare")


def test_what_is_drawn():
    found = [
        one.name for one in catalogue.every() if catalogue.work_out(one.name, dict(one.example))[0].drawing is not None
    ]
    assert tuple(found) == DRAWN


@pytest.mark.parametrize("name", DRAWN)
def test_the_text_form_of_a_drawing_says_its_figures(name):
    answer, _ = catalogue.work_out(name, dict(catalogue.find(name).example))
    assert answer.drawing.description
    for dimension in getattr(answer.drawing, "dimensions", ()):
        assert dimension.text in answer.drawing.description
    for row in getattr(answer.drawing, "rows", ()):
        for _, _, told in row.items if row.kind != "names" else ():
            assert told.split(" at ")[-1].removeprefix("center ") in answer.drawing.description
    for curve in getattr(answer.drawing, "curves", ()):
        for figure in re.findall(r"[\d.]+", curve.end_told):
            assert figure in answer.drawing.description
    for bar in getattr(answer.drawing, "bars", ()):
        assert f"{bar.name}: {bar.told}" in answer.drawing.description


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


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_a_caution_that_always_holds_is_declared_and_one_that_figures_raise_is_not(calculator):
    """Over random questions: what `always` names stands in every answer, and what stands in every answer is named there."""
    answers = [catalogue.work_out(calculator.name, one)[0] for one in asked(calculator)]
    stood = [{one.id for one in answer.cautions} for answer in answers if answer is not None]
    assert len(stood) >= 2
    assert set.intersection(*stood) == set(calculator.always)


def asked(calculator):
    """Random questions, and those of the evidence, where a random one is seldom answered."""
    rows = [vector["inputs"] for name, vector in check_table.vectors() if name == calculator.name]
    return rows + questions(calculator, 60)


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_the_figure_stands_below_what_it_raised_and_above_what_always_holds(calculator):
    for inputs in asked(calculator):
        answer, _ = catalogue.work_out(calculator.name, inputs)
        if answer is None:
            continue
        before, after = html.answer(answer).split('<p class="figure">')
        for one in answer.cautions:
            held, grave = one.id in calculator.always, one.signal in html.GRAVE
            assert (f'data-caution="{one.id}"' in before) == (grave and not held), one.id
            assert (html.short(one) in after) == held, one.id
            assert (html.caution(one) in before + after) == (not held), one.id


def test_a_row_opens_to_all_that_the_caution_says():
    for one in cautions.CAUTIONS:
        for told in (False, True):
            summary, rest = html.short(one, told).split("</summary>")
            assert f"{one.signal}</span>" in summary and escaped(one.hazard) in summary
            assert (escaped(one.avoidance) in summary) == told
            for part in (one.hazard, one.consequence, one.avoidance):
                assert escaped(part) in summary + rest
