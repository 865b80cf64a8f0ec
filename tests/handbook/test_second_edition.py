"""A second edition, file by file: what differs from the book, why, and that nothing else does.

Both are made to the last step before MkDocs, which the page template alone follows: what that prints of a firm is looked at in `test_firm`.
"""

import json
import re
import subprocess
import sys

import pytest

from handbook import build
from handbook.firm import edition
from handbook.make import pages

ROOT = build.ROOT
LEAST = "business:\n  name: Example Ceilings\n  phone: +1 555 0100\n  area: Example County\nreviewed: 2026-11-01\n"
OTHER = """
colors: {accent_light: "#1f5a54", accent_dark: "#8fd3c8"}
units: metric
pages:
  replace: {after/inspect.md: ours-inspect.md}
  add:
    - {file: ours-one.md, section: After}
    - {file: ours-two.md, section: Prepare}
local_rules:
  - {id: a-b, place: Other County, limit: 10, unit: sqft, reached: at, says: Other County's trigger is 10 sq ft, ask: its air office, source: A code (invented), reviewed: 2026-11-01, review_by: 2027-11-01}
"""
OWN = "---\ntitle: {0}\nkind: reference\nsummary: A made-up page.\nreviewed: 2026-11-01\nfacts: Made up.\n---\n\n# {0}\n\nWe look at the ceiling with you.\n"
MAKES = "from handbook import build; build.write_finished(build.read_all()); build.copy_assets()"


def made(folder, more):
    """Every file of an edition as MkDocs is given it, by its name; the folder that is named by what is in it has one name."""
    folder.mkdir()
    (folder / "firm.yml").write_text(LEAST + more, encoding="utf-8")
    for name in ("One", "Two"):
        (folder / f"ours-{name.lower()}.md").write_text(OWN.format(name), encoding="utf-8")
    text = (ROOT / "docs" / "after" / "inspect.md").read_text(encoding="utf-8")
    (folder / "ours-inspect.md").write_text(
        text.replace("Inspect under the final light", "Inspect with us"), encoding="utf-8"
    )
    firm = edition.read_firm(folder / "firm.yml", "firm.yml", build.DOCS, set(pages.GENERATED))
    edition.lay_out(firm, ROOT, folder / "copy", build.CACHE)
    environment = {"PYTHONPATH": str(folder / "copy" / "scripts"), "PYTHONDONTWRITEBYTECODE": "1"}
    done = subprocess.run(
        [sys.executable, "-c", MAKES], capture_output=True, text=True, cwd=folder / "copy", env=environment
    )
    assert done.returncode == 0, done.stdout + done.stderr
    found = {}
    for root in (folder / "copy" / "build" / "docs", folder / "copy" / "docs" / "theme", folder / "copy" / "calc"):
        for path in root.rglob("*"):
            if path.is_file() and "__pycache__" not in path.parts:
                name = f"{root.name}/{path.relative_to(root).as_posix()}"
                found[re.sub(r"assets-[0-9a-f]+", "assets", name)] = path.read_bytes()
    return found, json.loads((folder / "copy" / edition.TOLD).read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def both(tmp_path_factory):
    """Two editions of one firm: the least that a file can say, and one with colors, units, a place and pages of its own."""
    folder = tmp_path_factory.mktemp("second")
    return made(folder / "book", ""), made(folder / "other", OTHER)


def rows_that_differ(was, now):
    """The rows of two texts that only one of them has."""
    return set(was.decode().splitlines()) ^ set(now.decode().splitlines())


def test_nothing_differs_but_what_the_file_says(both):
    (was, told_was), (now, told_now) = both
    assert set(was) - set(now) == set()
    assert set(now) - set(was) == {"docs/own/ours-one.md", "docs/own/ours-two.md"}
    changed = {name for name in was if was[name] != now[name]}
    why = {
        "colors": {"docs/assets/icon.svg", "docs/assets/book.css", "theme/404.html"},
        "place": {"calc/evidence/local.py", "docs/reference/limits.md", "docs/reference/sources.md", "docs/reference/chart.md", "docs/prepare/settle.md", "docs/prepare/choose.md"},
        "units": {"docs/reference/drying.md", "docs/work-out/takeoff.md", "docs/methods/sand.md"},
        "pages": {"docs/after/inspect.md", "docs/contents.md", "docs/search.json", "docs/reference/glossary.md", "docs/reference/trouble.md"},
    }  # fmt: skip
    forms = {
        name for name in changed if name.endswith(".md") and b'name="place"' in now[name]
    }  # what asks for a place offers it
    example = {name for name in changed if name.endswith(".md") and b'class="calc"' in now[name]} | {
        name for name in changed if name.startswith(("docs/to/", "docs/papers/"))
    }
    neighbors = {
        name
        for name in changed
        if rows_that_differ(was[name], now[name])
        and all(row.startswith("{") for row in rows_that_differ(was[name], now[name]))
    }
    assert changed - set().union(*why.values()) - forms - example - neighbors == set(), changed
    for name, files in why.items():
        assert files <= changed, (name, files - changed)
    # Colors: one text for another, wherever it stands.
    for name in why["colors"]:
        assert was[name].decode().replace("#6a2c6f", "#1f5a54").replace("#dba6e2", "#8fd3c8") == now[name].decode(), (
            name
        )
    # A neighbor's name, and a sheet's number, stand in the head of a page alone.
    assert "docs/after/hand-over.md" in neighbors and b"Inspect with us" in now["docs/after/hand-over.md"]
    for name in ("docs/reference/glossary.md", "docs/reference/trouble.md"):
        ours, books = (re.sub(r"(?m)^{.*", "", text[name].decode()) for text in (now, was))
        assert ours.replace("Inspect with us", "Inspect under the final light") == books, name
    assert told_was["values"].keys() ^ told_now["values"].keys() == {"show_in"}
    assert {**told_was, "values": 0, "units": "metric"} == {**told_now, "values": 0}


def test_each_file_that_the_book_has_by_itself_is_the_same(both):
    """Scripts, styles of the book, the calculators and what they go by: byte for byte."""
    (was, _), (now, _) = both
    same = {name for name in was if was[name] == now[name]}
    assert (
        len([name for name in same if name.startswith("calc/")])
        == len([name for name in was if name.startswith("calc/")]) - 1
    )
    assert {name for name in was if name.endswith(".mjs")} <= same and "theme/main.html" in same
    for name in (
        "docs/reference/nomenclature.md",
        "docs/reference/trust.md",
        "docs/reference/checks.md",
        "docs/job.schema.json",
        "docs/my-job.md",
    ):
        assert name in same, name
