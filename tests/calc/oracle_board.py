"""Boards from outside: what the printed rules of a layout allow, found and bounded without the calculator.

Everything here starts from the rules as the page prints them and from plain rectangles; nothing is imported from `calc`.

`least_by_lines` is a bound. Look along one line across the joists: what lies on it is a row of stretches, each parted into
pieces that end at walls or on joists; a sheet gives such lines too, as long as the sheet, as many as it is wide. The
cheapest mix, found by linear programming (HiGHS through scipy), is no more than any layout takes: course lines, rips,
cutting order, neighbors' joints and the least piece only take layouts away.

`fewest_found` is a layout, kept to every rule by `faults`: course lines, joints and the order of cutting are moved about
at random, the cut pieces packed with straight cuts from edge to edge, and what takes fewer sheets is kept.

Lengths are whole eightieths of an inch; `u` runs across the joists, `v` along them.
"""

import itertools
import math
import random
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from scipy.optimize import linprog
from scipy.sparse import lil_matrix

INCH = 80
LEAST_PIECE = 24 * INCH  # as the page prints it
WHOLE = 1e-6


@dataclass(frozen=True)
class Ceiling:
    """One room: rectangles (u from, v from, u to, v to) that do not overlap, and the places of its joists on `u`."""

    boxes: tuple
    joists: tuple

    @property
    def depth(self):
        return max(box[3] for box in self.boxes)


def stretches(ceiling, low, high):
    """What a band from `low` to `high` must cover: (from, to) along u, joined where they touch."""
    found = []
    for left, right in sorted((one[0], one[2]) for one in ceiling.boxes if one[1] < high and one[3] > low):
        if found and left <= found[-1][1]:
            found[-1][1] = max(found[-1][1], right)
        else:
            found.append([left, right])
    return [tuple(one) for one in found]


def reach(ceiling, low, high, start, end):
    """How far across a piece must reach: from, to along v, of what lies under it in its band."""
    inside = [one for one in ceiling.boxes if one[1] < high and one[3] > low and one[0] < end and one[2] > start]
    return max(low, min(one[1] for one in inside)), min(high, max(one[3] for one in inside))


def least_by_lines(ceilings, longest, widest):
    """Return (a whole number of sheets that no layout is under, the linear program's own figure)."""
    needs = {}  # kind of stretch -> how many eightieths of v have it
    for ceiling in ceilings:
        levels = sorted({level for one in ceiling.boxes for level in (one[1], one[3])})
        for low, high in itertools.pairwise(levels):
            for start, end in stretches(ceiling, low, high):
                inside = tuple(joist - start for joist in ceiling.joists if start < joist < end)
                needs[end - start, inside] = needs.get((end - start, inside), 0) + high - low
    kinds = sorted(needs)
    lengths = sorted({
        b - a
        for size, joists in kinds
        for a in (0, *joists)
        for b in (*joists, size)
        if a < b and b - a <= longest
    })  # fmt: skip
    nodes = sorted(_sums(lengths, longest))
    columns = {}

    def column(*name):
        return columns.setdefault(name, len(columns))

    rows, sums = [], []
    cut = {length: {} for length in lengths}
    for kind, (size, joists) in enumerate(kinds):
        places = (0, *joists, size)
        balance = {place: {} for place in places}
        for i, a in enumerate(places):
            for b in places[i + 1 :]:
                if b - a <= longest:
                    at = column("part", kind, a, b)
                    balance[a][at] = 1
                    balance[b][at] = -1
                    cut[b - a][at] = -1
        for place in places:
            rows.append(balance[place])
            sums.append(needs[size, joists] * (1 if place == 0 else -1 if place == size else 0))
    flow = {node: {} for node in nodes}
    for node in nodes:
        for length in lengths:
            if node + length <= longest:
                at = column("cut", node, length)
                flow[node][at] = 1
                flow[node + length][at] = -1
                cut[length][at] = 1
    bars = column("bars")
    flow[0][bars] = -1
    for node in nodes:
        if node:
            flow[node][column("lost", node)] = 1
    for one in (*cut.values(), *flow.values()):
        rows.append(one)
        sums.append(0)
    matrix = lil_matrix((len(rows), len(columns)))
    for at, terms in enumerate(rows):
        for name, factor in terms.items():
            matrix[at, name] = factor
    cost = np.zeros(len(columns))
    cost[bars] = 1
    done = linprog(cost, A_eq=matrix.tocsr(), b_eq=sums, method="highs")
    assert done.status == 0, done.message
    figure = done.fun / widest
    return math.ceil(figure - WHOLE), figure


def _sums(lengths, longest):
    found, fresh = {0}, [0]
    while fresh:
        at = fresh.pop()
        for length in lengths:
            if at + length <= longest and at + length not in found:
                found.add(at + length)
                fresh.append(at + length)
    return found


