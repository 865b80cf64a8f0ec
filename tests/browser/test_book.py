"""Several jobs on one device: named, switched, saved as a file, opened again, forgotten. Nothing typed is lost, none is half
taken, and no job writes into another."""

import json
import subprocess
from pathlib import Path

import pytest
from playwright.sync_api import expect

from conftest import until
from handbook import serve
from handbook.engines import packing
from test_job import field, form, open_way, ready
from test_tabs import FULL, OFFLINE, PAINT, goes_back, rooms  # noqa: F401

pytestmark = [pytest.mark.browser, pytest.mark.slow]
ROOT = Path(__file__).resolve().parents[2]
JOBS = "my-job/"
FORBIDDEN = "Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('no', 'SecurityError'); }});"
ALL = "Object.fromEntries(Object.entries(localStorage))"
JOB = {
    "format": "lidbook-job",
    "version": 1,
    "id": "elm1",
    "name": "Elm Street",
    "made": "2026-11-20T08:00:00.000Z",
    "changed": "2026-11-21T08:00:00.000Z",
    "figures": {"rooms": "Den: 12 x 10", "coats": "1", "asbestos_result": "none", "result_rooms": "this", "result_layers": "all"},
    "ticks": {"result-in-hand": "2026-11-21T08:00:00.000Z"},
    "timers": {},
    "prices": {"Mud, a pail": "$ 19.50"},
    "notes": "The key is with the neighbor.\nAn invented one.",
}  # fmt: skip


def open_jobs(page, address):
    page.goto(address + JOBS)
    page.wait_for_selector("html[data-jobs]")
    return page


def second(page):
    return page.context.new_page()


def told(page):
    return page.locator("#jobs .told")


def choose(page, text, name="job.json"):
    body = text if isinstance(text, bytes) else text.encode()
    page.locator(".file input").set_input_files({"name": name, "mimeType": "application/json", "buffer": body})


def press(page, name):
    page.get_by_role("button", name=name, exact=True).click()


def names(page):
    return [one.split("\n")[0].removesuffix(" current") for one in page.locator(".jobs h3").all_inner_texts()]


def saved(page, press_it):
    with page.expect_download() as coming:
        press_it()
    return json.loads(Path(coming.value.path()).read_text(encoding="utf-8"))


def in_page(page, do, given=None):
    """Run `do(jobs, given)` with the module of the jobs that this page has."""
    return page.evaluate(
        f"""async (given) => {{
            const source = [...document.scripts].find((one) => one.src.includes('drawer.mjs')).src;
            return ({do})(await import(new URL('jobs.mjs', source)), given);
        }}""",
        given,
    )


def by_node(script, given):
    found = subprocess.run(
        [packing.node(), str(Path(__file__).with_name(script))],
        input=json.dumps(given),
        capture_output=True,
        text=True,
        check=True,
    )
    return json.loads(found.stdout)


FILES = {
    "schema": str(serve.SITE / "job.schema.json"),
    "module": (ROOT / "docs" / "assets" / "jobfile.mjs").as_uri(),
    "ajv": (packing.MODULES / "ajv" / "dist" / "2020.js").as_uri(),
}


def test_made_up_jobs_come_back_from_a_file_as_they_were():
    """1,500 of them, each file against the schema; and with one thing broken each is refused by a sentence."""
    assert by_node("roundtrip.mjs", {"seed": 20261127, "count": 1500, **FILES})["faults"] == []


