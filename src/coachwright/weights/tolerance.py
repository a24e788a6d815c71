"""How tolerances combine: independent parts in quadrature, common parts added first."""

import math
from collections.abc import Iterable, Sequence
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
    listed = tuple(deviations)
    for deviation in listed:
        if deviation.unit != unit:
            raise OutOfRange("deviations", deviation.unit, f"every deviation in {unit}")
    ties = tie(
        systematic_frac=[deviation.systematic_frac for deviation in listed],
        pools=[deviation.pool for deviation in listed],
    )
    return combine_tied(value=[deviation.value for deviation in listed], ties=ties, unit=unit)


@dataclass(frozen=True, kw_only=True, slots=True)
class Ties:
    """How the errors of many inputs hang together; the same for every result of theirs.

    Attributes
    ----------
    loose_frac
        Of each input, the share of its variance that is its own.
    common
        Of the inputs that err together with others: their place, the part that is common, and
        the number of their pool.
    """

    loose_frac: tuple[float, ...]
    common: tuple[tuple[int, float, int], ...]


def tie(*, systematic_frac: Sequence[float], pools: Sequence[str]) -> Ties:
    """Return how the errors of inputs hang together.

    Parameters
    ----------
    systematic_frac
        Of each input, the share that is common to its pool. [frac]
    pools
        Of each input, its pool; empty for none, then its share does not count.

    Returns
    -------
    Ties
        For `combine_tied`.

    Examples
    --------
    >>> tie(systematic_frac=[0.0, 0.6], pools=["", "steel"])
    Ties(loose_frac=(1.0, 0.64), common=((1, 0.6, 0),))
    """
    numbers: dict[str, int] = {}
    loose: list[float] = []
    common: list[tuple[int, float, int]] = []
    for place, (given_frac, pool) in enumerate(zip(systematic_frac, pools, strict=True)):
        share_frac = given_frac if pool else 0.0
        loose.append(1 - share_frac**2)
        if share_frac:
            common.append((place, share_frac, numbers.setdefault(pool, len(numbers))))
    return Ties(loose_frac=tuple(loose), common=tuple(common))


def combine_tied(*, value: Sequence[float], ties: Ties, unit: str) -> Combined:
    """Return what many tolerances do together, where their ties are known already.

    Parameters
    ----------
    value
        What each input's tolerance does to the result, in `unit`; signed.
    ties
        How the inputs' errors hang together.
    unit
        Of the result.

    Returns
    -------
    Combined
        As `combine` gives it.

    Notes
    -----
    T² = Σ (1 - s²)·t² + Σ_pools (Σ s·t)², as in `combine`.

    References
    ----------
    [jcgm-100]

    Examples
    --------
    >>> ties = tie(systematic_frac=[1.0, 1.0], pools=["steel", "steel"])
    >>> combine_tied(value=[3.0, 4.0], ties=ties, unit="kg").value
    7.0
    """
    squares = [loose_frac * one**2 for loose_frac, one in zip(ties.loose_frac, value, strict=True)]
    sums: dict[int, float] = {}
    for place, share_frac, pool in ties.common:
        sums[pool] = sums.get(pool, 0.0) + share_frac * value[place]
    squares.extend(common**2 for common in sums.values())
    half_width = math.sqrt(math.fsum(squares))
    return Combined(
        value=half_width, margin=half_width * ONE_SIDED_FACTOR / TWO_SIDED_FACTOR, unit=unit
    )
