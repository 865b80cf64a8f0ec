"""The view of one step, on a phone of 390 x 664 under the browser's own bars, in one dusty hand: what has to be in sight before a
step is done, what a thumb can do by mistake and take back, and where one comes back to."""

import re

import pytest
from playwright.sync_api import expect

from handbook import serve
from test_job import ready
from test_walk import number, onward, open_ladder, read_on, swipe

pytestmark = [pytest.mark.browser, pytest.mark.slow]
WET, SKIM, DRY = "methods/wet-scrape/", "methods/skim-over/", "methods/dry-scrape/"
PHONE, ASIDE = {"width": 390, "height": 664}, {"width": 664, "height": 390}
STEPPED = sorted(
    path.parent.relative_to(serve.SITE).as_posix() + "/"
    for path in serve.SITE.glob("*/*/index.html")
    if 'class="steps"' in (text := path.read_text(encoding="utf-8"))
    and 'data-kind="paper"' not in text  # a paper is no ladder
)
# What of the step in sight lies in sight: all of it, with its own cautions' words, hazards and what to do about them.
SIGHT = """one => {
    const view = one.querySelector('.ladder-body').getBoundingClientRect();
    const within = (part) => { const at = part.getBoundingClientRect(); return at.height > 0 && at.top >= view.top - 1 && at.bottom <= view.bottom + 1; };
    const all = (parts) => [...one.querySelectorAll(parts)].every(within);
    const instruction = one.querySelector('.ladder-do');
    return {whole: all('.ladder-do, .ladder-know, .ladder-check'), unclipped: instruction.scrollWidth <= instruction.clientWidth + 1,
        large: parseFloat(getComputedStyle(instruction).fontSize) >= 28, hazards: all('.whole :is(.signal, .what, strong)'),
        told: [...one.querySelectorAll('.guard summary .signal')].every((word) => word.checkVisibility()),
        first: [...one.querySelectorAll('.short')].every((row) => row.getBoundingClientRect().top >= instruction.getBoundingClientRect().bottom),
        live: !(one.querySelector('.ladder-check input') ?? one.querySelector('.ladder-foot .act')).disabled};
}"""


def go_to(page, ladder, at):
    for _ in range(at - number(ladder)):
        onward(ladder)


def row_with(page, what):
    """The number of the first step or hold point that something of this kind belongs to."""
    rows = page.locator(".steps > :is(.step, .hold)")
    return 1 + rows.evaluate_all(
        "(all, what) => all.findIndex((one) => one.querySelector(what) || one.previousElementSibling?.matches(what))",
        what,
    )


def test_there_are_pages_with_steps():
    assert len(STEPPED) > 20


@pytest.mark.parametrize("path", STEPPED)
def test_each_instruction_and_its_hazard_are_whole_on_a_small_phone(page, address, path):
    page.set_viewport_size(PHONE)
    ladder = open_ladder(page, address, path)
    rows = page.locator(".steps > :is(.step, .hold)")
    for at in range(rows.count()):
        found = ladder.evaluate(SIGHT)
        assert set(found.values()) == {True}, (ladder.locator(".where").inner_text(), found)
        own = rows.nth(at).evaluate(
            """one => { const found = []; for (let row = one.previousElementSibling; row?.matches('.step-caution, .step-figure'); row = row.previousElementSibling)
                found.push(...[...row.querySelectorAll('[data-caution]')].map((row) => row.dataset.caution)); return found; }"""
        )
        for caution in own:
            proved = page.locator(f'.hold[data-proves~="{caution}"] input:checked').count()
            assert ladder.locator(f'.whole[data-caution="{caution}"]').count() == 1 - proved, caution
        onward(ladder)
    expect(ladder).to_be_hidden()


