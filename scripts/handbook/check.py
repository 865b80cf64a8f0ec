"""`python -m handbook.check`: every fault of the content at once, without building anything."""

import sys

from handbook import build
from handbook.content.faults import ContentFaults
from handbook.engines import lower, packing


def main() -> int:
    faults = []
    for look in (build.read_all, lambda: lower.lower_package(packing.ROOT / "calc", packing.ROOT)):
        try:
            look()
        except ContentFaults as found:
            faults += found.faults
    for fault in faults:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
