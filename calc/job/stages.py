"""The stages that a job is made of, as rows of data, and which of them each way takes, in order.

Minutes are one person's, least and most. No printed rate was found for most of this work: they are common practice, wide on
purpose, and held against printed hours of whole jobs. A firm puts its own pace beside them.
"""

from calc.job.stage import FIRM, HOUSE, INSPECTOR, LABORATORY, ROOM, Stage

STAGES = (
    Stage("survey", "Look and measure", "Look at the house and measure the rooms", HOUSE, (30, 60), "prepare/measure",
        more_pages=("prepare/choose", "prepare/lower", "prepare/permission", "prepare/bath", "prepare/accident", "prepare/recessed", "prepare/house-order")),
    Stage("samples", "Settle asbestos and lead", "An inspector takes the samples; nobody touches the ceiling", HOUSE, (0, 0), "prepare/settle",
        who=INSPECTOR, then="result"),
    Stage("result", "Settle asbestos and lead", "Hold: the report is in hand, for these rooms and each layer", HOUSE, (0, 0), "prepare/settle", who=LABORATORY),
    Stage("patch", "Test patch", "Try a test patch in a corner", HOUSE, (30, 75), "prepare/test-patch", more_pages=("prepare/troweled",)),
    Stage("patch-coat", "Test patch", "Try a test coat in a corner", HOUSE, (30, 75), "prepare/test-patch", then="patch", in_one_go=True,
        buys=("compound",), more_pages=("prepare/troweled",)),
    Stage("carry", "Carry in", "Carry the board in and stack it flat", HOUSE, (15, 30), "prepare/carry", per_100_min=(10, 25),
        crew=2, buys=("board",)),
    Stage("power-off", "Power off", "Turn the power off, prove it dead, take the fixtures down, cap the wires", ROOM, (25, 50), "prepare/power-off",
        buys=("wire-connectors",)),
    Stage("cover", "Cover", "Empty the room, close the air, cover floor and walls, lay the trail", ROOM, (30, 60), "prepare/cover", per_100_min=(25, 50),
        buys=("floor-film", "wall-film", "masking-tape", "duct-tape", "goggles", "coveralls", "cartridges"), more_pages=("prepare/trail", "prepare/reach", "prepare/high")),
    Stage("cover-floor", "Cover", "Cover the floor and what stays, lay the trail", ROOM, (15, 30), "prepare/cover", per_100_min=(10, 20),
        buys=("floor-film", "masking-tape", "duct-tape", "goggles", "coveralls", "cartridges"), more_pages=("prepare/trail", "prepare/reach", "prepare/high")),
    Stage("machine", "Cover", "Set the air machine and prove the suction", ROOM, (20, 45), "prepare/cover", buys=("air-machine",)),

    Stage("wet-scrape", "Scrape", "Mist, wait, scrape, bag, strip by strip", ROOM, (15, 30), "methods/wet-scrape", per_100_min=(30, 90),
        then="board-dry", in_one_go=True, buys=("sprayer", "scraper", "bags")),
    Stage("dry-scrape", "Scrape", "Scrape dry into the vacuum, strip by strip, and bag", ROOM, (15, 30), "methods/dry-scrape", per_100_min=(60, 150),
        buys=("hepa-vacuum", "scraper", "bags")),
    Stage("sand-off", "Sand", "Sand the texture off with the vacuum on", ROOM, (15, 30), "methods/sand", per_100_min=(60, 180),
        buys=("hepa-vacuum", "sanding-discs", "bags")),
    Stage("mend", "Mend and smooth", "Seal torn paper, reset screws, patch", ROOM, (15, 30), "finish/smooth", per_100_min=(10, 35),
        then="joint", in_one_go=True, buys=("compound", "joint-tape", "knives"), more_pages=("finish/patch",)),
    Stage("smooth", "Mend and smooth", "Lay a thin coat where the light shows it", ROOM, (15, 30), "finish/smooth", per_100_min=(15, 45),
        then="coat", in_one_go=True, buys=("compound",), more_pages=("finish/dry",)),
    Stage("fuzz", "Fill and smooth", "Seal the fuzz", ROOM, (10, 20), "methods/sand", per_100_min=(8, 15), then="sealer", in_one_go=True, buys=("sealing-primer",)),

    Stage("seal", "Prime", "Prime the texture so that the compound holds", ROOM, (10, 20), "methods/skim-over", per_100_min=(10, 20),
        then="sealer", in_one_go=True, buys=("sealing-primer",)),
    Stage("fill", "Fill and skim", "Fill the texture", ROOM, (15, 30), "methods/skim-over", per_100_min=(30, 75), then="fill", in_one_go=True, buys=("compound", "knives")),
    Stage("skim", "Fill and skim", "Lay a skim coat", ROOM, (15, 30), "methods/skim-over", per_100_min=(20, 50), then="coat", in_one_go=True, times="coats", buys=("compound",),
        more_pages=("finish/smooth", "finish/dry")),
    Stage("sand-smooth", "Sand and look", "Sand with the vacuum, look along a light, touch up", ROOM, (15, 30), "finish/sand-clean", per_100_min=(15, 40),
        buys=("hepa-vacuum", "sanding-discs")),

    Stage("lines", "Lines", "Find the joists, knock down high spots, snap the lines", ROOM, (20, 45), "prepare/joists", per_100_min=(10, 30)),
    Stage("hang", "Hang the board", "Cut, lift and screw the board", ROOM, (20, 40), "methods/board-over", per_100_min=(60, 130), goes_by="board board_area_sqft",
        crew=2, buys=("board", "board-screws", "board-lift", "screw-gun"), more_pages=("prepare/carry",)),
    Stage("tape-bed", "Tape the joints", "Fill gaps and bed the tape", ROOM, (15, 30), "finish/tape", per_100_min=(20, 45), then="joint", in_one_go=True,
        buys=("compound", "joint-tape", "knives")),
    Stage("tape-second", "Tape the joints", "Second coat on joints and screws", ROOM, (10, 25), "finish/tape", per_100_min=(15, 35), then="joint", in_one_go=True,
        buys=("compound",)),
    Stage("tape-third", "Tape the joints", "Third coat, wider", ROOM, (10, 25), "finish/tape", per_100_min=(15, 35), then="joint", in_one_go=True,
        buys=("compound",), more_pages=("finish/dry",)),
    Stage("edge", "Edges", "Caulk the edge along the walls", ROOM, (15, 30), "finish/edge", per_100_min=(10, 25), goes_by="takeoff perimeter_ft",
        then="caulk", buys=("caulk",), more_pages=("finish/crown",)),
    Stage("furring", "Furring", "Snap lines, screw furring to the joists, level it", ROOM, (30, 60), "methods/panel-over", per_100_min=(60, 130),
        buys=("furring", "furring-screws", "screw-gun"), more_pages=("prepare/joists",)),
    Stage("tiles", "Tiles", "Set the tiles from the start line, cut the borders, trim", ROOM, (30, 60), "methods/panel-over", per_100_min=(90, 200),
        buys=("tiles", "tile-fasteners", "trim")),
    Stage("clean-texture", "Mend and prime", "Dust the texture lightly and mend", ROOM, (10, 20), "methods/leave-and-seal", per_100_min=(8, 25), buys=("compound",)),
    Stage("seal-texture", "Mend and prime", "Prime the texture", ROOM, (10, 20), "methods/leave-and-seal", per_100_min=(10, 25), then="sealer", in_one_go=True,
        buys=("sealing-primer",)),

    Stage("prime", "Paint", "Prime", ROOM, (10, 20), "finish/paint", per_100_min=(12, 30), then="primer", in_one_go=True, buys=("primer",)),
    Stage("paint", "Paint", "Paint a coat", ROOM, (10, 20), "finish/paint", per_100_min=(15, 40), then="paint", in_one_go=True, times="paint_coats", buys=("paint", "roller"),
        more_pages=("finish/texture",)),
    Stage("uncover", "Clear up", "Vacuum, take the film down, wipe, bag", ROOM, (20, 40), "after/clear-up", per_100_min=(15, 35), then="dust", buys=("bags",)),
    Stage("uncover-floor", "Clear up", "Take the covers up and vacuum", ROOM, (10, 20), "after/clear-up", per_100_min=(5, 15)),
    Stage("wipe-again", "Clear up", "Wipe what settled over night", ROOM, (10, 25), "after/clear-up", per_100_min=(5, 10)),
    Stage("refit", "Refit", "Refit what hangs there, power on, test the alarms", ROOM, (25, 60), "finish/refit", buys=("box-extenders",)),

    Stage("stay-off", "Stay off", "Keep out; list licensed contractors and ask three for offers", HOUSE, (60, 180), "prepare/hire", then="offers"),
    Stage("contract", "Contract", "Choose one, in writing, with notice to the offices", HOUSE, (30, 90), "prepare/hire", then="notice"),
    Stage("removal", "Removal", "The contractor removes it; you stay out", HOUSE, (0, 0), "methods/licensed-removal", who=FIRM, then="removal"),
    Stage("clearance", "Removal", "An inspector looks and clears the rooms", HOUSE, (0, 0), "methods/licensed-removal", who=INSPECTOR, then="clearance"),
    Stage("papers", "Papers", "Hold: the clearance result and the papers are in hand", HOUSE, (15, 30), "methods/licensed-removal"),

    Stage("inspect", "Inspect and hand over", "Look under the final light with the customer, mend what shows", HOUSE, (20, 45), "after/inspect"),
    Stage("hand-over", "Inspect and hand over", "Hand over: papers, care, what is still up there", HOUSE, (20, 40), "after/hand-over"),
)  # fmt: skip

