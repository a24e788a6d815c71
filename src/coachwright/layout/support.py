"""What holds each fitting: nothing floats."""

from collections.abc import Mapping

from coachwright.layout.doors import hole_of
from coachwright.layout.model import Support
from coachwright.layout.solids import Box, Solid
from coachwright.model.build import INSIDE, Fitted, Mounting
from coachwright.model.shell import BuildUp, narrowest_half_width_mm
from coachwright.model.vehicle import BaseVehicle

LEAST_CONTACT_MM = 10.0
"""Two fittings touch where they share a face of at least this by this; ours, no source."""

NOT_JUDGED = frozenset({Mounting.CAB, Mounting.WHEELS})
"""Mountings on what the vehicle's record does not describe."""


def support_of(
    *, fitted: Fitted, solids: Mapping[str, Solid], vehicle: BaseVehicle, build_up: BuildUp
) -> Support:
    """Return what holds a fitting and how far it is from it.

    Parameters
    ----------
    fitted
        Not mounted in the cab or on the wheels, unless another fitting carries it.
    solids
        All fittings as solids, by name.
    vehicle, build_up
        Shell and finishes.

    Notes
    -----
    A fitting that is built into another, or stands on it, is held where the two share a face of at
    least `LEAST_CONTACT_MM` each way, or overlap.  Any other is held by what its mounting says:
    the finished floor, the ceiling or the nearer side wall; a wall within the clear rectangle of a
    door holds nothing.  Outside: the skin of the roof between its edge and its crown, the rear end
    between the finished and the outer face of the doors, the side between the finished and the
    outer face, the top of the free places under the floor, the hitch point.  The gap is the
    smallest shift that brings the two together.
    """
    body = solids[fitted.name]
    fitting = fitted.fitting
    outside = fitting.mounting not in INSIDE
    carrier = fitting.within or fitting.on
    if carrier:
        gap_mm = contact_gap_mm(body, solids[carrier])
        return Support(name=fitted.name, carrier=carrier, gap_mm=gap_mm, outside=outside)
    if fitting.mounting is Mounting.HITCH:
        return _by_hitch(body, vehicle)
    if fitting.mounting is Mounting.WALL:
        wall, gap_mm = _wall(body, vehicle, build_up)
        return Support(name=fitted.name, carrier=wall, gap_mm=gap_mm, outside=False)
    return Support(
        name=fitted.name,
        carrier=str(fitting.mounting),
        gap_mm=_gap_mm(body.bounds, fitting.mounting, vehicle, build_up),
        outside=outside,
    )


def contact_gap_mm(one: Solid, other: Solid) -> float:
    """Return the smallest shift that makes two solids touch: 0 where they do or overlap. [mm].

    Notes
    -----
    For each pair of boxes and each axis as the one across the common face: the largest of the gap
    on that axis and of what the faces lack of `LEAST_CONTACT_MM` on the other two; the smallest
    over all.  A box that is smaller than that needs no more than its own size.
    """
    return min(
        max(_apart_mm(a, b, axis, across=axis == face) for axis in range(3))
        for a in one.boxes
        for b in other.boxes
        for face in range(3)
    )


def _apart_mm(one: Box, other: Box, axis: int, *, across: bool) -> float:
    """Return the shift along an axis that two boxes lack of touching, at least 0."""
    shared_mm = min(one.high_mm[axis], other.high_mm[axis]) - max(
        one.low_mm[axis], other.low_mm[axis]
    )
    wanted_mm = 0.0
    if not across:
        sizes_mm = (b.high_mm[axis] - b.low_mm[axis] for b in (one, other))
        wanted_mm = min(LEAST_CONTACT_MM, *sizes_mm)
    return max(0.0, wanted_mm - shared_mm)


