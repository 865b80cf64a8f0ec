"""Rules of a place: three worked places change the answers where they should, and only there; a rule adds, and opens nothing."""

import datetime
import itertools
import json
import re
import shutil
import subprocess
import sys

import pytest

from calc.decision.verdict import STATES
from calc.evidence import cautions, limits
from handbook import build
from handbook.engines import language
from handbook.firm import edition, local
from handbook.lint import review, texts
from handbook.make import pages

ROOT = build.ROOT
PLACES = ROOT / "docs" / "firm" / "places"
COUNTY = "Example County"
# From what asks for nothing to what asks for most; a rule may only lead upwards.
SAYS = ("not reached", "not checked", "ask", "reached", "applies")
ASKED = {
    "samples": [
        {"area_sqft": area, "building": building, "place": place, "texture_depth_in": "1/4"}
        for area, building, place in itertools.product(("9.99", "10", "32", "160", "5000"), ("house", "other", "unknown"), ("", "Colorado", COUNTY, "example  CO", "Narnia"))
    ],
    "lead": [
        {"disturbed_sqft": area, "paint_test": test, "paid_work": paid, "torn_out": torn, "place": place, **({"year_built": year} if year else {})}
        for area, test, paid, torn, place, year in itertools.product(
            ("2", "2.01", "7"), ("unknown", "lead", "none"), ("yes", "no"), ("yes", "no"), ("", "Colorado", COUNTY), ("", "1964", "2005")
        )
    ],
    "decision": [
        {"asbestos_result": result, "result_rooms": "this", "result_layers": "all", "building": building, "place": place, "built": built, "paint_test": test, "household": "adults"}
        for result, building, place, built, test in itertools.product(
            ("none", "trace", "found", "unknown"), ("house", "other"), ("", "Colorado", COUNTY, "Narnia"), ("before-1978", "later", "unknown"), ("unknown", "lead", "none")
        )
    ],
}  # fmt: skip
ASKS = """
import json, sys
from calc import catalogue
from handbook.make import limits
asked = json.load(sys.stdin)
def told(name, given):
    answer, faults = catalogue.work_out(name, given)
    assert not faults, faults
    rows = [[one.name, one.state, one.text, list(one.sources), [list(why) for why in one.reasons], one.review_by] for one in answer.items]
    return {"figure": answer.figure, "rows": rows, "cautions": sorted(one.id for one in answer.cautions), "lines": [one.shown for one in answer.lines]}
found = {name: [told(name, given) for given in questions] for name, questions in asked.items()}
import proof
bad = proof.violations()[0] + proof.opened_by_knowing()[0]
print(json.dumps({"answers": found, "limits": limits.listed(), "settle": limits.of_edition(), "bad": bad}))
"""


def firm_of(place):
    path = PLACES / f"{place}.yml"
    return edition.read_firm(path, f"docs/firm/places/{path.name}", build.DOCS, set(pages.GENERATED))


def asked(folder):
    environment = {
        "PYTHONPATH": ":".join(map(str, (folder, ROOT / "scripts", ROOT / "tests" / "calc"))),
        "PYTHONDONTWRITEBYTECODE": "1",
    }
    command = [sys.executable, "-c", ASKS]
    done = subprocess.run(command, input=json.dumps(ASKED), capture_output=True, text=True, env=environment, cwd=folder)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


@pytest.fixture(scope="module")
def book():
    """What the book itself answers."""
    return asked(ROOT)


@pytest.fixture(scope="module")
def county(tmp_path_factory):
    """What the edition with the rules of Example County answers."""
    copy = tmp_path_factory.mktemp("county")
    shutil.copytree(ROOT / "calc", copy / "calc", ignore=shutil.ignore_patterns("__pycache__"))
    (copy / "calc" / local.MODULE).write_text(local.source(firm_of("example-county").says), encoding="utf-8")
    return asked(copy)


def rows_of(told, name, **given):
    """The rows of the first answer to a question with these figures, by name."""
    at = next(at for at, one in enumerate(ASKED[name]) if all(one.get(key, "") == text for key, text in given.items()))
    return {row[0]: row for row in told["answers"][name][at]["rows"]}


@pytest.mark.parametrize("place", ["federal", "colorado", "example-county"])
def test_each_worked_place_has_no_fault_and_is_marked_as_made_up(place):
    assert bool(firm_of(place).says.local_rules) == (place == "example-county")
    assert "made up" in (PLACES / f"{place}.yml").read_text(encoding="utf-8")


