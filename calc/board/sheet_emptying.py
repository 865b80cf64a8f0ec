"""Sheets that hold little are emptied: what lay over those stretches is laid anew, over what is left of other sheets.

What no longer takes fewer sheets is then tidied in the same way: less board, then less of butt joints, then fewer pieces.
"""

from calc.board.offcuts import Offcuts, Usable, free_of
from calc.board.piece_search import TASTES, Joints, Piece, Search, least_that_holds
from calc.board.stretches import Stretch

LOOK_STEPS = 80  # of one look [-]
THOUGHTS = (0, 1, 2, 3)
TURNS, TURNS_A_SHEET = 100, 6  # looks after which no more is hoped for [-]
SCALE = 6400  # eightieths squared in a square inch


class Emptying:
    """A layout over `stretches` that is bettered step by step. A piece's `course` is the place of its course."""

    def __init__(
        self, stretches: list[Stretch], pieces: list[Piece], usable: Usable, stock: list[int], widths: list[int]
    ) -> None:
        self.stretches = stretches
        self.usable = usable
        self.stock = stock
        self.widths = widths
        self.steps = 0
        self._turn = 0
        self._places: dict[int, list[int]] = {}
        for at, one in enumerate(stretches):
            if one.at in self._places:
                self._places[one.at].append(at)
            else:
                self._places[one.at] = [at]
        self.over: list[list[Piece]] = [[] for _ in stretches]
        count = max([piece.sheet for piece in pieces]) + 1
        self.sheets: list[list[tuple[int, Piece]]] = [[] for _ in range(count)]  # with the place of its stretch
        self.free: list[list[tuple[int, int, int, int]]] = [[] for _ in range(count)]
        for piece in pieces:
            at = self._stretch_of(piece)
            self.over[at].append(piece)
            self.sheets[piece.sheet].append((at, piece))
        for sheet in range(count):
            self.free[sheet] = self._left(self.sheets[sheet])

    def pieces(self) -> list[Piece]:
        """Return the pieces of the best layout so far."""
        return [piece for some in self.over for piece in some]

    def _stretch_of(self, piece: Piece) -> int:
        for at in self._places[piece.course]:
            if self.stretches[at].start <= piece.start < self.stretches[at].end:
                return at
        raise ValueError("a piece over no stretch")

    def _left(self, sheet: list[tuple[int, Piece]]) -> list[tuple[int, int, int, int]]:
        cut = [(one.offset, one.across, one.end - one.start, one.depth) for _, one in sheet]
        return free_of((0, 0, self.usable.longest, self.usable.widest), cut)

    def run(self, bound: int, limit: int) -> None:
        """Empty sheets until `bound` is met or `limit` steps are taken."""
        until = self.steps + limit
        area = sum([one.area for one in self.stretches])
        turns = TURNS + TURNS_A_SHEET * len(self.sheets)
        while len(self.sheets) > bound and self.steps < until and turns > 0:
            if (len(self.sheets) - 1) * self.usable.whole < area:
                return
            found = self._look(len(self.sheets) - 1) or self._look(len(self.sheets))
            if found is not None and (len(found) < len(self.sheets) or packed(found) > packed(self.sheets)):
                self._take(found)
            self._turn += 1
            turns -= 1

    def better(self, limit: int) -> None:
        """Better the layout at the same count until `limit` steps are taken or little more is to be won."""
        until = self.steps + limit
        turns = TURNS_A_SHEET * len(self.sheets) + TURNS_A_SHEET
        while self.steps < until and turns > 0:
            found = self._look(len(self.sheets))
            if found is not None and self.cost(found) < self.cost(self.sheets):
                self._take(found)
            self._turn += 1
            turns -= 1

    def cost(self, sheets: list[list[tuple[int, Piece]]]) -> tuple[int, int, int, int]:
        """Return what a layout costs: sheets, board bought, depth of butt joints, pieces."""
        board, butts, count = 0, 0, 0
        for some in sheets:
            length = max([one.offset + one.end - one.start for _, one in some])
            width = max([one.across + one.depth for _, one in some])
            board += least_that_holds(self.stock, length) * least_that_holds(self.widths, width)
            count += len(some)
            for at, one in some:
                if one.end != self.stretches[at].end:
                    butts += one.depth
        return len(sheets), board, butts, count

    def _victims(self) -> list[int]:
        """Some sheets to empty: those that hold least first, then others beside them, in turn."""
        ranked = sorted([(used(some), sheet) for sheet, some in enumerate(self.sheets)])
        count, turn = len(ranked), self._turn
        first = turn % count if turn < count else turn * turn % count
        victims = [ranked[first][1]]
        for step in range(1 + turn // count % 3):
            other = ranked[(first + 1 + step * (1 + turn // count)) % count][1]
            if other not in victims:
                victims.append(other)
        return victims

    def _look(self, most: int) -> list[list[tuple[int, Piece]]] | None:
        """Return the sheets of a layout with at most `most` sheets, the stretches of some sheets laid anew; or None."""
        touched = [False] * len(self.stretches)
        for sheet in self._victims():
            for at, _ in self.sheets[sheet]:
                touched[at] = True
        left, offcuts, joints = self.without(touched, self.usable)
        self.steps += 1 + len(self.stretches) // 4
        order = [one for at, one in enumerate(self.stretches) if touched[at]]
        turn = self._turn
        if turn // 2 % 2:
            order = order[::-1]
        search = Search(order, self.usable, offcuts, joints, TASTES[turn % 3])
        found = search.run(most, THOUGHTS[turn % 4], LOOK_STEPS + 2 * len(order)) if most >= len(left) else None
        self.steps += search.steps
        if found is None:
            return None
        new = [some[:] for some in left]
        new += [[] for _ in range(max([piece.sheet for piece in found] + [len(left) - 1]) + 1 - len(left))]
        for piece in found:
            new[piece.sheet].append((self._stretch_of(piece), piece))
        return new

    def without(self, touched: list[bool], usable: Usable) -> tuple[list[list[tuple[int, Piece]]], Offcuts, Joints]:
        """Return the sheets without the pieces over `touched` stretches, what is left of them, and the joints that stay."""
        offcuts = Offcuts(usable)
        joints = Joints()
        left: list[list[tuple[int, Piece]]] = []
        for sheet, some in enumerate(self.sheets):
            stay = [pair for pair in some if not touched[pair[0]]]
            if stay:
                left.append(stay)
                for offset, across, length, depth in self.free[sheet] if len(stay) == len(some) else self._left(stay):
                    offcuts.add(length, depth, len(left) - 1, offset, across)
        offcuts.sheets = len(left)
        for at, one in enumerate(self.stretches):
            if not touched[at]:
                for piece in self.over[at]:
                    if piece.end != one.end:
                        joints.add(one.key, piece.end)
        return left, offcuts, joints

    def laid_anew(self, room: int, stretches: list[Stretch], usable: Usable, turn: int) -> "Emptying | None":
        """Return a layout with a sheet less in which `room` is covered over other `stretches`, None where none is found."""
        touched = [one.course.room == room for one in self.stretches]
        left, offcuts, joints = self.without(touched, usable)
        search = Search(stretches, usable, offcuts, joints, TASTES[turn % 3])
        found = search.run(len(self.sheets) - 1, THOUGHTS[turn % 4], LOOK_STEPS + 2 * len(stretches))
        self.steps += search.steps + 2 + len(self.stretches) // 2
        if found is None:
            return None
        pieces = []
        for number, some in enumerate(left):
            for _, one in some:
                pieces.append(Piece(one.course, one.start, one.end, one.depth, number, one.offset, one.across))
        kept = [one for at, one in enumerate(self.stretches) if not touched[at]]
        other = Emptying(kept + stretches, pieces + found, usable, self.stock, self.widths)
        other.steps, other._turn = self.steps, self._turn
        return other

    def _take(self, sheets: list[list[tuple[int, Piece]]]) -> None:
        self.over = [[] for _ in self.stretches]
        self.sheets = []
        for number, some in enumerate(sheets):
            own = []
            for at, one in some:
                piece = Piece(one.course, one.start, one.end, one.depth, number, one.offset, one.across)
                own.append((at, piece))
                self.over[at].append(piece)
            self.sheets.append(own)
        self.free = [self._left(some) for some in self.sheets]


def used(sheet: list[tuple[int, Piece]]) -> int:
    """Return what is cut from a sheet [sq in]."""
    return sum([(one.end - one.start) * one.depth for _, one in sheet]) // SCALE


def packed(sheets: list[list[tuple[int, Piece]]]) -> int:
    """Return how unevenly sheets are filled: the more, the nearer one of them is to being empty."""
    return sum([used(some) * used(some) for some in sheets])
