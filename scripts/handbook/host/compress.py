"""Brotli and gzip beside each file of the site, for hosts that hand out what is already compressed.

Brotli at its best is slow, so each result is kept by the digest of what went in.
"""

import gzip
import hashlib
import os
import threading
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import brotli

SUFFIXES = (
    ".html",
    ".css",
    ".mjs",
    ".js",
    ".json",
    ".svg",
    ".wasm",
    ".zip",
    ".whl",
    ".bin",
    ".webmanifest",
    ".txt",
    ".xml",
)


def compress_site(site: Path, cache: Path) -> int:
    """Write `.br` and `.gz` beside every file worth it; return how many files were compressed."""
    paths = [path for path in sorted(site.rglob("*")) if path.is_file() and path.suffix in SUFFIXES]
    with ThreadPoolExecutor() as pool:
        list(pool.map(lambda path: _compress(path, cache), paths))
    return len(paths)


def brotli_size(path: Path, cache: Path) -> int:
    """Return how many bytes the file costs over the line."""
    return len(_kept(path.read_bytes(), "br", cache))


def _compress(path: Path, cache: Path) -> None:
    data = path.read_bytes()
    for kind in ("br", "gz"):
        path.with_name(path.name + "." + kind).write_bytes(_kept(data, kind, cache))


def _kept(data: bytes, kind: str, cache: Path) -> bytes:
    cache.mkdir(parents=True, exist_ok=True)
    held = cache / f"{hashlib.sha256(data).hexdigest()[:24]}-best.{kind}"
    if held.exists():
        return held.read_bytes()
    packed = brotli.compress(data, quality=11) if kind == "br" else gzip.compress(data, 9, mtime=0)
    # Two files may be the same, and two builds may go on at once: each writes a file of its own until all of it is there.
    partial = held.with_suffix(f"{held.suffix}.{os.getpid()}-{threading.get_ident()}.part")
    partial.write_bytes(packed)
    partial.replace(held)
    return packed
