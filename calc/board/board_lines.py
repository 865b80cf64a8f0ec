"""What a board layout comes to, line by line, each with a working that a reader can do again; and its rules in words."""

from dataclasses import dataclass
from fractions import Fraction

from calc.board.bounds import ENDS, LENGTH, SHARES, STEPS, Bound
from calc.board.courses import PARTS, Frame
from calc.board.cuts import feet
from calc.board.layout import LEAST_PIECE_IN, BoardInputs, Layout
from calc.board.plan import butt_joints, long_joints
from calc.board.spans_and_screws import (
    SCREW_SPACING_IN,
    needed_screw,
    old_load,
    screw_length_in,
    screws_of,
)
from calc.common.inputs import BOARD_PSF
from calc.core.answer import Line
from calc.core.lines import Lines
from calc.numbers import measure, words
from calc.numbers.exact import total
from calc.numbers.measure import INCHES_PER_FOOT
from calc.numbers.quantity import Quantity, added, fact, given, rounded_up, told
from calc.numbers.working import working
from calc.text.door import say

RULES = ("irc-r702-3-5", "navedtra-14044")
SQUARE = PARTS * PARTS * measure.SQUARE_INCHES_PER_SQUARE_FOOT  # of what areas are counted in, in a square foot [-]


def lines_of(inputs: BoardInputs, found: Layout) -> tuple[Line, ...]:
    """Return every line of the answer: sheets and their bound, board, waste, joints, screws, load. Sources: see `board`."""
    show = inputs.show_in
    courses = list(found.courses)
    thickness_in, old_in = measure.read_number(inputs.thickness), inputs.existing_ceiling_in
    tapered, cut = long_joints(found.pieces, courses, found.sheets)
    lines = Lines("board", show)
    covered = lines.add(
        name="board_area_sqft",
        label="Ceiling to cover",
        unit="sqft",
        places=1,
        rule="Your rooms, along the slope, less cut-outs in their place.",
        amount=added(
            [
                given(_area_sqft(frame), "sqft", "geometry", inputs.rooms[at].name)
                for at, frame in enumerate(found.frames)
            ]
        ),
    )
    steps = say(
        "board.sheets.working", "counted in the cut list, after {steps} steps of search", steps=words.whole(found.steps)
    )
    lines.add(
        name="sheets",
        label="Sheets",
        unit="",
        places=0,
        rule="The fewest found that keep every rule.",
        amount=told(len(found.sheets), "", steps, *RULES),
    )
    lines.add(
        name="lower_bound_sheets",
        label="No way takes fewer than",
        unit="",
        places=0,
        rule="{how}",
        how=bound_rule(found.bound, inputs.lengths_ft[-1], show),
        amount=bound_sum(found.bound),
    )
    bought = lines.add(
        name="bought_sqft",
        label="Board bought",
        unit="sqft",
        places=1,
        rule="All sheets in their stock lengths.",
        amount=bought_sum(found.sheets),
    )
    lines.add(
        name="waste_pct",
        label="Waste",
        unit="%",
        places=1,
        rule="What is bought and does not stay up, over what is bought.",
        amount=((bought - covered) / bought).cited("geometry"),
    )
    lines.add(
        name="butt_joint_ft",
        label="Butt joints",
        unit="ft",
        places=1,
        rule="End to end on a joist, never two neighbors on one.",
        amount=lengths_sum(butt_joints(found.pieces, courses)).cited(*RULES),
    )
    lines.add(
        name="tapered_joint_ft",
        label="Tapered joints",
        unit="ft",
        places=1,
        rule="Between courses, tapered edge to tapered edge.",
        amount=lengths_sum(tapered),
    )
    lines.add(
        name="cut_edge_joint_ft",
        label="Joints with a cut edge",
        unit="ft",
        places=1,
        amount=lengths_sum(cut).cited("common-practice"),
        rule="Between courses, where one edge or both were cut. They stand proud: feather them wide, as a butt joint.",
    )
    lines.add(
        name="screws",
        label="Screws",
        unit="",
        places=0,
        rule="On every joist under a piece and at its ends, {apart} apart and at both edges.",
        amount=screws_sum(screw_counts(found)),
        apart=measure.limit(Fraction(SCREW_SPACING_IN), "12 in", show),
    )
    needed = needed_screw(thickness=given(thickness_in, "in"), through=given(old_in, "in"))
    stock = say("board.screw.working", "{needed}; the next in stock", needed=working(needed, "in", show == "metric"))
    lines.add(
        name="screw_length_in",
        label="Screws, their length",
        unit="in",
        places=3,
        amount=told(screw_length_in(thickness_in, old_in), "in", stock, *needed.sources),
        rule="New board, old ceiling and what goes into the joist; more for thick board on bare joists; up to stock.",
    )
    lines.add(
        name="added_load_psf",
        label="Load that is added",
        unit="psf",
        places=2,
        rule="What the new board weighs.",
        amount=fact(dict(BOARD_PSF)[inputs.thickness], "psf", "gypsum-weight"),
    )
    lines.add(
        name="old_load_psf", label="Beside what hangs there", unit="psf", places=2, rule="Old board, by what board of its thickness weighs.",
        amount=old_load(thickness=given(old_in, "in")),
    )  # fmt: skip
    return lines.tuple()


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


