"""A calculator as a section of a page: its form, and a worked example that stands there before anything is typed."""

from calc.core.answer import Answer, Calculator
from calc.core.fields import UNIT_NAMES, Field, entries
from calc.render import html
from calc.render.escape import escaped

NUMERIC = ("area", "volume", "temperature", "percent", "rate", "count")


def section(calculator: Calculator, given: tuple[tuple[str, str], ...], worked: Answer) -> str:
    """Return the whole section for a page; `worked` is the answer for the example inputs `given`."""
    often = [field for field in calculator.fields if not field.rare]
    rare = [field for field in calculator.fields if field.rare]
    rows = "".join([_field(calculator.name, field) for field in often])
    if rare:
        folded = "".join([_field(calculator.name, field) for field in rare])
        rows += '<details class="more"><summary>More, each with a usual value</summary>' + folded + "</details>"
    name = escaped(calculator.name)
    return (
        '<section class="calc" id="' + name + '" data-calculator="' + name + '"><h2>' + escaped(calculator.title) + "</h2>"
        '<form novalidate autocomplete="off"><div class="faults" role="alert" tabindex="-1" hidden></div>' + rows
        + '<button class="act" type="submit">' + escaped(calculator.verb) + "</button>"
        '<p class="status" role="status"></p><p class="saved" role="status"></p></form>'
        '<div class="result" data-shows="example"><p class="origin">' + _origin(calculator, given) + '</p><div class="slot">' + html.answer(worked)
        + '</div><p class="tools" hidden><span class="by"></span> '
        '<button type="button" class="quiet again">Work it out again with the full engine</button> '
        '<button type="button" class="quiet copy">Copy a link to these figures</button></p></div></section>'
    )  # fmt: skip


def _origin(calculator: Calculator, given: tuple[tuple[str, str], ...]) -> str:
    labels = dict([(field.name, field) for field in calculator.fields])
    told = []
    for name, text in given:
        field = labels[name]
        shown = dict(field.choices).get(text, text) if field.kind == "choice" else text
        told.append(escaped(field.label) + " " + escaped(shown) + _unit_after(field, text))
    return "<strong>Worked example, made up, not your figures.</strong> " + "; ".join(told) + "."


def _unit_after(field: Field, text: str) -> str:
    unit = UNIT_NAMES.get(field.unit, field.unit)
    bare = all([mark in "0123456789./ " for mark in text])
    return " " + unit if unit and bare else ""


def _field(prefix: str, field: Field) -> str:
    key = prefix + "-" + field.name
    label = '<label for="' + key + '">' + escaped(field.label) + _optional(field) + "</label>"
    help_text = escaped(field.help)
    if field.kind != "choice":
        examples = entries(field.example) if field.kind == "list" else [field.example]
        help_text += " Like: " + " ".join(["<kbd>" + escaped(one) + "</kbd>" for one in examples])
    hint = '<p class="help" id="' + key + '-help">' + help_text + "</p>"
    if field.kind == "list" and field.choices:
        rows = "".join(
            ["<li><kbd>" + escaped(entry) + "</kbd> " + escaped(means) + "</li>" for entry, means in field.choices]
        )
        hint += '<details class="kinds"><summary>All that can be written here</summary><ul>' + rows + "</ul></details>"
    if field.why:
        hint += '<details class="why"><summary>Why?</summary><p>' + escaped(field.why) + "</p></details>"
    fault = '<p class="fault" id="' + key + '-fault" hidden></p>'
    return '<div class="field">' + label + hint + _control(key, field) + fault + "</div>"


def _optional(field: Field) -> str:
    return "" if field.required or field.default else ' <span class="optional">(or leave empty)</span>'


def _control(key: str, field: Field) -> str:
    common = ' id="' + key + '" name="' + field.name + '" aria-describedby="' + key + "-help " + key + '-fault"'
    common += ' data-default="' + escaped(field.default) + '"'
    if field.fed_by:
        common += ' data-fed-by="' + escaped(field.fed_by) + '"'
    if field.kind == "choice":
        options = "".join(
            [
                '<option value="' + escaped(value) + '"' + (" selected" if value == field.default else "") + ">"
                + escaped(label) + "</option>"
                for value, label in field.choices
            ]
        )  # fmt: skip
        return "<select" + common + ">" + options + "</select>"
    if field.kind in ("rooms", "list"):
        return (
            '<textarea rows="3" spellcheck="false" autocapitalize="words"'
            + common
            + ">"
            + escaped(field.default)
            + "</textarea>"
        )
    suggested = ""
    if field.kind == "text" and field.choices:
        common += ' list="' + key + '-known"'
        options = "".join(['<option value="' + escaped(value) + '"></option>' for value, _ in field.choices])
        suggested = '<datalist id="' + key + '-known">' + options + "</datalist>"
    mode = ' inputmode="decimal"' if field.kind in NUMERIC else ""
    unit = UNIT_NAMES.get(field.unit, field.unit)
    shown = '<span class="unit" aria-hidden="true">' + unit + "</span>" if unit else ""
    return (
        '<span class="box"><input type="text"'
        + mode
        + common
        + ' value="'
        + escaped(field.default)
        + '">'
        + shown
        + "</span>"
        + suggested
    )
