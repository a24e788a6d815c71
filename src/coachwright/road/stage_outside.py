"""Take the outside of the build apart: size, angles, stability."""

from collections.abc import Iterator

from coachwright import reference
from coachwright.model.build import INSIDE, Build, Fitted, Mounting
from coachwright.model.placement import Placed, placed
from coachwright.road.departure import static_loaded_radius_mm
from coachwright.road.ground_angles import LowPoint, breakover_limit, departure_limit
from coachwright.road.model import GroundAngles, Stability, TyreSet
from coachwright.road.overall_size import OutsideBox, OverallSize, overall_size
from coachwright.road.stability import static_stability_factor
from coachwright.road.what_counts import Counting, Kind, what_counts
from coachwright.weights.model import Weights

_BEHIND = frozenset(
    {
        Mounting.REAR_DOOR_LEFT,
        Mounting.REAR_DOOR_RIGHT,
        Mounting.HITCH,
        Mounting.UNDERBODY,
        Mounting.SIDE,
    }
)
"""Mountings whose lower rear corner may limit the departure angle."""


def outside_fittings(build: Build) -> tuple[Fitted, ...]:
    """Return what is fixed to the outside, or stands on something that is; not the wheels."""
    return tuple(
        fitted
        for fitted in build.fittings
        if any(
            mounting not in INSIDE and mounting is not Mounting.WHEELS
            for mounting in mountings(build, fitted)
        )
    )


def mountings(build: Build, fitted: Fitted) -> tuple[Mounting, ...]:
    """Return a fitting's mounting and those of everything that carries it."""
    found = [fitted.fitting.mounting]
    seen = {fitted.name}
    carrier = build.fitted(fitted.fitting.on)
    while carrier is not None and carrier.name not in seen:
        found.append(carrier.fitting.mounting)
        seen.add(carrier.name)
        carrier = build.fitted(carrier.fitting.on)
    return tuple(found)


def size_with_everything(build: Build, tyres: TyreSet) -> tuple[OverallSize, tuple[str, ...]]:
    """Return the overall size, and what the jurisdiction leaves out of it."""
    outside = build.vehicle.outside
    lift_mm = tyres.change.ride_change_mm
    boxes: list[OutsideBox] = []
    left_out: list[str] = []
    for fitted in outside_fittings(build):
        place = placed(fitted)
        counting = _counting(build, fitted, place)
        boxes.append(
            OutsideBox(
                name=fitted.name,
                x_low_mm=place.low_mm[0],
                x_high_mm=place.high_mm[0],
                y_low_mm=place.low_mm[1],
                y_high_mm=place.high_mm[1],
                top_mm=_height_mm(build, tyres, place.high_mm[2]),
                in_length=counting.in_length,
                in_width=counting.in_width,
                in_height=counting.in_height,
            )
        )
        if counting.why_not:
            left_out.append(f"{fitted.name} ({counting.why_not})")
    size = overall_size(
        wheelbase_mm=outside.wheelbase_mm,
        front_overhang_mm=outside.front_overhang_mm,
        length_mm=outside.length_mm,
        width_mm=outside.width_mm,
        height_mm=outside.height_mm + lift_mm,
        boxes=boxes,
    )
    return size, tuple(left_out)


def ground_angles(build: Build, tyres: TyreSet) -> GroundAngles:
    """Return the departure angle with and without equipment, and what hangs between the axles."""
    wheelbase_mm = build.vehicle.outside.wheelbase_mm
    radius_mm = static_loaded_radius_mm(
        diameter_mm=tyres.dimensions.diameter_mm,
        radius_factor=reference.limit("road.static-radius-factor").value,
    )
    own = tuple(_own_points(build, tyres))
    hung = tuple(_rear_corners(build, tyres))
    under = tuple(_underside(build, tyres))
    between = breakover_limit(points=under, wheelbase_mm=wheelbase_mm, wheel_radius_mm=radius_mm)
    return GroundAngles(
        wheel_radius_mm=radius_mm,
        alone=departure_limit(points=own, wheelbase_mm=wheelbase_mm, wheel_radius_mm=radius_mm),
        equipped=departure_limit(
            points=(*own, *hung), wheelbase_mm=wheelbase_mm, wheel_radius_mm=radius_mm
        ),
        between=between,
        lowest_between_mm=min((point.height_mm for point in under), default=None),
    )


def stability(build: Build, weights: Weights, tyres: TyreSet) -> Stability:
    """Return the static stability factor travelling, on the fitted tyres."""
    outside = build.vehicle.outside
    lift_mm = tyres.change.ride_change_mm
    height = weights.case("travelling").cg_height
    at_nominal, at_low, at_high = (
        static_stability_factor(
            track_front_mm=outside.track_front_mm,
            track_rear_mm=outside.track_rear_mm,
            cg_height_mm=height_mm + lift_mm,
        )
        for height_mm in (height.nominal_mm, height.low_mm, height.high_mm)
    )
    return Stability(
        travelling=at_nominal,
        low_ratio=at_high.stability_ratio,
        high_ratio=at_low.stability_ratio,
    )


def _height_mm(build: Build, tyres: TyreSet, z_mm: float) -> float:
    return z_mm + build.vehicle.outside.floor_height_mm + tyres.change.ride_change_mm


def _counting(build: Build, fitted: Fitted, place: Placed) -> Counting:
    outside = build.vehicle.outside
    rear_mm = outside.length_mm - outside.front_overhang_mm
    return what_counts(
        place=build.brief.jurisdiction.value,
        kind=_kind(fitted),
        beyond_rear_mm=max(
            place.high_mm[0] - rear_mm, -outside.front_overhang_mm - place.low_mm[0], 0.0
        ),
        beyond_side_mm=max(
            place.high_mm[1] - outside.width_mm / 2, -outside.width_mm / 2 - place.low_mm[1], 0.0
        ),
        allowance_mm=reference.limit("road.us-device-allowance").value,
    )


def _kind(fitted: Fitted) -> Kind:
    part = fitted.part
    if part.outside_device is not None:
        return part.outside_device.kind
    if part.awning is not None:
        return "awning"
    if part.ladder is not None:
        return "ladder"
    if part.light is not None:
        return "lamp"
    return "other"


def _own_points(build: Build, tyres: TyreSet) -> Iterator[LowPoint]:
    rear, lift_mm = build.vehicle.rear_end, tyres.change.ride_change_mm
    yield LowPoint(of="vehicle", x_mm=rear.lowest_x_mm, height_mm=rear.lowest_height_mm + lift_mm)
    if rear.hitch_x_mm is not None and rear.hitch_height_mm is not None:
        yield LowPoint(of="hitch", x_mm=rear.hitch_x_mm, height_mm=rear.hitch_height_mm + lift_mm)


def _rear_corners(build: Build, tyres: TyreSet) -> Iterator[LowPoint]:
    for fitted in build.fittings:
        if _BEHIND.intersection(mountings(build, fitted)):
            place = placed(fitted)
            yield LowPoint(
                of=fitted.name,
                x_mm=place.high_mm[0],
                height_mm=_height_mm(build, tyres, place.low_mm[2]),
            )


def _underside(build: Build, tyres: TyreSet) -> Iterator[LowPoint]:
    for fitted in build.fittings:
        if Mounting.UNDERBODY in mountings(build, fitted):
            place = placed(fitted)
            height_mm = _height_mm(build, tyres, place.low_mm[2])
            for x_mm in (place.low_mm[0], place.high_mm[0]):
                if 0 < x_mm < build.vehicle.outside.wheelbase_mm:
                    yield LowPoint(of=fitted.name, x_mm=x_mm, height_mm=height_mm)
