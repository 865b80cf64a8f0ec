"""How people write a size, made plain: `20 by 14 feet`, `6 x 4 m`, `6,5 m * 4,2 m`, `E14'S6',W14'N6'`."""

from calc.numbers import measure, words

_TIMES = ("×", "✕", "⨯", "*", "by")
_METRIC = (
    "m", "meter", "meters", "metre", "metres", "cm", "centimeter", "centimeters", "centimetre", "centimetres",
    "mm", "millimeter", "millimeters", "millimetre", "millimetres",
)  # fmt: skip
_DIGITS = "0123456789"
_DECIMALS_AFTER_COMMA = (1, 2)  # digits after a comma that stands for a point [-]: three make a thousand


def sides_of(text: str) -> list[str]:
    """Return what stands between the x of a size, small and tidy; a metric unit after the last side is every side's."""
    plain = words.lower(measure.tidy(text))
    for mark in _TIMES:
        if mark in plain:
            plain = plain.replace(mark, "x")
    sides = [words.tidy(one) for one in plain.split("x")]
    unit = metric_unit(sides[-1]) if len(sides) == 2 else ""
    if unit and sides[0] and measure.is_bare(sides[0]):
        sides[0] += " " + unit
    return sides


def metric_unit(side: str) -> str:
    """Return the metric unit that `side` ends in, '' where it ends in none."""
    at = len(side)
    while at and side[at - 1] not in _DIGITS + " .,/":
        at -= 1
    return side[at:] if side[at:] in _METRIC else ""


def with_points(text: str) -> str:
    """Return `text` with a point for a decimal comma: 6,5 is 6.5, and 1,250 stays a thousand and more."""
    head, comma, rest = text.partition(",")
    after = 0
    while after < len(rest) and rest[after] in _DIGITS:
        after += 1
    if not comma or not head or head[-1] not in _DIGITS or after not in _DECIMALS_AFTER_COMMA or "." in head:
        return text
    return text if rest[after : after + 1] in (",", ".") and after + 1 < len(rest) else head + "." + rest


def walked(text: str) -> str:
    """Return a walk with a space before each wall and no comma between two: `E14'S6',W4'` is `E14' S6' W4'`."""
    plain = measure.tidy(text)
    parts: list[str] = []
    last = ""
    for mark in plain.replace(", ", " "):
        if mark in "NESW" and last and last in _DIGITS + "'\",":
            if last == ",":
                parts.pop()
            parts.append(" ")
        parts.append(mark)
        last = mark
    return words.tidy("".join(parts[:-1] if last == "," else parts))
