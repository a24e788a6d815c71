"""Take the ways out of a build to their subject."""

from collections.abc import Iterator

from coachwright.layout.exits import Exit, opens_at, ways_out
from coachwright.layout.model_interior import EscapeOpening, WaysOut
from coachwright.layout.passage import Patch
from coachwright.layout.room import Room
from coachwright.layout.solids import Box
from coachwright.layout.stage_beds import beds_of, made_up
from coachwright.layout.stage_floor import (
    CAB,
    door_lines,
    points_at,
    points_beside,
    walked_floor,
)
from coachwright.layout.stage_living import outline
from coachwright.layout.walking import Floor, Rows, around, meets, points_in, reached_from
from coachwright.model.build import Fitted
from coachwright.model.facets import Opening
from coachwright.reference import limit


def escapes_of(room: Room) -> Iterator[EscapeOpening]:
    """Yield the clear sizes of the windows and hatches that are ways of escape."""
    for fitted, opening in _escape_parts(room):
        sides = (opening.clear_width_mm, opening.clear_height_mm)
        yield EscapeOpening(name=fitted.name, short_mm=min(sides), long_mm=max(sides))


def _escape_parts(room: Room) -> Iterator[tuple[Fitted, Opening]]:
    for fitted in room.placed:
        opening = fitted.part.opening
        if opening is not None and opening.escape:
            yield fitted, opening


def ways_out_of(room: Room) -> Iterator[WaysOut]:
    """Yield the ways out of each bed."""
    beds = [(fitted, *made_up(room, fitted, bed)) for fitted, bed in beds_of(room)]
    if not any(place for _, place, _ in beds):
        floor = None
    else:
        floor = walked_floor(room, limit("layout.escape-width").value, without_tables=False)
    for fitted, place, missing in beds:
        if place is None or floor is None:
            yield WaysOut(bed=fitted.name, exits=(), behind=(), missing=missing)
            continue
        bed = outline(place, fitted.name)
        reached = reached_from(floor, points_beside(floor, bed))
        counted = ways_out(
            bed=bed,
            exits=[*_doors(room, place, floor, reached), *_openings(room, place, floor, reached)],
            near_mm=limit("layout.exit-near").value,
        )
        yield WaysOut(bed=fitted.name, exits=counted.exits, behind=counted.behind, missing="")


def _doors(room: Room, bed: Box, floor: Floor, reached: Rows) -> Iterator[Exit]:
    """Yield the doors of the vehicle and the cab."""
    apertures = {door.name: door for door in room.build.vehicle.apertures}
    for name, line in door_lines(room).items():
        direct = False
        if name != CAB:
            axis = 1 if apertures[name].wall == "rear" else 0
            top_mm = apertures[name].sill_mm + apertures[name].clear_height_mm
            width_mm = min(bed.high_mm[axis], line.high_mm[axis]) - max(
                bed.low_mm[axis], line.low_mm[axis]
            )
            direct = _direct(bed, line, (width_mm, top_mm - bed.high_mm[2]))
        yield Exit(
            name=name,
            place=line,
            door=True,
            direct=direct,
            walked=meets(points_at(floor, line), reached),
        )


def _openings(room: Room, bed: Box, floor: Floor, reached: Rows) -> Iterator[Exit]:
    """Yield the windows and hatches that are ways of escape."""
    for fitted, opening in _escape_parts(room):
        body = room.solids[fitted.name].bounds
        place = outline(body, fitted.name)
        clear = (
            opening.clear_width_mm,
            min(opening.clear_height_mm, body.high_mm[2] - bed.high_mm[2]),
        )
        if opening.kind == "hatch":
            clear = (opening.clear_width_mm, opening.clear_height_mm)
        grown = around(place, floor.width_mm / 2 + floor.step_mm)
        yield Exit(
            name=fitted.name,
            place=place,
            door=False,
            direct=_direct(bed, place, clear),
            walked=meets(points_in(floor, grown), reached),
        )


def _direct(bed: Box, place: Patch, clear_mm: tuple[float, float]) -> bool:
    return opens_at(
        bed=outline(bed),
        place=place,
        clear_mm=clear_mm,
        near_mm=limit("layout.exit-near").value,
        least_mm=(limit("layout.escape-short").value, limit("layout.escape-long").value),
    )
