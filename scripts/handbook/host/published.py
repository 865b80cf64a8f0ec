"""What a site needs to be found and shown elsewhere: its steps as data, and, where its address is known, the list of its pages."""

from pathlib import Path
from urllib.parse import urlsplit
from xml.sax.saxutils import escape

from handbook.host import headers, howto


def publish(site: Path, address: str) -> None:
    """Write what goes with the finished pages; `address` is where the site will stand, '' where nobody said."""
    for page in site.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        page.write_text(howto.with_data(text), encoding="utf-8")
    base = urlsplit(address).path or "/"
    if address:
        (site / "sitemap.xml").write_text(sitemap(site, address), encoding="utf-8")
    if address and base == "/":  # it is looked for at a domain's top alone
        (site / "robots.txt").write_text(f"User-agent: *\nAllow: /\nSitemap: {address}sitemap.xml\n", encoding="utf-8")
    headers.write(site, base)  # last, as it names what stands there


def sitemap(site: Path, address: str) -> str:
    """Return the list of the pages that a visitor may come to: not the lost page, nor what carries somebody's figures."""
    paths = [one for one in sorted(site.rglob("index.html")) if howto.NOINDEX not in one.read_text(encoding="utf-8")]
    names = [one.relative_to(site).as_posix().removesuffix("index.html") for one in paths]
    rows = "".join(f"<url><loc>{escape(address + name)}</loc></url>\n" for name in names)
    return f'<?xml version="1.0" encoding="UTF-8"?>\n<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n{rows}</urlset>\n'
