"""A plate on edge over a landing that turns a stair: the longest that has a way.

In plan the plate is a bar that turns round the newel between two flights; seen from its side it is a board that tilts
along itself between nosings below and headroom above. Each pose has a slant in plan and a tilt; what is left, how much
of the plate stands behind the newel, is held by straight lines alone, so at one slant and tilt it is one stretch. Two
neighbors on the grid of slants and tilts whose stretches touch are taken for one, and a way is a walk over the grid.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.numbers.exact import ceiling, floor

UNITS = 32  # lengths are whole numbers of a thirty-second of an inch [1/in]
SLOPES = 4096  # slopes are whole numbers of one part in so many [-]
SLANTS = 32  # slants looked at from along one flight to along the next [-]
TILTS = 28  # a quarter turn in tilts; only those up to the steeper flight are looked at [-]
SHORTEST_IN, LONGEST_IN = 24, 200  # lengths that are tried, to a whole inch [in]
LEEWAY_IN = Fraction(1, 2)  # taken off for what lies between two poses, and for a hand [in]


@dataclass(frozen=True)
class Flight:
    """A flight of steps `rise_in` high and `run_in` deep each [in]."""

    rise_in: Fraction
    run_in: Fraction

    def slope(self) -> Fraction:
        return self.rise_in / self.run_in


@dataclass(frozen=True)
class Landing:
    """A landing between `lower` and `upper` flight: the stair `stair_in` wide, the landing `deep_in` along the lower
    flight and `wide_in` across it, `headroom_in` straight up over every step and the landing; a sheet `sheet_in` high on
    edge and `thick_in` thick [in]."""

    lower: Flight
    upper: Flight
    stair_in: Fraction
    deep_in: Fraction
    wide_in: Fraction
    headroom_in: Fraction
    sheet_in: Fraction
    thick_in: Fraction


@dataclass(frozen=True)
class _Turn:
    """One turn: out of a flight `out` wide, that falls `down` behind, into a way `into` wide, that rises `up` ahead and ends
    after `end` (0: nowhere). Lengths [1/32 in], slopes [1/4096], heights [1/32 x 1/4096 in]: the line of the nosings ahead
    stands `step` over the landing at the newel, what is above them `lid`; `clear` is the headroom."""

    out: int
    into: int
    end: int
    down: int
    up: int
    step: int
    lid: int
    clear: int
    sheet: int
    thick: int


def _stretch(turn: _Turn, slant: int, tilt: int, length: int) -> tuple[int, int]:
    """Return (least, most) of the plate behind the newel at this pose [1/32 in]; least over most where none will do."""
    along, across, whole = SLANTS * SLANTS - slant * slant, 2 * SLANTS * slant, SLANTS * SLANTS + slant * slant
    cosine, sine, one = TILTS * TILTS - tilt * tilt, 2 * TILTS * tilt, TILTS * TILTS + tilt * tilt
    plan = -((-length * cosine - turn.sheet * sine) // one)
    if turn.end and plan * along + turn.thick * across > turn.end * whole:
        return 1, 0
    least = max(0, plan - (turn.into * whole - turn.thick * along) // across)
    most = min(plan, (turn.out * whole - turn.thick * across) // along)
    tilted = sine * SLOPES // cosine
    behind, ahead = tilted - turn.down * across // whole, tilted - turn.up * along // whole
    room = turn.clear + (-turn.sheet * one * SLOPES) // cosine
    # heights of the plate's foot at the newel that floor and ceiling ask for, as (value, how it goes with the stretch
    # behind): at the newel, at the tail, at the nose
    over = (max(turn.step, 0), 0), (0, behind), (-tilted * plan, tilted), (turn.step - ahead * plan, ahead)
    under = (room + turn.lid, 0), (room, behind), (room + turn.lid - ahead * plan, ahead)
    for low, low_goes in over:
        for top, top_goes in under:
            goes, left = low_goes - top_goes, top - low
            if goes > 0:
                most = min(most, left // goes)
            elif goes < 0:
                least = max(least, -(left // -goes))
            elif left < 0:
                return 1, 0
    return least, most


def _turns(turn: _Turn, tilts: int, length: int) -> bool:
    """Return whether a plate `length` long [1/32 in] walks from all behind the newel to all ahead of it."""
    known: dict[tuple[int, int], tuple[int, int]] = {}

    def stretch(pose: tuple[int, int]) -> tuple[int, int]:
        if pose not in known:
            known[pose] = _stretch(turn, pose[0], pose[1], length)
        return known[pose]

    ways = []
    for tilt in range(tilts):
        least, most = stretch((SLANTS - 1, tilt))
        cosine, sine, one = TILTS * TILTS - tilt * tilt, 2 * TILTS * tilt, TILTS * TILTS + tilt * tilt
        plan = -((-length * cosine - turn.sheet * sine) // one)
        if least <= plan and most == plan:
            ways.append((SLANTS - 1, tilt))
    seen = dict([(pose, True) for pose in ways])
    while ways:
        slant, tilt = ways.pop()
        least, most = stretch((slant, tilt))
        if slant == 1 and least == 0 and (turn.up > 0 or tilt == 0):
            return True
        for pose in ((slant, tilt - 1), (slant, tilt + 1), (slant + 1, tilt), (slant - 1, tilt)):
            next_slant, next_tilt = pose
            if 0 < next_slant < SLANTS and 0 <= next_tilt < tilts and pose not in seen:
                other_least, other_most = stretch(pose)
                if max(least, other_least) <= min(most, other_most):
                    seen[pose] = True
                    ways.append(pose)
    return False


def _longest(turns: tuple[_Turn, ...], most_in: int, slope: Fraction) -> Fraction:
    tilts = 1
    while tilts < TILTS - 1 and Fraction(2 * TILTS * (tilts - 1), TILTS * TILTS - (tilts - 1) * (tilts - 1)) < slope:
        tilts += 1
    low, high = SHORTEST_IN - 1, most_in + 1
    while high - low > 1:
        middle = (low + high) // 2
        if all([_turns(turn, tilts, middle * UNITS) for turn in turns]):
            low = middle
        else:
            high = middle
    return Fraction(low) - LEEWAY_IN if low >= SHORTEST_IN else Fraction(0)


def _turn(place: Landing, into_in: Fraction, end_in: Fraction, down: Fraction, up: Flight | None) -> _Turn:
    slope = Fraction(0) if up is None else up.slope()
    step = Fraction(0) if up is None else (place.stair_in - place.wide_in + up.run_in) * slope
    tilted_thick = place.thick_in * (down + slope)  # nosings and ceiling differ so much over the plate's thickness
    return _Turn(
        floor(place.stair_in * UNITS), floor(into_in * UNITS), floor(end_in * UNITS),
        floor(down * SLOPES), ceiling(slope * SLOPES), ceiling(step * UNITS * SLOPES),
        floor((place.stair_in - place.wide_in) * slope * UNITS * SLOPES),
        floor((place.headroom_in - tilted_thick) * UNITS * SLOPES),
        ceiling(place.sheet_in * UNITS), ceiling(place.thick_in * UNITS),
    )  # fmt: skip


def longest_over_quarter(place: Landing) -> Fraction:
    """Return the longest sheet [in] that turns a quarter on edge, from the lower flight over the landing to the upper one,
    less `LEEWAY_IN`; 0 where none has a way. Source: geometry; a way is given for each, longer ones may have another.
    """
    if place.thick_in >= place.stair_in or place.thick_in >= place.deep_in:
        return Fraction(0)
    turn = _turn(place, place.deep_in, Fraction(0), place.lower.slope(), place.upper)
    return _longest((turn,), LONGEST_IN, max(place.lower.slope(), place.upper.slope()))


def longest_over_half(place: Landing) -> Fraction:
    """Return the longest sheet [in] that turns back on edge: level along the landing, `wide_in` across both flights, then
    up the other one; less `LEEWAY_IN`, 0 where none has a way. Source: geometry; longer ones may have another way.
    """
    if place.thick_in >= place.stair_in or place.thick_in >= place.deep_in:
        return Fraction(0)
    most_in = min(floor(place.wide_in - place.thick_in), LONGEST_IN)
    first = _turn(place, place.deep_in, place.wide_in, place.lower.slope(), None)
    # the upper flight, seen upside down, is a lower one whose headroom begins a step up
    lowered = Landing(
        place.upper, place.upper, place.stair_in, place.deep_in, place.wide_in,
        place.headroom_in - place.upper.rise_in, place.sheet_in, place.thick_in,
    )  # fmt: skip
    second = _turn(lowered, place.deep_in, place.wide_in, place.upper.slope(), None)
    return _longest((first, second), most_in, max(place.lower.slope(), place.upper.slope()))
