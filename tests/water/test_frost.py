"""How long a tank stands in frost."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.water.frost import below_freezing_k, freezing_time


@given(st.floats(-40, -0.5), st.floats(0, 20), st.floats(1, 300), st.floats(0.2, 20))
def test_colder_never_gives_more_hours(
    around: float, colder: float, volume: float, loss: float
) -> None:
    mild = freezing_time(volume_l=volume, start_degc=5, around_degc=around, loss_w_per_k=loss)
    cold = freezing_time(
        volume_l=volume, start_degc=5, around_degc=around - colder, loss_w_per_k=loss
    )
    assert cold.to_zero_h <= mild.to_zero_h
    assert cold.to_solid_h <= mild.to_solid_h
    assert mild.to_solid_h > mild.to_zero_h


def test_the_cooling_is_newtons() -> None:
    # Integrating m c dT/dt = -UA (T - Ta) in small steps must meet the closed form
    made = freezing_time(volume_l=50, start_degc=8, around_degc=-12, loss_w_per_k=2.5)
    heat_j_per_k = 50 * 0.9982 * 4186
    water, hours, step_s = 8.0, 0.0, 5.0
    while water > 0:
        water -= 2.5 * (water + 12) * step_s / heat_j_per_k
        hours += step_s / 3600
    assert made.to_zero_h == pytest.approx(hours, rel=1e-3)
    assert made.to_zero_h == pytest.approx(heat_j_per_k / 2.5 / 3600 * math.log(20 / 12))
    assert made.working.result == made.to_zero_h


def test_only_unprotected_water_in_frost_counts() -> None:
    assert below_freezing_k(around_degc=-8, protected=False) == 8
    assert below_freezing_k(around_degc=-8, protected=True) == 0
    assert below_freezing_k(around_degc=3, protected=False) == 0


@pytest.mark.parametrize(
    ("name", "start", "around", "loss"),
    [("around_degc", 5, 0, 3), ("start_degc", 0, -5, 3), ("loss_w_per_k", 5, -5, 0)],
)
def test_what_cannot_be_is_refused_by_name(
    name: str, start: float, around: float, loss: float
) -> None:
    with pytest.raises(OutOfRange, match=f"^{name} is .*; allowed: "):
        freezing_time(volume_l=75, start_degc=start, around_degc=around, loss_w_per_k=loss)
