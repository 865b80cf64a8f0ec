"""A firm's edition: each fault of its file where it stands, no caution taken away, nothing hostile let through, and nothing else changed."""

import filecmp
import html
import json
import re
import shutil
import subprocess
import sys
from html.parser import HTMLParser
from pathlib import Path

import jinja2
import pytest
import yaml

from calc.evidence.cautions import CAUTIONS
from calc.job.prices import PRICES
from handbook import build
from handbook.content.faults import ContentFaults
from handbook.content.reading import read_page
from handbook.engines import packing
from handbook.firm import colors, declared, edition, kept, mark, own_pages, read
from handbook.make import cautions, pages

ROOT = build.ROOT
SAMPLE = ROOT / "docs" / "firm"
# Six lines that every firm.yml has; what a test adds begins in line 7.
LEAST = (
    "business:\n  name: Example Ceilings\n  phone: +1 555 0100\n  area: Example County\nreviewed: 2026-11-01\n# more\n"
)
HOSTILE = (
    "<script>alert(1)</script>", "</script><script>alert(1)</script>", '"><img src=x onerror=alert(1)>', "' onmouseover='alert(1)", "{{ 7*7 }}{% raw %}",
    "]]></style><b>", "&lt;b&gt; & co", "\\u003cb\\u003e", "Decken 😀 & Söhne", "שלום תקרות", "=1+1", "-- #1: a, b", "W" * 60,
)  # fmt: skip


@pytest.fixture
def firm(tmp_path):
    """Return a function that reads a file with `more` in it, beside `files`; the faults come back as they are printed."""

    def tried(more="", files=None, whole=None):
        for name, text in (files or {}).items():
            (tmp_path / name).write_text(text, encoding="utf-8")
        path = tmp_path / "firm.yml"
        path.write_text(LEAST + more if whole is None else whole, encoding="utf-8")
        try:
            return edition.read_firm(path, "firm.yml", build.DOCS, set(pages.GENERATED)), []
        except ContentFaults as faults:
            return None, str(faults).splitlines()

    return tried


@pytest.fixture(scope="module")
def laid_out(tmp_path_factory):
    """The sample's edition, laid out and not yet built."""
    folder = tmp_path_factory.mktemp("edition") / "firm"
    sample = edition.read_firm(SAMPLE / "firm.yml", "docs/firm/firm.yml", build.DOCS, set(pages.GENERATED))
    edition.lay_out(sample, ROOT, folder, build.CACHE)
    return sample, folder


# The file.


def test_the_least_and_the_sample_have_no_fault(firm):
    assert firm()[1] == []
    text = (SAMPLE / "firm.yml").read_text(encoding="utf-8")
    known = {name for model in _models(declared.FirmFile) for name in _keys(model)}
    for name in known:
        assert re.search(rf"^[ -]*{name}:", text, re.MULTILINE), name
    assert "made up" in text


def _models(model):
    inner = [read._model_in(one.annotation) for one in model.model_fields.values()]
    return [model, *[found for one in inner if one for found in _models(one)]]


def _keys(model):
    return [one.alias or name for name, one in model.model_fields.items()]


def test_every_key_of_the_sample_is_explained():
    rows = (SAMPLE / "firm.yml").read_text(encoding="utf-8").splitlines()
    told = set()
    for row in rows:
        key = re.match(r"^[ -]*([a-z_]+):", row)
        if key and "#" in row:
            told.add(key.group(1))
    plain = {
        "from",
        "date",
        "amount",
        "price",
        "hazard",
        "consequence",
        "avoidance",
        "file",
        "section",
        "id",
        "place",
        "says",
        "ask",
        "source",
        "review_by",
    }
    known = {name for model in _models(declared.FirmFile) for name in _keys(model)}
    assert known - told <= plain | {"reviewed"}
    assert "with its day, and where it is from" in "\n".join(rows)


