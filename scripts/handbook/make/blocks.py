"""Each block of data as the HTML that stands in the finished page. `calc.render` draws what calculators answer."""

import re
from pathlib import Path

from calc import catalogue
from calc.core.answer import Calculator
from calc.core.fields import entries
from calc.decision.questions import QUESTIONS
from calc.decision.shared_figures import SHARED
from calc.evidence.cautions import caution
from calc.evidence.sources import HOW_KNOWN, SOURCES, source
from calc.render import form, html
from calc.render.escape import escaped
from handbook.content.addresses import term_id, trouble_id
from handbook.content.reading import WAIT, Block, CalculatorBlock, Hold, Page, Step
from handbook.draw import figures
from handbook.lint.hazards import guarding

TABLE = re.compile(r"^\|.*\|$(?:\n\|.*\|$)+", re.MULTILINE)


def finished(page: Page) -> str:
    """Return the page as Markdown with every block filled in, its sources at the end."""
    parts = []
    cited: list[str] = []
    judged = False
    for block in page.blocks:
        if block.kind == "markdown":
            parts.append(_tables_that_scroll(block.text.strip("\n")))
            continue
        if block.kind == "sources":
            cited += block.data.root
            continue
        if block.kind == "calculator":
            text, used = calculator_section(block.data)
            cited += used
        else:
            if block.kind == "caution" and page.head and page.head.kind == "way" and not judged:
                judged = True
                parts += [_caution(block), _verdict(page.path.stem)]
                cited += _cited_by_cautions(block)
                continue
            if block.kind in ("trouble", "terms"):
                parts.append((_trouble if block.kind == "trouble" else _terms)(block, page))
                continue
            text = (
                _steps(block, page)
                if block.kind == "steps"
                else {"caution": _caution, "figure": _figure}[block.kind](block)
            )
            cited += _cited_by_cautions(block)
        parts.append(text)
    if cited:
        parts.append(source_list(cited))
    return "\n\n".join(parts) + "\n"


def _tables_that_scroll(text: str) -> str:
    """A table is wider than a phone: it gets a place of its own that moves under the thumb, named by its heads."""

    def wrapped(found: re.Match[str]) -> str:
        heads = ", ".join(cell.strip() for cell in found.group().splitlines()[0].strip("|").split("|"))
        opened = f'<section class="wide" tabindex="0" aria-label="{escaped(heads)}" markdown="1">'
        return f"{opened}\n\n{found.group()}\n\n</section>"

    return TABLE.sub(wrapped, text)


def calculator_section(data: CalculatorBlock) -> tuple[str, list[str]]:
    """Return a calculator with its worked example as HTML, and the sources that it can cite."""
    calculator = catalogue.find(data.use)
    assert calculator is not None  # checked before
    example = worked_example(calculator, tuple(data.example.items()) if data.example else calculator.example)
    answer, _ = catalogue.work_out(data.use, dict(example))
    assert answer is not None  # checked before
    used = [source_id for line in answer.lines for source_id in line.sources] + [one.source for one in answer.cautions]
    used += [field.source for field in calculator.fields]
    # What the calculator can cite for other figures has to be in the page's list too.
    used += list(calculator.sources)
    return form.section(calculator, example, answer), used


# What a worked example says instead of the text that stands in the field beside it or in the line under its label, so
# that nobody takes the example for an answer to what was typed. Made up, all of it.
OTHER = {
    "rooms": "Study: 13' 6\" x 11'", "ceiling_height_ft": "8' 6\"", "more_areas": "Attic room: 260", "place": "New York City", "year_built": "1958",
    "person_height_in": "5' 6\"", "tank_gal": "3", "texture_psf": "0.4", "water_gal_per_100sqft": "2.2", "coats": "3", "coat_thickness_in": "3/64",
    "door_width_in": "32", "joist_spacing_in": "24", "area_sqft": "149", "joint_ft": "52", "caulked_edge_ft": "49", "temperature_f": "64",
    "humidity_pct": "55", "water_gal": "4", "outdoor_temperature_f": "45", "outdoor_humidity_pct": "60", "machine_cfm": "800", "tile_length_in": "24", "tile_width_in": "24",
}  # fmt: skip


