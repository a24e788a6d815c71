"""What moves together on a floor."""

import pytest

from coachwright.arrange.floor_groups import FloorWish, groups_of, staying
from coachwright.errors import CallError, UnknownName
from tests.arrange.floors import cabinet_data, floor_build, kitchen, stands
from tests.support import builds


def test_what_is_built_in_or_told_by_a_module_moves_with_it() -> None:
    groups = {group.name: group for group in groups_of(kitchen(), FloorWish())}
    assert {name: sorted(group.names) for name, group in groups.items()} == {
        "galley": ["galley", "lamp", "sink"],
        "bench": ["bench", "tank"],
        "chest": ["bed", "chest"],
    }
    assert groups["galley"].members[0].name == "galley"


def test_what_stands_against_the_rear_doors_stays_there() -> None:
    groups = {group.name: group for group in groups_of(kitchen(), FloorWish())}
    freed = {group.name: group for group in groups_of(kitchen(), FloorWish(freed=("chest",)))}
    assert [name for name, group in groups.items() if group.keeps_x] == ["chest"]
    assert not any(group.keeps_x for group in freed.values())


def test_modules_can_be_pinned_or_left_out() -> None:
    pinned = groups_of(kitchen(), FloorWish(pinned=("galley",)))
    some = groups_of(kitchen(), FloorWish(modules=("galley",)))
    assert [group.name for group in pinned if group.pinned] == ["galley"]
    assert [group.name for group in some if not group.pinned] == ["galley"]
    assert {fitted.name for fitted in staying(kitchen(), some)} == {
        "bench",
        "tank",
        "chest",
        "bed",
    }


@pytest.mark.parametrize("name", ["galley", "sink"])
def test_what_is_pinned_on_the_board_stays_with_its_whole_module(name: str) -> None:
    build = kitchen()
    pinned = build.model_copy(
        update={
            "fittings": tuple(
                each.model_copy(
                    update={"fitting": each.fitting.model_copy(update={"pinned": True})}
                )
                if each.name == name
                else each
                for each in build.fittings
            )
        }
    )
    groups = groups_of(pinned, FloorWish())
    assert [group.name for group in groups if group.pinned] == ["galley"]


def test_what_stands_in_the_middle_has_no_mirror_image() -> None:
    groups = {group.name: group for group in groups_of(kitchen(), FloorWish())}
    assert {name for name, group in groups.items() if group.centred} == {"chest"}


def test_every_bearer_of_a_bed_moves_with_it() -> None:
    build = floor_build(
        [
            stands("left-box", "box", "3500 mm"),
            stands("right-box", "box", "3500 mm", "right"),
            builds.fitting(
                "bed",
                "bed",
                at=["flush front left-box", "against centreline", "above left-box"],
                on="left-box",
            ),
        ],
        [
            cabinet_data("box", 1000, height_mm=400),
            builds.part(
                "bed",
                body={"size": ["1200 mm", "1800 mm", "150 mm"], "mass": "40 kg"},
                bed={"length": "1200 mm", "width": "1800 mm", "berths": 2},
            ),
        ],
    )
    groups = groups_of(build, FloorWish())
    assert [sorted(group.names) for group in groups] == [["bed", "left-box", "right-box"]]
    assert groups[0].centred


def test_a_name_that_is_no_module_is_refused() -> None:
    with pytest.raises(UnknownName, match="no module 'lamp'"):
        groups_of(kitchen(), FloorWish(pinned=("lamp",)))


def test_an_empty_van_has_nothing_to_place() -> None:
    with pytest.raises(CallError, match="nothing that stands on its floor"):
        groups_of(floor_build([], []), FloorWish())


def test_travel_seats_are_not_turned_end_for_end() -> None:
    seat = {
        "places": [{"name": "one", "reference": ["200 mm", "200 mm", "400 mm"]}],
        "belt": "three-point",
    }
    parts = [
        builds.part(
            "seat", body={"size": ["600 mm", "500 mm", "900 mm"], "mass": "30 kg"}, seat=seat
        ),
        builds.part(
            "sofa",
            body={"size": ["600 mm", "500 mm", "900 mm"], "mass": "30 kg"},
            seat=seat | {"belt": "none", "travel_seat": False},
        ),
    ]
    build = floor_build(
        [stands("seat", "seat", "1300 mm"), stands("sofa", "sofa", "2300 mm")], parts
    )
    assert [group.reverses for group in groups_of(build, FloorWish())] == [False, True]


def test_a_module_with_something_on_the_wall_cannot_be_turned() -> None:
    with pytest.raises(CallError, match="galley cannot be turned: lamp would leave the wall"):
        groups_of(kitchen(), FloorWish(turned=("galley",)))
