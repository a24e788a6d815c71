"""The area of the floor on which nothing stands."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from coachwright.layout.aisles import Level, floor_plan
from coachwright.layout.model import FreeFloor
from coachwright.layout.passage import Patch
from coachwright.layout.solids import Solid
from coachwright.model.shell import BuildUp
from coachwright.model.vehicle import BaseVehicle


def free_floor(
    *, bodies: Sequence[Solid], vehicle: BaseVehicle, build_up: BuildUp, level: Level
) -> FreeFloor:
    """Return the part of the floor that people can stand on.

    Parameters
    ----------
    bodies
        What stands in the living space, wheel arches too.
    vehicle, build_up
        Shell, apertures and finishes.
    level
        Height at which something is in the way.
    """
    edges, obstacles = floor_plan(bodies=bodies, vehicle=vehicle, build_up=build_up, level=level)
    floor = Patch(
        name="floor",
        low_mm=(
            min(edge.patch.low_mm[0] for edge in edges),
            min(edge.patch.low_mm[1] for edge in edges),
        ),
        high_mm=(
            max(edge.patch.high_mm[0] for edge in edges),
            max(edge.patch.high_mm[1] for edge in edges),
        ),
    )
    return FreeFloor(
        free_m2=free_area_m2(floor=floor, obstacles=obstacles),
        length_mm=floor.high_mm[0] - floor.low_mm[0],
        width_mm=floor.high_mm[1] - floor.low_mm[1],
    )


def free_area_m2(*, floor: Patch, obstacles: Sequence[Patch]) -> float:
    """Return the area of a floor that no obstacle covers. [m2].

    Parameters
    ----------
    floor
        The whole floor.
    obstacles
        They may overlap each other and reach beyond the floor.

    Notes
    -----
    A = Σ strips Δx · (W - length of the union of what stands in the strip), the strips cut at
    every end of an obstacle.  Exact for rectangles.

    Examples
    --------
    >>> floor = Patch(name="floor", low_mm=(0.0, 0.0), high_mm=(3000.0, 1500.0))
    >>> galley = Patch(name="galley", low_mm=(500.0, -100.0), high_mm=(1500.0, 500.0))
    >>> free_area_m2(floor=floor, obstacles=[galley])
    4.0
    """
    (x0, y0), (x1, y1) = floor.low_mm, floor.high_mm
    ends_mm = {end for each in obstacles for end in (each.low_mm[0], each.high_mm[0])}
    cuts = [x0, *sorted(end for end in ends_mm if x0 < end < x1), x1]
    free_mm2 = 0.0
    for start_mm, end_mm in pairwise(cuts):
        taken_mm = union_mm(
            (max(y0, each.low_mm[1]), min(y1, each.high_mm[1]))
            for each in obstacles
            if each.low_mm[0] <= start_mm and each.high_mm[0] >= end_mm
        )
        free_mm2 += (end_mm - start_mm) * (y1 - y0 - taken_mm)
    return free_mm2 / 1e6


def union_mm(stretches_mm: Iterable[tuple[float, float]]) -> float:
    """Return the length that stretches of a line cover together. [mm].

    Examples
    --------
    >>> union_mm([(0.0, 300.0), (200.0, 500.0), (900.0, 1000.0)])
    600.0
    """
    total_mm = 0.0
    reached_mm = float("-inf")
    for start_mm, end_mm in sorted(stretches_mm):
        total_mm += max(0.0, end_mm - max(start_mm, reached_mm))
        reached_mm = max(reached_mm, end_mm)
    return total_mm
