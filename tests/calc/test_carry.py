"""Carrying: the classic corner, and a search through motions as the oracle for every kind of passage."""

import math
import re
from fractions import Fraction

import carry_cases
import motion
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import catalogue
from calc.carry.turns import longest_over_nosing, longest_round
from calc.text.language import TEXTS

F = Fraction


def test_the_classic_corner():
    """Two halls of 36 in and a thin plate: (36^(2/3) + 36^(2/3))^(3/2) = 101.8 in."""
    assert float(longest_round(F(36), F(36), F(0))) == pytest.approx((2 * 36 ** (2 / 3)) ** 1.5, abs=1e-4)


widths = st.integers(24, 72).map(F)


@given(widths, widths)
def test_the_corner_formula(a, b):
    theirs = (float(a) ** (2 / 3) + float(b) ** (2 / 3)) ** 1.5
    assert float(longest_round(a, b, F(0))) == pytest.approx(theirs, rel=1e-5)


def goes_round(a, b, thick, length):
    """Turn the plate degree by degree, its ends on the outer walls: does its inner face clear the inner corner?"""
    for step in range(1, 1800):
        angle = math.radians(step / 20)
        # ends at (x, 0) and (0, y) on the outer walls; the inner corner is at (b, a); the face lies `thick` inside
        x, y = length * math.cos(angle), length * math.sin(angle)
        distance = (a * x + b * y - x * y) / length  # of the corner from the line of the outer face
        if distance < thick - 1e-9:
            return False
    return True


@settings(max_examples=40, deadline=None)
@given(widths, widths, st.sampled_from([F(1, 4), F(1, 2), F(5, 8), F(12)]))
def test_the_corner_against_motions(a, b, thick):
    longest = float(longest_round(a, b, thick))
    assert goes_round(float(a), float(b), float(thick), longest * 0.9995)
    assert not goes_round(float(a), float(b), float(thick), longest * 1.001)


@settings(max_examples=30, deadline=None)
@given(st.integers(50, 90).map(F), st.integers(84, 110).map(F), st.sampled_from([F(1, 2), F(36), F(48)]))
def test_the_head_of_the_stair_against_trying_every_slant(stair, hall, thick):
    angle = math.atan2(7.75, 10)
    best = min(
        (float(stair) - float(thick) * math.cos(one)) / math.sin(one)
        + (float(hall) - float(thick) * math.cos(angle - one)) / math.sin(angle - one)
        for one in (angle * step / 5000 for step in range(1, 5000))
    )
    assert float(longest_over_nosing(stair, hall, thick, F(31, 4), F(10))) == pytest.approx(best, rel=1e-3)


@given(widths, widths, st.integers(0, 12).map(F))
def test_a_wider_way_never_takes_less(a, b, more):
    assert longest_round(a + more, b, F(1, 2)) >= longest_round(a, b, F(1, 2))


def ask(**inputs):
    return catalogue.work_out("carry", {name: str(value) for name, value in inputs.items()})


def lines(**inputs):
    answer, faults = ask(**inputs)
    assert answer is not None, faults
    return {line.name: line.value for line in answer.lines}


def states(**inputs):
    return {item.name: item.state for item in ask(**inputs)[0].items}


# Cases for the suite; `tests/bench/carry.py` looks at hundreds of each.
SUITE = [("door", 40), ("corner", 20), ("stair", 20), ("lift", 30), ("landing", 10)]


@pytest.mark.slow
@pytest.mark.parametrize(("kind", "count"), SUITE)
def test_no_stock_length_is_allowed_that_no_motion_gets_through(kind, count):
    allowed = 0
    for seed in range(count):
        case, stock, found, _ = carry_cases.look(kind, seed)
        assert found, (stock, case)
        allowed += stock > 0
    assert allowed > count / 3  # cases that ask nothing of the search would prove nothing


HOUSE = {"hall_length_ft": 16, "room_along_ft": 12, "room_deep_ft": 12, "door_corner_in": 4}


