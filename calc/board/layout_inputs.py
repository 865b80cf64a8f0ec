"""Inputs of a board layout, declared once for the calculators that lay boards out, and what they come to."""

from fractions import Fraction

from calc.board.fewest_sheets import QUICK, THOROUGH
from calc.board.layout import BoardInputs
from calc.common.inputs import SHEET_WIDTHS_IN
from calc.core.fields import Fault, Field, Values
from calc.numbers import words
from calc.numbers.measure import INCHES_PER_FOOT, MeasureFault, read_length
from calc.numbers.words import short_decimal
from calc.rooms.rooms import EXAMPLE
from calc.text.door import say

SHORTEST_FT, LONGEST_FT = 4, 20  # lengths that sheets are made in [ft]
EFFORTS = (("quick", QUICK), ("thorough", THOROUGH))  # counted in steps, so that every engine ends alike


def read_lengths(text: str) -> list[Fraction]:
    """Return sheet lengths [ft] written `8, 10, 12`, in rising order. Raises MeasureFault with one sentence."""
    found = []
    for part in text.replace(";", ",").split(","):
        word = words.tidy(part)
        if not word:
            continue
        try:
            length = read_length(word, "ft") / INCHES_PER_FOOT
        except MeasureFault as fault:
            raise MeasureFault(
                say(
                    "board.lengths.unread",
                    "{given} is no sheet length, {why}. Write 8, 10, 12.",
                    given=words.quoted(word),
                    why=str(fault.args[0]),
                )
            ) from None
        if not SHORTEST_FT <= length <= LONGEST_FT:
            raise MeasureFault(
                say(
                    "board.lengths.range",
                    "{given} is no sheet length. Sheets are 4 to 20 ft long; write 8, 10, 12.",
                    given=words.quoted(word),
                )
            )
        if length not in found:
            found.append(length)
    if not found:
        raise MeasureFault(say("board.lengths.none", "No sheet length is given. Write 8, 10, 12."))
    found.sort()
    return found  # fmt: skip


def _faults_of_lengths(text: str) -> tuple[tuple[str, str], ...]:
    try:
        read_lengths(text)
    except MeasureFault as fault:
        return ((text, str(fault.args[0])),)
    return ()


DIRECTION = Field(
    name="joist_direction", label="Joists run", kind="choice", unit="",
    help="Sheets are hung across them. In the plan north is up.",
    example="north-south", default="north-south",
    choices=(("north-south", "North and south"), ("east-west", "East and west")),
)  # fmt: skip
OFFSET = Field(
    name="joist_offset_in", label="First joist from the wall", kind="length", unit="in",
    help="From the west wall, or the south wall where joists run east and west, to the middle of the joist. Empty: one spacing.",
    example="14 1/2", lowest="0", highest="48", required=False, rare=True,
)  # fmt: skip
LENGTHS = Field(
    name="sheet_lengths_ft", label="Sheets to be had", kind="text", unit="",
    help="Lengths in feet, with a comma between.",
    example="8, 10, 12", default="8, 12", check=_faults_of_lengths,
)  # fmt: skip
LONGEST = Field(
    name="longest_sheet_ft", label="Longest sheet that gets in", kind="length", unit="ft",
    help="From the carrying form. Longer sheets are left out.",
    example="12", lowest="4", highest="30", required=False, fed_by="carry longest_sheet_ft",
)  # fmt: skip
STRIP = Field(
    name="least_strip_in", label="No strip narrower than", kind="length", unit="in",
    help="At a wall, along the room.",
    example="6", lowest="1", highest="24", default="6", source="common-practice", rare=True,
)  # fmt: skip
EFFORT = Field(
    name="effort", label="How hard to search", kind="choice", unit="",
    help="Thorough takes several times as long. It helps only where fewer may be possible.",
    example="thorough", default="quick",
    choices=(("quick", "Quick"), ("thorough", "Thorough")), rare=True,
)  # fmt: skip


def read_layout(
    values: Values, thickness: str, old_in: Fraction, rated: str, limit_psf: Fraction, effort: str
) -> tuple[BoardInputs, list[Fault]]:
    """Return what a layout is made from, and every fault in the inputs of this module.

    `thickness` [a key of `BOARD_PSF`], `old_in` [in], `rated` and `limit_psf` [lb/sq ft] are passed on as they are.
    """
    faults = []
    spacing_in = values.number("joist_spacing_in")
    offset = values.number_or_none("joist_offset_in")
    lengths = read_lengths(values.choice("sheet_lengths_ft"))
    most = values.number_or_none("longest_sheet_ft")
    if most is not None:
        allowed = [length for length in lengths if length <= most]
        if not allowed:
            message = say(
                "board.lengths.long",
                "No sheet of {lengths} ft gets in: the longest that does is {most} ft. Give shorter sheets.",
                lengths=values.choice("sheet_lengths_ft"),
                most=short_decimal(most, 2),
            )
            faults.append(Fault("sheet_lengths_ft", values.choice("sheet_lengths_ft"), message, "8"))
        lengths = allowed
    for room in values.rooms():
        east, north = room.size_ft()
        across = east if values.choice("joist_direction") == "north-south" else north
        if across * INCHES_PER_FOOT < spacing_in:
            message = say(
                "board.room.narrow",
                "{room} is narrower than the joists are apart. Turn the joists, or cover it with one piece by hand.",
                room=room.name,
            )
            faults.append(Fault("rooms", room.name, message, EXAMPLE))
    inputs = BoardInputs(
        values.rooms(),
        values.choice("joist_direction") == "north-south",
        spacing_in,
        spacing_in if offset is None else offset,
        thickness,
        tuple(lengths),
        dict(SHEET_WIDTHS_IN)[values.choice("sheet_width_in")],
        old_in,
        rated,
        values.number("least_strip_in"),
        limit_psf,
        dict(EFFORTS)[effort],
        values.choice("show_in"),
    )
    return inputs, faults
