"""`python -m handbook.check`: every fault of the content at once, without building anything."""

import sys

from handbook import build
from handbook.content.faults import ContentFaults
from handbook.engines import lower, packing
from handbook.lint import texts


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
    sys.exit(check())
