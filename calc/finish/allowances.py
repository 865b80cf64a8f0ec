"""What so much board takes by published allowances: tape, compound, screws, caulk. Each clause on quantities."""

from fractions import Fraction

from calc.numbers.exact import ceiling
from calc.numbers.measure import SQUARE_INCHES_PER_SQUARE_FOOT
from calc.numbers.quantity import Quantity, fact, rounded_up

TAPE = fact(380, "ft/1000sqft", "construction-estimating")  # textbook p. 203
MAKERS_TAPE_FT_PER_1000 = Fraction(370)  # a maker's figure, from memory [ft/1,000 sq ft]
LOW_COMPOUND = fact(5, "gal/1000sqft", "construction-estimating")  # textbook p. 203
MIDDLE_COMPOUND = fact(Fraction(94, 10), "gal/1000sqft", "board-maker-compound")  # a maker, from memory
HIGH_COMPOUND = fact(11, "gal/1000sqft", "home-page-compound")  # the highest, so the one to buy by
TEXTBOOK_SCREWS = fact(1000, "per_1000sqft", "construction-estimating")  # textbook p. 203
COMPOUND_WEIGHT = fact(Fraction(137, 10), "lb/gal", "compound-label")  # all-purpose, from its label, from memory
MAKERS_LB_PER_1000 = Fraction(138)  # a maker's table of the compound of 1,000 sq ft, from memory [lb]
SKIM = fact(Fraction(1, 16), "in", "ga-214")  # level 5: a thin coat over everything, from memory
SHEET_LENGTH_IN, SHEET_WIDTH_IN = 96, 48  # the sheet that screws are counted on [in]
SHEET = fact(Fraction(SHEET_LENGTH_IN * SHEET_WIDTH_IN, SQUARE_INCHES_PER_SQUARE_FOOT), "sqft", "geometry")
SCREW_SPACING_IN = 12  # on a ceiling [in], NAVEDTRA 14044
# The part of all compound that a level takes [%]: tape, then one more coat with each level. Common practice, no source.
LEVEL_PARTS_PCT = (0, 40, 60, 80, 100, 100)
LEVEL_PARTS = tuple([fact(part, "%", "common-practice") for part in LEVEL_PARTS_PCT])
BEAD = fact(Fraction(1, 4), "in", "common-practice")  # a bead of caulk, quarter round
GAP_IN = Fraction(1, 4)  # a gap that is filled before it is taped [in], common practice
QUARTER_ROUND = Fraction(785398, 1000000)  # a quarter of pi [-]
TUBE_FLOZ = Fraction(101, 10)  # a tube of 10.1 fluid ounces [fl oz]
TUBE = fact(Fraction(1823, 100), "cuin", "us-customary-definitions")  # the same, by definition
BEADS = fact(2, "", "common-practice")  # the first bead shrinks, so the edge is caulked twice


def screws_per_sheet(joist_spacing_in: Fraction) -> int:
    """Return the screws of one 4 x 8 ft sheet across joists `joist_spacing_in` apart [in, > 0], 12 in along each.

    Source: NAVEDTRA 14044 for the spacing; the count is geometry.
    """
    joists = ceiling(SHEET_LENGTH_IN / joist_spacing_in) + 1
    return joists * (SHEET_WIDTH_IN // SCREW_SPACING_IN + 1)


def by_area(*, area: Quantity, allowance: Quantity, part: Quantity) -> Quantity:
    """Return the compound for the joints of `area` [sq ft] by a published `allowance` [gal/1,000 sq ft], and the `part` of it that a level
    takes [%]. What each level takes is common practice, no source."""
    return area * allowance * part


def skim_coat(*, area: Quantity) -> Quantity:
    """Return the compound of a thin coat over the whole `area` [sq ft], level 5. Sources: GA-214, from memory; the gallon by definition."""
    return (area * SKIM).cited("us-customary-definitions")


def caulk(*, edge: Quantity) -> Quantity:
    """Return the tubes for two beads, quarter round, along `edge` [ft]: the first bead shrinks. Common practice, no source."""
    return rounded_up(caulk_laid(edge=edge), "tube")


def caulk_laid(*, edge: Quantity) -> Quantity:
    """Return what two beads along `edge` [ft] take, in tubes and parts of a tube [-]. Common practice, no source."""
    return edge * BEADS * BEAD * BEAD * QUARTER_ROUND / TUBE
