"""Paint: primer and paint for a ceiling, how thick the wet film is, and what a wet coat does to texture."""

from fractions import Fraction

from calc.common.inputs import AREA, COATS, OPTIONAL_ROOMS, add_area
from calc.core.answer import Answer, Calculator
from calc.core.fields import SHOW_IN, Field, Values
from calc.core.lines import Lines
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure, words
from calc.numbers.quantity import Quantity, fact, given, rounded_up
from calc.text.door import say

LABEL = "paint-label"
MAKERS_SPREAD, PLANNED_SPREAD = 450, (350, 400)  # what a maker prints, and what people plan on [sq ft/gal]
CAN = fact(1, "gal", LABEL)  # paint is counted in cans of one gallon
SURFACES = (
    ("smooth", "Smooth, sealed or painted"),
    ("new", "New board or fresh compound"),
    ("texture", "Texture, painted before"),
    ("bare", "Bare texture, never painted"),
    ("stained", "Stained or chalky"),
)

SPREAD = Field(
    name="spread_sqft_per_gal", label="Paint covers", kind="rate", unit="sqft/gal",
    help="The label says; it means smooth work. 350 is the safe end of common practice.",
    example="350", lowest="30", highest="1000", default="350", source=LABEL,
)  # fmt: skip
PRIMER_SPREAD = Field(
    name="primer_sqft_per_gal", label="Primer covers", kind="rate", unit="sqft/gal",
    help="250 to 400. Fresh compound drinks, so the low end is used.",
    example="250", lowest="30", highest="1000", default="250", source=LABEL, rare=True,
)  # fmt: skip
SURFACE = Field(
    name="surface", label="What is painted", kind="choice", unit="", help="It decides about the primer.",
    example="new", default="new", choices=SURFACES,
)  # fmt: skip
EXTRA = Field(
    name="texture_extra_pct", label="More for a texture", kind="percent", unit="%",
    help="A rough face takes more paint than its flat area. Used only where texture is painted.",
    example="50", lowest="0", highest="200", default="50", source="common-practice", rare=True,
)  # fmt: skip


def coats_of(*, face: Quantity, coats: Quantity | int, spread: Quantity) -> Quantity:
    """Return the paint [gal] of `coats` [-] over `face` [sq ft], where a gallon covers `spread` [sq ft/gal]. Source: the label."""
    return (face * coats / spread).cited(LABEL)


def cans(*, amount: Quantity) -> Quantity:
    """Return `amount` [gal] in whole cans of one gallon [gal], rounded up."""
    return rounded_up(amount / CAN) * CAN


def wet_film(*, spread: Quantity) -> Quantity:
    """Return how thick one coat lies while it is wet [mil], where a gallon covers `spread` [sq ft/gal]. Source: by definition."""
    return (1 / spread).cited("us-customary-definitions")


def paint(values: Values) -> Answer:
    """Return paint and primer, whole gallons to buy, and the wet film of one coat.

    Raises nothing. Sources: the gallon of 231 cubic inches; spread rates from labels, as quoted.
    """
    show, surface, spread = values.choice("show_in"), values.choice("surface"), values.quantity("spread_sqft_per_gal")
    rough, primed = surface in ("texture", "bare"), surface not in ("smooth", "texture")
    lines = Lines("paint", show)
    area = add_area(lines, values)
    if rough:
        rule, painted = (
            say("paint.rough", "A texture has more face than its flat area."),
            area * (1 + values.quantity("texture_extra_pct")),
        )
    else:
        rule, painted = say("paint.flat", "A smooth ceiling has the face of its area."), area.cited("geometry")
    face = lines.add(name="painted_sqft", label="Face to paint", unit="sqft", places=1, rule=rule, amount=painted)
    gallons = lines.add(
        name="gallons",
        label="Paint",
        unit="gal",
        places=2,
        rule="Face times coats, over what the label says it covers.",
        amount=coats_of(face=face, coats=values.quantity("coats"), spread=spread),
    )
    lines.add(
        name="paint_to_buy_gal",
        label="Paint to buy",
        unit="gal",
        places=0,
        rule="Whole gallons, rounded up.",
        amount=cans(amount=gallons),
    )
    if primed:
        rule = say("paint.primed", "Face over what the primer's label says it covers, one coat.")
        coat = coats_of(face=face, coats=1, spread=values.quantity("primer_sqft_per_gal"))
    else:
        rule, coat = say("paint.unprimed", "A sound, sealed face needs none."), given(0, "gal", LABEL)
    primer = lines.add(name="primer_gal", label="Primer", unit="gal", places=2, rule=rule, amount=coat)
    lines.add(
        name="primer_to_buy_gal",
        label="Primer to buy",
        unit="gal",
        places=0,
        rule="Whole gallons, rounded up.",
        amount=cans(amount=primer),
    )
    lines.add(
        name="wet_film_mil",
        label="Wet film of one coat",
        unit="mil",
        places=2,
        rule="One over what the label says it covers.",
        amount=wet_film(spread=spread),
    )
    label = say("paint.figure", "of paint to buy")
    if primed:
        label = say(
            "paint.figure.primed", "of paint and {primer} of primer to buy", primer=lines.shown("primer_to_buy_gal")
        )
    return Answer(
        calculator="paint",
        inputs=values.given,
        figure=lines.shown("paint_to_buy_gal"),
        figure_label=label,
        sentence=say(
            "paint.sentence", "{coats} take {amount}. Each goes on about {film} thick, wet.",
            coats=words.plural(values.count("coats"), "coat"), amount=lines.shown("gallons"), film=lines.shown("wet_film_mil"),
        ),
        lines=lines.tuple(),
        cautions=_cautions(surface),
        notes=_notes(surface, show),
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
    spreads = [measure.shown(Fraction(one), "sqft/gal", 1, show) for one in (MAKERS_SPREAD,) + PLANNED_SPREAD]
    notes = [
        say(
            "paint.note.label", "The label of the paint in hand governs. A maker's figure is {maker}; {low} to {high} is what people plan on.",
            maker=spreads[0], low=spreads[1], high=spreads[2],
        )
    ]  # fmt: skip
    if surface == "new":
        text = "Prime before you judge the finish: compound and paper drink paint unevenly, and it shows in the light."
        notes.append(say("paint.note.new", text))
    if surface == "stained":
        text = "Find and stop the water first. A stain-blocking primer holds back what is dry, and nothing that is wet."
        notes.append(say("paint.note.stained", text))
    if surface == "bare":
        notes.append(say("paint.note.bare", "Paint locks the texture in. Wet scraping will hardly work after it."))
    return tuple(notes)


CALCULATOR = Calculator(
    name="paint",
    title="Primer and paint",
    summary="Gallons of primer and paint, and the film in mils",
    verb="Work out the paint",
    fields=(OPTIONAL_ROOMS, AREA, SURFACE, COATS, SPREAD, PRIMER_SPREAD, EXTRA, SHOW_IN),
    work_out=paint,
    example=(("rooms", "Living: 20' x 14'"), ("surface", "new"), ("coats", "2")),
    one_of=("rooms", "area_sqft"),
    sources=("common-practice", "epa-asbestos-in-your-home", "cfr-745-83"),
)
