"""The command that the wheel installs: an edition begins in an empty folder, is checked, edited and built, and a saved page shows by itself."""

import os
import re
import subprocess
import sys
import time
import tomllib
import urllib.request
import zipfile

import pytest
from playwright.sync_api import expect

from conftest import watch
from handbook import build
from handbook.firm import started
from handbook.host import stamp

pytestmark = [pytest.mark.browser, pytest.mark.slow]
ROOT = build.ROOT
# A saved page is to show within two seconds; here other tests run beside it.
SHOWN_S = 15


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    folder = tmp_path_factory.mktemp("dist")
    subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder)],
        cwd=ROOT,
        check=True,
        capture_output=True,
    )
    return next(folder.glob("*.whl"))


@pytest.fixture(scope="module")
def lidbook(wheel, tmp_path_factory):
    """Return a function that runs the wheel's command in a folder, with nothing of the checkout to be found."""
    installed = tmp_path_factory.mktemp("installed")
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(installed)
    command = [sys.executable, "-m", "lidbook"]
    environment = {**os.environ, "PYTHONPATH": str(installed), "PYTHONUNBUFFERED": "1"}

    def run(folder, *arguments, waits=True):
        if not waits:
            return subprocess.Popen([*command, *arguments], cwd=folder, env=environment, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)  # fmt: skip
        done = subprocess.run([*command, *arguments], cwd=folder, env=environment, capture_output=True, text=True)
        assert "Traceback" not in done.stdout + done.stderr
        return done.returncode, done.stdout + done.stderr

    return run


@pytest.fixture(scope="module")
def edition(lidbook, tmp_path_factory):
    """An edition that was started; what is large and the same is at hand from the book's own build."""
    folder = tmp_path_factory.mktemp("edition") / "my-firm"
    status, told = lidbook(folder.parent, "start", "my-firm")
    assert status == 0, told
    assert "cd my-firm" in told and "lidbook serve --live" in told
    (folder / build.WORK).mkdir()
    (folder / build.WORK / "cache").symlink_to(build.CACHE, target_is_directory=True)
    return folder


def test_the_wheel_holds_the_book_and_nothing_of_its_tests(wheel):
    with zipfile.ZipFile(wheel) as archive:
        names = set(archive.namelist())
        entry = archive.read(next(one for one in names if one.endswith("entry_points.txt"))).decode()
        needs = archive.read(next(one for one in names if one.endswith("/METADATA"))).decode()
    tops = {one.split("/")[0] for one in names}
    assert {one for one in tops if not one.endswith(".dist-info")} == {"calc", "lidbook"}
    assert "lidbook = lidbook.__main__:main" in entry
    tracked = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True).stdout.split("\0")  # fmt: skip
    for name in filter(None, tracked):
        if name.startswith("calc/"):
            assert name in names
        elif name.startswith(("docs/", "scripts/handbook/")):
            assert f"lidbook/book/{name}" in names
    assert not [one for one in names if "__pycache__" in one or one.startswith(("tests/", "site/"))]
    assert "Requires-Dist: mkdocs==" in needs


def test_the_wheel_asks_for_what_is_locked():
    """So that an edition is the same bytes wherever it is built."""
    lock = (ROOT / "requirements.lock").read_text(encoding="utf-8").lower()
    asked = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["dependencies"]
    assert len(asked) > 5
    for one in asked:
        assert re.search(rf"^{re.escape(one.lower())}( |$)", lock, re.MULTILINE), one


def test_an_edition_starts_in_an_empty_folder_alone(lidbook, edition):
    status, told = lidbook(edition.parent, "start", "my-firm")
    assert status == 2
    assert "my-firm is not empty" in told and "lidbook start my-firm" in told
    assert {one.name for one in edition.iterdir()} > {"firm.yml", ".gitignore", "mark.svg"}


def test_a_folder_without_a_file_is_told_what_to_do(lidbook, tmp_path):
    for command in ("check", "build", "serve"):
        status, told = lidbook(tmp_path, command)
        assert status == 2
        assert "There is no file firm.yml. Start an edition: lidbook start my-firm" in told


