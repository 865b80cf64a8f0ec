"""Offer: the price that a customer is asked for one way, its parts, who offers it until when, and by name what is not in it."""

from fractions import Fraction

from calc.core.answer import Answer, Calculator, Item, Listing
from calc.core.fields import SHOW_IN, Fault, Field, InputFault, Values, entries
from calc.core.lines import Lines
from calc.decision.told import way_within_told
from calc.decision.verdict import cleared
from calc.evidence.cautions import caution
from calc.job.calendar import day_of_iso
from calc.job.plan_inputs import ASBESTOS, LICENSED, START, WAY, facts_given, refuse_closed
from calc.job.prices import CENTS, shown
from calc.numbers import words
from calc.numbers.quantity import added
from calc.text.door import say

LONGEST_MONEY = 4  # letters of the name of the money


def _money_faults(text: str) -> tuple[tuple[str, str], ...]:
    """(text, what is wrong with it) for a name of money that is too long, or holds a digit."""
    if len(text) <= LONGEST_MONEY and not [mark for mark in text if mark in "0123456789"]:
        return ()
    return (
        (text, say("offer.fault.money", "{text} is no name of money. Write its mark or its letters: $ or EUR.", text=words.quoted(text))),
    )  # fmt: skip


def _sum(name: str, label: str, help_text: str, example: str) -> Field:
    """A sum [money] that may be left empty."""
    return Field(
        name=name, label=label, kind="rate", unit="money", help=help_text, example=example, lowest="0", highest="10000000", required=False
    )  # fmt: skip


PARTS = (
    _sum("labor_sum", "Labor, as you ask it", "All hours of your own people, with what you add.", "2850"),
    _sum("materials_sum", "Materials and rent, as you ask them", "What the list comes to, with what you add.", "940"),
    _sum("others_sum", "Others' work and fees", "Inspector, laboratory, electrician, permit, dump.", "310"),
    _sum("tax_sum", "Taxes", "In money, as your place reckons them. 0 where there are none.", "61.10"),
)
"""The parts of a price, each its own field; one that is left empty is told as not in the price."""
_LINES = (
    ("labor_sum", "Labor"), ("materials_sum", "Materials and rent"), ("others_sum", "Others' work and fees"), ("tax_sum", "Taxes"),
)  # fmt: skip
"""(line, label) of each part, in that order."""
MONEY = Field(
    name="money", label="Money", kind="text", unit="",
    help="How it is written beside a sum.",
    example="$", required=False, rare=True, check=_money_faults,
    choices=(("$", "$"), ("€", "€"), ("£", "£")),
)  # fmt: skip
BY = Field(
    name="offer_by", label="Who offers it", kind="text", unit="",
    help="The firm, and how to reach it.",
    example="Maple Street Ceilings, 555-0142", required=False,
)  # fmt: skip
DAY = Field(
    name="offer_day", label="Day of the offer", kind="text", unit="",
    help="Year, month, day.",
    example="2027-03-01", required=False, check=START.check,
)  # fmt: skip
UNTIL = Field(
    name="offer_until", label="Good until", kind="text", unit="",
    help="Year, month, day. Prices of material change.",
    example="2027-03-31", required=False, check=START.check,
)  # fmt: skip
NOT_IN = Field(
    name="not_in_offer", label="Not in the price", kind="list", unit="",
    help="One thing a line, as the customer should read it.",
    example="Moving furniture; Mending damage that nobody can see yet", required=False,
)  # fmt: skip


