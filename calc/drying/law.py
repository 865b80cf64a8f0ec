"""The drying law: how long a coat takes in air that stays as it is. Both drying forms stand on it.

The published table for compound under tape goes with 1 over the drying power of the air: vapor pressure times what
is missing to saturation. What stands above that power falls from dry air to damp, and is read off the table's rows.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.drying.air import vapor_pressure_psi
from calc.numbers.exact import round_half_up
from calc.numbers.quantity import Quantity, fact, told
from calc.text.door import say

BASIS_THICKNESS_IN = Fraction(1, 16)  # thickness of the published graph [in], Drywall Finishing Council
# (humidity [%], time x vapor pressure x missing humidity [h psi]): the mean of each row of the table over 32 to 80 degF,
# gypsum handbook, from memory
DRYING_ROWS = (
    (0, Fraction(330, 100)), (20, Fraction(329, 100)), (40, Fraction(311, 100)), (50, Fraction(309, 100)),
    (60, Fraction(294, 100)), (70, Fraction(291, 100)), (80, Fraction(278, 100)), (85, Fraction(273, 100)),
    (90, Fraction(250, 100)), (95, Fraction(248, 100)), (98, Fraction(220, 100)),
)  # fmt: skip
TABLE = "gypsum-handbook-drying"
BAND_PCT = 25  # how far the table itself is trusted [%]; its sure cells lie within 9 % of the law
BAND = Fraction(BAND_PCT, 100)  # the same [-]
NO_DRYING_PCT = 98  # the last row of the published table [%]
FREEZING_F = 32  # [degF]
WARMEST_F = 98  # end of the published graph [degF]
THICK_COAT_IN = Fraction(1, 8)  # a drying compound laid thicker cracks [in], common practice
MILLION = 10**6  # humidity and constant are kept to the millionth where a course is followed

_STEPS = tuple([(pct * MILLION // 100, round_half_up(constant * MILLION)) for pct, constant in DRYING_ROWS])


@dataclass(frozen=True)
class Band:
    """A time [h], or a ratio of times [-], as the law gives it, with the least and the most that the sources allow."""

    low_h: Fraction
    law_h: Fraction
    high_h: Fraction


def drying_constant_h_psi(humidity_pct: Fraction) -> Fraction:
    """Return time x vapor pressure x missing humidity [h psi] at `humidity_pct` [%, 0 to 100], for the basis thickness.

    Read in a straight line between the table's rows, to the millionth; from 98 % on it stays.
    Source: Gypsum Construction Handbook table (from memory), mean of each row.
    """
    return Fraction(constant_millionths(round_half_up(humidity_pct / 100 * MILLION)), MILLION)


def constant_millionths(humidity_millionths: int) -> int:
    """Return the same [millionths of h psi] at `humidity_millionths` [millionths of full air, 0 to 1,000,000]."""
    low, low_constant = _STEPS[0]
    for high, high_constant in _STEPS:
        if humidity_millionths <= high:
            if high == low:
                return high_constant
            return low_constant + (high_constant - low_constant) * (humidity_millionths - low) // (high - low)
        low, low_constant = high, high_constant
    return low_constant


def thickness_band(thickness_in: Fraction) -> Band:
    """Return how many times the basis time a coat of `thickness_in` [in, > 0] takes [-], and the table's own band with it.

    In proportion where the air sets the pace, with the square where the coat itself does. Common practice, no source.
    """
    ratio = thickness_in / BASIS_THICKNESS_IN
    return Band(min(ratio, ratio * ratio) * (1 - BAND), ratio, max(ratio, ratio * ratio) * (1 + BAND))


def basis_h(saturated_psi: Fraction, humidity_pct: Fraction) -> Fraction:
    """Return the time [h] of a coat of the basis thickness where full air has `saturated_psi` [psi, > 0] of vapor, at
    `humidity_pct` [%, 0 to under 100].

    Source: Gypsum Construction Handbook table (from memory), by rows; Drywall Finishing Council graph for the thickness basis.
    """
    return drying_constant_h_psi(humidity_pct) / (saturated_psi * (1 - humidity_pct / 100))


def scaled(band: Band, factor: Fraction) -> Band:
    """Return `band` with each of its three times `factor` [h or -, > 0]."""
    return Band(band.low_h * factor, band.law_h * factor, band.high_h * factor)


# The clauses of the law on quantities, for a form that tells its working. What follows a course hour by hour has the bare ones
# above; a test holds the two together.

BASIS_THICKNESS = fact(BASIS_THICKNESS_IN, "in", "dfc-drying-graph")
TRUSTED = fact(BAND_PCT, "%", "common-practice")
_ROWS = tuple([(fact(pct, "%", TABLE), fact(constant, "h psi", TABLE)) for pct, constant in DRYING_ROWS])


def pressure_of_vapor(*, temperature_f: Fraction, heat: str) -> Quantity:
    """Return the pressure of the vapor in full air [psi] at `temperature_f` [degF, 32 to 98], which `heat` tells in words."""
    at = say("drying.vapor_pressure_psi.working", "at {heat}", heat=heat)
    return told(vapor_pressure_psi(temperature_f), "psi", at, "ashrae-vapor-pressure")


def drying_constant(*, humidity: Quantity) -> Quantity:
    """Return what stands above the drying power of air at `humidity` [%, 0 to under 100]: read off the table's rows, in a straight
    line between two of them [h psi]. Source: Gypsum Construction Handbook table (from memory)."""
    low, low_constant = _ROWS[0]
    for high, high_constant in _ROWS[1:]:
        if humidity.value == low.value:
            break
        if humidity.value < high.value:
            return low_constant + (high_constant - low_constant) * ((humidity - low) / (high - low))
        low, low_constant = high, high_constant
    return low_constant


def coat_time(*, constant: Quantity, pressure: Quantity, humidity: Quantity, thickness: Quantity) -> Quantity:
    """Return the time of one coat [h] by the law: `constant` [h psi] over what the air lacks, `pressure` [psi] of full air at `humidity`
    [%, under 100]; in proportion to `thickness` [in]. Source: Drywall Finishing Council graph for the thickness that it is told of."""
    return constant / (pressure * (1 - humidity)) * (thickness / BASIS_THICKNESS)


def soonest(*, time: Quantity, thickness: Quantity) -> Quantity:
    """Return the least that `time` [h] by the law may be: the table's own band under it; a coat thinner than the basis gains by
    the square of its `thickness` [in]. Common practice, no source."""
    thin = thickness.to("in") < BASIS_THICKNESS_IN
    return time * (thickness / BASIS_THICKNESS) * (1 - TRUSTED) if thin else time * (1 - TRUSTED)


def longest(*, time: Quantity, thickness: Quantity) -> Quantity:
    """Return the most that `time` [h] by the law may be: the table's own band over it; a coat thicker than the basis takes up to
    the square of its `thickness` [in]. Common practice, no source."""
    thick = thickness.to("in") > BASIS_THICKNESS_IN
    return time * (thickness / BASIS_THICKNESS) * (1 + TRUSTED) if thick else time * (1 + TRUSTED)


def together(*, first: Quantity, others: int, time: Quantity) -> Quantity:
    """Return the time of all coats [h], one after the other: the `first` [h] and `others` [-] of `time` [h] each."""
    return first + others * time
