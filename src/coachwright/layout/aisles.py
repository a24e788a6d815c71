"""The ways through the living space at the height of feet, hips and shoulders."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from coachwright import reference
from coachwright.layout.model import Aisle
from coachwright.layout.passage import Patch, bottleneck, gap_table_mm, outermost
from coachwright.layout.solids import Solid
from coachwright.model.shell import BuildUp, narrowest_half_width_mm
from coachwright.model.vehicle import Aperture, BaseVehicle


@dataclass(frozen=True, kw_only=True, slots=True)
class Level:
    """One height of the body, above the finished floor."""

    name: str
    from_mm: float
    to_mm: float


def levels() -> tuple[Level, ...]:
    """Return the heights of the body at which the ways are looked at, from the floor upwards."""
    return tuple(
        Level(name=row["level"], from_mm=float(row["from_mm"]), to_mm=float(row["to_mm"]))
        for row in reference.table("layout_levels")
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class Edge:
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
    open over its whole width.  The other doors are shut: a way does not lead through them.
    """
    found = []
    for level in levels:
        edges, obstacles = floor_plan(
            bodies=bodies, vehicle=vehicle, build_up=build_up, level=level
        )
        patches = [*(edge.patch for edge in edges), *obstacles]
        gaps_mm = gap_table_mm(patches)
        for way, rear, start, end in _ways(edges, vehicle.apertures):
            side = range(start + 1, end)
            other_side = (*range(end + 1, len(edges)), *range(start))
            found.append(
                Aisle(
                    way=way,
                    level=level.name,
                    rear=rear,
                    from_mm=build_up.floor_mm + level.from_mm,
                    to_mm=build_up.floor_mm + level.to_mm,
                    passage=bottleneck(
                        patches=patches,
                        gaps_mm=gaps_mm,
                        sources=side,
                        goals=other_side,
                        nodes=(*side, *other_side, *range(len(edges), len(patches))),
                    ),
                )
            )
    return tuple(found)


def _ways(
    edges: Sequence[Edge], apertures: Sequence[Aperture]
) -> Iterator[tuple[str, bool, int, int]]:
    """Yield each pair of openings: its name, whether one is in the rear, and its edges."""
    rear = {aperture.name for aperture in apertures if aperture.wall == "rear"}
    openings = [index for index, edge in enumerate(edges) if edge.opening]
    # the cab, the doors of the sides by name, the rear: the same for a door on either side
    openings.sort(
        key=lambda index: (index > 0, edges[index].opening in rear, edges[index].opening)
    )
    for one, other in combinations(openings, 2):
        names = (edges[one].opening, edges[other].opening)
        way = f"{names[0]} to {names[1]}"
        yield way, not rear.isdisjoint(names), min(one, other), max(one, other)


def floor_plan(
    *, bodies: Sequence[Solid], vehicle: BaseVehicle, build_up: BuildUp, level: Level
) -> tuple[tuple[Edge, ...], tuple[Patch, ...]]:
    """Return the edge of the floor and what stands on it, at one level.

    Parameters
    ----------
    bodies, vehicle, build_up
        As for `aisles`.
    level
        Height of the body.
    """
    low_mm = build_up.floor_mm + level.from_mm
    high_mm = build_up.floor_mm + level.to_mm
    obstacles = outermost(
        Patch(name=body.name, low_mm=part.low_mm[:2], high_mm=part.high_mm[:2])
        for body in bodies
        if body.bounds.low_mm[2] < high_mm and body.bounds.high_mm[2] > low_mm
        for part in body.boxes
        if part.low_mm[2] < high_mm and part.high_mm[2] > low_mm
    )
    return _boundary(vehicle, build_up, low_mm, high_mm), obstacles


def _boundary(
    vehicle: BaseVehicle, build_up: BuildUp, low_mm: float, high_mm: float
) -> tuple[Edge, ...]:
    """Return the boundary of the floor: cab, right wall, rear, left wall; doors as openings."""
    shell = vehicle.shell
    half_mm = narrowest_half_width_mm(shell, low_mm, high_mm) - build_up.walls_mm
    front_mm, rear_mm = shell.cab_line_mm, shell.rear_mm - build_up.doors_mm
    cab = Patch(name="cab", low_mm=(front_mm, -half_mm), high_mm=(front_mm, half_mm))
    return (
        Edge(patch=cab, opening="cab"),
        *_side_wall("right", half_mm, front_mm, rear_mm, vehicle.apertures),
        *_rear_wall(half_mm, rear_mm, vehicle.apertures),
        *reversed(_side_wall("left", -half_mm, front_mm, rear_mm, vehicle.apertures)),
    )


def _side_wall(
    side: str, y_mm: float, front_mm: float, rear_mm: float, apertures: Sequence[Aperture]
) -> list[Edge]:
    doors = sorted(
        (door for door in apertures if door.wall == side), key=lambda door: door.from_mm
    )
    edges: list[Edge] = []
    here_mm = front_mm
    for door in doors:
        start_mm = max(here_mm, door.from_mm)
        end_mm = max(start_mm, min(rear_mm, door.from_mm + door.clear_width_mm))
        edges.append(Edge(patch=_line(f"{side} wall", (here_mm, y_mm), (start_mm, y_mm))))
        edges.append(
            Edge(patch=_line(door.name, (start_mm, y_mm), (end_mm, y_mm)), opening=door.name)
        )
        here_mm = end_mm
    edges.append(Edge(patch=_line(f"{side} wall", (here_mm, y_mm), (rear_mm, y_mm))))
    return edges


def _rear_wall(half_mm: float, rear_mm: float, apertures: Sequence[Aperture]) -> list[Edge]:
    doors = [door for door in apertures if door.wall == "rear"]
    if not doors:
        return [Edge(patch=_line("rear wall", (rear_mm, -half_mm), (rear_mm, half_mm)))]
    door = doors[0]
    left_mm = max(-half_mm, door.from_mm)
    right_mm = min(half_mm, door.from_mm + door.clear_width_mm)
    return [
        Edge(patch=_line("rear wall", (rear_mm, right_mm), (rear_mm, half_mm))),
        Edge(patch=_line(door.name, (rear_mm, left_mm), (rear_mm, right_mm)), opening=door.name),
        Edge(patch=_line("rear wall", (rear_mm, -half_mm), (rear_mm, left_mm))),
    ]


def _line(name: str, one_mm: tuple[float, float], other_mm: tuple[float, float]) -> Patch:
    return Patch(name=name, low_mm=one_mm, high_mm=other_mm)
