"""`lidbook …`, or `python -m lidbook …`: runs the generator that lies in `book/`, on the edition in the folder where it is called."""

import os
import sys
from pathlib import Path

BOOK = Path(__file__).resolve().parent / "book"
OLDEST = (3, 11)


def main() -> int:
    """Run the command, and return its exit status."""
    if sys.version_info < OLDEST:
        print(f"Python {OLDEST[0]}.{OLDEST[1]} or newer is needed; this is {sys.version.split()[0]}.")
        return 2
    scripts = str(BOOK / "scripts")
    sys.path.insert(0, scripts)
    # the steps of a build run as commands of their own
    os.environ["PYTHONPATH"] = os.pathsep.join([scripts, *filter(None, [os.environ.get("PYTHONPATH")])])
    from handbook import command

    return command.main(sys.argv[1:], name="lidbook", own=True)


if __name__ == "__main__":
    sys.exit(main())
