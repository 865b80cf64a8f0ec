"""The plan of a job: its hours written out by hand, its waits those of the drying form, and what no plan may do."""

import datetime
import json
import re
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from schedule_check import faults

from calc import catalogue
from calc.core.answer import public
from calc.core.fields import read
from calc.decision.questions import WAYS
from calc.job.days import calendar_of, days_of
from calc.job.labor import LEAST, MOST, hours_of, tasks_of, wait_minutes, works_of
from calc.job.plan import CALCULATOR
from calc.job.plan_inputs import air_of, asked_of, days_of_laboratory
from calc.job.stage import YOU
from calc.job.stages import STAGES, WAYS_TAKE, stages_of
from calc.job.waits import WAITS

DOCS = Path(__file__).resolve().parents[2] / "docs"
DEMO = {"rooms": "Living: 20' x 14'; Bed: 12' x 11'"}
WEEKDAYS = {
    "mon-fri": [1, 1, 1, 1, 1, 0, 0],
    "mon-sat": [1, 1, 1, 1, 1, 1, 0],
    "all": [1] * 7,
    "weekend": [0, 0, 0, 0, 0, 1, 1],
}
NAMES = [name for name, _ in WAYS]


def ask(**given_texts):
    answer, refused = catalogue.work_out("plan", DEMO | {name: str(text) for name, text in given_texts.items()})
    assert answer is not None, refused
    return answer


def lines(answer):
    return {one["name"]: Fraction(one["value"].text) for one in public(answer)["answers"]}


def works(**given_texts):
    values, refused = read(CALCULATOR.fields, DEMO | {name: str(text) for name, text in given_texts.items()}, ())
    assert refused == ()
    asked = asked_of(values, values.choice("way"), air_of(values), days_of_laboratory(values))
    return asked, works_of(asked), calendar_of(values)


def test_the_hours_of_the_demo_house_by_hand():
    """Leave and seal: two rooms of 280 and 132 sq ft, two coats of paint. Minutes, least and most, stage by stage."""
    hundreds = Fraction(412, 100)
    by_hand = [
        # the house: look and measure; inspect; hand over
        (30 + 20 + 20, 60 + 45 + 40),
        # power off and take down, in two rooms
        (2 * 25, 2 * 50),
        # cover
        (2 * 30 + hundreds * 25, 2 * 60 + hundreds * 50),
        # dust and mend; seal
        (2 * 10 + hundreds * 8, 2 * 20 + hundreds * 25),
        (2 * 10 + hundreds * 10, 2 * 20 + hundreds * 25),
        # paint, twice
        (2 * (2 * 10 + hundreds * 15), 2 * (2 * 20 + hundreds * 40)),
        # clear up, wipe again, refit
        (2 * 20 + hundreds * 15, 2 * 40 + hundreds * 35),
        (2 * 10 + hundreds * 5, 2 * 25 + hundreds * 10),
        (2 * 25, 2 * 60),
    ]
    found = hours_of(works(way="leave-and-seal")[1])
    assert found == tuple(sum(row[end] for row in by_hand) / Fraction(60) for end in (0, 1))
    shown = lines(ask(way="leave-and-seal"))
    assert abs(shown["labor_hours_low"] - found[0]) <= Fraction(1, 20)
    assert abs(shown["labor_hours_high"] - found[1]) <= Fraction(1, 20)


def test_printed_hours_of_one_room_lie_in_the_band():
    """A home page: 12 x 12 ft, 4 to 8 h with preparing and clearing up, without patching and paint."""
    own = ("power-off", "cover", "patch", "wet-scrape", "uncover", "wipe-again")
    low, high = hours_of(tuple(one for one in works(way="wet-scrape", rooms="12' x 12'")[1] if one.stage.id in own))
    assert low <= 4 and high >= 8


@pytest.mark.parametrize("air", [("68", "50"), ("55", "80"), ("90", "20")])
def test_a_coat_is_waited_for_as_the_drying_form_says(air):
    """No less than the form's hours, and less than a quarter of an hour more, as work starts on quarters."""
    given_air = {"temperature_f": air[0], "humidity_pct": air[1], "texture_depth_in": "1/8"}
    asked, _, _ = works(way="skim-over", **given_air)
    answer, _ = catalogue.work_out("drying", given_air | {"coats": "2"})
    law = {one.name: one.value for one in answer.lines}
    for which, name in ((LEAST, "hours_low"), (MOST, "hours_high")):
        assert 0 <= Fraction(wait_minutes("coat", which, asked, 0), 60) - law[name] < Fraction(1, 4)
    assert 0 <= Fraction(wait_minutes("fill", MOST, asked, 0), 60) - law["first_coat_hours_high"] < Fraction(1, 4)


