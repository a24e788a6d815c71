"""Plans: the living space cut level, and looked down on."""

from collections.abc import Iterator, Sequence

from coachwright.drawing.casting import Casting, Tag, cast
from coachwright.drawing.content import Content
from coachwright.drawing.dimensioning import Chain, Width, stops_of_mm
from coachwright.drawing.drafting import Draft
from coachwright.drawing.gaze import Gaze, from_above
from coachwright.drawing.measure import length_text
from coachwright.drawing.placing_findings import marks_in
from coachwright.drawing.scene import Layer, Polyline, Primitive, Weight
from coachwright.drawing.shell_plan import (
    body_outline,
    cut_shell,
    cut_walls,
    door_notes,
    front_seats,
)
from coachwright.drawing.shell_walls import rear_mm, wall_bands
from coachwright.drawing.things import Thing
from coachwright.drawing.zones import zone_outlines
from coachwright.errors import CallError
from coachwright.model.build import Mounting

_OVER_FLOOR_MM = 200.0
_OVER_HIP_MM = 1080.0
_OVER_BED_MM = 100.0
_AT_WALL_MM = 260.0
"""A fitting this near to a wall is measured along it."""
_LEAST_LENGTH_MM = 180.0
"""Shorter things are not in the chain of dimensions; their place is in the setting-out sheet."""
_LEAST_WIDTH_MM = 150.0
_MOST_WIDTH_MM = 3000.0
_LEVELS = {"floor": "floor", "hip": "hip", "bed": "shoulder"}
"""Level of the drawing → level of the body whose ways it shows."""


class NoBed(CallError):
    """A plan at bed height was asked for where there is no bed."""


def plan(content: Content, level: str) -> Draft:
    """Return the plan at one level.

    Parameters
    ----------
    content
        The build with its layout.
    level
        ``"floor"``, ``"hip"`` or ``"bed"``.

    Raises
    ------
    NoBed
        Where the level is the bed's and there is none.
    """
    gaze = from_above(_cut_mm(content, level))
    things = [t for t in content.things if t.inside]
    casting = cast(
        things,
        gaze,
        hanging=level != "floor",
        built_in=level == "floor",
        walls=cut_walls(content.build, content.layout, gaze.cut_mm or 0.0),
    )
    shown = [tag.thing for tag in casting.tags]
    seen = [tag.thing for tag in casting.tags if tag.seen]
    vehicle = content.build.vehicle
    half_mm = vehicle.outside.width_mm / 2
    swing_mm = vehicle.rear_end.door_hinge_y_mm
    return Draft(
        title=f"Plan at {level} height",
        subtitle=_subtitle(content, gaze),
        primitives=tuple(_primitives(content, gaze, casting)),
        low_mm=(-vehicle.outside.front_overhang_mm, -half_mm),
        high_mm=(rear_mm(vehicle) + swing_mm, half_mm + 70.0),
        front="left",
        tags=tuple(_tags(casting, level)),
        notes=door_notes(content.build, content.layout, gaze.cut_mm or 0.0),
        chains=tuple(_chains(content, seen, gaze)),
        widths=tuple(_widths(content, _LEVELS[level])),
        marks=marks_in(content, gaze, {thing.name for thing in shown}, along_aisle=True),
        sizes=True,
    )


def _tags(casting: Casting, level: str) -> Iterator[Tag]:
    """Yield what is labelled: at the floor everything, higher up what is in sight or the cab's."""
    for tag in casting.tags:
        if level == "floor" or (tag.seen and tag.thing.number):
            yield tag
    for tag in casting.hanging:
        if tag.thing.mounting is Mounting.CAB:
            yield tag


def _cut_mm(content: Content, level: str) -> float:
    floor_mm = content.layout.build_up.floor_mm
    if level == "floor":
        return floor_mm + _OVER_FLOOR_MM
    if level == "hip":
        return floor_mm + _OVER_HIP_MM
    beds = [f.name for f in content.build.having("bed")]
    tops = [t.high_mm[2] for t in content.things if t.name in beds and t.inside]
    if not tops:
        raise NoBed("this build has no bed inside; draw plan@floor or plan@hip instead")
    return max(tops) + _OVER_BED_MM


