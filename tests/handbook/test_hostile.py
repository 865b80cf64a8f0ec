"""What must not run, load or lead off: each try is refused where it stands, or stands on the page as text."""

import copy
import datetime
import json
import re
import shutil
import subprocess
import sys
from html.parser import HTMLParser

import markdown
import pytest
import yaml

from handbook import build
from handbook.content.faults import ContentFaults
from handbook.content.reading import read_page
from handbook.firm import edition, figures, local, own_pages, read
from handbook.lint import checks
from handbook.make import blocks, front, pages
from handbook.make.folds import EXTENSIONS

ROOT = build.ROOT
SAMPLE = ROOT / "docs" / "firm"
TRIES = (
    "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", '"><svg onload=alert(1)>', "[Ours](javascript:alert(1))", "[Ours](data:text/html,x)", "javascript:alert(1)",
    "<iframe src=//example.org></iframe>", "<style>@import '//example.org';</style>", "<link rel=stylesheet href=//x.org>", "<base href=https://example.org/>",
    "<meta http-equiv=refresh content=0>", "&#60;script&#62;alert(1)&#60;/script&#62;", "&lt;img src=x onerror=y&gt;", "![Ours](https://example.org/a.png)",
    "[Ours]: https://example.org", "<https://example.org>", "<!-- Ours, and the rest -->", "<a href=//example.org>Ours</a>", "<form action=//example.org>",
    "</p></main><div hidden>", "{: onclick=alert(1) }", "{{ config }}{% raw %}", "`<b>` and **bold**", "<object data=//x.org>",
)  # fmt: skip


class Tags(HTMLParser):
    """The tags of a page with their attributes, and its words."""

    def __init__(self, text):
        super().__init__()
        self.tags, self.words, self.led, self.comments = [], "", [], []
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, tuple(sorted(name for name, _ in attrs))))
        self.led += [text or "" for name, text in attrs if name in ("href", "src", "action", "data", "srcset")]

    def handle_data(self, data):
        self.words += data

    def handle_comment(self, data):
        self.comments.append(data)


def leaves(value, where=()):
    """Every text of a file, by where it stands."""
    if isinstance(value, dict):
        for name, one in value.items():
            yield from leaves(one, (*where, name))
    elif isinstance(value, list):
        for at, one in enumerate(value):
            yield from leaves(one, (*where, at))
    else:
        yield where


# The file: which texts take such a thing at all. Each of them is looked at on the page below, or in `test_firm`.
TAKEN = {
    "business.name", "business.area", "business.license", "rates.from", "prices.from", "local_rules.place", "local_rules.also", "local_rules.says",
    "local_rules.ask", "local_rules.source", "cautions.hazard", "cautions.consequence", "cautions.avoidance", "cautions.from",
}  # fmt: skip


