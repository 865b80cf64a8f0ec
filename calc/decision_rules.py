"""Which answer closes, delays or clouds which way, and why: one row a rule, to be read and added to by whoever knows the
trade.

A rule says: WHEN these answers stand, these WAYS are closed, not known or open only after something, because of this. An
answer that is not known counts as the worst that it can be: a rule that could close a way then makes it 'not known', one
that could delay it makes it 'open after'. Where rules differ, the most careful one holds; no rule opens anything. A rule
for a place names it in its conditions, as those of Colorado do; a new place is first added to `PLACES` in `calc.rules`.
"""

from dataclasses import dataclass

EFFECTS = ("note", "open after", "not known", "closed")
"""From the least to the most careful. A note changes nothing; it is shown beside a way that is open."""


@dataclass(frozen=True)
class DecisionRule:
    """One rule. `when` are (question, answers) pairs that must all stand; `ways` are ids; `effect` one of `EFFECTS`; `says`
    the reason in a sentence; `action` the id of what to do about it, or ''; `caution` an id of `calc.signals`, or '';
    `source` an id of `calc.sources`; `guards` is True where it keeps somebody from harm, so that the proof needs it;
    `clash` where the answers do not go together; `sure` where it fires only once all its answers are known;
    `reviewed_on` and `review_by` are days (ISO 8601)."""

    id: str
    ways: tuple[str, ...]
    when: tuple[tuple[str, tuple[str, ...]], ...]
    effect: str
    says: str
    action: str
    caution: str
    source: str
    guards: bool = False
    clash: bool = False
    sure: bool = False
    reviewed_on: str = "2026-11-26"
    review_by: str = "2027-11-26"


LICENSED = ("licensed-removal",)
SCRAPES = ("wet-scrape", "dry-scrape")
DRY = ("dry-scrape", "sand")
OFF = ("wet-scrape", "dry-scrape", "sand")  # take texture off
LOWER = ("board-over", "panel-over")  # bring the ceiling down
COATS = ("skim-over", "leave-and-seal")  # hold on to the texture itself
DEEP = (
    "wet-scrape",
    "dry-scrape",
    "sand",
    "skim-over",
    "board-over",
    "panel-over",
)  # reach the layers under the texture
TOUCH = (
    "wet-scrape",
    "dry-scrape",
    "sand",
    "skim-over",
    "board-over",
    "panel-over",
    "leave-and-seal",
)  # disturb the texture
WETTER = ("wet-scrape", "skim-over", "board-over", "panel-over", "leave-and-seal")  # can be done with little dust
CLEAN = (("asbestos_result", ("none",)),)
HELD = (("asbestos_result", ("trace", "found")),)

