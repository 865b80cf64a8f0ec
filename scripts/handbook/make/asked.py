"""Everything that the forms of the book ask: what a job can hold, by name, each leading to the form that asks for it."""

from calc import catalogue
from calc.core.fields import Field, unit_told
from calc.render.escape import escaped


def every_field() -> str:
    """Return a list of all fields, each once, at the first calculator that asks for it. The script of the page fills in what was typed."""
    seen: list[str] = []
    rows = []
    for calculator in catalogue.every():
        for one in calculator.fields:
            if one.name not in seen:
                seen.append(one.name)
                rows.append(_row(calculator.name, one))
    return f'<ul class="asked">{"".join(rows)}</ul>'


def _row(calculator: str, field: Field) -> str:
    where = f"prepare/choose/#{calculator}" if calculator == "decision" else f"work-out/{calculator}/#{calculator}"
    words = "".join(
        f'<data value="{escaped(value)}" hidden>{escaped(label)}</data>'
        for value, label in (field.choices if field.kind == "choice" else ())
    )
    unit = f' data-unit="{escaped(unit_told(field.unit))}"' if field.unit else ""
    return f'<li data-name="{field.name}"{unit}><a href="../{where}">{escaped(field.label)}</a>{words}</li>'
