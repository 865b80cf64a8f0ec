"""Rooms written the way a person says them, and the geometry of their ceilings.

`Living: 20' x 14'` is a rectangle; `Den: E 14' S 6' W 4' S 5' W 10' N 11'` is walked round, wall by
wall. `slope 4:12 N` lets the ceiling rise to the north in one plane; `less 2' x 4'` takes a cut-out
(a skylight, a hatch) away; `at 6' x 3'` after it says how far east and north it lies. Rooms are separated by `;` or a new line.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.numbers import measure, words
from calc.numbers.exact import square_root, total
from calc.numbers.measure import MeasureFault
from calc.rooms import nearest, outlines
from calc.rooms.nearest import split_words
from calc.rooms.walks import WALKED_EXAMPLE, WallFault, is_glued, is_walk, side, step_of, walk
from calc.rooms.writing import sides_of, walked
from calc.text.door import say

LONGEST_NAME = 60  # letters of a room's name
MOST_ROOMS = 40
SHAPE_LETTERS = ("l", "t", "u", "l-shape", "l-shaped", "t-shape", "u-shape")
STEEPEST_SLOPE = 24  # rise in 12 of run [in]
RUN_IN = 12  # the run a roof or ceiling slope is written over [in]
EXAMPLE = "Living: 20' x 14'"


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
        return abs(outlines.twice_area(self.outline)) / 2 / measure.SQUARE_INCHES_PER_SQUARE_FOOT

    def cutout_area_sqft(self) -> Fraction:
        """Return the area of all cut-outs in plan [sq ft]; those that are known to overlap count once."""
        found = outlines.covered_sqin(list(self.holes))
        for length, width in self.cutouts:
            found += length * width
        for west, south, east, north in self.holes:
            found -= (east - west) * (north - south)
        return found / measure.SQUARE_INCHES_PER_SQUARE_FOOT

    def cutouts_overlap(self) -> bool:
        """Return whether cut-outs whose place is known lie over each other."""
        apart = total([(east - west) * (north - south) for west, south, east, north in self.holes])
        return outlines.covered_sqin(list(self.holes)) != apart

    def slope_factor(self) -> Fraction:
        """Return sloped area over plan area [-]: the root of 1 + slope squared."""
        return square_root(1 + self.slope * self.slope)

    def ceiling_area_sqft(self) -> Fraction:
        """Return the ceiling area along the slope, less the cut-outs [sq ft]. A cut-out's sides are plan sizes like the
        room's, so the slope stretches both."""
        return (self.plan_area_sqft() - self.cutout_area_sqft()) * self.slope_factor()

    def perimeter_ft(self) -> Fraction:
        """Return the length of all walls in plan [ft]."""
        return outlines.length_round(self.outline) / measure.INCHES_PER_FOOT

    def wall_area_sqft(self, low_height_ft: Fraction) -> Fraction:
        """Return the wall area, openings not taken off [sq ft]; `low_height_ft` is the ceiling at its lowest wall."""
        low = low_height_ft * measure.INCHES_PER_FOOT
        if not self.slope:
            return low * outlines.length_round(self.outline) / measure.SQUARE_INCHES_PER_SQUARE_FOOT
        runs = self._runs()
        found = Fraction(0)
        for at, (start, end) in enumerate(outlines.edges(self.outline)):
            length = abs(end[0] - start[0]) + abs(end[1] - start[1])
            mean_run = (runs[at] + runs[(at + 1) % len(runs)]) / 2
            found += length * (low + self.slope * mean_run)
        return found / measure.SQUARE_INCHES_PER_SQUARE_FOOT

    def volume_cuft(self, low_height_ft: Fraction) -> Fraction:
        """Return the volume of air in the room [cu ft], wells of skylights not counted."""
        low = low_height_ft * measure.INCHES_PER_FOOT
        twice = outlines.twice_area(self.outline)
        under = low * abs(twice) / 2
        if self.slope:
            runs = self._runs()
            first = self.outline[0]  # triangles from the first corner: the mean run of each is that of its corners
            moment = Fraction(0)
            for at in range(1, len(runs) - 1):
                one, other = self.outline[at], self.outline[at + 1]
                cross = (one[0] - first[0]) * (other[1] - first[1]) - (other[0] - first[0]) * (one[1] - first[1])
                moment += cross * (runs[0] + runs[at] + runs[at + 1])
            under += self.slope * moment / 6 * (1 if twice > 0 else -1)
        return under / measure.CUBIC_INCHES_PER_CUBIC_FOOT

    def size_ft(self) -> tuple[Fraction, Fraction]:
        """Return the overall length to the east and to the north [ft]."""
        east = [corner[0] for corner in self.outline]
        north = [corner[1] for corner in self.outline]
        return (max(east) - min(east)) / measure.INCHES_PER_FOOT, (max(north) - min(north)) / measure.INCHES_PER_FOOT

    def rectangles_in(self) -> list[tuple[Fraction, Fraction, Fraction, Fraction]]:
        """Return the floor as rectangles (west, south, east, north) [in] that do not overlap, from south to north."""
        return outlines.rectangles(self.outline)

    def highest_rise_in(self) -> Fraction:
        """Return how far the ceiling rises above its lowest wall [in]."""
        return self.slope * max(self._runs()) if self.slope else Fraction(0)

    def _runs(self) -> list[Fraction]:
        """How far each corner lies up the slope from the lowest wall [in]; nothing where the ceiling is level."""
        if not self.slope:
            return [Fraction(0)] * len(self.outline)
        values = [corner[0 if self.toward in "EW" else 1] for corner in self.outline]
        lowest, highest = min(values), max(values)
        return [value - lowest if self.toward in "EN" else highest - value for value in values]


