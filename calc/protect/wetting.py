"""Wetting: the water that softens a bare texture, how often the tank is filled, and what hangs on the board."""

from fractions import Fraction

from calc.common.inputs import AREA, OPTIONAL_ROOMS, WATER_AT_F, WATER_WEIGHT, add_area
from calc.core.answer import Answer, Calculator
from calc.core.fields import SHOW_IN, Field, Values
from calc.core.lines import Lines
from calc.evidence.cautions import caution
from calc.numbers import measure, words
from calc.numbers.quantity import Quantity, rounded_up
from calc.text.door import say

LIMIT_PSF = Fraction(13, 10)  # what a maker lets hang on 1/2 in board, joists 24 in apart [lb/sq ft]
BOARD_IN, JOISTS_IN = Fraction(1, 2), 24  # the board and the joists apart that it is said of [in]

RATE = Field(
    name="rate_gal_per_100sqft", label="Water in one pass", kind="rate", unit="gal/100sqft",
    help="A fine mist that soaks in and does not drip. About 5 gal in all wet a living room.",
    example="0.9", lowest="0.1", highest="20", default="0.9", source="common-practice",
)  # fmt: skip
PASSES = Field(
    name="passes", label="Passes", kind="count", unit="",
    help="Two light passes with a wait of about 15 minutes soak deeper than one heavy pass.",
    example="2", lowest="1", highest="10", default="2", source="common-practice",
)  # fmt: skip
TANK = Field(
    name="tank_gal", label="Tank", kind="volume", unit="gal",
    help="What the sprayer holds.",
    example="2", lowest="0.25", highest="60", default="2",
)  # fmt: skip
PAINTED = Field(
    name="texture_painted", label="Was it ever painted?", kind="choice", unit="",
    help="Scratch nothing to find out. Look for a skin, for sheen, and for tips that are rounded.",
    example="no", default="unknown", choices=(("unknown", "Not known"), ("no", "No"), ("yes", "Yes")),
)  # fmt: skip


def water(*, area: Quantity, rate: Quantity, passes: Quantity) -> Quantity:
    """Return the water for all `passes` [-] over `area` [sq ft] at `rate` [gal/100 sq ft]. The usual rate is common practice."""
    return area * rate * passes


def load_while_wet(*, water_weight: Quantity, area: Quantity) -> Quantity:
    """Return what hangs on the board [lb/sq ft] if all the water stays on it, `water_weight` [lb] over `area` [sq ft]."""
    return (water_weight / area).cited("usg-ceiling-load")


def wetting(values: Values) -> Answer:
    """Return the water for all passes, the tank fills, and the load if all of it stays on the board. Raises nothing."""
    show = values.choice("show_in")
    lines = Lines("wetting", show)
    area = add_area(lines, values)
    amount = lines.add(
        name="water_gal",
        label="Water, all passes",
        unit="gal",
        places=1,
        rule="Area times the rate times the passes.",
        amount=water(area=area, rate=values.quantity("rate_gal_per_100sqft"), passes=values.quantity("passes")),
    )
    fills = lines.add(
        name="tank_fills",
        label="Times to fill the tank",
        unit="",
        places=0,
        rule="Water over the tank, rounded up.",
        amount=rounded_up(amount / values.quantity("tank_gal")),
    )
    weight = lines.add(
        name="water_lb",
        label="Weight of the water",
        unit="lb",
        places=0,
        rule="Water times its weight at {heat}.",
        amount=amount * WATER_WEIGHT,
        heat=measure.shown(Fraction(WATER_AT_F), "F", 0, show),
    )
    load = lines.add(
        name="added_load_psf",
        label="Load on the board while wet",
        unit="psf",
        places=2,
        rule="Weight of the water over the area, as if none dripped off.",
        amount=load_while_wet(water_weight=weight, area=area),
    )
    painted = values.choice("texture_painted")
    found = [caution("asbestos-first"), caution("live-wires"), caution("ceiling-load"), caution("wet-plastic")]
    if load.to("psf") >= LIMIT_PSF:
        found.append(caution("wet-load"))
    if painted != "no":
        found.append(caution("painted-texture"))
    return Answer(
        calculator="wetting",
        inputs=values.given,
        figure=lines.shown("water_gal"),
        figure_label=say("wetting.figure", "of water in {passes}", passes=words.plural(values.count("passes"), "pass", "passes")),
        sentence=say(
            "wetting.sentence", "Fill the tank {times}. The water adds {load} to the board until it dries.",
            times=words.plural(int(fills.value), "time"), load=lines.shown("added_load_psf"),
        ),
        lines=lines.tuple(),
        cautions=tuple(found),
        notes=_notes(painted, show),
        drawing=None,
    )  # fmt: skip


def _notes(painted: str, show: str) -> tuple[str, ...]:
    notes = [
        say(
            "wetting.note.load", "For comparison: a maker lets {load} hang on {board} ceiling board where joists are {apart} apart.",
            load=measure.shown(LIMIT_PSF, "psf", 2, show), board=measure.limit(BOARD_IN, "1/2 in", show),
            apart=measure.limit(Fraction(JOISTS_IN), "24 in", show),
        ),
        say("wetting.note.reach", "Wet no more than you can scrape before it dries, about the reach of one set-up. Dripping means too much."),
        say("wetting.note.dust", "After the texture is off, dust still falls the next day. Leave the film up until then."),
    ]  # fmt: skip
    if painted == "yes":
        text = (
            "Paint keeps the water out. If a wetted square foot does not turn soft in 15 minutes, choose another way."
        )
        notes.insert(0, say("wetting.note.painted", text))
    return tuple(notes)


CALCULATOR = Calculator(
    name="wetting",
    title="Water to soak the texture",
    summary="Water, tank fills and added load to soak a bare texture",
    verb="Work out the water",
    fields=(OPTIONAL_ROOMS, AREA, PAINTED, RATE, PASSES, TANK, SHOW_IN),
    work_out=wetting,
    example=(("rooms", "Living: 20' x 14'"), ("texture_painted", "no"), ("tank_gal", "2")),
    one_of=("rooms", "area_sqft"),
    sources=("usg-ceiling-load",),
    always=("asbestos-first", "live-wires", "ceiling-load", "wet-plastic"),
)
