"""The papers of a job, read from the finished PDF: job sheet, hand-over sheet, and the customer's page, each with the job's own figures."""

import re

import pypdfium2
import pytest
from playwright.sync_api import expect

from handbook.make import customer
from test_walks_counted import Walk

pytestmark = [pytest.mark.browser, pytest.mark.slow]
ROOMS = "Living: 20' x 14'; Den: 12' x 11'; Hall: 12' x 4'"
FACTS = {
    "rooms": ROOMS, "asbestos_result": "none", "result_rooms": "this", "result_layers": "all", "texture_depth_in": "1/8",
    "start_day": "2027-04-05", "rated_ceiling": "no",
}  # fmt: skip
OFFER = {
    "labor_sum": "2850", "materials_sum": "940", "money": "$", "offer_by": "Example Ceilings, 555-0100", "offer_day": "2027-03-01",
    "offer_until": "2027-03-31",
}  # fmt: skip
MOST_SHEETS = 4


def fragment(figures, anchor="takeoff"):
    return f"#{anchor}?" + "&".join(f"{name}={text.replace(' ', '+')}" for name, text in figures.items())


def open_papers(page, address, way):
    page.goto(address + f"papers/{way}/" + fragment(FACTS))
    page.wait_for_selector("#shopping[data-engine]", state="attached", timeout=90_000)
    page.wait_for_selector("#plan[data-engine]", state="attached")
    expect(page.locator(".calc .result[data-shows=answer]").first).to_be_attached()
    return page


def plain(text):
    """Letters and digits alone: a PDF breaks lines where it likes."""
    return re.sub(r"[^0-9a-z]", "", text.lower())


def sheets_of(page, path, size, paper=""):
    """The text of each sheet of the PDF, blanks made one."""
    page.evaluate("(paper) => { if (paper) document.documentElement.dataset.paper = paper; }", paper)
    page.pdf(path=path, format=size)
    found = pypdfium2.PdfDocument(path)
    return [" ".join(sheet.get_textpage().get_text_range().split()) for sheet in found]


@pytest.mark.parametrize("way", customer.AMOUNTS)
def test_the_job_sheet_of_three_rooms_takes_four_sheets_and_holds_what_the_truck_needs(page, address, way, tmp_path):
    open_papers(page, address, way)
    title = page.locator("#paper-job > h2").inner_text()
    holds = page.locator("#paper-job .holds .until").all_text_contents()
    steps = page.locator(
        "#paper-job .step .do"
    ).evaluate_all(
        "(all) => all.map((one) => (one.querySelector('.wait')?.remove(), one.textContent))"  # timers are no matter of paper
    )
    things = page.locator("#shopping .items > li:not(.group) .label").all_text_contents()
    stops = [one.strip() for one in page.locator("#paper-job .paper-hazards strong").all_text_contents()]
    assert len(holds) > 1 and len(steps) > 3 and len(things) > 5 and len(stops) > 3
    for size in ("A4", "Letter"):
        sheets = sheets_of(page, tmp_path / f"{size}.pdf", size, "job")
        assert 2 <= len(sheets) <= MOST_SHEETS, (size, len(sheets))
        first, whole = sheets[0], " ".join(sheets)
        assert title in first and "Day 2027-04-05" in first and "Printed" in first
        for stop in stops:
            assert plain(stop) in plain(first), stop
        for hold in holds:
            assert plain(hold) in plain(first), hold
        for at, sheet in enumerate(sheets, 1):
            assert f"{at} of {len(sheets)}" in sheet
        for text in [*things, *steps, f"methods/{way}/#sources", "working days"]:
            assert plain(text) in plain(whole), text
        assert "Worked example" not in whole and "Hand-over sheet" not in whole  # nobody's figures, and no other paper


