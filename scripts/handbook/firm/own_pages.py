"""The firm's own pages: which of the book's may be left out or replaced, that none is weakened by it, and what a page may hold.

A page is left out whole: its cautions guard its own steps, and go with them. What keeps people from harm whichever way the work goes
stays. A page that takes another one's place says each of its cautions, at the head what stood at the head, keeps its hold points word
for word and in their order, and lets no dangerous step come before one of them.
"""

import dataclasses
import functools
from dataclasses import dataclass, field
from pathlib import Path

from handbook.content.reading import Hold, Page, Step, read_page
from handbook.firm.declared import FirmFile
from handbook.firm.read import Reading
from handbook.lint import checks, wording
from handbook.lint.hazards import at_head, guarding
from handbook.make import cautions

OWN = "own"  # the folder of added pages in the book
KINDS = ("task", "reference")  # what an added page may be
# What stays, and why: pages that keep people from harm whichever way the work goes, and pages that others are made from.
STAY = {
    "prepare/measure.md": "a job begins there, and its rooms stand there",
    "prepare/settle.md": "asbestos and lead are settled there, whichever way the work goes",
    "prepare/accident.md": "it says what to do where texture came down",
    "prepare/permission.md": "it says who must agree before any work",
    "prepare/power-off.md": "it keeps hands off live wires",
    "prepare/reach.md": "it keeps people from falling",
    "prepare/cover.md": "it keeps dust out of the house",
    "methods/licensed-removal.md": "it is the way that is left where asbestos was found",
    "after/clear-up.md": "it says how dust and waste leave the house",
    "after/hand-over.md": "the papers of a job are made from it",
    "reference/trust.md": "it says how far to trust the book",
    "reference/glossary.md": "the words of all pages are checked by it",
}


@dataclass
class OwnPages:
    """The pages of the edition that are not the book's: by their path in the book."""

    left_out: list[str] = field(default_factory=list)
    texts: dict[str, str] = field(default_factory=dict)
    written_in: dict[str, str] = field(default_factory=dict)  # where the firm wrote it, as faults show it
    titles: dict[str, str] = field(default_factory=dict)
    sections: list[tuple[str, str]] = field(default_factory=list)  # (section, path) of each page more
    step_ids: list[str] = field(default_factory=list)


def check(firm: FirmFile, reading: Reading, docs: Path, generated: set[str]) -> OwnPages:
    """Return the firm's pages, and tell what they may not do or hold."""
    book = written(docs)
    found = OwnPages()
    for at, name in enumerate(firm.pages.leave_out):
        where: tuple[str | int, ...] = ("pages", "leave_out", at)
        if name not in book:
            reading.refuse(where, "PAGE", f"there is no such page. Those that may go are {_list(may_go(docs))}")
        elif why := stays(_page(book[name], docs), name):
            reading.refuse(where, "PAGE", f"{why}, so it stays. Those that may go are {_list(may_go(docs))}")
        elif name in found.left_out:
            reading.refuse(where, "PAGE", "it is left out already")
        else:
            found.left_out.append(name)
    pages = []
    for name, file in firm.pages.replace.items():
        where = ("pages", "replace", name)
        if name not in book:
            reading.fault(
                (*where, ""),
                "PAGE",
                f"pages.replace: there is no page {name} that somebody wrote. Use a path under docs, like: after/inspect.md: {file}",
            )
            continue
        if name in found.left_out:
            reading.fault((*where, ""), "PAGE", f"pages.replace: {name} is left out already. Do one or the other")
        page = _own(reading, where, file, name, docs, found)
        if page:
            _weakened(_page(book[name], docs), page)
            pages.append(page)
    for at, one in enumerate(firm.pages.add):
        target = f"{OWN}/{Path(one.file).name}"
        if target in found.texts:
            reading.refuse(("pages", "add", at, "file"), "PAGE", "another page has this name")
            continue
        page = _own(reading, ("pages", "add", at, "file"), one.file, target, docs, found)
        if page:
            if page.head and page.head.kind not in KINDS:
                page.fault(
                    1,
                    1,
                    "FIRM-PAGE",
                    f"the kind of an added page is {page.head.kind}; use task or reference. Like: kind: task",
                )
            found.sections.append((one.section, target))
            pages.append(page)
    _look_into(pages, found, firm, docs, generated, reading)
    for at, caution in enumerate(firm.cautions):
        for place, name in enumerate(caution.pages):
            where = ("cautions", at, "pages", place)
            if name in found.texts:
                reading.refuse(where, "CAUTION", "that page is your own: write the caution there, as a block")
            elif (
                name not in book
                or name in found.left_out
                or (head := _page(book[name], docs).head) is None
                or head.kind not in ("way", "task", "choice", "reference")
            ):
                reading.refuse(where, "CAUTION", "no way, task or reference page of this edition stands there")
    return found


def stays(page: Page, name: str) -> str:
    """Return why the page cannot be left out, '' where it can."""
    if page.head is None or page.head.kind not in (*KINDS, "way"):
        return "every page leads there"
    return STAY.get(name, "")


@functools.cache
def may_go(docs: Path) -> list[str]:
    """Return the pages of the book that can be left out."""
    return [name for name, path in written(docs).items() if not stays(_page(path, docs), name)]


def written(docs: Path) -> dict[str, Path]:
    """Return every page of the book that somebody wrote, by its path in the book."""
    paths = [path for path in sorted(docs.rglob("*.md")) if path.relative_to(docs).parts[0] not in checks.NO_PAGES]
    return {path.relative_to(docs).as_posix(): path for path in paths}


