"""Taping: tape, compound and screws for new board: by the plan of its rooms, by its joints, or else by area."""

from dataclasses import dataclass
from fractions import Fraction

from calc.board.board_lines import Plan, plan_figures, screws_told
from calc.board.layout import layout_of
from calc.board.layout_inputs import DIRECTION, LENGTHS, LONGEST, OFFSET, STRIP, read_layout
from calc.common.inputs import AREA, JOIST_SPACING, OPTIONAL_ROOMS, SHEET_WIDTH, WASTE, area_sqft
from calc.core.answer import Answer, Calculator, Line, line
from calc.core.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.evidence.cautions import caution
from calc.numbers import measure, words
from calc.numbers.exact import ceiling, round_half_up, total
from calc.numbers.words import short_decimal
from calc.rooms.rooms import Room

PER_SQFT = 1000  # the published allowances are for so much board [sq ft]
TAPE_FT_PER_1000 = 380  # textbook p. 203 [ft/1,000 sq ft]; a maker's 370 is from memory
LOW_COMPOUND_GAL_PER_1000 = 5  # textbook p. 203 [gal/1,000 sq ft]
MIDDLE_COMPOUND_GAL_PER_1000 = Fraction(94, 10)  # a maker, from memory [gal/1,000 sq ft]
HIGH_COMPOUND_GAL_PER_1000 = 11  # a home page [gal/1,000 sq ft]; the highest, so the one to buy by
SCREWS_PER_1000 = 1000  # textbook p. 203 [screws/1,000 sq ft]
COMPOUND_LB_PER_GAL = Fraction(137, 10)  # all-purpose, from its label, from memory [lb/gal]
SKIM_IN = Fraction(1, 16)  # level 5: a thin coat over everything [in], from memory
GALLONS_PER_SQFT_INCH = Fraction(measure.SQUARE_INCHES_PER_SQUARE_FOOT, measure.CUBIC_INCHES_PER_GALLON)
SHEET_LENGTH_IN, SHEET_WIDTH_IN = 96, 48  # the sheet that screws are counted on [in]
SCREW_SPACING_IN = 12  # on a ceiling [in], NAVEDTRA 14044
# The part of all compound that a level takes: tape, then one more coat with each level. Common practice, no source.
LEVEL_PARTS = (Fraction(0), Fraction(4, 10), Fraction(6, 10), Fraction(8, 10), Fraction(1), Fraction(1))
BEAD_IN = Fraction(1, 4)  # a bead of caulk, quarter round [in], common practice
QUARTER_ROUND = Fraction(785398, 1000000)  # a quarter of pi [-]
TUBE_CUIN = Fraction(1823, 100)  # a tube of 10.1 fluid ounces [cu in], by definition
BEADS = 2  # the first bead shrinks, so the edge is caulked twice, common practice

JOINTS = Field(
    name="joint_ft",
    label="Joints between sheets",
    kind="length",
    unit="ft",
    help="All joints, and inside corners that are taped. Empty: those of the plan of your rooms, or by area.",
    example="96",
    lowest="0",
    highest="50000",
    required=False,
)
LEVEL = Field(
    name="finish_level",
    label="Level of finish",
    kind="choice",
    unit="",
    help="Agree it in writing. 5 is for gloss and for light along the ceiling.",
    example="4",
    default="4",
    choices=(
        ("0", "0: no taping"),
        ("1", "1: tape set, tool marks stay"),
        ("2", "2: tape and one coat"),
        ("3", "3: for a heavy texture"),
        ("4", "4: for flat paint"),
        ("5", "5: level 4 and a skim coat over all"),
    ),
    source="ga-214",
)
ROLL = Field(
    name="tape_roll_ft",
    label="Roll of tape",
    kind="length",
    unit="ft",
    help="What one roll holds.",
    example="250",
    lowest="10",
    highest="2000",
    default="250",
    rare=True,
)
EDGE = Field(
    name="caulked_edge_ft",
    label="Edge at the walls that is caulked",
    kind="length",
    unit="ft",
    help="A re-covered ceiling is cut tight to the wall and caulked twice instead of taped. 0 if trim covers it. Empty: the walls of your rooms.",
    example="68",
    lowest="0",
    highest="20000",
    required=False,
    source="common-practice",
)


