"""The rules of the outside, together."""

from coachwright.layout.rules_around import AROUND_RULES
from coachwright.layout.rules_rear import REAR_RULES
from coachwright.layout.rules_roof import ROOF_RULES
from coachwright.model.finding import Rule

OUTSIDE_RULES: tuple[Rule, ...] = (*ROOF_RULES, *REAR_RULES, *AROUND_RULES)
