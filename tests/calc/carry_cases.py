"""Random ways through a house: what `carry` is asked, and the search that looks for a motion under the same measures."""

import random

import motion

from calc import catalogue

STOCK_FT = (8, 9, 10, 12, 14, 16)
WALL_IN, LIFT_WALL_IN = 5, 12  # as the answer says that it counts them [in]
# a hall and a room so large that another passage governs
OPEN = {
    "door_width_in": 240,
    "hall_width_in": 240,
    "hall_length_ft": 60,
    "hall_beyond_ft": 20,
    "room_along_ft": 60,
    "room_deep_ft": 60,
    "door_corner_in": 240,
}
FINER = (1.0, 0.25, 0.0625)  # degrees; a closer look where the first finds none


def _sheet(pick):
    return {"board_thickness_in": pick.choice(["1/4", "1/2", "5/8"]), "sheet_width_in": pick.choice(["48", "48", "54"])}


def _thick(case):
    return {"1/4": 0.25, "1/2": 0.5, "5/8": 0.625}[case["board_thickness_in"]]


def _door(pick):
    door, along = pick.randint(24, 36), pick.randint(84, 216)
    corner = pick.choice([4, pick.randint(0, along - door)])
    hall = pick.randint(8, 24) * 12
    beyond = pick.choice([0, pick.randint(0, hall - door)])
    return {
        "door_width_in": door, "hall_width_in": pick.randint(30, 66), "hall_length_ft": f"{hall} in", "hall_beyond_ft": f"{beyond} in",
        "room_along_ft": f"{along} in", "room_deep_ft": f"{pick.randint(84, 216)} in", "door_corner_in": corner,
        "door_corner_side": pick.choice(["unknown", "far", "near"]), **_sheet(pick),
    }  # fmt: skip


def _inches(case, name):
    return float(str(case[name]).removesuffix(" in"))


def _door_way(case, length, pick, steps=FINER):
    door, corner, along = case["door_width_in"], case["door_corner_in"], _inches(case, "room_along_ft")
    side = case["door_corner_side"]
    if side == "unknown":
        side = pick.choice(["far", "near"])
    left = corner if side == "near" else along - door - corner
    beyond = _inches(case, "hall_beyond_ft")
    before = _inches(case, "hall_length_ft") - door - beyond
    return any(
        motion.way_through_door(
            length,
            _thick(case),
            door,
            WALL_IN,
            case["hall_width_in"],
            before,
            beyond,
            along,
            _inches(case, "room_deep_ft"),
            left,
            step,
        )
        for step in steps
    )


def _corner(pick):
    case = OPEN | {"turn_from_in": pick.randint(30, 60), "turn_to_in": pick.randint(30, 60)} | _sheet(pick)
    for name in ("turn_from_length_ft", "turn_to_length_ft"):
        if pick.random() < 0.5:
            case[name] = pick.randint(7, 20)
    return case


def _corner_way(case, length, pick, steps=FINER):
    long = [case.get(name, 50) * 12 for name in ("turn_from_length_ft", "turn_to_length_ft")]
    return any(
        motion.way_round(length, _thick(case), case["turn_from_in"], case["turn_to_in"], *long, step / 2)
        for step in steps
    )


def _stair(pick):
    return OPEN | {
        "stair_width_in": pick.choice([30, 36, 50]), "stair_rise_in": pick.choice(["6 1/2", "7 1/4", "7 3/4", "8 1/4", "9"]), "stair_run_in": pick.randint(8, 12),
        "headroom_in": pick.randint(66, 90), "ceiling_height_ft": f"{pick.randint(78, 120)} in",
        "stair_foot_ft": f"{pick.randint(90, 240)} in", "stair_head_ft": f"{pick.randint(90, 240)} in", **_sheet(pick),
    }  # fmt: skip


def _number(text):
    whole, _, part = str(text).partition(" ")
    top, _, bottom = part.partition("/")
    return float(whole) + (float(top) / float(bottom) if part else 0.0)


