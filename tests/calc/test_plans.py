"""Plans to work from, read off the finished SVG: lettering that can be read, and pieces that agree with the cut list and cover the room."""

import random
import re
import sys
import xml.etree.ElementTree as ElementTree
from fractions import Fraction
from pathlib import Path

import pytest
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import polygonize, unary_union

sys.path.append(str(Path(__file__).resolve().parents[1] / "engines"))
from calc import catalogue
from calc.render import plan, svg
from questions import questions

PHONE = 324  # what a drawing has of a phone's width of 390 [px]
EM = {
    " ": 0.32,
    "'": 0.28,
    '"': 0.46,
    "/": 0.34,
    ".": 0.32,
    ",": 0.32,
    ":": 0.34,
    "m": 0.88,
    "i": 0.28,
    "l": 0.28,
    "f": 0.35,
    "t": 0.4,
}  # of the widest usual font
LENGTH = r"""(?:[\d.]+ mm?|(?:\d+' )?[\d /]+(?:"| in))"""  # as a plan and a cut list write it
SETTINGS = [
    {}, {"joist_direction": "east-west"}, {"joist_spacing_in": "24"}, {"show_in": "metric"}, {"sheet_width_in": "54"},
    {"joist_direction": "east-west", "show_in": "metric", "joist_offset_in": "5"}, {"least_strip_in": "4", "joist_spacing_in": "12"},
]  # fmt: skip


