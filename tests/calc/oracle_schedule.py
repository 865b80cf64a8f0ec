"""The fewest days of a job by an exact solver (CP-SAT of OR-tools), which knows the rules from here alone.

All minutes have to be multiples of 15. Working time without nights is one axis of quarter hours; a wait by the clock is told on
the calendar's own axis, to which each end is brought by the day that it falls on. Jobs are those of `schedule_check`.
"""

import datetime

from ortools.sat.python import cp_model

QUARTER = 15
DAY_QUARTERS = 24 * 60 // QUARTER
PATIENCE = 2.0  # the solver's own count of work, the same on every machine


def fewest_days(job, at_most):
    """(days, whether proved): the fewest of all plans that take `at_most` days, None where there is none or none was found."""
    day = job["minutes"] // QUARTER
    calendar, date = [], job["first"]
    while len(calendar) < at_most:
        if job["weekdays"][date.weekday()] and date not in job["off"]:
            calendar.append((date - job["first"]).days)
        date += datetime.timedelta(days=1)
    lead = [one * DAY_QUARTERS - at * day for at, one in enumerate(calendar)]
    model = cp_model.CpModel()
    length = {one[0]: one[2] // QUARTER for one in job["tasks"]}
    starts, ends, crews, rooms = {}, {}, [], {}
    start_day, end_day = {}, {}
    for name, room, _, crew, _, one_go in job["tasks"]:
        minutes = length[name]
        starts[name] = model.new_int_var(0, at_most * day, "")
        ends[name] = starts[name] + minutes
        start_day[name] = model.new_int_var(0, at_most - 1, "")
        within = model.new_int_var(0, day - (minutes > 0), "")
        model.add(starts[name] == start_day[name] * day + within)
        if minutes == 0 or (one_go and minutes <= day):
            end_day[name] = start_day[name]
            model.add(within + minutes <= day)
        else:
            end_day[name] = model.new_int_var(0, at_most - 1, "")
            rest = model.new_int_var(1, day, "")
            model.add(ends[name] == end_day[name] * day + rest)
        if minutes:
            interval = model.new_fixed_size_interval_var(starts[name], minutes, "")
            crews.append((interval, crew))
            rooms.setdefault(room, []).append(interval)
    clocks = {}

    def clock(name, position, its_day, which):
        if (name, which) not in clocks:
            ahead = model.new_int_var(min(lead), max(lead), "")
            model.add_element(its_day, lead, ahead)
            clocks[name, which] = position + ahead
        return clocks[name, which]

    for name, _, _, _, after, _ in job["tasks"]:
        for before, wait in after:
            if wait or not length[name] or not length[before]:
                first = clock(before, ends[before], end_day[before], "end" if length[before] else "start")
                model.add(clock(name, starts[name], start_day[name], "start") >= first + wait // QUARTER)
            model.add(ends[before] <= starts[name])
    model.add_cumulative([one for one, _ in crews], [one for _, one in crews], job["people"])
    if job["one_a_room"]:
        for room, intervals in rooms.items():
            if room >= 0:
                model.add_no_overlap(intervals)
    last = model.new_int_var(0, at_most - 1, "")
    for one in end_day.values():
        model.add(last >= one)
    model.minimize(last)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 2
    solver.parameters.interleave_search = True  # the workers take turns, so that each run is the same
    solver.parameters.max_deterministic_time = PATIENCE
    status = solver.solve(model)
    if status in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return int(solver.objective_value) + 1, status == cp_model.OPTIMAL
    return None, status == cp_model.INFEASIBLE
