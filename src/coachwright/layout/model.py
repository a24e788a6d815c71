"""What the layout discipline hands on."""

from dataclasses import dataclass

from coachwright.layout.model_interior import Interior
from coachwright.layout.model_outside import Outside
from coachwright.layout.passage import Passage
from coachwright.layout.solids import Box, Overlap, Solid
from coachwright.model.finding import Acceptance
from coachwright.model.placement import Point
from coachwright.model.shell import BuildUp
from coachwright.model.working import Figure


@dataclass(frozen=True, kw_only=True, slots=True)
class ShellFit:
    """How far a fitting stands within the shell; negative where it stands out of it.

    Attributes
    ----------
    spare_mm
        Smallest distance to the finished shell; negative is the overshoot.
    face
        The face of the shell that is nearest: "left wall", "ceiling", "rear doors" ...
    corner_mm
        The corner of the fitting that is nearest to it.
    """

    name: str
    spare_mm: float
    face: str
    corner_mm: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Clash:
    """Two solids in one place."""

    one: str
    other: str
    overlap: Overlap


@dataclass(frozen=True, kw_only=True, slots=True)
class Intrusion:
    """Something that stands in an access zone.

    Attributes
    ----------
    name
        Of a fitting, a wheel arch or a face of the shell ("the left wall").
    depth_mm
        The smallest shift that frees the zone of it.
    """

    name: str
    depth_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class PlacedZone:
    """An access zone where it stands, and what is in it.

    Attributes
    ----------
    intrusions
        What stands in it, worst first; empty where it is free.
    free_frac
        Share of its volume that no fitting fills; what lies beyond the shell is not counted out.
    waived
        Who gave it up and why, where it was.
    shares_with
        Purposes of other zones that it may overlap; None where any.
    always
        Kept free all the time.
    """

    fitting: str
    purpose: str
    space: Box
    intrusions: tuple[Intrusion, ...]
    free_frac: float
    waived: Acceptance | None
    shares_with: tuple[str, ...] | None
    always: bool

    @property
    def blocked_by(self) -> tuple[str, ...]:
        """Names of what stands in it, worst first."""
        return tuple(found.name for found in self.intrusions)

    @property
    def depth_mm(self) -> float:
        """How deep [mm] the worst of them stands in it; 0 where it is free."""
        return self.intrusions[0].depth_mm if self.intrusions else 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class ZonePair:
    """Two zones that overlap and may not.

    Attributes
    ----------
    one, other
        One keeps to itself, or is always kept free and the other is moved through.
    """

    one: PlacedZone
    other: PlacedZone
    overlap: Overlap


@dataclass(frozen=True, kw_only=True, slots=True)
class Support:
    """What holds a fitting.

    Attributes
    ----------
    carrier
        "floor", "left wall", "ceiling", "roof" ..., or the fitting that carries it.
    gap_mm
        Smallest shift that brings the two together; None where something is missing.
    outside
        Held by brackets, rails or straps outside the living space.
    missing
        What is missing where `gap_mm` is None.
    """

    name: str
    carrier: str
    gap_mm: float | None
    outside: bool
    missing: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Aisle:
    """The way from one opening to another at one height of the body.

    Attributes
    ----------
    way
        "cab to sliding door", "cab to rear doors" ...
    level
        "floor", "hip" or "shoulder".
    rear
        One of the two openings is in the rear; furniture may close that way on purpose.
    """

    way: str
    level: str
    rear: bool
    from_mm: float
    to_mm: float
    passage: Passage


@dataclass(frozen=True, kw_only=True, slots=True)
class FreeFloor:
    """The part of the floor that people can stand on.

    Attributes
    ----------
    length_mm, width_mm
        Of the whole floor between cab line, rear doors and walls.
    """

    free_m2: float
    length_mm: float
    width_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Store:
    """What fits into one cabinet."""

    name: str
    storage_l: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Counter:
    """A cabinet at working height.

    Attributes
    ----------
    length_mm
        Along its longer side.
    taken_mm
        Of that, where something is let in or stands on it.
    top_mm
        Above the finished floor.
    """

    name: str
    length_mm: float
    taken_mm: float
    top_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Does it fit, and can people live in it.

    Attributes
    ----------
    solids
        Every fitting but the tyres, with the doors closed.
    opened
        Those that hang on a rear door, with the doors fully open.
    shell_fits
        Of what stands in the living space; openings are let into the shell and not among them.
    """

    solids: tuple[Solid, ...]
    opened: tuple[Solid, ...]
    arches: tuple[Solid, ...]
    build_up: BuildUp
    shell_fits: tuple[ShellFit, ...]
    clashes: tuple[Clash, ...]
    zones: tuple[PlacedZone, ...]
    zone_pairs: tuple[ZonePair, ...]
    supports: tuple[Support, ...]
    aisles: tuple[Aisle, ...]
    free_floor: FreeFloor
    stores: tuple[Store, ...]
    counters: tuple[Counter, ...]
    interior: Interior
    outside: Outside
    figures: tuple[Figure, ...]
