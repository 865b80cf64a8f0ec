"""Rooms by their sides or walked round: geometry against closed forms and against the shapely library."""

from fractions import Fraction

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.rooms import outlines
from calc.rooms.rooms import WALKED_EXAMPLE, read_rooms

F = Fraction
HEIGHT = F(8)


def room(text):
    rooms, faults = read_rooms(text)
    assert not faults, faults
    return rooms[0]


def fault(text):
    _, faults = read_rooms(text)
    assert len(faults) == 1, faults
    return faults[0].message


def test_a_rectangle():
    living = room("Living: 20' x 14'")
    assert living.name == "Living"
    assert (
        living.plan_area_sqft(),
        living.perimeter_ft(),
        living.wall_area_sqft(HEIGHT),
        living.volume_cuft(HEIGHT),
    ) == (280, 68, 544, 2240)


def test_a_walked_room():
    den = room(WALKED_EXAMPLE)
    assert (den.plan_area_sqft(), den.perimeter_ft(), len(den.outline)) == (134, 50, 6)


@pytest.mark.parametrize(
    "text",
    ["20' x 14'", "20 x 14", "20×14", "20' by 14'", "A: 240\" * 168\"", "6.096 m x 4.2672 m", "E20 N14 W20 S14", "e 20' n 14' w 20' s 14'", "north 14 east 20 south 14 west 20", "E 10' E 10' N 14' W 20' S 14'"],
)  # fmt: skip
def test_one_room_in_many_hands(text):
    assert room(text).plan_area_sqft() == 280


@pytest.mark.parametrize(
    ("text", "name", "area"),
    [("Living 20' x 14'", "Living", 280), ("Sunroom 12 x 10", "Sunroom", 120), ("South bedroom 12 x 10", "South bedroom", 120), ("Bedroom S 12 x 10", "Bedroom S", 120),
     ("Den E 14' S 6' W 4' S 5' W 10' N 11'", "Den", 134), ("Living, 20 x 14", "Living", 280), ("Box room 3m x 4m", "Box room", None), ("Attic 10 x 8 slope 0:12 N", "Attic", 80),
     ("L: 14 x 11 less 4 x 5", "L", 134), ("Hall: 200' x 140'", "Hall", 28000), ("60 x 60", "Room 1", 3600), ("10 x 10 less 1\" x 12'", None, None)],
)  # fmt: skip
def test_a_name_needs_no_colon_where_the_size_is_plain(text, name, area):
    if name is None:
        assert "larger than the room" in fault(text)
        return
    found = room(text)
    assert found.name == name
    assert area is None or found.plan_area_sqft() - found.cutout_area_sqft() == area


def test_cut_outs_that_overlap_count_once_and_a_slope_stretches_them_like_the_room():
    lit = room("A: 20' x 18' less 4' x 4' at 2' x 2' less 4' x 4' at 4' x 2'")
    assert lit.ceiling_area_sqft() == 360 - 24 and lit.cutouts_overlap()
    apart = room("A: 20' x 18' less 4' x 4' at 2' x 2' less 4' x 4' at 6' x 2' less 1' x 1'")
    assert apart.ceiling_area_sqft() == 360 - 33 and not apart.cutouts_overlap()
    attic = room("A: 20' x 18' slope 9:12 N less 4' x 4' at 2' x 2'")
    assert attic.ceiling_area_sqft() == (360 - 16) * F(5, 4)


@given(st.lists(st.tuples(*[st.integers(0, 9)] * 2, *[st.integers(1, 6)] * 2), max_size=5))
def test_the_area_of_boxes_together_agrees_with_shapely(found):
    boxes = [(F(x), F(y), F(x + wide), F(y + deep)) for x, y, wide, deep in found]
    theirs = shapely.unary_union([shapely.box(*(float(one) for one in box)) for box in boxes]).area
    assert float(outlines.covered_sqin(boxes)) == pytest.approx(theirs)


def comb(teeth, depth):
    """A floor like a comb, 2 x `teeth` + 2 walls at the least; no tooth is as long as another."""
    legs = [f"E {teeth * 2}' N 1'"]
    for at in range(teeth):
        legs += [f"N {depth + at}'", "W 1'", f"S {depth + at}'", "W 1'"]
    return " ".join(legs) + " S 1'"


def test_a_walk_that_meets_itself_is_refused_and_a_comb_is_not():
    assert len(room(comb(14, 3)).outline) == 58
    assert "crosses" in fault("A: E 10 N 10 W 5 S 12 W 5 N 2")
    for text in ("A: E 4 N 4 W 2 S 4 W 2 N 4", "A: E 6 N 6 W 3 S 3 E 3 S 3 W 6"):
        assert read_rooms(text)[1]


