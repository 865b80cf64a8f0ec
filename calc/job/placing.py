"""Tasks put one after another onto the working time of a calendar, forward from the first day or backward from the last.

Working time has its own count: position `day × length of a day + minute of the day`, nights and days off left out. Waits
run by the clock: minutes from the opening of the first day, nights and days off with them. Seen backward, each task's
followers are its predecessors, and the calendar is read from its end, so one way of placing serves both.
"""

DAY_CLOCK_MINUTES = 1440
"""Minutes from midnight to midnight."""

NEVER = 10**9
"""A position beyond every calendar [minutes]."""


class Work:
    """The tasks as lists of whole numbers by place: `minutes`, `crew`, `room` (0 where it is busy in none), `most` (the last
    minute of a day at which it may start), and `before`, the (place, minutes to wait) of what has to end first."""

    def __init__(self, day_minutes: int) -> None:
        self.day_minutes = day_minutes
        self.rooms = 1
        self.minutes: list[int] = []
        self.crew: list[int] = []
        self.room: list[int] = []
        self.most: list[int] = []
        self.before: list[list[tuple[int, int]]] = []
        self.behind: list[list[tuple[int, int]]] = []
        self.order: list[int] = []
        self.timed: tuple[list[bool], list[bool]] = ([], [])

    def add(self, minutes: int, crew: int, room: int, in_one_go: bool, before: list[tuple[int, int]]) -> None:
        """Add the next task; what takes no time keeps neither people nor a room busy."""
        self.minutes.append(minutes)
        self.crew.append(crew if minutes else 0)
        self.room.append(room if minutes else 0)
        self.rooms = max(self.rooms, room + 1)
        whole = in_one_go and 0 < minutes <= self.day_minutes
        self.most.append(self.day_minutes - minutes if whole else self.day_minutes)
        self.before.append(before)

    def close(self) -> None:
        """Find what follows each task and an order in which each comes after its predecessors.

        Raises ValueError where tasks wait for each other in a circle.
        """
        count = len(self.minutes)
        self.behind = [[] for _ in range(count)]
        left = [len(one) for one in self.before]
        for at in range(count):
            for one, wait in self.before[at]:
                self.behind[one].append((at, wait))
        found = [at for at in range(count) if left[at] == 0]
        for at in found:
            for one, _ in self.behind[at]:
                left[one] -= 1
                if left[one] == 0:
                    found.append(one)
        if len(found) < count:
            raise ValueError("tasks wait for each other in a circle")
        self.order = found
        self.timed = (self._timed(self.behind), self._timed(self.before))

    def _timed(self, followers: list[list[tuple[int, int]]]) -> list[bool]:
        """For each task whether the clock says when its `followers` can start: after a wait, or where one takes no time."""
        found = []
        for at, behind in enumerate(followers):
            timed = self.minutes[at] == 0
            for one, wait in behind:
                timed = timed or wait > 0 or self.minutes[one] == 0
            found.append(timed)
        return found


class Placed:
    """What was placed: `starts` and `ends` (positions), `clocks` (of what takes no time), the `last` clock of all."""

    def __init__(self, starts: list[int], ends: list[int], clocks: list[int], last: int) -> None:
        self.starts = starts
        self.ends = ends
        self.clocks = clocks
        self.last = last


