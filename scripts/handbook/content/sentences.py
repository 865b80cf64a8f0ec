"""A page's own sentences, without its marks: what is graded for reading and what the search shows."""

import re

from handbook.content.live import filled, left_out
from handbook.content.reading import Hold, Page, Step


def step_text(step: Step | Hold) -> str:
    """Return what a step says, with a mark in the place of each figure of a form."""
    return left_out(_said(step))


def _said(step: Step | Hold) -> str:
    return step.do if isinstance(step, Step) else step.until + " " + step.know


def prose(page: Page, *, with_example: bool = True) -> str:
    """Return the page's own sentences: paragraphs and list items without marks, headings and tables, and its steps, with the
    figures of the example in them or a mark in their place."""
    rows = []
    for block in page.blocks:
        if block.kind == "markdown":
            for paragraph in re.split(r"\n\s*\n|\n(?=[-*\d] |\d+\. )", block.text):
                flat = " ".join(paragraph.split())
                if flat and not flat.startswith(("#", "|", "<")):
                    flat = (
                        re.sub(r"\[([^\]]*)\]\([^)]*\)", r"\1", flat)
                        .lstrip("-*0123456789. ")
                        .replace("*", "")
                        .replace("`", "")
                    )
                    rows.append(flat if flat.endswith((".", "?", "!", ":")) else flat + ".")
        elif block.kind == "steps":
            rows += [filled(_said(one), page.live) if with_example else step_text(one) for one in block.data.root]
    return "\n".join(rows)
