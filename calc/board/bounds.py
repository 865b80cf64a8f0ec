"""Sheets that no layout can be under, by lines of board across the joists.

Look at one line across the joists, somewhere in a room. What lies on it is covered by bars of board, each as long as it
runs on one piece, with ends on joists and at walls. A sheet gives such lines too: over its whole width, each as long as
the sheet. Let `f` give every length a weight so that what fits end to end into one sheet length never weighs more than 1
(a dual feasible function). Then a line of sheet carries a weight of 1 at most, a line of the room at least that of its
cheapest parting, and the sheets are at least the sum over the rooms, line by line, over the width of a sheet.

Nothing here uses where courses lie, how deep pieces are, how they are cut side by side, how short a piece may be or where
the joints of neighbors lie. So the bound holds for every way to choose those, for several rooms together too. A bar may
even end in line with any wall's end that is no farther from the line than a sheet is wide, though no joist lies there.

That each of the functions is dual feasible, with L the length of a sheet and x_i what is cut from one line of it:
- length, x/L: the sum is at most L/L.
- steps k, floor((k+1)x/L)/k, but x/L where (k+1)x/L is whole. Let y_i = (k+1)x_i/L, so that the y sum to at most k+1.
  Where every y is whole the sum is that of length. Else some y is not whole; let w be the sum of the whole ones, v of the
  floors of the rest: v < k+1-w, both whole, so v <= k-w, and w/(k+1) + v/k <= w/k + (k-w)/k = 1.
- ends e <= L/2: 1 above L-e, 0 below e, else x/L. Beside an x above L-e only others below e fit; else the sum is that of
  length at most.
- shares e <= L/2, with m = floor(L/e): floor(x/e)/m below L/2, 1/2 at L/2, 1 - floor((L-x)/e)/m above. Beside an x above
  L/2 the others sum to at most L-x, and their floors to at most floor((L-x)/e). Without one: no x at L/2, and the floors
  sum to at most m; one, and the others sum to at most L/2 and their floors to at most m/2; two, and nothing else fits.
"""

from dataclasses import dataclass
from fractions import Fraction

from calc.board.courses import Frame
from calc.numbers.exact import ceiling

LENGTH, STEPS, ENDS, SHARES = "length", "steps", "ends", "shares"
MOST_STEPS = 12  # functions of steps that are tried [-]
MOST_SIZES = 24  # sizes that functions of ends and shares are tried with [-]


