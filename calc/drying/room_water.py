"""A room's water over time: out of the coats, through the air, and away. Whole numbers, so that none is lost.

The air is taken as well mixed and at one temperature, so that the mass of its vapor goes with the vapor's pressure. A coat
gives off its water by the drying law at the room's humidity of that hour, and the next one starts when it is dry. Over
a short step each flow is linear in the vapor; every flow is booked as a whole number of nanopounds out of one pool
and into another.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.drying.law import MILLION, constant_millionths
from calc.numbers.exact import round_half_up

UNIT_LB = Fraction(1, 10**9)  # water is booked in whole nanopounds
WATER_GAS_CONSTANT = Fraction(85780, 1000)  # of water vapor [ft lb/(lb degR)], ASHRAE Fundamentals 2017 chapter 1
RANKINE_AT_ZERO_FAHRENHEIT = Fraction(45967, 100)  # 0 degF in degrees Rankine, by definition
SQUARE_INCHES_PER_SQUARE_FOOT = 144
SCALE = 10**12  # speeds are kept to this part of 1/h while stepping
TICKS_PER_H = 10**6  # time is told in whole millionths of an hour
LONGEST_H = 720  # beyond 30 days nobody waits [h]
LONGEST_STEP_H = 24  # [h]
FIRST_STEPS = 4  # the first step of a coat is so small a part of the time in which the air answers [-]


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
    """Where the water is, in whole nanopounds: `coat` in all coats, `air`, and what left or came since the start."""

    coat: int
    air: int
    vented: int
    removed: int
    added: int
    condensed: int


@dataclass(frozen=True)
class DryingCourse:
    """How it went: `hours_to_dry` [h] or None where it is not dry in 30 days; `ticks` [millionths of an hour] and the water in the
    air then [nanopounds]; what full air holds; the books at the start and at the end; for each coat that got dry its hours [h] and
    the humidity on average over them [%]."""

    hours_to_dry: Fraction | None
    ticks: tuple[int, ...]
    held: tuple[int, ...]
    full_air: int
    start: Books
    end: Books
    coats: tuple[tuple[Fraction, Fraction], ...]

    def followed_h(self) -> Fraction:
        """Return how long the course is [h]."""
        return Fraction(self.ticks[-1], TICKS_PER_H)

    def peak_pct(self) -> Fraction:
        """Return the highest humidity on the course [%]."""
        return Fraction(max(self.held) * 100, self.full_air)

    def peak_h(self) -> Fraction:
        """Return when it is first that high [h]."""
        return Fraction(self.ticks[self.held.index(max(self.held))], TICKS_PER_H)


@dataclass(frozen=True)
class _Flow:
    """One step: the mean water in the air over it, and how much dried, went out, was taken and came, in nanopounds."""

    mean: int
    dried: int
    out: int
    taken: int
    came: int


class _Pools:
    """The room in whole numbers, and the books while they are kept."""

    def __init__(self, air: Air, coat: int, start_psi: Fraction) -> None:
        capacity, units = air.lb_per_psi(), 1 / UNIT_LB
        self.full = round_half_up(capacity * air.saturated_psi * units)
        self.outdoor = round_half_up(capacity * air.outdoor_psi * units)
        self.rated = round_half_up(capacity * air.rated_psi * units)
        self.venting = round_half_up(air.air_changes_per_hour * SCALE)
        self.removal = round_half_up(air.removal_lb_per_h / (capacity * air.rated_psi) * SCALE)
        self.rating = round_half_up(air.removal_lb_per_h * units)
        self.adding = round_half_up(air.added_lb_per_h * units)
        self.coat = coat
        self.held = min(round_half_up(capacity * start_psi * units), self.full)
        self.vented, self.removed, self.added, self.condensed = 0, 0, 0, 0

    def books(self) -> Books:
        return Books(self.coat, self.held, self.vented, self.removed, self.added, self.condensed)

    def speed(self, drying: int, held: int) -> int:
        """How fast the coat gives to air that holds `held`, by the law: a part of what the air lacks in each hour, scaled."""
        return drying // constant_millionths(min(held * MILLION // self.full, MILLION))

    def flow(self, drying: int, ticks: int) -> _Flow:
        """What a step of `ticks` would do: the law is read at the step's start, and again at the mean that this gives."""
        mean = self._mean(self.speed(drying, self.held), False, ticks)
        giving = self.speed(drying, mean)
        mean = self._mean(giving, False, ticks)
        over = (
            self.removal > 0 and mean > self.rated
        )  # damper than its rating point a machine takes its rating and no more
        if over:
            mean = self._mean(giving, True, ticks)
        hour = SCALE * TICKS_PER_H
        taken = self.rating * ticks // TICKS_PER_H if over else self.removal * mean * ticks // hour
        return _Flow(
            mean,
            giving * (self.full - mean) * ticks // hour,
            self.venting * (mean - self.outdoor) * ticks // hour,
            taken,
            self.adding * ticks // TICKS_PER_H,
        )

    def _mean(self, giving: int, over: bool, ticks: int) -> int:
        """The mean water in the air: it runs toward `rest`, and the part of the way that is left falls like 1/e^x."""
        pull = giving + self.venting + (0 if over else self.removal)
        gain = giving * self.full + self.venting * self.outdoor + self.adding * SCALE
        if over:
            gain -= self.rating * SCALE
        rest = gain // pull
        x = pull * ticks // TICKS_PER_H
        series = SCALE + x * (SCALE + x * (SCALE + x * (SCALE + x // 4) // (3 * SCALE)) // (2 * SCALE)) // SCALE
        left = SCALE * SCALE // series
        return min(max(rest + (self.held - rest) * (SCALE - left) // x, 0), self.full)

    def book(self, flow: _Flow) -> None:
        self.coat -= flow.dried
        self.held += flow.dried + flow.came - flow.out - flow.taken
        self.vented, self.removed, self.added = (
            self.vented + flow.out,
            self.removed + flow.taken,
            self.added + flow.came,
        )
        if self.held > self.full:
            self.condensed += self.held - self.full
            self.held = self.full
        if self.held < 0:  # a rounding at the very dry end: the machine finds no more
            self.removed += self.held
            self.held = 0


def follow(air: Air, coats: tuple[tuple[Fraction, Fraction], ...], start_psi: Fraction, parts: int) -> DryingCourse:
    """Return the course of `coats`, each (water [lb, > 0], times the basis time of the law [-, > 0]), one after another.

    `start_psi` [psi] is the vapor pressure in the room at first; a step takes about one of `parts` [-, >= 4] from a coat.
    Every nanopound is in one pool at every instant. It ends when all is dry, or after 30 days. Raises nothing.
    """
    waters = [round_half_up(water_lb / UNIT_LB) for water_lb, _ in coats]
    pools = _Pools(air, sum(waters), start_psi)
    start = pools.books()
    longest = LONGEST_H * TICKS_PER_H
    now = 0
    times, held, ended = [0], [pools.held], []
    for at, (_, ratio) in enumerate(coats):
        # nanopounds an hour = drying / constant x (full - held), all scaled
        drying = round_half_up(waters[at] * air.saturated_psi / (ratio * pools.full) * SCALE * MILLION)
        left, begun, weighed = waters[at], now, 0
        answers = pools.speed(drying, pools.held) + pools.venting + pools.removal
        ticks = max(TICKS_PER_H * SCALE // (answers * parts // FIRST_STEPS), 1)
        while left > 0 and now < longest:
            ticks = min(ticks, longest - now)
            flow = pools.flow(drying, ticks)
            if flow.dried >= left:
                ticks = max(ticks * left // flow.dried, 1)
                flow = pools.flow(drying, ticks)
                flow = _Flow(flow.mean, left, flow.out, flow.taken, flow.came)
            pools.book(flow)
            left -= flow.dried
            now += ticks
            weighed += flow.mean * ticks
            times.append(now)
            held.append(pools.held)
            wanted = ticks * waters[at] // (parts * flow.dried) if flow.dried > 0 else longest
            ticks = max(min(2 * ticks, wanted, LONGEST_STEP_H * TICKS_PER_H), 1)
        if left > 0:
            break
        ended.append((Fraction(now - begun, TICKS_PER_H), Fraction(weighed * 100, max(now - begun, 1) * pools.full)))
    dry_h = Fraction(now, TICKS_PER_H) if len(ended) == len(coats) else None
    return DryingCourse(dry_h, tuple(times), tuple(held), pools.full, start, pools.books(), tuple(ended))
