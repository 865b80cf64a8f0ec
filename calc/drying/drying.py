"""Drying: when the next coat may go on, in air that stays as it is.

The law gives the time for the basis thickness of 1/16 in. A thicker coat takes longer: in proportion
where the air sets the pace, with the square where the coat itself does; the band holds both.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import COAT_THICKNESS, COATS, HUMIDITY, TEMPERATURE, TEXTURE_DEPTH_OR_NONE
from calc.core.answer import Answer, Calculator, Line, line
from calc.core.drawing import Drawing, Label, Shape
from calc.core.fields import SHOW_IN, Fault, InputFault, Values
from calc.drying.air import vapor_pressure_psi
from calc.drying.law import (
    BAND,
    BASIS_THICKNESS_IN,
    DRYING_ROWS,
    FREEZING_F,
    NO_DRYING_PCT,
    THICK_COAT_IN,
    WARMEST_F,
    Band,
    basis_h,
    drying_constant_h_psi,
    scaled,
    thickness_band,
)
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure, words
from calc.numbers.exact import ceiling, floor

DAMP_PCT = 90  # above it a gauge reads too coarsely for the law [%], common practice
LEAST_TEMPERATURE_F = 55  # the safer of two makers' figures [degF]
HOURS_PER_DAY = 24
DAYS_FROM_H = 72  # times from here on are told in days, a choice of words [h]
HALVES_BELOW_H = 10  # times below are told in half hours, a choice of words [h]

CHART_HUMIDITIES_PCT = (20, 35, 50, 65, 80, 90)  # rows of the chart, a choice of drawing [%]
CHART_WIDTH = Fraction(100)
CHART_ROW = Fraction(12)
CHART_BAR = Fraction(7)

LAW = ("gypsum-handbook-drying", "ashrae-vapor-pressure", "dfc-drying-graph")
LAW_AND_PRACTICE = LAW + ("common-practice",)


@dataclass(frozen=True)
class DryingInputs:
    """`temperature_f` [degF, 32 to 98], `humidity_pct` [%, 0 to under 98], `coat_thickness_in` [in, 1/64 to 1/4],
    `coats` [-, 1 to 6], `texture_depth_in` [in, 0 to 1] filled by the first coat, `show_in` 'customary' or 'metric'."""

    temperature_f: Fraction
    humidity_pct: Fraction
    coat_thickness_in: Fraction
    coats: int
    texture_depth_in: Fraction
    show_in: str


def drying(inputs: DryingInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return how long each coat needs, as a band, and all coats together.

    Raises InputFault where nothing can dry (frozen, or air at 98 % humidity and more) or past the warm end
    of the published graph. Sources as in `calc.drying.law`.
    """
    faults = _refusals(inputs)
    if faults:
        raise InputFault(faults)
    pressure_psi = vapor_pressure_psi(inputs.temperature_f)
    first_in = inputs.texture_depth_in + inputs.coat_thickness_in
    of_basis_h = basis_h(pressure_psi, inputs.humidity_pct)
    coat = scaled(thickness_band(inputs.coat_thickness_in), of_basis_h)
    first = scaled(thickness_band(first_in), of_basis_h)
    others = inputs.coats - 1
    total = Band(
        first.low_h + others * coat.low_h, first.law_h + others * coat.law_h, first.high_h + others * coat.high_h
    )
    return Answer(
        calculator="drying",
        inputs=given,
        figure=band_text(coat.low_h, coat.high_h),
        figure_label="for each coat; wait for the longer time",
        sentence=_sentence(inputs, first, total),
        lines=tuple(_law_lines(inputs, pressure_psi, coat) + _sum_lines(inputs, coat, first, total)),
        cautions=_cautions(inputs, first_in),
        notes=_notes(inputs),
        drawing=_chart(inputs, pressure_psi),
    )


def _law_lines(inputs: DryingInputs, pressure_psi: Fraction, coat: Band) -> list[Line]:
    show, missing = inputs.show_in, 1 - inputs.humidity_pct / 100
    constant = drying_constant_h_psi(inputs.humidity_pct)
    thickness = words.short_decimal(inputs.coat_thickness_in / BASIS_THICKNESS_IN, 3)
    return [
        line(
            "vapor_pressure_psi", "Vapor pressure at that heat", pressure_psi, "psi", 4,
            "Warm air takes up more water.", words.decimal(inputs.temperature_f, 1) + " °F",
            ("ashrae-vapor-pressure",), show,
        ),
        line(
            "drying_constant_h_psi", "The law's constant at that humidity", constant, "h psi", 3,
            "Read between the rows of the table, in a straight line.", _rows_working(inputs.humidity_pct),
            ("gypsum-handbook-drying",), show,
        ),
        line(
            "hours", "One coat, by the law", coat.law_h, "h", 1,
            "The constant over the vapor pressure times the missing humidity, for 1/16 in; in proportion to thickness.",
            words.decimal(constant, 3) + " ÷ (" + words.decimal(pressure_psi, 4) + " × " + words.short_decimal(missing, 4) + ") × "
            + thickness + " = " + words.decimal(coat.law_h, 1) + " h",
            LAW, show,
        ),
        line(
            "hours_low", "One coat, at the soonest", coat.low_h, "h", 1,
            "A quarter less than the law; a thin coat gains by the square of its thickness.",
            _band_working(coat.law_h, coat.low_h), LAW_AND_PRACTICE, show,
        ),
        line(
            "hours_high", "One coat, wait this long", coat.high_h, "h", 1,
            "A quarter more than the law; a thick coat takes up to the square of its thickness.",
            _band_working(coat.law_h, coat.high_h), LAW_AND_PRACTICE, show,
        ),
    ]  # fmt: skip


