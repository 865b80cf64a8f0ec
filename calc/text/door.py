"""The one door for text: what people read has a stable key, its English in the code, and named slots."""

from calc.text.language import TEXTS


def say(key: str, english: str, **slots: str) -> str:
    """Return the text of `key`: the language's own, else `english`, each {slot} filled with the text of that name.

    A slot's own text is never looked into. Raises KeyError for a slot that is not given, TypeError for one that is no text.
    """
    text = TEXTS.get(key, english) if TEXTS else english
    if "{" not in text:
        return text
    parts = text.split("{")
    found = parts[0]
    for part in parts[1:]:
        name, _, rest = part.partition("}")
        found = found + slots[name] + rest
    return found
