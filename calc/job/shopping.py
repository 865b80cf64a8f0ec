"""Shopping: what to buy and rent for one way and these rooms, in the order of a store, and what it comes to by prices that are typed."""

from fractions import Fraction

from calc.board import board
from calc.board.layout_inputs import DIRECTION, LENGTHS, LONGEST, STRIP
from calc.common.inputs import (
    BOARD_THICKNESS,
    COAT_THICKNESS,
    COATS,
    HEIGHT,
    JOIST_SPACING,
    RATED,
    ROOMS,
    SHEET_WIDTH,
    TEXTURE_DEPTH_OR_NONE,
    WASTE,
    add_area,
)
from calc.core.answer import Answer, Calculator, Item, Listing
from calc.core.fields import SHOW_IN, Values
from calc.core.lines import Lines
from calc.cover.panels import FURRING, PER_CARTON, TILE_LENGTH, TILE_WIDTH
from calc.decision.told import way_told
from calc.evidence.cautions import caution
from calc.finish.paint import EXTRA, PRIMER_SPREAD, SPREAD
from calc.finish.skim import OPEN, PAIL, SHRINKAGE
from calc.finish.taping import LEVEL, ROLL
from calc.job.compare_inputs import RATE
from calc.job.labor import MINUTES_PER_HOUR, MOST, Asked, Work, hours_of, times_of, works_of
from calc.job.materials import BUY, RENT, VAN, Material, aisle_told, count_told, material_told
from calc.job.needs import Bought, Job, bought_of
from calc.job.plan_inputs import (
    ASBESTOS,
    HOURS_PER_DAY,
    LICENSED,
    PACE,
    PAINT_COATS,
    PEOPLE,
    WAY,
    asked_of,
    folded,
    refuse_closed,
)
from calc.job.prices import PRICES, prices_of
from calc.job.quote import Priced, cost_told, listing, of_count, priced, quote_of, span
from calc.job.stage import Stage, phase_told
from calc.job.stages import stages_of
from calc.numbers import measure, words
from calc.numbers.exact import ceiling
from calc.numbers.quantity import Quantity, rounded_up, told
from calc.protect.airflow import MACHINE
from calc.protect.debris import BAG, BAG_FILL, BAG_WEIGHT, TEXTURE_PSF, THICKNESS
from calc.protect.sheeting import REGISTERS, ROLL_LENGTH, ROLL_WIDTH, WALL_LENGTH, WALL_WIDTH
from calc.text.door import say

DECIMALS = 2  # of a need as it is told


def shopping(values: Values) -> Answer:
    """Return all that the way takes in these rooms, in packages, by aisle; with prices, what it comes to.

    Raises InputFault where the answers close the way, where a calculator refuses what was typed, and where board of several sizes is
    priced by the sheet. Sources: those of the calculators that the needs come from; what is counted by person is common practice.
    """
    way, show = values.choice("way"), values.choice("show_in")
    refuse_closed(way, values)
    asked = asked_of(values, way)
    job = Job(values, tuple([one for one in stages_of(way) if times_of(one, asked)]))
    bought, works = bought_of(job), works_of(asked)
    prices = prices_of(values.choice("prices"))
    sizes = job.answer(board.CALCULATOR).items if job.has("hang") else ()
    sheets = [one.state for one in sizes if one.name == say("board.buy", "To buy")]
    rows = priced(bought, _days(bought, works, values), prices, len(sheets))
    hours = hours_of(works)
    rate = values.number_or_none("rate_per_hour")
    quote = quote_of(rows, prices, hours, rate)
    lines = _lines(values, bought, hours, len(works))
    kinds = [len([one for one in rows if one.bought.material.kind == kind]) for kind in (BUY, RENT, VAN)]
    is_priced = bool(prices) or rate is not None
    hours_told = say(
        "plan.range", "{low} to {high}", low=words.short_decimal(hours[0], 1), high=words.short_decimal(hours[1], 1)
    )
    quoted = (listing(quote, hours_told, rate, prices),) if is_priced else ()
    return Answer(
        calculator="shopping",
        inputs=values.given,
        figure=words.plural(kinds[0], "thing") + " " + say("shopping.figure", "to buy"),
        figure_label=say("shopping.label", "{rent} to rent; {van} probably in the van", rent=words.whole(kinds[1]), van=words.whole(kinds[2])),
        sentence=_sentence(values, way, asked, quoted, span(quote.sums()[0], quote.sums()[1]), of_count(quote.counts[0])),
        lines=lines.tuple(),
        cautions=(caution("asbestos-first"),),
        notes=_notes(job, is_priced),
        drawing=None,
        items=tuple([_item(one, sheets, show) for one in rows]),
        items_title=say("shopping.items", "In the order of the store"),
        listings=quoted,
    )  # fmt: skip