@pytest.mark.parametrize(
    ("change", "fits"),
    [
        (lambda told: None, True),
        (lambda told: told["business"].pop("name"), False),
        (lambda told: told["business"].update(name=""), False),
        (lambda told: told.update(colours={}), False),
        (lambda told: told["colors"].update(accent_light="red"), False),
        (lambda told: told["prices"].update(gold={"price": "1", "date": "2026-11-01", "from": "us"}), False),
        (lambda told: told["defaults"].update(asbestos_result="none"), False),
        (lambda told: told["cautions"][0].update(signal="DANGEROUS"), False),
        (lambda told: told.update(units="cubits"), False),
    ],
)
def test_the_schema_takes_what_the_reader_takes(firm, change, fits):
    told = yaml.load((SAMPLE / "firm.yml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    change(told)
    script = (
        "const [schema, told, ajv] = JSON.parse(require('fs').readFileSync(0, 'utf8'));"
        "import(ajv).then(({ default: Ajv }) => { const one = new (Ajv.default ?? Ajv)({ strict: false, formats: { date: true } });"
        "console.log(one.compile(schema)(told)); });"
    )
    given = json.dumps([json.loads(declared.schema()), told, (packing.MODULES / "ajv" / "dist" / "2020.js").as_uri()])
    done = subprocess.run([packing.node(), "-e", script], input=given, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == ("true" if fits else "false")
    files = {path.name: path.read_text(encoding="utf-8") for path in SAMPLE.iterdir() if path.is_file()}
    _, faults = firm(whole=yaml.safe_dump(told, allow_unicode=True), files=files)
    assert (faults == []) == fits


FAULTS = [
    ("colours:\n  accent: red\n", "firm.yml:7:1: FIRM-KEY there is no key colours. Use business, reviewed, colors"),
    ("units: cubits\n", "firm.yml:7:8: FIRM-VALUE units: “cubits” will not do, it is not one of these. customary or metric. Like: units: customary"),
    ("units: metric\nunits: metric\n", "firm.yml:8:1: FIRM-KEY units is given twice"),
    ("colors:\n  accent_light: red\n  accent_dark: '#8fd3c8'\n", "firm.yml:8:17: FIRM-VALUE colors.accent_light: “red” will not do"),
    ("colors:\n  accent_light: 'url(x);'\n  accent_dark: '#8fd3c8'\n", "firm.yml:8:17: FIRM-VALUE colors.accent_light"),
    ("colors:\n  accent_light: '#8fd3c8'\n  accent_dark: '#8fd3c8'\n", "firm.yml:8:17: FIRM-COLOR colors.accent_light: “#8fd3c8” will not do, it has 1.6"),
    ("colors:\n  accent_light: '#1f5a54'\n  accent_dark: '#1f5a54'\n", "firm.yml:9:16: FIRM-COLOR colors.accent_dark"),
    ("colors:\n  accent_light: '#b3121d'\n  accent_dark: '#8fd3c8'\n", "it would be taken for DANGER"),
    ("colors:\n  accent_light: '#1f5a54'\n", "firm.yml:8:3: FIRM-KEY colors.accent_dark is missing. A color as # and six digits"),
    ("mark: gone.svg\n", "firm.yml:7:7: FIRM-MARK mark: “gone.svg” will not do, there is no such SVG file beside firm.yml"),
    ("mark: ../mark.svg\n", "firm.yml:7:7: FIRM-VALUE mark"),
    ("rates:\n  rate_per_hour: {amount: lots, date: 2026-11-01, from: our list}\n", "firm.yml:8:27: FIRM-FIELD rates.rate_per_hour.amount: What an hour of work costs: “lots” will not do"),
    ("rates:\n  rate_per_hour: {amount: 65, from: our list}\n", "firm.yml:8:18: FIRM-KEY rates.rate_per_hour.date is missing. A day as year, month, day"),
    ("rates:\n  rate_per_day: {amount: 65, date: 2026-11-01, from: us}\n", "firm.yml:8:3: FIRM-FIELD rates.rate_per_day: rate_per_day is no rate"),
    ("prices:\n  gold: {price: 1, date: 2026-11-01, from: us}\n", "firm.yml:8:3: FIRM-FIELD prices.gold: gold is no material or fee of the shopping list. Use floor-film"),
    ("prices:\n  paint: {price: 12 a mile, date: 2026-11-01, from: us}\n", "firm.yml:8:18: FIRM-PRICE prices.paint.price: “paint: 12 a mile, 2026-11-01, us”: ceiling paint is paid for by the can, gal"),
    ("prices:\n  paint: {price: '12; tax: 0 %', date: 2026-11-01, from: us}\n", "firm.yml:8:18: FIRM-PRICE prices.paint.price: “12; tax: 0 %” will not do, it holds a comma or a semicolon"),
    ("prices:\n  paint: {price: 12, date: 2026-11-01, from: 'us; tax: 0 %'}\n", "firm.yml:8:46: FIRM-VALUE prices.paint.from"),
    ("prices:\n  paint: {price: 12, date: 1793491200, from: us}\n", "firm.yml:8:28: FIRM-VALUE prices.paint.date: “1793491200” will not do, it is no day"),
    ("prices:\n  paint: {price: 12, date: 2026-02-30, from: us}\n", "firm.yml:8:28: FIRM-VALUE prices.paint.date: “2026-02-30” will not do, it is no day"),
    ("prices:\n  paint: {price: 12, date: 2999-01-01, from: us}\n", "firm.yml:8:28: FIRM-VALUE prices.paint.date: “2999-01-01” will not do, it lies ahead"),
    ("defaults:\n  people: 9\n", "firm.yml:8:11: FIRM-FIELD defaults.people: People at work: “9” will not do, it is too large. Give a whole number from 1 to 6. Like: people: 2"),
    ("defaults:\n  board_thickness_in: 3/4\n", "firm.yml:8:23: FIRM-FIELD defaults.board_thickness_in: New board cannot be “3/4”"),
    ("defaults:\n  people: ''\n", "firm.yml:8:11: FIRM-FIELD defaults.people: it is empty"),
    ("defaults:\n  laboratory_days_low: 12\n", "firm.yml:8:24: FIRM-FIELD defaults.laboratory_days_low: The laboratory takes 12 days at the soonest and 10 at the latest"),
    ("defaults:\n  asbestos_result: none\n", "firm.yml:8:3: FIRM-FIELD defaults.asbestos_result: asbestos_result is not a firm's to set"),
    ("defaults:\n  load_limit_psf: 20\n", "firm.yml:8:3: FIRM-FIELD defaults.load_limit_psf: load_limit_psf is not a firm's to set"),
    ("defaults:\n  peeple: 2\n", "firm.yml:8:3: FIRM-FIELD defaults.peeple: peeple is no field of a calculator. Use people"),
    ("pages:\n  leave_out: [prepare/choose.md]\n", "firm.yml:8:15: FIRM-PAGE pages.leave_out.1: “prepare/choose.md” will not do, every page leads there, so it stays. Those that may go are after/inspect.md, finish/"),
    ("pages:\n  leave_out: [prepare/settle.md]\n", "firm.yml:8:15: FIRM-PAGE pages.leave_out.1: “prepare/settle.md” will not do, asbestos and lead are settled there, whichever way the work goes, so it stays"),
    ("pages:\n  leave_out: [methods/licensed-removal.md]\n", "it is the way that is left where asbestos was found, so it stays"),
    ("pages:\n  leave_out: [finish/dry.md, finish/dry.md]\n", "firm.yml:8:30: FIRM-PAGE pages.leave_out.2: “finish/dry.md” will not do, it is left out already"),
    ("pages:\n  leave_out: [moon.md]\n", "there is no such page. Those that may go are after/inspect.md, finish/crown.md"),
    ("pages:\n  replace: {moon.md: ours.md}\n", "firm.yml:8:13: FIRM-PAGE pages.replace: there is no page moon.md"),
    ("pages:\n  replace: {after/inspect.md: ours.md}\n", "firm.yml:8:31: FIRM-FILE pages.replace.after/inspect.md: “ours.md” will not do, there is no such file beside firm.yml"),
    ("pages:\n  add: [{file: ../ours.md, section: After}]\n", "firm.yml:8:16: FIRM-VALUE pages.add.1.file"),
    ("pages:\n  add: [{file: ours.md, section: Ways}]\n", "firm.yml:8:34: FIRM-VALUE pages.add.1.section: “Ways” will not do"),
    ("cautions:\n  - {id: a-b}\n", "firm.yml:8:5: FIRM-KEY cautions.1.signal is missing. DANGER, WARNING, CAUTION or NOTICE. Like: signal: CAUTION"),
    ("local_rules: many\n", "firm.yml:7:14: FIRM-VALUE local_rules"),
    ("business2: {}\n", "firm.yml:7:1: FIRM-KEY there is no key business2"),
    ("defaults: &a\n  people: 2\n", "firm.yml:7:11: FIRM-YAML a value that stands for another"),
    ("defaults: !!python/object:os.system {}\n", "firm.yml:7:11: FIRM-YAML a value that stands for another (&, *) or for a type (!) is not taken"),
    ("defaults: {people: 2\n", "FIRM-YAML this is not YAML"),
    ("\t\n", "FIRM-YAML this is not YAML"),
]  # fmt: skip


@pytest.mark.parametrize(("more", "told"), FAULTS)
def test_a_fault_is_told_where_it_stands(firm, more, told):
    found, faults = firm(more)
    assert found is None
    assert any(told in fault for fault in faults), faults
    assert all(re.match(r"firm\.yml:\d+:\d+: FIRM-[A-Z]+ ", fault) for fault in faults), faults


def test_all_faults_come_at_once(firm):
    more = "units: cubits\ncolors: {accent_light: red, accent_dark: blue}\n"
    assert len(firm(more)[1]) == 3
    both = (
        "units: cubits\ndefaults: {people: 9}\nmoon: 1\n"  # one of the form, one that a calculator tells, one unknown
    )
    assert [one.split(" ")[1] for one in firm(whole=LEAST.replace("name: Example Ceilings", "name: ''") + both)[1]] == [
        "FIRM-VALUE", "FIRM-VALUE", "FIRM-FIELD", "FIRM-KEY"
    ]  # fmt: skip
    more = "colors: {accent_light: '#8fd3c8', accent_dark: '#1f5a54'}\ndefaults: {people: 9, moon: 1}\npages:\n  leave_out: [index.md]\n"
    assert [one.split(" ")[1] for one in firm(more)[1]] == [
        "FIRM-COLOR",
        "FIRM-COLOR",
        "FIRM-FIELD",
        "FIRM-FIELD",
        "FIRM-PAGE",
    ]


def test_a_fault_is_one_line_whatever_was_given(firm):
    for more in (
        '"a\\nb": 1\n',
        'defaults: {"x\\u2028y": 1}\n',
        'units: "a\\nb"\n',
        'prices: {"a\\r\\nb": {price: 1, date: 2026-11-01, from: us}}\n',
    ):
        _, faults = firm(more)
        assert len(faults) == 1 and re.match(r"firm\.yml:\d+:\d+: FIRM-", faults[0]), faults


@pytest.mark.parametrize(
    "whole", ["", "- a\n", "text", "business: {}\n", "\x00", "a: " + "[" * 400 + "]" * 400, "a: &x [*x]\n"]
)
def test_what_is_no_such_file_is_told(firm, whole):
    found, faults = firm(whole=whole)
    assert found is None and faults


def test_a_file_that_is_not_there_is_told(tmp_path):
    with pytest.raises(ContentFaults, match=r"firm\.yml:1:1: FIRM-FILE there is no file firm\.yml"):
        edition.read_firm(tmp_path / "firm.yml", "firm.yml", build.DOCS, set())


def test_what_the_examples_of_the_schema_say_works(firm):
    """An example in a fault is one that works: each is put where its key stands."""
    for name, info in declared.FirmFile.model_fields.items():
        if "…" in info.examples[0] or name in ("business", "reviewed", "mark"):
            continue
        assert firm(f"{name}: {info.examples[0]}\n")[1] == [], name
    for key, info in declared.Business.model_fields.items():
        rows = LEAST.replace("  area: Example County\n", "").splitlines() if key == "area" else LEAST.splitlines()
        kept_rows = [row for row in rows if not row.startswith(f"  {key}:")]
        assert firm(whole="\n".join([kept_rows[0], f"  {key}: {info.examples[0]}", *kept_rows[1:], ""]))[1] == [], key


# Colors.


def test_contrast_is_that_of_the_standard():
    """Figures that are printed for WCAG 2: black on white 21, the grays on both sides of 4.5 to 1, and pure red on white."""
    assert colors.contrast("#000000", "#ffffff") == pytest.approx(21)
    assert colors.contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)
    assert colors.contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)
    assert colors.contrast("#ff0000", "#ffffff") == pytest.approx(4.0, abs=0.005)
    assert colors.contrast("#404040", "#ffffff") == pytest.approx(10.37, abs=0.005)
    assert colors.luminance("#0a0a0a") == pytest.approx(10 / 255 / 12.92)  # below the bend


@pytest.mark.parametrize(
    ("color", "paper"),
    [
        ("#8fd3c8", "#fbfaf7"),
        ("#777b00", "#fbfaf7"),
        ("#1f5a54", "#14161a"),
        ("#000000", "#14161a"),
        ("#3030ff", "#14161a"),
    ],
)
def test_the_nearest_color_passes_and_the_next_one_does_not(color, paper):
    found = colors.nearest(color, paper)
    assert colors.contrast(color, paper) < colors.LEAST <= colors.contrast(found, paper) < colors.LEAST + 0.2


def test_the_paper_is_that_of_the_book_and_its_plum_would_pass():
    style = (build.DOCS / "styles" / "paper.css").read_text(encoding="utf-8")
    for name, paper in colors.PAPER.items():
        assert f"--paper: {paper}" in style
        plum = next(one for one, key in edition.BOOK_PLUM.items() if key == name)
        assert f"--plum: {plum}" in style and colors.contrast(plum, paper) >= colors.LEAST
    for signal in colors.SIGNALS.values():
        assert signal in style


# The mark.

DRAWN = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">{}</svg>'
BAD_MARKS = [
    DRAWN.format("<script>alert(1)</script>"), DRAWN.format('<path d="M0 0" onload="alert(1)"/>'), DRAWN.format('<image href="https://example.org/a.png"/>'),
    DRAWN.format('<use href="#a"/>'), DRAWN.format("<foreignObject><b>x</b></foreignObject>"), DRAWN.format('<a href="https://example.org"><path d="M0 0"/></a>'),
    DRAWN.format("<style>@import url(https://example.org/a.css)</style>"), DRAWN.format('<path d="M0 0" style="fill:url(https://example.org)"/>'),
    DRAWN.format('<path d="M0 0" fill="url(https://example.org/a.svg#b)"/>'), DRAWN.format('<path d="M0 0" fill="url(#a) url(//example.org)"/>'),
    DRAWN.format('<animate attributeName="href" to="javascript:alert(1)"/>'), DRAWN.format('<set attributeName="onload" to="alert(1)"/>'),
    DRAWN.format('<path d="M0 0" xmlns:xlink="http://www.w3.org/1999/xlink" xlink:href="https://example.org"/>'), DRAWN.format('<text x="1">Ours</text>'),
    '<!DOCTYPE svg [<!ENTITY a "b">]>' + DRAWN.format("<title>&a;</title>"), '<!DOCTYPE svg SYSTEM "https://example.org/a.dtd">' + DRAWN.format(""),
    '<!DOCTYPE s [<!ENTITY % x SYSTEM "file:///etc/hostname"> %x;]>' + DRAWN.format(""), '<?xml-stylesheet href="https://example.org/a.css"?>' + DRAWN.format(""),
    '<svg viewBox="0 0 9 9"/>', '<svg xmlns="http://www.w3.org/2000/svg"/>', '<html xmlns="http://www.w3.org/1999/xhtml"/>', DRAWN.format("<path"), "", "PNG",
    DRAWN.format('<path d="M0 0&#10;" class="unseen"/>'), DRAWN.format("<!-- -->" * 7000),
]  # fmt: skip


@pytest.mark.parametrize("drawn", BAD_MARKS)
def test_a_mark_that_is_more_than_a_drawing_is_refused(firm, drawn):
    found, faults = firm("mark: ours.svg\n", {"ours.svg": drawn})
    assert found is None
    assert faults and all(re.match(r"ours\.svg:\d+:\d+: FIRM-MARK ", fault) for fault in faults), faults


def test_a_mark_of_shapes_is_taken_and_a_fault_in_one_has_its_place(firm):
    good = DRAWN.format(
        '<defs><linearGradient id="a"><stop offset="0.5" stop-color="#fff"/></linearGradient></defs><g transform="rotate(3)"><path d="M0 0l1-1" fill="url(#a)"/></g>'
    )
    assert firm("mark: ours.svg\n", {"ours.svg": good})[1] == []
    _, faults = firm("mark: ours.svg\n", {"ours.svg": DRAWN.format('\n  <path d="M0 0"/>\n  <script/>')})
    assert [fault.partition(" is no part")[0] for fault in faults] == ["ours.svg:3:3: FIRM-MARK <script>"]
    assert mark.faults(SAMPLE / "mark.svg", "mark.svg") == []


# No caution is removed, no stop weakened.

OWN = (
    "cautions:\n  - id: {id}\n    signal: NOTICE\n    hazard: {hazard}\n    consequence: It makes dust.\n    avoidance: Stay out of it.\n"
    "    from: Our rule\n    date: 2026-11-01\n    pages: [methods/wet-scrape.md]\n"
)


@pytest.mark.parametrize("caution_id", [one.id for one in CAUTIONS])
def test_no_caution_of_the_book_is_changed_under_its_name(firm, caution_id):
    _, faults = firm(OWN.format(id=caution_id, hazard="Nothing hurts here at all."))
    assert len(faults) == 1 and faults[0].startswith(
        f"firm.yml:8:9: FIRM-CAUTION cautions.1.id: {caution_id} is taken"
    ), faults


@pytest.mark.parametrize(
    "text", ["Your ceiling is safe with us.", "This work is exempt from rules.", "It holds no risk for you."]
)
def test_what_is_never_printed_is_refused_in_every_text(firm, text):
    assert any("FIRM-WORD cautions.1.hazard" in one for one in firm(OWN.format(id="ours", hazard=text))[1])
    whole = LEAST.replace("area: Example County", f"area: {text}\n  license: [{text}]")
    assert [one.split(" ")[2] for one in firm(whole=whole)[1]] == ["business.area:", "business.license.1:"]


def _replaced(firm, name, change):
    text = (build.DOCS / name).read_text(encoding="utf-8")
    changed = change(text)
    assert changed != text
    found, faults = firm(f"pages:\n  replace: {{{name}: ours.md}}\n", {"ours.md": changed})
    return faults if found is None else None


PLAIN = "```caution\nid: asbestos-first\n```"
WAY = "methods/wet-scrape.md"
TASK = "prepare/settle.md"
WEAKENED = [
    (WAY, lambda text: text.replace(PLAIN, "", 1), "FIRM-CAUTION the caution asbestos-first is missing at the head"),
    (WAY, lambda text: text.replace(PLAIN, "<!--\n\n" + PLAIN + "\n\n-->", 1), "FIRM-PAGE HTML beyond"),
    (WAY, lambda text: text.replace(PLAIN, "~~~\n\n" + PLAIN + "\n\n~~~", 1), "FIRM-PAGE a fence is one of the book's blocks"),
    (WAY, lambda text: text.replace(PLAIN, "```\n\n" + PLAIN + "\n\n```", 1), "FIRM-PAGE a fence is one of the book's blocks"),
    (WAY, lambda text: text.replace(PLAIN, "<div hidden>\n\n" + PLAIN + "\n\n</div>", 1), "FIRM-PAGE HTML beyond"),
    (WAY, lambda text: text.replace(PLAIN, '<div class="unseen">\n\n' + PLAIN + "\n\n</div>", 1), "FIRM-PAGE HTML beyond"),
    (WAY, lambda text: text.replace(PLAIN, "<details>\n\n" + PLAIN + "\n\n</details>", 1), "FIRM-PAGE HTML beyond"),
    (WAY, lambda text: text.replace(PLAIN, "<template>\n\n" + PLAIN, 1), "FIRM-PAGE HTML beyond"),
    (WAY, lambda text: text.replace(PLAIN, "<style>.alarm{display:none}</style>\n\n" + PLAIN, 1), "FIRM-PAGE HTML beyond"),
    (WAY, lambda text: text.replace(PLAIN, "<dl>\n\n" + PLAIN, 1), "FIRM-PAGE <dl> is opened"),
    (WAY, lambda text: text.replace(PLAIN, "", 1) + "\n" + PLAIN + "\n", "FIRM-CAUTION the caution asbestos-first is missing at the head"),
    (WAY, lambda text: text.replace("kind: way", "kind: reference", 1), "FIRM-PAGE the kind of this page is reference; the page that it replaces is a way"),
    (WAY, lambda text: re.sub(r"- hold: scrape-result\n  until: .*\n  know: .*\n", "", text), "FIRM-HOLD the hold point scrape-result is missing"),
    (WAY, lambda text: re.sub(r"(- hold: scrape-result\n  until: ).*", r"\1You feel like it.", text), "FIRM-HOLD the hold point scrape-result says something else"),
    (WAY, lambda text: text.replace("- hold: scrape-result", "- id: try-it\n  do: Scrape a little of it off.\n- hold: scrape-result", 1), "FIRM-HOLD a step that needs asbestos-first"),
    (TASK, lambda text: text.replace("id: local-rules", "id: fall-ladder"), "FIRM-CAUTION the caution local-rules is missing"),
    (TASK, lambda text: text + "\nThis ceiling is safe.\n", "WORD “is safe” is never printed"),
    (TASK, lambda text: text + "\n[Ours]( https://example.org )\n", "FIRM-PAGE a link is words and a page"),
    (TASK, lambda text: text + "\n[Ours](https://example.org/a)\n", "LINK https://example.org/a leads nowhere"),
    (TASK, lambda text: text + "\n[Ours][a]\n\n[a]: javascript:alert(1)\n", "FIRM-PAGE an address is written where its link stands"),
    (TASK, lambda text: text + "\n![x](https://example.org/a.png)\n", "FIRM-PAGE a picture is not taken"),
    (TASK, lambda text: text + "\nA word. {: hidden=hidden }\n", "FIRM-PAGE braces stand after a heading alone"),
    (TASK, lambda text: text + "\n<https://example.org>\n", "FIRM-PAGE HTML beyond"),
    (TASK, lambda text: text + "\nTake the \u202egnihton\u202c.\n", "FIRM-PAGE a mark that breaks or turns a line"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "change", "told"), WEAKENED)
def test_no_page_in_place_of_another_is_weaker(firm, name, change, told):
    faults = _replaced(firm, name, change)
    assert faults and any(told in one for one in faults), faults
    assert all(re.match(r"(ours\.md|firm\.yml):\d+:\d+: [A-Z-]+ ", one) for one in faults), faults


@pytest.mark.parametrize("name", [WAY, TASK, "after/inspect.md", "prepare/choose.md"])
def test_a_page_with_other_words_and_all_its_cautions_is_taken(firm, name):
    assert _replaced(firm, name, lambda text: text.replace("reviewed: 2026-11-26", "reviewed: 2026-11-01")) is None


def test_each_caution_of_each_page_is_missed_when_it_is_gone(firm):
    """Every page that somebody wrote, every caution block of it, one by one."""
    tried = 0
    for path in sorted(build.DOCS.glob("[mpaf]*/*.md")):
        name = path.relative_to(build.DOCS).as_posix()
        if name.startswith("firm/"):
            continue
        was = read_page(path, build.DOCS)
        for block in was.blocks:
            if block.kind == "caution":
                now = read_page(path, build.DOCS)
                now.blocks = [one for one in now.blocks if not (one.kind == "caution" and one.data.id == block.data.id)]
                own_pages._weakened(was, now)
                at_head = block in own_pages.at_head(was)
                if at_head or block.data.id not in cautions.every(now):
                    tried += 1
                    assert any(
                        fault.code == "FIRM-CAUTION" and block.data.id in fault.message for fault in now.faults
                    ), (name, block.data.id)
    assert tried > 60


def test_a_caution_out_of_sight_is_missed_on_the_finished_page(tmp_path):
    """What the source holds and no reader sees: in a comment, in code, hidden, in a template."""
    caution, hold = '<div class="alarm" data-caution="asbestos-first"></div>', '<li class="hold" id="result"></li>'
    page = "---\ntitle: T\nkind: task\nsummary: S\nreviewed: 2026-11-01\nfacts: F\n---\n\n# T\n\n```caution\nid: asbestos-first\n```\n\n```steps\n- hold: result\n  until: It is.\n  know: So.\n```\n"
    docs, site = tmp_path / "docs", tmp_path / "site"
    docs.mkdir(), (site / "t").mkdir(parents=True)
    (docs / "t.md").write_text(page, encoding="utf-8")
    for inside, missed in (
        ("{}", 0), ("<div>{}</div>", 0), ("<div hidden>{}</div>", 2), ("<!-- {} -->", 2), ("<pre>{}</pre>", 2), ("<template>{}</template>", 2),
        ('<p class="unseen">{}</p>', 2), ("<br hidden>{}", 0), ("<div hidden><p></p>{}</div>", 2), ("<script>{}</script>", 2),
    ):  # fmt: skip
        (site / "t" / "index.html").write_text(inside.format(caution + hold), encoding="utf-8")
        found = kept.faults(own_pages.OwnPages(written_in={"t.md": "ours.md"}), docs, site)
        assert len(found) == missed, inside
        assert all(one.path == "ours.md" for one in found)


# What comes out.


class Tags(HTMLParser):
    def __init__(self):
        super().__init__()
        self.tags, self.text, self.inside = [], [], ""

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, tuple(sorted(name for name, _ in attrs))))
        self.inside = tag

    def handle_data(self, data):
        self.text.append((self.inside, data))


