"""Another language is a file of data: one made up, each English word with its letters turned round, comes through whole.

Asked of one calculator: every word that people read is turned, every number, name and tag stays, and each engine gives the
same bytes. Units and the titles of sources stay as they are.
"""

import html
import json
import re
import sys

import pytest

from ask import HERE, _lines, as_lines, every_question, in_lowered, site_with
from calc import browser, catalogue
from calc.evidence import sources
from handbook.engines import language, packing
from handbook.engines.lower import lower_package
from handbook.lint import texts

pytestmark = [pytest.mark.engines, pytest.mark.slow]

CALCULATOR = catalogue.find("wetting")
COUNT = 300
PEOPLE_READ = {"label", "rule", "working", "shown", "text", "notes", "message"}
UNITS = set("sq ft gal per lb L m mm kg in F C".split())
NAMES = [field.name for field in CALCULATOR.fields]
PARTS = re.compile(r"[A-Za-z]+|[^A-Za-z]+")
TAG = re.compile(r"(<[^>]*>)")


def turned(text):
    """Return `text` with the letters of each word turned round, and its slots as they are."""
    parts = re.split(r"(\{[^}]*\})", text)
    return "".join(
        part if part.startswith("{") else re.sub("[A-Za-z]+", lambda word: word[0][::-1], part) for part in parts
    )


def words_of(rows):
    return set(re.findall("[A-Za-z]+", " ".join(rows)))


def kept(given, told_what_to_type=True):
    """Return the words that stay: units and what was typed; where people are told what they may type, that too."""
    typed = [*given, *given.values()]
    if told_what_to_type:
        typed += ["x at slope less", "Den: E 14' S 6' W 4' S 5' W 10' N 11'", "Bed 2: 10' x 12'"]
        for field in CALCULATOR.fields:
            typed += [field.example, *(value for value, _ in field.choices)]
    if [name for name in given if name not in NAMES]:
        typed += NAMES
    return UNITS | words_of(typed)


def assert_turned(english, other, stays):
    """Each word turned, or one that stays; all between the words the same."""
    ours, theirs = PARTS.findall(english), PARTS.findall(other)
    assert len(ours) == len(theirs), (english, other)
    for one, two in zip(ours, theirs):
        if one[0].isascii() and one[0].isalpha():
            assert two == one[::-1] or (two == one and one in stays), (one, two, english, other)
        else:
            assert one == two, (english, other)


def assert_turned_html(english, other, stays):
    ours, theirs = TAG.split(english), TAG.split(other)
    assert len(ours) == len(theirs)
    for one, two in zip(ours, theirs):
        if one.startswith("<"):
            assert one == two
        else:
            assert_turned(html.unescape(one), html.unescape(two), stays)


def assert_turned_value(name, english, other, stays):
    if isinstance(english, dict):
        assert list(english) == list(other)
        for key, value in english.items():
            assert_turned_value(key, value, other[key], stays)
    elif isinstance(english, list):
        assert len(english) == len(other)
        for one, two in zip(english, other):
            assert_turned_value(name, one, two, stays)
    elif name == "html":
        assert_turned_html(english, other, stays)
    elif name in PEOPLE_READ or (name == "given" and english != other):
        assert_turned(english, other, stays)
    else:
        assert english == other, name


@pytest.fixture(scope="module")
def spoken(tmp_path_factory):
    """The package with every text turned round, written from a file of data."""
    folder = tmp_path_factory.mktemp("language")
    data = {one.key: turned(one.english) for one in texts.every_text()}
    (folder / "turned.json").write_text(json.dumps(data), encoding="utf-8")
    return language.package(packing.ROOT / "calc", folder / "turned.json", folder / "package")


@pytest.fixture(scope="module")
def asked():
    return every_question(CALCULATOR, COUNT)


@pytest.fixture(scope="module")
def answers(spoken, asked):
    """What CPython answers in that language."""
    return in_lowered(spoken.parent, CALCULATOR.name, asked, "--text")


def test_the_whole_answer_comes_in_the_other_language_with_the_same_numbers(asked, answers):
    assert len(asked) == len(answers)
    faults = 0
    for given, other in zip(asked, answers):
        english = json.loads(browser.answer(CALCULATOR.name, json.dumps(given)))
        assert_turned_value("", english, json.loads(other), kept(given, "faults" in english))
        faults += "faults" in english
    assert 10 < faults < len(asked) - 100


def test_the_command_line_and_the_form_speak_it_too(spoken, asked):
    ours, theirs = (
        _lines([sys.executable, "-I", str(HERE / "run_told.py"), str(folder)], as_lines(CALCULATOR.name, asked))
        for folder in (packing.ROOT, spoken.parent)
    )
    assert len(ours) == len(theirs) == len(asked) + 2
    titles = words_of(one.title for one in sources.SOURCES)
    for given, one, two in zip(asked, ours, theirs):
        for line, other in zip(json.loads(one).split("\n"), json.loads(two).split("\n"), strict=True):
            is_source = line.startswith("    Source: ")
            names = words_of(re.findall(r"\([a-z_]+\)$|^[a-z_0-9]+:|\b[a-z_0-9]+(?==)", line))  # public names
            assert_turned(line, other, kept(given) | names | (titles if is_source else set()))
    assert_turned(json.loads(ours[-2]), json.loads(theirs[-2]), kept({}) | words_of([*NAMES, "python -m calc wetting"]))
    assert_turned_html(
        json.loads(ours[-1]), json.loads(theirs[-1]), kept({}) | words_of(["python -m calc wetting --help"])
    )


def test_the_lowered_package_gives_the_same_bytes(spoken, asked, answers, tmp_path):
    for path, source in lower_package(spoken, spoken.parent).items():
        target = tmp_path / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(source, encoding="utf-8")
    assert in_lowered(tmp_path, CALCULATOR.name, asked, "--text") == answers


@pytest.mark.parametrize("engine", ["small", "full"])
def test_the_engines_of_the_page_give_the_same_bytes(spoken, asked, answers, tmp_path, engine):
    """The built site as it is, with these calculators in place of its own."""
    if engine == "small":
        needs, parts = packing.small_parts(spoken, tmp_path / "cache")
        site = site_with(tmp_path / "site", needs=needs, parts=parts)
    else:
        site = site_with(tmp_path / "site", wheel=packing.calc_wheel(spoken, tmp_path).read_bytes())
    command = [packing.node(), str(HERE / "run_engine.mjs"), engine, *site, "--text"]
    assert _lines(command, as_lines(CALCULATOR.name, asked)) == answers
