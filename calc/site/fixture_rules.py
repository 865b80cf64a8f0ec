"""The rules for what hangs on, sits in or stands under a ceiling that comes down: what each needs, and where the work stops."""

from dataclasses import dataclass
from fractions import Fraction

from calc.core.answer import Item
from calc.numbers import measure
from calc.site.fixture_kinds import Fixture, kind_of, name_told
from calc.text.door import say

FITS, NEEDS_WORK, STOPS = 0, 1, 2
"""What a lower ceiling does to a thing."""
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
FLANGE_IN = Fraction(1, 4)  # what a register's flange takes up with longer screws [in], common practice
SWING_IN = Fraction(1, 8)  # air over a door that swings [in], common practice


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


def verdict(one: Fixture, lowering: Lowering) -> tuple[int, Item]:
    """Return what the lower ceiling does to one fixture: FITS, NEEDS_WORK with how much, or STOPS with whom to call."""
    value = Fraction(0) if one.measure_in is None else one.measure_in
    if one.kind in ("box", "light"):
        state, text = _box(value, lowering)
    elif one.kind == "recessed":
        state, text = _recessed(value, lowering)
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
    elif one.kind == "register" and lowering.drop_in <= FLANGE_IN:
        state, text = FITS, _flange(lowering)
    elif one.kind == "cord":
        state, text = _cord(value, lowering)
    else:
        state, text = NEEDS_WORK, _refit(one.kind, lowering)
    return state, Item(name_told(one), state_told(state), text, kind_of(one.kind).sources)


def state_told(state: int) -> str:
    """Return FITS, NEEDS_WORK or STOPS in a word or two."""
    return (
        say("fixtures.state.fits", "fits"), say("fixtures.state.work", "needs work"), say("fixtures.state.stop", "stop"),
    )[state]  # fmt: skip


def _electrician() -> str:
    return say("fixtures.electrician", "Electrician, where the law says so.")


def _behind(after: Fraction, lowering: Lowering) -> str:
    return say("fixtures.box.behind", "Its edge ends up {depth} behind the new face.", depth=lowering.told(after))


def _recessed(value: Fraction, lowering: Lowering) -> tuple[int, str]:
    after = value + lowering.drop_in
    work = say(
        "fixtures.recessed.work",
        "It needs a collar or new trim that reaches {depth}. A light not rated for insulation stays {clear} clear of it.",
        depth=lowering.told(after), clear=lowering.limit(CLEAR_IN),
    )  # fmt: skip
    return NEEDS_WORK, " ".join([_behind(after, lowering), work, _electrician()])


def _box(value: Fraction, lowering: Lowering) -> tuple[int, str]:
    after = value + lowering.drop_in
    if lowering.burns:
        most, allowed = Fraction(0), say("fixtures.box.flush", "In a face that burns it must be flush.")
    else:
        english = "The most is {most} where the face does not burn."
        most, allowed = SET_BACK_IN, say("fixtures.box.most", english, most=lowering.limit(SET_BACK_IN))
    told = [_behind(after, lowering), allowed]
    if after <= most:
        gap = say("fixtures.box.gap", "Keep the gap round it to {gap}.", gap=lowering.limit(GAP_ROUND_IN))
        return FITS, " ".join(told + [gap])
    work = say("fixtures.box.work", "It needs an extension of {depth}.", depth=lowering.told(after))
    return NEEDS_WORK, " ".join(told + [work, _electrician()])


def _fan(value: Fraction, lowering: Lowering) -> tuple[int, str]:
    after, least = value - lowering.drop_in, lowering.limit(BLADES_IN, "7 ft")
    at = say(
        "fixtures.fan.down", "Its blades come down to {height}; the least is {least}.",
        height=lowering.told(max(after, Fraction(0))), least=least,
    )  # fmt: skip
    if after < BLADES_IN:
        english = "Take it away, or have an electrician fit a flush mount that keeps {least}."
        return STOPS, at + " " + say("fixtures.fan.stop", english, least=least)
    work = say(
        "fixtures.fan.work",
        "Its box needs an extension, and must be listed for fans, with its weight marked from {weight}.",
        weight=measure.shown(Fraction(FAN_MARKED_LB), "lb", 0, lowering.show_in),
    )
    return NEEDS_WORK, " ".join([at, work, _electrician()])


