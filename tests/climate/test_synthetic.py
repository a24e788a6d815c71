"""A synthetic year is the table's by month and year, one for a seed, and near measured ones."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.catalogue.sites import CAUTION, station_file, sunshine_h
from coachwright.climate.air import dew_of_humidity_degc, humidity_frac, standard_pressure_pa
from coachwright.climate.model import DAYS, MONTH_OF_HOUR, Place, Weather
from coachwright.climate.sun import (
    ANGSTROM_A,
    ANGSTROM_B,
    clear_sky_w_per_m2,
    day_length_h,
    extraterrestrial_wh_per_m2_day,
    sun_path,
)
from coachwright.climate.synthetic import YEAR_DAYLIGHT_H, Normals, synthetic_year
from coachwright.errors import OutOfRange
from coachwright.model.site import SiteOrigin
from coachwright.reference import table
from tests.climate.years import measured

CITIES = {row["id"]: row for row in table("sites") if row["origin"] == "synthetic"}


def city(name: str, seed: int = 1) -> Weather:
    row = CITIES[name]
    return synthetic_year(
        title=row["name"],
        place=Place(
            latitude_deg=float(row["lat_deg"]),
            longitude_deg=float(row["lon_deg"]),
            altitude_m=float(row["altitude_m"]),
            zone_h=float(row["zone_h"]),
        ),
        normals=Normals(
            monthly_degc=tuple(float(row[f"air_{month:02d}_degc"]) for month in range(1, 13)),
            sunshine_h=float(row["sunshine_h"]),
        ),
        seed=seed,
    )


SAMPLE = ("denver-us", "london-gb", "oslo-no", "singapore-sg", "sydney-au", "dubai-ae")
each_city = pytest.mark.parametrize("name", SAMPLE)


@each_city
def test_the_months_have_the_table_s_temperature(name: str) -> None:
    year = city(name)
    means = [year.air_degc[month == MONTH_OF_HOUR].mean() for month in range(12)]
    wanted = [float(CITIES[name][f"air_{month:02d}_degc"]) for month in range(1, 13)]
    assert means == pytest.approx(wanted, abs=0.01)


@pytest.mark.parametrize("name", SAMPLE[:-1])
def test_the_year_has_the_table_s_sunshine_by_angstrom_s_relation(name: str) -> None:
    year = city(name)
    above = extraterrestrial_wh_per_m2_day(latitude_deg=year.place.latitude_deg).sum()
    share = (year.ghi_w_per_m2.sum() / above - ANGSTROM_A) / ANGSTROM_B
    assert share * YEAR_DAYLIGHT_H == pytest.approx(float(CITIES[name]["sunshine_h"]), rel=5e-3)


def test_a_hazy_place_has_no_more_than_clear_skies_give() -> None:
    year = city("dubai-ae")
    clear, _ = clear_sky_w_per_m2(place=year.place, path=sun_path(place=year.place))
    assert year.ghi_w_per_m2.sum() <= clear.sum()


@each_city
def test_the_hours_of_bright_sun_are_near_the_table_s(name: str) -> None:
    # World Meteorological Organization: sunshine is light of the sun alone above 120 W/m2; whole
    # hours are counted here, which broken hours blur
    bright = (city(name).dni_w_per_m2 > 120.0).sum()
    assert bright == pytest.approx(float(CITIES[name]["sunshine_h"]), rel=0.2)


@each_city
def test_the_shipped_monthly_sun_is_what_the_year_gives(name: str) -> None:
    year = city(name)
    sun = [year.ghi_w_per_m2[month == MONTH_OF_HOUR].mean() * 0.024 for month in range(12)]
    shipped = [float(CITIES[name][f"sun_{month:02d}_h_per_day"]) for month in range(1, 13)]
    assert sun == pytest.approx(shipped, abs=0.02)


@each_city
def test_sun_and_sky_add_up_and_no_light_falls_at_night(name: str) -> None:
    year = city(name)
    path = sun_path(place=year.place)
    upright = np.maximum(np.sin(np.radians(path.altitude_deg)), 0.0)
    whole = year.dni_w_per_m2 * upright + year.dhi_w_per_m2
    assert whole == pytest.approx(year.ghi_w_per_m2, abs=1e-6)
    assert not year.ghi_w_per_m2[path.altitude_deg < -1.0].any()
    assert (year.dew_degc <= year.air_degc).all()
    for column in year.columns.values():
        assert np.isfinite(column).all()


def test_one_seed_gives_one_year_and_another_seed_another() -> None:
    assert city("london-gb").digest == city("london-gb").digest
    assert city("london-gb").digest != city("london-gb", seed=2).digest
    assert city("london-gb").origin is SiteOrigin.SYNTHETIC


@settings(max_examples=8)
@given(seed=st.integers(0, 10**6))
def test_no_seed_moves_a_month_s_sun(seed: int) -> None:
    one, other = city("london-gb"), city("london-gb", seed)
    for month in range(12):
        here = month == MONTH_OF_HOUR
        assert one.ghi_w_per_m2[here].sum() == pytest.approx(
            other.ghi_w_per_m2[here].sum(), rel=5e-3
        )


def test_sunshine_beyond_the_daylight_is_refused() -> None:
    with pytest.raises(OutOfRange, match="sunshine_h is 5000"):
        synthetic_year(
            title="",
            place=Place(latitude_deg=0.0, longitude_deg=0.0, altitude_m=0.0, zone_h=0.0),
            normals=Normals(monthly_degc=(20.0,) * 12, sunshine_h=5000),
            seed=1,
        )


ACCURACY = (
    # measured or typical year, city, its yearly sun over the measured one's in per cent, band of
    # the months in per cent, spread of the daily clearness: synthetic and measured.
    # National Renewable Energy Laboratory: NSRDB PSM4 (pvdeg 0.7.4), TMY2 (pvlib 0.16.1), TMY3
    # (diyepw 1.3.1).  The bands are what the manual tells; they are deviations, not tolerances.
    ("golden", "denver-us", (0, 9), (-15, 25)),
    ("miami", "miami-us", (0, 9), (-10, 25)),
    ("miami-tmy2", "miami-us", (5, 14), (-5, 25)),
    ("nyc", "new-york-city-us", (-3, 6), (-15, 20)),
    ("chicago", "chicago-us", (0, 9), (-10, 25)),
)


@pytest.mark.parametrize(("year", "name", "whole", "months"), ACCURACY)
def test_the_manual_s_deviations_hold(
    year: str, name: str, whole: tuple[float, float], months: tuple[float, float]
) -> None:
    ours, theirs = city(name), measured(year)
    off = 100 * (ours.ghi_w_per_m2.sum() / theirs.ghi_w_per_m2.sum() - 1)
    assert whole[0] <= off <= whole[1]
    for month in range(12):
        here = month == MONTH_OF_HOUR
        off = 100 * (ours.ghi_w_per_m2[here].sum() / theirs.ghi_w_per_m2[here].sum() - 1)
        assert months[0] <= off <= months[1]


@pytest.mark.parametrize(("year", "name"), [(year, name) for year, name, *_ in ACCURACY])
def test_the_days_spread_like_measured_ones(year: str, name: str) -> None:
    def spread(weather: Weather) -> tuple[float, float]:
        above = extraterrestrial_wh_per_m2_day(latitude_deg=weather.place.latitude_deg)
        ratio = weather.ghi_w_per_m2.reshape(DAYS, 24).sum(axis=1) / above
        noise = weather.air_degc.reshape(DAYS, 24).mean(axis=1)
        return float(ratio.std()), float(np.diff(noise).std())

    ours, theirs = spread(city(name)), spread(measured(year))
    assert 0.4 < ours[0] / theirs[0] < 1.2, "sun"
    assert 0.5 < ours[1] / theirs[1] < 2.0, "temperature"


def test_the_polar_night_is_dark_and_the_tropics_have_no_season() -> None:
    assert day_length_h(latitude_deg=75.0).min() == 0.0
    assert day_length_h(latitude_deg=75.0).sum() == pytest.approx(YEAR_DAYLIGHT_H, rel=0.02)
    assert np.ptp(day_length_h(latitude_deg=0.0)) == pytest.approx(0.0, abs=1e-9)


def test_humidity_and_dew_point_are_each_other_s_inverse_and_psychrolib_s() -> None:
    import psychrolib  # noqa: PLC0415  # it keeps its system of units in the module

    psychrolib.SetUnitSystem(psychrolib.SI)
    air = np.array([-10.0, 0.0, 10.0, 20.0, 35.0])
    for share in (0.3, 0.6, 0.95):
        dew = dew_of_humidity_degc(air=air, humidity=np.full(5, share))
        assert humidity_frac(air=air, dew=dew) == pytest.approx(share, rel=1e-9)
        theirs = [psychrolib.GetTDewPointFromRelHum(each, share) for each in air]
        # psychrolib 2.5 (ASHRAE 2017) takes vapour over ice below 0 degC, Magnus does not
        assert dew[air > 10.0] == pytest.approx(np.array(theirs)[air > 10.0], abs=0.15)


def test_pressure_is_psychrolib_s() -> None:
    import psychrolib  # noqa: PLC0415

    psychrolib.SetUnitSystem(psychrolib.SI)
    for altitude in (0.0, 500.0, 1830.0, 3000.0):
        theirs = psychrolib.GetStandardAtmPressure(altitude)
        assert standard_pressure_pa(altitude_m=altitude) == pytest.approx(theirs, rel=1e-4)
    with pytest.raises(OutOfRange):
        standard_pressure_pa(altitude_m=12000.0)


def test_a_city_has_sunshine_a_station_has_a_file_and_the_caution_says_synthetic() -> None:
    assert sunshine_h("london-gb") == 1492
    assert sunshine_h("miami-fl") is None
    assert station_file("miami-fl") == "12839.tm2"
    assert station_file("nowhere") == ""
    assert CAUTION.startswith("Synthetic")
