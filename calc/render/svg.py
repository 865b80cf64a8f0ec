"""A drawing as SVG: three line weights, trade hatches, dimension ticks, lettering that can be read on a phone.

The page is 360 units wide, about a phone's width in pixels, so a unit is near a pixel there. Coordinates
are written in tenths by whole-number arithmetic.
"""

from fractions import Fraction

from calc.core.drawing import SHEET_HEIGHT, Dimension, Drawing, Label, Shape
from calc.numbers.exact import round_half_up
from calc.render.escape import escaped

PAGE_WIDTH = 360
LETTER = 14  # size of the lettering [units]
LETTER_WIDTH = Fraction(15, 2)  # mean width of a letter at that size [units], for margins
TICK = 4  # half a dimension tick [units]
OFFSET = 14  # from the work to a dimension line [units]
EDGE = 6  # empty edge round the sheet [units]
TENTHS = 10
MIDDLE = LETTER * TENTHS // 3  # from the middle of a line of lettering down to its foot [tenths]
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


def figure(drawing: Drawing, prefix: str) -> str:
    """Return the drawing as an HTML figure with a caption; `prefix` keeps its ids apart from others on the page."""
    note = "<figcaption>" + escaped(drawing.title) + ". " + escaped(drawing.scale_note) + "</figcaption>"
    return '<figure class="drawing">' + svg(drawing, prefix) + note + "</figure>"


def svg(drawing: Drawing, prefix: str) -> str:
    """Return the drawing as one inline SVG element with its title and text form."""
    sheet = _Sheet(drawing)
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
    body = [_shape(sheet, one, prefix) for one in drawing.shapes]
    body += _dimensions(sheet, drawing.dimensions)
    body += _labels(sheet, drawing.labels)
    return (
        '<svg class="sheet" viewBox="0 0 ' + str(PAGE_WIDTH) + " " + _number(sheet.height) + '" role="img" aria-labelledby="'
        + prefix + "-title " + prefix + '-desc"><title id="' + prefix + '-title">' + escaped(drawing.title) + "</title>"
        '<desc id="' + prefix + '-desc">' + escaped(drawing.description) + "</desc>"
        + ("<defs>" + patterns + "</defs>" if patterns else "") + "".join(body) + "</svg>"
    )  # fmt: skip


class _Sheet:
    """Where real inches fall on the page, in whole tenths of a unit: whole numbers are quick in every engine."""

    def __init__(self, drawing: Drawing) -> None:
        left = EDGE + _margin(drawing, "before", "left")
        right = EDGE + _margin(drawing, "after", "right")
        below = EDGE + (OFFSET + LETTER + 4 if [one for one in drawing.dimensions if one.side == "below"] else 0)
        scale = (PAGE_WIDTH - left - right) / drawing.width
        if drawing.height * drawing.stretch * scale > SHEET_HEIGHT:
            scale = SHEET_HEIGHT / (drawing.height * drawing.stretch)
        self._scale_x, self._scale_y = scale * TENTHS, scale * drawing.stretch * TENTHS
        self._left = round_half_up(left * TENTHS)
        self._base = EDGE * TENTHS + round_half_up(drawing.height * self._scale_y)
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
    for dimension in drawing.dimensions:
        if dimension.side == dimension_side:
            needed.append(len(dimension.text) * LETTER_WIDTH + OFFSET + TICK)
    return max(needed)


def _shape(sheet: _Sheet, one: Shape, prefix: str) -> str:
    points = " ".join([_number(sheet.x(x)) + "," + _number(sheet.y(y)) for x, y in one.points])
    classes = one.weight + (" old" if one.old else "")
    if one.weight == "curve":
        return '<polyline class="' + ("dim" if one.old else "edge") + '" fill="none" points="' + points + '"/>'
    hatched = one.hatch in [name for name, _ in _HATCHES]
    if one.hatch == "solid":
        classes += " solid"
    fill = ' fill="url(#' + prefix + "-" + one.hatch + ')"' if hatched else ' fill="none"'
    return '<polygon class="' + classes + '"' + fill + ' points="' + points + '"/>'


def _dimensions(sheet: _Sheet, dimensions: tuple[Dimension, ...]) -> list[str]:
    """Dimension lines with ticks; figures at the side are moved down so that none covers another."""
    parts = []
    last = -ROW * TENTHS
    for one in sorted(dimensions, key=lambda dimension: (-dimension.end[1], dimension.text)):
        x1, y1, x2, y2 = sheet.x(one.start[0]), sheet.y(one.start[1]), sheet.x(one.end[0]), sheet.y(one.end[1])
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


def _labels(sheet: _Sheet, labels: tuple[Label, ...]) -> list[str]:
    """Labels where they belong; those in the margin are moved down so that none covers another."""
    parts = []
    last = -ROW * TENTHS
    start = sheet.right + OFFSET * TENTHS
    for one in sorted(
        [label for label in labels if label.side == "right"], key=lambda label: (-label.at[1], label.text)
    ):
        y = sheet.y(one.at[1])
        last = max(y, last + ROW * TENTHS)
        parts.append(_path("dim", sheet.x(one.at[0]), y, start, last))
        parts.append(_text(start + 4 * TENTHS, last + MIDDLE, "start", one.text))
    for one in labels:
        x, y = sheet.x(one.at[0]), sheet.y(one.at[1]) + MIDDLE
        if one.side == "on":
            parts.append(_text(x, y, "middle", one.text))
        elif one.side == "after":
            parts.append(_text(x + BESIDE, y, "start", one.text))
        elif one.side == "before":
            parts.append(_text(x - BESIDE, y, "end", one.text))
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


def _number(tenths: int) -> str:
    """Return a coordinate [tenths of a unit, >= 0] as it is written in SVG."""
    whole, rest = divmod(tenths, TENTHS)
    return str(whole) + ("." + str(rest) if rest else "")
