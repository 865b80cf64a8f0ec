"""Rooms as a list on a phone: cards, a plan that follows, the text that stays what counts."""

import json
import re
from urllib.parse import quote

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from playwright.sync_api import expect

from calc import browser as calc_browser
from conftest import until
from test_example import under_its_form
from test_job import as_browser_writes, field, form, open_way

pytestmark = [pytest.mark.browser, pytest.mark.slow]
MEASURE = "prepare/measure/"
DEN = "Den: E 14' S 6' W 4' S 5' W 10' N 11'"


def opened(page, address, rooms="", path=MEASURE, before=None):
    """A page with its forms open and the rooms as a list, as they are for whoever comes."""
    if before:
        before(page)
    open_way(page, address, f"#takeoff?rooms={quote(rooms)}" if rooms else "", path, shut=True)
    page.evaluate("for (const one of document.querySelectorAll('.fold, details.calc')) one.open = true")
    return page


def cards(page):
    return page.locator(".room")


def sides(page, at):
    return cards(page).nth(at).locator("input[data-wall]")


def text(page):
    return field(page, "rooms").input_value()


def plan(page, at):
    return cards(page).nth(at).locator(".room-plan svg")


def asked(rooms):
    return json.loads(calc_browser.answer("sketch", json.dumps({"rooms": rooms})))["sketch"]


def as_text(page):
    page.locator(".as-text > summary").click()
    expect(field(page, "rooms")).to_be_visible()


def test_two_rooms_by_four_fields_and_two_taps(page, address):
    opened(page, address)
    expect(field(page, "rooms")).to_be_hidden()
    taps, typed = 0, 0
    sides(page, 0).first.click()
    taps += 1
    for length in ("20", "14"):
        page.keyboard.type(length)
        page.keyboard.press("Enter")  # the key of a phone that goes on
        typed += 1
    expect(page.locator(".room-add")).to_be_focused()
    page.locator(".room-add").click()
    taps += 1
    for length in ("12", "11' 6\""):
        page.keyboard.type(length)
        page.keyboard.press("Enter")
        typed += 1
    assert (taps, typed) == (2, 4)
    assert text(page) == "20 x 14\n12 x 11' 6\""
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("418 sq ft")
    expect(cards(page).nth(1).locator("legend")).to_contain_text("138 sq ft")
    assert page.locator(".faults").filter(visible=True).count() == 0, "Enter sends nothing off"


def test_the_plan_follows_each_keystroke_and_is_what_calc_draws(page, address):
    opened(page, address)
    sides(page, 0).first.press_sequentially("20")
    expect(plan(page, 0)).to_contain_text("20' 0\"")
    expect(plan(page, 0)).to_contain_text("side 2?")
    expect(cards(page).first.locator("p.fault")).to_be_hidden()  # nobody is blamed in the middle of a room
    sides(page, 0).nth(1).press_sequentially("1")
    expect(plan(page, 0)).to_contain_text("1' 0\"")
    sides(page, 0).nth(1).press_sequentially("4")
    expect(plan(page, 0)).to_contain_text("14' 0\"")
    drawn = cards(page).first.locator(".room-plan").inner_html()
    assert drawn == as_browser_writes(page, asked("20 x 14")[0]["plan"])


def test_nothing_moves_when_a_plan_comes(page, address):
    opened(page, address)
    below = page.locator("[name=ceiling_height_ft]")
    before = under_its_form(below)
    sides(page, 0).first.fill("40")
    expect(plan(page, 0)).to_contain_text("side 2?")
    sides(page, 0).nth(1).fill("39")  # as tall as a plan gets
    expect(plan(page, 0)).to_contain_text("39' 0\"")
    assert under_its_form(below) == before


@pytest.mark.parametrize(
    ("walk", "wall"),
    [("Den: E 14' S 6' W 4' S 5' W 10' N 10'", "wall 6: 10' 0\""), ("A: E 10 N 10 W 5 S 12 W 5 N 2", "wall 4: 12' 0\""), ("A: E 10 N 8 W 10", "wall 4?"), ("A: E 10 N ten", "wall 2?")],
)  # fmt: skip
def test_the_wall_at_fault_is_marked_and_named(page, address, walk, wall):
    opened(page, address, walk)
    card = cards(page).first
    expect(plan(page, 0)).to_contain_text(wall)
    expect(plan(page, 0).locator(".wrong").last).to_have_css("stroke-width", re.compile("[35]px"))
    expect(card.locator("p.fault")).to_contain_text("; try ")
    walls = card.locator("input[data-wall]")
    expect(walls).to_have_attribute("aria-invalid", "true")
    assert walls.get_attribute("aria-describedby") == card.locator("p.fault").get_attribute("id")


