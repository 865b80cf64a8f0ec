"""Skim over: how much compound buries a texture flat, what it weighs, and the water that must leave."""

from fractions import Fraction

from calc.common.inputs import (
    AREA,
    COAT_THICKNESS,
    COATS,
    OPTIONAL_ROOMS,
    TEXTURE_DEPTH,
    WASTE,
    WATER_WEIGHT,
    add_area,
)
from calc.core.answer import Answer, Calculator
from calc.core.fields import SHOW_IN, Field, Values
from calc.core.lines import Lines
from calc.drying.coats import COMPOUND_LB_PER_GAL, COMPOUND_WATER_PCT, SHRINKAGE_PCT, TEXTURE_OPEN_PCT
from calc.drying.law import THICK_COAT_IN
from calc.evidence.cautions import Caution, caution
from calc.finish.compound import dry_load, even_fill, film, heaviest, laid
from calc.finish.skim_section import section
from calc.numbers import measure, words
from calc.numbers.quantity import rounded_up
from calc.text.door import say

HEAVY_LOAD_PSF = Fraction(13, 10)  # what a maker lets hang on 1/2 in board, joists 24 in apart [lb/sq ft]
BOARD_IN, JOISTS_IN = Fraction(1, 2), Fraction(24)  # the board and the joists apart that it is said of [in]

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


def skim(values: Values) -> Answer:
    """Return the compound to buy, its weight, the water to dry out and the load that stays. Raises nothing.

    Sources: geometry and the gallon of 231 cubic inches; density from a label (from memory), water content as quoted from a
    trim maker's note.
    """
    show, coat, water = values.choice("show_in"), values.quantity("coat_thickness_in"), values.quantity("water_pct")
    density, pail = values.quantity("compound_lb_per_gal"), values.quantity("pail_gal")
    lines = Lines("skim", show)
    area = add_area(lines, values)
    fill = lines.add(
        name="fill_in",
        label="Fill, as an even layer",
        unit="in",
        places=4,
        rule="Depth of the texture times its open part.",
        amount=even_fill(
            texture_depth=values.quantity("texture_depth_in"), open_part=values.quantity("texture_open_pct")
        ),
    )
    over = lines.add(
        name="film_in",
        label="Film over the tips",
        unit="in",
        places=4,
        rule="Coats times the thickness of one.",
        amount=film(coats=values.quantity("coats"), thickness=coat),
    )
    amount = laid(area=area, fill=fill, over=over, shrinkage=values.quantity("shrinkage_pct"))
    compound = lines.add(
        name="compound_gal",
        label="Compound",
        unit="gal",
        places=2,
        rule="Area times fill and film; then shrinkage and waste.",
        amount=amount * (1 + values.quantity("waste_pct")),
    )
    pails = lines.add(
        name="pails",
        label="Pails to buy",
        unit="",
        places=0,
        rule="Compound over pail size, rounded up.",
        amount=rounded_up(compound / pail, "pail"),
    )
    lines.add(
        name="carry_weight_lb",
        label="To carry in",
        unit="lb",
        places=0,
        rule="Full pails times the weight of what is in them, pails not counted.",
        amount=pails * pail * density,
    )
    wet_weight = lines.add(
        name="wet_weight_lb",
        label="On the ceiling, wet",
        unit="lb",
        places=0,
        rule="Compound laid, waste left out, times its weight.",
        amount=amount.named(say("skim.laid", "laid"), "gal") * density,
    )
    dry = dry_load(wet_weight=wet_weight, water=water, area=area)
    wet = (wet_weight / area).named(say("skim.layer.wet", "whole layer wet"), "psf")
    peak = lines.add(
        name="peak_load_psf",
        label="Load at its heaviest",
        unit="psf",
        places=2,
        rule="The first coat wet, or all dry but the last coat wet: the greater.",
        amount=heaviest(
            wet=wet, dry=dry.named(say("skim.layer.dry", "whole layer dry"), "psf"), fill=fill, over=over, coat=coat
        ),
    )
    lines.add(
        name="water_to_dry_gal",
        label="Water that must leave the room",
        unit="gal",
        places=1,
        rule="Wet weight times its water, over the weight of water.",
        amount=wet_weight * water / WATER_WEIGHT,
    )
    lines.add(
        name="dry_load_psf",
        label="Load that stays",
        unit="psf",
        places=2,
        rule="Wet weight less its water, over the area.",
        amount=dry,
    )
    return Answer(
        calculator="skim",
        inputs=values.given,
        figure=words.plural(int(pails.value), "pail"),
        figure_label=say("skim.figure", "of {pail} to buy", pail=measure.shown(pail.value, "gal", 1, show)),
        sentence=say(
            "skim.sentence",
            "It takes {compound} of compound. It weighs {weight} wet on the ceiling, and {water} of water must dry out of it.",
            compound=lines.shown("compound_gal"), weight=lines.shown("wet_weight_lb"), water=lines.shown("water_to_dry_gal"),
        ),
        lines=lines.tuple(),
        cautions=_cautions(peak.value, values.number("texture_depth_in") + coat.value),
        notes=_notes(water.value, show),
        drawing=section(
            texture_depth_in=values.number("texture_depth_in"), coats=values.count("coats"), coat_thickness_in=coat.value, show_in=show
        ),
    )  # fmt: skip


def _cautions(peak_psf: Fraction, first_coat_in: Fraction) -> tuple[Caution, ...]:
    found = [caution("asbestos-first"), caution("ceiling-load")]
    if peak_psf >= HEAVY_LOAD_PSF:
        found.append(caution("added-load"))
    if first_coat_in > THICK_COAT_IN:
        found.append(caution("thick-fill"))
    return tuple(found)


def _notes(water: Fraction, show: str) -> tuple[str, ...]:
    notes = [
        say(
            "skim.note.load", "For comparison: a maker lets {load} of insulation lie on {board} ceiling board where joists are {apart} apart.",
            load=measure.shown(HEAVY_LOAD_PSF, "psf", 1, show), board=measure.limit(BOARD_IN, "1/2 in", show), apart=measure.limit(JOISTS_IN, "24 in", show),
        ),
        say("skim.note.open", "How open the texture is differs from room to room. Fill one square foot once the result allows it, and see."),
    ]  # fmt: skip
    if water != 0:
        notes.append(
            say("skim.note.water", "Printed water figures run from 30 to 35 %. The higher one asks for more drying.")
        )
    return tuple(notes)


CALCULATOR = Calculator(
    name="skim",
    title="Compound to bury the texture",
    summary="Compound, pails, weight and water to skim a texture flat",
    verb="Work out the compound",
    fields=(
        OPTIONAL_ROOMS, AREA, TEXTURE_DEPTH, COATS, COAT_THICKNESS, OPEN, SHRINKAGE, WASTE, PAIL, DENSITY, WATER, SHOW_IN,
    ),
    work_out=skim,
    example=(("rooms", "Living: 20' x 14'"), ("texture_depth_in", "1/8"), ("coats", "2"), ("coat_thickness_in", "1/16"), ("compound_lb_per_gal", "8.9")),
    one_of=("rooms", "area_sqft"),
    sources=("usg-ceiling-load", "compound-lightweight"),
    always=("asbestos-first", "ceiling-load"),
)  # fmt: skip
