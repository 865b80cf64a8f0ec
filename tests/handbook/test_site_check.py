"""The look at a published site: a good one has no fault, and each thing that a host or a copy can get wrong is named."""

import importlib
import shutil
import threading
from itertools import count

import pytest

from handbook import build, serve
from handbook.host import compress, headers, offline
from handbook.site_check import __main__ as command
from handbook.site_check import looks, pages, places
from handbook.site_check.faults import Found, printed

POLICY = "; ".join(one for one in headers.POLICY if "frame-ancestors" not in one).replace(" 'sha256-{style}'", "")
HEAD = f'<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>A</title><meta http-equiv="Content-Security-Policy" content="{POLICY}">'
LONG = "<p>Work goes on.</p>" * 200
FILES = {
    "index.html": HEAD + '<link rel="stylesheet" href="assets-0123456789ab/book.css"></head><body><a href="way/#step">Way</a><a href="way/#skim?coats=2">Figures</a>'
    f'<a href="tel:+15550100">Call</a><script type="module" src="assets-0123456789ab/page.mjs"></script>{LONG}</body></html>',
    "way/index.html": HEAD + f'</head><body><p id="step">Do it.</p><a href="..">Home</a><a href="../job.schema.json">Form</a>{LONG}</body></html>',
    "assets-0123456789ab/book.css": "body { margin: 0 }\n" * 200,
    "assets-0123456789ab/page.mjs": "export const one = 'http://www.w3.org/2000/svg';\n" * 100,
    "assets-0123456789ab/icon.svg": '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"/>',
    "engine/calc-0123456789ab.bin": "bytes " * 500,
    "engine/small-0123456789ab/one.wasm": "bytes " * 500,
    "job.schema.json": "{}",
}  # fmt: skip


def finish(site, cache):
    """What the build does last: headers, the worker's list, compression."""
    for packed in [*site.rglob("*.br"), *site.rglob("*.gz")]:
        packed.unlink()
    headers.write(site)
    offline.write_worker(site, build.DOCS / "theme" / "sw.js")
    compress.compress_site(site, cache)


@pytest.fixture
def site(tmp_path):
    folder = tmp_path / "site"
    for name, text in FILES.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    lost = (build.DOCS / "theme" / "404.html").read_text(encoding="utf-8")
    (folder / "404.html").write_text(lost.replace("{{ base_url }}", "/"), encoding="utf-8")
    finish(folder, tmp_path / "cache")
    return folder


class Host(serve.Handler):
    """A host that gets one thing wrong: what it says of a file, or what it sends."""

    say = staticmethod(lambda path, name, value: value)
    send = staticmethod(lambda path, status, body, kind, encoding: (status, body, kind, encoding))
    packs = True
    turns: dict = {}  # noqa: RUF012

    def _answer(self, *, with_body):
        if not self.packs:
            del self.headers["Accept-Encoding"]
        if self.path in self.turns:
            self.send_response(302)
            self.send_header("Location", self.turns[self.path])
            self.send_header("Content-Length", "0")
            return self.end_headers()
        return super()._answer(with_body=with_body)

    def _send(self, status, body, kind, encoding, with_body):
        super()._send(*self.send(self.path, status, body, kind, encoding), with_body)

    def send_header(self, name, value):
        changed = self.say(self.path, name, value)
        if changed is not None:
            super().send_header(name, changed)


@pytest.fixture
def host(site):
    """Return a function that serves the site, with `wrong` in the host's class, and looks at it."""
    servers = []

    def looked(base="/book/", **wrong):
        own = {"base": base, "site": site, "headers_of_site": serve._headers(site)}
        handler = type("OneHost", (Host,), own | {name: staticmethod(one) if callable(one) else one for name, one in wrong.items()})  # fmt: skip
        server = serve.http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
        servers.append(server)
        threading.Thread(target=server.serve_forever, args=(0.02,), daemon=True).start()
        return [str(one) for one in looks.look(places.Address(f"http://127.0.0.1:{server.server_port}{base}"))]

    yield looked
    for server in servers:
        server.shutdown()
        server.server_close()


def in_folder(site):
    return [str(one) for one in looks.look(places.Folder(site))]


LOST = "404.html: note: LINK leads to /, and the book stands at /book/. Write its address into firm.yml and build again"


def test_a_good_site_has_no_fault_anywhere(site, host):
    assert in_folder(site) == []
    assert host() == [LOST]
    assert host(base="/") == []
    assert host(base="/a/deep folder/".replace(" ", "%20").replace("%20", "-")) == [
        LOST.replace("/book/", "/a/deep-folder/")
    ]


