"""Slide-out trays: where they go, what they pass and what they meet."""

from collections.abc import Sequence

from coachwright.layout.model_outside import Tray, TrayHit
from coachwright.layout.plane import BEHIND, BESIDE, Rectangle, overhang, seen
from coachwright.layout.solids import Box, Solid, bounds_of, overlap, solid
from coachwright.model.vehicle import Aperture, BaseVehicle

WAYS: tuple[tuple[str, int, float], ...] = (
    ("rear", 0, 1.0),
    ("right", 1, 1.0),
    ("front", 0, -1.0),
    ("left", 1, -1.0),
)
"""Where a tray goes that is turned by 0, 90, 180 and 270 degrees: its name, axis and sense."""
_QUARTER_DEG = 90.0


def tray_out(
    *,
    body: Solid,
    load: Sequence[Solid],
    load_kg: float,
    travel_mm: float,
    turn_deg: float,
    others: Sequence[Solid],
    vehicle: BaseVehicle,
    slack_mm: float,
) -> Tray:
    """Return a slide-out tray when it is out.

    Parameters
    ----------
    body
        The tray, closed.
    load
        What stands on it.
    load_kg
        Mass of that with contents. [kg]
    travel_mm
        How far it slides. [mm]
    turn_deg
        Of the tray: unturned it slides rearwards. [deg]
    others
        What stands still: not the load, nor what the tray is built into, nor what swings away
        with an open door.
    vehicle
        Gives the doorways and the outside.
    slack_mm
        Overlaps not deeper than this do not count. [mm]

    Notes
    -----
    What the tray and its load sweep is one box, from where they stand closed to where they stand
    out; its section must lie within the doorway.  The doors are taken as open and out of the way.
    """
    way, axis, sense = WAYS[round(turn_deg / _QUARTER_DEG) % len(WAYS)]
    swept = _swept(
        bounds_of((body.bounds, *(each.bounds for each in load))), axis, sense, travel_mm
    )
    wall_mm, skin_mm = _wall_mm(vehicle, way)
    end_mm = swept.high_mm[axis] if sense > 0 else -swept.low_mm[axis]
    leaves = way != "front" and end_mm > wall_mm
    doorway = _doorway(swept, way, vehicle.apertures) if leaves else None
    moving = solid(body.name, (swept,))
    hits = [
        TrayHit(name=other.name, shift_mm=shared.shift_mm)
        for other in others
        if (shared := overlap(moving, other, slack_mm=slack_mm)) is not None
    ]
    return Tray(
        name=body.name,
        load=tuple(each.name for each in load),
        load_kg=load_kg,
        way=way,
        leaves=leaves,
        opening=doorway.name if doorway else "",
        spare_mm=_spare_mm(swept, way, doorway) if doorway else None,
        beyond_mm=max(0.0, end_mm - skin_mm) if leaves else 0.0,
        hits=tuple(sorted(hits, key=lambda hit: -hit.shift_mm)),
        top_mm=swept.high_mm[2] + vehicle.outside.floor_height_mm,
    )


def _swept(space: Box, axis: int, sense_factor: float, travel_mm: float) -> Box:
    low, high = list(space.low_mm), list(space.high_mm)
    if sense_factor > 0:
        high[axis] += travel_mm
    else:
        low[axis] -= travel_mm
    return Box(low_mm=(low[0], low[1], low[2]), high_mm=(high[0], high[1], high[2]))


def _wall_mm(vehicle: BaseVehicle, way: str) -> tuple[float, float]:
    """Return how far the inside and the outside of the vehicle reach in a direction."""
    outside = vehicle.outside
    if way == "rear":
        return vehicle.shell.rear_mm, outside.length_mm - outside.front_overhang_mm
    widest_mm = max(row.half_width_mm for row in vehicle.shell.half_widths)
    return widest_mm, outside.width_mm / 2


def _section(swept: Box, way: str) -> Rectangle:
    return seen(swept, BEHIND if way == "rear" else BESIDE)


def _doorway(swept: Box, way: str, apertures: Sequence[Aperture]) -> Aperture | None:
    """Return the doorway of that wall through which it goes best."""
    found = [aperture for aperture in apertures if aperture.wall == way]
    return max(found, key=lambda each: _spare_mm(swept, way, each), default=None)


def _spare_mm(swept: Box, way: str, doorway: Aperture) -> float:
    over = overhang(
        _section(swept, way),
        Rectangle(
            low_mm=(doorway.from_mm, doorway.sill_mm),
            high_mm=(
                doorway.from_mm + doorway.clear_width_mm,
                doorway.sill_mm + doorway.clear_height_mm,
            ),
        ),
    )
    return -max(over.first_low_mm, over.first_high_mm, over.second_low_mm, over.second_high_mm)
