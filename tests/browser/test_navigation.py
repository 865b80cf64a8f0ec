"""The way through the book: its cover, its contents as a page and as a drawer, the place in it, the order of a job, light and dark, the search."""

import re

import pytest
from playwright.sync_api import expect

from conftest import until
from handbook.make import sheets
from questions_of_people import ASKED

pytestmark = [pytest.mark.browser, pytest.mark.slow]
SOME = ("", "methods/board-over/", "prepare/cover/", "reference/sources/", "to/sand/", "search/")
PARTS = [name.lower() for name in sheets.sections()] + ["work-it-out", "on-the-job"]


def bottoms(page, *selectors):
    return [page.locator(one).first.evaluate("one => one.getBoundingClientRect().bottom") for one in selectors]


def test_the_cover_fits_one_screen_of_a_phone(make_page, address):
    page = make_page(390, service_workers="block")
    page.goto(address)
    bar = page.locator(".bar").evaluate("one => one.getBoundingClientRect().top")
    assert all(0 < bottom <= bar for bottom in bottoms(page, "h1", "main .drawing", ".alarm.alarm-danger"))
    doors = page.locator(".door")
    assert doors.count() == 3
    for door in doors.all():
        box = door.bounding_box()
        assert box["y"] + box["height"] <= bar and box["height"] >= 44
    assert page.locator(".ways li").count() == 8


def test_old_addresses_on_the_cover_still_lead_on(make_page, address):
    page = make_page(service_workers="block")
    page.goto(address)
    for anchor in (
        "ways",
        "prepare",
        "finish",
        "after",
        "work-it-out",
        "reference",
        "how-to-trust-a-number",
        "what-this-book-does-not-decide",
    ):
        part = page.locator(f"#{anchor}")
        expect(part).to_be_visible()
        row = part.locator("xpath=ancestor-or-self::li")
        if row.count():
            assert row.locator("a").get_attribute("href")


@pytest.mark.parametrize("path", SOME)
@pytest.mark.parametrize("width", [390, 1280])
def test_every_section_is_reached_in_two_taps(make_page, address, path, width):
    page = make_page(width, service_workers="block")
    page.goto(address + path)
    page.wait_for_selector(".to-contents[aria-haspopup]", state="attached")
    opener = page.locator(".to-contents:visible").last
    opener.click()
    drawer = page.get_by_role("dialog", name="Contents")
    expect(drawer).to_be_visible()
    expect(drawer.get_by_role("button", name="Close", exact=True)).to_be_focused()
    for one in sheets.book():
        if one.section:
            expect(drawer.locator(f'a[href="{address}{one.path.removesuffix(".md")}/"]')).to_have_count(1)
    page.keyboard.press("Escape")
    expect(drawer).not_to_be_visible()
    expect(opener).to_be_focused()
    opener.click()
    drawer.get_by_role("link", name="Hand over", exact=True).click()
    expect(page).to_have_url(address + "after/hand-over/")


def test_the_drawer_shows_the_place_and_crumbs_say_it(make_page, address):
    page = make_page(service_workers="block")
    page.goto(address + "methods/board-over/")
    expect(page.locator(".crumbs")).to_have_text(re.compile(r"Ways\s*Board over"))
    page.wait_for_selector(".to-contents[aria-haspopup]", state="attached")
    page.locator(".bar .to-contents").click()
    here = page.locator(".drawer [aria-current]")
    expect(here).to_have_text("Board over")
    expect(here).to_be_in_viewport()
    page.locator(".drawer a", has_text="What goes wrong").first.click()  # of this page
    expect(page.locator(".drawer")).not_to_be_visible()
    expect(page).to_have_url(re.compile("#what-goes-wrong$"))


def test_the_drawer_finds_too(make_page, address):
    page = make_page(service_workers="block")
    page.goto(address + "finish/dry/")
    page.wait_for_selector(".to-contents[aria-haspopup]", state="attached")
    page.locator(".bar .to-contents").click()
    page.get_by_label("Search the book").fill("pop corn")
    page.keyboard.press("Enter")
    page.wait_for_selector("#find[data-ready]")
    expect(page.locator("#q")).to_have_value("pop corn")
    expect(page.locator("#find .status")).to_contain_text("“popcorn”")


