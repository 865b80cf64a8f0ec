"""A search through motions: does a stiff plate get from here to there? It knows walls and poses, and nothing of `calc`.

In a plane the plate is a rectangle and each wall a convex polygon. At one angle the places that the plate's middle may
not take are exact polygons (each wall swept by the plate); what is left falls into parts. Parts of neighboring angles
that share a place are one, so the parts form a graph, and a way is a walk through it. On a landing the plate stands on
edge and tilts along itself: `way_over_landing` looks at poses on a grid, each with the heights that floor and ceiling
leave it.
"""

import math

import numpy as np
import shapely
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components

FAR = 1000.0  # beyond everything [in]
SLIVER = 1e-6  # parts smaller than this are no place to be [sq in]


def box(left, low, right, high):
    return [(left, low), (right, low), (right, high), (left, high)]


def _parts(walls, plate, angles, around):
    """Return (part, its angle's index) for every place that the plate's middle may take."""
    corners = np.array([(x, y) for x in (-plate[0] / 2, plate[0] / 2) for y in (-plate[1] / 2, plate[1] / 2)])
    turned = np.stack(
        [
            corners[:, 0] * np.cos(angles)[:, None] - corners[:, 1] * np.sin(angles)[:, None],
            corners[:, 0] * np.sin(angles)[:, None] + corners[:, 1] * np.cos(angles)[:, None],
        ],
        axis=-1,
    )
    swept = []
    for wall in walls:
        points = (np.array(wall, float)[None, :, None, :] + turned[:, None, :, :]).reshape(len(angles), -1, 2)
        swept.append(shapely.convex_hull(shapely.multipoints(points)))
    taken = shapely.union_all(np.stack(swept, axis=1), axis=1)
    free = shapely.difference(shapely.box(*around), taken)
    parts, index = shapely.get_parts(free, return_index=True)
    solid = shapely.area(parts) > SLIVER
    return parts[solid], index[solid]


def way(walls, plate, start, goal, around, degrees=(0.0, 180.0), step=1.0):
    """Return whether a plate (length, thickness) gets from `start` to `goal` past `walls`, convex polygons.

    `start` is (x, y, degrees); `goal` a box, wholly inside which the plate ends at any angle, or (x, y, degrees).
    `around` bounds the middle of the plate; `degrees` are the angles looked at. A half turn is no turn.
    """
    count = round((degrees[1] - degrees[0]) / step) + 1
    whole = degrees == (0.0, 180.0)
    turns = np.linspace(degrees[0], degrees[1], count)[: -1 if whole else None]
    angles = np.radians(turns)
    parts, index = _parts(walls, plate, angles, around)
    rows, columns = [], []
    for here in range(len(turns)):
        after = here + 1
        if after == len(turns):
            if not whole:
                break
            after = 0
        mine, theirs = np.flatnonzero(index == here), np.flatnonzero(index == after)
        for one in mine:
            for other in theirs:
                if shapely.area(shapely.intersection(parts[one], parts[other])) > SLIVER:
                    rows.append(one)
                    columns.append(other)
    size = len(parts)
    _, label = connected_components(
        coo_matrix((np.ones(len(rows)), (rows, columns)), shape=(size, size)), directed=False
    )

    def at(pose):
        nearest = int(np.argmin(np.abs((turns - pose[2] + 90) % 180 - 90)))
        point = shapely.Point(pose[0], pose[1])
        return {label[one] for one in np.flatnonzero(index == nearest) if parts[one].covers(point)}

    starts = at(start)
    if not starts:
        return False
    if len(goal) == 3:
        return bool(starts & at(goal))
    for one in range(size):
        if label[one] in starts:
            cosine, sine = abs(math.cos(angles[index[one]])), abs(math.sin(angles[index[one]]))
            wide = (plate[0] * cosine + plate[1] * sine) / 2
            high = (plate[0] * sine + plate[1] * cosine) / 2
            if goal[0] + wide <= goal[2] - wide and goal[1] + high <= goal[3] - high:
                inside = shapely.box(goal[0] + wide, goal[1] + high, goal[2] - wide, goal[3] - high)
                if parts[one].intersects(inside):
                    return True
    return False


