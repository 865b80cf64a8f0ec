"""A page's own sentences, without its marks: what is graded for reading and what the search shows."""

import re

from handbook.content.reading import Page, Step


def prose(page: Page) -> str:
    """Return the page's own sentences: paragraphs and list items without marks, headings and tables, and its steps."""
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
            rows += [step.do if isinstance(step, Step) else step.until + " " + step.know for step in block.data.root]
    return "\n".join(rows)
