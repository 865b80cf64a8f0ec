"""The house: what a newcomer sees, what the README promises, what must never be in a tracked file."""

import ast
import os
import re
import shutil
import signal
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
VISIBLE = {
    "README.md", "DEVELOPERS.md", "CHANGELOG.md", "LICENSE", "pyproject.toml", "requirements.lock", "mkdocs.yml",
    "docs", "calc", "tests", "scripts",
}  # fmt: skip
COMMANDS = ("python3 scripts/book.py serve", "python3 scripts/book.py test")
ALLOWED_IN_CALC = {"calc", "collections", "dataclasses", "fractions", "json", "sys"}


def tracked():
    done = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True)
    return [ROOT / name for name in done.stdout.split("\0") if name and (ROOT / name).exists()]


def test_the_top_level_explains_itself():
    tops = {path.relative_to(ROOT).parts[0] for path in tracked()}
    assert {name for name in tops if not name.startswith(".")} == VISIBLE


def test_the_readme_gives_the_two_commands_within_a_screen():
    lines = (ROOT / "README.md").read_text(encoding="utf-8").splitlines()
    for command in COMMANDS:
        assert any(command in line for line in lines[:30])


def test_the_files_that_contributors_are_sent_to_are_there():
    told = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    paths = [
        one
        for one in re.findall(r"`((?:calc|docs|scripts|tests)/[^` ]*)`", told)
        if "NAME" not in one and "*" not in one
    ]
    assert len(paths) > 20
    assert [one for one in paths if not (ROOT / one).exists()] == []


def test_no_tracked_file_names_a_machine_or_a_registry():
    words = [
        "/ho" + "me/",
        "/ro" + "ot/",
        "/wo" + "rk/",
        "pythonhost" + "ed",
        "registry.npm" + "js",
        "deb.deb" + "ian",
        "pypi" + ".org",
    ]
    for path in tracked():
        text = path.read_text(encoding="utf-8", errors="ignore")
        for word in words:
            assert word not in text.replace("/home/pyodide", ""), (path.name, word)


def test_calc_imports_the_standard_library_only_and_little_of_it():
    for path in (ROOT / "calc").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = (
                [alias.name for alias in node.names]
                if isinstance(node, ast.Import)
                else [node.module or ""]
                if isinstance(node, ast.ImportFrom)
                else []
            )
            for name in names:
                assert name.split(".")[0] in ALLOWED_IN_CALC, (path.name, name)


def looks_into_the_tests(text):
    """The texts in a module that lead into the folder of the tests."""
    found = [node.value for node in ast.walk(ast.parse(text)) if isinstance(node, ast.Constant)]
    return [one for one in found if isinstance(one, str) and re.search(r"(^|[/`\s])tests(/|$)", one)]


def test_the_generator_reads_nothing_of_the_tests():
    """The book is made from its words, its data and its calculators; only the one command knows where its tests are."""
    assert looks_into_the_tests('path / "tests" / "calc"') and looks_into_the_tests(
        'open("../tests/calc/figures.json")'
    )
    read = [
        path for path in tracked() if path.is_relative_to(ROOT / "scripts") and path != ROOT / "scripts" / "book.py"
    ]
    assert len(read) > 20
    for path in read:
        if path.suffix == ".py":
            assert looks_into_the_tests(path.read_text(encoding="utf-8")) == [], path.name
        else:
            assert "tests/" not in path.read_text(encoding="utf-8"), path.name


def test_no_module_is_too_long_to_read():
    for path in tracked():
        if path.suffix in (".py", ".mjs") and "tests" not in path.parts:
            assert len(path.read_text(encoding="utf-8").splitlines()) < 400, path.name


def test_no_bare_coefficient_in_a_function_body():
    """Numbers in calc's functions are counts and indexes; a trade figure has a name, a unit and a source."""
    plain = {0, 1, 2, 3, 4, 5, 6, 10, 12, 100, 1000}  # 12 and 100 and 1000: inches, percent and milli, by definition
    for path in [one for one in (ROOT / "calc").rglob("*.py") if one.parent.name != "render"]:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, (ast.FunctionDef,)):
                for inner in ast.walk(node):
                    if isinstance(inner, ast.Constant) and type(inner.value) in (int, float):
                        assert inner.value in plain, (path.name, inner.lineno, inner.value)


def test_every_public_function_of_calc_is_described():
    for path in (ROOT / "calc").rglob("*.py"):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        assert ast.get_docstring(tree), path.name
        for node in tree.body:
            if isinstance(node, (ast.FunctionDef, ast.ClassDef)) and not node.name.startswith("_"):
                assert ast.get_docstring(node), (path.name, node.name)


@pytest.mark.slow
def test_a_fresh_clone_serves_a_page_at_the_address_that_it_prints(tmp_path):
    """The environment is the one that these tests run in: whoever runs them from a fresh clone has seen it being made."""
    clone = tmp_path / "clone"
    subprocess.run(["git", "clone", "--quiet", str(ROOT), str(clone)], check=True)
    for shared in (".venv", "scripts/node_modules", "build/cache"):
        (clone / shared).parent.mkdir(exist_ok=True)
        (clone / shared).symlink_to(ROOT / shared, target_is_directory=True)
    serving = subprocess.Popen(
        [sys.executable, "scripts/book.py", "serve", "--port", "8765", "--base", "/book/"],
        cwd=clone, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, start_new_session=True,
    )  # fmt: skip
    try:
        said, address = [], ""
        until = time.monotonic() + 600
        while not address and time.monotonic() < until:
            line = serving.stdout.readline()
            assert line, "".join(said)
            said.append(line)
            found = re.search(r"http://127\.0\.0\.1:\d+/book/", line)
            address = found.group() if found else ""
        assert address, "".join(said)
        with urllib.request.urlopen(address + "methods/skim-over/") as response:
            assert b"Skim over" in response.read()
    finally:
        os.killpg(serving.pid, signal.SIGKILL)  # the command and the server that it started
        serving.stdout.close()
        serving.wait()
    for shared in (".venv", "scripts/node_modules", "build/cache"):
        (clone / shared).unlink()
    shutil.rmtree(clone)


def test_every_style_sheet_is_joined_into_the_book() -> None:
    from handbook import build

    assert sorted(path.stem for path in (ROOT / "docs" / "styles").iterdir()) == sorted(
        (*build.STYLES, build.FIRM_STYLE)
    )
