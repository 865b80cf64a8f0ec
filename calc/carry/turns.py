"""A plate round the corner of two halls, and from a stair's slope into the level: the longest, by the least slant.

Directions are taken as exact fractions (half-angle tangents), so that no engine rounds a sine.
"""

from fractions import Fraction

from calc.numbers.exact import floor, square_root

GRID = 2048  # directions looked at between along and across [-]


def direction(step: int) -> tuple[Fraction, Fraction]:
    """Return (cosine, sine) of the direction at `step` [-, 0 to GRID] between along and across, as exact fractions."""
    top, bottom = step * step, GRID * GRID
    return Fraction(bottom - top, bottom + top), Fraction(2 * step * GRID, bottom + top)


def longest_round(from_in: Fraction, to_in: Fraction, thick_in: Fraction) -> Fraction:
    """Return the longest plate [in] of thickness `thick_in` [in] that turns a right angle from a way `from_in` wide into
    one `to_in` wide [in], both as long as the plate; 0 where it is thicker than a way. Source: geometry, the classic corner
    with a thickness.
    """
    if thick_in >= from_in or thick_in >= to_in:
        return Fraction(0)

    def at(step: int) -> Fraction:
        cosine, sine = direction(step)
        return (from_in * cosine + to_in * sine - thick_in) / (sine * cosine)

    low, high = 1, GRID - 1
    while high - low > 2:  # one valley: the length is long at both ends
        third = (high - low) // 3
        left, right = low + third, high - third
        if at(left) <= at(right):
            high = right
        else:
            low = left
    return max(min([at(step) for step in range(low, high + 1)]), Fraction(0))


def square_to_slope(headroom_in: Fraction, rise_in: Fraction, run_in: Fraction) -> Fraction:
    """Return the clear height square to the slope of a stair [in], of its headroom straight up [in]. Source: geometry."""
    return headroom_in * run_in / square_root(rise_in * rise_in + run_in * run_in)


def longest_over_nosing(
    stair_in: Fraction, hall_in: Fraction, thick_in: Fraction, rise_in: Fraction, run_in: Fraction
) -> Fraction:
    """Return the longest plate [in], `thick_in` deep [in], that turns from a stair's slope into the level.

    `stair_in` is the clear height square to the slope, `hall_in` that of the hall at its head or foot [in], both as long as
    the plate; `rise_in` and `run_in` those of a step [in]; 0 where the plate is deeper than either. Source: geometry, the
    corner of two ways that meet at the angle of the stair.
    """
    if thick_in >= stair_in or thick_in >= hall_in:
        return Fraction(0)
    slope = square_root(rise_in * rise_in + run_in * run_in)
    cosine_all, sine_all = run_in / slope, rise_in / slope

    def at(step: int) -> Fraction:
        cosine, sine = direction(step)
        rest_cosine, rest_sine = cosine_all * cosine + sine_all * sine, sine_all * cosine - cosine_all * sine
        return (stair_in - thick_in * cosine) / sine + (hall_in - thick_in * rest_cosine) / rest_sine

    low, high = 1, floor(GRID * sine_all / (1 + cosine_all)) - 1
    while high - low > 2:
        third = (high - low) // 3
        left, right = low + third, high - third
        if at(left) <= at(right):
            high = right
        else:
            low = left
    return min([at(step) for step in range(low, high + 1)])
