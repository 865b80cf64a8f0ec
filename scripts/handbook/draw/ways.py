"""The eight ways, one section each: as it is at the left of a cut line, what the way makes of it at the right.

All are one drawing but for the right half: the same joists, board and texture at the same places, so that a look tells
two ways apart. A unit here is a unit of the page. `way-NAME` has lettering, `way-NAME-small` is the same without it.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from calc.core.drawing import Drawing, Label, Shape
from handbook.draw.shapes import Number, Points, area, box, drawn, line, tag

WIDTH, HEIGHT = 348, 106  # the sheet without its edge [units]
CUT = 168  # where the new state begins [units]
FACE = 50  # the lower face of the board [units]
BOARD = 68  # its upper face, where the joists stand [units]
DEPTHS = (16, 10, 14, 9, 17, 12)  # how far the texture hangs, bump after bump [units]
STEP = 14  # from one bump to the next [units]
HOLLOW = 4  # what hangs between two bumps [units]
DEEPEST = FACE - max(DEPTHS)  # the tip that hangs lowest [units]


def _joists() -> list[Shape]:
    return [box("timber", 46, BOARD, 78, HEIGHT, old=True), box("timber", 220, BOARD, 252, HEIGHT, old=True)]


def _board() -> Shape:
    return box("board", 0, FACE, WIDTH, BOARD, old=True)


def _bumps(left: int, right: int, level: Number = 0) -> Points:
    """Return the lower outline of the texture, from left to right; nothing hangs lower than `level`."""
    row: list[tuple[Number, Number]] = []
    for at, x in enumerate(range(left, right, STEP)):
        tip = max(FACE - DEPTHS[at % len(DEPTHS)], level)
        row += [(x + dx, y) for dx, y in ((0, FACE - HOLLOW), (4, tip + 1), (9, tip)) if x + dx <= right]
    return tuple(row)


def _texture(left: int, right: int, level: Number = 0, hatch: str = "texture") -> Shape:
    return area(hatch, (left, FACE), *_bumps(left, right, level), (right, FACE), old=True)


def _cut_line() -> list[Shape]:
    """Return the cut line: long and short dashes in turn."""
    return [
        line((CUT, low), (CUT, min(low + long, HEIGHT)), thin=True)
        for start in range(0, HEIGHT, 30)
        for low, long in ((start, 20), (start + 24, 2))
        if low < HEIGHT
    ]


def _screw(x: Number, head: Number, tip: Number) -> Shape:
    """Return a screw driven up from `head` to `tip`."""
    row = (
        (x - 5, head),
        (x + 5, head),
        (x + 1, head + 5),
        (x + 1, tip - 5),
        (x, tip),
        (x - 1, tip - 5),
        (x - 1, head + 5),
    )
    return replace(area("solid", *row), weight="none")


def _wet_scrape() -> list[Shape]:
    drops = [box("solid", x, y, x + 1, y + 2) for x, y in ((182, 25), (202, 27), (222, 24))]
    mud = [area("solid", (x, y), (x + 6, y + 1), (x + 7, y + 5), (x + 1, y + 6)) for x, y in ((236, 32), (243, 21))]
    heap = area("solid", (218, 3), (228, 8), (238, 9), (247, 13), (256, 8), (268, 7), (276, 3))
    film = line((174, 10), (182, 3), (216, 2), (300, 2), (316, 3), (340, 2), (348, 9))
    knife = area("solid", (244, 49), (292, 39), (293, 42))
    handle = area("none", (293, 37), (334, 29), (336, 35), (294, 43))
    return [_texture(CUT, 246, hatch="fill"), *drops, knife, handle, *mud, heap, film]


def _dry_scrape() -> list[Shape]:
    crumbs = [box("solid", x, y, x + 3, y + 3) for x, y in ((243, 37), (252, 31), (246, 24))]
    mouth = [
        area("none", (228, 31), (268, 31), (262, 14), (240, 14)),
        line((240, 14), (242, 6), (250, 0)),
        line((262, 14), (264, 10), (270, 6), (348, 6)),
        line((250, 0), (348, 0)),
        *(line((x, 0), (x + 3, 6), thin=True) for x in range(284, 346, 20)),
    ]
    knife = area("solid", (244, 49), (268, 31), (271, 33))
    return [_texture(CUT, 246), knife, *crumbs, *mouth]


def _sand() -> list[Shape]:
    level = FACE - 8
    hose = [
        line((284, 22), (296, 22), (304, 12), (314, 6), (348, 6)),
        line((284, 28), (299, 28), (309, 17), (317, 12), (348, 12)),
        *(line((x, 6), (x + 3, 12), thin=True) for x in range(320, 346, 12)),
    ]
    head = [box("solid", 222, level - 5, 284, level - 1), area("none", (228, level - 5), (278, level - 5), (284, 28), (284, 22), (228, 22))]  # fmt: skip
    pole = area("none", (244, 22), (252, 22), (238, 0), (230, 0))
    return [_texture(CUT, 222), _texture(222, WIDTH, level), *head, pole, *hose]


def _skim_over() -> list[Shape]:
    low = DEEPEST - 4
    row = _bumps(CUT, WIDTH)
    return [_texture(CUT, WIDTH), area("solid", (CUT, low), *row, (WIDTH, FACE - HOLLOW), (WIDTH, low))]


def _board_over() -> list[Shape]:
    low = DEEPEST - 18
    return [_texture(CUT, WIDTH), box("board", CUT, low, WIDTH, DEEPEST), _screw(230, low, 94), _screw(242, low, 94)]


def _panel_over() -> list[Shape]:
    low = DEEPEST - 12
    strips = [box("timber", x, low, x + 24, DEEPEST) for x in (174, 224, 272, 320)]
    tiles = [box("solid", x, low - 7, x + 44, low - 2) for x in (CUT + 1, 217, 265)] + [box("solid", 313, low - 7, WIDTH, low - 2)]  # fmt: skip
    return [_texture(CUT, WIDTH), *strips, *tiles, _screw(236, low, 92)]


def _leave_and_seal() -> list[Shape]:
    row = _bumps(CUT, WIDTH)
    below = tuple((x, y - 3) for x, y in reversed(row))
    return [_texture(CUT, WIDTH), area("solid", *row, (WIDTH, FACE - HOLLOW), *below)]


def _licensed_removal() -> list[Shape]:
    zipper = line(*((263 + (at % 2) * 4, 38 - at * 3) for at in range(13)))
    lock = [box("solid", 276, 14, 288, 23), line((278, 23), (278, 28), (280, 30), (284, 30), (286, 28), (286, 23))]
    tent = [line((178, FACE), (175, 0), (345, 0), (342, FACE)), line((182, FACE), (179, 3), (341, 3), (338, FACE))]
    tape = [box("solid", 174, FACE - 3, 186, FACE), box("solid", 334, FACE - 3, 346, FACE)]
    door = area("none", (236, 3), (294, 3), (294, 42), (236, 42))
    return [*tent, *tape, door, zipper, *lock]


_WAYS: tuple[tuple[str, str, str, Callable[[], list[Shape]], str], ...] = (
    ("wet-scrape", "Scraped wet", "scraped wet", _wet_scrape, "the texture is damp, a knife held nearly flat lifts it off the board, and the mud falls on film."),
    ("dry-scrape", "Scraped dry", "scraped dry", _dry_scrape, "a blade in the mouth of a vacuum pushes the dry texture off the board, and the crumbs go into the hose."),
    ("sand", "Tops off", "sanded", _sand, "a sanding head with a hose has taken the tops off the texture, and low flat bumps stay."),
    ("skim-over", "Compound", "skimmed over", _skim_over, "the texture stays, and compound fills it and covers it down to a flat face."),
    ("board-over", "New board", "boarded over", _board_over, "the texture stays, and new board under it is screwed through it and the old board into the joist."),
    ("panel-over", "Panels", "paneled over", _panel_over, "the texture stays, strips of wood under it are screwed to the joists, and tiles hang from the strips."),
    ("leave-and-seal", "Sealed", "left and sealed", _leave_and_seal, "the texture stays as it is, and a film of paint follows all of it and seals it."),
    ("licensed-removal", "Closed off", "closed off", _licensed_removal, "a tent of film is taped to the board, which is bare, and its zippered door is locked to all but a licensed firm."),
)  # fmt: skip


def _way(letters: str, words: str, made: Callable[[], list[Shape]], seen: str, small: bool) -> Drawing:
    labels: list[Label] = [] if small else [tag(123, 87, "As it is", "on"), tag(302, 87, letters, "on")]
    return drawn(
        f"As it is, and {words}",
        f"Section through a ceiling. Left: joist, board and the texture under it, as it is. Right: {seen}",
        WIDTH,
        HEIGHT,
        [*_joists(), _board(), _texture(0, CUT), *_cut_line(), *made()],
        labels,
    )


SMALL = "-small"  # what the name of a section without lettering ends in
WAYS: dict[str, Callable[[], Drawing]] = {
    f"way-{name}{SMALL if small else ''}": partial(_way, letters, words, made, seen, small)
    for name, letters, words, made, seen in _WAYS
    for small in (False, True)
}
