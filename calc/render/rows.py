"""Where the figures of a row stand: each at its place or beside it, on a level of its own where another is in the way."""

from calc.render.ink import TENTHS

GAP = 6 * TENTHS  # between two figures side by side [tenths]
NEAR = 3 * TENTHS  # from a line to the figure beside it [tenths]
MOST_LEVELS = 9  # levels that are tried


def placed(wanted: list[tuple[int, int]], low: int, high: int) -> tuple[list[int], list[int]]:
    """Return (levels, starts) for figures of which each wants to stand at (place, width), between `low` and `high`.

    A figure on a level above 0 has a line to its place: no line goes through a figure, and no two figures touch, but where
    all levels are full; then it stands above all others.
    """
    levels, starts = [0] * len(wanted), [0] * len(wanted)
    done: list[int] = []
    for at in sorted(range(len(wanted)), key=lambda one: (wanted[one][0], one)):
        place, width = wanted[at]
        middle = max(low, min(place - width // 2, high - width))
        ways = [middle, place + NEAR, place - NEAR - width]
        ways = [one for one in ways if low <= one and one + width <= high] or [middle]
        levels[at], starts[at] = max([-1] + [levels[one] for one in done]) + 1, ways[0]
        for level in range(MOST_LEVELS):
            free = [
                start
                for start in ways
                if level >= _covers(wanted, place, at, start, width)
                and _free(level, start, place, width, wanted, levels, starts, done)
            ]
            if free:
                levels[at], starts[at] = level, free[0]
                break
        done.append(at)
    return levels, starts


def _covers(wanted: list[tuple[int, int]], place: int, at: int, start: int, width: int) -> int:
    """How many places of later figures a figure covers: each of these has to find a level below it."""
    later = [one for number, (one, _) in enumerate(wanted) if (one, number) > (place, at)]
    return len([one for one in later if start - NEAR < one < start + width + NEAR])


def _free(
    level: int, start: int, place: int, width: int, wanted: list[tuple[int, int]], levels: list[int], starts: list[int], done: list[int]
) -> bool:  # fmt: skip
    """Whether a figure may stand at `start` on `level`: it touches none, its line goes through none, and none through it."""
    for other in done:
        left, right = starts[other] - GAP, starts[other] + wanted[other][1] + GAP
        if levels[other] == level and start < right and start + width > left:
            return False
        if levels[other] < level and left + NEAR < place < right - NEAR:
            return False
        wish = wanted[other][0]
        if levels[other] > level and start - NEAR < wish < start + width + NEAR:
            return False
    return True
