"""Compare: the ways side by side for these rooms, in the order of the book: state, days, hours, what each brings with it. None is ranked."""

from dataclasses import dataclass

from calc.common.drops import drop_in
from calc.common.inputs import add_area
from calc.core.answer import Answer, Calculator, Item, Listing, Table
from calc.core.fields import Values
from calc.core.lines import Lines
from calc.decision.decision import CALCULATOR as DECISION
from calc.decision.questions import WAYS
from calc.decision.told import state_told, way_told
from calc.decision.verdict import AFTER, CLOSED, NOT_KNOWN, OPEN, Look
from calc.job.compare_chart import chart
from calc.job.compare_inputs import FIELDS, facts_and_clashes
from calc.job.days import Days, calendar_of, days_of
from calc.job.labor import LEAST, MOST, Work, hours_of, works_of
from calc.job.plan_inputs import air_of, asked_of, days_of_laboratory
from calc.job.sides import BACK_AFTER, OUT_FROM, SIDES, Side, amount_told, lowers_told, refit_told, trouble_told
from calc.job.told import hours_told, range_told, span_of
from calc.numbers import measure, words
from calc.numbers.exact import ceiling, floor
from calc.numbers.quantity import told
from calc.text.door import say

LICENSED = "licensed-removal"
REASONS_SHOWN = 3  # reasons of a way that are told here; the guide tells all [-]


@dataclass(frozen=True)
class Way:
    """A way that is not closed: its `works`, and its days by the least and by the most hours."""

    side: Side
    works: tuple[Work, ...]
    shorter: Days
    longer: Days


def ways_of(values: Values, look: Look) -> tuple[Way | None, ...]:
    """Return what each way takes, in the order of the book; None for one that is closed.

    Raises InputFault where nothing dries in that air, and where the laboratory's days are turned round.
    """
    found: list[Way | None] = []
    calendar, people = calendar_of(values), values.count("people")
    dries = air_of(values)  # what cannot be worked with is refused whichever ways are closed
    for at, (way, _) in enumerate(WAYS):
        if look.ranks[at] == CLOSED:
            found.append(None)
            continue
        asked = asked_of(values, way, dries, days_of_laboratory(values))
        works = works_of(asked)
        shorter, longer = [days_of(works, which, asked, calendar, people) for which in (LEAST, MOST)]
        found.append(Way(SIDES[at], works, shorter, longer))
    return tuple(found)


def nights_out(days: Days, works: tuple[Work, ...]) -> int:
    """Return the nights [day] that the room which is longest out of use is not slept in: from the day on which it is covered, or
    the contractor comes, to the day on which it was last cleared up."""
    ids = [one.stage.id for one in works]
    leaves = _first(OUT_FROM, ids)
    returns = _first(BACK_AFTER, ids)
    left: dict[int, int] = {}
    longest = 0
    for slot in days.slots:
        work = works[slot.work]
        if work.stage.id == leaves:
            left[work.room] = slot.start[0]
        if work.stage.id == returns:
            longest = max(longest, slot.end[0] - left.get(work.room, left.get(-1, slot.end[0])))
    return longest


def _first(wanted: tuple[str, ...], ids: list[str]) -> str:
    """Return the first of `wanted` that is among `ids`. Raises KeyError where none is."""
    for one in wanted:
        if one in ids:
            return one
    raise KeyError(wanted[0])


