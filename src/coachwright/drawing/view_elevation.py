"""Inner elevations: the living space cut along its middle, looked at on the left and the right."""

from collections.abc import Iterator, Sequence

from coachwright.drawing.casting import Casting, cast
from coachwright.drawing.content import Content
from coachwright.drawing.dimensioning import Chain, stops_of_mm
from coachwright.drawing.drafting import Draft
from coachwright.drawing.gaze import Gaze, to_the_left, to_the_right
from coachwright.drawing.placing_findings import marks_in
from coachwright.drawing.scene import Layer, Primitive
from coachwright.drawing.shell_section import long_section
from coachwright.drawing.shell_walls import SILL_UNDER_MM, rear_mm, roof_mm
from coachwright.drawing.stops import across_edges_mm, measured, up_edges_mm
from coachwright.drawing.things import Thing
from coachwright.drawing.zones import zone_outlines
from coachwright.model.build import Mounting
from coachwright.model.shell import half_width_mm

_STANDING = (Mounting.FLOOR, None)
_LEAST_STEP_MM = 25.0
"""Heights nearer to each other than this are one in the chain."""


def elevation(content: Content, side: str) -> Draft:
    """Return the elevation of one wall from inside.

    Parameters
    ----------
    content
        The build with its layout.
    side
        ``"left"`` or ``"right"``.
    """
    gaze = to_the_left(0.0) if side == "left" else to_the_right(0.0)
    things = [
        *_doors(content, side),
        *(t for t in content.things if t.inside and t.mounting is not Mounting.CAB),
    ]
    casting = cast(things, gaze)
    seen = [tag.thing for tag in casting.tags if tag.seen]
    vehicle = content.build.vehicle
    ends = sorted(
        gaze.across_factor * x for x in (vehicle.shell.cab_line_mm - 60.0, rear_mm(vehicle))
    )
    return Draft(
        title=f"{side.capitalize()} wall from inside",
        subtitle="cut along the centreline; heights from the finished floor",
        primitives=tuple(_primitives(content, gaze, casting)),
        low_mm=(ends[0], -SILL_UNDER_MM),
        high_mm=(ends[1], roof_mm(vehicle)),
        front="right" if side == "left" else "left",
        tags=tuple(
            tag for tag in casting.tags if tag.seen or (tag.thing.number and tag.thing.carriers)
        ),
        chains=tuple(_chains(content, seen, gaze)),
        marks=marks_in(content, gaze, {thing.name for thing in seen}),
        sizes=False,
    )


def _doors(content: Content, side: str) -> Iterator[Thing]:
    """Yield the openings of a side wall as things that lie in it."""
    shell = content.build.vehicle.shell
    sign = 1.0 if side == "right" else -1.0
    for door in content.build.vehicle.apertures:
        if door.wall != side:
            continue
        half = half_width_mm(shell, 0.0)
        across = sorted((sign * half, sign * (half + 1.0)))
        low = (door.from_mm, across[0], door.sill_mm)
        high = (
            door.from_mm + door.clear_width_mm,
            across[1],
            door.sill_mm + door.clear_height_mm,
        )
        yield Thing(
            name=door.name,
            number="",
            words=door.name,
            layer=Layer.VEHICLE,
            boxes_mm=((low, high),),
            low_mm=low,
            high_mm=high,
        )


def _primitives(content: Content, gaze: Gaze, casting: Casting) -> Iterator[Primitive]:
    yield from casting.areas
    yield from long_section(content.build, content.layout, gaze.across_factor)
    names = {tag.thing.name for tag in casting.tags if tag.cut}
    yield from zone_outlines(content.layout, gaze, names)
    yield from casting.lines


def _chains(content: Content, seen: Sequence[Thing], gaze: Gaze) -> Iterator[Chain]:
    vehicle, up = content.build.vehicle, content.layout.build_up
    floor, ceiling = up.floor_mm, vehicle.shell.ceiling_mm - up.ceiling_mm
    ends = [
        gaze.across_factor * vehicle.shell.cab_line_mm,
        gaze.across_factor * (vehicle.shell.rear_mm - up.doors_mm),
    ]
    standing = [t for t in seen if t.mounting in _STANDING and (measured(t) or not t.number)]
    hung = [t for t in seen if t.mounting is Mounting.WALL and measured(t)]
    left, right = min(ends), max(ends)
    top = roof_mm(vehicle)
    for side, things, foot in (("below", standing, -SILL_UNDER_MM), ("above", hung, top)):
        if things:
            yield Chain(
                side="below" if side == "below" else "above",
                stops_mm=stops_of_mm([*ends, *across_edges_mm(things, gaze)], 8.0),
                foot_mm=foot,
            )
    yield Chain(side="below", stops_mm=(left, right), foot_mm=-SILL_UNDER_MM, words="living space")
    middle = (left + right) / 2
    for side, foot in (("left", left), ("right", right)):
        near = [
            t
            for t in (*standing, *hung)
            if t.number and (_centre_mm(t, gaze) < middle) == (side == "left")
        ]
        heights = [z for z in up_edges_mm(near, gaze) if floor < z < ceiling]
        yield Chain(
            side="left" if side == "left" else "right",
            stops_mm=stops_of_mm([floor, ceiling, *heights], _LEAST_STEP_MM),
            foot_mm=foot,
        )
    yield Chain(side="left", stops_mm=(floor, ceiling), foot_mm=left, words="clear")


def _centre_mm(thing: Thing, gaze: Gaze) -> float:
    return (gaze.flat(thing.low_mm)[0] + gaze.flat(thing.high_mm)[0]) / 2
