"""One drawing of a plan: its window, where everything falls on the page, and its marks.

All is whole numbers: tenths of a unit of the page.
"""

from calc.core.drawing import Block, Plan, Row
from calc.core.walls import different
from calc.render.ink import (
    EDGE,
    LETTER,
    MIDDLE,
    PAGE_WIDTH,
    ROW,
    TENTHS,
    dot,
    line,
    path,
    rect,
    text,
    tick,
    way_out,
    width_of,
)
from calc.render.rows import placed

HEIGHT = 540 * TENTHS  # the work is parted, or made narrower, before it is taller on the page [tenths]
WIDE = PAGE_WIDTH * TENTHS
OUT = EDGE * TENTHS  # the empty edge of the page [tenths]
PAD = 3 * TENTHS  # round the lettering of a piece [tenths]
AWAY = 9 * TENTHS  # from what lies inside to a dimension line [tenths]
CLEAR = 3 * TENTHS  # from a dimension line to its figure, past the ticks [tenths]
LEVEL = ROW * TENTHS  # from one line of lettering to the next [tenths]
MOST_LEVELS = 3  # rows of lettering outside at a side from which a plan is parted
MOST_CALLS = 12  # pieces told outside from which a plan is parted without a closer look
BEYOND = 16  # so much of a part's size is shown beyond its break [-]
ROUNDS = 12  # margins and scale are settled in so many rounds at most
SIDES = ("below", "above", "left", "right")
ALONG = ("below", "above")  # sides whose rows run from left to right


def size_of(block: Block) -> str:
    """Return a block's size as the cut list has it."""
    return block.length + " x " + block.width


