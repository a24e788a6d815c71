"""Two states of a build in one plan: what stayed, where things were, and where they are."""

from collections.abc import Iterator

from coachwright.drawing.content import Content
from coachwright.drawing.scene import (
    Anchor,
    Layer,
    Line,
    Point,
    Polyline,
    Primitive,
    Scene,
    Style,
    Text,
    Weight,
)
from coachwright.drawing.shell_plan import body_outline
from coachwright.drawing.shell_walls import rear_mm
from coachwright.drawing.things import Thing

_SAME_MM = 0.5
"""Two corners closer than this on every axis are the same place."""
_MARGIN_MM = 120.0
_KEY_MM = 260.0
_LETTERS_MM = 2.6
_BEFORE, _AFTER = Layer.FINDING, Layer.LOAD


def overlay(before: Content, after: Content, *, paper_width_mm: float) -> Scene:
    """Return both states in plan, the later one over the earlier.

    Parameters
    ----------
    before, after
        Two states, perhaps on different base vehicles.
    paper_width_mm
        Room on the sheet. [mm]

    Notes
    -----
    What stands the same in both is drawn fine; what moved, came or went is drawn dashed where it
    was and bold where it is, with its name.
    """
    vehicles = (before.build.vehicle, after.build.vehicle)
    front = max(vehicle.outside.front_overhang_mm for vehicle in vehicles)
    half = max(vehicle.outside.width_mm for vehicle in vehicles) / 2
    rear = max(
        *(rear_mm(vehicle) for vehicle in vehicles),
        *(thing.high_mm[0] for content in (before, after) for thing in content.things),
    )
    low = (-front - _MARGIN_MM, -half - _MARGIN_MM - _KEY_MM)
    high = (rear + _MARGIN_MM, half + _MARGIN_MM)
    return Scene(
        primitives=(*_drawn(before, after), *_keys(-front, -half - _KEY_MM)),
        low_mm=low,
        high_mm=high,
        scale_ratio=(high[0] - low[0]) / paper_width_mm,
    )


def _drawn(before: Content, after: Content) -> Iterator[Primitive]:
    outlines = {body_outline(content.build.vehicle) for content in (before, after)}
    for outline in sorted(outlines):
        yield Polyline(points_mm=outline, layer=Layer.VEHICLE, closed=True)
    there = {thing.name: thing for thing in before.things}
    now = {thing.name: thing for thing in after.things}
    stayed = {name for name in there.keys() & now.keys() if _same(there[name], now[name])}
    for name in sorted(stayed):
        yield _box(now[name], Layer.FITTING, Weight.FINE, Style.SOLID)
    for name in sorted(there.keys() - stayed):
        yield _box(there[name], _BEFORE, Weight.NORMAL, Style.DASHED)
        if name not in now:
            yield _name(there[name], _BEFORE)
    for name in sorted(now.keys() - stayed):
        yield _box(now[name], _AFTER, Weight.BOLD, Style.SOLID)
        yield _name(now[name], _AFTER)


def _same(one: Thing, other: Thing) -> bool:
    corners = zip((*one.low_mm, *one.high_mm), (*other.low_mm, *other.high_mm), strict=True)
    return all(abs(a - b) <= _SAME_MM for a, b in corners)


def _box(thing: Thing, layer: Layer, weight: Weight, style: Style) -> Polyline:
    (x1, y1, _), (x2, y2, _) = thing.low_mm, thing.high_mm
    return Polyline(
        points_mm=((x1, y1), (x2, y1), (x2, y2), (x1, y2)),
        layer=layer,
        weight=weight,
        style=style,
        closed=True,
    )


def _name(thing: Thing, layer: Layer) -> Text:
    middle: Point = (
        (thing.low_mm[0] + thing.high_mm[0]) / 2,
        (thing.low_mm[1] + thing.high_mm[1]) / 2,
    )
    return Text(
        at_mm=middle, text=thing.name, layer=layer, height_mm=_LETTERS_MM, strong=True, backed=True
    )


def _keys(x_mm: float, y_mm: float) -> Iterator[Primitive]:
    place = x_mm
    for words, layer, weight, style in (
        ("stands the same", Layer.FITTING, Weight.FINE, Style.SOLID),
        ("before", _BEFORE, Weight.NORMAL, Style.DASHED),
        ("after", _AFTER, Weight.BOLD, Style.SOLID),
    ):
        yield Line(
            start_mm=(place, y_mm),
            end_mm=(place + 320.0, y_mm),
            layer=layer,
            weight=weight,
            style=style,
        )
        yield Text(
            at_mm=(place + 380.0, y_mm - 30.0),
            text=words,
            layer=Layer.LABEL,
            anchor=Anchor.START,
            height_mm=_LETTERS_MM,
        )
        place += 1500.0
