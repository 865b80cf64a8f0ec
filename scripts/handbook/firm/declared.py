"""Every key of `firm.yml`, once: from these rows come the checks, what a fault says is allowed, and `firm.schema.json`.

A description says what is allowed, as a fault prints it; the first example is one that works. Values are read as they are
written, so 65.50 stays 65.50.
"""

import datetime
import json
import re
import unicodedata
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, WithJsonSchema

from calc import catalogue
from calc.job.materials import MATERIALS
from calc.job.prices import FEES, LONGEST_WHERE

SCHEMA = "firm.schema.json"
# What a firm does or buys the same way on each job. What is true of one ceiling or one house is for the visitor alone to say, and so is
# what a load, a stop or a protection goes by: no such field is here, and none is taken.
HABITS = (
    "people", "hours_per_day", "work_week", "pace_pct", "laboratory_days_low", "laboratory_days_high",
    "coats", "coat_thickness_in", "paint_coats", "finish_level", "board_thickness_in", "sheet_width_in", "sheet_lengths_ft", "least_strip_in",
    "roll_width_ft", "roll_length_ft", "wall_film_width_ft", "wall_film_length_ft", "tape_roll_ft", "pail_gal", "bag_gal", "tank_gal",
    "shrinkage_pct", "waste_pct", "spread_sqft_per_gal", "primer_sqft_per_gal", "tile_length_in", "tile_width_in", "tiles_per_carton",
    "furring_spacing_in", "machine_cfm", "dehumidifier_pt_per_day", "dehumidifier_kind", "dehumidifier_rated_f", "money",
)  # fmt: skip
RATES = ("rate_per_hour",)
PRICED = (*[one.id for one in MATERIALS], *FEES)
SECTIONS = ("Prepare", "Finish", "After", "Reference")
PAGE_NAME = r"^[a-z][a-z0-9]*(-[a-z0-9]+)*\.md$"
ID = r"^[a-z][a-z0-9]*(-[a-z0-9]+)*$"
ADDRESS = r"^https://([a-z0-9-]+\.)+[a-z][a-z0-9-]*(:[0-9]{2,5})?(/[A-Za-z0-9_~-][A-Za-z0-9._~-]*)*/?$"
ADDRESS_ODD = (
    (r"^(?!https://)", "it does not begin with https://"), (r"[?#]", "it has a query or a part of a page (? or #)"), ("@", "it holds a name or a password (@)"),
    (r"\.html?/?$", "it names a file, and not the folder"), (r"-[0-9a-f]{12}([/.]|$)", "its folder is named like those that never change"),
)  # fmt: skip
# Marks that turn the direction of what stands after them: they let a line read otherwise than it is written.
TURNING = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"


def _one_line(text: str) -> str:
    """Letters of any script; no mark that breaks or turns a line."""
    if any(unicodedata.category(mark) in ("Cc", "Cs", "Zl", "Zp") or mark in TURNING for mark in text):
        raise ValueError("it holds a mark that breaks or turns a line")
    if text != text.strip():
        raise ValueError("it begins or ends with a blank")
    return text


def _origin(text: str) -> str:
    """Where a figure is from, as it stands in an entry of the shopping list's prices."""
    if any(mark in text for mark in ",;"):
        raise ValueError("it holds a comma or a semicolon")
    if not text[:1].isalpha():
        raise ValueError("it does not begin with a letter")
    return text


def _day(text: Any) -> Any:
    """A day in full; nothing that only can be read as one, such as a number of seconds."""
    if isinstance(text, str) and (len(text) != len("2026-11-01") or text[4:5] != "-"):
        raise ValueError("it is no day")
    return text


def _not_ahead(day: datetime.date) -> datetime.date:
    """Nothing was looked at on a day that lies ahead; a day more, as it is tomorrow already elsewhere."""
    if day > datetime.date.today() + datetime.timedelta(days=1):
        raise ValueError("it lies ahead")
    return day


def _address(text: Any) -> Any:
    """Where a site stands, without anything that belongs to a visit, a person or a file."""
    if not isinstance(text, str):
        return text
    for odd, why in ADDRESS_ODD:
        if re.search(odd, text):
            raise ValueError(why)
    return text


def _ended(text: str) -> str:
    return text if text.endswith("/") else text + "/"


