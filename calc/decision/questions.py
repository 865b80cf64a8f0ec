"""What is asked about a ceiling before a way is chosen: the eight ways, the questions with their answers, and what to do
to find each answer out. Data only; `calc.decision.rules` says what an answer does to a way."""

from dataclasses import dataclass

from calc.common.inputs import BUILDING, PAINT_TEST, PLACE, RATED
from calc.core.fields import Field
from calc.evidence.limits import PLACES

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
    """One thing to do next. `touches` is True where it disturbs the texture: it is never told before the result is in.
    `first` is True where it keeps people from harm now: it is told as soon as a rule that names it stands."""

    id: str
    text: str
    touches: bool = False
    first: bool = False


ACTIONS = (
    Action("get-out", "Get everyone out from under it, and keep the room shut.", first=True),
    Action("keep-out", "Keep out of the room. Do not sweep or vacuum what fell. Call an accredited inspector.", first=True),
    Action("power-off", "Turn that room's circuits off at the panel, from a dry place. If you cannot, call an electrician.", first=True),
    Action("stop-water", "Shut the water off, from outside that room.", first=True),
    Action("prop", "Have somebody qualified prop it. Until a laboratory has cleared it, that is a licensed asbestos contractor.", first=True),
    Action("stay-below", "Stay out of the attic. Have an accredited asbestos inspector settle what the loose pebbles are.", first=True),
    Action("keep-children-out", "Keep children and pregnant women out of the work area. Dust wipes must pass before they come back.", first=True),
    Action("call-licensed", "Leave it alone, keep people out if it falls, and call a licensed asbestos contractor."),
    Action("count-layers", "Leave it alone. Ask the laboratory to count each layer, and the state office which rules hold."),
    Action("sample", "Have an accredited inspector sample this ceiling, layer by layer. Not you: taking a sample breaks the texture."),
    Action("sample-this", "Have this very ceiling sampled. A report on another room says nothing of it."),
    Action("sample-layers", "Have each layer sampled and told by itself: texture, compound, board."),
    Action("read-report", "Read in the report which rooms and which layers it names."),
    Action("check-fixing", "Have a builder or an engineer look at its fixing before anybody works under it."),
    Action("look-again", "One of two answers is wrong. Look again, and put it right."),
    Action("ask-offices", "Ask the state and the city which asbestos and lead rules hold. Write down who said what."),
    Action("stop-leak", "Find the leak and have it stopped. Let the ceiling dry, then look again."),
    Action("fix-board", "Have what is loose screwed back to the joists or taken down, with the prop still in place.", True),
    Action("look-floor", "Look from a doorway, with a light held along the ceiling: sags, stains, loose places, cracks, sprinkler heads."),
    Action("prove-dry", "Find what made each old stain, and see that it was cured. Have the dryness of the board looked at from above."),
    Action("look-heat", "Look for a thermostat without a heater, pipes that go up, a label at the panel. Ask who built it."),
    Action("ask-heating", "Have an electrician or a heating contractor find it, switch it off, prove it dead and mark it."),
    Action("ask-sprinkler", "Ask a licensed sprinkler contractor how each head is kept clear, or who moves it."),
    Action("look-hatch", "Look from the attic hatch only, and do not go up. If loose pebbles lie there, shut it again."),
    Action("ask-owner-first", "Ask the owner, or the owners' association, first and in writing."),
    Action("ask-year", "Look for the year in the deed, on a permit or on the meter box."),
    Action("look-paint", "Look for a skin, a shine and rounded tips. Do not touch it to find out."),
    Action("test-paint", "Have the paint tested for lead by a certified inspector."),
    Action("lead-safe", "Plan lead-safe work. For paid work or a rented home, hire a firm certified for it."),
    Action("look-above", "Look at what lies above it: from the rooms there, or from the attic hatch without going up."),
    Action("look-edge", "Look at an edge that stands open, at the hatch or a register: which layers, and how many."),
    Action("find-joists", "Find how far apart the joists are: from the hatch, or from a drawing. Make no hole."),
    Action("ask-building", "Ask the building department what this ceiling must be made of."),
    Action("ask-builder", "Have a builder or an engineer look at what moves, and at what carries the ceiling."),
    Action("hand-test", "Press a flat hand to it every few feet, and see what falls.", True),
    Action("patch-test", "Mist one square foot in a corner, wait 15 minutes, and try a knife. Then try a dry square foot.", True),
    Action("weigh-coat", "Work out the weight of the first coat. Over the limit, ask an engineer."),
    Action("choose-board", "Plan on board of 1/2 in or more, laid across the joists."),
    Action("knock-down", "Wet deep texture and knock it down, so that board or furring lies tight.", True),
    Action("seal-first", "Seal it first with a sprayed oil- or shellac-base primer, and try a small place.", True),
    Action("measure", "Measure from floor to ceiling at the lowest places."),
    Action("list-fixtures", "List what is fixed to the ceiling or stands near it: lights, fans, alarms, sprinklers, doors."),
    Action("ask-owner", "Ask the owner what finish is wanted, how the light falls, and what happens to the floor."),
    Action("ask-household", "Ask who lives there, who has weak lungs, and where they sleep meanwhile."),
    Action("say-who", "Settle who does the work, and for whom."),
    Action("plan-dust", "Plan for the dust: a HEPA vacuum at the tool, the room closed off, fitted respirators."),
    Action("rails", "Plan a platform with rails: this is work over 10 ft."),
    Action("choose", "Choose among the open ways. Read its page to the end before you start."),
    Action("choose-after", "Do first what each way asks for. Then choose one, and read its page to the end."),
    Action("wait", "Until then leave the ceiling alone."),
)  # fmt: skip
"""In the order in which they must be done; people first, then the laboratory, then everything that needs its result."""


