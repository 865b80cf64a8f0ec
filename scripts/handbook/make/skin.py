"""The book under another theme: its style sheets confined to the book, so that they and those of the theme leave each other alone."""

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from html import escape
from pathlib import Path

from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig

OWN = "own"
CONFIGS = {OWN: "mkdocs.yml", "material": "docs/skin-material/mkdocs.yml"}
# What the own skin says of its page, and how the other theme says it; nothing where that theme decides by itself.
SAID = {
    ':root:not([data-scheme="light"])': "",
    ':root[data-scheme="light"]': '[data-md-color-scheme="default"]',
    ':root[data-scheme="dark"]': '[data-md-color-scheme="slate"]',
    ":root:root:root": "body[data-md-color-scheme][data-md-color-scheme]",
}
MAIN = re.compile(r"(?<![\w.#-])main(?![\w-])")  # there the theme has an element of that name round more than the book
ROOT = re.compile(r":root|html|body|\[data-md-")
COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
REM = re.compile(r"(?<![\w.])(\d*\.?\d+)rem\b")
REM_HERE = 18 / 20  # pixels of a rem in the own skin, and under mkdocs-material
# What that theme brings for other languages than the book's, and for people who look into its scripts.
UNUSED = ("assets/javascripts/lunr/**/*.js", "assets/**/*.map", "assets/images/favicon.png")


def config(root: Path, extra: Mapping[str, object], chosen: str) -> MkDocsConfig:
    """Return how MkDocs builds the book at `root` in the chosen skin; `extra` is what the templates tell."""
    found = load_config(str(root / CONFIGS[chosen]))
    found.extra.update(extra)
    if chosen != OWN:
        found.theme.dirs.insert(1, str(root / "docs" / "theme"))  # the parts that all skins share, and the lost page
    return found


def joined(docs: Path, names: Sequence[str], chosen: str) -> str:
    """Return the style sheets of the book as one, in the order of `names`; the sheet of another skin comes last, as it stands."""
    css = "".join((docs / "styles" / f"{name}.css").read_text(encoding="utf-8") for name in names)
    return (
        css if chosen == OWN else confined(css) + (docs / "skin-material" / "material.css").read_text(encoding="utf-8")
    )


def settle(site: Path, chosen: str) -> None:
    """Put the book's words into the search of the theme, and take out what no page of the book asks for."""
    if chosen == OWN:
        return
    index = site / "search" / "search_index.json"
    own = (site / "search.json").read_text(encoding="utf-8")
    index.write_text(own_words(own, index.read_text(encoding="utf-8")), encoding="utf-8")
    for path in (path for pattern in UNUSED for path in site.glob(pattern)):
        path.unlink()


def own_words(index: str, made: str) -> str:
    """Return the index of the theme's search, `made` by its plugin, with the places of the book's own `index` in it: a fifth of the size,
    no worked example among what is found, and each address opens its fold."""
    docs = [
        {"location": address, "title": escape(title), "text": escape(text)}
        for address, title, _, text in json.loads(index)["entries"]
    ]
    return json.dumps(json.loads(made) | {"docs": docs}, ensure_ascii=False, separators=(",", ":"))


def confined(css: str) -> str:
    """Return the style sheets with each rule kept to what is inside of the book, and each length as long as in the own skin."""
    return _rules(COMMENT.sub("", css))


def _rules(css: str) -> str:
    done = []
    for head, body in _split(css):
        if head.startswith(("@media", "@supports")):
            inside = _rules(body)
            done.append(f"{head} {{\n{inside}}}\n" if inside else "")
        elif head.startswith("@"):  # the paper that a page is printed on
            done.append(f"{head} {{{body}}}\n")
        elif selectors := [placed for one in _listed(head) if (placed := _placed(one))]:
            done.append(f"{', '.join(selectors)} {{{REM.sub(_counted_down, body)}}}\n")
    return "".join(done)


def _split(css: str) -> Iterator[tuple[str, str]]:
    """Yield each rule: what stands before its braces, and what stands in them."""
    start = 0
    while (opens := css.find("{", start)) >= 0:
        depth, at = 1, opens + 1
        while depth:
            depth += {"{": 1, "}": -1}.get(css[at], 0)
            at += 1
        yield css[start:opens].strip(), css[opens + 1 : at - 1]
        start = at


def _listed(head: str) -> list[str]:
    """Return the selectors of a rule one by one; a comma in brackets parts none."""
    listed, depth = [""], 0
    for mark in head:
        depth += {"(": 1, ")": -1}.get(mark, 0)
        if mark == "," and not depth:
            listed.append("")
        else:
            listed[-1] += mark
    return [one.strip() for one in listed]


def _placed(selector: str) -> str:
    for own, here in SAID.items():
        if selector.startswith(own):
            if not here:
                return ""
            selector = here + selector.removeprefix(own)
    selector = MAIN.sub(":where(#content)", selector)
    if not ROOT.match(selector):
        return ".book " + selector
    page, _, inside = selector.partition(" ")
    if inside:
        return f"{page} .book {inside}"
    return "" if page in ("html", "body") else page  # the frame of the page is the theme's


def _counted_down(found: re.Match[str]) -> str:
    return f"{float(found.group(1)) * REM_HERE:.4f}".rstrip("0").rstrip(".") + "rem"
