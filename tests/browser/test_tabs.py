"""One store on the device: pages that are gone back to, two tabs, a full disk, what an earlier edition kept. Nothing typed
is lost, and nothing that was cleared comes back."""

import json
import os
from urllib.parse import quote

import pytest
from playwright.sync_api import expect

from conftest import QUIET, watch
from test_job import field, form, open_way, ready, submit

pytestmark = [pytest.mark.browser, pytest.mark.slow]
SKIM, PAINT, COVER = "methods/skim-over/", "finish/paint/", "prepare/cover/"
OFFLINE = "html[data-offline]"  # a worker that takes a page over puts it out of the browser's memory: wait for it
FULL = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };"


def rooms(page, name="takeoff"):
    return form(page, name).locator("[name=rooms]")


def second_tab(page, address, path, fragment=""):
    return open_way(page.context.new_page(), address, fragment, path)


@pytest.fixture(params=["loaded again", "restored from memory"])
def goes_back(request, driver, address, watched):
    """A page of a browser that loads a page anew on the way back, and of one that keeps it alive meanwhile."""
    kept = request.param == "restored from memory"
    ignored = ["--disable-back-forward-cache"] if kept else []
    browser = driver.chromium.launch(
        executable_path=os.environ.get("CHROMIUM", "/usr/bin/chromium"), args=QUIET, ignore_default_args=ignored
    )
    context = browser.new_context(viewport={"width": 390, "height": 844})
    page = watch(context.new_page(), address, watched, True)
    page.add_init_script(
        "addEventListener('pageshow', ({persisted}) => { document.documentElement.dataset.persisted = persisted; });"
    )
    yield page, kept
    browser.close()
    assert watched == []


def back(page, kept):
    page.go_back(wait_until="commit")
    ready(page)
    expect(page.locator("html")).to_have_attribute("data-persisted", str(kept).lower())


def test_back_shows_the_newest_figures_and_blames_no_link(goes_back, address):
    page, kept = goes_back
    open_way(page, address)
    page.wait_for_selector(OFFLINE)
    rooms(page).fill("Old: 10 x 10")
    submit(page, "takeoff")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")
    open_way(page, address, path=PAINT)
    rooms(page, "paint").fill("New: 11 x 11")
    submit(page, "paint")
    back(page, kept)
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("121 sq ft")
    assert rooms(page).input_value() == "New: 11 x 11"
    expect(page.locator("#figures")).to_be_hidden()
    assert "New:+11+x+11" in page.url
    page.go_forward(wait_until="commit")
    ready(page)
    assert rooms(page, "paint").input_value() == "New: 11 x 11"


def test_two_backs_lose_no_figure_and_no_tick(goes_back, address):
    """Figures typed on one page and a tick on another, behind a page that was left before both."""
    page, kept = goes_back
    open_way(page, address)
    page.wait_for_selector(OFFLINE)
    page.locator("#result-in-hand input").check()
    field(page, "texture_depth_in").fill("1/8")
    submit(page, "skim")
    open_way(page, address, path=PAINT)
    rooms(page, "paint").fill("Den: 11 x 11")
    submit(page, "paint")
    open_way(page, address, path=COVER)
    tick = page.locator("input[data-step]").first
    step = tick.get_attribute("data-step")
    tick.check()
    back(page, kept)
    back(page, kept)
    page.locator("#skim-lead input").check()
    page.locator("#ceiling-sound input").check()
    field(page, "coats").fill("1")
    submit(page, "skim")
    assert rooms(page).input_value() == "Den: 11 x 11"
    open_way(page, address, path=COVER)
    assert page.locator(f'input[data-step="{step}"]').is_checked()
    open_way(page, address, path=PAINT)
    assert rooms(page, "paint").input_value() == "Den: 11 x 11"
    open_way(page, address)
    assert page.locator("#result-in-hand input").is_checked() and page.locator("#ceiling-sound input").is_checked()
    assert field(page, "texture_depth_in").input_value() == "1/8"


