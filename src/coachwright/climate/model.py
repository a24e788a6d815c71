"""The results of the climate: a place, its year of hours, the sun on planes, design days.

Arrays hold one value for each hour of a year of 365 days in the place's standard time; the first
is 1 January from midnight to one o'clock.
"""

import hashlib
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from coachwright.model.site import SiteOrigin
from coachwright.model.working import Working

Hours = NDArray[np.float64]
"""One value for each hour of the year."""

HOURS = 8760
DAYS = 365
MONTH_DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
MONTH_OF_DAY = np.repeat(np.arange(12), MONTH_DAYS)
"""Month of each day, from 0."""
MONTH_OF_HOUR = np.repeat(MONTH_OF_DAY, 24)


@dataclass(frozen=True, kw_only=True, slots=True)
class Place:
    """Where on the earth, and by which clock.

    Attributes
    ----------
    latitude_deg, longitude_deg
        North and east are positive.
    zone_h
        Standard time ahead of universal time.
    """

    latitude_deg: float
    longitude_deg: float
    altitude_m: float
    zone_h: float


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Weather:
    """A year of hours.

    Attributes
    ----------
    sun_min
        Minute of each hour at which the sun stands as for the hour's light: 30 for means over
        the hour, another where the file holds the light of one moment.
    ghi_w_per_m2, dni_w_per_m2, dhi_w_per_m2
        Light of the whole sky on a flat roof, of the sun alone square to it, and of the sky alone
        on a flat roof.
    attribution
        Who must be named wherever a figure of it is shown.
    caution
        How far it may be off.
    repairs
        What was mended in the file that it was read from.
    """

    title: str
    place: Place
    origin: SiteOrigin
    sun_min: float
    ghi_w_per_m2: Hours
    dni_w_per_m2: Hours
    dhi_w_per_m2: Hours
    air_degc: Hours
    dew_degc: Hours
    wind_m_per_s: Hours
    pressure_pa: Hours
    attribution: str = ""
    caution: str = ""
    repairs: tuple[str, ...] = ()

    @property
    def columns(self) -> dict[str, Hours]:
        """The arrays by name."""
        return {
            "ghi_w_per_m2": self.ghi_w_per_m2,
            "dni_w_per_m2": self.dni_w_per_m2,
            "dhi_w_per_m2": self.dhi_w_per_m2,
            "air_degc": self.air_degc,
            "dew_degc": self.dew_degc,
            "wind_m_per_s": self.wind_m_per_s,
            "pressure_pa": self.pressure_pa,
        }

    @property
    def digest(self) -> str:
        """SHA-256 of place and hours, as hexadecimal digits."""
        made = hashlib.sha256(f"{self.place}{self.sun_min}".encode())
        for name, column in self.columns.items():
            made.update(name.encode())
            made.update(np.ascontiguousarray(column, dtype="<f8").tobytes())
        return made.hexdigest()


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class SunPath:
    """Where the sun stands in each hour.

    Attributes
    ----------
    altitude_deg
        Above the horizon, as seen through the air.
    azimuth_deg
        Clockwise from north.
    extraterrestrial_w_per_m2
        Square to the sun, outside the air.
    """

    altitude_deg: Hours
    azimuth_deg: Hours
    extraterrestrial_w_per_m2: Hours


@dataclass(frozen=True, kw_only=True, slots=True)
class PanelSun:
    """What a fixed panel on the roof gives in a year, before its controller.

    Attributes
    ----------
    year_wh, month_wh
        Shade counted by area.
    least_wh
        The same where each touched section of cells is lost whole.
    free_wh
        Without anything around it.
    sky_frac
        Share of an even sky's light that its neighbours take.
    """

    name: str
    year_wh: float
    least_wh: float
    free_wh: float
    month_wh: tuple[float, ...]
    sky_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class ObstacleCost:
    """What one thing on the roof takes from all panels.

    Attributes
    ----------
    lost_wh
        In a year: what they would give more without it, everything else in place.
    """

    name: str
    lost_wh: float


@dataclass(frozen=True, kw_only=True, slots=True)
class RoofSun:
    """The panels of a build at a site.

    Attributes
    ----------
    heading_deg
        Where the vehicle heads, clockwise from north; None for the mean of eight headings.
    obstacles
        The costliest first.
    """

    site: str
    origin: SiteOrigin
    heading_deg: float | None
    panels: tuple[PanelSun, ...]
    obstacles: tuple[ObstacleCost, ...]
    attribution: str
    caution: str


@dataclass(frozen=True, kw_only=True, slots=True)
class DesignDay:
    """One design day.

    Attributes
    ----------
    exceeded_frac
        Share of the year's hours that are warmer.
    air_degc
        Temperature at that share.
    dew_degc, wind_m_per_s
        Means over the hours beyond it.
    day
        The day of the year, from 0, that comes nearest: its hours are a picture of such a day.
    swing_k
        Of that day.
    """

    exceeded_frac: float
    air_degc: float
    dew_degc: float
    wind_m_per_s: float
    day: int
    month: str
    swing_k: float
    working: Working
