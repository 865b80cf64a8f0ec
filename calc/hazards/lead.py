"""Lead: which lead-paint rules the work comes under, by the year of the house, the paint disturbed, and who pays whom."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import PAINT_TEST, PLACE, YEAR_BUILT, amount_told
from calc.core.answer import Answer, Calculator, Item
from calc.core.fields import SHOW_IN, Field, Values, entries, entry_faults
from calc.core.lines import Lines
from calc.evidence.cautions import caution
from calc.evidence.limits import Limit, known_place, limits_for
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


def read_earlier(entry: str) -> tuple[int, Fraction]:
    """Return one entry, `12 days ago: 4 sq ft` or `in 5 days: 3`, as (days from now [days], area [sq ft]).

    Raises MeasureFault with one sentence.
    """
    when, colon, value = entry.partition(":")
    parts = words.lower(words.tidy(when)).split(" ")
    past = len(parts) == 3 and parts[1] in ("day", "days") and parts[2] == "ago"
    future = len(parts) == 3 and parts[0] == "in" and parts[2] in ("day", "days")
    if not colon or not words.tidy(value) or not (past or future):
        raise MeasureFault("Write when and how much: 12 days ago: 4 sq ft, or in 5 days: 3 sq ft.")
    try:
        days = read_quantity(parts[0] if past else parts[1], "")
        area = read_quantity(words.tidy(value), "sqft")
    except MeasureFault as fault:
        raise MeasureFault(
            words.quoted(entry) + " will not do, " + str(fault.args[0]) + ". Write 12 days ago: 4 sq ft."
        ) from None
    if area > LARGEST_SQFT:
        raise MeasureFault(words.quoted(value) + " is over 100,000 sq ft. Write 12 days ago: 4 sq ft.")
    if days.denominator != 1 or days > FARTHEST_DAYS:
        raise MeasureFault(words.quoted(when) + " is no number of whole days up to 3,650. Write 12 days ago: 4 sq ft.")
    return (-int(days) if past else int(days)), area  # fmt: skip


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
    items = _items(inputs, together.value, old)
    applies = [one for one in items if one.state == "applies"]
    year = "Year not known, so it counts as before 1978. " if inputs.year_built is None else ""
    if applies:
        figure, label = words.plural(len(applies), "rule applies", "rules apply"), "to this work"
        sentence = year + "Read below which, and what each asks for."
    else:
        figure, label = "No federal limit is exceeded", "by these figures"
        sentence = year + "State and local rules can still hold. Dust from old paint harms in any amount."
    return Answer(
        calculator="lead",
        inputs=typed,
        figure=figure,
        figure_label=label,
        sentence=sentence,
        lines=lines.tuple(),
        cautions=(caution("lead-paint"), caution("local-rules")) if old or inputs.paint_test == "lead" else (caution("local-rules"),),
        notes=(
            "A ceiling that is scraped or sanded whole is always more than " + measure.shown(_limits()["lead-minor-repair"].amount, "sqft", 2, show) + ".",
            "Open flame, and machines that sand or grind without a HEPA vacuum, are banned on lead paint at any size (from memory).",
            "Lead is one question and asbestos another. Settle both.",
        ),
        drawing=None,
        items=items,
        items_title="Rule by rule",
    )  # fmt: skip


def _day(days: int) -> str:
    if days == 0:
        return "today"
    return words.plural(-days, "day") + " ago" if days < 0 else "in " + words.plural(days, "day")


def _limits() -> dict[str, Limit]:
    return dict([(one.id, one) for one in limits_for("lead", "", "assisted")])


def _items(inputs: LeadInputs, total_sqft: Fraction, old: bool) -> tuple[Item, ...]:
    limits = _limits()
    minor, assisted = limits["lead-minor-repair"], limits["lead-assisted"]
    counted = inputs.housing != "other"
    found = [_renovation(inputs, total_sqft, old, counted, minor)]
    if inputs.housing == "assisted":
        amount = amount_told(total_sqft, assisted, inputs.show_in)
        if old and inputs.paint_test != "none" and (assisted.passed_by(total_sqft) or inputs.torn_out):
            found.append(
                Item(
                    "Federal housing help",
                    "applies",
                    amount + " Lead-safe work and a clearance test. Ask " + assisted.ask + ".",
                    (assisted.source,),
                    review_by=assisted.review_by,
                )
            )
        else:
            found.append(
                Item(
                    "Federal housing help",
                    "not reached",
                    amount + " Ask " + assisted.ask + ".",
                    (assisted.source,),
                    review_by=assisted.review_by,
                )
            )
    if inputs.paid_work and inputs.paint_test == "lead":
        found.append(
            Item(
                "Rules for employers",
                "applies",
                "Where employees work on lead paint, in any amount, the federal lead rule for construction holds. Ask OSHA or the state.",
                ("cfr-1926-62",),
            )
        )
    of_place = _of_place(inputs, total_sqft, old)
    found += of_place
    if of_place:
        held = say("lead.no_other", "This book holds no other for lead. Ask the state lead office.")
    else:
        held = say("lead.none_held", "This book holds none for lead. Ask the state lead office.")
    found.append(Item("State and local rules", "not checked", held, ("common-practice",)))
    return tuple(found)  # fmt: skip


def _of_place(inputs: LeadInputs, total_sqft: Fraction, old: bool) -> list[Item]:
    """The limits of the place that was given, whoever does the work. They only add to the federal ones."""
    found = []
    for limit in limits_for("lead", known_place(inputs.place), "any"):
        if not limit.place:
            continue
        text = amount_told(total_sqft, limit, inputs.show_in) + " "
        if inputs.paint_test == "none" or not (old or inputs.paint_test == "lead"):
            state, what = (
                "ask",
                say(
                    "lead.place.ask",
                    "By your figures the paint may hold no lead. Ask {office} whether the rule holds all the same.",
                    office=limit.ask,
                ),
            )
        elif inputs.torn_out or limit.passed_by(total_sqft):
            state, what = "applies", say("lead.place.applies", "Before any work ask {office}.", office=limit.ask)
        else:
            state, what = "not reached", say("lead.place.below", "Others may hold: ask {office}.", office=limit.ask)
        found.append(Item(limit.place, state, text + what, (limit.source,), review_by=limit.review_by))
    return found  # fmt: skip


def _renovation(inputs: LeadInputs, total_sqft: Fraction, old: bool, counted: bool, minor: Limit) -> Item:
    name = "Lead-safe renovation"
    amount = amount_told(total_sqft, minor, inputs.show_in)
    if not old:
        return Item(
            name,
            "not reached",
            "Built in 1978 or later, as you say. The rule speaks of housing built before 1978. Ask where you doubt the year.",
            ("cfr-745-82",),
        )
    if not counted:
        return Item(
            name,
            "not reached",
            "The rule speaks of homes and places for small children. Ask " + minor.ask + ".",
            ("cfr-745-82",),
        )
    if inputs.paint_test == "none":
        return Item(
            name,
            "not reached",
            "The paint was tested below both limits. Keep the report; it holds for the paint that was tested.",
            ("cfr-745-82",),
        )
    if not inputs.paid_work:
        return Item(
            name,
            "not reached",
            "The rule speaks of paid work. The dust is the same: work lead-safe, keep children out, and have it cleaned and tested.",
            ("cfr-745-82",),
        )
    if inputs.torn_out:
        return Item(
            name,
            "applies",
            "Painted surface is torn out, and no amount of that is minor repair. A certified firm does the work. Ask "
            + minor.ask
            + ".",
            ("cfr-745-83", "cfr-745-82"),
        )
    if minor.passed_by(total_sqft):
        return Item(
            name,
            "applies",
            amount + " A certified firm does the work. Ask " + minor.ask + ".",
            ("cfr-745-83", "cfr-745-82"),
            review_by=minor.review_by,
        )
    return Item(
        name, "not reached", amount + " Other rules may hold: ask " + minor.ask + ".", ("cfr-745-83",), review_by=minor.review_by
    )  # fmt: skip


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