def test_where_nothing_but_federal_rules_is_known_the_answers_say_so(book):
    """The places that add no rule have the book's own calculators: what a place does is a matter of what is typed."""
    for place in ("federal", "colorado"):
        assert local.source(firm_of(place).says).count(" = (\n)\n") == 6
    house = {"area_sqft": "32", "building": "house"}
    assert {name: row[1] for name, row in rows_of(book, "samples", place="", **house).items()} == {
        "Federal, a house": "ask", "Local rules": "not checked",
    }  # fmt: skip
    told = rows_of(book, "samples", place="Colorado", area_sqft="5000", building="house")
    assert told["Colorado, house"][1:4:2] == ["reached", ["colorado-reg-8"]] and "Local rules" not in told
    assert "Reviewed 2026-11-25, review by 2027-11-25." in told["Colorado, house"][2]
    lead = rows_of(book, "lead", place="Colorado", disturbed_sqft="7", year_built="1964")
    assert lead["State and local rules"][2].startswith("This book holds none for lead.") and "Colorado" not in lead


@pytest.mark.parametrize(
    ("given", "name", "says"),
    [
        (("samples", dict(area_sqft="9.99", building="house")), "Example County, house", "not reached"),
        (("samples", dict(area_sqft="10", building="house")), "Example County, house", "reached"),
        (("samples", dict(area_sqft="9.99", building="other")), "Example County, other buildings", "reached"),
        (("lead", dict(disturbed_sqft="2", year_built="1964", paint_test="unknown", torn_out="no")), COUNTY, "not reached"),
        (("lead", dict(disturbed_sqft="2", year_built="1964", paint_test="unknown", torn_out="yes")), COUNTY, "applies"),
        (("lead", dict(disturbed_sqft="2.01", year_built="1964", paint_test="unknown", torn_out="no", paid_work="no")), COUNTY, "applies"),
        (("lead", dict(disturbed_sqft="2.01", year_built="", paint_test="unknown", torn_out="no")), COUNTY, "applies"),
        (("lead", dict(disturbed_sqft="2.01", year_built="2005", paint_test="lead", torn_out="no")), COUNTY, "applies"),
        (("lead", dict(disturbed_sqft="7", year_built="2005", paint_test="unknown", torn_out="no")), COUNTY, "ask"),
        (("lead", dict(disturbed_sqft="7", year_built="1964", paint_test="none", torn_out="no")), COUNTY, "ask"),
    ],
)  # fmt: skip
def test_the_countys_rule_is_told_with_its_source_and_days(county, given, name, says):
    calculator, figures = given
    row = rows_of(county, calculator, place=COUNTY, **figures)[name]
    assert row[1] == says
    day = "2027-05-01" if calculator == "lead" else "2027-11-01"
    assert f"Reviewed 2026-11-01, review by {day}." in row[2] and row[5] == day
    assert len(row[3]) == 1 and row[3][0].startswith("firm-example-county-")


def test_the_choice_of_way_asks_the_countys_offices(county):
    found = rows_of(county, "decision", place=COUNTY, asbestos_result="found", building="house", paint_test="none")[
        "Licensed removal"
    ]
    said = [text for text, source in found[4] if source.startswith("firm-")]
    assert found[1] == "open after" and len(said) == 2
    assert (
        said[0]
        == "Example County's trigger for houses is 10 sq ft. Reviewed 2026-11-01, review by 2027-11-01. Ask the county's air office before any work."
    )
    clean = {"asbestos_result": "none", "place": COUNTY, "paint_test": "lead"}
    for built in ("before-1978", "later", "unknown"):
        for way, row in rows_of(county, "decision", built=built, **clean).items():
            told = [text for text, source in row[4] if source == "firm-example-county-lead"]
            assert row[1] != "open" and (told or row[1] != "open after"), (built, way)
    assert not [
        row
        for row in rows_of(
            county, "decision", built="later", asbestos_result="none", place=COUNTY, paint_test="none"
        ).values()
        if "firm-" in str(row)
    ]


def test_the_pages_list_the_countys_rules_with_source_and_days(book, county):
    for page in ("limits", "settle"):
        for text in (
            "Example County's trigger for houses is 10 sq ft",
            "the county's health office",
            "section 3 (invented)",
            '<time datetime="2027-05-01" data-review-by="2027-05-01">',
        ):
            assert text in county[page] and text not in book[page]
    assert book["limits"].count("<li>") + 3 == county["limits"].count("<li>")
    for found in (book, county):  # a place with a figure for each kind of building says which is whose
        rows = re.findall("<li>.*?</li>", found["limits"])
        assert len(rows) == len(set(rows)) == found["limits"].count("<li>")
    assert (
        book["limits"].count("other than a house of up to four dwellings") == 4
    )  # federal area and volume, and Colorado's
    assert "<li>" not in book["settle"] and "reference/limits/" in book["settle"]


