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
from calc.text.door import say

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
    """One obstacle: its `name`; the `longest_in` sheet for which a way was found [in], 0 for none; whether it is carried `flat`
    and not on edge; what was `counted`, so that a reader can work it out again; what was `left_out`, and its
    `drawing` where it has one."""

    name: str
    longest_in: Fraction
    flat: bool
    counted: str
    left_out: tuple[str, ...] = ()
    drawing: Drawing | None = None


def _cut(length_in: Fraction) -> Fraction:
    return min(Fraction(floor(length_in * SIXTEENTHS), SIXTEENTHS), NO_LIMIT_IN)


def _at_pinch(pinch: Pinch, sheet: Sheet, line_in: Fraction, car: bool) -> str:
    """What holds the sheet back: in the hall or the lobby, at the door, or in the room, which is the lift's `car`."""
    less = say("carry.pinch.less", "Less {leeway} for a hand and for slants between.", leeway=sheet.told(LEEWAY_IN))
    return _held_back(pinch, sheet, line_in, car) + " " + less


def _held_back(pinch: Pinch, sheet: Sheet, line_in: Fraction, car: bool) -> str:
    slope = words.short_decimal(Fraction(pinch.along, pinch.across), 2)
    if pinch.kind == "hall":
        return say(
            "carry.pinch.hall", "The hall is {length} long, and the sheet lies in it first.", length=sheet.far(line_in)
        )
    if pinch.kind == "cross":
        hall, beyond = sheet.told(pinch.hall_share_in), sheet.told(pinch.room_share_in)
        if car:
            return say(
                "carry.pinch.cross.car",
                "Where it is tightest, slanted {slope} along to 1 across, the hall takes {hall} of it and the car {car}, measured along it from the hall's side of the door.",
                slope=slope, hall=hall, car=beyond,
            )  # fmt: skip
        return say(
            "carry.pinch.cross.room",
            "Where it is tightest, slanted {slope} along to 1 across, the hall takes {hall} of it and the room {room}, measured along it from the hall's side of the door.",
            slope=slope, hall=hall, room=beyond,
        )  # fmt: skip
    if pinch.kind == "start":
        return say(
            "carry.pinch.start",
            "The hall holds no longer one, slanted {slope} along to 1 across, before its nose is through the doorway.",
            slope=slope,
        )
    if pinch.kind == "room":
        if car:
            return say(
                "carry.pinch.car", "No longer one lies in the car, slanted {slope} along to 1 across.", slope=slope
            )
        return say(
            "carry.pinch.room", "No longer one lies in the room, slanted {slope} along to 1 across.", slope=slope
        )
    return say("carry.pinch.door", "The doorway itself holds it back.")


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
    name, told = say("carry.door.name", "Door off the hall"), sheet.told
    if sheet.wide_in >= min(hall.door_high_in, sheet.ceiling_in):
        high = say("carry.door.high", "On edge it is higher than the door or the ceiling.")
        return Passage(name, Fraction(0), False, high)
    held = []
    for side in SIDES if hall.side == "unknown" else (hall.side,):
        way = _doorway(hall, side, sheet.thick_in)
        held.append((side, way, through_door(way)))
    side, way, pinch = held[0]
    for one in held[1:]:
        if one[2].longest_in < pinch.longest_in:
            side, way, pinch = one
    counted = _counted_at_door(hall, side, sheet) + " " + _at_pinch(pinch, sheet, hall.long_in, False)
    lettering = told(pinch.longest_in + LEEWAY_IN), told(hall.wide_in), sheet.far(hall.deep_in)
    return Passage(name, _cut(pinch.longest_in), False, counted, (), plan(way, pinch, lettering))


def _counted_at_door(hall: Hall, side: str, sheet: Sheet) -> str:
    """The measures that were counted: one sentence for each side of the corner, with and without a hall past the door."""
    door, wide, long = sheet.told(hall.door_in), sheet.told(hall.wide_in), sheet.far(hall.long_in)
    along, deep = sheet.far(hall.room_in), sheet.far(hall.deep_in)
    corner, wall = sheet.told(hall.corner_in), sheet.told(WALL_IN)
    if hall.beyond_in > 0:
        beyond = sheet.far(hall.beyond_in)
        if side == "far":
            return say(
                "carry.door.past.far",
                "Counted: door {door}, hall {hall} wide and {long} long, {beyond} of it past the door; room {along} along that wall and {deep} from it, its corner {corner} from the door at the far side; wall {wall} thick.",
                door=door, hall=wide, long=long, beyond=beyond, along=along, deep=deep, corner=corner, wall=wall,
            )  # fmt: skip
        return say(
            "carry.door.past.near",
            "Counted: door {door}, hall {hall} wide and {long} long, {beyond} of it past the door; room {along} along that wall and {deep} from it, its corner {corner} from the door at the near side; wall {wall} thick.",
            door=door, hall=wide, long=long, beyond=beyond, along=along, deep=deep, corner=corner, wall=wall,
        )  # fmt: skip
    if side == "far":
        return say(
            "carry.door.ends.far",
            "Counted: door {door}, hall {hall} wide and {long} long, none of it past the door; room {along} along that wall and {deep} from it, its corner {corner} from the door at the far side; wall {wall} thick.",
            door=door, hall=wide, long=long, along=along, deep=deep, corner=corner, wall=wall,
        )  # fmt: skip
    return say(
        "carry.door.ends.near",
        "Counted: door {door}, hall {hall} wide and {long} long, none of it past the door; room {along} along that wall and {deep} from it, its corner {corner} from the door at the near side; wall {wall} thick.",
        door=door, hall=wide, long=long, along=along, deep=deep, corner=corner, wall=wall,
    )  # fmt: skip


