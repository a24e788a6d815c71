"""Take cookers, vents, alarms, extinguishers and the entry of a build to their subjects."""

from collections.abc import Iterator, Sequence

from coachwright.layout.assumptions import assumed_mm
from coachwright.layout.clear_space import Clear, clear_above, clear_ahead, clear_to_shell, nearest
from coachwright.layout.model_interior import (
    AlarmPlace,
    CookingSpace,
    Entry,
    ExtinguisherPlace,
    VentPlace,
)
from coachwright.layout.passage import distance_mm
from coachwright.layout.room import Room
from coachwright.layout.solids import Box, Solid
from coachwright.layout.stage_beds import beds_of, made_up
from coachwright.layout.stage_floor import door_lines
from coachwright.layout.stage_living import cooks, outline
from coachwright.layout.steps import rises_mm
from coachwright.model.build import Build, Fitted, Mounting
from coachwright.model.vehicle import Aperture

_ROOF = (Mounting.ROOF, Mounting.CEILING)


def cookers_of(room: Room) -> Iterator[CookingSpace]:
    """Yield the space above and beside each cooker inside."""
    for fitted in room.inside:
        if not cooks(fitted.part):
            continue
        body = room.solids[fitted.name].bounds
        top_mm = body.high_mm[2]
        siblings = {
            other.name
            for other in room.inside
            if other.fitting.within and other.fitting.within == fitted.fitting.within
        }
        bodies = [each for each in room.around(fitted) if each.name not in siblings]
        above = clear_above(
            footprint=outline(body), from_mm=top_mm, ceiling_mm=room.ceiling_mm, bodies=bodies
        )
        beside = _beside(room, body, bodies)
        yield CookingSpace(
            name=fitted.name,
            burner=fitted.part.gas_appliance is not None,
            above_mm=above.free_mm,
            above=above.ended_by,
            beside_mm=beside.free_mm,
            beside=beside.ended_by,
            stated_mm=_stated_mm(fitted),
        )


def _beside(room: Room, body: Box, bodies: Sequence[Solid]) -> Clear:
    """Return the free width beside a cooker, up to a wall or to what stands and rises above it."""
    standing = [each for each in bodies if each.bounds.low_mm[2] < body.high_mm[2]]
    space = _above(body, assumed_mm("cooker-side"))
    found = []
    for axis in (0, 1):
        for sign in (-1.0, 1.0):
            found.append(clear_ahead(face=space, axis=axis, sign_factor=sign, bodies=standing))
            found.append(
                clear_to_shell(
                    face=body,
                    axis=axis,
                    sign_factor=sign,
                    shell=room.build.vehicle.shell,
                    walls_mm=room.build_up.walls_mm,
                    doors_mm=room.build_up.doors_mm,
                )
            )
    return nearest(found)


def _above(body: Box, height_mm: float) -> Box:
    """Return the space right above a body, as wide as it is."""
    top_mm = body.high_mm[2]
    return Box(
        low_mm=(body.low_mm[0], body.low_mm[1], top_mm),
        high_mm=(body.high_mm[0], body.high_mm[1], top_mm + height_mm),
    )


def _stated_mm(fitted: Fitted) -> float | None:
    zones = fitted.part.access.zones if fitted.part.access else ()
    heights = [
        max(zone.from_mm[2], zone.to_mm[2]) - fitted.part.body.size_mm[2]
        for zone in zones
        if zone.purpose == "cooking clearance"
    ]
    return max(heights, default=None)


def mattress_tops_mm(room: Room) -> list[float]:
    """Return the tops of the made-up beds above the load floor. [mm]."""
    places = [made_up(room, fitted, bed)[0] for fitted, bed in beds_of(room)]
    return [place.high_mm[2] for place in places if place is not None]


def vents_of(room: Room) -> Iterator[VentPlace]:
    """Yield the vents in walls and floor that cannot be closed."""
    tops_mm = mattress_tops_mm(room)
    middle_mm = (room.floor_mm + room.ceiling_mm) / 2
    for fitted in room.placed:
        opening = fitted.part.opening
        if opening is None or opening.free_vent_m2 is None:
            continue
        if fitted.fitting.mounting in _ROOF:
            continue
        bottom_mm = room.solids[fitted.name].bounds.low_mm[2]
        yield VentPlace(
            name=fitted.name,
            low=bottom_mm < middle_mm,
            above_floor_mm=bottom_mm - room.floor_mm,
            over_mattress_mm=bottom_mm - max(tops_mm) if tops_mm else None,
        )


def alarms_of(room: Room) -> Iterator[AlarmPlace]:
    """Yield where each alarm inside sits."""
    tops_mm = mattress_tops_mm(room)
    for fitted in room.inside:
        if fitted.part.detector is None:
            continue
        body = room.solids[fitted.name].bounds
        yield AlarmPlace(
            name=fitted.name,
            senses=fitted.part.detector.senses,
            below_ceiling_mm=room.ceiling_mm - body.high_mm[2],
            above_floor_mm=body.high_mm[2] - room.floor_mm,
            over_mattress_mm=body.low_mm[2] - min(tops_mm) if tops_mm else None,
        )


def main_door(build: Build) -> Aperture | None:
    """Return the widest side door, else the widest of the rear; None without doors."""
    apertures = build.vehicle.apertures
    sides = [door for door in apertures if door.wall != "rear"]
    return max(sides or apertures, key=lambda door: door.clear_width_mm, default=None)


def extinguishers_of(room: Room) -> Iterator[ExtinguisherPlace]:
    """Yield how far each extinguisher inside is from the main door."""
    door = main_door(room.build)
    line = door_lines(room)[door.name] if door else None
    for fitted in room.placed:
        if fitted.part.extinguisher is None:
            continue
        place = outline(room.solids[fitted.name].bounds)
        yield ExtinguisherPlace(
            name=fitted.name,
            door=door.name if door else "",
            distance_mm=distance_mm(place, line) if line else None,
        )


def entry_of(room: Room) -> Entry | None:
    """Return the way up from the ground through the main door."""
    door = main_door(room.build)
    if door is None:
        return None
    outside = room.build.vehicle.outside
    height_mm = outside.floor_height_mm + max(room.floor_mm, door.sill_mm)
    step = next(_steps(room, door), None)
    ladder = step.part.ladder if step else None
    return Entry(
        door=door.name,
        step=step.name if step else "",
        height_mm=height_mm,
        rises_mm=rises_mm(
            height_mm=height_mm, first_step_mm=ladder.first_rung_mm if ladder else None
        ),
    )


def _steps(room: Room, door: Aperture) -> Iterator[Fitted]:
    """Yield the steps in front of a door."""
    axis = 1 if door.wall == "rear" else 0
    for fitted in room.placed:
        device, body = fitted.part.outside_device, room.solids[fitted.name].bounds
        in_front = (
            body.low_mm[axis] < door.from_mm + door.clear_width_mm
            and body.high_mm[axis] > door.from_mm
        )
        is_step = device is not None and device.kind == "step"
        if fitted.part.ladder is not None and is_step and in_front:
            yield fitted
