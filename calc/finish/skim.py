"""Skim over: how much compound buries a texture flat, what it weighs, and the water that must leave.

Two parts lie on the ceiling when it is done: the fill between the bumps, and the film over their tips.
Compound shrinks as it dries, so more is laid than stays; some more stays on tools and in pails.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import (
    AREA,
    COAT_THICKNESS,
    COATS,
    OPTIONAL_ROOMS,
    TEXTURE_DEPTH,
    WASTE,
    WATER_LB_PER_GAL,
    area_sqft,
)
from calc.core.answer import Answer, Calculator, Line, line
from calc.core.drawing import Dimension, Drawing, Label, Shape
from calc.core.fields import SHOW_IN, Field, Values
from calc.drying.coats import (
    COMPOUND_LB_PER_GAL,
    COMPOUND_WATER_PCT,
    GALLONS_PER_SQFT_INCH,
    SHRINKAGE_PCT,
    TEXTURE_OPEN_PCT,
)
from calc.drying.law import THICK_COAT_IN
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure, words
from calc.numbers.exact import ceiling

HEAVY_LOAD_PSF = Fraction(13, 10)  # what a maker lets hang on 1/2 in board, joists 24 in apart [lb/sq ft]
BOARD_DRAWN_IN = Fraction(1, 2)  # the old board on the drawing [in], not measured
SECTION_WIDTH_IN = Fraction(3, 2)  # width of the drawn section [in]
BUMPS_DRAWN = 5

OPEN = Field(
    name="texture_open_pct", label="Open space in the texture", kind="percent", unit="%",
    help="The part of its depth that is air. Pointed bumps that touch leave 74 %.",
    example="75", lowest="0", highest="100", default=words.short_decimal(TEXTURE_OPEN_PCT, 1), source="geometry", rare=True,
)  # fmt: skip
SHRINKAGE = Field(
    name="shrinkage_pct", label="Shrinkage", kind="percent", unit="%",
    help="What the compound loses as it dries, by volume. Its label or data sheet says; the standard allows up to 35 %.",
    example="25", lowest="0", highest="50", default=words.short_decimal(SHRINKAGE_PCT, 1), source="common-practice", rare=True,
)  # fmt: skip
PAIL = Field(
    name="pail_gal", label="Pail size", kind="volume", unit="gal",
    help="What one pail holds.",
    example="4.5", lowest="0.25", highest="60", default="4.5", source="compound-label", rare=True,
)  # fmt: skip
DENSITY = Field(
    name="compound_lb_per_gal", label="Weight of the compound", kind="rate", unit="lb/gal",
    help="The label says. All-purpose is about 13.7; lightweight is up to 35 % lighter, about 8.9.",
    example="13.7", lowest="5", highest="20", default=words.short_decimal(COMPOUND_LB_PER_GAL, 2), source="compound-label",
)  # fmt: skip
WATER = Field(
    name="water_pct", label="Water in the compound", kind="percent", unit="%",
    help="By weight. 30 to 35 % is printed; the higher is used.",
    example="35", lowest="0", highest="60", default=words.short_decimal(COMPOUND_WATER_PCT, 1), source="compound-water", rare=True,
)  # fmt: skip


@dataclass(frozen=True)
class SkimInputs:
    """`area_sqft` [sq ft, 1 to 100,000], `texture_depth_in` [in, 0 to 1], `texture_open_pct` [%, 0 to 100], `coats`
    [-, 1 to 6] of `coat_thickness_in` [in dry, 1/64 to 1/4], `shrinkage_pct` [%, 0 to 50], `waste_pct` [%, 0 to 50],
    `pail_gal` [gal], `compound_lb_per_gal` [lb/gal], `water_pct` [% by weight, 0 to 60], `show_in`."""

    area_sqft: Fraction
    texture_depth_in: Fraction
    texture_open_pct: Fraction
    coats: int
    coat_thickness_in: Fraction
    shrinkage_pct: Fraction
    waste_pct: Fraction
    pail_gal: Fraction
    compound_lb_per_gal: Fraction
    water_pct: Fraction
    show_in: str


def skim(inputs: SkimInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return the compound to buy, its weight, the water to dry out and the load that stays.

    Raises nothing: the inputs are checked when read. Sources: geometry and the gallon of 231 cubic inches;
    density from a label (from memory), water content as quoted from a trim maker's note.
    """
    show = inputs.show_in
    fill_in = inputs.texture_depth_in * inputs.texture_open_pct / 100
    film_in = inputs.coats * inputs.coat_thickness_in
    dry_gal = inputs.area_sqft * (fill_in + film_in) * GALLONS_PER_SQFT_INCH
    laid_gal = dry_gal / (1 - inputs.shrinkage_pct / 100)
    compound_gal = laid_gal * (1 + inputs.waste_pct / 100)
    pails = ceiling(compound_gal / inputs.pail_gal)
    wet_weight_lb = laid_gal * inputs.compound_lb_per_gal
    water_gal = wet_weight_lb * inputs.water_pct / 100 / WATER_LB_PER_GAL
    dry_load_psf = wet_weight_lb * (1 - inputs.water_pct / 100) / inputs.area_sqft
    peak_load_psf = _peak_load_psf(inputs, fill_in, dry_load_psf, wet_weight_lb / inputs.area_sqft)
    carried_lb = pails * inputs.pail_gal * inputs.compound_lb_per_gal
    defined = ("geometry", "us-customary-definitions")
    lines = (
        line(
            "area_sqft", "Ceiling", inputs.area_sqft, "sqft", 1,
            "From your rooms, or as you gave it.", words.short_decimal(inputs.area_sqft, 2) + " sq ft",
            ("geometry",), show,
        ),
        line(
            "fill_in", "Fill, as an even layer", fill_in, "in", 4,
            "Depth of the texture times its open part.",
            words.short_decimal(inputs.texture_depth_in, 4) + " × " + words.short_decimal(inputs.texture_open_pct, 1) + " %",
            ("geometry", "common-practice"), show,
        ),
        line(
            "film_in", "Film over the tips", film_in, "in", 4,
            "Coats times the thickness of one.",
            str(inputs.coats) + " × " + words.short_decimal(inputs.coat_thickness_in, 4) + " in",
            ("geometry", "your-figure"), show,
        ),
        line(
            "compound_gal", "Compound", compound_gal, "gal", 2,
            "Area times fill and film; 144 sq in in a square foot, 231 cu in in a gallon; then shrinkage and waste.",
            _compound_working(inputs, fill_in + film_in, compound_gal), defined, show,
        ),
        line(
            "pails", "Pails to buy", Fraction(pails), "", 0,
            "Compound over pail size, rounded up.",
            words.decimal(compound_gal, 2) + " ÷ " + words.short_decimal(inputs.pail_gal, 2) + " = "
            + words.decimal(compound_gal / inputs.pail_gal, 2) + ", so " + words.whole(pails),
            ("your-figure",), show,
        ),
        line(
            "carry_weight_lb", "To carry in", carried_lb, "lb", 0,
            "Full pails times the weight of a gallon, pails not counted.",
            words.whole(pails) + " × " + words.short_decimal(inputs.pail_gal, 2) + " × "
            + words.short_decimal(inputs.compound_lb_per_gal, 2) + " lb", ("compound-label",), show,
        ),
        line(
            "wet_weight_lb", "On the ceiling, wet", wet_weight_lb, "lb", 0,
            "Compound laid, waste left out, times the weight of a gallon.",
            words.decimal(laid_gal, 2) + " × " + words.short_decimal(inputs.compound_lb_per_gal, 2) + " lb",
            ("compound-label",), show,
        ),
        line(
            "peak_load_psf", "Load at its heaviest", peak_load_psf, "psf", 2,
            "The first coat wet, or all dry but the last coat wet: the greater.",
            _peak_working(inputs, fill_in, dry_load_psf, wet_weight_lb / inputs.area_sqft), ("compound-label", "compound-water", "geometry"), show,
        ),
        line(
            "water_to_dry_gal", "Water that must leave the room", water_gal, "gal", 1,
            "Wet weight times its water, over the weight of a gallon of water (8.3285 lb at 70 °F).",
            words.decimal(wet_weight_lb, 0) + " × " + words.short_decimal(inputs.water_pct, 1) + " % ÷ 8.3285",
            ("compound-water", "iapws-water"), show,
        ),
        line(
            "dry_load_psf", "Load that stays", dry_load_psf, "psf", 2,
            "Wet weight less its water, over the area.",
            words.decimal(wet_weight_lb, 0) + " × " + words.short_decimal(100 - inputs.water_pct, 1) + " % ÷ "
            + words.short_decimal(inputs.area_sqft, 2) + " sq ft",
            ("compound-label", "compound-water"), show,
        ),
    )  # fmt: skip
    return Answer(
        calculator="skim",
        inputs=given,
        figure=words.plural(pails, "pail"),
        figure_label="of " + measure.shown(inputs.pail_gal, "gal", 1, show) + " to buy",
        sentence=_sentence(lines),
        lines=lines,
        cautions=_cautions(inputs, peak_load_psf),
        notes=_notes(inputs),
        drawing=_section(inputs, film_in),
    )