class Frame:
    """`work` on the days of `is_open` (one truth a calendar day), forward, or backward from the last of these days, which
    has to be a working day."""

    def __init__(self, work: Work, is_open: list[bool], backward: bool) -> None:
        self.work = work
        self.length = work.day_minutes
        before = work.behind if backward else work.before
        self.behind = work.before if backward else work.behind
        self.timed = work.timed[1 if backward else 0]
        self.before_each = [len(one) for one in before]
        self.order = list(work.order)
        self.is_open = list(is_open)
        if backward:
            self.order.reverse()
            self.is_open.reverse()
        self.following: list[int] = []  # by calendar day the place of the first working day from it on
        self.opens: list[int] = []  # by working day the clock at which it opens
        for at, one in enumerate(self.is_open):
            self.following.append(len(self.opens))
            if one:
                self.opens.append(at * DAY_CLOCK_MINUTES)

    def position(self, clock: int) -> int:
        """Return the first position of work [minutes] from `clock` [minutes] on; NEVER where the calendar has ended."""
        day = clock // DAY_CLOCK_MINUTES
        if day >= len(self.following):
            return NEVER
        at = self.following[day] * self.length
        if self.is_open[day]:
            at += min(self.length, clock % DAY_CLOCK_MINUTES)
        return at

    def visit(self, clock: int) -> tuple[int, int]:
        """Return (position, clock) of the first moment from `clock` [minutes] on that lies in a working day, its end with it."""
        day = clock // DAY_CLOCK_MINUTES
        if day < len(self.following) and self.is_open[day] and clock % DAY_CLOCK_MINUTES <= self.length:
            return self.following[day] * self.length + clock % DAY_CLOCK_MINUTES, clock
        at = self.position(clock)
        return (at, self.opens[at // self.length]) if at < len(self.opens) * self.length else (NEVER, NEVER)

    def clock(self, end: int) -> int:
        """Return the clock [minutes] at which work ends at position `end` [minutes, 1 and up]; NEVER where the calendar has ended."""
        day = (end - 1) // self.length
        return self.opens[day] + end - day * self.length if day < len(self.opens) else NEVER

    def place(self, people: int, rank: list[int], window: int, latest: list[int], begin: int) -> Placed | None:
        """Place all tasks for so many `people`, none before position `begin` of the first day; None where one cannot start by
        its `latest`.

        At each step the tasks whose predecessors are placed are looked at. Of those that can start within `window` [minutes]
        of the first that can, the one of the least `rank` is taken.
        """
        work, length, behind, timed = self.work, self.length, self.behind, self.timed
        minutes, crews, rooms, most = work.minutes, work.crew, work.room, work.most
        following, is_open, a_day = self.following, self.is_open, DAY_CLOCK_MINUTES
        count = len(minutes)
        left = list(self.before_each)
        due = [begin] * count  # for what takes no time
        ready = [begin] * count  # no start is before it; at last, the start
        ends = [begin] * count
        clocks = [begin] * count
        free = [begin] * (people + 1)  # by a number of people the position from which so many are free
        free[0] = 0
        room_free = [0] * work.rooms
        eligible = [at for at in self.order if left[at] == 0]
        for at in eligible:
            if minutes[at] == 0:
                ready[at], clocks[at] = self.visit(begin)
        for _ in range(count):
            least = limit = best = NEVER
            chosen = eligible[0]
            for task in eligible:
                at = ready[task]
                if at <= limit:
                    other = free[crews[task]]
                    if other > at:
                        at = other
                    other = room_free[rooms[task]]
                    if other > at:
                        at = other
                    if at % length > most[task]:
                        at += length - at % length
                    if at > latest[task]:
                        return None
                    ready[task] = at
                    if at < least:
                        least = at
                        limit = at + window
                        best = rank[task]
                        chosen = task
                    elif at == least and rank[task] < best:
                        best = rank[task]
                        chosen = task
            if window:
                for task in eligible:
                    if ready[task] <= limit and rank[task] < best:
                        best = rank[task]
                        chosen = task
            eligible.remove(chosen)
            start = ready[chosen]
            end = start + minutes[chosen]
            ends[chosen] = end
            if end > start:
                if rooms[chosen]:
                    room_free[rooms[chosen]] = end
                crew = crews[chosen]
                if crew:  # of those free by the start, those who were busy longest are kept busy
                    at = 1
                    while at + crew <= people and free[at + crew] <= start:
                        at += 1
                    while at + crew <= people and free[at + crew] < end:
                        free[at] = free[at + crew]
                        at += 1
                    for one in range(at, at + crew):
                        free[one] = end
            if timed[chosen]:
                clock = self.clock(end) if end > start else clocks[chosen]
                for task, wait in behind[chosen]:
                    left[task] -= 1
                    if minutes[task]:  # as in `position`
                        day = (clock + wait) // a_day
                        if day >= len(following):
                            return None
                        at = following[day] * length
                        if is_open[day]:
                            at += min(length, clock + wait - day * a_day)
                        if at > ready[task]:
                            ready[task] = at
                    else:
                        due[task] = max(due[task], clock + wait)
                        if left[task] == 0:
                            ready[task], clocks[task] = self.visit(due[task])
                    if left[task] == 0:
                        eligible.append(task)
            else:
                for task, _ in behind[chosen]:
                    left[task] -= 1
                    if end > ready[task]:
                        ready[task] = end
                    if left[task] == 0:
                        eligible.append(task)
        return Placed(ready, ends, clocks, self._last(ends, clocks))

    def alone(self, begin: int) -> Placed | None:
        """Place each task as early as its predecessors let it, as if there were people for all of them at once, from position
        `begin` of the first day on; None where the calendar ends before."""
        work, length = self.work, self.length
        count = len(work.minutes)
        due = [begin] * count
        starts, ends, clocks = [0] * count, [0] * count, [0] * count
        for task in self.order:
            if work.minutes[task]:
                at = self.position(due[task])
                if at % length > work.most[task]:
                    at += length - at % length
                end = at + work.minutes[task]
                clock = self.clock(end)
            else:
                at, clock = self.visit(due[task])
                end = at
            if clock == NEVER:
                return None
            starts[task], ends[task] = at, end
            if end == at:
                clocks[task] = clock
            for one, wait in self.behind[task]:
                if clock + wait > due[one]:
                    due[one] = clock + wait
        return Placed(starts, ends, clocks, self._last(ends, clocks))

    def _last(self, ends: list[int], clocks: list[int]) -> int:
        """The last clock of all: what ends work, or takes no time."""
        return max(max(clocks), self.clock(max(ends)) if max(ends) else 0)
