"""The second skin, as people meet it: the walks of a homeowner, an apprentice, a contractor and a customer under mkdocs-material."""

import json
import re
import shutil
import threading

import pytest
import yaml
from playwright.sync_api import expect

from conftest import BASE, served, until, watch
from handbook import build, serve
from handbook.host import headers, offline
from handbook.make import skin
from test_guide import pick, shown_states
from test_job import field, form, ready, submit
from test_ladder import onward
from test_reading import AXE

pytestmark = [pytest.mark.browser, pytest.mark.slow]

ROOMS = "Living: 20' x 14'"
LINK = "rooms=Living:+20'+x+14'"
PLACES = {
    "home": "", "way": "methods/wet-scrape/", "guide": "prepare/choose/", "calculator": "work-out/board/",
    "customer": "to/board-over/", "papers": "papers/board-over/",
}  # fmt: skip


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    """The sample firm with nothing of its own but name, colors and mark, so that its answers are the book's."""
    folder = tmp_path_factory.mktemp("material")
    shutil.copytree(build.DOCS / "firm", folder / "firm")
    told = yaml.load((folder / "firm" / "firm.yml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    told = {name: told[name] for name in ("business", "reviewed", "colors", "mark")} | {"skin": "material"}
    (folder / "firm" / "firm.yml").write_text(yaml.safe_dump(told, allow_unicode=True), encoding="utf-8")
    assert build.build_firm(folder / "firm" / "firm.yml", folder / "site", folder / "edition") == 0
    return folder / "site"


@pytest.fixture(scope="module")
def edition(site):
    with served(site) as found:
        yield found


@pytest.fixture
def make_page(chromium, edition, watched):
    contexts = []

    def make(width=390, **options):
        contexts.append(chromium.new_context(viewport={"width": width, "height": 844}, **options))
        return watch(contexts[-1].new_page(), edition, watched, True)

    yield make
    for context in contexts:
        context.close()
    assert watched == []


@pytest.fixture
def page(make_page):
    return make_page()


@pytest.mark.parametrize(
    ("name", "typed"), [("skim", {"texture_depth_in": "3/16"}), ("board", {"joist_spacing_in": "16"})]
)
def test_a_form_answers_typed_figures_as_in_the_own_skin(page, chromium, address, edition, name, typed):
    def answered(one, place):
        one.goto(f"{place}work-out/{name}/")
        ready(one)
        field(one, "rooms").fill(ROOMS)
        for key, text in typed.items():
            field(one, key).fill(text)
        submit(one, name)
        expect(form(one, name).locator(".origin")).to_contain_text("Worked out from your figures: ")
        expect(form(one, name).locator(".by")).to_contain_text("small engine")
        return form(one, name).locator(".slot").inner_html()

    other = chromium.new_context(viewport={"width": 390, "height": 844})
    try:
        assert answered(page, edition) == answered(other.new_page(), address)
    finally:
        other.close()


def test_a_homeowner_opens_and_closes_ways_by_answers(page, edition):
    page.goto(edition)
    page.locator(".door").first.click()
    page.wait_for_selector("#decision[data-engine]")
    expect(page.locator(".strip li")).to_have_count(8)
    assert "closed" not in shown_states(page)
    pick(page, "asbestos_result", "found")
    expect(page.locator(".strip .state", has_text="closed").first).to_be_visible()
    page.locator(".guide button", has_text="Back").first.click()
    pick(page, "asbestos_result", "none")
    expect(page.locator(".strip .state", has_text="closed")).to_have_count(0)
    # The states stay in sight under the theme's head, not beneath it.
    page.evaluate("document.querySelector('.guide').lastElementChild.scrollIntoView()")
    head, strip = (page.locator(one).bounding_box() for one in (".md-header", ".strip"))
    assert strip["y"] >= head["y"] + head["height"] - 1


def test_an_apprentice_goes_step_by_step_and_finds_the_ticks_again(page, edition):
    page.goto(edition + PLACES["way"])
    page.wait_for_selector(".ladder-open button")
    total = page.locator(".step, .hold").count()
    page.locator(".ladder-open button").click()
    ladder = page.locator("dialog.ladder")
    expect(ladder.locator(".where")).to_have_text("Before you start")
    onward(ladder)
    expect(ladder.locator(".where")).to_have_text(re.compile(rf", 1 of {total}$"))
    assert ladder.locator(".ladder-do").evaluate("one => parseFloat(getComputedStyle(one).fontSize)") >= 28
    box = ladder.bounding_box()
    assert (box["x"], box["y"], box["width"], box["height"]) == (0, 0, 390, 844), "over the theme's head too"
    onward(ladder)
    expect(ladder.locator(".where")).to_have_text(re.compile(rf", 2 of {total}$"))
    page.keyboard.press("Escape")
    expect(page.locator(".ticked")).to_contain_text(f"1 of {total}")
    page.reload()
    expect(page.locator(".ticked")).to_contain_text(f"1 of {total}")
    expect(page.locator(".ladder-open button")).to_have_text("Go on at step 2")


def test_a_contractors_link_opens_filled_and_steps_take_its_figures(page, edition):
    page.goto(f"{edition}{PLACES['way']}#takeoff?{LINK}")
    ready(page)
    expect(page.locator("#takeoff .figure strong")).to_have_text("280 sq ft")
    assert field(page, "rooms").input_value() == ROOMS
    live = page.locator(".steps .live[data-shows=answer]")
    expect(live.first).to_be_visible()
    assert live.count() >= 2
    until(page, "Object.keys(localStorage).some((one) => one.endsWith(' rooms'))")
    page.goto(edition + "work-out/board/")
    ready(page)
    assert field(page, "rooms").input_value() == ROOMS


def test_a_customer_reads_one_screen_and_it_prints_on_one_sheet(page, edition):
    page.goto(f"{edition}to/board-over/#takeoff?{LINK}&ceiling_height_ft=8&asbestos_result=none&joist_spacing_in=16")
    page.wait_for_selector("#takeoff[data-engine]")
    expect(page.locator("#takeoff .figure strong")).to_have_text("280 sq ft")
    expect(page.locator(".page > .firm")).to_contain_text("Example Ceilings")
    expect(page.locator("#board .origin")).to_contain_text("Living: 20' x 14'")
    assert not page.locator("#board form").is_visible()
    assert len(re.findall(rb"/Type\s*/Page\b", page.pdf(format="A4"))) == 1


def test_papers_print_without_the_frame_of_the_theme(page, edition):
    page.goto(f"{edition}{PLACES['papers']}#takeoff?{LINK}")
    ready(page)
    page.emulate_media(media="print")
    for part in (".md-header", ".md-sidebar--primary", ".md-footer", ".md-tabs"):
        expect(page.locator(part).first).to_be_hidden()
    expect(page.locator("#paper-job .steps").first).to_be_visible()


def test_after_one_visit_everything_works_with_the_network_gone(page, edition):
    page.goto(edition)
    page.wait_for_selector("html[data-offline]", timeout=60_000)
    expect(page.locator(".offline-state")).to_contain_text("It works without a signal.")
    page.context.set_offline(True)
    page.reload()
    page.locator(".ways a", has_text="Skim over").click()
    ready(page)
    field(page, "rooms").fill(ROOMS)
    field(page, "texture_depth_in").fill("1/8")
    submit(page, "skim")
    expect(form(page, "skim").locator(".by")).to_contain_text("small engine")
    page.locator(".md-header__button[for=__search]").click()
    page.locator(".md-search__input").press_sequentially("cottage cheese")
    page.locator(".md-search-result__link[href*='#term-texture']").click()  # others come and go with each letter
    expect(page.locator(".terms > div:target dt")).to_have_text("texture")
    page.goto(edition + "search/?q=seams show")
    expect(page.locator(".found a", has_text="Seams show after paint").first).to_be_visible()


def test_a_new_edition_waits_until_the_reader_takes_it(page, site, chromium, tmp_path, watched):
    copy = shutil.copytree(site, tmp_path / "site", ignore=shutil.ignore_patterns("*.br", "*.gz"))
    server = serve.open_server(0, BASE, copy)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    place = f"http://127.0.0.1:{server.server_port}{BASE}"
    one = chromium.new_context(viewport={"width": 390, "height": 844}).new_page()
    try:
        one.goto(place)
        one.wait_for_selector("html[data-offline]", timeout=60_000)
        home = copy / "index.html"
        home.write_text(home.read_text("utf-8").replace("What can I do with this ceiling?", "Anew"), encoding="utf-8")
        offline.write_worker(copy, build.DOCS / "theme" / "sw.js")
        one.reload()
        expect(one.locator("#edition")).to_contain_text("A new edition of this book is here.", timeout=60_000)
        expect(one.locator("h1")).to_have_text("What can I do with this ceiling?")
        one.locator("#edition button").click()
        expect(one.locator("h1")).to_have_text("Anew")
    finally:
        one.context.close()
        server.shutdown()
        server.server_close()


@pytest.mark.parametrize("path", PLACES.values(), ids=PLACES)
def test_a_page_fits_and_everybody_can_read_it(make_page, edition, path):
    # The look-over makes style sheets of its own; what slides and fades in is looked at where it ends.
    page = make_page(bypass_csp=True, service_workers="block", reduced_motion="reduce")
    page.goto(edition + path)
    page.wait_for_load_state("networkidle")
    page.evaluate(AXE.read_text(encoding="utf-8"))
    for width in (390, 1280):
        page.set_viewport_size({"width": width, "height": 844})
        until(page, "document.documentElement.scrollWidth <= innerWidth")
        for scheme, rules in (("light", "undefined"), ("dark", "['color-contrast', 'link-in-text-block']")):
            page.emulate_media(color_scheme=scheme)
            until(page, f"getComputedStyle(document.body).colorScheme === '{scheme}'")
            found = page.evaluate(f"axe.run(document, {{resultTypes: ['violations'], runOnly: {rules}}})")
            told = [f"{one['id']}: {one['nodes'][0]['target']}" for one in found["violations"]]
            assert told == [], (width, scheme)


def test_the_themes_switch_changes_the_books_colors_and_is_kept(page, edition):
    paper = "getComputedStyle(document.querySelector('.book')).getPropertyValue('--paper').trim()"
    plum = "getComputedStyle(document.querySelector('.book')).getPropertyValue('--plum').trim()"
    page.goto(edition)
    assert page.evaluate(paper) == "#fbfaf7"
    assert page.evaluate(plum) == "#1f5a54", "the firm's"
    for _ in ("light", "dark"):
        page.locator("form[data-md-component=palette] label:visible").click()
    until(page, f"{paper} === '#14161a'")
    page.goto(edition + PLACES["way"])
    until(page, f"{paper} === '#14161a' && {plum} === '#8fd3c8'")
    page.emulate_media(media="print")
    until(page, f"{paper} === '#fff'")


def test_the_themes_drawer_leads_through_the_book_on_a_phone(page, edition):
    page.goto(edition)
    page.locator("label[for=__drawer].md-header__button").click()
    page.locator(".md-nav--primary label", has_text="Ways").first.click()
    page.locator(".md-nav--primary a", has_text="Skim over").click()
    expect(page.locator("h1")).to_have_text("Skim over")


def test_no_page_lets_in_a_script_that_the_build_did_not_count(site):
    for path in sorted(site.rglob("*.html")):
        text = path.read_text(encoding="utf-8")
        policy = re.search(r'Content-Security-Policy" content="([^"]+)', text).group(1)
        assert "unsafe-inline" not in policy and "unsafe-eval'" not in policy.replace("wasm-unsafe-eval'", "")
        if path.name == "404.html":
            continue
        assert text.index("Content-Security-Policy") < text.index("<script"), "the policy stands before what it is for"
        inside = set(headers.scripts_in(text))
        assert inside and inside == set(re.findall(r"'sha256-[^']+'", policy)), path
        assert inside <= set(re.findall(r"'sha256-[^']+'", (site / "_headers").read_text(encoding="utf-8")))
        assert not re.search(r"<(?:script|link|img)[^>]+(?:src|href)=\"(?:https?:)?//", text), path


def test_only_what_is_used_is_shipped(site):
    assert not [path for path in site.rglob("*") if path.suffix == ".map" or ("lunr" in path.parts and path.is_file())]
    found = json.loads((site / "search" / "search_index.json").read_text(encoding="utf-8"))["docs"]
    known = set()
    for one in found:  # a place inside a page comes after its page, or the theme's search does not know whose it is
        page = one["location"].split("#")[0]
        assert page == one["location"] or page in known, one
        known.add(one["location"])


SHEETS = """
/* a word */ :root { --big: 1.25rem; color: red } html { margin: 0 } body { margin: 0 }
:root[data-scheme="dark"] { --ink: white }
a, .x:is(b, i) { margin: 0 -1rem .5rem 2px }
main > h1 { top: 0 }
html[data-strip] .strip { top: 2rem }
@media (min-width: 40rem) { .y { width: 10rem } body { margin: 0 } }
@media print { @page { margin: 1rem } }
@media screen { :root:not([data-scheme="light"]) { --ink: white } }
"""


def test_style_sheets_are_confined_to_the_book_rule_by_rule():
    rows = [" ".join(one.split()) for one in skin.confined(SHEETS).replace("}\n", "}\n\n").split("\n\n") if one.strip()]
    assert rows == [
        ":root { --big: 1.125rem; color: red }",
        '[data-md-color-scheme="slate"] { --ink: white }',
        ".book a, .book .x:is(b, i) { margin: 0 -0.9rem 0.45rem 2px }",
        ".book :where(#content) > h1 { top: 0 }",
        "html[data-strip] .book .strip { top: 1.8rem }",
        "@media (min-width: 40rem) { .book .y { width: 9rem }",
        "}",
        "@media print { @page { margin: 1rem }",
        "}",
    ]
