"""Heat for warm water and what it takes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.water.fuel import drawn_wh_per_day, fuel_l_per_day, gas_kg_per_day
from coachwright.water.hot_water import day_heat, heat_wh, mixed_l, warm_up


def test_a_kilogram_and_a_kelvin() -> None:
    # 4186 J / 3600
    assert heat_wh(mass_kg=1, from_degc=10, to_degc=11) == pytest.approx(1.16278, rel=1e-5)


def test_warm_water_takes_no_heat() -> None:
    assert heat_wh(mass_kg=10, from_degc=30, to_degc=20) == 0


@given(st.floats(20, 2000), st.floats(0, 15))
def test_a_loss_never_shortens_the_warm_up(power: float, loss: float) -> None:
    without = warm_up(mass_kg=6, from_degc=10, to_degc=60, into_water_w=power)
    with_loss = warm_up(mass_kg=6, from_degc=10, to_degc=60, into_water_w=power, loss_w=loss)
    assert without.warm_up_min is not None
    assert with_loss.warm_up_min is not None
    assert with_loss.warm_up_min >= without.warm_up_min


def test_a_source_that_only_feeds_the_loss_never_gets_there() -> None:
    made = warm_up(mass_kg=6, from_degc=10, to_degc=60, into_water_w=15, loss_w=15)
    assert made.warm_up_min is None
    assert made.working is None


@given(st.floats(38, 90))
def test_mixing_keeps_the_heat(hot: float) -> None:
    volume = mixed_l(volume_l=10, hot_degc=hot, cold_degc=10, tap_degc=38)
    assert volume * (38 - 10) == pytest.approx(10 * (hot - 10))


def test_water_that_is_cooler_than_the_tap_is_not_mixed() -> None:
    assert mixed_l(volume_l=10, hot_degc=30, cold_degc=10, tap_degc=38) == 10


def test_a_day_is_tap_water_and_loss() -> None:
    # By hand: 2 x 4 L x 0.9982 x 4186 x 28 K / 3600 = 260.0 Wh; 24 h x 10 W = 240 Wh
    made = day_heat(travellers=2, tap_l_per_day=4, tap_degc=38, cold_degc=10, loss_w=10)
    assert made.tap_wh_per_day == pytest.approx(260.0, abs=0.1)
    assert made.heat_wh_per_day == pytest.approx(500.0, abs=0.1)
    assert made.working.result == made.heat_wh_per_day


@given(st.floats(1, 20_000), st.floats(0.1, 1))
def test_what_is_drawn_is_never_less_than_the_heat(heat: float, share: float) -> None:
    assert drawn_wh_per_day(heat_wh_per_day=heat, efficiency_frac=share) >= heat


def test_a_kilowatt_hour_of_fuel_heat() -> None:
    # By hand from 46.35 MJ/kg, 35.8 MJ/L and 32.356 MJ/L
    assert gas_kg_per_day(burned_wh_per_day=1000) == pytest.approx(0.07767, rel=1e-3)
    assert fuel_l_per_day(burned_wh_per_day=1000, fuel="diesel") == pytest.approx(
        0.10056, rel=1e-3
    )
    assert fuel_l_per_day(burned_wh_per_day=1000, fuel="petrol") == pytest.approx(
        0.11126, rel=1e-3
    )


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(OutOfRange, match=r"^into_water_w is 0"):
        warm_up(mass_kg=6, from_degc=10, to_degc=60, into_water_w=0)
    with pytest.raises(OutOfRange, match=r"^tap_degc is 10"):
        mixed_l(volume_l=6, hot_degc=60, cold_degc=10, tap_degc=10)
    with pytest.raises(OutOfRange, match=r"^efficiency_frac is 1.2"):
        drawn_wh_per_day(heat_wh_per_day=1, efficiency_frac=1.2)
