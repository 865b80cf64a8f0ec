"""Plan: one way, day by day: what is done where, what dries meanwhile, who is called when, and how long it all takes."""

from fractions import Fraction

from calc.common.inputs import add_area
from calc.core.answer import Answer, Calculator, Item, Listing
from calc.core.fields import SHOW_IN, Values
from calc.core.lines import Lines
from calc.decision.told import way_told
from calc.drying.chart import band_text
from calc.evidence.cautions import caution
from calc.job.days import Days, busy_days, calendar_of, day_name, days_of
from calc.job.labor import LEAST, MINUTES_PER_HOUR, MOST, Asked, Work, high_work, hours_of, wait_minutes, works_of
from calc.job.plan_chart import chart
from calc.job.plan_inputs import ASBESTOS, JOB, LICENSED, WAY, air_of, asked_of, days_of_laboratory, refuse_closed
from calc.job.room_air import STEADY
from calc.job.schedule import Calendar
from calc.job.stage import YOU, call_told, phase_told, task_told, wait_told
from calc.job.told import hours_told, range_told, span_of
from calc.job.waits import WAITS, wait
from calc.numbers import words
from calc.numbers.quantity import told
from calc.text.door import say


def plan(values: Values) -> Answer:
    """Return the job by day for the way asked: hours, days, waits, calls, and a drawing.

    Raises InputFault where the answers close the way, where nothing dries in that air, and where the laboratory's days are turned
    round. Sources: each stage's and wait's own; drying as in `calc.drying.law`.
    """
    way = values.choice("way")
    refuse_closed(way, values)
    asked, calendar = asked_of(values, way, air_of(values), days_of_laboratory(values)), calendar_of(values)
    works = works_of(asked)
    people = values.count("people")
    shorter, longer = [days_of(works, which, asked, calendar, people) for which in (LEAST, MOST)]
    lines = _lines(values, asked, works, shorter, longer)
    dated = values.choice("start_day") != ""
    sentence = say(
        "plan.sentence", "{way}: {hours} hours of work. The last day is {soonest} at the soonest, {latest} by the longer hours.",
        way=way_told(way), hours=hours_told(works), soonest=day_name(shorter.last_day, dated, shorter.first_day),
        latest=day_name(longer.last_day, dated, longer.first_day),
    )  # fmt: skip
    if not asked.settled and way != LICENSED:
        sentence = (
            say("plan.sentence.if", "Only if the laboratory finds no asbestos in any layer. If it finds some, this plan falls.")
            + " " + sentence
        )  # fmt: skip
    notes = [
        say("plan.note.hours", "Hours, and waits without a mark, are what is common in the trade; few are printed anywhere. Put your own pace in."),
        say("plan.note.rooms", "One or two people work in a room at a time; the plan with fewer days holds. Rooms take turns while others dry."),
        _note_of_air(values.choice("room_air")),
    ]  # fmt: skip
    if longer.fewest and shorter.fewest:
        notes.append(
            say(
                "plan.note.fewest",
                "No other order of these tasks, one or two people in a room, ends on an earlier day.",
            )
        )
    if not dated:
        notes.append(say("plan.note.monday", "No first day was given: days count from a Monday."))
    return Answer(
        calculator="plan",
        inputs=values.given,
        figure=range_told(shorter.working_days, longer.working_days, words.plural(max(shorter.working_days, longer.working_days), "working day")),
        figure_label=say(
            "plan.figure", "for {people}, spread over {days}",
            people=words.plural(people, "person", "people"), days=range_told(span_of(shorter), span_of(longer), words.plural(max(span_of(shorter), span_of(longer)), "day")),
        ),
        sentence=sentence,
        lines=lines.tuple(),
        cautions=(caution("asbestos-first"),),
        notes=tuple(notes),
        drawing=chart(longer, works, _waits(works, asked), tuple([room.name for room in asked.rooms]), calendar, dated),
        items=_phases(works),
        items_title=say("plan.items", "Hours by part of the job, one person's"),
        listings=(
            Listing("days", say("plan.days", "Day by day, by the longer hours"), _day_rows(longer, works, asked, calendar, dated)),
            Listing("waits", say("plan.waits", "What is waited for"), _wait_rows(works, asked)),
        )
        + _calls(longer, works, dated),
    )  # fmt: skip


