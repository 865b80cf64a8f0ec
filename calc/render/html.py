"""An answer as HTML. Written once when the page is built, and again in the page for a visitor's own figures."""

from calc import catalogue
from calc.core.answer import Answer, Branch, Item, Line, Listing, Table
from calc.evidence.cautions import Caution, in_order
from calc.evidence.local import LEFT_OUT
from calc.evidence.sources import SOURCES, source
from calc.numbers.words import lower
from calc.render import svg
from calc.render.escape import escaped
from calc.text.door import say

TO_ROOT = (
    "../../"  # from a page with a calculator to the root of the book: every such page lies in a folder of its section
)
_HOW = escaped(say("html.working", "How it is worked out"))
_SOURCE = escaped(say("html.source", "Source"))
_NOT_NOW = escaped(say("html.not_now", "Not now: an outcome to come"))
_WOULD_BE = escaped(say("html.would_be", "would be"))
GRAVE = ("DANGER", "WARNING")
PRACTICE = "common-practice"  # said once under the lines of an answer, not as a mark on each
_ALERT = (
    '<svg class="alert" viewBox="0 0 24 24" aria-hidden="true"><path d="M12 2 23 21H1Z"/>'
    '<path class="alert-mark" d="M11 9h2v6h-2zM11 17h2v2h-2z"/></svg>'
)


def answer(found: Answer) -> str:
    """Return the answer as one HTML fragment: what its figures raised of grave cautions, the figure, the cautions that always hold
    as rows, the drawing, the working, notes."""
    calculator = catalogue.find(found.calculator)
    always = calculator.always if calculator is not None else ()
    ordered = in_order(found.cautions)
    raised = [one for one in ordered if one.id not in always]
    parts = [caution(one) for one in raised if one.signal in GRAVE]
    parts.append(
        '<p class="figure"><strong>' + escaped(found.figure) + "</strong> " + escaped(found.figure_label) + "</p>"
    )
    parts.append('<p class="sentence">' + escaped(found.sentence) + "</p>")
    parts += [short(one) for one in ordered if one.id in always]
    parts += [_listing(one) for one in found.listings]
    parts += [_branch(one) for one in found.branches]
    if found.table is not None:
        parts.append(_table(found.table))
    if found.items:
        rows = _items(found.items)
        parts.append('<p class="items-title">' + escaped(found.items_title) + '</p><ul class="items">' + rows + "</ul>")
    if found.drawing is not None:
        parts.append(svg.figure(found.drawing, found.calculator))
    for at, drawing in enumerate(found.more_drawings):
        parts.append(svg.figure(drawing, found.calculator + "-" + str(at + 2)))
    parts += [caution(one) for one in raised if one.signal not in GRAVE]
    parts.append(
        '<details class="working"><summary>'
        + _HOW
        + '</summary><ol class="lines">'
        + "".join([_line(one) for one in found.lines])
        + "</ol>"
        + _practice(found.lines)
        + "</details>"
    )
    if found.notes:
        notes = "".join(["<li>" + escaped(note) + "</li>" for note in found.notes])
        parts.append('<ul class="notes">' + notes + "</ul>")
    return '<div class="answer">' + "".join(parts) + "</div>"


def caution(one: Caution) -> str:
    """Return a caution: its signal word on the word's own color, then hazard, consequence, how to avoid it."""
    return (
        '<div class="alarm alarm-' + lower(one.signal) + '" data-caution="' + one.id + '" role="note"><p class="signal">' + _signal(one) + "</p>"
        '<p class="hazard"><span class="what">' + escaped(one.hazard) + '</span> <span class="harm">' + escaped(one.consequence) + "</span> "
        "<strong>" + escaped(one.avoidance) + "</strong>" + mark_of(one.source) + "</p></div>"
    )  # fmt: skip


def short(one: Caution, told: bool = False) -> str:
    """Return a caution as one row, its signal word and the hazard, that opens to the rest; `told` has what to do in the row too."""
    do = "<strong>" + escaped(one.avoidance) + "</strong>"
    return (
        '<details class="alarm alarm-' + lower(one.signal) + ' short" data-caution="' + one.id + '"><summary><span class="signal">' + _signal(one)
        + '</span> <span class="what">' + escaped(one.hazard) + "</span>" + (" " + do if told else "") + "</summary>"
        '<p class="hazard"><span class="harm">' + escaped(one.consequence) + "</span> " + ("" if told else do) + mark_of(one.source) + "</p></details>"
    )  # fmt: skip


def _signal(one: Caution) -> str:
    return ("" if one.signal == "NOTICE" else _ALERT) + one.word


def mark_of(source_id: str) -> str:
    """Return the small mark that leads to a source in the list at the end of the page."""
    title = source(source_id).title
    return (
        ' <a class="mark" href="#source-' + source_id + '" title="' + escaped(title) + '">'
        '<span class="unseen">' + _SOURCE + ' </span>' + str(number_of(source_id)) + "</a>"
    )  # fmt: skip


