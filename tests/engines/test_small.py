"""The small engine (MicroPython) gives CPython's bytes for every vector and thousands of random questions a calculator."""

import pytest

from ask import compare, in_node
from calc import catalogue

pytestmark = [pytest.mark.engines, pytest.mark.slow]


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_same_bytes(calculator):
    compare(calculator, lambda *asked: in_node("small", *asked))
