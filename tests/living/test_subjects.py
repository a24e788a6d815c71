"""People, heaters, coolers, cold boxes and the clock: what a wrong call says, and edges."""

import pytest

from coachwright.errors import OutOfRange, UnknownName
from coachwright.living.air_state import balanced_ratio, dew_degc, humidity_ratio, saturation_pa
from coachwright.living.clock import added_w, clock_h, first_free_h, laid_w, shape_frac
from coachwright.living.cooling import duty, dx_curve
from coachwright.living.fridge import duty_frac
from coachwright.living.heating import (
    fuel_heat,
    fuel_l_per_h,
    heat_up_h,
    high_loss_frac,
    outlet_m3_per_h,
)
from coachwright.living.people import asleep, awake, steam_kg


@pytest.mark.parametrize(
    "call",
    [
        lambda: saturation_pa(air_degc=300.0),
        lambda: humidity_ratio(vapour_pa=101_325.0),
        lambda: dew_degc(vapour_pa=0.0),
        lambda: balanced_ratio(outside_ratio=0.0, vapour_g_per_h=1.0, air_m3_per_h=0.0),
        lambda: asleep(room_degc=16.0, met_ratio=3.0),
        lambda: duty(load_w=1.0, capacity_w=0.0, cycling_frac=0.2),
        lambda: fuel_l_per_h(output_w=1.0, efficiency_frac=0.0, heat_mj_per_l=36.0),
        lambda: duty_frac(around_degc=20, inside_degc=5, stated_frac=0.4, stated_degc=5),
        lambda: shape_frac(from_h=0.0, lasts_h=25.0),
        lambda: outlet_m3_per_h(output_w=1.0, share_frac=0.1, rise_k=0.0),
    ],
)
def test_a_call_out_of_range_is_refused(call: object) -> None:
    assert callable(call)
    with pytest.raises(OutOfRange):
        call()


@pytest.mark.parametrize(
    "call",
    [
        lambda: awake(room_degc=20.0, activity="dancing"),
        lambda: dx_curve("swamp"),
        lambda: fuel_heat("coal"),
    ],
)
def test_an_unknown_name_is_refused(call: object) -> None:
    assert callable(call)
    with pytest.raises(UnknownName):
        call()


def test_the_split_holds_beyond_the_table() -> None:
    assert awake(room_degc=10.0) == awake(room_degc=20.0)
    assert awake(room_degc=35.0) == awake(room_degc=26.0)
    warm, cool = asleep(room_degc=26.0, met_ratio=1.0), asleep(room_degc=20.0, met_ratio=1.0)
    assert warm.latent_g_per_h > cool.latent_g_per_h
    assert warm.co2_l_per_h == cool.co2_l_per_h


def test_a_dinner_steams_as_the_list_of_sources_says() -> None:
    """US list of moisture sources of 1988: dinner for four 0.57 L; four at 560 Wh into pots."""
    assert steam_kg(pot_wh=4 * 560.0 * 0.6, steam_frac=0.25) == pytest.approx(0.57, rel=0.1)


def test_height_takes_output_only_above_what_the_heater_is_made_for() -> None:
    assert high_loss_frac(altitude_mm=1e6, full_to_mm=3e6, loss_frac_per_km=0.1) == 0.0
    assert high_loss_frac(altitude_mm=2e7, full_to_mm=0.0, loss_frac_per_km=0.1) == 0.9


def test_a_heater_that_is_too_small_never_gets_there() -> None:
    assert heat_up_h(power_w=1000.0, loss_w_per_k=60.0, held_wh_per_k=70.0, rise_k=35.0) is None


def test_a_cold_box_in_the_cold_rests_and_in_the_heat_never_stops() -> None:
    assert duty_frac(around_degc=0, inside_degc=5, stated_frac=0.4, stated_degc=32) == 0.0
    assert duty_frac(around_degc=90, inside_degc=5, stated_frac=0.5, stated_degc=32) == 1.0
    assert duty_frac(around_degc=32, inside_degc=5, stated_frac=0.4, stated_degc=32) == 0.4


def test_the_clock() -> None:
    assert clock_h("06:45") == 6.75
    night = shape_frac(from_h=22.25, lasts_h=2.0)
    assert night[133] == pytest.approx(0.5)
    assert (night[0], night[2], night[132]) == (1.0, 0.0, 0.0)
    assert night[1] == pytest.approx(0.5)
    assert sum(night) / 6.0 == pytest.approx(2.0)
    assert added_w() == [0.0] * 144
    assert sum(laid_w(energy_wh=240.0, shape_frac=[0.0] * 144)) == pytest.approx(1440.0)


def test_a_day_without_a_free_place_keeps_the_time_wanted() -> None:
    assert first_free_h(wanted_h=7.0, lasts_h=1.0, taken_frac=[1.0] * 144) == 7.0
