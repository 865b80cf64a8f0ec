"""Takeoff: what is up there. Ceiling, walls, edge and air of each room, and of all together."""

from fractions import Fraction

from calc.common.inputs import HEIGHT, ROOMS
from calc.core.answer import Answer, Calculator
from calc.core.drawing import ROW_FOR_DIMENSION, SHEET_HEIGHT, SHEET_WIDTH, Dimension, Drawing, Label, Shape
from calc.core.fields import SHOW_IN, Values
from calc.core.lines import Lines
from calc.numbers import measure, words
from calc.numbers.exact import total
from calc.numbers.quantity import Quantity, added, given
from calc.rooms import rooms
from calc.rooms.rooms import Room
from calc.text.door import say

MOST_ROOMS_DRAWN = 6
LEAVE_ALONE = "Measure along the floor. Leave the texture alone until the asbestos result is in."


def ceiling_of(room: Room) -> Quantity:
    """Return the ceiling of a room [sq ft]: its outline less the cut-outs, stretched by the slope. Source: geometry."""
    area = given(room.plan_area_sqft(), "sqft", "geometry", room.name)
    if room.cutouts:
        area = area - given(room.cutout_area_sqft(), "sqft", "geometry")
    return area * given(room.slope_factor(), "", "geometry") if room.slope else area


def takeoff(values: Values) -> Answer:
    """Return ceiling area, perimeter, wall area and volume of the rooms together. Raises nothing.

    Source: geometry (areas by the corner formula, a slope by Pythagoras).
    """
    show, rooms_given, height_ft = values.choice("show_in"), values.rooms(), values.number("ceiling_height_ft")
    lines = Lines("takeoff", show)
    lines.add(
        name="ceiling_area_sqft",
        label="Ceiling",
        unit="sqft",
        places=1,
        amount=added([ceiling_of(room) for room in rooms_given]),
        rule="Floor outline less the cut-outs, stretched by the slope. All sides are as they lie over the floor.",
    )
    lines.add(
        name="perimeter_ft",
        label="Edge of the ceiling",
        unit="ft",
        places=2,
        rule="All walls added up, in plan.",
        amount=added([given(room.perimeter_ft(), "ft", "geometry", room.name) for room in rooms_given]),
    )
    lines.add(
        name="wall_area_sqft",
        label="Walls",
        unit="sqft",
        places=1,
        rule="Each wall times its mean height. Doors and windows are not taken off.",
        amount=added([given(room.wall_area_sqft(height_ft), "sqft", "geometry", room.name) for room in rooms_given]),
    )
    lines.add(
        name="volume_cuft",
        label="Air in the rooms",
        unit="cuft",
        places=0,
        rule="Floor times mean height.",
        amount=added([given(room.volume_cuft(height_ft), "cuft", "geometry", room.name) for room in rooms_given]),
    )
    return Answer(
        calculator="takeoff",
        inputs=values.given,
        figure=lines.shown("ceiling_area_sqft"),
        figure_label=say("takeoff.figure", "of ceiling in {rooms}", rooms=words.plural(len(rooms_given), "room")),
        sentence=say(
            "takeoff.sentence", "The edge is {edge} long, the walls are {walls}, and the rooms hold {air} of air.",
            edge=lines.shown("perimeter_ft"), walls=lines.shown("wall_area_sqft"), air=lines.shown("volume_cuft"),
        ),
        lines=lines.tuple(),
        cautions=(),
        notes=tuple([read_back(room, show) for room in rooms_given] + [say("takeoff.note.alone", LEAVE_ALONE)]),
        drawing=_plan(rooms_given, show),
    )  # fmt: skip


def read_back(room: Room, show_in: str) -> str:
    """Return how a room was understood, in a sentence."""
    east, north = room.size_ft()
    text = say(
        "takeoff.read",
        "{room}: read as {east} × {north}",
        room=room.name,
        east=measure.shown(east, "ft", 2, show_in),
        north=measure.shown(north, "ft", 2, show_in),
    )
    if len(room.outline) > 4:
        text += say("takeoff.read.walls", " overall, {walls}", walls=words.plural(len(room.outline), "wall"))
    if room.slope:
        text += say(
            "takeoff.read.slope",
            ", rising {rise} in 12 to the {side}",
            rise=words.short_decimal(room.slope * rooms.RUN_IN, 2),
            side=_side(room.toward),
        )
    if room.cutouts:
        text += say("takeoff.read.less", ", less {cutouts}", cutouts=words.plural(len(room.cutouts), "cut-out"))
        if room.cutouts_overlap():
            text += say("takeoff.read.overlap", ", which overlap and are counted once where they do")
        if len(room.holes) < len(room.cutouts):
            text += say("takeoff.read.covered", ". Board still covers a cut-out whose place is not given (at …)")
    return text + "."


def _side(toward: str) -> str:
    if toward == "N":
        return say("side.north", "north")
    if toward == "E":
        return say("side.east", "east")
    return say("side.south", "south") if toward == "S" else say("side.west", "west")


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
        labels.append(Label(inside(points), "on", room.name))
        widest = max(widest, width)
        bottom = bottom + depth + gap
    described = [read_back(room, show_in) for room in room_list]
    return Drawing(
        title=say("takeoff.plan", "Plan of the ceiling"),
        description=" ".join(described),
        width=widest,
        height=bottom - gap,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=tuple(dimensions),
        labels=tuple(labels),
        scale_note=say("takeoff.plan.scale", "Seen from above, to scale. North is up."),
    )


def _gap_in(room_list: tuple[Room, ...]) -> Fraction:
    """The space between two rooms on the plan [in] that leaves room for a dimension on the page."""
    sizes = [room.size_ft() for room in room_list]
    widest = max([east for east, _ in sizes]) * measure.INCHES_PER_FOOT
    deep = total([north for _, north in sizes]) * measure.INCHES_PER_FOOT
    left_for_rooms = SHEET_HEIGHT - ROW_FOR_DIMENSION * (len(room_list) - 1)
    return max(widest * ROW_FOR_DIMENSION / SHEET_WIDTH, deep * ROW_FOR_DIMENSION / left_for_rooms)


def inside(points: tuple[tuple[Fraction, Fraction], ...]) -> tuple[Fraction, Fraction]:
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


CALCULATOR = Calculator(
    name="takeoff",
    title="What is up there",
    summary="Ceiling area, edge, walls and air of your rooms",
    verb="Measure it up",
    fields=(ROOMS, HEIGHT, SHOW_IN),
    work_out=takeoff,
    example=(("rooms", "Living: 20' x 14'; Den: E 14' S 6' W 4' S 5' W 10' N 11'"), ("ceiling_height_ft", "8")),
)
