"""Measure a floor plan on the build as it would be, without the solver."""

from collections.abc import Iterator, Sequence

from coachwright.arrange.floor_problem import FloorProblem, Run, middle_mm, weight
from coachwright.arrange.model import FloorMeasures
from coachwright.layout.aisles import aisles, levels
from coachwright.layout.model import Counter, Layout
from coachwright.layout.solids import Box, Solid
from coachwright.model.build import INSIDE, Build, Mounting
from coachwright.model.shell import narrowest_half_width_mm
from coachwright.model.vehicle import Aperture, BaseVehicle
from coachwright.weights import stage as weights_stage

_SIDE_BY_SIDE_MM = 30.0
"""Worktops closer than this are one."""
_CABINET_MM = 350.0
"""What a further cabinet takes from the wall inwards, at least."""
POINTS = ("aisle", "axle", "plumbing", "cable", "storage", "counter", "room")


def measured(
    problem: FloorProblem, build: Build, layout: Layout, way_ends_mm: float
) -> FloorMeasures:
    """Return what a floor plan is ranked by.

    Parameters
    ----------
    problem
        That the plan answers.
    build, layout
        As they would be.
    way_ends_mm
        Where the way through the van ends.
    """
    return FloorMeasures(
        aisle_mm=way_width_mm(problem, build, layout, way_ends_mm),
        axle_spare_kg=axle_spare_kg(build),
        plumbing_mm=_runs_mm(build, problem.runs, "plumbing"),
        cable_mm=_runs_mm(build, problem.runs, "cable"),
        storage_l=sum(store.storage_l for store in layout.stores),
        counter_mm=max(_worktops_mm(layout), default=0.0),
        room_mm=_longest_room_mm(build, layout),
    )


def points_count(found: FloorMeasures) -> float:
    """Return the points of a floor plan: Σ measure · weight of ``floor_weights``."""
    values = {
        "aisle": min(found.aisle_mm, weight("aisle-most").value),
        "axle": found.axle_spare_kg or 0.0,
        "plumbing": found.plumbing_mm,
        "cable": found.cable_mm,
        "storage": found.storage_l,
        "counter": found.counter_mm,
        "room": found.room_mm,
    }
    return round(sum(weight(name).value * values[name] for name in POINTS), 1)


def way_width_mm(problem: FloorProblem, build: Build, layout: Layout, way_ends_mm: float) -> float:
    """Return the narrowest place from cab and side doors to the way's end, by the layout's search.

    Parameters
    ----------
    problem
        Says where the way begins.
    build, layout
        As they would be.
    way_ends_mm
        Where it ends: the living space is cut off there, with an opening over its whole width.
    """
    cut = _cut_off(build.vehicle, way_ends_mm)
    standing = {
        f.name
        for f in build.fittings
        if f.fitting.mounting in INSIDE and f.fitting.mounting is not Mounting.CAB
    }
    bodies = [body for body in layout.solids if body.name in standing]
    found = aisles(
        bodies=[
            *(body for body in bodies if body.bounds.low_mm[0] < way_ends_mm),
            *(arch for arch in layout.arches if arch.bounds.low_mm[0] < way_ends_mm),
        ],
        vehicle=cut,
        build_up=layout.build_up,
        levels=levels(),
    )
    doors = [a.name for a in cut.apertures if a.wall != "rear"]
    starts = [*(["cab"] if problem.from_cab or not doors else []), *doors]
    ways = {f"{start} to {_END}" for start in starts}
    widths = (aisle.passage.width_mm for aisle in found if aisle.way in ways)
    return min(widths, default=0.0)


_END = "end of the way"


def _cut_off(vehicle: BaseVehicle, way_ends_mm: float) -> BaseVehicle:
    width_mm = 2 * max(row.half_width_mm for row in vehicle.shell.half_widths)
    end = Aperture(
        name=_END,
        wall="rear",
        from_mm=-width_mm / 2,
        clear_width_mm=width_mm,
        clear_height_mm=vehicle.shell.ceiling_mm,
        sill_mm=0.0,
    )
    sides = tuple(
        door
        for door in vehicle.apertures
        if door.wall != "rear" and door.from_mm + door.clear_width_mm <= way_ends_mm
    )
    shell = vehicle.shell.model_copy(update={"rear_mm": way_ends_mm})
    return vehicle.model_copy(update={"shell": shell, "apertures": (*sides, end)})


