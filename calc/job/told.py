"""How hours, days and their ranges are told, the same in the plan of one way and where ways stand side by side."""

from fractions import Fraction

from calc.job.days import Days
from calc.job.labor import Work, hours_of
from calc.numbers import words
from calc.numbers.exact import ceiling, floor
from calc.text.door import say

HALVES = 2  # hours are told in halves [-]


def span_of(days: Days) -> int:
    """Return how many days [day] there are from the first to the last, both with."""
    return days.last_day - days.first_day + 1


def range_told(one: int, other: int, most: str) -> str:
    """Return '8 to 10 working days', where `most` is told of the greater; either may be it, as a longer wait may leave out a day."""
    return most if one == other else say("plan.range", "{low} to {high}", low=words.whole(min(one, other)), high=most)


def hours_told(works: tuple[Work, ...]) -> str:
    """Return the hours of `works` as they are told, in halves: the least rounded down, the most up."""
    low, high = hours_of(works)
    first, last = Fraction(floor(low * HALVES), HALVES), Fraction(ceiling(high * HALVES), HALVES)
    told_low, told_high = words.short_decimal(first, 1), words.short_decimal(last, 1)
    return told_low if first == last else say("plan.range", "{low} to {high}", low=told_low, high=told_high)
