"""The days of a plan: which work falls on which day, for the shorter and for the longer hours."""

from dataclasses import dataclass

from calc.core.fields import Values, entries
from calc.job.calendar import day_of_iso, iso_of_day, weekday
from calc.job.labor import MINUTES_PER_HOUR, Asked, Work, tasks_of
from calc.job.plan_inputs import WORKS_ON
from calc.job.schedule import Calendar, shortest
from calc.text.door import say

MONDAY = 4  # a Monday [days from 1970-01-01]: where no first day is given, days are counted from one
OPENS_MIN = 480  # the day of work begins at 8:00 [minutes after midnight], common practice
HANDS = (1, 2)  # people who work in one room together: both are tried, the shorter plan holds [-]


@dataclass(frozen=True)
class Slot:
    """One piece of work as it falls: `work` is its place, from `start` to `end`, each (day number, minutes after midnight)."""

    work: int
    start: tuple[int, int]
    end: tuple[int, int]


@dataclass(frozen=True)
class Days:
    """A plan: its `slots` by their start, the `working_days` with work of one's own people on them [day], `first_day` and `last_day`
    [days from 1970-01-01], and whether no plan of these hours, one or two people in a
    room, ends in fewer days, `fewest`."""

    slots: tuple[Slot, ...]
    working_days: int
    first_day: int
    last_day: int
    fewest: bool


def calendar_of(values: Values) -> Calendar:
    """Return the calendar that the inputs of a plan describe."""
    start = day_of_iso(values.choice("start_day"))
    off = [day_of_iso(one) for one in entries(values.choice("days_off"))]
    return Calendar(
        MONDAY if start is None else start,
        values.count("hours_per_day") * MINUTES_PER_HOUR,
        OPENS_MIN,
        dict(WORKS_ON)[values.choice("work_week")],
        tuple([day for day in off if day is not None]),
    )


def days_of(works: tuple[Work, ...], which: int, asked: Asked, calendar: Calendar, people: int) -> Days:
    """Return the plan of `works` by the least or the most hours, `which` LEAST or MOST, for `people` [-].

    One and two people in a room are tried; the plan that ends on the earlier day holds.
    """
    shares = tuple([tasks_of(works, which, asked, people, hands) for hands in HANDS if hands <= people])
    best = shortest(shares, calendar, people)
    slots = tuple(
        [Slot(int(one.id), (one.start_day, one.start_minute), (one.end_day, one.end_minute)) for one in best.placed]
    )
    return Days(
        slots,
        len(busy_days(slots, works, calendar)),
        slots[0].start[0],
        max([one.end[0] for one in slots]),
        best.proved_fewest,
    )


def busy_days(slots: tuple[Slot, ...], works: tuple[Work, ...], calendar: Calendar) -> tuple[int, ...]:
    """Return the days [days from 1970-01-01] on which one's own people are at work, in order."""
    found: list[int] = []
    for slot in slots:
        if slot.start == slot.end:
            continue
        for day in range(slot.start[0], slot.end[0] + 1):
            if works_on(day, calendar) and day not in found:
                found.append(day)
    found.sort()
    return tuple(found)


def works_on(day: int, calendar: Calendar) -> bool:
    """Return whether `day` [days from 1970-01-01] is worked on."""
    return calendar.works_on[weekday(day)] and day not in calendar.days_off


def day_name(day: int, dated: bool, first: int) -> str:
    """Return a day as it is told: 'Mon 2027-03-15', or 'day 3, Wed' counted from `first`, where no date was given."""
    short = (
        say("weekday.mon", "Mon"), say("weekday.tue", "Tue"), say("weekday.wed", "Wed"), say("weekday.thu", "Thu"),
        say("weekday.fri", "Fri"), say("weekday.sat", "Sat"), say("weekday.sun", "Sun"),
    )[weekday(day)]  # fmt: skip
    if dated:
        return short + " " + iso_of_day(day)
    return say("plan.day", "Day {count} ({weekday})", count=str(day - first + 1), weekday=short)