def test_two_tabs_tell_each_other(page, address):
    open_way(page, address)
    other = second_tab(page, address, PAINT)
    rooms(page).fill("Den: 10 x 10")
    expect(rooms(other, "paint")).to_have_value("Den: 10 x 10")
    expect(form(other, "paint").locator(".origin")).to_contain_text("Worked out from your figures: ")
    rooms(other, "paint").fill("Den: 12 x 10")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("120 sq ft")
    expect(page.locator("#figures")).to_be_hidden()
    field(page, "texture_depth_in").fill("1/8")
    field(other, "coats").fill("1")
    page.wait_for_timeout(1000)
    third = second_tab(page, address, SKIM)
    found = {
        name: third.locator(f"[name={name}]").first.input_value() for name in ("rooms", "texture_depth_in", "coats")
    }
    assert found == {"rooms": "Den: 12 x 10", "texture_depth_in": "1/8", "coats": "1"}


def test_what_is_being_typed_is_not_taken_away_by_another_tab(page, address):
    open_way(page, address)
    other = second_tab(page, address, PAINT)
    rooms(page).press_sequentially("Den: 1", delay=20)
    rooms(other, "paint").evaluate(
        "one => { one.value = 'Other: 9 x 9'; one.dispatchEvent(new Event('input', {bubbles: true})); dispatchEvent(new Event('pagehide')); }"
    )
    rooms(page).press_sequentially("0 x 10", delay=20)
    page.wait_for_timeout(1000)
    value = rooms(page).input_value()
    assert value in ("Den: 10 x 10", "Other: 9 x 90 x 10"), "no letter typed is dropped"
    assert rooms(other, "paint").input_value() == value


def test_ticks_cleared_in_one_tab_are_cleared_in_the_other_and_stay_so(page, address):
    open_way(page, address)
    for step in ("result-in-hand", "skim-lead", "ceiling-sound", "power-off"):
        page.locator(f"#{step} input").check()
    stale = second_tab(page, address, SKIM)
    expect(stale.locator("input[data-step]:checked")).to_have_count(4)
    page.locator(".clear-ticks").click()
    expect(stale.locator("input[data-step]:checked")).to_have_count(0)
    stale.locator("#result-in-hand input").check()
    expect(page.locator("input[data-step]:checked")).to_have_count(1)
    expect(page.locator(".clear-ticks")).to_have_text("Clear the ticks")  # the old ones do not come back over a new job
    stale.close()
    page.reload()
    ready(page)
    expect(page.locator("input[data-step]:checked")).to_have_count(1)


def test_a_tab_that_heard_nothing_still_cannot_bring_ticks_back(page, address):
    """A page that slept through the change reads before it writes."""
    open_way(page, address)
    for step in ("result-in-hand", "skim-lead", "ceiling-sound"):
        page.locator(f"#{step} input").check()
    asleep = page.context.new_page()
    asleep.add_init_script("addEventListener('storage', event => event.stopImmediatePropagation(), true);")
    open_way(asleep, address)
    expect(asleep.locator("input[data-step]:checked")).to_have_count(3)
    page.locator(".clear-ticks").click()
    expect(asleep.locator("input[data-step]:checked")).to_have_count(3)
    asleep.locator("#power-off input").click()
    expect(asleep.locator(".stop-here")).to_be_visible()
    expect(asleep.locator("input[data-step]:checked")).to_have_count(0)
    expect(page.locator("input[data-step]:checked")).to_have_count(0)


def test_a_tab_that_heard_nothing_writes_only_what_is_typed_there(page, address):
    open_way(page, address)
    asleep = page.context.new_page()
    asleep.add_init_script("addEventListener('storage', event => event.stopImmediatePropagation(), true);")
    open_way(asleep, address)
    rooms(page).fill("Den: 10 x 10")
    rooms(page).press("Tab")
    page.wait_for_timeout(500)
    field(asleep, "texture_depth_in").fill("1/8")
    asleep.wait_for_timeout(500)
    page.reload()
    ready(page)
    assert rooms(page).input_value() == "Den: 10 x 10"
    assert field(page, "texture_depth_in").input_value() == "1/8"


