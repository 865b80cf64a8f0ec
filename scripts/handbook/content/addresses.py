"""The addresses in a page that a link may lead to. Headings get the same one here as in the finished HTML."""

import re

from markdown.extensions.toc import slugify

from handbook.content.reading import Hold, Page

HEADING = re.compile(r"^#{1,6} +(.+?)(?: *\{[^}]*\})?$", re.MULTILINE)
ID = re.compile(r'\bid="([^"]+)"')


def headings(text: str) -> set[str]:
    """Return the addresses of the headings in `text`, and those that its HTML names."""
    return {slugify(re.sub(r"[*`]", "", heading), "-") for heading in HEADING.findall(text)} | set(ID.findall(text))


def anchors(page: Page) -> set[str]:
    """Return every address on a page that a link may lead to."""
    found = {"content"}
    for block in page.blocks:
        if block.kind == "markdown":
            found |= headings(block.text)
        elif block.kind == "calculator":
            found.add(block.data.use)
        elif block.kind == "figure":
            found.add(f"figure-{block.data.use}")
        elif block.kind == "terms":
            found |= {term_id(one.term) for one in block.data.root}
        elif block.kind == "trouble":
            found |= {trouble_id(page, at) for at in range(len(block.data.root))}
        elif block.kind == "steps":
            for one in block.data.root:
                found |= {one.hold if isinstance(one, Hold) else one.id, *one.was}
    if page.head and page.head.kind == "way":
        found.add("job")
    return found


def term_id(term: str) -> str:
    """Return the address of a term on the page of the glossary."""
    return "term-" + re.sub(r"[^a-z0-9]+", "-", term.lower()).strip("-")


def trouble_id(page: Page, at: int) -> str:
    """Return the address of a trouble: the page's name and the trouble's place on it."""
    return f"trouble-{page.path.stem}-{at + 1}"