def compare(values: Values) -> Answer:
    """Return the ways side by side: the state of each by the answers, and what each that is not closed takes and brings with it.

    Raises InputFault where nothing dries in that air, and where the laboratory's days are turned round. Sources: the rules' own for
    each state, each stage's and wait's own for hours and days; the rest is common practice.
    """
    facts, contradictions = facts_and_clashes(values)
    look = Look(facts)
    ways = ways_of(values, look)
    open_count = len([rank for rank in look.ranks if rank <= AFTER])
    closed_count = len([rank for rank in look.ranks if rank == CLOSED])
    unknown_count = len([rank for rank in look.ranks if rank == NOT_KNOWN])
    clashes = contradictions + look.clashes()
    listings: tuple[Listing, ...] = ()
    if clashes:
        listings += (Listing("contradictions", say("compare.clashes", "These answers do not go together"), clashes),)
    sentence = say("compare.sentence", "The order is that of the book, and no way is ranked. What a way needs first, and who may do it, decides before days do.")  # fmt: skip
    if not look.settled:
        sentence = _only_if() + " " + say("compare.sentence.if", "If it finds some, every way but licensed removal falls.") + " " + sentence  # fmt: skip
    return Answer(
        calculator="compare",
        inputs=values.given,
        figure=say(
            "compare.figure", "{ways} open or open after, {closed} closed", ways=words.plural(open_count, "way"), closed=str(closed_count)
        ),
        figure_label=say("compare.label", "and {count} not known, of eight", count=str(unknown_count)),
        sentence=sentence,
        lines=_lines(values, look).tuple(),
        cautions=look.cautions(),
        notes=(
            say("compare.note.same", "Days and hours are those of the plan of each way, for the same people and the same days of work."),
            say("compare.note.words", "Dust, water and noise are common practice, no source: how much of it the work itself makes, before it is held back."),
            say("compare.note.nights", "Nights are of the room that is longest out of use: from the day it is covered, or the contractor comes, to the last clearing up."),
            say("compare.note.money", "Materials are not in it, nor what an inspector, a laboratory or a licensed contractor asks."),
            say("compare.note.unknown", "What is not answered counts as the worst that it can be. The guide asks what matters, one question at a time."),
        ),
        drawing=chart([(one.side, one.shorter, one.longer) for one in ways if one is not None]),
        items=tuple([_item(values, look, at, one) for at, one in enumerate(ways)]),
        items_title=say("compare.items", "Each way, in the order of the book"),
        listings=listings,
        facts=tuple(facts.items()),
        table=_table(values, look, ways),
    )  # fmt: skip


def _only_if() -> str:
    return say("compare.if", "Only if the laboratory finds no asbestos in any layer.")


def _lines(values: Values, look: Look) -> Lines:
    lines = Lines("compare", values.choice("show_in"))
    add_area(lines, values)
    for rank, name, label, rule in (
        (OPEN, "ways_open", "Ways open", "No rule stands against it."),
        (AFTER, "ways_open_after", "Ways open after", "No rule closes it, and one asks for something first."),
        (NOT_KNOWN, "ways_not_known", "Ways not known", "An answer is missing, or a result does not cover it, and a rule could close it."),
        (CLOSED, "ways_closed", "Ways closed", "A rule closes it."),
    ):  # fmt: skip
        names = [way_told(way) for at, (way, _) in enumerate(WAYS) if look.ranks[at] == rank]
        counted = told(len(names), "", words.listed(names) or say("decision.none", "none"), "common-practice")
        lines.add(name=name, label=label, unit="", places=0, rule=rule, amount=counted)
    return lines


def _days(one: Way) -> str:
    low, high = one.shorter.working_days, one.longer.working_days
    return range_told(low, high, words.plural(max(low, high), "working day"))


def _calendar(one: Way) -> str:
    low, high = span_of(one.shorter), span_of(one.longer)
    return range_told(low, high, words.plural(max(low, high), "day"))


def _nights(one: Way) -> str:
    low, high = nights_out(one.shorter, one.works), nights_out(one.longer, one.works)
    return range_told(low, high, words.plural(max(low, high), "night"))


def _drop(one: Way, show_in: str) -> str:
    """How far the ceiling comes down, and by what."""
    if not one.side.covering:
        return say("side.none", "none")
    drop = measure.shown(drop_in(one.side.covering), "in", 2, show_in)
    return say("compare.drop", "{drop}, {what}", drop=drop, what=lowers_told(one.side))


def _cost(values: Values, one: Way) -> str:
    """What the hours cost at the rate that was given, in its own money; '' where none was."""
    rate = values.number_or_none("rate_per_hour")
    if rate is None:
        return ""
    low, high = hours_of(one.works)
    first, last = floor(low * rate), ceiling(high * rate)
    return range_told(first, last, words.whole(last))


def _state(look: Look, at: int) -> str:
    return state_told(look.ranks[at])


def _conditional(look: Look, at: int) -> bool:
    return not look.settled and WAYS[at][0] != LICENSED