sides = st.integers(min_value=1, max_value=40)


@given(sides, sides, sides, sides)
def test_an_l_is_two_rectangles(a, b, c, d):
    text = f"L: E {a + c}' N {b}' W {c}' N {d}' W {a}' S {b + d}'"
    ell = room(text)
    assert ell.plan_area_sqft() == (a + c) * b + a * d
    assert ell.perimeter_ft() == 2 * (a + c + b + d)


@given(st.lists(st.tuples(sides, sides), min_size=1, max_size=5))
def test_a_stepped_outline_agrees_with_shapely(steps):
    """Walk up a staircase, then home along the top and down the west wall."""
    legs = [(f"E {east}' N {north}'") for east, north in steps]
    total_east, total_north = sum(east for east, _ in steps), sum(north for _, north in steps)
    stepped = room("S: " + " ".join(legs) + f" W {total_east}' S {total_north}'")
    polygon = shapely.Polygon([(float(x) / 12, float(y) / 12) for x, y in stepped.outline])
    assert float(stepped.plan_area_sqft()) == pytest.approx(polygon.area)
    assert float(stepped.perimeter_ft()) == pytest.approx(polygon.length)


@given(sides, sides, st.integers(min_value=0, max_value=24), st.sampled_from("NESW"))
def test_a_slope_by_closed_form(east, north, rise, toward):
    attic = room(f"Attic: {east}' x {north}' slope {rise}:12 {toward}")
    run = north if toward in "NS" else east
    assert attic.volume_cuft(HEIGHT) == east * north * (HEIGHT + F(rise, 12) * run / 2)
    ends, slanted = F(rise, 12) * run * (east if toward in "NS" else north), F(rise, 12) * run * run
    assert attic.wall_area_sqft(HEIGHT) == 2 * (east + north) * HEIGHT + ends + slanted
    assert float(attic.ceiling_area_sqft()) == pytest.approx(east * north * (1 + (rise / 12) ** 2) ** 0.5, rel=1e-9)


@given(sides, sides, sides, sides, st.integers(min_value=1, max_value=24), st.sampled_from("NESW"))
def test_a_sloped_l_is_the_same_walked_either_way_round(a, b, c, d, rise, toward):
    there = room(f"L: E {a + c}' N {b}' W {c}' N {d}' W {a}' S {b + d}' slope {rise}:12 {toward}")
    back = room(f"L: N {b + d}' E {a}' S {d}' E {c}' S {b}' W {a + c}' slope {rise}:12 {toward}")
    assert there.volume_cuft(HEIGHT) == back.volume_cuft(HEIGHT) > there.plan_area_sqft() * HEIGHT
    assert there.wall_area_sqft(HEIGHT) == back.wall_area_sqft(HEIGHT)


@given(sides, sides, st.integers(min_value=1, max_value=39))
def test_cutting_a_room_in_two_keeps_its_area(east, north, cut):
    whole = room(f"{east + cut}' x {north}'")
    rooms, faults = read_rooms(f"{east}' x {north}'; {cut}' x {north}'")
    assert not faults
    assert sum(one.plan_area_sqft() for one in rooms) == whole.plan_area_sqft()
    assert sum(one.volume_cuft(HEIGHT) for one in rooms) == whole.volume_cuft(HEIGHT)


