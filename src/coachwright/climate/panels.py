"""The power of a flat panel hour by hour: incidence, cell temperature, shade, losses, clipping."""

from dataclasses import dataclass
from functools import cache
from math import prod

import numpy as np
from numpy.typing import NDArray

from coachwright import reference
from coachwright.climate.model import MONTH_OF_HOUR, Hours, SunPath, Weather
from coachwright.climate.shading import (
    ALTITUDES,
    BEARINGS,
    EIGHT_DEG,
    Mask,
    cells_of_sun,
    shade_of_hours,
    sky_weights,
)
from coachwright.errors import OutOfRange

FULL_SUN_W_PER_M2 = 1000.0
TEST_DEGC = 25.0
"""Standard test conditions. [nrel-pvwatts]"""
COATING_RATIO = 1.3
"""Refractive index of a coating against reflection. [nrel-pvwatts]"""
BONDED, FREE = "insulated back glass-polymer", "open rack glass-polymer"
"""How a panel is mounted: glued to the roof, or with air behind it. [sandia-sapm]"""


@dataclass(frozen=True, kw_only=True, slots=True)
class PanelSpec:
    """A flat panel.

    Attributes
    ----------
    bonded
        Glued to the roof, without air behind it.
    coated
        Its glass is coated against reflection.
    """

    rated_w: float
    coefficient_frac_per_k: float
    bonded: bool
    coated: bool = False


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class PanelYear:
    """A panel's year before its controller.

    Attributes
    ----------
    power_w
        In each hour, shade counted by area.
    least_w
        The same where each touched section of cells is lost whole.
    free_w
        Without shade.
    cell_degc
        Of its cells.
    """

    power_w: Hours
    least_w: Hours
    free_w: Hours
    cell_degc: Hours


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class SkyHours:
    """What each part of the sky is worth to a flat panel, in hours of its rated power.

    Attributes
    ----------
    cells_h
        For each month, bearing and altitude as in a mask; their sum is the panel's energy without
        shade over its rating.
    """

    cells_h: NDArray[np.float64]


def panel_year(
    *,
    weather: Weather,
    path: SunPath,
    panel: PanelSpec,
    loss_frac: float,
    made: Mask | None = None,
    heading_deg: float | None = 0.0,
) -> PanelYear:
    """Return a flat panel's power in each hour of a year.

    Parameters
    ----------
    weather
        The year.
    path
        Of the sun.
    panel
        What it is.
    loss_frac
        Soiling, wiring, mismatch and the like, combined.
    made
        Its mask, where something stands around it.
    heading_deg
        Where the vehicle heads, clockwise from north; None for the mean of eight headings. [deg]

    Notes
    -----
    P = P0 · (G_b i(θ) (1 − f) + G_d i_d (1 − f_d)) / 1000 · (1 + γ (T − 25)) · (1 − L): beam and
    sky with their own incidence (glass of index 1.526, after De Soto) and their own shade; cells
    warmed by all the light that falls on the unshaded panel.  Flat panels; no light from the
    ground; low-light efficiency as at full light, which says 6 % too much in a dark December.

    References
    ----------
    [nrel-pvwatts], [sandia-sapm], [desoto-2006], [pvlib], [nrel-pysam]
    """
    beam_in, sky_in, cells = _free(weather, path, panel, loss_frac)
    free = beam_in + sky_in
    if made is None:
        return PanelYear(power_w=free, least_w=free, free_w=free, cell_degc=cells)
    lit = np.flatnonzero(beam_in > 0.0)
    shade = shade_of_hours(
        made=made,
        azimuth_deg=path.azimuth_deg[lit],
        altitude_deg=path.altitude_deg[lit],
        heading_deg=heading_deg,
    )
    most, least = sky_in * (1.0 - made.sky_frac), sky_in * (1.0 - made.sky_frac)
    most[lit] += beam_in[lit] * (1.0 - shade.area_frac)
    least[lit] += beam_in[lit] * (1.0 - shade.string_frac)
    return PanelYear(power_w=most, least_w=least, free_w=free, cell_degc=cells)


def sky_hours(
    *,
    weather: Weather,
    path: SunPath,
    panel: PanelSpec,
    loss_frac: float,
    heading_deg: float | None = None,
) -> SkyHours:
    """Return what each part of the sky is worth to a flat panel.

    Parameters
    ----------
    weather
        The year.
    path
        Of the sun.
    panel
        What it is.
    loss_frac
        Soiling, wiring, mismatch and the like, combined.
    heading_deg
        Where the vehicle heads, clockwise from north; None for the mean of eight headings. [deg]

    Notes
    -----
    `panel_year` with shade by area, summed another way round: its beam of each hour falls from
    the four cells around the sun, its sky's light from all of them by sin h cos h.  The energy
    of a panel under a mask m is rating · Σ W (1 − m), to the rounding.
    """
    beam_in, sky_in, _ = _free(weather, path, panel, loss_frac)
    headings = EIGHT_DEG if heading_deg is None else (heading_deg,)
    cells_h = np.zeros(12 * BEARINGS * ALTITUDES)
    lit = np.flatnonzero(beam_in > 0.0)
    for heading in headings:
        cells, shares = cells_of_sun(
            azimuth_deg=path.azimuth_deg[lit],
            altitude_deg=path.altitude_deg[lit],
            heading_deg=heading,
        )
        cells_h += np.bincount(
            (cells + MONTH_OF_HOUR[lit] * BEARINGS * ALTITUDES).reshape(-1),
            weights=(shares * beam_in[lit]).reshape(-1),
            minlength=len(cells_h),
        )
    beam_h = cells_h.reshape(12, BEARINGS, ALTITUDES) / (len(headings) * panel.rated_w)
    sky_h = monthly_wh(power_w=sky_in) / panel.rated_w
    return SkyHours(cells_h=beam_h + sky_h[:, None, None] * sky_weights())


