"""An answer as plain text, for the command line."""

from calc.core.answer import Answer
from calc.core.fields import Fault
from calc.evidence.cautions import in_order
from calc.evidence.sources import source
from calc.numbers.words import cut
from calc.text.door import say

INDENT = "    "


def answer(found: Answer) -> str:
    """Return the answer as lines of text: cautions, the figure, the working with its sources, notes."""
    rows = []
    for one in in_order(found.cautions):
        rows += [one.word + ": " + one.text, ""]
    rows += [found.figure + " " + found.figure_label, found.sentence, ""]
    for listing in found.listings:
        rows.append(listing.title)
        rows += ["  " + str(at + 1) + ". " + told for at, (told, _) in enumerate(listing.rows)]
        rows.append("")
    for branch in found.branches:
        rows += [branch.title + " (" + say("text.not_now", "not now: an outcome to come") + ")", INDENT + branch.text]
        for item in branch.items:
            rows.append("  " + item.name + " " + say("html.would_be", "would be") + ": " + item.state)
            rows += [INDENT + told for told, _ in item.reasons]
        rows.append("")
    if found.items:
        rows.append(found.items_title)
        group = ""
        for item in found.items:
            if item.group != group:
                group = item.group
                rows.append(group)
            rows.append("  " + item.name + ": " + item.state)
            rows += [
                INDENT + told + (" (" + source(source_id).title + ")" if source_id else "")
                for told, source_id in item.reasons
            ]
            if item.text:
                rows.append(INDENT + item.text)
            if item.sources:
                rows.append(INDENT + _source() + "; ".join([source(source_id).title for source_id in item.sources]))
        rows.append("")
    for line in found.lines:
        rows.append(line.label + ": " + line.shown + "  (" + line.name + ")")
        rows.append(INDENT + line.rule)
        rows.append(INDENT + line.working)
        rows.append(INDENT + _source() + "; ".join([source(source_id).title for source_id in line.sources]))
    if found.notes:
        rows.append("")
        rows += ["- " + note for note in found.notes]
    return "\n".join(rows)


def _source() -> str:
    return say("html.source", "Source") + ": "


def faults(found: tuple[Fault, ...]) -> str:
    """Return faults as lines of text, each with the field, one sentence and an example that works."""
    rows = []
    for one in found:
        rows.append(
            (cut(one.field) + ": " if one.field else "")
            + one.message
            + " "
            + say("text.example", "Example:")
            + " "
            + one.example
        )
    return "\n".join(rows)
