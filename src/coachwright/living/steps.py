"""A site as the kernel's steps take it: air, sky, vapour and the light on each plane in use."""

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import MONTH_OF_HOUR, Hours, SunPath, Weather
from coachwright.living.given_body import Body
from coachwright.living.glass_curve import mean_of_even_light_frac, share_at_frac
from coachwright.living.nodes import PlaneKey, glass_key, plane_key
from coachwright.living.vapour import humidity_ratio

_BEARINGS_DEG = np.arange(0.0, 360.0, 22.5)
_DARK_BELOW_DEG = -2.0
"""Of the sun's altitude; lights are on."""


class Light(Protocol):
    """The light on a plane, by where it comes from."""

    @property
    def beam_w_per_m2(self) -> Hours:
        """Straight from the sun."""

    @property
    def sky_w_per_m2(self) -> Hours:
        """From the sky."""

    @property
    def ground_w_per_m2(self) -> Hours:
        """From the ground."""


class Sky(Protocol):
    """What a site tells: `climate.arrays.SiteArrays` is one."""

    @property
    def weather(self) -> Weather:
        """The year's hours."""

    @property
    def path(self) -> SunPath:
        """Where the sun stands."""

    @property
    def sky_degc(self) -> Hours:
        """Of a black sky that radiates as the real one."""

    def plane(self, *, tilt_deg: float, bearing_deg: float | None) -> Light:
        """Return the light on a plane; None for the mean of all bearings."""

    def __hash__(self) -> int:
        """Tell the very same site from others, so that its steps can be kept."""


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class SiteSteps:
    """A site for one heading and set of planes; kept by the caller, as designs change.

    Attributes
    ----------
    lit
        The planes, in the order of the columns after the third.
    driving
        A row for each hour: air, sky, ground, then the light on each plane.
    humidity
        Vapour in a kilogram of dry air outside, kg.
    dark
        1 where lights are on.
    """

    lit: tuple[PlaneKey, ...]
    driving: NDArray[np.float64]
    humidity: Hours
    dark: Hours
    pressure_pa: float
    wind_m_per_s: float


def keys_of(body: Body) -> tuple[PlaneKey, ...]:
    """Return the planes of a body, each once, in the order in which its network names them."""
    keys = [
        plane_key(surface)
        for surface in body.surfaces
        if surface.outside == "air" and surface.plane.sunlit
    ]
    keys += [glass_key(window) for window in body.windows if window.plane.sunlit]
    return tuple(dict.fromkeys(keys))


def site_steps(*, body: Body, sky: Sky, heading_deg: float | None) -> SiteSteps:
    """Return a site's steps for the planes of a body.

    Parameters
    ----------
    body
        Whose planes count.
    sky
        The site.
    heading_deg
        Where the body heads, clockwise from north; None for the mean of all headings. [deg]

    Notes
    -----
    The light of an hour is even over its steps, so that its energy is kept.  Straight light goes
    through glass by its incidence, light of sky and ground by the curve's mean.  Ground: what the
    body tells, or the month's mean air.
    """
    weather = sky.weather
    air = weather.air_degc
    if body.ground_degc is None:
        monthly = np.bincount(MONTH_OF_HOUR, weights=air) / np.bincount(MONTH_OF_HOUR)
    else:
        monthly = np.array(body.ground_degc, dtype=np.float64)
    lit = keys_of(body)
    columns = [air, sky.sky_degc, monthly[MONTH_OF_HOUR]]
    columns += [_light(sky, key, heading_deg) for key in lit]
    return SiteSteps(
        lit=lit,
        driving=np.ascontiguousarray(np.column_stack(columns)),
        humidity=humidity_ratio(dew_degc=weather.dew_degc, pressure_pa=weather.pressure_pa),
        dark=np.where(sky.path.altitude_deg < _DARK_BELOW_DEG, 1.0, 0.0),
        pressure_pa=float(np.mean(weather.pressure_pa)),
        wind_m_per_s=float(np.mean(weather.wind_m_per_s)),
    )


def _light(sky: Sky, key: PlaneKey, heading_deg: float | None) -> Hours:
    kind, tilt_deg, bearing_deg, curve, even_frac = key
    level = np.isclose(np.sin(np.radians(tilt_deg)), 0.0, atol=1e-9)
    if kind == "whole":
        looks = None if heading_deg is None else (heading_deg + bearing_deg) % 360.0
        if looks is None and not level and tilt_deg != 90.0:  # noqa: PLR2004
            whole = [
                _whole(sky.plane(tilt_deg=tilt_deg, bearing_deg=float(each)))
                for each in _BEARINGS_DEG
            ]
            return np.asarray(np.mean(whole, axis=0))
        return _whole(sky.plane(tilt_deg=tilt_deg, bearing_deg=0.0 if level else looks))
    if even_frac < 0.0:
        even_frac = mean_of_even_light_frac(by_incidence_frac=curve)
    if level or heading_deg is not None:
        looks = 0.0 if heading_deg is None else (heading_deg + bearing_deg) % 360.0
        return _through(sky, tilt_deg, looks, curve, even_frac)
    turned = [_through(sky, tilt_deg, float(each), curve, even_frac) for each in _BEARINGS_DEG]
    return np.asarray(np.mean(turned, axis=0))


def _whole(light: Light) -> Hours:
    return light.beam_w_per_m2 + light.sky_w_per_m2 + light.ground_w_per_m2


def _through(
    sky: Sky,
    tilt_deg: float,
    bearing_deg: float,
    curve_frac: tuple[tuple[float, float], ...],
    even_frac: float,
) -> Hours:
    light = sky.plane(tilt_deg=tilt_deg, bearing_deg=bearing_deg)
    straight = np.maximum(sky.weather.dni_w_per_m2, 1e-9)
    share = share_at_frac(cosine=light.beam_w_per_m2 / straight, by_incidence_frac=curve_frac)
    even = light.sky_w_per_m2 + light.ground_w_per_m2
    return np.asarray(light.beam_w_per_m2 * share + even * even_frac)
