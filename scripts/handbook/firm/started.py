"""An edition's folder: how it begins, and what a newer generator means for it. The firm's own files are never written again."""

import re
import shutil
from pathlib import Path

from handbook.firm import declared
from handbook.host import stamp

SAMPLE = "docs/firm"
BUILT_WITH = "built-with"  # in the work folder: the version that the edition was last worked on with
FOR = "**Publisher**"
IGNORED = "/site/\n/.lidbook/\n"
SECTION = re.compile(r"^## (?:(\d+\.\d+\.\d+)|Next)", re.MULTILINE)


def start(folder: Path, root: Path, name: str) -> int:
    """Copy the sample of the book at `root` into the empty `folder`, and say what comes next."""
    if folder.exists() and (not folder.is_dir() or [one for one in folder.iterdir() if one.name != ".git"]):
        print(f"{folder} is not empty. Give an empty folder, or a new one: {name} start my-firm")
        return 2
    shutil.copytree(root / SAMPLE, folder, dirs_exist_ok=True)
    (folder / ".gitignore").write_text(IGNORED, encoding="utf-8")
    go = [] if folder.resolve() == Path.cwd() else [f"cd {folder}"]
    said = {
        "your firm, its figures and its place, each key explained": "edit firm.yml",
        "see the book while you edit; a saved page shows at once": f"{name} serve --live",
        "every fault at once, by line": f"{name} check",
        "leave the finished book in site/, to copy to your host": f"{name} build",
    }
    print(f"An edition begins in {folder}. Its firm is made up: change it.")
    for row in go:
        print(f"  {row}")
    for why, row in said.items():
        print(f"  {row:<22} {why}")
    return 0


def say_news(root: Path, work: Path) -> None:
    """Say once what changed for a publisher since the edition was last worked on; keep the schema for editors in step."""
    (work / declared.SCHEMA).write_text(declared.schema(), encoding="utf-8")
    held, now = work / BUILT_WITH, stamp.edition(root)["number"]
    before = held.read_text(encoding="utf-8").strip() if held.exists() else now
    if before != now:
        print(f"This is edition {now} of the book; yours was last built with {before}. Your files stay as they are.")
        print(news(root, before))
    held.write_text(now + "\n", encoding="utf-8")


def news(root: Path, since: str) -> str:
    """Return what the list of changes tells publishers of all that is newer than the version `since`."""
    text = (root / "CHANGELOG.md").read_text(encoding="utf-8")
    heads = list(SECTION.finditer(text))
    ends = [*[one.start() for one in heads], len(text)][1:]
    told = []
    for head, end in zip(heads, ends, strict=True):
        if since and head[1] and _parts(head[1]) <= _parts(since):
            continue
        for row in re.findall(r"^- (.+(?:\n  .+)*)", text[head.end() : end], re.MULTILINE):
            if row.startswith(FOR):
                told.append("  " + " ".join(row.removeprefix(FOR).removeprefix(":").split()))
    return "\n".join(told) or "  Nothing changed for publishers."


def _parts(told: str) -> tuple[int, ...]:
    return tuple([int(one) for one in re.findall(r"\d+", told)])
