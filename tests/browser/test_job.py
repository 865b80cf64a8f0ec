"""The main job in a real browser on a phone's screen: type rooms, read pails, weight, water and drying."""

import json
import re
import time
from urllib.parse import quote

import pytest
from playwright.sync_api import expect

from calc import browser as calc_browser
from calc import catalogue
from calc.__main__ import main as command
from handbook.evidence import example

pytestmark = [pytest.mark.browser, pytest.mark.slow]
WAY = "methods/skim-over/"


PAGE_OF = {
    "decision": "prepare/choose/", "takeoff": "prepare/measure/", "samples": "prepare/settle/", "lead": "prepare/settle/", "fixtures": "prepare/lower/",
    "reach": "prepare/reach/", "sheeting": "prepare/cover/", "airflow": "prepare/cover/", "wetting": "methods/wet-scrape/",
    "debris": "after/clear-up/", "skim": "methods/skim-over/", "carry": "methods/board-over/", "board": "methods/board-over/",
    "panels": "methods/panel-over/", "taping": "finish/tape/",
    "drying": "finish/dry/", "humidity": "finish/dry/", "paint": "finish/paint/",
    "plan": "work-out/plan/", "compare": "work-out/compare/", "shopping": "work-out/shopping/", "offer": "work-out/offer/",
}  # fmt: skip


def open_way(page, address, fragment="", path=WAY, shut=False):
    """Open a page, and its folds too, as somebody does who works in its forms."""
    page.goto(address + path + fragment)
    ready(page, shut)
    return page


def ready(page, shut=False):
    """Wait until the page is alive; its folds are opened then."""
    page.wait_for_selector("html[data-ready]")
    if not shut:
        page.evaluate("for (const one of document.querySelectorAll('.fold, details.calc, .as-text')) one.open = true")


def field(page, name):
    """A field stands once on a page, whichever forms go by it."""
    return page.locator(f".calc [name={name}]")


def form(page, name):
    return page.locator(f"#{name}")


def submit(page, name):
    if name == "decision" and not form(page, name).locator("button.act[type=submit]").is_visible():
        form(page, name).locator(".guide-tools button", has_text="Show all questions").click()
    form(page, name).locator("button.act[type=submit]").click()


def live_html(page, name):
    """The answer as it stands in the page, as the browser writes it out again, without the ticks that the page adds."""
    return (
        form(page, name)
        .locator(".slot")
        .evaluate(
            """(slot) => {
          const copy = slot.cloneNode(true);
          for (const tick of copy.querySelectorAll('.got')) {
            const name = document.createElement('span');
            name.className = 'label';
            name.textContent = tick.textContent;
            tick.replaceWith(name);
          }
          for (const told of copy.querySelectorAll('.got-told')) told.remove();
          return copy.innerHTML;
        }"""
        )
    )


def as_browser_writes(page, html):
    """The same HTML, taken in and written out again by the browser, so that both can be compared letter by letter."""
    return page.evaluate(
        "(html) => { const box = document.createElement('div'); box.innerHTML = html; return box.innerHTML; }", html
    )


def expected(name, inputs):
    return json.loads(calc_browser.answer(name, json.dumps(inputs)))


def own_inputs(page, name):
    """What the form sends: every field that is not empty."""
    asked = (form(page, name).get_attribute("data-fields") or "").split()
    pairs = page.locator(".calc [name]").evaluate_all("all => all.map(one => [one.name, one.value.trim()])")
    return {key: text for key, text in pairs if text and key in asked}


