"""Take the belted seats of a build to the space that people need in them."""

import math
from collections.abc import Iterator
from functools import cache

from coachwright.layout.assumptions import assumed_mm, entry_widths_mm
from coachwright.layout.clear_space import (
    Clear,
    clear_above,
    clear_ahead,
    nearest,
    wall_reaches_mm,
)
from coachwright.layout.model_interior import SeatSpace
from coachwright.layout.passage import Patch
from coachwright.layout.room import Room
from coachwright.layout.solids import Box, box
from coachwright.layout.stage_floor import door_lines, points_at, walked_floor
from coachwright.layout.walking import Floor, Rows, meets, points_in, reached_from, union
from coachwright.model.build import Fitted
from coachwright.model.facets import Seat
from coachwright.model.placement import Point, point_of
from coachwright.reference import limit

_FACES = {(0, -1.0): "forward", (0, 1.0): "rearward", (1, -1.0): "left", (1, 1.0): "right"}


def facing(fitted: Fitted, seat: Seat) -> tuple[int, float]:
    """Return axis and sense in which a seat faces, to the nearest quarter turn."""
    clockwise_deg = -seat.faces_deg if fitted.fitting.mirror else seat.faces_deg
    angle = math.radians(clockwise_deg - fitted.fitting.turn_deg)
    ahead = (-math.cos(angle), math.sin(angle))
    axis = 0 if abs(ahead[0]) >= abs(ahead[1]) else 1
    return axis, math.copysign(1.0, ahead[axis])


def seats_of(room: Room) -> Iterator[SeatSpace]:
    """Yield the space of each place of a belted travel seat inside."""

    @cache
    def walked(width_mm: float) -> tuple[Floor, Rows]:
        floor = walked_floor(room, width_mm, without_tables=True)
        starts = union([points_at(floor, line) for line in door_lines(room).values()])
        return floor, reached_from(floor, starts)

    for fitted in room.inside:
        seat = fitted.part.seat
        if seat is None or seat.belt == "none" or not seat.travel_seat:
            continue
        faces = facing(fitted, seat)
        bounds = room.solids[fitted.name].bounds
        for place in seat.places:
            point = point_of(fitted, place.reference_mm)
            entry_mm = next(
                (
                    width
                    for width in entry_widths_mm()
                    if _enters(*walked(width), bounds, point, faces)
                ),
                0.0,
            )
            name = f"{fitted.name}.{place.name}"
            head, table = _head(room, fitted, point), _table(room, point, *faces)
            yield SeatSpace(
                name=name,
                faces=_FACES[faces],
                entry_mm=entry_mm,
                head_mm=head.free_mm + limit("layout.seat-to-reference").value,
                head_under=head.ended_by,
                head_needed_mm=_sitting_height_mm(room, name),
                table=table.ended_by,
                table_mm=table.free_mm if table.ended_by else None,
            )


def _enters(
    floor: Floor, reached: Rows, seat: Box, point: Point, faces: tuple[int, float]
) -> bool:
    """Say whether the floor right in front of a place can be walked to."""
    axis, sign = faces
    radius_mm, step_mm = floor.width_mm / 2, floor.step_mm
    front_mm = seat.high_mm[axis] if sign > 0 else seat.low_mm[axis]
    near_mm = front_mm + sign * radius_mm
    far_mm = near_mm + sign * 2 * step_mm
    band_mm = assumed_mm("seat-band")
    low, high = [point[0] - band_mm, point[1] - band_mm], [point[0] + band_mm, point[1] + band_mm]
    low[axis], high[axis] = min(near_mm, far_mm), max(near_mm, far_mm)
    ahead = Patch(name="", low_mm=(low[0], low[1]), high_mm=(high[0], high[1]))
    if faces == (0, -1.0) and ahead.low_mm[0] < floor.x_from_mm:
        return _from_cab(floor, ahead)
    return meets(points_in(floor, ahead), reached)


def _from_cab(floor: Floor, ahead: Patch) -> bool:
    """Say whether a place right behind the cab line has its floor ahead of that line.

    The cab line is open: the feet are in the cab, and the way to them is not looked at.
    """
    return ahead.high_mm[0] <= floor.x_from_mm + floor.width_mm / 2


def _sitting_height_mm(room: Room, place: str) -> float:
    """Return the sitting height of who sits there, where it was measured; else the survey's."""
    for traveller in room.build.brief.travellers:
        if traveller.seat == place and traveller.sitting_height_mm is not None:
            return traveller.sitting_height_mm
    return limit("layout.sitting-height").value


def _head(room: Room, fitted: Fitted, point: Point) -> Clear:
    """Return the clear height above a seating reference point."""
    half_mm = assumed_mm("head-square") / 2
    patch = Patch(
        name="head",
        low_mm=(point[0] - half_mm, point[1] - half_mm),
        high_mm=(point[0] + half_mm, point[1] + half_mm),
    )
    above = clear_above(
        footprint=patch,
        from_mm=point[2],
        ceiling_mm=room.ceiling_mm,
        bodies=room.around(fitted),
    )
    wall_mm = wall_reaches_mm(
        shell=room.build.vehicle.shell,
        walls_mm=room.build_up.walls_mm,
        y_mm=abs(point[1]) + assumed_mm("head-side"),
        from_mm=point[2],
    )
    wall = Clear(free_mm=max(0.0, wall_mm - point[2]), ended_by="wall that leans in")
    return nearest([above, wall])


def _table(room: Room, point: Point, axis: int, sign_factor: float) -> Clear:
    """Return the way from a seating reference point to the edge of a table ahead of it."""
    lap_mm = assumed_mm("lap")
    low, high = [point[0] - lap_mm, point[1] - lap_mm], [point[0] + lap_mm, point[1] + lap_mm]
    low[axis] = high[axis] = point[axis]
    face = box((low[0], low[1], point[2]), (high[0], high[1], point[2] + 2 * lap_mm))
    tables = [room.solids[f.name] for f in room.inside if f.part.table is not None]
    return clear_ahead(face=face, axis=axis, sign_factor=sign_factor, bodies=tables)
