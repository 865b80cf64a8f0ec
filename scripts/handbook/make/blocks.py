"""Each block of data as the HTML that stands in the finished page. `calc.render` draws what calculators answer."""

import re
from pathlib import Path

from calc import catalogue
from calc.decision.questions import QUESTIONS
from calc.decision.shared_figures import SHARED
from calc.evidence.cautions import caution
from calc.evidence.sources import HOW_KNOWN, SOURCES, source
from calc.render import form, html, svg
from calc.render.escape import escaped
from handbook.content.addresses import term_id, trouble_id
from handbook.content.live import filled
from handbook.content.reading import Block, CalculatorBlock, Hold, Page, Step
from handbook.draw import figures
from handbook.evidence import example, metric
from handbook.lint.hazards import guarding
from handbook.make import asked, cautions, cover, customer, folds, limits, live

FOLDED = ("way", "task")  # kinds of pages that stand in folds
TABLE = re.compile(r"^\|.*\|$(?:\n\|.*\|$)+", re.MULTILINE)


def finished(page: Page) -> str:
    """Return the page as Markdown with every block filled in, its sources at the end; a way and a task stand in folds."""
    parts: list[tuple[str, str]] = []
    cited: list[str] = []
    forms: dict[str, str] = {}  # the calculator on whose form each field of the page stands
    kind = page.head.kind if page.head else ""
    judged = False
    for block in page.blocks:
        if block.kind == "markdown":
            parts.append(("markdown", _tables_that_scroll(block.text.strip("\n")) + "\n"))
        elif block.kind == "sources":
            cited += block.data.root
        elif block.kind == "calculator":
            text, used = calculator_section(block.data, forms, row={"way": "h3", "task": "h2"}.get(kind, ""))
            parts.append(("calculator", text))
            cited += used
        elif block.kind == "caution" and kind == "way" and not judged:
            judged = True
            parts += [
                ("verdict", _verdict(page.path.stem)),
                ("figure", _section(page.path.stem)),
                ("caution", cautions.message(page, block)),
            ]
        elif block.kind == "asked":
            parts.append((block.kind, asked.every_field()))
        elif block.kind == "limits":
            parts.append((block.kind, limits.of_edition()))
        elif block.kind in ("doors", "ways"):
            parts.append((block.kind, (cover.doors if block.kind == "doors" else cover.ways)(block, page)))
        elif block.kind in ("trouble", "terms", "steps"):
            parts.append((block.kind, {"trouble": _trouble, "terms": _terms, "steps": steps}[block.kind](block, page)))
        else:
            parts.append((block.kind, cautions.message(page, block) if block.kind == "caution" else _figure(block)))
        cited += _cited_by_cautions(block)
    if kind in FOLDED:
        text = folds.folded(page, parts, source_list(cited, headed=False) if cited else "", len(set(cited)))
    else:
        text = "\n\n".join([text for _, text in parts] + ([source_list(cited)] if cited else [])) + "\n"
    return cautions.with_paper(page, text)


def _tables_that_scroll(text: str) -> str:
    """A table is wider than a phone: it gets a place of its own that moves under the thumb, named by its heads."""

    def wrapped(found: re.Match[str]) -> str:
        heads = ", ".join(cell.strip() for cell in found.group().splitlines()[0].strip("|").split("|"))
        opened = f'<section class="wide" tabindex="0" aria-label="{escaped(heads)}" markdown="1">'
        return f"{opened}\n\n{found.group()}\n\n</section>"

    return TABLE.sub(wrapped, text)