def rendered(
    firm_told, title="Try", kind="home", content='<section class="calc"><input name="people"></section>', address=""
):
    """The page template with what it is given by MkDocs, without the book round it."""
    environment = jinja2.Environment(loader=jinja2.FileSystemLoader(build.DOCS / "theme"))
    environment.filters["url"] = str
    config = {
        "site_name": firm_told["name"] if firm_told else "Lidbook",
        "site_description": "About",
        "site_url": address,
        "extra": {"assets": "a/", "firm": firm_told, "engines": {"small_needs": {}}, "edition": {}},
    }
    page = {
        "meta": {
            "title": title,
            "kind": kind,
            "summary": title,
            "facts": title,
            "before": {"title": title, "url": "x"},
        },
        "content": content,
        "url": "a/b/",
        "canonical_url": address and address + "a/b/",
    }
    return environment.get_template("main.html").render(config=config, page=page, nav=[])


def told_of(name):
    values = {"people": {"text": "3", "date": "2026-11-01", "where": name}}
    return {
        "name": name,
        "phone": "+1 555 0100",
        "dial": "+15550100",
        "license": [name],
        "area": name,
        "mark": True,
        "values": values,
    }


@pytest.mark.parametrize("kind", ["home", "way", "screen", "task"])
@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_name_stays_text_on_a_page(name, kind):
    plain, hostile = Tags(), Tags()
    plain.feed(rendered(told_of("Plain"), kind=kind))
    text = rendered(told_of(name), title=name, kind=kind)
    hostile.feed(text)
    assert hostile.tags == plain.tags
    assert [data for tag, data in hostile.text if tag == "bdi"].count(name) >= 3
    told = next(data for tag, data in hostile.text if tag == "script" and '"values"' in data)
    assert json.loads(told) == {"name": name, "values": told_of(name)["values"]}
    assert "<" not in told and html.escape(name) in html.escape(html.unescape(text))