_FIRST = ("survey", "samples", "result")
_SMOOTH = ("mend", "smooth", "sand-smooth")
_PAINT = ("prime", "paint")
_AFTER = ("uncover", "wipe-again", "refit", "inspect", "hand-over")
_AFTER_FLOOR = ("uncover-floor", "refit", "inspect", "hand-over")

WAYS_TAKE = (
    ("wet-scrape", _FIRST + ("patch", "power-off", "cover", "wet-scrape") + _SMOOTH + _PAINT + _AFTER),
    ("dry-scrape", _FIRST + ("patch", "power-off", "cover", "machine", "dry-scrape") + _SMOOTH + _PAINT + _AFTER),
    ("sand", _FIRST + ("patch", "power-off", "cover", "machine", "sand-off", "fuzz", "smooth", "sand-smooth") + _PAINT + _AFTER),
    ("skim-over", _FIRST + ("patch-coat", "power-off", "cover", "seal", "fill", "skim", "sand-smooth") + _PAINT + _AFTER),
    (
        "board-over",
        _FIRST + ("carry", "power-off", "cover-floor", "lines", "hang", "tape-bed", "tape-second", "tape-third", "sand-smooth", "prime", "edge", "paint")
        + _AFTER_FLOOR,
    ),
    ("panel-over", _FIRST + ("power-off", "cover-floor", "lines", "furring", "tiles") + _AFTER_FLOOR),
    ("leave-and-seal", _FIRST + ("power-off", "cover", "clean-texture", "seal-texture", "paint") + _AFTER),
    (
        "licensed-removal",
        _FIRST + ("stay-off", "contract", "removal", "clearance", "papers", "power-off", "cover-floor") + _SMOOTH + _PAINT + _AFTER_FLOOR,
    ),
)  # fmt: skip
"""The stages of each way in their order. A stage of the house waits for all rooms before it, and all rooms after it wait for it."""

_BY_ID = dict([(one.id, one) for one in STAGES])


def stages_of(way: str) -> tuple[Stage, ...]:
    """Return the stages of the way [id of `calc.decision.questions.WAYS`] in order. Raises KeyError where there is none."""
    return tuple([_BY_ID[name] for name in dict(WAYS_TAKE)[way]])