class Part:
    """One drawing: the `own` blocks of a plan, their window, and where everything falls on the page."""

    def __init__(self, plan: Plan, own: list[Block]) -> None:
        self.plan, self.own = plan, own
        self.window = _window(plan, own)
        self.calls: dict[str, list[Block]] = dict([(side, []) for side in SIDES])  # what is told outside, by side
        self.called: list[str] = []  # the names of these
        self.hidden: list[Block] = []  # those whose line would cross another piece
        self.rows = [_clipped(row, plan, own, self.window) for row in plan.rows]
        self.rows = [row for row in self.rows if row.items]
        outside = len(self.rows)
        self.places: list[tuple[list[int], list[int]]] = []
        self.deep = [1] * outside  # levels that each row has room for
        for _ in range(ROUNDS):
            self._scale()
            new = [one for one in own if one.name not in self.called and not self._fitting(one)]
            if len(new) > MOST_CALLS:
                self.hidden = new
                return
            self.called += [one.name for one in new]
            for one in new:
                self._call(one)
            if new:
                self.rows = self._call_rows() + self.rows[-outside:]
                self.deep = [1] * (len(self.rows) - outside) + self.deep[-outside:]
                self._scale()
            self.places = [self._placed(row) for row in self.rows]
            deep = [max(self.deep[at], max(levels) + 1) for at, (levels, _) in enumerate(self.places)]
            if deep == self.deep and not new:
                break
            self.deep = deep

    def _scale(self) -> None:
        """Set margins and scale from the levels that figures take."""
        self.margin = {}
        for side in SIDES:
            deep = 0
            for at, row in enumerate(self.rows):
                if row.side == side:
                    deep += self._depth(row, self.deep[at])
            self.margin[side] = deep + OUT
        x1, y1, x2, y2 = self.window
        across, up = x2 - x1, y2 - y1
        free = WIDE - self.margin["left"] - self.margin["right"]
        self.wide_limits = free * up <= HEIGHT * across
        self.top, self.bottom = (free, across) if self.wide_limits else (HEIGHT, up)
        self.left = self.margin["left"]
        if not self.wide_limits:  # what is narrow stands in the middle
            self.left += (free - across * HEIGHT // up) // 2
        work = up * self.top // self.bottom
        beside = [self._width(row, told) for row in self.rows if row.side not in ALONG for _, _, told in row.items]
        self.spare = max(0, max([0] + beside) - work) // 2 + 1  # what figures beside a low room need above and below it
        self.base = self.margin["above"] + self.spare + work
        self.height = self.base + self.spare + self.margin["below"]

    def _x(self, x: int) -> int:
        return self.left + (x - self.window[0]) * self.top // self.bottom

    def _y(self, y: int) -> int:
        return self.base - (y - self.window[1]) * self.top // self.bottom

    def _depth(self, row: Row, levels: int) -> int:
        if row.kind == "names":
            return PAD + (LETTER * TENTHS if row.side in ALONG else max([width_of(told) for _, _, told in row.items]))
        return (PAD if row.kind == "calls" else AWAY + CLEAR) + levels * LEVEL

    def _place(self, side: str, value: int) -> int:
        return self._x(value) if side in ALONG else self._y(value)

    def _wanted(self, row: Row) -> list[tuple[int, int]]:
        """(place, width) of each figure of a row, counted to the right or upward."""
        found = []
        for start, end, told in row.items:
            here = self._place(row.side, end)
            if row.kind == "spans":
                low, high = (self.window[0], self.window[2]) if row.side in ALONG else (self.window[1], self.window[3])
                here = (self._place(row.side, max(low, start)) + self._place(row.side, min(high, end))) // 2
            found.append((here if row.side in ALONG else -here, self._width(row, told)))
        return found

    def _width(self, row: Row, told: str) -> int:
        """How wide a figure of a row may be; the number of a piece is bold."""
        return width_of(told) + (len(told.split(" ", 1)[0]) * TENTHS if row.kind == "calls" else 0)

    def _placed(self, row: Row) -> tuple[list[int], list[int]]:
        """The level and the start of each figure of a row, counted to the right or upward."""
        if row.kind == "names":
            return [0] * len(row.items), []
        top = self._edge("above") - self.spare
        low, high = (OUT, WIDE - OUT) if row.side in ALONG else (-self._edge("below") - self.spare, -top)
        return placed(self._wanted(row), low, high)

    def _fitting(self, block: Block) -> list[tuple[list[str], bool]]:
        """The first way in which a block holds its lettering: (its lines, turned), or nothing."""
        x1, y1, x2, y2 = block.box
        return _held(block, (x2 - x1) * self.top // self.bottom, (y2 - y1) * self.top // self.bottom)

    def crowded(self) -> bool:
        """Return whether a part would tell better: what has no way out would hold its lettering on a page of its own, or
        too much stands outside."""
        for block in self.hidden:
            x1, y1, x2, y2 = block.box
            across, up = x2 - x1, y2 - y1
            free = WIDE - self.margin["left"] - self.margin["right"]
            top, bottom = (free, across) if free * up <= HEIGHT * across else (HEIGHT, up)
            if _held(block, across * top // bottom, up * top // bottom):
                return True
        outside = [max(self.places[at][0]) for at, row in enumerate(self.rows) if row.kind == "calls"]
        return max([0] + outside) >= MOST_LEVELS

    def halves(self) -> list[list[Block]]:
        """Return the blocks in two halves across the way that keeps the scale small; nothing where that cannot be."""
        axis = 0 if self.wide_limits else 1
        for way in (axis, 1 - axis):
            middles = [one.box[way] + one.box[way + 2] for one in self.own]
            cut = min([one.box[way] for one in self.own]) + max([one.box[way + 2] for one in self.own])
            low = [one for at, one in enumerate(self.own) if middles[at] <= cut]
            high = [one for at, one in enumerate(self.own) if middles[at] > cut]
            if low and high:
                return [low, high]
        return []

    def _call(self, block: Block) -> None:
        """Find the side at which a block is told: the nearest that a line reaches without crossing another piece."""
        x1, y1, x2, y2 = block.box
        x, y = (x1 + x2) // 2, (y1 + y2) // 2
        west, south, east, north = self.window
        ways = [
            (north - y2, 0, "above", (x, y, x, north)), (y1 - south, 1, "below", (x, south, x, y)),
            (east - x2, 2, "right", (x, y, east, y)), (x1 - west, 3, "left", (west, y, x, y)),
        ]  # fmt: skip
        ways.sort(key=lambda one: (one[0], one[1]))
        for _, _, side, way in ways:
            if not [one for one in self.plan.blocks if one.name != block.name and _meet(one.box, way)]:
                self.calls[side].append(block)
                return
        self.hidden.append(block)
        self.calls["right" if x2 - x1 >= y2 - y1 else "above"].append(block)

    def _call_rows(self) -> list[Row]:
        """What is told outside as rows: from where in the block its line starts, to where, and the lettering."""
        found = []
        for side in SIDES:
            items = []
            for block in self.calls[side]:
                x, y = (block.box[0] + block.box[2]) // 2, (block.box[1] + block.box[3]) // 2
                told = block.name + " " + size_of(block)
                items.append((y, x, told) if side in ALONG else (x, y, told))
            if items:
                found.append(Row(side, "calls", tuple(items)))
        return found

    def body(self) -> list[str]:
        """Return the marks of the drawing, from the ground up."""
        plan, found = self.plan, []
        names = [one.name for one in self.own]
        for other in plan.blocks:
            if other.name not in names:
                box = _inside(other.box, self.window)
                if box:
                    found.append(self._ground(box, "off"))
        found.append(path("dim", self._lines(plan.lines)))
        found.append(path("edge center", self._lines(plan.centers)))
        found.append(path("edge", self._lines(plan.joints)))
        found.append(path("edge first", self._lines(plan.first)))
        found.append(path("cut", self._lines(plan.walls)))
        found += [self._lettered(one) for one in self.own if one.name not in self.called]
        reach = dict([(side, self.spare if side in ALONG else 0) for side in SIDES])
        for at, row in enumerate(self.rows):
            found += self._row(row, self.places[at], reach[row.side])
            reach[row.side] += self._depth(row, self.deep[at])
        return found

    def _lines(self, lines: tuple[tuple[int, int, int, int], ...]) -> list[str]:
        clipped = [_inside(one, self.window) for one in lines]
        return [line(self._x(one[0]), self._y(one[1]), self._x(one[2]), self._y(one[3])) for one in clipped if one]

    def _ground(self, box: tuple[int, int, int, int], classes: str) -> str:
        x, y = self._x(box[0]), self._y(box[3])
        return rect(classes, x, y, self._x(box[2]) - x, self._y(box[1]) - y)

    def _lettered(self, block: Block) -> str:
        """A block's lettering on its ground, in the middle of its box."""
        rows, turned = self._fitting(block)[0]
        x1, y1, x2, y2 = block.box
        x, y = (self._x(x1) + self._x(x2)) // 2, (self._y(y1) + self._y(y2)) // 2
        wide, deep = max([width_of(one) for one in rows]) + len(block.name) * TENTHS, len(rows) * LEVEL
        if turned:
            found = rect("ground", x - deep // 2, y - wide // 2, deep, wide)
        else:
            found = rect("ground", x - wide // 2, y - deep // 2, wide, deep)
        for at, told in enumerate(rows):
            foot = -deep // 2 + at * LEVEL + LEVEL // 2 + MIDDLE
            classes, bold = "", ""
            if at == 0 and told == block.name:
                classes = "name"
            elif at == 0:
                classes, bold, told = "named", block.name, told[len(block.name) + 1 :]
            if turned:
                found += text(x + foot, y, "middle", told, True, classes, bold)
            else:
                found += text(x, y + foot, "middle", told, False, classes, bold)
        return '<g class="piece">' + found + "</g>"

    def _sign(self, side: str) -> int:
        """Which way a side lies on the page: 1 to the right and down."""
        return 1 if side in ("below", "right") else -1

    def _edge(self, side: str) -> int:
        """Where the window ends at a side."""
        west, south, east, north = self.window
        if side in ALONG:
            return self._y(south if side == "below" else north)
        return self._x(west if side == "left" else east)

    def _row(self, row: Row, places: tuple[list[int], list[int]], reach: int) -> list[str]:
        """One row of figures outside, `reach` away from the window: lines below, figures over them."""
        along, sign = row.side in ALONG, self._sign(row.side)
        edge = self._edge(row.side) + sign * reach
        if row.kind == "names":
            return self._names(row, edge, sign, along)
        levels, starts = places
        calls = row.kind == "calls"
        level = edge + sign * (PAD if calls else AWAY)
        lines, marks, figures = [], [], []
        wanted = self._wanted(row)
        for at, (start, end, told) in enumerate(row.items):
            out = level + sign * ((0 if calls else CLEAR) + levels[at] * LEVEL)
            middle = starts[at] + wanted[at][1] // 2
            here, middle = (wanted[at][0], middle) if along else (-wanted[at][0], -middle)
            beside = abs(here - middle) > wanted[at][1] // 2
            tip = out + (sign * LEVEL // 2 if beside else 0)
            if calls:
                inside = self._y(start) if along else self._x(start)
                lines.append(way_out(along, here, inside, tip))
                marks.append(dot(here, inside) if along else dot(inside, here))
            else:
                lines += self._span(row, start, end, level)
                if levels[at]:
                    lines.append(way_out(along, here, level, tip))
            foot = out + (LETTER * TENTHS if sign > 0 else (LETTER - ROW) * TENTHS)
            name, rest = (told.split(" ", 1)[0], told.split(" ", 1)[1]) if calls else ("", told)
            classes = "named" if calls else ""
            figure = (
                text(middle, foot, "middle", rest, False, classes, name)
                if along
                else text(foot, middle, "middle", rest, True, classes, name)
            )
            figures.append('<g class="piece">' + figure + "</g>" if calls else figure)
        return [path("dim", lines)] + marks + self._ticks(row, level) + figures

    def _span(self, row: Row, start: int, end: int, level: int) -> list[str]:
        """The line of one dimension, as far as the window shows it."""
        along = row.side in ALONG
        low, high = (self.window[0], self.window[2]) if along else (self.window[1], self.window[3])
        ends = [self._place(row.side, max(low, start)), self._place(row.side, min(high, end))]
        return [line(ends[0], level, ends[1], level) if along else line(level, ends[0], level, ends[1])]

    def _ticks(self, row: Row, level: int) -> list[str]:
        along = row.side in ALONG
        low, high = (self.window[0], self.window[2]) if along else (self.window[1], self.window[3])
        if row.kind == "calls":
            return []
        values = different([one for item in row.items for one in (item[0], item[1]) if low <= one <= high])
        places = [self._place(row.side, one) for one in values]
        return [path("dim tick", [tick(here, level) if along else tick(level, here) for here in places])]

    def _names(self, row: Row, edge: int, sign: int, along: bool) -> list[str]:
        """Numbers at lines: every one where there is room, else every second, fifth or tenth."""
        places = [self._place(row.side, end) for _, end, _ in row.items]
        need = max([width_of(told) for _, _, told in row.items]) + PAD if along else LETTER * TENTHS
        near = min([abs(places[at + 1] - places[at]) for at in range(len(places) - 1)] + [WIDE])
        step = 1
        for step in (1, 2, 5, 10):
            if near * step >= need:
                break
        found = []
        for at, (number_of, _, told) in enumerate(row.items):
            if (step == 2 and number_of % 2) or (step != 2 and (number_of % step == 0 or number_of == 1)):
                if along:
                    foot = edge + (LETTER * TENTHS if sign > 0 else -PAD)
                    found.append(text(places[at], foot, "middle", told))
                else:
                    found.append(text(edge + sign * PAD, places[at] + MIDDLE, "start" if sign > 0 else "end", told))
        return found


def _held(block: Block, across: int, up: int) -> list[tuple[list[str], bool]]:
    """The first way in which lettering goes into `across` x `up` [tenths]: (its lines, turned), or nothing."""
    size = size_of(block)
    for turned in (False, True):
        wide, deep = (up, across) if turned else (across, up)
        two, three = (
            [block.name + " " + block.length, "x " + block.width],
            [block.name, block.length, "x " + block.width],
        )
        for rows in ([block.name, size], three, two, [block.name + " " + size]):
            bold = len(block.name) * TENTHS
            if max([width_of(one) for one in rows]) + bold + 2 * PAD <= wide and len(rows) * LEVEL + PAD <= deep:
                return [(rows, turned)]
    return []


def _window(plan: Plan, own: list[Block]) -> tuple[int, int, int, int]:
    """What a part shows: its blocks, and a little beyond each break."""
    if len(own) == len(plan.blocks):
        return 0, 0, plan.width, plan.height
    x1, y1 = min([one.box[0] for one in own]), min([one.box[1] for one in own])
    x2, y2 = max([one.box[2] for one in own]), max([one.box[3] for one in own])
    more_x, more_y = (x2 - x1) // BEYOND, (y2 - y1) // BEYOND
    return max(0, x1 - more_x), max(0, y1 - more_y), min(plan.width, x2 + more_x), min(plan.height, y2 + more_y)


def _clipped(row: Row, plan: Plan, own: list[Block], window: tuple[int, int, int, int]) -> Row:
    """A row with what belongs to the window alone; figures of joints go with the pieces that end there."""
    at = 0 if row.side in ALONG else 1
    low, high = window[at], window[at + 2]
    if row.kind == "spans":
        return Row(row.side, row.kind, tuple([one for one in row.items if one[0] < high and one[1] > low]))
    if row.kind == "names":
        return Row(row.side, row.kind, tuple([one for one in row.items if one[1] >= low and one[1] <= high]))
    seen = []
    for one in plan.joints:
        if one[at] == one[at + 2]:
            low_end, high_end = one[1 - at], one[3 - at]
            ends = [block.box for block in own if block.box[1 - at] < high_end and block.box[3 - at] > low_end]
            if [1 for box in ends if box[at] <= one[at] and one[at] <= box[at + 2]]:
                seen.append(one[at])
    return Row(
        row.side, row.kind, tuple([one for one in row.items if one[1] >= low and one[1] <= high and one[1] in seen])
    )


def _inside(box: tuple[int, int, int, int], window: tuple[int, int, int, int]) -> tuple[int, int, int, int] | None:
    """A box or line as far as it lies in the window; None where it lies outside."""
    x1, y1, x2, y2 = max(box[0], window[0]), max(box[1], window[1]), min(box[2], window[2]), min(box[3], window[3])
    return (x1, y1, x2, y2) if x1 <= x2 and y1 <= y2 and (x1 < x2 or y1 < y2) else None


def _meet(box: tuple[int, int, int, int], way: tuple[int, int, int, int]) -> bool:
    return box[0] <= way[2] and box[2] >= way[0] and box[1] <= way[3] and box[3] >= way[1]
