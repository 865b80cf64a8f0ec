"""Four walks from the home page to what somebody came for, counted: taps, fields typed, screens scrolled. A field is typed
once; where another page asks for it too, it stands there already."""

import json
import re

import pytest
from playwright.sync_api import expect

from calc import browser as calc_browser
from calc.decision import questions
from conftest import until

pytestmark = [pytest.mark.browser, pytest.mark.slow]
ROOMS = (("20", "14"), ("12", "11"))
COUNTS: list[tuple[str, int, int, int, float]] = []


@pytest.fixture(scope="module", autouse=True)
def table():
    """Print what was counted, under the tests of this module."""
    yield
    print("\n" + f"{'walk':44}{'wide':>6}{'taps':>6}{'typed':>7}{'screens':>9}")
    for walk, width, taps, typed, screens in COUNTS:
        print(f"{walk:44}{width:6}{taps:6}{typed:7}{screens:9.1f}")


class Walk:
    """A person on a page: whatever is not in sight has to be scrolled to before it can be tapped or read."""

    def __init__(self, page, name):
        self.page, self.name = page, name
        self.taps, self.screens = 0, 0.0
        self.typed: dict[str, str] = {}

    def reach(self, place):
        """Scroll until the middle of `place` is in sight and nothing lies over it, and count how far."""
        expect(place).to_be_visible()
        self.screens += place.evaluate(
            """one => {
                const middle = () => { const box = one.getBoundingClientRect(); return [box.x + box.width / 2, box.y + box.height / 2]; };
                const met = () => { const hit = document.elementFromPoint(...middle()); return hit !== null && (one.contains(hit) || hit.contains(one)); };
                if (met()) return 0;
                const before = middle()[1];
                one.scrollIntoView({ block: 'center', behavior: 'instant' });
                return Math.abs(middle()[1] - before) / innerHeight;
            }"""
        )

    def tap(self, place):
        self.reach(place)
        place.click()
        self.taps += 1

    def type(self, place, text):
        """Type into a field, by the words that name it: under those words nothing was typed before, nor stands there."""
        label = place.evaluate(
            """one => [one.closest('fieldset.room')?.querySelector('legend span').textContent,
                one.getAttribute('aria-label') ?? one.labels[0].firstChild.textContent.trim()].filter(Boolean).join(', ')"""
        )
        assert label not in self.typed, f"{label} is typed twice"
        assert place.input_value() == "", f"{label} is asked for, and stands there already"
        self.reach(place)
        place.fill(text)
        self.typed[label] = text

    def rooms(self, rooms=ROOMS):
        """Rooms in the list of the page, by two sides each."""
        cards = self.page.locator("fieldset.room")
        for at, sides in enumerate(rooms):
            if at:
                self.tap(self.page.locator(".room-add"))
            for wall, side in enumerate(sides, 1):
                self.type(cards.nth(at).locator(f"input[data-wall='{wall}']"), side)

    def end(self, taps, typed, screens):
        width = self.page.viewport_size["width"]
        COUNTS.append((self.name, width, self.taps, len(self.typed), self.screens))
        assert self.taps <= taps, f"{self.taps} taps"
        assert len(self.typed) <= typed, self.typed
        assert self.screens <= screens, f"{self.screens:.1f} screens scrolled"


OLD_HOUSE = {
    "asbestos_result": "none", "result_rooms": "this", "result_layers": "all", "heated_ceiling": "no", "hand_test": "holds",
    "loose_fill": "other", "built": "before-1978", "paint_test": "none", "times_painted": "once", "patch_test": "hard",
    "finish_wanted": "smooth", "material": "board", "above": "rooms",
}  # fmt: skip
LOOKED = {"sag": "no", "stains": "none", "loose_board": "tight", "cracks": "none", "sprinklers": "no", "sheen": "flat"}
AT_HOME = {"who_works": "owner", "building": "house", "occupied": "yes", "household": "adults"}
ROOM = {"may_drop": "yes", "light": "soft", "floors": "covered"}
MEASURED = {"ceiling_height_ft": "8", "texture_depth_in": "1/8"}
BUILT = {"layers_up": "one", "joists_carry": "yes", "rated_ceiling": "no", "joists": "close"}
# Who walks: the answers given one by one, whether it is known how the ceiling is built, and the most taps that it may take.
HOMEOWNERS = {
    "homeowner, nothing found": (OLD_HOUSE, False, 20),
    "homeowner, nothing found, knows the joists": (
        OLD_HOUSE | BUILT,
        True,
        24,
    ),  # four questions more, and that it is known
    "homeowner, not tested": (OLD_HOUSE | {"asbestos_result": "unknown"}, False, 20),
}


def through_the_guide(walk, answers, knows):
    """Answer what is asked, to the end, and return what the form then holds."""
    page = walk.page
    guide = page.locator(".guide")
    given = {}
    for _ in range(40):
        asked = guide.get_attribute("data-question")
        if not asked:
            return given
        if asked == "measured":
            for at, text in enumerate(MEASURED.values()):
                walk.type(guide.locator(".answers input").nth(at), text)
            given |= MEASURED
            walk.tap(guide.locator("button", has_text="Go on"))
        elif asked == "lead":
            given |= {"built": answers["built"], "paint_test": answers["paint_test"]}
            walk.tap(guide.locator("button.pick", has_text="Before 1978: tested, below both limits"))
        elif asked == "build":
            walk.tap(guide.locator("button", has_text="one by one" if knows else "none of it"))
        elif asked in ("look", "people", "room"):
            walk.tap(guide.locator("button", has_text="None of these"))
            given |= {"look": LOOKED, "people": AT_HOME, "room": ROOM}[asked]
        else:
            given[asked] = answers[asked]
            label = dict(questions.question(asked).answers)[answers[asked]]
            walk.tap(guide.locator("button.pick").get_by_text(label, exact=True))
        expect(guide).not_to_have_attribute("data-question", asked)
    raise AssertionError("the guide never ends")