def test_each_text_of_the_file_refuses_it_or_is_one_that_the_page_escapes(tmp_path):
    for path in SAMPLE.iterdir():
        if path.is_file():
            shutil.copyfile(path, tmp_path / path.name)
    whole = yaml.load((SAMPLE / "firm.yml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    taken = {}
    for where in leaves(whole):
        for text in (TRIES[0], TRIES[5]):
            told = copy.deepcopy(whole)
            place = told
            for part in where[:-1]:
                place = place[part]
            place[where[-1]] = text
            (tmp_path / "firm.yml").write_text(yaml.safe_dump(told, allow_unicode=True, width=10_000), encoding="utf-8")
            says, reading = read.read(tmp_path / "firm.yml", "firm.yml")
            if not reading.faults:  # its form will do: then what looks into this part of it has the word
                if where[0] in ("rates", "prices", "defaults"):
                    figures.check(says, reading)
                elif where[0] in ("cautions", "local_rules"):
                    local.check(says, reading)
                if where[0] == "pages" or "pages" in where:
                    own_pages.check(says, reading, build.DOCS, set(pages.GENERATED))
            assert all(re.match(r"firm\.yml:\d+:\d+: FIRM-[A-Z]+ ", str(one)) for one in reading.faults), where
            if not reading.faults:
                key = [
                    part for part in where if isinstance(part, str) and part not in (*told["rates"], *told["prices"])
                ]
                taken.setdefault(".".join(key), set()).add(text)
    assert set(taken) == TAKEN, set(taken) ^ TAKEN


# The texts that are taken, on every page that tells them.

PRINTS = """
import json
from calc import catalogue
from calc.decision.questions import QUESTIONS
from calc.evidence.cautions import CAUTIONS
from calc.evidence.limits import PLACES
from calc.evidence.local import LIMITS
from calc.render import html
from handbook.content.reading import CalculatorBlock
from handbook.make import blocks, limits, pages
def answered(name, **given):
    answer, faults = catalogue.work_out(name, given)
    assert not faults, faults
    return html.answer(answer)
places = list(dict.fromkeys(row[1] for row in LIMITS))
parts = [pages.limits_page([]), pages.sources_page([]), pages.chart_page([]), limits.of_edition()]
parts += [html.caution(one) + html.short(one, True) for one in CAUTIONS if one.source.startswith("firm-")]
parts += [blocks.calculator_section(CalculatorBlock(use=name))[0] for name in ("samples", "lead", "decision")]
for place in places:
    parts += [answered("samples", area_sqft="280", place=place), answered("lead", disturbed_sqft="7", place=place),
              answered("decision", asbestos_result="found", place=place), answered("decision", asbestos_result="none", result_rooms="this", result_layers="all", paint_test="lead", place=place)]
print(json.dumps(parts))
"""


def printed(tmp_path, texts):
    """Every part of the book that tells of a firm's cautions and limits, where these are `texts`, as HTML."""
    rule = {
        "building": "any",
        "limit": "1",
        "unit": "sqft",
        "reached": "at",
        "reviewed": "2026-11-01",
        "review_by": "2027-11-01",
    }
    told = {
        "business": {"name": texts[0], "phone": "+1 555 0100", "area": "Here"},
        "reviewed": "2026-11-01",
        "local_rules": [
            {"id": f"a-{at}", "place": f"{at} {text}"[:60], "topic": ("asbestos", "lead")[at % 2], "says": f"It says {text}", "ask": text, "source": text, **rule}
            for at, text in enumerate(texts)
        ],
        "cautions": [
            {"id": f"b-{at}", "signal": "DANGER", "hazard": f"It is {text}", "consequence": f"It does {text}", "avoidance": f"Do not {text}", "from": text, "date": "2026-11-01", "pages": ["methods/sand.md"]}
            for at, text in enumerate(texts)
        ],
    }  # fmt: skip
    folder = tmp_path / f"edition-{len(texts[0])}"
    folder.mkdir()
    (folder / "firm.yml").write_text(yaml.safe_dump(told, allow_unicode=True), encoding="utf-8")
    firm = edition.read_firm(folder / "firm.yml", "firm.yml", build.DOCS, set(pages.GENERATED))
    shutil.copytree(ROOT / "calc", folder / "calc", ignore=shutil.ignore_patterns("__pycache__"))
    (folder / "calc" / local.MODULE).write_text(local.source(firm.says), encoding="utf-8")
    environment = {"PYTHONPATH": f"{folder}:{ROOT / 'scripts'}", "PYTHONDONTWRITEBYTECODE": "1"}
    done = subprocess.run([sys.executable, "-c", PRINTS], capture_output=True, text=True, env=environment, cwd=folder)
    assert done.returncode == 0, done.stderr
    made = [
        markdown.markdown(re.sub(r"\A---\n.*?\n---\n", "", one, flags=re.DOTALL), extensions=EXTENSIONS)
        for one in json.loads(done.stdout)
    ]
    return [Tags(one) for one in made]


def test_what_is_taken_stands_on_the_page_as_text_and_brings_no_tag(tmp_path):
    plain = printed(tmp_path, ["Some plain words"] * len(TRIES))
    hostile = printed(tmp_path, TRIES)
    assert len(plain) == len(hostile) > 50
    for was, now in zip(plain, hostile):
        assert sorted(now.tags) == sorted(was.tags)
        assert now.comments == was.comments == []
        assert not [one for one in now.led if re.match(r"(?i)\s*(?:javascript|data|vbscript):|//|https?:", one)]
    words = "".join(one.words for one in hostile)
    for text in TRIES:
        assert words.count(text) >= 8, text


# A firm's own page, and the book's.

HEAD = "---\ntitle: Ours\nkind: reference\nsummary: S\nreviewed: 2026-11-01\nfacts: F\n---\n\n# Ours\n\n"
PAGES = [
    *((text, "") for text in TRIES if text not in ("javascript:alert(1)", "&#60;script&#62;alert(1)&#60;/script&#62;", "&lt;img src=x onerror=y&gt;")),
    ("[Ours](java&#115;cript:alert(1))", "a link is words and a page"), ("[Ours](JaVaScRiPt:alert(1))", "LINK"), ("[Ours](vbscript:x)", "LINK"), ("[Ours](//example.org/a)", "LINK"),
    ("[Ours](\\\\example.org)", "a link is words and a page"), ("[Ours](https://example.org \"Ours\")", "a link is words and a page"), ("[Ours]( javascript:alert(1) )", "a link is words and a page"),
    ("[Ours][a]\n\n[a]: javascript:alert(1)", "an address is written where its link stands"), ("> [a]: javascript:alert(1)\n\n[Ours][a]", "an address is written"),
    ("- [a]: javascript:alert(1)\n\n[Ours][a]", "an address is written"), ("[a\nb]: javascript:alert(1)\n\n[Ours][a b]", "an address is written"),
    ("[]: javascript:alert(1)", "an address is written"), ("![Ours][a]\n\n[a]: https://example.org/a.png", "a picture is not taken"), ("![ Ours ](a.png)", "a picture is not taken"),
    ("<a@example.org>", "HTML beyond"), ("<p onclick=alert(1)>x</p>", "HTML beyond"), ("<div style=\"background:url(//example.org)\">x</div>", "HTML beyond"),
    ("<svg><foreignObject><b>x</b></foreignObject></svg>", "HTML beyond"), ("<ScRiPt>alert(1)</ScRiPt>", "HTML beyond"), ("<script\n>alert(1)</script\n>", "HTML beyond"),
    ("<details><summary>x</summary>y</details>", "HTML beyond"), ("<?php x ?>", "HTML beyond"), ("<![CDATA[x]]>", "HTML beyond"), ("    <b onclick=x>", "HTML beyond"),
    ("```html\n<script>alert(1)</script>\n```", "BLOCK there is no block called html"), ("~~~\n<script>alert(1)</script>\n~~~", "a fence is one of the book's blocks"),
    ("# Ours {: onclick=alert(1) }", "braces stand after a heading alone"), ("# Ours { #a onclick=alert(1) }", "braces stand after a heading alone"),
    ("\x02wzxhzdk:0\x03", "a mark that breaks or turns a line"), ("Take \u202eit\u202c off.", "a mark that breaks or turns a line"),
    ("```trouble\n- see: \"a\\u202eb\"\n  why: c\n  cure: d\n```", "a mark that breaks or turns a line"), ("```trouble\n- &a [*a]\n```", "a value that stands for another"),
    ("```trouble\n- !!python/object/apply:os.system [ls]\n```", "YAML"), ("```figure\nuse: <script>\n```", "FIGURE"), ("```calculator\nuse: <script>\n```", "CALCULATOR"),
    ("```caution\nid: <script>\n```", "CAUTION"), ("```sources\n- <script>\n```", "SOURCE"),
]  # fmt: skip


@pytest.fixture(scope="module")
def of_firm(tmp_path_factory):
    """The faults of each try as a page of a firm's, all in one file; spelling aside."""
    folder = tmp_path_factory.mktemp("firm")
    rows = []
    for at, (text, _) in enumerate(PAGES):
        (folder / f"ours-{at}.md").write_text(HEAD + text + "\n", encoding="utf-8")
        rows.append(f"    - {{file: ours-{at}.md, section: After}}\n")
    least = "business:\n  name: Example\n  phone: +1 555 0100\n  area: Here\nreviewed: 2026-11-01\npages:\n  add:\n"
    (folder / "firm.yml").write_text(least + "".join(rows), encoding="utf-8")
    with pytest.raises(ContentFaults) as told:
        edition.read_firm(folder / "firm.yml", "firm.yml", build.DOCS, set(pages.GENERATED))
    return by_page([str(one) for one in told.value.faults])


@pytest.fixture(scope="module")
def of_book(tmp_path_factory):
    """The same as pages of the book."""
    docs = tmp_path_factory.mktemp("book") / "docs"
    found = [
        read_page(page_at(docs, f"ours-{at}.md", HEAD + text + "\n"), docs.parent) for at, (text, _) in enumerate(PAGES)
    ]
    checks.check_pages(found, docs, set())
    return by_page([str(fault) for page in found for fault in page.faults])


def page_at(docs, name, text):
    path = docs / "after" / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


def by_page(faults):
    found = {}
    for one in faults:
        assert re.match(r"(?:docs/after/)?ours-\d+\.md:\d+:\d+: [A-Z-]+ ", one), one
        if not re.search(r": (?:SPELL|READING|TERM) ", one):
            found.setdefault(int(re.search(r"ours-(\d+)", one).group(1)), []).append(one)
    return found


@pytest.mark.parametrize("at", range(len(PAGES)))
def test_a_page_refuses_it_where_it_stands_be_it_a_firms_or_the_books(of_firm, of_book, at):
    text, told = PAGES[at]
    assert any(told in one for one in of_firm[at]), of_firm[at]
    if "<details>" not in text:  # the book folds
        assert any(told.replace("HTML beyond", "MARKUP HTML beyond") in one for one in of_book[at]), of_book[at]
    for faults in (of_firm[at], of_book.get(at, [])):
        assert all(int(one.split(":")[1]) > HEAD.count("\n") - 3 for one in faults), faults


def told_of_book(tmp_path, text):
    page = read_page(page_at(tmp_path / "docs", "ours.md", HEAD + text + "\n"), tmp_path)
    checks.check_pages([page], tmp_path / "docs", set())
    return [str(one) for one in page.faults]


@pytest.mark.parametrize("text", ['<a href="javascript:x">a</a>', '<a href="//example.org">a</a>', '<a href="https://example.org">a</a>', '<a href="/&#47;x">a</a>', '<span style="x">a</span>', '<input onfocus="x">', '<form action="//x">a</form>', '<li data-x="a">b</li>'])  # fmt: skip
def test_a_tag_of_the_book_holds_only_what_names_it_or_leads_within_the_book(tmp_path, text):
    assert any("MARKUP" in one for one in told_of_book(tmp_path, text))


def test_a_tag_of_the_book_names_its_class_and_leads_to_a_page(tmp_path):
    text = '<ul class="rest"><li id="a"><a href="../contents/#prepare">a</a> <span class="b">c</span></li></ul>'
    assert not [one for one in told_of_book(tmp_path, text) if "MARKUP" in one]


@pytest.mark.parametrize("text", [*TRIES, 'Our "way"\nkind: home', "a: b #c", "\\u003cb\\u003e"])
def test_the_head_of_a_page_that_nobody_writes_holds_a_title_as_it_is(text):
    head = front.head_of(text, text, "screen", "2026-11-01", text).split("---\n")[1]
    assert yaml.safe_load(head) == {
        "title": text,
        "kind": "screen",
        "summary": text,
        "reviewed": datetime.date(2026, 11, 1),
        "facts": text,
    }


def test_what_a_block_of_data_says_is_escaped(tmp_path):
    """Steps, hold points, troubles and words of the trade, as they come out of the generator."""
    for text in TRIES:
        said = json.dumps(text)
        written = HEAD + (
            f"```steps\n- id: a\n  do: {said}\n- hold: b\n  until: {said}\n  know: {said}\n```\n\n```trouble\n- see: {said}\n  why: {said}\n  cure: {said}\n```\n\n"
            f"```terms\n- term: {said}\n  means: {said}\n  also: [{said}]\n```\n"
        )
        page = read_page(page_at(tmp_path / "docs", "ours.md", written), tmp_path)
        assert page.faults == []
        found = Tags(markdown.markdown(blocks.finished(page), extensions=EXTENSIONS))
        assert {tag for tag, _ in found.tags} <= {
            "h1",
            "ol",
            "li",
            "label",
            "input",
            "span",
            "p",
            "b",
            "dl",
            "div",
            "dt",
            "dd",
        }
        assert found.words.count(text) >= 8 and found.comments == [], text
        assert not [one for _, names in found.tags for one in names if one.startswith("on")]
