"""Design days are the percentiles they state, and near the handbook's where a year is at hand."""

import numpy as np
import pytest

from coachwright.climate.design_day import cold_night, hot_day
from coachwright.climate.months import months
from coachwright.errors import OutOfRange
from coachwright.model.site import MONTHS
from tests.climate.test_synthetic import city
from tests.climate.years import measured


def test_the_shares_are_counted() -> None:
    year = measured("greensboro")
    cold, hot = cold_night(weather=year), hot_day(weather=year)
    assert (year.air_degc < cold.air_degc).sum() <= 0.004 * 8760
    assert (year.air_degc > hot.air_degc).sum() <= 0.004 * 8760
    assert cold.month in ("December", "January", "February")
    assert hot.month in ("June", "July", "August")
    day = year.air_degc[24 * cold.day : 24 * cold.day + 24]
    assert day.min() == pytest.approx(cold.air_degc, abs=0.5)
    assert np.ptp(day) == pytest.approx(cold.swing_k)
    assert cold.working.result == cold.air_degc


def test_another_share_can_be_asked_and_nonsense_cannot() -> None:
    year = measured("greensboro")
    milder = cold_night(weather=year, exceeded_frac=0.99)
    assert milder.air_degc > cold_night(weather=year).air_degc
    assert hot_day(weather=year, exceeded_frac=0.01).air_degc < hot_day(weather=year).air_degc
    with pytest.raises(OutOfRange, match=r"exceeded_frac is 0\.4"):
        cold_night(weather=year, exceeded_frac=0.4)
    with pytest.raises(OutOfRange, match=r"exceeded_frac is 0\.996"):
        hot_day(weather=year, exceeded_frac=0.996)


@pytest.mark.parametrize("name", ["chicago", "northway", "mount-shasta"])
def test_hot_days_are_moist_by_their_own_hours(name: str) -> None:
    hot = hot_day(weather=measured(name))
    assert hot.dew_degc < hot.air_degc


def test_months_add_up_to_the_year() -> None:
    year = measured("chicago")
    found = months(weather=year)
    days = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
    sun = sum(month.sun_h_per_day * each for month, each in zip(found, days, strict=True))
    assert sun == pytest.approx(year.ghi_w_per_m2.sum() / 1000)
    for month in found:
        assert month.coldest_degc < month.air_degc < month.warmest_degc
        assert month.sun_low_h_per_day < month.sun_h_per_day
        assert 0.0 < month.humidity_frac <= 1.0
    assert len(MONTHS) == 12


def test_a_synthetic_design_day_says_that_it_is() -> None:
    cold = cold_night(weather=city("london-gb"))
    assert cold.working.given[0].source == "London, synthetic"
