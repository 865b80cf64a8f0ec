"""Where a reader of a built page meets its hazard messages: the one reader for the tests, and for a table of how many boxes stand.

`python tests/handbook/met.py SITE …` prints for each page of each site how many messages stand in full before the first figure
and on the whole page, and how many as rows; `python tests/handbook/met.py --places SITE` the places that the tests hold ways to.
"""

import json
import sys
from dataclasses import dataclass
from html.parser import HTMLParser
from pathlib import Path

PLACES = ("head", "section", "step")  # in reading order: before the first part, in one, right before a step
VOID = ("br", "hr", "img", "input", "link", "meta", "path", "wbr")


@dataclass(frozen=True)
class Met:
    """Something met in reading: `kind` is 'message', 'step' or 'figure'; `place` and `full` tell of a message, `answer` whether a
    calculator says it."""

    kind: str
    id: str
    place: str = ""
    full: bool = False
    answer: bool = False


class Reader(HTMLParser):
    """Reads a page from its top, and keeps what it meets in `found`."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[Met] = []
        self.open: list[tuple[str, str]] = []
        self.in_head = True

    def within(self, name: str) -> bool:
        return any(name in classes.split() for _, classes in self.open)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        told = {name: value or "" for name, value in attrs}
        classes = told.get("class", "").split()
        if tag in ("h2", "h3") or {"fold", "steps", "calc"} & set(classes):
            self.in_head = False
        if "data-caution" in told:
            place = "head" if self.in_head else "step" if self.within("step-caution") else "section"
            self.found.append(
                Met("message", told["data-caution"], place, "short" not in classes, self.within("answer"))
            )
        elif tag == "li" and {"step", "hold"} & set(classes):
            self.found.append(Met("step", told["id"]))
        elif tag == "p" and "figure" in classes:
            self.found.append(Met("figure", ""))
        if tag not in VOID:
            self.open.append((tag, told.get("class", "")))

    def handle_endtag(self, tag: str) -> None:
        if tag in [one for one, _ in self.open]:
            while self.open.pop()[0] != tag:
                pass


def met(path: Path) -> list[Met]:
    """Return what a reader of the page at `path` meets, in its order."""
    reader = Reader()
    reader.feed(path.read_text(encoding="utf-8"))
    return reader.found


def steps(found: list[Met]) -> list[str]:
    """Return the ids of steps and hold points in their order."""
    return [one.id for one in found if one.kind == "step"]


def first_places(found: list[Met]) -> dict[str, dict[str, str]]:
    """Return by message, other than those of answers, the place where it is first met, and the id of the step that comes next."""
    places: dict[str, dict[str, str]] = {}
    for at, one in enumerate(found):
        if one.kind == "message" and not one.answer and one.id not in places:
            after = steps(found[at:])
            places[one.id] = {"place": one.place, "before": after[0] if after else ""}
    return places


def ways(site: Path) -> dict[str, dict[str, dict[str, str]]]:
    """Return the first places of every way."""
    return {path.parent.name: first_places(met(path)) for path in sorted((site / "methods").glob("*/index.html"))}


def boxes(site: Path) -> dict[str, tuple[int, int, int]]:
    """Return by page how many messages stand in full before the first figure, in full on the page, and as rows."""
    counts = {}
    for path in sorted(site.rglob("index.html")):
        found = met(path)
        until = next((at for at, one in enumerate(found) if one.kind == "figure"), len(found))
        messages = [one for one in found if one.kind == "message"]
        before = [one for one in found[:until] if one.kind == "message" and one.full]
        full = [one for one in messages if one.full]
        if messages:
            counts[path.parent.relative_to(site).as_posix()] = (len(before), len(full), len(messages) - len(full))
    return counts


def main() -> None:
    if sys.argv[1] == "--places":
        print(json.dumps(ways(Path(sys.argv[2])), indent=1))
        return
    tables = [boxes(Path(one)) for one in sys.argv[1:]]
    for page in sorted({page for table in tables for page in table}):
        print(page.ljust(32), *[" / ".join(str(count) for count in table.get(page, ())).ljust(16) for table in tables])
    for at in range(3):
        print("sum".ljust(32), [sum(row[at] for row in table.values()) for table in tables])


if __name__ == "__main__":
    main()
