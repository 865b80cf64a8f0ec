"""The one place where text becomes HTML or SVG text."""

_MARKS = (("&", "&amp;"), ("<", "&lt;"), (">", "&gt;"), ('"', "&quot;"))


def escaped(text: str) -> str:
    """Return `text` so that it can stand between tags and inside a quoted attribute."""
    for mark, entity in _MARKS:
        text = text.replace(mark, entity)
    return text
