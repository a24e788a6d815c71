"""The layout's rules, subject by subject."""

from coachwright.layout.rules_core import CORE_RULES
from coachwright.layout.rules_interior import INTERIOR_RULES
from coachwright.layout.rules_outside import OUTSIDE_RULES
from coachwright.layout.rules_zones import ZONE_RULES
from coachwright.model.finding import Rule

RULES: tuple[Rule, ...] = (
    *CORE_RULES,
    *ZONE_RULES,
    *INTERIOR_RULES,
    *OUTSIDE_RULES,
)
