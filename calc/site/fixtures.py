"""Fixtures: what a lower ceiling does to everything that is fixed to it or stands under it, one by one."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.drops import COMBUSTIBLE, DROPS, drop_in
from calc.common.inputs import HEIGHT
from calc.core.answer import Answer, Calculator, Item
from calc.core.fields import SHOW_IN, Fault, Field, InputFault, Values, entries, entry_faults
from calc.core.lines import Lines
from calc.evidence.cautions import Caution, caution
from calc.numbers import measure, words
from calc.numbers.measure import INCHES_PER_FOOT
from calc.numbers.quantity import given, told
from calc.site.fixture_kinds import KINDS, Fixture, read_fixture
from calc.site.fixture_rules import FITS, NEEDS_WORK, STOPS, Lowering, ceiling_height, state_told, verdict
from calc.text.door import say

COUNTS = (  # of FITS, NEEDS_WORK and STOPS: name, label, rule
    ("fixtures_that_fit", "Fit as they are", "Counted from the list."),
    ("fixtures_with_work", "Need work", "Counted from the list."),
    (
        "fixtures_that_stop",
        "Stop, and call somebody",
        "Counted from the list, and the ceiling itself where it comes too low.",
    ),
)


COVERING = Field(
    name="covering", label="What goes on the ceiling", kind="choice", unit="",
    help="Each lowers the ceiling by so much. Or give the drop itself.",
    example="board-1/2", required=False, choices=tuple([("", "I give the drop below")] + [(name, label) for name, label, _ in DROPS]),
)  # fmt: skip
DROP = Field(
    name="drop_in", label="Lower by", kind="length", unit="in",
    help="From the old board to the new face, with texture that stays between.",
    example="1/2", lowest="1/16", highest="48", required=False,
)  # fmt: skip
BURNS = Field(
    name="face_burns", label="Does the new face burn?", kind="choice", unit="",
    help="Wood does; gypsum does not. In wood a box must be flush.",
    example="no", default="no", choices=(("no", "No: gypsum, plaster, mineral tile"), ("yes", "Yes: wood, fiber, plastic")),
)  # fmt: skip
FIXTURES = Field(
    name="fixtures", label="What is up there", kind="list", unit="",
    help="One a line: what it is, its name, and its measure. Set-back for boxes, height for fans, the gap for doors.",
    example="box hall: 0 in; fan living: 7' 4\"; smoke hall; sprinkler hall: 2 in; cupboard: 1/4 in; room living: 7' 10\"", choices=tuple([(kind.example, kind.label + (": " + kind.means if kind.means else "")) for kind in KINDS]), check=lambda text: entry_faults(text, read_fixture),
)  # fmt: skip


@dataclass(frozen=True)
class FixturesInputs:
    """`drop_in` [in, 1/16 to 48]; `face_burns`; `ceiling_height_ft` [ft] before; `fixtures` as read; `show_in`."""

    drop_in: Fraction
    face_burns: bool
    ceiling_height_ft: Fraction
    fixtures: tuple[Fixture, ...]
    show_in: str


def fixtures(inputs: FixturesInputs, typed: tuple[tuple[str, str], ...]) -> Answer:
    """Return for each fixture whether it fits, what it needs and how much, or a stop with whom to call.

    Raises InputFault where the ceiling would come down to the floor; entries are checked when read. Sources: NFPA 70, 72 and 13, IRC R305 as quoted; the rest is marked.
    """
    show = inputs.show_in
    after_ft = inputs.ceiling_height_ft - inputs.drop_in / INCHES_PER_FOOT
    if after_ft <= 0:
        too_low = measure.shown(inputs.drop_in, "in", 4, show)
        message = say(
            "fixtures.fault.low",
            "A ceiling {height} high cannot come down by {drop}. Lower it by less.",
            height=measure.shown(inputs.ceiling_height_ft, "ft", 2, show),
            drop=too_low,
        )
        raise InputFault((Fault("drop_in", too_low, message, "1/2"),))
    lowering = Lowering(inputs.drop_in, inputs.face_burns, after_ft * INCHES_PER_FOOT, show)
    found = [verdict(one, lowering) for one in inputs.fixtures]
    high_enough, height_told = ceiling_height(lowering)
    if not high_enough:
        low = say("fixtures.ceiling.low", "It comes down to {height}.", height=lowering.told(lowering.after_in))
        ceiling = say("fixtures.ceiling", "The ceiling itself")
        found.append((STOPS, Item(ceiling, state_told(STOPS), low + " " + height_told, ("irc-r305",))))
    items = [item for _, item in found]
    counts = [len([state for state, _ in found if state == wanted]) for wanted in (FITS, NEEDS_WORK, STOPS)]
    lines = Lines("fixtures", show)
    drop = lines.add(
        name="drop_in",
        label="The ceiling comes down by",
        unit="in",
        places=4,
        rule="Old board to new face.",
        amount=given(inputs.drop_in, "in"),
    )
    lines.add(
        name="lower_height_ft", label="Ceiling height afterwards", unit="ft", places=2, rule="Height before, less the drop.",
        amount=(given(inputs.ceiling_height_ft, "ft") - drop).cited("geometry"),
    )  # fmt: skip
    counted = say("fixtures.counted", "{all} in all", all=words.whole(len(items)))
    for at, (name, label, rule) in enumerate(COUNTS):
        lines.add(
            name=name, label=label, unit="", places=0, rule=rule, amount=told(counts[at], "", counted, "geometry")
        )
    comes_down = lines.shown("drop_in")
    if counts[2]:
        figure = words.plural(counts[2], "stop")
        under = say("fixtures.figure.stop", "before the ceiling may come down by {drop}", drop=comes_down)
    elif counts[1]:
        needing = words.plural(counts[1], "fixture needs", "fixtures need")
        figure = say("fixtures.work", "{fixtures} work", fixtures=needing)
        under = say("fixtures.figure.work", "for a ceiling {drop} lower", drop=comes_down)
    else:
        figure = say("fixtures.fit", "All fit")
        under = say("fixtures.figure.fit", "under a ceiling {drop} lower, by these figures", drop=comes_down)
    return Answer(
        calculator="fixtures",
        inputs=typed,
        figure=figure,
        figure_label=under,
        sentence=say(
            "fixtures.sentence", "{fits}, {work}, {stops}. The ceiling will be {height} high.",
            fits=words.plural(counts[0], "fits", "fit"), work=words.plural(counts[1], "needs work", "need work"),
            stops=words.plural(counts[2], "stops", "stop"), height=lines.shown("lower_height_ft"),
        ) + " " + height_told,
        lines=lines.tuple(),
        cautions=_cautions(inputs.fixtures),
        notes=(
            say("fixtures.note.heights", "Heights are from finished floor to finished ceiling, at the lowest place."),
            say("fixtures.note.code", "The code that your building department has adopted governs, and may be an older or stricter edition."),
            say("fixtures.note.who", "The one who fits a thing by law is the one who moves it: electrician, sprinkler contractor, alarm company."),
        ),
        drawing=None,
        items=tuple(items),
        items_title=say("fixtures.items", "One by one"),
    )  # fmt: skip


def _cautions(found: tuple[Fixture, ...]) -> tuple[Caution, ...]:
    words_used = [one.kind for one in found]
    cautions = []
    for kinds, caution_id in (
        (("sprinkler",), "sprinkler-head"),
        (("box", "light", "recessed", "fan"), "electrician"),
        (("smoke", "co"), "alarm-back"),
        (("fan",), "fan-height"),
    ):
        if [kind for kind in kinds if kind in words_used]:
            cautions.append(caution(caution_id))
    return tuple(cautions)


def _work_out(values: Values) -> Answer:
    covering = values.choice("covering")
    drop = values.number_or_none("drop_in")
    inputs = FixturesInputs(
        drop_in(covering) if drop is None else drop,
        values.choice("face_burns") == "yes" or covering in COMBUSTIBLE,
        values.number("ceiling_height_ft"),
        tuple([read_fixture(entry) for entry in entries(values.choice("fixtures"))]),
        values.choice("show_in"),
    )
    return fixtures(inputs, values.given)


CALCULATOR = Calculator(
    name="fixtures",
    title="What a lower ceiling does",
    summary="Boxes, fans, alarms, doors and heights under a lower ceiling",
    verb="Look at each",
    fields=(COVERING, DROP, BURNS, HEIGHT, FIXTURES, SHOW_IN),
    work_out=_work_out,
    example=(("covering", "board-1/2"), ("ceiling_height_ft", "8"), ("fixtures", "box hall: 0 in; fan living: 7' 4\"; smoke hall; sprinkler hall: 1 in; cupboard: 1/4 in; room living: 8'")),
    one_of=("covering", "drop_in"),
    sources=tuple([source for kind in KINDS for source in kind.sources]),
)  # fmt: skip
