"""A plate on edge out of a hall, through a door in its side, into a room: the longest that has a way.

In plan the plate is a bar. While it is in the doorway it has a slant and crosses the wall's line somewhere; the hall
has room for so much of it behind that line, the room for so much ahead. At one slant each of these shares falls off in
straight lines as the crossing moves, so the crossings that will do are one stretch, and the bar can slide anywhere in
it. A way is therefore an unbroken run of slants: from one at which all of the bar is still in the hall, to one at which
all of it is in the room, and at each between the two shares come to the bar's length or more. Whole numbers only.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.numbers.exact import ceiling, floor

UNITS = 32  # lengths are whole numbers of a thirty-second of an inch [1/in]
SLANTS = 48  # slants looked at from along the hall to square to it [-]
LEEWAY_IN = Fraction(1, 2)  # taken off for what lies between two slants, and for a hand [in]
NONE = -1000000  # a share that no crossing gives [1/32 in]


@dataclass(frozen=True)
class Doorway:
    """A door in a hall's side wall: `door_in` wide in a wall `wall_in` thick; the hall `hall_in` wide, `before_in` long up
    to the door and `beyond_in` past it; the room `deep_in` from that wall, `near_in` and `far_in` to each side of the door,
    near being where one comes from; a plate `thick_in` thick. All [in], all 0 and more."""

    door_in: Fraction
    wall_in: Fraction
    hall_in: Fraction
    before_in: Fraction
    beyond_in: Fraction
    near_in: Fraction
    far_in: Fraction
    deep_in: Fraction
    thick_in: Fraction


@dataclass(frozen=True)
class Pinch:
    """What holds the bar back: `kind` is 'hall' (its length), 'start' (not all of it lies slanted in the hall), 'jamb',
    'cross' (hall and room share it) or 'room'; `along` to `across` is the slant [-]; the shares that hall and room take,
    and the longest bar [in]; the `ends` of the bar there in plan, from the door's near side on the hall's side [in]; empty but
    for 'start' and 'cross'."""

    kind: str
    along: int
    across: int
    hall_share_in: Fraction
    room_share_in: Fraction
    longest_in: Fraction
    ends: tuple[tuple[Fraction, Fraction], ...]


@dataclass(frozen=True)
class _Row:
    """One slant, cosine `along` and sine `across` over `whole`; the longest bar [1/32 in] that is all in the hall, that
    stands with its nose in the doorway, that does so and may go on, that crosses, that has its tail in the doorway and
    comes from crossing, that has its tail there, that is all in the room; of the one that crosses,
    and of the one all in the hall, where it crosses the hall's side of the wall and its shares behind and ahead; `back` where it
    heads for where one comes from."""

    along: int
    across: int
    start: int
    nose: int
    on: int
    cross: int
    off: int
    tail: int
    goal: int
    crossing: tuple[int, int, int]
    starting: tuple[int, int, int]
    back: bool


class _Side:
    """The bar heads for one end of the hall, its tail to the other; lengths in 1/32 in."""

    def __init__(self, way: Doorway, mirrored: bool) -> None:
        self.door = floor(way.door_in * UNITS)
        self.wall = ceiling(way.wall_in * UNITS)
        self.hall = floor(way.hall_in * UNITS)
        self.behind = floor((way.beyond_in if mirrored else way.before_in) * UNITS)
        self.ahead = self.door + floor((way.near_in if mirrored else way.far_in) * UNITS)
        self.deep = self.wall + floor(way.deep_in * UNITS)
        self.half = ceiling(way.thick_in * UNITS / 2)
        self.mirrored = mirrored

    def row(self, step: int) -> _Row:
        along, across, whole = SLANTS * SLANTS - step * step, 2 * SLANTS * step, SLANTS * SLANTS + step * step
        half, door = self.half, self.door
        by_side, by_end = half * along, half * across
        tail_cap = (self.hall * whole - by_side) // across
        nose_cap = (self.deep * whole - by_side) // across
        door_cap = (self.wall * whole - by_side) // across

        def share(cap: int, reach: int) -> int:
            return cap if along == 0 else min(cap, (reach * whole - by_end) // along)

        def tail(at: int) -> int:
            return share(tail_cap, at + self.behind)

        def nose(at: int) -> int:
            return share(nose_cap, self.ahead - at)

        def in_door(at: int) -> int:
            return share(door_cap, door - at)

        def leaving(at: int) -> int:
            return share(-out, at)

        out = -((-by_side) // across)
        low = -((-half * whole) // across)
        high = door - low
        high_through = high + (-self.wall * along) // across
        low_leaving = low + (-self.wall * along) // across + 1
        # where the tail's share, the nose's and those of the doorway stop being held by a side wall
        bends = [
            low,
            (tail_cap * along + by_end) // whole - self.behind,
            self.ahead - (nose_cap * along + by_end) // whole,
            door - (door_cap * along + by_end) // whole,
            (by_end - out * along) // whole,
        ]
        start, stands, on, cross, off, leaves, goal = NONE, NONE, NONE, NONE, NONE, NONE, NONE
        crossing = starting = (0, 0, 0)
        if low <= high:
            start = tail(high) - out
            starting = (high, tail(high), -out)
            stands = max([tail(at) + in_door(at) for at in _within(bends, low, high)])
        if low <= high_through:
            places = _within(bends, low, high_through)
            on = max([tail(at) + in_door(at) for at in places])
            for at in places:
                if tail(at) + nose(at) > cross:
                    cross, crossing = tail(at) + nose(at), (at, tail(at), nose(at))
            off = max([min(leaving(at), tail(at)) + nose(at) for at in places])
        if low_leaving <= high_through:
            leaves = max([leaving(at) + nose(at) for at in _within(bends, low_leaving, high_through)])
            goal = nose(low_leaving) + (-self.wall * whole - by_side) // across
        return _Row(
            along, across, min(start, stands), stands, on, cross, off, leaves, min(goal, leaves), crossing, starting, self.mirrored,
        )  # fmt: skip


def _within(bends: list[int], low: int, high: int) -> list[int]:
    return [min(max(at, low), high) for at in bends] + [high]


def _spread(best: list[int], caps: list[int]) -> list[int]:
    """Return the longest bar that gets to each slant, from those it may begin at, through slants with these caps."""
    found = [min(best[at], caps[at]) for at in range(len(caps))]
    for turn in (range(len(caps)), range(len(caps) - 1, -1, -1)):
        last = NONE
        for at in turn:
            last = max(found[at], min(caps[at], last))
            found[at] = last
    return found


def through_door(way: Doorway) -> Pinch:
    """Return what holds a plate back that is carried on edge from along the hall into the room, and the longest that has a
    way [in], less `LEEWAY_IN`; 0 where none has. Source: geometry; a way is given for each, longer ones may have another.
    """
    ahead, back = _Side(way, False), _Side(way, True)
    rows = [ahead.row(step) for step in range(1, SLANTS + 1)] + [back.row(step) for step in range(SLANTS - 1, 0, -1)]
    nose = _spread([row.start for row in rows], [row.nose for row in rows])
    cross = _spread([min(nose[at], row.on) for at, row in enumerate(rows)], [row.cross for row in rows])
    tail = _spread([min(cross[at], row.off) for at, row in enumerate(rows)], [row.tail for row in rows])
    longest = max([min(tail[at], row.goal) for at, row in enumerate(rows)])
    in_line = ahead.door + ahead.behind + back.behind - 2 * ahead.half
    kind, pinch = "hall", rows[0]
    if longest < in_line:
        kind, pinch = _held_by(rows, longest)
    shown_in = max(Fraction(min(longest, in_line), UNITS) - LEEWAY_IN, Fraction(0))
    at, behind, before = pinch.crossing if kind == "cross" else pinch.starting
    ends: tuple[tuple[Fraction, Fraction], ...] = ()
    if kind in ("cross", "start"):
        ends = (_end(pinch, ahead.door, at, -behind), _end(pinch, ahead.door, at, before))
    return Pinch(kind, pinch.along, pinch.across, Fraction(behind, UNITS), Fraction(before, UNITS), shown_in, ends)


def _end(row: _Row, door: int, at: int, share: int) -> tuple[Fraction, Fraction]:
    whole = SLANTS * SLANTS * 2 - row.along  # along and across are two sides of a right triangle in whole numbers
    x = Fraction(at * whole + share * row.along, whole * UNITS)
    y = Fraction(share * row.across, whole * UNITS)
    return (Fraction(door, UNITS) - x if row.back else x), y


def _held_by(rows: list[_Row], longest: int) -> tuple[str, _Row]:
    for row in rows:
        if row.cross == longest:
            return "cross", row
    for row in rows:
        if row.start == longest:
            return "start", row
    for row in rows:
        if row.goal == longest:
            return "room", row
    return "jamb", rows[0]
