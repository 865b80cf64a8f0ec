"""Each number that the calculators stand on is held by a printed figure, or stands in a list with the reason why none is."""

import json
import os
import subprocess
import sys
from pathlib import Path

import nudge
import pytest

LISTED = json.loads((Path(__file__).parent / "numbers.json").read_text(encoding="utf-8"))
REASONS = {
    "practice": "common practice, no source",
    "elsewhere": "held by another test: a reference library, a formula, or a definition",
    "choice": "the book's own choice, told on the page",
    "text": "how much of a text is taken, and how it is read",
    "shown": "how much is drawn or shown",
    "search": "effort and grain of a search or an integration",
}
NAMES = {f"{one.module}.{one.name}" for one in nudge.numbers()}
MODULES = sorted({one.module for one in nudge.numbers()})


def told(module):
    """What nudging says of one module, in a process of its own: it reads the package anew for each number."""
    paths = {"PYTHONPATH": os.pathsep.join((str(nudge.ROOT / "scripts"), str(nudge.ROOT)))}
    done = subprocess.run(
        [sys.executable, nudge.__file__, module],
        capture_output=True, text=True, env={**os.environ, **paths}, cwd=nudge.ROOT, check=True,
    )  # fmt: skip
    return [row.split()[:2] for row in done.stdout.splitlines() if row.startswith(("LOOSE", "held"))]


@pytest.mark.slow
@pytest.mark.parametrize("module", MODULES)
def test_every_number_is_held_by_a_printed_figure_or_has_its_reason(module):
    """A constant that is added without either turns this red, and so does a reason that is no longer needed."""
    rows = told(module)
    assert len(rows) == len([one for one in nudge.numbers() if one.module == module])
    loose = {name.split("[")[0] for state, name in rows if state == "LOOSE"}
    assert loose == {name for name in LISTED if name.rsplit(".", 1)[0] == module}


def test_the_list_names_numbers_that_are_there_and_reasons_that_are_known():
    assert set(LISTED.values()) <= set(REASONS)
    assert set(LISTED) <= NAMES


def test_a_nudge_is_noticed():
    """The check on the check: the steps of the sampling rule are held."""
    states = [state for state, name in told("hazards.samples") if name.startswith("hazards.samples.SAMPLE_STEPS")]
    assert states and set(states) == {"held"}