def test_without_a_script_contents_is_a_link_to_the_whole_book(make_page, address):
    page = make_page(java_script_enabled=False, service_workers="block")
    page.goto(address + "prepare/cover/")
    page.locator(".bar .to-contents").click()
    expect(page).to_have_url(address + "contents/")
    for part in PARTS:
        assert page.locator(f"section#{part} a").count() >= 3, part
    page.locator("#after a", has_text="Hand over").click()
    expect(page).to_have_url(address + "after/hand-over/")


def test_neighbors_follow_the_order_of_a_job(make_page, address):
    page = make_page(service_workers="block")
    row = [one for one in sheets.book() if one.section]
    first, path = row[0], []
    page.goto(f"{address}{first.path.removesuffix('.md')}/")
    while page.locator("a[rel=next]").count():
        path.append(page.url.removeprefix(address))
        there = page.locator("a[rel=next]").evaluate("one => one.href")
        if there.endswith("contents/#ways"):  # any way may be taken
            there = address + "methods/board-over/"
            page.goto(there)
            expect(page.locator("a[rel=prev]")).to_contain_text(
                row[[one.section for one in row].index("Ways") - 1].title
            )
            continue
        page.goto(there)
    path.append(page.url.removeprefix(address))
    wanted = [one.path.removesuffix(".md") + "/" for one in row if one.section != "Ways" or "board-over" in one.path]
    assert path == wanted
    order = [
        path.index(one)
        for one in (
            "prepare/measure/",
            "prepare/settle/",
            "prepare/choose/",
            "prepare/cover/",
            "methods/board-over/",
            "finish/tape/",
            "finish/paint/",
            "after/hand-over/",
        )
    ]
    assert order == sorted(order)


def test_no_link_of_the_bar_is_dead(make_page, address):
    page = make_page(service_workers="block")
    for path in (*SOME, "prepare/measure/", "finish/dry/", "contents/", "reference/glossary/"):
        page.goto(address + path)
        links = page.locator(".bar a")
        assert 3 <= links.count() <= 6, path
        for one in links.all():
            href = one.get_attribute("href")
            if href.startswith("#"):
                assert page.locator(href).count() == 1, (path, href)


def test_on_the_job_leads_to_the_steps_of_the_way_that_was_open_last(make_page, address):
    page = make_page(service_workers="block")
    page.goto(address)
    door = page.locator(".door[data-last]")
    assert door.get_attribute("href") == "contents/#on-the-job"
    page.goto(address + "methods/skim-over/")
    until(page, "Object.keys(localStorage).some(one => one.startsWith('last '))")
    page.goto(address)
    expect(door).to_have_attribute("href", address + "methods/skim-over/#steps")
    expect(door).to_contain_text("Skim over")
    page.goto(address + "finish/dry/")
    expect(page.locator(".bar a", has_text="My way")).to_have_attribute("href", address + "methods/skim-over/#steps")


PAPER = {"light": "rgb(251, 250, 247)", "dark": "rgb(20, 22, 26)"}