WARM = {"temperature_f": "70", "humidity_pct": "45", "outdoor_temperature_f": "70", "outdoor_humidity_pct": "45"}
OWN_AIR = [
    ("window", WARM | {"outdoor_humidity_pct": "70"}),
    ("window", {"outdoor_temperature_f": "41", "outdoor_humidity_pct": "80", "heat_held": "yes"}),
    ("machine", {}),
    ("machine", {"dehumidifier_pt_per_day": "90", "closed_air_changes_per_hour": "0.2"}),
    ("machine", {"temperature_f": "60", "dehumidifier_kind": "desiccant"}),
    ("closed", {"closed_air_changes_per_hour": "1.5", "outdoor_temperature_f": "40"}),
]


@pytest.mark.parametrize(("air", "more"), OWN_AIR)
def test_a_room_in_its_own_air_is_waited_for_as_the_humidity_form_says(air, more):
    """Each room for itself, one coat at a time; the form is asked for a room alone, as anybody would ask it."""
    rooms = ("Living: 20' x 14'", "Bed: 12' x 11'")
    more = more | {"coat_thickness_in": "1/16"}
    asked, _, _ = works(way="skim-over", rooms="; ".join(rooms), texture_depth_in="1/8", room_air=air, **more)
    for at, room in enumerate(rooms):
        for what, depth_in in (("coat", "0"), ("fill", "1/8")):
            answer, faults = catalogue.work_out(
                "humidity", {"rooms": room, "coats": "1", "texture_depth_in": depth_in, **more}
            )
            assert answer is not None, faults
            form = {one.name: one.value for one in answer.lines}
            for which, name in ((LEAST, f"{air}_hours_low"), (MOST, f"{air}_hours_high")):
                assert 0 <= Fraction(wait_minutes(what, which, asked, at), 60) - form[name] < Fraction(1, 4)


def test_much_air_like_the_rooms_own_is_air_that_stays_as_typed():
    """Sixty changes an hour with the same air outdoors: the water of a coat dampens the room hardly at all."""
    kept, _, _ = works(way="board-over", texture_depth_in="1/8", **WARM)
    aired, _, _ = works(
        way="board-over", texture_depth_in="1/8", room_air="window", open_air_changes_per_hour="60", **WARM
    )
    for what in ("coat", "fill", "joint"):
        for which in (LEAST, MOST):
            steady, own = (wait_minutes(what, which, one, 0) for one in (kept, aired))
            assert steady <= own + 15 and own <= steady * 1.05 + 15, (what, which, steady, own)


def test_a_joint_wets_less_than_a_coat_and_a_house_waits_for_its_last_room():
    asked, _, _ = works(way="board-over", room_air="machine", coat_thickness_in="1/16")
    for which in (LEAST, MOST):
        assert wait_minutes("joint", which, asked, 0) <= wait_minutes("coat", which, asked, 0)
        rooms = [wait_minutes("coat", which, asked, at) for at in range(2)]
        assert rooms[1] < rooms[0] == wait_minutes("coat", which, asked, -1)


def test_a_plan_keeps_to_the_waits_of_each_room_and_tells_them():
    asked = {"way": "skim-over", "texture_depth_in": "1/8", "coats": "2"}
    told = next(one for one in ask(**asked, room_air="machine").listings if one.name == "waits")
    rows = [text for text, _ in told.rows if text.startswith("Coat dry")]
    assert [row.split(":")[0] for row in rows] == ["Coat dry in Living", "Coat dry in Bed"]
    again = next(one for one in ask(**asked).listings if one.name == "waits")
    assert len([text for text, _ in again.rows if text.startswith("Coat dry: ")]) == 1


