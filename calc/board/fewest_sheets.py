"""The fewest sheets for rooms: each room singly with the lines that suit it, then all of them together.

One room: ways to lay its courses are tried, the likeliest first, each in several orders and tastes, at first as a good
hand would go, then with more and more second thoughts. Rooms together begin with the sheets that they need singly, so they
never need more; then sheets that hold little are emptied, and what lay over those stretches is laid anew over what is left
of the others. Effort is counted in steps, never in seconds, so that every engine finds the same.
"""

from dataclasses import dataclass

from calc.board.bounds import Bound, least_sheets
from calc.board.course_lines import lines_of
from calc.board.courses import Course, Frame, courses_of
from calc.board.direct_layout import apart
from calc.board.offcuts import Offcuts, Usable
from calc.board.piece_search import NO_GOAL, TASTES, Cost, Joints, Piece, Search
from calc.board.sheet_emptying import Emptying
from calc.board.stretches import Stretch, stretches_of


@dataclass(frozen=True)
class Effort:
    """Steps of search: for one room by itself, for all rooms together, and how many ways to lay courses are tried."""

    room_steps: int
    house_steps: int
    ways: int


QUICK = (Effort(3000, 12000, 24),)  # by what a phone does in a second
THOROUGH = QUICK + (Effort(12000, 60000, 60),)
SECOND_THOUGHTS = (1, 2, 4)  # how often a look may leave what it likes best [-]
LEAST_STEPS, STUCK_STEPS = 60, 2000  # of one look, and of one that must find some way [-]
ROUNDS = 3  # of emptying sheets and laying rooms anew [-]
HOUSE_WAYS = 2  # ways to lay the courses of all rooms that are tried beside the ways of each by itself [-]
OTHER_LINES = 4  # ways to lay a room's courses that are tried beside the other rooms [-]
ORDERS = 4  # in which the stretches of a room are covered, see `orders_of` [-]
TIDYING = 4  # this part of the steps goes into less board and fewer joints at the same count


class Trade:
    """What is the same for all rooms: `stock` lengths and `widths` in rising order, the `shortest` piece, the `least`
    strip [1/80 in]."""

    def __init__(self, stock: list[int], widths: list[int], shortest: int, least: int) -> None:
        self.stock = stock
        self.widths = widths
        self.shortest = shortest
        self.least = least


@dataclass(frozen=True)
class Hung:
    """Pieces in the order they are hung over `courses`; their `course` is its place in that list; `steps` taken; where
    no way was found `pieces` is empty, and `stuck` says why for the `room`: 'reach' or 'apart'."""

    courses: tuple[Course, ...]
    pieces: tuple[Piece, ...]
    steps: int
    stuck: str = ""
    room: int = 0


class Way:
    """One way to lay the courses of one room, ready to search: its stretches in several orders."""

    def __init__(self, frame: Frame, room: int, lines: tuple[int, ...], joists: list[list[int]], trade: Trade) -> None:
        self.courses = courses_of(frame, room, lines)
        self.usable = usable_for(stretches_of(self.courses, joists, trade.stock[-1], trade.shortest), trade)
        whole = stretches_of(self.courses, joists, trade.stock[-1], trade.shortest)
        self.orders = orders_of(whole)
        self.cost = Cost(self.courses, trade.stock, trade.widths)

    def look(self, order: int, taste: int, most: int, thoughts: int, limit: int) -> tuple[list[Piece] | None, int]:
        """Return the pieces of a way with at most `most` sheets, or None, and the steps taken."""
        search = Search(self.orders[order], self.usable, Offcuts(self.usable), Joints(), taste)
        return search.run(most, thoughts, limit), search.steps


def usable_for(stretches: list[Stretch], trade: Trade) -> Usable:
    """Return what pieces over `stretches` can use of a rectangle."""
    lengths: list[int] = []
    depths: list[int] = []
    for one in stretches:
        for length in one.lengths():
            if length not in lengths:
                lengths.append(length)
        for depth in [one.depth] + [box[3] - box[1] for box in one.course.boxes]:
            if depth not in depths:
                depths.append(depth)
    return Usable(trade.stock[-1], trade.widths[-1], lengths, depths)


def orders_of(stretches: list[Stretch]) -> list[list[Stretch]]:
    """Return orders in which stretches may be covered: as they lie, from the far wall, deep ones first, long ones first."""
    found = [stretches, stretches[::-1]]
    deep = sorted(stretches, key=lambda one: (-one.depth, one.key, one.start))
    long = sorted(stretches, key=lambda one: (one.start - one.end, one.key, one.start))
    for order in (deep, long):
        if [one.at for one in order] not in [[one.at for one in known] for known in found]:
            found.append(order)
    return found