def test_a_book_that_is_nobodys_tells_of_no_firm():
    text = rendered(None)
    assert "firm" not in text and "Edition of" not in text


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_name_stays_text_in_every_file(firm, tmp_path, name):
    whole = yaml.safe_dump(
        {"business": {"name": name, "phone": "+1 555 0100", "area": name, "license": [name]}, "reviewed": "2026-11-01"},
        allow_unicode=True,
    )
    found, faults = firm(whole=whole)
    assert faults == []
    folder = tmp_path / "edition"
    for part in ("docs/assets", "docs/theme", "docs/styles"):
        shutil.copytree(ROOT / part, folder / part)
    shutil.copyfile(ROOT / "mkdocs.yml", folder / "mkdocs.yml")
    edition._paint(found, folder / "docs")
    edition._name(found, folder)
    assert json.loads((folder / "docs/assets/book.webmanifest").read_text(encoding="utf-8"))["name"] == name
    assert json.loads((folder / edition.TOLD).read_text(encoding="utf-8"))["area"] == name
    config = yaml.safe_load((folder / "mkdocs.yml").read_text(encoding="utf-8"))
    assert (
        config["site_name"] == name
        and config["theme"] == yaml.safe_load((ROOT / "mkdocs.yml").read_text(encoding="utf-8"))["theme"]
    )
    for style in (folder / "docs/styles").iterdir():
        assert name not in style.read_text(encoding="utf-8")


