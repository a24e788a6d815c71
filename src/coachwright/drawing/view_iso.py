"""The interior in isometric projection, its roof and one wall taken away."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from coachwright.drawing.casting import Tag
from coachwright.drawing.content import Content
from coachwright.drawing.drafting import Draft
from coachwright.drawing.hiding import Stretch, without
from coachwright.drawing.scene import (
    Area,
    Layer,
    Line,
    Point,
    Primitive,
    Style,
    Weight,
)
from coachwright.drawing.shell_section import heights_of_mm
from coachwright.drawing.shell_walls import wall_bands
from coachwright.drawing.solid_order import Block, Eye, behind, block, hidden, overlap, painted
from coachwright.drawing.things import Corner, Thing
from coachwright.model.build import Mounting

_TOP_MM = 5.0
"""What is built in this near to the top of its carcass shows in it."""
_TRIES = ((0.5, 0.5), (0.25, 0.5), (0.75, 0.5), (0.5, 0.25), (0.5, 0.75), (0.85, 0.85))
_SPOT_MM = 3.0
_LABELLED_MM = 150.0
"""Smaller things are not labelled here."""
_LEAST_MM = 1.0


def isometric(content: Content) -> Draft:
    """Return the isometric view, from the side on which less stands in the way.

    Parameters
    ----------
    content
        The build with its layout.
    """
    things = _shown(content)
    eye = Eye(turn_factor=_side_factor(things))
    blocks = _blocks(things, eye)
    order = painted(blocks, eye)
    by_name = {thing.name: thing for thing in things}
    shell = tuple(_shell_lines(content, order, eye))
    points = [eye.flat(point) for start, end, _ in _shell(content) for point in (start, end)]
    points += [eye.flat(corner) for body in order for corner in (body.low_mm, body.high_mm)]
    removed = "left" if eye.turn_factor > 0 else "right"
    return Draft(
        title="Isometric of the interior",
        subtitle=f"roof and {removed} wall taken away; a picture, not for measuring",
        primitives=(
            *shell,
            *(face for body in order for face in _faces(body, by_name[body.name], eye)),
            *(line for body in order for line in _edges(body, order, by_name[body.name], eye)),
        ),
        low_mm=(min(p[0] for p in points), min(p[1] for p in points)),
        high_mm=(max(p[0] for p in points), max(p[1] for p in points)),
        front="none",
        tags=tuple(_tags(order, by_name, eye)),
        bands=("left", "right"),
    )


def _shown(content: Content) -> list[Thing]:
    tops = {thing.name: thing.high_mm[2] for thing in content.things}
    return [
        thing
        for thing in content.things
        if thing.inside
        and thing.mounting not in (Mounting.CAB, Mounting.CEILING)
        and (
            not thing.carriers
            or thing.high_mm[2] >= tops.get(thing.carriers[0], float("inf")) - _TOP_MM
        )
    ]


def _side_factor(things: Sequence[Thing]) -> float:
    """Return from which side to look: where less stands in the way."""
    weights = {1.0: 0.0, -1.0: 0.0}
    for thing in things:
        side = 1.0 if thing.low_mm[1] + thing.high_mm[1] < 0 else -1.0
        weights[side] += thing.size_mm[0] * thing.high_mm[2]
    return min(weights, key=lambda side: (weights[side], -side))


def _blocks(things: Sequence[Thing], eye: Eye) -> list[Block]:
    found = []
    for thing in things:
        boxes = (
            ((thing.low_mm, thing.high_mm),) if thing.round_axis is not None else thing.boxes_mm
        )
        found += [block(thing.name, low, high, eye) for low, high in boxes]
    return found


def _shell(content: Content) -> Iterator[tuple[Corner, Corner, Weight]]:
    """Yield the edges of the floor, of the far wall and of the frame at both ends."""
    vehicle, up = content.build.vehicle, content.layout.build_up
    front, rear = vehicle.shell.cab_line_mm, vehicle.shell.rear_mm - up.doors_mm
    heights = [up.floor_mm, *(z for z in heights_of_mm(vehicle) if z > up.floor_mm)]
    rows = [(wall_bands(content.build, content.layout, z).finished_mm, z) for z in heights]
    half, floor = rows[0]
    for x in (front, rear):
        yield (x, -half, floor), (x, half, floor), Weight.BOLD
    for sign in (-1.0, 1.0):
        yield (front, sign * half, floor), (rear, sign * half, floor), Weight.BOLD
    far = _side_factor(_shown(content))
    for y, z in rows[1:]:
        yield (front, far * y, z), (rear, far * y, z), Weight.FINE
    end = rear if far > 0 else front
    for x, sign in ((front, far), (rear, far), (end, -far)):
        for (y, z), (next_y, next_z) in pairwise(rows):
            yield (x, sign * y, z), (x, sign * next_y, next_z), Weight.NORMAL
    y, z = rows[-1]
    yield (end, -y, z), (end, y, z), Weight.NORMAL


def _shell_lines(content: Content, order: Sequence[Block], eye: Eye) -> Iterator[Line]:
    """Yield the shell's edges where nothing stands before them: it lies behind everything."""
    for start, end, weight in _shell(content):
        one, other = eye.flat(start), eye.flat(end)
        for first, last in _seen(start, end, order, eye):
            yield Line(
                start_mm=_along(one, other, first),
                end_mm=_along(one, other, last),
                layer=Layer.SHELL,
                weight=weight,
            )


