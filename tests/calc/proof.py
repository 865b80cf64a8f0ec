"""What must never happen, and the proof that it does not, at every point of the whole space of answers.

The space has some 10^18 points, so it is covered symbolically. A way's state is the most careful of its rules, and a rule
looks at its own answers only. Questions that share a rule are put together into a group; groups do not touch each other.
So a property about some questions holds at every point of the space when it holds at every point of the groups
that hold these questions, whatever the others say: they can only make a way more closed. The tests in `test_decision` prove
the two halves of that reduction, and count the points.

The properties are written from the trade's cautions and know nothing of the rules.
"""

import itertools
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from calc.decision.decision import AFTER, CLOSED, NOT_KNOWN, OPEN, fires, stands
from calc.decision.questions import QUESTIONS, WAYS
from calc.decision.rules import RULES, DecisionRule

DOMAINS = {one.field.name: [value for value, _ in one.answers] for one in QUESTIONS}
EVERY = tuple(way for way, _ in WAYS)
TOUCH = tuple(way for way in EVERY if way != "licensed-removal")
LICENSED = ("licensed-removal",)
DUSTY = ("dry-scrape", "sand")
OTHERS = tuple(way for way in TOUCH if way not in DUSTY)
ADDED = ("wet-scrape", "skim-over", "board-over", "panel-over", "leave-and-seal")
LOWER = ("board-over", "panel-over")
COATS = ("skim-over", "leave-and-seal")
Facts = dict[str, str]


@dataclass(frozen=True)
class Property:
    """`ways` are at least as careful as `least` wherever `when` holds of the questions in `names`."""

    name: str
    ways: tuple[str, ...]
    names: tuple[str, ...]
    when: Callable[..., bool]
    least: int


def _is(*values: str) -> Callable[[str], bool]:
    return lambda value: value in values


