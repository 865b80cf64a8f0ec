"""A calculator as a section of a page: its form, and a worked example that stands there before anything is typed."""

from calc.core.answer import Answer, Calculator
from calc.core.fields import Field, entries, unit_told
from calc.render import html
from calc.render.escape import escaped
from calc.text.door import say

NUMERIC = ("area", "volume", "temperature", "percent", "rate", "count")


def section(
    calculator: Calculator,
    given: tuple[tuple[str, str], ...],
    worked: Answer | None,
    elsewhere: tuple[tuple[str, str], ...] = (),
    row: str = "",
    titled: bool = True,
    fixed: tuple[tuple[str, str], ...] = (),
) -> str:
    """Return the whole calculator for a page; `worked` is the answer for the example inputs `given`, or None where no example stands.

    A field stands once on a page: `elsewhere` are (field, calculator) pairs of those that another form of the page has. A
    `row` is the tag of its heading where it is one line with its number, which opens to the answer and the form; what is not `titled` has its title from the page.
    What is `fixed` the page itself says, as (field, value) pairs: nobody is asked, and no figure of a job changes it.
    """
    taken = dict(elsewhere)
    # Where the rooms are known, what may be given in their place is asked by nobody.
    by_rooms = calculator.one_of if "rooms" in taken and "rooms" in calculator.one_of else ()
    said = dict(fixed)
    own = [field for field in calculator.fields if field.name not in taken and field.name not in said]
    often = [field for field in own if not field.rare and field.name not in by_rooms]
    rare = [field for field in own if field.rare or field.name in by_rooms]
    rows = _known(calculator, [name for name in taken if name not in said], taken)
    rows += "".join(
        [
            _said(calculator.name, field, said[field.name])
            for field in calculator.fields
            if field.name in said and field.name not in taken
        ]
    )
    rows += "".join([_field(calculator.name, field) for field in often])
    if rare:
        folded = "".join([_field(calculator.name, field) for field in rare])
        rows += (
            '<details class="more"><summary>'
            + escaped(say("form.more", "More, each with a usual value"))
            + "</summary>"
            + folded
            + "</details>"
        )
    name = escaped(calculator.name)
    fields = " ".join([field.name for field in calculator.fields])
    head = ' id="' + name + '" data-calculator="' + name + '" data-fields="' + fields + '">'
    headline = (
        ' class="headline" data-headline-of="' + name + '"><b>' + escaped(worked.figure if worked else "") + "</b> <small>" + escaped(worked.figure_label if worked else "")
        + "</small></"
    )  # fmt: skip
    form = (
        '<form novalidate autocomplete="off"><div class="faults" role="alert" tabindex="-1" hidden></div>' + rows
        + '<button class="act" type="submit">' + escaped(calculator.verb) + "</button>"
        '<p class="status" role="status"></p><p class="saved" role="status"></p></form>'
        '<p class="by-command">' + escaped(say("form.command", "Without a script in this page, the command line answers:")) + " <kbd>python -m calc " + name + " --help</kbd></p>"
    )  # fmt: skip
    result = (
        '<div class="result" data-shows="' + ("example" if worked else "nothing") + '"><p class="origin">'
        + (_origin(calculator, given) if worked else escaped(say("form.none", "No figures of your own yet."))) + '</p><div class="slot">' + (html.answer(worked) if worked else "")
        + '</div><p class="tools" hidden><span class="by"></span> '
        '<button type="button" class="quiet again">' + escaped(say("form.again", "Work it out again with the full engine")) + '</button> '
        '<button type="button" class="quiet copy">' + escaped(say("form.copy", "Copy a link to these figures")) + '</button></p></div>'
    )  # fmt: skip
    title = escaped(calculator.title)
    if row:
        summary = "<summary><" + row + ">" + title + "</" + row + "><span" + headline + "span></summary>"
        return '<details class="calc"' + head + summary + result + form + "</details>"
    heading = "<h2>" + title + "</h2>" if titled else ""
    return '<section class="calc"' + head + heading + "<p" + headline + "p>" + form + result + "</section>"


