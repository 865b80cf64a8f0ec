"""Strips and tiles against shapely and against counting cell by cell."""

import itertools
from dataclasses import replace
from fractions import Fraction
from math import ceil

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from calc import catalogue
from calc.cover.tiles import border_in, tiles_over
from calc.rooms.rooms import read_rooms
from calc.rooms.strips import bands, fewest_rolls, furring_rows_in, lapped, rolls_cut, strips_of

F = Fraction


@st.composite
def rooms(draw):
    """A rectangle, an L, a T or a U, sides in half feet."""
    east, north = draw(st.integers(8, 60)), draw(st.integers(8, 60))
    a, b = draw(st.integers(1, east - 4)), draw(st.integers(1, north - 4))
    shape = draw(st.sampled_from("rLU"))
    half = lambda value: f"{value / 2}'"  # noqa: E731
    if shape == "r":
        text = f"{half(east)} x {half(north)}"
    elif shape == "L":
        legs = (("E", east), ("N", north - b), ("W", a), ("N", b), ("W", east - a), ("S", north))
        text = " ".join(f"{way} {half(length)}" for way, length in legs)
    else:
        assume(a + 2 < east)
        legs = (("E", east), ("N", north), ("W", 1), ("S", b), ("W", a), ("N", b), ("W", east - a - 1), ("S", north))
        text = " ".join(f"{way} {half(length)}" for way, length in legs)
    found, faults = read_rooms("A: " + text)
    assert not faults, (text, faults)
    return found[0]


def floor_of(room):
    return Polygon([(float(x), float(y)) for x, y in room.outline])


@given(rooms())
def test_rectangles_are_the_floor(room):
    parts = [box(*(float(one) for one in rectangle)) for rectangle in room.rectangles_in()]
    assert sum(part.area for part in parts) == pytest.approx(floor_of(room).area)
    assert unary_union(parts).symmetric_difference(floor_of(room)).area == pytest.approx(0, abs=1e-6)


@settings(deadline=None)
@given(rooms(), st.integers(2, 14), st.integers(0, 12), st.integers(0, 12))
def test_strips_cover_the_floor_and_its_turn_up(room, width_ft, overlap, turn_up):
    width = F(width_ft * 12)
    strips = strips_of(room, width, F(overlap), F(turn_up))
    laid = []
    for one in strips:
        along, low = (
            (float(one.along_from), float(one.along_from + one.length)),
            (float(one.low), float(one.low + width)),
        )
        laid.append(
            box(along[0], low[0], along[1], low[1]) if one.eastward else box(low[0], along[0], low[1], along[1])
        )
    covered = unary_union(laid)
    floor = floor_of(room)
    assert floor.difference(covered).area == pytest.approx(0, abs=1e-6)
    if turn_up:
        assert floor.buffer(turn_up, join_style="mitre").difference(covered).area == pytest.approx(0, abs=1e-6)


@given(st.integers(1, 400), st.integers(12, 120), st.integers(0, 6))
def test_bands_are_enough_and_no_more(across, width, overlap):
    count = bands(F(across), F(width), F(overlap))
    assert count * width - (count - 1) * overlap >= across
    assert count == 1 or (count - 1) * width - (count - 2) * overlap < across


@given(st.lists(st.integers(1, 100), min_size=1, max_size=14))
def test_every_length_is_cut_once_and_no_roll_is_overdrawn(lengths):
    cut = rolls_cut([F(one) for one in lengths], F(100))
    assert sorted(one for roll in cut for one in roll) == sorted(lengths)
    assert all(sum(roll) <= 100 for roll in cut)
    least = fewest_rolls([F(one) for one in lengths], F(100))
    assert least <= len(cut) <= ceil(11 / 9 * _fewest(lengths)) + 1


def _fewest(lengths):
    """The least number of rolls, by trying every way (small lists only), or the bound by length."""
    if len(lengths) > 8:
        return ceil(sum(lengths) / 100)
    best = len(lengths)

    def place(at, rolls):
        nonlocal best
        if len(rolls) >= best:
            return
        if at == len(lengths):
            best = len(rolls)
            return
        for index, used in enumerate(rolls):
            if used + lengths[at] <= 100:
                place(at + 1, [*rolls[:index], used + lengths[at], *rolls[index + 1 :]])
        place(at + 1, [*rolls, lengths[at]])

    place(0, [])
    return best


