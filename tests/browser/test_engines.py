"""Engines and the kept book under a bad host: dead, slow, cut and wrong answers, a new edition in two tabs, other hosts."""

import json
import re
import shutil
import threading
import time

import pytest
from playwright.sync_api import expect

from conftest import BASE, until, watch
from handbook import build, serve
from handbook.host import offline
from test_job import field, form, open_way, ready, submit

pytestmark = [pytest.mark.browser, pytest.mark.slow]
LONG = 60_000  # milliseconds for what is tried several times


class Host:
    """A host whose answers go wrong by a pattern of the path: {pattern: [kind, times left]}."""

    def __init__(self, site):
        self.faults, self.log, self.released = {}, [], threading.Event()
        host = self

        class Handler(serve.Handler):
            def _answer(self, *, with_body):
                host.log.append(self.path)
                kind = next((host.take(pattern) for pattern in host.faults if re.search(pattern, self.path)), "")
                if kind == "hang":
                    host.released.wait(120)
                if kind in ("hang", "drop"):
                    self.close_connection = True
                elif kind == "500":
                    self._send(500, b"broken", "text/plain", "", with_body)
                elif kind == "page":
                    self._send(200, b"<!doctype html><title>Sorry</title>Sorry.", "text/html", "", with_body)
                elif kind == "cut":
                    self.cut = True
                    super()._answer(with_body=with_body)
                else:
                    super()._answer(with_body=with_body)

            def _send(self, status, body, kind, encoding, with_body):
                if getattr(self, "cut", False):
                    self.cut = False
                    if encoding:  # cut what comes out of it, so that the browser cannot tell
                        target = self.path[len(self.base) :].split("?")[0]
                        body, encoding = (self.site / target).read_bytes(), ""
                    body = body[: len(body) // 2]
                super()._send(status, body, kind, encoding, with_body)

        own = {"base": BASE, "site": site, "headers_of_site": serve._headers(site)}
        self.handler = type("HostHandler", (Handler,), own)
        self.server = serve.http.server.ThreadingHTTPServer(("127.0.0.1", 0), self.handler)
        self.address = f"http://127.0.0.1:{self.server.server_port}{BASE}"
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def take(self, pattern):
        kind, left = self.faults[pattern]
        self.faults[pattern] = (kind, left - 1)
        return kind if left > 0 else ""

    def fail(self, pattern, kind, times=10_000):
        self.faults[pattern] = (kind, times)

    def close(self):
        self.released.set()
        self.server.shutdown()
        self.server.server_close()


@pytest.fixture
def make_host():
    hosts = []

    def make(site=serve.SITE):
        hosts.append(Host(site))
        return hosts[-1]

    yield make
    for host in hosts:
        host.close()


@pytest.fixture
def host(make_host):
    return make_host()


@pytest.fixture
def visit(chromium):
    """Open pages of a host that goes wrong; what they complain of is not watched."""
    contexts = []

    def make():
        contexts.append(chromium.new_context(viewport={"width": 390, "height": 844}))
        return watch(contexts[-1].new_page(), BASE, [], False)

    yield make
    for context in contexts:
        context.close()


def ask(page, name="takeoff", rooms="Den: 10 x 10"):
    form(page, name).locator("[name=rooms]").fill(rooms)
    submit(page, name)


@pytest.mark.parametrize("kind", ["500", "page", "drop"])
def test_a_worker_that_dies_is_started_anew(host, visit, kind):
    host.fail(r"worker\.mjs", kind, 1)
    page = visit()
    open_way(page, host.address)
    ask(page)
    expect(form(page, "takeoff").locator(".by")).to_contain_text("small engine", timeout=15_000)


def test_a_worker_that_never_comes_is_told_at_once_and_tried_again_later(host, visit):
    host.fail(r"worker\.mjs", "500")
    page = visit()
    open_way(page, host.address)
    ask(page)
    expect(form(page, "takeoff").locator(".status")).to_contain_text("No engine could answer", timeout=15_000)
    host.faults.clear()
    submit(page, "takeoff")
    expect(form(page, "takeoff").locator(".by")).to_contain_text("small engine", timeout=15_000)


def test_a_full_engine_that_hangs_holds_up_no_other_question_and_can_be_stopped(host, visit):
    host.fail(r"engine/full-", "hang")
    page = visit()
    open_way(page, host.address)
    ask(page)
    expect(form(page, "takeoff").locator(".by")).to_contain_text("small engine")
    form(page, "takeoff").locator(".again").click()
    field(page, "humidity_pct").fill("70")
    expect(form(page, "drying").locator(".by")).to_contain_text("small engine", timeout=15_000)
    wait = form(page, "takeoff").locator(".wait")
    expect(wait).to_contain_text("full engine")
    wait.locator("button").click()
    expect(wait).to_have_count(0)
    expect(form(page, "takeoff").locator(".status")).to_have_text("Stopped. Your figures are kept.")
    ask(page, rooms="Den: 11 x 11")
    expect(form(page, "takeoff").locator(".figure strong")).to_have_text("121 sq ft")


WATCHED_DOOR = """async (workerUrl) => {
  const { createDoor } = await import(workerUrl.replace('worker.mjs', 'engine.mjs'));
  window.workers = [];
  window.Worker = class { constructor() { workers.push(this); } postMessage(data) { this.last = data; } terminate() { this.ended = true; } };
  window.heard = [];
  window.door = createDoor(workerUrl, {}, (waited) => waited && heard.push(waited.bytes));
  window.outcome = 'waits';
  door.answer('takeoff', {}, { engine: 'full' }).then(() => (outcome = 'answered'), (error) => (outcome = error.constructor.name));
}"""
SPEAK = """(data) => { const one = workers.at(-1); one.onmessage({ data: { id: one.last.id, ...data } }); }"""


def opened_door(page, address):
    page.goto(address)
    assets = page.locator("link[rel=stylesheet]").get_attribute("href").split("/")[0]
    page.clock.install()
    page.evaluate(WATCHED_DOOR, f"{address}{assets}/worker.mjs")


def test_a_slow_download_is_not_given_up_while_bytes_come(page, address):
    opened_door(page, address)
    for part in range(1, 21):
        page.clock.run_for(50_000)
        page.evaluate(SPEAK, {"phase": "loading", "bytes": part, "total": 20})
    assert page.evaluate("outcome") == "waits"
    assert page.evaluate("heard.length") == 20
    page.evaluate(SPEAK, {"text": "{}"})
    until(page, "outcome === 'answered'")


def test_a_silent_download_is_given_up_as_no_signal(page, address):
    opened_door(page, address)
    page.evaluate(SPEAK, {"phase": "loading", "bytes": 1, "total": 20})
    page.clock.run_for(61_000)
    until(page, "outcome === 'NotOnDevice'")
    assert page.evaluate("workers[0].ended")


def test_a_worker_that_dies_under_a_question_is_started_anew_for_it_once(page, address):
    opened_door(page, address)
    page.evaluate("workers[0].onerror(new Event('error'))")
    until(page, "workers.length === 2 && workers[1].last && workers[0].ended")
    page.evaluate(SPEAK, {"text": "{}"})
    until(page, "outcome === 'answered'")
    opened_door(page, address)
    for which in (0, 1):
        until(page, f"workers.length === {which + 1}")
        page.evaluate(f"workers[{which}].onerror(new Event('error'))")
    until(page, "outcome === 'Failed'")


RAISING = """async (workerUrl) => {
  const engines = Object.fromEntries(Object.entries(JSON.parse(document.getElementById('engines').textContent))
    .map(([name, path]) => [name, typeof path === 'string' ? new URL(path, document.baseURI).href : path]));
  const worker = new Worker(workerUrl, { type: 'module' });
  const ask = (id, engine, calculator, inputs) => new Promise((resolve) => {
    const phases = [];
    worker.onmessage = ({ data }) => (data.phase ? phases.push(data.phase) : resolve({ ...data, phases: [...new Set(phases)] }));
    worker.postMessage({ id, engines, engine, calculator, inputs });
  });
  const out = [];
  for (const engine of ['small', 'full']) {
    out.push(await ask(1, engine, 'takeoff', 'no JSON'), await ask(2, engine, 'takeoff', '{"rooms": "10 x 10"}'));
  }
  return out;
}"""


def test_an_exception_in_an_answer_throws_no_healthy_engine_away(page, address):
    page.goto(address)
    assets = page.locator("link[rel=stylesheet]").get_attribute("href").split("/")[0]
    found = page.evaluate(RAISING, f"{address}{assets}/worker.mjs")
    for raised, answered in (found[:2], found[2:]):
        assert raised["kind"] == "answer"
        assert raised["phases"] == ["loading", "starting", "answering"]
        assert answered["phases"] == ["answering"]
        assert json.loads(answered["text"])["answer"]


@pytest.mark.parametrize("kind", ["page", "cut"])
@pytest.mark.parametrize("part", [r"engine/small-[^/]+/micropython\.wasm", r"engine/calc-[0-9a-f]+\.bin"])
def test_a_wrong_answer_for_the_small_engine_is_asked_for_again(host, visit, part, kind):
    host.fail(part, kind, 1)
    page = visit()
    open_way(page, host.address, "#takeoff?rooms=Den:+10+x+10")
    expect(form(page, "takeoff").locator(".by")).to_contain_text("by the small engine")


@pytest.mark.parametrize("kind", ["page", "cut"])
def test_a_wrong_answer_for_the_full_engine_is_asked_for_again(host, visit, kind):
    host.fail(r"python_stdlib\.zip", kind, 1)
    page = visit()
    open_way(page, host.address)
    ask(page)
    expect(form(page, "takeoff").locator(".by")).to_contain_text("small engine")
    form(page, "takeoff").locator(".again").click()
    expect(form(page, "takeoff").locator(".by")).to_contain_text("Both engines agree", timeout=120_000)


def asked_parts(host):
    """The parts of the calculators that were asked of the host, in the order of their names."""
    return sorted(
        re.search(r"engine/calc-.*", path).group()
        for path in host.log
        if "/engine/calc-" in path and path.endswith(".bin")
    )


def test_a_page_brings_the_calculators_that_it_shows_and_another_when_it_is_asked(host, chromium):
    context = chromium.new_context(service_workers="block")  # which would keep all parts
    page = watch(context.new_page(), BASE, [], False)
    page.goto(host.address + "prepare/measure/#takeoff?rooms=Den:+10+x+10")
    expect(form(page, "takeoff").locator(".by")).to_contain_text("by the small engine")
    told = page.locator("#engines")
    engines = json.loads(told.text_content())
    listed = {engines["small_parts"][int(at)] for at in told.get_attribute("data-parts").split()}
    listed |= {
        engines["small_parts"][at] for at in engines["small_needs"]["sketch"]
    }  # the rooms that the link brought are drawn
    page.wait_for_selector(".room svg")
    assert asked_parts(host) == sorted(listed)
    assets = page.locator("link[rel=stylesheet]").get_attribute("href").split("/")[-2]
    ask_other = """async (early) => {
      const { door } = await import(early);
      const { engine, text } = await door.answer('lead', {});
      return [engine, text];
    }"""
    engine, text = page.evaluate(ask_other, f"{host.address}{assets}/early.mjs")
    assert engine == "small" and json.loads(text)["faults" if "faults" in text else "answer"]
    needed = [engines["small_parts"][at] for at in engines["small_needs"]["lead"]]
    assert asked_parts(host) == sorted({*listed, *needed})
    context.close()


def test_a_part_that_does_not_come_leaves_the_small_engine_running(host, chromium):
    context = chromium.new_context(service_workers="block")
    page = watch(context.new_page(), BASE, [], False)
    page.goto(host.address + "prepare/measure/#takeoff?rooms=Den:+10+x+10")
    expect(form(page, "takeoff").locator(".by")).to_contain_text("by the small engine")
    host.fail(r"engine/(calc-|full-)", "drop")
    assets = page.locator("link[rel=stylesheet]").get_attribute("href").split("/")[-2]
    ask_both = """async (early) => {
      const { door } = await import(early);
      const lost = await door.answer('lead', {}).then(() => 'answered', (error) => error.constructor.name);
      return [lost, (await door.answer('takeoff', { rooms: 'Den: 11 x 11' })).engine];
    }"""
    assert page.evaluate(ask_both, f"{host.address}{assets}/early.mjs") == ["NotOnDevice", "small"]
    host.faults.clear()
    again = "async (early) => (await (await import(early)).door.answer('lead', {})).engine"
    assert page.evaluate(again, f"{host.address}{assets}/early.mjs") == "small"
    context.close()


def test_no_signal_is_told_by_what_failed(host, visit):
    host.fail(r"engine/full-", "drop")
    page = visit()
    open_way(page, host.address)
    ask(page)
    expect(form(page, "takeoff").locator(".by")).to_contain_text("small engine")
    assert page.evaluate("navigator.onLine")
    form(page, "takeoff").locator(".again").click()
    expect(form(page, "takeoff").locator(".status")).to_contain_text("not on this device yet")


@pytest.mark.parametrize(
    ("part", "kind"),
    [("finish/tape/", kind) for kind in ("page", "cut", "500", "drop")] + [(r"assets-[0-9a-f]+/ladder\.mjs", "cut")],
)
def test_what_does_not_come_whole_is_never_kept_and_is_named(host, visit, part, kind):
    host.fail(part, kind)
    page = visit()
    page.goto(host.address)
    state = page.locator(".offline-state")
    expect(state).to_contain_text("not on your device yet", timeout=LONG)
    expect(state).to_contain_text("tape" if "tape" in part else "ladder.mjs")
    assert not page.evaluate("'offline' in document.documentElement.dataset")
    host.faults.clear()
    page.reload()  # the host is mended
    page.wait_for_selector("html[data-offline]", timeout=LONG)
    page.context.set_offline(True)
    page.goto(host.address + "finish/tape/#steps")
    expect(page.locator("h1")).to_contain_text("Tape")


def test_an_install_that_failed_is_tried_again_by_itself(host, visit):
    host.fail("finish/tape/", "500", 3)  # as often as one attempt asks
    page = visit()
    page.goto(host.address)
    expect(page.locator(".offline-state")).to_contain_text("It is tried again soon", timeout=LONG)
    before = len([path for path in host.log if path.endswith("reference/sources/index.html")])
    page.wait_for_selector("html[data-offline]", timeout=LONG)
    assert len([path for path in host.log if path.endswith("reference/sources/index.html")]) <= max(before, 1)


def new_edition(old, folder):
    """The same book with other words on its first page, and its scripts at another address."""
    shutil.copytree(old, folder, ignore=shutil.ignore_patterns("*.br", "*.gz"))
    assets = next(path for path in folder.iterdir() if path.name.startswith("assets-"))
    fresh = "assets-" + assets.name.removeprefix("assets-")[::-1]
    assets.rename(folder / fresh)
    for path in folder.rglob("*.html"):
        text = path.read_text(encoding="utf-8").replace(assets.name, fresh)
        path.write_text(text.replace("What can I do with this ceiling?", "A new edition"), encoding="utf-8")
    offline.write_worker(folder, build.DOCS / "theme" / "sw.js")
    return folder


def test_a_new_edition_waits_is_taken_by_every_tab_and_loses_nothing(tmp_path, host, visit):
    one = visit()
    open_way(one, host.address)
    one.wait_for_selector("html[data-offline]", timeout=LONG)
    other = watch(one.context.new_page(), BASE, [], False)
    open_way(other, host.address)
    field(other, "rooms").fill("Den: 10 x 10")
    host.handler.site = new_edition(serve.SITE, tmp_path / "new")
    before = len(host.log)
    one.goto(host.address)
    expect(one.locator("h1")).to_have_text("What can I do with this ceiling?")  # until the reader takes the new one
    one.locator("#edition button").click(timeout=LONG)
    expect(one.locator("h1")).to_have_text("A new edition")
    fresh = next(path.name for path in host.handler.site.iterdir() if path.name.startswith("assets-"))
    other.wait_for_selector(f"link[rel=stylesheet][href*='{fresh}']", state="attached", timeout=LONG)
    ready(other)
    assert field(other, "rooms").input_value() == "Den: 10 x 10"
    until(other, "caches.keys().then((names) => names.filter((name) => name.startsWith('book ')).length === 1)")
    asked = [path for path in host.log[before:] if "/engine/small-" in path]
    assert not asked, "what the edition before holds too is not fetched again"
    other.context.set_offline(True)
    other.reload()
    ready(other)
    form(other, "takeoff").locator("button.act[type=submit]").click()
    expect(form(other, "takeoff").locator(".by")).to_contain_text("small engine")


@pytest.mark.parametrize("with_headers", [True, False])
def test_nothing_leaves_the_device_from_the_worker_either(host, make_host, visit, with_headers):
    other = make_host()
    if not with_headers:
        host.handler.headers_of_site = ()
    page = visit()
    open_way(page, host.address, "#takeoff?rooms=Den:+10+x+10")
    expect(form(page, "takeoff").locator(".by")).to_contain_text("small engine")
    worker = page.workers[0]
    ways = [
        "fetch(there + 'a')", "new Request(there + 'b').url && fetch(new Request(there + 'b'))",
        "Object.getPrototypeOf(WorkerGlobalScope.prototype) && WorkerGlobalScope.prototype.fetch.call(self, there + 'c')",
        "new XMLHttpRequest()", "new WebSocket(there.replace('http', 'ws'))", "new EventSource(there)",
    ]  # fmt: skip
    if with_headers:  # only a host's header reaches an import
        ways.append("import(there + 'd.mjs')")
    for way in ways:
        outcome = worker.evaluate(
            f"async (there) => {{ try {{ await ({way}); return 'went'; }} catch (error) {{ return error.name; }} }}",
            other.address,
        )
        assert outcome in ("TypeError", "ReferenceError"), (way, outcome)
    time.sleep(0.3)
    assert other.log == []
