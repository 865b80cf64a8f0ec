"""Debris: what comes down, in bags by volume and by weight, wet and dry, and what the landfill weighs."""

from calc.common.inputs import AREA, BOARD_PSF, OPTIONAL_ROOMS, WATER_WEIGHT, add_area, area_sqft
from calc.core.answer import Answer, Calculator
from calc.core.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.core.lines import Lines
from calc.evidence.cautions import caution
from calc.numbers import measure, words
from calc.numbers.quantity import Quantity, fact, greatest, rounded_up
from calc.numbers.words import short_decimal
from calc.text.door import say

LOOSE_BOARD = fact(400, "lb/cuyd", "debris-density")  # NAHB 1995, the lower of two figures, so the larger pile
DRUM = fact(55, "gal", "colorado-reg-8")  # the drum that some local rules count in

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


def volume(*, area: Quantity, thickness: Quantity) -> Quantity:
    """Return the texture over `area` [sq ft] of the mean `thickness` [in]. Source: geometry."""
    return (area * thickness).cited("geometry")


def wet_weight(*, dry: Quantity, area: Quantity, water: Quantity) -> Quantity:
    """Return the weight to carry [lb]: `dry` [lb] and all the `water` [gal/100 sq ft] that was put on `area` [sq ft]."""
    return dry + area * water * WATER_WEIGHT


def bags_by_volume(*, amount: Quantity, bag: Quantity, fill: Quantity) -> Quantity:
    """Return the bags of `bag` [gal], filled to `fill` [%], that `amount` [cu ft] takes. Common practice, no source."""
    return rounded_up(amount / (bag * fill)).cited("common-practice")


def debris(values: Values) -> Answer:
    """Return the texture's volume, its weight dry and wet, the bags that it fills, and the weight for the landfill.

    Raises InputFault where more board comes down than there is ceiling. Sources: weights of texture from memory, of board from a
    maker, of loose debris as quoted.
    """
    _refuse(values)
    show = values.choice("show_in")
    lines = Lines("debris", show)
    area = add_area(lines, values)
    texture = lines.add(
        name="volume_cuft",
        label="Texture that comes down",
        unit="cuft",
        places=2,
        rule="Area times mean thickness.",
        amount=volume(area=area, thickness=values.quantity("texture_thickness_in")),
    )
    lines.add(
        name="drums",
        label="In {drum} drums",
        unit="",
        places=2,
        rule="Some local rules count in drums of {drum}.",
        amount=(texture / DRUM).cited("us-customary-definitions"),
        drum=measure.shown(DRUM.value, "gal", 0, show),
    )
    dry = lines.add(
        name="dry_weight_lb",
        label="Weight, dry",
        unit="lb",
        places=0,
        rule="Area times what each part of it weighs.",
        amount=(area * values.quantity("texture_psf")).cited("texture-weight"),
    )
    wet = lines.add(
        name="weight_lb",
        label="Weight to carry, wet",
        unit="lb",
        places=0,
        rule="Dry weight and all the water that was put on.",
        amount=wet_weight(dry=dry, area=area, water=values.quantity("water_gal_per_100sqft")),
    )
    by_volume = lines.add(
        name="bags_by_volume",
        label="Bags by volume",
        unit="",
        places=0,
        rule="Volume over what a bag holds when it can be tied.",
        amount=bags_by_volume(amount=texture, bag=values.quantity("bag_gal"), fill=values.quantity("bag_fill_pct")),
    )
    by_weight = lines.add(
        name="bags_by_weight",
        label="Bags by weight",
        unit="",
        places=0,
        rule="Wet weight over what one bag may weigh.",
        amount=rounded_up(wet / values.quantity("bag_limit_lb")).cited("common-practice"),
    )
    bags = lines.add(
        name="bags",
        label="Bags",
        unit="",
        places=0,
        rule="The greater of the two.",
        amount=greatest(by_volume, by_weight),
    )
    landfill = wet
    if values.number("board_down_sqft") > 0:
        board = lines.add(
            name="board_lb",
            label="Old board, weight",
            unit="lb",
            places=0,
            rule="Its area times what each part of it weighs.",
            amount=values.quantity("board_down_sqft")
            * fact(dict(BOARD_PSF)[values.choice("old_board_in")], "psf", "gypsum-weight").cited("price-book"),
        )
        lines.add(
            name="board_cuyd",
            label="Old board, loose in a bin",
            unit="cuyd",
            places=2,
            rule="Its weight over that of loose debris, the lower of two figures.",
            amount=(board / LOOSE_BOARD).cited("price-book"),
        )
        landfill = wet + board
    lines.add(
        name="landfill_weight_lb",
        label="For the landfill's scale",
        unit="lb",
        places=0,
        rule="Wet texture and old board. Film and plastic come on top.",
        amount=landfill,
    )
    bag = measure.shown(values.number("bag_gal"), "gal", 1, show)
    label = say("debris.figure.volume", "of {bag}; the volume decides", bag=bag)
    if by_weight.value > by_volume.value:
        label = say("debris.figure.weight", "of {bag}; the weight decides", bag=bag)
    return Answer(
        calculator="debris",
        inputs=values.given,
        figure=words.plural(int(bags.value), "bag"),
        figure_label=label,
        sentence=say(
            "debris.sentence", "About {volume} of texture come down. They weigh {dry} dry and {wet} wet.",
            volume=lines.shown("volume_cuft"), dry=lines.shown("dry_weight_lb"), wet=lines.shown("weight_lb"),
        ),
        lines=lines.tuple(),
        cautions=(caution("asbestos-first"), caution("heavy-bag")),
        notes=(
            say("debris.note.weigh", "What a square foot of texture weighs differs from house to house, by three to one and more. A maker gives no figure."),
            say("debris.note.asbestos", "Texture in which asbestos was found is not bagged like this. Licensed contractors pack, label and dump it."),
            say("debris.note.landfill", "Ask the landfill whether it takes wet plaster, and let the bags drain where that is allowed. Nothing goes down a drain."),
        ),
        drawing=None,
    )  # fmt: skip


def _refuse(values: Values) -> None:
    area, down_sqft = area_sqft(values), values.number("board_down_sqft")
    if down_sqft > area:
        most = short_decimal(area, 1)
        message = say(
            "debris.fault.board",
            "Old board that comes down is more than the ceiling. Give at most {most} sq ft.",
            most=most,
        )
        raise InputFault((Fault("board_down_sqft", short_decimal(down_sqft, 1), message, most),))


CALCULATOR = Calculator(
    name="debris",
    title="What comes down",
    summary="Volume, weight wet and dry, and bags of scraped texture",
    verb="Work out the bags",
    fields=(
        OPTIONAL_ROOMS, AREA, THICKNESS, TEXTURE_PSF, WATER_RATE, BAG, BAG_FILL, BAG_WEIGHT, BOARD_DOWN, OLD_BOARD, SHOW_IN,
    ),
    work_out=debris,
    example=(("rooms", "Living: 20' x 14'"), ("texture_thickness_in", "1/8"), ("texture_psf", "0.3"), ("water_gal_per_100sqft", "1.8")),
    one_of=("rooms", "area_sqft"),
    sources=("debris-density", "price-book", "gypsum-weight"),
    always=("asbestos-first", "heavy-bag"),
)  # fmt: skip