def test_cut_outs_come_off_the_ceiling_and_not_off_the_air():
    lit = room("Bath: 10' x 8' less 2' x 4' less 1' x 1'")
    assert lit.ceiling_area_sqft() == 71
    assert lit.volume_cuft(HEIGHT) == 640


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (
            "Den: E 14' S 6' W 4' S 5' W 10' N 10'",
            "ends 1' 0\" south of where it began: check wall 6, 4 or 2; try Den: E 14' S 6' W 4' S 5' W 10' N 11'.",
        ),
        ("Den: E 14' S 6' W 4' S 5' W 9' N 10'", "ends 1' 0\" east and 1' 0\" south"),
        ("A: 14' 13\" x 3", "less than 12"),
        ("A: -3 x 4", "negative"),
        ("A: 1/0 x 3", "0 below the line"),
        ("A: 0 x 3", "no wall"),
        ("A: 500' x 3", "longer than 200 ft"),
        ("A: 20", "two sides"),
        ("A: 20 x 14 x 8", "not two sides; the height has a field of its own"),
        ("A:", "no size"),
        ("A: 10 x 8 less 10 x 8", "whole ceiling"),
        ("A: 10 x 8 less 12 x 9", "larger than the room"),
        ("A: 10 x 10 less 50 x 1", "larger than the room"),
        ("A: 10 x 8 slope 4:12 N slope 2:12 E", "the slope stands twice"),
        ("A: about E 10 N 10 W 10 S 10", "“about” stands before the first wall"),
        ("A: 10 x 0.001", "under 1 in"),
        ('A: 10 x 8 less 1/2" x 1/2"', "under 1 in"),
        ("200 x 140", "write 200' for feet, or 200\" for inches, which is 16' 8\""),
        ("E 70 N 10 W 70 S 10", "write 70' for feet"),
        ("6 m x 4", "“4” has no unit and “6 m” has one; write both with theirs; try 6 m x 4 m."),
        ('12 x 18"', "has no unit"),
        ("Living 20 14", "put an x between the two sides; try Living: 20' x 14'."),
        ("Bed 2 10 x 12", "try Bed 2: 10' x 12'."),
        ("L 14x11 less 4x5", "walk round a room of that shape"),
        ("Living", "“Living” has no size; try Living: 20' x 14'."),
        ("A: 9½ x 11½2", "not a number"),
        ("A: 10 ft2 x 8", "an area or a volume, not a length"),
        ("A: 6-1/2 x 8", "it can mean 6 1/2 ft or 6' 1/2\""),
        ("A: x", "the length of a side is missing"),
        ("x" * 61 + ": 10 x 10", "longer than 60 letters"),
        ("A: 10 x 8 slope steep", "4:12"),
        ("A: 10 x 8 slope 4:0", "run of 0"),
        ("A: 10 x 8 slope 40:12", "at most 24"),
        ("A: E 10 W 10 N 5 S 5", "straight back"),
        ("A: E 10 N 10 W 5 S 15 W 5 N 5", "crosses or touches"),
        ("A: E N", "missing"),
        ("A: sun and moon", "not two sides, nor a walk round"),
        ("; ; x", "missing"),
        ("; ".join(["1 x 1"] * 41), "at most 40"),
    ],
)
def test_what_is_no_room_says_why(text, says):
    assert says in fault(text)


def test_every_bad_room_is_told_at_once():
    rooms, faults = read_rooms("Good: 10 x 10; Bad: 10; Worse: 0 x 1\nWorst: 1/0 x 2")
    assert [one.name for one in rooms] == ["Good"]
    assert [one.given for one in faults] == ["Bad: 10", "Worse: 0 x 1", "Worst: 1/0 x 2"]


@pytest.mark.parametrize(
    ("text", "east_ft", "north_ft"),
    [
        ("20x14", 20, 14), ("20 by 14 feet", 20, 14), ("20by14", 20, 14), ("20 ft by 14 ft", 20, 14), ("20’ x 14’", 20, 14), ("20 × 14", 20, 14),
        ("20 ✕ 14", 20, 14), ("12'6 x 10", F(25, 2), 10), ("12′6″ x 10′", F(25, 2), 10), ("12,5 x 10", F(25, 2), 10), ("20' 6 by 14", F(41, 2), 14),
        ("6m x 4m", 6 / F("0.3048"), 4 / F("0.3048")), ("6 x 4 m", 6 / F("0.3048"), 4 / F("0.3048")), ("6,5 x 4,2 m", F("6.5") / F("0.3048"), F("4.2") / F("0.3048")),
        ("450 x 320 cm", F("4.5") / F("0.3048"), F("3.2") / F("0.3048")), ("E20'N14'W20'S14'", 20, 14), ("E 20', N 14', W 20', S 14'", 20, 14),
    ],
)  # fmt: skip
def test_a_size_is_read_as_people_write_it(text, east_ft, north_ft):
    assert room(text).size_ft() == (east_ft, north_ft)


