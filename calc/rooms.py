"""Rooms written the way a person says them, and the geometry of their ceilings.

`Living: 20' x 14'` is a rectangle; `Den: E 14' S 6' W 4' S 5' W 10' N 11'` is walked round, wall by
wall. `slope 4:12 N` lets the ceiling rise to the north in one plane; `less 2' x 4'` takes a cut-out
(a skylight, a hatch) away; `at 6' x 3'` after it says how far east and north it lies. Rooms are separated by `;` or a new line.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc import measure, words
from calc.exact import square_root
from calc.measure import MeasureFault, feet_and_inches

LONGEST_SIDE_FT = 200  # longest wall taken for a room [ft]; longer is a slip of the finger
MOST_ROOMS = 40
MOST_SIDES = 60
STEEPEST_SLOPE = 24  # rise in 12 of run [in]
RUN_IN = 12  # the run a roof or ceiling slope is written over [in]
EXAMPLE = "Living: 20' x 14'"
WALKED_EXAMPLE = "Den: E 14' S 6' W 4' S 5' W 10' N 11'"


@dataclass(frozen=True)
class Room:
    """One room: `outline` is its corners [in] with x to the east and y to the north, in the order walked;
    `slope` is the rise for one of run [-], toward `toward` (N, E, S or W); `cutouts` are (length, width) [in];
    `holes` are those of them whose place is known, as (west, south, east, north) [in]."""

    name: str
    outline: tuple[tuple[Fraction, Fraction], ...]
    slope: Fraction
    toward: str
    cutouts: tuple[tuple[Fraction, Fraction], ...]
    holes: tuple[tuple[Fraction, Fraction, Fraction, Fraction], ...] = ()

    def plan_area_sqft(self) -> Fraction:
        """Return the floor area inside the outline [sq ft], by the corner formula."""
        return abs(_twice_area(self.outline)) / 2 / measure.SQUARE_INCHES_PER_SQUARE_FOOT

    def cutout_area_sqft(self) -> Fraction:
        """Return the area of all cut-outs [sq ft]."""
        total = Fraction(0)
        for length, width in self.cutouts:
            total += length * width
        return total / measure.SQUARE_INCHES_PER_SQUARE_FOOT

    def slope_factor(self) -> Fraction:
        """Return sloped area over plan area [-]: the root of 1 + slope squared."""
        return square_root(1 + self.slope * self.slope)

    def ceiling_area_sqft(self) -> Fraction:
        """Return the ceiling area along the slope, less the cut-outs [sq ft]."""
        return self.plan_area_sqft() * self.slope_factor() - self.cutout_area_sqft()

    def perimeter_ft(self) -> Fraction:
        """Return the length of all walls in plan [ft]."""
        total = Fraction(0)
        for start, end in _edges(self.outline):
            total += abs(end[0] - start[0]) + abs(end[1] - start[1])
        return total / measure.INCHES_PER_FOOT

    def wall_area_sqft(self, low_height_ft: Fraction) -> Fraction:
        """Return the wall area, openings not taken off [sq ft]; `low_height_ft` is the ceiling at its lowest wall."""
        low = low_height_ft * measure.INCHES_PER_FOOT
        total = Fraction(0)
        for start, end in _edges(self.outline):
            length = abs(end[0] - start[0]) + abs(end[1] - start[1])
            mean_run = (self._run(start) + self._run(end)) / 2
            total += length * (low + self.slope * mean_run)
        return total / measure.SQUARE_INCHES_PER_SQUARE_FOOT

    def volume_cuft(self, low_height_ft: Fraction) -> Fraction:
        """Return the volume of air in the room [cu ft], wells of skylights not counted."""
        low = low_height_ft * measure.INCHES_PER_FOOT
        moment = Fraction(0)  # the integral of the run over the floor, by the corner formula
        for start, end in _edges(self.outline):
            cross = start[0] * end[1] - end[0] * start[1]
            moment += cross * (self._run(start) + self._run(end) + self._run_at_origin())
        moment = moment / 6
        sign = 1 if _twice_area(self.outline) > 0 else -1
        floor_sqin = abs(_twice_area(self.outline)) / 2
        return (low * floor_sqin + self.slope * moment * sign) / measure.CUBIC_INCHES_PER_CUBIC_FOOT

    def size_ft(self) -> tuple[Fraction, Fraction]:
        """Return the overall length to the east and to the north [ft]."""
        east = [corner[0] for corner in self.outline]
        north = [corner[1] for corner in self.outline]
        return (max(east) - min(east)) / measure.INCHES_PER_FOOT, (max(north) - min(north)) / measure.INCHES_PER_FOOT

    def rectangles_in(self) -> list[tuple[Fraction, Fraction, Fraction, Fraction]]:
        """Return the floor as rectangles (west, south, east, north) [in] that do not overlap, from south to north."""
        levels = _different([corner[1] for corner in self.outline])
        found = []
        for at in range(len(levels) - 1):
            middle = (levels[at] + levels[at + 1]) / 2
            crossings = []
            for start, end in _edges(self.outline):
                if start[0] == end[0] and min(start[1], end[1]) < middle < max(start[1], end[1]):
                    crossings.append(start[0])
            crossings.sort()
            for pair in range(0, len(crossings) - 1, 2):
                found.append((crossings[pair], levels[at], crossings[pair + 1], levels[at + 1]))
        return found

    def highest_rise_in(self) -> Fraction:
        """Return how far the ceiling rises above its lowest wall [in]."""
        return self.slope * max([self._run(corner) for corner in self.outline])

    def _run_at_origin(self) -> Fraction:
        return self._run((Fraction(0), Fraction(0)))

    def _run(self, corner: tuple[Fraction, Fraction]) -> Fraction:
        """How far `corner` lies up the slope from the lowest wall [in]."""
        axis = 0 if self.toward in "EW" else 1
        values = [other[axis] for other in self.outline]
        return corner[axis] - min(values) if self.toward in "EN" else max(values) - corner[axis]


def read_rooms(text: str) -> tuple[tuple[Room, ...], tuple[tuple[str, str], ...]]:
    """Return the rooms in `text`, and for each room that cannot be read (what was given, one sentence)."""
    rooms = []
    faults = []
    chunks = [chunk for chunk in [words.tidy(part) for part in text.replace("\n", ";").split(";")] if chunk]
    if len(chunks) > MOST_ROOMS:
        return (), ((words.whole(len(chunks)) + " rooms", "Give at most " + str(MOST_ROOMS) + " rooms at a time."),)
    for number, chunk in enumerate(chunks):
        try:
            rooms.append(_read_room(chunk, number + 1))
        except MeasureFault as fault:
            faults.append((chunk, str(fault.args[0])))
    return tuple(rooms), tuple(faults)


def _read_room(chunk: str, number: int) -> Room:
    head, colon, rest = chunk.partition(":")
    if not colon or " slope" in words.lower(head):
        name, body = "Room " + str(number), chunk
    else:
        name, body = words.tidy(head) or "Room " + str(number), words.tidy(rest)
    if not body:
        raise MeasureFault(name + " has no size.")
    parts = _split_words(body, ("slope", "less", "at"))
    try:
        outline = _outline(parts[0][1], name)
        slope, toward = Fraction(0), "N"
        cutouts: list[tuple[Fraction, Fraction]] = []
        holes = []
        last = ""
        for keyword, value in parts[1:]:
            if keyword == "slope":
                slope, toward = _slope(value)
            elif keyword == "less":
                cutouts.append(_pair(value, "a cut-out"))
            elif last == "less":
                holes.append(_hole(cutouts[-1], value, outline))
            else:
                raise MeasureFault("a place (at …) stands right after the cut-out that it belongs to")
            last = keyword
    except MeasureFault as fault:
        message = str(fault.args[0])
        raise MeasureFault(message if message.startswith(name) else name + ": " + message + ".") from None
    room = Room(name, outline, slope, toward, tuple(cutouts), tuple(holes))
    if room.ceiling_area_sqft() <= 0:
        raise MeasureFault(name + ": the cut-outs take away the whole ceiling.")
    return room


def _split_words(body: str, keywords: tuple[str, ...]) -> list[tuple[str, str]]:
    """Return [('', text before the first keyword), (keyword, text after it), ...]."""
    parts: list[tuple[str, list[str]]] = [("", [])]
    for word in body.split(" "):
        if words.lower(word) in keywords:
            parts.append((words.lower(word), []))
        else:
            parts[-1][1].append(word)
    return [(keyword, " ".join(found)) for keyword, found in parts]


def _outline(text: str, name: str) -> tuple[tuple[Fraction, Fraction], ...]:
    if not text:
        raise MeasureFault("the size is missing")
    first = words.lower(text)[0]
    if first in "nesw":
        return _walk(text, name)
    length, width = _pair(text, "a room")
    zero = Fraction(0)
    return ((zero, zero), (length, zero), (length, width), (zero, width))


def _pair(text: str, what: str) -> tuple[Fraction, Fraction]:
    plain = words.lower(measure.tidy(text)).replace("×", "x").replace("*", "x").replace(" by ", " x ")
    sides = plain.split("x")
    if len(sides) != 2:
        raise MeasureFault(what + " needs two sides with an x between them")
    return _side(sides[0]), _side(sides[1])


def _hole(
    size: tuple[Fraction, Fraction], place: str, outline: tuple[tuple[Fraction, Fraction], ...]
) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """A cut-out in its place: how far east and north of the room's southwest corner, `at 6' x 3'`."""
    sides = words.lower(measure.tidy(place)).replace("×", "x").split("x")
    if len(sides) != 2:
        raise MeasureFault("a place is written at 6' x 3': how far east, and how far north")
    west = min([x for x, _ in outline]) + measure.read_length(sides[0], "ft")
    south = min([y for _, y in outline]) + measure.read_length(sides[1], "ft")
    hole = (west, south, west + size[0], south + size[1])
    inside = Fraction(0)
    for one in Room("", outline, Fraction(0), "N", ()).rectangles_in():
        wide = min(hole[2], one[2]) - max(hole[0], one[0])
        deep = min(hole[3], one[3]) - max(hole[1], one[1])
        if wide > 0 and deep > 0:
            inside += wide * deep
    if inside != size[0] * size[1]:
        raise MeasureFault("a cut-out lies outside the room")
    return hole


