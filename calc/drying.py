"""Drying: when the next coat may go on.

The published table for compound under tape follows, within 25 % up to 90 % humidity, one law: the time
goes with 1 over the drying power of the air, that is vapor pressure times what is missing to saturation.
The law gives the time for the basis thickness of 1/16 in. A thicker coat takes longer: in proportion
where the air sets the pace, with the square where the coat itself does; the band holds both.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc import measure, words
from calc.air import vapor_pressure_psi
from calc.answer import Answer, Calculator, line
from calc.drawing import Drawing, Label, Shape
from calc.exact import ceiling, floor
from calc.fields import SHOW_IN, Fault, InputFault, Values
from calc.inputs import COAT_THICKNESS, COATS, HUMIDITY, TEMPERATURE, TEXTURE_DEPTH_OR_NONE
from calc.signals import Caution, caution

BASIS_THICKNESS_IN = Fraction(1, 16)  # thickness of the published graph [in], Drywall Finishing Council
DRYING_CONSTANT_H_PSI = Fraction(309, 100)  # 17 h at 70 degF, 50 %: 17 x 0.363277 x 0.5 [h psi], gypsum handbook
BAND = Fraction(1, 4)  # every recalled table cell from 0 to 90 % lies this near the law [-]
BAND_BELOW_WHEN_DAMP = Fraction(35, 100)  # above 90 % the table is shorter than the law by up to this [-]
DAMP_PCT = 90  # humidity above which the wider band holds [%]
NO_DRYING_PCT = 98  # the last row of the published table [%]
FREEZING_F = 32  # [degF]
WARMEST_F = 98  # end of the published graph [degF]
LEAST_TEMPERATURE_F = 55  # the safer of two makers' figures [degF]
THICK_COAT_IN = Fraction(1, 8)  # a drying compound laid thicker cracks [in], common practice
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


@dataclass(frozen=True)
class Band:
    """A time [h] as the law gives it, with the shortest and the longest that the sources allow."""

    low_h: Fraction
    law_h: Fraction
    high_h: Fraction


def drying_band_h(temperature_f: Fraction, humidity_pct: Fraction, thickness_in: Fraction) -> Band:
    """Return the drying time [h] of one coat of `thickness_in` [in, > 0] at `temperature_f` [degF, 32 to 98]
    and `humidity_pct` [%, 0 to under 98].

    Source: Gypsum Construction Handbook table (from memory), fitted; Drywall Finishing Council graph for the
    thickness basis; ASHRAE 2017 for vapor pressure. The effect of thickness is common practice, no source.
    """
    return _band(vapor_pressure_psi(temperature_f), humidity_pct, thickness_in)


def _band(pressure_psi: Fraction, humidity_pct: Fraction, thickness_in: Fraction) -> Band:
    basis_h = DRYING_CONSTANT_H_PSI / (pressure_psi * (1 - humidity_pct / 100))
    ratio = thickness_in / BASIS_THICKNESS_IN
    below = BAND_BELOW_WHEN_DAMP if humidity_pct > DAMP_PCT else BAND
    low_ratio, high_ratio = min(ratio, ratio * ratio), max(ratio, ratio * ratio)
    return Band(basis_h * low_ratio * (1 - below), basis_h * ratio, basis_h * high_ratio * (1 + BAND))


def drying(inputs: DryingInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return how long each coat needs, as a band, and all coats together.

    Raises InputFault where nothing can dry (frozen, or air at 98 % humidity and more) or past the warm end
    of the published graph. Sources as in `drying_band_h`.
    """
    faults = _refusals(inputs)
    if faults:
        raise InputFault(faults)
    show = inputs.show_in
    pressure_psi = vapor_pressure_psi(inputs.temperature_f)
    coat = _band(pressure_psi, inputs.humidity_pct, inputs.coat_thickness_in)
    first_in = inputs.texture_depth_in + inputs.coat_thickness_in
    first = _band(pressure_psi, inputs.humidity_pct, first_in)
    others = inputs.coats - 1
    total_low_h, total_high_h = first.low_h + others * coat.low_h, first.high_h + others * coat.high_h
    ratio = inputs.coat_thickness_in / BASIS_THICKNESS_IN
    lines = [
        line(
            "vapor_pressure_psi", "Vapor pressure at that heat", pressure_psi, "psi", 4,
            "Warm air takes up more water.", words.decimal(inputs.temperature_f, 1) + " °F",
            ("ashrae-vapor-pressure",), show,
        ),
        line(
            "hours", "One coat, by the law", coat.law_h, "h", 1,
            "3.09 over the vapor pressure times the missing humidity, for 1/16 in; in proportion to thickness.",
            "3.09 ÷ (" + words.decimal(pressure_psi, 4) + " × " + words.short_decimal(1 - inputs.humidity_pct / 100, 4) + ") × "
            + words.short_decimal(ratio, 3) + " = " + words.decimal(coat.law_h, 1) + " h",
            LAW, show,
        ),
        line(
            "hours_low", "One coat, at the soonest", coat.low_h, "h", 1,
            "The table scatters about the law; a thin coat gains.",
            _band_working(coat.law_h, coat.low_h), LAW_AND_PRACTICE, show,
        ),
        line(
            "hours_high", "One coat, wait this long", coat.high_h, "h", 1,
            "A quarter more than the law; a thick coat takes up to the square of its thickness.",
            _band_working(coat.law_h, coat.high_h), LAW_AND_PRACTICE, show,
        ),
    ]  # fmt: skip
    if inputs.texture_depth_in > 0:
        lines.append(
            line(
                "first_coat_hours_high", "The first coat, wait this long", first.high_h, "h", 1,
                "The same for the deepest place: texture and coat together.",
                words.short_decimal(inputs.texture_depth_in, 4) + " + " + words.short_decimal(inputs.coat_thickness_in, 4)
                + " = " + words.short_decimal(first_in, 4) + " in thick",
                LAW_AND_PRACTICE, show,
            )
        )  # fmt: skip
    lines.append(
        line(
            "total_hours_high", "All coats, drying only", total_high_h, "h", 0,
            "The first coat and the others, one after the other, at the longest.",
            words.decimal(first.high_h, 1) + " + " + str(others) + " × " + words.decimal(coat.high_h, 1) + " h",
            LAW_AND_PRACTICE, show,
        )
    )  # fmt: skip
    return Answer(
        calculator="drying",
        inputs=given,
        figure=band_text(coat.low_h, coat.high_h),
        figure_label="for each coat; wait for the longer time",
        sentence=_sentence(inputs, first, total_low_h, total_high_h),
        lines=tuple(lines),
        cautions=_cautions(inputs, first_in),
        notes=_notes(inputs),
        drawing=_chart(inputs, pressure_psi),
    )


def _chart(inputs: DryingInputs, pressure_psi: Fraction) -> Drawing:
    """One bar a humidity, from the shortest to the longest time; the row in bold lines is the room as it is."""
    rows = sorted([Fraction(pct) for pct in CHART_HUMIDITIES_PCT if pct != inputs.humidity_pct] + [inputs.humidity_pct])
    bands = [_band(pressure_psi, pct, inputs.coat_thickness_in) for pct in rows]
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


def _sentence(inputs: DryingInputs, first: Band, total_low_h: Fraction, total_high_h: Fraction) -> str:
    text = ""
    if inputs.texture_depth_in > 0:
        text = "The first coat, which fills the texture, needs " + band_text(first.low_h, first.high_h) + ". "
    return (
        text
        + "Drying alone takes "
        + band_text(total_low_h, total_high_h)
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
        notes.append("Above 90 % humidity the sources lie far apart. Dry the air first.")
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