MUST = (
    # Nothing that disturbs texture is open while asbestos is unsettled or found, for any person and any place.
    Property("asbestos found", TOUCH, ("asbestos_result",), _is("trace", "found"), CLOSED),
    Property("no result", TOUCH, ("asbestos_result",), _is("unknown"), NOT_KNOWN),
    Property("a result for another ceiling", TOUCH, ("asbestos_result", "result_rooms"), lambda a, b: a == "none" and b != "this", NOT_KNOWN),
    Property("layers that no result names", tuple(way for way in TOUCH if way != "leave-and-seal"), ("asbestos_result", "result_layers"),
             lambda a, b: a == "none" and b != "all", NOT_KNOWN),
    Property("a coat on texture that no result names", ("leave-and-seal",), ("asbestos_result", "result_layers"),
             lambda a, b: a == "none" and b not in ("all", "texture"), NOT_KNOWN),
    # Nothing is added over a sagging, wet or loose ceiling, and nobody is sent under one.
    Property("it sags", TOUCH, ("sag",), _is("yes"), CLOSED),
    Property("it may sag", TOUCH, ("sag",), _is("unknown"), NOT_KNOWN),
    Property("it is wet", TOUCH, ("stains",), _is("wet"), CLOSED),
    Property("it may be wet", TOUCH, ("stains",), _is("unknown"), NOT_KNOWN),
    Property("it is loose", TOUCH, ("loose_board",), _is("loose"), CLOSED),
    Property("it may be loose", TOUCH, ("loose_board",), _is("unknown"), NOT_KNOWN),
    Property("a crew under a sag", LICENSED, ("sag",), _is("yes", "unknown"), AFTER),
    Property("a crew under a wet ceiling", LICENSED, ("stains",), _is("wet", "unknown"), AFTER),
    Property("a crew under loose board", LICENSED, ("loose_board",), _is("loose", "unknown"), AFTER),
    Property("wide cracks", TOUCH, ("cracks",), _is("wide", "unknown"), AFTER),
    Property("weight of insulation", ("wet-scrape", "skim-over", *LOWER), ("above",), _is("attic", "unknown"), AFTER),
    Property("plaster on its keys", LOWER, ("material",), _is("plaster", "unknown"), AFTER),
    Property("board where there is no joist", ("board-over",), ("material",), _is("concrete"), CLOSED),
    Property("anchors in concrete", ("panel-over",), ("material",), _is("concrete", "unknown"), AFTER),
    Property("an old stain, its leak and board not looked at", TOUCH, ("stains",), _is("old", "unknown"), AFTER),
    Property("a heavy coat on deep texture", ("skim-over",), ("texture_depth",), _is("deep", "unknown"), AFTER),
    Property("board on joists that lie too far apart", ("board-over",), ("joists",), _is("far"), CLOSED),
    Property("board on joists that may lie too far apart", ("board-over",), ("joists",), _is("unknown"), NOT_KNOWN),
    Property("thin board on joists over 16 in apart", ("board-over",), ("joists",), _is("apart"), AFTER),
    Property("panels on joists far apart", ("panel-over",), ("joists",), _is("apart", "far", "unknown"), AFTER),
    Property("more weight on joists that cannot carry it", LOWER, ("joists_carry",), _is("no"), CLOSED),
    Property("more weight on joists that nobody looked at", LOWER, ("joists_carry",), _is("unknown"), NOT_KNOWN),
    Property("a third layer", LOWER, ("layers_up",), _is("more", "unknown"), NOT_KNOWN),
    # What runs in it, lies on it, hangs through it.
    Property("a screw in a heated ceiling", LOWER, ("heated_ceiling",), _is("yes"), CLOSED),
    Property("a screw in what may be heated", LOWER, ("heated_ceiling",), _is("unknown"), NOT_KNOWN),
    Property("a knife in a heated ceiling", ("wet-scrape", "dry-scrape", "sand"), ("heated_ceiling",), _is("yes", "unknown"), NOT_KNOWN),
    Property("anything else on a heated ceiling", (*COATS, *LICENSED), ("heated_ceiling",), _is("yes", "unknown"), AFTER),
    Property("a hole under loose pebbles", LOWER, ("loose_fill",), _is("pebbles", "unknown"), NOT_KNOWN),
    Property("any work under loose pebbles", EVERY, ("loose_fill",), _is("pebbles", "unknown"), AFTER),
    Property("sprinkler heads in a lower ceiling", LOWER, ("sprinklers",), _is("yes", "unknown"), NOT_KNOWN),
    Property("sprinkler heads beside any work", EVERY, ("sprinklers",), _is("yes", "unknown"), AFTER),
    # Lead.
    Property("dust of lead paint that was found, in any year", DUSTY, ("paint_test",), _is("lead"), CLOSED),
    Property("lead paint that was found, in any year", OTHERS, ("paint_test",), _is("lead"), AFTER),
    Property("children beside lead paint", EVERY, ("built", "paint_test", "household"),
             lambda a, b, c: c != "adults" and (b == "lead" or (a != "later" and b != "none")), AFTER),
    Property("lead in an old house", DUSTY, ("built", "paint_test"), lambda a, b: a == "before-1978" and b == "lead", CLOSED),
    Property("dust that may hold lead", DUSTY, ("built", "paint_test"), lambda a, b: a != "later" and b != "none", NOT_KNOWN),
    Property("lead paint, or paint that may be", OTHERS, ("built", "paint_test"), lambda a, b: a != "later" and b != "none", AFTER),
    # Fire, braces, codes.
    Property("rated for fire, or perhaps", LOWER, ("rated_ceiling",), _is("yes", "unknown"), NOT_KNOWN),
    Property("fire protection that is scraped", ("wet-scrape", "dry-scrape", "sand", "skim-over"), ("rated_ceiling",), _is("yes", "unknown"), AFTER),
    Property("between two homes", LOWER, ("above", "rated_ceiling"), lambda a, b: a in ("home", "unknown") and b == "no", AFTER),
    Property("a larger building", LOWER, ("building",), _is("other", "unknown"), AFTER),
    Property("a room that is low", LOWER, ("height",), _is("low", "spare", "unknown"), AFTER),
    Property("a room that has no inch to spare", LOWER, ("height",), _is("low", "unknown"), NOT_KNOWN),
    Property("a coat on a rated ceiling", ("leave-and-seal",), ("rated_ceiling",), _is("yes", "unknown"), AFTER),
    Property("somebody else's ceiling", EVERY, ("who_works",), _is("renter", "unknown"), AFTER),
    Property("a ceiling that several own", EVERY, ("building",), _is("other", "unknown"), AFTER),
    Property("over 10 ft", EVERY, ("height",), _is("high", "unknown"), AFTER),
    Property("what must not come lower", LOWER, ("may_drop",), _is("no"), CLOSED),
    Property("what may not come lower", LOWER, ("may_drop",), _is("unknown"), NOT_KNOWN),
    # What falls, and who breathes.
    Property("a coat on what crumbles", COATS, ("hand_test",), _is("falls"), CLOSED),
    Property("a coat on what may crumble", COATS, ("hand_test",), _is("unknown"), NOT_KNOWN),
    Property("a disc on what crumbles", ("sand",), ("hand_test",), _is("falls"), CLOSED),
    Property("a disc on what may crumble", ("sand",), ("hand_test",), _is("unknown"), NOT_KNOWN),
    Property("wet compound on bare texture that turns to mud", ("skim-over",), ("times_painted", "patch_test"),
             lambda a, b: a == "never" and b in ("wet", "both"), CLOSED),
    Property("wet compound on what may turn to mud", ("skim-over",), ("times_painted", "patch_test"),
             lambda a, b: a in ("never", "unknown") and b in ("wet", "both", "unknown"), NOT_KNOWN),
    Property("glue on what may crumble", ("panel-over",), ("hand_test",), _is("falls", "unknown"), AFTER),
    Property("water on bare texture", COATS, ("times_painted",), _is("never", "unknown"), AFTER),
    Property("sheets of paint that fall", ("wet-scrape",), ("times_painted",), _is("once", "often", "painted", "unknown"), AFTER),
    Property("dry dust, whoever makes it", DUSTY, ("who_works",), lambda a: True, AFTER),
    Property("dust of sanded compound, whoever makes it", ("skim-over", "board-over"), ("who_works",), lambda a: True, AFTER),
    Property("weak lungs in dust", DUSTY, ("occupied", "household"), lambda a, b: a == "yes" and b == "risk", CLOSED),
    Property("perhaps weak lungs in dust", DUSTY, ("occupied", "household"), lambda a, b: a != "no" and b != "adults", NOT_KNOWN),
    Property("weak lungs in the house", OTHERS, ("occupied", "household"), lambda a, b: a != "no" and b != "adults", AFTER),
    Property("people beside the dust", DUSTY, ("occupied",), _is("yes", "unknown"), AFTER),
    # Places.
    Property("local rules", LICENSED, ("asbestos_result", "place"), lambda a, b: a in ("trace", "found"), AFTER),
    # Answers that do not go together open nothing.
    Property("never painted, yet it shines", TOUCH, ("times_painted", "sheen"), lambda a, b: a == "never" and b == "gloss", NOT_KNOWN),
    Property("sprayed before it was built", TOUCH, ("sprayed", "built"), lambda a, b: a == "before-1978" and b == "later", NOT_KNOWN),
    Property("crumbles, yet like stone", TOUCH, ("hand_test", "patch_test"), lambda a, b: a == "falls" and b == "hard", NOT_KNOWN),
)  # fmt: skip


