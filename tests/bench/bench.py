"""Measures the budgets: a poor phone made on this machine, the handbook beside a stock `loadPyodide` page in one run.

`python3 scripts/book.py bench` prints a table and writes build/bench.json.
"""

import json
import os
import shutil
import statistics
import sys
import tempfile
import time
from pathlib import Path

from playwright.sync_api import sync_playwright
from slow_line import SlowProcessor, open_line

from handbook import serve
from handbook.build import BUILD, CACHE
from handbook.engines import packing
from handbook.host import compress

QUIET = [
    "--no-sandbox",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
    "--disable-gpu",
]
QUESTION = "#skim?rooms=Living:20'x14'&texture_depth_in=1/8"
WAY = "methods/skim-over/"
PATIENCE = 300_000
POLL_S = 0.25
STOCK_BASE = "/stock-0123456789ab/"  # named as if by content, so that the server lets it be kept: a fair second visit
RUNS = int(os.environ.get("BENCH_RUNS", "3"))

WATCH = """
window.seen = {};
new PerformanceObserver((list) => { for (const one of list.getEntries()) window.seen.lcp = one.startTime; })
  .observe({type: 'largest-contentful-paint', buffered: true});
new MutationObserver(() => {
  const skim = document.getElementById('skim');
  if (skim?.dataset.engine && !window.seen[skim.dataset.engine]) window.seen[skim.dataset.engine] = performance.now();
}).observe(document, {subtree: true, attributes: true, childList: true});
"""
STOCK = """<!doctype html><html lang="en"><meta charset="utf-8"><title>stock</title><link rel="icon" href="data:,"><p id="answer"></p>
<script type="module">
import { loadPyodide } from './pyodide.mjs';
const engine = await loadPyodide();
engine.unpackArchive(await (await fetch('./calc.whl')).arrayBuffer(), 'wheel');
const inputs = JSON.stringify({rooms: "Living:20'x14'", texture_depth_in: '1/8'});
engine.globals.set('inputs', inputs);
document.getElementById('answer').textContent = engine.runPython('from calc.browser import answer\\nanswer("skim", inputs)');
window.done = performance.now();
</script></html>"""


def main() -> int:
    stock = make_stock()
    with sync_playwright() as driver, tempfile.TemporaryDirectory() as profiles:
        phone = {
            "viewport": {"width": 390, "height": 844},
            "device_scale_factor": 2,
            "is_mobile": True,
            "has_touch": True,
        }

        def visit(name: str, screen: dict):
            folder = Path(profiles) / name
            options = {"executable_path": os.environ.get("CHROMIUM", "/usr/bin/chromium"), "args": QUIET, **screen}
            return driver.chromium.launch_persistent_context(str(folder), **options)

        cold, warm, sent = [], [], {}
        full_cold, full_warm, stock_cold, stock_warm, lcps = [], [], [], [], []
        for run in range(RUNS):
            server, line = open_line({"/book/": serve.SITE, STOCK_BASE: stock}, paced=True)
            base = f"http://127.0.0.1:{server.server_port}/"
            context = visit(f"ours-{run}", phone)
            first, lcp = small_visit(context, base)
            cold.append(first)
            lcps.append(lcp)
            sent = sent or line.bytes_of()
            wait_until_kept(context)
            warm.append(small_visit(context, base)[0])
            full_cold.append(full_visit(context, base))
            full_warm.append(full_visit(context, base))
            context.close()
            context = visit(f"stock-{run}", phone)
            stock_cold.append(stock_visit(context, base))
            stock_warm.append(stock_visit(context, base))
            context.close()
            server.shutdown()
        keys = keystrokes(visit("desk", {"viewport": {"width": 1280, "height": 900}}))
    report(cold, warm, lcps, sent, full_cold, full_warm, stock_cold, stock_warm, keys)
    shutil.rmtree(stock)
    return 0


def make_stock() -> Path:
    """A folder with the stock engine as it comes, our calculators as a plain wheel, and a page that asks one question."""
    folder = BUILD / "stock"
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    for name in ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json"):
        shutil.copyfile(packing.FULL / name, folder / name)
    packing.calc_wheel(packing.CALC, folder).rename(folder / "calc.whl")
    (folder / "index.html").write_text(STOCK, encoding="utf-8")
    compress.compress_site(folder, CACHE)
    return folder


def small_visit(context, base: str) -> tuple[float, float]:
    """Open a link with figures in it; return when its answer stood there and when its text was painted [ms]."""
    page = context.new_page()
    page.set_default_timeout(PATIENCE)
    page.add_init_script(WATCH)
    with SlowProcessor(slow=True):
        page.goto(base + "book/" + WAY + QUESTION, wait_until="commit")
        wait_for(page, "window.seen.small")
        page.wait_for_timeout(500)
        seen = page.evaluate("window.seen")
    if context.pages[0] != page:
        context.pages[0].close()
    return seen["small"], seen["lcp"]


