"""Reach: the platform that brings a person's head under the ceiling, what may carry it, and its guard."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import HEIGHT
from calc.core.answer import Answer, Calculator, Item
from calc.core.drawing import Dimension, Drawing, Label, Shape
from calc.core.fields import SHOW_IN, Field, Values
from calc.core.lines import Lines
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure
from calc.numbers.quantity import Quantity, fact, given, greatest

STEPLADDER_SIZES_FT = (4, 6, 8, 10, 12)  # common stock [ft]
NOT_STOOD_ON_FT = 2  # the top and the top step of a stepladder [ft]; 29 CFR 1926.1053(b)(13), from memory
NOT_STOOD_ON = fact(NOT_STOOD_ON_FT, "ft", "cfr-1926-1053")
SCAFFOLD_GUARD_FT = 10  # fall protection above this [ft], 29 CFR 1926.451(g)(1)
STATE_GUARD_FT = 6  # the strictest state figure that we know of [ft], as quoted
TOPRAIL_LOW_IN, TOPRAIL_HIGH_IN = 38, 45  # toprail above the platform [in], 29 CFR 1926.451(g)(4)(ii)
STILTS_LOW_IN, STILTS_HIGH_IN = 15, 40  # the range of drywall stilts [in], common practice
BASE_RATIO = 4  # a tower over 4 times its base is tied [-]; 29 CFR 1926.451(c)(1), from memory
ROLLING_RATIO = 2  # a tower is ridden only up to twice its base [-]; 29 CFR 1926.452(w), from memory
BENCH_MOST_IN = 24  # a low work bench [in], common practice
LADDER_RATIO = 4  # a leaning ladder stands off a quarter of its working length [-], 29 CFR 1926.1053(b)(5)(i)
HEAD_WIDTH_IN = 20  # width of the person drawn [in]
DECK_PART = 40  # a deck is drawn this part of the height thick [-]

PERSON = Field(
    name="person_height_in", label="Your height", kind="length", unit="in",
    help="In shoes and hard hat.",
    example="5' 10\"", lowest="48", highest="90", default="70",
)  # fmt: skip
GAP = Field(
    name="head_gap_in", label="From your head to the ceiling", kind="length", unit="in",
    help="3 to 12 in: near enough to press, far enough to swing a knife.",
    example="6", lowest="0", highest="24", default="6", source="common-practice", rare=True,
)  # fmt: skip
BASE = Field(
    name="base_width_ft", label="Narrow side of the scaffold", kind="length", unit="ft",
    help="Wheel to wheel across, outriggers out.",
    example="2' 5\"", lowest="1", highest="20", default="2.5", source="common-practice", rare=True,
)  # fmt: skip
FLOOR = Field(
    name="floor",
    label="The floor",
    kind="choice",
    unit="",
    help="Film, stairs and clutter rule some things out.",
    example="clear",
    default="clear",
    choices=(("clear", "Level, dry and clear"), ("film", "Covered with film, or wet"), ("stairs", "Stairs, or an open edge")),
)  # fmt: skip
LEANING = Field(
    name="leaning_ladder_ft", label="Working length of a leaning ladder", kind="length", unit="ft",
    help="Only where one leans, as in a stairwell. Foot to the point where it rests.",
    example="10", lowest="3", highest="40", required=False, rare=True,
)  # fmt: skip


@dataclass(frozen=True)
class ReachInputs:
    """`ceiling_height_ft` [ft, 4 to 40], `person_height_in` [in, 48 to 90], `head_gap_in` [in, 0 to 24], `base_width_ft`
    [ft, 1 to 20], `floor` 'clear', 'film' or 'stairs', `leaning_ladder_ft` [ft] or None, `show_in`."""

    ceiling_height_ft: Fraction
    person_height_in: Fraction
    head_gap_in: Fraction
    base_width_ft: Fraction
    floor: str
    leaning_ladder_ft: Fraction | None
    show_in: str


def platform_height(*, ceiling: Quantity, person: Quantity, gap: Quantity) -> Quantity:
    """Return how high you stand [ft]: `ceiling` [ft], less the `person` [in], less the `gap` over the head [in], never under the floor.
    The gap is common practice, no source."""
    high = (ceiling - person - gap).cited("common-practice")
    return high if high.value > 0 else greatest(high.named("", "ft"), given(0, "ft"))


def reach(inputs: ReachInputs, typed: tuple[tuple[str, str], ...]) -> Answer:
    """Return the platform's height, the stepladder that gives it, and for each thing to stand on whether it will do.

    Raises nothing. Sources: 29 CFR 1926.451 to .453 and .1053; the gap over the head is common practice.
    """
    show = inputs.show_in
    lines = Lines("reach", show)
    platform = lines.add(
        name="platform_height_ft",
        label="Platform above the floor",
        unit="ft",
        places=2,
        rule="Ceiling, less your height, less the gap over your head.",
        amount=platform_height(
            ceiling=given(inputs.ceiling_height_ft, "ft"),
            person=given(inputs.person_height_in, "in"),
            gap=given(inputs.head_gap_in, "in"),
        ),
    )
    lines.add(
        name="ladder_needed_ft",
        label="Stepladder, at least",
        unit="ft",
        places=2,
        amount=platform + NOT_STOOD_ON,
        rule="{more} more than where you stand: its top and top step are not for standing.",
        more=_feet(NOT_STOOD_ON_FT, show),
    )
    base = given(inputs.base_width_ft, "ft")
    lines.add(
        name="tied_above_ft",
        label="A scaffold tower is tied above",
        unit="ft",
        places=1,
        rule="Four times its narrow side.",
        amount=(base * BASE_RATIO).cited("cfr-1926-451"),
    )
    lines.add(
        name="ridden_below_ft",
        label="And never ridden above",
        unit="ft",
        places=1,
        rule="Twice its narrow side, on a level floor. Best is never.",
        amount=(base * ROLLING_RATIO).cited("cfr-1926-451"),
    )
    if inputs.leaning_ladder_ft is not None:
        lines.add(
            name="ladder_base_ft", label="Foot of the leaning ladder from the wall", unit="ft", places=2,
            rule="A quarter of its working length, which is 75.5 degrees.", amount=(given(inputs.leaning_ladder_ft, "ft") / LADDER_RATIO).cited("cfr-1926-1053"),
        )  # fmt: skip
    platform_ft = platform.value
    platform_in = platform_ft * measure.INCHES_PER_FOOT
    ladder_ft = _stepladder_ft(platform_ft)
    items = _items(inputs, platform_ft, ladder_ft)
    guard = _guard(platform_ft, show)
    if platform_in == 0:
        figure, label = "Your own feet", "are high enough"
    else:
        figure, label = lines.shown("platform_height_ft"), "is how high you stand"
    return Answer(
        calculator="reach",
        inputs=typed,
        figure=figure,
        figure_label=label,
        sentence=guard,
        lines=lines.tuple(),
        cautions=_cautions(inputs, platform_ft),
        notes=(
            "Federal figures are the least for employers. Some states ask for guards from "
            + _feet(STATE_GUARD_FT, show)
            + ". Ask before you work high.",
            "Set every ladder on firm floor, or on a rigid sheet taped over the film, and never on bare film. Move it rather than lean out.",
        ),
        drawing=_elevation(inputs, platform_in),
        items=items,
        items_title="What you may stand on",
    )


def _stepladder_ft(platform_ft: Fraction) -> int:
    """The stock size whose highest step to stand on is high enough, or 0 where none is."""
    for size in STEPLADDER_SIZES_FT:
        if platform_ft + NOT_STOOD_ON_FT <= size:
            return size
    return 0


def _feet(limit_ft: int, show: str) -> str:
    return measure.limit(Fraction(limit_ft * measure.INCHES_PER_FOOT), str(limit_ft) + " ft", show)


def _inches(low_in: int, high_in: int, show: str) -> str:
    if show == "metric":
        return measure.limit(Fraction(low_in), "", show) + " to " + measure.limit(Fraction(high_in), "", show)
    return str(low_in) + " to " + str(high_in) + " in"


def _guard(platform_ft: Fraction, show: str) -> str:
    federal, state = _feet(SCAFFOLD_GUARD_FT, show), _feet(STATE_GUARD_FT, show)
    if platform_ft > SCAFFOLD_GUARD_FT:
        rail = _inches(TOPRAIL_LOW_IN, TOPRAIL_HIGH_IN, show)
        return (
            "This is over "
            + federal
            + ": by federal rule a scaffold needs guardrails or another fall arrest, toprail "
            + rail
            + " above it."
        )
    if platform_ft >= STATE_GUARD_FT:
        return (
            "This is "
            + federal
            + " or less, but "
            + state
            + " or more: some states ask for guardrails here, and a fall can kill. Use them."
        )
    return "The federal rule asks for rails on scaffolds over " + federal + ". A fall from a few feet can kill as well."


def _items(inputs: ReachInputs, platform_ft: Fraction, ladder_ft: int) -> tuple[Item, ...]:
    platform_in = platform_ft * measure.INCHES_PER_FOOT
    bad_floor = inputs.floor != "clear"
    found = []
    if platform_in == 0:
        found.append(
            Item("Floor", "will do", "You reach from the floor. Clear it and keep it dry.", ("common-practice",))
        )
    if platform_in > BENCH_MOST_IN:
        most = measure.limit(Fraction(BENCH_MOST_IN), str(BENCH_MOST_IN) + " in", inputs.show_in)
        bench = ("too low", "Low benches go up to about " + most + ".")
    elif inputs.floor == "stairs":
        bench = ("not here", "A bench does not stand on stairs.")
    else:
        bench = ("will do", "Lock its legs. Stand on the deck, not on the edge.")
    found.append(Item("Work bench", bench[0], bench[1], ("common-practice",)))
    if ladder_ft == 0:
        step = ("too high", "Use a scaffold: no stock stepladder is that high with its top two steps left free.")
    elif inputs.floor == "stairs":
        step = (
            "not here",
            "A stepladder needs all four feet on one level. Use a stair ladder or a scaffold with its own plan.",
        )
    else:
        step = (
            "will do: " + _feet(ladder_ft, inputs.show_in),
            "Open it fully, lock the spreaders, stay off the top and the top step.",
        )
        if inputs.floor == "film":
            step = (step[0], "Tape a rigid sheet over the film under its feet. " + step[1])
    found.append(Item("Stepladder", step[0], step[1], ("cfr-1926-1053",)))
    if platform_in < STILTS_LOW_IN or platform_in > STILTS_HIGH_IN:
        range_told = _inches(STILTS_LOW_IN, STILTS_HIGH_IN, inputs.show_in)
        stilts = ("do not fit", "Stilts give about " + range_told + ".")
    elif bad_floor:
        stilts = ("not here", "Never on film, wet floors, stairs or near an open edge.")
    else:
        stilts = ("only if trained", "Floor swept, no cords. Rails are raised by the height of the stilts.")
    found.append(Item("Stilts", stilts[0], stilts[1], ("cfr-1926-451",)))
    if platform_ft > inputs.base_width_ft * BASE_RATIO:
        tower = ("tie it", "Its platform is over 4 times its narrow side: tie it, or set outriggers.")
    elif inputs.floor == "stairs":
        tower = ("with a plan", "On stairs a scaffold is planned by a competent person.")
    else:
        tower = ("will do", "Lock every wheel, deck it fully, and get down before it is moved.")
    found.append(Item("Rolling scaffold", tower[0], tower[1], ("cfr-1926-451",)))
    return tuple(found)


def _cautions(inputs: ReachInputs, platform_ft: Fraction) -> tuple[Caution, ...]:
    found = []
    if platform_ft >= STATE_GUARD_FT:
        found.append(caution("fall-scaffold"))
    found.append(caution("fall-ladder"))
    if platform_ft * measure.INCHES_PER_FOOT >= STILTS_LOW_IN:
        found.append(caution("stilts"))
    if inputs.floor == "film":
        found.append(caution("wet-plastic"))
    return tuple(found)


def _elevation(inputs: ReachInputs, platform_in: Fraction) -> Drawing:
    """Floor, platform, person and ceiling seen from the side, to scale."""
    height = inputs.ceiling_height_ft * measure.INCHES_PER_FOOT
    width, zero = max(height / 2, Fraction(HEAD_WIDTH_IN * 3)), Fraction(0)
    middle = width / 2
    half = Fraction(HEAD_WIDTH_IN, 2)
    top = min(platform_in + inputs.person_height_in, height)
    thick = height / DECK_PART
    shapes = [
        Shape(((zero, height), (width, height), (width, height + thick), (zero, height + thick)), "cut", "board", True),
        Shape(((middle - half, platform_in), (middle + half, platform_in), (middle + half, top), (middle - half, top)), "edge", "none", False),
    ]  # fmt: skip
    if platform_in > 0:
        deck = min(thick, platform_in)
        wide = HEAD_WIDTH_IN + half
        low = platform_in - deck
        shapes.append(
            Shape(((middle - wide, low), (middle + wide, low), (middle + wide, platform_in), (middle - wide, platform_in)), "cut", "timber", False)
        )  # fmt: skip
    tall = measure.shown(inputs.ceiling_height_ft, "ft", 2, inputs.show_in)
    dimensions = [Dimension((zero, zero), (zero, height), "left", tall)]
    labels = [
        Label((middle + half, (platform_in + top) / 2), "right", "you"),
        Label((width, height + thick / 2), "right", "ceiling"),
    ]
    stand = measure.shown(platform_in / measure.INCHES_PER_FOOT, "ft", 2, inputs.show_in)
    if platform_in > 0:
        labels.append(Label((middle + half, platform_in), "right", stand))
    return Drawing(
        title="Where you stand",
        description="Seen from the side: the floor, you on a platform "
        + stand
        + " high, and the ceiling at "
        + tall
        + ".",
        width=width,
        height=height + thick,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=tuple(dimensions),
        labels=tuple(labels),
        scale_note="To scale, seen from the side.",
    )


def _work_out(values: Values) -> Answer:
    inputs = ReachInputs(
        values.number("ceiling_height_ft"),
        values.number("person_height_in"),
        values.number("head_gap_in"),
        values.number("base_width_ft"),
        values.choice("floor"),
        values.number_or_none("leaning_ladder_ft"),
        values.choice("show_in"),
    )
    return reach(inputs, values.given)


CALCULATOR = Calculator(
    name="reach",
    title="How high you stand",
    summary="Platform height, what may carry you, and its guard rule",
    verb="Work out the platform",
    fields=(HEIGHT, PERSON, FLOOR, GAP, BASE, LEANING, SHOW_IN),
    work_out=_work_out,
    example=(("ceiling_height_ft", "9"), ("person_height_in", "5' 10\""), ("floor", "clear")),
    always=("fall-ladder",),
)
