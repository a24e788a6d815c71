"""The ways through the living space at the height of feet, hips and shoulders."""

from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.layout.model import Aisle
from coachwright.layout.passage import Patch, narrowest_passage
from coachwright.layout.solids import Solid
from coachwright.model.shell import BuildUp, narrowest_half_width_mm
from coachwright.model.vehicle import Aperture, BaseVehicle


@dataclass(frozen=True, kw_only=True, slots=True)
class Level:
    """One height of the body, above the finished floor."""

    name: str
    from_mm: float
    to_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class _Edge:
    """A piece of the boundary, in order round the floor; an opening has the name of its door."""

    patch: Patch
    opening: str = ""


def aisles(
    *,
    bodies: Sequence[Solid],
    vehicle: BaseVehicle,
    build_up: BuildUp,
    levels: Sequence[Level],
) -> tuple[Aisle, ...]:
    """Return the narrowest place of each way at each level.

    Parameters
    ----------
    bodies
        What stands in the living space, wheel arches too.
    vehicle, build_up
        Shell, apertures and finishes.
    levels
        Heights of the body to look at.

    Returns
    -------
    tuple of Aisle
        For each pair of openings (cab, sliding doors, rear doors) and each level.

    Notes
    -----
    At each level the floor is the rectangle between cab line, rear doors and the walls at their
    narrowest over the level; a solid that reaches into the level is an obstacle.  The cab line is
    open over its whole width.
    """
    found = []
    for level in levels:
        low_mm = build_up.floor_mm + level.from_mm
        high_mm = build_up.floor_mm + level.to_mm
        edges = _boundary(vehicle, build_up, low_mm, high_mm)
        obstacles = [
            Patch(name=body.name, low_mm=part.low_mm[:2], high_mm=part.high_mm[:2])
            for body in bodies
            for part in body.boxes
            if part.low_mm[2] < high_mm and part.high_mm[2] > low_mm
        ]
        openings = [edge.opening for edge in edges if edge.opening]
        for index, start in enumerate(openings):
            for end in openings[index + 1 :]:
                side, other_side = _sides(edges, start, end)
                found.append(
                    Aisle(
                        way=f"{start} to {end}",
                        level=level.name,
                        from_mm=low_mm,
                        to_mm=high_mm,
                        passage=narrowest_passage(
                            side=side, other_side=other_side, obstacles=obstacles
                        ),
                    )
                )
    return tuple(found)


def _sides(edges: Sequence[_Edge], start: str, end: str) -> tuple[list[Patch], list[Patch]]:
    """Return the walls between two openings, one way round the floor and the other."""
    names = [edge.opening for edge in edges]
    first, last = sorted((names.index(start), names.index(end)))
    between = [edge.patch for edge in edges[first + 1 : last]]
    beyond = [edge.patch for edge in (*edges[last + 1 :], *edges[:first])]
    return between, beyond


def _boundary(
    vehicle: BaseVehicle, build_up: BuildUp, low_mm: float, high_mm: float
) -> tuple[_Edge, ...]:
    """Return the boundary of the floor: cab, right wall, rear, left wall; doors as openings."""
    shell = vehicle.shell
    half_mm = narrowest_half_width_mm(shell, low_mm, high_mm) - build_up.walls_mm
    front_mm, rear_mm = shell.cab_line_mm, shell.rear_mm - build_up.doors_mm
    cab = Patch(name="cab", low_mm=(front_mm, -half_mm), high_mm=(front_mm, half_mm))
    return (
        _Edge(patch=cab, opening="cab"),
        *_side_wall("right", half_mm, front_mm, rear_mm, vehicle.apertures),
        *_rear_wall(half_mm, rear_mm, vehicle.apertures),
        *reversed(_side_wall("left", -half_mm, front_mm, rear_mm, vehicle.apertures)),
    )


def _side_wall(
    side: str, y_mm: float, front_mm: float, rear_mm: float, apertures: Sequence[Aperture]
) -> list[_Edge]:
    doors = sorted(
        (door for door in apertures if door.wall == side), key=lambda door: door.from_mm
    )
    edges: list[_Edge] = []
    here_mm = front_mm
    for door in doors:
        start_mm = max(here_mm, door.from_mm)
        end_mm = max(start_mm, min(rear_mm, door.from_mm + door.clear_width_mm))
        edges.append(_Edge(patch=_line(f"{side} wall", (here_mm, y_mm), (start_mm, y_mm))))
        edges.append(
            _Edge(patch=_line(door.name, (start_mm, y_mm), (end_mm, y_mm)), opening=door.name)
        )
        here_mm = end_mm
    edges.append(_Edge(patch=_line(f"{side} wall", (here_mm, y_mm), (rear_mm, y_mm))))
    return edges


def _rear_wall(half_mm: float, rear_mm: float, apertures: Sequence[Aperture]) -> list[_Edge]:
    doors = [door for door in apertures if door.wall == "rear"]
    if not doors:
        return [_Edge(patch=_line("rear wall", (rear_mm, -half_mm), (rear_mm, half_mm)))]
    door = doors[0]
    left_mm = max(-half_mm, door.from_mm)
    right_mm = min(half_mm, door.from_mm + door.clear_width_mm)
    return [
        _Edge(patch=_line("rear wall", (rear_mm, right_mm), (rear_mm, half_mm))),
        _Edge(patch=_line(door.name, (rear_mm, left_mm), (rear_mm, right_mm)), opening=door.name),
        _Edge(patch=_line("rear wall", (rear_mm, -half_mm), (rear_mm, left_mm))),
    ]


def _line(name: str, one_mm: tuple[float, float], other_mm: tuple[float, float]) -> Patch:
    return Patch(name=name, low_mm=one_mm, high_mm=other_mm)