@dataclass(frozen=True)
class Question:
    """One question. `field` declares it; `unknown` is the sentence that stands while the answer is not known; `action` is
    the id of what to do to find it out; `changes` says what can bring about another answer: 'work', 'test', or '' where it
    is as it is, so that nobody is invited to answer otherwise."""

    field: Field
    unknown: str
    action: str
    changes: str = ""

    @property
    def answers(self) -> tuple[tuple[str, str], ...]:
        """Every answer as (value, label), not known first; a place is one that the book knows, or elsewhere."""
        if self.field.kind == "choice":
            return self.field.choices
        known = tuple([(name, name) for name, _ in PLACES])
        return ((UNKNOWN, "Not given"),) + known + ((ELSEWHERE, "A place that this book holds no rules for"),)


def _ask(
    name: str,
    label: str,
    help_text: str,
    why: str,
    unknown: str,
    action: str,
    *answers: tuple[str, str],
    changes: str = "",
) -> Question:
    first = () if answers[0][0] == UNKNOWN else ((UNKNOWN, "Not known"),)
    field = Field(
        name=name, label=label, kind="choice", unit="", help=help_text, example=answers[-1][0], default=UNKNOWN,
        choices=first + answers, why=why,
    )  # fmt: skip
    return Question(field, unknown, action, changes)


