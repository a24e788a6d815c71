"""Facets of what hangs outside: tyres, racks, carriers, ladders."""

from typing import Literal

from pydantic import Field

from coachwright.model.record import LengthPos, Mass, MassPos, Pressure, Record
from coachwright.model.tyre_size import SPEED_SYMBOL_PATTERN, TyreSizeText


class Tyre(Record):
    """One set of tyres for the vehicle; the body's mass is that of one wheel with its tyre."""

    size: TyreSizeText
    kind: Literal["passenger", "light truck", "commercial", "camper"]
    load_index_single: int = Field(ge=60, le=130)
    load_index_dual: int | None = Field(default=None, ge=60, le=130)
    speed_symbol: str = Field(pattern=SPEED_SYMBOL_PATTERN)
    rated_pressure_kpa: Pressure
    """Cold pressure at which it carries its rated load."""


class Spare(Record):
    """A spare wheel with its tyre."""

    size: TyreSizeText
    full_size: bool = True


class RearDoorCarrier(Record):
    """Hangs on a rear door."""

    load_limit_kg: Mass
    swings_with_door: bool = True
    repeats: tuple[Literal["lamp", "plate"], ...] = ()
    """What it carries itself instead of what it hides."""


class HitchCarrier(Record):
    """Hangs on the hitch."""

    load_limit_kg: Mass
    tilts: bool = False
    repeats: tuple[Literal["lamp", "plate"], ...] = ()
    """What it carries itself instead of what it hides."""


class RoofRack(Record):
    """Carries other parts on the roof."""

    load_limit_kg: Mass
    standing_limit_kg: Mass | None = None


class Ladder(Record):
    """A ladder or step."""

    first_rung_mm: LengthPos
    """Height of the lowest rung above the ground."""
    rung_spacing_mm: LengthPos | None = None
    clear_width_mm: LengthPos
    limit_kg: MassPos | None = None


class SlideOut(Record):
    """A tray that slides out."""

    travel_mm: LengthPos
    load_limit_kg: MassPos


class Awning(Record):
    """An awning on the side."""

    length_mm: LengthPos
    reach_mm: LengthPos


class OutsideDevice(Record):
    """Sticks out of the vehicle but is of a kind that some size limits do not count."""

    kind: Literal["antenna", "mirror", "lamp", "step", "spray guard"]
