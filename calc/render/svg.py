"""A drawing as SVG: three line weights, trade hatches, dimension ticks, lettering that can be read on a phone.

The page is 360 units wide, about a phone's width in pixels, so a unit is near a pixel there. Coordinates
are written in tenths by whole-number arithmetic.
"""

from fractions import Fraction

from calc.core.drawing import Dimension, Drawing, Label, Plan, Plot, Shape
from calc.numbers.exact import round_half_up
from calc.render import plan, plot
from calc.render.escape import escaped
from calc.render.ink import EDGE, LETTER, MIDDLE, PAGE_WIDTH, TENTHS, TICK, sheet
from calc.render.ink import number as _number

LETTER_WIDTH = Fraction(15, 2)  # mean width of a letter at that size [units], for margins
OFFSET = 14  # from the work to a dimension line [units]
BESIDE = 6 * TENTHS  # from a point to the lettering beside it [tenths]
ROW = LETTER + 5  # least distance between labels in the margin [units]

_HATCHES = (
    ("board", '<path d="M0 8 8 0M-2 2 2-2M6 10 10 6" class="h"/>'),
    ("plaster", '<path d="M2 2h.8M6 5h.8M3 7h.8" class="h2"/>'),
    ("texture", '<path d="M1 1h1M5 3h1M2 6h1M6 7h1" class="h2"/>'),
    ("compound", '<path d="M0 4H8" class="h"/>'),
    ("fill", '<path d="M0 2H8M0 6H8" class="h"/>'),
    ("timber", '<path d="M0 0 8 8M0 8 8 0" class="h"/>'),
    ("insulation", '<path d="M0 4q2-4 4 0t4 0" class="h"/>'),
)


def figure(drawing: Drawing | Plan | Plot, prefix: str) -> str:
    """Return the drawing as an HTML figure with a caption, a large plan as several; `prefix` keeps its ids apart from others on the page."""
    if isinstance(drawing, Plan):
        return "".join(
            [
                '<figure class="drawing plan">' + one + "<figcaption><b>" + escaped(title) + ".</b> "
                + escaped(note) + "</figcaption></figure>"
                for one, title, note in plan.drawings(drawing, prefix)
            ]
        )  # fmt: skip
    if isinstance(drawing, Plot):
        told = "<figcaption><b>" + escaped(drawing.title) + ".</b> " + escaped(drawing.note) + "</figcaption>"
        return '<figure class="drawing">' + plot.drawing(drawing, prefix) + told + "</figure>"
    note = "<figcaption>" + escaped(drawing.title) + ". " + escaped(drawing.scale_note) + "</figcaption>"
    return '<figure class="drawing">' + svg(drawing, prefix) + note + "</figure>"


def svg(drawing: Drawing, prefix: str) -> str:
    """Return the drawing as one inline SVG element with its title and text form."""
    page = _Sheet(drawing)
    used = [one.hatch for one in drawing.shapes]
    patterns = "".join(
        [
            '<pattern id="'
            + prefix
            + "-"
            + name
            + '" width="8" height="8" patternUnits="userSpaceOnUse">'
            + marks
            + "</pattern>"
            for name, marks in _HATCHES
            if name in used
        ]
    )
    body = [_shape(page, one, prefix) for one in drawing.shapes]
    body += _dimensions(page, drawing.dimensions)
    body += _labels(page, drawing.labels)
    content = ("<defs>" + patterns + "</defs>" if patterns else "") + "".join(body)
    return sheet(page.height, prefix, drawing.title, drawing.description, content)