def worked_example(calculator: Calculator, example: tuple[tuple[str, str], ...]) -> tuple[tuple[str, str], ...]:
    """Return `example` with other texts than those that its form shows, where it can be worked out with them."""
    fields = {field.name: field for field in calculator.fields}
    beside = {
        name: {field.default, *entries(field.example)} for name, field in fields.items() if field.kind != "choice"
    }
    other = tuple(
        (name, "; ".join(OTHER.get(name, entry) if entry in beside.get(name, ()) else entry for entry in entries(text)))
        for name, text in example
    )
    return other if catalogue.work_out(calculator.name, dict(other))[0] else example


def _verdict(way: str) -> str:
    """The place where a way's page says what it is by the reader's own answers, once there are any."""
    shared = " ".join(one.field.name for one in SHARED)
    names = " ".join(one.field.name for one in QUESTIONS) + " " + shared
    return (
        f'<div class="verdict" data-way="{way}" data-facts="{names}" data-shared="{shared}" role="status" hidden></div>'
    )


def _caution(block: Block) -> str:
    return html.caution(caution(block.data.id))


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


def _steps(block: Block, page: Page) -> str:
    rows = []
    number = 0
    begins = phases(page.path.parents[1])
    for step in block.data.root:
        phase = begins.get(step.hold if isinstance(step, Hold) else step.id)
        if phase:
            rows.append(f'<li class="phase"><h3>{escaped(phase)}</h3></li>')
        if isinstance(step, Hold):
            rows.append(_hold(step))
            continue
        number += 1
        if step.caution:
            rows.append('<li class="step-caution">' + html.caution(caution(step.caution)) + "</li>")
        if step.figure:
            rows.append('<li class="step-figure">' + figures.html_of(step.figure) + "</li>")
        rows.append(_step(step, number))
    return '<ol class="steps">' + "".join(rows) + "</ol>"


def _step(step: Step, number: int) -> str:
    # On a ladder, where one step is in sight, the cautions that guard it are shown with it.
    guarded = dict.fromkeys(one for _, one in guarding(step.do) if one != step.caution)
    guards = f' data-guards="{" ".join(guarded)}"' if guarded else ""
    waits = ""
    if step.wait:
        least, most, unit = WAIT.fullmatch(step.wait).groups()  # type: ignore[union-attr]
        each = 60 if unit == "h" else 1
        waits = f'<span class="wait" data-least="{int(least) * each}" data-most="{int(most or least) * each}">Wait {step.wait}</span>'
    return (
        f'<li class="step" id="{step.id}"{guards}>{_anchors(step.was)}<label><input type="checkbox" data-step="{step.id}">'
        f'<span class="number">{number}</span><span class="do">{escaped(step.do)}{waits}</span></label></li>'
    )


def _anchors(ids: list[str]) -> str:
    """The addresses that a step had before."""
    return "".join(f'<span id="{one}"></span>' for one in ids)


def _hold(hold: Hold) -> str:
    proved = " ".join(caution_id for caution_id, holds in PROVED_BY.items() if hold.hold in holds)
    proves = f' data-proves="{proved}"' if proved else ""
    return (
        f'<li class="hold" id="{hold.hold}"{proves}>{_anchors(hold.was)}<p class="hold-word">Hold point</p>'
        f'<p class="hold-until">{escaped(hold.until)}</p>'
        f'<p class="hold-know"><b>How you know:</b> {escaped(hold.know)}</p>'
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


def source_list(cited: list[str]) -> str:
    """Return a page's own list, each with its number in the register, so that a mark leads somewhere without a network."""
    rows = []
    for one in SOURCES:
        if one.id in cited:
            rows.append(
                f'<li id="source-{one.id}" value="{html.number_of(one.id)}"><cite>{escaped(one.title)}</cite>. '
                + escaped(_details(one.id)) + f" <span class=\"known\">{escaped(known(one.id))}</span></li>"
            )  # fmt: skip
    return '<section class="source-list"><h2 id="sources">Sources</h2><ol>' + "".join(rows) + "</ol></section>"


def _details(source_id: str) -> str:
    one = source(source_id)
    parts = [part for part in (one.publisher, one.edition, one.clause) if part]
    return (", ".join(parts) + ". " if parts else "") + one.figure


def known(source_id: str) -> str:
    """Return how well a source is known, in words, with the day its figure was checked."""
    one = source(source_id)
    text = dict(HOW_KNOWN)[one.known]
    return f"{text}; figure checked {one.checked_on}." if one.checked_on else text + "."
