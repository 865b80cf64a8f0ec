"""The rules for what hangs on, sits in or stands under a ceiling, as data where they are alike and as code where not."""

from dataclasses import dataclass
from fractions import Fraction

from calc.core.answer import Item
from calc.numbers import measure, words
from calc.numbers.measure import MeasureFault

SET_BACK_IN = Fraction(1, 4)  # a box in a face that does not burn may sit so far behind it [in], NEC 314.20
GAP_ROUND_IN = Fraction(1, 8)  # gap round a box, at most [in], NEC 314.21
CLEAR_IN = 3  # insulation from a light that is not rated for it [in], NEC 410.116
ALARM_CLEAR_FT = 3  # an alarm from bath doors, registers and fan blades [ft], NFPA 72
FAN_MARKED_LB = 35  # a fan box is marked with its weight from this on [lb], NEC 314.27
BLADES_IN = 84  # fan blades above the floor [in]; UL 507, from memory
ALARM_MOST_IN = 12  # top of a wall alarm below the ceiling, at most [in], NFPA 72 17.7.3.2.1
ALARM_OLD_LEAST_IN = 4  # what older alarm manuals ask for at least [in]
SPRINKLER_LEAST_IN, SPRINKLER_MOST_IN = 1, 12  # deflector below the ceiling [in], NFPA 13 10.2.6.1
HOME_SPRINKLER_MOST_IN = 4  # residential heads [in], NFPA 13R and 13D
ROOM_IN, BATH_IN, BEAM_IN, SLOPE_IN = 84, 80, 76, 60  # least ceiling heights [in], IRC R305.1
LONGEST_NAME = 60  # letters of a thing's name
FLANGE_IN = Fraction(1, 4)  # what a register's flange takes up with longer screws [in], common practice
SWING_IN = Fraction(1, 8)  # air over a door that swings [in], common practice


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


@dataclass(frozen=True)
class Lowering:
    """What is done: `drop_in` [in], whether the new face `burns`, the ceiling's height `after_in` [in], `show_in`."""

    drop_in: Fraction
    burns: bool
    after_in: Fraction
    show_in: str

    def limit(self, inches: Fraction | int, customary: str = "") -> str:
        """Return a limit [in] as its rule writes it, in inches where nothing else is given, or metric."""
        return measure.limit(
            Fraction(inches), customary or measure.inches_and_sixteenths(Fraction(inches)), self.show_in
        )

    def told(self, inches: Fraction) -> str:
        """Return a length as the person reads it."""
        if inches < measure.INCHES_PER_FOOT * 4:
            return measure.shown(inches, "in", 4, self.show_in)
        return measure.shown(inches / measure.INCHES_PER_FOOT, "ft", 2, self.show_in)


def read_fixture(entry: str) -> Fixture:
    """Return one entry, `fan living: 7' 4"`, as a fixture. Raises MeasureFault with one sentence and an example."""
    head, colon, value = entry.partition(":")
    parts = words.tidy(head).split(" ")
    if not parts[0]:
        raise MeasureFault("Write what it is, its name and its measure: " + KINDS[0].example + ".")
    kind = _kind(words.lower(parts[0]))
    if kind is None:
        raise MeasureFault(
            words.quoted(parts[0])
            + " is none of "
            + words.listed([one.word for one in KINDS], "or")
            + ". Write "
            + KINDS[0].example
            + "."
        )
    name = words.tidy(" ".join(parts[1:]))
    if len(name) > LONGEST_NAME:
        raise MeasureFault(
            kind.label + ": the name " + words.quoted(name) + " is too long. Write " + kind.example + "."
        )
    value = words.tidy(value)
    if not value:
        if kind.must or colon:
            raise MeasureFault(
                kind.label
                + " needs "
                + (kind.means or "no measure, so leave the colon out")
                + ". Write "
                + kind.example
                + "."
            )
        return Fixture(kind.word, name, None)
    if not kind.means:
        raise MeasureFault(kind.label + " takes no measure. Write " + kind.example + ".")
    try:
        found = measure.read_length(value, "in")
    except MeasureFault as fault:
        raise MeasureFault(
            kind.label
            + ": "
            + words.quoted(value)
            + " will not do, "
            + str(fault.args[0])
            + ". Write "
            + kind.example
            + "."
        ) from None
    if found > measure.INCHES_PER_FOOT * 100:
        raise MeasureFault(kind.label + ": " + words.quoted(value) + " is over 100 ft. Write " + kind.example + ".")
    return Fixture(kind.word, name, found)  # fmt: skip


def _kind(word: str) -> Kind | None:
    for one in KINDS:
        if one.word == word or one.word + "s" == word:
            return one
    return None


