"""The way through the van in the floor plan's model: a straight strip, and the doors onto it."""

import math
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from coachwright.arrange.floor_groups import Group
from coachwright.arrange.floor_model import FloorModel, Segment
from coachwright.arrange.floor_poses import Piece, Pose
from coachwright.arrange.floor_problem import FloorProblem, walked, weight
from coachwright.layout.doors import Hole, hole_of
from coachwright.layout.solids import Box
from coachwright.model.shell import narrowest_half_width_mm

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import IntVar, LinearExpr

STRIPS = 2
"""Straight strips that make up the way."""
Strip = tuple[int, int]
"""Left and right edge of a way. [mm]"""


def way_wish(problem: FloorProblem) -> str:
    """Return in words that there is a way."""
    start = "from the cab" if problem.from_cab else "from the side door"
    return f"there is a way of {problem.aisle_mm} mm {start}"


def strips(problem: FloorProblem) -> tuple[Strip, ...]:
    """Return the strips between faces of modules and walls that are wide enough for a way.

    Parameters
    ----------
    problem
        Modules, their poses and what stays.
    """
    floor_mm = problem.layout.build_up.floor_mm
    wall_mm = (
        narrowest_half_width_mm(problem.build.vehicle.shell, floor_mm, floor_mm + 1.0)
        - problem.layout.build_up.walls_mm
    )
    left, right = {-math.floor(wall_mm)}, {math.floor(wall_mm)}
    for pieces in _standing(problem):
        for low_mm, high_mm in ((p.space.low_mm[1], p.space.high_mm[1]) for p in pieces):
            # what stands across the middle may be passed on either side
            if low_mm < 0:
                left.add(math.ceil(high_mm))
            if high_mm > 0:
                right.add(math.floor(low_mm))
    pairs = [
        (from_mm, to_mm)
        for from_mm in left
        for to_mm in right
        if to_mm - from_mm >= problem.aisle_mm
    ]
    return tuple(sorted(_useful(pairs), key=lambda pair: (pair[0] - pair[1], pair)))


def _useful(pairs: Sequence[Strip]) -> Iterator[Strip]:
    """Yield the strips that hold no other one that counts as much."""
    most_mm = round(weight("aisle-most").value)
    for pair in pairs:
        counts_mm = min(most_mm, pair[1] - pair[0])
        if not any(
            other != pair
            and pair[0] <= other[0]
            and other[1] <= pair[1]
            and other[1] - other[0] >= counts_mm
            for other in pairs
        ):
            yield pair


def _standing(problem: FloorProblem) -> Iterator[Sequence[Piece]]:
    """Yield for each pose, and for each fitting that stays, what stands furthest into the van."""
    poses = (pose.pieces for group in problem.placed for pose in problem.poses[group.name])
    kept = ((piece,) for piece in problem.around.staying)
    for pieces in (*poses, *kept):
        met = [piece for piece in pieces if walked(piece, problem)]
        if met:
            yield (
                max(met, key=lambda piece: piece.space.high_mm[1]),
                min(met, key=lambda piece: piece.space.low_mm[1]),
            )


def add_way(floor: FloorModel) -> None:
    """Add that people get through the van, from the cab or a side door to the way's end.

    Notes
    -----
    The way is a row of straight strips.  Each goes on for a person's width beside the next, so
    that people step across; whatever reaches into a strip stands before or behind it.  The way
    goes as far as the zones of the modules, and far enough to reach those without zones.
    """
    problem, model = floor.problem, floor.model
    shell = problem.build.vehicle.shell
    rear_mm = math.floor(shell.rear_mm - problem.layout.build_up.doors_mm)
    start_mm = math.ceil(shell.cab_line_mm)
    wanted = floor.wish(way_wish(problem))
    end = model.new_int_var(start_mm, rear_mm, "way-ends")
    width = model.new_int_var(0, 2 * math.ceil(shell.half_widths[0].half_width_mm), "way-width")
    floor.way_ends, floor.width = end, width
    doors = side_doors(problem)
    here: IntVar | int = start_mm if problem.from_cab or not doors else _stretch(floor, doors[0])
    for number in range(1, STRIPS):
        bend = model.new_int_var(start_mm, rear_mm, f"bend-{number}")
        model.add(bend >= here).with_name(f"bend-{number}-follows")
        _strip(floor, f"way-{number}", (here, bend + problem.aisle_mm), wanted)
        here = bend
    model.add(end >= here).with_name("way-ends-last")
    _strip(floor, f"way-{STRIPS}", (here, end), wanted)
    _reach(floor, wanted, end)


