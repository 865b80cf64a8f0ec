"""What was found: a fault has to be mended, a note is what a host might do better and the book does without."""

from collections.abc import Iterable
from typing import NamedTuple

SHOWN = 3  # of faults that say the same of many files; the rest is counted


class Found(NamedTuple):
    """One thing that is not as it should be: where, what kind, what and what to do."""

    where: str
    code: str
    message: str
    is_note: bool = False

    def __str__(self) -> str:
        return f"{self.where}: {'note: ' if self.is_note else ''}{self.code} {self.message}"


def printed(found: Iterable[Found]) -> list[str]:
    """Return the lines to print: what is wrong with many files in the same way is told of the first ones and counted."""
    same: dict[tuple[bool, str, str], list[Found]] = {}
    for one in found:
        same.setdefault((one.is_note, one.code, one.message), []).append(one)
    lines = []
    for (_, code, _), ones in sorted(same.items(), key=lambda pair: pair[0][0]):
        lines += [str(one) for one in ones[:SHOWN]]
        if len(ones) > SHOWN:
            lines.append(f"{ones[SHOWN].where} and {len(ones) - SHOWN - 1} files more: {code}, the same")
    return lines
