"""What a board layout comes to, line by line, each with a working that a reader can do again; and its rules in words."""

from dataclasses import dataclass
from fractions import Fraction

from calc.board.bounds import ENDS, LENGTH, SHARES, STEPS, Bound
from calc.board.courses import PARTS
from calc.board.cuts import feet
from calc.board.layout import LEAST_PIECE_IN, BoardInputs, Layout
from calc.board.plan import butt_joints, long_joints
from calc.board.spans_and_screws import (
    MORE_FOR_THICK_IN,
    needed_screw_in,
    old_load_psf,
    screw_length_in,
    screws_of,
    thick_on_bare_joists,
)
from calc.common.inputs import BOARD_PSF
from calc.core.answer import Line, line
from calc.numbers import measure, words
from calc.numbers.exact import total
from calc.numbers.measure import INCHES_PER_FOOT
from calc.numbers.quantity import Quantity, given
from calc.numbers.quantity import total as total_of
from calc.numbers.words import short_decimal

RULES = ("irc-r702-3-5", "navedtra-14044")
SQUARE = PARTS * PARTS * measure.SQUARE_INCHES_PER_SQUARE_FOOT  # of what areas are counted in, in a square foot [-]


def lines_of(inputs: BoardInputs, found: Layout) -> tuple[Line, ...]:
    """Return every line of the answer: sheets and their bound, board, waste, joints, screws, load. Sources: see `board`."""
    show = inputs.show_in
    courses = list(found.courses)
    covered_sqft = total(
        [Fraction((one[2] - one[0]) * (one[3] - one[1]), SQUARE) for frame in found.frames for one in frame.boxes]
    )
    bought_sqft = total([Fraction(width * length, SQUARE) for width, length in found.sheets])
    thickness_in, old_in = measure.read_number(inputs.thickness), inputs.existing_ceiling_in
    added_psf = dict(BOARD_PSF)[inputs.thickness]
    bought_told, covered_told = short_decimal(bought_sqft, 3), short_decimal(covered_sqft, 3)
    screws = screw_counts(found)
    butts = butt_joints(found.pieces, courses)
    tapered, cut = long_joints(found.pieces, courses, found.sheets)
    thick = thick_on_bare_joists(thickness_in, old_in)
    return (
        line("board_area_sqft", "Ceiling to cover", covered_sqft, "sqft", 1, "Your rooms, along the slope, less cut-outs in their place.",
             words.plural(len(found.frames), "room"), ("geometry",), show),
        line("sheets", "Sheets", Fraction(len(found.sheets)), "", 0, "The fewest found that keep every rule.",
             "counted in the cut list, after " + words.whole(found.steps) + " steps of search", RULES, show),
        line("lower_bound_sheets", "No way takes fewer than", Fraction(found.bound.sheets), "", 0,
             bound_rule(found.bound, inputs.lengths_ft[-1], show), bound_working(found.bound), ("geometry",), show),
        line("bought_sqft", "Board bought", bought_sqft, "sqft", 1, "All sheets in their stock lengths.",
             " + ".join(buy_told(found.sheets, show)), ("geometry",), show),
        line("waste_pct", "Waste", (bought_sqft - covered_sqft) / bought_sqft * 100, "%", 1, "What is bought and does not stay up.",
             "(" + bought_told + " − " + covered_told + ") ÷ " + bought_told + " × 100", ("geometry",), show),
        line("butt_joint_ft", "Butt joints", _in_feet(butts), "ft", 1, "End to end on a joist, never two neighbors on one.",
             _lengths_told(butts, show), RULES, show),
        line("tapered_joint_ft", "Tapered joints", _in_feet(tapered), "ft", 1, "Between courses, tapered edge to tapered edge.",
             _lengths_told(tapered, show), ("geometry",), show),
        line("cut_edge_joint_ft", "Joints with a cut edge", _in_feet(cut), "ft", 1,
             "Between courses, where one edge or both were cut. They stand proud: feather them wide, as a butt joint.",
             _lengths_told(cut, show), ("geometry", "common-practice"), show),
        line("screws", "Screws", Fraction(sum(screws)), "", 0, "On every joist under a piece and at its ends, 12 in apart and at both edges.",
             screws_told(screws), ("navedtra-14044",), show),
        line("screw_length_in", "Screws, their length", screw_length_in(thickness_in, old_in), "in", 3,
             "New board, old ceiling and 5/8 in of joist" + ("; 1/8 in more for 5/8 in board on bare joists" if thick else "") + "; up to stock.",
             short_decimal(thickness_in, 4) + " + " + short_decimal(old_in, 4) + " + 0.625"
             + (" + " + short_decimal(MORE_FOR_THICK_IN, 4) if thick else "")
             + " → " + short_decimal(needed_screw_in(thickness_in, old_in), 4), ("irc-r702-3-5", "screw-practice"), show),
        line("added_load_psf", "Load that is added", added_psf, "psf", 2, "What the new board weighs.",
             inputs.thickness + " in board", ("gypsum-weight",), show),
        line("old_load_psf", "Beside what hangs there", old_load_psf(old_in), "psf", 2, "Old board, by 1.6 lb/sq ft for 1/2 in.",
             short_decimal(old_in, 4) + " ÷ 0.5 × 1.6", ("gypsum-weight",), show),
    )  # fmt: skip


