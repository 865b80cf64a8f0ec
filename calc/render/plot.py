"""A plot: curves or bars with both axes, ticks, units and the values at the ends; no two figures touch.

All is whole numbers: tenths of a unit of the page.
"""

from calc.core.drawing import Bar, Plot
from calc.render.ink import (
    EDGE,
    LETTER,
    MIDDLE,
    PAGE_WIDTH,
    ROW,
    TENTHS,
    dot,
    line,
    number,
    path,
    rect,
    sheet,
    text,
    width_of,
)

WIDE = (PAGE_WIDTH - EDGE) * TENTHS  # where the page ends at the right [tenths]
OUT = EDGE * TENTHS
DEEP = 230 * TENTHS  # height of the curves [tenths]
BAR, BAR_ROW = 14 * TENTHS, 26 * TENTHS  # height of a bar, and of its row [tenths]
LEVEL = ROW * TENTHS
SMALL = 5 * TENTHS  # a tick of an axis; from a point to its figure [tenths]
STEPS = 26  # places that are tried above and below the end of a curve
HUNDRED = 100


def drawing(plot: Plot, prefix: str) -> str:
    """Return the plot as one SVG element; `prefix` keeps its ids apart from others on the page."""
    body, height = _bars(plot) if plot.bars else _curves(plot)
    return sheet(height, prefix, plot.title, plot.description, "".join(body))


