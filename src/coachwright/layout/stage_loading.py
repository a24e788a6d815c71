"""Take doors and parts to the subjects about bringing them in."""

from collections.abc import Iterator, Mapping

from coachwright.layout.apertures import Doorway, passes_at_all, passes_straight
from coachwright.layout.assumptions import assumed_mm
from coachwright.layout.loading import Gate, Space, loading_order
from coachwright.layout.model_interior import DoorPass, Loading
from coachwright.layout.room import Room
from coachwright.layout.solids import Box, Solid
from coachwright.model.build import Fitted
from coachwright.model.placement import Point
from coachwright.model.shell import narrowest_half_width_mm
from coachwright.model.vehicle import Aperture

_MOST_BOXES = 8
"""Bodies of more boxes are round: the box around them counts."""


def loading_of(room: Room) -> Loading:
    """Return how the parts come in; windows and hatches are let in from outside."""
    carried_in = [fitted for fitted in room.inside if fitted.part.opening is None]
    big = {
        fitted.name: fitted.part.body.size_mm
        for fitted in carried_in
        if sorted(fitted.part.body.size_mm)[1] >= assumed_mm("big-part")
    }
    apertures = room.build.vehicle.apertures
    order = loading_order(
        sizes_mm=big if apertures else {},
        gates=[_gate(room, aperture, big) for aperture in apertures],
        carried_by=_carried_by(room, big),
    )
    doors = [_doorway(room, aperture) for aperture in apertures]
    return Loading(
        big=tuple(big),
        passes=tuple(_pass(fitted, room.solids[fitted.name], doors) for fitted in carried_in),
        steps=order.steps,
        stuck=order.stuck,
    )


def _pass(fitted: Fitted, body: Solid, doors: list[Doorway]) -> DoorPass:
    if not doors:
        return DoorPass(
            name=fitted.name, door="", spare_mm=None, straight_door="", straight_spare_mm=None
        )
    boxes = body.boxes if len(body.boxes) <= _MOST_BOXES else (body.bounds,)
    at_all = passes_at_all(sizes_mm=[_size_mm(part) for part in boxes], doors=doors)
    straight = passes_straight(size_mm=fitted.part.body.size_mm, doors=doors)
    return DoorPass(
        name=fitted.name,
        door=at_all.door if at_all.spare_mm >= 0 else "",
        spare_mm=at_all.spare_mm,
        straight_door=straight.door if straight.spare_mm >= 0 else "",
        straight_spare_mm=straight.spare_mm,
    )


def _size_mm(part: Box) -> Point:
    low, high = part.low_mm, part.high_mm
    return (high[0] - low[0], high[1] - low[1], high[2] - low[2])


def _heights_mm(room: Room, aperture: Aperture) -> tuple[float, float]:
    """Return bottom and top of what is clear once floor and ceiling are laid."""
    bottom_mm = max(aperture.sill_mm, room.floor_mm)
    return bottom_mm, min(aperture.sill_mm + aperture.clear_height_mm, room.ceiling_mm)


def _plane_mm(room: Room, aperture: Aperture) -> tuple[float, float]:
    """Return where the opening's plane stands, and the depth behind it."""
    shell = room.build.vehicle.shell
    if aperture.wall == "rear":
        rear_mm = shell.rear_mm - room.build_up.doors_mm
        return rear_mm, rear_mm - shell.cab_line_mm
    half_mm = narrowest_half_width_mm(shell, *_heights_mm(room, aperture))
    half_mm -= room.build_up.walls_mm
    return half_mm, 2 * half_mm


def _doorway(room: Room, aperture: Aperture) -> Doorway:
    bottom_mm, top_mm = _heights_mm(room, aperture)
    return Doorway(
        name=aperture.name,
        width_mm=aperture.clear_width_mm,
        height_mm=top_mm - bottom_mm,
        depth_mm=_plane_mm(room, aperture)[1],
    )


def _gate(room: Room, aperture: Aperture, big: Mapping[str, Point]) -> Gate:
    bottom_mm, top_mm = _heights_mm(room, aperture)
    plane_mm, depth_mm = _plane_mm(room, aperture)
    return Gate(
        name=aperture.name,
        width_mm=aperture.clear_width_mm,
        from_height_mm=bottom_mm,
        to_height_mm=top_mm,
        depth_mm=depth_mm,
        standing={
            name: tuple(_seen(room.solids[name], aperture, plane_mm, bottom_mm, top_mm))
            for name in big
        },
        fixed=tuple(
            space
            for arch in room.arches
            for space in _seen(arch, aperture, plane_mm, bottom_mm, top_mm)
        ),
    )


def _seen(
    body: Solid, aperture: Aperture, plane_mm: float, bottom_mm: float, top_mm: float
) -> Iterator[Space]:
    """Yield the boxes of a body that stand in the view through an opening."""
    along = 1 if aperture.wall == "rear" else 0
    inwards = 0 if aperture.wall == "rear" else 1
    for part in body.boxes if len(body.boxes) <= _MOST_BOXES else (body.bounds,):
        start_mm = part.low_mm[along] - aperture.from_mm
        end_mm = part.high_mm[along] - aperture.from_mm
        if end_mm <= 0 or start_mm >= aperture.clear_width_mm:
            continue
        if part.high_mm[2] <= bottom_mm or part.low_mm[2] >= top_mm:
            continue
        near_mm, far_mm = plane_mm - part.high_mm[inwards], plane_mm - part.low_mm[inwards]
        if aperture.wall == "left":
            near_mm, far_mm = plane_mm + part.low_mm[inwards], plane_mm + part.high_mm[inwards]
        yield Space(
            low_mm=(start_mm, part.low_mm[2], near_mm), high_mm=(end_mm, part.high_mm[2], far_mm)
        )


def _carried_by(room: Room, big: Mapping[str, Point]) -> dict[str, frozenset[str]]:
    return {
        fitted.name: frozenset({fitted.fitting.on, fitted.fitting.within} & big.keys())
        for fitted in room.inside
        if fitted.name in big
    }