def _side(text: str) -> Fraction:
    try:
        length = measure.read_length(text, "ft")
    except MeasureFault as fault:
        raise MeasureFault(words.quoted(text) + " will not do, " + str(fault.args[0])) from None
    if length == 0:
        raise MeasureFault("a side of 0 is no wall")
    if length > LONGEST_SIDE_FT * measure.INCHES_PER_FOOT:
        raise MeasureFault(
            words.quoted(text) + " is longer than " + str(LONGEST_SIDE_FT) + " ft, the longest wall taken"
        )
    return length


def _slope(text: str) -> tuple[Fraction, str]:
    parts = text.split(" ")
    toward = "N"
    if len(parts) == 2 and words.lower(parts[1]) in ("n", "e", "s", "w"):
        toward = words.lower(parts[1]).replace("n", "N").replace("e", "E").replace("s", "S").replace("w", "W")
        parts = parts[:1]
    rise, mark, run = parts[0].partition(":")
    if len(parts) != 1 or not mark:
        raise MeasureFault("a slope is written 4:12 or 4:12 N, not " + words.quoted(text))
    run_number = measure.read_number(run)
    if run_number == 0:
        raise MeasureFault("a slope cannot have a run of 0")
    slope = measure.read_number(rise) / run_number
    if slope * RUN_IN > STEEPEST_SLOPE:
        raise MeasureFault("a slope may rise at most " + str(STEEPEST_SLOPE) + ":12")
    return slope, toward