def _gap_mm(bounds: Box, mounting: Mounting, vehicle: BaseVehicle, build_up: BuildUp) -> float:
    low, high = bounds.low_mm, bounds.high_mm
    outside, shell = vehicle.outside, vehicle.shell
    if mounting is Mounting.FLOOR:
        return max(0.0, low[2] - build_up.floor_mm)
    if mounting is Mounting.CEILING:
        return max(0.0, shell.ceiling_mm - build_up.ceiling_mm - high[2])
    if mounting is Mounting.ROOF:
        top_mm = outside.height_mm - outside.floor_height_mm
        return _to_band_mm(low[2], high[2], top_mm - vehicle.roof.crown_mm, top_mm)
    if mounting is Mounting.UNDERBODY:
        return max(0.0, _underside_mm(bounds, vehicle) - high[2])
    if mounting is Mounting.SIDE:
        inner_mm = narrowest_half_width_mm(shell, low[2], high[2]) - build_up.walls_mm
        skin_mm = outside.width_mm / 2
        nearest_mm, farthest_mm = max(low[1], -high[1]), max(-low[1], high[1])
        return _to_band_mm(nearest_mm, farthest_mm, min(inner_mm, skin_mm), skin_mm)
    rear_mm = outside.length_mm - outside.front_overhang_mm
    return _to_band_mm(low[0], high[0], shell.rear_mm - build_up.doors_mm, rear_mm)


def _to_band_mm(low_mm: float, high_mm: float, from_mm: float, to_mm: float) -> float:
    """Return the distance between two stretches of one axis; 0 where they touch."""
    return max(0.0, low_mm - to_mm, from_mm - high_mm)


def _underside_mm(bounds: Box, vehicle: BaseVehicle) -> float:
    """Return the top of the free places under the floor that a body stands in; else the floor."""
    tops_mm = [
        max(zone.from_mm[2], zone.to_mm[2])
        for zone in vehicle.underbody
        if zone.use == "free"
        and all(
            min(zone.from_mm[axis], zone.to_mm[axis]) < bounds.high_mm[axis]
            and max(zone.from_mm[axis], zone.to_mm[axis]) > bounds.low_mm[axis]
            for axis in (0, 1)
        )
    ]
    return max(tops_mm, default=0.0)


def _by_hitch(body: Solid, vehicle: BaseVehicle) -> Support:
    rear_end = vehicle.rear_end
    gap_mm = None
    if rear_end.hitch_x_mm is not None and rear_end.hitch_height_mm is not None:
        point_mm = (
            rear_end.hitch_x_mm,
            0.0,
            rear_end.hitch_height_mm - vehicle.outside.floor_height_mm,
        )
        gap_mm = max(
            _to_band_mm(body.bounds.low_mm[axis], body.bounds.high_mm[axis], place_mm, place_mm)
            for axis, place_mm in enumerate(point_mm)
        )
    missing = "the vehicle's hitch point" if gap_mm is None else ""
    return Support(
        name=body.name, carrier=str(Mounting.HITCH), gap_mm=gap_mm, outside=True, missing=missing
    )


def _wall(body: Solid, vehicle: BaseVehicle, build_up: BuildUp) -> tuple[str, float]:
    """Return the nearer side wall and the gap to it."""
    gaps: list[tuple[float, str]] = []
    for part in body.boxes:
        half_mm = (
            narrowest_half_width_mm(vehicle.shell, part.low_mm[2], part.high_mm[2])
            - build_up.walls_mm
        )
        for side, gap_mm in (
            ("left", part.low_mm[1] + half_mm),
            ("right", half_mm - part.high_mm[1]),
        ):
            past_mm = _past_door_mm(part, side, vehicle)
            gaps.append((max(gap_mm, past_mm, 0.0), f"{side} wall"))
    gap_mm, wall = min(gaps)
    return wall, gap_mm


def _past_door_mm(part: Box, side: str, vehicle: BaseVehicle) -> float:
    """Return the shift that brings a box from within a door's clear rectangle onto the wall."""
    for aperture in vehicle.apertures:
        hole = hole_of(aperture)
        if hole.wall != side:
            continue
        margins_mm = (
            part.low_mm[0] - hole.from_mm,
            hole.to_mm - part.high_mm[0],
            part.low_mm[2] - hole.bottom_mm,
            hole.top_mm - part.high_mm[2],
        )
        if min(margins_mm) >= 0:
            return min(margins_mm) + LEAST_CONTACT_MM
    return 0.0
