"""The passages from the truck to the room: how long a sheet each takes, what that counted, and what it left out."""

from dataclasses import dataclass
from fractions import Fraction

from calc.carry.door import LEEWAY_IN, Doorway, Pinch, through_door
from calc.carry.hall_drawing import plan
from calc.carry.landing import Flight, Landing, longest_over_half, longest_over_quarter
from calc.carry.turns import longest_over_nosing, longest_round, square_to_slope
from calc.core.drawing import Drawing
from calc.numbers import measure, words
from calc.numbers.exact import floor

SIXTEENTHS = 16
NO_LIMIT_IN = Fraction(480)  # longer than any sheet [in]
WALL_IN = Fraction(5)  # thickness of a wall with a door [in], common practice
LIFT_WALL_IN = Fraction(12)  # from the lobby's side of a lift's doors to the inside of its car [in], common practice
OPEN_IN = Fraction(1200)  # a lobby that is not looked at is counted as open [in]
SIDES = ("far", "near")


@dataclass(frozen=True)
class Hall:
    """The hall and the room at the door [in]: the hall `wide_in`, `long_in` in all and `beyond_in` past the door; the door
    `door_in` wide and `door_high_in` high; the room `room_in` along its wall and `deep_in` square to it, with a corner
    `corner_in` from the door on `side` ('far' as one comes, 'near', or 'unknown')."""

    wide_in: Fraction
    long_in: Fraction
    beyond_in: Fraction
    door_in: Fraction
    door_high_in: Fraction
    room_in: Fraction
    deep_in: Fraction
    corner_in: Fraction
    side: str


@dataclass(frozen=True)
class Corner:
    """Two halls that meet, `from_in` and `to_in` wide, each measured along its outer wall to its end, None where not known [in]."""

    from_in: Fraction
    to_in: Fraction
    from_long_in: Fraction | None
    to_long_in: Fraction | None


@dataclass(frozen=True)
class Stair:
    """A stair `wide_in`, its headroom, its flights (`upper` is `lower` where there is one); the level floor at its `foot_in`
    and `head_in`, None where not known; the landing's `deep_in` (None: a straight stair), `across_in` (None: not known)
    and `kind` ('quarter', 'half', 'unknown'). All [in]."""

    wide_in: Fraction
    headroom_in: Fraction
    lower: Flight
    upper: Flight
    foot_in: Fraction | None
    head_in: Fraction | None
    deep_in: Fraction | None
    across_in: Fraction | None
    kind: str


@dataclass(frozen=True)
class Lift:
    """A lift's car and its door [in]; `lobby_in` deep in front of it, None where not known."""

    wide_in: Fraction
    deep_in: Fraction
    high_in: Fraction
    door_in: Fraction
    door_high_in: Fraction
    lobby_in: Fraction | None


@dataclass(frozen=True)
class Sheet:
    """A sheet `wide_in` and `thick_in` [in], under ceilings `ceiling_in` high [in]; lengths are told in `show_in`."""

    wide_in: Fraction
    thick_in: Fraction
    ceiling_in: Fraction
    show_in: str

    def told(self, length_in: Fraction) -> str:
        """Return a width, as a person reads it."""
        return measure.shown(length_in, "in", 4, self.show_in)

    def far(self, length_in: Fraction) -> str:
        """Return a length of more than a few feet, as a person reads it."""
        return measure.shown(length_in / measure.INCHES_PER_FOOT, "ft", 4, self.show_in)


@dataclass(frozen=True)
class Passage:
    """One obstacle: its `name`; the `longest_in` sheet for which a way was found [in], 0 for none; `how` it is carried; what
    was `counted`, so that a reader can work it out again; what was `left_out`, and its
    `drawing` where it has one."""

    name: str
    longest_in: Fraction
    how: str
    counted: str
    left_out: tuple[str, ...] = ()
    drawing: Drawing | None = None


def _cut(length_in: Fraction) -> Fraction:
    return min(Fraction(floor(length_in * SIXTEENTHS), SIXTEENTHS), NO_LIMIT_IN)


def _at_pinch(pinch: Pinch, sheet: Sheet, place: str, line_in: Fraction) -> str:
    slant = "slanted " + words.short_decimal(Fraction(pinch.along, pinch.across), 2) + " along to 1 across"
    less = " Less " + sheet.told(LEEWAY_IN) + " for a hand and for slants between."
    if pinch.kind == "hall":
        return "The hall is " + sheet.far(line_in) + " long, and the sheet lies in it first." + less
    if pinch.kind == "cross":
        return (
            "Where it is tightest, " + slant + ", the hall takes " + sheet.told(pinch.hall_share_in) + " of it and " + place + " "
            + sheet.told(pinch.room_share_in) + ", measured along it from the hall's side of the door." + less
        )  # fmt: skip
    if pinch.kind == "start":
        return "The hall holds no longer one, " + slant + ", before its nose is through the doorway." + less
    if pinch.kind == "room":
        return "No longer one lies in " + place + ", " + slant + "." + less
    return "The doorway itself holds it back." + less


