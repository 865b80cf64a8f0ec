"""The choice of way: what must never happen, at every point of the space of answers; thirteen ceilings; lists and questions."""

import dataclasses
import json
import random

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

from calc import catalogue
from calc.decision import decision, questions, shared_figures, verdict
from calc.decision.decision import AFTER, CLOSED, NOT_KNOWN, OPEN, STATES, fires
from calc.decision.questions import ACTIONS, QUESTIONS, WAYS
from calc.evidence import cautions, sources
from calc.render import html
from handbook.evidence import decisions

CEILINGS = decisions.read_ceilings()
DUSTY = ("dry-scrape", "sand", "skim-over", "board-over")
"""Ways whose dust is planned for first, whoever does the work: never plainly open."""
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


@pytest.mark.parametrize("rule", [one for one in RULES if one.guards], ids=lambda one: one.id)
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
    for facts in random_facts(300):
        for way in EVERY:
            parts = [rank(way, {name: facts[name] for name in group}) for group in groups(way)]
            assert rank(way, facts) == max([OPEN, *parts])


def test_the_answer_shows_that_state():
    for facts in random_facts(400):
        answer = decision.decision(facts, (), "", "customary")
        for way in EVERY:
            assert state(answer, way) == STATES[rank(way, facts)]


@pytest.mark.parametrize("way", EVERY)
def test_groups_do_not_touch_and_each_can_be_free(way):
    """So that a property which fails in its groups fails at a point of the whole space, and one that holds there holds.
    What is never plainly open is open after something in one group alone: who does the work."""
    found = groups(way)
    names = [name for group in found for name in group]
    assert len(names) == len(set(names))
    for rule in own_rules(way):
        assert sum(bool({name for name, _ in rule.when} & set(group)) for group in found) == 1
    for group in found:
        least = AFTER if way in DUSTY and "who_works" in group else OPEN
        assert min(rank(way, facts) for facts in points(group)) == least, group


def test_every_point_is_counted_once_and_only_dusty_ways_are_never_plainly_open():
    assert space() > 10**18
    for way in EVERY:
        counted = outcomes(way)
        assert sum(counted.values()) == space()
        assert (counted[OPEN] == 0) == (way in DUSTY) and counted[AFTER] > 0


def test_counts_agree_with_counting_one_by_one():
    """Some groups of the way that asks least, walked through together and one by one, count alike."""
    found = [group for group in groups("licensed-removal") if len(group) < 3]
    assert len(found) > 5
    names = [name for group in found[:6] for name in group]
    walked = [rank("licensed-removal", facts) for facts in points(names)]
    free = 1
    for group in found[:6]:
        free *= sum(rank("licensed-removal", facts) == OPEN for facts in points(group))
    assert walked.count(OPEN) == free
    share = outcomes("licensed-removal")
    assert share[OPEN] + share[decision.AFTER] == space()


# Every outcome.


def test_every_outcome_has_a_next_step_reasons_and_cautions_in_order():
    ids = [one.id for one in sources.SOURCES]
    for facts in random_facts(600):
        answer = decision.decision(facts, (), "Narnia", "customary")
        steps = listing(answer, "next")
        assert steps and steps[-1] in [questions.action(one).text for one in ("choose", "choose-after", "wait")]
        assert answer.sentence == "First: " + steps[0]
        order = [one.text for one in ACTIONS]
        assert [order.index(text) for text in steps] == sorted(order.index(text) for text in steps)
        for item in answer.items:
            assert item.reasons
            assert all(source in ids for _, source in item.reasons)
        ranks = [cautions.SIGNAL_WORDS.index(one.signal) for one in answer.cautions]
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


# People first.

CLEAN = {"asbestos_result": "none", "result_rooms": "this", "result_layers": "all"}
FALLING = ({"sag": "yes"}, {"stains": "wet"}, {"loose_board": "loose"})


def ids(answer):
    """The ids of what to do next."""
    by_text = {one.text: one.id for one in ACTIONS}
    return [by_text[text] for text in listing(answer, "next")]


@pytest.mark.parametrize("what", FALLING, ids=str)
@pytest.mark.parametrize("result", [{}, {"asbestos_result": "found"}, CLEAN], ids=["untested", "found", "clean"])
def test_out_from_under_it_power_off_and_a_prop_come_before_anybody_is_sent_there(what, result):
    answer = asked(**what, **result)
    told = ids(answer)
    first = ["get-out", "power-off"] + ["stop-water"] * ("stains" in what) + ["prop"]
    assert told[: len(first)] == first
    assert answer.sentence == "First: " + questions.action("get-out").text
    if not result:
        assert "sample" in told[len(first) :]
    assert any(one.id == "ceiling-load" for one in answer.cautions)


