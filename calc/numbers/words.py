"""The one door through which numbers and lists become text for people.

Every digit that a reader sees is made here (or in `measure`, for feet and inches) by whole-number
arithmetic, so that each engine prints the same characters.
"""

from fractions import Fraction

from calc.text.door import say
from calc.text.language import TEXTS

MINUS = "−"
_DIGITS_IN_GROUP = 3
QUOTED_LENGTH = 40  # letters of what was typed that a message shows
_FIRST_HALF, _LAST_HALF = 0xD800, 0xDFFF  # codes that only a pair of them gives a mark
_LOST = "\ufffd"  # what stands for a mark that was lost
_TO_SMALL = ord("a") - ord("A")


def whole(value: int) -> str:
    """Return `value` [-, any whole number] with a comma at each thousand: 12,345."""
    digits = str(-value if value < 0 else value)
    groups = []
    while len(digits) > _DIGITS_IN_GROUP:
        groups.append(digits[-_DIGITS_IN_GROUP:])
        digits = digits[:-_DIGITS_IN_GROUP]
    groups.append(digits)
    groups.reverse()
    return (MINUS if value < 0 else "") + ",".join(groups)


def decimal(value: Fraction, places: int, rounding: str = "near") -> str:
    """Return `value` [-] as text with exactly `places` decimals, grouped by thousands.

    `rounding` is 'near' (a half goes up), 'up' or 'down'.
    """
    scaled = _scaled(value, places, rounding)
    sign = MINUS if scaled < 0 else ""
    whole_part, rest = divmod(-scaled if scaled < 0 else scaled, 10**places)
    if places == 0:
        return sign + whole(whole_part)
    return sign + whole(whole_part) + "." + padded(rest, places)


def short_decimal(value: Fraction, places: int) -> str:
    """Return `value` like `decimal`, without zeros at the end of the decimals."""
    text = decimal(value, places)
    if "." not in text:
        return text
    while text.endswith("0"):
        text = text[:-1]
    return text[:-1] if text.endswith(".") else text


