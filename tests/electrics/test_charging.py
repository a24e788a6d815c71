import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.electrics.charging import (
    alternator_share_a,
    charge_time,
    converter_input_a,
    converter_output_a,
    limited,
)
from coachwright.electrics.inverter import bank_draw_a, demand, inverter_current_a
from coachwright.electrics.inverter_curve import SandiaCurve, pvwatts_output_w, sandia_input_w
from coachwright.electrics.protection import next_rating_a
from coachwright.electrics.sizing import clipping
from coachwright.errors import OutOfRange


def test_an_alternator_with_nothing_to_spare_spares_nothing() -> None:
    assert alternator_share_a(rated_a=90, share_frac=0.5, cruise_frac=0.9, vehicle_load_a=60) == 0


def test_a_weak_alternator_gives_what_it_has() -> None:
    share = alternator_share_a(rated_a=100, share_frac=0.5, cruise_frac=0.4, vehicle_load_a=10)
    assert share == pytest.approx(30)


@given(current=st.floats(1, 200), efficiency=st.floats(0.5, 1))
def test_a_converter_there_and_back(current: float, efficiency: float) -> None:
    drawn = converter_input_a(
        output_a=current, output_v=25.6, input_v=12, efficiency_frac=efficiency
    )
    back = converter_output_a(input_a=drawn, output_v=25.6, input_v=12, efficiency_frac=efficiency)
    assert back == pytest.approx(current)


def test_the_smallest_limit_is_named() -> None:
    assert limited(offers_a={"panels": 20.0, "battery": 20.0}).limited_by == "panels"
    with pytest.raises(OutOfRange, match="offers_a is empty"):
        limited(offers_a={})


def test_no_current_no_charge_time() -> None:
    with pytest.raises(OutOfRange, match="charge_a is 0"):
        charge_time(capacity_ah=100, from_frac=0.2, to_frac=1, charge_a=0, efficiency_frac=1)


def test_an_impossible_efficiency_is_refused() -> None:
    with pytest.raises(OutOfRange, match="efficiency_frac"):
        converter_input_a(output_a=1, output_v=12, input_v=12, efficiency_frac=0)
    with pytest.raises(OutOfRange, match="efficiency_frac"):
        inverter_current_a(load_w=1, efficiency_frac=1.2, battery_v=12)


def test_no_load_asks_nothing() -> None:
    found = demand(draws_w=(), surges_w=())
    assert (found.load_w, found.surge_w, found.worst) == (0, 0, -1)


def test_the_inverter_gives_no_more_than_it_can() -> None:
    found = bank_draw_a(dc_w=0, ac_w=5000, inverter_w=900, efficiency_frac=0.9, battery_v=10)
    assert found == pytest.approx(100)


def test_beyond_its_rating_an_inverter_has_no_input() -> None:
    curve = SandiaCurve(
        output_w=100,
        input_w=110,
        input_v=48,
        start_w=2,
        c0_per_w=0,
        c1_per_v=0,
        c2_per_v=0,
        c3_per_v=0,
        night_w=0.1,
    )
    with pytest.raises(OutOfRange, match="output_w is 101"):
        sandia_input_w(curve=curve, battery_v=48, output_w=101)
    # a straight line: half the output takes half of what is above the start
    assert sandia_input_w(curve=curve, battery_v=48, output_w=50) == pytest.approx(56)


def test_nothing_in_nothing_out() -> None:
    assert pvwatts_output_w(input_w=0, rated_input_w=100) == 0
    assert clipping(array_w=0, system_v=12, limit_a=10).lost_frac == 0


def test_above_the_largest_rating_there_is_none() -> None:
    assert next_rating_a(wanted_a=264.6) == 300
    with pytest.raises(OutOfRange, match="at most 600"):
        next_rating_a(wanted_a=601)