@dataclass(frozen=True)
class Plan:
    """What taping takes from a layout: the joints [ft], butt, tapered, and with a cut edge; and each piece's `screws` [-]."""

    butt_ft: Fraction
    tapered_ft: Fraction
    cut_ft: Fraction
    screws: tuple[int, ...]

    def joints_ft(self) -> Fraction:
        """Return the length of all joints [ft]."""
        return self.butt_ft + self.tapered_ft + self.cut_ft


def plan_figures(found: Layout) -> Plan:
    """Return what taping takes from a layout."""
    courses = list(found.courses)
    tapered, cut = long_joints(found.pieces, courses, found.sheets)
    butts = butt_joints(found.pieces, courses)
    return Plan(_in_feet(butts), _in_feet(tapered), _in_feet(cut), screw_counts(found))


def screw_counts(found: Layout) -> tuple[int, ...]:
    """Return the screws of each piece [-]."""
    return tuple([screws_of(one, found.joists[found.courses[one.course].room]) for one in found.pieces])


def _in_feet(lengths: list[int]) -> Fraction:
    return Fraction(sum(lengths), PARTS * INCHES_PER_FOOT)


def _kinds(values: list[int]) -> list[tuple[int, int]]:
    """(value, how often), the greatest first."""
    found: list[tuple[int, int]] = []
    for value in sorted(values, reverse=True):
        if found and found[-1][0] == value:
            found[-1] = (value, found[-1][1] + 1)
        else:
            found.append((value, 1))
    return found


def _lengths_told(lengths: list[int], show: str) -> str:
    if not lengths:
        return "none in the plan"
    return "from the plan: " + " + ".join(
        [words.whole(many) + " × " + feet(length, show) for length, many in _kinds(lengths)]
    )


def screws_sum(screws: tuple[int, ...]) -> Quantity:
    """Return the screws piece by piece [-], those with as many together."""
    return total_of([many * given(count, "", "navedtra-14044") for count, many in _kinds(list(screws))])


def screws_told(screws: tuple[int, ...]) -> str:
    """Return the sum that screws piece by piece come to."""
    return "piece by piece: " + " + ".join(
        [words.whole(many) + " × " + str(count) for count, many in _kinds(list(screws))]
    )


def buy_told(buy: tuple[tuple[int, int], ...], show: str) -> list[str]:
    """Return each size that is bought, with its count: `6 of 48 in x 12' 0"`."""
    kinds: list[tuple[int, int]] = []
    for one in buy:
        if one not in kinds:
            kinds.append(one)
    kinds.sort()
    told = []
    for width, length in kinds:
        count = len([one for one in buy if one == (width, length)])
        size = measure.shown(Fraction(width, PARTS), "in", 1, show) + " x " + feet(length, show)
        told.append(words.whole(count) + " of " + size)
    return told


