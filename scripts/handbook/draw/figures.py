"""Drawings of sections and motions that no calculator makes: made of the same lines, hatches and lettering as theirs.

Sizes are inches of the real thing where it is drawn to scale, and plain units where the drawing says that it is not.
"""

import re
import xml.etree.ElementTree as ElementTree
from collections.abc import Callable

from calc.core.drawing import Drawing, Shape
from calc.render import svg
from handbook.draw.looks import LOOKS
from handbook.draw.motions import MOTIONS
from handbook.draw.shapes import Number, area, box, drawn, line, tag
from handbook.draw.ways import SMALL, WAYS


def _bumps(left: Number, right: Number, level: Number, depth: Number, count: int, old: bool = True) -> Shape:
    """Texture hanging from `level`: bumps of unlike depth in a row."""
    step = (right - left) / count
    row: list[tuple[Number, Number]] = [(left, level)]
    for at in range(count):
        tip = depth * (1.0 if at % 3 == 0 else 0.7 if at % 3 == 1 else 0.85)
        row += [
            (round(left + step * (at + 0.5), 3), round(level - tip, 3)),
            (round(left + step * (at + 1), 3), round(level - depth * 0.15, 3)),
        ]
    return area("texture", *row, (right, level), old=old)


def covered_edge() -> Drawing:
    return drawn(
        "How film meets at a wall",
        "Section through a wall. Floor film is turned up at the wall and taped above the trim. Wall film hangs from tape under"
        " the ceiling and comes down over the turned-up floor film, so that water runs onto the floor film and not behind it.",
        60, 84,
        [
            box("board", 0, 80, 60, 84, old=True), _bumps(4, 60, 80, 3, 12), box("plaster", 0, 4, 4, 80, old=True), box("timber", 0, 0, 60, 4, old=True),
            box("none", 4, 4, 5.5, 10, old=True), line((60, 5), (7, 5), (6.4, 14)), line((5, 75), (8.5, 66), (9.5, 7), (24, 6.4)),
            box("solid", 4, 73, 6, 77), box("solid", 4, 12, 6.6, 16),
        ],
        [tag(5, 75, "Low-tack tape"), tag(9, 46, "Wall film"), tag(6.3, 14, "Tape"), tag(24, 6.4, "Over it"), tag(40, 5, "Floor film")],
    )  # fmt: skip


def knife_angle() -> Drawing:
    return drawn(
        "Hold the knife nearly flat",
        "Section through board and texture. A knife held nearly flat slides under the texture and lifts it. A steep knife, in"
        " gray, digs its edge into the paper of the board.",
        48, 26,
        [
            box("board", 0, 20, 48, 26), _bumps(0, 30, 20, 5, 6), area("solid", (30, 20), (31, 19.2), (46, 13.4), (46, 14.6)),
            area("none", (36, 20.6), (36.8, 20), (43, 1), (42, 1), old=True),
        ],
        [tag(40, 23, "Paper face"), tag(44, 14, "Flat: it lifts"), tag(42, 4, "Steep: it cuts")],
    )  # fmt: skip


def spray_pattern() -> Drawing:
    zigzag = tuple((6 + at * 6, 8 if at % 2 == 0 else 32) for at in range(6))
    cross = tuple((4 if at % 2 == 0 else 37, 10 + at * 4) for at in range(6))
    return drawn(
        "Mist in two thin passes",
        "Plan of one strip of the ceiling. The first pass goes to and fro across the strip, the second lightly along it, in"
        " thin lines. A ring of a hand's width round the electrical box stays dry.",
        60, 40,
        [box("none", 0, 0, 60, 40, old=True), line(*zigzag), line(*cross, thin=True), box("room", 40, 12, 56, 28), box("solid", 46, 18, 50, 22)],
        [tag(30, 32, "First pass"), tag(37, 14, "Second pass"), tag(55, 26, "Stays dry"), tag(48, 20, "Box")],
    )  # fmt: skip


def strip_order() -> Drawing:
    strips = [box("none", 0, at * 12, 84, at * 12 + 12) for at in range(5)]
    return drawn(
        "Strip by strip, away from the door",
        "Plan of a room from above, the door at the bottom. Five strips, numbered from the far wall toward the door. Each is"
        " misted, scraped and mopped up before the next, so that nobody walks in mud.",
        84, 60,
        [*strips, box("solid", 60, 0, 80, 1.5)],
        [*(tag(20, 60 - at * 12 - 6, str(at + 1), "on") for at in range(5)), tag(70, 1, "Door"), tag(50, 54, "Start here"), tag(50, 30, "Mop each")],
    )  # fmt: skip


def knocked_down_edge() -> Drawing:
    return drawn(
        "Tips off, hollows filled",
        "Section through board and texture. On the left the texture as it was. On the right its tips are knocked off, the"
        " hollows are filled with compound, and a thin coat covers all of it.",
        60, 22,
        [
            box("board", 0, 14, 60, 22, old=True), _bumps(0, 24, 14, 9, 5), _bumps(30, 60, 14, 5, 6, old=False), box("compound", 30, 8.5, 60, 14),
            box("none", 30, 7.2, 60, 8.5),
        ],
        [tag(12, 2, "As it was", "on"), tag(45, 11, "Fill"), tag(50, 7.6, "Thin coat")],
    )  # fmt: skip


