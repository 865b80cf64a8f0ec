"""What every drawing here is put together from: boxes, outlines, lines and lettering, in plain units."""

from fractions import Fraction

from calc.core.drawing import Drawing, Label, Shape

Number = int | float
Points = tuple[tuple[Number, Number], ...]
NOT_TO_SCALE = "Not to scale."


def _points(points: Points) -> tuple[tuple[Fraction, Fraction], ...]:
    return tuple((Fraction(str(x)), Fraction(str(y))) for x, y in points)


def area(hatch: str, *points: tuple[Number, Number], old: bool = False) -> Shape:
    """Return a closed outline: cut, and only an edge where the work is `old`."""
    return Shape(_points(points), "edge" if old else "cut", hatch, old)


def box(hatch: str, left: Number, low: Number, right: Number, high: Number, old: bool = False) -> Shape:
    """Return an upright rectangle."""
    return area(hatch, (left, low), (right, low), (right, high), (left, high), old=old)


def line(*points: tuple[Number, Number], thin: bool = False) -> Shape:
    """Return an open line: an edge, or a dimension's weight where `thin`."""
    return Shape(_points(points), "curve", "none", thin)


def tag(x: Number, y: Number, text: str, side: str = "right") -> Label:
    """Return lettering: in the right margin with a leader to the point, or where `side` says."""
    return Label((Fraction(str(x)), Fraction(str(y))), side, text)


def drawn(
    title: str, description: str, width: Number, height: Number, shapes: list[Shape], labels: list[Label]
) -> Drawing:
    """Return the drawing of all that, which says that it is not to scale."""
    return Drawing(
        title,
        description,
        Fraction(str(width)),
        Fraction(str(height)),
        Fraction(1),
        tuple(shapes),
        (),
        tuple(labels),
        NOT_TO_SCALE,
    )
