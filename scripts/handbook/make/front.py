"""The head of a page that nobody writes, as a written page has one."""

import json


def head_of(title: str, summary: str, kind: str = "reference", reviewed: str = "", facts: str = "") -> str:
    """Return the head; `reviewed` is the day on which what the page is made of was last looked at."""
    quoted = [
        json.dumps(text, ensure_ascii=False) for text in (title, summary, facts)
    ]  # JSON is YAML, with every mark escaped
    seen = f"reviewed: {reviewed}\nfacts: {quoted[2]}\n" if reviewed else ""
    return f"---\ntitle: {quoted[0]}\nkind: {kind}\nsummary: {quoted[1]}\n{seen}---\n\n"
