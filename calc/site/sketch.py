"""Rooms as they are being typed: what is understood so far, drawn to scale, with the wall that is wrong marked and named."""

from fractions import Fraction

from calc.core.drawing import Dimension, Drawing, Label, Shape
from calc.core.fields import LONGEST_LIST
from calc.numbers import measure, words
from calc.numbers.measure import MeasureFault
from calc.rooms import outlines
from calc.rooms.nearest import split_words
from calc.rooms.rooms import MOST_ROOMS, RUN_IN, Refusal, Room, chunks_of, parted, read_one
from calc.rooms.walks import is_walk, path, side, step_of
from calc.rooms.writing import sides_of, walked
from calc.site.takeoff import inside, read_back
from calc.text.door import say

TALLEST = 150  # the work of a sketch is no taller than this [units of the page]: the field it follows stays in sight
MOST_LETTERED = 16  # walls of a walk that are lettered one by one [-]; beyond, only those at fault are
ARROW_PARTS = 5  # the arrow of a slope is two of these parts of the room's side, its head half of one [-]


def sketch(text: str, show_in: str) -> list[dict[str, object]]:
    """Return what is understood of each room in `text`: {"given", "name", "message", "nearest", "walls", "area", "plan"}.

    `message` is '' for a room that can be taken, `nearest` then too; `walls` are the numbers of those at fault, from 1;
    `area` is '' for one that cannot; `plan` is a Drawing, or None where there is nothing to draw yet. `show_in` is
    'customary' or 'metric'.
    """
    chunks = chunks_of(text) if len(text) <= LONGEST_LIST else []
    found = []
    for at, chunk in enumerate(chunks if len(chunks) <= MOST_ROOMS else []):
        room, refusal = read_one(chunk, at + 1)
        if room is not None:
            area = measure.shown(room.ceiling_area_sqft(), "sqft", 1, show_in)
            found.append(_told(chunk, room.name, "", "", (), area, plan_of(room, show_in)))
        elif refusal is not None:
            plan = plan_so_far(chunk, refusal, show_in)
            found.append(_told(chunk, refusal.name, refusal.message, refusal.nearest, refusal.walls, "", plan))
    return found


def _told(
    given: str, name: str, message: str, nearest: str, walls: tuple[int, ...], area: str, plan: Drawing | None
) -> dict[str, object]:
    return {
        "given": given,
        "name": name,
        "message": message,
        "nearest": nearest,
        "walls": list(walls),
        "area": area,
        "plan": plan,
    }


def plan_of(room: Room, show_in: str) -> Drawing:
    """Return the plan of a room that can be taken: its walls with their lengths, cut-outs in their places, the slope."""
    left = min([x for x, _ in room.outline])
    low = min([y for _, y in room.outline])
    points = tuple([(x - left, y - low) for x, y in room.outline])
    shapes = [Shape(points, "cut", "none", False)]
    for west, south, east, north in room.holes:
        box = ((west, south), (east, south), (east, north), (west, north))
        shapes.append(Shape(tuple([(x - left, y - low) for x, y in box]), "edge", "board", False))
    east, north = [length * measure.INCHES_PER_FOOT for length in room.size_ft()]
    dimensions: list[Dimension] = []
    labels: list[Label] = []
    if len(points) == 4:
        dimensions = _over_all(east, north, show_in)
    else:
        labels = _lettered(list(points) + [points[0]], (), _clockwise(points), show_in)
    if room.slope:
        arrow, label = _slope(room, inside(points), min(east, north))
        shapes.append(arrow)
        labels.append(label)
    return _drawing(room.name, read_back(room, show_in), (east, north), shapes, dimensions, labels)


def plan_so_far(chunk: str, refusal: Refusal, show_in: str) -> Drawing | None:
    """Return the plan of what can be read of a room that cannot be taken, the walls at fault marked; None for nothing."""
    size = split_words(parted(chunk)[1])[0][1]
    plain = walked(size)
    if is_walk(plain) or (step_of(plain.split(" ")[0]) is not None and "x" not in words.lower(plain)):
        return _walk_so_far(plain, refusal, show_in)
    return _sides_so_far(size, refusal, show_in)


def _walk_so_far(text: str, refusal: Refusal, show_in: str) -> Drawing | None:
    points, unread = path(text)
    count = len(points) - 1
    if not count:
        return None
    end, first = points[-1], points[0]
    ahead = []  # what is not there yet
    names = []  # and its numbers, 0 for what goes on with the last wall
    if unread is not None:
        length = abs(end[0] - points[-2][0]) + abs(end[1] - points[-2][1])
        ahead, names = [(end[0] + unread[0] * length, end[1] + unread[1] * length)], [count + 1]
    elif end != first:
        ahead, names = [first], [0]
        if refusal.walls and refusal.walls[-1] > count:
            eastward = points[1][1] == first[1]
            corner = (first[0], end[1]) if eastward else (end[0], first[1])
            ahead = [corner, first] if corner not in (end, first) else [first]
            names = [0] * (len(ahead) - len(refusal.walls)) + list(refusal.walls)
    corners = points + ahead
    left, low = min([x for x, _ in corners]), min([y for _, y in corners])
    moved = [(x - left, y - low) for x, y in corners]
    shapes = []
    for at in range(len(moved) - 1):
        wrong = at >= count or at + 1 in refusal.walls
        shapes.append(Shape((moved[at], moved[at + 1]), "fault" if wrong else "cut", "none", at >= count))
    clockwise = _clockwise(tuple(points))
    labels = _lettered(moved[: count + 1], refusal.walls, clockwise, show_in)
    for at, number in enumerate(names):
        if number:
            named = say("sketch.ahead", "wall {number}?", number=str(number))
            labels.append(_outside(moved[count + at], moved[count + at + 1], clockwise, named))
    width, height = max([x for x, _ in moved]), max([y for _, y in moved])
    return _drawing(refusal.name, refusal.message, (width, height), shapes, [], labels)


