"""The walls of a room in plan: found from the boxes that it is made of, and dimensioned side by side outside it."""

from collections.abc import Callable

from calc.core.drawing import Row

SIDES = ("low v", "high v", "low u", "high u")  # where a wall stands: at the low or high end of v or of u


def merged(spans: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Return the stretches (from, to) in rising order, those that touch or overlap as one."""
    found: list[tuple[int, int]] = []
    for start, end in sorted(spans):
        if found and start <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], end))
        else:
            found.append((start, end))
    return found


def wall_lines(boxes: tuple[tuple[int, int, int, int], ...]) -> list[tuple[tuple[int, int, int, int], str]]:
    """Return every wall as a line and the side of the room that it stands at ('low u', 'high u', 'low v', 'high v').

    The sides of the boxes less where two boxes meet, those in one line that touch as one.
    """
    found = []
    for axis, name in ((0, "u"), (1, "v")):
        other = 1 - axis
        for end, side in ((axis, "low "), (axis + 2, "high ")):
            levels: list[int] = []
            for one in boxes:
                if one[end] not in levels:
                    levels.append(one[end])
            levels.sort()
            for level in levels:
                stretches = []
                for one in boxes:
                    if one[end] == level:
                        free = [(one[other], one[other + 2])]
                        for near in boxes:
                            if near[axis] == level if end != axis else near[axis + 2] == level:
                                free = _less(free, near[other], near[other + 2])
                        stretches += free
                for low, high in merged(stretches):
                    found.append(((level, low, level, high) if axis == 0 else (low, level, high, level), side + name))
    return found


def _less(spans: list[tuple[int, int]], start: int, end: int) -> list[tuple[int, int]]:
    found = []
    for low, high in spans:
        for part in ((low, min(high, start)), (max(low, end), high)):
            if part[0] < part[1]:
                found.append(part)
    return found


def wall_rows(
    walls: list[tuple[tuple[int, int, int, int], str]], sides: tuple[str, str, str, str], told: Callable[[int], str]
) -> list[Row]:
    """Return a dimension for every wall, in rows at the sides of the page where `SIDES` stand; what two opposite walls share stands once."""
    rows = []
    seen: list[tuple[bool, int, int]] = []
    for at, wall_side in enumerate(SIDES):
        across = wall_side.endswith("v")
        spans = []
        for one, its_side in walls:
            low, high = (one[0], one[2]) if across else (one[1], one[3])
            if its_side == wall_side and (across, low, high) not in seen:
                spans.append((low, high, told(high - low)))
        seen += [(across, low, high) for low, high, _ in spans]
        rows += [Row(sides[at], "spans", tuple(chain)) for chain in _chains(spans)]
    return rows


def _chains(spans: list[tuple[int, int, str]]) -> list[list[tuple[int, int, str]]]:
    """Dimensions in chains in which none lies over another."""
    found: list[list[tuple[int, int, str]]] = []
    for one in sorted(spans):
        for chain in found:
            if chain[-1][1] <= one[0]:
                chain.append(one)
                break
        else:
            found.append([one])
    return found


def different(values: list[int]) -> list[int]:
    """Return the values in rising order, each once."""
    found: list[int] = []
    for value in sorted(values):
        if not found or found[-1] != value:
            found.append(value)
    return found
