"""Take headroom, showers, worktops and tables of a build to their subjects."""

from collections.abc import Iterator
from functools import cache

from coachwright.layout.assumptions import assumed_mm
from coachwright.layout.clear_space import clear_above, wall_reaches_mm
from coachwright.layout.headroom import Edge, Hanging, headrooms
from coachwright.layout.model_interior import Headroom, ShowerSpace, TableKnees, Worktop
from coachwright.layout.passage import Patch
from coachwright.layout.room import Room
from coachwright.layout.solids import Box, Solid
from coachwright.model.build import Fitted
from coachwright.model.part import Part
from coachwright.model.shell import half_width_mm

_MOST_BOXES = 8
"""Bodies of more boxes are round: the box around them counts."""


def outline(part: Box, name: str = "") -> Patch:
    """Return the outline of a box in the plan."""
    return Patch(name=name, low_mm=part.low_mm[:2], high_mm=part.high_mm[:2])


def parts_of(body: Solid) -> tuple[Box, ...]:
    """Return the boxes of a body, or the one around a round body."""
    return body.boxes if len(body.boxes) <= _MOST_BOXES else (body.bounds,)


def headrooms_of(room: Room) -> tuple[Headroom, ...]:
    """Return the tallest that people can be on each way."""
    shell, build_up = room.build.vehicle.shell, room.build_up

    @cache
    def reaches_mm(y_mm: float) -> float:
        return wall_reaches_mm(
            shell=shell, walls_mm=build_up.walls_mm, y_mm=y_mm, from_mm=room.floor_mm
        )

    return headrooms(
        edges=tuple(_edges(room)),
        hangings=tuple(_hangings(room)),
        width_mm=assumed_mm("head-width"),
        rear_mm=shell.rear_mm - build_up.doors_mm,
        ceiling_mm=room.ceiling_mm,
        wall_reaches_mm=reaches_mm,
        floor_mm=room.floor_mm,
    )


def _edges(room: Room) -> Iterator[Edge]:
    """Yield the boundary: cab, right wall rearwards, rear from the right, left wall forwards."""
    shell = room.build.vehicle.shell
    half_mm = half_width_mm(shell, room.floor_mm) - room.build_up.walls_mm
    yield Edge(wall="cab", from_mm=-half_mm, to_mm=half_mm, opening="cab")
    rear_mm = shell.rear_mm - room.build_up.doors_mm
    yield from _wall(room, "right", shell.cab_line_mm, rear_mm)
    yield from reversed(_wall(room, "rear", -half_mm, half_mm))
    yield from reversed(_wall(room, "left", shell.cab_line_mm, rear_mm))


def _wall(room: Room, wall: str, start_mm: float, end_mm: float) -> list[Edge]:
    doors = sorted(
        (door for door in room.build.vehicle.apertures if door.wall == wall),
        key=lambda door: door.from_mm,
    )
    edges: list[Edge] = []
    here_mm = start_mm
    for door in doors:
        from_mm = max(here_mm, door.from_mm)
        to_mm = max(from_mm, min(end_mm, door.from_mm + door.clear_width_mm))
        edges.append(Edge(wall=wall, from_mm=here_mm, to_mm=from_mm))
        edges.append(Edge(wall=wall, from_mm=from_mm, to_mm=to_mm, opening=door.name))
        here_mm = to_mm
    edges.append(Edge(wall=wall, from_mm=here_mm, to_mm=end_mm))
    return edges


def _hangings(room: Room) -> Iterator[Hanging]:
    """Yield what stands or hangs in the way, without what is built into something else."""
    step_over_mm = room.floor_mm + assumed_mm("walking-from")
    built_in = {fitted.name for fitted in room.inside if fitted.fitting.within}
    for body in room.bodies:
        for part in parts_of(body) if body.name not in built_in else ():
            if part.high_mm[2] > step_over_mm and part.low_mm[2] < room.ceiling_mm:
                yield Hanging(
                    name=body.name,
                    x_from_mm=part.low_mm[0],
                    x_to_mm=part.high_mm[0],
                    y_from_mm=part.low_mm[1],
                    y_to_mm=part.high_mm[1],
                    from_mm=part.low_mm[2],
                )


def holders_of(room: Room, facet: str) -> Iterator[tuple[Fitted, Fitted]]:
    """Yield each fitting with a facet together with what it is built into or stands on."""
    for fitted in room.inside:
        if getattr(fitted.part, facet) is not None:
            holder = room.build.fitted(fitted.fitting.within or fitted.fitting.on)
            if holder is not None:
                yield fitted, holder


def showers_of(room: Room) -> Iterator[ShowerSpace]:
    """Yield each stall or tray that holds a shower."""
    stalls = {
        holder.name: holder
        for fitted, holder in holders_of(room, "water_outlet")
        if fitted.part.water_outlet and fitted.part.water_outlet.kind == "shower"
    }
    for stall in stalls.values():
        body = room.solids[stall.name]
        clear = clear_above(
            footprint=outline(body.bounds),
            from_mm=body.bounds.low_mm[2] + assumed_mm("stall-tray"),
            ceiling_mm=room.ceiling_mm,
            bodies=room.around(stall),
        )
        yield ShowerSpace(name=stall.name, clear_mm=clear.free_mm, under=clear.ended_by)


def cooks(part: Part) -> bool:
    """Say whether a part is a cooker: by its clearance, or a burner that is lit by hand."""
    zones = part.access.zones if part.access else ()
    if any(zone.purpose == "cooking clearance" for zone in zones):
        return True
    burner = part.gas_appliance
    return (
        burner is not None
        and not burner.room_sealed
        and burner.running_h_per_day is None
        and part.heater is None
        and part.water_heater is None
    )


def worktops_of(room: Room) -> Iterator[Worktop]:
    """Yield each cabinet that holds a tap or a cooker."""
    tops: dict[str, Fitted] = {}
    for fitted in room.inside:
        outlet = fitted.part.water_outlet
        if cooks(fitted.part) or (outlet is not None and outlet.kind == "tap"):
            holder = room.build.fitted(fitted.fitting.within or fitted.fitting.on)
            if holder is not None and holder.part.carcass is not None:
                tops[holder.name] = holder
    for name in tops:
        yield Worktop(name=name, height_mm=room.solids[name].bounds.high_mm[2] - room.floor_mm)


def tables_of(room: Room) -> Iterator[TableKnees]:
    """Yield the tables inside."""
    for fitted in room.inside:
        if fitted.part.table is None:
            continue
        body = room.solids[fitted.name]
        top = max(body.boxes, key=lambda part: part.high_mm[2])
        underside_mm = top.low_mm[2]
        if len(body.boxes) == 1:
            underside_mm = top.high_mm[2] - assumed_mm("table-top")
        yield TableKnees(name=fitted.name, clear_mm=underside_mm - room.floor_mm)
