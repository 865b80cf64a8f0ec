"""Panels: tiles and panels over a ceiling, with balanced borders, glued, fastened to furring, or in a grid."""

from fractions import Fraction

from calc.common.inputs import ROOMS, WASTE
from calc.core.answer import Answer, Calculator, Item
from calc.core.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.core.lines import Lines
from calc.cover.fixings import PanelsInputs, add_furring, add_glue, add_grid
from calc.cover.tile_plan import plan_of
from calc.cover.tiles import TileLayout, tiles_over
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure, words
from calc.numbers.measure import INCHES_PER_FOOT
from calc.numbers.quantity import Quantity, added, given, rounded_up
from calc.numbers.words import short_decimal
from calc.text.door import say

MOST_GLUED_PSF = Fraction(25, 10)  # on adhesive alone [lb/sq ft], ASTM D1779 note 2
SCREW_BITE_IN = Fraction(5, 8)  # least depth of a screw in the joist [in], IRC R702.3.5.1
GOOD_BITE_IN = Fraction(1)  # what holds furring under a weight for years [in], common practice
MOST_DRAWN = 8  # rooms with a plan of their own
MOST_ITEMS = 12

TILE_LENGTH = Field(
    name="tile_length_in", label="Tile, east to west", kind="length", unit="in",
    help="Usual: 12, 24 or 48 in.",
    example="12", lowest="4", highest="144", default="12",
)  # fmt: skip
TILE_WIDTH = Field(
    name="tile_width_in", label="Tile, north to south", kind="length", unit="in",
    help="Usual: 12 or 24 in.",
    example="12", lowest="4", highest="144", default="12",
)  # fmt: skip
PER_CARTON = Field(
    name="tiles_per_carton", label="Tiles in a carton", kind="count", unit="",
    help="40 of 12 x 12 in, or 20 of 12 x 24 in.",
    example="40", lowest="1", highest="500", default="40", source="tile-how-to",
)  # fmt: skip

TILE_WEIGHT = Field(
    name="tile_weight_psf", label="Weight of the tile", kind="rate", unit="psf",
    help="The carton says. Adhesive alone carries at most 2.5 lb/sq ft.",
    example="0.8", lowest="0.05", highest="10", default="0.8", source="common-practice",
)  # fmt: skip
FIXING = Field(
    name="fixing", label="Held by", kind="choice", unit="",
    help="Glue needs bare, sound board. Furring is screwed to the joists, through the texture.",
    example="furring", default="furring",
    choices=(("furring", "Furring, screwed to the joists"), ("glue", "Glue alone"), ("grid", "A hung grid")),
)  # fmt: skip
BEHIND = Field(
    name="behind_tiles", label="What is behind it", kind="choice", unit="",
    help="What the tiles would be glued to, or the screws go through.",
    example="bare", default="untested",
    choices=(
        ("untested", "Texture, not tested for asbestos"),
        ("firm", "Texture, no asbestos found, firm"),
        ("loose", "Texture, loose or dusty"),
        ("paint", "Board, painted, no texture"),
        ("bare", "Bare board, clean, sound and dry"),
    ),
)  # fmt: skip
FURRING = Field(
    name="furring_spacing_in", label="Furring apart", kind="length", unit="in",
    help="Middle to middle: the width of the tile.",
    example="12", lowest="4", highest="48", default="12", source="common-practice", rare=True,
)  # fmt: skip


