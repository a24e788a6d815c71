import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.road.tyre_geometry import tyre_change, tyre_dimensions

diameters = st.floats(min_value=500, max_value=1100)


def test_a_low_profile_makes_a_smaller_wheel() -> None:
    # by hand: 16 in x 25.4 = 406.4; 406.4 + 2 x 225 x 0.75 = 743.9; with 0.65: 698.9
    tall = tyre_dimensions(width_mm=225, aspect_frac=0.75, rim_mm=406.4, rolling_factor=3.05)
    low = tyre_dimensions(width_mm=225, aspect_frac=0.65, rim_mm=406.4, rolling_factor=3.05)
    assert tall.diameter_mm == pytest.approx(743.9)
    assert low.diameter_mm == pytest.approx(698.9)
    assert tall.section_height_mm == 168.75
    assert tall.working.result == tall.diameter_mm


@pytest.mark.parametrize("name", ["width_mm", "aspect_frac", "rim_mm"])
def test_a_size_without_extent_is_refused(name: str) -> None:
    size = {"width_mm": 225.0, "aspect_frac": 0.75, "rim_mm": 406.4, "rolling_factor": 3.05}
    with pytest.raises(OutOfRange, match=f"{name} is 0"):
        tyre_dimensions(**(size | {name: 0.0}))


def test_a_change_of_diameter_lifts_by_half_of_it() -> None:
    # by hand: (773.9 - 743.9) / 2 = 15; 743.9 / 773.9 = 0.961235
    change = tyre_change(old_diameter_mm=743.9, new_diameter_mm=773.9)
    assert change.diameter_change_mm == pytest.approx(30)
    assert change.ride_change_mm == pytest.approx(15)
    assert change.gearing_ratio == pytest.approx(0.961235, rel=1e-6)


@pytest.mark.parametrize("name", ["old_diameter_mm", "new_diameter_mm"])
def test_a_change_needs_two_diameters(name: str) -> None:
    with pytest.raises(OutOfRange, match=name):
        tyre_change(**({"old_diameter_mm": 700.0, "new_diameter_mm": 700.0} | {name: 0.0}))


@given(old=diameters, new=diameters)
def test_changing_back_undoes_a_change(old: float, new: float) -> None:
    there = tyre_change(old_diameter_mm=old, new_diameter_mm=new)
    back = tyre_change(old_diameter_mm=new, new_diameter_mm=old)
    assert there.ratio * back.ratio == pytest.approx(1)
    assert there.ride_change_mm == pytest.approx(-back.ride_change_mm)
    assert there.gearing_ratio == pytest.approx(back.ratio)
