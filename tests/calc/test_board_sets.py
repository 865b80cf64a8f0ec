"""Made-up sets of rooms: what the calculator tells of them, against the bound and the search that know the rules alone."""

from collections import Counter
from fractions import Fraction

import pytest
from board_sets import a_set
from oracle_board import INCH, Finder, faults, least_by_lines

from calc import catalogue
from calc.board import board
from calc.board.layout import layout_of
from calc.board.layout_inputs import read_layout
from calc.core.fields import read

WIDTH = 48 * INCH
SETS, ROUNDS = 100, 700
PARTS = 4  # so that two processes share them


def told(question):
    """The count, the bound, and whether the headline says proved."""
    answer, found = catalogue.work_out("board", question)
    assert answer, found
    values = {line.name: line.value for line in answer.lines}
    return int(values["sheets"]), int(values["lower_bound_sheets"]), "proved" in answer.figure_label


def of_the_calculator(question):
    """The layout itself, as course lines a room, pieces, and where each is cut."""
    values, found = read(board.CALCULATOR.fields, question, board.CALCULATOR.one_of)
    assert not found
    layout = layout_of(read_layout(values, "1/2", Fraction(1, 2), "no", Fraction(3), "quick")[0])
    lines = [sorted({edge for one in layout.courses if one.room == room for edge in (one.low, one.high)}) for room in range(len(layout.frames))]  # fmt: skip
    pieces, placed = [], []
    for one in layout.pieces:
        course = layout.courses[one.course]
        pieces.append((course.room, course.low, course.high, one.start, one.end, one.end - one.start, one.depth))
        placed.append((one.sheet, one.offset, one.across))
    return layout, lines, pieces, placed


def look(seed, rounds):
    """Return (kind, sheets told, bound told, proved, the program's bound, the fewest that the search from outside finds)."""
    kind, question, ceilings, longest = a_set(seed)
    sheets, bound, proved = told(question)
    least, _ = least_by_lines(ceilings, longest, WIDTH)
    finder = Finder(ceilings, longest, WIDTH, seed=seed)
    best, (bands, packed) = finder.fewest(rounds, least)
    lines = [[one[0] for one in room] + [room[-1][1]] for room in bands]
    assert faults(ceilings, lines, finder.pieces(bands), packed[1], longest, WIDTH) == []
    return kind, sheets, bound, proved, least, best


@pytest.mark.slow
@pytest.mark.parametrize("part", range(PARTS))
def test_nothing_is_proved_that_a_search_from_outside_beats(part):
    told_sheets = known = 0
    for seed in range(part, SETS, PARTS):
        kind, sheets, bound, proved, least, best = look(seed, ROUNDS)
        assert bound <= least, (seed, kind)  # it holds for every layout, so it is no more than the program's
        assert proved == (sheets == bound)
        assert not (proved and best < sheets), (seed, kind)
        told_sheets += sheets
        known += min(sheets, best)
    assert told_sheets <= 1.02 * known


@pytest.mark.parametrize("seed", range(40))
def test_a_layout_keeps_the_printed_rules(seed):
    _, question, ceilings, longest = a_set(seed)
    layout, lines, pieces, placed = of_the_calculator(question)
    assert faults(ceilings, lines, pieces, placed, longest, WIDTH) == []
    assert len(layout.sheets) == len({sheet for sheet, _, _ in placed}) == told(question)[0]


def test_the_judge_sees_what_is_wrong():
    """The check on the check: a layout moved off the rules is told."""
    _, question, ceilings, longest = a_set(0)
    _, lines, pieces, placed = of_the_calculator(question)
    room, low, high, start, end, length, depth = pieces[0]
    shorter = [(room, low, high, start, end - INCH, length - INCH, depth), *pieces[1:]]
    assert faults(ceilings, lines, shorter, placed, longest, WIDTH)
    assert faults(ceilings, lines, pieces, [placed[1], *placed[1:]], longest, WIDTH)
    assert faults(ceilings, [[lines[0][0], *lines[0][2:]], *lines[1:]], pieces, placed, longest, WIDTH)
    sliver = [(room, low, high, start, end, length, depth - INCH), *pieces[1:]]
    assert faults(ceilings, lines, sliver, placed, longest, WIDTH)


def test_the_kinds_of_rooms_are_all_met():
    assert len(Counter(a_set(seed)[0] for seed in range(SETS))) == 3
