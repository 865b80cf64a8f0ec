"""Sets of rooms for the layout of boards, each as the text that a person would type and as plain rectangles."""

import random

from oracle_board import INCH, Ceiling

ORDINARY, CORNERED, LARGE = "two or three ordinary rooms", "one room with corners or a hole", "four to six rooms"


def told(inches):
    """A length as a tape reads it."""
    feet, rest = divmod(inches, 12)
    return f"{feet}' {rest}\""


def a_set(seed):
    """Return (kind, question for `board`, ceilings, longest sheet, joist spacing) of one made-up set."""
    chance = random.Random(seed)
    kind = (ORDINARY, CORNERED, ORDINARY, CORNERED, LARGE)[seed % 5]
    spacing_in = chance.choice((12, 16, 16, 24))
    lengths_ft = chance.choice(((8,), (8, 12), (8, 10, 12), (12,), (10,)))
    east_west = chance.random() < 0.5
    count = {ORDINARY: chance.choice((2, 3)), CORNERED: 1, LARGE: chance.choice((4, 5, 6))}[kind]
    texts, ceilings = [], []
    for at in range(count):
        text, boxes = _cornered(chance) if kind == CORNERED else _ordinary(chance)
        texts.append(f"{chr(65 + at)}: {text}")
        if east_west:
            boxes = [(v1, u1, v2, u2) for u1, v1, u2, v2 in boxes]
        across = max(box[2] for box in boxes)
        ceilings.append(
            Ceiling(
                tuple(tuple(edge * INCH for edge in box) for box in boxes),
                tuple(range(spacing_in * INCH, across * INCH, spacing_in * INCH)),
            )
        )
    question = {
        "rooms": "; ".join(texts),
        "joist_direction": "east-west" if east_west else "north-south",
        "joist_spacing_in": str(spacing_in),
        "sheet_lengths_ft": ", ".join(str(one) for one in lengths_ft),
        "rated_ceiling": "no",
    }
    return kind, question, ceilings, max(lengths_ft) * 12 * INCH


def _ordinary(chance):
    east, north = chance.randrange(60, 260), chance.randrange(60, 220)
    return f"{told(east)} x {told(north)}", [(0, 0, east, north)]


def _cornered(chance):
    east, north = chance.randrange(80, 190), chance.randrange(80, 170)
    if chance.random() < 0.5:  # a corner is missing in the north-east, walked round from the south-west
        notch_east, notch_north = chance.randrange(24, east - 30), chance.randrange(12, north - 30)
        walk = (
            f"E {told(east)} N {told(north - notch_north)} W {told(notch_east)} N {told(notch_north)} "
            f"W {told(east - notch_east)} S {told(north)}"
        )
        return walk, [(0, 0, east, north - notch_north), (0, north - notch_north, east - notch_east, north)]
    wide, deep = chance.randrange(12, 48), chance.randrange(12, 48)
    from_west, from_south = chance.randrange(24, east - wide - 20), chance.randrange(12, north - deep - 12)
    text = f"{told(east)} x {told(north)} less {told(wide)} x {told(deep)} at {told(from_west)} x {told(from_south)}"
    right, top = from_west + wide, from_south + deep
    boxes = [
        (0, 0, east, from_south), (0, top, east, north), (0, from_south, from_west, top), (right, from_south, east, top)
    ]  # fmt: skip
    return text, boxes