QUESTIONS = (
    _ask(
        "asbestos_result", "What did the laboratory find?", "The worst layer counts.",
        "No look and no year tells whether asbestos is in it. A laboratory does.",
        "No laboratory result is in hand.", "sample",
        (UNKNOWN, "Not tested, or not known"), ("none", "No asbestos"), ("trace", "Some, at most 1 %"), ("found", "More than 1 %"),
        changes="test",
    ),
    _ask(
        "result_rooms", "Which ceiling does the report name?", "It must name this room and this texture.",
        "A result holds only for what was sampled.",
        "It is not known which ceiling the report names.", "read-report",
        ("this", "This ceiling"), ("other", "Another room or another texture"), changes="test",
    ),
    _ask(
        "result_layers", "Which layers does it name?", "Look for a line for each: on board the texture, compound and board; on plaster each coat of it; on concrete any coat under the texture.",
        "Layers under the texture can hold asbestos when the texture does not.",
        "It is not known which layers the report names.", "read-report",
        ("all", "Every layer down to the base, each by itself"), ("texture", "The texture alone"), ("mixed", "Layers mixed in one sample"),
        changes="test",
    ),
    _ask(
        "sag", "Does it sag or bulge?", "Look along it from a doorway. Do not stand under it.",
        "A ceiling that sags can come down on people.",
        "It is not known whether it sags.", "look-floor",
        ("no", "No, it is level"), ("yes", "Yes"), changes="work",
    ),
    _ask(
        "stains", "Is it stained or damp?", "Brown rings, dark places, mold, drips.",
        "Wet board is weak, and a stain comes through paint.",
        "It is not known whether it is damp.", "look-floor",
        ("none", "No stain"), ("old", "An old stain, dry, the leak is cured"), ("wet", "Damp, or the stain grows"), changes="work",
    ),
    _ask(
        "loose_board", "Is board or plaster loose?", "Look for open joints, nail heads in a row, an edge that hangs.",
        "What is loose must be fixed before anything goes on it.",
        "It is not known whether the board is tight.", "look-floor",
        ("tight", "It is tight"), ("loose", "Some of it is loose"), changes="work",
    ),
    _ask(
        "cracks", "Are there cracks?", "Fine ones follow the joints. Wide ones tell of movement.",
        "A crack that grows comes back through any finish.",
        "It is not known whether it is cracked.", "look-floor",
        ("none", "No"), ("fine", "Fine ones, along joints"), ("wide", "Wide ones, or they grow"), changes="work",
    ),
    _ask(
        "heated_ceiling", "Is there heat in the ceiling itself?", "Cable, foil or water tubes in the board or plaster.",
        "A screw or a knife in a heating cable kills. In a tube it floods the room.",
        "It is not known whether heating cable or tubes run in it.", "look-heat",
        ("no", "No"), ("yes", "Yes, cable, foil or tubes"),
    ),
    _ask(
        "loose_fill", "What insulation lies above it?", "Look from the hatch only. Do not go up.",
        "Loose pebbles may be vermiculite, and that may hold asbestos.",
        "It is not known what insulation lies above it.", "look-hatch",
        ("none", "None"), ("other", "Batts, wool or fluff"), ("pebbles", "Loose pebbles, gray, brown or gold"),
    ),
    _ask(
        "sprinklers", "Are there sprinkler heads in it?", "Or flat caps that hide them.",
        "A head that is painted, struck or set too deep may not open in a fire.",
        "It is not known whether sprinkler heads hang in it.", "look-floor",
        ("no", "No"), ("yes", "Yes"),
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
    Question(PAINT_TEST, "No test of the paint for lead is in hand.", "test-paint", "test"),
    _ask(
        "times_painted", "Was the texture painted?", "Look for a skin, for shine, and for rounded tips.",
        "Paint locks the texture in, and water out.",
        "It is not known whether it was painted.", "look-paint",
        ("never", "Never"), ("once", "Once"), ("often", "More than once"), ("painted", "Yes, how often is not known"),
    ),
    _ask(
        "sheen", "Does the surface shine?", "Hold a light beside it.",
        "Only paint shines, and a new coat slides off it.",
        "It is not known whether it shines.", "look-paint",
        ("flat", "No, it is flat"), ("gloss", "Yes, it shines"), changes="work",
    ),
    _ask(
        "texture_depth", "How deep is the texture?", "Judge it by eye, from the side. Do not touch it.",
        "Deep texture takes a heavy coat, clogs a disc and holds board off.",
        "It is not known how deep the texture is.", "look-paint",
        ("thin", "Up to 1/4 in"), ("deep", "More than 1/4 in"),
    ),
    _ask(
        "hand_test", "What does a light touch do?", "Touch it only once the laboratory has cleared it. Until then look for crumbs on the floor.",
        "What crumbles cannot carry a coat.",
        "It is not known whether the texture holds.", "hand-test",
        ("holds", "It holds"), ("falls", "It crumbles or falls"), changes="test",
    ),
    _ask(
        "patch_test", "What did one square foot do?", "Only once the laboratory has cleared it: mist it, wait 15 minutes, try a knife. Then try it dry.",
        "One square foot tells more than any rule about paint and age.",
        "No test patch was made.", "patch-test",
        ("wet", "Soft when wet, firm when dry"), ("dry", "Comes off dry, water does not help"), ("both", "Comes off both ways"), ("hard", "Stays like stone"),
        changes="test",
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
    _ask(
        "joists", "How far apart are the joists?", "Middle to middle.",
        "Ceiling board is made for joists 24 in apart at most.",
        "It is not known how far apart the joists are.", "find-joists",
        ("close", "16 in or less"), ("apart", "Over 16 in, up to 24 in"), ("far", "Over 24 in"),
    ),
    _ask(
        "layers_up", "How many layers are up already?", "Board over an older ceiling counts as two.",
        "Each layer weighs on the joists, and takes longer screws.",
        "It is not known how many layers are up already.", "look-edge",
        ("one", "One"), ("more", "Two or more"),
    ),
    _ask(
        "joists_carry", "Can the joists carry more?", "A builder or an engineer tells by their size, span and state.",
        "New board adds about two pounds a square foot. Joists that bend let go.",
        "It is not known whether the joists can carry more.", "ask-builder",
        ("yes", "Yes, somebody qualified looked"), ("no", "No, or they bend"), changes="test",
    ),
    Question(RATED, "It is not known whether the ceiling is rated for fire or braces the house.", "ask-building"),
    _ask(
        "who_works", "Who will do the work?", "And for whom.",
        "Rules for paid work and for employees ask for more. The dust is the same.",
        "It is not known who does the work.", "say-who",
        ("owner", "The owner, in the home lived in"), ("renter", "A renter, in the home rented"), ("landlord", "The owner, in a home let to others"), ("firm", "A paid firm"), ("employee", "Employees of mine"),
    ),
    Question(BUILDING, "It is not known what kind of building it is.", "say-who"),
    Question(PLACE, "No state or city was given.", "ask-offices"),
    _ask(
        "height", "How high is the ceiling?", "At its lowest place, finished floor to texture.",
        "Rooms need their height by code, and high work needs rails.",
        "The height is not known.", "measure",
        ("low", "Under 7 ft 1 in"), ("spare", "7 ft 1 in to 7 ft 3 in"), ("usual", "7 ft 3 in to 10 ft"), ("high", "Over 10 ft"),
    ),
    _ask(
        "may_drop", "May the ceiling come lower?", "Think of doors, lights, fans, alarms, sprinklers, cupboards.",
        "New board or panels bring it down, and all that is fixed to it.",
        "It is not known whether it may come lower.", "list-fixtures",
        ("yes", "Yes, all of it"), ("no", "No, something must stay where it is"), changes="work",
    ),
    _ask(
        "occupied", "Do people live there meanwhile?", "Or work, or sleep.",
        "Dust and damp go where people are.",
        "It is not known whether people live there meanwhile.", "ask-household",
        ("no", "No, it stands empty"), ("yes", "Yes"), changes="work",
    ),
    _ask(
        "household", "Who lives there?", "Small or unborn children, and whoever has a weak chest, count first.",
        "Dust that a grown-up coughs out can harm a child for life.",
        "It is not known who lives there.", "ask-household",
        ("adults", "Grown-ups in good health"), ("risk", "Children, a pregnant woman, or somebody with weak lungs"),
    ),
    _ask(
        "floors", "What happens to the floor?", "Under this ceiling.",
        "Wet work drips.",
        "It is not known what happens to the floor.", "ask-owner",
        ("replaced", "It is replaced anyway"), ("covered", "It stays, and can be covered"), ("dry", "It must not get wet at all"), changes="work",
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
