"""The built site: every page, what calc answers, the stop before anything else, marks that lead somewhere."""

import base64
import hashlib
import json
import re
import subprocess
import sys
from html.parser import HTMLParser

import pytest

from calc import browser, catalogue
from calc.evidence import sources
from calc.render.escape import escaped
from calc.site.fixture_kinds import KINDS
from handbook import build
from handbook.engines import packing
from handbook.evidence import check_table, example
from handbook.firm import own_pages
from handbook.make import pages

SITE = build.SITE
WAY = SITE / "methods" / "skim-over" / "index.html"


@pytest.fixture(scope="module")
def way():
    assert WAY.exists(), "build the handbook first: python3 scripts/book.py build"
    return WAY.read_text(encoding="utf-8")


def test_every_expected_page_stands():
    written = list(own_pages.written(build.DOCS))
    for path in (*written, *pages.GENERATED):
        assert build.expected_html(path).exists(), path


def test_the_rows_of_evidence_are_printed_and_not_handed_out():
    files = {path.name for path in (build.DOCS / "evidence").rglob("*") if path.is_file()}
    assert len(files) > len(catalogue.NAMES)
    for folder in (build.FINISHED, SITE):
        assert folder.exists(), "build the handbook first: python3 scripts/book.py build"
        assert not files & {path.name for path in folder.rglob("*")}
        assert not (folder / "evidence").exists()


@pytest.fixture(scope="module")
def every_page():
    return {path: path.read_text(encoding="utf-8") for path in sorted(SITE.rglob("index.html"))}


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_the_printed_example_is_what_calc_answers(every_page, calculator):
    """Each calculator stands on a page, and one page at least prints the book's example byte for byte."""
    text = browser.answer(calculator.name, json.dumps(dict(example.inputs_of(calculator.name))))
    own = [page for page in every_page.values() if f' class="calc" id="{calculator.name}"' in page]
    assert own
    assert any(json.loads(text)["html"] in page for page in own)


def test_the_check_table_shows_every_figure_that_the_tests_ran_on():
    text = build.expected_html("reference/checks.md").read_text(encoding="utf-8")
    found = check_table.every_check()
    assert text.count("<td>agrees") == len(found)
    assert "DIFFERS" not in text
    for one in found:
        row = f"<td>{escaped(one.printed)}</td><td>{escaped(one.ours)}</td>"
        assert f"<code>{one.name}</code></td>{row}" in text, one


def test_the_stop_comes_before_the_explanation_the_forms_and_the_steps(way):
    stop = way.index("Sprayed texture may hold asbestos")
    for later in ('class="screen"', "<form", 'class="steps"', "<details"):
        assert stop < way.index(later)


def test_the_first_hold_point_is_the_result(way):
    first = re.search(r'<li class="(step|hold)" id="([^"]+)"', way)
    assert first.groups() == ("hold", "result-in-hand")


UNUSUAL = (
    {"texture_depth_in": "1", "area_sqft": "10"}, {"temperature_f": "33", "humidity_pct": "95"}, {"rooms": "1 x 1"}, {"surface": "bare"},
    {"surface": "texture"}, {"surface": "stained"}, {"fixing": "glue", "behind_tiles": "paint"}, {"fixing": "grid"}, {"results": "texture: 2"},
    {"results": "texture: 1"}, {"place": "Narnia"}, {"place": "US military property"}, {"building": "other"}, {"housing": "assisted"},
    {"paint_test": "lead"}, {"paint_test": "none"}, {"torn_out": "yes"}, {"year_built": "2000"}, {"paid_work": "no"}, {"finish_level": "5"},
    {"board_down_sqft": "10"}, {"burner_btu_per_h": "9000"}, {"floor": "film"}, {"ceiling_height_ft": "20"}, {"leaning_ladder_ft": "9"},
    {"rate_gal_per_100sqft": "20"}, {"texture_painted": "yes"},
    {"fixtures": "; ".join(kind.example for kind in KINDS)},
)  # fmt: skip


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_every_mark_leads_to_a_source_of_the_page(every_page, calculator):
    """The marks that stand there, and those that only other figures bring."""
    pages_with_it = [page for page in every_page.values() if f' class="calc" id="{calculator.name}"' in page]
    marks = set()
    names = [field.name for field in calculator.fields]
    for unusual in UNUSUAL:
        inputs = {name: text for name, text in unusual.items() if name in names}
        one_of = [name for name in calculator.one_of if name in inputs]
        example = {name: text for name, text in calculator.example if not one_of or name not in calculator.one_of}
        answered = json.loads(browser.answer(calculator.name, json.dumps(example | inputs)))
        marks |= set(re.findall(r'href="#(source-[^"]+)"', answered.get("html", "")))
    assert marks
    for page in pages_with_it:
        for mark in marks | set(re.findall(r'href="#(source-[^"]+)"', page)):
            assert f'id="{mark}"' in page, mark


