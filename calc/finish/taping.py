"""Taping: tape, compound and screws for new board: by the plan of its rooms, by its joints, or else by area."""

from dataclasses import dataclass
from fractions import Fraction

from calc.board.board_lines import Plan, plan_figures, screws_sum
from calc.board.layout import layout_of
from calc.board.layout_inputs import DIRECTION, LENGTHS, LONGEST, OFFSET, STRIP, read_layout
from calc.common.inputs import AREA, JOIST_SPACING, OPTIONAL_ROOMS, SHEET_WIDTH, WASTE, area_sqft
from calc.core.answer import Answer, Calculator
from calc.core.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.core.lines import Lines
from calc.evidence.cautions import caution
from calc.finish.allowances import (
    BEAD,
    COMPOUND_WEIGHT,
    GAP_IN,
    HIGH_COMPOUND,
    LEVEL_PARTS,
    LOW_COMPOUND,
    MAKERS_LB_PER_1000,
    MAKERS_TAPE_FT_PER_1000,
    MIDDLE_COMPOUND,
    SCREW_SPACING_IN,
    SHEET,
    SHEET_LENGTH_IN,
    SHEET_WIDTH_IN,
    SKIM,
    TAPE,
    TEXTBOOK_SCREWS,
    TUBE_FLOZ,
    by_area,
    caulk,
    screws_per_sheet,
    skim_coat,
)
from calc.numbers import measure, words
from calc.numbers.exact import total
from calc.numbers.quantity import Quantity, added, given, greatest, rounded_up
from calc.numbers.words import short_decimal
from calc.numbers.working import number
from calc.rooms.rooms import Room
from calc.text.door import say

JOINTS = Field(
    name="joint_ft", label="Joints between sheets", kind="length", unit="ft",
    help="All joints, and inside corners that are taped. Empty: those of the plan of your rooms, or by area.",
    example="96", lowest="0", highest="50000", required=False,
)  # fmt: skip
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
    name="tape_roll_ft", label="Roll of tape", kind="length", unit="ft",
    help="What one roll holds.",
    example="250", lowest="10", highest="2000", default="250", rare=True,
)  # fmt: skip
EDGE = Field(
    name="caulked_edge_ft", label="Edge at the walls that is caulked", kind="length", unit="ft",
    help="A re-covered ceiling is cut tight to the wall and caulked twice instead of taped. 0 if trim covers it. Empty: the walls of your rooms.",
    example="68", lowest="0", highest="20000", required=False, source="common-practice",
)  # fmt: skip


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