def test_it_changes_the_answers_there_and_nowhere_else(book, county):
    for name, questions in ASKED.items():
        for given, was, now in zip(questions, book["answers"][name], county["answers"][name], strict=True):
            here = given["place"].lower().startswith("example")
            if name == "decision" and not given["place"]:
                continue  # a place that is not given may be that one: see below
            assert (was != now) if here and name != "decision" else (was == now) or here, given


def test_a_rule_of_a_place_opens_nothing_that_the_book_closes(book, county):
    """Each answer, wherever: every row of the book's still stands and asks for no less, and no caution is gone."""
    looked = 0
    for name, questions in ASKED.items():
        order = STATES if name == "decision" else SAYS
        for given, was, now in zip(questions, book["answers"][name], county["answers"][name], strict=True):
            states: dict[str, list[int]] = {}
            for row in now["rows"]:
                states.setdefault(row[0].removeprefix("Other ").capitalize(), []).append(order.index(row[1]))
            for row in was["rows"]:
                looked += 1
                assert states[row[0].capitalize()].pop(0) >= order.index(row[1]), (given, row)
            assert set(was["cautions"]) <= set(now["cautions"]), given
    assert looked > 3000
    assert book["bad"] == [] and county["bad"] == []


def test_a_place_with_a_rule_on_lead_alone_still_says_that_asbestos_was_not_checked(tmp_path, book):
    says = firm_of("example-county").says
    lead_alone = says.model_copy(update={"local_rules": [one for one in says.local_rules if one.topic == "lead"]})
    shutil.copytree(ROOT / "calc", tmp_path / "calc", ignore=shutil.ignore_patterns("__pycache__"))
    (tmp_path / "calc" / local.MODULE).write_text(local.source(lead_alone), encoding="utf-8")
    found = asked(tmp_path)
    test_a_rule_of_a_place_opens_nothing_that_the_book_closes(book, found)
    row = rows_of(found, "samples", place=COUNTY, building="house")["Other local rules"]
    assert row[1] == "not checked" and row[2].startswith("No limit of Example County is held for such a building.")


BRACED = """
import json
from calc import catalogue
from calc.evidence import cautions, limits
from handbook.make import limits as page
asked = [("samples", {"area_sqft": "10", "building": "house"}), ("samples", {"area_sqft": "10", "building": "unknown"}), ("lead", {"disturbed_sqft": "7"})]
items = [one for name, given in asked for one in catalogue.work_out(name, given | {"place": "{it} county"})[0].items]
van = cautions.caution(cautions.LOCAL[0][0])
print(json.dumps({"items": [[one.name, one.text] for one in items], "page": page.listed(), "declared": limits.texts(), "van": [van.hazard, van.avoidance],
    "cautions": cautions.texts()}))
"""


def test_a_places_own_words_stand_as_they_were_written_in_any_language(tmp_path):
    """A firm may write a brace, and no file of texts can hold its words: they never pass the door."""
    says = firm_of("example-county").says
    change = {
        "place": "{It} County",
        "also": ["{it} county"],
        "says": "{x} and } are in the rule",
        "ask": "the {office",
    }
    rules = [one.model_copy(update=change) for one in says.local_rules]
    shutil.copytree(ROOT / "calc", tmp_path / "calc", ignore=shutil.ignore_patterns("__pycache__"))
    van = edition.read_firm(
        build.DOCS / "firm" / "firm.yml", "firm.yml", build.DOCS, set(pages.GENERATED)
    ).says.cautions[0]
    van = van.model_copy(update={"hazard": "The {van} is loaded.", "avoidance": "Keep { away."})
    source = local.source(says.model_copy(update={"local_rules": rules, "cautions": [van]}))
    (tmp_path / "calc" / local.MODULE).write_text(source, encoding="utf-8")
    other = {one.key: f"~{one.english}" for one in texts.every_text()}
    (tmp_path / "calc" / language.MODULE).write_text(language.source(other), encoding="utf-8")
    environment = {"PYTHONPATH": f"{tmp_path}:{ROOT / 'scripts'}", "PYTHONDONTWRITEBYTECODE": "1"}
    command = [sys.executable, "-c", BRACED]
    done = subprocess.run(command, capture_output=True, text=True, env=environment, cwd=tmp_path)
    assert done.returncode == 0, done.stderr
    told = json.loads(done.stdout)
    own = [(name, text) for name, text in told["items"] if "{It} County" in name]
    assert [name for name, _ in own] == [
        "~{It} County, house", "~{It} County, house", "~{It} County, other buildings", "{It} County",
    ]  # fmt: skip
    assert all(": {x} and } are in the rule. ~Reviewed" in text and "ask the {office." in text for _, text in own)
    assert [name for name, _ in told["items"] if "Federal" in name][:1] == ["~Federal, a house"]
    assert told["page"].count("{x} and } are in the rule. Ask the {office.") == 3
    assert [key for key, _ in told["declared"]] == [key for key, _ in limits.texts()]
    assert told["van"] == ["The {van} is loaded.", "Keep { away."]
    assert [key for key, _ in told["cautions"]] == [key for key, _ in cautions.texts()]


