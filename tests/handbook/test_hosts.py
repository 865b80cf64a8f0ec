"""Each form of what a host is told says the same as the one table: read back here by readers of their own."""

import re
import shlex

import pytest
import yaml

from handbook import build, serve
from handbook.host import headers

SITE = build.SITE
EVERY = ("Content-Security-Policy", "X-Content-Type-Options", "Referrer-Policy")
EXAMPLES = build.DOCS / "firm" / "publish"


def files():
    """What visitors ask for."""
    found = [path.relative_to(SITE).as_posix() for path in SITE.rglob("*") if path.is_file()]
    return [one for one in sorted(found) if not one.endswith((".br", ".gz")) and not one.startswith(("_", ".", "hosts/"))]  # fmt: skip


def from_page_hosts(text, base):
    """`_headers`: each rule that fits adds its headers; two of one name are joined, as such hosts do."""
    rules = []
    for line in text.splitlines():
        if line.startswith("  "):
            name, _, value = line.strip().partition(": ")
            rules[-1][1].append((name, value))
        else:
            rules.append((line, []))
    assert all("*" not in pattern[:-1] for pattern, _ in rules)

    def told(path):
        found = {}
        for pattern, pairs in rules:
            if pattern == path or (pattern.endswith("*") and path.startswith(pattern[:-1])):
                for name, value in pairs:
                    found[name] = f"{found[name]}, {value}" if name in found else value
        return found

    return lambda path: told(base + path.removesuffix("index.html") if path == "index.html" else base + path)


def from_apache(text, base):
    rows = [shlex.split(line, posix=False) for line in text.splitlines() if line and not line.startswith(("#", "<"))]
    rows = [[one.strip('"') for one in row] for row in rows]
    variables = [(row[2], row[3:]) for row in rows if row[0] == "SetEnvIf" and row[1] == "Request_URI"]

    def told(path):
        found = {row[3]: row[4] for row in rows if row[:3] == ["Header", "always", "set"]}
        given = [name for pattern, names in variables for name in names if re.search(pattern, base + path)]
        for row in rows:
            if row[:2] == ["Header", "set"]:
                condition = row[4].removeprefix("env=")
                if (condition.removeprefix("!") in given) != condition.startswith("!"):
                    found[row[2]] = row[3]
        found["Content-Type"] = next(row[1] for row in rows if row[0] == "AddType" and path.endswith(row[2]))
        return found

    return told


def nginx_tree(text):
    """Directives as lists of words; what stands in braces is a list at the end."""
    words = re.findall(r'"[^"]*"|[{};]|[^\s{};"]+', "\n".join(one for one in text.splitlines() if not one.strip().startswith("#")))  # fmt: skip

    def inside():
        found, row = [], []
        while words:
            word = words.pop(0)
            if word == "}":
                return found
            if word in ("{", ";"):
                found.append([*row, inside()] if word == "{" else row)
                row = []
            else:
                row.append(word.strip('"'))
        return found

    return inside()


def from_nginx(text, base):
    ((_, place, rows),) = nginx_tree(text)
    assert place == base
    types = {ending: row[0] for one in rows if one[0] == "types" for row in one[-1] for ending in row[1:]}
    with_charset = next(row[1:] for row in rows if row[0] == "charset_types") + ["text/html"]  # which is always meant
    charset = next(row[1] for row in rows if row[0] == "charset")

    def told(path):
        inner = [one[-1] for one in rows if one[:2] == ["location", "~"] and re.search(one[2], base + path)]
        here = inner[0] if inner and any(one[0] == "add_header" for one in inner[0]) else rows  # none is inherited then
        found = {one[1]: one[2] for one in here if one[0] == "add_header"}
        kind = types[path.rpartition(".")[2]]
        return found | {"Content-Type": f"{kind}; charset={charset}" if kind in with_charset else kind}

    return told


