"""Where the lines between courses may lie: ways to part a room's depth into courses, the likeliest first."""

from calc.board.courses import Frame

PARTS_OF_A_SHEET = (2, 3, 4)  # strips that go so often side by side into a sheet's width are tried
EIGHTHS = 8  # a first course of so many eighths of a sheet's width is tried [-]
MOST_WAYS = 200  # ways looked at before they are ranked [-]


def lines_of(frame: Frame, widths: list[int], least: int, strips: list[int]) -> list[tuple[int, ...]]:
    """Return ways to lay courses over a room, each the lines from 0 to its depth, the likeliest first.

    `widths` are sheet widths in rising order; no course is under `least` unless the room is; `strips` are depths that
    would go well beside strips of other rooms. The fewest courses come first, and among them those that need the least
    board when strips as deep are cut side by side.
    """
    depth = frame.depth
    found: list[tuple[int, ...]] = []
    if depth <= widths[-1]:
        found.append((0, depth))
    levels = _corners(frame)
    for width in widths[::-1]:
        starts = [width, 0]
        rest = depth % width
        starts += [rest, (rest + width) // 2, rest // 2]
        starts += [width // many for many in PARTS_OF_A_SHEET]
        starts += [level % width for level in levels]
        for strip in strips:
            starts += [strip, width - strip, rest - strip, (rest + width - strip) % width]
        starts += [width * part // EIGHTHS for part in range(1, EIGHTHS)]
        for start in starts + [(rest - start) % width for start in starts]:
            _keep(found, _run(0, depth, start, width), depth, least, widths[-1])
        for level in levels:  # a line along a corner, and whole courses from either wall or from the corner
            for low in (0, level % width):
                for high in (width, (depth - level) % width):
                    lines = _run(0, level, low, width)[:-1] + _run(level, depth, high, width)
                    _keep(found, lines, depth, least, widths[-1])
        for whole in range(1, depth // width):  # the strip between whole courses
            lines = [width * at for at in range(whole + 1)] + _run(width * whole + rest, depth, width, width)
            if rest > 0:
                _keep(found, lines, depth, least, widths[-1])
        if len(found) > MOST_WAYS:
            break
    if len(widths) > 1:
        for many in range(1, depth // widths[0] + 1):  # some of the narrow sheets, then wide ones
            lines = [at * widths[0] for at in range(many)] + _run(many * widths[0], depth, widths[-1], widths[-1])
            _keep(found, lines, depth, least, widths[-1])
    ranked = [(_need(frame, lines, widths[-1]) + (at,), lines) for at, lines in enumerate(found)]
    ranked.sort(key=lambda pair: pair[0])
    return [lines for _, lines in ranked]


def _corners(frame: Frame) -> list[int]:
    """Every level at which a wall runs across the joists inside the room."""
    found: list[int] = []
    for one in frame.boxes:
        for level in (one[1], one[3]):
            if 0 < level < frame.depth and level not in found:
                found.append(level)
    found.sort()
    return found


def _run(low: int, high: int, start: int, width: int) -> list[int]:
    """Lines from `low` to `high`: the first `start` on, then `width` apart."""
    lines = [low]
    at = low + (start if start > 0 else width)
    while at < high:
        lines.append(at)
        at += width
    return lines + [high]


def _keep(found: list[tuple[int, ...]], lines: list[int], depth: int, least: int, widest: int) -> None:
    """Add the lines where every course is wide enough, moved a little where that mends it."""
    count = len(lines) - 1
    for at in range(1, count):  # a narrow course takes from the one before it, or from the one after
        if lines[at + 1] - lines[at] < least:
            lines[at] = lines[at + 1] - least
        if at == 1 and lines[1] - lines[0] < least:
            lines[1] = lines[0] + least
    for at in range(count):
        size = lines[at + 1] - lines[at]
        if size > widest or size <= 0 or (size < least and size < depth):
            return
    told = tuple(lines)
    if told not in found:
        found.append(told)


def _need(frame: Frame, lines: tuple[int, ...], widest: int) -> tuple[int, int]:
    """(courses, board that they take): a strip takes its share of a sheet that is cut into such strips."""
    board = 0
    for at in range(len(lines) - 1):
        low, high = lines[at], lines[at + 1]
        inside = [one for one in frame.boxes if one[1] < high and one[3] > low]
        edges: list[int] = []
        for one in inside:
            edges += [one[0], one[2]]
        edges.sort()
        for place in range(len(edges) - 1):
            start, end = edges[place], edges[place + 1]
            over = [one for one in inside if one[0] < end and one[2] > start]
            if start < end and over:
                deep = min(high, max([one[3] for one in over])) - max(low, min([one[1] for one in over]))
                board += (end - start) * (widest // (widest // deep))
    return len(lines) - 1, board
