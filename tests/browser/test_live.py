"""Figures in the steps: the reader's own as soon as a form answers, a blank while it does not, never an example beside them or on paper."""

import json

import pytest
from playwright.sync_api import expect

from handbook import build
from handbook.evidence import example
from test_job import field, form, open_way

pytestmark = [pytest.mark.browser, pytest.mark.slow]
WET, SKIM = "methods/wet-scrape/", "methods/skim-over/"
PAGES = [page for page in build.read_all() if page.live]


def live(page, name):
    return page.locator(f'.live[data-figure="{name}"]').first


def note(page, says):
    return page.locator(f'.live-note[data-says="{says}"]')


def on_paper(page, name):
    """What stands before a figure on paper, and how large the figure itself is."""
    return live(page, name).evaluate(
        "one => [getComputedStyle(one, '::before').content, getComputedStyle(one).fontSize]"
    )


def test_an_example_is_marked_and_said_to_be_one(page, address):
    open_way(page, address, path=WET)
    expect(live(page, "wetting.water_gal")).to_have_attribute("data-shows", "example")
    assert live(page, "wetting.water_gal").evaluate("one => getComputedStyle(one).borderBottomStyle") == "dashed"
    expect(note(page, "example")).to_be_visible()
    expect(note(page, "blank")).to_be_hidden()


def test_typed_rooms_change_the_steps_and_no_example_stays(page, address):
    open_way(page, address, path=WET)
    page.evaluate("document.addEventListener('figures-shown', () => (window.heard = (window.heard ?? 0) + 1))")
    field(page, "rooms").fill("Hall: 20' x 14'")
    field(page, "texture_painted").select_option("no")
    expect(live(page, "wetting.water_gal")).to_have_attribute("data-shows", "answer")
    shown = live(page, "wetting.water_gal").text_content()
    expect(form(page, "wetting").locator(".figure strong")).to_have_text(shown)
    expect(page.locator('.live[data-shows="example"]')).to_have_count(0)
    expect(note(page, "example")).to_be_hidden()
    assert page.evaluate("window.heard") > 0


def test_a_form_that_waits_leaves_a_blank_and_is_named_above_the_steps(page, address):
    open_way(page, address, path=SKIM)
    field(page, "rooms").fill("Hall: 20' x 14'")
    expect(live(page, "sheeting.figure")).to_have_attribute("data-shows", "answer")
    expect(live(page, "skim.figure")).to_have_text("…")  # its depth is still to be filled in
    expect(live(page, "skim.figure")).to_have_attribute("title", "Give your rooms, and what the form asks for")
    expect(note(page, "blank").locator('[data-of="skim"]')).to_be_visible()
    expect(note(page, "blank").locator('[data-of="sheeting"]')).to_be_hidden()


def test_figures_that_do_not_work_any_more_leave_a_blank(page, address):
    open_way(page, address, path=WET)
    rooms = field(page, "rooms")
    rooms.fill("Hall: 20' x 14'")
    expect(live(page, "sheeting.figure")).to_have_attribute("data-shows", "answer")
    rooms.fill("Hall: 20' x")
    expect(form(page, "sheeting").locator(".result")).to_have_attribute("data-shows", "earlier")
    expect(live(page, "sheeting.figure")).to_have_text("…")
    rooms.fill("Hall: 20' x 15'")
    expect(live(page, "sheeting.figure")).to_have_attribute("data-shows", "answer")


def test_cleared_figures_leave_no_example_behind(page, address):
    open_way(page, address, path=WET)
    field(page, "rooms").fill("Hall: 20' x 14'")
    expect(live(page, "sheeting.figure")).to_have_attribute("data-shows", "answer")
    page.locator(".clear-figures").first.evaluate("one => one.click()")
    expect(page.locator('.live:not([data-shows="nothing"])')).to_have_count(0)
    expect(live(page, "sheeting.figure")).to_have_text("…")


def test_another_tab_changes_the_steps_of_this_one(page, address):
    open_way(page, address, path=WET)
    other = page.context.new_page()
    open_way(other, address, path=WET)
    field(other, "rooms").fill("Hall: 30' x 24'")
    for one in (other, page):
        expect(live(one, "sheeting.figure")).to_have_attribute("data-shows", "answer")
    expect(live(page, "sheeting.figure")).to_have_text(live(other, "sheeting.figure").text_content())


def test_paper_has_a_line_to_write_on_where_an_example_or_nothing_stands(page, address):
    open_way(page, address, path=WET)
    page.emulate_media(media="print")
    assert on_paper(page, "wetting.water_gal") == ['"______ gal"', "0px"]
    expect(note(page, "example")).to_be_hidden()
    page.emulate_media(media="screen")
    field(page, "rooms").fill("Hall: 20' x 14'")
    expect(live(page, "sheeting.figure")).to_have_attribute("data-shows", "answer")
    page.emulate_media(media="print")
    content, size = on_paper(page, "sheeting.figure")
    assert content == "none" and size != "0px"


def test_a_timer_takes_the_hours_of_the_form_and_never_those_of_an_example(page, address):
    open_way(page, address, path=SKIM)
    wait = page.locator("#skim-one .wait")
    expect(wait).to_have_text("Wait 12 to 24 h")
    field(page, "temperature_f").fill("80")
    expect(form(page, "drying").locator(".result")).to_have_attribute("data-shows", "answer")
    expect(wait).not_to_have_text("Wait 12 to 24 h")
    low, high = wait.text_content().removeprefix("Wait ").split(" to ")
    hours = [round(float(one.removesuffix(" h")) * 60) for one in (low, high)]
    assert [int(wait.get_attribute("data-least")), int(wait.get_attribute("data-most"))] == hours
    page.locator(".clear-figures").first.evaluate("one => one.click()")
    expect(wait).to_have_text("Wait 12 to 24 h")
    assert wait.get_attribute("data-least") == "720"


@pytest.mark.parametrize("found", PAGES, ids=lambda one: one.shown)
def test_the_example_put_through_the_engine_gives_the_same_text(page, address, found):
    """Every figure of the page: what the build printed is what the page prints, letter for letter."""
    path = found.path.relative_to(build.DOCS).as_posix().removesuffix(".md") + "/"
    open_way(page, address, path=path)
    own = {block.data.use: block.data.example for block in found.blocks if block.kind == "calculator"}
    names = sorted({name.partition(".")[0] for name in found.live})
    asked = {name: dict(example.given_on_page(name, own[name])) for name in names}
    printed = page.locator(".live").evaluate_all("all => all.map((one) => [one.dataset.figure, one.textContent])")
    assert printed or page.locator(".wait[data-hours]").count()
    answered = page.evaluate(
        """async (asked) => {
          const { door } = await import(new URL('early.mjs', document.querySelector('script[type=module]').src).href);
          const found = {};
          for (const [name, given] of Object.entries(asked)) {
            const text = (await door.answer(name, given, { engine: 'small', onLoading: () => {} })).text;
            const section = document.querySelector(`.calc[data-calculator="${name}"]`);
            const { answer, html } = JSON.parse(text);
            section.querySelector('.slot').innerHTML = html;
            section.querySelector('.result').dataset.shows = 'answer';
            section.dispatchEvent(new CustomEvent('answered', { detail: answer, bubbles: true }));
          }
          return [...document.querySelectorAll('.live')].map((one) => [one.dataset.figure, one.textContent, one.dataset.shows]);
        }""",
        json.loads(json.dumps(asked)),
    )
    assert answered == [[*one, "answer"] for one in printed]
