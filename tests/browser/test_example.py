"""A worked example is never taken for an answer: beside figures of a reader's own, beside a broken link, or on paper.
And what a reader types is read at once: a fault shows while it is typed, and what is emptied takes its answer along."""

import re

import pytest
from playwright.sync_api import expect

from calc import catalogue
from calc.core.fields import entries
from conftest import until
from handbook.evidence import example
from test_job import PAGE_OF, field, form, open_way, ready, submit

pytestmark = [pytest.mark.browser, pytest.mark.slow]
BOARD = "methods/board-over/"


def shows(page, name, what):
    expect(form(page, name).locator(".result")).to_have_attribute("data-shows", what)


def no_figure(page, name):
    expect(form(page, name).locator(".figure")).to_have_count(0)


def test_an_example_says_so_and_its_figure_is_not_black(page, address):
    open_way(page, address)
    shows(page, "skim", "example")
    expect(form(page, "skim").locator(".origin")).to_contain_text("Worked example")
    mark = form(page, "skim").locator(".result").evaluate("one => getComputedStyle(one, '::before').content")
    assert "EXAMPLE" in mark
    ink = page.evaluate("getComputedStyle(document.body).color")
    assert form(page, "skim").locator(".figure strong").evaluate("one => getComputedStyle(one).color") != ink


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_an_example_has_other_figures_than_the_fields_beside_it(calculator):
    fields = {field.name: field for field in calculator.fields}
    for name, text in example.inputs_of(calculator.name):
        field = fields[name]
        if not field.choices:  # what is chosen from a list is no figure
            assert not {*entries(text)} & {field.default, field.example, *entries(field.example)} - _parts(name), name


def _parts(name):
    """Entries that show how a list is written, among others that differ."""
    return (
        {"box hall: 0 in", "fan living: 7' 4\"", "smoke hall", "cupboard: 1/4 in", "12 days ago: 4 sq ft"}
        if name in ("fixtures", "earlier_work")
        else set()
    )


@pytest.mark.parametrize("text", ["L", "Living: 20' x 14'"])
def test_an_example_goes_at_the_first_letter_in_its_form(page, address, text):
    open_way(page, address)
    field(page, "rooms").press_sequentially(text)
    for name in ("skim", "takeoff"):
        expect(form(page, name).locator(".result")).not_to_have_attribute("data-shows", "example")
    no_figure(page, "skim")  # its depth is still to be filled in
    expect(form(page, "skim").locator(".origin")).to_contain_text("Depth of the texture")
    shows(page, "drying", "answer")  # nobody has typed there: it goes by the usual values, and says so
    expect(form(page, "drying").locator(".origin")).to_contain_text("the usual values")


def test_an_example_is_gone_where_the_device_fills_a_field(page, address):
    open_way(page, address)
    field(page, "rooms").fill("Den: 10 x 10")
    page.goto("about:blank")
    open_way(page, address, path=BOARD)
    shows(page, "board", "answer")
    shows(page, "carry", "answer")  # no example beside figures of one's own
    expect(form(page, "carry").locator(".headline")).to_contain_text("by the usual values")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")


@pytest.mark.parametrize(
    "fragment",
    [
        "#skim?room=Living:+20'+x+14'",
        "#skim?roo",
        "#skim?",
        "#skim?rooms=Living:+20'",
        "#skim?rooms=Living:+20'+x+14'&texture",
        "#skim?rooms=%ZZ",
    ],
)
def test_a_broken_link_shows_no_examples_number(page, address, fragment):
    open_way(page, address, fragment, shut=True)
    shows(page, "skim", "nothing")
    for one in page.locator(".calc").all():
        expect(one.locator(".result")).not_to_have_attribute("data-shows", "example")
    no_figure(page, "skim")
    told = page.locator("#figures, #skim .headline small").filter(visible=True)
    expect(told.first).to_contain_text(re.compile("left out|cut short|To put right: Rooms"))
    expect(told.first).to_be_in_viewport()


def test_a_broken_link_leaves_the_readers_own_figures(page, address):
    open_way(page, address)
    field(page, "rooms").fill("Mine: 11 x 11")
    page.goto("about:blank")
    open_way(page, address, "#takeoff?room=Theirs:+10+x+10")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("121 sq ft")
    expect(page.locator("#figures")).to_contain_text("left out: room=Theirs")
    assert field(page, "rooms").input_value() == "Mine: 11 x 11"


