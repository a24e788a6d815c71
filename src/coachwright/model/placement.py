"""Where a fitting stands: its turned bounding box and its centre of mass."""

from dataclasses import dataclass

from coachwright.model.build import TURNS_DEG, Fitted
from coachwright.model.facets import Body

Point = tuple[float, float, float]

_, _QUARTER_DEG, _HALF_DEG, _THREE_QUARTERS_DEG = TURNS_DEG


@dataclass(frozen=True, kw_only=True, slots=True)
class Placed:
    """A fitting's box and centre of mass in the vehicle's axes (z from the load floor).

    Attributes
    ----------
    low_mm, high_mm
        Corners of the bounding box with the smallest and the largest x, y, z.
    centre_mm
        Centre of mass.
    """

    low_mm: Point
    high_mm: Point
    centre_mm: Point


def turned_size_mm(size_mm: Point, turn_deg: float) -> Point:
    """Return the size of a box after a quarter turn.

    Examples
    --------
    >>> turned_size_mm((900.0, 500.0, 880.0), 90.0)
    (500.0, 900.0, 880.0)
    """
    length, width, height = size_mm
    return (
        (width, length, height)
        if turn_deg in (_QUARTER_DEG, _THREE_QUARTERS_DEG)
        else (length, width, height)
    )


def turned_point_mm(point_mm: Point, size_mm: Point, turn_deg: float, *, mirror: bool) -> Point:
    """Return a point of the unturned body from the smallest corner of the turned box.

    Parameters
    ----------
    point_mm
        From the unturned body's smallest corner.
    size_mm
        Of the unturned body.
    turn_deg
        0, 90, 180 or 270, anticlockwise seen from above.
    mirror
        Swaps left and right first.

    Examples
    --------
    >>> turned_point_mm((100.0, 50.0, 0.0), (900.0, 500.0, 880.0), 90.0, mirror=False)
    (450.0, 100.0, 0.0)
    """
    x_mm, y_mm, z_mm = point_mm
    length, width, _ = size_mm
    if mirror:
        y_mm = width - y_mm
    if turn_deg == _QUARTER_DEG:
        return (width - y_mm, x_mm, z_mm)
    if turn_deg == _HALF_DEG:
        return (length - x_mm, width - y_mm, z_mm)
    if turn_deg == _THREE_QUARTERS_DEG:
        return (y_mm, length - x_mm, z_mm)
    return (x_mm, y_mm, z_mm)


def placed(fitted: Fitted) -> Placed:
    """Return where a fitting stands."""
    body: Body = fitted.part.body
    size = turned_size_mm(body.size_mm, fitted.fitting.turn_deg)
    low = fitted.at_mm
    return Placed(
        low_mm=low,
        high_mm=(low[0] + size[0], low[1] + size[1], low[2] + size[2]),
        centre_mm=point_of(fitted, body.centre_of_mass_mm()),
    )


def point_of(fitted: Fitted, point_mm: Point) -> Point:
    """Return a point [mm] of a fitting's unturned body in the vehicle's axes."""
    local = turned_point_mm(
        point_mm,
        fitted.part.body.size_mm,
        fitted.fitting.turn_deg,
        mirror=fitted.fitting.mirror,
    )
    low = fitted.at_mm
    return (low[0] + local[0], low[1] + local[1], low[2] + local[2])
