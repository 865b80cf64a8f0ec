"""How a sheet is cut: its pieces as cuts straight through, one inside the other, and the cut list that tells them."""

from dataclasses import dataclass
from fractions import Fraction

from calc.board.courses import PARTS, Course
from calc.board.offcuts import ACROSS, ALONG
from calc.board.piece_search import Piece, least_that_holds
from calc.core.answer import Item
from calc.numbers import measure, words
from calc.numbers.measure import INCHES_PER_FOOT
from calc.text.door import say

PLAN = ("geometry",)


@dataclass(frozen=True)
class Part:
    """A rectangle of a sheet, `length` by `depth` [1/80 in]: one piece (its place in the list, `parts` empty), or `parts`
    that lie one after the other (`axis` ACROSS) or side by side (`axis` ALONG)."""

    length: int
    depth: int
    axis: int
    piece: int
    parts: tuple["Part", ...] = ()


def part_of(own: list[tuple[int, Piece]], axis: int = ACROSS, turned_back: bool = False) -> Part:
    """Return the pieces `own` (place in the list, piece) of one sheet as parts, parted first across, then along.

    Raises ValueError where no cut goes straight through.
    """
    if len(own) == 1:
        at, piece = own[0]
        return Part(piece.end - piece.start, piece.depth, axis, at)
    groups = _groups(own, axis)
    if len(groups) == 1:
        if turned_back:
            raise ValueError("no straight cut goes through")
        return part_of(own, 1 - axis, True)
    parts = [part_of(group, 1 - axis) for group in groups]
    lengths, depths = [one.length for one in parts], [one.depth for one in parts]
    if axis == ACROSS:
        parts.sort(key=lambda one: (0 if not one.parts else 1, _first(one)))
        return Part(sum(lengths), max(depths), axis, -1, tuple(parts))
    parts.sort(key=lambda one: (-one.length, _first(one)))
    return Part(max(lengths), sum(depths), axis, -1, tuple(parts))


def _first(part: Part) -> int:
    return min([_first(one) for one in part.parts]) if part.parts else part.piece


def _groups(own: list[tuple[int, Piece]], axis: int) -> list[list[tuple[int, Piece]]]:
    """Pieces in groups that a straight cut at right angles to `axis` keeps apart."""
    ordered = []
    for at, piece in own:
        low = piece.offset if axis == ACROSS else piece.across
        ordered.append((low, low + (piece.end - piece.start if axis == ACROSS else piece.depth), at, piece))
    ordered.sort(key=lambda one: (one[0], one[2]))
    found: list[list[tuple[int, Piece]]] = []
    reach = -1
    for low, high, at, piece in ordered:
        if low >= reach:
            found.append([])
        found[-1].append((at, piece))
        reach = max(reach, high)
    return found


def settled(
    pieces: list[Piece], stock: list[int], widths: list[int]
) -> tuple[list[Piece], list[Part], list[tuple[int, int]]]:
    """Return the pieces pushed together in their sheets, each sheet as parts, and its stock size as (width, length).

    Of strips side by side over a sheet's whole width the two longest lie along its two edges, so that each has one.
    """
    found = pieces[:]
    cuts, buy = [], []
    for sheet in range(max([piece.sheet for piece in pieces]) + 1):
        own = [(at, piece) for at, piece in enumerate(pieces) if piece.sheet == sheet]
        part = part_of(own)
        width = least_that_holds(widths, part.depth)
        _place(found, part, 0, 0, width)
        cuts.append(part)
        buy.append((width, least_that_holds(stock, part.length)))
    return found, cuts, buy


def _place(found: list[Piece], part: Part, offset: int, across: int, width: int) -> None:
    """Write where each piece of `part` lies; `width` of the sheet is free there, 0 where that is no longer sure."""
    if not part.parts:
        cut = found[part.piece]
        found[part.piece] = Piece(cut.course, cut.start, cut.end, cut.depth, cut.sheet, offset, across)
        return
    at = across
    for order, one in enumerate(part.parts):
        if part.axis == ACROSS:
            _place(found, one, offset, across, width)
            offset += one.length
        elif order == 1 and width:
            _place(found, one, offset, across + width - one.depth, 0)
        else:
            _place(found, one, offset, at, 0)
            at += one.depth


def feet(length: int, show: str) -> str:
    """Return a length [1/80 in] in feet and inches as a person reads it."""
    return measure.shown(Fraction(length, PARTS * INCHES_PER_FOOT), "ft", 2, show)


def inches(length: int, show: str) -> str:
    """Return a width [1/80 in] in inches as a person reads it."""
    return measure.shown(Fraction(length, PARTS), "in", 2, show)


def size_told(piece: Piece, show: str) -> str:
    """Return a piece's size as it is cut: length by width."""
    return feet(piece.end - piece.start, show) + " x " + inches(piece.depth, show)


def cut_list(
    pieces: tuple[Piece, ...],
    courses: list[Course],
    cuts: tuple[Part, ...],
    buy: tuple[tuple[int, int], ...],
    show: str,
) -> list[Item]:
    """Return one item a sheet: its size, what is left at its end, and its cuts in order."""
    found = []
    for sheet, part in enumerate(cuts):
        width, length = buy[sheet]
        rip = part.axis == ALONG and part.parts
        text = _told(part, pieces, courses, show, True)
        if rip:
            text = say("board.cut.rip", "Rip it along: {parts}.", parts=text)
        else:
            text = say("board.cut", "Cut {parts}.", parts=text)
        name = say("board.cut.sheet", "Sheet {number}, {length}", number=str(sheet + 1), length=feet(length, show))
        if [one for one in buy if one[0] != width]:
            name += " x " + inches(width, show)
        found.append(
            Item(
                name,
                say("board.cut.left", "{length} left", length=feet(length - part.length, show)),
                text,
                PLAN,
                cut=True,
            )
        )
    return found


def _told(part: Part, pieces: tuple[Piece, ...], courses: list[Course], show: str, top: bool) -> str:
    if not part.parts:
        piece = pieces[part.piece]
        course = courses[piece.course]
        notch = course.area(piece.start, piece.end) < (piece.end - piece.start) * piece.depth
        number, size = str(part.piece + 1), size_told(piece, show)
        if notch:
            return say("board.cut.notched", "No. {number}, {size}, notched", number=number, size=size)
        return say("board.cut.piece", "No. {number}, {size}", number=number, size=size)
    inner = [_told(one, pieces, courses, show, False) for one in part.parts]
    if part.axis == ACROSS:
        if top:
            return say("board.cut.then", "; then ").join(inner)
        strip = "a strip {width} wide, cut into ({parts})"
        return say("board.cut.strip", strip, width=inches(part.depth, show), parts="; ".join(inner))
    told = (
        words.listed(inner, "and beside it") if len(inner) == 2 else say("board.cut.beside", "; beside it ").join(inner)
    )
    if top:
        return told
    ripped = "{length} of length, ripped side by side: ({parts})"
    return say("board.cut.ripped", ripped, length=feet(part.length, show), parts=told)
