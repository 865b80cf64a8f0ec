"""Drying: when the next coat may go on, in air that stays as it is.

The law gives the time for the basis thickness of 1/16 in. A thicker coat takes longer: in proportion
where the air sets the pace, with the square where the coat itself does; the band holds both.
"""

from fractions import Fraction

from calc.common.inputs import COAT_THICKNESS, COATS, HUMIDITY, TEMPERATURE, TEXTURE_DEPTH_OR_NONE
from calc.core.answer import Answer, Calculator
from calc.core.fields import SHOW_IN, Fault, InputFault, Values
from calc.core.lines import Lines
from calc.drying.chart import band_text, chart
from calc.drying.law import (
    BASIS_THICKNESS_IN,
    FREEZING_F,
    NO_DRYING_PCT,
    THICK_COAT_IN,
    WARMEST_F,
    coat_time,
    drying_constant,
    longest,
    pressure_of_vapor,
    soonest,
    together,
)
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure, words
from calc.text.door import say

DAMP_PCT = 90  # above it a gauge reads too coarsely for the law [%], common practice
LEAST_TEMPERATURE_F = 55  # the safer of two makers' figures [degF]
ALL_COATS = (  # name, label, and how the rule ends
    ("total_hours_low", "All coats, at the soonest", "at the soonest"),
    ("total_hours", "All coats, by the law", "by the law"),
    ("total_hours_high", "All coats, drying only", "at the longest"),
)


def drying(values: Values) -> Answer:
    """Return how long each coat needs, as a band, and all coats together.

    Raises InputFault where nothing can dry (frozen, or air at 98 % humidity and more) or past the warm end
    of the published graph. Sources as in `calc.drying.law`.
    """
    faults = refusals(values)
    if faults:
        raise InputFault(faults)
    show, temperature_f = values.choice("show_in"), values.number("temperature_f")
    humidity, thickness = values.quantity("humidity_pct"), values.quantity("coat_thickness_in")
    texture_in, coats = values.number("texture_depth_in"), values.count("coats")
    first_in = texture_in + thickness.value
    lines = Lines("drying", show)
    pressure = lines.add(
        name="vapor_pressure_psi",
        label="Vapor pressure at that heat",
        unit="psi",
        places=4,
        rule="Warm air takes up more water.",
        amount=pressure_of_vapor(temperature_f=temperature_f, heat=measure.shown(temperature_f, "F", 1, show)),
    )
    constant = lines.add(
        name="drying_constant_h_psi",
        label="The law's constant at that humidity",
        unit="h psi",
        places=3,
        rule="Read between the rows of the table, in a straight line.",
        amount=drying_constant(humidity=humidity),
    )
    time = lines.add(
        name="hours",
        label="One coat, by the law",
        unit="h",
        places=1,
        rule="The constant over the vapor pressure times the missing humidity, for {basis}; in proportion to thickness.",
        amount=coat_time(constant=constant, pressure=pressure, humidity=humidity, thickness=thickness),
        basis=measure.limit(BASIS_THICKNESS_IN, "1/16 in", show),
    )
    low = lines.add(
        name="hours_low",
        label="One coat, at the soonest",
        unit="h",
        places=1,
        rule="A quarter less than the law; a thin coat gains by the square of its thickness.",
        amount=soonest(time=time, thickness=thickness),
    )
    high = lines.add(
        name="hours_high",
        label="One coat, wait this long",
        unit="h",
        places=1,
        rule="A quarter more than the law; a thick coat takes up to the square of it.",
        amount=longest(time=time, thickness=thickness),
    )
    firsts = (low, time, high)
    if texture_in > 0:
        filled = (values.quantity("texture_depth_in") + thickness).named(
            say("drying.texture_and_coat", "texture and coat"), "in"
        )
        of_first = coat_time(constant=constant, pressure=pressure, humidity=humidity, thickness=filled)
        last = lines.add(
            name="first_coat_hours_high",
            label="The first coat, wait this long",
            unit="h",
            places=1,
            rule="Texture and coat together, at the deepest place: its law, times how many basis coats thick it is, and a quarter more.",
            amount=longest(time=of_first, thickness=filled),
        )
        by_law = of_first.named(say("drying.first_coat", "first coat"), "h")
        earliest = say("drying.first_coat.soonest", "first coat at the soonest")
        firsts = (soonest(time=by_law, thickness=filled).named(earliest, "h"), by_law, last)
    found = []
    for at, (name, label, ending) in enumerate(ALL_COATS):
        amount = together(first=firsts[at], others=coats - 1, time=(low, time, high)[at])
        rule = "The first coat and the others, one after the other, " + ending + "."
        found.append(lines.add(name=name, label=label, unit="h", places=0, rule=rule, amount=amount).value)
    text = say(
        "drying.sentence.all",
        "Drying alone takes {time} for {coats}.",
        time=band_text(found[0], found[2]),
        coats=words.plural(coats, "coat"),
    )
    if texture_in > 0:
        first = band_text(firsts[0].to("h"), firsts[2].to("h"))
        text = (
            say("drying.sentence.first", "The first coat, which fills the texture, needs {time}.", time=first)
            + " "
            + text
        )
    return Answer(
        calculator="drying",
        inputs=values.given,
        figure=band_text(low.value, high.value),
        figure_label=say("drying.figure", "for each coat; wait for the longer time"),
        sentence=text,
        lines=lines.tuple(),
        cautions=_cautions(temperature_f, first_in),
        notes=_notes(values.number("humidity_pct"), show),
        drawing=chart(
            pressure_psi=pressure.value, temperature_f=temperature_f, humidity_pct=values.number("humidity_pct"), thickness_in=thickness.value, show_in=show
        ),
    )  # fmt: skip


