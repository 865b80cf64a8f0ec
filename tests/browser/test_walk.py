"""Two walks: an apprentice on a ladder without a signal, from the first hold point to the last step; a customer who gets a
link and reads one screen. And the search, by the words that people use."""

import json
import re

import pytest
from playwright.sync_api import expect

from handbook import pages

pytestmark = [pytest.mark.browser, pytest.mark.slow]
WAYS = tuple(pages.AMOUNTS)


def open_ladder(page, address, path="methods/wet-scrape/"):
    page.goto(address + path)
    page.wait_for_selector(".ladder-open button")
    page.locator(".ladder-open button").click()
    ladder = page.locator("dialog.ladder")
    expect(ladder).to_be_visible()
    if ladder.locator(".where").inner_text() == "Before you start":
        assert ladder.locator(".alarm").count() == page.locator("main > .alarm").count()
        ladder.locator(".ladder-foot .act").click()
    return page.locator("dialog.ladder")


def swipe(page, across):
    """A finger across the step, to the left where `across` is negative."""
    page.mouse.move(200, 400)
    page.mouse.down()
    page.mouse.move(200 + across, 405, steps=4)
    page.mouse.up()


def number(ladder):
    return int(ladder.locator(".where").inner_text().split(" ")[0])


def test_an_apprentice_walks_a_way_from_end_to_end_without_a_signal(make_page, address):
    page = make_page(390)
    page.goto(address + "methods/wet-scrape/")
    page.wait_for_selector("html[data-offline]", timeout=60_000)
    page.context.set_offline(True)
    page.reload()
    page.wait_for_selector(".ladder-open button")
    total = page.locator(".step, .hold").count()
    holds = page.locator(".hold").count()
    page.locator(".ladder-open button").click()
    ladder = page.locator("dialog.ladder")
    expect(ladder.locator(".where")).to_have_text("Before you start")
    assert ladder.locator(".alarm .signal").first.inner_text().strip() == "DANGER"
    ladder.locator(".ladder-foot .act").click()
    seen_holds = seen_cautions = figures = guarded = 0
    for at in range(total):
        expect(ladder.locator(".where")).to_have_text(f"{at + 1} of {total}")
        assert (
            float(ladder.locator(".ladder-do").evaluate("one => getComputedStyle(one).fontSize").removesuffix("px"))
            >= 28
        )
        for one in ladder.locator(".ladder-foot button").all():
            assert one.bounding_box()["height"] >= 80
        if ladder.locator(".hold-word").count():
            assert ladder.locator(".ladder-do").bounding_box()["y"] < 400, "what must be true is in sight"
            seen_holds += 1
            swipe(page, -150)
            expect(ladder.locator(".stop-here")).to_have_text("Stop. This hold point comes first.")
            expect(ladder.locator(".ladder-foot .act")).to_have_text("This is true now")
        guards = page.locator(".step, .hold").nth(at).get_attribute("data-guards") or ""
        for one in guards.split():
            alarm = ladder.locator(f'[data-caution="{one}"]')
            assert alarm.bounding_box()["y"] < ladder.locator(".ladder-do").bounding_box()["y"]
            guarded += 1
        seen_cautions += ladder.locator(".alarm").count()
        figures += ladder.locator("svg.sheet").count()
        ladder.locator(".ladder-foot .act").click()
    expect(ladder).to_be_hidden()
    assert (seen_holds, figures) == (holds, 3) and seen_cautions >= 5 and guarded >= 3
    expect(page.locator(".ticked")).to_contain_text(f"{total} of {total} steps and hold points are ticked.")
    page.reload()
    expect(page.locator(".ticked")).to_contain_text(f"{total} of {total}")
    page.locator(".clear-ticks").click()
    expect(page.locator(".ticked")).to_contain_text(f"0 of {total}")
    page.locator(".clear-ticks").click()
    expect(page.locator(".ticked")).to_contain_text(f"{total} of {total}")


def test_it_opens_where_the_work_stands_and_goes_back_without_loss(page, address):
    ladder = open_ladder(page, address)
    for _ in range(3):
        ladder.locator(".ladder-foot .act").click()
    assert number(ladder) == 4
    swipe(page, 150)
    assert number(ladder) == 3
    expect(ladder.locator(".where")).to_contain_text("done")
    page.keyboard.press("ArrowRight")
    assert number(ladder) == 4
    page.keyboard.press("Escape")
    expect(ladder).to_be_hidden()
    assert page.locator("input[data-step]:checked").count() == 3
    page.reload()
    page.locator(".ladder-open button").click()
    assert number(ladder) == 4


def test_a_caution_stands_above_the_step_that_it_guards(page, address):
    ladder = open_ladder(page, address)
    for _ in range(3):  # past the report, lead and the sound ceiling
        ladder.locator(".ladder-foot .act").click()
    alarm, step = ladder.locator(".alarm").bounding_box(), ladder.locator(".ladder-do").bounding_box()
    assert alarm["y"] < step["y"]
    assert ladder.locator("[id]").count() == 0


