"""Figures that other forms ask for too, and what each means for a question of the choice of way: typed once, it counts in
both places. Data, and the one way to read it."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import YEAR_BUILT
from calc.core.fields import Field, Values
from calc.decision.questions import UNKNOWN, question
from calc.decision.told import answer_told, choice_told, label_told
from calc.numbers import words
from calc.text.door import say

LEAD_YEAR = Fraction(1978)  # first year of homes without lead paint [year], 40 CFR 745.103
TIGHT_FT, SPARE_FT, HIGH_FT = (
    Fraction(85, 12),
    Fraction(87, 12),
    Fraction(10),
)  # 7 ft and an inch, three inches; rails [ft]
DEEP_IN = Fraction(1, 4)  # texture deeper than this counts as deep [in], common practice
CLOSE_IN, APART_IN = (
    Fraction(16),
    Fraction(24),
)  # joists for thin board, and for any ceiling board [in], a maker's submittal


@dataclass(frozen=True)
class Band:
    """`answer` holds up to `limit` [in the field's unit], the limit itself only where `with_it`; None has no limit."""

    answer: str
    limit: Fraction | None
    with_it: bool = False


@dataclass(frozen=True)
class Shared:
    """`field` tells the answer to `question` by `bands`, or where it is a choice by `means` (value, answer) pairs; an answer
    that says more precisely the same, as `finer` (answer, finer answers) pairs tell, does not contradict it."""

    question: str
    field: Field
    bands: tuple[Band, ...] = ()
    means: tuple[tuple[str, str], ...] = ()
    finer: tuple[tuple[str, tuple[str, ...]], ...] = ()


SHARED = (
    Shared("built", YEAR_BUILT, (Band("before-1978", LEAD_YEAR), Band("later", None))),
    Shared(
        "times_painted",
        Field(
            name="texture_painted", label="Was it ever painted?", kind="choice", unit="",
            help="Comes from the form for wetting.", example="no", default=UNKNOWN, rare=True,
            choices=(("unknown", "Not known"), ("no", "No"), ("yes", "Yes")),
        ),
        means=(("no", "never"), ("yes", "painted")),
        finer=(("painted", ("once", "often")),),
    ),
    Shared(
        "texture_depth",
        Field(
            name="texture_depth_in", label="Depth of the texture", kind="length", unit="in",
            help="From the board to the tips, by eye. Do not touch it.",
            example="3/16", lowest="0", highest="1", required=False,
        ),
        (Band("thin", DEEP_IN, True), Band("deep", None)),
    ),
    Shared(
        "joists",
        Field(
            name="joist_spacing_in", label="Joists apart", kind="length", unit="in",
            help="Middle to middle: 12, 16, 19.2 or 24 in.",
            example="16", lowest="8", highest="48", required=False,
        ),
        (Band("close", CLOSE_IN, True), Band("apart", APART_IN, True), Band("far", None)),
    ),
    Shared(
        "height",
        Field(
            name="ceiling_height_ft", label="Ceiling height", kind="length", unit="ft",
            help="Floor to ceiling, at its lowest place.",
            example="8' 1\"", lowest="4", highest="40", required=False,
        ),
        (Band("low", TIGHT_FT), Band("spare", SPARE_FT), Band("usual", HIGH_FT, True), Band("high", None)),
    ),
)  # fmt: skip
"""A figure counts before the answer to its question; where the two contradict each other neither counts."""


def meaning(shared: Shared, values: Values) -> str:
    """Return the answer that the figure of `shared` gives to its question, '' where it was not given."""
    if shared.means:
        return dict(shared.means).get(values.choice(shared.field.name), "")
    number = values.number_or_none(shared.field.name)
    if number is None:
        return ""
    for band in shared.bands:
        if band.limit is None or number < band.limit or (band.with_it and number == band.limit):
            return band.answer
    return ""


def share(facts: dict[str, str], values: Values) -> tuple[tuple[str, str], ...]:
    """Put into `facts` what the shared figures of `values` tell, and return (both, why) of each that contradicts its answer:
    that question then counts as not known."""
    clashes = []
    for shared in SHARED:
        tells = meaning(shared, values)
        held = facts[shared.question]
        if not tells or held in dict(shared.finer).get(tells, ()):
            continue
        if held in (UNKNOWN, tells):
            facts[shared.question] = tells
        else:
            facts[shared.question] = UNKNOWN
            asked = question(shared.question).field
            typed = choice_told(shared.field, values.choice(shared.field.name))
            both = words.listed(
                [
                    _quoted(label_told(asked), answer_told(shared.question, held)),
                    _quoted(label_told(shared.field), typed),
                ]
            )
            why = say("decision.disagree", "{both}. They do not agree, so neither counts.", both=both)
            clashes.append((why, "common-practice"))
    return tuple(clashes)


def _quoted(label: str, answer: str) -> str:
    return "“" + say("decision.answered", "{question} {answer}", question=label, answer=answer) + "”"
