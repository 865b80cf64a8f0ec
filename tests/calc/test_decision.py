"""The choice of way: what must never happen, at every point of the space of answers; ten ceilings; lists and questions."""

import dataclasses
import json
import random
from pathlib import Path

import pytest
from proof import (
    DOMAINS,
    EVERY,
    MUST,
    RULES,
    TOUCH,
    groups,
    opened_by_knowing,
    outcomes,
    own_rules,
    points,
    rank,
    space,
    violations,
)

from calc import catalogue, decision, decision_facts, signals, sources
from calc.decision import CLOSED, NOT_KNOWN, OPEN, STATES, fires, rank_of
from calc.decision_facts import ACTIONS, QUESTIONS, WAYS

CEILINGS = json.loads((Path(__file__).parent / "ceilings.json").read_text(encoding="utf-8"))
NEVER = ("exempt", "is safe", "are safe", "be safe", "no risk", "harmless to")


def random_facts(count):
    """Points of the whole space; half of them of ceilings that are mostly cleared, since few chance ones are."""
    chance = random.Random(20261126)
    for at in range(count):
        facts = {name: chance.choice(values) for name, values in DOMAINS.items()}
        if at % 2:
            facts |= dict(decision.CLEARED) | {"sag": "no", "stains": "none", "loose_board": "tight", "built": "later"}
        yield facts


def asked(**facts):
    answer, faults = catalogue.work_out("decision", facts)
    assert answer is not None, faults
    return answer


def state(answer, way):
    return next(one.state for one in answer.items if one.page == f"methods/{way}")


def listing(answer, name):
    return [text for one in answer.listings if one.name == name for text, _ in one.rows]


# The proof.


def test_what_must_never_happen_does_not():
    found, looked = violations()
    assert found == []
    assert looked > 10_000


def test_knowing_more_never_opens_what_its_worst_case_closes():
    found, looked = opened_by_knowing()
    assert found == []
    assert looked > 10_000


@pytest.mark.parametrize("rule", [one for one in RULES if one.guards or one.clash], ids=lambda one: one.id)
def test_without_any_one_guard_the_proof_is_red(rule):
    assert violations(tuple(one for one in RULES if one is not rule))[0]


@pytest.mark.parametrize(
    "rule", [one for one in RULES if one.guards and one.effect in ("closed", "not known")], ids=lambda one: one.id
)
def test_a_guard_made_milder_turns_the_proof_red(rule):
    milder = dataclasses.replace(rule, effect="note")
    assert violations(tuple(milder if one is rule else one for one in RULES))[0]


def test_every_property_can_fail():
    """Without any rule each property is seen to fail."""
    told = violations(())[0]
    for one in MUST:
        assert any(text.startswith(one.name + ":") for text in told), one.name


# The two halves of the reduction.


def test_a_rule_looks_at_its_own_answers_only():
    chance = random.Random(1)
    for facts in random_facts(300):
        other = next(random_facts(1)) | {name: chance.choice(values) for name, values in DOMAINS.items()}
        for rule in RULES:
            own = {name: facts[name] for name, _ in rule.when}
            assert fires(rule, facts) == fires(rule, {**other, **own}) == fires(rule, own)


def test_a_state_is_the_most_careful_of_its_groups():
    for facts in random_facts(2_000):
        for way in EVERY:
            parts = [rank(way, {name: facts[name] for name in group}) for group in groups(way)]
            assert rank_of(way, facts) == max([OPEN, *parts])


def test_the_answer_shows_that_state():
    for facts in random_facts(400):
        answer = decision.decision(facts, (), "", "customary")
        for way in EVERY:
            assert state(answer, way) == STATES[rank_of(way, facts)]


@pytest.mark.parametrize("way", EVERY)
def test_groups_do_not_touch_and_each_can_be_free(way):
    """So that a property which fails in its groups fails at a point of the whole space, and one that holds there holds."""
    found = groups(way)
    names = [name for group in found for name in group]
    assert len(names) == len(set(names))
    for rule in own_rules(way):
        assert sum(bool({name for name, _ in rule.when} & set(group)) for group in found) == 1
    for group in found:
        assert any(rank(way, facts) == OPEN for facts in points(group)), group


def test_every_point_is_counted_once_and_every_way_can_be_open():
    assert space() > 10**14
    for way in EVERY:
        counted = outcomes(way)
        assert sum(counted.values()) == space()
        assert counted[OPEN] > 0


def test_counts_agree_with_counting_one_by_one():
    """For the way that asks least the whole of its space is small enough to walk through."""
    names = [name for group in groups("licensed-removal") for name in group]
    walked = [rank("licensed-removal", facts) for facts in points(names)]
    share = outcomes("licensed-removal")
    for one in (OPEN, decision.AFTER):
        assert walked.count(one) * space() == share[one] * len(walked)


# Every outcome.


def test_every_outcome_has_a_next_step_reasons_and_cautions_in_order():
    ids = [one.id for one in sources.SOURCES]
    for facts in random_facts(600):
        answer = decision.decision(facts, (), "Narnia", "customary")
        steps = listing(answer, "next")
        assert steps and steps[-1] in [decision_facts.action(one).text for one in ("choose", "wait")]
        assert answer.sentence == "First: " + steps[0]
        order = [one.text for one in ACTIONS]
        assert [order.index(text) for text in steps] == sorted(order.index(text) for text in steps)
        for item in answer.items:
            assert item.reasons
            assert all(source in ids for _, source in item.reasons)
        ranks = [signals.SIGNAL_WORDS.index(one.signal) for one in answer.cautions]
        assert ranks == sorted(ranks)
        words = json.dumps([dataclasses.asdict(one) for one in answer.items]) + " ".join(
            [*steps, *answer.notes, answer.sentence]
        )
        assert not any(word in words.lower() for word in NEVER)
        assert "Local rules were not checked" in answer.notes[0]


