"""Take the rear of a build apart: doors, hitch, and what must stay visible."""

from collections.abc import Iterator

from coachwright.layout.door_swing import needed_gap_mm
from coachwright.layout.model_outside import CoveredZone, DoorPlace, DoorSwing, Hung
from coachwright.layout.outside_groups import Groups, rear_face_mm
from coachwright.layout.rear_doors import (
    DoorFrame,
    Obstacle,
    covered_zone,
    door_place,
    door_reach_mm,
    door_swing,
)
from coachwright.layout.solids import Box, Solid
from coachwright.model.build import Build, Fitted, Mounting

_DOORS = ((Mounting.REAR_DOOR_LEFT, -1.0), (Mounting.REAR_DOOR_RIGHT, 1.0))


def door_frames(build: Build) -> tuple[DoorFrame, ...]:
    """Return the rear doors, left and right."""
    vehicle, rear = build.vehicle, build.vehicle.rear_end
    doorway = next((each for each in vehicle.apertures if each.wall == "rear"), None)
    face_mm = rear_face_mm(build)
    way_top_mm = (
        vehicle.shell.ceiling_mm if doorway is None else doorway.sill_mm + doorway.clear_height_mm
    )
    return tuple(
        DoorFrame(
            name=str(mounting),
            side_factor=side,
            rear_mm=face_mm,
            hinge_mm=rear.door_hinge_y_mm,
            bottom_mm=0.0 if doorway is None else doorway.sill_mm,
            top_mm=rear.door_top_mm,
            leaf_top_mm=way_top_mm if rear.door_top_mm is None else rear.door_top_mm,
            thickness_mm=max(0.0, face_mm - vehicle.shell.rear_mm),
            half_width_mm=vehicle.outside.width_mm / 2,
            full_deg=rear.open_deg,
        )
        for mounting, side in _DOORS
    )


def hung_on(groups: Groups, door: DoorFrame) -> tuple[Solid, ...]:
    """Return what hangs on a rear door and stands out behind."""
    return tuple(
        groups.solids[fitted.name]
        for fitted in groups.behind()
        if groups.here.kin.door.get(fitted.name) == door.name
    )


def door_places(groups: Groups) -> Iterator[DoorPlace]:
    """Yield how far each fitting reaches over the edges of its rear door."""
    for door in door_frames(groups.build):
        for fitted in groups.at(Mounting(door.name)):
            yield door_place(body=groups.solids[fitted.name], door=door)


def covered(groups: Groups) -> Iterator[CoveredZone]:
    """Yield how much of each lamp, plate and the like is hidden; none where nothing hangs."""
    fittings = groups.behind()
    if not fittings:
        return
    for zone in groups.build.vehicle.rear_end.zones:
        repeating = frozenset(f.name for f in fittings if zone.kind in _repeats(groups, f))
        yield covered_zone(zone=zone, bodies=groups.bodies(fittings), repeating=repeating)


def swings(groups: Groups) -> Iterator[DoorSwing]:
    """Yield how far each rear door opens, where something is on it, behind it or beside it."""
    behind = tuple(
        Obstacle(body=groups.solids[fitted.name], tilts=_tilts(groups, fitted))
        for fitted in groups.at(Mounting.HITCH)
    )
    beside = groups.bodies(groups.at(Mounting.SIDE))
    for door in door_frames(groups.build):
        on_door = hung_on(groups, door)
        near = [body for body in beside if _side_factor(body) == door.side_factor]
        if on_door or behind or near:
            yield door_swing(door=door, hung=on_door, behind=behind, beside=near)


def hung(groups: Groups) -> Iterator[Hung]:
    """Yield what stands out behind the vehicle."""
    build = groups.build
    face_mm = rear_face_mm(build)
    doors = door_frames(build)
    for fitted in groups.behind():
        space = groups.solids[fitted.name].bounds
        on_door = groups.here.kin.door.get(fitted.name)
        loaded = [_needed_mm(door, hung_on(groups, door), space) for door in doors]
        bare = [_needed_mm(door, (), space) for door in doors]
        depth_mm = space.high_mm[0] - space.low_mm[0]
        yield Hung(
            name=fitted.name,
            place=str(on_door or Mounting.HITCH),
            added_length_mm=space.high_mm[0] - face_mm,
            lowest_mm=space.low_mm[2] + build.vehicle.outside.floor_height_mm,
            gap_mm=None if on_door else space.low_mm[0] - face_mm,
            needed_gap_mm=None if on_door else max(loaded),
            tilts=_tilts(groups, fitted),
            on_door_mm=depth_mm,
            on_hitch_mm=max(bare) + depth_mm,
        )


def door_depth_mm(groups: Groups) -> float:
    """Return the free depth behind the vehicle in which the doors swing. [mm]."""
    everywhere = Box(
        low_mm=(0.0, 0.0, -groups.build.vehicle.outside.floor_height_mm),
        high_mm=(0.0, 0.0, groups.build.vehicle.outside.height_mm),
    )
    return max(
        door_reach_mm(door=door, hung=hung_on(groups, door), behind=everywhere)
        for door in door_frames(groups.build)
    )


def _needed_mm(door: DoorFrame, on_door: tuple[Solid, ...], space: Box) -> float:
    beside_mm = min(
        door.hinge_mm - door.side_factor * y_mm for y_mm in (space.low_mm[1], space.high_mm[1])
    )
    reach_mm = door_reach_mm(door=door, hung=on_door, behind=space)
    return needed_gap_mm(reach_mm=reach_mm, beside_mm=beside_mm)


def _side_factor(body: Solid) -> float:
    return 1.0 if body.bounds.low_mm[1] + body.bounds.high_mm[1] > 0 else -1.0


def _repeats(groups: Groups, fitted: Fitted) -> set[str]:
    """Return the kinds of what a fitting or its carriers carry instead of the vehicle."""
    found: set[str] = set()
    for each in groups.chains[fitted.name]:
        for carrier in (each.part.hitch_carrier, each.part.rear_door_carrier):
            if carrier is not None:
                found |= set(carrier.repeats)
    return found


def _tilts(groups: Groups, fitted: Fitted) -> bool:
    return any(
        each.part.hitch_carrier is not None and each.part.hitch_carrier.tilts
        for each in groups.chains[fitted.name]
    )
