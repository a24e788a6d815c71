"""Months, stands, the cold night and the hot day of a plain box under a measured year."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from coachwright.actions.weather import site_year
from coachwright.catalogue.loading import Catalogue
from coachwright.climate.arrays import SiteArrays, site_arrays
from coachwright.climate.design_day import cold_night as coldest
from coachwright.climate.design_day import hot_day as hottest
from coachwright.living.changes import larger_bank, shaded, shaded_sun_w
from coachwright.living.cold_night import (
    AtNight,
    cold_night,
    heat_up_h,
    heating_grades,
    with_most_ribs,
)
from coachwright.living.given import Given
from coachwright.living.hot_day import AtDay, cooler_supply, hot_day
from coachwright.living.repeated import shifted, steady
from coachwright.living.simulate import prepare
from coachwright.living.site_year import Walked, walked
from coachwright.living.steps import SiteSteps, site_steps
from tests.support.living import envelope
from tests.support.living_given import bank, cooler, given

FULL_SUN_M2 = 0.4


@cache
def sky() -> SiteArrays:
    return site_arrays(weather=site_year(Catalogue(), "greensboro-nc"))


@cache
def box() -> Given:
    return given(sky().weather.ghi_w_per_m2 * FULL_SUN_M2, cooler=cooler())


@cache
def site() -> SiteSteps:
    return site_steps(body=box().body, sky=sky(), heading_deg=None)


@cache
def one_year() -> Walked:
    return walked(box(), sky(), site(), 7.0)


def at_night(design: Given, outside_degc: float = -12.0) -> AtNight:
    return AtNight(
        given=design,
        sky=sky(),
        site=site(),
        ready=prepare(design, sky(), site=site()),
        envelope=envelope(),
        design=coldest(weather=sky().weather),
        outside_degc=outside_degc,
    )


def at_day(design: Given, outside_degc: float = 35.0) -> AtDay:
    return AtDay(
        given=design,
        sky=sky(),
        site=site(),
        ready=prepare(design, sky(), site=site()),
        design=hottest(weather=sky().weather),
        outside_degc=outside_degc,
    )


def test_the_months_hold_the_whole_year_and_its_energy_closes() -> None:
    months = one_year().months
    assert sum(each.occupied_h for each in months) == pytest.approx(8760.0)
    assert one_year().balance_error_ratio < 1e-9
    for month in months:
        assert 0.0 <= month.comfort_frac <= 1.0
        assert month.air_low_degc <= month.air_mean_degc <= month.air_high_degc
        assert 0.0 <= month.emptiest_frac <= month.fullest_frac <= 1.0
        assert 400.0 < month.co2_night_ppm <= month.co2_most_ppm
    assert months[0].fuel_l > months[6].fuel_l
    assert months[6].out_wh["cooler"] > months[0].out_wh["cooler"]


def test_the_stands_of_a_larger_bank_last_no_shorter() -> None:
    larger = replace(box(), bank=larger_bank(bank(), 2.0))
    more = walked(larger, sky(), site(), None).distribution
    was = one_year().distribution
    for before, after in zip(was.months, more.months, strict=True):
        assert after.p10_d >= before.p10_d
        assert after.p50_d >= before.p50_d
    assert was.whole_year.water_limited_frac > more.whole_year.water_limited_frac == 0.0


def test_without_a_bank_no_stand_lasts() -> None:
    nothing = walked(replace(box(), bank=None), sky(), site(), None)
    assert nothing.distribution.whole_year.p90_d == 0.0
    assert nothing.months[0].bank_low_degc is None


def test_a_strong_heater_holds_the_cold_night_and_a_weak_one_does_not() -> None:
    design = box()
    assert design.heater is not None
    strong = replace(design, heater=replace(design.heater, most_w=6000.0, second_frac=0.0))
    weak = replace(design, heater=replace(design.heater, most_w=700.0))
    held, missed = (cold_night(at_night(each)) for each in (strong, weak))
    assert held.reached_degc == pytest.approx(16.0, abs=0.05)
    assert missed.reached_degc < 10.0
    assert missed.reached_low_degc <= missed.reached_degc
    assert missed.heat_up_h is None
    assert held.heat_up_h is not None
    assert held.picture.title
    assert min(held.picture.nodes_degc["outside"]) == pytest.approx(
        -12.0, abs=0.5
    )  # between the hours


def test_the_need_of_the_cold_night_is_worked_by_hand() -> None:
    made = cold_night(at_night(box()))
    put = {each.symbol: each.value for each in made.working.given}
    loss_w_per_k = put["UA"] + put["c"] * put["V"]
    assert made.need_w == pytest.approx(loss_w_per_k * (put["T_i"] - put["T_e"]))
    assert made.need_high_w > made.need_w


def test_without_a_heater_nothing_is_reached() -> None:
    made = cold_night(at_night(replace(box(), heater=None)))
    assert made.heater_w == 0.0
    assert made.fuel_l == 0.0
    assert made.heat_up_h is None


def test_heat_up_of_a_light_box_is_near_its_first_order_answer() -> None:
    """With one capacity C and loss H: t = (C / H) ln(P / (P - H dT)), an upper bound of a body
    whose air warms before its walls do."""
    design = replace(box(), air=replace(box().air, least_m3_per_h=0.0))
    ready = prepare(design, sky(), site=site())
    took = heat_up_h(design, sky(), ready, outside_degc=-5.0, wanted_degc=15.0)
    assert took is not None
    assert 0.1 < took < 6.0
    longer = heat_up_h(design, sky(), ready, outside_degc=-5.0, wanted_degc=20.0)
    assert longer is None or longer > took


def test_the_grades_follow_heat_over_loss() -> None:
    two, three = heating_grades(box(), sky(), prepare(box(), sky(), site=site()), envelope(), 2)
    # 2000 W over 50 W/K and 0.335 x 15 W/K of fresh air: 36.35 K
    assert two.reached_degc == pytest.approx(36.35, abs=0.01)
    assert three.reached_degc == pytest.approx(36.35 - 15.0, abs=0.01)
    assert (two.wanted, three.wanted) == (True, False)
    assert two.heat_up_h is None


def test_ribs_at_their_worst_lose_more() -> None:
    worse = with_most_ribs(box())
    for was, now in zip(box().body.surfaces, worse.body.surfaces, strict=True):
        assert now.bridge_w_per_k >= was.bridge_w_per_k


def test_a_larger_bank_carries_the_air_conditioner_longer() -> None:
    small, large = (
        hot_day(at_day(replace(box(), bank=bank(capacity_ah=capacity))))
        for capacity in (100.0, 200.0)
    )
    assert small is not None
    assert large is not None
    assert small.hours_without_sun_h is not None
    assert large.hours_without_sun_h is not None
    assert small.hours_without_sun_h < large.hours_without_sun_h
    assert small.hours_h is None or small.hours_h >= small.hours_without_sun_h
    assert small.reached_degc < small.without_degc
    assert small.mild_duty_frac is not None
    assert 0.0 < small.mild_duty_frac <= 1.0


def test_without_an_air_conditioner_there_is_no_hot_day() -> None:
    without = at_day(replace(box(), cooler=None))
    assert hot_day(without) is None


def test_the_supply_of_an_air_conditioner_is_its_own_kind() -> None:
    through = at_day(box())
    direct = at_day(replace(box(), cooler=cooler(ac=False)))
    made = hot_day(through)
    assert made is not None
    one, other = cooler_supply(made, through), cooler_supply(made, direct)
    assert one is not None
    assert other is not None
    assert (one.input_w, one.can_give_w) == (700.0, 2000.0)  # flat curves: as rated
    assert other.can_give_w == pytest.approx(200.0 * 12.0)  # limit times empty voltage
    assert cooler_supply(made, at_day(replace(box(), cooler=None))) is None


def hours() -> Iterator[tuple[SiteSteps, float]]:
    yield shifted(site=site(), day=200, air_degc=40.0, warmest=True), 40.0
    yield shifted(site=site(), day=20, air_degc=-15.0, warmest=False, sunless=True), -15.0


def test_a_design_day_is_the_same_every_day() -> None:
    for made, extreme_degc in hours():
        days = made.driving.reshape(365, 24, -1)
        assert np.array_equal(days[0], days[364])
        air = days[0][:, 0]
        assert extreme_degc == pytest.approx(air.max() if extreme_degc > 0.0 else air.min())
    hall = steady(site=site(), air_degc=26.7, humidity_frac=0.5)
    assert set(hall.driving[:, 0].tolist()) == {26.7}
    assert not hall.driving[:, 3:].any()


def test_shade_takes_the_straight_light_alone() -> None:
    dark = shaded(sky())
    assert not dark.weather.dni_w_per_m2.any()
    assert np.array_equal(dark.weather.dhi_w_per_m2, sky().weather.dhi_w_per_m2)
    sun = shaded_sun_w(sky(), box().supply.sun_w)
    assert 0.1 < sun.sum() / box().supply.sun_w.sum() < 0.9
