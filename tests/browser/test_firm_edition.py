"""A firm's edition in a browser: its figures stand as its own, a typed one wins, prices show their day, and its name stays text."""

import csv
import io
import json
import shutil

import pytest
import yaml
from playwright.sync_api import expect

from conftest import served, until, watch
from handbook import build
from handbook.site_check import looks, places

pytestmark = [pytest.mark.browser, pytest.mark.slow]

NAME = 'Example <b>Ceilings</b> & "Söhne" 😀 שלום'
ROOMS = "rooms=Living:+20'+x+14'"


@pytest.fixture(scope="module")
def built(tmp_path_factory):
    """The folder of the sample firm under a name that is hard to print, built once; its calculators are the book's, and so packed already."""
    folder = tmp_path_factory.mktemp("firm")
    shutil.copytree(build.DOCS / "firm", folder / "firm")
    told = yaml.load((folder / "firm" / "firm.yml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    told["business"]["name"] = NAME
    del told["cautions"], told["local_rules"]
    (folder / "firm" / "firm.yml").write_text(yaml.safe_dump(told, allow_unicode=True), encoding="utf-8")
    assert build.build_firm(folder / "firm" / "firm.yml", folder / "site", folder / "edition") == 0
    return folder / "site"


@pytest.fixture(scope="module")
def edition(built):
    with served(built) as found:
        yield found


@pytest.fixture
def page(chromium, edition, watched):
    context = chromium.new_context(viewport={"width": 390, "height": 844})
    yield watch(context.new_page(), edition, watched, True)
    context.close()
    assert watched == []


def note(page, form, name):
    return page.locator(f"#{form}-{name}-firm")


def test_a_firms_figure_stands_as_the_firms_and_a_typed_one_wins(page, edition):
    page.goto(f"{edition}work-out/plan/#plan?way=wet-scrape&{ROOMS}")
    field = page.locator("#plan-hours_per_day")
    origin = page.locator("#plan .origin")
    expect(field).to_have_value("9")
    expect(note(page, "plan", "hours_per_day")).to_have_text(f"from {NAME}, 2026-11-01")
    expect(origin).to_contain_text(f"From {NAME}: ")
    expect(origin).to_contain_text("Hours of work a day 9, 2026-11-01")
    assert answered_with(page)["hours_per_day"] == "9"

    field.fill("7")
    expect(note(page, "plan", "hours_per_day")).to_contain_text(f"Yours. The usual 9 is from {NAME}, 2026-11-01.")
    expect(origin).to_contain_text("Hours of work a day 7")
    expect(origin).not_to_contain_text("Hours of work a day 9")
    assert answered_with(page)["hours_per_day"] == "7"
    until(page, "Object.keys(localStorage).some((one) => one.endsWith('hours_per_day'))")
    page.goto(edition)
    page.goto(f"{edition}work-out/plan/")
    expect(field).to_have_value("7")

    field.fill("")  # empty is the usual value, and that is the firm's
    expect(origin).to_contain_text("Hours of work a day 9, 2026-11-01")
    assert answered_with(page)["hours_per_day"] == "9"
    field.fill("7")
    note(page, "plan", "hours_per_day").get_by_role("button", name="Take it again").click()
    expect(field).to_have_value("9")
    expect(note(page, "plan", "hours_per_day")).to_have_text(f"from {NAME}, 2026-11-01")
    until(page, "!Object.keys(localStorage).some((one) => one.endsWith('hours_per_day'))")


def answered_with(page):
    """What the form asks the engine now."""
    return page.evaluate(
        "import(new URL('section.mjs', document.querySelector('link[rel=icon]').href)).then(({ inputsOf }) => inputsOf(document.getElementById('plan')))"
    )


def test_prices_of_the_firm_fill_the_list_with_their_day_and_give_way_to_the_visitors(page, edition):
    page.goto(f"{edition}work-out/shopping/#shopping?way=skim-over&{ROOMS}")
    items = page.locator("#shopping .items")
    expect(items).to_contain_text("at 38.50 a gal, 2026-11-01, Example Supply")
    expect(note(page, "shopping", "prices")).to_have_text(f"from {NAME}, 2026-07-01 to 2026-11-01")
    expect(note(page, "shopping", "rate_per_hour")).to_have_text(f"from {NAME}, 2026-11-01 (our list)")
    expect(page.locator("#shopping .origin")).to_contain_text("Prices 5 of 2026-07-01 to 2026-11-01")
    page.locator("#shopping-prices").fill("paint: 40 a gal")
    expect(items).to_contain_text("at 40.00 a gal.")
    expect(items).not_to_contain_text("Example Supply")
    expect(note(page, "shopping", "prices")).to_contain_text("Yours. The usual ones are from")
    page.locator("#shopping-prices").fill("")  # no price at all is the visitor's to say too
    expect(items).not_to_contain_text("a gal.")
    until(page, "Object.entries(localStorage).some(([name, text]) => name.endsWith(' prices') && text === '')")
    page.reload()
    expect(page.locator("#shopping-prices")).to_have_value("")


def test_a_link_holds_the_firms_figures_as_they_are_now(page, edition):
    page.goto(f"{edition}work-out/compare/#compare?{ROOMS}")
    expect(note(page, "compare", "rate_per_hour")).to_be_visible()
    until(page, "location.hash.includes('rate_per_hour=65') && location.hash.includes('hours_per_day=9')")
    page.goto("about:blank")
    page.goto(f"{edition}work-out/compare/#compare?{ROOMS}&rate_per_hour=60")  # sent when the rate was another
    expect(page.locator("#compare-rate_per_hour")).to_have_value("60")
    expect(note(page, "compare", "rate_per_hour")).to_contain_text("Yours. The usual 65")


def test_who_the_firm_is_stands_on_the_cover_at_the_foot_on_paper_and_for_the_customer(page, edition):
    for path in ("", "to/board-over/"):
        page.goto(edition + path)
        expect(page.locator(".page > .firm")).to_contain_text(NAME)
        expect(page.locator(".page > .firm a")).to_have_attribute("href", "tel:+15550100")
        for told in (
            "Example County and around",
            "Contractor license 000000 (invented)",
            "Lead-safe certificate 000000 (invented)",
        ):
            expect(page.locator(".page > .firm")).to_contain_text(told)
    page.goto(edition + "methods/wet-scrape/")
    expect(page.locator(".title-block .edition")).to_contain_text(NAME)
    expect(page.locator(".sheet-head .firm")).to_be_hidden()
    page.emulate_media(media="print")
    expect(page.locator(".sheet-head .firm")).to_be_visible()
    expect(page.locator(".sheet-head .firm")).to_contain_text("+1 555 0100")
    assert page.evaluate("[...document.querySelectorAll('.firm b, .top b')].every((one) => !one.querySelector('b'))")
    assert page.title().endswith("· " + NAME)
    icon = page.evaluate("fetch(document.querySelector('link[rel=manifest]').href).then((one) => one.json())")
    assert icon["name"] == NAME


@pytest.mark.parametrize(("scheme", "plum"), [("light", "#1f5a54"), ("dark", "#8fd3c8")])
def test_colors_and_mark_are_the_firms_and_paper_stays_black_on_white(page, edition, scheme, plum):
    page.emulate_media(color_scheme=scheme)
    page.goto(edition)
    assert page.evaluate("getComputedStyle(document.documentElement).getPropertyValue('--plum').trim()") == plum
    until(page, "document.querySelector('.firm-mark').naturalWidth > 0")
    page.emulate_media(media="print", color_scheme=scheme)
    assert page.evaluate("getComputedStyle(document.documentElement).getPropertyValue('--plum').trim()") in (
        "#000",
        "#000000",
    )


def test_the_firms_pages_stand_in_their_places(page, edition):
    page.goto(edition + "contents/")
    for section, title in (
        ("after", "What we stand for"),
        ("prepare", "Before our crew comes"),
        ("after", "Inspect with our foreman"),
    ):
        expect(page.locator(f"#{section} a", has_text=title)).to_be_visible()
    assert page.locator("a[href*='levels']").count() == 0
    page.goto(edition + "after/inspect/")
    expect(page.locator("h1")).to_have_text("Inspect with our foreman")
    expect(page.locator("#inspect-agreed")).to_contain_text("You would sign it.")
    shown = page.evaluate("fetch('../../firm.schema.json').then((one) => one.text())")
    assert "business" in json.loads(shown)["properties"]


ADDRESS = "https://ceilings.example/handbook/"


def test_with_its_address_the_edition_is_found_and_shown(page, edition, built):
    """The sample tells its address: each page names itself there, the lists name it, and a browser complains of nothing."""
    page.goto(edition + "methods/wet-scrape/")
    own = ADDRESS + "methods/wet-scrape/"
    expect(page.locator("link[rel=canonical]")).to_have_attribute("href", own)
    for name, told in (("url", own), ("title", "Wet scrape"), ("site_name", NAME), ("image", ADDRESS + "preview.png")):
        expect(page.locator(f"meta[property='og:{name}']")).to_have_attribute("content", told)
    assert (built / "preview.png").read_bytes().startswith(b"\x89PNG")
    assert "preview.png" not in (built / "sw.js").read_text(encoding="utf-8"), "no visitor fetches it"
    listed = (built / "sitemap.xml").read_text(encoding="utf-8")
    assert f"<loc>{own}</loc>" in listed and f"<loc>{ADDRESS}our-crew/" not in listed and "/to/" not in listed
    assert f"<loc>{ADDRESS}own/our-crew/</loc>" in listed
    assert not (built / "robots.txt").exists()
    assert 'href="/handbook/"' in (built / "404.html").read_text(encoding="utf-8")
    assert "ErrorDocument 404 /handbook/404.html" in (built / ".htaccess").read_text(encoding="utf-8")


def test_the_edition_has_no_fault_where_it_is_published(edition, built):
    assert looks.look(places.Folder(built)) == []
    found = looks.look(places.Address(edition))
    assert {one.code for one in found} == {"LINK", "ADDRESS"} and all(
        one.is_note for one in found
    )  # it stands elsewhere yet


def test_files_that_go_out_say_whose_they_are(page, edition):
    def saved(button):
        with page.expect_download() as made:
            page.get_by_role("button", name=button).click()
        return made.value.suggested_filename, made.value.path().read_text(encoding="utf-8")

    page.goto(f"{edition}work-out/plan/#plan?way=wet-scrape&{ROOMS}&start_day=2027-03-08")
    name, text = saved("Save the days for a calendar")
    assert name == "example-b-ceilings-b-sohne-days-wet-scrape.ics"
    assert f"X-WR-CALNAME:{NAME}: wet-scrape" in text.replace("\r\n ", "")
    assert all(
        row.endswith(f"({NAME})") for row in text.replace("\r\n ", "").split("\r\n") if row.startswith("SUMMARY")
    )
    page.goto(f"{edition}work-out/shopping/#shopping?way=wet-scrape&{ROOMS}")
    name, text = saved("Save the list for a table (CSV)")
    assert name == "example-b-ceilings-b-sohne-to-buy-wet-scrape.csv"
    head, *rows = csv.reader(io.StringIO(text, newline=""), strict=True)
    assert head[-1] == "List of" and rows and all(row[-1] == NAME for row in rows)
    page.goto(f"{edition}my-job/")
    name, _ = saved("Save as a file")
    assert name.startswith("example-b-ceilings-b-sohne-") and name.endswith(".json")
