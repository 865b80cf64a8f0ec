"""What every drawing is put on the page with: lettering and its width, lines, coordinates in tenths of a unit."""

from calc.render.escape import escaped

PAGE_WIDTH = 360  # a unit is near a pixel on a phone [units]
LETTER = 14  # size of the lettering [units]
EDGE = 6  # empty edge round the sheet [units]
TENTHS = 10
TICK = 4  # half a dimension tick [units]
MIDDLE = LETTER * TENTHS // 3  # from the middle of a line of lettering down to its foot [tenths]
ROW = LETTER + 2  # from one line of lettering to the next [units]

_NARROW = (
    ("' ilj.,;:!|", 45),
    ('"/()-ftrI', 60),
    ("mwMW%", 125),
)  # how wide a letter may be in any of the fonts [tenths]
_USUAL = 86


def width_of(text: str) -> int:
    """Return how wide a line of lettering may be [tenths of a unit], in the widest of the usual fonts."""
    found = 0
    for letter in text:
        wide = _USUAL
        for letters, width in _NARROW:
            if letter in letters:
                wide = width
        found += wide
    return found


def number(tenths: int) -> str:
    """Return a coordinate [tenths of a unit, >= 0] as it is written in SVG."""
    whole, rest = divmod(tenths, TENTHS)
    return str(whole) + ("." + str(rest) if rest else "")


def line(x1: int, y1: int, x2: int, y2: int) -> str:
    """Return one line as a part of a path."""
    return "M" + number(x1) + " " + number(y1) + "L" + number(x2) + " " + number(y2)


def path(classes: str, lines: list[str]) -> str:
    """Return lines as one path of a weight, or nothing where there are none."""
    return '<path class="' + classes + '" d="' + "".join(lines) + '"/>' if lines else ""


def tick(x: int, y: int) -> str:
    """Return a dimension tick as a part of a path."""
    reach = TICK * TENTHS
    return line(x - reach, y + reach, x + reach, y - reach)


def text(x: int, y: int, anchor: str, told: str, turned: bool = False, classes: str = "", bold: str = "") -> str:
    """Return lettering with its foot at a point, `turned` so that it is read from the right; `bold` stands before it."""
    place = '<text x="' + number(x) + '" y="' + number(y) + '" text-anchor="' + anchor + '"'
    if turned:
        place += ' transform="rotate(-90 ' + number(x) + " " + number(y) + ')"'
    if classes:
        place += ' class="' + classes + '"'
    return place + ">" + ("<tspan>" + bold + "</tspan> " if bold else "") + escaped(told) + "</text>"


def sheet(height: int, prefix: str, title: str, description: str, body: str) -> str:
    """Return one inline SVG element, `height` [tenths] tall, with its title and text form."""
    return (
        '<svg class="sheet" viewBox="0 0 ' + str(PAGE_WIDTH) + " " + number(height) + '" role="img" aria-labelledby="'
        + prefix + "-title " + prefix + '-desc"><title id="' + prefix + '-title">' + escaped(title) + "</title>"
        '<desc id="' + prefix + '-desc">' + escaped(description) + "</desc>" + body + "</svg>"
    )  # fmt: skip


def rect(classes: str, x: int, y: int, wide: int, deep: int) -> str:
    """Return a rectangle by its upper left corner and size [tenths]."""
    place = '<rect class="' + classes + '" x="' + number(x) + '" y="' + number(y)
    return place + '" width="' + number(wide) + '" height="' + number(deep) + '"/>'


def way_out(along: bool, here: int, start: int, end: int) -> str:
    """Return a line that leads out of the drawing at `here`."""
    return line(here, start, here, end) if along else line(start, here, end, here)


def dot(x: int, y: int) -> str:
    """Return the dot in which a line ends."""
    return '<circle class="dot" cx="' + number(x) + '" cy="' + number(y) + '" r="2"/>'
