"""The rules of the choice of way: the lint that reads them can fail, the chart shows all of them, a first reader can read them."""

import dataclasses
import re

import pytest

from calc import catalogue
from calc.decision import questions, shared_figures
from calc.decision.rules import RULES
from handbook import build
from handbook.evidence import decisions
from handbook.lint import checks

GOOD = RULES[0]


def lint(*changed):
    return [f"{one.code} {one.message}" for one in decisions.faults((*RULES, *changed))]


def made(**changes):
    return dataclasses.replace(
        GOOD, **({"id": "new-rule", "when": (("sag", ("yes",)), ("cracks", ("fine",)))} | changes)
    )


WRONG = [
    (made(id=GOOD.id, when=GOOD.when), "RULE-NAME the rule asbestos-found stands twice"),
    (made(ways=("plaster-over",)), "RULE-NAME the rule new-rule speaks of plaster-over, which is no way"),
    (made(ways=()), "RULE-NAME the rule new-rule speaks of no way"),
    (made(when=(("moon", ("full",)),)), "RULE-NAME the rule new-rule asks for moon, which is no question"),
    (made(when=(("sag", ("a little",)),)), "RULE-NAME the rule new-rule waits for a little, which is no answer to sag"),
    (made(effect="open"), "RULE-NAME the rule new-rule has the effect open"),
    (made(action="dance"), "RULE-NAME the rule new-rule names dance, which is nothing to do"),
    (made(caution="moon"), "RULE-NAME the rule new-rule names moon, which is no caution"),
    (made(source=""), "RULE-SOURCE the rule new-rule has no source in the register"),
    (made(says="Because"), "RULE-SOURCE the rule new-rule gives no reason in a sentence"),
    (made(reviewed_on=""), "RULE-SOURCE the rule new-rule has no day"),
    (made(review_by="next year"), "RULE-SOURCE the rule new-rule has no day where “next year” stands"),
    (made(when=(("sag", ("yes",)), ("sag", ("no",)))), "RULE-NEVER the rule new-rule can never fire: no answer fits"),
    (made(when=(("sag", ("a little",)),)), "RULE-NEVER the rule new-rule can never fire"),
    (made(when=()), "RULE-NEVER the rule new-rule has no answer to wait for"),
    (made(when=(("times_painted", ("never",)), ("sheen", ("gloss",)), ("sag", ("no",)))), "contradict each other, says never-painted-shines"),
    (made(when=(("sag", ("yes",)),), effect="open after"), "RULE-CLASH the rule new-rule says open after, and sags says closed of the same answers"),
]  # fmt: skip


def test_the_rules_of_the_book_have_no_fault():
    assert decisions.faults() == []
    assert lint(made()) == []


@pytest.mark.parametrize(("rule", "says"), WRONG, ids=lambda one: getattr(one, "id", ""))
def test_a_wrong_rule_is_told(rule, says):
    assert any(says in one for one in lint(rule)), lint(rule)


def test_every_code_of_a_rule_is_provoked():
    assert {says.split(" ")[0] for _, says in WRONG if says.startswith("RULE-")} == {
        one for one in checks.CODES if one.startswith("RULE-")
    }


def test_a_fault_stands_at_the_line_of_its_rule():
    broken = dataclasses.replace(GOOD, source="moon")
    found = decisions.faults((broken, *RULES[1:]))
    line = decisions.PATHS[0].read_text(encoding="utf-8").splitlines()[found[0].line - 1]
    assert [one.code for one in found] == ["RULE-SOURCE"] and f'DecisionRule("{GOOD.id}"' in line


def test_every_rule_question_action_and_way_is_used():
    asked = {name for rule in RULES for name, _ in rule.when}
    assert asked == {one.field.name for one in questions.QUESTIONS}
    done = {one for rule in RULES for one in rule.actions} | {one.action for one in questions.QUESTIONS}
    assert {one.id for one in questions.ACTIONS} == done | {"choose", "choose-after", "wait"}
    for way, _ in questions.WAYS:
        assert (build.DOCS / "methods" / f"{way}.md").exists()
        assert any(way in rule.ways for rule in RULES)


def test_the_chart_shows_every_rule_and_every_question():
    text = build.expected_html("reference/chart.md").read_text(encoding="utf-8")
    rows = re.findall(r"<tr>.*?</tr>", text)[1:]
    assert len(rows) == len(RULES)
    for rule in RULES:
        row = next(one for one in rows if decisions.escaped(rule.says) in one)
        assert row.count(decisions.MARKS[rule.effect] + "<span") == len(rule.ways)
        assert f'href="#source-{rule.source}"' in row and f'id="source-{rule.source}"' in text
    for one in questions.QUESTIONS:
        assert f"<b>{decisions.escaped(one.field.label)}</b>" in text


def test_the_ceilings_are_printed_as_they_come_out():
    text = build.expected_html("reference/ceilings.md").read_text(encoding="utf-8")
    for one in decisions.read_ceilings():
        answer, _ = catalogue.work_out("decision", one["facts"])
        section = text.partition(f'id="{one["id"]}"')[2].partition("</section>")[0]
        assert decisions.escaped(answer.sentence) in section and decisions.escaped(one["why"]) in section
        for item in answer.items:
            assert f"{item.name}: <b>{item.state}</b>" in section


def test_a_seventh_grader_reads_the_questions_the_reasons_and_what_to_do():
    asked = " ".join(
        f"{one.field.label.rstrip('?.')}? {one.field.help} {one.field.why} {one.unknown}" for one in questions.QUESTIONS
    )
    for text in (asked, " ".join(rule.says for rule in RULES), " ".join(one.text for one in questions.ACTIONS)):
        assert max(checks.grades(text)) <= 7
    for one in (*(rule.says for rule in RULES), *(one.text for one in questions.ACTIONS)):
        for sentence in re.split(r"(?<=[.:]) ", one):
            assert len(sentence.split()) <= checks.LONGEST_STEP_WORDS, sentence


def test_every_way_has_a_place_for_the_reader_s_own_verdict_at_the_head():
    names = [one.field.name for one in (*questions.QUESTIONS, *shared_figures.SHARED)]
    for way, _ in questions.WAYS:
        text = build.expected_html(f"methods/{way}.md").read_text(encoding="utf-8")
        assert (
            text.index(f'data-way="{way}"')
            < text.index('<div class="alarm alarm-danger" data-caution="asbestos-first"')
            < text.index('class="screen"')
        )
        assert re.search(r'data-facts="([^"]+)"', text).group(1).split() == names


def test_no_rule_hides_in_the_code():
    """What reads the rules names no way but the one that stays open, and no answer but those that clear a ceiling."""
    folder = decisions.PATHS[0].parent
    source = (folder / "verdict.py").read_text(encoding="utf-8")
    source += (folder / "decision.py").read_text(encoding="utf-8").partition("CALCULATOR = ")[0]
    for way, _ in questions.WAYS[:-1]:
        assert f'"{way}"' not in source
    for one in questions.QUESTIONS[3:]:
        if one.field.name != "place":
            assert f'"{one.field.name}"' not in source


def test_the_guide_pairs_each_question_with_the_figure_that_tells_it():
    text = (build.DOCS / "assets" / "guide.mjs").read_text(encoding="utf-8")
    pairs = re.search(r"FIGURES = .*?\(\{(.*?)\}\)", text).group(1)
    assert dict(re.findall(r"(\w+): '(\w+)'", pairs)) == {one.question: one.field.name for one in shared_figures.SHARED}
