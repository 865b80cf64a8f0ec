"""Decision: which of eight ways are open for this ceiling, why, what would change it, and what to do next."""

from fractions import Fraction

from calc import words
from calc.answer import Answer, Calculator, Item, Line, Listing, line
from calc.decision_facts import ACTIONS, ELSEWHERE, QUESTIONS, UNKNOWN, WAYS, action, question
from calc.decision_rules import EFFECTS, RULES, DecisionRule
from calc.fields import SHOW_IN, Values
from calc.rules import known_place
from calc.signals import Caution, caution, in_order

STATES = ("open", "open after", "not known", "closed")
"""A way's state, by how careful it is; the place of a state is its rank."""
OPEN, AFTER, NOT_KNOWN, CLOSED = 0, 1, 2, 3
CLEARED = (("asbestos_result", "none"), ("result_rooms", "this"), ("result_layers", "all"))
"""The answers that settle the asbestos question for every layer; anything less does not."""
_CLEARING = [name for name, _ in CLEARED]
STEPS_SHOWN = 6  # things to do next that are told at once [-]; a longer list is not read
CHANGES_SHOWN = 3  # answers that would change a way, told at once [-]


def fires(rule: DecisionRule, facts: dict[str, str]) -> tuple[int, str]:
    """Return (rank, question): how careful the rule is about its ways for these `facts`, by name of question.

    The rank is that of the rule's effect where all its answers stand, 0 where one of them does not. Where one is not known
    yet, the rule may still fire: then it makes its ways 'not known' at most, and `question` names what to find out.
    """
    pending = ""
    for name, answers in rule.when:
        value = facts[name]
        if value not in answers:
            if value != UNKNOWN or rule.sure:
                return OPEN, ""
            pending = pending or name
    rank = EFFECTS.index(rule.effect)
    return (min(rank, NOT_KNOWN), pending) if pending else (rank, "")


def stands(rule: DecisionRule, facts: dict[str, str]) -> bool:
    """Return whether all answers of the rule are known and stand."""
    return not [name for name, answers in rule.when if facts[name] not in answers]


def rank_of(way: str, facts: dict[str, str]) -> int:
    """Return the place in `STATES` of the way with that id: the most careful of its rules."""
    return max([OPEN] + [fires(rule, facts)[0] for rule in RULES if way in rule.ways])


def cleared(facts: dict[str, str]) -> bool:
    """Return whether a laboratory found no asbestos in any layer of this ceiling."""
    return not [name for name, value in CLEARED if facts[name] != value]


def facts_of(given: dict[str, str]) -> dict[str, str]:
    """Return the answer to each question by its name, 'unknown' where none was given; a place by the name that the book
    has for it, or 'elsewhere'."""
    facts = dict([(one.field.name, given.get(one.field.name, "") or UNKNOWN) for one in QUESTIONS])
    place = known_place(given.get("place", ""))
    facts["place"] = ELSEWHERE if place is None else place or UNKNOWN
    return facts


def _by_question(way: str) -> list[tuple[str, list[int]]]:
    """The questions that a way depends on, each with the places in `RULES` of the rules that ask it."""
    found: dict[str, list[int]] = {}
    for at, rule in enumerate(RULES):
        if way in rule.ways:
            for name, _ in rule.when:
                found[name] = found.get(name, []) + [at]
    return list(found.items())


_OF = [[at for at, rule in enumerate(RULES) if way in rule.ways] for way, _ in WAYS]
_ASKED = [_by_question(way) for way, _ in WAYS]


