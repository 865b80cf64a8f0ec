"""What each way brings with it beside hours and days, as rows of data: dust, water, noise, what it lowers, moves and gets wrong."""

from dataclasses import dataclass

from calc.text.door import say

MUCH, SOME, LITTLE, NONE = 0, 1, 2, 3
"""How much of something there is: common practice, no source."""

OUT_FROM = ("removal", "cover", "cover-floor")
"""Stages with which a room, or for the first all of them, is taken out of use: the first of these that a way has."""
BACK_AFTER = ("wipe-again", "uncover-floor")
"""Stages after which it is slept in again: the first of these that a way has."""


@dataclass(frozen=True)
class Side:
    """One way beside the others. `id` is that of `calc.decision.questions.WAYS`, `short` its name in a drawing; `dust`, `water` and
    `noise` tell how much there is; `covering` is an id of `calc.common.drops`, '' where the ceiling stays where it is, and
    `lowers` says what lowers it; `refit` is what has to be refitted or moved; `see` and `why` are a trouble of the way's own page."""

    id: str
    short: str
    dust: int
    water: int
    noise: int
    covering: str
    lowers: str
    refit: str
    see: str
    why: str


SIDES = (
    Side("wet-scrape", "Wet scrape", SOME, MUCH, LITTLE, "", "",
         "Lights, fans and alarms come down and go back. Furniture goes out, or stands covered.",
         "The paper tears", "The knife is steep or sharp at its corners, or the board is soaked."),
    Side("dry-scrape", "Dry scrape", MUCH, NONE, MUCH, "", "",
         "Lights, fans and alarms come down and go back. Furniture goes out, or stands covered.",
         "A cloud hangs under the ceiling", "The hood does not follow the blade, or the bag is full."),
    Side("sand", "Sand", MUCH, NONE, MUCH, "", "",
         "Lights, fans and alarms come down and go back. Furniture goes out, or stands covered.",
         "The disc clogs at once", "Soft texture or several coats of paint."),
    Side("skim-over", "Skim over", SOME, SOME, LITTLE, "skim", "by the skim coat with its texture",
         "Lights, fans and alarms come down and go back; boxes end a little deep. Furniture goes out, or stands covered.",
         "Texture comes down on the knife", "It was not sealed, or it never held."),
    Side("board-over", "Board over", SOME, LITTLE, MUCH, "board-1/2", "by board of 1/2 in",
         "Boxes are brought out to the new face. Fans, sprinkler heads, crown, tall doors and cupboards are looked at. Rooms are cleared for sheets.",
         "Screws spin and do not pull", "They miss the joist or are too short."),
    Side("panel-over", "Panel over", LITTLE, NONE, MUCH, "tile-furring", "by furring and tile",
         "Boxes are brought out to the new face. Fans, sprinkler heads, crown, tall doors and cupboards are looked at. Rooms are cleared.",
         "Joints wander", "The room is out of square and the lines were not."),
    Side("leave-and-seal", "Leave, seal", LITTLE, SOME, LITTLE, "", "",
         "Lights, fans and alarms come down and go back. Furniture goes out, or stands covered. The texture stays.",
         "Texture comes off on the roller", "It took up water, or was rolled twice."),
    Side("licensed-removal", "Licensed", MUCH, MUCH, MUCH, "", "",
         "All goes out of the rooms as the contractor says. Lights, fans and alarms go back at the end.",
         "Dust in the next room", "The seal or the suction failed."),
)  # fmt: skip
"""In the order of the ways."""


def amount_told(amount: int) -> str:
    """Return how much there is, in a word."""
    return (
        say("side.much", "much"), say("side.some", "some"), say("side.little", "little"), say("side.none", "none"),
    )[amount]  # fmt: skip


def short_told(one: Side) -> str:
    """Return the name of the way as a drawing has it."""
    return say("side." + one.id + ".short", one.short)


def lowers_told(one: Side) -> str:
    """Return what lowers the ceiling; '' where nothing does."""
    return say("side." + one.id + ".lowers", one.lowers) if one.lowers else ""


def refit_told(one: Side) -> str:
    """Return what has to be refitted or moved."""
    return say("side." + one.id + ".refit", one.refit)


def see_told(one: Side) -> str:
    """Return what is seen when it goes wrong."""
    return say("side." + one.id + ".see", one.see)


def why_told(one: Side) -> str:
    """Return why it goes wrong."""
    return say("side." + one.id + ".why", one.why)


def trouble_told(one: Side) -> str:
    """Return what can go wrong: what is seen, and why."""
    return say("side.trouble", "{see}. {why}", see=see_told(one), why=why_told(one))


def texts(sides: tuple[Side, ...]) -> list[tuple[str, str]]:
    """Return the (key, English) pairs of all rows."""
    found = []
    for one in sides:
        key = "side." + one.id
        found += [(key + ".short", one.short), (key + ".lowers", one.lowers), (key + ".refit", one.refit)]
        found += [(key + ".see", one.see), (key + ".why", one.why)]
    return [(key, english) for key, english in found if english]
