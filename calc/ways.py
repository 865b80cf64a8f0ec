"""Three ways to dry a room, each followed three times: at the soonest, by the law, and at the longest."""

from dataclasses import dataclass
from fractions import Fraction

from calc.air import outdoor_pressure_psi, vapor_pressure_psi
from calc.coats import Layers, layers_of
from calc.drying_law import FREEZING_F
from calc.inputs import WATER_LB_PER_GAL
from calc.measure import PINTS_PER_GALLON
from calc.moisture import Air, Course, follow

HOURS_PER_DAY = 24
PARTS = 12  # a step takes about such a part of a coat's water [-]
RATED_PCT = Fraction(60)  # the humidity at which dehumidifiers are rated [%], AHAM
BURNED_LB_PER_BTU = Fraction(94, 1000000)  # water from natural gas [lb/Btu]; molar masses, heat value from memory
ICING_F = 65  # under it a refrigerant dehumidifier may ice up [degF], common practice
LEAK_LEAST_PER_H = Fraction(1, 10)  # a closed room that is well sealed [1/h], common practice
LEAK_USUAL_PER_H = Fraction(3, 10)  # a closed room as it often is [1/h], common practice
LEAK_MOST_PER_H = Fraction(1)  # a closed room that leaks [1/h], common practice


@dataclass(frozen=True)
class HumidityInputs:
    """`volume_cuft` [cu ft] of air, `wet_area_sqft` [sq ft, > 0], `texture_depth_in` [in], `coats` [-] of `coat_thickness_in`
    [in], `water_gal` [gal] or None for what such coats hold, `temperature_f` [degF, 32 to 98] and `humidity_pct` [%] in the
    room at first, the same outdoors, air changes [1/h] closed, or None for a band, and open, the dehumidifier [pints/day at
    `rated_f` degF, 60 %] and its kind 'refrigerant' or 'desiccant', `heat_held` 'unknown', 'yes' or 'no' with the window open,
    `burner_btu_per_h` [Btu/h], `show_in`."""

    volume_cuft: Fraction
    wet_area_sqft: Fraction
    texture_depth_in: Fraction
    coats: int
    coat_thickness_in: Fraction
    water_gal: Fraction | None
    temperature_f: Fraction
    humidity_pct: Fraction
    outdoor_temperature_f: Fraction
    outdoor_humidity_pct: Fraction
    closed_air_changes_per_hour: Fraction | None
    open_air_changes_per_hour: Fraction
    dehumidifier_pt_per_day: Fraction
    dehumidifier_kind: str
    rated_f: Fraction
    heat_held: str
    burner_btu_per_h: Fraction
    show_in: str

    def layers(self) -> Layers:
        """Return the coats and their water."""
        return layers_of(
            self.wet_area_sqft, self.texture_depth_in, self.coats, self.coat_thickness_in, self.water_gal
        )  # fmt: skip

    def may_ice(self) -> bool:
        """Return whether the dehumidifier may ice up in this room, and then takes nothing."""
        return self.dehumidifier_kind == "refrigerant" and self.temperature_f < ICING_F

    def leaks_per_h(self) -> tuple[Fraction, ...]:
        """Return the air changes [1/h] that a closed room may have: the usual first, then the ends of the band, if it was not given."""
        if self.closed_air_changes_per_hour is not None:
            return (self.closed_air_changes_per_hour,)
        return (LEAK_USUAL_PER_H, LEAK_LEAST_PER_H, LEAK_MOST_PER_H)

    def coldest_f(self) -> Fraction:
        """Return the temperature [degF] to which a room without heat falls at most, with the window open: that outdoors."""
        return min(self.temperature_f, self.outdoor_temperature_f)


@dataclass(frozen=True)
class Run:
    """One course, with the air in which it ran and each coat's (water [lb], times the basis time [-])."""

    air: Air
    loads: tuple[tuple[Fraction, Fraction], ...]
    course: Course


@dataclass(frozen=True)
class Way:
    """One way of drying: its public `name`, how it is told, at length and in a word, and the run at the soonest, by the law and
    at the longest; that is None where the room may freeze before it is dry."""

    name: str
    told: str
    short: str
    soonest: Run
    law: Run
    longest: Run | None

    def longest_h(self) -> Fraction | None:
        """Return the hours to wait [h], or None where it may not be dry in 30 days."""
        return None if self.longest is None else self.longest.course.hours_to_dry


