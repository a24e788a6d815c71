"""What the layout discipline hands on."""

from dataclasses import dataclass

from coachwright.layout.passage import Passage
from coachwright.layout.solids import Box, Overlap, Solid
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
class PlacedZone:
    """An access zone where it stands, and what is in it.

    Attributes
    ----------
    blocked_by
        What stands in it, worst first; empty where it is free.
    free_frac
        Share of its volume that is free.
    depth_mm
        How far the worst of `blocked_by` stands into it: the smallest shift that frees it.
    waived
        Why it was given up, where it was.
    """

    fitting: str
    purpose: str
    space: Box
    blocked_by: tuple[str, ...]
    free_frac: float
    depth_mm: float
    waived: str
    shares_with: tuple[str, ...] | None
    always: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class Support:
    """What holds a fitting.

    Attributes
    ----------
    carrier
        "floor", "left wall", "ceiling", "roof" ..., or the fitting that carries it; empty where
        nothing is near enough.
    gap_mm
        Distance to it; None where nothing that could carry it was found.
    """

    name: str
    carrier: str
    gap_mm: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Aisle:
    """The way from one opening to another at one height of the body.

    Attributes
    ----------
    way
        "cab to sliding door", "cab to rear doors" ...
    level
        "floor", "hip" or "shoulder".
    """

    way: str
    level: str
    from_mm: float
    to_mm: float
    passage: Passage


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Does it fit, and can people live in it."""

    solids: tuple[Solid, ...]
    arches: tuple[Solid, ...]
    build_up: BuildUp
    shell_fits: tuple[ShellFit, ...]
    clashes: tuple[Clash, ...]
    zones: tuple[PlacedZone, ...]
    supports: tuple[Support, ...]
    aisles: tuple[Aisle, ...]
    figures: tuple[Figure, ...]
