"""Random passages against the search through motions: `python tests/bench/carry.py [cases a kind]`.

Tells how many stock lengths `carry` allowed, for how many of those the search finds no way (must be none), and how many
it refused though the search finds one (how careful it is).
"""

import sys
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parents[1] / "calc")]

import carry_cases  # noqa: E402


def main(count):
    """Print a row for each kind of passage; return 1 where a sheet was allowed that has no way."""
    wrong = 0
    for kind in carry_cases.KINDS:
        began = time.perf_counter()
        allowed = bad = careful = 0
        for seed in range(count):
            case, stock, found, more = carry_cases.look(kind, seed, also_refused=True)
            allowed += stock > 0
            careful += bool(more)
            if not found:
                bad += 1
                print("no way:", kind, seed, stock, case)
        wrong += bad
        print(
            f"{kind}: {count} cases, {allowed} allowed, {bad} of them without a way, {careful} refused though there is one, {time.perf_counter() - began:.0f} s",
            flush=True,
        )
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 110))
