"""Which shifts are forbidden, held against the layout's own overlap of moved solids."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.arrange.checking import checked, judge_of
from coachwright.arrange.floor_groups import FloorWish, Group, groups_of
from coachwright.arrange.floor_moving import Stand, moved_fittings
from coachwright.arrange.floor_poses import Piece, Pose, poses_of
from coachwright.arrange.floor_problem import FloorProblem, floor_problem
from coachwright.arrange.floor_room import (
    TOUCHING_MM,
    meeting_mm,
    room_between,
    room_of,
    steps_of,
)
from coachwright.arrange.rebuilding import rebuilt
from coachwright.layout import stage as layout_stage
from coachwright.layout.solids import Box, box, moved, overlap, solid
from tests.arrange.floors import SIDE_DOOR, cabinet_data, floor_build, kitchen, stands
from tests.support import builds

point = st.tuples(*(st.integers(0, 60) for _ in range(3)))
size = st.tuples(*(st.integers(5, 40) for _ in range(3)))


def _box(low: tuple[int, ...], sides: tuple[int, ...]) -> Box:
    return box(
        (float(low[0]), float(low[1]), float(low[2])),
        (float(low[0] + sides[0]), float(low[1] + sides[1]), float(low[2] + sides[2])),
    )


@settings(max_examples=300, deadline=None)
@given(point, size, point, size, st.integers(-120, 120))
def test_two_boxes_meet_where_the_layout_says_so(
    low: tuple[int, ...],
    sides: tuple[int, ...],
    other_low: tuple[int, ...],
    other_sides: tuple[int, ...],
    shift: int,
) -> None:
    one, other = _box(low, sides), _box(other_low, other_sides)
    stretch = meeting_mm(Piece(owner="a", space=one), Piece(owner="b", space=other), {})
    shifted = moved(solid("b", (other,)), (float(shift), 0.0, 0.0))
    meets = overlap(solid("a", (one,)), shifted, slack_mm=TOUCHING_MM) is not None
    assert meets is (stretch is not None and stretch[0] <= shift <= stretch[1])


def test_a_cabinet_keeps_clear_of_another_and_of_its_drawer() -> None:
    build = floor_build(
        [stands("galley", "galley", "1500 mm"), stands("box", "box", "3000 mm", "right")],
        [cabinet_data("galley", 1000, zone_mm=450), cabinet_data("box", 500, width_mm=900)],
    )
    problem = floor_problem(build, FloorWish())
    galley, wide = (problem.poses[name][0] for name in ("galley", "box"))
    room = room_between(galley, wide, problem.around.parts)
    # the drawer reaches to y = 50 mm, the box from y = 0: they meet from x 1000 to 2500 mm
    assert dict(room.forbidden) == {("the drawer of galley is free",): ((-1999, -501),)}
    assert room.free(-500)
    assert not room.free(-501)


def test_a_cabinet_keeps_within_the_van() -> None:
    problem = floor_problem(kitchen(), FloorWish())
    pose = problem.poses["galley"][0]
    room = room_of(pose, problem.around)
    assert room.free(-350)
    assert not room.free(-351)
    assert steps_of(pose.root, problem.around, 10) == (-35, 225)


def test_what_stays_is_named() -> None:
    problem = floor_problem(kitchen(), FloorWish(modules=("bench",)))
    room = room_of(problem.poses["bench"][0], problem.around)
    assert ("chest stays where it is",) in room.forbidden


@pytest.mark.parametrize(("let_in", "held"), [(False, True), (True, False)])
def test_a_window_needs_whole_wall_and_a_cabinet_only_some(let_in: bool, held: bool) -> None:
    opening: dict[str, Any] = (
        {"opening": {"kind": "window", "clear_width": "300 mm", "clear_height": "300 mm"}}
        if let_in
        else {}
    )
    build = floor_build(
        [
            stands("box", "box", "3000 mm", "right"),
            builds.fitting(
                "on-wall",
                "thing",
                at=["flush front box", "against right wall", "above box 100 mm"],
                mounting="wall",
            ),
        ],
        [
            cabinet_data("box", 500),
            builds.part(
                "thing", body={"size": ["400 mm", "50 mm", "300 mm"], "mass": "2 kg"}, **opening
            ),
        ],
        **{"own_vehicle.apertures": [SIDE_DOOR]},
    )
    problem = floor_problem(build, FloorWish())
    room = room_of(problem.poses["box"][0], problem.around)
    assert room.free(-700) is held  # from 2300 to 2700 mm; the door ends at 2500 mm
    assert not room.free(-1000)


def test_wheel_arches_are_kept_clear_of() -> None:
    arch = {"x_from": "3000 mm", "x_to": "3600 mm", "inner_y": "700 mm", "height": "250 mm"}
    build = kitchen(**{"own_vehicle.shell.wheel_arches": [arch]})
    group = next(g for g in groups_of(build, FloorWish()) if g.name == "galley")
    problem = floor_problem(build, FloorWish())
    room = room_of(poses_of(group, build, layout_stage.stage(build))[0], problem.around)
    assert room.free(500)
    assert not room.free(501)
    assert room.free(2100)


def _faultless(problem: FloorProblem, pose: Pose, shift_mm: int, group: Group) -> bool:
    stand = Stand(group=group, pose=pose, shift_mm=shift_mm)
    build = rebuilt(problem.build, changed=moved_fittings(problem.build, [stand]))
    judged = checked(
        judge_of(problem.build),
        build,
        group.names,
        lambda one, other: {one, other} <= group.names,
    )
    return not judged.faults


@pytest.mark.slow
@pytest.mark.parametrize(("module", "turned"), [("galley", ()), ("bench", ("bench",))])
def test_every_place_of_a_module_is_free_or_not_as_the_layout_finds(
    module: str, turned: tuple[str, ...]
) -> None:
    arch = {"x_from": "3000 mm", "x_to": "3400 mm", "inner_y": "700 mm", "height": "250 mm"}
    build = kitchen(**{"own_vehicle.shell.wheel_arches": [arch]})
    problem = floor_problem(build, FloorWish(modules=(module,), turned=turned))
    (group,) = problem.placed
    free = taken = 0
    for pose in problem.poses[module]:
        room = room_of(pose, problem.around)
        first, last = steps_of(pose.root, problem.around, 10)
        for step in range(first - 3, last + 4, 3):
            found = room.free(10 * step)
            assert found is _faultless(problem, pose, 10 * step, group), (pose.motion, step)
            free, taken = free + found, taken + (not found)
    assert free > 30
    assert taken > 30
