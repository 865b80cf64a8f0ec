"""Coats: how thick each one is, and the water that it holds until it is dry."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import WATER_LB_PER_GAL
from calc.drying.law import Band, scaled, thickness_band
from calc.numbers import measure

GALLONS_PER_SQFT_INCH = Fraction(measure.SQUARE_INCHES_PER_SQUARE_FOOT, measure.CUBIC_INCHES_PER_GALLON)
TEXTURE_OPEN_PCT = Fraction(75)  # air in the depth of a texture [%]; pointed bumps that touch leave 74, geometry
SHRINKAGE_PCT = Fraction(25)  # what compound loses as it dries, by volume [%], common practice
COMPOUND_LB_PER_GAL = Fraction(137, 10)  # all-purpose compound, a label [lb/gal]
COMPOUND_WATER_PCT = Fraction(35)  # water in it by weight, the higher of two printed figures [%]


@dataclass(frozen=True)
class Coat:
    """One coat: its `water_lb` [lb], and `times` [-], how many times the basis coat's time it takes in steady air: the least, by
    the law, the most."""

    water_lb: Fraction
    times: Band


@dataclass(frozen=True)
class Layers:
    """What lies on the ceiling: `coats` in the order they are laid, `held_gal` [gal] the water that such coats of all-purpose
    compound hold, `water_gal` [gal] the water that is reckoned with, and `stretch` [-, 1 and more] where that is more."""

    coats: tuple[Coat, ...]
    held_gal: Fraction
    water_gal: Fraction
    stretch: Fraction


def layers_of(
    area_sqft: Fraction, texture_depth_in: Fraction, coats: int, thickness_in: Fraction, water_gal: Fraction | None
) -> Layers:
    """Return the coats over `area_sqft` [sq ft, > 0] of wet ceiling: the first fills `texture_depth_in` [in] and covers it, each
    is `thickness_in` [in] thick, `coats` [-, >= 1] of them. `water_gal` [gal] is their water, or None for what they hold.

    A coat takes the time of its thickness, never less; with more water than such a coat holds the time grows with the
    water. Sources: geometry; a compound's label, from memory, and its water, as quoted; shrinkage is common practice.
    """
    fill_in = texture_depth_in * TEXTURE_OPEN_PCT / 100
    film_in = coats * thickness_in
    held_lb = (
        area_sqft * (fill_in + film_in) * GALLONS_PER_SQFT_INCH / (1 - SHRINKAGE_PCT / 100)
        * COMPOUND_LB_PER_GAL * COMPOUND_WATER_PCT / 100
    )  # fmt: skip
    water_lb = held_lb if water_gal is None else water_gal * WATER_LB_PER_GAL
    stretch = max(water_lb / held_lb, Fraction(1))
    found = []
    for at in range(coats):
        depth_in = texture_depth_in if at == 0 else Fraction(0)
        part_in = (fill_in if at == 0 else Fraction(0)) + thickness_in
        share = part_in / (fill_in + film_in)
        found.append(Coat(water_lb * share, scaled(thickness_band(depth_in + thickness_in), stretch)))
    return Layers(tuple(found), held_lb / WATER_LB_PER_GAL, water_lb / WATER_LB_PER_GAL, stretch)
