"""Air of a synthetic year: temperature, dew point, wind, pressure."""

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.clearness import autoregressive
from coachwright.climate.model import DAYS, HOURS, MONTH_DAYS, MONTH_OF_DAY, Hours
from coachwright.errors import OutOfRange

DAY_MEMORY_RATIO = 0.68
"""Lag-one correlation of the daily temperature; the middle of the years at hand. [climate-fit]"""
WINTER_SPREAD_FRAC = 0.20
"""Daily spread of the coldest month over the yearly range of the months. [climate-fit]"""
SUMMER_SPREAD_K, SUMMER_SPREAD_FRAC = 1.2, 0.05
LEAST_SPREAD_K = 1.2
INLAND_FACTOR, COAST_FACTOR = 0.16, 0.19
"""Of Hargreaves' equation. [fao-56]"""
COAST_SPAN_K, INLAND_SPAN_K = 8.0, 16.0
"""Yearly range of the months that tells a coast from inland. [climate-fit]"""
LEAST_SWING_K, MOST_SWING_K, DARK_SWING_K = 2.0, 20.0, 5.0
WARMEST_H = 14.5
"""Solar time."""
MEAN_WIND_M_PER_S = 3.2
"""The middle of the years at hand. [climate-fit]"""
WIND_MEMORY_RATIO = 0.9
STEAM_A, STEAM_B = 17.625, 243.04
"""Magnus form over water. [alduchov-eskridge-1996]"""


