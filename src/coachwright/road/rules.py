"""Every rule of the road discipline."""

from coachwright.road.rules_loads import RULES as LOADS
from coachwright.road.rules_size import RULES as SIZE
from coachwright.road.rules_tyres import RULES as TYRES

RULES = (*TYRES, *SIZE, *LOADS)
