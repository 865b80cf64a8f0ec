"""One side of a room, and a room walked round wall by wall: `E 14' S 6' W 4' S 5' W 10' N 11'`."""

from fractions import Fraction

from calc.numbers import measure, words
from calc.numbers.measure import MeasureFault, feet_and_inches
from calc.rooms import outlines

LONGEST_SIDE_FT = 200  # longest wall taken for a room [ft]; longer is a slip of the finger
LONGEST_BARE_FT = 60  # longest side without a unit [ft]: in a house a greater number is more often inches
LEAST_SIDE_IN = 1  # least wall or side of a cut-out [in]: a shorter jog is lost under the tape, and most often a slip
MOST_SIDES = 60
MOST_LEGS = 200  # lengths in one walk, where a wall is written in several
WALKED_EXAMPLE = "Den: E 14' S 6' W 4' S 5' W 10' N 11'"


def side(text: str) -> Fraction:
    """Return one side of a room or a cut-out [in, 1 to 2,400]; a bare number is feet. Raises MeasureFault."""
    if not text:
        raise MeasureFault("the length of a side is missing")
    try:
        length = measure.read_length(text, "ft")
    except MeasureFault as fault:
        raise MeasureFault(words.quoted(text) + " will not do, " + str(fault.args[0])) from None
    if length == 0:
        raise MeasureFault("a side of 0 is no wall")
    if length < LEAST_SIDE_IN:
        raise MeasureFault(words.quoted(text) + " is under 1 in, the least side taken")
    if measure.is_bare(text) and length > LONGEST_BARE_FT * measure.INCHES_PER_FOOT:
        raise MeasureFault(
            words.quoted(text)
            + " has no unit. Write "
            + text
            + "' for feet, or "
            + text
            + '" for inches, which is '
            + feet_and_inches(length / measure.INCHES_PER_FOOT)
        )
    if length > LONGEST_SIDE_FT * measure.INCHES_PER_FOOT:
        raise MeasureFault(
            words.quoted(text) + " is longer than " + str(LONGEST_SIDE_FT) + " ft, the longest wall taken"
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
    """Return the corners [in] of a room walked round, from the first. Raises MeasureFault where it is no closed room."""
    x, y = Fraction(0), Fraction(0)
    corners = []
    heading = (0, 0)
    for step_x, step_y, length in _legs(text):
        if (step_x, step_y) == (-heading[0], -heading[1]):
            raise MeasureFault("the walk turns straight back on itself; walls must turn left or right")
        if (step_x, step_y) != heading:
            corners.append((x, y))
            if len(corners) > MOST_SIDES:
                raise MeasureFault("it has more than " + str(MOST_SIDES) + " walls")
        heading = (step_x, step_y)
        x, y = x + step_x * length, y + step_y * length
    if x != 0 or y != 0:
        raise MeasureFault(
            "the walk does not close: it ends "
            + _off(x, y)
            + " of where it began. Check the walls that run "
            + _which(x, y)
        )
    if len(corners) < 4:
        raise MeasureFault("it takes at least four walls to close round a floor")
    outline = tuple(corners)
    if outlines.crosses(outline):
        raise MeasureFault("the walk crosses or touches itself; walk round the outside walls once")
    return outline


def _legs(text: str) -> list[tuple[int, int, Fraction]]:
    found: list[tuple[int, int, list[str]]] = []
    for word in measure.tidy(text).split(" "):
        step = step_of(word)
        if step is not None:
            found.append((step[0], step[1], [word[1:]] if is_glued(word) else []))
        elif found:
            found[-1][2].append(word)
        else:
            raise MeasureFault(words.quoted(word) + " stands before the first wall; begin with N, E, S or W")
    if len(found) > MOST_LEGS:
        raise MeasureFault("it has more than " + str(MOST_LEGS) + " walls")
    return [(step_x, step_y, side(" ".join(length))) for step_x, step_y, length in found]


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
