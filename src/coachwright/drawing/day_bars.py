"""Bars of a day's energy: what comes in and what goes out, summer beside winter."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.drawing.scene import Anchor, Layer, Line, Primitive, Rect, Scene, Text, Weight

_LABEL_MM = 50.0
_VALUE_MM = 27.0
_BAR_MM = 2.9
_ROW_MM = 8.4
_HEAD_MM = 6.0
_GROUP_MM = 6.5
_LETTERS_MM = 2.8
_SMALL_MM = 2.3
_INK = {"summer": Layer.GAS, "winter": Layer.PLUMBING}
_SHORT = {"summer": "S", "winter": "W"}
_UNKNOWN = "unknown"


@dataclass(frozen=True, kw_only=True, slots=True)
class DayBar:
    """One kind of energy in both seasons.

    Attributes
    ----------
    label, summer, winter
        Ready words.
    summer_wh_per_day, winter_wh_per_day
        None where it is unknown.
    """

    label: str
    summer: str
    winter: str
    summer_wh_per_day: float | None
    winter_wh_per_day: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class DayGroup:
    """Bars under one heading, such as what comes in."""

    heading: str
    bars: tuple[DayBar, ...]


def day_bars(groups: tuple[DayGroup, ...], *, paper_width_mm: float) -> Scene:
    """Return the bars, all to one scale.

    Parameters
    ----------
    groups
        From top to bottom.
    paper_width_mm
        Room on the sheet. [mm]
    """
    known = [
        energy
        for group in groups
        for bar in group.bars
        for energy in (bar.summer_wh_per_day, bar.winter_wh_per_day)
        if energy is not None
    ]
    most = max(known, default=0.0) or 1.0
    per_wh = (paper_width_mm - _LABEL_MM - _VALUE_MM) / most
    rows = sum(len(group.bars) for group in groups)
    height = _HEAD_MM + _GROUP_MM * len(groups) + _ROW_MM * rows
    primitives = tuple(_drawn(groups, height, per_wh, paper_width_mm))
    return Scene(
        primitives=primitives,
        low_mm=(0.0, 0.0),
        high_mm=(paper_width_mm, height),
        scale_ratio=1.0,
    )


def _drawn(
    groups: tuple[DayGroup, ...], height_mm: float, per_wh_mm: float, width_mm: float
) -> Iterator[Primitive]:
    yield from _key(height_mm - _HEAD_MM / 2)
    top = height_mm - _HEAD_MM
    for group in groups:
        yield Text(
            at_mm=(0.0, top - 4.2),
            text=group.heading,
            layer=Layer.BODY,
            anchor=Anchor.START,
            height_mm=_LETTERS_MM,
            strong=True,
        )
        yield Line(
            start_mm=(0.0, top - _GROUP_MM),
            end_mm=(width_mm, top - _GROUP_MM),
            layer=Layer.FITTING,
            weight=Weight.FINE,
        )
        top -= _GROUP_MM
        for bar in group.bars:
            yield from _row(bar, top - _ROW_MM / 2, per_wh_mm)
            top -= _ROW_MM


def _key(middle_mm: float) -> Iterator[Primitive]:
    for at_mm, season in ((_LABEL_MM, "summer"), (_LABEL_MM + 26.0, "winter")):
        yield Rect(
            low_mm=(at_mm, middle_mm - 1.2),
            high_mm=(at_mm + 5.0, middle_mm + 1.2),
            layer=_INK[season],
            weight=Weight.NORMAL,
        )
        yield Text(
            at_mm=(at_mm + 6.5, middle_mm - 0.9),
            text=f"{_SHORT[season]}  {season}",
            layer=Layer.BODY,
            anchor=Anchor.START,
            height_mm=_SMALL_MM,
        )


def _row(bar: DayBar, middle_mm: float, per_wh_mm: float) -> Iterator[Primitive]:
    yield Text(
        at_mm=(0.0, middle_mm - 1.0),
        text=bar.label,
        layer=Layer.BODY,
        anchor=Anchor.START,
        height_mm=_LETTERS_MM,
    )
    seasons = (
        ("summer", bar.summer_wh_per_day, bar.summer, middle_mm + 0.25),
        ("winter", bar.winter_wh_per_day, bar.winter, middle_mm - _BAR_MM - 0.25),
    )
    for season, energy_wh_per_day, words, low_mm in seasons:
        length = 0.0 if energy_wh_per_day is None else energy_wh_per_day * per_wh_mm
        yield Text(
            at_mm=(_LABEL_MM - 1.2, low_mm + 0.6),
            text=_SHORT[season],
            layer=Layer.DIMENSION,
            anchor=Anchor.END,
            height_mm=_SMALL_MM,
        )
        if length > 0.0:
            yield Rect(
                low_mm=(_LABEL_MM, low_mm),
                high_mm=(_LABEL_MM + length, low_mm + _BAR_MM),
                layer=_INK[season],
                weight=Weight.NORMAL,
            )
        yield Text(
            at_mm=(_LABEL_MM + length + 1.5, low_mm + 0.6),
            text=_UNKNOWN if energy_wh_per_day is None else words,
            layer=Layer.BODY,
            anchor=Anchor.START,
            height_mm=_SMALL_MM,
        )