@pytest.mark.parametrize("path", [WET, SKIM, "prepare/accident/"])
def test_a_phone_on_its_side_shows_the_instruction_whole(page, address, path):
    page.set_viewport_size(ASIDE)
    ladder = open_ladder(page, address, path)
    for _ in range(page.locator(".steps > :is(.step, .hold)").count()):
        found = ladder.evaluate(SIGHT)
        assert found["unclipped"] and found["large"] and found["first"]
        assert ladder.locator(".ladder-do").evaluate(
            "one => one.getBoundingClientRect().bottom <= one.parentElement.getBoundingClientRect().bottom"
        )
        for one in ladder.locator(".ladder-foot button:visible").all():
            box = one.bounding_box()
            assert box["height"] >= 44 and box["y"] + box["height"] <= 390
        onward(ladder)


@pytest.mark.parametrize("path", [WET, "prepare/accident/"])
def test_text_twice_as_large_can_be_read_and_done(page, address, path):
    page.set_viewport_size(PHONE)
    page.add_init_script(
        "addEventListener('DOMContentLoaded', () => (document.documentElement.style.fontSize = '36px'))"
    )
    ladder = open_ladder(page, address, path)
    for _ in range(page.locator(".steps > :is(.step, .hold)").count()):
        assert ladder.evaluate(
            "one => one.scrollWidth <= innerWidth && one.querySelector('.ladder-body').clientHeight > 150"
        )
        assert ladder.locator(".ladder-body").evaluate("one => one.scrollWidth <= one.clientWidth")
        onward(ladder)
    expect(ladder).to_be_hidden()


def test_done_is_dead_until_the_instruction_and_what_to_do_have_been_in_sight(page, address):
    page.set_viewport_size(PHONE)
    ladder = open_ladder(page, address, WET)
    go_to(page, ladder, row_with(page, ".step-caution"))
    done, body = ladder.locator(".ladder-foot .act"), ladder.locator(".ladder-body")
    expect(done).to_be_enabled()
    page.keyboard.press("ArrowLeft")
    page.set_viewport_size({"width": 390, "height": 330})
    page.keyboard.press("ArrowRight")
    avoidance = ladder.locator(".whole strong").first
    expect(avoidance).not_to_be_in_viewport(ratio=1)
    expect(done).to_be_disabled()
    for _ in range(20):  # little by little, so that each part has been in sight
        body.evaluate("one => one.scrollBy(0, 40)")
        page.wait_for_timeout(30)
    expect(done).to_be_enabled()
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("ArrowRight")
    expect(done).to_be_disabled()
    body.evaluate("one => one.scrollTo(0, one.scrollHeight)")  # past it, to the end
    page.wait_for_timeout(50)
    seen_all = avoidance.evaluate(
        "one => one.getBoundingClientRect().top >= one.closest('.ladder-body').getBoundingClientRect().top"
    )
    if not seen_all:
        expect(done).to_be_disabled()
    read_on(ladder)


def test_reading_on_brings_the_rest_into_sight(page, address):
    page.set_viewport_size(PHONE)
    page.goto(address + WET)
    page.locator(".ladder-open button").click()
    ladder = page.locator("dialog.ladder")
    expect(ladder.locator(".where")).to_have_text("Before you start")
    expect(ladder.locator(".ladder-foot .act")).to_be_disabled()
    last = ladder.locator(".alarm strong").last
    expect(last).not_to_be_in_viewport()
    read_on(ladder)
    expect(last).to_be_in_viewport(ratio=1)
    expect(ladder.locator(".ladder-foot .act")).to_be_enabled()


def test_what_can_hurt_opens_to_all_of_it(page, address):
    ladder = open_ladder(page, address, WET)
    go_to(page, ladder, row_with(page, ".step-caution"))
    own = ladder.locator(".whole").first
    told = page.locator(f'.step-caution [data-caution="{own.get_attribute("data-caution")}"]')
    for part in (".what", "strong"):
        expect(own.locator(f"summary {part}")).to_have_text(told.locator(part).inner_text())
    expect(own.locator(".hazard")).to_be_hidden()
    own.locator("summary").click()
    expect(own.locator(".hazard")).to_be_visible()
    rest = own.locator(".hazard").inner_text().strip()
    assert rest and rest in told.locator(".hazard").inner_text()


