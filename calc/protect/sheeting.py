"""Sheeting: real strips of film over floors, turned up at the walls, and film hung on the walls."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import HEIGHT, ROOMS
from calc.core.answer import Answer, Calculator, Item
from calc.core.drawing import Dimension, Drawing, Label, Shape
from calc.core.fields import SHOW_IN, Fault, Field, InputFault, Values
from calc.core.lines import Lines
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure, words
from calc.numbers.exact import ceiling, floor, total
from calc.numbers.measure import INCHES_PER_FOOT
from calc.numbers.quantity import Quantity, added, fact, given, rounded_up, told
from calc.numbers.words import short_decimal
from calc.rooms.rooms import Room
from calc.rooms.strips import Strip, bands, fewest_rolls, lapped, rolls_cut, strips_of
from calc.text.door import say

FILM_DENSITY = fact(Fraction(92, 100), "", "polyethylene")  # against water, from memory
WATER_DENSITY = fact(Fraction(62428, 1000), "lb/cuft", "polyethylene")  # water at 39.2 degF
REGISTER_LAYERS = 2  # two layers of plastic on each opening, OSHA training slide 22
REGISTER_SIDE_IN = 24  # a piece for one opening [in], common practice
LAYERS = fact(REGISTER_LAYERS, "", "osha-asbestos-slides")
SIDE = fact(REGISTER_SIDE_IN, "in", "common-practice")
TAPE_ROLL = fact(180, "ft", "common-practice")  # a roll of 60 yards
PRACTICE = ("geometry", "common-practice")
MOST_ITEMS = 24  # strips that are listed one by one

ROLL_WIDTH = Field(
    name="roll_width_ft", label="Floor film, width", kind="length", unit="ft",
    help="Unfolded. Plastic of 4 or 6 mil for a floor that gets wet.",
    example="10", lowest="2", highest="60", default="10", source="common-practice",
)  # fmt: skip
ROLL_LENGTH = Field(
    name="roll_length_ft", label="Floor film, length of a roll", kind="length", unit="ft",
    help="What one roll holds.",
    example="100", lowest="10", highest="1000", default="100", source="common-practice",
)  # fmt: skip
OVERLAP = Field(
    name="overlap_in", label="Laps", kind="length", unit="in",
    help="How far one strip lies over the next.",
    example="12", lowest="0", highest="24", default="12", source="common-practice",
)  # fmt: skip
TURN_UP = Field(
    name="turn_up_in", label="Turned up at the walls", kind="length", unit="in",
    help="So that water stays on the film.",
    example="12", lowest="0", highest="36", default="12", source="common-practice",
)  # fmt: skip
FLOOR_WORK = Field(
    name="floor_work", label="What falls on the floor", kind="choice", unit="",
    help="Cloth soaks through, so water asks for plastic.",
    example="wet", default="wet",
    choices=(("wet", "Water and wet texture"), ("dry", "Dust only")),
)  # fmt: skip
PIECED = Field(
    name="pieced", label="May a strip be pieced?", kind="choice", unit="",
    help="A joint across a strip is lapped and taped, and one more place to leak.",
    example="no", default="no", rare=True,
    choices=(("no", "No, one length"), ("yes", "Yes, lapped and taped")),
)  # fmt: skip
WALL_WIDTH = Field(
    name="wall_film_width_ft", label="Wall film, width", kind="length", unit="ft",
    help="Thin film of about 0.35 mil comes 8 ft wide.",
    example="8", lowest="2", highest="20", default="8", source="common-practice", rare=True,
)  # fmt: skip
WALL_LENGTH = Field(
    name="wall_film_length_ft", label="Wall film, length of a roll", kind="length", unit="ft",
    help="And 400 ft long: one roll masks the walls of an ordinary house.",
    example="400", lowest="10", highest="2000", default="400", source="common-practice", rare=True,
)  # fmt: skip
FILM = Field(
    name="floor_film_mil", label="Floor film, thickness", kind="rate", unit="mil",
    help="6 mil stands boots and ladders.",
    example="6", lowest="0.3", highest="20", default="6", source="common-practice", rare=True,
)  # fmt: skip
REGISTERS = Field(
    name="registers", label="Registers and returns to close", kind="count", unit="",
    help="Each gets two layers of plastic.",
    example="2", lowest="0", highest="60", default="2", source="osha-asbestos-slides",
)  # fmt: skip


@dataclass(frozen=True)
class SheetingInputs:
    """`rooms`: at least one; `ceiling_height_ft` [ft]; the films' widths and lengths [ft]; `overlap_in` and `turn_up_in`
    [in]; `floor_work` 'wet' or 'dry'; `pieced`; `floor_film_mil` [mil]; `registers` [-]; `show_in`."""

    rooms: tuple[Room, ...]
    ceiling_height_ft: Fraction
    roll_width_ft: Fraction
    roll_length_ft: Fraction
    overlap_in: Fraction
    turn_up_in: Fraction
    wall_film_width_ft: Fraction
    wall_film_length_ft: Fraction
    floor_film_mil: Fraction
    registers: int
    floor_work: str
    pieced: bool
    show_in: str


def tape_length(*, edge: Quantity, laps: Quantity, seams: Quantity, registers: Quantity) -> Quantity:
    """Return the tape [ft]: twice round the `edge` of the rooms, at the floor film and at the top of the wall film; `laps` and `seams` [ft]; four
    sides of each layer on each of `registers` [-]. Common practice, no source."""
    return (edge * 2 + laps + seams + registers * LAYERS * 4 * SIDE).cited("common-practice")


def sheeting(inputs: SheetingInputs, typed: tuple[tuple[str, str], ...]) -> Answer:
    """Return the floor film strip by strip, how each roll is cut, the wall film, and the tape.

    Raises InputFault where a lap is as wide as the film. Sources: geometry; laps and turn-ups are common practice;
    two layers on openings from an OSHA training slide.
    """
    _refuse(inputs)
    show = inputs.show_in
    width_in = inputs.roll_width_ft * INCHES_PER_FOOT
    by_room = [strips_of(room, width_in, inputs.overlap_in, inputs.turn_up_in) for room in inputs.rooms]
    strips = [strip for found in by_room for strip in found]
    roll_in = inputs.roll_length_ft * INCHES_PER_FOOT
    lengths, joints = _lengths(strips, roll_in, inputs)
    to_cut = lengths + _for_openings(inputs)
    cut = rolls_cut(to_cut, roll_in)
    least = words.whole(fewest_rolls(to_cut, roll_in))
    lap_ft = total([lapped(strips) for strips in by_room]) / INCHES_PER_FOOT + joints * inputs.roll_width_ft
    wall_run, seams_ft = _walls(inputs)
    lines = Lines("sheeting", show)
    in_all = given(total(lengths) / INCHES_PER_FOOT, "ft", "geometry", words.plural(len(lengths), "length"))
    floor_film = lines.add(
        name="floor_sheeting_sqft",
        label="Film on the floor",
        unit="sqft",
        places=1,
        rule="All strips, laps and turn-ups with them.",
        amount=(in_all * given(inputs.roll_width_ft, "ft")).cited("common-practice"),
    )
    lines.add(
        name="rolls",
        label="Rolls for the floor",
        unit="",
        places=0,
        rule="The strips cut from whole rolls, the longest first.",
        amount=told(
            len(cut),
            "",
            say("sheeting.rolls.working", "not fewer than {least} by length alone", least=least),
            *PRACTICE,
        ),
    )
    lines.add(
        name="floor_sheeting_lb",
        label="Weight of the floor film",
        unit="lb",
        places=2,
        rule="Area times thickness times the density of polyethylene, a part of that of water.",
        amount=floor_film * given(inputs.floor_film_mil, "mil") * FILM_DENSITY * WATER_DENSITY,
    )
    lines.add(
        name="wall_sheeting_sqft",
        label="Film on the walls",
        unit="sqft",
        places=1,
        rule="Round each room with one lap, in as many tiers as its height asks for, down over the turned-up floor film.",
        amount=(wall_run * given(inputs.wall_film_width_ft, "ft")).cited("common-practice"),
    )
    wall_rolls = lines.add(
        name="wall_rolls",
        label="Rolls for the walls",
        unit="",
        places=0,
        rule="Run of film over a roll, rounded up.",
        amount=rounded_up(wall_run / given(inputs.wall_film_length_ft, "ft")).cited("common-practice"),
    )
    lines.add(
        name="register_sheeting_sqft",
        label="For the openings",
        unit="sqft",
        places=0,
        rule="Two layers on each register and return, square pieces across the roll.",
        amount=given(inputs.registers, "") * LAYERS * SIDE * SIDE,
    )
    tape = lines.add(
        name="tape_ft",
        label="Tape",
        unit="ft",
        places=0,
        rule="Round each room at the floor film and at the top of the wall film; every lap; four sides of each layer on an opening.",
        amount=tape_length(
            edge=given(total([room.perimeter_ft() for room in inputs.rooms]), "ft", "geometry"),
            laps=given(lap_ft, "ft", "geometry"),
            seams=given(seams_ft, "ft", "geometry"),
            registers=given(inputs.registers, ""),
        ),
    )
    tape_rolls = lines.add(
        name="tape_rolls", label="Rolls of tape", unit="", places=0, rule="Tape over a roll, rounded up.", amount=rounded_up(tape / TAPE_ROLL),
    )  # fmt: skip
    return Answer(
        calculator="sheeting",
        inputs=typed,
        figure=words.plural(len(cut), "roll"),
        figure_label=say("sheeting.figure", "of floor film, {rolls} of wall film", rolls=words.plural(int(wall_rolls.value), "roll")),
        sentence=say(
            "sheeting.sentence", "Cut {lengths} for the floor. Take {rolls} of tape.",
            lengths=words.plural(len(lengths), "length"), rolls=words.plural(int(tape_rolls.value), "roll"),
        ),
        lines=lines.tuple(),
        cautions=_cautions(inputs),
        notes=_notes(inputs, joints),
        drawing=_plan(inputs.rooms[0], by_room[0], inputs),
        items=_cuts(cut, roll_in, show),
        items_title=say("sheeting.items", "How each roll is cut"),
    )  # fmt: skip


def _refuse(inputs: SheetingInputs) -> None:
    faults = []
    for name, label, width_ft in (
        ("roll_width_ft", say("sheeting.floor_film", "floor film"), inputs.roll_width_ft),
        ("wall_film_width_ft", say("sheeting.wall_film", "wall film"), inputs.wall_film_width_ft),
    ):
        if inputs.overlap_in * 2 > width_ft * INCHES_PER_FOOT:
            message = say(
                "sheeting.fault.narrow", "The {film} is {width} wide, too narrow for laps of {lap}. Take wider film, or a lap of at most half its width.",
                film=label, width=measure.shown(width_ft, "ft", 2, inputs.show_in), lap=measure.shown(inputs.overlap_in, "in", 2, inputs.show_in),
            )  # fmt: skip
            faults.append(Fault(name, short_decimal(width_ft, 2), message, "10"))
    if faults:
        raise InputFault(tuple(faults))


def _lengths(strips: list[Strip], roll_in: Fraction, inputs: SheetingInputs) -> tuple[list[Fraction], int]:
    """Return the lengths to cut [in], none longer than a roll, and how many joints piecing makes."""
    lengths: list[Fraction] = []
    joints = 0
    if inputs.pieced:  # one run of film, parted wherever a roll ends
        run = total([strip.length for strip in strips])
        rolls = bands(run, roll_in, inputs.overlap_in)
        joints = rolls - 1
        run += joints * inputs.overlap_in
        for _ in range(rolls - 1):
            lengths.append(roll_in)
        lengths.append(run - roll_in * (rolls - 1))
        return lengths, joints
    for strip in strips:
        rest = strip.length
        while rest > roll_in:  # longer than any roll: it must be pieced
            lengths.append(roll_in)
            rest = rest - roll_in + inputs.overlap_in
            joints += 1
        lengths.append(rest)
    return lengths, joints


def _for_openings(inputs: SheetingInputs) -> list[Fraction]:
    """The lengths of 2 ft to cut so that their pieces close every opening twice [in]."""
    in_a_width = max(floor(inputs.roll_width_ft * INCHES_PER_FOOT / REGISTER_SIDE_IN), 1)
    cuts = ceiling(Fraction(inputs.registers * REGISTER_LAYERS, in_a_width))
    return [Fraction(REGISTER_SIDE_IN)] * cuts


def _walls(inputs: SheetingInputs) -> tuple[Quantity, Fraction]:
    """Return the run of wall film, room by room, and the length of its seams [ft]."""
    runs, seams_ft = [], Fraction(0)
    lap = given(inputs.overlap_in, "in")
    for room in inputs.rooms:
        high_in = inputs.ceiling_height_ft * INCHES_PER_FOOT + room.highest_rise_in()
        down_in = (
            max(high_in - inputs.turn_up_in + inputs.overlap_in, Fraction(1)) if inputs.turn_up_in > 0 else high_in
        )
        tiers = bands(down_in, inputs.wall_film_width_ft * INCHES_PER_FOOT, inputs.overlap_in)
        once = given(room.perimeter_ft(), "ft", "geometry", room.name) + lap
        runs.append(once * tiers)
        seams_ft += once.to("ft") * (tiers - 1) + high_in / INCHES_PER_FOOT
    return added(runs).named(say("sheeting.run", "run"), "ft"), seams_ft


def _cuts(cut: list[list[Fraction]], roll_in: Fraction, show: str) -> tuple[Item, ...]:
    found = []
    for at, lengths in enumerate(cut[:MOST_ITEMS]):
        pieces = ", ".join([measure.shown(length / INCHES_PER_FOOT, "ft", 2, show) for length in lengths])
        left = measure.shown((roll_in - total(lengths)) / INCHES_PER_FOOT, "ft", 2, show)
        roll = say("sheeting.item", "Roll {number}", number=str(at + 1))
        found.append(Item(roll, say("sheeting.item.left", "{length} left", length=left), pieces, PRACTICE))
    if len(cut) > MOST_ITEMS:
        more = words.plural(len(cut) - MOST_ITEMS, "more roll")
        last = say("sheeting.item.and", "And"), more, say("sheeting.item.same", "Cut in the same way.")
        found.append(Item(*last, PRACTICE))
    return tuple(found)


def _cautions(inputs: SheetingInputs) -> tuple[Caution, ...]:
    found = [caution("closed-air")]
    if inputs.floor_work == "wet":
        found.append(caution("wet-plastic"))
    return tuple(found)


def _notes(inputs: SheetingInputs, joints: int) -> tuple[str, ...]:
    wet = say("sheeting.note.wet", "Plastic, not cloth: cloth lets water through to the floor. Over it, paper or felt where boots go, rigid sheets where ladders stand.")  # fmt: skip
    dust = say("sheeting.note.dust", "For dust alone a cloth under the ladder keeps feet from slipping. Film still goes on walls and openings.")  # fmt: skip
    notes = [wet if inputs.floor_work == "wet" else dust]
    if joints:
        told_joints = words.plural(joints, "joint")
        notes.append(say("sheeting.note.joints", "{joints} across a strip: lap as written, and tape both faces.", joints=told_joints))  # fmt: skip
    notes.append(say("sheeting.note.blower", "Turn the blower off before an opening is closed, and open all when the work is done."))  # fmt: skip
    notes.append(say("sheeting.note.tape", "Tape in two steps: low-tack tape on the paint, duct tape on that."))
    return tuple(notes)


def _plan(room: Room, strips: list[Strip], inputs: SheetingInputs) -> Drawing:
    """The first room's floor with its strips, laps drawn as they lie."""
    points = room.outline
    turn = inputs.turn_up_in
    west, south = min([x for x, _ in points]) - turn, min([y for _, y in points]) - turn
    shapes = [Shape(tuple([(x - west, y - south) for x, y in points]), "cut", "room", True)]
    labels = []
    zero = Fraction(0)
    width_in = inputs.roll_width_ft * INCHES_PER_FOOT
    east, north = room.size_ft()
    wide, deep = east * INCHES_PER_FOOT + turn * 2, north * INCHES_PER_FOOT + turn * 2
    for at, one in enumerate(strips):
        start, end = one.along_from, one.along_from + one.length
        low, high = one.low, one.low + width_in
        if one.eastward:
            box = (start - west, max(low - south, zero), end - west, min(high - south, deep))
        else:
            box = (max(low - west, zero), start - south, min(high - west, wide), end - south)
        shapes.append(
            Shape(((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3])), "edge", "none", False)
        )
        if len(strips) <= MOST_ITEMS:
            labels.append(Label(((box[0] + box[2]) / 2, (box[1] + box[3]) / 2), "on", str(at + 1)))
    dimensions = (
        Dimension((turn, zero), (wide - turn, zero), "below", measure.shown(east, "ft", 2, inputs.show_in)),
        Dimension((zero, turn), (zero, deep - turn), "left", measure.shown(north, "ft", 2, inputs.show_in)),
    )
    listed = "; ".join(
        [
            say(
                "sheeting.plan.strip",
                "strip {number} {length}",
                number=str(at + 1),
                length=measure.shown(one.length / INCHES_PER_FOOT, "ft", 2, inputs.show_in),
            )
            for at, one in enumerate(strips[:MOST_ITEMS])
        ]
    )
    return Drawing(
        title=say("sheeting.plan", "Strips on the floor"),
        description=say(
            "sheeting.plan.told", "{room} from above, {east} by {north}: {strips}, {lengths}.",
            room=room.name, east=dimensions[0].text, north=dimensions[1].text, strips=words.plural(len(strips), "strip"), lengths=listed,
        ),
        width=wide,
        height=deep,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=dimensions,
        labels=tuple(labels),
        scale_note=say("sheeting.plan.scale", "{room} from above, to scale, with the turn-up laid flat. North is up.", room=room.name),
    )  # fmt: skip


def _work_out(values: Values) -> Answer:
    inputs = SheetingInputs(
        values.rooms(),
        values.number("ceiling_height_ft"),
        values.number("roll_width_ft"),
        values.number("roll_length_ft"),
        values.number("overlap_in"),
        values.number("turn_up_in"),
        values.number("wall_film_width_ft"),
        values.number("wall_film_length_ft"),
        values.number("floor_film_mil"),
        values.count("registers"),
        values.choice("floor_work"),
        values.choice("pieced") == "yes",
        values.choice("show_in"),
    )
    return sheeting(inputs, values.given)


CALCULATOR = Calculator(
    name="sheeting",
    title="Film for floors and walls",
    summary="Strips, rolls and tape to cover floors, walls and openings",
    verb="Lay the film out",
    fields=(
        ROOMS, HEIGHT, FLOOR_WORK, ROLL_WIDTH, ROLL_LENGTH, OVERLAP, TURN_UP, REGISTERS, PIECED, WALL_WIDTH, WALL_LENGTH, FILM, SHOW_IN,
    ),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'; Den: E 14' S 6' W 4' S 5' W 10' N 11'"), ("ceiling_height_ft", "8")),
    always=("closed-air",),
)  # fmt: skip
