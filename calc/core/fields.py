"""How an input is declared. One declaration gives the form, its checks, the command line, the table
in the documentation, the share link and the JSON."""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from calc.numbers import measure, words
from calc.numbers.quantity import YOURS, Quantity
from calc.numbers.quantity import given as given_quantity
from calc.rooms.rooms import Room, read_rooms
from calc.text.door import say
from calc.text.language import TEXTS

KINDS = ("rooms", "list", "text", "length", "area", "volume", "temperature", "percent", "rate", "count", "choice")


@dataclass(frozen=True)
class Field:
    """One input.

    `name` is public and ends in its unit; `unit` is the unit that a bare number is read in ('in',
    'ft', 'sqft', 'gal', 'F', '%', 'lb/gal', '' for a count or choice). `default`, `lowest` and
    `highest` are written as a person would type them. An empty `default` means that there is none:
    the field must then be filled unless `required` is False. `choices` are (value, label) pairs; for a text they
    are suggestions, for a list (entry, meaning) pairs. `rare` fields stand folded away in the form. `source` is the id in `calc.evidence.sources` that stands
    behind the default. `fed_by` names a calculator and one of its lines ('carry longest_sheet_ft') that fills the field
    in a page while nobody has typed into it. `check` reads a list or a text, and returns (entry, what is wrong with it) pairs.
    `why` says why it is asked, for whoever wonders.
    """

    name: str
    label: str
    kind: str
    unit: str
    help: str
    example: str
    lowest: str = ""
    highest: str = ""
    default: str = ""
    required: bool = True
    choices: tuple[tuple[str, str], ...] = ()
    source: str = "your-figure"
    rare: bool = False
    fed_by: str = ""
    check: Callable[[str], tuple[tuple[str, str], ...]] | None = None
    why: str = ""


def texts(calculator: str, field: Field) -> list[tuple[str, str]]:
    """Return the (key, English) pairs of what `field` says in the form of `calculator`."""
    key = "field." + calculator + "." + field.name
    found = [(key + ".label", field.label), (key + ".help", field.help), (key + ".why", field.why)]
    if field.kind != "text":  # what is suggested for a text is typed as it stands
        found += [(key + ".choice." + value, label) for value, label in field.choices]
    return [(one, english) for one, english in found if english]


def told(calculator: str, field: Field) -> Field:
    """Return `field` with its texts as they came through the door; the same one where no other language is in."""
    if not TEXTS:
        return field
    key = "field." + calculator + "." + field.name
    choices = field.choices
    if field.kind != "text":
        choices = tuple([(value, say(key + ".choice." + value, label)) for value, label in choices])
    return Field(
        name=field.name,
        label=say(key + ".label", field.label),
        kind=field.kind,
        unit=field.unit,
        help=say(key + ".help", field.help),
        example=field.example,
        lowest=field.lowest,
        highest=field.highest,
        default=field.default,
        required=field.required,
        choices=choices,
        source=field.source,
        rare=field.rare,
        fed_by=field.fed_by,
        check=field.check,
        why=say(key + ".why", field.why),
    )


@dataclass(frozen=True)
class Fault:
    """What is wrong with one input: the field's name, what was given, one sentence, and an example that works."""

    field: str
    given: str
    message: str
    example: str


class InputFault(ValueError):
    """Raised by a calculator whose inputs do not go together; carries every fault found."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("; ".join([fault.message for fault in faults]))
        self.faults = faults


LONGEST_TEXT = 60  # letters of a text that is taken
LONGEST_ENTRY = 200  # letters of a number or a choice as it is typed, blanks with them
LONGEST_LIST = 10000  # letters of rooms or of a list: forty rooms of twenty walls
MOST_ENTRIES = 100  # entries of one list

SHOW_IN = Field(
    name="show_in",
    label="Show results in",
    kind="choice",
    unit="",
    help="You may type either; this is what you read.",
    example="metric",
    default="customary",
    rare=True,
    choices=(("customary", "Feet, inches, gallons"), ("metric", "Meters, liters")),
)
"""The one input that every calculator has."""


class Values:
    """The inputs of one calculator, read and checked; `given` is the text as it was typed, with defaults filled in."""

    def __init__(
        self,
        given: tuple[tuple[str, str], ...],
        numbers: dict[str, Fraction],
        rooms: tuple[Room, ...],
        fields: tuple[Field, ...] = (),
    ) -> None:
        self.given = given
        self._numbers = numbers
        self._rooms = rooms
        self._fields = fields

    def quantity(self, name: str) -> Quantity:
        """Return a required number as a quantity: with the field's source behind it where it stands as the book has it."""
        for field in self._fields:
            if field.name == name:
                usual = field.default and self.choice(name) == field.default
                return given_quantity(self._numbers[name], field.unit, field.source if usual else YOURS)
        raise KeyError(name)

    def number(self, name: str) -> Fraction:
        """Return a required number in the field's own unit."""
        return self._numbers[name]

    def number_or_none(self, name: str) -> Fraction | None:
        """Return a number in the field's own unit, or None where the field was left empty."""
        return self._numbers.get(name)

    def count(self, name: str) -> int:
        """Return a required whole number."""
        return int(self._numbers[name])

    def choice(self, name: str) -> str:
        """Return the value of a choice, a text or a list; empty where it was left empty."""
        return dict(self.given).get(name, "")

    def rooms(self) -> tuple[Room, ...]:
        """Return the rooms; empty where none were given."""
        return self._rooms


