"""The looks at a site: what the service worker lists, what the host says, where links lead, what comes from elsewhere."""

import gzip
import hashlib
import json
import re
import zlib
from pathlib import Path, PurePosixPath
from urllib.parse import unquote, urljoin, urlsplit

import brotli

from handbook.host import headers
from handbook.site_check import hosting
from handbook.site_check.faults import Found
from handbook.site_check.pages import Page, weakness
from handbook.site_check.places import Address, Answer, Folder, Place

BOOK = re.compile(r"^const BOOK = (\{.*\});$", re.MULTILINE)
LOC = re.compile(r"<loc>([^<]*)</loc>")
NOWHERE = "no-such-page/in-the-book/"
ELSEWHERE = {
    ".css": re.compile(r"""(?:url\(|@import)\s*['"]?((?:https?:)?//[^'")\s]+)"""),
    ".mjs": re.compile(r"""(?:from|import|fetch\(|Worker\(|importScripts\()\s*\(?\s*['"`]((?:https?:)?//[^'"`\s]+)"""),
    ".svg": re.compile(r"""(?:href=|url\()\s*['"]?((?:https?:)?//[^'")\s]+)"""),
}
STATE = re.compile(r"[=?]|^:~:")  # a fragment that holds figures and names no place
CHANGED = "is not the file that was built. Copy it again; if it stays, turn off what changes files on their way (minify, injected scripts)"


def look(place: Place) -> list[Found]:
    """Return everything that is not as it should be with the site."""
    first = place.settle()
    if first.status != 200:
        return [_missing(place.shown, first)]
    found = []
    if not place.is_private:
        found.append(
            Found(
                place.base, "HTTPS", "is not served over https, so no browser keeps the book. Turn https on at the host"
            )
        )
    worker = place.get("sw.js")
    listed = _listed(worker.text) if worker.status == 200 else {}
    if not listed:
        message = "is no service worker of this book" if worker.status == 200 else "does not come"
        return [
            *found,
            Found(
                "sw.js",
                "WORKER",
                f"{message}, so the book is not kept and its files are not known. Copy all of the site",
            ),
        ]
    if worker.turned:
        found.append(
            Found("sw.js", "WORKER", "is answered by a redirect, which browsers refuse. Serve it where it stands")
        )
    answers = {"sw.js": worker} | {_named(path): one for path, one in place.get_all(map(_visited, listed)).items()}
    for path, answer in answers.items():
        if answer.status != 200:
            found.append(_missing(path, answer))
        elif path in listed and not hashlib.sha256(answer.body).hexdigest().startswith(listed[path]):
            found.append(Found(path, "BYTES", CHANGED))
        elif place.has_headers:
            found += hosting.look(path, answer)
    pages = {path: Page(one.text) for path, one in answers.items() if path.endswith(".html") and one.status == 200}
    found += [*_policies(pages), *_links(place, pages, set(answers)), *_from_elsewhere(answers)]
    found += _as_an_address(place, pages, answers) if isinstance(place, Address) else _as_a_folder(place, answers)
    return found + _sitemap(place, pages)


def _listed(worker: str) -> dict[str, str]:
    """The digests by path that the service worker holds; none where it is another one."""
    told = BOOK.search(worker)
    try:
        book = json.loads(told[1]) if told else {}
        return {str(path): str(digest) for part in ("kept", "later") for path, digest in book[part].items()}
    except (ValueError, KeyError, AttributeError):
        return {}


def _visited(path: str) -> str:
    """The address of a file as a visitor asks for it."""
    return path.removesuffix("index.html") if PurePosixPath(path).name == "index.html" else path


def _named(path: str) -> str:
    return path + "index.html" if path == "" or path.endswith("/") else path


def _missing(path: str, answer: Answer) -> Found:
    if answer.status:
        return Found(path, "MISSING", f"is answered with {answer.status}. Copy all of the site, with every folder")
    return Found(path, "UNREACHED", f"could not be had: {answer.why}. Look at the address and at the host")


def _policies(pages: dict[str, Page]) -> list[Found]:
    """Every page brings a policy of its own, whatever the host says."""
    found = []
    for path, page in pages.items():
        open_to = weakness(page.policy) if page.policy else "there is none"
        if open_to:
            found.append(Found(path, "POLICY", f"the page's own policy is not strict: {open_to}. Build the book again"))
    return found


