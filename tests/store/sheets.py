"""A short sheet as a person writes it, with comments in every place where they can stand."""

from datetime import UTC, datetime, timedelta

from coachwright.store.edits import Put
from coachwright.store.records import Appended, Conflict

SHEET = """\
# For the two of them; see the order of March.
format = 1
name = "Two berths"
customer = "A. Customer"   # by telephone
vehicle = "eu-l3h2-3500"

[brief]
jurisdiction = "eu"
must_have = ["bed", "battery"]

[[brief.travellers]]
name = "driver"
mass = "80 kg"
stature = "1800 mm"
seat = "driver"

[brief.climate]
cold_night = "-5 degC"
hot_day = "33 degC"

[brief.habits]
water = "12 L/day"

[brief.stay]
parked = "3 d"  # at the lake

# ------------------------------------------------ left side

# Measured twice.
[[fittings]]
name = "galley"
part = "galley-900"
at = ["1200 mm", "against left wall", "against floor"]

[[fittings]]
name = "fridge"
part = "fridge-50l"   # the small one
at = ["flush front galley", "flush right galley", "flush bottom galley"]
within = "galley"

# ------------------------------------------------ right side

[[fittings]]
name = "bed"
part = "bed-transverse-1850x1350"
at = [
  "against rear doors",  # as far back as it goes
  "against centreline",
  "against floor 400 mm",
]

[[finishes]]
part = "lining-ply-4"
surface = "walls"
area = "12 m2"

[[finishes]]
part = "floor-vinyl-2"
surface = "floor"
area = "7 m2"
"""

NOW = datetime(2027, 3, 1, 8, 30, tzinfo=UTC)


def later(seconds_s: float) -> datetime:
    return NOW + timedelta(seconds=seconds_s)


def galley_to(x_mm: int) -> tuple[Put, ...]:
    """Return the edit that moves the galley along the van."""
    place = [f"{x_mm} mm", "against left wall", "against floor"]
    return (Put(path=("fittings", "galley", "at"), value=place),)


def kept(answer: Appended | Conflict) -> Appended:
    """Return an answer that must not be a conflict."""
    assert isinstance(answer, Appended), answer
    return answer


def refused(answer: Appended | Conflict) -> Conflict:
    """Return an answer that must be a conflict."""
    assert isinstance(answer, Conflict), answer
    return answer
