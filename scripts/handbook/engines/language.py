"""Another language as a file of data: key -> text, in JSON or TOML, checked and written as the module that `calc` reads.

The keys are those that `python3 scripts/book.py texts` lists. A key may be left out: its English stands there then.
"""

import json
import shutil
import tomllib
from collections import Counter
from functools import cache
from pathlib import Path

from handbook.content.faults import ContentFault, ContentFaults
from handbook.lint.texts import every_text, slots

CODE = "LANGUAGE"
MODULE = "text/language.py"
BESIDE = ("pyproject.toml", "README.md", "LICENSE")  # what the wheel of the calculators is made with


def read(path: Path) -> dict[str, str]:
    """Return the texts in the file at `path` by key; raises ContentFaults for every one that the book cannot use."""
    written = path.read_text(encoding="utf-8")
    twice: list[str] = []

    def once(pairs: list[tuple[str, object]]) -> dict[str, object]:
        keys = [key for key, _ in pairs]
        twice.extend(sorted({key for key, count in Counter(keys).items() if count > 1}))
        return dict(pairs)

    try:
        found = tomllib.loads(written) if path.suffix == ".toml" else json.loads(written, object_pairs_hook=once)
    except (json.JSONDecodeError, tomllib.TOMLDecodeError) as fault:
        raise ContentFaults([_fault(path, getattr(fault, "lineno", 1), str(fault))]) from None
    texts = _flat(found) if isinstance(found, dict) else None
    if texts is None:
        raise ContentFaults([_fault(path, 1, "a language is one table of key and text")])
    english = _english()
    faults = [_fault(path, _line_of(written, key), f"{key} stands twice") for key in twice]
    for key, text in texts.items():
        line = _line_of(written, key)
        if key not in english:
            faults.append(_fault(path, line, f"no text has the key {key}"))
        elif not isinstance(text, str) or not text:
            faults.append(_fault(path, line, f"{key} is no text"))
        elif text.count("{") != text.count("}") or slots(text) != slots(english[key]):
            wanted = ", ".join(slots(english[key])) or "none"
            faults.append(_fault(path, line, f"{key} has other slots than the English, which has {wanted}"))
    if faults:
        raise ContentFaults(faults)
    return texts


@cache
def _english() -> dict[str, str]:
    """The book's own texts by key; all of `calc` is read for them."""
    return {one.key: one.english for one in every_text()}


def source(texts: dict[str, str]) -> str:
    """Return the module that puts `texts` in place of the English ones."""
    # A line each, and not one table of thousands: the small engine reads it within its stack.
    rows = "".join(f"TEXTS[{key!r}] = {texts[key]!r}\n" for key in sorted(texts))
    return f'"""Texts that stand in place of the English ones, by key."""\n\nTEXTS: dict[str, str] = {{}}\n{rows}'


def package(calc: Path, language: Path, target: Path) -> Path:
    """Copy the package at `calc` into the folder `target` with the texts of the file `language`; return the copy."""
    texts = read(language)
    copy = target / calc.name
    shutil.rmtree(copy, ignore_errors=True)
    shutil.copytree(calc, copy, ignore=shutil.ignore_patterns("__pycache__"))
    (copy / MODULE).write_text(source(texts), encoding="utf-8")
    for name in BESIDE:
        shutil.copyfile(calc.parent / name, target / name)
    return copy


def _flat(table: dict[str, object]) -> dict[str, str] | None:
    """Return the texts of a table by key; tables in tables, as TOML writes `a.b = "…"`, are keys with a dot."""
    found: dict[str, str] = {}
    for key, value in table.items():
        if isinstance(value, dict):
            for inner, text in (_flat(value) or {}).items():
                found[f"{key}.{inner}"] = text
        else:
            found[key] = value if isinstance(value, str) else ""
    return found


def _line_of(written: str, key: str) -> int:
    at = written.find(f'"{key}"')
    return written.count("\n", 0, at) + 1 if at >= 0 else 1


def _fault(path: Path, line: int, message: str) -> ContentFault:
    return ContentFault(path.as_posix(), line, 1, CODE, message)
