"""Unpacks the browser that comes in a locked npm package, for a machine that has none: `python -m handbook.browser`.

Prints the path of a launcher. The package (headless Chromium for Linux on x86-64) brings fonts and the few libraries
that a bare system lacks; the launcher points the browser, and nothing else, at them.
"""

import io
import platform
import shutil
import stat
import sys
import tarfile
from pathlib import Path

import brotli

MODULES = Path(__file__).resolve().parents[1] / "node_modules"
PACKAGE = MODULES / "@sparticuz" / "chromium" / "bin"
UNPACKED = (
    MODULES / ".browser"
)  # goes when the packages are brought in step anew, so it is always of the locked edition
LAUNCHER = """#!/bin/sh
here=$(dirname "$(readlink -f "$0")")
export LD_LIBRARY_PATH="$here/lib${LD_LIBRARY_PATH:+:$LD_LIBRARY_PATH}" FONTCONFIG_FILE="$here/fonts.conf"
export HOME="${HOME:-$here}"
exec "$here/chromium" "$@"
"""
FONTS = """<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
<dir prefix="relative">fonts</dir>
<dir>/usr/share/fonts</dir>
<cachedir prefix="relative">fonts-cache</cachedir>
</fontconfig>
"""


def unpack() -> Path:
    """Return the launcher, unpacked now or before; raises OSError where the package does not run."""
    if sys.platform != "linux" or platform.machine() not in ("x86_64", "AMD64"):
        raise OSError(f"no browser comes along for {sys.platform} on {platform.machine()}")
    launcher = UNPACKED / "launch"
    if launcher.exists():
        return launcher
    partial = UNPACKED.with_name(".browser-part")
    shutil.rmtree(partial, ignore_errors=True)
    shutil.rmtree(UNPACKED, ignore_errors=True)
    partial.mkdir()
    _written(partial / "chromium", brotli.decompress((PACKAGE / "chromium.br").read_bytes()))
    for name in ("fonts", "al2023"):
        data = brotli.decompress((PACKAGE / f"{name}.tar.br").read_bytes())
        with tarfile.open(fileobj=io.BytesIO(data)) as archive:
            archive.extraction_filter = getattr(tarfile, "data_filter", None)  # Python 3.11.3 and older have none
            archive.extractall(partial)
    (partial / "fonts.conf").write_text(FONTS, encoding="utf-8")
    _written(partial / "launch", LAUNCHER.encode())
    partial.rename(UNPACKED)
    return launcher


def _written(path: Path, data: bytes) -> None:
    path.write_bytes(data)
    path.chmod(path.stat().st_mode | stat.S_IXUSR)


if __name__ == "__main__":
    print(unpack())
