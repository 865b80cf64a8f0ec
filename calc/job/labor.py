"""The work of a job: what each stage takes in each room, in which order, and what has to pass in between."""

from dataclasses import dataclass
from fractions import Fraction

from calc.job.room_air import Dries
from calc.job.schedule import Task
from calc.job.stage import HOUSE, YOU, Stage
from calc.job.stages import stages_of
from calc.job.waits import wait
from calc.numbers.exact import total
from calc.rooms.rooms import Room

LEAST, MOST = 0, 1
"""Which end of a range is meant."""
UNIT_OF_WORK = 100  # what the minutes of a row are for: 100 sq ft, or 100 ft of edge [sq ft or ft]
STEP_MIN = 15  # work is planned in quarters of an hour [min]
MINUTES_PER_HOUR = 60
HOURS_PER_DAY = 24
HIGH_FT, HIGH_PCT = (
    Fraction(10),
    Fraction(40),
)  # board over this height takes this much more [ft], [%]; a trade association's article
HIGH_WORK = ("hang", "furring", "tiles")


@dataclass(frozen=True)
class Asked:
    """What a job's work goes by: the `rooms`, their `height_ft` [ft], how often `coats` and `paint_coats` [-] are laid, whether
    the asbestos question is `settled`, what `dries` how fast in each room, the `laboratory_days` [day],
    least and most, and one's own `pace` [-] against the book's minutes."""

    way: str
    rooms: tuple[Room, ...]
    height_ft: Fraction
    coats: int
    paint_coats: int
    settled: bool
    dries: tuple[Dries, ...]
    laboratory_days: tuple[int, int]
    pace: Fraction


@dataclass(frozen=True)
class Work:
    """One stage in one room, or -1 for the house; `nth` of `times` where it is done more than once; `minutes` [min] of one person,
    least and most, as the rows give them; `after` are (place of the work that goes before, its wait) pairs."""

    stage: Stage
    room: int
    nth: int
    times: int
    minutes: tuple[Fraction, Fraction]
    after: tuple[tuple[int, str], ...]


def works_of(asked: Asked) -> tuple[Work, ...]:
    """Return all work of the job in the order of its stages. Raises KeyError where there is no such way."""
    found: list[Work] = []
    last: list[tuple[tuple[int, str], ...]] = [() for _ in asked.rooms]
    ceilings = [room.ceiling_area_sqft() for room in asked.rooms]
    edges = [room.perimeter_ft() for room in asked.rooms]
    for stage in stages_of(asked.way):
        times = times_of(stage, asked)
        amounts = edges if stage.goes_by == "takeoff perimeter_ft" else ceilings
        for nth in range(times):
            if stage.where == HOUSE:
                before: tuple[tuple[int, str], ...] = ()
                for one in last:
                    before += tuple([pair for pair in one if pair not in before])
                found.append(Work(stage, -1, nth, times, minutes_of(stage, total(amounts), asked), before))
                last = [((len(found) - 1, stage.then),) for _ in asked.rooms]
            else:
                for at, amount in enumerate(amounts):
                    found.append(Work(stage, at, nth, times, minutes_of(stage, amount, asked), last[at]))
                    last[at] = ((len(found) - 1, stage.then),)
    return tuple(found)


def times_of(stage: Stage, asked: Asked) -> int:
    """Return how often the stage is done [-]: none for what is settled already, and where nobody of the job paints."""
    if stage.id == "samples" and asked.settled:
        return 0
    if stage.id == "prime" and not asked.paint_coats:
        return 0
    if stage.times == "coats":
        return asked.coats
    return asked.paint_coats if stage.times == "paint_coats" else 1


def minutes_of(stage: Stage, amount: Fraction, asked: Asked) -> tuple[Fraction, Fraction]:
    """Return the least and the most minutes of one person [min] that the stage takes for `amount` of ceiling [sq ft] or of
    edge [ft], whichever it goes by.

    Source: the stage's own; what is hung over 10 ft takes 40 % more, as a trade association's article has it.
    """
    hundreds = amount / UNIT_OF_WORK
    factor = asked.pace
    if _is_high(stage, asked):
        factor = factor * (1 + HIGH_PCT / 100)
    each, more = stage.each_min, stage.per_100_min
    return factor * (each[LEAST] + more[LEAST] * hundreds), factor * (each[MOST] + more[MOST] * hundreds)


def high_work(asked: Asked, works: tuple[Work, ...]) -> bool:
    """Return whether some of `works` takes longer for its height."""
    return bool([one for one in works if _is_high(one.stage, asked)])


def _is_high(stage: Stage, asked: Asked) -> bool:
    return stage.id in HIGH_WORK and asked.height_ft > HIGH_FT


def wait_minutes(name: str, which: int, asked: Asked, room: int) -> int:
    """Return the least (`which` LEAST) or the most minutes on the clock [min] of the wait called `name`, '' for none, in the room at
    that place, or -1 until the last room has waited; rounded up to quarters of an hour."""
    if not name:
        return 0
    one = wait(name)
    hours = Fraction((one.least_h, one.most_h)[which])
    if one.by == "laboratory":
        hours = Fraction(asked.laboratory_days[which] * HOURS_PER_DAY)
    elif one.by:
        hours = max([_dry_h(one.by, which, dries) for dries in (asked.dries if room < 0 else (asked.dries[room],))])
    return in_steps(hours * MINUTES_PER_HOUR)


def _dry_h(what: str, which: int, dries: Dries) -> Fraction:
    band = {"coat": dries.coat, "fill": dries.fill, "joint": dries.joint}[what]
    return (band.low_h, band.high_h)[which]


def in_steps(minutes: Fraction, crew: int = 1) -> int:
    """Return what `minutes` [min] of one person take a `crew` [-], rounded up to whole quarters of an hour [min]."""
    return -(-minutes.numerator // (minutes.denominator * crew * STEP_MIN)) * STEP_MIN


def tasks_of(works: tuple[Work, ...], which: int, asked: Asked, people: int, hands: int) -> tuple[Task, ...]:
    """Return the works as tasks for the plan, by the least or the most hours: `people` [-] there are, and `hands` [-] of them work
    in one room together, or as many as the stage needs."""
    found = []
    waits: dict[tuple[str, int], int] = {}
    for at, work in enumerate(works):
        after = []
        for before, name in work.after:
            held = (name, works[before].room)
            if held not in waits:
                waits[held] = wait_minutes(name, which, asked, works[before].room)
            after.append((str(before), waits[held]))
        crew = min(people, max(work.stage.crew, hands))
        minutes = in_steps(work.minutes[which], crew) if work.stage.who == YOU else 0
        found.append(Task(str(at), work.room, minutes, crew, tuple(after), work.stage.in_one_go))
    return tuple(found)


def hours_of(works: tuple[Work, ...]) -> tuple[Fraction, Fraction]:
    """Return the least and the most hours of one person's work [h] that `works` take together, before any rounding."""
    low, high = Fraction(0), Fraction(0)
    for one in works:
        low += one.minutes[LEAST]
        high += one.minutes[MOST]
    return low / MINUTES_PER_HOUR, high / MINUTES_PER_HOUR