def test_the_book_itself_has_no_fault(capsys):
    """All of it, as a folder and at an address below a domain's top, within the time that a publisher waits."""
    assert command.main([str(build.SITE)]) == 0
    assert "no faults, no notes" in capsys.readouterr().out
    server = serve.open_server(0, "/book/")
    threading.Thread(target=server.serve_forever, args=(0.02,), daemon=True).start()
    try:
        assert command.main([f"http://127.0.0.1:{server.server_port}/book/index.html#a"]) == 0
    finally:
        server.shutdown()
        server.server_close()
    told = capsys.readouterr().out.splitlines()
    assert told[0] == LOST and len(told) == 2 and float(told[1].partition(" in ")[2].split(" ")[0]) < 20


# What a copy gets wrong: told of the folder and at the address alike.

COPIES = [
    (lambda site: (site / "way/index.html").unlink(), "way/index.html: MISSING is answered with 404"),
    (lambda site: (site / "assets-0123456789ab/page.mjs").unlink(), "assets-0123456789ab/page.mjs: MISSING"),
    (lambda site: (site / "engine/small-0123456789ab/one.wasm").write_bytes(b"cut"), "engine/small-0123456789ab/one.wasm: BYTES is not the file that was built"),
    (lambda site: (site / "sw.js").unlink(), "sw.js: WORKER does not come"),
    (lambda site: (site / "sw.js").write_text("const BOOK = {broken};\n"), "sw.js: WORKER is no service worker of this book"),
    (lambda site: (site / "sw.js").write_text('const BOOK = {"kept":[],"later":{}};\n'), "sw.js: WORKER is no service worker of this book"),
    (lambda site: (site / "sw.js").write_text('const BOOK = {"kept":{"../secret.txt":"00"},"later":{}};\n'), "../secret.txt: "),
    (lambda site: (site / "sw.js").write_text("// another"), "sw.js: WORKER is no service worker of this book"),
    (lambda site: (site / "job.schema.json").unlink(), "way/index.html: LINK ../job.schema.json leads nowhere"),
]  # fmt: skip


@pytest.mark.parametrize(("wrong", "told"), COPIES)
def test_what_a_copy_lost_or_changed_is_named(site, host, wrong, told):
    wrong(site)
    for packed in [*site.rglob("*.br"), *site.rglob("*.gz")]:
        packed.unlink()  # so that the file itself is handed out
    assert any(one.startswith(told) for one in in_folder(site))
    assert any(one.startswith(told) for one in host())


# What stands in the book itself.

PAGES = [
    ("index.html", 'href="way/#step"', 'href="way/#stop"', "index.html: FRAGMENT way/#stop leads to no place on its page"),
    ("index.html", 'href="way/#step"', 'href="ways/"', "index.html: LINK ways/ leads nowhere"),
    ("index.html", 'href="way/#step"', 'href="/way/"', "index.html: LINK /way/ leads out of the book"),
    ("way/index.html", 'href=".."', 'href="../.."', "way/index.html: LINK ../.. leads out of the book"),
    ("index.html", 'href="way/#step"', 'href="https://other.example/a"', "index.html: HOST names other.example: https://other.example/a"),
    ("index.html", '<script type="module" src="', '<script src="//other.example/a.js"></script><script type="module" src="', "index.html: HOST names other.example"),
    ("assets-0123456789ab/book.css", "margin: 0", "background: url(https://other.example/a.png)", "assets-0123456789ab/book.css: HOST loads https://other.example/a.png"),
    ("assets-0123456789ab/page.mjs", "export", "import 'https://other.example/a.mjs'; export", "assets-0123456789ab/page.mjs: HOST loads https://other.example/a.mjs"),
    ("assets-0123456789ab/icon.svg", "/>", '><image href="https://other.example/a.png"/></svg>', "assets-0123456789ab/icon.svg: HOST loads https://other.example/a.png"),
    ("index.html", "script-src 'self'", "script-src 'self' 'unsafe-inline'", "index.html: POLICY the page's own policy is not strict: script-src lets in 'unsafe-inline'"),
    ("index.html", "connect-src 'self'", "connect-src *", "index.html: POLICY the page's own policy is not strict: connect-src lets in *"),
    ("index.html", "; base-uri 'none'", "", "index.html: POLICY the page's own policy is not strict: base-uri is open"),
    ("index.html", "Content-Security-Policy", "Other-Policy", "index.html: POLICY the page's own policy is not strict: there is none"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "was", "now", "told"), PAGES)
def test_what_the_book_itself_has_wrong_is_named(site, host, tmp_path, name, was, now, told):
    text = (site / name).read_text(encoding="utf-8")
    assert was in text
    (site / name).write_text(text.replace(was, now, 1), encoding="utf-8")
    finish(site, tmp_path / "cache")
    for found in (in_folder(site), [one for one in host() if one != LOST]):
        assert len(found) == 1 and found[0].startswith(told), found


# What a host gets wrong.


