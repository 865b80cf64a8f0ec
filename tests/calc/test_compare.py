"""The ways side by side: the numbers of each way's own plan, the states of the guide, and what no comparison may say."""

import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import catalogue
from calc.core.answer import public
from calc.core.fields import read
from calc.decision.questions import QUESTIONS, WAYS
from calc.decision.shared_figures import SHARED
from calc.decision.verdict import CLOSED, Look
from calc.job.compare import CALCULATOR, nights_out, ways_of
from calc.job.compare_inputs import facts_and_clashes
from calc.job.labor import hours_of
from calc.job.sides import SIDES
from calc.render import html, text

DOCS = Path(__file__).resolve().parents[2] / "docs"
ROOMS = {"rooms": "Living: 20' x 14'; Bed: 12' x 11'"}
NAMES = dict(WAYS)
PLANNED = ("rooms", "people", "hours_per_day", "work_week", "coats", "paint_coats", "texture_depth_in")


def ask(given_texts):
    answer, refused = catalogue.work_out("compare", ROOMS | given_texts)
    assert answer is not None, refused
    return answer


def looked_at(given_texts):
    values, refused = read(CALCULATOR.fields, ROOMS | given_texts)
    assert refused == ()
    look = Look(facts_and_clashes(values)[0])
    return look, ways_of(values, look)


SIDE = st.integers(6, 24)
JOBS = st.fixed_dictionaries({
    "rooms": st.lists(st.tuples(SIDE, SIDE), min_size=1, max_size=3).map(lambda all_: "; ".join(f"{a}' x {b}'" for a, b in all_)),
    "people": st.integers(1, 3).map(str), "hours_per_day": st.integers(4, 10).map(str), "coats": st.integers(1, 3).map(str),
    "paint_coats": st.integers(0, 2).map(str), "texture_depth_in": st.sampled_from(["0", "1/8", "1/4"]),
    "work_week": st.sampled_from(["mon-fri", "all", "weekend"]),
})  # fmt: skip
ANSWERS = st.fixed_dictionaries(
    {}, optional={one.field.name: st.sampled_from([value for value, _ in one.answers]) for one in QUESTIONS if one.field.kind == "choice"}
)  # fmt: skip


@settings(max_examples=10, deadline=None)
@given(JOBS, ANSWERS)
def test_each_way_has_the_numbers_of_its_own_plan(job, answers):
    answer = ask(job | answers)
    cells = dict(zip(NAMES, answer.table.rows, strict=True))
    settles = {name: answers[name] for name in ("asbestos_result", "result_rooms", "result_layers") if name in answers}
    for way, item in zip(NAMES, answer.items, strict=True):
        if item.state == "closed":
            continue
        plan, refused = catalogue.work_out("plan", {name: job[name] for name in PLANNED} | settles | {"way": way})
        assert plan is not None, refused
        assert cells[way][2] == plan.figure
        assert cells[way][3] == plan.figure_label.rpartition("spread over ")[2]
        assert f": {cells[way][4]} hours of work" in plan.sentence
        assert item.text.startswith(f"{cells[way][2]} in {cells[way][3]}. {cells[way][4]} hours")


@settings(max_examples=30, deadline=None)
@given(ANSWERS)
def test_a_closed_way_has_no_days_and_each_state_is_the_guides(answers):
    answer = ask(answers)
    guide, _ = catalogue.work_out("decision", answers)
    assert [(one.name, one.state) for one in answer.items] == [(one.name, one.state) for one in guide.items]
    assert answer.items[-1].state != "closed"
    for item, row, told in zip(answer.items, answer.table.rows, guide.items, strict=True):
        if item.state == "closed":
            assert item.text == "" and set(row[2:]) == {""} and item.reasons == told.reasons[:1]
        else:
            assert item.text and all(row[2:])
    settled = not guide.branches
    for item, row in zip(answer.items[:-1], answer.table.rows, strict=False):
        if item.state != "closed":
            assert (item.reasons[0][0].startswith("Only if the laboratory finds no asbestos")) == (not settled)
            assert ("only if" in row[1]) == (not settled)
    assert answer.sentence.startswith("Only if") == (not settled)


