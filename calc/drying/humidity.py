"""Humidity: where the water of wet coats goes, and when they are dry if you do nothing, open a window or run a machine."""

from fractions import Fraction

from calc.common.inputs import (
    COAT_THICKNESS,
    COATS,
    HEIGHT,
    HUMIDITY,
    OPTIONAL_ROOMS,
    TEMPERATURE,
    TEXTURE_DEPTH_OR_NONE,
    VOLUME,
    area_of,
    volume_cuft,
)
from calc.core.answer import Answer, Calculator, Item
from calc.core.drawing import Curve, Plot
from calc.core.fields import SHOW_IN, Fault, InputFault, Values
from calc.drying.chart import band_text, hour_ticks
from calc.drying.drying import LEAST_TEMPERATURE_F
from calc.drying.humidity_lines import LAW, heat, lines_of, most_humid
from calc.drying.law import FREEZING_F, WARMEST_F
from calc.drying.room_fields import (
    BURNER,
    CLOSED,
    HEAT_HELD,
    KIND,
    MACHINE,
    OPEN,
    OUTDOOR_F,
    OUTDOOR_PCT,
    RATED,
    WATER,
    WET_AREA,
)
from calc.drying.room_water import TICKS_PER_H, UNIT_LB
from calc.drying.three_ways import HOURS_PER_DAY, HumidityInputs, Way, three_ways
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure, words
from calc.numbers.exact import floor
from calc.numbers.words import short_decimal
from calc.text.door import say

DAMP_PCT = 80  # from here on walls and windows sweat and mold starts [%], common practice
CHART_TICKS_PCT = (0, 20, 40, 60, 80, 100)  # ticks of the chart, a choice of drawing [%]
LEAST_TOLD_LB = Fraction(1, 10)  # less water than this is not told of [lb]
DRAWN_EACH = 2  # every second step is drawn [-]
LONGEST_DRAWN = 3  # the chart ends at so many times the quickest way [-]
DAYS_FROM_H = 72  # times from here on are told in days, a choice of words [h]