def test_the_nearest_room_is_taken_by_one_tap(page, address):
    opened(page, address, "Den: E 14' S 6' W 4' S 5' W 10' N 10'")
    cards(page).first.locator(".room-offer").click()
    assert text(page) == DEN
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("134 sq ft")
    expect(plan(page, 0).locator(".wrong")).to_have_count(0)


KEPT = [
    "Living: 20' x 14'", "Living 20x14", "20 by 14 feet", "Bed 2: 3,5 m × 4 m", DEN, "E 14' S 6'", "x 14", "20 x", "Living:", "junk", "A: 20", "L 14x11 less 4x5", "20'14\"",
    "A: 10 x 8 slope 4:12 N less 2' x 4' at 1' x 1' less 3 x 2", "A: 10 x 8 less 2 x 1 slope 4:12", "A: 10 x 8 slope 4:12", "Loft: E 9 N 9 W 9 S 9 slope 3:12 W less 1 x 2", "A: 1 x 2 x 3",
    "<b>Küche</b> & co: 3 x 4", "a:b:c 3 x 4", "slope", "less 2 x 3", "A: 10 x 10 at 1 x 1",
]  # fmt: skip


def test_a_link_opens_the_list_and_no_letter_of_it_changes(page, address):
    opened(page, address, "; ".join(KEPT))
    expect(cards(page)).to_have_count(len(KEPT))
    assert text(page).split("\n") == KEPT
    name = cards(page).first.locator("input").first
    name.fill("Salon")
    assert text(page).split("\n") == ["Salon: 20' x 14'", *KEPT[1:]]
    expect(page.locator(".room-plan svg").first).to_contain_text("20' 0\"")
    for at, one in enumerate(asked("\n".join(KEPT))):
        expect(cards(page).nth(at).locator(".room-plan svg")).to_have_count(1 if one["plan"] else 0)


PIECES = st.sampled_from(
    "20 14' 6\" 3m x × by E14 N 10 S slope 4:12 less at 2x3 : Den , - · less2x3 ½ at1x2".split(" ") + [" "] * 12
)


def test_any_line_comes_back_letter_for_letter(page, address):
    """Text to list to text, for lines put together from what rooms are written with."""
    opened(page, address)
    base = page.evaluate("new URL('roomtext.mjs', document.querySelector('script[src$=\"page.mjs\"]').src).href")
    lines: list[str] = []

    @settings(max_examples=1500, database=None, deadline=None)
    @given(st.lists(PIECES, min_size=1, max_size=14).map(lambda parts: " ".join("".join(parts).split())))
    def collect(line):
        lines.append(line)

    collect()
    differing = page.evaluate(
        """async ([base, lines]) => {
            const { read, written } = await import(base);
            const kinds = { sides: 0, walk: 0, text: 0 };
            const bad = lines.filter((line) => { const room = read(line); kinds[room.kind] += 1; return written(room) !== line; });
            return [bad, kinds];
        }""",
        [base, lines],
    )
    assert differing[0] == []
    assert min(differing[1]["sides"], differing[1]["text"]) > 20, differing[1]


def test_text_and_list_are_one(page, address):
    opened(page, address)
    sides(page, 0).first.fill("20")
    sides(page, 0).nth(1).fill("14")
    as_text(page)
    expect(page.locator(".rooms")).to_be_hidden()
    field(page, "rooms").fill(text(page) + "\nHall: 12 x 4\n" + DEN)
    expect(page.locator(".room-plans svg")).to_have_count(3)
    page.locator(".as-text > summary").click()
    expect(cards(page)).to_have_count(3)
    assert sides(page, 1).evaluate_all("all => all.map(one => one.value)") == ["12", "4"]
    assert sides(page, 2).input_value() == DEN.partition(": ")[2]
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("462 sq ft")


def test_rooms_are_pasted_as_text(page, address):
    opened(page, address)
    as_text(page)
    field(page, "rooms").focus()
    page.evaluate("document.execCommand('insertText', false, 'A: 10 x 10\\nB: 9 x 9')")
    expect(page.locator(".room-plans svg")).to_have_count(2)
    page.locator(".as-text > summary").click()
    expect(cards(page)).to_have_count(2)


def test_a_removed_room_is_put_back(page, address):
    opened(page, address, "A: 10 x 10; B: 9 x 9 slope 4:12 E; C: 8 x 8")
    cards(page).nth(1).locator(".room-remove").click()
    assert text(page) == "A: 10 x 10\nC: 8 x 8"
    expect(page.locator(".room-undo")).to_contain_text("B is removed.")
    expect(page.locator(".room-undo button")).to_be_focused()
    page.keyboard.press("Enter")
    assert text(page) == "A: 10 x 10\nB: 9 x 9 slope 4:12 E\nC: 8 x 8"
    for _ in range(3):
        cards(page).first.locator(".room-remove").click()
    assert text(page) == ""
    expect(cards(page)).to_have_count(1)
    page.locator(".room-undo button").click()
    assert text(page) == "C: 8 x 8"
    expect(cards(page)).to_have_count(1)