Name = Annotated[str, Field(min_length=1, max_length=60), AfterValidator(_one_line)]
Line = Annotated[str, Field(min_length=1, max_length=80), AfterValidator(_one_line)]
Sentence = Annotated[str, Field(min_length=10, max_length=160), AfterValidator(_one_line)]
# What is one of many names is told, with its faults, where it is looked up.
RateName = Annotated[str, WithJsonSchema({"type": "string", "enum": list(RATES)})]
PricedName = Annotated[str, WithJsonSchema({"type": "string", "enum": list(PRICED)})]
HabitName = Annotated[str, WithJsonSchema({"type": "string", "enum": list(HABITS)})]
Written = Annotated[str, Field(max_length=200), WithJsonSchema({"type": ["string", "number"], "maxLength": 200})]
Ahead = Annotated[datetime.date, BeforeValidator(_day)]
Day = Annotated[Ahead, AfterValidator(_not_ahead)]
Where = Annotated[
    str, Field(min_length=1, max_length=LONGEST_WHERE), AfterValidator(_one_line), AfterValidator(_origin)
]
Color = Annotated[str, Field(pattern=r"^#[0-9a-fA-F]{6}$")]
File = Annotated[str, Field(pattern=r"^[A-Za-z0-9_-][A-Za-z0-9._-]*(/[A-Za-z0-9_-][A-Za-z0-9._-]*)*$", max_length=120)]
Address = Annotated[str, Field(pattern=ADDRESS, max_length=200), BeforeValidator(_address), AfterValidator(_ended)]
OwnPage = Annotated[str, Field(pattern=r"^([a-z0-9-]+/)*[a-z][a-z0-9]*(-[a-z0-9]+)*\.md$", max_length=120)]
ORIGIN = f"1 to {LONGEST_WHERE} letters, a letter first, without a comma or a semicolon."
A_DAY = "A day as year, month, day, none that lies ahead."


def _key(says: str, example: str, **more: Any) -> Any:
    return Field(description=says, examples=[example], **more)