@dataclass(frozen=True)
class Told:
    """Wherever `when` holds of the questions in `names`, some rule that stands says `says`: a caution, a source or an action."""

    name: str
    names: tuple[str, ...]
    when: Callable[..., bool]
    kind: str
    says: str


MUST_TELL = (
    Told("call a licensed contractor", ("asbestos_result",), _is("found"), "action", "call-licensed"),
    Told("the danger of what was found", ("asbestos_result",), _is("found"), "caution", "licensed-removal"),
    Told("some asbestos", ("asbestos_result",), _is("trace"), "caution", "asbestos-trace"),
    *(
        Told(f"{says}: {why}", names, when, "action", says)
        for says in ("get-out", "power-off", "prop")
        for why, names, when in (("it sags", ("sag",), _is("yes")), ("it is wet", ("stains",), _is("wet")), ("it is loose", ("loose_board",), _is("loose")))
    ),
    Told("water that still runs", ("stains",), _is("wet"), "action", "stop-water"),
    Told("somebody qualified looks at what sags", ("sag",), _is("yes"), "action", "check-fixing"),
    Told("a ceiling that may fall", ("sag", "stains", "loose_board"), lambda a, b, c: a == "yes" or b == "wet" or c == "loose", "caution", "ceiling-load"),
    Told("keep out of what may be in the air", ("asbestos_result", "result_rooms", "result_layers", "hand_test", "patch_test"),
         lambda a, b, c, d, e: (d == "falls" or e != "unknown") and (a != "none" or b != "this" or c in ("mixed", "unknown")), "action", "keep-out"),
    Told("lead in paid work", ("who_works", "built", "paint_test"),
         lambda a, b, c: a in ("landlord", "renter", "firm", "employee") and (c == "lead" or (b == "before-1978" and c != "none")), "caution", "lead-paint"),
    Told("children out of lead dust", ("built", "paint_test", "household"),
         lambda a, b, c: b == "lead" and c != "adults", "action", "keep-children-out"),
    Told("a heated ceiling", ("heated_ceiling",), _is("yes"), "caution", "heated-ceiling"),
    Told("who finds the heat", ("heated_ceiling",), _is("yes"), "action", "ask-heating"),
    Told("loose pebbles", ("loose_fill",), _is("pebbles"), "caution", "loose-fill"),
    Told("nobody goes up to loose pebbles", ("loose_fill",), _is("pebbles"), "action", "stay-below"),
    Told("sprinkler heads", ("sprinklers",), _is("yes"), "caution", "sprinkler-head"),
    Told("the owner of a rented home", ("who_works",), _is("renter"), "action", "ask-owner-first"),
    Told("weight that the joists cannot carry", ("joists_carry", "layers_up"), lambda a, b: a == "no" or b == "more", "caution", "engineer-load"),
    Told("a rated ceiling", ("rated_ceiling",), _is("yes"), "caution", "rated-ceiling"),
    Told("rails", ("height",), _is("high"), "caution", "fall-scaffold"),
    Told("federal notice", ("asbestos_result", "building"), lambda a, b: a in ("trace", "found") and b == "other", "source", "cfr-61-145"),
    Told("Colorado's trigger", ("asbestos_result", "place"), lambda a, b: a in ("trace", "found") and b == "Colorado", "source", "colorado-reg-8"),
    Told("silica for employees", ("who_works",), _is("employee", "firm"), "source", "cfr-1926-1153"),
    Told("permits of a larger building", ("building",), _is("other"), "action", "ask-building"),
    Told("people beside the dust are asked for", ("occupied",), _is("yes"), "action", "ask-household"),
    Told("silica for everybody", ("who_works",), lambda a: a != "unknown", "caution", "dust-silica"),
)  # fmt: skip


