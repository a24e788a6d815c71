"""A day step by step: sums, and what lies when."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as some

from coachwright.living.day_profiles import NEVER_DEGC, Use, Wanted, placed_w, profile, times

WANTED = Wanted(
    adults_factor=2.0,
    met_ratio=0.95,
    day_degc=20.0,
    night_degc=16.0,
    most_degc=26.0,
    noon_shut=False,
    gain_wh=500.0,
    vapour_kg=0.4,
    shower_kg=0.24,
    burner_wh=800.0,
    light_w=24.0,
)
USUAL = times(asleep_from_h=22.5, asleep_h=8.0, away_from_h=10.0, away_h=4.0)


def _sum_wh(row_w: tuple[float, ...]) -> float:
    return sum(row_w) / 6.0


@given(
    energy=some.floats(0.0, 5000.0),
    use=some.floats(0.0, 24.0),
    draw=some.floats(1.0, 2000.0),
    sleep=some.floats(0.0, 24.0),
    away=some.floats(0.0, 24.0),
)
def test_a_load_takes_its_energy_whatever_the_day(
    energy: float, use: float, draw: float, sleep: float, away: float
) -> None:
    when = times(asleep_from_h=9.0, asleep_h=sleep, away_from_h=20.0, away_h=away)
    found = placed_w(Use(energy_wh=energy, use_h=use, draw_w=draw, inside_frac=1.0), when)
    assert _sum_wh(found) == pytest.approx(energy, abs=1e-6)


def test_a_strong_short_load_runs_while_meals_are_made() -> None:
    hob = placed_w(Use(energy_wh=900.0, use_h=0.8, draw_w=1800.0, inside_frac=1.0), USUAL)
    assert all(
        (watt > 0.0) == (meal > 0.0) for watt, meal in zip(hob, USUAL.meals_frac, strict=True)
    )


def test_a_long_load_runs_all_day_and_a_short_one_while_somebody_is_up() -> None:
    long = placed_w(Use(energy_wh=240.0, use_h=24.0, draw_w=10.0, inside_frac=1.0), USUAL)
    short = placed_w(Use(energy_wh=55.0, use_h=1.0, draw_w=55.0, inside_frac=1.0), USUAL)
    assert set(long) == {10.0}
    assert short[0] == short[60] == 0.0
    assert short[48] > 0.0


def test_a_meal_in_an_absence_is_made_afterwards() -> None:
    """Back at six, in bed at nine: dinner was wanted at half past five."""
    when = times(asleep_from_h=9.0, asleep_h=6.0, away_from_h=20.5, away_h=9.5)
    assert when.meals_frac[33:36] == (0.0, 0.0, 0.0)
    assert all(each > 0.0 for each in when.meals_frac[36:42])


def test_two_fifths_of_the_cooking_is_breakfast() -> None:
    breakfast = sum(
        meal
        for meal, early in zip(USUAL.meals_frac, USUAL.after_waking_frac, strict=True)
        if early > 0.0
    )
    assert breakfast / sum(USUAL.meals_frac) == pytest.approx(0.4)


def test_a_day_has_its_sums() -> None:
    day = profile(when=USUAL, wanted=WANTED, dc=(), ac=())
    assert _sum_wh(day.gain_w) == pytest.approx(500.0)
    assert _sum_wh(day.vapour_g_per_h) == pytest.approx(640.0)
    assert _sum_wh(day.fuel_burner_w) == pytest.approx(800.0)
    assert _sum_wh(day.asleep_frac) == pytest.approx(8.0)
    assert _sum_wh(day.occupied_frac) == pytest.approx(20.0)
    assert set(day.inside_frac) == {1.0}


def test_set_points_follow_sleep_and_absence() -> None:
    day = profile(when=USUAL, wanted=WANTED, dc=(), ac=())
    assert (day.heat_degc[0], day.heat_degc[48], day.heat_degc[66]) == (16.0, 20.0, 16.0)
    assert (day.cool_degc[0], day.cool_degc[48], day.cool_degc[66]) == (26.0, 26.0, NEVER_DEGC)
    assert (day.blinds_frac[0], day.blinds_frac[48], day.blinds_frac[66]) == (1.0, 0.0, 1.0)
    assert (day.dark_w[0], day.dark_w[48]) == (0.0, 24.0)


def test_blinds_are_shut_at_noon_on_hot_days() -> None:
    hot = profile(when=USUAL, wanted=replace(WANTED, noon_shut=True), dc=(), ac=())
    assert hot.blinds_frac[96] == 1.0
    assert hot.blinds_frac[108] == 0.0


def test_heat_of_loads_counts_by_where_they_stand() -> None:
    half = (
        Use(energy_wh=240.0, use_h=24.0, draw_w=10.0, inside_frac=1.0),
        Use(energy_wh=240.0, use_h=24.0, draw_w=10.0, inside_frac=0.0),
    )
    day = profile(when=USUAL, wanted=WANTED, dc=half, ac=())
    assert set(day.inside_frac) == {0.5}
    assert set(day.dc_w) == {20.0}


def test_nobody_is_in_the_living_space_while_they_drive() -> None:
    moving = times(
        asleep_from_h=22.5,
        asleep_h=8.0,
        away_from_h=10.0,
        away_h=0.0,
        drive_from_h=10.0,
        drive_h=3.0,
    )
    assert _sum_wh(moving.away_frac) == pytest.approx(3.0)
    assert moving.awake_frac[66] == 0.0
