"""Asbestos as a state of this ceiling: what folds the stop, what does not, and where an answer says 'not yet'."""

import json

import pytest
from playwright.sync_api import expect

from calc import catalogue
from test_job import ready
from test_walk import onward

pytestmark = [pytest.mark.browser, pytest.mark.slow]
WAY = "methods/board-over/"
CLEAN = {"asbestos_result": "none", "result_rooms": "this", "result_layers": "all"}
ROOMS = "Living: 20' x 14'"
STATES = (
    ({}, "not tested"),
    ({"asbestos_result": "found"}, "found"),
    ({"asbestos_result": "trace"}, "found"),
    ({"asbestos_result": "none", "result_rooms": "other", "result_layers": "all"}, "another room’s report"),
    ({"asbestos_result": "none"}, "another room’s report"),
    ({"asbestos_result": "none", "result_rooms": "this", "result_layers": "texture"}, "layers missing"),
    ({"asbestos_result": "none", "result_rooms": "this"}, "layers missing"),
)


def opened(page, address, facts, path=WAY):
    """The page at `path`, with `facts` on the device as somebody's own."""
    page.goto(address + "404.html")
    put(page, facts)
    page.goto(address + path)
    page.wait_for_selector("html[data-asbestos]")
    page.evaluate("for (const one of document.querySelectorAll('.fold, details.calc')) one.open = true")
    return page


def put(page, facts):
    page.evaluate(
        "facts => Object.entries(facts).forEach(([name, text]) => localStorage.setItem('figures /book/ ' + name, text))",
        facts,
    )


@pytest.mark.parametrize(("facts", "name"), STATES)
def test_what_does_not_settle_it_leaves_the_stop_in_full_and_says_what_is_missing(page, address, facts, name):
    opened(page, address, facts)
    stop = page.locator('main > .alarm[data-caution="asbestos-first"]')
    expect(stop.locator(".signal")).to_have_text(f"DANGER · {name}")
    expect(stop.locator(".hazard strong")).to_be_visible()
    strip = page.locator(".stop-strip")
    expect(strip).to_be_hidden()
    page.locator("#steps").scroll_into_view_if_needed()
    page.evaluate("document.getElementById('steps').scrollIntoView({behavior: 'instant'})")
    expect(strip).to_be_visible()
    expect(strip).to_have_text(f"DANGER Asbestos: {name}")
    assert strip.bounding_box()["y"] == 0 and strip.bounding_box()["height"] >= 44
    strip.click()
    expect(stop).to_be_in_viewport()
    expect(stop).to_be_focused()
    expect(strip).to_be_hidden()


def test_own_answers_that_settle_it_fold_the_stop_into_a_line_and_one_tap_brings_it_back(page, address):
    opened(page, address, CLEAN | {"rooms": ROOMS})
    line = page.locator(".cleared")
    for words in ("By your answers", "no asbestos", "this ceiling", "every layer", ROOMS):
        expect(line.locator("summary")).to_contain_text(words)
    assert "safe" not in line.inner_text().lower()
    stop = line.locator('.alarm[data-caution="asbestos-first"]')
    expect(stop).to_be_hidden()
    assert line.locator("summary").bounding_box()["height"] >= 44
    line.locator("summary").click()
    expect(stop.locator(".hazard strong")).to_be_visible()
    expect(line.get_by_role("link", name="See or change the answers")).to_have_attribute(
        "href", f"{address}prepare/choose/#decision"
    )
    page.evaluate("document.getElementById('steps').scrollIntoView({behavior: 'instant'})")
    expect(page.locator(".stop-strip")).to_be_hidden()


def test_on_the_ladder_a_settled_question_is_not_put_again_and_another_hazard_is(page, address):
    opened(page, address, CLEAN, "methods/dry-scrape/")
    page.locator(".ladder-open button").click()
    ladder = page.locator("dialog.ladder")
    expect(
        ladder.locator('.alarm[data-caution="asbestos-first"] strong')
    ).to_be_visible()  # once, before the first step
    total = page.locator(".step, .hold").count()
    dust = 0
    for _ in range(total):
        onward(ladder)
        assert ladder.locator('.short[data-caution="asbestos-first"]').count() == 0
        dust += ladder.locator('.short[data-caution="dust-silica"]').count()
    assert dust


def test_the_word_of_a_link_settles_nothing_until_somebody_gives_it_here(page, address):
    query = "&".join(f"{name}={text}" for name, text in CLEAN.items())
    page.goto(f"{address}{WAY}#?{query}")
    page.wait_for_selector("html[data-asbestos=link]")
    stop = page.locator('main > .alarm[data-caution="asbestos-first"]')
    expect(stop.locator(".signal")).to_have_text("DANGER · known by a link alone")
    expect(stop).to_contain_text("A link or a file says")
    expect(stop).to_contain_text("See the report yourself")
    page.goto(address + "prepare/choose/")
    page.wait_for_selector("html[data-asbestos=link]")  # another page, and the link's word is still the link's
    page.wait_for_selector("#decision[data-engine]")
    page.get_by_role("button", name="Show all questions").click()
    for name, text in CLEAN.items():
        own = page.locator(f"#decision-{name}")
        own.select_option("unknown")
        own.select_option(text)
    page.wait_for_selector("html[data-asbestos=clean]")