def test_made_up_jobs_go_through_the_device_as_they_were(page, address):
    open_jobs(page, address)
    faults = in_page(
        page,
        """(jobs) => {
            let state = 5;
            const below = (most) => { state = (Math.imul(state, 1664525) + 1013904223) >>> 0; return Math.floor(state / 2 ** 32 * most); };
            const map = (most, kind, text) => Object.fromEntries(Array.from({length: below(most)}, () => [kind + below(1000), text()]));
            const moment = () => new Date(1.7e12 + below(1e9)).toISOString();
            const texts = ['', 'Den: 10 x 10', '<b>', 'a\\nb', '½ 😀', '__proto__', '\\u0000', '$&'];
            const text = () => texts[below(8)] + below(99);
            const faults = [];
            for (let at = 0; at < 300; at += 1) {
                const job = {id: 'made' + at, name: 'Job of ' + at, made: moment(), changed: moment(), figures: map(20, 'f_', text), ticks: map(20, 's-x', moment),
                    timers: map(3, 's-y', moment), prices: map(5, 'a price, ', text), notes: text()};
                const {id, why, dropped} = jobs.takeJob(job);
                const sorted = (one) => JSON.stringify(one, (key, value) => value && typeof value === 'object' ? Object.fromEntries(Object.entries(value).sort()) : value);
                if (why || dropped.length || sorted(jobs.currentJob()) !== sorted(job)) faults.push([job, jobs.currentJob(), why]);
                if (jobs.removeJob(id).why || Object.keys(localStorage).some((place) => place.includes('@made'))) faults.push('not removed');
            }
            return faults;
        }""",
    )
    assert faults == []


def test_what_edition_0_6_kept_is_the_first_job(page, address):
    page.goto(address)
    kept = {
        "figures /book/ rooms": "Den: 10 x 10",
        "figures /book/ coats": "2",
        "ticks /book/ result-in-hand": "2026-11-20T08:00:00.000Z",
        "timers /book/ dry-1": "2026-11-20T09:00:00.000Z",
    }
    page.evaluate("kept => Object.entries(kept).forEach(([place, text]) => localStorage.setItem(place, text))", kept)
    open_jobs(page, address)
    assert names(page) == ["Job 1"]
    expect(page.locator(".jobs")).to_contain_text("Den: 10 x 10")
    expect(page.locator(".jobs")).to_contain_text("2 figures, 1 tick")
    row = page.locator('.asked li[data-name="rooms"]')
    expect(row.locator("b")).to_have_text("Den: 10 x 10")
    expect(page.locator(".asked li:visible")).to_have_count(2)
    file = saved(page, lambda: press(page, "Save as a file"))
    assert file["figures"] == {"rooms": "Den: 10 x 10", "coats": "2"}
    assert file["ticks"] == {"result-in-hand": "2026-11-20T08:00:00.000Z"}
    assert file["timers"] == {"dry-1": "2026-11-20T09:00:00.000Z"}
    press(page, "New job")
    open_way(page, address)
    assert rooms(page).input_value() == ""
    assert not page.locator("#result-in-hand input").is_checked()
    rooms(page).fill("Bath: 8 x 5")
    page.goto("about:blank")
    after = open_jobs(page, address).evaluate(ALL)
    assert {place: text for place, text in after.items() if place in kept} == kept, "nothing of it was touched"
    page.get_by_role("button", name="Work on this: Job 1").click()
    open_way(page, address)
    assert rooms(page).input_value() == "Den: 10 x 10"
    assert page.locator("#result-in-hand input").is_checked()


def test_each_figure_leads_to_where_it_is_asked(page, address):
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10")
    rooms(page).press("Tab")
    for name in ("rooms", "texture_depth_in", "asbestos_result"):
        in_page(page, "(jobs, name) => { localStorage.setItem('figures /book/ ' + name, name === 'rooms' ? 'Den: 10 x 10' : 'x'); }", name)  # fmt: skip
    for name in ("rooms", "texture_depth_in", "asbestos_result"):
        open_jobs(page, address).locator(f'.asked li[data-name="{name}"] a').click()
        ready(page)
        assert page.locator(f".calc [name={name}]").count() == 1, name