@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("who", HOMEOWNERS)
def test_a_homeowner_with_two_rooms_learns_which_ways_and_how_much(make_page, address, who, width):
    answers, knows, most = HOMEOWNERS[who]
    page = make_page(width)
    walk = Walk(page, who)
    page.goto(address)
    walk.tap(page.locator("a.door", has_text="What can I do?"))
    page.wait_for_selector("#decision[data-engine]")
    given = through_the_guide(walk, answers, knows)
    # Which ways: as the command says by the same answers.
    found = json.loads(calc_browser.answer("decision", json.dumps(given)))["answer"]
    assert page.locator(".strip .state").all_inner_texts() == [one["state"] for one in found["items"]]
    untested = answers["asbestos_result"] != "none"
    items = found["branches"][0]["items"] if untested else found["items"]
    would = "would be " if untested else ""
    ends = ("open", "open after", "not known") if untested else ("open", "open after")
    left = [(one["name"], would + one["state"]) for one in items if one["state"] in ends]
    rows = page.locator(".outcome li")
    assert [tuple(one.inner_text().split("\n")[:2]) for one in rows.all()] == left
    assert [name for name, _ in left].count("Skim over") == 1
    if untested:
        expect(page.locator(".to-come > p")).to_have_text(
            found["branches"][0]["title"] + ". Not now: an outcome to come"
        )
        expect(page.locator(".guide > .help")).to_contain_text(found["listings"][0]["rows"][0]["text"])
    walk.tap(rows.filter(has_text="Skim over").locator("a", has_text="How much, for my rooms"))
    # How much of what: typed once, and every line of the way's rooms answers.
    expect(page).to_have_url(re.compile("/methods/skim-over/"))
    walk.rooms()
    lines = page.locator(".headline b")
    expect(lines).not_to_contain_text(["–"] * lines.count())
    expect(page.locator("#takeoff .headline b")).to_have_text("412 sq ft")
    expect(page.locator("#skim .headline b")).to_have_text(re.compile(r"^\d+ pails?$"))
    for line in lines.all():
        walk.reach(line)
        assert re.search(r"\d", line.inner_text())
    for name, text in MEASURED.items():
        expect(page.locator(f".calc [name={name}]").first).to_have_value(text)
    words = page.locator(".not-yet").all_inner_texts()
    assert any("asbestos" in one for one in words) == untested, words
    walk.end(most, 6, 8)


@pytest.mark.parametrize("width", [390, 1280])
def test_a_contractor_gets_to_the_customers_link_with_the_rooms_in_it(make_page, address, width):
    page = make_page(width, permissions=["clipboard-read", "clipboard-write"])
    walk = Walk(page, "contractor, to the customer's link")
    page.goto(address)
    walk.tap(page.locator(".ways a", has_text="Skim over"))
    page.wait_for_selector("html[data-ready]")
    walk.tap(page.locator("#takeoff > summary"))
    walk.rooms()
    walk.tap(page.locator("#skim > summary"))
    walk.type(page.locator(".calc [name=texture_depth_in]"), "1/8")
    expect(page.locator("#skim .headline b")).to_have_text(re.compile(r"^\d+ pails?$"))
    pails = page.locator("#skim .headline b").inner_text()
    walk.tap(page.locator(".send"))
    expect(page.locator(".ticked")).to_contain_text("The link for the customer is copied.")
    link = page.evaluate("navigator.clipboard.readText()")
    walk.end(5, 5, 12)
    customer = make_page(390)
    customer.goto(link)
    expect(customer).to_have_url(re.compile("/to/skim-over/"))
    expect(customer.locator("#takeoff .figure strong")).to_have_text("412 sq ft")
    expect(customer.locator("#skim .figure strong")).to_have_text(pails)


@pytest.mark.parametrize("width", [390, 1280])
def test_an_apprentice_gets_to_a_hold_point_and_past_it_without_a_signal(make_page, address, width):
    page = make_page(width)
    page.goto(address)
    page.wait_for_selector("html[data-offline]", timeout=60_000)
    until(page, "navigator.serviceWorker.controller !== null")
    page.context.set_offline(True)
    page.reload()
    walk = Walk(page, "apprentice, past the first hold points")
    walk.tap(page.locator("a.door", has_text="I am on the job"))
    walk.tap(page.locator("#on-the-job a", has_text="Skim over"))
    walk.tap(page.locator(".ladder-open button"))
    ladder = page.locator("dialog.ladder")
    expect(ladder.locator(".where")).to_have_text("Before you start")
    foot = ladder.locator(".ladder-foot .act")

    def onward():
        while ladder.locator(".more").is_visible():
            walk.tap(ladder.locator(".more"))
            page.wait_for_timeout(50)
        before = ladder.locator(".where").inner_text()
        walk.tap(foot)
        expect(ladder.locator(".where")).not_to_have_text(before)

    onward()
    expect(ladder.locator(".hold-word")).to_be_visible()
    first = ladder.locator(".where").inner_text()
    holds = 0
    while ladder.locator(".hold-word").count():  # nobody goes on before each is met
        walk.tap(ladder.locator(".ladder-check input"))
        holds += 1
        onward()
    assert holds >= 3 and ladder.locator(".where").inner_text() != first
    expect(ladder.locator(".ladder-do")).to_have_text(re.compile("^Turn off the circuits"))
    walk.end(12, 0, 2)