def way_through_door(length, thick, door, wall, hall, before, beyond, room, deep, to_left, step=1.0):
    """Return whether the plate, on edge, gets from along the hall through the door in its side into the room.

    The opening is x from 0 to `door`. The hall is `hall` wide and reaches from -`before` to `door` + `beyond`; the room
    is `room` along that wall, from -`to_left`, and `deep` square to it.
    """
    right = room - to_left
    top = wall + deep
    walls = [
        box(-FAR, 0, 0, wall), box(door, 0, FAR, wall),
        box(-FAR, -FAR, FAR, -hall), box(-FAR, -FAR, -before, wall), box(door + beyond, -FAR, FAR, wall),
        box(-FAR, top, FAR, FAR), box(-FAR, 0, -to_left, FAR), box(right, 0, FAR, FAR),
    ]  # fmt: skip
    start = ((door + beyond - before) / 2, -hall / 2, 0.0)
    around = (-before, -hall, max(right, door + beyond), top)
    around = (min(around[0], -to_left), *around[1:])
    if before + door + beyond <= length:
        return False
    return way(walls, (length, thick), start, (-to_left, wall, right, top), around, step=step)


def way_round(length, thick, coming, going, coming_long, going_long, step=0.5):
    """Return whether the plate turns a right angle from a hall `coming` wide into one `going` wide, each as long as its
    outer wall is from the corner."""
    end, foot = coming_long, coming - going_long
    if min(coming_long, going_long) <= length:
        return False
    walls = [
        box(-FAR, -FAR, 0, FAR), box(-FAR, coming, FAR, FAR), box(going, -FAR, FAR, 0), box(end, -FAR, FAR, FAR),
        box(-FAR, -FAR, FAR, foot),
    ]  # fmt: skip
    start = (end / 2, coming / 2, 0.0)
    goal = (going / 2, (coming + foot) / 2, 90.0)
    return way(walls, (length, thick), start, goal, (0, foot, end, coming), (0.0, 90.0), step)


def way_into_lift(length, thick, door, wall, lobby, wide, deep, to_left, step=1.0):
    """Return whether the plate, on edge, gets from a lobby `lobby` deep, open to both sides, into the lift's car."""
    return way_through_door(length, thick, door, wall, lobby, 400, 400, wide, deep, to_left, step)


def way_up_stair(length, depth, rise, run, headroom, ceiling, foot, head, step=0.5):
    """Return whether the plate, `depth` square to its length, gets from level at the foot of a long stair onto its slope,
    and from the slope to level at its head: seen from the side. `foot` and `head` are the level floors before and after."""
    slope = rise / run
    degrees = math.degrees(math.atan2(rise, run))
    far = 600.0
    angles = (0.0, degrees)
    fine = degrees / max(1, round(degrees / step))
    meets = (ceiling - headroom - rise) / slope  # where the line of the headroom comes to the lower ceiling
    below = [
        box(-FAR, -FAR, 0, 0), [(0, -FAR), (far, -FAR), (far, rise + slope * far), (0, rise)], box(-FAR, -FAR, -foot, FAR),
        [(meets, ceiling), (-FAR, ceiling), (-FAR, 3 * FAR), (far, 3 * FAR), (far, rise + headroom + slope * far)],
    ]  # fmt: skip
    low = (-foot / 2, depth / 2 + 0.01, 0.0)
    middle = 300.0
    up = rise + slope * middle + headroom / 2
    if foot <= length or not way(
        below, (length, depth), low, (middle, up, degrees), (-foot, 0, far, 2 * FAR), angles, fine
    ):
        return False
    meets = (ceiling - headroom) / slope
    above = [
        box(0, -FAR, FAR, 0), [(0, 0), (0, -2 * FAR), (-far, -2 * FAR), (-far, -slope * far)], box(head, -FAR, FAR, FAR),
        [(-far, headroom - slope * far), (meets, ceiling), (-far, ceiling + FAR)],
        box(-FAR, ceiling, FAR, FAR),
    ]  # fmt: skip
    down = -slope * middle + headroom / 2
    level = (head / 2, depth / 2 + 0.01, 0.0)
    return head > length and way(
        above, (length, depth), level, (-middle, down, degrees), (-far, -FAR, head, ceiling), angles, fine
    )


