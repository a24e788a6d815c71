"""Steady heat, by hand."""

import pytest

from coachwright.errors import OutOfRange
from coachwright.living.bay import bay_vents
from coachwright.living.fresh_air import fresh_air
from coachwright.living.steady import heat_need, reached


def test_the_need_of_the_published_box_is_what_its_hand_calculation_says() -> None:
    # UA 42.54 W/K and 13 m3 changed once an hour at a difference of 35 K: 1643.5 W with the
    # air's share told as 0.34 Wh/(m3 K); 0.335 makes it 1641.3 W.
    made = heat_need(
        ua_w_per_k=42.54,
        ua_high_w_per_k=50.0,
        fresh_m3_per_h=13.0,
        inside_degc=20.0,
        outside_degc=-15.0,
    )
    assert made.need_w == pytest.approx(1643.5, rel=2e-3)
    assert made.need_high_w > made.need_w


def test_nothing_is_needed_where_it_is_warmer_outside() -> None:
    made = heat_need(
        ua_w_per_k=50.0,
        ua_high_w_per_k=60.0,
        fresh_m3_per_h=0.0,
        inside_degc=18.0,
        outside_degc=25.0,
    )
    assert made.need_w == 0.0


def test_the_heater_reaches_what_takes_its_whole_heat() -> None:
    made = reached(
        ua_w_per_k=50.0,
        ua_high_w_per_k=80.0,
        fresh_m3_per_h=30.0,
        heater_w=2000.0,
        outside_degc=-15.0,
    )
    again = heat_need(
        ua_w_per_k=50.0,
        ua_high_w_per_k=80.0,
        fresh_m3_per_h=30.0,
        inside_degc=made.inside_degc,
        outside_degc=-15.0,
    )
    assert again.need_w == pytest.approx(2000.0)
    assert made.inside_low_degc < made.inside_degc


def test_a_body_that_loses_nothing_never_stops_getting_warmer() -> None:
    with pytest.raises(OutOfRange, match="ua_w_per_k"):
        reached(
            ua_w_per_k=0.0,
            ua_high_w_per_k=0.0,
            fresh_m3_per_h=0.0,
            heater_w=1.0,
            outside_degc=0.0,
        )


def test_fresh_air_follows_the_standard_for_dwellings() -> None:
    made = fresh_air(floor_m2=8.0, people_count=2, open_m3_per_h=20.0)
    assert made.needed_m3_per_h == pytest.approx(29.52)  # 8.2 L/s [ashrae-62-2]
    with pytest.raises(OutOfRange, match="floor_m2"):
        fresh_air(floor_m2=0.0, people_count=2, open_m3_per_h=20.0)


def test_a_bay_with_twice_the_loss_takes_twice_the_vents() -> None:
    one, two = (
        bay_vents(continuous_w=power_w, efficiency_frac=0.9, rise_mm=400.0)
        for power_w in (1000.0, 2000.0)
    )
    assert two.vent_m2 == pytest.approx(2.0 * one.vent_m2)
    higher = bay_vents(continuous_w=1000.0, efficiency_frac=0.9, rise_mm=1600.0)
    assert higher.vent_m2 == pytest.approx(one.vent_m2 / 2.0)
    # 1000 W at 90 %: 111.1 W lost; 111.1 / (0.335 x 10) = 33.2 m3/h
    assert one.flow_m3_per_h == pytest.approx(33.17, rel=1e-3)


@pytest.mark.parametrize(("efficiency_frac", "rise_mm"), [(0.0, 400.0), (0.9, 0.0)])
def test_a_bay_needs_an_efficiency_and_a_height(efficiency_frac: float, rise_mm: float) -> None:
    with pytest.raises(OutOfRange):
        bay_vents(continuous_w=1000.0, efficiency_frac=efficiency_frac, rise_mm=rise_mm)
