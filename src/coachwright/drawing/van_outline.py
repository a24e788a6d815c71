"""A plain van seen from its left side, to the vehicle's own measures.

The shape is nobody's: bumper, bonnet, windscreen and roof stand in fixed shares of the overall
height and the front overhang.  It places what is fitted; it is not for measuring bodywork.
"""

import math
from collections.abc import Iterator

from coachwright.drawing.scene import Arc, Circle, Layer, Line, Polyline, Primitive, Style, Weight
from coachwright.model.vehicle import BaseVehicle

SILL_OF_FLOOR_FACTOR = 0.55
"""The sill stands at this share of the load floor's height above the ground."""
_ARCH_OVER_TYRE = 1.16
_RIM_OF_TYRE = 0.58
_HUB_OF_TYRE = 0.16


def van_outline(vehicle: BaseVehicle, *, wheel_diameter_mm: float) -> Iterator[Primitive]:
    """Yield the body, its glass, the load floor, the cab line and the wheels."""
    yield from body_side(vehicle)
    yield from wheels_side(vehicle, wheel_diameter_mm=wheel_diameter_mm)


def body_side(vehicle: BaseVehicle) -> Iterator[Primitive]:
    """Yield the body, its glass, the load floor and the cab line."""
    yield _body(vehicle)
    yield _glass(vehicle)
    floor = vehicle.outside.floor_height_mm
    cab = vehicle.shell.cab_line_mm
    for end in ((vehicle.shell.rear_mm, floor), (cab, floor + vehicle.shell.ceiling_mm)):
        yield Line(
            start_mm=(cab, floor),
            end_mm=end,
            layer=Layer.GROUND,
            weight=Weight.FINE,
            style=Style.DASHED,
        )


def _body(vehicle: BaseVehicle) -> Polyline:
    outside, cab = vehicle.outside, vehicle.shell.cab_line_mm
    front = -outside.front_overhang_mm
    rear = outside.length_mm - outside.front_overhang_mm
    height = outside.height_mm
    sill = SILL_OF_FLOOR_FACTOR * outside.floor_height_mm
    return Polyline(
        points_mm=(
            (front + 40, sill),
            (front, sill + 90),
            (front, 0.30 * height),
            (front + 70, 0.39 * height),
            (front + 0.62 * outside.front_overhang_mm, 0.485 * height),
            (0.50 * cab, 0.83 * height),
            (0.95 * cab, 0.975 * height),
            (1.25 * cab, height),
            (rear - 130, height),
            (rear - 45, 0.985 * height),
            (rear - 15, 0.95 * height),
            (rear, 0.45 * height),
            (rear, sill + 60),
            (rear - 40, sill),
        ),
        layer=Layer.BODY,
        weight=Weight.BOLD,
        closed=True,
        filled=True,
    )


def _glass(vehicle: BaseVehicle) -> Polyline:
    height = vehicle.outside.height_mm
    foot = 0.5 * height
    base = -0.38 * vehicle.outside.front_overhang_mm + 190
    cab = vehicle.shell.cab_line_mm
    return Polyline(
        points_mm=(
            (base, foot),
            (0.53 * cab, 0.79 * height),
            (0.90 * cab, 0.79 * height),
            (0.90 * cab, foot),
        ),
        layer=Layer.BODY,
        weight=Weight.FINE,
        closed=True,
    )


def wheels_side(
    vehicle: BaseVehicle, *, wheel_diameter_mm: float, lift_mm: float = 0.0
) -> Iterator[Primitive]:
    """Yield the wheels on the ground, each in its arch.

    Parameters
    ----------
    vehicle
        For its axles.
    wheel_diameter_mm
        Of the tyres fitted. [mm]
    lift_mm
        How much higher the body stands on them than on its own. [mm]
    """
    sill_mm = SILL_OF_FLOOR_FACTOR * vehicle.outside.floor_height_mm + lift_mm
    radius = wheel_diameter_mm / 2
    arch = _ARCH_OVER_TYRE * radius
    sill_deg = math.degrees(math.asin(max(-1.0, min(1.0, (sill_mm - radius) / arch))))
    for x in (0.0, vehicle.outside.wheelbase_mm):
        hub = (x, radius)
        yield Arc(
            centre_mm=hub,
            radius_mm=arch,
            from_deg=sill_deg,
            to_deg=180.0 - sill_deg,
            layer=Layer.BODY,
        )
        yield Circle(centre_mm=hub, radius_mm=radius, layer=Layer.BODY, weight=Weight.BOLD)
        yield Circle(
            centre_mm=hub, radius_mm=_RIM_OF_TYRE * radius, layer=Layer.BODY, weight=Weight.FINE
        )
        yield Circle(
            centre_mm=hub, radius_mm=_HUB_OF_TYRE * radius, layer=Layer.BODY, weight=Weight.FINE
        )
