"""How cold the sky is that the roof looks at."""

import numpy as np

from coachwright.climate.model import HOURS, Hours

KELVIN_K = 273.15
_LIT_W_PER_M2 = 50.0
"""Clear skies dimmer than this tell nothing of clouds."""


def cloud_frac(*, ghi: Hours, clear: Hours) -> Hours:
    """Return the share of the sky that clouds cover.

    Parameters
    ----------
    ghi
        Light on a flat roof. [W/m2]
    clear
        The same under a clear sky. [W/m2]

    Notes
    -----
    G / G_clear = 1 − 0.75 (N/8)^3.4, turned round; by night along a straight line from dusk to
    dawn.

    References
    ----------
    [kasten-czeplak-1980]

    Examples
    --------
    >>> day = np.full(8760, 800.0)
    >>> [round(float(cloud_frac(ghi=share * day, clear=day)[0]), 3) for share in (1.0, 0.625, 0.2)]
    [0.0, 0.816, 1.0]
    """
    lit = clear > _LIT_W_PER_M2
    if not lit.any():
        return np.full(HOURS, 0.5)
    share = np.clip((1.0 - ghi[lit] / clear[lit]) / 0.75, 0.0, 1.0) ** (1.0 / 3.4)
    return np.interp(np.arange(HOURS), np.flatnonzero(lit), share, period=float(HOURS))


def sky_degc(*, air: Hours, dew: Hours, cloud: Hours) -> Hours:
    """Return the temperature of a black sky that radiates as the real one [degC].

    Parameters
    ----------
    air
        Temperature. [degC]
    dew
        Dew point. [degC]
    cloud
        Share of the sky that clouds cover.

    Notes
    -----
    T_sky = T_air ε^0.25 with ε = (0.787 + 0.764 ln(T_dew / 273)) (1 + 0.0224 N − 0.0035 N² +
    0.00028 N³), N in tenths; for open horizons.

    References
    ----------
    [walton-1983]

    Examples
    --------
    >>> at = np.array([20.0])
    >>> round(float(sky_degc(air=at, dew=at - 10.0, cloud=at * 0.0)[0]), 1)
    5.4
    """
    tenths = 10.0 * cloud
    clear = 0.787 + 0.764 * np.log((dew + KELVIN_K) / 273.0)
    held = clear * (1.0 + 0.0224 * tenths - 0.0035 * tenths**2 + 0.00028 * tenths**3)
    return np.asarray((air + KELVIN_K) * np.clip(held, 0.3, 1.0) ** 0.25 - KELVIN_K)