def number_of(source_id: str) -> int:
    """Return the number of a source, the same on every page: its place in the register."""
    return _NUMBERS[source_id]


_NUMBERS = dict([(one.id, at + 1) for at, one in enumerate(SOURCES)])


def _listing(one: Listing) -> str:
    rows = "".join(
        ["<li>" + escaped(text) + (mark_of(source_id) if source_id else "") + "</li>" for text, source_id in one.rows]
    )
    kind = "ol" if len(one.rows) > 1 else "ul"
    return (
        '<div class="listing" data-listing="' + one.name + '"><p class="items-title">' + escaped(one.title) + "</p><" + kind + ">"
        + rows + "</" + kind + "></div>"
    )  # fmt: skip


def _table(one: Table) -> str:
    """Things side by side; it can be pushed sideways where it is wider than the page."""
    heads = "".join(['<th scope="col">' + escaped(text) + "</th>" for text in one.heads])
    rows = "".join(
        [
            '<tr><th scope="row">' + escaped(row[0]) + "</th>" + "".join(["<td>" + escaped(text) + "</td>" for text in row[1:]]) + "</tr>"
            for row in one.rows
        ]
    )  # fmt: skip
    return (
        '<section class="wide beside" tabindex="0" aria-label="' + escaped(one.title) + '"><table><thead><tr>' + heads + "</tr></thead><tbody>"
        + rows + "</tbody></table></section>"
    )  # fmt: skip


def _branch(one: Branch) -> str:
    """What would hold if: each state says so, since it is none now."""
    rows = "".join(
        [
            '<li><span class="label">' + escaped(item.name) + '</span> <b class="value"><span class="would">' + _WOULD_BE + '</span> ' + escaped(item.state)
            + "</b>" + "".join(['<span class="rule">' + escaped(text) + mark_of(source_id) + "</span>" for text, source_id in item.reasons])
            + "</li>"
            for item in one.items
        ]
    )  # fmt: skip
    return (
        '<section class="branch" data-branch="' + one.name + '"><p class="if">' + _NOT_NOW + '</p><h3>' + escaped(one.title) + "</h3><p>"
        + escaped(one.text) + '</p><ul class="items">' + rows + "</ul></section>"
    )  # fmt: skip


def _items(items: tuple[Item, ...]) -> str:
    """The items, a heading where another group begins."""
    parts, group = [], ""
    for one in items:
        if one.group != group:
            group = one.group
            parts.append('<li class="group">' + escaped(group) + "</li>")
        parts.append(_item(one))
    return "".join(parts)


def _item(one: Item) -> str:
    marks = "".join([mark_of(source_id) for source_id in one.sources])
    name = escaped(one.name)
    if one.page and one.page not in LEFT_OUT:
        name = '<a href="' + TO_ROOT + one.page + '/">' + name + "</a>"
    reasons = "".join(
        [
            "<li>" + escaped(text) + (mark_of(source_id) if source_id else "") + "</li>"
            for text, source_id in one.reasons
        ]
    )
    if reasons:
        reasons = '<ul class="reasons">' + reasons + "</ul>"
    text = '<span class="rule">' + escaped(one.text) + marks + "</span>" if one.text else ""
    kind = ' class="cut"' if one.cut else ""
    day = ' data-review-by="' + escaped(one.review_by) + '"' if one.review_by else ""
    return (
        "<li"
        + kind
        + day
        + '><span class="label">'
        + name
        + '</span> <b class="value">'
        + escaped(one.state)
        + "</b>"
        + reasons
        + text
        + "</li>"
    )


def _line(one: Line) -> str:
    marks = "".join([mark_of(source_id) for source_id in one.sources if source_id != PRACTICE])
    return (
        '<li><span class="label">' + escaped(one.label) + '</span> <b class="value">' + escaped(one.shown) + "</b>"
        '<span class="rule">' + escaped(one.rule) + marks + "</span>"
        '<span class="sum">' + escaped(one.working) + "</span></li>"
    )  # fmt: skip


def _practice(lines: tuple[Line, ...]) -> str:
    """Return what is said once of the lines that stand on common practice, alone or beside sources that they name."""
    told = []
    if [one for one in lines if one.sources == (PRACTICE,)]:
        told.append(escaped(say("html.practice", "Lines without a mark are common practice, no source.")))
    beside = [one.label for one in lines if PRACTICE in one.sources and len(one.sources) > 1]
    if beside:
        told.append(
            escaped(
                say(
                    "html.practice.too",
                    "Common practice, no source, goes into these too: {labels}.",
                    labels="; ".join(beside),
                )
            )
        )
    return '<p class="practice">' + " ".join(told) + mark_of(PRACTICE) + "</p>" if told else ""
