"""Every rule of the coupled year."""

from coachwright.living.rules_air import AIR_RULES
from coachwright.living.rules_days import DAYS_RULES
from coachwright.living.rules_warmth import WARMTH_RULES
from coachwright.model.finding import Rule

RULES: tuple[Rule, ...] = (*DAYS_RULES, *WARMTH_RULES, *AIR_RULES)
