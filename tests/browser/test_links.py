"""The short link of a job: exact both ways, short enough, told when anything is wrong with it, and read by every page."""

import hashlib
import io
import json
import random
import re
import shutil
import string
import subprocess
from pathlib import Path

import pypdfium2
import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import expect

from calc import catalogue
from handbook.engines.packing import node
from link_reader import ASSETS, FIELDS, read, samples
from test_job import field, form, open_way, ready

HERE = Path(__file__).parent
KEPT = json.loads((HERE / "kept_links.json").read_text(encoding="utf-8"))
SEED = 20261127
HOUSE = {
    "rooms": "Living room: 19' 4\" x 13' 8\"\nKitchen: 11' 6\" x 10'\nUpper hall: 14' 2\" x 3' 4\"\nEmma's room: 12' x 10' 9\"\nTwins: 13' 5\" x 11' 3\"\nSewing room: 9' 7\" x 8'",
    "ceiling_height_ft": "7' 10\"", "year_built": "1973", "texture_depth_in": "5/32", "asbestos_result": "none", "result_rooms": "this",
    "result_layers": "all", "sag": "no", "stains": "old", "cracks": "fine", "material": "board", "joist_spacing_in": "16", "who_works": "firm",
    "occupied": "yes", "finish_wanted": "smooth", "light": "raking", "temperature_f": "66", "humidity_pct": "58", "coats": "3",
    "compound_lb_per_gal": "8.9", "spread_sqft_per_gal": "380",
}  # fmt: skip
WALKS = {
    "rooms": "\n".join(
        f"Room {at}: E {12 + at}' {at % 12}\" S {6 + at % 4}' W 4' 3\" S 5' W {8 + at}' N 11' slope {at % 7}:12 N less 2' x 4' at 6' x 3'"
        for at in range(40)
    )
}
LETTERS = string.ascii_letters + string.digits + "-_"


def ask(assets=ASSETS, **asked):
    done = subprocess.run([node(), str(HERE / "run_links.mjs"), assets.as_uri()], input=json.dumps(asked), capture_output=True, text=True, check=True)  # fmt: skip
    return json.loads(done.stdout)


def written(*jobs):
    return ask(write=[list(job.items()) for job in jobs])["written"]


# The table of numbers.

FIRST = 172  # fields of the first edition that wrote short links
FIRST_NAMES = "c2c593e199822948"
FIRST_SAMPLES = "7416fa5ff6b3cede"


def digest(value):
    return hashlib.sha256(json.dumps(value).encode()).hexdigest()[:16]


def test_every_field_has_a_number_of_its_own():
    names = list(dict.fromkeys(one.name for calculator in catalogue.every() for one in calculator.fields))
    missing = [name for name in names if name not in FIELDS]
    assert not missing, "append to FIELDS in docs/assets/link-table.mjs: " + " ".join(missing)
    assert len(set(FIELDS)) == len(FIELDS)


def test_numbers_and_samples_stay_what_they_were():
    """A name that was moved, renamed or taken out would make old links read wrongly, and so would another sample."""
    assert digest(FIELDS[:FIRST]) == FIRST_NAMES
    assert digest(samples()) == FIRST_SAMPLES


@pytest.mark.parametrize("one", KEPT, ids=lambda one: one["what"])
def test_links_of_earlier_editions_read_as_they_did(one):
    found = ask(read=[one["link"]])["read"][0]
    assert (dict(found["values"]), found["dropped"], found["fault"]) == (one["job"], 0, "")


# Exact both ways.

MEASURES = ("16", "5/32", "7' 10\"", "8 1/2", "2.4 m", "0.30", "1e3", "1978", "−3", "½", " 7 ")
NAMES = ("Living", "Bad", "Büro", "Цокольный этаж", "居間", "🏠 attic", "L-shape", "Room 2", "Jo's", "", "Ä" * 60)


def room(chance):
    sides = f"{chance.randint(3, 40)}' {chance.randint(0, 11)}\" x {chance.randint(3, 40)}'"
    walk = f"E {chance.randint(8, 30)}' S 6' W 4' S 5' W 10' N 11'"
    cut = chance.choice(
        ["", "", f" slope {chance.randint(1, 12)}:12 {chance.choice('NESW')}", " less 2' x 4' at 6' x 3'"]
    )
    return f"{chance.choice(NAMES)}: {chance.choice([sides, sides, walk])}{cut}"


