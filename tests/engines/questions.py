"""Random questions made from the declarations: good, at the edge, and bad; the same ones as long as the calculators are the same."""

import functools
import hashlib
import json
import random
from fractions import Fraction
from pathlib import Path

import calc
from calc import catalogue
from calc.core.fields import Field
from calc.numbers import measure

JUNK = (
    "", " ", "x", "1/0", "-1", "−3", "14' 13\"", "nan", "1e3", "9" * 25, "½", "7,5", "1,000", "é", "″", "<b>&\"'", "\t1\u00a0",
    "٣", "1 2 3", "14-", "0x10", "🏠", "\\", "3 4/3", "١/٢",
)  # fmt: skip


def questions(calculator: catalogue.Calculator, count: int) -> list[dict[str, str]]:
    """Return `count` sets of inputs for one calculator, seeded by its name and by what stands in `calc`."""
    chance = random.Random(f"{_edition()} {calculator.name}")
    return [_one(calculator, chance) for _ in range(count)]


@functools.cache
def _edition() -> str:
    """Return a text that changes with every byte of the calculators, so that each change of them is asked other questions."""
    held = hashlib.sha256()
    for path in sorted(Path(calc.__file__).parent.rglob("*.py")):
        held.update(path.read_bytes())
    return held.hexdigest()


def _one(calculator: catalogue.Calculator, chance: random.Random) -> dict[str, str]:
    bad = chance.random() < 0.2
    given = {}
    chosen = chance.choice(calculator.one_of) if calculator.one_of else ""
    for field in calculator.fields:
        if calculator.one_of and field.name in calculator.one_of and field.name != chosen and not bad:
            continue
        must = (field.required and not field.default) or field.name == chosen
        if chance.random() < (0.05 if must and bad else 0 if must else 0.5):
            continue
        given[field.name] = chance.choice(JUNK) if bad and chance.random() < 0.4 else _good(field, chance)
    if bad and chance.random() < 0.1:
        given["moon"] = "full"
    return given


def _good(field: Field, chance: random.Random) -> str:
    if field.kind == "rooms":
        return "; ".join(_room(chance) for _ in range(chance.randint(1, 4)))
    if field.kind == "list":
        return "; ".join(_entry(field, chance) for _ in range(chance.randint(1, 6)))
    if field.kind == "text":
        return chance.choice([value for value, _ in field.choices] + ["Narnia", "co", "Ünïted", "x" * 70, "  federal "])
    if field.kind == "choice":
        return chance.choice([value for value, _ in field.choices])
    low, high = (measure.read_quantity(text, field.unit) for text in (field.lowest, field.highest))
    kind = chance.random()
    if kind < 0.1:
        return chance.choice((field.lowest, field.highest, field.example))
    if field.kind == "count":
        return str(chance.randint(int(low), int(high)))
    value = low + (high - low) * Fraction(chance.randint(0, 1000), 1000) * Fraction(chance.randint(1, 10), 10)
    if field.unit in ("in", "ft") and kind < 0.5:
        inches = value * (12 if field.unit == "ft" else 1)
        return measure.feet_and_inches(inches) if kind < 0.3 else f"{float(inches * Fraction(254, 100)):.3f} cm"
    if field.unit == "F" and kind < 0.4:
        return f"{float((value - 32) * 5 / 9):.1f} C"
    return f"{float(value):.{chance.randint(0, 4)}f}"


def _entry(field: Field, chance: random.Random) -> str:
    """One entry of a list, from its example or of another kind of the same field; now and then a bad one."""
    known = [part.strip() for part in field.example.split(";")]
    known += [entry for entry, _ in field.choices]
    entry = chance.choice(known)
    if chance.random() < 0.4:
        head, colon, value = entry.partition(":")
        if colon:
            value = chance.choice(
                (
                    f" {chance.randint(0, 120)}",
                    f" {chance.randint(0, 40)}/8",
                    " 5%",
                    " none",
                    " 1.01",
                    " 20 cm",
                    " 3/0",
                    " x",
                )
            )
        entry = head.replace("12", str(chance.randint(0, 40))) + colon + value
    return chance.choice(JUNK) if chance.random() < 0.03 else entry


def _room(chance: random.Random) -> str:
    east, north = chance.randint(3, 40), chance.randint(3, 40)
    shape = chance.random()
    name = chance.choice(("Living", "Den", "Küche", "Bed 2", "", "A & <B>"))
    if shape < 0.5:
        size = chance.choice(
            (
                f"{east}' x {north}'",
                f"{east} × {north}",
                f"{east}' 6 1/2\" x {north}-3",
                f"{east / 3:.2f} m x {north / 3:.2f} m",
            )
        )
    else:
        cut_east, cut_north = chance.randint(1, east - 1), chance.randint(1, north - 1)
        legs = f"E {east}' N {north - cut_north}' W {cut_east}' N {cut_north}' W {east - cut_east}' S {north}'"
        size = legs if shape < 0.95 else legs.replace("E", "W")
    if chance.random() < 0.3:
        size += f" slope {chance.randint(0, 12)}:12 " + chance.choice(("N", "e", "S", "W", ""))
    if chance.random() < 0.3:
        size += " less 2' x 1'"
    return f"{name}: {size}" if name else size


def as_lines(calculator: str, asked: list[dict[str, str]]) -> str:
    """Return the questions as one JSON text a line, for a process that reads them."""
    return "".join(json.dumps([calculator, json.dumps(one, ensure_ascii=False)]) + "\n" for one in asked)
