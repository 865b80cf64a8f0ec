"""A browser, and the built handbook served under /book/ the way a static host would."""

import contextlib
import os
import threading
import time

import pytest
from playwright.sync_api import Page, expect, sync_playwright

from handbook import serve

BASE = "/book/"
PATIENCE = int(os.environ.get("PATIENCE_MS", "20000"))  # two browsers share a small machine
expect.set_options(timeout=PATIENCE)
QUIET = [
    "--no-sandbox",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
    "--disable-gpu",
]


@contextlib.contextmanager
def served(site=serve.SITE):
    """Serve a built site as a host does, and give its address."""
    server = serve.open_server(0, BASE, site)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}{BASE}"
    server.shutdown()
    server.server_close()


@pytest.fixture(scope="session")
def address():
    assert (serve.SITE / "index.html").exists(), "build the handbook first: python3 scripts/book.py build"
    with served() as found:
        yield found


@pytest.fixture(scope="session")
def driver():
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="session")
def chromium(driver):
    browser = driver.chromium.launch(executable_path=os.environ.get("CHROMIUM", "/usr/bin/chromium"), args=QUIET)
    yield browser
    browser.close()


@pytest.fixture
def watched():
    """What a page did that it should not: errors, failed requests, requests to another host."""
    return []


@pytest.fixture
def make_page(chromium, address, watched):
    """Return a function that opens a page in a new context; every page is watched, and must have behaved at the end."""
    contexts = []

    def make(width: int = 390, *, console: bool = True, **options) -> Page:
        """`console=False` is for a test that provokes an engine's complaints; all else is still watched."""
        context = chromium.new_context(viewport={"width": width, "height": 844}, **options)
        contexts.append(context)
        return watch(context.new_page(), address, watched, console)

    yield make
    for context in contexts:
        context.close()
    assert watched == []


def watch(page: Page, address: str, watched: list[str], console: bool) -> Page:
    page.on("pageerror", lambda error: watched.append(f"script: {error}"))
    page.on("console", lambda line: watched.append(f"console: {line.text}") if console and _bad(line) else None)
    own = address.rsplit("/book/", 1)[0]
    page.on(
        "request",
        lambda one: None if one.url.startswith((own, "data:", "blob:")) else watched.append(f"elsewhere: {one.url}"),
    )
    page.set_default_timeout(PATIENCE)
    return page


def until(page: Page, expression: str) -> None:
    """Wait until `expression` holds in the page. The library's own wait asks again from within the page, which the book's
    policy does not allow; this one asks each time from outside."""
    end = time.monotonic() + PATIENCE / 1000
    while not page.evaluate(expression):
        assert time.monotonic() < end, f"never came true: {expression}"
        time.sleep(0.02)


def _bad(line) -> bool:
    return line.type in ("error", "warning") and "Service Worker registration blocked" not in line.text


@pytest.fixture
def page(make_page):
    return make_page()