@dataclass(frozen=True)
class Refusal:
    """A room that cannot be taken: what was `given`, its `name`, one sentence, the `nearest` room that can be read, and
    the numbers of the `walls` at fault, from 1, where they are known; a wall that is missing has the number after the last."""

    given: str
    name: str
    message: str
    nearest: str
    walls: tuple[int, ...]


def read_rooms(text: str) -> tuple[tuple[Room, ...], tuple[Refusal, ...]]:
    """Return the rooms in `text`, and why each of the others cannot be read."""
    rooms = []
    faults = []
    chunks = chunks_of(text)
    if len(chunks) > MOST_ROOMS:
        most = say("rooms.most", "Give at most {most} rooms at a time.", most=str(MOST_ROOMS))
        return (), (Refusal(words.plural(len(chunks), "room"), "", most, EXAMPLE, ()),)
    for number, chunk in enumerate(chunks):
        room, refusal = read_one(chunk, number + 1)
        if room is not None:
            rooms.append(room)
        elif refusal is not None:
            faults.append(refusal)
    return tuple(rooms), tuple(faults)


def chunks_of(text: str) -> list[str]:
    """Return what is written of each room, in single spaces: rooms stand on lines or between ;."""
    return [chunk for chunk in [words.tidy(part) for part in text.replace("\n", ";").split(";")] if chunk]


def read_one(chunk: str, number: int) -> tuple[Room | None, Refusal | None]:
    """Return the room in `chunk`, the `number`-th [-, from 1] of all, or why it cannot be read."""
    unnamed = say("rooms.unnamed", "Room {number}", number=str(number))
    try:
        return _read_room(chunk, unnamed), None
    except MeasureFault as fault:
        name, body = parted(chunk)
        form = nearest.form(name, body, _works) or EXAMPLE
        message = say("rooms.try", "{why}; try {form}.", why=str(fault.args[0]), form=form)
        return None, Refusal(chunk, name or unnamed, message, form, fault.walls)


def _works(chunk: str) -> bool:
    try:
        _read_room(chunk, "")
    except MeasureFault:
        return False
    return True


def _read_room(chunk: str, unnamed: str) -> Room:
    name, body = _named(chunk)
    if len(name) > LONGEST_NAME:
        raise MeasureFault(
            say(
                "rooms.name",
                "The name {name} is longer than {most} letters",
                name=words.quoted(name),
                most=str(LONGEST_NAME),
            )
        )
    name = name or unnamed
    if not body or (body == chunk and body != "x" and not [mark for mark in body if mark in "0123456789"]):
        raise MeasureFault(say("rooms.size", "{given} has no size", given=words.quoted(body) if body else name))
    parts = split_words(body)
    try:
        outline = _outline(parts[0][1])
        return _over(name, outline, parts[1:])
    except MeasureFault as fault:
        raise WallFault(name + ": " + str(fault.args[0]), fault.walls) from None


