"""Decision: which of eight ways are open for this ceiling, why, what would change it, and what to do next."""

from calc.core.answer import Answer, Branch, Calculator, Item, Listing
from calc.core.fields import SHOW_IN, Field, Values
from calc.core.lines import Lines
from calc.decision.questions import ELSEWHERE, QUESTIONS, UNKNOWN, WAYS, question
from calc.decision.rule import STATES
from calc.decision.rules import RULES
from calc.decision.shared_figures import SHARED, share
from calc.decision.told import action_told, label_told, state_told, way_told, why_told
from calc.decision.verdict import (
    AFTER,
    CLEARED,
    CLOSED,
    NOT_KNOWN,
    OPEN,
    Look,
    cleared,
    each_once,
    fires,
    settled,
    stands,
)
from calc.evidence.limits import known_place, place_told
from calc.numbers import words
from calc.numbers.quantity import told
from calc.text.door import say

__all__ = [
    "AFTER", "CLEARED", "CLOSED", "NOT_KNOWN", "OPEN", "STATES", "cleared", "decision", "facts_of", "fires", "settled", "stands",
]  # fmt: skip


def facts_of(given: dict[str, str]) -> dict[str, str]:
    """Return the answer to each question by its name, 'unknown' where none was given; a place by the name that the book
    has for it, or 'elsewhere'."""
    facts = dict([(one.field.name, given.get(one.field.name, "") or UNKNOWN) for one in QUESTIONS])
    place = known_place(given.get("place", ""))
    facts["place"] = ELSEWHERE if place is None else place or UNKNOWN
    return facts


def decision(
    facts: dict[str, str],
    given: tuple[tuple[str, str], ...],
    place: str,
    show_in: str,
    contradictions: tuple[tuple[str, str], ...] = (),
) -> Answer:
    """Return the state of each way with its reasons, what to do next, and which question is most worth an answer.

    `facts` hold one answer for each of `QUESTIONS` by its name, 'unknown' where it is not known; `given` is what was typed;
    `place` as it was typed; `show_in` [-] 'customary' or 'metric'; `contradictions` are (both, source) of figures that do not
    agree with an answer. Raises nothing. Sources: each rule names its own. Where the asbestos question is not settled, the
    answer holds both branches: what each way would be if nothing is found, and if something is.
    """
    look = Look(facts)
    by_state = [
        [way_told(way) for at, (way, _) in enumerate(WAYS) if look.ranks[at] == rank] for rank in range(len(STATES))
    ]
    steps = look.steps()
    asks = look.asks()
    clashes = contradictions + look.clashes()
    listings = []
    if clashes:
        listings.append(Listing("contradictions", say("decision.clashes", "These answers do not go together"), clashes))
    rows = tuple([(action_told(one), "") for one in steps])
    listings.append(Listing("next", say("decision.next", "What to do next, in this order"), rows))
    if asks:
        title = say("decision.best_question", "The question most worth an answer")
        listings.append(Listing("best_question", title, ((_asked(asks[0]), ""),)))
    items = [
        Item(
            way_told(way), state_told(look.ranks[at]), look.change(at), (), look.reasons(at), "methods/" + way,
            review_by=look.review_by(at), state_name=STATES[look.ranks[at]],
        )
        for at, (way, _) in enumerate(WAYS)
    ]  # fmt: skip
    if look.settled:
        figure = say("decision.figure", "{ways} open", ways=words.plural(len(by_state[OPEN]), "way"))
        label = say(
            "decision.label", "of eight; {after} open after something, {unknown} not known and {closed} closed",
            after=words.whole(len(by_state[AFTER])), unknown=words.whole(len(by_state[NOT_KNOWN])),
            closed=words.whole(len(by_state[CLOSED])),
        )  # fmt: skip
    else:
        figure = say("decision.figure.unsettled", "No way is open yet")
        label = say(
            "decision.label.unsettled",
            "that touches it: no laboratory has settled it. Below stand both outcomes.",
        )
    return Answer(
        calculator="decision",
        inputs=given,
        figure=figure,
        figure_label=label,
        sentence=say("decision.sentence", "First: {step}", step=action_told(steps[0])),
        lines=_counts(by_state, show_in).tuple(),
        cautions=look.cautions(),
        notes=_notes(place),
        drawing=None,
        items=tuple(items),
        items_title=say("decision.items", "The eight ways now, and why"),
        listings=tuple(listings),
        asks=asks,
        branches=_branches(look),
        facts=tuple(facts.items()),
    )


def _asked(name: str) -> str:
    """A question, why it is asked, and how to find its answer out."""
    return say(
        "decision.asked", "{question} {why} {how}", question=label_told(question(name).field), why=why_told(name),
        how=action_told(question(name).action),
    )  # fmt: skip


