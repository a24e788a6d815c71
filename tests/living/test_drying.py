"""Wet kit: evaporation against the handbook's equation, and what must hold of any stall."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as some

from coachwright.errors import OutOfRange
from coachwright.living.drying import Around, Kit, Stall, drying, evaporation_g_per_h

STALL = Stall(name="stall", ua_w_per_k=6.0, exchange_m3_per_h=40.0, share_frac=0.4)
AROUND = Around(
    cabin_degc=19.0,
    warm_degc=26.0,
    outside_degc=2.0,
    dew_degc=0.0,
    loss_w_per_k=45.0,
    open_m3_per_h=25.0,
    fan_m3_per_h=200.0,
    humid_frac=0.65,
    vapour_g_per_h=50.0,
    heater_w=4000.0,
)
KIT = Kit(water_kg=2.0, area_m2=1.5, speed_m_per_s=0.2)


def test_evaporation_from_wet_cloth_is_what_the_equation_gives_by_hand() -> None:
    # 1.5 m2 at 16 degC in air of 20 degC and 60 %: 95.2 g/h, ASHRAE's equation for pools.
    made = evaporation_g_per_h(
        area_m2=1.5, surface_degc=16.0, vapour_kpa=0.6 * 2.339, speed_m_per_s=0.2
    )
    assert made == pytest.approx(95.2, rel=0.01)


def test_nothing_evaporates_into_air_that_is_full() -> None:
    made = evaporation_g_per_h(area_m2=1.5, surface_degc=16.0, vapour_kpa=3.0, speed_m_per_s=0.2)
    assert made == 0.0


def test_a_stall_gets_warm_and_the_kit_dry() -> None:
    made = drying(stall=STALL, around=AROUND, kit=KIT)
    assert made.hours_h is not None
    assert 2.0 < made.hours_h < 24.0
    assert AROUND.cabin_degc < made.room_degc < made.reachable_degc
    # 26 degC + 0.4 x 4000 W / (6 + 0.335 x 40 W/K) = 108.5 degC
    assert made.reachable_degc == pytest.approx(26.0 + 1600.0 / (6.0 + 13.4))
    assert made.hot


def test_without_heat_to_spare_it_never_gets_dry() -> None:
    cold = replace(AROUND, heater_w=5.0)
    made = drying(stall=STALL, around=cold, kit=KIT)
    assert made.hours_h is None
    assert made.working.result == 72.0


def test_heat_into_the_stall_bounds_what_dries() -> None:
    made = drying(stall=STALL, around=AROUND, kit=replace(KIT, area_m2=50.0))
    assert made.hours_h is not None
    # With any surface 2 kg take at least 2 x 682 Wh of at most 0.4 x 4000 W.
    assert made.hours_h > 2.0 * 681.7 / 1600.0


@given(more=some.floats(1.05, 3.0))
def test_more_water_takes_longer_and_a_larger_surface_dries_sooner(more: float) -> None:
    made = drying(stall=STALL, around=AROUND, kit=KIT)
    wetter = drying(stall=STALL, around=AROUND, kit=replace(KIT, water_kg=2.0 * more))
    wider = drying(stall=STALL, around=AROUND, kit=replace(KIT, area_m2=1.5 * more))
    assert made.hours_h is not None
    assert wetter.hours_h is None or wetter.hours_h > made.hours_h
    assert wider.hours_h is not None
    assert wider.hours_h < made.hours_h


@pytest.mark.parametrize("kit", [replace(KIT, water_kg=0.0), replace(KIT, area_m2=0.0)])
def test_kit_has_water_and_a_surface(kit: Kit) -> None:
    with pytest.raises(OutOfRange, match="water and a surface"):
        drying(stall=STALL, around=AROUND, kit=kit)


def test_a_stall_without_a_register_is_none() -> None:
    with pytest.raises(OutOfRange, match="a share of the heat"):
        drying(stall=replace(STALL, share_frac=0.0), around=AROUND, kit=KIT)
