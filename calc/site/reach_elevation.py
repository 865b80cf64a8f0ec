"""Where a person stands under the ceiling, seen from the side."""

from fractions import Fraction

from calc.core.drawing import Dimension, Drawing, Label, Shape
from calc.numbers import measure
from calc.text.door import say

HEAD_WIDTH_IN = 20  # width of the person drawn [in]
DECK_PART = 40  # a deck is drawn this part of the height thick [-]


def elevation(*, platform_in: Fraction, person_in: Fraction, ceiling_ft: Fraction, show_in: str) -> Drawing:
    """Return floor, platform, person and ceiling seen from the side, to scale."""
    height = ceiling_ft * measure.INCHES_PER_FOOT
    width, zero = max(height / 2, Fraction(HEAD_WIDTH_IN * 3)), Fraction(0)
    middle = width / 2
    half = Fraction(HEAD_WIDTH_IN, 2)
    top = min(platform_in + person_in, height)
    thick = height / DECK_PART
    shapes = [
        Shape(((zero, height), (width, height), (width, height + thick), (zero, height + thick)), "cut", "board", True),
        Shape(((middle - half, platform_in), (middle + half, platform_in), (middle + half, top), (middle - half, top)), "edge", "none", False),
    ]  # fmt: skip
    if platform_in > 0:
        deck = min(thick, platform_in)
        wide = HEAD_WIDTH_IN + half
        low = platform_in - deck
        shapes.append(
            Shape(((middle - wide, low), (middle + wide, low), (middle + wide, platform_in), (middle - wide, platform_in)), "cut", "timber", False)
        )  # fmt: skip
    tall = measure.shown(ceiling_ft, "ft", 2, show_in)
    dimensions = [Dimension((zero, zero), (zero, height), "left", tall)]
    labels = [
        Label((middle + half, (platform_in + top) / 2), "right", say("reach.drawing.you", "you")),
        Label((width, height + thick / 2), "right", say("reach.drawing.ceiling", "ceiling")),
    ]
    stand = measure.shown(platform_in / measure.INCHES_PER_FOOT, "ft", 2, show_in)
    if platform_in > 0:
        labels.append(Label((middle + half, platform_in), "right", stand))
    return Drawing(
        title=say("reach.drawing.title", "Where you stand"),
        description=say(
            "reach.drawing.told",
            "Seen from the side: the floor, you on a platform {stand} high, and the ceiling at {ceiling}.",
            stand=stand,
            ceiling=tall,
        ),
        width=width,
        height=height + thick,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=tuple(dimensions),
        labels=tuple(labels),
        scale_note=say("reach.drawing.note", "To scale, seen from the side."),
    )
