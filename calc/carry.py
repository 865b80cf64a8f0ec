"""Carry: the longest sheet that gets from the truck to the room, obstacle by obstacle, as a plate with a thickness.

A plate is carried on edge or flat. Directions are taken as exact fractions (half-angle tangents), so that no engine
rounds a sine; lengths are cut down to a sixteenth of an inch.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc import measure
from calc.answer import Answer, Calculator, Item, line
from calc.exact import floor, square_root
from calc.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.inputs import BOARD_THICKNESS, HEIGHT, SHEET_WIDTH, SHEET_WIDTHS_IN
from calc.measure import INCHES_PER_FOOT
from calc.signals import caution
from calc.words import short_decimal

GRID = 2048  # directions looked at between along and across [-]
SIXTEENTHS = 16
NO_LIMIT_IN = 480  # longer than any sheet: no limit [in]
WALL_IN = 5  # thickness of a wall with a door [in], common practice
STAIR_RISE_IN, STAIR_RUN_IN = Fraction(31, 4), Fraction(10)  # the steepest house stair [in], IRC R311.7.5, from memory
STOCK_FT = (8, 9, 10, 12, 14, 16)
GEOMETRY = ("carry-geometry",)


def _width(name: str, label: str, help_text: str, example: str, default: str = "", rare: bool = False) -> Field:
    return Field(
        name=name, label=label, kind="length", unit="in", help=help_text, example=example, lowest="12", highest="600", default=default,
        required=bool(default), rare=rare,
    )  # fmt: skip


DOOR = _width("door_width_in", "Narrowest door, clear width", "Between the stops, door open or off.", "30", "30")
HALL = _width("hall_width_in", "Hall in front of that door", "Wall to wall, trim counted.", "36", "36")
TURN_FROM = _width("turn_from_in", "Corner: the hall that you come from", "Leave empty where no hall turns.", "36")
TURN_TO = _width("turn_to_in", "Corner: the hall that you go to", "Wall to wall.", "36")
STAIR = _width("stair_width_in", "Stair, clear width", "Between wall and rail. Leave empty where there is none.", "34")
HEADROOM = _width("headroom_in", "Stair, headroom", "Straight up from a step to what is above.", "80", "80", True)
LANDING = _width("landing_in", "Stair: the landing that turns", "Its depth. Leave empty for a straight stair.", "36")
LIFT_WIDE = _width("lift_width_in", "Lift, width inside", "Leave empty where there is none.", "54")
LIFT_DEEP = _width("lift_depth_in", "Lift, depth inside", "Door to back.", "51", rare=True)
LIFT_HIGH = _width("lift_height_in", "Lift, height inside", "Floor to ceiling.", "92", "90", True)


@dataclass(frozen=True)
class CarryInputs:
    """Widths of the ways [in]; None where a way is not there. `sheet_in` the sheet's width and `thick_in` its thickness
    [in]; `ceiling_in` the ceiling's height [in]; `show_in`."""

    door_in: Fraction
    hall_in: Fraction
    turn: tuple[Fraction, Fraction] | None
    stair: tuple[Fraction, Fraction] | None
    landing: tuple[Fraction, Fraction] | None
    lift: tuple[Fraction, Fraction, Fraction] | None
    ceiling_in: Fraction
    sheet_in: Fraction
    thick_in: Fraction
    show_in: str


def direction(step: int) -> tuple[Fraction, Fraction]:
    """Return (cosine, sine) of the direction at `step` [-, 0 to GRID] between along and across, as exact fractions."""
    top, bottom = step * step, GRID * GRID
    return Fraction(bottom - top, bottom + top), Fraction(2 * step * GRID, bottom + top)


