"""The inner shell with its finishes: how far a fitting can go to walls, floor and ceiling."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from coachwright.model.vehicle import Shell


@dataclass(frozen=True, kw_only=True, slots=True)
class Layer:
    """One layer on the shell.

    Attributes
    ----------
    surface
        ``"walls"``, ``"ceiling"``, ``"floor"`` or ``"doors"``.
    fills_ribs
        Insulation goes between the ribs first; lining goes over them.
    """

    surface: str
    thickness_mm: float
    fills_ribs: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class BuildUp:
    """How far the finishes stand into the living space."""

    walls_mm: float = 0.0
    ceiling_mm: float = 0.0
    floor_mm: float = 0.0
    doors_mm: float = 0.0


def build_up(layers: Iterable[Layer], rib_depth_mm: float) -> BuildUp:
    """Return how far layers stand into the living space.

    Parameters
    ----------
    layers
        Of every surface.
    rib_depth_mm
        Depth of the ribs; the shell's widths are taken on the ribs. [mm]

    Notes
    -----
    Walls, ceiling and doors: max(0, Σ insulation − rib depth) + Σ lining, because insulation
    fills the space between the ribs first.  Floor, which has no ribs to fill: Σ of all layers.

    Examples
    --------
    >>> build_up([Layer(surface="walls", thickness_mm=50, fills_ribs=True)], 40).walls_mm
    10.0
    """
    thick = {surface: [0.0, 0.0] for surface in ("walls", "ceiling", "floor", "doors")}
    for layer in layers:
        thick[layer.surface][0 if layer.fills_ribs else 1] += layer.thickness_mm
    over_ribs = {
        surface: max(0.0, insulation - rib_depth_mm) + lining
        for surface, (insulation, lining) in thick.items()
    }
    return BuildUp(
        walls_mm=over_ribs["walls"],
        ceiling_mm=over_ribs["ceiling"],
        floor_mm=sum(thick["floor"]),
        doors_mm=over_ribs["doors"],
    )


def half_width_mm(shell: Shell, z_mm: float) -> float:
    """Return half of the bare inner width at a height above the load floor, in mm.

    Notes
    -----
    Linear between the heights given; the first and last value hold beyond them.
    """
    rows = shell.half_widths
    if z_mm <= rows[0].z_mm:
        return rows[0].half_width_mm
    for below, above in pairwise(rows):
        if z_mm <= above.z_mm:
            share_frac = (z_mm - below.z_mm) / (above.z_mm - below.z_mm)
            return below.half_width_mm + share_frac * (above.half_width_mm - below.half_width_mm)
    return rows[-1].half_width_mm


def narrowest_half_width_mm(shell: Shell, from_mm: float, to_mm: float) -> float:
    """Return the smallest half-width over a range of heights, in mm.

    Parameters
    ----------
    shell
        The inner shell.
    from_mm, to_mm
        Heights above the load floor. [mm]

    Notes
    -----
    The half-width is linear between the heights given, so its smallest value stands at an end of
    the range or at one of those heights.
    """
    heights = [from_mm, to_mm]
    heights += [row.z_mm for row in shell.half_widths if from_mm < row.z_mm < to_mm]
    return min(half_width_mm(shell, height) for height in heights)
