"""The worked example of the book: one made-up room that every page works out, so that its figures agree with each other.

Its texts are others than those that a form shows beside a field, so that nobody takes it for an answer to what was typed.
"""

from functools import cache

from calc import catalogue
from calc.core.answer import Answer
from calc.numbers import words
from handbook.evidence import metric, once

# Made up, all of it.
FACTS = {
    "rooms": "Study: 13' 6\" x 11'", "ceiling_height_ft": "8' 6\"", "more_areas": "Attic room: 260", "place": "New York City", "year_built": "1958",
    "person_height_in": "5' 6\"", "tank_gal": "3", "texture_psf": "0.4", "water_gal_per_100sqft": "2.2", "coats": "3", "coat_thickness_in": "3/64",
    "door_width_in": "32", "joist_spacing_in": "24", "temperature_f": "64", "humidity_pct": "55", "outdoor_temperature_f": "45",
    "outdoor_humidity_pct": "60", "machine_cfm": "800", "tile_length_in": "24", "tile_width_in": "24", "finish_level": "4",
}  # fmt: skip
# What stands in a calculator's own example for figures that the room gives here.
GIVEN_BY_ROOMS = ("area_sqft", "joint_ft", "caulked_edge_ft", "volume_cuft")


@cache
def inputs_of(name: str) -> tuple[tuple[str, str], ...]:
    """Return the (input, text) pairs of the example for the calculator of that name, in the order of its form."""
    calculator = catalogue.find(name)
    assert calculator is not None  # checked before
    own = dict(calculator.example)
    given = {}
    for field in calculator.fields:
        if field.name == "rooms" or (field.name in FACTS and field.name in own):
            given[field.name] = FACTS[field.name]
        elif field.fed_by:
            given[field.name] = _fed(field.fed_by)
        elif field.name in own and field.name not in GIVEN_BY_ROOMS:
            given[field.name] = own[field.name]
    return _for_readers(name, given)


@cache
def answer_of(name: str) -> Answer:
    """Return what the calculator of that name answers to the example."""
    answer, faults = once.work_out(name, dict(inputs_of(name)))
    assert answer is not None, faults  # the tests ask for every calculator
    return answer


def given_on_page(name: str, own: dict[str, str] | None) -> tuple[tuple[str, str], ...]:
    """Return the inputs of the example on a page that gives its `own` for the calculator of that name, before the book's."""
    return _for_readers(name, {**dict(inputs_of(name)), **(own or {})})


def of_page(name: str, own: dict[str, str] | None) -> Answer:
    """Return what the calculator of that name answers to the example of a page; a page's own example is checked before."""
    answer, faults = once.work_out(name, dict(given_on_page(name, own)))
    assert answer is not None, faults
    return answer


def _for_readers(name: str, given: dict[str, str]) -> tuple[tuple[str, str], ...]:
    """The inputs in the units of this edition's readers."""
    calculator = catalogue.find(name)
    if calculator is None or not metric.METRIC:
        return tuple(given.items())
    declared = {one.name: one for one in calculator.fields}
    told = {one: metric.example_of(declared[one], text) if one in declared else text for one, text in given.items()}
    return tuple({**told, **({"show_in": "metric"} if "show_in" in declared else {})}.items())


def _fed(by: str) -> str:
    name, line_name = by.split(" ")
    line = next(one for one in answer_of(name).lines if one.name == line_name)
    return words.plain_decimal(line.value, line.places)
