"""Hazard messages on the built pages: none met later than it was, none twice in full, the stop where work could start."""

import json
from pathlib import Path

import met
import pytest

from calc import catalogue
from calc.evidence import cautions
from calc.render import html
from handbook import build
from handbook.content import reading
from handbook.lint import checks, hazards
from handbook.make import blocks
from handbook.make import cautions as grouped

# Where each message of each way was met before pages had heads of rows: no page may tell it later.
RECORDED = json.loads((Path(__file__).parent / "hazard_places.json").read_text(encoding="utf-8"))
HEAD = "---\ntitle: Try\nkind: task\nsummary: A page.\nreviewed: 2026-11-26\nfacts: Made up.\n---\n# Try\n\n"
STOP = "```caution\nid: asbestos-first\n```\n\n"


def caution(name):
    return f"```caution\nid: {name}\n```\n\n"


@pytest.mark.parametrize("way", RECORDED)
def test_no_message_of_a_way_is_met_later_than_it_was(way):
    found = met.met(build.SITE / "methods" / way / "index.html")
    order, places = met.steps(found), met.first_places(found)
    for name, was in RECORDED[way].items():
        now = places.get(name)
        assert now is not None, f"{name} is gone"
        assert met.PLACES.index(now["place"]) <= met.PLACES.index(was["place"]), name
        if was["before"]:
            assert order.index(now["before"]) <= order.index(was["before"]), name


def test_every_way_is_recorded():
    assert set(RECORDED) == {path.parent.name for path in (build.SITE / "methods").glob("*/index.html")}
    assert all(one["asbestos-first"]["place"] == "head" for one in RECORDED.values())


def finished(tmp_path, text):
    """A page of one file, finished and checked; with its faults."""
    docs = tmp_path / "docs" / "prepare"
    docs.mkdir(parents=True, exist_ok=True)
    (docs / "try.md").write_text(HEAD + text, encoding="utf-8")
    page = reading.read_page(docs / "try.md", tmp_path)
    hazards.check_stop(page)
    made = blocks.finished(page)
    hazards.check_finished(page, made)
    return made, [str(one).split(": ", 1)[1] for one in page.faults]


def test_at_the_head_the_stop_is_whole_and_the_others_are_rows_the_gravest_first(tmp_path):
    made, faults = finished(
        tmp_path, caution("fall-ladder") + STOP + caution("live-wires") + "## Part\n\n" + caution("dust-silica")
    )
    assert faults == []
    order = hazards.ANY.findall(made)
    assert order == ["asbestos-first", "live-wires", "fall-ladder", "dust-silica"]
    assert hazards.FULL.findall(made) == ["asbestos-first", "dust-silica"]
    assert "DANGER" in made and "· not tested" in made
    for name in order:
        one = cautions.caution(name)
        for words in (one.hazard, one.consequence, one.avoidance):
            assert made.count(words) == 2, "in its place, and in the list for paper"
    summary = made.split('data-caution="live-wires"')[1].split("</summary>")[0]
    assert cautions.caution("live-wires").avoidance in summary


def test_a_message_twice_in_full_is_a_fault_and_a_row_of_it_is_none(tmp_path):
    step = "```steps\n- id: one\n  caution: fall-ladder\n  do: Look.\n```\n"
    _, faults = finished(tmp_path, "## Part\n\n" + caution("fall-ladder") + step)
    assert [one.split(" ")[0] for one in faults] == ["MESSAGE-TWICE"]
    _, faults = finished(tmp_path, caution("fall-ladder") + "## Part\n\n" + step)
    assert faults == []


def test_what_an_answer_raised_is_not_counted_as_told_twice(tmp_path):
    drying = '```calculator\nuse: drying\nexample:\n  temperature_f: "40"\n  humidity_pct: "50"\n```\n'
    made, faults = finished(tmp_path, "## Part\n\n" + caution("cold-compound") + drying)
    assert made.count('data-caution="cold-compound"') == 2 and faults == []


def test_a_step_that_lost_the_message_that_guards_it_is_a_fault(tmp_path):
    made, faults = finished(
        tmp_path, STOP + caution("fall-ladder") + "## Steps\n\n```steps\n- id: one\n  do: Climb the ladder.\n```\n"
    )
    assert faults == []
    page = reading.read_page(tmp_path / "docs" / "prepare" / "try.md", tmp_path)
    lost = made.replace('data-caution="fall-ladder"', "")
    hazards.check_finished(page, lost)
    assert [one.code for one in page.faults] == ["HAZARD"] and "fall-ladder" in page.faults[0].message


@pytest.mark.parametrize(
    "text",
    [
        "```steps\n- id: one\n  do: Scrape it.\n```\n",
        "```calculator\nuse: wetting\n```\n",
        "## Part\n\n" + STOP + "```calculator\nuse: wetting\n```\n",
    ],
)
def test_where_work_could_start_the_stop_stands_at_the_head(tmp_path, text):
    assert [one for one in finished(tmp_path, text)[1] if one.startswith("STOP")]
    assert not [one for one in finished(tmp_path, STOP + text.replace(STOP, ""))[1] if one.startswith("STOP")]


def test_a_figure_below_a_message_that_it_did_not_raise_is_found(monkeypatch):
    assert hazards.answers_below() == []
    calculator = catalogue.find("board")
    answer, _ = catalogue.work_out("board", dict(calculator.example))
    text = html.answer(answer)
    assert hazards.below(calculator, text) == []
    wrong = html.caution(cautions.caution("lift-board")) + text
    assert hazards.below(calculator, wrong) == ["lift-board"]
    monkeypatch.setattr(hazards.html, "answer", lambda _: wrong)
    assert {one.code for one in hazards.answers_below()} == {"ANSWER-BELOW"}
    assert "ANSWER-BELOW" in checks.CODES


def test_every_page_with_a_calculator_that_touches_the_ceiling_has_the_stop_in_full_before_it():
    """The pages of one calculator each too, where there are any."""
    seen = 0
    for path in build.SITE.rglob("index.html"):
        text = path.read_text(encoding="utf-8")
        touching = [
            one.name for one in catalogue.every() if "asbestos-first" in one.always and f'id="{one.name}"' in text
        ]
        if touching:
            seen += 1
            first = next(one for one in met.met(path) if one.kind == "message")
            assert (first.id, first.place, first.full) == ("asbestos-first", "head", True), path
    assert seen > 8


def test_on_paper_each_message_of_a_page_is_listed_once(tmp_path):
    for page in build.read_all():
        listed = grouped.on_paper(grouped.every(page))
        assert listed.count("<li ") == len(grouped.every(page)) == len(set(grouped.every(page)))
        assert listed in page.finished
