"""Doors of the vehicle: what may pass them, and where a rear door takes what hangs on it."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from coachwright.layout.solids import Box, Solid, bounds_of, box, solid
from coachwright.model.build import Mounting
from coachwright.model.placement import Point
from coachwright.model.vehicle import Aperture, BaseVehicle

QUARTER_DEG = 90.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Hole:
    """The clear rectangle of a door in its wall.

    Attributes
    ----------
    from_mm, to_mm
        Along the wall: x for a side wall, y for the rear.
    bottom_mm, top_mm
        Above the load floor.
    """

    name: str
    wall: str
    from_mm: float
    to_mm: float
    bottom_mm: float
    top_mm: float

    def holds(self, along_mm: float, height_mm: float) -> bool:
        """Say whether a point of the wall [mm] lies within the door."""
        return (
            self.from_mm <= along_mm <= self.to_mm and self.bottom_mm <= height_mm <= self.top_mm
        )


def hole_of(aperture: Aperture, *, any_height: bool = False) -> Hole:
    """Return the clear rectangle of a door.

    Parameters
    ----------
    aperture
        Of the vehicle.
    any_height
        Sill and lintel do not count: people step over the one and stoop under the other.
    """
    return Hole(
        name=aperture.name,
        wall=aperture.wall,
        from_mm=aperture.from_mm,
        to_mm=aperture.from_mm + aperture.clear_width_mm,
        bottom_mm=-math.inf if any_height else aperture.sill_mm,
        top_mm=math.inf if any_height else aperture.sill_mm + aperture.clear_height_mm,
    )


def swung(body: Solid, vehicle: BaseVehicle, door: Mounting, open_deg: float) -> Solid:
    """Return where a rear door takes what hangs on it.

    Parameters
    ----------
    body
        With the door closed.
    vehicle
        Gives the hinge line: at the rear end, `door_hinge_y_mm` from the centreline.
    door
        Left or right rear door.
    open_deg
        How far the door stands open. [deg]

    Notes
    -----
    x' = xh + (x - xh)·cos a - (y - yh)·sin a,  y' = yh + (x - xh)·sin a + (y - yh)·cos a, with
    a = -open for the left door and +open for the right.  Exact at quarter turns; between them the
    box around each turned box.
    """
    outside = vehicle.outside
    sign = -1.0 if door is Mounting.REAR_DOOR_LEFT else 1.0
    hinge_mm = (
        outside.length_mm - outside.front_overhang_mm,
        sign * vehicle.rear_end.door_hinge_y_mm,
    )
    cos, sin = _cos_sin_ratio(sign * open_deg)

    def turned(point: Point) -> Point:
        x_mm, y_mm = point[0] - hinge_mm[0], point[1] - hinge_mm[1]
        return (
            hinge_mm[0] + x_mm * cos - y_mm * sin,
            hinge_mm[1] + x_mm * sin + y_mm * cos,
            point[2],
        )

    return solid(body.name, tuple(_around(part, turned) for part in body.boxes))


def _around(part: Box, turned: Callable[[Point], Point]) -> Box:
    """Return the box around a turned box."""
    (x0, y0, z0), (x1, y1, z1) = part.low_mm, part.high_mm
    one = box(turned((x0, y0, z0)), turned((x1, y1, z1)))
    other = box(turned((x0, y1, z0)), turned((x1, y0, z1)))
    return bounds_of((one, other))


def _cos_sin_ratio(angle_deg: float) -> tuple[float, float]:
    """Return cosine and sine, exact at quarter turns."""
    quarters = angle_deg / QUARTER_DEG
    if quarters == round(quarters):
        return ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[round(quarters) % 4]
    return math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg))