def test_a_file_goes_to_another_device_and_settles_nothing_there(page, make_page, address):
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10\nHall: 4 x 4")
    field(page, "texture_depth_in").fill("3/16")
    page.locator("#result-in-hand input").check()
    for name, text in {"asbestos_result": "none", "result_rooms": "this", "result_layers": "all"}.items():
        page.evaluate("([name, text]) => localStorage.setItem('figures /book/ ' + name, text)", [name, text])
    open_jobs(page, address)
    page.get_by_label("Name").fill("  12 Elm <b>Street</b>  ")
    page.get_by_label("Notes").fill("Two lines,\nand “these”.")
    file = saved(page, lambda: press(page, "Save as a file"))
    assert file["name"] == "12 Elm <b>Street</b>" and file["notes"] == "Two lines,\nand “these”."
    assert file["figures"]["rooms"] == "Den: 10 x 10; Hall: 4 x 4" or "Hall: 4 x 4" in file["figures"]["rooms"]
    other = make_page()
    open_way(other, address)
    rooms(other).fill("Mine: 9 x 9")
    open_jobs(other, address)
    choose(other, json.dumps(file))
    expect(told(other)).to_contain_text("is open, and is the current job")
    expect(told(other)).to_contain_text("“Job 1” stays as it was")
    expect(told(other)).to_contain_text("See the report yourself")
    expect(told(other)).to_contain_text("Check each hold point yourself")
    assert names(other) == ["12 Elm <b>Street</b>", "Job 1"]
    again = saved(other, lambda: press(other, "Save as a file"))
    assert again | {"id": ""} == file | {"id": ""}
    open_way(other, address)
    assert rooms(other).input_value() == "Den: 10 x 10\nHall: 4 x 4"
    assert other.locator("#result-in-hand input").is_checked()
    expect(other.locator(".whose")).to_have_text("Job: 12 Elm <b>Street</b>")
    until(other, "document.documentElement.dataset.asbestos === 'link'")
    open_jobs(other, address)
    other.get_by_role("button", name="Work on this: Job 1").click()
    open_way(other, address)
    assert rooms(other).input_value() == "Mine: 9 x 9"
    expect(other.locator(".whose")).to_have_text("Job: Job 1")


def test_the_ticks_of_a_file_can_be_cleared(page, address):
    open_jobs(page, address)
    choose(page, json.dumps(JOB))
    press(page, "Clear its ticks")
    expect(told(page)).to_contain_text("are cleared")
    open_way(page, address)
    assert not page.locator("#result-in-hand input").is_checked()


def test_the_same_file_twice_is_two_jobs(page, address):
    open_jobs(page, address)
    for count in (1, 2):
        choose(page, json.dumps(JOB))
        expect(page.locator(".jobs li")).to_have_count(count)
    assert names(page) == ["Elm Street (2)", "Elm Street"]
    ids = in_page(page, "(jobs) => jobs.allJobs().map((one) => one.id)")
    assert len(set(ids)) == 2 and "elm1" in ids


def changed(**parts):
    return json.dumps(JOB | parts)


SCRIPT = "<img src=x onerror='window.ran = 1'>"
DEEP = changed(figures="DEEP").replace('"DEEP"', "[" * 400_000 + "]" * 400_000)
HOSTILE = {
    "nothing": ("", "cannot be read"),
    "a list": ("[]", "no job of this book"),
    "a text": ('"job"', "no job of this book"),
    "no JSON": ("PK\x03\x04", "cannot be read"),
    "not even text": (b"\xff\xfe\x00\xd8", "cannot be read"),
    "something else": ('{"name": "x", "figures": {}}', "no job of this book"),
    "another format": (changed(format="other-job"), "another one"),
    "no version": (changed(version="1"), "which version"),
    "the future": (changed(version=2), "A newer edition"),
    "cut off": (json.dumps(JOB)[:-20], "cut off"),
    "too large": (changed(notes="x" * 1_000_000), "larger than 1 MB"),
    "deep": (DEEP, "no list of names and texts"),
    "deeper than its end": ("[" * 900_000, "cannot be read"),
    "deep in a figure": (changed(figures={"rooms": [[[["x"]]]]}), "no text"),
    "a prototype": (json.dumps(JOB)[:-1] + ', "__proto__": {"ran": 1}}', "__proto__"),
    "a prototype in figures": (changed(figures={"__proto__": "x", "rooms": "1 x 1"}), "__proto__"),
    "a constructor": (changed(figures={"constructor": "x"}), "constructor"),
    "a constructor in prices": (changed(prices={"constructor": "x"}), "constructor"),
    "a script as a name": (changed(figures={SCRIPT: "x"}), "which no job holds"),
    "a script as a step": (changed(ticks={SCRIPT: JOB["made"]}), "which no job holds"),
    "a number": (changed(figures={"coats": 2}), "no text"),
    "nothing in a figure": (changed(figures={"coats": None}), "no text"),
    "a tick that is no moment": (changed(ticks={"power-off": "yes"}), "no day and time"),
    "a moment that is none": (changed(ticks={"power-off": "2026-13-45T08:00:00Z"}), "no day and time"),
    "a name that is none": (changed(name=["x"]), "name"),
    "a long name": (changed(name="x" * 81), "80 letters"),
    "a part too few": (json.dumps({key: part for key, part in JOB.items() if key != "ticks"}), "ticks"),
    "too many": (changed(prices={f"p{at}": "1" for at in range(2001)}), "2,000 entries"),
    "a bad id": (changed(id="../figures /book/ x"), "id"),
}


