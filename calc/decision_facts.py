"""What is asked about a ceiling before a way is chosen: the eight ways, the questions with their answers, and what to do
to find each answer out. Data only; `calc.decision_rules` says what an answer does to a way."""

from dataclasses import dataclass

from calc.fields import Field
from calc.inputs import BUILDING, PAINT_TEST, PLACE, RATED
from calc.rules import PLACES

UNKNOWN = "unknown"
ELSEWHERE = "elsewhere"  # a place was given, and this book holds no rules for it

WAYS = (
    ("wet-scrape", "Wet scrape"),
    ("dry-scrape", "Dry scrape into a vacuum"),
    ("sand", "Sand with a vacuum"),
    ("skim-over", "Skim over"),
    ("board-over", "Board over"),
    ("panel-over", "Panel over"),
    ("leave-and-seal", "Leave and seal"),
    ("licensed-removal", "Licensed removal"),
)
"""(id, name) of every way, in the order that they are shown; the id is also the name of its page."""


@dataclass(frozen=True)
class Action:
    """One thing to do next. `touches` is True where it disturbs the texture: it is never told before the result is in."""

    id: str
    text: str
    touches: bool = False


ACTIONS = (
    Action("get-out", "Get everyone out from under it, and keep the room shut."),
    Action("keep-out", "Keep out of the room. Do not sweep or vacuum what fell. Call an accredited inspector."),
    Action("call-licensed", "Leave it alone, keep people out if it falls, and call a licensed asbestos contractor."),
    Action("count-layers", "Leave it alone. Ask the laboratory to count each layer, and the state office which rules hold."),
    Action("sample", "Have an accredited inspector sample this ceiling, layer by layer. Not you: taking a sample breaks the texture."),
    Action("sample-this", "Have this very ceiling sampled. A report on another room says nothing of it."),
    Action("sample-layers", "Have each layer sampled and told by itself: texture, compound, board."),
    Action("read-report", "Read in the report which rooms and which layers it names."),
    Action("look-again", "One of two answers is wrong. Look again, and put it right."),
    Action("ask-offices", "Ask the state and the city which asbestos and lead rules hold. Write down who said what."),
    Action("stop-leak", "Find the leak and have it stopped. Let the ceiling dry, then look again."),
    Action("fix-board", "Have what is loose propped, then screwed back to the joists or taken down.", True),
    Action("look-floor", "Look from the floor, with a light held along the ceiling: sags, stains, loose places, cracks."),
    Action("ask-year", "Look for the year in the deed, on a permit or on the meter box."),
    Action("look-paint", "Look for a skin, a shine and rounded tips. Do not touch it to find out."),
    Action("test-paint", "Have the paint tested for lead by a certified inspector."),
    Action("lead-safe", "Plan lead-safe work. For paid work or a rented home, hire a firm certified for it."),
    Action("look-above", "Look from above, in the attic or the rooms there, at what lies on the ceiling."),
    Action("look-edge", "Look at an edge from above or at an open register: board, plaster or concrete."),
    Action("ask-building", "Ask the building department what this ceiling must be made of."),
    Action("ask-builder", "Have a builder or an engineer look at what moves, and at what carries the ceiling."),
    Action("hand-test", "Press a flat hand to it every few feet, and see what falls.", True),
    Action("patch-test", "Mist one square foot in a corner, wait 15 minutes, and try a knife. Then try a dry square foot.", True),
    Action("seal-first", "Seal it first with a sprayed oil- or shellac-base primer, and try a small place.", True),
    Action("measure", "Measure from floor to ceiling at the lowest places."),
    Action("list-fixtures", "List what is fixed to the ceiling or stands near it: lights, fans, alarms, sprinklers, doors."),
    Action("ask-owner", "Ask the owner what finish is wanted, how the light falls, and what happens to the floor."),
    Action("ask-household", "Ask who lives there, who has weak lungs, and where they sleep meanwhile."),
    Action("say-who", "Settle who does the work, and for whom."),
    Action("rails", "Plan a platform with rails: this is work over 10 ft."),
    Action("choose", "Choose among the open ways. Read its page to the end before you start."),
    Action("wait", "Until then leave the ceiling alone."),
)  # fmt: skip
"""In the order in which they must be done; people first, then the laboratory, then everything that needs its result."""


@dataclass(frozen=True)
class Question:
    """One question. `field` declares it; `unknown` is the sentence that stands while the answer is not known; `action` is
    the id of what to do to find it out."""

    field: Field
    unknown: str
    action: str

    @property
    def answers(self) -> tuple[tuple[str, str], ...]:
        """Every answer as (value, label), not known first; a place is one that the book knows, or elsewhere."""
        if self.field.kind == "choice":
            return self.field.choices
        known = tuple([(name, name) for name, _ in PLACES])
        return ((UNKNOWN, "Not given"),) + known + ((ELSEWHERE, "A place that this book holds no rules for"),)


