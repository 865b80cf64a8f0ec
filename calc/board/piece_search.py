"""The search for a way to cover stretches from so many sheets: piece after piece, each taken back where it leads nowhere."""

from dataclasses import dataclass

from calc.board.courses import Course
from calc.board.offcuts import ACROSS, ALONG, Offcuts, Usable, rest_of
from calc.board.stretches import Stretch

NO_GOAL = 10**6  # more sheets than any house
LOOKED_AT_IN_A_STEP = 8  # so many places for a piece looked at are one more step, so that steps and time go together
CHOICES_KEPT = 8  # ways to go on that are remembered at each piece
TIGHT, THRIFTY, LONG = 0, 1, 2  # what is liked best: least lost, offcuts before new sheets, long pieces
TASTES = (TIGHT, THRIFTY, LONG)


@dataclass(frozen=True)
class Piece:
    """One piece: the place of its `course` in the list, where it lies (`start`, `end`), how `depth` deep it is, its
    `sheet`, and where in the sheet it is cut: `offset` along it, `across` from its edge [1/80 in]."""

    course: int
    start: int
    end: int
    depth: int
    sheet: int
    offset: int
    across: int


class Joints:
    """The butt joints that stand, by course."""

    def __init__(self) -> None:
        self.of: dict[int, list[int]] = {}

    def near(self, key: int) -> list[int]:
        """Return the joints of the neighbors of a course."""
        return self.of.get(key - 1, []) + self.of.get(key + 1, [])

    def add(self, key: int, joint: int) -> None:
        """Keep a joint."""
        if key in self.of:
            self.of[key].append(joint)
        else:
            self.of[key] = [joint]

    def drop(self, key: int, joint: int) -> None:
        """Forget a joint."""
        self.of[key].remove(joint)


