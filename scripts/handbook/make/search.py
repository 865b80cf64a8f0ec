"""The index of the search: what each place in the book is about, and the words that people use for it.

One entry a section, a task, a trouble, a word of the trade, a calculator; small enough to lie on the device.
"""

import json
import re
from pathlib import Path

from markdown.extensions.toc import slugify

from calc import catalogue
from handbook.content.addresses import term_id, trouble_id
from handbook.content.reading import Block, Page, Step
from handbook.content.sentences import prose, step_text

LONGEST_TEXT = 700  # letters of a section that are searched
TAGS = re.compile(r"<[^>]+>")
MARKS = re.compile(r"\]\([^)]*\)|[*`#\[\]|]")


def url_of(path: str) -> str:
    """Return the address of the page at `path` of the Markdown, from the root of the book."""
    stem = path.removesuffix(".md")
    return "" if stem == "index" else stem + "/"


ONLY_ON_WAYS = ("wetting", "skim", "board", "carry", "panels")


def index(pages: list[Page], docs: Path) -> str:
    """Return the index as JSON: the names that people use for each term, the pages that tell of it, and [address, title, kind, text] of each place."""
    entries: list[list[str]] = []
    also: dict[str, list[str]] = {}
    see: dict[str, list[str]] = {}
    for page in pages:
        assert page.head is not None
        url = url_of(page.path.relative_to(docs).as_posix())
        if page.head.kind in ("home", "search"):
            continue
        title, kind = (
            page.head.title,
            {"way": "way", "task": "task", "choice": "guide"}.get(page.head.kind, "reference"),
        )
        entries.append([url, title, kind, f"{page.head.summary} {prose(page, with_example=False)}"[:LONGEST_TEXT]])
        for heading, slug, text in _sections(page):
            entries.append([f"{url}#{slug}", f"{title}: {heading}", "section", text[:LONGEST_TEXT]])
        for block in page.blocks:
            entries += _of_block(page, block, url, title)
            if block.kind == "terms":
                for term in block.data.root:
                    see[term.term.lower()] = [url_of(path) for path in term.see]
                    for name in term.also + term.avoid:
                        also.setdefault(name.lower(), []).append(term.term.lower())
    return json.dumps({"also": also, "see": see, "entries": entries}, ensure_ascii=False, separators=(",", ":"))


def _of_block(page: Page, block: Block, url: str, title: str) -> list[list[str]]:
    if block.kind == "trouble":
        return [
            [f"{url}#{trouble_id(page, at)}", one.see, "trouble", f"{title}. {one.why} {one.cure}"]
            for at, one in enumerate(block.data.root)
        ]
    if block.kind == "terms":
        return [
            [f"{url}#{term_id(one.term)}", one.term, "word", " ".join([one.means, *one.also])]
            for one in block.data.root
        ]
    if block.kind == "calculator":
        calculator = catalogue.find(block.data.use)
        assert calculator is not None
        if page.path.parent.name == "methods" and calculator.name not in ONLY_ON_WAYS:
            return []  # told where its own task is
        labels = " ".join(field.label for field in calculator.fields if not field.rare)
        return [[f"{url}#{calculator.name}", calculator.title, "form", f"{calculator.summary}. {labels}"]]
    if block.kind == "steps":
        found = []
        for one in block.data.root:
            step_id, text = one.id if isinstance(one, Step) else one.hold, step_text(one)
            found.append([f"{url}#{step_id}", f"{title}: {text if len(text) < 70 else text[:67] + '…'}", "step", text])
        return found
    return []


def _sections(page: Page) -> list[tuple[str, str, str]]:
    """Each heading of the page with its address and the text under it."""
    found: list[tuple[str, str, list[str]]] = []
    for block in page.blocks:
        if block.kind != "markdown":
            continue
        for row in block.text.splitlines():
            heading = re.match(r"^## +(.+?)(?: *\{[^}]*\})?$", row)
            if heading:
                found.append((heading.group(1), slugify(heading.group(1), "-"), []))
            elif found and row.strip():
                found[-1][2].append(MARKS.sub(" ", TAGS.sub(" ", row)).strip())
    return [(heading, slug, " ".join(" ".join(rows).split())) for heading, slug, rows in found if rows]
