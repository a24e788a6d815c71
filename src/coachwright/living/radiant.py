"""Long-wave radiation between the faces of a room, through one node."""

from collections.abc import Sequence

RADIANT_W_PER_M2K = 5.72
"""4 σ T³ at 20 degC. [iso-6946]"""
_ROUNDS = 60
_MOST_SHARE_FRAC = 0.95


def radiant_links_w_per_k(
    *, areas_m2: Sequence[float], emittances_frac: Sequence[float]
) -> list[float]:
    """Return the conductance of each face to the room's radiation node [W/K].

    Parameters
    ----------
    areas_m2
        Of the faces. [m2]
    emittances_frac
        Of the faces.

    Notes
    -----
    F_i = 1 / (1 − A_i F_i / Σ A F), by rounds;  G_i = A_i 4 σ T³ / ((1 − ε_i) / ε_i + 1 / F_i).
    For a room whose faces all see each other; a face that is nearly all of the room is counted as
    95 % of it.

    References
    ----------
    [carroll-1980]

    Examples
    --------
    Two large plates that face each other:

    >>> one, other = radiant_links_w_per_k(areas_m2=[1.0, 1.0], emittances_frac=[1.0, 1.0])
    >>> round(one * other / (one + other), 2)
    5.72
    """
    factors = [1.0] * len(areas_m2)
    for _ in range(_ROUNDS):
        whole = sum(area * factor for area, factor in zip(areas_m2, factors, strict=True))
        if whole <= 0.0:
            return [0.0] * len(factors)
        factors = [
            1.0 / (1.0 - min(area * factor / whole, _MOST_SHARE_FRAC))
            for area, factor in zip(areas_m2, factors, strict=True)
        ]
    return [
        area * RADIANT_W_PER_M2K / ((1.0 - emittance) / emittance + 1.0 / factor)
        if emittance > 0.0
        else 0.0
        for area, emittance, factor in zip(areas_m2, emittances_frac, factors, strict=True)
    ]