def calculator_section(
    data: CalculatorBlock,
    forms: dict[str, str] | None = None,
    row: str = "",
    titled: bool = True,
    fixed: tuple[tuple[str, str], ...] = (),
    shown: bool = True,
) -> tuple[str, list[str]]:
    """Return a calculator with its worked example as HTML, and the sources that it can cite.

    `forms` names the calculator on whose form each field of the page stands; the fields of this one are added to it. What is
    `fixed` the page says by itself. An example that is not `shown` is worked out for its sources alone.
    """
    calculator = catalogue.find(data.use)
    assert calculator is not None  # checked before
    given, answer = example.given_on_page(data.use, data.example), example.of_page(data.use, data.example)
    used = [source_id for line in answer.lines for source_id in line.sources] + [one.source for one in answer.cautions]
    used += [field.source for field in calculator.fields]
    # What the calculator can cite for other figures has to be in the page's list too.
    used += list(calculator.sources)
    forms = {} if forms is None else forms
    elsewhere = tuple(forms.items())
    for one in calculator.fields:
        forms.setdefault(one.name, calculator.name)
    shown_as = metric.in_metric(calculator) if metric.METRIC else calculator
    return form.section(shown_as, given, answer if shown else None, elsewhere, row, titled, fixed), used


def _verdict(way: str) -> str:
    """The place where a way's page says what it is by the reader's own answers, once there are any."""
    shared = " ".join(one.field.name for one in SHARED)
    names = " ".join(one.field.name for one in QUESTIONS) + " " + shared
    return (
        f'<div class="verdict" data-way="{way}" data-facts="{names}" data-shared="{shared}"'
        f' data-customer="{" ".join(customer.fields(way))}" role="status" hidden></div>'
    )


def _section(way: str) -> str:
    """The section through the ceiling at the head of a way: what was there, and what this way makes of it."""
    name = "way-" + way
    return f'<div class="drawing way-section">{svg.svg(figures.FIGURES[name](), name)}</div>'


# The hold points that prove what a caution warns of: once they are ticked, a ladder's single step does not say it again.
PROVED_BY = {
    "asbestos-first": (
        "scrape-result", "dry-scrape-result", "sand-result", "result-in-hand", "board-result", "panel-result", "patch-result", "joist-result",
        "asbestos-none", "accident-none", "can-result", "crown-result", "bath-result", "high-result", "patch-mend-result", "troweled-result",
    ),
    "lead-paint": (
        "scrape-lead", "dry-scrape-lead", "sand-lead", "skim-lead", "board-lead", "panel-lead", "patch-lead", "joist-lead", "troweled-lead",
    ),
}  # fmt: skip
PHASE_LIST = "step-phases.txt"


def phases(docs: Path) -> dict[str, str]:
    """Return the name of each phase of the work by the id of the step that begins it."""
    path = docs / PHASE_LIST
    rows = path.read_text(encoding="utf-8").splitlines() if path.exists() else []
    return dict(row.split(" ", 1) for row in rows if row)


def steps(block: Block, page: Page, on_paper: bool = False) -> str:
    """Return a block of steps as HTML: phases, hold points, the messages and pictures before a step, the steps. On a paper, whose first
    sheet has every message in full, a step is reminded of what to do, and there are no pictures."""
    rows = []
    number = 0
    begins = phases(page.path.parents[1])
    for step in block.data.root:
        phase = begins.get(step.hold if isinstance(step, Hold) else step.id)
        if phase:
            rows.append(f'<li class="phase"><h3>{escaped(phase)}</h3></li>')
        if isinstance(step, Hold):
            rows.append(_hold(step, page))
            continue
        number += 1
        if step.caution:
            told = cautions.reminder(step.caution) if on_paper else cautions.full(step.caution)
            rows.append('<li class="step-caution">' + told + "</li>")
        if step.figure and not on_paper:
            rows.append('<li class="step-figure">' + figures.html_of(step.figure) + "</li>")
        rows.append(_step(step, number, page))
    return ("" if on_paper else live.note(block)) + '<ol class="steps">' + "".join(rows) + "</ol>"


def _step(step: Step, number: int, page: Page) -> str:
    # On a ladder, where one step is in sight, the cautions that guard it are shown with it.
    guarded = dict.fromkeys(one for _, one in guarding(filled(step.do, page.live)) if one != step.caution)
    guards = f' data-guards="{" ".join(guarded)}"' if guarded else ""
    return (
        f'<li class="step" id="{step.id}"{guards}>{_anchors(step.was)}<label><input type="checkbox" data-step="{step.id}">'
        f'<span class="number">{number}</span><span class="do">{live.spans(step.do, page)}{live.wait(step)}</span></label></li>'
    )


