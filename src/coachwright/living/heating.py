"""Air heaters: fuel by output, what height takes, the draw of a start."""

from dataclasses import dataclass
from functools import cache
from math import log

from coachwright import reference
from coachwright.errors import OutOfRange, UnknownName

WH_PER_MJ = 1e6 / 3600.0
AIR_WH_PER_M3_K = 0.34
"""Heat of a cubic metre of air at sea level. [energy-balance]"""
MM_PER_KM = 1e6


@dataclass(frozen=True, kw_only=True, slots=True)
class FuelHeat:
    """Lower heating values of a fuel, and the water that it burns to."""

    heat_mj_per_l: float
    heat_mj_per_kg: float
    water_ratio: float

    @property
    def heat_wh_per_l(self) -> float:
        """Lower heating value of a litre [Wh]."""
        return self.heat_mj_per_l * WH_PER_MJ


@cache
def fuel_heat(fuel: str) -> FuelHeat:
    """Return the heating values of ``"diesel"``, ``"petrol"`` or ``"LPG"``.

    Raises
    ------
    UnknownName
        Where the table has no such fuel.

    Notes
    -----
    Lower heating values: the water leaves as vapour.

    References
    ----------
    [afdc-fuel-properties]

    Examples
    --------
    >>> fuel_heat("petrol").heat_mj_per_l
    32.356
    """
    rows = {row["fuel"]: row for row in reference.table("fuel_heat")}
    if fuel not in rows:
        raise UnknownName("fuel", fuel, sorted(rows))
    row = rows[fuel]
    return FuelHeat(
        heat_mj_per_l=float(row["heat_mj_per_l"]),
        heat_mj_per_kg=float(row["heat_mj_per_kg"]),
        water_ratio=float(row["water_kg_per_kg"]),
    )


def fuel_l_per_h(*, output_w: float, efficiency_frac: float, heat_mj_per_l: float) -> float:
    """Return the fuel that an output takes [L/h].

    Parameters
    ----------
    output_w
        Into the air. [W]
    efficiency_frac
        On the lower heating value.
    heat_mj_per_l
        Lower heating value. [MJ/L]

    Raises
    ------
    OutOfRange
        Where the efficiency is not above 0 and at most 1.

    Notes
    -----
    q = P / (η H).

    References
    ----------
    [energy-balance], [afdc-fuel-properties]

    Examples
    --------
    >>> round(fuel_l_per_h(output_w=2000, efficiency_frac=0.83, heat_mj_per_l=35.8), 4)
    0.2423
    """
    if not 0.0 < efficiency_frac <= 1.0:
        raise OutOfRange("efficiency_frac", efficiency_frac, "above 0 and at most 1")
    return output_w / (efficiency_frac * heat_mj_per_l * WH_PER_MJ)


def outlet_m3_per_h(*, output_w: float, share_frac: float, rise_k: float) -> float:
    """Return the air that a warm-air outlet blows at full output [m3/h].

    Parameters
    ----------
    output_w
        Of the air heater. [W]
    share_frac
        That the outlet takes.
    rise_k
        Of the air through the heater. [K]

    Raises
    ------
    OutOfRange
        Where the air does not get warmer.

    Notes
    -----
    q = s P / (0.34 ΔT): the share of the heat is the share of the air.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> round(outlet_m3_per_h(output_w=3800, share_frac=0.3, rise_k=70), 1)
    47.9
    """
    if rise_k <= 0.0:
        raise OutOfRange("rise_k", rise_k, "above 0")
    return share_frac * output_w / (AIR_WH_PER_M3_K * rise_k)


def high_loss_frac(*, altitude_mm: float, full_to_mm: float, loss_frac_per_km: float) -> float:
    """Return the share of a burner's output that height takes.

    Parameters
    ----------
    altitude_mm
        Of the place above the sea. [mm]
    full_to_mm
        Up to which it gives its full output. [mm]
    loss_frac_per_km
        Beyond that. [frac/km]

    Notes
    -----
    a (h − h_full), at most 0.9.  From memory: burners without a height kit run rich.

    Examples
    --------
    >>> round(high_loss_frac(altitude_mm=2e6, full_to_mm=0, loss_frac_per_km=0.1), 3)
    0.2
    """
    return min(0.9, max(0.0, altitude_mm - full_to_mm) / MM_PER_KM * loss_frac_per_km)


def heat_up_h(
    *, power_w: float, loss_w_per_k: float, held_wh_per_k: float, rise_k: float
) -> float | None:
    """Return the time in which steady power warms a body by a rise above outside [h].

    Parameters
    ----------
    power_w
        Of the heater. [W]
    loss_w_per_k
        Of the body, with its air. [W/K]
    held_wh_per_k
        That it holds. [Wh/K]
    rise_k
        Above the outside, from which it starts. [K]

    Returns
    -------
    float or None
        None where it never gets there.

    Notes
    -----
    t = C / H ln(P / (P − H ΔT)).  One node: the air warms sooner, the furniture later.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> found = heat_up_h(power_w=3000, loss_w_per_k=60, held_wh_per_k=250e3 / 3600, rise_k=35)
    >>> found is not None and round(found, 3)
    1.393
    """
    left = power_w - loss_w_per_k * rise_k
    if left <= 0.0:
        return None
    return held_wh_per_k / loss_w_per_k * log(power_w / left)
