"""Whoever chose colors of their own, or less motion: signal words, ticks, what is selected and the lines of drawings stay."""

import pytest
from playwright.sync_api import expect

from test_job import ready

pytestmark = [pytest.mark.browser, pytest.mark.slow]
SETTLED = "prepare/choose/#decision?asbestos_result=none&result_rooms=this&result_layers=all"
SYSTEM = """name => {
    const probe = document.createElement('i');
    probe.style.cssText = `color: ${name}; forced-color-adjust: none`;
    document.body.append(probe);
    const found = getComputedStyle(probe).color;
    probe.remove();
    return found;
}"""


def style(place, name, part=None):
    return place.evaluate("(one, [name, part]) => getComputedStyle(one, part)[name]", [name, part])


@pytest.fixture(params=["light", "dark"])
def chosen(make_page, request):
    return make_page(390, forced_colors="active", reduced_motion="reduce", color_scheme=request.param)


def opposite(page):
    """Set the book to the light that the reader's own colors are not for."""
    dark = page.evaluate("matchMedia('(prefers-color-scheme: dark)').matches")
    page.evaluate("scheme => { document.documentElement.dataset.scheme = scheme; }", "light" if dark else "dark")


@pytest.mark.parametrize("path", ["", "methods/skim-over/", "prepare/cover/", "work-out/board/"])
def test_lines_of_drawings_and_signal_words_stand_out(chosen, address, path):
    chosen.goto(address + path)
    chosen.wait_for_selector("html[data-asbestos]")
    opposite(chosen)
    ink, canvas = chosen.evaluate(SYSTEM, "CanvasText"), chosen.evaluate(SYSTEM, "Canvas")
    assert ink != canvas
    for drawing in chosen.locator("svg.sheet").all():
        assert style(drawing, "color") == ink
        for line in drawing.locator(".old").all()[:3]:
            assert style(line, "stroke") == ink
    words = chosen.locator(".signal").filter(visible=True).all()
    for word in words:
        assert style(word, "backgroundColor") not in (ink, canvas, "rgba(0, 0, 0, 0)")
        assert style(word, "backgroundColor") != style(word, "color")
    assert words


def test_a_tick_and_what_is_selected_can_be_seen(chosen, address):
    chosen.goto(address + "methods/skim-over/")
    ready(chosen)
    box = chosen.locator(".hold input").first
    before = style(box, "backgroundColor")
    box.check()
    assert style(box, "backgroundColor") != before
    assert style(box, "borderBottomColor", "::after") != style(box, "backgroundColor")
    chosen.locator(".ladder-open button").click()
    chosen.locator("dialog.ladder button.where").click()
    here, other = (
        chosen.locator(".phase-list [aria-current]"),
        chosen.locator(".phase-list button:not([aria-current])").first,
    )
    assert style(here, "borderLeftWidth") != style(other, "borderLeftWidth")
    chosen.goto(address + SETTLED)
    line = chosen.locator(".guide button.tick").first
    line.click()
    assert style(line, "backgroundColor") != style(chosen.locator(".guide button.tick").last, "backgroundColor")
    assert style(line, "content", "::before") != style(chosen.locator(".guide button.tick").last, "content", "::before")
    chosen.locator(".guide .answers button.act").click()
    expect(chosen.locator(".guide h3")).to_have_text("Does it sag or bulge?")
    chosen.locator(".guide button.pick", has_text="No, it is level").click()
    expect(chosen.locator(".guide h3")).not_to_have_text("Does it sag or bulge?")
    chosen.locator(".guide-tools button", has_text="Back").click()
    picked = chosen.locator('.guide button.pick[aria-pressed="true"]')
    expect(picked).to_have_text("No, it is level")
    other = chosen.locator('.guide button.pick[aria-pressed="false"]').first
    assert style(picked, "backgroundColor") != style(other, "backgroundColor")
    assert style(picked, "backgroundColor") != style(picked, "color")


@pytest.mark.parametrize("path", ["", "methods/skim-over/", "prepare/choose/"])
def test_nothing_moves_for_whoever_asked_for_less_motion(make_page, address, path):
    for motion, behavior in (("reduce", "auto"), ("no-preference", "smooth")):
        page = make_page(390, reduced_motion=motion)
        page.goto(address + path)
        assert style(page.locator("html"), "scrollBehavior") == behavior
        if motion == "reduce":
            assert page.evaluate("document.getAnimations().length") == 0