@pytest.mark.parametrize("in_another_language", [False, True])
def test_a_rule_of_a_place_is_told_in_the_words_of_the_firm_braces_and_all(tmp_path, in_another_language):
    """They are no text of the book's: they stand in the answer as the firm wrote them, in each language."""
    says = firm_of("example-county").says
    place, words = "County {of} }0{", "Ours {is} one {rule}, {} and }{ too"
    rules = [one.model_copy(update={"place": place, "also": [], "says": words}) for one in says.local_rules]
    shutil.copytree(ROOT / "calc", tmp_path / "calc", ignore=shutil.ignore_patterns("__pycache__"))
    source = local.source(says.model_copy(update={"local_rules": rules}))
    (tmp_path / "calc" / local.MODULE).write_text(source, encoding="utf-8")
    if in_another_language:
        other = {one.key: one.english + "~" for one in texts.every_text()}
        (tmp_path / "calc" / language.MODULE).write_text(language.source(other), encoding="utf-8")
    script = (
        "import json, sys; from calc import catalogue\n"
        "found = [catalogue.work_out('decision', given)[0] for given in json.load(sys.stdin)]\n"
        "print(json.dumps([[one.items_title, one.notes[0], [text for way in one.items for text, _ in way.reasons]] for one in found]))"
    )
    clean = {"asbestos_result": "none", "result_rooms": "this", "result_layers": "all", "built": "later"}
    asks = [{"asbestos_result": "found", "place": place}, clean | {"paint_test": "lead", "place": place}]
    environment = {"PYTHONPATH": str(tmp_path), "PYTHONDONTWRITEBYTECODE": "1"}
    command = [sys.executable, "-c", script]
    done = subprocess.run(
        command, input=json.dumps(asks), capture_output=True, text=True, env=environment, cwd=tmp_path
    )
    assert done.returncode == 0, done.stderr
    for title, note, reasons in json.loads(done.stdout):
        told = [text for text in reasons if "Ours" in text]
        assert told and all(text.startswith(words + ". Reviewed ") and "~" not in text for text in told)
        assert place in note and title.endswith("~") == in_another_language


def test_a_rule_past_its_day_is_told_by_the_build_with_its_place_in_the_firms_file(tmp_path):
    firm = firm_of("example-county")
    at = firm.rules_at
    rows = (PLACES / "example-county.yml").read_text(encoding="utf-8").splitlines()
    where = at["firm-example-county-lead"].split(":")
    assert where[0] == "docs/firm/places/example-county.yml" and rows[int(where[1]) - 1] == "    review_by: 2027-05-01"
    assert rows[int(where[1]) - 1][int(where[2]) - 1 :] == "2027-05-01"
    copy = tmp_path / "calc"
    shutil.copytree(ROOT / "calc", copy, ignore=shutil.ignore_patterns("__pycache__"))
    (copy / local.MODULE).write_text(local.source(firm.says), encoding="utf-8")
    script = (
        "import datetime; from handbook.lint import review; print('\\n'.join(review.due(datetime.date(2027, 5, {}))))"
    )
    for day, count in ((1, 0), (2, 1)):
        environment = {"PYTHONPATH": f"{tmp_path}:{ROOT / 'scripts'}", "PYTHONDONTWRITEBYTECODE": "1"}
        done = subprocess.run(
            [sys.executable, "-c", script.format(day)],
            capture_output=True,
            text=True,
            check=True,
            env=environment,
            cwd=tmp_path,
        )
        told = [edition.named(f"  warning: {row}\n", {}, firm.rules_at) for row in done.stdout.split("\n") if row]
        assert len(told) == count, told
    assert told == [
        f"  warning: {at['firm-example-county-lead']}: REVIEW the limit firm-example-county-lead was due for another look at its source on 2027-05-01\n"
    ]
    assert review.due(datetime.date(2027, 5, 2)) == []
