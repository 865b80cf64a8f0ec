"""The firm's mark, an SVG that is taken whole or refused: only shapes and their paint, read by a parser that knows no entity.

It is shown as an image, where no browser runs a script of it or fetches what it names; the list here keeps such things out of the
site at all, for whoever opens the file by itself.
"""

import re
from pathlib import Path
from xml.parsers import expat

from handbook.content.faults import ContentFault

MOST_BYTES = 50_000
NAMESPACE = "http://www.w3.org/2000/svg"
ELEMENTS = (
    "svg", "g", "title", "desc", "path", "rect", "circle", "ellipse", "line", "polyline", "polygon",
    "defs", "linearGradient", "radialGradient", "stop", "clipPath",
)  # fmt: skip
ATTRIBUTES = (
    "id", "viewBox", "width", "height", "x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry", "fx", "fy", "d", "points", "transform",
    "fill", "fill-opacity", "fill-rule", "stroke", "stroke-width", "stroke-linecap", "stroke-linejoin", "stroke-miterlimit", "stroke-opacity",
    "stroke-dasharray", "stroke-dashoffset", "opacity", "clip-path", "clip-rule", "offset", "stop-color", "stop-opacity", "gradientUnits",
    "gradientTransform", "spreadMethod", "clipPathUnits", "preserveAspectRatio", "version", "role",
)  # fmt: skip
# Numbers, names of colors, and a place in the same file; nothing that could lead elsewhere.
VALUE = re.compile(r"(?!.*url\()[\w\s.,+%#()-]*|url\(#[\w-]+\)", re.DOTALL | re.ASCII)
WORKS = 'Like: <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><path d="M2 2h28v28z" fill="#1f5a54"/></svg>'


def faults(path: Path, shown: str) -> list[ContentFault]:
    """Return everything in the file that is no plain drawing."""
    found: list[ContentFault] = []
    data = path.read_bytes()
    if len(data) > MOST_BYTES:
        return [
            ContentFault(
                shown, 1, 1, "FIRM-MARK", f"{len(data)} bytes are too many for a mark; {MOST_BYTES} at most. {WORKS}"
            )
        ]
    parser = expat.ParserCreate(encoding="UTF-8")
    opened: list[str] = []

    def fault(message: str) -> None:
        line, column = parser.CurrentLineNumber, parser.CurrentColumnNumber + 1
        found.append(ContentFault(shown, line, column, "FIRM-MARK", message))

    def start(name: str, attributes: dict[str, str]) -> None:
        if not opened and name != "svg":
            fault(f"the file begins with <{name}>; a mark begins with <svg>. {WORKS}")
        elif name not in ELEMENTS:
            fault(f"<{name}> is no part of a mark. Use {', '.join(ELEMENTS)}")
        for key, value in attributes.items():
            if key == "xmlns" and value == NAMESPACE:
                continue
            if key not in ATTRIBUTES:
                fault(
                    f"{key} of <{name}> is not taken. Use shapes with fill and stroke; turn text, styles and pictures into paths"
                )
            elif not VALUE.fullmatch(value):
                fault(
                    f"{key} of <{name}> leads out of the drawing or cannot be read. Use numbers, colors and url(#name)"
                )
        if not opened and name == "svg":
            if attributes.get("xmlns") != NAMESPACE:
                fault(f'<svg> has no xmlns="{NAMESPACE}". {WORKS}')
            if not re.fullmatch(r"\s*-?[\d.]+[\s,]+-?[\d.]+[\s,]+[\d.]+[\s,]+[\d.]+\s*", attributes.get("viewBox", "")):
                fault(f"<svg> has no viewBox of four numbers. {WORKS}")
        opened.append(name)

    parser.StartElementHandler = start
    parser.StartDoctypeDeclHandler = lambda *_: fault(f"a document type, and entities with it, are not taken. {WORKS}")
    parser.EntityDeclHandler = lambda *_: fault("an entity is not taken")
    parser.ExternalEntityRefHandler = lambda *_: 0
    parser.ProcessingInstructionHandler = lambda *_: fault("an instruction (<?…?>) is not taken. Take it out")
    try:
        parser.Parse(data, True)
    except expat.ExpatError as error:
        where = (error.lineno, error.offset + 1)
        found.append(
            ContentFault(shown, *where, "FIRM-MARK", f"this is not XML: {expat.ErrorString(error.code)}. {WORKS}")
        )
    return found
