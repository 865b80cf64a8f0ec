"""What a customer's one screen of a way shows, so that its link holds no more: no price of a material, no rate, no pace."""

from calc import catalogue
from calc.decision.questions import QUESTIONS
from calc.decision.shared_figures import SHARED

# What a customer wants to know of a way beside the area: how much comes down, goes up, or is bought.
AMOUNTS = {
    "wet-scrape": "debris", "dry-scrape": "debris", "sand": "airflow", "skim-over": "skim", "board-over": "board", "panel-over": "panels",
    "leave-and-seal": "paint", "licensed-removal": "",
}  # fmt: skip


def shown(way: str) -> list[str]:
    """Return the names of the calculators that the screen of a way shows, in its order."""
    return [name for name in ("takeoff", AMOUNTS[way], "plan", "offer") if name]


def fields(*ways: str) -> list[str]:
    """Return the names of the figures that the screens of `ways` go by: those of their forms but the way, which each page itself
    says, and the answers about the ceiling."""
    forms = [catalogue.find(name) for way in ways for name in shown(way)]
    found = [field.name for one in forms if one for field in one.fields if field.name != "way"]
    found += [one.field.name for one in QUESTIONS] + [one.field.name for one in SHARED]
    return list(dict.fromkeys(found))
