"""What can hurt has its caution before it: the asbestos stop before any work, the others by verb; and none is told twice in full."""

import re
from collections import Counter

from calc import catalogue
from calc.core.answer import Calculator
from calc.render import html
from handbook.content.faults import ContentFault
from handbook.content.reading import Block, Page, Step
from handbook.evidence import check_table, once

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
FULL = re.compile(r'<div class="alarm alarm-[a-z]+" data-caution="([a-z0-9-]+)"')
ANY = re.compile(r'data-caution="([a-z0-9-]+)"')
FIGURE = '<p class="figure">'
ANSWER = '<div class="answer">'
DIVISION = re.compile(r"<div\b[^>]*>|</div>")


def guarding(text: str) -> list[tuple[str, str]]:
    """Return (verb, caution) for each caution that a step with this text must have before it."""
    plain = NO_WORK.sub("", text.lower())
    found = [(re.search(rf"\b{verb}\b", plain), cautions) for verb, cautions in HAZARDS.items()]
    return [(verb.group(), caution_id) for verb, cautions in found if verb for caution_id in cautions]


def at_head(page: Page) -> list[Block]:
    """Return the cautions that stand at the head of a page: before its first part, its steps and its calculators."""
    found = []
    for block in page.blocks:
        if block.kind == "caution":
            found.append(block)
        elif block.kind != "figure" and (block.kind != "markdown" or re.search(r"^##+ ", block.text, re.MULTILINE)):
            break
    return found


def _starts_work(page: Page) -> bool:
    """Whether somebody could start work from this page: where it tells a way, the choice of one, steps that disturb texture,
    or an amount that belongs to such work; and where the book begins."""
    if page.head is None or page.head.kind in ("way", "choice", "home"):
        return page.head is not None
    for block in page.blocks:
        if block.kind == "steps":
            steps = [one for one in block.data.root if isinstance(one, Step)]
            if any(caution_id == STOP_CAUTION for step in steps for _, caution_id in guarding(step.do)):
                return True
        elif block.kind == "calculator":
            calculator = catalogue.find(block.data.use)
            if calculator and STOP_CAUTION in calculator.always:
                return True
    return False


def check_stop(page: Page) -> None:
    """Where work could start, the asbestos stop stands at the head; on the page of a way, or of the choice of one, nothing but
    the title stands before it."""
    if not _starts_work(page):
        return
    if STOP_CAUTION not in [block.data.id for block in at_head(page)]:
        page.fault(1, 1, "STOP", f"work could start from this page, so the caution {STOP_CAUTION} stands at its head")
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


def check_finished(page: Page, text: str) -> None:
    """On the finished page no message stands in full twice, and each step has before it, in full or as a row, what guards it.

    What an answer says of its own figures is not counted: it is the same in the page, in the command and in both engines.
    """
    own = outside_answers(text)
    for caution_id, count in Counter(FULL.findall(own)).items():
        if count > 1:
            page.fault(1, 1, "MESSAGE-TWICE", f"{caution_id} stands in full {count} times; once in full, then as a row")
    for block in page.blocks:
        for step in block.data.root if block.kind == "steps" else ():
            place = own.find(f' id="{step.id}"') if isinstance(step, Step) else -1
            before = set(ANY.findall(own[:place])) if place >= 0 else set()
            wanted = [caution_id for _, caution_id in guarding(step.do)] if place >= 0 else []
            for caution_id in dict.fromkeys(wanted + ([step.caution] if place >= 0 and step.caution else [])):
                if caution_id not in before:
                    page.fault(block.line, 1, "HAZARD", f"{step.id} stands on the page before the caution {caution_id}")


def outside_answers(text: str) -> str:
    """Return HTML without what calculators answer."""
    kept, at, depth = [], 0, 0
    for found in DIVISION.finditer(text):
        if depth:
            depth += -1 if found.group().startswith("</") else 1
            at = found.end()
        elif found.group() == ANSWER:
            kept.append(text[at : found.start()])
            depth = 1
    return "".join(kept) + text[at:]


def answers_below() -> list[ContentFault]:
    """Return a fault for each answer, of the worked examples and of the evidence, whose figure stands below a message that its
    figures did not raise."""
    asked = [(one, dict(one.example), "its example") for one in catalogue.every()]
    by_name = {one.name: one for one in catalogue.every()}
    asked += [(by_name[name], vector["inputs"], vector["id"]) for name, vector in check_table.vectors()]
    found = []
    for calculator, inputs, told in asked:
        answer, _ = once.work_out(calculator.name, inputs)
        for caution_id in below(calculator, html.answer(answer)) if answer else ():
            message = f"{told}: the figure stands below {caution_id}, which it did not raise"
            found.append(ContentFault(f"calc/{calculator.name}", 1, 1, "ANSWER-BELOW", message))
    return found


def below(calculator: Calculator, text: str) -> list[str]:
    """Return the messages of `calculator` that hold for every answer and yet stand before the figure of this one, as HTML."""
    return [one for one in ANY.findall(text.split(FIGURE)[0]) if one in calculator.always]
