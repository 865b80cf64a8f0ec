"""What a firm adds to the registers: its cautions and the limits of its place, checked, and written as the data that `calc` reads.

All is added and nothing taken away: an id of the book's is refused, so each of its cautions, limits and rules stays as it is.
"""

import re
from collections.abc import Sequence
from fractions import Fraction

from pydantic import BaseModel

from calc.evidence.cautions import CAUTIONS
from calc.evidence.limits import known_place
from calc.evidence.sources import SOURCES
from calc.numbers.words import lower
from handbook.firm.declared import FirmFile, LocalRule
from handbook.firm.read import Reading, dotted
from handbook.lint.checks import NEVER

MODULE = "evidence/local.py"
NO_PLACE = ("", "federal", "us", "usa")


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
    for at, rule in enumerate(firm.local_rules):
        where = ("local_rules", at)
        for word in (rule.place, *rule.also):
            if known_place(word) is not None:
                key = (*where, "place") if word == rule.place else (*where, "also")
                reading.refuse(
                    key,
                    "PLACE",
                    f"the book has rules for {word} already, and they stay"
                    if word.lower() not in NO_PLACE
                    else "it is no one place",
                )
        if rule.id in limits:
            reading.refuse((*where, "id"), "PLACE", "another limit has this name")
        limits.add(rule.id)
        if _amount(rule.limit) is None:
            reading.refuse((*where, "limit"), "PLACE", "it is no number above 0")
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
    """The number in `text`, above 0 and within what a form takes; None where it is none."""
    if not re.fullmatch(r"\d{1,6}(\.\d{1,4})?|\d{1,6}/[1-9]\d{0,3}", text):
        return None
    return Fraction(text) or None


def source(firm: FirmFile) -> str:
    """Return the module `calc.evidence.local` of the firm's edition."""
    name = firm.business.name
    sources: list[tuple[str, ...]] = []
    cautions: list[tuple[str, ...]] = []
    places: list[tuple[str, tuple[str, ...]]] = []
    limits: list[tuple[object, ...]] = []
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
            words = dict.fromkeys(lower(word) for one in same for word in (one.place, *one.also))
            places.append((rule.place, tuple(words)))
            # Told to whoever found asbestos: the most careful rule holds, so a limit of the place can only ask for more.
            says = f"{rule.says}. Ask {rule.ask} before any work."
            rules.append(
                (f"firm-{rule.id}", rule.place, says, known, rule.reviewed.isoformat(), rule.review_by.isoformat())
            )
    rows: dict[str, Sequence[object]] = {
        "SOURCES": sources,
        "CAUTIONS": cautions,
        "PLACES": places,
        "LIMITS": limits,
        "RULES": rules,
    }
    body = "".join(f"{key} = (\n{''.join(f'    {row!r},' + chr(10) for row in held)})\n" for key, held in rows.items())
    return f'"""What this edition adds for its own place and people."""\n\nfrom fractions import Fraction\n\n{body}'


def _limit(rule: LocalRule, known: str) -> tuple[object, ...]:
    assert known not in [one.id for one in SOURCES]  # the book's ids do not begin with firm-
    amount = _amount(rule.limit)
    assert amount is not None  # checked before
    return (
        f"firm-{rule.id}", rule.place, "asbestos", rule.building, amount, rule.unit, rule.reached == "at", rule.says, rule.ask, known,
        rule.reviewed.isoformat(), rule.review_by.isoformat(),
    )  # fmt: skip