def _item(values: Values, look: Look, at: int, one: Way | None) -> Item:
    way = WAYS[at][0]
    name, page = way_told(way), "methods/" + way
    reasons = look.reasons(at)
    if one is None:
        return Item(name, _state(look, at), "", (), reasons[:1], page)
    more = len(reasons) - REASONS_SHOWN
    shown = reasons[:REASONS_SHOWN]
    if more > 0:
        shown += ((say("compare.more", "{count} more in the guide.", count=words.plural(more, "reason")), ""),)
    shown += (
        (say("compare.refit", "Refit or move: {what}", what=refit_told(one.side)), ""),
        (say("compare.trouble", "Can go wrong: {what}", what=trouble_told(one.side)), ""),
    )
    if _conditional(look, at):
        shown = ((_only_if(), ""),) + shown
    text = say(
        "compare.item", "{days} in {calendar}. {hours} hours of one person. Height lost: {drop}. Dust: {dust}. Water: {water}. Noise: {noise}. Out of the room: {nights}.",
        days=_days(one), calendar=_calendar(one), hours=hours_told(one.works), drop=_drop(one, values.choice("show_in")),
        dust=amount_told(one.side.dust), water=amount_told(one.side.water), noise=amount_told(one.side.noise), nights=_nights(one),
    )  # fmt: skip
    cost = _cost(values, one)
    if cost:
        text += " " + say("compare.cost", "Labor at your rate: {cost}; materials not in it.", cost=cost)
    return Item(name, _state(look, at), text, (), shown, page)


def _table(values: Values, look: Look, ways: tuple[Way | None, ...]) -> Table:
    heads: tuple[str, ...] = (
        say("compare.head.way", "Way"), say("compare.head.state", "Now"), say("compare.head.days", "Work"), say("compare.head.calendar", "In all"),
        say("compare.head.hours", "Hours"), say("compare.head.drop", "Height lost"), say("compare.head.dust", "Dust"),
        say("compare.head.water", "Water"), say("compare.head.noise", "Noise"), say("compare.head.nights", "Out of the room"),
    )  # fmt: skip
    priced = values.number_or_none("rate_per_hour") is not None
    if priced:
        heads += (say("compare.head.cost", "Labor, without materials"),)
    rows = []
    for at, one in enumerate(ways):
        name = way_told(WAYS[at][0])
        row: tuple[str, ...] = (name, _state(look, at))
        if one is None:
            row += ("",) * (len(heads) - len(row))
        else:
            if _conditional(look, at):
                row = (
                    name,
                    say("compare.state.if", "{state}; only if no asbestos is found", state=_state(look, at)),
                )
            row += (
                _days(one), _calendar(one), hours_told(one.works), _drop(one, values.choice("show_in")), amount_told(one.side.dust),
                amount_told(one.side.water), amount_told(one.side.noise), _nights(one),
            )  # fmt: skip
            if priced:
                row += (_cost(values, one),)
        rows.append(row)
    return Table("ways", say("compare.table", "The ways side by side"), heads, tuple(rows))


CALCULATOR = Calculator(
    name="compare",
    title="The ways side by side",
    summary="Days, hours, dust, height lost and nights out, way by way, for your rooms and your ceiling",
    verb="Show them side by side",
    fields=FIELDS,
    work_out=compare,
    example=(
        ("rooms", "Living: 20' x 14'; Bed: 12' x 11'"), ("texture_depth_in", "1/8"), ("rate_per_hour", "52"),
        ("asbestos_result", "none"), ("result_rooms", "this"), ("result_layers", "all"), ("sag", "no"), ("stains", "none"),
        ("loose_board", "tight"), ("cracks", "fine"), ("heated_ceiling", "no"), ("loose_fill", "other"), ("sprinklers", "no"), ("built", "later"), ("times_painted", "never"), ("sheen", "flat"),
        ("hand_test", "holds"), ("patch_test", "wet"), ("material", "board"), ("above", "rooms"),
        ("joists", "close"), ("layers_up", "one"), ("joists_carry", "yes"), ("rated_ceiling", "no"),
        ("who_works", "owner"), ("building", "house"), ("height", "usual"), ("may_drop", "yes"), ("occupied", "yes"),
        ("household", "adults"), ("floors", "covered"), ("finish_wanted", "smooth"), ("light", "soft"),
    ),
    sources=DECISION.sources,
    always=("asbestos-layers", "local-rules"),
)  # fmt: skip
