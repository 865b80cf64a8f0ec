"""A slow line and a slow processor, made on this machine.

The line is paced by the server (bits a second, shared by all connections, and a wait before each answer), since a
browser's own throttle does not reach workers. The processor is slowed by stopping the renderer for most of the time.
"""

import http.server
import os
import signal
import threading
import time
from pathlib import Path

from handbook import serve

BITS_PER_SECOND = 1_600_000
LATENCY_S = 0.150
SLICE = 4096  # bytes handed out at a time
RUN_S, STOP_S = 0.010, 0.030  # the renderer runs a quarter of the time: a processor four times slower


class Line:
    """One line that all connections share."""

    def __init__(self, *, paced: bool) -> None:
        self.paced = paced
        self.log: list[tuple[float, str, str, int]] = []
        self._lock = threading.Lock()
        self._free_at = 0.0

    def send(self, body: bytes, write) -> None:
        if not self.paced:
            write(body)
            return
        for at in range(0, len(body), SLICE):
            piece = body[at : at + SLICE]
            with self._lock:
                start = max(self._free_at, time.monotonic())
                self._free_at = start + len(piece) * 8 / BITS_PER_SECOND
                until = self._free_at
            time.sleep(max(0.0, until - time.monotonic()))
            write(piece)

    def bytes_of(self, *, without_keeping: bool = True) -> dict[str, int]:
        """Return {path: bytes sent}; what the service worker fetched to keep the book is left out."""
        sums: dict[str, int] = {}
        for _, path, referer, size in list(self.log):
            if not (without_keeping and referer.endswith("sw.js")):
                sums[path] = sums.get(path, 0) + size
        return sums


def open_line(folders: dict[str, Path], *, paced: bool) -> tuple[http.server.ThreadingHTTPServer, Line]:
    """Serve {base: folder} over one line; return the server and the line with its log."""
    line = Line(paced=paced)

    class Handler(serve.Handler):
        def setup(self) -> None:
            if line.paced:
                time.sleep(LATENCY_S)  # a connection costs a round trip before anything is asked
            super().setup()

        def do_GET(self) -> None:
            if line.paced:
                time.sleep(LATENCY_S)
            for base, folder in folders.items():
                if self.path.startswith(base):
                    self.base, self.site = base, folder
            super().do_GET()

        def send_body(self, body: bytes) -> None:
            line.send(body, self.wfile.write)
            line.log.append((time.monotonic(), self.path, self.headers.get("Referer", ""), len(body)))

    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    return server, line


class SlowProcessor:
    """While it is entered, every renderer below this process runs a quarter of the time."""

    def __init__(self, *, slow: bool) -> None:
        self.slow = slow
        self._done = threading.Event()

    def __enter__(self) -> "SlowProcessor":
        if self.slow:
            self._thread = threading.Thread(target=self._beat, daemon=True)
            self._thread.start()
        return self

    def __exit__(self, *_: object) -> None:
        if self.slow:
            self._done.set()
            self._thread.join()

    def _beat(self) -> None:
        looked_at, found = 0.0, []
        while not self._done.is_set():
            if time.monotonic() - looked_at > 0.1:
                found, looked_at = renderers(), time.monotonic()
            _signal(found, signal.SIGSTOP)
            time.sleep(STOP_S)
            _signal(found, signal.SIGCONT)
            time.sleep(RUN_S)
        _signal(found, signal.SIGCONT)


def renderers() -> list[int]:
    """Return the process ids of every renderer of the browsers that run here."""
    found = []
    for entry in Path("/proc").iterdir():
        if entry.name.isdigit():
            try:
                if b"--type=renderer" in (entry / "cmdline").read_bytes():
                    found.append(int(entry.name))
            except OSError:
                continue
    return found


def _signal(pids: list[int], kind: signal.Signals) -> None:
    for pid in pids:
        try:
            os.kill(pid, kind)
        except ProcessLookupError:
            continue
