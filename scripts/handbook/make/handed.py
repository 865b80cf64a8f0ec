"""Pages that a job is handed on with: one screen of each way for the customer, and the papers of a job for the truck and the hand-over."""

import re
from collections.abc import Callable

import markdown

from calc import catalogue
from calc.decision.questions import QUESTIONS
from calc.decision.shared_figures import SHARED
from calc.evidence.cautions import caution
from calc.render import html
from calc.render.escape import escaped
from handbook.content.reading import CalculatorBlock, Hold, Page
from handbook.make import cautions, customer
from handbook.make.blocks import calculator_section, source_list, steps
from handbook.make.front import head_of

# What a customer asks, and which rows of the way's own screen answer it.
ASKED = (
    ("What will you do?", ("Disturbs",)),
    ("How long does it take, and where do we live meanwhile?", ("Takes", "Your room")),
    ("What do we get, and what does it cost?", ("Leaves",)),
)
ALWAYS_CITED = (caution("asbestos-first").source, caution("local-rules").source)
SCREEN = re.compile(r'<div class="screen"[^>]*>\s*<p>(?P<what>.*?)</p>\s*<dl>(?P<rows>.*?)</dl>\s*</div>', re.DOTALL)
ROW = re.compile(r"<div><dt>(.*?)</dt><dd>(.*?)</dd></div>", re.DOTALL)
CARE = re.compile(r"^## Care\n(.*?)(?=^## |\Z)", re.MULTILINE | re.DOTALL)


def _way_of(pages: list[Page], way: str) -> Page:
    return next(one for one in pages if one.path.stem == way and one.path.parent.name == "methods")


def _told(page: Page) -> tuple[str, dict[str, str]]:
    """What a way does, in the words of its own page, and the rows of its screen by name."""
    text = "\n".join(block.text for block in page.blocks if block.kind == "markdown")
    found = SCREEN.search(text)
    assert found  # a way without its screen is a fault
    return found["what"], dict(ROW.findall(found["rows"]))


def _rows(told: dict[str, str], names: tuple[str, ...]) -> str:
    return "<dl>" + "".join(f"<div><dt>{name}</dt><dd>{told[name]}</dd></div>" for name in names) + "</dl>"


def _section(
    name: str, way: str, forms: dict[str, str], titled: bool = True, shown: bool = True
) -> tuple[str, list[str]]:
    """A calculator for a page whose way is settled, with its worked example of that way, and what it can cite."""
    calculator = catalogue.find(name)
    assert calculator is not None
    fixed = (("way", way),) if "way" in [field.name for field in calculator.fields] else ()
    return calculator_section(CalculatorBlock(use=name, example=dict(fixed) or None), forms, "", titled, fixed, shown)


def screen_page(way: str) -> Callable[[list[Page]], str]:
    """Return the maker of the one screen of a way that a customer understands without the rest."""

    def make(pages: list[Page]) -> str:
        page = _way_of(pages, way)
        assert page.head is not None
        what, told = _told(page)
        names = {field.name for calculator in catalogue.every() for field in calculator.fields}
        shared = [one.field.name for one in SHARED]
        asked = [one.field.name for one in QUESTIONS] + shared
        forms: dict[str, str] = {}
        cited = list(ALWAYS_CITED)
        sections = {}
        for name in customer.shown(way):
            sections[name], used = _section(name, way, forms, name not in ("plan", "offer"))
            cited += used
        verdict = (
            f'<div class="verdict" data-way="{way}" data-facts="{" ".join(asked)}" data-carries="{" ".join(sorted(names - set(asked)))}"'
            f' data-shared="{" ".join(shared)}" role="status" hidden></div>'
        )
        (first, first_rows), (second, second_rows), (third, third_rows) = ASKED
        parts = [
            f"# {page.head.title}",
            '<p class="offered" hidden></p>',
            html.caution(caution("asbestos-first")),
            verdict,
            f"## {first}",
            f'<div class="screen"><p>{what}</p>{_rows(told, first_rows)}</div>',
            sections["takeoff"],
            sections.get(customer.AMOUNTS[way], ""),
            f"## {second}",
            sections["plan"],
            f'<div class="screen">{_rows(told, second_rows)}</div>',
            f"## {third}",
            f'<div class="screen">{_rows(told, third_rows)}</div>',
            sections["offer"],
            "## What decides",
            "Local rules and licensed trades decide. A number here is a plan, and no promise. The whole way, step by step:"
            f" [{page.head.title}](../methods/{way}.md).",
            source_list(cited),
        ]
        head = head_of(
            f"{page.head.title}, on one screen",
            page.head.summary,
            "screen",
            page.head.reviewed.isoformat(),
            page.head.facts,
        )
        return head + "\n\n".join(one for one in parts if one) + "\n"

    return make