def _links(place: Place, pages: dict[str, Page], known: set[str]) -> list[Found]:
    found = []
    asked: dict[str, int] = {}
    domain = urlsplit(place.base)
    for path, page in pages.items():
        for name in dict.fromkeys(page.names):
            url = urlsplit(urljoin(place.base + path, name))
            if url.scheme not in ("http", "https"):
                continue
            if url.netloc != domain.netloc:
                found.append(
                    Found(
                        path,
                        "HOST",
                        f"names {url.netloc}: {name}. Nothing of the book comes from another host; build it again",
                    )
                )
                continue
            if not url.path.startswith(domain.path):
                if path == "404.html":  # handed out at any depth, so its link is a whole path
                    told = f"leads to {name}, and the book stands at {domain.path}. Write its address into firm.yml and build again"
                    found += [Found(path, "LINK", told, is_note=True)] if place.has_headers else []
                    continue
                found.append(
                    Found(
                        path,
                        "LINK",
                        f"{name} leads out of the book. Links are relative, so that it works in any folder",
                    )
                )
                continue
            target = _named(unquote(url.path[len(domain.path) :]))
            if target not in known:
                asked.setdefault(target, place.get(_visited(target), "HEAD").status)
                if asked[target] != 200:
                    found.append(
                        Found(
                            path,
                            "LINK",
                            f"{name} leads nowhere. Copy all of the site, or mend the link and build again",
                        )
                    )
                continue
            place_named = unquote(url.fragment)
            if (
                place_named
                and target in pages
                and not STATE.search(place_named)
                and place_named not in pages[target].ids
            ):
                found.append(
                    Found(path, "FRAGMENT", f"{name} leads to no place on its page. Mend the link and build again")
                )
    return found


def _from_elsewhere(answers: dict[str, Answer]) -> list[Found]:
    """What styles, scripts and drawings of the book load; the engines come from others, and the policy holds them."""
    found = []
    for path, answer in answers.items():
        pattern = ELSEWHERE.get(PurePosixPath(path).suffix)
        for address in pattern.findall(answer.text) if pattern and not path.startswith("engine/") else ():
            found.append(
                Found(path, "HOST", f"loads {address}. Nothing of the book comes from another host; build it again")
            )
    return found


def _as_an_address(place: Address, pages: dict[str, Page], answers: dict[str, Answer]) -> list[Found]:
    found = []
    # The service worker asks for the file's own name, where a visitor asks for its folder.
    for path, answer in place.get_all([one for one in pages if _visited(one) != one], "HEAD").items():
        if answer.status != 200:
            found.append(_missing(path, answer))
    lost = place.get(NOWHERE)
    if lost.status != 404:
        found.append(
            Found(
                NOWHERE,
                "LOST",
                f"is answered with {lost.status}, and it is not there. Have the host answer 404 with 404.html",
            )
        )
    elif "404.html" in answers and lost.body != answers["404.html"].body:
        found.append(
            Found(NOWHERE, "LOST", "is answered by a page of the host. Have it hand out 404.html", is_note=True)
        )
    for path, page in pages.items():
        if page.canonical and page.canonical != place.base + _visited(path):
            found.append(
                Found(
                    path,
                    "ADDRESS",
                    "says that it stands at another address. Write this one into firm.yml, or look there",
                    is_note=True,
                )
            )
    return found


def _as_a_folder(place: Folder, answers: dict[str, Answer]) -> list[Found]:
    """What no host has said yet: the files that tell it, and what it hands out compressed."""
    found = []
    style = headers.style_in(answers["404.html"].text) if "404.html" in answers else ""
    pages = [answer.text for path, answer in answers.items() if path.endswith(".html")]
    scripts = sorted({one for page in pages for one in headers.scripts_in(page)})
    policy = headers.every(style, scripts)["Content-Security-Policy"]
    for name in ("_headers", ".htaccess", f"{headers.FOLDER}/nginx.conf"):
        told = place.get(name)
        if told.status != 200:
            found.append(
                Found(name, "HOSTING", "is missing; a host that reads it is told nothing. Copy it too, or build again")
            )
        elif policy not in told.text:
            found.append(Found(name, "HOSTING", "does not hold the book's policy. Build again"))
    for path, answer in answers.items():
        for ending, unpack in ((".br", brotli.decompress), (".gz", gzip.decompress)):
            packed = place.get(path + ending)
            if packed.status == 200 and answer.status == 200 and not _same(unpack, packed.body, answer.body):
                found.append(
                    Found(path + ending, "BYTES", f"is not {PurePosixPath(path).name} compressed. Build again")
                )
            elif packed.status != 200 and PurePosixPath(path).suffix in hosting.SUFFIXES:
                found.append(
                    Found(
                        path + ending,
                        "COMPRESSION",
                        "is missing, so a host has nothing compressed to hand out. Copy it too, or build again",
                    )
                )
    return found


def _same(unpack: object, packed: bytes, plain: bytes) -> bool:
    try:
        return callable(unpack) and unpack(packed) == plain
    except (OSError, EOFError, zlib.error, brotli.error):
        return False


def _sitemap(place: Place, pages: dict[str, Page]) -> list[Found]:
    """Where there is a list of pages, it names pages that stand."""
    told = place.get("sitemap.xml")
    if told.status != 200:
        return []
    home = pages["index.html"].canonical if "index.html" in pages else ""
    found = []
    for address in LOC.findall(told.text):
        path = _named(address.removeprefix(home)) if home and address.startswith(home) else ""
        if path not in pages or pages[path].canonical != address:
            found.append(
                Found("sitemap.xml", "SITEMAP", f"{address} is no page of this book. Build it again with one address")
            )
    return found


def place_of(where: str) -> Place:
    """Return the place that is meant by what was typed."""
    return Address(where) if re.match(r"https?://", where) else Folder(Path(where))
