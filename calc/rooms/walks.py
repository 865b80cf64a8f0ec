"""One side of a room, and a room walked round wall by wall: `E 14' S 6' W 4' S 5' W 10' N 11'`."""

from fractions import Fraction

from calc.numbers import measure, words
from calc.numbers.measure import MeasureFault, feet_and_inches
from calc.rooms import outlines
from calc.rooms.closing import Leg, closings, end_of, is_metric, moved, text_of
from calc.rooms.writing import walked, with_points
from calc.text.door import say

LONGEST_SIDE_FT = 200  # longest wall taken for a room [ft]; longer is a slip of the finger
LONGEST_BARE_FT = 60  # longest side without a unit [ft]: in a house a greater number is more often inches
LEAST_SIDE_IN = 1  # least wall or side of a cut-out [in]: a shorter jog is lost under the tape, and most often a slip
MOST_SIDES = 60
MOST_LEGS = 200  # lengths in one walk, where a wall is written in several
MOST_NAMED = 3  # walls that a sentence names as those that may be wrong
WALKED_EXAMPLE = "Den: E 14' S 6' W 4' S 5' W 10' N 11'"


class WallFault(MeasureFault):
    """Raised for one wall or side; `walls` are the numbers of those at fault, from 1, as they were written."""

    def __init__(self, message: str, walls: tuple[int, ...]) -> None:
        super().__init__(message)
        self.walls = walls


def side(text: str) -> Fraction:
    """Return one side of a room or a cut-out [in, 1 to 2,400]; a bare number is feet. Raises MeasureFault."""
    if not text:
        raise MeasureFault(say("walls.missing", "the length of a side is missing"))
    try:
        length = measure.read_length(with_points(text), "ft")
    except MeasureFault as fault:
        raise MeasureFault(
            say("walls.wrong", "{text} will not do, {why}", text=words.quoted(text), why=str(fault.args[0]))
        ) from None
    if length == 0:
        raise MeasureFault(say("walls.zero", "a side of 0 is no wall"))
    if length < LEAST_SIDE_IN:
        raise MeasureFault(
            say("walls.short", "{text} is under {least}, the least side taken", text=words.quoted(text), least="1 in")
        )
    if measure.is_bare(text) and length > LONGEST_BARE_FT * measure.INCHES_PER_FOOT:
        raise MeasureFault(
            say(
                "walls.unit",
                "{text} has no unit: write {feet} for feet, or {inches} for inches, which is {length}",
                text=words.quoted(text),
                feet=text + "'",
                inches=text + '"',
                length=feet_and_inches(length / measure.INCHES_PER_FOOT),
            )
        )
    if length > LONGEST_SIDE_FT * measure.INCHES_PER_FOOT:
        raise MeasureFault(
            say(
                "walls.long",
                "{text} is longer than {most}, the longest wall taken",
                text=words.quoted(text),
                most=str(LONGEST_SIDE_FT) + " ft",
            )
        )
    return length


_STEPS = {
    "n": (0, 1), "north": (0, 1), "e": (1, 0), "east": (1, 0), "s": (0, -1), "south": (0, -1), "w": (-1, 0), "west": (-1, 0),
}  # fmt: skip
_FIRST = ("n", "e", "s", "w", "N", "E", "S", "W")


def step_of(word: str) -> tuple[int, int] | None:
    """The way that a word of a walk goes: N, east, or E14 with its length in it; None for any other word."""
    if word[:1] not in _FIRST:
        return None
    small = words.lower(word)
    return _STEPS.get(small[0] if is_glued(small) else small)


def is_glued(word: str) -> bool:
    """True for a wall in one word: E14 or N9.5."""
    return len(word) > 1 and word[0] in _FIRST and word[1] in "0123456789."


def is_walk(text: str) -> bool:
    """True where at least two walls are named: N, E, S and W are letters of names too."""
    return len([word for word in text.split(" ") if step_of(word) is not None]) > 1


def walk(text: str) -> tuple[tuple[Fraction, Fraction], ...]:
    """Return the corners [in] of a room walked round, from the first. Raises WallFault where it is no closed room."""
    legs = _legs(text)
    if not _ends_where_it_began(legs):
        raise _open(legs)
    return _closed(legs)


def path(text: str) -> tuple[list[tuple[Fraction, Fraction]], tuple[int, int] | None]:
    """Return where a walk comes by [in], from where it begins, as far as its walls can be read; and the way that the first
    one goes which cannot, or None."""
    found = [(Fraction(0), Fraction(0))]
    for step_x, step_y, length in _split(text)[1][:MOST_LEGS]:
        try:
            inches = side(length)
        except MeasureFault:
            return found, (step_x, step_y)
        found.append((found[-1][0] + step_x * inches, found[-1][1] + step_y * inches))
    return found, None


def mended(text: str) -> list[str]:
    """Return walks near to the one in `text` that close, the likeliest first; none where a wall cannot be read."""
    try:
        legs = _legs(text)
    except MeasureFault:
        return []
    return [] if _ends_where_it_began(legs) else [text_of(one.legs) for one in closings(legs, _stands)]


