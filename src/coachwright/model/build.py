"""The build: as written in a file (`BuildSheet`) and with everything found (`Build`)."""

import datetime
import hashlib
from collections.abc import Iterator
from enum import StrEnum
from functools import cached_property
from typing import Annotated, Literal

from pydantic import AfterValidator, Field

from coachwright.model.brief import Brief
from coachwright.model.part import ID_PATTERN, Part
from coachwright.model.position import Position
from coachwright.model.record import (
    Area,
    Fraction,
    Length,
    LengthPos,
    Mass,
    MassPos,
    Quantity,
    Record,
    TimeUse,
    fault,
)
from coachwright.model.site import Site
from coachwright.model.vehicle import BaseVehicle

TURNS_DEG = (0.0, 90.0, 180.0, 270.0)


def _quarter_turn_deg(turn_deg: float) -> float:
    if turn_deg not in TURNS_DEG:
        allowed = "0 deg, 90 deg, 180 deg or 270 deg"
        raise fault(f"{turn_deg:g} deg", allowed, "turn by quarter turns")
    return turn_deg


Turn = Annotated[float, Quantity("angle"), AfterValidator(_quarter_turn_deg)]


class Mounting(StrEnum):
    """What a fitting is fixed to."""

    FLOOR = "floor"
    WALL = "wall"
    CEILING = "ceiling"
    ROOF = "roof"
    REAR_DOOR_LEFT = "rear door left"
    REAR_DOOR_RIGHT = "rear door right"
    UNDERBODY = "underbody"
    CAB = "cab"
    HITCH = "hitch"
    SIDE = "side"
    WHEELS = "wheels"


INSIDE = frozenset({Mounting.FLOOR, Mounting.WALL, Mounting.CEILING, Mounting.CAB})
"""Mountings inside the living space."""


class ModeUse(Record):
    """The customer's own use of one mode of a fitting's load."""

    mode: str
    summer_use_h_per_day: TimeUse
    winter_use_h_per_day: TimeUse


class Fitting(Record):
    """One part placed in the build."""

    name: str = Field(pattern=ID_PATTERN)
    """Reference name, unlike any other in the build."""
    part: str = Field(pattern=ID_PATTERN)
    at_mm: tuple[Position, Position, Position]
    """Corner of the turned bounding box with the smallest x, y and z (z from the load floor), or
    where it stands against something else."""
    turn_deg: Turn = 0.0
    """Anticlockwise seen from above."""
    mirror: bool = False
    """Swaps left and right before it is turned."""
    mounting: Mounting = Mounting.FLOOR
    on: str = ""
    """The fitting that carries it, where one does."""
    within: str = ""
    """The fitting that it is built into, such as the galley for a fridge."""
    measured_mass_kg: MassPos | None = None
    """What the shop's own scales said, instead of the catalogue's mass."""
    contents_kg: Mass = 0.0
    """What is stowed in it when travelling."""
    use: tuple[ModeUse, ...] = ()
    """Use of its loads, instead of the usual."""
    heated_space: bool | None = None
    """For tanks and pipes: stands in heated air; worked out from the mounting where not given."""
    note: str = ""
    pinned: bool = Field(default=False, exclude_if=lambda pinned: not pinned)
    """Stays where it is: the bench does not move it and no proposal does, until it is unpinned."""


class Finish(Record):
    """A layer on the shell: insulation or lining."""

    part: str = Field(pattern=ID_PATTERN)
    surface: Literal["walls", "ceiling", "floor", "doors"]
    area_m2: Area
    thickness_mm: LengthPos | None = None
    """Instead of the part's own."""


class WaterRun(Record):
    """A pipe or hose of the water system."""

    name: str = Field(pattern=ID_PATTERN)
    length_mm: LengthPos
    bore_mm: LengthPos
    place: Literal["heated", "inside", "outside"]
    serves: str = ""
    """The outlet at its end; empty for drains and fills."""
    rise_mm: Length = 0.0
    """Outlet above the pump."""
    drained: bool = False
    """Emptied when there is frost."""


class Decision(Record):
    """A finding accepted by someone with a reason; a stop can be explained, never hidden."""

    rule: str
    subject: str = ""
    """The finding's subject; empty for every subject of the rule."""
    role: str = Field(min_length=1)
    reason: str = Field(min_length=1)
    date: datetime.date | None = None


class Waiver(Record):
    """An access zone given up on purpose."""

    fitting: str
    purpose: str
    role: str = Field(min_length=1)
    reason: str = Field(min_length=1)


class WheelLoads(Record):
    """Each wheel (or pair) on the scales."""

    front_left_kg: MassPos
    front_right_kg: MassPos
    rear_left_kg: MassPos
    rear_right_kg: MassPos


