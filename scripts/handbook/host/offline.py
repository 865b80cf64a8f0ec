"""Writes what a host needs to know of the finished site: the service worker's list, and the headers."""

import hashlib
import json
import re
from base64 import b64encode
from pathlib import Path

KEPT = (".html", ".css", ".mjs", ".js", ".svg", ".png", ".webmanifest", ".bin")
PLACE = "const BOOK = { edition: '', kept: {}, later: {} }; // the build fills this line"
INDEXES = ("search.json", "search/search_index.json")  # of the book's search, and of the other theme's
SCRIPT = re.compile(r"<script>(.*?)</script>", re.DOTALL)
OWN_SCRIPTS = "script-src 'self'"
STYLE = re.compile(r"<style>(.*?)</style>", re.DOTALL)


def write_worker(site: Path, source: Path) -> None:
    """Fill the digests of the site's files into the service worker `source`, and leave it as `sw.js` in `site`."""
    kept, later = {}, {}
    for path in sorted(site.rglob("*")):
        name = path.relative_to(site).as_posix()
        if not path.is_file() or path.suffix in (".br", ".gz") or name == "sw.js":
            continue
        if re.match(r"engine/(full-|calc-[0-9a-f]+\.whl$)", name):
            later[name] = _digest(path)
        elif path.suffix in KEPT or name in INDEXES or name.startswith("engine/small-"):
            kept[name] = _digest(path)
    edition = hashlib.sha256(json.dumps([kept, later]).encode()).hexdigest()[:12]
    text = source.read_text(encoding="utf-8")
    if PLACE not in text:
        raise RuntimeError(f"{source.name} has no line for the build to fill")
    told = json.dumps({"edition": edition, "kept": kept, "later": later}, separators=(",", ":"))
    (site / "sw.js").write_text(text.replace(PLACE, f"const BOOK = {told};"), encoding="utf-8")


def write_headers(site: Path) -> None:
    """Write `_headers`, which static hosts read: a policy reaches the workers and the frames in this way only."""
    lost = site / "404.html"  # the one page with its style inside, which its own policy lets in too
    text = lost.read_text(encoding="utf-8")
    (own,) = (_named(one) for one in STYLE.findall(text))
    lost.write_text(text.replace("'sha256-STYLE'", own), encoding="utf-8")
    inside = _let_in_scripts(site)
    policy = "; ".join(
        (
            "default-src 'none'",
            " ".join((OWN_SCRIPTS, *inside, "'wasm-unsafe-eval'")),
            f"style-src 'self' {own}",
            "img-src 'self' data:",
            "connect-src 'self'",
            "worker-src 'self'",
            "manifest-src 'self'",
            "form-action 'none'",
            "frame-ancestors 'none'",
            "base-uri 'none'",
        )
    )
    lines = (
        "/*",
        f"  Content-Security-Policy: {policy}",
        "  X-Content-Type-Options: nosniff",
        "  Referrer-Policy: same-origin",
    )
    (site / "_headers").write_text("\n".join(lines) + "\n", encoding="utf-8")


def _let_in_scripts(site: Path) -> list[str]:
    """Name the scripts that stand inside of pages in each page's own policy, and return them all: the book's skin has none, and the
    other theme has a few short ones. No other script inside of a page runs."""
    every: set[str] = set()
    for page in sorted(site.rglob("*.html")):
        text = page.read_text(encoding="utf-8")
        if inside := sorted({_named(one) for one in SCRIPT.findall(text)}):
            page.write_text(text.replace(OWN_SCRIPTS, " ".join((OWN_SCRIPTS, *inside)), 1), encoding="utf-8")
            every.update(inside)
    return sorted(every)


def _named(inside: str) -> str:
    """Return what a policy calls a script or a style that stands inside of a page."""
    return f"'sha256-{b64encode(hashlib.sha256(inside.encode()).digest()).decode()}'"


def _digest(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()[:32]
