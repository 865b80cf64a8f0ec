"""The small engine (MicroPython) gives CPython's bytes for every vector and thousands of random questions a calculator."""

import random

import pytest

from ask import compare, in_cpython, in_node
from calc import browser, catalogue
from questions import questions

pytestmark = [pytest.mark.engines, pytest.mark.slow]


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_same_bytes(calculator):
    compare(calculator, lambda *asked: in_node("small", *asked))


def test_the_same_sketch_of_rooms_that_are_being_typed():
    """Whole texts, and each cut off where a person is by now: what is refused, offered, marked and drawn."""
    chance = random.Random("sketch")
    asked = []
    for given in questions(catalogue.find("takeoff"), 300):
        text = given.get("rooms", "")
        for end in (len(text), chance.randint(0, len(text)), chance.randint(0, len(text))):
            asked.append({"rooms": text[:end]} | ({"show_in": "metric"} if chance.random() < 0.3 else {}))
    asked += [
        {"rooms": text}
        for text in (
            "20'14\"",
            "6,5 x 4,2 m",
            "20 × 14",
            "E14'S6',W14'N6'",
            "L 14x11",
            "A: E 10 N 10 W 5 S 12 W 5 N 2",
            "14' E 6' S",
            "",
        )
    ]
    assert in_node("small", browser.SKETCH, asked) == in_cpython(browser.SKETCH, asked)
