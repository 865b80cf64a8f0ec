"""Nothing typed is lost: links, reloads, a full disk, no network. (A new edition: test_engines.py.)"""

import pytest
from playwright.sync_api import expect

from test_job import field, form, open_way, ready, submit

pytestmark = [pytest.mark.browser, pytest.mark.slow]


def test_a_link_opens_to_the_same(page, make_page, address):
    open_way(page, address)
    typed = {
        "rooms": "Living: 20' 6\" x 14'\nDen & bath: E 14' S 6' W 4' S 5' W 10' N 11'",
        "texture_depth_in": "3/16",
        "humidity_pct": "65",
    }
    field(page, "rooms").fill(typed["rooms"])
    field(page, "texture_depth_in").fill(typed["texture_depth_in"])
    field(page, "humidity_pct").fill(typed["humidity_pct"])
    submit(page, "skim")
    expect(form(page, "skim").locator(".origin")).to_contain_text("Worked out from your figures: ")
    link = page.url
    assert "#skim?rooms=Living:+20'+6%22+x+14';" in link
    answer = form(page, "skim").locator(".slot").inner_html()
    other = make_page()
    other.goto(link)
    expect(form(other, "skim").locator(".origin")).to_contain_text("Worked out from your figures: ")
    assert form(other, "skim").locator(".slot").inner_html() == answer
    assert other.url == link
    for name, text in typed.items():
        assert other.locator(f"[name={name}]").first.input_value() == text


def test_a_link_with_junk_says_what_was_dropped_and_keeps_the_rest(page, address):
    open_way(page, address, "#takeoff?rooms=Den:+10'+x+12'&moon=full&%zz=1&coats&rooms=twice")
    expect(page.locator("#figures")).to_contain_text("left out: moon=full · %zz=1 · coats · rooms=twice")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("120 sq ft")


def test_a_link_with_a_value_that_does_not_fit_says_so_and_keeps_it(page, address):
    open_way(page, address, "#drying?humidity_pct=140&show_in=furlongs")
    expect(page.locator("#figures")).to_contain_text("left out: show_in=furlongs")
    expect(page.locator("#drying-humidity_pct-fault")).to_contain_text("from 0 to 100")
    assert page.locator("[name=humidity_pct]").first.input_value() == "140"
    expect(form(page, "skim").locator(".faults")).to_be_hidden()


def test_figures_that_do_not_work_leave_the_last_answer_and_say_so(page, address):
    open_way(page, address, "#drying?humidity_pct=60")
    expect(form(page, "drying").locator(".by")).to_contain_text("small engine")
    field(page, "humidity_pct").fill("600")
    expect(form(page, "drying").locator(".origin")).to_contain_text("do not work yet")


def test_a_short_link_opens_too(page, address):
    open_way(page, address, "#skim?rooms=Living:20'x14'&texture_depth_in=0&coats=1")
    expect(form(page, "skim").locator(".lines li").first).to_contain_text("280 sq ft")
    assert page.locator("[name=coats]").first.input_value() == "1"


def test_a_reload_loses_nothing_with_or_without_the_fragment(page, address):
    open_way(page, address)
    field(page, "rooms").fill("Den: 10 x")  # not finished
    field(page, "rooms").press("Tab")
    page.reload()
    ready(page)
    assert field(page, "rooms").input_value() == "Den: 10 x"
    page.goto("about:blank")
    open_way(page, address)
    assert field(page, "rooms").input_value() == "Den: 10 x"


def test_what_is_emptied_stays_empty(page, address):
    open_way(page, address, "#takeoff?rooms=Den:+10+x+10")
    field(page, "rooms").fill("")
    page.goto("about:blank")  # left at once, before any pause in the typing
    open_way(page, address)
    assert field(page, "rooms").input_value() == ""


def test_a_jump_inside_the_page_keeps_the_figures_in_the_address(page, address):
    open_way(page, address)
    field(page, "rooms").fill("Den: 10 x 10")
    page.locator(".bar a[href='#steps']").click()
    page.wait_for_url("**/#steps?rooms=Den:+10+x+10")


