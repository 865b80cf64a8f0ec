"""Declarations hold together: names, units, ranges, examples, sources; and every fault is a usable sentence."""

import sys

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import catalogue
from calc.core import fields
from calc.evidence import cautions, sources
from calc.numbers import measure

UNIT_ENDINGS = {
    "in": "_in", "ft": "_ft", "sqft": "_sqft", "gal": ("_gal", "gallons"), "cuft": "_cuft", "cuyd": "_cuyd", "lb": "_lb", "psf": "_psf",
    "psi": "_psi", "lb/gal": "_lb_per_gal", "%": "_pct", "money": "_sum", "F": "_f", "h": ("hours", "hours_low", "hours_high"), "cfm": "_cfm", "mil": "_mil",
    "per_h": "_per_hour", "gal/100sqft": "_gal_per_100sqft", "sqft/gal": "_sqft_per_gal", "pt/day": "_pt_per_day", "Btu/h": "_btu_per_h",
    "gr/lb": "_gr_per_lb", "inwc": "_inwc", "sqin": "_sqin", "h psi": "_h_psi", "kW": "_kw", "": "",
}  # fmt: skip
EVERY_FIELD = [
    pytest.param(one, field, id=f"{one.name} {field.name}") for one in catalogue.every() for field in one.fields
]
EVERY_CALCULATOR = [pytest.param(one, id=one.name) for one in catalogue.every()]


@pytest.mark.parametrize(("calculator", "field"), EVERY_FIELD)
def test_a_field_is_whole(calculator, field):
    assert field.kind in fields.KINDS
    assert field.name.endswith(UNIT_ENDINGS[field.unit])
    assert field.label and field.help.endswith(".") and field.example
    assert sources.source(field.source)
    if field.kind not in ("rooms", "choice", "list", "text"):
        low, high = (measure.read_quantity(text, field.unit) for text in (field.lowest, field.highest))
        assert low < high
        for text in (field.example, field.default or field.example):
            assert low <= measure.read_quantity(text, field.unit) <= high


def test_a_name_means_one_thing_everywhere():
    seen = {}
    for calculator in catalogue.every():
        for field in calculator.fields:
            assert seen.setdefault(field.name, (field.kind, field.unit, field.label)) == (
                field.kind,
                field.unit,
                field.label,
            )


@pytest.mark.parametrize("calculator", EVERY_CALCULATOR)
def test_the_example_works_and_every_line_has_a_source(calculator):
    answer, faults = catalogue.work_out(calculator.name, dict(calculator.example))
    assert answer is not None, faults
    assert answer.figure and answer.sentence.endswith(".")
    for line in answer.lines:
        assert line.name.endswith(UNIT_ENDINGS[line.unit])
        assert line.rule.endswith(".") and line.working and line.sources
        for source_id in line.sources:
            assert sources.source(source_id)
    for one in answer.cautions:
        assert cautions.caution(one.id) == one


@pytest.mark.parametrize(("calculator", "field"), EVERY_FIELD)
@pytest.mark.parametrize("text", ["junk", "1/0", "-1e9", "999999999", "", "140", "<script>", "٣"])
def test_a_bad_text_is_one_sentence_with_the_field_and_an_example(calculator, field, text):
    answer, faults = catalogue.work_out(calculator.name, dict(calculator.example) | {field.name: text})
    if answer is not None:
        return  # the text is good for this field (140 sq ft, an empty field with a default)
    for fault in faults:
        assert fault.field in [one.name for one in calculator.fields]
        assert fault.message.endswith((".", "?")) and fault.example
        assert "Traceback" not in fault.message


def test_unknown_names_are_named():
    _, faults = catalogue.work_out("skim", {"area_sqft": "10", "texture_depth_in": "0", "colour": "red"})
    assert [fault.field for fault in faults] == ["colour"]
    assert "texture_depth_in" in faults[0].message
    _, faults = catalogue.work_out("plaster", {})
    assert "shopping or offer" in faults[0].message


def test_every_fault_comes_at_once():
    _, faults = catalogue.work_out(
        "drying", {"temperature_f": "hot", "humidity_pct": "140", "coats": "1.5", "moon": "full"}
    )
    assert {fault.field for fault in faults} == {"temperature_f", "humidity_pct", "coats", "moon"}


@settings(max_examples=200)
@given(
    st.dictionaries(st.sampled_from([f.name for one in catalogue.every() for f in one.fields]), st.text(max_size=20)),
    st.sampled_from(catalogue.every()),
)
def test_nothing_that_can_be_typed_raises(given, calculator):
    answer, faults = catalogue.work_out(calculator.name, given)
    assert (answer is None) == bool(faults)


def test_signal_words_stand_in_order_and_cautions_have_three_sentences():
    ids = [one.id for one in cautions.CAUTIONS]
    assert len(ids) == len(set(ids))
    for one in cautions.CAUTIONS:
        assert one.signal in cautions.SIGNAL_WORDS
        assert all(part.endswith(".") for part in (one.hazard, one.consequence, one.avoidance))
        assert sources.source(one.source)
    ordered = cautions.in_order(tuple(reversed(cautions.CAUTIONS)))
    ranks = [cautions.SIGNAL_WORDS.index(one.signal) for one in ordered]
    assert ranks == sorted(ranks) and len(ordered) == len(cautions.CAUTIONS)


def test_the_register_of_sources():
    ids = [one.id for one in sources.SOURCES]
    assert len(ids) == len(set(ids))
    kinds = [kind for kind, _ in sources.HOW_KNOWN]
    for one in sources.SOURCES:
        assert one.known in kinds and one.figure.endswith(".")
        assert bool(one.checked_on) == (one.known in ("seen", "quoted", "computed"))


