"""The head of a page that nobody writes, as a written page has one."""


def head_of(title: str, summary: str, kind: str = "reference", reviewed: str = "", facts: str = "") -> str:
    """Return the head; `reviewed` is the day on which what the page is made of was last looked at."""
    seen = f'reviewed: {reviewed}\nfacts: "{facts}"\n' if reviewed else ""
    return f'---\ntitle: "{title}"\nkind: {kind}\nsummary: "{summary}"\n{seen}---\n\n'
