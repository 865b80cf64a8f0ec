"""Two walks: an apprentice on a ladder without a signal, from the first hold point to the last step; a customer who gets a
link and reads one screen. And the search, by the words that people use."""

import json
import re

import pytest
from playwright.sync_api import expect

from handbook.make import customer
from link_reader import read
from test_job import ready

pytestmark = [pytest.mark.browser, pytest.mark.slow]
WAYS = tuple(customer.AMOUNTS)


def open_ladder(page, address, path="methods/wet-scrape/"):
    page.goto(address + path)
    page.wait_for_selector(".ladder-open button")
    page.evaluate("for (const one of document.querySelectorAll('.fold')) one.open = true")
    page.locator(".ladder-open button").click()
    ladder = page.locator("dialog.ladder")
    expect(ladder).to_be_visible()
    if ladder.locator(".where").inner_text() == "Before you start":
        said = page.locator("main .alarm[data-caution]:not(:is(.calc, .answer, .steps, .verdict) *)")
        assert ladder.locator(".alarm").count() == len({one.get_attribute("data-caution") for one in said.all()})
        onward(ladder)
    return page.locator("dialog.ladder")


def read_on(ladder):
    """Bring what has to be met into sight."""
    while ladder.locator(".more").is_visible():
        ladder.locator(".more").click()
        ladder.page.wait_for_timeout(20)


def onward(ladder):
    """Read what is there, meet a hold point in its own box, and go on."""
    read_on(ladder)
    check = ladder.locator(".ladder-check input")
    if check.count() and not check.is_checked():
        check.click()
    ladder.locator(".ladder-foot .act").click()


def swipe(page, across):
    """A finger across the step, to the left where `across` is negative."""
    page.mouse.move(200, 400)
    page.mouse.down()
    page.mouse.move(200 + across, 405, steps=4)
    page.mouse.up()


def number(ladder):
    return int(re.search(r"(\d+) of", ladder.locator(".where").inner_text()).group(1))


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
    assert ladder.locator(".alarm .signal").first.inner_text().split() == ["DANGER", "·", "not", "tested"]
    onward(ladder)
    seen_holds = seen_cautions = figures = settled = 0
    for at in range(total):
        expect(ladder.locator(".where")).to_have_text(re.compile(rf"^[A-Z][a-z ]+, {at + 1} of {total}$"))
        assert (
            float(ladder.locator(".ladder-do").evaluate("one => getComputedStyle(one).fontSize").removesuffix("px"))
            >= 28
        )
        for one in ladder.locator(".ladder-foot button").filter(visible=True).all():
            assert one.bounding_box()["height"] >= 80
        if ladder.locator(".hold-word").count():
            assert ladder.locator(".ladder-do").bounding_box()["y"] < 400, "what must be true is in sight"
            seen_holds += 1
            swipe(page, -150)
            expect(ladder.locator(".stop-here")).to_have_text("Stop. This hold point comes first.")
            expect(ladder.locator(".ladder-foot .act")).to_be_disabled()
        guards = page.locator(".step, .hold").nth(at).get_attribute("data-guards") or ""
        for one in guards.split():
            # The report was in hand before this step: the stop that asks for it is not said again. What no hold point
            # settles is said at every step that it guards.
            proved = page.locator(f'.hold[data-proves~="{one}"] input:checked').count()
            assert ladder.locator(f'[data-caution="{one}"]').count() == 1 - proved, one
            settled += proved
        seen_cautions += ladder.locator(".alarm").count()
        figures += ladder.locator("svg.sheet").count()
        onward(ladder)
    expect(ladder).to_be_hidden()
    assert (seen_holds, figures) == (holds, 3) and seen_cautions >= 5 and settled >= 3
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
        onward(ladder)
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


def test_a_caution_that_nothing_has_settled_stays_with_its_steps(page, address):
    """The report settles asbestos, and no other thing."""
    ladder = open_ladder(page, address, "methods/dry-scrape/")
    at = page.locator(".step, .hold").evaluate_all(
        "all => all.findIndex(one => (one.dataset.guards ?? '').includes('dust-silica'))"
    )
    for _ in range(at):
        onward(ladder)
    assert ladder.locator('.short[data-caution="dust-silica"]').count() == 1
    assert ladder.locator('.short[data-caution="asbestos-first"]').count() == 0


def test_a_step_that_another_page_cleared_is_held_again(page, address):
    ladder = open_ladder(page, address)
    for _ in range(4):
        onward(ladder)
    other = page.context.new_page()
    other.goto(address + "methods/wet-scrape/")
    ready(other)
    other.locator(".clear-ticks").click()
    expect(page.locator("input[data-step]:checked")).to_have_count(0)
    ladder.locator(".ladder-check input").click()  # of the hold point in sight
    expect(ladder.locator(".stop-here")).to_have_text("Stop. This hold point comes first.")
    assert number(ladder) == 1