def _subtitle(content: Content, gaze: Gaze) -> str:
    over_mm = (gaze.cut_mm or 0.0) - content.layout.build_up.floor_mm
    unit = "in" if content.system == "us" else "mm"
    return f"cut {length_text(over_mm, content.system)} {unit} above the finished floor"


def _primitives(content: Content, gaze: Gaze, casting: Casting) -> Iterator[Primitive]:
    build, layout = content.build, content.layout
    yield Polyline(
        points_mm=body_outline(build.vehicle),
        layer=Layer.VEHICLE,
        closed=True,
        weight=Weight.NORMAL,
    )
    yield from front_seats(build.vehicle)
    yield from casting.far_areas
    yield from casting.areas
    yield from cut_shell(build, layout, gaze.cut_mm or 0.0)
    yield from zone_outlines(layout, gaze, {tag.thing.name for tag in casting.tags})
    yield from casting.lines


def _chains(content: Content, shown: Sequence[Thing], gaze: Gaze) -> Iterator[Chain]:
    vehicle, layout = content.build.vehicle, content.layout
    bands = wall_bands(content.build, layout, gaze.cut_mm or 0.0)
    ends = (vehicle.shell.cab_line_mm, vehicle.shell.rear_mm - layout.build_up.doors_mm)
    half_mm = vehicle.outside.width_mm / 2
    front, rear = -vehicle.outside.front_overhang_mm, rear_mm(vehicle)
    wheelbase = vehicle.outside.wheelbase_mm
    for side, sign in (("above", 1.0), ("below", -1.0)):
        along = [
            edge
            for thing in shown
            if _measured(thing) and _at_wall(thing, sign, bands.finished_mm)
            for edge in (thing.low_mm[0], thing.high_mm[0])
        ]
        if along:
            yield Chain(
                side="above" if side == "above" else "below",
                stops_mm=stops_of_mm([*ends, *along], 8.0),
                foot_mm=sign * half_mm,
            )
    yield Chain(side="above", stops_mm=ends, foot_mm=half_mm, words="living space")
    yield Chain(
        side="below",
        stops_mm=(front, 0.0, wheelbase, rear),
        foot_mm=-half_mm,
    )
    yield Chain(side="below", stops_mm=(front, rear), foot_mm=-half_mm, words="vehicle")
    yield Chain(side="left", stops_mm=(-half_mm, half_mm), foot_mm=front + 350.0)
    yield Chain(
        side="right",
        stops_mm=(-bands.finished_mm, bands.finished_mm),
        foot_mm=rear_mm(vehicle),
    )


def _measured(thing: Thing) -> bool:
    return (
        not thing.carriers
        and thing.mounting is not Mounting.CAB
        and (thing.layer is Layer.FURNITURE or thing.size_mm[0] >= _LEAST_LENGTH_MM)
        and thing.mounting is not Mounting.CEILING
    )


def _at_wall(thing: Thing, sign_factor: float, finished_mm: float) -> bool:
    """Return whether a thing is measured along a wall: the nearer one, or both in the middle."""
    near = finished_mm - max(sign_factor * thing.low_mm[1], sign_factor * thing.high_mm[1])
    other = finished_mm + min(sign_factor * thing.low_mm[1], sign_factor * thing.high_mm[1])
    return near <= other + 1.0 or near <= _AT_WALL_MM


def _widths(content: Content, level: str) -> Iterator[Width]:
    drawn: set[int] = set()
    for aisle in content.layout.aisles:
        passage = aisle.passage
        if aisle.level != level or not _LEAST_WIDTH_MM <= passage.width_mm <= _MOST_WIDTH_MM:
            continue
        if "wall" in passage.between[0] and "wall" in passage.between[1]:
            continue
        # two ways that share their narrowest place are as wide as each other
        if round(passage.width_mm) not in drawn:
            drawn.add(round(passage.width_mm))
            yield Width(
                start_mm=passage.from_mm,
                end_mm=passage.to_mm,
                words="aisle",
                length_mm=passage.width_mm,
            )