def panels(inputs: PanelsInputs, typed: tuple[tuple[str, str], ...]) -> Answer:
    """Return tiles whole and cut with their borders, cartons, and adhesive, furring or grid.

    Raises InputFault where glue may not be used: too heavy a tile, or a face that is untested, loose, or textured.
    Sources: ASTM D1779 for adhesive, a how-to page for borders, NAVEDTRA 14044 for grids; geometry.
    """
    _refuse(inputs)
    show = inputs.show_in
    layouts = [tiles_over(room, inputs.tile_length_in, inputs.tile_width_in) for room in inputs.rooms]
    names = [room.name for room in inputs.rooms]
    first, name, size_ft = layouts[0], names[0], inputs.rooms[0].size_ft()
    lines = Lines("panels", show)
    full = lines.add(
        name="full_tiles",
        label="Whole tiles",
        unit="",
        places=0,
        rule="Tiles that no wall or hole cuts.",
        amount=added([given(one.full_tiles, "", "geometry", names[at]) for at, one in enumerate(layouts)]),
    )
    cut = lines.add(
        name="cut_pieces",
        label="Cut pieces",
        unit="",
        places=0,
        rule="Tiles that a wall cuts, each counted by its box.",
        amount=added([given(one.cut_pieces, "", "geometry", names[at]) for at, one in enumerate(layouts)]),
    )
    saved = sum([one.cut_pieces - one.cut_tiles for one in layouts])
    cut_tiles = lines.add(
        name="cut_tiles",
        label="Tiles that are cut",
        unit="",
        places=0,
        rule="Pieces of at most half a tile are cut two from one; every other piece takes its own: pieces, less those from what is left.",
        amount=cut - given(saved, "", "geometry"),
    )
    lines.add(
        name="border_in",
        label="Border at the west and east walls, first room",
        unit="in",
        places=3,
        rule="Half of a tile and what is left over; none where whole tiles fit.",
        amount=border(size_ft=size_ft[0], tile_in=inputs.tile_length_in, found_in=first.border_x_in),
    )
    lines.add(
        name="border_other_in",
        label="Border at the south and north walls, first room",
        unit="in",
        places=3,
        rule="The same, the other way.",
        amount=border(size_ft=size_ft[1], tile_in=inputs.tile_width_in, found_in=first.border_y_in),
    )
    tiles = (full + cut_tiles).named(say("panels.tiles", "tiles"))
    with_waste = rounded_up(tiles * (1 + given(inputs.waste_pct, "%")), "tile")
    cartons = lines.add(
        name="cartons",
        label="Cartons",
        unit="",
        places=0,
        rule="All tiles and waste over a carton, rounded up.",
        amount=rounded_up(with_waste / inputs.tiles_per_carton, "carton").cited("tile-how-to"),
    )
    weight = lines.add(
        name="tile_load_psf", label="Load of the tiles", unit="psf", places=2, rule="As the carton says.",
        amount=given(inputs.tile_weight_psf, "psf").cited("usg-ceiling-load"),
    )  # fmt: skip
    if inputs.fixing == "glue":
        add_glue(lines, inputs, weight)
    elif inputs.fixing == "grid":
        add_grid(lines, inputs)
    else:
        add_furring(lines, inputs, tiles)
    plans = tuple([plan_of(inputs.rooms[at], one, inputs) for at, one in enumerate(layouts[:MOST_DRAWN])])
    return Answer(
        calculator="panels",
        inputs=typed,
        figure=words.plural(int(cartons.value), "carton"),
        figure_label=say("panels.figure", "to buy, for {tiles} and waste", tiles=words.plural(int(tiles.value), "tile")),
        sentence=say(
            "panels.sentence", "{whole} whole and {cut} cut. In {room} the borders are {one} and {other}.",
            whole=words.plural(int(full.value), "tile stays", "tiles stay"), cut=words.plural(int(cut.value), "piece is", "pieces are"),
            room=name, one=lines.shown("border_in"), other=lines.shown("border_other_in"),
        ),
        lines=lines.tuple(),
        cautions=_cautions(inputs),
        notes=_notes(inputs, layouts),
        drawing=plans[0],
        more_drawings=plans[1:],
        items=_slivers(inputs, layouts),
        items_title=say("panels.items", "Borders, room by room"),
    )  # fmt: skip


def border(*, size_ft: Fraction, tile_in: Fraction, found_in: Fraction) -> Quantity:
    """Return the border [in] at both ends of a row `size_ft` [ft] long of tiles of `tile_in` [in]: half of a tile and what is left over.
    `found_in` [in] stands where there is nothing to share: whole tiles, or a room narrower than a tile. Source: a how-to page."""
    whole = size_ft * INCHES_PER_FOOT // tile_in
    if found_in == 0 or whole == 0:
        return given(found_in, "in", "tile-how-to")
    tile = given(tile_in, "in")
    return ((tile + (given(size_ft, "ft") - whole * tile)) / 2).cited("tile-how-to")


def _refuse(inputs: PanelsInputs) -> None:
    if inputs.fixing != "glue":
        return
    faults = []
    if inputs.tile_weight_psf > MOST_GLUED_PSF:
        message = say(
            "panels.fault.heavy",
            "A tile of {weight} is too heavy for glue alone, which carries {most}. Fasten it to furring.",
            weight=measure.shown(inputs.tile_weight_psf, "psf", 3, inputs.show_in),
            most=measure.shown(MOST_GLUED_PSF, "psf", 1, inputs.show_in),
        )
        faults.append(Fault("tile_weight_psf", short_decimal(inputs.tile_weight_psf, 3), message, "fixing=furring"))
    why = {
        "untested": say(
            "panels.fault.untested", "Glue disturbs a texture that was not tested. Stop: settle asbestos first."
        ),
        "firm": say(
            "panels.fault.firm",
            "Glue holds only as well as the texture under it, and texture is no sound face. Take it off, or use furring.",
        ),
        "loose": say(
            "panels.fault.loose",
            "Nothing is glued to a loose or dusty face. Take the texture off, or use furring.",
        ),
    }
    if inputs.behind_tiles in why:
        faults.append(Fault("behind_tiles", inputs.behind_tiles, why[inputs.behind_tiles], "behind_tiles=bare"))
    if faults:
        raise InputFault(tuple(faults))  # fmt: skip