def said(ending, header, now):
    """A host that says `now` of each file that ends so."""
    return lambda path, name, value: now if path.endswith(ending) and name == header else value


CSP = "Content-Security-Policy"
HOSTS = [
    ({"say": said(".mjs", "Content-Type", "text/plain")}, "assets-0123456789ab/page.mjs: TYPE comes as text/plain, and a browser needs text/javascript"),
    ({"say": said(".wasm", "Content-Type", "application/octet-stream")}, "engine/small-0123456789ab/one.wasm: TYPE comes as application/octet-stream, and a browser needs application/wasm"),
    ({"say": said(".css", "Content-Type", None)}, "assets-0123456789ab/book.css: TYPE comes as nothing"),
    ({"say": said("/way/", "Content-Type", "text/html; charset=iso-8859-1")}, "way/index.html: TYPE comes as iso-8859-1"),
    ({"packs": False}, "index.html: COMPRESSION .html comes uncompressed"),
    ({"packs": False}, "engine/small-0123456789ab/one.wasm: note: COMPRESSION .wasm comes uncompressed"),
    ({"say": said("/way/", "Cache-Control", "public, max-age=86400")}, "way/index.html: CACHE may be kept for 86400 s"),
    ({"say": said("sw.js", "Cache-Control", "max-age=31536000, immutable")}, "sw.js: CACHE may be kept for 31536000 s"),
    ({"say": said("/way/", "Cache-Control", None)}, "way/index.html: note: CACHE nobody says"),
    ({"say": said(".css", "Cache-Control", "no-cache")}, "assets-0123456789ab/book.css: note: CACHE never changes, and is asked for again"),
    ({"say": said("/way/", CSP, None)}, "way/index.html: note: POLICY no policy comes as a header"),
    ({"say": said("/way/", CSP, "default-src 'self'")}, "way/index.html: POLICY the host's policy stops the calculators: script-src lacks 'wasm-unsafe-eval'"),
    ({"say": said("/way/", CSP, "worker-src 'none'")}, "way/index.html: POLICY the host's policy stops the calculators: worker-src lacks 'self'"),
    ({"say": said("/way/", CSP, "upgrade-insecure-requests")}, "way/index.html: POLICY the host's policy is open: script-src lets in *"),
    ({"say": said("/way/", "X-Content-Type-Options", None)}, "way/index.html: note: HEADER no x-content-type-options: nosniff"),
    ({"turns": {"/book/sw.js": "/book/job.schema.json"}}, "sw.js: WORKER is no service worker of this book"),
    ({"turns": {"/book/way/": "https://other.example/"}}, "way/index.html: UNREACHED could not be had: it sends on to https://other.example/"),
    ({"turns": {"/book/way/": "/book/way/"}}, "way/index.html: UNREACHED could not be had: it sends on and on"),
    ({"send": lambda path, status, body, kind, encoding: (200 if status == 404 else status, body, kind, encoding)}, "no-such-page/in-the-book/: LOST is answered with 200"),
    ({"send": lambda path, status, body, kind, encoding: (status, b"Not here", kind, "") if status == 404 else (status, body, kind, encoding)}, "no-such-page/in-the-book/: note: LOST is answered by a page of the host"),
    ({"send": lambda path, status, body, kind, encoding: (status, body[:-9], kind, encoding)}, "index.html: UNREACHED could not be had: its compressed bytes (br) cannot be unpacked"),
    ({"send": lambda path, status, body, kind, encoding: (503 if path.endswith(".css") else status, body, kind, encoding)}, "assets-0123456789ab/book.css: MISSING is answered with 503"),
    ({"send": lambda path, status, body, kind, encoding: (404 if path.endswith("way/index.html") else status, body, kind, encoding)}, "way/index.html: MISSING is answered with 404"),
    ({"send": lambda path, status, body, kind, encoding: (status, body + b"<script></script>" if not encoding else body, kind, encoding), "packs": False}, "index.html: BYTES is not the file that was built"),
]  # fmt: skip


@pytest.mark.parametrize(("wrong", "told"), HOSTS, ids=count())
def test_what_a_host_gets_wrong_is_named(host, wrong, told):
    found = host(**wrong)
    if told.startswith("index.html: UNREACHED"):
        told = told.replace(
            "index.html", found[0].partition(": ")[0]
        )  # nothing comes at all, so the first page is told by its address
    assert any(one.startswith(told) for one in found), found


@pytest.mark.parametrize(
    ("path", "say"),
    [(".mjs", ("Content-Type", "application/javascript")), (".whl", ("Content-Type", "text/odd")), ("/way/", ("Cache-Control", "public, max-age=0, must-revalidate")), (".css", ("Cache-Control", "max-age=31536000"))],
)  # fmt: skip
def test_what_does_as_well_is_no_fault(host, path, say):
    assert host(say=said(path, *say)) == [LOST]


