"""How clear each day and hour of a synthetic year is: Ångström's year, Bendt's days.

A day's or hour's clear-sky share is its light over that of a clear sky.
"""

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import DAYS, MONTH_DAYS, MONTH_OF_DAY, Hours
from coachwright.climate.sun import angstrom_clearness_ratio

DULLEST_FRAC, CLEAREST_FRAC = 0.08, 1.1
"""Ends of the distribution of a day's clear-sky share: the clear sky is that of the month's mean
haze, so that clear days exceed it. [bendt-1981] [climate-fit]"""
MOST_HOUR_FRAC = 1.15
DAY_MEMORY_RATIO = 0.29
"""Lag-one correlation of the normal scores of the days. [graham-hollands-1988]"""
HOUR_MEMORY_RATIO = 0.5
HOUR_SPREAD_RATIO = 0.30
SEASON_RATIO = 0.055
"""Winter's clearness below summer's, half of the difference, from 40° on. [climate-fit]"""
SEASON_FROM_DEG, SEASON_FULL_DEG = 28.0, 40.0
MOST_CLEAR_FRAC = 1.0
"""No month is clearer than a clear sky with its mean haze."""
_STEEPEST = 60.0


def monthly_clearness_ratio(
    *, latitude_deg: float, sunshine_frac: float, above_wh_per_m2_day: NDArray[np.float64]
) -> NDArray[np.float64]:
    """Return the light on the ground over that above the air for each month.

    Parameters
    ----------
    latitude_deg
        North is positive. [deg]
    sunshine_frac
        Of the year.
    above_wh_per_m2_day
        Light above the air on each day. [Wh/m2/day]

    Notes
    -----
    K_m = 0.25 + 0.50 n/N − A cos(2π J/365) + c, with J the middle of the month from the winter
    solstice, A = 0.055 from 40° of latitude on, none below 28°, linear between; c holds the
    yearly sum at Ångström's.  A is a fit to the typical years at hand; monsoon, marine and
    Mediterranean seasons depart from it, and the manual says how far.

    References
    ----------
    [fao-56], [climate-fit]
    """
    ramp = (abs(latitude_deg) - SEASON_FROM_DEG) / (SEASON_FULL_DEG - SEASON_FROM_DEG)
    depth = SEASON_RATIO * min(max(ramp, 0.0), 1.0) * (1.0 if latitude_deg >= 0 else -1.0)
    middle = np.cumsum(MONTH_DAYS) - np.asarray(MONTH_DAYS) / 2.0 + 10.0
    season = -depth * np.cos(2.0 * np.pi * middle / DAYS)
    weight = monthly_sum(above_wh_per_m2_day)
    season = season - float((season * weight).sum() / weight.sum())
    return np.asarray(angstrom_clearness_ratio(sunshine_frac=sunshine_frac) + season)


