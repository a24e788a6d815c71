"""Bars that show how far each rating is taken up, with the 95 % bounds of the load."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.drawing.scene import (
    Anchor,
    Layer,
    Line,
    Primitive,
    Rect,
    Scene,
    Style,
    Text,
    Weight,
)

_ROW_MM = 7.2
_BAR_MM = 3.4
_LABEL_MM = 47.0
_VALUE_MM = 46.0
_HEAD_MM = 5.0
_FOOT_MM = 1.0
_SHARES = (0.0, 0.25, 0.5, 0.75, 1.0)


@dataclass(frozen=True, kw_only=True, slots=True)
class LoadBar:
    """One load against its rating.

    Attributes
    ----------
    label, value
        Ready words on the left and on the right.
    load_kg, low_kg, high_kg
        The load and its one-sided 95 % bounds.
    """

    label: str
    value: str
    load_kg: float
    low_kg: float
    high_kg: float
    limit_kg: float


def load_bars(bars: tuple[LoadBar, ...], *, paper_width_mm: float) -> Scene:
    """Return the bars, each as a share of its own rating, which stands at one common line.

    Parameters
    ----------
    bars
        From top to bottom.
    paper_width_mm
        Room on the sheet. [mm]
    """
    most = max((bar.high_kg / bar.limit_kg for bar in bars), default=1.0)
    room = paper_width_mm - _LABEL_MM - _VALUE_MM
    whole_mm = room / max(1.06, most + 0.03)
    height = _HEAD_MM + _ROW_MM * len(bars) + _FOOT_MM
    rows = tuple(
        primitive
        for index, bar in enumerate(bars)
        for primitive in _row(
            bar, height - _HEAD_MM - _ROW_MM * (index + 0.5), whole_mm, paper_width_mm
        )
    )
    return Scene(
        primitives=(*_rules(whole_mm, height), *rows),
        low_mm=(0.0, 0.0),
        high_mm=(paper_width_mm, height),
        scale_ratio=1.0,
    )


def _rules(whole_mm: float, height_mm: float) -> Iterator[Primitive]:
    for share in _SHARES:
        at = _LABEL_MM + share * whole_mm
        full = share == 1.0
        yield Line(
            start_mm=(at, 0.0),
            end_mm=(at, height_mm - _HEAD_MM + 0.8),
            layer=Layer.BODY if full else Layer.FITTING,
            weight=Weight.BOLD if full else Weight.FINE,
            style=Style.DASHED if not full and share > 0.0 else Style.SOLID,
        )
        yield Text(
            at_mm=(at, height_mm - 2.6),
            text="rating" if full else f"{share:.0%}".replace("%", " %"),
            layer=Layer.BODY if full else Layer.DIMENSION,
            height_mm=2.4,
            strong=full,
        )


def _row(bar: LoadBar, middle_mm: float, whole_mm: float, width_mm: float) -> Iterator[Primitive]:
    def at_mm(load_kg: float) -> float:
        return _LABEL_MM + whole_mm * load_kg / bar.limit_kg

    yield Text(
        at_mm=(0.0, middle_mm - 1.0),
        text=bar.label,
        layer=Layer.BODY,
        anchor=Anchor.START,
        height_mm=2.8,
    )
    yield Rect(
        low_mm=(_LABEL_MM, middle_mm - _BAR_MM / 2),
        high_mm=(at_mm(bar.load_kg), middle_mm + _BAR_MM / 2),
        layer=Layer.HEAVY,
    )
    yield Line(
        start_mm=(at_mm(bar.low_kg), middle_mm),
        end_mm=(at_mm(bar.high_kg), middle_mm),
        layer=Layer.BODY,
    )
    for bound in (bar.low_kg, bar.high_kg):
        yield Line(
            start_mm=(at_mm(bound), middle_mm - 1.1),
            end_mm=(at_mm(bound), middle_mm + 1.1),
            layer=Layer.BODY,
        )
    yield Text(
        at_mm=(width_mm, middle_mm - 1.0),
        text=bar.value,
        layer=Layer.BODY,
        anchor=Anchor.END,
        height_mm=2.8,
        strong=True,
    )