def test_a_redirect_that_stays_in_the_book_is_followed(host):
    assert host(turns={"/book/way/index.html": "/book/way/"}) == [LOST]


class Overheard(places.Address):
    """An address without https, with what a folder holds behind it."""

    def _ask(self, url, method):
        return places.Folder(self.folder).get(url.removeprefix(self.base))


def test_an_address_without_https_is_named(site):
    place = Overheard("http://ceilings.example/handbook")
    place.folder = site
    assert str(looks.look(place)[0]).startswith("http://ceilings.example/handbook/: HTTPS is not served over https")
    place.base = "https://ceilings.example/handbook/"
    assert "HTTPS" not in str(looks.look(place))


@pytest.mark.parametrize("elsewhere", ["file:///etc/hostname", "ftp://other.example/", "/book/"])
def test_a_first_page_that_sends_on_to_no_page_is_named(host, elsewhere):
    """Nothing of this machine is opened, wherever a host sends to."""
    (found,) = host(turns={"/book/": elsewhere})
    assert ": UNREACHED could not be had: it sends on " in found


def test_nothing_outside_of_the_site_is_asked_for():
    place = places.Address("http://127.0.0.1:9/book/")
    assert place.get("../secret.txt").why == "it leads out of the site" and place.asked == 0


def test_a_host_that_is_not_there_is_named():
    server = serve.open_server(0, "/")
    port = server.server_port
    server.server_close()
    (found,) = looks.look(places.Address(f"http://127.0.0.1:{port}"))
    assert str(found).startswith(f"http://127.0.0.1:{port}/: UNREACHED could not be had: ")


# The folder alone.


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        (lambda site: (site / "_headers").unlink(), "_headers: HOSTING is missing"),
        (lambda site: (site / ".htaccess").write_text("# none"), ".htaccess: HOSTING does not hold the book's policy"),
        (lambda site: shutil.rmtree(site / "hosts"), "hosts/nginx.conf: HOSTING is missing"),
        (lambda site: (site / "way/index.html.br").unlink(), "way/index.html.br: COMPRESSION is missing"),
        (lambda site: (site / "way/index.html.gz").write_bytes(b"other"), "way/index.html.gz: BYTES is not index.html compressed"),
        (lambda site: shutil.copyfile(site / "index.html.br", site / "way/index.html.br"), "way/index.html.br: BYTES is not"),
        (lambda site: (site / "sitemap.xml").write_text("<loc>https://ceilings.example/gone/</loc>"), "sitemap.xml: SITEMAP https://ceilings.example/gone/ is no page"),
    ],
)  # fmt: skip
def test_what_a_folder_lacks_is_named(site, wrong, told):
    wrong(site)
    (found,) = in_folder(site)
    assert found.startswith(told)


def test_the_command_tells_and_fails(site, capsys):
    (site / "way/index.html").unlink()
    assert command.main([str(site)]) == 1
    told = capsys.readouterr().out.splitlines()
    assert told[0].startswith("way/index.html: MISSING") and ", 1 fault, no notes" in told[-1]
    assert command.main([str(site / "gone")]) == 1
    assert "there is no site in such a folder" in capsys.readouterr().out
    assert command.main(["ceilings.example/handbook"]) == 1
    assert "begins with https://" in capsys.readouterr().out


def test_many_faults_of_one_kind_are_counted():
    lines = printed([Found(f"{at}.html", "A", "is wrong") for at in range(9)] + [Found("b", "B", "might be", True)])
    assert lines == ["0.html: A is wrong", "1.html: A is wrong", "2.html: A is wrong", "3.html and 5 files more: A, the same", "b: note: B might be"]  # fmt: skip


def test_a_policy_is_read_as_a_browser_reads_it():
    assert pages.directives("A 'self';; a *; b") == {"a": ["'self'"], "b": []}
    assert pages.weakness("default-src 'none'; form-action 'none'; base-uri 'none'") == ""
    assert (
        pages.weakness("default-src 'self' https:; form-action 'none'; base-uri 'none'") == "script-src lets in https:"
    )
    assert pages.weakness("") == "script-src lets in *" and pages.lack("") == ""
    assert pages.lack("default-src *") == "script-src lacks 'wasm-unsafe-eval'"


@pytest.mark.parametrize("where", ["https://ceilings.example/handbook/", "site"])
def test_the_one_command_hands_on_what_to_look_at(monkeypatch, tmp_path, where):
    found = []
    book = importlib.import_module("book")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(book, "prepare", lambda: None)
    monkeypatch.setattr(book, "_inside", lambda *arguments: found.append(arguments) or 1)
    assert book.main(["check-site", where]) == 1
    assert found == [("-m", "handbook.site_check", where if ":" in where else str(tmp_path / where))]
