"""The customer's side."""

import datetime
from enum import StrEnum
from typing import Literal

from pydantic import Field

from coachwright.model.money import MoneyText
from coachwright.model.part import ID_PATTERN
from coachwright.model.record import (
    Days,
    EnergyUse,
    Fraction,
    Length,
    LengthPos,
    Mass,
    MassPos,
    PowerPos,
    Record,
    Temperature,
    Time,
    TimeUse,
    WaterUse,
)

CLOCK_PATTERN = "^([01][0-9]|2[0-3]):[0-5][0-9]$"
"""A time of the day, such as ``"22:30"``."""


MonthName = Literal[
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
]


def _not_given(value: object) -> bool:
    """Say whether a field can stay out of what is written and of the digest."""
    return not value


class Jurisdiction(StrEnum):
    """Whose rules apply."""

    US = "us"
    EU = "eu"
    UK = "uk"


class Traveller(Record):
    """One person who travels."""

    name: str = Field(pattern=ID_PATTERN)
    mass_kg: MassPos
    stature_mm: LengthPos
    seat: str = ""
    """Factory seat, or ``fitting.place``; empty where no belted seat is wanted."""
    luggage_kg: Mass = 0.0
    berth_wanted: bool = True
    child: bool = False
    sitting_height_mm: LengthPos | None = None
    """Seat to crown, where it was measured."""
    shoulder_breadth_mm: LengthPos | None = None
    """Over both upper arms, where it was measured."""
    buttock_knee_mm: LengthPos | None = None
    """Back of the seat to the front of the knee, where it was measured."""


class Climate(Record):
    """Where and when: design weather until a site is chosen."""

    cold_night_degc: Temperature
    hot_day_degc: Temperature
    summer_sun_h_per_day: TimeUse | None = None
    """Peak-sun hours on a flat roof, the poorest month of the warm half-year that counts."""
    winter_sun_h_per_day: TimeUse | None = None
    """Peak-sun hours on a flat roof, the poorest month of the cold half-year that counts."""
    sites: tuple[str, ...] = ()
    heating_grade: Literal[1, 2, 3] | None = Field(default=None, exclude_if=_not_given)
    """Heating grade wanted, of the standard for motor caravans."""


class Stay(Record):
    """How they travel."""

    parked_d: Days
    """Days parked between drives."""
    drive_h_per_day: TimeUse = 0.0
    """Driving on a day between stays."""
    hookup_frac: Fraction = 0.0
    """Share of the nights with shore power."""
    months: tuple[MonthName, ...] = Field(default=(), exclude_if=_not_given)
    """Months in which they travel; all of them where none is given."""


class Device(Record):
    """Something the travellers bring that draws power."""

    name: str
    draw_w: PowerPos
    use_h_per_day: TimeUse
    count: int = Field(default=1, ge=1)
    supply: Literal["dc", "inverter"] = "dc"


class Habits(Record):
    """What a day looks like."""

    water_l_per_day: WaterUse
    """Fresh water for each person."""
    hot_water_l_per_day: WaterUse = 0.0
    """Of that, warm water at the tap for each person."""
    cooking_wh_per_day: EnergyUse = 0.0
    """Heat into pots, for all."""
    day_degc: Temperature = 20.0
    night_degc: Temperature = 16.0
    most_degc: Temperature = 26.0
    """Warmest that is still comfortable."""
    devices: tuple[Device, ...] = ()
    wet_kit_kg: MassPos | None = Field(default=None, exclude_if=_not_given)
    """Water in the wet kit that comes in on one day, where there is a place to dry it."""
    dry_within_h: Time | None = Field(default=None, exclude_if=_not_given)
    """Time in which it is wanted dry."""
    asleep_from: str = Field(default="22:30", pattern=CLOCK_PATTERN)
    """When they go to sleep, by the clock."""
    asleep_h_per_day: TimeUse = 8.0
    away_from: str = Field(default="10:00", pattern=CLOCK_PATTERN)
    """When nobody is in the vehicle, by the clock."""
    away_h_per_day: TimeUse = 0.0


class Cargo(Record):
    """Something heavy that travels along."""

    name: str
    mass_kg: MassPos
    centre_mm: tuple[Length, Length, Length]
    """Centre of mass in the vehicle's axes."""
    tolerance_frac: Fraction = 0.1


class Brief(Record):
    """What the customer wants."""

    jurisdiction: Jurisdiction
    units: Literal["metric", "us"] = "metric"
    travellers: tuple[Traveller, ...] = Field(min_length=1)
    climate: Climate
    stay: Stay
    habits: Habits
    cargo: tuple[Cargo, ...] = ()
    must_have: tuple[str, ...] = ()
    """Facets that the build must have, such as ``"air_conditioner"``."""
    independence_wanted_d: Days | None = None
    reserve_frac: Fraction = 0.2
    """Share of the battery that is never used."""
    budget: MoneyText | None = None
    wanted: datetime.date | None = None
    """Date wanted."""