@pytest.mark.parametrize("mark_", ["\u202e", "\u2066", "\n", "\x00", "\x1b", "\u2028"])
def test_a_mark_that_turns_or_breaks_a_line_is_refused(firm, mark_):
    whole = LEAST.replace("name: Example Ceilings", 'name: "Ex' + "\\u" + f"{ord(mark_):04x}" + 'ample"')
    assert any("FIRM-VALUE business.name" in one for one in firm(whole=whole)[1])


# The second edition.


def test_an_edition_differs_from_the_book_only_where_it_should(laid_out):
    _, folder = laid_out
    changed, new, gone = set(), set(), set()
    for part in ("docs", "calc", "scripts/handbook"):
        ours = {
            path.relative_to(ROOT).as_posix()
            for path in (ROOT / part).rglob("*")
            if path.is_file() and "__pycache__" not in path.parts
        }
        theirs = {path.relative_to(folder).as_posix() for path in (folder / part).rglob("*") if path.is_file()}
        new |= theirs - ours
        gone |= ours - theirs
        changed |= {name for name in ours & theirs if not filecmp.cmp(ROOT / name, folder / name, shallow=False)}
    assert gone == {"docs/reference/levels.md"}
    assert new == {"docs/assets/mark.svg", "docs/own/our-guarantee.md", "docs/own/our-crew.md"}
    assert changed == {
        "calc/evidence/local.py", "docs/after/inspect.md", "docs/after/clear-up.md", "docs/methods/wet-scrape.md", "docs/finish/smooth.md", "docs/reference/glossary.md",
        "docs/assets/book.webmanifest", "docs/assets/icon.svg", "docs/styles/paper.css", "docs/theme/404.html", "docs/step-ids.txt", "docs/words.txt",
    }  # fmt: skip