def hang_room(frame: Frame, joists: list[int], trade: Trade, effort: Effort, bound: int) -> Hung:
    """Return the best way found to hang one room by itself; `bound` is the count that no way can be under."""
    every = lines_of(frame, trade.widths, trade.least, [])
    looking = _Looking([Way(frame, 0, lines, [joists], trade) for lines in every[: effort.ways]], bound)
    looking.all_ways(NO_GOAL, 0, effort.room_steps)
    if looking.best is None or looking.way is None:
        return _hang_plainly(frame, joists, trade, every, looking.steps)
    for thoughts in SECOND_THOUGHTS:
        looking.all_ways(-1, thoughts, effort.room_steps)
    looking.all_ways(0, 0, looking.steps + effort.room_steps // TIDYING)
    layout = Emptying(looking.way.orders[0], looking.best, looking.way.usable, trade.stock, trade.widths)
    layout.run(bound, max(effort.room_steps - looking.steps, effort.room_steps // TIDYING))
    layout.better(effort.room_steps // TIDYING)
    return Hung(tuple(looking.way.courses), tuple(in_order(layout.pieces())), looking.steps + layout.steps)


class _Looking:
    """Looks at the `ways` of one room; the `best` pieces so far, by which `way`, at which `cost`."""

    def __init__(self, ways: list[Way], bound: int) -> None:
        self.ways = ways
        self.bound = bound
        self.steps = 0
        self.best: list[Piece] | None = None
        self.way: Way | None = None
        self.cost = (NO_GOAL, 0, 0, 0)

    def all_ways(self, more: int, thoughts: int, until: int) -> None:
        """Look at every way in every order and taste while the steps are not above `until`.

        Counts to the best one and `more` are looked for. Where that asks for fewer, the looks end when the bound is met.
        """
        for taste in TASTES:
            for order in range(ORDERS):
                for way in self.ways:
                    met = more < 0 or (more == NO_GOAL and self.best is not None)
                    if self.steps > until or (met and self.cost[0] <= self.bound):
                        return
                    if order >= len(way.orders):
                        continue
                    most = self.cost[0] + (-1 if met else 0)
                    limit = max(LEAST_STEPS, 2 * len(way.orders[0]) * thoughts) if thoughts else NO_GOAL
                    found, taken = way.look(order, taste, most, thoughts, limit)
                    self.steps += taken
                    if found is not None and way.cost.of(found) < self.cost:
                        self.best, self.way, self.cost = found, way, way.cost.of(found)


def _hang_plainly(frame: Frame, joists: list[int], trade: Trade, every: list[tuple[int, ...]], steps: int) -> Hung:
    """A plain way where the search found none, or why there is none."""
    stuck = "reach"
    for lines in every:
        way = Way(frame, 0, lines, [joists], trade)
        found, taken = way.look(0, TASTES[0], NO_GOAL, STUCK_STEPS, STUCK_STEPS)
        steps += taken
        if found is None:
            stretches, why = apart(way.courses, [joists], trade.stock[-1], trade.shortest)
            if why == "apart":
                stuck = why
            if stretches:
                found = Search(stretches, way.usable, Offcuts(way.usable), Joints(), TASTES[0]).run(NO_GOAL, 0, NO_GOAL)
        if found is not None:
            return Hung(tuple(way.courses), tuple(in_order(found)), steps)
    return Hung((), (), steps, stuck)


def in_order(pieces: list[Piece]) -> list[Piece]:
    """Return pieces course by course, each from its near end."""
    return sorted(pieces, key=lambda one: (one.course, one.start))


def hang(frames: list[Frame], joists: list[list[int]], trade: Trade, efforts: tuple[Effort, ...]) -> tuple[Hung, Bound]:
    """Return the best way found to hang all rooms together, and the bound that no way can be under.

    `efforts` are in rising order. A greater one is made beside the lesser ones and not in their place, so that it never
    ends with more sheets.
    """
    bound = least_sheets(frames, joists, trade.stock[-1], trade.widths[-1])
    steps = 0
    courses: list[Course] = []
    pieces: list[Piece] = []
    known: list[tuple[tuple[tuple[int, int, int, int], ...], Hung]] = []
    for room, frame in enumerate(frames):
        alike = [hung for boxes, hung in known if boxes == frame.boxes]
        hung = alike[0] if alike else _room(frame, joists[room], trade, efforts, bound if len(frames) == 1 else None)
        if not alike:
            known.append((frame.boxes, hung))
            steps += hung.steps
        if hung.stuck:
            return Hung((), (), steps, hung.stuck, room), bound
        sheets = _count(pieces)
        for one in hung.pieces:
            place = len(courses) + one.course
            pieces.append(Piece(place, one.start, one.end, one.depth, sheets + one.sheet, one.offset, one.across))
        courses += [Course(room, one.number, one.low, one.high, one.spans, one.boxes) for one in hung.courses]
    best = Hung(tuple(courses), tuple(in_order(pieces)), steps)
    if len(frames) == 1 or _count(pieces) <= bound.sheets:
        return best, bound
    if len(efforts) > 1:
        lesser, _ = hang(frames, joists, trade, efforts[:-1])
        if _count(lesser.pieces) < _count(best.pieces):
            best = Hung(lesser.courses, lesser.pieces, steps)
        steps += lesser.steps
    if _count(best.pieces) > bound.sheets:
        best = _together(frames, joists, trade, efforts[-1], best, bound.sheets)
    return Hung(best.courses, best.pieces, steps + best.steps), bound


def _count(pieces: list[Piece] | tuple[Piece, ...]) -> int:
    """The sheets that pieces are cut from."""
    return max([piece.sheet for piece in pieces] + [-1]) + 1


def _room(frame: Frame, joists: list[int], trade: Trade, efforts: tuple[Effort, ...], bound: Bound | None) -> Hung:
    """One room by itself, with each effort until the bound is met; the least count of them, the first."""
    if bound is None:
        bound = least_sheets([frame], [joists], trade.stock[-1], trade.widths[-1])
    best = hang_room(frame, joists, trade, efforts[0], bound.sheets)
    steps = best.steps
    for effort in efforts[1:]:
        if best.stuck or _count(best.pieces) <= bound.sheets:
            break
        other = hang_room(frame, joists, trade, effort, bound.sheets)
        steps += other.steps
        if _count(other.pieces) < _count(best.pieces):
            best = other
    return Hung(best.courses, best.pieces, steps, best.stuck)


def _together(
    frames: list[Frame], joists: list[list[int]], trade: Trade, effort: Effort, given: Hung, bound: int
) -> Hung:  # fmt: skip
    """All rooms from one stack of sheets, never more of them than `given` has."""
    steps = 0
    longest, shortest = trade.stock[-1], trade.shortest
    courses, pieces = list(given.courses), list(given.pieces)
    sheets = _count(pieces)
    every = [lines_of(frame, trade.widths, trade.least, []) for frame in frames]
    rows = [courses]  # the courses that suit each room by itself, then whole courses first, and so on
    for at in range(HOUSE_WAYS):
        rows.append(
            [one for room, ways in enumerate(every) for one in courses_of(frames[room], room, ways[at % len(ways)])]
        )
    for number, row in enumerate(rows):
        stretches = stretches_of(row, joists, longest, shortest)
        usable = usable_for(stretches, trade)
        for order in orders_of(stretches):
            for taste in TASTES:
                if steps > effort.house_steps * (number + 1) // (2 * len(rows)) or sheets <= bound:
                    break
                search = Search(order, usable, Offcuts(usable), Joints(), taste)
                found = search.run(sheets - 1, 0, effort.house_steps)
                steps += search.steps
                if found is not None:
                    courses, pieces, sheets = row, found, _count(found)
    stretches = stretches_of(courses, joists, longest, shortest)
    layout = Emptying(stretches, pieces, usable_for(stretches, trade), trade.stock, trade.widths)
    share = effort.house_steps // (2 * ROUNDS)
    turn = 0
    for around in range(ROUNDS):
        layout.run(bound, share)
        until = layout.steps + share
        for number in range(len(frames)):
            room = (number + around * len(frames) // ROUNDS) % len(frames)
            strips: list[int] = []
            for one in layout.stretches:
                if one.course.room != room and one.depth < trade.widths[-1] and one.depth not in strips:
                    strips.append(one.depth)
            for lines in lines_of(frames[room], trade.widths, trade.least, strips)[:OTHER_LINES]:
                if len(layout.sheets) <= bound or layout.steps > until:
                    break
                own = courses_of(frames[room], room, lines)
                new = stretches_of(own, joists, longest, shortest, len(courses))
                rest = [one for one in layout.stretches if one.course.room != room]
                other = layout.laid_anew(room, new, usable_for(rest + new, trade), turn)
                turn += 1
                if other is not None:
                    layout = other
                    courses = courses + own
    layout.better(effort.house_steps // TIDYING)
    pieces = in_order(layout.pieces())
    kept = sorted(
        [at for at in range(len(courses)) if at in [piece.course for piece in pieces]],
        key=lambda at: (courses[at].room, courses[at].number),
    )
    place = dict([(at, number) for number, at in enumerate(kept)])
    told = [
        Piece(place[one.course], one.start, one.end, one.depth, one.sheet, one.offset, one.across) for one in pieces
    ]
    return Hung(tuple([courses[at] for at in kept]), tuple(told), steps + layout.steps)
