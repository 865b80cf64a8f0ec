"""The cover sheet: three doors, and the ways to choose from by looking. It stands at the root, so its links need no way up."""

from pathlib import Path

from calc.render import svg
from calc.render.escape import escaped
from handbook.content.reading import Block, Page
from handbook.draw import figures


def doors(block: Block, page: Page) -> str:
    """Return the doors: what most people come for, the first one first."""
    rows = "".join(
        f'<li><a class="door" href="{address(one.to)}"{" data-last" if one.last else ""}>'
        f"<b>{escaped(one.says)}</b><span>{escaped(one.more)}</span></a></li>"
        for one in block.data.root
    )
    return f'<ul class="doors">{rows}</ul>'


def ways(block: Block, page: Page) -> str:
    """Return every way: what it makes of a ceiling as a drawing, its name, one line, and the days it takes."""
    rows = "".join(
        f'<li><a href="methods/{one.way}/">{_picture(one.way)}<b>{escaped(_title(page, one.way))}</b></a>'
        f"<p>{escaped(one.line)}</p><p>{escaped(one.days)}</p></li>"
        for one in block.data.root
    )
    return f'<ul class="ways">{rows}</ul>'


def address(path: str) -> str:
    """Return the address of the page at `path` of the Markdown, from the root; an anchor stays."""
    stem, mark, anchor = path.partition("#")
    stem = stem.removesuffix(".md")
    return ("./" if stem == "index" else stem + "/") + mark + anchor


def _picture(way: str) -> str:
    """The small section of a way. The name stands beside it, so nobody is read it twice."""
    drawn = figures.FIGURES.get(f"way-{way}-small")
    return f'<span class="small" aria-hidden="true">{svg.svg(drawn(), "cover-" + way)}</span>' if drawn else ""


def _title(page: Page, way: str) -> str:
    text = Path(page.path.parent, "methods", f"{way}.md").read_text(encoding="utf-8")
    return next(row.removeprefix("title: ") for row in text.splitlines() if row.startswith("title: "))
