"""A stretch of a course from wall to wall, and where the pieces over it may end."""

from calc.board.courses import Course

ROOMS_APART = 10000  # more than the courses of any room [-]: a course's key is its room times this and its number


class Stretch:
    """One stretch of `course` from `start` to `end`; `joists` are those inside it; `at` its course's place in the list."""

    def __init__(
        self, at: int, course: Course, start: int, end: int, joists: list[int], longest: int, shortest: int
    ) -> None:
        self.at = at
        self.course = course
        self.key = course.room * ROOMS_APART + course.number
        self.start = start
        self.end = end
        self.longest = longest
        self.shortest = shortest
        self.joists = [one for one in joists if start + shortest <= one <= end - shortest]
        self.area = course.area(start, end)
        self.depth = course.depth(start, end)
        self._areas: dict[int, int] = {}
        self._even = len(course.boxes) == 1
        self._depths: dict[int, dict[int, int]] = {}

    def area_from(self, at: int) -> int:
        """Return what of the room lies from `at` to the end [1/6400 sq in]."""
        known = self._areas.get(at)
        if known is None:
            known = self.course.area(at, self.end)
            self._areas[at] = known
        return known

    def depth_of(self, start: int, end: int) -> int:
        """Return how deep a piece from `start` to `end` must be."""
        if self._even:
            return self.depth
        known = self._depths.get(start)
        if known is None:
            known = {}
            self._depths[start] = known
        depth = known.get(end)
        if depth is None:
            depth = self.course.depth(start, end)
            known[end] = depth
        return depth

    def stops(self, taken: list[int]) -> dict[int, list[int]] | None:
        """Return, for each place that leads to the end over joists not in `taken`, the next such places; None where
        no way leads from the start to the end."""
        found: dict[int, list[int]] = {self.end: []}
        places = [self.start] + [one for one in self.joists if one not in taken]
        leading = [self.end]
        for place in places[::-1]:
            ahead = []
            for one in leading:
                length = one - place
                if length > self.longest:
                    continue
                if length >= self.shortest or (place == self.start and one == self.end):
                    ahead.append(one)
            if ahead:
                found[place] = ahead
                leading = [place] + [one for one in leading if one - place <= self.longest]
        return found if self.start in found else None

    def lengths(self) -> list[int]:
        """Return every length that a piece of the stretch can have."""
        found: list[int] = []
        if self.end - self.start <= self.longest:
            found.append(self.end - self.start)
        for one in self.joists:
            for length in (one - self.start, self.end - one, one - self.joists[0]):
                if self.shortest <= length <= self.longest and length not in found:
                    found.append(length)
        return found


def stretches_of(
    courses: list[Course], joists: list[list[int]], longest: int, shortest: int, first: int = 0
) -> list[Stretch]:
    """Return every stretch of `courses`, in their order; `first` is the place of the first course in a longer list."""
    return [
        Stretch(first + at, course, span[0], span[1], joists[course.room], longest, shortest)
        for at, course in enumerate(courses)
        for span in course.spans
    ]
