"""Published limits on a page: all of them as a table, and those that an edition adds for its own places as a list.

Each carries the day by which somebody looks at its source again. The page compares that day with the reader's (`review.mjs`).
"""

from calc.evidence.limits import LIMITS, OF_EDITION, Limit
from calc.evidence.sources import source
from calc.render.escape import escaped

HEADS = ("Place", "About", "Limit", "Who answers", "Source", "Looked at", "Review by")


def table() -> str:
    """Return every limit that this edition knows, as HTML."""
    rows = "".join(
        "<tr>" + "".join(f"<td>{escaped(one)}</td>" for one in _told(limit)) + f"<td>{day(limit.review_by)}</td></tr>"
        for limit in LIMITS
    )
    heads = "".join(f"<th>{one}</th>" for one in HEADS)
    return (
        '<section class="wide" tabindex="0" aria-label="Published limits"><table><thead><tr>'
        f"{heads}</tr></thead><tbody>{rows}</tbody></table></section>"
    )


def of_edition() -> str:
    """Return the limits that this edition adds, as HTML, and where all of them stand."""
    rows = "".join(
        f"<li><b>{escaped(limit.place)}</b>, {escaped(limit.topic)}: {escaped(limit.says)}. Ask {escaped(limit.ask)}. <cite>{escaped(source(limit.source).title)}</cite>,"
        f" looked at {limit.reviewed_on}, review by {day(limit.review_by)}</li>"
        for limit in LIMITS
        if limit.place in OF_EDITION
    )
    listed = f'<p>Limits of this edition\'s own places:</p><ul class="of-edition">{rows}</ul>' if rows else ""
    return f'{listed}<p>All limits that this book knows, each with its day: <a href="../../reference/limits/">Published limits</a>.</p>'


def day(text: str) -> str:
    """Return the day by which somebody looks again, for the page to compare with the reader's."""
    return f'<time datetime="{text}" data-review-by="{text}">{text}</time>'


def _told(limit: Limit) -> tuple[str, ...]:
    return (limit.place or "Federal", limit.topic, limit.says, limit.ask, source(limit.source).title, limit.reviewed_on)
