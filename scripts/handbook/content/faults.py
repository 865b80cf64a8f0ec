"""What is wrong with the content, as `path:line:col: CODE message`; every fault is collected before any is shown."""

from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, order=True)
class ContentFault:
    """One fault at `line` and `column` (both from 1) of the file at `path`."""

    path: str
    line: int
    column: int
    code: str
    message: str

    def __str__(self) -> str:
        return f"{self.path}:{self.line}:{self.column}: {self.code} {self.message}"


class ContentFaults(Exception):
    """Raised once, with every fault found."""

    def __init__(self, faults: list[ContentFault]) -> None:
        self.faults = sorted(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


def relative(path: Path, root: Path) -> str:
    """Return `path` as it is shown in a fault: from the root of the project, with forward slashes."""
    return path.resolve().relative_to(root.resolve()).as_posix()