@pytest.mark.parametrize(
    ("beyond_in", "stock", "beaten"),
    [(0, 8, 9), (81, 9, 10)],
    ids=["the hall ends at the door", "the door in its middle"],
)
def test_a_door_of_30_off_a_hall_of_36(beyond_in, stock, beaten):
    """Room 12 ft square, its corner 4 in from the door: 8 ft where the hall ends at the door, 9 ft where it goes on."""
    found = lines(hall_beyond_ft=f"{beyond_in} in", **HOUSE)
    assert found["longest_stock_ft"] == stock
    for length, gets_in in ((stock, True), (beaten, False)):
        before = 192 - 30 - beyond_in
        assert motion.way_through_door(length * 12, 0.5, 30, 5, 36, before, beyond_in, 144, 144, 110) is gets_in


def test_a_landing_that_turns_back_takes_what_lies_along_it():
    """A stair of 36 in and a landing 36 in deep: 6 ft lies level along the landing, 8 ft does not."""
    found = lines(stair_width_in=36, landing_in=36, landing_kind="half")
    assert F(34, 6) < found["longest_sheet_ft"] <= 6
    assert found["longest_stock_ft"] == 0
    assert lines(stair_width_in=36, landing_in=36)["longest_sheet_ft"] == found["longest_sheet_ft"]  # the worse kind
    assert lines(stair_width_in=36, landing_in=36, landing_kind="quarter")["longest_sheet_ft"] > 6
    slope = (8.25, 9)
    assert motion.way_over_landing("half", 71, 48, 0.5, 36, 36, 72, 80, slope, slope)
    assert not motion.way_over_landing("half", 73, 48, 0.5, 36, 36, 72, 80, slope, slope)


def test_what_is_not_known_counts_as_the_worse():
    both = [lines(**HOUSE, door_corner_side=side)["longest_sheet_ft"] for side in ("far", "near")]
    assert lines(**HOUSE)["longest_sheet_ft"] == min(both) < max(both)


def test_the_other_measures_govern_too():
    usual = lines(**HOUSE)["longest_sheet_ft"]
    assert lines(**HOUSE | {"hall_length_ft": 7})["longest_sheet_ft"] < usual
    wider = HOUSE | {"door_corner_in": 60}
    assert lines(**wider)["longest_sheet_ft"] > usual
    assert lines(**wider | {"room_deep_ft": 3})["longest_sheet_ft"] < lines(**wider)["longest_sheet_ft"]
    assert states(**HOUSE, door_height_in=48)["Door off the hall"] == "no way found"
    lift = carry_cases.OPEN | {"lift_width_in": 60, "lift_depth_in": 96}
    assert lines(**lift, lift_door_in=24)["longest_sheet_ft"] < lines(**lift, lift_door_in=48)["longest_sheet_ft"]
    assert lines(**lift, lift_lobby_in=30)["longest_sheet_ft"] < lines(**lift)["longest_sheet_ft"]
    assert states(**lift, lift_door_height_in=48)["Lift"] == "no way found"
    stair = carry_cases.OPEN | {"stair_width_in": 36}
    assert lines(**stair, stair_head_ft=7)["longest_sheet_ft"] < 7
    assert lines(**stair, stair_rise_in=7, stair_run_in=11)["longest_sheet_ft"] != lines(**stair)["longest_sheet_ft"]
    turn = stair | {"landing_in": 36, "landing_kind": "quarter"}
    assert lines(**turn)["longest_sheet_ft"] != lines(**turn, upper_rise_in=6, upper_run_in=12)["longest_sheet_ft"]
    corner = carry_cases.OPEN | {"turn_from_in": 36, "turn_to_in": 36, "turn_to_length_ft": 7}
    assert lines(**corner)["longest_sheet_ft"] < 7