def _peak_load_psf(inputs: SkimInputs, fill_in: Fraction, dry_load_psf: Fraction, wet_load_psf: Fraction) -> Fraction:
    """Each coat is dry before the next, so the ceiling is heaviest under the first coat or under the last."""
    layer_in = fill_in + inputs.coats * inputs.coat_thickness_in
    first_psf = wet_load_psf * (fill_in + inputs.coat_thickness_in) / layer_in
    last_water_psf = (wet_load_psf - dry_load_psf) * inputs.coat_thickness_in / layer_in
    return max(first_psf, dry_load_psf + last_water_psf)


def _peak_working(inputs: SkimInputs, fill_in: Fraction, dry_psf: Fraction, wet_psf: Fraction) -> str:
    """Both moments in numbers: wet and dry load of the whole layer, and the part of it that is wet then."""
    layer_in = fill_in + inputs.coats * inputs.coat_thickness_in
    coat_in, water_psf = inputs.coat_thickness_in, wet_psf - dry_psf
    layer, first = words.short_decimal(layer_in, 4), words.short_decimal(fill_in + coat_in, 4)
    first_psf, last_psf = wet_psf * (fill_in + coat_in) / layer_in, dry_psf + water_psf * coat_in / layer_in
    return (
        "first coat wet: " + words.decimal(wet_psf, 3) + " × " + first + " ÷ " + layer + " = " + words.decimal(first_psf, 3)
        + "; last coat wet: " + words.decimal(dry_psf, 3) + " + " + words.decimal(water_psf, 3) + " × "
        + words.short_decimal(coat_in, 4) + " ÷ " + layer + " = " + words.decimal(last_psf, 3) + " lb/sq ft"
    )  # fmt: skip