@pytest.mark.parametrize("air", ["closed", "window"])
def test_air_that_may_never_dry_a_coat_is_refused_with_a_way_out(air):
    """A closed room with no leak that is known, and a window open in the cold without heat."""
    given_texts = DEMO | {"way": "skim-over", "texture_depth_in": "1/8", "room_air": air}
    for name, texts in (
        ("plan", given_texts),
        ("compare", {one: given_texts[one] for one in given_texts if one != "way"}),
    ):
        answer, faults = catalogue.work_out(name, texts)
        assert answer is None and [one.field for one in faults] == ["room_air"]
        assert "Living may not dry in 30 days" in faults[0].message
        answer, faults = catalogue.work_out(name, texts | {"room_air": faults[0].example, "heat_held": "yes"})
        assert answer is not None, faults


def test_every_row_is_used_and_every_name_in_it_is_there():
    taken = {name for _, names in WAYS_TAKE for name in names}
    assert taken == {one.id for one in STAGES}
    assert [way for way, _ in WAYS_TAKE] == NAMES
    waits = {one.id for one in WAITS}
    assert {one.then for one in STAGES} - {""} <= waits
    for one in STAGES:
        calculator, line = one.goes_by.split()
        assert catalogue.find(calculator) is not None
        assert line in {"ceiling_area_sqft", "board_area_sqft", "perimeter_ft"}
        assert 0 <= one.each_min[0] <= one.each_min[1] and 0 <= one.per_100_min[0] <= one.per_100_min[1]
        assert one.who == YOU or one.each_min == one.per_100_min == (0, 0)


def test_every_page_of_steps_is_told_by_some_stage():
    """A stage names the page that tells how; none of the pages with steps is left out, and none is named that is not there."""
    with_steps = set()
    for path in sorted(DOCS.rglob("*.md")):
        sample = path.parent.name == "firm"  # pages of a made-up firm, none of the book's
        if not sample and re.search(r"^```steps", path.read_text(encoding="utf-8"), re.MULTILINE):
            with_steps.add(path.relative_to(DOCS).with_suffix("").as_posix())
    told = {page for one in STAGES for page in (one.page, *one.more_pages)}
    assert with_steps - told == set()
    assert all((DOCS / f"{page}.md").exists() for page in told)


def test_the_result_stands_before_all_that_touches_the_ceiling():
    """Whichever way: samples and report first, and only looking, measuring and paper before them."""
    for way in NAMES:
        ids = [one.id for one in stages_of(way)]
        assert ids.index("samples") == 1 and ids.index("result") == 2 and ids[0] == "survey"


def test_a_report_in_hand_is_not_waited_for_and_one_that_found_some_refuses():
    clean = {"asbestos_result": "none", "result_rooms": "this", "result_layers": "all"}
    texts = json.dumps([row for one in ask(way="wet-scrape", **clean).listings for row in one.rows])
    assert "inspector takes the samples" not in texts and "Laboratory result" not in texts
    assert "Only if the laboratory" not in ask(way="wet-scrape", **clean).sentence
    assert "Only if the laboratory finds no asbestos" in ask(way="wet-scrape").sentence
    assert "Only if" not in ask(way="licensed-removal").sentence
    for way in NAMES:
        found, refused = catalogue.work_out("plan", DEMO | clean | {"asbestos_result": "found", "way": way})
        if way == "licensed-removal":
            assert found is not None
        else:
            assert found is None and refused[0].field == "way" and "closed for this ceiling" in refused[0].message


@pytest.mark.parametrize(("texts", "field", "word"), [
    ({"start_day": "2027-02-30"}, "start_day", "is no date"),
    ({"start_day": "soon"}, "start_day", "is no date"),
    ({"days_off": "2027-03-19; Easter"}, "days_off", "Easter"),
    ({"humidity_pct": "99"}, "humidity_pct", "cannot dry"),
    ({"laboratory_days_low": "12", "laboratory_days_high": "3"}, "laboratory_days_low", "Turn them round"),
    ({"people": "0"}, "people", "too small"),
])  # fmt: skip
def test_what_cannot_be_planned_is_refused_by_its_field(texts, field, word):
    found, refused = catalogue.work_out("plan", DEMO | {"way": "wet-scrape"} | texts)
    assert found is None
    assert [one.field for one in refused] == [field] and word in refused[0].message


