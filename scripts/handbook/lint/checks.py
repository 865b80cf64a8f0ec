"""What every page must hold to. Each rule tells its fault by a code; the codes are listed in `CODES`.

What can hurt has rules of its own in `hazards`, words in `wording`, and what takes the whole book to tell in `whole`.
"""

import re
from pathlib import Path

import textstat

from calc import catalogue
from calc.evidence import cautions, sources
from handbook.content.live import filled
from handbook.content.reading import Block, CalculatorBlock, CautionBlock, Hold, Page, SourceIds
from handbook.content.sentences import prose
from handbook.draw import figures
from handbook.evidence import example, once
from handbook.lint import cover, hazards, live, markup, wording

CODES = {
    "HEAD": "the head of a page is missing or wrong",
    "YAML": "a block of data cannot be read",
    "DATA": "a block of data has a key or a value that it may not have",
    "BLOCK": "a fence with an unknown name, or one that is never closed",
    "STEP-ID": "a step's id stands twice",
    "STEP-LONG": "a step has more than 20 words",
    "LIVE": "a figure in a step that no form on its page gives",
    "CAUTION": "a caution that is not in the register",
    "CALCULATOR": "a calculator that does not exist, or an example that it refuses",
    "SOURCE": "a source that is not in the register",
    "STOP": "a page from which work could start does not have the asbestos stop at its head",
    "PART": "a way or a task that lacks one of its parts",
    "HAZARD": "a step with a dangerous verb and no caution for it before it",
    "MESSAGE-TWICE": "a hazard message that stands in full twice on a page",
    "ANSWER-BELOW": "an answer whose figure stands below a message that its figures did not raise",
    "WORD": "a word that is never printed",
    "LINK": "a link that leads nowhere",
    "MARKUP": "HTML, or Markdown, that could run something, load a file, hide what stands after it, or lead off the book",
    "READING": "steps or text too hard to read",
    "ANCHOR": "a link to a place on a page that is not there",
    "FIGURE": "a drawing that does not exist, or whose lettering cannot be read",
    "COVER": "a cover sheet whose doors or ways are not the book's",
    "NAV": "a page that the navigation does not name",
    "STEP-GONE": "a step whose address was given out once and leads nowhere now, or a new one that is not on the list of them",
    "SPELL": "a word that is in no list",
    "TERM": "a name that the glossary turns away",
    "UNUSED": "a source that nothing cites",
    "RULE-NAME": "a rule of the choice of way with a question, answer, way, action or caution that does not exist",
    "RULE-SOURCE": "a rule of the choice of way without a source, a reason or a day",
    "RULE-NEVER": "a rule of the choice of way that can never fire",
    "RULE-CLASH": "two rules of the choice of way that say different things of the same answers",
    "LOWER": "a construct that the small engine cannot run",
}
# Folders of docs whose Markdown is no page: the templates, and the sample of a firm.
NO_PAGES = ("theme", "skin-material", "firm")
LONGEST_STEP_WORDS = 20
HARDEST_GRADE = 8  # a 7th grader reads up to, but not past, this grade
PARTS = {
    "way": (
        "When it fits",
        "When never",
        "Time and mess",
        "Steps",
        "What good looks like",
        "What goes wrong",
        "Clear up and hand over",
    ),
    "task": ("Time", "Steps", "What good looks like", "What goes wrong"),
}
NEVER = re.compile(
    r"\b(exempt(ed|ion)?|(is|are|be|completely|perfectly) safe|no risk|harmless to you)\b", re.IGNORECASE
)
LINK = re.compile(r"\]\(([^)\s]+)\)")


def check_pages(
    pages: list[Page], docs: Path, generated: set[str], words: frozenset[str] = frozenset(), firm: bool = False
) -> None:
    """Add to each page the faults that show only when its data is looked at; `generated` are pages made later, `words` are known
    beside those of the house list; `firm` where all but the last are a firm's."""
    seen_ids: dict[str, str] = {}
    terms = wording.avoided_terms(pages)
    for page in pages:
        live.fill(page)
        own = firm and page is not pages[-1]
        markup.check_head(page, own)
        hazards.check_stop(page)
        _check_parts(page)
        wording.check_words(page, docs, terms, words)
        covered: set[str] = set()
        for block in page.blocks:
            if block.kind == "markdown":
                _check_links(page, block, docs, generated)
                hazards.check_prose(page, block, covered)
            elif block.kind == "caution":
                covered.add(_check_caution(page, block, block.data))
            elif block.kind == "calculator":
                _check_calculator(page, block, block.data)
            elif block.kind == "sources":
                _check_sources(page, block, block.data)
            elif block.kind == "steps":
                _check_steps(page, block, covered, seen_ids)
            elif block.kind == "figure":
                _check_figure(page, block, block.data.use, "use")
            elif block.kind in ("doors", "ways"):
                cover.check(page, block, docs, generated)
            markup.check(page, block, own)
            _check_words(page, block)
        _check_reading(page)


