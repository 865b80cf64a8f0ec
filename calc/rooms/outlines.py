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
    corners, scale = _whole(outline)
    found = 0
    for at, (x, y) in enumerate(corners):
        after = corners[(at + 1) % len(corners)]
        found += x * after[1] - after[0] * y
    return Fraction(found, scale * scale)


def length_round(outline: tuple[tuple[Fraction, Fraction], ...]) -> Fraction:
    """Return the length of all walls together [in]."""
    corners, scale = _whole(outline)
    found = 0
    for at, (x, y) in enumerate(corners):
        after = corners[(at + 1) % len(corners)]
        found += abs(after[0] - x) + abs(after[1] - y)
    return Fraction(found, scale)


def _whole(outline: tuple[tuple[Fraction, Fraction], ...]) -> tuple[list[tuple[int, int]], int]:
    """The corners in whole numbers, and how many of these an inch has."""
    scale = common_scale([value for corner in outline for value in corner])
    return [(scaled(x, scale), scaled(y, scale)) for x, y in outline], scale


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
    corners, _ = _whole(outline)
    exact_x: dict[int, Fraction] = {}
    exact_y: dict[int, Fraction] = {}
    uprights = []
    for at, (x, y) in enumerate(corners):
        exact_x[x], exact_y[y] = outline[at]
        after = corners[(at + 1) % len(corners)]
        if x == after[0]:
            uprights.append((x, min(y, after[1]), max(y, after[1])))
    uprights.sort()
    levels = sorted(exact_y)
    found = []
    for at in range(len(levels) - 1):
        low, high = levels[at], levels[at + 1]
        crossings = [x for x, bottom, top in uprights if bottom <= low and top >= high]
        for pair in range(0, len(crossings) - 1, 2):
            found.append((exact_x[crossings[pair]], exact_y[low], exact_x[crossings[pair + 1]], exact_y[high]))
    return found


def crossing(outline: tuple[tuple[Fraction, Fraction], ...]) -> tuple[int, int] | None:
    """Return the first two walls (by their place, from 0, the later one first met) that are not neighbors and meet, or
    None; walls run two ways only, so boxes are enough."""
    corners, _ = _whole(outline)
    boxes = []
    for at, (x, y) in enumerate(corners):
        after = corners[(at + 1) % len(corners)]
        boxes.append((min(x, after[0]), min(y, after[1]), max(x, after[0]), max(y, after[1])))
    count = len(boxes)
    for second in range(2, count):
        west, south, east, north = boxes[second]
        for first in range(1 if second == count - 1 else 0, second - 1):  # the first and the last wall are neighbors
            other = boxes[first]
            if other[0] <= east and other[2] >= west and other[1] <= north and other[3] >= south:
                return first, second
    return None


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