def test_paper_shows_no_example(make_page, address):
    page = make_page(1000)
    open_way(page, address, "#board?rooms=A:+12+x+10;+B:+11+x+10;+C:+9+x+8", BOARD)
    shows(page, "board", "answer")
    page.goto(address + BOARD)  # as somebody comes back to it
    shows(page, "board", "answer")
    shows(page, "fixtures", "nothing")
    page.emulate_media(media="print")
    assert form(page, "board").locator(".figure").is_visible()
    for name in ("fixtures",):
        assert form(page, name).locator("h3").is_visible()
        assert not form(page, name).locator(".figure").is_visible()
        assert not form(page, name).locator(".origin").is_visible()
        assert "No figures of your own yet" in form(page, name).locator(".result").evaluate(
            "one => getComputedStyle(one, '::before').content"
        )


def test_a_page_without_a_script_prints_no_example_either(make_page, address):
    page = make_page(1000, java_script_enabled=False)
    page.goto(address + BOARD)
    page.emulate_media(media="print")
    assert page.locator(".figure").filter(visible=True).count() == 0


def under_its_form(control):
    return control.evaluate("one => Math.round(one.getBoundingClientRect().top - one.form.getBoundingClientRect().top)")


BAD_AT_ONCE = [
    ("takeoff", "rooms", "Living 20' x"),
    ("takeoff", "rooms", "A: -3 x 4"),
    ("drying", "humidity_pct", "140"),
]


@pytest.mark.parametrize(("name", "asked", "text"), BAD_AT_ONCE)
def test_a_fault_shows_while_it_is_typed_and_goes_when_it_is_right(page, address, name, asked, text):
    open_way(page, address)
    control = field(page, asked)
    control.fill("")
    control.press_sequentially(text)
    fault = page.locator(f"#{name}-{asked}-fault")
    expect(fault).to_be_visible()
    expect(control).to_have_attribute("aria-invalid", "true")
    expect(control).to_be_focused()
    expect(form(page, name).locator(".faults")).to_be_hidden()
    top = under_its_form(control)
    control.fill("10 x 10" if asked == "rooms" else "60")
    expect(fault).to_be_hidden()
    expect(control).not_to_have_attribute("aria-invalid", "true")
    assert under_its_form(control) == top, "the field stays under the finger"


def test_fields_that_nobody_touched_are_not_blamed_while_one_types(page, address):
    open_way(page, address)
    field(page, "rooms").fill("10 x 10")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")
    expect(form(page, "skim").locator(".origin")).to_contain_text("Still to fill in")
    assert form(page, "skim").locator(".fault").filter(visible=True).count() == 0


def test_what_is_emptied_takes_its_answer_along(page, address):
    open_way(page, address, "#takeoff?rooms=Den:+10+x+10")
    shows(page, "takeoff", "answer")
    field(page, "rooms").fill("")
    shows(page, "takeoff", "nothing")
    no_figure(page, "takeoff")
    until(page, "!location.hash.includes('Den')")  # the address follows a moment after the keystroke
    page.reload()
    ready(page)
    shows(page, "takeoff", "example")  # nobody's figures any more


def test_a_usual_value_that_steps_in_for_an_empty_field_is_told(page, address):
    open_way(page, address, "#drying?humidity_pct=70")
    field(page, "humidity_pct").fill("")
    expect(form(page, "drying").locator(".origin")).to_contain_text(re.compile(r"left empty, so the usual \d+ %"))


def test_an_answer_is_told_to_whoever_does_not_see_it(page, address):
    open_way(page, address)
    rooms = field(page, "rooms")
    rooms.press_sequentially("Den: 10 x 10")
    status = form(page, "takeoff").locator(".status[role=status]")
    expect(status).to_contain_text("100 sq ft")
    page.wait_for_timeout(1500)
    expect(status).to_contain_text("100 sq ft")
    expect(form(page, "skim").locator(".status")).to_have_text("")  # one voice at a time
    rooms.fill("Den: 10 x")
    expect(status).not_to_contain_text("100 sq ft")
    expect(status).not_to_have_text("")
    rooms.fill("Den: 9 x 10")
    submit(page, "takeoff")
    expect(status).to_contain_text("90 sq ft")


def test_every_form_has_its_place():
    assert set(PAGE_OF) == set(catalogue.NAMES)
