"""The same input gives the same bytes: the book is built once more, elsewhere and with another order of sets, and compared."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from handbook import build
from handbook.firm import edition

pytestmark = pytest.mark.slow


def files(site):
    return {path.relative_to(site).as_posix(): path for path in site.rglob("*") if path.is_file()}


def test_the_book_is_the_same_wherever_it_is_built(tmp_path):
    """What takes minutes is taken from the first build, by the digest of what went in: what Brotli and gzip made of a file, modules in
    bytecode, and the full engine. Pages, styles, lists and headers are made anew."""
    book = tmp_path / "another folder" / "book"
    for name in edition.COPIED:
        (book / name).parent.mkdir(parents=True, exist_ok=True)
        if (build.ROOT / name).is_dir():
            shutil.copytree(build.ROOT / name, book / name, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copyfile(build.ROOT / name, book / name)
    for name in edition.SHARED:
        (book / name).parent.mkdir(parents=True, exist_ok=True)
        os.symlink(build.ROOT / name, book / name, target_is_directory=True)
    own = {
        **os.environ,
        "PYTHONPATH": f"{book / 'scripts'}{os.pathsep}{book}",
        "PYTHONHASHSEED": "4711",
        "TZ": "Asia/Tokyo",
    }
    done = subprocess.run(
        [sys.executable, "-m", "handbook.build"], cwd=book, env=own, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
    one, other = files(build.SITE), files(book / "site")
    assert sorted(one) == sorted(other) and len(one) > 400
    assert [name for name, path in one.items() if path.read_bytes() != other[name].read_bytes()] == []
    for path in (path for name, path in other.items() if Path(name).suffix in (".html", ".json", ".mjs", ".txt", "")):
        assert str(tmp_path) not in path.read_text(encoding="utf-8", errors="ignore"), path
