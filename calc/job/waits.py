"""The waits of a job, as rows of data: what dries, who has to come, and how long that takes."""

from calc.job.stage import Wait

WAITS = (
    Wait("result", "Laboratory result", 0, 0, by="laboratory", call="An accredited inspector, who takes the samples", ahead_days=7),
    Wait("patch", "Test coat dry", 24, 48),
    Wait("softened", "Texture soft", 0, 1),
    Wait("board-dry", "Board dry after wetting", 12, 24),
    Wait("coat", "Coat dry", 0, 0, by="coat"),
    Wait("fill", "Fill coat dry", 0, 0, by="fill"),
    Wait("joint", "Joints dry", 0, 0, by="joint"),
    Wait("primer", "Primer dry", 2, 4),
    Wait("sealer", "Sealing primer dry", 1, 24),
    Wait("paint", "First coat of paint dry", 2, 4),
    Wait("dust", "Dust settled", 12, 24),
    Wait("caulk", "Caulk dry", 2, 24),
    Wait("offers", "Three written offers", 72, 240, call="Three licensed asbestos contractors", ahead_days=14),
    Wait("notice", "Notice to the offices run out", 0, 336, call="The state and city asbestos offices", ahead_days=14),
    Wait("removal", "Removal by the contractor", 24, 120, call="The licensed contractor", ahead_days=14),
    Wait("clearance", "Clearance result", 24, 72, call="An inspector who works for you, not for the contractor", ahead_days=7),
)  # fmt: skip
"""Hours by a label are those of usual primers and paints, from memory: the label in hand governs. Hours of the clock."""


def wait(name: str) -> Wait:
    """Return the wait of that id. Raises KeyError where there is none."""
    for one in WAITS:
        if one.id == name:
            return one
    raise KeyError(name)
