"""A firm's edition is a copy of the book with what is the firm's laid over it, built like any other.

So no part of the generator knows of a firm but the page template, which prints who it is: pages, cautions, limits and colors are
those of the copy, and every check of the book looks at them.
"""

import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import yaml

from handbook.content.faults import ContentFaults
from handbook.content.reading import read_page
from handbook.engines import packing
from handbook.firm import colors, figures, kept, local, mark, own_pages
from handbook.firm.declared import FirmFile
from handbook.firm.read import Reading, read
from handbook.lint.hazards import at_head

TOLD = "edition.json"  # beside mkdocs.yml: what the template prints of the firm, and its figures for the forms
COPIED = ("docs", "scripts/handbook", "scripts/pack_full.mjs", "scripts/package.json", "mkdocs.yml", "pyproject.toml", "README.md", "LICENSE", "requirements.lock", "CHANGELOG.md")  # fmt: skip
MODULES = "scripts/node_modules"
BOOK_PLUM = {
    "#6a2c6f": "accent_light",
    "#dba6e2": "accent_dark",
}  # where a color cannot be a custom property: icon and lost page
LINK = re.compile(r"(?<!!)\[([^\]]*)\]\(([^)\s]+)\)")


@dataclass
class Firm:
    """A firm whose file is good: what it says, its figures for the forms, and its pages."""

    says: FirmFile
    folder: Path
    values: dict[str, figures.Value]
    pages: own_pages.OwnPages
    rules_at: dict[str, str]  # the id of each limit of a place, and where the file has the day of its next review


def read_firm(path: Path, shown: str, docs: Path, generated: set[str]) -> Firm:
    """Return the firm of the file at `path`; raises ContentFaults with every fault of the file, its mark and its pages."""
    says, reading = read(path, shown)
    if says is None:
        raise ContentFaults(reading.faults)
    values = figures.check(says, reading)
    local.check(says, reading)
    _check_colors(says, reading)
    _check_mark(says, reading)
    pages = own_pages.check(says, reading, docs, generated)
    if reading.faults:
        raise ContentFaults(list(dict.fromkeys(reading.faults)))
    rules_at = {
        f"firm-{one.id}": ":".join([shown, *map(str, reading.at("local_rules", at, "review_by"))])
        for at, one in enumerate(says.local_rules)
    }
    return Firm(says, reading.folder, values, pages, rules_at)


def _check_colors(says: FirmFile, reading: Reading) -> None:
    for name, color in says.colors.model_dump().items() if says.colors else ():
        paper = colors.PAPER[name]
        found = colors.contrast(color, paper)
        if found < colors.LEAST:
            like = colors.nearest(color, paper)
            message = f"it has {found:.2f} to 1 against the paper {paper}, and {colors.LEAST} are needed; the nearest of its hue that has them is {like}"
            reading.refuse(("colors", name), "COLOR", message)
        elif word := colors.like_signal(color):
            reading.refuse(
                ("colors", name),
                "COLOR",
                f"it would be taken for {word}. Red, orange and yellow belong to the signal words",
            )


def _check_mark(says: FirmFile, reading: Reading) -> None:
    if says.mark is None:
        return
    path = reading.folder / says.mark
    if (
        not says.mark.endswith(".svg")
        or not path.is_file()
        or not path.resolve().is_relative_to(reading.folder.resolve())
    ):
        reading.refuse(("mark",), "MARK", f"there is no such SVG file beside {Path(reading.shown).name}")
        return
    reading.faults += mark.faults(path, (Path(reading.shown).parent / says.mark).as_posix())


