"""Every published figure in `vectors/` against the calculator it belongs to."""

from fractions import Fraction

import pytest

from calc import catalogue
from handbook import evidence

VECTORS = [
    pytest.param(calculator, vector, id=f"{calculator} {vector['id']}") for calculator, vector in evidence.vectors()
]


@pytest.mark.parametrize(("calculator", "vector"), VECTORS)
def test_printed_figure(calculator, vector):
    assert vector["source"]
    assert vector["known"] in evidence.KNOWN
    found = evidence.checks(calculator, vector)
    assert found
    for one in found:
        assert one.agrees, one


def test_every_calculator_has_vectors_and_no_vector_stands_twice():
    ids = [(calculator, vector["id"]) for calculator, vector in evidence.vectors()]
    assert len(ids) == len(set(ids))
    assert {calculator for calculator, _ in ids} == {one.name for one in catalogue.every()}
    assert {path.stem for path in evidence.FOLDER.glob("*.json")} == {one.name for one in catalogue.every()}


def test_a_tolerance_is_half_the_last_digit_or_says_why():
    for _, vector in evidence.vectors():
        for name, printed in vector.get("printed", {}).items():
            decimals = len(printed.partition(".")[2])
            half = Fraction(1, 2 * 10**decimals)
            assert Fraction(vector["tolerance"][name]) <= half or vector["tolerance_reason"], vector["id"]
