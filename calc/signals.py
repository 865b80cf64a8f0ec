"""Signal words and the cautions of the trade.

The four signal words and what each means follow ANSI Z535.6 (product safety information in manuals):
DANGER will kill or maim, WARNING can, CAUTION can hurt lightly, NOTICE is about property. A caution
says the hazard, what it does and how to avoid it, in three short sentences.
"""

from dataclasses import dataclass

SIGNAL_WORDS = ("DANGER", "WARNING", "CAUTION", "NOTICE")


@dataclass(frozen=True)
class Caution:
    """One caution: `signal` is one of `SIGNAL_WORDS`; `source` is an id of `calc.sources`."""

    id: str
    signal: str
    hazard: str
    consequence: str
    avoidance: str
    source: str

    @property
    def text(self) -> str:
        """The whole caution as one paragraph."""
        return self.hazard + " " + self.consequence + " " + self.avoidance


CAUTIONS = (
    Caution(
        "asbestos-first",
        "DANGER",
        "Sprayed texture may hold asbestos.",
        "Fibers you cannot see cause lung disease and cancer, years later.",
        "Stop: have an accredited inspector sample it before anyone wets, scrapes, sands, screws, coats or glues to it.",
        "epa-asbestos-in-your-home",
    ),
    Caution(
        "asbestos-layers",
        "WARNING",
        "A result holds only for the areas and layers that were sampled.",
        "Joint compound and board under the texture can hold asbestos when the texture does not.",
        "Read which layers and rooms the report names, and have the rest sampled.",
        "common-practice",
    ),
    Caution(
        "lead-paint",
        "WARNING",
        "Paint in a home built before 1978 may hold lead.",
        "Its dust harms the brain, most of all in children.",
        "Have the paint tested; for paid work hire a firm certified for lead-safe work.",
        "cfr-745-83",
    ),
    Caution(
        "dust-silica",
        "WARNING",
        "Sanding compound throws fine dust that can hold silica.",
        "Breathed day after day it scars the lungs.",
        "Sand with a vacuum head or wet, and wear a fitted respirator.",
        "cfr-1926-1153",
    ),
    Caution(
        "live-wires",
        "DANGER",
        "Water and metal tools reach live wires at ceiling boxes.",
        "A shock can kill, or throw you off the ladder.",
        "Turn the circuit off, lock it, and prove it dead at the box before you start.",
        "common-practice",
    ),
    Caution(
        "fall-ladder",
        "WARNING",
        "Overhead work pulls you off balance on a ladder or platform.",
        "A fall from a few feet can kill.",
        "Keep both feet inside the rails, never stand on the top two steps, and move the ladder instead of reaching.",
        "cfr-1926-1053",
    ),
    Caution(
        "ceiling-load",
        "DANGER",
        "A ceiling that sags, is wet or moves under your hand may come down.",
        "A falling ceiling crushes whoever is under it.",
        "Stop: add nothing to it, keep people out, and have its fixing checked first.",
        "common-practice",
    ),
    Caution(
        "added-load",
        "DANGER",
        "This much wet compound is heavier than what a maker lets 1/2 in ceiling board carry.",
        "The board may sag or pull off its fasteners and fall.",
        "Stop: choose a lighter compound or another way, or ask an engineer first.",
        "usg-ceiling-load",
    ),
    Caution(
        "unvented-heater",
        "WARNING",
        "A heater that burns gas or oil in the room gives off carbon monoxide and water.",
        "The gas kills without a smell, and the water slows the drying.",
        "Use electric heat or a vented heater, and keep a carbon monoxide alarm running.",
        "common-practice",
    ),
    Caution(
        "cold-compound",
        "NOTICE",
        "Under 55 °F compound dries badly.",
        "It may freeze, crack or lose its bond.",
        "Warm the room to 55 °F or more before you start, and hold it there until the coat is dry.",
        "usg-temperature",
    ),
    Caution(
        "thick-fill",
        "NOTICE",
        "Drying compound laid thick shrinks and cracks.",
        "The cracks show through the next coat.",
        "Fill deep texture with setting compound, or in several thin coats, each dry before the next.",
        "common-practice",
    ),
)


def caution(caution_id: str) -> Caution:
    """Return the caution with that id; raises KeyError for an id that is not in `CAUTIONS`."""
    for one in CAUTIONS:
        if one.id == caution_id:
            return one
    raise KeyError(caution_id)


def in_order(cautions: tuple[Caution, ...]) -> tuple[Caution, ...]:
    """Return cautions with the gravest signal word first, each once, otherwise in the order given."""
    ordered = []
    for word in SIGNAL_WORDS:
        for one in cautions:
            if one.signal == word and one not in ordered:
                ordered.append(one)
    return tuple(ordered)