class _Look:
    """All rules looked at once for one set of facts; ways and rules are named by their place."""

    def __init__(self, facts: dict[str, str]) -> None:
        self.facts = dict(facts)
        self.fired = [fires(rule, facts) for rule in RULES]
        self.ranks = [max([OPEN] + [self.fired[at][0] for at in own]) for own in _OF]
        self.cleared = cleared(facts)

    def reasons(self, way: int) -> tuple[tuple[str, str], ...]:
        """Why a way is as it is: the rules that make it so, then notes where it may be gone."""
        now = self.ranks[way]
        found = []
        for at in _OF[way]:
            rank, pending = self.fired[at]
            if rank == now and rank > OPEN:
                found.append(
                    (question(pending).unknown, "common-practice") if pending else (RULES[at].says, RULES[at].source)
                )
        for at in _OF[way] if now <= AFTER else ():
            if RULES[at].effect == EFFECTS[0] and stands(RULES[at], self.facts):
                found.append((RULES[at].says, RULES[at].source))
        if not found:
            found.append(("Nothing that you answered stands against it.", "common-practice"))
        return tuple(_each_once(found))

    def change(self, way: int) -> str:
        """What one other answer would do to a way."""
        now = self.ranks[way]
        settled = self.facts["asbestos_result"] != UNKNOWN  # a result is not an opinion
        frees, closes = [], []
        counts = [0] * len(STATES)
        for at in _OF[way]:
            counts[self.fired[at][0]] += 1
        for name, touching in _ASKED[way]:
            others = max([OPEN] + [rank for rank in range(len(STATES)) if counts[rank] > self._at_rank(touching, rank)])
            if now > AFTER and others >= now:
                continue
            held = self.facts[name]
            for value, _ in question(name).answers:
                if value in (UNKNOWN, ELSEWHERE, held):
                    continue
                self.facts[name] = value
                rank = max([others] + [fires(RULES[at], self.facts)[0] for at in touching])
                if rank < now and not (settled and name in _CLEARING):
                    frees.append((_told(name, value), rank))
                elif rank == CLOSED and now < CLOSED:
                    closes.append((_told(name, value), rank))
            self.facts[name] = held
        if frees:
            states = [rank for rank in (OPEN, AFTER, NOT_KNOWN) if rank in [one for _, one in frees]]
            parts = [
                "to " + STATES[rank] + ", " + _some([text for text, one in frees if one == rank]) for rank in states
            ]
            return "One answer would change it: " + "; ".join(parts) + "."
        if now > AFTER:
            return "No one other answer opens it."
        return "One answer would close it: " + _some([text for text, _ in closes]) + "." if closes else ""

    def _at_rank(self, rules: list[int], rank: int) -> int:
        return len([at for at in rules if self.fired[at][0] == rank])

    def steps(self) -> tuple[str, ...]:
        """The ids of what to do next, in order. Never empty: the last is to choose, or to leave it alone."""
        own = [rank for at, rank in enumerate(self.ranks) if WAYS[at][0] != "licensed-removal"]
        least = NOT_KNOWN if OPEN in own else AFTER  # where a way is open, what others ask for first can wait
        wanted = []
        for way, now in enumerate(self.ranks):
            for at in _OF[way]:
                rank, pending = self.fired[at]
                urgent = rank >= NOT_KNOWN and not pending  # what stands is told, even where another rule is graver
                if urgent or (rank >= least and rank == now):
                    wanted.append(question(pending).action if pending else RULES[at].action)
        found = [one.id for one in ACTIONS if one.id in wanted and (self.cleared or not one.touches)]
        return tuple(found[:STEPS_SHOWN] + ["choose" if min(own) <= AFTER else "wait"])

    def asks(self) -> tuple[str, ...]:
        """The questions worth an answer, the best first: those that may free the most ways, then those that may spare the
        most a delay; where two are alike, the one that the book asks first."""
        held: dict[str, list[int]] = {}
        for way, now in enumerate(self.ranks):
            for name in _each_once([self.fired[at][1] for at in _OF[way] if self.fired[at][0] == now]):
                held[name] = held.get(name, []) + [now]
        found = []
        for at, one in enumerate(QUESTIONS):
            ranks = held.get(one.field.name, [])
            if ranks and (self.cleared or not action(one.action).touches):
                firm = len([rank for rank in ranks if rank == NOT_KNOWN])
                found.append((-firm, 0 if firm else -len(ranks), at, one.field.name))
        return tuple([name for _, _, _, name in sorted(found)])

    def clashes(self) -> tuple[tuple[str, str], ...]:
        """Answers that do not go together: both, and why."""
        found = []
        for rule in RULES:
            if rule.clash and stands(rule, self.facts):
                both = ["“" + _told(name, self.facts[name]) + "”" for name, _ in rule.when]
                found.append((words.listed(both) + ". " + rule.says, rule.source))
        return tuple(found)

    def cautions(self) -> tuple[Caution, ...]:
        """The cautions of every rule that stands, and those that always hold; the gravest first."""
        found = ["asbestos-first"] if self.facts["asbestos_result"] in (UNKNOWN, "none") and not self.cleared else []
        for at, rule in enumerate(RULES):
            rank, pending = self.fired[at]
            if rule.caution and rank > OPEN and not pending:
                found.append(rule.caution)
        return in_order(tuple([caution(one) for one in found + ["asbestos-layers", "local-rules"]]))