def test_a_timer_goes_by_the_clock_and_survives_a_reload(page, address):
    """A locked phone stops scripts. What is kept is the moment when the time is over."""
    page.clock.install()
    ladder = open_ladder(page, address)
    while ladder.locator(".timer").count() == 0:
        ladder.locator(".ladder-foot .act").click()
    ladder.locator(".timer button").click()
    expect(ladder.locator(".left")).to_have_text(re.compile(r"^1[45] min \d+ s left$"))
    at = number(ladder)
    page.reload()
    page.locator(".ladder-open button").click()
    assert number(ladder) == at
    expect(ladder.locator(".left")).to_have_text(re.compile(r"^1[45] min \d+ s left$"))
    page.clock.fast_forward("16:00")
    expect(ladder.locator(".left")).to_contain_text("The time is over, since")


def test_a_full_device_still_shows_the_steps(make_page, address):
    page = make_page(390)
    page.add_init_script("Storage.prototype.setItem = () => { throw new Error('full'); };")
    ladder = open_ladder(page, address)
    ladder.locator(".ladder-foot .act").click()
    assert number(ladder) == 2
    page.keyboard.press("Escape")
    expect(page.locator(".ticked")).to_contain_text("This device does not keep ticks now.")


def test_ticks_of_a_task_can_be_cleared_too(page, address):
    ladder = open_ladder(page, address, "prepare/test-patch/")
    ladder.locator(".ladder-foot .act").click()
    page.keyboard.press("Escape")
    expect(page.locator(".ticked")).to_contain_text("1 of ")
    page.locator(".clear-ticks").click()
    expect(page.locator(".ticked")).to_contain_text("0 of ")


@pytest.mark.parametrize("way", WAYS)
def test_a_customer_reads_one_screen_with_the_rooms_of_the_link(page, address, way):
    page.goto(
        address + f"to/{way}/#takeoff?rooms=Living:+20'+x+14'&ceiling_height_ft=8&asbestos_result=none&humidity_pct=40"
    )
    page.wait_for_selector("#takeoff[data-engine]")
    expect(page.locator("#takeoff .figure strong")).to_have_text("280 sq ft")
    expect(page.locator("#figures")).to_be_hidden()
    expect(page.locator(".verdict")).to_contain_text("By your answers this way is")
    for asked in ("Disturbs", "Takes", "Leaves", "Your room"):
        assert page.locator(".screen dt", has_text=asked).is_visible()
    amount = pages.AMOUNTS[way]
    if amount:
        expect(page.locator(f"#{amount} .origin")).to_contain_text("Living: 20' x 14'")
        assert page.locator(f"#{amount} .figure strong").is_visible()
        assert not page.locator(f"#{amount} form").is_visible()
    for size in ("A4", "Letter"):
        sheet = page.pdf(format=size)
        assert len(re.findall(rb"/Type\s*/Page\b", sheet)) == 1, size


def test_a_contractor_copies_the_link_for_the_customer(make_page, address):
    page = make_page(390, permissions=["clipboard-read", "clipboard-write"])
    page.goto(address + "methods/skim-over/#skim?rooms=Den:+10+x+12&texture_depth_in=1/8")
    page.wait_for_selector("#skim[data-engine]")
    page.locator(".send").click()
    expect(page.locator(".ticked")).to_contain_text("The link for the customer is copied.")
    link = page.evaluate("navigator.clipboard.readText()")
    assert link == address + "to/skim-over/#takeoff?rooms=Den:+10+x+12&texture_depth_in=1/8"
    page.goto(link)
    expect(page.locator("#takeoff .figure strong")).to_have_text("120 sq ft")
    expect(page.locator("#skim .origin")).to_contain_text("1/8")


FOUND = [
    ("popcorn", "Which ways are open?"), ("cottage cheese", "Wet scrape"), ("acoustic", "Which ways are open?"), ("stipple", "Skim over"),
    ("mud", "Tape the joints"), ("drywall", "Board over"), ("plasterboard", "Board over"), ("it drips", "Water drips from a box"),
    ("seams show", "Seams show after paint"), ("screws pop", "Screws pop"), ("vent", "Cover and contain"), ("lead paint", "Settle asbestos and lead"),
    ("how long does it take to dry", "Let it dry"), ("test", "Settle asbestos and lead"), ("paper tears", "The paper tears"),
]  # fmt: skip


def test_people_find_things_by_their_own_words_without_a_signal(make_page, address):
    page = make_page(390)
    page.goto(address)
    page.wait_for_selector("html[data-offline]", timeout=60_000)
    page.context.set_offline(True)
    page.locator(".top a", has_text="Search").click()
    page.wait_for_selector("#find[data-ready]")
    for words, title in FOUND:
        page.locator("#q").fill(words)
        first = page.locator(".found a").all_inner_texts()[:5]
        assert title in first, (words, first)
    page.locator("#q").fill("xyzzy")
    expect(page.locator("#find .status")).to_contain_text("Nothing found.")
    page.locator("#q").fill("the paper tears")
    page.locator(".found a", has_text="The paper tears").first.click()
    expect(page).to_have_url(re.compile(r"#trouble-"))
    expect(page.locator(".trouble > div:target")).to_be_visible()
    page.go_back()
    expect(page.locator("#q")).to_have_value("the paper tears")


def test_the_index_is_small(page, address):
    response = page.request.get(address + "search.json")
    assert len(json.loads(response.text())["entries"]) > 500
    assert len(response.body()) < 250_000