def test_colors_stand_where_the_books_stood(laid_out):
    _, folder = laid_out
    for name in ("docs/styles/paper.css", "docs/theme/404.html"):
        was, now = (ROOT / name).read_text(encoding="utf-8"), (folder / name).read_text(encoding="utf-8")
        assert was.count("#6a2c6f") and was.replace("#6a2c6f", "#1f5a54").replace("#dba6e2", "#8fd3c8") == now


def test_a_fault_in_a_firms_page_names_the_file_that_the_firm_wrote(laid_out):
    written_in = laid_out[0].pages.written_in
    assert written_in["own/our-crew.md"] == "docs/firm/our-crew.md"
    assert (
        edition.named("docs/own/our-crew.md:9:1: LINK x leads nowhere\n", written_in)
        == "docs/firm/our-crew.md:9:1: LINK x leads nowhere\n"
    )
    assert edition.named("docs/own/our-crew.mdx:9:1: LINK\n", written_in) == "docs/own/our-crew.mdx:9:1: LINK\n"


def test_the_command_tells_every_fault_and_builds_nothing(tmp_path, capsys):
    path = tmp_path / "firm.yml"
    path.write_text(LEAST + "units: cubits\nmoon: 1\n", encoding="utf-8")
    for command in (build.build_firm, build.check_firm):
        more = (tmp_path / "site",) if command is build.build_firm else ()
        assert command(path, *more, tmp_path / "edition") == 1
        told = capsys.readouterr().out
        assert ":7:8: FIRM-VALUE units" in told and ":8:1: FIRM-KEY there is no key moon" in told
    assert sorted(one.name for one in tmp_path.iterdir()) == ["firm.yml"]