def _strip(
    floor: FloorModel, name: str, ends: "tuple[IntVar | int, LinearExpr | int]", wanted: "IntVar"
) -> None:
    """Add a strip that is free between two places along the van, and that it limits the width."""
    problem, model = floor.problem, floor.model
    chosen = {
        strip: model.new_bool_var(f"{name}-{strip[0]}-{strip[1]}") for strip in strips(problem)
    }
    model.add(sum(chosen.values()) == wanted).with_name(f"one-{name}")
    if floor.width is not None:
        widths = ((strip[1] - strip[0]) * choice for strip, choice in chosen.items())
        model.add(floor.width <= sum(widths)).with_name(f"{name}-width")
    for strip, choice in chosen.items():
        _keep_out(floor, strip, choice, ends, f"{name}-{strip[0]}-{strip[1]}")
    floor.segments.append(Segment(name=name, ends=ends, chosen=chosen))


def side_doors(problem: FloorProblem) -> tuple[Hole, ...]:
    """Return the doors in the side walls."""
    doors = (hole_of(aperture) for aperture in problem.build.vehicle.apertures)
    return tuple(door for door in doors if door.wall in ("left", "right"))


def _keep_out(
    floor: FloorModel,
    strip: Strip,
    choice: "IntVar",
    ends: "tuple[IntVar | int, LinearExpr | int]",
    name: str,
) -> None:
    problem = floor.problem
    for piece in problem.around.staying:
        if _reaches_into(piece, strip, problem):
            kept = floor.wish(problem.around.keepers[piece.owner])
            there = (math.floor(piece.space.low_mm[0]), math.ceil(piece.space.high_mm[0]))
            _beside(floor, ends, there, [choice, kept], f"{name}-{piece.owner}")
    for group in problem.placed:
        for number, pose in enumerate(problem.poses[group.name]):
            spaces = [p.space for p in pose.pieces if _reaches_into(p, strip, problem)]
            if spaces:
                _beside(
                    floor,
                    ends,
                    _along(floor, group, spaces),
                    [choice, floor.poses[group.name][number]],
                    f"{name}-{group.name}-{number}",
                )


def _along(
    floor: FloorModel, group: Group, spaces: Sequence[Box]
) -> "tuple[LinearExpr, LinearExpr]":
    """Return where boxes of a module begin and end along the van."""
    shift = floor.shifts[group.name]
    return (
        shift + math.floor(min(space.low_mm[0] for space in spaces)),
        shift + math.ceil(max(space.high_mm[0] for space in spaces)),
    )


def _reaches_into(piece: Piece, strip: Strip, problem: FloorProblem) -> bool:
    return (
        walked(piece, problem)
        and piece.space.low_mm[1] < strip[1]
        and piece.space.high_mm[1] > strip[0]
    )


def _reach(floor: FloorModel, wanted: "IntVar", end: "IntVar") -> None:
    problem = floor.problem
    for group in problem.placed:
        if group.keeps_x:  # it is where the designer put it, reached as the designer saw fit
            continue
        for number, pose in enumerate(problem.poses[group.name]):
            needed_mm = _needed_mm(pose, problem, group.name)
            if needed_mm is not None:
                floor.model.add(end >= floor.shifts[group.name] + math.floor(needed_mm)).with_name(
                    f"reach-{group.name}-{number}"
                ).only_enforce_if(wanted, floor.poses[group.name][number])


def _needed_mm(pose: Pose, problem: FloorProblem, name: str) -> float | None:
    """Return how far the way must go for a module; None where it is not reached from the way.

    Notes
    -----
    To the rear of the zones in which people stand, or far enough to reach the module where it
    states none; tanks, gas stores and slide-outs are not reached from the way.
    """
    part = problem.around.parts[name]
    if any(facet is not None for facet in (part.tank, part.gas_store, part.slide_out)):
        return None
    feet_mm = problem.layout.build_up.floor_mm + weight("reach").value
    zones = [
        piece.space.high_mm[0]
        for piece in pose.pieces
        if piece.zone is not None and piece.space.low_mm[2] < feet_mm
    ]
    if not zones or part.seat is not None or part.toilet is not None:
        length_mm = pose.root.high_mm[0] - pose.root.low_mm[0]
        zones.append(pose.root.low_mm[0] + min(length_mm, weight("reach").value))
    return max(zones)


