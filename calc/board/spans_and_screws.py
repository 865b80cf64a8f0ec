"""What board may span, how long its screws are, and how many: printed rules, apart from the layout."""

from fractions import Fraction

from calc.board.courses import PARTS
from calc.board.piece_search import Piece
from calc.numbers import words
from calc.numbers.quantity import Quantity, fact, given
from calc.text.door import say

# thickness [in] -> widest joist spacing across one layer [in]; a maker's submittal page 2. 1/4 in has no printed figure:
# only over sound old board, joists to 16 in, common practice.
SPANS_IN = (("1/4", 16), ("3/8", 16), ("1/2", 24), ("5/8", 24))
UNDER_TEXTURE_IN = (("1/4", 0), ("3/8", 0), ("1/2", 16), ("5/8", 24))  # water-based texture below, IRC table note d
# what may lie on the board [lb/sq ft] to a joist spacing [in]; the lower of conflicting makers' figures
INSULATION_PSF = (
    ("1/2", 16, Fraction(22, 10)),
    ("1/2", 24, Fraction(13, 10)),
    ("5/8", 24, Fraction(22, 10)),
)  # fmt: skip
PENETRATION = fact(Fraction(5, 8), "in", "irc-r702-3-5")  # a screw goes so far into wood, IRC R702.3.5.1
THICK_BOARD_IN = Fraction(5, 8)
MORE_FOR_THICK = fact(
    Fraction(1, 8), "in", "screw-practice"
)  # a printed table asks for so much more with 5/8 in board, renovation text
SCREWS_IN_STOCK_IN = (
    Fraction(1), Fraction(9, 8), Fraction(5, 4), Fraction(13, 8), Fraction(15, 8), Fraction(2), Fraction(9, 4), Fraction(5, 2), Fraction(3),
)  # fmt: skip

SCREW_SPACING_IN = 12  # along a joist on a ceiling [in], NAVEDTRA 14044
OLD_BOARD = fact(Fraction(384, 10), "lb/cuft", "gypsum-weight")  # 1.6 lb/sq ft at 1/2 in, a maker's submittal


def span_fault(thickness: str, spacing_in: Fraction, texture_under: bool, insulation_psf: Fraction) -> str:
    """Return one sentence where board of `thickness` may not span `spacing_in` [in] so, '' where it may.

    Sources: a maker's submittal; IRC table R702.3.5 note d as quoted.
    """
    widest = dict(UNDER_TEXTURE_IN if texture_under else SPANS_IN)[thickness]
    spacing = words.short_decimal(spacing_in, 2)
    if widest == 0:
        return say(
            "board.span.wet_none",
            "Under a wet texture {board} in board may not hang. Take 1/2 in on joists to 16 in, or 5/8 in to 24 in.",
            board=thickness,
        )
    if spacing_in > widest:
        if texture_under:
            return say(
                "board.span.wet",
                "{board} in board under a wet texture spans joists to {most} in, not {spacing} in. Take thicker board.",
                board=thickness,
                most=str(widest),
                spacing=spacing,
            )
        return say(
            "board.span",
            "{board} in board spans joists to {most} in, not {spacing} in. Take thicker board.",
            board=thickness,
            most=str(widest),
            spacing=spacing,
        )
    if insulation_psf > 0:
        allowed = Fraction(0)
        for one, to_in, psf in INSULATION_PSF:
            if one == thickness and spacing_in <= to_in and psf > allowed:
                allowed = psf
        if insulation_psf > allowed:
            return say(
                "board.span.insulation",
                "{board} in board on joists {spacing} in apart may carry {most} lb/sq ft of insulation, not {given}.",
                board=thickness,
                spacing=spacing,
                most=words.short_decimal(allowed, 2),
                given=words.short_decimal(insulation_psf, 2),
            )
    return ""


def screw_length_in(thickness_in: Fraction, through_in: Fraction) -> Fraction:
    """Return the stock screw [in] for new board `thickness_in` [in] through `through_in` [in] of old ceiling and texture.

    Raises ValueError where no stock screw is that long. Source: IRC R702.3.5.1, 5/8 in into the joist.
    """
    needed = needed_screw_in(thickness_in, through_in)
    for length in SCREWS_IN_STOCK_IN:
        if length >= needed:
            return length
    raise ValueError("no stock screw is that long")


def needed_screw(*, thickness: Quantity, through: Quantity) -> Quantity:
    """Return the least length of screw [in]: new board, what is old, and 5/8 in of joist; more where 5/8 in board lies on bare joists.
    Sources: IRC R702.3.5.1; a renovation text for thick board."""
    needed = (thickness + through + PENETRATION).cited("screw-practice")
    return needed + MORE_FOR_THICK if thick_on_bare_joists(thickness.value, through.value) else needed


def needed_screw_in(thickness_in: Fraction, through_in: Fraction) -> Fraction:
    """Return the same as a bare length [in]."""
    return needed_screw(thickness=given(thickness_in, "in"), through=given(through_in, "in")).to("in")


def thick_on_bare_joists(thickness_in: Fraction, through_in: Fraction) -> bool:
    """Return whether a printed table asks for a longer screw: 5/8 in board [in] with nothing between it and the joists [in]."""
    return thickness_in == THICK_BOARD_IN and through_in == 0


def fasteners_in(depth_in: Fraction, spacing_in: int) -> int:
    """Return the fasteners on one joist over a depth of board [in], at most `spacing_in` [in] apart, both edges too."""
    return -(-depth_in.numerator // (depth_in.denominator * spacing_in)) + 1


def screws_of(piece: Piece, joists: list[int]) -> int:
    """Return the screws of one piece: on each joist under it and at each end, 12 in apart. Source: NAVEDTRA 14044."""
    lines = [joist for joist in joists if piece.start <= joist <= piece.end]
    for end in (piece.start, piece.end):
        if end not in lines:
            lines.append(end)
    return len(lines) * fasteners_in(Fraction(piece.depth, PARTS), SCREW_SPACING_IN)


def old_load(*, thickness: Quantity) -> Quantity:
    """Return what an old ceiling of board `thickness` [in] weighs [lb/sq ft], by the weight of 1/2 in board. Source: a maker's submittal."""
    return thickness * OLD_BOARD
