"""Debris: what comes down, in bags by volume and by weight, wet and dry, and what the landfill weighs."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import AREA, BOARD_PSF, OPTIONAL_ROOMS, WATER_LB_PER_GAL, area_sqft
from calc.core.answer import Answer, Calculator, line
from calc.core.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.evidence.cautions import caution
from calc.numbers import measure, words
from calc.numbers.exact import ceiling
from calc.numbers.words import short_decimal

BOARD_LB_PER_CUYD = 400  # loose gypsum debris [lb/cu yd]; NAHB 1995, the lower of two figures, so the larger pile
DRUM_GAL = 55  # the drum that some local rules count in [gal]
LEAST_PSF, MOST_PSF = Fraction(1, 10), Fraction(3, 10)  # unpainted texture, dry [lb/sq ft], from memory
WEIGHT = ("texture-weight",)

THICKNESS = Field(
    name="texture_thickness_in", label="Mean thickness of the texture", kind="length", unit="in",
    help="As one even layer, bumps and hollows together: about half of its depth. From 1/8 to 1/2 in.",
    example="1/4", lowest="1/64", highest="1", default="1/4", source="texture-weight",
)  # fmt: skip
TEXTURE_PSF = Field(
    name="texture_psf", label="Weight of the dry texture", kind="rate", unit="psf",
    help="0.1 to 0.3 lb/sq ft, more when painted. Weigh what comes off one square foot.",
    example="0.3", lowest="0.02", highest="5", default="0.3", source="texture-weight",
)  # fmt: skip
WATER_RATE = Field(
    name="water_gal_per_100sqft", label="Water put on it, all passes", kind="rate", unit="gal/100sqft",
    help="Put 0 for a dry scrape.",
    example="1.8", lowest="0", highest="50", default="1.8", source="common-practice",
)  # fmt: skip
BAG = Field(
    name="bag_gal", label="Bag size", kind="volume", unit="gal",
    help="Strong bags of 3 mil and more.",
    example="42", lowest="1", highest="300", default="42", source="common-practice", rare=True,
)  # fmt: skip
BAG_FILL = Field(
    name="bag_fill_pct", label="Filled to", kind="percent", unit="%",
    help="A bag must be tied, so it is not filled to the brim.",
    example="65", lowest="10", highest="100", default="65", source="common-practice", rare=True,
)  # fmt: skip
BAG_WEIGHT = Field(
    name="bag_limit_lb", label="Weight that one bag may have", kind="rate", unit="lb",
    help="What one person carries down the stairs all day.",
    example="35", lowest="5", highest="150", default="35", source="common-practice", rare=True,
)  # fmt: skip
BOARD_DOWN = Field(
    name="board_down_sqft", label="Old board that comes down too", kind="area", unit="sqft",
    help="Put 0 where the board stays.",
    example="0", lowest="0", highest="100000", default="0", rare=True,
)  # fmt: skip
OLD_BOARD = Field(
    name="old_board_in", label="Its thickness", kind="choice", unit="",
    help="Look at an edge, at a register or a hatch.",
    example="1/2", default="1/2", source="gypsum-weight", rare=True,
    choices=tuple([(name, name + " in") for name, _ in BOARD_PSF]),
)  # fmt: skip


@dataclass(frozen=True)
class DebrisInputs:
    """`area_sqft` [sq ft, > 0], `texture_thickness_in` [in, 1/64 to 1], `texture_psf` [lb/sq ft dry, 0.02 to 5],
    `water_gal_per_100sqft` [gal/100 sq ft, 0 to 50], `bag_gal` [gal], `bag_fill_pct` [%], `bag_limit_lb` [lb],
    `board_down_sqft` [sq ft, >= 0], `old_board_in` a key of `BOARD_PSF`, `show_in`."""

    area_sqft: Fraction
    texture_thickness_in: Fraction
    texture_psf: Fraction
    water_gal_per_100sqft: Fraction
    bag_gal: Fraction
    bag_fill_pct: Fraction
    bag_limit_lb: Fraction
    board_down_sqft: Fraction
    old_board_in: str
    show_in: str


def debris(inputs: DebrisInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return the texture's volume, its weight dry and wet, the bags that it fills, and the weight for the landfill.

    Raises nothing. Sources: weights of texture from memory, of board from a maker, of loose debris as quoted.
    """
    show = inputs.show_in
    volume_cuft = inputs.area_sqft * inputs.texture_thickness_in / measure.INCHES_PER_FOOT
    dry_weight_lb = inputs.area_sqft * inputs.texture_psf
    water_lb = inputs.area_sqft * inputs.water_gal_per_100sqft / 100 * WATER_LB_PER_GAL
    weight_lb = dry_weight_lb + water_lb
    bag_cuft = inputs.bag_gal * measure.CUBIC_INCHES_PER_GALLON / measure.CUBIC_INCHES_PER_CUBIC_FOOT
    bag_holds_cuft = bag_cuft * inputs.bag_fill_pct / 100
    by_volume = ceiling(volume_cuft / bag_holds_cuft)
    by_weight = ceiling(weight_lb / inputs.bag_limit_lb)
    bags = max(by_volume, by_weight)
    drums = volume_cuft / (DRUM_GAL * Fraction(measure.CUBIC_INCHES_PER_GALLON, measure.CUBIC_INCHES_PER_CUBIC_FOOT))
    board_psf = dict(BOARD_PSF)[inputs.old_board_in]
    board_lb = inputs.board_down_sqft * board_psf
    board_cuyd = board_lb / BOARD_LB_PER_CUYD
    landfill_lb = weight_lb + board_lb
    lines = [
        line(
            "area_sqft", "Ceiling", inputs.area_sqft, "sqft", 1,
            "From your rooms, or as you gave it.", short_decimal(inputs.area_sqft, 2) + " sq ft", ("geometry",), show,
        ),
        line(
            "volume_cuft", "Texture that comes down", volume_cuft, "cuft", 2, "Area times mean thickness.",
            short_decimal(inputs.area_sqft, 2) + " × " + short_decimal(inputs.texture_thickness_in, 4) + " ÷ 12", ("geometry",), show,
        ),
        line(
            "drums", "In 55-gallon drums", drums, "", 2, "Some local rules count in drums of 55 gallons.",
            short_decimal(volume_cuft, 3) + " ÷ 7.3524", ("us-customary-definitions", "colorado-reg-8"), show,
        ),
        line(
            "dry_weight_lb", "Weight, dry", dry_weight_lb, "lb", 0, "Area times the weight of a square foot.",
            short_decimal(inputs.area_sqft, 2) + " × " + short_decimal(inputs.texture_psf, 3), WEIGHT, show,
        ),
        line(
            "weight_lb", "Weight to carry, wet", weight_lb, "lb", 0, "Dry weight and all the water that was put on.",
            words.decimal(dry_weight_lb, 1) + " + " + words.decimal(water_lb, 1) + " lb", ("texture-weight", "iapws-water"), show,
        ),
        line(
            "bags_by_volume", "Bags by volume", Fraction(by_volume), "", 0, "Volume over what a bag holds when it can be tied.",
            words.decimal(volume_cuft, 3) + " ÷ (" + words.decimal(bag_cuft, 3) + " × " + short_decimal(inputs.bag_fill_pct, 1) + " %) = "
            + words.decimal(volume_cuft / bag_holds_cuft, 2) + ", so " + words.whole(by_volume), ("common-practice",), show,
        ),
        line(
            "bags_by_weight", "Bags by weight", Fraction(by_weight), "", 0, "Wet weight over what one bag may weigh.",
            words.decimal(weight_lb, 1) + " ÷ " + short_decimal(inputs.bag_limit_lb, 1) + " = " + words.decimal(weight_lb / inputs.bag_limit_lb, 2)
            + ", so " + words.whole(by_weight),
            ("common-practice",), show,
        ),
        line("bags", "Bags", Fraction(bags), "", 0, "The greater of the two.",
             words.whole(by_volume) + " by volume, " + words.whole(by_weight) + " by weight, so " + words.whole(bags), ("common-practice",), show),
    ]  # fmt: skip
    if inputs.board_down_sqft > 0:
        lines += [
            line(
                "board_lb", "Old board, weight", board_lb, "lb", 0, "Its area times the weight of a square foot.",
                short_decimal(inputs.board_down_sqft, 2) + " × " + short_decimal(board_psf, 2), ("gypsum-weight", "price-book"), show,
            ),
            line(
                "board_cuyd", "Old board, loose in a bin", board_cuyd, "cuyd", 2, "400 lb a cubic yard, the lower of two figures.",
                words.decimal(board_lb, 0) + " ÷ 400", ("debris-density", "price-book"), show,
            ),
        ]  # fmt: skip
    lines.append(
        line(
            "landfill_weight_lb", "For the landfill's scale", landfill_lb, "lb", 0,
            "Wet texture and old board. Film and plastic come on top.",
            words.decimal(weight_lb, 0) + " + " + words.decimal(board_lb, 0) + " lb", ("texture-weight", "gypsum-weight"), show,
        )
    )  # fmt: skip
    governs = "weight" if by_weight > by_volume else "volume"
    return Answer(
        calculator="debris",
        inputs=given,
        figure=words.plural(bags, "bag"),
        figure_label="of " + measure.shown(inputs.bag_gal, "gal", 1, show) + "; the " + governs + " decides",
        sentence="About " + lines[1].shown + " of texture come down. They weigh " + lines[3].shown + " dry and "
        + lines[4].shown + " wet.",
        lines=tuple(lines),
        cautions=(caution("asbestos-first"), caution("heavy-bag")),
        notes=(
            "What a square foot of texture weighs differs from house to house, by three to one and more. A maker gives no figure.",
            "Texture in which asbestos was found is not bagged like this. Licensed contractors pack, label and dump it.",
            "Ask the landfill whether it takes wet plaster, and let the bags drain where that is allowed. Nothing goes down a drain.",
        ),
        drawing=None,
    )  # fmt: skip


