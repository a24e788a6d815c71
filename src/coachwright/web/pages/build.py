"""The drawing board: the plan in the middle, figures and the shelf of parts beside it."""

from coachwright.web.parts.plain import words
from coachwright.web.state import Here


def create(here: Here) -> None:
    """Fill the page."""
    words(here.work.build.vehicle.name, tag="h2")
