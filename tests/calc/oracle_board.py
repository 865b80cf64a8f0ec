"""The fewest sheets by integer programming: another model of the same rules, solved by HiGHS through scipy.

Each course is a path from wall to wall over joists, its arcs the pieces. Each sheet is a path through its own length,
the arcs the pieces cut from it: first pieces of the whole width, then, from some place on, two lanes of half width.
"""

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_matrix


def fewest(courses, joists, longest, shortest, seconds=60):
    """Return the least number of sheets for `courses` (all of one sheet width), or None where time ran out."""
    arcs = []  # (course, start, end, lanes)
    for at, course in enumerate(courses):
        for start, end in course.spans:
            nodes = sorted({start, end, *(joist for joist in joists if start < joist < end)})
            for i, left in enumerate(nodes):
                for right in nodes[i + 1 :]:
                    length = right - left
                    if length > longest or (length < shortest and (left, right) != (start, end)):
                        continue
                    arcs.append((at, left, right, course.lanes(left, right)))
    lengths = {lanes: sorted({end - start for _, start, end, one in arcs if one == lanes}) for lanes in (1, 2)}
    full_nodes = _sums({0}, lengths[2], longest)
    half_nodes = _sums(set(full_nodes), lengths[1], longest) if lengths[1] else []
    full_arcs = [(p, p + length) for p in full_nodes for length in lengths[2] if p + length <= longest]
    half_arcs = [(p, p + length) for p in half_nodes for length in lengths[1] if p + length <= longest]
    names = (
        [("arc", *arc) for arc in arcs] + [("full", *arc) for arc in full_arcs] + [("half", *arc) for arc in half_arcs]
    )
    names += [("split", p) for p in full_nodes] if half_nodes else []
    names.append(("sheets",))
    index = {name: at for at, name in enumerate(names)}
    rows, lows, highs = [], [], []

    def row(terms, low, high):
        rows.append(terms)
        lows.append(low)
        highs.append(high)

    for at, course in enumerate(courses):
        for start, end in course.spans:
            for node in {start, end, *(joist for joist in joists if start < joist < end)}:
                terms = {}
                for arc in arcs:
                    if arc[0] == at and start <= arc[1] and arc[2] <= end:
                        if arc[1] == node:
                            terms[index["arc", *arc]] = terms.get(index["arc", *arc], 0) + 1
                        if arc[2] == node:
                            terms[index["arc", *arc]] = terms.get(index["arc", *arc], 0) - 1
                balance = 1 if node == start else -1 if node == end else 0
                row(terms, balance, balance)
    for at, course in enumerate(courses):  # neighbors share no joint
        for other in range(at + 1, len(courses)):
            near = courses[other]
            if near.room != course.room or abs(near.number - course.number) != 1:
                continue
            for joist in joists:
                terms = {
                    index["arc", *arc]: 1
                    for arc in arcs
                    if arc[0] in (at, other)
                    and arc[2] == joist
                    and joist not in [end for _, end in courses[arc[0]].spans]
                }
                if len({arc_course for arc_course, *_ in (names[i][1:] for i in terms)}) == 2:
                    row(terms, 0, 1)
    for lanes, kind, cut in ((2, "full", full_arcs), (1, "half", half_arcs)):
        for length in lengths[lanes]:
            terms = {index["arc", *arc]: -1 for arc in arcs if arc[3] == lanes and arc[2] - arc[1] == length}
            for arc in cut:
                if arc[1] - arc[0] == length:
                    terms[index[kind, *arc]] = 1
            row(terms, 0, np.inf)
    for node in full_nodes:  # what comes in goes on, is split into two lanes, or is lost
        terms = {index["sheets",]: 1} if node == 0 else {}
        for arc in full_arcs:
            if arc[1] == node:
                terms[index["full", *arc]] = 1
            if arc[0] == node:
                terms[index["full", *arc]] = -1
        if half_nodes:
            terms[index["split", node]] = -1
        row(terms, 0, np.inf)
    for node in half_nodes:
        terms = {index["split", node]: 2} if node in full_nodes else {}
        for arc in half_arcs:
            if arc[1] == node:
                terms[index["half", *arc]] = 1
            if arc[0] == node:
                terms[index["half", *arc]] = -1
        row(terms, 0, np.inf)
    matrix = lil_matrix((len(rows), len(names)))
    for at, terms in enumerate(rows):
        for column, value in terms.items():
            matrix[at, column] = value
    cost = np.zeros(len(names))
    cost[index["sheets",]] = 1
    found = milp(
        cost, constraints=LinearConstraint(matrix.tocsr(), lows, highs), integrality=np.ones(len(names)),
        bounds=Bounds(0, np.array([1 if name[0] == "arc" else np.inf for name in names])), options={"time_limit": seconds},
    )  # fmt: skip
    return round(found.fun) if found.status == 0 else None


def _sums(start, lengths, longest):
    found = set(start)
    grow = sorted(found)
    while grow:
        node = grow.pop()
        for length in lengths:
            if node + length <= longest and node + length not in found:
                found.add(node + length)
                grow.append(node + length)
    return sorted(found)
