"""What a list comes to: materials, labor, others' work, and by name what is not in it. Exact until it is shown."""

from dataclasses import dataclass
from fractions import Fraction

from calc.core.answer import Listing
from calc.core.fields import Fault, InputFault
from calc.job.materials import RENT, VAN, material_told
from calc.job.needs import Bought
from calc.job.prices import FEES, PRICES, Price, by_told, package_told, parts_of, shown
from calc.numbers import words
from calc.text.door import say

HUNDRED = 100
"""What a percentage is a part of."""


@dataclass(frozen=True)
class Priced:
    """One thing of the list: what is `bought`, its `price` or None, what it `costs` [money], and the `days` [day] that it is rented for."""

    bought: Bought
    price: Price | None
    costs: Fraction
    days: int


def priced(
    bought: tuple[Bought, ...], days: dict[str, int], prices: dict[str, Price], sizes_of_board: int
) -> tuple[Priced, ...]:
    """Return what each thing costs by `prices`; `days` [day] by id of what is rented. Raises InputFault where board of several sizes
    is priced by the sheet."""
    found = []
    for one in bought:
        price, costs = prices.get(one.material.id), Fraction(0)
        rented = days.get(one.material.id, 0)
        if price is not None:
            if one.material.id == "board" and not price.by and sizes_of_board > 1:
                message = say(
                    "prices.fault.sheets",
                    "The list has sheets of more than one size. Price the board by the sq ft: board: 0.45 a sq ft.",
                )
                raise InputFault((Fault(PRICES.name, "board", message, PRICES.example),))
            costs = price.amount * _times(one, price.by, rented)
        found.append(Priced(one, price, costs, rented))
    return tuple(found)


def _times(one: Bought, by: str, days: int) -> Fraction:
    """How often the price is paid [-]."""
    if not by:
        return Fraction(one.packages)
    if one.material.kind == RENT:
        return Fraction(one.packages * days)
    unit = one.material.unit
    return one.bought.to(unit) * parts_of(by, unit)


def cost_told(one: Priced) -> str:
    """Return what the thing costs and by which price, '' where it has none."""
    if one.price is None:
        return ""
    paid = by_told(one.price.by) if one.price.by else package_told(one.bought.material)
    where = "".join([", " + part for part in (one.price.day, one.price.where) if part])
    return say(
        "quote.cost", "{cost}, at {price} a {unit}{where}.",
        cost=shown(one.costs), price=shown(one.price.amount), unit=paid, where=where,
    )  # fmt: skip


@dataclass(frozen=True)
class Quote:
    """What it comes to [money]: `materials` and `rent` with how many of each are priced, `labor` from and to or None, `fees` by name, the
    `tax` on materials and rent, and the names of all that is `missing`."""

    materials: Fraction
    rent: Fraction
    counts: tuple[tuple[int, int], tuple[int, int]]
    labor: tuple[Fraction, Fraction] | None
    fees: tuple[tuple[str, Fraction], ...]
    tax: Fraction | None
    missing: tuple[str, ...]

    def sums(self) -> tuple[Fraction, Fraction]:
        """Return the whole, from and to [money], of what is priced."""
        base = self.materials + self.rent + (self.tax or Fraction(0))
        for _, amount in self.fees:
            base += amount
        low, high = self.labor or (Fraction(0), Fraction(0))
        return base + low, base + high


def quote_of(
    rows: tuple[Priced, ...], prices: dict[str, Price], hours: tuple[Fraction, Fraction], rate: Fraction | None
) -> Quote:
    """Return what `rows` come to with the fees of `prices`, and `hours` [h], least and most, at `rate` [money/h]."""
    own = [
        [one for one in rows if (one.bought.material.kind == RENT) == rented and one.bought.material.kind != VAN]
        for rented in (False, True)
    ]
    counts = [(len([one for one in some if one.price is not None]), len(some)) for some in own]
    sums = [Fraction(0), Fraction(0)]
    for at, some in enumerate(own):
        for one in some:
            sums[at] += one.costs
    for one in rows:
        if one.bought.material.kind == VAN:
            sums[0] += one.costs
    missing = [material_told(one.bought.material) for some in own for one in some if one.price is None]
    if rate is None:
        missing.append(say("quote.missing.labor", "labor"))
    missing += [fee_told(fee) for fee in FEES if fee not in prices]
    tax = (sums[0] + sums[1]) * prices["tax"].amount / HUNDRED if "tax" in prices else None
    labor = None if rate is None else (hours[0] * rate, hours[1] * rate)
    fees = tuple([(fee, prices[fee].amount) for fee in FEES[1:] if fee in prices])
    return Quote(sums[0], sums[1], (counts[0], counts[1]), labor, fees, tax, tuple(missing))


def fee_told(fee: str) -> str:
    """Return the name of a fee."""
    if fee == "tax":
        return say("quote.fee.tax", "sales tax")
    if fee == "permit":
        return say("quote.fee.permit", "the permit")
    return say("quote.fee.laboratory", "the laboratory") if fee == "laboratory" else say("quote.fee.dump", "dump fees")


def span(low: Fraction, high: Fraction) -> str:
    """Return a sum [money] from `low` to `high`, or the one that both are."""
    return shown(low) if low == high else say("plan.range", "{low} to {high}", low=shown(low), high=shown(high))


def of_count(count: tuple[int, int]) -> str:
    """Return '9 of 14'."""
    return say("quote.of", "{some} of {all}", some=words.whole(count[0]), all=words.whole(count[1]))


def listing(quote: Quote, hours: str, rate: Fraction | None, prices: dict[str, Price]) -> Listing:
    """Return the quote in rows: materials, rent, labor of so many `hours` as they are told, others' work, tax, the whole, what is not in it."""
    rows = [
        say(
            "quote.materials",
            "Materials, {count} priced: {sum}.",
            count=of_count(quote.counts[0]),
            sum=shown(quote.materials),
        )
    ]
    if quote.counts[1][1]:
        rows.append(
            say("quote.rent", "Rent, {count} priced: {sum}.", count=of_count(quote.counts[1]), sum=shown(quote.rent))
        )
    if quote.labor is None or rate is None:
        rows.append(say("quote.labor.none", "Labor: {hours} hours, and no price for an hour was given.", hours=hours))
    else:
        rows.append(
            say(
                "quote.labor",
                "Labor: {hours} hours at {rate}: {sum}.",
                hours=hours,
                rate=shown(rate),
                sum=span(quote.labor[0], quote.labor[1]),
            )
        )
    others = [fee_told(fee) + " " + shown(amount) for fee, amount in quote.fees]
    if others:
        rows.append(say("quote.others", "Others' work and fees: {fees}.", fees=words.listed(others)))
    else:
        rows.append(say("quote.others.none", "Others' work and fees: none was given."))
    if quote.tax is not None:
        rows.append(
            say(
                "quote.tax", "Sales tax of {rate} % on materials and rent: {sum}.",
                rate=words.short_decimal(prices["tax"].amount, 4), sum=shown(quote.tax),
            )
        )  # fmt: skip
    low, high = quote.sums()
    rows.append(say("quote.whole", "Together, of what is priced: {sum}.", sum=span(low, high)))
    rows.append(
        say("quote.missing", "Not in it: {names}.", names=words.listed(quote.missing))
        if quote.missing
        else say("quote.missing.none", "Nothing of this list is left out.")
    )
    return Listing("quote", say("quote.title", "What it comes to"), tuple([(row, "") for row in rows]))
