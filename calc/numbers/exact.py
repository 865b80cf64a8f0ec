"""Whole-number arithmetic that gives the same digits in every engine.

No float is used anywhere in `calc`: lengths, areas and rates are exact fractions, and the few
functions that are not rational (square root, exp, ln) are worked out on integers to a stated number
of decimal places. Two engines can then never differ in a last digit.
"""

from fractions import Fraction

PLACES = 12
"""Decimal places kept by `square_root`, `exponential` and `logarithm` [-]; enough for nine figures in use."""

_ONE = 10**PLACES
_GUARD = 10**6  # guard digits inside a series, dropped before the result is handed back
_LN2_SCALED = 693147180559945309  # ln 2 x 10^18, a mathematical constant


def round_half_up(value: Fraction) -> int:
    """Return the nearest whole number to `value` [-, any]; a half goes up (away from minus infinity)."""
    return (2 * value.numerator + value.denominator) // (2 * value.denominator)


def ceiling(value: Fraction) -> int:
    """Return the smallest whole number that is not below `value` [-, any]. Purchases use this one."""
    return -((-value.numerator) // value.denominator)


def floor(value: Fraction) -> int:
    """Return the largest whole number that is not above `value` [-, any]."""
    return value.numerator // value.denominator


def total(values: list[Fraction]) -> Fraction:
    """Return the sum of `values` [-, any], exactly; 0 for none."""
    found = Fraction(0)
    for value in values:
        found += value
    return found


def whole_square_root(value: int) -> int:
    """Return the whole part of the square root of `value` [-, >= 0], by Newton's iteration on integers."""
    if value < 2:
        return value
    guess = 1 << ((_bits(value) + 1) // 2)
    while True:
        better = (guess + value // guess) // 2
        if better >= guess:
            return guess
        guess = better


def square_root(value: Fraction) -> Fraction:
    """Return the square root of `value` [-, >= 0], cut to `PLACES` decimal places.

    An exact square gives an exact root (25/16 gives 5/4).
    """
    top, bottom = whole_square_root(value.numerator), whole_square_root(value.denominator)
    if top * top == value.numerator and bottom * bottom == value.denominator:
        return Fraction(top, bottom)
    return Fraction(whole_square_root(value.numerator * _ONE * _ONE // value.denominator), _ONE)


def logarithm(value: Fraction) -> Fraction:
    """Return the natural logarithm of `value` [-, > 0], rounded to `PLACES` decimal places."""
    halvings = 0
    while value >= 2:
        value = value / 2
        halvings += 1
    while value < 1:
        value = value * 2
        halvings -= 1
    scale = _ONE * _GUARD
    # ln v = 2 artanh((v - 1)/(v + 1)); with 1 <= v < 2 the series gains a digit a term
    ratio = (value.numerator - value.denominator) * scale // (value.numerator + value.denominator)
    square = ratio * ratio // scale
    total, power, odd = 0, ratio, 1
    while power:
        total += power // odd
        power = power * square // scale
        odd += 2
    scaled = 2 * total + halvings * _LN2_SCALED
    return Fraction(round_half_up(Fraction(scaled, _GUARD)), _ONE)


def exponential(value: Fraction) -> Fraction:
    """Return e to the power `value` [-, -40 to 40], rounded to `PLACES` decimal places."""
    scale = _ONE * _GUARD
    scaled = value.numerator * scale // value.denominator
    doublings = scaled // _LN2_SCALED
    rest = scaled - doublings * _LN2_SCALED
    total, term, count = scale, scale, 1
    while term:
        term = term * rest // (scale * count)
        total += term
        count += 1
    exact = Fraction(total) * 2**doublings if doublings >= 0 else Fraction(total, 2 ** (-doublings))
    return Fraction(round_half_up(exact / _GUARD), _ONE)


def _bits(value: int) -> int:
    count = 0
    while value:
        value >>= 1
        count += 1
    return count
