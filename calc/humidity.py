"""Humidity: where the water of a wet coat goes, and when it is dry if you do nothing, open a window or run a machine."""

from dataclasses import dataclass
from fractions import Fraction

from calc import measure, words
from calc.air import dew_point_f, humidity_ratio, outdoor_pressure_psi, vapor_pressure_psi
from calc.answer import Answer, Calculator, Item, Line, line
from calc.drawing import Dimension, Drawing, Label, Shape
from calc.drying import (
    BAND,
    BASIS_THICKNESS_IN,
    DRYING_CONSTANT_H_PSI,
    FREEZING_F,
    LEAST_TEMPERATURE_F,
    WARMEST_F,
    band_text,
)
from calc.exact import ceiling
from calc.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.inputs import (
    COAT_THICKNESS,
    HEIGHT,
    HUMIDITY,
    OPTIONAL_ROOMS,
    TEMPERATURE,
    VOLUME,
    WATER_LB_PER_GAL,
    volume_cuft,
)
from calc.measure import GRAINS_PER_POUND, PINTS_PER_GALLON
from calc.moisture import UNIT_LB, Air, Course, follow
from calc.signals import Caution, caution
from calc.words import short_decimal

HOURS_PER_DAY = 24
LONGEST_H = 720  # beyond 30 days nobody waits [h]
STEPS = 32  # a course is followed in about so many steps [-]
MOST_STEPS = 200
RATED_F = Fraction(80)  # a dehumidifier is rated at 80 degF [degF], AHAM
RATED_PCT = Fraction(60)  # and 60 % humidity [%], AHAM
BURNED_LB_PER_BTU = Fraction(94, 1000000)  # water from natural gas [lb/Btu]; molar masses, heat value from memory
DAMP_PCT = 80  # from here on walls and windows sweat and mold starts [%], common practice
CHART_WIDTH, CHART_HEIGHT = Fraction(100), Fraction(70)
LEAST_TOLD_LB = Fraction(1, 10)  # less water than this is not told of [lb]
DRAWN_EACH = 2  # every second step is drawn [-]
LONGEST_DRAWN = 3  # the chart ends at so many times the quickest way [-]
LAW = ("gypsum-handbook-drying", "ashrae-vapor-pressure", "common-practice")

WATER = Field(
    name="water_gal", label="Water to dry out", kind="volume", unit="gal",
    help="From the compound or wetting form. Paint and fresh coats count as well.",
    example="5", lowest="0.05", highest="500",
)  # fmt: skip
OUTDOOR_F = Field(
    name="outdoor_temperature_f", label="Air outdoors", kind="temperature", unit="F",
    help="The mean over day and night.",
    example="50", lowest="-40", highest="115", default="50",
)  # fmt: skip
OUTDOOR_PCT = Field(
    name="outdoor_humidity_pct", label="Humidity outdoors", kind="percent", unit="%",
    help="The weather report says.",
    example="70", lowest="0", highest="100", default="70",
)  # fmt: skip
CLOSED = Field(
    name="closed_air_changes_per_hour", label="Air changes, room closed", kind="rate", unit="per_h",
    help="What leaks through a closed and sealed room.",
    example="0.3", lowest="0.05", highest="5", default="0.3", source="common-practice", rare=True,
)  # fmt: skip
OPEN = Field(
    name="open_air_changes_per_hour", label="Air changes, window open", kind="rate", unit="per_h",
    help="One window half open, no fan: about 3.",
    example="3", lowest="0.1", highest="60", default="3", source="common-practice", rare=True,
)  # fmt: skip
MACHINE = Field(
    name="dehumidifier_pt_per_day", label="Dehumidifier", kind="rate", unit="pt/day",
    help="As rated at 80 °F and 60 % humidity. In cooler, drier air it takes less.",
    example="50", lowest="1", highest="2000", default="50", source="aham-dehumidifier",
)  # fmt: skip
BURNER = Field(
    name="burner_btu_per_h", label="Heater that burns gas in the room", kind="rate", unit="Btu/h",
    help="Without a flue. Put 0 for electric heat or none.",
    example="0", lowest="0", highest="400000", default="0", rare=True,
)  # fmt: skip


