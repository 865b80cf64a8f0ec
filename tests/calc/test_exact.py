"""The whole-number functions against Python's decimal module at 40 digits."""

from decimal import Decimal, localcontext
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.numbers import exact

LAST_PLACE = Decimal(10) ** -exact.PLACES


def _decimal(value: Fraction) -> Decimal:
    return Decimal(value.numerator) / Decimal(value.denominator)


@given(st.fractions(min_value=Fraction(1, 10**6), max_value=10**6, max_denominator=10**6))
def test_logarithm(value):
    with localcontext() as context:
        context.prec = 40
        assert abs(_decimal(exact.logarithm(value)) - _decimal(value).ln()) <= LAST_PLACE


@given(st.fractions(min_value=-12, max_value=8, max_denominator=10**6))
def test_exponential(value):
    with localcontext() as context:
        context.prec = 40
        true = _decimal(value).exp()
        assert abs(_decimal(exact.exponential(value)) - true) <= LAST_PLACE * (1 + true)


@given(st.fractions(min_value=0, max_value=10**9, max_denominator=10**6))
def test_square_root(value):
    with localcontext() as context:
        context.prec = 40
        assert abs(_decimal(exact.square_root(value)) - _decimal(value).sqrt()) <= LAST_PLACE


def test_an_exact_square_gives_an_exact_root():
    assert exact.square_root(Fraction(25, 16)) == Fraction(5, 4)


@given(st.fractions(max_denominator=1000))
def test_rounding(value):
    assert exact.floor(value) <= value < exact.floor(value) + 1
    assert exact.ceiling(value) - 1 < value <= exact.ceiling(value)
    assert abs(exact.round_half_up(value) - value) <= Fraction(1, 2)


@pytest.mark.parametrize(("value", "rounded"), [("5/2", 3), ("-5/2", -2), ("7/3", 2), ("-7/3", -2), ("0", 0)])
def test_a_half_goes_up(value, rounded):
    assert exact.round_half_up(Fraction(value)) == rounded


@given(st.integers(min_value=0, max_value=10**30))
def test_whole_square_root(value):
    root = exact.whole_square_root(value)
    assert root * root <= value < (root + 1) * (root + 1)
