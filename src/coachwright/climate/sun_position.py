"""Where the sun stands in every hour of a year: what moves slowly is found once a day."""

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import DAYS, Hours

AHEAD_S = 67.0
"""Terrestrial time ahead of universal time. [pvlib]"""
AIR_DEGC = 12.0
"""Of the air that bends the light. [pvlib]"""
HORIZON_DEG = 0.5667
"""Bending of the light at the horizon. [nrel-spa]"""
BESIDE = 5
"""Days before and after an hour through which the slow terms are laid."""
_DAY_S, _HOUR_S = 86400.0, 3600.0


def sun_angles_deg(
    *,
    start_s: float,
    latitude_deg: float,
    longitude_deg: float,
    altitude_m: float,
    pressure_pa: float,
) -> tuple[Hours, Hours]:
    """Return the sun's height as seen through the air, and its azimuth, in each hour [deg].

    Parameters
    ----------
    start_s
        First moment, since 1970 in universal time. [s]
    latitude_deg, longitude_deg
        North and east are positive. [deg]
    altitude_m
        Of the place. [m]
    pressure_pa
        Of its air. [Pa]

    Notes
    -----
    Solar Position Algorithm.  Right ascension, declination, distance and nutation, nine tenths of
    its time, are found at the same time of every day and laid through ten days by a polynomial;
    rotation, parallax and refraction hour by hour.  Within 1e-8° of the algorithm along the sky.

    References
    ----------
    [nrel-spa], [pvlib]
    """
    from pvlib import spa  # noqa: PLC0415  # half a second that no check needs

    days_s = start_s + _DAY_S * np.arange(1.0 - BESIDE, DAYS + BESIDE)
    ascension, declination, radius, turned = (_hourly(each) for each in _slow(days_s))
    day = spa.julian_day(start_s + _HOUR_S * np.arange(24.0 * DAYS))
    sidereal = spa.mean_sidereal_time(day, spa.julian_century(day)) + turned
    around = spa.local_hour_angle(sidereal, longitude_deg, ascension)
    parallax = spa.equatorial_horizontal_parallax(radius)
    u = spa.uterm(latitude_deg)
    x, y = spa.xterm(u, latitude_deg, altitude_m), spa.yterm(u, latitude_deg, altitude_m)
    shift = spa.parallax_sun_right_ascension(x, parallax, around, declination)
    seen = spa.topocentric_sun_declination(declination, x, y, parallax, shift, around)
    hour = spa.topocentric_local_hour_angle(around, shift)
    bare = spa.topocentric_elevation_angle_without_atmosphere(latitude_deg, seen, hour)
    bent = spa.atmospheric_refraction_correction(pressure_pa / 100.0, AIR_DEGC, bare, HORIZON_DEG)
    azimuth = spa.topocentric_azimuth_angle(
        spa.topocentric_astronomers_azimuth(hour, seen, latitude_deg)
    )
    return np.asarray(spa.topocentric_elevation_angle(bare, bent)), np.asarray(azimuth)


def _slow(days_s: NDArray[np.float64]) -> list[NDArray[np.float64]]:
    """Return right ascension, declination, distance, and what nutation turns the sky by."""
    from pvlib import spa  # noqa: PLC0415

    day = spa.julian_day(days_s)
    century = spa.julian_ephemeris_century(spa.julian_ephemeris_day(day, AHEAD_S))
    millennium = spa.julian_ephemeris_millennium(century)
    radius = spa.heliocentric_radius_vector(millennium)
    longitude = spa.geocentric_longitude(spa.heliocentric_longitude(millennium))
    latitude = spa.geocentric_latitude(spa.heliocentric_latitude(millennium))
    nutation = np.empty((2, len(century)))
    spa.longitude_obliquity_nutation(
        century,
        spa.mean_elongation(century),
        spa.mean_anomaly_sun(century),
        spa.mean_anomaly_moon(century),
        spa.moon_argument_latitude(century),
        spa.moon_ascending_longitude(century),
        nutation,
    )
    tilt = spa.true_ecliptic_obliquity(spa.mean_ecliptic_obliquity(millennium), nutation[1])
    apparent = spa.apparent_sun_longitude(
        longitude, nutation[0], spa.aberration_correction(radius)
    )
    ascension = spa.geocentric_sun_right_ascension(apparent, tilt, latitude)
    return [
        np.unwrap(ascension, period=360.0),
        spa.geocentric_sun_declination(apparent, tilt, latitude),
        radius,
        nutation[0] * np.cos(np.radians(tilt)),
    ]


def _hourly(days: NDArray[np.float64]) -> Hours:
    """Return the hours between days along the polynomial through as many before as after."""
    share = np.arange(24.0) / 24.0
    nodes = np.arange(1.0 - BESIDE, BESIDE + 1.0)
    weights = np.ones((len(nodes), 24))
    for at, node in enumerate(nodes):
        for other in np.delete(nodes, at):
            weights[at] *= (share - other) / (node - other)
    around = np.lib.stride_tricks.sliding_window_view(days, len(nodes))
    return np.asarray(around @ weights).reshape(-1)
