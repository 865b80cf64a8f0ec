"""What keeps people from harm stands on each finished page of an edition, in sight: looked for in the HTML itself, whatever was written."""

from html.parser import HTMLParser
from pathlib import Path

from handbook.content.faults import ContentFault
from handbook.content.reading import Hold, read_page
from handbook.firm.own_pages import OwnPages, written
from handbook.make import cautions

UNSEEN = ("script", "style", "template", "pre", "code", "textarea", "title", "noscript")
VOID = ("area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr")


class InSight(HTMLParser):
    """Collects the cautions and the hold points of a page that a reader sees."""

    def __init__(self) -> None:
        super().__init__()
        self.cautions: set[str] = set()
        self.holds: set[str] = set()
        self._open: list[tuple[str, bool]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        told = dict(attrs)
        unseen = tag in UNSEEN or "hidden" in told or "unseen" in (told.get("class") or "").split()
        if tag not in VOID:
            self._open.append((tag, unseen))
        if unseen or any(one for _, one in self._open):
            return
        if caution := told.get("data-caution"):
            self.cautions.add(caution)
        if "hold" in (told.get("class") or "").split():
            self.holds.add(told.get("id") or "")

    def handle_endtag(self, tag: str) -> None:
        for at in range(len(self._open) - 1, -1, -1):
            if self._open[at][0] == tag:
                del self._open[at:]
                return


def faults(pages: OwnPages, docs: Path, site: Path) -> list[ContentFault]:
    """Return a fault for each caution and hold point of the book at `docs` that the finished `site` of an edition does not show."""
    found = []
    for name, path in written(docs).items():
        if name in pages.left_out:
            continue
        page = read_page(path, docs)
        stem = name.removesuffix(".md")
        seen = InSight()
        seen.feed((site / ("index.html" if stem == "index" else f"{stem}/index.html")).read_text(encoding="utf-8"))
        shown = pages.written_in.get(name, f"docs/{name}")
        for caution in cautions.every(page):
            if caution not in seen.cautions:
                found.append(
                    ContentFault(
                        shown,
                        1,
                        1,
                        "FIRM-CAUTION",
                        f"the caution {caution} is not to be seen on the finished page, and the book has it there",
                    )
                )
        for block in page.blocks:
            for one in block.data.root if block.kind == "steps" else ():
                if isinstance(one, Hold) and one.hold not in seen.holds:
                    found.append(
                        ContentFault(
                            shown,
                            1,
                            1,
                            "FIRM-HOLD",
                            f"the hold point {one.hold} is not to be seen on the finished page, and the book has it there",
                        )
                    )
    return found