def moments(days):
    epoch = datetime.datetime(1970, 1, 1)
    return {
        str(one.work): tuple(
            epoch + datetime.timedelta(days=day, minutes=minute) for day, minute in (one.start, one.end)
        )
        for one in days.slots
    }


SIDES = st.integers(6, 24)
JOBS = st.fixed_dictionaries({
    "way": st.sampled_from(NAMES), "rooms": st.lists(st.tuples(SIDES, SIDES), min_size=1, max_size=5).map(lambda all_: "; ".join(f"{a}' x {b}'" for a, b in all_)),
    "people": st.integers(1, 3).map(str), "hours_per_day": st.integers(4, 10).map(str), "coats": st.integers(1, 3).map(str),
    "paint_coats": st.integers(0, 2).map(str), "texture_depth_in": st.sampled_from(["0", "1/8", "1/4"]),
    "work_week": st.sampled_from(["mon-fri", "mon-sat", "all", "weekend"]), "start_day": st.dates(datetime.date(2026, 1, 1), datetime.date(2030, 1, 1)).map(str),
    "room_air": st.sampled_from(["steady", "window"]), "heat_held": st.just("yes"), "outdoor_humidity_pct": st.just("40"),
})  # fmt: skip


@settings(max_examples=60, deadline=None)
@given(JOBS)
def test_no_wait_is_broken_and_nobody_works_at_night(job):
    asked, all_works, calendar = works(**job)
    people = int(job["people"])
    for which in (LEAST, MOST):
        days = days_of(all_works, which, asked, calendar, people)
        hands = min(people, 2)
        allowed = [
            faults(checked(job, all_works, which, asked, calendar, one), moments(days)) for one in range(1, hands + 1)
        ]
        assert [] in allowed, allowed


def checked(job, all_works, which, asked, calendar, hands):
    """The job as the checker from outside takes it."""
    people = int(job["people"])
    rows = [
        (one.id, one.room, one.minutes, one.crew, list(one.after), one.in_one_go)
        for one in tasks_of(all_works, which, asked, people, hands)
    ]
    return {
        "tasks": rows, "first": datetime.date.fromisoformat(job["start_day"]), "opens": calendar.day_start_minute, "minutes": calendar.day_minutes,
        "weekdays": WEEKDAYS[job["work_week"]], "off": set(), "people": people, "one_a_room": True,
    }  # fmt: skip


@settings(max_examples=40, deadline=None)
@given(JOBS)
def test_more_people_never_more_days_and_a_bigger_room_never_fewer_hours(job):
    found = lines(ask(**job))
    more = lines(ask(**job | {"people": str(int(job["people"]) + 1)}))
    assert more["labor_hours_high"] == found["labor_hours_high"]
    asked, all_works, calendar = works(**job)
    for which in (LEAST, MOST):
        now, then = (days_of(all_works, which, asked, calendar, int(job["people"]) + extra) for extra in (0, 1))
        assert then.last_day <= now.last_day
    bigger = lines(ask(**job | {"rooms": job["rooms"] + "; 10' x 10'"}))
    assert (
        bigger["labor_hours_low"] > found["labor_hours_low"] and bigger["labor_hours_high"] > found["labor_hours_high"]
    )


def test_board_over_ten_feet_takes_two_fifths_more():
    """A trade association's article: about 40 % more above 10 ft; at 10 ft none."""
    hang = {
        height: next(
            one.minutes for one in works(way="board-over", ceiling_height_ft=height)[1] if one.stage.id == "hang"
        )
        for height in ("10", "10.1")
    }
    assert hang["10"] == (20 + Fraction(280, 100) * 60, 40 + Fraction(280, 100) * 130)
    assert hang["10.1"] == tuple(one * Fraction(14, 10) for one in hang["10"])


def test_the_laboratory_days_are_days_of_the_clock_and_work_goes_by_quarters():
    asked, all_works, _ = works(way="board-over", laboratory_days_low="3", laboratory_days_high="10")
    assert [wait_minutes("result", which, asked, -1) for which in (LEAST, MOST)] == [3 * 1440, 10 * 1440]
    minutes = [one.minutes for one in tasks_of(all_works, MOST, asked, 2, 1)]
    assert all(one % 15 == 0 for one in minutes) and {one % 60 for one in minutes} == {0, 15, 30, 45}
