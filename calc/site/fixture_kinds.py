"""What hangs on, sits in or stands under a ceiling: the kinds as rows of data, and how an entry of a list is read."""

from dataclasses import dataclass
from fractions import Fraction

from calc.numbers import measure, words
from calc.numbers.measure import MeasureFault
from calc.text.door import say

LONGEST_NAME = 60  # letters of a thing's name


@dataclass(frozen=True)
class Kind:
    """One kind of thing. `word` is what a person writes; `means` says what its measure is, '' where it has none;
    `must` whether the measure must be given."""

    word: str
    label: str
    means: str
    must: bool
    example: str
    sources: tuple[str, ...]


KINDS = (
    Kind("box", "Electrical box", "how far its edge sits behind the face now", True, "box hall: 0 in", ("nec-314-20",)),
    Kind("light", "Light on a box", "how far the box sits behind the face now", True, "light hall: 0 in", ("nec-314-20", "nec-314-27")),
    Kind("recessed", "Recessed light", "how far its rim sits behind the face now", True, "recessed bath: 0 in", ("nec-410-116",)),
    Kind("fan", "Ceiling fan", "height of its blades above the floor", True, "fan living: 7' 4\"", ("ul-507", "nec-314-27")),
    Kind("smoke", "Smoke alarm", "on a wall: its top below the ceiling", False, "smoke hall: 6 in", ("nfpa-72",)),
    Kind("co", "Carbon monoxide alarm", "", False, "co hall", ("nfpa-72",)),
    Kind("sprinkler", "Sprinkler", "its deflector below the ceiling", True, "sprinkler hall: 2 in", ("nfpa-13",)),
    Kind("register", "Register", "", False, "register hall", ("common-practice",)),
    Kind("hatch", "Attic hatch", "", False, "hatch hall", ("common-practice",)),
    Kind("skylight", "Skylight well", "", False, "skylight bath", ("common-practice",)),
    Kind("door", "Door head", "gap from door or casing to the ceiling", True, "door hall: 3 in", ("common-practice",)),
    Kind("cupboard", "Cupboard door", "gap from its top to the ceiling", True, "cupboard: 1/4 in", ("common-practice",)),
    Kind("crown", "Crown molding", "", False, "crown living", ("common-practice",)),
    Kind("trim", "Trim or picture rail", "gap from its top to the ceiling", True, "trim hall: 1 in", ("common-practice",)),
    Kind("cord", "Pull cord", "height of its end above the floor", True, "cord bath: 6' 6\"", ("common-practice",)),
    Kind("track", "Curtain or door track", "gap from its top to the ceiling", True, "track living: 2 in", ("common-practice",)),
    Kind("furniture", "Tall furniture", "its height", True, "furniture bedroom: 7' 8\"", ("common-practice",)),
    Kind("room", "Room or hall height", "its height now", True, "room living: 8'", ("irc-r305",)),
    Kind("bath", "Bath or laundry height", "its height now", True, "bath: 7'", ("irc-r305",)),
    Kind("beam", "Basement beam or duct", "its height now", True, "beam: 6' 6\"", ("irc-r305",)),
    Kind("slope", "Sloped ceiling", "its height now, at the lowest", True, "slope attic: 5' 2\"", ("irc-r305",)),
)  # fmt: skip


@dataclass(frozen=True)
class Fixture:
    """One entry: its `kind` (a word of `KINDS`), its `name`, and its measure [in] or None."""

    kind: str
    name: str
    measure_in: Fraction | None


def kind_told(kind: Kind) -> str:
    """Return what the kind is called."""
    return say("fixtures.kind." + kind.word, kind.label)


def means_told(kind: Kind) -> str:
    """Return what the measure of the kind is; '' where it has none."""
    return say("fixtures.kind." + kind.word + ".means", kind.means) if kind.means else ""


def texts() -> list[tuple[str, str]]:
    """Return the (key, English) pairs of all kinds."""
    found = [("fixtures.kind." + kind.word, kind.label) for kind in KINDS]
    return found + [("fixtures.kind." + kind.word + ".means", kind.means) for kind in KINDS if kind.means]


def name_told(one: Fixture) -> str:
    """Return the kind of a fixture with its own name, where it has one."""
    kind = kind_told(kind_of(one.kind))
    return say("fixtures.named", "{kind} {name}", kind=kind, name=one.name) if one.name else kind


def kind_of(word: str) -> Kind:
    """Return the kind that is written with `word`, one or several. Raises KeyError where there is none."""
    for one in KINDS:
        if word in (one.word, one.word + "s"):
            return one
    raise KeyError(word)


def read_fixture(entry: str) -> Fixture:
    """Return one entry, `fan living: 7' 4"`, as a fixture. Raises MeasureFault with one sentence and an example."""
    head, colon, value = entry.partition(":")
    parts = words.tidy(head).split(" ")
    kind = _kind(parts[0])
    name, value = words.tidy(" ".join(parts[1:])), words.tidy(value)
    if len(name) > LONGEST_NAME:
        raise MeasureFault(
            say(
                "fixtures.fault.name", "{kind}: the name {name} is too long. Write {example}.",
                kind=kind_told(kind), name=words.quoted(name), example=kind.example,
            )
        )  # fmt: skip
    if value:
        return Fixture(kind.word, name, _measure(kind, value))
    if kind.means and (kind.must or colon):
        raise MeasureFault(
            say(
                "fixtures.fault.needs", "{kind} needs {means}. Write {example}.",
                kind=kind_told(kind), means=means_told(kind), example=kind.example,
            )
        )  # fmt: skip
    if colon:
        raise MeasureFault(
            say(
                "fixtures.fault.colon", "{kind} needs no measure, so leave the colon out. Write {example}.",
                kind=kind_told(kind), example=kind.example,
            )
        )  # fmt: skip
    return Fixture(kind.word, name, None)


def _kind(typed: str) -> Kind:
    """The kind whose word was typed. Raises MeasureFault."""
    if not typed:
        english = "Write what it is, its name and its measure: {example}."
        raise MeasureFault(say("fixtures.fault.empty", english, example=KINDS[0].example))
    try:
        return kind_of(words.lower(typed))
    except KeyError:
        raise MeasureFault(
            say(
                "fixtures.fault.kind", "{word} is none of {words}. Write {example}.",
                word=words.quoted(typed), words=words.listed([one.word for one in KINDS], "or"), example=KINDS[0].example,
            )
        ) from None  # fmt: skip


def _measure(kind: Kind, typed: str) -> Fraction:
    """The measure [in] that was typed. Raises MeasureFault."""
    if not kind.means:
        raise MeasureFault(
            say(
                "fixtures.fault.none",
                "{kind} takes no measure. Write {example}.",
                kind=kind_told(kind),
                example=kind.example,
            )
        )
    try:
        found = measure.read_length(typed, "in")
    except MeasureFault as fault:
        raise MeasureFault(
            say(
                "fixtures.fault.measure", "{kind}: {measure} will not do, {problem}. Write {example}.",
                kind=kind_told(kind), measure=words.quoted(typed), problem=str(fault.args[0]), example=kind.example,
            )
        ) from None  # fmt: skip
    if found > measure.INCHES_PER_FOOT * 100:  # as the message says
        raise MeasureFault(
            say(
                "fixtures.fault.long", "{kind}: {measure} is over 100 ft. Write {example}.",
                kind=kind_told(kind), measure=words.quoted(typed), example=kind.example,
            )
        )  # fmt: skip
    return found
