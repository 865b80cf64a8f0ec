"""Asks each engine the same questions and compares the bytes of what comes back with CPython's."""

import functools
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

from calc import browser, catalogue
from handbook.engines import packing
from handbook.evidence import check_table
from questions import as_lines, questions

HERE = Path(__file__).parent
SITE = packing.ROOT / "site"
# Random questions a calculator, others after each change of the calculators (`questions.py`). A run that asks 700 of the small
# engine sees a fault that one question in a thousand meets with 50 %, four runs with 94 %. `--questions 10000` asks more.
COUNT = int(os.environ.get("QUESTIONS", "700"))
# The full engine is CPython and runs `calc` as it stands; another version and a trimmed library are all that may differ.
# The lowered package under CPython differs in its source alone, and the small engine runs that source on every question.
COUNT_FULL = 400
COUNT_LOWERED = 200
# A layout of boards (taping takes its joints from one) is thousands of steps of search, each of which must go the same
# way: fewer questions ask as much, and of the list of what to buy, which lays them out too. A room's humidity is some ten
# courses of dozens of steps each time.
FEWER = {"compare": 100, "board": 100, "taping": 100, "shopping": 100, "panels": 400, "humidity": 350}


def every_question(calculator: catalogue.Calculator, count: int = COUNT) -> list[dict[str, str]]:
    """Return the example, every vector and `count` random questions of one calculator."""
    vectors = [vector["inputs"] for name, vector in check_table.vectors() if name == calculator.name]
    return [dict(calculator.example), *vectors, *questions(calculator, count)]


@functools.cache
def packed() -> str:
    """Return the engines' paths as the built site tells them to its pages."""
    page = (SITE / "index.html").read_text(encoding="utf-8")
    found = re.search(r'<script type="application/json" id="engines"[^>]*>(.*?)</script>', page)
    assert found, "build the handbook first: python3 scripts/book.py build"
    return found.group(1)


def in_cpython(calculator: str, asked: list[dict[str, str]]) -> list[str]:
    """CPython's digests of every question; kept for the next engine by what was asked and by every byte of `calc`."""
    key = hashlib.sha256(as_lines(calculator, asked).encode())
    for path in sorted((packing.ROOT / "calc").rglob("*.py")):
        key.update(path.read_bytes())
    kept = packing.ROOT / "build" / "cache" / f"answers-{calculator}-{key.hexdigest()[:24]}.txt"
    if not kept.exists():
        found = [_digest(browser.answer(calculator, json.dumps(one, ensure_ascii=False))) for one in asked]
        fresh = kept.with_suffix(f".{os.getpid()}")
        fresh.write_text("\n".join(found), encoding="utf-8")
        fresh.replace(kept)
    return kept.read_text(encoding="utf-8").splitlines()


def in_node(engine: str, calculator: str, asked: list[dict[str, str]], *form: str, engines_json: str = "") -> list[str]:
    command = [packing.node(), str(HERE / "run_engine.mjs"), engine, str(SITE), engines_json or packed(), *form]
    return _lines(command, as_lines(calculator, asked))


def site_with(
    target: Path, *, needs: dict | None = None, parts: list[bytes] = (), wheel: bytes = b""
) -> tuple[str, str]:
    """Copy what the engines need of the built site to `target`, with other calculators in place of its own; return the folder and
    the engines' paths for `run_engine.mjs`."""
    for folder in [*SITE.glob("assets-*"), SITE / "engine"]:
        shutil.copytree(folder, target / folder.name)
    engines = json.loads(packed())

    def put(made: bytes, ending: str) -> str:
        name = f"engine/calc-{hashlib.sha256(made).hexdigest()[:12]}.{ending}"
        (target / name).write_bytes(made)
        return name

    if needs is None:
        engines["full_calc"] = put(wheel, "whl")
    else:
        engines |= {"small_needs": needs, "small_parts": [put(one, "bin") for one in parts]}
    return str(target), json.dumps(engines)


def in_lowered(folder: Path, calculator: str, asked: list[dict[str, str]], *form: str) -> list[str]:
    """The lowered package under CPython, in a process of its own that cannot see the one it was made from."""
    command = [sys.executable, "-I", str(HERE / "run_lowered.py"), str(folder), *form]
    return _lines(command, as_lines(calculator, asked))


def _lines(command: list[str], text: str) -> list[str]:
    done = subprocess.run(command, input=text, capture_output=True, text=True, encoding="utf-8", check=False)
    assert done.returncode == 0, done.stderr[-3000:]
    return done.stdout.splitlines()


def compare(calculator: catalogue.Calculator, ask, count: int = COUNT) -> None:
    """Assert equal bytes for the vectors and `count` random questions; show the first that differs in full."""
    asked = every_question(calculator, FEWER.get(calculator.name, COUNT))
    ours = in_cpython(calculator.name, asked)  # once for all engines, so fewer questions are the first ones of the same
    surplus = max(0, FEWER.get(calculator.name, COUNT) - count)
    asked, ours = asked[: len(asked) - surplus], ours[: len(ours) - surplus]
    theirs = ask(calculator.name, asked)
    assert len(theirs) == len(ours)
    differing = [at for at, digest in enumerate(ours) if digest != theirs[at]]
    if differing:
        first = asked[differing[0]]
        text = ask(calculator.name, [first], "--text")
        expected = browser.answer(calculator.name, json.dumps(first, ensure_ascii=False))
        raise AssertionError(f"{len(differing)} of {len(ours)} differ, the first for {first}:\n{expected}\n{text[0]}")


def _digest(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()
