"""An edition in metric: the examples that its pages show are in its readers' units, and each is one that its field takes."""

import re
import subprocess
import sys

import pytest

from calc import catalogue
from calc.core import fields
from handbook import build
from handbook.evidence import metric
from handbook.firm import edition
from handbook.make import pages

FEET = re.compile(r"\d['\"]|\d *(?:ft|sq ft|gal|lb|psf|mil)\b")


@pytest.mark.parametrize("name", catalogue.NAMES)
def test_each_example_of_a_field_is_in_metric_and_is_taken(name):
    for field in catalogue.find(name).fields:
        told = metric.example_of(field, field.example)
        assert fields.read((field,), {field.name: told})[1] == (), field.name
        if field.kind in ("rooms", "length", "area", "volume") and field.name not in metric.AS_BUILT:
            assert not FEET.search(told) and re.search(r"\d (?:mm|m|m²|m³|L)\b", told), (field.name, told)


@pytest.fixture(scope="module")
def finished(tmp_path_factory):
    """The pages of a metric edition, made to the last step before MkDocs."""
    folder = tmp_path_factory.mktemp("metric")
    (folder / "firm.yml").write_text(
        "business:\n  name: Example\n  phone: +1 555 0100\n  area: Here\nreviewed: 2026-11-01\nunits: metric\n",
        encoding="utf-8",
    )
    firm = edition.read_firm(folder / "firm.yml", "firm.yml", build.DOCS, set(pages.GENERATED))
    edition.lay_out(firm, build.ROOT, folder / "copy", build.CACHE)
    done = subprocess.run(
        [sys.executable, "-c", "from handbook import build; build.write_finished(build.read_all())"],
        capture_output=True, text=True, cwd=folder / "copy", env={"PYTHONPATH": str(folder / "copy" / "scripts"), "PYTHONDONTWRITEBYTECODE": "1"},
    )  # fmt: skip
    assert done.returncode == 0, done.stdout + done.stderr
    return folder / "copy" / "build" / "docs"


def test_the_worked_examples_of_its_pages_are_in_metric(finished):
    text = (finished / "work-out" / "takeoff.md").read_text(encoding="utf-8")
    assert "Study: 4.12 m x 3.35 m" in text and "<kbd>Living: 6.1 m x 4.27 m</kbd>" in text
    looked = 0
    for path in finished.rglob("*.md"):
        for figure in re.findall(r'<p class="figure"><strong>(.*?)</strong>', path.read_text(encoding="utf-8")):
            looked += 1
            assert not FEET.search(figure), (path.name, figure)
    assert looked > 20
    drying = (finished / "reference" / "drying.md").read_text(encoding="utf-8")
    assert "°F</th>" not in drying and '<th scope="col">20 °C</th>' in drying and "A coat of 1.6 mm," in drying
