"""A plain way that keeps every rule, where the search finds none: neighbors take their joints from different joists."""

from calc.board.courses import Course
from calc.board.stretches import Stretch, stretches_of

TOGETHER = (1, 2, 3)  # so many joists in a row go to one kind of course, then as many to the other


def apart(courses: list[Course], joists: list[list[int]], longest: int, shortest: int) -> tuple[list[Stretch], str]:
    """Return the stretches of one room, those of every second course over other joists than the rest; or none, and why:
    'reach' where one course alone has no joist in reach, 'apart' where neighbors cannot be kept on different joists."""
    whole = stretches_of(courses, joists, longest, shortest)
    if [one for one in whole if one.stops([]) is None]:
        return [], "reach"
    room = courses[0].room
    splits = [
        ([one for at, one in enumerate(joists[room]) if at // many % 2 == 0], [one for at, one in enumerate(joists[room]) if at // many % 2])
        for many in TOGETHER
    ]  # fmt: skip
    for one in whole:
        pair = two_ways(one)
        if pair is not None:
            mine, other = pair
            rest = [joist for joist in joists[room] if joist not in mine and joist not in other]
            splits += [(mine + rest, other), (mine, other + rest), (mine + rest[::2], other + rest[1::2])]
    for split in splits:
        for turn in (0, 1):
            found = []
            for one in whole:
                own = joists[:]
                own[room] = sorted(split[(one.course.number + turn) % 2])
                found += stretches_of([one.course], own, longest, shortest, one.at)
            if not [one for one in found if one.stops([]) is None]:
                return found, ""
    return [], "apart"


def two_ways(stretch: Stretch) -> tuple[list[int], list[int]] | None:
    """Return two ways over the joists of one stretch that share none, None where there are no two.

    Both go on from the wall; always the one that lies behind takes the next step, so that it can meet the other only
    where that one stands. Every pair of ways is looked at so.
    """
    end = stretch.end
    first = (stretch.start, stretch.start)
    came: dict[tuple[int, int], tuple[int, int]] = {first: first}
    todo = [first]
    while todo:
        pair = todo.pop()
        behind, ahead = min(pair), max(pair)
        if behind == end:
            return _walked(came, pair, stretch, 0), _walked(came, pair, stretch, 1)
        for place in stretch.joists + [end]:
            whole = behind == stretch.start and place == end
            if not behind < place <= behind + stretch.longest or (place - behind < stretch.shortest and not whole):
                continue
            if place == ahead and place != end:
                continue
            new = (place, pair[1]) if pair[0] == behind else (pair[0], place)
            if new not in came:
                came[new] = pair
                todo.append(new)
    return None


def _walked(
    came: dict[tuple[int, int], tuple[int, int]], pair: tuple[int, int], stretch: Stretch, way: int
) -> list[int]:
    """The joists of one of the two ways that end at `pair`."""
    found: list[int] = []
    while pair != (stretch.start, stretch.start):
        place = pair[way]
        if stretch.start < place < stretch.end and place not in found:
            found.append(place)
        pair = came[pair]
    found.sort()
    return found
