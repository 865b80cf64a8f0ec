"""The sections of the ways: one drawing but for the right half, lean, and one for each way of the book."""

import re
from pathlib import Path

import pytest

from calc.render import svg
from handbook.draw import figures, looks, motions, ways

METHODS = Path(__file__).parents[2] / "docs" / "methods"
NAMES = sorted(path.stem for path in METHODS.glob("*.md"))
LINES = {"cut", "edge", "edge old", "dim", "cut solid", "none solid"}
CUT = 6 + ways.CUT  # where the cut line stands on the page


def as_it_is(name: str) -> list[str]:
    """The shapes of a drawing that lie in its left half or run through both, as they are written."""
    shapes = re.findall(r"<poly[^>]*/>", figures.html_of(name))
    return [one for one in shapes if float(one.split('points="')[1].split(",")[0]) < CUT]


def test_each_way_of_the_book_has_a_section_with_lettering_and_one_without():
    assert sorted(ways.WAYS) == sorted(f"way-{name}{end}" for name in NAMES for end in ("", ways.SMALL))


@pytest.mark.parametrize("name", ways.WAYS)
def test_what_is_as_it_is_looks_the_same_in_every_section(name):
    first = as_it_is("way-wet-scrape")
    here = as_it_is(name)
    ids = [re.sub(r"#.*-", "#", one) for one in here]
    assert len(here) == 3
    assert ids == [re.sub(r"#.*-", "#", one) for one in first]


@pytest.mark.parametrize("name", ways.WAYS)
def test_a_section_is_drawn_in_the_same_weights_at_the_same_scale(name):
    text = figures.html_of(name)
    assert set(re.findall(r'<poly\w+ class="([^"]*)"', text)) <= LINES
    assert 'viewBox="0 0 360 118"' in text


@pytest.mark.parametrize("name", ways.WAYS)
def test_a_section_is_lean_and_stays_on_its_sheet(name):
    drawing = figures.FIGURES[name]()
    assert len(svg.svg(drawing, "x").encode()) <= (3000 if name.endswith(ways.SMALL) else 5000)
    assert all(0 <= x <= ways.WIDTH and 0 <= y <= ways.HEIGHT for one in drawing.shapes for x, y in one.points)


@pytest.mark.parametrize("name", NAMES)
def test_a_small_section_is_the_large_one_without_its_lettering(name):
    large, small = figures.FIGURES[f"way-{name}"](), figures.FIGURES[f"way-{name}{ways.SMALL}"]()
    assert (large.shapes, large.description) == (small.shapes, small.description)
    assert large.labels[0].text == "As it is"
    assert len(large.labels) == 2 and not small.labels
    assert "<figcaption>" not in figures.html_of(f"way-{name}{ways.SMALL}")


def test_no_two_sections_are_alike_at_the_right():
    assert len({figures.FIGURES[f"way-{name}"]().shapes for name in NAMES}) == len(NAMES) == 8


@pytest.mark.parametrize("name", sorted({*looks.LOOKS, *motions.MOTIONS}))
def test_the_other_drawings_are_lean_too_and_stay_on_their_sheets(name):
    drawing = figures.FIGURES[name]()
    assert len(svg.svg(drawing, "x").encode()) <= (9000 if name == "texture-kinds" else 5000)
    assert all(0 <= x <= drawing.width and 0 <= y <= drawing.height for one in drawing.shapes for x, y in one.points)


def test_the_sheet_passes_the_inner_corner_and_touches_no_wall():
    """The three positions are one length, and the turned one clears the corner that it goes round."""
    sheets = [one.points for one in motions.carry_round().shapes if one.hatch == "solid"]
    spans = [max((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 for a in one for b in one) ** 0.5 for one in sheets]
    assert max(spans) - min(spans) < 4
    assert all(x + y > 208 + 130 + 2 for x, y in sheets[1])
    assert all(x <= 258 and y <= 172 for one in sheets for x, y in one)


def test_the_kinds_of_texture_are_those_that_the_page_names():
    page = (METHODS.parent / "prepare" / "troweled.md").read_text(encoding="utf-8")
    kinds = {one.text.split()[-1].lower() for one in looks.texture_kinds().labels} - {"coarse"}
    assert len(kinds) == 5 and all(f"| {kind}" in page.lower().replace("orange ", "") for kind in kinds)


def test_a_dead_box_stands_between_two_tries_on_a_live_outlet():
    assert [one.text for one in motions.prove_dead().labels] == ["1 Live outlet", "2 Box: nothing", "3 Live again"]


def test_the_lower_the_level_the_more_shadow():
    def shadow(low: int, high: int) -> float:
        total = 0.0
        for one in looks.raking_light().shapes:
            xs, ys = [float(x) for x, _ in one.points], [float(y) for _, y in one.points]
            if one.hatch == "solid" and min(xs) > 20 and low < min(ys) <= high:
                total += abs(sum(xs[i - 1] * ys[i] - xs[i] * ys[i - 1] for i in range(len(xs)))) / 2
        return total

    textured, third, fourth, fifth = (shadow(top - 26, top + 20) for top in (162, 116, 70, 24))
    assert textured > third > fourth > fifth == 0