def test_what_was_not_looked_at_is_named_and_nothing_is_said_to_fit():
    answer, _ = ask(
        turn_from_in=36, turn_to_in=36, stair_width_in=36, landing_in=40, lift_width_in=60, lift_depth_in=96
    )
    for left_out in ("first hall", "second hall", "foot of the stair", "head of the stair", "flights", "lobby"):
        assert left_out in answer.sentence
    assert "upper limit" in answer.sentence
    known, _ = ask()
    assert "upper limit" not in known.sentence
    for one in (answer, known):
        told = " ".join(
            [one.figure, one.figure_label, one.sentence, *one.notes, *[item.text + item.state for item in one.items]]
        )
        assert " fit" not in told and "gets in" not in told
    assert known.figure == "No longer than 8' 0\"" and "lath" in known.figure_label


def test_the_pinch_can_be_worked_out_again():
    """At the slant that is told, both shares follow from hall, room and a plate of half an inch."""
    text = {item.name: item.text for item in ask(**HOUSE)[0].items}["Door off the hall"]
    assert "slanted 0.99 along to 1 across" in text
    assert "the hall takes 50 7/16 in of it and the room 47 1/2 in" in text
    along, across = 0.9917 / math.hypot(1, 0.9917), 1 / math.hypot(1, 0.9917)
    crossing = 0.25 / across  # just past the near jamb
    assert (36 - 0.25 * along) / across == pytest.approx(50 + 7 / 16, abs=1 / 16)
    assert (30 + 4 - crossing - 0.25 * across) / along == pytest.approx(47.5, abs=1 / 16)


def test_metric_answers_have_metric_workings():
    answer, _ = ask(
        show_in="metric",
        turn_from_in=36,
        turn_to_in=36,
        stair_width_in=36,
        landing_in=36,
        lift_width_in=54,
        lift_depth_in=51,
    )
    told = (
        [line.working for line in answer.lines]
        + [item.text for item in answer.items]
        + [answer.figure, answer.figure_label]
    )
    for text in told:
        assert not re.search(r"""\d (in|ft)\b|\d['"]""", text), text


def test_what_governs_and_by_how_much():
    answer, _ = ask(**carry_cases.OPEN, turn_from_in=36, turn_to_in=36)
    assert answer.sentence.startswith("Corner of the hall governs: no longer than 8' 4 13/16\"")
    wide, _ = ask(**carry_cases.OPEN, turn_from_in=48, turn_to_in=48)
    assert wide.figure == "No longer than 10' 0\""


def test_one_passage_governs_where_two_have_the_same_name(monkeypatch):
    for name in ("door", "corner"):
        monkeypatch.setitem(TEXTS, f"carry.{name}.name", "Way")
    answer, _ = ask(**carry_cases.OPEN, turn_from_in=36, turn_to_in=36)
    assert [item.text.count("This one governs.") for item in answer.items] == [0, 1]


def test_a_low_stair_takes_no_sheet_on_edge():
    answer, _ = ask(stair_width_in=30, headroom_in=60)
    assert {item.name: item.state for item in answer.items}["Stair"] == "no way found"
    assert answer.figure == "No whole sheet"


@pytest.mark.parametrize(
    ("given", "field"),
    [
        ({"turn_from_in": 36}, "turn_to_in"),
        ({"lift_width_in": 50}, "lift_depth_in"),
        ({"landing_in": 36}, "stair_width_in"),
        ({"landing_width_in": 72}, "landing_in"),
        ({"hall_length_ft": 6, "hall_beyond_ft": 4}, "hall_length_ft"),
        ({"room_along_ft": 5, "door_corner_in": 40}, "room_along_ft"),
        ({"stair_width_in": 36, "landing_in": 36, "landing_width_in": 40, "landing_kind": "half"}, "landing_width_in"),
    ],
)
def test_measures_that_do_not_go_together_are_a_fault(given, field):
    answer, faults = ask(**given)
    assert answer is None and [fault.field for fault in faults] == [field]
