"""What a page names: its ids, what it links to and loads, the policy that it brings, where it says that it stands."""

from html.parser import HTMLParser

NAMING = ("href", "src", "action", "data", "poster")


class Page(HTMLParser):
    """Reads one page."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.ids: set[str] = set()
        self.names: list[str] = []
        self.policy = ""
        self.canonical = ""
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        told = {name: value or "" for name, value in attrs}
        if "id" in told:
            self.ids.add(told["id"])
        if tag == "meta" and told.get("http-equiv", "").lower() == "content-security-policy":
            self.policy = told.get("content", "")
        if tag == "link" and told.get("rel") == "canonical":
            self.canonical = told.get("href", "")
            return
        self.names += [
            told[one] for one in NAMING if one in told and tag != "form" and (one != "data" or tag == "object")
        ]


SOURCES = (
    "script-src",
    "style-src",
    "img-src",
    "connect-src",
    "worker-src",
    "manifest-src",
    "font-src",
    "frame-src",
    "object-src",
    "media-src",
)
PLAIN = ("'self'", "'none'")
MORE = {
    "script-src": ("'wasm-unsafe-eval'",),
    "img-src": ("data:", "blob:"),
    "font-src": ("data:",),
    "worker-src": ("blob:",),
}
NEEDED = {
    "script-src": ("'self'", "'wasm-unsafe-eval'"), "style-src": ("'self'",), "connect-src": ("'self'",), "worker-src": ("'self'",),
    "img-src": ("'self'", "data:"), "manifest-src": ("'self'",),
}  # fmt: skip


def weakness(policy: str) -> str:
    """Return in what a policy lets in more than the book needs, '' where it is strict."""
    told = directives(policy)
    for name in SOURCES:
        allowed = (*PLAIN, *MORE.get(name, ()))
        for one in told.get(name, told.get("default-src", ["*"])):
            if one not in allowed and not one.startswith(("'sha256-", "'sha384-", "'sha512-")):
                return f"{name} lets in {one}"
    for name in ("form-action", "base-uri"):
        if told.get(name) not in (["'none'"], ["'self'"]):
            return f"{name} is open"
    return ""


def lack(policy: str) -> str:
    """Return what the book needs and a policy does not let in, '' where nothing is missing."""
    told = directives(policy)
    for name, needed in NEEDED.items():
        # Workers are held by the policy of scripts where there is none of their own.
        held_by = (name, "script-src", "default-src") if name == "worker-src" else (name, "default-src")
        given = next((told[one] for one in held_by if one in told), None)
        if given is None:  # nothing holds it
            continue
        for one in needed:
            if one not in given and not (one == "'self'" and "*" in given):
                return f"{name} lacks {one}"
    return ""


def directives(policy: str) -> dict[str, list[str]]:
    """Return the directives of a policy by name; of two of one name the first counts, as in a browser."""
    found: dict[str, list[str]] = {}
    for part in policy.split(";"):
        words = part.split()
        if words:
            found.setdefault(words[0].lower(), words[1:])
    return found