RULES = (
    # Asbestos. For every person and every place.
    DecisionRule("asbestos-found", TOUCH, (("asbestos_result", ("found",)),), "closed",
                 "Asbestos was found. Only a licensed contractor disturbs it.",
                 "call-licensed", "licensed-removal", "cfr-61-141", guards=True),
    DecisionRule("asbestos-trace", TOUCH, (("asbestos_result", ("trace",)),), "closed",
                 "Some asbestos was found. Work rules hold at any content.",
                 "count-layers", "asbestos-trace", "cfr-1926-1101", guards=True),
    DecisionRule("report-elsewhere", TOUCH, CLEAN + (("result_rooms", ("other",)),), "not known",
                 "The report finds none, but in another room or texture. It says nothing of this ceiling.",
                 "sample-this", "asbestos-first", "common-practice", guards=True, clash=True),
    DecisionRule("report-texture-alone", DEEP, CLEAN + (("result_layers", ("texture",)),), "not known",
                 "The report names the texture alone. This way goes into compound and board too.",
                 "sample-layers", "asbestos-layers", "common-practice", guards=True),
    DecisionRule("report-mixed", TOUCH, CLEAN + (("result_layers", ("mixed",)),), "not known",
                 "Layers were mixed in one sample. One of them can hold more than the mix shows.",
                 "sample-layers", "asbestos-layers", "common-practice", guards=True),
    DecisionRule("tried-before-result", TOUCH, (("asbestos_result", ("unknown",)), ("patch_test", ("wet", "dry", "both", "hard"))), "not known",
                 "A patch was tried before any result. Fibers may be in the room.",
                 "keep-out", "asbestos-first", "epa-asbestos-in-your-home", guards=True, sure=True),
    DecisionRule("no-year-settles", TOUCH, (("asbestos_result", ("unknown",)), ("sprayed", ("before-1978", "to-1985", "later"))), "note",
                 "No year settles it: old stock was sprayed for years after the bans.",
                 "", "", "epa-bans", sure=True),
    DecisionRule("nothing-asks-for-it", LICENSED, CLEAN + (("result_rooms", ("this",)), ("result_layers", ("all",))), "note",
                 "Nothing was found in these layers that asks for it. Local rules may.",
                 "", "", "common-practice", sure=True),
    DecisionRule("place-not-checked", LICENSED, HELD + (("place", ("elsewhere",)),), "open after",
                 "Local rules were not checked. They say who must be told, and when.",
                 "ask-offices", "local-rules", "common-practice", guards=True),
    DecisionRule("colorado-trigger", LICENSED, HELD + (("place", ("Colorado",)),), "open after",
                 "Colorado's trigger for single homes is 32 sq ft. Nearly every room is more. Its air division is told first.",
                 "ask-offices", "local-rules", "colorado-reg-8", guards=True),
    DecisionRule("military-barriers", LICENSED, HELD + (("place", ("US military property",)),), "open after",
                 "On US military property critical barriers are asked for above 10 sq ft. Ask the contracting officer first.",
                 "ask-offices", "local-rules", "ufgs-13280a", guards=True),
    DecisionRule("federal-notice", LICENSED, HELD + (("building", ("other",)),), "open after",
                 "Federal notice rules reach 160 sq ft in such a building. The asbestos office is told first.",
                 "ask-offices", "local-rules", "cfr-61-145", guards=True),
    # What holds the ceiling up.
    DecisionRule("sags", TOUCH, (("sag", ("yes",)),), "closed",
                 "It sags. Nothing goes on it, and nobody works under it, until its fixing is checked.",
                 "get-out", "ceiling-load", "common-practice", guards=True),
    DecisionRule("damp", TOUCH, (("stains", ("wet",)),), "closed",
                 "It is damp. Wet board is weak, and nothing goes on it before it is dry.",
                 "stop-leak", "ceiling-load", "common-practice", guards=True),
    DecisionRule("loose", TOUCH, (("loose_board", ("loose",)),), "closed",
                 "Some of it is loose. What is loose carries nothing.",
                 "fix-board", "ceiling-load", "common-practice", guards=True),
    DecisionRule("sags-removal", LICENSED, (("sag", ("yes",)),), "open after",
                 "It sags, so it is propped or checked before a crew stands under it.",
                 "get-out", "ceiling-load", "common-practice", guards=True),
    DecisionRule("damp-removal", LICENSED, (("stains", ("wet",)),), "open after",
                 "It is damp, so the leak is stopped before a crew stands under it.",
                 "stop-leak", "ceiling-load", "common-practice", guards=True),
    DecisionRule("loose-removal", LICENSED, (("loose_board", ("loose",)),), "open after",
                 "Some of it is loose, so the crew is told and props it first.",
                 "fix-board", "ceiling-load", "common-practice", guards=True),
    DecisionRule("wide-cracks", TOUCH, (("cracks", ("wide",)),), "open after",
                 "Wide cracks tell of movement. What moves is found first.",
                 "ask-builder", "", "common-practice", guards=True),
    DecisionRule("fine-cracks", TOUCH, (("cracks", ("fine",)),), "note",
                 "Fine cracks are cut out, taped and filled on the way.",
                 "", "", "common-practice"),
    DecisionRule("old-stain", OFF + COATS, (("stains", ("old",)),), "note",
                 "An old stain is sealed with a stain-blocking primer, or it comes through.",
                 "", "", "common-practice"),
    DecisionRule("under-insulation", ("wet-scrape", "skim-over") + LOWER, (("above", ("attic",)),), "open after",
                 "Insulation lies on the board. Its weight, and that of water, compound or board, add up.",
                 "look-above", "", "usg-ceiling-load", guards=True),
    DecisionRule("under-roof", COATS + LOWER, (("above", ("roof",)),), "open after",
                 "A roof close above can drip or sweat. It is looked at before anything covers the ceiling.",
                 "look-above", "", "common-practice"),
    # Lead.
    DecisionRule("lead-dry", DRY, (("built", ("before-1978",)), ("paint_test", ("lead",))), "closed",
                 "Lead paint was found. Dry scraping and sanding throw its dust.",
                 "lead-safe", "lead-paint", "cfr-745-85", guards=True),
    DecisionRule("lead-wet", WETTER, (("built", ("before-1978",)), ("paint_test", ("lead",))), "open after",
                 "Lead paint was found, so the work is lead-safe work. Paid work and rented homes ask for a certified firm.",
                 "lead-safe", "lead-paint", "cfr-745-83", guards=True),
    DecisionRule("employees-dust", DRY, (("who_works", ("employee",)),), "open after",
                 "An employer keeps silica dust under a limit, and has respirators fitted, before such work starts.",
                 "say-who", "dust-silica", "cfr-1926-1153", guards=True),
    DecisionRule("rented-lead", TOUCH, (("who_works", ("landlord", "firm", "employee")), ("built", ("before-1978",)), ("paint_test", ("unknown",))), "open after",
                 "Paid work in an old home counts its paint as lead paint until a test says otherwise. Rent is pay.",
                 "test-paint", "lead-paint", "cfr-745-82", guards=True, sure=True),
    # How the texture holds.
    DecisionRule("wet-does-nothing", ("wet-scrape",), (("patch_test", ("dry", "hard")),), "closed",
                 "Water does not soften it.",
                 "", "", "common-practice"),
    DecisionRule("dry-does-nothing", ("dry-scrape",), (("patch_test", ("wet", "hard")),), "closed",
                 "It does not come off dry. Force would tear the board.",
                 "", "", "common-practice"),
    DecisionRule("painted-in-sheets", ("wet-scrape",), (("times_painted", ("once", "often")),), "open after",
                 "Painted texture can let go in sheets. It is cut into small areas, and nobody stands under them.",
                 "", "painted-texture", "common-practice", guards=True),
    DecisionRule("paint-clogs", ("sand",), (("times_painted", ("often",)),), "closed",
                 "Several coats of paint melt and clog the disc.",
                 "", "", "common-practice"),
    DecisionRule("crumbles", COATS, (("hand_test", ("falls",)),), "closed",
                 "It crumbles. A coat holds only as well as the texture under it.",
                 "", "", "astm-d1779", guards=True),
    DecisionRule("crumbles-glue", ("panel-over",), (("hand_test", ("falls",)),), "open after",
                 "It crumbles, so nothing is glued. Furring is screwed to the joists.",
                 "", "glue-falls", "astm-d1779", guards=True),
    DecisionRule("bare-drinks", COATS, (("times_painted", ("never",)),), "open after",
                 "Bare texture drinks water and lets go of the board. It is sealed first.",
                 "seal-first", "water-paint", "common-practice", guards=True),
    DecisionRule("shines", COATS, (("sheen", ("gloss",)),), "open after",
                 "Nothing holds on a shine. It is washed and dulled, without dust, first.",
                 "look-paint", "", "common-practice"),
    # What it is part of.
    DecisionRule("no-joists", ("board-over",), (("material", ("concrete",)),), "closed",
                 "Concrete has no joists to screw board to.",
                 "", "", "common-practice", guards=True),
    DecisionRule("concrete-anchors", ("panel-over",), (("material", ("concrete",)),), "open after",
                 "In concrete a professional chooses anchors for weight overhead. Drilling it throws silica.",
                 "ask-builder", "dust-silica", "common-practice", guards=True),
    DecisionRule("plaster-keys", LOWER, (("material", ("plaster",)),), "open after",
                 "Plaster hangs on its keys. They are looked at, and the joists are found, before screws go in.",
                 "ask-builder", "", "common-practice", guards=True),
    DecisionRule("rated", LOWER, (("rated_ceiling", ("yes",)),), "not known",
                 "It is rated for fire or braces the house. It must be built as it was listed.",
                 "ask-building", "rated-ceiling", "irc-r702-3-5", guards=True),
    DecisionRule("rated-texture", OFF + ("skim-over",), (("rated_ceiling", ("yes",)),), "open after",
                 "Sprayed texture can be part of the fire protection. Ask before it goes or is covered.",
                 "ask-building", "rated-ceiling", "common-practice", guards=True),
    DecisionRule("between-homes", LOWER, (("above", ("home",)), ("rated_ceiling", ("no",))), "open after",
                 "A ceiling between two homes is nearly always rated. Have that answer in writing.",
                 "ask-building", "rated-ceiling", "common-practice", guards=True),
    DecisionRule("larger-building", LOWER, (("building", ("other",)),), "open after",
                 "Such buildings ask for permits and listed ceilings.",
                 "ask-building", "", "common-practice", guards=True),
    DecisionRule("over-10-ft", TOUCH + LICENSED, (("height", ("high",)),), "open after",
                 "Over 10 ft the platform needs rails.",
                 "rails", "fall-scaffold", "cfr-1926-451", guards=True),
    DecisionRule("low-room", LOWER, (("height", ("low",)),), "open after",
                 "Rooms need 7 ft, baths 6 ft 8 in. Each lowest place is measured first.",
                 "measure", "", "irc-r305", guards=True),
    DecisionRule("stays-up", LOWER, (("may_drop", ("no",)),), "closed",
                 "Something must stay where it is, and this way brings the ceiling down.",
                 "", "", "common-practice", guards=True),
    DecisionRule("stays-up-skim", ("skim-over",), (("may_drop", ("no",)),), "note",
                 "A skim coat brings the face down by about the depth of the texture.",
                 "", "", "common-practice"),
    # Who is in the house, and what is wanted.
    DecisionRule("weak-lungs-dust", DRY, (("occupied", ("yes",)), ("household", ("risk",))), "closed",
                 "Children or weak lungs are in the house while dust is made.",
                 "ask-household", "dust-silica", "common-practice", guards=True),
    DecisionRule("weak-lungs", WETTER, (("occupied", ("yes",)), ("household", ("risk",))), "open after",
                 "Children or weak lungs sleep elsewhere until the room is wiped and aired.",
                 "ask-household", "", "common-practice", guards=True),
    DecisionRule("lived-in-dust", DRY, (("occupied", ("yes",)),), "open after",
                 "The room is closed off from where people live, with air drawn out of it.",
                 "ask-household", "dust-silica", "common-practice", guards=True),
    DecisionRule("no-wet-floor", ("wet-scrape",), (("floors", ("dry",)),), "closed",
                 "The floor must not get wet, and wet work drips.",
                 "", "", "common-practice"),
    DecisionRule("keeps-texture", ("leave-and-seal",), (("finish_wanted", ("smooth",)),), "closed",
                 "It leaves the texture, and a smooth face is wanted.",
                 "", "", "common-practice"),
    DecisionRule("shows-joints", ("panel-over",), (("finish_wanted", ("smooth",)),), "closed",
                 "Panels and tiles show their joints, and a smooth face is wanted.",
                 "", "", "common-practice"),
    DecisionRule("raking-light", OFF + ("board-over",), (("finish_wanted", ("smooth",)), ("light", ("raking",))), "open after",
                 "Light along the ceiling asks for a skim coat over all of it, level 5. Agree it in writing.",
                 "ask-owner", "", "ga-214"),
    # Answers that do not go together.
    DecisionRule("never-painted-shines", TOUCH, (("times_painted", ("never",)), ("sheen", ("gloss",))), "not known",
                 "Bare texture does not shine. One of the two is wrong.",
                 "look-again", "", "common-practice", clash=True, sure=True),
    DecisionRule("sprayed-before-built", TOUCH, (("sprayed", ("before-1978",)), ("built", ("later",))), "not known",
                 "It cannot have been sprayed before the house was built.",
                 "look-again", "", "common-practice", clash=True, sure=True),
    DecisionRule("crumbles-like-stone", TOUCH, (("hand_test", ("falls",)), ("patch_test", ("hard",))), "not known",
                 "What crumbles at a touch does not stay like stone.",
                 "look-again", "", "common-practice", clash=True, sure=True),
    DecisionRule("late-house-lead", TOUCH, (("built", ("later",)), ("paint_test", ("lead",))), "not known",
                 "Lead paint was found in a house that is said to be of 1978 or later.",
                 "look-again", "lead-paint", "common-practice", guards=True, clash=True, sure=True),
)  # fmt: skip
