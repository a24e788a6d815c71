"""Days of independence as a distribution over every day of the year."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from coachwright.errors import OutOfRange
from coachwright.living.model import Stands

MONTH_DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
_DAYS = sum(MONTH_DAYS)


@dataclass(frozen=True, kw_only=True, slots=True)
class Distribution:
    """The stands begun in each month, and on every day of the year."""

    months: tuple[Stands, ...]
    whole_year: Stands


def stands_by_month(
    *, lasted_d: Sequence[float], water_d: float | None, followed_d: float
) -> Distribution:
    """Return the distribution of stands by the month in which they begin.

    Parameters
    ----------
    lasted_d
        Days that the stand begun on each day of the year lasted, `followed_d` at most. [d]
    water_d
        Days that the tanks last; None where nothing limits them. [d]
    followed_d
        How long a stand is followed. [d]

    Raises
    ------
    OutOfRange
        Where there are not 365 stands.

    Notes
    -----
    With the n stands in order, P_q is the one at place ⌊q n⌋, counted from 0: at least the share
    1 − q of them is no shorter.  Water is told apart: the days are those of the bank.

    References
    ----------
    [order-statistics]

    Examples
    --------
    >>> made = stands_by_month(lasted_d=[2.0] * 31 + [5.0] * 334, water_d=4.0, followed_d=21.0)
    >>> made.months[0].p10_d, made.whole_year.p10_d, made.months[1].water_limited_frac
    (2.0, 5.0, 1.0)
    """
    if len(lasted_d) != _DAYS:
        raise OutOfRange("lasted_d", f"{len(lasted_d)} stands", f"{_DAYS}")
    ends = tuple(accumulate(MONTH_DAYS))
    months = tuple(
        _stands(number, lasted_d[end - length : end], water_d, followed_d)
        for number, (end, length) in enumerate(zip(ends, MONTH_DAYS, strict=True), start=1)
    )
    return Distribution(months=months, whole_year=_stands(None, lasted_d, water_d, followed_d))


def _stands(
    month: int | None, lasted_d: Sequence[float], water_d: float | None, followed_d: float
) -> Stands:
    ordered = sorted(float(each) for each in lasted_d)
    count = len(ordered)
    dry = 0 if water_d is None else sum(water_d < each for each in ordered)
    return Stands(
        month=month,
        count=count,
        p10_d=ordered[count // 10],
        p50_d=ordered[count // 2],
        p90_d=ordered[9 * count // 10],
        longest_frac=sum(each >= followed_d for each in ordered) / count,
        water_limited_frac=dry / count,
        followed_d=followed_d,
    )
