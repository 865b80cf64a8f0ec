"""With every text that has a key turned round letter by letter, no English word is left in what the calculators answer to
their examples and vectors.

What was typed, units beside a number, and the titles of sources stay as they are.
"""

import html
import json
import re
import subprocess
import sys

import pytest

from calc import browser, catalogue
from calc.numbers import units
from handbook.engines import language, packing
from handbook.evidence import check_table
from handbook.lint import texts

pytestmark = pytest.mark.slow

RUN = packing.ROOT / "tests" / "engines" / "run_lowered.py"
TAG = re.compile(r"(<[^>]*>)")
READ_IN_TAGS = re.compile(r'(?:aria-label|alt)="([^"]*)"')
PARTS = re.compile(r"[A-Za-z]+|[^A-Za-z]+")
UNIT_NAMES = {units.name_of(row[0], metric) for row in units._UNITS for metric in (False, True)} - {"", "%"}
UNIT = re.compile(rf"(?<=\d )(?:{'|'.join(map(re.escape, sorted(UNIT_NAMES, key=len, reverse=True)))})(?![A-Za-z])")


def turned(text):
    """Return `text` with the letters of each word turned round, and its slots as they are."""
    parts = re.split(r"(\{[^}]*\})", text)
    return "".join(
        part if part.startswith("{") else re.sub("[A-Za-z]+", lambda word: word[0][::-1], part) for part in parts
    )


def shown(answer_html):
    """Return each piece of text that an answer shows, or that is read aloud in place of it."""
    pieces = TAG.split(answer_html)
    return [
        html.unescape(text) for one in pieces for text in (READ_IN_TAGS.findall(one) if one.startswith("<") else [one])
    ]


def words_left(english, other, typed):
    """Return the words of `english` that `other` has as they are, though nobody typed them and they name no unit there."""
    ours, theirs = PARTS.findall(english), PARTS.findall(other)
    assert len(ours) == len(theirs), (english, other)
    named = {at for found in UNIT.finditer(english) for at in range(*found.span())}
    found, at = set(), 0
    for one, two in zip(ours, theirs, strict=True):
        is_word = one[0].isascii() and one[0].isalpha()
        if not is_word or len(one) == 1:
            assert one == two, (english, other)
        elif two.lower() != one[::-1].lower():
            assert one == two, (english, other)
            if one not in typed and at not in named:
                found.add(one)
        at += len(one)
    return found


def asked(calculator):
    """Return the example of a calculator and its vectors, each in both systems of units."""
    given = [
        dict(calculator.example),
        *(one["inputs"] for name, one in check_table.vectors() if name == calculator.name),
    ]
    return [one | {"show_in": system} for one in given for system in ("customary", "metric")]


@pytest.fixture(scope="module")
def spoken(tmp_path_factory):
    """The folder of the package with every text turned round."""
    folder = tmp_path_factory.mktemp("turned")
    data = {one.key: turned(one.english) for one in texts.every_text()}
    (folder / "turned.json").write_text(json.dumps(data), encoding="utf-8")
    language.package(packing.ROOT / "calc", folder / "turned.json", folder / "package")
    return folder / "package"


@pytest.fixture(scope="module")
def answers(spoken):
    """What is asked of each calculator, in English and in the other language: {name: [(given, answer, answer)]}."""
    given = [(one.name, each) for one in catalogue.every() for each in asked(one)]
    lines = "".join(json.dumps([name, json.dumps(each)]) + "\n" for name, each in given)
    command = [sys.executable, "-I", str(RUN), str(spoken), "--text"]
    done = subprocess.run(command, input=lines, capture_output=True, text=True, encoding="utf-8", check=True)
    found = {}
    for (name, each), told in zip(given, done.stdout.splitlines(), strict=True):
        ours = json.loads(browser.answer(name, json.dumps(each)))
        found.setdefault(name, []).append((each, ours, json.loads(told)))
    return found


@pytest.fixture(scope="module")
def left(answers):
    """The English words that each calculator tells in the other language, each with a text that has it."""
    found = {}
    for name in catalogue.NAMES:
        found[name] = {}
        for given, ours, theirs in answers[name]:
            assert list(ours) == list(theirs), given
            typed = set(re.findall("[A-Za-z]+", " ".join(given.values())))
            for english, other in zip(shown(ours.get("html", "")), shown(theirs.get("html", "")), strict=True):
                for word in words_left(english, other, typed):
                    found[name].setdefault(word, english)
    return found


@pytest.mark.parametrize("name", catalogue.NAMES)
def test_no_english_word_is_left_in_an_answer(left, name):
    told = "\n".join(f"{word}: {text}" for word, text in sorted(left[name].items()))
    assert not told, f"use say():\n{told}"


def test_programs_read_the_state_of_a_way_in_any_language(answers):
    """The state is told in the language, and stands beside it by the name that the page's own program compares."""
    looked = 0
    for _, ours, theirs in answers["decision"]:
        (one, other) = ours["answer"], theirs["answer"]
        pairs = [(one, other), *zip(one.get("branches", []), other.get("branches", []), strict=True)]
        for english, told in [both for held in pairs for both in zip(held[0]["items"], held[1]["items"], strict=True)]:
            looked += 1
            assert "state_name" not in english
            assert told["state_name"] == english["state"] and told["state"] == turned(english["state"])
    assert looked > 100


@pytest.mark.parametrize(
    ("english", "other", "left"),
    [
        ("Keep it at 2 ft", "peeK ti ta 2 ft", set()), ("Keep it at 2 ft", "peeK ti at 2 tf", {"at"}), ("Lay 3 of Den", "yaL 3 of Den", {"of"}),
        ("4 in of water", "4 in of water", set()), ("in the hall", "in eht llah", {"in"}), ("A did", "A did", set()),
    ],
)  # fmt: skip
def test_a_word_that_is_left_is_seen(english, other, left):
    assert words_left(english, other, {"Den"}) == left


def test_what_is_read_aloud_is_looked_at_too():
    assert shown('<p title="x" aria-label="One &amp; two">Three</p>') == ["", "One & two", "Three", ""]
