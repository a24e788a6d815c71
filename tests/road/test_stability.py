import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.road.stability import static_stability_factor


def test_the_mean_of_both_tracks_counts() -> None:
    # by hand: (1800 + 1780) / 2 / (2 x 800) = 1.11875
    found = static_stability_factor(track_front_mm=1800, track_rear_mm=1780, cg_height_mm=800)
    assert found.stability_ratio == pytest.approx(1.11875)
    assert found.tip_angle_deg == pytest.approx(48.208, abs=0.001)  # atan(1.11875)


@pytest.mark.parametrize("name", ["track_front_mm", "track_rear_mm", "cg_height_mm"])
def test_lengths_must_be_positive(name: str) -> None:
    given = {"track_front_mm": 1800.0, "track_rear_mm": 1780.0, "cg_height_mm": 800.0}
    with pytest.raises(OutOfRange, match=name):
        static_stability_factor(**(given | {name: 0.0}))


@given(low=st.floats(400, 1200), higher=st.floats(1, 500))
def test_a_higher_centre_of_gravity_is_less_stable(low: float, higher: float) -> None:
    def factor(height: float) -> float:
        return static_stability_factor(
            track_front_mm=1800, track_rear_mm=1780, cg_height_mm=height
        ).stability_ratio

    assert factor(low + higher) < factor(low)
