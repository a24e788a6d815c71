"""The vehicle from its left side: axles, centre of gravity, loads, the heaviest fittings."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.drawing.scene import (
    Anchor,
    Circle,
    Dimension,
    Layer,
    Line,
    Point,
    Polyline,
    Primitive,
    Rect,
    Scene,
    Style,
    Text,
    Weight,
)
from coachwright.drawing.van_outline import van_outline
from coachwright.model.build import Build, Mounting
from coachwright.model.placement import Placed, placed

SCALES = (20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 75.0, 100.0)
"""Scales that a drawing may have; the largest picture that fits is taken."""

_NOT_DRAWN = frozenset({Mounting.WHEELS})
_SIDE_PAPER_MM = 9.5
_UNDER_PAPER_MM = 34.0
_OVER_PAPER_MM = 4.0
_ARROW_MM = 12.0
_BUBBLE_MM = 2.0
_MARK_MM = 2.3
_BETWEEN_MM = 0.3
_CG_LINE_MM = 19.5
_WHEELBASE_LINE_MM = 25.5
_LENGTH_LINE_MM = 31.5


@dataclass(frozen=True, kw_only=True, slots=True)
class AxleNote:
    """What stands beside an axle's arrow."""

    name: str
    load: str
    limit: str


@dataclass(frozen=True, kw_only=True, slots=True)
class SideViewNotes:
    """Every word of the drawing, ready to set."""

    front: AxleNote
    rear: AxleNote
    wheelbase: str
    length: str
    height: str
    centre_x: str
    centre_height: str


@dataclass(frozen=True, kw_only=True, slots=True)
class SideViewMeasures:
    """Computed measures that the drawing shows.

    Attributes
    ----------
    wheel_diameter_mm
        Of the tyres fitted.
    centre_x_mm, centre_height_mm
        Centre of gravity, from the front axle and above the ground.
    length_mm, height_mm
        Overall, with everything fitted.
    """

    wheel_diameter_mm: float
    centre_x_mm: float
    centre_height_mm: float
    length_mm: float
    height_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class _Ends:
    front_x_mm: float
    rear_x_mm: float


def side_view(
    build: Build,
    *,
    measures: SideViewMeasures,
    notes: SideViewNotes,
    numbers: dict[str, str],
    paper_width_mm: float,
    paper_height_mm: float,
) -> Scene:
    """Return the side view at the largest usual scale that fits.

    Parameters
    ----------
    build
        For the vehicle and what is fitted.
    measures, notes
        What is shown, and its words.
    numbers
        Position numbers of the fittings to be pointed out, by reference name.
    paper_width_mm, paper_height_mm
        Room on the sheet. [mm]
    """
    scale_ratio = _scale_ratio(measures, paper_width_mm, paper_height_mm)
    front = -build.vehicle.outside.front_overhang_mm
    ends = _Ends(front_x_mm=front, rear_x_mm=front + measures.length_mm)
    low = (
        ends.front_x_mm - _SIDE_PAPER_MM * scale_ratio,
        -_UNDER_PAPER_MM * scale_ratio,
    )
    high = (
        ends.rear_x_mm + _SIDE_PAPER_MM * scale_ratio,
        measures.height_mm + _OVER_PAPER_MM * scale_ratio,
    )
    primitives = (
        *_ground(low, high),
        *van_outline(build.vehicle, wheel_diameter_mm=measures.wheel_diameter_mm),
        *_fittings(build, numbers, measures, scale_ratio),
        *_arrows(build, notes, scale_ratio),
        *_centre_mark(measures, scale_ratio),
        *_flat_dimensions(build, measures, notes, ends, scale_ratio),
        *_upright_dimensions(measures, notes, ends, scale_ratio),
    )
    return Scene(primitives=primitives, low_mm=low, high_mm=high, scale_ratio=scale_ratio)


def _scale_ratio(measures: SideViewMeasures, width_mm: float, height_mm: float) -> float:
    for scale_ratio in SCALES:
        wide = measures.length_mm / scale_ratio + 2 * _SIDE_PAPER_MM
        tall = measures.height_mm / scale_ratio + _UNDER_PAPER_MM + _OVER_PAPER_MM
        if wide <= width_mm and tall <= height_mm:
            return scale_ratio
    return SCALES[-1]


