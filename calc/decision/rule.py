"""What a rule of the choice of way is, and the groups of ways that rules speak of."""

from dataclasses import dataclass

STATES = ("open", "open after", "not known", "closed")
"""A way's state, by how careful it is; the place of a state is its rank."""
EFFECTS = ("note",) + STATES[1:]
"""From the least to the most careful. A note changes nothing; it is shown beside a way, whatever its state."""


@dataclass(frozen=True)
class DecisionRule:
    """One rule. `when` are (question, answers) pairs that must all stand; `ways` are ids; `effect` one of `EFFECTS`; `says`
    the reason in a sentence; `action` the ids of what to do about it, with blanks between them, or ''; `caution` an id of
    `calc.evidence.cautions`, or ''; `source` an id of `calc.evidence.sources`; `guards` is True where it keeps somebody from harm, so that the
    proof needs it; `clash` where the answers do not go together; `sure` where it fires only once all its answers are known
    (one that lists 'unknown' among its answers then takes that for an answer); `reviewed_on` and `review_by` are days
    (ISO 8601); `local` where an edition adds it, with words of its own."""

    id: str
    ways: tuple[str, ...]
    when: tuple[tuple[str, tuple[str, ...]], ...]
    effect: str
    says: str
    action: str
    caution: str
    source: str
    guards: bool = False
    clash: bool = False
    sure: bool = False
    reviewed_on: str = "2026-11-26"
    review_by: str = "2027-11-26"
    local: bool = False

    @property
    def actions(self) -> tuple[str, ...]:
        """The ids of what to do about it, in the order written."""
        return tuple(self.action.split())


LICENSED = ("licensed-removal",)
DRY = ("dry-scrape", "sand")
OFF = ("wet-scrape", "dry-scrape", "sand")  # take texture off
LOWER = ("board-over", "panel-over")  # bring the ceiling down
COATS = ("skim-over", "leave-and-seal")  # hold on to the texture itself
COMPOUND = ("skim-over", "board-over")  # end in compound that is sanded
DEEP = OFF + ("skim-over",) + LOWER  # reach the layers under the texture
TOUCH = DEEP + ("leave-and-seal",)  # disturb the texture
WETTER = ("wet-scrape",) + COATS + LOWER  # can be done with little dust