def test_what_guards_from_before_is_a_short_row(page, address):
    ladder = open_ladder(page, address, DRY)
    go_to(page, ladder, row_with(page, ".step-caution"))
    while not ladder.locator(".guard").count():
        onward(ladder)
    guard = ladder.locator(".guard").first
    assert guard.locator("summary .signal").is_visible() and guard.locator("summary .what").is_visible()
    expect(guard.locator("strong")).to_be_hidden()
    guard.locator("summary").click()
    expect(guard.locator("strong")).to_be_visible()


def test_a_hold_point_is_met_on_purpose(page, address):
    """Its box lies apart from the button that a thumb taps on, and the button is dead until the box is ticked."""
    page.set_viewport_size(PHONE)
    ladder = open_ladder(page, address, WET)
    act, check = ladder.locator(".ladder-foot .act"), ladder.locator(".ladder-check input")
    expect(act).to_be_disabled()
    act.click(force=True)
    page.keyboard.press("Enter")
    assert number(ladder) == 1 and page.locator("input[data-step]:checked").count() == 0
    assert check.bounding_box()["y"] + check.bounding_box()["height"] < act.bounding_box()["y"] - 20
    ladder.get_by_label("This is true now").check()
    expect(act).to_be_enabled()
    assert page.locator("input[data-hold]:checked").count() == 1
    check.uncheck()  # by mistake
    expect(act).to_be_disabled()
    assert page.locator("input[data-hold]:checked").count() == 0


def test_a_double_tap_is_one_step(page, address):
    ladder = open_ladder(page, address, "prepare/measure/")
    ladder.locator(".ladder-foot .act").dblclick()
    assert number(ladder) == 2 and page.locator("input[data-step]:checked").count() == 1


def test_a_wrong_tick_is_taken_back(page, address):
    ladder = open_ladder(page, address, "prepare/measure/")
    undo = ladder.locator(".undo")
    expect(undo).to_be_hidden()
    onward(ladder)
    ladder.locator(".ladder-foot button", has_text="Back").click()
    expect(ladder.locator(".where")).to_have_text(re.compile(r"^Step 1 of \d+, done$"))
    expect(undo).to_have_text("Not done")
    undo.click()
    expect(ladder.locator(".where")).to_have_text(re.compile(r"^Step 1 of \d+$"))
    expect(ladder.locator(".ladder-foot .act")).to_have_text("Done, next")
    assert page.locator("input[data-step]:checked").count() == 0


def test_phases_are_named_counted_and_lead_to_their_steps_past_no_hold_point(page, address):
    page.set_viewport_size(PHONE)
    ladder = open_ladder(page, address, WET)
    where, entries = ladder.locator("button.where"), ladder.locator(".phase-list button")
    expect(where).to_have_text(re.compile(r"^Checks first, 1 of \d+$"))
    where.click()
    names = page.locator(".phase h3").all_inner_texts()
    assert entries.locator("b").all_inner_texts() == names
    expect(entries.filter(has_text="Checks first")).to_contain_text(
        re.compile(r"0 of \d+ done, \d hold points to meet")
    )
    for one in entries.all():
        assert one.bounding_box()["height"] >= 44
    entries.filter(has_text="Wet and scrape").click()
    expect(ladder.locator(".stop-here")).to_have_text("Stop. This hold point comes first.")
    assert number(ladder) == 1
    while "Test patch" not in ladder.locator(".where").inner_text():
        onward(ladder)
    there = number(ladder)
    where.click()
    expect(entries.filter(has_text="Checks first")).to_contain_text(re.compile(r"All \d+ done, \d hold points met"))
    expect(ladder.locator(".phase-list [aria-current]")).to_contain_text("Test patch")
    expect(ladder.locator(".ladder-do")).to_be_hidden()
    page.keyboard.press("Escape")  # the list, not the view
    expect(ladder.locator(".ladder-do")).to_be_visible()
    assert number(ladder) == there
    where.click()
    entries.filter(has_text="Power off").click()
    assert number(ladder) < there
    expect(ladder.locator(".where")).to_contain_text("Power off")