def _sides_so_far(size: str, refusal: Refusal, show_in: str) -> Drawing | None:
    """The sides of a room that can be read; one that cannot is as long as the other, and broken."""
    lengths = []
    for one in sides_of(size)[:2]:
        try:
            lengths.append(side(one))
        except MeasureFault:
            lengths.append(Fraction(0))
    known = max(lengths)
    if not known:
        return None
    east = lengths[0] or known
    north = lengths[1] if len(lengths) > 1 and lengths[1] else known
    zero = Fraction(0)
    found = [length > 0 for length in lengths] + [False]
    shapes = []
    labels = []
    for at, line in enumerate((((zero, zero), (east, zero)), ((zero, zero), (zero, north)))):
        shapes.append(Shape(line, "cut" if found[at] else "fault", "none", not found[at]))
        middle = ((line[0][0] + line[1][0]) / 2, (line[0][1] + line[1][1]) / 2)
        text = measure.shown(lengths[at] / measure.INCHES_PER_FOOT, "ft", 2, show_in) if found[at] else ""
        text = text or say("sketch.side", "side {number}?", number=str(at + 1))
        labels.append(Label(middle, "before" if at else "under", text))
    return _drawing(refusal.name, refusal.message, (east, north), shapes, [], labels)


def _drawing(
    name: str,
    description: str,
    size: tuple[Fraction, Fraction],
    shapes: list[Shape],
    dimensions: list[Dimension],
    labels: list[Label],
) -> Drawing:
    return Drawing(
        title=say("sketch.title", "Plan of {name}", name=name),
        description=description,
        width=size[0] or size[1],
        height=size[1],
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=tuple(dimensions),
        labels=tuple(labels),
        scale_note=say("takeoff.plan.scale", "Seen from above, to scale. North is up."),
        tallest=TALLEST,
    )


def _over_all(east: Fraction, north: Fraction, show_in: str) -> list[Dimension]:
    zero = Fraction(0)
    foot = measure.INCHES_PER_FOOT
    return [
        Dimension((zero, zero), (east, zero), "below", measure.shown(east / foot, "ft", 2, show_in)),
        Dimension((zero, zero), (zero, north), "left", measure.shown(north / foot, "ft", 2, show_in)),
    ]


def _lettered(
    points: list[tuple[Fraction, Fraction]], walls: tuple[int, ...], clockwise: bool, show_in: str
) -> list[Label]:
    """The length of each wall, outside of it; one at fault is named, and one that is missing has a name and no length."""
    labels = []
    for at in range(len(points) - 1):
        (x1, y1), (x2, y2) = points[at], points[at + 1]
        faulty = at + 1 in walls
        if len(points) > MOST_LETTERED + 1 and not faulty:
            continue
        text = measure.shown((abs(x2 - x1) + abs(y2 - y1)) / measure.INCHES_PER_FOOT, "ft", 2, show_in)
        if faulty:
            text = say("sketch.wall", "wall {number}: {length}", number=str(at + 1), length=text)
        labels.append(_outside(points[at], points[at + 1], clockwise, text))
    return labels


def _outside(start: tuple[Fraction, Fraction], end: tuple[Fraction, Fraction], clockwise: bool, text: str) -> Label:
    """A text in the middle of a wall, on the side that is no room."""
    if start[1] == end[1]:
        outside = "over" if (end[0] > start[0]) == clockwise else "under"
    else:
        outside = "before" if (end[1] > start[1]) == clockwise else "after"
    return Label(((start[0] + end[0]) / 2, (start[1] + end[1]) / 2), outside, text)


def _clockwise(points: tuple[tuple[Fraction, Fraction], ...]) -> bool:
    return outlines.twice_area(points) <= 0


def _slope(room: Room, middle: tuple[Fraction, Fraction], across: Fraction) -> tuple[Shape, Label]:
    """An arrow that points up the slope, and its rise."""
    step = across / ARROW_PARTS
    x, y = {"N": (0, 1), "E": (1, 0), "S": (0, -1), "W": (-1, 0)}[room.toward]
    tip = (middle[0] + 2 * step * x, middle[1] + 2 * step * y)
    back = (tip[0] - step * x / 2, tip[1] - step * y / 2)
    one = (back[0] + step * y / 2, back[1] + step * x / 2)
    other = (back[0] - step * y / 2, back[1] - step * x / 2)
    rise = words.short_decimal(room.slope * RUN_IN, 2) + ":" + str(RUN_IN)
    return (
        Shape((middle, tip, one, tip, other), "curve", "none", False),
        Label((middle[0] - step * x, middle[1] - step * y), "on", rise),
    )