tiles = st.sampled_from([(12, 12), (24, 12), (24, 24), (48, 24), (16, 12)])


@settings(deadline=None, max_examples=60)
@given(rooms(), tiles)
def test_tiles_are_counted_as_cell_by_cell(room, tile):
    tile_x, tile_y = F(tile[0]), F(tile[1])
    one = tiles_over(room, tile_x, tile_y)
    floor = floor_of(room)
    west, south, east, north = floor.bounds
    lines_x = [west, *(float(x) for x in one.lines_x_in), east]
    lines_y = [south, *(float(y) for y in one.lines_y_in), north]
    full = cut = 0
    for left, right in itertools.pairwise(lines_x):
        for low, high in itertools.pairwise(lines_y):
            area = floor.intersection(box(left, low, right, high)).area
            if area == pytest.approx(tile[0] * tile[1]):
                full += 1
            elif area > 1e-6:
                cut += 1
    assert (one.full_tiles, one.cut_pieces) == (full, cut)
    assert one.cut_pieces / 2 <= one.cut_tiles <= one.cut_pieces
    assert (one.full_tiles + one.cut_tiles) * tile[0] * tile[1] >= floor.area - 1e-6 or one.cut_tiles < one.cut_pieces


@given(st.integers(1, 4000), st.sampled_from([12, 16, 24, 48]))
def test_a_border_is_never_under_half_a_tile_unless_the_room_is(size_eighths, tile):
    size = F(size_eighths, 8)
    border = border_in(size, F(tile))
    if size < tile:
        assert border == size
    elif size % tile == 0:
        assert border == 0
    else:
        assert F(tile, 2) <= border < tile
        assert (size - 2 * border) % tile == 0


def ask(name, **inputs):
    return catalogue.work_out(name, {key: str(value) for key, value in inputs.items()})


def test_a_strip_longer_than_a_roll_is_pieced_and_says_so():
    answer, _ = ask("sheeting", rooms="Hall: 60' x 8'", roll_length_ft=50)
    assert any("joint" in note for note in answer.notes)
    assert all(item.name.startswith("Roll ") for item in answer.items)


def test_wet_floors_get_plastic():
    wet, _ = ask("sheeting", rooms="A: 10 x 10", floor_work="wet")
    dry, _ = ask("sheeting", rooms="A: 10 x 10", floor_work="dry")
    assert any("Plastic, not cloth" in note for note in wet.notes)
    assert not any("Plastic, not cloth" in note for note in dry.notes)
    assert "wet-plastic" in [one.id for one in wet.cautions]


def test_laps_as_wide_as_the_film_are_refused():
    answer, faults = ask("sheeting", rooms="A: 10 x 10", roll_width_ft=2, overlap_in=18, wall_film_width_ft=2)
    assert answer is None
    assert [fault.field for fault in faults] == ["roll_width_ft", "wall_film_width_ft"]


@pytest.mark.parametrize(("behind", "refused"), [("untested", True), ("firm", True), ("loose", True), ("paint", False), ("bare", False)])  # fmt: skip
def test_glue_goes_on_board_only(behind, refused):
    answer, faults = ask("panels", rooms="A: 10 x 10", fixing="glue", behind_tiles=behind)
    assert (answer is None) is refused
    assert [fault.field for fault in faults] == (["behind_tiles"] if refused else [])


def test_a_heavy_tile_and_a_loose_face_are_both_told():
    _, faults = ask("panels", rooms="A: 10 x 10", fixing="glue", behind_tiles="loose", tile_weight_psf="2.51")
    assert [fault.field for fault in faults] == ["tile_weight_psf", "behind_tiles"]
    answer, _ = ask("panels", rooms="A: 10 x 10", fixing="glue", behind_tiles="bare", tile_weight_psf="2.5")
    assert answer is not None


def test_furring_over_untested_texture_carries_the_stop():
    answer, _ = ask("panels", rooms="A: 10 x 10", fixing="furring", behind_tiles="untested")
    assert "asbestos-first" in [one.id for one in answer.cautions]


