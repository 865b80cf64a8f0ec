"""Signal words and the cautions of the trade.

The four signal words and what each means follow ANSI Z535.6 (product safety information in manuals):
DANGER will kill or maim, WARNING can, CAUTION can hurt lightly, NOTICE is about property. A caution
says the hazard, what it does and how to avoid it, in three short sentences.
"""

from dataclasses import dataclass

from calc.evidence.local import CAUTIONS as LOCAL
from calc.text.door import say
from calc.text.language import TEXTS

SIGNAL_WORDS = ("DANGER", "WARNING", "CAUTION", "NOTICE")


@dataclass(frozen=True)
class Caution:
    """One caution: `signal` is one of `SIGNAL_WORDS`; `source` is an id of `calc.evidence.sources`."""

    id: str
    signal: str
    hazard: str
    consequence: str
    avoidance: str
    source: str

    @property
    def word(self) -> str:
        """The signal word as people read it."""
        return say("signal." + self.signal, self.signal)

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
        "Sand wet or with a HEPA vacuum head, and wear an N95 or P100 respirator, fit-tested, on a clean-shaven face.",
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
        "Keep your belt buckle between the rails, never stand on the top two steps, and move the ladder instead of reaching.",
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
        "portable-heater",
        "WARNING",
        "A portable heater near film, cloth or wet work can start a fire or shock you.",
        "A fire at night kills people in their sleep.",
        "Keep it 3 ft clear on dry floor, in a GFCI outlet, with no extension cord, and never run it asleep or away.",
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
    Caution(
        "licensed-removal",
        "DANGER",
        "Asbestos was found in this ceiling.",
        "Whoever disturbs it breathes fibers that kill years later, and spreads them through the house.",
        "Stop: leave it alone, keep people out if it falls, and call a licensed asbestos contractor.",
        "epa-asbestos-in-your-home",
    ),
    Caution(
        "asbestos-trace",
        "WARNING",
        "The laboratory found a little asbestos.",
        "Some federal work rules hold at any content, and one layer can hold more than the mix shows.",
        "Stop: ask the inspector for a count of each layer, and the state office which rules apply.",
        "cfr-1926-1101",
    ),
    Caution(
        "local-rules",
        "WARNING",
        "State and local rules are often stricter than the federal ones.",
        "Work that breaks them can be stopped and fined, and can harm the neighbors.",
        "Ask the state or city asbestos and lead offices before any work.",
        "common-practice",
    ),
    Caution(
        "wet-plastic",
        "WARNING",
        "Wet plastic on a floor is slippery, most of all under a ladder or stilts.",
        "A fall from a low step can break a hip or a skull.",
        "Mop it dry as you go, set ladders on rigid sheets taped over the film and never on bare film, and keep stilts off it.",
        "common-practice",
    ),
    Caution(
        "closed-air",
        "WARNING",
        "Plastic over openings can starve a heater or cover a flame.",
        "Carbon monoxide or fire can follow.",
        "Turn heaters and pilots off before you seal the room, keep plastic off hot parts, and have the gas company or a qualified person light pilots again.",
        "common-practice",
    ),
    Caution(
        "back-draft",
        "DANGER",
        "A machine that sucks air out can pull flue gas back down a chimney.",
        "Carbon monoxide kills without a smell.",
        "Turn off every fuel heater that shares the air, and keep a carbon monoxide alarm running.",
        "common-practice",
    ),
    Caution(
        "heavy-bag",
        "CAUTION",
        "Wet debris is heavier than it looks.",
        "Lifting it hurts the back.",
        "Fill bags part way, tie them, and carry one at a time on a clear path.",
        "common-practice",
    ),
    Caution(
        "wet-load",
        "DANGER",
        "This much water on the board is heavier than what a maker lets a ceiling carry.",
        "The ceiling may come down on whoever is under it.",
        "Stop: use less water and shorter waits, and check the fixing first.",
        "usg-ceiling-load",
    ),
    Caution(
        "painted-texture",
        "CAUTION",
        "Paint keeps water out, and painted texture can let go in sheets when it is wet.",
        "A falling sheet knocks a person off a ladder.",
        "Try one square foot first, stand to the side, and cut the work into small areas.",
        "common-practice",
    ),
    Caution(
        "water-paint",
        "NOTICE",
        "Water paint softens bare texture.",
        "The first wet coat can pull it off the board.",
        "Seal it first with an oil- or shellac-base primer, sprayed and not rolled, and try a small place before the rest.",
        "common-practice",
    ),
    Caution(
        "paint-fumes",
        "WARNING",
        "Solvent primer gives off fumes that burn and make you dizzy.",
        "A spark can set them off; in a closed room they overcome a person.",
        "Put out flames and pilots, move fresh air through, and wear a respirator with organic-vapor cartridges, and whatever more the label asks for.",
        "common-practice",
    ),
    Caution(
        "sprinkler-head",
        "DANGER",
        "A sprinkler that is covered, painted or set too deep may not open in a fire.",
        "People die where sprinklers fail.",
        "Stop: a licensed sprinkler contractor moves, shields or checks every head before the ceiling is lowered, painted or sprayed.",
        "nfpa-13",
    ),
    Caution(
        "electrician",
        "DANGER",
        "Boxes, fans and lights must be refitted to the new face by the rules.",
        "A loose or buried joint starts fires.",
        "Turn the power off, prove it dead, and have an electrician do it where the law says so.",
        "nec-314-20",
    ),
    Caution(
        "alarm-back",
        "WARNING",
        "A house without its smoke and carbon monoxide alarms gives no warning.",
        "People die asleep.",
        "Keep battery alarms running day and night meanwhile, also where one breaker silences linked ones, and refit and test each alarm the day its place is dry.",
        "nfpa-72",
    ),
    Caution(
        "fan-height",
        "WARNING",
        "A lower fan brings its blades nearer to heads and hands.",
        "Turning blades cut.",
        "Keep blades 7 ft or more above the floor; use a flush mount or take the fan away.",
        "ul-507",
    ),
    Caution(
        "stilts",
        "WARNING",
        "Stilts raise your fall, and rails no longer reach your hip.",
        "A fall over a rail or down a stair can kill.",
        "Clear the floor, stay off stairs and wet film, and raise the rails by the height of the stilts.",
        "cfr-1926-451",
    ),
    Caution(
        "fall-scaffold",
        "DANGER",
        "This platform is high enough to kill.",
        "A fall over an open edge breaks backs and skulls.",
        "Put rails on every side, lock the wheels, and get down before it is moved.",
        "cfr-1926-451",
    ),
    Caution(
        "glue-falls",
        "WARNING",
        "Glue holds only as well as what it sticks to.",
        "Tiles that hang on loose paint or texture come down on people.",
        "Glue to clean, sound, dry board only, and leave a test tile up for 48 hours first.",
        "astm-d1779",
    ),
    Caution(
        "mold-damp",
        "NOTICE",
        "Air this damp wets cold walls and windows.",
        "Mold starts within days.",
        "Air or dry the room until the humidity stays under 60 %, and wipe up what drips.",
        "common-practice",
    ),
    Caution(
        "rated-ceiling",
        "DANGER",
        "A ceiling that is rated for fire, or that braces the house, protects the house.",
        "The wrong board or screws take that away, and nobody sees it.",
        "Stop: ask the building department and the designer what it must be made of before anything goes on it.",
        "irc-r702-3-5",
    ),
    Caution(
        "engineer-load",
        "DANGER",
        "This board adds more weight than the limit that you gave.",
        "Joists and their fixing may fail, and the ceiling comes down.",
        "Stop: have an engineer look at the joists before any board goes up.",
        "common-practice",
    ),
    Caution(
        "lift-board",
        "WARNING",
        "A 12 ft sheet of 1/2 in board weighs about 77 lb and catches the wind.",
        "Lifting one overhead tears backs and throws people off ladders.",
        "Carry two to a sheet, use a lift for every sheet, and keep your back straight.",
        "gypsum-weight",
    ),
    Caution(
        "heated-ceiling",
        "DANGER",
        "Heating cable or water tubes may run in this ceiling.",
        "A screw or a knife in a live cable kills; a cut tube floods the room and brings the board down.",
        "Stop: have an electrician or a heating contractor switch it off, prove it dead and mark it first.",
        "common-practice",
    ),
    Caution(
        "loose-fill",
        "DANGER",
        "Loose pebbly insulation may be vermiculite, and may hold asbestos.",
        "Going up there, or opening the ceiling under it, stirs fibers that cause cancer years later.",
        "Stop: look from the hatch only, stay out of the attic, and have an inspector settle it first.",
        "epa-vermiculite",
    ),
) + tuple([Caution(*row) for row in LOCAL])