RINGS = """
    window.rung = 0;
    window.AudioContext = class {
        constructor() { this.currentTime = 0; }
        createOscillator() { return {frequency: {}, connect() {}, start() { window.rung += 1; }, stop() {}}; }
    };
"""


def test_a_timer_is_in_sight_on_every_step_and_rings_wherever_one_is(page, address):
    page.clock.install()
    page.add_init_script(RINGS)
    ladder = open_ladder(page, address)
    while ladder.locator(".timer").count() == 0:
        onward(ladder)
    what = ladder.locator(".ladder-do").inner_text()
    ladder.locator(".timer button").click()
    onward(ladder)
    assert ladder.locator(".ladder-do").inner_text() != what
    expect(ladder.locator(".timers .left")).to_be_in_viewport(ratio=1)
    page.keyboard.press("Escape")
    expect(page.locator(".timers .left")).to_be_in_viewport(ratio=1)
    assert page.evaluate("window.rung") == 0
    page.clock.fast_forward("16:00")
    expect(page.locator(".timers [role=alert]")).to_have_text(f"The time is over: {what}")
    assert page.evaluate("window.rung") == 3
    page.clock.fast_forward("01:00")
    assert page.evaluate("window.rung") == 3, "once"
    page.locator(".timers button").click()
    expect(page.locator(".timers .left")).to_have_count(0)


def test_a_screen_that_is_kept_on_late_is_let_go(page, address):
    """The device may grant it after the ladder's view was closed."""
    page.add_init_script(
        """window.held = 0;
        Object.defineProperty(navigator, 'wakeLock', {value: {request: () => new Promise(done => setTimeout(() => {
            window.held += 1;
            done({released: false, release() { window.held -= 1; this.released = true; }});
        }, 300))}});"""
    )
    open_ladder(page, address)
    page.keyboard.press("Escape")
    page.wait_for_timeout(600)
    assert page.evaluate("window.held") == 0
    page.locator(".ladder-open button").click()
    page.wait_for_timeout(600)
    assert page.evaluate("window.held") == 1
    page.keyboard.press("Escape")
    assert page.evaluate("window.held") == 0


def test_a_timer_goes_by_the_clock_and_survives_a_reload(page, address):
    """A locked phone stops scripts. What is kept is the moment when the time is over."""
    page.clock.install()
    ladder = open_ladder(page, address)
    while ladder.locator(".timer").count() == 0:
        onward(ladder)
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
    onward(ladder)
    assert number(ladder) == 2
    page.keyboard.press("Escape")
    expect(page.locator(".ticked")).to_contain_text("This device does not keep ticks now.")


def test_ticks_of_a_task_can_be_cleared_too(page, address):
    ladder = open_ladder(page, address, "prepare/test-patch/")
    onward(ladder)
    page.keyboard.press("Escape")
    expect(page.locator(".ticked")).to_contain_text("1 of ")
    page.locator(".clear-ticks").click()
    expect(page.locator(".ticked")).to_contain_text("0 of ")


@pytest.mark.parametrize("way", WAYS)
def test_a_customer_reads_one_screen_with_the_rooms_of_the_link(page, address, way):
    page.goto(
        address
        + f"to/{way}/#takeoff?rooms=Living:+20'+x+14'&ceiling_height_ft=8&texture_depth_in=1/8&asbestos_result=none&humidity_pct=40"
    )
    page.wait_for_selector("#takeoff[data-engine]")
    expect(page.locator("#takeoff .figure strong")).to_have_text("280 sq ft")
    expect(page.locator("#figures")).to_be_hidden()
    expect(page.locator(".verdict")).to_contain_text("For this ceiling, by your answers:")
    for asked in ("Disturbs", "Takes", "Leaves", "Your room"):
        assert page.locator(".screen dt", has_text=asked).is_visible()
    amount = customer.AMOUNTS[way]
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
    page_of, code = link.split("#")
    assert page_of == address + "to/skim-over/"
    assert read("#" + code) == {"rooms": "Den: 10 x 12", "texture_depth_in": "1/8"}
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


@pytest.mark.parametrize("question", ["%", "100%", "%e2%82"])
def test_a_search_with_half_a_code_in_its_address_still_searches(page, address, question):
    page.goto(address + "search/#q=" + question)
    page.wait_for_selector("#find[data-ready]")
    expect(page.locator("#q")).to_have_value(question)
    page.locator("#q").fill("drips")
    expect(page.locator(".found a").first).to_be_visible()


def test_the_index_is_small(page, address):
    response = page.request.get(address + "search.json")
    assert len(json.loads(response.text())["entries"]) > 500
    assert len(response.body()) < 300_000