def test_a_caution_is_added_after_those_that_stand_there(laid_out):
    _, folder = laid_out
    for name in ("methods/wet-scrape.md", "after/clear-up.md"):
        was, now = read_page(build.DOCS / name, build.DOCS), read_page(folder / "docs" / name, folder)
        ids = [block.data.id for block in own_pages.at_head(was)]
        assert [block.data.id for block in own_pages.at_head(now)] == [*ids, "our-van"]


def test_a_limit_of_a_place_holds_in_the_calculators_of_the_edition(laid_out):
    """On both sides of the edge, and in the choice of way; the proof that nothing opens too early is run over them too."""
    _, folder = laid_out
    script = (
        "import json, sys; from calc import catalogue; import proof\n"
        "item = lambda **given: [(one.state, one.sources) for one in catalogue.work_out('samples', given)[0].items if one.name.startswith('Example')]\n"
        "ask = dict(place='example co', building='house', texture_depth_in='0')\n"
        "told, _ = catalogue.work_out('decision', {'asbestos_result': 'found', 'place': 'Example County'})\n"
        "print(json.dumps([item(area_sqft='9.99', **ask), item(area_sqft='10', **ask), 'air office' in str(told), proof.violations()[0]]))"
    )
    environment = {"PYTHONPATH": f"{folder}:{ROOT / 'tests' / 'calc'}", "PYTHONDONTWRITEBYTECODE": "1"}
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, env=environment, cwd=folder, check=True
    )
    below, at, told, broken = json.loads(done.stdout)
    assert below == [["not reached", ["firm-example-county-area"]]]
    assert at == [["reached", ["firm-example-county-area"]]]
    assert told and broken == []


