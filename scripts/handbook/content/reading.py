"""Reads source pages: front matter, Markdown, and blocks of data in fences; each fault knows its line and column.

A page is Markdown with a YAML head. A fence whose name is one of `BLOCKS` holds YAML: steps, a caution, a
calculator and so on. Everything is read and checked before anything is written.
"""

import datetime
import re
from dataclasses import dataclass, field
from pathlib import Path
from typing import Annotated, Any, Literal

import yaml
from pydantic import BaseModel, ConfigDict, Field, RootModel, ValidationError

from handbook.content.faults import ContentFault, relative
from handbook.content.live import LiveFigure

FENCE = re.compile(r"^```([A-Za-z][\w-]*)\s*$")
WAIT = re.compile(r"^(\d+)(?: to (\d+))? (min|h)$")
LIVE_WAIT = re.compile(r"^(\{[a-z]+\.[a-z_]+\})(?: to (\{[a-z]+\.[a-z_]+\}))?$")
STANDS_FOR = re.compile(r"[&*]\w")
STEP_ID = Annotated[str, Field(pattern=r"^[a-z][a-z0-9]*(-[a-z0-9]+)*$")]


class Strict(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class Head(Strict):
    """The head of a page."""

    title: str
    kind: Literal["home", "way", "choice", "task", "search", "job", "reference"]
    summary: str
    reviewed: datetime.date
    facts: str


class Step(Strict):
    """One action. `was` are ids that it had before, which stay addresses; `figure` is drawn and `caution` told before it;
    `wait` is how long it takes until the next ('15 min', '2 to 4 h'), or figures of a form ('{drying.hours_low} to
    {drying.hours_high}'); then `usual` is what holds until somebody gave that form figures."""

    id: STEP_ID
    do: str
    caution: str | None = None
    figure: str | None = None
    wait: Annotated[str, Field(pattern=f"{WAIT.pattern}|{LIVE_WAIT.pattern}")] | None = None
    usual: Annotated[str, Field(pattern=WAIT.pattern)] | None = None
    was: list[STEP_ID] = []


class Hold(Strict):
    """A step that may not be passed until something is true."""

    hold: STEP_ID
    until: str
    know: str
    was: list[STEP_ID] = []


class Steps(RootModel[list[Step | Hold]]):
    pass


class CautionBlock(Strict):
    id: str


class CalculatorBlock(Strict):
    use: str
    example: dict[str, str] | None = None


class Trouble(Strict):
    see: str
    why: str
    cure: str


class Troubles(RootModel[list[Trouble]]):
    pass


class FigureBlock(Strict):
    use: str


class Term(Strict):
    """A word of the trade: what it means, `also` what people call it (for the search), `avoid` what this book does not call it;
    `see` are pages that tell more, from the root of the book."""

    term: str
    means: str
    see: list[str] = []
    also: list[str] = []
    avoid: list[str] = []


class Terms(RootModel[list[Term]]):
    pass


class SourceIds(RootModel[list[str]]):
    pass


class Asked(Strict):
    """Everything that the forms of the book ask, each leading to its form."""

    of: Literal["every form"]


class OfEdition(Strict):
    """The published limits that this edition adds for its own places."""

    of: Literal["this edition"]


class Door(Strict):
    """A way into the book from its cover; `to` is a page from the root, `last` leads to the way last opened where one is known."""

    to: str
    says: str
    more: str
    last: bool = False


class Doors(RootModel[list[Door]]):
    pass


class CoverWay(Strict):
    """A way as the cover shows it: one short line, and the days that it takes."""

    way: str
    line: Annotated[str, Field(max_length=60)]
    days: str


class CoverWays(RootModel[list[CoverWay]]):
    pass


BLOCKS: dict[str, type[BaseModel]] = {
    "steps": Steps,
    "caution": CautionBlock,
    "calculator": CalculatorBlock,
    "trouble": Troubles,
    "figure": FigureBlock,
    "terms": Terms,
    "sources": SourceIds,
    "asked": Asked,
    "limits": OfEdition,
    "doors": Doors,
    "ways": CoverWays,
}


@dataclass
class Block:
    """A piece of a page: plain Markdown (`kind` is 'markdown') or a checked block of data."""

    kind: str
    text: str
    line: int
    data: Any = None
    positions: dict[tuple[Any, ...], tuple[int, int]] = field(default_factory=dict)

    def at(self, *path: Any) -> tuple[int, int]:
        """Return line and column of the value at `path` inside the data, or of the nearest thing that holds it."""
        while path and path not in self.positions:
            path = path[:-1]
        return self.positions.get(path, (self.line, 1))


@dataclass
class Page:
    path: Path
    shown: str
    head: Head | None
    blocks: list[Block]
    faults: list[ContentFault]
    finished: str = ""  # the page with every block filled in, once it is made
    live: dict[str, LiveFigure] = field(default_factory=dict)  # what `{wetting.water_gal}` shows for the example

    def fault(self, line: int, column: int, code: str, message: str) -> None:
        self.faults.append(ContentFault(self.shown, line, column, code, message))


def read_page(path: Path, root: Path) -> Page:
    """Return the page at `path` with every fault of its form."""
    page = Page(path, relative(path, root), None, [], [])
    lines = path.read_text(encoding="utf-8").splitlines()
    start = _read_head(page, lines)
    _read_body(page, lines, start)
    return page


def _read_head(page: Page, lines: list[str]) -> int:
    if not lines or lines[0] != "---" or "---" not in lines[1:]:
        page.fault(1, 1, "HEAD", "a page begins with its head between two lines of ---")
        return 0
    end = lines.index("---", 1)
    block = Block("head", "\n".join(lines[1:end]), 2)
    page.head = _checked(page, block, Head)
    return end + 1


def _read_body(page: Page, lines: list[str], start: int) -> None:
    held: list[str] = []
    first = start + 1
    at = start
    while at < len(lines):
        opened = FENCE.match(lines[at])
        if not opened:
            held.append(lines[at])
            at += 1
            continue
        if "".join(held).strip():
            page.blocks.append(Block("markdown", "\n".join(held), first))
        end = next((row for row in range(at + 1, len(lines)) if lines[row].strip() == "```"), len(lines))
        _read_block(page, opened.group(1), "\n".join(lines[at + 1 : end]), at + 1, end == len(lines))
        held, first, at = [], end + 2, end + 1
    if "".join(held).strip():
        page.blocks.append(Block("markdown", "\n".join(held), first))


def _read_block(page: Page, kind: str, text: str, fence_line: int, is_open: bool) -> None:
    if is_open:
        page.fault(fence_line, 1, "BLOCK", f"the block {kind} is never closed; end it with ```")
        return
    if kind not in BLOCKS:
        page.fault(fence_line, 4, "BLOCK", f"there is no block called {kind}; use {', '.join(sorted(BLOCKS))}")
        return
    block = Block(kind, text, fence_line + 1)
    block.data = _checked(page, block, BLOCKS[kind])
    if block.data is not None:
        page.blocks.append(block)


def _checked(page: Page, block: Block, model: type[BaseModel]) -> Any:
    """Return the YAML of `block` as `model`, or None with its faults told."""
    try:
        for event in yaml.parse(block.text, Loader=yaml.SafeLoader) if STANDS_FOR.search(block.text) else ():
            mark = event.start_mark
            if mark and (isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None)):
                place = mark.line + block.line, mark.column + 1
                page.fault(
                    *place, "YAML", "a value that stands for another (&, *) is not taken. Write it out, or in quotes"
                )
                return None
        node = yaml.compose(block.text, Loader=yaml.SafeLoader)
        if node is None:
            page.fault(block.line, 1, "YAML", "the block is empty")
            return None
        _walk(page, block, node, ())
        data = yaml.safe_load(block.text)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark
        line, column = (mark.line + block.line, mark.column + 1) if mark else (block.line, 1)
        page.fault(line, column, "YAML", error.problem or "this is not YAML")
        return None
    try:
        return model.model_validate(data)
    except ValidationError as error:
        told = set()
        for one in error.errors():
            where = tuple(part for part in one["loc"] if part not in ("Step", "Hold"))
            line, column = block.at(*where)
            message = f"{'.'.join(str(part) for part in where) or block.kind}: {one['msg']}"
            if (line, column, message) not in told:
                told.add((line, column, message))
                page.fault(line, column, "DATA", message)
        return None


def _walk(page: Page, block: Block, node: yaml.Node, path: tuple[Any, ...]) -> None:
    """Note where each value stands, and tell of keys given twice, which YAML would take without a word."""
    block.positions[path] = (node.start_mark.line + block.line, node.start_mark.column + 1)
    if isinstance(node, yaml.MappingNode):
        seen = set()
        for key, value in node.value:
            if key.value in seen:
                line, column = key.start_mark.line + block.line, key.start_mark.column + 1
                page.fault(line, column, "YAML", f"the key {key.value} is given twice")
            seen.add(key.value)
            _walk(page, block, value, (*path, key.value))
    elif isinstance(node, yaml.SequenceNode):
        for index, value in enumerate(node.value):
            _walk(page, block, value, (*path, index))