def lay_out(firm: Firm, root: Path, folder: Path, cache: Path) -> None:
    """Write the edition's copy of the book at `root` into `folder`; what is large and the same for every edition is shared with it."""
    shutil.rmtree(folder, ignore_errors=True)
    cache.mkdir(parents=True, exist_ok=True)
    for name, source in {"calc": packing.CALC, **{name: root / name for name in COPIED}}.items():
        target = folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        if source.is_dir():
            shutil.copytree(source, target, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copyfile(source, target)
    for name, shared in ((MODULES, root / MODULES), ("build/cache", cache)):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        os.symlink(shared.resolve(), folder / name, target_is_directory=True)
    docs = folder / "docs"
    if (
        firm.says.cautions or firm.says.local_rules or local.left_out(firm.says)
    ):  # else the calculators are the book's, and packed already
        (folder / "calc" / local.MODULE).write_text(local.source(firm.says), encoding="utf-8")
    _place_cautions(firm, docs, folder)  # before the firm's own pages are there, as those carry their own
    _take_out(firm, docs)
    for name, text in firm.pages.texts.items():
        (docs / name).parent.mkdir(parents=True, exist_ok=True)
        (docs / name).write_text(text, encoding="utf-8")
    _list_steps(firm, docs, folder)
    with (docs / "words.txt").open("a", encoding="utf-8") as words:
        words.write("\n".join(["", *firm.says.pages.words, *_own_words(firm.says)]) + "\n")
    _paint(firm, docs)
    _name(firm, folder)


def _place_cautions(firm: Firm, docs: Path, folder: Path) -> None:
    """Put each of the firm's cautions at the head of its pages, after those that stand there."""
    for name in dict.fromkeys(name for one in firm.says.cautions for name in one.pages):
        path = docs / name
        page = read_page(path, folder)
        rows = path.read_text(encoding="utf-8").splitlines()
        head = at_head(page)
        title = next(at for at, row in enumerate(rows, 1) if row.startswith("# "))
        after = head[-1].line + len(head[-1].text.splitlines()) if head else title
        blocks = [
            row for one in firm.says.cautions if name in one.pages for row in ("", "```caution", f"id: {one.id}", "```")
        ]
        path.write_text("\n".join([*rows[:after], *blocks, *rows[after:]]) + "\n", encoding="utf-8")


def _take_out(firm: Firm, docs: Path) -> None:
    """Take pages out; what led to one of them is words alone then, so no sentence of the book breaks off."""
    left_out = firm.pages.left_out
    if not left_out:
        return
    gone = {(docs / name).resolve() for name in left_out}
    ways = [way for name in left_out if (way := local.way_of(name))]
    for path in gone:
        path.unlink()
    for path in docs.rglob("*.md"):
        text = path.read_text(encoding="utf-8")

        def unlinked(found: re.Match[str], folder: Path = path.parent) -> str:
            target = found.group(2).split("#")[0]
            return found.group(1) if target and (folder / target).resolve() in gone else found.group()

        kept = LINK.sub(unlinked, text)
        for name in left_out:
            kept = re.sub(
                rf"(see: \[[^\]]*?)(?:{re.escape(name)}, |, {re.escape(name)}|{re.escape(name)})", r"\1", kept
            )
        for way in ways:  # its papers, and its line on the first page
            kept = re.sub(
                rf'<a href="\.\./papers/{way}/">[^<]*</a> ?|^- way: {way}\n(?:  .*\n)*', "", kept, flags=re.MULTILINE
            )
        if path == docs / "index.md":
            kept = kept.replace("## Eight ways {", "## Ways {") if ways else kept
            for section in {Path(name).parent.name for name in left_out}:
                own = section.capitalize() in [one for one, _ in firm.pages.sections]
                if not own and not list((docs / section).glob("*.md")):
                    kept = re.sub(rf'<li id="{section}">.*</li>\n', "", kept)
        if kept != text:
            path.write_text(kept, encoding="utf-8")


def _list_steps(firm: Firm, docs: Path, folder: Path) -> None:
    """The list of steps' addresses is that of this edition: with the firm's steps, without those of pages that it replaced."""
    standing: set[str] = set()
    for path in docs.rglob("*.md"):
        if path.relative_to(docs).parts[0] == "firm":
            continue
        for block in read_page(path, folder).blocks:
            for one in block.data.root if block.kind == "steps" else ():
                standing |= {getattr(one, "hold", None) or one.id, *one.was}
    listed = (docs / "step-ids.txt").read_text(encoding="utf-8").split()
    kept = [one for one in dict.fromkeys([*listed, *firm.pages.step_ids]) if one in standing or one not in listed]
    (docs / "step-ids.txt").write_text("\n".join(kept) + "\n", encoding="utf-8")


def _own_words(says: FirmFile) -> list[str]:
    """The words of the firm's name and place, which its own pages may say."""
    return re.findall(r"[A-Za-z']{2,}", f"{says.business.name} {says.business.area}")


def _paint(firm: Firm, docs: Path) -> None:
    """Put the firm's colors where the book has its plum, and its mark where pages show it."""
    assets = docs / "assets"
    if firm.says.mark:
        shutil.copyfile(firm.folder / firm.says.mark, assets / "mark.svg")
        shutil.copyfile(firm.folder / firm.says.mark, assets / "icon.svg")
    if firm.says.colors:
        accents = firm.says.colors.model_dump()
        for path in (assets / "icon.svg", docs / "theme" / "404.html", docs / "styles" / "paper.css"):
            text = path.read_text(encoding="utf-8")
            for plum, name in BOOK_PLUM.items():
                text = text if path.name == "icon.svg" and firm.says.mark else text.replace(plum, accents[name].lower())
            path.write_text(text, encoding="utf-8")


def _name(firm: Firm, folder: Path) -> None:
    """Say whose edition it is: to the template, to whoever keeps it on a phone, and in the order of the pages."""
    says = firm.says
    business = says.business
    told = {
        "name": business.name, "phone": business.phone, "dial": re.sub(r"[^\d+]", "", business.phone), "license": business.license, "area": business.area,
        "mark": bool(says.mark), "units": says.units, "values": firm.values,
    }  # fmt: skip
    (folder / TOLD).write_text(json.dumps(told, ensure_ascii=False, indent=1), encoding="utf-8")
    manifest = folder / "docs" / "assets" / "book.webmanifest"
    written = json.loads(manifest.read_text(encoding="utf-8")) | {"name": business.name, "short_name": business.name}
    manifest.write_text(json.dumps(written, ensure_ascii=False, indent=2) + "\n", encoding="utf-8")
    config = folder / "mkdocs.yml"
    book = yaml.safe_load(config.read_text(encoding="utf-8"))
    book["site_name"] = business.name
    if says.address:
        book["site_url"] = says.address
    for entry in book["nav"]:
        for section, inside in entry.items():
            if isinstance(inside, list):
                standing = [
                    (title, path) for one in inside for title, path in one.items() if path not in firm.pages.left_out
                ]
                more = [("", path) for own, path in firm.pages.sections if own == section]
                inside[:] = [{firm.pages.titles.get(path, title): path} for title, path in standing + more]
    book["nav"] = [entry for entry in book["nav"] if [] not in entry.values()]  # a section without a page is none
    config.write_text(yaml.safe_dump(book, allow_unicode=True, sort_keys=False), encoding="utf-8")


def run(module: str, firm: Firm, folder: Path, *arguments: str) -> int:
    """Run a command of the generator in the edition's copy; what it tells of a page of the firm's names the firm's file."""
    command = [sys.executable, "-m", module, *arguments]  # what lies in the folder that it is run in is found first
    with subprocess.Popen(
        command, cwd=folder, env=environment(folder), stdout=subprocess.PIPE, text=True, encoding="utf-8"
    ) as process:
        assert process.stdout is not None
        for row in process.stdout:
            print(named(row, firm.pages.written_in, firm.rules_at), end="", flush=True)
    return process.returncode


def environment(folder: Path) -> dict[str, str]:
    """Return the environment for the generator of the edition's copy."""
    return {**os.environ, "PYTHONPATH": str(folder / "scripts"), "PYTHONUNBUFFERED": "1"}


def must_keep(firm: Firm, docs: Path, folder: Path) -> None:
    """Raise ContentFaults where the finished edition does not show what keeps people from harm in the book at `docs`."""
    missing = kept.faults(firm.pages, docs, folder / "site")
    if missing:
        raise ContentFaults(missing)


OF_LIMIT = re.compile(rf"calc/{re.escape(local.MODULE)}:\d+:\d+(?=: REVIEW the limit (\S+))")


def named(row: str, written_in: Mapping[str, str], rules_at: Mapping[str, str] | None = None) -> str:
    """Return a line of a fault with the file that the firm wrote in place of its copy."""
    if found := OF_LIMIT.search(row):
        return row.replace(found.group(), (rules_at or {}).get(found.group(1), found.group()))
    for copy, own in written_in.items():
        if row.startswith(f"docs/{copy}:"):
            return own + row.removeprefix(f"docs/{copy}")
    return row