def test_somebody_qualified_is_called_to_a_ceiling_that_sags():
    told = ids(asked(sag="yes", stains="none", loose_board="tight", **CLEAN))
    assert told[:4] == ["get-out", "power-off", "prop", "check-fixing"] and told[-1] == "wait"


@pytest.mark.parametrize("disturbed", [{"hand_test": "falls"}, {"patch_test": "wet"}], ids=str)
@pytest.mark.parametrize(
    "result",
    [{}, CLEAN | {"result_rooms": "other"}, {"asbestos_result": "none"}, CLEAN | {"result_layers": "mixed"}, {"asbestos_result": "trace"}],
    ids=["untested", "another ceiling", "perhaps another", "mixed", "trace"],
)  # fmt: skip
def test_keep_out_of_a_room_where_fibers_may_be_in_the_air(disturbed, result):
    assert ids(asked(**disturbed, **result))[0] == "keep-out"
    assert "keep-out" not in ids(asked(**result)) and "keep-out" not in ids(asked(**disturbed, **CLEAN))


def test_what_keeps_people_from_harm_is_told_wherever_it_stands():
    urgent = [one.id for one in ACTIONS if one.first]
    seen = set()
    for facts in random_facts(600):
        standing = {
            one
            for rule in RULES
            if rule.effect != "note" and decision.stands(rule, facts)
            for one in rule.actions
            if one in urgent
        }
        told = ids(decision.decision(facts, (), "", "customary"))
        assert told[: len(standing)] == [one for one in urgent if one in standing]
        seen |= standing
    assert seen == set(urgent)
    assert [one.id for one in ACTIONS[: len(urgent)]] == urgent


def test_children_stay_out_of_lead_dust():
    answer = asked(built="later", paint_test="lead", household="risk", **CLEAN)
    assert "keep-children-out" in ids(answer)
    assert "keep-children-out" not in ids(asked(built="later", paint_test="lead", household="adults", **CLEAN))


def test_lead_in_a_late_house_counts_as_lead_and_blocks_no_more_than_that():
    late = asked(**full("clear-and-bare", built="later", paint_test="lead", household="adults"))
    assert not [one for one in late.listings if one.name == "contradictions"]
    assert state(late, "wet-scrape") == "open after" and state(late, "sand") == "closed"
    assert any("so it counts" in text for one in late.items for text, _ in one.reasons)


def full(ceiling, **changes):
    return next(one["facts"] for one in CEILINGS if one["id"] == ceiling) | changes


# Once tested, what else must not be plainly open.


@pytest.mark.parametrize("who", ["owner", "landlord", "firm", "employee", "renter"])
def test_dust_is_planned_for_first_whoever_works(who):
    facts = full("clear-and-bare", patch_test="dry", times_painted="once", who_works=who)
    answer = asked(**facts)
    for way in DUSTY:
        assert state(answer, way) == "open after", way
        reasons = next(one.reasons for one in answer.items if one.page == f"methods/{way}")
        assert any("silica" in text for text, _ in reasons)
    assert "dust-silica" in {one.id for one in answer.cautions}


@pytest.mark.parametrize(
    ("way", "facts", "least"),
    [
        ("sand", {"hand_test": "falls"}, "closed"),
        ("sand", {"texture_depth": "deep"}, "closed"),
        ("skim-over", {"patch_test": "wet"}, "closed"),
        ("skim-over", {"times_painted": "once", "texture_depth": "deep"}, "open after"),
        ("wet-scrape", {"stains": "old"}, "open after"),
        ("leave-and-seal", {"rated_ceiling": "yes", "times_painted": "often", "finish_wanted": "any"}, "open after"),
        ("leave-and-seal", {"sprinklers": "yes", "times_painted": "often", "finish_wanted": "any"}, "open after"),
        ("wet-scrape", {"sprinklers": "unknown"}, "open after"),
        ("board-over", {"sprinklers": "yes"}, "not known"),
        ("board-over", {"heated_ceiling": "yes"}, "closed"),
        ("panel-over", {"heated_ceiling": "yes", "finish_wanted": "any"}, "closed"),
        ("wet-scrape", {"heated_ceiling": "unknown"}, "not known"),
        ("board-over", {"loose_fill": "pebbles"}, "not known"),
        ("wet-scrape", {"loose_fill": "unknown"}, "open after"),
        ("board-over", {"joists": "unknown"}, "not known"),
        ("board-over", {"joists": "far"}, "closed"),
        ("board-over", {"layers_up": "more"}, "not known"),
        ("board-over", {"joists_carry": "unknown"}, "not known"),
        ("board-over", {"height": "low"}, "not known"),
        ("wet-scrape", {"who_works": "renter"}, "open after"),
        ("wet-scrape", {"building": "other"}, "open after"),
    ],
    ids=str,
)  # fmt: skip
def test_one_answer_more_closes_or_delays_it(way, facts, least):
    assert STATES.index(state(asked(**full("clear-and-bare", **facts)), way)) >= STATES.index(least)