def anything(chance, longest):
    ranges = ((0, 0x7F), (0x80, 0x7FF), (0x800, 0xD7FF), (0xE000, 0xFFFF), (0x10000, 0x10FFFF))
    return "".join(chr(chance.randint(*chance.choice(ranges))) for _ in range(chance.randint(0, longest)))


def text_of(chance, name):
    kind = chance.random()
    if name == "rooms" or kind < 0.1:
        return chance.choice(["\n", "; "]).join(room(chance) for _ in range(chance.randint(0, 8)))
    if kind < 0.2:
        return anything(chance, 40)
    if kind < 0.25:
        return ""
    choices = next(
        (one.choices for calculator in catalogue.every() for one in calculator.fields if one.name == name), ()
    )
    return chance.choice([value for value, _ in choices] or MEASURES)


def random_job(chance):
    names = chance.sample(FIELDS, chance.choice([0, 1, 3, 8, 20]))
    if chance.random() < 0.05:
        names += ["__proto__", "constructor", "moon", anything(chance, 10)]
    if chance.random() < 0.01:
        return {"rooms": "\n".join(room(chance) for _ in range(60))}
    return {name: text_of(chance, name) for name in names}


@pytest.mark.slow
def test_ten_thousand_jobs_come_back_as_they_went():
    chance = random.Random(SEED)
    jobs = [random_job(chance) for _ in range(10_000)]
    done = ask(write=[list(job.items()) for job in jobs], back=True)
    for job, link, back in zip(jobs, done["written"], done["read"], strict=True):
        assert dict(back["values"]) == job and (back["dropped"], back["fault"]) == (0, "")
        assert re.fullmatch(r"#j=1[\w-]*Z", link, re.ASCII)
    assert sum(any("slope" in text for text in job.values()) for job in jobs) > 1_000
    # Another reader, made from the description alone, reads the same.
    for at in range(0, 10_000, 2_000):
        assert read(done["written"][at]) == jobs[at]


@pytest.mark.parametrize(("job", "most"), [({}, 20), ({"rooms": "Den: 10 x 12"}, 30), (HOUSE, 120), (WALKS, 1_200)], ids=["nothing", "a room", "a house", "forty walks"])  # fmt: skip
def test_a_link_is_short(job, most):
    (link,) = written(job)
    assert len(link) <= most


def test_a_house_fits_a_text_message():
    """One message takes 160 letters: the link, and forty for the address of a book and the page."""
    assert len(HOUSE) > 20
    assert len(written(HOUSE)[0]) <= 120


def test_what_no_link_holds_is_refused():
    chance = random.Random(SEED)
    noise = "".join(chance.choice(LETTERS) for _ in range(60_000))
    assert written({"rooms": noise}, {"rooms": "a" * 300_000}) == ["RangeError", "RangeError"]


def test_an_order_does_not_change_the_link():
    assert written(HOUSE)[0] == written(dict(reversed(HOUSE.items())))[0]


# Anything wrong is told, and takes nothing.


def changed(chance, link):
    at = chance.randrange(3, len(link))
    letter = chance.choice([one for one in LETTERS + ".% " if one != link[at]])
    ways = [
        link[:at] + letter + link[at + 1 :], link[:at] + link[at + 1 :], link[:at] + letter + link[at:], link[:at],
        link[:3] + link[at + 1 :], link + letter, link[:3] + link[3:].swapcase(), link.lower(), link[:at] + link[at + 1 : at + 2] + link[at] + link[at + 2 :],
    ]  # fmt: skip
    return chance.choice(ways)


def test_a_thousand_changed_links_take_nothing():
    chance = random.Random(SEED)
    links = written({}, {"rooms": "Den: 10 x 12"}, HOUSE, WALKS)
    pairs = [(link, changed(chance, link)) for link in (chance.choice(links) for _ in range(1_000))]
    pairs = [(link, other) for link, other in pairs if other != link]
    assert len(pairs) > 950
    for back in ask(read=[other for _, other in pairs])["read"]:
        assert back["values"] == [] and back["fault"]