def test_nobody_is_told_to_touch_it_before_the_result():
    touching = [one.text for one in ACTIONS if one.touches]
    assert len(touching) >= 4
    for facts in random_facts(600):
        if decision.cleared(facts):
            continue
        answer = decision.decision(facts, (), "", "customary")
        said = listing(answer, "next") + listing(answer, "best_question")
        assert not [text for text in touching for one in said if text in one]
        assert not {"hand_test", "patch_test"} & set(answer.asks)
        assert {"asbestos-first", "licensed-removal", "asbestos-trace"} & {one.id for one in answer.cautions}


def test_without_a_result_the_laboratory_comes_first_and_is_the_best_question():
    answer = asked()
    assert listing(answer, "next")[0].startswith("Have an accredited inspector sample this ceiling")
    assert answer.asks[0] == "asbestos_result"
    assert answer.cautions[0].id == "asbestos-first"
    for way in TOUCH:
        assert state(answer, way) == "not known"


def test_people_come_before_the_laboratory():
    steps = listing(asked(sag="yes", patch_test="wet"), "next")
    assert steps[0].startswith("Get everyone out") and steps[1].startswith("Keep out of the room")


# One answer more.


def test_the_change_that_is_told_is_the_change_that_happens():
    """Each answer that is said to change or close a way is tried."""
    labels = {
        one.field.label + (" " if one.field.label.endswith("?") else ": ") + label: (one.field.name, value)
        for one in QUESTIONS
        for value, label in one.answers
    }
    tried = 0
    for facts in random_facts(150):
        answer = decision.decision(facts, (), "", "customary")
        for (way, _), item in zip(WAYS, answer.items):
            for part in item.text.removeprefix("One answer would change it: ").rstrip(".").split("; "):
                wanted = (
                    "closed" if part.startswith("One answer would close it") else part.removeprefix("to ").split(",")[0]
                )
                for told in part.split("“")[1:]:
                    name, value = labels[told.split("”")[0]]
                    assert STATES[rank_of(way, {**facts, name: value})] == wanted, (item, facts)
                    tried += 1
    assert tried > 300


def test_the_best_question_can_free_a_way():
    for facts in random_facts(200):
        for name in decision.decision(facts, (), "", "customary").asks[:1]:
            before = [rank_of(way, facts) for way in EVERY]
            least = [min(rank_of(way, {**facts, name: value}) for value in DOMAINS[name][1:]) for way in EVERY]
            assert all(now <= then for now, then in zip(least, before))
            assert facts[name] == "unknown"


def test_a_result_is_not_an_opinion():
    """Nobody is told that another result would open a way."""
    for result in ("trace", "found"):
        for item in asked(asbestos_result=result).items[:-1]:
            assert item.state == "closed" and item.text == "No one other answer opens it."


# Answers that do not go together.


@pytest.mark.parametrize("rule", [one for one in RULES if one.clash], ids=lambda one: one.id)
def test_a_contradiction_shows_both_answers(rule):
    facts = {name: values[0] for name, values in rule.when}
    answer = asked(**facts)
    told = listing(answer, "contradictions")
    assert len(told) == 1 and rule.says in told[0]
    for name, value in facts.items():
        one = decision_facts.question(name)
        assert one.field.label in told[0] and dict(one.answers)[value] in told[0]
    for way in TOUCH:
        assert STATES.index(state(answer, way)) >= NOT_KNOWN


def test_a_clear_result_opens_only_the_layers_that_it_names():
    rest = dict(next(one["facts"] for one in CEILINGS if one["id"] == "concrete")) | {"result_layers": "texture"}
    answer = asked(**rest)
    assert state(answer, "leave-and-seal") == "open"
    for way in TOUCH[:-1]:
        assert STATES.index(state(answer, way)) >= NOT_KNOWN


def test_a_place_that_the_book_does_not_know_says_so():
    assert "“Narnia”" in asked(place="Narnia").notes[0] and "not checked" in asked(place="Narnia").notes[0]
    assert "not checked" not in asked(place="Colorado").notes[0]
    found = asked(
        asbestos_result="found", place="Colorado", sag="no", stains="none", loose_board="tight", height="usual"
    )
    assert any(source == "colorado-reg-8" for text, source in found.items[-1].reasons)


def test_an_answer_that_is_not_offered_is_refused():
    answer, faults = catalogue.work_out("decision", {"sag": "a little", "moon": "full"})
    assert answer is None
    assert {one.field for one in faults} == {"sag", "moon"}


# Ten ceilings.


@pytest.mark.parametrize("ceiling", CEILINGS, ids=lambda one: one["id"])
def test_a_ceiling_comes_out_as_a_careful_tradesman_would_say(ceiling):
    answer = asked(**ceiling["facts"])
    for way, says in ceiling["says"].items():
        assert state(answer, way) == says, (way, answer.items)
    assert listing(answer, "next")[0] == decision_facts.action(ceiling["first"]).text
    assert bool(listing(answer, "contradictions")) == ("clash" in ceiling)
    if "asks" in ceiling:
        assert (answer.asks or ("",))[0] == ceiling["asks"]
    assert ceiling["why"].endswith(".")


def test_there_are_ten_ceilings_and_they_reach_every_state_of_every_way():
    assert len(CEILINGS) == len({one["id"] for one in CEILINGS}) == 10
    reached = {(way, says) for one in CEILINGS for way, says in one["says"].items()}
    for way in TOUCH:
        assert {(way, "closed"), (way, "not known")} <= reached
        assert {(way, "open"), (way, "open after")} & reached


def test_closed_is_the_last_state():
    assert STATES[CLOSED] == "closed" and len(STATES) == 4
