"""What no plan can beat: work that has to lie between two moments and does not fit there."""

from calc.job.placing import Placed, Work


def cannot_be_done(work: Work, people: int, heads: Placed, latest_ends: list[int]) -> bool:
    """Return whether no plan for `people` keeps each task between its start in `heads` and its latest end (positions).

    That is so where a task alone does not fit, and where between two positions there is more to do than there are people,
    or in one room more than the time between them.
    """
    count = len(work.minutes)
    for at in range(count):
        if heads.starts[at] + work.minutes[at] > latest_ends[at]:
            return True
    rooms: list[list[int]] = [[] for _ in range(work.rooms)]
    everywhere = []
    ordered = sorted([(latest_ends[at], at) for at in range(count) if work.minutes[at]])
    for _, at in ordered:
        rooms[work.room[at]].append(at)
        if work.crew[at]:
            everywhere.append(at)
    if _too_full(
        heads.starts, latest_ends, [work.minutes[at] * work.crew[at] for at in range(count)], everywhere, people
    ):
        return True
    return True in [_too_full(heads.starts, latest_ends, work.minutes, one, 1) for one in rooms[1:]]


def _too_full(starts: list[int], ends: list[int], work: list[int], tasks: list[int], room: int) -> bool:
    """Whether the `tasks`, by rising end, that lie between a start and an end are more work than has room there."""
    from_here = 0
    by_start = sorted([(-starts[at], work[at]) for at in tasks])
    for place, one in enumerate(by_start):
        begin = -one[0]
        from_here += one[1]
        if place + 1 < len(by_start) and by_start[place + 1][0] == one[0]:
            continue
        need = 0
        for at in tasks:
            space = room * (ends[at] - begin)
            if space >= from_here:
                break
            if starts[at] >= begin:
                need += work[at]
                if need > space:
                    return True
    return False
