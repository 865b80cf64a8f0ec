"""Strips from rolls: how lengths are cut from rolls of one length, and how bands and rows cover an outline."""

from dataclasses import dataclass
from fractions import Fraction

from calc.numbers.exact import ceiling, total
from calc.rooms.outlines import common_scale, edges, merged, scaled
from calc.rooms.rooms import Room


@dataclass(frozen=True)
class Strip:
    """One strip: its `room`, where it lies (`along_from`, `low`) and its `length`, all in inches [in]; `eastward`."""

    room: str
    along_from: Fraction
    low: Fraction
    length: Fraction
    eastward: bool


def strips_of(room: Room, width_in: Fraction, overlap_in: Fraction, turn_up_in: Fraction) -> list[Strip]:
    """Return the strips [in] that cover one floor, laid the way that takes least film.

    Laid east and west or north and south, from either wall, so that it does not matter which way round a room is drawn;
    among equals the longest strips are the shortest, then the first laid counts (east and west, from the south).
    """
    values = [value for corner in room.outline for value in corner]
    scale = common_scale(values + [width_in, overlap_in, turn_up_in])  # whole numbers are quick in every engine
    width, overlap, turn_up = scaled(width_in, scale), scaled(overlap_in, scale), scaled(turn_up_in, scale)
    boxes = [[scaled(value, scale) for value in box] for box in room.rectangles_in()]
    best: list[Strip] = []
    least: tuple[Fraction, list[Fraction], Fraction] | None = None
    for eastward in (True, False):
        along = 0 if eastward else 1
        rectangles = [(box[along], box[1 - along], box[along + 2], box[3 - along]) for box in boxes]
        for from_low in (True, False):
            laid = [
                Strip(room.name, Fraction(start, scale), Fraction(low, scale), Fraction(end - start, scale), eastward)
                for start, low, end in _laid(rectangles, width, overlap, turn_up, from_low)
            ]
            cost = (
                total([one.length for one in laid]),
                sorted([one.length for one in laid], reverse=True),
                lapped(laid),
            )
            if least is None or cost < least:
                best, least = laid, cost
    return best


def lapped(strips: list[Strip]) -> Fraction:
    """Return how long the strips of one room are that lap the one before [in]: all but those of the first band."""
    return total([one.length for one in strips if one.low != strips[0].low])


def _laid(
    rectangles: list[tuple[int, int, int, int]], width: int, overlap: int, turn_up: int, from_low: bool
) -> list[tuple[int, int, int]]:
    """The strips as (from, low, to), band by band from one side of the floor; `rectangles` as for `spans_of_band`."""
    low = min([one[1] for one in rectangles]) - turn_up
    high = max([one[3] for one in rectangles]) + turn_up
    found = []
    for band in range(bands(Fraction(high - low), Fraction(width), Fraction(overlap))):
        step = band * (width - overlap)
        start = low + step if from_low else high - width - step
        for along_from, along_to in spans_of_band(rectangles, start, start + width, turn_up):
            found.append((along_from, start, along_to))
    return found


def furring_rows_in(room: Room, spacing_in: Fraction) -> list[Fraction]:
    """Return the lengths of the rows of furring [in] that run east and west over one floor, from south to north.

    Rows lie evenly from wall to wall, at most `spacing_in` [in, > 0] apart; a wall between two rows has one of its own.
    """
    rectangles = room.rectangles_in()
    south, north = min([one[1] for one in rectangles]), max([one[3] for one in rectangles])
    spaces = ceiling((north - south) / spacing_in)
    levels = [south + (north - south) * at / spaces for at in range(spaces + 1)]
    found = [_across(rectangles, level) for level in levels]
    for start, end in edges(room.outline):
        if start[1] == end[1] and start[1] not in levels:
            found.append(abs(end[0] - start[0]))
    return found


def _across(rectangles: list[tuple[Fraction, Fraction, Fraction, Fraction]], level: Fraction) -> Fraction:
    """How long the floor is along one row [in]; on a wall, whatever touches it counts."""
    spans = merged([(west, east) for west, south, east, north in rectangles if south <= level and north >= level])
    return total([end - start for start, end in spans])


def rolls_cut(lengths: list[Fraction], roll: Fraction) -> list[list[Fraction]]:
    """Return what is cut from each roll: the longest first, each from the first roll that still holds it.

    `lengths` [same unit as `roll`, each at most `roll`]. Never more than 11/9 of the least number of rolls and one.
    """
    rolls: list[list[Fraction]] = []
    left: list[Fraction] = []
    for length in sorted(lengths, reverse=True):
        for at, rest in enumerate(left):
            if length <= rest:
                rolls[at].append(length)
                left[at] = rest - length
                break
        else:
            rolls.append([length])
            left.append(roll - length)
    return rolls


def fewest_rolls(lengths: list[Fraction], roll: Fraction) -> int:
    """Return a number of rolls [-] that no way of cutting can be below: all the length over one roll, rounded up."""
    return ceiling(total(lengths) / roll)


def bands(across: Fraction, width: Fraction, overlap: Fraction) -> int:
    """Return how many strips of `width` cover `across`, each lapping the next by `overlap` (all in one unit)."""
    if across <= width:
        return 1
    return ceiling((across - overlap) / (width - overlap))


def spans_of_band(
    rectangles: list[tuple[int, int, int, int]], low: int, high: int, turn_up: int
) -> list[tuple[int, int]]:
    """Return the stretches (from, to) that a strip between `low` and `high` must cover, with `turn_up` at each wall.

    `rectangles` are (along from, across from, along to, across to), all whole numbers of one unit; stretches that
    touch or overlap are one.
    """
    found = []
    for along_from, across_from, along_to, across_to in rectangles:
        if across_from - turn_up < high and across_to + turn_up > low:
            found.append((along_from - turn_up, along_to + turn_up))
    found.sort()
    joined: list[tuple[int, int]] = []
    for start, end in found:
        if joined and start <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(end, joined[-1][1]))
        else:
            joined.append((start, end))
    return joined
