"""Drawings of what is done before the work: a sheet round a corner, a try in a corner, a box proved dead."""

from collections.abc import Callable

from calc.core.drawing import Drawing, Shape
from handbook.draw.shapes import area, box, drawn, line, tag

PANEL = 122  # from one picture of a row to the next [units]


def carry_round() -> Drawing:
    walls = (
        area("plaster", (0, 180), (266, 180), (266, 0), (258, 0), (258, 172), (0, 172), old=True),
        area("plaster", (0, 122), (200, 122), (200, 0), (208, 0), (208, 130), (0, 130), old=True),
    )
    sheets = (
        box("solid", 24, 138, 134, 141),
        area("solid", (179, 170), (181, 172), (258, 95), (256, 93)),
        box("solid", 220, 4, 223, 114),
    )
    arrows = (
        line((60, 152), (98, 152)),
        line((91, 155), (98, 152), (91, 149)),
        line((235, 66), (235, 28)),
        line((232, 35), (235, 28), (238, 35)),
    )
    return drawn(
        "A sheet round a corner",
        "Plan of a hall that turns a right angle. A sheet on edge is seen from above in three positions. First it lies along one"
        " hall. Second it turns past the inner corner, its ends at the outer walls. Third it lies along the other hall.",
        266, 180,
        [*walls, *sheets, *arrows],
        [tag(40, 153, "1", "on"), tag(236, 140, "2", "on"), tag(235, 80, "3", "on"), tag(150, 110, "Inner corner", "on")],
    )  # fmt: skip


def _corner(left: int, dry: str, wet: str) -> list[Shape]:
    """Return a corner of a ceiling from below, with a square whose halves are each of a hatch."""
    walls = area("plaster", (left, 28), (left + 7, 28), (left + 7, 117), (left + 104, 117), (left + 104, 124), (left, 124), old=True)  # fmt: skip
    ceiling = area("texture", (left + 7, 28), (left + 104, 28), (left + 104, 117), (left + 84, 117), (left + 84, 47), (left + 20, 47), (left + 20, 117), (left + 7, 117), old=True)  # fmt: skip
    halves = [box(dry, left + 20, 47, left + 52, 117), box(wet, left + 52, 47, left + 84, 117)]
    return [walls, ceiling, *halves]


def patch_halves() -> Drawing:
    knife = [
        area("solid", (22, 60), (50, 60), (40, 44), (32, 44)),
        area("none", (33, 44), (39, 44), (39, 20), (33, 20)),
    ]
    drops = [
        box("solid", PANEL + x, y, PANEL + x + 1, y + 3)
        for x, y in ((58, 104), (70, 98), (78, 108), (60, 84), (74, 78), (62, 64), (77, 58))
    ]
    second = [
        area("solid", *((x + 2 * PANEL + 32, y) for x, y in ((22, 60), (50, 60), (40, 44), (32, 44)))),
        area("none", *((x + 2 * PANEL + 32, y) for x, y in ((33, 44), (39, 44), (39, 20), (33, 20)))),
    ]
    return drawn(
        "One square foot, two halves",
        "A back corner of a ceiling seen from below, three times, with one square foot in two halves. First one half is scraped"
        " dry. Second the other half is misted, and left to soak. Third it is scraped wet, and the paper of both is looked at.",
        2 * PANEL + 104, 124,
        [*_corner(0, "none", "texture"), *knife, *_corner(PANEL, "none", "fill"), *drops, *_corner(2 * PANEL, "none", "none"), *second],
        [tag(52, 8, "1 Scrape dry", "on"), tag(PANEL + 52, 8, "2 Mist, wait", "on"), tag(2 * PANEL + 52, 8, "3 Scrape wet", "on")],
    )  # fmt: skip


def _tester(left: int, lit: bool, ends: tuple[tuple[int, int], tuple[int, int]]) -> list[Shape]:
    """Return a tester with two probes, their tips at `ends`, its lamp with rays where it is lit."""
    body = [box("none", left + 40, 30, left + 64, 58), box("solid" if lit else "none", left + 48, 46, left + 56, 54)]
    rays = [
        line((left + 52 + dx, 50 + dy), (left + 52 + 2 * dx, 50 + 2 * dy), thin=True)
        for dx, dy in ((-18, 0), (-16, 7), (18, 0), (16, 7))
    ]
    (x1, y1), (x2, y2) = ends
    leads = [
        line((left + 45, 58), (left + 45, 66), (left + x1, 72), (left + x1, y1)),
        line((left + 59, 58), (left + 59, 66), (left + x2, 72), (left + x2, y2)),
    ]
    return body + leads + (rays if lit else [])


def _outlet(left: int) -> list[Shape]:
    slots = [box("solid", left + x, y, left + x + 2, y + 9) for y in (88, 112) for x in (44, 58)]
    return [box("none", left + 30, 78, left + 74, 130, old=True), *slots]


def prove_dead() -> Drawing:
    middle = [
        box("none", PANEL + 22, 92, PANEL + 82, 130, old=True),
        line((PANEL + 34, 130), (PANEL + 34, 112), (PANEL + 45, 98)),
        line((PANEL + 70, 130), (PANEL + 70, 112), (PANEL + 59, 98)),
    ]
    return drawn(
        "Live, then the box, then live again",
        "Three pictures of one tester with two probes. First it lights on an outlet that is known to be live. Second it shows"
        " nothing on the wires of the ceiling box. Third it lights on the live outlet again, so it still works.",
        2 * PANEL + 104, 132,
        [
            *_outlet(0), *_tester(0, True, ((45, 92), (59, 92))),
            *middle, *_tester(PANEL, False, ((45, 98), (59, 98))),
            *_outlet(2 * PANEL), *_tester(2 * PANEL, True, ((45, 92), (59, 92))),
        ],
        [tag(52, 10, "1 Live outlet", "on"), tag(PANEL + 52, 10, "2 Box: nothing", "on"), tag(2 * PANEL + 52, 10, "3 Live again", "on")],
    )  # fmt: skip


MOTIONS: dict[str, Callable[[], Drawing]] = {
    "carry-round": carry_round,
    "patch-halves": patch_halves,
    "prove-dead": prove_dead,
}
