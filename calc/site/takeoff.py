"""Takeoff: what is up there. Ceiling, walls, edge and air of each room, and of all together."""

from dataclasses import dataclass
from fractions import Fraction

from calc.numbers import measure, words
from calc.rooms import rooms
from calc.core.answer import Answer, Calculator, line
from calc.core.drawing import ROW_FOR_DIMENSION, SHEET_HEIGHT, SHEET_WIDTH, Dimension, Drawing, Label, Shape
from calc.numbers.exact import total
from calc.core.fields import SHOW_IN, Values
from calc.common.inputs import HEIGHT, ROOMS
from calc.rooms.rooms import Room

SOURCE = ("geometry",)
MOST_ROOMS_DRAWN = 6
LEAVE_ALONE = "Measure along the floor. Leave the texture alone until the asbestos result is in."


@dataclass(frozen=True)
class TakeoffInputs:
    """`rooms`: at least one; `ceiling_height_ft` [ft, 4 to 40] at the lowest wall; `show_in` 'customary' or 'metric'."""

    rooms: tuple[Room, ...]
    ceiling_height_ft: Fraction
    show_in: str


def takeoff(inputs: TakeoffInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return ceiling area, perimeter, wall area and volume of the rooms together.

    `given` is what was typed, handed back in the answer. Raises nothing: the inputs are checked when read.
    Source: geometry (areas by the corner formula, a slope by Pythagoras).
    """
    height = inputs.ceiling_height_ft
    show = inputs.show_in
    ceiling_area_sqft = total([room.ceiling_area_sqft() for room in inputs.rooms])
    perimeter_ft = total([room.perimeter_ft() for room in inputs.rooms])
    wall_area_sqft = total([room.wall_area_sqft(height) for room in inputs.rooms])
    volume_cuft = total([room.volume_cuft(height) for room in inputs.rooms])
    lines = (
        line(
            "ceiling_area_sqft",
            "Ceiling",
            ceiling_area_sqft,
            "sqft",
            1,
            "Floor outline less the cut-outs, stretched by the slope. All sides are as they lie over the floor.",
            _working([_area_working(room) for room in inputs.rooms], ceiling_area_sqft, "sq ft"),
            SOURCE,
            show,
        ),
        line(
            "perimeter_ft",
            "Edge of the ceiling",
            perimeter_ft,
            "ft",
            2,
            "All walls added up, in plan.",
            _working([_each(room, room.perimeter_ft(), "ft") for room in inputs.rooms], perimeter_ft, "ft"),
            SOURCE,
            show,
        ),
        line(
            "wall_area_sqft",
            "Walls",
            wall_area_sqft,
            "sqft",
            1,
            "Each wall times its mean height. Doors and windows are not taken off.",
            _working(
                [_each(room, room.wall_area_sqft(height), "sq ft") for room in inputs.rooms], wall_area_sqft, "sq ft"
            ),
            SOURCE,
            show,
        ),
        line(
            "volume_cuft",
            "Air in the rooms",
            volume_cuft,
            "cuft",
            0,
            "Floor times mean height.",
            _working([_each(room, room.volume_cuft(height), "cu ft") for room in inputs.rooms], volume_cuft, "cu ft"),
            SOURCE,
            show,
        ),
    )
    count = len(inputs.rooms)
    return Answer(
        calculator="takeoff",
        inputs=given,
        figure=lines[0].shown,
        figure_label="of ceiling in " + words.plural(count, "room"),
        sentence="The edge is "
        + lines[1].shown
        + " long, the walls are "
        + lines[2].shown
        + ", and the rooms hold "
        + lines[3].shown
        + " of air.",
        lines=lines,
        cautions=(),
        notes=tuple([_read_back(room, show) for room in inputs.rooms] + [LEAVE_ALONE]),
        drawing=_plan(inputs.rooms, show),
    )


def _each(room: Room, value: Fraction, unit: str) -> str:
    return room.name + " " + words.short_decimal(value, 2) + " " + unit


def _area_working(room: Room) -> str:
    text = words.short_decimal(room.plan_area_sqft(), 2)
    if room.cutouts:
        text += " − " + words.short_decimal(room.cutout_area_sqft(), 2)
    if room.slope:
        text = ("(" + text + ")" if room.cutouts else text) + " × " + words.short_decimal(room.slope_factor(), 4)
    return room.name + " " + text


def _working(parts: list[str], value: Fraction, unit: str) -> str:
    return " + ".join(parts) + " = " + words.short_decimal(value, 2) + " " + unit


def _read_back(room: Room, show_in: str) -> str:
    east, north = room.size_ft()
    text = (
        room.name
        + ": read as "
        + measure.shown(east, "ft", 2, show_in)
        + " × "
        + measure.shown(north, "ft", 2, show_in)
    )
    if len(room.outline) > 4:
        text += " overall, " + words.plural(len(room.outline), "wall")
    if room.slope:
        text += (
            ", rising " + words.short_decimal(room.slope * rooms.RUN_IN, 2) + " in 12 to the " + _COMPASS[room.toward]
        )
    if room.cutouts:
        text += ", less " + words.plural(len(room.cutouts), "cut-out")
        if room.cutouts_overlap():
            text += ", which overlap and are counted once where they do"
        if len(room.holes) < len(room.cutouts):
            text += ". Board still covers a cut-out whose place is not given (at …)"
    return text + "."


_COMPASS = {"N": "north", "E": "east", "S": "south", "W": "west"}


def _plan(room_list: tuple[Room, ...], show_in: str) -> Drawing | None:
    """The rooms one above the other, to scale, the first at the top."""
    if len(room_list) > MOST_ROOMS_DRAWN:
        return None
    shapes: list[Shape] = []
    dimensions: list[Dimension] = []
    labels: list[Label] = []
    widest = Fraction(0)
    bottom = Fraction(0)
    gap = _gap_in(room_list)
    for room in reversed(room_list):
        east, north = room.size_ft()
        width, depth = east * measure.INCHES_PER_FOOT, north * measure.INCHES_PER_FOOT
        left = min([corner[0] for corner in room.outline])
        low = min([corner[1] for corner in room.outline])
        points = tuple([(x - left, y - low + bottom) for x, y in room.outline])
        shapes.append(Shape(points, "cut", "room", False))
        zero = Fraction(0)
        dimensions.append(Dimension((zero, bottom), (width, bottom), "below", measure.shown(east, "ft", 2, show_in)))
        dimensions.append(
            Dimension((zero, bottom), (zero, bottom + depth), "left", measure.shown(north, "ft", 2, show_in))
        )
        labels.append(Label(_inside(points), "on", room.name))
        widest = max(widest, width)
        bottom = bottom + depth + gap
    described = [_read_back(room, show_in) for room in room_list]
    return Drawing(
        title="Plan of the ceiling",
        description=" ".join(described),
        width=widest,
        height=bottom - gap,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=tuple(dimensions),
        labels=tuple(labels),
        scale_note="Seen from above, to scale. North is up.",
    )


def _gap_in(room_list: tuple[Room, ...]) -> Fraction:
    """The space between two rooms on the plan [in] that leaves room for a dimension on the page."""
    sizes = [room.size_ft() for room in room_list]
    widest = max([east for east, _ in sizes]) * measure.INCHES_PER_FOOT
    deep = total([north for _, north in sizes]) * measure.INCHES_PER_FOOT
    left_for_rooms = SHEET_HEIGHT - ROW_FOR_DIMENSION * (len(room_list) - 1)
    return max(widest * ROW_FOR_DIMENSION / SHEET_WIDTH, deep * ROW_FOR_DIMENSION / left_for_rooms)


def _inside(points: tuple[tuple[Fraction, Fraction], ...]) -> tuple[Fraction, Fraction]:
    """A point inside the outline for the name: the middle of the widest stretch at some height."""
    levels = sorted([point[1] for point in points])
    best = (Fraction(0), points[0])
    for at in range(len(levels) - 1):
        if levels[at] == levels[at + 1]:
            continue
        level = (levels[at] + levels[at + 1]) / 2
        crossings = []
        for index, start in enumerate(points):
            end = points[(index + 1) % len(points)]
            if start[0] == end[0] and min(start[1], end[1]) < level < max(start[1], end[1]):
                crossings.append(start[0])
        crossings.sort()
        for pair in range(0, len(crossings) - 1, 2):
            span = crossings[pair + 1] - crossings[pair]
            if span * (levels[at + 1] - levels[at]) > best[0]:
                best = (span * (levels[at + 1] - levels[at]), ((crossings[pair] + crossings[pair + 1]) / 2, level))
    return best[1]


def _work_out(values: Values) -> Answer:
    inputs = TakeoffInputs(values.rooms(), values.number("ceiling_height_ft"), values.choice("show_in"))
    return takeoff(inputs, values.given)


CALCULATOR = Calculator(
    name="takeoff",
    title="What is up there",
    summary="Ceiling area, edge, walls and air of your rooms",
    verb="Measure it up",
    fields=(ROOMS, HEIGHT, SHOW_IN),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'; Den: E 14' S 6' W 4' S 5' W 10' N 11'"), ("ceiling_height_ft", "8")),
)
