"""The full engine (Pyodide) gives CPython's bytes for every vector and thousands of random questions a calculator."""

import pytest

from ask import COUNT_FULL, compare, in_node
from calc import catalogue

pytestmark = [pytest.mark.engines, pytest.mark.slow]


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_same_bytes(calculator):
    compare(calculator, lambda *asked: in_node("full", *asked), COUNT_FULL)
