"""The air in the cabin, month by month: how warm it was and how many hours were comfortable."""

from collections.abc import Callable, Iterator

from coachwright.drawing.axis import Axis, axis, ruled
from coachwright.drawing.chart import (
    LEFT_MM,
    Columns,
    Fill,
    Stroke,
    block,
    heading,
    key,
    key_height_mm,
    month_names,
    small,
)
from coachwright.drawing.scene import (
    Anchor,
    Layer,
    Line,
    Pattern,
    Primitive,
    Scene,
    Style,
    Weight,
)
from coachwright.living.model import MonthOfYear
from coachwright.units import shown_number

_AIR_MM = 40.0
_SHARE_MM = 20.0
_NAMES_MM = 5.0
_OVER_MM = 9.0
_HALF_MM = 1.6
_BAR_MM = 7.0
_MOST_LABEL_FRAC = 0.995
_RANGE = Stroke(words="coldest to warmest in the cabin, mark: mean", layer=Layer.BODY)
_BAND = Stroke(
    words="coldest and warmest wanted",
    layer=Layer.PLUMBING,
    weight=Weight.NORMAL,
    style=Style.DASHED,
)
_COLD = Fill(letter="", words="too cold", layer=Layer.PLUMBING, pattern=Pattern.DIAGONAL)
_GOOD = Fill(letter="", words="comfortable", layer=Layer.FITTING)
_HOT = Fill(letter="", words="too warm", layer=Layer.ELECTRICAL, pattern=Pattern.CROSSED)
_KEY = (_RANGE, _BAND, _COLD, _GOOD, _HOT)


def month_air(
    months: tuple[MonthOfYear, ...],
    *,
    coldest_degc: float,
    warmest_degc: float,
    system: str,
    paper_width_mm: float,
) -> Scene:
    """Return the months' temperatures in the cabin over the shares of occupied hours.

    Parameters
    ----------
    months
        In any order.
    coldest_degc, warmest_degc
        That the brief wants. [degC]
    system
        ``"metric"`` or ``"us"``.
    paper_width_mm
        Room on the sheet. [mm]
    """
    share_foot = key_height_mm(_KEY, paper_width_mm) + 3.0 + _NAMES_MM
    air_foot = share_foot + _SHARE_MM + _OVER_MM
    columns = Columns(left_mm=LEFT_MM, right_mm=paper_width_mm)
    warmth = axis(
        low=min([each.air_low_degc for each in months] + [coldest_degc]),
        high=max([each.air_high_degc for each in months] + [warmest_degc]),
        unit="degC",
        system=system,
        foot_mm=air_foot,
        head_mm=air_foot + _AIR_MM,
    )
    band = (warmth.place_mm(coldest_degc), warmth.place_mm(warmest_degc))
    return Scene(
        primitives=(
            *_warmth(months, warmth, columns),
            *(_line(each, columns) for each in band),
            *_shares(months, columns, share_foot, system),
            *month_names(columns, share_foot - 4.0),
            *key(_KEY, (0.0, share_foot - _NAMES_MM - 0.5), paper_width_mm),
        ),
        low_mm=(0.0, 0.0),
        high_mm=(paper_width_mm, air_foot + _AIR_MM + _OVER_MM - 2.0),
        scale_ratio=1.0,
    )


def _warmth(
    months: tuple[MonthOfYear, ...], upright: Axis, columns: Columns
) -> Iterator[Primitive]:
    yield from ruled(upright, left_mm=columns.left_mm, right_mm=columns.right_mm)
    yield heading("Air in the cabin", (columns.left_mm, upright.head_mm + 3.0))
    for each in months:
        yield from _range(each, columns.middle_mm(each.month), upright.place_mm)


def _shares(
    months: tuple[MonthOfYear, ...], columns: Columns, foot_mm: float, system: str
) -> Iterator[Primitive]:
    upright = axis(
        low=0.0,
        high=1.0,
        unit="frac",
        system=system,
        foot_mm=foot_mm,
        head_mm=foot_mm + _SHARE_MM,
        most_ticks=3,
    )
    yield from ruled(upright, left_mm=columns.left_mm, right_mm=columns.right_mm)
    yield heading("Share of the occupied hours", (columns.left_mm, upright.head_mm + 2.6))
    for each in months:
        yield from _share(each, columns.middle_mm(each.month), upright.place_mm, system)


def _line(high_mm: float, columns: Columns) -> Line:
    return Line(
        start_mm=(columns.left_mm, high_mm),
        end_mm=(columns.right_mm, high_mm),
        layer=_BAND.layer,
        weight=_BAND.weight,
        style=_BAND.style,
    )


def _range(
    month: MonthOfYear, middle_mm: float, place: Callable[[float], float]
) -> Iterator[Primitive]:
    low, mean, high = (
        place(each) for each in (month.air_low_degc, month.air_mean_degc, month.air_high_degc)
    )
    yield Line(start_mm=(middle_mm, low), end_mm=(middle_mm, high), layer=Layer.BODY)
    for at, half, weight in (
        (low, _HALF_MM, Weight.NORMAL),
        (high, _HALF_MM, Weight.NORMAL),
        (mean, 2 * _HALF_MM, Weight.BOLD),
    ):
        yield Line(
            start_mm=(middle_mm - half, at),
            end_mm=(middle_mm + half, at),
            layer=Layer.BODY,
            weight=weight,
        )


def _share(
    month: MonthOfYear, middle_mm: float, place: Callable[[float], float], system: str
) -> Iterator[Primitive]:
    if month.occupied_h <= 0.0:
        return
    cold_frac, hot_frac = month.cold_h / month.occupied_h, month.hot_h / month.occupied_h
    ends = (0.0, cold_frac, 1.0 - hot_frac, 1.0)
    for low_frac, high_frac, fill in zip(ends, ends[1:], (_COLD, _GOOD, _HOT), strict=False):
        if high_frac > low_frac:
            yield from block(
                (middle_mm - _BAR_MM / 2, place(low_frac)),
                (middle_mm + _BAR_MM / 2, place(high_frac)),
                fill,
            )
    if month.comfort_frac < _MOST_LABEL_FRAC:
        number, _ = shown_number(month.comfort_frac, "frac", system)
        middle = (place(cold_frac) + place(1.0 - hot_frac)) / 2 - 0.8
        yield small(number.partition(".")[0], (middle_mm, middle), Anchor.MIDDLE)
