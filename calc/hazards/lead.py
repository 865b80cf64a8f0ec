"""Lead: which lead-paint rules the work comes under, by the year of the house, the paint disturbed, and who pays whom."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import PAINT_TEST, PLACE, YEAR_BUILT, amount_told
from calc.core.answer import Answer, Calculator, Item
from calc.core.fields import SHOW_IN, Field, Values, entries, entry_faults
from calc.core.lines import Lines
from calc.evidence.cautions import caution
from calc.evidence.limits import Limit, ask_told, known_place, limits_for, place_told
from calc.evidence.local import LIMITS as OF_PLACES
from calc.numbers import measure, words
from calc.numbers.exact import total
from calc.numbers.measure import MeasureFault, read_quantity
from calc.numbers.quantity import Quantity, added, given
from calc.text.door import say

BEFORE_YEAR = 1978  # housing built before it may hold lead paint; 40 CFR 745.103, from memory
WINDOW_DAYS = 30  # work in one room within so many days adds up [days], 40 CFR 745.83
LARGEST_SQFT = 100000  # an area over this is a slip of the finger [sq ft]
FARTHEST_DAYS = 3650  # an entry further off is a slip of the finger [days]
APPLIES, NOT_REACHED, ASK, NOT_CHECKED = "applies", "not-reached", "ask", "not-checked"
"""How a rule stands to the work, whatever the language."""


def read_earlier(entry: str) -> tuple[int, Fraction]:
    """Return one entry, `12 days ago: 4 sq ft` or `in 5 days: 3`, as (days from now [days], area [sq ft]).

    Raises MeasureFault with one sentence.
    """
    when, colon, value = entry.partition(":")
    parts = words.lower(words.tidy(when)).split(" ")
    past = len(parts) == 3 and parts[1] in ("day", "days") and parts[2] == "ago"
    future = len(parts) == 3 and parts[0] == "in" and parts[2] in ("day", "days")
    if not colon or not words.tidy(value) or not (past or future):
        english = "Write when and how much: 12 days ago: 4 sq ft, or in 5 days: 3 sq ft."
        raise MeasureFault(say("lead.fault.parts", english))
    try:
        days = read_quantity(parts[0] if past else parts[1], "")
        area = read_quantity(words.tidy(value), "sqft")
    except MeasureFault as fault:
        english = "{entry} will not do, {problem}. Write 12 days ago: 4 sq ft."
        raise MeasureFault(
            say("lead.fault.entry", english, entry=words.quoted(entry), problem=str(fault.args[0]))
        ) from None
    if area > LARGEST_SQFT:
        english = "{area} is over 100,000 sq ft. Write 12 days ago: 4 sq ft."
        raise MeasureFault(say("lead.fault.area", english, area=words.quoted(value)))
    if days.denominator != 1 or days > FARTHEST_DAYS:
        english = "{when} is no number of whole days up to 3,650. Write 12 days ago: 4 sq ft."
        raise MeasureFault(say("lead.fault.days", english, when=words.quoted(when)))
    return (-int(days) if past else int(days)), area


DISTURBED = Field(
    name="disturbed_sqft", label="Painted surface disturbed in one room", kind="area", unit="sqft",
    help="What is scraped, sanded, cut or torn out. A scraped ceiling counts whole.",
    example="280", lowest="0", highest="100000",
)  # fmt: skip
EARLIER = Field(
    name="earlier_work", label="Other work in that room", kind="list", unit="",
    help="Work within 30 days adds up. One a line.",
    example="12 days ago: 4 sq ft; in 5 days: 3 sq ft", required=False, check=lambda text: entry_faults(text, read_earlier),
)  # fmt: skip
PAID = Field(
    name="paid_work", label="Who does the work?", kind="choice", unit="",
    help="Rent counts as pay: a landlord's own work too.",
    example="yes", default="yes", choices=(("yes", "Somebody who is paid, or a landlord"), ("no", "The owner, in the home lived in")),
)  # fmt: skip
HOUSING = Field(
    name="housing",
    label="What is it?",
    kind="choice",
    unit="",
    help="Places where small children spend their days count like homes.",
    example="home",
    default="home",
    choices=(
        ("home", "A home"),
        ("assisted", "A home with federal housing help"),
        ("children", "School, day care, or the like"),
        ("other", "No home, and no small children"),
    ),
)
TORN_OUT = Field(
    name="torn_out", label="Is painted board or plaster torn out?", kind="choice", unit="",
    help="Then no amount counts as minor repair.",
    example="no", default="no", choices=(("no", "No"), ("yes", "Yes")),
)  # fmt: skip


@dataclass(frozen=True)
class LeadInputs:
    """`year_built` [-] or None; `disturbed_sqft` [sq ft, >= 0] in one room; `earlier`: (days from now [days], sq ft);
    `paid_work`, `housing`, `torn_out`, `paint_test` as in their fields; `place` as it was typed; `show_in`."""

    year_built: int | None
    disturbed_sqft: Fraction
    earlier: tuple[tuple[int, Fraction], ...]
    paid_work: bool
    housing: str
    torn_out: bool
    paint_test: str
    place: str
    show_in: str


def busiest_window(earlier: tuple[tuple[int, Fraction], ...]) -> tuple[tuple[int, Fraction], ...]:
    """Return those entries of `earlier` (days from now [days, before is negative], area [sq ft]) that lie within the 30 days, with
    today among them, in which most paint is disturbed. Source: 40 CFR 745.83, minor repair and maintenance."""
    by_day = dict([(day, Fraction(0)) for day in range(-WINDOW_DAYS, WINDOW_DAYS + 1)])
    for days, area in earlier:
        if days in by_day:
            by_day[days] += area
    window = total([by_day[day] for day in range(-WINDOW_DAYS, 1)])
    most, best = window, -WINDOW_DAYS
    for start in range(-WINDOW_DAYS, 0):  # a day falls out and one comes in
        window += by_day[start + WINDOW_DAYS + 1] - by_day[start]
        if window > most:
            most, best = window, start + 1
    return tuple([one for one in earlier if one[0] >= best and one[0] <= best + WINDOW_DAYS])


def total_within_window(*, disturbed: Quantity, earlier: tuple[tuple[int, Fraction], ...]) -> Quantity:
    """Return the most paint disturbed in the room [sq ft] in any 30 days that hold today's work: `disturbed` [sq ft] today and what
    of `earlier` counts with it. Source: 40 CFR 745.83, minor repair and maintenance."""
    counted = [given(area, "sqft", label=_day(days)) for days, area in busiest_window(earlier)]
    return added([disturbed] + counted).cited("cfr-745-83")


def lead(inputs: LeadInputs, typed: tuple[tuple[str, str], ...]) -> Answer:
    """Return which lead-paint rules apply to the work, and why.

    Raises nothing. Sources: 40 CFR 745.83, 24 CFR 35.1350 as quoted; year, scope and definition from memory; the limits of
    the place where this edition holds any.
    """
    show = inputs.show_in
    lines = Lines("lead", show)
    disturbed = lines.add(
        name="disturbed_sqft",
        label="Disturbed by this work",
        unit="sqft",
        places=2,
        rule="As you gave it, for the room that has most.",
        amount=given(inputs.disturbed_sqft, "sqft"),
    )
    together = lines.add(
        name="total_disturbed_sqft", label="With other work within 30 days", unit="sqft", places=2,
        rule="The most in any 30 days that hold this work, in the same room.",
        amount=total_within_window(disturbed=disturbed, earlier=inputs.earlier),
    )  # fmt: skip
    old = inputs.year_built is None or inputs.year_built < BEFORE_YEAR
    rules = _rules(inputs, together.value, old)
    count = len([state for state, _ in rules if state == APPLIES])
    if count:
        figure = say("lead.figure.many", "{count} rules apply", count=words.whole(count))
        if count == 1:
            figure = say("lead.figure.one", "1 rule applies")
        label = say("lead.figure.label", "to this work")
        sentence = say("lead.sentence.applies", "Read below which, and what each asks for.")
    else:
        figure, label = (
            say("lead.figure.none", "No federal limit is exceeded"),
            say("lead.figure.by", "by these figures"),
        )
        sentence = say(
            "lead.sentence.none", "State and local rules can still hold. Dust from old paint harms in any amount."
        )
    if inputs.year_built is None:
        sentence = say("lead.sentence.year", "Year not known, so it counts as before 1978.") + " " + sentence
    return Answer(
        calculator="lead",
        inputs=typed,
        figure=figure,
        figure_label=label,
        sentence=sentence,
        lines=lines.tuple(),
        cautions=(caution("lead-paint"), caution("local-rules")) if old or inputs.paint_test == "lead" else (caution("local-rules"),),
        notes=(
            say("lead.note.whole", "A ceiling that is scraped or sanded whole is always more than {limit}.", limit=measure.shown(_limits()["lead-minor-repair"].amount, "sqft", 2, show)),
            say("lead.note.banned", "Open flame, and machines that sand or grind without a HEPA vacuum, are banned on lead paint at any size (from memory)."),
            say("lead.note.both", "Lead is one question and asbestos another. Settle both."),
        ),
        drawing=None,
        items=tuple([item for _, item in rules]),
        items_title=say("lead.items", "Rule by rule"),
    )  # fmt: skip


def _day(days: int) -> str:
    if days == 0:
        return say("lead.day.today", "today")
    if days == -1:
        return say("lead.day.yesterday", "1 day ago")
    if days == 1:
        return say("lead.day.tomorrow", "in 1 day")
    if days < 0:
        return say("lead.day.ago", "{count} days ago", count=words.whole(-days))
    return say("lead.day.ahead", "in {count} days", count=words.whole(days))


def _limits() -> dict[str, Limit]:
    return dict([(one.id, one) for one in limits_for("lead", "", "assisted")])


def _state_told(state: str) -> str:
    if state == APPLIES:
        return say("lead.state.applies", "applies")
    if state == NOT_REACHED:
        return say("lead.state.not_reached", "not reached")
    return say("lead.state.ask", "ask") if state == ASK else say("lead.state.not_checked", "not checked")


def _rule(state: str, name: str, text: str, sources: tuple[str, ...], review_by: str = "") -> tuple[str, Item]:
    return state, Item(name, _state_told(state), text, sources, review_by=review_by)


def _rules(inputs: LeadInputs, total_sqft: Fraction, old: bool) -> list[tuple[str, Item]]:
    """Return each rule as its state, which is no text, and what is told of it."""
    limits = _limits()
    found = [_renovation(inputs, total_sqft, old, limits["lead-minor-repair"])]
    if inputs.housing == "assisted":
        found.append(_assisted(inputs, total_sqft, old, limits["lead-assisted"]))
    if inputs.paid_work and inputs.paint_test == "lead":
        english = "Where employees work on lead paint, in any amount, the federal lead rule for construction holds. Ask OSHA or the state."
        name, told = say("lead.employers", "Rules for employers"), say("lead.employers.told", english)
        found.append(_rule(APPLIES, name, told, ("cfr-1926-62",)))
    of_place = _of_place(inputs, total_sqft, old)
    found += of_place
    if of_place:
        held = say("lead.no_other", "This book holds no other for lead. Ask the state lead office.")
    else:
        held = say("lead.none_held", "This book holds none for lead. Ask the state lead office.")
    found.append(_rule(NOT_CHECKED, say("lead.local", "State and local rules"), held, ("common-practice",)))
    return found


def _assisted(inputs: LeadInputs, total_sqft: Fraction, old: bool, limit: Limit) -> tuple[str, Item]:
    name, office = say("lead.assisted", "Federal housing help"), ask_told(limit)
    amount = amount_told(total_sqft, limit, inputs.show_in)
    if old and inputs.paint_test != "none" and (limit.passed_by(total_sqft) or inputs.torn_out):
        english = "{amount} Lead-safe work and a clearance test. Ask {office}."
        state, told = APPLIES, say("lead.assisted.applies", english, amount=amount, office=office)
    else:
        state, told = NOT_REACHED, say("lead.assisted.below", "{amount} Ask {office}.", amount=amount, office=office)
    return _rule(state, name, told, (limit.source,), limit.review_by)


def _of_place(inputs: LeadInputs, total_sqft: Fraction, old: bool) -> list[tuple[str, Item]]:
    """The limits of the place that was given, whoever does the work. They only add to the federal ones."""
    found = []
    for limit in limits_for("lead", known_place(inputs.place), "any"):
        if not limit.place:
            continue
        office = ask_told(limit)
        if inputs.paint_test == "none" or not (old or inputs.paint_test == "lead"):
            english = "By your figures the paint may hold no lead. Ask {office} whether the rule holds all the same."
            state, what = ASK, say("lead.place.ask", english, office=office)
        elif inputs.torn_out or limit.passed_by(total_sqft):
            state, what = APPLIES, say("lead.place.applies", "Before any work ask {office}.", office=office)
        else:
            state, what = NOT_REACHED, say("lead.place.below", "Others may hold: ask {office}.", office=office)
        text = amount_told(total_sqft, limit, inputs.show_in) + " " + what
        found.append(_rule(state, place_told(limit.place), text, (limit.source,), limit.review_by))
    return found


def _renovation(inputs: LeadInputs, total_sqft: Fraction, old: bool, minor: Limit) -> tuple[str, Item]:
    name, office = say("lead.renovation", "Lead-safe renovation"), ask_told(minor)
    amount = amount_told(total_sqft, minor, inputs.show_in)
    covered, certified = ("cfr-745-82",), ("cfr-745-83", "cfr-745-82")
    if not old:
        english = "Built in 1978 or later, as you say. The rule speaks of housing built before 1978. Ask where you doubt the year."
        return _rule(NOT_REACHED, name, say("lead.renovation.later", english), covered)
    if inputs.housing == "other":
        english = "The rule speaks of homes and places for small children. Ask {office}."
        return _rule(NOT_REACHED, name, say("lead.renovation.no_home", english, office=office), covered)
    if inputs.paint_test == "none":
        english = "The paint was tested below both limits. Keep the report; it holds for the paint that was tested."
        return _rule(NOT_REACHED, name, say("lead.renovation.tested", english), covered)
    if not inputs.paid_work:
        english = "The rule speaks of paid work. The dust is the same: work lead-safe, keep children out, and have it cleaned and tested."
        return _rule(NOT_REACHED, name, say("lead.renovation.unpaid", english), covered)
    if inputs.torn_out:
        english = "Painted surface is torn out, and no amount of that is minor repair. A certified firm does the work. Ask {office}."
        return _rule(APPLIES, name, say("lead.renovation.torn", english, office=office), certified)
    if minor.passed_by(total_sqft):
        english = "{amount} A certified firm does the work. Ask {office}."
        told = say("lead.renovation.applies", english, amount=amount, office=office)
        return _rule(APPLIES, name, told, certified, minor.review_by)
    told = say("lead.renovation.below", "{amount} Other rules may hold: ask {office}.", amount=amount, office=office)
    return _rule(NOT_REACHED, name, told, ("cfr-745-83",), minor.review_by)


def _work_out(values: Values) -> Answer:
    year = values.number_or_none("year_built")
    inputs = LeadInputs(
        None if year is None else int(year),
        values.number("disturbed_sqft"),
        tuple([read_earlier(entry) for entry in entries(values.choice("earlier_work"))]),
        values.choice("paid_work") == "yes",
        values.choice("housing"),
        values.choice("torn_out") == "yes",
        values.choice("paint_test"),
        values.choice("place"),
        values.choice("show_in"),
    )
    return lead(inputs, values.given)


CALCULATOR = Calculator(
    name="lead",
    title="Lead-paint rules",
    summary="Which lead-paint rules apply to the work, and why",
    verb="Look at the rules",
    fields=(YEAR_BUILT, DISTURBED, EARLIER, PAID, HOUSING, TORN_OUT, PAINT_TEST, PLACE, SHOW_IN),
    work_out=_work_out,
    example=(("year_built", "1964"), ("disturbed_sqft", "3"), ("earlier_work", "12 days ago: 4 sq ft"), ("paid_work", "yes")),
    sources=("cfr-745-82", "cfr-745-83", "cfr-35-1350", "cfr-1926-62", "common-practice") + tuple([row[9] for row in OF_PLACES if row[2] == "lead"]),
    always=("local-rules",),
)  # fmt: skip
