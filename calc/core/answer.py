"""What every calculator returns: a number to act on, its working line by line, cautions, a drawing."""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from calc.core.drawing import Drawing, Plan, Plot
from calc.core.fields import Field, Values, told
from calc.evidence.cautions import Caution
from calc.evidence.local import LEFT_OUT
from calc.numbers import words
from calc.text.door import say


@dataclass(frozen=True)
class Line:
    """One line of working.

    `name` is the public key and ends in its unit; `value` [in `unit`] is exact until it is written with
    `places` decimals; `shown` is the value as a person reads it; `rule` says the rule in words,
    `working` the numbers put in; `sources` are ids of `calc.evidence.sources`.
    """

    name: str
    label: str
    value: Fraction
    unit: str
    places: int
    shown: str
    rule: str
    working: str
    sources: tuple[str, ...]


@dataclass(frozen=True)
class Item:
    """One thing of a list that was asked about: `name` says which, `state` the verdict in a word or two,
    `text` what to do and the rule, `sources` are ids of `calc.evidence.sources`; `reasons` are (sentence, source id) pairs that stand
    before the text; `page` is the page that tells more, from the root of the book without its ending; `group` is what it stands
    under with others, '' for none; `cells` are (column, text) pairs of it for a table; `review_by` is the day (ISO 8601) by which somebody
    has to look at its rule again, '' for none; `state_name` is the state as programs know it, '' where no program asks."""

    name: str
    state: str
    text: str
    sources: tuple[str, ...]
    reasons: tuple[tuple[str, str], ...] = ()
    page: str = ""
    cut: bool = False
    group: str = ""
    cells: tuple[tuple[str, str], ...] = ()
    review_by: str = ""
    state_name: str = ""


@dataclass(frozen=True)
class Listing:
    """Sentences in their order under a title, each with the id of its source or ''; `name` is the public key."""

    name: str
    title: str
    rows: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Table:
    """Things side by side, for paper and wide screens: a row each under `heads`, its first cell the name. `name` is the public key.
    All of it stands in the items too, which a narrow screen shows instead."""

    name: str
    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class Branch:
    """What would hold if something that is not known comes out in one way: `name` is the public key, `title` says in which
    way, `text` what to know of it, `items` what each thing would be then. It is no state of anything now."""

    name: str
    title: str
    text: str
    items: tuple[Item, ...]


@dataclass(frozen=True)
class Answer:
    """`figure` and `sentence` are what to act on first; `cautions` come gravest first; `drawing` may be None;
    `items` are the verdicts on a list, in the order given, under `items_title`; `more_drawings` follow the first;
    `listings` stand between the sentence and the items; `asks` are names of inputs worth filling next, the best first;
    `branches` tell what would hold by how an open question comes out; `facts` are (question, answer) pairs that the answer
    went by, where they differ from what was typed; `table` has the items side by side, or None."""

    calculator: str
    inputs: tuple[tuple[str, str], ...]
    figure: str
    figure_label: str
    sentence: str
    lines: tuple[Line, ...]
    cautions: tuple[Caution, ...]
    notes: tuple[str, ...]
    drawing: Drawing | Plan | Plot | None
    items: tuple[Item, ...] = ()
    items_title: str = ""
    more_drawings: tuple[Drawing | Plan | Plot, ...] = ()
    listings: tuple[Listing, ...] = ()
    asks: tuple[str, ...] = ()
    branches: tuple[Branch, ...] = ()
    facts: tuple[tuple[str, str], ...] = ()
    table: Table | None = None


class Calculator:
    """One calculator as the command, the form and the pages see it.

    `fields` declare the inputs; `work_out` turns checked values into an `Answer`; `example` is a filled-in
    set of inputs that the documentation prints; `verb` stands on the form's button; exactly one of the
    inputs in `one_of` must be given; `sources` are those that only some answers cite; `always` are the ids of the cautions
    that stand in every answer, whatever the figures: what an answer has beyond them its own figures raised.
    """

    def __init__(
        self,
        name: str,
        title: str,
        summary: str,
        verb: str,
        fields: tuple[Field, ...],
        work_out: Callable[[Values], Answer],
        example: tuple[tuple[str, str], ...],
        one_of: tuple[str, ...] = (),
        sources: tuple[str, ...] = (),
        always: tuple[str, ...] = (),
    ) -> None:
        key = "calculator." + name
        self.name = name
        self.title = say(key + ".title", title)
        self.summary = say(key + ".summary", summary)
        self.verb = say(key + ".verb", verb)
        self.fields = tuple([told(name, field) for field in fields])
        self.work_out = work_out
        self.example = example
        self.one_of = one_of
        self.sources = sources
        self.always = always

    def texts(self) -> list[tuple[str, str]]:
        """Return the (key, text) pairs of its title, summary and verb."""
        key = "calculator." + self.name
        return [(key + ".title", self.title), (key + ".summary", self.summary), (key + ".verb", self.verb)]


def public(answer: Answer) -> dict[str, object]:
    """Return the answer as the public JSON object, ready for `words.json_text`."""
    found: dict[str, object] = {
        "calculator": answer.calculator,
        "inputs": dict(answer.inputs),
        "answers": [
            {
                "name": one.name,
                "label": one.label,
                "value": words.Number(words.plain_decimal(one.value, one.places)),
                "unit": one.unit,
                "shown": one.shown,
                "rule": one.rule,
                "working": one.working,
                "sources": list(one.sources),
            }
            for one in answer.lines
        ],
        "cautions": [{"signal": one.signal, "text": one.text, "source": one.source} for one in answer.cautions],
        "notes": list(answer.notes),
    }
    if answer.items:
        found["items"] = [_public_item(one) for one in answer.items]
    if answer.listings:
        found["listings"] = [
            {
                "name": one.name,
                "title": one.title,
                "rows": [{"text": text, "source": source} for text, source in one.rows],
            }
            for one in answer.listings
        ]
        found["asks"] = list(answer.asks)
    if answer.branches:
        found["branches"] = [
            {
                "name": one.name,
                "title": one.title,
                "text": one.text,
                "items": [_public_item(item) for item in one.items],
            }
            for one in answer.branches
        ]
    if answer.facts:
        found["facts"] = dict(answer.facts)
    return found


def _public_item(one: Item) -> dict[str, object]:
    found: dict[str, object] = {"name": one.name, "state": one.state, "text": one.text, "sources": list(one.sources)}
    if one.state_name not in ("", one.state):  # told in another language: programs know the state by this name
        found["state_name"] = one.state_name
    if one.page:
        found["page"] = one.page
        if one.page in LEFT_OUT:
            found["left_out"] = True
        found["reasons"] = [{"text": text, "source": source} for text, source in one.reasons]
    if one.group:
        found["group"] = one.group
        found["cells"] = dict(one.cells)
    if one.review_by:
        found["review_by"] = one.review_by
    return found
