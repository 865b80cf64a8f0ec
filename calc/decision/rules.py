"""Which answer closes, delays or clouds which way, and why: one row a rule, to be read and added to by whoever knows the
trade. The rows stand in `calc.decision.hazard_rules` (what can hurt somebody) and `calc.decision.work_rules` (what can work).

A rule says: WHEN these answers stand, these WAYS are closed, not known or open only after something, because of this. An
answer that is not known counts as the worst that it can be: a rule that could close a way then makes it 'not known', one
that could delay it makes it 'open after'. Where rules differ, the most careful one holds; no rule opens anything. A rule
for a place names it in its conditions, as those of Colorado do; a new place is first added to `PLACES` in `calc.evidence.limits`.
"""

from calc.decision.hazard_rules import HAZARDS
from calc.decision.rule import EFFECTS, DecisionRule
from calc.decision.work_rules import WORK

RULES = HAZARDS + WORK

__all__ = ["EFFECTS", "RULES", "DecisionRule"]