def _note_of_air(kind: str) -> str:
    if kind == STEADY:
        return say(
            "plan.note.dry",
            "Dry by the clock is a guess. Feel it, and read the gauge, before the next coat. Wet rooms dry slower than this: see the form for humidity.",
        )
    own = say(
        "plan.note.air",
        "Each room dries in its own air, as the form for humidity has it, from the air as typed at the start of each coat. Dry by the clock is a guess: feel it, and read the gauge, before the next coat.",
    )
    if kind == "machine":
        own += " " + say(
            "plan.note.machine",
            "A dehumidifier is taken to run in each room, day and night; the shopping list does not hold them.",
        )
    return own


def _lines(values: Values, asked: Asked, works: tuple[Work, ...], shorter: Days, longer: Days) -> Lines:
    lines = Lines("plan", values.choice("show_in"))
    add_area(lines, values)
    low, high = hours_of(works)
    counted = say(
        "plan.counted",
        "added over {stages} in {rooms}",
        stages=words.plural(len(works), "stage"),
        rooms=words.plural(len(asked.rooms), "room"),
    )
    sources = ("common-practice",) + (("high-board-article",) if high_work(asked, works) else ())
    by_stage = "Minutes for each room and for each 100 sq ft, stage by stage, at your pace."
    for hours_name, hours_label, hours in (
        ("labor_hours_low", "Work, at the least", low),
        ("labor_hours_high", "Work, at the most", high),
    ):
        lines.add(
            name=hours_name,
            label=hours_label,
            unit="h",
            places=1,
            rule=by_stage,
            amount=told(hours, "h", counted, *sources),
        )
    planned = say("plan.placed", "placed on the calendar, waits kept")
    busy = "Days on which somebody of yours is at work."
    for name, label, value in (
        ("working_days_low", "Working days, at the least", shorter.working_days),
        ("working_days_high", "Working days, at the most", longer.working_days),
    ):
        lines.add(
            name=name,
            label=label,
            unit="",
            places=0,
            rule=busy,
            amount=told(value, "", planned, "common-practice", "gypsum-handbook-drying"),
        )
    spread = "From the first day to the last, days without work too."
    for key, title, span in (
        ("calendar_days_low", "From first to last day, at the least", span_of(shorter)),
        ("calendar_days_high", "From first to last day, at the most", span_of(longer)),
    ):
        lines.add(
            name=key,
            label=title,
            unit="",
            places=0,
            rule=spread,
            amount=told(span, "", planned, "common-practice", "gypsum-handbook-drying"),
        )
    return lines


def _waits(works: tuple[Work, ...], asked: Asked) -> dict[int, int]:
    """The minutes that pass after each work, by its place, by the longer hours."""
    found = {}
    for one in works:
        for before, name in one.after:
            minutes = wait_minutes(name, MOST, asked, works[before].room)
            if minutes:
                found[before] = minutes
    return found


def _phases(works: tuple[Work, ...]) -> tuple[Item, ...]:
    names: list[str] = []
    for one in works:
        if one.stage.phase not in names:
            names.append(one.stage.phase)
    found = []
    for name in names:
        own = tuple([one for one in works if one.stage.phase == name])
        tasks: list[str] = []
        for one in own:
            text = task_told(one.stage)
            if one.times > 1 and one.nth == 0:
                text = say("plan.task.times", "{task}, {times}", task=text, times=words.plural(one.times, "time"))
            if text not in tasks and one.nth == 0:
                tasks.append(text)
        hours = (
            say("plan.hours", "{hours} h", hours=hours_told(own))
            if [one for one in own if one.stage.who == YOU]
            else say("plan.others", "others")
        )
        found.append(
            Item(phase_told(own[0].stage), hours, " ".join([text + "." for text in tasks]), (), (), own[0].stage.page)
        )
    return tuple(found)


