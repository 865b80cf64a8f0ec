"""What is left of sheets that are being cut: rectangles, each cut straight through, and how much of one can still serve.

Everything is a whole number of eightieths of an inch. A rectangle is (length, depth): along the sheet and across it.
"""

ACROSS, ALONG = 0, 1  # the first of the two cuts that part a piece from a rectangle: across it, or along it (a rip)
UNKNOWN = -1  # not worked out yet


class Usable:
    """How much of a rectangle pieces of the given lengths and depths can cover at most."""

    def __init__(self, longest: int, widest: int, lengths: list[int], depths: list[int]) -> None:
        self.longest = longest
        self.widest = widest
        self._along = _sums(lengths, longest)
        self._across = _sums(depths, widest)
        self._lengths = [UNKNOWN] * (longest + 1)
        self._depths = [UNKNOWN] * (widest + 1)
        self.whole = self.area(longest, widest)

    def area(self, length: int, depth: int) -> int:
        """Return the most that can be used of a rectangle `length` by `depth` [1/80 in, area in 1/6400 sq in]."""
        along, across = self._lengths[length], self._depths[depth]
        if along < 0:
            along = self._lengths[length] = _highest(self._along, length)
        if across < 0:
            across = self._depths[depth] = _highest(self._across, depth)
        return along * across


def _sums(sizes: list[int], most: int) -> int:
    """Every sum of `sizes` to `most`, each size as often as one likes, as the bits of a number."""
    fence = (1 << (most + 1)) - 1
    found = 1
    for size in sizes:
        step = size
        while 0 < step <= most:
            found |= (found << step) & fence
            step *= 2
    return found


def _highest(bits: int, most: int) -> int:
    """The highest bit of `bits` that is not above `most`."""
    below = bits & ((1 << (most + 1)) - 1)
    low, high = 0, most
    while low < high:
        middle = (low + high + 1) // 2
        if below >> middle:
            low = middle
        else:
            high = middle - 1
    return low


class Offcuts:
    """The rectangles left of `sheets` sheets, by their size; `supply` is how much of them can still be used."""

    def __init__(self, usable: Usable) -> None:
        self.usable = usable
        self.kinds: dict[tuple[int, int], list[tuple[int, int, int]]] = {}
        self.sheets = 0
        self.supply = 0

    def add(self, length: int, depth: int, sheet: int, offset: int, across: int) -> bool:
        """Keep a rectangle and return True, or leave it out where nothing fits into it."""
        area = self.usable.area(length, depth)
        if area == 0:
            return False
        self.supply += area
        kind = (length, depth)
        if kind in self.kinds:
            self.kinds[kind].append((sheet, offset, across))
        else:
            self.kinds[kind] = [(sheet, offset, across)]
        return True

    def _take_last(self, kind: tuple[int, int]) -> tuple[int, int, int]:
        places = self.kinds[kind]
        place = places.pop()
        if not places:
            del self.kinds[kind]
        self.supply -= self.usable.area(kind[0], kind[1])
        return place

    def cut(
        self, kind: tuple[int, int], begins: bool, length: int, depth: int, first: int
    ) -> tuple[tuple[int, int, int], tuple[object, ...]]:
        """Cut a piece from a rectangle of `kind` (from a new sheet where `begins`): (its place, what undoes it)."""
        if begins:
            place = (self.sheets, 0, 0)
            self.sheets += 1
        else:
            place = self._take_last(kind)
        beside, beyond = rest_of(kind, length, depth, first)
        sheet, offset, across = place
        added_beside = self.add(beside[0], beside[1], sheet, offset, across + depth)
        added_beyond = self.add(beyond[0], beyond[1], sheet, offset + length, across)
        return place, (kind, begins, place, beside if added_beside else None, beyond if added_beyond else None)

    def undo(self, done: tuple[object, ...]) -> None:
        """Take the last cut back."""
        kind, begins, place, beside, beyond = done
        if beyond is not None:
            self._take_last(beyond)  # type: ignore[arg-type]
        if beside is not None:
            self._take_last(beside)  # type: ignore[arg-type]
        if begins:
            self.sheets -= 1
        else:
            self.add(kind[0], kind[1], place[0], place[1], place[2])  # type: ignore[index]


def rest_of(kind: tuple[int, int], length: int, depth: int, first: int) -> tuple[tuple[int, int], tuple[int, int]]:
    """Return what a piece leaves of a rectangle: (length, depth) beside it, and beyond its end."""
    if first == ACROSS:
        return (length, kind[1] - depth), (kind[0] - length, kind[1])
    return (kind[0], kind[1] - depth), (kind[0] - length, depth)


def free_of(whole: tuple[int, int, int, int], cut: list[tuple[int, int, int, int]]) -> list[tuple[int, int, int, int]]:
    """Return the rectangles (offset, across, length, depth) of `whole` that lie free of the pieces `cut` from it."""
    found: list[tuple[int, int, int, int]] = []
    todo = [(whole, cut)]
    while todo:
        block, inside = todo.pop()
        if not inside:
            found.append(block)
            continue
        parted = parting(block, inside)
        if parted is not None:
            todo += parted
    return found


def parting(
    block: tuple[int, int, int, int], inside: list[tuple[int, int, int, int]]
) -> list[tuple[tuple[int, int, int, int], list[tuple[int, int, int, int]]]] | None:
    """Return the two parts of `block` with their pieces after one straight cut, None where one piece fills it.

    The cut that sets the largest empty part free is made first; else the first across, or the first rip, that goes
    through. Raises ValueError where no straight cut goes through: such pieces cannot be snapped.
    """
    offset, across, length, depth = block
    best: tuple[int, int, int] | None = None
    for axis in (ACROSS, ALONG):
        start, size = (offset, length) if axis == ACROSS else (across, depth)
        levels: list[int] = []
        for one in inside:
            for level in (one[axis], one[axis] + one[axis + 2]):
                if start < level < start + size and level not in levels:
                    levels.append(level)
        levels.sort()
        for level in levels:
            if [one for one in inside if one[axis] < level < one[axis] + one[axis + 2]]:
                continue
            before = len([one for one in inside if one[axis] < level])
            empty = 0
            if before == 0:
                empty = (level - start) * (depth if axis == ACROSS else length)
            elif before == len(inside):
                empty = (start + size - level) * (depth if axis == ACROSS else length)
            if best is None or empty > best[0]:
                best = (empty, axis, level)
    if best is None:
        if len(inside) == 1:
            return None
        raise ValueError("no straight cut goes through")
    _, axis, level = best
    low = [one for one in inside if one[axis] < level]
    high = [one for one in inside if one[axis] >= level]
    if axis == ACROSS:
        return [
            ((offset, across, level - offset, depth), low),
            ((level, across, offset + length - level, depth), high),
        ]
    return [((offset, across, length, level - across), low), ((offset, level, length, across + depth - level), high)]