EARLIER = {
    "figures /book/": {"rooms": "Den: 10 x 10", "coats": "1"},
    "ticks /book/": {"result-in-hand": "2026-11-20T08:00:00.000Z"},
}


def hold(page, kept):
    page.evaluate(
        "kept => { for (const [key, value] of Object.entries(kept)) localStorage.setItem(key, value); }",
        {key: json.dumps(value) for key, value in kept.items()},
    )


def test_what_an_earlier_edition_kept_is_taken_over(page, address):
    page.goto(address)
    hold(page, EARLIER)
    open_way(page, address)
    assert rooms(page).input_value() == "Den: 10 x 10"
    assert page.locator("[name=coats]").first.input_value() == "1"
    assert page.locator("#result-in-hand input").is_checked()
    page.locator("#result-in-hand input").uncheck()
    rooms(page).fill("")
    page.goto("about:blank")
    open_way(page, address)
    assert rooms(page).input_value() == ""
    assert not page.locator("#result-in-hand input").is_checked()


def test_what_an_earlier_edition_kept_is_taken_over_on_a_full_device_too(page, address):
    page.goto(address)
    hold(page, EARLIER)
    page.add_init_script(FULL)
    for _ in range(2):
        open_way(page, address, path=PAINT)
        assert rooms(page, "paint").input_value() == "Den: 10 x 10"


@pytest.mark.parametrize("junk", ["{", "null", "[]", '"text"', "7", '{"rooms": 7}', '{"__proto__": "x"}'])
def test_a_damaged_store_is_no_obstacle(page, address, junk):
    page.goto(address)
    page.evaluate(
        "junk => { for (const key of ['figures', 'ticks', 'timers', 'earlier-figures']) { localStorage.setItem(key + ' /book/', junk); localStorage.setItem(key + ' /book/ rooms', junk); } }",
        junk,
    )
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")


def test_a_device_that_forbids_keeping_says_so_and_works(page, address):
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('no', 'SecurityError'); }});"
    )
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10")
    submit(page, "takeoff")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")
    expect(form(page, "takeoff").locator(".saved")).to_contain_text("keeps nothing")
    page.reload()
    ready(page)
    assert rooms(page).input_value() == "Den: 10 x 10"
    expect(page.locator("#figures")).to_be_hidden()
    page.locator("#result-in-hand input").check()
    expect(page.locator(".ticked")).to_contain_text("1 of")
    expect(page.locator(".ticked")).to_contain_text("does not keep ticks")


@pytest.mark.parametrize("script", ["", FULL], ids=["room on the device", "a full device"])
def test_cleared_twice_is_still_to_be_had_back(page, address, script):
    if script:
        page.add_init_script(script)
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10")
    for _ in range(2):
        page.locator(".clear-figures").click()
        expect(rooms(page)).to_have_value("")
        no_answer = form(page, "takeoff").locator(".figure")
        expect(no_answer).to_have_count(0)
    page.locator("#figures button").click()
    expect(rooms(page)).to_have_value("Den: 10 x 10")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")
    rooms(page).fill("Den: 10 x 11")
    page.locator("#figures button").click()  # undone
    page.locator("#figures button").click()  # and undone again
    expect(rooms(page)).to_have_value("Den: 10 x 11")


def test_a_link_to_a_form_lands_on_it_with_figures_on_the_device(page, address):
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10")
    rooms(page).press("Tab")
    for path, name in ((SKIM, "drying"), (PAINT, "paint"), ("methods/board-over/", "taping")):
        if open_way(page, address, path=path).locator(f"#{name}").count() == 0:
            continue
        page.goto(address)
        page.evaluate(
            "to => { const link = document.createElement('a'); link.href = to; link.id = 'to'; link.textContent = 'to'; document.querySelector('main').prepend(link); }",
            address + path + "#" + name,
        )
        page.locator("#to").click()
        ready(page, shut=True)
        expect(form(page, name).locator("summary").first).to_be_in_viewport()
        page.wait_for_timeout(1500)
        expect(form(page, name).locator("summary").first).to_be_in_viewport()
        assert f"#{name}?rooms=Den:+10+x+10" in page.url


