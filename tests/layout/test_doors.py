"""Where a rear door takes what hangs on it, and what passes a door."""

import math

import pytest
import shapely
import shapely.affinity
from hypothesis import given
from hypothesis import strategies as st

from coachwright.layout.doors import hole_of, swung
from coachwright.layout.solids import Box, box, solid
from coachwright.model.build import Mounting
from tests.layout.shapes import boxes
from tests.support.builds import build
from tests.support.vans import DOORS

VEHICLE = build(DOORS).vehicle
REAR_MM = 5990.0 - 950.0
"""x of the rear end; the hinges are 780 mm from the centreline."""
LEFT, RIGHT = Mounting.REAR_DOOR_LEFT, Mounting.REAR_DOOR_RIGHT
CRATE = solid("crate", (box((REAR_MM, -700, 200), (REAR_MM + 300, -100, 800)),))
"""On the left door, 80 to 680 mm from its hinge."""


@pytest.mark.parametrize(
    ("open_deg", "low", "high"),
    [
        (0, (0, -700), (300, -100)),
        (90, (80, -1080), (680, -780)),  # it stands out behind, its load outside
        (180, (-300, -1460), (0, -860)),
        (270, (-680, -780), (-80, -480)),
    ],
)
def test_a_left_door_turns_its_load_about_its_hinge(
    open_deg: float, low: tuple[float, float], high: tuple[float, float]
) -> None:
    found = swung(CRATE, VEHICLE, LEFT, open_deg)
    assert found.boxes == (
        box((REAR_MM + low[0], low[1], 200), (REAR_MM + high[0], high[1], 800)),
    )


@given(boxes(), st.sampled_from([0.0, 45.0, 90.0, 96.0, 180.0, 270.0]))
def test_the_right_door_is_the_mirror_of_the_left(space: Box, open_deg: float) -> None:
    mirrored = box(
        (space.low_mm[0], -space.low_mm[1], space.low_mm[2]),
        (space.high_mm[0], -space.high_mm[1], space.high_mm[2]),
    )
    left = swung(solid("a", (space,)), VEHICLE, LEFT, open_deg).bounds
    right = swung(solid("a", (mirrored,)), VEHICLE, RIGHT, open_deg).bounds
    assert right.low_mm == pytest.approx((left.low_mm[0], -left.high_mm[1], left.low_mm[2]))
    assert right.high_mm == pytest.approx((left.high_mm[0], -left.low_mm[1], left.high_mm[2]))


@given(boxes(), st.floats(0, 270))
def test_a_turned_box_is_that_of_shapely(space: Box, open_deg: float) -> None:
    # outside check: shapely's rotation about the hinge, clockwise for the left door
    plan = shapely.box(*space.low_mm[:2], *space.high_mm[:2])
    turned = shapely.affinity.rotate(plan, -open_deg, origin=(REAR_MM, -780.0))
    found = swung(solid("a", (space,)), VEHICLE, LEFT, open_deg).bounds
    assert (*found.low_mm[:2], *found.high_mm[:2]) == pytest.approx(turned.bounds, abs=1e-6)


def test_a_door_lets_pass_what_is_within_its_clear_rectangle() -> None:
    sliding, rear = (hole_of(each) for each in VEHICLE.apertures)
    assert (sliding.wall, sliding.from_mm, sliding.to_mm) == ("right", 1300, 2500)
    assert (rear.bottom_mm, rear.top_mm) == (10, 1760)
    assert sliding.holds(1300, 20)
    assert not sliding.holds(1299, 20)
    assert not sliding.holds(1300, 19)
    people = hole_of(VEHICLE.apertures[0], any_height=True)
    assert people.holds(1300, 0)
    assert (people.bottom_mm, people.top_mm) == (-math.inf, math.inf)
