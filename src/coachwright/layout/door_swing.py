"""How far something that turns about a hinge line goes before it touches something fixed."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.layout.plane import Pair, Rectangle

_STEP_DEG = 0.01
"""A touch counts where a turn by this much more would make the two overlap."""
_TOUCH_MM = 1e-6
"""Rectangles that overlap by less only touch."""
_HALF_TURN_DEG = 180.0
_FULL_TURN_DEG = 360.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Contact:
    """The angle at which something that turns touches something fixed."""

    open_deg: float


def first_contact(*, moving: Rectangle, fixed: Rectangle, limit_deg: float) -> Contact | None:
    """Return the first angle at which a turning rectangle meets a fixed one.

    Parameters
    ----------
    moving
        With the door closed: first coordinate along the door from the hinge line, second
        outwards from the door. [mm]
    fixed
        First coordinate from the hinge line away from the door, second rearwards. [mm]
    limit_deg
        How far the door turns. [deg]

    Returns
    -------
    Contact or None
        None where nothing is touched within the limit.

    Notes
    -----
    A point (r, n) of the door starts at the polar angle atan2(n, -r) and turns down from it.  A
    first contact is a corner of one rectangle on an edge of the other: each corner's circle about
    the hinge is cut with the lines of the other's edges, and of the angles found the smallest
    counts at which the two overlap just beyond it.  Exact but for `_STEP_DEG`.

    Examples
    --------
    A box 100 mm deep whose near edge is 100 mm from the hinge comes up against the wall beside
    the doorway at 180 - atan(100 / 100) = 135 degrees.

    >>> box = Rectangle(low_mm=(100.0, 0.0), high_mm=(400.0, 100.0))
    >>> wall = Rectangle(low_mm=(-2000.0, -5000.0), high_mm=(200.0, 0.0))
    >>> found = first_contact(moving=box, fixed=wall, limit_deg=180.0)
    >>> found and round(found.open_deg, 3)
    135.0
    """
    door = Rectangle(
        low_mm=(-moving.high_mm[0], moving.low_mm[1]),
        high_mm=(-moving.low_mm[0], moving.high_mm[1]),
    )
    touching = sorted(
        angle
        for angle in (
            0.0,
            *_corner_angles_deg(door, fixed, 1.0),
            *_corner_angles_deg(fixed, door, -1.0),
        )
        if angle < limit_deg
    )
    for angle in touching:
        if _overlap(door, fixed, angle + _STEP_DEG):
            return Contact(open_deg=angle)
    return None


def _corner_angles_deg(
    corners: Rectangle, edges: Rectangle, sense_factor: float
) -> Iterator[float]:
    """Yield the door angles at which a corner of one comes upon the lines of the other's edges."""
    for first, second in _corners(corners):
        radius = math.hypot(first, second)
        start_deg = math.degrees(math.atan2(second, first))
        if radius == 0:
            continue
        for line in (edges.low_mm[0], edges.high_mm[0]):
            if abs(line) <= radius:
                half_deg = math.degrees(math.acos(line / radius))
                yield sense_factor * (start_deg - half_deg) % _FULL_TURN_DEG
                yield sense_factor * (start_deg + half_deg) % _FULL_TURN_DEG
        for line in (edges.low_mm[1], edges.high_mm[1]):
            if abs(line) <= radius:
                up_deg = math.degrees(math.asin(line / radius))
                yield sense_factor * (start_deg - up_deg) % _FULL_TURN_DEG
                yield sense_factor * (start_deg - _HALF_TURN_DEG + up_deg) % _FULL_TURN_DEG


def _corners(rectangle: Rectangle) -> tuple[Pair, Pair, Pair, Pair]:
    (x0, y0), (x1, y1) = rectangle.low_mm, rectangle.high_mm
    return (x0, y0), (x1, y0), (x1, y1), (x0, y1)


def _overlap(door: Rectangle, fixed: Rectangle, angle_deg: float) -> bool:
    """Say whether the two overlap with the door at an angle, by their four separating axes."""
    turned = [_turned(corner, -angle_deg) for corner in _corners(door)]
    back = [_turned(corner, angle_deg) for corner in _corners(fixed)]
    return _meet(turned, fixed) and _meet(back, door)


def _turned(point: Pair, angle_deg: float) -> Pair:
    cos, sin = math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg))
    return (point[0] * cos - point[1] * sin, point[0] * sin + point[1] * cos)


def _meet(corners: list[Pair], rectangle: Rectangle) -> bool:
    return all(
        max(corner[axis] for corner in corners) - rectangle.low_mm[axis] > _TOUCH_MM
        and rectangle.high_mm[axis] - min(corner[axis] for corner in corners) > _TOUCH_MM
        for axis in (0, 1)
    )


def needed_gap_mm(*, reach_mm: float, beside_mm: float) -> float:
    """Return the free depth behind a doorway that a door needs to open to a right angle. [mm].

    Parameters
    ----------
    reach_mm
        From the hinge line to the farthest corner of the door with what hangs on it. [mm]
    beside_mm
        From the hinge line, towards the middle, to the near edge of what stands behind. [mm]

    Notes
    -----
    √(R² - b²): the height of the corner's circle over that edge; R where the edge lies at or
    beyond the hinge line, 0 where it lies out of reach.

    Examples
    --------
    >>> needed_gap_mm(reach_mm=1000.0, beside_mm=600.0)
    800.0
    """
    beside = max(0.0, beside_mm)
    return math.sqrt(reach_mm**2 - beside**2) if beside < reach_mm else 0.0
