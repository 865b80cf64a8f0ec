"""What only the whole book can tell: pages that no navigation names, places that no link finds, steps whose address is gone,
sources that nothing cites."""

import re
from collections.abc import Mapping
from pathlib import Path

import yaml

from calc import catalogue
from calc.decision import rules
from calc.evidence import cautions, limits, published, published_more, sources
from handbook.content import addresses
from handbook.content.faults import ContentFault
from handbook.content.reading import Hold, Page
from handbook.evidence import check_table

LINK = re.compile(r"\]\(([^)\s]*#[^)\s]+)\)")
STEP_LIST = "step-ids.txt"


def check_book(
    pages: list[Page], docs: Path, generated: Mapping[str, str], config: Path, root: Path
) -> list[ContentFault]:
    """Return the faults of the book as a whole; `generated` are the texts of pages that nobody writes."""
    places = {page.path.relative_to(docs).as_posix(): addresses.anchors(page) for page in pages}
    for path, text in generated.items():
        places[path] = addresses.headings(text) | {"content"}
    return _unlinked(pages, docs, places) + _unnamed(pages, docs, config, root) + _gone(pages, docs, root)


def _unlinked(pages: list[Page], docs: Path, places: Mapping[str, set[str]]) -> list[ContentFault]:
    found = []
    for page in pages:
        for block in page.blocks:
            for at, term in enumerate(block.data.root if block.kind == "terms" else ()):
                for path in term.see:
                    if path not in places:
                        found.append(ContentFault(page.shown, *block.at(at, "see"), "LINK", f"{path} leads nowhere"))
            if block.kind != "markdown":
                continue
            for offset, row in enumerate(block.text.splitlines()):
                for link in LINK.finditer(row):
                    path, _, anchor = link.group(1).partition("#")
                    goal = (page.path.parent / path).resolve() if path else page.path
                    known = (
                        places.get(goal.relative_to(docs.resolve()).as_posix())
                        if goal.is_relative_to(docs.resolve())
                        else None
                    )
                    if known is not None and anchor.partition("?")[0] not in known:
                        found.append(
                            ContentFault(
                                page.shown,
                                block.line + offset,
                                link.start(1) + 1,
                                "ANCHOR",
                                f"there is no {anchor} on that page",
                            )
                        )
    return found


def _unnamed(pages: list[Page], docs: Path, config: Path, root: Path) -> list[ContentFault]:
    named = set(re.findall(r"\S+\.md", yaml.dump(yaml.safe_load(config.read_text(encoding="utf-8"))["nav"])))
    return [
        ContentFault(page.shown, 1, 1, "NAV", f"no line of {config.relative_to(root).as_posix()} names this page")
        for page in pages
        if page.path.relative_to(docs).as_posix() not in named
    ]


def _gone(pages: list[Page], docs: Path, root: Path) -> list[ContentFault]:
    """Each address of a step that was ever given out must lead somewhere, and each new one is written down."""
    path = docs / STEP_LIST
    shown = path.relative_to(root).as_posix()
    given = path.read_text(encoding="utf-8").split() if path.exists() else []
    found = []
    standing: set[str] = set()
    for page in pages:
        for block in page.blocks:
            for at, one in enumerate(block.data.root if block.kind == "steps" else ()):
                step_id = one.hold if isinstance(one, Hold) else one.id
                standing |= {step_id, *one.was}
                if step_id not in given:
                    line, column = block.at(at)
                    found.append(
                        ContentFault(
                            page.shown,
                            line,
                            column,
                            "STEP-GONE",
                            f"the step {step_id} is new; add a line {step_id} to {shown}",
                        )
                    )
    for at, one in enumerate(given, 1):
        if one not in standing:
            found.append(
                ContentFault(
                    shown,
                    at,
                    1,
                    "STEP-GONE",
                    f"the step {one} is gone; give its id to the step that took its place, as was: [{one}]",
                )
            )
    return found


def unused_sources(pages: list[Page], root: Path) -> list[ContentFault]:
    """Return a fault for each source of the register that no page, calculator, caution, rule or check cites."""
    cited = (
        {one.source for one in cautions.CAUTIONS}
        | {one.source for one in limits.LIMITS}
        | {one.source for one in rules.RULES}
        | {vector["source_id"] for _, vector in check_table.vectors()}
    )
    for calculator in catalogue.every():
        cited |= {field.source for field in calculator.fields} | set(calculator.sources)
        cited |= {source for line in check_table.every_line(calculator).values() for source in line.sources}
    for page in pages:
        for block in page.blocks:
            cited |= set(block.data.root) if block.kind == "sources" else set()
    rows = [
        (path, at, row)
        for path in (Path(published.__file__), Path(published_more.__file__))
        for at, row in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
    ]
    found = []
    for one in sources.SOURCES:
        if one.id not in cited:
            path, line = next((path, at) for path, at, row in rows if f'"{one.id}"' in row)
            found.append(
                ContentFault(path.relative_to(root).as_posix(), line, 9, "UNUSED", f"nothing cites the source {one.id}")
            )
    return found
