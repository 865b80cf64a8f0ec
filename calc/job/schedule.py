"""A plan of days for the tasks of a job, in as few working days as are found.

How it is counted, in plain words:

- Work is done on working days only, from the opening of the day for so many minutes. There is no lunch: a day of 8 hours
  from 8:00 ends at 16:00. A break is taken off the day's length by whoever sets it.
- A task keeps its crew busy from its start to its end. There are never more people at work than there are.
- In one room one task is done at a time, unless this rule is turned off. A task of the whole house keeps no room busy.
- A task starts after each task that it waits for has ended, and after the wait that goes with it. Waits run by the clock:
  nights, weekends and days off count, as compound dries on them too.
- What is done in one go starts and ends on one day. Anything else may be left overnight and goes on first thing on the next
  working day. No task is left for another. What is longer than a working day always runs over nights.
- What takes no time (a visit, a hold point) falls within a working day, its first and last minute with it. It keeps nobody.

A bound says what no plan can beat: the longest chain of tasks and waits on this calendar, and the work that must lie between
two moments against the people there. From these days on a plan is looked for, then with one day more, and so on: tasks are
placed one after another, the most pressing first, by turns from the first day on and from the last day back; where one comes
too late, all is placed again by weights that are a little off. Only where both meet are the days told as the fewest.
"""

from dataclasses import dataclass

from calc.job.bound import cannot_be_done
from calc.job.calendar import weekday
from calc.job.placing import DAY_CLOCK_MINUTES, NEVER, Frame, Placed, Work

EFFORT_AT_FIRST = 40_000
"""Over the square of the tasks, so many plans are placed for one goal of days, for each way to share the work: what a plan
takes to place grows by that."""

EFFORT_FOR_DAYS = 160_000
"""So many where none of these keeps the goal by then, and as many by each smaller number of people."""

EFFORT_FOR_AN_END = 30_000
"""So many for an earlier end on the last day."""

FEWEST_PLANS = 6
"""As many plans are placed for a goal at least."""

SHAKEN = 1
"""What presses is off by up to so many working days, task by task,"""

SHAKEN_ROOM = 2
"""and by up to so many, room by room."""

STIR = 75
STIRRED = 65537
"""Numbers without a pattern, the same each time: the last one times 75, over 65537, what is left."""

WINDOWS = (0, 0, 1, 0, 0, 3)
"""In turns the most pressing task may be waited for by none, by a quarter or by three quarters of a day."""

QUARTERS = 4
"""Of a working day."""


@dataclass(frozen=True)
class Task:
    """One task: its `room` (0 and up, -1 for the whole house), the `minutes` that it takes its `crew` (0 and up both), the
    tasks that it comes `after`, each as (id, minutes to wait by the clock), and whether it is done `in_one_go`."""

    id: str
    room: int
    minutes: int
    crew: int
    after: tuple[tuple[str, int], ...] = ()
    in_one_go: bool = False


@dataclass(frozen=True)
class Calendar:
    """The days of work: the first day on which work may be done, `start_day` [days from 1970-01-01]; the day's length
    `day_minutes` [1 to 1439] from `day_start_minute` [after midnight] on; the weekdays worked on, Monday first; the
    `days_off` as day numbers."""

    start_day: int
    day_minutes: int
    day_start_minute: int
    works_on: tuple[bool, ...]
    days_off: tuple[int, ...] = ()


@dataclass(frozen=True)
class PlacedTask:
    """When the task of this id is done: day numbers, and minutes after midnight."""

    id: str
    start_day: int
    start_minute: int
    end_day: int
    end_minute: int


@dataclass(frozen=True)
class Schedule:
    """The tasks by their start; `days` working days from the first that may be worked on to the last end, both with;
    no plan takes fewer than `least_days`, and `proved_fewest` where these are the same."""

    placed: tuple[PlacedTask, ...]
    days: int
    least_days: int
    proved_fewest: bool


def schedule(tasks: tuple[Task, ...], calendar: Calendar, people: int, one_task_a_room: bool = True) -> Schedule:
    """Return a plan of `tasks` for `people` [1 and up, no fewer than any crew].

    The days are the fewest that were found; then the end is the earliest that was found. More people never make it more days.
    Raises ValueError where tasks wait for each other in a circle or for a task that is not there, where a crew is larger
    than the people, and where no weekday is worked on.
    """
    return shortest((tasks,), calendar, people, one_task_a_room)


