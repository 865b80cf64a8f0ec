"""Every page as it is read: nothing too wide, nothing too small, no violation, no request elsewhere, on paper too."""

import re

import pytest

from handbook import serve
from handbook.engines import packing

pytestmark = [pytest.mark.browser, pytest.mark.slow]
AXE = packing.MODULES / "axe-core" / "axe.min.js"
PAGES = (
    "", "methods/wet-scrape/", "methods/dry-scrape/", "methods/sand/", "methods/skim-over/", "methods/board-over/", "methods/panel-over/",
    "methods/leave-and-seal/", "methods/licensed-removal/", "prepare/choose/", "reference/chart/", "reference/ceilings/", "prepare/measure/", "prepare/settle/", "prepare/lower/",
    "prepare/cover/", "prepare/reach/", "finish/tape/", "finish/dry/", "finish/paint/", "after/clear-up/", "reference/checks/",
    "reference/sources/", "reference/nomenclature/", "prepare/test-patch/", "prepare/power-off/", "prepare/trail/", "prepare/joists/",
    "prepare/carry/", "finish/edge/", "finish/smooth/", "finish/sand-clean/", "finish/texture/", "finish/refit/", "after/inspect/",
    "after/hand-over/", "reference/glossary/", "reference/tools/", "reference/levels/", "reference/trouble/", "reference/drying/",
    "reference/limits/", "search/", "to/wet-scrape/", "to/dry-scrape/", "to/sand/", "to/skim-over/", "to/board-over/", "to/panel-over/",
    "to/leave-and-seal/", "to/licensed-removal/", "prepare/accident/", "prepare/permission/", "prepare/hire/",
    "prepare/house-order/", "prepare/high/", "prepare/bath/", "prepare/troweled/", "prepare/recessed/", "finish/crown/", "finish/patch/", "contents/",
    "reference/trust/",
    "work-out/takeoff/", "work-out/samples/", "work-out/lead/", "work-out/fixtures/", "work-out/reach/", "work-out/sheeting/", "work-out/airflow/", "work-out/wetting/", "work-out/debris/", "work-out/skim/", "work-out/carry/", "work-out/board/", "work-out/panels/", "work-out/taping/", "work-out/drying/", "work-out/humidity/", "work-out/paint/", "work-out/plan/", "work-out/compare/", "work-out/shopping/", "work-out/offer/",
    "papers/wet-scrape/", "papers/dry-scrape/", "papers/sand/", "papers/skim-over/", "papers/board-over/", "papers/panel-over/",
    "papers/leave-and-seal/", "papers/licensed-removal/", "my-job/", "404.html",
)  # fmt: skip


def test_every_page_is_looked_at():
    built = {path.relative_to(serve.SITE).as_posix().removesuffix("index.html") for path in serve.SITE.rglob("*.html")}
    assert built == set(PAGES)


@pytest.mark.parametrize("path", PAGES)
def test_a_page(make_page, address, path):
    """One visit looks at the page on a phone and on a desk, light and dark, and at twice the text."""
    page = make_page(390, bypass_csp=True, service_workers="block")
    page.goto(address + path)
    page.wait_for_load_state("networkidle")
    for summary in page.locator("summary").all():
        if summary.is_visible():
            summary.click()
    page.evaluate(AXE.read_text(encoding="utf-8"))
    for width in (390, 1280):
        page.set_viewport_size({"width": width, "height": 844})
        look_at(page)
        for scheme, rules in (("light", "undefined"), ("dark", "['color-contrast', 'link-in-text-block']")):
            page.emulate_media(color_scheme=scheme)  # a scheme changes colors alone
            found = page.evaluate(f"axe.run(document, {{resultTypes: ['violations'], runOnly: {rules}}})")
            told = [f"{one['id']}: {one['nodes'][0]['target']}" for one in found["violations"]]
            assert told == [], (width, scheme)
    page.set_viewport_size({"width": 390, "height": 844})
    page.evaluate("document.documentElement.style.fontSize = '225%'")
    assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0, "at twice the text"