def test_concrete_and_plaster_can_tell_their_layers():
    layers = questions.question("result_layers")
    assert "plaster" in layers.field.help and "concrete" in layers.field.help
    assert "board" not in dict(layers.answers)["all"]


# Figures that another form asks for too.


@pytest.mark.parametrize(
    ("typed", "question", "value"),
    [
        ({"year_built": "1977"}, "built", "before-1978"),
        ({"year_built": "1978"}, "built", "later"),
        ({"ceiling_height_ft": "7' 0 1/4\""}, "height", "low"),
        ({"ceiling_height_ft": "7' 1\""}, "height", "spare"),
        ({"ceiling_height_ft": "7' 3\""}, "height", "usual"),
        ({"ceiling_height_ft": "10"}, "height", "usual"),
        ({"ceiling_height_ft": "10' 0 1/8\""}, "height", "high"),
        ({"joist_spacing_in": "16"}, "joists", "close"),
        ({"joist_spacing_in": "19.2"}, "joists", "apart"),
        ({"joist_spacing_in": "24 1/16"}, "joists", "far"),
        ({"texture_depth_in": "1/4"}, "texture_depth", "thin"),
        ({"texture_depth_in": "5/16"}, "texture_depth", "deep"),
        ({"texture_painted": "no"}, "times_painted", "never"),
        ({"texture_painted": "yes"}, "times_painted", "painted"),
        ({"texture_painted": "yes", "times_painted": "often"}, "times_painted", "often"),
        ({"year_built": "1990", "built": "later"}, "built", "later"),
        ({"year_built": "1990", "built": "before-1978"}, "built", "unknown"),
        ({"ceiling_height_ft": "7", "height": "usual"}, "height", "unknown"),
    ],
    ids=str,
)
def test_a_figure_of_another_form_answers_the_question(typed, question, value):
    answer = asked(**typed)
    assert dict(answer.facts)[question] == value
    both = len(typed) == 2 and value == "unknown"
    assert bool(listing(answer, "contradictions")) == both


def test_every_band_is_an_answer_and_the_last_has_no_end():
    for shared in shared_figures.SHARED:
        values = {value for value, _ in questions.question(shared.question).answers}
        assert {band.answer for band in shared.bands} | {answer for _, answer in shared.means} <= values
        limits = [band.limit for band in shared.bands]
        assert limits[:-1] == sorted(limits[:-1]) and all(one is None for one in limits[-1:])
        twins = [
            one
            for other in catalogue.every()
            if other.name != "decision"
            for one in other.fields
            if one.name == shared.field.name
        ]
        assert twins and all(
            (one.kind, one.unit, one.label) == (shared.field.kind, shared.field.unit, shared.field.label)
            for one in twins
        )


# Before the result: both branches.


def test_without_a_result_both_branches_are_told_as_the_engine_would_answer_them():
    for facts in random_facts(200):
        answer = decision.decision(facts, (), "", "customary")
        if decision.settled(facts):
            assert answer.branches == ()
            continue
        for branch, settled in zip(answer.branches, (decision.CLEARED, verdict.FOUND)):
            then = decision.decision({**facts, **dict(settled)}, (), "", "customary")
            assert [one.state for one in branch.items] == [one.state for one in then.items]
        some = dict(verdict.FOUND) | {"asbestos_result": "trace"}
        trace = decision.decision({**facts, **some}, (), "", "customary")
        assert [one.state for one in answer.branches[1].items][:-1] == [one.state for one in trace.items][:-1]
        assert "open" not in answer.figure.replace("No way is open yet", "")


def test_branches_are_told_as_branches_and_nobody_is_told_to_touch_it():
    touching = [one.text for one in ACTIONS if one.touches]
    for facts in random_facts(300):
        answer = decision.decision(facts, (), "", "customary")
        said = json.dumps([dataclasses.asdict(one) for one in answer.branches])
        assert not [text for text in touching if text in said]
        shown = html.answer(answer)
        assert shown.count("Not now: an outcome to come") == len(answer.branches)
        assert shown.count("would be") >= len(answer.branches) * len(EVERY)
        told = {rule.says for rule in RULES for one in rule.actions if questions.action(one).touches}
        assert not [text for text in told if text in said]


