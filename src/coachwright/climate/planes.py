"""The light on the planes of a vehicle: roof and walls, for a heading or the mean of all."""

from dataclasses import dataclass

import numpy as np

from coachwright.climate.model import Hours, SunPath, Weather

WALLS_DEG = {"front": 0.0, "right": 90.0, "rear": 180.0, "left": 270.0}
"""Where each wall looks, clockwise from where the vehicle heads."""
ALBEDO_FRAC = 0.2
"""Share of the light that open ground throws back. [shop-practice-climate]"""
LOWEST_SINE = 0.01745
"""The sun is taken as at least 1° high where the light around it is turned. [pvlib]"""


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class PlaneLight:
    """The light on a plane, by where it comes from.

    Attributes
    ----------
    beam_w_per_m2, sky_w_per_m2, ground_w_per_m2
        Straight from the sun; from the sky, with the brighter sky around the sun; from the ground.
    """

    beam_w_per_m2: Hours
    sky_w_per_m2: Hours
    ground_w_per_m2: Hours

    @property
    def whole_w_per_m2(self) -> Hours:
        """All of it."""
        return self.beam_w_per_m2 + self.sky_w_per_m2 + self.ground_w_per_m2


def plane_light(
    *,
    weather: Weather,
    path: SunPath,
    tilt_deg: float,
    bearing_deg: float | None,
    albedo_frac: float = ALBEDO_FRAC,
) -> PlaneLight:
    """Return the light on a plane.

    Parameters
    ----------
    weather
        The year.
    path
        Of the sun, at the weather's place and minute.
    tilt_deg
        From the horizontal; a roof has 0, a wall 90. [deg]
    bearing_deg
        Where the plane looks, clockwise from north; None for the mean of an upright plane that
        looks anywhere. [deg]
    albedo_frac
        Of the ground around.

    Notes
    -----
    cos θ = cos β sin h + sin β cos h cos(a − γ), nothing from behind; for the mean of all
    bearings cos h / π.  Sun DNI cos θ; sky after Hay and Davies, DHI (A cos θ / sin h + (1 − A)
    (1 + cos β) / 2) with A = DNI over that above the air; ground GHI ρ (1 − cos β) / 2.  Even,
    unshaded ground and no hills; the light of the sun falls while its middle is up.

    References
    ----------
    [hay-davies-1980], [pvlib]
    """
    height, tilt = np.radians(path.altitude_deg), np.radians(tilt_deg)
    if bearing_deg is None:
        toward = np.cos(height) / np.pi
    else:
        around = np.radians(path.azimuth_deg - bearing_deg)
        slope = np.sin(tilt) * np.cos(height) * np.cos(around)
        toward = np.maximum(np.cos(tilt) * np.sin(height) + slope, 0.0)
    dni = np.where(path.altitude_deg > 0.0, weather.dni_w_per_m2, 0.0)
    clear = dni / path.extraterrestrial_w_per_m2
    turned = toward / np.maximum(np.sin(height), LOWEST_SINE)
    even = (1.0 - clear) * (1.0 + np.cos(tilt)) / 2.0
    return PlaneLight(
        beam_w_per_m2=dni * toward,
        sky_w_per_m2=weather.dhi_w_per_m2 * (clear * turned + even),
        ground_w_per_m2=weather.ghi_w_per_m2 * albedo_frac * (1.0 - np.cos(tilt)) / 2.0,
    )


def wall_light(
    *, weather: Weather, path: SunPath, wall: str, heading_deg: float | None
) -> PlaneLight:
    """Return the light on a wall of a parked vehicle.

    Parameters
    ----------
    weather
        The year.
    path
        Of the sun.
    wall
        "front", "right", "rear" or "left".
    heading_deg
        Where the vehicle heads, clockwise from north; None for the mean of all headings. [deg]
    """
    bearing = None if heading_deg is None else (heading_deg + WALLS_DEG[wall]) % 360.0
    return plane_light(weather=weather, path=path, tilt_deg=90.0, bearing_deg=bearing)