def _sentence(values: Values, way: str, asked: Asked, quoted: tuple[Listing, ...], whole: str, count: str) -> str:
    sentence = say(
        "shopping.sentence", "{way}, {rooms}: the needs of all rooms and stages are added first, and rounded up to packages once.",
        way=way_told(way), rooms=words.plural(len(asked.rooms), "room"),
    )  # fmt: skip
    if quoted:
        sentence += " " + say(
            "shopping.sentence.sum",
            "What is priced comes to {sum}; {count} things to buy have a price.",
            sum=whole,
            count=count,
        )
    if not asked.settled:
        if way == LICENSED:
            first = say("shopping.sentence.licensed", "Buy nothing before the clearance result is in hand.")
        else:
            first = say(
                "shopping.sentence.if",
                "Buy nothing before the laboratory's result. If it finds asbestos in any layer, this list falls.",
            )
        sentence = first + " " + sentence
    return sentence


def _days(bought: tuple[Bought, ...], works: tuple[Work, ...], values: Values) -> dict[str, int]:
    """The days of work [day] of all stages that use a thing to rent, by the longer hours, each day full."""
    found: dict[str, int] = {}
    for one in bought:
        if one.material.kind == RENT:
            minutes = Fraction(0)
            for work in works:
                if one.material.id in work.stage.buys or (
                    one.material.id == "air-machine" and "hepa-vacuum" in work.stage.buys
                ):
                    minutes += work.minutes[MOST]
            a_day = values.count("people") * values.count("hours_per_day") * MINUTES_PER_HOUR
            found[one.material.id] = ceiling(minutes / a_day)
    return found


def _lines(values: Values, bought: tuple[Bought, ...], hours: tuple[Fraction, Fraction], works: int) -> Lines:
    lines = Lines("shopping", values.choice("show_in"))
    add_area(lines, values)
    needs = dict([(one.material.id, one) for one in bought])
    if "board" in needs:
        lines.add(
            name="sheets", label="Sheets of board", unit="", places=0, rule="The fewest that the form for board finds, all rooms together.",
            amount=told(needs["board"].packages, "", say("shopping.sheets", "counted in the cut list of the form for board"), "irc-r702-3-5"),
        )  # fmt: skip
    if "compound" in needs:
        gallons = lines.add(
            name="compound_gal", label="Compound", unit="gal", places=2, amount=needs["compound"].need,
            rule="Of all stages that take some, in all rooms.",
        )  # fmt: skip
        lines.add(
            name="pails",
            label="Pails to buy",
            unit="",
            places=0,
            rule="Compound over pail size, rounded up.",
            amount=_packed(gallons, needs["compound"]),
        )
    for material, name, label, to_buy, buy_label in _CANS:
        if material in needs:
            need = lines.add(
                name=name,
                label=label,
                unit="gal",
                places=2,
                rule="By the label's spread, all rooms together.",
                amount=needs[material].need,
            )
            lines.add(
                name=to_buy, label=buy_label, unit="gal", places=0, rule="Whole gallons, rounded up.",
                amount=_packed(need, needs[material]) * needs[material].size,
            )  # fmt: skip
    if "bags" in needs:
        lines.add(
            name="bags",
            label="Bags",
            unit="",
            places=0,
            rule="What comes down and the film, added, then rounded up.",
            amount=_packed(needs["bags"].need, needs["bags"]),
        )
    counted = say(
        "shopping.counted", "added over {stages}, as in the form for the days", stages=words.plural(works, "stage")
    )
    for hours_name, hours_label, value in (
        ("labor_hours_low", "Work, at the least", hours[0]),
        ("labor_hours_high", "Work, at the most", hours[1]),
    ):
        lines.add(
            name=hours_name, label=hours_label, unit="h", places=1, amount=told(value, "h", counted, "common-practice"),
            rule="Minutes for each room and for each 100 sq ft, stage by stage, at your pace.",
        )  # fmt: skip
    return lines


_CANS = (
    ("sealing-primer", "sealing_primer_gal", "Sealing primer", "sealing_primer_to_buy_gal", "Sealing primer to buy"),
    ("primer", "primer_gal", "Primer", "primer_to_buy_gal", "Primer to buy"),
    ("paint", "gallons", "Paint", "paint_to_buy_gal", "Paint to buy"),
)
"""(material, line of its need, its label, line of what is bought, its label)."""