@pytest.mark.parametrize("kind", HOSTILE)
def test_a_hostile_file_is_refused_by_a_sentence(page, address, kind):
    text, says = HOSTILE[kind]
    open_way(page, address)
    rooms(page).fill("Mine: 9 x 9")
    open_jobs(page, address)
    before = page.evaluate(ALL)
    choose(page, text)
    expect(told(page)).to_contain_text(says)
    expect(told(page)).to_contain_text("Nothing was taken from it. Your jobs are as they were.")
    assert page.evaluate(ALL) == before
    assert names(page) == ["Job 1"]
    assert page.evaluate("window.ran === undefined && ({}).ran === undefined")
    assert page.locator("main img").count() == 0


def test_a_file_that_was_cut_anywhere_is_refused(page, address):
    """Each beginning of a file, whatever is left of it."""
    open_jobs(page, address)
    text = json.dumps(JOB)
    taken = page.evaluate(
        """async (text) => {
            const source = [...document.scripts].find((one) => one.src.includes('drawer.mjs')).src;
            const { read } = await import(new URL('jobfile.mjs', source));
            return Array.from({length: text.length}, (_, at) => at).filter((at) => { try { read(text.slice(0, at), null); return true; } catch { return false; } });
        }""",
        text,
    )
    assert taken == []


def test_a_script_in_what_may_hold_any_text_stays_text(page, address):
    open_jobs(page, address)
    choose(page, changed(name=SCRIPT, notes=SCRIPT, figures={"rooms": SCRIPT}, prices={SCRIPT: SCRIPT}))
    expect(told(page)).to_contain_text("is open")
    assert names(page) == [SCRIPT]
    expect(page.locator('.asked li[data-name="rooms"] b')).to_have_text(SCRIPT)
    open_way(page, address)
    expect(page.locator(".whose")).to_have_text("Job: " + SCRIPT)
    assert page.evaluate("window.ran === undefined") and page.locator("main img").count() == 0


def test_what_this_edition_does_not_know_is_left_out_and_named(page, address):
    open_jobs(page, address)
    choose(page, changed(color="plum", figures={"rooms": "1 x 1", "moon_phase": "full"}))
    expect(told(page)).to_contain_text("Left out, as this edition does not know it: “color”, “moon_phase”.")
    assert in_page(page, "(jobs) => jobs.currentJob().figures") == {"rooms": "1 x 1"}
    assert not [place for place in page.evaluate(ALL) if "moon" in place or "color" in place]


def test_the_figures_that_edition_0_6_knew_alone_are_version_0(page, address):
    open_jobs(page, address)
    choose(page, json.dumps({"rooms": "Den: 10 x 10", "coats": "1", "moon": "full"}))
    expect(told(page)).to_contain_text("is open")
    expect(told(page)).to_contain_text("“moon”")
    assert in_page(page, "(jobs) => jobs.currentJob().figures") == {"rooms": "Den: 10 x 10", "coats": "1"}