def corner_passage(corner: Corner, sheet: Sheet) -> Passage:
    """Return the passage round a corner of two halls, on edge or flat. Source: geometry."""
    told, flat = sheet.told, False
    longest_in, depth_in = Fraction(0), sheet.thick_in
    if sheet.wide_in < sheet.ceiling_in:
        longest_in = longest_round(corner.from_in, corner.to_in, sheet.thick_in)
    flat_in = longest_round(corner.from_in, corner.to_in, sheet.wide_in)
    if flat_in > longest_in:
        longest_in, flat, depth_in = flat_in, True, sheet.wide_in
    counted = say(
        "carry.corner.counted", "Counted: the least, over all slants, of ({first} × cosine + {second} × sine − {depth}) / (sine × cosine).",
        first=told(corner.from_in), second=told(corner.to_in), depth=told(depth_in),
    )  # fmt: skip
    leeway, left_out = told(LEEWAY_IN), []
    if corner.from_long_in is None:
        left_out.append(say("carry.corner.left_out.first", "the length of the first hall at the corner"))
    else:
        longest_in = min(longest_in, corner.from_long_in - LEEWAY_IN)
        counted += " " + say(
            "carry.corner.first", "The first hall is {length} long, less {leeway}.",
            length=sheet.far(corner.from_long_in), leeway=leeway,
        )  # fmt: skip
    if corner.to_long_in is None:
        left_out.append(say("carry.corner.left_out.second", "the length of the second hall at the corner"))
    else:
        longest_in = min(longest_in, corner.to_long_in - LEEWAY_IN)
        counted += " " + say(
            "carry.corner.second", "The second hall is {length} long, less {leeway}.",
            length=sheet.far(corner.to_long_in), leeway=leeway,
        )  # fmt: skip
    return Passage(say("carry.corner.name", "Corner of the hall"), _cut(longest_in), flat, counted, tuple(left_out))


def _over_nosing(stair: Stair, flight: Flight, sheet: Sheet, depth_in: Fraction) -> Fraction:
    clear_in = square_to_slope(stair.headroom_in, flight.rise_in, flight.run_in)
    return longest_over_nosing(clear_in, sheet.ceiling_in, depth_in, flight.rise_in, flight.run_in)


def _step(flight: Flight, sheet: Sheet) -> str:
    return say("carry.step", "{rise} over {run}", rise=sheet.told(flight.rise_in), run=sheet.told(flight.run_in))