def _day_rows(
    days: Days, works: tuple[Work, ...], asked: Asked, calendar: Calendar, dated: bool
) -> tuple[tuple[str, str], ...]:
    """One row a day on which something happens: by room, what is done there."""
    rooms = (say("plan.house", "House"),) + tuple([room.name for room in asked.rooms])
    found = []
    at_work = busy_days(days.slots, works, calendar)
    for day in range(days.first_day, days.last_day + 1):
        by_room: list[list[str]] = [[] for _ in rooms]
        for slot in days.slots:
            if slot.start[0] <= day <= slot.end[0] and (day in at_work or slot.start == slot.end):
                work = works[slot.work]
                text = words.lower(phase_told(work.stage)) if work.stage.who == YOU else task_told(work.stage)
                if work.times > 1:
                    text = say(
                        "plan.nth",
                        "{phase} ({nth} of {times})",
                        phase=text,
                        nth=str(work.nth + 1),
                        times=str(work.times),
                    )
                if text not in by_room[work.room + 1]:
                    by_room[work.room + 1].append(text)
        parts = [rooms[at] + ": " + ", ".join(texts) for at, texts in enumerate(by_room) if texts]
        if parts:
            name = day_name(day, dated, days.first_day)
            found.append((say("plan.day.row", "{day}. {parts}.", day=name, parts=". ".join(parts)), ""))
    return tuple(found)


def _wait_rows(works: tuple[Work, ...], asked: Asked) -> tuple[tuple[str, str], ...]:
    """One row a wait, or one for each group of rooms that wait alike."""
    found = []
    for one in WAITS:
        bands: list[tuple[Fraction, Fraction]] = []
        rooms: list[list[str]] = []  # beside each band those that wait so long
        for room in [works[before].room for work in works for before, name in work.after if name == one.id]:
            band = (_hours(one.id, LEAST, asked, room), _hours(one.id, MOST, asked, room))
            if band not in bands:
                bands.append(band)
                rooms.append([])
            name = say("plan.house", "House") if room < 0 else asked.rooms[room].name
            if name not in rooms[bands.index(band)]:
                rooms[bands.index(band)].append(name)
        source = "gypsum-handbook-drying" if one.by in ("coat", "fill", "joint") else ""
        for at, (low, high) in enumerate(bands):
            if len(bands) == 1:
                text = say("plan.wait", "{name}: {band}.", name=wait_told(one), band=band_text(low, high))
            else:
                text = say(
                    "plan.wait.rooms", "{name} in {rooms}: {band}.",
                    name=wait_told(one), rooms=words.listed(rooms[at]), band=band_text(low, high),
                )  # fmt: skip
            found.append((text, source))
    return tuple(found)


def _hours(name: str, which: int, asked: Asked, room: int) -> Fraction:
    return Fraction(wait_minutes(name, which, asked, room), MINUTES_PER_HOUR)


def _calls(days: Days, works: tuple[Work, ...], dated: bool) -> tuple[Listing, ...]:
    """Whom to call, and by when, for what others do."""
    found = []
    for slot in days.slots:
        name = works[slot.work].stage.then
        if name and call_told(wait(name)):
            one = wait(name)
            text = say(
                "plan.call", "{who}: for {day}. Call {ahead} ahead.", who=call_told(one), day=day_name(slot.start[0], dated, days.first_day),
                ahead=words.plural(one.ahead_days, "day"),
            )  # fmt: skip
            found.append((text, ""))
    return (Listing("calls", say("plan.calls", "Whom to call, and when"), tuple(found)),) if found else ()


CALCULATOR = Calculator(
    name="plan",
    title="The job, day by day",
    summary="Days, hours, waits and calls of one way, for your rooms and people",
    verb="Plan the job",
    fields=(WAY,) + JOB + ASBESTOS + (SHOW_IN,),
    work_out=plan,
    example=(
        ("way", "skim-over"),
        ("rooms", "Living: 20' x 14'; Bed: 12' x 11'"),
        ("texture_depth_in", "1/8"),
        ("start_day", "2027-04-05"),
    ),
    sources=("high-board-article", "geometry", "gypsum-handbook-drying"),
    always=("asbestos-first",),
)