def _sum_lines(inputs: DryingInputs, coat: Band, first: Band, total: Band) -> list[Line]:
    show, others = inputs.show_in, str(inputs.coats - 1)
    lines = []
    if inputs.texture_depth_in > 0:
        lines.append(
            line(
                "first_coat_hours_high", "The first coat, wait this long", first.high_h, "h", 1,
                "Texture and coat together, at the deepest place: its law, times how many basis coats thick it is, and a quarter more.",
                _first_working(inputs, coat, first), LAW_AND_PRACTICE, show,
            )
        )  # fmt: skip
    for name, label, ending, of_first, of_coat, of_all in (
        ("total_hours_low", "All coats, at the soonest", "at the soonest", first.low_h, coat.low_h, total.low_h),
        ("total_hours", "All coats, by the law", "by the law", first.law_h, coat.law_h, total.law_h),
        ("total_hours_high", "All coats, drying only", "at the longest", first.high_h, coat.high_h, total.high_h),
    ):
        lines.append(
            line(
                name, label, of_all, "h", 0, "The first coat and the others, one after the other, " + ending + ".",
                words.decimal(of_first, 1) + " + " + others + " × " + words.decimal(of_coat, 1) + " = " + words.decimal(of_all, 1) + " h",
                LAW_AND_PRACTICE, show,
            )
        )  # fmt: skip
    return lines


def _rows_working(humidity_pct: Fraction) -> str:
    below, above = DRYING_ROWS[0], DRYING_ROWS[-1]
    for row in DRYING_ROWS:
        if humidity_pct >= row[0]:
            below = row
        elif row[0] < above[0]:
            above = row
    told = words.decimal(below[1], 2) + " at " + str(below[0]) + " %"
    if humidity_pct == below[0]:
        return told
    return told + ", " + words.decimal(above[1], 2) + " at " + str(above[0]) + " %"


def _first_working(inputs: DryingInputs, coat: Band, first: Band) -> str:
    first_in = inputs.texture_depth_in + inputs.coat_thickness_in
    ratio = first_in / BASIS_THICKNESS_IN
    square = words.short_decimal(ratio, 3) + (" × " + words.short_decimal(ratio, 3) if ratio > 1 else "")
    of_basis_h = coat.law_h / (inputs.coat_thickness_in / BASIS_THICKNESS_IN)
    return (
        words.short_decimal(inputs.texture_depth_in, 4) + " + " + words.short_decimal(inputs.coat_thickness_in, 4) + " = "
        + words.short_decimal(first_in, 4) + " in, " + words.short_decimal(ratio, 3) + " times 1/16 in; " + words.decimal(of_basis_h, 2)
        + " h × " + square + " × " + words.short_decimal(1 + BAND, 2) + " = " + words.decimal(first.high_h, 1) + " h"
    )  # fmt: skip


def _chart(inputs: DryingInputs, pressure_psi: Fraction) -> Drawing:
    """One bar a humidity, from the shortest to the longest time; the row in bold lines is the room as it is."""
    rows = sorted([Fraction(pct) for pct in CHART_HUMIDITIES_PCT if pct != inputs.humidity_pct] + [inputs.humidity_pct])
    times = thickness_band(inputs.coat_thickness_in)
    bands = [scaled(times, basis_h(pressure_psi, pct)) for pct in rows]
    longest_h = max([band.high_h for band in bands])
    shapes = []
    labels = []
    told = []
    for at, pct in enumerate(rows):
        band = bands[at]
        low = (len(rows) - 1 - at) * CHART_ROW + (CHART_ROW - CHART_BAR) / 2
        left, right = band.low_h / longest_h * CHART_WIDTH, band.high_h / longest_h * CHART_WIDTH
        here = pct == inputs.humidity_pct
        corners = ((left, low), (right, low), (right, low + CHART_BAR), (left, low + CHART_BAR))
        shapes.append(Shape(corners, "edge", "solid" if here else "none", not here))
        middle = low + CHART_BAR / 2
        name = words.short_decimal(pct, 1) + " %"
        labels.append(Label((Fraction(0), middle), "before", name))
        labels.append(Label((right, middle), "after", band_text(band.low_h, band.high_h)))
        told.append(name + ": " + band_text(band.low_h, band.high_h))
    heat = measure.shown(inputs.temperature_f, "F", 0, inputs.show_in)
    return Drawing(
        title="Drying time by humidity",
        description="One coat at " + heat + ", by the humidity of the room. " + "; ".join(told) + ".",
        width=CHART_WIDTH,
        height=len(rows) * CHART_ROW,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=(),
        labels=tuple(labels),
        scale_note="One coat at " + heat + ". Bars run from the soonest to the longest. The solid bar is your room.",
    )


