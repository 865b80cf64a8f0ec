"""A firm's name in the files that go out of the page: in a calendar, a table and a file's name it stays a name, whatever it is."""

import csv
import io
import json
import re
import subprocess

import icalendar
import pytest

from handbook import build
from handbook.engines import packing

ASSETS = build.DOCS / "assets"
NAMES = [
    "Example Ceilings", 'Example "Ceilings", Ltd; \\ & Sons', "<script>alert(1)</script>", "Ceilings 😀", "שלום תקרות", "=HYPERLINK(\"https://example.org\")", "+1+1", "-2+3", "@SUM(1)",
    "＝1+1", "  =1", "W" * 60, "BEGIN:VALARM", "a\\nEND:VEVENT", "CON", "../../etc", "Büro & Söhne",
]  # fmt: skip
SCRIPT = """
const [folder, names] = JSON.parse(process.argv[1]);
const { csv } = await import(folder + 'csv.mjs');
const { plain, ofFirm } = await import(folder + 'filename.mjs');
const { calendar } = await import(folder + 'ical.mjs');
const { fileName } = await import(folder + 'jobfile.mjs');
console.log(JSON.stringify(names.map((name) => ({
  csv: csv([['Thing', 'List of'], ['Paint, white', name], [name, '3 gal']]),
  ics: calendar([{ uid: 'a@plan', start: '2027-02-27', title: `Cover, then scrape (${name})`, text: 'Cover' }], { name: `${name}: wet-scrape` }),
  file: ofFirm('days-wet-scrape.ics', name), job: ofFirm(fileName({ name, changed: '2026-11-27T10:00:00Z' }), name),
}))));
"""


@pytest.fixture(scope="module")
def made():
    told = json.dumps([ASSETS.as_uri() + "/", NAMES])
    done = subprocess.run([packing.node(), "--input-type=module", "-e", SCRIPT, told], capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return dict(zip(NAMES, json.loads(done.stdout), strict=True))


@pytest.mark.parametrize("name", NAMES)
def test_a_table_shows_the_name_and_works_nothing_out(made, name):
    rows = list(csv.reader(io.StringIO(made[name]["csv"], newline=""), strict=True))
    assert [len(row) for row in rows] == [2, 2, 2] and rows[0] == ["Thing", "List of"]
    hostile = re.match(r"\s*[=+\-@＝]", name) is not None
    for cell in (rows[1][1], rows[2][0]):
        assert cell == ("'" if hostile else "") + name
        assert not re.match(r"\s*[=+\-@＝\t\r]", cell)


@pytest.mark.parametrize("name", NAMES)
def test_a_calendar_shows_the_name_and_holds_one_entry(made, name):
    text = made[name]["ics"]
    (found,) = icalendar.Calendar.from_ical(text, multiple=True)
    (event,) = found.subcomponents
    assert event["SUMMARY"] == f"Cover, then scrape ({name})" and not event.errors
    assert max(len(line) for line in text.encode().split(b"\r\n")) <= 75
    plain = text.replace("\r\n ", "")
    escaped = re.sub(r"([\\;,])", r"\\\1", name)
    assert f"X-WR-CALNAME:{escaped}: wet-scrape\r\n" in plain and len(re.findall(r"^BEGIN:", plain, re.MULTILINE)) == 2


@pytest.mark.parametrize("name", NAMES)
def test_a_file_is_named_by_what_any_device_takes(made, name):
    for file in (made[name]["file"], made[name]["job"]):
        assert re.fullmatch(r"[a-z0-9][a-z0-9-]*\.[a-z]+", file) and len(file) < 110 and "--" not in file
    assert made["Example Ceilings"]["file"] == "example-ceilings-days-wet-scrape.ics"
    assert made["שלום תקרות"]["file"] == "days-wet-scrape.ics" and made["שלום תקרות"]["job"] == "job-2026-11-27.json"
