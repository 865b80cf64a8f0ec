"""Live figures in steps: each names a line of a calculator whose form stands on the page; a wait by them is in hours."""

from calc import catalogue
from calc.core.answer import Answer
from handbook.content.live import BRACES, FIGURE, LiveFigure, unit_on_paper
from handbook.content.reading import Block, Page
from handbook.evidence import example, once

THE_FIGURE = "figure"  # what stands above the lines of an answer
TEXTS = ("do", "until", "know", "wait")


def fill(page: Page) -> None:
    """Put into `page.live` what the forms of the page show for their examples, and tell of figures that none of them gives."""
    answers = _answers(page)
    for block in page.blocks:
        for at, step in enumerate(block.data.root if block.kind == "steps" else ()):
            for key in TEXTS:
                text = getattr(step, key, None) or ""
                for found in BRACES.finditer(text):
                    message = _use(page, answers, found.group(), key)
                    if message:
                        page.fault(*_place(block, at, key, found.group()), "LIVE", message)
                if key == "wait" and FIGURE.search(text) and not step.usual:
                    message = (
                        "a wait by a figure needs “usual”: what to wait until somebody gave figures, like 12 to 24 h"
                    )
                    page.fault(*block.at(at, key), "LIVE", message)


def _answers(page: Page) -> dict[str, Answer]:
    """What the forms of the page answer to their examples; one that is refused is told elsewhere."""
    found: dict[str, Answer] = {}
    for block in page.blocks:
        if block.kind == "calculator" and catalogue.find(block.data.use) and block.data.use not in found:
            given = dict(example.given_on_page(block.data.use, block.data.example))
            if once.work_out(block.data.use, given)[0] is not None:
                found[block.data.use] = example.of_page(block.data.use, block.data.example)
    return found


def _use(page: Page, answers: dict[str, Answer], written: str, key: str) -> str:
    """Put the figure that is `written` into `page.live`; return what is wrong with it, or ''."""
    name = FIGURE.fullmatch(written)
    if not name:
        return f"a figure is written like {{wetting.water_gal}}, not {written}"
    use, line_name = name.groups()
    if catalogue.find(use) is None:
        return f"there is no calculator called {use}; use {', '.join(one.name for one in catalogue.every())}"
    if use not in answers:
        return f"the form {use} does not stand on this page; add a calculator block"
    answer = answers[use]
    line = next((one for one in answer.lines if one.name == line_name), None)
    if line is None and line_name != THE_FIGURE:
        return f"{use} gives no {line_name}; use {', '.join([THE_FIGURE, *(one.name for one in answer.lines)])}"
    if key == "wait" and (line is None or line.unit != "h"):
        return f"a wait is in hours, which {use}.{line_name} is not"
    shown = line.shown if line is not None else answer.figure
    page.live[f"{use}.{line_name}"] = LiveFigure(shown, unit_on_paper(shown))
    return ""


def _place(block: Block, at: int, key: str, written: str) -> tuple[int, int]:
    """Line and column of a figure in its block; the beginning of its text where a text is broken over lines."""
    line, column = block.at(at, key)
    row = block.text.splitlines()[line - block.line]
    inside = row.find(written, column - 1)
    return (line, inside + 1) if inside >= 0 else (line, column)