def points(names: tuple[str, ...] | list[str]) -> Iterator[Facts]:
    """Every set of answers to the questions in `names`."""
    for values in itertools.product(*(DOMAINS[name] for name in names)):
        yield dict(zip(names, values))


def own_rules(way: str, rules: tuple[DecisionRule, ...] = RULES) -> list[DecisionRule]:
    """The rules that can change a way's state; a note cannot."""
    return [rule for rule in rules if way in rule.ways and rule.effect != "note"]


def groups(way: str, rules: tuple[DecisionRule, ...] = RULES) -> list[tuple[str, ...]]:
    """The questions of a way, put together where they share a rule, in the order of the book."""
    found: list[set[str]] = []
    for rule in own_rules(way, rules):
        names = {name for name, _ in rule.when}
        touching = [one for one in found if one & names]
        found = [one for one in found if not one & names] + [names.union(*touching)]
    order = list(DOMAINS)
    return sorted(tuple(sorted(one, key=order.index)) for one in found)


def rank(way: str, facts: Facts, rules: tuple[DecisionRule, ...] = RULES) -> int:
    """The rank of a way by those of its rules that ask for nothing beyond `facts`."""
    ranks = [fires(rule, facts)[0] for rule in own_rules(way, rules) if all(name in facts for name, _ in rule.when)]
    return max([OPEN, *ranks])


def says_of(rule: DecisionRule, kind: str) -> tuple[str, ...]:
    """What a rule says of one kind."""
    return rule.actions if kind == "action" else (getattr(rule, kind),)


_TABLES: dict[tuple[object, ...], dict[tuple[str, ...], int]] = {}
_HELD: dict[tuple[object, ...], tuple[str, int]] = {}


def _asking(way: str, names: tuple[str, ...], rules: tuple[DecisionRule, ...]) -> tuple[DecisionRule, ...]:
    """The rules of a way that ask for nothing beyond these questions."""
    return tuple(rule for rule in own_rules(way, rules) if all(name in names for name, _ in rule.when))


def table(names: tuple[str, ...], asking: tuple[DecisionRule, ...]) -> dict[tuple[str, ...], int]:
    """The rank that the rules `asking` give at every point of the questions in `names`; kept, as most proofs share it."""
    key = (names, asking)
    if key not in _TABLES:
        _TABLES[key] = {
            tuple(facts.values()): max([OPEN, *(fires(rule, facts)[0] for rule in asking)]) for facts in points(names)
        }
    return _TABLES[key]


