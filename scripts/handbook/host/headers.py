"""What a host says with each file: one table, written in the form of each usual host.

`_headers` and `.htaccess` stand in the site, as the hosts that read them look there; what belongs into a server's own
settings stands in `hosts/`. Each holds all of the table that its form can say.
"""

import hashlib
import re
from base64 import b64encode
from collections.abc import Iterable
from pathlib import Path

TYPES = {
    ".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8", ".mjs": "text/javascript; charset=utf-8",
    ".js": "text/javascript; charset=utf-8", ".json": "application/json", ".svg": "image/svg+xml",
    ".wasm": "application/wasm", ".webmanifest": "application/manifest+json", ".zip": "application/zip",
    ".whl": "application/zip", ".png": "image/png", ".xml": "application/xml", ".txt": "text/plain; charset=utf-8",
    ".bin": "application/octet-stream",
}  # fmt: skip
# What is named by what is in it never changes, so it is kept for a year; all else is asked for anew, and a fault is never kept.
NAMED_BY_CONTENT = re.compile(r"-[0-9a-f]{12}[/.]")
FOREVER, ANEW = "max-age=31536000, immutable", "no-cache"
PACKED = (("br", ".br"), ("gzip", ".gz"))  # the encoding, and the ending of the file beside the plain one
POLICY = (
    "default-src 'none'", "script-src 'self'{scripts} 'wasm-unsafe-eval'", "style-src 'self' {style}", "img-src 'self' data:",
    "connect-src 'self'", "worker-src 'self'", "manifest-src 'self'", "form-action 'none'", "frame-ancestors 'none'", "base-uri 'none'",
)  # fmt: skip
STYLE = re.compile(r"<style>(.*?)</style>", re.DOTALL)
SCRIPT = re.compile(r"<script>(.*?)</script>", re.DOTALL)
OWN_SCRIPTS = "script-src 'self'"
FOLDER = "hosts"


def every(style: str, scripts: Iterable[str] = ()) -> dict[str, str]:
    """Return the headers that every file has; `style` names the lost page's own style, `scripts` those that stand inside of pages."""
    return {
        "Content-Security-Policy": "; ".join(POLICY).format(style=style, scripts="".join(" " + one for one in scripts)),
        "X-Content-Type-Options": "nosniff",
        "Referrer-Policy": "same-origin",
    }


def kept_for(path: str) -> str:
    """Return for how long the file at `path` may be kept."""
    return FOREVER if NAMED_BY_CONTENT.search(path) else ANEW


def write(site: Path, base: str = "/") -> None:
    """Write each form into `site`, which will stand in the folder `base` of its domain: a policy reaches workers and frames so only."""
    lost = site / "404.html"  # the one page with its style inside, which its own policy lets in too
    text = lost.read_text(encoding="utf-8")
    style = style_in(text)
    lost.write_text(text.replace("'sha256-STYLE'", style), encoding="utf-8")
    told = every(style, _let_in_scripts(site))
    (site / FOLDER).mkdir(exist_ok=True)
    (site / FOLDER / "nginx.conf").write_text(for_nginx(told, base), encoding="utf-8")
    (site / "_headers").write_text(for_page_hosts(told, site, base), encoding="utf-8")
    (site / ".htaccess").write_text(for_apache(told, base), encoding="utf-8")


def _let_in_scripts(site: Path) -> list[str]:
    """Name the scripts that stand inside of pages in each page's own policy, and return them all: the book's skin has none, and the
    other theme has a few short ones. No other script inside of a page runs."""
    found: set[str] = set()
    for page in sorted(site.rglob("*.html")):
        text = page.read_text(encoding="utf-8")
        if inside := scripts_in(text):
            page.write_text(text.replace(OWN_SCRIPTS, " ".join((OWN_SCRIPTS, *inside)), 1), encoding="utf-8")
            found.update(inside)
    return sorted(found)


def scripts_in(page: str) -> list[str]:
    """Return what a policy calls the scripts that stand inside of a page."""
    return sorted({_named(one) for one in SCRIPT.findall(page)})