def look_at(page):
    assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
    small = page.evaluate(
        """[...document.querySelectorAll('button, input, select, textarea, summary, .bar a')].filter(one => {
            const box = one.getBoundingClientRect();
            return one.checkVisibility() && box.width && (box.height < 44 || box.width < 44);
        }).map(one => one.outerHTML.slice(0, 80))"""
    )
    assert small == []
    lettering = page.evaluate(
        """[...document.querySelectorAll('svg.sheet:has(text)')].filter(one => one.checkVisibility()).flatMap(one =>
            14 * one.getBoundingClientRect().width / one.viewBox.baseVal.width)"""
    )
    assert all(size >= 12 for size in lettering), lettering


def test_on_paper_forms_go_and_answers_stay(make_page, address):
    page = make_page(1000, service_workers="block")
    page.goto(address + "methods/skim-over/#skim?rooms=Den:+10+x+12&texture_depth_in=1/8")
    page.wait_for_selector("#skim[data-engine]")
    page.emulate_media(media="print", color_scheme="dark")
    assert "Rooms Den: 10 x 12; Depth of the texture 1/8 in." in page.locator("#skim .origin").inner_text()
    assert not page.locator("#skim form").is_visible()
    assert page.locator("#skim .figure").is_visible()
    assert page.locator(".paper-hazards .signal").first.is_visible()
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"


READ: dict[str, str] = {}


def text_of(page, there):
    """The text at an address, asked for once."""
    if there not in READ:
        response = page.request.get(there)
        assert response.status == 200, there
        READ[there] = response.text()
    return READ[there]


@pytest.mark.parametrize("path", PAGES[:-1])
def test_every_link_inside_the_book_leads_somewhere(make_page, address, path):
    page = make_page(service_workers="block")
    page.goto(address + path)
    for href in set(page.eval_on_selector_all("a[href]", "all => all.map(one => one.href)")):
        there, _, anchor = href.partition("?")[0].partition("#")
        found = text_of(page, there)
        assert there.endswith(".json") or f'id="{anchor or "content"}"' in found, href


def test_only_what_is_used_is_shipped(make_page, address):
    """Each style and script of the site is asked for by some page, and none of it comes from a theme."""
    asked = set()
    page = make_page()
    page.on("request", lambda one: asked.add(one.url.removeprefix(address)))
    page.goto(address + "methods/skim-over/")
    page.wait_for_selector("html[data-ready]")
    page.locator("#drying > summary").click()
    page.locator("#drying button.act").click()
    page.wait_for_selector("#drying .tools:not([hidden])")
    page.locator(".scan summary").click()  # the short link, and its code
    page.wait_for_selector(".scan .code svg")
    for path in ("my-job/", "work-out/plan/", "work-out/shopping/", "papers/sand/"):
        page.goto(address + path)
        page.wait_for_load_state("networkidle")
    page.goto(address + "prepare/choose/")
    page.wait_for_selector(".guide h3")
    page.goto(address + "search/")
    page.wait_for_selector("#find[data-ready]")
    shipped = {
        path.relative_to(serve.SITE).as_posix()
        for path in serve.SITE.glob("assets-*/*")
        if path.suffix in (".css", ".mjs")
    }
    # A firm's edition alone asks for its script (test_firm_edition.py).
    assert {one for one in shipped - asked if not one.endswith("/firm.mjs")} == set()


def test_a_job_sheet_has_a_place_for_name_and_day_and_a_plan_to_hang_from(make_page, address, tmp_path):
    """Three rooms, no figures for the rest: the plan as wide as the paper, and no more sheets than somebody carries."""
    page = make_page(1280, service_workers="block")
    page.goto(address + "methods/board-over/#board?rooms=Living:+20'+x+14';+Den:+12'+x+11';+Hall:+12'+x+4'")
    page.wait_for_selector("#board[data-engine]")
    page.wait_for_selector("#takeoff[data-engine]")
    assert not page.locator(".sheet-head").is_visible()
    for size in ("Letter", "A4"):
        paper = tmp_path / f"{size}.pdf"
        page.pdf(path=paper, format=size)
        assert len(re.findall(rb"/Type\s*/Page\b", paper.read_bytes())) <= 11, size
    page.emulate_media(media="print")
    page.set_viewport_size({"width": 680, "height": 900})  # what lies between the margins of a sheet, 18 cm
    head = page.locator(".sheet-head").inner_text()
    assert "Name" in head and "Day" in head and re.search(r"Printed .*\d", head)
    for plan in page.locator("#board svg.sheet").all():
        box = plan.bounding_box()
        assert box["width"] > 600 or box["height"] > 700, "as wide as the paper, or as high"
