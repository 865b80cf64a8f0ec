"""How much a job takes of each material: exact, from the lines of the calculators that know, before anything is rounded up."""

from collections.abc import Callable
from dataclasses import dataclass

from calc.board import board
from calc.common.inputs import area_of
from calc.core.answer import Answer, Calculator
from calc.core.fields import InputFault, Values, read
from calc.cover import panels
from calc.finish import paint, skim, taping
from calc.finish.allowances import caulk_laid
from calc.job.materials import Material, material
from calc.job.stage import Stage
from calc.numbers.exact import total
from calc.numbers.quantity import Quantity, added, fact, given, greatest, rounded_up
from calc.protect import airflow, debris, sheeting
from calc.site import takeoff
from calc.text.door import say

MEND_LEVEL = (
    1  # mending takes the compound of the first coat over the joints of new board, by the textbook [-], common practice
)
MEND_TAPE = fact(10, "%", "common-practice")  # the part of all joints that is taped anew
DISC_SMOOTH = fact(100, "sqft", "common-practice")  # what one disc sands of dry compound
DISC_TEXTURE = fact(25, "sqft", "common-practice")  # what one disc takes off of texture, which clogs it
SCREWS_AT_JOIST = fact(2, "", "common-practice")  # furring on each joist that it crosses
COVERALLS = fact(1, "", "common-practice")  # for each person in each room, as it comes off at the door
EACH = fact(1, "", "common-practice")  # for each person, and of each thing that is found on the spot
BARE, NEW = "bare", "new"  # what is painted: texture as it hangs, or fresh compound


class Job:
    """One way and what was typed for it; each calculator is asked once for the same inputs.

    `stages` are those that are done, in order.
    """

    def __init__(self, values: Values, stages: tuple[Stage, ...]) -> None:
        self.values = values
        self.stages = stages
        self._ids = [one.id for one in stages]
        self._known: dict[str, Answer] = {}

    def has(self, *names: str) -> bool:
        """Return whether one of the stages [ids] is part of the job."""
        return bool([name for name in names if name in self._ids])

    def answer(self, calculator: Calculator, more: tuple[tuple[str, str], ...] = ()) -> Answer:
        """Return what `calculator` says of the texts typed, as far as it asks for them, and of `more`, which go before them.

        Raises InputFault where it refuses them.
        """
        key = calculator.name + "".join([" " + name + "=" + text for name, text in more])
        if key not in self._known:
            asked = [field.name for field in calculator.fields]
            texts = dict([(name, text) for name, text in self.values.given if name in asked])
            for name, text in more:
                texts[name] = text
            values, faults = read(calculator.fields, texts, calculator.one_of)
            if faults:
                raise InputFault(faults)
            self._known[key] = calculator.work_out(values)
        return self._known[key]

    def line(
        self, calculator: Calculator, name: str, more: tuple[tuple[str, str], ...] = (), label: str = ""
    ) -> Quantity:
        """Return the exact value of the line `name` of that answer, under `label`. Raises as `answer`, and KeyError for no such line."""
        return line_of(self.answer(calculator, more), name, label)

    def joints(self) -> Answer:
        """Return what taping says of the joints of the board's plan, which is laid out once."""
        if "joints" not in self._known:
            values, rooms = self.values, self.values.rooms()
            names = ("butt_joint_ft", "tapered_joint_ft", "cut_edge_joint_ft")
            joint_ft = total([self.line(board.CALCULATOR, name).to("ft") for name in names])
            inputs = taping.TapingInputs(
                area_of(rooms), joint_ft, int(values.choice("finish_level")), values.number("joist_spacing_in"), values.number("tape_roll_ft"), None,
                values.number("waste_pct"), values.choice("show_in"), None, "", total([taping.walls_ft(room) for room in rooms]),
            )  # fmt: skip
            self._known["joints"] = taping.taping(inputs, ())
        return self._known["joints"]

    def area(self) -> Quantity:
        """Return the ceiling of all rooms [sq ft]."""
        return given(area_of(self.values.rooms()), "sqft", "geometry")

    def with_waste(self) -> Quantity:
        """Return the factor of the waste that was given [-]."""
        return 1 + self.values.quantity("waste_pct")


def line_of(answer: Answer, name: str, label: str = "") -> Quantity:
    """Return the exact value of a line of an answer. Raises KeyError where it has none of that name."""
    for one in answer.lines:
        if one.name == name:
            return given(one.value, one.unit, one.sources[0], label).cited(*one.sources)
    raise KeyError(name)