def stair_passage(stair: Stair, sheet: Sheet) -> Passage:
    """Return the passage from the floor at the foot up the slope to the floor at the head, on edge or flat. Source: geometry."""
    told, flat = sheet.told, False
    longest_in, depth_in = Fraction(0), sheet.wide_in
    flights = [stair.lower]
    if stair.upper.rise_in != stair.lower.rise_in or stair.upper.run_in != stair.lower.run_in:
        flights.append(stair.upper)
    if sheet.thick_in < stair.wide_in:
        longest_in = min([_over_nosing(stair, flight, sheet, sheet.wide_in) for flight in flights])
    if sheet.wide_in < stair.wide_in:
        flat_in = min([_over_nosing(stair, flight, sheet, sheet.thick_in) for flight in flights])
        if flat_in > longest_in:
            longest_in, flat, depth_in = flat_in, True, sheet.thick_in
    clear = [told(square_to_slope(stair.headroom_in, one.rise_in, one.run_in)) for one in flights]
    steps = [_step(one, sheet) for one in flights]
    counted = say(
        "carry.stair.counted",
        "Counted: stair {wide} wide, headroom {headroom} and ceilings at foot and head {ceiling} high, a step of {steps}. Square to the slope that leaves {clear}. The least, over all tilts t up to the slope s, of (that − {depth} × cos t) / sin t + (ceiling − {depth} × cos (s − t)) / sin (s − t).",
        wide=told(stair.wide_in), headroom=told(stair.headroom_in), ceiling=sheet.far(sheet.ceiling_in), steps=words.listed(steps),
        clear=words.listed(clear), depth=told(depth_in),
    )  # fmt: skip
    left_out = []
    if stair.foot_in is None:
        left_out.append(say("carry.stair.left_out.foot", "the level floor at the foot of the stair"))
    else:
        take_in = stair.lower.run_in + LEEWAY_IN
        longest_in = min(longest_in, max(stair.foot_in - take_in, Fraction(0)))
        counted += " " + say(
            "carry.stair.foot", "Level floor at the foot: {length}, less {less}.",
            length=sheet.far(stair.foot_in), less=told(take_in),
        )  # fmt: skip
    if stair.head_in is None:
        left_out.append(say("carry.stair.left_out.head", "the level floor at the head of the stair"))
    else:
        longest_in = min(longest_in, max(stair.head_in - LEEWAY_IN, Fraction(0)))
        counted += " " + say(
            "carry.stair.head", "Level floor at the head: {length}, less {less}.",
            length=sheet.far(stair.head_in), less=told(LEEWAY_IN),
        )  # fmt: skip
    return Passage(say("carry.stair.name", "Stair"), _cut(longest_in), flat, counted, tuple(left_out))


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
    wide, deep, across = told(stair.wide_in), told(stair.deep_in or Fraction(0)), told(across_in)
    headroom, lower, upper = told(stair.headroom_in), _step(stair.lower, sheet), _step(stair.upper, sheet)
    leeway = told(LEEWAY_IN)
    if kind == "quarter":
        counted = say(
            "carry.landing.quarter",
            "Counted: a quarter turn, stair {wide} wide, landing {deep} deep and {across} across, headroom {headroom}, steps of {lower} and {upper}. Whole inches were tried over a grid of slants and tilts; less {leeway} for a hand and for poses between.",
            wide=wide, deep=deep, across=across, headroom=headroom, lower=lower, upper=upper, leeway=leeway,
        )  # fmt: skip
    else:
        counted = say(
            "carry.landing.half",
            "Counted: a half turn, stair {wide} wide, landing {deep} deep and {across} across, headroom {headroom}, steps of {lower} and {upper}. Whole inches were tried over a grid of slants and tilts; less {leeway} for a hand and for poses between.",
            wide=wide, deep=deep, across=across, headroom=headroom, lower=lower, upper=upper, leeway=leeway,
        )  # fmt: skip
        counted += " " + say("carry.landing.level", "Between the flights the sheet lies level, along the landing.")
    left_out = say("carry.landing.left_out", "how long the flights at the landing are")
    return Passage(say("carry.landing.name", "Landing"), _cut(longest_in), False, counted, (left_out,))


def lift_passage(lift: Lift, sheet: Sheet) -> Passage:
    """Return the passage from the lobby into the lift's car, on edge, its door in the middle (the worst place).

    Source: geometry.
    """
    name, told = say("carry.lift.name", "Lift"), sheet.told
    if sheet.wide_in >= min(lift.door_high_in, lift.high_in):
        high = say("carry.lift.high", "On edge it is higher than the lift or its door.")
        return Passage(name, Fraction(0), False, high)
    door_in = min(lift.door_in, lift.wide_in)
    side_in = (lift.wide_in - door_in) / 2
    lobby_in = OPEN_IN if lift.lobby_in is None else lift.lobby_in
    pinch = through_door(
        Doorway(door_in, LIFT_WALL_IN, lobby_in, OPEN_IN, OPEN_IN, side_in, side_in, lift.deep_in, sheet.thick_in)
    )
    car_wide, car_deep, door, across = told(lift.wide_in), told(lift.deep_in), told(door_in), told(LIFT_WALL_IN)
    if lift.lobby_in is None:
        left_out = say("carry.lift.left_out.lobby", "the lobby in front of the lift")
        counted = say(
            "carry.lift.counted", "Counted: car {wide} wide and {deep} deep, door {door} in the middle, {across} from the lobby to the car.",
            wide=car_wide, deep=car_deep, door=door, across=across,
        )  # fmt: skip
    else:
        left_out = say("carry.lift.left_out.wide", "how wide the lobby of the lift is")
        counted = say(
            "carry.lift.counted.lobby", "Counted: car {wide} wide and {deep} deep, door {door} in the middle, {across} from the lobby to the car, lobby {lobby} deep.",
            wide=car_wide, deep=car_deep, door=door, across=across, lobby=told(lift.lobby_in),
        )  # fmt: skip
    counted += " " + _at_pinch(pinch, sheet, 2 * OPEN_IN, True)
    return Passage(name, _cut(pinch.longest_in), False, counted, (left_out,))
