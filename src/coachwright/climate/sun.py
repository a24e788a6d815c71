"""Where the sun stands, and what it gives above the air and through a clear sky."""

from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import DAYS, HOURS, Hours, Place, SunPath
from coachwright.climate.sun_position import sun_angles_deg

YEAR = 2001
"""The year without a leap day whose sun stands for every year."""
SOLAR_MJ_PER_M2_MIN = 0.0820
"""Solar constant of the extraterrestrial equation. [MJ/m2/min] [fao-56]"""
ANGSTROM_A, ANGSTROM_B = 0.25, 0.50
"""Share of the light above the air that comes through a closed sky, and what a clear one adds; for
places without their own fit. [fao-56]"""


def stamps(*, zone_h: float, sun_min: float) -> Any:
    """Return the moments of a year at which the sun stands for each hour, for pvlib.

    Parameters
    ----------
    zone_h
        Standard time ahead of universal time. [h]
    sun_min
        Minute of each hour. [min]
    """
    import pandas as pd  # noqa: PLC0415  # half a second that no check needs

    start = pd.Timestamp(f"{YEAR}-01-01", tz="UTC") + pd.Timedelta(minutes=sun_min - 60.0 * zone_h)
    return pd.date_range(start, periods=HOURS, freq="h")


@lru_cache(maxsize=8)
def sun_path(*, place: Place, sun_min: float = 30.0) -> SunPath:
    """Return where the sun stands in each hour of the year.

    Parameters
    ----------
    place
        Where on the earth.
    sun_min
        Minute of each hour. [min]

    Notes
    -----
    Solar Position Algorithm (`sun_angles_deg`), with refraction at the altitude's pressure and
    12 °C; in 2001.  Another year moves the sun by less than 0.3°.  The last few are kept.

    References
    ----------
    [nrel-spa], [pvlib]
    """
    from pvlib import atmosphere, irradiance  # noqa: PLC0415

    moments = stamps(zone_h=place.zone_h, sun_min=sun_min)
    altitude_deg, azimuth_deg = sun_angles_deg(
        start_s=moments[0].timestamp(),
        latitude_deg=place.latitude_deg,
        longitude_deg=place.longitude_deg,
        altitude_m=place.altitude_m,
        pressure_pa=float(atmosphere.alt2pres(place.altitude_m)),
    )
    return SunPath(
        altitude_deg=altitude_deg,
        azimuth_deg=azimuth_deg,
        extraterrestrial_w_per_m2=np.asarray(
            irradiance.get_extra_radiation(moments), dtype=np.float64
        ),
    )


def clear_sky_w_per_m2(
    *, place: Place, path: SunPath, sun_min: float = 30.0
) -> tuple[Hours, Hours]:
    """Return the light of a clear sky on a flat roof, and of the sun alone square to it [W/m2].

    Parameters
    ----------
    place
        Where on the earth.
    path
        Of that place.
    sun_min
        Minute of each hour for which the path holds. [min]

    Notes
    -----
    Ineichen and Perez with the monthly Linke turbidity of a world map of 1/12°; air mass of Kasten
    and Young, pressure of the standard atmosphere.

    References
    ----------
    [ineichen-perez-2002], [pvlib]
    """
    from pvlib import atmosphere, clearsky  # noqa: PLC0415

    moments = stamps(zone_h=place.zone_h, sun_min=sun_min)
    zenith = 90.0 - path.altitude_deg
    relative = atmosphere.get_relative_airmass(zenith)
    absolute = atmosphere.get_absolute_airmass(relative, atmosphere.alt2pres(place.altitude_m))
    turbidity = clearsky.lookup_linke_turbidity(moments, place.latitude_deg, place.longitude_deg)
    with np.errstate(divide="ignore", invalid="ignore"):  # a sun on the horizon has no height
        found = clearsky.ineichen(
            zenith,
            absolute,
            np.asarray(turbidity),
            altitude=place.altitude_m,
            dni_extra=path.extraterrestrial_w_per_m2,
        )
    return (
        np.nan_to_num(np.asarray(found["ghi"], dtype=np.float64)),
        np.nan_to_num(np.asarray(found["dni"], dtype=np.float64)),
    )


def extraterrestrial_wh_per_m2_day(*, latitude_deg: float) -> NDArray[np.float64]:
    """Return the light above the air on a flat square metre on each day of the year [Wh/m2/day].

    Parameters
    ----------
    latitude_deg
        North is positive. [deg]

    Notes
    -----
    R_a = 24·60/π · G · d_r (ω sin φ sin δ + cos φ cos δ sin ω), with d_r = 1 + 0.033 cos(2πJ/365),
    δ = 0.409 sin(2πJ/365 − 1.39), ω = arccos(−tan φ tan δ), and ω held between 0 and π beyond the
    polar circles.

    References
    ----------
    [fao-56]

    Examples
    --------
    >>> days = extraterrestrial_wh_per_m2_day(latitude_deg=-20.0)
    >>> round(float(days[245]) * 0.0036, 1)
    32.2
    """
    phi = np.radians(latitude_deg)
    delta, omega = _season(latitude_deg)
    day = np.arange(1, DAYS + 1)
    distance = 1.0 + 0.033 * np.cos(2.0 * np.pi * day / DAYS)
    height = omega * np.sin(phi) * np.sin(delta) + np.cos(phi) * np.cos(delta) * np.sin(omega)
    megajoules = 24.0 * 60.0 / np.pi * SOLAR_MJ_PER_M2_MIN * distance * height
    return np.asarray(np.maximum(megajoules, 0.0) / 0.0036)


def day_length_h(*, latitude_deg: float) -> NDArray[np.float64]:
    """Return the hours from sunrise to sunset on each day of the year, without refraction [h].

    Parameters
    ----------
    latitude_deg
        North is positive. [deg]

    Notes
    -----
    N = 24/π · ω; over a year 4380 h everywhere.

    References
    ----------
    [fao-56]

    Examples
    --------
    >>> round(float(day_length_h(latitude_deg=-20.0)[245]), 1)
    11.7
    """
    _, omega = _season(latitude_deg)
    return np.asarray(24.0 / np.pi * omega)


def angstrom_clearness_ratio(*, sunshine_frac: float) -> float:
    """Return the light on the ground over that above the air, for a share of sunshine.

    Parameters
    ----------
    sunshine_frac
        Hours of sunshine over hours of daylight.

    Notes
    -----
    K = 0.25 + 0.50 n/N.  Against eight years of measured hours the yearly sum came 0 to 6 % high.

    References
    ----------
    [fao-56]

    Examples
    --------
    >>> round(angstrom_clearness_ratio(sunshine_frac=1492 / 4380), 4)
    0.4203
    """
    return ANGSTROM_A + ANGSTROM_B * sunshine_frac


def _season(latitude_deg: float) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Return declination and sunset hour angle of each day, in radians."""
    day = np.arange(1, DAYS + 1)
    delta = 0.409 * np.sin(2.0 * np.pi * day / DAYS - 1.39)
    cosine = -np.tan(np.radians(latitude_deg)) * np.tan(delta)
    return delta, np.arccos(np.clip(cosine, -1.0, 1.0))