def test_a_link_in_a_browser_that_keeps_nothing_settles_nothing_either(make_page, address):
    page = make_page()
    page.add_init_script("Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };")
    query = "&".join(f"{name}={text}" for name, text in CLEAN.items())
    page.goto(f"{address}{WAY}#?{query}")
    page.wait_for_selector("html[data-asbestos=link]")
    page.reload()
    ready(page)
    expect(page.locator("html")).to_have_attribute("data-asbestos", "link")


def test_rooms_that_a_link_brings_are_not_those_of_the_own_report(page, address):
    opened(page, address, CLEAN | {"rooms": ROOMS})
    page.goto(address + "404.html")
    query = "&".join(f"{name}={text}" for name, text in (CLEAN | {"rooms": "Attic: 9 x 9"}).items())
    page.goto(f"{address}{WAY}#takeoff?{query}")
    page.wait_for_selector("html[data-asbestos=link]")


def test_another_tab_changes_the_state_here(page, address):
    opened(page, address, CLEAN)
    expect(page.locator(".cleared")).to_be_visible()
    other = page.context.new_page()
    opened(other, address, {"asbestos_result": "found"})
    page.wait_for_selector("html[data-asbestos=found]")
    expect(page.locator(".cleared")).to_have_count(0)


UNSOUND = (("sag", "yes", "it sags"), ("stains", "wet", "it is damp"), ("loose_board", "loose", "it is loose"))


def test_an_answer_that_must_not_be_acted_on_says_so_before_its_figure(page, address):
    opened(page, address, {"rooms": ROOMS})
    own = page.locator("#board p.not-yet")
    page.wait_for_selector("#board[data-engine]")
    expect(own).to_have_text("Not yet: asbestos not tested; rated or not is not known")
    assert own.evaluate("one => one.nextElementSibling.className") == "slot"
    assert page.locator("#takeoff .not-yet").count() == 0  # an area is no work
    page.locator("#board-rated_ceiling").select_option("no")
    expect(own).to_have_text("Not yet: asbestos not tested")


@pytest.mark.parametrize(("name", "text", "why"), UNSOUND)
def test_an_unsound_ceiling_holds_an_answer_though_the_report_is_in(page, address, name, text, why):
    opened(page, address, CLEAN | {"rated_ceiling": "no", "rooms": ROOMS, name: text})
    page.wait_for_selector("#board[data-engine]")
    expect(page.locator("#board p.not-yet")).to_have_text(f"Not yet: {why}")
    assert page.locator("#carry .not-yet").count() == 0


def test_a_row_that_shows_the_figure_says_so_as_well(page, address):
    opened(page, address, {"rooms": ROOMS})
    page.wait_for_selector("#board[data-engine]")
    page.locator("#board-rated_ceiling").select_option("no")
    expect(page.locator("#board span.not-yet")).to_have_text("Not yet: asbestos not tested")
    expect(page.locator("#board span.not-yet + .headline b")).to_be_visible()


def test_how_the_question_is_settled_may_be_acted_on_at_once(page, address):
    opened(page, address, {}, "prepare/settle/")
    assert page.locator("#samples .not-yet").count() == 0
    assert "asbestos-first" in json.dumps(
        [one.id for one in catalogue.work_out("samples", {"area_sqft": "100"})[0].cautions]
    )


def test_without_a_script_the_stop_is_whole_and_each_answer_held(make_page, address):
    page = make_page(java_script_enabled=False)
    page.goto(address + WAY)
    expect(page.locator('main > .alarm[data-caution="asbestos-first"] .signal')).to_have_text("DANGER · not tested")
    for name, words in (("board", '"Not yet: asbestos not tested"'), ("carry", "none")):
        told = page.locator(f"#{name} .figure").first.evaluate("one => getComputedStyle(one, '::before').content")
        assert told == words


@pytest.mark.parametrize("facts", [{}, CLEAN | {"rooms": ROOMS}], ids=("untested", "clean"))
def test_on_paper_every_hazard_stands_in_full_once(page, address, facts):
    opened(page, address, facts)
    ready(page)
    ids = set(
        page.locator(".alarm").evaluate_all(
            "all => all.filter(one => !one.closest('.answer > div')).map(one => one.dataset.caution)"
        )
    )
    page.emulate_media(media="print")
    listed = page.locator(".paper-hazards li")
    assert listed.count() >= len(ids)
    for row in listed.all():
        assert row.is_visible()
    top = page.locator(".paper-hazards").bounding_box()
    assert top["y"] < page.locator("main .screen").first.bounding_box()["y"]
    for one in page.locator("main .alarm:not(.step-caution .alarm, .answer > div)").all():
        assert not one.is_visible(), one.get_attribute("data-caution")
    for one in page.locator(".step-caution .alarm").all():
        assert one.locator(".signal").is_visible() and one.locator("strong").is_visible()
        assert not one.locator(".harm").is_visible()
    assert not page.locator(".stop-strip").is_visible()
