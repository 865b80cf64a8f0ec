"""Carry: how long a sheet may be to get from the truck to the room, passage by passage, as a plate with a thickness.

Each length has a way by the measures given: on edge (round a corner or on a stair flat too), the plate upright. A longer one may have
another way, which is not searched; what was not measured may take less. So the answer says 'no longer than'.
"""

from fractions import Fraction

from calc.carry.landing import Flight
from calc.carry.passages import (
    NO_LIMIT_IN,
    Corner,
    Hall,
    Lift,
    Passage,
    Sheet,
    Stair,
    corner_passage,
    door_passage,
    landing_passage,
    lift_passage,
    stair_passage,
)
from calc.common.inputs import BOARD_THICKNESS, HEIGHT, SHEET_WIDTH, SHEET_WIDTHS_IN
from calc.core.answer import Answer, Calculator, Item
from calc.core.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.core.lines import Lines
from calc.evidence.cautions import caution
from calc.numbers import measure, words
from calc.numbers.measure import INCHES_PER_FOOT
from calc.numbers.quantity import given, least, told
from calc.text.door import say

STOCK_FT = (8, 9, 10, 12, 14, 16)
GEOMETRY = ("carry-geometry",)


def _width(
    name: str, label: str, help_text: str, example: str, default: str = "", rare: bool = False, lowest: str = "12"
) -> Field:
    return Field(
        name=name, label=label, kind="length", unit="in", help=help_text, example=example, lowest=lowest, highest="600", default=default,
        required=bool(default), rare=rare,
    )  # fmt: skip


def _stretch(
    name: str, label: str, help_text: str, example: str, default: str = "", rare: bool = False, lowest: str = "3"
) -> Field:
    return Field(
        name=name, label=label, kind="length", unit="ft", help=help_text, example=example, lowest=lowest, highest="200", default=default,
        required=bool(default), rare=rare,
    )  # fmt: skip


def _step(name: str, label: str, help_text: str, example: str, default: str = "", highest: str = "24") -> Field:
    return Field(
        name=name, label=label, kind="length", unit="in", help=help_text, example=example, lowest="4", highest=highest, default=default,
        required=bool(default), rare=True, source="common-practice" if default else "your-figure",
    )  # fmt: skip


DOOR = _width("door_width_in", "Narrowest door, clear width", "Between the stops, door open or off.", "30", "30")
HALL = _width("hall_width_in", "Hall in front of that door", "Wall to wall, trim counted.", "36", "36")
HALL_LONG = _stretch(
    "hall_length_ft", "Length of that hall", "From end to end. What turns off it does not count.", "16", "12"
)
HALL_BEYOND = _stretch(
    "hall_beyond_ft",
    "Hall past the door",
    "From the door's far side to the end. 0 where it ends there.",
    "4",
    "0",
    lowest="0",
)
ROOM_ALONG = _stretch("room_along_ft", "Room, the wall with the door", "From corner to corner.", "12", "10")
ROOM_DEEP = _stretch("room_deep_ft", "Room, from that wall across", "To what stands there, if it stays.", "12", "10")
DOOR_CORNER = _width(
    "door_corner_in", "Door to the room's corner", "From the opening to the nearer side wall.", "4", "4", lowest="0"
)
DOOR_SIDE = Field(
    name="door_corner_side", label="That corner is", kind="choice", unit="",
    help="As you come along the hall. Not known counts as the worse side.",
    example="far", default="unknown",
    choices=(("unknown", "Not known"), ("far", "At the far side of the door"), ("near", "At the near side of the door")),
)  # fmt: skip
DOOR_HIGH = _width("door_height_in", "Door, clear height", "Floor to head.", "80", "78", True)
TURN_FROM = _width("turn_from_in", "Corner: the hall that you come from", "Leave empty where no hall turns.", "36")
TURN_TO = _width("turn_to_in", "Corner: the hall that you go to", "Wall to wall.", "36")
TURN_FROM_LONG = _stretch(
    "turn_from_length_ft", "Corner: length of the first hall", "Along its outer wall, from the corner.", "14", rare=True
)
TURN_TO_LONG = _stretch(
    "turn_to_length_ft", "Corner: length of the second hall", "Along its outer wall, from the corner.", "14", rare=True
)
STAIR = _width("stair_width_in", "Stair, clear width", "Between wall and rail. Leave empty where there is none.", "34")
LANDING = _width("landing_in", "Stair: the landing that turns", "Its depth. Leave empty for a straight stair.", "36")
LANDING_KIND = Field(
    name="landing_kind", label="The landing turns", kind="choice", unit="",
    help="Not known counts as the worse one.", example="quarter", default="unknown",
    choices=(("unknown", "Not known"), ("quarter", "A quarter"), ("half", "A half, back beside the first flight")),
)  # fmt: skip
LANDING_WIDE = _width(
    "landing_width_in",
    "Landing, width across",
    "Across the lower flight. Empty: the stair's, or twice for a half turn.",
    "72",
)
STAIR_FOOT = _stretch(
    "stair_foot_ft", "Level floor at the stair's foot", "From the first step straight back to a wall.", "12"
)
STAIR_HEAD = _stretch(
    "stair_head_ft", "Level floor at the stair's head", "From the last step straight on to a wall.", "12"
)
RISE = _step("stair_rise_in", "Stair, height of a step", "The usual value is a steep old stair.", "7 1/2", "8 1/4")
RUN = _step("stair_run_in", "Stair, depth of a step", "From nosing to nosing, level.", "10", "9")
UPPER_RISE = _step("upper_rise_in", "Upper flight, height of a step", "Empty: as the lower flight.", "7 1/2")
UPPER_RUN = _step("upper_run_in", "Upper flight, depth of a step", "Empty: as the lower flight.", "10")
HEADROOM = _width("headroom_in", "Stair, headroom", "Straight up from a step to what is above.", "80", "80", True)
LIFT_WIDE = _width("lift_width_in", "Lift, width inside", "Leave empty where there is none.", "54")
LIFT_DEEP = _width("lift_depth_in", "Lift, depth inside", "Door to back.", "51", rare=True)
LIFT_HIGH = _width("lift_height_in", "Lift, height inside", "Floor to ceiling.", "92", "90", True)
LIFT_DOOR = _width("lift_door_in", "Lift, clear width of its door", "Open all the way.", "36", "30", True)
LIFT_DOOR_HIGH = _width("lift_door_height_in", "Lift, clear height of its door", "Sill to head.", "84", "78", True)
LIFT_LOBBY = _width("lift_lobby_in", "Lobby in front of the lift", "From its door to the wall across.", "96", rare=True)


