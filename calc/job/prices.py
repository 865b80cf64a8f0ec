"""Prices as they are typed, one a line; and what a list comes to by them. The book has no price of its own."""

from dataclasses import dataclass
from fractions import Fraction

from calc.core.fields import Field, entries
from calc.job.calendar import day_of_iso
from calc.job.materials import MATERIALS, RENT, Material, count_told, material_told
from calc.numbers import measure, words
from calc.text.door import say

FEES = ("tax", "permit", "laboratory", "dump")
"""What is no material: the sales tax in percent, and sums that are paid to others."""
MOST_DIGITS = 9  # of a sum before the point
MOST_CENTS = 4  # digits after it
CENTS = 2  # decimals of money as it is shown
LONGEST_WHERE = 40  # letters of where a price is from
# (unit of the need, what people call what they pay for, how many of those are one unit)
PRICED_BY = (
    ("gal", ("gal", "gallon"), Fraction(1)), ("gal", ("l", "liter", "litre"), measure.LITERS_PER_GALLON),
    ("ft", ("ft", "foot"), Fraction(1)), ("ft", ("m", "meter", "metre"), measure.METERS_PER_FOOT),
    ("sqft", ("sq ft", "sqft", "square foot"), Fraction(1)), ("sqft", ("m²", "sq m", "square meter"), measure.SQUARE_METERS_PER_SQUARE_FOOT),
)  # fmt: skip
DAY = ("day",)
_BEFORE_UNIT = ("a ", "an ", "per ", "for a ", "/")
_DIGITS = "0123456789"


@dataclass(frozen=True)
class Price:
    """What was typed of one material or fee: `key` its id, `amount` the sum [money] or the tax [%], `by` what it is paid for, '' for a package,
    a rental or a fee; `day` as 2027-01-10 and `where`, '' for what was not said."""

    key: str
    amount: Fraction
    by: str
    day: str
    where: str


class PriceFault(ValueError):
    """Raised with one sentence for an entry that is no price."""


def read_price(entry: str) -> Price:
    """Return the price in `entry`, as `paint: 38.50 a gal, 2027-01-10, corner store`. Raises PriceFault."""
    name, colon, rest = entry.partition(":")
    parts = [words.tidy(part) for part in rest.split(",")]
    if not colon or not parts[0]:
        raise PriceFault(
            say(
                "prices.fault.form",
                "{entry} is no price. Write what, a colon and the price: paint: 38.50 a gal.",
                entry=words.quoted(entry),
            )
        )
    after = rest.split(",")
    for at in range(1, len(after)):
        if after[at][:1] and after[at][:1] in _DIGITS and day_of_iso(parts[at]) is None:
            raise PriceFault(
                say(
                    "prices.fault.comma",
                    "{entry}: write cents with a point and thousands without a comma, as 1250.50.",
                    entry=words.quoted(entry),
                )
            )
    key = _key(words.tidy(name))
    amount, by = _paid(parts[0], key, entry)
    day, where = "", ""
    for part in parts[1:]:
        if not day and day_of_iso(part) is not None:
            day = part
        elif not where and part and len(part) <= LONGEST_WHERE:
            where = part
        elif part:
            raise PriceFault(
                say(
                    "prices.fault.rest",
                    "{entry}: after the price comes its day, as 2027-01-10, and where it is from, in few letters.",
                    entry=words.quoted(entry),
                )
            )
    return Price(key, amount, by, day, where)


def _key(name: str) -> str:
    wanted = words.lower(name)
    if not wanted:
        raise PriceFault(
            say(
                "prices.fault.nameless",
                "A price has no name before it. Write the name of a material as the list has it.",
            )
        )
    for fee in FEES:
        if wanted == fee:
            return fee
    for one in MATERIALS:
        if wanted in (one.id, words.lower(one.name), words.lower(material_told(one))):
            return one.id
    raise PriceFault(
        say(
            "prices.fault.name", "{name} is not on any list. Write the name of a material as the list has it, or {fees}.",
            name=words.quoted(name), fees=words.listed(FEES, "or"),
        )
    )  # fmt: skip


