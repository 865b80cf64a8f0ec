"""Moist air: the vapor pressure of water, on which drying hangs."""

from fractions import Fraction

from calc.numbers.exact import exponential, logarithm

RANKINE_AT_ZERO_FAHRENHEIT = Fraction(45967, 100)  # 0 degF in degrees Rankine, by definition
# ln(pressure [psi]) = C8/T + C9 + C10 T + C11 T^2 + C12 T^3 + C13 ln T, T [degrees Rankine];
# ASHRAE Handbook Fundamentals 2017, chapter 1, equation 6 (over liquid water, 32 to 392 degF)
C8 = Fraction(-10440397, 1000)
C9 = Fraction(-1129465, 100000)
C10 = Fraction(-27022355, 1000000000)
C11 = Fraction(12890360, 1000000000000)
C12 = Fraction(-24780681, 10000000000000000)
C13 = Fraction(65459673, 10000000)
# the same over ice, -148 to 32 degF: equation 5
ICE_1 = Fraction(-102141650, 10000)
ICE_2 = Fraction(-48932428, 10000000)
ICE_3 = Fraction(-53765794, 10000000000)
ICE_4 = Fraction(19202377, 10**14)
ICE_5 = Fraction(35575832, 10**17)
ICE_6 = Fraction(-90344688, 10**21)
ICE_7 = Fraction(41635019, 10000000)
STANDARD_PRESSURE_PSI = Fraction(14696, 1000)  # at sea level, ASHRAE 2017 chapter 1
WATER_TO_AIR_MASS = Fraction(621945, 1000000)  # ratio of molar masses [-], the same chapter
LOWEST_TEMPERATURE_F = 32
LOWEST_ICE_F = -148
HIGHEST_TEMPERATURE_F = 392
FIRST_GUESS_F, SECOND_GUESS_F = Fraction(45), Fraction(65)  # usual dew points [degF]
SECANTS = 3  # each triples the right digits
DEW_POINT_KEPT = 10**6  # parts of a degree
_KEPT = 10**9  # the pressure is kept to this part of a psi before it is used on


def vapor_pressure_psi(temperature_f: Fraction) -> Fraction:
    """Return the pressure of water vapor in saturated air [psi] at `temperature_f` [degF, 32 to 392].

    Rounded to nine decimals. Raises ValueError outside the range.
    Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 6.
    """
    if not LOWEST_TEMPERATURE_F <= temperature_f <= HIGHEST_TEMPERATURE_F:
        raise ValueError("vapor pressure is worked out from 32 to 392 °F")
    return Fraction(int(exponential(_log_pressure(temperature_f)) * _KEPT + Fraction(1, 2)), _KEPT)


def outdoor_pressure_psi(temperature_f: Fraction) -> Fraction:
    """Return the pressure of water vapor in saturated air [psi] at `temperature_f` [degF, -148 to 392], over ice below 32.

    Rounded to nine decimals. Raises ValueError outside the range.
    Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equations 5 and 6.
    """
    if temperature_f >= LOWEST_TEMPERATURE_F:
        return vapor_pressure_psi(temperature_f)
    if temperature_f < LOWEST_ICE_F:
        raise ValueError("vapor pressure over ice is worked out from -148 °F")
    t = temperature_f + RANKINE_AT_ZERO_FAHRENHEIT
    power = ICE_1 / t + ICE_2 + t * (ICE_3 + t * (ICE_4 + t * (ICE_5 + t * ICE_6))) + ICE_7 * logarithm(t)
    return Fraction(int(exponential(power) * _KEPT + Fraction(1, 2)), _KEPT)


def humidity_ratio(pressure_psi: Fraction) -> Fraction:
    """Return the water in a pound of dry air [lb/lb] at vapor pressure `pressure_psi` [psi, 0 to 14] at sea level.

    Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 20.
    """
    return WATER_TO_AIR_MASS * pressure_psi / (STANDARD_PRESSURE_PSI - pressure_psi)


def dew_point_f(pressure_psi: Fraction) -> Fraction | None:
    """Return the temperature [degF] at which air of vapor pressure `pressure_psi` [psi, > 0] is full, to four decimals.

    None below 32 degF, where frost falls instead. By the secant rule on 1/T, in which ln p is nearly a straight line.
    """
    goal = logarithm(pressure_psi)
    low_f, high_f = FIRST_GUESS_F, SECOND_GUESS_F
    low, high = _log_pressure(low_f), _log_pressure(high_f)
    for _ in range(SECANTS):
        if high == low:
            break
        inverse_low, inverse_high = 1 / (low_f + RANKINE_AT_ZERO_FAHRENHEIT), 1 / (high_f + RANKINE_AT_ZERO_FAHRENHEIT)
        inverse = inverse_high + (goal - high) * (inverse_high - inverse_low) / (high - low)
        found = Fraction(
            int((1 / inverse - RANKINE_AT_ZERO_FAHRENHEIT) * DEW_POINT_KEPT + Fraction(1, 2)), DEW_POINT_KEPT
        )
        low_f, low, high_f, high = high_f, high, found, _log_pressure(found)
    return high_f if high_f >= LOWEST_TEMPERATURE_F else None


def _log_pressure(temperature_f: Fraction) -> Fraction:
    """The natural logarithm of the pressure over liquid water: equation 6 as it is printed."""
    rankine = temperature_f + RANKINE_AT_ZERO_FAHRENHEIT
    return C8 / rankine + C9 + rankine * (C10 + rankine * (C11 + rankine * C12)) + C13 * logarithm(rankine)