def _check_parts(page: Page) -> None:
    """A way and a task say how long it takes, step by step what to do, what good looks like, and what goes wrong."""
    kind = page.head.kind if page.head else ""
    text = "\n".join(block.text for block in page.blocks if block.kind == "markdown")
    for part in PARTS.get(kind, ()):
        if not re.search(rf"^## {part}", text, re.MULTILINE):
            page.fault(1, 1, "PART", f"a {kind} has a part “## {part}”")
    if kind == "way" and '<div class="screen"' not in text:
        page.fault(1, 1, "PART", 'a way has one screen for a customer, <div class="screen">')


def _check_caution(page: Page, block: Block, data: CautionBlock) -> str:
    _known_caution(page, block, data.id, "id")
    return data.id


def _known_caution(page: Page, block: Block, caution_id: str, *path: object) -> None:
    if caution_id not in [one.id for one in cautions.CAUTIONS]:
        page.fault(*block.at(*path), "CAUTION", f"there is no caution called {caution_id}")


def _check_calculator(page: Page, block: Block, data: CalculatorBlock) -> None:
    calculator = catalogue.find(data.use)
    if calculator is None:
        names = ", ".join(one.name for one in catalogue.every())
        page.fault(*block.at("use"), "CALCULATOR", f"there is no calculator called {data.use}; use {names}")
        return
    _, faults = once.work_out(data.use, dict(example.given_on_page(data.use, data.example)))
    for fault in faults:
        page.fault(*block.at("example", fault.field), "CALCULATOR", f"{fault.field}: {fault.message}")


def _check_sources(page: Page, block: Block, data: SourceIds) -> None:
    known = [one.id for one in sources.SOURCES]
    for at, source_id in enumerate(data.root):
        if source_id not in known:
            page.fault(*block.at(at), "SOURCE", f"there is no source called {source_id}")


def _check_steps(page: Page, block: Block, covered: set[str], seen_ids: dict[str, str]) -> None:
    for at, step in enumerate(block.data.root):
        step_id = step.hold if isinstance(step, Hold) else step.id
        key = "hold" if isinstance(step, Hold) else "id"
        for one in (step_id, *step.was):
            if one in seen_ids:
                page.fault(*block.at(at, key), "STEP-ID", f"the id {one} stands already in {seen_ids[one]}")
            seen_ids[one] = page.shown
        if isinstance(step, Hold):
            continue
        if step.caution:
            _known_caution(page, block, step.caution, at, "caution")
            covered.add(step.caution)
        if step.figure:
            _check_figure(page, block, step.figure, at, "figure")
        read = step.model_copy(update={"do": filled(step.do, page.live)})  # as a reader has it before them
        count = len(read.do.split())
        if count > LONGEST_STEP_WORDS:
            page.fault(*block.at(at, "do"), "STEP-LONG", f"{count} words; {LONGEST_STEP_WORDS} at most")
        hazards.check_step(page, block, at, read, covered)


def _check_figure(page: Page, block: Block, name: str, *path: object) -> None:
    if name not in figures.FIGURES:
        page.fault(*block.at(*path), "FIGURE", f"there is no drawing called {name}; use {', '.join(figures.FIGURES)}")
        return
    for message in figures.faults(figures.FIGURES[name]()):
        page.fault(*block.at(*path), "FIGURE", f"{name}: {message}")


def _check_words(page: Page, block: Block) -> None:
    for offset, row in enumerate(block.text.splitlines()):
        for found in NEVER.finditer(row):
            page.fault(block.line + offset, found.start() + 1, "WORD", f"“{found.group()}” is never printed")


def _check_links(page: Page, block: Block, docs: Path, generated: set[str]) -> None:
    for offset, row in enumerate(block.text.splitlines()):
        for found in LINK.finditer(row):
            target = found.group(1).split("#")[0]
            if not target or target.startswith("mailto:"):
                continue
            goal = (page.path.parent / target).resolve()
            inside = goal.is_relative_to(docs.resolve())
            if not inside or (not goal.exists() and goal.relative_to(docs.resolve()).as_posix() not in generated):
                page.fault(block.line + offset, found.start(1) + 1, "LINK", f"{target} leads nowhere")


def grades(text: str) -> tuple[float, float]:
    """Return the school grade that `text` asks for by two measures that need no dictionary."""
    return textstat.automated_readability_index(text), textstat.coleman_liau_index(text)


def _check_reading(page: Page) -> None:
    text = prose(page)
    if page.head is None or page.head.kind == "reference" or len(text.split()) < 100:
        return  # tables of names and a few lines say nothing about reading
    by_letters, by_sentences = grades(text)
    if min(by_letters, by_sentences) > HARDEST_GRADE:
        message = f"grade {by_letters:.1f} and {by_sentences:.1f}; at most {HARDEST_GRADE} by one of the two"
        page.fault(1, 1, "READING", message)
