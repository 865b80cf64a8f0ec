"""Pages left out: each that may go goes alone and with others, nothing leads to one, and what keeps people from harm stays."""

import json
import posixpath
import re
import shutil
import subprocess
import sys
from urllib.parse import unquote, urlsplit

import pytest
import yaml

from handbook import build
from handbook.content.faults import ContentFaults
from handbook.firm import edition, own_pages
from handbook.make import pages

ROOT = build.ROOT
BOOK = list(own_pages.written(build.DOCS))
GO = own_pages.may_go(build.DOCS)
LINK = re.compile(r"\]\(([^)\s#]*)[^)]*\)|href=\"([^\"#]*)")
LEAST = "business:\n  name: Example Ceilings\n  phone: +1 555 0100\n  area: Example County\nreviewed: 2026-11-01\n"


def firm_without(folder, names, more=""):
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / "firm.yml"
    path.write_text(LEAST + f"pages:\n  leave_out: [{', '.join(names)}]\n{more}", encoding="utf-8")
    return edition.read_firm(path, "firm.yml", build.DOCS, set(pages.GENERATED))


def test_what_keeps_people_from_harm_stays_and_all_else_may_go(tmp_path):
    """All pages are asked for at once: each that stays says why, in words of its own."""
    with pytest.raises(ContentFaults) as told:
        firm_without(tmp_path, BOOK)
    why = {re.search(r"“(.+?)” will not do, (.+?), so it stays\.", one.message).groups() for one in told.value.faults}
    assert {name for name, _ in why} == set(BOOK) - set(GO)
    assert {
        "prepare/settle.md", "prepare/accident.md", "prepare/power-off.md", "prepare/cover.md", "prepare/reach.md", "prepare/choose.md", "after/clear-up.md",
        "methods/licensed-removal.md", "reference/trust.md", "index.md",
    } <= set(BOOK) - set(GO)  # fmt: skip
    assert len(GO) == 31 and len([name for name in GO if name.startswith("methods/")]) == 7
    assert {name for name in BOOK if name.startswith("finish/")} <= set(GO)


@pytest.fixture(scope="module")
def texts():
    """The written pages, and what the copy needs beside them."""
    return {name: path.read_text(encoding="utf-8") for name, path in own_pages.written(build.DOCS).items()}


def led_to(docs, names):
    """Each place of the pages in `docs` that leads to one of `names`."""
    found = []
    for path in docs.rglob("*.md"):
        text = path.read_text(encoding="utf-8")
        shown = path.relative_to(docs).as_posix()
        for link in LINK.finditer(text):
            goal = posixpath.normpath(posixpath.join(posixpath.dirname(shown), link.group(1) or ""))
            if link.group(1) and goal in names:
                found.append((shown, goal))
            way = re.search(r"(?:papers|to|methods)/([a-z-]+)/$", link.group(2) or "")
            if way and f"methods/{way.group(1)}.md" in names:
                found.append((shown, link.group(2)))
        for row in re.findall(r"^ *(?:see|to): .+$|^- way: .+$", text, re.MULTILINE):
            found += [
                (shown, name)
                for name in names
                if name in row or (name.startswith("methods/") and row == f"- way: {name[8:-3]}")
            ]
    return found


@pytest.mark.parametrize("name", [*GO, "finish", "three ways", "all that may go"])
def test_nothing_that_is_written_leads_to_a_page_that_is_left_out(tmp_path, texts, name):
    groups = {
        "finish": [one for one in GO if one.startswith("finish/")],
        "three ways": GO_WAYS[:3],
        "all that may go": GO,
    }
    names = groups.get(name, [name])
    firm = firm_without(tmp_path, names)
    docs = tmp_path / "docs"
    for path, text in texts.items():
        (docs / path).parent.mkdir(parents=True, exist_ok=True)
        (docs / path).write_text(text, encoding="utf-8")
    assert led_to(docs, names) or name not in groups
    edition._take_out(firm, docs)
    assert led_to(docs, names) == []
    for path, text in texts.items():  # words stay, and no block is hurt
        if path not in names and path not in ("index.md", "my-job.md"):
            now = (docs / path).read_text(encoding="utf-8")
            assert re.sub(r"\]\([^)]*\)|[\[\]]|see: .*", "", now) == re.sub(r"\]\([^)]*\)|[\[\]]|see: .*", "", text)
    index = (docs / "index.md").read_text(encoding="utf-8")
    assert ('id="finish"' in index) == (name not in ("finish", "all that may go")) and 'id="prepare"' in index


GO_WAYS = [name for name in GO if name.startswith("methods/")]