def _doorway(hall: Hall, side: str, thick_in: Fraction) -> Doorway:
    other_in = hall.room_in - hall.door_in - hall.corner_in
    near_in, far_in = (hall.corner_in, other_in) if side == "near" else (other_in, hall.corner_in)
    before_in = hall.long_in - hall.door_in - hall.beyond_in
    return Doorway(
        hall.door_in, WALL_IN, hall.wide_in, before_in, hall.beyond_in, near_in, far_in, hall.deep_in, thick_in
    )


def door_passage(hall: Hall, sheet: Sheet) -> Passage:
    """Return the passage from the hall through the door into the room, on edge; a side that is not known counts as the worse.

    Source: geometry.
    """
    name, how, told = "Door off the hall", "on edge", sheet.told
    if sheet.wide_in >= min(hall.door_high_in, sheet.ceiling_in):
        return Passage(name, Fraction(0), how, "On edge it is higher than the door or the ceiling.")
    held = []
    for side in SIDES if hall.side == "unknown" else (hall.side,):
        way = _doorway(hall, side, sheet.thick_in)
        held.append((side, way, through_door(way)))
    side, way, pinch = held[0]
    for one in held[1:]:
        if one[2].longest_in < pinch.longest_in:
            side, way, pinch = one
    counted = (
        "Counted: door " + told(hall.door_in) + ", hall " + told(hall.wide_in) + " wide and " + sheet.far(hall.long_in) + " long, "
        + (sheet.far(hall.beyond_in) if hall.beyond_in > 0 else "none") + " of it past the door; room " + sheet.far(hall.room_in) + " along that wall and " + sheet.far(hall.deep_in)
        + " from it, its corner " + told(hall.corner_in) + " from the door at the " + side + " side; wall " + told(WALL_IN) + " thick. "
    )  # fmt: skip
    counted += _at_pinch(pinch, sheet, "the room", hall.long_in)
    lettering = told(pinch.longest_in + LEEWAY_IN), told(hall.wide_in), sheet.far(hall.deep_in)
    return Passage(name, _cut(pinch.longest_in), how, counted, (), plan(way, pinch, lettering))


def corner_passage(corner: Corner, sheet: Sheet) -> Passage:
    """Return the passage round a corner of two halls, on edge or flat. Source: geometry."""
    told, how = sheet.told, "on edge"
    longest_in = Fraction(0)
    if sheet.wide_in < sheet.ceiling_in:
        longest_in = longest_round(corner.from_in, corner.to_in, sheet.thick_in)
    flat_in = longest_round(corner.from_in, corner.to_in, sheet.wide_in)
    depth_in = sheet.thick_in
    if flat_in > longest_in:
        longest_in, how, depth_in = flat_in, "flat", sheet.wide_in
    counted = (
        "Counted: the least, over all slants, of (" + told(corner.from_in) + " × cosine + " + told(corner.to_in) + " × sine − "
        + told(depth_in) + ") / (sine × cosine)."
    )  # fmt: skip
    left_out = []
    for long_in, which in ((corner.from_long_in, "first"), (corner.to_long_in, "second")):
        if long_in is None:
            left_out.append("the length of the " + which + " hall at the corner")
        else:
            longest_in = min(longest_in, long_in - LEEWAY_IN)
            counted += " The " + which + " hall is " + sheet.far(long_in) + " long, less " + told(LEEWAY_IN) + "."
    return Passage("Corner of the hall", _cut(longest_in), how, counted, tuple(left_out))


def _over_nosing(stair: Stair, flight: Flight, sheet: Sheet, depth_in: Fraction) -> Fraction:
    clear_in = square_to_slope(stair.headroom_in, flight.rise_in, flight.run_in)
    return longest_over_nosing(clear_in, sheet.ceiling_in, depth_in, flight.rise_in, flight.run_in)


