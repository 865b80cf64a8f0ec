"""The working of the humidity form: each line with what lets a reader check it."""

from fractions import Fraction

from calc.common.inputs import WATER_LB_PER_GAL
from calc.core.answer import Line, line
from calc.drying.air import dew_point_f, humidity_ratio, vapor_pressure_psi
from calc.drying.coats import Layers
from calc.drying.law import basis_h
from calc.drying.room_water import LONGEST_H, UNIT_LB
from calc.drying.three_ways import BURNED_LB_PER_BTU, HOURS_PER_DAY, HumidityInputs, Run, Way, room_air
from calc.numbers import measure
from calc.numbers.measure import BTU_PER_H_PER_KILOWATT, GRAINS_PER_POUND
from calc.numbers.words import decimal, short_decimal

AIR_BTU_PER_CUFT_F = Fraction(18, 1000)  # what warms a cubic foot of room air by 1 degF [Btu/(cu ft degF)], ASHRAE 2017
VAPOR_BTU_PER_LB = Fraction(1055)  # what turns a pound of water at 68 degF into vapor [Btu/lb], ASHRAE 2017
ALMOST_FULL_PCT = Fraction(999, 10)  # above it the law's time is told no more [%]
LAW = ("gypsum-handbook-drying", "ashrae-vapor-pressure", "common-practice")


def lines_of(inputs: HumidityInputs, ways: tuple[Way, ...]) -> tuple[Line, ...]:
    """Return every line of working: hours, the top of the humidity, water, heat, machine and the room's air at first."""
    show, closed, window = inputs.show_in, ways[0], ways[1]
    start_psi = vapor_pressure_psi(inputs.temperature_f) * inputs.humidity_pct / 100
    peaked = most_humid(closed)
    lines = []
    for way in ways:
        lines += _hours_lines(way, show)
    lines += [
        line(
            "peak_humidity_pct", "Highest humidity, room closed", peaked.course.peak_pct(), "%", 1,
            "The top of the curve, of all the leaks and times that were followed.", _peak_working(peaked), LAW, show,
        ),
        line(
            "water_lb", "Water in the coats", inputs.layers().water_gal * WATER_LB_PER_GAL, "lb", 1,
            "8.3285 lb a gallon at 70 °F. Every pound is found again: in the coats, in the air, or where it went.",
            _water_working(inputs.layers(), closed), ("iapws-water", "compound-label", "compound-water", "common-practice"), show,
        ),
        _heat_line("closed_heat_kw", "Heat that drying takes, room closed", inputs, closed, show),
        _heat_line("window_heat_kw", "Heat that drying takes, window open", inputs, window, show),
        _machine_line(inputs, start_psi, show),
        line(
            "burner_water_lb", "Water from the burner", inputs.burner_btu_per_h * BURNED_LB_PER_BTU * HOURS_PER_DAY, "lb", 1,
            "0.094 lb for each 1,000 Btu of natural gas, in a day.", short_decimal(inputs.burner_btu_per_h, 0) + " × 0.000094 × 24",
            ("combustion-water",), show,
        ),
        line(
            "moisture_gr_per_lb", "Water in the room's air at first", humidity_ratio(start_psi) * GRAINS_PER_POUND, "gr/lb", 1,
            "By the vapor pressure, at sea level.", "0.621945 × " + decimal(start_psi, 6) + " ÷ (14.696 − " + decimal(start_psi, 6) + ") × 7,000",
            ("ashrae-vapor-pressure",), show,
        ),
    ]  # fmt: skip
    dew = dew_point_f(start_psi) if start_psi > 0 else None
    if dew is not None:
        lines.append(
            line(
                "dew_point_f", "It wets what is colder than", dew, "F", 1, "The dew point of the room's air at first.",
                decimal(start_psi, 6) + " psi is what full air of that heat holds", ("ashrae-vapor-pressure",), show,
            )
        )  # fmt: skip
    return tuple(lines)


def _hours_lines(way: Way, show: str) -> list[Line]:
    found = []
    for name, label, run in (
        (way.name, "by the law", way.law),
        (way.name + "_low", "at the soonest", way.soonest),
        (way.name + "_high", "wait this long", way.longest),
    ):
        hours = None if run is None else run.course.hours_to_dry
        value = Fraction(LONGEST_H) if hours is None else hours
        shown = "not in 30 days" if hours is None else measure.shown(hours, "h", 1, show)
        working = "the room may freeze before it is dry" if run is None else _run_working(run)
        rule = "Each coat by the law at the humidity of the hour, one after another; air changes and machine carry the water off."
        found.append(
            Line(name, way.told + ", " + label, value, "h", 1, shown, rule, working, LAW + ("aham-dehumidifier",))
        )
    return found


def _run_working(run: Run) -> str:
    """Coat by coat: its hours, beside the basis coat's hours in air as it was on average, which the drying form gives too."""
    air = run.air
    told = []
    for at, (hours, mean_pct) in enumerate(run.course.coats):
        text = "coat " + str(at + 1) + ": "
        if mean_pct < ALMOST_FULL_PCT:
            text += (
                decimal(basis_h(air.saturated_psi, mean_pct), 1)
                + " h for 1/16 in × "
                + short_decimal(run.loads[at][1], 3)
                + " ≈ "
            )
        told.append(text + decimal(hours, 1) + " h at " + decimal(mean_pct, 1) + " % on average")
    if run.course.hours_to_dry is None:
        told.append("after 30 days " + decimal(run.course.end.coat * UNIT_LB, 1) + " lb are still in the coats")
    else:
        told.append("together " + decimal(run.course.hours_to_dry, 1) + " h")
    told.append(
        decimal(air.temperature_f, 0) + " °F, air changes an hour: " + short_decimal(air.air_changes_per_hour, 2)
    )
    return "; ".join(told)


