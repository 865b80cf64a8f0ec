"""A plan as one drawing or more: every piece with its number and cut size, rows of figures outside the walls.

Where a piece cannot hold its lettering, the plan is parted and each part drawn larger; nothing is shrunk. A strip that no
page could hold it in is told outside, with a line to it.
"""

from calc.core.drawing import Plan
from calc.numbers import words
from calc.render.ink import sheet
from calc.render.plan_part import Part, size_of
from calc.text.door import say

MOST_PARTS = 24  # drawings of one plan; what would be past them stands in the list alone


def drawings(plan: Plan, prefix: str) -> list[tuple[str, str, str]]:
    """Return (SVG element, title, what its caption adds) for the plan, or for each of its parts; `prefix` keeps their ids apart."""
    parts, left_off = _parts(plan)
    found = []
    for at, part in enumerate(parts):
        title, name, note = plan.title, prefix, plan.note
        if len(parts) > 1:
            title += ", " + say(
                "plan.part", "part {part} of {parts}", part=words.whole(at + 1), parts=words.whole(len(parts))
            )
            name += "-part-" + str(at + 1)
            note = (note + " " if at == 0 else "") + say("plan.part.note", "What is grey stands in another part.")
        if left_off and at == len(parts) - 1:
            note += " " + say(
                "plan.part.rest",
                "{pieces} more stand in the cut list alone: this drawing has no room for them.",
                pieces=words.plural(left_off, "piece"),
            )
        told = [say("board.piece", "No. {number} {size}", number=one.name, size=size_of(one)) for one in part.own]
        description = plan.description + (" " + "; ".join(told) + "." if told else "")
        found.append((sheet(part.height, name, title, description, "".join(part.body())), title, note))
    return found


def _parts(plan: Plan) -> tuple[list["Part"], int]:
    """The parts of a plan, halved across its longer way until each piece that can holds its lettering; and how many pieces are in none."""
    waiting = [Part(plan, list(plan.blocks))]
    settled: list[Part] = []
    while waiting and len(settled) < MOST_PARTS:
        part = waiting.pop(0)
        halves = part.halves() if part.crowded() else []
        if halves:
            waiting = [Part(plan, own) for own in halves] + waiting
        else:
            settled.append(part)
    return settled, len([one for part in waiting for one in part.own])
