"""What is asked to see the ways side by side: what a plan asks, the questions of the choice of way, and what an hour costs."""

from fractions import Fraction

from calc.core.fields import SHOW_IN, Field, Values
from calc.decision.questions import QUESTIONS
from calc.decision.shared_figures import SHARED, share
from calc.job.plan_inputs import JOB, facts_given, folded

RATE = Field(
    name="rate_per_hour", label="What an hour of work costs", kind="rate", unit="",
    help="Your own money, for one person. Leave it empty to see hours alone.",
    example="45", lowest="0", highest="10000", required=False,
)  # fmt: skip


def _fields() -> tuple[Field, ...]:
    """The fields of a job, then every question of the choice of way with the figure that tells its answer, each once."""
    found = list(JOB) + [RATE]
    held = [one.name for one in found]
    for one in QUESTIONS:
        for field in [shared.field for shared in SHARED if shared.question == one.field.name] + [one.field]:
            if field.name not in held:
                found.append(folded(field))
    return tuple(found) + (SHOW_IN,)


FIELDS = _fields()


def facts_and_clashes(values: Values) -> tuple[dict[str, str], tuple[tuple[str, str], ...]]:
    """Return the answer to each question by its name, and (both, why) of each figure that contradicts one.

    A figure that stands as the form has it answers nothing: nobody has measured it.
    """
    facts = facts_given(values)
    numbers: dict[str, Fraction] = {}
    for field in FIELDS:
        number = values.number_or_none(field.name)
        if number is not None and values.choice(field.name) != field.default:
            numbers[field.name] = number
    return facts, share(facts, Values(values.given, numbers, ()))
