"""The rules of the choice of way: what is wrong with them, and the chart that is printed from them.

A row that can never fire, two rows that contradict each other, a name that does not exist and a reason without a source
are faults of the module that holds the row, told with its line like those of a page.
"""

import datetime
import json
import re
from pathlib import Path
from typing import Any
from urllib.parse import quote

from calc import catalogue
from calc.decision import hazard_rules, questions, work_rules
from calc.decision.rules import EFFECTS, RULES, DecisionRule
from calc.evidence import cautions, local, sources
from calc.render.escape import escaped
from calc.render.html import number_of
from handbook.content.faults import ContentFault, relative
from handbook.evidence import once

CALC = Path(catalogue.__file__).parent
PATHS = (Path(hazard_rules.__file__), Path(work_rules.__file__))
CEILINGS = Path(__file__).resolve().parents[3] / "docs" / "evidence" / "ceilings.json"
MARKS = {"closed": "✕", "not known": "?", "open after": "◐", "note": "·"}


def answers() -> dict[str, dict[str, str]]:
    """Return {question: {answer: label}}."""
    return {one.field.name: dict(one.answers) for one in questions.QUESTIONS}


def place(rule: DecisionRule) -> tuple[str, int]:
    """Return the module and the line that hold a row; the first line of all where none does."""
    for path in PATHS:
        for at, row in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if f'DecisionRule("{rule.id}"' in row:
                return relative(path, CALC.parent), at
    return relative(PATHS[0], CALC.parent), 1


def faults(rules: tuple[DecisionRule, ...] = RULES) -> list[ContentFault]:
    """Return every fault of the rules, each at the line of its row."""
    known = answers()
    found = []

    def tell(rule: DecisionRule, code: str, message: str) -> None:
        shown, line = place(rule)
        found.append(ContentFault(shown, line, 5, code, f"the rule {rule.id} {message}"))

    seen: set[str] = set()
    for at, rule in enumerate(rules):
        if rule.id in seen:
            tell(rule, "RULE-NAME", "stands twice")
        seen.add(rule.id)
        for message in _unknown_names(rule, known):
            tell(rule, "RULE-NAME", message)
        for message in _unsourced(rule):
            tell(rule, "RULE-SOURCE", message)
        for message in _never(rule, known, rules):
            tell(rule, "RULE-NEVER", message)
        for other in rules[:at]:
            ways = [way for way in rule.ways if way in other.ways]
            same = dict(rule.when) == dict(other.when) and len(rule.when) == len(other.when)
            if ways and same and rule.effect != other.effect:
                tell(rule, "RULE-CLASH", f"says {rule.effect}, and {other.id} says {other.effect} of the same answers")
    return found


def _unknown_names(rule: DecisionRule, known: dict[str, dict[str, str]]) -> list[str]:
    found = [f"speaks of {way}, which is no way" for way in rule.ways if way not in dict(questions.WAYS)]
    if not rule.ways:
        found.append("speaks of no way")
    if rule.effect not in EFFECTS:
        found.append(f"has the effect {rule.effect}; use {', '.join(EFFECTS)}")
    for name, values in rule.when:
        if name not in known:
            found.append(f"asks for {name}, which is no question")
        found += [
            f"waits for {value}, which is no answer to {name}"
            for value in values
            if value not in known.get(name, values)
        ]
    known_actions = [one.id for one in questions.ACTIONS]
    found += [f"names {one}, which is nothing to do" for one in rule.actions if one not in known_actions]
    if rule.caution and rule.caution not in [one.id for one in cautions.CAUTIONS]:
        found.append(f"names {rule.caution}, which is no caution")
    return found


def _unsourced(rule: DecisionRule) -> list[str]:
    found = []
    if rule.source not in [one.id for one in sources.SOURCES]:
        found.append(f"has no source in the register: “{rule.source}”")
    if not rule.says.endswith("."):
        found.append("gives no reason in a sentence")
    for day in (rule.reviewed_on, rule.review_by):
        try:
            datetime.date.fromisoformat(day)
        except ValueError:
            found.append(f"has no day where “{day}” stands")
    return found


def _never(rule: DecisionRule, known: dict[str, dict[str, str]], rules: tuple[DecisionRule, ...]) -> list[str]:
    """A rule never fires that asks for nothing that can be answered, or only for what another rule calls a contradiction."""
    left: dict[str, set[str]] = {}
    for name, values in rule.when:
        allowed = {value for value in values if value in known.get(name, {})}
        left[name] = left.get(name, allowed) & allowed
    if not rule.when:
        return ["has no answer to wait for"]
    if any(not values for values in left.values()):
        return ["can never fire: no answer fits"]
    for other in rules:
        clashing = dict(other.when)
        if (
            other is not rule
            and other.clash
            and other.sure
            and all(name in left and left[name] <= set(clashing[name]) for name in clashing)
        ):
            return [f"can never fire: its answers contradict each other, says {other.id}"]
    return []


