"""Reach: the platform that brings a person's head under the ceiling, what may carry it, and its guard."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import HEIGHT
from calc.core.answer import Answer, Calculator, Item
from calc.core.fields import SHOW_IN, Field, Values
from calc.core.lines import Lines
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure
from calc.numbers.quantity import Quantity, fact, given, greatest
from calc.site.reach_elevation import elevation
from calc.text.door import say

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
        figure, label = say("reach.figure.floor", "Your own feet"), say("reach.figure.enough", "are high enough")
    else:
        figure, label = lines.shown("platform_height_ft"), say("reach.figure", "is how high you stand")
    return Answer(
        calculator="reach",
        inputs=typed,
        figure=figure,
        figure_label=label,
        sentence=guard,
        lines=lines.tuple(),
        cautions=_cautions(inputs, platform_ft),
        notes=_notes(show),
        drawing=elevation(
            platform_in=platform_in,
            person_in=inputs.person_height_in,
            ceiling_ft=inputs.ceiling_height_ft,
            show_in=show,
        ),
        items=items,
        items_title=say("reach.items", "What you may stand on"),
    )


def _notes(show: str) -> tuple[str, ...]:
    least = "Federal figures are the least for employers. Some states ask for guards from {height}. Ask before you work high."
    firm = "Set every ladder on firm floor, or on a rigid sheet taped over the film, and never on bare film. Move it rather than lean out."
    return say("reach.note.least", least, height=_feet(STATE_GUARD_FT, show)), say("reach.note.firm", firm)


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
        low, high = measure.limit(Fraction(low_in), "", show), measure.limit(Fraction(high_in), "", show)
        return say("reach.range.metric", "{low} to {high}", low=low, high=high)
    return say("reach.range", "{low} to {high} in", low=str(low_in), high=str(high_in))


def _guard(platform_ft: Fraction, show: str) -> str:
    federal, state = _feet(SCAFFOLD_GUARD_FT, show), _feet(STATE_GUARD_FT, show)
    if platform_ft > SCAFFOLD_GUARD_FT:
        rail = _inches(TOPRAIL_LOW_IN, TOPRAIL_HIGH_IN, show)
        english = "This is over {limit}: by federal rule a scaffold needs guardrails or another fall arrest, toprail {rail} above it."
        return say("reach.guard.federal", english, limit=federal, rail=rail)
    if platform_ft >= STATE_GUARD_FT:
        english = "This is {limit} or less, but {least} or more: some states ask for guardrails here, and a fall can kill. Use them."
        return say("reach.guard.state", english, limit=federal, least=state)
    english = "The federal rule asks for rails on scaffolds over {limit}. A fall from a few feet can kill as well."
    return say("reach.guard.none", english, limit=federal)


def _items(inputs: ReachInputs, platform_ft: Fraction, ladder_ft: int) -> tuple[Item, ...]:
    platform_in = platform_ft * measure.INCHES_PER_FOOT
    found = []
    if platform_in == 0:
        told = say("reach.floor.told", "You reach from the floor. Clear it and keep it dry.")
        found.append(Item(say("reach.floor", "Floor"), say("reach.will_do", "will do"), told, ("common-practice",)))
    found += [
        _bench(platform_in, inputs), _stepladder(ladder_ft, inputs), _stilts(platform_in, inputs), _tower(platform_ft, inputs),
    ]  # fmt: skip
    return tuple(found)


def _bench(platform_in: Fraction, inputs: ReachInputs) -> Item:
    if platform_in > BENCH_MOST_IN:
        most = measure.limit(Fraction(BENCH_MOST_IN), str(BENCH_MOST_IN) + " in", inputs.show_in)
        state = say("reach.too_low", "too low")
        told = say("reach.bench.low", "Low benches go up to about {most}.", most=most)
    elif inputs.floor == "stairs":
        state = say("reach.not_here", "not here")
        told = say("reach.bench.stairs", "A bench does not stand on stairs.")
    else:
        state = say("reach.will_do", "will do")
        told = say("reach.bench.told", "Lock its legs. Stand on the deck, not on the edge.")
    return Item(say("reach.bench", "Work bench"), state, told, ("common-practice",))


def _stepladder(ladder_ft: int, inputs: ReachInputs) -> Item:
    if ladder_ft == 0:
        state = say("reach.too_high", "too high")
        english = "Use a scaffold: no stock stepladder is that high with its top two steps left free."
        told = say("reach.stepladder.high", english)
    elif inputs.floor == "stairs":
        state = say("reach.not_here", "not here")
        english = "A stepladder needs all four feet on one level. Use a stair ladder or a scaffold with its own plan."
        told = say("reach.stepladder.stairs", english)
    else:
        state = say("reach.stepladder.state", "will do: {size}", size=_feet(ladder_ft, inputs.show_in))
        english = "Open it fully, lock the spreaders, stay off the top and the top step."
        told = say("reach.stepladder.told", english)
        if inputs.floor == "film":
            told = say("reach.stepladder.film", "Tape a rigid sheet over the film under its feet.") + " " + told
    return Item(say("reach.stepladder", "Stepladder"), state, told, ("cfr-1926-1053",))


def _stilts(platform_in: Fraction, inputs: ReachInputs) -> Item:
    if platform_in < STILTS_LOW_IN or platform_in > STILTS_HIGH_IN:
        state = say("reach.stilts.state.no", "do not fit")
        give = _inches(STILTS_LOW_IN, STILTS_HIGH_IN, inputs.show_in)
        told = say("reach.stilts.range", "Stilts give about {range}.", range=give)
    elif inputs.floor != "clear":
        state = say("reach.not_here", "not here")
        told = say("reach.stilts.floor", "Never on film, wet floors, stairs or near an open edge.")
    else:
        state = say("reach.stilts.state", "only if trained")
        told = say("reach.stilts.told", "Floor swept, no cords. Rails are raised by the height of the stilts.")
    return Item(say("reach.stilts", "Stilts"), state, told, ("cfr-1926-451",))


def _tower(platform_ft: Fraction, inputs: ReachInputs) -> Item:
    if platform_ft > inputs.base_width_ft * BASE_RATIO:
        state = say("reach.tower.state.tie", "tie it")
        told = say("reach.tower.tie", "Its platform is over 4 times its narrow side: tie it, or set outriggers.")
    elif inputs.floor == "stairs":
        state = say("reach.tower.state.plan", "with a plan")
        told = say("reach.tower.plan", "On stairs a scaffold is planned by a competent person.")
    else:
        state = say("reach.will_do", "will do")
        told = say("reach.tower.told", "Lock every wheel, deck it fully, and get down before it is moved.")
    return Item(say("reach.tower", "Rolling scaffold"), state, told, ("cfr-1926-451",))


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