def _paid(text: str, key: str, entry: str) -> tuple[Fraction, str]:
    """The amount and what it is paid for."""
    number, rest = _split(text)
    amount = money(number)
    if amount is None:
        raise PriceFault(
            say(
                "prices.fault.money",
                "{entry}: {text} is no sum. Write it plain, as 38.50.",
                entry=words.quoted(entry),
                text=words.quoted(text),
            )
        )
    if key in FEES:
        wanted = "%" if key == "tax" else ""
        if rest != wanted:
            raise PriceFault(
                say(
                    "prices.fault.fee",
                    "{entry}: the tax is so many %, any other fee one sum: tax: 6.5 %, permit: 120.",
                    entry=words.quoted(entry),
                )
            )
        return amount, ""
    for mark in _BEFORE_UNIT:
        if rest.startswith(mark):
            rest = words.tidy(rest[len(mark) :])
            break
    for one in MATERIALS:
        if one.id == key and rest:
            by = _unit(one, rest)
            if by is None:
                units = [package_told(one)] + [by_told(name) for name in units_of(one)]
                raise PriceFault(
                    say(
                        "prices.fault.unit", "{entry}: {name} is paid for by the {units}.",
                        entry=words.quoted(entry), name=words.lower(material_told(one)), units=words.listed(units, "or"),
                    )
                )  # fmt: skip
            return amount, by
    return amount, ""


def _unit(one: Material, typed: str) -> str | None:
    """Return what of `units_of` was `typed`, in English or as it is told, '' for the package, None for nothing that it is sold by."""
    if typed in ("each", one.package, one.packages, words.lower(package_told(one))):
        return ""
    for name in units_of(one):
        if typed in (name, words.lower(by_told(name))):
            return name
    return None


def units_of(one: Material) -> list[str]:
    """Return what a material may be paid for by, beside its package."""
    found = [name for unit, names, _ in PRICED_BY if unit == one.unit for name in names]
    return found + list(DAY) if one.kind == RENT else found


def package_told(one: Material) -> str:
    """Return what the material is sold in, as 'pail'."""
    return words.tidy(count_told(one, "", True))


def by_told(name: str) -> str:
    """Return a unit that is paid for, one of `units_of`, as it is told."""
    return say("prices.by." + name, name)


def texts() -> list[tuple[str, str]]:
    """Return the (key, English) pairs of all units that are paid for."""
    return [("prices.by." + name, name) for names in [row[1] for row in PRICED_BY] + [DAY] for name in names]


def parts_of(by: str, unit: str) -> Fraction:
    """Return how many of `by` one `unit` of a need is [-]. Raises KeyError where they do not go together."""
    for own, names, many in PRICED_BY:
        if own == unit and by in names:
            return many
    raise KeyError(by)


def _split(text: str) -> tuple[str, str]:
    """'38.50 a gal' as its number and what comes after it, in small letters."""
    at = 0
    while at < len(text) and (text[at] in _DIGITS or text[at] == "."):
        at += 1
    return text[:at], words.lower(words.tidy(text[at:]))


def money(text: str) -> Fraction | None:
    """Return the sum written in `text` as a plain decimal [money, 0 to 999,999,999.9999], or None where it is none."""
    whole, point, cents = text.partition(".")
    if not whole or len(whole) > MOST_DIGITS or len(cents) > MOST_CENTS or (point and not cents):
        return None
    for digit in whole + cents:
        if digit not in _DIGITS:
            return None
    return Fraction(int(whole + cents), 10 ** len(cents))


def shown(amount: Fraction) -> str:
    """Return a sum [money] as it is read, to the cent; a half goes up."""
    return words.decimal(amount, CENTS)


def _faults(text: str) -> tuple[tuple[str, str], ...]:
    """(entry, what is wrong with it) for each entry that is no price, or the second of one thing."""
    found = []
    keys: list[str] = []
    for entry in entries(text):
        try:
            key = read_price(entry).key
        except PriceFault as fault:
            found.append((entry, str(fault.args[0])))
            continue
        if key in keys:
            found.append(
                (entry, say("prices.fault.twice", "{entry} is priced twice. Leave one.", entry=words.quoted(entry)))
            )
        keys.append(key)
    return tuple(found)


PRICES = Field(
    name="prices", label="Prices", kind="list", unit="",
    help="One a line: what, its price, and if you like its day and place. Also tax, permit, laboratory and dump. The book has no prices.",
    example="paint: 38.50 a gal, 2027-01-10, corner store; compound: 17 a pail; board-lift: 45 a day; tax: 6.5 %; permit: 120", required=False, check=_faults,
)  # fmt: skip


def prices_of(text: str) -> dict[str, Price]:
    """Return the prices typed, by id. Raises PriceFault for what `check` of the field refuses."""
    found: dict[str, Price] = {}
    for entry in entries(text):
        one = read_price(entry)
        found[one.key] = one
    return found
