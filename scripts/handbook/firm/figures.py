"""The firm's figures: rates, prices and usual values, each checked by the field of the calculators that takes it.

What comes out goes to the pages as data. A visitor's own figure goes before the firm's, and the firm's before the book's.
"""

from calc import catalogue
from calc.core import fields
from calc.job.offer import BY
from calc.job.prices import PRICES, PriceFault, read_price
from handbook.evidence import example
from handbook.firm.declared import HABITS, PRICED, RATES, FirmFile, fields_called
from handbook.firm.read import Reading

NOT_YOURS = (
    "is not a firm's to set: it says what is true of one ceiling or house, or what a load, a stop or a protection goes by."
    " The visitor alone gives it"
)
Value = dict[str, str]  # `text` as somebody would type it, the `date` of it, and `where` it is from


def check(firm: FirmFile, reading: Reading) -> dict[str, Value]:
    """Return the values by the name of their field, and tell the faults of those that no field takes."""
    found: dict[str, Value] = {}
    if firm.units == "metric":
        found["show_in"] = {"text": "metric", "date": firm.reviewed.isoformat(), "where": ""}
    by = f"{firm.business.name}, {firm.business.phone}"
    found[BY.name] = {
        "text": by if len(by) <= fields.LONGEST_TEXT else firm.business.name,
        "date": firm.reviewed.isoformat(),
        "where": "",
    }
    for name, text in firm.defaults.items():
        if name not in HABITS:
            why = NOT_YOURS if fields_called(name) else "is no field of a calculator"
            _unknown(reading, ("defaults", name), f"{name} {why}", HABITS, "people: 2")
        elif _taken(reading, ("defaults", name), name, text):
            found[name] = {"text": text, "date": firm.reviewed.isoformat(), "where": ""}
    for name, rate in firm.rates.items():
        if name not in RATES:
            message = f"{name} is no rate of a calculator"
            _unknown(
                reading,
                ("rates", name),
                message,
                RATES,
                "rate_per_hour: {amount: 65, date: 2026-11-01, from: our list}",
            )
        elif _taken(reading, ("rates", name, "amount"), name, rate.amount):
            found[name] = {"text": rate.amount, "date": rate.date.isoformat(), "where": rate.origin}
    prices = _prices(firm, reading)
    if prices:
        days = sorted({one.date.isoformat() for one in firm.prices.values()})
        found[PRICES.name] = {
            "text": "; ".join(prices),
            "date": " to ".join(dict.fromkeys((days[0], days[-1]))),
            "where": "",
        }
    _together(reading, found)
    return found


def _prices(firm: FirmFile, reading: Reading) -> list[str]:
    """The entries of the shopping list's prices, each with its day and place."""
    found = []
    for name, price in firm.prices.items():
        where = ("prices", name)
        if name not in PRICED:
            like = "paint: {price: 38.50 a gal, date: 2026-11-01, from: Example Supply}"
            _unknown(reading, where, f"{name} is no material or fee of the shopping list", PRICED, like)
            continue
        if any(mark in price.price for mark in ",;\n"):
            reading.refuse(
                (*where, "price"), "PRICE", "it holds a comma or a semicolon; its day and place have keys of their own"
            )
            continue
        entry = f"{name}: {price.price}, {price.date.isoformat()}, {price.origin}"
        try:
            read_price(entry)
            found.append(entry)
        except PriceFault as fault:
            reading.fault((*where, "price"), "PRICE", f"prices.{name}.price: {fault.args[0]} Like: price: 38.50 a gal")
    return found


def _taken(reading: Reading, where: tuple[str, ...], name: str, text: str) -> bool:
    """Whether every calculator that asks for `name` takes `text`; its own words tell why not."""
    told = dict.fromkeys(
        f"{fault.message} Like: {where[-1]}: {fault.example}"
        for field in fields_called(name)
        for fault in fields.read((field,), {name: text})[1]
    )
    if not text.strip():
        told = dict.fromkeys(
            [f"it is empty. Leave the key out, or write {where[-1]}: {fields_called(name)[0].example}"]
        )
    for message in told:
        reading.fault(where, "FIELD", f"{'.'.join(where)}: {message}")
    return not told


def _together(reading: Reading, found: dict[str, Value]) -> None:
    """Tell of values that each will do and that do not go together, as a plan of days with the book's example shows."""
    plan = catalogue.find("plan")
    assert plan is not None
    names = [field.name for field in plan.fields]
    mine = {name: value["text"] for name, value in found.items() if name in names}
    if not mine:
        return
    _, faults = catalogue.work_out("plan", {**dict(example.inputs_of("plan")), **mine})
    for fault in faults:
        if fault.field in mine:
            reading.fault(
                ("defaults", fault.field),
                "FIELD",
                f"defaults.{fault.field}: {fault.message} Like: {fault.field}: {fault.example}",
            )


def _unknown(reading: Reading, where: tuple[str, ...], message: str, names: tuple[str, ...], like: str) -> None:
    reading.fault((*where, ""), "FIELD", f"{'.'.join(where)}: {message}. Use {', '.join(names)}. Like: {like}")
