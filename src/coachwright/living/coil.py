"""How far a cooling coil's enthalpy lies below the air's, from its sensible share when rated."""

import numpy as np

from coachwright.living.vapour import humidity_ratio

_RATED_DEGC = 26.67
_RATED_DEW_DEGC = 15.75
"""Of 26.67 degC with a wet bulb of 19.44 degC at sea level."""


def coil_span_kj_per_kg(*, sensible_frac: float) -> float:
    """Return the enthalpy between the rated air and the coil that it is drawn towards [kJ/kg].

    Parameters
    ----------
    sensible_frac
        Sensible share at the rating point; from 1 on the coil stays dry and 0 is returned.

    Notes
    -----
    The air goes along a straight line towards saturated air at the coil: share = c_p (T − T_coil)
    / (h − h_coil).  The warmest coil with that share is taken; where there is none, the one with
    the least share.  At other conditions the span grows with the capacity.

    References
    ----------
    [energyplus-coils]

    Examples
    --------
    >>> 12.0 < coil_span_kj_per_kg(sensible_frac=0.75) < 24.0
    True
    >>> coil_span_kj_per_kg(sensible_frac=1.0)
    0.0
    """
    if sensible_frac >= 1.0:
        return 0.0
    coil = np.arange(_RATED_DEW_DEGC - 0.05, -10.0, -0.05)
    inside = float(humidity_ratio(dew_degc=np.array([_RATED_DEW_DEGC]), pressure_pa=101325.0)[0])
    held = humidity_ratio(dew_degc=coil, pressure_pa=101325.0)
    air = 1.006 * _RATED_DEGC + inside * (2501.0 + 1.86 * _RATED_DEGC)
    span = air - (1.006 * coil + held * (2501.0 + 1.86 * coil))
    share = (1.006 + 1.86 * inside) * (_RATED_DEGC - coil) / span
    enough = np.flatnonzero(share <= sensible_frac)
    return float(span[enough[0] if len(enough) else int(np.argmin(share))])