def to_review(today: datetime.date) -> list[str]:
    """Return a line for each rule whose review date has passed; it warns and stops nothing. A rule that an edition adds for a place
    stands on a limit of that place, and is told with it."""
    found = []
    of_places = [row[4] for row in local.RULES]
    for rule in RULES:
        if rule.source not in of_places and datetime.date.fromisoformat(rule.review_by) < today:
            shown, line = place(rule)
            found.append(
                f"{shown}:{line}:5: REVIEW the rule {rule.id} was due for another look at its source on {rule.review_by}"
            )
    return found


def condition(rule: DecisionRule) -> str:
    """Return the answers that a rule waits for, as a person reads them."""
    parts = []
    for name, values in rule.when:
        one = questions.question(name)
        labels = dict(one.answers)
        parts.append(f"{one.field.label} {' or '.join(labels[value] for value in values)}")
    return "; ".join(re.sub(r"(?<![?])$", ".", part) for part in parts).replace(".;", ";")


def chart() -> str:
    """Return the chart of all rules as HTML: a row a rule, a column a way, in the order in which questions are asked."""
    order = {one.field.name: at for at, one in enumerate(questions.QUESTIONS)}
    rules = sorted(
        RULES,
        key=lambda rule: (
            order[rule.when[-1][0] if rule.when[0][0] == "asbestos_result" else rule.when[0][0]],
            -EFFECTS.index(rule.effect),
        ),
    )
    heads = "".join(f'<th scope="col"><span>{escaped(name)}</span></th>' for _, name in questions.WAYS)
    rows = []
    for rule in rules:
        marks = "".join(
            f'<td class="says">{MARKS[rule.effect]}<span class="unseen"> {rule.effect}</span></td>'
            if way in rule.ways
            else "<td></td>"
            for way, _ in questions.WAYS
        )
        source = f' <a class="mark" href="#source-{rule.source}"><span class="unseen">Source </span>{number_of(rule.source)}</a>'
        rows.append(
            f'<tr><th scope="row">{escaped(condition(rule))}</th>{marks}<td>{escaped(rule.says)}{source}</td></tr>'
        )
    return (
        '<section class="wide chart" tabindex="0" aria-label="Chart of ways"><table><thead><tr><th scope="col">If you answer</th>'
        f'{heads}<th scope="col">Why</th></tr></thead><tbody>{"".join(rows)}</tbody></table></section>'
    )  # fmt: skip


def question_list() -> str:
    """Return every question with its answers, why it is asked and how to find out, as HTML."""
    rows = []
    for one in questions.QUESTIONS:
        action = questions.action(one.action)
        choices = "; ".join(escaped(label) for _, label in one.answers)
        after = "Only after a clear result: " if action.touches else ""
        rows.append(
            f"<li><b>{escaped(one.field.label)}</b> {escaped(one.field.help)}<br>{choices}.<br>"
            f"Why: {escaped(one.field.why)} How: {escaped(after + action.text)}</li>"
        )
    return f'<ol class="questions">{"".join(rows)}</ol>'


def read_ceilings() -> list[dict[str, Any]]:
    """Return the ceilings, from the file that the tests run on."""
    found: list[dict[str, Any]] = json.loads(CEILINGS.read_text(encoding="utf-8"))
    return found


def ceilings() -> str:
    """Return the ceilings as HTML: story, answers, first thing to do, state of each way, and why."""
    parts = []
    for one in read_ceilings():
        answer, _ = once.work_out("decision", one["facts"])
        assert answer is not None  # the tests hold each of them
        link = "../../prepare/choose/#decision?" + "&".join(
            f"{name}={quote(value)}" for name, value in one["facts"].items()
        )
        told = "; ".join(
            f"{questions.question(name).field.label} {dict(questions.question(name).answers)[value]}"
            for name, value in one["facts"].items()
        )
        states = "".join(f"<li>{escaped(item.name)}: <b>{item.state}</b></li>" for item in answer.items)
        parts.append(
            f'<section class="ceiling" id="{one["id"]}"><h2>{escaped(one["title"])}</h2><p>{escaped(one["story"])}</p>'
            f'<p><b>{escaped(answer.sentence)}</b></p><ul class="states">{states}</ul><p>{escaped(one["why"])}</p>'
            f'<p class="help">Answers: {escaped(told)}.</p><p><a href="{escaped(link)}">Open it in the guide</a></p></section>'
        )
    return "".join(parts)