class WeighTicket(Record):
    """What a weighbridge said, and the state of the vehicle on it."""

    date: datetime.date
    total_kg: MassPos
    front_kg: MassPos | None = None
    rear_kg: MassPos | None = None
    wheels: WheelLoads | None = None
    scale_error_kg: Mass = 10.0
    """Half-width of the 95 % band of one reading."""
    fuel_frac: Fraction = 1.0
    fresh_frac: Fraction = 0.0
    grey_frac: Fraction = 0.0
    gas_frac: Fraction = 1.0
    aboard: tuple[str, ...] = ()
    """Names of the travellers who sat in it."""
    cargo_aboard: bool = False


class Move(Record):
    """A fitting of the standard build that stands elsewhere or is fixed to something else.

    What is left out stays as the standard build has it.
    """

    fitting: str
    at_mm: tuple[Position, Position, Position]
    turn_deg: Turn | None = None
    mirror: bool | None = None
    mounting: Mounting | None = None
    on: str | None = None
    within: str | None = None
    pinned: bool | None = None


class Exchange(Record):
    """A fitting of the standard build that is another part."""

    fitting: str
    part: str
    at_mm: tuple[Position, Position, Position] | None = None


class Changes(Record):
    """What differs from the standard build."""

    removed: tuple[str, ...] = ()
    moved: tuple[Move, ...] = ()
    exchanged: tuple[Exchange, ...] = ()
    added: tuple[Fitting, ...] = ()


class Exclusion(Record):
    """Another option that cannot be had together with this one, and why."""

    option: str
    cause: str = Field(min_length=1)


class Option(Record):
    """A named group of changes that the shop offers with a standard build."""

    name: str = Field(pattern=ID_PATTERN)
    title: str
    requires: tuple[str, ...] = ()
    excludes: tuple[Exclusion, ...] = ()
    changes: Changes = Changes()


class OptionConflict(Record):
    """Two wishes that cannot both be met, and their common cause."""

    wish: str
    other: str
    cause: str
    kind: Literal["excluded", "required", "same fitting"]


class BuildSheet(Record):
    """A build as written: parts and vehicle by id, perhaps only what differs from a standard."""

    format: Literal[1]
    """Version of the file's form."""
    name: str = Field(min_length=1)
    customer: str = ""
    revision: str = "A"
    story: str = ""
    vehicle: str = ""
    """Id of a base vehicle of the catalogue; empty with `own_vehicle` or `standard`."""
    own_vehicle: BaseVehicle | None = None
    standard: str = ""
    """Id of a standard build of the shop's range."""
    options: tuple[str, ...] = ()
    changes: Changes = Changes()
    brief: Brief
    fittings: tuple[Fitting, ...] = ()
    finishes: tuple[Finish, ...] = ()
    water_runs: tuple[WaterRun, ...] = ()
    vehicle_spare_removed: bool = False
    """The vehicle's own spare wheel is taken off and left behind."""
    decisions: tuple[Decision, ...] = ()
    waivers: tuple[Waiver, ...] = ()
    ticket: WeighTicket | None = None
    own_parts: tuple[Part, ...] = ()
    """Parts made for this build alone."""
    offers: tuple[Option, ...] = ()
    """Options, where this is a standard build."""


class Fitted(Record):
    """A fitting together with its part."""

    fitting: Fitting
    part: Part
    at_mm: tuple[Length, Length, Length]
    """Corner of the turned bounding box with the smallest x, y and z, worked out."""

    @property
    def name(self) -> str:
        """The fitting's reference name."""
        return self.fitting.name

    @property
    def mass_kg(self) -> float:
        """Mass of the empty part [kg]: as measured, else from the catalogue."""
        measured = self.fitting.measured_mass_kg
        return self.part.body.mass_kg if measured is None else measured


class FinishLayer(Record):
    """A finish together with its part."""

    finish: Finish
    part: Part


class Build(Record):
    """A build with everything found: what every discipline reads."""

    name: str
    customer: str
    revision: str
    story: str
    brief: Brief
    vehicle: BaseVehicle
    fittings: tuple[Fitted, ...]
    finishes: tuple[FinishLayer, ...] = ()
    water_runs: tuple[WaterRun, ...] = ()
    vehicle_spare_removed: bool = False
    decisions: tuple[Decision, ...] = ()
    waivers: tuple[Waiver, ...] = ()
    ticket: WeighTicket | None = None
    standard: str = ""
    options: tuple[str, ...] = ()
    conflicts: tuple[OptionConflict, ...] = ()
    sites: tuple[Site, ...] = Field(default=(), exclude_if=lambda sites: not sites)
    """Those that the brief names, found."""

    @cached_property
    def digest(self) -> str:
        """SHA-256 of everything in the build, as hexadecimal digits."""
        return hashlib.sha256(self.model_dump_json().encode()).hexdigest()

    def having(self, facet: str) -> Iterator[Fitted]:
        """Yield the fittings whose part has a facet, in the order of the file."""
        for fitted in self.fittings:
            if getattr(fitted.part, facet) is not None:
                yield fitted

    def fitted(self, name: str) -> Fitted | None:
        """Return the fitting with a reference name, or None."""
        for fitted in self.fittings:
            if fitted.fitting.name == name:
                return fitted
        return None
