"""The view that turns: a build as plain boxes and rolls, to be looked at all round."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from coachwright.actions.boarding import content_of
from coachwright.assess import Assessment
from coachwright.drawing.content import Content
from coachwright.drawing.scene import Layer, Polyline
from coachwright.drawing.shell_section import heights_of_mm
from coachwright.drawing.shell_walls import wall_bands
from coachwright.drawing.things import Thing
from coachwright.drawing.van_outline import body_side
from coachwright.model.placement import Point

_TYRE_MM = 215.0
_FLOOR_MM = 20.0
"""Drawn under the load floor, so that it is seen from the side."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Solid:
    """One body of the view.

    Attributes
    ----------
    name
        Reference name of the fitting; empty for a part of the vehicle.
    words, part
        What it is called, and what it is.
    trade
        Layer that it is drawn on.
    boxes_mm
        Corners of the disjoint boxes that make it up.
    round_axis
        0, 1 or 2 where it is a cylinder along x, y or z.
    within
        What it is built into, the nearest; empty for none.
    """

    name: str
    words: str
    part: str
    trade: str
    boxes_mm: tuple[tuple[Point, Point], ...]
    round_axis: int | None
    within: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Solids:
    """What the view that turns shows.

    Attributes
    ----------
    title
        For whoever does not see it.
    walls_mm
        Corners of each strip of the finished walls and the ceiling, with the sense across the
        vehicle in which the strip faces inwards: 1 for the left wall, -1 for the right, 0 above.
    sides_mm
        Outline of the body on its left and on its right side; a plain shape, not for measuring.
    """

    title: str
    solids: tuple[Solid, ...]
    walls_mm: tuple[tuple[tuple[Point, Point, Point, Point], int], ...]
    sides_mm: tuple[tuple[Point, ...], tuple[Point, ...]]


def solids(assessment: Assessment) -> Solids:
    """Return what the view that turns shows of a build.

    Parameters
    ----------
    assessment
        Of the build.
    """
    content = content_of(assessment)
    parts = {fitted.name: fitted.part.name for fitted in content.build.fittings}
    fitted = (_solid(thing, parts.get(thing.name, "")) for thing in content.things)
    return Solids(
        title=f"{content.build.name} all round",
        solids=(*_vehicle(content), *fitted),
        walls_mm=tuple(_walls(content)),
        sides_mm=(_side(content, -1.0), _side(content, 1.0)),
    )


def _solid(thing: Thing, part: str) -> Solid:
    whole = ((thing.low_mm, thing.high_mm),)
    return Solid(
        name=thing.name if thing.number else "",
        words=thing.words,
        part=part,
        trade=str(thing.layer),
        boxes_mm=thing.boxes_mm if thing.round_axis is None else whole,
        round_axis=thing.round_axis,
        within=thing.carriers[0] if thing.carriers else "",
    )


def _vehicle(content: Content) -> Iterator[Solid]:
    """Yield floor and wheels."""
    vehicle, up = content.build.vehicle, content.layout.build_up
    half_mm = wall_bands(content.build, content.layout, 0.0).finished_mm
    floor = (
        (vehicle.shell.cab_line_mm, -half_mm, -_FLOOR_MM),
        (vehicle.shell.rear_mm, half_mm, max(0.0, up.floor_mm)),
    )
    yield _own("floor", Layer.SHELL, floor)
    radius_mm = content.tyre_diameter_mm / 2
    ground_mm = -content.floor_height_mm
    outside = vehicle.outside
    for x_mm, track_mm in (
        (0.0, outside.track_front_mm),
        (outside.wheelbase_mm, outside.track_rear_mm),
    ):
        for sign in (-1.0, 1.0):
            y_mm = sign * track_mm / 2
            low = (x_mm - radius_mm, y_mm - _TYRE_MM / 2, ground_mm)
            high = (x_mm + radius_mm, y_mm + _TYRE_MM / 2, ground_mm + 2 * radius_mm)
            yield _own("wheel", Layer.VEHICLE, (low, high), round_axis=1)


def _own(
    words: str, layer: Layer, box: tuple[Point, Point], round_axis: int | None = None
) -> Solid:
    return Solid(
        name="",
        words=words,
        part="",
        trade=str(layer),
        boxes_mm=(box,),
        round_axis=round_axis,
        within="",
    )


def _side(content: Content, sense_factor: float) -> tuple[Point, ...]:
    vehicle = content.build.vehicle
    y_mm = sense_factor * vehicle.outside.width_mm / 2
    outline = next(each for each in body_side(vehicle) if isinstance(each, Polyline))
    return tuple((x, y_mm, above - content.floor_height_mm) for x, above in outline.points_mm)


def _walls(
    content: Content,
) -> Iterator[tuple[tuple[Point, Point, Point, Point], int]]:
    vehicle, up = content.build.vehicle, content.layout.build_up
    front_mm, rear_mm = vehicle.shell.cab_line_mm, vehicle.shell.rear_mm - up.doors_mm
    top_mm = vehicle.shell.ceiling_mm - up.ceiling_mm
    between = (z for z in heights_of_mm(vehicle) if up.floor_mm < z < top_mm)
    rows = [
        (wall_bands(content.build, content.layout, z).finished_mm, z)
        for z in (up.floor_mm, *between, top_mm)
    ]
    for sense in (1, -1):
        for (low_y, low_z), (high_y, high_z) in pairwise(rows):
            strip = (
                (front_mm, -sense * low_y, low_z),
                (rear_mm, -sense * low_y, low_z),
                (rear_mm, -sense * high_y, high_z),
                (front_mm, -sense * high_y, high_z),
            )
            yield strip, sense
    half, top = rows[-1]
    yield (
        (
            (front_mm, -half, top),
            (rear_mm, -half, top),
            (rear_mm, half, top),
            (front_mm, half, top),
        ),
        0,
    )