def _floor_film(job: Job) -> list[Quantity]:
    film = sheeting.CALCULATOR
    return [job.line(film, "floor_sheeting_sqft"), job.line(film, "register_sheeting_sqft")]


def _wall_film(job: Job) -> list[Quantity]:
    return [job.line(sheeting.CALCULATOR, "wall_sheeting_sqft")]


def _tape(job: Job) -> list[Quantity]:
    return [job.line(sheeting.CALCULATOR, "tape_ft")]


def _board(job: Job) -> list[Quantity]:
    return [job.line(board.CALCULATOR, "board_area_sqft")]


def _board_screws(job: Job) -> list[Quantity]:
    return [job.line(board.CALCULATOR, "screws")]


def _caulk(job: Job) -> list[Quantity]:
    return [caulk_laid(edge=given(total([taping.walls_ft(room) for room in job.values.rooms()]), "ft", "geometry"))]


FURRED = (("fixing", "furring"),)


def _furring(job: Job) -> list[Quantity]:
    return [job.line(panels.CALCULATOR, "furring_ft", FURRED)]


def _furring_screws(job: Job) -> list[Quantity]:
    return [
        job.line(panels.CALCULATOR, "furring_ft", FURRED) / job.values.quantity("joist_spacing_in") * SCREWS_AT_JOIST
    ]


def _tiles(job: Job) -> list[Quantity]:
    tiles = job.line(panels.CALCULATOR, "full_tiles", FURRED) + job.line(panels.CALCULATOR, "cut_tiles", FURRED)
    return [tiles * job.with_waste()]


def _tile_fasteners(job: Job) -> list[Quantity]:
    return [job.line(panels.CALCULATOR, "fasteners", FURRED)]


def _trim(job: Job) -> list[Quantity]:
    return [job.line(takeoff.CALCULATOR, "perimeter_ft")]


def _by_area(job: Job) -> Answer:
    """Taping by area alone, as old joints are not in any plan."""
    typed, waste = job.values, job.values.number("waste_pct")
    inputs = taping.TapingInputs(
        area_of(typed.rooms()), None, MEND_LEVEL, typed.number("joist_spacing_in"), typed.number("tape_roll_ft"), None, waste, typed.choice("show_in"),
    )  # fmt: skip
    return taping.taping(inputs, ())


def _compound(job: Job) -> list[Quantity]:
    found = []
    if job.has("mend", "clean-texture"):
        found.append(line_of(_by_area(job), "low_compound_gal", say("need.mending", "mending")))
    if job.has("tape-bed"):
        found.append(line_of(job.joints(), "compound_gal", say("need.joints", "joints")))
    if job.has("fill"):
        found.append(job.line(skim.CALCULATOR, "compound_gal", (), say("need.fill", "fill and skim coats")))
    if job.has("smooth"):
        thin = (("texture_depth_in", "0"), ("coats", "1"))
        found.append(job.line(skim.CALCULATOR, "compound_gal", thin, say("need.thin", "a thin coat")))
    return found


def _joint_tape(job: Job) -> list[Quantity]:
    found = []
    if job.has("mend"):
        found.append(line_of(_by_area(job), "tape_ft") * MEND_TAPE * job.with_waste())
    if job.has("tape-bed"):
        found.append(line_of(job.joints(), "tape_ft") * job.with_waste())
    return found


def _painted(job: Job, surface: str) -> tuple[tuple[str, str], ...]:
    coats = job.values.count("paint_coats")
    return (("surface", surface), ("coats", str(max(coats, 1))))


def _sealing_primer(job: Job) -> list[Quantity]:
    surface = BARE if job.has("seal", "seal-texture") else NEW
    return [job.line(paint.CALCULATOR, "primer_gal", _painted(job, surface))]


def _primer(job: Job) -> list[Quantity]:
    return [job.line(paint.CALCULATOR, "primer_gal", _painted(job, NEW))]


def _paint(job: Job) -> list[Quantity]:
    return [job.line(paint.CALCULATOR, "gallons", _painted(job, BARE if job.has("seal-texture") else NEW))]


