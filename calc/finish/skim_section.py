"""The ceiling that was skimmed, cut through."""

from fractions import Fraction

from calc.core.drawing import Dimension, Drawing, Label, Shape
from calc.numbers import measure, words
from calc.text.door import say

BOARD_DRAWN_IN = Fraction(1, 2)  # the old board on the drawing [in], not measured
SECTION_WIDTH_IN = Fraction(3, 2)  # width of the drawn section [in]
BUMPS_DRAWN = 5


def section(*, texture_depth_in: Fraction, coats: int, coat_thickness_in: Fraction, show_in: str) -> Drawing:
    """Return the ceiling cut through: board on top, texture hanging from it, fill between the bumps, film under the tips."""
    depth, width, zero, film_in = texture_depth_in, SECTION_WIDTH_IN, Fraction(0), coats * coat_thickness_in
    film_text, depth_text = measure.shown(film_in, "in", 4, show_in), measure.shown(depth, "in", 4, show_in)
    coats_text = words.plural(coats, "coat")
    under_board = film_in + depth
    top = under_board + BOARD_DRAWN_IN
    shapes = [Shape(((zero, under_board), (width, under_board), (width, top), (zero, top)), "cut", "board", True)]
    labels = [Label((width, under_board + BOARD_DRAWN_IN / 2), "right", say("skim.section.board", "old board"))]
    if depth > 0:
        shapes.append(
            Shape(((zero, film_in), (width, film_in), (width, under_board), (zero, under_board)), "none", "fill", False)
        )
        shapes.append(Shape(_bumps(width, film_in, under_board), "edge", "texture", True))
        labels.append(Label((width, film_in + depth / 2), "right", say("skim.section.filled", "texture, filled")))
    for coat in range(coats):
        low = film_in - (coat + 1) * coat_thickness_in
        high = low + coat_thickness_in
        shapes.append(Shape(((zero, low), (width, low), (width, high), (zero, high)), "edge", "compound", False))
    labels.append(Label((width, film_in / 2), "right", coats_text))
    dimensions = [Dimension((zero, zero), (zero, film_in), "left", film_text)]
    if depth > 0:
        dimensions.append(Dimension((zero, film_in), (zero, under_board), "left", depth_text))
    told = say("skim.section.told", "The ceiling cut through, seen from the side. From the top: the old board;")
    if depth > 0:
        told += " " + say("skim.section.texture", "texture {depth} deep, filled between the bumps;", depth=depth_text)
    told += " " + say("skim.section.coats", "{coats} of compound, together {film}.", coats=coats_text, film=film_text)
    return Drawing(
        title=say("skim.section.title", "Section through the ceiling"),
        description=told,
        width=width,
        height=top,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=tuple(dimensions),
        labels=tuple(labels),
        scale_note=say(
            "skim.section.note",
            "To scale. The board is drawn {board} thick and was not measured.",
            board=measure.limit(BOARD_DRAWN_IN, "1/2 in", show_in),
        ),
    )


def _bumps(width: Fraction, tips: Fraction, root: Fraction) -> tuple[tuple[Fraction, Fraction], ...]:
    """Pointed bumps that touch, hanging from `root` down to `tips`."""
    pitch = width / BUMPS_DRAWN
    points = [(Fraction(0), root)]
    for bump in range(BUMPS_DRAWN):
        points.append((pitch * bump + pitch / 2, tips))
        points.append((pitch * (bump + 1), root))
    return tuple(points)
