"""Every published figure of `docs/evidence/figures` against the calculator it belongs to."""

from fractions import Fraction

import pytest

from calc import catalogue
from handbook.evidence import check_table

VECTORS = [
    pytest.param(calculator, vector, id=f"{calculator} {vector['id']}") for calculator, vector in check_table.vectors()
]


@pytest.mark.parametrize(("calculator", "vector"), VECTORS)
def test_printed_figure(calculator, vector):
    assert vector["source"]
    assert vector["known"] in check_table.KNOWN
    found = check_table.checks(calculator, vector)
    assert found
    for one in found:
        assert one.agrees, one


def test_every_calculator_has_vectors_and_no_vector_stands_twice():
    ids = [(calculator, vector["id"]) for calculator, vector in check_table.vectors()]
    assert len(ids) == len(set(ids))
    assert {calculator for calculator, _ in ids} == {one.name for one in catalogue.every()}
    assert {path.stem for path in check_table.FOLDER.glob("*.json")} == {one.name for one in catalogue.every()}


def test_a_tolerance_is_half_the_last_digit_or_says_why():
    for _, vector in check_table.vectors():
        for name, printed in vector.get("printed", {}).items():
            decimals = len(printed.partition(".")[2])
            half = Fraction(1, 2 * 10**decimals)
            assert Fraction(vector["tolerance"][name]) <= half or vector["tolerance_reason"], vector["id"]


def _reds(calculator):
    return [
        one.id
        for name, vector in check_table.vectors()
        if name == calculator
        for one in check_table.checks(name, vector)
        if not one.agrees
    ]


WRONG = [
    ("skim", "finish.skim", "GALLONS_PER_SQFT_INCH", Fraction(144, 230), "JC-01"),
    ("paint", "finish.paint", "SQFT_PER_GAL_AT_ONE_MIL", Fraction(1600), "MAT-03 at 350"),
    ("airflow", "protect.airflow", "MINUTES_PER_HOUR", 61, "AIR-02"),
    ("samples", "hazards.samples", "SAMPLE_STEPS", ((1001, 3), (5000, 5)), "AS-01 1000.01 sq ft"),
    ("lead", "hazards.lead", "WINDOW_DAYS", 31, "PB-01 day 31"),
    ("lead", "hazards.lead", "BEFORE_YEAR", 1979, "PB-03 1978"),
    ("fixtures", "site.fixture_rules", "SET_BACK_IN", Fraction(3, 8), "EL-01 3/8 in"),
    ("fixtures", "site.fixture_rules", "ROOM_IN", 83, "HT-01 under it"),
    ("panels", "cover.panels", "ADHESIVE_IN", Fraction(1, 4), "TL-01"),
    ("taping", "finish.taping", "TAPE_FT_PER_1000", 381, "WX-01"),
    ("wetting", "protect.wetting", "WATER_LB_PER_GAL", Fraction(834, 100), "MAT-01 at 70 F"),
    ("debris", "protect.debris", "BOARD_LB_PER_CUYD", 500, "GB-24"),
    ("sheeting", "protect.sheeting", "FILM_DENSITY", Fraction(95, 100), "MAT-02 6 mil"),
    ("humidity", "drying.air", "WATER_TO_AIR_MASS", Fraction(622, 1000), "Moist air 70 F 50 %"),
    ("humidity", "drying.three_ways", "RATED_PCT", Fraction(59), "Rated at 65 F, drier air"),
    ("humidity", "drying.coats", "COMPOUND_LB_PER_GAL", Fraction(138, 10), "JC-11 moisture load"),
    ("humidity", "drying.coats", "COMPOUND_WATER_PCT", Fraction(34), "JC-11 moisture load"),
    ("humidity", "drying.coats", "GALLONS_PER_SQFT_INCH", Fraction(144, 230), "JC-11 moisture load"),
    ("drying", "drying.law", "_STEPS", ((0, 3300000), (980000, 2200000)), "DRY-T 70 F 90 %"),
    ("drying", "drying.law", "BASIS_THICKNESS_IN", Fraction(1, 32), "DRY-T 60 F 50 %"),
    ("reach", "site.reach", "LADDER_RATIO", 3, "LD-01"),
]


@pytest.mark.parametrize(("calculator", "module", "constant", "wrong", "red"), WRONG)
def test_a_wrong_constant_would_be_seen(monkeypatch, calculator, module, constant, wrong, red):
    """The check on the checks: break a constant, and the vector that holds it turns red."""
    assert _reds(calculator) == []
    monkeypatch.setattr(f"calc.{module}.{constant}", wrong)
    assert red in _reds(calculator)
