"""Areas of the living space's shell from its half-widths, length, arches and doors."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot


@dataclass(frozen=True, kw_only=True, slots=True)
class ShellAreas:
    """Faces of the living space, bare, with panes not yet taken off.

    Attributes
    ----------
    wall_m2
        Of one side, along its slope; wheel arches stand in it and have faces of their own.
    rear_m2
        Of the rear doors' plane, and of the opening to the cab.
    arches_m2
        Faces of all wheel arches that look inwards.
    volume_m3
        Without the wheel arches.
    """

    wall_m2: float
    roof_m2: float
    floor_m2: float
    rear_m2: float
    arches_m2: float
    volume_m3: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Arch:
    """A wheel arch of one side."""

    length_mm: float
    width_mm: float
    height_mm: float


def shell_areas(
    *,
    half_widths_mm: Sequence[tuple[float, float]],
    ceiling_mm: float,
    length_mm: float,
    arches: Sequence[Arch],
) -> ShellAreas:
    """Return the areas of a shell.

    Parameters
    ----------
    half_widths_mm
        Pairs of height above the floor and half of the width there, rising. [mm]
    ceiling_mm
        Of the roof above the floor; the half-widths are taken up to it. [mm]
    length_mm
        From the cab's line to the rear doors. [mm]
    arches
        Wheel arches of one side.

    Returns
    -------
    ShellAreas
        Of both sides where not said otherwise.

    Notes
    -----
    Walls: length by the line through the half-widths; roof and floor: length by width at ceiling
    and floor; rear: the section.  An arch takes its foot from the floor and its side from the
    wall, and adds its front, back, inner face and top.  The roof's crown and bead are left out.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> box = shell_areas(half_widths_mm=[(0, 900), (1900, 900)], ceiling_mm=1900,
    ...     length_mm=3000, arches=[])
    >>> round(box.wall_m2, 2), round(box.roof_m2, 2), round(box.volume_m3, 3)
    (5.7, 5.4, 10.26)
    """
    points = _up_to_mm(half_widths_mm, ceiling_mm)
    slope = sum(hypot(high[0] - low[0], high[1] - low[1]) for low, high in pairwise(points))
    section_mm2 = sum((high[0] - low[0]) * (high[1] + low[1]) for low, high in pairwise(points))
    foot = sum(each.length_mm * each.width_mm for each in arches)
    side = sum(each.length_mm * each.height_mm for each in arches)
    ends = sum(2.0 * each.width_mm * each.height_mm for each in arches)
    hollow = sum(each.length_mm * each.width_mm * each.height_mm for each in arches)
    return ShellAreas(
        wall_m2=(length_mm * slope - side) / 1e6,
        roof_m2=2.0 * length_mm * points[-1][1] / 1e6,
        floor_m2=(2.0 * length_mm * points[0][1] - 2.0 * foot) / 1e6,
        rear_m2=section_mm2 / 1e6,
        arches_m2=2.0 * (foot + side + ends) / 1e6,
        volume_m3=(length_mm * section_mm2 - 2.0 * hollow) / 1e9,
    )


def _up_to_mm(
    half_widths_mm: Sequence[tuple[float, float]], ceiling_mm: float
) -> list[tuple[float, float]]:
    """Return the half-widths from the floor to the ceiling; the ends hold beyond."""
    first, last = half_widths_mm[0], half_widths_mm[-1]
    points = [(0.0, first[1])] if first[0] > 0.0 else []
    points += [each for each in half_widths_mm if each[0] < ceiling_mm]
    above = next((each for each in half_widths_mm if each[0] >= ceiling_mm), None)
    if above is None:
        return [*points, (ceiling_mm, last[1])]
    below = points[-1] if points else first
    share = (ceiling_mm - below[0]) / (above[0] - below[0]) if above[0] > below[0] else 0.0
    return [*points, (ceiling_mm, below[1] + share * (above[1] - below[1]))]