def _ends_where_it_began(legs: list[Leg]) -> bool:
    x, y = end_of(legs)
    return x == 0 and y == 0


def _closed(legs: list[Leg]) -> tuple[tuple[Fraction, Fraction], ...]:
    x, y = Fraction(0), Fraction(0)
    corners = []
    numbers = []  # the first wall, as it was written, of each stretch between two corners
    heading = (0, 0)
    for at, leg in enumerate(legs):
        if (leg.step_x, leg.step_y) == (-heading[0], -heading[1]):
            raise WallFault(
                say(
                    "walls.back",
                    "wall {wall} turns straight back on the one before it; walls must turn left or right",
                    wall=str(at + 1),
                ),
                (at + 1,),
            )
        if (leg.step_x, leg.step_y) != heading:
            corners.append((x, y))
            numbers.append(at + 1)
            if len(corners) > MOST_SIDES:
                raise _many(MOST_SIDES)
        heading = (leg.step_x, leg.step_y)
        x, y = moved(x, y, leg)
    if len(corners) < 4:
        raise WallFault(say("walls.four", "it takes at least four walls to close round a floor"), (len(legs) + 1,))
    outline = tuple(corners)
    met = outlines.crossing(outline)
    if met is not None:
        early, late = numbers[met[0]], numbers[met[1]]
        raise WallFault(
            say(
                "walls.crosses",
                "wall {late} crosses or touches wall {early}; walk round the outside walls once",
                late=str(late),
                early=str(early),
            ),
            (late,),
        )
    return outline


def _many(most: int) -> WallFault:
    return WallFault(say("walls.most", "it has more than {most} walls", most=str(most)), (most + 1,))


def _stands(legs: tuple[Leg, ...]) -> bool:
    """Whether a walk that ends where it began is a room."""
    try:
        _closed(list(legs))
    except MeasureFault:
        return False
    return _ends_where_it_began(list(legs)) and not [leg for leg in legs if leg.length < LEAST_SIDE_IN]


def _open(legs: list[Leg]) -> WallFault:
    """What to say of a walk that does not close: how far off it ends, and which wall to look at."""
    x, y = end_of(legs)
    ways = closings(legs, _stands)
    walls = ways[0].walls if ways else ()
    told = [str(one) for one in walls if one > len(legs) or walls[-1] <= len(legs)]
    if not ways:
        which = say("walls.look", "check the walls that run {which}", which=_which(x, y))
    elif walls[-1] > len(legs):
        walls = tuple([one for one in walls if one > len(legs)])
        which = say("walls.lacks", "wall {wall} is still missing", wall=told[0])
        if len(told) > 1:
            which = say("walls.lack", "walls {walls} are still missing", walls=words.listed(told))
    elif len(told) > 1:
        which = say("walls.check_both", "check walls {walls}", walls=words.listed(told))
    else:
        one_wall = [str(one.walls[0]) for one in ways if len(one.walls) == 1]
        which = say("walls.check", "check wall {wall}", wall=words.listed(one_wall[:MOST_NAMED], "or"))
    english = "the walk does not close, as it ends {off} of where it began: {which}"
    return WallFault(say("walls.open", english, off=_off(x, y, is_metric(legs)), which=which), walls)


def _split(text: str) -> tuple[str, list[tuple[int, int, str]]]:
    """What stands before the first wall, and each wall: the way it goes, and the text of its length."""
    found: list[tuple[int, int, list[str]]] = []
    before = []
    for word in walked(text).split(" "):
        step = step_of(word)
        if step is not None:
            found.append((step[0], step[1], [word[1:]] if is_glued(word) else []))
        elif found:
            found[-1][2].append(word)
        else:
            before.append(word)
    return " ".join(before), [(step_x, step_y, " ".join(length)) for step_x, step_y, length in found]


def _legs(text: str) -> list[Leg]:
    before, found = _split(text)
    if before:
        raise MeasureFault(
            say(
                "walls.first",
                "{text} stands before the first wall; begin with {ways}",
                text=words.quoted(before),
                ways="N, E, S or W",
            )
        )
    if len(found) > MOST_LEGS:
        raise _many(MOST_LEGS)
    legs = []
    for at, (step_x, step_y, length) in enumerate(found):
        try:
            legs.append(Leg(step_x, step_y, side(length), length))
        except MeasureFault as fault:
            number = str(at + 1)
            raise WallFault(
                say("walls.wall", "wall {number}: {why}", number=number, why=str(fault.args[0])), (at + 1,)
            ) from None
    return legs


def _off(x: Fraction, y: Fraction, metric: bool) -> str:
    told = measure.metric_length if metric else feet_and_inches
    parts = []
    if x != 0:
        parts.append(told(abs(x)) + " " + (say("walls.east", "east") if x > 0 else say("walls.west", "west")))
    if y != 0:
        parts.append(told(abs(y)) + " " + (say("walls.north", "north") if y > 0 else say("walls.south", "south")))
    return words.listed(parts)


def _which(x: Fraction, y: Fraction) -> str:
    if x != 0 and y != 0:
        return say("walls.both_ways", "both ways")
    return say("walls.east_west", "east and west") if x != 0 else say("walls.north_south", "north and south")
