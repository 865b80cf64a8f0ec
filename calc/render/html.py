"""An answer as HTML. Written once when the page is built, and again in the page for a visitor's own figures."""

from calc.core.answer import Answer, Branch, Item, Line, Listing
from calc.evidence.cautions import Caution, in_order
from calc.evidence.sources import SOURCES, source
from calc.numbers.words import lower
from calc.render import svg
from calc.render.escape import escaped

TO_ROOT = (
    "../../"  # from a page with a calculator to the root of the book: every such page lies in a folder of its section
)
GRAVE = ("DANGER", "WARNING")
_ALERT = (
    '<svg class="alert" viewBox="0 0 24 24" aria-hidden="true"><path d="M12 2 23 21H1Z"/>'
    '<path class="alert-mark" d="M11 9h2v6h-2zM11 17h2v2h-2z"/></svg>'
)


def answer(found: Answer) -> str:
    """Return the answer as one HTML fragment: grave cautions, the figure, the drawing, the working, notes."""
    ordered = in_order(found.cautions)
    parts = [caution(one) for one in ordered if one.signal in GRAVE]
    parts.append(
        '<p class="figure"><strong>' + escaped(found.figure) + "</strong> " + escaped(found.figure_label) + "</p>"
    )
    parts.append('<p class="sentence">' + escaped(found.sentence) + "</p>")
    parts += [_listing(one) for one in found.listings]
    parts += [_branch(one) for one in found.branches]
    if found.items:
        rows = "".join([_item(one) for one in found.items])
        parts.append('<p class="items-title">' + escaped(found.items_title) + '</p><ul class="items">' + rows + "</ul>")
    if found.drawing is not None:
        parts.append(svg.figure(found.drawing, found.calculator))
    for at, drawing in enumerate(found.more_drawings):
        parts.append(svg.figure(drawing, found.calculator + "-" + str(at + 2)))
    parts += [caution(one) for one in ordered if one.signal not in GRAVE]
    parts.append(
        '<details class="working"><summary>How it is worked out</summary><ol class="lines">'
        + "".join([_line(one) for one in found.lines])
        + "</ol></details>"
    )
    if found.notes:
        notes = "".join(["<li>" + escaped(note) + "</li>" for note in found.notes])
        parts.append('<ul class="notes">' + notes + "</ul>")
    return '<div class="answer">' + "".join(parts) + "</div>"


def caution(one: Caution) -> str:
    """Return a caution: its signal word on the word's own color, then hazard, consequence, how to avoid it."""
    mark = "" if one.signal == "NOTICE" else _ALERT
    return (
        '<div class="alarm alarm-' + lower(one.signal) + '" data-caution="' + one.id + '" role="note"><p class="signal">' + mark + one.signal + "</p>"
        '<p class="hazard"><span class="what">' + escaped(one.hazard) + "</span> " + escaped(one.consequence) + " "
        "<strong>" + escaped(one.avoidance) + "</strong>" + mark_of(one.source) + "</p></div>"
    )  # fmt: skip


def mark_of(source_id: str) -> str:
    """Return the small mark that leads to a source in the list at the end of the page."""
    title = source(source_id).title
    return (
        ' <a class="mark" href="#source-' + source_id + '" title="' + escaped(title) + '">'
        '<span class="unseen">Source </span>' + str(number_of(source_id)) + "</a>"
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


def _branch(one: Branch) -> str:
    """What would hold if: each state says so, since it is none now."""
    rows = "".join(
        [
            '<li><span class="label">' + escaped(item.name) + '</span> <b class="value"><span class="would">would be</span> ' + escaped(item.state)
            + "</b>" + "".join(['<span class="rule">' + escaped(text) + mark_of(source_id) + "</span>" for text, source_id in item.reasons])
            + "</li>"
            for item in one.items
        ]
    )  # fmt: skip
    return (
        '<section class="branch" data-branch="' + one.name + '"><p class="if">Not now: an outcome to come</p><h3>' + escaped(one.title) + "</h3><p>"
        + escaped(one.text) + '</p><ul class="items">' + rows + "</ul></section>"
    )  # fmt: skip


def _item(one: Item) -> str:
    marks = "".join([mark_of(source_id) for source_id in one.sources])
    name = escaped(one.name)
    if one.page:
        name = '<a href="' + TO_ROOT + one.page + '/">' + name + "</a>"
    reasons = "".join(["<li>" + escaped(text) + mark_of(source_id) + "</li>" for text, source_id in one.reasons])
    if reasons:
        reasons = '<ul class="reasons">' + reasons + "</ul>"
    text = '<span class="rule">' + escaped(one.text) + marks + "</span>" if one.text else ""
    return (
        '<li><span class="label">'
        + name
        + '</span> <b class="value">'
        + escaped(one.state)
        + "</b>"
        + reasons
        + text
        + "</li>"
    )


def _line(one: Line) -> str:
    marks = "".join([mark_of(source_id) for source_id in one.sources])
    return (
        '<li><span class="label">' + escaped(one.label) + '</span> <b class="value">' + escaped(one.shown) + "</b>"
        '<span class="rule">' + escaped(one.rule) + marks + "</span>"
        '<span class="sum">' + escaped(one.working) + "</span></li>"
    )  # fmt: skip