def test_each_fault_is_told_by_line_and_nothing_is_built(lidbook, edition):
    path = edition / "firm.yml"
    good = path.read_text(encoding="utf-8")
    line = next(at for at, row in enumerate(good.splitlines(), 1) if row.startswith("units: "))
    path.write_text(
        good.replace("units: customary", "units: feet").replace("people: 3", "people: many"), encoding="utf-8"
    )
    try:
        for command in ("check", "build"):
            status, told = lidbook(edition, command)
            assert status == 1
            assert f"firm.yml:{line}:8: FIRM-" in told
            assert "people" in told
        assert not (edition / "site").exists()
    finally:
        path.write_text(good, encoding="utf-8")


def test_an_edition_is_built_beside_its_file_and_its_schema_is_there_for_editors(lidbook, edition):
    before = {path: path.read_bytes() for path in edition.iterdir() if path.is_file()}
    status, told = lidbook(edition, "build")
    assert status == 0, told
    assert "Example Ceilings" in (edition / "site" / "index.html").read_text(encoding="utf-8")
    assert (edition / build.WORK / "firm.schema.json").exists()
    assert {path: path.read_bytes() for path in before} == before


def test_a_newer_generator_says_what_changed_and_leaves_the_files_alone(lidbook, edition):
    before = {path: path.read_bytes() for path in edition.iterdir() if path.is_file()}
    held = edition / build.WORK / started.BUILT_WITH
    held.write_text("0.6.0", encoding="utf-8")
    status, told = lidbook(edition, "check")
    assert status == 0, told
    now = stamp.edition(ROOT)["number"]
    assert f"This is edition {now} of the book; yours was last built with 0.6.0. Your files stay as they are." in told
    assert held.read_text(encoding="utf-8").strip() == now
    assert "last built" not in lidbook(edition, "check")[1]
    assert {path: path.read_bytes() for path in before} == before


def test_the_news_are_those_for_publishers_since_an_edition(tmp_path):
    (tmp_path / "CHANGELOG.md").write_text(
        "# Changes\n\n## Next\n\n- **Publisher**: newest,\n  in two lines.\n- **Homeowner**: not told.\n\n"
        "## 0.10.0, 2027-01-01\n\n- **Publisher**: newer.\n\n## 0.9.0, 2026-12-01\n\n- **Publisher**: known.\n",
        encoding="utf-8",
    )
    assert started.news(tmp_path, "0.9.0") == "  newest, in two lines.\n  newer."
    assert "known" in started.news(tmp_path, "")
    (tmp_path / "CHANGELOG.md").write_text("# Changes\n", encoding="utf-8")
    assert started.news(tmp_path, "0.9.0") == "  Nothing changed for publishers."


def test_what_is_saved_shows_by_itself(lidbook, edition, chromium, watched):
    page_file = edition / "our-inspection.md"
    good = page_file.read_text(encoding="utf-8")
    serving = lidbook(edition, "serve", "--live", "--port", "8790", "--base", "/book/", waits=False)
    said = []
    context = chromium.new_context(viewport={"width": 390, "height": 844})
    try:
        address = _until(serving, said, r"http://127\.0\.0\.1:\d+/book/")
        page = watch(context.new_page(), address, watched, True)
        page.goto(address + "after/inspect/")
        was = page.locator("h1").inner_text()
        page_file.write_text(good.replace("# ", "# Changed: ", 1), encoding="utf-8")
        saved = time.monotonic()
        expect(page.locator("h1")).to_have_text(f"Changed: {was}", timeout=SHOWN_S * 1000)
        print(f"shown after {time.monotonic() - saved:.1f} s")

        page_file.write_text(good + "\n<script>alert(1)</script>\n", encoding="utf-8")
        _until(serving, said, r"our-inspection\.md:\d+:1: FIRM-PAGE HTML")
        expect(page.locator("h1")).to_have_text(f"Changed: {was}")  # a fault leaves what stood there
        page_file.write_text(good, encoding="utf-8")
        expect(page.locator("h1")).to_have_text(was, timeout=SHOWN_S * 1000)
        # The book's worker stays out of the way: what is saved must not come from what is kept.
        with urllib.request.urlopen(address + "sw.js") as response:
            assert b"unregister" in response.read()
    finally:
        page_file.write_text(good, encoding="utf-8")
        context.close()
        serving.kill()
        serving.wait()
        serving.stdout.close()


def _until(process, said, pattern):
    """Read what the command says until it says `pattern`; return that."""
    for line in process.stdout:
        said.append(line)
        if found := re.search(pattern, line):
            return found.group()
    raise AssertionError("".join(said))