def test_plans_to_hang_from_stand_whole_on_paper(page, address, tmp_path):
    """Each piece of the cut list has its number and size on a plan, and no plan is cut by the end of a sheet."""
    open_papers(page, address, "board-over")
    pieces = page.locator("#board svg.sheet").evaluate_all("(all) => all.map((one) => one.textContent)")
    assert len(pieces) == 3
    page.evaluate("document.documentElement.dataset.paper = 'job'")
    page.emulate_media(media="print")
    kept = page.locator("#board .drawing, #paper-job .hold, #shopping .items > li, #board .items > li")
    assert kept.count() > 20
    assert kept.evaluate_all("(all) => all.every((one) => getComputedStyle(one).breakInside === 'avoid')")
    # A signal word keeps its own color on paper, on the first sheet and before a step.
    words = page.locator("#paper-job :is(.paper-hazards, .reminder) .signal")
    assert words.count() > 10
    grounds = words.evaluate_all(
        "(all) => all.map((one) => [getComputedStyle(one).printColorAdjust, getComputedStyle(one).backgroundColor])"
    )
    assert {how for how, _ in grounds} == {"exact"} and "rgba(0, 0, 0, 0)" not in {color for _, color in grounds}
    sheets = sheets_of(page, tmp_path / "plans.pdf", "A4", "job")
    for room in ("Living", "Den", "Hall"):
        assert sum(f"{room}, plan to hang from." in sheet for sheet in sheets) == 1


def test_the_hand_over_sheet_holds_what_was_done_and_leaves_lines_for_the_rest(page, address, tmp_path):
    open_papers(page, address, "skim-over")
    for name in ("paper-job", "paper-hand-over"):
        page.locator(f"#{name}").get_by_role("button", name="See it here").click()
    expect(page.locator("#paper-hand-over [data-fill=ticked]")).to_have_text("")
    first = page.locator("#paper-job .holds .sign").first.get_attribute("data-of")
    page.locator(f"[data-step={first}]").check()
    expect(page.locator(f"#paper-job .sign[data-of={first}]")).to_have_text(re.compile(r"^ticked \w"))
    expect(page.locator("#paper-hand-over [data-fill=ticked]")).not_to_have_text("")
    expect(page.locator("#paper-hand-over [data-fill=asbestos_result]")).to_have_text("No asbestos")
    for size in ("A4", "Letter"):
        [sheet] = sheets_of(page, tmp_path / f"{size}.pdf", size, "hand-over")
        for text in (
            "Hand-over sheet: Skim over",
            ROOMS,
            "No asbestos",
            "Layers that stayed",
            "Care",
            "Hang a lamp from a joist",
            "Who takes it over",
        ):
            assert text in sheet, text


def test_papers_without_figures_are_lines_to_write_on(page, address, tmp_path):
    """A paper shows no example: what nobody gave is a blank."""
    page.goto(address + "papers/wet-scrape/")
    page.wait_for_selector("html[data-ready]")
    page.locator("#paper-job").get_by_role("button", name="See it here").click()
    expect(page.locator("#paper-job .holds")).to_be_visible()
    assert (
        not page.locator("#plan .figure").is_visible() and not page.locator("#paper-job .live-note").first.is_visible()
    )
    # Nothing on the page is anybody's example, shown or not, and no message stands in full but the stop.
    assert "Study" not in page.locator("main").text_content()
    assert page.locator("main .alarm").count() == 1
    whole = " ".join(sheets_of(page, tmp_path / "empty.pdf", "A4", "job"))
    assert "No figures of your own yet." in whole and "Study" not in whole and "made up" not in whole


@pytest.mark.parametrize("way", customer.AMOUNTS)
def test_the_customers_link_opens_on_who_when_what_how_long_and_how_much(page, address, way, tmp_path):
    page.goto(address + f"to/{way}/" + fragment(FACTS | OFFER))
    page.wait_for_selector("#offer[data-engine]")
    page.wait_for_selector("#plan[data-engine]")
    assert page.evaluate("scrollY") == 0
    expect(page.locator(".offered")).to_have_text("Example Ceilings, 555-0100 · 2027-03-01")
    expect(page.locator("#offer .figure strong")).to_have_text("$3,790.00")
    expect(page.locator("#offer [data-listing=not-in-offer]")).to_contain_text("permit")
    expect(page.locator("#plan .figure strong")).to_have_text(re.compile("working days?$"))
    assert page.locator("main form:visible").count() == 0
    # One box for everybody; any other was raised by this job's figures, and stands in the answer that it is about.
    assert page.locator("main .alarm:visible:not(.answer *)").count() == 1
    assert page.locator("main .alarm[data-caution=asbestos-first]:visible").count() == 1
    asked = [one for one in page.locator("main > h2").all_text_contents() if one.endswith("?")]
    assert len(asked) == 3
    for size in ("A4", "Letter"):
        [sheet] = sheets_of(page, tmp_path / f"{size}.pdf", size)
        for text in ("Example Ceilings, 555-0100", "$3,790.00", "Not in this price", *asked):
            assert text in sheet, (size, text)


