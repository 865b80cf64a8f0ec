"""Serves an edition while it is edited: a saved page shows at once in every open tab, any other change builds anew.

Nothing here is what a host does: pages are handed out as they lie, with one script more that asks for the next build, and
the service worker is put out of the way. `serve` without `--live` shows the book as visitors get it.
"""

import json
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from pathlib import Path

from handbook import build, quick, serve
from handbook.content.faults import ContentFaults
from handbook.firm import edition, own_pages
from handbook.make import pages

LOOK_EVERY_S = 0.2
NUMBER, SCRIPT, WORKER = "live-number.json", "live.mjs", "sw.js"
# Asks for the number of the last build, twice a second, and loads the page again when it is another.
ASKS = """
let first = null;
async function look() {
  try {
    const number = await (await fetch(new URL('live-number.json', import.meta.url), { cache: 'no-store' })).json();
    first ??= number;
    if (number !== first) return location.reload();
  } catch { /* it is being built */ }
  setTimeout(look, 500);
}
look();
"""
# In place of the book's worker: leaves, and takes along what it kept of the book. What a person typed lies elsewhere.
LEAVES = """
self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) await caches.delete(name);
  await self.registration.unregister();
})()));
"""
State = dict[Path, float]


class LiveHandler(serve.Handler):
    """Hands out the site as it lies, with the script that loads a page again."""

    number: Callable[[], int]

    def _answer(self, *, with_body: bool) -> None:
        del self.headers["Accept-Encoding"]
        name = self.path.split("?")[0].removeprefix(self.base)
        own = {NUMBER: json.dumps(type(self).number()), SCRIPT: ASKS, WORKER: LEAVES}
        if name in own:
            self._send(200, own[name].encode(), serve.TYPES[Path(name).suffix], "", with_body)
        else:
            super()._answer(with_body=with_body)

    def _send(self, status: int, body: bytes, kind: str, encoding: str, with_body: bool) -> None:
        if kind.startswith("text/html"):
            body = body.replace(
                b"</body>", f'<script type="module" src="{self.base}{SCRIPT}"></script></body>'.encode()
            )
        super()._send(status, body, kind, encoding, with_body)


class Edition:
    """The edition that is edited: the firm's of `file`, laid out in `work`, or the book itself."""

    def __init__(self, file: Path | None, work: Path) -> None:
        self.file, self.work = file, work
        self.root = work / "firm" if file else build.ROOT
        self.number = 0
        self._maker: subprocess.Popen[str] | None = None

    def build(self) -> bool:
        """Build it whole; return whether it stands."""
        self.stop()
        start = time.perf_counter()
        if self.file:
            good = build.build_firm(self.file, None, self.root, cache=self.work / "cache") == 0
        else:
            good = subprocess.run([sys.executable, "-m", "handbook.build"], cwd=self.root, check=False).returncode == 0
        if good:
            self.number += 1
            print(f"built in {time.perf_counter() - start:.1f} s; looking for changes", flush=True)
            command = [sys.executable, "-m", "handbook.quick"]
            self._maker = subprocess.Popen(
                command, cwd=self.root, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, encoding="utf-8",
                env=edition.environment(self.root),
            )  # fmt: skip
        return good

    def stop(self) -> None:
        """Let the maker of single pages go."""
        if self._maker:
            self._maker.kill()
            self._maker.wait()
            self._maker = None

    def state(self) -> State:
        """Return when each file that the edition is made from was last saved."""
        if self.file:
            folder = self.file.resolve().parent
            paths = [path for path in folder.rglob("*") if path.suffix in (".md", ".yml", ".svg") and "site" not in path.parts and build.WORK not in path.parts]  # fmt: skip
        else:
            paths = [
                path
                for name in ("docs", "calc", "scripts/handbook")
                for path in (build.ROOT / name).rglob("*")
                if path.suffix != ".pyc"
            ]
            paths.append(build.ROOT / "mkdocs.yml")
        return {path: path.stat().st_mtime for path in paths if path.is_file()}

    def pages_of(self, changed: set[Path]) -> list[str] | None:
        """Return the names in the book of the pages that were saved, or None where something else was."""
        if self.file:
            firm = edition.read_firm(self.file.resolve(), self.file.as_posix(), build.DOCS, set(pages.GENERATED))
            for name, text in firm.pages.texts.items():
                (self.root / "docs" / name).write_text(text, encoding="utf-8")
            named = {Path(path).resolve(): name for name, path in firm.pages.written_in.items()}
        else:
            named = {path.resolve(): name for name, path in own_pages.written(build.DOCS).items()}
        return [named[path.resolve()] for path in changed] if all(path.resolve() in named for path in changed) else None

    def again(self, changed: set[Path]) -> None:
        """Show what was saved: single pages at once, all else by a build."""
        start = time.perf_counter()
        try:
            names = self.pages_of(changed) if self._maker else None
        except ContentFaults as faults:
            print(faults, flush=True)
            return
        if names is None:
            self.build()
            return
        for name in names:
            rows = self._made(name)
            print("\n".join(rows) if rows else f"{name}: shown after {time.perf_counter() - start:.1f} s", flush=True)
        self.number += 1

    def _made(self, name: str) -> list[str]:
        assert self._maker  # again() looks
        assert self._maker.stdin
        assert self._maker.stdout
        self._maker.stdin.write(name + "\n")
        self._maker.stdin.flush()
        rows: list[str] = []
        for row in self._maker.stdout:
            if row.strip() == quick.DONE:
                return rows
            rows.append(row.rstrip())
        self._maker = None  # it broke; the next change builds anew
        return rows or [f"{name} could not be made alone; save it again"]


def run(file: Path | None, work: Path, port: int, base: str) -> int:
    """Build, serve, and follow what is saved until it is stopped."""
    edited = Edition(file, work)
    print("building:", flush=True)
    seen = edited.state()  # what is saved during the build is built after it
    edited.build()
    handler = type("LiveSiteHandler", (LiveHandler,), {"number": staticmethod(lambda: edited.number)})
    try:
        server = serve.open_server(port, base, edited.root / "site", handler)
    except OSError as error:
        return serve.refused(error)
    serve.say_where(server, base)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        while True:
            time.sleep(LOOK_EVERY_S)
            now = edited.state()
            changed = {path for path in {*seen, *now} if seen.get(path) != now.get(path)}
            seen = now
            if changed:
                edited.again(changed)
    finally:
        edited.stop()
        server.shutdown()
