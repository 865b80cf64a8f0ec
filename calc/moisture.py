"""A room's water over time: out of the coat, through the air, and away. Whole numbers, so that none is lost.

The air is taken as well mixed and at one temperature, so that the mass of its vapor goes with the vapor's pressure.
Between two instants each flow is linear in that pressure; the pressure then runs along an exponential, which is
followed exactly, and every flow is booked as a whole number of nanopounds out of one pool and into another.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.exact import exponential, logarithm, round_half_up

UNIT_LB = Fraction(1, 10**9)  # water is booked in whole nanopounds
WATER_GAS_CONSTANT = Fraction(85780, 1000)  # of water vapor [ft lb/(lb degR)], ASHRAE Fundamentals 2017 chapter 1
RANKINE_AT_ZERO_FAHRENHEIT = Fraction(45967, 100)  # 0 degF in degrees Rankine, by definition
SQUARE_INCHES_PER_SQUARE_FOOT = 144
SCALE = 10**12  # factors are kept to this part while stepping [-]
CROSSING_KEPT = 10**6  # parts of an hour
LARGEST_POWER = 40  # beyond e to the -40 nothing is left [-]


@dataclass(frozen=True)
class Air:
    """What the room and its air are: `volume_cuft` [cu ft], `temperature_f` [degF], `saturated_psi` [psi] at that
    temperature, `outdoor_psi` [psi] the vapor pressure outdoors, `air_changes_per_hour` [1/h, > 0], `removal_lb_per_h`
    [lb/h] what a dehumidifier takes at `rated_psi` [psi, > 0], less in proportion below, `added_lb_per_h` [lb/h]
    from a burner."""

    volume_cuft: Fraction
    temperature_f: Fraction
    saturated_psi: Fraction
    outdoor_psi: Fraction
    air_changes_per_hour: Fraction
    removal_lb_per_h: Fraction
    rated_psi: Fraction
    added_lb_per_h: Fraction

    def lb_per_psi(self) -> Fraction:
        """Return the water [lb] that the room's air holds for each psi of vapor pressure, by the gas law."""
        rankine = self.temperature_f + RANKINE_AT_ZERO_FAHRENHEIT
        return self.volume_cuft * SQUARE_INCHES_PER_SQUARE_FOOT / (WATER_GAS_CONSTANT * rankine)

    def with_other(self, air_changes_per_hour: Fraction, removal_lb_per_h: Fraction) -> "Air":
        """Return the same room with other air changes [1/h] and another dehumidifier [lb/h]."""
        return Air(
            self.volume_cuft,
            self.temperature_f,
            self.saturated_psi,
            self.outdoor_psi,
            air_changes_per_hour,
            removal_lb_per_h,
            self.rated_psi,
            self.added_lb_per_h,
        )


@dataclass(frozen=True)
class Books:
    """Where the water is, in whole nanopounds: `coat`, `air`, and what left or came since the start."""

    coat: int
    air: int
    vented: int
    removed: int
    added: int
    condensed: int


@dataclass(frozen=True)
class Course:
    """How it went: `hours_to_dry` [h] or None where it is not dry at the end; the water in the air [nanopounds] at the
    start and after each step of `step_h` [h], and what full air holds; the books at the start and at the end."""

    hours_to_dry: Fraction | None
    step_h: Fraction
    held: tuple[int, ...]
    full_air: int
    start: Books
    end: Books

    def followed_h(self) -> Fraction:
        """Return how long the course is [h]."""
        return self.step_h * (len(self.held) - 1)

    def peak_pct(self) -> Fraction:
        """Return the highest humidity on the course [%]."""
        return Fraction(max(self.held) * 100, self.full_air)


class _Flows:
    """The flows over `step_h` in one regime: up to its rating a machine takes in proportion to the vapor (`damp` False),
    above it takes its rating and no more. All in whole nanopounds a step."""

    def __init__(self, air: Air, drying: Fraction, damp: bool, step_h: Fraction) -> None:
        capacity, units = air.lb_per_psi(), 1 / UNIT_LB
        vent = air.air_changes_per_hour * capacity  # lb/(h psi)
        removal = Fraction(0) if damp else air.removal_lb_per_h / air.rated_psi
        pull = drying + vent + removal
        # capacity x d(pressure)/dt = gain - pull x pressure
        gain = drying * air.saturated_psi + vent * air.outdoor_psi + air.added_lb_per_h
        if damp:
            gain -= air.removal_lb_per_h
        self.step_h = step_h
        self.speed = pull / capacity
        power = self.speed * step_h
        kept = exponential(-power) if power < LARGEST_POWER else Fraction(0)
        # over a step the pressure runs to `rest`; its mean is rest + (now - rest) x mean_part
        self.rest = round_half_up(gain / pull * capacity * units)
        self.kept = round_half_up(kept * SCALE)
        self.mean_part = round_half_up((1 - kept) / power * SCALE)
        self.drying = round_half_up(drying * step_h / capacity * SCALE)
        self.venting = round_half_up(vent * step_h / capacity * SCALE)
        self.removal = round_half_up(removal * step_h / capacity * SCALE)
        self.rating = round_half_up(air.removal_lb_per_h * step_h * units) if damp else 0
        self.added = round_half_up(air.added_lb_per_h * step_h * units)

    def end(self, held: int) -> int:
        """Return the water in the air after the step."""
        return self.rest + (held - self.rest) * self.kept // SCALE


