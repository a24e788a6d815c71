"""Sections across the living space, looked at forwards from behind."""

from collections.abc import Iterator, Sequence

from coachwright.drawing.casting import Casting, Tag, cast
from coachwright.drawing.content import Content
from coachwright.drawing.dimensioning import Chain, stops_of_mm
from coachwright.drawing.drafting import Draft, Note
from coachwright.drawing.gaze import Gaze, forwards
from coachwright.drawing.measure import length_text
from coachwright.drawing.placing_findings import marks_in
from coachwright.drawing.scene import Layer, Primitive
from coachwright.drawing.shell_section import cross_section, heights_of_mm
from coachwright.drawing.shell_walls import SILL_UNDER_MM, roof_mm, wall_bands
from coachwright.drawing.stops import across_edges_mm, measured, up_edges_mm
from coachwright.drawing.things import Thing
from coachwright.drawing.zones import zone_outlines
from coachwright.errors import CallError
from coachwright.model.build import Mounting

_LEAST_STEP_MM = 25.0
_DEPTH_MM = 1500.0
"""How far ahead of the plane things are still drawn."""


class OutsideTheLivingSpace(CallError):
    """A section was asked for where there is nothing to cut."""


def section(content: Content, x_mm: float) -> Draft:
    """Return the section at a place behind the front axle.

    Parameters
    ----------
    content
        The build with its layout.
    x_mm
        Where the plane stands. [mm]

    Raises
    ------
    OutsideTheLivingSpace
        Where the plane stands before the cab line or behind the rear doors.
    """
    shell = content.build.vehicle.shell
    if not shell.cab_line_mm < x_mm < shell.rear_mm:
        least, most = (length_text(x, "metric") for x in (shell.cab_line_mm, shell.rear_mm))
        raise OutsideTheLivingSpace(
            f"section@{x_mm:g} does not cut the living space, which reaches from {least} to "
            f"{most} mm behind the front axle; choose a place between"
        )
    gaze = forwards(x_mm)
    things = [
        t
        for t in content.things
        if t.inside and t.mounting is not Mounting.CAB and x_mm - t.high_mm[0] <= _DEPTH_MM
    ]
    casting = cast(things, gaze, behind=False)
    half = wall_bands(content.build, content.layout, 0.0).outer_mm
    unit = "in" if content.system == "us" else "mm"
    return Draft(
        title=f"Section {length_text(x_mm, content.system)} {unit} behind the front axle",
        subtitle="seen forwards; heights from the finished floor; on the right: the wall’s "
        "distance from the centreline at its height",
        primitives=tuple(_primitives(content, gaze, casting)),
        low_mm=(-half, -SILL_UNDER_MM),
        high_mm=(half, roof_mm(content.build.vehicle)),
        front="away",
        tags=tuple(tag for tag in casting.tags if _labelled(tag)),
        notes=_wall_notes(content),
        chains=tuple(_chains(content, [t.thing for t in casting.tags if t.cut], gaze)),
        marks=marks_in(content, gaze, {tag.thing.name for tag in casting.tags if tag.cut}),
        bands=("left", "right"),
    )


def _labelled(tag: Tag) -> bool:
    return tag.cut or (tag.seen and tag.free)


def _primitives(content: Content, gaze: Gaze, casting: Casting) -> Iterator[Primitive]:
    yield from casting.areas
    yield from cross_section(content.build, content.layout, gaze.cut_mm or 0.0)
    names = {tag.thing.name for tag in casting.tags if tag.cut}
    yield from zone_outlines(content.layout, gaze, names)
    yield from casting.lines


def _wall_notes(content: Content) -> tuple[Note, ...]:
    """Return how far the finished wall stands from the centreline at each height."""
    up = content.layout.build_up
    ceiling = content.build.vehicle.shell.ceiling_mm - up.ceiling_mm
    heights = [z for z in heights_of_mm(content.build.vehicle) if up.floor_mm < z < ceiling]
    notes = []
    for z in (up.floor_mm, *heights, ceiling):
        finished = wall_bands(content.build, content.layout, z).finished_mm
        off = length_text(finished, content.system)
        high = length_text(z - up.floor_mm, content.system)
        notes.append(
            Note(
                words=f"{off} at {high}",
                place_mm=(finished - 1.0, z - 1.0, finished + 1.0, z + 1.0),
                layer=Layer.SHELL,
            )
        )
    return tuple(notes)


def _chains(content: Content, seen: Sequence[Thing], gaze: Gaze) -> Iterator[Chain]:
    vehicle, up = content.build.vehicle, content.layout.build_up
    floor, ceiling = up.floor_mm, vehicle.shell.ceiling_mm - up.ceiling_mm
    bands = wall_bands(content.build, content.layout, floor)
    half = bands.finished_mm
    things = [t for t in seen if measured(t) and t.number]
    standing = [t for t in things if t.mounting is Mounting.FLOOR]
    hung = [t for t in things if t.mounting is Mounting.WALL]
    inner = [y for y in across_edges_mm(standing, gaze) if -half < y < half]
    yield Chain(
        side="below",
        stops_mm=stops_of_mm([-half, half, *inner], 8.0),
        foot_mm=-SILL_UNDER_MM,
    )
    yield Chain(
        side="below",
        stops_mm=(-half, half),
        foot_mm=-SILL_UNDER_MM,
        words="finished, at the floor",
    )
    top = roof_mm(vehicle)
    if hung:
        narrow = wall_bands(content.build, content.layout, ceiling).finished_mm
        yield Chain(
            side="above",
            stops_mm=stops_of_mm([-narrow, narrow, *across_edges_mm(hung, gaze)], 8.0),
            foot_mm=top,
        )
    for side, sign in (("left", -1.0), ("right", 1.0)):
        near = [t for t in things if sign * (t.low_mm[1] + t.high_mm[1]) > 0]
        heights = [z for z in up_edges_mm(near, gaze) if floor < z < ceiling]
        yield Chain(
            side="left" if side == "left" else "right",
            stops_mm=stops_of_mm([floor, ceiling, *heights], _LEAST_STEP_MM),
            foot_mm=sign * bands.outer_mm,
        )
    yield Chain(side="left", stops_mm=(floor, ceiling), foot_mm=-bands.outer_mm, words="clear")