@dataclass(frozen=True)
class HumidityInputs:
    """`volume_cuft` [cu ft], `water_gal` [gal, > 0], `coat_thickness_in` [in], `temperature_f` [degF, 32 to 98] and
    `humidity_pct` [%] in the room at first, the same outdoors, air changes [1/h] closed and open, the dehumidifier
    [pints/day at 80 degF, 60 %], `burner_btu_per_h` [Btu/h], `show_in`."""

    volume_cuft: Fraction
    water_gal: Fraction
    coat_thickness_in: Fraction
    temperature_f: Fraction
    humidity_pct: Fraction
    outdoor_temperature_f: Fraction
    outdoor_humidity_pct: Fraction
    closed_air_changes_per_hour: Fraction
    open_air_changes_per_hour: Fraction
    dehumidifier_pt_per_day: Fraction
    burner_btu_per_h: Fraction
    show_in: str


@dataclass(frozen=True)
class Way:
    """One way of drying: its public `name`, how it is told, at length and in a word, and its course."""

    name: str
    told: str
    short: str
    course: Course


def closed_air(inputs: HumidityInputs) -> Air:
    """Return the room's air, closed and without a machine. Source: ASHRAE 2017 for pressures, AHAM for the rating point."""
    return Air(
        inputs.volume_cuft,
        inputs.temperature_f,
        vapor_pressure_psi(inputs.temperature_f),
        outdoor_pressure_psi(inputs.outdoor_temperature_f) * inputs.outdoor_humidity_pct / 100,
        inputs.closed_air_changes_per_hour,
        Fraction(0),
        vapor_pressure_psi(RATED_F) * RATED_PCT / 100,
        inputs.burner_btu_per_h * BURNED_LB_PER_BTU,
    )


def airs_of(inputs: HumidityInputs) -> tuple[Air, Air, Air]:
    """Return the room's air closed, with the window open, and closed with the dehumidifier on."""
    closed = closed_air(inputs)
    removal_lb_per_h = inputs.dehumidifier_pt_per_day * WATER_LB_PER_GAL / PINTS_PER_GALLON / HOURS_PER_DAY
    return (
        closed,
        closed.with_other(inputs.open_air_changes_per_hour, Fraction(0)),
        closed.with_other(inputs.closed_air_changes_per_hour, removal_lb_per_h),
    )


def drying_rate_lb_per_h_psi(inputs: HumidityInputs) -> Fraction:
    """Return how fast the coat gives off its water [lb/(h psi)], so that in steady air it dries in the time of the law.

    Source: the drying law of `calc.drying`.
    """
    thickness = inputs.coat_thickness_in / BASIS_THICKNESS_IN
    return inputs.water_gal * WATER_LB_PER_GAL / (DRYING_CONSTANT_H_PSI * thickness)


