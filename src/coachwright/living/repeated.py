"""A design day that is the same every day: a site's hours of one day, laid out over a year."""

from dataclasses import replace

import numpy as np

from coachwright.climate.model import DAYS, HOURS, Hours
from coachwright.living.given import Given
from coachwright.living.simulate import Prepared, prepare
from coachwright.living.steps import SiteSteps, Sky
from coachwright.living.vapour import humidity_ratio, saturated_pa

_AIR, _SKY, _LIGHT = 0, 1, 3
"""Columns of a site's rows: air, sky, ground, then light."""


def shifted(
    *, site: SiteSteps, day: int, air_degc: float, warmest: bool, sunless: bool = False
) -> SiteSteps:
    """Return a site with one of its days all year, shifted to a design temperature.

    Parameters
    ----------
    site
        Of the year.
    day
        Of the year, from 0.
    air_degc
        Temperature of its warmest hour, or of its coldest. [degC]
    warmest
        Whether that is the warmest hour.
    sunless
        Without any light.

    Notes
    -----
    Air and sky are shifted by the same amount; vapour stays, but for what the colder air could
    not hold.  The ground keeps the month's mean.

    References
    ----------
    [ashrae-psychrometrics]
    """
    rows = site.driving[24 * day : 24 * day + 24].copy()
    extreme = rows[:, _AIR].max() if warmest else rows[:, _AIR].min()
    rows[:, _AIR : _SKY + 1] += air_degc - extreme
    if sunless:
        rows[:, _LIGHT:] = 0.0
    held = humidity_ratio(dew_degc=rows[:, _AIR], pressure_pa=site.pressure_pa)
    humidity = np.minimum(site.humidity[24 * day : 24 * day + 24], held)
    return replace(
        site,
        driving=np.ascontiguousarray(np.tile(rows, (DAYS, 1))),
        humidity=np.tile(humidity, DAYS),
        dark=np.tile(site.dark[24 * day : 24 * day + 24], DAYS),
    )


def steady(
    *, site: SiteSteps, air_degc: float, humidity_frac: float, light_of_day: int | None = None
) -> SiteSteps:
    """Return a site whose air is the same in each hour.

    Parameters
    ----------
    site
        Of the year.
    air_degc
        Of the air, the sky and the ground. [degC]
    humidity_frac
        Relative, outside.
    light_of_day
        Day of the year, from 0, whose light there is; None for none.

    Notes
    -----
    The sky is as warm as the air, as in a hall or a climatic chamber.

    References
    ----------
    [ashrae-psychrometrics]
    """
    rows = np.zeros((24, site.driving.shape[1]))
    if light_of_day is not None:
        rows[:, _LIGHT:] = site.driving[24 * light_of_day : 24 * light_of_day + 24, _LIGHT:]
    rows[:, :_LIGHT] = air_degc
    vapour_pa = float(humidity_frac * saturated_pa(at_degc=np.array([air_degc]))[0])
    ratio = 0.621945 * vapour_pa / (site.pressure_pa - vapour_pa)
    return replace(
        site,
        driving=np.ascontiguousarray(np.tile(rows, (DAYS, 1))),
        humidity=np.full(HOURS, ratio),
    )


def under(
    given: Given, sky: Sky, site: SiteSteps, sun_w: Hours, like: Prepared | None = None
) -> Prepared:
    """Return a design prepared for hours of its own.

    Parameters
    ----------
    given
        The design.
    sky
        Of the site that the hours were made from: for its height.
    site
        The hours.
    sun_w
        Of all panels, for each hour. [W]
    like
        Prepared before with the same body.
    """
    other = replace(given, supply=replace(given.supply, sun_w=sun_w))
    return prepare(other, sky, site=site, like=like)


def same_day_w(sun_w: Hours, day: int) -> Hours:
    """Return a day's sun on the panels, the same every day [W]."""
    return np.tile(np.asarray(sun_w, dtype=np.float64)[24 * day : 24 * day + 24], DAYS)