def _anchors(ids: list[str]) -> str:
    """The addresses that a step had before."""
    return "".join(f'<span id="{one}"></span>' for one in ids)


def _hold(hold: Hold, page: Page) -> str:
    proved = " ".join(caution_id for caution_id, holds in PROVED_BY.items() if hold.hold in holds)
    proves = f' data-proves="{proved}"' if proved else ""
    return (
        f'<li class="hold" id="{hold.hold}"{proves}>{_anchors(hold.was)}<p class="hold-word">Hold point</p>'
        f'<p class="hold-until">{live.spans(hold.until, page)}</p>'
        f'<p class="hold-know"><b>How you know:</b> {live.spans(hold.know, page)}</p>'
        f'<label><input type="checkbox" data-step="{hold.hold}" data-hold><span class="do">This is true now</span></label></li>'
    )


def _figure(block: Block) -> str:
    return figures.html_of(block.data.use)


def _terms(block: Block, page: Page) -> str:
    docs = page.path.parents[1]
    rows = []
    for one in block.data.root:
        text = escaped(one.means)
        if one.also:
            text += f' <span class="known">People also say: {escaped(", ".join(one.also))}.</span>'
        if one.see:
            links = [
                f'<a href="../../{path.removesuffix(".md")}/">{escaped(_title(docs / path))}</a>' for path in one.see
            ]
            text += f' <span class="see">See {", ".join(links)}.</span>'
        rows.append(f'<div id="{term_id(one.term)}"><dt>{escaped(one.term)}</dt><dd>{text}</dd></div>')
    return f'<dl class="terms">{"".join(rows)}</dl>'


def _title(path: Path) -> str:
    """The title of the page at `path`, for a link."""
    found = re.search(r"^title: (.+)$", path.read_text(encoding="utf-8"), re.MULTILINE)
    return found.group(1) if found else path.stem


def _trouble(block: Block, page: Page) -> str:
    rows = "".join(
        f'<div id="{trouble_id(page, at)}"><dt>{escaped(one.see)}</dt><dd><b>Why:</b> {escaped(one.why)}</dd><dd><b>Cure:</b> {escaped(one.cure)}</dd></div>'
        for at, one in enumerate(block.data.root)
    )
    return f'<dl class="trouble">{rows}</dl>'


def _cited_by_cautions(block: Block) -> list[str]:
    if block.kind == "caution":
        return [caution(block.data.id).source]
    if block.kind == "steps":
        return [caution(one.caution).source for one in block.data.root if isinstance(one, Step) and one.caution]
    return []


def source_list(cited: list[str], headed: bool = True) -> str:
    """Return a page's own list, each with its number in the register, so that a mark leads somewhere without a network."""
    rows = []
    for one in SOURCES:
        if one.id in cited:
            rows.append(
                f'<li id="source-{one.id}" value="{html.number_of(one.id)}"><cite>{escaped(one.title)}</cite>. '
                + escaped(_details(one.id)) + f" <span class=\"known\">{escaped(known(one.id))}</span></li>"
            )  # fmt: skip
    heading = '<h2 id="sources">Sources</h2>' if headed else ""
    return '<section class="source-list">' + heading + "<ol>" + "".join(rows) + "</ol></section>"


def _details(source_id: str) -> str:
    one = source(source_id)
    parts = [part for part in (one.publisher, one.edition, one.clause) if part]
    return (", ".join(parts) + ". " if parts else "") + one.figure


def known(source_id: str) -> str:
    """Return how well a source is known, in words, with the day its figure was checked."""
    one = source(source_id)
    text = dict(HOW_KNOWN)[one.known]
    return f"{text}; figure checked {one.checked_on}." if one.checked_on else text + "."