def longest_round(from_in: Fraction, to_in: Fraction, thick_in: Fraction) -> Fraction:
    """Return the longest plate [in] of thickness `thick_in` [in] that turns a right angle from a way `from_in` wide into
    one `to_in` wide [in], 0 where it is thicker than a way. Source: geometry, the classic corner with a thickness.
    """
    if thick_in >= from_in or thick_in >= to_in:
        return Fraction(0)

    def at(step: int) -> Fraction:
        cosine, sine = direction(step)
        return (from_in * cosine + to_in * sine - thick_in) / (sine * cosine)

    low, high = 1, GRID - 1
    while high - low > 2:  # one valley: the length is long at both ends
        third = (high - low) // 3
        left, right = low + third, high - third
        if at(left) <= at(right):
            high = right
        else:
            low = left
    return min([at(step) for step in range(low, high + 1)])


def longest_in_box(wide_in: Fraction, high_in: Fraction, thick_in: Fraction) -> Fraction:
    """Return the longest plate [in] of thickness `thick_in` [in] that lies in a box `wide_in` by `high_in` [in] at any
    tilt, 0 where none does. Source: geometry.
    """
    if thick_in > wide_in and thick_in > high_in:
        return Fraction(0)
    best = Fraction(0)
    if thick_in <= high_in:
        best = wide_in
    if thick_in <= wide_in:
        best = max(best, high_in)
    low, high = 1, GRID - 1
    while high - low > 1:  # along, the width limits; upright, the height: the best tilt is where both do
        middle = (low + high) // 2
        cosine, sine = direction(middle)
        by_width, by_height = (wide_in - thick_in * sine) / cosine, (high_in - thick_in * cosine) / sine
        best = max(best, min(by_width, by_height))
        if by_width < by_height:
            low = middle
        else:
            high = middle
    return best


def longest_through_door(hall_in: Fraction, door_in: Fraction, thick_in: Fraction) -> Fraction:
    """Return the longest plate [in] that slides on edge out of a hall `hall_in` wide through a door `door_in` wide [in]
    in its side wall, in one straight push at the best slant. Source: geometry; a turn on the way may allow more.
    """
    low, high = 1, GRID - 1
    while high - low > 1:  # the least slant that passes between the jambs
        middle = (low + high) // 2
        cosine, sine = direction(middle)
        if door_in * sine - WALL_IN * cosine >= thick_in:
            high = middle
        else:
            low = middle
    cosine, sine = direction(high)
    if door_in * sine - WALL_IN * cosine < thick_in:
        return Fraction(0)
    return max((hall_in - thick_in * cosine) / sine, Fraction(0))


def _round(from_in: Fraction, to_in: Fraction, inputs: CarryInputs) -> tuple[Fraction, str]:
    """The longest sheet round a corner on edge, flat, or tilted up, and how."""
    on_edge = longest_round(from_in, to_in, inputs.thick_in) if inputs.sheet_in <= inputs.ceiling_in else Fraction(0)
    flat = longest_round(from_in, to_in, inputs.sheet_in)
    tilted = longest_in_box(on_edge, inputs.ceiling_in, inputs.sheet_in) if on_edge > 0 else Fraction(0)
    best = max(on_edge, flat, tilted)
    if best == on_edge:
        return best, "on edge"
    return best, "flat" if best == flat else "on edge, one end up"


def longest_over_nosing(stair_in: Fraction, hall_in: Fraction, thick_in: Fraction) -> Fraction:
    """Return the longest plate [in], `thick_in` deep [in], that turns from a stair's slope into the level.

    `stair_in` is the clear height square to the slope, `hall_in` that of the hall at its head or foot [in]; 0 where the
    plate is deeper than either. Source: geometry, the corner of two ways that meet at the angle of the stair.
    """
    if thick_in >= stair_in or thick_in >= hall_in:
        return Fraction(0)
    slope = square_root(STAIR_RISE_IN * STAIR_RISE_IN + STAIR_RUN_IN * STAIR_RUN_IN)
    cosine_all, sine_all = STAIR_RUN_IN / slope, STAIR_RISE_IN / slope

    def at(step: int) -> Fraction:
        cosine, sine = direction(step)
        rest_cosine, rest_sine = cosine_all * cosine + sine_all * sine, sine_all * cosine - cosine_all * sine
        return (stair_in - thick_in * cosine) / sine + (hall_in - thick_in * rest_cosine) / rest_sine

    low, high = 1, floor(GRID * sine_all / (1 + cosine_all)) - 1
    while high - low > 2:
        third = (high - low) // 3
        left, right = low + third, high - third
        if at(left) <= at(right):
            high = right
        else:
            low = left
    return min([at(step) for step in range(low, high + 1)])


