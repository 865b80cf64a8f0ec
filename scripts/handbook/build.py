"""Builds the handbook: check everything, fill in the pages, pack the engines, let MkDocs make HTML, compress.

`python -m handbook.build` does it all and leaves the finished site in `site/`; with `--language FILE` the calculators speak
the language of that file (`handbook.engines.language`), with `--firm FILE` the book is the edition of that firm (`handbook.firm`).
"""

import argparse
import dataclasses
import datetime
import json
import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from mkdocs.commands.build import build as mkdocs_build

from handbook.content import reading
from handbook.content.faults import ContentFaults
from handbook.engines import language, packing
from handbook.evidence import decisions
from handbook.firm import declared, edition
from handbook.host import compress, offline, preview, published, stamp
from handbook.lint import checks, hazards, review, whole
from handbook.make import blocks, pages, search, sheets, skin

ROOT = Path(__file__).resolve().parents[2]
DOCS = ROOT / "docs"
BUILD = ROOT / "build"
FINISHED = BUILD / "docs"
CACHE = BUILD / "cache"
TOLD = BUILD / "told.json"  # what the template was last told, for a page that is made alone
WORK = (
    ".lidbook"  # beside a firm.yml: its laid-out copy of the book, what is kept between builds, the schema for editors
)
# The style sheets of the book, joined to one in this order: what stands later wins.
STYLES = (
    "paper", "navigation", "cover", "screen", "hazards", "forms", "rooms", "answers", "guide", "ladder", "search", "drawings", "steps", "live", "folds", "beside", "jobs", "print", "handed",
)  # fmt: skip
FIRM_STYLE = "firm"  # comes last, in a firm's edition alone
# What makes the code of a link on the device: a library, as its package brings it.
CODE_MAKER = packing.MODULES / "qrcode-generator" / "dist" / "qrcode.mjs"
SITE = ROOT / "site"


def read_all() -> list[reading.Page]:
    """Return every page, checked; raises ContentFaults with all faults at once."""
    paths = [path for path in sorted(DOCS.rglob("*.md")) if path.relative_to(DOCS).parts[0] not in checks.NO_PAGES]
    found = [reading.read_page(path, ROOT) for path in paths]
    checks.check_pages(found, DOCS, set(pages.GENERATED))
    faults = [fault for page in found for fault in page.faults] + decisions.faults()
    if not faults:  # the pages that nobody writes are made from good ones only
        faults = whole.check_book(found, DOCS, pages.made(found), ROOT / "mkdocs.yml", ROOT)
        faults += (
            [] if told_of_firm() else whole.unused_sources(found, ROOT)
        )  # an edition may lack the page that cites one
        for page in found:
            page.finished = blocks.finished(page)
            hazards.check_finished(page, page.finished)
        faults += [fault for page in found for fault in page.faults] + hazards.answers_below()
    if faults:
        raise ContentFaults(faults)
    return found


def write_finished(found: list[reading.Page]) -> list[str]:
    """Write finished Markdown under build/docs; return the paths of the pages."""
    shutil.rmtree(FINISHED, ignore_errors=True)
    written = {}
    for page in found:
        written[page.path.relative_to(DOCS).as_posix()] = headed(page)
    written |= pages.made(found)
    for path, text in written.items():
        target = FINISHED / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(sheets.placed(path, text), encoding="utf-8")
    (FINISHED / "search.json").write_text(search.index(found, DOCS), encoding="utf-8")
    shutil.copy(DOCS / "job.schema.json", FINISHED)
    (FINISHED / declared.SCHEMA).write_text(declared.schema(), encoding="utf-8")
    return sorted(written)


def headed(page: reading.Page) -> str:
    """Return the finished Markdown of a page under its head."""
    assert page.head is not None  # a page without a head is a fault
    meta = json.dumps(page.head.model_dump(mode="json"), ensure_ascii=False)  # JSON is YAML, with every mark escaped
    return f"---\n{meta}\n---\n\n" + (page.finished or blocks.finished(page))


def copy_assets(chosen: str) -> str:
    """Copy styles and scripts to a folder named by what is in them, so that a host may let them be kept for good."""
    source = DOCS / "assets"
    names = (*STYLES, FIRM_STYLE) if told_of_firm() else STYLES
    joined = BUILD / "book.css"
    joined.write_text(skin.joined(DOCS, names, chosen), encoding="utf-8")
    folder = f"assets-{packing.digest(*sorted(source.iterdir()), joined, CODE_MAKER)}"
    shutil.copytree(source, FINISHED / folder)
    for one in (joined, CODE_MAKER):
        shutil.copyfile(one, FINISHED / folder / one.name)
    return folder + "/"


