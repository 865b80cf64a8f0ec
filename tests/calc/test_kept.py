"""The values of edition 0.4 stand. Our own output is no evidence; it shows whether a change that should leave values alone did."""

import json
from pathlib import Path

import pytest

from calc import catalogue
from calc.core.answer import public
from handbook.evidence import check_table

KEPT = json.loads((Path(__file__).parent / "kept_values.json").read_text(encoding="utf-8"))


def values(calculator, inputs):
    answer, faults = catalogue.work_out(calculator.name, inputs)
    if answer is None:
        return {"faults": ", ".join(one.field for one in faults)}
    return {one["name"]: f"{float(one['value'].text):g} {one['unit']}".strip() for one in public(answer)["answers"]}


def as_told(kept):
    """Values are kept as a program read them: 56.0 and 56 are one."""
    parts = {name: text.split(" ", 1) for name, text in kept.items() if name != "faults"}
    return {name: " ".join([f"{float(part[0]):g}", *part[1:]]) for name, part in parts.items()} | {
        name: text for name, text in kept.items() if name == "faults"
    }


@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_values_are_those_of_the_edition_before(calculator):
    asked = [("example", dict(calculator.example))]
    asked += [(vector["id"], vector["inputs"]) for name, vector in check_table.vectors() if name == calculator.name]
    left = {name: list(rows) for name, rows in KEPT.get(calculator.name, {}).items()}
    for name, inputs in asked:
        if left.get(name):  # a row that came later has nothing before it
            assert values(calculator, inputs) == as_told(left[name].pop(0)), name
    assert not any(left.values()), "a row that stood in the edition before is gone"
