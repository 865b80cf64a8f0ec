"""Each number that the calculators stand on is held by a printed figure, or stands in a list with the reason why none is."""

import os
import subprocess
import sys

import held
import nudge
import pytest

LISTED = held.LISTED
REASONS = {
    "practice": "common practice, no source",
    "elsewhere": "held by another test, which is named: a reference library, a formula, or a definition",
    "definition": "units by definition, held to a reference library unit by unit and not number by number",
    "choice": "the book's own choice, told on the page",
    "text": "how much of a text is taken, and how it is read",
    "shown": "how much is drawn or shown",
    "search": "effort and grain of a search or an integration",
}
NAMES = {one.name_in_list for one in nudge.numbers()}
MODULES = sorted({one.module for one in nudge.numbers()})


def ran(*command):
    """The rows of a process of its own: it reads the package anew for each number."""
    paths = {"PYTHONPATH": os.pathsep.join(str(nudge.ROOT / one) for one in ("scripts", "", "tests/calc"))}
    done = subprocess.run(
        [sys.executable, *command],
        capture_output=True,
        text=True,
        env={**os.environ, **paths},
        cwd=nudge.ROOT,
        check=True,
    )
    return done.stdout.splitlines()


def told(module, *left_out):
    """What nudging says of one module, but for the names that are left out."""
    rows = ran(nudge.__file__, module, *["-" + one for one in left_out])
    return [row.split()[:2] for row in rows if row.startswith(("LOOSE", "held"))]


@pytest.mark.slow
@pytest.mark.parametrize("module", MODULES)
def test_every_number_is_held_by_a_printed_figure_or_has_its_reason(module):
    """A constant that is added without either turns this red, and so does a reason that is no longer needed. What another test holds
    is nudged under that one, below."""
    own = {name: reason.partition(": ")[0] for name, reason in LISTED.items() if name.rsplit(".", 1)[0] == module}
    elsewhere = {name for name, reason in own.items() if reason in ("elsewhere", "definition")}
    rows = told(module, *elsewhere)
    wanted = [one for one in nudge.numbers() if one.module == module and one.name_in_list not in elsewhere]
    assert len(rows) == len(wanted)
    loose = {name.split("[")[0] for state, name in rows if state == "LOOSE"}
    assert loose == set(own) - elsewhere


@pytest.mark.slow
def test_every_number_that_is_held_elsewhere_turns_the_test_red_that_is_named():
    """Each number of the name, nudged up and down: half a minute of one core."""
    rows = ran(held.__file__)
    holds = held.holders()
    times = sum(len(nudge.nudges(one)) for one in nudge.numbers() if one.name_in_list in holds)
    assert [row for row in rows if not row.startswith(("green ", "red "))] == []
    assert len(rows) == len(set(holds.values())) + times


@pytest.mark.slow
def test_a_test_that_does_not_hold_a_number_stays_green():
    """The check on the check: a number under another number's test, and a test that is not there, are told."""
    wrong = {"rooms.rooms.RUN_IN": "test_days_have_24_hours", "drying.law.MILLION": "test_that_is_not_there"}
    listed = {name: f"{held.MARK}tests/calc/test_definitions.py::{test}" for name, test in wrong.items()}
    rows = ran("-c", f"import held; held.LISTED = {listed!r}; held.main([])")
    assert [row.split(" tests/")[0] for row in rows] == [
        "green", "NOT GREEN", "LOOSE drying.law.MILLION 10 -> 11", "LOOSE drying.law.MILLION 10 -> 9",
        "LOOSE rooms.rooms.RUN_IN 12 -> 13", "LOOSE rooms.rooms.RUN_IN 12 -> 11",
    ]  # fmt: skip


def test_the_list_names_numbers_that_are_there_and_reasons_that_are_known():
    assert {reason.partition(": ")[0] for reason in LISTED.values()} <= set(REASONS)
    assert set(LISTED) <= NAMES
    for name, reason in LISTED.items():
        assert reason.startswith(held.MARK) or ":" not in reason, name
        assert not reason.startswith("elsewhere") or reason.startswith(held.MARK), name


def test_a_nudge_is_noticed():
    """The check on the check: the steps of the sampling rule are held."""
    steps = [state for state, name in told("hazards.samples") if name.startswith("hazards.samples.SAMPLE_STEPS")]
    assert steps and set(steps) == {"held"}