def test_two_tabs_tell_each_other_which_job_and_keep_apart(page, address):
    open_way(page, address)
    rooms(page).fill("First: 10 x 10")
    rooms(page).press("Tab")
    other = open_jobs(second(page), address)
    press(other, "New job")
    expect(page.locator("#whose")).to_contain_text("Another page works on “Job 2” now. This page stays with “Job 1”")
    open_way(other, address)
    rooms(other).fill("Second: 8 x 8")
    rooms(page).fill("First: 11 x 11")
    rooms(page).press("Tab")
    page.wait_for_timeout(600)
    assert rooms(other).input_value() == "Second: 8 x 8"
    page.locator("#result-in-hand input").check()
    assert not other.locator("#result-in-hand input").is_checked()
    kept = page.evaluate(ALL)
    assert kept["figures /book/ rooms"] == "First: 11 x 11"
    assert [text for place, text in kept.items() if place.startswith("figures@")] == ["Second: 8 x 8"]
    press(page, "Show “Job 2” here")
    page.wait_for_selector("html[data-ready]")
    expect(rooms(page)).to_have_value("Second: 8 x 8")
    expect(page.locator("#whose")).to_be_hidden()
    assert "Second:+8+x+8" in page.url


def test_a_tab_that_heard_nothing_writes_into_its_own_job(page, address):
    open_way(page, address)
    asleep = second(page)
    asleep.add_init_script("addEventListener('storage', event => event.stopImmediatePropagation(), true);")
    open_way(asleep, address)
    open_jobs(page, address)
    press(page, "New job")
    rooms(asleep).fill("Den: 10 x 10")
    rooms(asleep).press("Tab")
    expect(asleep.locator("#whose")).to_contain_text("This page stays with “Job 1”")
    assert page.evaluate("localStorage.getItem('figures /book/ rooms')") == "Den: 10 x 10"
    assert not [place for place in page.evaluate(ALL) if place.startswith("figures@")]


def test_two_pages_of_all_jobs_go_together(page, address):
    open_jobs(page, address)
    other = open_jobs(second(page), address)
    press(page, "New job")
    expect(told(other)).to_contain_text("Another page chose “Job 2”")
    other.get_by_label("Name").fill("Oak")
    expect(page.get_by_label("Name")).to_be_focused()  # it was just made: its name is selected there
    page.locator("h1").click()
    other.locator("h1").click()
    expect(page.locator(".jobs h3").first).to_contain_text("Oak")
    page.get_by_label("Notes").focus()
    page.keyboard.type("of the o")
    other.get_by_label("Name").fill("Oak 2")
    page.keyboard.type("ther")
    page.locator("h1").click()
    assert in_page(page, "(jobs) => jobs.currentJob().notes") == "of the other"
    expect(page.get_by_label("Name")).to_have_value("Oak 2")


def test_back_shows_the_job_that_was_chosen_since(goes_back, address):  # noqa: F811
    page, _ = goes_back
    open_way(page, address)
    page.wait_for_selector(OFFLINE)
    rooms(page).fill("First: 10 x 10")
    rooms(page).press("Tab")
    open_jobs(page, address)
    choose(page, json.dumps(JOB))
    expect(told(page)).to_contain_text("is open")
    page.go_back(wait_until="commit")
    expect(rooms(page)).to_have_value("Den: 12 x 10")
    ready(page)
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("120 sq ft")
    assert page.evaluate("localStorage.getItem('figures /book/ rooms')") == "First: 10 x 10"
    expect(page.locator("#whose")).to_be_hidden()


def test_a_full_device_keeps_a_page_going_and_saves_it(page, address):
    page.add_init_script(FULL)
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10")
    rooms(page).press("Tab")
    expect(page.locator("#whose")).to_contain_text("This device keeps nothing for this page now")
    page.locator("#result-in-hand input").check()
    file = saved(page, lambda: press(page, "Save this job as a file"))
    assert file["figures"] == {"rooms": "Den: 10 x 10"} and list(file["ticks"]) == ["result-in-hand"]


@pytest.mark.parametrize("script", [FULL, FORBIDDEN], ids=["full", "forbidden"])
def test_a_device_that_keeps_nothing_is_told_on_the_page_of_all_jobs(page, address, script):
    page.add_init_script(script)
    open_jobs(page, address)
    expect(told(page)).to_contain_text("This device keeps nothing for this page now")
    for act in ("New job", "Copy this job"):
        press(page, act)
        expect(told(page)).to_contain_text("Nothing was changed")
        assert names(page) == ["Job 1"]
    choose(page, json.dumps(JOB))
    expect(told(page)).to_contain_text("Nothing was taken from it")
    page.get_by_label("Name").fill("Elm")
    page.get_by_label("Notes").fill("typed here")
    file = saved(page, lambda: press(page, "Save as a file"))
    assert (file["name"], file["notes"]) == ("Elm", "typed here")