def test_figures_that_a_link_replaces_can_be_had_back(page, address):
    open_way(page, address)
    field(page, "rooms").fill("Mine: 11 x 11")
    field(page, "rooms").press("Tab")
    page.goto("about:blank")
    open_way(page, address, "#takeoff?rooms=Theirs:+10+x+10")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")
    page.locator("#figures button").click()
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("121 sq ft")
    assert field(page, "rooms").input_value() == "Mine: 11 x 11"


def test_two_links_in_a_row_do_not_lose_what_was_typed(page, address):
    open_way(page, address)
    field(page, "rooms").fill("Mine: 11 x 11")
    field(page, "rooms").press("Tab")
    for rooms in ("One:+10+x+10", "Two:+9+x+9"):
        page.goto("about:blank")
        open_way(page, address, f"#takeoff?rooms={rooms}")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("81 sq ft")
    page.goto(page.url.replace("Two", "Three"))  # a third, without leaving the page
    page.locator("#figures button").click()
    assert field(page, "rooms").input_value() == "Mine: 11 x 11"


def test_a_full_disk_is_told_and_the_link_still_holds(page, address):
    page.add_init_script("Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };")
    open_way(page, address)
    field(page, "rooms").fill("Den: 10 x 10")
    submit(page, "takeoff")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")
    page.reload()
    ready(page)
    assert field(page, "rooms").input_value() == "Den: 10 x 10"
    expect(form(page, "takeoff").locator(".saved")).to_contain_text("keeps nothing")


def test_cleared_figures_can_be_put_back(page, address):
    open_way(page, address)
    field(page, "rooms").fill("Den: 10 x 10")
    page.locator(".clear-figures").click()
    assert field(page, "rooms").input_value() == ""
    page.locator("#figures button").click()
    assert field(page, "rooms").input_value() == "Den: 10 x 10"


def test_after_one_visit_everything_works_with_the_network_gone(page, address):
    open_way(page, address)
    page.wait_for_selector("html[data-offline]")
    page.context.set_offline(True)
    page.goto(address)
    expect(page.locator("h1")).to_have_text("What can I do with this ceiling?")
    page.locator("main a", has_text="Skim over").first.click()
    ready(page)
    field(page, "rooms").fill("Living: 20' x 14'")
    field(page, "texture_depth_in").fill("1/8")
    submit(page, "skim")
    expect(form(page, "skim").locator(".by")).to_contain_text("small engine")
    form(page, "skim").locator(".again").click()
    expect(form(page, "skim").locator(".status")).to_contain_text("full engine is not on this device yet")
    for path in ("reference/sources/", "reference/nomenclature/"):
        page.goto(address + path)
        expect(page.locator("h1")).to_be_visible()


def test_the_full_engine_stays_once_it_was_used(page, address):
    open_way(page, address)
    page.wait_for_selector("html[data-offline]")
    page.reload()  # now under the service worker
    ready(page)
    field(page, "rooms").fill("Den: 10 x 10")
    submit(page, "takeoff")
    expect(form(page, "takeoff").locator(".by")).to_contain_text("small engine")
    form(page, "takeoff").locator(".again").click()
    expect(form(page, "takeoff").locator(".by")).to_contain_text("Both engines agree", timeout=120_000)
    page.context.set_offline(True)
    page.reload()
    ready(page)
    expect(form(page, "takeoff").locator(".by")).to_contain_text("small engine")
    form(page, "takeoff").locator(".again").click()
    expect(form(page, "takeoff").locator(".by")).to_contain_text("Both engines agree", timeout=120_000)


def test_ticks_stay_and_a_hold_point_holds(page, address):
    open_way(page, address)
    page.locator("#power-off input").click()
    expect(page.locator("#result-in-hand .stop-here")).to_be_visible()
    assert not page.locator("#power-off input").is_checked()
    for step in ("result-in-hand", "skim-lead", "ceiling-sound", "power-off"):
        page.locator(f"#{step} input").check()
    page.reload()
    ready(page)
    assert page.locator("#power-off input").is_checked()
    expect(page.locator(".ticked")).to_contain_text("4 of")
    page.locator(".clear-ticks").click()
    assert not page.locator("#power-off input").is_checked()
    page.locator(".clear-ticks").click()
    assert page.locator("#power-off input").is_checked()
