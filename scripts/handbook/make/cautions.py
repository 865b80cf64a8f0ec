"""The hazard messages of a page, grouped, in a section or embedded before a step, as ANSI Z535.6 names them.

Those at the head of a page, before its first part, are *grouped*: the asbestos stop in full, each other as one row with its
signal word, the hazard and what to do, that opens to the rest. One in the text or before a step is told in full there. On paper
every message of the page stands in full on its first sheet, and is not told twice.
"""

import re

from calc import catalogue
from calc.evidence.cautions import CAUTIONS, caution, in_order
from calc.render import html
from calc.render.escape import escaped
from handbook.content.reading import Block, Page
from handbook.lint.hazards import STOP_CAUTION, at_head

# What stands after the signal word of the asbestos stop until somebody's own answers say something else.
UNTESTED = ' <span class="state">· not tested</span>'
TITLE = re.compile(r"\A\s*# [^\n]+\n")


def full(caution_id: str) -> str:
    """Return a message in full; the asbestos stop says that this ceiling is not tested."""
    text = html.caution(caution(caution_id))
    return text.replace("</p>", UNTESTED + "</p>", 1) if caution_id == STOP_CAUTION else text


def reminder(caution_id: str) -> str:
    """Return a message as a row for whoever has read it in full: its signal word and what to do."""
    one = caution(caution_id)
    return f'<p class="reminder alarm-{one.signal.lower()}"><b class="signal">{one.word}</b> <strong>{escaped(one.avoidance)}</strong></p>'


def head_rows(ids: list[str]) -> str:
    """Return messages as rows, each once, the gravest first; '' where there are none."""
    ordered = in_order(tuple([caution(one) for one in ids]))
    rows = "".join(html.short(one, True) for one in ordered)
    return f'<div class="alarms">{rows}</div>' if rows else ""


def message(page: Page, block: Block) -> str:
    """Return what stands where the page has `block`, a caution: in full in the text. At the head the first of them brings all: the
    asbestos stop in full, the others as rows; what stood after it there is not said again."""
    head = at_head(page)
    if not any(one is block for one in head):
        return full(block.data.id)
    if block is not head[0]:
        return ""
    ids = [one.data.id for one in head]
    stop = full(STOP_CAUTION) if STOP_CAUTION in ids else ""
    return stop + head_rows([one for one in ids if one != STOP_CAUTION])


def on_paper(ids: list[str]) -> str:
    """Return messages in full as a list that stands on paper alone, each once, the gravest first; '' where there are none."""
    rows = "".join(
        f'<li class="alarm-{one.signal.lower()}"><b class="signal">{one.word}{UNTESTED if one.id == STOP_CAUTION else ""}</b> <span class="what">{escaped(one.hazard)}</span> '
        f"{escaped(one.consequence)} <strong>{escaped(one.avoidance)}</strong>{html.mark_of(one.source)}</li>"
        for one in in_order(tuple([caution(one) for one in ids]))
    )
    return f'<ul class="paper-hazards">{rows}</ul>' if rows else ""


def with_paper(page: Page, text: str) -> str:
    """Return the finished text of a page with its list for paper under the title."""
    listed = on_paper(every(page))
    found = TITLE.match(text)
    return text[: found.end()] + f"\n{listed}\n" + text[found.end() :] if listed and found else text


def every(page: Page) -> list[str]:
    """Return the ids of all messages of a page, in its order: its own, those of its steps, and what its calculators always say."""
    found: list[str] = []
    for block in page.blocks:
        if block.kind == "caution":
            found.append(block.data.id)
        elif block.kind == "steps":
            found += [step.caution for step in block.data.root if getattr(step, "caution", None)]
        elif block.kind == "calculator":
            calculator = catalogue.find(block.data.use)
            found += calculator.always if calculator else ()
    known = [one.id for one in CAUTIONS]
    return [one for one in dict.fromkeys(found) if one in known]