def _stair_way(case, length, pick, steps=FINER):
    depths = [float(case["sheet_width_in"])]
    if float(case["sheet_width_in"]) < case["stair_width_in"]:
        depths.append(_thick(case))
    return any(
        motion.way_up_stair(
            length, depth, _number(case["stair_rise_in"]), case["stair_run_in"], case["headroom_in"], _inches(case, "ceiling_height_ft"),
            _inches(case, "stair_foot_ft"), _inches(case, "stair_head_ft"), step,
        )
        for step in steps
        for depth in depths
    )  # fmt: skip


def _landing(pick):
    kind = pick.choice(["quarter", "quarter", "half"])
    stair = pick.randint(34, 60) if kind == "quarter" else pick.randint(44, 66)
    case = OPEN | {
        "stair_width_in": stair, "landing_in": pick.choice([stair, pick.randint(34, 66)]), "landing_kind": kind,
        "stair_rise_in": pick.choice(["6 1/2", "7 1/4", "7 3/4", "8 1/4"]), "stair_run_in": pick.randint(9, 12), "headroom_in": pick.randint(78, 96),
        "ceiling_height_ft": "20", "stair_foot_ft": "40", "stair_head_ft": "40", **_sheet(pick),
    }  # fmt: skip
    if pick.random() < 0.5:
        case |= {
            "upper_rise_in": pick.choice(["6 1/2", "7 1/4", "7 3/4", "8 1/4"]),
            "upper_run_in": pick.randint(9, 12),
        }
    if pick.random() < 0.5:
        case["landing_width_in"] = (stair if kind == "quarter" else 2 * stair) + pick.randint(0, 12)
    return case


def _landing_way(case, length, pick, steps=FINER):
    stair = case["stair_width_in"]
    lower = (_number(case["stair_rise_in"]), case["stair_run_in"])
    upper = (_number(case["upper_rise_in"]), case["upper_run_in"]) if "upper_rise_in" in case else lower
    wide = case.get("landing_width_in", stair if case["landing_kind"] == "quarter" else 2 * stair)
    return motion.way_over_landing(
        case["landing_kind"], length, float(case["sheet_width_in"]), _thick(case), stair, case["landing_in"], wide, case["headroom_in"], lower, upper
    )  # fmt: skip


def _lift(pick):
    wide = pick.randint(48, 108)
    case = OPEN | {
        "lift_width_in": wide, "lift_depth_in": pick.randint(54, 150), "lift_height_in": 96, "lift_door_in": pick.randint(28, min(wide, 60)), **_sheet(pick),
    }  # fmt: skip
    if pick.random() < 0.5:
        case["lift_lobby_in"] = pick.randint(48, 140)
    return case


def _lift_way(case, length, pick, steps=FINER):
    door, wide = case["lift_door_in"], case["lift_width_in"]
    return any(
        motion.way_into_lift(
            length,
            _thick(case),
            door,
            LIFT_WALL_IN,
            case.get("lift_lobby_in", 400),
            wide,
            case["lift_depth_in"],
            left,
            step,
        )
        for step in steps
        for left in [pick.uniform(0, wide - door)]
    )


KINDS = {
    "door": (_door, _door_way), "corner": (_corner, _corner_way), "stair": (_stair, _stair_way),
    "landing": (_landing, _landing_way), "lift": (_lift, _lift_way),
}  # fmt: skip


def look(kind, seed, also_refused=False):
    """Ask `carry` about one random case; return (case, stock length allowed or 0, whether the search finds its way, whether
    the search finds one for the next stock length, which was refused; None where not looked for)."""
    pick = random.Random(f"{kind} {seed}")
    make, search = KINDS[kind]
    case = make(pick)
    answer, faults = catalogue.work_out("carry", {name: str(value) for name, value in case.items()})
    assert answer is not None, (case, faults)
    stock = int({line.name: line.value for line in answer.lines}["longest_stock_ft"])
    found = search(case, stock * 12.0, pick) if stock else True
    refused = [one for one in STOCK_FT if one > stock]
    more = search(case, refused[0] * 12.0, pick, FINER[:1]) if also_refused and refused else None
    return case, stock, found, more