def test_before_the_result_only_what_separates_the_branches_is_asked():
    for facts in random_facts(200):
        if decision.settled(facts):
            continue
        none = decision.decision({**facts, **dict(decision.CLEARED)}, (), "", "customary")
        answer = decision.decision(facts, (), "", "customary")
        assert {name for name in answer.asks if name not in dict(decision.CLEARED)} <= set(none.asks)
    # What sags stays closed in both branches, so no wish can matter.
    assert not {"finish_wanted", "light", "floors", "times_painted"} & set(asked(sag="yes").asks)
    assert "asbestos_result" in asked(asbestos_result="unknown").asks


# Notes, the last step, and what is offered.


def test_a_note_shows_whatever_the_state():
    for item in asked(sprayed="later").items[:-1]:
        assert any("No year settles it" in text for text, _ in item.reasons)


def test_choose_is_told_only_where_a_way_is_open():
    last = set()
    for facts in random_facts(600):
        answer = decision.decision(facts, (), "", "customary")
        states = [one.state for one in answer.items[:-1]]
        wanted = "choose" if "open" in states else "choose-after" if "open after" in states else "wait"
        assert ids(answer)[-1] == wanted
        last.add(wanted)
    assert {"choose-after", "wait"} <= last
    assert ids(asked(**full("clear-and-bare")))[-1] == "choose"


def test_no_answer_is_offered_that_nobody_can_bring_about():
    fixed = (
        "built",
        "household",
        "sprayed",
        "above",
        "material",
        "who_works",
        "building",
        "heated_ceiling",
        "rated_ceiling",
        "height",
    )
    for name in fixed:
        assert questions.question(name).changes == ""
    for facts in random_facts(400):
        for item in decision.decision(facts, (), "", "customary").items:
            if item.text.startswith("One answer would change it"):
                for one in QUESTIONS:
                    if one.field.name in fixed:
                        assert "“" + one.field.label not in item.text


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
                    assert STATES[rank(way, {**facts, name: value})] == wanted, (item, facts)
                    tried += 1
    assert tried > 200


def test_the_best_question_can_free_a_way():
    for facts in random_facts(200):
        for name in decision.decision(facts, (), "", "customary").asks[:1]:
            before = [rank(way, facts) for way in EVERY]
            least = [min(rank(way, {**facts, name: value}) for value in DOMAINS[name][1:]) for way in EVERY]
            assert all(now <= then for now, then in zip(least, before))
            assert facts[name] == "unknown"


def test_a_result_is_not_an_opinion():
    """Nobody is told that another result would open a way."""
    for result in ("trace", "found"):
        for item in asked(asbestos_result=result).items[:-1]:
            assert item.state == "closed" and item.text == "No one thing that work or a test can change opens it."


# Answers that do not go together.


@pytest.mark.parametrize("rule", [one for one in RULES if one.clash], ids=lambda one: one.id)
def test_a_contradiction_shows_both_answers(rule):
    facts = {name: values[0] for name, values in rule.when}
    answer = asked(**facts)
    told = listing(answer, "contradictions")
    assert len(told) == 1 and rule.says in told[0]
    for name, value in facts.items():
        one = questions.question(name)
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


# Thirteen ceilings.


@pytest.mark.parametrize("ceiling", CEILINGS, ids=lambda one: one["id"])
def test_a_ceiling_comes_out_as_a_careful_tradesman_would_say(ceiling):
    answer = asked(**ceiling["facts"])
    for way, says in ceiling["says"].items():
        assert state(answer, way) == says, (way, answer.items)
    assert listing(answer, "next")[0] == questions.action(ceiling["first"]).text
    assert bool(listing(answer, "contradictions")) == ("clash" in ceiling)
    if "asks" in ceiling:
        assert (answer.asks or ("",))[0] == ceiling["asks"]
    assert ceiling["why"].endswith(".")


def test_there_are_thirteen_ceilings_and_they_reach_every_state_of_every_way():
    assert len(CEILINGS) == len({one["id"] for one in CEILINGS}) == 13
    reached = {(way, says) for one in CEILINGS for way, says in one["says"].items()}
    for way in TOUCH:
        assert {(way, "closed"), (way, "not known")} <= reached
        assert {(way, "open"), (way, "open after")} & reached


def test_closed_is_the_last_state():
    assert STATES[CLOSED] == "closed" and len(STATES) == 4