def test_it_goes_on_where_it_was_after_a_reload_with_one_tap(page, address):
    ladder = open_ladder(page, address, WET)
    go_to(page, ladder, 7)
    page.keyboard.press("ArrowRight")  # looked ahead, and left one for later
    at, text = number(ladder), ladder.locator(".ladder-do").inner_text()
    page.reload()
    expect(page.locator(".ladder-open button")).to_have_text(f"Go on at step {at}")
    page.locator(".ladder-open button").click()
    expect(ladder.locator(".ladder-do")).to_have_text(text)
    page.keyboard.press("Escape")
    page.locator(".clear-ticks").click()
    expect(page.locator(".ladder-open button")).to_have_text("One step at a time")
    page.locator(".ladder-open button").click()
    expect(ladder.locator(".where")).to_have_text("Before you start")


def folded(page):
    """The same page with its steps folded away."""

    def fold(route):
        answer = route.fetch()
        text = answer.text().replace(
            '<ol class="steps">', '<details class="fold"><summary>Steps</summary><ol class="steps">'
        )
        route.fulfill(response=answer, body=re.sub(r"(</li>)(</ol>)(?!.*</ol></details>)", r"\1\2", text, count=0))

    page.route(re.compile(r"/methods/[a-z-]+/$"), fold)


def test_steps_that_are_folded_away_are_opened_one_at_a_time_all_the_same(page, address):
    page.goto(address + WET)
    ready(page)
    if not page.locator("details .steps").count():
        folded(page)
        page.reload()
    page.wait_for_selector(".ladder-open button")
    fold, opener = page.locator("details:has(> .steps), details:has(.steps)").first, page.locator(".ladder-open button")
    fold.evaluate("one => (one.open = false)")
    expect(opener).to_be_visible()
    summary = fold.locator("summary").first.bounding_box()
    assert 0 <= opener.bounding_box()["y"] - summary["y"] - summary["height"] < 60, (
        "right under the line that opens them"
    )
    opener.click()
    expect(page.locator("dialog.ladder")).to_be_visible()
    page.keyboard.press("Escape")
    expect(opener).to_be_in_viewport()
    fold.evaluate("one => (one.open = true)")
    expect(fold.locator(".ladder-open button")).to_be_visible()
    assert page.locator(".ladder-open button").count() == 1


def test_figures_in_a_step_are_there_and_change_while_one_looks(page, address):
    page.set_viewport_size(PHONE)
    page.clock.install()
    ladder = open_ladder(page, address, WET)
    at = row_with(page, ".wait")
    go_to(page, ladder, at)
    step = page.locator(".steps > :is(.step, .hold)").nth(at - 1)
    tell = """(one, [text, shows, least]) => {
        const place = one.querySelector('.do');
        place.querySelector('.own')?.remove();
        place.insertAdjacentHTML('afterbegin', `<span class="own" id="own">Mist <span data-figure="wetting.water_gal" data-shows="${shows}">${text}</span> of water. </span>`);
        place.querySelector('.wait').dataset.least = least;
        document.dispatchEvent(new Event('figures-shown'));
    }"""
    step.evaluate(tell, ["2.1 gal", "example", "15"])
    expect(ladder.locator(".ladder-do")).to_contain_text("Mist 2.1 gal of water.")
    expect(ladder.locator(".ladder-note")).to_contain_text("Example")
    assert "Wait 15 min" not in ladder.locator(".ladder-do").inner_text(), "how long to wait stands with the timer"
    step.evaluate(tell, ["3.4 gal", "answer", "437"])
    expect(ladder.locator(".ladder-do")).to_contain_text("Mist 3.4 gal of water.")
    expect(ladder.locator(".ladder-note")).to_have_count(0)
    assert page.evaluate(
        "[...document.querySelectorAll('[id]')].every((one, at, all) => all.findIndex((other) => other.id === one.id) === at)"
    )
    expect(ladder.locator(".timer button")).to_have_text("Start 7 h 17 min")
    ladder.locator(".timer button").click()
    expect(ladder.locator(".timers .left")).to_have_text(re.compile(r"^7 h 1[67] min \d+ s left$"))
    expect(ladder.locator(".timers b")).to_contain_text("Mist 3.4 gal of water.")


