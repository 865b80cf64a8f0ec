"""Published figures against our own: the one reader of the vectors (`docs/evidence/figures`), for the tests and for the page that shows them.

A vector holds the figure as its source prints it, with half its last digit as tolerance unless it gives a reason.
`within` asks that the printed figure lies inside the band that we give; `says` asks for a verdict on a listed thing, and
`tells` for words in the text of one, in the answer's `sentence` or its `notes`; `warns` whether a caution stands there, and
`refuses` that the inputs are refused at a field with these words. `source_id` is the source's id in `calc.evidence.sources`.
"""

import json
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

from calc import catalogue
from calc.core.answer import Calculator, Line
from calc.numbers import words
from handbook.evidence import once

FOLDER = Path(__file__).resolve().parents[3] / "docs" / "evidence" / "figures"
KNOWN = ("seen", "quoted", "memory", "computed")


@dataclass(frozen=True)
class Check:
    """One printed figure and ours. `agrees` is judged on exact values, not on the texts shown; `reason` says why ours may
    differ by more than half of the last printed digit, where it may."""

    calculator: str
    id: str
    name: str
    printed: str
    ours: str
    source: str
    source_id: str
    known: str
    agrees: bool
    reason: str


@cache
def vectors() -> list[tuple[str, dict[str, Any]]]:
    """Return (calculator, vector) for every vector, in the order of the catalogue."""
    return [
        (calculator.name, vector)
        for calculator in catalogue.every()
        for vector in json.loads((FOLDER / f"{calculator.name}.json").read_text(encoding="utf-8"))
    ]


def checks(calculator: str, vector: dict[str, Any]) -> list[Check]:
    """Return one check for each figure of a vector; raises ValueError where the calculator refuses the inputs."""
    answer, faults = once.work_out(calculator, vector["inputs"])
    if answer is None and "refuses" not in vector:
        raise ValueError(f"{calculator} {vector['id']}: {[fault.message for fault in faults]}")
    values = {line.name: line for line in answer.lines} if answer else {}
    states: dict[str, str] = {}
    texts = {"sentence": answer.sentence, "notes": " ".join(answer.notes)} if answer else {}
    for item in answer.items if answer else ():
        states.setdefault(item.name, item.state)
        texts.setdefault(item.name, " ".join([*(text for text, _ in item.reasons), item.text]))
    warned = [one.id for one in answer.cautions] if answer else []
    refused = {fault.field: fault.message for fault in faults}
    found = []

    def told(name: str, printed: str, ours: str, agrees: bool) -> None:
        found.append(
            Check(calculator, vector["id"], name, printed, ours, vector["source"], vector["source_id"], vector["known"], agrees, vector.get("tolerance_reason", ""))
        )  # fmt: skip

    for name, printed in vector.get("printed", {}).items():
        value = values[name].value
        places = len(printed.partition(".")[2]) + 1
        agrees = abs(value - Fraction(printed)) <= Fraction(vector["tolerance"][name])
        told(name, printed, words.short_decimal(value, places), agrees)
    for name, band in vector.get("within", {}).items():
        low, high = values[band["low"]].value, values[band["high"]].value
        ours = f"{words.short_decimal(low, 1)} to {words.short_decimal(high, 1)}"
        told(name, band["printed"], ours, low <= Fraction(band["printed"]) <= high)
    for name, state in vector.get("says", {}).items():
        told(name, state, states.get(name, "nothing"), states.get(name) == state)
    for name, printed in vector.get("tells", {}).items():
        agrees = printed in texts.get(name, "")
        told(name, printed, printed if agrees else "nothing of it", agrees)
    for name, printed in vector.get("warns", {}).items():
        ours = "yes" if name in warned else "no"
        told(name, printed, ours, printed == ours)
    for name, printed in vector.get("refuses", {}).items():
        agrees = printed in refused.get(name, "")
        told(name, f"refused: {printed}", f"refused: {printed}" if agrees else "not refused so", agrees)
    return found


def every_check() -> list[Check]:
    """Return all checks of all vectors."""
    return [check for calculator, vector in vectors() for check in checks(calculator, vector)]


def every_line(calculator: Calculator) -> dict[str, Line]:
    """Return every line that a calculator is seen to answer, in its example and in its vectors, by its public name."""
    asked = [dict(calculator.example)] + [vector["inputs"] for name, vector in vectors() if name == calculator.name]
    found: dict[str, Line] = {}
    for inputs in asked:
        answer, _ = once.work_out(calculator.name, inputs)
        for line in answer.lines if answer else ():
            found.setdefault(line.name, line)
    return found
