"""Offer: parts added to the cent, by hand and at random; what is not in the price is named; what does not go together is refused."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import catalogue

PARTS = ("labor_sum", "materials_sum", "others_sum", "tax_sum")
CLEAN = {"asbestos_result": "none", "result_rooms": "this", "result_layers": "all"}


def ask(**given):
    found, faults = catalogue.work_out("offer", {"way": "skim-over", **given})
    assert found is not None, faults
    return found


def refused(**given):
    found, faults = catalogue.work_out("offer", {"way": "skim-over", **given})
    assert found is None
    return {one.field: one.message for one in faults}


def outside(answer):
    return [text for one in answer.listings if one.name == "not-in-offer" for text, _ in one.rows]


def test_an_offer_by_hand():
    """2,100.50 and 640 and 310.25 and 61.10 are 3,111.85."""
    found = ask(
        labor_sum="2100.50", materials_sum="640", others_sum="310.25", tax_sum="61.10", money="$", offer_by="Example Ceilings",
        offer_day="2027-03-01", offer_until="2027-03-31", **CLEAN,
    )  # fmt: skip
    assert (found.figure, found.figure_label) == ("$3,111.85", "for this job: skim over")
    assert found.sentence == "Offered by Example Ceilings. Made on 2027-03-01. Good until 2027-03-31."
    assert [(one.name, one.state) for one in found.items] == [
        ("Labor", "$2,100.50"), ("Materials and rent", "$640.00"), ("Others' work and fees", "$310.25"), ("Taxes", "$61.10"),
    ]  # fmt: skip
    assert found.lines[-1].working == "2,100.50 + 640.00 + 310.25 + 61.10 = 3,111.85"
    assert found.listings == ()  # all four parts are in it, and nobody named more


def test_what_is_not_in_the_price_is_named():
    """No tax, permit or laboratory fee is silently nothing; a part that costs nothing is one that was given."""
    found = ask(labor_sum="900", tax_sum="0", not_in_offer="Moving furniture; Mending what nobody can see yet")
    assert [text.split(":")[0] for text in outside(found)] == [
        "Materials and rent", "Others' work and fees", "Moving furniture", "Mending what nobody can see yet",
    ]  # fmt: skip
    assert found.figure_label == "for this job: skim over; 4 things not in it"  # beside the sum, wherever it stands
    assert "permit" in outside(found)[1] and "laboratory" in outside(found)[1]
    assert [one.name for one in found.items] == ["Labor", "Taxes"]


def test_an_untested_ceiling_has_no_price_that_holds():
    assert ask(labor_sum="900").sentence.startswith("Nothing begins before the laboratory's result.")
    assert ask(labor_sum="900", asbestos_result="none", result_rooms="other").sentence.startswith("Nothing begins")
    assert "Nothing begins" not in ask(labor_sum="900", **CLEAN).sentence
    assert "Only a licensed contractor" in refused(labor_sum="900", **CLEAN | {"asbestos_result": "found"})["way"]


def test_what_does_not_go_together_is_refused():
    assert "Give at least one" in refused()["labor_sum"]
    assert (
        "before it is made" in refused(labor_sum="1", offer_day="2027-03-02", offer_until="2027-03-01")["offer_until"]
    )
    assert ask(labor_sum="1", offer_day="2027-03-01", offer_until="2027-03-01").figure == "1.00"
    assert "no name of money" in refused(labor_sum="1", money="dollars")["money"]
    assert "no name of money" in refused(labor_sum="1", money="$5")["money"]
    assert "no date" in refused(labor_sum="1", offer_day="the third")["offer_day"]


@pytest.mark.parametrize(("money", "shown"), [("€", "€12.00"), ("EUR", "12.00 EUR"), ("", "12.00")])
def test_money_is_written_as_people_write_it(money, shown):
    assert ask(labor_sum="12", money=money).figure == shown


@settings(max_examples=300, deadline=None)
@given(st.dictionaries(st.sampled_from(PARTS), st.integers(0, 10**9), min_size=1))
def test_the_parts_add_up_to_the_cent(cents):
    found = ask(**{name: f"{value / 100:.2f}" for name, value in cents.items()})
    together = sum(Decimal(value) for value in cents.values()) / 100
    assert Decimal(found.figure.replace(",", "")) == together
    assert len(found.items) == len(cents)
    assert len(outside(found)) == len(PARTS) - len(cents)