def carry(passages: tuple[Passage, ...], sheet: Sheet, typed: tuple[tuple[str, str], ...]) -> Answer:
    """Return how long a sheet each of the `passages` takes, the one that governs, and the longest stock sheet to try.

    Raises nothing. Source: geometry.
    """
    show = sheet.show_in
    governs = passages[0]
    for one in passages[1:]:
        if one.longest_in < governs.longest_in:
            governs = one
    longest_ft = governs.longest_in / INCHES_PER_FOOT
    stock = [length for length in STOCK_FT if longest_ft >= length]
    told_ft = [_feet(Fraction(length), show) for length in STOCK_FT]
    lines = Lines("carry", show)
    lines.add(
        name="longest_sheet_ft",
        label="Longest sheet, by these measures",
        unit="ft",
        places=3,
        rule="The least of all passages, cut down and never up.",
        amount=least(*[given(one.longest_in, "in", "carry-geometry", one.name) for one in passages]),
    )
    tried = say(
        "carry.stock.working",
        "{lengths}, against {longest}",
        lengths=words.listed(told_ft, "or"),
        longest=_feet(longest_ft, show),
    )
    lines.add(
        name="longest_stock_ft", label="In stock lengths", unit="ft", places=0, rule="The longest stock sheet that is no longer.",
        amount=told(stock[-1] if stock else 0, "ft", tried, *GEOMETRY),
    )  # fmt: skip
    if stock:
        figure = say("carry.figure", "No longer than {length}", length=_feet(Fraction(stock[-1]), show))
        label = say("carry.figure.label", "by these measures; try with a lath of that length first")
    else:
        figure = say("carry.figure.none", "No whole sheet")
        label = say("carry.figure.none.label", "of {length} or more, by these measures", length=told_ft[0])
    return Answer(
        calculator="carry",
        inputs=typed,
        figure=figure,
        figure_label=label,
        sentence=" ".join(_sentences(passages, governs, bool(stock), show)),
        lines=lines.tuple(),
        cautions=(caution("lift-board"),),
        notes=(
            say("carry.note.lath", "Carry a lath as long as the sheet, and a stick as wide, the whole way before you buy."),
            say("carry.note.clear", "Measure clear widths: rails, trim, knobs, lamps and radiators count. None of them is counted here."),
            say("carry.note.edge", "Sheets are counted upright on edge; on a straight stair and at a corner lying flat too. A longer one may have another way, which was not searched."),
            say("carry.note.usual", "Values that you did not type are careful usual ones, not your house. Measure what governs."),
            say("carry.note.cut", "A sheet may be cut before it is carried: the cutting list of the board form says to which lengths."),
            say("carry.note.fold", "Scored and folded board breaks its core. It is left for small pieces at a wall."),
        ),
        drawing=passages[0].drawing,
        items=tuple([_item(one, one is governs, sheet) for one in passages]),
        items_title=say("carry.items", "Passage by passage"),
    )  # fmt: skip


