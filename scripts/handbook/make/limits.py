"""Published limits on a page: all of them, and those that an edition adds for its own places.

Each carries the day by which somebody looks at its source again. The page compares that day with the reader's (`review.mjs`).
"""

from calc.evidence.limits import LIMITS, OF_EDITION, Limit, ask_told, place_told, says_told
from calc.evidence.sources import source
from calc.render.escape import escaped

# Which buildings a limit holds for: one place can have a figure for each kind.
BUILDINGS = {
    "house": "a house of up to four dwellings",
    "other": "buildings other than a house of up to four dwellings",
    "any": "every building",
    "assisted": "a home with federal help",
}


def listed() -> str:
    """Return every limit that this edition knows, as HTML: a list, which a phone shows whole."""
    return f'<ul class="limits">{"".join(map(_row, LIMITS))}</ul>'


def of_edition() -> str:
    """Return the limits that this edition adds, as HTML, and where all of them stand."""
    rows = "".join(_row(limit) for limit in LIMITS if limit.place in OF_EDITION)
    own = f'<p>Limits of this edition\'s own places:</p><ul class="limits">{rows}</ul>' if rows else ""
    return f'{own}<p>All limits that this book knows, each with its day: <a href="../../reference/limits/">Published limits</a>.</p>'


def day(text: str) -> str:
    """Return the day by which somebody looks again, for the page to compare with the reader's."""
    return f'<time datetime="{text}" data-review-by="{text}">{text}</time>'


def _row(limit: Limit) -> str:
    return (
        f"<li><b>{escaped(place_told(limit.place))}</b>, {escaped(limit.topic)}, {BUILDINGS[limit.building]}: {escaped(says_told(limit))}. Ask {escaped(ask_told(limit))}."
        f" <cite>{escaped(source(limit.source).title)}</cite>, looked at {limit.reviewed_on}, review by {day(limit.review_by)}</li>"
    )