def test_the_sources_page_lists_each_with_its_day():
    text = build.expected_html("reference/sources.md").read_text(encoding="utf-8")
    for one in sources.SOURCES:
        assert f'id="source-{one.id}"' in text
        assert one.checked_on in text
    assert "figure checked 2026-11-25" in text


def test_the_nomenclature_names_every_input_and_answer():
    text = build.expected_html("reference/nomenclature.md").read_text(encoding="utf-8")
    for calculator in catalogue.every():
        for name in [field.name for field in calculator.fields] + list(check_table.every_line(calculator)):
            assert f"<code>{name}</code>" in text, name


def test_every_number_has_one_symbol_of_its_own():
    numbers = set()
    for calculator in catalogue.every():
        numbers |= set(check_table.every_line(calculator))
        numbers |= {field.name for field in calculator.fields if field.kind not in ("rooms", "choice", "list", "text")}
    assert set(pages.SYMBOLS) == numbers
    assert len(set(pages.SYMBOLS.values())) == len(pages.SYMBOLS)


class Ids(HTMLParser):
    def __init__(self):
        super().__init__()
        self.ids = []

    def handle_starttag(self, tag, attrs):
        self.ids += [value for name, value in attrs if name == "id"]


@pytest.mark.parametrize("path", sorted(SITE.rglob("*.html")), ids=lambda path: path.relative_to(SITE).as_posix())
def test_an_id_stands_once_on_a_page_and_nothing_comes_from_elsewhere(path):
    text = path.read_text(encoding="utf-8")
    parser = Ids()
    parser.feed(text)
    assert len(parser.ids) == len(set(parser.ids))
    for attribute in re.findall(r'\b(?:src|href)="([^"]*)"', text):
        assert not attribute.startswith(("http:", "https:", "//")), attribute


def test_the_service_worker_keeps_pages_and_small_engine_and_the_full_one_only_once_used():
    text = (SITE / "sw.js").read_text(encoding="utf-8")
    told = json.loads(re.search(r"^const BOOK = (\{.*\});$", text, re.MULTILINE).group(1))
    files = {path.relative_to(SITE).as_posix(): path for path in SITE.rglob("*") if path.is_file()}
    assert all(path.relative_to(SITE).as_posix() in told["kept"] for path in SITE.rglob("*.html"))
    assert [name for name in told["kept"] if name.endswith("micropython.wasm")]
    assert not [name for name in told["kept"] if name.startswith("engine/full-")]
    assert {name.split("/")[-1] for name in told["later"]} >= {"pyodide.asm.wasm", "python_stdlib.zip"}
    for name, digest in (told["kept"] | told["later"]).items():
        assert hashlib.sha256(files[name].read_bytes()).hexdigest().startswith(digest), name
    assert not re.search(r"importScripts|https?:", text)