def _sentences(passages: tuple[Passage, ...], governs: Passage, stock: bool, show_in: str) -> list[str]:
    """What governs, what was not looked at, and what to do, where a whole sheet of `stock` has a way or none."""
    if governs.longest_in == 0:
        none = "{passage} governs: no way was found for a sheet of this width."
        told = [say("carry.sentence.none", none, passage=governs.name)]
    else:
        longest = _feet(governs.longest_in / INCHES_PER_FOOT, show_in)
        told = [
            say("carry.sentence", "{passage} governs: no longer than {length}.", passage=governs.name, length=longest)
        ]
    left_out = [text for one in passages for text in one.left_out]
    if left_out:
        english = "This is an upper limit only; not looked at: {things}."
        told.append(say("carry.sentence.limit", english, things=words.listed(left_out)))
    if stock:
        told.append(say("carry.cure.lath", "Buy no longer before the lath went all the way."))
    else:
        told.append(
            say(
                "carry.cure.window",
                "Look for a window, or have the sheets cut to the plan before they are carried.",
            )
        )
    return told


def _feet(length_ft: Fraction, show_in: str) -> str:
    return measure.shown(length_ft, "ft", 2, show_in)


def _item(one: Passage, governs: bool, sheet: Sheet) -> Item:
    if one.longest_in == 0:
        state = say("carry.state.none", "no way found")
        text = say("carry.item.none", "For no sheet of this width, as it was counted.")
    else:
        state = _state(one, sheet.show_in)
        text = say("carry.item.flat", "Carried flat.") if one.flat else say("carry.item.edge", "Carried on edge.")
    text += " " + one.counted
    if governs:
        text += " " + say("carry.item.governs", "This one governs.")
    if one.left_out and one.longest_in > 0:
        english = "Not known, so measure: {things}."
        text += " " + say("carry.item.measure", english, things=words.listed(one.left_out))
    return Item(one.name, state, text, GEOMETRY)


def _state(one: Passage, show_in: str) -> str:
    """How long a sheet it takes: a length, 'or more' where none is too long, 'at most' where something was left out."""
    length = _feet(one.longest_in / INCHES_PER_FOOT, show_in)
    if one.longest_in >= NO_LIMIT_IN:
        if one.left_out:
            return say("carry.state.most_or_more", "at most {length} or more", length=length)
        return say("carry.state.more", "{length} or more", length=length)
    if one.left_out:
        return say("carry.state.most", "at most {length}", length=length)
    return length


def _needs() -> tuple[tuple[str, str, str, str], ...]:
    """Return what needs another measure: its name, that of the other, what to say where that is missing, and an example."""
    corner = say("carry.fault.corner", "A corner needs both ways. Give the other one too, or empty both.")
    lift = say("carry.fault.lift", "A lift needs both sides. Give the other one too, or empty both.")
    landing = say("carry.fault.landing", "A landing needs the width of its stair. Give it, or empty the landing.")
    across = say("carry.fault.across", "A landing needs its depth too. Give it, or empty the landing's width.")
    return (
        ("turn_from_in", "turn_to_in", corner, "36"),
        ("turn_to_in", "turn_from_in", corner, "36"),
        ("lift_width_in", "lift_depth_in", lift, "36"),
        ("lift_depth_in", "lift_width_in", lift, "36"),
        ("landing_in", "stair_width_in", landing, "34"),
        ("landing_width_in", "landing_in", across, "36"),
    )


def _faults(values: Values) -> list[Fault]:
    faults = []
    for name, missing, message, example in _needs():
        if values.number_or_none(name) is not None and values.number_or_none(missing) is None:
            faults.append(Fault(missing, "", message, example))
    typed, show = dict(values.given), values.choice("show_in")
    door_ft = values.number("door_width_in") / INCHES_PER_FOOT
    need_ft = values.number("hall_beyond_ft") + door_ft
    if values.number("hall_length_ft") < need_ft:
        message = say(
            "carry.fault.hall", "The hall's length takes in the door and what is past it: here at least {length}.",
            length=_feet(need_ft, show),
        )  # fmt: skip
        faults.append(Fault("hall_length_ft", typed["hall_length_ft"], message, "16"))
    need_ft = values.number("door_corner_in") / INCHES_PER_FOOT + door_ft
    if values.number("room_along_ft") < need_ft:
        message = say(
            "carry.fault.room", "The room's wall takes in the door and what lies between it and the corner: here at least {length}.",
            length=_feet(need_ft, show),
        )  # fmt: skip
        faults.append(Fault("room_along_ft", typed["room_along_ft"], message, "12"))
    stair, wide = values.number_or_none("stair_width_in"), values.number_or_none("landing_width_in")
    if stair is not None and wide is not None and values.choice("landing_kind") == "half" and wide < 2 * stair:
        message = say(
            "carry.fault.half", "A landing that turns back is at least as wide as both flights. Give its whole width."
        )
        faults.append(Fault("landing_width_in", typed["landing_width_in"], message, "72"))
    return faults


