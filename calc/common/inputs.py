"""Inputs that several calculators ask for, declared once, and the areas that follow from them."""

from fractions import Fraction

from calc.core.fields import Field, Values
from calc.core.lines import Lines
from calc.evidence.limits import PLACES, Limit, says_told
from calc.numbers import measure
from calc.numbers.exact import total
from calc.numbers.quantity import Quantity, added, fact, given
from calc.rooms.rooms import EXAMPLE, Room
from calc.text.door import say

WATER_LB_PER_GAL = Fraction(83285, 10000)  # water at 70 degF [lb/gal], IAPWS-97
WATER_AT_F = 70  # [degF]
WATER_WEIGHT = fact(WATER_LB_PER_GAL, "lb/gal", "iapws-water")
BOARD_PSF = (
    ("1/4", Fraction(12, 10)),
    ("3/8", Fraction(14, 10)),
    ("1/2", Fraction(16, 10)),
    ("5/8", Fraction(22, 10)),
)  # what gypsum board weighs by its thickness in inches [lb/sq ft], a maker's submittal

ROOMS = Field(
    name="rooms", label="Rooms", kind="rooms", unit="",
    help="One room a line. Two sides, or walk round it wall by wall with E, S, W, N.",
    example=EXAMPLE,
)  # fmt: skip
HEIGHT = Field(
    name="ceiling_height_ft", label="Ceiling height", kind="length", unit="ft",
    help="Floor to ceiling, at the lowest wall.",
    example="8' 1\"", lowest="4", highest="40", default="8",
)  # fmt: skip
OPTIONAL_ROOMS = Field(
    name="rooms", label="Rooms", kind="rooms", unit="",
    help="One room a line. Two sides, or walk round it wall by wall with E, S, W, N.",
    example=EXAMPLE, required=False,
)  # fmt: skip
AREA = Field(
    name="area_sqft", label="Ceiling area", kind="area", unit="sqft",
    help="Instead of rooms, where you know it.",
    example="280", lowest="1", highest="100000", required=False,
)  # fmt: skip
WASTE = Field(
    name="waste_pct", label="Waste", kind="percent", unit="%",
    help="What stays in pails and on tools.",
    example="10", lowest="0", highest="50", default="10", source="common-practice", rare=True,
)  # fmt: skip
COAT_THICKNESS = Field(
    name="coat_thickness_in", label="Thickness of one coat", kind="length", unit="in",
    help="A skim coat is about 1/16 in, from 1/32 to 1/8 in.",
    example="1/16", lowest="1/64", highest="1/4", default="1/16", source="ga-214",
)  # fmt: skip
COATS = Field(
    name="coats", label="Coats", kind="count", unit="",
    help="Coats laid over the whole ceiling once the texture is full.",
    example="2", lowest="1", highest="6", default="2", source="common-practice",
)  # fmt: skip
TEXTURE_DEPTH = Field(
    name="texture_depth_in", label="Depth of the texture", kind="length", unit="in",
    help="From the board to the tips. Judge it by eye, from the side. Do not touch it before the asbestos result.",
    example="3/16", lowest="0", highest="1",
)  # fmt: skip
TEXTURE_DEPTH_OR_NONE = Field(
    name="texture_depth_in", label="Depth of the texture", kind="length", unit="in",
    help="The first coat fills it. Put 0 for a flat ceiling.",
    example="3/16", lowest="0", highest="1", default="0",
)  # fmt: skip
TEMPERATURE = Field(
    name="temperature_f", label="Air in the room", kind="temperature", unit="F",
    help="The coldest it gets before the coat is dry, the night too.",
    example="68", lowest="-40", highest="130", default="68",
)  # fmt: skip
HUMIDITY = Field(
    name="humidity_pct", label="Humidity in the room", kind="percent", unit="%",
    help="Read a hygrometer in the room while the coat dries. Wet coats raise it.",
    example="50", lowest="0", highest="100", default="50",
)  # fmt: skip
YEAR_BUILT = Field(
    name="year_built",
    label="Year the house was built",
    kind="count",
    unit="",
    help="Leave empty where nobody knows. Then it counts as old.",
    example="1964",
    lowest="1600",
    highest="2100",
    required=False,
)


VOLUME = Field(
    name="volume_cuft", label="Air in the rooms", kind="volume", unit="cuft",
    help="Instead of rooms, where you know it.",
    example="2240", lowest="50", highest="2000000", required=False,
)  # fmt: skip

JOIST_SPACING = Field(
    name="joist_spacing_in",
    label="Joists apart",
    kind="length",
    unit="in",
    help="Middle to middle: 12, 16, 19.2 or 24 in.",
    example="16",
    lowest="8",
    highest="48",
    default="16",
)

