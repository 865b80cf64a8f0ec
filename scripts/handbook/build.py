"""Builds the handbook: check everything, fill in the pages, pack the engines, let MkDocs make HTML, compress.

`python -m handbook.build` does it all and leaves the finished site in `site/`.
"""

import dataclasses
import datetime
import json
import shutil
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config

from handbook.content import reading
from handbook.content.faults import ContentFaults
from handbook.engines import packing
from handbook.evidence import decisions
from handbook.host import compress, offline
from handbook.lint import checks, review, whole
from handbook.make import blocks, pages, search

ROOT = Path(__file__).resolve().parents[2]
DOCS = ROOT / "docs"
BUILD = ROOT / "build"
FINISHED = BUILD / "docs"
CACHE = BUILD / "cache"
SITE = ROOT / "site"


def read_all() -> list[reading.Page]:
    """Return every page, checked; raises ContentFaults with all faults at once."""
    paths = [path for path in sorted(DOCS.rglob("*.md")) if "theme" not in path.relative_to(DOCS).parts]
    found = [reading.read_page(path, ROOT) for path in paths]
    checks.check_pages(found, DOCS, set(pages.GENERATED))
    faults = [fault for page in found for fault in page.faults] + decisions.faults()
    if not faults:  # the pages that nobody writes are made from good ones only
        made = {path: make(found) for path, make in pages.GENERATED.items()}
        faults = whole.check_book(found, DOCS, made, ROOT / "mkdocs.yml", ROOT) + whole.unused_sources(found, ROOT)
    if faults:
        raise ContentFaults(faults)
    return found


def write_finished(found: list[reading.Page]) -> list[str]:
    """Write finished Markdown under build/docs; return the paths of the pages."""
    shutil.rmtree(FINISHED, ignore_errors=True)
    written = {}
    for page in found:
        head = page.head
        assert head is not None  # a page without a head is a fault
        meta = json.dumps(head.model_dump(mode="json"), ensure_ascii=False)  # JSON is YAML, with every mark escaped
        written[page.path.relative_to(DOCS).as_posix()] = f"---\n{meta}\n---\n\n" + blocks.finished(page)
    for path, make in pages.GENERATED.items():
        written[path] = make(found)
    for path, text in written.items():
        target = FINISHED / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8")
    (FINISHED / "search.json").write_text(search.index(found, DOCS), encoding="utf-8")
    return sorted(written)


def copy_assets() -> str:
    """Copy styles and scripts to a folder named by what is in them, so that a host may let them be kept for good."""
    source = DOCS / "assets"
    folder = f"assets-{packing.digest(*sorted(source.iterdir()))}"
    shutil.copytree(source, FINISHED / folder)
    return folder + "/"


def make_site(packed: packing.Engines, assets: str) -> None:
    """Let MkDocs turn the finished Markdown into HTML."""
    extra = {"engines": dataclasses.asdict(packed), "assets": assets}
    config = load_config(str(ROOT / "mkdocs.yml"), extra=extra)
    mkdocs_build(config)
    sitemap = SITE / "sitemap.xml"  # names no address that we know, so it says nothing
    for leftover in (sitemap, SITE / "sitemap.xml.gz"):
        leftover.unlink(missing_ok=True)


def expected_html(path: str) -> Path:
    """Return where the page at `path` of the Markdown stands in the site."""
    stem = path.removesuffix(".md")
    return SITE / ("index.html" if stem == "index" else f"{stem.removesuffix('/index')}/index.html")


def main() -> int:
    try:
        with _told("checking the pages"):
            found = read_all()
        for warning in review.due(datetime.date.today()):
            print("  warning: " + warning)
        with _told("filling in the pages"):
            written = write_finished(found)
        with _told("packing the engines (the first time takes a minute)"):
            packed = packing.pack(FINISHED, CACHE)
        with _told("making HTML"):
            make_site(packed, copy_assets())
        with _told("making it work offline"):
            offline.write_headers(SITE)
            offline.write_worker(SITE, DOCS / "theme" / "sw.js")
        with _told("compressing"):
            compress.compress_site(SITE, CACHE)
    except ContentFaults as faults:
        print(faults)
        print(f"{len(faults.faults)} faults; nothing was built.")
        return 1
    missing = [path for path in written if not expected_html(path).exists()]
    if missing:
        print("missing from the site: " + ", ".join(missing))
        return 1
    print(f"built {len(written)} pages in site/")
    return 0


@contextmanager
def _told(what: str) -> Iterator[None]:
    print(f"  {what} …", end="", flush=True)
    start = time.perf_counter()
    try:
        yield
    except BaseException:
        print(" stopped")
        raise
    print(f" {time.perf_counter() - start:.1f} s", flush=True)


if __name__ == "__main__":
    sys.exit(main())