def test_nobody_is_told_that_they_are_exempt_or_safe():
    """Over every word that calc can print."""
    import pathlib

    import calc

    for path in pathlib.Path(calc.__file__).parent.rglob("*.py"):
        text = path.read_text(encoding="utf-8").lower()
        for word in ("exempt", "is safe", "are safe", "completely safe"):
            assert word not in text, (path.name, word)


def test_a_line_is_a_room():
    for text in ("A: 10 x 10\nB: 5 x 5", "A: 10 x 10\r\nB: 5 x 5\n", "A: 10 x 10; B: 5 x 5"):
        answer, faults = catalogue.work_out("takeoff", {"rooms": text})
        assert answer is not None, faults
        assert answer.lines[0].value == 125


@pytest.mark.parametrize("text", [";", " ; ; ", "\n", ";\n;"])
def test_a_list_of_nothing_is_empty(text):
    for calculator in catalogue.every():
        for field in calculator.fields:
            if field.kind not in ("rooms", "list"):
                continue
            given = dict(calculator.example)
            given = {name: value for name, value in given.items() if name not in calculator.one_of} | {field.name: text}
            if field.required or field.name in calculator.one_of:
                answer, faults = catalogue.work_out(calculator.name, given)
                assert answer is None, (calculator.name, field.name)
                assert "empty" in faults[0].message or "Nothing given" in faults[0].message


def test_a_field_says_how_much_it_takes():
    for name, field, text, most in (
        ("takeoff", "rooms", " " * 60_000 + "10 x 10", "10,000"),
        ("takeoff", "rooms", "10 x 10;" * 5_000, "10,000"),
        ("takeoff", "ceiling_height_ft", "8" + " " * 200, "200"),
        ("fixtures", "fixtures", "smoke " + "x" * 20_000, "10,000"),
        ("samples", "place", "x" * 10_000, "200"),
    ):
        answer, faults = catalogue.work_out(name, {field: text})
        assert answer is None
        assert [fault.field for fault in faults] == [field]
        assert "takes at most " + most + "." in faults[0].message and len(faults[0].given) <= 40
    assert catalogue.work_out("takeoff", {"rooms": " " * 5_000 + "10 x 10" + " " * 4_000})[0] is not None
    _, faults = catalogue.work_out("lead", {"disturbed_sqft": "1", "earlier_work": "; ".join(["1 days ago: 1"] * 101)})
    assert [fault.message for fault in faults] == ["101 entries are too many. Give at most 100 at a time."]


@pytest.mark.parametrize("half", ["\ud83d", "10 x 10 \udcff", "Living\ud83d: 10 x 10"])
def test_half_a_mark_is_a_sentence(half):
    for calculator in catalogue.every():
        for field in calculator.fields:
            answer, faults = catalogue.work_out(calculator.name, dict(calculator.example) | {field.name: half})
            assert answer is None
            assert "cannot be read" in next(fault for fault in faults if fault.field == field.name).message
            for fault in faults:
                (fault.field + fault.given + fault.message + fault.example).encode()
    _, faults = catalogue.work_out("takeoff" + half, {half: half})
    (faults[0].message + faults[0].given).encode()
    _, faults = catalogue.work_out("takeoff", {"rooms": "10 x 10", half: half})
    (faults[0].message + faults[0].given + faults[0].field).encode()


LONG = "abc " * 2_490


@pytest.mark.parametrize(("calculator", "field"), EVERY_FIELD)
def test_no_message_is_longer_than_a_few_lines(calculator, field):
    for text in (
        LONG,
        LONG.replace(" ", ""),
        "x: " + LONG,
        "1" * 9_000,
        "10 x 10 less " + LONG,
        "fan " + LONG + ": 7",
        "E 1 N " + LONG,
    ):
        _, faults = catalogue.work_out(calculator.name, dict(calculator.example) | {field.name: text})
        for fault in faults:
            assert len(fault.message) < 700, fault.message


def test_a_question_ends_once_and_an_empty_choice_is_not_offered():
    answer, faults = catalogue.work_out("fixtures", {"fixtures": "hatch", "covering": "x", "face_burns": "maybe"})
    assert answer is None
    assert "Choose skim, board-1/4" in faults[0].message
    assert "“Does the new face burn?” cannot be “maybe”." in faults[1].message


@pytest.mark.parametrize(
    "piece",
    [" ", "1 ", "E 1 ", "N E ", "less ", "at ", "½ ", "1;", "1 x 1;", "smoke;", "' ", "a:", "1 days ago: 1;", "11/7 "],
)
def test_a_full_field_is_read_in_a_moment(piece):
    """Five times as long must not take twenty-five times the steps; counted in calls, which no busy machine changes."""
    fields_read = {
        field.name: field for one in catalogue.every() for field in one.fields if field.kind in ("rooms", "list")
    }
    for name, field in fields_read.items():
        calls = [_calls(field, name, (piece * size)[:size]) for size in (1_900, 9_500)]
        assert calls[1] < 6 * calls[0] + 2_000, (name, calls)


def _calls(field, name, text):
    count = 0

    def seen(*_):
        nonlocal count
        count += 1

    sys.setprofile(seen)
    try:
        fields.read((field,), {name: text})
    finally:
        sys.setprofile(None)
    return count


@pytest.mark.parametrize(
    "text", [":", ": 3", "Hall:", "12 days ago:", "box:", "A: 10 x", "A: x 10", "A: E N", "texture:"]
)
def test_no_message_quotes_nothing(text):
    for calculator in catalogue.every():
        for field in calculator.fields:
            if field.kind in ("rooms", "list"):
                _, faults = catalogue.work_out(calculator.name, dict(calculator.example) | {field.name: text})
                assert not [fault for fault in faults if "“”" in fault.message], faults
