"""Serves site/ on this machine the way a good static host does: compressed files, right types, any sub-path."""

import http.server
from itertools import takewhile
from pathlib import Path
from urllib.parse import unquote, urlsplit

from handbook.host.headers import PACKED, TYPES, kept_for

SITE = Path(__file__).resolve().parents[2] / "site"
TRIES = 20  # ports looked at after the one asked for


class Handler(http.server.BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    base = "/"
    site = SITE
    headers_of_site: tuple[tuple[str, str], ...] = ()

    def do_GET(self) -> None:
        self._answer(with_body=True)

    def do_HEAD(self) -> None:
        self._answer(with_body=False)

    def _answer(self, *, with_body: bool) -> None:
        path = unquote(urlsplit(self.path).path)
        if not path.startswith(self.base):
            self._send(404, b"Nothing is here. The handbook is at " + self.base.encode(), "text/plain", "", with_body)
            return
        target = (self.site / path[len(self.base) :]).resolve()
        if target.is_dir():
            if not path.endswith("/"):
                self.send_response(301)
                self.send_header("Location", path + "/")
                self.send_header("Content-Length", "0")
                self.end_headers()
                return
            target = target / "index.html"
        status = 200
        if not target.is_relative_to(self.site.resolve()) or not target.is_file():
            status, target = 404, self.site / "404.html"
        kind = TYPES.get(target.suffix, "application/octet-stream")
        accepted = self.headers.get("Accept-Encoding", "")
        for encoding, suffix in PACKED:
            packed = target.with_name(target.name + suffix)
            if encoding in accepted and packed.exists():
                self._send(status, packed.read_bytes(), kind, encoding, with_body)
                return
        self._send(status, target.read_bytes(), kind, "", with_body)

    def _send(self, status: int, body: bytes, kind: str, encoding: str, with_body: bool) -> None:
        self.send_response(status)
        self.send_header("Content-Type", kind)
        self.send_header("Content-Length", str(len(body)))
        self.send_header("Vary", "Accept-Encoding")
        for name, value in self.headers_of_site:
            self.send_header(name, value)
        self.send_header("Cache-Control", kept_for(self.path if status == 200 else ""))
        if encoding:
            self.send_header("Content-Encoding", encoding)
        self.end_headers()
        if with_body:
            try:
                self.send_body(body)
            except ConnectionError:
                self.close_connection = True  # the reader went on to another page

    def send_body(self, body: bytes) -> None:
        self.wfile.write(body)

    def log_message(self, *_: object) -> None:
        """Say nothing: the address is what the reader needs to see."""


def base_path(base: str) -> str:
    """Return the path that the site is served under, with its slashes."""
    return "/" + base.strip("/") + "/" if base.strip("/") else "/"


def open_server(
    port: int, base: str, site: Path = SITE, kind: type[Handler] = Handler
) -> http.server.ThreadingHTTPServer:
    """Return a server on `port`, or on the next free one; port 0 takes any."""
    base = base_path(base)
    handler = type("SiteHandler", (kind,), {"base": base, "site": site, "headers_of_site": _headers(site)})
    for candidate in [port] if port == 0 else range(port, port + TRIES):
        try:
            return http.server.ThreadingHTTPServer(("127.0.0.1", candidate), handler)
        except OSError:
            continue
    raise OSError(f"no free port from {port} to {port + TRIES - 1}")


def _headers(site: Path) -> tuple[tuple[str, str], ...]:
    """Return what the site's `_headers` gives every file, as a host that reads it would."""
    if not (site / "_headers").exists():
        return ()
    lines = (site / "_headers").read_text(encoding="utf-8").splitlines()
    of_all = takewhile(lambda line: line.startswith("  "), lines[1:])  # the first rule is that of every file
    pairs = [line.strip().partition(": ") for line in of_all]
    return tuple((name, value) for name, _, value in pairs)


def serve(port: int, base: str, site: Path = SITE) -> int:
    """Serve `site` until it is stopped."""
    try:
        server = open_server(port, base, site)
    except OSError as error:
        return refused(error)
    say_where(server, base)
    try:
        server.serve_forever()
    except KeyboardInterrupt:
        print()
    return 0


def refused(error: OSError) -> int:
    print(f"The handbook could not be served: {error}. Give another port with --port 9000.")
    return 2


def say_where(server: http.server.ThreadingHTTPServer, base: str) -> None:
    address = f"http://127.0.0.1:{server.server_port}{base_path(base)}"
    print(f"the handbook is at {address}  (stop with Ctrl-C)", flush=True)
