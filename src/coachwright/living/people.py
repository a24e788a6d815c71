"""What people, pots and showers give off: heat, vapour, carbon dioxide."""

from bisect import bisect_left
from dataclasses import dataclass
from functools import cache

from coachwright import reference
from coachwright.errors import OutOfRange, UnknownName

SKIN_M2 = 1.8
"""Of a person, by DuBois for 1.7 m and 70 kg."""
MET_W_PER_M2 = 58.2
"""One met. [ashrae-people]"""
CO2_M3_PER_S_W = 3.82e-8
"""Carbon dioxide for each watt of metabolism. [energyplus-people]"""
LATENT_J_PER_G = 2450.0
CHILD_FRAC = 0.75
"""A child's heat over that of a man. [ashrae-people]"""
LEAST_MET_RATIO, MOST_MET_RATIO = 0.7, 1.2
J_PER_WH = 3600.0
J_PER_MJ = 1e6
BOILING_J_PER_KG = 2.256e6
"""Latent heat at 100 °C. [coolprop-water]"""
L_PER_M3 = 1000.0
S_PER_H = 3600.0


@dataclass(frozen=True, kw_only=True, slots=True)
class GivenOff:
    """What one person gives off."""

    sensible_w: float
    latent_g_per_h: float
    co2_l_per_h: float


def awake(*, room_degc: float, activity: str = "seated at rest") -> GivenOff:
    """Return what one adult who is awake gives off.

    Parameters
    ----------
    room_degc
        Of the air. [degC]
    activity
        A row of the table.

    Raises
    ------
    UnknownName
        Where the table has no such activity.

    Notes
    -----
    Linear between 20 and 26 °C; the ends hold beyond.  Vapour: latent heat over 2450 J/g.
    Carbon dioxide: 3.82e-8 m3/s for each watt of the whole heat.

    References
    ----------
    [jones-air-conditioning], [energyplus-people]

    Examples
    --------
    >>> awake(room_degc=24).sensible_w
    75.0
    """
    rows = _rows_w(activity)
    if not rows:
        known = sorted({row["activity"] for row in reference.table("people_heat")})
        raise UnknownName("activity", activity, known)
    total, share = _whole_w_and_sensible_frac(rows, room_degc)
    return _given_off(total, share)


def asleep(*, room_degc: float, met_ratio: float) -> GivenOff:
    """Return what one sleeping adult gives off.

    Parameters
    ----------
    room_degc
        Of the air. [degC]
    met_ratio
        Metabolic rate over that of one met.

    Raises
    ------
    OutOfRange
        Where the rate is not from 0.7 to 1.2.

    Notes
    -----
    M = met · 58.2 W/m2 · 1.8 m2, shared between sensible and latent as for one who is seated.
    The rate asleep is from memory; bedding, which warms the sleeper's own air, is left out.

    References
    ----------
    [persily-2017], [ashrae-people], [jones-air-conditioning], [energyplus-people]

    Examples
    --------
    >>> round(asleep(room_degc=16, met_ratio=0.95).co2_l_per_h, 1)
    13.7
    """
    if not LEAST_MET_RATIO <= met_ratio <= MOST_MET_RATIO:
        raise OutOfRange("met_ratio", met_ratio, f"from {LEAST_MET_RATIO:g} to {MOST_MET_RATIO:g}")
    _, share = _whole_w_and_sensible_frac(_rows_w("seated at rest"), room_degc)
    return _given_off(met_ratio * MET_W_PER_M2 * SKIN_M2, share)


def _given_off(total_w: float, sensible_frac: float) -> GivenOff:
    return GivenOff(
        sensible_w=total_w * sensible_frac,
        latent_g_per_h=total_w * (1.0 - sensible_frac) * J_PER_WH / LATENT_J_PER_G,
        co2_l_per_h=total_w * CO2_M3_PER_S_W * L_PER_M3 * S_PER_H,
    )


@cache
def _rows_w(activity: str) -> tuple[tuple[float, float, float], ...]:
    return tuple(
        (float(row["room_degc"]), float(row["total_w"]), float(row["sensible_w"]))
        for row in reference.table("people_heat")
        if row["activity"] == activity
    )


def _whole_w_and_sensible_frac(
    rows_w: tuple[tuple[float, float, float], ...], room_degc: float
) -> tuple[float, float]:
    """Return the whole heat [W] and its sensible share at a room's temperature."""
    degrees = [row[0] for row in rows_w]
    at = min(max(room_degc, degrees[0]), degrees[-1])
    index = max(bisect_left(degrees, at), 1)
    (low, total, sensible), (high, more, other) = rows_w[index - 1], rows_w[index]
    part = (at - low) / (high - low)
    whole = total + part * (more - total)
    return whole, (sensible + part * (other - sensible)) / whole


def sealed_rise_ppm(*, co2_l_per_h: float, air_m3: float, hours_h: float) -> float:
    """Return by how much carbon dioxide rises in a sealed room [ppm].

    Parameters
    ----------
    co2_l_per_h
        Of all people. [L/h]
    air_m3
        Of the room. [m3]
    hours_h
        For which it is sealed. [h]

    Notes
    -----
    Δc = 10³ G t / V.

    References
    ----------
    [energyplus-people]

    Examples
    --------
    >>> round(sealed_rise_ppm(co2_l_per_h=2 * 0.0039 * 3600, air_m3=12, hours_h=1))
    2340
    """
    return co2_l_per_h * hours_h / air_m3 * 1000.0


def burner_water_kg(*, burnt_wh: float, heat_mj_per_kg: float, water_ratio: float) -> float:
    """Return the water that an unflued burner gives to the room [kg].

    Parameters
    ----------
    burnt_wh
        By the lower heating value. [Wh]
    heat_mj_per_kg
        Lower heating value. [MJ/kg]
    water_ratio
        Kilograms for each kilogram burnt; propane 1.634 by stoichiometry.

    Notes
    -----
    m = E / H · w.

    References
    ----------
    [afdc-fuel-properties]

    Examples
    --------
    >>> round(burner_water_kg(burnt_wh=1000, heat_mj_per_kg=46.35, water_ratio=1.6342), 4)
    0.1269
    """
    return burnt_wh * J_PER_WH / (heat_mj_per_kg * J_PER_MJ) * water_ratio


def steam_kg(*, pot_wh: float, steam_frac: float) -> float:
    """Return the steam that pots give to the room [kg].

    Parameters
    ----------
    pot_wh
        Heat into the pots. [Wh]
    steam_frac
        Share of it that leaves as steam.

    Notes
    -----
    m = s E / 2.256 MJ/kg, the latent heat at 100 °C.

    References
    ----------
    [coolprop-water]

    Examples
    --------
    >>> round(steam_kg(pot_wh=700, steam_frac=0.25), 3)
    0.279
    """
    return pot_wh * steam_frac * J_PER_WH / BOILING_J_PER_KG
