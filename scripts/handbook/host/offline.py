"""Writes the list of the service worker: what of the finished site is kept on the device, with its digest."""

import hashlib
import json
import re
from pathlib import Path

KEPT = (".html", ".css", ".mjs", ".js", ".svg", ".png", ".webmanifest", ".bin")
NOT_KEPT = ("preview.png", "sw.js")  # asked for by those who show a link, and by no page; the worker itself
PLACE = "const BOOK = { edition: '', kept: {}, later: {} }; // the build fills this line"
INDEXES = ("search.json", "search/search_index.json")  # of the book's search, and of the other theme's


def write_worker(site: Path, source: Path) -> None:
    """Fill the digests of the site's files into the service worker `source`, and leave it as `sw.js` in `site`."""
    kept, later = {}, {}
    for path in sorted(site.rglob("*")):
        name = path.relative_to(site).as_posix()
        if not path.is_file() or path.suffix in (".br", ".gz") or name in NOT_KEPT:
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


def _digest(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()[:32]