def offer(values: Values) -> Answer:
    """Return the price for one way: its parts [money], their sum, and what is not in it.

    Raises InputFault where the answers close the way, where no part is given, and where the last day lies before the first. Source: none;
    all sums are the visitor's own.
    """
    way = values.choice("way")
    refuse_closed(way, values)
    given = [one for one in PARTS if values.number_or_none(one.name) is not None]
    faults: tuple[Fault, ...] = ()
    if not given:
        message = say(
            "offer.fault.none", "An offer needs a sum. Give at least one: labor, materials, others' work or taxes."
        )
        faults = (Fault(PARTS[0].name, "", message, PARTS[0].example),)  # fmt: skip
    faults += _turned_round(values)
    if faults:
        raise InputFault(faults)
    lines = Lines("offer", values.choice("show_in"))
    sums = []
    for name, label in _LINES:
        if values.number_or_none(name) is not None:
            sums.append(
                lines.add(name=name, label=label, unit="money", places=CENTS, rule="As you gave it.", amount=values.quantity(name))
            )  # fmt: skip
    together = lines.add(
        name="together_sum", label="Together", unit="money", places=CENTS, rule="The parts, added.", amount=added(sums)
    )
    missing = [missing_told(one.name) for one in PARTS if one not in given]
    money = values.choice("money")
    outside = missing + entries(values.choice("not_in_offer"))
    return Answer(
        calculator="offer",
        inputs=values.given,
        figure=_money(together.value, money),
        figure_label=_label(way_within_told(way), len(outside)),
        sentence=_sentence(values, way),
        lines=lines.tuple(),
        cautions=(caution("asbestos-first"),),
        notes=(
            say("offer.note.written", "A price binds when both have signed it. Until then it is an offer to talk about."),
            say("offer.note.change", "What comes to light behind the ceiling changes the work. Agree first who decides then, and how it is paid."),
        ),
        drawing=None,
        items=tuple([Item(one.label, _money(one.value, money), "", ()) for one in lines.tuple()[:-1]]),
        items_title=say("offer.items", "What it is made of"),
        listings=(
            Listing("not-in-offer", say("offer.not_in", "Not in this price"), tuple([(one, "") for one in outside])),
        ) if outside else (),
    )  # fmt: skip


def _label(way: str, missing: int) -> str:
    """What the price is for, and that something is not in it."""
    if not missing:
        return say("offer.label", "for this job: {way}", way=way)
    return say(
        "offer.label.without", "for this job: {way}; {things} not in it", way=way, things=words.plural(missing, "thing")
    )


def _turned_round(values: Values) -> tuple[Fault, ...]:
    """What is wrong with an offer that ends before it is made."""
    made, ends = day_of_iso(values.choice("offer_day")), day_of_iso(values.choice("offer_until"))
    if made is None or ends is None or made <= ends:
        return ()
    message = say(
        "offer.fault.until", "The offer ends before it is made. Write a later day, or leave one of them empty."
    )
    return (Fault("offer_until", values.choice("offer_until"), message, UNTIL.example),)


def _sentence(values: Values, way: str) -> str:
    """Who offers it, from when to when, and what has to be known first."""
    parts = []
    if way != LICENSED and not cleared(facts_given(values)):
        parts.append(
            say("offer.sentence.if", "Nothing begins before the laboratory's result. If it finds asbestos in any layer, this price falls.")
        )  # fmt: skip
    if values.choice("offer_by"):
        parts.append(say("offer.sentence.by", "Offered by {firm}.", firm=values.choice("offer_by")))
    if values.choice("offer_day"):
        parts.append(say("offer.sentence.day", "Made on {day}.", day=values.choice("offer_day")))
    if values.choice("offer_until"):
        parts.append(say("offer.sentence.until", "Good until {day}.", day=values.choice("offer_until")))
    return " ".join(parts) or say("offer.sentence.open", "Who offers it and until when was not said.")


def _money(amount: Fraction, money: str) -> str:
    """A sum with its mark before it, or its letters after it."""
    if not money:
        return shown(amount)
    letters = [mark for mark in money if mark in "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"]
    return shown(amount) + " " + money if letters else money + shown(amount)


def missing_told(name: str) -> str:
    """Return how a part that is not in the price is told."""
    if name == "labor_sum":
        return say("offer.missing.labor", "Labor")
    if name == "materials_sum":
        return say("offer.missing.materials", "Materials and rent")
    if name == "others_sum":
        return say("offer.missing.others", "Others' work and fees: inspector, laboratory, electrician, permit, dump")
    return say("offer.missing.tax", "Taxes")


CALCULATOR = Calculator(
    name="offer",
    title="The price for the customer",
    summary="The price of one way as the customer reads it: its parts, until when, and what is not in it",
    verb="Write the offer",
    fields=(WAY,) + PARTS + (BY, DAY, UNTIL, NOT_IN, MONEY) + ASBESTOS + (SHOW_IN,),
    work_out=offer,
    example=(("way", "skim-over"), ("labor_sum", "2100"), ("materials_sum", "640"), ("money", "$"), ("offer_by", "Example Ceilings, 555-0100"), ("offer_day", "2027-03-08")),
    always=("asbestos-first",),
)  # fmt: skip
