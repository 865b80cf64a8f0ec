"""Carrying: the classic corner, tilts in a box, and a search through motions as the oracle."""

import math
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calc import catalogue
from calc.carry import longest_in_box, longest_over_nosing, longest_round, longest_through_door

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


@settings(max_examples=60, deadline=None)
@given(st.integers(20, 120).map(F), st.integers(20, 120).map(F), st.integers(0, 40).map(F))
def test_the_box_against_trying_every_tilt(wide, high, thick):
    assume(thick <= max(wide, high))
    best = 0.0
    for step in range(9001):
        angle = math.radians(step / 100)
        cosine, sine = math.cos(angle), math.sin(angle)
        by_width = (float(wide) - float(thick) * sine) / cosine if cosine > 1e-9 else math.inf
        by_height = (float(high) - float(thick) * cosine) / sine if sine > 1e-9 else (math.inf if thick <= high else -1)
        if step == 9000:
            by_width = math.inf if thick <= wide else -1
        best = max(best, min(by_width, by_height))
    assert float(longest_in_box(wide, high, thick)) == pytest.approx(best, rel=2e-3, abs=0.05)


@given(widths, st.integers(24, 40).map(F), st.sampled_from([F(1, 4), F(1, 2), F(5, 8)]))
def test_the_door_lets_through_what_it_says(hall, door, thick):
    """At some slant the plate passes between the jambs of a 5 in wall, and its whole length lies in the hall."""
    longest = float(longest_through_door(hall, door, thick))
    fits = [
        degrees
        for degrees in (step / 50 for step in range(50, 4450))
        if float(door) * math.sin(math.radians(degrees)) - 5 * math.cos(math.radians(degrees)) >= float(thick)
        and longest * math.sin(math.radians(degrees)) + float(thick) * math.cos(math.radians(degrees))
        <= float(hall) + 0.2
    ]
    assert fits or longest == 0


@settings(max_examples=30, deadline=None)
@given(st.integers(50, 90).map(F), st.integers(84, 110).map(F), st.sampled_from([F(1, 2), F(36), F(48)]))
def test_the_head_of_the_stair_against_trying_every_slant(stair, hall, thick):
    angle = math.atan2(7.75, 10)
    best = min(
        (float(stair) - float(thick) * math.cos(one)) / math.sin(one)
        + (float(hall) - float(thick) * math.cos(angle - one)) / math.sin(angle - one)
        for one in (angle * step / 5000 for step in range(1, 5000))
    )
    assert float(longest_over_nosing(stair, hall, thick)) == pytest.approx(best, rel=1e-3)


def test_a_low_stair_takes_no_sheet_on_edge():
    answer, _ = ask(stair_width_in=30, headroom_in=60)
    assert {item.name: item.state for item in answer.items}["Stair"] == "not at all"
    assert answer.figure == "No whole sheet"


@given(widths, widths, st.integers(0, 12).map(F))
def test_a_wider_way_never_takes_less(a, b, more):
    assert longest_round(a + more, b, F(1, 2)) >= longest_round(a, b, F(1, 2))
    assert longest_in_box(a + more, b, F(1, 2)) >= longest_in_box(a, b, F(1, 2))


def ask(**inputs):
    return catalogue.work_out("carry", {name: str(value) for name, value in inputs.items()})


def test_what_governs_and_by_how_much():
    answer, _ = ask(turn_from_in=36, turn_to_in=36, stair_width_in=36)
    assert answer.sentence.startswith("Corner of the hall governs, at 8' 4 13/16\"")
    assert answer.figure == "8' 0\""
    wide, _ = ask(turn_from_in=48, turn_to_in=48)
    assert wide.figure == "10' 0\""


def test_a_lift_takes_a_sheet_corner_to_corner():
    answer, _ = ask(lift_width_in=54, lift_depth_in=51, lift_height_in=92)
    states = {item.name: item.state for item in answer.items}
    assert states["Lift"] != "no limit"


@pytest.mark.parametrize(
    ("given", "field"),
    [
        ({"turn_from_in": 36}, "turn_to_in"),
        ({"lift_width_in": 50}, "lift_depth_in"),
        ({"landing_in": 36}, "stair_width_in"),
    ],
)
def test_half_an_obstacle_is_a_fault(given, field):
    answer, faults = ask(**given)
    assert answer is None and [fault.field for fault in faults] == [field]