def _list(names: list[str]) -> str:
    return ", ".join(names)


def _page(path: Path, docs: Path) -> Page:
    return read_page(path, docs)


def _holds(page: Page) -> list[Hold]:
    return [one for block in page.blocks if block.kind == "steps" for one in block.data.root if isinstance(one, Hold)]


def _own(
    reading: Reading, where: tuple[str | int, ...], file: str, target: str, docs: Path, found: OwnPages
) -> Page | None:
    """Read a page of the firm's as if it stood at `target` in the book; its faults name the file that the firm wrote."""
    path = reading.folder / file
    if not path.is_file() or not path.resolve().is_relative_to(reading.folder.resolve()):
        reading.refuse(where, "FILE", f"there is no such file beside {Path(reading.shown).name}")
        return None
    shown = (Path(reading.shown).parent / file).as_posix()
    try:
        found.texts[target] = path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        reading.refuse(where, "FILE", "the file is not in UTF-8")
        return None
    page = read_page(path, reading.folder)
    page.faults[:] = [dataclasses.replace(one, path=shown) for one in page.faults]
    page.shown, page.path = shown, docs / target
    found.written_in[target] = shown
    found.titles[target] = page.head.title if page.head else target
    found.step_ids += [
        one.hold if isinstance(one, Hold) else one.id
        for block in page.blocks
        if block.kind == "steps"
        for one in block.data.root
    ]
    return page


def _weakened(was: Page, now: Page) -> None:
    """Tell what the page that takes the place of another one lacks of what keeps people from harm."""
    if was.head and now.head and was.head.kind != now.head.kind:
        now.fault(
            1,
            1,
            "FIRM-PAGE",
            f"the kind of this page is {now.head.kind}; the page that it replaces is a {was.head.kind}. Like: kind: {was.head.kind}",
        )
    head = [block.data.id for block in at_head(now)]
    for block in at_head(was):
        if block.data.id not in head:
            now.fault(
                1,
                1,
                "FIRM-CAUTION",
                f"the caution {block.data.id} is missing at the head, and the page that it replaces has it there. Add a block: caution, id: {block.data.id}",
            )
    said = cautions.every(now)
    for one in cautions.every(was):
        if one not in said and one not in [block.data.id for block in at_head(was)]:
            now.fault(
                1,
                1,
                "FIRM-CAUTION",
                f"the caution {one} is missing, and the page that it replaces has it. Add a block: caution, id: {one}",
            )
    standing = _holds(now)
    ids = [one.hold for one in standing]
    for hold in _holds(was):
        same = next((one for one in standing if one.hold == hold.hold), None)
        if same is None:
            now.fault(
                1,
                1,
                "FIRM-HOLD",
                f"the hold point {hold.hold} is missing, and the page that it replaces has it. Add a step: - hold: {hold.hold}",
            )
        elif (same.until, same.know) != (hold.until, hold.know):
            now.fault(
                *_where(now, hold.hold),
                "FIRM-HOLD",
                f"the hold point {hold.hold} says something else than the book's. Keep it: until: {hold.until} know: {hold.know}",
            )
        elif more := sorted(_dangers_before(now, hold.hold) - _dangers_before(was, hold.hold)):
            now.fault(
                *_where(now, hold.hold),
                "FIRM-HOLD",
                f"a step that needs {', '.join(more)} stands before the hold point {hold.hold}. Put it after",
            )
    order = [one.hold for one in _holds(was) if one.hold in ids]
    if order != [one for one in ids if one in order]:
        now.fault(1, 1, "FIRM-HOLD", f"the hold points stand in another order than in the book: {_list(order)}")


def _where(page: Page, hold: str) -> tuple[int, int]:
    for block in page.blocks:
        for at, one in enumerate(block.data.root if block.kind == "steps" else ()):
            if isinstance(one, Hold) and one.hold == hold:
                return block.at(at)
    return 1, 1


def _dangers_before(page: Page, hold: str) -> set[str]:
    """The cautions that steps before the hold point ask for by what they have done."""
    found: set[str] = set()
    for block in page.blocks:
        for one in block.data.root if block.kind == "steps" else ():
            if isinstance(one, Hold) and one.hold == hold:
                return found
            if isinstance(one, Step):
                found |= {caution_id for _, caution_id in guarding(one.do)}
    return found


def _look_into(
    pages: list[Page], found: OwnPages, firm: FirmFile, docs: Path, generated: set[str], reading: Reading
) -> None:
    """Look at the firm's pages as at the book's own, by the same check; a link to a page that is left out leads nowhere."""
    if not pages:
        return
    glossary = _page(docs / "reference" / "glossary.md", docs)
    whole = [page for page in pages if page.head]
    checks.check_pages(
        [*whole, glossary], docs, generated | set(found.texts), frozenset(one.lower() for one in firm.pages.words), True
    )
    gone = {(docs / name).resolve() for name in found.left_out}
    for page in whole:
        for block in page.blocks:
            for offset, row in enumerate(block.text.splitlines() if block.kind == "markdown" else ()):
                for link in checks.LINK.finditer(row):
                    target = link.group(1).split("#")[0]
                    if target and (page.path.parent / target).resolve() in gone:
                        page.fault(
                            block.line + offset, link.start(1) + 1, "LINK", f"{target} is left out of this edition"
                        )
    own_list = f"words under pages in {Path(reading.shown).name}"
    for page in pages:
        for fault in page.faults:
            message = fault.message.replace(f"docs/{wording.HOUSE_LIST}", own_list)
            reading.faults.append(dataclasses.replace(fault, message=message))