def papers_page(way: str) -> Callable[[list[Page]], str]:
    """Return the maker of the papers of one way: the job sheet for the truck, and the sheet that is handed over at the end."""

    def make(pages: list[Page]) -> str:
        page = _way_of(pages, way)
        assert page.head is not None
        what, told = _told(page)
        forms: dict[str, str] = {}
        uses = [block.data.use for block in page.blocks if block.kind == "calculator"]
        shown = ("takeoff", customer.AMOUNTS[way])
        sections = {}
        cited = [*ALWAYS_CITED, *[caution(one).source for one in cautions.every(page)]]
        for name in dict.fromkeys([*uses, "plan", "shopping"]):
            sections[name], used = _section(name, way, forms, shown=False)
            cited += used
        others = "".join(sections[name] for name in uses if name not in shown)
        work = "".join(steps(block, page, on_paper=True) for block in page.blocks if block.kind == "steps")
        title = page.head.title
        back = f'<a href="../../methods/{way}/">the page of the way</a>'
        parts = [
            f"# Papers: {title}",
            html.caution(caution("asbestos-first")),
            '<div class="paper-tools">'
            f"<p>Two papers of your job, as they print on A4 or Letter. Figures that you gave stand in them; the rest is lines to write on. Change your figures on {back},"
            ' in <a href="../../work-out/plan/">the days</a>, in <a href="../../work-out/shopping/">the list</a>, and write the price in <a href="../../work-out/offer/">the offer</a>.'
            f' <a href="../../to/{way}/">The customer\'s page</a> prints on one sheet.</p>'
            '<p class="tools" hidden><button type="button" class="act" data-print="job">Print the job sheet</button>'
            ' <button type="button" class="quiet" data-print="hand-over">Print the hand-over sheet</button></p></div>',
            f'<article class="paper" id="paper-job"><h2>Job sheet: {escaped(title)}</h2>'
            + _whose()
            + cautions.on_paper(cautions.every(page))
            + f'<p class="what">{what}</p>'
            + '<section class="signing"><h3>Hold points, signed</h3>' + _signing(page) + "</section>"
            + f'<section class="days">{sections["plan"]}</section>'
            + f'<section class="cuts">{sections.get("takeoff", "")}{sections.get(customer.AMOUNTS[way], "")}</section>'
            + f'<section class="work"><h3>Steps</h3>{work}</section>'
            + (f'<section class="figures">{others}</section>' if others else "")
            + f'<section class="buy">{sections["shopping"]}</section>'
            + f'<p class="where-from">Where each figure comes from: <span class="address" data-path="methods/{way}/#sources"></span></p></article>',
            f'<article class="paper" id="paper-hand-over"><h2>Hand-over sheet: {escaped(title)}</h2>' + _whose()
            + '<section class="done"><h3>What was done</h3>'
            + f"<p>{what}</p><dl>"
            + _fill("Rooms", "rooms") + _fill("First and last tick of a step", "ticked") + _fill("What the laboratory found", "asbestos_result")
            + _fill("Which ceiling its report names", "result_rooms") + _fill("Which layers it names", "result_layers")
            + _fill("Lead report, paint") + _fill("Air or clearance test, by whom, day") + "</dl></section>"
            + '<section class="still"><h3>What is still up there</h3>'
            + f"<p>{told['Leaves']}</p><dl>" + _fill("Layers that stayed, from the board up") + _fill("What lies above: wires, pipes, insulation") + "</dl></section>"
            + '<section class="used"><h3>What was used</h3><dl>'
            + "".join(_fill(name) for name in ("Primer, maker and number", "Paint, maker and number, color", "Compound or board, maker and kind", "Where the jars and left-overs are"))
            + "</dl></section>"
            + f'<section class="care"><h3>Care</h3>{_care(pages)}</section>'
            + '<section class="signatures"><h3>Signed</h3><dl>' + "".join(_fill(name) for name in ("Alarms pressed and heard, by", "Who did the work, day", "Who takes it over, day")) + "</dl></section></article>",
        ]  # fmt: skip
        head = head_of(
            f"Papers: {title}", f"The job sheet and the hand-over sheet of {title}, with your figures, to print.", "paper",
            page.head.reviewed.isoformat(), page.head.facts,
        )  # fmt: skip
        return head + "\n\n".join([*parts, source_list(cited)]) + "\n"

    return make


def _whose() -> str:
    """The head of a paper: whose and when, to be filled in by the job or by hand."""
    rows = "".join(
        f'<p>{name} <b data-fill="{key}"></b></p>'
        for name, key in (("Name", "name"), ("Place", "place"), ("Day", "start_day"))
    )
    return f'<div class="sheet-head">{rows}<p class="when"></p></div>'  # fmt: skip


def _fill(name: str, key: str = "") -> str:
    """A row that the job fills, or that is a line to write on."""
    filled = f' data-fill="{key}"' if key else ""
    return f"<div><dt>{escaped(name)}</dt><dd{filled}></dd></div>"


def _signing(page: Page) -> str:
    """Each hold point of the way with a place for a name and a time."""
    holds = [one for block in page.blocks if block.kind == "steps" for one in block.data.root if isinstance(one, Hold)]
    rows = "".join(
        f'<li><span class="until">{escaped(re.sub(r"{[^}]*}", "…", one.until))}</span> <span class="sign" data-of="{one.hold}"></span></li>'
        for one in holds
    )
    return f'<ol class="holds">{rows}</ol>'


def _care(pages: list[Page]) -> str:
    """What the page of the hand-over says of care."""
    page = next(one for one in pages if one.path.stem == "hand-over" and one.path.parent.name == "after")
    found = CARE.search("\n".join(block.text for block in page.blocks if block.kind == "markdown"))
    assert found, "the page of the hand-over has a part about care"
    return str(markdown.markdown(found.group(1)))