@pytest.mark.parametrize(
    ("text", "nearest"),
    [
        ("Bed: 20'14\"", "Bed: 20' x 14'"), ("20'14'", "20' x 14'"), ("20,14", "20' x 14'"), ("20-14", "20' x 14'"), ("20 and 14 feet", "20' x 14'"), ("20'6 14'2", "20' 6\" x 14' 2\""),
        ("A: 20 x 14 x 8", "A: 20' x 14'"), ("A: 14' 13\" x 3", "A: 14' x 3'"), ("6-1/2 x 8", "6 1/2' x 8'"), ("9½ x 11½2", "9 1/2' x 11 1/2'"), ("6,250 x 4 m", "6.250 m x 4 m"),
        ("200 x 140", "200\" x 140\""), ("A: -3 x 4", "A: 3' x 4'"), ("A: 0 x 3", "A: 20' x 3'"), ("20w x 14l", "20' x 14'"), ("Living", "Living: 20' x 14'"),
        ("L 14x11 less 4x5", "L: 14x11 less 4x5"), ("Den E14'N6'W14'S6'", "Den: E14' N6' W14' S6'"), ("14' E 6' N 14' W 6' S", "E 14' N 6' W 14' S 6'"),
        ("A: 10 x 8 slope 4/12 north", "A: 10 x 8 slope 4:12 N"), ("A: 10 x 8 less 2 4 at 1' 1'", "A: 10 x 8 less 2' x 4' at 1' x 1'"), ("A: 10 x 8 less 12 x 9 slope 4:12", "A: 10 x 8 slope 4:12"),
        ("A: E 4 m N 3 m W 4 m S 2 m", "A: E 4 m N 3 m W 4 m S 3 m"), ("E 10 N 10 W 5 S 12 W 5 N 2", "10' x 12'"), ("x" * 61 + ": 9 x 8", "x" * 40 + ": 9 x 8"),
    ],
)  # fmt: skip
def test_a_refusal_offers_the_nearest_room(text, nearest):
    _, faults = read_rooms(text)
    assert [one.nearest for one in faults] == [nearest]
    assert faults[0].message.endswith(f"; try {nearest}.")


@pytest.mark.parametrize(
    ("walk", "walls"),
    [
        ("E 14' S 6' W 4' S 5' W 10' N 10'", (6,)), ("E 14' S 6' W 4' S 5' W 9' N 11'", (5,)), ("E 14' S 6' W 4' S 5' W 9' N 10'", (5, 6)),
        ("E 14' S 6' W 4' S 5' W 10'", (6,)), ("E 14' S 6' W 4'", (4,)), ("E 14' S 6'", (3, 4)), ("E 14'", (2,)), ("E 14' S", (2,)),
        ("E 14' S six W 14' N 6'", (2,)), ("E 10 N 10 W 5 S 12 W 5 N 2", (4,)), ("E 5 E 5 N 10 W 5 S 12 W 5 N 2", (5,)), ("E 10 W 10 N 5 S 5", (2,)),
        ("20 x", (2,)), ("x 14", (1,)), ("500' x 3", (1,)), ("3 x 500'", (2,)), ("10 x 10 less 3 x", ()),
    ],
)  # fmt: skip
def test_a_refusal_names_the_wall(walk, walls):
    assert [one.walls for one in read_rooms(walk)[1]] == [walls]
    assert [one.walls for one in read_rooms("A: " + walk)[1]] == [walls]


@given(st.lists(st.tuples(sides, sides), min_size=1, max_size=4), st.data())
def test_a_walk_with_one_wrong_wall_is_closed_again(steps, data):
    """A staircase of a room, one wall of it mistyped: the nearest walk closes, and differs in that way alone."""
    legs = [leg for east, north in steps for leg in (f"E {east}'", f"N {north}'")]
    legs += [f"W {sum(east for east, _ in steps)}'", f"S {sum(north for _, north in steps)}'"]
    wrong = data.draw(st.integers(0, len(legs) - 1))
    off = data.draw(st.integers(1, 9))
    way, length = legs[wrong].split(" ")
    legs[wrong] = f"{way} {int(length[:-1]) + off}'"
    rooms, faults = read_rooms(" ".join(legs))
    assert not rooms and len(faults) == 1
    near = faults[0].nearest.split(" ")
    changed = [at for at, leg in enumerate(legs) if leg.split(" ")[1] != near[2 * at + 1]]
    assert len(near) == 2 * len(legs) and [at + 1 for at in changed] == list(faults[0].walls)
    assert [legs[at][0] in "EW" for at in changed] == [way in "EW"], "only what runs the same way can be wrong"


PIECES = (
    "20", "14'", "6\"", "3 m", "x", " ", "×", "by", "E 10'", "N", "W 10", "S10", "slope", "4:12", "less", "at", "2' x 3'", ":", "Den", "1/0", "½", ",", "-", "’", "sq ft", "2 4", ".",
)  # fmt: skip


@settings(max_examples=400, deadline=None)
@given(
    st.one_of(
        st.text(max_size=30),
        st.lists(st.sampled_from(PIECES), max_size=9).map(" ".join),
        st.lists(st.sampled_from(PIECES), max_size=9).map("".join),
    )
)
def test_any_text_gives_rooms_or_one_sentence_with_a_form_that_is_read(text):
    rooms, faults = read_rooms(text)
    for one in rooms:
        assert one.ceiling_area_sqft() > 0
    for one in faults:
        assert one.message.endswith(f"; try {one.nearest}.")
        again, none = read_rooms(one.nearest)
        assert len(again) == 1 and not none, one.nearest
