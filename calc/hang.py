"""The fewest sheets for given courses: joints on joists, never two neighbors on one joist, offcuts used again.

A search that puts piece after piece, first as a good hand would, then with more and more second thoughts, then all ways.
Its effort is counted in steps, never in seconds, so that every engine finds the same. What it cannot finish it tells:
the best that was found, and the bound that no way can be under.
"""

from dataclasses import dataclass

from calc.courses import Course
from calc.piece_search import EVERY_WAY, NO_GOAL, Cost, Piece, Search, lengths_used

SECOND_THOUGHTS = (0, 1, 2, 4)
LEAST_STEPS = 40  # no look is cut shorter than this [-]
POLISHING = 12  # this part of the effort goes into each look for a tidier way [-]


@dataclass(frozen=True)
class Hanging:
    """`pieces` in the order they are hung; `sheets` as (width, length used); `bound` no way can be under; whether every
    way was looked at or the bound was met (`proved`); `steps` taken."""

    pieces: tuple[Piece, ...]
    sheets: tuple[tuple[int, int], ...]
    bound: int
    proved: bool
    steps: int


def hang(
    courses: list[Course], joists: list[list[int]], stock: list[int], shortest: int, effort: int, goal: int = NO_GOAL
) -> Hanging | None:
    """Return the best hanging found in about `effort` steps, with the bound proved; None where no way was found at all.

    `stock` are sheet lengths in rising order; `shortest` is the least length of a piece that is not a whole stretch.
    Counts of `goal` sheets and more are not worth a long search: a layout with so many is known.
    """
    searches = [Search(order, joists, stock[-1], shortest) for order in (courses, courses[::-1])]
    bound = searches[0].bound()
    polish = max(effort // 10, LEAST_STEPS)
    found = _any_way(searches, stock, bound, effort, polish)
    if found is None:
        return None
    count = max([piece.sheet for piece in found]) + 1
    spent = searches[0].steps + searches[1].steps
    for most in range(bound, min(count, goal)):
        share = max((effort - searches[0].steps - searches[1].steps + spent) // (min(count, goal) - most), 100)
        fewer, all_seen = _with_at_most(searches, stock, most, share, polish)
        if fewer is not None:
            found, count = fewer, most
            break
        if all_seen and bound == most:
            bound = most + 1  # every way with so many sheets was looked at
    found = _tidied(searches, stock, found, max(effort // POLISHING, LEAST_STEPS))
    sheets = tuple(lengths_used(found, courses))
    steps = searches[0].steps + searches[1].steps
    return Hanging(tuple(found), sheets, bound, len(sheets) <= bound, steps)


def _any_way(searches: list[Search], stock: list[int], bound: int, effort: int, polish: int) -> list[Piece] | None:
    """The way a good hand would go, from either side, the tightest first; where it gets stuck, with second thoughts."""
    for most in (bound, bound + 1, bound + 2, bound + bound // 10 + 3, bound + bound // 4 + 6, NO_GOAL):
        for at, search in enumerate(searches):
            found, _ = search.run(most, 0, max(effort // 4, 10 * LEAST_STEPS), polish, Cost(search.courses, stock))
            if found is not None:
                return _turned(found, at, len(search.courses))
    for at, search in enumerate(searches):
        found, _ = search.run(
            NO_GOAL, EVERY_WAY, max(effort // 4, 10 * LEAST_STEPS), polish, Cost(search.courses, stock)
        )
        if found is not None:
            return _turned(found, at, len(search.courses))
    return None


def _with_at_most(
    searches: list[Search], stock: list[int], most: int, effort: int, polish: int
) -> tuple[list[Piece] | None, bool]:
    """A way with at most `most` sheets, or None, and whether every way was looked at."""
    waves = [(thoughts, at) for thoughts in SECOND_THOUGHTS for at in (0, 1)]
    for thoughts, at in waves + [(EVERY_WAY, 0), (EVERY_WAY, 1)]:
        search = searches[at]
        limit = effort // 4 if thoughts == EVERY_WAY else effort // (2 * len(waves))
        found, all_seen = search.run(most, thoughts, max(limit, LEAST_STEPS), polish, Cost(search.courses, stock))
        if found is not None:
            return _turned(found, at, len(search.courses)), False
        if all_seen and thoughts == EVERY_WAY:
            return None, True
    return None, False


def _tidied(searches: list[Search], stock: list[int], found: list[Piece], limit: int) -> list[Piece]:
    """Among ways with as many sheets: the one that buys least board, and then has the least butt joints."""
    courses = searches[0].courses
    cost = Cost(courses, stock)
    best, best_cost = found, cost.of(found)
    for thoughts in (0, 1, 2):
        for at, search in enumerate(searches):
            other, _ = search.run(
                len(lengths_used(found, courses)), thoughts, limit, limit, Cost(search.courses, stock)
            )
            if other is not None:
                turned = _turned(other, at, len(courses))
                if cost.of(turned) < best_cost:
                    best, best_cost = turned, cost.of(turned)
    return best


def _turned(found: list[Piece], at: int, count: int) -> list[Piece]:
    """Pieces of the search from the far side, told from the near side and in the order to hang."""
    if at == 0:
        return found
    turned = [
        Piece(count - 1 - one.course, one.start, one.end, one.lanes, one.sheet, one.offset, one.lane) for one in found
    ]
    turned.sort(key=lambda one: (one.course, one.start))
    return turned
