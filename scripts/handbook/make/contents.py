"""The contents of the whole book on one page: every sheet with its number, the steps of each way, and every calculator.

The same list opens as a drawer over any page, so each entry is one link on one line.
"""

import json
import re
from collections.abc import Mapping

from calc import catalogue
from calc.render.escape import escaped
from handbook.content.reading import Page
from handbook.make import cover, sheets

CALCULATORS = "Work it out"
STEPS = "On the job"
SUMMARY = re.compile(r'^summary: (".*")$', re.MULTILINE)
HEAD = """---
title: "Contents"
kind: contents
summary: "Every page of the book in the order of a job, and every calculator."
---

# Contents

"""


def contents_page(pages: list[Page], made: Mapping[str, str] | None = None) -> str:
    """Return the page. `made` are the texts of the pages that nobody writes; one that is not there is not led to."""
    made = made or {}
    told = {path: json.loads(found.group(1)) for path, text in made.items() if (found := SUMMARY.search(text))}
    for page in pages:
        if page.head:
            told[_path(page)] = page.head.summary
    parts = []
    for section in sheets.sections():
        standing = [one for one in sheets.book() if one.section == section]
        parts.append(
            _section(section, [_row(one.number, one.title, one.path, told.get(one.path, "")) for one in standing])
        )
        if section == sheets.WAYS:
            parts.append(
                _section(STEPS, [_row("", f"{one.title}: the steps", one.path + "#steps", "") for one in standing])
            )
    rows = []
    for at, one in enumerate(catalogue.every(), 1):
        path = _calculator(one.name, pages, made)
        if path:
            rows.append(_row(f"C-{at}", one.title, path, one.summary))
    parts.append(_section(CALCULATORS, rows))
    return HEAD + f'<div class="contents">{"".join(parts)}</div>\n'


def _path(page: Page) -> str:
    """The page's place under the folder of all pages: a name, or a folder and a name."""
    folder = page.path.parent.name
    return page.path.name if folder == "docs" else f"{folder}/{page.path.name}"


def _calculator(name: str, pages: list[Page], made: Mapping[str, str]) -> str:
    """The page of a calculator; where it has none, the page that asks for it first, with its place on it."""
    own = f"work-out/{name}.md"
    if own in made:
        return own
    using = [page for page in pages if any(one.kind == "calculator" and one.data.use == name for one in page.blocks)]
    using.sort(key=lambda page: page.head is not None and page.head.kind == "way")
    return f"{_path(using[0])}#{name}" if using else ""


def _section(name: str, rows: list[str]) -> str:
    anchor = name.lower().replace(" ", "-")
    return f'<section id="{anchor}"><h2>{escaped(name)}</h2><ul>{"".join(rows)}</ul></section>'


def _row(number: str, title: str, path: str, summary: str) -> str:
    sheet = f'<i aria-hidden="true">{number}</i>' if number else ""
    more = f"<p>{escaped(summary)}</p>" if summary else ""
    return f'<li>{sheet}<a href="../{cover.address(path)}">{escaped(title)}</a>{more}</li>'