def _ground(low: Point, high: Point) -> Iterator[Primitive]:
    yield Line(
        start_mm=(low[0], 0.0), end_mm=(high[0], 0.0), layer=Layer.GROUND, weight=Weight.NORMAL
    )


def _fittings(
    build: Build, numbers: dict[str, str], measures: SideViewMeasures, scale_ratio: float
) -> Iterator[Primitive]:
    floor_mm = build.vehicle.outside.floor_height_mm
    boxes = [
        (fitted.name, placed(fitted))
        for fitted in build.fittings
        if fitted.fitting.mounting not in _NOT_DRAWN
    ]
    for name, box in boxes:
        if name not in numbers:
            yield _box(box, floor_mm, Layer.FITTING)
    heavy = [(name, box) for name, box in boxes if name in numbers]
    for _, box in sorted(heavy, key=lambda pair: -_face_mm2(pair[1])):
        yield _box(box, floor_mm, Layer.HEAVY)
    centre = (measures.centre_x_mm, measures.centre_height_mm)
    taken = [
        _Mark(at_mm=centre, radius_mm=_MARK_MM * scale_ratio),
        *_marks_under(centre, scale_ratio),
    ]
    # The smallest faces have the fewest places for their number.
    for name, box in sorted(heavy, key=lambda pair: _face_mm2(pair[1])):
        spot = _free_spot(_box(box, floor_mm, Layer.HEAVY), taken, scale_ratio)
        taken.append(_Mark(at_mm=spot, radius_mm=_BUBBLE_MM * scale_ratio))
        yield from _bubble(spot, numbers[name], scale_ratio)


def _box(box: Placed, floor_mm: float, layer: Layer) -> Rect:
    return Rect(
        low_mm=(box.low_mm[0], box.low_mm[2] + floor_mm),
        high_mm=(box.high_mm[0], box.high_mm[2] + floor_mm),
        layer=layer,
    )


def _face_mm2(box: Placed) -> float:
    return (box.high_mm[0] - box.low_mm[0]) * (box.high_mm[2] - box.low_mm[2])


@dataclass(frozen=True, kw_only=True, slots=True)
class _Mark:
    """A circle that nothing else may stand in."""

    at_mm: Point
    radius_mm: float


def _marks_under(centre: Point, scale_ratio: float) -> Iterator[_Mark]:
    """Yield the dashed line from the centre of gravity down to the ground as marks."""
    step = 0.5 * scale_ratio
    for number in range(int(centre[1] / step)):
        yield _Mark(at_mm=(centre[0], number * step), radius_mm=0.0)


def _free_spot(face: Rect, taken: list[_Mark], scale_ratio: float) -> Point:
    """Return where a number stands free: in the middle, elsewhere on its face, else near it."""
    radius = _BUBBLE_MM * scale_ratio
    for spot in (*_spots_on(face, radius), *_spots_around(face, radius)):
        if all(
            math.dist(spot, mark.at_mm) >= radius + mark.radius_mm + _BETWEEN_MM * scale_ratio
            for mark in taken
        ):
            return spot
    return _middle(face)


def _middle(face: Rect) -> Point:
    return (
        (face.low_mm[0] + face.high_mm[0]) / 2,
        (face.low_mm[1] + face.high_mm[1]) / 2,
    )


def _spots_on(face: Rect, radius_mm: float) -> Iterator[Point]:
    """Yield places on a face for a number, from its middle outwards."""
    middle = _middle(face)
    across, up = (
        max(0.0, (face.high_mm[axis] - face.low_mm[axis]) / 2 - radius_mm) for axis in (0, 1)
    )
    places = [
        (middle[0] + across * right / 4, middle[1] + up * high / 4)
        for right in range(-4, 5)
        for high in range(-4, 5)
    ]
    yield from sorted(places, key=lambda place: math.dist(place, middle))


def _spots_around(face: Rect, radius_mm: float) -> Iterator[Point]:
    """Yield places beside a face, in rings around its middle."""
    middle, step = _middle(face), 2.2 * radius_mm
    for ring in range(1, 9):
        for turn in (index * math.pi / 8 for index in range(16)):
            yield (
                middle[0] + ring * step * math.cos(turn),
                middle[1] + ring * step * math.sin(turn),
            )


