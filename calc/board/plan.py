"""A layout told: joints measured, the order to hang, and the plan to hang from."""

from fractions import Fraction

from calc.board.courses import PARTS, Course, Frame
from calc.board.cuts import PLAN, feet, size_told
from calc.board.piece_search import Piece
from calc.core.answer import Item
from calc.core.drawing import Dimension, Drawing, Label, Shape
from calc.numbers import measure, words
from calc.numbers.measure import INCHES_PER_FOOT


def butt_joints(pieces: tuple[Piece, ...], courses: list[Course]) -> list[int]:
    """Return the length of each butt joint [1/80 in]."""
    return [high - low for _, low, high in _butts(pieces, courses)]


def _butts(pieces: tuple[Piece, ...], courses: list[Course]) -> list[tuple[Piece, int, int]]:
    """Every stretch (piece that ends there, from, to) of butt joint, where the room lies on both sides."""
    found = []
    for piece in pieces:
        course = courses[piece.course]
        if piece.end in [end for _, end in course.spans]:
            continue
        for left in course.boxes:
            for right in course.boxes:
                if left[0] < piece.end <= left[2] and right[0] <= piece.end < right[2]:
                    low, high = max(left[1], right[1]), min(left[3], right[3])
                    if low < high:
                        found.append((piece, low, high))
    return found


def long_joints(
    pieces: tuple[Piece, ...], courses: list[Course], buy: tuple[tuple[int, int], ...]
) -> tuple[list[int], list[int]]:
    """Return the lengths of joints between courses [1/80 in]: of two tapered edges, and of a cut edge or two.

    A piece has the edges of its sheet that it reaches, and is turned end for end so that its one such edge lies at
    the longer of its joints.
    """
    over: list[list[tuple[int, Piece]]] = [[] for _ in courses]
    for at, piece in enumerate(pieces):
        over[piece.course].append((at, piece))
    joints: list[tuple[int, int, int]] = []  # piece below, piece above, length
    below, above = [0] * len(pieces), [0] * len(pieces)
    for low, high, start, end in _between(courses):
        for at, one in over[low]:
            for other_at, other in over[high]:
                length = min(one.end, other.end, end) - max(one.start, other.start, start)
                if length > 0:
                    joints.append((at, other_at, length))
                    above[at] += length
                    below[other_at] += length
    tapered, cut = [], []
    for at, other_at, length in joints:
        whole = _edge(pieces[at], buy, above[at] >= below[at]) and _edge(
            pieces[other_at], buy, below[other_at] > above[other_at]
        )
        if whole:
            tapered.append(length)
        else:
            cut.append(length)
    return tapered, cut


def _edge(piece: Piece, buy: tuple[tuple[int, int], ...], longer: bool) -> bool:
    """Whether a piece has a tapered edge for a joint, given whether that is the `longer` of its two."""
    edges = (1 if piece.across == 0 else 0) + (1 if piece.across + piece.depth == buy[piece.sheet][0] else 0)
    return edges == 2 or (edges == 1 and longer)


def _between(courses: list[Course]) -> list[tuple[int, int, int, int]]:
    """Every stretch (course below, course above, from, to) where the room lies on both sides of a line between courses."""
    found = []
    for at in range(len(courses) - 1):
        one, other = courses[at], courses[at + 1]
        if other.room != one.room or other.low != one.high:
            continue
        for below in one.boxes:
            for above in other.boxes:
                start, end = max(below[0], above[0]), min(below[2], above[2])
                if below[3] == one.high and above[1] == one.high and start < end:
                    found.append((at, at + 1, start, end))
    return found


def hanging_list(pieces: tuple[Piece, ...], courses: list[Course], frames: tuple[Frame, ...], show: str) -> list[Item]:
    """Return one item a course, in the order to hang: its pieces by number, and where each butt joint lies."""
    found = []
    for at, course in enumerate(courses):
        frame = frames[course.room]
        wall = "west" if frame.turned else "south"
        own = [(number, piece) for number, piece in enumerate(pieces) if piece.course == at]
        told = ["No. " + str(number + 1) + " " + size_told(piece, show) for number, piece in own]
        joints = [feet(piece.end, show) for _, piece in own if piece.end not in [end for _, end in course.spans]]
        start = "south" if frame.turned else "west"
        text = (
            "From "
            + feet(course.low, show)
            + " to "
            + feet(course.high, show)
            + " off that wall: "
            + "; ".join(told)
            + "."
        )
        if joints:
            text += " Butt joints " + words.listed(joints) + " from the " + start + " wall."
        found.append(
            Item(
                frame.name + ", course " + str(course.number + 1) + " from the " + wall,
                words.plural(len(own), "piece"),
                text,
                PLAN,
            )
        )
    return found  # fmt: skip


