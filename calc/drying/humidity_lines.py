"""The working of the humidity form: each line with what lets a reader check it."""

from fractions import Fraction

from calc.common.inputs import WATER_AT_F, WATER_WEIGHT
from calc.core.answer import Line
from calc.core.lines import Lines
from calc.drying.air import STANDARD_PRESSURE_PSI, WATER_TO_AIR_MASS, dew_point_f, vapor_pressure_psi
from calc.drying.coats import Layers
from calc.drying.law import BASIS_THICKNESS_IN, basis_h
from calc.drying.room_water import LONGEST_H, UNIT_LB
from calc.drying.three_ways import BURNED_LB_PER_BTU, HOURS_PER_DAY, HumidityInputs, Run, Way, room_air
from calc.numbers import measure
from calc.numbers.quantity import Quantity, fact, given, told
from calc.numbers.words import decimal, short_decimal
from calc.numbers.working import number
from calc.text.door import say

AIR_HEAT = fact(Fraction(18, 1000), "Btu/cuft/dF", "ashrae-moist-air")  # what warms room air, ASHRAE 2017
VAPOR_HEAT = fact(1055, "Btu/lb", "ashrae-moist-air")  # what turns water at 68 degF into vapor, ASHRAE 2017
BURNED = fact(BURNED_LB_PER_BTU, "lb/Btu", "combustion-water")
WATER_TO_AIR = fact(WATER_TO_AIR_MASS, "", "ashrae-vapor-pressure")
STANDARD_PRESSURE = fact(STANDARD_PRESSURE_PSI, "psi", "ashrae-vapor-pressure")
ALMOST_FULL_PCT = Fraction(999, 10)  # above it the law's time is told no more [%]
LAW = ("gypsum-handbook-drying", "ashrae-vapor-pressure", "common-practice")


def lines_of(inputs: HumidityInputs, ways: tuple[Way, ...]) -> tuple[Line, ...]:
    """Return every line of working: hours, the top of the humidity, water, heat, machine and the room's air at first."""
    show, closed, window = inputs.show_in, ways[0], ways[1]
    start_psi = vapor_pressure_psi(inputs.temperature_f) * inputs.humidity_pct / 100
    start = given(start_psi, "psi", "ashrae-vapor-pressure")
    peaked = most_humid(closed)
    lines = Lines("humidity", show)
    for way in ways:
        lines.found += _hours_lines(way, show)
    lines.add(
        name="peak_humidity_pct",
        label="Highest humidity, room closed",
        unit="%",
        places=1,
        rule="The top of the curve, of all the leaks and times that were followed.",
        amount=told(peaked.course.peak_pct(), "%", _peak_working(peaked, show), *LAW),
    )
    layers = inputs.layers()
    lines.add(
        name="water_lb",
        label="Water in the coats",
        unit="lb",
        places=1,
        rule="Water times its weight at {heat}. {held}. {balance}.",
        amount=(given(layers.water_gal, "gal", "compound-water") * WATER_WEIGHT).cited(
            "compound-label", "common-practice"
        ),
        heat=measure.shown(Fraction(WATER_AT_F), "F", 0, show),
        held=_held_told(layers, show),
        balance=_balance_told(closed, show),
    )
    for name, label, way in (("closed", "room closed", closed), ("window", "window open", window)):
        lines.add(
            name=name + "_heat_kw",
            label="Heat that drying takes, " + label,
            unit="kW",
            places=1,
            amount=heat(inputs, way),
            rule="What warms the air from outdoors, and what turns the water to vapor. Walls and windows come on top.",
        )
    rated_psi = room_air(inputs, inputs.temperature_f, inputs.open_air_changes_per_hour, Fraction(0)).rated_psi
    lines.add(
        name="machine_takes_pt_per_day",
        label="The machine takes at first",
        unit="pt/day",
        places=1,
        rule="In proportion to the water in the air, beside that at {rated} and 60 %; and at most its rating.",
        amount=machine_takes(
            plate=given(inputs.dehumidifier_pt_per_day, "pt/day"),
            air=start,
            rated=given(rated_psi, "psi", "aham-dehumidifier"),
        ),
        rated=measure.shown(inputs.rated_f, "F", 0, show),
    )
    lines.add(
        name="burner_water_lb",
        label="Water from the burner",
        unit="lb",
        places=1,
        rule="What natural gas gives as it burns, in a day.",
        amount=given(inputs.burner_btu_per_h, "Btu/h") * BURNED * given(HOURS_PER_DAY, "h", "combustion-water"),
    )
    lines.add(
        name="moisture_gr_per_lb", label="Water in the room's air at first", unit="gr/lb", places=1, rule="By the vapor pressure, at sea level.",
        amount=WATER_TO_AIR * start / (STANDARD_PRESSURE - start),
    )  # fmt: skip
    dew = dew_point_f(start_psi) if start_psi > 0 else None
    if dew is not None:
        holds = say(
            "humidity.dew_point_f.working",
            "{pressure} is what full air of that heat holds",
            pressure=number(start_psi, "psi", show == "metric"),
        )
        lines.add(
            name="dew_point_f", label="It wets what is colder than", unit="F", places=1, rule="The dew point of the room's air at first.",
            amount=told(dew, "F", holds, "ashrae-vapor-pressure"),
        )  # fmt: skip
    return lines.tuple()