_ADDED = tuple([row[0] for row in LOCAL])  # in an edition's own words, which no file of texts can know


def caution(caution_id: str) -> Caution:
    """Return the caution with that id; raises KeyError for an id that is not in `CAUTIONS`."""
    for one in CAUTIONS:
        if one.id == caution_id:
            if not TEXTS or one.id in _ADDED:
                return one
            told = [say(key, english) for key, english in _texts(one)]
            return Caution(one.id, one.signal, told[0], told[1], told[2], one.source)
    raise KeyError(caution_id)


def _texts(one: Caution) -> list[tuple[str, str]]:
    key = "caution." + one.id
    return [
        (key + ".hazard", one.hazard),
        (key + ".consequence", one.consequence),
        (key + ".avoidance", one.avoidance),
    ]


def texts() -> list[tuple[str, str]]:
    """Return the (key, English) pairs of the book's own cautions and of every signal word."""
    found = [("signal." + word, word) for word in SIGNAL_WORDS]
    for one in CAUTIONS:
        if one.id not in _ADDED:
            found += _texts(one)
    return found


def in_order(cautions: tuple[Caution, ...]) -> tuple[Caution, ...]:
    """Return cautions with the gravest signal word first, each once, otherwise in the order given."""
    ordered = []
    for word in SIGNAL_WORDS:
        for one in cautions:
            if one.signal == word and one not in ordered:
                ordered.append(one)
    return tuple(ordered)
