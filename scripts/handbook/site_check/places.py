"""Where a site is looked at: an address, asked as a browser asks, or a folder. Only files of the site itself are asked for."""

import gzip
import http.client
import urllib.error
import urllib.request
import zlib
from collections.abc import Iterable, Mapping
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any, NamedTuple
from urllib.parse import quote, urljoin, urlsplit

import brotli

AT_ONCE = 8
PATIENCE = 20  # seconds without a byte
MOST_BYTES = 40_000_000
MOST_TURNS = 4  # redirects that are followed
HERE = ("localhost", "127.0.0.1", "::1")


class Answer(NamedTuple):
    """What came: the status, 0 for nothing; the headers in small letters; the bytes, unpacked; why not, in words; whether by a redirect."""

    status: int
    headers: Mapping[str, str] = {}
    body: bytes = b""
    why: str = ""
    turned: bool = False

    @property
    def text(self) -> str:
        return self.body.decode("utf-8", "replace")


class Stay(urllib.request.HTTPRedirectHandler):
    """Follows no redirect by itself, as it might lead out of the site."""

    def redirect_request(self, *_: Any) -> None:
        return None


class Address:
    """A site at an address."""

    has_headers = True

    def __init__(self, url: str) -> None:
        plain = url.split("#")[0].split("?")[0].removesuffix("index.html")
        self.base = plain if plain.endswith("/") else plain + "/"
        self._opener = urllib.request.build_opener(Stay)
        self.asked = 0

    @property
    def shown(self) -> str:
        return self.base

    @property
    def path(self) -> str:
        return urlsplit(self.base).path

    @property
    def is_private(self) -> bool:
        """Whether nobody can listen on the way."""
        return self.base.startswith("https://") or urlsplit(self.base).hostname in HERE

    def settle(self) -> Answer:
        """Ask for the first page; where the host sends on to https or to another address, that is the one looked at."""
        for _ in range(MOST_TURNS):
            answer = self._ask(self.base, "GET")
            if not 300 <= answer.status < 400:
                return answer
            self.base = urljoin(self.base, answer.headers.get("location", "")).removesuffix("index.html")
            if not self.base.endswith("/"):
                self.base += "/"
        return Answer(0, why="it sends on and on")

    def get(self, path: str, method: str = "GET") -> Answer:
        """Return what is answered for the file at `path` of the site; a redirect is followed as long as it stays in the site."""
        if ".." in path.split("/"):
            return Answer(0, why="it leads out of the site")
        url = self.base + quote(path)
        for turn in range(MOST_TURNS):
            answer = self._ask(url, method)
            if not 300 <= answer.status < 400:
                return answer._replace(turned=turn > 0)
            url = urljoin(url, answer.headers.get("location", ""))
            if not url.startswith(self.base):
                return Answer(0, why=f"it sends on to {url}")
        return Answer(0, why="it sends on and on")

    def get_all(self, paths: Iterable[str], method: str = "GET") -> dict[str, Answer]:
        names = list(paths)
        with ThreadPoolExecutor(AT_ONCE) as pool:
            return dict(zip(names, pool.map(lambda one: self.get(one, method), names), strict=True))

    def _ask(self, url: str, method: str) -> Answer:
        if not url.startswith(("http://", "https://")):
            return Answer(0, why=f"it sends on to {url}")
        self.asked += 1
        request = urllib.request.Request(url, method=method, headers={"Accept-Encoding": "br, gzip"})
        try:
            with self._opener.open(request, timeout=PATIENCE) as came:
                return _read(came, came.status)
        except urllib.error.HTTPError as error:
            with error:
                return _read(error, error.code)
        except (OSError, http.client.HTTPException, ValueError) as error:
            return Answer(0, why=str(getattr(error, "reason", "") or error) or type(error).__name__)


def _read(came: Any, status: int) -> Answer:
    headers = {name.lower(): value for name, value in came.headers.items()}
    body = came.read(MOST_BYTES)
    try:
        return Answer(status, headers, _unpacked(body, headers.get("content-encoding", "")))
    except (OSError, EOFError, zlib.error, brotli.error, ValueError):
        return Answer(0, headers, why=f"its compressed bytes ({headers.get('content-encoding')}) cannot be unpacked")


def _unpacked(body: bytes, encoding: str) -> bytes:
    if not body or encoding in ("", "identity"):
        return body
    if encoding == "br":
        return bytes(brotli.decompress(body))
    if encoding == "gzip":
        return gzip.decompress(body)
    raise ValueError(encoding)


class Folder:
    """A site in a folder, which no host has said anything of yet."""

    has_headers = False
    is_private = True
    path = "/any/folder/"  # so that a link which leaves the book is seen to leave it

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.shown = folder.as_posix()
        self.base = "https://folder.invalid" + self.path
        self.asked = 0

    def settle(self) -> Answer:
        return self.get("")

    def get(self, path: str, method: str = "GET") -> Answer:
        self.asked += 1
        file = self.folder / (path + "index.html" if path == "" or path.endswith("/") else path)
        if not file.is_file() or not file.resolve().is_relative_to(self.folder.resolve()):
            return Answer(404)
        return Answer(200, {}, file.read_bytes())

    def get_all(self, paths: Iterable[str], method: str = "GET") -> dict[str, Answer]:
        return {path: self.get(path, method) for path in paths}


Place = Address | Folder
