"""Rules whose sources are due for another look. It warns and stops nothing: a book does not break because a day has passed."""

import datetime
from pathlib import Path

from calc.evidence import limits, local
from handbook.content.faults import relative
from handbook.evidence import decisions


def due(today: datetime.date) -> list[str]:
    """Return a line for each rule of the choice of way and each limit of a place whose review date has passed."""
    found = decisions.to_review(today)
    rows = [
        (path, at, row)
        for path in (Path(limits.__file__), Path(local.__file__))
        for at, row in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
    ]
    for limit in limits.LIMITS:
        if datetime.date.fromisoformat(limit.review_by) < today:
            path, line = next((path, at) for path, at, row in rows if f'"{limit.id}"' in row or f"'{limit.id}'" in row)
            where = f"{relative(path, decisions.CALC.parent)}:{line}:1"
            found.append(
                f"{where}: REVIEW the limit {limit.id} was due for another look at its source on {limit.review_by}"
            )
    return found
