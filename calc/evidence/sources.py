"""The register of published sources: where each rule and figure comes from, and how well we know it.

`known` is one of `HOW_KNOWN`; where a source is mixed it is the best of what is held, and `figure` says what is less. `checked_on` is the day the figure in use here was last compared with
our record of the source (ISO 8601); it is empty where nobody has yet seen the source itself.
"""

from dataclasses import dataclass

from calc.evidence.local import SOURCES as LOCAL
from calc.evidence.published import ROWS
from calc.evidence.published_more import MORE

HOW_KNOWN = (
    ("seen", "Read in the document itself"),
    ("quoted", "Read where another page quotes it"),
    ("memory", "From memory; nobody has checked it on paper yet"),
    ("computed", "Worked out from geometry, physics or a definition"),
    ("practice", "Common practice, no source"),
    ("yours", "Your own figure"),
)


@dataclass(frozen=True)
class Source:
    """One source: `figure` says in a sentence what is taken from it."""

    id: str
    title: str
    publisher: str
    edition: str
    clause: str
    figure: str
    known: str
    checked_on: str


SOURCES = tuple([Source(*row) for row in ROWS + MORE + LOCAL])


def source(source_id: str) -> Source:
    """Return the source with that id; raises KeyError for an id that is not in `SOURCES`."""
    for one in SOURCES:
        if one.id == source_id:
            return one
    raise KeyError(source_id)
