"""What the rules of the choice of way make of one set of answers: the state of each way, why, what would change it, and
what to do next. It knows no way and no answer by name but those that clear a ceiling; the rows of data do."""

from calc.decision.questions import ACTIONS, ELSEWHERE, QUESTIONS, UNKNOWN, WAYS, action, question
from calc.decision.rule import STATES
from calc.decision.rules import EFFECTS, RULES, DecisionRule
from calc.decision.told import both_told, rule_told, unknown_told
from calc.evidence.cautions import Caution, caution, in_order
from calc.numbers import words
from calc.text.door import say

OPEN, AFTER, NOT_KNOWN, CLOSED = 0, 1, 2, 3
"""The ranks of `STATES`."""
CLEARED = (("asbestos_result", "none"), ("result_rooms", "this"), ("result_layers", "all"))
"""The answers that settle the asbestos question for every layer; anything less does not."""
FOUND = (("asbestos_result", "found"), ("result_rooms", "this"), ("result_layers", "all"))
"""The other way that the question can be settled. A little asbestos comes to the same."""
_CLEARING = [name for name, _ in CLEARED]
STEPS_SHOWN = 8  # things to do next that are told at once [-]; a longer list is not read
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


def cleared(facts: dict[str, str]) -> bool:
    """Return whether a laboratory found no asbestos in any layer of this ceiling."""
    return not [name for name, value in CLEARED if facts[name] != value]


def settled(facts: dict[str, str]) -> bool:
    """Return whether the asbestos question is settled for this ceiling, either way."""
    return cleared(facts) or facts["asbestos_result"] not in (UNKNOWN, "none")


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