def test_a_device_that_fills_up_in_the_middle_takes_nothing(page, address):
    """The store throws at each write of a job in turn; what lies there afterwards is what lay there before."""
    open_jobs(page, address)
    page.get_by_label("Name").fill("Mine")
    faults = in_page(
        page,
        """(jobs, given) => {
            const whole = Storage.prototype.setItem;
            const state = () => JSON.stringify(Object.entries(localStorage).sort());
            const before = state();
            const acts = {take: () => jobs.takeJob(given), copy: () => jobs.copyJob(jobs.workingOn()), make: () => jobs.makeJob()};
            const faults = [];
            for (const [name, act] of Object.entries(acts)) {
                for (let at = 0; ; at += 1) {
                    let left = at;
                    Storage.prototype.setItem = function (...pair) { if (left-- <= 0) throw new DOMException('full', 'QuotaExceededError'); return whole.apply(this, pair); };
                    const { why } = act();
                    Storage.prototype.setItem = whole;
                    if (!why) { if (at < 3) faults.push([name, at, 'taken too early']); jobs.removeJob(jobs.workingOn()); localStorage.removeItem('current /book/ job'); break; }
                    if (state() !== before || jobs.workingOn() !== 'first') faults.push([name, at, state()]);
                    if (at > 40) { faults.push('never'); break; }
                }
            }
            return faults;
        }""",
        {key: part for key, part in JOB.items() if key not in ("format", "version")},
    )
    assert faults == []


def test_removing_that_fails_in_the_middle_takes_nothing_away(page, address):
    open_jobs(page, address)
    choose(page, json.dumps(JOB))
    expect(told(page)).to_contain_text("is open")
    before = page.evaluate(ALL)
    page.evaluate(
        """() => { const whole = Storage.prototype.removeItem; let left = 4;
        Storage.prototype.removeItem = function (place) { if (place.includes('@') && left-- <= 0) throw new DOMException('no', 'InvalidStateError'); return whole.call(this, place); }; }"""
    )
    page.get_by_role("button", name="Remove: Elm Street").click()
    page.get_by_role("button", name="Remove it: Elm Street").click()
    expect(told(page)).to_contain_text("Nothing was changed")
    after = page.evaluate(ALL)
    assert {place: text for place, text in after.items() if "@elm1" in place} == {
        place: text for place, text in before.items() if "@elm1" in place
    }


@pytest.mark.parametrize(
    "junk", ["", "{", "null", "\x00", "../first", "__proto__", "constructor", "x" * 5000, "\ud83d"]
)
def test_garbage_on_the_device_stops_nothing(page, address, junk):
    page.goto(address)
    page.evaluate(
        """junk => { for (const place of ['current /book/ job', 'about /book/ name', 'about /book/ made', 'about /book/ changed', 'about /book/ notes', 'about@b1 /book/ made',
            'about@b1 /book/ name', 'ticks /book/ power-off', 'ticks /book/ ' + junk, 'timers /book/ x', 'figures /book/ ' + junk, 'figures /book/ rooms', 'figures@' + junk + ' /book/ rooms', 'prices /book/ ' + junk, 'about /book/'])
            localStorage.setItem(place, junk); }""",
        junk,
    )
    open_jobs(page, address)
    assert len(names(page)) >= 2
    file = saved(page, lambda: page.locator(".my-now .tools button", has_text="Save as a file").click())
    page.get_by_role("button", name="New job").click()
    choose(page, json.dumps(file))
    expect(told(page)).to_contain_text("is open")
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("100 sq ft")


