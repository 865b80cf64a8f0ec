"""The search for a way to hang board with at most so many sheets: piece after piece, each taken back where it leads nowhere."""

from dataclasses import dataclass

from calc.courses import Course

EVERY_WAY = 10**9  # no end of second thoughts
NO_GOAL = 10**6  # more sheets than any house
PIECES_IN_A_STEP = 8  # looking at so many next pieces counts as one more step, so that steps and time go together  # how often a search may leave the way it likes best, wave after wave


@dataclass(frozen=True)
class Piece:
    """One piece: the place of its `course` in the list, where it lies (`start`, `end`), how many lanes of a sheet it takes
    (2 is the whole width, 1 half of it), its `sheet`, and where in the sheet it is cut: at `offset` along, in `lane`."""

    course: int
    start: int
    end: int
    lanes: int
    sheet: int
    offset: int
    lane: int


class Search:
    """One search over `courses` with sheets `longest` long; `joists` says where a joint may lie in a room."""

    def __init__(self, courses: list[Course], joists: list[list[int]], longest: int, shortest: int) -> None:
        self.courses = courses
        self.longest = longest
        self.shortest = shortest
        # every stretch to cover: its course, from, to; and what is still needed from each on
        self.slots = [(at, span[0], span[1]) for at, course in enumerate(courses) for span in course.spans]
        self.after = [0] * (len(self.slots) + 1)
        for at in range(len(self.slots) - 1, -1, -1):
            course, start, end = self.slots[at]
            self.after[at] = self.after[at + 1] + courses[course].need(start, end)
        self.joists = joists
        spans = [end - start for _, start, end in self.slots]
        self.smallest = min(min(spans), shortest)
        self.steps = 0
        self.lengths = self._lengths()
        self._fills: dict[int, int] = {}

    def _lengths(self) -> list[int]:
        """Every length that a piece can have, the longest first."""
        found: list[int] = []
        for at, start, end in self.slots:
            inside = [joist for joist in self.joists[self.courses[at].room] if start < joist < end]
            some = [end - start] if end - start <= self.longest else []
            some += [joist - start for joist in inside] + [end - joist for joist in inside]
            some += [joist - inside[0] for joist in inside[1:]]
            for length in some:
                whole = length == end - start
                if length not in found and length <= self.longest and (whole or length >= self.shortest):
                    found.append(length)
        found.sort(reverse=True)
        return found

    def fill(self, room: int) -> int:
        """Return the most of `room` [1/80 in] along a sheet that pieces of any lengths can use."""
        if room < self.smallest:
            return 0
        known = self._fills.get(room)
        if known is not None:
            return known
        best = 0
        for length in self.lengths:
            if length <= room:
                found = length + self.fill(room - length)
                if found > best:
                    best = found
                    if best == room:
                        break
        self._fills[room] = best
        return best

    def bound(self) -> int:
        """Return the sheets that no way can be under: lane length over that of a sheet, kind of sheet by kind."""
        widths = []
        for course in self.courses:
            if course.width not in widths:
                widths.append(course.width)
        found = 0
        for width in widths:
            need = 0
            for at, start, end in self.slots:
                if self.courses[at].width == width:
                    need += self.courses[at].need(start, end)
            found += -(-need // (2 * self.fill(self.longest)))
        return found

    def run(
        self, most: int, second_thoughts: int, limit: int, polish: int, cost_of: "Cost"
    ) -> tuple[list[Piece] | None, bool]:
        """Look for a way with at most `most` sheets; return the cheapest found and whether every way was looked at.

        Stops after `limit` steps, or `polish` steps after the first find.
        """
        bins: list[list[int]] = []  # of each sheet: what is left in lane one, in lane two, its width
        placed: list[Piece] = []
        joints: list[list[int]] = [[] for _ in self.courses]
        stack: list[list[object]] = []
        best: list[Piece] | None = None
        best_cost = (0, 0)
        slot, at = 0, self.slots[0][1]
        thoughts = second_thoughts
        until = self.steps + limit
        choices = self._choices(slot, at, joints, bins, most)
        index = 0
        dead: dict[tuple[object, ...], bool] = {}
        keys: list[tuple[object, ...]] = []
        all_ways = second_thoughts == EVERY_WAY
        while True:
            if index < len(choices) and (index == 0 or thoughts > 0) and self.steps < until:
                end, sheet, lane, lanes = choices[index]
                self.steps += 1
                if all_ways and index == 0:
                    keys.append(self._state(slot, at, joints, bins))
                stack.append([slot, at, choices, index, thoughts])
                if index > 0:
                    thoughts -= 1
                self._put(slot, at, end, sheet, lane, lanes, bins, placed, joints)
                if end == self.slots[slot][2]:
                    slot += 1
                    if slot == len(self.slots):
                        cost = cost_of.of(placed)
                        if best is None or cost < best_cost:
                            best, best_cost = placed[:], cost
                            until = min(until, self.steps + polish)
                        choices, index = [], 0
                        slot -= 1
                        at = end
                        continue
                    at = self.slots[slot][1]
                else:
                    at = end
                choices, index = self._choices(slot, at, joints, bins, most), 0
                if all_ways and best is None and self._state(slot, at, joints, bins) in dead:
                    choices = []
                continue
            if all_ways and index > 0 and keys:
                dead[keys.pop()] = True
            if not stack:
                return best, self.steps < until
            slot, at, choices, index, thoughts = stack.pop()  # type: ignore[assignment]
            self._take_back(slot, bins, placed, joints)
            if self.steps >= until:
                return best, False
            index += 1

    def _put(
        self, slot: int, start: int, end: int, sheet: int, lane: int, lanes: int,
        bins: list[list[int]], placed: list[Piece], joints: list[list[int]],
    ) -> None:  # fmt: skip
        course = self.slots[slot][0]
        if sheet < 0:
            sheet = len(bins)
            bins.append([self.longest, self.longest, self.courses[course].width])
        one = bins[sheet]
        length = end - start
        if lanes == 2:
            offset = self.longest - min(one[0], one[1])
            left = min(one[0], one[1]) - length
            placed.append(Piece(course, start, end, lanes, sheet, offset, 0))
            # a cut right across ends both lanes at one place
            stack_one, stack_two = one[0], one[1]
            one[0], one[1] = left, left
            one.append(stack_one)
            one.append(stack_two)
        else:
            placed.append(Piece(course, start, end, lanes, sheet, self.longest - one[lane], lane))
            one[lane] -= length
        if end != self.slots[slot][2]:
            joints[course].append(end)

    def _take_back(self, slot: int, bins: list[list[int]], placed: list[Piece], joints: list[list[int]]) -> None:
        piece = placed.pop()
        one = bins[piece.sheet]
        if piece.lanes == 2:
            one[1] = one.pop()
            one[0] = one.pop()
        else:
            one[piece.lane] += piece.end - piece.start
        if piece.end != self.slots[slot][2]:
            joints[piece.course].pop()
        if piece.sheet == len(bins) - 1 and one[0] == self.longest and one[1] == self.longest:
            bins.pop()

    def _choices(
        self, slot: int, at: int, joints: list[list[int]], bins: list[list[int]], most: int
    ) -> list[tuple[int, int, int, int]]:
        """Every next piece (end, sheet or −1 for a new one, lane, lanes), the one a good hand would take first."""
        course_at, _, end = self.slots[slot]
        course = self.courses[course_at]
        need = self.after[slot + 1] + course.need(at, end)
        supply = (most - len(bins)) * 2 * self.fill(self.longest)
        for one in bins:
            supply += self.fill(one[0]) + self.fill(one[1])
        if need > supply:
            return []
        taken = self._neighbor_joints(course_at, joints)
        ends = [
            joist
            for joist in self.joists[course.room]
            if at + self.shortest <= joist <= at + self.longest and joist <= end - self.shortest and joist not in taken
        ]
        if end - at <= self.longest:
            ends.append(end)
        scored = []
        for stop in ends:
            length = stop - at
            lanes = course.lanes(at, stop)
            goes_on = 0 if stop == end else 1
            seen = []
            for sheet, one in enumerate(bins):
                if one[2] != course.width:
                    continue
                for lane in (0, 1) if lanes == 1 and one[0] != one[1] else (0,):
                    room = one[lane] if lanes == 1 else min(one[0], one[1])
                    kind = (one[0], one[1], lane)
                    if room >= length and kind not in seen:
                        seen.append(kind)
                        lost = room - length - self.fill(room - length)
                        scored.append(((lost, 0, goes_on, room, -length, sheet, lane), (stop, sheet, lane, lanes)))
            if len(bins) < most:
                rest = self.longest - length
                lost = rest - self.fill(rest)
                scored.append(((lost, 1, goes_on, self.longest, -length, -1, 0), (stop, -1, 0, lanes)))
        self.steps += len(scored) // PIECES_IN_A_STEP
        scored.sort(key=lambda pair: pair[0])
        return [choice for _, choice in scored]

    def _state(self, slot: int, at: int, joints: list[list[int]], bins: list[list[int]]) -> tuple[object, ...]:
        course = self.slots[slot][0]
        near = sorted([joint for joint in self._neighbor_joints(course, joints) if joint > at])
        left = sorted(
            [
                (one[0], one[1], one[2]) if one[0] < one[1] else (one[1], one[0], one[2])
                for one in bins
                if self.fill(max(one[0], one[1])) > 0
            ]
        )
        return (slot, at, len(bins), tuple(near), tuple(joints[course]), tuple(left))

    def _neighbor_joints(self, course_at: int, joints: list[list[int]]) -> list[int]:
        course = self.courses[course_at]
        found: list[int] = []
        for other in (course_at - 1, course_at + 1):
            if 0 <= other < len(self.courses):
                near = self.courses[other]
                if near.room == course.room and abs(near.number - course.number) == 1:
                    found += joints[other]
        return found


class Cost:
    """What a way costs beyond its count: the board bought in stock lengths, then the length of its butt joints."""

    def __init__(self, courses: list[Course], stock: list[int]) -> None:
        self._courses = courses
        self._stock = stock

    def of(self, placed: list[Piece]) -> tuple[int, int]:
        """Return (area bought, butt joints) in eightieths."""
        bought = sum([width * self.length_bought(length) for width, length in lengths_used(placed, self._courses)])
        butts = 0
        for piece in placed:
            course = self._courses[piece.course]
            if piece.end not in [end for _, end in course.spans]:
                butts += course.high - course.low
        return bought, butts

    def length_bought(self, used: int) -> int:
        """Return the shortest stock length that holds `used`."""
        for length in self._stock:
            if length >= used:
                return length
        return self._stock[-1]


def lengths_used(found: list[Piece], courses: list[Course]) -> list[tuple[int, int]]:
    """Return (width, length used) of each sheet."""
    lengths: list[list[int]] = [[0, 0] for _ in range(max([piece.sheet for piece in found]) + 1)]
    for piece in found:
        one = lengths[piece.sheet]
        one[0] = courses[piece.course].width
        one[1] = max(one[1], piece.offset + piece.end - piece.start)
    return [(one[0], one[1]) for one in lengths]