def _seen(start: Corner, end: Corner, nearer: Sequence[Block], eye: Eye) -> tuple[Stretch, ...]:
    parts: tuple[Stretch, ...] = ((0.0, 1.0),)
    for cover in nearer:
        gone = hidden(start, end, cover, eye)
        if gone is not None:
            parts = without(parts, gone)
    return parts


def _quads(body: Block, eye: Eye) -> tuple[tuple[Corner, ...], ...]:
    """Return the three faces that are seen: top, end and side."""
    (x0, y0, z0), (x1, y1, z1) = body.low_mm, body.high_mm
    x, y = (x0, y0) if eye.turn_factor > 0 else (x1, y1)
    return (
        ((x0, y0, z1), (x1, y0, z1), (x1, y1, z1), (x0, y1, z1)),
        ((x, y0, z0), (x, y1, z0), (x, y1, z1), (x, y0, z1)),
        ((x0, y, z0), (x1, y, z0), (x1, y, z1), (x0, y, z1)),
    )


def _faces(body: Block, thing: Thing, eye: Eye) -> Iterator[Primitive]:
    for quad in _quads(body, eye):
        yield Area(points_mm=tuple(map(eye.flat, quad)), layer=thing.layer)


def _edges(body: Block, order: Sequence[Block], thing: Thing, eye: Eye) -> Iterator[Line]:
    nearer = [
        other
        for other in order
        if other is not body and overlap(body, other) and behind(body, other, eye)
    ]
    drawn: set[frozenset[Corner]] = set()
    for quad in _quads(body, eye):
        for index, start in enumerate(quad):
            end = quad[(index + 1) % 4]
            if frozenset((start, end)) in drawn:
                continue
            drawn.add(frozenset((start, end)))
            one, other = eye.flat(start), eye.flat(end)
            for first, last in _seen(start, end, nearer, eye):
                yield Line(
                    start_mm=_along(one, other, first),
                    end_mm=_along(one, other, last),
                    layer=thing.layer,
                    weight=Weight.NORMAL,
                    style=Style.SOLID,
                )


def _along(start: Point, end: Point, share_frac: float) -> Point:
    return (
        start[0] + (end[0] - start[0]) * share_frac,
        start[1] + (end[1] - start[1]) * share_frac,
    )


def _tags(order: Sequence[Block], by_name: dict[str, Thing], eye: Eye) -> Iterator[Tag]:
    named: set[str] = set()
    for index, body in enumerate(order):
        thing = by_name[body.name]
        if body.name in named or not thing.number or max(thing.size_mm) < _LABELLED_MM:
            continue
        spot = _seen_spot(body, order[index + 1 :], eye)
        if spot is not None:
            named.add(body.name)
            place = (
                spot[0] - _SPOT_MM,
                spot[1] - _SPOT_MM,
                spot[0] + _SPOT_MM,
                spot[1] + _SPOT_MM,
            )
            yield Tag(thing=thing, places_mm=(place,), seen=True, cut=False)


def _seen_spot(body: Block, later: Sequence[Block], eye: Eye) -> Point | None:
    """Return a spot of a box that nothing nearer covers: on its top, else on another face."""
    for quad in _quads(body, eye):
        for across, along in _TRIES:
            spot = _within(quad, across, along)
            sums = eye.sights(spot)
            if not any(
                all(
                    cover.least_mm[axis] - _LEAST_MM < sums[axis] < cover.most_mm[axis] + _LEAST_MM
                    for axis in range(3)
                )
                for cover in later
                if overlap(body, cover)
            ):
                return eye.flat(spot)
    return None


def _within(quad: tuple[Corner, ...], across_frac: float, along_frac: float) -> Corner:
    first, second, _, last = quad
    one, two, three = (
        first[axis]
        + (second[axis] - first[axis]) * across_frac
        + (last[axis] - first[axis]) * along_frac
        for axis in range(3)
    )
    return (one, two, three)
