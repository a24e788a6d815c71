"""The design day: the cold night and the hot day beyond which a stated share of hours lies."""

import numpy as np

from coachwright.climate.model import DAYS, HOURS, MONTH_OF_DAY, DesignDay, Weather
from coachwright.errors import OutOfRange
from coachwright.model.site import MONTHS
from coachwright.model.working import Given, Working

__all__ = ["COLD_FRAC", "HOT_FRAC", "DesignDay", "cold_night", "hot_day"]

COLD_FRAC, HOT_FRAC = 0.996, 0.004
"""Usual shares: 35 hours of a year are colder, and 35 hotter. [ashrae-climate]"""


def cold_night(*, weather: Weather, exceeded_frac: float = COLD_FRAC) -> DesignDay:
    """Return the design cold night of a year.

    Parameters
    ----------
    weather
        The year.
    exceeded_frac
        Share of its hours that are warmer; 0.996 is usual.

    Raises
    ------
    OutOfRange
        Where the share is not between a half and 1.

    Notes
    -----
    T with P(T_hour > T) = share, by linear interpolation between the ordered hours.  One typical
    year holds no extremes of decades: it can be some kelvin milder than a handbook's value.

    References
    ----------
    [ashrae-climate]
    """
    if not 0.5 < exceeded_frac < 1.0:  # noqa: PLR2004  # a cold night is colder than the middle
        raise OutOfRange("exceeded_frac", exceeded_frac, "more than 0.5 and less than 1")
    coldest = weather.air_degc.reshape(DAYS, 24).min(axis=1)
    return _design_day(weather, exceeded_frac, coldest, colder=True)


def hot_day(*, weather: Weather, exceeded_frac: float = HOT_FRAC) -> DesignDay:
    """Return the design hot day of a year.

    Parameters
    ----------
    weather
        The year.
    exceeded_frac
        Share of its hours that are warmer; 0.004 is usual.

    Raises
    ------
    OutOfRange
        Where the share is not between 0 and a half.

    Notes
    -----
    As `cold_night`.

    References
    ----------
    [ashrae-climate]
    """
    if not 0.0 < exceeded_frac < 0.5:  # noqa: PLR2004  # a hot day is hotter than the middle
        raise OutOfRange("exceeded_frac", exceeded_frac, "more than 0 and less than 0.5")
    hottest = weather.air_degc.reshape(DAYS, 24).max(axis=1)
    return _design_day(weather, exceeded_frac, hottest, colder=False)


def _design_day(
    weather: Weather, exceeded_frac: float, extremes: np.ndarray, *, colder: bool
) -> DesignDay:
    degc = float(np.quantile(weather.air_degc, 1.0 - exceeded_frac))
    beyond = weather.air_degc <= degc if colder else weather.air_degc >= degc
    day = int(np.argmin(np.abs(extremes - degc)))
    hours = weather.air_degc[24 * day : 24 * day + 24]
    return DesignDay(
        exceeded_frac=exceeded_frac,
        air_degc=degc,
        dew_degc=float(weather.dew_degc[beyond].mean()),
        wind_m_per_s=float(weather.wind_m_per_s[beyond].mean()),
        day=day,
        month=MONTHS[int(MONTH_OF_DAY[day])],
        swing_k=float(np.ptp(hours)),
        working=Working(
            expression="T = Q(1 − p)",
            given=(
                Given(
                    symbol="Q",
                    meaning="hours in order, the coldest first",
                    value=float(HOURS),
                    unit="h",
                    source=f"{weather.title}, {weather.origin}",
                ),
                Given(
                    symbol="p",
                    meaning="share of the hours that are warmer",
                    value=exceeded_frac,
                    unit="frac",
                ),
            ),
            result=degc,
            unit="degC",
            references=("ashrae-climate",),
            note=weather.caution,
        ),
    )