def test_an_update_in_the_middle_keeps_the_job_and_what_is_being_typed(page, address):
    open_jobs(page, address)
    choose(page, json.dumps(JOB))
    expect(told(page)).to_contain_text("is open")
    page.wait_for_selector(OFFLINE)
    open_way(page, address)
    page.wait_for_selector(OFFLINE)
    assert page.evaluate("Boolean(navigator.serviceWorker.controller)")
    rooms(page).press("End")
    rooms(page).press_sequentially("1")
    with page.expect_navigation():  # what a page does when a new edition takes it over, no pause after the last key
        page.evaluate("() => { navigator.serviceWorker.dispatchEvent(new Event('controllerchange')); }")
    ready(page)
    assert rooms(page).input_value() == "Den: 12 x 101"
    expect(page.locator(".whose")).to_have_text("Job: Elm Street")


def test_an_address_that_holds_what_the_device_did_not_keep_stays_with_its_job(page, address):
    page.add_init_script("if (window.name !== 'room') " + FULL)
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10")
    rooms(page).press("Tab")
    until(page, "history.state?.figures === 'loose'")
    other = second(page)
    open_jobs(other, address)
    choose(other, json.dumps(JOB))
    expect(told(other)).to_contain_text("is open")
    page.evaluate("() => { window.name = 'room'; }")
    page.reload()
    ready(page)
    assert rooms(page).input_value() == "Den: 10 x 10"
    expect(page.locator("#whose")).to_contain_text("This page stays with “Job 1”")
    rooms(page).fill("Den: 10 x 11")
    rooms(page).press("Tab")
    until(page, "localStorage.getItem('figures /book/ rooms') === 'Den: 10 x 11'")
    assert page.evaluate("localStorage.getItem('figures@elm1 /book/ rooms')") == "Den: 12 x 10"


def test_a_job_is_removed_and_put_back(page, address):
    open_jobs(page, address)
    choose(page, json.dumps(JOB))
    expect(told(page)).to_contain_text("is open")
    before = page.evaluate(ALL)
    page.get_by_role("button", name="Remove: Elm Street").click()
    expect(page.locator(".jobs")).to_contain_text("Remove “Elm Street”? 5 figures, 1 tick, 1 price, notes.")
    page.get_by_role("button", name="Keep it: Elm Street").click()
    assert page.evaluate(ALL) == before
    page.get_by_role("button", name="Remove: Elm Street").click()
    page.get_by_role("button", name="Remove it: Elm Street").click()
    assert names(page) == ["Job 1"]
    assert not [place for place in page.evaluate(ALL) if "@elm1" in place]
    press(page, "Put “Elm Street” back")
    assert page.evaluate(ALL) == before
    page.get_by_role("button", name="Remove: Elm Street").click()
    page.get_by_role("button", name="Remove it: Elm Street").click()
    page.reload()
    page.wait_for_selector("html[data-jobs]")
    assert names(page) == ["Job 1"]


def test_a_page_whose_job_is_removed_elsewhere_is_told(page, address):
    jobs = open_jobs(second(page), address)
    choose(jobs, json.dumps(JOB))
    expect(told(jobs)).to_contain_text("is open")
    open_way(page, address)
    jobs.get_by_role("button", name="Remove: Elm Street").click()
    jobs.get_by_role("button", name="Remove it: Elm Street").click()
    expect(rooms(page)).to_have_value("")
    expect(page.locator("#whose")).to_contain_text("“Job 1”")
    rooms(page).fill("New: 7 x 7")
    rooms(page).press("Tab")
    expect(jobs.locator(".jobs")).to_contain_text("New: 7 x 7")  # typed, so it is there again
    press(jobs, "Put “Elm Street” back")
    expect(jobs.locator(".jobs")).to_contain_text("Elm Street")
    expect(page.locator("[name=coats]").first).to_have_value("1")
    assert rooms(page).input_value() == "New: 7 x 7", "what was typed since is not written over"


def test_a_copy_has_the_figures_and_nothing_is_ticked(page, address):
    open_jobs(page, address)
    choose(page, json.dumps(JOB))
    expect(told(page)).to_contain_text("is open")
    press(page, "Copy this job")
    expect(page.locator(".jobs li")).to_have_count(2)
    assert names(page) == ["Elm Street, copy", "Elm Street"]
    copy = in_page(page, "(jobs) => jobs.currentJob()")
    assert (copy["figures"], copy["ticks"], copy["prices"]) == (JOB["figures"], {}, JOB["prices"])
    open_way(page, address)
    until(page, "document.documentElement.dataset.asbestos === 'link'")  # a file's word stays a file's word