def test_the_end_of_a_timer_is_told_on_any_step(page, address):
    page.set_viewport_size(PHONE)
    page.add_init_script("window.shaken = 0; navigator.vibrate = () => { window.shaken += 1; return true; };")
    page.clock.install()
    ladder = open_ladder(page, address, WET)
    go_to(page, ladder, row_with(page, ".wait"))
    ladder.locator(".timer button").click()
    onward(ladder)
    expect(ladder.locator(".timers .over")).to_have_count(0)
    page.clock.fast_forward("16:00")
    expect(ladder.locator(".timers .over .left")).to_contain_text("The time is over")
    expect(ladder.locator(".timers .over .left")).to_be_in_viewport(ratio=1)
    assert page.evaluate("window.shaken") == 1
    found = ladder.evaluate(SIGHT)
    assert found["whole"] and found["hazards"], "the timer leaves room for the step"
    ladder.get_by_role("button", name=re.compile("^Stop the timer: ")).click()
    expect(ladder.locator(".timers li")).to_have_count(0)


def test_the_drawing_of_a_step_leaves_the_buttons_where_they_are_and_is_shown_large(page, address):
    page.set_viewport_size(PHONE)
    ladder = open_ladder(page, address, WET)
    foot = ladder.locator(".ladder-foot").bounding_box()
    go_to(page, ladder, row_with(page, ".step-figure"))
    small = ladder.locator(".ladder-figure")
    assert ladder.locator(".ladder-foot").bounding_box() == foot
    expect(small).to_be_in_viewport(ratio=1)
    assert small.bounding_box()["y"] > ladder.locator(".ladder-do").bounding_box()["y"]
    small.click()
    large = page.locator("dialog.ladder-large")
    assert large.locator("svg").bounding_box()["width"] > 1.5 * small.bounding_box()["width"]
    assert page.evaluate(
        "[...document.querySelectorAll('[id]')].every((one, at, all) => all.findIndex((other) => other.id === one.id) === at)"
    )
    page.keyboard.press("Escape")
    expect(large).to_be_hidden()
    expect(ladder).to_be_visible()
    expect(small).to_be_focused()


def test_keys_alone_and_what_is_read_out(page, address):
    ladder = open_ladder(page, address, "prepare/measure/")
    expect(ladder.locator(".ladder-do")).to_be_focused()
    page.keyboard.press("Enter")
    assert number(ladder) == 2 and page.locator("input[data-step]:checked").count() == 1
    expect(ladder.locator(".ladder-do")).to_be_focused()
    expect(ladder.locator("[role=status]")).to_contain_text("Step 2 of ")
    ladder = open_ladder(page, address, WET)
    swipe(page, -150)
    expect(ladder.locator("[role=status]")).to_contain_text("Stop. This hold point comes first. Checks first, 1 of ")
    go_to(page, ladder, row_with(page, ".step-caution"))
    expect(ladder.locator("[role=status]")).to_contain_text(ladder.locator(".whole strong").first.inner_text())


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_target_is_for_a_thumb_and_has_a_name(make_page, address, scheme):
    page = make_page(320, color_scheme=scheme)
    page.set_viewport_size({"width": 320, "height": 568})
    ladder = open_ladder(page, address, WET)
    for _ in range(page.locator(".steps > :is(.step, .hold)").count()):
        assert (
            ladder.evaluate(
                """one => [...one.querySelectorAll('button, summary, label')].filter((part) => part.checkVisibility()).filter((part) => {
                const at = part.getBoundingClientRect();
                return at.height < 44 || at.width < 44 || !(part.textContent.trim() || part.getAttribute('aria-label'));
            }).map((part) => part.outerHTML)"""
            )
            == []
        )
        assert ladder.evaluate("one => one.scrollWidth <= innerWidth")
        onward(ladder)


def test_a_browser_without_such_a_view_keeps_the_list(page, address):
    page.add_init_script("delete window.HTMLDialogElement;")
    page.goto(address + "prepare/measure/")
    ready(page)
    page.wait_for_timeout(300)
    assert page.locator(".ladder-open").count() == 0
    page.locator("input[data-step]").first.check()
    expect(page.locator(".ticked")).to_contain_text("1 of ")
