"""Where each page stands in the book: its sheet number, what is on it, and its neighbors in the order of a job.

The order is that of `mkdocs.yml`. Ways stand beside each other: whoever follows one comes from the last page of the preparation,
and goes on to the first page of the finish.
"""

import json
import re
from functools import cache
from pathlib import Path
from typing import NamedTuple

import yaml
from markdown.extensions.toc import slugify

from calc import catalogue
from handbook.make import cover

CONFIG = Path(__file__).resolve().parents[3] / "mkdocs.yml"
WAYS = "Ways"
HANDED = {"to": "one screen", "papers": "papers"}  # pages of a way that are handed on
PLACE = re.compile(
    r'^## +(?P<heading>.+?)(?: *\{[^}]*\})?$|<(?:details|section)\b[^>]*>|<h2\b(?P<own>[^>]*)>(?P<title>.*?)</h2>',
    re.MULTILINE | re.DOTALL,
)  # fmt: skip
ID = re.compile(r'\bid="([^"]+)"')
HEAD = re.compile(r"\A---\n(.*?)\n---\n", re.DOTALL)


class Sheet(NamedTuple):
    """A page as the navigation names it; `path` is that of its Markdown, `section` is empty where it stands by itself."""

    title: str
    path: str
    section: str
    number: str


@cache
def book() -> tuple[Sheet, ...]:
    """Return every sheet that the navigation names, in its order."""
    found = []
    for entry in yaml.safe_load(CONFIG.read_text(encoding="utf-8"))["nav"]:
        for name, inside in entry.items():
            if isinstance(inside, str):
                found.append(Sheet(name, inside, "", ""))
                continue
            for at, one in enumerate(inside, 1):
                for title, path in one.items():
                    found.append(Sheet(title, path, name, f"{name[0]}-{at}"))
    return tuple(found)


def ways() -> list[str]:
    """Return the ways that have a page."""
    return [Path(one.path).stem for one in book() if one.section == WAYS]


def sections() -> tuple[str, ...]:
    """Return the names of the sections, in the order of a job."""
    return tuple(dict.fromkeys(one.section for one in book() if one.section))


def placed(path: str, text: str) -> str:
    """Return the finished page at `path` with its place in the book told in its head."""
    head = HEAD.match(text)
    assert head  # a page without a head is a fault
    told = yaml.safe_load(head.group(1)) | _place(path) | {"outline": outline(text[head.end() :])}
    return f"---\n{json.dumps(told, ensure_ascii=False, default=str)}\n---\n{text[head.end() :]}"


def outline(text: str) -> list[list[str]]:
    """Return [address, words] of each part of a page: of its folds where it has some, of its headings otherwise."""
    headings: list[list[str]] = []
    folds: list[list[str]] = []
    inside = ""
    fold = False
    for found in PLACE.finditer(text):
        said = [words for _, words in headings]  # a form may say the heading that it stands under again
        if found["heading"]:
            if _plain(found["heading"]) not in said:
                headings.append([slugify(found["heading"], "-"), _plain(found["heading"])])
        elif found["title"] is None:
            named = ID.search(found.group())
            inside, fold = named.group(1) if named else inside, 'class="fold' in found.group()
        else:
            own = ID.search(found["own"])
            words = _plain(found["title"])
            if fold or words not in said:
                (folds if fold else headings).append([own.group(1) if own else inside, words])
            fold = False
    return folds or headings


def _plain(text: str) -> str:
    return re.sub(r"<[^>]+>|[*`]", "", text).strip()


def _place(path: str) -> dict[str, object]:
    """The sheet number, the section, and the neighbors before and after, of the page at `path`."""
    standing = next((one for one in book() if one.path == path), None)
    if standing is None:
        folder, _, name = path.removesuffix(".md").partition("/")
        way = next((one.number for one in book() if one.path == f"methods/{name}.md"), "")
        if folder in HANDED and way:
            return {"sheet": f"{way}, {HANDED[folder]}", "section": WAYS}
        if folder == "work" and name in catalogue.NAMES:
            return {"sheet": f"C-{list(catalogue.NAMES).index(name) + 1}", "section": "Work it out"}
        return {}
    told: dict[str, object] = {"sheet": standing.number, "section": standing.section}
    before, after = _neighbors(standing)
    for name, one in (("before", before), ("after", after)):
        if one:
            told[name] = {"title": one.title, "url": cover.address(one.path)}
    return told


def _neighbors(standing: Sheet) -> tuple[Sheet | None, Sheet | None]:
    """The sheets before and after in the order of a job. All ways together are one stop on it."""
    if not standing.section:
        return None, None
    choice = Sheet("The eight ways" if len(ways()) == 8 else "The ways", "contents.md#ways", WAYS, "")
    row: list[Sheet] = []
    for one in book():
        if one.section == WAYS:
            one = standing if standing.section == WAYS else choice
        if one.section and one not in row:
            row.append(one)
    at = row.index(standing)
    return row[at - 1] if at else None, row[at + 1] if at + 1 < len(row) else None