def test_every_page_has_a_policy_and_a_host_is_told_one_for_all_files():
    told = (SITE / "_headers").read_text(encoding="utf-8")
    assert told.startswith("/*\n") and "frame-ancestors 'none'" in told
    for path in SITE.rglob("*.html"):
        policy = re.search(r'http-equiv="Content-Security-Policy" content="([^"]*)"', path.read_text(encoding="utf-8"))
        assert policy, path
        assert {"default-src 'none'", "form-action 'none'", "base-uri 'none'"} <= set(policy.group(1).split("; ")), path
    lost = (SITE / "404.html").read_text(encoding="utf-8")
    style = hashlib.sha256(re.search("<style>(.*?)</style>", lost, re.DOTALL).group(1).encode()).digest()
    own = f"'sha256-{base64.b64encode(style).decode()}'"
    assert own in re.search('content="(default[^"]*)"', lost).group(1) and own in told


LOADED = "import sys; from calc import browser, catalogue; catalogue.find(sys.argv[1]); print(*[one for one in sys.modules if one.split('.')[0] == 'calc'])"


@pytest.fixture(scope="module")
def loaded():
    """By calculator: the modules that Python itself has loaded once the calculator is there."""
    found = {}
    for name in catalogue.NAMES:
        command = [sys.executable, "-c", LOADED, name]
        told = subprocess.run(command, cwd=packing.ROOT, capture_output=True, text=True, check=True).stdout
        found[name] = set(told.split())
    return found


def modules_in(part):
    """The modules in a part, without the folders' own."""
    head = json.loads((SITE / part).read_bytes().split(b"\n", 1)[0])
    paths = [path.removesuffix(".mpy") for path, _ in head if not path.endswith("__init__.mpy")]
    return {path.replace("/", ".") for path in paths}


def test_a_page_lists_the_parts_that_its_forms_need_and_no_other(every_page, loaded):
    told = json.loads(re.search(r'id="engines"[^>]*>(.*?)</script>', every_page[SITE / "index.html"]).group(1))
    parts = [modules_in(part) for part in told["small_parts"]]
    every = [module for part in parts for module in part]
    assert len(every) == len(set(every)), "no module is fetched twice"
    assert len(list((SITE / "engine").glob("calc-*.bin"))) == len(parts)
    left_out = {"calc", "calc.evidence.published", "calc.evidence.published_more"}  # their titles are in the register
    folders = {
        path.parent.relative_to(packing.ROOT).as_posix().replace("/", ".")
        for path in (packing.ROOT / "calc").rglob("__init__.py")
    }
    listing = 0
    for path, page in every_page.items():
        forms = re.findall(r'<(?:section|details) class="calc" id="([^"]+)"', page)
        listed = re.search(r'id="engines"(?: data-parts="([0-9 ]*)")?>', page).group(1)
        assert bool(forms) == bool(listed), path
        if not forms:
            continue
        listing += 1
        listed = [int(at) for at in listed.split()]
        needed = set().union(*[loaded[name] for name in forms])
        brought = set().union(*[parts[at] for at in listed])
        assert needed - folders - left_out <= brought, path
        assert listed[0] == 0 and all(parts[at] <= needed for at in listed[1:]), path
    assert listing


def test_a_file_that_is_packed_is_the_same_file():
    import gzip

    import brotli

    for path in [*SITE.rglob("*.br"), *SITE.rglob("*.gz")]:
        plain = path.with_suffix("")
        packed = path.read_bytes()
        if plain.stat().st_size < 1_000_000:
            assert (
                brotli.decompress(packed) if path.suffix == ".br" else gzip.decompress(packed)
            ) == plain.read_bytes()


def test_every_page_is_good_html():
    checker = packing.MODULES / "html-validate" / "bin" / "html-validate.mjs"
    pages_built = [str(path) for path in sorted(SITE.rglob("*.html"))]
    command = [packing.node(), str(checker), "--preset", "recommended", "--formatter", "text", *pages_built]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