def make_site(told: Mapping[str, object], chosen: str, *, dirty: bool = False) -> str:
    """Let MkDocs turn the finished Markdown into HTML in the chosen skin, all of it or what changed since the last time; return the
    address that the site will stand at, '' where nobody said."""
    config = skin.config(ROOT, told, chosen)
    config.strict = config.strict and not dirty  # a build of one page is warned of, and no fault
    mkdocs_build(config, dirty=dirty)
    skin.settle(SITE, chosen)
    for leftover in ("sitemap.xml", "sitemap.xml.gz"):  # of every page, with the day of the build
        (SITE / leftover).unlink(missing_ok=True)
    address = config.site_url or ""
    if address:
        style = (DOCS / "styles" / f"{STYLES[0]}.css").read_text(encoding="utf-8")
        preview.write(SITE, config.site_name, config.site_description or "", address, style)
    return address


def told_of_site() -> tuple[dict[str, object], str]:
    """Return what the templates were last told, and the skin."""
    told, chosen = json.loads(TOLD.read_text(encoding="utf-8"))
    return told, chosen


def told_of_firm() -> dict[str, object] | None:
    """Return what pages tell of the firm whose edition this is; None for the book's own."""
    path = ROOT / edition.TOLD
    found: dict[str, object] | None = json.loads(path.read_text(encoding="utf-8")) if path.exists() else None
    return found


def expected_html(path: str) -> Path:
    """Return where the page at `path` of the Markdown stands in the site."""
    stem = path.removesuffix(".md")
    return SITE / ("index.html" if stem == "index" else f"{stem.removesuffix('/index')}/index.html")


def main(arguments: list[str]) -> int:
    """Build the book that this lies in; `handbook.command` builds editions of it."""
    parser = argparse.ArgumentParser(prog="handbook.build")
    parser.add_argument("--language", type=Path, help="a file of texts by their keys, in JSON or TOML")
    parser.add_argument(
        "--skin", choices=skin.CONFIGS, default=skin.OWN, help="material: under the theme mkdocs-material"
    )
    options = parser.parse_args(arguments)
    return build(options.skin) if options.language is None else build_in(options.language, options.skin)


def build_firm(file: Path, site: Path | None, folder: Path, *arguments: str, cache: Path = CACHE) -> int:
    """Build the edition of the firm of `file` in a copy of the book at `folder`, and leave it in `site`, else in the copy."""
    try:
        firm = edition.read_firm(file.resolve(), file.as_posix(), DOCS, set(pages.GENERATED))
        edition.lay_out(firm, ROOT, folder, cache)
        told = ("--skin", firm.says.skin, *arguments)  # the last word counts
        status = edition.run("handbook.build", firm, folder, *told)
        if status:
            return status
        edition.must_keep(firm, DOCS, folder)
    except ContentFaults as faults:
        print(faults)
        print(f"{len(faults.faults)} faults; nothing was built.")
        return 1
    if site:
        shutil.rmtree(site, ignore_errors=True)
        shutil.move(folder / "site", site)
    return 0


def check_firm(file: Path, folder: Path, cache: Path = CACHE) -> int:
    """Look at the file of a firm, and at its edition as the book is looked at."""
    try:
        firm = edition.read_firm(file.resolve(), file.as_posix(), DOCS, set(pages.GENERATED))
    except ContentFaults as faults:
        print(faults)
        return 1
    edition.lay_out(firm, ROOT, folder, cache)
    return edition.run("handbook.check", firm, folder)


def build_in(texts: Path, chosen: str) -> int:
    """Build with the calculators in another language: a copy of them with its texts, in a process that sees the copy alone."""
    try:
        copy = language.package(ROOT / "calc", texts, BUILD / "language")
    except ContentFaults as faults:
        print(faults)
        return 1
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "scripts")}
    # What lies in the folder that it is run in is found first.
    command = [sys.executable, "-m", "handbook.build", "--skin", chosen]
    return subprocess.run(command, cwd=copy.parent, env=environment, check=False).returncode


def build(chosen: str = skin.OWN) -> int:
    """Build the site with the calculators as they are found, in the chosen skin."""
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
            told = {
                "engines": dataclasses.asdict(packed), "assets": copy_assets(chosen), "firm": told_of_firm(), "edition": stamp.edition(ROOT),
            }  # fmt: skip
            TOLD.write_text(json.dumps([told, chosen]), encoding="utf-8")
            address = make_site(told, chosen)
        with _told("making it known, and work offline"):
            published.publish(SITE, address)
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
    sys.exit(main(sys.argv[1:]))