def axle_spare_kg(build: Build) -> float | None:
    """Return what is left on the axle that has less, travelling; None where unknown."""
    spares = [spare for spare in axle_spares_kg(build) if spare is not None]
    return min(spares, default=None)


def axle_spares_kg(build: Build) -> tuple[float | None, float | None]:
    """Return what is left on the front and on the rear axle, travelling."""
    figures = {figure.name: figure.value for figure in weights_stage.stage(build).figures}
    return figures.get("weights.front-axle-left"), figures.get("weights.rear-axle-left")


def _runs_mm(build: Build, runs: Sequence[Run], kind: str) -> float:
    middles = {f.name: middle_mm(f) for f in build.fittings}
    return sum(
        abs(middles[run.source][axis] - middles[run.user][axis])
        for run in runs
        if run.kind == kind
        for axis in (0, 1)
    )


def _worktops_mm(layout: Layout) -> Iterator[float]:
    """Yield the free length of each row of worktops that stand side by side."""
    bodies = {body.name: body.bounds for body in layout.solids}
    left = sorted(layout.counters, key=lambda counter: bodies[counter.name].low_mm[0])
    while left:
        row = [left.pop(0)]
        for counter in tuple(left):
            if _side_by_side(bodies[row[-1].name], bodies[counter.name]):
                row.append(counter)
                left.remove(counter)
        yield sum(_free_mm(counter) for counter in row)


def _free_mm(counter: Counter) -> float:
    return counter.length_mm - counter.taken_mm


def _side_by_side(front: Box, behind: Box) -> bool:
    return (
        abs(behind.low_mm[0] - front.high_mm[0]) < _SIDE_BY_SIDE_MM
        and behind.low_mm[1] < front.high_mm[1]
        and behind.high_mm[1] > front.low_mm[1]
    )


def _longest_room_mm(build: Build, layout: Layout) -> float:
    """Return the longest free stretch of a side wall; 0 where none is long enough."""
    rooms = [room for wall in ("left", "right") for room in _rooms_mm(build, layout, wall)]
    longest_mm = max(rooms, default=0.0)
    return longest_mm if longest_mm >= weight("room-least").value else 0.0


def _rooms_mm(build: Build, layout: Layout, wall: str) -> Iterator[float]:
    vehicle = build.vehicle
    taken = sorted(
        [
            *_taken_mm(build, layout, wall),
            *(
                (door.from_mm, door.from_mm + door.clear_width_mm)
                for door in vehicle.apertures
                if door.wall == wall
            ),
        ]
    )
    here_mm = vehicle.shell.cab_line_mm
    for from_mm, to_mm in taken:
        yield from_mm - here_mm
        here_mm = max(here_mm, to_mm)
    yield vehicle.shell.rear_mm - layout.build_up.doors_mm - here_mm


def _taken_mm(build: Build, layout: Layout, wall: str) -> Iterator[tuple[float, float]]:
    floor_mm = layout.build_up.floor_mm
    half_mm = (
        narrowest_half_width_mm(build.vehicle.shell, floor_mm, floor_mm + 1.0)
        - layout.build_up.walls_mm
    )
    edge_mm = half_mm - _CABINET_MM
    inside = {f.name for f in build.fittings if f.fitting.mounting in INSIDE}
    for body in layout.solids:
        if body.name in inside:
            yield from _along_mm(body, wall, edge_mm, floor_mm)


def _along_mm(
    body: Solid, wall: str, edge_mm: float, floor_mm: float
) -> Iterator[tuple[float, float]]:
    for part in body.boxes:
        beyond = part.low_mm[1] < -edge_mm if wall == "left" else part.high_mm[1] > edge_mm
        if beyond and part.low_mm[2] < floor_mm + levels()[1].to_mm:
            yield part.low_mm[0], part.high_mm[0]
