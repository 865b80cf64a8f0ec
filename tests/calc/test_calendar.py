"""Day numbers against Python's own calendar, day by day over four hundred years and at the ends."""

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.job import calendar

EPOCH = datetime.date(1970, 1, 1).toordinal()


def assert_same(number):
    date = datetime.date.fromordinal(number + EPOCH)
    assert calendar.date_of_day(number) == (date.year, date.month, date.day)
    assert calendar.day_of_date(date.year, date.month, date.day) == number
    assert calendar.weekday(number) == date.weekday()
    assert calendar.iso_of_day(number) == date.isoformat()
    assert calendar.day_of_iso(date.isoformat()) == number


def test_every_day_of_four_hundred_years():
    for ordinal in range(datetime.date(1900, 1, 1).toordinal(), datetime.date(2300, 1, 2).toordinal()):
        assert_same(ordinal - EPOCH)


@given(st.dates())
def test_any_day_that_python_knows(date):
    assert_same(date.toordinal() - EPOCH)


def test_the_ends():
    assert_same(datetime.date.min.toordinal() - EPOCH)
    assert_same(datetime.date.max.toordinal() - EPOCH)


@pytest.mark.parametrize(
    "text",
    ["", "2026-02-29", "2100-02-29", "2026-00-10", "2026-13-10", "2026-04-31", "2026-11-00", "0000-01-01",
     "2026-11-2", "2026/11/27", "26-11-2700", "2026-11-27 ", " 2026-11-2", "2026-1-027", "2026-11-2x", "٢٠٢٦-١١-٢٧"],
)  # fmt: skip
def test_what_is_no_date(text):
    assert calendar.day_of_iso(text) is None