def test_every_letter_and_every_cut_of_a_link_is_told():
    (link,) = written(HOUSE)
    others = [link[:at] + one + link[at + 1 :] for at in range(3, len(link)) for one in LETTERS if one != link[at]]
    for back in ask(read=others + [link[:at] for at in range(3, len(link))])["read"]:
        assert back["values"] == [] and back["fault"]


def test_a_newer_version_and_a_newer_field_are_told(tmp_path):
    """What a later edition may write: a field that has its number appended, and a form that begins with another digit."""
    for path in ASSETS.glob("*.mjs"):
        shutil.copyfile(path, tmp_path / path.name)
    table = tmp_path / "link-table.mjs"
    head, rest = table.read_text(encoding="utf-8").split("`.trim()")
    many = " ".join(f"later_{at}" for at in range(300))  # so that a number takes two bytes
    table.write_text(f"{head} newer_in {many} newest_in\n`.trim(){rest}", encoding="utf-8")
    job = {"rooms": "Den: 10 x 12", "newer_in": "4", "newest_in": "5", "coats": "3"}
    (link,) = ask(tmp_path, write=[list(job.items())])["written"]
    assert dict(ask(tmp_path, read=[link])["read"][0]["values"]) == job
    back = ask(read=[link])["read"][0]
    assert (dict(back["values"]), back["dropped"], back["fault"]) == ({"rooms": "Den: 10 x 12", "coats": "3"}, 2, "")
    code = tmp_path / "joblink.mjs"
    code.write_text(
        code.read_text(encoding="utf-8").replace("const VERSION = '1'", "const VERSION = '2'"), encoding="utf-8"
    )
    (link,) = ask(tmp_path, write=[list(job.items())])["written"]
    back = ask(read=[link])["read"][0]
    assert back["values"] == [] and "newer edition" in back["fault"]


# In the page.

browser = [pytest.mark.browser, pytest.mark.slow]
SCRIPT = {"rooms": "<img src=x onerror=alert(1)>: 10 x 12", "<script>alert(1)</script>": "x", "__proto__": "<b>y</b>"}
HOSTILE = [("#j=" + "A" * 1_000_000, "more than a link may hold"), ("#j=", "cut short"), ("#j=%00<script>alert(1)</script>Z", "cut short"), ("#j=__proto__AAAAZ", "cut short")]  # fmt: skip