def _stair(inputs: CarryInputs, width_in: Fraction, headroom_in: Fraction) -> tuple[Fraction, str]:
    """Up a straight stair and over its head: on edge under the headroom, or flat where the stair is wide enough."""
    slope = square_root(STAIR_RISE_IN * STAIR_RISE_IN + STAIR_RUN_IN * STAIR_RUN_IN)
    clear_in = headroom_in * STAIR_RUN_IN / slope
    on_edge = (
        longest_over_nosing(clear_in, inputs.ceiling_in, inputs.sheet_in) if inputs.thick_in < width_in else Fraction(0)
    )
    flat = (
        longest_over_nosing(clear_in, inputs.ceiling_in, inputs.thick_in) if inputs.sheet_in < width_in else Fraction(0)
    )
    if flat > on_edge:
        return flat, "flat"
    return on_edge, "on edge" if on_edge > 0 else "no way"


def obstacles(inputs: CarryInputs) -> list[tuple[str, Fraction, str]]:
    """Return (obstacle, longest sheet [in], how it is carried) for each that was given."""
    found = []
    door = longest_through_door(inputs.hall_in, inputs.door_in, inputs.thick_in)
    found.append(("Door off the hall", door, "on edge, slanted"))
    if inputs.turn is not None:
        length, how = _round(inputs.turn[0], inputs.turn[1], inputs)
        found.append(("Corner of the hall", length, how))
    if inputs.stair is not None:
        length, how = _stair(inputs, inputs.stair[0], inputs.stair[1])
        found.append(("Stair", length, how))
    if inputs.landing is not None:
        length, how = _round(inputs.landing[0], inputs.landing[1], inputs)
        found.append(("Landing", length, how))
    if inputs.lift is not None:
        floor_in = longest_in_box(inputs.lift[0], inputs.lift[1], inputs.thick_in)
        found.append(
            ("Lift", longest_in_box(floor_in, inputs.lift[2], inputs.sheet_in), "corner to corner, one end up")
        )
    return found


