"""What can hurt has its caution before it: the asbestos stop before anything on the page of a way, the others by verb."""

import re

from handbook.content.reading import Block, Page, Step

STOP_CAUTION = "asbestos-first"
# Which caution covers which verb. Common practice, no source; the cautions themselves name theirs.
HAZARDS = {
    r"scrap(e|es|ing)": ("asbestos-first",),
    r"sand(s|ing)?": ("asbestos-first", "dust-silica"),
    r"screw(s|ing)?": ("asbestos-first",),
    r"cut(s|ting)?": ("asbestos-first",),
    r"wet(s|ting)?": ("asbestos-first", "live-wires"),
    r"spray(s|ing)?": ("asbestos-first", "live-wires"),
    r"climb(s|ing)?": ("fall-ladder",),
    r"lift(s|ing)?": ("fall-ladder",),
}
# 'wet' and 'cut' as they describe a thing, which is no work to be done.
NO_WORK = re.compile(r"\b(wet|cut) (coat|coats|compound|edge|edges|patch|patches|rag|sponge|film)\b|\bstill wet\b")
LINK_GOAL = re.compile(r"\]\([^)\s]+\)")


def guarding(text: str) -> list[tuple[str, str]]:
    """Return (verb, caution) for each caution that a step with this text must have before it."""
    plain = NO_WORK.sub("", text.lower())
    found = [(re.search(rf"\b{verb}\b", plain), cautions) for verb, cautions in HAZARDS.items()]
    return [(verb.group(), caution_id) for verb, cautions in found if verb for caution_id in cautions]


def check_stop(page: Page) -> None:
    """On the page of a way, or of the choice of one, nothing but its title may stand before the asbestos stop."""
    if page.head is None or page.head.kind not in ("way", "choice"):
        return
    title, rest = page.blocks[0] if page.blocks else None, page.blocks[1:]
    titled = title is not None and title.kind == "markdown" and re.fullmatch(r"\s*# [^\n]+\s*", title.text)
    if not (titled and rest and rest[0].kind == "caution" and rest[0].data.id == STOP_CAUTION):
        page.fault(1, 1, "STOP", f"a way begins with its title and then the caution {STOP_CAUTION}")


def check_step(page: Page, block: Block, at: int, step: Step, covered: set[str]) -> None:
    for verb, caution_id in guarding(step.do):
        if caution_id not in covered:
            page.fault(*block.at(at, "do"), "HAZARD", f"“{verb}” needs the caution {caution_id} before it")


def check_prose(page: Page, block: Block, covered: set[str]) -> None:
    """What a way or a task tells of work on texture, outside its steps too, stands after the asbestos stop."""
    if page.head is None or page.head.kind not in ("way", "task", "choice") or STOP_CAUTION in covered:
        return
    for offset, row in enumerate(block.text.splitlines()):
        if row.startswith("#"):
            continue
        for verb, caution_id in guarding(LINK_GOAL.sub("]", row)):
            if caution_id == STOP_CAUTION and verb != "wet":  # 'wet' describes a thing more often than work
                page.fault(block.line + offset, 1, "HAZARD", f"“{verb}” needs the caution {caution_id} before it")