def _passages(values: Values, sheet: Sheet) -> list[Passage]:
    number, maybe = values.number, values.number_or_none

    def stretch(name: str) -> Fraction | None:
        length_ft = maybe(name)
        return None if length_ft is None else length_ft * INCHES_PER_FOOT

    hall = Hall(
        number("hall_width_in"), number("hall_length_ft") * INCHES_PER_FOOT, number("hall_beyond_ft") * INCHES_PER_FOOT,
        number("door_width_in"), number("door_height_in"), number("room_along_ft") * INCHES_PER_FOOT,
        number("room_deep_ft") * INCHES_PER_FOOT, number("door_corner_in"), values.choice("door_corner_side"),
    )  # fmt: skip
    found = [door_passage(hall, sheet)]
    turn_from, turn_to = maybe("turn_from_in"), maybe("turn_to_in")
    if turn_from is not None and turn_to is not None:
        corner = Corner(turn_from, turn_to, stretch("turn_from_length_ft"), stretch("turn_to_length_ft"))
        found.append(corner_passage(corner, sheet))
    width = maybe("stair_width_in")
    if width is not None:
        lower = Flight(number("stair_rise_in"), number("stair_run_in"))
        rise, run = maybe("upper_rise_in"), maybe("upper_run_in")
        upper = Flight(lower.rise_in if rise is None else rise, lower.run_in if run is None else run)
        stair = Stair(
            width, number("headroom_in"), lower, upper, stretch("stair_foot_ft"), stretch("stair_head_ft"),
            maybe("landing_in"), maybe("landing_width_in"), values.choice("landing_kind"),
        )  # fmt: skip
        found.append(stair_passage(stair, sheet))
        if stair.deep_in is not None:
            found.append(landing_passage(stair, sheet))
    wide, deep = maybe("lift_width_in"), maybe("lift_depth_in")
    if wide is not None and deep is not None:
        lift = Lift(
            wide,
            deep,
            number("lift_height_in"),
            number("lift_door_in"),
            number("lift_door_height_in"),
            maybe("lift_lobby_in"),
        )
        found.append(lift_passage(lift, sheet))
    return found


def _work_out(values: Values) -> Answer:
    faults = _faults(values)
    if faults:
        raise InputFault(tuple(faults))
    sheet = Sheet(
        Fraction(dict(SHEET_WIDTHS_IN)[values.choice("sheet_width_in")][-1]), measure.read_number(values.choice("board_thickness_in")),
        values.number("ceiling_height_ft") * INCHES_PER_FOOT, values.choice("show_in"),
    )  # fmt: skip
    return carry(tuple(_passages(values, sheet)), sheet, values.given)


CALCULATOR = Calculator(
    name="carry",
    title="How long a sheet to bring",
    summary="How long a board may be, round doors, corners, stairs and lifts",
    verb="Find the longest to try",
    fields=(
        DOOR, HALL, HALL_LONG, HALL_BEYOND, ROOM_ALONG, ROOM_DEEP, DOOR_CORNER, DOOR_SIDE, TURN_FROM, TURN_TO, STAIR, LANDING, LANDING_KIND,
        LANDING_WIDE, STAIR_FOOT, STAIR_HEAD, LIFT_WIDE, LIFT_DEEP, LIFT_HIGH, LIFT_DOOR, LIFT_DOOR_HIGH, LIFT_LOBBY, DOOR_HIGH, TURN_FROM_LONG,
        TURN_TO_LONG, RISE, RUN, UPPER_RISE, UPPER_RUN, HEADROOM, HEIGHT, SHEET_WIDTH, BOARD_THICKNESS, SHOW_IN,
    ),
    work_out=_work_out,
    example=(
        ("door_width_in", "32"), ("hall_width_in", "40"), ("hall_length_ft", "17"), ("hall_beyond_ft", "6"), ("room_along_ft", "14"),
        ("room_deep_ft", "13"), ("turn_from_in", "40"), ("turn_to_in", "42"), ("stair_width_in", "36"),
    ),
    always=("lift-board",),
)  # fmt: skip