class Declared(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class Business(Declared):
    """Who the firm is. It stands on the cover, at the foot of each page, on paper and on the customer's screens."""

    name: Name = _key("The firm's name, 1 to 60 letters on one line.", "Example Ceilings")
    phone: Annotated[str, Field(pattern=r"^\+?[0-9][0-9 ()./-]{2,28}[0-9]$")] = _key(
        "Digits, blanks and ( ) . / - with a + before them if you like, 4 to 31 marks.", "+1 555 0100"
    )
    license: Annotated[list[Line], Field(min_length=0, max_length=6)] = _key(
        "At most 6 lines of 80 letters: licenses and certificates, as the law wants them shown.", "[Contractor license 000000 (invented)]", default=[]
    )  # fmt: skip
    area: Line = _key("Where you work, 1 to 80 letters on one line.", "Example County and around")


class Colors(Declared):
    """The color of what can be touched: links, buttons, the frame round a field. Two of them, as paper is light or dark."""

    accent_light: Color = _key(
        "A color as # and six digits, 0-9 and a-f, with 4.5 to 1 against light paper.", '"#1f5a54"'
    )
    accent_dark: Color = _key(
        "A color as # and six digits, 0-9 and a-f, with 4.5 to 1 against dark paper.", '"#8fd3c8"'
    )


class Rate(Declared):
    """What an hour costs."""

    amount: Written = _key("A number, as the field of the form takes it.", "65")
    date: Day = _key(A_DAY, "2026-11-01")
    origin: Where = _key(f"Where the figure is from. {ORIGIN}", "our list", alias="from")


class Price(Declared):
    """What one thing costs, as it is typed into the shopping list."""

    price: Written = _key("A price as the shopping list takes it, without day and place.", "38.50 a gal")
    date: Day = _key(A_DAY, "2026-11-01")
    origin: Where = _key(f"Where the price is from. {ORIGIN}", "Example Supply", alias="from")


class Added(Declared):
    """One page more."""

    file: OwnPage = _key(
        "A Markdown file beside firm.yml, its name in small letters, digits and -.", "our-guarantee.md"
    )
    section: Literal["Prepare", "Finish", "After", "Reference"] = _key("Prepare, Finish, After or Reference.", "After")


class Pages(Declared):
    """Pages of the book that are left out or replaced, pages more, and the words that only they use."""

    leave_out: list[str] = _key(
        "A list of pages of the book, such as reference/levels.md.", "[reference/levels.md]", default=[]
    )
    replace: dict[str, OwnPage] = _key(
        "A page of the book, a colon, and a Markdown file beside firm.yml.", "{after/inspect.md: our-inspection.md}", default={}
    )  # fmt: skip
    add: list[Added] = _key(
        "A list; each has a file and a section.", "[{file: our-guarantee.md, section: After}]", default=[]
    )
    words: list[Annotated[str, Field(pattern=r"^[A-Za-z']{2,40}$")]] = _key(
        "Words of your own pages that no dictionary knows, 2 to 40 letters each.", "[skimcoat]", default=[]
    )  # fmt: skip


class OwnCaution(Declared):
    """One caution more. Nothing takes one away."""

    id: Annotated[str, Field(pattern=ID, max_length=40)] = _key(
        "A name of your own in small letters, digits and -.", "our-dog"
    )
    signal: Literal["DANGER", "WARNING", "CAUTION", "NOTICE"] = _key("DANGER, WARNING, CAUTION or NOTICE.", "CAUTION")
    hazard: Sentence = _key("One sentence of 10 to 160 letters: what can hurt.", "Our van stands in the drive.")
    consequence: Sentence = _key("One sentence of 10 to 160 letters: what it does.", "A child behind it is not seen.")
    avoidance: Sentence = _key(
        "One sentence of 10 to 160 letters: how to avoid it.", "Keep children in the house while we load."
    )
    origin: Line = _key("Who says so, 1 to 80 letters.", "Example Ceilings, house rule 3", alias="from")
    date: Day = _key(A_DAY, "2026-11-01")
    pages: Annotated[list[str], Field(min_length=1)] = _key(
        "A list of pages of the book, such as methods/wet-scrape.md.", "[methods/wet-scrape.md]"
    )  # fmt: skip


class LocalRule(Declared):
    """One printed limit of a place, on asbestos or on lead paint. It joins the book's in every form that asks for the place."""

    id: Annotated[str, Field(pattern=ID, max_length=40)] = _key(
        "A name of your own in small letters, digits and -.", "example-county-area"
    )
    place: Name = _key("The place as people read it, 1 to 60 letters.", "Example County")
    also: list[Name] = _key("What people type for it too.", "[example co]", default=[])
    topic: Literal["asbestos", "lead"] = _key("asbestos or lead.", "lead", default="asbestos")
    building: Literal["house", "other", "any"] = _key(
        "house (up to four homes), other, or any. A limit on lead holds for any.", "any", default="any"
    )
    limit: Written = _key(
        "A number, plain or as a fraction; 0 where any work counts. Of lead it is the paint disturbed in one room.",
        "32",
    )
    unit: Literal["sqft", "cuft"] = _key("sqft or cuft; of lead sqft.", "sqft")
    reached: Literal["at", "above"] = _key("at, where the limit itself counts, or above.", "at")
    says: Sentence = _key(
        "The limit in words, 10 to 160 letters, without a full stop.", "Example County's trigger is 32 sq ft"
    )
    ask: Line = _key("Who answers for it, 1 to 80 letters.", "the county's air office")
    source: Line = _key("Title of the rule, 1 to 80 letters.", "County code, asbestos in renovation, section 5")
    reviewed: Day = _key(A_DAY, "2026-11-01")
    review_by: Ahead = _key("The day on which somebody looks again, as year, month, day.", "2027-11-01")


class FirmFile(Declared):
    """What makes the book a firm's."""

    business: Business = _key(
        "name, phone, license and area.", "{name: Example Ceilings, phone: +1 555 0100, area: Example County}"
    )
    reviewed: Day = _key("The day on which you last looked at this file: usual values carry it.", "2026-11-01")
    colors: Colors | None = _key(
        "accent_light and accent_dark.", '{accent_light: "#1f5a54", accent_dark: "#8fd3c8"}', default=None
    )
    mark: File | None = _key("An SVG file beside firm.yml.", "mark.svg", default=None)
    skin: Literal["own", "material"] = _key(
        "own, or material: the book under mkdocs-material, for a site that stands on that theme.", "material", default="own"
    )  # fmt: skip
    units: Literal["customary", "metric"] = _key("customary or metric.", "customary", default="customary")
    address: Address | None = _key(
        "The https address that your edition will stand at: small letters for the domain, then folders if any.", "https://ceilings.example/handbook/", default=None
    )  # fmt: skip
    rates: dict[RateName, Rate] = _key(
        "rate_per_hour.", "{rate_per_hour: {amount: 65, date: 2026-11-01, from: our list}}", default={}
    )
    prices: dict[PricedName, Price] = _key(
        "Materials by their id in the shopping list, and tax, permit, laboratory, dump.",
        "{paint: {price: 38.50 a gal, date: 2026-11-01, from: Example Supply}}", default={},
    )  # fmt: skip
    defaults: dict[HabitName, Written] = _key(
        "Fields of the calculators and your usual values.", "{hours_per_day: 9}", default={}
    )
    pages: Pages = _key("leave_out, replace, add and words.", "{leave_out: [reference/levels.md]}", default=Pages())
    cautions: list[OwnCaution] = _key(
        "A list of cautions of your own.", "[{id: our-van, signal: CAUTION, …}]", default=[]
    )
    local_rules: list[LocalRule] = _key(
        "A list of limits of places.", "[{id: example-county-area, place: Example County, …}]", default=[]
    )


def schema() -> str:
    """Return the JSON Schema of the file, for editors and programs."""
    told = FirmFile.model_json_schema(by_alias=True)
    told["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    told["title"] = "The edition of a firm: firm.yml"
    return json.dumps(told, indent=1, ensure_ascii=False) + "\n"


def fields_called(name: str) -> list[Any]:
    """Return each calculator's field of that name."""
    return [field for one in catalogue.every() for field in one.fields if field.name == name]
