from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.electrics.budget import (
    balance,
    driving_days_frac,
    event_energy_wh_per_day,
    independence,
    stretch,
)
from coachwright.electrics.model import Independence

ENERGY = st.floats(0, 1e5)
SHARE = st.floats(0.5, 1)


def _independence(**numbers: Any) -> Independence:
    return independence(
        **(
            {
                "usable_wh": 2000.0,
                "use_wh_per_day": 1000.0,
                "sun_wh_per_day": 500.0,
                "round_trip_frac": 1.0,
                "sun_tolerance_frac": 0.25,
                "load_tolerance_frac": 0.15,
                "season_d": 182.0,
            }
            | numbers
        )
    )


@given(sun=ENERGY, driving=ENERGY, hookup=ENERGY, use=ENERGY, share=SHARE)
def test_the_balance_closes(
    sun: float, driving: float, hookup: float, use: float, share: float
) -> None:
    found = balance(
        sun_wh_per_day=sun,
        driving_wh_per_day=driving,
        hookup_wh_per_day=hookup,
        round_trip_frac=share,
        use_wh_per_day=use,
    )
    charged = sun + driving + hookup
    assert charged - found.storage_loss_wh_per_day - use == pytest.approx(
        found.balance_wh_per_day, abs=1e-6
    )


@given(use=ENERGY, more=ENERGY, sun=ENERGY, usable=ENERGY, share=SHARE)
def test_more_load_never_adds_days(
    use: float, more: float, sun: float, usable: float, share: float
) -> None:
    said = {"usable_wh": usable, "sun_wh_per_day": sun, "round_trip_frac": share}
    before = _independence(**said, use_wh_per_day=use)
    after = _independence(**said, use_wh_per_day=use + more)
    for name in ("days_d", "low_d", "high_d", "without_sun_d"):
        assert getattr(after, name) <= getattr(before, name) * (1 + 1e-12)


@given(use=ENERGY, sun=ENERGY, more=ENERGY, usable=ENERGY)
def test_more_sun_never_takes_days(use: float, sun: float, more: float, usable: float) -> None:
    before = _independence(usable_wh=usable, use_wh_per_day=use, sun_wh_per_day=sun)
    after = _independence(usable_wh=usable, use_wh_per_day=use, sun_wh_per_day=sun + more)
    assert before.days_d is not None
    assert after.days_d is not None
    assert after.days_d >= before.days_d * (1 - 1e-12)


@given(use=ENERGY, sun=ENERGY, usable=ENERGY)
def test_the_bounds_hold_the_answer(use: float, sun: float, usable: float) -> None:
    found = _independence(usable_wh=usable, use_wh_per_day=use, sun_wh_per_day=sun)
    assert found.low_d is not None
    assert found.days_d is not None
    assert found.high_d is not None
    assert found.low_d <= found.days_d * (1 + 1e-12)
    assert found.days_d <= found.high_d * (1 + 1e-12)


def test_without_sun_hours_only_the_dark_answer_is_known() -> None:
    found = _independence(sun_wh_per_day=None)
    assert (found.days_d, found.low_d, found.high_d, found.working) == (None, None, None, None)
    assert found.without_sun_d == 2.0
    assert found.without_sun_working is not None


def test_an_answer_ends_with_the_season() -> None:
    found = _independence(sun_wh_per_day=1000.0)
    assert (found.days_d, found.ends_at_season) == (182.0, True)
    assert not _independence().ends_at_season


def test_nothing_used_lasts_the_season() -> None:
    assert stretch(usable_wh=0, drain_wh_per_day=0, season_d=182).days_d == 182
    assert stretch(usable_wh=0, drain_wh_per_day=1, season_d=182).days_d == 0


def test_the_room_in_the_bank_bounds_a_charge() -> None:
    # 1000 W for 5 h does not fit into 2000 Wh
    assert event_energy_wh_per_day(power_w=1000, hours_h=5, room_wh=2000, share_frac=0.5) == 1000
    assert driving_days_frac(parked_d=0) == 1.0