class Look:
    """All rules looked at once for one set of facts; ways and rules are named by their place."""

    def __init__(self, facts: dict[str, str]) -> None:
        self.facts = dict(facts)
        self.fired = [fires(rule, facts) for rule in RULES]
        self.ranks = [max([OPEN] + [self.fired[at][0] for at in own]) for own in _OF]
        self.cleared = cleared(facts)
        self.settled = settled(facts)
        self._branches: tuple[Look, ...] | None = None

    def branches(self) -> tuple["Look", ...]:
        """The same answers with the asbestos question settled: nothing found, then something found. None where it is."""
        if self._branches is None:
            looks = []
            for result in () if self.settled else (CLEARED, FOUND):
                facts = dict(self.facts)
                for name, value in result:
                    facts[name] = value
                looks.append(Look(facts))
            self._branches = tuple(looks)
        return self._branches

    def reasons(self, way: int) -> tuple[tuple[str, str], ...]:
        """Why a way is as it is: the rules that make it so, then notes."""
        now = self.ranks[way]
        found = []
        for at in _OF[way]:
            rank, pending = self.fired[at]
            if rank == now and rank > OPEN:
                found.append(_reason(at, pending))
        for at in _OF[way]:
            if RULES[at].effect == EFFECTS[0] and stands(RULES[at], self.facts):
                found.append(_reason(at, ""))
        if not found:
            nothing = say("decision.reason.none", "Nothing that you answered stands against it.")
            found.append((nothing, "common-practice"))
        return tuple(each_once(found))

    def review_by(self, way: int) -> str:
        """The first day (ISO 8601) on which a rule that makes a way as it is has to be looked at again, '' where none does."""
        now = self.ranks[way]
        days = [RULES[at].review_by for at in _OF[way] if now > OPEN and self.fired[at][0] == now]
        return min(days) if days else ""

    def first_reason(self, way: int) -> tuple[tuple[str, str], ...]:
        """One reason for the state of a way, of a kind that asks nobody to touch the ceiling; none where it is open."""
        for at in _OF[way]:
            rank, pending = self.fired[at]
            wanted = (question(pending).action,) if pending else RULES[at].actions
            if rank == self.ranks[way] and rank > OPEN and not [one for one in wanted if action(one).touches]:
                return (_reason(at, pending),)
        return ()

    def change(self, way: int) -> str:
        """What one other answer would do to a way. Only answers that work or a test can bring about are told as opening it;
        a result that is in is not an opinion, and what a house is like is not for choosing."""
        now = self.ranks[way]
        frees, closes = [], []
        counts = [0] * len(STATES)
        for at in _OF[way]:
            counts[self.fired[at][0]] += 1
        for name, touching in _ASKED[way]:
            others = max([OPEN] + [rank for rank in range(len(STATES)) if counts[rank] > self._at_rank(touching, rank)])
            if now > AFTER and others >= now:
                continue
            held = self.facts[name]
            brought = question(name).changes
            for value, _ in question(name).answers:
                if value in (UNKNOWN, ELSEWHERE, held):
                    continue
                self.facts[name] = value
                rank = max([others] + [fires(RULES[at], self.facts)[0] for at in touching])
                if rank < now and (brought == "work" or (brought == "test" and held == UNKNOWN)):
                    frees.append((both_told(name, value), rank))
                elif rank == CLOSED and now < CLOSED:
                    closes.append((both_told(name, value), rank))
            self.facts[name] = held
        if frees:
            states = [rank for rank in (OPEN, AFTER, NOT_KNOWN) if rank in [one for _, one in frees]]
            parts = [_freed(rank, _some([text for text, one in frees if one == rank])) for rank in states]
            return say("decision.change", "One answer would change it: {answers}.", answers="; ".join(parts))
        if now > AFTER:
            return say("decision.change.none", "No one thing that work or a test can change opens it.")
        if not closes:
            return ""
        return say(
            "decision.change.closes",
            "One answer would close it: {answers}.",
            answers=_some([text for text, _ in closes]),
        )

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
                ids = (question(pending).action,) if pending else RULES[at].actions
                urgent = rank >= NOT_KNOWN and not pending  # what stands is told, even where another rule is graver
                for one in ids:
                    first = rank > OPEN and not pending and action(one).first
                    if first or urgent or (rank >= least and rank == now):
                        wanted.append(one)
        found = [one.id for one in ACTIONS if one.id in wanted and (self.cleared or not one.touches)]
        last = "choose" if OPEN in own else "choose-after" if AFTER in own else "wait"
        return tuple(found[:STEPS_SHOWN] + [last])

    def asks(self) -> tuple[str, ...]:
        """The questions worth an answer, the best first: those that may free the most ways, then those that may spare the
        most a delay; where two are alike, the one that the book asks first. Before the result: first what settles it, then
        only what makes a difference once nothing was found, since asbestos leaves no choice."""
        looks = self.branches()
        if looks:
            return tuple(each_once([name for name in self._held() if name in _CLEARING] + list(looks[0]._held(False))))
        return self._held()

    def _held(self, touching: bool = True) -> tuple[str, ...]:
        """The questions whose answers hold ways where they are; those that touch the ceiling only where it is cleared, and
        not without `touching`."""
        held: dict[str, list[int]] = {}
        for way, now in enumerate(self.ranks):
            for name in each_once([self.fired[at][1] for at in _OF[way] if self.fired[at][0] == now]):
                held[name] = held.get(name, []) + [now]
        found = []
        for at, one in enumerate(QUESTIONS):
            ranks = held.get(one.field.name, [])
            if ranks and ((self.cleared and touching) or not action(one.action).touches):
                firm = len([rank for rank in ranks if rank == NOT_KNOWN])
                found.append((-firm, 0 if firm else -len(ranks), at, one.field.name))
        return tuple([name for _, _, _, name in sorted(found)])

    def clashes(self) -> tuple[tuple[str, str], ...]:
        """Answers that do not go together: both, and why."""
        found = []
        for rule in RULES:
            if rule.clash and stands(rule, self.facts):
                both = words.listed(["“" + both_told(name, self.facts[name]) + "”" for name, _ in rule.when])
                found.append((say("decision.clash", "{both}. {why}", both=both, why=rule_told(rule)), rule.source))
        return tuple(found)

    def cautions(self) -> tuple[Caution, ...]:
        """The cautions of every rule that stands, and those that always hold; the gravest first."""
        found = [] if self.settled else ["asbestos-first"]
        for at, rule in enumerate(RULES):
            rank, pending = self.fired[at]
            if rule.caution and rank > OPEN and not pending:
                found.append(rule.caution)
        return in_order(tuple([caution(one) for one in found + ["asbestos-layers", "local-rules"]]))


def _reason(at: int, pending: str) -> tuple[str, str]:
    """What a rule says, and its source; that the question `pending` has no answer, where there is one."""
    if pending:
        return unknown_told(pending), "common-practice"
    return rule_told(RULES[at]), RULES[at].source


def _freed(rank: int, answers: str) -> str:
    """The state that a way would come to, and the answers that bring it there."""
    if rank == OPEN:
        return say("decision.change.open", "to open, {answers}", answers=answers)
    if rank == AFTER:
        return say("decision.change.after", "to open after, {answers}", answers=answers)
    return say("decision.change.unknown", "to not known, {answers}", answers=answers)


def _some(phrases: list[str]) -> str:
    """A few of the answers, and how many more there are."""
    more = len(phrases) - CHANGES_SHOWN
    few = ["“" + text + "”" for text in phrases[:CHANGES_SHOWN]]
    if more <= 0:
        return words.listed(few, "or")
    return say("decision.some", "{few}, and {more}", few=", ".join(few), more=words.plural(more, "other"))


def each_once(found: list) -> list:  # type: ignore[type-arg]
    """Return each entry once, in the order in which it first stands."""
    once = []
    for one in found:
        if one not in once:
            once.append(one)
    return once
