"""What makes one floor plan better than another, in the model of the solver."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from coachwright.arrange.floor_groups import Group
from coachwright.arrange.floor_model import FloorModel
from coachwright.arrange.floor_poses import placing
from coachwright.arrange.floor_problem import middle_mm, weight
from coachwright.model.build import Fitted

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import IntVar, LinearExpr

SCALE = 1000
"""Whole numbers of the objective in a point."""
_LIKE_OTHERS = 10_000_000
"""What it costs to differ little from the plans before: more than all else can be worth."""
_FAR_MM = 20_000
_FAR_KG = 20_000


@dataclass(frozen=True, kw_only=True, slots=True)
class AxleSpare:
    """What is left on each axle now. [kg]."""

    front_kg: float
    rear_kg: float


def add_goals(floor: FloorModel, spare: AxleSpare | None) -> None:
    """Add what is to be as large as possible: points for width, axles and short runs."""
    terms = [*_width(floor), *_runs(floor)]
    if spare is not None:
        terms.extend(_axles(floor, spare))
    floor.model.maximize(sum(terms) - _LIKE_OTHERS * floor.relaxed)


def _points(name: str) -> int:
    return round(weight(name).value * SCALE)


def _width(floor: FloorModel) -> Iterator["IntVar"]:
    if floor.width is not None:
        most_mm = round(weight("aisle-most").value)
        counted = floor.model.new_int_var(0, most_mm, "width-counted")
        floor.model.add(counted <= floor.width).with_name("width-counted")
        yield _points("aisle") * counted  # type: ignore[misc]  # a product


def _axles(floor: FloorModel, spare: AxleSpare) -> Iterator["IntVar"]:
    """Yield the spare of the axle that has less.

    Notes
    -----
    A module of mass m that is shifted by d takes m · d / wheelbase from the front axle and puts it
    on the rear one.
    """
    model, problem = floor.model, floor.problem
    wheelbase_mm = problem.build.vehicle.outside.wheelbase_mm
    shifted = sum(
        round(10 * group_mass_kg(group)) * floor.shifts[group.name] for group in problem.placed
    )
    scale = round(10 * wheelbase_mm)
    least = model.new_int_var(-_FAR_KG, _FAR_KG, "least-axle-spare")
    # both sides times ten wheelbases, so that everything is whole
    model.add(scale * least <= round(scale * spare.front_kg) + shifted).with_name("front-axle")
    model.add(scale * least <= round(scale * spare.rear_kg) - shifted).with_name("rear-axle")
    yield _points("axle") * least  # type: ignore[misc]  # a product


def group_mass_kg(group: Group) -> float:
    """Return the mass of a module with contents and full tanks. [kg]."""
    return sum(
        member.mass_kg
        + member.fitting.contents_kg
        + (0.0 if member.part.tank is None else member.part.tank.volume_l)
        for member in group.members
    )


def _runs(floor: FloorModel) -> Iterator["IntVar"]:
    """Yield what runs cost: their lengths along and across the van."""
    problem, model = floor.problem, floor.model
    heads = {name: group for group in problem.groups for name in group.names}
    fitted = {f.name: f for f in problem.build.fittings}
    for number, run in enumerate(problem.runs):
        one, other = heads.get(run.source), heads.get(run.user)
        if one is not None and one is other:
            continue
        ends = (fitted[run.source], fitted[run.user])
        along = model.new_int_var(0, _FAR_MM, f"{run.kind}-{number}")
        starts = [
            _middle(floor, end, group) for end, group in zip(ends, (one, other), strict=True)
        ]
        model.add(along >= starts[0] - starts[1]).with_name(f"{run.kind}-{number}-forward")
        model.add(along >= starts[1] - starts[0]).with_name(f"{run.kind}-{number}-back")
        points = _points(run.kind)
        yield points * along  # type: ignore[misc]  # a product
        for across_mm, both in _across(floor, ends, (one, other), f"{run.kind}-{number}"):
            yield points * across_mm * both  # type: ignore[misc]  # a product


def _middle(floor: FloorModel, end: Fitted, group: Group | None) -> "LinearExpr | int":
    """Return where the middle of a fitting is along the van."""
    x_mm, y_mm = middle_mm(end)
    if group is None or group.pinned:
        return round(x_mm)
    poses = zip(floor.problem.poses[group.name], floor.poses[group.name], strict=True)
    places = (
        round(placing(group, pose.motion)((x_mm, y_mm, 0.0))[0]) * chosen for pose, chosen in poses
    )
    return floor.shifts[group.name] + sum(places)


def _across(
    floor: FloorModel,
    ends: tuple[Fitted, Fitted],
    groups: tuple[Group | None, Group | None],
    name: str,
) -> Iterator[tuple[int, "IntVar | int"]]:
    """Yield the length across the van for each pair of poses, and the variable of that pair."""
    first, second = (
        list(_sides(floor, end, group)) for end, group in zip(ends, groups, strict=True)
    )
    for a, (y_mm, chosen) in enumerate(first):
        for b, (other_y_mm, chosen_too) in enumerate(second):
            across_mm = round(abs(y_mm - other_y_mm))
            if isinstance(chosen, int):
                yield across_mm, chosen_too
            elif isinstance(chosen_too, int):
                yield across_mm, chosen
            else:
                both = floor.model.new_bool_var(f"{name}-across-{a}-{b}")
                # it counts against the plan, so that the solver never sets it without need
                floor.model.add_bool_or([~chosen, ~chosen_too, both]).with_name(
                    f"{name}-across-{a}-{b}"
                )
                yield across_mm, both


def _sides(
    floor: FloorModel, end: Fitted, group: Group | None
) -> Iterator[tuple[float, "IntVar | int"]]:
    x_mm, y_mm = middle_mm(end)
    if group is None or group.pinned:
        yield y_mm, 1
        return
    poses = floor.problem.poses[group.name]
    for pose, chosen in zip(poses, floor.poses[group.name], strict=True):
        yield placing(group, pose.motion)((x_mm, y_mm, 0.0))[1], chosen


def whole_points(value: int) -> int:
    """Return an objective of the solver in whole points."""
    return math.floor(value / SCALE)


def axle_spare(front_kg: float | None, rear_kg: float | None) -> AxleSpare | None:
    """Return the spares where both are known."""
    if front_kg is None or rear_kg is None:
        return None
    return AxleSpare(front_kg=front_kg, rear_kg=rear_kg)
