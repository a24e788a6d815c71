from hypothesis import given
from hypothesis import strategies as st

from coachwright.road.ground_angles import LowPoint, breakover_limit, departure_limit

VAN = LowPoint(of="vehicle", x_mm=5000, height_mm=420)


def limit_of(*points: LowPoint) -> str | None:
    found = departure_limit(points=points, wheelbase_mm=4000, wheel_radius_mm=360)
    return None if found is None else found.point.of


def test_the_lowest_angle_wins() -> None:
    box = LowPoint(of="box", x_mm=5400, height_mm=420)
    high = LowPoint(of="high", x_mm=5400, height_mm=1200)
    assert limit_of(VAN, box, high) == "box"
    assert limit_of(VAN, high) == "vehicle"


def test_points_ahead_of_the_rear_axle_or_in_the_tyre_do_not_count() -> None:
    tank = LowPoint(of="tank", x_mm=3000, height_mm=200)
    hub = LowPoint(of="hub", x_mm=4100, height_mm=360)
    assert limit_of(VAN, tank, hub) == "vehicle"
    assert limit_of(tank, hub) is None


def test_no_point_between_the_axles_gives_no_ramp_angle() -> None:
    assert breakover_limit(points=(), wheelbase_mm=4000, wheel_radius_mm=360) is None
    near_front = LowPoint(of="step", x_mm=100, height_mm=300)
    near_rear = LowPoint(of="flap", x_mm=3900, height_mm=300)
    assert (
        breakover_limit(points=(near_front, near_rear), wheelbase_mm=4000, wheel_radius_mm=360)
        is None
    )


def test_a_point_mid_way_limits_the_ramp_most() -> None:
    mid = LowPoint(of="mid", x_mm=2000, height_mm=250)
    aside = LowPoint(of="aside", x_mm=1000, height_mm=250)
    found = breakover_limit(points=(aside, mid), wheelbase_mm=4000, wheel_radius_mm=360)
    assert found is not None
    assert found.point.of == "mid"


@given(
    x=st.floats(min_value=4500, max_value=6500),
    height=st.floats(min_value=50, max_value=2500),
)
def test_equipment_never_adds_to_the_departure_angle(x: float, height: float) -> None:
    alone = departure_limit(points=(VAN,), wheelbase_mm=4000, wheel_radius_mm=360)
    both = departure_limit(
        points=(VAN, LowPoint(of="box", x_mm=x, height_mm=height)),
        wheelbase_mm=4000,
        wheel_radius_mm=360,
    )
    assert alone is not None
    assert both is not None
    assert both.angle.exact_deg <= alone.angle.exact_deg