_STEPS = (
    ("n", 0, 1),
    ("north", 0, 1),
    ("e", 1, 0),
    ("east", 1, 0),
    ("s", 0, -1),
    ("south", 0, -1),
    ("w", -1, 0),
    ("west", -1, 0),
)


def _walk(text: str, name: str) -> tuple[tuple[Fraction, Fraction], ...]:
    x, y = Fraction(0), Fraction(0)
    corners = []
    heading = (0, 0)
    for step_x, step_y, length in _legs(text):
        if (step_x, step_y) == (-heading[0], -heading[1]):
            raise MeasureFault(name + " turns straight back on itself; walls must turn left or right.")
        if (step_x, step_y) != heading:
            corners.append((x, y))
        heading = (step_x, step_y)
        x, y = x + step_x * length, y + step_y * length
    if x != 0 or y != 0:
        raise MeasureFault(
            name
            + " does not close: the walk ends "
            + _off(x, y)
            + " of where it began. Check the walls that run "
            + _which(x, y)
            + "."
        )
    if len(corners) < 4:
        raise MeasureFault(name + " needs at least four walls to close round a floor.")
    if len(corners) > MOST_SIDES:
        raise MeasureFault(name + " has more than " + str(MOST_SIDES) + " walls.")
    outline = tuple(corners)
    if _crosses(outline):
        raise MeasureFault(name + " crosses or touches itself; walk round the outside walls once.")
    return outline