def daily_spread_k(*, monthly_degc: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return by how much single days differ from the season's mean, for each month [K].

    Parameters
    ----------
    monthly_degc
        Mean of each month. [degC]

    Notes
    -----
    σ runs with the month's mean from max(1.2 K, 0.20 R) in the coldest to 1.2 K + 0.05 R in the
    warmest month, R = warmest less coldest; a fit to typical years with R from 4 to 40 K.

    References
    ----------
    [climate-fit]
    """
    span = float(monthly_degc.max() - monthly_degc.min())
    winter = max(LEAST_SPREAD_K, WINTER_SPREAD_FRAC * span)
    summer = SUMMER_SPREAD_K + SUMMER_SPREAD_FRAC * span
    cold = (monthly_degc.max() - monthly_degc) / max(span, 1e-9)
    return np.asarray(summer + (winter - summer) * cold)


def daily_swing_k(*, clearness_ratio: NDArray[np.float64], span_k: float) -> NDArray[np.float64]:
    """Return the difference between a day's warmest and coldest hour [K].

    Parameters
    ----------
    clearness_ratio
        Light on the ground over that above the air; NaN where there is none above.
    span_k
        Warmest less coldest month. [K]

    Notes
    -----
    ΔT = (K / k)², the inverse of Hargreaves and Samani, between 2 and 20 K; 5 K in polar night.
    k is 0.19 on coasts, told by a range of the months up to 8 K, and 0.16 inland, from 16 K on.

    References
    ----------
    [fao-56]
    """
    inland = min(max((span_k - COAST_SPAN_K) / (INLAND_SPAN_K - COAST_SPAN_K), 0.0), 1.0)
    factor = COAST_FACTOR + (INLAND_FACTOR - COAST_FACTOR) * inland
    swing = (clearness_ratio / factor) ** 2
    return np.asarray(
        np.where(np.isnan(swing), DARK_SWING_K, np.clip(swing, LEAST_SWING_K, MOST_SWING_K))
    )


def hourly_air_degc(
    *,
    monthly_degc: NDArray[np.float64],
    clearness_ratio: NDArray[np.float64],
    day_h: NDArray[np.float64],
    noon_h: float,
    chance: np.random.Generator,
) -> Hours:
    """Return the temperature of the air in each hour [degC].

    Parameters
    ----------
    monthly_degc
        Mean of each month. [degC]
    clearness_ratio
        Of each day.
    day_h
        From sunrise to sunset. [h]
    noon_h
        Clock time of solar noon. [h]
    chance
        Where chance comes from.

    Notes
    -----
    T = T_season + σ z + ΔT · s(h): the season runs through the months' means, z is autoregressive
    with φ = 0.68, s falls along a half cosine from half past two to sunrise and rises along
    another, with mean 0.  The months' means are met to 0.01 K.

    References
    ----------
    [climate-fit], [fao-56]
    """
    season = through_months(monthly=monthly_degc)
    noise = autoregressive(count=DAYS, memory_ratio=DAY_MEMORY_RATIO, chance=chance)
    noise = noise - through_months(monthly=_monthly_mean(noise))
    spread = daily_spread_k(monthly_degc=monthly_degc)[MONTH_OF_DAY]
    days = season + spread * noise
    days = days + through_months(monthly=monthly_degc - _monthly_mean(days))
    shape = _day_shape(day_h, noon_h)
    swing = daily_swing_k(
        clearness_ratio=clearness_ratio,
        span_k=float(monthly_degc.max() - monthly_degc.min()),
    )
    hours = days.repeat(24) + swing.repeat(24) * shape
    short = monthly_degc - _monthly_mean(hours.reshape(DAYS, 24).mean(axis=1))
    return np.asarray(hours + short[MONTH_OF_DAY].repeat(24))


def through_months(*, monthly: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return days along straight lines between the months, whose monthly means are those given.

    Parameters
    ----------
    monthly
        Mean of each month.

    Examples
    --------
    >>> days = through_months(monthly=np.arange(12.0))
    >>> [round(float(days[MONTH_OF_DAY == month].mean()), 6) for month in (0, 5, 11)]
    [0.0, 5.0, 11.0]
    """
    ends = np.cumsum(MONTH_DAYS)
    middle = ends - np.asarray(MONTH_DAYS) / 2.0
    at = np.arange(DAYS) + 0.5
    nodes = monthly.astype(np.float64)
    for _ in range(40):
        days = np.interp(at, middle, nodes, period=float(DAYS))
        nodes = nodes + monthly - _monthly_mean(days)
    return np.asarray(days)


def dew_degc(*, air: Hours, sunshine_frac: float) -> Hours:
    """Return the dew point in each hour [degC].

    Parameters
    ----------
    air
        Temperature of the air. [degC]
    sunshine_frac
        Of the year.

    Notes
    -----
    The day's lowest temperature less D, D = 10 K · (S − 0.45) between 0 and 6 K: sunny places are
    dry.  Never above the air.

    References
    ----------
    [climate-fit], [fao-56]
    """
    below = min(max(10.0 * (sunshine_frac - 0.45), 0.0), 6.0)
    lowest = air.reshape(DAYS, 24).min(axis=1) - below
    middle = np.arange(DAYS) * 24.0 + 12.0
    smooth = np.interp(np.arange(HOURS) + 0.5, middle, lowest, period=float(HOURS))
    return np.asarray(np.minimum(smooth, air))


def wind_m_per_s(*, chance: np.random.Generator) -> Hours:
    """Return the wind in each hour, for a place of which nothing is known [m/s].

    Parameters
    ----------
    chance
        Where chance comes from.

    Notes
    -----
    Rayleigh with a mean of 3.2 m/s in an order with a lag-one correlation of 0.9; without season
    and daily course.

    References
    ----------
    [climate-fit]
    """
    order = autoregressive(count=HOURS, memory_ratio=WIND_MEMORY_RATIO, chance=chance)
    level = (np.argsort(np.argsort(order)) + 0.5) / HOURS
    return np.asarray(MEAN_WIND_M_PER_S * 2.0 / np.sqrt(np.pi) * np.sqrt(-np.log1p(-level)))


def standard_pressure_pa(*, altitude_m: float) -> float:
    """Return the pressure of the standard atmosphere [Pa].

    Parameters
    ----------
    altitude_m
        Above the sea. [m]

    Raises
    ------
    OutOfRange
        Above the troposphere.

    Notes
    -----
    p = 101325 (1 − 2.25577e-5 h)^5.25588, up to 11 km.

    References
    ----------
    [ashrae-psychrometrics]

    Examples
    --------
    >>> round(standard_pressure_pa(altitude_m=1830.0))
    81188
    """
    if not -1000.0 <= altitude_m <= 11000.0:  # noqa: PLR2004  # the troposphere
        raise OutOfRange("altitude_m", altitude_m, "from -1000 m to 11 km")
    return float(101325.0 * (1.0 - 2.25577e-5 * altitude_m) ** 5.25588)


def humidity_frac(*, air: Hours, dew: Hours) -> Hours:
    """Return the relative humidity.

    Parameters
    ----------
    air
        Temperature of the air. [degC]
    dew
        Dew point. [degC]

    Notes
    -----
    Ratio of the Magnus forms over water, −40 to 50 °C; at most 1.

    References
    ----------
    [alduchov-eskridge-1996]

    Examples
    --------
    >>> found = humidity_frac(air=np.array([20.0]), dew=np.array([9.27]))
    >>> round(float(found[0]), 3)
    0.5
    """

    def steam(degc: Hours) -> Hours:
        return np.asarray(np.exp(STEAM_A * degc / (STEAM_B + degc)))

    return np.asarray(np.minimum(steam(dew) / steam(air), 1.0))


def dew_of_humidity_degc(*, air: Hours, humidity: Hours) -> Hours:
    """Return the dew point of air with a relative humidity [degC].

    Parameters
    ----------
    air
        Temperature of the air. [degC]
    humidity
        Relative, from 0 to 1.

    Notes
    -----
    The Magnus form turned round; humidity is taken as at least 1 %.

    References
    ----------
    [alduchov-eskridge-1996]

    Examples
    --------
    >>> [round(float(each), 2)
    ...  for each in dew_of_humidity_degc(air=np.array([20.0]), humidity=np.array([0.5]))]
    [9.26]
    """
    held = np.log(np.clip(humidity, 0.01, 1.0)) + STEAM_A * air / (STEAM_B + air)
    return np.asarray(STEAM_B * held / (STEAM_A - held))


def _monthly_mean(days: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.asarray(
        np.bincount(MONTH_OF_DAY, weights=days, minlength=12) / np.asarray(MONTH_DAYS)
    )


def _day_shape(day_h: NDArray[np.float64], noon_h: float) -> Hours:
    """Return the course of each day, from -0.5 to 0.5, moved to a mean of 0."""
    rise = (12.0 - np.clip(day_h, 6.0, 18.0) / 2.0)[:, None]
    solar = (np.arange(24)[None, :] + 0.5 - noon_h + 12.0) % 24.0
    after = (solar - rise) % 24.0
    climb = WARMEST_H - rise
    up = -0.5 * np.cos(np.pi * after / climb)
    down = 0.5 * np.cos(np.pi * (after - climb) / (24.0 - climb))
    shape = np.where(after < climb, up, down)
    return np.asarray((shape - shape.mean(axis=1, keepdims=True)).reshape(HOURS))
