"""Upright axes of charts: round figures in the units that somebody reads."""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from coachwright.drawing.scene import Anchor, Layer, Line, Primitive, Text, Weight
from coachwright.unit_display import METRIC, US

_STEPS = (1.0, 2.0, 2.5, 5.0, 10.0)
_MOST_DIGITS = 6
_SMALL_MM = 2.3
_GAP_MM = 1.4
_HALF_CAP_MM = 0.8
_OVER_MM = 2.6
_NEAR_RATIO = 1e-9


@dataclass(frozen=True, kw_only=True, slots=True)
class Tick:
    """One figure on an axis, and how high it stands."""

    at_mm: float
    text: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Axis:
    """An upright axis.

    Attributes
    ----------
    symbol
        Of the unit that its figures are in.
    place_mm
        Height on the paper of a value in the unit that the axis was made for.
    """

    symbol: str
    ticks: tuple[Tick, ...]
    foot_mm: float
    head_mm: float
    place_mm: Callable[[float], float]


def axis(
    *,
    low: float,
    high: float,
    unit: str,
    system: str,
    foot_mm: float,
    head_mm: float,
    most_ticks: int = 6,
) -> Axis:
    """Return an axis that holds a range between two heights, with figures in round steps.

    Parameters
    ----------
    low, high
        The range that must be held.
    unit
        Internal unit of the range.
    system
        ``"metric"`` or ``"us"``.
    foot_mm, head_mm
        Where it begins and ends. [mm]
    most_ticks
        Figures on it at most.

    Examples
    --------
    >>> made = axis(low=-3.0, high=21.0, unit="degC", system="us", foot_mm=0.0, head_mm=40.0)
    >>> [tick.text for tick in made.ticks], made.symbol
    (['20', '30', '40', '50', '60', '70'], '°F')
    """
    display = (US if system == "us" else METRIC)[unit]
    bottom = low * display.factor + display.offset
    top = max(high * display.factor + display.offset, bottom + _NEAR_RATIO)
    step = _round_ratio((top - bottom) / (most_ticks - 1))
    first, last = math.floor(bottom / step + _NEAR_RATIO), math.ceil(top / step - _NEAR_RATIO)
    per_mm = (head_mm - foot_mm) / ((last - first) * step)
    digits = _digits_count(step)
    return Axis(
        symbol=display.symbol,
        ticks=tuple(
            Tick(
                at_mm=foot_mm + (index - first) * step * per_mm,
                text=f"{index * step:,.{digits}f}".replace("-", "−"),
            )
            for index in range(first, last + 1)
        ),
        foot_mm=foot_mm,
        head_mm=head_mm,
        place_mm=lambda value: (
            foot_mm + (value * display.factor + display.offset - first * step) * per_mm
        ),
    )


def _round_ratio(least_ratio: float) -> float:
    """Return the smallest of 1, 2, 2.5 and 5 times a power of ten that is no smaller."""
    power = 10.0 ** math.floor(math.log10(least_ratio))
    return next(each * power for each in _STEPS if each * power >= least_ratio * (1 - _NEAR_RATIO))


def _digits_count(step_ratio: float) -> int:
    """Return how many digits behind the point a step needs."""
    digits = range(_MOST_DIGITS)
    exact = (each for each in digits if abs(round(step_ratio, each) - step_ratio) < _NEAR_RATIO)
    return next(exact, _MOST_DIGITS)


def ruled(axis: Axis, *, left_mm: float, right_mm: float) -> Iterator[Primitive]:
    """Yield an axis: its figures on the left, a fine line for each, its unit above them.

    Parameters
    ----------
    axis
        What is drawn.
    left_mm, right_mm
        Ends of its lines. [mm]
    """
    for tick in axis.ticks:
        yield Line(
            start_mm=(left_mm, tick.at_mm),
            end_mm=(right_mm, tick.at_mm),
            layer=Layer.BODY if tick.text == "0" else Layer.FITTING,
            weight=Weight.FINE,
        )
        yield Text(
            at_mm=(left_mm - _GAP_MM, tick.at_mm - _HALF_CAP_MM),
            text=tick.text,
            layer=Layer.DIMENSION,
            anchor=Anchor.END,
            height_mm=_SMALL_MM,
        )
    yield Text(
        at_mm=(left_mm - _GAP_MM, axis.head_mm + _OVER_MM),
        text=axis.symbol,
        layer=Layer.DIMENSION,
        anchor=Anchor.END,
        height_mm=_SMALL_MM,
        strong=True,
    )
