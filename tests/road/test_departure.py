import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.road.departure import (
    breakover_angle,
    departure_angle,
    inside_wheel,
    static_loaded_radius_mm,
)

behind = st.floats(min_value=400, max_value=2500)
heights = st.floats(min_value=10, max_value=900)
radii = st.floats(min_value=250, max_value=399)


def test_the_loaded_radius_is_a_share_of_half_the_diameter() -> None:
    assert static_loaded_radius_mm(diameter_mm=743.9, radius_factor=0.96) == pytest.approx(357.072)


@pytest.mark.parametrize(("diameter", "factor"), [(0.0, 0.96), (700.0, 0.0), (700.0, 1.01)])
def test_an_impossible_radius_is_refused(diameter: float, factor: float) -> None:
    with pytest.raises(OutOfRange):
        static_loaded_radius_mm(diameter_mm=diameter, radius_factor=factor)


def test_a_point_on_the_ground_leaves_no_angle() -> None:
    angle = departure_angle(behind_axle_mm=1000, height_mm=0, wheel_radius_mm=360)
    assert angle.exact_deg == pytest.approx(0, abs=1e-9)
    assert angle.simple_deg == 0


def test_a_point_below_the_ground_gives_a_negative_angle() -> None:
    assert departure_angle(behind_axle_mm=1000, height_mm=-30, wheel_radius_mm=360).exact_deg < 0


def test_a_point_in_the_tyre_or_ahead_of_the_axle_is_refused() -> None:
    with pytest.raises(OutOfRange, match="a point behind the tyre"):
        departure_angle(behind_axle_mm=200, height_mm=350, wheel_radius_mm=360)
    with pytest.raises(OutOfRange, match="a point behind the tyre"):
        departure_angle(behind_axle_mm=-10, height_mm=350, wheel_radius_mm=360)
    with pytest.raises(OutOfRange, match="wheel_radius_mm"):
        departure_angle(behind_axle_mm=1000, height_mm=350, wheel_radius_mm=0)


def test_inside_wheel_is_the_tyres_circle() -> None:
    assert inside_wheel(beyond_axle_mm=0, height_mm=350, wheel_radius_mm=360)
    assert not inside_wheel(beyond_axle_mm=361, height_mm=360, wheel_radius_mm=360)
    assert not inside_wheel(beyond_axle_mm=200, height_mm=20, wheel_radius_mm=360)


@given(d=behind, p=heights, r=radii)
def test_the_line_touches_the_tyre_and_passes_the_point(d: float, p: float, r: float) -> None:
    a = math.radians(departure_angle(behind_axle_mm=d, height_mm=p, wheel_radius_mm=r).exact_deg)
    # distance of the axle's centre (0, r) from the line through (d, p) with slope tan(a)
    distance = abs(math.sin(a) * (0 - d) - math.cos(a) * (r - p))
    assert distance == pytest.approx(r, rel=1e-9)


@given(d=behind, p=heights, r=radii, further=st.floats(0, 800), lower=st.floats(0, 500))
def test_further_back_or_lower_never_gains_an_angle(
    d: float, p: float, r: float, further: float, lower: float
) -> None:
    here = departure_angle(behind_axle_mm=d, height_mm=p, wheel_radius_mm=r).exact_deg
    back = departure_angle(behind_axle_mm=d + further, height_mm=p, wheel_radius_mm=r).exact_deg
    low = departure_angle(behind_axle_mm=d, height_mm=p - lower, wheel_radius_mm=r).exact_deg
    assert back <= here + 1e-9
    assert low <= here + 1e-9


@given(d=behind, p=heights, r=radii)
def test_the_simple_form_is_never_the_larger(d: float, p: float, r: float) -> None:
    angle = departure_angle(behind_axle_mm=d, height_mm=p, wheel_radius_mm=r)
    assert angle.simple_deg <= angle.exact_deg + 1e-9


@given(x=st.floats(min_value=500, max_value=2500), p=heights, r=radii)
def test_a_ramp_angle_does_not_care_which_axle_leads(x: float, p: float, r: float) -> None:
    def ramp(behind_front_mm: float) -> float:
        return breakover_angle(
            behind_front_mm=behind_front_mm, wheelbase_mm=3000, height_mm=p, wheel_radius_mm=r
        ).exact_deg

    assert ramp(x) == pytest.approx(ramp(3000 - x))
