"""What holds each fitting: nothing floats."""

from collections.abc import Mapping

from coachwright.layout.model import Support
from coachwright.layout.solids import Solid
from coachwright.model.build import Fitted, Mounting
from coachwright.model.shell import BuildUp, half_width_mm
from coachwright.model.vehicle import BaseVehicle


def support_of(
    *, fitted: Fitted, solids: Mapping[str, Solid], vehicle: BaseVehicle, build_up: BuildUp
) -> Support:
    """Return what holds a fitting and how far it is from it.

    Parameters
    ----------
    fitted
        The fitting.
    solids
        All fittings as solids, by name.
    vehicle, build_up
        Shell and finishes.

    Notes
    -----
    A fitting that is built into another is held by it, whatever the gap.  One that stands on
    another is held where it touches it from above, below or beside (gap 0) and the two share a
    face; else by what its mounting says: floor and roof from below, ceiling from above, a wall, a
    rear door, the hitch or the underbody beside or above.  The gap is the distance along the axis
    of that face.
    """
    body = solids[fitted.name]
    fitting = fitted.fitting
    if fitting.within:
        return Support(name=fitted.name, carrier=fitting.within, gap_mm=0.0)
    if fitting.on:
        return Support(
            name=fitted.name,
            carrier=fitting.on,
            gap_mm=contact_gap_mm(body, solids[fitting.on]),
        )
    carrier, gap_mm = _mounted(body, fitting.mounting, vehicle, build_up)
    return Support(name=fitted.name, carrier=carrier, gap_mm=gap_mm)


def contact_gap_mm(one: Solid, other: Solid) -> float:
    """Return how far two solids are apart: 0 where they touch or overlap. [mm].

    Notes
    -----
    The largest of the gaps along the three axes, for the pair of boxes where that is smallest.
    """
    return min(
        max(
            max(
                a.low_mm[axis] - b.high_mm[axis],
                b.low_mm[axis] - a.high_mm[axis],
                0.0,
            )
            for axis in range(3)
        )
        for a in one.boxes
        for b in other.boxes
    )


def _mounted(
    body: Solid, mounting: Mounting, vehicle: BaseVehicle, build_up: BuildUp
) -> tuple[str, float | None]:
    if mounting is Mounting.WALL:
        return _wall(body, vehicle, build_up)
    low_mm, high_mm = body.bounds.low_mm, body.bounds.high_mm
    outside = vehicle.outside
    rear_mm = outside.length_mm - outside.front_overhang_mm
    ceiling_mm = vehicle.shell.ceiling_mm - build_up.ceiling_mm
    gaps_mm = {
        Mounting.FLOOR: abs(low_mm[2] - build_up.floor_mm),
        Mounting.CEILING: abs(ceiling_mm - high_mm[2]),
        Mounting.ROOF: abs(low_mm[2] - (outside.height_mm - outside.floor_height_mm)),
        Mounting.REAR_DOOR_LEFT: max(0.0, low_mm[0] - rear_mm),
        Mounting.REAR_DOOR_RIGHT: max(0.0, low_mm[0] - rear_mm),
        Mounting.UNDERBODY: max(0.0, -high_mm[2]),
    }
    return str(mounting), gaps_mm.get(mounting, 0.0)


def _wall(body: Solid, vehicle: BaseVehicle, build_up: BuildUp) -> tuple[str, float]:
    """Return the nearest of the side walls and the rear and front ends of the living space."""
    gaps: list[tuple[float, str]] = []
    for part in body.boxes:
        middle_mm = (part.low_mm[2] + part.high_mm[2]) / 2
        for height_mm in (part.low_mm[2], middle_mm, part.high_mm[2]):
            half_mm = half_width_mm(vehicle.shell, height_mm) - build_up.walls_mm
            gaps.append((abs(part.low_mm[1] + half_mm), "left wall"))
            gaps.append((abs(half_mm - part.high_mm[1]), "right wall"))
        gaps.append((abs(part.low_mm[0] - vehicle.shell.cab_line_mm), "cab line"))
        rear_mm = vehicle.shell.rear_mm - build_up.doors_mm
        gaps.append((abs(rear_mm - part.high_mm[0]), "rear doors"))
    gap_mm, wall = min(gaps)
    return wall, gap_mm
