"""The layout of boards: rooms made ready, hung with the fewest sheets found, and the bound that no way can be under."""

from dataclasses import dataclass
from fractions import Fraction

from calc.board.bounds import Bound
from calc.board.courses import PARTS, Course, Frame, frame_of, parts
from calc.board.cuts import Part, settled
from calc.board.fewest_sheets import Effort, Trade, hang
from calc.board.piece_search import Piece
from calc.core.fields import Fault, InputFault
from calc.numbers import measure
from calc.numbers.measure import INCHES_PER_FOOT
from calc.rooms.rooms import Room
from calc.text.door import say

LEAST_PIECE_IN = 24  # a shorter piece is not hung, unless it goes from wall to wall [in], common practice


@dataclass(frozen=True)
class BoardInputs:
    """`rooms`; joists: `north_south`, `joist_spacing_in` [in, 8 to 48], `joist_offset_in` [in, 0 to 48]; `thickness`
    a key of `BOARD_PSF`; `lengths_ft` [ft] in rising order; `widths_in` [in]; `existing_ceiling_in` [in]; `rated`;
    `least_strip_in` [in]; `load_limit_psf` [lb/sq ft]; `effort` of the search; `show_in`."""

    rooms: tuple[Room, ...]
    north_south: bool
    joist_spacing_in: Fraction
    joist_offset_in: Fraction
    thickness: str
    lengths_ft: tuple[Fraction, ...]
    widths_in: tuple[int, ...]
    existing_ceiling_in: Fraction
    rated: str
    least_strip_in: Fraction
    load_limit_psf: Fraction
    effort: tuple[Effort, ...]
    show_in: str


@dataclass(frozen=True)
class Layout:
    """A whole layout: `frames` and `joists` by room, `courses`, `pieces` in the order to hang, `sheets` as (width,
    length) in stock sizes and how each is cut, the `bound`, and the `steps` of the search."""

    frames: tuple[Frame, ...]
    joists: tuple[list[int], ...]
    courses: tuple[Course, ...]
    pieces: tuple[Piece, ...]
    sheets: tuple[tuple[int, int], ...]
    cuts: tuple[Part, ...]
    bound: Bound
    steps: int

    def proved(self) -> bool:
        """Return whether no layout can take fewer sheets: the count meets the bound."""
        return len(self.sheets) <= self.bound.sheets


def layout_of(inputs: BoardInputs) -> Layout:
    """Return the layout with the fewest sheets found; raises InputFault where no joist lies where a joint must."""
    frames = tuple([frame_of(room, inputs.north_south) for room in inputs.rooms])
    tiny = [frame for frame in frames if not frame.boxes]
    if tiny:
        message = say(
            "board.room.tiny",
            "{room} is less than a sixteenth of an inch wide. Give the room's sides in feet and inches.",
            room=tiny[0].name,
        )
        raise InputFault((Fault("rooms", tiny[0].name, message, "Living: 20' x 14'"),))
    joists = tuple([_joists(inputs, frame.length) for frame in frames])
    stock = [parts(length * INCHES_PER_FOOT) for length in inputs.lengths_ft]
    widths = [width * PARTS for width in inputs.widths_in]
    trade = Trade(stock, widths, LEAST_PIECE_IN * PARTS, parts(inputs.least_strip_in))
    hung, bound = hang(list(frames), list(joists), trade, inputs.effort)
    if hung.stuck:
        raise InputFault((_stuck(inputs, frames[hung.room].name, hung.stuck),))
    pieces, cuts, buy = settled(list(hung.pieces), stock, widths)
    return Layout(frames, joists, hung.courses, tuple(pieces), tuple(buy), tuple(cuts), bound, hung.steps)


def _joists(inputs: BoardInputs, length: int) -> list[int]:
    """The middle of every joist over a room `length` long, each to the nearest eightieth."""
    found = []
    at = inputs.joist_offset_in
    while parts_of(at) < length:
        found.append(parts_of(at))
        at += inputs.joist_spacing_in
    return found


def _stuck(inputs: BoardInputs, room: str, why: str) -> Fault:
    longest = measure.shown(inputs.lengths_ft[-1], "ft", 2, inputs.show_in)
    if why == "reach":
        message = say(
            "board.stuck.reach",
            "{room} is longer than a sheet of {longest}, and no joist lies where a joint must: at least {least} from each wall, and no farther apart than a sheet.",
            room=room,
            longest=longest,
            least=measure.shown(Fraction(LEAST_PIECE_IN), "in", 0, inputs.show_in),
        )
    else:
        message = say(
            "board.stuck.joints",
            "No way was found to keep the joints of neighbors in {room} on different joists, with sheets of {longest}.",
            room=room,
            longest=longest,
        )
    message += " " + say("board.stuck.give", "Give longer sheets, or another spacing or first joist.")
    return Fault("sheet_lengths_ft", longest, message, "8, 10, 12")


def parts_of(inches: Fraction) -> int:
    """Return a joist measure [in] in eightieths, as near as they go."""
    return (2 * inches.numerator * PARTS + inches.denominator) // (2 * inches.denominator)
