"""The cut shell: skin and ribs, insulation, lining, as bands from the outside inwards.

The outer skin is taken to stand as far outside the bare inner face at every height as the overall
width stands outside the widest inner place; it shows where the metal is and is not for measuring.
"""

from dataclasses import dataclass

from coachwright.layout.model import Layout
from coachwright.model.build import Build
from coachwright.model.shell import half_width_mm
from coachwright.model.vehicle import BaseVehicle

SILL_UNDER_MM = 130.0
"""How far the body reaches below the load floor where it is cut."""


@dataclass(frozen=True, kw_only=True, slots=True)
class WallBands:
    """Distances from the centreline at one height.

    Attributes
    ----------
    outer_mm
        Of the outer skin.
    ribbed_mm
        Of what insulation between the ribs reaches back to.
    bare_mm
        Of the bare inner face, on the ribs.
    finished_mm
        Of the lining's face.
    """

    outer_mm: float
    ribbed_mm: float
    bare_mm: float
    finished_mm: float


def wall_bands(build: Build, layout: Layout, z_mm: float) -> WallBands:
    """Return where the layers of a side wall stand at a height above the load floor.

    Parameters
    ----------
    build
        For the vehicle.
    layout
        For what the finishes take.
    z_mm
        Height above the load floor. [mm]
    """
    vehicle = build.vehicle
    bare_mm = half_width_mm(vehicle.shell, z_mm)
    outer_mm = bare_mm + skin_mm(vehicle)
    return WallBands(
        outer_mm=outer_mm,
        ribbed_mm=min(outer_mm, bare_mm + vehicle.shell.rib_depth_mm),
        bare_mm=bare_mm,
        finished_mm=bare_mm - layout.build_up.walls_mm,
    )


def skin_mm(vehicle: BaseVehicle) -> float:
    """Return how far the outer skin stands outside the bare inner face of a side wall."""
    widest_mm = max(row.half_width_mm for row in vehicle.shell.half_widths)
    return max(20.0, vehicle.outside.width_mm / 2 - widest_mm)


def rear_mm(vehicle: BaseVehicle) -> float:
    """Return x of the outer face of the rear doors."""
    return vehicle.outside.length_mm - vehicle.outside.front_overhang_mm


def roof_mm(vehicle: BaseVehicle) -> float:
    """Return the height of the roof's top above the load floor."""
    return vehicle.outside.height_mm - vehicle.outside.floor_height_mm


def insulated(build: Build, surface: str) -> bool:
    """Return whether a surface has a layer of insulation."""
    return any(
        layer.finish.surface == surface and layer.part.insulation is not None
        for layer in build.finishes
    )