def verdict(one: Fixture, lowering: Lowering) -> Item:
    """Return what the lower ceiling does to one fixture: 'fits', 'needs' with how much, or 'stop' with whom to call."""
    kind = _kind(one.kind)
    assert kind is not None  # read_fixture knows the word
    name = kind.label + (" " + one.name if one.name else "")
    value = Fraction(0) if one.measure_in is None else one.measure_in
    if one.kind in ("box", "light", "recessed"):
        state, text = _box(one.kind, value, lowering)
    elif one.kind == "fan":
        state, text = _fan(value, lowering)
    elif one.kind == "smoke" and one.measure_in is not None:
        state, text = _wall_alarm(value, lowering)
    elif one.kind == "sprinkler":
        state, text = _sprinkler(value, lowering)
    elif one.kind in ("door", "cupboard", "trim", "track"):
        state, text = _gap(one.kind, value, lowering)
    elif one.kind == "furniture":
        state, text = _furniture(value, lowering)
    elif one.kind in ("room", "bath", "beam", "slope"):
        state, text = _height(one.kind, value, lowering)
    else:
        state, text = _refit(one.kind, value, lowering)
    return Item(name, state, text, kind.sources)


def _box(word: str, value: Fraction, lowering: Lowering) -> tuple[str, str]:
    after = value + lowering.drop_in
    most = Fraction(0) if lowering.burns else SET_BACK_IN
    behind = "Its edge ends up " + lowering.told(after) + " behind the new face. "
    if word == "recessed":
        return "needs work", behind + "It needs a collar or new trim that reaches " + lowering.told(
            after
        ) + ". A light not rated for insulation stays " + lowering.limit(
            CLEAR_IN
        ) + " clear of it. Electrician, where the law says so."
    allowed = (
        "In a face that burns it must be flush."
        if lowering.burns
        else "The most is " + lowering.limit(SET_BACK_IN) + " where the face does not burn."
    )
    if after <= most:
        return "fits", behind + allowed + " Keep the gap round it to " + lowering.limit(GAP_ROUND_IN) + "."
    return "needs work", behind + allowed + " It needs an extension of " + lowering.told(after) + ". Electrician, where the law says so."  # fmt: skip


def _fan(value: Fraction, lowering: Lowering) -> tuple[str, str]:
    after = value - lowering.drop_in
    at = (
        "Its blades come down to "
        + lowering.told(max(after, Fraction(0)))
        + "; the least is "
        + lowering.limit(BLADES_IN, "7 ft")
        + ". "
    )
    if after < BLADES_IN:
        return "stop", at + "Take it away, or have an electrician fit a flush mount that keeps " + lowering.limit(
            BLADES_IN, "7 ft"
        ) + "."
    pounds = measure.shown(Fraction(FAN_MARKED_LB), "lb", 0, lowering.show_in)
    return "needs work", at + "Its box needs an extension, and must be listed for fans, with its weight marked from " + pounds + ". Electrician, where the law says so."  # fmt: skip


def _wall_alarm(value: Fraction, lowering: Lowering) -> tuple[str, str]:
    after = value - lowering.drop_in
    if after <= 0:
        return (
            "stop",
            "The new ceiling would cover it. Move it down first; its own manual says where. Hang a battery alarm until it works again.",
        )
    at = "Its top ends up " + lowering.told(after) + " below the ceiling. "
    most = "The most is " + lowering.limit(ALARM_MOST_IN)
    if after > ALARM_MOST_IN:
        return "needs work", at + most + ", so it must move up by " + lowering.told(after - ALARM_MOST_IN) + "."
    if after < ALARM_OLD_LEAST_IN:
        return (
            "needs work",
            at
            + "Many manuals ask for "
            + lowering.limit(ALARM_OLD_LEAST_IN)
            + " at least, the code no longer does. Follow the alarm's own manual, and move it where that says so.",
        )
    return "fits", at + most + ". Cover it while you work, uncover it at the end of each day, and test it."  # fmt: skip


