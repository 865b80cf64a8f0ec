"""Makes single pages again in a book that is built already: `python -m handbook.quick` reads their names, one a line, and answers
each with its faults and a line `done`. What one page does to others (the contents, neighbors, the search) waits for the next build.
"""

import logging
import sys

from handbook import build
from handbook.content import reading
from handbook.content.faults import ContentFault
from handbook.host import headers
from handbook.lint import checks, hazards
from handbook.make import blocks, pages, sheets

GLOSSARY = "reference/glossary.md"  # whose words every page is checked by
DONE = "done"


def again(name: str) -> list[ContentFault]:
    """Look at the page `name` of the book and make its HTML again; where it has faults it stays as it was."""
    page = reading.read_page(build.DOCS / name, build.ROOT)
    glossary = reading.read_page(build.DOCS / GLOSSARY, build.ROOT)
    if page.head:
        others = [glossary] if name != GLOSSARY else []
        checks.check_pages([page, *others], build.DOCS, set(pages.GENERATED))
    if page.faults:
        return page.faults
    page.finished = blocks.finished(page)
    hazards.check_finished(page, page.finished)
    if page.faults:
        return page.faults
    target = build.FINISHED / name
    target.write_text(sheets.placed(name, build.headed(page)), encoding="utf-8")
    build.make_site(*build.told_of_site(), dirty=True)
    headers.write(build.SITE)  # the lost page is made anew each time, and names its own style in the policy
    return []


def main() -> int:
    logging.getLogger("mkdocs").setLevel(logging.ERROR)  # it warns of what is meant here: a build of one page
    for row in sys.stdin:
        for fault in again(row.strip()):
            print(fault)
        print(DONE, flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
