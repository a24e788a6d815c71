"""A synthetic year for a place of which only monthly temperature and yearly sunshine are known."""

from dataclasses import dataclass

import numpy as np

from coachwright.climate import air as air_of
from coachwright.climate.clearness import (
    daily_clear_frac,
    hourly_light_w_per_m2,
    monthly_clearness_ratio,
    monthly_sum,
)
from coachwright.climate.model import DAYS, HOURS, Hours, Place, SunPath, Weather
from coachwright.climate.sun import (
    clear_sky_w_per_m2,
    day_length_h,
    extraterrestrial_wh_per_m2_day,
    stamps,
    sun_path,
)
from coachwright.errors import OutOfRange
from coachwright.model.site import SiteOrigin

YEAR_DAYLIGHT_H = 4380.0
"""Hours of daylight in a year, everywhere. [h] [fao-56]"""
MOST_DNI_FACTOR = 1.1
"""The sun alone is at most this much over a clear sky's."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Normals:
    """What is known of a place.

    Attributes
    ----------
    monthly_degc
        Mean temperature of each month.
    sunshine_h
        In a year.
    """

    monthly_degc: tuple[float, ...]
    sunshine_h: float


def synthetic_year(
    *,
    title: str,
    place: Place,
    normals: Normals,
    seed: int,
    attribution: str = "",
    caution: str = "",
) -> Weather:
    """Return a synthetic year.

    Parameters
    ----------
    title
        Of the place.
    place
        Where on the earth.
    normals
        What is known of it.
    seed
        Of chance: the same gives the same year.
    attribution
        Who must be named.
    caution
        How far such years were off where it could be checked.

    Notes
    -----
    Monthly light after Ångström and Prescott (`clearness.monthly_clearness_ratio`), days after
    Bendt, hours after Graham and Hollands, split into sun and sky after Erbs; temperature, dew
    point and wind as in `air`.  Yearly light is Ångström's, monthly temperature the table's.
    Storms, cold spells that clear the sky, and anything else that ties days' sun to their
    temperature beyond the daily swing are left out.

    References
    ----------
    [fao-56], [bendt-1981], [graham-hollands-1990], [erbs-1982], [climate-fit]
    """
    sunshine_frac = normals.sunshine_h / YEAR_DAYLIGHT_H
    if not 0.0 < sunshine_frac < 1.0:
        raise OutOfRange("sunshine_h", normals.sunshine_h, "more than 0 h and less than 4380 h")
    chance = np.random.default_rng(seed)
    path = sun_path(place=place, sun_min=30.0)
    above = extraterrestrial_wh_per_m2_day(latitude_deg=place.latitude_deg)
    ghi, dni, dhi = _light(place, path, sunshine_frac, above, chance)
    monthly = np.asarray(normals.monthly_degc)
    day = ghi.reshape(DAYS, 24).sum(axis=1)
    clearness = np.full(DAYS, np.nan)
    lit = above > 300.0  # noqa: PLR2004  # weaker days tell nothing of the swing
    clearness[lit] = day[lit] / above[lit]
    degc = air_of.hourly_air_degc(
        monthly_degc=monthly,
        clearness_ratio=clearness,
        day_h=day_length_h(latitude_deg=place.latitude_deg),
        noon_h=12.0 + place.zone_h - place.longitude_deg / 15.0,
        chance=chance,
    )
    return Weather(
        title=title,
        place=place,
        origin=SiteOrigin.SYNTHETIC,
        sun_min=30.0,
        ghi_w_per_m2=ghi,
        dni_w_per_m2=dni,
        dhi_w_per_m2=dhi,
        air_degc=degc,
        dew_degc=air_of.dew_degc(air=degc, sunshine_frac=sunshine_frac),
        wind_m_per_s=air_of.wind_m_per_s(chance=chance),
        pressure_pa=np.full(HOURS, air_of.standard_pressure_pa(altitude_m=place.altitude_m)),
        attribution=attribution,
        caution=caution,
    )


def split_light(
    *, ghi: Hours, path: SunPath, clear_dni: Hours, zone_h: float, sun_min: float = 30.0
) -> tuple[Hours, Hours]:
    """Return the light of the sun alone and of the sky alone [W/m2].

    Parameters
    ----------
    ghi
        On a flat roof. [W/m2]
    path
        Of the sun.
    clear_dni
        Of the sun alone through a clear sky. [W/m2]
    zone_h
        Standard time ahead of universal time. [h]
    sun_min
        Minute of each hour. [min]

    Notes
    -----
    Share of the sky by clearness after Erbs; the sun alone at most 1.1 of a clear sky's; sun and
    sky add up to the whole.

    References
    ----------
    [erbs-1982], [pvlib]
    """
    from pvlib import irradiance  # noqa: PLC0415  # half a second that no check needs

    zenith = 90.0 - path.altitude_deg
    found = irradiance.erbs(ghi, zenith, stamps(zone_h=zone_h, sun_min=sun_min))
    dni = np.minimum(np.nan_to_num(np.asarray(found["dni"])), MOST_DNI_FACTOR * clear_dni)
    upright = np.maximum(np.sin(np.radians(path.altitude_deg)), 0.0)
    dhi = np.maximum(ghi - dni * upright, 0.0)
    return np.asarray(dni), np.asarray(dhi)


def _light(
    place: Place,
    path: SunPath,
    sunshine_frac: float,
    above: Hours,
    chance: np.random.Generator,
) -> tuple[Hours, Hours, Hours]:
    clear, clear_dni = clear_sky_w_per_m2(place=place, path=path)
    ratio = monthly_clearness_ratio(
        latitude_deg=place.latitude_deg, sunshine_frac=sunshine_frac, above_wh_per_m2_day=above
    )
    daily = daily_clear_frac(
        wanted_wh_per_m2=ratio * monthly_sum(above),
        clear_wh_per_m2_day=clear.reshape(DAYS, 24).sum(axis=1),
        chance=chance,
    )
    ghi = hourly_light_w_per_m2(daily_frac=daily, clear_w_per_m2=clear, chance=chance)
    dni, dhi = split_light(ghi=ghi, path=path, clear_dni=clear_dni, zone_h=place.zone_h)
    return ghi, dni, dhi