def test_forgetting_everything_leaves_nothing(page, address):
    open_way(page, address)
    rooms(page).fill("Den: 10 x 10")
    page.locator("#result-in-hand input").check()
    page.get_by_role("group", name="Light").get_by_role("button", name="Dark").click()
    page.locator(".clear-figures").click()
    rooms(page).fill("Den: 10 x 11")
    rooms(page).press("Tab")
    stays = open_way(second(page), address, path=PAINT)
    open_jobs(page, address)
    page.evaluate("localStorage.setItem('figures /book/2/ rooms', 'of another book'); localStorage.setItem('other', 'site'); sessionStorage.setItem('x /book/ y', 'z');")  # fmt: skip
    choose(page, json.dumps(JOB))
    expect(told(page)).to_contain_text("is open")
    press(page, "Forget everything …")
    expect(page.locator(".my-forget")).to_contain_text("all 2 jobs")
    press(page, "Keep it")
    assert names(page) == ["Elm Street", "Job 1"]
    press(page, "Forget everything …")
    press(page, "Forget everything")
    expect(told(page)).to_contain_text("All is forgotten")
    assert names(page) == ["Job 1"]
    expect(page.get_by_label("Name")).to_have_value("Job 1")
    expect(rooms(stays, "paint")).to_have_value("")
    stays.goto("about:blank")
    page.goto("about:blank")
    open_jobs(page, address)
    assert page.evaluate(ALL) == {"figures /book/2/ rooms": "of another book", "other": "site"}
    assert page.evaluate("sessionStorage.length") == 0
    assert page.evaluate("indexedDB.databases()") == []
    assert page.locator("html").get_attribute("data-scheme") is None
    open_way(page, address)
    assert rooms(page).input_value() == "" and not page.locator("#result-in-hand input").is_checked()


def test_forgetting_that_the_device_does_not_allow_says_so(page, address):
    open_jobs(page, address)
    page.get_by_label("Name").fill("Elm")
    page.evaluate(
        "() => { Storage.prototype.removeItem = () => { throw new DOMException('no', 'InvalidStateError'); }; }"
    )
    press(page, "Forget everything …")
    press(page, "Forget everything")
    expect(told(page)).to_contain_text("did not let go of everything")


def test_the_device_is_asked_to_keep_it_once_something_was_typed(page, address):
    page.add_init_script(
        "window.asked = 0; StorageManager.prototype.persisted = async () => false; StorageManager.prototype.persist = async () => { window.asked += 1; return true; };"
    )
    open_way(page, address)
    page.wait_for_timeout(300)
    assert page.evaluate("window.asked") == 0
    rooms(page).fill("Den: 10 x 10")
    rooms(page).press("Tab")
    until(page, "window.asked === 1")
    rooms(page).fill("Den: 10 x 11")
    rooms(page).press("Tab")
    page.wait_for_timeout(500)
    assert page.evaluate("window.asked") == 1
    open_way(page, address, path=PAINT)
    rooms(page, "paint").fill("Den: 10 x 12")
    page.wait_for_timeout(600)
    assert page.evaluate("window.asked") == 0, "once a day"


def test_without_a_script_the_page_says_what_it_would_hold(make_page, address):
    page = make_page(java_script_enabled=False)
    page.goto(address)
    page.get_by_role("link", name="My job").click()
    expect(page.locator(".without")).to_be_visible()
    assert page.locator(".asked li:visible").count() > 100
    for one in page.locator(".asked a").all()[:5]:
        assert one.get_attribute("href").startswith("../")


def test_the_schema_is_in_the_book(page, address):
    open_jobs(page, address)
    href = page.locator(".my-open a").evaluate("one => one.href")
    assert href == address + "job.schema.json"
    assert page.request.get(href).json()["properties"]["format"] == {"const": "lidbook-job"}