def test_light_or_dark_is_kept_and_nothing_flashes(make_page, address):
    page = make_page(color_scheme="light", service_workers="block")
    page.goto(address + "prepare/cover/")
    shown = "getComputedStyle(document.body).backgroundColor"
    assert page.evaluate(shown) == PAPER["light"]
    group = page.get_by_role("group", name="Light")
    expect(group.get_by_role("button", name="Auto")).to_have_attribute("aria-pressed", "true")
    group.get_by_role("button", name="Dark").click()
    assert page.evaluate(shown) == PAPER["dark"]
    page.add_init_script("""
        const look = () => {
            if (document.body) (window.seen ??= []).push(getComputedStyle(document.body).backgroundColor);
            requestAnimationFrame(look); // not called before something is painted
        };
        requestAnimationFrame(look);
    """)
    for path in ("", "methods/sand/", "reference/trouble/"):
        page.goto(address + path)
        until(page, "window.seen?.length > 2")
        assert set(page.evaluate("window.seen")) == {PAPER["dark"]}, "in every frame"
        assert page.evaluate(shown) == PAPER["dark"]
    other = page.context.new_page()
    other.goto(address)
    other.get_by_role("group", name="Light").get_by_role("button", name="Light", exact=True).click()
    expect(page.locator("html")).to_have_attribute("data-scheme", "light")
    page.emulate_media(color_scheme="dark")
    assert page.evaluate(shown) == PAPER["light"]
    page.locator(".light button").first.click()
    assert page.evaluate(shown) == PAPER["dark"], "the device decides again"
    page.emulate_media(media="print", color_scheme="dark")
    assert page.evaluate(shown) == "rgb(255, 255, 255)"


def test_a_desk_shows_the_parts_of_the_page_and_which_is_in_view(make_page, address):
    page = make_page(1280, service_workers="block")
    page.goto(address + "prepare/cover/")
    toc = page.locator(".toc")
    expect(toc).to_be_visible()
    expect(page.locator(".bar")).not_to_be_visible()
    text, parts = page.locator("main").bounding_box(), toc.bounding_box()
    assert parts["x"] + parts["width"] <= text["x"]
    page.evaluate("for (const one of document.querySelectorAll('.fold')) one.open = true")
    page.evaluate("document.getElementById('what-goes-wrong').scrollIntoView()")
    expect(toc.locator("[aria-current]")).to_have_text("What goes wrong")
    assert page.locator("#beside").is_visible(), "the rooms and their figures"
    beside, text_then = page.locator("#beside").bounding_box(), page.locator("main").bounding_box()
    assert beside["x"] >= text["x"] + text["width"] and text_then["width"] == text["width"]


def test_nothing_moves_while_a_page_comes(make_page, address):
    for width in (390, 1280):
        page = make_page(width, service_workers="block")
        for path in ("", "methods/board-over/", "reference/glossary/"):
            page.goto(address + path)
            page.wait_for_load_state("networkidle")
            moved = page.evaluate("""new Promise(done => new PerformanceObserver(list => {}).observe({type: 'layout-shift', buffered: true}) ?? setTimeout(() => {
                const all = []; const watch = new PerformanceObserver(list => all.push(...list.getEntries())); watch.observe({type: 'layout-shift', buffered: true});
                setTimeout(() => done(all.filter(one => !one.hadRecentInput).reduce((sum, one) => sum + one.value, 0)), 100); }, 0))""")
            assert moved < 0.02, (width, path, moved)


def test_the_title_block_names_the_sheet(make_page, address):
    page = make_page(service_workers="block")
    for path, number in (
        ("methods/board-over/", "W-5"),
        ("prepare/measure/", "P-1"),
        ("to/board-over/", "W-5, one screen"),
    ):
        page.goto(address + path)
        block = page.locator(".title-block")
        expect(block.locator("div", has_text="Sheet").locator("dd").first).to_have_text(number)
        expect(block).to_contain_text("2026-")
        expect(block.locator(".offline-state")).to_be_visible()


def test_misspelt_and_everyday_words_find_their_page_among_the_first_three(make_page, address):
    assert len(ASKED) >= 25
    page = make_page(service_workers="block")
    page.goto(address + "search/?q=asbestoes")
    page.wait_for_selector("#find[data-ready]")
    expect(page.locator("#q")).to_have_value("asbestoes")
    for words, goal in ASKED:
        page.locator("#q").fill(words)
        first = page.eval_on_selector_all(".found a", "all => all.slice(0, 3).map(one => one.href)")
        assert any(one.removeprefix(address).partition("#")[0] == goal for one in first), (words, first)
    page.locator("#q").fill("xyzzy")
    expect(page.locator("#find .status")).to_contain_text("Nothing found.")
