"""Samples: how many an inspector takes, how a laboratory result reads, and which published limits the work reaches."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import AREA, BUILDING, OPTIONAL_ROOMS, PLACE, amount_told, area_sqft
from calc.core.answer import Answer, Calculator, Item
from calc.core.fields import SHOW_IN, Field, Values, entries, entry_faults
from calc.core.lines import Lines
from calc.evidence.cautions import Caution, caution
from calc.evidence.limits import OF_EDITION, Limit, ask_told, known_place, limits_for, place_told
from calc.evidence.local import LIMITS as OF_PLACES
from calc.numbers import measure, words
from calc.numbers.measure import MeasureFault, read_quantity
from calc.numbers.quantity import Quantity, added, given
from calc.text.door import say

SAMPLE_STEPS = ((1000, 3), (5000, 5))  # up to so many sq ft, so many samples; 40 CFR 763.86(a)
SAMPLES_ABOVE = 7  # above the last step [-], the same clause
CONTAINS_PCT = 1  # asbestos-containing is more than this [%], 40 CFR 61 subpart M appendix A
LARGEST_SQFT = 100000  # an area over this is a slip of the finger [sq ft]
LONGEST_NAME = 60  # letters of an area's name
NONE_WORDS = ("none", "none found", "none detected", "nd", "no asbestos", "not detected", "0")
TRACE_WORDS = ("trace", "<1", "<1%", "< 1", "< 1 %", "less than 1", "less than 1 %", "less than 1%")
TRACE_PCT = Fraction(1, 2)  # 'trace' and '<1' are some, and at most 1 %: any figure between will do [%]


@dataclass(frozen=True)
class Result:
    """What a laboratory reports of one layer: `percent` [%], 0 where none was found; `composite` where layers were mixed."""

    layer: str
    percent: Fraction
    composite: bool


def read_result(entry: str) -> Result:
    """Return one entry, `texture: none` or `compound: 1.2 %`. Raises MeasureFault with one sentence."""
    layer, colon, value = entry.partition(":")
    layer, value = words.tidy(layer), words.lower(words.tidy(value))
    if not colon or not layer or not value:
        raise MeasureFault(
            say("samples.fault.parts", "Write the layer, a colon and the result: texture: none, or texture: 2 %.")
        )
    composite = "composite" in words.lower(layer) or "mixed" in words.lower(layer)
    if value in NONE_WORDS:
        return Result(layer, Fraction(0), composite)
    if value in TRACE_WORDS:
        return Result(layer, TRACE_PCT, composite)
    try:
        percent = read_quantity(value, "%")
    except MeasureFault as fault:
        english = "{value} is no result, {problem}. Write none, trace, or a percentage."
        raise MeasureFault(
            say("samples.fault.result", english, value=words.quoted(value), problem=str(fault.args[0]))
        ) from None
    if percent > 100:
        raise MeasureFault(
            say("samples.fault.most", "A layer cannot hold more than 100 %. Write none, trace, or a percentage.")
        )
    return Result(layer, percent, composite)


def read_area(entry: str) -> tuple[str, Fraction]:
    """Return one entry, `Bedrooms: 420 sq ft`, as a name and an area [sq ft]. Raises MeasureFault with one sentence."""
    name, colon, value = entry.partition(":")
    if not colon or not words.tidy(name) or not words.tidy(value):
        raise MeasureFault(say("samples.fault.area.parts", "Write a name, a colon and the area: Bedrooms: 420."))
    try:
        area = read_quantity(words.tidy(value), "sqft")
    except MeasureFault as fault:
        english = "{value} will not do, {problem}. Write an area: Bedrooms: 420."
        raise MeasureFault(
            say("samples.fault.area", english, value=words.quoted(value), problem=str(fault.args[0]))
        ) from None
    if area <= 0 or area > LARGEST_SQFT:
        english = "An area must be more than 0 and up to 100,000 sq ft. Write it like Bedrooms: 420."
        raise MeasureFault(say("samples.fault.area.size", english))
    if len(words.tidy(name)) > LONGEST_NAME:
        english = "The name {name} is too long. Write it like Bedrooms: 420."
        raise MeasureFault(say("samples.fault.area.name", english, name=words.quoted(name)))
    return words.tidy(name), area


MORE_AREAS = Field(
    name="more_areas", label="Other textures", kind="list", unit="",
    help="Texture of another look, color or age is another area. One a line.",
    example="Bedrooms: 420; Hall: 90", required=False, check=lambda text: entry_faults(text, read_area),
)  # fmt: skip
DEPTH = Field(
    name="texture_depth_in", label="Depth of the texture", kind="length", unit="in",
    help="Some rules count in volume. Judge it by eye.",
    example="1/4", lowest="0", highest="1", default="1/4", rare=True,
)  # fmt: skip
TAKEN = Field(
    name="samples_taken", label="Samples taken so far", kind="count", unit="",
    help="Of all areas together, by an accredited inspector.",
    example="3", lowest="0", highest="500", default="0",
)  # fmt: skip
RESULTS = Field(
    name="results", label="What the laboratory found", kind="list", unit="",
    help="One layer a line: texture, compound, board. Write none, trace, or a percentage.",
    example="texture: none; compound: none; board: none", required=False, check=lambda text: entry_faults(text, read_result),
)  # fmt: skip


@dataclass(frozen=True)
class SamplesInputs:
    """`areas`: (name, area [sq ft, > 0]) of each kind of texture; `texture_depth_in` [in]; `samples_taken` [-];
    `results` of the laboratory; `building` 'unknown', 'house' or 'other'; `place` as it was typed; `show_in`."""

    areas: tuple[tuple[str, Fraction], ...]
    texture_depth_in: Fraction
    samples_taken: int
    results: tuple[Result, ...]
    building: str
    place: str
    show_in: str


def samples_for(area_sqft: Fraction) -> int:
    """Return the samples [-] for one kind of sprayed texture of `area_sqft` [sq ft, > 0].

    Source: 40 CFR 763.86(a)(1) to (3): up to 1,000 three, up to 5,000 five, above seven.
    """
    for most_sqft, count in SAMPLE_STEPS:
        if area_sqft <= most_sqft:
            return count
    return SAMPLES_ABOVE


def verdict(results: tuple[Result, ...], samples_taken: int, samples_needed: int) -> tuple[str, str]:
    """Return (key, sentence): 'unsettled', 'found', 'trace' or 'none'. Whatever is in doubt is unsettled.

    Source: 40 CFR 61 subpart M appendix A for 1 percent; that layers are read one by one is common practice.
    """
    if not results:
        english = "Nothing is settled: there is no result yet. Leave the ceiling alone."
        return "unsettled", say("samples.verdict.open", english)
    highest = max([one.percent for one in results])
    if highest > CONTAINS_PCT:
        english = "Asbestos was found, above 1 percent. Stop: leave it alone and call a licensed contractor."
        return "found", say("samples.verdict.found", english)
    if highest > 0:
        english = "A little asbestos was found, at most 1 percent. Stop: work rules still hold. Ask for each layer to be counted."
        return "trace", say("samples.verdict.trace", english)
    if [one for one in results if one.composite]:
        english = (
            "Layers were mixed for the test. One can hold more than the mix shows. Ask for a result layer by layer."
        )
        return "unsettled", say("samples.verdict.mixed", english)
    missing = [told for layer, told in _layers() if not [one for one in results if _is_of(one, layer, told)]]
    if missing:
        english = "No result names the {layers}. Nothing is settled until it does."
        return "unsettled", say("samples.verdict.layers", english, layers=words.listed(missing))
    if samples_taken < samples_needed:
        needed = words.whole(samples_needed)
        if samples_taken == 1:
            english = "1 sample was taken and {needed} are asked for. Nothing is settled yet."
            return "unsettled", say("samples.verdict.one", english, needed=needed)
        english = "{taken} samples were taken and {needed} are asked for. Nothing is settled yet."
        return "unsettled", say("samples.verdict.few", english, taken=words.whole(samples_taken), needed=needed)
    english = "No asbestos was found in what was sampled. That holds for these areas and layers, and for no other."
    return "none", say("samples.verdict.none", english)


def _layers() -> tuple[tuple[str, str], ...]:
    """Each layer that a result has to name, and its name as people read it."""
    return (
        ("texture", say("samples.layer.texture", "texture")),
        ("compound", say("samples.layer.compound", "compound")),
        ("board", say("samples.layer.board", "board")),
    )


def _is_of(result: Result, layer: str, told: str) -> bool:
    """Whether `result` names a layer, by its own name or by the one that people read: they type what they are told to."""
    typed = words.lower(result.layer)
    return layer in typed or words.lower(told) in typed


def samples(inputs: SamplesInputs, typed: tuple[tuple[str, str], ...]) -> Answer:
    """Return the samples needed, how the result reads, and which published limits the work reaches.

    Raises nothing. Sources: 40 CFR 763.86 (written for schools, used elsewhere as good practice), 40 CFR 61.145,
    and the rules of the place where this book holds any.
    """
    show = inputs.show_in
    lines = Lines("samples", show)
    area = lines.add(
        name="area_sqft",
        label="Ceiling",
        unit="sqft",
        places=1,
        rule="All areas together.",
        amount=added([given(one, "sqft", "geometry", name) for name, one in inputs.areas]),
    )
    needed = lines.add(
        name="samples_needed",
        label="Samples, at least",
        unit="",
        places=0,
        rule="For each kind of texture: up to {small} {few}, up to {large} {more}, above that {most}.",
        small=measure.shown(Fraction(SAMPLE_STEPS[0][0]), "sqft", 1, show),
        few=words.whole(SAMPLE_STEPS[0][1]),
        large=measure.shown(Fraction(SAMPLE_STEPS[1][0]), "sqft", 1, show),
        more=words.whole(SAMPLE_STEPS[1][1]),
        most=words.whole(SAMPLES_ABOVE),
        amount=added([samples_of(name, one, show) for name, one in inputs.areas]),
    )
    volume = lines.add(
        name="volume_cuft", label="Texture as it hangs", unit="cuft", places=2, rule="Area times depth, for rules that count in volume.",
        amount=(area * given(inputs.texture_depth_in, "in")).cited("geometry"),
    )  # fmt: skip
    samples_needed = int(needed.value)
    key, sentence = verdict(inputs.results, inputs.samples_taken, samples_needed)
    return Answer(
        calculator="samples",
        inputs=typed,
        figure=words.plural(samples_needed, "sample"),
        figure_label=say("samples.figure", "at least, taken by an accredited inspector"),
        sentence=sentence,
        lines=lines.tuple(),
        cautions=_cautions(key),
        notes=_notes(),
        drawing=None,
        items=_limits(inputs, area.value, volume.value),
        items_title=say("samples.items", "Published limits, and whether this work reaches them"),
    )


def _notes() -> tuple[str, ...]:
    return (
        say("samples.note.schools", "The sample count is a federal rule for schools. Inspectors use it elsewhere as good practice; local rules can ask for more."),
        say("samples.note.yourself", "Do not take samples yourself. It breaks the texture, and many places do not accept them."),
        say("samples.note.year", "No year of building settles the question: stock was used for years after the bans of 1973 and 1978, as late as about 1982."),
        say("samples.note.limits", "The limits are on notice and work rules. Below each of them the fibers are the same."),
    )  # fmt: skip


def samples_of(name: str, area_sqft: Fraction, show: str) -> Quantity:
    """Return `samples_for` an area of one kind [sq ft, > 0], called `name`, as a quantity."""
    return given(samples_for(area_sqft), "", "cfr-763-86", name + ", " + measure.shown(area_sqft, "sqft", 1, show))


def _limits(inputs: SamplesInputs, area: Fraction, volume_cuft: Fraction) -> tuple[Item, ...]:
    place = known_place(inputs.place)
    unchecked = say("samples.unchecked", "not checked")
    limits = limits_for("asbestos", place, inputs.building)
    found = []
    for limit in limits:
        amount = area if limit.unit == "sqft" else volume_cuft
        found.append(_limit(limit, amount, inputs.show_in))
    if inputs.building != "other":
        name = say("samples.house", "Federal, a house")
        told = say(
            "samples.house.told",
            "One lone house of up to four homes is outside the federal notice rule; two on one site are inside. State and local rules still hold. Ask the state asbestos office.",
        )
        found.append(Item(name, say("samples.ask", "ask"), told, ("epa-1995-small-residence",)))
    local, practice = say("samples.local", "Local rules"), ("common-practice",)
    if place is None:
        english = "This book holds no rules for {place}. Ask the state and city asbestos offices before any work."
        told = say("samples.local.unknown", english, place=words.quoted(inputs.place))
        found.append(Item(local, unchecked, told, practice))
    elif not place:
        english = "No place was given, so only federal limits were looked at. Ask the state and city asbestos offices."
        found.append(Item(local, unchecked, say("samples.local.none", english), practice))
    elif place in OF_EDITION:
        if [one for one in limits if one.place]:
            held = say("samples.place.held", "Only the limits of {place} above were looked at.", place=place)
        else:
            held = say("samples.place.none", "No limit of {place} is held for such a building.", place=place)
        offices = say("samples.place.offices", "Ask the state and city asbestos offices before any work.")
        name = say("samples.place.other", "Other local rules")
        found.append(Item(name, unchecked, held + " " + offices, practice))
    return tuple(found)


def _limit(limit: Limit, amount: Fraction, show_in: str) -> Item:
    told, office, name = amount_told(amount, limit, show_in), ask_told(limit), place_told(limit.place)
    if limit.building == "house":
        name = say("samples.limit.house", "{place}, house", place=name)
    elif limit.building == "other":
        name = say("samples.limit.other", "{place}, other buildings", place=name)
    if limit.passed_by(amount):
        state = say("samples.reached", "reached")
        text = say("samples.reached.told", "{amount} Before any work ask {office}.", amount=told, office=office)
    else:
        state = say("samples.not_reached", "not reached")
        text = say("samples.not_reached.told", "{amount} Others may hold: ask {office}.", amount=told, office=office)
    return Item(name, state, text, (limit.source,), review_by=limit.review_by)


def _cautions(key: str) -> tuple[Caution, ...]:
    found = []
    if key == "found":
        found.append(caution("licensed-removal"))
    elif key == "trace":
        found += [caution("asbestos-first"), caution("asbestos-trace")]
    elif key == "unsettled":
        found.append(caution("asbestos-first"))
    found += [caution("asbestos-layers"), caution("local-rules")]
    return tuple(found)


def _work_out(values: Values) -> Answer:
    areas = [(say("samples.this", "This texture"), area_sqft(values))] + [
        read_area(entry) for entry in entries(values.choice("more_areas"))
    ]
    inputs = SamplesInputs(
        tuple(areas),
        values.number("texture_depth_in"),
        values.count("samples_taken"),
        tuple([read_result(entry) for entry in entries(values.choice("results"))]),
        values.choice("building"),
        values.choice("place"),
        values.choice("show_in"),
    )
    return samples(inputs, values.given)


CALCULATOR = Calculator(
    name="samples",
    title="Asbestos samples and limits",
    summary="Samples to take, how a result reads, and published limits",
    verb="Count the samples",
    fields=(OPTIONAL_ROOMS, AREA, MORE_AREAS, BUILDING, PLACE, TAKEN, RESULTS, DEPTH, SHOW_IN),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'"), ("more_areas", "Bedrooms: 420"), ("building", "house"), ("place", "Colorado")),
    one_of=("rooms", "area_sqft"),
    sources=("cfr-61-145", "epa-1995-small-residence", "colorado-reg-8", "ufgs-13280a", "cfr-1926-1101", "epa-bans", "cfr-61-141", "common-practice", "epa-asbestos-in-your-home") + tuple([row[9] for row in OF_PLACES if row[2] == "asbestos"]),
    always=("asbestos-layers", "local-rules"),
)  # fmt: skip
