"""Panels: tiles and panels over a ceiling, with balanced borders, glued, fastened to furring, or in a grid."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import ROOMS, WASTE
from calc.core.answer import Answer, Calculator, Item, Line, line
from calc.core.drawing import Dimension, Drawing, Shape
from calc.core.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.cover.tiles import TileLayout, tiles_over
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure, words
from calc.numbers.exact import ceiling, total
from calc.numbers.measure import INCHES_PER_FOOT
from calc.numbers.words import short_decimal
from calc.rooms.outlines import different
from calc.rooms.rooms import Room
from calc.rooms.strips import furring_rows_in

MOST_GLUED_PSF = Fraction(25, 10)  # on adhesive alone [lb/sq ft], ASTM D1779 note 2
CONTACT_SQIN_PER_SQFT = 20  # least adhesive contact [sq in/sq ft], ASTM D1779 note 3
ADHESIVE_IN = Fraction(1, 8)  # least thickness of the spots [in], the same note
BOND_PSI = Fraction(1, 2)  # least strength of the bond [psi], ASTM D1779 1.1
SPOTS_PER_TILE = 4  # a spot at each corner of a 12 x 12 in tile, the same note and NAVEDTRA 14044
SPOT_TILE_SQIN = 144  # the tile that the four spots are for [sq in]
WALL_ANGLE_FT = 12  # wall angle comes in such lengths [ft], NAVEDTRA 14044
GRID_DROP_IN = 2  # least depth below the old ceiling [in], NAVEDTRA 14044
FASTENERS_PER_TILE = 4  # staples or screws to a tile on furring [-], common practice
SCREW_BITE_IN = Fraction(5, 8)  # least depth of a screw in the joist [in], IRC R702.3.5.1
GOOD_BITE_IN = Fraction(1)  # what holds furring under a weight for years [in], common practice
MOST_LINES = 40  # grid lines drawn each way; a finer grid is left out of the drawing
MOST_ITEMS = 12
D1779 = ("astm-d1779",)

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


@dataclass(frozen=True)
class PanelsInputs:
    """`rooms`: at least one; `tile_length_in` (east to west) and `tile_width_in` [in, 4 to 144]; `tiles_per_carton` [-];
    `tile_weight_psf` [lb/sq ft]; `fixing` and `behind_tiles` as in their fields; `furring_spacing_in` [in]; `waste_pct` [%]."""

    rooms: tuple[Room, ...]
    tile_length_in: Fraction
    tile_width_in: Fraction
    tiles_per_carton: int
    tile_weight_psf: Fraction
    fixing: str
    behind_tiles: str
    furring_spacing_in: Fraction
    waste_pct: Fraction
    show_in: str


def panels(inputs: PanelsInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return tiles whole and cut with their borders, cartons, and adhesive, furring or grid.

    Raises InputFault where glue may not be used: too heavy a tile, or a face that is untested, loose, or textured.
    Sources: ASTM D1779 for adhesive, a how-to page for borders, NAVEDTRA 14044 for grids; geometry.
    """
    _refuse(inputs)
    show = inputs.show_in
    layouts = [tiles_over(room, inputs.tile_length_in, inputs.tile_width_in) for room in inputs.rooms]
    area_sqft = total([room.ceiling_area_sqft() for room in inputs.rooms])
    full = sum([one.full_tiles for one in layouts])
    cut = sum([one.cut_pieces for one in layouts])
    cut_tiles = sum([one.cut_tiles for one in layouts])
    tiles = full + cut_tiles
    with_waste = ceiling(Fraction(tiles) * (1 + inputs.waste_pct / 100))
    cartons = ceiling(Fraction(with_waste, inputs.tiles_per_carton))
    first = layouts[0]
    name = inputs.rooms[0].name
    lines = [
        line("full_tiles", "Whole tiles", Fraction(full), "", 0, "Tiles that no wall or hole cuts.",
             " + ".join([words.whole(one.full_tiles) for one in layouts]), ("geometry",), show),
        line("cut_pieces", "Cut pieces", Fraction(cut), "", 0, "Tiles that a wall cuts, each counted by its box.",
             " + ".join([words.whole(one.cut_pieces) for one in layouts]), ("geometry",), show),
        line("cut_tiles", "Tiles that are cut", Fraction(cut_tiles), "", 0,
             "Pieces of at most half a tile are cut two from one; every other piece takes its own.",
             words.whole(cut) + " pieces, " + words.whole(cut - cut_tiles) + " of them from what is left", ("geometry",), show),
        line("border_in", "Border at the west and east walls, first room", first.border_x_in, "in", 3,
             "Half of a tile and what is left over; none where whole tiles fit.",
             _border_working(inputs.rooms[0].size_ft()[0], inputs.tile_length_in, first.border_x_in, show), ("tile-how-to",), show),
        line("border_other_in", "Border at the south and north walls, first room", first.border_y_in, "in", 3,
             "The same, the other way.",
             _border_working(inputs.rooms[0].size_ft()[1], inputs.tile_width_in, first.border_y_in, show), ("tile-how-to",), show),
        line("cartons", "Cartons", Fraction(cartons), "", 0, "All tiles and waste over a carton, rounded up.",
             words.whole(tiles) + " × " + short_decimal(1 + inputs.waste_pct / 100, 3) + ", so " + words.whole(with_waste) + "; ÷ "
             + words.whole(inputs.tiles_per_carton), ("tile-how-to",), show),
        line("tile_load_psf", "Load of the tiles", inputs.tile_weight_psf, "psf", 2, "As the carton says.",
             short_decimal(inputs.tile_weight_psf, 2) + " lb/sq ft", ("your-figure", "usg-ceiling-load"), show),
    ]  # fmt: skip
    if inputs.fixing == "glue":
        lines += _glue(area_sqft, tiles, inputs, show)
    elif inputs.fixing == "grid":
        lines += _grid(inputs, show)
    else:
        lines += _furring(inputs, tiles, show)
    return Answer(
        calculator="panels",
        inputs=given,
        figure=words.plural(cartons, "carton"),
        figure_label="to buy, for " + words.plural(tiles, "tile") + " and waste",
        sentence=words.plural(full, "tile stays", "tiles stay") + " whole and " + words.plural(cut, "piece is", "pieces are") + " cut. In " + name
        + " the borders are " + lines[3].shown + " and " + lines[4].shown + ".",
        lines=tuple(lines),
        cautions=_cautions(inputs),
        notes=_notes(inputs, layouts),
        drawing=_plan(inputs.rooms[0], first, inputs),
        items=_slivers(inputs, layouts),
        items_title="Borders, room by room",
    )  # fmt: skip


