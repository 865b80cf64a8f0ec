"""`python -m handbook.check`: every fault of the content at once, without building anything; `--firm FILE` looks at that firm's edition."""

import argparse
import sys
from pathlib import Path

from handbook import build
from handbook.content.faults import ContentFaults
from handbook.engines import lower, packing
from handbook.lint import texts


def main(arguments: list[str]) -> int:
    parser = argparse.ArgumentParser(prog="handbook.check")
    parser.add_argument("--firm", type=Path, help="the file that makes the book a firm's")
    firm = parser.parse_args(arguments).firm
    return build.check_firm(firm, build.BUILD / "firm") if firm else check()


def check() -> int:
    faults = []
    looks = (build.read_all, lambda: lower.lower_package(packing.ROOT / "calc", packing.ROOT), texts.every_text)
    for look in looks:
        try:
            look()
        except ContentFaults as found:
            faults += found.faults
    for fault in faults:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