def entries(text: str) -> list[str]:
    """Return the entries of a list: one a line, or with ; between them; empty ones are dropped."""
    parts = [words.tidy(part) for part in text.replace("\r", "\n").replace("\n", ";").split(";")]
    return [part for part in parts if part]


def entry_faults(text: str, read_entry: Callable[[str], object]) -> tuple[tuple[str, str], ...]:
    """Return (entry, what is wrong with it) for each entry of the list `text` that `read_entry` refuses."""
    found = []
    for entry in entries(text):
        try:
            read_entry(entry)
        except measure.MeasureFault as fault:
            found.append((entry, str(fault.args[0])))
    return tuple(found)


def read(
    fields: tuple[Field, ...], given: dict[str, str], one_of: tuple[str, ...] = ()
) -> tuple[Values, tuple[Fault, ...]]:
    """Return the checked values of `fields` from the texts in `given`, and every fault found.

    Exactly one of the fields named in `one_of` must be filled. An unknown name, an empty required field, a text that cannot be read and a number out of range are
    faults; each names the field, what was given, what is allowed and an example.
    """
    faults = []
    numbers: dict[str, Fraction] = {}
    rooms: tuple[Room, ...] = ()
    filled = []
    names = [field.name for field in fields]
    for name in sorted(given):
        if name not in names:
            faults.append(_unknown(name, given[name], names, fields))
    tried = [_unreadable(field, given[field.name]) for field in fields if field.name in given]
    unreadable = [fault for fault in tried if fault is not None]
    if unreadable:  # such a text is not looked into
        return Values((), numbers, rooms), tuple(faults + unreadable)
    faults += _one_of(fields, given, one_of)
    for field in fields:
        text = _typed(field, given) or field.default
        if not text:
            if field.required:
                faults.append(
                    Fault(
                        field.name,
                        "",
                        say("fault.empty", "{field} is empty. {allowed}", field=_called(field), allowed=allowed(field)),
                        field.example,
                    )
                )
            continue
        filled.append((field.name, text))
        if field.kind == "rooms":
            rooms, room_faults = read_rooms(text)
            for refusal in room_faults:
                faults.append(Fault(field.name, refusal.given, refusal.message, refusal.nearest))
        elif field.kind == "list":
            count = len(entries(text))
            if count > MOST_ENTRIES:
                message = say(
                    "fault.entries", "{count} entries are too many. Give at most {most} at a time.",
                    count=words.whole(count), most=str(MOST_ENTRIES),
                )  # fmt: skip
                faults.append(Fault(field.name, words.cut(text), message, field.example))
                continue
            for chunk, message in field.check(text) if field.check else ():
                faults.append(Fault(field.name, chunk, message, field.example))
        elif field.kind == "text":
            if len(text) > LONGEST_TEXT:
                english = "{field} is longer than {most} letters. Shorten it."
                message = say("fault.long", english, field=_called(field), most=str(LONGEST_TEXT))
                faults.append(Fault(field.name, text, message, field.example))
            for chunk, message in field.check(text) if field.check else ():
                faults.append(Fault(field.name, chunk, message, field.example))
        elif field.kind == "choice":
            if text not in [value for value, _ in field.choices]:
                message = say(
                    "fault.choice", "{field} cannot be {text}. {allowed}",
                    field=_called(field), text=words.quoted(text), allowed=allowed(field),
                )  # fmt: skip
                faults.append(Fault(field.name, text, message, field.example))
        else:
            problem = ""
            try:
                numbers[field.name] = measure.read_quantity(text, field.unit)
                problem = _out_of_range(field, numbers[field.name])
            except measure.MeasureFault as fault:
                problem = str(fault.args[0])
            if problem:
                message = say(
                    "fault.number", "{field}: {text} will not do, {problem}. {allowed}",
                    field=_called(field), text=words.quoted(text), problem=problem, allowed=allowed(field),
                )  # fmt: skip
                faults.append(Fault(field.name, text, message, field.example))
    return Values(tuple(filled), numbers, rooms, fields), tuple(faults)