def test_slope_cut_out_and_walk_by_their_fields(page, address):
    opened(page, address, "Loft: 20 x 12")
    card = cards(page).first
    card.get_by_text("Slope and cut-outs").click()
    card.get_by_label("Slope, rise in 12").fill("4")
    card.get_by_label("Rises to the").select_option("E")
    card.get_by_role("button", name="Add a cut-out").click()
    page.keyboard.type("2")
    for label, length in (("Other side", "4"), ("From the west wall", "3"), ("From the south wall", "1")):
        card.locator(".room-cut").get_by_label(label).fill(length)
    assert text(page) == "Loft: 20 x 12 slope 4:12 E less 2 x 4 at 3 x 1"
    expect(plan(page, 0)).to_contain_text("4:12")
    expect(plan(page, 0).locator("polygon[fill^=url]")).to_have_count(1)
    card.get_by_role("button", name="Walk round it instead").click()
    assert text(page) == "Loft: E 20 N 12 W 20 S 12 slope 4:12 E less 2 x 4 at 3 x 1"
    walls = sides(page, 0)
    walls.fill("")
    for way, length in (("E", "9"), ("N", "8"), ("W", "9"), ("S", "8")):
        card.get_by_role("button", name=f"Next wall runs {way}").click()
        expect(walls).to_be_focused()
        page.keyboard.type(length)
    assert text(page).startswith("Loft: E 9 N 8 W 9 S 8 slope")


def test_two_tabs_and_a_reload_keep_the_list(page, address):
    opened(page, address)
    other = opened(page.context.new_page(), address, path="finish/paint/")
    sides(page, 0).first.fill("20")
    sides(page, 0).nth(1).fill("14")
    expect(sides(other, 0).nth(1)).to_have_value("14")
    sides(other, 0).nth(1).fill("15")
    expect(sides(page, 0).nth(1)).to_have_value("15")
    other.close()
    page.goto("about:blank")
    opened(page, address)
    assert sides(page, 0).evaluate_all("all => all.map(one => one.value)") == ["20", "15"]


def test_another_room_is_typed_while_a_blank_one_waits(page, address):
    """A blank card is no text; the other tab must not take it away under the finger either."""
    opened(page, address, "A: 10 x 10")
    page.locator(".room-add").click()
    expect(cards(page)).to_have_count(2)
    assert text(page) == "A: 10 x 10"
    sides(page, 0).first.fill("11")
    expect(cards(page)).to_have_count(2)
    assert text(page) == "A: 11 x 10"


def test_a_fault_leads_to_its_card(page, address):
    opened(page, address, "A: 10 x 10; B: 20 x 0")
    form(page, "takeoff").locator("button.act[type=submit]").click()
    form(page, "takeoff").locator(".faults a").first.click()
    expect(sides(page, 1).nth(1)).to_be_focused()
    expect(page.locator(".rooms")).to_be_visible()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_what_is_touched_is_large_enough_and_lettering_can_be_read(make_page, address, scheme):
    page = opened(
        make_page(color_scheme=scheme), address, f"{DEN}; Loft: 20 x 12 slope 4:12 N less 2 x 4 at 3 x 2; C: 9 x"
    )
    expect(page.locator(".rooms .room-plan svg")).to_have_count(3)
    small = page.locator(".rooms :is(input, select, button, summary)").evaluate_all(
        "all => all.filter(one => one.offsetParent).map(one => [one.textContent || one.id, one.getBoundingClientRect()]).filter(([, box]) => box.height < 44 || box.width < 44).map(([what]) => what)"
    )
    assert small == []
    letters = page.locator(".rooms .room-plan svg").evaluate_all(
        "all => all.map(one => 14 * one.getBoundingClientRect().width / 360)"
    )
    assert min(letters) >= 12
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    unlabeled = page.locator(".rooms :is(input, select)").evaluate_all(
        "all => all.filter(one => !one.labels.length).length"
    )
    assert unlabeled == 0


def test_the_customers_screen_has_no_list(page, address):
    page.goto(address + "to/skim-over/#takeoff?rooms=Den:+10+x+12&texture_depth_in=1/8")
    page.wait_for_selector("html[data-ready]")
    assert cards(page).count() == 0
    until(page, "document.querySelector('[name=rooms]').value === 'Den: 10 x 12'")