def _sentence(lines: tuple[Line, ...]) -> str:
    found = dict([(one.name, one.shown) for one in lines])
    return (
        "It takes " + found["compound_gal"] + " of compound. It weighs " + found["wet_weight_lb"] + " wet on the ceiling, and "
        + found["water_to_dry_gal"] + " of water must dry out of it."
    )  # fmt: skip


def _compound_working(inputs: SkimInputs, layer_in: Fraction, compound_gal: Fraction) -> str:
    return (
        words.short_decimal(inputs.area_sqft, 2) + " × " + words.short_decimal(layer_in, 4) + " in × 144 ÷ 231 ÷ "
        + words.short_decimal(1 - inputs.shrinkage_pct / 100, 4) + " × "
        + words.short_decimal(1 + inputs.waste_pct / 100, 4) + " = " + words.decimal(compound_gal, 2) + " gal"
    )  # fmt: skip


def _cautions(inputs: SkimInputs, peak_load_psf: Fraction) -> tuple[Caution, ...]:
    found = [caution("asbestos-first"), caution("ceiling-load")]
    if peak_load_psf >= HEAVY_LOAD_PSF:
        found.append(caution("added-load"))
    if inputs.texture_depth_in + inputs.coat_thickness_in > THICK_COAT_IN:
        found.append(caution("thick-fill"))
    return tuple(found)


