"""The command line as a person and as a program meets it."""

import json
import os
import subprocess
import sys

import pytest

from calc.__main__ import main


def run(capsys, *arguments):
    status = main(list(arguments))
    out, err = capsys.readouterr()
    return status, out, err


def test_the_published_gallons(capsys):
    status, out, _ = run(
        capsys,
        "skim",
        "area_sqft=1000",
        "texture_depth_in=0",
        "coats=1",
        "coat_thickness_in=1/16",
        "waste_pct=0",
        "shrinkage_pct=0",
        "--json",
    )
    values = {line["name"]: line["value"] for line in json.loads(out)["answers"]}
    assert status == 0
    assert values["compound_gal"] == 38.96


def test_json_has_the_public_keys(capsys):
    _, out, _ = run(capsys, "takeoff", "rooms=Living: 20' x 14'", "--json")
    answer = json.loads(out)
    assert list(answer) == ["calculator", "inputs", "answers", "cautions", "notes"]
    assert set(answer["answers"][0]) >= {"name", "label", "value", "unit", "rule", "working", "sources"}


def test_a_list_with_one_line_each(capsys):
    status, out, _ = run(capsys)
    assert status == 0
    for name in ("takeoff", "skim", "drying"):
        assert sum(line.strip().startswith(name + " ") for line in out.splitlines()) == 1


def test_help_shows_every_input(capsys):
    status, out, _ = run(capsys, "skim", "--help")
    assert status == 0
    assert "texture_depth_in" in out and "exactly one of: rooms, area_sqft" in out


def test_faults_exit_with_2_as_json_and_as_text(capsys):
    status, out, err = run(capsys, "drying", "humidity_pct=140", "moon=full", "twice", "--json")
    faults = json.loads(out)["faults"]
    assert status == 2 and err == ""
    assert {fault["field"] for fault in faults} == {"humidity_pct", "moon", "twice"}
    assert all(set(fault) == {"field", "given", "message", "example"} for fault in faults)
    status, out, err = run(capsys, "drying", "humidity_pct=140")
    assert status == 2 and out == "" and "0 to 100" in err and "Traceback" not in err


def test_an_unknown_calculator_and_a_name_given_twice(capsys):
    assert run(capsys, "plaster", "--json")[0] == 2
    status, out, _ = run(capsys, "drying", "humidity_pct=40", "humidity_pct=50", "--json")
    assert status == 2 and "twice" in json.loads(out)["faults"][0]["message"]


def test_text_answer_names_the_figure_and_its_sources(capsys):
    status, out, _ = run(capsys, "skim", "area_sqft=280", "texture_depth_in=3/16")
    assert status == 0
    assert "DANGER" in out and "pails" in out and "geometry" in out.lower()


def test_python_m_calc_runs_without_anything_installed():
    """Isolated mode: no site packages, so only the standard library can be at work."""
    done = subprocess.run(
        [sys.executable, "-S", "-m", "calc", "takeoff", "rooms=10 x 10", "--json"],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout)["answers"][0]["value"] == 100


def as_bytes(encoding, *arguments):
    command = [sys.executable, "-m", "calc", *arguments]
    return subprocess.run(command, capture_output=True, check=False, env=os.environ | {"PYTHONIOENCODING": encoding})


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-8"])
def test_a_terminal_of_few_marks_gets_plainer_ones(encoding):
    asked = ("reach", "ceiling_height_ft=9", "show_in=metric")
    done = as_bytes(encoding, *asked)
    told = done.stdout.decode(encoding)
    assert done.returncode == 0 and not done.stderr
    assert (" m − 1" if encoding == "utf-8" else " m - 1") in told and "?" not in told
    room = "rooms=Kü−che 🏠: 10 x 10"
    done = as_bytes(encoding, "takeoff", room, "--json")
    assert json.loads(done.stdout.decode(encoding))["inputs"]["rooms"] == room.removeprefix("rooms=")
    done = as_bytes(encoding, "takeoff", "rooms=Küche −3 x 4")
    assert done.returncode == 2 and b"negative" in done.stderr and b"Traceback" not in done.stderr


@pytest.mark.parametrize(
    "arguments", [["takeoff", b"rooms=\xff: 10 x 10"], ["takeoff", b"\xff=1"], [b"\xff"], ["takeoff", b"\xff"]]
)
def test_bytes_that_are_no_text_are_a_sentence(arguments):
    for more in ([], ["--json"]):
        done = as_bytes("utf-8", *arguments, *more)
        assert done.returncode == 2 and b"Traceback" not in done.stderr
        assert "\ufffd".encode() in done.stdout + done.stderr


def test_who_reads_may_go_away():
    read, write = os.pipe()
    os.close(read)
    done = subprocess.run([sys.executable, "-m", "calc"], stdout=write, stderr=subprocess.PIPE, check=False)
    os.close(write)
    assert done.returncode == 0 and done.stderr == b""


def test_help_ends_a_question_once(capsys):
    for name in ("samples", "fixtures", "decision", "wetting"):
        assert "?." not in run(capsys, name, "--help")[1]