def figures(value: Fraction, digits: int = 4) -> str:
    """Return `value` [-] to `digits` figures, whole numbers in full, without zeros at the end: 1,604; 79.28; 0.000094."""
    top, bottom = value.numerator, value.denominator
    if bottom == 1:
        return whole(top)
    sign = MINUS if top < 0 else ""
    top = abs(top)
    places, shifted = digits, top
    if top >= bottom:
        places = max(0, digits - len(str(top // bottom)))
    else:
        while shifted * 10 < bottom:
            shifted *= 10
            places += 1
    scaled = (2 * top * 10**places + bottom) // (2 * bottom)
    while places and scaled % 10 == 0:
        scaled //= 10
        places -= 1
    if not places:
        return sign + whole(scaled)
    whole_part, rest = divmod(scaled, 10**places)
    return sign + whole(whole_part) + "." + padded(rest, places)


def plain_decimal(value: Fraction, places: int, rounding: str = "near") -> str:
    """Return `value` as a number that a program reads: no grouping, a hyphen for minus, no zeros at the end."""
    scaled = _scaled(value, places, rounding)
    sign = "-" if scaled < 0 else ""
    whole_part, rest = divmod(-scaled if scaled < 0 else scaled, 10**places)
    digits = padded(rest, places) if rest else ""
    while digits.endswith("0"):
        digits = digits[:-1]
    return sign + str(whole_part) + ("." + digits if digits else "")


def padded(value: int, width: int) -> str:
    """Return `value` [-, >= 0] as digits, filled with zeros on the left to `width` characters."""
    text = str(value)
    return "0" * (width - len(text)) + text


def plural(count: int, one: str, many: str = "") -> str:
    """Return `count` with its noun: '1 pail', '12 pails'."""
    noun = one if count == 1 else many or one + "s"
    if TEXTS:
        noun = say("noun." + one + (".one" if count == 1 else ".many"), noun)
    return whole(count) + " " + noun


def listed(items: list[str] | tuple[str, ...], joint: str = "and") -> str:
    """Return items as a phrase: 'a', 'a and b', 'a, b and c'."""
    parts = list(items)
    if len(parts) < 2:
        return "".join(parts)
    if TEXTS:
        joint = say("joint." + joint, joint)
    return ", ".join(parts[:-1]) + " " + joint + " " + parts[-1]


_SPACES = "\t\n\r\x0b\x0c\x1c\x1d\x1e\x1f"
_WIDE_SPACES = (
    "\x85\u00a0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u2028\u2029\u202f\u205f\u3000"
)


def is_ascii(text: str) -> bool:
    """Return whether `text` has plain letters only, which spares most of the searches for marks."""
    try:
        return len(text.encode()) == len(text)
    except UnicodeError:  # half a pair of marks, see `mended`
        return False


def mended(text: str) -> str:
    """Return `text` with a sign of its own for every half of a pair of marks, which no page, file or terminal can show."""
    if is_ascii(text) or not [mark for mark in text if _is_half(mark)]:
        return text
    return "".join([_LOST if _is_half(mark) else mark for mark in text])


def _is_half(mark: str) -> bool:
    code = ord(mark)
    return _FIRST_HALF <= code <= _LAST_HALF


def tidy(text: str) -> str:
    """Return `text` with every run of white space as one space, none at the ends.

    The spaces are listed here because engines differ in what `str.split` takes for one.
    """
    for mark in _SPACES if is_ascii(text) else _SPACES + _WIDE_SPACES:
        if mark in text:
            text = text.replace(mark, " ")
    return " ".join([part for part in text.split(" ") if part])


def lower(text: str) -> str:
    """Return `text` with A to Z as small letters and every other letter as it was (the same in every engine)."""
    return "".join([chr(ord(mark) + _TO_SMALL) if "A" <= mark <= "Z" else mark for mark in text])


def quoted(text: str, limit: int = QUOTED_LENGTH) -> str:
    """Return what a person typed, in quotes, cut to `limit` characters so that a message stays one line."""
    return "“" + cut(text, limit) + "”"


def cut(text: str, limit: int = QUOTED_LENGTH) -> str:
    """Return `text` in single spaces, and not more than `limit` characters of it."""
    flat = mended(tidy(text))
    return flat[: limit - 1] + "…" if len(flat) > limit else flat


def json_text(value: object) -> str:
    """Return `value` as JSON text with the same bytes in every engine.

    Takes None, booleans, whole numbers, text, `Number` (a decimal already written out), lists, tuples
    and dictionaries in their own order, whose keys are plain names. Raises TypeError for anything else, floats included.
    """
    # Control marks can stand in texts only, so one pass over the whole finds them all.
    return _replaced(_json(value), _CONTROLS)


def _json(value: object) -> str:
    if value is None:
        return "null"
    if value is True:
        return "true"
    if value is False:
        return "false"
    if isinstance(value, Number):
        return value.text
    if isinstance(value, int):
        return str(value)
    if isinstance(value, str):
        return _json_string(value)
    if isinstance(value, (list, tuple)):
        return "[" + ", ".join([_json(item) for item in value]) + "]"
    if isinstance(value, dict):
        return "{" + ", ".join(['"' + str(key) + '": ' + _json(item) for key, item in value.items()]) + "}"
    raise TypeError("no JSON form for " + type(value).__name__)


class Number:
    """A number for JSON, as the text that shall stand there: Number('38.96')."""

    def __init__(self, text: str) -> None:
        self.text = text


def _scaled(value: Fraction, places: int, rounding: str) -> int:
    top: int = value.numerator * 10**places
    bottom: int = value.denominator
    if rounding == "up":
        return -(-top // bottom)
    if rounding == "down":
        return top // bottom
    return (2 * top + bottom) // (2 * bottom)


_HEX = "0123456789abcdef"
_ESCAPES = (("\\", "\\\\"), ('"', '\\"'), ("\n", "\\n"), ("\r", "\\r"), ("\t", "\\t"))
_CONTROLS = tuple(
    [(chr(code), "\\u00" + _HEX[code // 16] + _HEX[code % 16]) for code in range(32) if code not in (9, 10, 13)]
)


def _json_string(text: str) -> str:
    return '"' + _replaced(text, _ESCAPES) + '"'


def _replaced(text: str, pairs: tuple[tuple[str, str], ...]) -> str:
    for mark, escape in pairs:
        if mark in text:  # the search is quick in every engine, a walk over the letters is not
            text = text.replace(mark, escape)
    return text