def _bubble(spot: Point, number: str, scale_ratio: float) -> Iterator[Primitive]:
    yield Circle(
        centre_mm=spot, radius_mm=_BUBBLE_MM * scale_ratio, layer=Layer.BODY, weight=Weight.FINE
    )
    yield Text(
        at_mm=(spot[0], spot[1] - 0.8 * scale_ratio),
        text=number,
        layer=Layer.BODY,
        height_mm=2.2,
        strong=True,
    )


def _arrows(build: Build, notes: SideViewNotes, scale_ratio: float) -> Iterator[Primitive]:
    wheelbase = build.vehicle.outside.wheelbase_mm
    for x, note in ((0.0, notes.front), (wheelbase, notes.rear)):
        tip = (x, -0.6 * scale_ratio)
        yield Line(
            start_mm=(x, -_ARROW_MM * scale_ratio),
            end_mm=(x, -3.0 * scale_ratio),
            layer=Layer.LOAD,
            weight=Weight.BOLD,
        )
        yield Polyline(
            points_mm=(
                tip,
                (x - 1.3 * scale_ratio, -3.6 * scale_ratio),
                (x + 1.3 * scale_ratio, -3.6 * scale_ratio),
            ),
            layer=Layer.LOAD,
            weight=Weight.FINE,
            closed=True,
            filled=True,
        )
        for down, words, height, strong in (
            (5.4, note.name, 2.5, False),
            (9.0, note.load, 3.0, True),
            (12.4, note.limit, 2.5, False),
        ):
            yield Text(
                at_mm=(x + 2.4 * scale_ratio, -down * scale_ratio),
                text=words,
                layer=Layer.LOAD,
                anchor=Anchor.START,
                height_mm=height,
                strong=strong,
            )


def _centre_mark(measures: SideViewMeasures, scale_ratio: float) -> Iterator[Primitive]:
    centre = (measures.centre_x_mm, measures.centre_height_mm)
    radius = _MARK_MM * scale_ratio
    yield Line(
        start_mm=(centre[0], centre[1] - radius),
        end_mm=(centre[0], -(_CG_LINE_MM - 1) * scale_ratio),
        layer=Layer.CENTRE,
        weight=Weight.FINE,
        style=Style.DASHED,
    )
    yield Circle(centre_mm=centre, radius_mm=radius, layer=Layer.CENTRE)
    for start in (0.0, math.pi):
        turns = [start + step * math.pi / 16 for step in range(9)]
        rim = ((centre[0] + radius * math.cos(t), centre[1] + radius * math.sin(t)) for t in turns)
        yield Polyline(
            points_mm=(centre, *rim),
            layer=Layer.CENTRE_FILL,
            weight=Weight.FINE,
            closed=True,
            filled=True,
        )


def _flat_dimensions(
    build: Build, measures: SideViewMeasures, notes: SideViewNotes, ends: _Ends, scale_ratio: float
) -> Iterator[Primitive]:
    under = -(_ARROW_MM + 1.5) * scale_ratio
    wheelbase = build.vehicle.outside.wheelbase_mm
    for start, end, foot, line, text in (
        (0.0, measures.centre_x_mm, under, _CG_LINE_MM, notes.centre_x),
        (0.0, wheelbase, under, _WHEELBASE_LINE_MM, notes.wheelbase),
        (ends.front_x_mm, ends.rear_x_mm, under, _LENGTH_LINE_MM, notes.length),
    ):
        yield Dimension(
            start_mm=(start, foot), end_mm=(end, foot), line_mm=-line * scale_ratio, text=text
        )


def _upright_dimensions(
    measures: SideViewMeasures, notes: SideViewNotes, ends: _Ends, scale_ratio: float
) -> Iterator[Primitive]:
    yield Dimension(
        start_mm=(ends.front_x_mm, 0.0),
        end_mm=(measures.centre_x_mm - 3.2 * scale_ratio, measures.centre_height_mm),
        line_mm=ends.front_x_mm - 5 * scale_ratio,
        text=notes.centre_height,
        upright=True,
    )
    yield Dimension(
        start_mm=(ends.rear_x_mm, 0.0),
        end_mm=(ends.rear_x_mm, measures.height_mm),
        line_mm=ends.rear_x_mm + 6 * scale_ratio,
        text=notes.height,
        upright=True,
    )
