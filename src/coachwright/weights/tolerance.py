"""How tolerances combine: independent parts in quadrature, common parts added first."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from statistics import NormalDist

from coachwright.errors import OutOfRange

ONE_SIDED_FACTOR = NormalDist().inv_cdf(0.95)
"""Standard deviations from the mean to a one-sided 95 % bound: 1.645."""
TWO_SIDED_FACTOR = NormalDist().inv_cdf(0.975)
"""Standard deviations in the half-width of a two-sided 95 % band: 1.960."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Deviation:
    """What one tolerance does to a result.

    Attributes
    ----------
    value
        Sensitivity of the result times the half-width of the 95 % band of the input; signed; in
        `unit`.
    systematic_frac
        Share of it that is common to all of the same `pool`.
    pool
        Deviations whose systematic shares err together; empty for none.
    """

    value: float
    unit: str
    systematic_frac: float = 0.0
    pool: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Combined:
    """Deviations combined.

    Attributes
    ----------
    value
        Half-width of the two-sided 95 % band, in `unit`.
    margin
        Distance from the nominal value to a one-sided 95 % bound, in `unit`.
    """

    value: float
    margin: float
    unit: str


def combine(*, deviations: Iterable[Deviation], unit: str) -> Combined:
    """Return what many tolerances do together.

    Parameters
    ----------
    deviations
        Each already multiplied by the sensitivity of the result to its input.
    unit
        Of the result and of every deviation.

    Returns
    -------
    Combined
        Half-width of the two-sided 95 % band, and the distance of a one-sided 95 % bound.

    Raises
    ------
    OutOfRange
        Where a deviation is in another unit.

    Notes
    -----
    A half-width t with the systematic share s is split into a common part s·t and an independent
    part √(1 - s²)·t, so that alone it still has the half-width t.  Within a pool the common parts
    are added with their signs (correlation +1); pools and independent parts are then added in
    quadrature: T² = Σ (1 - s²)·t² + Σ_pools (Σ s·t)².  With normal deviations the one-sided 95 %
    bound lies at T · 1.645 / 1.960.

    References
    ----------
    [jcgm-100]

    Examples
    --------
    >>> parts = [Deviation(value=3.0, unit="kg"), Deviation(value=4.0, unit="kg")]
    >>> combine(deviations=parts, unit="kg").value
    5.0
    """
    pools: dict[str, float] = {}
    squares: list[float] = []
    for deviation in deviations:
        if deviation.unit != unit:
            raise OutOfRange("deviations", deviation.unit, f"every deviation in {unit}")
        share = deviation.systematic_frac if deviation.pool else 0.0
        squares.append((1 - share**2) * deviation.value**2)
        if share:
            pools[deviation.pool] = pools.get(deviation.pool, 0.0) + share * deviation.value
    squares.extend(common**2 for common in pools.values())
    half_width = math.sqrt(math.fsum(squares))
    return Combined(
        value=half_width, margin=half_width * ONE_SIDED_FACTOR / TWO_SIDED_FACTOR, unit=unit
    )
