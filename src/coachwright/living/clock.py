"""A day in steps: when something is, and energy laid over such a shape."""

from collections.abc import Sequence
from functools import cache

from coachwright.errors import OutOfRange
from coachwright.living.given import STEPS_PER_DAY

DAY_H = 24.0
STEP_H = DAY_H / STEPS_PER_DAY
MIN_PER_H = 60.0
_CLOSE_H = 1e-9


def clock_h(text: str) -> float:
    """Return a time of the day such as ``"22:30"`` in hours from midnight [h].

    Examples
    --------
    >>> clock_h("22:30")
    22.5
    """
    hours, _, minutes = text.partition(":")
    return float(hours) + float(minutes) / MIN_PER_H


@cache
def shape_frac(*, from_h: float, lasts_h: float) -> tuple[float, ...]:
    """Return the share of each step of a day in which something is.

    Parameters
    ----------
    from_h
        When it begins, from midnight. [h]
    lasts_h
        How long; over midnight where it must. [h]

    Raises
    ------
    OutOfRange
        Where it lasts longer than a day.

    Examples
    --------
    >>> night = shape_frac(from_h=22.5, lasts_h=8)
    >>> night[0], night[38], night[39], night[135], sum(night) / 6
    (1.0, 1.0, 0.0, 1.0, 8.0)
    """
    if not 0.0 <= lasts_h <= DAY_H:
        raise OutOfRange("lasts_h", lasts_h, f"from 0 to {DAY_H:g}")
    made = []
    for step in range(STEPS_PER_DAY):
        start = step * STEP_H
        covered = sum(
            max(0.0, min(start + STEP_H, at + lasts_h) - max(start, at))
            for at in (from_h - DAY_H, from_h, from_h + DAY_H)
        )
        share = min(1.0, covered / STEP_H)
        made.append(0.0 if share < _CLOSE_H else 1.0 if share > 1.0 - _CLOSE_H else share)
    return tuple(made)


def laid_w(*, energy_wh: float, shape_frac: Sequence[float]) -> tuple[float, ...]:
    """Return an energy laid evenly over the steps of a shape [W].

    Parameters
    ----------
    energy_wh
        Of the day. [Wh]
    shape_frac
        Share of each step in which it may be used; the whole day where it is empty.

    Notes
    -----
    P = E s / (Σ s · Δt): the day's sum is the energy.

    Examples
    --------
    >>> sum(laid_w(energy_wh=600, shape_frac=[0, 1, 1, 0] * 36)) / 6
    600.0
    """
    whole = sum(shape_frac)
    if whole <= 0.0:
        return (energy_wh / DAY_H,) * len(shape_frac)
    return tuple(energy_wh * share / (whole * STEP_H) for share in shape_frac)


def added_w(*rows_w: Sequence[float]) -> list[float]:
    """Return rows of equal length added up; a day of nothing without rows."""
    if not rows_w:
        return [0.0] * STEPS_PER_DAY
    return [sum(values) for values in zip(*rows_w, strict=True)]


def first_free_h(*, wanted_h: float, lasts_h: float, taken_frac: Sequence[float]) -> float:
    """Return when something that lasts can begin, at or after the time wanted [h].

    Parameters
    ----------
    wanted_h
        From midnight. [h]
    lasts_h
        How long. [h]
    taken_frac
        Share of each step that is taken by something else.

    Returns
    -------
    float
        The time wanted where no place is free in the whole day.

    Examples
    --------
    >>> away = shape_frac(from_h=21, lasts_h=9)
    >>> first_free_h(wanted_h=5.5, lasts_h=0.5, taken_frac=away)
    6.0
    """
    steps = len(taken_frac)
    long = max(1, round(lasts_h / STEP_H))
    first = round(wanted_h / STEP_H)
    for later in range(steps):
        if all(taken_frac[(first + later + each) % steps] <= 0.0 for each in range(long)):
            return ((first + later) % steps) * STEP_H
    return wanted_h