def _free(
    weather: Weather, path: SunPath, panel: PanelSpec, loss_frac: float
) -> tuple[Hours, Hours, Hours]:
    """Return a panel's power from the sun and from the sky without shade, and its cells' heat."""
    up = path.altitude_deg > 0.0
    sky = np.minimum(weather.dhi_w_per_m2, weather.ghi_w_per_m2)
    beam = np.where(up, weather.ghi_w_per_m2 - sky, 0.0)
    sky = np.where(up, sky, weather.ghi_w_per_m2)
    cells = cell_degc(
        light_w_per_m2=beam + sky,
        air=weather.air_degc,
        wind_m_per_s=weather.wind_m_per_s,
        mounting=BONDED if panel.bonded else FREE,
    )
    warm = np.maximum(1.0 + panel.coefficient_frac_per_k * (cells - TEST_DEGC), 0.0)
    rate = panel.rated_w / FULL_SUN_W_PER_M2 * warm * (1.0 - loss_frac)
    toward = incidence_frac(angle_deg=90.0 - path.altitude_deg, coated=panel.coated)
    return rate * beam * toward, rate * sky * _sky_incidence_ratio(panel.coated), cells


def cell_degc(*, light_w_per_m2: Hours, air: Hours, wind_m_per_s: Hours, mounting: str) -> Hours:
    """Return the temperature of a panel's cells in each hour [degC].

    Parameters
    ----------
    light_w_per_m2
        On the panel. [W/m2]
    air
        Temperature. [degC]
    wind_m_per_s
        At 10 m. [m/s]
    mounting
        `BONDED`, `FREE`, or another row of the table.

    Raises
    ------
    OutOfRange
        Where the mounting is not in the table.

    Notes
    -----
    T = T_air + G exp(a + b w) + G / 1000 · ΔT.

    References
    ----------
    [sandia-sapm]

    Examples
    --------
    >>> one = np.ones(1)
    >>> found = cell_degc(
    ...     light_w_per_m2=1000 * one, air=30 * one, wind_m_per_s=one, mounting=BONDED
    ... )
    >>> round(float(found[0]), 3)
    87.527
    """
    for row in reference.table("pv_cell_temperature"):
        if row["mounting"] == mounting:
            a, b, delta = (float(row[name]) for name in ("a", "b_s_per_m", "delta_k"))
            back = light_w_per_m2 * np.exp(a + b * wind_m_per_s)
            return np.asarray(air + back + light_w_per_m2 / FULL_SUN_W_PER_M2 * delta)
    known = ", ".join(row["mounting"] for row in reference.table("pv_cell_temperature"))
    raise OutOfRange("mounting", mounting, known)


def incidence_frac(*, angle_deg: Hours, coated: bool = False) -> Hours:
    """Return the share of the sun's light that passes a panel's glass, over that square to it.

    Parameters
    ----------
    angle_deg
        Between the sun and the panel's normal. [deg]
    coated
        Against reflection.

    Notes
    -----
    Snell and Bouguer for glass of index 1.526, 2 mm, 4 per metre; a coating has index 1.3.

    References
    ----------
    [desoto-2006], [pvlib]
    """
    from pvlib import iam  # noqa: PLC0415  # half a second that no check needs

    coating = COATING_RATIO if coated else None
    found = iam.physical(np.clip(angle_deg, 0.0, 90.0), n_ar=coating)
    return np.nan_to_num(np.asarray(found, dtype=np.float64))


def flat_loss_frac() -> float:
    """Return the losses of a flat array on a vehicle, without shade.

    Notes
    -----
    1 − Π (1 − L_i): soiling, mismatch, wiring, connections, first light, nameplate.

    References
    ----------
    [nrel-pvwatts]

    Examples
    --------
    >>> round(flat_loss_frac(), 8)
    0.08678564
    """
    rows = reference.table("pv_losses")
    return 1.0 - prod(1.0 - float(row["flat_vehicle_frac"]) for row in rows)


@cache
def _sky_incidence_ratio(coated: bool) -> float:  # a key of the cache
    """Return the same for the light of an even sky on a flat panel."""
    from pvlib import iam  # noqa: PLC0415

    coating = COATING_RATIO if coated else None
    return float(iam.marion_diffuse("physical", 0.0, n_ar=coating)["sky"])


def controlled_w(
    *, panels_w: Hours, efficiency_frac: float, limit_w: float
) -> tuple[Hours, Hours]:
    """Return what a controller gives and what it lets go in each hour [W].

    Parameters
    ----------
    panels_w
        Of all its panels. [W]
    efficiency_frac
        Of the controller.
    limit_w
        The most that it gives. [W]

    Notes
    -----
    P = min(P_panels η, P_limit); clipping is judged by the hour, within which broken clouds clip
    a little more.

    References
    ----------
    [nrel-pvwatts]

    Examples
    --------
    >>> given, lost = controlled_w(panels_w=np.array([500.0]), efficiency_frac=1.0, limit_w=400.0)
    >>> float(given[0]), float(lost[0])
    (400.0, 100.0)
    """
    offered = panels_w * efficiency_frac
    given = np.minimum(offered, limit_w)
    return given, offered - given


def monthly_wh(*, power_w: Hours) -> NDArray[np.float64]:
    """Return the energy of each month [Wh]."""
    return np.asarray(np.bincount(MONTH_OF_HOUR, weights=power_w, minlength=12))
