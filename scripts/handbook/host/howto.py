"""The steps of a page once more, in the open vocabulary of schema.org, for programs that read aloud or list what a page tells.

It is made from the finished page, so nothing is told that does not stand there. A step is never told without what guards it:
a caution stands in the text of the step that it belongs to, a hold point is a step, and the asbestos stop is in the
description. A figure of a made-up room would be taken for an instruction, so a form's figures are left open.
"""

import html
import json
import re
from html.parser import HTMLParser

STEPS = re.compile(r'<ol class="steps">.*?</ol>', re.DOTALL)
TITLE = re.compile(r"<h1\b[^>]*>(.*?)</h1>", re.DOTALL)
SUMMARY = re.compile(r'<meta name="description" content="([^"]*)"')
STOP = re.compile(r'<div class="alarm[^"]*" data-caution="asbestos-first".*?</div>', re.DOTALL)
NOINDEX = '<meta name="robots" content="noindex">'
UNSAID = {
    "mark",
    "unseen",
    "state",
    "number",
}  # marks of sources, what a program for the blind hears more, the state of a job


class Rows(HTMLParser):
    """Collects (class, id, text) of each list item, or of the whole where there is none."""

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[tuple[str, str, str]] = []
        self._open: list[tuple[str, set[str]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "input":
            return
        told = {name: value or "" for name, value in attrs}
        if tag == "li" or not self.rows:
            self.rows.append((told.get("class", ""), told.get("id", ""), ""))
        kinds = set(told.get("class", "").split())
        self._open.append((tag, kinds))
        if "live" in kinds:
            self._say("…")
        if kinds & {"wait", "hazard", "hold-know", "hold-until"}:
            self._say(" ")

    def handle_endtag(self, tag: str) -> None:
        if self._open:
            _, kinds = self._open.pop()
            self._say(": " if kinds & {"signal", "hold-word"} else "")

    def handle_data(self, data: str) -> None:
        inside = set().union(*[kinds for _, kinds in self._open])
        held = ("li", {"hold"}) in self._open and "do" in inside  # the words of a hold point's box
        if not held and not inside & (UNSAID | {"live"}) and ("svg", set()) not in self._open:
            self._say(data)

    def _say(self, text: str) -> None:
        if self.rows:
            kind, own, said = self.rows[-1]
            self.rows[-1] = (kind, own, said + text)


def rows(fragment: str) -> list[tuple[str, str, str]]:
    """Return class, id and words of each row of a list, each word once apart from the next."""
    reader = Rows()
    reader.feed(fragment)
    return [(kind, own, " ".join(said.split()).replace(" :", ":")) for kind, own, said in reader.rows]


def told(page: str) -> dict[str, object] | None:
    """Return what the page tells to do as data; None where it has no steps, or is not to be found."""
    work = STEPS.findall(page)
    title, summary = TITLE.search(page), SUMMARY.search(page)
    if not work or not title or not summary or NOINDEX in page:
        return None
    stop = STOP.search(page)
    description = html.unescape(summary[1]) + (f" {rows(stop.group())[0][2]}" if stop else "")
    steps = []
    guard = ""
    for kind, own, said in (row for one in work for row in rows(one)):
        if kind == "step-caution":
            guard += said + " "
        elif kind in ("step", "hold"):
            steps.append({"@type": "HowToStep", "url": "#" + own, "text": guard + said})
            guard = ""
    name = html.unescape(re.sub(r"<[^>]+>", "", title[1])).strip()
    return {"@context": "https://schema.org", "@type": "HowTo", "name": name, "description": description, "step": steps}


def with_data(page: str) -> str:
    """Return the page with its steps as data in the head."""
    found = told(page)
    if not found:
        return page
    data = json.dumps(found, ensure_ascii=False, separators=(",", ":"))
    for mark in "<>&":  # what could end the script, or begin another
        data = data.replace(mark, f"\\u{ord(mark):04x}")
    return page.replace("</head>", f'<script type="application/ld+json">{data}</script>\n</head>', 1)