def _hours_lines(way: Way, show: str) -> list[Line]:
    found = []
    for name, label, run in (
        (way.name, say("humidity.hours.law", "by the law"), way.law),
        (way.name + "_low", say("humidity.hours.soonest", "at the soonest"), way.soonest),
        (way.name + "_high", say("humidity.hours.longest", "wait this long"), way.longest),
    ):
        hours = None if run is None else run.course.hours_to_dry
        never = say("humidity.never", "not in 30 days")
        frozen = say("humidity.frozen", "the room may freeze before it is dry")
        rule = "Each coat by the law at the humidity of the hour, one after another; air changes and machine carry the water off."
        found.append(
            Line(
                name=name,
                label=way.told + ", " + label,
                value=Fraction(LONGEST_H) if hours is None else hours,
                unit="h",
                places=1,
                shown=never if hours is None else measure.shown(hours, "h", 1, show),
                rule=say("humidity.hours.rule", rule),
                working=frozen if run is None else _run_working(run, show),
                sources=LAW + ("aham-dehumidifier",),
            )
        )
    return found


def _run_working(run: Run, show: str) -> str:
    """Coat by coat: its hours, beside the basis coat's hours in air as it was on average, which the drying form gives too."""
    air = run.air
    parts = []
    for at, (hours, mean_pct) in enumerate(run.course.coats):
        basis = ""
        if mean_pct < ALMOST_FULL_PCT:
            basis = say(
                "humidity.run.basis",
                "{hours} h for {basis} × {times} ≈ ",
                hours=decimal(basis_h(air.saturated_psi, mean_pct), 1),
                basis=measure.limit(BASIS_THICKNESS_IN, "1/16 in", show),
                times=short_decimal(run.loads[at][1], 3),
            )
        parts.append(
            say(
                "humidity.run.coat",
                "coat {number}: {basis}{hours} h at {mean} % on average",
                number=str(at + 1),
                basis=basis,
                hours=decimal(hours, 1),
                mean=decimal(mean_pct, 1),
            )
        )
    if run.course.hours_to_dry is None:
        left = measure.shown(run.course.end.coat * UNIT_LB, "lb", 1, show)
        parts.append(say("humidity.run.left", "after 30 days {left} are still in the coats", left=left))
    else:
        parts.append(say("humidity.run.together", "together {hours} h", hours=decimal(run.course.hours_to_dry, 1)))
    parts.append(
        say(
            "humidity.run.air",
            "{temperature}, air changes an hour: {changes}",
            temperature=measure.shown(air.temperature_f, "F", 0, show),
            changes=short_decimal(air.air_changes_per_hour, 2),
        )
    )
    return "; ".join(parts)


def most_humid(closed: Way) -> Run:
    """Return the run of the closed room in which the air gets dampest."""
    found = closed.law
    for run in (closed.soonest, closed.longest):
        if run is not None and run.course.peak_pct() > found.course.peak_pct():
            found = run
    return found