def _cautions(inputs: PanelsInputs) -> tuple[Caution, ...]:
    found = []
    if inputs.behind_tiles in ("untested", "firm", "loose"):
        found.append(caution("asbestos-first"))
    found += [caution("ceiling-load"), caution("live-wires"), caution("fall-ladder")]
    if inputs.fixing == "glue":
        found.append(caution("glue-falls"))
    return tuple(found)


def _notes(inputs: PanelsInputs, layouts: list[TileLayout]) -> tuple[str, ...]:
    notes = []
    if inputs.fixing == "glue":
        if inputs.behind_tiles == "paint":
            notes.append(
                say(
                    "panels.note.paint",
                    "On paint: glue up a test tile and leave it 48 hours. Doubtful coatings come off first.",
                )
            )
        notes.append(say("panels.note.historic", "Glued tile is generally not recommended in historic buildings."))
    if inputs.fixing == "furring":
        notes.append(
            say(
                "panels.note.screws",
                "Screws through the furring must reach the joists by {least} at least, better by {good} and more. They go through the texture too, and disturb it.",
                least=measure.shown(SCREW_BITE_IN, "in", 4, inputs.show_in),
                good=measure.shown(GOOD_BITE_IN, "in", 4, inputs.show_in),
            )
        )
    if inputs.fixing == "grid":
        notes.append(
            say(
                "panels.note.angle",
                "By its true edge a room can need one piece of angle less than by its planned size. The larger count is used.",
            )
        )
    notes.append(
        say("panels.note.rating", "Check the tile's rating for fire and smoke against what the room asks for.")
    )
    if [one for one in layouts if one.narrow]:
        notes.append(
            say(
                "panels.note.narrow",
                "A room narrower than a tile has one cut row. That cannot be helped, other than by a smaller tile.",
            )
        )
    return tuple(notes)  # fmt: skip


def _slivers(inputs: PanelsInputs, layouts: list[TileLayout]) -> tuple[Item, ...]:
    found = []
    for at, one in enumerate(layouts[:MOST_ITEMS]):
        whole = say("panels.item.whole", "whole tiles")
        text = say(
            "panels.item",
            "West and east {x}, south and north {y}.",
            x=measure.shown(one.border_x_in, "in", 3, inputs.show_in) if one.border_x_in > 0 else whole,
            y=measure.shown(one.border_y_in, "in", 3, inputs.show_in) if one.border_y_in > 0 else whole,
        )
        state = say("panels.item.balanced", "balanced")
        if one.narrow:
            state = say("panels.item.narrow", "narrower than a tile")
        elif one.slivers:
            state = words.plural(one.slivers, "sliver")
            text += " " + say(
                "panels.item.slivers",
                "An inside corner leaves pieces under half a tile; move the start line, or trim them.",
            )
        found.append(Item(inputs.rooms[at].name, state, text, ("tile-how-to", "geometry")))
    return tuple(found)  # fmt: skip


def _work_out(values: Values) -> Answer:
    inputs = PanelsInputs(
        values.rooms(),
        values.number("tile_length_in"),
        values.number("tile_width_in"),
        values.count("tiles_per_carton"),
        values.number("tile_weight_psf"),
        values.choice("fixing"),
        values.choice("behind_tiles"),
        values.number("furring_spacing_in"),
        values.number("waste_pct"),
        values.choice("show_in"),
    )
    return panels(inputs, values.given)


CALCULATOR = Calculator(
    name="panels",
    title="Tiles and panels laid out",
    summary="Tiles, borders, cartons, and glue, furring or grid",
    verb="Lay the tiles out",
    fields=(ROOMS, FIXING, BEHIND, TILE_LENGTH, TILE_WIDTH, PER_CARTON, TILE_WEIGHT, FURRING, WASTE, SHOW_IN),
    work_out=_work_out,
    example=(("rooms", "Living: 20' 6\" x 14'"), ("fixing", "furring"), ("behind_tiles", "firm"), ("tile_length_in", "12"), ("tile_width_in", "12")),
    sources=("astm-d1779", "navedtra-14044", "gsa-0951201r", "epa-asbestos-in-your-home"),
    always=("ceiling-load", "live-wires", "fall-ladder"),
)  # fmt: skip