LIMIT = (
    "local_rules:\n  - {{id: a-b, place: {place}, building: house, limit: {limit}, unit: sqft, reached: at, says: The trigger is so much, ask: the office,"
    " source: A code, reviewed: 2026-11-01, review_by: {again}}}\n"
)


@pytest.mark.parametrize(
    ("place", "limit", "again", "told"),
    [
        ("Example", "32", "2027-11-01", ""), ("Example", "1/2", "2027-11-01", ""), ("Colorado", "9999", "2027-11-01", "the book has rules for Colorado already, and they stay"),
        ("USA", "9999", "2027-11-01", "it is no one place"), ("Elsewhere", "1", "2027-11-01", "it is no one place"), ("Example", "0", "2027-11-01", ""), ("Example", "1e9", "2027-11-01", "it is no plain number"), ("Example", "-1", "2027-11-01", "it is no plain number"),
        ("Example", "32", "2026-11-01", "it is not after the day"),
    ],
)  # fmt: skip
def test_a_limit_is_added_and_none_of_the_books_is_changed(firm, place, limit, again, told):
    _, faults = firm(LIMIT.format(place=place, limit=limit, again=again))
    assert (told == "" and faults == []) or (len(faults) == 1 and told in faults[0]), faults


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ("topic: lead", ""),
        ("topic: lead, building: any, unit: sqft", ""),
        ("topic: lead, building: house", "firm.yml:9:36: FIRM-PLACE local_rules.2.building: “house” will not do, a limit on lead holds for any building"),
        ("topic: lead, unit: cuft", "FIRM-PLACE local_rules.2.unit: “cuft” will not do"),
        ("topic: radon", "firm.yml:9:20: FIRM-VALUE local_rules.2.topic: “radon” will not do, it is not one of these. asbestos or lead. Like: topic: lead"),
        ("also: [One  place]", "firm.yml:9:20: FIRM-PLACE local_rules.2.also.1: “One place” will not do, One  place means One Place already"),
    ],
)  # fmt: skip
def test_a_limit_on_lead_holds_for_any_building_and_a_word_means_one_place(firm, more, told):
    first = LIMIT.format(place="One Place", limit="1", again="2027-11-01")
    rest = "place: Other Place, limit: 2, reached: above, says: The trigger is so much, ask: the office, source: A code"
    unit = "" if "unit" in more else ", unit: sqft"
    _, faults = firm(f"{first}  - {{id: b, {more}, {rest}{unit}, reviewed: 2026-11-01, review_by: 2027-11-01}}\n")
    assert (told == "" and faults == []) or (len(faults) == 1 and told in faults[0]), faults


def test_the_figures_of_a_firm_go_to_the_fields_with_day_and_place(firm):
    found, _ = firm(
        "units: metric\n"
        + (SAMPLE / "firm.yml")
        .read_text(encoding="utf-8")
        .partition("\nrates:")[2]
        .join(["rates:", ""])
        .partition("\npages:")[0]
        + "\n"
    )
    assert found.values["show_in"] == {"text": "metric", "date": "2026-11-01", "where": ""}
    assert found.values["rate_per_hour"] == {"text": "65", "date": "2026-11-01", "where": "our list"}
    prices = found.values["prices"]
    assert (
        "paint: 38.50 a gal, 2026-11-01, Example Supply" in prices["text"]
        and prices["date"] == "2026-07-01 to 2026-11-01"
    )
    assert PRICES.check(prices["text"]) == ()


def test_no_fact_about_a_ceiling_is_a_firms_to_set():
    """Nothing that a question, a load or a protection goes by is among a firm's usual values."""
    from calc.decision.questions import QUESTIONS
    from calc.decision.shared_figures import SHARED

    asked = {one.field.name for one in QUESTIONS} | {one.field.name for one in SHARED}
    assert not asked & set(declared.HABITS)
    for name in declared.HABITS:
        assert declared.fields_called(name), name
    assert not {
        "load_limit_psf",
        "insulation_psf",
        "air_changes_per_hour",
        "derate_pct",
        "bag_limit_lb",
        "overlap_in",
        "samples_taken",
        "rooms",
    } & set(declared.HABITS)


def test_the_sample_is_no_page_of_the_book():
    assert not [
        one
        for one in build.DOCS.joinpath("firm").glob("*.md")
        if one.stem in (ROOT / "mkdocs.yml").read_text(encoding="utf-8")
    ]
    assert Path(build.DOCS / "firm" / "firm.yml").exists()
