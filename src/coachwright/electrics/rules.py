"""Every rule of the electrics."""

from coachwright.electrics.rules_bank import BANK_RULES
from coachwright.electrics.rules_charging import CHARGING_RULES
from coachwright.electrics.rules_inverter import INVERTER_RULES
from coachwright.model.finding import Rule

RULES: tuple[Rule, ...] = (*BANK_RULES, *INVERTER_RULES, *CHARGING_RULES)