def _ask(
    name: str, label: str, help_text: str, why: str, unknown: str, action: str, *answers: tuple[str, str]
) -> Question:
    first = () if answers[0][0] == UNKNOWN else ((UNKNOWN, "Not known"),)
    field = Field(
        name=name, label=label, kind="choice", unit="", help=help_text, example=answers[-1][0], default=UNKNOWN,
        choices=first + answers, why=why,
    )  # fmt: skip
    return Question(field, unknown, action)


QUESTIONS = (
    _ask(
        "asbestos_result", "What did the laboratory find?", "The worst layer counts.",
        "No look and no year tells whether asbestos is in it. A laboratory does.",
        "No laboratory result is in hand.", "sample",
        (UNKNOWN, "Not tested, or not known"), ("none", "No asbestos"), ("trace", "Some, at most 1 %"), ("found", "More than 1 %"),
    ),
    _ask(
        "result_rooms", "Which ceiling does the report name?", "It must name this room and this texture.",
        "A result holds only for what was sampled.",
        "It is not known which ceiling the report names.", "read-report",
        ("this", "This ceiling"), ("other", "Another room or another texture"),
    ),
    _ask(
        "result_layers", "Which layers does it name?", "Look for a line each for texture, joint compound and board.",
        "Compound and board under the texture can hold asbestos when the texture does not.",
        "It is not known which layers the report names.", "read-report",
        ("all", "Texture, compound and board, each by itself"), ("texture", "The texture alone"), ("mixed", "Layers mixed in one sample"),
    ),
    _ask(
        "sag", "Does it sag or bulge?", "Look along it from a doorway. Do not stand under it.",
        "A ceiling that sags can come down on people.",
        "It is not known whether it sags.", "look-floor",
        ("no", "No, it is level"), ("yes", "Yes"),
    ),
    _ask(
        "stains", "Is it stained or damp?", "Brown rings, dark places, mold, drips.",
        "Wet board is weak, and a stain comes through paint.",
        "It is not known whether it is damp.", "look-floor",
        ("none", "No stain"), ("old", "An old stain, dry, the leak is cured"), ("wet", "Damp, or the stain grows"),
    ),
    _ask(
        "loose_board", "Is board or plaster loose?", "Look for open joints, nail heads in a row, an edge that hangs.",
        "What is loose must be fixed before anything goes on it.",
        "It is not known whether the board is tight.", "look-floor",
        ("tight", "It is tight"), ("loose", "Some of it is loose"),
    ),
    _ask(
        "cracks", "Are there cracks?", "Fine ones follow the joints. Wide ones tell of movement.",
        "A crack that grows comes back through any finish.",
        "It is not known whether it is cracked.", "look-floor",
        ("none", "No"), ("fine", "Fine ones, along joints"), ("wide", "Wide ones, or they grow"),
    ),
    _ask(
        "sprayed", "When was it sprayed?", "The year of the texture, not of the house.",
        "Old texture more often holds asbestos. But no year rules it out.",
        "It is not known when it was sprayed.", "ask-year",
        ("before-1978", "Before 1978"), ("to-1985", "1978 to 1985"), ("later", "After 1985"),
    ),
    _ask(
        "built", "When was the house built?", "The oldest part counts.",
        "Homes built before 1978 can hold lead paint.",
        "It is not known when the house was built, so it counts as before 1978.", "ask-year",
        ("before-1978", "Before 1978"), ("later", "1978 or later"),
    ),
    Question(PAINT_TEST, "No test of the paint for lead is in hand.", "test-paint"),
    _ask(
        "times_painted", "Was the texture painted?", "Look for a skin, for shine, and for rounded tips.",
        "Paint locks the texture in, and water out.",
        "It is not known whether it was painted.", "look-paint",
        ("never", "Never"), ("once", "Once"), ("often", "More than once"),
    ),
    _ask(
        "sheen", "Does the surface shine?", "Hold a light beside it.",
        "Only paint shines, and a new coat slides off it.",
        "It is not known whether it shines.", "look-paint",
        ("flat", "No, it is flat"), ("gloss", "Yes, it shines"),
    ),
    _ask(
        "hand_test", "What does a light touch do?", "Touch it only once the laboratory has cleared it. Until then look for crumbs on the floor.",
        "What crumbles cannot carry a coat.",
        "It is not known whether the texture holds.", "hand-test",
        ("holds", "It holds"), ("falls", "It crumbles or falls"),
    ),
    _ask(
        "patch_test", "What did one square foot do?", "Only once the laboratory has cleared it: mist it, wait 15 minutes, try a knife. Then try it dry.",
        "One square foot tells more than any rule about paint and age.",
        "No test patch was made.", "patch-test",
        ("wet", "Soft when wet, firm when dry"), ("dry", "Comes off dry, water does not help"), ("both", "Comes off both ways"), ("hard", "Stays like stone"),
    ),
    _ask(
        "material", "What is the ceiling made of?", "Under the texture.",
        "Screws need joists to go into, and plaster hides what holds it.",
        "It is not known what the ceiling is made of.", "look-edge",
        ("board", "Gypsum board"), ("plaster", "Plaster on lath"), ("concrete", "Concrete"),
    ),
    _ask(
        "above", "What is above it?", "Right over this ceiling.",
        "Weight, water and fire rules come from above.",
        "It is not known what is above it.", "look-above",
        ("rooms", "Rooms of the same home"), ("home", "Another home"), ("attic", "An attic with insulation"), ("roof", "The roof, close above"),
    ),
    Question(RATED, "It is not known whether the ceiling is rated for fire or braces the house.", "ask-building"),
    _ask(
        "who_works", "Who will do the work?", "And for whom.",
        "Rules for paid work and for employees ask for more. The dust is the same.",
        "It is not known who does the work.", "say-who",
        ("owner", "The owner, in the home lived in"), ("landlord", "The owner, in a home let to others"), ("firm", "A paid firm"), ("employee", "Employees of mine"),
    ),
    Question(BUILDING, "It is not known what kind of building it is.", "say-who"),
    Question(PLACE, "No state or city was given.", "ask-offices"),
    _ask(
        "height", "How high is the ceiling?", "At its lowest place, finished floor to texture.",
        "Rooms need their height by code, and high work needs rails.",
        "The height is not known.", "measure",
        ("low", "Under 7 ft 3 in"), ("usual", "7 ft 3 in to 10 ft"), ("high", "Over 10 ft"),
    ),
    _ask(
        "may_drop", "May the ceiling come lower?", "Think of doors, lights, fans, alarms, sprinklers, cupboards.",
        "New board or panels bring it down, and all that is fixed to it.",
        "It is not known whether it may come lower.", "list-fixtures",
        ("yes", "Yes, all of it"), ("no", "No, something must stay where it is"),
    ),
    _ask(
        "occupied", "Do people live there meanwhile?", "Or work, or sleep.",
        "Dust and damp go where people are.",
        "It is not known whether people live there meanwhile.", "ask-household",
        ("no", "No, it stands empty"), ("yes", "Yes"),
    ),
    _ask(
        "household", "Who lives there?", "Children, a weak chest, a baby on the way count as weak lungs.",
        "Dust that an adult coughs out can send a child to a doctor.",
        "It is not known who lives there.", "ask-household",
        ("adults", "Grown-ups in good health"), ("risk", "Children, or somebody with weak lungs"),
    ),
    _ask(
        "floors", "What happens to the floor?", "Under this ceiling.",
        "Wet work drips.",
        "It is not known what happens to the floor.", "ask-owner",
        ("replaced", "It is replaced anyway"), ("covered", "It stays, and can be covered"), ("dry", "It must not get wet at all"),
    ),
    _ask(
        "finish_wanted", "Which finish is wanted?", "The look in the end.",
        "Some ways cannot give a smooth ceiling.",
        "It is not known which finish is wanted.", "ask-owner",
        ("smooth", "One smooth face"), ("texture", "Texture may stay or come back"), ("any", "Any that looks clean"),
    ),
    _ask(
        "light", "How does light fall on it?", "Windows up to the ceiling, and lights along it, show every flaw.",
        "Light along a ceiling shows what a lamp below hides.",
        "It is not known how light falls on it.", "ask-owner",
        ("soft", "Soft, from below"), ("raking", "Along the ceiling, from a side"),
    ),
)  # fmt: skip
"""In the order in which they are asked where two are worth the same; what guards people comes first."""


def question(name: str) -> Question:
    """Return the question of that name; raises KeyError for one that is not in `QUESTIONS`."""
    return _BY_NAME[name]


def action(action_id: str) -> Action:
    """Return the action of that id; raises KeyError for one that is not in `ACTIONS`."""
    return _ACTION_BY_ID[action_id]


_BY_NAME = dict([(one.field.name, one) for one in QUESTIONS])
_ACTION_BY_ID = dict([(one.id, one) for one in ACTIONS])
