"""Property tests: no deadline, as two engines may share the machine; the same examples each time in CI."""

import os

from hypothesis import settings

settings.register_profile("here", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True)
settings.load_profile("ci" if os.environ.get("CI") else "here")

# Whose questions take the small engine longest, the longest first.
SLOWEST = ("panels", "takeoff", "humidity", "sheeting", "board", "skim")


def pytest_addoption(parser):
    parser.addoption(
        "--questions", help="random questions that the engines are asked for each calculator, 700 if not told"
    )


def pytest_configure(config):
    if config.getoption("--questions"):
        os.environ["QUESTIONS"] = config.getoption("--questions")


def pytest_collection_modifyitems(items):
    """The engines' tests take minutes and the rest seconds: they begin, the longest first, and the rest fills up."""
    items.sort(key=_turn)


def _turn(item):
    where = item.nodeid
    if "tests/engines/" not in where:
        return (3, 0)
    engine = 0 if "test_small" in where else 1 if "test_full" in where else 2
    slow = [at for at, name in enumerate(SLOWEST) if f"[{name}]" in where]
    return (engine, slow[0] if slow else len(SLOWEST))
