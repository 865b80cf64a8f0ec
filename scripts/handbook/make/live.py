"""Figures of the forms in the steps: the example's, marked as one, until `docs/assets/live.mjs` puts the reader's own there."""

import re

from calc import catalogue
from calc.render.escape import escaped
from handbook.content.live import FIGURE
from handbook.content.reading import LIVE_WAIT, WAIT, Block, Page, Step
from handbook.evidence import example


def spans(text: str, page: Page) -> str:
    """Return the text of a step as HTML, each figure in a place of its own."""

    def place(found: re.Match[str]) -> str:
        name = found.group()[1:-1]
        one = page.live[name]  # checked before
        return (
            f'<span class="live" data-figure="{name}" data-shows="example" data-unit="{escaped(one.unit)}">'
            f"{escaped(one.shown)}</span>"
        )

    # One element holds all of the sentence, which is read on a ladder without what stands after it.
    return f'<span class="says">{FIGURE.sub(place, escaped(text))}</span>' if FIGURE.search(text) else escaped(text)


def wait(step: Step) -> str:
    """Return how long to wait after a step; the timers read the minutes. A wait by a form's figures begins as the usual one:
    no timer runs by the hours of an example."""
    if not step.wait:
        return ""
    by = LIVE_WAIT.fullmatch(step.wait)
    told = step.usual or "" if by else step.wait
    least, most, unit = WAIT.fullmatch(told).groups()  # type: ignore[union-attr]
    each = 60 if unit == "h" else 1
    hours = f' data-hours="{" ".join(one[1:-1] for one in by.groups() if one)}"' if by else ""
    return f'<span class="wait" data-least="{int(least) * each}" data-most="{int(most or least) * each}"{hours}>Wait {told}</span>'


def note(block: Block) -> str:
    """Return what is said once above steps with figures: whose they are, and which forms wait for the reader's own."""
    texts = " ".join(
        text for one in block.data.root for key in ("do", "until", "know") if (text := getattr(one, key, ""))
    )
    used = dict.fromkeys(found.group(1) for found in FIGURE.finditer(texts))
    if not used:
        return ""
    room = example.FACTS["rooms"].replace(":", "")
    forms = "".join(
        f'<span data-of="{one.name}"><a href="#{one.name}">{escaped(one.title)}</a></span>'
        for one in map(catalogue.find, used)
        if one is not None
    )
    return (
        f'<p class="live-note" data-says="example">Figures in dashed lines are of a made-up room: {escaped(room)}. '
        "Give your rooms and they are yours.</p>"
        f'<p class="live-note" data-says="blank" hidden>Where … stands, a form waits for your figures: {forms}</p>'
    )
