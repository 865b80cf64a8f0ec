"""What a host says with each file, against the one table: type, compression, for how long it is kept, the policy."""

import re
from pathlib import PurePosixPath

from handbook.host import headers
from handbook.host.compress import SUFFIXES
from handbook.site_check.faults import Found
from handbook.site_check.pages import lack, weakness
from handbook.site_check.places import Answer

# What else a type may be called. What a page takes as bytes alone (parts of engines) may have any.
ALSO = {
    ".mjs": ("application/javascript",), ".js": ("application/javascript",), ".xml": ("text/xml",), ".webmanifest": ("application/json",),
}  # fmt: skip
BYTES_ALONE = (".bin", ".zip", ".whl")
TEXT = (".html", ".css", ".mjs", ".js", ".json", ".svg")  # what every host can compress
WORTH = 2_000  # bytes from which compression is missed
STALE = 600  # seconds for which a page of an earlier edition does no harm
LONG = 30 * 24 * 3600  # seconds from which a visitor need not ask again
AGE = re.compile(r"max-age=(\d+)")


def look(path: str, answer: Answer) -> list[Found]:
    """Return what is wrong with what the host says of the file at `path`."""
    found = [_type(path, answer), _packed(path, answer), *_kept(path, answer)]
    if path.endswith(".html"):
        found += [*_policy(path, answer), *_others(path, answer)]
    return [one for one in found if one]


def _ending(path: str) -> str:
    return PurePosixPath(path).suffix


def _type(path: str, answer: Answer) -> Found | None:
    ending = _ending(path)
    wanted = headers.TYPES.get(ending, "").partition(";")[0]
    given = answer.headers.get("content-type", "")
    plain = given.partition(";")[0].strip().lower()
    if ending in BYTES_ALONE or not wanted or plain in (wanted, *ALSO.get(ending, ())):
        charset = re.search(r"charset=\"?([\w-]+)", given.lower())
        if ending == ".html" and charset and charset[1] != "utf-8":
            return Found(path, "TYPE", f"comes as {charset[1]}, and it is utf-8. Set the host's charset to utf-8")
        return None
    return Found(
        path,
        "TYPE",
        f"comes as {plain or 'nothing'}, and a browser needs {wanted}. Give {ending} this type in the host's settings",
    )


def _packed(path: str, answer: Answer) -> Found | None:
    if _ending(path) not in SUFFIXES or len(answer.body) < WORTH or answer.headers.get("content-encoding"):
        return None
    is_note = _ending(path) not in TEXT
    return Found(
        path,
        "COMPRESSION",
        f"{_ending(path)} comes uncompressed. Have the host hand out the .br or .gz beside it, or compress by itself",
        is_note,
    )


def _kept(path: str, answer: Answer) -> list[Found]:
    given = answer.headers.get("cache-control", "").lower()
    age = AGE.search(given)
    seconds = 0 if "no-cache" in given or "no-store" in given else int(age[1]) if age else None
    if headers.NAMED_BY_CONTENT.search(path):
        if seconds is not None and seconds >= LONG:
            return []
        return [
            Found(
                path,
                "CACHE",
                f"never changes, and is asked for again. Let it be kept: Cache-Control: {headers.FOREVER}",
                is_note=True,
            )
        ]
    if seconds is None:
        return [
            Found(
                path,
                "CACHE",
                f"nobody says how long it may be kept. Say so: Cache-Control: {headers.ANEW}",
                is_note=True,
            )
        ]
    if seconds <= STALE:
        return []
    return [
        Found(
            path,
            "CACHE",
            f"may be kept for {seconds} s, so an earlier edition stays. Say Cache-Control: {headers.ANEW} for it",
        )
    ]


def _policy(path: str, answer: Answer) -> list[Found]:
    """A policy in the headers reaches workers too; it may not stop what the book needs."""
    given = answer.headers.get("content-security-policy", "")
    if not given:
        return [
            Found(
                path,
                "POLICY",
                "no policy comes as a header; the page's own holds, and workers and frames have none",
                is_note=True,
            )
        ]
    found = []
    for one in given.split(","):
        if missing := lack(one):
            found.append(
                Found(path, "POLICY", f"the host's policy stops the calculators: {missing}. Take the one in _headers")
            )
    if all(weakness(one) for one in given.split(",")):
        found.append(Found(path, "POLICY", f"the host's policy is open: {weakness(given)}. Take the one in _headers"))
    return found


def _others(path: str, answer: Answer) -> list[Found]:
    wanted = {
        name.lower(): value
        for name, value in headers.every("").items()
        if "Policy" not in name or name == "Referrer-Policy"
    }
    return [
        Found(path, "HEADER", f"no {name}: {value}. Add it where the host lets you", is_note=True)
        for name, value in wanted.items()
        if not answer.headers.get(name)
    ]