def bound_rule(bound: Bound, longest_ft: Fraction, show: str) -> str:
    """Return in words how the bound weighs a line of board across the joists."""
    longest, weight = measure.shown(longest_ft, "ft", 2, show), bound.weight
    told = "Each line across the joists takes a part of a sheet of " + longest
    if weight.kind == LENGTH:
        told += ": its length over the sheet's."
    elif weight.kind == STEPS:
        told += ". Its pieces are weighed so that at most " + words.plural(weight.size, "piece") + " over "
        told += feet_of(longest_ft / (weight.size + 1), show) + " fit in one sheet."
    elif weight.kind == ENDS:
        told += (
            ". A piece that leaves less than "
            + feet(weight.size, show)
            + " of it takes all, a piece shorter than that nothing."
        )
    elif weight.kind == SHARES:
        told += ". Its pieces are weighed by how many of " + feet(weight.size, show) + " they keep out of it."
    return (
        told
        + " Added over the inches of depth where such lines lie, over a sheet's width. True of any courses, rips and order."
    )


def feet_of(length_ft: Fraction, show: str) -> str:
    """Return a length [ft] as a person reads it."""
    return measure.shown(length_ft, "ft", 2, show)


def bound_working(bound: Bound) -> str:
    """Return the sum that gives the bound: depth [in] of lines times the sheets that each takes, over a sheet's width."""
    terms = []
    whole = Fraction(0)
    for depth, _, least in bound.terms:
        whole += depth * least
        if least > 0:
            terms.append(short_decimal(Fraction(depth, PARTS), 4) + " × " + _ratio(least))
    told = "(" + " + ".join(terms) + ")" if len(terms) > 1 else "".join(terms)
    value = whole / bound.widest
    return (
        told
        + " ÷ "
        + str(bound.widest // PARTS)
        + " = "
        + words.decimal(value, 3, "down")
        + ", so "
        + words.whole(bound.sheets)
    )


def _ratio(value: Fraction) -> str:
    return str(value.numerator) + ("/" + str(value.denominator) if value.denominator > 1 else "")


def rules_told(inputs: BoardInputs) -> tuple[str, ...]:
    """Return every rule that the layout keeps, one sentence or two each: these are all."""
    show = inputs.show_in
    widths = words.listed([measure.shown(Fraction(one), "in", 0, show) for one in inputs.widths_in], "or")
    lengths = words.listed([feet_of(one, show) for one in inputs.lengths_ft], "or")
    return (
        "Rule 1. Sheets lie across the joists; no piece is turned. A sheet is " + widths + " wide and " + lengths + " long.",
        "Rule 2. Courses lie between straight lines across the joists, over the whole room. The lines may lie anywhere. No course is wider than a sheet, or narrower than "
        + measure.shown(inputs.least_strip_in, "in", 0, show) + " unless the room is.",
        "Rule 3. A piece is a rectangle from one sheet, in one course: as long and as deep as what it covers, notched at walls and holes. It ends at a wall, at a hole, or on the middle of a joist.",
        "Rule 4. Butt joints of neighboring courses never lie on one joist.",
        "Rule 5. No piece is shorter than " + measure.shown(Fraction(LEAST_PIECE_IN), "in", 0, show)
        + ", unless the stretch from wall to wall is. Common practice, no source.",
        "Rule 6. Every cut goes straight through what is being cut. Pieces come one after the other, or side by side as ripped strips. A cut takes nothing away.",
        "Rule 7. Rooms are bought together: any piece may come from any sheet. What a notch leaves is not used again.",
        "Rule 8. A strip's cut edge goes to the wall where it can; a joint with a cut edge is told as one.",
        "These are all the rules. Whole sheets are counted; among equals the least board is looked for, then the least butt joints.",
    )  # fmt: skip