def taping(inputs: TapingInputs, typed: tuple[tuple[str, str], ...]) -> Answer:
    """Return tape, rolls, compound with the spread of the published figures, screws and tubes of caulk.

    Raises nothing. Sources: a textbook (seen), a maker (from memory) and a home page (as quoted), for 1,000 sq ft;
    screws by geometry. What each level takes is common practice, no source.
    """
    show, level, plan = inputs.show_in, inputs.finish_level, inputs.plan
    part, five = LEVEL_PARTS[level], level == len(LEVEL_PARTS) - 1
    lines = Lines("taping", show)
    area = lines.add(
        name="area_sqft",
        label="Ceiling",
        unit="sqft",
        places=1,
        rule="From your rooms, or as you gave it.",
        amount=given(inputs.area_sqft, "sqft", "geometry"),
    )
    tape = lines.add(
        name="tape_ft", label="Tape", unit="ft", places=0, rule=_tape_rule(inputs), amount=_tape(inputs, area)
    )
    rolls = lines.add(
        name="tape_rolls",
        label="Rolls of tape",
        unit="",
        places=0,
        rule="Tape and waste over a roll, rounded up.",
        amount=rounded_up(tape * (1 + given(inputs.waste_pct, "%")) / given(inputs.tape_roll_ft, "ft"), "roll"),
    )
    most = by_area(area=area, allowance=HIGH_COMPOUND, part=part)
    joints = most.named(say("taping.joints", "joints"), "gal")
    skim = skim_coat(area=area) if five else given(0, "gal", "ga-214")
    lines.add(
        name="compound_gal",
        label="Compound to buy",
        unit="gal",
        places=1,
        amount=joints + skim if five else most,
        rule="By the highest figure found; then the part that the level takes; a skim coat for level 5.",
    )
    least = lines.add(
        name="low_compound_gal",
        label="By the textbook",
        unit="gal",
        places=1,
        rule="The lowest figure found.",
        amount=by_area(area=area, allowance=LOW_COMPOUND, part=part),
    )
    lines.add(
        name="middle_compound_gal",
        label="By a maker",
        unit="gal",
        places=1,
        rule="A figure between.",
        amount=by_area(area=area, allowance=MIDDLE_COMPOUND, part=part),
    )
    lines.add(
        name="skim_gal",
        label="Of it, for the skim coat",
        unit="gal",
        places=3,
        rule="Level 5 only: {coat} over the whole area.",
        amount=skim,
        coat=measure.limit(SKIM.to("in"), "1/16 in", show),
    )
    weighed = "Compound times its weight. A maker's table says {maker}."
    maker = number(MAKERS_LB_PER_1000, "lb/1000sqft", show == "metric")
    lines.add(
        name="low_compound_lb",
        label="Weight of the least",
        unit="lb",
        places=0,
        rule=weighed,
        maker=maker,
        amount=(least * COMPOUND_WEIGHT).cited("board-maker-compound"),
    )
    lines.add(
        name="high_compound_lb",
        label="Weight of the most, without skim coat",
        unit="lb",
        places=0,
        rule=weighed,
        maker=maker,
        amount=(joints * COMPOUND_WEIGHT).cited("board-maker-compound"),
    )
    spacing = measure.limit(Fraction(SCREW_SPACING_IN), "12 in", show)
    textbook = area * TEXTBOOK_SCREWS
    if plan is not None:
        laid = screws_sum(plan.screws).cited("geometry")
        by_layout = say(
            "taping.screws.plan",
            "On every joist under a piece and at its ends, {apart} apart and at both edges, as in the plan.",
            apart=spacing,
        )
        screws = lines.add(
            name="screws",
            label="Screws",
            unit="",
            places=0,
            rule=say("taping.screws.those", "Those of the plan."),
            amount=laid,
        )
    else:
        sheet = given(screws_per_sheet(inputs.joist_spacing_in), "", "navedtra-14044", say("taping.a_sheet", "a sheet"))
        laid = (sheet * area / SHEET).cited("geometry")
        by_layout = say(
            "taping.screws.sheets",
            "Sheets of {sheet} across the joists, a screw each {apart}.",
            apart=spacing,
            sheet=_sheet_told(show),
        )
        screws = lines.add(
            name="screws",
            label="Screws",
            unit="",
            places=0,
            rule=say("taping.screws.greater", "The greater of layout and textbook, rounded up."),
            amount=rounded_up(
                greatest(laid.named(say("taping.layout", "layout")), textbook.named(say("taping.textbook", "textbook")))
            ),
        )
    lines.add(name="layout_screws", label="By the layout", unit="", places=0, rule=by_layout, amount=laid)
    lines.add(
        name="textbook_screws",
        label="By the textbook",
        unit="",
        places=0,
        rule="So many for so much board.",
        amount=textbook,
    )
    edge_ft = inputs.walls_ft if inputs.caulked_edge_ft is None else inputs.caulked_edge_ft
    if edge_ft is not None and edge_ft > 0:
        key, rule = "given", "Two beads of {bead}, quarter round, from tubes of {tube}: the first bead shrinks."
        if inputs.caulked_edge_ft is None:
            key, rule = (
                "walls",
                "Two beads of {bead}, quarter round, from tubes of {tube}: the first bead shrinks. All walls of your rooms; give 0 if trim covers the edge.",
            )
        lines.add(
            name="caulk_tubes", label="Tubes of caulk", unit="", places=0, amount=caulk(edge=given(edge_ft, "ft")),
            rule=say("taping.caulk." + key, rule, bead=measure.limit(BEAD.to("in"), "1/4 in", show), tube=number(TUBE_FLOZ, "floz", show == "metric")),
        )  # fmt: skip
    figure = say("taping.figure", "of compound, {rolls} of tape", rolls=words.plural(int(rolls.value), "roll"))
    return Answer(
        calculator="taping",
        inputs=typed,
        figure=lines.shown("compound_gal"),
        figure_label=figure,
        sentence=say(
            "taping.sentence", "The published figures lie far apart: from {low} to {high} for the joints. Take {screws} screws.",
            low=lines.shown("low_compound_gal"), high=measure.shown(most.to("gal"), "gal", 1, show), screws=words.whole(int(screws.value)),
        ),
        lines=lines.tuple(),
        cautions=(caution("dust-silica"), caution("asbestos-layers")),
        notes=_notes(level, inputs.joint_ft is not None or plan is not None, inputs.no_plan, edge_ft is None, show),
        drawing=None,
    )  # fmt: skip


