"""What a calculator answers, worked out once in a build: many pages and checks ask the same."""

from collections.abc import Mapping
from functools import cache

from calc import catalogue
from calc.core.answer import Answer
from calc.core.fields import Fault


def work_out(name: str, given: Mapping[str, str]) -> tuple[Answer | None, tuple[Fault, ...]]:
    """Return what `calc.catalogue.work_out` does; nobody may change what is returned."""
    return _kept(name, tuple(given.items()))


@cache
def _kept(name: str, given: tuple[tuple[str, str], ...]) -> tuple[Answer | None, tuple[Fault, ...]]:
    return catalogue.work_out(name, dict(given))
