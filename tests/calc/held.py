"""Each number that is held by a test, nudged both ways under that test, and whether the test turns red.

    PYTHONPATH=.:scripts python tests/calc/held.py [part of a name …]

The list says which test holds which number. This process brings in what the tests stand on, and never the calculators;
for each nudge it makes a copy of itself, in which the package is read anew with that one number changed. A copy that
only reads the package with the number changed, and does not fail in the test itself, has noticed nothing.
"""

import gc
import importlib
import json
import os
import sys
from fractions import Fraction
from pathlib import Path

import nudge
import pytest

LISTED = json.loads((Path(__file__).parent / "numbers.json").read_text(encoding="utf-8"))
MARK = "elsewhere: "
USED = (
    "hypothesis",
    "numpy",
    "pint",
    "psychrolib",
    "scipy.integrate",
    "scipy.optimize",
    "shapely.geometry",
    "shapely.ops",
)
PLAINLY = (
    "-x", "-q", "--tb=no", "-p", "no:cacheprovider", "-p", "no:xdist",
    "-W", "ignore::pytest.PytestAssertRewriteWarning",  # of what is brought in before
)  # fmt: skip


def holders() -> dict[str, str]:
    """Name of a number -> the test that holds it."""
    return {name: reason.removeprefix(MARK) for name, reason in LISTED.items() if reason.startswith(MARK)}


def outcome(test: str, number: nudge.Number | None, value: Fraction = Fraction(0)) -> int:
    """What pytest says of `test` in a copy of this process, with `number` nudged to `value`: 0 green, 1 red."""
    copy = os.fork()
    if not copy:
        quiet = os.open(os.devnull, os.O_WRONLY)
        os.dup2(quiet, 1)
        os.dup2(quiet, 2)
        if number:
            sys.meta_path.insert(0, nudge._Nudged(number, value))
        told = 99
        try:
            told = int(pytest.main([*PLAINLY, test]))
        finally:
            os._exit(told)
    return os.waitstatus_to_exitcode(os.waitpid(copy, 0)[1])


def main(parts: list[str]) -> int:
    for name in USED:
        importlib.import_module(name)
    os.environ |= {"PYTEST_DISABLE_PLUGIN_AUTOLOAD": "1", "CI": "1"}  # the same examples each time
    gc.freeze()  # what is there is not gone through again in every copy
    holds = holders()
    asked = [
        one
        for one in nudge.numbers()
        if one.name_in_list in holds and (not parts or any(part in one.id for part in parts))
    ]
    for test in sorted({holds[one.name_in_list] for one in asked}):
        print("green" if outcome(test, None) == 0 else "NOT GREEN", test, flush=True)
    for number in asked:
        test = holds[number.name_in_list]
        for value in nudge.nudges(number):
            red = outcome(test, number, value) == 1
            print("red  " if red else "LOOSE", number.id, f"{number.text} -> {value}", test, flush=True)
    return 0


if __name__ == "__main__":
    sys.path[:0] = [str(nudge.ROOT), str(nudge.ROOT / "scripts")]
    sys.exit(main(sys.argv[1:]))
