"""Board: sheets over a ceiling, the fewest that the rules allow, with a plan to hang from and a cut list."""

from fractions import Fraction

from calc import measure, words
from calc.answer import Answer, Calculator, Item, line
from calc.board_layout import BoardInputs, bought, layout_of
from calc.board_plan import butt_joints, cut_list, hanging_list, plan_of, tapered_joints
from calc.board_rules import SCREWS_IN_STOCK_IN, needed_screw_in, old_load_psf, screw_length_in, screws_of, span_fault
from calc.courses import PARTS, parts
from calc.exact import ceiling, total
from calc.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.inputs import BOARD_PSF, BOARD_THICKNESS, JOIST_SPACING, RATED, ROOMS, SHEET_WIDTH, SHEET_WIDTHS_IN
from calc.measure import INCHES_PER_FOOT, MeasureFault, read_length
from calc.signals import Caution, caution
from calc.words import short_decimal

SHORTEST_FT, LONGEST_FT = 4, 20  # lengths that sheets are made in [ft]
EFFORTS = (("quick", 4000), ("thorough", 40000))  # steps of search [-]; counted, so that every engine ends alike
MOST_DRAWN = 8  # rooms with a plan of their own
RULES = ("irc-r702-3-5", "navedtra-14044")
LOAD_LIMIT_PSF = "3"  # more than one layer of any board weighs [lb/sq ft], a choice of caution


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
                words.quoted(word) + " is no sheet length, " + str(fault.args[0]) + ". Write 8, 10, 12."
            ) from None
        if not SHORTEST_FT <= length <= LONGEST_FT:
            raise MeasureFault(words.quoted(word) + " is no sheet length. Sheets are 4 to 20 ft long; write 8, 10, 12.")
        if length not in found:
            found.append(length)
    if not found:
        raise MeasureFault("No sheet length is given. Write 8, 10, 12.")
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
OLD = Field(
    name="existing_ceiling_in", label="Old ceiling, its thickness", kind="length", unit="in",
    help="Board or plaster that stays, with what texture stays between. 0 on bare joists.",
    example="1/2", lowest="0", highest="2", default="1/2", source="common-practice",
)  # fmt: skip
INSULATION = Field(
    name="insulation_psf", label="Insulation that lies on the board", kind="rate", unit="psf",
    help="Loose fill weighs 1 to 3 lb a cubic foot. 0 where the old ceiling carries it.",
    example="1", lowest="0", highest="20", default="0", rare=True,
)  # fmt: skip
TEXTURE = Field(
    name="wet_texture", label="Wet texture on the new board?", kind="choice", unit="",
    help="Water makes board sag between joists.",
    example="no", default="no", choices=(("no", "No"), ("yes", "Yes")), rare=True,
)  # fmt: skip
STRIP = Field(
    name="least_strip_in", label="No strip narrower than", kind="length", unit="in",
    help="At a wall, along the room.",
    example="6", lowest="1", highest="24", default="6", source="common-practice", rare=True,
)  # fmt: skip
LIMIT = Field(
    name="load_limit_psf", label="Weight that may be added", kind="rate", unit="psf",
    help="Past it: stop and ask an engineer.",
    example="3", lowest="0.5", highest="20", default=LOAD_LIMIT_PSF, source="common-practice", rare=True,
)  # fmt: skip
EFFORT = Field(
    name="effort", label="How hard to search", kind="choice", unit="",
    help="Thorough takes ten times as long. It helps only where a gap is told.",
    example="thorough", default="quick",
    choices=(("quick", "Quick"), ("thorough", "Thorough")), rare=True,
)  # fmt: skip