class _Sheet:
    """Where real inches fall on the page, in whole tenths of a unit: whole numbers are quick in every engine."""

    def __init__(self, drawing: Drawing) -> None:
        left = EDGE + _margin(drawing, "before", "left")
        right = EDGE + _margin(drawing, "after", "right")
        below = EDGE + (OFFSET + LETTER + 4 if [one for one in drawing.dimensions if one.side == "below"] else 0)
        sides = [one.side for one in drawing.labels]
        if "under" in sides:
            below = max(below, EDGE + LETTER + 6)
        above = EDGE + (LETTER + 2 if "over" in sides else 0)
        scale = (PAGE_WIDTH - left - right) / drawing.width
        if drawing.height * drawing.stretch * scale > drawing.tallest:
            scale = drawing.tallest / (drawing.height * drawing.stretch)
        self._scale_x, self._scale_y = scale * TENTHS, scale * drawing.stretch * TENTHS
        self._left = round_half_up(left * TENTHS)
        self._base = above * TENTHS + round_half_up(drawing.height * self._scale_y)
        self.right = self.x(drawing.width)
        in_margin = _spread([self.y(one.at[1]) for one in drawing.labels if one.side == "right"])
        at_side = _spread(
            [(self.y(one.start[1]) + self.y(one.end[1])) // 2 for one in drawing.dimensions if one.side == "left"]
        )
        lowest = max(in_margin[-1:] + at_side[-1:] + [0]) + MIDDLE + EDGE * TENTHS
        self.height = max(self._base + below * TENTHS, lowest)

    def x(self, value: Fraction) -> int:
        return self._left + round_half_up(value * self._scale_x)

    def y(self, value: Fraction) -> int:
        return self._base - round_half_up(value * self._scale_y)


def _spread(heights: list[int]) -> list[int]:
    """Return the heights of rows of lettering [tenths], from the top down, so that none covers the one above it."""
    spread = []
    last = -ROW * TENTHS
    for y in sorted(heights):
        last = max(y, last + ROW * TENTHS)
        spread.append(last)
    return spread


def _margin(drawing: Drawing, label_side: str, dimension_side: str) -> Fraction:
    """The space that lettering on one side needs [units]."""
    needed = [Fraction(0)]
    for label in drawing.labels:
        if label.side == label_side or (label_side == "after" and label.side == "right"):
            needed.append(len(label.text) * LETTER_WIDTH + (OFFSET + 6 if label.side == "right" else 10))
        elif label.side in ("over", "under"):
            needed.append(len(label.text) * LETTER_WIDTH / 2)  # it may be wider than its wall
    for dimension in drawing.dimensions:
        if dimension.side == dimension_side:
            needed.append(len(dimension.text) * LETTER_WIDTH + OFFSET + TICK)
    return max(needed)


def _shape(page: _Sheet, one: Shape, prefix: str) -> str:
    points = " ".join([_number(page.x(x)) + "," + _number(page.y(y)) for x, y in one.points])
    classes = one.weight + (" old" if one.old else "")
    if one.weight == "fault":
        return '<polyline class="wrong' + (" old" if one.old else "") + '" fill="none" points="' + points + '"/>'
    if one.weight == "curve":
        return '<polyline class="' + ("dim" if one.old else "edge") + '" fill="none" points="' + points + '"/>'
    hatched = one.hatch in [name for name, _ in _HATCHES]
    if one.hatch == "solid":
        classes += " solid"
    fill = ' fill="url(#' + prefix + "-" + one.hatch + ')"' if hatched else ' fill="none"'
    return '<polygon class="' + classes + '"' + fill + ' points="' + points + '"/>'


def _dimensions(page: _Sheet, dimensions: tuple[Dimension, ...]) -> list[str]:
    """Dimension lines with ticks; figures at the side are moved down so that none covers another."""
    parts = []
    last = -ROW * TENTHS
    for one in sorted(dimensions, key=lambda dimension: (-dimension.end[1], dimension.text)):
        x1, y1, x2, y2 = page.x(one.start[0]), page.y(one.start[1]), page.x(one.end[0]), page.y(one.end[1])
        if one.side == "left":
            x = x1 - OFFSET * TENTHS
            last = max((y1 + y2) // 2, last + ROW * TENTHS)
            parts += [_path("dim", x, y1, x, y2), _tick(x, y1), _tick(x, y2)]
            parts.append(_text(x - (TICK + 2) * TENTHS, last + MIDDLE, "end", one.text))
        else:
            y = y1 + OFFSET * TENTHS
            parts += [_path("dim", x1, y, x2, y), _tick(x1, y), _tick(x2, y)]
            parts.append(_text((x1 + x2) // 2, y + (LETTER + 2) * TENTHS, "middle", one.text))
    return parts


def _labels(page: _Sheet, labels: tuple[Label, ...]) -> list[str]:
    """Labels where they belong; those in the margin are moved down so that none covers another."""
    parts = []
    last = -ROW * TENTHS
    start = page.right + OFFSET * TENTHS
    for one in sorted(
        [label for label in labels if label.side == "right"], key=lambda label: (-label.at[1], label.text)
    ):
        y = page.y(one.at[1])
        last = max(y, last + ROW * TENTHS)
        parts.append(_path("dim", page.x(one.at[0]), y, start, last))
        parts.append(_text(start + 4 * TENTHS, last + MIDDLE, "start", one.text))
    for one in labels:
        x, y = page.x(one.at[0]), page.y(one.at[1]) + MIDDLE
        if one.side == "on":
            parts.append(_text(x, y, "middle", one.text))
        elif one.side == "after":
            parts.append(_text(x + BESIDE, y, "start", one.text))
        elif one.side == "before":
            parts.append(_text(x - BESIDE, y, "end", one.text))
        elif one.side == "over":
            parts.append(_text(x, y - MIDDLE - BESIDE, "middle", one.text))
        elif one.side == "under":
            parts.append(_text(x, y - MIDDLE + LETTER * TENTHS + 2 * TENTHS, "middle", one.text))
    return parts


def _tick(x: int, y: int) -> str:
    reach = TICK * TENTHS
    return _path("dim tick", x - reach, y + reach, x + reach, y - reach)


def _path(classes: str, x1: int, y1: int, x2: int, y2: int) -> str:
    start = "M" + _number(x1) + " " + _number(y1)
    return '<path class="' + classes + '" d="' + start + "L" + _number(x2) + " " + _number(y2) + '"/>'


def _text(x: int, y: int, anchor: str, text: str) -> str:
    place = '<text x="' + _number(x) + '" y="' + _number(y) + '" text-anchor="' + anchor + '">'
    return place + escaped(text) + "</text>"
