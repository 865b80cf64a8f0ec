"""What a shop drawing is made of: outlines, hatches, dimensions and labels, in real inches.

A calculator says what is there; `calc.render.svg` decides how it looks on the page. The origin is at the
lower left, x to the right and y up, as on a drawing board.
"""

from dataclasses import dataclass
from fractions import Fraction

SHEET_HEIGHT = 430  # a drawing is made narrower before it is taller than this on the page [units of the page]
SHEET_WIDTH = 270  # what is left for the work beside lettering, about [units of the page]
ROW_FOR_DIMENSION = 42  # a dimension line and its figure below a piece of work [units of the page]

WEIGHTS = ("cut", "edge", "none", "curve")
HATCHES = ("none", "board", "plaster", "texture", "compound", "fill", "timber", "insulation", "room", "void", "solid")


@dataclass(frozen=True)
class Shape:
    """A closed outline through `points` [in]; `weight` is its line, `hatch` what it is made of; `old` work is grey.
    With the weight 'curve' the points are an open line instead, heavy, or thin where `old`."""

    points: tuple[tuple[Fraction, Fraction], ...]
    weight: str
    hatch: str
    old: bool


@dataclass(frozen=True)
class Dimension:
    """A dimension from `start` to `end` [in], drawn `side` ('left' or 'below') of them, with `text`."""

    start: tuple[Fraction, Fraction]
    end: tuple[Fraction, Fraction]
    side: str
    text: str


@dataclass(frozen=True)
class Label:
    """`text` that names what lies at `at` [in]; `side` is 'right' (in the right margin, with a leader to `at`),
    'on' (centered at `at`), 'after' (starts just right of `at`) or 'before' (ends just left of it)."""

    at: tuple[Fraction, Fraction]
    side: str
    text: str


@dataclass(frozen=True)
class Drawing:
    """A drawing of `width` x `height` [in]; `description` is its text form, `scale_note` what it says of its scale.

    Room for labels and dimensions comes on top of it. `stretch` [-] is how much more a height is enlarged than a width (a thin coat must be seen); 1 is true shape.
    """

    title: str
    description: str
    width: Fraction
    height: Fraction
    stretch: Fraction
    shapes: tuple[Shape, ...]
    dimensions: tuple[Dimension, ...]
    labels: tuple[Label, ...]
    scale_note: str
