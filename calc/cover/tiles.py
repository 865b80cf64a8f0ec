"""A grid of tiles over a room: balanced borders, whole and cut tiles, and which cuts come two from one tile."""

from dataclasses import dataclass
from fractions import Fraction

from calc.numbers.exact import ceiling, floor
from calc.rooms.rooms import Room


@dataclass(frozen=True)
class TileLayout:
    """`border_x_in` at the west and east walls and `border_y_in` at the south and north [in], 0 where whole tiles fit;
    counts [-] of whole tiles, of cut pieces, of the tiles that these take, and of pieces under half a tile that are
    no border; `narrow` where the room is narrower than a tile; the grid's inner lines [in]."""

    border_x_in: Fraction
    border_y_in: Fraction
    full_tiles: int
    cut_pieces: int
    cut_tiles: int
    slivers: int
    narrow: bool
    lines_x_in: tuple[Fraction, ...]
    lines_y_in: tuple[Fraction, ...]


def border_in(size_in: Fraction, tile_in: Fraction) -> Fraction:
    """Return the width [in] of the two border rows for a room of `size_in` [in] and tiles of `tile_in` [in].

    0 where whole tiles fit; the room itself where it is narrower than a tile; otherwise half of a tile and what is
    left over, which is never under half a tile. Source: a how-to page on ceiling tile.
    """
    whole = floor(size_in / tile_in)
    left_over = size_in - whole * tile_in
    if left_over == 0:
        return Fraction(0)
    if whole == 0:
        return size_in
    return (tile_in + left_over) / 2


def tiles_over(room: Room, tile_x_in: Fraction, tile_y_in: Fraction) -> TileLayout:
    """Return the layout over one room, borders balanced over its greatest length and width.

    Rows and columns between the same corners of the room are alike, so each kind is looked at once.
    """
    rectangles = room.rectangles_in()
    west, south = min([one[0] for one in rectangles]), min([one[1] for one in rectangles])
    east, north = max([one[2] for one in rectangles]), max([one[3] for one in rectangles])
    border_x, border_y = border_in(east - west, tile_x_in), border_in(north - south, tile_y_in)
    lines_x, lines_y = _lines(west, east, tile_x_in, border_x), _lines(south, north, tile_y_in, border_y)
    columns = _kinds(lines_x, [corner[0] for corner in room.outline])
    rows = _kinds(lines_y, [corner[1] for corner in room.outline])
    narrow_x, narrow_y = east - west < tile_x_in, north - south < tile_y_in
    full, slivers = 0, 0
    pieces: list[tuple[Fraction, Fraction, int]] = []
    for left, right, columns_alike in columns:
        for low, high, rows_alike in rows:
            box, covered = _covered(rectangles, left, low, right, high)
            if box is None:
                continue
            alike = columns_alike * rows_alike
            wide, deep = box[2] - box[0], box[3] - box[1]
            if covered == tile_x_in * tile_y_in:
                full += alike
            else:
                pieces.append((wide, deep, alike))
                if (wide * 2 < tile_x_in and not narrow_x) or (deep * 2 < tile_y_in and not narrow_y):
                    slivers += alike
    count = sum([alike for _, _, alike in pieces])
    halves = sum([alike for wide, deep, alike in pieces if wide * 2 <= tile_x_in or deep * 2 <= tile_y_in])
    lengthwise = sum([alike for wide, _, alike in pieces if wide * 2 <= tile_x_in])
    # Pieces of at most half a tile's length pair with their like; the rest of the small ones pair by their width.
    by_width = halves - lengthwise
    cut_tiles = count - halves + ceiling(Fraction(lengthwise, 2)) + ceiling(Fraction(by_width, 2))
    inner_x, inner_y = tuple(lines_x[1:-1]), tuple(lines_y[1:-1])
    return TileLayout(border_x, border_y, full, count, cut_tiles, slivers, narrow_x or narrow_y, inner_x, inner_y)


def _lines(start: Fraction, end: Fraction, tile: Fraction, border: Fraction) -> list[Fraction]:
    """Every line of the grid one way, walls included."""
    lines = [start]
    at = start + (border if border > 0 else tile)
    while at < end:
        lines.append(at)
        at += tile
    lines.append(end)
    return lines


def _kinds(lines: list[Fraction], corners: list[Fraction]) -> list[tuple[Fraction, Fraction, int]]:
    """Return (from, to, how many alike): neighbors of one width with no corner in them or between them are alike."""
    found: list[tuple[Fraction, Fraction, int]] = []
    plain = False
    for at in range(len(lines) - 1):
        low, high = lines[at], lines[at + 1]
        cut = [one for one in corners if low < one < high]
        parted = [one for one in corners if one == low]
        if found and plain and not cut and not parted and found[-1][1] - found[-1][0] == high - low:
            found[-1] = (found[-1][0], found[-1][1], found[-1][2] + 1)
        else:
            found.append((low, high, 1))
        plain = not cut
    return found


def _covered(
    rectangles: list[tuple[Fraction, Fraction, Fraction, Fraction]],
    left: Fraction,
    low: Fraction,
    right: Fraction,
    high: Fraction,
) -> tuple[tuple[Fraction, Fraction, Fraction, Fraction] | None, Fraction]:
    """Return the box of what the room covers of one cell, and its area [sq in]; None where it covers nothing."""
    box = None
    area = Fraction(0)
    for west, south, east, north in rectangles:
        x1, x2, y1, y2 = max(west, left), min(east, right), max(south, low), min(north, high)
        if x1 < x2 and y1 < y2:
            area += (x2 - x1) * (y2 - y1)
            if box is None:
                box = (x1, y1, x2, y2)
            else:
                box = (min(box[0], x1), min(box[1], y1), max(box[2], x2), max(box[3], y2))
    return box, area
