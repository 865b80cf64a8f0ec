"""Three ways to dry a room, each followed three times: at the soonest, by the law, and at the longest."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import WATER_LB_PER_GAL
from calc.drying.air import outdoor_pressure_psi, vapor_pressure_psi
from calc.drying.coats import Layers, layers_of
from calc.drying.law import FREEZING_F
from calc.drying.room_water import Air, DryingCourse, follow
from calc.numbers.measure import PINTS_PER_GALLON
from calc.text.door import say

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
    course: DryingCourse


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
        removal_lb_per_h(pints),
        vapor_pressure_psi(inputs.rated_f) * RATED_PCT / 100,
        inputs.burner_btu_per_h * BURNED_LB_PER_BTU,
    )


def removal_lb_per_h(pints: Fraction) -> Fraction:
    """Return what `pints` [pints/day] of water weigh in an hour [lb/h]."""
    return pints * WATER_LB_PER_GAL / PINTS_PER_GALLON / HOURS_PER_DAY


class Room:
    """One room's ways of drying: what all of its runs share is worked out once."""

    def __init__(self, inputs: HumidityInputs) -> None:
        self.inputs = inputs
        self.air = room_air(inputs, inputs.temperature_f, inputs.open_air_changes_per_hour, Fraction(0))
        self.start_psi = self.air.saturated_psi * inputs.humidity_pct / 100
        coats = inputs.layers().coats
        self.loads = {
            "low": tuple([(coat.water_lb, coat.times.low_h) for coat in coats]),
            "law": tuple([(coat.water_lb, coat.times.law_h) for coat in coats]),
            "high": tuple([(coat.water_lb, coat.times.high_h) for coat in coats]),
        }

    def run(self, air: Air, end: str, parts: int = PARTS) -> Run:
        """Return the run in `air` with the law's times at `end` 'low', 'law' or 'high', in steps of about one of `parts` of a coat."""
        return Run(air, self.loads[end], follow(air, self.loads[end], self.start_psi, parts))

    def first(self, airs: list[Air], end: str) -> Run:
        """Return the run that is dry first, of the same room in each of `airs`."""
        found = self.run(airs[0], end)
        for air in airs[1:]:
            other = self.run(air, end)
            if _later(found, other) is found:
                found = other
        return found

    def last(self, airs: list[Air], end: str) -> Run:
        """Return the run that is dry last, of the same room in each of `airs`."""
        found = self.run(airs[0], end)
        for air in airs[1:]:
            found = _later(found, self.run(air, end))
        return found


def three_ways(inputs: HumidityInputs) -> tuple[Way, Way, Way]:
    """Return the room closed, with the window open, and closed with the dehumidifier on.

    The ends hold the law's band and what was not given: the leak of the closed room, heat that may fail with the window
    open, a dehumidifier that may ice up.
    """
    room = Room(inputs)
    closed = _closed(room)
    return closed, _window(room), _machine(room, closed if inputs.may_ice() else None)


def way_of(inputs: HumidityInputs, kind: str) -> Way:
    """Return one of `three_ways` alone: `kind` is 'closed', 'window' or 'machine'."""
    room = Room(inputs)
    if kind == "window":
        return _window(room)
    if kind == "closed":
        return _closed(room)
    return _machine(room, _closed(room) if inputs.may_ice() else None)


def _closed(room: Room) -> Way:
    airs = [room.air.with_other(leak, Fraction(0)) for leak in _ends(room)]
    usual = room.air.with_other(room.inputs.leaks_per_h()[0], Fraction(0))
    return Way(
        "closed_hours", say("humidity.closed", "Room closed"), say("humidity.closed.short", "closed"),
        room.first(airs, "low"), room.run(usual, "law"), room.last(airs, "high"),
    )  # fmt: skip


def _machine(room: Room, iced: Way | None) -> Way:
    """Closed with the dehumidifier on; `iced` is the room closed where the machine may ice up, and then takes nothing."""
    dry_lb_per_h = removal_lb_per_h(room.inputs.dehumidifier_pt_per_day)
    airs = [room.air.with_other(leak, dry_lb_per_h) for leak in _ends(room)]
    usual = room.air.with_other(room.inputs.leaks_per_h()[0], dry_lb_per_h)
    return Way(
        "machine_hours", say("humidity.with_machine", "Closed, dehumidifier on"), say("humidity.with_machine.short", "machine"),
        room.first(airs, "low"),
        room.run(usual, "law") if iced is None else iced.law,
        room.last(airs, "high") if iced is None else iced.longest,
    )  # fmt: skip


def _ends(room: Room) -> tuple[Fraction, ...]:
    """The air changes [1/h] of the closed room at the ends of what they may be."""
    leaks = room.inputs.leaks_per_h()
    return leaks[1:] if len(leaks) > 1 else leaks


def _window(room: Room) -> Way:
    inputs, warm = room.inputs, room.air
    soonest, by_law = room.run(warm, "low"), room.run(warm, "law")
    longest: Run | None = None
    if inputs.heat_held == "yes" or inputs.coldest_f() >= inputs.temperature_f:
        longest = room.run(warm, "high")
    elif inputs.coldest_f() >= FREEZING_F:
        cold = room_air(inputs, inputs.coldest_f(), warm.air_changes_per_hour, Fraction(0))
        longest = room.last([warm, cold], "high")
        if inputs.heat_held == "no":
            by_law = room.run(cold, "law")
    told, short = say("humidity.window", "Window open"), say("humidity.window.short", "window")
    return Way("window_hours", told, short, soonest, by_law, longest)


def _later(one: Run, other: Run) -> Run:
    """The run that is dry later; of two that never are, the one with more water left."""
    hours, others = one.course.hours_to_dry, other.course.hours_to_dry
    if hours is None and others is None:
        return one if one.course.end.coat >= other.course.end.coat else other
    if hours is None:
        return one
    return other if others is None or others > hours else one
