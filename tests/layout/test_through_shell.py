"""Where a zone reaches through the shell, and where a door lets it pass; by hand."""

import pytest

from coachwright.layout.doors import Hole, hole_of
from coachwright.layout.solids import box
from coachwright.layout.through_shell import shell_intrusions
from coachwright.model.shell import BuildUp
from tests.support.builds import build
from tests.support.vans import DOORS, Triple

VEHICLE = build(DOORS).vehicle
HOLES = tuple(hole_of(door) for door in VEHICLE.apertures)
LINED = BuildUp(walls_mm=20, ceiling_mm=15, floor_mm=12, doors_mm=18)


def through(
    low: Triple, high: Triple, holes: tuple[Hole, ...] = HOLES, build_up: BuildUp | None = None
) -> dict[str, float]:
    found = shell_intrusions(
        space=box(low, high),
        vehicle=VEHICLE,
        build_up=build_up or BuildUp(),
        holes=holes,
        slack_mm=1,
    )
    return {each.name: each.depth_mm for each in found}


def test_a_zone_inside_is_free() -> None:
    assert through((1200, -700, 0), (4700, 700, 1800)) == {}


def test_the_cab_line_is_open() -> None:
    assert through((500, -300, 0), (1500, 300, 1000)) == {}


@pytest.mark.parametrize(
    ("low", "high", "face", "depth"),
    [
        ((2600, 0, 0), (3000, 1000, 500), "the right wall", 100),
        ((2600, -1000, 0), (3000, 0, 500), "the left wall", 100),
        # 920 - 140 · 600 / 800 = 815 mm at 1600 mm
        ((2600, 0, 1000), (3000, 850, 1600), "the right wall", 35),
        ((2600, 0, 1500), (3000, 300, 2000), "the ceiling", 100),
        ((2600, 0, -50), (3000, 300, 500), "the floor", 50),
    ],
)
def test_a_face_blocks_by_what_reaches_through_it(
    low: Triple, high: Triple, face: str, depth: float
) -> None:
    assert through(low, high) == {face: pytest.approx(depth)}


def test_finishes_take_their_part() -> None:
    assert through((2600, 0, 0), (3000, 890, 500), build_up=LINED) == {
        "the right wall": pytest.approx(10),
        "the floor": 12,
    }


def test_a_zone_within_the_sliding_door_passes() -> None:
    assert through((1400, 0, 20), (2400, 1600, 900)) == {}


def test_beside_the_door_the_wall_blocks() -> None:
    assert through((2400, 0, 20), (2600, 1600, 900)) == {"the right wall": pytest.approx(699.6)}


def test_under_the_sill_and_over_the_lintel_the_wall_blocks() -> None:
    assert through((1400, 0, 0), (2400, 1600, 900)) == {"the right wall": 700}
    # narrowest over the closed piece: 920 - 140 · 780 / 800 = 783.5 mm at 1780 mm
    assert through((1400, 0, 20), (2400, 1600, 1780)) == {
        "the right wall": pytest.approx(1600 - 783.5)
    }


def test_only_the_door_of_the_same_wall_lets_pass() -> None:
    assert through((1400, -1600, 20), (2400, 0, 900)) == {"the left wall": pytest.approx(699.6)}


def test_through_the_rear_doors_only_within_their_width() -> None:
    assert through((4500, -700, 20), (5500, 700, 900)) == {}
    assert through((4500, -800, 20), (5500, 700, 900)) == {"the rear doors": 750}


def test_without_doors_everything_is_closed() -> None:
    assert through((4500, -700, 20), (5500, 700, 900), ()) == {"the rear doors": 750}
    assert through((1400, 0, 20), (2400, 1600, 900), ()) == {
        "the right wall": pytest.approx(699.6)
    }


def test_less_than_the_slack_does_not_count() -> None:
    assert through((2600, 0, 0), (3000, 901, 500)) == {}
