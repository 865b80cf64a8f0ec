"""Each printed working gives the printed value, in both systems of units, by a reader that shares nothing with the writer."""

import os
import sys
from pathlib import Path

import pytest
import reader

from calc import catalogue
from calc.core.answer import public

sys.path.append(str(Path(__file__).parents[1] / "engines"))
from questions import questions

COUNT = int(os.environ.get("WORKINGS", "250"))
# Lines that no formula gives: counted from a plan, found by a search, read off a table or followed hour by hour. Each says
# what was done. Nothing else may stand here.
COUNTED: dict[str, tuple[str, ...]] = {
    "board": ("sheets", "screw_length_in"),
    "carry": ("longest_stock_ft",),
    "compare": ("ways_open", "ways_open_after", "ways_not_known", "ways_closed"),
    "decision": ("ways_open", "ways_open_after", "ways_not_known", "ways_closed"),
    "drying": ("vapor_pressure_psi",),
    "humidity": (
        *(f"{way}_hours{end}" for way in ("closed", "window", "machine") for end in ("", "_low", "_high")),
        "peak_humidity_pct",
        "dew_point_f",
    ),
    "fixtures": ("fixtures_that_fit", "fixtures_with_work", "fixtures_that_stop"),
    "plan": (
        *(f"{what}_{end}" for what in ("working_days", "calendar_days") for end in ("low", "high")),
        "labor_hours_low",
        "labor_hours_high",
    ),
    "sheeting": ("rolls",),
    "shopping": ("sheets", "labor_hours_low", "labor_hours_high"),
}
# Whose lines are not yet made of quantities.
OUTSIDE: tuple[str, ...] = ()


def lines_of(calculator, show_in, count):
    """Every line of answers to random questions."""
    for asked in questions(calculator, count):
        answer, _ = catalogue.work_out(calculator.name, asked | {"show_in": show_in})
        if answer is not None:
            for line, one in zip(public(answer)["answers"], answer.lines, strict=True):
                yield asked, line | {"places": one.places}


@pytest.mark.parametrize("show_in", ["customary", "metric"])
@pytest.mark.parametrize("calculator", catalogue.every(), ids=lambda one: one.name)
def test_every_working_gives_the_value(calculator, show_in):
    if calculator.name in OUTSIDE:
        pytest.skip("not made of quantities yet")
    counted = COUNTED.get(calculator.name, ())
    seen = 0
    for asked, line in lines_of(calculator, show_in, COUNT):
        if line["name"] in counted:
            assert line["working"], line
            continue
        seen += 1
        try:
            reader.check(line["working"], line["value"].text, line["unit"], line["places"])
        except (reader.DoesNotAddUp, reader.NoSum) as fault:
            raise AssertionError(f"{asked} {line['name']}: {line['working']!r}: {fault!r}") from None
        assert line["sources"], f"{line['name']} has no source"
    assert seen or counted