@dataclass(frozen=True)
class Weight:
    """One dual feasible function: its `kind`, and `size`: steps [-], or a length [1/80 in]; 0 for length."""

    kind: str
    size: int

    def most(self, longest: int) -> int:
        """Return what the weight of a whole line of sheet is told in."""
        if self.kind == STEPS:
            return longest * self.size
        return 2 * (longest // self.size) if self.kind == SHARES else longest

    def of(self, length: int, longest: int) -> int:
        """Return the weight of a bar `length` long, in parts of `most`."""
        if self.kind == STEPS:
            steps = (self.size + 1) * length
            return length * self.size if steps % longest == 0 else steps // longest * longest
        if self.kind == ENDS:
            return longest if length > longest - self.size else 0 if length < self.size else length
        if self.kind == SHARES:
            if 2 * length == longest:
                return longest // self.size
            if 2 * length < longest:
                return 2 * (length // self.size)
            return 2 * (longest // self.size) - 2 * ((longest - length) // self.size)
        return length


@dataclass(frozen=True)
class Bound:
    """`sheets` that no layout is under; the `weight` that shows it; `terms`: (depth over which such lines lie [1/80 in],
    their length [1/80 in], least sheets that one such line takes); `widest` sheet [1/80 in]."""

    sheets: int
    weight: Weight
    terms: tuple[tuple[int, int, Fraction], ...]
    widest: int


class _Lines:
    """Lines that are parted alike: `start` to `end` over `places`, `depth` of them in all; `arcs` by place: (from, length)."""

    def __init__(self, places: list[int], depth: int, longest: int) -> None:
        self.places = places
        self.depth = depth
        self.arcs: list[list[tuple[int, int]]] = []
        for at, place in enumerate(places):
            self.arcs.append([(back, place - places[back]) for back in range(at) if place - places[back] <= longest])

    def cheapest(self, weights: dict[int, int]) -> int | None:
        """The least weight that the line can be parted into, None where it cannot be parted at all."""
        best: list[int | None] = [0]
        for arcs in self.arcs[1:]:
            least: int | None = None
            for back, length in arcs:
                before = best[back]
                if before is not None:
                    weight = before + weights[length]
                    if least is None or weight < least:
                        least = weight
            best.append(least)
        return best[-1]


def least_sheets(frames: list[Frame], joists: list[list[int]], longest: int, widest: int) -> Bound:
    """Return the sheets that no layout of all `frames` is under, with what shows it; see the module for the proof.

    `longest` and `widest` are the length and the width of the largest sheet [1/80 in].
    """
    lines = _lines_of(frames, joists, longest, widest)
    lengths: list[int] = []
    for one in lines:
        for arcs in one.arcs:
            for _, length in arcs:
                if length not in lengths:
                    lengths.append(length)
    lengths.sort()
    best: Bound | None = None
    for weight in _weights(lengths, longest):
        table = dict([(length, weight.of(length, longest)) for length in lengths])
        most = weight.most(longest)
        terms = []
        whole = 0
        for one in lines:
            least = one.cheapest(table)
            if least is not None:
                whole += one.depth * least
                terms.append((one.depth, one.places[-1] - one.places[0], Fraction(least, most)))
        value = Fraction(whole, most * widest)
        if best is None or ceiling(value) > best.sheets:
            best = Bound(ceiling(value), weight, tuple(terms), widest)
    assert best is not None
    return best


def _weights(lengths: list[int], longest: int) -> list[Weight]:
    found = [Weight(LENGTH, 0)] + [Weight(STEPS, steps) for steps in range(1, MOST_STEPS + 1)]
    sizes: list[int] = []
    for length in lengths[::-1]:
        for size in (length, longest - length + 1):
            if size > 0 and 2 * size <= longest and size not in sizes:
                sizes.append(size)
    sizes.sort(reverse=True)
    for size in sizes[:MOST_SIZES]:
        found += [Weight(ENDS, size), Weight(SHARES, size)]
    return found


def _lines_of(frames: list[Frame], joists: list[list[int]], longest: int, widest: int) -> list[_Lines]:
    """Every kind of line across the joists, with the depth over which it lies."""
    kinds: list[tuple[list[int], int]] = []
    for at, frame in enumerate(frames):
        levels: list[int] = []
        for one in frame.boxes:
            for level in (one[1], one[3]):
                if level not in levels:
                    levels.append(level)
        levels.sort()
        for band in range(len(levels) - 1):
            low, high = levels[band], levels[band + 1]
            spans: list[tuple[int, int]] = []
            over = [(one[0], one[2]) for one in frame.boxes if one[1] < high and one[3] > low]
            over.sort()
            for start, end in over:
                if spans and start <= spans[-1][1]:
                    spans[-1] = (spans[-1][0], max(spans[-1][1], end))
                else:
                    spans.append((start, end))
            near: list[int] = joists[at][:]
            for one in frame.boxes:
                if one[1] < high + widest and one[3] > low - widest:
                    near += [one[0], one[2]]
            for start, end in spans:
                places = [start]
                inside = [place for place in near if start < place < end] + [end]
                inside.sort()
                for place in inside:
                    if place != places[-1]:
                        places.append(place)
                for number, (known, depth) in enumerate(kinds):
                    if known == places:
                        kinds[number] = (known, depth + high - low)
                        break
                else:
                    kinds.append((places, high - low))
    return [_Lines(places, depth, longest) for places, depth in kinds]