def course_of(inputs: HumidityInputs, air: Air, steps: int) -> Course:
    """Return the course of one way, in about `steps` steps [-] and never past 30 days."""
    water_lb, rate = inputs.water_gal * WATER_LB_PER_GAL, drying_rate_lb_per_h_psi(inputs)
    start_psi = air.saturated_psi * inputs.humidity_pct / 100
    capacity = air.lb_per_psi()
    pull = rate + air.air_changes_per_hour * capacity + air.removal_lb_per_h / air.rated_psi
    gain = rate * air.saturated_psi + air.air_changes_per_hour * capacity * air.outdoor_psi + air.added_lb_per_h
    lacking = air.saturated_psi - gain / pull
    about_h = min(water_lb / (rate * lacking), Fraction(LONGEST_H)) if lacking > 0 else Fraction(LONGEST_H)
    step_h = _rounded(about_h / steps)
    while True:
        wanted = min(MOST_STEPS * steps // STEPS, ceiling(LONGEST_H / step_h))
        course = follow(air, water_lb, start_psi, rate, step_h, wanted)
        if course.hours_to_dry is not None or course.followed_h() >= LONGEST_H:
            return course
        step_h = step_h * 2  # the estimate was short; look further


def _rounded(hours: Fraction) -> Fraction:
    """A step as a plain fraction of an hour: long fractions make every engine slow."""
    return Fraction(max(int(hours * 1000), 1), 1000)


def humidity(inputs: HumidityInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return the hours to dry for three ways, the highest humidity, and the curve of each.

    Raises InputFault under 32 or over 98 degF, where the drying law ends. Sources: the drying law, ASHRAE 2017,
    AHAM's rating point; that a machine takes in proportion to the vapor pressure is common practice, no source.
    """
    _refuse(inputs)
    show = inputs.show_in
    closed, window, machine = airs_of(inputs)
    ways = (
        Way("closed_hours", "Room closed", "closed", course_of(inputs, closed, STEPS)),
        Way("window_hours", "Window open", "window", course_of(inputs, window, STEPS)),
        Way("machine_hours", "Closed, dehumidifier on", "machine", course_of(inputs, machine, STEPS)),
    )
    start_psi = closed.saturated_psi * inputs.humidity_pct / 100
    peak_pct = ways[0].course.peak_pct()
    lines = [_hours_line(way, show) for way in ways]
    books = ways[0].course.end
    began = ways[0].course.start
    lines += [
        line(
            "peak_humidity_pct", "Highest humidity, room closed", peak_pct, "%", 1, "The top of the curve.",
            "from " + short_decimal(inputs.humidity_pct, 1) + " % at the start", LAW, show,
        ),
        line(
            "water_lb", "Water in the coats", inputs.water_gal * WATER_LB_PER_GAL, "lb", 1, "8.3285 lb a gallon at 70 °F.",
            short_decimal(inputs.water_gal, 2) + " × 8.3285; booked to the billionth of a pound: " + words.decimal((began.coat + began.air + books.added) * UNIT_LB, 3) + " lb"
            + " in, " + words.decimal((books.coat + books.air + books.vented + books.removed + books.condensed) * UNIT_LB, 3) + " lb" + " found", ("iapws-water",), show,
        ),
        line(
            "burner_water_lb", "Water from the burner", inputs.burner_btu_per_h * BURNED_LB_PER_BTU * HOURS_PER_DAY, "lb", 1,
            "0.094 lb for each 1,000 Btu of natural gas, in a day.", short_decimal(inputs.burner_btu_per_h, 0) + " × 0.000094 × 24",
            ("combustion-water",), show,
        ),
        line(
            "moisture_gr_per_lb", "Water in the room's air at first", humidity_ratio(start_psi) * GRAINS_PER_POUND, "gr/lb", 1,
            "By the vapor pressure, at sea level.", "0.621945 × " + words.decimal(start_psi, 6) + " ÷ (14.696 − " + words.decimal(start_psi, 6) + ") × 7,000",
            ("ashrae-vapor-pressure",), show,
        ),
    ]  # fmt: skip
    dew = dew_point_f(start_psi) if start_psi > 0 else None
    if dew is not None:
        lines.append(
            line(
                "dew_point_f", "It wets what is colder than", dew, "F", 1, "The dew point of the room's air at first.",
                words.decimal(start_psi, 6) + " psi is what full air of that heat holds", ("ashrae-vapor-pressure",), show,
            )
        )  # fmt: skip
    best = _best(ways)
    return Answer(
        calculator="humidity",
        inputs=given,
        figure=_told(best.course),
        figure_label="until it is dry: " + words.lower(best.told[0]) + best.told[1:],
        sentence=" ".join([way.told + ": " + _told(way.course) + "." for way in ways if way != best]),
        lines=tuple(lines),
        cautions=_cautions(inputs, peak_pct),
        notes=(
            "The room keeps its heat all the time. Cold air through a window must be warmed, or drying stops.",
            "The band is that of the drying law, a quarter more or less. Moving air is not in it: a fan helps.",
            "A dehumidifier takes in proportion to the water in the air, and at most its rating. Under 65 °F many ice up.",
        ),
        drawing=_chart(ways),
        items=tuple([_item(way) for way in ways]),
        items_title="Three ways to dry it",
    )


def _hours_line(way: Way, show: str) -> Line:
    hours = way.course.hours_to_dry
    value = Fraction(LONGEST_H) if hours is None else hours
    shown = "not in 30 days" if hours is None else measure.shown(hours, "h", 1, show)
    working = words.plural(len(way.course.held) - 1, "step") + " of " + short_decimal(way.course.step_h, 3) + " h"
    rule = "Water leaves the coat by the drying law; air changes and machine carry it off."
    return Line(way.name, way.told, value, "h", 1, shown, rule, working, LAW + ("aham-dehumidifier",))


def _told(course: Course) -> str:
    if course.hours_to_dry is None:
        return "not in 30 days"
    return band_text(course.hours_to_dry * (1 - BAND), course.hours_to_dry * (1 + BAND))


def _item(way: Way) -> Item:
    gone = way.course.end
    parts = [("out with the air", gone.vented), ("into the machine", gone.removed), ("on cold faces", gone.condensed)]
    told = [
        short_decimal(amount * UNIT_LB, 1) + " lb " + where
        for where, amount in parts
        if amount * UNIT_LB > LEAST_TOLD_LB
    ]
    text = "Water goes " + words.listed(told) + "." if told else "No water has left yet."
    return Item(way.told, _told(way.course), text, LAW)


def _best(ways: tuple[Way, ...]) -> Way:
    best = ways[0]
    for way in ways[1:]:
        hours, least = way.course.hours_to_dry, best.course.hours_to_dry
        if hours is not None and (least is None or hours < least):
            best = way
    return best


def _refuse(inputs: HumidityInputs) -> None:
    if FREEZING_F <= inputs.temperature_f <= WARMEST_F:
        return
    degrees = words.decimal(inputs.temperature_f, 0) + " °F"
    message = (
        "At " + degrees + " in the room there is no drying law: it runs from 32 to 98 °F. Warm or cool the room first."
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


def _chart(ways: tuple[Way, ...]) -> Drawing:
    """Humidity over time for each way; the quickest is drawn heavy."""
    times = [way.course.followed_h() for way in ways]
    best = _best(ways)
    longest = min(max(times), best.course.followed_h() * LONGEST_DRAWN)
    zero = Fraction(0)
    across_told = short_decimal(longest, 0) + " hours"
    shapes = [
        Shape(
            ((zero, zero), (CHART_WIDTH, zero), (CHART_WIDTH, CHART_HEIGHT), (zero, CHART_HEIGHT)), "edge", "none", True
        )
    ]
    labels = [
        Label((zero, zero), "before", "0 %"),
        Label((zero, CHART_HEIGHT / 2), "before", "50 %"),
        Label((zero, CHART_HEIGHT), "before", "100 %"),
    ]
    for way in ways:
        course = way.course
        across, up = course.step_h * CHART_WIDTH / longest, CHART_HEIGHT / course.full_air
        shown = [at for at in range(len(course.held)) if at % DRAWN_EACH == 0 and course.step_h * at <= longest]
        points = [(across * at, up * course.held[at]) for at in shown]
        shapes.append(Shape(tuple(points), "curve", "none", way != best))
        labels.append(Label(points[-1], "right", way.short))
    told = "; ".join([way.told + ", " + _told(way.course) for way in ways])
    return Drawing(
        title="Humidity over time",
        description="From the start to " + across_told + ". " + told + ".",
        width=CHART_WIDTH,
        height=CHART_HEIGHT,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=(Dimension((zero, zero), (CHART_WIDTH, zero), "below", across_told),),
        labels=tuple(labels),
        scale_note="The heavy line is the quickest way; each line ends when the coat is dry.",
    )  # fmt: skip


def _work_out(values: Values) -> Answer:
    inputs = HumidityInputs(
        volume_cuft(values),
        values.number("water_gal"),
        values.number("coat_thickness_in"),
        values.number("temperature_f"),
        values.number("humidity_pct"),
        values.number("outdoor_temperature_f"),
        values.number("outdoor_humidity_pct"),
        values.number("closed_air_changes_per_hour"),
        values.number("open_air_changes_per_hour"),
        values.number("dehumidifier_pt_per_day"),
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
        OPTIONAL_ROOMS, VOLUME, HEIGHT, WATER, COAT_THICKNESS, TEMPERATURE, HUMIDITY, OUTDOOR_F, OUTDOOR_PCT, MACHINE, CLOSED, OPEN, BURNER,
        SHOW_IN,
    ),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'"), ("water_gal", "5"), ("temperature_f", "68"), ("humidity_pct", "50"), ("outdoor_temperature_f", "50"), ("outdoor_humidity_pct", "70")),
    one_of=("rooms", "volume_cuft"),
)  # fmt: skip
