"""The rows of evidence and the register of sources say the same of how well a figure is known."""

import re
from pathlib import Path

import pytest

from calc.evidence import sources
from handbook.evidence import check_table

RANK = {"memory": 1, "quoted": 2, "seen": 3}
ROWS = [pytest.param(vector, id=f"{name} {vector['id']}") for name, vector in check_table.vectors()]


def claims_too_much(vector, known):
    """Whether a row is said to be known better than its source is, by any of what the register holds of it."""
    return vector["known"] != "computed" and RANK[vector["known"]] > RANK.get(known, 0)


@pytest.mark.parametrize("vector", ROWS)
def test_a_row_claims_no_more_than_its_source(vector):
    assert not claims_too_much(vector, sources.source(vector["source_id"]).known)


@pytest.mark.parametrize("vector", [one for one in ROWS if one.values[0]["known"] == "computed"])
def test_a_computed_row_says_from_what(vector):
    assert sources.source(vector["source_id"]).known == "computed" or vector["source"].startswith(
        ("Worked out", "Geometry", "Definition")
    )


def test_each_key_of_a_row_is_explained_to_contributors():
    told = (Path(__file__).resolve().parents[2] / "DEVELOPERS.md").read_text(encoding="utf-8")
    table = told.partition("## Add a row of evidence")[2].partition("\n## ")[0]
    names = re.findall(r"^\| (`.*?`) \|", table, re.M)
    assert {key for row in ROWS for key in row.values[0]} == set(re.findall(r"`(\w+)`", " ".join(names)))


def test_the_check_can_fail():
    assert claims_too_much({"known": "seen"}, "quoted")
    assert claims_too_much({"known": "quoted"}, "memory")
    assert claims_too_much({"known": "memory"}, "practice")
    assert not claims_too_much({"known": "memory"}, "seen")


def test_a_source_that_was_seen_or_quoted_has_its_day():
    for one in sources.SOURCES:
        assert bool(one.checked_on) == (one.known in ("seen", "quoted", "computed")), one.id