def lengths_sum(lengths: list[int]) -> Quantity:
    """Return the length of joints in the plan [ft], those of one length together; `lengths` are counted in parts of an inch."""
    kinds = [
        many * given(Fraction(length, PARTS * INCHES_PER_FOOT), "ft", "geometry") for length, many in _kinds(lengths)
    ]
    return added(kinds) if kinds else given(0, "ft", "geometry")


def screws_sum(screws: tuple[int, ...]) -> Quantity:
    """Return the screws piece by piece [-], those with as many together. Source: NAVEDTRA 14044."""
    return added([many * given(count, "", "navedtra-14044") for count, many in _kinds(list(screws))])


def bought_sum(sheets: tuple[tuple[int, int], ...]) -> Quantity:
    """Return the board that is bought [sq ft], sheets of one size together."""
    kinds: dict[tuple[int, int], int] = {}
    for one in sheets:
        kinds[one] = kinds.get(one, 0) + 1
    parts = [
        kinds[one] * given(Fraction(one[0], PARTS), "in", "geometry") * given(Fraction(one[1], PARTS * INCHES_PER_FOOT), "ft", "geometry")
        for one in sorted(kinds)
    ]  # fmt: skip
    return added(parts)


def bound_sum(bound: Bound) -> Quantity:
    """Return the sheets that no layout can be under: the depth of lines [in] times the sheets that each takes [-], over a sheet's width
    [in], rounded up. Source: geometry."""
    terms = [
        given(Fraction(depth, PARTS), "in", "geometry") * given(share, "")
        for depth, _, share in bound.terms
        if share > 0
    ]
    return (
        rounded_up(added(terms) / given(Fraction(bound.widest, PARTS), "in"))
        if terms
        else given(bound.sheets, "", "geometry")
    )


def _area_sqft(frame: Frame) -> Fraction:
    return total([Fraction((one[2] - one[0]) * (one[3] - one[1]), SQUARE) for one in frame.boxes])


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
        told.append(say("board.of", "{count} of {size}", count=words.whole(count), size=size))
    return told


def bound_rule(bound: Bound, longest_ft: Fraction, show: str) -> str:
    """Return in words how the bound weighs a line of board across the joists."""
    longest, weight = measure.shown(longest_ft, "ft", 2, show), bound.weight
    told = say("board.bound.line", "Each line across the joists takes a part of a sheet of {longest}", longest=longest)
    if weight.kind == LENGTH:
        told += say("board.bound.length", ": its length over the sheet's.")
    elif weight.kind == STEPS:
        told += say(
            "board.bound.steps",
            ". Its pieces are weighed so that at most {pieces} over {length} fit in one sheet.",
            pieces=words.plural(weight.size, "piece"),
            length=feet_of(longest_ft / (weight.size + 1), show),
        )
    elif weight.kind == ENDS:
        told += say(
            "board.bound.ends",
            ". A piece that leaves less than {length} of it takes all, a piece shorter than that nothing.",
            length=feet(weight.size, show),
        )
    elif weight.kind == SHARES:
        told += say(
            "board.bound.shares",
            ". Its pieces are weighed by how many of {length} they keep out of it.",
            length=feet(weight.size, show),
        )
    return told + say(
        "board.bound.added",
        " Added over the inches of depth where such lines lie, over a sheet's width. True of any courses, rips and order.",
    )


def feet_of(length_ft: Fraction, show: str) -> str:
    """Return a length [ft] as a person reads it."""
    return measure.shown(length_ft, "ft", 2, show)


def rules_told(inputs: BoardInputs) -> tuple[str, ...]:
    """Return every rule that the layout keeps, one sentence or two each: these are all."""
    show = inputs.show_in
    widths = words.listed([measure.shown(Fraction(one), "in", 0, show) for one in inputs.widths_in], "or")
    lengths = words.listed([feet_of(one, show) for one in inputs.lengths_ft], "or")
    return (
        say("board.rule.1", "Rule 1. Sheets lie across the joists; no piece is turned. A sheet is {widths} wide and {lengths} long.", widths=widths, lengths=lengths),
        say(
            "board.rule.2",
            "Rule 2. Courses lie between straight lines across the joists, over the whole room. The lines may lie anywhere. No course is wider than a sheet, or narrower than {least} unless the room is.",
            least=measure.shown(inputs.least_strip_in, "in", 0, show),
        ),
        say("board.rule.3", "Rule 3. A piece is a rectangle from one sheet, in one course: as long and as deep as what it covers, notched at walls and holes. It ends at a wall, at a hole, or on the middle of a joist."),
        say("board.rule.4", "Rule 4. Butt joints of neighboring courses never lie on one joist."),
        say(
            "board.rule.5", "Rule 5. No piece is shorter than {least}, unless the stretch from wall to wall is. Common practice, no source.",
            least=measure.shown(Fraction(LEAST_PIECE_IN), "in", 0, show),
        ),
        say("board.rule.6", "Rule 6. Every cut goes straight through what is being cut. Pieces come one after the other, or side by side as ripped strips. A cut takes nothing away."),
        say("board.rule.7", "Rule 7. Rooms are bought together: any piece may come from any sheet. What a notch leaves is not used again."),
        say("board.rule.8", "Rule 8. A strip's cut edge goes to the wall where it can; a joint with a cut edge is told as one."),
        say("board.rule.all", "These are all the rules. Whole sheets are counted; among equals the least board is looked for, then the least butt joints."),
    )  # fmt: skip
