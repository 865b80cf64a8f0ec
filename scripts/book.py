#!/usr/bin/env python3
"""The one command: python3 scripts/book.py start | check | serve | build | check-site | news | texts | test | bench | wheel.

Needs Python 3.11 or newer with its venv module, and nothing else: it makes its own environment in .venv, brings Node and
a browser for the tests with it, and keeps all in step with the lock files. Everything after that runs inside it.
"""

import hashlib
import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
VENV = ROOT / ".venv"
BIN = VENV / ("Scripts" if os.name == "nt" else "bin")
LOCK = ROOT / "requirements.lock"
NPM_LOCK = ROOT / "scripts" / "package-lock.json"
MODULES = ROOT / "scripts" / "node_modules"
OLDEST = (3, 11)
NO_BROWSER = (
    "The tests drive a browser: install Chromium (on Debian: apt-get install chromium), or set CHROMIUM to its path."
)
BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")


class Stop(Exception):
    """Something that the reader has to put right, told in one sentence."""


def main(arguments: list[str]) -> int:
    if sys.version_info < OLDEST:
        print(f"Python {OLDEST[0]}.{OLDEST[1]} or newer is needed; this is {sys.version.split()[0]}.")
        return 2
    if not arguments or arguments[0] in ("-h", "--help"):
        print(__doc__)
        return 0
    try:
        prepare()
        return run(arguments[0], arguments[1:])
    except Stop as stop:
        print(stop)
        return 2
    except KeyboardInterrupt:
        return 130


def prepare() -> None:
    """Make the environment, or bring it in step with the lock files."""
    if not _in_step(VENV / "lock-stamp", LOCK):
        print("1/2 environment: installing locked Python packages into .venv …", flush=True)
        shutil.rmtree(VENV, ignore_errors=True)
        _call(
            [sys.executable, "-m", "venv", str(VENV)],
            "Python could not make a virtual environment; install its venv package.",
        )
        install = [
            str(BIN / "python"),
            "-m",
            "pip",
            "install",
            "--quiet",
            "--disable-pip-version-check",
            "--require-hashes",
            "-r",
            str(LOCK),
        ]
        _call(install, "The Python packages could not be installed; is the package index in reach?", quiet=True)
        _stamp(VENV / "lock-stamp", LOCK)
    if not _in_step(MODULES / ".lock-stamp", NPM_LOCK):
        print("2/2 environment: installing locked packages for the page …", flush=True)
        npm = [str(BIN / "npm"), "ci", "--no-audit", "--no-fund", "--loglevel=error"]
        _call(
            npm,
            "The packages for the page could not be installed; is the package registry in reach?",
            cwd=ROOT / "scripts",
        )
        _stamp(MODULES / ".lock-stamp", NPM_LOCK)


def run(command: str, rest: list[str]) -> int:
    """Run what looks at the book's own code here; what makes a book of it is the generator's command (`handbook.command`)."""
    if command == "check" and not rest:
        return check()
    if command == "test":
        return test(rest)
    if command == "bench":
        browser()
        return _inside("-m", "handbook.build") or _inside("tests/bench/boards.py") or _inside("tests/bench/bench.py")
    if command == "wheel":
        return wheel()
    here = Path.cwd()  # what the command is given are paths from where it was called
    return subprocess.run(
        [str(BIN / "python"), "-m", "handbook.command", command, *rest], cwd=here, env=_environment(), check=False
    ).returncode


def wheel() -> int:
    """Make the wheel and the source archive in dist/: the wheel holds the book, the generator and what the page needs."""
    shutil.rmtree(ROOT / "dist", ignore_errors=True)
    return _inside("-m", "hatchling", "build", "-d", "dist")


def check() -> int:
    """Lint, types, floors, content: each runs, and the worst exit status is handed back."""
    checks = (
        ("format", [str(BIN / "ruff"), "format", "--check", "--quiet", "."]),
        ("lint", [str(BIN / "ruff"), "check", "--quiet", "."]),
        ("types", [str(BIN / "mypy")]),
        ("types of the page", [str(BIN / "node"), str(MODULES / "typescript" / "bin" / "tsc"), "-p", "scripts"]),
        ("floors", [str(BIN / "lint-imports")]),
        ("content", [str(BIN / "python"), "-m", "handbook.check"]),
    )
    worst = 0
    for name, command in checks:
        done = subprocess.run(command, cwd=ROOT, env=_environment(), capture_output=True, text=True, check=False)
        print(f"  {name}: {'good' if done.returncode == 0 else 'faults'}", flush=True)
        if done.returncode:
            print(done.stdout + done.stderr)
        worst = max(worst, done.returncode)
    return worst


def test(rest: list[str]) -> int:
    browser()
    if rest:
        return _inside("-m", "handbook.build") or _inside("-m", "pytest", *rest)
    print("checks:", flush=True)
    status = check()
    print("building the handbook:", flush=True)
    if _inside("-m", "handbook.build"):
        return 1
    print("tests:", flush=True)
    # Two at a time: one begins with the engines' tests, which take minutes, the other with the rest, which take seconds;
    # whoever is done takes from the other's end (tests/conftest.py puts the longest first).
    return _inside("-m", "pytest", "-n", "2", "--dist", "worksteal") or status


def browser() -> None:
    """Find the browser that the tests drive: `CHROMIUM`, the system's own, or the one that comes with the packages."""
    found = os.environ.get("CHROMIUM") or next((path for name in BROWSERS if (path := shutil.which(name))), "")
    if not found:
        print("browser: none on this machine, so the locked one is used", flush=True)
        found = _call([str(BIN / "python"), "-m", "handbook.browser"], NO_BROWSER, quiet=True).strip()
    _call([found, "--version"], f"The browser at {found} does not start. {NO_BROWSER}", quiet=True)
    os.environ["CHROMIUM"] = found


def _environment() -> dict[str, str]:
    paths = os.pathsep.join((str(ROOT / "scripts"), str(ROOT)))
    own = {
        "PYTHONPATH": paths,
        "PATH": f"{BIN}{os.pathsep}{os.environ.get('PATH', '')}",
        # The driver of the browser brings a Node that a bare system cannot start; the locked one starts anywhere.
        "PLAYWRIGHT_NODEJS_PATH": str(BIN / ("node.exe" if os.name == "nt" else "node")),
    }
    return {**os.environ, **own}


def _inside(*arguments: str) -> int:
    return subprocess.run([str(BIN / "python"), *arguments], cwd=ROOT, env=_environment(), check=False).returncode


def _call(command: list[str], sentence: str, cwd: Path = ROOT, quiet: bool = False) -> str:
    try:
        done = subprocess.run(command, cwd=cwd, env=_environment(), capture_output=True, text=True, check=False)
    except OSError as error:
        raise Stop(f"{sentence}\n{error}") from None
    if done.returncode:
        raise Stop(f"{sentence}\n{done.stderr.strip()[-1500:]}")
    if done.stderr.strip() and not quiet:
        print(done.stderr.strip())
    return done.stdout


def _in_step(stamp: Path, lock: Path) -> bool:
    return stamp.exists() and stamp.read_text() == _digest(lock)


def _stamp(stamp: Path, lock: Path) -> None:
    stamp.write_text(_digest(lock))


def _digest(lock: Path) -> str:
    return hashlib.sha256(lock.read_bytes() + sys.version.encode()).hexdigest()


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
