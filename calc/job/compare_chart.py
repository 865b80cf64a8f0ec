"""The drawing of the ways side by side: a bar a way of days, from the least to the most."""

from fractions import Fraction

from calc.core.drawing import Drawing, Label, Shape
from calc.job.days import Days
from calc.job.sides import Side, short_told
from calc.job.told import range_told, span_of
from calc.numbers import words
from calc.text.door import say

ROW, BAR, SOLID = Fraction(12), Fraction(8), Fraction(3)  # of the drawing
CHART_WIDTH = Fraction(100)


def chart(ways: list[tuple[Side, Days, Days]]) -> Drawing:
    """Return the bars of `ways`, each with its days by the least and by the most hours, in their order."""
    most = max([max(span_of(shorter), span_of(longer)) for _, shorter, longer in ways])
    height = ROW * len(ways)
    shapes, labels, rows = [], [], []
    for at, (side, shorter, longer) in enumerate(ways):
        foot = height - (at + 1) * ROW + (ROW - BAR) / 2
        ends = sorted([span_of(shorter), span_of(longer)])
        low, high = [CHART_WIDTH * end / most for end in ends]
        worked = max(shorter.working_days, longer.working_days)
        if high > low:
            shapes.append(_box(low, high, foot, foot + BAR, "compound", True))
        shapes.append(_box(Fraction(0), low, foot, foot + BAR, "none", False))
        shapes.append(_box(Fraction(0), CHART_WIDTH * worked / most, foot, foot + SOLID, "solid", False))
        middle = foot + BAR / 2
        labels.append(Label((Fraction(0), middle), "before", short_told(side)))
        told = range_told(ends[0], ends[1], words.whole(ends[1]))
        labels.append(Label((high, middle), "after", told))
        rows.append(
            say("compare.chart.row", "{way}: {days}, work on {worked} of them at the most", way=short_told(side), days=told, worked=str(worked))
        )  # fmt: skip
    return Drawing(
        title=say("compare.chart.title", "Days from first to last, way by way"),
        description=say("compare.chart.told", "One bar a way. {rows}.", rows="; ".join(rows)),
        width=CHART_WIDTH,
        height=height,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=(),
        labels=tuple(labels),
        scale_note=say(
            "compare.chart.note",
            "Days of the calendar. A plain bar ends at the least, hatched goes on to the most, solid counts the days of work at the most. Closed ways are left out.",
        ),
    )


def _box(left: Fraction, right: Fraction, foot: Fraction, top: Fraction, hatch: str, old: bool) -> Shape:
    return Shape(((left, foot), (right, foot), (right, top), (left, top)), "edge", hatch, old)
