"""The nearest room that can be read, made from what a person typed: `Bed: 20'14"` gives `Bed: 20' x 14'`.

A form is only offered once it was read itself, so what stands here may be a guess and never a wrong answer.
"""

from collections.abc import Callable

from calc.numbers import measure, words
from calc.numbers.measure import MeasureFault
from calc.rooms.closing import length_text
from calc.rooms.walks import LONGEST_BARE_FT, is_walk, mended, path, side, step_of
from calc.rooms.writing import sides_of, walked

EXAMPLE_SIDES = ("20'", "14'")
KEYWORDS = ("slope", "less", "at")
MOST_LOOKED_AT = 300  # letters of a text that are looked into: a size is never as long
LONGEST_NAME = 40  # letters of a name that are kept
MOST_PARTS = 12  # slopes, cut-outs and places that are looked at one by one

_DIGITS = "0123456789"
# What may stand after a number, the longest first, and how it is written again.
_UNITS = (
    ("millimeters", "mm"), ("millimetres", "mm"), ("centimeters", "cm"), ("centimetres", "cm"), ("meters", "m"), ("metres", "m"),
    ("meter", "m"), ("metre", "m"), ("inches", '"'), ("inch", '"'), ("feet", "'"), ("foot", "'"), ("mm", "mm"), ("cm", "cm"),
    ("ft", "'"), ("in", '"'), ("m", "m"), ("f", "'"), ("'", "'"), ('"', '"'),
)  # fmt: skip


def split_words(body: str, keywords: tuple[str, ...] = KEYWORDS) -> list[tuple[str, str]]:
    """Return [('', text before the first keyword), (keyword, text after it), ...]."""
    parts: list[tuple[str, list[str]]] = [("", [])]
    for word in body.split(" "):
        if words.lower(word) in keywords:
            parts.append((words.lower(word), []))
        else:
            parts[-1][1].append(word)
    return [(keyword, " ".join(found)) for keyword, found in parts]


def form(name: str, body: str, works: Callable[[str], bool]) -> str:
    """Return the nearest room to `name` and `body` for which `works` is true, '' where there is none."""
    name = words.tidy(name[:LONGEST_NAME])
    lead = name + ": " if name else ""
    parts = split_words(body)
    found = ""
    for with_name, text in _heads(lead, name, parts[0][1]):
        if not found and works(with_name + text):
            found = with_name + text
    last = True
    for keyword, value in parts[1 : MOST_PARTS + 1] if found else []:
        if keyword == "at" and not last:
            continue  # its cut-out was left out
        last = False
        for text in (value, _slope(value) if keyword == "slope" else pair(value)):
            if not last and text and works(found + " " + keyword + " " + text):
                found, last = found + " " + keyword + " " + text, True
    return found


def pair(text: str) -> str:
    """Return the two lengths that stand in `text` as `20' x 14'`; what is missing is the example's. '' for no length."""
    sides = [one for one in sides_of(text[:MOST_LOOKED_AT]) if [mark for mark in one if mark in _DIGITS]]
    if len(sides) > 1:
        found = [(_lengths(one, False) + [("", "")])[0] for one in sides[:2]]
    else:
        found = _lengths(sides[0], True) if sides else []
    if len(found) == 1 and "," in text:  # 20,14: the comma may stand between the two
        found = [one for part in text.split(",") for one in _lengths(part, True)] or found
    if not [one for one in found if one[0]]:
        return ""
    metric = [unit for _, unit in found if unit in ("m", "cm", "mm")]
    usual = metric[0] if metric else ""
    if len(sides) == 1 and len(found) == 2 and found[0][1] == "'" and found[1][1] == '"':
        found[1] = (found[1][0], "'")  # 20'14": too many inches for one length, so the last mark is a slip
    first = _fitted(found[0][0], found[0][1] or usual, EXAMPLE_SIDES[0])
    other = found[1] if len(found) > 1 else ("", "")
    return first + " x " + _fitted(other[0], other[1] or usual, EXAMPLE_SIDES[1])


def _heads(lead: str, name: str, head: str) -> list[tuple[str, str]]:
    """(name and colon, size) pairs to try, the nearest first."""
    found = [(lead, head)]
    plain = walked(head)
    if is_walk(plain):
        found += [(lead, one) for one in mended(plain)]
        found += [(lead, one) for one in _turned_round(plain)]
        every = plain.split(" ")
        at = 0
        while step_of(every[at]) is None:
            at += 1
        rest = " ".join(every[at:])
        named = words.tidy(name + " " + plain[: len(plain) - len(rest)])
        found += [(named + ": ", one) for one in [rest] + mended(rest)] if named != name else []
        found += [(lead, _overall(rest)), (lead, pair(head))]
    else:
        sides = sides_of(head)
        numbers = sides[0].split(" ")
        if (
            name and len(sides) == 2 and len(numbers) == 2 and all([mark in _DIGITS for mark in "".join(numbers)])
        ):  # Bed 2 10 x 12
            found.append((words.tidy(name + " " + numbers[0]) + ": ", pair(numbers[1] + " x " + sides[1])))
        if not [mark for mark in ("sq", "²", "ft2", "m2") if mark in words.lower(head)]:
            found.append((lead, pair(head)))
    example = " x ".join(EXAMPLE_SIDES)
    if not name and not [mark for mark in head if mark in _DIGITS + ":"]:
        found.append((words.tidy(head[:LONGEST_NAME]) + ": ", example))
    return [one for one in found if one[1]] + [(lead, example), ("", example)]


