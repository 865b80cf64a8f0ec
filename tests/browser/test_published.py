"""What is told of a page to other programs agrees with what a browser shows, and links sent to customers by earlier editions still open."""

import json
import re

import pytest
from playwright.sync_api import expect

from handbook.make import customer
from test_links import KEPT

pytestmark = [pytest.mark.browser, pytest.mark.slow]
SENT = [one for one in KEPT if "page" in one]
NOT_A_ROOM = {"area_sqft", "volume_cuft"}  # stand in place of rooms

# The words of a step as they are in sight, in their order: a caution's and those of the step that it guards.
IN_SIGHT = """[...document.querySelectorAll('ol.steps > li')].map((one) => {
  for (const part of one.querySelectorAll('.mark, .number, .unseen, input')) part.remove();
  for (const live of one.querySelectorAll('.live')) live.textContent = '…';
  if (one.matches('.hold')) one.querySelector('label')?.remove();
  return [one.className, one.id, one.innerText];
})"""


def words(text):
    """The words alone: a browser breaks lines and writes in capitals where a style says so."""
    return re.sub(r"\W+", " ", text).strip().lower()


@pytest.mark.parametrize("path", ["methods/board-over/", "finish/dry/"])
def test_steps_told_as_data_are_those_in_sight(make_page, address, path):
    page = make_page(
        java_script_enabled=False
    )  # as it is handed out: the page's own scripts put steps under their phases
    page.goto(address + path)
    told = json.loads(page.locator("script[type='application/ld+json']").text_content())
    page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true")
    assert told["@type"] == "HowTo" and told["name"] == page.locator("h1").inner_text()
    seen = page.evaluate(IN_SIGHT)
    guard, expected = "", []
    for kind, own, text in seen:
        if kind == "step-caution":
            guard += text + " "
        elif kind in ("step", "hold"):
            expected.append(("#" + own, words(guard + text)))
            guard = ""
    assert len(expected) > 3
    assert [(one["url"], words(one["text"])) for one in told["step"]] == expected
    for one in told["step"]:
        assert page.locator(one["url"]).count() == 1


def test_links_sent_to_customers_cover_every_screen_and_all_that_it_shows():
    ways = [f"to/{way}/" for way in customer.AMOUNTS]
    assert [one["page"] for one in SENT] == [*ways, "to/skim-over/"]  # the last with what a plan asks of the air since
    held = {name for one in SENT for name in one["job"]}
    assert set(customer.fields(*customer.AMOUNTS)) - held == NOT_A_ROOM


@pytest.mark.parametrize("one", SENT[::2], ids=lambda one: one["page"])
def test_a_link_that_an_earlier_edition_sent_shows_its_offer(page, address, one):
    page.goto(address + one["page"] + one["link"])
    expect(page.locator("#offer .figure strong")).to_have_text("$2,904.20")
    expect(page.locator(".offered")).to_contain_text(one["job"]["offer_by"])
    expect(page.locator("#takeoff .figure strong")).to_have_text("120 sq ft")
    expect(page.locator("main form:visible")).to_have_count(0)
    expect(page.locator("#figures")).to_be_hidden()


@pytest.mark.parametrize(
    ("path", "found"), [("to/sand/", False), ("papers/sand/", False), ("methods/sand/", True), ("", True)]
)
def test_what_carries_a_customers_figures_is_not_to_be_found(page, address, path, found):
    """The data of a page that is found stands under the book's strict policy without a complaint of the browser, or `watched` holds it."""
    page.goto(address + path)
    robots = page.locator("meta[name=robots]")
    assert robots.count() == (0 if found else 1)
    data = page.locator("script[type='application/ld+json']").count()
    assert data == (1 if path.startswith("methods/") else 0)
    if not found:
        assert robots.get_attribute("content") == "noindex"