def stair_passage(stair: Stair, sheet: Sheet) -> Passage:
    """Return the passage from the floor at the foot up the slope to the floor at the head, on edge or flat. Source: geometry."""
    told, how = sheet.told, "on edge"
    longest_in, depth_in = Fraction(0), sheet.wide_in
    flights = [stair.lower]
    if stair.upper.rise_in != stair.lower.rise_in or stair.upper.run_in != stair.lower.run_in:
        flights.append(stair.upper)
    if sheet.thick_in < stair.wide_in:
        longest_in = min([_over_nosing(stair, flight, sheet, sheet.wide_in) for flight in flights])
    if sheet.wide_in < stair.wide_in:
        flat_in = min([_over_nosing(stair, flight, sheet, sheet.thick_in) for flight in flights])
        if flat_in > longest_in:
            longest_in, how, depth_in = flat_in, "flat", sheet.thick_in
    clear = [told(square_to_slope(stair.headroom_in, one.rise_in, one.run_in)) for one in flights]
    steps = [told(flight.rise_in) + " over " + told(flight.run_in) for flight in flights]
    counted = (
        "Counted: stair " + told(stair.wide_in) + " wide, headroom " + told(stair.headroom_in) + " and ceilings at foot and head "
        + sheet.far(sheet.ceiling_in) + " high, a step of " + words.listed(steps)
        + ". Square to the slope that leaves " + words.listed(clear)
        + ". The least, over all tilts t up to the slope s, of (that − " + told(depth_in) + " × cos t) / sin t + (ceiling − " + told(depth_in)
        + " × cos (s − t)) / sin (s − t)."
    )  # fmt: skip
    left_out = []
    for long_in, which, take_in in ((stair.foot_in, "foot", stair.lower.run_in), (stair.head_in, "head", Fraction(0))):
        if long_in is None:
            left_out.append("the level floor at the " + which + " of the stair")
        else:
            longest_in = min(longest_in, max(long_in - take_in - LEEWAY_IN, Fraction(0)))
            counted += (
                " Level floor at the " + which + ": " + sheet.far(long_in) + ", less " + told(take_in + LEEWAY_IN) + "."
            )
    return Passage("Stair", _cut(longest_in), how, counted, tuple(left_out))


def landing_passage(stair: Stair, sheet: Sheet) -> Passage:
    """Return the passage over the landing, on edge; a kind that is not known counts as the worse of both, a width that is
    not known as the least: the stair's for a quarter turn, twice the stair's for a half. Source: geometry.
    """
    told = sheet.told
    kinds = [kind for kind in ("quarter", "half") if stair.kind in (kind, "unknown")]
    found = []
    for kind in kinds:
        least_in = stair.wide_in if kind == "quarter" else 2 * stair.wide_in
        across_in = least_in if stair.across_in is None else max(stair.across_in, stair.wide_in)
        place = Landing(
            stair.lower, stair.upper, stair.wide_in, stair.deep_in or Fraction(0), across_in, stair.headroom_in,
            sheet.wide_in, sheet.thick_in,
        )  # fmt: skip
        found.append((longest_over_quarter(place) if kind == "quarter" else longest_over_half(place), kind, across_in))
    longest_in, kind, across_in = found[0]
    for one in found[1:]:
        if one[0] < longest_in:
            longest_in, kind, across_in = one
    counted = (
        "Counted: a " + kind + " turn, stair " + told(stair.wide_in) + " wide, landing " + told(stair.deep_in or Fraction(0)) + " deep and "
        + told(across_in) + " across, headroom " + told(stair.headroom_in) + ", steps of " + told(stair.lower.rise_in) + " over "
        + told(stair.lower.run_in) + " and " + told(stair.upper.rise_in) + " over " + told(stair.upper.run_in)
        + ". Whole inches were tried over a grid of slants and tilts; less " + told(LEEWAY_IN) + " for a hand and for poses between."
    )  # fmt: skip
    if kind == "half":
        counted += " Between the flights the sheet lies level, along the landing."
    return Passage("Landing", _cut(longest_in), "on edge", counted, ("how long the flights at the landing are",))


def lift_passage(lift: Lift, sheet: Sheet) -> Passage:
    """Return the passage from the lobby into the lift's car, on edge, its door in the middle (the worst place).

    Source: geometry.
    """
    name, how, told = "Lift", "on edge", sheet.told
    if sheet.wide_in >= min(lift.door_high_in, lift.high_in):
        return Passage(name, Fraction(0), how, "On edge it is higher than the lift or its door.")
    door_in = min(lift.door_in, lift.wide_in)
    side_in = (lift.wide_in - door_in) / 2
    lobby_in = OPEN_IN if lift.lobby_in is None else lift.lobby_in
    pinch = through_door(
        Doorway(door_in, LIFT_WALL_IN, lobby_in, OPEN_IN, OPEN_IN, side_in, side_in, lift.deep_in, sheet.thick_in)
    )
    counted = (
        "Counted: car " + told(lift.wide_in) + " wide and " + told(lift.deep_in) + " deep, door " + told(door_in) + " in the middle, "
        + told(LIFT_WALL_IN) + " from the lobby to the car"
        + ("" if lift.lobby_in is None else ", lobby " + told(lift.lobby_in) + " deep") + ". "
    )  # fmt: skip
    left_out = ("the lobby in front of the lift",) if lift.lobby_in is None else ("how wide the lobby of the lift is",)
    return Passage(
        name, _cut(pinch.longest_in), how, counted + _at_pinch(pinch, sheet, "the car", 2 * OPEN_IN), left_out
    )
