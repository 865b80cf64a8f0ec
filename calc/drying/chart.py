"""The drying chart, and bands of hours in words."""

from fractions import Fraction

from calc.core.drawing import Drawing, Label, Shape
from calc.drying.law import basis_h, scaled, thickness_band
from calc.numbers import measure, words
from calc.numbers.exact import ceiling, floor
from calc.text.door import say

HOURS_PER_DAY = 24
DAYS_FROM_H = 72  # times from here on are told in days, a choice of words [h]
HALVES_BELOW_H = 10  # times below are told in half hours, a choice of words [h]

CHART_HUMIDITIES_PCT = (20, 35, 50, 65, 80, 90)  # rows of the chart, a choice of drawing [%]
CHART_WIDTH = Fraction(100)
CHART_ROW = Fraction(12)
CHART_BAR = Fraction(7)


def chart(
    *, pressure_psi: Fraction, temperature_f: Fraction, humidity_pct: Fraction, thickness_in: Fraction, show_in: str
) -> Drawing:
    """Return one bar a humidity, from the shortest to the longest time of one coat; the solid bar is the room as it is."""
    rows = sorted([Fraction(pct) for pct in CHART_HUMIDITIES_PCT if pct != humidity_pct] + [humidity_pct])
    times = thickness_band(thickness_in)
    bands = [scaled(times, basis_h(pressure_psi, pct)) for pct in rows]
    longest_h = max([band.high_h for band in bands])
    shapes, labels, told = [], [], []
    for at, pct in enumerate(rows):
        band = bands[at]
        low = (len(rows) - 1 - at) * CHART_ROW + (CHART_ROW - CHART_BAR) / 2
        left, right = band.low_h / longest_h * CHART_WIDTH, band.high_h / longest_h * CHART_WIDTH
        here = pct == humidity_pct
        corners = ((left, low), (right, low), (right, low + CHART_BAR), (left, low + CHART_BAR))
        shapes.append(Shape(corners, "edge", "solid" if here else "none", not here))
        middle = low + CHART_BAR / 2
        name, hours = words.short_decimal(pct, 1) + " %", band_text(band.low_h, band.high_h)
        labels.append(Label((Fraction(0), middle), "before", name))
        labels.append(Label((right, middle), "after", hours))
        told.append(name + ": " + hours)
    heat = measure.shown(temperature_f, "F", 0, show_in)
    return Drawing(
        title=say("drying.chart.title", "Drying time by humidity"),
        description=say("drying.chart.told", "One coat at {heat}, by the humidity of the room. {rows}.", heat=heat, rows="; ".join(told)),
        width=CHART_WIDTH,
        height=len(rows) * CHART_ROW,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=(),
        labels=tuple(labels),
        scale_note=say("drying.chart.note", "One coat at {heat}. Bars run from the soonest to the longest. The solid bar is your room.", heat=heat),
    )  # fmt: skip


def band_text(low_h: Fraction, high_h: Fraction) -> str:
    """Return a band of hours as words, the low end rounded down and the high end up: '18 to 31 hours'."""
    parts, key, text = 1, "hours", "{low} to {high} hours"
    if high_h < HALVES_BELOW_H:
        parts = 2
    elif high_h >= DAYS_FROM_H:
        low_h, high_h, parts, key, text = (
            low_h / HOURS_PER_DAY,
            high_h / HOURS_PER_DAY,
            2,
            "days",
            "{low} to {high} days",
        )
    low, high = Fraction(floor(low_h * parts), parts), Fraction(ceiling(high_h * parts), parts)
    return say("band." + key, text, low=words.short_decimal(low, 1), high=words.short_decimal(high, 1))