def _wall_alarm(value: Fraction, lowering: Lowering) -> tuple[int, str]:
    after, most = value - lowering.drop_in, lowering.limit(ALARM_MOST_IN)
    if after <= 0:
        return STOPS, say(
            "fixtures.alarm.stop",
            "The new ceiling would cover it. Move it down first; its own manual says where. Hang a battery alarm until it works again.",
        )
    at = say("fixtures.alarm.top", "Its top ends up {depth} below the ceiling.", depth=lowering.told(after))
    if after > ALARM_MOST_IN:
        return NEEDS_WORK, at + " " + say(
            "fixtures.alarm.up", "The most is {most}, so it must move up by {length}.",
            most=most, length=lowering.told(after - ALARM_MOST_IN),
        )  # fmt: skip
    if after < ALARM_OLD_LEAST_IN:
        return NEEDS_WORK, at + " " + say(
            "fixtures.alarm.manual",
            "Many manuals ask for {least} at least, the code no longer does. Follow the alarm's own manual, and move it where that says so.",
            least=lowering.limit(ALARM_OLD_LEAST_IN),
        )  # fmt: skip
    english = "The most is {most}. Cover it while you work, uncover it at the end of each day, and test it."
    return FITS, at + " " + say("fixtures.alarm.fits", english, most=most)


def _sprinkler(value: Fraction, lowering: Lowering) -> tuple[int, str]:
    stop = say(
        "fixtures.sprinkler.stop",
        "A licensed sprinkler contractor decides and does it, before anything else. Never paint, cover or bury a head.",
    )
    return STOPS, _deflector(value - lowering.drop_in, lowering) + " " + stop


def _deflector(after: Fraction, lowering: Lowering) -> str:
    if after <= 0:
        return say("fixtures.sprinkler.inside", "Its deflector would be inside the new ceiling.")
    depth, most = lowering.told(after), lowering.limit(SPRINKLER_MOST_IN)
    if after < SPRINKLER_LEAST_IN:
        return say(
            "fixtures.sprinkler.under", "Its deflector would be {depth} below the new ceiling, under the least of {least}.",
            depth=depth, least=lowering.limit(SPRINKLER_LEAST_IN),
        )  # fmt: skip
    if after > SPRINKLER_MOST_IN:
        return say(
            "fixtures.sprinkler.past", "Its deflector would be {depth} below the new ceiling, past the most of {most}.",
            depth=depth, most=most,
        )  # fmt: skip
    least = lowering.limit(SPRINKLER_LEAST_IN, str(SPRINKLER_LEAST_IN))
    home = lowering.limit(HOME_SPRINKLER_MOST_IN)
    if after > HOME_SPRINKLER_MOST_IN:
        return say(
            "fixtures.sprinkler.home.past",
            "Its deflector would be {depth} below the new ceiling; {least} to {most} is the standard's range, but residential heads have {least} to {home}.",
            depth=depth, least=least, most=most, home=home,
        )  # fmt: skip
    return say(
        "fixtures.sprinkler.home",
        "Its deflector would be {depth} below the new ceiling; {least} to {most} is the standard's range, {least} to {home} for residential heads.",
        depth=depth, least=least, most=most, home=home,
    )  # fmt: skip


def _gap(word: str, value: Fraction, lowering: Lowering) -> tuple[int, str]:
    after = value - lowering.drop_in
    air = SWING_IN if word == "cupboard" else Fraction(0)
    if after >= air:
        return FITS, say("fixtures.gap.fits", "A gap of {gap} is left.", gap=lowering.told(after))
    short = say("fixtures.gap.short", "It is short by {length}.", length=lowering.told(air - after))
    cures = {
        "door": say("fixtures.gap.door", "Cut back the casing, or stop the new ceiling short of it."),
        "cupboard": say("fixtures.gap.cupboard", "Shorten or lower the door, or it will not swing."),
        "trim": say("fixtures.gap.trim", "Lower it, or end the new ceiling at it."),
        "track": say("fixtures.gap.track", "Lower the track and what hangs in it."),
    }
    return NEEDS_WORK, short + " " + cures[word]