def wait_for(page, expression: str) -> None:
    """Ask again and again from outside, as the page's own policy lets nothing be evaluated inside."""
    until = time.monotonic() + PATIENCE / 1000
    while not page.evaluate(f"Boolean({expression})"):
        if time.monotonic() > until:
            raise TimeoutError(expression)
        time.sleep(POLL_S)


def wait_until_kept(context) -> None:
    context.pages[-1].wait_for_selector("html[data-offline]", timeout=PATIENCE)


def full_visit(context, base: str) -> float:
    """Ask for the full engine on a page where the small one has answered; return how long it took [ms]."""
    page = context.new_page()
    page.set_default_timeout(PATIENCE)
    page.add_init_script(WATCH)
    page.goto(base + "book/" + WAY + QUESTION)
    wait_for(page, "window.seen.small")
    with SlowProcessor(slow=True):
        start = page.evaluate("(document.querySelector('#skim .again').click(), performance.now())")
        wait_for(page, "window.seen.full")
        end = page.evaluate("window.seen.full")
    page.close()
    return end - start


def stock_visit(context, base: str) -> float:
    page = context.new_page()
    page.set_default_timeout(PATIENCE)
    with SlowProcessor(slow=True):
        page.goto(base + STOCK_BASE[1:], wait_until="commit")
        wait_for(page, "window.done")
        done = page.evaluate("window.done")
    page.close()
    return done


def keystrokes(context) -> list[float]:
    """From a keystroke to the answer on a desk computer, in milliseconds, forty times."""
    server, _ = open_line({"/book/": serve.SITE}, paced=False)
    page = context.new_page()
    page.goto(f"http://127.0.0.1:{server.server_port}/book/{WAY}{QUESTION}")
    page.wait_for_selector("#skim[data-engine]")
    times = page.evaluate("""async () => {
      const field = document.querySelector('#skim [name=waste_pct]');
      const slot = document.querySelector('#skim .slot');
      const times = [];
      for (let at = 0; at < 40; at++) {
        await new Promise((resolve) => setTimeout(resolve, 120));
        const start = performance.now();
        const shown = new Promise((resolve) => new MutationObserver((_, watch) => { watch.disconnect(); resolve(performance.now()); })
          .observe(slot, {childList: true}));
        field.value = String(5 + at / 2);
        field.dispatchEvent(new Event('input', {bubbles: true}));
        times.push(await shown - start);
      }
      return times;
    }""")
    context.close()
    server.shutdown()
    return times


def report(cold, warm, lcps, sent, full_cold, full_warm, stock_cold, stock_warm, keys) -> None:
    middle = statistics.median
    keys_p95 = sorted(keys)[int(len(keys) * 0.95) - 1]
    rows = [
        ("text readable (LCP)", f"{middle(lcps) / 1000:.2f} s", "≤ 1.5 s", middle(lcps) <= 1500),
        (
            "bytes before the first live answer",
            f"{sum(sent.values()) / 1000:.0f} kB",
            "≤ 300 kB",
            sum(sent.values()) <= 300_000,
        ),
        ("first live answer, cold", *against(cold, stock_cold, 0.10, 4000)),
        ("the same, second visit", *against(warm, stock_warm, 0.15)),
        ("full engine, cold", *against(full_cold, stock_cold, 0.65)),
        ("full engine, second visit", *against(full_warm, stock_warm, 0.35)),
        ("stock loadPyodide, cold", f"{middle(stock_cold) / 1000:.1f} s", "", True),
        ("stock loadPyodide, second visit", f"{middle(stock_warm) / 1000:.1f} s", "", True),
        ("keystroke to answer, p95, desk", f"{keys_p95:.0f} ms", "≤ 16 ms", keys_p95 <= 16),
    ]
    for name, found, budget, good in rows:
        print(f"{name:38} {found:28} {budget:34} {'' if good else 'OVER'}")
    for path, size in sorted(sent.items(), key=lambda one: -one[1]):
        print(f"  {size:8,} bytes  {path}")
    held = {
        "cold_ms": cold, "second_ms": warm, "lcp_ms": lcps, "bytes": sent, "full_cold_ms": full_cold, "full_second_ms": full_warm,
        "stock_cold_ms": stock_cold, "stock_second_ms": stock_warm, "keystroke_ms": keys,
    }  # fmt: skip
    (BUILD / "bench.json").write_text(json.dumps(held, indent=1), encoding="utf-8")


def against(ours, stock, share: float, most_ms: float = float("inf")) -> tuple[str, str, bool]:
    """Return the median beside the stock page's, the budget, and whether it holds."""
    mine, theirs = statistics.median(ours), statistics.median(stock)
    budget = f"≤ {share:.0%} of stock" + (f" and ≤ {most_ms / 1000:.0f} s" if most_ms < float("inf") else "")
    return f"{mine / 1000:.2f} s, {mine / theirs:.1%} of stock", budget, mine <= share * theirs and mine <= most_ms


if __name__ == "__main__":
    sys.exit(main())
