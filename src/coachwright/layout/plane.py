"""Rectangles: boxes seen along one axis, from above, from behind or from the side."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from coachwright.layout.solids import Box

ABOVE = (0, 1)
BEHIND = (1, 2)
BESIDE = (0, 2)
"""The two axes that are seen."""

Pair = tuple[float, float]


@dataclass(frozen=True, kw_only=True, slots=True)
class Rectangle:
    """A rectangle along the axes, by its corners with the smallest and largest coordinates."""

    low_mm: Pair
    high_mm: Pair


@dataclass(frozen=True, kw_only=True, slots=True)
class Overhang:
    """How far a rectangle reaches over each side of another; negative inside it.

    Attributes
    ----------
    first_low_mm, first_high_mm, second_low_mm, second_high_mm
        Over the sides with the smallest and largest first and second coordinate.
    """

    first_low_mm: float
    first_high_mm: float
    second_low_mm: float
    second_high_mm: float


def seen(space: Box, axes: tuple[int, int]) -> Rectangle:
    """Return a box as it is seen along the axis that is not named."""
    one, other = axes
    return Rectangle(
        low_mm=(space.low_mm[one], space.low_mm[other]),
        high_mm=(space.high_mm[one], space.high_mm[other]),
    )


def overhang(inner: Rectangle, outline: Rectangle) -> Overhang:
    """Return how far a rectangle reaches over each side of an outline."""
    return Overhang(
        first_low_mm=outline.low_mm[0] - inner.low_mm[0],
        first_high_mm=inner.high_mm[0] - outline.high_mm[0],
        second_low_mm=outline.low_mm[1] - inner.low_mm[1],
        second_high_mm=inner.high_mm[1] - outline.high_mm[1],
    )


def shift_mm(one: Rectangle, other: Rectangle) -> float:
    """Return the smallest shift along an axis that parts two rectangles: 0 where they are apart.

    Examples
    --------
    >>> shift_mm(
    ...     Rectangle(low_mm=(0.0, 0.0), high_mm=(100.0, 100.0)),
    ...     Rectangle(low_mm=(90.0, 30.0), high_mm=(300.0, 60.0)),
    ... )
    10.0
    """
    shifts = [
        shift
        for axis in (0, 1)
        for shift in (
            one.high_mm[axis] - other.low_mm[axis],
            other.high_mm[axis] - one.low_mm[axis],
        )
    ]
    return max(0.0, min(shifts))


def gap_mm(one: Rectangle, other: Rectangle) -> float:
    """Return the distance between two rectangles: 0 where they touch or overlap."""
    apart = [
        max(other.low_mm[axis] - one.high_mm[axis], one.low_mm[axis] - other.high_mm[axis], 0.0)
        for axis in (0, 1)
    ]
    return math.hypot(apart[0], apart[1])


def common(one: Rectangle, other: Rectangle) -> Rectangle | None:
    """Return what two rectangles share; None where that has no area."""
    low = (max(one.low_mm[0], other.low_mm[0]), max(one.low_mm[1], other.low_mm[1]))
    high = (min(one.high_mm[0], other.high_mm[0]), min(one.high_mm[1], other.high_mm[1]))
    if low[0] >= high[0] or low[1] >= high[1]:
        return None
    return Rectangle(low_mm=low, high_mm=high)


def covered_frac(target: Rectangle, covers: Iterable[Rectangle]) -> float:
    """Return the share of a rectangle that others cover together.

    Notes
    -----
    The covers' edges cut the target into cells; a cell is covered where a cover holds its middle.
    Exact, and right for covers that overlap each other.

    Examples
    --------
    >>> target = Rectangle(low_mm=(0.0, 0.0), high_mm=(10.0, 10.0))
    >>> cover = Rectangle(low_mm=(5.0, -5.0), high_mm=(20.0, 20.0))
    >>> covered_frac(target, [cover, cover])
    0.5
    """
    inside = [shared for cover in covers if (shared := common(target, cover)) is not None]
    firsts, seconds = (
        sorted(
            {target.low_mm[axis], target.high_mm[axis]}
            | {edge for part in inside for edge in (part.low_mm[axis], part.high_mm[axis])}
        )
        for axis in (0, 1)
    )
    taken = 0.0
    for low, high in pairwise(firsts):
        here = [part for part in inside if part.low_mm[0] <= low and high <= part.high_mm[0]]
        for bottom, top in pairwise(seconds):
            if any(part.low_mm[1] <= bottom and top <= part.high_mm[1] for part in here):
                taken += (high - low) * (top - bottom)
    return taken / _area_mm2(target)


def _area_mm2(rectangle: Rectangle) -> float:
    return (rectangle.high_mm[0] - rectangle.low_mm[0]) * (
        rectangle.high_mm[1] - rectangle.low_mm[1]
    )


def largest_square_mm(outline: Rectangle, obstacles: Sequence[Rectangle]) -> float:
    """Return the side of the largest free square, along the axes, in an outline. [mm].

    Notes
    -----
    The largest free square can be pushed towards small coordinates until it touches: its low
    edges then lie on the outline or on high edges of obstacles.  For each such corner the side is
    the smallest s at which an obstacle begins that the square would meet.  Exact.

    Examples
    --------
    >>> outline = Rectangle(low_mm=(0.0, 0.0), high_mm=(1000.0, 600.0))
    >>> largest_square_mm(outline, [Rectangle(low_mm=(0.0, 0.0), high_mm=(500.0, 600.0))])
    500.0
    """
    inside = [shared for each in obstacles if (shared := common(outline, each)) is not None]
    firsts = {outline.low_mm[0], *(each.high_mm[0] for each in inside)}
    seconds = {outline.low_mm[1], *(each.high_mm[1] for each in inside)}
    return max(
        _square_at_mm(first, second, outline, inside) for first in firsts for second in seconds
    )


def _square_at_mm(
    first_mm: float, second_mm: float, outline: Rectangle, obstacles: Sequence[Rectangle]
) -> float:
    """Return the side of the largest free square with its low corner at a point."""
    side_mm = min(outline.high_mm[0] - first_mm, outline.high_mm[1] - second_mm)
    for each in obstacles:
        if each.high_mm[0] > first_mm and each.high_mm[1] > second_mm:
            begins = max(each.low_mm[0] - first_mm, each.low_mm[1] - second_mm, 0.0)
            side_mm = min(side_mm, begins)
    return max(0.0, side_mm)