def _work_out(values: Values) -> Answer:
    area = area_sqft(values)
    board_down_sqft = values.number("board_down_sqft")
    if board_down_sqft > area:
        message = (
            "Old board that comes down is more than the ceiling. Give at most " + short_decimal(area, 1) + " sq ft."
        )
        raise InputFault(
            (Fault("board_down_sqft", short_decimal(board_down_sqft, 1), message, short_decimal(area, 1)),)
        )
    inputs = DebrisInputs(
        area,
        values.number("texture_thickness_in"),
        values.number("texture_psf"),
        values.number("water_gal_per_100sqft"),
        values.number("bag_gal"),
        values.number("bag_fill_pct"),
        values.number("bag_limit_lb"),
        board_down_sqft,
        values.choice("old_board_in"),
        values.choice("show_in"),
    )
    return debris(inputs, values.given)


CALCULATOR = Calculator(
    name="debris",
    title="What comes down",
    summary="Volume, weight wet and dry, and bags of scraped texture",
    verb="Work out the bags",
    fields=(
        OPTIONAL_ROOMS, AREA, THICKNESS, TEXTURE_PSF, WATER_RATE, BAG, BAG_FILL, BAG_WEIGHT, BOARD_DOWN, OLD_BOARD, SHOW_IN,
    ),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'"), ("texture_thickness_in", "1/8"), ("texture_psf", "0.3"), ("water_gal_per_100sqft", "1.8")),
    one_of=("rooms", "area_sqft"),
    sources=("debris-density", "price-book", "gypsum-weight"),
)  # fmt: skip