def band_text(low_h: Fraction, high_h: Fraction) -> str:
    """Return a band of hours as words, the low end rounded down and the high end up: '18 to 31 hours'."""
    if high_h < HALVES_BELOW_H:
        low, high = Fraction(floor(low_h * 2), 2), Fraction(ceiling(high_h * 2), 2)
        return words.short_decimal(low, 1) + " to " + words.short_decimal(high, 1) + " hours"
    if high_h < DAYS_FROM_H:
        return str(floor(low_h)) + " to " + str(ceiling(high_h)) + " hours"
    low, high = Fraction(floor(low_h * 2 / HOURS_PER_DAY), 2), Fraction(ceiling(high_h * 2 / HOURS_PER_DAY), 2)
    return words.short_decimal(low, 1) + " to " + words.short_decimal(high, 1) + " days"


def _band_working(law_h: Fraction, end_h: Fraction) -> str:
    return (
        words.decimal(law_h, 1)
        + " h × "
        + words.short_decimal(end_h / law_h, 3)
        + " = "
        + words.decimal(end_h, 1)
        + " h"
    )


def _sentence(inputs: DryingInputs, first: Band, total: Band) -> str:
    text = ""
    if inputs.texture_depth_in > 0:
        text = "The first coat, which fills the texture, needs " + band_text(first.low_h, first.high_h) + ". "
    return (
        text
        + "Drying alone takes "
        + band_text(total.low_h, total.high_h)
        + " for "
        + words.plural(inputs.coats, "coat")
        + "."
    )


def _cautions(inputs: DryingInputs, first_in: Fraction) -> tuple[Caution, ...]:
    found = []
    if inputs.temperature_f < LEAST_TEMPERATURE_F:
        found.append(caution("unvented-heater"))
        found.append(caution("cold-compound"))
    if first_in > THICK_COAT_IN:
        found.append(caution("thick-fill"))
    return tuple(found)


def _notes(inputs: DryingInputs) -> tuple[str, ...]:
    notes = [
        "The published graph is for a coat of 1/16 in under tape, in a room that stays as it is. An open skim coat may dry sooner. Moving air is not in it.",
        "What looks dry may not be dry. Dark or cool patches are still wet.",
    ]
    if inputs.humidity_pct > DAMP_PCT:
        notes.append("Above 90 % humidity a point more adds hours, and gauges err by several. Dry the air first.")
    return tuple(notes)


def _refusals(inputs: DryingInputs) -> tuple[Fault, ...]:
    faults = []
    degrees = words.decimal(inputs.temperature_f, 0) + " °F"
    if inputs.temperature_f < FREEZING_F:
        message = "At " + degrees + " compound freezes and cannot dry. Warm the room to 55 °F or more."
        faults.append(Fault("temperature_f", degrees, message, TEMPERATURE.example))
    if inputs.temperature_f > WARMEST_F:
        message = "At " + degrees + " there is no published figure: the graph ends at 98 °F. Give 32 to 98 °F."
        faults.append(Fault("temperature_f", degrees, message, TEMPERATURE.example))
    if inputs.humidity_pct >= NO_DRYING_PCT:
        percent = words.short_decimal(inputs.humidity_pct, 1) + " %"
        message = "At " + percent + " humidity a coat cannot dry. Dry the air to under 98 % first, best to 50 %."
        faults.append(Fault("humidity_pct", percent, message, HUMIDITY.example))
    return tuple(faults)


def _work_out(values: Values) -> Answer:
    inputs = DryingInputs(
        values.number("temperature_f"),
        values.number("humidity_pct"),
        values.number("coat_thickness_in"),
        values.count("coats"),
        values.number("texture_depth_in"),
        values.choice("show_in"),
    )
    return drying(inputs, values.given)


CALCULATOR = Calculator(
    name="drying",
    title="When the next coat may go on",
    summary="Hours until each coat is dry, from heat and humidity",
    verb="Tell me when it is dry",
    fields=(TEMPERATURE, HUMIDITY, COAT_THICKNESS, COATS, TEXTURE_DEPTH_OR_NONE, SHOW_IN),
    work_out=_work_out,
    example=(
        ("temperature_f", "68"),
        ("humidity_pct", "50"),
        ("coat_thickness_in", "1/16"),
        ("coats", "2"),
        ("texture_depth_in", "1/8"),
    ),
    sources=("usg-temperature", "national-gypsum-finishing"),
)