def _notes(inputs: SkimInputs) -> tuple[str, ...]:
    notes = [
        "For comparison: a maker lets 1.3 lb/sq ft of insulation lie on 1/2 in ceiling board where joists are 24 in apart.",
        "How open the texture is differs from room to room. Fill one square foot once the result allows it, and see.",
    ]
    if inputs.water_pct != 0:
        notes.append("Printed water figures run from 30 to 35 %. The higher one asks for more drying.")
    return tuple(notes)


def _section(inputs: SkimInputs, film_in: Fraction) -> Drawing:
    """The ceiling cut through: board on top, texture hanging from it, fill between the bumps, film under the tips."""
    depth, width, zero = inputs.texture_depth_in, SECTION_WIDTH_IN, Fraction(0)
    under_board = film_in + depth
    top = under_board + BOARD_DRAWN_IN
    shapes = [Shape(((zero, under_board), (width, under_board), (width, top), (zero, top)), "cut", "board", True)]
    labels = [Label((width, under_board + BOARD_DRAWN_IN / 2), "right", "old board")]
    if depth > 0:
        shapes.append(
            Shape(((zero, film_in), (width, film_in), (width, under_board), (zero, under_board)), "none", "fill", False)
        )
        shapes.append(Shape(_bumps(width, film_in, under_board), "edge", "texture", True))
        labels.append(Label((width, film_in + depth / 2), "right", "texture, filled"))
    for coat in range(inputs.coats):
        low = film_in - (coat + 1) * inputs.coat_thickness_in
        high = low + inputs.coat_thickness_in
        shapes.append(Shape(((zero, low), (width, low), (width, high), (zero, high)), "edge", "compound", False))
    labels.append(Label((width, film_in / 2), "right", words.plural(inputs.coats, "coat")))
    dimensions = [Dimension((zero, zero), (zero, film_in), "left", measure.shown(film_in, "in", 4, inputs.show_in))]
    if depth > 0:
        dimensions.append(
            Dimension((zero, film_in), (zero, under_board), "left", measure.shown(depth, "in", 4, inputs.show_in))
        )
    described = "The ceiling cut through, seen from the side. From the top: the old board; "
    if depth > 0:
        described += "texture " + measure.shown(depth, "in", 4, inputs.show_in) + " deep, filled between the bumps; "
    described += (
        words.plural(inputs.coats, "coat")
        + " of compound, together "
        + measure.shown(film_in, "in", 4, inputs.show_in)
        + "."
    )
    return Drawing(
        title="Section through the ceiling",
        description=described,
        width=width,
        height=top,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=tuple(dimensions),
        labels=tuple(labels),
        scale_note="To scale. The board is drawn 1/2 in thick and was not measured.",
    )


def _bumps(width: Fraction, tips: Fraction, root: Fraction) -> tuple[tuple[Fraction, Fraction], ...]:
    """Pointed bumps that touch, hanging from `root` down to `tips`."""
    pitch = width / BUMPS_DRAWN
    points = [(Fraction(0), root)]
    for bump in range(BUMPS_DRAWN):
        points.append((pitch * bump + pitch / 2, tips))
        points.append((pitch * (bump + 1), root))
    return tuple(points)


def _work_out(values: Values) -> Answer:
    inputs = SkimInputs(
        area_sqft(values),
        values.number("texture_depth_in"),
        values.number("texture_open_pct"),
        values.count("coats"),
        values.number("coat_thickness_in"),
        values.number("shrinkage_pct"),
        values.number("waste_pct"),
        values.number("pail_gal"),
        values.number("compound_lb_per_gal"),
        values.number("water_pct"),
        values.choice("show_in"),
    )
    return skim(inputs, values.given)


CALCULATOR = Calculator(
    name="skim",
    title="Compound to bury the texture",
    summary="Compound, pails, weight and water to skim a texture flat",
    verb="Work out the compound",
    fields=(
        OPTIONAL_ROOMS, AREA, TEXTURE_DEPTH, COATS, COAT_THICKNESS, OPEN, SHRINKAGE, WASTE, PAIL, DENSITY, WATER, SHOW_IN,
    ),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'"), ("texture_depth_in", "1/8"), ("coats", "2"), ("coat_thickness_in", "1/16"), ("compound_lb_per_gal", "8.9")),
    one_of=("rooms", "area_sqft"),
    sources=("usg-ceiling-load", "compound-lightweight"),
)  # fmt: skip