# One edition without most pages, built.

MANY = [name for name in GO if name.startswith(("finish/", "reference/"))] + ["methods/sand.md", "methods/dry-scrape.md", "methods/panel-over.md", "after/inspect.md", "prepare/bath.md"]  # fmt: skip


@pytest.fixture(scope="module")
def lean(tmp_path_factory):
    """An edition without the finish, three ways and more, in metric, built; its folder, and its site."""
    folder = tmp_path_factory.mktemp("lean")
    firm_without(folder, MANY, "units: metric\n")
    assert build.build_firm(folder / "firm.yml", folder / "site", folder / "edition") == 0
    return folder / "edition", folder / "site"


def addresses(text):
    """The addresses that a page leads to, and the places on it."""
    return set(re.findall(r'\b(?:href|src)="([^"]*)"', text)), set(re.findall(r'\bid="([^"]+)"', text))


@pytest.mark.slow
def test_no_page_of_the_built_edition_leads_to_one_that_is_missing(lean):
    _, site = lean
    found = {
        path.relative_to(site).as_posix().removesuffix("index.html"): addresses(path.read_text(encoding="utf-8"))
        for path in site.rglob("index.html")
    }
    looked = 0
    for page, (leads, _) in found.items():
        for one in leads:
            parts = urlsplit(one)
            if parts.scheme or one.startswith("data:"):
                continue
            goal = posixpath.normpath(posixpath.join("/" + page, unquote(parts.path))) if parts.path else "/" + page
            goal = goal.strip("/") + "/" if goal != "/" else ""
            looked += 1
            if goal.rstrip("/") and (site / goal.rstrip("/")).is_file():
                continue
            goal = page if not parts.path else goal
            assert goal in found, (page, one)
            anchor = parts.fragment.partition("?")[0]
            assert not anchor or anchor in found[goal][1] or anchor.startswith("source-"), (page, one)
    assert looked > 2000
    for entry in json.loads((site / "search.json").read_text(encoding="utf-8"))["entries"]:
        assert entry[0].partition("#")[0] in found, entry
    told = json.loads((site / "search.json").read_text(encoding="utf-8"))["see"]
    assert all(one in found for see in told.values() for one in see)


@pytest.mark.slow
def test_the_pages_that_are_left_out_stand_nowhere_and_the_others_do(lean):
    folder, site = lean
    for name in BOOK:
        stem = name.removesuffix(".md")
        assert (site / ("" if stem == "index" else stem) / "index.html").exists() == (name not in MANY), name
    for way in ("sand", "dry-scrape", "panel-over"):
        assert not (site / "to" / way).exists() and not (site / "papers" / way).exists()
    assert (site / "to" / "skim-over" / "index.html").exists()
    contents = (site / "contents" / "index.html").read_text(encoding="utf-8")
    assert (
        'id="finish"' not in contents
        and "Skim over: the steps" in contents
        and "Dry scrape into a vacuum: the steps" not in contents
    )
    assert "#finish" not in (site / "index.html").read_text(encoding="utf-8")
    assert [
        one
        for entry in yaml.safe_load((folder / "mkdocs.yml").read_text(encoding="utf-8"))["nav"]
        for one in entry
        if one == "Finish"
    ] == []
    assert 'data-screens="' in (site / "work-out" / "offer" / "index.html").read_text(encoding="utf-8")


@pytest.mark.slow
def test_an_answer_tells_of_a_way_without_a_page_and_leads_to_none(lean):
    folder, _ = lean
    script = (
        "import json; from calc.browser import answer\n"
        "given = dict(asbestos_result='none', result_rooms='this', result_layers='all', rooms=\"Living: 20' x 14'\")\n"
        "print(json.dumps([answer(name, json.dumps({key: text for key, text in given.items() if name == 'compare' or key != 'rooms'})) for name in ('decision', 'compare')]))"
    )
    for root, linked in ((ROOT, 8), (folder, 5)):
        done = subprocess.run(
            [sys.executable, "-c", script],
            capture_output=True,
            text=True,
            check=True,
            cwd=root,
            env={"PYTHONPATH": str(root), "PYTHONDONTWRITEBYTECODE": "1"},
        )
        for text in json.loads(done.stdout):
            told = json.loads(text)
            assert len(set(re.findall(r'href="../../methods/([a-z-]+)/"', told["html"]))) == linked
            items = told["answer"]["items"]
            assert len(items) == 8 and len([one for one in items if one.get("left_out")]) == 8 - linked
    shutil.rmtree(folder / "site", ignore_errors=True)