def _border_working(size_ft: Fraction, tile_in: Fraction, border_in: Fraction, show: str) -> str:
    size_in = size_ft * INCHES_PER_FOOT
    text = short_decimal(size_in, 3) + " in by tiles of " + short_decimal(tile_in, 3) + " in"
    if border_in == 0:
        return text + ": whole tiles"
    if size_in < tile_in:
        return text + ": narrower than a tile, cut to the room"
    over = size_in - (size_in // tile_in) * tile_in
    return "(" + short_decimal(tile_in, 3) + " + " + short_decimal(over, 3) + ") ÷ 2"


def _glue(area_sqft: Fraction, tiles: int, inputs: PanelsInputs, show: str) -> list[Line]:
    cuin_per_sqft = CONTACT_SQIN_PER_SQFT * ADHESIVE_IN
    sqft_per_gal = measure.CUBIC_INCHES_PER_GALLON / cuin_per_sqft
    adhesive_gal = area_sqft / sqft_per_gal
    spots = ceiling(inputs.tile_length_in * inputs.tile_width_in * SPOTS_PER_TILE / SPOT_TILE_SQIN)
    factor = BOND_PSI * CONTACT_SQIN_PER_SQFT / inputs.tile_weight_psf
    return [
        line("adhesive_sqft_per_gal", "A gallon of adhesive does at most", sqft_per_gal, "sqft/gal", 1,
             "20 sq in of contact a square foot, 1/8 in thick, is 2.5 cu in; a gallon is 231.", "231 ÷ 2.5", D1779, show),
        line("adhesive_gal", "Adhesive, at least", adhesive_gal, "gal", 2, "Area over what a gallon does.",
             short_decimal(area_sqft, 2) + " ÷ 92.4", D1779, show),
        line("spots", "Spots of adhesive, each tile", Fraction(spots), "", 0, "Four to 12 x 12 in, one at each corner.",
             "4 × " + short_decimal(inputs.tile_length_in, 2) + " × " + short_decimal(inputs.tile_width_in, 2) + " ÷ 144",
             ("astm-d1779", "navedtra-14044"), show),
        line("bond_factor", "Bond over load", factor, "", 1, "1/2 psi on 20 sq in holds 10 lb/sq ft; over the tile's weight.",
             "0.5 × 20 ÷ " + short_decimal(inputs.tile_weight_psf, 3), D1779, show),
    ]  # fmt: skip


def _grid(inputs: PanelsInputs, show: str) -> list[Line]:
    planned = [_planned_ft(room, inputs) for room in inputs.rooms]
    # Angle is bought by the planned size: the safer of two readings of the manual.
    pieces = [ceiling((long_ft + wide_ft) * 2 / WALL_ANGLE_FT) for long_ft, wide_ft in planned]
    true_pieces = [ceiling(room.perimeter_ft() / WALL_ANGLE_FT) for room in inputs.rooms]
    bought = max(sum(pieces), sum(true_pieces))
    told = "; ".join(
        ["(" + short_decimal(long_ft, 3) + " + " + short_decimal(wide_ft, 3) + ") × 2 ÷ 12, so " + words.whole(pieces[at])
         for at, (long_ft, wide_ft) in enumerate(planned)]
    )  # fmt: skip
    told += "; by the true edge " + "; ".join(
        [short_decimal(room.perimeter_ft(), 3) + " ÷ 12, so " + words.whole(true_pieces[at]) for at, room in enumerate(inputs.rooms)]
    )  # fmt: skip
    if len(planned) > 1:
        told += "; in all " + words.whole(sum(pieces)) + " or " + words.whole(sum(true_pieces))
    long_ft, wide_ft = planned[0]
    return [
        line("planned_length_ft", "First room, planned length", long_ft, "ft", 2, "Rounded up to whole tiles, for material.",
             measure.shown(inputs.rooms[0].size_ft()[0], "ft", 2, show), ("navedtra-14044",), show),
        line("planned_width_ft", "First room, planned width", wide_ft, "ft", 2, "The same, the other way.",
             measure.shown(inputs.rooms[0].size_ft()[1], "ft", 2, show), ("navedtra-14044",), show),
        line("wall_angles", "Wall angle, pieces of 12 ft", Fraction(bought), "", 0,
             "Round the planned sizes over 12 ft, a fraction of a piece is a piece; or by the true edge, if that takes more.",
             told + "; the greater is " + words.whole(bought), ("navedtra-14044",), show),
        line("grid_drop_in", "Hung below the old ceiling, at least", Fraction(GRID_DROP_IN), "in", 0,
             "So that a tile can be tipped in.", "2 in", ("navedtra-14044",), show),
    ]  # fmt: skip


def _planned_ft(room: Room, inputs: PanelsInputs) -> tuple[Fraction, Fraction]:
    east, north = room.size_ft()
    long_tile, wide_tile = inputs.tile_length_in / INCHES_PER_FOOT, inputs.tile_width_in / INCHES_PER_FOOT
    return ceiling(east / long_tile) * long_tile, ceiling(north / wide_tile) * wide_tile


def _furring(inputs: PanelsInputs, tiles: int, show: str) -> list[Line]:
    told = []
    length_ft = Fraction(0)
    for room in inputs.rooms:
        rows = [row_in / INCHES_PER_FOOT for row_in in furring_rows_in(room, inputs.furring_spacing_in)]
        length_ft += total(rows)
        for row_ft in different(rows):
            told.append(words.whole(len([one for one in rows if one == row_ft])) + " × " + short_decimal(row_ft, 2))
    return [
        line("furring_ft", "Furring", length_ft, "ft", 0,
             "Rows east and west, evenly spread and no farther apart than that, each as long as the floor is there; one along each wall.",
             " + ".join(told), ("geometry", "common-practice"), show),
        line("fasteners", "Staples or screws", Fraction(tiles * FASTENERS_PER_TILE), "", 0, "Four to a tile.",
             words.whole(tiles) + " × 4", ("common-practice",), show),
    ]  # fmt: skip


def _refuse(inputs: PanelsInputs) -> None:
    if inputs.fixing != "glue":
        return
    faults = []
    if inputs.tile_weight_psf > MOST_GLUED_PSF:
        message = (
            "A tile of "
            + measure.shown(inputs.tile_weight_psf, "psf", 3, inputs.show_in)
            + " is too heavy for glue alone, which carries "
            + measure.shown(MOST_GLUED_PSF, "psf", 1, inputs.show_in)
            + ". Fasten it to furring."
        )
        faults.append(Fault("tile_weight_psf", short_decimal(inputs.tile_weight_psf, 3), message, "fixing=furring"))
    why = {
        "untested": "Glue disturbs a texture that was not tested. Stop: settle asbestos first.",
        "firm": "Glue holds only as well as the texture under it, and texture is no sound face. Take it off, or use furring.",
        "loose": "Nothing is glued to a loose or dusty face. Take the texture off, or use furring.",
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
            notes.append("On paint: glue up a test tile and leave it 48 hours. Doubtful coatings come off first.")
        notes.append("Glued tile is generally not recommended in historic buildings.")
    if inputs.fixing == "furring":
        notes.append(
            "Screws through the furring must reach the joists by "
            + measure.shown(SCREW_BITE_IN, "in", 4, inputs.show_in)
            + " at least, better by "
            + measure.shown(GOOD_BITE_IN, "in", 4, inputs.show_in)
            + " and more. They go through the texture too, and disturb it."
        )
    if inputs.fixing == "grid":
        notes.append(
            "By its true edge a room can need one piece of angle less than by its planned size. The larger count is used."
        )
    notes.append("Check the tile's rating for fire and smoke against what the room asks for.")
    if [one for one in layouts if one.narrow]:
        notes.append(
            "A room narrower than a tile has one cut row. That cannot be helped, other than by a smaller tile."
        )
    return tuple(notes)  # fmt: skip


def _slivers(inputs: PanelsInputs, layouts: list[TileLayout]) -> tuple[Item, ...]:
    found = []
    for at, one in enumerate(layouts[:MOST_ITEMS]):
        told = (
            "West and east " + measure.shown(one.border_x_in, "in", 3, inputs.show_in)
            if one.border_x_in > 0
            else "West and east whole tiles"
        )
        told += (
            ", south and north " + measure.shown(one.border_y_in, "in", 3, inputs.show_in)
            if one.border_y_in > 0
            else ", south and north whole tiles"
        )
        state = "balanced"
        if one.narrow:
            state = "narrower than a tile"
        elif one.slivers:
            state = words.plural(one.slivers, "sliver")
            told += ". An inside corner leaves pieces under half a tile; move the start line, or trim them"
        found.append(Item(inputs.rooms[at].name, state, told + ".", ("tile-how-to", "geometry")))
    return tuple(found)  # fmt: skip


def _plan(room: Room, one: TileLayout, inputs: PanelsInputs) -> Drawing:
    """The first room with its tiles, seen from below as if from above: north is up."""
    west, south = min([x for x, _ in room.outline]), min([y for _, y in room.outline])
    east, north = room.size_ft()
    wide, deep = east * INCHES_PER_FOOT, north * INCHES_PER_FOOT
    shapes = []
    for low_x, low_y, high_x, high_y in room.rectangles_in():
        if len(one.lines_x_in) <= MOST_LINES:
            for x in one.lines_x_in:
                if low_x < x < high_x:
                    shapes.append(Shape(((x - west, low_y - south), (x - west, high_y - south)), "curve", "none", True))
        if len(one.lines_y_in) <= MOST_LINES:
            for y in one.lines_y_in:
                if low_y < y < high_y:
                    shapes.append(Shape(((low_x - west, y - south), (high_x - west, y - south)), "curve", "none", True))
    shapes.append(Shape(tuple([(x - west, y - south) for x, y in room.outline]), "cut", "room", False))
    zero = Fraction(0)
    return Drawing(
        title="Tiles on the ceiling",
        description=room.name + ", " + measure.shown(east, "ft", 2, inputs.show_in) + " by " + measure.shown(north, "ft", 2, inputs.show_in) + ": " + words.plural(one.full_tiles, "whole tile") + " and " + words.plural(one.cut_pieces, "cut piece") + ". Border "
        + measure.shown(one.border_x_in, "in", 3, inputs.show_in) + " west and east, " + measure.shown(one.border_y_in, "in", 3, inputs.show_in)
        + " south and north.",
        width=wide,
        height=deep,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=(
            Dimension((zero, zero), (wide, zero), "below", measure.shown(east, "ft", 2, inputs.show_in)),
            Dimension((zero, zero), (zero, deep), "left", measure.shown(north, "ft", 2, inputs.show_in)),
        ),
        labels=(),
        scale_note=room.name + " in plan, to scale. North is up.",
    )  # fmt: skip


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
)  # fmt: skip
