"""Take the toilets of a build to their subject."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.layout.assumptions import assumed_mm
from coachwright.layout.clear_space import Clear, clear_ahead, clear_to_shell, nearest
from coachwright.layout.model_interior import ToiletSpace
from coachwright.layout.people import percentile_mm
from coachwright.layout.room import Room
from coachwright.layout.solids import Box, Solid, box
from coachwright.layout.stage_beds import shoulders_mm
from coachwright.layout.toilet import Knees, toilet_space
from coachwright.layout.zones import zone_space
from coachwright.model.build import Fitted
from coachwright.model.placement import Point


@dataclass(frozen=True, kw_only=True, slots=True)
class _Sitting:
    """Where somebody sits: the axis and sense faced, and the box of the toilet."""

    axis: int
    sign_factor: float
    toilet: Box
    stall: Box | None
    bodies: tuple[Solid, ...]


def toilets_of(room: Room) -> Iterator[ToiletSpace]:
    """Yield the space around each toilet inside."""
    travellers = room.build.brief.travellers
    longest_mm = percentile_mm(dimension="buttock-knee length", sex="men", percentile="p95")
    for fitted in room.inside:
        if fitted.part.toilet is None:
            continue
        stall = room.build.fitted(fitted.fitting.within)
        sitting = _sitting(room, fitted, stall)
        left, right = _sides(room, sitting) if sitting else (None, None)
        yield toilet_space(
            name=fitted.name,
            stall=stall.name if stall else "",
            stowed=stall is not None and stall.part.carcass is not None,
            seat_mm=room.solids[fitted.name].bounds.high_mm[2] - room.floor_mm,
            knees=_knees(room, sitting, stall) if sitting else None,
            left_mm=left.free_mm if left else None,
            right_mm=right.free_mm if right else None,
            buttock_knee_mm=max(t.buttock_knee_mm or longest_mm for t in travellers),
            back_mm=assumed_mm("toilet-back"),
            shoulders_mm=max(shoulders_mm(t) for t in travellers),
        )


def _sitting(room: Room, fitted: Fitted, stall: Fitted | None) -> _Sitting | None:
    """Return where somebody sits; None where no zone for the knees says which way."""
    zones = fitted.part.access.zones if fitted.part.access else ()
    zone = next((zone for zone in zones if zone.purpose == "knees"), None)
    if zone is None:
        return None
    body = room.solids[fitted.name].bounds
    ahead = zone_space(fitted, zone)
    shifts = [
        (ahead.low_mm[axis] + ahead.high_mm[axis] - body.low_mm[axis] - body.high_mm[axis]) / 2
        for axis in (0, 1)
    ]
    axis = 0 if abs(shifts[0]) > abs(shifts[1]) else 1
    names = (fitted.name, stall.name) if stall else (fitted.name,)
    return _Sitting(
        axis=axis,
        sign_factor=1.0 if shifts[axis] > 0 else -1.0,
        toilet=body,
        stall=room.solids[stall.name].bounds if stall else None,
        bodies=room.but(*names),
    )


def _knees(room: Room, sitting: _Sitting, stall: Fitted | None) -> Knees:
    axis, sign = sitting.axis, sitting.sign_factor
    low, high = list(sitting.toilet.low_mm), list(sitting.toilet.high_mm)
    back_mm = low[axis] if sign > 0 else high[axis]
    low[axis] = high[axis] = back_mm
    low[2] = room.floor_mm + assumed_mm("knees-from")
    high[2] = room.floor_mm + assumed_mm("knees-to")
    face = box(_point(low), _point(high))
    open_room = _free(room, face, axis, sign, sitting.bodies)
    if sitting.stall is None or stall is None:
        return Knees(room_mm=open_room.free_mm, open_room_mm=None, in_front=open_room.ended_by)
    front_mm = sitting.stall.high_mm[axis] if sign > 0 else sitting.stall.low_mm[axis]
    inside_mm = abs(front_mm - back_mm) - assumed_mm("stall-wall")
    return Knees(
        room_mm=min(inside_mm, open_room.free_mm),
        open_room_mm=open_room.free_mm,
        in_front=open_room.ended_by,
    )


def _sides(room: Room, sitting: _Sitting) -> tuple[Clear, Clear]:
    """Return the free width to both sides of the middle of the toilet at the shoulders."""
    axis, sign = sitting.axis, sitting.sign_factor
    across = 1 - axis
    low, high = list(sitting.toilet.low_mm), list(sitting.toilet.high_mm)
    if sign > 0:
        high[axis] = low[axis] + assumed_mm("torso-depth")
    else:
        low[axis] = high[axis] - assumed_mm("torso-depth")
    middle_mm = (low[across] + high[across]) / 2
    low[across] = high[across] = middle_mm
    seat_mm = sitting.toilet.high_mm[2]
    low[2], high[2] = seat_mm + assumed_mm("shoulders-from"), seat_mm + assumed_mm("shoulders-to")
    face = box(_point(low), _point(high))
    found = []
    for side in (-1.0, 1.0):
        free = _free(room, face, across, side, sitting.bodies)
        if sitting.stall is not None:
            edge_mm = (sitting.stall.low_mm if side < 0 else sitting.stall.high_mm)[across]
            inside_mm = abs(edge_mm - middle_mm) - assumed_mm("stall-wall")
            free = nearest([free, Clear(free_mm=inside_mm, ended_by="stall")])
        found.append(free)
    return found[0], found[1]


def _free(
    room: Room, face: Box, axis: int, sign_factor: float, bodies: tuple[Solid, ...]
) -> Clear:
    """Return the free length ahead of a face, up to a body or the shell."""
    return nearest(
        [
            clear_ahead(face=face, axis=axis, sign_factor=sign_factor, bodies=bodies),
            clear_to_shell(
                face=face,
                axis=axis,
                sign_factor=sign_factor,
                shell=room.build.vehicle.shell,
                walls_mm=room.build_up.walls_mm,
                doors_mm=room.build_up.doors_mm,
            ),
        ]
    )


def _point(values_mm: list[float]) -> Point:
    return (values_mm[0], values_mm[1], values_mm[2])
