"""How far each covering lowers a ceiling: the one place that every calculator takes it from."""

from fractions import Fraction

DROPS = (
    ("skim", "Skim coat, with its texture", Fraction(1, 4)),
    ("board-1/4", "Board of 1/4 in", Fraction(1, 4)),
    ("board-3/8", "Board of 3/8 in", Fraction(3, 8)),
    ("board-1/2", "Board of 1/2 in", Fraction(1, 2)),
    ("board-5/8", "Board of 5/8 in", Fraction(5, 8)),
    ("furring-1/2", "Furring of 3/4 in and board of 1/2 in", Fraction(5, 4)),
    ("tile-glued", "Glued tile of 1/2 in", Fraction(5, 8)),
    ("tile-furring", "Furring of 3/4 in and tile of 1/2 in", Fraction(5, 4)),
    ("panel-1/4", "Panel of 1/4 in", Fraction(1, 4)),
    ("plank", "Wood plank of 3/8 in", Fraction(3, 8)),
    ("grid", "Hung grid and tile, 3 to 6 in: 6 is taken", Fraction(6)),
)
"""(id, what it is, how far the new face hangs below the old board [in]); texture that stays under board or panel is
pressed flat or adds its own depth, which the person measures. Sums of stock thicknesses; common practice, no source."""

COMBUSTIBLE = ("plank",)
"""Coverings that burn, for which a box must be flush."""


def drop_in(covering: str) -> Fraction:
    """Return how far `covering` lowers the ceiling [in]; raises KeyError for one that is not in `DROPS`."""
    return dict([(name, drop) for name, _, drop in DROPS])[covering]
