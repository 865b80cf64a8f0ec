"""The one entry that either engine in the page calls: text in, text out."""

import json

from calc import catalogue
from calc.core.answer import public
from calc.core.drawing import Drawing
from calc.core.fields import Fault
from calc.numbers.words import json_text
from calc.render import html, svg

SKETCH = "sketch"  # no calculator: rooms as they are being typed


def answer(calculator: str, inputs_json: str) -> str:
    """Return, as JSON text, the public answer and its HTML, or the faults.

    `calculator` is a public name; `inputs_json` a flat JSON object of texts as they were typed. The result
    is {"answer": …, "html": …} or {"faults": [{"field", "given", "message", "example"}]}; of `SKETCH` it is {"sketch": […]},
    what is understood so far of each of the `rooms`, see `calc.site.sketch`. Raises ValueError
    only where `inputs_json` is not such an object, which no page sends.
    """
    given = json.loads(inputs_json)
    if not isinstance(given, dict) or not all([isinstance(text, str) for text in given.values()]):
        raise ValueError("inputs must be one JSON object of texts")
    if calculator == SKETCH:
        return json_text({"sketch": sketched(given.get("rooms", ""), given.get("show_in", ""))})
    found, faults = catalogue.work_out(calculator, given)
    if found is None:
        return json_text({"faults": fault_list(faults)})
    return json_text({"answer": public(found), "html": html.answer(found)})


def sketched(rooms: str, show_in: str) -> list[dict[str, object]]:
    """Return each of `rooms` as it stands, with its plan as SVG; nothing where the text is too long to be looked into."""
    module = __import__("calc.site.sketch", None, None, ("sketch",))  # a page without rooms must not wait for it
    found: list[dict[str, object]] = module.sketch(rooms, show_in)
    for number, one in enumerate(found):
        plan = one["plan"]
        one["plan"] = svg.svg(plan, "sketch-" + str(number + 1)) if isinstance(plan, Drawing) else ""
    return found


def fault_list(faults: tuple[Fault, ...]) -> list[dict[str, str]]:
    """Return faults as the public JSON list."""
    return [{"field": one.field, "given": one.given, "message": one.message, "example": one.example} for one in faults]
