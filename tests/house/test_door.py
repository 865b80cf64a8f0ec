"""What people read passes the one door for text: a sentence that is written elsewhere in `calc` is a fault.

Modules that still have such texts stand in `OUTSIDE` with how many; a number may only shrink.
"""

import ast
import re
from pathlib import Path

import pytest

from calc import catalogue
from calc.decision.questions import ACTIONS
from handbook.lint import texts

ROOT = Path(__file__).resolve().parents[2]
TWO_WORDS = re.compile(r"\b[a-z]{2,}\b.*\b[a-z]{2,}\b", re.DOTALL)
MARKUP = re.compile(r"^[^<>]*>|<[^>]*(>|$)")
DECLARED = ("Field", "Calculator", "Caution")  # these pass the door where they are shown
DEVELOPERS = ("UnitFault", "KeyError", "TypeError", "ValueError")
ROWS = (  # declared by rows that do not pass the door: sources
    "calc/evidence/published.py", "calc/evidence/published_more.py", "calc/evidence/sources.py",
)  # fmt: skip
DONE = {one.id for one in ACTIONS}  # a rule names several of them with blanks between
NOT_READ = (
    "dim tick",
    "edge center",
    "edge first",
    "edge solid",
    "edge bar",
    "python -m calc",
)  # how a line of a drawing is drawn, and what is typed
OWN = ("unit.", "prices.by.")  # names of units pass the door where they are declared; the same word elsewhere need not
OUTSIDE = {
    "calc/hazards/samples.py": 7,  # how a laboratory writes "none" and "trace": typed, and read by nobody here
    "calc/numbers/measure.py": 38,
    "calc/numbers/units.py": 27,
}


def outside(path, source, said):
    """Return (line, text) for each text in a module that people see and that `said`, the module's English, does not hold."""
    tree = ast.parse(source)
    left_out = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            left_out.add(id(node.value))
        called = node.exc if isinstance(node, ast.Raise) else node
        name = getattr(called.func, "id", "") if isinstance(called, ast.Call) else ""
        if name in (DEVELOPERS if isinstance(node, ast.Raise) else DECLARED):
            left_out |= {id(one) for one in ast.walk(node)}
    return [
        (node.lineno, node.value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in left_out
        if is_read(node.value) and not any(node.value in one for one in said)
    ]  # fmt: skip


def is_read(text):
    """Return whether `text` has two words that people read; tags and their attributes are none."""
    told = "" if '="' in text and "<" not in text else MARKUP.sub("", text)
    return " " in told and bool(TWO_WORDS.search(told)) and not told.strip().startswith(NOT_READ)


def found_outside():
    found = {}
    declared = texts.declared()
    said, _ = texts.said(ROOT)
    typed = [
        entry for one in catalogue.every() for field in one.fields if field.kind == "list" for entry, _ in field.choices
    ]
    for path in sorted((ROOT / "calc").rglob("*.py")):
        shown = path.relative_to(ROOT).as_posix()
        if shown not in ROWS:
            held = [one.english for one in said if one.path == shown]
            rest = outside(shown, path.read_text(encoding="utf-8"), held)
            english = [one.english for one in declared if one.path == shown or not one.key.startswith(OWN)]
            rest = [(line, text) for line, text in rest if text not in english and text not in typed]
            rest = [(line, text) for line, text in rest if not set(text.split()) <= DONE]
            if rest:
                found[shown] = rest
    return found


def test_no_more_texts_stand_outside_the_door():
    found = found_outside()
    for path in sorted({*found, *OUTSIDE}):
        rest, most = found.get(path, []), OUTSIDE.get(path, 0)
        told = "\n".join(f"{path}:{line}: {text}" for line, text in rest)
        assert len(rest) <= most, f"{len(rest)} texts outside the door, {most} known; use say():\n{told}"
        assert len(rest) == most, f"{path} has {len(rest)} texts outside the door: write that number in OUTSIDE"


SEEN = [
    "x = 'Keep the film up.'\n", "def f(a):\n    return a + ' is too long.'\n", "def f(a):\n    raise MeasureFault('it is too long')\n",
    "x = '<p>Keep the film up.</p>'\n", "def f(a):\n    return f'{a} is too long'\n", "def f(a):\n    return say('a.b', 'One {it}', it='two more words')\n",
]  # fmt: skip
UNSEEN = [
    "'''A docstring of words.'''\n", "raise KeyError('no such thing here')\n", "x = Field(label='What the room is', help='Look at it.')\n",
    "x = '<p class=\"one two\" id=\"'\n", "x = ' class=\"one two\"'\n", "x = 'show_in metric'\n", "x = 'Living: 20 ft'\n",
    "x = say('a.b', 'Said with words.')\n", "def f(a):\n    raise UnitFault('cannot add the two ' + a)\n",
]  # fmt: skip


@pytest.mark.parametrize("source", SEEN)
def test_a_text_outside_the_door_is_seen(source):
    assert len(outside("calc/try.py", source, ["One {it}"])) == 1


@pytest.mark.parametrize("source", UNSEEN)
def test_what_nobody_reads_or_what_passes_is_left_alone(source):
    assert outside("calc/try.py", source, ["Said with words."]) == []
