"""Outlines whose walls run north-south or east-west: their area, their rectangles, and whether they cross themselves.

What looks at every pair of walls or boxes works on whole numbers, which are quick in every engine.
"""

from fractions import Fraction


def edges(
    outline: tuple[tuple[Fraction, Fraction], ...],
) -> list[tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]]]:
    """Return the walls of `outline` [in] as (start, end), the last back to the first corner."""
    return [(corner, outline[(at + 1) % len(outline)]) for at, corner in enumerate(outline)]


def twice_area(outline: tuple[tuple[Fraction, Fraction], ...]) -> Fraction:
    """Return twice the area inside [sq in], by the corner formula; below 0 where it is walked clockwise."""
    found = Fraction(0)
    for start, end in edges(outline):
        found += start[0] * end[1] - end[0] * start[1]
    return found


def common_scale(values: list[Fraction]) -> int:
    """Return the least whole number [-, > 0] that makes each of `values` whole when it is multiplied by it."""
    scale = 1
    for value in values:
        if scale % value.denominator:
            scale *= Fraction(scale, value.denominator).denominator
    return scale


def scaled(value: Fraction, scale: int) -> int:
    """Return `value` times `scale`, which must be a multiple of its denominator, as a whole number."""
    return int(value.numerator * (scale // value.denominator))


def rectangles(outline: tuple[tuple[Fraction, Fraction], ...]) -> list[tuple[Fraction, Fraction, Fraction, Fraction]]:
    """Return the inside as rectangles (west, south, east, north) [in] that do not overlap, from south to north."""
    scale = common_scale([value for corner in outline for value in corner])
    exact: dict[int, Fraction] = {}
    uprights = []
    for start, end in edges(outline):
        for value in start:
            exact[scaled(value, scale)] = value
        if start[0] == end[0]:
            low, high = scaled(start[1], scale), scaled(end[1], scale)
            uprights.append((scaled(start[0], scale), min(low, high), max(low, high)))
    uprights.sort()
    levels = sorted(dict([(scaled(corner[1], scale), True) for corner in outline]))
    found = []
    for at in range(len(levels) - 1):
        low, high = levels[at], levels[at + 1]
        crossings = [x for x, bottom, top in uprights if bottom <= low and top >= high]
        for pair in range(0, len(crossings) - 1, 2):
            found.append((exact[crossings[pair]], exact[low], exact[crossings[pair + 1]], exact[high]))
    return found


def crosses(outline: tuple[tuple[Fraction, Fraction], ...]) -> bool:
    """Return whether two walls that are not neighbors meet; walls run two ways only, so boxes are enough."""
    scale = common_scale([value for corner in outline for value in corner])
    boxes = []
    for start, end in edges(outline):
        x1, y1, x2, y2 = scaled(start[0], scale), scaled(start[1], scale), scaled(end[0], scale), scaled(end[1], scale)
        boxes.append((min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)))
    count = len(boxes)
    for first in range(count):
        west, south, east, north = boxes[first]
        last = count - 1 if first == 0 else count  # the first and the last wall are neighbors
        for second in range(first + 2, last):
            other = boxes[second]
            if other[0] <= east and other[2] >= west and other[1] <= north and other[3] >= south:
                return True
    return False


def covered_sqin(boxes: list[tuple[Fraction, Fraction, Fraction, Fraction]]) -> Fraction:
    """Return the area that `boxes` (west, south, east, north) [in] cover together [sq in], each spot counted once."""
    levels = different([one[1] for one in boxes] + [one[3] for one in boxes])
    found = Fraction(0)
    for at in range(len(levels) - 1):
        low, high = levels[at], levels[at + 1]
        spans = [(one[0], one[2]) for one in boxes if one[1] <= low and one[3] >= high]
        for start, end in merged(spans):
            found += (end - start) * (high - low)
    return found


def merged(spans: list[tuple[Fraction, Fraction]]) -> list[tuple[Fraction, Fraction]]:
    """Return the stretches (from, to) in rising order, those that touch or overlap as one."""
    found: list[tuple[Fraction, Fraction]] = []
    for start, end in sorted(spans):
        if found and start <= found[-1][1]:
            found[-1] = (found[-1][0], max(end, found[-1][1]))
        else:
            found.append((start, end))
    return found


def different(values: list[Fraction]) -> list[Fraction]:
    """Return the values in rising order, each once."""
    kept: list[Fraction] = []
    for value in sorted(values):
        if not kept or value != kept[-1]:
            kept.append(value)
    return kept
