"""A room made ready for boarding: its floor as rectangles across and along the joists, and courses of sheets over it.

Everything is a whole number of eightieths of an inch, in which sixteenths of an inch and joists 19.2 in apart are both
whole. `u` runs across the joists, along the sheets; `v` along the joists, from course to course.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.exact import round_half_up
from calc.rooms import Room

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
    """One row of sheets `width` wide between `low` and `high`; `spans` are the stretches (from, to) that it must cover;
    `boxes` what of the room lies in it [1/80 in]."""

    room: int
    number: int
    low: int
    high: int
    width: int
    spans: tuple[tuple[int, int], ...]
    boxes: tuple[tuple[int, int, int, int], ...]

    def depth(self, start: int, end: int) -> int:
        """Return how deep a piece from `start` to `end` must be to cover what lies there."""
        low, high = self.high, self.low
        for one in self.boxes:
            if one[0] < end and one[2] > start:
                low, high = min(low, one[1]), max(high, one[3])
        return high - low

    def lanes(self, start: int, end: int) -> int:
        """Return 1 where the piece is at most half a sheet wide, so that two lie side by side in one, else 2."""
        return 1 if self.depth(start, end) * 2 <= self.width else 2

    def need(self, start: int, end: int) -> int:
        """Return the least lane length that any pieces over this stretch take: length times lanes, place by place."""
        cuts = [start, end]
        for one in self.boxes:
            cuts += [edge for edge in (one[0], one[2]) if start < edge < end]
        cuts.sort()
        found = 0
        for at in range(len(cuts) - 1):
            if cuts[at] < cuts[at + 1] and self.depth(cuts[at], cuts[at + 1]) > 0:
                found += (cuts[at + 1] - cuts[at]) * self.lanes(cuts[at], cuts[at + 1])
        return found


def parts(inches: Fraction) -> int:
    """Return a length [in] in eightieths, to the nearest sixteenth of an inch."""
    return round_half_up(inches * PARTS / SIXTEENTH) * SIXTEENTH


def frame_of(room: Room, joists_run_north: bool) -> Frame:
    """Return the room's ceiling turned so that u runs across the joists, stretched along its slope, holes taken out."""
    west, south = min([x for x, _ in room.outline]), min([y for _, y in room.outline])
    stretch = room.slope_factor() if room.slope else Fraction(1)
    stretch_x, stretch_y = (stretch, Fraction(1)) if room.toward in "EW" else (Fraction(1), stretch)
    boxes = []
    for one in _without_holes(room):
        x1, x2 = parts((one[0] - west) * stretch_x), parts((one[2] - west) * stretch_x)
        y1, y2 = parts((one[1] - south) * stretch_y), parts((one[3] - south) * stretch_y)
        if x1 < x2 and y1 < y2:
            boxes.append((x1, y1, x2, y2) if joists_run_north else (y1, x1, y2, x2))
    length, depth = max([one[2] for one in boxes]), max([one[3] for one in boxes])
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


def plans_of(depth: int, widths: tuple[int, ...], least_strip: int) -> list[tuple[tuple[int, int, int], ...]]:
    """Return ways to lay courses over `depth`: each a row of (from, to, sheet width), cut edges at the walls only.

    The fewest courses, with the strip that is cut last or first; both are cut where it would be under `least_strip`.
    """
    most = max(widths)
    count = -(-depth // most)
    found: list[tuple[tuple[int, int, int], ...]] = []
    for narrow in range(count + 1):  # so many of the narrower sheets among the courses
        order = [most] * (count - narrow) + [min(widths)] * narrow
        if total_of(order) < depth or (narrow and len(widths) == 1):
            continue
        for rows in (order, order[::-1]):
            for plan in _cut_to(rows, depth, least_strip):
                if plan not in found:
                    found.append(plan)
    return found


def total_of(values: list[int]) -> int:
    """Return the sum of whole numbers."""
    return sum(values)


def _cut_to(rows: list[int], depth: int, least_strip: int) -> list[tuple[tuple[int, int, int], ...]]:
    spare = total_of(rows) - depth
    if spare == 0 or len(rows) == 1:
        return [_rows([min(rows[0], depth)] if len(rows) == 1 else rows, rows)]
    last = rows[-1] - spare
    if last >= least_strip:
        first_cut = [rows[0] - spare] + rows[1:]
        found = [_rows(rows[:-1] + [last], rows)]
        if rows[0] - spare >= least_strip:
            found.append(_rows(first_cut, rows))
        return found
    take = min(least_strip, rows[-1]) - last  # the first gives so much to the last
    if rows[0] - take < least_strip:
        return [_rows(rows[:-1] + [last], rows)] if last > 0 else []
    return [_rows([rows[0] - take] + rows[1:-1] + [last + take], rows)]


def _rows(cut: list[int], whole: list[int]) -> tuple[tuple[int, int, int], ...]:
    found = []
    at = 0
    for order, sheet in enumerate(whole):
        width = cut[order]
        found.append((at, at + width, sheet))
        at += width
    return tuple(found)


def courses_of(frame: Frame, room: int, plan: tuple[tuple[int, int, int], ...]) -> list[Course]:
    """Return the courses of one room by one plan; a course over nothing is left out."""
    found = []
    for number, (low, high, width) in enumerate(plan):
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
            found.append(Course(room, number, low, high, width, tuple(spans), tuple(inside)))
    return found
