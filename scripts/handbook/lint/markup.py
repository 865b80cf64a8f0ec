"""What a page may hold of HTML, and of Markdown that brings in more: nothing that runs, loads a file, or leads off the book.

A firm's page takes plain tags alone, as any other could hide what stands after it. The book's own may name a class or a place too.
"""

import json
import re

from handbook.content.reading import Block, Page

PLAIN = ("div", "p", "dl", "dt", "dd", "b", "i", "strong", "em", "kbd", "sub", "sup")
OF_BOOK = (*PLAIN, "ul", "ol", "li", "a", "span", "form", "label", "input", "button", "details", "summary")
# An address in the book: no scheme, no other host, no mark written in code.
VALUE = r'(?:class|id|role|for|type|name|autocomplete|spellcheck|aria-[a-z]+|markdown)="[^"<>&]*"|href="(?![^"/#?]*:|//)[\w./#?=-]*"'
FIRM = re.compile(rf"</?(?:{'|'.join(PLAIN)})>|<br>|<div class=\"screen\" markdown=\"0\">")
BOOK = re.compile(rf"</?(?:{'|'.join(OF_BOOK)})(?: (?:{VALUE}))*>|<br>")
HEADING_ID = re.compile(r"^#{1,6} .*\{ ?#[a-z][a-z0-9-]* ?\}$")
LINK = re.compile(r"\]\([^)\s<>&\\]+\)")
# Marks that break a line, or turn what stands after them.
TURNING = re.compile("[\x00-\x08\x0b-\x1f\x7f\u2028\u2029\u202a-\u202e\u2066-\u2069]")
UNSAFE = (
    (re.compile(r"<"), "HTML beyond PLAIN and br is not taken. Write &lt; for the mark itself"),
    (re.compile(r"~~~|```"), "a fence is one of the book's blocks, by its name. Take this one out"),
    (re.compile(r"!\["), "a picture is not taken. Use a figure block with a drawing of the book"),
    (re.compile(r"\]\s*:"), "an address is written where its link stands. Like: [Settle](../prepare/settle.md)"),
    (re.compile(r"\]\("), "a link is words and a page, with nothing else in it. Like: [Settle](../prepare/settle.md)"),
    (re.compile(r"[{}]"), "braces stand after a heading alone. Like: ## What you get { #what-you-get }"),
    (TURNING, "a mark that breaks or turns a line is not taken"),
)  # fmt: skip


def check(page: Page, block: Block, firm: bool) -> None:
    """Tell whatever in a block of `page` could hide, load or run something; `firm` where the page is a firm's."""
    code = "FIRM-PAGE" if firm else "MARKUP"
    if block.kind != "markdown":
        if TURNING.search(json.dumps(block.data.model_dump(mode="json"), ensure_ascii=False)):
            page.fault(*block.at(), code, UNSAFE[-1][1])
        return
    tags, names = (FIRM, PLAIN) if firm else (BOOK, OF_BOOK)
    for offset, row in enumerate(block.text.splitlines()):
        plain = LINK.sub(_blank, tags.sub(_blank, row))
        if HEADING_ID.match(row):
            plain = plain.rpartition("{")[0]
        for mark, message in UNSAFE:
            for found in mark.finditer(plain):
                page.fault(block.line + offset, found.start() + 1, code, message.replace("PLAIN", ", ".join(names)))
    for name in names:
        opened, closed = len(re.findall(rf"<{name}[ >]", block.text)), block.text.count(f"</{name}>")
        if opened != closed and name != "input":
            message = f"<{name}> is opened {opened} times and closed {closed} times in this part. Close each"
            page.fault(block.line, 1, code, message)


def check_head(page: Page, firm: bool) -> None:
    """Tell of a mark that breaks or turns a line in the head of `page`."""
    told = page.head.model_dump(mode="json") if page.head else {}
    for name, text in told.items():
        if TURNING.search(text) or "\n" in text:
            page.fault(1, 1, "FIRM-PAGE" if firm else "MARKUP", f"{name}: {UNSAFE[-1][1]}")


def _blank(found: re.Match[str]) -> str:
    return " " * len(found.group())
