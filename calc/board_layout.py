"""The layout of boards: rooms made into courses, every way to lay them tried, the best one kept with its bound."""

from dataclasses import dataclass
from fractions import Fraction

from calc import measure
from calc.board_plan import butt_joints
from calc.courses import PARTS, Course, Frame, courses_of, frame_of, parts, plans_of
from calc.fields import Fault, InputFault
from calc.hang import Hanging, hang
from calc.measure import INCHES_PER_FOOT
from calc.piece_search import NO_GOAL
from calc.rooms import Room

LEAST_PIECE_IN = 24  # a shorter piece between two joints is not hung [in], common practice


@dataclass(frozen=True)
class BoardInputs:
    """`rooms`; joists: `north_south`, `joist_spacing_in` [in, 8 to 48], `joist_offset_in` [in, 0 to 48]; `thickness`
    a key of `BOARD_PSF`; `lengths_ft` [ft] in rising order; `widths_in` [in]; `existing_ceiling_in` [in]; `rated`;
    `least_strip_in` [in]; `load_limit_psf` [lb/sq ft]; `effort` [-] steps; `show_in`."""

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
    effort: int
    show_in: str


@dataclass(frozen=True)
class Layout:
    """A whole layout: `frames` and `joists` by room, `courses`, and how they are hung."""

    frames: tuple[Frame, ...]
    joists: tuple[list[int], ...]
    courses: tuple[Course, ...]
    hanging: Hanging


def layout_of(inputs: BoardInputs) -> Layout:
    """Return the layout with the fewest sheets found; raises InputFault where the rules leave no way.

    One room is tried with each way to lay its courses; several rooms are bought together, each with its first way.
    """
    frames = tuple([frame_of(room, inputs.north_south) for room in inputs.rooms])
    spacing, first = parts_of(inputs.joist_spacing_in), parts_of(inputs.joist_offset_in)
    joists = tuple([list(range(first, frame.length, spacing)) for frame in frames])
    stock = [parts(length * INCHES_PER_FOOT) for length in inputs.lengths_ft]
    widths = tuple([width * PARTS for width in inputs.widths_in])
    plans = [plans_of(frame.depth, widths, parts(inputs.least_strip_in)) for frame in frames]
    ways = [[plan] for plan in plans[0]]
    if len(frames) > 1:
        ways = [[_leanest(frame, at, plans[at]) for at, frame in enumerate(frames)]]
    best: Layout | None = None
    bound = 0
    for chosen in ways:
        courses = [course for at, frame in enumerate(frames) for course in courses_of(frame, at, chosen[at])]
        goal = NO_GOAL if best is None else len(best.hanging.sheets)
        found = hang(courses, list(joists), stock, LEAST_PIECE_IN * PARTS, inputs.effort // len(ways), goal)
        if found is None:
            continue
        bound = found.bound if best is None else min(bound, found.bound)
        if best is None or _better(found, courses, best, stock):
            best = Layout(frames, joists, tuple(courses), found)
    if best is None:
        longest = measure.shown(inputs.lengths_ft[-1], "ft", 2, inputs.show_in)
        message = (
            "No joint falls on a joist within a sheet of "
            + longest
            + ". Give longer sheets, or another spacing or first joist."
        )
        raise InputFault((Fault("sheet_lengths_ft", longest, message, "8, 10, 12"),))
    told = best.hanging
    if [one for one in plans if len(one) > 1] and len(frames) > 1:
        # not every way to lay every room was looked at: only what each room needs at the least is sure
        need = sum([_need(frame, at, _leanest(frame, at, plans[at])) for at, frame in enumerate(frames)])
        bound = min(bound, -(-need * min(widths) // (2 * stock[-1] * max(widths))))
    proved = len(told.sheets) <= bound
    return Layout(frames, joists, best.courses, Hanging(told.pieces, told.sheets, bound, proved, told.steps))  # fmt: skip


def _need(frame: Frame, at: int, plan: tuple[tuple[int, int, int], ...]) -> int:
    """The least lane length of one room by one plan."""
    return sum([one.need(start, end) for one in courses_of(frame, at, plan) for start, end in one.spans])


def _leanest(frame: Frame, at: int, plans: list[tuple[tuple[int, int, int], ...]]) -> tuple[tuple[int, int, int], ...]:
    """The plan that needs the least lane length, the first of them."""
    best = plans[0]
    for plan in plans[1:]:
        if _need(frame, at, plan) < _need(frame, at, best):
            best = plan
    return best


def parts_of(inches: Fraction) -> int:
    """Return a joist measure [in] in eightieths, as near as they go."""
    return (2 * inches.numerator * PARTS + inches.denominator) // (2 * inches.denominator)


def bought(sheets: tuple[tuple[int, int], ...], stock: list[int]) -> list[tuple[int, int]]:
    """Return (width, stock length) for each sheet: the shortest stock that holds what is cut from it."""
    return [(width, next(iter([length for length in stock if length >= used]))) for width, used in sheets]


def _better(found: Hanging, courses: list[Course], best: Layout, stock: list[int]) -> bool:
    mine = (len(found.sheets), _area(found, stock), butt_joints(found.pieces, courses))
    other = best.hanging
    return mine < (len(other.sheets), _area(other, stock), butt_joints(other.pieces, list(best.courses)))


def _area(found: Hanging, stock: list[int]) -> int:
    return sum([width * length for width, length in bought(found.sheets, stock)])
