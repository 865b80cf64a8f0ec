"""What the cover sheet must hold to: its doors lead somewhere, and every way stands on it once, by its own name."""

from pathlib import Path

from handbook.content.reading import Block, Page


def check(page: Page, block: Block, docs: Path, generated: set[str]) -> None:
    """Add the faults of a block of doors or of ways to its page."""
    if page.head and page.head.kind != "home":
        page.fault(block.line, 1, "COVER", f"a block {block.kind} stands on the first page alone")
    if block.kind == "doors":
        for at, door in enumerate(block.data.root):
            path = door.to.partition("#")[0]
            if not (docs / path).exists() and path not in generated:
                page.fault(*block.at(at, "to"), "LINK", f"{path} leads nowhere")
        return
    names = [one.way for one in block.data.root]
    for at, name in enumerate(names):
        if not (docs / "methods" / f"{name}.md").exists():
            page.fault(*block.at(at, "way"), "COVER", f"there is no way called {name}")
        if name in names[:at]:
            page.fault(*block.at(at, "way"), "COVER", f"the way {name} stands here twice")
    for path in sorted((docs / "methods").glob("*.md")):
        if path.stem not in names:
            page.fault(block.line, 1, "COVER", f"the way {path.stem} is missing")