def _cautions(temperature_f: Fraction, first_in: Fraction) -> tuple[Caution, ...]:
    found = []
    if temperature_f < LEAST_TEMPERATURE_F:
        found += [caution("unvented-heater"), caution("cold-compound")]
    if first_in > THICK_COAT_IN:
        found.append(caution("thick-fill"))
    return tuple(found)


def _notes(humidity_pct: Fraction, show: str) -> tuple[str, ...]:
    notes = [
        say(
            "drying.note.graph",
            "The published graph is for a coat of {basis} under tape, in a room that stays as it is. An open skim coat may dry sooner. Moving air is not in it.",
            basis=measure.limit(BASIS_THICKNESS_IN, "1/16 in", show),
        ),
        say("drying.note.looks", "What looks dry may not be dry. Dark or cool patches are still wet."),
    ]
    if humidity_pct > DAMP_PCT:
        notes.append(
            say(
                "drying.note.damp",
                "Above 90 % humidity a point more adds hours, and gauges err by several. Dry the air first.",
            )
        )
    return tuple(notes)  # fmt: skip


def refusals(values: Values) -> tuple[Fault, ...]:
    """Return what is wrong with `temperature_f` [degF] and `humidity_pct` [%]: air in which nothing dries, or past the published graph."""
    temperature_f, humidity_pct = values.number("temperature_f"), values.number("humidity_pct")
    faults = []
    degrees = words.decimal(temperature_f, 0) + " °F"
    if temperature_f < FREEZING_F:
        message = say(
            "drying.fault.freezing",
            "At {degrees} compound freezes and cannot dry. Warm the room to 55 °F or more.",
            degrees=degrees,
        )
        faults.append(Fault("temperature_f", degrees, message, TEMPERATURE.example))
    if temperature_f > WARMEST_F:
        message = say(
            "drying.fault.warm",
            "At {degrees} there is no published figure: the graph ends at 98 °F. Give 32 to 98 °F.",
            degrees=degrees,
        )
        faults.append(Fault("temperature_f", degrees, message, TEMPERATURE.example))
    if humidity_pct >= NO_DRYING_PCT:
        percent = words.short_decimal(humidity_pct, 1) + " %"
        message = say(
            "drying.fault.damp",
            "At {percent} humidity a coat cannot dry. Dry the air to under 98 % first, best to 50 %.",
            percent=percent,
        )
        faults.append(Fault("humidity_pct", percent, message, HUMIDITY.example))
    return tuple(faults)


CALCULATOR = Calculator(
    name="drying",
    title="When the next coat may go on",
    summary="Hours until each coat is dry, from heat and humidity",
    verb="Tell me when it is dry",
    fields=(TEMPERATURE, HUMIDITY, COAT_THICKNESS, COATS, TEXTURE_DEPTH_OR_NONE, SHOW_IN),
    work_out=drying,
    example=(
        ("temperature_f", "68"),
        ("humidity_pct", "50"),
        ("coat_thickness_in", "1/16"),
        ("coats", "2"),
        ("texture_depth_in", "1/8"),
    ),
    sources=("usg-temperature", "national-gypsum-finishing"),
)
