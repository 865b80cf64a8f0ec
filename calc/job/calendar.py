"""Days as whole numbers: day 0 is 1970-01-01 and each day after it is one more. The civil calendar by arithmetic alone.

A year is counted from March here, so that the leap day is its last day.
"""

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
"""The names of the weekdays by their number, 0 to 6."""

WEEK = 7
"""Days of a week."""

_YEAR = 365  # days of a year without a leap day
_CENTURY_RULE = 400  # years after which the calendar repeats
_REPEATS = 146097  # days of those
_FIRST_MARCH = 719468  # days from 0000-03-01 to 1970-01-01
_FIVE_MONTHS = 153  # days of March to July, and of August to December: the lengths of the months repeat
_THURSDAY = 3  # the weekday of day 0
_MARCH = 3
_DIGITS = "0123456789"
_DASHES = (4, 7)  # their places in 2026-11-27


def day_of_date(year: int, month: int, day: int) -> int:
    """Return the day number of a date: `year` [-, 1 to 9999], `month` [-, 1 to 12], `day` [-, 1 to 31].

    A day that the month lacks gives one of the next month. Source: the Gregorian rule, computed.
    """
    years, months = (year, month - _MARCH) if month >= _MARCH else (year - 1, month - _MARCH + 12)
    before = years * _YEAR + years // 4 - years // 100 + years // _CENTURY_RULE
    return before + (_FIVE_MONTHS * months + 2) // 5 + day - 1 - _FIRST_MARCH


def date_of_day(number: int) -> tuple[int, int, int]:
    """Return (year, month, day) of a day `number` [days from 1970-01-01, any]. Source: the Gregorian rule, computed."""
    since = number + _FIRST_MARCH
    years = since * _CENTURY_RULE // _REPEATS + 1
    while years * _YEAR + years // 4 - years // 100 + years // _CENTURY_RULE > since:
        years -= 1
    rest = since - (years * _YEAR + years // 4 - years // 100 + years // _CENTURY_RULE)
    months = (5 * rest + 2) // _FIVE_MONTHS
    day = rest - (_FIVE_MONTHS * months + 2) // 5 + 1
    month = months + _MARCH
    return (years, month, day) if month <= 12 else (years + 1, month - 12, day)


def weekday(number: int) -> int:
    """Return the weekday of a day `number` [days from 1970-01-01, any]: 0 for Monday to 6 for Sunday."""
    return (number + _THURSDAY) % WEEK


def day_of_iso(text: str) -> int | None:
    """Return the day number of a date written as 2026-11-27 [ISO 8601], or None where `text` is no such date."""
    if len(text) != 10:
        return None
    for at, letter in enumerate(text):
        if letter not in ("-" if at in _DASHES else _DIGITS):
            return None
    year, month, day = int(text[:4]), int(text[5:-3]), int(text[-2:])
    if year < 1 or month < 1 or month > 12:
        return None
    found = day_of_date(year, month, day)
    return found if date_of_day(found) == (year, month, day) else None


def iso_of_day(number: int) -> str:
    """Return the date of a day `number` [days from 1970-01-01, years 1 to 9999] as 2026-11-27 [ISO 8601]."""
    year, month, day = date_of_day(number)
    return _padded(year, 4) + "-" + _padded(month, 2) + "-" + _padded(day, 2)


def _padded(number: int, places: int) -> str:
    text = str(number)
    return "0" * (places - len(text)) + text
