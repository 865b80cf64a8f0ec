"""Spelling and terms: every word of the book is in the dictionary or in the house list, and a thing has one name.

The dictionary is a frequency list of American English; what the trade says beyond it stands in `docs/words.txt`, a word a
line. The glossary says which names a thing does not have here (`avoid`).
"""

import functools
import re
from pathlib import Path

from spellchecker import SpellChecker

from handbook.content.reading import Page, Terms

HOUSE_LIST = "words.txt"
WORD = re.compile(r"[A-Za-z][a-z]*(?:['’][a-z]+)?")
NO_PROSE = re.compile(
    r"`[^`]*`|\]\([^)]*\)|<[^>]*>|\{[^}]*\}|^\s*(?:use|id|caution|figure|was|wait|hold|- id|- hold):.*$|^[a-z_]+: \"[^\"]*\"$|#\S+"
)


@functools.cache
def dictionary() -> SpellChecker:
    return SpellChecker(language="en", distance=1)


def check_words(page: Page, docs: Path, terms: list[tuple[str, str]], more: frozenset[str] = frozenset()) -> None:
    """Add a fault for each word that no list knows, and for each name that the glossary turns away."""
    house = _house_words(docs / HOUSE_LIST) | more
    for block in page.blocks:
        if block.kind == "calculator" or block.kind == "sources":
            continue
        for offset, row in enumerate(block.text.splitlines()):
            plain = NO_PROSE.sub(lambda found: " " * len(found.group()), row)
            for found in WORD.finditer(plain):
                word = found.group().replace("’", "'").removesuffix("'s")
                if word.isupper() or len(word) < 3 or not _touches_no_digit(plain, found):
                    continue
                if word.lower() not in house and dictionary().unknown([word.lower()]):
                    page.fault(
                        block.line + offset,
                        found.start() + 1,
                        "SPELL",
                        f"“{word}” is in no list of words; put it right, or add it to docs/{HOUSE_LIST}",
                    )
            if block.kind != "terms":
                for name, instead in terms:
                    for found in re.finditer(rf"\b{re.escape(name)}\b", plain, re.IGNORECASE):
                        page.fault(
                            block.line + offset,
                            found.start() + 1,
                            "TERM",
                            f"“{found.group()}” is called {instead} in this book",
                        )


def avoided_terms(pages: list[Page]) -> list[tuple[str, str]]:
    """Return (name that is turned away, name to use) from every block of terms."""
    return [
        (name, term.term)
        for page in pages
        for block in page.blocks
        if isinstance(block.data, Terms)
        for term in block.data.root
        for name in term.avoid
    ]


@functools.cache
def _house_words(path: Path) -> frozenset[str]:
    return frozenset(path.read_text(encoding="utf-8").lower().split()) if path.exists() else frozenset()


def _touches_no_digit(text: str, found: re.Match[str]) -> bool:
    before, after = text[: found.start()][-1:], text[found.end() :][:1]
    return not (before.isdigit() or after.isdigit() or before in "./_" or after in "_/")