def _sprinkler(value: Fraction, lowering: Lowering) -> tuple[str, str]:
    after = value - lowering.drop_in
    least, most = lowering.limit(SPRINKLER_LEAST_IN, str(SPRINKLER_LEAST_IN)), lowering.limit(SPRINKLER_MOST_IN)
    homes = least + " to " + lowering.limit(HOME_SPRINKLER_MOST_IN)
    if after < SPRINKLER_LEAST_IN:
        at = "Its deflector would be " + (
            lowering.told(after)
            + " below the new ceiling, under the least of "
            + lowering.limit(SPRINKLER_LEAST_IN)
            + ". "
            if after > 0
            else "inside the new ceiling. "
        )
    elif after > SPRINKLER_MOST_IN:
        at = (
            "Its deflector would be " + lowering.told(after) + " below the new ceiling, past the most of " + most + ". "
        )
    else:
        at = "Its deflector would be " + lowering.told(after) + " below the new ceiling; "
        at += least + " to " + most + " is the standard's range, "
        at += (
            "but residential heads have " + homes + ". "
            if after > HOME_SPRINKLER_MOST_IN
            else homes + " for residential heads. "
        )
    return "stop", at + "A licensed sprinkler contractor decides and does it, before anything else. Never paint, cover or bury a head."  # fmt: skip


def _gap(word: str, value: Fraction, lowering: Lowering) -> tuple[str, str]:
    after = value - lowering.drop_in
    air = SWING_IN if word == "cupboard" else Fraction(0)
    if after >= air:
        return "fits", "A gap of " + lowering.told(after) + " is left."
    short = lowering.told(air - after)
    cures = {
        "door": "Cut back the casing, or stop the new ceiling short of it.",
        "cupboard": "Shorten or lower the door, or it will not swing.",
        "trim": "Lower it, or end the new ceiling at it.",
        "track": "Lower the track and what hangs in it.",
    }
    return "needs work", "It is short by " + short + ". " + cures[word]


def _furniture(value: Fraction, lowering: Lowering) -> tuple[str, str]:
    left = lowering.after_in - value
    if left >= SWING_IN:
        return "fits", "It stands " + lowering.told(left) + " under the new ceiling. Tilting it up may need more."
    return "needs work", "The new ceiling is " + lowering.told(
        SWING_IN - left
    ) + " too low for it. It must be cut down, or go."


def _height(word: str, value: Fraction, lowering: Lowering) -> tuple[str, str]:
    least = {"room": ROOM_IN, "bath": BATH_IN, "beam": BEAM_IN, "slope": SLOPE_IN}[word]
    after = value - lowering.drop_in
    at = (
        "It comes down to "
        + lowering.told(max(after, Fraction(0)))
        + "; the least is "
        + lowering.limit(least, lowering.told(Fraction(least)))
        + ". "
    )
    if after < least:
        return "stop", at + "Do not lower it. Ask the building department."
    if word == "slope":
        seven = lowering.limit(ROOM_IN, "7 ft")
        return "fits", at + "Half of the required floor must have " + seven + " as well: measure that too."
    return "fits", at + "Local editions differ: ask where it is near."  # fmt: skip


def ceiling_height(lowering: Lowering) -> tuple[bool, str]:
    """Return whether the ceiling itself stays as high as a room or hall must, and what to say of it. Source: IRC R305.1."""
    least = lowering.limit(ROOM_IN, lowering.told(Fraction(ROOM_IN)))
    if lowering.after_in >= ROOM_IN:
        return True, "The least for a room or hall is " + least + "; local editions differ."
    told = "That is under " + least + ", the least for a room or hall. "
    if lowering.after_in >= BATH_IN:
        told += "Only a bath or laundry may be so low. "
    return False, told + "Do not lower it. Ask the building department."


def _refit(word: str, value: Fraction, lowering: Lowering) -> tuple[str, str]:
    drop = lowering.told(lowering.drop_in)
    if word == "register" and lowering.drop_in <= FLANGE_IN:
        return "fits", "Its flange takes up " + drop + " with longer screws."
    if word == "cord":
        left = value - lowering.drop_in
        return ("fits", "Its end comes down to " + lowering.told(left) + ". Shorten it where heads pass.") if left > 0 else ("needs work", "It must be shortened by " + drop + ".")  # fmt: skip
    told = {
        "smoke": "Take it down, hang a battery alarm meanwhile, and refit and test it the day the new face is dry: "
        + lowering.limit(ALARM_CLEAR_FT * measure.INCHES_PER_FOOT, str(ALARM_CLEAR_FT) + " ft")
        + " from bath doors, registers and fan blades.",
        "co": "Take it down, hang a battery alarm meanwhile, and refit and test it the day the new face is dry, where its own manual says.",
        "register": "Its boot needs an extension of " + drop + ", sealed to the new face.",
        "hatch": "Its stop needs packing of " + drop + ", and new trim. Seal and insulate the lid.",
        "skylight": "The edge of its well needs trim or corner bead " + drop + " lower, and a return of new board.",
        "crown": "Take it down, number the pieces, and refit them " + drop + " lower. Look for lead paint first.",
    }
    return "needs work", told[word]
