"""Rules of what the inside of the van gives the people in it."""

from coachwright.layout.rules_loading import LOADING_RULES
from coachwright.layout.rules_people import PEOPLE_RULES
from coachwright.layout.rules_safety import SAFETY_RULES
from coachwright.layout.rules_seats import SEAT_AND_EXIT_RULES
from coachwright.model.finding import Rule

INTERIOR_RULES: tuple[Rule, ...] = (
    *LOADING_RULES,
    *PEOPLE_RULES,
    *SEAT_AND_EXIT_RULES,
    *SAFETY_RULES,
)