def _peak_working(run: Run, show: str) -> str:
    course, air = run.course, run.air
    peak_h, peak_pct = course.peak_h(), course.peak_pct()
    text = say(
        "humidity.peak.when",
        "after {hours} h, with {changes} air changes an hour",
        hours=decimal(peak_h, 1),
        changes=short_decimal(air.air_changes_per_hour, 2),
    )
    if peak_h == 0:
        return text + say("humidity.peak.start", ": the start itself")
    if peak_pct >= ALMOST_FULL_PCT:
        return text + say("humidity.peak.full", ": the air is full, and what more comes wets cold faces")
    gone_h, at = Fraction(0), 0
    while at < len(course.coats) and gone_h + course.coats[at][0] < peak_h:
        gone_h += course.coats[at][0]
        at += 1
    water_lb, times = run.loads[at]
    gives = water_lb / (times * basis_h(air.saturated_psi, peak_pct))
    carried = air.air_changes_per_hour * air.lb_per_psi() * (air.saturated_psi * peak_pct / 100 - air.outdoor_psi)
    burner = ""
    if air.added_lb_per_h > 0:
        burner = say(
            "humidity.peak.burner", ", the burner {gives}", gives=measure.shown(air.added_lb_per_h, "lb", 2, show)
        )
    return text + say(
        "humidity.peak.working", ": there coat {coat} gives {water} ÷ {time} h = {gives} an hour{burner}, and the air carries off {carried}",
        coat=str(at + 1), water=measure.shown(water_lb, "lb", 1, show), time=decimal(water_lb / gives, 1), gives=measure.shown(gives, "lb", 2, show),
        burner=burner, carried=measure.shown(carried, "lb", 2, show),
    )  # fmt: skip


def _held_told(layers: Layers, show: str) -> str:
    held = measure.shown(layers.held_gal, "gal", 2, show)
    if layers.stretch > 1:
        text = "Such coats of all-purpose compound hold {held}, so each takes {times} times as long"
        return say("humidity.held.more", text, held=held, times=short_decimal(layers.stretch, 2))
    if layers.water_gal < layers.held_gal:
        text = "Such coats of all-purpose compound hold {held}; with less, each still takes the time of its thickness"
        return say("humidity.held.less", text, held=held)
    return say("humidity.held", "Such coats of all-purpose compound hold {held}", held=held)


def _balance_told(closed: Way, show: str) -> str:
    """Every pound is found again: what went in and what was found, room closed."""
    began, books = closed.law.course.start, closed.law.course.end
    went = (began.coat + began.air + books.added) * UNIT_LB
    found = (books.coat + books.air + books.vented + books.removed + books.condensed) * UNIT_LB
    text = "Room closed, {went} with the air's and the burner's in; {found} found again, in the coats, in the air, or where it went"
    return say(
        "humidity.balance", text, went=measure.shown(went, "lb", 3, show), found=measure.shown(found, "lb", 3, show)
    )


def heat(inputs: HumidityInputs, way: Way) -> Quantity:
    """Return the heat [Btu/h] that holds the room's heat on average while `way` dries it: what warms the air from outdoors, and what
    turns water to vapor. What walls and windows lose is not in it. Source: ASHRAE 2017, heat of moist air."""
    run = way.soonest if way.law.air.temperature_f < inputs.temperature_f else way.law
    colder_f = max(inputs.temperature_f - inputs.outdoor_temperature_f, Fraction(0))
    air = (
        given(inputs.volume_cuft, "cuft")
        * given(run.air.air_changes_per_hour, "per_h")
        * AIR_HEAT
        * given(colder_f, "dF")
    )
    dried_lb = (run.course.start.coat - run.course.end.coat) * UNIT_LB
    return air + given(dried_lb, "lb") / given(run.course.followed_h(), "h") * VAPOR_HEAT


def machine_takes(*, plate: Quantity, air: Quantity, rated: Quantity) -> Quantity:
    """Return what a machine takes in air of the vapor pressure `air` [psi]: its `plate` [pt/day] in proportion to the pressure at which it
    is `rated` [psi], and at most its plate. Sources: the rating points; the proportion is common practice, no source."""
    takes = plate * air / rated if air.value < rated.value else plate
    return takes.cited("doe-dehumidifier", "common-practice")