def plan_of(
    room: int, frame: Frame, courses: list[Course], pieces: tuple[Piece, ...], joists: list[int], show: str
) -> Drawing:
    """Return one room's plan: walls heavy, joints plain, joists thin, each piece with its number; north is up."""

    def point(u: int, v: int) -> tuple[Fraction, Fraction]:
        return (Fraction(v, PARTS), Fraction(u, PARTS)) if frame.turned else (Fraction(u, PARTS), Fraction(v, PARTS))

    shapes = []
    for joist in joists:
        for low, high in _merged([(one[1], one[3]) for one in frame.boxes if one[0] < joist < one[2]]):
            shapes.append(Shape((point(joist, low), point(joist, high)), "curve", "none", True))
    own = [course for course in courses if course.room == room]
    for at, _, start, end in _between(own):
        shapes.append(Shape((point(start, own[at].high), point(end, own[at].high)), "curve", "none", False))
    for piece, low, high in _butts(tuple([one for one in pieces if courses[one.course].room == room]), courses):
        shapes.append(Shape((point(piece.end, low), point(piece.end, high)), "curve", "none", False))
    for side in _walls(frame):
        corners = (point(side[0], side[1]), point(side[2], side[3]))
        shapes.append(Shape(corners, "cut", "none", False))
    labels = []
    told = []
    for number, piece in enumerate(pieces):
        course = courses[piece.course]
        if course.room == room:
            inside = [one for one in course.boxes if one[0] < piece.end and one[2] > piece.start]
            widest = max(inside, key=lambda one: (min(one[2], piece.end) - max(one[0], piece.start), -one[1]))
            middle = (max(widest[0], piece.start) + min(widest[2], piece.end)) // 2
            labels.append(Label(point(middle, (widest[1] + widest[3]) // 2), "on", str(number + 1)))
            told.append("No. " + str(number + 1) + " " + size_told(piece, show))
    wide, deep = point(frame.length, frame.depth)
    zero = Fraction(0)
    east, north = (
        measure.shown(wide / INCHES_PER_FOOT, "ft", 2, show),
        measure.shown(deep / INCHES_PER_FOOT, "ft", 2, show),
    )
    return Drawing(
        title=frame.name + ", plan to hang from",
        description=frame.name + ", " + east + " by " + north + ", in " + words.plural(len(own), "course") + ". " + "; ".join(told) + ".",
        width=wide,
        height=deep,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=(Dimension((zero, zero), (wide, zero), "below", east), Dimension((zero, zero), (zero, deep), "left", north)),
        labels=tuple(labels),
        scale_note="Seen as on the floor, to scale, north up. Thin lines are joists. Numbers are the order to hang.",
    )  # fmt: skip


def _merged(spans: list[tuple[int, int]]) -> list[tuple[int, int]]:
    spans.sort()
    found: list[tuple[int, int]] = []
    for start, end in spans:
        if found and start <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], end))
        else:
            found.append((start, end))
    return found


def _walls(frame: Frame) -> list[tuple[int, int, int, int]]:
    """Every stretch of wall: the sides of the boxes less where two boxes meet."""
    found = []
    for at, one in enumerate(frame.boxes):
        for axis in (0, 1):
            other = 1 - axis
            for level in (one[axis], one[axis + 2]):
                free = [(one[other], one[other + 2])]
                for near_at, near in enumerate(frame.boxes):
                    if near_at != at and level in (near[axis], near[axis + 2]):
                        free = _less(free, near[other], near[other + 2])
                for start, end in free:
                    found.append((level, start, level, end) if axis == 0 else (start, level, end, level))
    return found


def _less(spans: list[tuple[int, int]], start: int, end: int) -> list[tuple[int, int]]:
    found = []
    for low, high in spans:
        for part in ((low, min(high, start)), (max(low, end), high)):
            if part[0] < part[1]:
                found.append(part)
    return found
