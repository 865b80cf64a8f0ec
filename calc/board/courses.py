"""A room made ready for boarding: its floor as rectangles across and along the joists, and courses of sheets over it.

Everything is a whole number of eightieths of an inch, in which sixteenths of an inch and joists 19.2 in apart are both
whole. `u` runs across the joists, along the sheets; `v` along the joists, from course to course.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.numbers.exact import round_half_up
from calc.rooms.rooms import Room

PARTS = 80  # of an inch [-]
SIXTEENTH = 5  # a sixteenth of an inch [1/80 in]; cut sizes are read in sixteenths


@dataclass(frozen=True)
class Frame:
    """One room: `boxes` (u from, v from, u to, v to) that do not overlap, the whole from 0 to `length` across the joists
    and 0 to `depth` along them; `turned` where u is north [1/80 in]."""

    name: str
    boxes: tuple[tuple[int, int, int, int], ...]
    length: int
    depth: int
    turned: bool


@dataclass(frozen=True)
class Course:
    """One band of board between the lines `low` and `high`; `spans` are the stretches (from, to) that it must cover;
    `boxes` what of the room lies in it [1/80 in]."""

    room: int
    number: int
    low: int
    high: int
    spans: tuple[tuple[int, int], ...]
    boxes: tuple[tuple[int, int, int, int], ...]

    def depth(self, start: int, end: int) -> int:
        """Return how deep a piece from `start` to `end` must be to cover what lies there."""
        low, high = self.high, self.low
        for one in self.boxes:
            if one[0] < end and one[2] > start:
                low, high = min(low, one[1]), max(high, one[3])
        return high - low

    def area(self, start: int, end: int) -> int:
        """Return what of the room lies between `start` and `end` [1/6400 sq in]."""
        found = 0
        for one in self.boxes:
            left, right = max(one[0], start), min(one[2], end)
            if left < right:
                found += (right - left) * (one[3] - one[1])
        return found


def parts(inches: Fraction) -> int:
    """Return a length [in] in eightieths, to the nearest sixteenth of an inch."""
    return round_half_up(inches * PARTS / SIXTEENTH) * SIXTEENTH


def frame_of(room: Room, joists_run_north: bool) -> Frame:
    """Return the room's ceiling turned so that u runs across the joists, stretched along its slope, holes taken out.

    A room narrower than a sixteenth of an inch has no boxes.
    """
    west, south = min([x for x, _ in room.outline]), min([y for _, y in room.outline])
    stretch = room.slope_factor() if room.slope else Fraction(1)
    stretch_x, stretch_y = (stretch, Fraction(1)) if room.toward in "EW" else (Fraction(1), stretch)
    boxes = []
    for one in _without_holes(room):
        x1, x2 = parts((one[0] - west) * stretch_x), parts((one[2] - west) * stretch_x)
        y1, y2 = parts((one[1] - south) * stretch_y), parts((one[3] - south) * stretch_y)
        if x1 < x2 and y1 < y2:
            boxes.append((x1, y1, x2, y2) if joists_run_north else (y1, x1, y2, x2))
    length, depth = max([0] + [one[2] for one in boxes]), max([0] + [one[3] for one in boxes])
    return Frame(room.name, tuple(boxes), length, depth, not joists_run_north)


def _without_holes(room: Room) -> list[tuple[Fraction, Fraction, Fraction, Fraction]]:
    found = room.rectangles_in()
    for west, south, east, north in room.holes:
        rest = []
        for one in found:
            if one[0] >= east or one[2] <= west or one[1] >= north or one[3] <= south:
                rest.append(one)
                continue
            low, high = max(one[1], south), min(one[3], north)
            pieces = (
                (one[0], one[1], one[2], low),
                (one[0], high, one[2], one[3]),
                (one[0], low, west, high),
                (east, low, one[2], high),
            )
            rest += [piece for piece in pieces if piece[0] < piece[2] and piece[1] < piece[3]]
        found = rest
    return found


def courses_of(frame: Frame, room: int, lines: tuple[int, ...]) -> list[Course]:
    """Return the courses of one room between `lines`, the walls' among them; a course over nothing is left out."""
    found = []
    for number in range(len(lines) - 1):
        low, high = lines[number], lines[number + 1]
        inside = []
        for one in frame.boxes:
            if one[1] < high and one[3] > low:
                inside.append((one[0], max(one[1], low), one[2], min(one[3], high)))
        inside.sort()
        spans: list[tuple[int, int]] = []
        for one in inside:
            if spans and one[0] <= spans[-1][1]:
                spans[-1] = (spans[-1][0], max(spans[-1][1], one[2]))
            else:
                spans.append((one[0], one[2]))
        if spans:
            found.append(Course(room, number, low, high, tuple(spans), tuple(inside)))
    return found