def allowed(field: Field) -> str:
    """Return one sentence that says what the field takes."""
    if field.kind == "rooms":
        return say("allowed.rooms", "Write each room by its sides, or walked round wall by wall; put ; between rooms.")
    if field.kind == "list":
        return say("allowed.list", "Write one entry a line; put ; between entries.")
    if field.kind == "text":
        return say("allowed.text", "Write it in a few words.")
    if field.kind == "choice":
        values = words.listed([value for value, _ in field.choices if value], "or")
        return say("allowed.choice", "Choose {values}.", values=values)
    unit = unit_told(field.unit)
    highest = field.highest + (" " + unit if unit else "")
    if field.kind == "count":
        return say("allowed.count", "Give a whole number from {low} to {high}.", low=field.lowest, high=highest)
    return say("allowed.number", "Give a number from {low} to {high}.", low=field.lowest, high=highest)


UNIT_NAMES = {
    "in": "in",
    "ft": "ft",
    "sqft": "sq ft",
    "gal": "gal",
    "F": "°F",
    "%": "%",
    "lb/gal": "lb/gal",
    "cuft": "cu ft",
    "cuyd": "cu yd",
    "money": "",
    "psf": "lb/sq ft",
    "lb": "lb",
    "cfm": "cu ft/min",
    "per_h": "an hour",
    "mil": "mil",
    "gal/100sqft": "gal per 100 sq ft",
    "sqft/gal": "sq ft/gal",
    "pt/day": "pints a day",
    "Btu/h": "Btu/h",
    "gr/lb": "grains/lb",
    "inwc": "in of water",
    "sqin": "sq in",
    "deg": "°",
    "": "",
}
"""The name of a field's unit as it stands beside a number."""


def unit_told(unit: str) -> str:
    """Return the name of a unit as it stands beside a number; a unit without one stands as it is."""
    name = UNIT_NAMES.get(unit, unit)
    return say("unit." + unit, name) if name and unit in UNIT_NAMES else name


def unit_texts() -> list[tuple[str, str]]:
    """Return the (key, English) pairs of all names of units."""
    return [("unit." + unit, name) for unit, name in UNIT_NAMES.items() if name]


def _typed(field: Field, given: dict[str, str]) -> str:
    """What was typed, in single spaces; a list that holds nothing but separators is empty."""
    text = given.get(field.name, "")
    if field.kind not in ("rooms", "list"):
        return words.tidy(text)
    if not entries(text):
        return ""
    return words.tidy(text.replace("\r", "\n").replace("\n", "; "))  # a line is an entry, and tidying would join them


def _called(field: Field) -> str:
    """The field's label as the beginning of a sentence; a question stands in quotes."""
    return words.quoted(field.label, LONGEST_TEXT) if field.label.endswith("?") else field.label


def _unreadable(field: Field, text: str) -> Fault | None:
    """A fault where a text is too long to be looked into, or holds a mark that is no letter."""
    most = LONGEST_LIST if field.kind in ("rooms", "list") else LONGEST_ENTRY
    if len(text) > most:
        message = say(
            "fault.endless", "{field} holds {count} letters and blanks, and takes at most {most}. Shorten it.",
            field=_called(field), count=words.whole(len(text)), most=words.whole(most),
        )  # fmt: skip
        return Fault(field.name, words.cut(text[:most]), message, field.example)
    mended = words.mended(text)
    if mended != text:
        english = "{field}: {text} holds a mark that cannot be read. Delete it and type it again."
        message = say("fault.mark", english, field=_called(field), text=words.quoted(text))
        return Fault(field.name, mended, message, field.example)
    return None


def _out_of_range(field: Field, value: Fraction) -> str:
    if field.kind == "count" and value.denominator != 1:
        return say("fault.whole", "it is not a whole number")
    if value < measure.read_bound(field.lowest):
        return say("fault.small", "it is too small")
    if value > measure.read_bound(field.highest):
        return say("fault.large", "it is too large")
    return ""


def _one_of(fields: tuple[Field, ...], given: dict[str, str], one_of: tuple[str, ...]) -> list[Fault]:
    if not one_of:
        return []
    choices = [field for field in fields if field.name in one_of]
    filled = [field for field in choices if _typed(field, given)]
    labels = words.listed([field.label for field in choices], "or")
    if not filled:
        message = say("fault.none_of", "Nothing given for {labels}. Give one of them.", labels=labels)
        return [Fault(choices[0].name, "", message, choices[0].example)]
    if len(filled) > 1:
        last = filled[-1]
        message = say("fault.two_of", "Give only one of {labels}. Empty the other.", labels=labels)
        return [Fault(last.name, words.cut(given[last.name]), message, filled[0].name + "=" + filled[0].example)]
    return []


def _unknown(name: str, text: str, names: list[str], fields: tuple[Field, ...]) -> Fault:
    name, text = words.mended(name), words.mended(text)
    message = say(
        "fault.unknown", "There is no input called {name}. Use {names}.",
        name=words.quoted(name), names=words.listed(names, "or"),
    )  # fmt: skip
    return Fault(name, text, message, fields[0].name + "=" + fields[0].example)