class TestInThePage:
    pytestmark = browser

    @pytest.mark.parametrize("path", ["methods/skim-over/", "work-out/skim/", "to/skim-over/", "prepare/measure/"])
    def test_every_page_with_forms_reads_a_link(self, page, address, path):
        (link,) = written({"rooms": "Den: 10 x 12", "texture_depth_in": "1/8", "ceiling_height_ft": "8"})
        page.goto(address + path + link)
        page.wait_for_selector(".calc[data-engine]")
        assert field(page, "rooms").input_value() == "Den: 10 x 12"
        expect(page.locator(".calc .origin", has_text="Den: 10 x 12").first).to_be_attached()

    @pytest.mark.parametrize(("hash_", "says"), HOSTILE, ids=["a megabyte", "nothing", "a script", "a prototype"])
    def test_a_hostile_link_is_told_and_nothing_is_lost(self, page, address, hash_, says):
        open_way(page, address, "#skim?rooms=Hall:+4+x+12&texture_depth_in=1/8")
        page.wait_for_selector("#skim[data-engine]")
        page.goto("about:blank")
        open_way(page, address, hash_)
        expect(page.locator("#figures")).to_contain_text(says)
        assert field(page, "rooms").input_value() == "Hall: 4 x 12"
        expect(form(page, "skim").locator(".origin")).to_contain_text("Hall: 4 x 12")

    def test_a_bad_link_followed_on_an_open_page_changes_nothing(self, page, address):
        open_way(page, address)
        field(page, "rooms").fill("Hall: 4 x 12")
        page.wait_for_selector("#takeoff[data-engine]")
        (link,) = written({"rooms": "Den: 10 x 12"})
        page.evaluate("(to) => { location.hash = to; }", link[:-3])
        expect(page.locator("#figures")).to_contain_text("cut short")
        assert field(page, "rooms").input_value() == "Hall: 4 x 12"
        page.evaluate("(to) => { location.hash = to; }", link)
        expect(field(page, "rooms")).to_have_value("Den: 10 x 12")
        expect(page.locator("#figures")).to_contain_text("Yours are kept")
        page.locator("#figures button").click()
        expect(field(page, "rooms")).to_have_value("Hall: 4 x 12")

    def test_names_and_texts_of_a_link_stay_text(self, page, address):
        (link,) = written(SCRIPT)
        open_way(page, address, link)
        expect(page.locator("#figures")).to_contain_text("<script>alert(1)</script>=x")
        assert field(page, "rooms").input_value() == SCRIPT["rooms"]
        assert page.locator("#figures script, #figures b, .slot img").count() == 0
        assert page.evaluate("Object.keys(Object.prototype).length") == 0

    def test_a_reader_that_does_not_come_is_told(self, make_page, address):
        page = make_page(service_workers="block", console=False)
        page.route("**/link-table.mjs", lambda route: route.abort())
        (link,) = written({"rooms": "Den: 10 x 12"})
        open_way(page, address, link)
        expect(page.locator("#figures")).to_contain_text("a part of the book did not come")
        assert page.evaluate("location.hash") == link

    def test_the_browser_writes_the_same_link_as_any_other_engine(self, page, address):
        page.goto(address)
        assets = page.locator("script[src*='page.mjs']").get_attribute("src").removesuffix("page.mjs")
        job = list(HOUSE.items())
        made = page.evaluate(f"async (job) => (await import('{address}{assets}joblink.mjs')).shortLink(job)", job)
        assert made == written(HOUSE)[0] and read(made) == HOUSE

    def test_a_customer_sees_answers_and_no_form(self, page, address):
        (link,) = written({"rooms": "Den: 10 x 12", "texture_depth_in": "1/8"})
        page.goto(address + "to/skim-over/" + link)
        expect(form(page, "takeoff").locator(".figure strong")).to_have_text("120 sq ft")
        expect(form(page, "skim").locator(".figure strong")).to_be_visible()
        expect(page.locator("main form:visible")).to_have_count(0)
        assert page.evaluate("scrollY") == 0
        page.get_by_role("button", name="Change these figures").click()
        expect(field(page, "rooms")).to_be_focused()
        field(page, "rooms").fill("Den: 10 x 13")
        expect(form(page, "takeoff").locator(".figure strong")).to_have_text("130 sq ft")

    def test_a_customer_sees_the_form_where_the_figures_do_not_work(self, page, address):
        (link,) = written({"rooms": "Den: 10 x"})
        page.goto(address + "to/skim-over/" + link)
        expect(form(page, "takeoff").locator("form")).to_be_visible()
        expect(page.locator("#takeoff-rooms-fault")).to_be_visible()

    def test_a_link_is_shared_where_the_device_can(self, make_page, address):
        page = make_page()
        page.add_init_script("navigator.share = async (what) => { window.shared = what; };")
        open_way(page, address, "#skim?rooms=Den:+10+x+12&texture_depth_in=1/8", shut=True)
        page.locator(".share").click()
        expect(page.locator(".share")).to_be_visible()
        page.wait_for_timeout(300)
        shared = page.evaluate("window.shared")
        assert read("#" + shared["url"].split("#")[1]) == {"rooms": "Den: 10 x 12", "texture_depth_in": "1/8"}
        assert shared["url"].startswith(address + "to/skim-over/#j=")

    def test_no_share_is_offered_where_the_device_cannot(self, page, address):
        page.add_init_script("delete Navigator.prototype.share;")
        open_way(page, address, shut=True)
        expect(page.locator(".share")).to_be_hidden()


def codes(image):
    return [one.text for one in zxingcpp.read_barcodes(image)]


def picture(page, where):
    """What a camera sees. Answers that still come move what stands below them, so it waits for the page to lie still."""
    one = page.locator(where)
    one.scroll_into_view_if_needed()
    for _ in range(50):
        before = one.bounding_box()
        shot = one.screenshot()
        page.wait_for_timeout(100)
        if one.bounding_box() == before:
            return Image.open(io.BytesIO(shot))
    raise AssertionError(f"{where} never lay still")