def _branches(look: Look) -> tuple[Branch, ...]:
    """What each way would be by the two ways in which the asbestos question can be settled; none where it is."""
    found = []
    for place, branch in enumerate(look.branches()):
        items = [
            Item(
                way_told(way), state_told(branch.ranks[at]), "", (), branch.first_reason(at), "methods/" + way,
                state_name=STATES[branch.ranks[at]],
            )
            for at, (way, _) in enumerate(WAYS)
        ]  # fmt: skip
        name, title, text = _outcome(place)
        found.append(Branch(name, title, text, tuple(items)))
    return tuple(found)


def _outcome(place: int) -> tuple[str, str, str]:
    """(name, title, what to know) of the first of the two, that nothing is found, or the second."""
    if place == 0:
        return (
            "if-none", say("decision.if_none", "If the laboratory finds none, in every layer"),
            say("decision.if_none.text", "These would be the ways then, by what you answered. None of it holds before the report is in your hand."),
        )  # fmt: skip
    return (
        "if-some", say("decision.if_some", "If it finds some, in any layer"),
        say("decision.if_some.text", "However little. Then you leave it alone, and a licensed contractor is the one who touches it."),
    )  # fmt: skip


COUNTED_AS = (  # the line of each state's count: its name, its label, what the count means
    ("ways_open", "Ways open", "No rule stands against it."),
    ("ways_open_after", "Ways open after", "No rule closes it, and one asks for something first."),
    ("ways_not_known", "Ways not known", "An answer is missing, or a result does not cover it, and a rule could close it."),
    ("ways_closed", "Ways closed", "A rule closes it."),
)  # fmt: skip


def _counts(by_state: list[list[str]], show_in: str) -> Lines:
    lines = Lines("decision", show_in)
    for rank, (name, label, rule) in enumerate(COUNTED_AS):
        names = by_state[rank]
        counted = told(len(names), "", words.listed(names) or say("decision.none", "none"), "common-practice")
        lines.add(name=name, label=label, unit="", places=0, rule=rule, amount=counted)
    return lines


def _notes(place: str) -> tuple[str, ...]:
    known = known_place(place)
    if known is None:
        local = say(
            "decision.note.elsewhere", "This book holds no rules for {place}. Local rules were not checked: ask the state and the city.",
            place=words.quoted(place),
        )  # fmt: skip
    elif known:
        local = say(
            "decision.note.place", "This book holds a few rules of {place}, not all of them. Ask its offices before any work.", place=place_told(known)
        )  # fmt: skip
    else:
        local = say("decision.note.nowhere", "No place was given. Only federal rules were looked at: ask the state and the city.")  # fmt: skip
    return (
        local,
        say("decision.note.open", "Open means that no rule here stands against it. Each way has hold points of its own, and licensed trades decide."),
        say("decision.note.unknown", "An answer that is not known counts as the worst that it can be. The order of what to do is common practice."),
        say("decision.note.cover", "Covering is not harmless: screws and glue disturb the texture too."),
    )  # fmt: skip


def _fields() -> tuple[Field, ...]:
    """Every question as a field, each after the figure that tells its answer where another form asks for that figure."""
    found = []
    for one in QUESTIONS:
        found += [shared.field for shared in SHARED if shared.question == one.field.name] + [one.field]
    return tuple(found) + (SHOW_IN,)


def _work_out(values: Values) -> Answer:
    given = dict(values.given)
    facts = facts_of(given)
    contradictions = share(facts, values)
    return decision(facts, values.given, given.get("place", ""), values.choice("show_in"), contradictions)


CALCULATOR = Calculator(
    name="decision",
    title="Your ceiling, question by question",
    summary="Which of eight ways are open for this ceiling, and why",
    verb="Show the ways",
    fields=_fields(),
    work_out=_work_out,
    example=(
        ("asbestos_result", "none"), ("result_rooms", "this"), ("result_layers", "all"), ("sag", "no"), ("stains", "none"),
        ("loose_board", "tight"), ("cracks", "fine"), ("heated_ceiling", "no"), ("loose_fill", "other"), ("sprinklers", "no"), ("built", "later"), ("times_painted", "never"), ("sheen", "flat"),
        ("texture_depth", "thin"), ("hand_test", "holds"), ("patch_test", "wet"), ("material", "board"), ("above", "rooms"),
        ("joists", "close"), ("layers_up", "one"), ("joists_carry", "yes"), ("rated_ceiling", "no"),
        ("who_works", "owner"), ("building", "house"), ("height", "usual"), ("may_drop", "yes"), ("occupied", "yes"),
        ("household", "adults"), ("floors", "covered"), ("finish_wanted", "smooth"), ("light", "soft"),
    ),
    sources=tuple(each_once([rule.source for rule in RULES])) + ("epa-asbestos-in-your-home", "common-practice", "cfr-745-83"),
    always=("asbestos-layers", "local-rules"),
)  # fmt: skip