def _over(name: str, outline: tuple[tuple[Fraction, Fraction], ...], parts: list[tuple[str, str]]) -> Room:
    """The ceiling over `outline`: its slope and cut-outs, in the order written."""
    slope, toward = Fraction(0), "N"
    cutouts: list[tuple[Fraction, Fraction]] = []
    holes = []
    last = ""
    for at, (keyword, value) in enumerate(parts):
        if keyword == "slope":
            if "slope" in [one for one, _ in parts[:at]]:
                raise MeasureFault(say("rooms.slopes", "the slope stands twice; a room has one"))
            slope, toward = _slope(value)
        elif keyword == "less":
            cutouts.append(_cut_out(value, outline))
        elif last == "less":
            holes.append(_hole(cutouts[-1], value, outline))
        else:
            raise MeasureFault(say("rooms.place", "a place (at …) stands right after the cut-out that it belongs to"))
        last = keyword
    room = Room(name, outline, slope, toward, tuple(cutouts), tuple(holes))
    if room.ceiling_area_sqft() <= 0:
        raise MeasureFault(say("rooms.cut_outs", "the cut-outs take away the whole ceiling"))
    return room


def _named(chunk: str) -> tuple[str, str]:
    name, body = parted(chunk)
    if words.lower(name) in SHAPE_LETTERS and ":" not in chunk and not is_walk(chunk):
        raise MeasureFault(
            say(
                "rooms.shape",
                "Room {name}: walk round a room of that shape, like {example}, or put a colon after the letter where it is its name",
                name=name,
                example=WALKED_EXAMPLE,
            )
        )
    return name, body


def parted(chunk: str) -> tuple[str, str]:
    """Return the room's name, '' where it has none, and the rest: parted by a colon, or where the size begins."""
    head, colon, rest = chunk.partition(":")
    before = words.lower(head).split(" ")
    in_slope = "slope" in before and [word for word in before[: before.index("slope")] if _is_number(word)]
    if colon and not in_slope:
        return words.tidy(head), words.tidy(rest)
    every = chunk.split(" ")
    walked_round = is_walk(chunk)
    for at, word in enumerate(every):
        follows = at + 1 == len(every) or _is_number(every[at + 1]) or step_of(every[at + 1]) is not None
        if _is_number(word) or (walked_round and step_of(word) is not None and (follows or is_glued(word))):
            name = " ".join(every[:at])
            while name and name[-1] in " ,=-–":
                name = name[:-1]
            begun = step_of(name) is not None and "x" not in words.lower(chunk)  # a walk of one wall so far
            return ("", chunk) if begun or words.lower(name) == "x" else (name, " ".join(every[at:]))
    return "", chunk


def _is_number(word: str) -> bool:
    plain = measure.tidy(word)
    while plain and plain[0] in ".-":
        plain = plain[1:]
    return bool(plain) and plain[0] in "0123456789"


def _outline(text: str) -> tuple[tuple[Fraction, Fraction], ...]:
    if not text:
        raise MeasureFault(say("rooms.missing", "its size is missing"))
    plain = walked(text)
    if is_walk(plain):
        return walk(plain)
    if step_of(plain.split(" ")[0]) is not None and "x" not in words.lower(plain):
        raise WallFault(say("walls.four", "it takes at least four walls to close round a floor"), (2,))
    length, width = _pair(text)
    zero = Fraction(0)
    return ((zero, zero), (length, zero), (length, width), (zero, width))