def most_humid(closed: Way) -> Run:
    """Return the run of the closed room in which the air gets dampest."""
    found = closed.law
    for run in (closed.soonest, closed.longest):
        if run is not None and run.course.peak_pct() > found.course.peak_pct():
            found = run
    return found


def _peak_working(run: Run) -> str:
    course, air = run.course, run.air
    peak_h, peak_pct = course.peak_h(), course.peak_pct()
    told = (
        "after "
        + decimal(peak_h, 1)
        + " h, with "
        + short_decimal(air.air_changes_per_hour, 2)
        + " air changes an hour"
    )
    if peak_h == 0:
        return told + ": the start itself"
    if peak_pct >= ALMOST_FULL_PCT:
        return told + ": the air is full, and what more comes wets cold faces"
    gone_h, at = Fraction(0), 0
    while at < len(course.coats) and gone_h + course.coats[at][0] < peak_h:
        gone_h += course.coats[at][0]
        at += 1
    water_lb, times = run.loads[at]
    gives = water_lb / (times * basis_h(air.saturated_psi, peak_pct))
    carried = air.air_changes_per_hour * air.lb_per_psi() * (air.saturated_psi * peak_pct / 100 - air.outdoor_psi)
    return (
        told + ": there coat " + str(at + 1) + " gives " + decimal(water_lb, 1) + " lb ÷ " + decimal(water_lb / gives, 1) + " h = "
        + decimal(gives, 2) + " lb an hour" + (", the burner " + decimal(air.added_lb_per_h, 2) + " lb" if air.added_lb_per_h > 0 else "")
        + ", and the air carries off " + decimal(carried, 2) + " lb"
    )  # fmt: skip


def _water_working(layers: Layers, closed: Way) -> str:
    course = closed.law.course
    began, books = course.start, course.end
    told = (
        short_decimal(layers.water_gal, 2)
        + " gal × 8.3285; such coats of all-purpose compound hold "
        + short_decimal(layers.held_gal, 2)
        + " gal"
    )
    if layers.stretch > 1:
        told += ", so each takes " + short_decimal(layers.stretch, 2) + " times as long"
    elif layers.water_gal < layers.held_gal:
        told += "; with less, each still takes the time of its thickness"
    return (
        told + ". Room closed: " + decimal((began.coat + began.air + books.added) * UNIT_LB, 3) + " lb with the air's and the burner's in, "
        + decimal((books.coat + books.air + books.vented + books.removed + books.condensed) * UNIT_LB, 3) + " lb found"
    )  # fmt: skip


def heat_kw(inputs: HumidityInputs, way: Way) -> Fraction:
    """Return the heat [kW] that holds the room's heat on average while `way` dries it, without what walls and windows lose.

    Source: ASHRAE 2017, heat of moist air.
    """
    air, water = _heat_btu_per_h(inputs, _warm_run(inputs, way))
    return (air + water) / BTU_PER_H_PER_KILOWATT


def _warm_run(inputs: HumidityInputs, way: Way) -> Run:
    return way.soonest if way.law.air.temperature_f < inputs.temperature_f else way.law


def _heat_btu_per_h(inputs: HumidityInputs, run: Run) -> tuple[Fraction, Fraction]:
    """What warms the air from outdoors, and what turns water to vapor, on average over the course [Btu/h]."""
    colder_f = max(inputs.temperature_f - inputs.outdoor_temperature_f, Fraction(0))
    air = inputs.volume_cuft * run.air.air_changes_per_hour * AIR_BTU_PER_CUFT_F * colder_f
    dried_lb = (run.course.start.coat - run.course.end.coat) * UNIT_LB
    return air, dried_lb / run.course.followed_h() * VAPOR_BTU_PER_LB


def _heat_line(name: str, label: str, inputs: HumidityInputs, way: Way, show: str) -> Line:
    run = _warm_run(inputs, way)
    air, water = _heat_btu_per_h(inputs, run)
    working = (
        short_decimal(inputs.volume_cuft, 0) + " cu ft × " + short_decimal(run.air.air_changes_per_hour, 2) + " × 0.018 × "
        + short_decimal(max(inputs.temperature_f - inputs.outdoor_temperature_f, Fraction(0)), 1) + " °F + "
        + decimal((run.course.start.coat - run.course.end.coat) * UNIT_LB, 1) + " lb ÷ " + decimal(run.course.followed_h(), 1)
        + " h × 1,055 = " + decimal(air + water, 0) + " Btu/h ÷ 3,412"
    )  # fmt: skip
    rule = "0.018 Btu a cubic foot and degree for air from outdoors, 1,055 Btu a pound for the water. Walls and windows come on top."
    return line(name, label, heat_kw(inputs, way), "kW", 1, rule, working, ("ashrae-moist-air",), show)


def _machine_line(inputs: HumidityInputs, start_psi: Fraction, show: str) -> Line:
    rated_psi = room_air(inputs, inputs.temperature_f, inputs.open_air_changes_per_hour, Fraction(0)).rated_psi
    takes = inputs.dehumidifier_pt_per_day * min(start_psi / rated_psi, Fraction(1))
    return line(
        "machine_takes_pt_per_day", "The machine takes at first", takes, "pt/day", 1,
        "In proportion to the water in the air, and at most its rating.",
        short_decimal(inputs.dehumidifier_pt_per_day, 1) + " × " + decimal(start_psi, 4) + " psi ÷ " + decimal(rated_psi, 4) + " psi at "
        + short_decimal(inputs.rated_f, 0) + " °F and 60 %", ("aham-dehumidifier", "doe-dehumidifier", "common-practice"), show,
    )  # fmt: skip
