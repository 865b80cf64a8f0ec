"""A way's or a task's page in folds: what acts stands open, the rest is one line that says what it holds.

Sections of the written page go by their headings; the page as it is written keeps its order inside each fold.
"""

import posixpath
import re
from dataclasses import dataclass, field

import markdown
from markdown.extensions.toc import slugify

from calc.render.escape import escaped
from handbook.content.reading import Hold, Page
from handbook.evidence import example

HEADING = re.compile(r"^## (.+?)(?: *\{[^}]*\})?$", re.MULTILINE)
EXTENSIONS = ["attr_list", "tables", "md_in_html", "toc"]  # those of mkdocs.yml
WRITTEN_LINK = re.compile(r'href="([^":]+)\.md(#[^"]*)?"')
SCREEN = re.compile(r'(<div class="screen"[^>]*>\s*<p>.*?</p>)\s*(<dl>.*?</dl>)\s*</div>', re.DOTALL)
TAKES = re.compile(r"<dt>Takes</dt><dd>(.*?[.])(?: |</dd>)")
STEPS = ("Steps", "What good looks like", "Clear up and hand over")
WRONG = ("What goes wrong",)
NAMED = ("Steps", "What goes wrong", "Your rooms")  # headings whose name and address the fold itself has


@dataclass
class Section:
    """What stands under one heading of the written page, as (kind of block, text) pairs."""

    title: str
    parts: list[tuple[str, str]] = field(default_factory=list)


def sections(parts: list[tuple[str, str]]) -> list[Section]:
    """Return (kind, text) parts by the headings that they stand under; the first section has none."""
    found = [Section("")]
    for kind, text in parts:
        if kind != "markdown":
            found[-1].parts.append((kind, text))
            continue
        at = 0
        for heading in HEADING.finditer(text):
            found[-1].parts.append((kind, text[at : heading.start()]))
            found.append(Section(heading.group(1)))
            at = heading.end()
        found[-1].parts.append((kind, text[at:]))
    return found


def folded(page: Page, parts: list[tuple[str, str]], cited: str, count: int) -> str:
    """Return the page in folds; `cited` is its list of `count` sources."""
    head, *rest = sections(parts)
    way = page.head is not None and page.head.kind == "way"
    rooms = [one for one in rest if way and any(kind == "calculator" for kind, _ in one.parts)]
    steps = [one for one in rest if one.title in STEPS]
    wrong = [one for one in rest if one.title in WRONG]
    other = [one for one in rest if one not in rooms + steps + wrong]
    opening = "\n\n".join(text for _, text in head.parts)
    told = ""
    if way:
        screen = SCREEN.search(opening)
        assert screen  # a way without its screen is a fault
        opening = opening.replace(screen.group(), screen.group(1) + "</div>")
        told = f'<div class="screen">{screen.group(2)}</div>\n\n'
        takes = TAKES.search(screen.group(2))
        assert takes
        short = _fold("In short", "in-short", takes.group(1), told + _under(other, page))
        plan = _fold("For your rooms", "your-rooms", _example(), _under(rooms, page), shut=False)
    else:
        short = _fold("Good to know", "good-to-know", _listed(other), _under(other, page)) if other else ""
        plan = ""
    folds = [
        opening,
        short,
        plan,
        _fold("Steps", "steps", _counted(page), _under(steps, page)),
        _fold("What goes wrong", "what-goes-wrong", _troubles(page), _under(wrong, page)) if wrong else "",
        _fold("Sources", "sources", f"{count} cited here", cited) if cited else "",
    ]
    return "\n\n".join(one for one in folds if one.strip()) + "\n"


def _fold(title: str, address: str, small: str, inner: str, shut: bool = True) -> str:
    opened = "" if shut else " open"
    return (
        f'<details class="fold"{opened}><summary><h2 id="{address}">{title}</h2> <small>{small}</small></summary>\n'
        + inner
        + "\n</details>"
    )


def _under(found: list[Section], page: Page) -> str:
    """The sections one after the other, each under its own heading but the one that gives the fold its name."""
    texts = []
    for one in found:
        if one.title not in NAMED:
            texts.append(f'<h3 id="{slugify(one.title, "-")}">{escaped(one.title)}</h3>')
        texts += [as_html(text, page) if kind == "markdown" else text for kind, text in one.parts]
    return "\n".join(texts)


def as_html(text: str, page: Page) -> str:
    """Return Markdown of `page` as HTML. What stands inside a fold has to be HTML: a builder takes a fold as it is."""
    made = markdown.markdown(text, extensions=EXTENSIONS, extension_configs={"toc": {"permalink": False}})
    folder = page.path.relative_to(page.path.parents[1]).parent.as_posix()

    def led(found: re.Match[str]) -> str:
        goal = posixpath.normpath(posixpath.join(folder, found.group(1)))
        return f'href="../../{"" if goal == "index" else goal + "/"}{found.group(2) or ""}"'

    return WRITTEN_LINK.sub(led, made)


def _listed(found: list[Section]) -> str:
    titles = [one.title for one in found]
    return escaped(", ".join([titles[0], *(one[0].lower() + one[1:] for one in titles[1:])]))


def _example() -> str:
    rooms = dict(example.inputs_of("takeoff"))["rooms"]
    return f'<span class="eg">Example, made up: {escaped(rooms)}</span>'


def _counted(page: Page) -> str:
    every = [one for block in page.blocks if block.kind == "steps" for one in block.data.root]
    holds = sum(isinstance(one, Hold) for one in every)
    return f"{len(every) - holds}, with {holds} hold point{'' if holds == 1 else 's'}"


def _troubles(page: Page) -> str:
    count = sum(len(block.data.root) for block in page.blocks if block.kind == "trouble")
    return f"{count} troubles, {count} cures"
