"""Under the floor: what is taken, what is free, how low things hang."""

import math
from collections.abc import Sequence

from coachwright.layout.model_outside import Taken, UnderPlace
from coachwright.layout.solids import Box, Solid, box, overlap, solid
from coachwright.model.vehicle import UnderbodyZone


def under_place(
    *, body: Solid, zones: Sequence[UnderbodyZone], floor_height_mm: float, slack_mm: float
) -> UnderPlace:
    """Return where a fitting hangs under the floor.

    Parameters
    ----------
    body
        In the vehicle's axes.
    zones
        Free and taken places of the vehicle.
    floor_height_mm
        Load floor above the ground. [mm]
    slack_mm
        Overlaps not deeper than this do not count. [mm]

    Notes
    -----
    Free place: the one that the fitting reaches out of least; several free places side by side
    are not joined.  Exhaust: the distance between the nearest two points, √(Δx² + Δy² + Δz²).
    """
    taken = []
    for zone in zones:
        if zone.use != "free":
            shared = overlap(body, solid(zone.name, (_space(zone),)), slack_mm=slack_mm)
            if shared is not None:
                taken.append(Taken(zone=zone.name, use=zone.use, shift_mm=shared.shift_mm))
    free = {
        zone.name: _outside_mm(body.bounds, _space(zone)) for zone in zones if zone.use == "free"
    }
    best = min(free, key=lambda name: free[name], default="")
    exhausts = [_space(zone) for zone in zones if zone.use == "exhaust"]
    return UnderPlace(
        name=body.name,
        taken=tuple(sorted(taken, key=lambda each: -each.shift_mm)),
        free_zone=best,
        outside_mm=free[best] if best else None,
        clearance_mm=body.bounds.low_mm[2] + floor_height_mm,
        exhaust_mm=min(
            (_distance_mm(part, space) for part in body.boxes for space in exhausts), default=None
        ),
    )


def _space(zone: UnderbodyZone) -> Box:
    return box(zone.from_mm, zone.to_mm)


def _outside_mm(inner: Box, outer: Box) -> float:
    """Return how far a box reaches out of another: the largest over its six faces."""
    return max(
        0.0,
        *(outer.low_mm[axis] - inner.low_mm[axis] for axis in range(3)),
        *(inner.high_mm[axis] - outer.high_mm[axis] for axis in range(3)),
    )


def _distance_mm(one: Box, other: Box) -> float:
    return math.hypot(
        *(
            max(
                other.low_mm[axis] - one.high_mm[axis], one.low_mm[axis] - other.high_mm[axis], 0.0
            )
            for axis in range(3)
        )
    )
