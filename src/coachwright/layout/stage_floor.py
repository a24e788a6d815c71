"""Take the walls, doors and fittings of a build to the floor that people walk on."""

from collections.abc import Iterator

from coachwright.layout.assumptions import assumed_mm
from coachwright.layout.passage import Patch
from coachwright.layout.room import Room
from coachwright.layout.stage_living import outline, parts_of
from coachwright.layout.walking import (
    Floor,
    Rows,
    around,
    free_floor,
    points_in,
    walls_between,
)
from coachwright.model.shell import narrowest_half_width_mm

CAB = "cab doors"


def half_mm(room: Room) -> float:
    """Return half of the width between the walls over the heights of a walking person. [mm]."""
    bare_mm = narrowest_half_width_mm(
        room.build.vehicle.shell,
        room.floor_mm + assumed_mm("walking-from"),
        room.floor_mm + assumed_mm("walking-to"),
    )
    return bare_mm - room.build_up.walls_mm


def door_lines(room: Room) -> dict[str, Patch]:
    """Return the openings as lines on the walls of the floor; the cab line is open."""
    shell = room.build.vehicle.shell
    side_mm = half_mm(room)
    front_mm, rear_mm = shell.cab_line_mm, shell.rear_mm - room.build_up.doors_mm
    lines = {CAB: Patch(name=CAB, low_mm=(front_mm, -side_mm), high_mm=(front_mm, side_mm))}
    for door in room.build.vehicle.apertures:
        start_mm, end_mm = door.from_mm, door.from_mm + door.clear_width_mm
        if door.wall == "rear":
            low = (rear_mm, max(-side_mm, start_mm))
            high = (rear_mm, min(side_mm, end_mm))
        else:
            y_mm = side_mm if door.wall == "right" else -side_mm
            low = (max(front_mm, start_mm), y_mm)
            high = (min(rear_mm, end_mm), y_mm)
        lines[door.name] = Patch(name=door.name, low_mm=low, high_mm=high)
    return lines


def walked_floor(room: Room, width_mm: float, *, without_tables: bool) -> Floor:
    """Return the floor that a person of a width can walk on."""
    side_mm = half_mm(room)
    shell = room.build.vehicle.shell
    low = (shell.cab_line_mm, -side_mm)
    high = (shell.rear_mm - room.build_up.doors_mm, side_mm)
    lines = door_lines(room)
    return free_floor(
        low_mm=low,
        high_mm=high,
        patches=[
            *walls_between(low_mm=low, high_mm=high, openings=tuple(lines.values())),
            *_standing(room, without_tables=without_tables),
        ],
        width_mm=width_mm,
        step_mm=assumed_mm("walking-grid"),
    )


def _standing(room: Room, *, without_tables: bool) -> Iterator[Patch]:
    bottom_mm = room.floor_mm + assumed_mm("walking-from")
    top_mm = room.floor_mm + assumed_mm("walking-to")
    left_out = {f.name for f in room.inside if f.fitting.within}
    if without_tables:
        left_out |= {f.name for f in room.inside if f.part.table is not None}
    for body in room.bodies:
        for part in parts_of(body) if body.name not in left_out else ():
            if part.low_mm[2] < top_mm and part.high_mm[2] > bottom_mm:
                yield outline(part, body.name)


def points_at(floor: Floor, line: Patch) -> Rows:
    """Return the points of the floor right at an opening."""
    return points_in(floor, around(line, floor.step_mm))


def points_beside(floor: Floor, patch: Patch) -> Rows:
    """Return the points where a person just touches an outline."""
    return points_in(floor, around(patch, floor.width_mm / 2 + 1.5 * floor.step_mm))