def _item(one: Priced, sheets: list[str], show: str) -> Item:
    own, bought = one.bought.material, one.bought
    count = count_told(own, words.whole(bought.packages), bought.packages == 1)
    state = count
    if own.id == "board":
        state = words.listed(sheets)
    elif own.kind == RENT:
        state = say("shopping.state.rent", "{count}, {days} of work", count=count, days=words.plural(one.days, "day"))
    elif not own.by_count:
        state = say("shopping.state.found", "{count}, or as found", count=count)
    elif own.size_by or own.unit == "gal" or bought.size.value != 1:
        state = say("shopping.state.size", "{count} of {size}", count=count, size=_shown(bought.size, own, show))
    need, left = _shown(bought.need, own, show), _shown(bought.bought - bought.need, own, show)
    parts = []
    if own.kind == BUY and own.by_count:
        if bought.bought.to(own.unit) > bought.need.to(own.unit):
            parts.append(say("shopping.need", "Needed: {need}; left over: {left}.", need=need, left=left))
        else:
            parts.append(say("shopping.need.all", "All of it is needed."))
    stages = say("shopping.for", "For: {stages}.", stages=_stages_told(bought.stages))
    costs = cost_told(one)
    cells = (
        ("id", own.id), ("need", need), ("left", left), ("count", str(bought.packages)),
        ("cost", words.plain_decimal(one.costs, DECIMALS) if one.price is not None else ""),
    )  # fmt: skip
    text = " ".join(parts + [stages] + ([costs] if costs else []))
    sources = tuple([source for source in bought.need.sources if source != "your-figure"]) or bought.need.sources
    return Item(material_told(own), state, text, sources, group=aisle_told(own.aisle), cells=cells)


def _stages_told(stages: tuple[Stage, ...]) -> str:
    names: list[str] = []
    for one in stages:
        name = words.lower(phase_told(one))
        if name not in names:
            names.append(name)
    return "; ".join(names)


def _notes(job: Job, is_priced: bool) -> tuple[str, ...]:
    notes = []
    if not is_priced:
        notes.append(say("shopping.note.prices", "The book has no prices. Type your own, and it adds them up."))
    else:
        notes.append(
            say("shopping.note.money", "Money is in the currency that you typed. Sums are exact until they are shown.")
        )
        notes.append(
            say(
                "shopping.note.offer",
                "This is an estimate by figures that you gave. It is no offer until you write and sign one.",
            )
        )
    if job.has("cover-floor", "cover"):
        notes.append(
            say(
                "shopping.note.film",
                "Film is counted in whole strips, so more of it is left than of other things. Tape goes twice round each room.",
            )
        )
    if job.has("hang"):
        notes.append(
            say(
                "shopping.note.board",
                "Board is counted sheet by sheet, all rooms together. The form for board has the cut list.",
            )
        )
    if job.has("mend", "clean-texture"):
        notes.append(
            say(
                "shopping.note.mend",
                "How much has to be mended is seen when the texture is off. The list takes a common amount, no source.",
            )
        )
    if job.has("smooth"):
        notes.append(
            say(
                "shopping.note.smooth",
                "A thin coat over the whole ceiling is counted. Where light shows less, it takes less.",
            )
        )
    notes.append(say("shopping.note.label", "Labels govern: read what a package holds and covers before you pay."))
    return tuple(notes)


def _shown(amount: Quantity, one: Material, show: str) -> str:
    """An amount in the unit of the material, as it is read."""
    value = amount.to(one.unit)
    if one.unit != "ft":
        return measure.shown(value, one.unit, DECIMALS, show)
    if show == "metric":
        return words.short_decimal(value * measure.METERS_PER_FOOT, 1) + " m"
    return words.short_decimal(value, 1) + " ft"


def _packed(need: Quantity, one: Bought) -> Quantity:
    """The packages [-] that the need fills, rounded up."""
    return rounded_up(need / one.size)


FIRST = (WAY, ROOMS, HEIGHT, TEXTURE_DEPTH_OR_NONE, COATS, PAINT_COATS, PEOPLE, PRICES, RATE)
USUAL = (
    COAT_THICKNESS, SPREAD, LEVEL, JOIST_SPACING, DIRECTION, BOARD_THICKNESS, board.OLD, LENGTHS, LONGEST, SHEET_WIDTH, RATED, TILE_LENGTH, TILE_WIDTH,
    PER_CARTON, FURRING, STRIP, REGISTERS, ROLL_WIDTH, ROLL_LENGTH, WALL_WIDTH, WALL_LENGTH, OPEN, SHRINKAGE, WASTE, PAIL, ROLL, PRIMER_SPREAD, EXTRA,
    THICKNESS, TEXTURE_PSF, BAG, BAG_FILL, BAG_WEIGHT, MACHINE, HOURS_PER_DAY, PACE,
)  # fmt: skip
"""What is asked first, and what stands folded away: sizes of packages, and what one way alone goes by."""

CALCULATOR = Calculator(
    name="shopping",
    title="What to buy",
    summary="All that one way takes in your rooms, in packages, in the order of a store, and what it comes to by your prices",
    verb="Make the list",
    fields=FIRST + tuple([folded(one) for one in USUAL]) + ASBESTOS + (SHOW_IN,),
    work_out=shopping,
    example=(("way", "skim-over"), ("rooms", "Living: 20' x 14'; Bed: 12' x 11'"), ("texture_depth_in", "1/8")),
    sources=(
        "board-maker-compound", "cfr-1926-1101", "construction-estimating", "epa-purple-book", "home-page-compound", "iapws-water", "irc-r702-3-5",
        "navedtra-14044", "polyethylene", "us-customary-definitions",
    ),
    always=("asbestos-first",),
)  # fmt: skip
