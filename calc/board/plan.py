"""A layout told: joints measured, the order to hang, and the plan to hang from."""

from collections.abc import Callable

from calc.board.courses import Course, Frame
from calc.board.cuts import PLAN, feet, inches, size_told
from calc.board.piece_search import Piece
from calc.core.answer import Item
from calc.core.drawing import Block, Plan, Row
from calc.core.walls import different, merged, wall_lines, wall_rows
from calc.numbers import words
from calc.text.door import say

# sides of the page for what stands at the low and high ends of the depth, and of the length
NORTH = ("below", "above", "left", "right")
TURNED = ("left", "right", "below", "above")


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
        own = [(number, piece) for number, piece in enumerate(pieces) if piece.course == at]
        told = [_numbered(number, piece, show) for number, piece in own]
        joints = [feet(piece.end, show) for _, piece in own if piece.end not in [end for _, end in course.spans]]
        text = say(
            "board.course.told",
            "From {low} to {high} off that wall: {pieces}.",
            low=feet(course.low, show),
            high=feet(course.high, show),
            pieces="; ".join(told),
        )
        if joints and frame.turned:
            text += " " + say(
                "board.course.joints_south", "Butt joints {at} from the south wall.", at=words.listed(joints)
            )
        elif joints:
            text += " " + say(
                "board.course.joints_west", "Butt joints {at} from the west wall.", at=words.listed(joints)
            )
        number_told = str(course.number + 1)
        if frame.turned:
            name = say(
                "board.course.west", "{room}, course {number} from the west", room=frame.name, number=number_told
            )
        else:
            name = say(
                "board.course.south", "{room}, course {number} from the south", room=frame.name, number=number_told
            )
        found.append(Item(name, words.plural(len(own), "piece"), text, PLAN))
    return found


def _numbered(number: int, piece: Piece, show: str) -> str:
    return say("board.piece", "No. {number} {size}", number=str(number + 1), size=size_told(piece, show))


def plan_of(
    room: int, frame: Frame, courses: list[Course], pieces: tuple[Piece, ...], joists: list[int], show: str
) -> Plan:
    """Return one room's plan: each piece with its number and cut size, joists as they are snapped, joints from one wall."""

    def line(u1: int, v1: int, u2: int, v2: int) -> tuple[int, int, int, int]:
        return (v1, u1, v2, u2) if frame.turned else (u1, v1, u2, v2)

    own = [course for course in courses if course.room == room]
    butts = _butts(tuple([one for one in pieces if courses[one.course].room == room]), courses)
    joints = [line(start, own[at].high, end, own[at].high) for at, _, start, end in _between(own)]
    joints += [line(piece.end, low, piece.end, high) for piece, low, high in butts]
    walls = wall_lines(frame.boxes)
    wide, deep = (frame.depth, frame.length) if frame.turned else (frame.length, frame.depth)
    stations = different([piece.end for piece, _, _ in butts])
    levels = different([course.low for course in own if course.low > 0])
    told = _told(frame, joists, walls, stations, levels, show)
    return Plan(
        title=say("board.plan", "{room}, plan to hang from", room=frame.name),
        description=say(
            "board.plan.told", "{room}, {east} by {north}, in {courses}. {more}",
            room=frame.name, east=feet(wide, show), north=feet(deep, show), courses=words.plural(len(own), "course"), more=told,
        ),
        note=_note(frame),
        width=wide,
        height=deep,
        walls=tuple([line(one[0], one[1], one[2], one[3]) for one, _ in walls]),
        joints=tuple(joints),
        lines=_joist_lines(frame, joists, line, False),
        first=_joist_lines(frame, joists, line, True),
        centers=(),
        blocks=_blocks(room, courses, pieces, line, show),
        rows=_rows(frame, joists, walls, stations, levels, show),
    )  # fmt: skip


