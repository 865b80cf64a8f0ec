"""What a job takes, as rows of data: its unit, the package that it is sold in, and where in a store it stands."""

from dataclasses import dataclass
from fractions import Fraction

from calc.protect.sheeting import TAPE_ROLL
from calc.text.door import say

BUY, RENT, VAN = "buy", "rent", "van"
"""What is done for it: bought, rented, or looked for among one's own tools first."""
AISLES = (
    ("film", "Film and tape"), ("board", "Board, furring and tiles"), ("compound", "Compound and joint tape"), ("paint", "Primer, paint and caulk"),
    ("fixings", "Fixings and electrical"), ("safety", "Safety"), ("bags", "Bags and discs"), ("rent", "To rent"), ("van", "Probably in the van"),
)  # fmt: skip
"""(id, name) of the groups, as a store is walked."""
ONE = Fraction(1)


@dataclass(frozen=True)
class Material:
    """One thing that a job takes.

    `id` is public and stays: stages name it in their `buys`, and prices may. `unit` is what its need is counted in ('gal', 'ft', 'sqft', or
    '' for things). `aisle` is an id of `AISLES`; `kind` is BUY, RENT or VAN. `package` and `packages` are what it is sold in, one and several;
    a package holds `size` [in `unit`], or the product of the inputs named in `size_by`. `by_count` is False for what is found on the
    spot: a pack is taken then, or more.
    """

    id: str
    name: str
    unit: str
    aisle: str
    kind: str
    package: str
    packages: str
    size: Fraction = ONE
    size_by: tuple[str, ...] = ()
    by_count: bool = True


MATERIALS = (
    Material("floor-film", "Floor film", "sqft", "film", BUY, "roll", "rolls", size_by=("roll_width_ft", "roll_length_ft")),
    Material("wall-film", "Wall film", "sqft", "film", BUY, "roll", "rolls", size_by=("wall_film_width_ft", "wall_film_length_ft")),
    Material("masking-tape", "Low-tack tape", "ft", "film", BUY, "roll", "rolls", size=TAPE_ROLL.value),
    Material("duct-tape", "Duct tape", "ft", "film", BUY, "roll", "rolls", size=TAPE_ROLL.value),
    Material("board", "Gypsum board", "sqft", "board", BUY, "sheet", "sheets"),
    Material("furring", "Furring", "ft", "board", BUY, "foot", "feet"),
    Material("tiles", "Ceiling tiles", "", "board", BUY, "carton", "cartons", size_by=("tiles_per_carton",)),
    Material("trim", "Trim for the edge", "ft", "board", BUY, "foot", "feet"),
    Material("compound", "Joint compound", "gal", "compound", BUY, "pail", "pails", size_by=("pail_gal",)),
    Material("joint-tape", "Joint tape", "ft", "compound", BUY, "roll", "rolls", size_by=("tape_roll_ft",)),
    Material("sealing-primer", "Sealing primer", "gal", "paint", BUY, "can", "cans"),
    Material("primer", "Primer", "gal", "paint", BUY, "can", "cans"),
    Material("paint", "Ceiling paint", "gal", "paint", BUY, "can", "cans"),
    Material("caulk", "Caulk", "", "paint", BUY, "tube", "tubes"),
    Material("board-screws", "Board screws", "", "fixings", BUY, "screw", "screws"),
    Material("furring-screws", "Furring screws", "", "fixings", BUY, "screw", "screws"),
    Material("tile-fasteners", "Staples or screws for tiles", "", "fixings", BUY, "piece", "pieces"),
    Material("wire-connectors", "Wire connectors", "", "fixings", BUY, "pack", "packs", by_count=False),
    Material("box-extenders", "Box extenders", "", "fixings", BUY, "pack", "packs", by_count=False),
    Material("cartridges", "P100 filters for the respirator", "", "safety", BUY, "pair", "pairs"),
    Material("goggles", "Goggles", "", "safety", BUY, "pair", "pairs"),
    Material("coveralls", "Coveralls", "", "safety", BUY, "coverall", "coveralls"),
    Material("bags", "Strong bags of 3 mil", "", "bags", BUY, "bag", "bags"),
    Material("sanding-discs", "Sanding discs", "", "bags", BUY, "disc", "discs"),
    Material("air-machine", "Negative-air machine", "", "rent", RENT, "machine", "machines"),
    Material("hepa-vacuum", "Vacuum with a HEPA filter", "", "rent", RENT, "vacuum", "vacuums"),
    Material("board-lift", "Board lift", "", "rent", RENT, "lift", "lifts"),
    Material("sprayer", "Pump sprayer", "", "van", VAN, "sprayer", "sprayers"),
    Material("scraper", "Scraper with a dull, rounded edge", "", "van", VAN, "scraper", "scrapers"),
    Material("knives", "Taping knives", "", "van", VAN, "set", "sets"),
    Material("screw-gun", "Screw gun", "", "van", VAN, "gun", "guns"),
    Material("roller", "Roller, pole and tray", "", "van", VAN, "set", "sets"),
)  # fmt: skip


def material(name: str) -> Material:
    """Return the material of that id. Raises KeyError where there is none."""
    for one in MATERIALS:
        if one.id == name:
            return one
    raise KeyError(name)


def material_told(one: Material) -> str:
    """Return the name of the material."""
    return say("material." + one.id + ".name", one.name)


def aisle_told(name: str) -> str:
    """Return the name of the aisle of that id. Raises KeyError where there is none."""
    return say("aisle." + name + ".name", dict(AISLES)[name])


def count_told(one: Material, count: str, single: bool) -> str:
    """Return so many packages of the material: '4 pails'; `count` as it is read, `single` where it is one."""
    if single:
        return say("material." + one.id + ".one", "{count} " + one.package, count=count)
    return say("material." + one.id + ".many", "{count} " + one.packages, count=count)


def texts() -> list[tuple[str, str]]:
    """Return the (key, English) pairs of all materials and aisles."""
    found = [("aisle." + name + ".name", english) for name, english in AISLES]
    for one in MATERIALS:
        key = "material." + one.id
        found += [
            (key + ".name", one.name),
            (key + ".one", "{count} " + one.package),
            (key + ".many", "{count} " + one.packages),
        ]
    return found