def _entry_mm(door: Hole) -> int:
    return math.floor(min(weight("entry").value, door.to_mm - door.from_mm))


def _stretch(floor: FloorModel, door: Hole) -> "IntVar":
    """Return where the free stretch at a side door begins."""
    name = f"way-in-{door.name.replace(' ', '-')}"
    if name not in floor.stretches:
        last_mm = math.floor(door.to_mm) - _entry_mm(door)
        floor.stretches[name] = floor.model.new_int_var(math.ceil(door.from_mm), last_mm, name)
    return floor.stretches[name]


def add_way_in(floor: FloorModel) -> None:
    """Add for each side door a free stretch from which people step onto a strip of the way."""
    for door in side_doors(floor.problem):
        wanted = floor.wish(f"there is a way in at the {door.name}")
        start = _stretch(floor, door)
        stretch = (start, start + _entry_mm(door))
        onto = []
        for segment in floor.segments:
            here = floor.model.new_bool_var(f"{start.name}-onto-{segment.name}")
            onto.append(here)
            floor.model.add(stretch[0] >= segment.ends[0]).only_enforce_if(here)
            floor.model.add(stretch[1] <= segment.ends[1]).only_enforce_if(here)
            edges = {strip[0 if door.wall == "left" else 1] for strip in segment.chosen}
            for edge_mm in sorted(edges):
                choices = [
                    choice
                    for strip, choice in segment.chosen.items()
                    if edge_mm == strip[0 if door.wall == "left" else 1]
                ]
                _free_beside(floor, door, edge_mm, stretch=stretch, here=here, choices=choices)
        floor.model.add(sum(onto) == wanted).with_name(f"{start.name}-onto-one")


def _free_beside(
    floor: FloorModel,
    door: Hole,
    edge_mm: int,
    *,
    stretch: "tuple[IntVar, LinearExpr]",
    here: "IntVar",
    choices: Sequence["IntVar"],
) -> None:
    """Add that nothing stands between a door's stretch and a strip with an edge."""
    problem = floor.problem
    name = f"{here.name}-{edge_mm}"
    used = floor.model.new_bool_var(name)
    for choice in choices:
        floor.model.add_bool_or([used, ~here, ~choice])
    for piece in problem.around.staying:
        if _between(piece, door, edge_mm, problem):
            kept = floor.wish(problem.around.keepers[piece.owner])
            there = (math.floor(piece.space.low_mm[0]), math.ceil(piece.space.high_mm[0]))
            _beside(floor, stretch, there, [used, kept], f"{name}-{piece.owner}")
    for group in problem.placed:
        for number, pose in enumerate(problem.poses[group.name]):
            spaces = [p.space for p in pose.pieces if _between(p, door, edge_mm, problem)]
            if spaces:
                _beside(
                    floor,
                    stretch,
                    _along(floor, group, spaces),
                    [used, floor.poses[group.name][number]],
                    f"{name}-{group.name}-{number}",
                )


def _between(piece: Piece, door: Hole, edge_mm: int, problem: FloorProblem) -> bool:
    """Say whether a piece stands further towards a side door than an edge of a strip."""
    low_mm, high_mm = piece.space.low_mm[1], piece.space.high_mm[1]
    beyond = low_mm < edge_mm if door.wall == "left" else high_mm > edge_mm
    return walked(piece, problem) and beyond


def _beside(
    floor: FloorModel,
    stretch: "tuple[IntVar | int, LinearExpr | int]",
    other: "tuple[LinearExpr | int, LinearExpr | int]",
    given: list["IntVar"],
    name: str,
) -> None:
    """Add that one stretch along the van lies before or behind another."""
    before = floor.model.new_bool_var(f"{name}-before")
    floor.model.add(other[1] <= stretch[0]).with_name(f"{name}-before").only_enforce_if(
        [*given, before]
    )
    floor.model.add(other[0] >= stretch[1]).with_name(f"{name}-behind").only_enforce_if(
        [*given, ~before]
    )
