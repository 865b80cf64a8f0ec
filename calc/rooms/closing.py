"""A walk round a room that does not end where it began: which walls could be wrong, and what would close it."""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from calc.numbers import measure, words
from calc.numbers.measure import feet_and_inches
from calc.rooms.writing import metric_unit

MOST_TRIED = 24  # ways to close a walk that are looked at: each is a walk round of its own, and slow on a phone


@dataclass(frozen=True)
class Leg:
    """One wall as it was written: the way it goes, its length [in], and its text without the letter."""

    step_x: int
    step_y: int
    length: Fraction
    written: str


@dataclass(frozen=True)
class Closing:
    """A walk that would close: its `legs`, and the numbers of the walls that are other than they were written, or new."""

    legs: tuple[Leg, ...]
    walls: tuple[int, ...]


def end_of(legs: list[Leg]) -> tuple[Fraction, Fraction]:
    """Return where a walk ends [in], from where it began: to the east and to the north."""
    x, y = Fraction(0), Fraction(0)
    for leg in legs:
        x, y = moved(x, y, leg)
    return x, y


def moved(x: Fraction, y: Fraction, leg: Leg) -> tuple[Fraction, Fraction]:
    """Return where `leg` leads from (`x`, `y`) [in]: a wall goes along one axis, and the other is left alone."""
    return (x + leg.step_x * leg.length, y) if leg.step_x else (x, y + leg.step_y * leg.length)


def closings(legs: list[Leg], stands: Callable[[tuple[Leg, ...]], bool]) -> list[Closing]:
    """Return the ways to close a walk for which `stands` is true, the likeliest first.

    A walk that has come round (an even number of turns, the last wall across the first) has a wrong length, most likely in
    one of its last walls; any other one lacks its last wall or two.
    """
    x, y = end_of(legs)
    metric = is_metric(legs)
    mended = _mended(legs, x, y, metric)
    grown = _grown(legs, x, y, metric)
    turns = _turns(legs)
    came_round = len(turns) > 3 and len(turns) % 2 == 0 and bool(turns[0]) != bool(turns[-1])
    tried = (mended + grown if came_round else grown + mended)[:MOST_TRIED]
    return [one for one in tried if stands(one.legs)]


def is_metric(legs: list[Leg]) -> bool:
    """Return whether a wall is written in meters, centimeters or millimeters."""
    return bool([leg for leg in legs if metric_unit(words.lower(leg.written))])


def text_of(legs: tuple[Leg, ...]) -> str:
    """Return a walk as a person types it."""
    return " ".join([_letter(leg) + " " + leg.written for leg in legs])


def length_text(inches: Fraction, metric: bool) -> str:
    """Return a length [in] as a person types it, exactly: 11', 11' 6 1/2", 4.25 m."""
    millimeters = inches * measure.MILLIMETERS_PER_INCH
    if metric or (inches * measure.SIXTEENTHS).denominator != 1:
        return words.plain_decimal(millimeters / 1000, 6) + " m"
    text = feet_and_inches(inches)
    return text[:-3] if text.endswith("' 0\"") else text


def _letter(leg: Leg) -> str:
    if leg.step_x:
        return "E" if leg.step_x > 0 else "W"
    return "N" if leg.step_y > 0 else "S"


def _turns(legs: list[Leg]) -> list[int]:
    """For each wall whether it runs east and west (1) or north and south (0); walls in one line are one."""
    found: list[int] = []
    last = (0, 0)
    for leg in legs:
        if (leg.step_x, leg.step_y) != last:
            found.append(abs(leg.step_x))
        last = (leg.step_x, leg.step_y)
    return found


def _mended(legs: list[Leg], x: Fraction, y: Fraction, metric: bool) -> list[Closing]:
    """One wall of each way that is off gets another length, the last ones first."""
    east = [at for at, leg in enumerate(legs) if leg.step_x] if x else [-1]
    north = [at for at, leg in enumerate(legs) if leg.step_y] if y else [-1]
    east.reverse()
    north.reverse()
    found = []
    for one in east:
        for other in north:
            changed = list(legs)
            for at, off in ((one, x), (other, y)):
                if at >= 0:
                    leg = legs[at]
                    length = leg.length - off * (leg.step_x + leg.step_y)
                    if length > 0:
                        changed[at] = Leg(leg.step_x, leg.step_y, length, length_text(length, metric))
            found.append(Closing(tuple(changed), tuple([at + 1 for at in sorted([one, other]) if at >= 0])))
            if len(found) == MOST_TRIED:
                return found
    return found


def _grown(legs: list[Leg], x: Fraction, y: Fraction, metric: bool) -> list[Closing]:
    """Walls are added at the end, across the last one first; or the last one is lengthened, and one is added."""
    east = Leg(-1 if x > 0 else 1, 0, abs(x), length_text(abs(x), metric))
    north = Leg(0, -1 if y > 0 else 1, abs(y), length_text(abs(y), metric))
    last = legs[-1]
    across, along = (north, east) if last.step_x else (east, north)
    count = len(legs)
    if across.length and not along.length:
        return [Closing(tuple(legs + [across]), (count + 1,))]
    if not across.length:
        return []
    length = last.length + along.length * (along.step_x + along.step_y) * (last.step_x + last.step_y)
    found = [Closing(tuple(legs + [across, along]), (count + 1, count + 2))]
    if length > 0:
        longer = Leg(last.step_x, last.step_y, length, length_text(length, metric))
        found.append(Closing(tuple(legs[:-1] + [longer, across]), (count, count + 1)))
    return found
