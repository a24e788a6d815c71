"""A site whose weather is told in one line, for what can be checked by hand."""

import numpy as np

from coachwright.climate.arrays import SiteArrays
from coachwright.climate.model import HOURS, Hours, Place, SunPath, Weather
from coachwright.model.site import SiteOrigin


def steady_sky(air_degc: Hours | float, dew_degc: float = -60.0, sun: bool = False) -> SiteArrays:
    """Return a windless site with a sky as warm as the air, and perhaps a sun that never sets."""
    air = np.full(HOURS, air_degc) if isinstance(air_degc, float) else air_degc
    none = np.zeros(HOURS)
    weather = Weather(
        title="steady",
        place=Place(latitude_deg=0.0, longitude_deg=0.0, altitude_m=0.0, zone_h=0.0),
        origin=SiteOrigin.SYNTHETIC,
        sun_min=30.0,
        ghi_w_per_m2=none + 500.0 * sun,
        dni_w_per_m2=none + 500.0 * sun,
        dhi_w_per_m2=none,
        air_degc=air,
        dew_degc=none + dew_degc,
        wind_m_per_s=none,
        pressure_pa=none + 101325.0,
    )
    path = SunPath(
        altitude_deg=none + (90.0 if sun else -30.0),
        azimuth_deg=none,
        extraterrestrial_w_per_m2=none + 1360.0,
    )
    return SiteArrays(weather=weather, path=path, cloud_frac=none, sky_degc=air)
