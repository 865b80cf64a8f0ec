"""Paint: primer and paint for a ceiling, how thick the wet film is, and what a wet coat does to texture."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import AREA, COATS, OPTIONAL_ROOMS, area_sqft
from calc.core.answer import Answer, Calculator, line
from calc.core.fields import SHOW_IN, Field, Values
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure, words
from calc.numbers.exact import ceiling
from calc.numbers.words import short_decimal

# 231 cu in spread over 144 sq in to the square foot, 1,000 mils to the inch
SQFT_PER_GAL_AT_ONE_MIL = Fraction(
    measure.CUBIC_INCHES_PER_GALLON * 1000, measure.SQUARE_INCHES_PER_SQUARE_FOOT
)  # [sq ft mil/gal]
LABELS = ("paint-label",)
MAKERS_SPREAD, PLANNED_SPREAD = 450, (350, 400)  # what a maker prints, and what people plan on [sq ft/gal]
SURFACES = (
    ("smooth", "Smooth, sealed or painted"),
    ("new", "New board or fresh compound"),
    ("texture", "Texture, painted before"),
    ("bare", "Bare texture, never painted"),
    ("stained", "Stained or chalky"),
)

SPREAD = Field(
    name="spread_sqft_per_gal",
    label="Paint covers",
    kind="rate",
    unit="sqft/gal",
    help="The label says; it means smooth work. 350 is the safe end of common practice.",
    example="350",
    lowest="30",
    highest="1000",
    default="350",
    source="paint-label",
)
PRIMER_SPREAD = Field(
    name="primer_sqft_per_gal",
    label="Primer covers",
    kind="rate",
    unit="sqft/gal",
    help="250 to 400. Fresh compound drinks, so the low end is used.",
    example="250",
    lowest="30",
    highest="1000",
    default="250",
    source="paint-label",
    rare=True,
)
SURFACE = Field(
    name="surface",
    label="What is painted",
    kind="choice",
    unit="",
    help="It decides about the primer.",
    example="new",
    default="new",
    choices=SURFACES,
)
EXTRA = Field(
    name="texture_extra_pct",
    label="More for a texture",
    kind="percent",
    unit="%",
    help="A rough face takes more paint than its flat area. Used only where texture is painted.",
    example="50",
    lowest="0",
    highest="200",
    default="50",
    source="common-practice",
    rare=True,
)


@dataclass(frozen=True)
class PaintInputs:
    """`area_sqft` [sq ft, > 0], `coats` [-, 1 to 6], `spread_sqft_per_gal` and `primer_sqft_per_gal` [sq ft/gal, 30 to
    1,000], `surface` one of `SURFACES`, `texture_extra_pct` [%, 0 to 200], `show_in`."""

    area_sqft: Fraction
    coats: int
    spread_sqft_per_gal: Fraction
    primer_sqft_per_gal: Fraction
    surface: str
    texture_extra_pct: Fraction
    show_in: str


def paint(inputs: PaintInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return paint and primer, whole gallons to buy, and the wet film of one coat.

    Raises nothing. Sources: the gallon of 231 cubic inches; spread rates from labels, as quoted.
    """
    show = inputs.show_in
    rough = inputs.surface in ("texture", "bare")
    extra = 1 + inputs.texture_extra_pct / 100 if rough else Fraction(1)
    painted_sqft = inputs.area_sqft * extra
    gallons = painted_sqft * inputs.coats / inputs.spread_sqft_per_gal
    primed = inputs.surface != "smooth" and inputs.surface != "texture"
    primer_gal = painted_sqft / inputs.primer_sqft_per_gal if primed else Fraction(0)
    wet_film_mil = SQFT_PER_GAL_AT_ONE_MIL / inputs.spread_sqft_per_gal
    to_buy, primer_to_buy = ceiling(gallons), ceiling(primer_gal)
    lines = (
        line(
            "area_sqft", "Ceiling", inputs.area_sqft, "sqft", 1,
            "From your rooms, or as you gave it.", short_decimal(inputs.area_sqft, 2) + " sq ft", ("geometry",), show,
        ),
        line(
            "painted_sqft", "Face to paint", painted_sqft, "sqft", 1,
            "A texture has more face than its flat area." if rough else "A smooth ceiling has the face of its area.",
            short_decimal(inputs.area_sqft, 2) + " × " + short_decimal(extra, 3), ("common-practice",) if rough else ("geometry",),
            show,
        ),
        line(
            "gallons", "Paint", gallons, "gal", 2, "Face times coats, over what a gallon covers.",
            short_decimal(painted_sqft, 2) + " × " + str(inputs.coats) + " ÷ " + short_decimal(inputs.spread_sqft_per_gal, 1)
            + " = " + words.decimal(gallons, 2), LABELS, show,
        ),
        line(
            "paint_to_buy_gal", "Paint to buy", Fraction(to_buy), "gal", 0, "Whole gallons, rounded up.",
            words.decimal(gallons, 2) + " gal, so " + words.whole(to_buy), LABELS, show,
        ),
        line(
            "primer_gal", "Primer", primer_gal, "gal", 2,
            "Face over what a gallon of primer covers, one coat." if primed else "A sound, sealed face needs none.",
            short_decimal(painted_sqft, 2) + " ÷ " + short_decimal(inputs.primer_sqft_per_gal, 1) if primed else "none",
            LABELS, show,
        ),
        line(
            "primer_to_buy_gal", "Primer to buy", Fraction(primer_to_buy), "gal", 0, "Whole gallons, rounded up.",
            words.decimal(primer_gal, 2) + " gal, so " + words.whole(primer_to_buy), LABELS, show,
        ),
        line(
            "wet_film_mil", "Wet film of one coat", wet_film_mil, "mil", 2,
            "One gallon is 231 cu in: 1,604.17 over what a gallon covers.",
            "1,604.17 ÷ " + short_decimal(inputs.spread_sqft_per_gal, 1), ("us-customary-definitions",), show,
        ),
    )  # fmt: skip
    primer = " and " + lines[5].shown + " of primer" if primed else ""
    return Answer(
        calculator="paint",
        inputs=given,
        figure=lines[3].shown,
        figure_label="of paint" + primer + " to buy",
        sentence=words.plural(inputs.coats, "coat") + " take " + lines[2].shown + ". Each goes on about " + lines[6].shown + " thick, wet.",
        lines=lines,
        cautions=_cautions(inputs.surface),
        notes=_notes(inputs.surface, show),
        drawing=None,
    )  # fmt: skip