SHEET_WIDTHS_IN = (("48", (48,)), ("54", (54,)), ("both", (48, 54)))  # what each choice of width means [in]
SHEET_WIDTH = Field(
    name="sheet_width_in", label="Sheet width", kind="choice", unit="",
    help="54 in saves a joint in rooms 9 ft deep, and is not stocked everywhere.",
    example="48", default="48",
    choices=(("48", "48 in"), ("54", "54 in"), ("both", "Both, whichever takes fewer")),
)  # fmt: skip
BOARD_THICKNESS = Field(
    name="board_thickness_in", label="New board", kind="choice", unit="",
    help="1/4 in only over sound old board, on joists to 16 in.",
    example="1/2", default="1/2", source="board-span",
    choices=tuple([(name, name + " in") for name, _ in BOARD_PSF]),
)  # fmt: skip
BUILDING = Field(
    name="building",
    label="The building",
    kind="choice",
    unit="",
    help="Federal notice rules do not reach a lone house of up to four homes. Others may.",
    example="house",
    default="unknown",
    choices=(("unknown", "Not known"), ("house", "A house of one to four homes"), ("other", "Anything else")),
    why="Larger buildings come under more rules, and their ceilings are often rated for fire.",
)
PLACE = Field(
    name="place",
    label="State or city",
    kind="text",
    unit="",
    help="Local rules are often stricter. This book knows very few of them, and says so.",
    example="Colorado",
    required=False,
    choices=tuple([(name, name) for name, _ in PLACES]),
    why="Each state, and some cities, has asbestos and lead rules of its own.",
)
PAINT_TEST = Field(
    name="paint_test",
    label="Was the paint tested?",
    kind="choice",
    unit="",
    help="By a certified inspector or an approved kit. Lead paint is 1.0 mg in a square centimeter, or 0.5 %, and more.",
    example="unknown",
    default="unknown",
    choices=(("unknown", "No, or not known"), ("lead", "Yes, lead was found"), ("none", "Yes, below both limits")),
    why="Dust of lead paint harms the brain, most of all in children.",
)
RATED = Field(
    name="rated_ceiling", label="Rated for fire, or bracing?", kind="choice", unit="",
    help="Under another flat, over a garage, in earthquake or storm country.",
    example="no", default="unknown",
    choices=(("unknown", "Not known"), ("no", "No"), ("yes", "Yes")),
    why="Such a ceiling holds back fire, or holds the house together. The wrong board takes that away.",
)  # fmt: skip


def amount_told(amount: Fraction, limit: Limit, show_in: str) -> str:
    """Return the work's `amount` [in the limit's unit] beside what the limit says, as the person reads it."""
    amount_shown, says, days = measure.shown(amount, limit.unit, 2, show_in), says_told(limit), days_of(limit)
    if show_in == "metric" and limit.amount > 0:
        return say(
            "limit.amount.metric", "{amount}: {says} ({limit}). {days}",
            amount=amount_shown, says=says, days=days, limit=measure.shown(limit.amount, limit.unit, 2, show_in),
        )  # fmt: skip
    return say("limit.amount", "{amount}: {says}. {days}", amount=amount_shown, says=says, days=days)


def days_of(limit: Limit) -> str:
    """Return when somebody looked at the source of `limit`, and by when somebody looks again."""
    return say(
        "limit.days", "Reviewed {reviewed}, review by {again}.", reviewed=limit.reviewed_on, again=limit.review_by
    )


def area_of(room_list: tuple[Room, ...]) -> Fraction:
    """Return the ceiling area of all rooms [sq ft]."""
    return total([room.ceiling_area_sqft() for room in room_list])


def area_sqft(values: Values) -> Fraction:
    """Return the ceiling area [sq ft]: as it was given, or of the rooms."""
    typed = values.number_or_none("area_sqft")
    return area_of(values.rooms()) if typed is None else typed


def area_given(values: Values) -> Quantity:
    """Return the ceiling area: as it was given, or room by room and together."""
    typed = values.number_or_none("area_sqft")
    if typed is not None:
        return given(typed, "sqft")
    return added([given(room.ceiling_area_sqft(), "sqft", "geometry", room.name) for room in values.rooms()])


def add_area(lines: Lines, values: Values) -> Quantity:
    """Add the line of the ceiling area, and return it."""
    rule = "From your rooms, or as you gave it."
    return lines.add(name="area_sqft", label="Ceiling", unit="sqft", places=1, rule=rule, amount=area_given(values))


def volume_given(values: Values) -> Quantity:
    """Return the air in the rooms: as it was given, or room by room at its height and together."""
    typed = values.number_or_none("volume_cuft")
    if typed is not None:
        return given(typed, "cuft")
    height_ft = values.number("ceiling_height_ft")
    return added([given(room.volume_cuft(height_ft), "cuft", "geometry", room.name) for room in values.rooms()])


def volume_cuft(values: Values) -> Fraction:
    """Return the air in the rooms [cu ft]: as it was given, or of the rooms at their height."""
    typed = values.number_or_none("volume_cuft")
    if typed is not None:
        return typed
    return total([room.volume_cuft(values.number("ceiling_height_ft")) for room in values.rooms()])
