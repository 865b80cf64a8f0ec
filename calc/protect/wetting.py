"""Wetting: the water that softens a bare texture, how often the tank is filled, and what hangs on the board."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import AREA, OPTIONAL_ROOMS, WATER_LB_PER_GAL, area_sqft
from calc.core.answer import Answer, Calculator, line
from calc.core.fields import SHOW_IN, Field, Values
from calc.evidence.cautions import caution
from calc.numbers import measure, words
from calc.numbers.exact import ceiling
from calc.numbers.words import short_decimal

LIMIT_PSF = Fraction(13, 10)  # what a maker lets hang on 1/2 in board, joists 24 in apart [lb/sq ft]
BOARD_IN, JOISTS_IN = Fraction(1, 2), 24  # the board and the joists apart that it is said of [in]
WATER = ("iapws-water",)

RATE = Field(
    name="rate_gal_per_100sqft",
    label="Water in one pass",
    kind="rate",
    unit="gal/100sqft",
    help="A fine mist that soaks in and does not drip. About 5 gal in all wet a living room.",
    example="0.9",
    lowest="0.1",
    highest="20",
    default="0.9",
    source="common-practice",
)
PASSES = Field(
    name="passes",
    label="Passes",
    kind="count",
    unit="",
    help="Two light passes with a wait of about 15 minutes soak deeper than one heavy pass.",
    example="2",
    lowest="1",
    highest="10",
    default="2",
    source="common-practice",
)
TANK = Field(
    name="tank_gal",
    label="Tank",
    kind="volume",
    unit="gal",
    help="What the sprayer holds.",
    example="2",
    lowest="0.25",
    highest="60",
    default="2",
)
PAINTED = Field(
    name="texture_painted",
    label="Was it ever painted?",
    kind="choice",
    unit="",
    help="Scratch nothing to find out. Look for a skin, for sheen, and for tips that are rounded.",
    example="no",
    default="unknown",
    choices=(("unknown", "Not known"), ("no", "No"), ("yes", "Yes")),
)


@dataclass(frozen=True)
class WettingInputs:
    """`area_sqft` [sq ft, > 0], `rate_gal_per_100sqft` [gal/100 sq ft, 0.1 to 20], `passes` [-, 1 to 10], `tank_gal` [gal],
    `texture_painted` 'unknown', 'no' or 'yes', `show_in`."""

    area_sqft: Fraction
    rate_gal_per_100sqft: Fraction
    passes: int
    tank_gal: Fraction
    texture_painted: str
    show_in: str


def wetting(inputs: WettingInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return the water for all passes, the tank fills, and the load if all of it stays on the board.

    Raises nothing. Sources: the rate is common practice; a gallon of water at 70 degF by IAPWS-97.
    """
    show = inputs.show_in
    water_gal = inputs.area_sqft * inputs.rate_gal_per_100sqft / 100 * inputs.passes
    tank_fills = ceiling(water_gal / inputs.tank_gal)
    water_lb = water_gal * WATER_LB_PER_GAL
    added_load_psf = water_lb / inputs.area_sqft
    lines = (
        line(
            "area_sqft", "Ceiling", inputs.area_sqft, "sqft", 1,
            "From your rooms, or as you gave it.", short_decimal(inputs.area_sqft, 2) + " sq ft", ("geometry",), show,
        ),
        line(
            "water_gal", "Water, all passes", water_gal, "gal", 1, "Area times the rate times the passes.",
            short_decimal(inputs.area_sqft, 2) + " ÷ 100 × " + short_decimal(inputs.rate_gal_per_100sqft, 3) + " × " + str(inputs.passes),
            ("common-practice",), show,
        ),
        line(
            "tank_fills", "Times to fill the tank", Fraction(tank_fills), "", 0, "Water over the tank, rounded up.",
            words.decimal(water_gal, 2) + " ÷ " + short_decimal(inputs.tank_gal, 2) + ", so " + words.whole(tank_fills),
            ("your-figure",), show,
        ),
        line(
            "water_lb", "Weight of the water", water_lb, "lb", 0, "8.3285 lb a gallon at 70 °F.",
            words.decimal(water_gal, 2) + " × 8.3285", WATER, show,
        ),
        line(
            "added_load_psf", "Load on the board while wet", added_load_psf, "psf", 2,
            "Weight of the water over the area, as if none dripped off.",
            words.decimal(water_lb, 1) + " ÷ " + short_decimal(inputs.area_sqft, 2), ("iapws-water", "usg-ceiling-load"), show,
        ),
    )  # fmt: skip
    found = [caution("asbestos-first"), caution("live-wires"), caution("ceiling-load"), caution("wet-plastic")]
    if added_load_psf >= LIMIT_PSF:
        found.append(caution("wet-load"))
    if inputs.texture_painted != "no":
        found.append(caution("painted-texture"))
    notes = [
        "For comparison: a maker lets "
        + measure.shown(LIMIT_PSF, "psf", 2, show)
        + " hang on "
        + measure.limit(BOARD_IN, "1/2 in", show)
        + " ceiling board where joists are "
        + measure.limit(Fraction(JOISTS_IN), "24 in", show)
        + " apart.",
        "Wet no more than you can scrape before it dries, about the reach of one set-up. Dripping means too much.",
        "After the texture is off, dust still falls the next day. Leave the film up until then.",
    ]
    if inputs.texture_painted == "yes":
        notes.insert(
            0,
            "Paint keeps the water out. If a wetted square foot does not turn soft in 15 minutes, choose another way.",
        )
    return Answer(
        calculator="wetting",
        inputs=given,
        figure=lines[1].shown,
        figure_label="of water in " + words.plural(inputs.passes, "pass", "passes"),
        sentence="Fill the tank " + words.plural(tank_fills, "time") + ". The water adds " + lines[4].shown + " to the board until it dries.",
        lines=lines,
        cautions=tuple(found),
        notes=tuple(notes),
        drawing=None,
    )  # fmt: skip


def _work_out(values: Values) -> Answer:
    inputs = WettingInputs(
        area_sqft(values),
        values.number("rate_gal_per_100sqft"),
        values.count("passes"),
        values.number("tank_gal"),
        values.choice("texture_painted"),
        values.choice("show_in"),
    )
    return wetting(inputs, values.given)


CALCULATOR = Calculator(
    name="wetting",
    title="Water to soak the texture",
    summary="Water, tank fills and added load to soak a bare texture",
    verb="Work out the water",
    fields=(OPTIONAL_ROOMS, AREA, PAINTED, RATE, PASSES, TANK, SHOW_IN),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'"), ("texture_painted", "no"), ("tank_gal", "2")),
    one_of=("rooms", "area_sqft"),
    sources=("usg-ceiling-load",),
)