def _pair(text: str) -> tuple[Fraction, Fraction]:
    sides = sides_of(text)
    numbers = [word for word in sides[0].split(" ") if _is_number(word) and "/" not in word]
    if len(sides) == 1 and len(numbers) == 2 and len(sides[0].split(" ")) == 2:
        raise MeasureFault(say("rooms.x", "put an x between the two sides"))
    if len(sides) == 3:
        raise MeasureFault(
            say("rooms.height", "{text} is not two sides; the height has a field of its own", text=words.quoted(text))
        )
    if len(sides) != 2:
        raise MeasureFault(
            say("rooms.sides", "{text} is not two sides, nor a walk round it wall by wall", text=words.quoted(text))
        )
    if len(numbers) == 2 and len(sides[0].split(" ")) == 2 and measure.is_bare(numbers[0]):
        raise MeasureFault(
            say(
                "rooms.two",
                "{text} is two numbers, and where one belongs to the name it takes a colon after it",
                text=words.quoted(sides[0]),
            )
        )
    for at in (0, 1):
        if measure.is_bare(sides[at]) and measure.is_in_other_unit(sides[1 - at]):
            raise WallFault(
                say(
                    "rooms.units",
                    "{one} has no unit and {other} has one; write both with theirs",
                    one=words.quoted(sides[at]),
                    other=words.quoted(sides[1 - at]),
                ),
                (at + 1,),
            )
    found = []
    for at in (0, 1):
        try:
            found.append(side(sides[at]))
        except MeasureFault as fault:
            raise WallFault(str(fault.args[0]), (at + 1,)) from None
    return found[0], found[1]


def _cut_out(text: str, outline: tuple[tuple[Fraction, Fraction], ...]) -> tuple[Fraction, Fraction]:
    """The two sides of a cut-out [in], which must go into the room one way or the other."""
    try:
        one, other = _pair(text)
    except MeasureFault as fault:
        raise MeasureFault(str(fault.args[0])) from None
    east, north = Room("", outline, Fraction(0), "N", ()).size_ft()
    long, short = max(east, north) * measure.INCHES_PER_FOOT, min(east, north) * measure.INCHES_PER_FOOT
    if max(one, other) > long or min(one, other) > short:
        raise MeasureFault(say("rooms.large", "a cut-out of {text} is larger than the room", text=words.quoted(text)))
    return one, other


def _hole(
    size: tuple[Fraction, Fraction], place: str, outline: tuple[tuple[Fraction, Fraction], ...]
) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """A cut-out in its place: how far east and north of the room's southwest corner, `at 6' x 3'`."""
    sides = sides_of(place)
    if len(sides) != 2:
        raise MeasureFault(
            say("rooms.at", "a place is written {example}: how far east, and how far north", example="at 6' x 3'")
        )
    west = min([x for x, _ in outline]) + measure.read_length(sides[0], "ft")
    south = min([y for _, y in outline]) + measure.read_length(sides[1], "ft")
    hole = (west, south, west + size[0], south + size[1])
    inside = Fraction(0)
    for one in outlines.rectangles(outline):
        wide = min(hole[2], one[2]) - max(hole[0], one[0])
        deep = min(hole[3], one[3]) - max(hole[1], one[1])
        if wide > 0 and deep > 0:
            inside += wide * deep
    if inside != size[0] * size[1]:
        raise MeasureFault(say("rooms.outside", "a cut-out lies outside the room"))
    return hole


def _slope(text: str) -> tuple[Fraction, str]:
    parts = text.split(" ")
    toward = "N"
    if len(parts) == 2 and words.lower(parts[1]) in ("n", "e", "s", "w"):
        toward = {"n": "N", "e": "E", "s": "S", "w": "W"}[words.lower(parts[1])]
        parts = parts[:1]
    rise, mark, run = parts[0].partition(":")
    if len(parts) != 1 or not mark:
        raise MeasureFault(
            say(
                "rooms.slope",
                "a slope is written {one} or {other}, not {text}",
                one="4:12",
                other="4:12 N",
                text=words.quoted(text),
            )
        )
    run_number = measure.read_number(run)
    if run_number == 0:
        raise MeasureFault(say("rooms.run", "a slope cannot have a run of 0"))
    slope = measure.read_number(rise) / run_number
    if slope * RUN_IN > STEEPEST_SLOPE:
        raise MeasureFault(say("rooms.steep", "a slope may rise at most {most}", most=str(STEEPEST_SLOPE) + ":12"))
    return slope, toward
