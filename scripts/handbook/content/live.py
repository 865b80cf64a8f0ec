"""Live figures in the text of a step: `{wetting.water_gal}` stands for what that line of the form on the page shows.

`{wetting.figure}` is the figure that stands above the lines, as 'Water: 2.7 gal' in the form. What they show lies in
`Page.live`, by the name between the braces.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass

FIGURE = re.compile(r"\{([a-z]+)\.([a-z_]+)\}")
BRACES = re.compile(r"\{[^{}]*\}|[{}]")
LEFT_OUT = "…"


@dataclass(frozen=True)
class LiveFigure:
    """What a line shows for the book's example; `unit` stands on paper, after a blank to write on."""

    shown: str
    unit: str


def filled(text: str, figures: Mapping[str, LiveFigure]) -> str:
    """Return `text` with what each figure shows for the example; one that no form gives stays as it is."""
    return FIGURE.sub(lambda found: _shown(found.group()[1:-1], found.group(), figures), text)


def left_out(text: str) -> str:
    """Return `text` with a mark in the place of each figure, for where no example may stand."""
    return FIGURE.sub(LEFT_OUT, text)


def unit_on_paper(shown: str) -> str:
    """Return the unit that stands after a blank to write on, from a figure as it is shown."""
    unit = re.split(r"[\d'\"]", shown)[-1].strip()
    return unit or ("ft" if "'" in shown else "")


def _shown(name: str, other: str, figures: Mapping[str, LiveFigure]) -> str:
    return figures[name].shown if name in figures else other
