"""Which edition this is, for the foot of every page: its number and its day, from the files that say so, never from the clock."""

import re
import tomllib
from pathlib import Path


def edition(root: Path) -> dict[str, str]:
    """Return the number of `pyproject.toml` and the day that the list of changes gives it."""
    number = tomllib.loads((root / "pyproject.toml").read_text(encoding="utf-8"))["project"]["version"]
    changes = (root / "CHANGELOG.md").read_text(encoding="utf-8")
    day = re.search(rf"^## {re.escape(number)}, (\d{{4}}-\d\d-\d\d)$", changes, re.MULTILINE)
    if not day:
        raise RuntimeError(f"CHANGELOG.md gives no day for edition {number}")
    return {"number": number, "day": day[1]}
