"""The drawing of a plan: a bar a room by day, drying hatched, hold points marked."""

from fractions import Fraction

from calc.core.drawing import Drawing, Label, Shape
from calc.job.calendar import WEEK, weekday
from calc.job.days import OPENS_MIN, Days, day_name
from calc.job.labor import Work
from calc.job.schedule import Calendar
from calc.job.stage import phase_told
from calc.numbers import words
from calc.text.door import say

ROW, BAR, TOP = Fraction(12), Fraction(7), Fraction(2)  # of the drawing
CHART_WIDTH = Fraction(100)
NAME_LETTERS = 12  # of a room's name beside its row
FEW_DAYS = 5  # so many days are named one by one
WEEKS_NAMED = 4  # so many weeks are named one by one
MINUTES_PER_DAY = 1440


def chart(
    days: Days, works: tuple[Work, ...], waits: dict[int, int], rooms: tuple[str, ...], calendar: Calendar, dated: bool
) -> Drawing:
    """Return the plan as a drawing; `waits` are the minutes [min] of the clock that pass after a work, by its place; `rooms` are
    the names of the rooms; `dated` where a first day was given."""
    last = days.last_day
    for slot in days.slots:
        end = slot.end[0] * MINUTES_PER_DAY + slot.end[1] + waits.get(slot.work, 0)
        if [one for one in works if slot.work in [before for before, _ in one.after]]:
            last = max(last, min(end // MINUTES_PER_DAY, days.last_day))
    count = last - days.first_day + 1
    day_width = CHART_WIDTH / count
    names = (say("plan.house", "House"),) + rooms
    height = ROW * len(names)
    shapes = []
    for day in range(count):  # days without work are hatched paper
        number = days.first_day + day
        if not (calendar.works_on[weekday(number)] and number not in calendar.days_off):
            shapes.append(_box(day * day_width, (day + 1) * day_width, Fraction(0), height, "none", "void", True))

    def at(moment: tuple[int, int]) -> Fraction:
        part = Fraction(moment[1] - OPENS_MIN, calendar.day_minutes)
        part = Fraction(0) if part < 0 else Fraction(1) if part > 1 else part
        return (moment[0] - days.first_day + part) * day_width

    holds = []
    for slot in days.slots:
        room = works[slot.work].room
        foot = height - (room + 2) * ROW + (ROW - BAR) / 2
        left, right = at(slot.start), at(slot.end)
        if slot.work in waits:
            clock = slot.end[0] * MINUTES_PER_DAY + slot.end[1] + waits[slot.work]
            until = min(at((clock // MINUTES_PER_DAY, clock % MINUTES_PER_DAY)), CHART_WIDTH)
            if until > right:
                shapes.append(_box(right, until, foot + BAR / 4, foot + BAR * 3 / 4, "edge", "compound", True))
        if right > left:
            shapes.append(_box(left, right, foot, foot + BAR, "edge", "solid", False))
        else:
            holds.append((left, foot + BAR / 2))
    for x, y in holds:
        half = BAR / 2
        shapes.append(Shape(((x - half, y), (x, y - half), (x + half, y), (x, y + half)), "cut", "none", False))
    labels = [
        Label((Fraction(0), height - (row + Fraction(1, 2)) * ROW), "before", words.cut(name[:NAME_LETTERS]))
        for row, name in enumerate(names)
    ]
    step = 1 if count <= FEW_DAYS else WEEK if count <= WEEK * WEEKS_NAMED else 2 * WEEK
    for day in range(0, count, step):
        shapes.append(_box(day * day_width, day * day_width, Fraction(0), height + TOP, "edge", "none", True))
        labels.append(
            Label((day * day_width, height + TOP * 2), "after", day_label(days.first_day + day, dated, days.first_day))
        )
    told = [
        names[works[slot.work].room + 1]
        + ", "
        + words.lower(phase_told(works[slot.work].stage))
        + ": "
        + day_name(slot.start[0], dated, days.first_day)
        for slot in days.slots
    ]
    return Drawing(
        title=say("plan.chart.title", "The job by day"),
        description=say("plan.chart.told", "One row a room. {rows}.", rows="; ".join(told)),
        width=CHART_WIDTH,
        height=height + TOP * 4,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=(),
        labels=tuple(labels),
        scale_note=say(
            "plan.chart.note",
            "By the longer hours. Solid is work, hatched is drying or waiting, a diamond is a hold point or a visit. Each day from 8:00.",
        ),
    )


def day_label(day: int, dated: bool, first: int) -> str:
    """Return a day as short as the chart has it: '03-15' of a date, or 'day 3'."""
    if dated:
        return day_name(day, True, first)[-len("03-15") :]
    return say("plan.day.short", "day {count}", count=str(day - first + 1))


def _box(left: Fraction, right: Fraction, foot: Fraction, top: Fraction, weight: str, hatch: str, old: bool) -> Shape:
    return Shape(((left, foot), (right, foot), (right, top), (left, top)), weight, hatch, old)