def board(inputs: BoardInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return the sheets, the bound that no way can be under, the cut list, joints, screws, load and a plan to hang from.

    Raises InputFault where the rules leave no way. Sources: IRC R702.3.5 and a maker's submittal for spans and screws,
    NAVEDTRA 14044 for screw spacing; that joints of neighbors lie on other joists from IRC R702.3.6.
    """
    show = inputs.show_in
    found = layout_of(inputs)
    stock = [parts(length * INCHES_PER_FOOT) for length in inputs.lengths_ft]
    buy = bought(found.hanging.sheets, stock)
    sheets, bound = len(buy), found.hanging.bound
    square = PARTS * PARTS * measure.SQUARE_INCHES_PER_SQUARE_FOOT
    covered_sqft = total(
        [Fraction((one[2] - one[0]) * (one[3] - one[1]), square) for frame in found.frames for one in frame.boxes]
    )
    bought_sqft = total([Fraction(width * length, square) for width, length in buy])
    courses = list(found.courses)
    butt_ft = Fraction(butt_joints(found.hanging.pieces, courses), PARTS * INCHES_PER_FOOT)
    tapered_ft = Fraction(tapered_joints(courses), PARTS * INCHES_PER_FOOT)
    thickness_in = measure.read_number(inputs.thickness)
    screw_in = screw_length_in(thickness_in, inputs.existing_ceiling_in)
    screws = sum(
        [screws_of(one, courses[one.course], found.joists[courses[one.course].room]) for one in found.hanging.pieces]
    )
    added_psf = dict(BOARD_PSF)[inputs.thickness]
    old_psf = old_load_psf(inputs.existing_ceiling_in)
    area_bound = ceiling(covered_sqft * square / (max([width for width, _ in buy]) * stock[-1]))
    lines = (
        line("board_area_sqft", "Ceiling to cover", covered_sqft, "sqft", 1, "Your rooms, along the slope, less cut-outs in their place.",
             words.plural(len(found.frames), "room"), ("geometry",), show),
        line("sheets", "Sheets", Fraction(sheets), "", 0, "The fewest found that keep every rule.",
             words.whole(found.hanging.steps) + " steps of search", RULES, show),
        line("lower_bound_sheets", "No way takes fewer than", Fraction(bound), "", 0,
             "By these rules, with courses from wall to wall: what must be covered over what the longest sheet can give.",
             "by area alone " + words.whole(area_bound), ("geometry",), show),
        line("bought_sqft", "Board bought", bought_sqft, "sqft", 1, "All sheets in their stock lengths.",
             " + ".join(_buy_told(buy, show)), ("geometry",), show),
        line("waste_pct", "Waste", (bought_sqft - covered_sqft) / bought_sqft * 100, "%", 1, "What is bought and does not stay up.",
             "(" + short_decimal(bought_sqft, 1) + " − " + short_decimal(covered_sqft, 1) + ") ÷ " + short_decimal(bought_sqft, 1),
             ("geometry",), show),
        line("butt_joint_ft", "Butt joints", butt_ft, "ft", 1, "End to end on a joist, never two neighbors on one.",
             "counted from the plan", RULES, show),
        line("tapered_joint_ft", "Tapered joints", tapered_ft, "ft", 1, "Long edge to long edge, between courses.",
             "counted from the plan", ("geometry",), show),
        line("screws", "Screws", Fraction(screws), "", 0, "On every joist under a piece and at its ends, 12 in apart.",
             "counted piece by piece", ("navedtra-14044",), show),
        line("screw_length_in", "Screws, their length", screw_in, "in", 3, "New board, old ceiling and 5/8 in of joist; up to stock.",
             short_decimal(thickness_in, 4) + " + " + short_decimal(inputs.existing_ceiling_in, 4) + " + 0.625 → "
             + short_decimal(needed_screw_in(thickness_in, inputs.existing_ceiling_in), 4), ("irc-r702-3-5", "screw-practice"), show),
        line("added_load_psf", "Load that is added", added_psf, "psf", 2, "What the new board weighs.",
             inputs.thickness + " in board", ("gypsum-weight",), show),
        line("old_load_psf", "Beside what hangs there", old_psf, "psf", 2, "Old board, by 1.6 lb/sq ft for 1/2 in.",
             short_decimal(inputs.existing_ceiling_in, 4) + " ÷ 0.5 × 1.6", ("gypsum-weight",), show),
    )  # fmt: skip
    buy_told = _buy_told(buy, show)
    gap = sheets - bound
    sentence = "Buy " + words.listed(buy_told) + ". "
    sentence += (
        "No way takes fewer."
        if gap == 0
        else "The bound is "
        + words.whole(bound)
        + ": "
        + words.plural(gap, "sheet")
        + " fewer may be possible. A thorough search may tell."
    )
    drawings = tuple(
        [
            plan_of(at, frame, courses, found.hanging.pieces, found.joists[at], show)
            for at, frame in enumerate(found.frames[:MOST_DRAWN])
        ]
    )
    items = [Item("To buy", told, "In stock lengths, each the shortest that does.", RULES) for told in buy_told]
    items += cut_list(found.hanging.pieces, courses, buy, show, inputs.thickness)
    items += hanging_list(found.hanging.pieces, courses, found.frames, show)
    return Answer(
        calculator="board",
        inputs=given,
        figure=words.plural(sheets, "sheet"),
        figure_label="to buy; proved the fewest" if gap == 0 else "to buy; the fewest found",
        sentence=sentence,
        lines=lines,
        cautions=_cautions(inputs, added_psf),
        notes=_notes(inputs),
        drawing=drawings[0],
        items=tuple(items),
        items_title="Cut list, and the order to hang",
        more_drawings=drawings[1:],
    )  # fmt: skip


def _buy_told(buy: list[tuple[int, int]], show: str) -> list[str]:
    kinds: list[tuple[int, int]] = []
    for one in buy:
        if one not in kinds:
            kinds.append(one)
    kinds.sort()
    told = []
    for width, length in kinds:
        count = len([one for one in buy if one == (width, length)])
        size = (
            measure.shown(Fraction(width, PARTS), "in", 1, show)
            + " x "
            + measure.shown(Fraction(length, PARTS * INCHES_PER_FOOT), "ft", 1, show)
        )
        told.append(words.whole(count) + " of " + size)
    return told  # fmt: skip


def _cautions(inputs: BoardInputs, added_psf: Fraction) -> tuple[Caution, ...]:
    found = [caution("asbestos-first"), caution("ceiling-load")]
    if inputs.rated != "no":
        found.append(caution("rated-ceiling"))
    if added_psf > inputs.load_limit_psf:
        found.append(caution("engineer-load"))
    found += [caution("live-wires"), caution("lift-board"), caution("fall-ladder")]
    return tuple(found)


def _notes(inputs: BoardInputs) -> tuple[str, ...]:
    notes = [
        "Screws must reach the joists through old ceiling and texture. Never hang board on the old ceiling alone.",
        "Keep screws 3/8 in from the edges. Cut edges go to the wall, tapered edges meet tapered edges.",
        "Cut the edge tight to the wall: a re-covered ceiling has no gap to hide. Caulk it twice, or cover it with trim.",
        "A plan is no promise: check the joists, the crown and the walls before the first cut, and buy a spare sheet where the shop is far.",
    ]
    if inputs.thickness == "1/4":
        notes.insert(
            0, "No printed span was found for 1/4 in board. Over sound board on joists to 16 in it is common practice."
        )
    if len(inputs.rooms) > 1:
        notes.append(
            "Rooms are bought together: an offcut of one may serve another. Carry the cut list from room to room."
        )
    return tuple(notes)


def _read(values: Values) -> BoardInputs:
    faults = []
    spacing_in = values.number("joist_spacing_in")
    offset = values.number_or_none("joist_offset_in")
    thickness = values.choice("board_thickness_in")
    fault = span_fault(thickness, spacing_in, values.choice("wet_texture") == "yes", values.number("insulation_psf"))
    if fault:
        faults.append(Fault("board_thickness_in", thickness, fault, "5/8"))
    old_in, thick_in = values.number("existing_ceiling_in"), measure.read_number(thickness)
    if needed_screw_in(thick_in, old_in) > SCREWS_IN_STOCK_IN[-1]:
        most_in = SCREWS_IN_STOCK_IN[-1] - needed_screw_in(thick_in, Fraction(0))
        message = (
            "No stock screw goes through "
            + short_decimal(old_in, 3)
            + " in of old ceiling and "
            + thickness
            + " in board into the joist."
        )
        message += " Give at most " + short_decimal(most_in, 3) + " in, or take the old ceiling down."
        faults.append(Fault("existing_ceiling_in", short_decimal(old_in, 3), message, OLD.example))
    lengths = read_lengths(values.choice("sheet_lengths_ft"))
    most = values.number_or_none("longest_sheet_ft")
    if most is not None:
        allowed = [length for length in lengths if length <= most]
        if not allowed:
            told = short_decimal(most, 2)
            message = (
                "No sheet of "
                + values.choice("sheet_lengths_ft")
                + " ft gets in: the longest that does is "
                + told
                + " ft. Give shorter sheets."
            )
            faults.append(Fault("sheet_lengths_ft", values.choice("sheet_lengths_ft"), message, "8"))
        lengths = allowed
    for room in values.rooms():
        east, north = room.size_ft()
        across = east if values.choice("joist_direction") == "north-south" else north
        if across * INCHES_PER_FOOT < spacing_in:
            message = (
                room.name
                + " is narrower than the joists are apart. Turn the joists, or cover it with one piece by hand."
            )
            faults.append(Fault("rooms", room.name, message, ROOMS.example))
    if faults:
        raise InputFault(tuple(faults))
    return BoardInputs(
        values.rooms(),
        values.choice("joist_direction") == "north-south",
        spacing_in,
        spacing_in if offset is None else offset,
        thickness,
        tuple(lengths),
        dict(SHEET_WIDTHS_IN)[values.choice("sheet_width_in")],
        old_in,
        values.choice("rated_ceiling"),
        values.number("least_strip_in"),
        values.number("load_limit_psf"),
        dict(EFFORTS)[values.choice("effort")],
        values.choice("show_in"),
    )  # fmt: skip


def _work_out(values: Values) -> Answer:
    return board(_read(values), values.given)


CALCULATOR = Calculator(
    name="board",
    title="Board over, sheet by sheet",
    summary="Fewest sheets, cut list, joints, screws and a plan to hang from",
    verb="Lay the board out",
    fields=(
        ROOMS, DIRECTION, JOIST_SPACING, BOARD_THICKNESS, LENGTHS, LONGEST, SHEET_WIDTH, OLD, RATED, OFFSET, INSULATION, TEXTURE, STRIP, LIMIT, EFFORT,
        SHOW_IN,
    ),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'"), ("joist_direction", "north-south"), ("joist_spacing_in", "16"), ("board_thickness_in", "1/2"), ("rated_ceiling", "no")),
    sources=("board-span",),
)  # fmt: skip
