"""Where a space reaches through the shell, and where a door lets it pass."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from coachwright.layout.doors import Hole
from coachwright.layout.model import Intrusion
from coachwright.layout.solids import Box
from coachwright.model.shell import BuildUp, narrowest_half_width_mm
from coachwright.model.vehicle import BaseVehicle, Shell


def shell_intrusions(
    *,
    space: Box,
    vehicle: BaseVehicle,
    build_up: BuildUp,
    holes: Sequence[Hole],
    slack_mm: float,
) -> tuple[Intrusion, ...]:
    """Return the faces of the finished shell that a space reaches through, and how far.

    Parameters
    ----------
    space
        In the vehicle's axes.
    vehicle, build_up
        Shell and finishes.
    holes
        Doors that it may pass.
    slack_mm
        Less than this does not count. [mm]

    Notes
    -----
    Each wall is cut at the edges of the space, at the edges of the doors and at the heights where
    its slope changes; a piece within a door lets the space pass.  The cab line is open.
    """
    shell = vehicle.shell
    low, high = space.low_mm, space.high_mm
    walls = (
        ("left wall", -low[1], "left"),
        ("right wall", high[1], "right"),
    )
    depths_mm = {
        f"the {face}": _through_wall_mm(
            space, reach_mm, shell, build_up, [hole for hole in holes if hole.wall == wall]
        )
        for face, reach_mm, wall in walls
    }
    behind_mm = high[0] - (shell.rear_mm - build_up.doors_mm)
    rear_holes = [hole for hole in holes if hole.wall == "rear"]
    if behind_mm > slack_mm and not _passes(space, 1, rear_holes):
        depths_mm["the rear doors"] = behind_mm
    depths_mm["the floor"] = build_up.floor_mm - low[2]
    depths_mm["the ceiling"] = high[2] - (shell.ceiling_mm - build_up.ceiling_mm)
    return tuple(
        Intrusion(name=face, depth_mm=depth_mm)
        for face, depth_mm in depths_mm.items()
        if depth_mm > slack_mm
    )


def _through_wall_mm(
    space: Box, reach_mm: float, shell: Shell, build_up: BuildUp, holes: Sequence[Hole]
) -> float:
    """Return how far a space reaches through a side wall outside of its doors; at least 0."""
    slopes = [row.z_mm for row in shell.half_widths]
    worst_mm = 0.0
    for bottom_mm, top_mm, closed in _pieces(space, 0, holes, slopes):
        if closed:
            half_mm = narrowest_half_width_mm(shell, bottom_mm, top_mm) - build_up.walls_mm
            worst_mm = max(worst_mm, reach_mm - half_mm)
    return worst_mm


def _passes(space: Box, axis: int, holes: Sequence[Hole]) -> bool:
    return not any(closed for _, _, closed in _pieces(space, axis, holes, ()))


def _pieces(
    space: Box, axis: int, holes: Sequence[Hole], heights_mm: Sequence[float]
) -> Iterator[tuple[float, float, bool]]:
    """Yield bottom, top and whether it is closed, for each piece of wall beside a space."""
    along = _cuts_mm(
        space.low_mm[axis],
        space.high_mm[axis],
        [edge for hole in holes for edge in (hole.from_mm, hole.to_mm)],
    )
    up = _cuts_mm(
        space.low_mm[2],
        space.high_mm[2],
        [*heights_mm, *(edge for hole in holes for edge in (hole.bottom_mm, hole.top_mm))],
    )
    for start_mm, end_mm in pairwise(along):
        for bottom_mm, top_mm in pairwise(up):
            middle = ((start_mm + end_mm) / 2, (bottom_mm + top_mm) / 2)
            yield bottom_mm, top_mm, not any(hole.holds(*middle) for hole in holes)


def _cuts_mm(low_mm: float, high_mm: float, edges_mm: Sequence[float]) -> list[float]:
    inner = {edge for edge in edges_mm if low_mm < edge < high_mm}
    return [low_mm, *sorted(inner), high_mm]