def open_code(page, address, job):
    (link,) = written(job)
    open_way(page, address, link, shut=True)
    page.locator(".scan summary").click()
    expect(page.locator(".scan svg")).to_be_visible()
    return page.locator(".scan .address").get_attribute("href")


class TestTheCode:
    """Read back by a library that knows nothing of the one that drew it."""

    pytestmark = browser

    @pytest.mark.parametrize("light", ["light", "dark"])
    @pytest.mark.parametrize("width", [390, 1280])
    def test_a_camera_reads_the_code_on_the_screen(self, make_page, address, width, light):
        page = make_page(width, color_scheme=light)
        link = open_code(page, address, HOUSE)
        assert codes(picture(page, ".scan .code")) == [link]
        here = {
            name: text for name, text in HOUSE.items() if name != "spread_sqft_per_gal"
        }  # this page asks for no paint
        assert read("#" + link.split("#")[1]) == here | {"rooms": HOUSE["rooms"].replace("\n", "; ")}
        # Light paper of four squares stands round it, in any light.
        drawing = picture(page, ".scan svg").convert("L")
        size = int(page.locator(".scan svg").get_attribute("viewBox").split()[2])
        rim = int(4 * drawing.width / size) - 1
        assert rim > 8
        right, low = drawing.width - 2, drawing.height - 2  # the outermost row is shared with the page
        for box in (
            (2, 2, right, rim),
            (2, 2, rim, low),
            (2, low + 2 - rim, right, low),
            (right + 2 - rim, 2, right, low),
        ):
            assert drawing.crop(box).getextrema()[0] > 250

    @pytest.mark.parametrize("size", ["A4", "Letter"])
    def test_a_camera_reads_the_code_on_paper(self, page, address, size):
        link = open_code(page, address, HOUSE)
        sheets = pypdfium2.PdfDocument(page.pdf(format=size))
        found = [one for sheet in sheets for one in codes(sheet.render(scale=2).to_pil())]
        assert found == [link]

    def test_no_code_is_printed_that_nobody_opened(self, page, address):
        open_way(page, address, written(HOUSE)[0])
        sheets = pypdfium2.PdfDocument(page.pdf(format="A4"))
        assert [one for sheet in sheets for one in codes(sheet.render(scale=2).to_pil())] == []

    def test_the_code_follows_the_figures(self, page, address):
        before = open_code(page, address, {"rooms": "Den: 10 x 12"})
        ready(page)
        field(page, "rooms").fill("Den: 10 x 13")
        expect(page.locator(".scan .address")).not_to_have_attribute("href", before)
        assert read("#" + page.locator(".scan .address").get_attribute("href").split("#")[1]) == {
            "rooms": "Den: 10 x 13"
        }

    @pytest.mark.parametrize("dots", [1, 2.625, 3])  # of a screen for a pixel of the page
    def test_the_longest_code_is_still_read_at_390(self, make_page, address, dots):
        page = make_page(device_scale_factor=dots)
        chance = random.Random(SEED)
        link = open_code(page, address, {"rooms": "".join(chance.choice(LETTERS) for _ in range(850))})
        assert 900 < len(link) <= 1_000
        squares = page.locator(".scan svg").evaluate("one => one.viewBox.baseVal.width")
        for_each = page.locator(".scan svg").bounding_box()["width"] * dots / squares  # as many dots as for the next
        assert abs(for_each - round(for_each)) < 0.01 and round(for_each) >= 1
        assert codes(picture(page, ".scan .code")) == [link]

    def test_figures_too_many_for_a_code_are_told(self, page, address):
        chance = random.Random(SEED)
        names = "".join(chance.choice(LETTERS) for _ in range(3_000))
        open_way(page, address, written({"rooms": names})[0], shut=True)
        page.locator(".scan summary").click()
        expect(page.locator(".scan .code")).to_contain_text("too fine to scan")

    def test_without_a_signal_the_code_is_drawn_too(self, make_page, address):
        page = make_page()
        page.goto(address)
        page.wait_for_selector("html[data-offline]", timeout=60_000)
        page.context.set_offline(True)
        link = open_code(page, address, {"rooms": "Den: 10 x 12"})
        assert codes(picture(page, ".scan .code")) == [link]