def room_air(inputs: HumidityInputs, temperature_f: Fraction, air_changes_per_hour: Fraction, pints: Fraction) -> Air:
    """Return the room's air at `temperature_f` [degF] with `air_changes_per_hour` [1/h] and a dehumidifier of `pints` [pints/day].

    Source: ASHRAE 2017 for pressures; AHAM, or the energy department's test, for the rating point.
    """
    return Air(
        inputs.volume_cuft,
        temperature_f,
        vapor_pressure_psi(temperature_f),
        outdoor_pressure_psi(inputs.outdoor_temperature_f) * inputs.outdoor_humidity_pct / 100,
        air_changes_per_hour,
        pints * WATER_LB_PER_GAL / PINTS_PER_GALLON / HOURS_PER_DAY,
        vapor_pressure_psi(inputs.rated_f) * RATED_PCT / 100,
        inputs.burner_btu_per_h * BURNED_LB_PER_BTU,
    )


def loads_of(inputs: HumidityInputs, end: str) -> tuple[tuple[Fraction, Fraction], ...]:
    """Return each coat's (water [lb], times the basis time [-]), with the law's times at `end` 'low', 'law' or 'high'."""
    found = []
    for coat in inputs.layers().coats:
        times = coat.times.low_h if end == "low" else coat.times.high_h if end == "high" else coat.times.law_h
        found.append((coat.water_lb, times))
    return tuple(found)


def run_of(inputs: HumidityInputs, air: Air, end: str, parts: int) -> Run:
    """Return the run in `air` with the law's times at `end` 'low', 'law' or 'high', in steps of about one of `parts` of a coat."""
    loads = loads_of(inputs, end)
    start_psi = vapor_pressure_psi(inputs.temperature_f) * inputs.humidity_pct / 100
    return Run(air, loads, follow(air, loads, start_psi, parts))


def three_ways(inputs: HumidityInputs) -> tuple[Way, Way, Way]:
    """Return the room closed, with the window open, and closed with the dehumidifier on.

    The ends hold the law's band and what was not given: the leak of the closed room, heat that may fail with the window
    open, a dehumidifier that may ice up.
    """
    heat, none = inputs.temperature_f, Fraction(0)
    closed_airs = [room_air(inputs, heat, leak, none) for leak in inputs.leaks_per_h()]
    machine_airs = [room_air(inputs, heat, leak, inputs.dehumidifier_pt_per_day) for leak in inputs.leaks_per_h()]
    warm = room_air(inputs, heat, inputs.open_air_changes_per_hour, none)
    closed = Way(
        "closed_hours", "Room closed", "closed",
        _end(inputs, closed_airs, "low"), _run(inputs, closed_airs[0], "law"), _end(inputs, closed_airs, "high"),
    )  # fmt: skip
    running = _run(inputs, machine_airs[0], "law")
    machine = Way(
        "machine_hours", "Closed, dehumidifier on", "machine",
        _end(inputs, machine_airs, "low"),
        closed.law if inputs.may_ice() else running,
        closed.longest if inputs.may_ice() else _end(inputs, machine_airs, "high"),
    )  # fmt: skip
    return closed, _window(inputs, warm), machine


def _window(inputs: HumidityInputs, warm: Air) -> Way:
    coldest_f = inputs.coldest_f()
    soonest, by_law = _run(inputs, warm, "low"), _run(inputs, warm, "law")
    longest: Run | None = _run(inputs, warm, "high")
    if inputs.heat_held != "yes" and coldest_f < inputs.temperature_f:
        if coldest_f < FREEZING_F:
            longest = None
        else:
            cold = room_air(inputs, coldest_f, warm.air_changes_per_hour, Fraction(0))
            longest = _later(_run(inputs, warm, "high"), _run(inputs, cold, "high"))
            if inputs.heat_held == "no":
                by_law = _run(inputs, cold, "law")
    return Way("window_hours", "Window open", "window", soonest, by_law, longest)


def _run(inputs: HumidityInputs, air: Air, end: str) -> Run:
    return run_of(inputs, air, end, PARTS)


def _end(inputs: HumidityInputs, airs: list[Air], end: str) -> Run:
    """The first or the last to be dry, of the same room with each leak."""
    found = _run(inputs, airs[0], end)
    for air in airs[1:]:
        other = _run(inputs, air, end)
        if end == "high":
            found = _later(found, other)
        elif _later(found, other) is found:
            found = other
    return found


def _later(one: Run, other: Run) -> Run:
    """The run that is dry later; of two that never are, the one with more water left."""
    hours, others = one.course.hours_to_dry, other.course.hours_to_dry
    if hours is None and others is None:
        return one if one.course.end.coat >= other.course.end.coat else other
    if hours is None:
        return one
    return other if others is None or others > hours else one
