"""Drawings of what a reader looks at and finds: kinds of texture, light along a ceiling, joists, places of samples."""

from collections.abc import Callable
from dataclasses import replace

from calc.core.drawing import Drawing, Shape
from handbook.draw.shapes import Points, area, box, drawn, line, tag

TILE = 100  # a patch of ceiling, seen from below [units]
GAP = 124  # from one patch to the next beside it [units]
ROW = 128  # from one row of patches to the next [units]


OUTLINES = (
    ((1, 5), (4, 1), (9, 0), (11, 3), (15, 6), (14, 11), (10, 12), (8, 15), (2, 13), (0, 9)),
    ((0, 8), (3, 5), (3, 1), (8, 2), (13, 0), (15, 6), (13, 9), (14, 14), (7, 14), (4, 12)),
)  # two crumbs of texture from below [units]


def _crumbs(left: int, low: int, places: Points, sizes: tuple[float, ...]) -> list[Shape]:
    """Return a crumb at each place, of one size after another."""
    return [
        area(
            "texture",
            *(
                (round(left + x + dx * sizes[at % len(sizes)]), round(low + y + dy * sizes[at % len(sizes)]))
                for dx, dy in OUTLINES[at % len(OUTLINES)]
            ),
            old=True,
        )
        for at, (x, y) in enumerate(places)
    ]


def _fine(left: int, low: int) -> list[Shape]:
    return [box("texture", left, low, left + TILE, low + TILE, old=True)]


def _coarse(left: int, low: int) -> list[Shape]:
    places = tuple((4 + x + at % 2 * 4, 4 + at * 24 + x % 3) for at in range(4) for x in (0, 23, 47, 70))
    return _crumbs(left, low, places, (1.3, 1, 1.1, 1.3, 1.2))


def _peel(left: int, low: int) -> list[Shape]:
    places = tuple((7 + x + at % 2 * 13, 9 + at * 23) for at in range(4) for x in (0, 34, 63))
    return [replace(one, hatch="none") for one in _crumbs(left, low, places, (0.7, 0.5, 0.6, 0.5))]


def _rings(left: int, low: int) -> list[Shape]:
    """Return half circles in rows, each with a second one inside."""
    half = ((-23, 0), (-21, 9), (-16, 17), (-8, 22), (0, 23), (8, 22), (16, 17), (21, 9), (23, 0))
    return [
        line(*((round(left + x + dx * part), round(low + y + dy * part)) for dx, dy in half), thin=part < 1)
        for y in (6, 36, 66)
        for x in (26, 74)
        for part in (1, 0.5)
    ]


def _leaves(left: int, low: int) -> list[Shape]:
    """Return stars of eight leaves, as a round brush leaves them."""
    star = ((0, 22), (4, 9), (15, 15), (9, 4), (22, 0), (9, -4), (15, -15), (4, -9), (0, -22), (-4, -9), (-15, -15), (-9, -4), (-22, 0), (-9, 4), (-15, 15), (-4, 9))  # fmt: skip
    return [
        area("none", *((left + x + dx, low + y + dy) for dx, dy in star), old=True)
        for x, y in ((26, 26), (74, 26), (26, 74), (74, 74))
    ]


def _islands(left: int, low: int) -> list[Shape]:
    outline = ((0, 8), (4, 3), (11, 4), (17, 0), (24, 3), (30, 4), (28, 10), (21, 12), (18, 17), (10, 14), (4, 16))
    places = ((5, 5, 1, 1), (95, 8, 1.2, -1), (54, 32, 1.2, -1), (62, 38, 1, 1), (6, 60, 1, 1), (84, 61, 1.1, -1), (30, 80, 0.8, 1), (92, 84, 0.8, -1))  # fmt: skip
    return [
        area(
            "texture",
            *((round(left + x + dx * part * way), round(low + y + dy * part)) for dx, dy in outline),
            old=True,
        )
        for x, y, part, way in places
    ]


def texture_kinds() -> Drawing:
    kinds: tuple[tuple[str, Callable[[int, int], list[Shape]]], ...] = (
        ("Fine popcorn", _fine),
        ("Coarse", _coarse),
        ("Orange peel", _peel),
        ("Knockdown", _islands),
        ("Swirl", _rings),
        ("Stomp", _leaves),
    )
    shapes: list[Shape] = []
    labels = []
    for at, (name, made) in enumerate(kinds):
        left, low = at % 3 * GAP, (0 if at > 2 else ROW) + 22
        shapes += [*made(left, low), box("none", left, low, left + TILE, low + TILE)]
        labels.append(tag(left + TILE / 2, low - 11, name, "on"))
    return drawn(
        "Which texture is it",
        "Six patches of ceiling seen from below. Fine popcorn is small crumbs close together, coarse popcorn large ones. Orange"
        " peel is low bumps farther apart. Knockdown is flat islands, swirl half circles in rows, stomp leaves in stars.",
        TILE + 2 * GAP, 2 * ROW - 6, shapes, labels,
    )  # fmt: skip


