"""How much less goes through a pane when light falls on it aslant."""

import numpy as np
from numpy.typing import NDArray

CLEAR_FRAC = (
    (0.0, 1.0),
    (10.0, 0.9997),
    (20.0, 0.9985),
    (30.0, 0.995),
    (40.0, 0.9862),
    (50.0, 0.9642),
    (60.0, 0.9105),
    (70.0, 0.7809),
    (80.0, 0.4892),
    (90.0, 0.0),
)
"""Gain of a clear pane by incidence, as a share of that at straight incidence: both polarisations
at two faces of refraction 1.526, extinction 0.0196/mm through 3 mm, and 27 % of what the pane
takes in. [duffie-beckman]"""


DOUBLE_FRAC = (
    (0.0, 1.0),
    (10.0, 0.9995),
    (20.0, 0.9977),
    (30.0, 0.9931),
    (40.0, 0.9818),
    (50.0, 0.954),
    (60.0, 0.8823),
    (70.0, 0.702),
    (80.0, 0.356),
    (90.0, 0.0),
)
"""The same for two such panes, with 12 % of what the outer one takes in and 64 % of the inner's.
[duffie-beckman]"""


def share_at_frac(
    *, cosine: NDArray[np.float64], by_incidence_frac: tuple[tuple[float, float], ...]
) -> NDArray[np.float64]:
    """Return the gain of light as a share of that at straight incidence.

    Parameters
    ----------
    cosine
        Of the incidence.
    by_incidence_frac
        Pairs of incidence in degrees and share; empty for a clear pane.

    Notes
    -----
    Straight lines between the pairs; nothing beyond 90°.

    References
    ----------
    [duffie-beckman]

    Examples
    --------
    >>> float(share_at_frac(cosine=np.array([1.0, 0.5]), by_incidence_frac=())[1].round(2))
    0.91
    """
    pairs = by_incidence_frac or CLEAR_FRAC
    angles = np.degrees(np.arccos(np.clip(cosine, 0.0, 1.0)))
    known, shares = (np.array(each) for each in zip(*pairs, strict=True))
    return np.where(cosine > 0.0, np.interp(angles, known, shares), 0.0)


def mean_of_even_light_frac(*, by_incidence_frac: tuple[tuple[float, float], ...]) -> float:
    """Return the gain of light that comes evenly from the half-space before a pane.

    Parameters
    ----------
    by_incidence_frac
        Pairs of incidence in degrees and share; empty for a clear pane.

    Notes
    -----
    2 ∫ f(θ) cos θ sin θ dθ from 0 to 90°, by 900 strips.

    References
    ----------
    [duffie-beckman]

    Examples
    --------
    >>> round(mean_of_even_light_frac(by_incidence_frac=()), 2)
    0.91
    >>> round(mean_of_even_light_frac(by_incidence_frac=((0.0, 1.0), (90.0, 1.0))), 4)
    1.0
    """
    angles = np.radians((np.arange(900) + 0.5) / 10.0)
    share = share_at_frac(cosine=np.cos(angles), by_incidence_frac=by_incidence_frac)
    return float(np.sum(share * np.sin(2.0 * angles)) * np.pi / 2.0 / 900.0)
