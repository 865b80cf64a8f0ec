"""What an answer of any way cites is among what its calculator says that it can cite, so that each mark on a page leads somewhere."""

import pytest

from calc import catalogue
from calc.decision.questions import WAYS

HOUSE = "Living: 20' x 14'; Bed: 12' x 11'"
MORE = (
    {},
    {"texture_depth_in": "1/8", "ceiling_height_ft": "12"},
    {"paint_coats": "0"},
    {"asbestos_result": "none", "result_rooms": "this", "result_layers": "all"},
)


def cited(answer):
    found = {one.source for one in answer.cautions}
    for lined in (answer.lines, answer.items):
        found.update(source for one in lined for source in one.sources)
    found.update(source for one in answer.items for _, source in one.reasons)
    found.update(source for one in answer.listings for _, source in one.rows)
    return found - {""}


@pytest.mark.parametrize("name", ["plan", "shopping"])
@pytest.mark.parametrize("way", [way for way, _ in WAYS])
def test_each_way_cites_what_its_calculator_can_cite(name, way):
    calculator = catalogue.find(name)
    example, _ = catalogue.work_out(name, dict(calculator.example))
    known = {field.source for field in calculator.fields} | set(calculator.sources) | cited(example)
    for more in MORE:
        answer, faults = catalogue.work_out(name, {"way": way, "rooms": HOUSE, **more})
        assert answer is not None, faults
        assert cited(answer) <= known, (way, cited(answer) - known)