def rooms_of(seed):
    """A room's outline [in] and how it is typed: a rectangle, or one with a corner or a bay taken out."""
    chance = random.Random(f"room {seed}")
    east, north = chance.randint(40, 480), chance.randint(40, 340)
    if seed % 8 == 7:
        east = chance.randint(480, 900)
    a, b = chance.randint(20, east // 2), chance.randint(12, max(12, north // 2))
    if seed % 3:
        corners = [(0, 0), (east, 0), (east, north), (0, north)]
    elif seed % 2:
        corners = [(0, 0), (east, 0), (east, north - b), (east - a, north - b), (east - a, north), (0, north)]
    else:
        c = chance.randint(0, east - a - 12) + 6
        corners = [(0, 0), (c, 0), (c, b), (c + a, b), (c + a, 0), (east, 0), (east, north), (0, north)]
    legs = []
    for (x, y), (to_x, to_y) in zip(corners, [*corners[1:], corners[0]]):
        way = "E" if to_x > x else "W" if to_x < x else "N" if to_y > y else "S"
        legs.append(f'{way} {abs(to_x - x) + abs(to_y - y)}"')
    return corners, "Room: " + " ".join(legs)


def asked(seed):
    return {"rooms": rooms_of(seed)[1], "rated_ceiling": "no", **SETTINGS[seed % len(SETTINGS)]}


def sheets(answer):
    """The SVG elements of all plans of an answer."""
    found = "".join(svg.figure(one, f"p{at}") for at, one in enumerate([answer.drawing, *answer.more_drawings]))
    return [ElementTree.fromstring(one) for one in re.findall(r"<svg.*?</svg>", found, re.DOTALL)]


def width_of(element):
    size = 16 if element.get("class") == "name" else 14
    letters = "".join(element.itertext())
    bold = len(element.findtext("tspan") or "") if element.get("class") != "name" else len(letters)
    return sum(EM.get(one, 0.61) for one in letters) * size + bold


def box_of(element):
    """Where a text stands, whatever way it is turned: (left, top, right, bottom)."""
    x, y, wide = float(element.get("x")), float(element.get("y")), width_of(element)
    left = {"start": 0, "middle": -wide / 2, "end": -wide}[element.get("text-anchor")]
    if element.get("transform"):
        return x - 10.5, y - left - wide, x + 1, y - left
    return x + left, y - 10.5, x + left + wide, y + 1


def meet(one, other, by=0.0):
    return one[0] + by < other[2] and other[0] + by < one[2] and one[1] + by < other[3] and other[1] + by < one[3]


def lines_of(root, weight):
    found = []
    for path in root.iter("path"):
        if path.get("class") == weight:
            for part in re.findall(r"M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)", path.get("d")):
                x1, y1, x2, y2 = map(float, part)
                found.append(((x1, y1), (x2, y2)))
    return found


def pieces_in(root):
    """{number: (size, where its lettering or its dot stands)} of one drawing."""
    found = {}
    dots = {(float(one.get("cx")), float(one.get("cy"))) for one in root.iter("circle")}
    for group in root.iter("g"):
        if group.get("class") == "piece":
            words = " ".join(" ".join("".join(one.itertext()) for one in group.iter("text")).split())
            number, _, size = words.partition(" ")
            assert number not in found, number
            ground = group.find("rect")
            at = None
            if ground is not None:
                x, y, wide, deep = (float(ground.get(one)) for one in ("x", "y", "width", "height"))
                at = (x + wide / 2, y + deep / 2)
            found[number] = (size, at)
    return found, dots


def listed(answer):
    """{number: size} as the cut list has them."""
    rows = [one for item in answer.items for one in re.findall(f"No\\. (\\d+), ({LENGTH} x {LENGTH})", item.text)]
    assert len(rows) == len(dict(rows)), "a piece stands twice in the list"
    return dict(rows)


def answered(seed):
    answer, faults = catalogue.work_out("board", asked(seed))
    if answer is None:
        assert faults[0].field == "sheet_lengths_ft", faults  # no joist where a joint must lie
    return answer


def look_at(root):
    """Nothing that is lettered touches another, leaves the sheet, or is too small on a phone."""
    _, _, wide, deep = (float(one) for one in root.get("viewBox").split())
    assert wide == 360 and 14 * PHONE / wide >= 12
    boxes = [("".join(one.itertext()), box_of(one)) for one in root.iter("text")]
    for at, (told, one) in enumerate(boxes):
        assert one[0] >= -1 and one[1] >= 0 and one[2] <= wide + 1 and one[3] <= deep + 1, (told, one)
        for other_told, other in boxes[at + 1 :]:
            assert not meet(one, other, 0.5), (told, other_told)


SEEDS = range(100)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_plan_of_any_room_can_be_read(seed):
    """No two figures touch, none leaves its sheet, all are large enough, and none is struck through by a joist."""
    answer = answered(seed)
    for root in sheets(answer) if answer else []:
        look_at(root)
        grounds = [one for one in root.iter("rect") if one.get("class") == "ground"]
        inside = [group for group in root.iter("g") if group.get("class") == "piece" and group.find("rect") is not None]
        assert len(grounds) == len(inside)
        order = list(root)
        last = inside and max(
            at
            for at, one in enumerate(order)
            if one.tag == "path" and one.get("class") in ("dim", "edge", "cut") and at < order.index(inside[0])
        )
        for group in inside:
            assert order.index(group) > last
            rect = group.find("rect")
            x, y, long, high = (float(rect.get(one)) for one in ("x", "y", "width", "height"))
            for one in group.iter("text"):
                left, top, right, bottom = box_of(one)
                assert left >= x - 3 and right <= x + long + 3 and top >= y - 3 and bottom <= y + high + 3


def metric(text):
    number, unit = text.split()
    return float(number) * {"mm": 1, "m": 1000}[unit] / 25.4


def inches(text):
    """A length as the plan writes it [in]."""
    if text.endswith(("mm", " m")):
        return metric(text)
    feet, _, rest = text.rpartition("' ") if "'" in text else ("0", "", text)
    return int(feet) * 12 + float(sum(Fraction(one) for one in rest.replace('"', "").replace(" in", "").split()))


@pytest.mark.parametrize("seed", SEEDS)
def test_numbers_and_sizes_of_plan_and_cut_list_agree_and_the_pieces_cover_the_room(seed):
    """The faces between the drawn lines are the pieces: each holds one number, has its size, and together they are the room."""
    answer = answered(seed)
    if answer is None:
        return
    roots, sizes = sheets(answer), listed(answer)
    seen = {}
    corners, _ = rooms_of(seed)
    scale_of = []
    for root in roots:
        numbers, dots = pieces_in(root)
        assert not set(numbers) & set(seen), "a number stands in two parts"
        seen.update({number: size for number, (size, _) in numbers.items()})
        lines = lines_of(root, "cut") + lines_of(root, "edge")
        scale_of.append((root, numbers, dots, lines))
    assert seen == sizes
    room = Polygon(corners)
    if len(roots) == 1:
        root, numbers, dots, lines = scale_of[0]
        xs = [x for line in lines_of(root, "cut") for x, _ in line]
        ys = [y for line in lines_of(root, "cut") for _, y in line]
        scale = max(x for x, _ in corners) / (max(xs) - min(xs))
        lowest, west = max(ys), min(xs)
        snapped = [
            LineString([(round((x - west) * scale), round((lowest - y) * scale)) for x, y in line]) for line in lines
        ]
        longer = unary_union(snapped)
        faces = [one for one in polygonize(longer) if room.buffer(2).contains(one.representative_point())]
        assert sum(one.area for one in faces) == pytest.approx(room.area, rel=0.03)
        places = [(number, at) for number, (_, at) in numbers.items() if at]
        held = []
        for face in faces:
            inside = [
                number
                for number, (x, y) in places
                if face.buffer(1).contains(Point((x - west) * scale, (lowest - y) * scale))
            ]
            if inside:
                assert len(inside) == 1, inside
                length, width = (inches(one) for one in seen[inside[0]].split(" x "))
                x1, y1, x2, y2 = face.bounds
                across, up = (y2 - y1, x2 - x1) if asked(seed).get("joist_direction") else (x2 - x1, y2 - y1)
                assert across == pytest.approx(length, abs=2.5) and up == pytest.approx(width, abs=2.5), inside
                held += inside
            else:
                assert [1 for x, y in dots if face.buffer(1).contains(Point((x - west) * scale, (lowest - y) * scale))]
        assert sorted(held) == sorted(number for number, _ in places)
        assert len(faces) == len(numbers)
    cut = sum(inches(length) * inches(width) for length, width in (size.split(" x ") for size in seen.values()))
    assert cut >= room.area * 0.998
    if len(corners) == 4:
        assert cut == pytest.approx(room.area, rel=0.004)


def test_a_plan_is_parted_and_not_shrunk():
    """A large room comes in parts; each part is drawn larger than the whole would be."""
    answer, _ = catalogue.work_out("board", {"rooms": "Hall: 60' x 30'", "rated_ceiling": "no"})
    parts, left_off = plan._parts(answer.drawing)
    assert left_off == 0
    whole = plan.Part(answer.drawing, list(answer.drawing.blocks))
    assert len(parts) > 1
    assert all(one.top * whole.bottom > whole.top * one.bottom for one in parts)


def test_a_plan_with_more_parts_than_are_drawn_says_how_many_pieces_are_not():
    answer, _ = catalogue.work_out("board", {"rooms": "Hall: 200' x 200'", "rated_ceiling": "no"})
    drawn = plan.drawings(answer.drawing, "hall")
    assert len(drawn) == plan.MOST_PARTS
    told = re.search(r"(\d[\d,]*) pieces more stand in the cut list alone", drawn[-1][2])
    seen = {one for svg, _, _ in drawn for one in re.findall(r"No\. (\d+) ", re.search(r"<desc.*?</desc>", svg)[0])}
    assert int(told[1].replace(",", "")) + len(seen) == len(answer.drawing.blocks)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_plan_of_tiles_can_be_read_and_tells_the_borders(seed):
    """Cut, whole and cut again are the room, both ways, and every wall has its length."""
    corners, rooms = rooms_of(seed)
    chance = random.Random(f"tile {seed}")
    length, width = chance.choice((12, 24, 48)), chance.choice((12, 24))
    answer, faults = catalogue.work_out(
        "panels", {"rooms": rooms, "tile_length_in": str(length), "tile_width_in": str(width)}
    )
    assert answer is not None, faults
    (root,) = sheets(answer)
    look_at(root)
    told = ["".join(one.itertext()) for one in root.iter("text")]
    sides = {abs(a - c) + abs(b - d) for (a, b), (c, d) in zip(corners, [*corners[1:], corners[0]])}
    assert sides <= {inches(one) for one in told if one[0].isdigit() and " of " not in one}
    whole, cut = [one for one in told if " of " in one], [inches(one[4:]) for one in told if one.startswith("cut ")]
    tiles = [int(one.split(" of ")[0]) * inches(one.split(" of ")[1]) for one in whole]
    east, north = max(x for x, _ in corners), max(y for _, y in corners)
    assert sum(tiles) + sum(cut) == pytest.approx(east + north, abs=0.3)
    assert {one.split(" ", 1)[1] for one in told if one.startswith("center ")} and len(
        [one for one in told if one.startswith("center ")]
    ) == 2


@pytest.mark.parametrize("name", ["drying", "humidity"])
def test_a_plot_can_be_read(name):
    """Axes begin at 0, are told with their units, and whatever stands in the plot touches nothing."""
    calculator = catalogue.find(name)
    plots = 0
    for inputs in questions(calculator, 60):
        answer, _ = catalogue.work_out(name, inputs)
        if answer is None:
            continue
        plots += 1
        (root,) = sheets(answer)
        look_at(root)
        told = ["".join(one.itertext()) for one in root.iter("text")]
        assert "0" in told and any("hours" in one for one in told) and "humidity of the room, %" in told
        for curve in answer.drawing.curves:
            assert curve.end_told in told
        assert len({one.heavy for one in answer.drawing.curves} | {one.solid for one in answer.drawing.bars}) == 2
    assert plots >= 10
