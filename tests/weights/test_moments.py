"""Axle loads and centres of gravity balance."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.weights.moments import (
    PointMass,
    axle_share,
    balance,
    height_by_lift,
    on_grade,
    side_split,
)

masses = st.floats(min_value=1.0, max_value=3000.0)
places = st.floats(min_value=-1500.0, max_value=7000.0)
sides = st.floats(min_value=-1000.0, max_value=1000.0)
heights = st.floats(min_value=100.0, max_value=3500.0)
points = st.builds(PointMass, mass_kg=masses, x_mm=places, y_mm=sides, height_mm=heights)
loads = st.lists(points, min_size=1, max_size=12)

WHEELBASE = 4000.0


@given(loads)
def test_the_axles_carry_the_total(items: list[PointMass]) -> None:
    found = balance(masses=items, wheelbase_mm=WHEELBASE)
    assert found.front_kg + found.rear_kg == pytest.approx(found.total_kg, abs=1e-6)


@given(loads)
def test_the_reactions_give_the_centre_of_gravity(items: list[PointMass]) -> None:
    found = balance(masses=items, wheelbase_mm=WHEELBASE)
    assert found.rear_kg * WHEELBASE / found.total_kg == pytest.approx(found.cg_x_mm, abs=1e-6)


@given(loads)
def test_the_centre_lies_among_the_masses(items: list[PointMass]) -> None:
    found = balance(masses=items, wheelbase_mm=WHEELBASE)
    for centre, along in (
        (found.cg_x_mm, [item.x_mm for item in items]),
        (found.cg_y_mm, [item.y_mm for item in items]),
        (found.cg_height_mm, [item.height_mm for item in items]),
    ):
        assert min(along) - 1e-6 <= centre <= max(along) + 1e-6


@given(loads, points, st.floats(min_value=1.0, max_value=1000.0))
def test_a_mass_moved_rearwards_loads_the_rear_axle(
    items: list[PointMass], moved: PointMass, by_mm: float
) -> None:
    behind = PointMass(
        mass_kg=moved.mass_kg,
        x_mm=moved.x_mm + by_mm,
        y_mm=moved.y_mm,
        height_mm=moved.height_mm,
    )
    before = balance(masses=[*items, moved], wheelbase_mm=WHEELBASE)
    after = balance(masses=[*items, behind], wheelbase_mm=WHEELBASE)
    assert after.rear_kg > before.rear_kg
    assert after.front_kg < before.front_kg
    assert after.total_kg == before.total_kg


@given(loads)
def test_a_mirrored_load_mirrors_the_sides(items: list[PointMass]) -> None:
    mirrored = [
        PointMass(mass_kg=i.mass_kg, x_mm=i.x_mm, y_mm=-i.y_mm, height_mm=i.height_mm)
        for i in items
    ]
    here = balance(masses=items, wheelbase_mm=WHEELBASE)
    there = balance(masses=mirrored, wheelbase_mm=WHEELBASE)
    assert there.cg_y_mm == pytest.approx(-here.cg_y_mm, abs=1e-9)
    one = side_split(axle_kg=1000, cg_y_mm=here.cg_y_mm, track_mm=1700)
    other = side_split(axle_kg=1000, cg_y_mm=there.cg_y_mm, track_mm=1700)
    assert one.left_kg == pytest.approx(other.right_kg, abs=1e-6)


@given(st.floats(min_value=-0.3, max_value=0.3))
def test_a_slope_up_loads_the_rear_and_keeps_the_normal_load(rise: float) -> None:
    level = on_grade(
        total_kg=2500, cg_x_mm=1900, cg_height_mm=900, wheelbase_mm=4000, rise_frac=0.0
    )
    found = on_grade(
        total_kg=2500, cg_x_mm=1900, cg_height_mm=900, wheelbase_mm=4000, rise_frac=rise
    )
    normal = 2500 / (1 + rise**2) ** 0.5
    assert found.front_kg + found.rear_kg == pytest.approx(normal)
    share = found.rear_kg / normal
    level_share = level.rear_kg / 2500
    assert share == pytest.approx(level_share) or (share > level_share) is (rise > 0)


def test_a_mass_on_an_axle_is_on_that_axle() -> None:
    assert axle_share(mass_kg=80, x_mm=0, wheelbase_mm=3000).front_kg == 80
    assert axle_share(mass_kg=80, x_mm=3000, wheelbase_mm=3000).rear_kg == 80


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("total_kg", {"total_kg": 0.0}),
        ("wheelbase_mm", {"wheelbase_mm": 0.0}),
        ("lift_mm", {"lift_mm": 0.0}),
        ("lift_mm", {"lift_mm": 3500.0}),
    ],
)
def test_an_axle_lift_that_cannot_be_is_refused(name: str, changes: dict[str, float]) -> None:
    given_values = {
        "total_kg": 2500.0,
        "front_level_kg": 1200.0,
        "front_lifted_kg": 1281.0,
        "wheelbase_mm": 3500.0,
        "wheel_radius_mm": 360.0,
        "lift_mm": 600.0,
    }
    with pytest.raises(OutOfRange, match=name):
        height_by_lift(**given_values | changes)


def test_nothing_has_no_centre() -> None:
    with pytest.raises(OutOfRange, match=r"total_kg is 0.0; allowed: more than 0 kg"):
        balance(masses=[], wheelbase_mm=4000)


def test_an_axle_without_a_track_is_refused() -> None:
    with pytest.raises(OutOfRange, match="track_mm"):
        side_split(axle_kg=1000, cg_y_mm=0, track_mm=0)
