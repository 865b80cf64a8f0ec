"""The tiles of one room in plan: the grid, the cut borders measured both ways, the center lines and every wall."""

from fractions import Fraction

from calc.core.drawing import Plan, Row
from calc.core.walls import wall_lines, wall_rows
from calc.cover.fixings import PanelsInputs
from calc.cover.tiles import TileLayout
from calc.numbers import measure, words
from calc.numbers.measure import INCHES_PER_FOOT
from calc.rooms.outlines import common_scale, scaled
from calc.rooms.rooms import Room
from calc.text.door import say

MOST_LINES = 40  # grid lines drawn each way; of a finer grid the border lines alone
SIDES = ("below", "above", "left", "right")


def plan_of(room: Room, one: TileLayout, inputs: PanelsInputs) -> Plan:
    """Return the plan of one room with its tiles, as seen on the floor: north is up."""
    west, south = min([x for x, _ in room.outline]), min([y for _, y in room.outline])
    east_ft, north_ft = room.size_ft()
    size = (east_ft * INCHES_PER_FOOT, north_ft * INCHES_PER_FOOT)
    borders, tiles = (one.border_x_in, one.border_y_in), (inputs.tile_length_in, inputs.tile_width_in)
    rectangles = room.rectangles_in()
    grid = [[at - west for at in one.lines_x_in], [at - south for at in one.lines_y_in]]
    values = [value for box in rectangles for value in box] + [west, south] + grid[0] + grid[1]
    scale = 2 * common_scale(values + [size[0], size[1], borders[0], borders[1]])  # halves of it are whole
    boxes = tuple(
        [
            (scaled(x1 - west, scale), scaled(y1 - south, scale), scaled(x2 - west, scale), scaled(y2 - south, scale))
            for x1, y1, x2, y2 in rectangles
        ]
    )
    whole = (scaled(size[0], scale), scaled(size[1], scale))
    lines, centers = [], []
    for axis in (0, 1):
        levels = [scaled(at, scale) for at in grid[axis]]
        if len(levels) > MOST_LINES:
            levels = [levels[0], levels[-1]]
        for level in levels:
            lines += _within(boxes, axis, level)
        centers += _within(boxes, axis, whole[axis] // 2)

    def length(units: int) -> str:
        return measure.shown(Fraction(units, scale * INCHES_PER_FOOT), "ft", 2, inputs.show_in)

    rows, told = [], []
    for axis, near, far in ((0, "below", "above"), (1, "left", "right")):
        border = scaled(borders[axis], scale)
        spans = _border_spans(whole[axis], border, borders[axis], tiles[axis], size[axis], inputs.show_in)
        rows.append(Row(near, "spans", tuple(spans)))
        center = say("panels.plan.center", "center {at}", at=length(whole[axis] // 2))
        rows.append(Row(far, "spans", ((0, whole[axis] // 2, center),)))
        told.append(words.listed([text for _, _, text in spans]))
    walls = wall_lines(boxes)
    return Plan(
        title=say("panels.plan.room", "{room}, tiles on the ceiling", room=room.name),
        description=say(
            "panels.plan.told", "{room}, {east} by {north}: {whole} and {cut}. From west to east {x}; from south to north {y}. Walls: {walls}.",
            room=room.name, east=length(whole[0]), north=length(whole[1]),
            whole=words.plural(one.full_tiles, "whole tile"), cut=words.plural(one.cut_pieces, "cut piece"), x=told[0], y=told[1],
            walls=words.listed([length(wall[2] - wall[0] + wall[3] - wall[1]) for wall, _ in walls]),
        ) + " " + say("panels.plan.centers", "Center lines: {x} from the west wall, {y} from the south wall.", x=length(whole[0] // 2), y=length(whole[1] // 2)),
        note=say("panels.plan.scale", "Seen as on the floor, to scale, north up. Lines with dots are the center lines. At the walls: the width of the cut tiles."),
        width=whole[0],
        height=whole[1],
        walls=tuple([wall for wall, _ in walls]),
        joints=(),
        lines=tuple(lines),
        first=(),
        centers=tuple(centers),
        blocks=(),
        rows=tuple(rows + wall_rows(walls, SIDES, length)),
    )  # fmt: skip


def _border_spans(
    whole: int, border: int, border_in: Fraction, tile_in: Fraction, size_in: Fraction, show: str
) -> list[tuple[int, int, str]]:
    """One way across the room: cut border, whole tiles, cut border."""
    told = measure.shown(border_in, "in", 3, show)
    if border >= whole:
        return [(0, whole, say("panels.plan.cut", "cut {width}", width=told))]
    tiles = say(
        "panels.plan.tiles", "{count} of {width}",
        count=words.short_decimal((size_in - 2 * border_in) / tile_in, 0), width=measure.shown(tile_in, "in", 3, show),
    )  # fmt: skip
    if border == 0:
        return [(0, whole, tiles)]
    cut = say("panels.plan.cut", "cut {width}", width=told)
    if 2 * border >= whole:
        return [(0, border, cut), (border, whole, cut)]
    return [(0, border, cut), (border, whole - border, tiles), (whole - border, whole, cut)]


def _within(boxes: tuple[tuple[int, int, int, int], ...], axis: int, level: int) -> list[tuple[int, int, int, int]]:
    """A line across the room at `level`, where the room lies on both sides."""
    found = []
    for box in boxes:
        if box[axis] < level < box[axis + 2]:
            found.append((level, box[1], level, box[3]) if axis == 0 else (box[0], level, box[2], level))
    return found