def _said(prefix: str, field: Field, value: str) -> str:
    """A field that the page itself fills."""
    return (
        '<input type="hidden" id="' + prefix + "-" + field.name + '" name="' + field.name + '" data-label="' + escaped(field.label)
        + '" data-default="' + escaped(value) + '" value="' + escaped(value) + '">'
    )  # fmt: skip


def _known(calculator: Calculator, names: list[str], taken: dict[str, str]) -> str:
    """The fields called `names` that stand in another form of the page, each a link to where it stands."""
    shared = [field for field in calculator.fields if field.name in names and field.name != "show_in"]
    if not shared:
        return ""
    links = [
        '<a href="#' + taken[field.name] + "-" + field.name + '">' + escaped(field.label) + "</a>" for field in shared
    ]
    return '<p class="known-here">' + escaped(say("form.known", "Taken from above:")) + " " + ", ".join(links) + ".</p>"


def _origin(calculator: Calculator, given: tuple[tuple[str, str], ...]) -> str:
    labels = dict([(field.name, field) for field in calculator.fields])
    told = []
    for name, text in given:
        field = labels[name]
        shown = dict(field.choices).get(text, text) if field.kind == "choice" else text
        told.append(escaped(field.label) + " " + escaped(shown) + _unit_after(field, text))
    return (
        "<strong>"
        + escaped(say("form.example", "Worked example, made up, not your figures."))
        + "</strong> "
        + "; ".join(told)
        + "."
    )


def _unit_after(field: Field, text: str) -> str:
    unit = escaped(unit_told(field.unit))
    bare = all([mark in "0123456789./ " for mark in text])
    return " " + unit if unit and bare else ""


def _field(prefix: str, field: Field) -> str:
    key = prefix + "-" + field.name
    label = '<label for="' + key + '">' + escaped(field.label) + _optional(field) + "</label>"
    help_text = escaped(field.help)
    if field.kind != "choice":
        examples = entries(field.example) if field.kind == "list" else [field.example]
        help_text += (
            " "
            + escaped(say("form.like", "Like:"))
            + " "
            + "; ".join(["<kbd>" + escaped(one) + "</kbd>" for one in examples])
        )
    hint = '<p class="help" id="' + key + '-help">' + help_text + "</p>"
    if field.kind == "list" and field.choices:
        rows = "".join(
            ["<li><kbd>" + escaped(entry) + "</kbd> " + escaped(means) + "</li>" for entry, means in field.choices]
        )
        hint += (
            '<details class="kinds"><summary>'
            + escaped(say("form.kinds", "All that can be written here"))
            + "</summary><ul>"
            + rows
            + "</ul></details>"
        )
    if field.why:
        hint += (
            '<details class="why"><summary>'
            + escaped(say("form.why", "Why?"))
            + "</summary><p>"
            + escaped(field.why)
            + "</p></details>"
        )
    if field.kind == "rooms":  # their fault stands with the text
        return '<div class="field for-rooms">' + label + hint + _control(key, field) + "</div>"
    fault = '<p class="fault" id="' + key + '-fault" hidden></p>'
    return '<div class="field">' + label + hint + _control(key, field) + fault + "</div>"


def _optional(field: Field) -> str:
    return (
        ""
        if field.required or field.default
        else ' <span class="optional">' + escaped(say("form.optional", "(or leave empty)")) + "</span>"
    )


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
        area = (
            '<textarea rows="3" spellcheck="false" autocapitalize="words"'
            + common
            + ">"
            + escaped(field.default)
            + "</textarea>"
        )
        if field.kind == "list":
            return area
        summary = "<summary>" + escaped(say("form.as_text", "Type them as text")) + "</summary>"
        fault = '<p class="fault" id="' + key + '-fault" hidden></p>'
        return '<details class="as-text" open>' + summary + area + fault + "</details>"
    suggested = ""
    if field.kind == "text" and field.choices:
        common += ' list="' + key + '-known"'
        options = "".join(['<option value="' + escaped(value) + '"></option>' for value, _ in field.choices])
        suggested = '<datalist id="' + key + '-known">' + options + "</datalist>"
    mode = ' inputmode="decimal"' if field.kind in NUMERIC else ""
    unit = escaped(unit_told(field.unit))
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