def carry(inputs: CarryInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return the longest sheet for each obstacle, the one that governs, and the longest stock sheet that gets in.

    Raises nothing. Source: geometry.
    """
    show = inputs.show_in
    found = [(name, min(_cut_down(length), Fraction(NO_LIMIT_IN)), how) for name, length, how in obstacles(inputs)]
    governs = found[0]
    for one in found[1:]:
        if one[1] < governs[1]:
            governs = one
    longest_ft = governs[1] / INCHES_PER_FOOT
    stock = [length for length in STOCK_FT if longest_ft >= length]
    lines = [
        line("longest_sheet_ft", "Longest sheet that gets in", longest_ft, "ft", 3, "The least of all obstacles, cut down to 1/16 in.",
             "; ".join([name + " " + short_decimal(length, 2) + " in" for name, length, _ in found]), GEOMETRY, show),
        line("longest_stock_ft", "In stock lengths", Fraction(stock[-1] if stock else 0), "ft", 0, "The longest stock sheet that is no longer.",
             "8, 9, 10, 12, 14 or 16 ft", GEOMETRY, show),
    ]  # fmt: skip
    items = [_item(name, length, how, name == governs[0], show) for name, length, how in found]
    if stock:
        figure, label = measure.shown(Fraction(stock[-1]), "ft", 0, show), "is the longest stock sheet that gets in"
    else:
        figure, label = "No whole sheet", "of 8 ft or more gets in"
    return Answer(
        calculator="carry",
        inputs=given,
        figure=figure,
        figure_label=label,
        sentence=governs[0] + " governs, at " + measure.shown(longest_ft, "ft", 2, show) + ". " + _cure(bool(stock)),
        lines=tuple(lines),
        cautions=(caution("lift-board"),),
        notes=(
            "Measure clear widths: rails, trim and radiators count. Leave an inch for fingers.",
            "A sheet may be cut before it is carried: the cutting list of the board form says to which lengths.",
            "Scored and folded board breaks its core. It is left for small pieces at a wall.",
        ),
        drawing=None,
        items=tuple(items),
        items_title="Obstacle by obstacle",
    )  # fmt: skip


def _cut_down(length: Fraction) -> Fraction:
    return Fraction(floor(length * SIXTEENTHS), SIXTEENTHS)


def _item(name: str, length: Fraction, how: str, governs: bool, show: str) -> Item:
    if length >= NO_LIMIT_IN:
        return Item(name, "no limit", "Carried " + how + ".", GEOMETRY)
    if length == 0:
        return Item(
            name,
            "not at all",
            "No sheet of this width gets through, on edge or flat." + (" This one governs." if governs else ""),
            GEOMETRY,
        )
    told = measure.shown(length / INCHES_PER_FOOT, "ft", 2, show)
    return Item(name, told, "Carried " + how + "." + (" This one governs." if governs else ""), GEOMETRY)


def _cure(gets_in: bool) -> str:
    if gets_in:
        return "Buy no longer, or look for a window that takes more."
    return "Look for a window, or have the sheets cut to the plan before they are carried."


def _work_out(values: Values) -> Answer:
    pairs = (
        ("turn_from_in", "turn_to_in"), ("lift_width_in", "lift_depth_in"),
    )  # fmt: skip
    faults = []
    for one, other in pairs:
        for name, missing in ((one, other), (other, one)):
            if values.number_or_none(name) is not None and values.number_or_none(missing) is None:
                message = "A corner needs both ways, and a lift both sides. Give the other one too, or empty both."
                faults.append(Fault(missing, "", message, "36"))
    stair, landing = values.number_or_none("stair_width_in"), values.number_or_none("landing_in")
    if landing is not None and stair is None:
        faults.append(
            Fault("stair_width_in", "", "A landing needs the width of its stair. Give it, or empty the landing.", "34")
        )
    if faults:
        raise InputFault(tuple(faults))
    turn_from, turn_to = values.number_or_none("turn_from_in"), values.number_or_none("turn_to_in")
    wide, deep = values.number_or_none("lift_width_in"), values.number_or_none("lift_depth_in")
    inputs = CarryInputs(
        values.number("door_width_in"),
        values.number("hall_width_in"),
        None if turn_from is None or turn_to is None else (turn_from, turn_to),
        None if stair is None else (stair, values.number("headroom_in")),
        None if stair is None or landing is None else (stair, landing),
        None if wide is None or deep is None else (wide, deep, values.number("lift_height_in")),
        values.number("ceiling_height_ft") * INCHES_PER_FOOT,
        Fraction(dict(SHEET_WIDTHS_IN)[values.choice("sheet_width_in")][-1]),
        measure.read_number(values.choice("board_thickness_in")),
        values.choice("show_in"),
    )  # fmt: skip
    return carry(inputs, values.given)


CALCULATOR = Calculator(
    name="carry",
    title="The longest sheet that gets in",
    summary="The longest board round doors, corners, stairs and lifts",
    verb="Find the longest sheet",
    fields=(
        DOOR, HALL, TURN_FROM, TURN_TO, STAIR, LANDING, LIFT_WIDE, LIFT_DEEP, LIFT_HIGH, HEADROOM, HEIGHT, SHEET_WIDTH, BOARD_THICKNESS, SHOW_IN,
    ),
    work_out=_work_out,
    example=(("door_width_in", "30"), ("hall_width_in", "40"), ("turn_from_in", "40"), ("turn_to_in", "42"), ("stair_width_in", "36")),
)  # fmt: skip