def _tape(inputs: TapingInputs, area: Quantity) -> Quantity:
    if inputs.finish_level == 0:
        return given(0, "ft", "construction-estimating")
    if inputs.joint_ft is not None:
        return given(inputs.joint_ft, "ft")
    if inputs.plan is not None:
        return added(
            [given(one, "ft", "geometry") for one in (inputs.plan.butt_ft, inputs.plan.tapered_ft, inputs.plan.cut_ft)]
        )
    return (area * TAPE).cited("board-maker-compound")


def _tape_rule(inputs: TapingInputs) -> str:
    if inputs.finish_level == 0:
        return say("taping.tape.none", "Level 0 takes no tape.")
    if inputs.joint_ft is not None:
        return say("taping.tape.given", "The joints that you gave.")
    if inputs.plan is not None:
        return say(
            "taping.tape.plan", "The joints of the plan: butt joints, tapered joints, and those with a cut edge."
        )
    other = number(MAKERS_TAPE_FT_PER_1000, "ft/1000sqft", inputs.show_in == "metric")
    return say("taping.tape.area", "By area; another maker's figure is {other}.", other=other)


def _sheet_told(show: str) -> str:
    if show == "metric":
        return (
            measure.limit(Fraction(SHEET_WIDTH_IN), "", show)
            + " x "
            + measure.limit(Fraction(SHEET_LENGTH_IN), "", show)
        )
    return "4 x 8 ft"


def _notes(level: int, by_joint: bool, no_plan: str, no_edge: bool, show: str) -> tuple[str, ...]:
    notes = []
    if no_plan:
        notes.append(
            say(
                "taping.note.no_plan",
                "No plan could be laid over these rooms, so this goes by area. {why}",
                why=no_plan,
            )
        )
    if not by_joint:
        text = "By area this is a guess. With your rooms, or the joints of a real layout, it is a count."
        notes.append(say("taping.note.guess", text))
    notes += [
        say("taping.note.gaps", "Gaps of {gap} and more are filled a day before they are taped.", gap=measure.limit(GAP_IN, "1/4 in", show)),
        say("taping.note.levels", "Which coats make a level is in GA-214; how much of the compound each takes here is common practice, no source."),
        say("taping.note.dry", "Each coat dries before the next. The drying form tells when."),
    ]  # fmt: skip
    if no_edge:
        text = "The edge at the walls is not known here, so no caulk is counted. Give it, or your rooms."
        notes.append(say("taping.note.edge", text))
    if level == len(LEVEL_PARTS) - 1:
        text = (
            "Level 5 is for gloss and half gloss, for smooth flat paint in hard light, and for light along the ceiling."
        )
        notes.append(say("taping.note.five", text))
    return tuple(notes)


def _work_out(values: Values) -> Answer:
    joint_ft = values.number_or_none("joint_ft")
    level = values.choice("finish_level")
    area = area_sqft(values)
    if joint_ft is not None and joint_ft > area:
        text = "Joints of {joints} ft are too many for {area} sq ft of board. Give at most 1 ft for each square foot, or leave it empty."
        message = say("taping.fault.joints", text, joints=short_decimal(joint_ft, 1), area=short_decimal(area, 1))
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
    always=("dust-silica", "asbestos-layers"),
)