class Search:
    """One search over `stretches` in their order, from what `offcuts` hold and new sheets; `joints` stand already."""

    def __init__(self, stretches: list[Stretch], usable: Usable, offcuts: Offcuts, joints: Joints, taste: int) -> None:
        self.stretches = stretches
        self.usable = usable
        self.offcuts = offcuts
        self.joints = joints
        self.taste = taste
        self.steps = 0
        self.after = [0] * (len(stretches) + 1)
        for at in range(len(stretches) - 1, -1, -1):
            self.after[at] = self.after[at + 1] + stretches[at].area

    def run(self, most: int, second_thoughts: int, limit: int) -> list[Piece] | None:
        """Return the pieces of the first way found with at most `most` sheets, None where none is found.

        `second_thoughts` is how often the search may leave the way that it likes best. It stops after `limit` steps; what
        `offcuts` and `joints` held stands again when it fails.
        """
        until = self.steps + limit
        thoughts = second_thoughts
        slot, at = 0, self.stretches[0].start
        ways = self.stretches[0].stops(self.joints.near(self.stretches[0].key))
        placed: list[Piece] = []
        stack: list[tuple[object, ...]] = []
        choices = self._choices(slot, at, ways, most)
        index = 0
        while True:
            if index < len(choices) and (index == 0 or thoughts > 0) and self.steps < until:
                stop, kind, begins, first = choices[index]
                self.steps += 1
                stretch = self.stretches[slot]
                depth = stretch.depth_of(at, stop)
                place, done = self.offcuts.cut(kind, begins, stop - at, depth, first)
                stack.append((slot, at, ways, choices, index, thoughts, done))
                placed.append(Piece(stretch.at, at, stop, depth, place[0], place[1], place[2]))
                if index > 0:
                    thoughts -= 1
                if stop == stretch.end:
                    slot += 1
                    if slot == len(self.stretches):
                        return placed
                    at = self.stretches[slot].start
                    ways = self.stretches[slot].stops(self.joints.near(self.stretches[slot].key))
                else:
                    self.joints.add(stretch.key, stop)
                    at = stop
                choices, index = self._choices(slot, at, ways, most), 0
                continue
            if not stack:
                return None
            slot, at, ways, choices, index, thoughts, done = stack.pop()  # type: ignore[assignment]
            piece = placed.pop()
            self.offcuts.undo(done)
            if piece.end != self.stretches[slot].end:
                self.joints.drop(self.stretches[slot].key, piece.end)
            index += 1

    def _choices(
        self, slot: int, at: int, ways: dict[int, list[int]] | None, most: int
    ) -> list[tuple[int, tuple[int, int], bool, int]]:
        """Every next piece (its end, the rectangle it is cut from, whether that is a new sheet, the first cut), the one
        that a good hand would take first."""
        self.steps += 1
        if ways is None:
            return []
        stretch = self.stretches[slot]
        usable, offcuts = self.usable, self.offcuts
        here = stretch.area_from(at)
        spare = offcuts.supply + (most - offcuts.sheets) * usable.whole - self.after[slot + 1] - here
        if spare < 0:
            return []
        sheet = (usable.longest, usable.widest)
        kinds = [(kind, False, usable.area(kind[0], kind[1])) for kind in offcuts.kinds]
        if offcuts.sheets < most:
            kinds.append((sheet, True, usable.whole))
        scored = []
        looked = 0
        for stop in ways[at]:
            length = stop - at
            depth = stretch.depth_of(at, stop)
            covers = here - (stretch.area_from(stop) if stop != stretch.end else 0)
            goes_on = 0 if stop == stretch.end else 1
            for kind, begins, area in kinds:
                if kind[0] < length or kind[1] < depth:
                    continue
                looked += 1
                for first in (ALONG,) if kind[1] == depth else (ACROSS, ALONG):
                    beside, beyond = rest_of(kind, length, depth, first)
                    lost = area - covers - usable.area(beside[0], beside[1]) - usable.area(beyond[0], beyond[1])
                    if lost > spare:
                        continue
                    new = 1 if begins else 0
                    rank: tuple[int, ...] = (lost, new, goes_on)
                    if self.taste == THRIFTY:
                        rank = (new, lost, goes_on)
                    elif self.taste == LONG:
                        rank = (-length, new, lost)
                    scored.append(
                        (rank + (kind[0] * kind[1], -length, kind[0], new, first), (stop, kind, begins, first))
                    )
        self.steps += looked // LOOKED_AT_IN_A_STEP
        scored.sort(key=lambda pair: pair[0])
        return [choice for _, choice in scored[:CHOICES_KEPT]]


class Cost:
    """What a way costs: its count, then strips whose cut edge is at no wall, the board bought in stock sizes, butt joints."""

    def __init__(self, courses: list[Course], stock: list[int], widths: list[int]) -> None:
        self._courses = courses
        self._stock = stock
        self._widths = widths
        last = max([one.high for one in courses])
        inner = [one for one in courses if one.low > 0 and one.high < last and one.high - one.low not in widths]
        self._inner = sum([end - start for one in inner for start, end in one.spans])

    def of(self, placed: list[Piece]) -> tuple[int, int, int, int]:
        """Return (sheets, strips at no wall, area bought, butt joints) in eightieths."""
        sizes = sizes_used(placed)
        bought = 0
        for length, width in sizes:
            bought += least_that_holds(self._stock, length) * least_that_holds(self._widths, width)
        butts = 0
        for piece in placed:
            course = self._courses[piece.course]
            if piece.end not in [end for _, end in course.spans]:
                butts += course.high - course.low
        return len(sizes), self._inner, bought, butts


def least_that_holds(sizes: list[int], used: int) -> int:
    """Return the first of `sizes`, in rising order, that is not under `used`; the last where none is."""
    for size in sizes:
        if size >= used:
            return size
    return sizes[-1]


def sizes_used(placed: list[Piece]) -> list[tuple[int, int]]:
    """Return (length, width) that is cut into of each sheet."""
    found: list[list[int]] = [[0, 0] for _ in range(max([piece.sheet for piece in placed]) + 1)]
    for piece in placed:
        one = found[piece.sheet]
        one[0] = max(one[0], piece.offset + piece.end - piece.start)
        one[1] = max(one[1], piece.across + piece.depth)
    return [(one[0], one[1]) for one in found]
