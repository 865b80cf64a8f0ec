"""Strips from rolls: how lengths are cut from rolls of one length, and how bands cover an outline."""

from dataclasses import dataclass
from fractions import Fraction

from calc.exact import ceiling, total
from calc.rooms import Room


@dataclass(frozen=True)
class Strip:
    """One strip: its `room`, where it lies (`along_from`, `low`) and its `length`, all in inches [in]; `eastward`."""

    room: str
    along_from: Fraction
    low: Fraction
    length: Fraction
    eastward: bool


def strips_of(room: Room, width_in: Fraction, overlap_in: Fraction, turn_up_in: Fraction) -> list[Strip]:
    """Return the strips [in] that cover one floor, laid the way that takes less film; ties lie east and west."""
    east_wise = _laid(room, width_in, overlap_in, turn_up_in, True)
    north_wise = _laid(room, width_in, overlap_in, turn_up_in, False)
    shorter = total([one.length for one in north_wise]) < total([one.length for one in east_wise])
    return north_wise if shorter else east_wise


def _laid(room: Room, width_in: Fraction, overlap_in: Fraction, turn_up_in: Fraction, eastward: bool) -> list[Strip]:
    rectangles = room.rectangles_in()
    if not eastward:
        rectangles = [(south, west, north, east) for west, south, east, north in rectangles]
    low = min([one[1] for one in rectangles]) - turn_up_in
    high = max([one[3] for one in rectangles]) + turn_up_in
    found = []
    for band in range(bands(high - low, width_in, overlap_in)):
        start = low + band * (width_in - overlap_in)
        for along_from, along_to in spans_of_band(rectangles, start, start + width_in, turn_up_in):
            found.append(Strip(room.name, along_from, start, along_to - along_from, eastward))
    return found


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
    rectangles: list[tuple[Fraction, Fraction, Fraction, Fraction]], low: Fraction, high: Fraction, turn_up: Fraction
) -> list[tuple[Fraction, Fraction]]:
    """Return the stretches (from, to) that a strip between `low` and `high` must cover, with `turn_up` at each wall.

    `rectangles` are (along from, across from, along to, across to); stretches that touch or overlap are one.
    """
    found = []
    for along_from, across_from, along_to, across_to in rectangles:
        if across_from - turn_up < high and across_to + turn_up > low:
            found.append((along_from - turn_up, along_to + turn_up))
    found.sort(key=lambda span: span[0])
    merged: list[tuple[Fraction, Fraction]] = []
    for start, end in found:
        if merged and start <= merged[-1][1]:
            merged[-1] = (merged[-1][0], max(end, merged[-1][1]))
        else:
            merged.append((start, end))
    return merged
