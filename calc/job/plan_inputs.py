"""What a plan asks, and how dates are read."""

from calc.common.inputs import COAT_THICKNESS, COATS, HEIGHT, HUMIDITY, ROOMS, TEMPERATURE, TEXTURE_DEPTH_OR_NONE
from calc.core.fields import Fault, Field, InputFault, Values, entries
from calc.decision.decision import facts_of
from calc.decision.questions import WAYS, question
from calc.decision.told import way_told
from calc.decision.verdict import CLEARED, CLOSED, Look, cleared
from calc.drying.drying import refusals
from calc.job.calendar import day_of_iso
from calc.job.labor import Asked
from calc.job.room_air import OF_ROOM, ROOM_AIR, Dries, dries_of
from calc.numbers import words
from calc.text.door import say

FULL_PCT = 100
LICENSED = "licensed-removal"


def _dates_faults(text: str) -> tuple[tuple[str, str], ...]:
    """(entry, what is wrong with it) for each entry that is no date."""
    found = []
    for one in entries(text):
        if day_of_iso(one) is None:
            found.append(
                (
                    one,
                    say(
                        "plan.fault.date",
                        "{text} is no date. Write the year, month and day: 2027-03-15.",
                        text=words.quoted(one),
                    ),
                )
            )
    return tuple(found)


WAY = Field(
    name="way", label="Way", kind="choice", unit="",
    help="The guide tells which ways are open for this ceiling.",
    example="wet-scrape", choices=WAYS,
)  # fmt: skip
PEOPLE = Field(
    name="people", label="People at work", kind="count", unit="",
    help="Board goes up with two, or with one and a lift.",
    example="2", lowest="1", highest="6", default="2",
)  # fmt: skip
HOURS_PER_DAY = Field(
    name="hours_per_day", label="Hours of work a day", kind="count", unit="",
    help="Without breaks. The day starts at 8.",
    example="8", lowest="2", highest="12", default="8", source="common-practice",
)  # fmt: skip
START = Field(
    name="start_day", label="First day", kind="text", unit="",
    help="Year, month, day. Leave it empty to count days from a Monday.",
    example="2027-03-15", required=False, check=_dates_faults,
)  # fmt: skip
WEEK = Field(
    name="work_week", label="Days of work", kind="choice", unit="",
    help="On the other days coats dry and laboratories rest.",
    example="mon-fri", default="mon-fri",
    choices=(("mon-fri", "Monday to Friday"), ("mon-sat", "Monday to Saturday"), ("all", "Every day"), ("weekend", "Weekends only")),
)  # fmt: skip
DAYS_OFF = Field(
    name="days_off", label="Days off", kind="list", unit="",
    help="Holidays and days away, one date a line.",
    example="2027-03-19", required=False, rare=True, check=_dates_faults,
)  # fmt: skip
PAINT_COATS = Field(
    name="paint_coats", label="Coats of paint", kind="count", unit="",
    help="Put 0 where somebody else primes and paints.",
    example="2", lowest="0", highest="4", default="2", source="common-practice",
)  # fmt: skip
LABORATORY_LOW = Field(
    name="laboratory_days_low", label="Laboratory, at the soonest", kind="count", unit="",
    help="Days from taking the samples to the report.",
    example="3", lowest="0", highest="60", default="3", source="common-practice", rare=True,
)  # fmt: skip
LABORATORY_HIGH = Field(
    name="laboratory_days_high", label="Laboratory, at the latest", kind="count", unit="",
    help="Ask the inspector. Ten days are usual where nobody pays for haste.",
    example="10", lowest="0", highest="60", default="10", source="common-practice", rare=True,
)  # fmt: skip
PACE = Field(
    name="pace_pct", label="Your hours against the book's", kind="percent", unit="%",
    help="100 takes the book's hours. A first job takes 150 or more.",
    example="150", lowest="25", highest="400", default="100", rare=True,
)  # fmt: skip


def folded(field: Field) -> Field:
    """Return `field` as one that stands folded away in the form."""
    return Field(
        name=field.name, label=field.label, kind=field.kind, unit=field.unit, help=field.help, example=field.example,
        lowest=field.lowest, highest=field.highest, default=field.default, required=field.required, choices=field.choices,
        source=field.source, rare=True, fed_by=field.fed_by, check=field.check, why=field.why,
    )  # fmt: skip


ASBESTOS = tuple([question(name).field for name, _ in CLEARED])
JOB = (
    ROOMS, HEIGHT, TEXTURE_DEPTH_OR_NONE, COATS, COAT_THICKNESS, PAINT_COATS, TEMPERATURE, HUMIDITY, PEOPLE, HOURS_PER_DAY, START, WEEK,
    DAYS_OFF, LABORATORY_LOW, LABORATORY_HIGH, PACE, ROOM_AIR,
) + tuple([folded(one) for one in OF_ROOM])  # fmt: skip
"""What the work and its calendar go by, whichever way is taken."""
WORKS_ON = (
    ("mon-fri", (True, True, True, True, True, False, False)),
    ("mon-sat", (True, True, True, True, True, True, False)),
    ("all", (True, True, True, True, True, True, True)),
    ("weekend", (False, False, False, False, False, True, True)),
)


def facts_given(values: Values) -> dict[str, str]:
    """Return the answers to the questions of the choice of way, 'unknown' for what was not asked or not answered."""
    return facts_of(dict(values.given))


def refuse_closed(way: str, values: Values) -> None:
    """Raise InputFault where the answers about the ceiling close the way [id of `calc.decision.questions.WAYS`]."""
    look = Look(facts_given(values))
    at = [name for name, _ in WAYS].index(way)
    if look.ranks[at] == CLOSED:
        message = say(
            "plan.fault.closed",
            "{way} is closed for this ceiling: {reason} Choose another way.",
            way=way_told(way),
            reason=look.reasons(at)[0][0],
        )
        open_ways = [name for place, (name, _) in enumerate(WAYS) if look.ranks[place] != CLOSED]
        raise InputFault((Fault("way", way, message, (open_ways + [LICENSED])[0]),))


def asked_of(
    values: Values, way: str, dries: tuple[Dries, ...] = (), laboratory_days: tuple[int, int] = (0, 0)
) -> Asked:
    """Return what the work goes by; what it waits for has no part in its hours, and may be left out: `dries` as in `air_of` and
    `laboratory_days` [day] as in `days_of_laboratory`."""
    return Asked(
        way=way,
        rooms=values.rooms(),
        height_ft=values.number("ceiling_height_ft"),
        coats=values.count("coats"),
        paint_coats=values.count("paint_coats"),
        settled=cleared(facts_given(values)),
        dries=dries,
        laboratory_days=laboratory_days,
        pace=values.number("pace_pct") / FULL_PCT,
    )


def days_of_laboratory(values: Values) -> tuple[int, int]:
    """Return the days that the laboratory takes [day], at the soonest and at the latest."""
    return values.count("laboratory_days_low"), values.count("laboratory_days_high")


def air_of(values: Values) -> tuple[Dries, ...]:
    """Return how long coats take to dry, by room. Raises InputFault where the air dries nothing, or the laboratory's days are turned
    round."""
    faults = refusals(values)
    low, high = days_of_laboratory(values)
    if low > high:
        message = say(
            "plan.fault.laboratory",
            "The laboratory takes {low} days at the soonest and {high} at the latest. Turn them round.",
            low=str(low),
            high=str(high),
        )
        faults += (Fault("laboratory_days_low", str(low), message, LABORATORY_LOW.example),)
    if faults:
        raise InputFault(faults)
    return dries_of(values)
