"""A room's water over time: out of the coat, through the air, and away. Whole numbers, so that none is lost.

The air is taken as well mixed and at one temperature, so that the mass of its vapor goes with the vapor's pressure.
Between two instants each flow is linear in that pressure; the pressure then runs along an exponential, which is
followed exactly, and every flow is booked as a whole number of micropounds out of one pool and into another.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.exact import exponential, round_half_up

UNIT_LB = Fraction(1, 10**6)  # water is booked in whole micropounds
WATER_GAS_CONSTANT = Fraction(85780, 1000)  # of water vapor [ft lb/(lb degR)], ASHRAE Fundamentals 2017 chapter 1
RANKINE_AT_ZERO_FAHRENHEIT = Fraction(45967, 100)  # 0 degF in degrees Rankine, by definition
SQUARE_INCHES_PER_SQUARE_FOOT = 144
SCALE = 10**9  # factors are kept to this part while stepping [-]
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
    """Where the water is, in whole micropounds: `coat`, `air`, and what left or came since the start."""

    coat: int
    air: int
    vented: int
    removed: int
    added: int
    condensed: int


@dataclass(frozen=True)
class Course:
    """How it went: `hours_to_dry` [h] or None where it is not dry at the end; the water in the air [micropounds] at the
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
    """The flows of one regime, ready for stepping: whole numbers of micropounds a step."""

    def __init__(
        self, air: Air, drying: Fraction, removal: Fraction, added_lb_per_h: Fraction, step_h: Fraction
    ) -> None:
        capacity, units = air.lb_per_psi(), 1 / UNIT_LB
        vent = air.air_changes_per_hour * capacity  # lb/(h psi)
        pull = drying + vent + removal
        # capacity x d(pressure)/dt = gain - pull x pressure
        gain = drying * air.saturated_psi + vent * air.outdoor_psi + added_lb_per_h
        power = pull * step_h / capacity
        kept = exponential(-power) if power < LARGEST_POWER else Fraction(0)
        # over a step the pressure runs to `rest`; its mean is rest + (now - rest) x mean_part
        self.rest = round_half_up(gain / pull * capacity * units)
        self.kept = round_half_up(kept * SCALE)
        self.mean_part = round_half_up((1 - kept) / power * SCALE)
        self.drying = round_half_up(drying * step_h / capacity * SCALE)
        self.venting = round_half_up(vent * step_h / capacity * SCALE)
        self.removal = round_half_up(removal * step_h / capacity * SCALE)
        self.added = round_half_up(added_lb_per_h * step_h * units)


def follow(
    air: Air, water_lb: Fraction, start_psi: Fraction, drying_lb_per_h_psi: Fraction, step_h: Fraction, steps: int
) -> Course:
    """Return the course of `water_lb` [lb, > 0] drying at `drying_lb_per_h_psi` [lb/(h psi), > 0] times what the air lacks.

    `start_psi` [psi] is the vapor pressure in the room at first; `step_h` [h, > 0] and `steps` [-] bound the effort.
    Every micropound is in one pool at every instant. Raises nothing.
    """
    capacity, units = air.lb_per_psi(), 1 / UNIT_LB
    full_air = round_half_up(capacity * air.saturated_psi * units)
    outdoor = round_half_up(capacity * air.outdoor_psi * units)
    rated = round_half_up(capacity * air.rated_psi * units)
    coat = round_half_up(water_lb * units)
    held = min(round_half_up(capacity * start_psi * units), full_air)
    start = Books(coat, held, 0, 0, 0, 0)
    usual = _Flows(air, drying_lb_per_h_psi, air.removal_lb_per_h / air.rated_psi, air.added_lb_per_h, step_h)
    # in damp air the machine takes its rating and no more: a loss that does not grow with the pressure
    damp = usual
    if air.removal_lb_per_h > 0:
        damp = _Flows(air, drying_lb_per_h_psi, Fraction(0), air.added_lb_per_h - air.removal_lb_per_h, step_h)
    most_removed = round_half_up(air.removal_lb_per_h * step_h * units)
    burner = round_half_up(air.added_lb_per_h * step_h * units)
    vented, removed, added, condensed = 0, 0, 0, 0
    course = [held]
    hours_to_dry = None
    for step in range(steps):
        # a step that would take the air out of the damp at once belongs to the other regime
        over = held > rated and damp.rest + (held - damp.rest) * damp.kept // SCALE > rated
        flows = damp if over else usual
        mean = max(flows.rest + (held - flows.rest) * flows.mean_part // SCALE, 0)
        dried = max((full_air - mean) * flows.drying // SCALE, 0)
        if dried >= coat:
            part = Fraction(coat, dried) if dried > 0 else Fraction(0)
            hours_to_dry = step_h * (step + part)
            dried = coat
        out = (mean - outdoor) * flows.venting // SCALE
        taken = most_removed if over else mean * flows.removal // SCALE
        coat -= dried
        held += dried + burner - out - taken
        vented, removed, added = vented + out, removed + taken, added + burner
        if held > full_air:
            condensed += held - full_air
            held = full_air
        if held < 0:  # a rounding at the very dry end: the machine finds no more
            removed += held
            held = 0
        course.append(held)
        if hours_to_dry is not None:
            break
    return Course(
        hours_to_dry, step_h, tuple(course), full_air, start, Books(coat, held, vented, removed, added, condensed)
    )
