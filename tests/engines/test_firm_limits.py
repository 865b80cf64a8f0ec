"""A limit of a place that a firm adds holds in every engine: the same bytes as CPython's, on both sides of its edge."""

import json
import os
import shutil
import subprocess
import sys

import pytest

from ask import HERE, _lines, as_lines, in_lowered, site_with
from handbook import build
from handbook.engines import packing
from handbook.firm import edition, local
from handbook.make import pages

pytestmark = [pytest.mark.engines, pytest.mark.slow]

WHERE = [
    {"place": place, "building": building}
    for place in ("Example County", "example co", "Colorado", "Elsewhere", "")
    for building in ("house", "other", "unknown")
]
ASKED = {
    "samples": [{"area_sqft": area, "texture_depth_in": "1/4", **one} for one in WHERE for area in ("9.99", "10", "160")],
    "decision": [{"asbestos_result": result, "result_rooms": "this", **one} for one in WHERE for result in ("found", "trace", "none", "unknown")]
    + [{"paint_test": test, "built": built, **one} for one in WHERE[::3] for test in ("lead", "unknown") for built in ("before-1978", "later")],
    "lead": [{"disturbed_sqft": area, "year_built": "1964", "place": one["place"]} for one in WHERE[::3] for area in ("2", "2.01", "7")],
}  # fmt: skip


@pytest.fixture(scope="module")
def placed(tmp_path_factory):
    """The calculators with the limits and cautions of the sample firm."""
    firm = edition.read_firm(build.DOCS / "firm" / "firm.yml", "firm.yml", build.DOCS, set(pages.GENERATED))
    copy = tmp_path_factory.mktemp("place") / "calc"
    shutil.copytree(packing.ROOT / "calc", copy, ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copyfile(packing.ROOT / name, copy.parent / name)
    (copy / local.MODULE).write_text(local.source(firm.says), encoding="utf-8")
    return copy


@pytest.fixture(scope="module")
def answers(placed):
    """What CPython answers with them."""
    return {name: in_lowered(placed.parent, name, asked, "--text") for name, asked in ASKED.items()}


def test_the_limit_is_reached_at_its_amount_and_not_below(answers):
    for given, text in zip(ASKED["samples"], answers["samples"], strict=True):
        own = [one["state"] for one in json.loads(text)["answer"]["items"] if one["name"].startswith("Example County")]
        here = given["place"].lower().startswith("example") and given["building"] != "other"
        assert own == ([] if not here else ["not reached" if given["area_sqft"] == "9.99" else "reached"])
    for given, text in zip(ASKED["lead"], answers["lead"], strict=True):
        own = [
            (one["state"], one["review_by"])
            for one in json.loads(text)["answer"]["items"]
            if one["name"] == "Example County"
        ]
        here = given["place"].lower().startswith("example")
        assert own == ([("not reached" if given["disturbed_sqft"] == "2" else "applies", "2027-05-01")] if here else [])
    told = [
        given["place"]
        for given, text in zip(ASKED["decision"], answers["decision"], strict=True)
        if "air office before any work" in text
    ]
    assert {one.lower() for one in told} == {"example county", "example co"} and len(
        told
    ) == 12  # found or trace, whatever the building


# What the small engine gets, written by a process that sees the firm's calculators alone, as the build of an edition does.
PACKS = """
import json, pathlib, sys
from handbook.engines import packing
from handbook.engines.lower import lower_package
folder, cache = map(pathlib.Path, sys.argv[1:])
for path, source in lower_package(packing.CALC, packing.CALC.parent).items():
    (folder / path).parent.mkdir(parents=True, exist_ok=True)
    (folder / path).write_text(source, encoding="utf-8")
needs, made = packing.small_parts(packing.CALC, cache)
for at, one in enumerate(made):
    (folder / f"{at}.bin").write_bytes(one)
print(json.dumps([needs, len(made)]))
"""


@pytest.fixture(scope="module")
def lowered(placed, tmp_path_factory):
    """The folder of the lowered package and the parts of the small engine; which parts each calculator needs, and how many there are."""
    folder = tmp_path_factory.mktemp("lowered")
    environment = {**os.environ, "PYTHONPATH": str(packing.ROOT / "scripts")}
    command = [sys.executable, "-c", PACKS, str(folder), str(build.CACHE)]
    done = subprocess.run(command, cwd=placed.parent, env=environment, capture_output=True, text=True, check=True)
    return folder, *json.loads(done.stdout)


def test_the_lowered_package_gives_the_same_bytes(lowered, answers):
    for name, asked in ASKED.items():
        assert in_lowered(lowered[0], name, asked, "--text") == answers[name]


@pytest.mark.parametrize("engine", ["small", "full"])
def test_the_engines_of_the_page_give_the_same_bytes(placed, lowered, answers, tmp_path, engine):
    """The built site as it is, with these calculators in place of its own."""
    if engine == "small":
        folder, needs, count = lowered
        parts = [(folder / f"{at}.bin").read_bytes() for at in range(count)]
        site = site_with(tmp_path / "site", needs=needs, parts=parts)
    else:
        site = site_with(tmp_path / "site", wheel=packing.calc_wheel(placed, tmp_path).read_bytes())
    command = [packing.node(), str(HERE / "run_engine.mjs"), engine, *site, "--text"]
    for name, asked in ASKED.items():
        assert _lines(command, as_lines(name, asked)) == answers[name]
