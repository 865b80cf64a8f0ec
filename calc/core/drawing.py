"""What a shop drawing is made of: outlines, hatches, dimensions and labels, in real inches.

A calculator says what is there; `calc.render.svg` decides how it looks on the page. The origin is at the
lower left, x to the right and y up, as on a drawing board.
"""

from dataclasses import dataclass
from fractions import Fraction

SHEET_HEIGHT = 430  # a drawing is made narrower before it is taller than this on the page [units of the page]
SHEET_WIDTH = 270  # what is left for the work beside lettering, about [units of the page]
ROW_FOR_DIMENSION = 42  # a dimension line and its figure below a piece of work [units of the page]

WEIGHTS = ("cut", "edge", "none", "curve", "fault")
HATCHES = ("none", "board", "plaster", "texture", "compound", "fill", "timber", "insulation", "room", "void", "solid")


@dataclass(frozen=True)
class Shape:
    """A closed outline through `points` [in]; `weight` is its line, `hatch` what it is made of; `old` work is grey.
    With the weight 'curve' the points are an open line instead, heavy, or thin where `old`; with 'fault' an open line that
    shows what is wrong, broken where `old` (it is not there yet)."""

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
    'on' (centered at `at`), 'after' (starts just right of `at`), 'before' (ends just left of it), 'over' or 'under'
    (centered just above or below it)."""

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
    tallest: int = SHEET_HEIGHT  # the work is made narrower before it is taller than this [units of the page]


@dataclass(frozen=True)
class Block:
    """A piece in a plan: the `box` (x from, y from, x to, y to) that its lettering stands in, its number, its length and width."""

    box: tuple[int, int, int, int]
    name: str
    length: str
    width: str


@dataclass(frozen=True)
class Row:
    """What stands outside the walls at one `side` ('below', 'above', 'left', 'right'); items are (from, to, text).

    `kind` is 'names' (each text at `to`; `from` counts them from 1), 'spans' (each a dimension with ticks at both ends) or 'stations' (one line, with
    ticks at every `to` and figures measured from `from`).
    """

    side: str
    kind: str
    items: tuple[tuple[int, int, str], ...]


@dataclass(frozen=True)
class Plan:
    """A room from above, `width` x `height`, all in whole numbers of any one unit; north is up.

    Lines are (x, y, x, y): `walls` heavy, `joints` plain, `lines` thin, `first` plain and broken (what is snapped first),
    `centers` thin with dots. `rows` stand outside, from the work outward. A plan whose lettering would be too small is
    parted by `calc.render.plan`; `description` is the text form but for the blocks.
    """

    title: str
    description: str
    note: str
    width: int
    height: int
    walls: tuple[tuple[int, int, int, int], ...]
    joints: tuple[tuple[int, int, int, int], ...]
    lines: tuple[tuple[int, int, int, int], ...]
    first: tuple[tuple[int, int, int, int], ...]
    centers: tuple[tuple[int, int, int, int], ...]
    blocks: tuple[Block, ...]
    rows: tuple[Row, ...]


@dataclass(frozen=True)
class Curve:
    """One line of a plot through `points` (x, y), in whole numbers; y is counted in the curve's own `full`, the top of the plot.
    `end_told` names it where it ends; the `heavy` one is what to look at."""

    points: tuple[tuple[int, int], ...]
    full: int
    end_told: str
    heavy: bool


@dataclass(frozen=True)
class Bar:
    """One row of a plot: its `name`, from `low` to `high`, what that is in words; the `solid` one is what to look at."""

    name: str
    low: int
    high: int
    told: str
    solid: bool


@dataclass(frozen=True)
class Plot:
    """Curves or bars over an axis from 0 to `end`, all x in whole numbers of one unit.

    `across` and `up` are the ticks as (value, text), the latter in hundredths of the height; `across_told` and `up_told` name
    the axes with their units; `start_told` is the value where the curves begin. `description` is the text form.
    """

    title: str
    description: str
    note: str
    end: int
    across: tuple[tuple[int, str], ...]
    across_told: str
    up: tuple[tuple[int, str], ...]
    up_told: str
    start_told: str
    curves: tuple[Curve, ...] = ()
    bars: tuple[Bar, ...] = ()