class Finder:
    """Looks for a layout with few sheets by random changes, each kept when it does not make things worse by much."""

    def __init__(self, ceilings, longest, width, least_strip=6 * INCH, seed=0):
        self.ceilings = ceilings
        self.longest, self.width, self.least_strip = longest, width, least_strip
        self.chance = random.Random(seed)
        self.reach = lru_cache(maxsize=200_000)(self._reach)

    def _reach(self, room, low, high, start, end):
        return reach(self.ceilings[room], low, high, start, end)

    def fewest(self, rounds, enough=0):
        """Return (sheets, layout) after at most `rounds` changes, or sooner with `enough` sheets."""
        now = [self._courses(room) for room in range(len(self.ceilings))]
        cost, packed = self._cost(now)
        best, kept = cost, (now, packed)
        heat = 0.5
        for at in range(rounds):
            if best[0] <= enough:
                break
            heat = 0.5 * (1 - at / rounds) + 0.01
            other = self._changed(now)
            if other is None:
                continue
            new_cost, new_packed = self._cost(other)
            worse = (new_cost[0] - cost[0]) + (new_cost[1] - cost[1])
            if worse <= 0 or self.chance.random() < math.exp(-worse / heat * 4):
                now, cost = other, new_cost
                if cost < best:
                    best, kept = cost, (now, new_packed)
        return best[0], kept

    # a layout is, room by room, a list of bands (low, high, joints of each stretch)

    def _courses(self, room):
        for _ in range(400):
            lines = self._lines(self.ceilings[room].depth)
            bands, above = [], set()
            for low, high in itertools.pairwise(lines):
                joints = [self._joints(room, one, above) for one in stretches(self.ceilings[room], low, high)]
                if any(one is None for one in joints):
                    break
                above = {joint for one in joints for joint in one}
                bands.append((low, high, joints))
            else:
                return bands
        raise ValueError("no layout keeps the rules, or none was met")

    def _lines(self, depth):
        count = -(-depth // self.width)
        if count == 1:
            return [0, depth]
        if self.chance.random() < 0.03:
            count += 1
        spare = count * self.width - depth
        cuts = [0] * count
        style = self.chance.random()
        ends = [0, count - 1] if style < 0.8 else list(range(count))
        left = spare
        step = self.chance.choice((1, 1, 5, 10)) * INCH // 2
        for end in self.chance.sample(ends, len(ends))[:-1]:
            take = self.chance.choice((0, left, left // 2, min(left, self.chance.randrange(left // step + 1) * step)))
            cuts[end] += take
            left -= take
        for end in self.chance.sample(ends, len(ends)):
            cuts[end] += left if end == ends[-1] else 0
        if sum(cuts) != spare:
            cuts[self.chance.choice(ends)] += spare - sum(cuts)
        widths = [self.width - cut for cut in cuts]
        if min(widths) < self.least_strip or max(widths) > self.width:
            return self._lines(depth)
        lines = [0]
        for width in widths:
            lines.append(lines[-1] + width)
        return lines

    def _joints(self, room, stretch, banned):
        start, end = stretch
        if end - start <= self.longest and self.chance.random() < 0.6:
            return ()
        free = [one for one in self.ceilings[room].joists if start < one < end and one not in banned]
        for _ in range(12):
            at, joints = start, []
            while end - at > self.longest or (not joints and self.chance.random() < 0.5):
                able = [one for one in free if LEAST_PIECE <= one - at <= self.longest and end - one >= LEAST_PIECE]
                if not able:
                    break
                at = able[-1] if self.chance.random() < 0.3 else self.chance.choice(able)
                joints.append(at)
            if end - at <= self.longest:
                return tuple(joints)
        return None

    def _changed(self, now):
        room = self.chance.randrange(len(now))
        if self.chance.random() < 0.3:
            return now[:room] + [self._courses(room)] + now[room + 1 :]
        band = self.chance.randrange(len(now[room]))
        low, high, joints = now[room][band]
        near = {
            joint
            for other in (band - 1, band + 1)
            if 0 <= other < len(now[room])
            for one in now[room][other][2]
            for joint in one
        }
        which = self.chance.randrange(len(joints))
        fresh = self._joints(room, stretches(self.ceilings[room], low, high)[which], near)
        if fresh is None or fresh == joints[which]:
            return None
        changed = (low, high, [*joints[:which], fresh, *joints[which + 1 :]])
        return now[:room] + [[*now[room][:band], changed, *now[room][band + 1 :]]] + now[room + 1 :]

    def pieces(self, now):
        """Every piece of a layout: (room, low, high, start, end, length, depth)."""
        found = []
        for room, bands in enumerate(now):
            for low, high, joints in bands:
                for (start, end), inside in zip(stretches(self.ceilings[room], low, high), joints):
                    places = (start, *inside, end)
                    for a, b in itertools.pairwise(places):
                        bottom, top = self.reach(room, low, high, a, b)
                        found.append((room, low, high, a, b, b - a, top - bottom))
        return found

    def _cost(self, now):
        pieces = self.pieces(now)
        best = None
        for order in (0, 1, 2, 3):
            if order == 0:
                queue = sorted(range(len(pieces)), key=lambda i: (-pieces[i][6], -pieces[i][5]))
            elif order == 1:
                queue = sorted(range(len(pieces)), key=lambda i: -pieces[i][6] * pieces[i][5])
            else:
                noise = [self.chance.uniform(0.7, 1.3) for _ in pieces]
                queue = sorted(range(len(pieces)), key=lambda i: -pieces[i][6] * pieces[i][5] * noise[i])
            packed = self._pack(pieces, queue, wide_first=order % 2 == 0)
            area = self.longest * self.width
            fill = [0.0] * packed[0]
            for sheet, at in zip(packed[1], range(len(pieces))):
                fill[sheet[0]] += pieces[at][5] * pieces[at][6] / area
            cost = (packed[0], 1 - sum(one * one for one in fill) / packed[0])
            if best is None or cost < best[0]:
                best = (cost, packed)
        return best

    def _pack(self, pieces, queue, wide_first):
        free = []  # (sheet, at along, at across, length, width)
        placed = [None] * len(pieces)
        sheets = 0
        for at in queue:
            length, depth = pieces[at][5], pieces[at][6]
            able = [one for one in free if one[3] >= length and one[4] >= depth]
            if able:
                one = min(
                    able, key=lambda one: (one[3] * one[4] - length * depth, min(one[3] - length, one[4] - depth))
                )
                free.remove(one)
            else:
                one = (sheets, 0, 0, self.longest, self.width)
                sheets += 1
            sheet, along, across, room_along, room_across = one
            placed[at] = (sheet, along, across)
            rest_along, rest_across = room_along - length, room_across - depth
            # the first cut goes across the sheet, or along it; either leaves two rectangles
            cross = rest_along * room_across >= room_along * rest_across if wide_first else rest_along >= rest_across
            if cross:
                parts = (
                    (along + length, across, rest_along, room_across),
                    (along, across + depth, length, rest_across),
                )
            else:
                parts = ((along + length, across, rest_along, depth), (along, across + depth, room_along, rest_across))
            free += [(sheet, *part) for part in parts if part[2] > 0 and part[3] > 0]
        return sheets, placed


def faults(ceilings, bands_of_rooms, pieces, placed, longest, width, least_strip=6 * INCH):
    """Return every rule of the page that a layout breaks, in words; an empty list where it keeps them all.

    `bands_of_rooms`: for each room its course lines in rising order. `pieces`: (room, low, high, start, end, length, depth).
    `placed`: for each piece (sheet, along, across) of its corner in its sheet.
    """
    found = []
    for room, ceiling in enumerate(ceilings):
        lines = bands_of_rooms[room]
        if lines[0] > 0 or lines[-1] < ceiling.depth:
            found.append(f"room {room}: courses do not reach from wall to wall")
        for low, high in itertools.pairwise(lines):
            if high - low > width:
                found.append(f"room {room}: a course is wider than a sheet")
            if high - low < least_strip and len(lines) > 2:
                found.append(f"room {room}: a strip is too narrow")
        joints_before = set()
        for low, high in itertools.pairwise(lines):
            joints = set()
            for start, end in stretches(ceiling, low, high):
                own = sorted(one for one in pieces if one[:3] == (room, low, high) and start <= one[3] < end)
                places = [start] + [one[4] for one in own]
                if [one[3] for one in own] != places[:-1] or places[-1] != end:
                    found.append(f"room {room}: a course is not covered end to end")
                for one in own:
                    bottom, top = reach(ceiling, low, high, one[3], one[4])
                    if one[5] != one[4] - one[3] or one[6] < top - bottom:
                        found.append(f"room {room}: a piece does not cover what lies under it")
                    if one[5] < LEAST_PIECE and (one[3], one[4]) != (start, end):
                        found.append(f"room {room}: a piece is too short")
                    if one[4] != end:
                        joints.add(one[4])
                        if one[4] not in ceiling.joists:
                            found.append(f"room {room}: a joint hangs between joists")
            if joints & joints_before:
                found.append(f"room {room}: neighbors share a joist")
            joints_before = joints
    by_sheet = {}
    for one, (sheet, along, across) in zip(pieces, placed):
        by_sheet.setdefault(sheet, []).append((along, across, along + one[5], across + one[6]))
    for sheet, boxes in by_sheet.items():
        if any(box[0] < 0 or box[1] < 0 or box[2] > longest or box[3] > width for box in boxes):
            found.append(f"sheet {sheet}: a piece lies beyond it")
        for i, one in enumerate(boxes):
            for other in boxes[i + 1 :]:
                if one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]:
                    found.append(f"sheet {sheet}: two pieces overlap")
        if not _straight_cuts(tuple(boxes)):
            found.append(f"sheet {sheet}: it cannot be cut from edge to edge")
    return found


def _straight_cuts(boxes):
    """Whether cuts from edge to edge part these pieces one from another."""
    if len(boxes) <= 1:
        return True
    for axis in (0, 1):
        for cut in sorted({box[axis] for box in boxes} | {box[axis + 2] for box in boxes}):
            before = tuple(box for box in boxes if box[axis + 2] <= cut)
            after = tuple(box for box in boxes if box[axis] >= cut)
            if before and after and len(before) + len(after) == len(boxes):
                return _straight_cuts(before) and _straight_cuts(after)
    return False