def _cautions(surface: str) -> tuple[Caution, ...]:
    found = []
    if surface in ("bare", "texture", "stained"):
        found.append(caution("asbestos-first"))
    if surface in ("bare", "stained"):
        found.append(caution("paint-fumes"))
    if surface == "bare":
        found.append(caution("water-paint"))
    if surface == "texture":
        found.append(caution("lead-paint"))
    return tuple(found)


def _notes(surface: str, show: str) -> tuple[str, ...]:
    notes = [
        "The label of the paint in hand governs. A maker's figure is "
        + measure.shown(Fraction(MAKERS_SPREAD), "sqft/gal", 1, show)
        + "; "
        + " to ".join([measure.shown(Fraction(one), "sqft/gal", 1, show) for one in PLANNED_SPREAD])
        + " is what people plan on."
    ]
    if surface == "new":
        notes.append(
            "Prime before you judge the finish: compound and paper drink paint unevenly, and it shows in the light."
        )
    if surface == "stained":
        notes.append(
            "Find and stop the water first. A stain-blocking primer holds back what is dry, and nothing that is wet."
        )
    if surface == "bare":
        notes.append("Paint locks the texture in. Wet scraping will hardly work after it.")
    return tuple(notes)  # fmt: skip


def _work_out(values: Values) -> Answer:
    inputs = PaintInputs(
        area_sqft(values),
        values.count("coats"),
        values.number("spread_sqft_per_gal"),
        values.number("primer_sqft_per_gal"),
        values.choice("surface"),
        values.number("texture_extra_pct"),
        values.choice("show_in"),
    )
    return paint(inputs, values.given)


CALCULATOR = Calculator(
    name="paint",
    title="Primer and paint",
    summary="Gallons of primer and paint, and the film in mils",
    verb="Work out the paint",
    fields=(OPTIONAL_ROOMS, AREA, SURFACE, COATS, SPREAD, PRIMER_SPREAD, EXTRA, SHOW_IN),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'"), ("surface", "new"), ("coats", "2")),
    one_of=("rooms", "area_sqft"),
    sources=("common-practice", "epa-asbestos-in-your-home", "cfr-745-83"),
)