@pytest.mark.parametrize("base", ["/", "/handbook/"])
@pytest.mark.parametrize("form", ["_headers", ".htaccess", "nginx.conf"])
def test_each_form_says_what_the_table_says(form, base):
    wanted = headers.every("STYLE=")
    assert tuple(wanted) == EVERY
    if form == "_headers":
        told = from_page_hosts(headers.for_page_hosts(wanted, SITE, base), base)
    elif form == ".htaccess":
        told = from_apache(headers.for_apache(wanted, base), base)
    else:
        told = from_nginx(headers.for_nginx(wanted, base), base)
    looked = files()
    assert len(looked) > 150 and {"sw.js", "index.html", "search.json"} <= set(looked)
    for path in looked:
        expected = wanted | {"Cache-Control": headers.kept_for(path)}
        if form != "_headers":  # such hosts know the types
            expected["Content-Type"] = headers.TYPES["." + path.rpartition(".")[2]]
        assert told(path) == expected, path
    kept = {path for path in looked if told(path)["Cache-Control"] == headers.FOREVER}
    assert kept == {path for path in looked if re.match(r"assets-|engine/", path)}


def test_what_is_compressed_beside_is_handed_out():
    apache = headers.for_apache(headers.every(""), "/")
    for encoding, ending in (("br", ".br"), ("gzip", ".gz")):
        assert f"AddEncoding {encoding} {ending}" in apache
        condition = f"RewriteCond %{{HTTP:Accept-Encoding}} {encoding}\nRewriteCond %{{REQUEST_FILENAME}}{ending} -f\nRewriteRule ^(.+)$ $1{ending} [L]"
        assert condition in apache
    assert apache.index("encoding} br".replace("encoding", "HTTP:Accept-Encoding")) < apache.index("Encoding} gzip")
    ((*_, rows),) = nginx_tree(headers.for_nginx(headers.every(""), "/"))
    assert ["gzip_static", "on"] in rows and ["gzip_vary", "on"] in rows


def test_the_lost_page_is_told_with_the_folder_of_the_book():
    assert "ErrorDocument 404 /handbook/404.html" in headers.for_apache(headers.every(""), "/handbook/")
    ((*_, rows),) = nginx_tree(headers.for_nginx(headers.every(""), "/handbook/"))
    assert ["error_page", "404", "/handbook/404.html"] in rows


def test_the_site_holds_each_form_and_serves_by_it():
    style = re.search(r"'sha256-([^']+)'", (SITE / "404.html").read_text(encoding="utf-8"))[1]
    wanted = headers.every(style)
    assert (SITE / "_headers").read_text(encoding="utf-8") == headers.for_page_hosts(wanted, SITE, "/")
    assert (SITE / ".htaccess").read_text(encoding="utf-8") == headers.for_apache(wanted, "/")
    assert (SITE / "hosts" / "nginx.conf").read_text(encoding="utf-8") == headers.for_nginx(wanted, "/")
    assert dict(serve._headers(SITE)) == wanted


# How the common forges build and publish by themselves: examples, and none that runs here.


@pytest.mark.parametrize("name", ["github-pages.yml", "gitlab-ci.yml"])
def test_an_example_of_a_forge_is_good_yaml_and_builds_looks_and_publishes(name):
    text = (EXAMPLES / name).read_text(encoding="utf-8")
    told = yaml.load(text, Loader=yaml.BaseLoader)
    if name == "gitlab-ci.yml":
        job = told["pages"]
        commands = job["script"]
        assert re.fullmatch(r"python:3\.\d+\.\d+-\w+", job["image"]) and job["artifacts"]["paths"] == ["public"]
        assert commands[-1] == "mv site public"
    else:
        steps = [one for job in told["jobs"].values() for one in job["steps"]]
        commands = [one["run"] for one in steps if "run" in one]
        used = [one["uses"] for one in steps if "uses" in one]
        assert len(used) == 4 and all(re.fullmatch(r"actions/[a-z-]+@[0-9a-f]{40}", one) for one in used)
        assert text.count("# v") == len(used)  # which edition a digest stands for
        assert told["permissions"] == {"contents": "read"}
        assert told["jobs"]["deploy"]["permissions"] == {"pages": "write", "id-token": "write"}
        assert next(one["with"]["path"] for one in steps if "upload-pages" in one.get("uses", "")) == "site"
    assert commands[0] == "python3 scripts/book.py build --firm my-firm/firm.yml"
    assert commands[1] == "python3 scripts/book.py check-site site"
    assert text.startswith("# An example")


def test_no_forge_runs_anything_here():
    assert not (build.ROOT / ".github").exists() and not (build.ROOT / ".gitlab-ci.yml").exists()