def shortest(
    shares: tuple[tuple[Task, ...], ...], calendar: Calendar, people: int, one_task_a_room: bool = True
) -> Schedule:
    """Return a plan of one of `shares`: the same work, shared among the people in different ways. As in `schedule` for one."""
    if not shares[0]:
        return Schedule((), 0, 0, True)
    teams = []
    for tasks in shares:
        largest = max([one.crew for one in tasks])
        if largest > people or people < 1 or True not in calendar.works_on:
            raise ValueError("no people or no days for this work")
        work = _work_of(tasks, calendar, one_task_a_room)
        useful = max(1, largest, min(people, sum(work.crew)))
        teams.append(_Teams(tasks, work, _open_days(work, calendar), useful, max(1, largest)))
    least = min([one.searches[0].least for one in teams])
    days = least
    while True:
        for effort in (EFFORT_AT_FIRST, EFFORT_FOR_DAYS):
            for team in teams:
                for search in team.for_days(days, effort == EFFORT_FOR_DAYS):
                    found = search.reach(days, effort)
                    if found is not None:
                        return _told(team, search, search.earlier(found), calendar, least)
        days += 1


def _told(team: "_Teams", search: "_Search", found: Placed, calendar: Calendar, least: int) -> Schedule:
    opens = calendar.start_day * DAY_CLOCK_MINUTES + calendar.day_start_minute
    length = calendar.day_minutes
    rows = []
    for at, one in enumerate(team.tasks):
        start = end = found.clocks[at]
        if one.minutes:
            start = search.forward.opens[found.starts[at] // length] + found.starts[at] % length
            end = search.forward.clock(found.ends[at])
        rows.append((start, end, at, one.id))
    rows.sort()
    placed = [_placed(one, start + opens, end + opens, calendar.day_start_minute) for start, end, _, one in rows]
    days = search.days_of(found)
    return Schedule(tuple(placed), days, least, days == least)


def _placed(name: str, start: int, end: int, opening: int) -> PlacedTask:
    start_day = (start - opening) // DAY_CLOCK_MINUTES
    end_day = (end - opening) // DAY_CLOCK_MINUTES
    return PlacedTask(
        name, start_day, start - start_day * DAY_CLOCK_MINUTES, end_day, end - end_day * DAY_CLOCK_MINUTES
    )


def _work_of(tasks: tuple[Task, ...], calendar: Calendar, one_task_a_room: bool) -> Work:
    work = Work(calendar.day_minutes)
    place = dict([(one.id, at) for at, one in enumerate(tasks)])
    for one in tasks:
        before = []
        for name, wait in one.after:
            if name not in place:
                raise ValueError("a task waits for one that is not there")
            before.append((place[name], wait))
        room = one.room + 1 if one_task_a_room else 0
        work.add(one.minutes, one.crew, room, one.in_one_go, before)
    work.close()
    return work


def _open_days(work: Work, calendar: Calendar) -> list[bool]:
    """Return for each day from the first on whether it is worked on: as many as a plan of one task after another can take."""
    needed = 2 * sum(work.minutes) // calendar.day_minutes + 2
    for before in work.before:
        longest = max([wait for _, wait in before]) if before else 0
        if longest:
            needed += longest // DAY_CLOCK_MINUTES + 2
    found: list[bool] = []
    day = calendar.start_day
    while needed > 0:
        one = calendar.works_on[weekday(day)] and day not in calendar.days_off
        found.append(one)
        if one:
            needed -= 1
        day += 1
    return found


class _Teams:
    """The searches for plans of the same work: by all the `people`, and by fewer of them down to the `largest` crew."""

    def __init__(self, tasks: tuple[Task, ...], work: Work, is_open: list[bool], people: int, largest: int) -> None:
        self.tasks = tasks
        self.work = work
        self.is_open = is_open
        self.largest = largest
        self.searches = [_Search(work, is_open, people)]

    def for_days(self, days: int, fewer: bool) -> list["_Search"]:
        """Return those that are not known to take more than `days`; those of fewer people only once `fewer` are asked for."""
        last = self.searches[-1]
        while fewer and last.least <= days and last.people > self.largest:
            last = _Search(self.work, self.is_open, last.people - 1)
            self.searches.append(last)
        return [one for one in self.searches if one.least <= days]


class _Search:
    """The search for a plan of `people`; none takes fewer than `least` days."""

    def __init__(self, work: Work, is_open: list[bool], people: int) -> None:
        self.work = work
        self.people = people
        self.is_open = is_open
        self.length = work.day_minutes
        self.forward = Frame(work, is_open, False)
        heads = self.forward.alone(0)
        if heads is None:
            raise ValueError("the calendar ends before the work")
        self.heads = heads
        self.free = [NEVER] * len(work.minutes)
        self.goal = _Goal(self, self.days_of(heads), self.length)
        while self.goal.out_of_reach():
            self.goal = _Goal(self, self.goal.days + 1, self.length)
        self.least = self.goal.days
        self.first: Placed | None = None

    def days_of(self, found: Placed) -> int:
        """Return the working days from the first on until the last of `found` ends."""
        return self.forward.following[found.last // DAY_CLOCK_MINUTES] + 1

    def in_order(self, rank: list[int], window: int) -> Placed:
        """Return a plan placed forward by `rank`, however late it ends."""
        found = self.forward.place(self.people, rank, window, self.free, 0)
        if found is None:
            raise ValueError("the calendar ends before the work")
        return found

    def reach(self, days: int, effort: int) -> Placed | None:
        """Return a plan of so many `days`, or None where none is found by an `effort` [plans over the square of the tasks]."""
        if self.first is None:
            self.first = self.in_order(self.goal.latest[0], 0)
            self.goal.tried = 1  # for the least days, that was the first
        if self.days_of(self.first) <= days:
            return self.first
        if days > self.goal.days:
            self.goal = _Goal(self, days, self.length)
        return self.goal.reach(effort)

    def earlier(self, best: Placed) -> Placed:
        """Return the plan that ends the earliest, of `best` and what is found."""
        found: Placed | None = best
        while found is not None:
            best = found
            end = best.last % DAY_CLOCK_MINUTES - 1
            found = _Goal(self, self.days_of(best), end).reach(EFFORT_FOR_AN_END) if end > 0 else None
        return best


class _Goal:
    """All tasks done in so many `days`, no fewer, by minute `end` of the last of them: what is found for one goal then hangs on no
    other search, so that neither more people nor another way to share the work is ever more days."""

    def __init__(self, search: _Search, days: int, end: int) -> None:
        self.search = search
        self.days = days
        self.begin = search.length - end
        self.tried = 0
        opens = search.forward.opens[days - 1]
        self.opens = opens
        self.clock = opens + end
        self.backward = Frame(search.work, search.is_open[: opens // DAY_CLOCK_MINUTES + 1], True)
        self.tails = self.backward.alone(self.begin)
        self.whole = days * search.length
        self.latest: tuple[list[int], list[int]] = ([], [])
        if self.tails is not None:
            self.latest = (
                [self.whole - one for one in self.tails.ends],
                [self.whole - one for one in search.heads.ends],
            )

    def out_of_reach(self) -> bool:
        """Return whether no plan keeps the goal for sure."""
        if self.tails is None:
            return True
        search = self.search
        return cannot_be_done(search.work, search.people, search.heads, [self.whole - one for one in self.tails.starts])

    def reach(self, effort: int) -> Placed | None:
        """Return a plan that keeps the goal, or None where none is found by an `effort`; what was tried before counts."""
        if self.tails is None:
            return None
        search = self.search
        plans = max(FEWEST_PLANS, effort // len(search.free) // len(search.free))
        while self.tried < plans:
            side = self.tried % 2
            turn = self.tried // 2
            frame = self.backward if side else search.forward
            window = search.length * WINDOWS[turn % len(WINDOWS)] // QUARTERS
            rank = self._shaken(self.latest[side], self.tried) if turn else self.latest[side]
            self.tried += 1
            found = frame.place(search.people, rank, window, self.latest[side], self.begin if side else 0)
            if found is not None and side:
                found = self._from_the_first_day(found)
            if found is not None and self.opens <= found.last <= self.clock:
                return found
        return None

    def _shaken(self, latest: list[int], turn: int) -> list[int]:
        """Return other weights, the same for the same turn."""
        length = self.search.length
        rooms = []
        number = turn
        for _ in range(self.search.work.rooms):
            number = number * STIR % STIRRED
            rooms.append(number % (length * SHAKEN_ROOM))
        found = []
        for at, room in enumerate(self.search.work.room):
            number = number * STIR % STIRRED
            found.append(latest[at] - rooms[room] - number % (length * SHAKEN))
        return found

    def _from_the_first_day(self, found: Placed) -> Placed:
        """Return a plan placed forward in the order of one placed backward; nothing starts later in it."""
        keys = [(-found.ends[task], at, task) for at, task in enumerate(self.search.work.order)]
        keys.sort()
        rank = [0] * len(keys)
        for at, one in enumerate(keys):
            rank[one[2]] = at
        return self.search.in_order(rank, len(self.search.forward.opens) * self.search.length)
