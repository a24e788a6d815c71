"""How many people a dimension suits."""

from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from statistics import NormalDist
from typing import NamedTuple

from coachwright import reference
from coachwright.errors import UnknownName

PERCENTILES: tuple[tuple[str, float], ...] = (
    ("p1", 0.01),
    ("p2.5", 0.025),
    ("p5", 0.05),
    ("p10", 0.10),
    ("p25", 0.25),
    ("p50", 0.50),
    ("p75", 0.75),
    ("p90", 0.90),
    ("p95", 0.95),
    ("p97.5", 0.975),
    ("p99", 0.99),
)
"""Columns of the table and the share of people at or below them."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Suits:
    """Share of men and of women whose body dimension is at most a length.

    Attributes
    ----------
    men_frac, women_frac
        Beyond the table's 1st and 99th percentile the last step of it is carried on.
    """

    men_frac: float
    women_frac: float


def suits_up_to(*, dimension: str, length_mm: float) -> Suits:
    """Return the share of men and of women whose dimension is at most a length.

    Parameters
    ----------
    dimension
        Such as ``"stature"``; a name of the table.
    length_mm
        What there is room for. [mm]

    Raises
    ------
    UnknownName
        Where the table has no such dimension.

    Notes
    -----
    Linear in the normal score between the 11 percentiles of the survey, which is within 0.6
    percentage points of the survey's own count.  Soldiers are fitter than civilians;
    add for girth.

    References
    ----------
    [ansur-ii-2012]

    Examples
    --------
    >>> found = suits_up_to(dimension="stature", length_mm=1870.0)
    >>> round(found.men_frac, 3), round(found.women_frac, 3)
    (0.95, 1.0)
    """
    men, women = (_percentiles(dimension, sex) for sex in ("men", "women"))
    return Suits(men_frac=_share_frac(men, length_mm), women_frac=_share_frac(women, length_mm))


def percentile_mm(*, dimension: str, sex: str, percentile: str) -> float:
    """Return one percentile of a body dimension. [mm].

    Parameters
    ----------
    dimension
        A name of the table.
    sex
        ``"men"`` or ``"women"``.
    percentile
        A column of the table, such as ``"p95"``.

    Raises
    ------
    UnknownName
        Where the table has no such dimension or percentile.

    Notes
    -----
    As counted in the survey; body mass is in its own unit and has no place here.

    References
    ----------
    [ansur-ii-2012]

    Examples
    --------
    >>> percentile_mm(dimension="sitting height", sex="men", percentile="p95")
    977.0
    """
    shares = dict(PERCENTILES)
    if percentile not in shares:
        raise UnknownName("percentile", percentile, shares)
    by_share = {share: value for value, share in _percentiles(dimension, sex)}
    return by_share[shares[percentile]]


class _Point(NamedTuple):
    """A percentile of a body dimension."""

    value_mm: float
    share_frac: float


@cache
def _percentiles(dimension: str, sex: str) -> tuple[_Point, ...]:
    rows = reference.table("anthropometry")
    for row in rows:
        if row["dimension"] == dimension and row["sex"] == sex:
            return tuple(_Point(float(row[column]), share) for column, share in PERCENTILES)
    known = sorted({row["dimension"] for row in rows})
    raise UnknownName("body dimension", f"{dimension} of {sex}", known)


def _share_frac(points: tuple[_Point, ...], value_mm: float) -> float:
    normal = NormalDist()
    steps = list(pairwise(points))
    (low_mm, low_frac), (high_mm, high_frac) = next(
        (step for step in steps if value_mm <= step[1][0]), steps[-1]
    )
    low_score, high_score = normal.inv_cdf(low_frac), normal.inv_cdf(high_frac)
    along_frac = (value_mm - low_mm) / (high_mm - low_mm)
    return normal.cdf(low_score + along_frac * (high_score - low_score))
