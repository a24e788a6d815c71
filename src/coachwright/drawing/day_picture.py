"""Twenty-four hours or a week: temperatures, the bank's charge, and what flows in and out."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.drawing.axis import Axis, axis, ruled
from coachwright.drawing.calendar import date_words
from coachwright.drawing.chart import (
    LEFT_MM,
    SMALL_MM,
    Fill,
    Stroke,
    heading,
    key,
    key_height_mm,
    shape,
    side_labels,
    small,
)
from coachwright.drawing.energy_fills import SOURCES, USES
from coachwright.drawing.lettering import text_width_mm
from coachwright.drawing.scene import (
    Layer,
    Line,
    Polyline,
    Primitive,
    Scene,
    Style,
    Weight,
)
from coachwright.living.model import Picture

_WARMTH_MM = 38.0
_CHARGE_MM = 11.0
_FLOWS_MM = 26.0
_BETWEEN_MM = 8.5
_HOURS_MM = 4.8
_LABEL_GAP_MM = 4.0
_MOST_POINTS = 200
_H_PER_DAY = 24.0
_MIN_PER_H = 60.0
_HOUR_MARKS = (0, 3, 6, 9, 12, 15, 18, 21, 24)
_NODES: dict[str, Stroke] = {
    "outside": Stroke(words="outside", layer=Layer.PLUMBING, style=Style.DASHED),
    "cabin": Stroke(words="cabin", layer=Layer.BODY, weight=Weight.BOLD),
    "glass": Stroke(words="glass", layer=Layer.AIR, style=Style.DASH_DOT),
    "rib": Stroke(words="rib", layer=Layer.ELECTRICAL, weight=Weight.FINE),
    "lining": Stroke(words="lining", layer=Layer.OUTSIDE, style=Style.DASH_DOT),
    "bank": Stroke(words="bank", layer=Layer.ZONE, style=Style.DASHED, weight=Weight.BOLD),
    "cab": Stroke(words="cab", layer=Layer.OUTSIDE),
}
"""The usual nodes; any other is a second room and drawn in one way; its label tells which."""
_CHARGE = Fill(letter="", words="charge", layer=Layer.HEAVY)

Series = tuple[float, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class _Ground:
    """Where time lies on the paper."""

    left_mm: float
    right_mm: float
    span_h: float

    def across_mm(self, at_h: float) -> float:
        return self.left_mm + (self.right_mm - self.left_mm) * at_h / self.span_h

    def middles_mm(self, count: int) -> tuple[float, ...]:
        return tuple(self.across_mm(self.span_h * (step + 0.5) / count) for step in range(count))


def day_picture(picture: Picture, *, system: str, paper_width_mm: float) -> Scene:
    """Return the picture: temperatures above, charge in the middle, flows below.

    Parameters
    ----------
    picture
        Step by step; where it has more steps than can be seen, means of several are drawn.
    system
        ``"metric"`` or ``"us"``.
    paper_width_mm
        Room on the sheet. [mm]
    """
    ground = _ground(picture, paper_width_mm)
    into, out = _stacks(picture)
    fills = (*into, *out)
    foot = key_height_mm(fills, paper_width_mm) + _HOURS_MM + 2.0
    panels = [
        *key(fills, (0.0, foot - _HOURS_MM), paper_width_mm),
        *_hours(picture, ground, foot),
        *_flow_panel(into, out, ground, foot, system),
    ]
    foot += _FLOWS_MM + _BETWEEN_MM
    if picture.charge_frac:
        panels += _charge_panel(_thinned(picture.charge_frac), ground, foot, system)
        foot += _CHARGE_MM + _BETWEEN_MM
    panels += _warmth_panel(picture, ground, foot, system)
    return Scene(
        primitives=tuple(panels),
        low_mm=(0.0, 0.0),
        high_mm=(paper_width_mm, foot + _WARMTH_MM + 5.5),
        scale_ratio=1.0,
    )


def _ground(picture: Picture, width_mm: float) -> _Ground:
    count = max((len(each) for each in picture.nodes_degc.values()), default=0)
    names = (_stroke(name).words for name in picture.nodes_degc)
    labels = max((text_width_mm(name, SMALL_MM) for name in names), default=0.0)
    return _Ground(
        left_mm=LEFT_MM,
        right_mm=width_mm - labels - _LABEL_GAP_MM,
        span_h=max(1, count) * picture.step_min / _MIN_PER_H,
    )


def _stroke(name: str) -> Stroke:
    words = name.replace("-", " ").replace("_", " ")
    room = Stroke(words=words, layer=Layer.GAS, weight=Weight.BOLD, style=Style.DASH_DOT)
    return _NODES.get(name, room)


def _thinned(values: Series) -> Series:  # no more points than can be told apart
    each = math.ceil(len(values) / _MOST_POINTS)
    if each <= 1:
        return values
    return tuple(
        sum(values[start : start + each]) / len(values[start : start + each])
        for start in range(0, len(values), each)
    )


def _stacks(picture: Picture) -> tuple[dict[Fill, Series], dict[Fill, Series]]:
    flows = {name: _thinned(values) for name, values in picture.flows_w.items()}
    return _summed(flows, SOURCES), _summed(flows, USES)


def _summed(flows: dict[str, Series], fills: dict[str, Fill]) -> dict[Fill, Series]:
    """Return the flows that are filled alike as one; those that are always nothing are out."""
    together: dict[Fill, list[Series]] = {}
    for name, fill in fills.items():
        if any(flows.get(name, ())):
            together.setdefault(fill, []).append(flows[name])
    return {
        fill: tuple(sum(step) for step in zip(*each, strict=True))
        for fill, each in together.items()
    }


def _hours(picture: Picture, ground: _Ground, foot_mm: float) -> Iterator[Primitive]:
    if ground.span_h <= _H_PER_DAY:
        for mark in _HOUR_MARKS:
            yield small(f"{mark}:00", (ground.across_mm(mark), foot_mm - 3.4))
        return
    for day in range(round(ground.span_h / _H_PER_DAY)):
        middle = ground.across_mm((day + 0.5) * _H_PER_DAY)
        yield small(date_words(picture.day + day), (middle, foot_mm - 3.4))


def _flow_panel(
    into: dict[Fill, Series],
    out: dict[Fill, Series],
    ground: _Ground,
    foot_mm: float,
    system: str,
) -> Iterator[Primitive]:
    rows = [[sum(step) for step in zip(*side.values(), strict=True)] for side in (into, out)]
    power = axis(
        low=min([0.0, *rows[1]]),
        high=max([1.0, *rows[0]]),
        unit="W",
        system=system,
        foot_mm=foot_mm,
        head_mm=foot_mm + _FLOWS_MM,
    )
    yield from _panel(power, ground, "Into the bank and loads; out of them below the line")
    for side in (into, out):
        reached: Series = ()
        for fill, values in side.items():
            below = reached or (0.0,) * len(values)
            reached = tuple(a + b for a, b in zip(below, values, strict=True))
            yield from shape(_band_mm(below, reached, power, ground), fill)


def _band_mm(
    below: Series, above: Series, upright: Axis, ground: _Ground
) -> tuple[tuple[float, float], ...]:
    across = ground.middles_mm(len(above))
    upper = [(x, upright.place_mm(value)) for x, value in zip(across, above, strict=True)]
    lower = [(x, upright.place_mm(value)) for x, value in zip(across, below, strict=True)]
    return (*upper, *reversed(lower))


def _charge_panel(
    charge_frac: Series, ground: _Ground, foot_mm: float, system: str
) -> Iterator[Primitive]:
    share = axis(
        low=0.0,
        high=1.0,
        unit="frac",
        system=system,
        foot_mm=foot_mm,
        head_mm=foot_mm + _CHARGE_MM,
        most_ticks=3,
    )
    yield from _panel(share, ground, "Charge of the bank")
    yield from shape(_band_mm((0.0,) * len(charge_frac), charge_frac, share, ground), _CHARGE)


def _warmth_panel(
    picture: Picture, ground: _Ground, foot_mm: float, system: str
) -> Iterator[Primitive]:
    nodes = {name: _thinned(values) for name, values in picture.nodes_degc.items() if values}
    warmth = axis(
        low=min((min(each) for each in nodes.values()), default=0.0),
        high=max((max(each) for each in nodes.values()), default=1.0),
        unit="degC",
        system=system,
        foot_mm=foot_mm,
        head_mm=foot_mm + _WARMTH_MM,
    )
    yield from _panel(warmth, ground, "Temperatures")
    ends = []
    for name, values in nodes.items():
        stroke = _stroke(name)
        across = ground.middles_mm(len(values))
        points = tuple(
            (x, warmth.place_mm(value)) for x, value in zip(across, values, strict=True)
        )
        yield Polyline(
            points_mm=points, layer=stroke.layer, weight=stroke.weight, style=stroke.style
        )
        ends.append((points[-1], stroke.words, stroke.layer))
    yield from side_labels(
        ends,
        across_mm=ground.right_mm + _LABEL_GAP_MM - 0.5,
        foot_mm=foot_mm,
        head_mm=foot_mm + _WARMTH_MM,
    )


def _panel(upright: Axis, ground: _Ground, words: str) -> Iterator[Primitive]:
    yield from ruled(upright, left_mm=ground.left_mm, right_mm=ground.right_mm)
    yield heading(words, (ground.left_mm, upright.head_mm + 2.4))
    for day in range(1, round(ground.span_h / _H_PER_DAY)):
        midnight = ground.across_mm(day * _H_PER_DAY)
        yield Line(
            start_mm=(midnight, upright.foot_mm),
            end_mm=(midnight, upright.head_mm),
            layer=Layer.FITTING,
            weight=Weight.FINE,
        )
