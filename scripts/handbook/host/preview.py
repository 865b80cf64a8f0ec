"""The picture that stands beside a link to the book elsewhere: whose book it is and what it is, drawn as the head of a sheet.

Those who show it take no SVG. The letters are those that come with MkDocs, so the bytes are the same wherever the same
packages are installed.
"""

import re
from pathlib import Path

import mkdocs
from PIL import Image, ImageDraw, ImageFont

NAME = "preview.png"
WIDTH, HEIGHT = 1200, 630  # what those who show links ask for
FONTS = Path(mkdocs.__file__).parent / "themes" / "readthedocs" / "css" / "fonts"
BIG, SMALL, LEAST = 96, 46, 40
EDGE, INSIDE, LINE = 36, 84, 3
FINE = 2  # drawn at twice the size, so that slanting lines are smooth
BUMPS = [(1, 8)] + [
    (4 + 3 * at, 14 if at % 2 == 0 else 8) for at in range(10)
]  # the texture, as in the book's own mark


def write(site: Path, name: str, title: str, address: str, style: str) -> None:
    """Draw the picture into `site`, in the colors of the book's style sheet."""
    colors = dict(reversed(re.findall(r"--(paper|ink|plum): (#[0-9a-f]{6})", style)))  # the first ones, of light paper
    sheet = Image.new("RGB", (WIDTH * FINE, HEIGHT * FINE), colors["paper"])
    pen = ImageDraw.Draw(sheet)
    pen.rectangle(_fine(EDGE, EDGE, WIDTH - EDGE, HEIGHT - EDGE), outline=colors["ink"], width=LINE * FINE)
    pen.line(_fine(EDGE, 500, WIDTH - EDGE, 500), fill=colors["ink"], width=LINE * FINE)
    for points in ([(1, 4), (31, 4)], [(1, 8), (31, 8)], BUMPS):
        scaled = [one for x, y in points for one in (INSIDE + (x - 1) * 7, 100 + (y - 4) * 7)]
        pen.line(_fine(*scaled), fill=colors["plum"], width=2 * LINE * FINE, joint="curve")
    top = 235
    for text, face, size, color in (
        (name, "lato-bold", BIG, colors["ink"]),
        (title, "lato-normal", SMALL, colors["ink"]),
    ):
        if drawable(text):
            _write(pen, text, face, size, top, color)
            top += size + 50
    _write(pen, address.removeprefix("https://").rstrip("/"), "lato-normal", LEAST, 522, colors["plum"])
    sheet.resize((WIDTH, HEIGHT), Image.Resampling.LANCZOS).quantize(64, dither=Image.Dither.NONE).save(
        site / NAME, optimize=True
    )


def drawable(text: str) -> bool:
    """Return whether the letters at hand can write `text`; a name with holes would be another name."""
    font = ImageFont.truetype(FONTS / "lato-bold.woff", SMALL)
    hole = bytes(font.getmask("\uffff"))
    return all(bytes(font.getmask(mark)) != hole for mark in text if mark != " ")


def _write(pen: ImageDraw.ImageDraw, text: str, face: str, size: int, top: int, color: str) -> None:
    """Write one line as large as `size` and as small as it has to be."""
    room = (WIDTH - 2 * INSIDE) * FINE
    font = ImageFont.truetype(FONTS / f"{face}.woff", size * FINE)
    length = font.getlength(text)
    if length > room:
        font = ImageFont.truetype(FONTS / f"{face}.woff", int(size * FINE * room / length))
    pen.text((INSIDE * FINE, (top + size) * FINE), text, font=font, fill=color, anchor="ls")


def _fine(*places: float) -> list[float]:
    return [one * FINE for one in places]
