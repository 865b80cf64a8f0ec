"""How long a board layout takes: 200 rooms and a house of 60 sheets, in CPython and in both engines of the page; and how
few its sheets are: 300 sets of rooms beside a bound and a search that know the printed rules alone.

    python tests/bench/boards.py [few]     `few` looks at the count of sheets only
"""

import json
import random
import sys
import time
from collections import Counter
from pathlib import Path

TESTS = Path(__file__).parents[1]
sys.path[:0] = [str(TESTS / "engines"), str(TESTS / "calc"), str(TESTS.parent / "scripts"), str(TESTS.parent)]

from test_board_sets import look  # noqa: E402

from ask import in_node  # noqa: E402  (the paths above come first)
from calc import browser  # noqa: E402  (the path has to be set first)

ROOMS = 200
SETS, ROUNDS = 300, 6000
HOUSE = "Living: 24 x 18; Kitchen: 16 x 14; Hall: 20 x 4; Bed 1: 16 x 14; Bed 2: 14 x 12; Bed 3: 13 x 11; Bath: 10 x 8; Garage: 24 x 22; Den: 15 x 14; Attic: 30 x 24"


def few() -> None:
    """Print, by kind of set, how the counts stand: told, proved, above the best known, and proofs that are false."""
    rows: dict[str, Counter] = {}
    for seed in range(SETS):
        kind, sheets, bound, proved, least, best = look(seed, ROUNDS)
        known = min(sheets, best)
        for row in (rows.setdefault(kind, Counter()), rows.setdefault("all", Counter())):
            row["sets"] += 1
            row["sheets"] += sheets
            row["best known"] += known
            row["proved"] += proved
            row["above"] += sheets > known
            row["false proofs"] += proved and best < sheets
            row["bound too high"] += bound > least
            row["known at the bound"] += known == least
    for kind, row in sorted(rows.items()):
        over = 100 * (row["sheets"] / row["best known"] - 1)
        print(f"{kind}: " + ", ".join(f"{name} {count}" for name, count in row.items()) + f"; {over:.2f} % over")


def main() -> None:
    if "few" in sys.argv:
        few()
        return
    chance = random.Random("rooms for the clock")
    asked = []
    for _ in range(ROOMS):
        east, north = chance.randint(8, 26), chance.randint(8, 22)
        a, b = chance.randint(2, east - 3), chance.randint(2, north - 3)
        ell = f"A: E {east}' N {north - b}' W {a}' N {b}' W {east - a}' S {north}'"
        rooms = ell if chance.random() < 0.4 else f"A: {east}' {chance.randint(0, 11)}\" x {north}'"
        asked.append({"rooms": rooms, "joist_spacing_in": chance.choice(("16", "24")), "rated_ceiling": "no"})
    house = {"rooms": HOUSE, "rated_ceiling": "no"}
    answered = json.loads(browser.answer("board", json.dumps(house)))["answer"]["answers"]
    sheets, bound = (one["value"] for one in answered if one["name"] in ("sheets", "lower_bound_sheets"))
    print(f"house: {sheets} sheets, bound {bound}")
    for name, run in (("CPython", _cpython), ("full engine", _engine("full")), ("small engine", _engine("small"))):
        run([asked[0]])
        times = sorted(run(asked))
        whole = run([house, house])[-1]
        print(
            f"{name}: {ROOMS} rooms, p50 {times[ROOMS // 2]:.0f} ms, p95 {times[int(ROOMS * 0.95)]:.0f} ms, worst {times[-1]:.0f} ms; house {whole:.0f} ms"
        )


def _cpython(asked: list[dict[str, str]]) -> list[float]:
    found = []
    for one in asked:
        begun = time.perf_counter()
        browser.answer("board", json.dumps(one))
        found.append((time.perf_counter() - begun) * 1000)
    return found


def _engine(name: str):
    return lambda asked: [float(text) for text in in_node(name, "board", asked, "--time")]


if __name__ == "__main__":
    main()
