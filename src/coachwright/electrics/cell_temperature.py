"""Temperature of the cells of a panel, by two published models."""

from math import exp
from typing import Literal

from coachwright import reference
from coachwright.errors import OutOfRange

FULL_SUN_W_PER_M2 = 1000.0
"""Irradiance of standard test conditions and of a peak-sun hour. [W/m2] [nrel-pvwatts]"""

RackName = Literal[
    "open rack glass-glass", "open rack glass-polymer", "insulated back glass-polymer"
]


def cell_degc(
    *, irradiance_w_per_m2: float, air_degc: float, wind_m_per_s: float, rack: RackName
) -> float:
    """Return the temperature of the cells of a panel [degC].

    Parameters
    ----------
    irradiance_w_per_m2
        On the panel. [W/m2]
    air_degc
        [degC]
    wind_m_per_s
        At 10 m height. [m/s]
    rack
        How it is mounted; a panel glued to the roof has an insulated back.

    Raises
    ------
    OutOfRange
        Where the mounting is not in the table.

    Notes
    -----
    T = T_air + G exp(a + b w) + G / 1000 · ΔT; for steady sun, coefficients by mounting.

    References
    ----------
    [sandia-sapm]

    Examples
    --------
    >>> round(cell_degc(irradiance_w_per_m2=1000, air_degc=30, wind_m_per_s=1,
    ...     rack="insulated back glass-polymer"), 3)
    87.527
    """
    for row in reference.table("pv_cell_temperature"):
        if row["mounting"] == rack:
            back = irradiance_w_per_m2 * exp(
                float(row["a"]) + float(row["b_s_per_m"]) * wind_m_per_s
            )
            rise = irradiance_w_per_m2 / FULL_SUN_W_PER_M2 * float(row["delta_k"])
            return air_degc + back + rise
    known = ", ".join(row["mounting"] for row in reference.table("pv_cell_temperature"))
    raise OutOfRange("rack", rack, known)


def heat_balance_cell_degc(
    *,
    irradiance_w_per_m2: float,
    air_degc: float,
    wind_m_per_s: float,
    constant_loss_w_per_k: float = 29.0,
    wind_loss_w_per_k: float = 0.0,
    efficiency_frac: float = 0.1,
    absorbed_frac: float = 0.9,
) -> float:
    """Return the temperature of the cells from a heat balance [degC].

    Parameters
    ----------
    irradiance_w_per_m2
        On the panel. [W/m2]
    air_degc
        [degC]
    wind_m_per_s
        [m/s]
    constant_loss_w_per_k
        Heat lost from one square metre for each kelvin. [W/K]
    wind_loss_w_per_k
        The same for each metre per second of wind. [W/K]
    efficiency_frac
        Share that becomes electricity.
    absorbed_frac
        Share of the light that is absorbed.

    Notes
    -----
    T = T_air + G α (1 − η) / (u_c + u_v w); the defaults are those of a free-standing panel.

    References
    ----------
    [pvsyst-temperature]

    Examples
    --------
    >>> round(heat_balance_cell_degc(irradiance_w_per_m2=900, air_degc=20, wind_m_per_s=5), 3)
    45.138
    """
    heat = irradiance_w_per_m2 * absorbed_frac * (1.0 - efficiency_frac)
    return air_degc + heat / (constant_loss_w_per_k + wind_loss_w_per_k * wind_m_per_s)
