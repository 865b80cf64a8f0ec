"""How the rows of the choice of way are told: each text of theirs under a key of its own."""

from calc.core.fields import Field
from calc.decision.questions import ACTIONS, QUESTIONS, WAYS, action, question
from calc.decision.rule import STATES, DecisionRule
from calc.decision.rules import RULES
from calc.evidence.limits import PLACES, place_told
from calc.numbers import words
from calc.text.door import say

_WAYS = dict(WAYS)
_FORM = "field.decision."  # a question is told by the texts of its field in the form, so that each has one key


def way_told(way: str) -> str:
    """Return the name of the way of that id. Raises KeyError where there is none."""
    return say("way." + way, _WAYS[way])


def way_within_told(way: str) -> str:
    """Return the name of the way as it stands within a sentence. Raises KeyError where there is none."""
    return say("way." + way + ".within", words.lower(_WAYS[way]))


def state_told(rank: int) -> str:
    """Return the state of that rank."""
    return say(_state_key(STATES[rank]), STATES[rank])


def action_told(action_id: str) -> str:
    """Return what to do, by its id. Raises KeyError where there is none."""
    return say("do." + action_id, action(action_id).text)


def rule_told(rule: DecisionRule) -> str:
    """Return the reason that a rule gives; one of an edition's own in its own words, which may hold any mark."""
    return rule.says if rule.local else say("rule." + rule.id, rule.says)


def unknown_told(name: str) -> str:
    """Return what is said while the question of that name has no answer."""
    return say("unknown." + name, question(name).unknown)


def label_told(field: Field) -> str:
    """Return what a field of the form is called: a question, or the figure that tells its answer."""
    return say(_FORM + field.name + ".label", field.label)


def why_told(name: str) -> str:
    """Return why the question of that name is asked."""
    return say(_FORM + name + ".why", question(name).field.why)


def choice_told(field: Field, value: str) -> str:
    """Return what a choice of a field means; what is none of its choices as it was typed."""
    for known, label in field.choices if field.kind == "choice" else ():
        if known == value:
            return say(_FORM + field.name + ".choice." + value, label)
    return value


def answer_told(name: str, value: str) -> str:
    """Return an answer to the question of that name; a place by its name, and what is no answer of it as it is."""
    one = question(name)
    if one.field.kind == "choice":
        return choice_told(one.field, value)
    for known, label in one.answers:
        if known == value and label != value:
            return say("answer." + name + "." + value, label)
    return place_told(value) if name == "place" and value in [place for place, _ in PLACES] else value


def both_told(name: str, value: str) -> str:
    """Return a question and its answer as one phrase."""
    field, answer = question(name).field, answer_told(name, value)
    if field.label.endswith("?"):
        return say("decision.answered", "{question} {answer}", question=label_told(field), answer=answer)
    return say("decision.named", "{name}: {answer}", name=label_told(field), answer=answer)


def texts() -> list[tuple[str, str]]:
    """Return the (key, English) pairs of all rows but those that an edition adds; of questions what their fields do not hold."""
    found = []
    for way, name in WAYS:
        found += [("way." + way, name), ("way." + way + ".within", words.lower(name))]
    found += [(_state_key(name), name) for name in STATES]
    found += [("do." + one.id, one.text) for one in ACTIONS]
    found += [("rule." + rule.id, rule.says) for rule in RULES if not rule.local]
    for asked in QUESTIONS:
        name = asked.field.name
        found.append(("unknown." + name, asked.unknown))
        if asked.field.kind != "choice":
            found += [("answer." + name + "." + value, label) for value, label in asked.answers if label != value]
    return found


def _state_key(name: str) -> str:
    return "state." + name.replace(" ", "-")