@dataclass(frozen=True)
class TapingInputs:
    """`area_sqft` [sq ft, > 0] of new board, `joint_ft` [ft, >= 0] or None, `finish_level` [-, 0 to 5], `joist_spacing_in`
    [in, 8 to 48], `tape_roll_ft` [ft], `caulked_edge_ft` [ft, >= 0] or None, `waste_pct` [%, 0 to 50], `show_in`; of rooms
    also the `plan` of the board over them, or `no_plan`, why there is none, and `walls_ft` [ft] of their walls."""

    area_sqft: Fraction
    joint_ft: Fraction | None
    finish_level: int
    joist_spacing_in: Fraction
    tape_roll_ft: Fraction
    caulked_edge_ft: Fraction | None
    waste_pct: Fraction
    show_in: str
    plan: Plan | None = None
    no_plan: str = ""
    walls_ft: Fraction | None = None


def screws_per_sheet(joist_spacing_in: Fraction) -> int:
    """Return the screws of one 4 x 8 ft sheet across joists `joist_spacing_in` apart [in, > 0], 12 in along each.

    Source: NAVEDTRA 14044 for the spacing; the count is geometry.
    """
    joists = ceiling(SHEET_LENGTH_IN / joist_spacing_in) + 1
    return joists * (SHEET_WIDTH_IN // SCREW_SPACING_IN + 1)


def taping(inputs: TapingInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return tape, rolls, compound with the spread of the published figures, screws and tubes of caulk.

    Raises nothing. Sources: a textbook (seen), a maker (from memory) and a home page (as quoted), for 1,000 sq ft;
    screws by geometry. What each level takes is common practice, no source.
    """
    show, level = inputs.show_in, inputs.finish_level
    thousands = inputs.area_sqft / PER_SQFT
    extra = 1 + inputs.waste_pct / 100
    plan = inputs.plan
    by_joint = inputs.joint_ft is not None or plan is not None
    tape_ft = Fraction(0)
    if level > 0:
        tape_ft = thousands * TAPE_FT_PER_1000
        if plan is not None:
            tape_ft = plan.joints_ft()
        if inputs.joint_ft is not None:
            tape_ft = inputs.joint_ft
    tape_rolls = ceiling(tape_ft * extra / inputs.tape_roll_ft)
    part = LEVEL_PARTS[level]
    low_gal = thousands * LOW_COMPOUND_GAL_PER_1000 * part
    middle_gal = thousands * MIDDLE_COMPOUND_GAL_PER_1000 * part
    high_gal = thousands * HIGH_COMPOUND_GAL_PER_1000 * part
    skim_gal = inputs.area_sqft * SKIM_IN * GALLONS_PER_SQFT_INCH if level == len(LEVEL_PARTS) - 1 else Fraction(0)
    compound_gal = high_gal + skim_gal
    sheet_sqft = Fraction(SHEET_LENGTH_IN * SHEET_WIDTH_IN, measure.SQUARE_INCHES_PER_SQUARE_FOOT)
    layout_screws = Fraction(screws_per_sheet(inputs.joist_spacing_in)) * inputs.area_sqft / sheet_sqft
    textbook_screws = thousands * SCREWS_PER_1000
    screws = ceiling(max(layout_screws, textbook_screws))
    if plan is not None:
        layout_screws = Fraction(sum(plan.screws))
        screws = sum(plan.screws)
    edge_ft = inputs.walls_ft if inputs.caulked_edge_ft is None else inputs.caulked_edge_ft
    lines = [
        line(
            "area_sqft", "Ceiling", inputs.area_sqft, "sqft", 1,
            "From your rooms, or as you gave it.", short_decimal(inputs.area_sqft, 2) + " sq ft", ("geometry",), show,
        ),
        line(
            "tape_ft", "Tape", tape_ft, "ft", 0, _tape_rule(inputs), _tape_working(inputs, thousands),
            ("your-figure",) if inputs.joint_ft is not None else ("geometry",) if plan is not None
            else ("construction-estimating", "board-maker-compound"), show,
        ),
        line(
            "tape_rolls", "Rolls of tape", Fraction(tape_rolls), "", 0, "Tape and waste over a roll, rounded up.",
            short_decimal(tape_ft, 1) + " × " + short_decimal(extra, 3) + " ÷ " + short_decimal(inputs.tape_roll_ft, 1) + " = "
            + words.decimal(tape_ft * extra / inputs.tape_roll_ft, 2) + ", so " + words.whole(tape_rolls),
            ("construction-estimating",), show,
        ),
        line(
            "compound_gal", "Compound to buy", compound_gal, "gal", 1,
            "The highest figure found, 11 gal for 1,000 sq ft; then the part that the level takes; a skim coat for level 5.",
            short_decimal(thousands, 4) + " × 11 × " + short_decimal(part, 1) + " + " + words.decimal(skim_gal, 1),
            ("home-page-compound", "common-practice"), show,
        ),
        line(
            "low_compound_gal", "By the textbook", low_gal, "gal", 1, "5 gal for 1,000 sq ft, the lowest figure found.",
            short_decimal(thousands, 4) + " × 5 × " + short_decimal(part, 1), ("construction-estimating", "common-practice"), show,
        ),
        line(
            "middle_compound_gal", "By a maker", middle_gal, "gal", 1, "9.4 gal for 1,000 sq ft.",
            short_decimal(thousands, 4) + " × 9.4 × " + short_decimal(part, 1), ("board-maker-compound", "common-practice"), show,
        ),
        line(
            "skim_gal", "Of it, for the skim coat", skim_gal, "gal", 3, "Level 5 only: 1/16 in over the whole area.",
            short_decimal(inputs.area_sqft, 2) + " × 1/16 in × 144 ÷ 231" if skim_gal > 0 else "none below level 5",
            ("ga-214", "us-customary-definitions"), show,
        ),
        _weight("low_compound_lb", "Weight of the least", low_gal, show),
        _weight("high_compound_lb", "Weight of the most, without skim coat", high_gal, show),
        line(
            "screws", "Screws", Fraction(screws), "", 0,
            "Those of the plan." if plan is not None else "The greater of layout and textbook, rounded up.",
            screws_told(plan.screws) if plan is not None
            else "the greater of " + words.decimal(layout_screws, 1) + " and " + words.decimal(textbook_screws, 1),
            ("navedtra-14044", "geometry") if plan is not None else ("navedtra-14044", "construction-estimating"), show,
        ),
        line(
            "layout_screws", "By the layout", Fraction(round_half_up(layout_screws)), "", 0,
            "On every joist under a piece and at its ends, 12 in apart and at both edges, as in the plan."
            if plan is not None else "Sheets of 4 x 8 ft across the joists, a screw each 12 in.",
            screws_told(plan.screws) if plan is not None
            else str(screws_per_sheet(inputs.joist_spacing_in)) + " a sheet × " + short_decimal(inputs.area_sqft, 2) + " ÷ 32",
            ("navedtra-14044", "geometry"), show,
        ),
        line(
            "textbook_screws", "By the textbook", textbook_screws, "", 0, "1,000 for 1,000 sq ft.",
            short_decimal(thousands, 4) + " × 1,000", ("construction-estimating",), show,
        ),
    ]  # fmt: skip
    if edge_ft is not None and edge_ft > 0:
        lines.append(_caulk(edge_ft, inputs.caulked_edge_ft is None, show))
    return Answer(
        calculator="taping",
        inputs=given,
        figure=lines[3].shown,
        figure_label="of compound, " + words.plural(tape_rolls, "roll") + " of tape",
        sentence="The published figures lie far apart: from " + lines[4].shown + " to "
        + measure.shown(high_gal, "gal", 1, show) + " for the joints. Take " + words.whole(screws) + " screws.",
        lines=tuple(lines),
        cautions=(caution("dust-silica"), caution("asbestos-layers")),
        notes=_notes(level, by_joint, inputs.no_plan, edge_ft is None),
        drawing=None,
    )  # fmt: skip


def _weight(name: str, label: str, gallons: Fraction, show: str) -> Line:
    return line(
        name, label, gallons * COMPOUND_LB_PER_GAL, "lb", 0, "Gallons times 13.7 lb. A maker's table says 138 lb for 1,000 sq ft.",
        words.decimal(gallons, 2) + " × 13.7", ("compound-label", "board-maker-compound"), show,
    )  # fmt: skip


def _tape_rule(inputs: TapingInputs) -> str:
    if inputs.joint_ft is not None:
        return "The joints that you gave."
    if inputs.plan is not None:
        return "The joints of the plan: butt joints, tapered joints, and those with a cut edge."
    return "380 ft for 1,000 sq ft; another maker's figure is 370."


def _tape_working(inputs: TapingInputs, thousands: Fraction) -> str:
    if inputs.finish_level == 0:
        return "level 0, no tape"
    if inputs.joint_ft is not None:
        return "as given"
    if inputs.plan is not None:
        parts = (inputs.plan.butt_ft, inputs.plan.tapered_ft, inputs.plan.cut_ft)
        return " + ".join([short_decimal(one, 2) for one in parts])
    return short_decimal(thousands, 4) + " × 380"


def _caulk(edge_ft: Fraction, of_rooms: bool, show: str) -> Line:
    bead_in = TUBE_CUIN / (BEAD_IN * BEAD_IN * QUARTER_ROUND)
    needed = edge_ft * measure.INCHES_PER_FOOT * BEADS / bead_in
    return line(
        "caulk_tubes", "Tubes of caulk", Fraction(ceiling(needed)), "", 0,
        "Two beads of 1/4 in, quarter round, from tubes of 10.1 fl oz: the first bead shrinks."
        + (" All walls of your rooms; give 0 if trim covers the edge." if of_rooms else ""),
        short_decimal(edge_ft, 2) + " × 12 × 2 ÷ " + words.decimal(bead_in, 0) + " in a tube = " + words.decimal(needed, 2),
        ("common-practice", "us-customary-definitions"), show,
    )  # fmt: skip


def _notes(level: int, by_joint: bool, no_plan: str, no_edge: bool) -> tuple[str, ...]:
    notes = [
        "Gaps of 1/4 in and more are filled a day before they are taped.",
        "Which coats make a level is in GA-214; how much of the compound each takes here is common practice, no source.",
        "Each coat dries before the next. The drying form tells when.",
    ]
    if not by_joint:
        notes.insert(0, "By area this is a guess. With your rooms, or the joints of a real layout, it is a count.")
    if no_plan:
        notes.insert(0, "No plan could be laid over these rooms, so this goes by area. " + no_plan)
    if no_edge:
        notes.append("The edge at the walls is not known here, so no caulk is counted. Give it, or your rooms.")
    if level == len(LEVEL_PARTS) - 1:
        notes.append(
            "Level 5 is for gloss and half gloss, for smooth flat paint in hard light, and for light along the ceiling."
        )
    return tuple(notes)  # fmt: skip


def _work_out(values: Values) -> Answer:
    joint_ft = values.number_or_none("joint_ft")
    level = values.choice("finish_level")
    area = area_sqft(values)
    if joint_ft is not None and joint_ft > area:
        message = (
            "Joints of "
            + short_decimal(joint_ft, 1)
            + " ft are too many for "
            + short_decimal(area, 1)
            + " sq ft of board."
        )
        message += " Give at most 1 ft for each square foot, or leave it empty."
        raise InputFault((Fault("joint_ft", short_decimal(joint_ft, 1), message, JOINTS.example),))  # fmt: skip
    plan, no_plan = None, ""
    rooms = values.rooms() if values.number_or_none("area_sqft") is None else ()
    if rooms:
        try:
            plan = _plan_of(values)
        except InputFault as fault:
            no_plan = fault.faults[0].message
    inputs = TapingInputs(
        area,
        joint_ft,
        int(level),
        values.number("joist_spacing_in"),
        values.number("tape_roll_ft"),
        values.number_or_none("caulked_edge_ft"),
        values.number("waste_pct"),
        values.choice("show_in"),
        plan,
        no_plan,
        total([walls_ft(room) for room in rooms]) if rooms else None,
    )
    return taping(inputs, values.given)


def _plan_of(values: Values) -> Plan:
    """The plan that the board form lays over the same rooms, in a quick search. Raises InputFault where there is none."""
    inputs, faults = read_layout(values, "1/2", Fraction(0), "no", Fraction(0), "quick")
    if faults:
        raise InputFault(tuple(faults))
    return plan_figures(layout_of(inputs))


def walls_ft(room: Room) -> Fraction:
    """Return the length of ceiling edge at the walls of a room [ft], along its slope."""
    stretch = room.slope_factor() if room.slope else Fraction(1)
    along_x, along_y = (stretch, Fraction(1)) if room.toward in "EW" else (Fraction(1), stretch)
    found = Fraction(0)
    for at, corner in enumerate(room.outline):
        before = room.outline[at - 1]
        found += abs(corner[0] - before[0]) * along_x + abs(corner[1] - before[1]) * along_y
    return found / measure.INCHES_PER_FOOT


CALCULATOR = Calculator(
    name="taping",
    title="Tape, compound and screws",
    summary="Tape, compound, screws and caulk for new board",
    verb="Work out the taping",
    fields=(
        OPTIONAL_ROOMS,
        AREA,
        DIRECTION,
        JOIST_SPACING,
        LENGTHS,
        LONGEST,
        JOINTS,
        LEVEL,
        EDGE,
        SHEET_WIDTH,
        OFFSET,
        STRIP,
        ROLL,
        WASTE,
        SHOW_IN,
    ),
    work_out=_work_out,
    example=(("area_sqft", "280"), ("joint_ft", "96"), ("finish_level", "4"), ("caulked_edge_ft", "68")),
    one_of=("rooms", "area_sqft"),
    sources=("ga-214", "common-practice", "construction-estimating", "board-maker-compound"),
)