def _fails(one: Property, way: str, rules: tuple[DecisionRule, ...]) -> tuple[str, int]:
    """The first point at which a property fails for a way, or '', and how many were looked at."""
    touching = [name for group in groups(way, rules) if set(group) & set(one.names) for name in group]
    names = tuple(dict.fromkeys([*one.names, *touching]))
    asking = _asking(way, names, rules)
    key = (one.name, way, names, asking)
    if key not in _HELD:
        at = [names.index(name) for name in one.names]
        found, looked = "", 0
        for values, now in table(names, asking).items():
            looked += 1
            if now < one.least and one.when(*(values[place] for place in at)):
                found = f"{one.name}: {way} at {dict(zip(names, values))}"
                break
        _HELD[key] = (found, looked)
    return _HELD[key]


def _untold(told: Told, rules: tuple[DecisionRule, ...]) -> tuple[str, int]:
    """The first point at which what must be told is not, or '', and how many were looked at."""
    able = [
        rule
        for rule in rules
        if told.says in says_of(rule, told.kind)
        and rule.effect != "note"
        and all(name in told.names for name, _ in rule.when)
    ]
    looked = 0
    for facts in points(told.names):
        looked += 1
        if told.when(*(facts[name] for name in told.names)) and not any(stands(rule, facts) for rule in able):
            return f"{told.name} at {facts}", looked
    return "", looked


def violations(rules: tuple[DecisionRule, ...] = RULES) -> tuple[list[str], int]:
    """Every property that fails, with the answers that show it, and how many points were looked at."""
    each = [_fails(one, way, rules) for one in MUST for way in one.ways] + [_untold(one, rules) for one in MUST_TELL]
    return [found for found, _ in each if found], sum(looked for _, looked in each)


SURPRISES = ({"built": ("later",), "paint_test": ("lead",)},)
"""Answers that nobody has to look for, since the law does not ask: a find there closes what was open before. It never opens."""


def opened_by_knowing(rules: tuple[DecisionRule, ...] = RULES) -> tuple[list[str], int]:
    """Where one more answer opens what the worst case of it closes: a way may go from not known to anything, but a way that
    is open stays open, one that is open after something gets no worse, and one that is closed stays closed. Points with
    answers that do not go together are no knowledge, and left out; so are surprises."""
    found, looked = [], 0
    clashing = [dict(rule.when) for rule in rules if rule.clash and rule.sure] + list(SURPRISES)
    for way in EVERY:
        for group in groups(way, rules):
            ranks = table(group, _asking(way, group, rules))
            for values, before in ranks.items():
                for at, name in enumerate(group):
                    if values[at] != "unknown":
                        continue
                    for value in DOMAINS[name][1:]:
                        after = (*values[:at], value, *values[at + 1 :])
                        looked += 1
                        now = ranks[after]
                        worse = (
                            (before == CLOSED and now != CLOSED)
                            or (before == OPEN and now != OPEN)
                            or (before == AFTER and now > AFTER)
                        )
                        if not worse:
                            continue
                        known = dict(zip(group, after))
                        if not any(all(known.get(key) in allowed for key, allowed in one.items()) for one in clashing):
                            found.append(f"{way}: {name}={value} at {dict(zip(group, values))}: {before} to {now}")
    return found, looked


def outcomes(way: str) -> Counter[int]:
    """How many points of the whole space leave the way in each state, counted exactly: group by group, then together."""
    counted: Counter[int] = Counter({OPEN: 1})
    asked: set[str] = set()
    for group in groups(way):
        asked |= set(group)
        own = Counter(table(group, _asking(way, group, RULES)).values())
        both: Counter[int] = Counter()
        for one, count in counted.items():
            for other, more in own.items():
                both[max(one, other)] += count * more
        counted = both
    free = 1  # questions that this way never asks about
    for name, values in DOMAINS.items():
        free *= 1 if name in asked else len(values)
    return Counter({state: count * free for state, count in counted.items()})


def space() -> int:
    """How many points the whole space of answers has."""
    size = 1
    for values in DOMAINS.values():
        size *= len(values)
    return size


if __name__ == "__main__":
    import time

    start = time.perf_counter()
    bad, looked = violations()
    monotone, more = opened_by_knowing()
    print(
        f"{space():,} points in all; {looked + more:,} looked at; {len(bad) + len(monotone)} violations; {time.perf_counter() - start:.2f} s"
    )
    for way, name in WAYS:
        shares = outcomes(way)
        print(
            name,
            {state: f"{100 * shares[state] / space():.3g} %" for state in (OPEN, AFTER, NOT_KNOWN, CLOSED)},
            groups(way),
        )
    print(len(RULES), "rules;", sum(rule.guards for rule in RULES), "guard;", Counter(rule.source for rule in RULES))