def test_halves_come_two_from_a_tile():
    """10 ft 6 in by tiles of 12 x 24 in: borders of 9 in take a tile each; 11 ft by tiles of 24 in leaves halves."""
    answer, _ = ask("panels", rooms="A: 12' x 10'", tile_length_in=24, tile_width_in=24, fixing="grid")
    values = {line.name: line.value for line in answer.lines}
    assert (values["full_tiles"], values["cut_pieces"]) == (30, 0)
    ell, _ = ask(
        "panels", rooms="A: E 11' N 6' W 5' N 6' W 6' S 12'", tile_length_in=24, tile_width_in=24, fixing="grid"
    )
    values = {line.name: line.value for line in ell.lines}
    assert values["cut_tiles"] < values["cut_pieces"]


def turned(room):
    """The room as it is, and drawn the other way round and turned: eight ways."""
    for mirrored in (1, -1):
        corners = [(x * mirrored, y) for x, y in room.outline]
        for _ in range(4):
            corners = [(-y, x) for x, y in corners]
            yield replace(room, outline=tuple(corners))


@settings(deadline=None, max_examples=40)
@given(rooms(), st.integers(4, 14), st.integers(0, 24), st.integers(0, 12))
def test_film_does_not_depend_on_how_a_room_is_drawn(room, width_ft, overlap, turn_up):
    found = set()
    for one in turned(room):
        strips = strips_of(one, F(width_ft * 12), F(overlap), F(turn_up))
        found.add((tuple(sorted(strip.length for strip in strips)), lapped(strips)))
    assert len(found) == 1


@settings(deadline=None)
@given(rooms(), st.integers(4, 48))
def test_furring_follows_the_floor(room, spacing):
    """Against shapely: a row just inside each evenly spread line, and one along each wall between two."""
    rows = furring_rows_in(room, F(spacing))
    south, north = min(y for _, y in room.outline), max(y for _, y in room.outline)
    spaces = ceil((north - south) / spacing)
    floor = floor_of(room)
    expected = []
    levels = [south + (north - south) * F(at, spaces) for at in range(spaces + 1)]
    for level in levels:
        touching = floor.intersection(box(-1000, float(level) - 1e-6, 1000, float(level) + 1e-6))
        west_east = unary_union(
            [box(part.bounds[0], 0, part.bounds[2], 1) for part in getattr(touching, "geoms", [touching])]
        )
        expected.append(west_east.area)
    corners = list(room.outline)
    for start, end in zip(corners, corners[1:] + corners[:1], strict=True):
        if start[1] == end[1] and start[1] not in levels:
            expected.append(abs(float(end[0] - start[0])))
    assert [float(one) for one in rows] == pytest.approx(expected)


def test_furring_of_an_l_is_less_than_that_of_its_box():
    ell = "L: E 20' N 4' W 16' N 10' W 4' S 14'"
    lines = {
        name: {line.name: line for line in catalogue.work_out("panels", {"rooms": text})[0].lines}["furring_ft"]
        for name, text in (("ell", ell), ("box", "B: 20' x 14'"))
    }
    assert lines["box"].value == 15 * 20
    assert lines["ell"].value == 5 * 20 + 10 * 4
    assert lines["ell"].working == "10 × 4 ft + 5 × 20 ft = 140 ft"


def test_forty_combs_are_laid_out_in_a_moment(monkeypatch):
    """A room of 58 walls, 39 times: what looks at every pair of walls must not work on fractions."""
    legs = ["E 28 N 1"] + [f"N {depth} W 1 S {depth} W 1" for depth in range(3, 17)] + ["S 1"]
    rooms = "; ".join([" ".join(legs)] * 39)
    made = 0
    new = F.__new__

    def counted(cls, *arguments, **more):
        nonlocal made
        made += 1
        return new(cls, *arguments, **more)

    monkeypatch.setattr(F, "__new__", counted)
    answer, faults = catalogue.work_out("sheeting", {"rooms": rooms})
    monkeypatch.undo()
    assert answer is not None, faults
    assert made < 30_000, made
