"""Moist air: the vapor pressure of water, on which drying hangs."""

from fractions import Fraction

from calc.exact import exponential, logarithm

RANKINE_AT_ZERO_FAHRENHEIT = Fraction(45967, 100)  # 0 degF in degrees Rankine, by definition
# ln(pressure [psi]) = C8/T + C9 + C10 T + C11 T^2 + C12 T^3 + C13 ln T, T [degrees Rankine];
# ASHRAE Handbook Fundamentals 2017, chapter 1, equation 6 (over liquid water, 32 to 392 degF)
C8 = Fraction(-10440397, 1000)
C9 = Fraction(-1129465, 100000)
C10 = Fraction(-27022355, 1000000000)
C11 = Fraction(12890360, 1000000000000)
C12 = Fraction(-24780681, 10000000000000000)
C13 = Fraction(65459673, 10000000)
LOWEST_TEMPERATURE_F = 32
HIGHEST_TEMPERATURE_F = 392
_KEPT = 10**9  # the pressure is kept to this part of a psi before it is used on


def vapor_pressure_psi(temperature_f: Fraction) -> Fraction:
    """Return the pressure of water vapor in saturated air [psi] at `temperature_f` [degF, 32 to 392].

    Rounded to nine decimals. Raises ValueError outside the range.
    Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 6.
    """
    if not LOWEST_TEMPERATURE_F <= temperature_f <= HIGHEST_TEMPERATURE_F:
        raise ValueError("vapor pressure is worked out from 32 to 392 °F")
    rankine = temperature_f + RANKINE_AT_ZERO_FAHRENHEIT
    power = C8 / rankine + C9 + rankine * (C10 + rankine * (C11 + rankine * C12)) + C13 * logarithm(rankine)
    return Fraction(int(exponential(power) * _KEPT + Fraction(1, 2)), _KEPT)