def raking_light() -> Drawing:
    """Sections under each other, with light from the left along each: what casts a shadow is seen."""
    rows: tuple[tuple[str, Points], ...] = (
        ("Textured", tuple((x, 9 if x % 20 else 0) for x in range(0, 161, 10))),
        ("Level 3", ((0, 0), (48, 0), (54, 2), (66, 7), (74, 7), (86, 2), (92, 0), (128, 0), (132, 5), (136, 0), (170, 0))),
        ("Level 4", ((0, 0), (44, 0), (70, 2), (96, 0), (170, 0))),
        ("Level 5", ((0, 0), (170, 0))),
    )  # fmt: skip
    shadows: tuple[tuple[Points, ...], ...] = (
        tuple(((x, 9), (x + 10, 0), (x + 10, 6)) for x in range(10, 151, 20)),
        (((74, 7), (86, 2), (92, 0), (126, 0)), ((132, 5), (136, 0), (158, 0))),
        (((70, 2), (96, 0), (110, 0)),),
        (),
    )
    shapes: list[Shape] = []
    labels = []
    for at, ((name, face), dark) in enumerate(zip(rows, shadows, strict=True)):
        level = 162 - at * 46
        shapes.append(area("board", (30, level + 14), (30, level), *((30 + x, level - y) for x, y in face), (200, level), (200, level + 14), old=True))  # fmt: skip
        shapes += [area("solid", *((30 + x, level - y) for x, y in one)) for one in dark]
        lamp = level - 14
        shapes += [box("solid", 2, lamp - 4, 12, lamp + 4), line((12, lamp), (196, level - 6), thin=True), line((12, lamp - 2), (196, level - 15), thin=True)]  # fmt: skip
        labels.append(tag(196, level + 5, name))
    return drawn(
        "Light along the ceiling",
        "Four ceilings in section, each with a lamp at the left that shines along it, and its shadows filled in. Texture casts one behind"
        " each bump. At level 3 tape and screws still cast one. At level 4 a wide low joint casts a faint one. At level 5 there is none.",
        200, 178, shapes, labels,
    )  # fmt: skip


def sample_places() -> Drawing:
    places = ((36, 108), (124, 40), (182, 92))
    walls = area("plaster", (0, 0), (230, 0), (230, 140), (0, 140), (0, 8), (8, 8), (8, 132), (222, 132), (222, 8), (0, 8), old=True)  # fmt: skip
    light = [box("none", 101, 70, 115, 84, old=True), line((101, 70), (115, 84), thin=True), line((101, 84), (115, 70), thin=True)]  # fmt: skip
    squares = [box("texture", x - 9, y - 9, x + 9, y + 9) for x, y in places]
    return drawn(
        "Places spread over the ceiling",
        "Plan of one ceiling with a light in its middle. Three small squares, numbered, lie spread over it, away from the walls and"
        " from each other. An inspector takes the samples and chooses the places. The form tells how many.",
        230, 140,
        [walls, *light, *squares],
        [tag(x + 10, y, str(at + 1), "after") for at, (x, y) in enumerate(places)],
    )  # fmt: skip


def joist_marks() -> Drawing:
    joists = (20, 84, 148)
    shapes: list[Shape] = [box("plaster", 0, 0, 8, 132, old=True), box("none", 8, 0, 208, 132)]
    for x in joists:
        shapes += [box("timber", x, 0, x + 20, 132, old=True)]
        shapes += [box("solid", x + 9, y, x + 11, y + 2) for y in (18, 42, 66, 90, 114)]
    shapes += [line((94, 0), (94, 132)), line((158, 0), (158, 132))]
    shapes += [area("none", (200, 61), (184, 61), (174, 67), (184, 73), (200, 73)), line((94, 8), (158, 8), thin=True)]
    shapes += [
        line((94, 4), (94, 12)),
        line((158, 4), (158, 12)),
        box("solid", 143, 41, 146, 44),
        box("solid", 170, 41, 173, 44),
        line((8, 8), (30, 8), thin=True),
        line((30, 4), (30, 12)),
    ]
    return drawn(
        "Nails, middle, next joist, line",
        "A ceiling seen from below, three joists above it in gray. Nails stand in rows under each. A magnet leans toward them. Both"
        " edges of one joist are tried with a thin nail. The next is 16 or 24 inches on, from middle to middle. A line is snapped under each.",
        208, 132,
        shapes,
        [tag(158, 120, "Snapped line"), tag(159, 91, "Row of nails"), tag(200, 67, "Magnet"), tag(173, 42.5, "Both edges"), tag(158, 8, "16 or 24 in")],
    )  # fmt: skip


LOOKS: dict[str, Callable[[], Drawing]] = {
    "texture-kinds": texture_kinds,
    "raking-light": raking_light,
    "sample-places": sample_places,
    "joist-marks": joist_marks,
}
