"""What holds tiles and panels: glue, a hung grid or furring, each with its clauses and its lines."""

from dataclasses import dataclass
from fractions import Fraction

from calc.core.lines import Lines
from calc.numbers import measure
from calc.numbers.measure import INCHES_PER_FOOT
from calc.numbers.quantity import Quantity, added, fact, given, greatest, rounded_up
from calc.rooms.outlines import different
from calc.rooms.rooms import Room
from calc.rooms.strips import furring_rows_in
from calc.text.door import say

D1779 = ("astm-d1779",)
MANUAL = ("navedtra-14044",)
CONTACT = fact(20, "sqin/sqft", "astm-d1779")  # least adhesive contact, ASTM D1779 note 3
ADHESIVE = fact(Fraction(1, 8), "in", "astm-d1779")  # least thickness of the spots, the same note
BOND = fact(Fraction(1, 2), "lb/sqin", "astm-d1779")  # least strength of the bond, ASTM D1779 1.1
SPOTS = fact(4, "", "astm-d1779")  # a spot at each corner of a 12 x 12 in tile, the same note and NAVEDTRA 14044
SPOT_TILE = fact(144, "sqin", "astm-d1779")  # the tile that the four spots are for
WALL_ANGLE = fact(12, "ft", "navedtra-14044")  # wall angle comes in such lengths
GRID_DROP = fact(2, "in", "navedtra-14044")  # least depth below the old ceiling
FASTENERS = fact(4, "", "common-practice")  # staples or screws to a tile on furring


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


def add_glue(lines: Lines, inputs: PanelsInputs, weight: Quantity) -> None:
    """Add the lines of tiles held by glue alone, of `weight` [lb/sq ft]. Source: ASTM D1779."""
    spread = lines.add(
        name="adhesive_sqft_per_gal",
        label="Adhesive does at most",
        unit="sqft/gal",
        places=1,
        rule="One over the contact that each part of the face needs, as thick as the spots are.",
        amount=1 / (CONTACT * ADHESIVE),
    )
    area = added([given(room.ceiling_area_sqft(), "sqft", "geometry", room.name) for room in inputs.rooms])
    lines.add(
        name="adhesive_gal",
        label="Adhesive, at least",
        unit="gal",
        places=2,
        rule="Area over what the adhesive does.",
        amount=(area / spread).cited(*D1779),
    )
    lines.add(
        name="spots",
        label="Spots of adhesive, each tile",
        unit="",
        places=0,
        rule="Four to a tile of {tile}, one at each corner.",
        amount=rounded_up(
            SPOTS * given(inputs.tile_length_in, "in") * given(inputs.tile_width_in, "in") / SPOT_TILE
        ).cited("navedtra-14044"),
        tile=measure.limit(Fraction(INCHES_PER_FOOT), "12 in", inputs.show_in),
    )
    lines.add(
        name="bond_factor", label="Bond over load", unit="", places=1, rule="What the least bond holds on the least contact, over the tile's weight.",
        amount=BOND * CONTACT / weight,
    )  # fmt: skip


def planned(*, size_ft: Fraction, tile_in: Fraction) -> Quantity:
    """Return a side of a room [ft] rounded up to whole tiles of `tile_in` [in], for material. Source: NAVEDTRA 14044."""
    tile = given(tile_in, "in")
    return (rounded_up(given(size_ft, "ft") / tile, "tile") * tile).cited(*MANUAL)


def add_grid(lines: Lines, inputs: PanelsInputs) -> None:
    """Add the lines of a hung grid. Source: NAVEDTRA 14044."""
    sizes = [room.size_ft() for room in inputs.rooms]
    sides = [
        (
            planned(size_ft=size[0], tile_in=inputs.tile_length_in),
            planned(size_ft=size[1], tile_in=inputs.tile_width_in),
        )
        for size in sizes
    ]
    long = lines.add(
        name="planned_length_ft",
        label="First room, planned length",
        unit="ft",
        places=2,
        rule="Rounded up to whole tiles, for material.",
        amount=sides[0][0],
    )
    wide = lines.add(
        name="planned_width_ft",
        label="First room, planned width",
        unit="ft",
        places=2,
        rule="The same, the other way.",
        amount=sides[0][1],
    )
    sides[0] = (long, wide)
    # Angle is bought by the planned size: the safer of two readings of the manual.
    pieces = [rounded_up((one + other) * 2 / WALL_ANGLE) for one, other in sides]
    edges = [rounded_up(given(room.perimeter_ft(), "ft", "geometry", room.name) / WALL_ANGLE) for room in inputs.rooms]
    by_plan = added(pieces).named(say("panels.by_plan", "by the planned sizes"))
    by_edge = added(edges).named(say("panels.by_edge", "by the true edge"))
    lines.add(
        name="wall_angles",
        label="Wall angle, pieces of {length}",
        unit="",
        places=0,
        amount=greatest(by_plan, by_edge),
        rule="Round the planned sizes over {length}, a fraction of a piece is a piece; or by the true edge, if that takes more.",
        length=measure.limit(WALL_ANGLE.to("in"), "12 ft", inputs.show_in),
    )
    lines.add(
        name="grid_drop_in", label="Hung below the old ceiling, at least", unit="in", places=0, rule="So that a tile can be tipped in.", amount=GRID_DROP,
    )  # fmt: skip


def add_furring(lines: Lines, inputs: PanelsInputs, tiles: Quantity) -> None:
    """Add the lines of furring for so many `tiles` [-]. Sources: geometry; common practice."""
    parts = []
    for room in inputs.rooms:
        rows = [row_in / INCHES_PER_FOOT for row_in in furring_rows_in(room, inputs.furring_spacing_in)]
        for row_ft in different(rows):
            parts.append(len([one for one in rows if one == row_ft]) * given(row_ft, "ft", "geometry"))
    lines.add(
        name="furring_ft",
        label="Furring",
        unit="ft",
        places=0,
        amount=added(parts).cited("common-practice"),
        rule="Rows east and west, evenly spread and no farther apart than that, each as long as the floor is there; one along each wall.",
    )
    lines.add(
        name="fasteners", label="Staples or screws", unit="", places=0, rule="Four to a tile.", amount=tiles * FASTENERS,
    )  # fmt: skip
