"""A year of weather by month, and the peak-sun hours that count for a build."""

from dataclasses import dataclass

import numpy as np

from coachwright.climate.air import humidity_frac
from coachwright.climate.model import DAYS, MONTH_OF_DAY, MONTH_OF_HOUR, Weather

FULL_SUN_W_PER_M2 = 1000.0
"""Light of a peak-sun hour. [W/m2] [nrel-pvwatts]"""


@dataclass(frozen=True, kw_only=True, slots=True)
class Month:
    """One month of a year.

    Attributes
    ----------
    air_degc
        Mean; with the mean of the days' coldest and warmest hours.
    sun_h_per_day
        Peak-sun hours on a flat roof.
    sun_low_h_per_day
        The mean of the five dullest days in a row.
    """

    air_degc: float
    coldest_degc: float
    warmest_degc: float
    humidity_frac: float
    wind_m_per_s: float
    sun_h_per_day: float
    sun_low_h_per_day: float


_RUN_D = 5


def months(*, weather: Weather) -> tuple[Month, ...]:
    """Return the twelve months of a year.

    Parameters
    ----------
    weather
        The year.

    Notes
    -----
    A peak-sun hour is 1 kWh/m2 of light on a flat roof.

    References
    ----------
    [nrel-pvwatts]
    """
    humidity = humidity_frac(air=weather.air_degc, dew=weather.dew_degc)
    air = weather.air_degc.reshape(DAYS, 24)
    sun = weather.ghi_w_per_m2.reshape(DAYS, 24).sum(axis=1) / FULL_SUN_W_PER_M2
    made = []
    for month in range(12):
        hours, days = month == MONTH_OF_HOUR, month == MONTH_OF_DAY
        runs = np.convolve(sun[days], np.full(_RUN_D, 1.0 / _RUN_D), mode="valid")
        made.append(
            Month(
                air_degc=float(air[days].mean()),
                coldest_degc=float(air[days].min(axis=1).mean()),
                warmest_degc=float(air[days].max(axis=1).mean()),
                humidity_frac=float(humidity[hours].mean()),
                wind_m_per_s=float(weather.wind_m_per_s[hours].mean()),
                sun_h_per_day=float(sun[days].mean()),
                sun_low_h_per_day=float(runs.min()),
            )
        )
    return tuple(made)