def test_a_page_that_was_opened_without_a_place_names_none(page, address):
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10")
    page.goto("about:blank")
    open_way(page, address)
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")
    assert page.url.endswith("/#?rooms=Den:+10+x+10")
    page.reload()
    ready(page)
    page.wait_for_timeout(1000)
    assert page.evaluate("scrollY") == 0


def test_the_way_that_the_guide_leads_to_keeps_the_rooms(page, address):
    """A link of the book that carries the answers on is no link from elsewhere."""
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10")
    rooms(page).press("Tab")
    open_way(
        page, address, "#decision?asbestos_result=none&result_rooms=this&result_layers=all&sag=no", "prepare/choose/"
    )
    page.wait_for_selector("#decision[data-engine]")
    page.locator("#decision .items a", has_text="Skim over").click()
    ready(page)
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")
    expect(page.locator(".verdict")).to_be_visible()
    expect(page.locator("#figures")).to_be_hidden()


@pytest.mark.parametrize("way", ["typed", "stored", "kept by an earlier edition"])
def test_half_a_letter_stops_nothing(page, address, way):
    open_way(page, address)
    if way == "typed":
        rooms(page).evaluate(
            "one => { one.value = 'Den \\ud83d: 10 x 10'; one.dispatchEvent(new Event('input', {bubbles: true})); }"
        )
        submit(page, "takeoff")
    else:
        page.evaluate(
            "way => way === 'stored' ? localStorage.setItem('figures /book/ rooms', 'Den \\ud83d: 10 x 10') : localStorage.setItem('figures /book/', JSON.stringify({rooms: 'Den \\ud83d: 10 x 10'}))",
            way,
        )
    for path in (PAINT, SKIM):
        open_way(page, address, path=path)
        expect(rooms(page, "paint" if path == PAINT else "takeoff")).to_have_value("Den \ufffd: 10 x 10")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")
    assert quote("\ufffd") in page.url
    page.locator(".copy").first.wait_for()


def test_a_link_that_is_too_long_says_so_and_is_quick(page, address):
    """Blanks without end once kept a phone busy for ever."""
    open_way(page, address, "#takeoff?coats=1&rooms=" + "+" * 200_000 + "10+x+10")
    expect(page.locator("#figures")).to_contain_text("32,000 letters")
    expect(rooms(page)).to_have_value("")
    page.goto("about:blank")
    open_way(page, address, "#takeoff?ceiling_height_ft=9&rooms=" + "+" * 20_000 + "10+x+10")
    expect(page.locator("#figures")).to_contain_text("rooms, longer than 8,000 letters")
    assert page.locator("[name=ceiling_height_ft]").first.input_value() == "9"


def test_many_blanks_that_are_typed_do_not_keep_the_page_busy(page, address):
    open_way(page, address)
    took = page.evaluate(
        """() => { const one = document.querySelector('#takeoff [name=rooms]'); one.value = 'Den: 10 x' + ' '.repeat(200000) + '10'; const since = performance.now();
        one.dispatchEvent(new Event('input', {bubbles: true})); dispatchEvent(new Event('pagehide')); return performance.now() - since; }"""
    )
    assert (
        took < 10_000
    )  # each blank read once takes half a second, more on a busy machine; once for each of the others, minutes


def test_a_customers_link_begins_at_the_top(page, address):
    page.goto(address + "to/skim-over/#takeoff?rooms=Den:+10+x+12&texture_depth_in=1/8")
    expect(form(page, "skim").locator(".figure strong")).to_be_visible()
    page.wait_for_timeout(1500)
    assert page.evaluate("scrollY") == 0
    expect(page.locator("h1")).to_be_in_viewport()