def _bags(job: Job) -> list[Quantity]:
    """Bags and parts of a bag: what is scraped, by volume or by weight, and the film by its weight."""
    found = []
    limit = job.values.quantity("bag_limit_lb")
    if job.has("wet-scrape", "dry-scrape", "sand-off"):
        more = () if job.has("wet-scrape") else (("water_gal_per_100sqft", "0"),)
        volume, weight = [job.line(debris.CALCULATOR, name, more) for name in ("volume_cuft", "weight_lb")]
        held = job.values.quantity("bag_gal") * job.values.quantity("bag_fill_pct")
        found.append(greatest((volume / held).named("", ""), (weight / limit).named("", "")))
    if job.has("uncover"):
        found.append((job.line(sheeting.CALCULATOR, "floor_sheeting_lb") / limit).cited("common-practice"))
    return found


def _discs(job: Job) -> list[Quantity]:
    found = []
    if job.has("sand-off"):
        found.append(job.area() / DISC_TEXTURE)
    if job.has("sand-smooth"):
        found.append(job.area() / DISC_SMOOTH)
    return found


def _air_machine(job: Job) -> list[Quantity]:
    return [job.line(airflow.CALCULATOR, "needed_cfm") / job.line(airflow.CALCULATOR, "real_cfm")]


def _each_person(job: Job) -> list[Quantity]:
    return [job.values.quantity("people") * EACH]


def _coveralls(job: Job) -> list[Quantity]:
    return [job.values.quantity("people") * len(job.values.rooms()) * COVERALLS]


def _one(job: Job) -> list[Quantity]:
    return [EACH]


NEEDS: tuple[tuple[str, Callable[[Job], list[Quantity]]], ...] = (
    ("floor-film", _floor_film), ("wall-film", _wall_film), ("masking-tape", _tape), ("duct-tape", _tape), ("board", _board), ("furring", _furring),
    ("tiles", _tiles), ("trim", _trim), ("compound", _compound), ("joint-tape", _joint_tape), ("sealing-primer", _sealing_primer), ("primer", _primer),
    ("paint", _paint), ("caulk", _caulk), ("board-screws", _board_screws), ("furring-screws", _furring_screws), ("tile-fasteners", _tile_fasteners),
    ("wire-connectors", _one), ("box-extenders", _one), ("cartridges", _each_person), ("goggles", _each_person), ("coveralls", _coveralls),
    ("bags", _bags), ("sanding-discs", _discs), ("air-machine", _air_machine), ("hepa-vacuum", _one), ("board-lift", _one), ("sprayer", _one),
    ("scraper", _each_person), ("knives", _each_person), ("screw-gun", _one), ("roller", _each_person),
)  # fmt: skip
"""Which calculators and lines each material goes by: the one place that says so."""


@dataclass(frozen=True)
class Bought:
    """What is taken of one `material`: the exact `need` and what is `bought`, both in the material's unit, in so many `packages` [-] that hold
    `size` each; `stages` are those that use it."""

    material: Material
    need: Quantity
    size: Quantity
    packages: int
    bought: Quantity
    stages: tuple[Stage, ...]


def bought_of(job: Job) -> tuple[Bought, ...]:
    """Return all that the job takes, in the order of the rows: the exact needs of all stages and rooms are added, and rounded up
    to packages once. Raises InputFault where a calculator refuses what was typed."""
    found = []
    for name, need_of in NEEDS:
        stages = tuple([one for one in job.stages if name in one.buys])
        parts = need_of(job) if stages else []
        if parts:
            one = _bought(job, material(name), added(parts), stages)
            if one.packages:
                found.append(one)
    return tuple(found)


def _bought(job: Job, one: Material, need: Quantity, stages: tuple[Stage, ...]) -> Bought:
    size = _size(job, one)
    if one.id == "board":  # sheets are cut from, and film is laid in whole strips: their own calculators count them
        sheets = job.line(board.CALCULATOR, "sheets")
        area = job.line(board.CALCULATOR, "bought_sqft")
        return Bought(one, need, size, int(sheets.value), area, stages)
    packages = job.line(sheeting.CALCULATOR, "rolls") if one.id == "floor-film" else rounded_up(need / size)
    return Bought(one, need, size, int(packages.value), packages * size, stages)


def _size(job: Job, one: Material) -> Quantity:
    if not one.size_by:
        return fact(one.size, one.unit, "common-practice")
    found = job.values.quantity(one.size_by[0])
    for name in one.size_by[1:]:
        found = found * job.values.quantity(name)
    return found