def humidity(inputs: HumidityInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return the hours to dry for three ways, each as a band, the highest humidity, the heat it takes, and the curve of each.

    Raises InputFault under 32 or over 98 degF, where the drying law ends. Sources: the drying law, ASHRAE 2017,
    the rating points; that a machine takes in proportion to the vapor pressure is common practice, no source.
    """
    _refuse(inputs)
    ways = three_ways(inputs)
    best = _best(inputs, ways)
    return Answer(
        calculator="humidity",
        inputs=given,
        figure=_told(best),
        figure_label=say("humidity.figure", "until it is dry: {way}", way=words.lower(best.told[0]) + best.told[1:]),
        sentence=_first_advice(inputs) + " ".join([way.told + ": " + _told(way) + "." for way in ways if way != best]),
        lines=lines_of(inputs, ways),
        cautions=_cautions(inputs, most_humid(ways[0]).course.peak_pct()),
        notes=(
            say(
                "humidity.note.law",
                "It is the drying form's law at the humidity of each hour. In air that stays as it is both forms agree.",
            ),
            say(
                "humidity.note.cloth",
                "Board, wood and cloth take up water at first and give it back later. That is left out: the top is lower, and the end slower.",
            ),
            say(
                "humidity.note.heat",
                "Drying cools the wet face and the air; the heat that it tells holds that, and not what walls and windows lose. A fan is not in it.",
            ),
            say(
                "humidity.note.machine",
                "A dehumidifier takes in proportion to the water in the air, and at most its rating.",
            ),
        ),
        drawing=_chart(inputs, ways),
        items=tuple([_item(inputs, way) for way in ways]),
        items_title=say("humidity.items", "Three ways to dry it"),
    )


def _first_advice(inputs: HumidityInputs) -> str:
    told = ""
    if inputs.temperature_f < LEAST_TEMPERATURE_F:
        told += say("humidity.advice.heat", "Heat first: under 55 °F compound dries badly.") + " "
    if inputs.may_ice():
        told += (
            say(
                "humidity.advice.ice",
                "Under 65 °F a refrigerant dehumidifier may ice up: warm the room, or take a desiccant kind.",
            )
            + " "
        )
    return told


def _told(way: Way) -> str:
    soonest_h, longest_h = way.soonest.course.hours_to_dry, way.longest_h()
    if soonest_h is None:
        return say("humidity.never", "not in 30 days")
    if longest_h is not None:
        return band_text(soonest_h, longest_h)
    if soonest_h < DAYS_FROM_H:
        soonest = words.plural(floor(soonest_h), "hour")
    else:
        soonest = short_decimal(Fraction(floor(soonest_h * 2 / HOURS_PER_DAY), 2), 1)
    return say("humidity.over", "{soonest} to over 30 days", soonest=soonest)


def _item(inputs: HumidityInputs, way: Way) -> Item:
    gone = way.law.course.end
    parts = [
        (say("humidity.water.air", "out with the air"), gone.vented),
        (say("humidity.water.machine", "into the machine"), gone.removed),
        (say("humidity.water.faces", "on cold faces"), gone.condensed),
    ]
    told = [
        short_decimal(amount * UNIT_LB, 1) + " lb " + where
        for where, amount in parts
        if amount * UNIT_LB > LEAST_TOLD_LB
    ]
    text = (
        say("humidity.water", "Water goes {parts}.", parts=words.listed(told))
        if told
        else say("humidity.water.none", "No water has left yet.")
    )
    if way.name == "machine_hours" and inputs.may_ice():
        text = say("humidity.item.ice", "It may ice up under 65 °F, and then takes nothing.") + " " + text
    sources: tuple[str, ...] = LAW
    if way.name == "window_hours":
        text += " " + say(
            "humidity.item.heat",
            "Drying takes about {power} kW of heat, walls not counted.",
            power=short_decimal(heat(inputs, way).to("kW"), 1),
        )
        sources = LAW + ("ashrae-moist-air",)
    if way.longest is None:
        text += " " + say(
            "humidity.item.freezing", "Without heat the room falls toward freezing, and then nothing dries."
        )
    elif way.name == "window_hours" and inputs.heat_held != "yes" and inputs.coldest_f() < inputs.temperature_f:
        cold = measure.shown(inputs.coldest_f(), "F", 0, inputs.show_in)
        text += " " + say(
            "humidity.item.cold",
            "The longer time is without heat: the room then falls toward {cold}.",
            cold=cold,
        )
    return Item(way.told, _told(way), text, sources)


def _best(inputs: HumidityInputs, ways: tuple[Way, ...]) -> Way:
    """The way whose longest time is least, since that is what one waits; a machine that may ice up is never it."""
    best = ways[0]
    for way in ways[1:]:
        if (way.name != "machine_hours" or not inputs.may_ice()) and _sooner(way, best):
            best = way
    return best


def _sooner(way: Way, other: Way) -> bool:
    for mine, others in (
        (way.longest_h(), other.longest_h()),
        (way.law.course.hours_to_dry, other.law.course.hours_to_dry),
        (way.soonest.course.hours_to_dry, other.soonest.course.hours_to_dry),
    ):
        if mine is not None and others is not None:
            return mine < others
        if mine is not None or others is not None:
            return mine is not None
    return False


def _refuse(inputs: HumidityInputs) -> None:
    if FREEZING_F <= inputs.temperature_f <= WARMEST_F:
        return
    degrees = words.decimal(inputs.temperature_f, 0) + " °F"
    message = say(
        "humidity.fault.range",
        "At {degrees} in the room there is no drying law: it runs from 32 to 98 °F. Warm or cool the room first.",
        degrees=degrees,
    )
    raise InputFault((Fault("temperature_f", degrees, message, TEMPERATURE.example),))


def _cautions(inputs: HumidityInputs, peak_pct: Fraction) -> tuple[Caution, ...]:
    found = []
    if inputs.burner_btu_per_h > 0:
        found.append(caution("unvented-heater"))
    if inputs.temperature_f < LEAST_TEMPERATURE_F:
        found.append(caution("cold-compound"))
    if peak_pct >= DAMP_PCT:
        found.append(caution("mold-damp"))
    return tuple(found)


def _chart(inputs: HumidityInputs, ways: tuple[Way, ...]) -> Plot:
    """Humidity over time for each way; the quickest is drawn heavy."""
    times = [way.law.course.followed_h() for way in ways]
    best = _best(inputs, ways)
    longest = min(max(times), best.law.course.followed_h() * LONGEST_DRAWN)
    curves, told = [], []
    for way in ways:
        course = way.law.course
        points = [
            (ticks, course.held[at])
            for at, ticks in enumerate(course.ticks)
            if (at % DRAWN_EACH == 0 or at == len(course.ticks) - 1) and longest * TICKS_PER_H >= ticks
        ]
        seen_h, seen_pct = Fraction(points[-1][0], TICKS_PER_H), Fraction(points[-1][1] * 100, course.full_air)
        where = say(
            "humidity.chart.end", "{way}, {hours} h, {percent} %",
            way=way.short, hours=short_decimal(seen_h, 0), percent=short_decimal(seen_pct, 0),
        )  # fmt: skip
        curves.append(Curve(tuple(points), course.full_air, where, way == best))
        told.append(
            say(
                "humidity.chart.way",
                "{way}, {time}: up to {peak} %, and {end} % after {hours} hours",
                way=way.told,
                time=_told(way),
                peak=short_decimal(course.peak_pct(), 0),
                end=short_decimal(seen_pct, 0),
                hours=short_decimal(seen_h, 0),
            )
        )
    return Plot(
        title=say("humidity.chart", "Humidity over time"),
        description=say(
            "humidity.chart.told", "Hours across, humidity of the room up. From {start} % at the start. {ways}.",
            start=short_decimal(inputs.humidity_pct, 1), ways="; ".join(told),
        ),
        note=say("humidity.chart.scale", "The heavy line is the quickest way; each line ends when the coats are dry, by the law, or where the plot does."),
        end=floor(longest * TICKS_PER_H),
        across=hour_ticks(longest, TICKS_PER_H),
        across_told=say("humidity.chart.hours", "hours from now"),
        up=tuple([(value, words.whole(value)) for value in CHART_TICKS_PCT]),
        up_told=say("humidity.chart.humidity", "humidity of the room, %"),
        start_told=say("humidity.chart.start", "{percent} %", percent=short_decimal(inputs.humidity_pct, 1)),
        curves=tuple(curves),
    )  # fmt: skip


def _work_out(values: Values) -> Answer:
    volume, wet = volume_cuft(values), values.number_or_none("wet_area_sqft")
    if wet is None and values.number_or_none("volume_cuft") is None:
        wet = area_of(values.rooms())
    inputs = HumidityInputs(
        volume,
        volume / values.number("ceiling_height_ft") if wet is None else wet,
        values.number("texture_depth_in"),
        values.count("coats"),
        values.number("coat_thickness_in"),
        values.number_or_none("water_gal"),
        values.number("temperature_f"),
        values.number("humidity_pct"),
        values.number("outdoor_temperature_f"),
        values.number("outdoor_humidity_pct"),
        values.number_or_none("closed_air_changes_per_hour"),
        values.number("open_air_changes_per_hour"),
        values.number("dehumidifier_pt_per_day"),
        values.choice("dehumidifier_kind"),
        measure.read_bound(values.choice("dehumidifier_rated_f")),
        values.choice("heat_held"),
        values.number("burner_btu_per_h"),
        values.choice("show_in"),
    )
    return humidity(inputs, values.given)


CALCULATOR = Calculator(
    name="humidity",
    title="Where the water goes",
    summary="Hours to dry closed, with a window open, or with a machine",
    verb="Follow the water",
    fields=(
        OPTIONAL_ROOMS, VOLUME, HEIGHT, TEXTURE_DEPTH_OR_NONE, COATS, COAT_THICKNESS, WATER, TEMPERATURE, HUMIDITY, OUTDOOR_F, OUTDOOR_PCT,
        HEAT_HELD, CLOSED, MACHINE, RATED, KIND, WET_AREA, OPEN, BURNER, SHOW_IN,
    ),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'"), ("coats", "2"), ("coat_thickness_in", "1/16"), ("temperature_f", "68"), ("humidity_pct", "50"), ("outdoor_temperature_f", "50"), ("outdoor_humidity_pct", "70"), ("heat_held", "yes")),
    one_of=("rooms", "volume_cuft"),
    sources=("usg-temperature",),
)  # fmt: skip
