"""What must be burned or drawn for a day's heat."""

from typing import Literal

from coachwright.errors import OutOfRange
from coachwright.water.properties import DIESEL_MJ_PER_L, PETROL_MJ_PER_L, PROPANE_MJ_PER_KG


def drawn_wh_per_day(*, heat_wh_per_day: float, efficiency_frac: float) -> float:
    """Return what must be put in for a day's heat [Wh/day].

    Parameters
    ----------
    heat_wh_per_day
        Heat that is wanted. [Wh/day]
    efficiency_frac
        Heat that arrives over what is put in: of a burner, or of an inverter on the way.

    Returns
    -------
    float
        E / η.

    Raises
    ------
    OutOfRange
        Where the efficiency is not within 0 to 1.

    Notes
    -----
    Steady efficiency.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> drawn_wh_per_day(heat_wh_per_day=900, efficiency_frac=0.9)
    1000.0
    """
    if not 0 < efficiency_frac <= 1:
        raise OutOfRange("efficiency_frac", efficiency_frac, "above 0, up to 1")
    return heat_wh_per_day / efficiency_frac


def gas_kg_per_day(*, burned_wh_per_day: float) -> float:
    """Return the propane that holds a heat [kg/day].

    Parameters
    ----------
    burned_wh_per_day
        Heat released, on the lower heating value. [Wh/day]

    Returns
    -------
    float
        E · 3.6 / 46 350.

    Notes
    -----
    Lower heating value 46.35 MJ/kg.

    References
    ----------
    [afdc-fuel-properties]

    Examples
    --------
    >>> round(gas_kg_per_day(burned_wh_per_day=12875), 3)
    1.0
    """
    return burned_wh_per_day * 3.6 / (1000 * PROPANE_MJ_PER_KG)


def fuel_l_per_day(*, burned_wh_per_day: float, fuel: Literal["diesel", "petrol"]) -> float:
    """Return the liquid fuel that holds a heat [L/day].

    Parameters
    ----------
    burned_wh_per_day
        Heat released, on the lower heating value. [Wh/day]
    fuel
        What is burned.

    Returns
    -------
    float
        E · 3.6 / (1000 · H).

    Notes
    -----
    Lower heating value: diesel 35.8 MJ/L (from memory), petrol 32.356 MJ/L.

    References
    ----------
    [afdc-fuel-properties]

    Examples
    --------
    >>> round(fuel_l_per_day(burned_wh_per_day=1000 / 0.83, fuel="diesel"), 4)
    0.1212
    """
    heat_mj_per_l = {"diesel": DIESEL_MJ_PER_L, "petrol": PETROL_MJ_PER_L}[fuel]
    return burned_wh_per_day * 3.6 / (1000 * heat_mj_per_l)
