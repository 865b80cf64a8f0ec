"""Published limits that differ by place, as data: what they count, where they hold, who answers for them, and when
they were last looked at. A place that is not here has rules of its own that this book does not know.

A limit past its `review_by` is named by every build until somebody has looked at its source again.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.evidence import local
from calc.numbers.words import lower, tidy
from calc.text.door import say

DRUM_CUFT = Fraction(55 * 231, 1728)  # a drum of 55 gallons [cu ft], by definition


@dataclass(frozen=True)
class Limit:
    """One limit. `place` is '' for federal; `topic` 'asbestos' or 'lead'; `building` 'house' (up to four dwellings),
    'other' or 'any'; the work passes it at `amount` [`unit`] itself where `at_limit`, else only above it; `says` is the
    limit in words, `ask` who answers for it; an `amount` of 0 is reached by any work; `reviewed_on` and `review_by` are days (ISO 8601)."""

    id: str
    place: str
    topic: str
    building: str
    amount: Fraction
    unit: str
    at_limit: bool
    says: str
    ask: str
    source: str
    reviewed_on: str
    review_by: str

    def passed_by(self, amount: Fraction) -> bool:
        """Return whether `amount` [in its own unit] passes this limit."""
        return amount >= self.amount if self.at_limit else amount > self.amount


FEDERAL = "Federal"
PLACES = (
    ("Colorado", ("co",)),
    ("US military property", ("military", "dod")),
) + local.PLACES
"""Places with limits of their own in `LIMITS`, and the words that mean them beside the name itself."""
OF_EDITION = tuple([name for name, _ in local.PLACES])
"""Those that an edition added: beside its limits the place may have others, which nobody here has looked for."""

_SEEN, _NEXT = "2026-11-25", "2027-11-25"
LIMITS = (
    Limit("federal-area", "", "asbestos", "other", Fraction(160), "sqft", True, "federal notice and work rules reach 160 sq ft",
         "the regional EPA or state asbestos office", "cfr-61-145", _SEEN, _NEXT),
    Limit("federal-volume", "", "asbestos", "other", Fraction(35), "cuft", True, "federal notice and work rules reach 35 cu ft",
         "the regional EPA or state asbestos office", "cfr-61-145", _SEEN, _NEXT),
    Limit("colorado-house-area", "Colorado", "asbestos", "house", Fraction(32), "sqft", True, "Colorado's trigger for single homes is 32 sq ft",
         "the state's air division", "colorado-reg-8", _SEEN, _NEXT),
    Limit("colorado-house-drum", "Colorado", "asbestos", "house", DRUM_CUFT, "cuft", True, "Colorado's trigger is a 55-gallon drum, 7.35 cu ft",
         "the state's air division", "colorado-reg-8", _SEEN, _NEXT),
    Limit("colorado-other-area", "Colorado", "asbestos", "other", Fraction(160), "sqft", True, "Colorado's trigger for other buildings is 160 sq ft",
         "the state's air division", "colorado-reg-8", _SEEN, _NEXT),
    Limit("colorado-other-drum", "Colorado", "asbestos", "other", DRUM_CUFT, "cuft", True, "Colorado's trigger is a 55-gallon drum, 7.35 cu ft",
         "the state's air division", "colorado-reg-8", _SEEN, _NEXT),
    Limit("military-barriers", "US military property", "asbestos", "any", Fraction(10), "sqft", False, "critical barriers are asked for above 10 sq ft",
         "the contracting officer", "ufgs-13280a", _SEEN, _NEXT),
    Limit("lead-minor-repair", "", "lead", "any", Fraction(6), "sqft", False, "minor repair ends at 6 sq ft a room, all work of 30 days together",
         "the EPA or the state lead office", "cfr-745-83", _SEEN, _NEXT),
    Limit("lead-assisted", "", "lead", "assisted", Fraction(2), "sqft", False, "in housing with federal help the limit is 2 sq ft a room",
         "the housing agency", "cfr-35-1350", _SEEN, _NEXT),
) + tuple([Limit(*row) for row in local.LIMITS])  # fmt: skip
_ADDED = tuple([row[0] for row in local.LIMITS])  # limits in an edition's own words, which no file of texts can know


def known_place(text: str) -> str | None:
    """Return the place that `text` means: '' for none given (federal alone), None where this book knows no such place."""
    word = lower(tidy(text))
    if word in ("", "federal", "us", "usa"):
        return ""
    for name, aliases in PLACES:
        if word == lower(name) or word in aliases:
            return name
    return None


def limits_for(topic: str, place: str | None, building: str) -> tuple[Limit, ...]:
    """Return the federal limits of `topic` and those of `place`, for a `building` of one kind; 'unknown' gets them all."""
    found = []
    for one in LIMITS:
        if one.topic != topic or (one.place and one.place != place):
            continue
        if one.building == "any" or building == "unknown" or one.building == building:
            found.append(one)
    return tuple(found)


def place_told(name: str) -> str:
    """Return a place of `PLACES` as people read it, '' as what federal limits are called. One that an edition adds stands as it was
    written."""
    if not name:
        return say("limit.federal", FEDERAL)
    return name if name in OF_EDITION else say("place." + name, name)


def says_told(one: Limit) -> str:
    """Return the limit in words. One that an edition adds stands as it was written."""
    return one.says if one.id in _ADDED else say("limit." + one.id + ".says", one.says)


def ask_told(one: Limit) -> str:
    """Return who answers for the limit. One that an edition adds stands as it was written."""
    return one.ask if one.id in _ADDED else say("limit." + one.id + ".ask", one.ask)


def texts() -> list[tuple[str, str]]:
    """Return the (key, English) pairs of the book's own places and limits, and of no others."""
    found = [("limit.federal", FEDERAL)] + [("place." + name, name) for name, _ in PLACES if name not in OF_EDITION]
    for one in LIMITS:
        if one.id not in _ADDED:
            found += [("limit." + one.id + ".says", one.says), ("limit." + one.id + ".ask", one.ask)]
    return found
