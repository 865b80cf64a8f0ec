"""`python -m handbook.site_check ADDRESS-OR-FOLDER`: what is wrong with a published site, a line each, and what to do."""

import argparse
import sys
import time

from handbook.site_check.faults import printed
from handbook.site_check.looks import look, place_of
from handbook.site_check.places import Folder


def main(arguments: list[str]) -> int:
    parser = argparse.ArgumentParser(
        prog="handbook.site_check", description="Look at a published site as a visitor's browser would."
    )
    parser.add_argument(
        "where", help="its address, such as https://ceilings.example/handbook/, or its folder, such as site"
    )
    where = parser.parse_args(arguments).where
    start = time.perf_counter()
    place = place_of(where)
    if isinstance(place, Folder) and not (place.folder / "index.html").is_file():
        print(
            f"{where}: there is no site in such a folder. Give an address that begins with https://, or the folder that was built"
        )
        return 1
    found = look(place)
    for line in printed(found):
        print(line)
    notes = sum(one.is_note for one in found)
    faults = len(found) - notes
    print(
        f"{place.shown}: {place.asked} files asked for in {time.perf_counter() - start:.1f} s, "
        f"{faults or 'no'} {'fault' if faults == 1 else 'faults'}, {notes or 'no'} {'note' if notes == 1 else 'notes'}"
    )
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
