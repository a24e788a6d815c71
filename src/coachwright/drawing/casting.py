"""Bodies along a gaze: their tones, their seen and hidden edges, and where a label may stand."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from coachwright.drawing.gaze import Fallen, Flat, Gaze, fallen
from coachwright.drawing.hiding import Patch, Stretch, free_places, stretches
from coachwright.drawing.scene import Area, Line, Point, Primitive, Style, Weight
from coachwright.drawing.things import Thing

_NUDGE_MM = 0.05
"""Edges are tested this far inside and outside their body, so that neighbours may touch."""
_FRONT_MM = 40.0
"""What is built in this near to a carcass's upright face shows in it, as a fridge's door does."""
_TOP_MM = 5.0
"""What is built in this near to its top shows in it, as a sink does."""
_UPWARDS = 2
_ROUND_STEPS = 40
_SPOT_MM = 1.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Tag:
    """What a label may point at.

    Attributes
    ----------
    places_mm
        Free rectangles of the thing's face, the largest first.
    seen
        Whether any of it is in sight.
    cut
        Whether the plane cuts it.
    free
        Whether there is a free place; else `places_mm` holds but a spot on its edge.
    """

    thing: Thing
    places_mm: tuple[Patch, ...]
    seen: bool
    cut: bool
    free: bool = True


@dataclass(frozen=True, kw_only=True, slots=True)
class Casting:
    """Bodies as they are drawn.

    Attributes
    ----------
    far_areas
        Tones of what stands behind the given walls; to be painted before them.
    areas
        Tones of the others.
    hanging
        What the plane cuts away, where that is drawn.
    """

    far_areas: tuple[Primitive, ...]
    areas: tuple[Primitive, ...]
    lines: tuple[Primitive, ...]
    tags: tuple[Tag, ...]
    hanging: tuple[Tag, ...] = ()


def cast(
    things: Sequence[Thing],
    gaze: Gaze,
    *,
    hanging: bool = False,
    built_in: bool = True,
    behind: bool = True,
    walls: Sequence[Flat] = (),
) -> Casting:
    """Return bodies as they are drawn along a gaze.

    Parameters
    ----------
    things
        Bodies.
    gaze
        From where they are looked at.
    hanging
        What the plane cuts away is drawn, too, as hanging above: dashed.
    built_in
        What is built into something and wholly hidden by it is drawn dashed; else left out.
    behind
        What stands behind other things is drawn dashed; else only what is built into
        something that the plane cuts.
    walls
        Parts of the vehicle that hide what lies behind them, and are drawn by others.
    """
    bodies = [fallen(thing, gaze) for thing in things]
    shown = [body for body in bodies if body.seen]
    shown.sort(key=lambda body: (-_depth_mm(body, shown), len(body.thing.carriers)))
    open_ = {body.thing.name for body in shown if body.cut}
    front_mm = _TOP_MM if gaze.away_axis == _UPWARDS else _FRONT_MM
    wall_mm = min((wall.near_mm for wall in walls), default=math.inf)
    areas: list[Primitive] = []
    far_areas: list[Primitive] = []
    lines: list[Primitive] = []
    tags: list[Tag] = []
    for body in shown:
        hiders = [*_hiders(body, shown, front_mm), *((wall, _patch(wall)) for wall in walls)]
        drawn = tuple(_edges(body, hiders, gaze))
        in_sight = any(line.style is Style.SOLID for line in drawn)
        carried = (
            any(name in open_ for name in body.thing.carriers)
            if not behind
            else (bool(body.thing.carriers))
        )
        if not in_sight and not (built_in if carried else behind):
            continue
        if not behind and not carried:
            drawn = tuple(line for line in drawn if line.style is Style.SOLID)
        (far_areas if body.near_mm > wall_mm else areas).extend(_areas(body, gaze))
        lines.extend(drawn)
        tags.append(_tag(body, hiders, shown, front_mm, drawn))
    above = [body for body in bodies if hanging and body.before and not body.seen]
    for body in above:
        lines.extend(_hanging(body, gaze))
    return Casting(
        far_areas=tuple(far_areas),
        areas=tuple(areas),
        lines=tuple(lines),
        tags=tuple(tags),
        hanging=tuple(_hanging_tag(body) for body in above),
    )


def _depth_mm(body: Fallen, shown: Sequence[Fallen]) -> float:
    """Return how deep a body is painted: what is built into a cut carcass lies over it."""
    cut_open = {other.thing.name for other in shown if other.cut}
    if any(name in cut_open for name in body.thing.carriers):
        return 0.0
    return body.near_mm


def _hiders(body: Fallen, shown: Sequence[Fallen], front_mm: float) -> list[tuple[Flat, Patch]]:
    """Return what can hide a body: flats of other bodies that overlap it on the paper."""
    around = _around(body.seen)
    return [
        (flat, patch)
        for other in shown
        if other is not body
        for flat in other.seen
        if not (flat.cut and other.thing.name in body.thing.carriers)
        and _meet(patch := _patch(flat), around)
        and flat.near_mm < body.near_mm + _reach_mm(body)
        and not (
            other.thing.name in body.thing.carriers and body.near_mm - flat.near_mm <= front_mm
        )
    ]


def _reach_mm(body: Fallen) -> float:
    return max(flat.near_mm for flat in body.seen) - body.near_mm


def _edges(body: Fallen, hiders: list[tuple[Flat, Patch]], gaze: Gaze) -> Iterator[Line]:
    if body.thing.round_axis == gaze.away_axis:
        yield from _round_edges(body, hiders)
        return
    for flat in body.seen:
        own = [
            _patch(other)
            for other in body.seen
            if other is not flat and other.near_mm <= flat.near_mm + _NUDGE_MM
        ]
        nearer = [patch for other, patch in hiders if other.near_mm < flat.near_mm - _NUDGE_MM]
        corners = flat.corners
        for index, start in enumerate(corners):
            end = corners[(index + 1) % 4]
            yield from _edge(body, start, end, own, nearer, cut=flat.cut)


def _edge(
    body: Fallen, start: Point, end: Point, own: list[Patch], nearer: list[Patch], *, cut: bool
) -> Iterator[Line]:
    if not own and not nearer:
        yield _line(body, start, end, (0.0, 1.0), hidden=False, cut=cut)
        return
    length = math.dist(start, end) or 1.0
    # corners run anticlockwise, so the body lies to the left of each edge
    inwards = (
        -(end[1] - start[1]) / length * _NUDGE_MM,
        (end[0] - start[0]) / length * _NUDGE_MM,
    )
    inside = (_plus(start, inwards), _plus(end, inwards))
    outwards = (-inwards[0], -inwards[1])
    outside = (_plus(start, outwards), _plus(end, outwards))
    seen, hidden = stretches(
        start,
        end,
        dropped=((*outside, patch) for patch in own),
        hiders=((*inside, patch) for patch in nearer),
    )
    for part in seen:
        yield _line(body, start, end, part, hidden=False, cut=cut)
    for part in hidden:
        yield _line(body, start, end, part, hidden=True, cut=cut)


def _round_edges(body: Fallen, hiders: list[tuple[Flat, Patch]]) -> Iterator[Line]:
    nearer = [patch for other, patch in hiders if other.near_mm < body.near_mm - _NUDGE_MM]
    points = _ring(body)
    for index, start in enumerate(points):
        end = points[(index + 1) % len(points)]
        yield from _edge(body, start, end, [], nearer, cut=body.cut)


def _ring(body: Fallen) -> tuple[Point, ...]:
    """Return the outline of a cylinder seen along its axis."""
    left, low, right, high = _around(body.seen)
    middle, half = ((left + right) / 2, (low + high) / 2), ((right - left) / 2, (high - low) / 2)
    turns = [2 * math.pi * step / _ROUND_STEPS for step in range(_ROUND_STEPS)]
    return tuple(
        (middle[0] + half[0] * math.cos(turn), middle[1] + half[1] * math.sin(turn))
        for turn in turns
    )


def _line(
    body: Fallen, start: Point, end: Point, part: Stretch, *, hidden: bool, cut: bool
) -> Line:
    if hidden:
        weight, style = Weight.FINE, Style.DASHED
    else:
        weight, style = (Weight.BOLD if cut else Weight.NORMAL), Style.SOLID
    return Line(
        start_mm=_between(start, end, part[0]),
        end_mm=_between(start, end, part[1]),
        layer=body.thing.layer,
        weight=weight,
        style=style,
    )


def _areas(body: Fallen, gaze: Gaze) -> Iterator[Area]:
    if body.thing.round_axis == gaze.away_axis:
        yield Area(points_mm=_ring(body), layer=body.thing.layer)
        return
    for flat in sorted(body.seen, key=lambda flat: -flat.near_mm):
        yield Area(points_mm=flat.corners, layer=body.thing.layer)


def _hanging(body: Fallen, gaze: Gaze) -> Iterator[Line]:
    above = Fallen(thing=body.thing, seen=body.before, before=())
    for line in _edges(above, [], gaze):
        yield Line(
            start_mm=line.start_mm,
            end_mm=line.end_mm,
            layer=line.layer,
            weight=Weight.FINE,
            style=Style.DASHED,
        )


def _hanging_tag(body: Fallen) -> Tag:
    above = Fallen(thing=body.thing, seen=body.before, before=())
    place = _pointed_at(above, ())
    return Tag(thing=body.thing, places_mm=(place,), seen=False, cut=False, free=False)


def _tag(
    body: Fallen,
    hiders: list[tuple[Flat, Patch]],
    shown: Sequence[Fallen],
    front_mm: float,
    drawn: Sequence[Line],
) -> Tag:
    name = body.thing.name
    solid = [line for line in drawn if line.style is Style.SOLID]
    through = {
        _patch(flat)
        for other in shown
        if not solid and other.thing.name in body.thing.carriers
        for flat in other.seen
    }
    covers = [patch for _, patch in hiders if patch not in through]
    covers += [
        _patch(flat)
        for other in shown
        if name in other.thing.carriers and (body.cut or other.near_mm - body.near_mm <= front_mm)
        for flat in other.seen
    ]
    places = [place for flat in body.seen for place in free_places(_patch(flat), covers)]
    places.sort(key=lambda p: (-(p[2] - p[0]) * (p[3] - p[1]), p))
    return Tag(
        thing=body.thing,
        places_mm=tuple(places) or (_pointed_at(body, solid),),
        seen=bool(solid),
        cut=body.cut,
        free=bool(places),
    )


def _pointed_at(body: Fallen, solid: Sequence[Line]) -> Patch:
    """Return the spot of a thing without a free place: on its longest seen edge, or its middle."""
    if solid:
        line = max(solid, key=lambda line: math.dist(line.start_mm, line.end_mm))
        spot = _between(line.start_mm, line.end_mm, 0.5)
    else:
        left, low, right, high = _around(body.seen)
        spot = ((left + right) / 2, (low + high) / 2)
    return (spot[0] - _SPOT_MM, spot[1] - _SPOT_MM, spot[0] + _SPOT_MM, spot[1] + _SPOT_MM)


def _patch(flat: Flat) -> Patch:
    return (*flat.low_mm, *flat.high_mm)


def _around(flats: Sequence[Flat]) -> Patch:
    return (
        min(flat.low_mm[0] for flat in flats),
        min(flat.low_mm[1] for flat in flats),
        max(flat.high_mm[0] for flat in flats),
        max(flat.high_mm[1] for flat in flats),
    )


def _meet(one: Patch, other: Patch) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _plus(one: Point, other: Point) -> Point:
    return (one[0] + other[0], one[1] + other[1])


def _between(start: Point, end: Point, share_frac: float) -> Point:
    return (
        start[0] + (end[0] - start[0]) * share_frac,
        start[1] + (end[1] - start[1]) * share_frac,
    )
