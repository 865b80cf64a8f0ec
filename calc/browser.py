"""The one entry that either engine in the page calls: text in, text out."""

import json

from calc import catalogue
from calc.core.answer import public
from calc.core.fields import Fault
from calc.numbers.words import json_text
from calc.render import html


def answer(calculator: str, inputs_json: str) -> str:
    """Return, as JSON text, the public answer and its HTML, or the faults.

    `calculator` is a public name; `inputs_json` a flat JSON object of texts as they were typed. The result
    is {"answer": …, "html": …} or {"faults": [{"field", "given", "message", "example"}]}. Raises ValueError
    only where `inputs_json` is not such an object, which no page sends.
    """
    given = json.loads(inputs_json)
    if not isinstance(given, dict) or not all([isinstance(text, str) for text in given.values()]):
        raise ValueError("inputs must be one JSON object of texts")
    found, faults = catalogue.work_out(calculator, given)
    if found is None:
        return json_text({"faults": fault_list(faults)})
    return json_text({"answer": public(found), "html": html.answer(found)})


def fault_list(faults: tuple[Fault, ...]) -> list[dict[str, str]]:
    """Return faults as the public JSON list."""
    return [{"field": one.field, "given": one.given, "message": one.message, "example": one.example} for one in faults]
