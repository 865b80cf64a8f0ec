"""Every text that passes the door has one key and one English; a language is a file of data that is checked against them."""

import json
import subprocess
import sys

import pytest

from calc import catalogue
from calc.evidence import cautions
from handbook.content.faults import ContentFaults
from handbook.engines import language, packing
from handbook.lint import texts


@pytest.fixture(scope="module")
def english():
    return {one.key: one.english for one in texts.every_text()}


def test_the_command_lists_key_and_english():
    command = [sys.executable, "-m", "handbook.lint.texts"]
    environment = {"PYTHONPATH": f"{packing.ROOT}:{packing.ROOT / 'scripts'}", "PYTHONIOENCODING": "utf-8"}
    done = subprocess.run(command, capture_output=True, encoding="utf-8", env=environment, check=True, cwd=packing.ROOT)
    rows = [line.split("\t") for line in done.stdout.splitlines()]
    assert all(len(row) == 2 for row in rows) and len(rows) > 1000
    keys = [key for key, _ in rows]
    assert keys == sorted(set(keys))
    assert ["wetting.sentence", "Fill the tank {times}. The water adds {load} to the board until it dries."] in rows


def test_what_is_said_and_what_is_declared_is_found(english):
    assert english["wetting.note.painted"].startswith("Paint keeps the water out.")  # a name bound in the function
    assert english["skim.area_sqft.label"] == english["wetting.area_sqft.label"] == "Ceiling"  # a helper of several
    assert english["humidity.window_heat_kw.label"] == "Heat that drying takes, window open"  # a row of a loop
    assert english["taping.caulk.walls"] != english["taping.caulk.given"]
    assert english["noun.pass.many"] == "passes"
    assert english["field.wetting.texture_painted.choice.unknown"] == "Not known"
    assert english["calculator.wetting.verb"] == "Work out the water"
    assert english["unit.sqft"] == english["prices.by.sq ft"] == "sq ft"
    assert english["signal.DANGER"] == "DANGER"
    for one in cautions.CAUTIONS:
        assert english[f"caution.{one.id}.hazard"] == one.hazard
    for calculator in catalogue.every():
        for field in calculator.fields:
            assert english[f"field.{calculator.name}.{field.name}.label"] == field.label


LINES = 'def told(values):\n    lines = Lines("try", "metric")\n'
CASES = [
    ('say("a.b", "One")\nsay("a.b", "Two")\n', "2:1", "another text"),
    ('say("a.b", "One {it}")\n', "1:1", "slots"),
    ('say("a.b", "One", it="x")\n', "1:1", "slots"),
    ("def told(key):\n    return say(key, 'One')\n", "2:12", "no literal"),
    ("def told(text):\n    return say('a.b', text)\n", "2:12", "no literal"),
    ("def told(x):\n    text = 'One'\n    text += ' two'\n    return say('a.b', text)\n", "4:12", "no literal"),
    ("def told(x):\n    return say('a.b', 'One' if x else 'Two')\n", "2:12", "more than one"),
    ('say("a.b")\n', "1:1", "a key and its English"),
    (LINES + '    lines.add(name=values, label="One", rule="Two")\n', "3:5", "the name of the line"),
    (LINES + '    lines.add(name="x", label="One", rule="Two {it}")\n', "3:5", "slots"),
    ('def told(lines: Lines):\n    lines.add(name="x", label="One", rule="Two")\n', "2:5", "nobody owns"),
]


@pytest.mark.parametrize(("source", "place", "says"), CASES)
def test_each_fault_is_told_at_its_place(tmp_path, source, place, says):
    (tmp_path / "calc").mkdir()
    (tmp_path / "calc" / "browser.py").write_text(source, encoding="utf-8")
    found, faults = texts.said(tmp_path)
    told = [str(one) for one in faults + texts.doubled(found)]
    assert len(told) == 1 and told[0].startswith(f"calc/browser.py:{place}: TEXT ") and says in told[0], told


def test_a_helper_says_its_lines_for_every_calculator_that_calls_it(tmp_path):
    (tmp_path / "calc").mkdir()
    helper = 'def add_one(lines: Lines):\n    lines.add(name="x_ft", label="One", rule="Two {it}", it="3")\n'
    (tmp_path / "calc" / "browser.py").write_text(helper, encoding="utf-8")
    for name in ("left", "right"):
        source = f'def told():\n    lines = Lines("{name}", "")\n    add_one(lines)\n'
        (tmp_path / "calc" / f"{name}.py").write_text(source, encoding="utf-8")
    found, faults = texts.said(tmp_path)
    assert faults == []
    assert sorted(one.key for one in found) == [
        f"{name}.x_ft.{part}" for name in ("left", "right") for part in ("label", "rule")
    ]


REFUSED = [
    ('{\n"wetting.figure": "of {passes}",\n"wetting.moon": "x"\n}', ".json", "3:1", "no text has the key"),
    ('{"wetting.figure": "of water"}', ".json", "1:1", "other slots"),
    ('{"wetting.figure": "of {passes} and {passes} {more}"}', ".json", "1:1", "other slots"),
    ('{"wetting.figure": "of {passes} }"}', ".json", "1:1", "other slots"),
    ('{"wetting.figure": 3}', ".json", "1:1", "no text"),
    ('{"wetting.figure": ""}', ".json", "1:1", "no text"),
    ('{"signal.DANGER": "A",\n"signal.DANGER": "B"}', ".json", "1:1", "stands twice"),
    ('["wetting.figure"]', ".json", "1:1", "one table"),
    ('{\n"wetting.figure" "x"}', ".json", "2:1", "delimiter"),
    ('"wetting.figure" = "of"\n', ".toml", "1:1", "other slots"),
    ("wetting\n", ".toml", "1:1", "="),
]


@pytest.mark.parametrize(("written", "ending", "place", "says"), REFUSED)
def test_a_language_that_the_book_cannot_use_is_refused(tmp_path, written, ending, place, says):
    path = tmp_path / f"other{ending}"
    path.write_text(written, encoding="utf-8")
    with pytest.raises(ContentFaults) as caught:
        language.read(path)
    assert f":{place}: LANGUAGE " in str(caught.value) and says in str(caught.value)
    assert len(caught.value.faults) == 1


def test_a_language_may_be_json_or_toml_and_leave_keys_out(tmp_path):
    texts_given = {"wetting.figure": "aus {passes}", "signal.DANGER": "GEFAHR"}
    (tmp_path / "a.json").write_text(json.dumps(texts_given), encoding="utf-8")
    (tmp_path / "a.toml").write_text('"wetting.figure" = "aus {passes}"\nsignal.DANGER = "GEFAHR"\n', encoding="utf-8")
    assert language.read(tmp_path / "a.json") == language.read(tmp_path / "a.toml") == texts_given
    scope = {}
    exec(language.source(texts_given), scope)
    assert scope["TEXTS"] == texts_given


def test_the_book_stands_in_english():
    scope = {}
    exec((packing.ROOT / "calc" / language.MODULE).read_text(encoding="utf-8"), scope)
    assert scope["TEXTS"] == {}
