"""Figures of the forms in the steps: what the build prints, what it refuses, what the search says of them, whose practice it is."""

import html
import json
import re

import pytest
from test_faults import HEAD, faults_of, steps

from calc import catalogue
from calc.render import html as answers
from handbook import build
from handbook.content import reading
from handbook.content.live import BRACES, unit_on_paper
from handbook.evidence import example
from handbook.lint import checks
from handbook.make import blocks, search

PAGES = build.read_all()
SPAN = re.compile(
    r'<span class="live" data-figure="(\w+)\.(\w+)" data-shows="example" data-unit="[^"]*">([^<]*)</span>'
)
WETTING = "```calculator\nuse: wetting\n```\n"
DRYING = "```calculator\nuse: drying\n```\n"
WAYS = (
    "wet-scrape", "dry-scrape", "sand", "skim-over", "board-over", "panel-over", "leave-and-seal", "licensed-removal",
)  # fmt: skip
WRONG = [
    ("do: Fill {wetting.water_gal}.", "10:12: LIVE the form wetting does not stand on this page"),
    ("do: Fill {moon.water_gal}.", "10:12: LIVE there is no calculator called moon"),
    ("do: Fill {wetting}.", "10:12: LIVE a figure is written like {wetting.water_gal}, not {wetting}"),
    ("do: Fill it} up.", "10:14: LIVE a figure is written like"),
    ('do: "Fill: {wetting.water_gal}."', "10:14: LIVE the form wetting"),
]
WRONG_BESIDE_FORMS = [
    ("do: Fill {wetting.moon}.", "10:12: LIVE wetting gives no moon; use figure, area_sqft"),
    (
        'do: Go.\n  wait: "{wetting.water_gal}"\n  usual: 1 h',
        "11:10: LIVE a wait is in hours, which wetting.water_gal is not",
    ),
    ('do: Go.\n  wait: "{drying.hours_low}"', "11:9: LIVE a wait by a figure needs “usual”"),
    ("do: Go.\n  wait: {drying.hours_low}", "11:9: DATA"),
]


@pytest.mark.parametrize(("row", "says"), WRONG)
def test_a_figure_that_no_form_gives_is_told_where_it_stands(tmp_path, row, says):
    found = faults_of(tmp_path, HEAD + steps("- id: one", "  " + row))
    assert any(one.startswith("docs/try.md:" + says) for one in found), found


@pytest.mark.parametrize(("row", "says"), WRONG_BESIDE_FORMS)
def test_a_figure_that_its_form_lacks_is_told_where_it_stands(tmp_path, row, says):
    found = faults_of(tmp_path, HEAD + steps("- id: one", "  " + row) + WETTING + DRYING)
    assert any(one.startswith("docs/try.md:" + says) for one in found), found


def test_a_step_is_as_long_as_it_is_read(tmp_path):
    filled = "  do: " + "very " * 18 + "long {wetting.water_gal}."
    assert any("STEP-LONG 21 words" in one for one in faults_of(tmp_path, HEAD + steps("- id: one", filled) + WETTING))


def test_the_name_of_a_figure_is_no_dangerous_verb(tmp_path):
    calm = HEAD + steps("- id: one", "  do: Buy {wetting.water_gal} of it.") + WETTING
    assert not [one for one in faults_of(tmp_path, calm) if "HAZARD" in one]


def test_every_figure_of_the_book_is_what_its_form_shows_for_the_example_of_that_page():
    seen = 0
    for page in PAGES:
        own = {block.data.use: block.data.example for block in reversed(page.blocks) if block.kind == "calculator"}
        for use, name, text in SPAN.findall(blocks.finished(page)):
            answer = example.of_page(use, own[use])
            lines = {line.name: line.shown for line in answer.lines} | {"figure": answer.figure}
            assert html.unescape(text) == lines[name], (page.shown, use, name)
            seen += 1
    assert seen >= 40


@pytest.mark.parametrize("way", WAYS)
def test_every_way_has_figures_in_its_steps_and_says_whose_they_are(way):
    text = build.expected_html(f"methods/{way}.md").read_text(encoding="utf-8")
    assert SPAN.search(text)
    room = html.escape(example.FACTS["rooms"].replace(":", ""), quote=False)
    said = html.unescape(text[text.index('<p class="live-note"') : text.index('<ol class="steps"')])
    assert html.unescape(room) in said and "made-up room" in said


def test_no_page_prints_a_brace_in_a_step():
    for page in PAGES:
        listed = re.search(r'<ol class="steps">.*?</ol>', blocks.finished(page), re.DOTALL)
        assert not listed or not BRACES.search(listed.group())


def test_the_search_tells_no_figure_of_the_example():
    entries = json.loads(search.index(PAGES, build.DOCS))["entries"]
    told = {address: text for address, _, kind, text in entries if kind == "step"}
    assert "In all: …." in told["methods/wet-scrape/#scrape-mist"]
    assert not [text for text in told.values() if BRACES.search(text)]
    wet = next(text for address, _, _, text in entries if address == "methods/wet-scrape/")
    assert "2.7 gal" not in wet and "{" not in wet


def test_a_wait_by_a_form_begins_as_the_usual_one_so_that_no_timer_runs_by_an_example():
    page = next(one for one in PAGES if one.path.stem == "skim-over")
    row = re.search(r'id="skim-one".*?</li>', blocks.finished(page), re.DOTALL)
    assert row and (
        '<span class="wait" data-least="720" data-most="1440" data-hours="drying.hours_low drying.hours_high">Wait 12 to 24 h</span>'
        in row.group()
    )


@pytest.mark.parametrize(
    ("shown", "unit"),
    [("2.7 gal", "gal"), ("9 to 22 hours", "hours"), ("49' 0\"", "ft"), ("1 5/8 in", "in"), ("5", ""), ("0.2 lb/sq ft", "lb/sq ft")],
)  # fmt: skip
def test_the_unit_that_stands_after_a_blank_on_paper(shown, unit):
    assert unit_on_paper(shown) == unit


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_common_practice_is_said_once_under_the_lines(calculator):
    answer = example.answer_of(calculator.name)
    working = answers.answer(answer).partition('<ol class="lines">')[2].partition("</details>")[0]
    lines, _, after = working.partition("</ol>")
    assert 'href="#source-common-practice"' not in lines
    alone = [one for one in answer.lines if one.sources == ("common-practice",)]
    beside = [one for one in answer.lines if "common-practice" in one.sources and len(one.sources) > 1]
    assert ("Lines without a mark are common practice, no source." in after) == bool(alone)
    assert after.count("#source-common-practice") == bool(alone or beside)
    for one in beside:
        assert html.escape(one.label, quote=False) in after
    for one in answer.lines:
        assert one.sources  # else a line without a mark would pass for common practice


def test_the_code_of_a_live_figure_is_listed():
    assert "LIVE" in checks.CODES and reading.LIVE_WAIT.match("{drying.hours_low} to {drying.hours_high}")
