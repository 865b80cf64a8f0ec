"""Every published figure in `vectors/` against the calculator it belongs to.

A vector holds the figure as the source prints it, with half its last digit as tolerance unless it gives a
reason. `within` asks that the printed figure lies inside the band that we give.
"""

import json
from fractions import Fraction
from pathlib import Path

import pytest

from calc import catalogue

FOLDER = Path(__file__).parent / "vectors"


def _vectors():
    for path in sorted(FOLDER.glob("*.json")):
        for vector in json.loads(path.read_text(encoding="utf-8")):
            yield pytest.param(path.stem, vector, id=f"{path.stem} {vector['id']}")


def _values(calculator, inputs):
    answer, faults = catalogue.work_out(calculator, inputs)
    assert answer is not None, faults
    return {line.name: line.value for line in answer.lines}


@pytest.mark.parametrize(("calculator", "vector"), list(_vectors()))
def test_printed_figure(calculator, vector):
    ours = _values(calculator, vector["inputs"])
    assert vector["source"]
    assert vector["known"] in ("seen", "quoted", "memory", "computed")
    for name, printed in vector.get("printed", {}).items():
        assert abs(ours[name] - Fraction(printed)) <= Fraction(vector["tolerance"][name]), (name, float(ours[name]))
    for name, band in vector.get("within", {}).items():
        assert ours[band["low"]] <= Fraction(band["printed"]) <= ours[band["high"]], (name, float(ours[name]))
    assert "printed" in vector or "within" in vector


def test_a_tolerance_is_half_the_last_digit_or_says_why():
    for path in FOLDER.glob("*.json"):
        for vector in json.loads(path.read_text(encoding="utf-8")):
            for name, printed in vector.get("printed", {}).items():
                decimals = len(printed.partition(".")[2])
                half = Fraction(1, 2 * 10**decimals)
                assert Fraction(vector["tolerance"][name]) <= half or vector["tolerance_reason"], vector["id"]


def test_a_wrong_constant_would_be_seen(monkeypatch):
    """The check on the checks: a gallon of 230 cubic inches must turn the gallon vector red."""
    from calc import skim

    vector = json.loads((FOLDER / "skim.json").read_text(encoding="utf-8"))[0]
    monkeypatch.setattr(skim, "GALLONS_PER_SQFT_INCH", Fraction(144, 230))
    with pytest.raises(AssertionError):
        test_printed_figure("skim", vector)
