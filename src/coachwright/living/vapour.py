"""Saturated vapour: the formulas, and the tables that the kernel looks them up in."""

import numpy as np
from numpy.typing import NDArray

Grid = NDArray[np.float64]

RATIO = 0.621945
"""Molar mass of water over that of dry air. [ashrae-psychrometrics]"""
LOW_DEGC = -60.0
HIGH_DEGC = 110.0
STEP_K = 0.5
"""Of the table of saturated vapour."""
LOW_KJ = -60.0
HIGH_KJ = 400.0
STEP_KJ = 0.5
"""Of the table of temperature by the enthalpy of saturated air."""
_KELVIN = 273.15
_OVER_ICE = (-5674.5359, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13)
_ICE_LOG = 4.1635019
_OVER_WATER = (-5800.2206, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8)
_WATER_LOG = 6.5459673


def saturated_pa(*, at_degc: Grid) -> Grid:
    """Return the pressure of saturated vapour [Pa].

    Parameters
    ----------
    at_degc
        Temperature. [degC]

    Notes
    -----
    Over ice below 0.01 °C, over water above; −100 to 200 °C.

    References
    ----------
    [ashrae-psychrometrics]

    Examples
    --------
    >>> saturated_pa(at_degc=np.array([-10.0, 20.0])).round(1).tolist()
    [259.9, 2338.8]
    """
    kelvin = np.asarray(at_degc, dtype=np.float64) + _KELVIN
    over_ice = sum(each * kelvin ** (power - 1) for power, each in enumerate(_OVER_ICE))
    over_water = sum(each * kelvin ** (power - 1) for power, each in enumerate(_OVER_WATER))
    ice = over_ice + _ICE_LOG * np.log(kelvin)
    water = over_water + _WATER_LOG * np.log(kelvin)
    return np.asarray(np.exp(np.where(kelvin < _KELVIN + 0.01, ice, water)))


def humidity_ratio(*, dew_degc: Grid, pressure_pa: Grid | float) -> Grid:
    """Return the vapour in a kilogram of dry air [kg].

    Parameters
    ----------
    dew_degc
        Dew point. [degC]
    pressure_pa
        Of the air. [Pa]

    Notes
    -----
    w = 0.621945 p_w / (p − p_w), p_w at most three quarters of p.

    References
    ----------
    [ashrae-psychrometrics]

    Examples
    --------
    >>> at = np.array([9.272])
    >>> round(float(humidity_ratio(dew_degc=at, pressure_pa=101325.0)[0]), 6)
    0.007262
    """
    vapour = np.minimum(saturated_pa(at_degc=dew_degc), 0.75 * np.asarray(pressure_pa))
    return np.asarray(RATIO * vapour / (pressure_pa - vapour))


def saturated_table(*, pressure_pa: float) -> Grid:
    """Return the vapour in a kilogram of dry saturated air, by half degrees from −60 °C [kg].

    Parameters
    ----------
    pressure_pa
        Of the air, mean of the year. [Pa]

    Notes
    -----
    `humidity_ratio` of saturated air.

    References
    ----------
    [ashrae-psychrometrics]

    Examples
    --------
    >>> float(saturated_table(pressure_pa=101325.0)[160].round(6))
    0.014695
    """
    at = np.arange(LOW_DEGC, HIGH_DEGC + STEP_K, STEP_K)
    return humidity_ratio(dew_degc=at, pressure_pa=pressure_pa)


def by_enthalpy_table(*, pressure_pa: float) -> Grid:
    """Return the temperature of saturated air by its enthalpy, by 0.5 kJ/kg from −60 [degC].

    Parameters
    ----------
    pressure_pa
        Of the air, mean of the year. [Pa]

    Notes
    -----
    h = 1.006 T + w (2501 + 1.86 T).

    References
    ----------
    [ashrae-psychrometrics]

    Examples
    --------
    >>> table = by_enthalpy_table(pressure_pa=101325.0)
    >>> round(float(table[round((57.5 - LOW_KJ) / STEP_KJ)]), 1)
    20.0
    """
    at = np.arange(-70.0, 90.0, 0.1)
    held = humidity_ratio(dew_degc=at, pressure_pa=pressure_pa)
    enthalpy = 1.006 * at + held * (2501.0 + 1.86 * at)
    wanted = np.arange(LOW_KJ, HIGH_KJ + STEP_KJ, STEP_KJ)
    return np.asarray(np.interp(wanted, enthalpy, at), dtype=np.float64)
