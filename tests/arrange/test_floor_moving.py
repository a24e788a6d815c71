"""Where modules stand by the solver is where they stand by the build file."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.arrange.floor_groups import FloorWish, groups_of
from coachwright.arrange.floor_moving import Stand, moved_fittings, same_mirrored
from coachwright.arrange.floor_poses import poses_of
from coachwright.arrange.rebuilding import rebuilt
from coachwright.layout import stage as layout_stage
from coachwright.model.position import Relation
from tests.arrange.floors import cabinet_data, floor_build, kitchen, stands
from tests.support import builds

BUILD = kitchen()
LAYOUT = layout_stage.stage(BUILD)
WISH = FloorWish(turned=("bench",), freed=("chest",))
GROUPS = {group.name: group for group in groups_of(BUILD, WISH)}
POSES = {name: poses_of(group, BUILD, LAYOUT) for name, group in GROUPS.items()}


def _stand(name: str, pose: int, shift_mm: int) -> Stand:
    return Stand(group=GROUPS[name], pose=POSES[name][pose], shift_mm=shift_mm)


def test_a_module_has_the_poses_that_differ() -> None:
    assert {name: len(poses) for name, poses in POSES.items()} == {
        "galley": 4,  # as it is, mirrored two ways, half turned
        "bench": 8,  # and four quarter turns
        "chest": 2,  # from wall to wall; the bed on it overhangs on one end
    }


@settings(max_examples=60, deadline=None)
@given(
    galley=st.tuples(st.integers(0, 3), st.integers(-300, 2000)),
    bench=st.tuples(st.integers(0, 7), st.integers(-40, 2000)),
    chest=st.integers(-2000, 0),
)
def test_the_written_fittings_stand_where_the_solver_put_them(
    galley: tuple[int, int], bench: tuple[int, int], chest: int
) -> None:
    chosen = [_stand("galley", *galley), _stand("bench", *bench), _stand("chest", 0, chest)]
    moved = rebuilt(BUILD, changed=moved_fittings(BUILD, chosen))
    found = {body.name: body.bounds for body in layout_stage.stage(moved).solids}
    for stand in chosen:
        for piece in stand.pose.pieces:
            if piece.zone is None:
                space = found[piece.owner]
                wanted = piece.space
                assert space.low_mm == pytest.approx(
                    (wanted.low_mm[0] + stand.shift_mm, *wanted.low_mm[1:]), abs=0.02
                )
                assert space.high_mm == pytest.approx(
                    (wanted.high_mm[0] + stand.shift_mm, *wanted.high_mm[1:]), abs=0.02
                )


@settings(max_examples=30, deadline=None)
@given(pose=st.integers(0, 3), shift_mm=st.integers(-300, 2000))
def test_the_zones_of_written_fittings_are_where_the_solver_kept_them_free(
    pose: int, shift_mm: int
) -> None:
    stand = _stand("galley", pose, shift_mm)
    moved = rebuilt(BUILD, changed=moved_fittings(BUILD, [stand]))
    zone = next(z for z in layout_stage.stage(moved).zones if z.fitting == "galley")
    wanted = next(piece.space for piece in stand.pose.pieces if piece.zone is not None)
    assert zone.space.low_mm == pytest.approx(
        (wanted.low_mm[0] + shift_mm, *wanted.low_mm[1:]), abs=0.02
    )
    assert zone.space.high_mm == pytest.approx(
        (wanted.high_mm[0] + shift_mm, *wanted.high_mm[1:]), abs=0.02
    )


def test_relations_within_a_module_stay_relations() -> None:
    mirrored = next(
        number
        for number, pose in enumerate(POSES["galley"])
        if pose.motion.flip_y and not pose.motion.flip_x
    )
    fittings = moved_fittings(BUILD, [_stand("galley", mirrored, 100)])
    said = {
        name: [place.text if isinstance(place, Relation) else place for place in fitting.at_mm]
        for name, fitting in fittings.items()
    }
    assert said == {
        "galley": [1600, "against right wall", "against floor"],
        "sink": ["flush rear galley 50 mm", "centred on galley -10 mm", "flush top galley"],
        "lamp": ["flush rear galley", "against right wall", "above galley 400 mm"],
    }


def test_what_does_not_move_is_not_written() -> None:
    assert moved_fittings(BUILD, [_stand("galley", 0, 0)]) == {}


def test_what_was_placed_by_a_moved_module_keeps_its_place() -> None:
    build = floor_build(
        [
            stands("one", "box", "1200 mm"),
            stands("two", "box", "behind one 10 mm"),
        ],
        [cabinet_data("box", 500)],
    )
    groups = {group.name: group for group in groups_of(build, FloorWish())}
    pose = poses_of(groups["one"], build, layout_stage.stage(build))[0]
    fittings = moved_fittings(build, [Stand(group=groups["one"], pose=pose, shift_mm=-20)])
    assert fittings["two"].at_mm[0] == 1710


@pytest.mark.parametrize(("x_mm", "along", "across"), [(0, False, False), (100, True, False)])
def test_a_part_is_its_own_mirror_image_where_its_zones_are(
    x_mm: int, along: bool, across: bool
) -> None:
    zone = {
        "purpose": "drawer",
        "from": [f"{x_mm} mm", "500 mm", "0 mm"],
        "to": ["400 mm", "800 mm", "100 mm"],
    }
    part = builds.sheet(
        {
            "own_parts": [
                builds.part(
                    "p",
                    body={"size": ["500 mm", "500 mm", "500 mm"], "mass": "1 kg"},
                    access={"zones": [zone]},
                )
            ]
        }
    ).own_parts[0]
    assert same_mirrored(part, 0) is along
    assert same_mirrored(part, 1) is across


def test_what_is_bought_is_half_turned_rather_than_mirrored() -> None:
    mirrored = next(
        number
        for number, pose in enumerate(POSES["galley"])
        if pose.motion.flip_y and not pose.motion.flip_x
    )
    fittings = moved_fittings(BUILD, [_stand("galley", mirrored, 0)])
    assert not any(fitting.mirror for fitting in fittings.values())
    assert fittings["galley"].turn_deg == 180
    assert fittings["sink"].turn_deg == 0  # a plain box is the same both ways