def style_in(page: str) -> str:
    """Return what a policy calls the style that stands inside of the lost page."""
    return _named("".join(STYLE.findall(page)))


def _named(inside: str) -> str:
    return f"'sha256-{b64encode(hashlib.sha256(inside.encode()).digest()).decode()}'"


def for_page_hosts(told: dict[str, str], site: Path, base: str) -> str:
    """`_headers`: such hosts know the types and compress by themselves. Rules that both fit are joined to one value by some of them, so no
    file has two that say for how long, and a star stands at the end alone."""
    rows = [f"{base}*", *[f"  {name}: {value}" for name, value in told.items()]]
    for path in sorted(site.iterdir()):
        files = (
            [one.relative_to(site).as_posix() for one in path.rglob("*") if one.is_file()]
            if path.is_dir()
            else [path.name]
        )
        kept = {kept_for(one) for one in files}
        if path.suffix not in (".br", ".gz") and not path.name.startswith((".", "_")):
            rule = path.name + "/*" if path.is_dir() else "" if path.name == "index.html" else path.name
            rows += [base + rule, f"  Cache-Control: {FOREVER if kept == {FOREVER} else ANEW}"]
    return "\n".join(rows) + "\n"


def for_apache(told: dict[str, str], base: str) -> str:
    """`.htaccess`, for Apache 2.4 and what reads its files. A module that a host lacks is passed over."""
    types = "\n".join(f'AddType "{kind}" {ending}' for ending, kind in TYPES.items())
    always = "\n".join(f'Header always set {name} "{value}"' for name, value in told.items())
    packed = "".join(
        f"""
RewriteCond %{{HTTP:Accept-Encoding}} {encoding}
RewriteCond %{{REQUEST_FILENAME}}{ending} -f
RewriteRule ^(.+)$ $1{ending} [L]"""
        for encoding, ending in PACKED
    )
    return f"""# What each file is served with.
DirectoryIndex index.html
ErrorDocument 404 {base}404.html
<IfModule mod_mime.c>
{types}
RemoveType .gz
RemoveLanguage .br
AddEncoding br .br
AddEncoding gzip .gz
</IfModule>
<IfModule mod_setenvif.c>
SetEnvIf Request_URI "{NAMED_BY_CONTENT.pattern}" book_forever
SetEnvIf Request_URI "\\.(br|gz)$" no-gzip no-brotli
</IfModule>
<IfModule mod_headers.c>
{always}
Header set Cache-Control "{ANEW}" env=!book_forever
Header set Cache-Control "{FOREVER}" env=book_forever
Header merge Vary Accept-Encoding
</IfModule>
<IfModule mod_rewrite.c>
RewriteEngine On{packed}
</IfModule>
"""


def for_nginx(told: dict[str, str], base: str) -> str:
    """A snippet for nginx, whose places inherit no header once they have one of their own."""
    types = "\n".join(f"        {kind.partition(';')[0]} {ending[1:]};" for ending, kind in TYPES.items())
    texts = " ".join(sorted({kind.partition(";")[0] for kind in TYPES.values() if "charset" in kind} - {"text/html"}))
    always = "".join(f'add_header {name} "{value}" always;\n' for name, value in told.items())
    return f"""# What each file is served with. Inside the server {{ }} of your site, with its root set: include this file.
# Where the site stands in another folder than {base}, change that here. brotli_static needs a module that not every nginx brings.
location {base} {{
    index index.html;
    error_page 404 {base}404.html;
    types {{
{types}
    }}
    default_type application/octet-stream;
    charset utf-8;
    charset_types {texts};
    gzip_static on;
    gzip_vary on;
    # brotli_static on;
    {always.replace(chr(10), chr(10) + "    ")}add_header Cache-Control "{ANEW}" always;
    location ~ "{NAMED_BY_CONTENT.pattern}" {{
        {always.replace(chr(10), chr(10) + "        ")}add_header Cache-Control "{FOREVER}";
    }}
}}
"""
