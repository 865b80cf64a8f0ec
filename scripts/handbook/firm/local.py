"""What a firm adds to the registers: its cautions and the limits of its place, checked, and written as the data that `calc` reads.

All is added and nothing taken away: an id of the book's is refused, so each of its cautions, limits and rules stays as it is.
"""

import re
from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from pydantic import BaseModel

from calc.common.inputs import days_of
from calc.decision.questions import WAYS
from calc.evidence.cautions import CAUTIONS
from calc.evidence.limits import Limit, known_place
from calc.evidence.sources import SOURCES
from calc.job.stages import STAGES
from calc.numbers.words import lower, tidy
from handbook.firm.declared import FirmFile, LocalRule
from handbook.firm.read import Reading, dotted
from handbook.lint.checks import NEVER

MODULE = "evidence/local.py"
# Words that name no one place: what stands for federal rules alone, and what the choice of way calls a place that it does not know.
NO_PLACE = ("", "federal", "us", "usa", "unknown", "elsewhere")


def check(firm: FirmFile, reading: Reading) -> None:
    """Tell the faults of the firm's cautions and limits, and each word of the file that is never printed."""
    _never(firm, reading, ())
    known = {one.id for one in CAUTIONS}
    for at, caution in enumerate(firm.cautions):
        if caution.id in known:
            message = f"cautions.{at + 1}.id: {caution.id} is taken. A caution is added under a name of its own; none is changed, and none is taken away. Like: id: our-van"
            reading.fault(("cautions", at, "id"), "CAUTION", message)
        known.add(caution.id)
    limits: set[str] = set()
    meant: dict[str, str] = {}
    for at, rule in enumerate(firm.local_rules):
        where = ("local_rules", at)
        for key, word in [
            ((*where, "place"), rule.place),
            *(((*where, "also", n), one) for n, one in enumerate(rule.also)),
        ]:
            plain = lower(tidy(word))
            if plain in NO_PLACE:
                reading.refuse(key, "PLACE", "it is no one place")
            elif known_place(word) is not None:
                reading.refuse(key, "PLACE", f"the book has rules for {word} already, and they stay")
            elif meant.setdefault(plain, rule.place) != rule.place:
                reading.refuse(key, "PLACE", f"{word} means {meant[plain]} already")
        if rule.topic == "lead" and (rule.building != "any" or rule.unit != "sqft"):
            key = (*where, "building") if rule.building != "any" else (*where, "unit")
            reading.refuse(key, "PLACE", "a limit on lead holds for any building, and counts in sqft")
        if rule.id in limits:
            reading.refuse((*where, "id"), "PLACE", "another limit has this name")
        limits.add(rule.id)
        if _amount(rule.limit) is None:
            reading.refuse((*where, "limit"), "PLACE", "it is no plain number")
        if rule.says.endswith("."):
            reading.refuse((*where, "says"), "PLACE", "it ends with a full stop")
        if rule.review_by <= rule.reviewed:
            reading.refuse((*where, "review_by"), "PLACE", "it is not after the day on which the rule was reviewed")


def _never(value: object, reading: Reading, where: tuple[str | int, ...]) -> None:
    if isinstance(value, BaseModel):
        for name, info in type(value).model_fields.items():
            _never(getattr(value, name), reading, (*where, info.alias or name))
    elif isinstance(value, dict):
        for name, one in value.items():
            _never(one, reading, (*where, name))
    elif isinstance(value, list):
        for at, one in enumerate(value):
            _never(one, reading, (*where, at))
    elif isinstance(value, str):
        for found in NEVER.finditer(value):
            reading.fault(
                where,
                "WORD",
                f"{dotted(where)}: “{found.group()}” is never printed. Say what was found, by whom and when",
            )


def _amount(text: str) -> Fraction | None:
    """The number in `text`, within what a form takes; None where it is none."""
    if not re.fullmatch(r"\d{1,6}(\.\d{1,4})?|\d{1,6}/[1-9]\d{0,3}", text):
        return None
    return Fraction(text)


def way_of(page: str) -> str:
    """Return the way whose page of the book that is, '' for any other page."""
    folder, _, name = page.removesuffix(".md").partition("/")
    return name if folder == "methods" else ""


def left_out(firm: FirmFile) -> list[str]:
    """Return the pages that the edition does without, as an answer names them: those of ways and of the stages of a job."""
    named = {f"methods/{way}" for way, _ in WAYS} | {one.page for one in STAGES}
    return [one for name in firm.pages.leave_out if (one := name.removesuffix(".md")) in named]


def source(firm: FirmFile) -> str:
    """Return the module `calc.evidence.local` of the firm's edition."""
    name = firm.business.name
    sources: list[tuple[str, ...]] = []
    cautions: list[tuple[str, ...]] = []
    places: list[tuple[str, tuple[str, ...]]] = []
    limits: list[Any] = []
    rules: list[tuple[str, ...]] = []
    for one in firm.cautions:
        sources.append((f"firm-{one.id}", one.origin, name, "", "", one.hazard, "quoted", one.date.isoformat()))
        cautions.append((one.id, one.signal, one.hazard, one.consequence, one.avoidance, f"firm-{one.id}"))
    for rule in firm.local_rules:
        known = f"firm-{rule.id}"
        sources.append(
            (known, rule.source, f"As {name} has it", "", "", rule.says + ".", "quoted", rule.reviewed.isoformat())
        )
        limits.append(_limit(rule, known))
        if rule.place not in [place for place, _ in places]:
            same = [one for one in firm.local_rules if one.place == rule.place]
            words = dict.fromkeys(lower(tidy(word)) for one in same for word in (one.place, *one.also))
            places.append((rule.place, tuple(words)))
        # Told to whoever found asbestos, or lead paint: the most careful rule holds, so a limit of the place can only ask for more.
        limit = Limit(*limits[-1])
        says = f"{rule.says}. {days_of(limit)} Ask {rule.ask} before any work."
        rules.append((limit.id, rule.topic, rule.place, says, known, limit.reviewed_on, limit.review_by))
    rows: dict[str, Sequence[object]] = {
        "SOURCES": sources,
        "CAUTIONS": cautions,
        "PLACES": places,
        "LIMITS": limits,
        "RULES": rules,
        "LEFT_OUT": left_out(firm),
    }
    body = "".join(f"{key} = (\n{''.join(f'    {row!r},' + chr(10) for row in held)})\n" for key, held in rows.items())
    return f'"""What this edition adds for its own place and people."""\n\nfrom fractions import Fraction\n\n{body}'


def _limit(rule: LocalRule, known: str) -> tuple[Any, ...]:
    assert known not in [one.id for one in SOURCES]  # the book's ids do not begin with firm-
    amount = _amount(rule.limit)
    assert amount is not None  # checked before
    return (
        f"firm-{rule.id}", rule.place, rule.topic, rule.building, amount, rule.unit, rule.reached == "at", rule.says, rule.ask, known,
        rule.reviewed.isoformat(), rule.review_by.isoformat(),
    )  # fmt: skip
