"""What only the whole book can tell, and that each of these faults is seen."""

import json

import pytest

from calc.evidence import sources
from handbook import build
from handbook.content import addresses, reading
from handbook.draw import figures
from handbook.lint import whole
from handbook.make import customer, pages, search

HEAD = "---\ntitle: Try\nkind: task\nsummary: A page.\nreviewed: 2026-11-26\nfacts: Made up.\n---\n"


@pytest.fixture
def book(tmp_path):
    """Return a function that checks a book of one page."""

    def check(text, listed="", nav="nav:\n  - Try: try.md\n", generated=None):
        docs = tmp_path / "docs"
        docs.mkdir(exist_ok=True)
        (docs / "try.md").write_text(HEAD + text, encoding="utf-8")
        (docs / whole.STEP_LIST).write_text(listed, encoding="utf-8")
        config = tmp_path / "mkdocs.yml"
        config.write_text(nav, encoding="utf-8")
        page = reading.read_page(docs / "try.md", tmp_path)
        assert page.faults == []
        return [str(one) for one in whole.check_book([page], docs, generated or {}, config, tmp_path)]

    return check


STEPS = "```steps\n- id: one\n  do: Look.\n```\n"


def test_a_good_book_has_no_fault(book):
    assert (
        book(
            "## A part\n\nSee [it](#a-part), [one](#one), [there](made.md#here).\n\n" + STEPS,
            "one\n",
            generated={"made.md": "## Here\n"},
        )
        == []
    )


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("See [it](#moon).\n", "docs/try.md:8:10: ANCHOR there is no moon on that page"),
        ("See [it](try.md#moon).\n", "docs/try.md:8:10: ANCHOR there is no moon"),
        ("See [it](made.md#moon).\n", "docs/try.md:8:10: ANCHOR there is no moon"),
        (
            "```terms\n- term: board\n  means: Gypsum.\n  see: [moon.md]\n```\n",
            "docs/try.md:11:8: LINK moon.md leads nowhere",
        ),
    ],
)
def test_a_link_to_a_place_that_is_not_there(book, text, says):
    assert any(says in one for one in book(text, generated={"made.md": "## Here\n"}))


def test_a_page_that_the_navigation_does_not_name(book):
    assert book("Words.\n", nav="nav:\n  - Other: other.md\n") == [
        "docs/try.md:1:1: NAV no line of mkdocs.yml names this page"
    ]


def test_a_step_that_is_gone_and_one_that_is_new(book):
    assert book(STEPS, "one\ntwo\n") == [
        "docs/step-ids.txt:2:1: STEP-GONE the step two is gone; give its id to the step that took its place, as was: [two]"
    ]
    assert book(STEPS, "") == ["docs/try.md:9:3: STEP-GONE the step one is new; add a line one to docs/step-ids.txt"]
    assert book(STEPS.replace("  do:", "  was: [two]\n  do:"), "one\ntwo\n") == []


def test_a_source_that_nothing_cites(monkeypatch):
    found = build.read_all()
    extra = sources.Source("moon", "Moon", "Nobody", "", "", "A figure.", "memory", "")
    monkeypatch.setattr("calc.evidence.sources.SOURCES", (*sources.SOURCES, extra))
    monkeypatch.setattr("calc.evidence.published.__file__", __file__)
    told = whole.unused_sources(found, build.ROOT)
    assert [(one.code, one.message) for one in told] == [("UNUSED", "nothing cites the source moon")]


def test_every_step_of_the_book_is_on_the_list_once():
    listed = (build.DOCS / whole.STEP_LIST).read_text(encoding="utf-8").split()
    assert len(listed) == len(set(listed)) > 400


@pytest.mark.parametrize("name", figures.FIGURES)
def test_a_drawing_can_be_read(name):
    assert figures.faults(figures.FIGURES[name]()) == []


def test_lettering_that_cannot_be_read_is_told():
    good = figures.knife_angle()
    crowded = figures.drawn(
        "Try",
        good.description,
        48,
        26,
        [],
        [figures.tag(20, 10, "One word", "on"), figures.tag(21, 10, "Another", "on")],
    )
    assert figures.faults(crowded) == ["the lettering “Another” covers “One word”"]
    outside = figures.drawn("Try", "Too short.", 48, 26, [], [figures.tag(47, 10, "Far too long for it", "on")])
    assert figures.faults(outside) == [
        "the lettering “Far too long for it” leaves the sheet",
        "the text form says too little",
    ]


def test_every_drawing_stands_on_a_page():
    used = {block.data.use for page in build.read_all() for block in page.blocks if block.kind == "figure"}
    used |= {
        step.figure
        for page in build.read_all()
        for block in page.blocks
        if block.kind == "steps"
        for step in block.data.root
        if getattr(step, "figure", None)
    }
    used |= {
        f"way-{path.stem}{size}" for path in (build.DOCS / "methods").glob("*.md") for size in ("", "-small")
    }  # heads, cover
    assert used == set(figures.FIGURES)


def test_the_index_of_the_search_leads_to_places_that_are_there():
    found = build.read_all()
    index = json.loads(search.index(found, build.DOCS))
    known = {search.url_of(page.path.relative_to(build.DOCS).as_posix()): addresses.anchors(page) for page in found}
    for url, title, kind, text in index["entries"]:
        page, _, anchor = url.partition("#")
        assert page in known and (not anchor or anchor in known[page]), url
        assert (
            title
            and text
            and kind in ("way", "task", "guide", "reference", "section", "trouble", "word", "form", "step")
        )
    for word in ("popcorn", "cottage cheese", "acoustic", "stipple", "mud", "drywall", "plasterboard"):
        assert index["also"][word]
    for urls in index["see"].values():
        assert set(urls) <= set(known) | {search.url_of(path) for path in pages.GENERATED}


def test_every_way_has_its_screen_to_send():
    for way in customer.AMOUNTS:
        text = build.expected_html(f"to/{way}.md").read_text(encoding="utf-8")
        assert (
            text.index("Sprayed texture may hold asbestos") < text.index('class="screen"') < text.index('id="takeoff"')
        )
        for asked in ("Disturbs", "Takes", "Leaves", "Your room"):
            assert f"<dt>{asked}</dt>" in text


def test_the_page_of_troubles_has_each_of_them():
    text = build.expected_html("reference/trouble.md").read_text(encoding="utf-8")
    count = sum(len(block.data.root) for page in build.read_all() for block in page.blocks if block.kind == "trouble")
    assert text.count("<b>Cure:</b>") == count >= 90


def test_a_way_and_a_task_say_when_they_were_reviewed_and_how_their_facts_stand():
    for page in build.read_all():
        text = build.expected_html(page.path.relative_to(build.DOCS).as_posix()).read_text(encoding="utf-8")
        assert f'<time datetime="{page.head.reviewed}">' in text
        assert page.head.facts
