"""The register of sources as an answer shows it: a number, by the place in the register, and a title.

`handbook.engines.lower` fills `ROWS` from `calc.evidence.sources`: each source's id and title, in its order.
"""

ROWS: tuple[tuple[str, str], ...] = ()  # the build fills this line


class Source:
    """One source; what else is known of it stands on the page of sources, which the build writes."""

    def __init__(self, id, title):
        self.id = id
        self.title = title


SOURCES = tuple([Source(*row) for row in ROWS])


def source(source_id):
    """Return the source with that id; raises KeyError for an id that is not in `SOURCES`."""
    for one in SOURCES:
        if one.id == source_id:
            return one
    raise KeyError(source_id)