def way_over_turn(length, high, thick, stair, deep, wide, headroom, behind, ahead=None):
    """Return whether a plate `high` on edge turns from the flight behind into the landing, or on into the flight ahead.

    The flight behind is x from 0 to `stair`, y below 0; the landing reaches to y = `deep` and x = `wide`. `behind` is
    (rise, run), or (-rise, run) where that flight goes up from the landing; `ahead` (rise, run) of one that goes up from
    x = `wide`, or None where a wall stands there. Nosings are the floor; headroom is the same over every step and the landing.
    The plate is looked at on a grid: slant, how far it stands off the newel, how much is behind it, and tilt.
    """
    fall = behind[0] / behind[1]
    climb = ahead[0] / ahead[1] if ahead else 0.0
    slants = np.radians(np.linspace(0, 90, 46))
    tops = max(abs(math.atan(fall)), math.atan(climb))
    tilts = np.unique(np.concatenate([np.linspace(0, tops, 15), [abs(math.atan(fall)), math.atan(climb)]]))
    if behind[0] < 0:
        tilts = -tilts
    stands = np.array([1e-3, 0.5, 2.0, 6.0])
    shares = np.linspace(0, 1, 73)
    slant, stand, share, tilt = np.meshgrid(slants, stands, shares, tilts, indexing="ij")
    cosine, sine = np.cos(slant), np.sin(slant)
    back = np.minimum(0, -high * np.sin(tilt))
    plan = np.maximum(length * np.cos(tilt), length * np.cos(tilt) - high * np.sin(tilt)) - back
    first = -share * plan  # of the tail of the footprint from the newel
    free = np.ones(slant.shape, bool)
    for end in (first, first + plan):
        for off in (stand, stand + thick):
            x, y = stair + end * cosine - off * sine, end * sine + off * cosine
            free &= (x >= -1e-9) & (y <= deep + 1e-9)
            if not ahead:
                free &= x <= wide + 1e-9
    at = np.flatnonzero(free)
    cosine, sine, stand, tilt, first, back = (one.ravel()[at] for one in (cosine, sine, stand, tilt, first, back))
    low, top = np.full(len(at), -np.inf), np.full(len(at), np.inf)
    edge = np.linspace(0, 1, 25)
    outline = [(length * one, 0.0) for one in edge] + [(length * one, high) for one in edge]
    outline += [(end, high * one) for end in (0.0, length) for one in (0.25, 0.5, 0.75)]
    for run, up in outline:
        u = run * np.cos(tilt) - up * np.sin(tilt) - back + first
        z = run * np.sin(tilt) + up * np.cos(tilt)
        for off in (stand, stand + thick):
            x, y = stair + u * cosine - off * sine, u * sine + off * cosine
            floor = np.zeros(len(at))
            lid = np.full(len(at), float(headroom))
            below = y < 0
            step = -behind[0] if behind[0] < 0 else 0.0
            floor[below] = y[below] * fall + step
            lid[below] += y[below] * fall + step
            if ahead:
                beyond = (x >= wide) & ~below
                floor[beyond] = ahead[0] + (x[beyond] - wide) * climb
                lid[beyond] += floor[beyond]
            low, top = np.maximum(low, floor - z), np.minimum(top, lid - z)
    shape = free.shape
    lows, tops_ = np.full(free.size, np.inf), np.full(free.size, -np.inf)
    lows[at], tops_[at] = low, top
    lows, tops_ = lows.reshape(shape), tops_.reshape(shape)
    node = np.arange(free.size).reshape(shape)
    rows, columns = [], []
    for axis in range(4):
        cut = [slice(None)] * 4
        cut[axis] = slice(None, -1)
        one = tuple(cut)
        cut[axis] = slice(1, None)
        other = tuple(cut)
        both = np.maximum(lows[one], lows[other]) <= np.minimum(tops_[one], tops_[other])
        rows.append(node[one][both])
        columns.append(node[other][both])
    rows, columns = np.concatenate(rows), np.concatenate(columns)
    _, label = connected_components(
        coo_matrix((np.ones(len(rows), np.int8), (rows, columns)), shape=(free.size, free.size)), directed=False
    )
    good = lows <= tops_
    label = label.reshape(shape)
    of_fall = int(np.argmin(np.abs(tilts - math.atan(fall))))
    start = label[-1, :, -1, of_fall][good[-1, :, -1, of_fall]]
    if ahead:
        of_climb = int(np.argmin(np.abs(tilts - math.atan(climb))))
        goal = label[0, :, 0, of_climb][good[0, :, 0, of_climb]]
    else:
        level = int(np.argmin(np.abs(tilts)))
        goal = label[0, :, :, level][good[0, :, :, level]]
    return bool(set(start.tolist()) & set(goal.tolist()))


def way_over_landing(kind, length, high, thick, stair, deep, wide, headroom, lower, upper):
    """Return whether the plate, on edge, gets over a 'quarter' or a 'half' landing from the lower flight to the upper."""
    if kind == "quarter":
        return way_over_turn(length, high, thick, stair, deep, wide, headroom, lower, upper)
    # level along the landing between two turns; the second one is seen in a mirror, its flight going up
    return way_over_turn(length, high, thick, stair, deep, wide, headroom, lower) and way_over_turn(
        length, high, thick, stair, deep, wide, headroom, (-upper[0], upper[1])
    )