class _Pools:
    """The books while they are kept."""

    def __init__(self, coat: int, held: int, full_air: int, outdoor: int) -> None:
        self.coat = coat
        self.held = held
        self.full_air = full_air
        self.outdoor = outdoor
        self.vented, self.removed, self.added, self.condensed = 0, 0, 0, 0

    def book(self, flows: _Flows) -> Fraction | None:
        """Book one step; return how far into it [h] the coat was dry, or None."""
        mean = max(flows.rest + (self.held - flows.rest) * flows.mean_part // SCALE, 0)
        dried = max((self.full_air - mean) * flows.drying // SCALE, 0)
        dry_at = None
        if dried >= self.coat:
            dry_at = flows.step_h * Fraction(self.coat, dried) if dried > 0 else Fraction(0)
            dried = self.coat
        out = (mean - self.outdoor) * flows.venting // SCALE
        taken = flows.rating + mean * flows.removal // SCALE
        self.coat -= dried
        self.held += dried + flows.added - out - taken
        self.vented, self.removed, self.added = self.vented + out, self.removed + taken, self.added + flows.added
        if self.held > self.full_air:
            self.condensed += self.held - self.full_air
            self.held = self.full_air
        if self.held < 0:  # a rounding at the very dry end: the machine finds no more
            self.removed += self.held
            self.held = 0
        return dry_at


def follow(
    air: Air, water_lb: Fraction, start_psi: Fraction, drying_lb_per_h_psi: Fraction, step_h: Fraction, steps: int
) -> Course:
    """Return the course of `water_lb` [lb, > 0] drying at `drying_lb_per_h_psi` [lb/(h psi), > 0] times what the air lacks.

    `start_psi` [psi] is the vapor pressure in the room at first; `step_h` [h, > 0] and `steps` [-] bound the effort.
    Every nanopound is in one pool at every instant. Raises nothing.
    """
    capacity, units = air.lb_per_psi(), 1 / UNIT_LB
    full_air = round_half_up(capacity * air.saturated_psi * units)
    rated = round_half_up(capacity * air.rated_psi * units)
    held = min(round_half_up(capacity * start_psi * units), full_air)
    pools = _Pools(round_half_up(water_lb * units), held, full_air, round_half_up(capacity * air.outdoor_psi * units))
    start = Books(pools.coat, held, 0, 0, 0, 0)
    usual = _Flows(air, drying_lb_per_h_psi, False, step_h)
    has_machine = air.removal_lb_per_h > 0
    damp = _Flows(air, drying_lb_per_h_psi, True, step_h) if has_machine else usual
    course = [held]
    hours_to_dry = None
    for step in range(steps):
        over = has_machine and pools.held > rated
        flows = damp if over else usual
        ends_over = has_machine and flows.end(pools.held) > rated
        parts = [flows]
        if over != ends_over:  # the regime changes inside the step: book it in two parts
            first_h = min(_crossing_h(flows, pools.held, rated), step_h)
            parts = [
                _Flows(air, drying_lb_per_h_psi, is_damp, part_h)
                for is_damp, part_h in ((over, first_h), (ends_over, step_h - first_h))
                if part_h > 0
            ]
        begun_h = step_h * step
        for part in parts:
            dry_at = pools.book(part)
            if dry_at is not None and hours_to_dry is None:
                hours_to_dry = begun_h + dry_at
            begun_h += part.step_h
        course.append(pools.held)
        if hours_to_dry is not None:
            break
    end = Books(pools.coat, pools.held, pools.vented, pools.removed, pools.added, pools.condensed)
    return Course(hours_to_dry, step_h, tuple(course), full_air, start, end)


def _crossing_h(flows: _Flows, held: int, rated: int) -> Fraction:
    """When the water in the air passes `rated` on its exponential [h], to a millionth of an hour, and later than 0."""
    ratio = Fraction(held - flows.rest, rated - flows.rest) if rated != flows.rest else Fraction(1)
    hours = logarithm(ratio) / flows.speed if ratio > 1 else Fraction(0)
    return Fraction(int(hours * CROSSING_KEPT) + 1, CROSSING_KEPT)
