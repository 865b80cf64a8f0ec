"""What a plan of days has to keep, looked at minute by minute from outside: plain tuples, Python's own calendar, no scheduler.

A job here is a dictionary: `tasks` as (id, room, minutes, crew, [(predecessor, wait)], in one go), `first` (a date), `opens`
and `minutes` (of a day), `weekdays` (seven truths), `off` (dates), `people`, `one_a_room`. A plan is {id: (start, end)} in moments.
"""

import datetime

MINUTE = datetime.timedelta(minutes=1)


def moment(day_number, minute):
    """A day number counts from 1970-01-01."""
    return datetime.datetime(1970, 1, 1) + datetime.timedelta(days=day_number, minutes=minute)


def is_work_day(job, date):
    return job["weekdays"][date.weekday()] and date not in job["off"] and date >= job["first"]


def working_day(job, date):
    """The opening and the end of a working day."""
    opens = datetime.datetime.combine(date, datetime.time()) + datetime.timedelta(minutes=job["opens"])
    return opens, opens + datetime.timedelta(minutes=job["minutes"])


def shifts(job, start, end):
    """The stretches of working time between two moments."""
    found = []
    date = start.date()
    while date <= end.date():
        if is_work_day(job, date):
            opens, closes = working_day(job, date)
            one = (max(opens, start), min(closes, end))
            if one[0] < one[1]:
                found.append(one)
        date += datetime.timedelta(days=1)
    return found


def working_days(job, until):
    """How many working days there are from the first on until that of a moment."""
    count, date = 0, job["first"]
    while date <= until.date():
        count += is_work_day(job, date)
        date += datetime.timedelta(days=1)
    return count


def faults(job, plan):
    """Every rule that `plan` breaks, as sentences."""
    found = []
    at_work, in_room = {}, {}
    tasks = {one[0]: one for one in job["tasks"]}
    if sorted(plan) != sorted(tasks):
        return ["other tasks"]
    for name, (start, end) in plan.items():
        _, room, minutes, crew, after, one_go = tasks[name]
        for one in (start, end):
            opens, closes = working_day(job, one.date())
            if not is_work_day(job, one.date()) or not opens <= one <= closes:
                found.append(f"{name} out of hours")
        for before, wait in after:
            if start < plan[before][1] + wait * MINUTE:
                found.append(f"{name} does not wait for {before}")
        if minutes == 0:
            if start != end:
                found.append(f"{name} takes no time")
            continue
        stretches = shifts(job, start, end)
        if sum((closes - opens for opens, closes in stretches), datetime.timedelta()) != minutes * MINUTE:
            found.append(f"{name} is longer or shorter than it takes")
        if not stretches or stretches[0][0] != start or stretches[-1][1] != end:
            found.append(f"{name} starts or ends out of hours")
        if one_go and minutes <= job["minutes"] and len(stretches) != 1:
            found.append(f"{name} is left overnight")
        for opens, closes in stretches:
            while opens < closes:
                at_work[opens] = at_work.get(opens, 0) + crew
                in_room.setdefault((room, opens), []).append(name)
                opens += MINUTE
    found += [f"too many people at {when}" for when, crew in at_work.items() if crew > job["people"]]
    if job["one_a_room"]:
        found += [f"{names} at once" for (room, _), names in in_room.items() if room >= 0 and len(names) > 1]
    return found