def box_extender() -> Drawing:
    return drawn(
        "A box brought to the new face",
        "Section through a ceiling box. The box sat flush with the old board. New board covers it, so an extender brings its"
        " edge to the new face. In gypsum it may sit at most a quarter inch behind the face, in wood not at all.",
        44, 34,
        [
            box("timber", 0, 14, 8, 34, old=True), box("board", 8, 10, 14, 14, old=True), box("board", 30, 10, 44, 14, old=True), box("board", 0, 10, 8, 14, old=True),
            _bumps(0, 14, 10, 2, 4), _bumps(30, 44, 10, 2, 4), box("board", 0, 4, 14, 8), box("board", 30, 4, 44, 8),
            line((15, 10), (15, 28), (29, 28), (29, 10)), box("solid", 15, 4, 16.2, 11), box("solid", 27.8, 4, 29, 11),
        ],
        [tag(5, 26, "Joist"), tag(29, 22, "Old box"), tag(40, 12, "Old board"), tag(28.4, 8, "Extender"), tag(40, 6, "New board")],
    )  # fmt: skip


def skylight_well() -> Drawing:
    return drawn(
        "New board at a skylight well",
        "Section through the edge of a skylight well. New board on the ceiling ends at the well. A strip of board lines the well"
        " down to the new face, and a corner bead covers the edge where they meet.",
        48, 48,
        [
            box("timber", 16, 20, 22, 48, old=True), box("board", 0, 16, 22, 20, old=True), _bumps(0, 22, 16, 2.4, 7), box("board", 22, 16, 26, 48, old=True),
            box("board", 0, 9, 30, 13.4), box("board", 26, 13.4, 30, 48), line((27, 8), (31, 8), (31, 14)),
        ],
        [tag(19, 40, "Framing"), tag(24, 34, "Old well"), tag(28, 28, "New strip"), tag(10, 18, "Old board"), tag(10, 11, "New board"), tag(31, 8, "Bead")],
    )  # fmt: skip


def corner_round() -> Drawing:
    return drawn(
        "Edge of a re-covered ceiling",
        "Section through wall and ceiling. New board under the old stops a little short of the wall. A bead of caulk fills the"
        " gap and is smoothed hollow; where the gap is wide, a quarter-round strip of wood covers it.",
        40, 34,
        [
            box("plaster", 0, 0, 6, 34, old=True), box("board", 6, 28, 40, 34, old=True), _bumps(6, 40, 28, 3, 9), box("board", 8, 19, 40, 25),
            area("compound", (6, 25), (8, 25), (8, 19), (11, 19), (8.5, 17.6), (7.2, 15.4), (6, 13)),
        ],
        [tag(30, 31, "Old board"), tag(30, 22, "New board"), tag(9, 18, "Caulk"), tag(3, 6, "Wall", "on")],
    )  # fmt: skip


FIGURES: dict[str, Callable[[], Drawing]] = {
    "covered-edge": covered_edge,
    "knife-angle": knife_angle,
    "spray-pattern": spray_pattern,
    "strip-order": strip_order,
    "knocked-down-edge": knocked_down_edge,
    "box-extender": box_extender,
    "skylight-well": skylight_well,
    "corner-round": corner_round,
    **LOOKS,
    **MOTIONS,
    **WAYS,
}


def html_of(name: str) -> str:
    """Return the figure of that name as HTML, with an address of its own; a small one has no caption."""
    if name.endswith(SMALL):
        prefix = name.removeprefix("way-").removesuffix(SMALL)
        return f'<div id="figure-{name}" class="drawing small">' + svg.svg(FIGURES[name](), prefix) + "</div>"
    return svg.figure(FIGURES[name](), "figure-" + name).replace("<figure ", f'<figure id="figure-{name}" ', 1)


LETTER_WIDTH = 6.5  # what a letter takes at the least [units of the page]


def faults(drawing: Drawing) -> list[str]:
    """Return what is wrong with the lettering of a drawing: off the sheet, on other lettering, or not in its text form."""
    found: list[str] = []
    boxes: list[tuple[float, float, float, float, str]] = []
    root = ElementTree.fromstring(svg.svg(drawing, "x"))
    _, _, width, height = (float(part) for part in str(root.get("viewBox")).split())
    for text in root.iter("text"):
        words, x, y = text.text or "", float(str(text.get("x"))), float(str(text.get("y")))
        long = LETTER_WIDTH * len(words)
        left = {"start": x, "middle": x - long / 2, "end": x - long}[str(text.get("text-anchor"))]
        if left < -4 or left + long > width + 4 or not 8 <= y <= height + 2:
            found.append(f"the lettering “{words}” leaves the sheet")
        for other in boxes:
            if left < other[2] and other[0] < left + long and y - 9 < other[3] and other[1] < y:
                found.append(f"the lettering “{words}” covers “{other[4]}”")
        boxes.append((left, y - 9, left + long, y, words))
    if not re.search(r"\w+.*\.$", drawing.description, re.DOTALL) or len(drawing.description.split()) < 15:
        found.append("the text form says too little")
    return found