def _blocks(
    room: int,
    courses: list[Course],
    pieces: tuple[Piece, ...],
    line: Callable[[int, int, int, int], tuple[int, int, int, int]],
    show: str,
) -> tuple[Block, ...]:
    """Every piece of a room, by its number, with the widest box in it for its lettering."""
    found = []
    for number, piece in enumerate(pieces):
        course = courses[piece.course]
        if course.room == room:
            inside = [one for one in course.boxes if one[0] < piece.end and one[2] > piece.start]
            widest = max(inside, key=lambda one: (min(one[2], piece.end) - max(one[0], piece.start), -one[1]))
            box = line(max(widest[0], piece.start), widest[1], min(widest[2], piece.end), widest[3])
            found.append(Block(box, str(number + 1), feet(piece.end - piece.start, show), inches(piece.depth, show)))
    return tuple(found)


def _joist_lines(
    frame: Frame, joists: list[int], line: Callable[[int, int, int, int], tuple[int, int, int, int]], first: bool
) -> tuple[tuple[int, int, int, int], ...]:
    """The joists where the room lies under them: the one that is snapped first, or all others."""
    return tuple(
        [
            line(at, low, at, high)
            for at in joists
            if (at == _snapped_first(joists)) == first
            for low, high in merged([(one[1], one[3]) for one in frame.boxes if one[0] < at < one[2]])
        ]
    )


def _snapped_first(joists: list[int]) -> int:
    """The joist nearest the wall that they are counted from, but not on it; 0 where there is none."""
    away = [at for at in joists if at > 0]
    return away[0] if away else 0


def _rows(
    frame: Frame,
    joists: list[int],
    walls: list[tuple[tuple[int, int, int, int], str]],
    stations: list[int],
    levels: list[int],
    show: str,
) -> tuple[Row, ...]:
    """What stands outside: joists numbered and the first measured, butt joints and courses from one wall, every wall."""
    near, far, low_side, high_side = TURNED if frame.turned else NORTH
    first = _snapped_first(joists)
    rows = [Row(near, "names", tuple([(at + 1, joist, str(at + 1)) for at, joist in enumerate(joists)]))]
    if first:
        told = say(
            "board.plan.first", "line {number} at {at}", number=str(joists.index(first) + 1), at=feet(first, show)
        )
        rows.append(Row(near, "spans", ((0, first, told),)))
    rows.append(Row(far, "stations", tuple([(0, at, feet(at, show)) for at in stations])))
    rows.append(Row(high_side, "stations", tuple([(0, at, feet(at, show)) for at in levels])))
    return tuple(rows + wall_rows(walls, (near, far, low_side, high_side), lambda length: feet(length, show)))


def _note(frame: Frame) -> str:
    if frame.turned:
        return say(
            "board.plan.note.south",
            "Seen as on the floor, to scale, north up. Thin lines are joists, numbered from the south wall; snap the broken one first. Butt joints are measured from the south wall, courses from the west. Bold numbers are the order to hang.",
        )
    return say(
        "board.plan.note.west",
        "Seen as on the floor, to scale, north up. Thin lines are joists, numbered from the west wall; snap the broken one first. Butt joints are measured from the west wall, courses from the south. Bold numbers are the order to hang.",
    )


def _told(
    frame: Frame,
    joists: list[int],
    walls: list[tuple[tuple[int, int, int, int], str]],
    stations: list[int],
    levels: list[int],
    show: str,
) -> str:
    lengths = [feet(one[2] - one[0] + one[3] - one[1], show) for one, _ in walls]
    told = say("board.plan.walls", "Walls: {lengths}.", lengths=words.listed(lengths))
    first = _snapped_first(joists)
    if first and frame.turned:
        told += " " + say(
            "board.plan.first_south", "The first line to snap is {at} from the south wall.", at=feet(first, show)
        )
    elif first:
        told += " " + say(
            "board.plan.first_west", "The first line to snap is {at} from the west wall.", at=feet(first, show)
        )
    if stations:
        told += " " + say(
            "board.plan.joints",
            "Butt joints lie {at} from that wall.",
            at=words.listed([feet(at, show) for at in stations]),
        )
    if levels:
        at_told = words.listed([feet(at, show) for at in levels])
        if frame.turned:
            told += " " + say("board.plan.levels_west", "Courses meet {at} from the west wall.", at=at_told)
        else:
            told += " " + say("board.plan.levels_south", "Courses meet {at} from the south wall.", at=at_told)
    return told  # fmt: skip