def _curves(plot: Plot) -> tuple[list[str], int]:
    left = OUT + max([width_of(told) for _, told in plot.up]) + 2 * SMALL
    top = OUT + LEVEL + 3 * SMALL
    base, right = top + DEEP, WIDE - width_of(plot.across[-1][1]) // 2
    marks = [
        line(left, base - value * DEEP // HUNDRED, left - SMALL, base - value * DEEP // HUNDRED) for value, _ in plot.up
    ]
    found = [text(OUT, OUT + LETTER * TENTHS, "start", plot.up_told)]
    for value, told in plot.up:
        found.append(text(left - 2 * SMALL, base - value * DEEP // HUNDRED + MIDDLE, "end", told))
    drawn = []
    for curve in plot.curves:
        places = [(left + (right - left) * x // plot.end, base - DEEP * y // curve.full) for x, y in curve.points]
        drawn.append(_thinned(places))
    for at, curve in enumerate(plot.curves):
        points = " ".join([number(x) + "," + number(y) for x, y in drawn[at]])
        found.append(
            '<polyline class="' + ("cut" if curve.heavy else "edge") + '" fill="none" points="' + points + '"/>'
        )
    found += _ends(plot, drawn, (left, top, WIDE, base))
    return [path("dim", [line(left, top, left, base)] + marks)] + found + _across(
        plot, left, right, base
    ), base + 2 * LEVEL + 2 * SMALL + OUT


def _ends(plot: Plot, drawn: list[list[tuple[int, int]]], inside: tuple[int, int, int, int]) -> list[str]:
    """What stands at the start and at the end of each curve, where it covers neither a curve nor another figure."""
    found: list[str] = []
    taken: list[tuple[int, int, int, int]] = []
    ends = [(drawn[0][0], plot.start_told, False)]
    ends += [(drawn[at][-1], curve.end_told, curve.heavy) for at, curve in enumerate(plot.curves)]
    for (x, y), told, heavy in ends:
        wide = width_of(told) + (len(told) * TENTHS if heavy else 0)
        box = _free(x, y, wide, inside, taken, drawn)
        taken.append(box)
        foot = box[1] + LEVEL // 2 + MIDDLE
        if abs(foot - MIDDLE - y) > LEVEL:
            edge = box[3] if box[3] < y else box[1]
            found.append(path("dim", [line(x, y, max(box[0], min(x, box[2])), edge)]))
        found.append(dot(x, y) + rect("ground", box[0], box[1], box[2] - box[0], LEVEL))
        found.append(text(box[0], foot, "start", told, False, "strong" if heavy else ""))
    return found


def _free(
    x: int, y: int, wide: int, inside: tuple[int, int, int, int], taken: list[tuple[int, int, int, int]], drawn: list[list[tuple[int, int]]]
) -> tuple[int, int, int, int]:  # fmt: skip
    """The place nearest to a point where a figure is clear of all others, and of all curves where there is such a place."""
    left, top, right, bottom = inside
    spare: tuple[int, int, int, int] | None = None
    for step in range(STEPS):
        away = (step + 1) // 2 * (LEVEL // 2) * (1 if step % 2 else -1)
        for start in (x + SMALL, x - SMALL - wide):
            start = max(left + SMALL, min(start, right - wide))
            box = (start, y + away - LEVEL // 2, start + wide, y + away + LEVEL // 2)
            if box[1] < top or box[3] > bottom or [1 for one in taken if _meet(one, box)]:
                continue
            if not [1 for points in drawn if _crossed(box, points)]:
                return box
            spare = spare or box
    return spare or (max(left, min(x, right - wide)), top, max(left, min(x, right - wide)) + wide, top + LEVEL)


def _meet(one: tuple[int, int, int, int], other: tuple[int, int, int, int]) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _crossed(box: tuple[int, int, int, int], points: list[tuple[int, int]]) -> bool:
    """Whether a curve runs through a box, with a little air round it."""
    for at in range(len(points) - 1):
        (x1, y1), (x2, y2) = points[at], points[at + 1]
        if (
            max(x1, x2) > box[0]
            and min(x1, x2) < box[2]
            and max(y1, y2) + TENTHS > box[1]
            and min(y1, y2) - TENTHS < box[3]
        ):
            return True
    return False


def _thinned(places: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """The points of a curve without those that lie on the page where the last one lies."""
    found = places[:1]
    for at, (x, y) in enumerate(places):
        if at == len(places) - 1 or abs(x - found[-1][0]) + abs(y - found[-1][1]) >= TENTHS:
            found.append((x, y))
    return found


def _across(plot: Plot, left: int, right: int, base: int) -> list[str]:
    """The axis below: its line, its ticks with their figures, and what is counted."""
    places = [(left + (right - left) * value // plot.end, told) for value, told in plot.across]
    lines = [line(left, base, right, base)] + [line(x, base, x, base + SMALL) for x, _ in places]
    found = [text(x, base + SMALL + LETTER * TENTHS, "middle", told) for x, told in places]
    found.append(text((left + right) // 2, base + SMALL + LETTER * TENTHS + LEVEL, "middle", plot.across_told))
    return [path("dim", lines)] + found


def _bars(plot: Plot) -> tuple[list[str], int]:
    left = OUT + max([width_of(one.name) for one in plot.bars]) + 2 * SMALL
    right = WIDE
    for one in plot.bars:  # each bar has room for its figure after it
        free = WIDE - left - SMALL - width_of(one.told) - (len(one.told) * TENTHS if one.solid else 0)
        right = min(right, left + free * plot.end // max(1, one.high))
    top = OUT + LEVEL + SMALL
    found = [text(OUT, OUT + LETTER * TENTHS, "start", plot.up_told)]
    for at, one in enumerate(plot.bars):
        found += _bar(one, left, right, top + at * BAR_ROW, plot.end)
    base = top + len(plot.bars) * BAR_ROW
    return [path("dim", [line(left, top, left, base)])] + found + _across(
        plot, left, right, base
    ), base + 2 * LEVEL + 2 * SMALL + OUT


def _bar(one: Bar, left: int, right: int, y: int, end: int) -> list[str]:
    middle = y + BAR_ROW // 2
    start, stop = left + (right - left) * one.low // end, left + (right - left) * one.high // end
    looks = "strong" if one.solid else ""
    return [
        text(left - SMALL, middle + MIDDLE, "end", one.name, False, looks),
        rect("edge solid" if one.solid else "edge bar", start, middle - BAR // 2, max(stop - start, TENTHS), BAR),
        text(stop + SMALL, middle + MIDDLE, "start", one.told, False, looks),
    ]
