"""The floor plan as a model for the solver: a column of constraints, each with its name."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from coachwright.arrange.floor_groups import Group
from coachwright.arrange.floor_moving import Stand
from coachwright.arrange.floor_poses import STILL, Pose
from coachwright.arrange.floor_problem import STEP_MM, FloorProblem, weight
from coachwright.arrange.floor_room import Stretch, Wishes, room_between, room_of, steps_of

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import CpModel, CpSolver, IntVar, LinearExpr

_FAR_MM = 1_000_000


@dataclass(frozen=True, kw_only=True, slots=True)
class Segment:
    """A straight strip of the way.

    Attributes
    ----------
    ends
        Where it begins and ends along the van. [mm]
    chosen
        Left and right edge [mm] → the variable of that strip.
    """

    name: str
    ends: "tuple[IntVar | int, LinearExpr | int]"
    chosen: "dict[tuple[int, int], IntVar]"


@dataclass(kw_only=True, slots=True)
class FloorModel:
    """Variables of one floor plan.

    Attributes
    ----------
    shifts
        Module → by how much it is shifted along the van. [mm]
    poses
        Module → one variable for each of its poses.
    wishes
        What may be given up, in words → its variable.
    relaxed
        Plans count as different that differ less.
    way_ends
        Where the way through the van ends. [mm]
    width
        Width of the way. [mm]
    stretches
        Name → where the free stretch at a side door begins. [mm]
    segments
        The strips of the way, from the front.
    """

    model: "CpModel"
    problem: FloorProblem
    relaxed: "IntVar"
    shifts: dict[str, "LinearExpr"] = field(default_factory=dict)
    poses: dict[str, list["IntVar"]] = field(default_factory=dict)
    wishes: dict[str, "IntVar"] = field(default_factory=dict)
    way_ends: "IntVar | None" = None
    width: "IntVar | None" = None
    stretches: dict[str, "IntVar"] = field(default_factory=dict)
    segments: list[Segment] = field(default_factory=list)

    def wish(self, words: str) -> "IntVar":
        """Return the variable of a wish."""
        if words not in self.wishes:
            self.wishes[words] = self.model.new_bool_var(words)
        return self.wishes[words]

    def given(self, wishes: Wishes, *choices: "IntVar") -> list["IntVar"]:
        """Return what a constraint depends on: choices, and wishes that are kept."""
        return [*choices, *(self.wish(words) for words in wishes)]

    def stands(self, solver: "CpSolver") -> tuple[Stand, ...]:
        """Return where the solver put the modules, the pinned ones too."""
        found = []
        for group in self.problem.groups:
            poses = self.problem.poses[group.name]
            if group.pinned:
                found.append(Stand(group=group, pose=poses[0], shift_mm=0))
                continue
            pose = next(
                pose
                for pose, chosen in zip(poses, self.poses[group.name], strict=True)
                if solver.boolean_value(chosen)
            )
            shift_mm = solver.value(self.shifts[group.name])
            found.append(Stand(group=group, pose=pose, shift_mm=shift_mm))
        return tuple(found)


def stands_in(group: Group) -> str:
    """Return in words that a module is wanted."""
    return f"{group.name} is in the van"


def add_poses(floor: FloorModel) -> None:
    """Add for each module its shift in steps, the ends of it in each pose, and its one pose."""
    problem, model = floor.problem, floor.model
    for group in problem.placed:
        ends = [
            (0, 0) if group.keeps_x else steps_of(pose.root, problem.around, STEP_MM)
            for pose in problem.poses[group.name]
        ]
        steps = model.new_int_var(
            min(first for first, _ in ends), max(last for _, last in ends), f"steps-{group.name}"
        )
        floor.shifts[group.name] = STEP_MM * steps
        floor.poses[group.name] = []
        for number, (first, last) in enumerate(ends):
            chosen = model.new_bool_var(f"pose-{group.name}-{number}")
            floor.poses[group.name].append(chosen)
            model.add_linear_constraint(steps, first, last).with_name(
                f"ends-{group.name}-{number}"
            ).only_enforce_if(chosen)
        wanted = floor.wish(stands_in(group))
        model.add(sum(floor.poses[group.name]) == wanted).with_name(f"one-pose-{group.name}")


def add_room(floor: FloorModel) -> None:
    """Add for each pose that the module keeps clear of shell, doors, arches and what stays."""
    for group in floor.problem.placed:
        for number, (pose, chosen) in enumerate(_choices(floor, group)):
            if group.keeps_x and pose.motion == STILL:
                continue  # it is where the designer put it
            room = room_of(pose, floor.problem.around)
            for part, (wishes, stretches) in enumerate(room.forbidden.items()):
                _forbid(
                    floor,
                    floor.shifts[group.name],
                    stretches,
                    floor.given(wishes, chosen),
                    f"room-{group.name}-{number}-{part}",
                )


def add_apart(floor: FloorModel) -> None:
    """Add for each pair of poses that two modules and their zones keep clear of each other."""
    placed = floor.problem.placed
    for index, one in enumerate(placed):
        for other in placed[index + 1 :]:
            apart = floor.shifts[other.name] - floor.shifts[one.name]
            for first, (pose, chosen) in enumerate(_choices(floor, one)):
                for second, (opposite, chosen_too) in enumerate(_choices(floor, other)):
                    keep = one.keeps_x and other.keeps_x
                    if keep and pose.motion == opposite.motion == STILL:
                        continue
                    room = room_between(pose, opposite, floor.problem.around.parts)
                    for part, (wishes, stretches) in enumerate(room.forbidden.items()):
                        _forbid(
                            floor,
                            apart,
                            stretches,
                            floor.given(wishes, chosen, chosen_too),
                            f"apart-{one.name}-{first}-{other.name}-{second}-{part}",
                        )


def _choices(floor: FloorModel, group: Group) -> Iterator[tuple[Pose, "IntVar"]]:
    yield from zip(floor.problem.poses[group.name], floor.poses[group.name], strict=True)


def _forbid(
    floor: FloorModel,
    shift: "LinearExpr",
    stretches: Sequence[Stretch],
    given: Sequence["IntVar"],
    name: str,
) -> None:
    from ortools.sat.python.cp_model import Domain  # noqa: PLC0415  # half a second

    forbidden = Domain.from_intervals([list(stretch) for stretch in stretches])
    allowed = forbidden.complement().intersection_with(Domain(-_FAR_MM, _FAR_MM))
    floor.model.add_linear_expression_in_domain(shift, allowed).with_name(name).only_enforce_if(
        given
    )


def add_twins(floor: FloorModel) -> None:
    """Add that modules that are exchanged for each other make no new plan: they keep their order.

    Notes
    -----
    Twins have the same part and nothing else in them.  The first stands further left, or further
    forward on the same side.
    """
    for one, other in twins(floor.problem):
        for first, (pose, chosen) in enumerate(_choices(floor, one)):
            for second, (opposite, chosen_too) in enumerate(_choices(floor, other)):
                name = f"twins-{one.name}-{first}-{other.name}-{second}"
                if (pose.wall, opposite.wall) == ("right", "left"):
                    floor.model.add_bool_or([~chosen, ~chosen_too]).with_name(name)
                elif pose.wall == opposite.wall:
                    fronts = opposite.root.low_mm[0] - pose.root.low_mm[0]
                    floor.model.add(
                        floor.shifts[other.name] - floor.shifts[one.name] >= -math.floor(fronts)
                    ).with_name(name).only_enforce_if(chosen, chosen_too)


def twins(problem: FloorProblem) -> Iterator[tuple[Group, Group]]:
    """Yield pairs of placed modules that are of one part and hold nothing."""
    placed = [group for group in problem.placed if len(group.members) == 1]
    for index, one in enumerate(placed):
        for other in placed[index + 1 :]:
            same_height = one.bounds.low_mm[2] == other.bounds.low_mm[2]
            if one.root.part.id == other.root.part.id and same_height:
                yield one, other


def add_difference(floor: FloorModel, stands: Sequence[Stand], name: str) -> None:
    """Add that a plan differs clearly from one.

    Parameters
    ----------
    floor
        The model.
    stands
        Of the other plan.
    name
        Of the constraints.

    Notes
    -----
    A module stands on the other side or past its neighbour; or, where `FloorModel.relaxed`, which
    costs more than all else can be worth, much further forwards or rearwards at the same wall, or
    turned with what is built into it.  Modules with less floor than the least in
    ``floor_weights`` do not count.
    """
    counted = [stand for stand in stands if stand.group.area_m2 >= weight("different").value]
    free = [stand for stand in counted if not stand.group.pinned]
    changes = [
        chosen
        for stand in free
        for pose, chosen in _choices(floor, stand.group)
        if pose.wall != stand.pose.wall
    ]
    for one, other in _rows(counted):
        called = f"{name}-{one.group.name}-{other.group.name}"
        passed = floor.model.new_bool_var(called)
        floor.model.add(
            _at(floor, other, other.pose.root.high_mm[0])
            <= _at(floor, one, one.pose.root.low_mm[0])
        ).with_name(called).only_enforce_if(passed)
        changes.append(passed)
    floor.model.add_bool_or([*changes, floor.relaxed]).with_name(name)
    shifts = [literal for stand in free for literal in _moved(floor, stand, name)]
    floor.model.add_bool_or([*changes, *shifts]).with_name(f"{name}-at-least")


def _moved(floor: FloorModel, stand: Stand, name: str) -> Iterator["IntVar"]:
    """Yield variables that say that a module is much further forwards or rearwards, or turned."""
    least_mm = round(weight("moved").value)
    shift = floor.shifts[stand.group.name]
    forwards = floor.model.new_bool_var(f"{name}-{stand.group.name}-forwards")
    rearwards = floor.model.new_bool_var(f"{name}-{stand.group.name}-rearwards")
    floor.model.add(shift <= stand.shift_mm - least_mm).only_enforce_if(forwards)
    floor.model.add(shift >= stand.shift_mm + least_mm).only_enforce_if(rearwards)
    yield from (forwards, rearwards)
    if any(member.fitting.within for member in stand.group.members):
        for pose, chosen in _choices(floor, stand.group):
            if pose.wall == stand.pose.wall and pose.motion != stand.pose.motion:
                yield chosen


def _rows(stands: Sequence[Stand]) -> Iterator[tuple[Stand, Stand]]:
    """Yield pairs that stand one behind the other, of which one at least is placed."""
    for one in stands:
        for other in stands:
            behind = other.low_x_mm >= one.high_x_mm - STEP_MM
            first, second = one.pose.root, other.pose.root
            in_row = first.low_mm[1] < second.high_mm[1] and second.low_mm[1] < first.high_mm[1]
            if behind and in_row and not (one.group.pinned and other.group.pinned):
                yield one, other


def _at(floor: FloorModel, stand: Stand, x_mm: float) -> "LinearExpr | int":
    shift = floor.shifts.get(stand.group.name)
    return round(x_mm) if shift is None else round(x_mm) + shift
