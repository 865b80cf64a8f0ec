"""A layout told: joints measured, the cut list sheet by sheet, the order to hang, and the plan to hang from."""

from fractions import Fraction

from calc import measure, words
from calc.answer import Item
from calc.courses import PARTS, Course, Frame
from calc.drawing import Dimension, Drawing, Label, Shape
from calc.measure import INCHES_PER_FOOT
from calc.piece_search import Piece

PLAN = ("geometry",)


def butt_joints(pieces: tuple[Piece, ...], courses: list[Course]) -> int:
    """Return the length of all butt joints [1/80 in]."""
    return sum([high - low for _, low, high in _butts(pieces, courses)])


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


def tapered_joints(courses: list[Course]) -> int:
    """Return the length of the joints between courses [1/80 in]."""
    return sum([end - start for _, start, end in _tapers(courses)])


def _tapers(courses: list[Course]) -> list[tuple[Course, int, int]]:
    """Every stretch (course below, from, to) where the room lies on both sides of a line between courses."""
    found = []
    for one in courses:
        for other in courses:
            if other.room != one.room or other.low != one.high:
                continue
            for below in one.boxes:
                for above in other.boxes:
                    start, end = max(below[0], above[0]), min(below[2], above[2])
                    if below[3] == one.high and above[1] == one.high and start < end:
                        found.append((one, start, end))
    return found


def size_told(piece: Piece, course: Course, show: str) -> str:
    """Return a piece's size as it is cut: length by width."""
    length = measure.shown(Fraction(piece.end - piece.start, PARTS * INCHES_PER_FOOT), "ft", 2, show)
    return length + " x " + measure.shown(Fraction(course.depth(piece.start, piece.end), PARTS), "in", 2, show)


def cut_list(
    pieces: tuple[Piece, ...], courses: list[Course], buy: list[tuple[int, int]], show: str, thickness: str
) -> list[Item]:
    """Return one item a sheet: its size, what is cut from it in order, and what is left."""
    found = []
    for sheet, (_, length) in enumerate(buy):
        own = [(piece.offset, piece.lane, at) for at, piece in enumerate(pieces) if piece.sheet == sheet]
        own.sort()
        told = []
        used = 0
        for offset, _, at in own:
            piece = pieces[at]
            used = max(used, offset + piece.end - piece.start)
            beside = " (half the width)" if piece.lanes == 1 else ""
            told.append("No. " + str(at + 1) + ", " + size_told(piece, courses[piece.course], show) + beside)
        left = measure.shown(Fraction(length - used, PARTS * INCHES_PER_FOOT), "ft", 2, show)
        size = measure.shown(Fraction(length, PARTS * INCHES_PER_FOOT), "ft", 2, show)
        found.append(
            Item("Sheet " + str(sheet + 1) + ", " + size, left + " left", "Cut " + "; ".join(told) + ".", PLAN)
        )
    return found  # fmt: skip


def hanging_list(pieces: tuple[Piece, ...], courses: list[Course], frames: tuple[Frame, ...], show: str) -> list[Item]:
    """Return one item a course, in the order to hang: its pieces by number, and where each butt joint lies."""
    found = []
    for at, course in enumerate(courses):
        frame = frames[course.room]
        wall = "west" if frame.turned else "south"
        own = [(number, piece) for number, piece in enumerate(pieces) if piece.course == at]
        told = ["No. " + str(number + 1) + " " + size_told(piece, course, show) for number, piece in own]
        joints = [
            measure.shown(Fraction(piece.end, PARTS * INCHES_PER_FOOT), "ft", 2, show)
            for _, piece in own
            if piece.end not in [end for _, end in course.spans]
        ]
        start = "south" if frame.turned else "west"
        text = "; ".join(told) + "."
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
    for course, start, end in _tapers(own):
        shapes.append(Shape((point(start, course.high), point(end, course.high)), "curve", "none", False))
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
            told.append("No. " + str(number + 1) + " " + size_told(piece, course, show))
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