def test_a_link_for_the_customer_holds_no_price_of_material_and_no_rate(make_page, address):
    page = make_page(390, permissions=["clipboard-read", "clipboard-write"])
    page.goto(
        address + "work-out/shopping/#shopping?way=skim-over&rooms=Den:+10+x+12&prices=paint:+38.50&rate_per_hour=45"
    )
    page.wait_for_selector("#shopping[data-engine]")
    page.goto(address + "work-out/offer/#offer?way=skim-over&labor_sum=900&offer_by=Example+Ceilings")
    page.wait_for_selector("#offer[data-engine]")
    page.goto(address + "methods/skim-over/")
    page.wait_for_selector("#takeoff[data-engine]")
    page.locator(".send").click()
    expect(page.locator(".ticked")).to_contain_text("The link for the customer is copied.")
    link = page.evaluate("navigator.clipboard.readText()")
    assert len(link.split("#")[1]) < 400
    other = make_page(390)
    other.goto(link)
    other.wait_for_selector("#offer[data-engine]")
    expect(other.locator("#offer .figure strong")).to_have_text("900.00")
    expect(other.locator("#takeoff .figure strong")).to_have_text("120 sq ft")
    kept = other.evaluate("Object.entries(localStorage).flat().join(' ')")
    assert "38.50" not in kept and "rate_per_hour" not in kept and "prices" not in kept


def test_a_contractors_ten_minutes_and_a_customers_two(make_page, address, tmp_path):
    """Three rooms measured, the way chosen, priced, the link made, the papers printed; then the link on another profile."""
    page = make_page(390, permissions=["clipboard-read", "clipboard-write"])
    walk = Walk(page, "contractor, from rooms to link and papers")
    page.goto(address)
    walk.tap(page.locator(".ways a", has_text="Skim over"))
    page.wait_for_selector("html[data-ready]")
    walk.tap(page.locator("#takeoff > summary"))
    walk.rooms((("20", "14"), ("12", "11"), ("12", "4")))
    expect(page.locator(".eg").first).to_be_hidden()  # no word of an example beside figures of one's own
    walk.tap(page.locator("#skim > summary"))
    walk.type(page.locator(".calc [name=texture_depth_in]"), "1/8")
    expect(page.locator("#skim .headline b")).to_have_text(re.compile(r"^\d+ pails?$"))
    walk.tap(page.locator(".onward a", has_text="price"))
    page.wait_for_selector("html[data-ready]")
    expect(page.locator("[name=way]")).to_have_value("skim-over")  # chosen once
    for name, text in (
        ("labor_sum", "2850"),
        ("materials_sum", "940"),
        ("offer_by", "Example Ceilings, 555-0100"),
        ("offer_day", "2027-03-01"),
    ):
        walk.type(page.locator(f"[name={name}]"), text)
    expect(page.locator("#offer .headline b")).to_have_text("3,790.00")
    walk.tap(page.locator(".send"))
    expect(page.locator(".ticked")).to_contain_text("The link for the customer is copied.")
    link = page.evaluate("navigator.clipboard.readText()")
    assert link.startswith(address + "to/skim-over/#j=") and len(link.split("#")[1]) < 400
    page.goto(address + "methods/skim-over/")
    walk.tap(page.locator(".job a", has_text="Papers"))
    page.wait_for_selector("#shopping[data-engine]", state="attached", timeout=60_000)
    page.wait_for_selector("#plan[data-engine]", state="attached")
    page.evaluate("window.print = () => { window.printed = document.documentElement.dataset.paper; }")
    walk.tap(page.locator("[data-print=job]"))
    assert page.evaluate("window.printed") == "job"
    sheets = sheets_of(page, tmp_path / "job.pdf", "Letter", "job")
    assert len(sheets) <= MOST_SHEETS and "460 sq ft" in " ".join(sheets)
    walk.end(10, 11, 20)

    customer_page = make_page(390)
    customer_page.goto(link)
    customer_page.wait_for_selector("#offer[data-engine]")
    expect(customer_page.locator(".offered")).to_have_text("Example Ceilings, 555-0100 · 2027-03-01")
    expect(customer_page.locator("#offer .figure strong")).to_have_text("3,790.00")
    expect(customer_page.locator("#takeoff .figure strong")).to_have_text("460 sq ft")
    expect(customer_page.locator("#plan .figure strong")).to_contain_text("working days")
    assert customer_page.evaluate("scrollY") == 0