def test_a_homeowner_learns_what_to_buy(page, address):
    open_way(page, address)
    skim = form(page, "skim")
    field(page, "rooms").fill("Living: 20' x 14'\nHall: 12' x 4'")
    field(page, "texture_depth_in").fill("3/16")
    submit(page, "skim")
    expect(skim.locator(".origin")).to_contain_text("Worked out from your figures: ")
    found = expected("skim", own_inputs(page, "skim"))
    assert live_html(page, "skim") == as_browser_writes(page, found["html"])
    pails = re.search(r'class="figure"><strong>(.*?)</strong>', found["html"]).group(1)
    expect(skim.locator(".figure strong")).to_have_text(pails)
    expect(skim.locator(".by")).to_contain_text("small engine")
    # The rooms stand in the other forms too, and what follows from them.
    assert field(page, "rooms").input_value() == "Living: 20' x 14'\nHall: 12' x 4'"
    expect(page.locator("#takeoff .figure strong")).to_have_text("328 sq ft")
    assert field(page, "texture_depth_in").input_value() == "3/16"
    # The working opens, and its sources are in the page.
    skim.locator(".working summary").click()
    mark = skim.locator(".lines .mark").first
    mark.click()
    assert page.locator(mark.get_attribute("href")).is_visible()


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_the_worked_example_and_both_engines_are_the_same_bytes(page, address, calculator):
    name = calculator.name
    response = page.request.get(address + PAGE_OF[name]).text()
    open_way(page, address, path=PAGE_OF[name])
    given = example.inputs_of(calculator.name)
    for name_of_field, text in given:
        field(page, name_of_field).evaluate("(one, text) => { one.value = text; }", text)
    inputs = own_inputs(page, name)
    found = expected(name, inputs)
    printed = expected(name, dict(given))["html"]
    assert printed in response, "the page prints what calc answers"
    submit(page, name)
    expect(form(page, name).locator(".origin")).to_contain_text("Worked out from your figures: ")
    assert found["html"] == printed
    until = time.monotonic() + 20  # an answer to the fields before they were filled may stand there for a moment
    while live_html(page, name) != as_browser_writes(page, printed) and time.monotonic() < until:
        page.wait_for_timeout(50)
    assert live_html(page, name) == as_browser_writes(page, printed)
    if name == "drying":
        form(page, name).locator(".again").click()
        expect(form(page, name).locator(".by")).to_have_text(
            "Worked out again by the full engine. Both engines agree.", timeout=120_000
        )
        assert live_html(page, name) == as_browser_writes(page, printed)


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_a_link_and_the_command_give_the_same(page, address, calculator, capsys):
    """The same figures by a link, by the command and by the library: one answer, byte for byte."""
    name = calculator.name
    inputs = dict(calculator.example) | {"show_in": "metric"}
    pairs = "&".join(f"{key}={quote(text)}" for key, text in inputs.items())
    open_way(page, address, f"#{name}?{pairs}", PAGE_OF[name])
    page.wait_for_selector(f"#{name}[data-engine]")
    found = expected(name, inputs)
    expect(form(page, name).locator(".origin")).to_contain_text("Worked out from your figures: ")
    assert live_html(page, name) == as_browser_writes(page, found["html"])
    assert command([name, *(f"{key}={text}" for key, text in inputs.items()), "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == found["answer"]


def test_what_gets_in_feeds_the_boards(page, address):
    """The longest sheet of the carrying form stands in the board form, until somebody types another."""
    open_way(page, address, path=PAGE_OF["board"])
    field(page, "turn_from_in").fill("36")
    field(page, "turn_to_in").fill("36")
    submit(page, "carry")
    longest = field(page, "longest_sheet_ft")
    expect(longest).to_have_value(re.compile(r"^8\.\d+$"))
    field(page, "rooms").fill("10 x 12")
    submit(page, "board")
    expect(form(page, "board").locator(".sentence")).to_contain_text("x 8' 0\"")
    longest.fill("10")
    field(page, "turn_to_in").fill("40")
    submit(page, "carry")
    expect(form(page, "carry").locator(".origin")).to_contain_text("40")
    assert longest.input_value() == "10"


def test_what_nobody_measured_feeds_no_boards(page, address):
    """The carrying form answers to its usual figures too, and says nothing of this house by that."""
    open_way(page, address, "#board?rooms=10+x+12&joist_spacing_in=16&show_in=metric", PAGE_OF["board"])
    expect(form(page, "carry").locator(".origin")).to_contain_text("Worked out from your figures")
    expect(form(page, "board").locator(".origin")).to_contain_text("Worked out from your figures")
    expect(field(page, "longest_sheet_ft")).to_have_value("")


def test_a_gap_is_searched_on_by_the_full_engine(page, address):
    open_way(page, address, path=PAGE_OF["board"])
    board = form(page, "board")
    field(page, "rooms").fill("22' x 17'")
    field(page, "sheet_lengths_ft").fill("10")
    submit(page, "board")
    expect(board.locator(".by")).to_contain_text("small engine")
    board.locator(".again").click()
    expect(board.locator(".by")).to_have_text("Worked out on this device by the full engine.", timeout=120_000)
    assert field(page, "effort").input_value() == "thorough"
    assert live_html(page, "board") == as_browser_writes(page, expected("board", own_inputs(page, "board"))["html"])


BAD = [
    ("takeoff", {"rooms": "A: 14' 13\" x 10'"}, "rooms", "less than 12"),
    ("takeoff", {"rooms": "Den: E 14' S 6' W 4' S 5' W 10' N 10'"}, "rooms", "south of where it began"),
    ("takeoff", {"rooms": "A: -3 x 4"}, "rooms", "negative"),
    ("takeoff", {"rooms": "A: 5000' x 4'"}, "rooms", "longer than 200 ft"),
    ("skim", {"rooms": "10 x 10", "texture_depth_in": "1/0"}, "texture_depth_in", "0 below the line"),
    ("drying", {"humidity_pct": "140"}, "humidity_pct", "0 to 100"),
    ("drying", {"temperature_f": "20"}, "temperature_f", "freezes"),
    ("fixtures", {"drop_in": "1/2", "fixtures": "lamp: 1\nbox: x"}, "fixtures", "is none of"),
    ("samples", {"area_sqft": "10", "results": "texture: perhaps"}, "results", "is no result"),
    ("lead", {"disturbed_sqft": "1", "earlier_work": "yesterday: 3"}, "earlier_work", "12 days ago"),
    ("sheeting", {"rooms": "10 x 10", "roll_width_ft": "2", "overlap_in": "18"}, "roll_width_ft", "too narrow"),
]


@pytest.mark.parametrize(("name", "typed", "asked", "says"), BAD)
def test_bad_input_is_told_beside_the_field_and_kept(page, address, name, typed, asked, says):
    open_way(page, address, path=PAGE_OF[name])
    for key, text in typed.items():
        field(page, key).fill(text)
    submit(page, name)
    control = field(page, asked)
    summary = form(page, name).locator(".faults")
    expect(summary).to_contain_text(says)
    expect(summary).to_be_focused()
    expect(control).to_have_attribute("aria-invalid", "true")
    expect(page.locator(f"#{name}-{asked}-fault")).to_contain_text(re.compile("Like: |; try "))
    for key, text in typed.items():
        assert field(page, key).input_value() == text
    summary.locator("a").first.click()
    expect(control).to_be_focused()


def test_an_empty_form_names_what_is_missing(page, address):
    open_way(page, address)
    submit(page, "skim")
    expect(form(page, "skim").locator(".faults li")).to_have_count(2)


def test_putting_it_right_clears_the_faults(page, address):
    open_way(page, address)
    humidity = field(page, "humidity_pct")
    humidity.fill("140")
    submit(page, "drying")
    expect(form(page, "drying").locator(".faults")).to_be_visible()
    humidity.fill("60")
    submit(page, "drying")
    expect(form(page, "drying").locator(".faults")).to_be_hidden()
    assert humidity.get_attribute("aria-invalid") is None


def test_markup_that_is_typed_stays_text(page, address):
    open_way(page, address)
    field(page, "rooms").fill("<img src=x onerror=alert(1)>: 10 x 10")
    submit(page, "takeoff")
    expect(form(page, "takeoff").locator(".origin")).to_contain_text("Worked out from your figures: ")
    assert page.locator(".slot img").count() == 0


def test_metric_is_read_and_shown(page, address):
    open_way(page, address, "#takeoff?rooms=4+m+x+5+m&show_in=metric")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("20 m²")


def test_the_page_is_whole_without_script(make_page, address):
    page = make_page(java_script_enabled=False)
    page.goto(address + WAY)
    for name in ("takeoff", "skim", "drying"):
        assert form(page, name).locator(".headline b").inner_text()
        form(page, name).locator("summary").first.click()
        assert form(page, name).locator("svg.sheet").first.is_visible()
        assert not form(page, name).locator("form").is_visible()
        assert name in form(page, name).locator(".by-command").inner_text()
    assert page.locator("li.hold").count() >= 5


def test_the_small_engine_fails_and_the_full_one_answers(make_page, address):
    page = make_page(service_workers="block", console=False)
    page.route("**/micropython.wasm", lambda route: route.abort())
    open_way(page, address)
    field(page, "rooms").fill("10 x 10")
    submit(page, "takeoff")
    expect(form(page, "takeoff").locator(".by")).to_contain_text(
        "full engine, as the small one could not", timeout=120_000
    )
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")


def test_a_newer_question_takes_the_older_ones_place(page, address):
    open_way(page, address)
    rooms = field(page, "rooms")
    rooms.press_sequentially("Living: 20' x 14'", delay=15)
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("280 sq ft")
