"""The drying chart, and bands of hours in words."""

from fractions import Fraction

from calc.core.drawing import Bar, Plot
from calc.drying.law import basis_h, scaled, thickness_band
from calc.numbers import measure, words
from calc.numbers.exact import ceiling, floor
from calc.text.door import say

HOURS_PER_DAY = 24
DAYS_FROM_H = 72  # times from here on are told in days, a choice of words [h]
HALVES_BELOW_H = 10  # times below are told in half hours, a choice of words [h]

CHART_HUMIDITIES_PCT = (20, 35, 50, 65, 80, 90)  # rows of the chart, a choice of drawing [%]
TICK_STEPS_H = (1, 2, 3, 6, 12, 24, 48, 72, 120, 240)  # steps of an axis of hours, a choice of drawing [h]
MOST_TICKS = 6
MOST_WIDE_TICKS = 3  # of figures with a comma, which are wider, a choice of drawing [-]
WIDE_FROM_H = 1000  # figures from here on have a comma [h]
MINUTES = 60  # grain of the chart [1/h]


def chart(
    *, pressure_psi: Fraction, temperature_f: Fraction, humidity_pct: Fraction, thickness_in: Fraction, show_in: str
) -> Plot:
    """Return one bar a humidity, from the shortest to the longest time of one coat; the solid bar is the room as it is."""
    rows = sorted([Fraction(pct) for pct in CHART_HUMIDITIES_PCT if pct != humidity_pct] + [humidity_pct])
    times = thickness_band(thickness_in)
    bands = [scaled(times, basis_h(pressure_psi, pct)) for pct in rows]
    longest_h = max([band.high_h for band in bands])
    bars, told = [], []
    for at, pct in enumerate(rows):
        band = bands[at]
        name, hours = words.short_decimal(pct, 1) + " %", band_text(band.low_h, band.high_h)
        bars.append(Bar(name, floor(band.low_h * MINUTES), floor(band.high_h * MINUTES), hours, pct == humidity_pct))
        told.append(name + ": " + hours)
    heat = measure.shown(temperature_f, "F", 0, show_in)
    return Plot(
        title=say("drying.chart.title", "Drying time by humidity"),
        description=say("drying.chart.told", "One coat at {heat}, by the humidity of the room. {rows}.", heat=heat, rows="; ".join(told)),
        note=say("drying.chart.note", "One coat at {heat}. Bars run from the soonest to the longest. The solid bar is your room.", heat=heat),
        end=max(1, floor(longest_h * MINUTES)),
        across=hour_ticks(longest_h, MINUTES),
        across_told=say("drying.chart.hours", "hours until one coat is dry"),
        up=(),
        up_told=say("drying.chart.humidity", "humidity of the room, %"),
        start_told="",
        bars=tuple(bars),
    )  # fmt: skip


def hour_ticks(longest_h: Fraction, parts: int) -> tuple[tuple[int, str], ...]:
    """Return ticks from 0 to `longest_h` [h] at whole steps, each as (place in `parts` of an hour, its figure)."""
    most = MOST_TICKS if longest_h < WIDE_FROM_H else MOST_WIDE_TICKS
    step = TICK_STEPS_H[-1]
    for step in TICK_STEPS_H:
        if longest_h <= step * most:
            break
    if longest_h < 1:
        return (0, "0"), (floor(longest_h * parts), words.short_decimal(longest_h, 2))
    many = floor(longest_h / step)
    while many > most:
        step *= 2
        many = floor(longest_h / step)
    return tuple([(at * step * parts, words.whole(at * step)) for at in range(many + 1)])


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
