"""How much free space there is above a patch of floor and ahead of a face."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from coachwright.layout.passage import Patch
from coachwright.layout.solids import Box, Solid
from coachwright.model.shell import half_width_mm, narrowest_half_width_mm
from coachwright.model.vehicle import Shell

SLACK_MM = 1.0
"""Overlaps that are not deeper do not count."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Clear:
    """A free length and what ends it."""

    free_mm: float
    ended_by: str


def clear_above(
    *, footprint: Patch, from_mm: float, ceiling_mm: float, bodies: Iterable[Solid]
) -> Clear:
    """Return the free height over a patch of the plan, up to the lowest thing above it.

    Parameters
    ----------
    footprint
        In the plan.
    from_mm
        Height from which it is measured. [mm]
    ceiling_mm
        Where it ends without anything else. [mm]
    bodies
        What may be above it; what reaches down past `from_mm` leaves nothing.

    Notes
    -----
    h = min(z of undersides over the footprint, ceiling) - z, at least 0.  Overlaps of the plan up
    to `SLACK_MM` do not count.

    Examples
    --------
    >>> bed = Patch(name="bed", low_mm=(0.0, 0.0), high_mm=(1900.0, 1300.0))
    >>> clear_above(footprint=bed, from_mm=900.0, ceiling_mm=1850.0, bodies=[]).free_mm
    950.0
    """
    lowest_mm, name = ceiling_mm, "ceiling"
    for body in bodies:
        if not _over(body.bounds, footprint, from_mm):
            continue
        for part in body.boxes:
            if part.low_mm[2] < lowest_mm and _over(part, footprint, from_mm):
                lowest_mm, name = part.low_mm[2], body.name
    return Clear(free_mm=max(0.0, lowest_mm - from_mm), ended_by=name)


def _over(part: Box, footprint: Patch, from_mm: float) -> bool:
    low, high = part.low_mm, part.high_mm
    return (
        high[2] > from_mm + SLACK_MM
        and low[0] < footprint.high_mm[0] - SLACK_MM
        and high[0] > footprint.low_mm[0] + SLACK_MM
        and low[1] < footprint.high_mm[1] - SLACK_MM
        and high[1] > footprint.low_mm[1] + SLACK_MM
    )


def clear_ahead(*, face: Box, axis: int, sign_factor: float, bodies: Iterable[Solid]) -> Clear:
    """Return the free length ahead of a face, up to the nearest thing.

    Parameters
    ----------
    face
        The space that is pushed forwards; measured from its far side along the axis.
    axis
        0, 1 or 2.
    sign_factor
        1.0 forwards along the axis, -1.0 against it.
    bodies
        What may stand in the way; what stands beside or behind the face does not.

    Returns
    -------
    Clear
        Infinity where nothing stands in the way.

    Notes
    -----
    Smallest distance along the axis to a box that overlaps the face across it by more than
    `SLACK_MM`; 0 where the box already holds the face.

    Examples
    --------
    >>> from coachwright.layout.solids import box, solid
    >>> face = box((0.0, 0.0, 0.0), (0.0, 400.0, 600.0))
    >>> wall = solid("wall", (box((650.0, -900.0, 0.0), (670.0, 900.0, 1900.0)),))
    >>> clear_ahead(face=face, axis=0, sign_factor=1.0, bodies=[wall]).free_mm
    650.0
    """
    nearest_mm, name = float("inf"), ""
    across = [other for other in range(3) if other != axis]
    start_mm = face.high_mm[axis] if sign_factor > 0 else face.low_mm[axis]
    for body in bodies:
        for part in body.boxes:
            if any(
                part.low_mm[i] > face.high_mm[i] - SLACK_MM
                or part.high_mm[i] < face.low_mm[i] + SLACK_MM
                for i in across
            ):
                continue
            near_mm, far_mm = part.low_mm[axis] - start_mm, part.high_mm[axis] - start_mm
            if sign_factor < 0:
                near_mm, far_mm = -far_mm, -near_mm
            if far_mm > SLACK_MM and near_mm < nearest_mm:
                nearest_mm, name = max(0.0, near_mm), body.name
    return Clear(free_mm=nearest_mm, ended_by=name)


def clear_to_shell(
    *, face: Box, axis: int, sign_factor: float, shell: Shell, walls_mm: float, doors_mm: float
) -> Clear:
    """Return the free length ahead of a face, up to the finished shell.

    Parameters
    ----------
    face
        The space that is pushed forwards.
    axis
        0 along the vehicle, 1 across it.
    sign_factor
        1.0 forwards along the axis, -1.0 against it.
    shell
        Bare metal.
    walls_mm, doors_mm
        What the finishes take of the side walls and of the rear doors. [mm]

    Notes
    -----
    Across: narrowest half width over the heights of the face.  Along: cab line and rear doors.
    """
    start_mm = face.high_mm[axis] if sign_factor > 0 else face.low_mm[axis]
    if axis == 1:
        half_mm = narrowest_half_width_mm(shell, face.low_mm[2], face.high_mm[2]) - walls_mm
        side = "right wall" if sign_factor > 0 else "left wall"
        return Clear(free_mm=max(0.0, half_mm - sign_factor * start_mm), ended_by=side)
    end_mm = shell.rear_mm - doors_mm if sign_factor > 0 else shell.cab_line_mm
    which = "rear doors" if sign_factor > 0 else "cab line"
    return Clear(free_mm=max(0.0, sign_factor * (end_mm - start_mm)), ended_by=which)


def wall_reaches_mm(*, shell: Shell, walls_mm: float, y_mm: float, from_mm: float) -> float:
    """Return the lowest height at which the finished side wall comes in to a y. [mm].

    Parameters
    ----------
    shell
        Bare metal.
    walls_mm
        What the finishes take. [mm]
    y_mm
        From the centreline, either side. [mm]
    from_mm
        Height from which it is looked for. [mm]

    Returns
    -------
    float
        Above the load floor; infinity where it never does.

    Notes
    -----
    The half width is linear between the heights given.

    Examples
    --------
    >>> from coachwright.model.vehicle import WidthAt
    >>> rows = (WidthAt(z_mm=0, half_width_mm=900), WidthAt(z_mm=1000, half_width_mm=800))
    >>> shell = Shell.model_construct(half_widths=rows)
    >>> wall_reaches_mm(shell=shell, walls_mm=20.0, y_mm=830.0, from_mm=0.0)
    500.0
    """
    bare_mm = abs(y_mm) + walls_mm
    if half_width_mm(shell, from_mm) <= bare_mm:
        return from_mm
    for below, above in pairwise(shell.half_widths):
        if above.z_mm > from_mm and above.half_width_mm <= bare_mm < below.half_width_mm:
            down_frac = (below.half_width_mm - bare_mm) / (
                below.half_width_mm - above.half_width_mm
            )
            return max(from_mm, below.z_mm + down_frac * (above.z_mm - below.z_mm))
    return float("inf")


def nearest(found: Sequence[Clear]) -> Clear:
    """Return the shortest of some free lengths."""
    return min(found, key=lambda clear: clear.free_mm)