def _legs(text: str) -> list[tuple[int, int, Fraction]]:
    found: list[tuple[int, int, list[str]]] = []
    for word in measure.tidy(text).split(" "):
        small = words.lower(word)
        step = [row for row in _STEPS if row[0] == small]
        if not step and small and small[0] in "nesw" and len(small) > 1 and small[1] in "0123456789.":
            step = [row for row in _STEPS if row[0] == small[0]]
            found.append((step[0][1], step[0][2], [word[1:]]))
        elif step:
            found.append((step[0][1], step[0][2], []))
        elif found:
            found[-1][2].append(word)
    return [(step_x, step_y, _side(" ".join(length))) for step_x, step_y, length in found]


def _off(x: Fraction, y: Fraction) -> str:
    parts = []
    if x != 0:
        parts.append(feet_and_inches(abs(x)) + (" east" if x > 0 else " west"))
    if y != 0:
        parts.append(feet_and_inches(abs(y)) + (" north" if y > 0 else " south"))
    return " and ".join(parts)


def _which(x: Fraction, y: Fraction) -> str:
    if x != 0 and y != 0:
        return "both ways"
    return "east and west" if x != 0 else "north and south"


def _different(values: list[Fraction]) -> list[Fraction]:
    """Return the values in rising order, each once."""
    kept: list[Fraction] = []
    for value in sorted(values):
        if not kept or value != kept[-1]:
            kept.append(value)
    return kept


def _edges(
    outline: tuple[tuple[Fraction, Fraction], ...],
) -> list[tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]]]:
    return [(corner, outline[(at + 1) % len(outline)]) for at, corner in enumerate(outline)]


def _twice_area(outline: tuple[tuple[Fraction, Fraction], ...]) -> Fraction:
    total = Fraction(0)
    for start, end in _edges(outline):
        total += start[0] * end[1] - end[0] * start[1]
    return total


def _crosses(outline: tuple[tuple[Fraction, Fraction], ...]) -> bool:
    """True where two walls that are not neighbors meet; walls run north-south or east-west, so boxes are enough."""
    edges = _edges(outline)
    count = len(edges)
    for first in range(count):
        for second in range(first + 1, count):
            neighbors = second == first + 1 or (first == 0 and second == count - 1)
            if not neighbors and _boxes_meet(edges[first], edges[second]):
                return True
    return False


def _boxes_meet(
    one: tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]],
    other: tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]],
) -> bool:
    for axis in (0, 1):
        if max(one[0][axis], one[1][axis]) < min(other[0][axis], other[1][axis]):
            return False
        if max(other[0][axis], other[1][axis]) < min(one[0][axis], one[1][axis]):
            return False
    return True