def monthly_sum(days: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the sum of each month's days."""
    return np.asarray(np.bincount(MONTH_OF_DAY, weights=days, minlength=12), dtype=np.float64)


def daily_clear_frac(
    *,
    wanted_wh_per_m2: NDArray[np.float64],
    clear_wh_per_m2_day: NDArray[np.float64],
    chance: np.random.Generator,
) -> NDArray[np.float64]:
    """Return the clear-sky share of each day.

    Parameters
    ----------
    wanted_wh_per_m2
        Light of each month. [Wh/m2]
    clear_wh_per_m2_day
        Light of each day under a clear sky. [Wh/m2/day]
    chance
        Where chance comes from.

    Notes
    -----
    The days of a month are the mid quantiles of Bendt's truncated exponential,
    F(k) = (e^{γ k0} − e^{γ k}) / (e^{γ k0} − e^{γ k1}), whose γ gives the month's mean, in an
    order drawn from a first-order autoregressive normal series (φ = 0.29); then scaled so that
    the month's light is met.  So each month has the distribution itself, not a sample of it.

    References
    ----------
    [bendt-1981], [graham-hollands-1988]
    """
    order = autoregressive(count=DAYS, memory_ratio=DAY_MEMORY_RATIO, chance=chance)
    made = np.zeros(DAYS)
    for month, wanted in enumerate(wanted_wh_per_m2):
        here = month == MONTH_OF_DAY
        clear = clear_wh_per_m2_day[here]
        if clear.sum() <= 0.0:
            continue
        mean = min(float(wanted / clear.sum()), MOST_CLEAR_FRAC)
        rank = np.argsort(np.argsort(order[here]))
        share = _quantile((rank + 0.5) / len(rank), max(mean, DULLEST_FRAC * 1.1))
        for _ in range(20):
            share = np.clip(
                share * mean * clear.sum() / (share * clear).sum(), 0.02, CLEAREST_FRAC
            )
        made[here] = share
    return made


def hourly_light_w_per_m2(
    *, daily_frac: NDArray[np.float64], clear_w_per_m2: Hours, chance: np.random.Generator
) -> Hours:
    """Return the light on a flat roof in each hour [W/m2].

    Parameters
    ----------
    daily_frac
        Clear-sky share of each day.
    clear_w_per_m2
        Light of a clear sky. [W/m2]
    chance
        Where chance comes from.

    Notes
    -----
    k_h = k_d + 0.30 · 4 k_d (1 − k_d) · z, z autoregressive with φ = 0.5, between 0.03 and 1.15;
    scaled so that the day's light is met.  Half-cloudy days are the most broken.

    References
    ----------
    [graham-hollands-1990]
    """
    noise = autoregressive(
        count=clear_w_per_m2.size, memory_ratio=HOUR_MEMORY_RATIO, chance=chance
    )
    whole = np.clip(daily_frac, 0.0, 1.0)
    spread = np.repeat(HOUR_SPREAD_RATIO * 4.0 * whole * (1.0 - whole), 24)
    share = np.clip(np.repeat(daily_frac, 24) + spread * noise, 0.03, MOST_HOUR_FRAC)
    clear_day = clear_w_per_m2.reshape(DAYS, 24).sum(axis=1)
    for _ in range(4):
        day = (share * clear_w_per_m2).reshape(DAYS, 24).sum(axis=1)
        scale = np.divide(daily_frac * clear_day, day, out=np.ones(DAYS), where=day > 0.0)
        share = np.minimum(share * np.repeat(scale, 24), MOST_HOUR_FRAC)
    return np.asarray(share * clear_w_per_m2)


def autoregressive(
    *, count: int, memory_ratio: float, chance: np.random.Generator
) -> NDArray[np.float64]:
    """Return a standard normal series in which each value remembers the one before.

    Parameters
    ----------
    count
        Of values.
    memory_ratio
        Lag-one correlation.
    chance
        Where chance comes from.
    """
    fresh = chance.standard_normal(count)
    rest = np.sqrt(1.0 - memory_ratio**2)
    series = fresh.tolist()
    for at in range(1, count):
        series[at] = memory_ratio * series[at - 1] + rest * series[at]
    return np.asarray(series)


def _quantile(level: NDArray[np.float64], mean_frac: float) -> NDArray[np.float64]:
    """Return quantiles of the truncated exponential that has a mean."""
    low, high = -_STEEPEST, _STEEPEST
    for _ in range(60):
        steep = (low + high) / 2.0
        low, high = (steep, high) if _mean_frac(steep) < mean_frac else (low, steep)
    width = CLEAREST_FRAC - DULLEST_FRAC
    if abs(steep) < 1e-6:  # noqa: PLR2004  # the limit is the even distribution
        return np.asarray(DULLEST_FRAC + width * level)
    return np.asarray(DULLEST_FRAC + np.log1p(level * np.expm1(steep * width)) / steep)


def _mean_frac(steep_factor: float) -> float:
    width = CLEAREST_FRAC - DULLEST_FRAC
    if abs(steep_factor) < 1e-6:  # noqa: PLR2004
        return DULLEST_FRAC + width / 2.0
    return float(CLEAREST_FRAC - 1.0 / steep_factor + width / np.expm1(steep_factor * width))