def _furniture(value: Fraction, lowering: Lowering) -> tuple[int, str]:
    left = lowering.after_in - value
    if left >= SWING_IN:
        english = "It stands {gap} under the new ceiling. Tilting it up may need more."
        return FITS, say("fixtures.furniture.fits", english, gap=lowering.told(left))
    english = "The new ceiling is {length} too low for it. It must be cut down, or go."
    return NEEDS_WORK, say("fixtures.furniture.work", english, length=lowering.told(SWING_IN - left))


def _leave_it() -> str:
    return say("fixtures.height.stop", "Do not lower it. Ask the building department.")


def _height(word: str, value: Fraction, lowering: Lowering) -> tuple[int, str]:
    least = {"room": ROOM_IN, "bath": BATH_IN, "beam": BEAM_IN, "slope": SLOPE_IN}[word]
    after = value - lowering.drop_in
    at = say(
        "fixtures.height.down", "It comes down to {height}; the least is {least}.",
        height=lowering.told(max(after, Fraction(0))), least=lowering.limit(least, lowering.told(Fraction(least))),
    )  # fmt: skip
    if after < least:
        return STOPS, at + " " + _leave_it()
    if word == "slope":
        half = say(
            "fixtures.height.slope", "Half of the required floor must have {height} as well: measure that too.",
            height=lowering.limit(ROOM_IN, "7 ft"),
        )  # fmt: skip
        return FITS, at + " " + half
    return FITS, at + " " + say("fixtures.height.fits", "Local editions differ: ask where it is near.")


def ceiling_height(lowering: Lowering) -> tuple[bool, str]:
    """Return whether the ceiling itself stays as high as a room or hall must, and what to say of it. Source: IRC R305.1."""
    least = lowering.limit(ROOM_IN, lowering.told(Fraction(ROOM_IN)))
    if lowering.after_in >= ROOM_IN:
        english = "The least for a room or hall is {least}; local editions differ."
        return True, say("fixtures.ceiling.fits", english, least=least)
    told = [say("fixtures.ceiling.under", "That is under {least}, the least for a room or hall.", least=least)]
    if lowering.after_in >= BATH_IN:
        told.append(say("fixtures.ceiling.bath", "Only a bath or laundry may be so low."))
    return False, " ".join(told + [_leave_it()])


def _flange(lowering: Lowering) -> str:
    return say(
        "fixtures.register.fits",
        "Its flange takes up {depth} with longer screws.",
        depth=lowering.told(lowering.drop_in),
    )


def _cord(value: Fraction, lowering: Lowering) -> tuple[int, str]:
    left = value - lowering.drop_in
    if left > 0:
        english = "Its end comes down to {height}. Shorten it where heads pass."
        return FITS, say("fixtures.cord.fits", english, height=lowering.told(left))
    drop = lowering.told(lowering.drop_in)
    return NEEDS_WORK, say("fixtures.cord.work", "It must be shortened by {length}.", length=drop)


def _refit(word: str, lowering: Lowering) -> str:
    drop = lowering.told(lowering.drop_in)
    told = {
        "smoke": say(
            "fixtures.refit.smoke",
            "Take it down, hang a battery alarm meanwhile, and refit and test it the day the new face is dry: {clear} from bath doors, registers and fan blades.",
            clear=lowering.limit(ALARM_CLEAR_FT * measure.INCHES_PER_FOOT, str(ALARM_CLEAR_FT) + " ft"),
        ),
        "co": say(
            "fixtures.refit.co",
            "Take it down, hang a battery alarm meanwhile, and refit and test it the day the new face is dry, where its own manual says.",
        ),
        "register": say(
            "fixtures.refit.register", "Its boot needs an extension of {depth}, sealed to the new face.", depth=drop
        ),
        "hatch": say(
            "fixtures.refit.hatch", "Its stop needs packing of {depth}, and new trim. Seal and insulate the lid.", depth=drop
        ),
        "skylight": say(
            "fixtures.refit.skylight", "The edge of its well needs trim or corner bead {depth} lower, and a return of new board.", depth=drop
        ),
        "crown": say(
            "fixtures.refit.crown", "Take it down, number the pieces, and refit them {depth} lower. Look for lead paint first.", depth=drop
        ),
    }  # fmt: skip
    return told[word]
