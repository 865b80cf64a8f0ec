"""The lowered package, and the pass that makes it."""

import argparse
import ast
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from ask import COUNT_LOWERED, compare, in_lowered
from calc import catalogue
from handbook.content.faults import ContentFaults
from handbook.engines import packing
from handbook.engines.lower import lower_package
from handbook.engines.small.fractions import Fraction as SmallFraction

pytestmark = [pytest.mark.engines, pytest.mark.slow]


@pytest.fixture(scope="module")
def lowered(tmp_path_factory):
    folder = tmp_path_factory.mktemp("lowered")
    for path, source in lower_package(packing.ROOT / "calc", packing.ROOT).items():
        target = folder / path
        target.parent.mkdir(parents=True, exist_ok=True)
        # CPython has its own fractions; the small engine's stand-in is put to the test under its own name too.
        target.write_text(source, encoding="utf-8")
    return folder


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_same_bytes_under_cpython(calculator, lowered):
    compare(calculator, lambda *asked: in_lowered(lowered, *asked), COUNT_LOWERED)


def test_nothing_is_left_that_the_small_engine_lacks():
    for path, source in lower_package(packing.ROOT / "calc", packing.ROOT).items():
        for node in ast.walk(ast.parse(source)):
            assert not isinstance(node, (ast.AnnAssign, ast.Match, ast.JoinedStr, ast.Dict, ast.DictComp, ast.Set)), (
                path
            )
            if isinstance(node, ast.ImportFrom):
                assert node.module.split(".")[0] in ("calc", "collections", "fractions"), path


REFUSED = [
    ("x = 0.5\n", "float"), ("x = {1, 2}\n", "set"), ("x = {**a}\n", "unpack"), ("x = f'{a:.2f}'\n", "calc.numbers.words"), ("x = f'{a!r}'\n", "calc.numbers.words"),
    ("x = f'{a=}'\n", "calc.numbers.words"), ("x = f'{a + b}'\n", "slot"), ("x = f'{a[0]}'\n", "slot"), ("x = f'{1}'\n", "slot"), ("x = f'{f(0.5)}'\n", "float"), ("x = 'a'.zfill(3)\n", "zfill"),
    ("match x:\n    case 1: pass\n", "match"), ("import re\n", "module re"), ("from math import gcd\n", "module math"), ("x = round(a)\n", "round"),
    ("x = set(a)\n", "set"), ("x = (*a, 1)\n", "tuple"), ("x = [*a]\n", "list"), ("x = dict(a=1)\n", "dict"), ("x = 1 < f(2) < 3\n", "chained"),
    ("x = {a for a in b}\n", "set"), ("async def f(): pass\n", "plain functions"), ("x = format(a)\n", "format"), ("x = tuple[int, int]\n", "annotation"), ("x = zip(a, b, strict=True)\n", "enumerate"),
]  # fmt: skip


@pytest.mark.parametrize(("source", "says"), REFUSED)
def test_what_cannot_be_lowered_is_refused_with_its_place(tmp_path, source, says):
    package = tmp_path / "calc"
    package.mkdir()
    (package / "one.py").write_text("\n" + source, encoding="utf-8")
    with pytest.raises(ContentFaults) as caught:
        lower_package(package, tmp_path)
    assert str(caught.value).startswith("calc/one.py:2:")
    assert "LOWER" in str(caught.value) and says in str(caught.value)


def test_every_refusal_comes_at_once(tmp_path):
    package = tmp_path / "calc"
    package.mkdir()
    (package / "one.py").write_text("x = 0.5\n", encoding="utf-8")
    (package / "two.py").write_text("x = {1}\ny = 2.5\n", encoding="utf-8")
    with pytest.raises(ContentFaults) as caught:
        lower_package(package, tmp_path)
    assert len(caught.value.faults) == 3


def test_a_dataclass_is_written_out(tmp_path):
    package = tmp_path / "calc"
    package.mkdir()
    source = "from dataclasses import dataclass\n\n@dataclass(frozen=True)\nclass A:\n    x: int\n    y: str = 'b'\n\n    @property\n    def z(self) -> int:\n        return self.x\n"
    (package / "one.py").write_text(source, encoding="utf-8")
    scope = {}
    exec(lower_package(package, tmp_path)["calc/one.py"], scope)
    made = scope["A"](1)
    assert (made.x, made.y, made.z) == (1, "b", 1)
    assert made == scope["A"](x=1, y="b") != scope["A"](2)
    assert hash(made) == hash(scope["A"](1))


TEXTS = """
def told(name, row, call):
    return f"{name}: {row.text}, {call(f'<{name}>')}{{}}"


def alone(value):
    return f"{value}"


def side_by_side(one, other):
    return f"{one}{other}"


EMPTY = f""
"""


@pytest.fixture
def texts(tmp_path):
    """The same functions as written and as lowered."""
    package = tmp_path / "calc"
    package.mkdir()
    (package / "one.py").write_text(TEXTS, encoding="utf-8")
    written, lowered = {}, {}
    exec(TEXTS, written)
    exec(lower_package(package, tmp_path)["calc/one.py"], lowered)
    return written, lowered


def test_an_f_string_of_texts_says_the_same_when_lowered(texts):
    row = argparse.Namespace(text="two sheets")
    for scope in texts:
        assert scope["told"]("Boards", row, str.upper) == "Boards: two sheets, <BOARDS>{}"
        assert (scope["alone"]("a"), scope["side_by_side"]("a", "b"), scope["EMPTY"]) == ("a", "ab", "")


@pytest.mark.parametrize("number", [3, Fraction(1, 3), SmallFraction(1, 3), True, None], ids=repr)
def test_a_number_in_an_f_string_raises_when_lowered(texts, number):
    _, lowered = texts
    for ask in (
        lambda: lowered["alone"](number),
        lambda: lowered["side_by_side"](number, number),
        lambda: lowered["side_by_side"]("a", number),
    ):
        with pytest.raises(TypeError):
            ask()


fractions = st.tuples(st.integers(-(10**12), 10**12), st.integers(1, 10**9))


@given(fractions, fractions, st.integers(-5, 5))
def test_the_stand_in_for_fractions_agrees_with_the_library(one, other, power):
    ours, theirs = (SmallFraction(*one), SmallFraction(*other)), (Fraction(*one), Fraction(*other))
    for work in (
        lambda a, b: a + b, lambda a, b: a - b, lambda a, b: a * b, lambda a, b: 3 - a, lambda a, b: 2 * b, lambda a, b: a + 1,
        lambda a, b: -a, lambda a, b: abs(b), lambda a, b: a * b * b,
    ):  # fmt: skip
        mine, library = work(*ours), work(*theirs)
        assert (mine.numerator, mine.denominator) == (library.numerator, library.denominator)
    for ask in (
        lambda a, b: a < b,
        lambda a, b: a <= b,
        lambda a, b: a == b,
        lambda a, b: a > b,
        lambda a, b: a >= b,
        lambda a, b: a != b,
        lambda a, b: bool(a),
        lambda a, b: int(a),
    ):
        assert ask(*ours) == ask(*theirs)
    assume(other[0] != 0)
    for work in (lambda a, b: a / b, lambda a, b: 5 / b, lambda a, b: b**power):
        mine, library = work(*ours), work(*theirs)
        assert (mine.numerator, mine.denominator) == (library.numerator, library.denominator)
    assert ours[0] // ours[1] == theirs[0] // theirs[1]


def test_the_stand_in_refuses_a_zero_below_the_line():
    with pytest.raises(ZeroDivisionError):
        SmallFraction(1, 0)
    with pytest.raises(TypeError):
        SmallFraction(0.5)
