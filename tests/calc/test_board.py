"""Board layouts against a checker that shares no code with the search, and the count against integer programming."""

import random
from fractions import Fraction

import pytest
from oracle_board import fewest
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from calc import catalogue
from calc.board_layout import BoardInputs, bought, layout_of
from calc.board_rules import fasteners_in, needed_screw_in, screw_length_in, span_fault
from calc.courses import PARTS, Course, courses_of, frame_of, plans_of
from calc.hang import hang
from calc.rooms import read_rooms

F = Fraction
ROOMS = 300
QUICK = 4000


def inputs_for(text, north_south=True, spacing=16, offset=None, lengths=(8, 12), widths=(48,), effort=QUICK, strip=6):
    rooms, faults = read_rooms(text)
    assert not faults, (text, faults)
    return BoardInputs(
        rooms, north_south, F(str(spacing)), F(str(spacing if offset is None else offset)), "1/2", tuple(F(one) for one in lengths), widths,
        F(1, 2), "no", F(strip), F(3), effort, "customary",
    )  # fmt: skip


def check(inputs, layout):
    """Every rule, by geometry alone: nothing of the search or of its courses is called."""
    spacing, offset = float(inputs.joist_spacing_in), float(inputs.joist_offset_in)
    used = {}
    for at, room in enumerate(inputs.rooms):
        ceiling = Polygon([(float(x), float(y)) for x, y in room.outline])
        for hole in room.holes:
            ceiling = ceiling.difference(box(*(float(one) for one in hole)))
        west, south, *_ = ceiling.bounds
        own = [piece for piece in layout.hanging.pieces if layout.courses[piece.course].room == at]
        laid, joints = [], {}
        for piece in own:
            course = layout.courses[piece.course]
            u1, u2, v1, v2 = (value / PARTS for value in (piece.start, piece.end, course.low, course.high))
            rectangle = (
                box(west + u1, south + v1, west + u2, south + v2)
                if inputs.north_south
                else box(west + v1, south + u1, west + v2, south + u2)
            )
            laid.append(rectangle)
            joints.setdefault(course.number, []).append((u1, u2))
        # it covers, and no two pieces lie over each other
        assert ceiling.difference(unary_union(laid)).area < 0.01 * len(laid)
        assert sum(one.area for one in laid) == pytest.approx(unary_union(laid).area, rel=1e-6)
        # joints: on a joist, and never on the joist of a neighbor
        length = (ceiling.bounds[2] - west) if inputs.north_south else (ceiling.bounds[3] - south)
        joists = [offset + step * spacing for step in range(int(length // spacing) + 2)]
        inner = {}
        for number, spans in joints.items():
            ends = {round(end, 3) for _, end in spans}
            starts = {round(start, 3) for start, _ in spans}
            inner[number] = ends & starts
            for joint in inner[number]:
                assert min(abs(joint - joist) for joist in joists) <= 0.5 / PARTS + 1e-9, joint
            for start, end in spans:
                whole = round(start, 3) not in ends and round(end, 3) not in starts
                assert end - start >= 24 - 1e-9 or whole
        for number, found in inner.items():
            assert not found & inner.get(number + 1, set()), (number, found)
        # whole courses inside, cut edges at the walls, no narrow strip where it can be helped
        lines = sorted(
            {
                (
                    layout.courses[piece.course].low,
                    layout.courses[piece.course].high,
                    layout.courses[piece.course].width,
                )
                for piece in own
            }
        )
        for low, high, width in lines:
            first, last = low == min(one[0] for one in lines), high == max(one[1] for one in lines)
            assert high - low == width or first or last
            if len(lines) > 1:
                assert high - low >= min(int(inputs.least_strip_in) * PARTS, width)
        for piece, rectangle in zip(own, laid, strict=True):
            part = ceiling.buffer(-0.01).intersection(rectangle)  # a line where it only touches is no part
            bounds = part.bounds
            depth = (bounds[3] - bounds[1]) if inputs.north_south else (bounds[2] - bounds[0])
            used.setdefault(piece.sheet, []).append((piece, depth, layout.courses[piece.course].width / PARTS))
    # what is cut from a sheet fits it, side by side or one after the other
    stock = [int(length * 12) * PARTS for length in inputs.lengths_ft]
    assert sorted(used) == list(range(len(layout.hanging.sheets)))
    for sheet, (width, length) in enumerate(bought(layout.hanging.sheets, stock)):
        assert length in stock
        cut = []
        for piece, depth, sheet_width in used[sheet]:
            assert sheet_width == width / PARTS
            assert depth <= sheet_width * (1 if piece.lanes == 2 else 0.5) + 0.05
            along = (piece.offset, piece.offset + piece.end - piece.start)
            across = (0, 2) if piece.lanes == 2 else (piece.lane, piece.lane + 1)
            assert along[1] <= length
            cut.append(box(along[0], across[0], along[1], across[1]))
        for index, one in enumerate(cut):
            assert all(one.intersection(other).area == 0 for other in cut[index + 1 :])


def random_case(chance):
    east, north = chance.randint(8, 26), chance.randint(8, 22)
    inches = chance.choice((0, 0, chance.randint(1, 11)))
    shape = chance.random()
    if shape < 0.5:
        text = f"A: {east}' {inches}\" x {north}'"
    elif shape < 0.8:
        a, b = chance.randint(2, east - 3), chance.randint(2, north - 3)
        text = f"A: E {east}' N {north - b}' W {a}' N {b}' W {east - a}' S {north}'"
    elif shape < 0.9:
        a, b = chance.randint(2, east - 4), chance.randint(2, north - 3)
        text = f"A: E {east}' N {north}' W 2' S {b}' W {a}' N {b}' W {east - a - 2}' S {north}'"
    else:
        text = f"A: {east}' x {north}' less 3' x 2' at {chance.randint(1, east - 4)}' x {chance.randint(1, north - 3)}'"
    spacing = chance.choice((12, 16, 16, 16, 24, 24, 19.2))
    return {
        "text": text, "north_south": chance.random() < 0.5, "spacing": spacing, "offset": chance.choice((spacing, spacing, chance.randint(4, int(spacing)))),
        "lengths": chance.choice(((8,), (8, 10), (12,), (8, 12), (10,), (16,))),
    }  # fmt: skip


def optimum(inputs):
    """The least over every way to lay the courses, by integer programming."""
    frame = frame_of(inputs.rooms[0], inputs.north_south)
    joists = list(range(int(inputs.joist_offset_in * PARTS), frame.length, int(inputs.joist_spacing_in * PARTS)))
    longest = int(inputs.lengths_ft[-1] * 12) * PARTS
    plans = plans_of(
        frame.depth, tuple(width * PARTS for width in inputs.widths_in), int(inputs.least_strip_in) * PARTS
    )
    found = [fewest(courses_of(frame, 0, plan), joists, longest, 24 * PARTS) for plan in plans]
    return min(one for one in found if one is not None)


@pytest.mark.slow
@pytest.mark.parametrize("part", range(6))
def test_the_count_is_the_optimum_on_nearly_all_rooms_and_never_two_above(part):
    chance = random.Random(f"boards {part}")
    above = unproved = 0
    for _ in range(ROOMS // 6):
        inputs = inputs_for(**random_case(chance))
        layout = layout_of(inputs)
        check(inputs, layout)
        sheets = len(layout.hanging.sheets)
        assert layout.hanging.bound <= sheets
        if layout.hanging.bound == sheets:
            continue
        unproved += 1
        best = optimum(inputs)
        assert layout.hanging.bound <= best <= sheets <= best + 1, (inputs, sheets, best)
        above += sheets > best
    print(f"unproved {unproved}, above the optimum {above} of {ROOMS // 6}")
    assert above <= ROOMS // 6 * 0.05 + 1


@pytest.mark.slow
def test_a_proved_count_is_the_optimum():
    """The bound is put to the test as well: where it is met, integer programming finds no less."""
    chance = random.Random("bounds")
    for _ in range(40):
        inputs = inputs_for(**random_case(chance))
        layout = layout_of(inputs)
        if layout.hanging.bound == len(layout.hanging.sheets):
            assert optimum(inputs) == len(layout.hanging.sheets), inputs


def test_a_house_is_bought_together():
    house = "A: 17 x 13; B: 12 x 11; C: 10 x 9; D: 14 x 4; E: 8 x 5; F: 15 x 12"
    inputs = inputs_for(house)
    layout = layout_of(inputs)
    check(inputs, layout)
    alone = sum(len(layout_of(inputs_for(room)).hanging.sheets) for room in house.split("; "))
    assert layout.hanging.bound <= len(layout.hanging.sheets) <= alone


@pytest.mark.parametrize("widths", [(48,), (54,), (48, 54)])
def test_widths(widths):
    """9 ft deep: two courses of 54 in, or three of 48."""
    inputs = inputs_for("A: 12' x 9'", widths=widths, lengths=(12,))
    layout = layout_of(inputs)
    check(inputs, layout)
    assert len(layout.hanging.sheets) == (2 if 54 in widths else 3)


def test_slopes_and_holes_change_the_layout():
    flat = layout_of(inputs_for("A: 12' x 16'", lengths=(8,)))
    steep = layout_of(inputs_for("A: 12' x 16' slope 9:12 N", lengths=(8,)))
    assert len(steep.hanging.sheets) > len(flat.hanging.sheets)
    hole = inputs_for("A: 12' x 16' less 12' x 4' at 0 x 4'", lengths=(12,))
    check(hole, layout_of(hole))
    assert len(layout_of(hole).hanging.sheets) == 3


def test_the_same_every_time():
    case = inputs_for("A: 25' x 22'", lengths=(10,))
    assert layout_of(case) == layout_of(case)


def test_thorough_is_never_worse():
    for text in ("A: 25' x 22'", "A: 19' x 10'", "A: E 22' N 5' W 4' N 4' W 18' S 9'"):
        quick, thorough = (layout_of(inputs_for(text, lengths=(10,), effort=effort)) for effort in (QUICK, 10 * QUICK))
        assert len(thorough.hanging.sheets) <= len(quick.hanging.sheets)
        assert thorough.hanging.bound >= quick.hanging.bound


# The textbook cutting-stock instance: pieces of given lengths from rolls of 5,600; 73 rolls are the least (LP bound 72.9167).
ROLL = 5600
DEMAND = {1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20, 2000: 10, 2050: 12, 2100: 14, 2140: 16, 2150: 18, 2200: 20}  # fmt: skip


def test_the_textbook_cutting_stock():
    lengths = [length for length, count in DEMAND.items() for _ in range(count)]
    courses = [
        Course(at, 0, 0, 48 * PARTS, 48 * PARTS, ((0, length),), ((0, 0, length, 48 * PARTS),))
        for at, length in enumerate(sorted(lengths, reverse=True))
    ]
    found = hang(courses, [[] for _ in courses], [ROLL], 1380, 4000)
    assert found.bound == 73
    assert 73 <= len(found.sheets) <= 76
    assert sum(lengths) / ROLL == pytest.approx(73 * (1 - 0.004012), abs=0.005)


# Spans, screws and what is refused


@pytest.mark.parametrize(
    ("thickness", "spacing", "texture", "psf", "says"),
    [
        ("3/8", 16, False, 0, ""), ("3/8", 17, False, 0, "to 16 in"), ("1/2", 24, False, 0, ""), ("1/2", 25, False, 0, "to 24 in"),
        ("5/8", 24, False, 0, ""), ("3/8", 16, True, 0, "may not hang"), ("1/2", 16, True, 0, ""), ("1/2", 24, True, 0, "to 16 in"),
        ("5/8", 24, True, 0, ""), ("1/2", 24, False, "1.3", ""), ("1/2", 24, False, "1.31", "1.3 lb"), ("1/2", 16, False, "2.2", ""),
        ("1/2", 16, False, "2.4", "2.2 lb"), ("5/8", 24, False, "2.2", ""), ("5/8", 24, False, "2.3", "2.2 lb"),
    ],
)  # fmt: skip
def test_spans_at_their_edges(thickness, spacing, texture, psf, says):
    """GB-05, GB-07, GB-08 (the lower of two figures) and GB-14."""
    found = span_fault(thickness, F(spacing), texture, F(str(psf)))
    assert (says in found) if says else not found


def test_screws_by_rule():
    """GB-15, GB-17: 5/8 in into the joist; the printed table's 1 in, 1 1/8 and 1 3/8 are never undercut."""
    assert needed_screw_in(F(3, 8), F(0)) == 1
    assert needed_screw_in(F(1, 2), F(0)) == F(9, 8)
    assert needed_screw_in(F(5, 8), F(0)) == F(11, 8)
    assert screw_length_in(F(1, 2), F(1, 2)) == F(13, 8)
    assert screw_length_in(F(5, 8), F(5, 8)) == F(15, 8)
    with pytest.raises(ValueError, match="no stock screw"):
        screw_length_in(F(5, 8), F(2))


def test_nails_and_screws_of_a_sheet():
    """SC-01: 35 screws a 4 x 8 ft sheet at 16 in, 25 at 24 in; SC-02: 8 nails on each of 7 joists, at most 7 in apart."""
    assert fasteners_in(F(48), 12) * 7 == 35 and fasteners_in(F(48), 12) * 5 == 25
    assert fasteners_in(F(48), 7) * 7 == 56


REFUSED = [
    ({"board_thickness_in": "3/8", "joist_spacing_in": "24"}, "board_thickness_in", "spans joists to 16 in"),
    ({"joist_spacing_in": "0"}, "joist_spacing_in", "too small"),
    ({"rooms": "A: 1' x 10'"}, "rooms", "narrower than the joists"),
    ({"rooms": "A: 10 x 10 less 4 x 4 at 8 x 8"}, "rooms", "outside the room"),
    ({"rooms": "A: E 10 N 10 W 5 S 12 W 5 N 2"}, "rooms", "crosses or touches itself"),
    ({"sheet_lengths_ft": "12", "longest_sheet_ft": "10"}, "sheet_lengths_ft", "longest that does is 10 ft"),
    ({"sheet_lengths_ft": "8, x"}, "sheet_lengths_ft", "is no sheet length"),
    ({"existing_ceiling_in": "2", "board_thickness_in": "5/8"}, "existing_ceiling_in", "No stock screw"),
    ({"sheet_lengths_ft": "40"}, "sheet_lengths_ft", "4 to 20 ft"),
]


@pytest.mark.parametrize(("changed", "field", "says"), REFUSED)
def test_what_cannot_be_hung_is_one_sentence(changed, field, says):
    answer, faults = catalogue.work_out("board", {"rooms": "A: 10 x 12"} | changed)
    assert answer is None
    assert [fault.field for fault in faults] == [field]
    assert says in faults[0].message and faults[0].example


def test_stops():
    def ids(**changed):
        answer, faults = catalogue.work_out("board", {"rooms": "A: 10 x 12"} | changed)
        assert answer is not None, faults
        return [one.id for one in answer.cautions]

    assert {"asbestos-first", "ceiling-load", "rated-ceiling"} <= set(ids())
    assert "rated-ceiling" not in ids(rated_ceiling="no")
    assert "engineer-load" in ids(load_limit_psf="1.5") and "engineer-load" not in ids(load_limit_psf="1.6")
