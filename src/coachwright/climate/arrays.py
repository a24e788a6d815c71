"""Everything of a site that takes time to compute, once, in arrays that can be kept on disk."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import HOURS, Hours, Place, SunPath, Weather
from coachwright.climate.planes import PlaneLight, plane_light, wall_light
from coachwright.climate.sky import cloud_frac, sky_degc
from coachwright.climate.sun import clear_sky_w_per_m2, sun_path
from coachwright.errors import OutOfRange
from coachwright.model.site import SiteOrigin

FORM = 2
"""Of what is kept; another makes every site new."""
_TEXTS = ("title", "attribution", "caution")


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class SiteArrays:
    """A site as the coupled year takes it.

    Attributes
    ----------
    sky_degc
        Of a black sky that radiates as the real one.
    """

    weather: Weather
    path: SunPath
    cloud_frac: Hours
    sky_degc: Hours

    @property
    def roof(self) -> PlaneLight:
        """The light on a flat roof."""
        dhi = self.weather.dhi_w_per_m2
        return PlaneLight(
            beam_w_per_m2=np.maximum(self.weather.ghi_w_per_m2 - dhi, 0.0),
            sky_w_per_m2=np.minimum(dhi, self.weather.ghi_w_per_m2),
            ground_w_per_m2=np.zeros(HOURS),
        )

    def wall(self, wall: str, heading_deg: float | None) -> PlaneLight:
        """Return the light on a wall for a heading, or for the mean of all."""
        return wall_light(weather=self.weather, path=self.path, wall=wall, heading_deg=heading_deg)

    def plane(self, *, tilt_deg: float, bearing_deg: float | None) -> PlaneLight:
        """Return the light on a plane; None for the mean of one that looks anywhere."""
        return plane_light(
            weather=self.weather, path=self.path, tilt_deg=tilt_deg, bearing_deg=bearing_deg
        )


def site_arrays(*, weather: Weather) -> SiteArrays:
    """Return a site's arrays.

    Parameters
    ----------
    weather
        Its year.
    """
    path = sun_path(place=weather.place, sun_min=weather.sun_min)
    clear, _ = clear_sky_w_per_m2(place=weather.place, path=path, sun_min=weather.sun_min)
    cloud = cloud_frac(ghi=weather.ghi_w_per_m2, clear=clear)
    return SiteArrays(
        weather=weather,
        path=path,
        cloud_frac=cloud,
        sky_degc=sky_degc(air=weather.air_degc, dew=weather.dew_degc, cloud=cloud),
    )


def packed(arrays: SiteArrays) -> dict[str, NDArray[np.generic]]:
    """Return a site's arrays by name, to be kept; `unpacked` takes them back."""
    weather, path = arrays.weather, arrays.path
    place = weather.place
    numbers = (place.latitude_deg, place.longitude_deg, place.altitude_m, place.zone_h)
    said = [*(getattr(weather, name) for name in _TEXTS), weather.origin.value, *weather.repairs]
    return {
        **weather.columns,
        "form": np.array([FORM]),
        "place": np.array([*numbers, weather.sun_min]),
        "said": np.array(said),
        "altitude_deg": path.altitude_deg,
        "azimuth_deg": path.azimuth_deg,
        "extraterrestrial_w_per_m2": path.extraterrestrial_w_per_m2,
        "cloud_frac": arrays.cloud_frac,
        "sky_degc": arrays.sky_degc,
    }


def unpacked(kept: Mapping[str, NDArray[np.generic]]) -> SiteArrays:
    """Return a site's arrays as they were packed.

    Raises
    ------
    OutOfRange
        Where they are of another form or not whole.
    """
    try:
        form = int(kept["form"][0])
        if form != FORM:
            raise OutOfRange("form", form, f"{FORM}")
        return SiteArrays(
            weather=_weather(kept),
            path=SunPath(
                altitude_deg=_hours(kept, "altitude_deg"),
                azimuth_deg=_hours(kept, "azimuth_deg"),
                extraterrestrial_w_per_m2=_hours(kept, "extraterrestrial_w_per_m2"),
            ),
            cloud_frac=_hours(kept, "cloud_frac"),
            sky_degc=_hours(kept, "sky_degc"),
        )
    except (KeyError, ValueError, IndexError) as error:
        raise OutOfRange("kept", repr(error), "arrays as they were packed") from None


def _hours(kept: Mapping[str, NDArray[np.generic]], name: str) -> Hours:
    return np.asarray(kept[name], dtype=np.float64).reshape(HOURS)


def _weather(kept: Mapping[str, NDArray[np.generic]]) -> Weather:
    said = [str(each) for each in kept["said"]]
    latitude, longitude, altitude, zone, sun_min = (
        float(each) for each in np.asarray(kept["place"], dtype=np.float64)
    )
    return Weather(
        title=said[0],
        attribution=said[1],
        caution=said[2],
        origin=SiteOrigin(said[3]),
        repairs=tuple(said[4:]),
        place=Place(
            latitude_deg=latitude, longitude_deg=longitude, altitude_m=altitude, zone_h=zone
        ),
        sun_min=sun_min,
        ghi_w_per_m2=_hours(kept, "ghi_w_per_m2"),
        dni_w_per_m2=_hours(kept, "dni_w_per_m2"),
        dhi_w_per_m2=_hours(kept, "dhi_w_per_m2"),
        air_degc=_hours(kept, "air_degc"),
        dew_degc=_hours(kept, "dew_degc"),
        wind_m_per_s=_hours(kept, "wind_m_per_s"),
        pressure_pa=_hours(kept, "pressure_pa"),
    )