@settings(max_examples=30, deadline=None)
@given(ANSWERS)
def test_no_way_is_praised_and_nobody_is_let_off(answers):
    answer = ask(answers)
    for shown in (text.answer(answer), html.answer(answer)):
        told = re.sub(r"lead-safe", "", shown.lower())
        assert not re.findall(r"\b(best|better|safe|safest|exempt|recommended)\b", told)
    assert [one.name for one in answer.items] == [name for _, name in WAYS]


@settings(max_examples=12, deadline=None)
@given(JOBS)
def test_more_people_never_more_days_and_a_bigger_room_never_fewer_hours(job):
    _, now = looked_at(job)
    _, more = looked_at(job | {"people": str(int(job["people"]) + 1)})
    _, bigger = looked_at(job | {"rooms": job["rooms"] + "; 10' x 10'"})
    for one, crowd, house in zip(now, more, bigger, strict=True):
        assert crowd.shorter.last_day <= one.shorter.last_day and crowd.longer.last_day <= one.longer.last_day
        assert all(a < b for a, b in zip(hours_of(one.works), hours_of(house.works), strict=True))
        assert 0 <= nights_out(one.shorter, one.works) <= one.shorter.last_day - one.shorter.first_day


@pytest.mark.parametrize("one", QUESTIONS, ids=lambda one: one.field.name)
def test_every_question_is_taken_and_folded_away(one):
    field = next(field for field in CALCULATOR.fields if field.name == one.field.name)
    assert field.rare and field.choices == one.field.choices
    shared = {each.field.name for each in SHARED}
    assert shared <= {each.name for each in CALCULATOR.fields}
    for value, _ in one.answers:
        if value != "elsewhere":
            told = "" if value == "unknown" and one.field.kind == "text" else value
            assert ask({one.field.name: told}).facts[[q.field.name for q in QUESTIONS].index(one.field.name)] == (one.field.name, value)  # fmt: skip


def test_a_figure_as_the_form_has_it_answers_nothing_and_one_that_was_measured_does():
    assert dict(ask({}).facts)["height"] == "unknown"
    assert dict(ask({"ceiling_height_ft": "12"}).facts)["height"] == "high"
    clash = ask({"ceiling_height_ft": "12", "height": "low"})
    assert dict(clash.facts)["height"] == "unknown" and "do not agree" in clash.listings[0].rows[0][0]


def test_nights_by_hand():
    """One small room of texture sealed: covered on the first day, dust settles over night at the end."""
    clean = {"asbestos_result": "none", "result_rooms": "this", "result_layers": "all"}
    _, ways = looked_at(clean | {"rooms": "10' x 10'"})
    for one in ways:
        for days in (one.shorter, one.longer):
            by_stage = {}
            for slot in days.slots:
                by_stage.setdefault(one.works[slot.work].stage.id, []).append(slot)
            leaves = next(name for name in ("removal", "cover", "cover-floor") if name in by_stage)
            returns = "wipe-again" if "wipe-again" in by_stage else "uncover-floor"
            assert nights_out(days, one.works) == by_stage[returns][-1].end[0] - by_stage[leaves][0].start[0]


def test_what_goes_wrong_stands_on_the_page_of_the_way():
    assert [one.id for one in SIDES] == list(NAMES)
    for one in SIDES:
        page = (DOCS / "methods" / f"{one.id}.md").read_text(encoding="utf-8")
        assert f"- see: {one.see}\n  why: {one.why}\n" in page


def test_labor_is_hours_at_the_rate_and_none_without_one():
    """By hand: whole money, the least down and the most up."""
    clean = {"asbestos_result": "none", "result_rooms": "this", "result_layers": "all"}
    _, ways = looked_at(clean)
    priced = ask(clean | {"rate_per_hour": "45.50"})
    for one, row in zip(ways, priced.table.rows, strict=True):
        low, high = hours_of(one.works)
        assert row[-1] == f"{int(low * 91 / 2):,} to {-int(-high * 91 // 2):,}"
    assert "Labor" not in "".join(ask(clean).table.heads) and "Labor at your rate" not in text.answer(ask(clean))
    assert "materials not in it" in priced.items[0].text


def test_the_json_says_what_the_cards_say():
    told = public(ask({}))
    assert len(told["items"]) == 8 and all(one["page"].startswith("methods/") for one in told["items"])
    assert all(one["state"] != "closed" for one in told["items"] if one["text"]) and CLOSED == 3