def decision(facts: dict[str, str], given: tuple[tuple[str, str], ...], place: str, show_in: str) -> Answer:
    """Return the state of each way with its reasons, what to do next, and which question is most worth an answer.

    `facts` hold one answer for each of `QUESTIONS` by its name, 'unknown' where it is not known; `given` is what was typed;
    `place` as it was typed; `show_in` [-] 'customary' or 'metric'. Raises nothing. Sources: each rule names its own.
    """
    look = _Look(facts)
    by_state = [[name for at, (_, name) in enumerate(WAYS) if look.ranks[at] == rank] for rank in range(len(STATES))]
    steps = look.steps()
    asks = look.asks()
    clashes = look.clashes()
    listings = []
    if clashes:
        listings.append(Listing("contradictions", "These answers do not go together", clashes))
    listings.append(Listing("next", "What to do next, in this order", tuple([(action(one).text, "") for one in steps])))
    if asks:
        best = question(asks[0])
        told = best.field.label + " " + best.field.why + " " + action(best.action).text
        listings.append(Listing("best_question", "The question most worth an answer", ((told, ""),)))
    items = [
        Item(name, STATES[look.ranks[at]], look.change(at), (), look.reasons(at), "methods/" + way)
        for at, (way, name) in enumerate(WAYS)
    ]  # fmt: skip
    return Answer(
        calculator="decision",
        inputs=given,
        figure=words.plural(len(by_state[OPEN]), "way") + " open",
        figure_label=_label(by_state),
        sentence="First: " + action(steps[0]).text,
        lines=tuple([_count(rank, by_state[rank], show_in) for rank in range(len(STATES))]),
        cautions=look.cautions(),
        notes=_notes(place),
        drawing=None,
        items=tuple(items),
        items_title="The eight ways, and why",
        listings=tuple(listings),
        asks=asks,
    )


def _label(by_state: list[list[str]]) -> str:
    parts = [
        words.whole(len(by_state[rank])) + " " + STATES[rank] + (" something" if rank == AFTER else "")
        for rank in (AFTER, NOT_KNOWN, CLOSED)
    ]
    return "of eight; " + words.listed(parts)  # fmt: skip


def _count(rank: int, names: list[str], show_in: str) -> Line:
    rules = (
        "No rule stands against it.",
        "No rule closes it, and one asks for something first.",
        "An answer is missing, or a result does not cover it, and a rule could close it.",
        "A rule closes it.",
    )
    name = "ways_" + STATES[rank].replace(" ", "_")
    return line(name, "Ways " + STATES[rank], Fraction(len(names)), "", 0, rules[rank], words.listed(names) or "none", ("common-practice",), show_in)  # fmt: skip


def _notes(place: str) -> tuple[str, ...]:
    known = known_place(place)
    if known is None:
        local = (
            "This book holds no rules for "
            + words.quoted(place)
            + ". Local rules were not checked: ask the state and the city."
        )
    elif known:
        local = "This book holds a few rules of " + known + ", not all of them. Ask its offices before any work."
    else:
        local = "No place was given. Only federal rules were looked at: ask the state and the city."
    return (
        local,
        "Open means that no rule here stands against it. Each way has hold points of its own, and licensed trades decide.",
        "An answer that is not known counts as the worst that it can be. The order of what to do is common practice.",
        "Covering is not harmless: screws and glue disturb the texture too.",
    )  # fmt: skip


def _told(name: str, value: str) -> str:
    """A question and its answer as one phrase."""
    one = question(name)
    label = dict(one.answers).get(value, value)
    return one.field.label + (" " if one.field.label.endswith("?") else ": ") + label


def _some(told: list[str]) -> str:
    """A few of the answers, and how many more there are."""
    more = len(told) - CHANGES_SHOWN
    few = ["“" + text + "”" for text in told[:CHANGES_SHOWN]]
    return ", ".join(few) + ", and " + words.plural(more, "other") if more > 0 else words.listed(few, "or")


def _each_once(found: list) -> list:  # type: ignore[type-arg]
    """Each entry once, in the order in which it first stands."""
    once = []
    for one in found:
        if one not in once:
            once.append(one)
    return once


def _work_out(values: Values) -> Answer:
    given = dict(values.given)
    return decision(facts_of(given), values.given, given.get("place", ""), values.choice("show_in"))


CALCULATOR = Calculator(
    name="decision",
    title="Your ceiling, question by question",
    summary="Which of eight ways are open for this ceiling, and why",
    verb="Show the ways",
    fields=tuple([one.field for one in QUESTIONS]) + (SHOW_IN,),
    work_out=_work_out,
    example=(
        ("asbestos_result", "none"), ("result_rooms", "this"), ("result_layers", "all"), ("sag", "no"), ("stains", "none"),
        ("loose_board", "tight"), ("cracks", "fine"), ("built", "later"), ("times_painted", "never"), ("sheen", "flat"),
        ("hand_test", "holds"), ("patch_test", "wet"), ("material", "board"), ("above", "rooms"), ("rated_ceiling", "no"),
        ("who_works", "owner"), ("building", "house"), ("height", "usual"), ("may_drop", "yes"), ("occupied", "yes"),
        ("household", "adults"), ("floors", "covered"), ("finish_wanted", "smooth"), ("light", "soft"),
    ),
    sources=tuple(_each_once([rule.source for rule in RULES])) + ("epa-asbestos-in-your-home", "common-practice", "cfr-745-83"),
)  # fmt: skip
