"""The calendar file, read back by a library for calendars."""

import datetime
import re
from pathlib import Path

import icalendar
import pytest

from test_links import ask

MADE = datetime.datetime(2026, 11, 27, 10, 20, 30, tzinfo=datetime.UTC)
LONG = "Mist, wait, scrape; then bag it, twice. Büro, 居間, 🏠 \\ back. " * 20
EVENTS = [
    {"uid": "a@lidbook", "start": "2027-02-27", "end": "2027-03-01", "title": "Cover; scrape, \\ bag", "text": "First line\nSecond\r\nThird", "url": "https://book.example/to/skim-over/#j=1Z,;"},
    {"uid": "b@lidbook", "start": "2027-03-02T08:30", "end": "2027-03-02T16:00", "title": LONG, "text": LONG},
    {"uid": "c@lidbook", "start": "2028-02-29", "title": "One day"},
    {"uid": "d@lidbook", "start": "2027-12-31T07:05", "title": "A moment\nBEGIN:VALARM"},
]  # fmt: skip


def made(events, name="A job: Den, Hall; both"):
    return ask(make=[[events, name]])["made"][0]


def read(text):
    (found,) = icalendar.Calendar.from_ical(text, multiple=True)
    return found


def test_a_library_reads_the_same_events():
    found = read(made(EVENTS))
    assert found["VERSION"] == "2.0"
    # The library leaves the marks before a comma in what it knows no kind for.
    assert found["NAME"] == found["X-WR-CALNAME"] == "A job: Den\\, Hall\\; both"
    assert found["PRODID"]
    events = found.walk("VEVENT")
    assert len(found.subcomponents) == len(events) == len(EVENTS)
    for event, asked in zip(events, EVENTS, strict=True):
        assert event["UID"] == asked["uid"] and event["DTSTAMP"].dt == MADE and not event.errors
        assert event["SUMMARY"] == asked["title"]
        assert event.get("DESCRIPTION", "") == asked.get("text", "").replace("\r\n", "\n")
        assert event.get("URL", "") == asked.get("url", "")
    assert [event["DTSTART"].dt for event in events] == [
        datetime.date(2027, 2, 27), datetime.datetime(2027, 3, 2, 8, 30), datetime.date(2028, 2, 29), datetime.datetime(2027, 12, 31, 7, 5),
    ]  # fmt: skip
    # The end of whole days is the first day after (section 3.6.1).
    assert events[0]["DTEND"].dt == datetime.date(2027, 3, 2)
    assert events[1]["DTEND"].dt == datetime.datetime(2027, 3, 2, 16)
    assert "DTEND" not in events[2] and "DTEND" not in events[3]


def test_lines_end_and_fold_as_the_standard_says():
    data = made(EVENTS).encode()
    assert data.endswith(b"\r\n") and data.count(b"\n") == data.count(b"\r\n") == data.count(b"\r")
    lines = data.split(b"\r\n")
    assert max(len(line) for line in lines) <= 75
    assert sum(line.startswith(b" ") for line in lines) > 20
    for line in lines:
        line.decode()  # no letter is broken


def test_no_text_begins_a_line_of_its_own():
    lines = re.sub("\r\n ", "", made([{"uid": "x\r\nATTACH:y", "start": "2027-01-01", "title": "a\r\nBEGIN:VALARM\0\x1b", "text": "b\rEND:VCALENDAR"}], "n\nX:1")).split("\r\n")  # fmt: skip
    names = [line.split(":")[0].split(";")[0] for line in lines if line]
    assert names == ["BEGIN", "VERSION", "PRODID", "CALSCALE", "NAME", "X-WR-CALNAME", "BEGIN", "UID", "DTSTAMP", "DTSTART", "SUMMARY", "DESCRIPTION", "END", "END"]  # fmt: skip
    assert not re.search(r"[\x00-\x08\x0b-\x1f]", "".join(lines))


def test_a_calendar_without_events_is_one():
    assert read(made([])).subcomponents == []


BAD = [
    {"start": "2027-02-29"}, {"start": "2027-13-01"}, {"start": "tomorrow"}, {"start": ""}, {"start": "2027-01-01T24:00"}, {"start": "2027-01-01T08:60"},
    {"start": "2027-01-02", "end": "2027-01-01"}, {"start": "2027-01-01", "end": "2027-01-01T08:00"}, {"start": "2027-01-01", "url": "javascript:alert(1)"},
]  # fmt: skip


@pytest.mark.parametrize("one", BAD, ids=lambda one: " ".join(one.values()) or "nothing")
def test_what_no_calendar_has_is_refused(one):
    assert made([{"uid": "x", "title": "x", **one}]) == "RangeError"


@pytest.mark.browser
@pytest.mark.slow
def test_the_file_is_handed_out(page, address):
    page.goto(address)
    assets = page.locator("script[src*='page.mjs']").get_attribute("src").removesuffix("page.mjs")
    with page.expect_download() as told:
        page.evaluate(f"""async () => {{ const {{ calendar }} = await import('{address}{assets}ical.mjs');
            const {{ download }} = await import('{address}{assets}download.mjs');
            download('job.ics', 'text/calendar', calendar([{{ uid: 'a', start: '2027-01-01', title: 'Bücher 🏠' }}], {{ name: 'Job' }})); }}""")
    assert told.value.suggested_filename == "job.ics"
    with open(told.value.path(), encoding="utf-8", newline="") as file:
        (event,) = read(file.read()).walk("VEVENT")
    assert event["SUMMARY"] == "Bücher 🏠"


@pytest.mark.browser
@pytest.mark.slow
@pytest.mark.parametrize("start", ["2027-03-15", ""])
def test_the_days_of_a_plan_go_into_a_calendar(page, address, start):
    """One entry a day of the list, on its date; a plan without a first day offers none."""
    page.goto(
        address + "work-out/plan/#plan?way=leave-and-seal&rooms=Den:+12+x+11" + (f"&start_day={start}" if start else "")
    )
    page.wait_for_selector("#plan[data-engine] .result[data-shows=answer]")  # and no worked example any more
    act = page.locator("#plan .tools button", has_text="Save the days for a calendar")
    if not start:
        page.wait_for_selector("#plan .tools:not([hidden])")
        assert act.count() == 0
        return
    with page.expect_download() as told:
        act.click()
    events = read(Path(told.value.path()).read_text(encoding="utf-8")).walk("VEVENT")
    rows = page.locator('#plan [data-listing="days"] li').all_inner_texts()
    assert [one["DTSTART"].dt.isoformat() for one in events] == [re.search(r"\d{4}-\d\d-\d\d", row)[0] for row in rows]
    assert all(str(one["SUMMARY"]) in row for one, row in zip(events, rows, strict=True))