def _overall(text: str) -> str:
    """The sides of the box that a walk keeps in, as far as it can be read."""
    points, _ = path(text)
    east, north = [x for x, _ in points], [y for _, y in points]
    sides = [max(east) - min(east), max(north) - min(north)]
    if not sides[0] or not sides[1]:
        return ""
    return " x ".join([length_text(one, False) for one in sides])


def _turned_round(text: str) -> list[str]:
    """A walk whose lengths stand before the ways, `14' E 6' S`, the right way round."""
    every = text.split(" ")
    if step_of(every[0]) is not None or step_of(every[-1]) is None:
        return []
    found: list[str] = []
    length: list[str] = []
    for word in every:
        if step_of(word) is None:
            length.append(word)
        else:
            found += [word] + length
            length = []
    turned = " ".join(found)
    return [turned] + mended(turned)


def _slope(text: str) -> str:
    """A slope from the numbers and the way in `text`: 4/12 north is 4:12 N."""
    numbers = [number for number, _ in _lengths(text.replace(":", " ").replace("/", " "), True)]
    if not numbers:
        return ""
    last = words.lower(text).split(" ")[-1]
    toward = " " + last[0].upper() if step_of(last) is not None else ""
    return numbers[0] + ":" + (numbers[1] if len(numbers) > 1 else "12") + toward


def _fitted(number: str, unit: str, instead: str) -> str:
    """One side with its unit, made small enough to be taken; `instead` where there is none."""
    if "'" in number:  # feet and inches
        return number + unit if _is_side(number + unit) else _fitted(number.partition("'")[0], "'", instead)
    while number and not _is_number(number):
        number = number[:-1]
    if not number:
        return instead
    if not unit:
        unit = "'" if measure.read_number(number) <= LONGEST_BARE_FT else '"'
    while number:
        for one in (unit, '"') if unit == "'" else (unit,):
            text = number + (" " if one not in "'\"" else "") + one
            if _is_side(text):
                return text
        number = number[:-1]
    return instead


def _is_side(text: str) -> bool:
    try:
        side(text)
    except MeasureFault:
        return False
    return True


def _lengths(text: str, apart: bool) -> list[tuple[str, str]]:
    """The lengths in `text` as (number, unit) pairs, feet and inches in one; `apart`: two bare numbers are two."""
    plain = words.lower(measure.tidy(text[:MOST_LOOKED_AT]))
    found: list[tuple[str, str, int, int]] = []  # number, unit, where it begins and ends
    at = 0
    while at < len(plain):
        if plain[at] not in _DIGITS:
            at += 1
            continue
        number, end = _number(plain, at)
        unit, after = _unit(plain, end)
        found.append((number, unit, at, after))
        at = after
    joined: list[tuple[str, str]] = []
    skip = False
    for index, (number, unit, _, end) in enumerate(found):
        if skip:
            skip = False
            continue
        follows = found[index + 1] if index + 1 < len(found) else ("", "", 0, 0)
        beside = words.tidy(plain[end : follows[2]]) in ("", "-")
        feet = unit == "'" or (unit == "" and not apart)
        inches = follows[1] == '"' or (follows[1] == "" and (len(found) > 2 or not apart))
        if feet and inches and beside and "/" not in number and "." not in number and _below_twelve(follows[0]):
            joined.append((number + "' " + follows[0], '"'))
            skip = True
        else:
            joined.append((number, unit))
    return joined


def _below_twelve(number: str) -> bool:
    return _is_number(number) and measure.read_number(number) < measure.INCHES_PER_FOOT


def _is_number(text: str) -> bool:
    try:
        measure.read_number(text)
    except MeasureFault:
        return False
    return bool(text)


def _number(plain: str, at: int) -> tuple[str, int]:
    """The number that begins at `at`, as it is read, and where it ends: 6,5 is 6.5, and 6-1/2 is 6 1/2."""
    end = _while(plain, at, _DIGITS + ".,")
    whole = plain[at:end]
    while whole[-1] not in _DIGITS:
        whole, end = whole[:-1], end - 1
    whole = whole.replace(",", "." if whole.count(",") == 1 and "." not in whole else "")
    head, point, rest = whole.partition(".")
    whole = head + point + rest.replace(".", "")
    top = end
    if plain[end : end + 1] in (" ", "-"):
        top = _while(plain, end + 1, _DIGITS)
        if top == end + 1 or plain[top : top + 1] != "/":
            return whole, end
    if plain[top : top + 1] != "/":
        return whole, end
    bottom = _while(plain, top + 1, _DIGITS)
    if bottom == top + 1:
        return whole, end
    part = plain[end + 1 : bottom] if top > end else ""
    text = whole + " " + part if part else whole + plain[end:bottom]
    return text if _is_number(text) else whole, bottom


def _unit(plain: str, at: int) -> tuple[str, int]:
    """The unit that stands at `at`, maybe after a space, and where it ends; '' for none."""
    start = at + 1 if plain[at : at + 1] == " " else at
    for name, unit in _UNITS:
        end = start + len(name)
        if plain[start:end] == name and (unit == name == "'" or name == '"' or not plain[end : end + 1].isalpha()):
            return unit, end + 1 if plain[end : end + 1] == "." else end
    return "", at


def _while(plain: str, at: int, marks: str) -> int:
    while at < len(plain) and plain[at] in marks:
        at += 1
    return at
