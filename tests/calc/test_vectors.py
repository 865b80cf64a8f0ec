"""Every published figure of `docs/evidence/figures` against the calculator it belongs to."""

from fractions import Fraction

import pytest

from calc import catalogue
from handbook.evidence import check_table

VECTORS = [
    pytest.param(calculator, vector, id=f"{calculator} {vector['id']}") for calculator, vector in check_table.vectors()
]


@pytest.mark.parametrize(("calculator", "vector"), VECTORS)
def test_printed_figure(calculator, vector):
    assert vector["source"]
    assert vector["known"] in check_table.KNOWN
    found = check_table.checks(calculator, vector)
    assert found
    for one in found:
        assert one.agrees, one


def test_every_calculator_has_vectors_and_no_vector_stands_twice():
    ids = [(calculator, vector["id"]) for calculator, vector in check_table.vectors()]
    assert len(ids) == len(set(ids))
    assert {calculator for calculator, _ in ids} == {one.name for one in catalogue.every()}
    assert {path.stem for path in check_table.FOLDER.glob("*.json")} == {one.name for one in catalogue.every()}


def test_a_tolerance_is_half_the_last_digit_or_says_why():
    for _, vector in check_table.vectors():
        for name, printed in vector.get("printed", {}).items():
            decimals = len(printed.partition(".")[2])
            half = Fraction(1, 2 * 10**decimals)
            assert Fraction(vector["tolerance"][name]) <= half or vector["tolerance_reason"], vector["id"]
