"""Board: sheets over a ceiling, the fewest that were found, with a plan to hang from and a cut list."""

from fractions import Fraction

from calc.board.board_lines import RULES, buy_told, lines_of, rules_told
from calc.board.cuts import cut_list
from calc.board.fewest_sheets import QUICK
from calc.board.layout import BoardInputs, layout_of
from calc.board.layout_inputs import DIRECTION, EFFORT, LENGTHS, LONGEST, OFFSET, STRIP, read_layout
from calc.board.plan import hanging_list, plan_of
from calc.board.spans_and_screws import SCREWS_IN_STOCK_IN, needed_screw_in, span_fault
from calc.common.inputs import BOARD_PSF, BOARD_THICKNESS, JOIST_SPACING, RATED, ROOMS, SHEET_WIDTH
from calc.core.answer import Answer, Calculator, Item
from calc.core.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure, words
from calc.numbers.words import short_decimal
from calc.text.door import say

MOST_DRAWN = 8  # rooms with a plan of their own
EDGE_IN = Fraction(3, 8)  # a screw stands so far off an edge [in], from memory
LOAD_LIMIT_PSF = "3"  # more than one layer of any board weighs [lb/sq ft], a choice of caution


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
LIMIT = Field(
    name="load_limit_psf", label="Weight that may be added", kind="rate", unit="psf",
    help="Past it: stop and ask an engineer.",
    example="3", lowest="0.5", highest="20", default=LOAD_LIMIT_PSF, source="common-practice", rare=True,
)  # fmt: skip


def board(inputs: BoardInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return the sheets, the bound that no way can be under, the cut list, joints, screws, load and a plan to hang from.

    Raises InputFault where the rules leave no way. Sources: IRC R702.3.5 and a maker's submittal for spans and screws,
    NAVEDTRA 14044 for screw spacing; that joints of neighbors lie on other joists from IRC R702.3.6.
    """
    show = inputs.show_in
    found = layout_of(inputs)
    sheets, bound = len(found.sheets), found.bound.sheets
    courses = list(found.courses)
    added_psf = dict(BOARD_PSF)[inputs.thickness]
    buying = buy_told(found.sheets, show)
    if found.proved():
        figure_label = say("board.figure.proved", "to buy; proved the fewest")
        rest = say("board.sentence.proved", "By the book's own rules no layout takes fewer.")
    else:
        figure_label = say(
            "board.figure", "to buy; the fewest found, at least {least} are needed", least=words.whole(bound)
        )
        rest = say(
            "board.sentence.least",
            "By the book's own rules at least {least} are needed, so {sheets} fewer may be possible.",
            least=words.whole(bound),
            sheets=words.plural(sheets - bound, "sheet"),
        )
        if inputs.effort == QUICK:
            rest += " " + say("board.sentence.thorough", "A thorough search may find it.")
    drawings = tuple(
        [
            plan_of(at, frame, courses, found.pieces, found.joists[at], show)
            for at, frame in enumerate(found.frames[:MOST_DRAWN])
        ]
    )
    to_buy = say("board.buy", "To buy")
    stock = say("board.buy.told", "In stock lengths, each the shortest that does.")
    items = [Item(to_buy, told, stock, RULES) for told in buying]
    items += cut_list(found.pieces, courses, found.cuts, found.sheets, show)
    items += hanging_list(found.pieces, courses, found.frames, show)
    return Answer(
        calculator="board",
        inputs=given,
        figure=words.plural(sheets, "sheet"),
        figure_label=figure_label,
        sentence=say("board.sentence.buy", "Buy {sheets}.", sheets=words.listed(buying)) + " " + rest,
        lines=lines_of(inputs, found),
        cautions=_cautions(inputs, added_psf),
        notes=_notes(inputs) + rules_told(inputs),
        drawing=drawings[0],
        items=tuple(items),
        items_title=say("board.items", "Cut list, and the order to hang"),
        more_drawings=drawings[1:],
    )


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
        say(
            "board.note.screws",
            "Screws must reach the joists through old ceiling and texture. Never hang board on the old ceiling alone.",
        ),
        say(
            "board.note.edge",
            "Keep screws {edge} from the edges.",
            edge=measure.limit(EDGE_IN, "3/8 in", inputs.show_in),
        ),
        say(
            "board.note.tight",
            "Cut the edge tight to the wall: a re-covered ceiling has no gap to hide. Caulk it twice, or cover it with trim.",
        ),
        say(
            "board.note.promise",
            "A plan is no promise: check the joists, the crown and the walls before the first cut, and buy a spare sheet where the shop is far.",
        ),
    ]
    if inputs.thickness == "1/4":
        no_span = say(
            "board.note.quarter",
            "No printed span was found for 1/4 in board. Over sound board on joists to 16 in it is common practice.",
        )
        notes.insert(0, no_span)
    if len(inputs.rooms) > 1:
        notes.append(
            say(
                "board.note.together",
                "Rooms are bought together: a piece of one may come from another's sheet. Carry the cut list from room to room.",
            )
        )
    return tuple(notes)


def _read(values: Values) -> BoardInputs:
    faults = []
    spacing_in = values.number("joist_spacing_in")
    thickness = values.choice("board_thickness_in")
    fault = span_fault(thickness, spacing_in, values.choice("wet_texture") == "yes", values.number("insulation_psf"))
    if fault:
        faults.append(Fault("board_thickness_in", thickness, fault, "5/8"))
    old_in, thick_in = values.number("existing_ceiling_in"), measure.read_number(thickness)
    if needed_screw_in(thick_in, old_in) > SCREWS_IN_STOCK_IN[-1]:
        most_in = SCREWS_IN_STOCK_IN[-1] - needed_screw_in(thick_in, Fraction(0))
        message = say(
            "board.fault.screw",
            "No stock screw goes through {old} in of old ceiling and {board} in board into the joist. Give at most {most} in, or take the old ceiling down.",
            old=short_decimal(old_in, 3),
            board=thickness,
            most=short_decimal(most_in, 3),
        )
        faults.append(Fault("existing_ceiling_in", short_decimal(old_in, 3), message, OLD.example))
    inputs, more = read_layout(
        values,
        thickness,
        old_in,
        values.choice("rated_ceiling"),
        values.number("load_limit_psf"),
        values.choice("effort"),
    )
    faults += more
    if faults:
        raise InputFault(tuple(faults))
    return inputs


def _work_out(values: Values) -> Answer:
    return board(_read(values), values.given)


CALCULATOR = Calculator(
    name="board",
    title="Board over, sheet by sheet",
    summary="The fewest sheets found, cut list, joints, screws and a plan to hang from",
    verb="Lay the board out",
    fields=(
        ROOMS, DIRECTION, JOIST_SPACING, BOARD_THICKNESS, LENGTHS, LONGEST, SHEET_WIDTH, OLD, RATED, OFFSET, INSULATION, TEXTURE, STRIP, LIMIT, EFFORT,
        SHOW_IN,
    ),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'"), ("joist_direction", "north-south"), ("joist_spacing_in", "16"), ("board_thickness_in", "1/2"), ("rated_ceiling", "no")),
    sources=("board-span",),
    always=("asbestos-first", "ceiling-load", "live-wires", "lift-board", "fall-ladder"),
)  # fmt: skip
