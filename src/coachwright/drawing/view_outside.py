"""The vehicle's sides from outside, with what it carries."""

from collections.abc import Iterator, Sequence

from coachwright.drawing.casting import Casting, cast
from coachwright.drawing.content import Content
from coachwright.drawing.dimensioning import Chain, Side, stops_of_mm
from coachwright.drawing.drafting import Draft
from coachwright.drawing.gaze import Gaze, plane, to_the_left, to_the_right
from coachwright.drawing.placing_findings import marks_in
from coachwright.drawing.scene import Layer, Line, Point, Polyline, Primitive, Weight
from coachwright.drawing.shell_walls import rear_mm, roof_mm
from coachwright.drawing.shifting import shifted
from coachwright.drawing.stops import up_edges_mm
from coachwright.drawing.things import Thing
from coachwright.drawing.van_outline import SILL_OF_FLOOR_FACTOR, body_side, wheels_side
from coachwright.model.build import Mounting

_OPPOSITE = {"left": 1.0, "right": -1.0}
_LEAST_STEP_MM = 25.0


def side(content: Content, which: str) -> Draft:
    """Return one side from outside, with everything that it carries.

    Parameters
    ----------
    content
        The build with its layout.
    which
        ``"left"`` or ``"right"``.
    """
    gaze = to_the_right() if which == "left" else to_the_left()
    things = [t for t in content.things if not t.inside and not _on_other_side(t, which)]
    vehicle = content.build.vehicle
    floor = content.floor_height_mm
    front, rear = -vehicle.outside.front_overhang_mm, rear_mm(vehicle)
    ends = sorted((gaze.across_factor * front, gaze.across_factor * rear))
    sill = vehicle.outside.floor_height_mm * (SILL_OF_FLOOR_FACTOR - 1.0)
    body = plane((ends[0], sill), (ends[1], roof_mm(vehicle)), -vehicle.outside.width_mm / 2)
    casting = cast(things, gaze, walls=(body,))
    shown = [tag.thing for tag in casting.tags]
    behind = max([rear, *(t.high_mm[0] for t in shown)])
    reach = sorted((*ends, gaze.across_factor * behind))
    top = max([roof_mm(vehicle), *(t.high_mm[2] for t in shown)])
    return Draft(
        title=f"{which.capitalize()} side from outside",
        subtitle="unladen; the outline of the body is plain and not for measuring",
        primitives=tuple(_side_primitives(content, gaze, casting, (reach[0], reach[-1]))),
        low_mm=(reach[0] - 60.0, -floor - 10.0),
        high_mm=(reach[-1] + 60.0, top),
        front="left" if which == "left" else "right",
        tags=tuple(tag for tag in casting.tags if tag.seen),
        chains=tuple(_side_chains(content, gaze, shown, top)),
        marks=marks_in(content, gaze, {thing.name for thing in shown}),
    )


def _on_other_side(thing: Thing, which: str) -> bool:
    middle = thing.low_mm[1] + thing.high_mm[1]
    return thing.mounting is Mounting.SIDE and middle * _OPPOSITE[which] > 0


def _side_primitives(
    content: Content, gaze: Gaze, casting: Casting, reach: Point
) -> Iterator[Primitive]:
    vehicle = content.build.vehicle
    floor = content.floor_height_mm
    yield Line(
        start_mm=(reach[0] - 60.0, -floor),
        end_mm=(reach[1] + 60.0, -floor),
        layer=Layer.GROUND,
        weight=Weight.BOLD,
    )
    yield from casting.far_areas
    own = vehicle.outside.floor_height_mm
    yield from shifted(body_side(vehicle), up_mm=-own, across_factor=gaze.across_factor)
    wheels = wheels_side(
        vehicle, wheel_diameter_mm=content.tyre_diameter_mm, lift_mm=content.lift_mm
    )
    yield from shifted(wheels, up_mm=-floor, across_factor=gaze.across_factor)
    yield from _doors(content, gaze)
    yield from casting.areas
    yield from casting.lines


def _doors(content: Content, gaze: Gaze) -> Iterator[Primitive]:
    """Yield the door openings of the side that is looked at."""
    which = "left" if gaze.across_factor > 0 else "right"
    for door in content.build.vehicle.apertures:
        if door.wall != which:
            continue
        across = [
            gaze.across_factor * (door.from_mm + part) for part in (0.0, door.clear_width_mm)
        ]
        low, high = door.sill_mm, door.sill_mm + door.clear_height_mm
        yield Polyline(
            points_mm=((across[0], low), (across[1], low), (across[1], high), (across[0], high)),
            layer=Layer.SHELL,
            closed=True,
            weight=Weight.FINE,
        )


def _side_chains(
    content: Content, gaze: Gaze, shown: Sequence[Thing], top_mm: float
) -> Iterator[Chain]:
    outside = content.build.vehicle.outside
    floor = content.floor_height_mm
    rear = rear_mm(content.build.vehicle)
    factor = gaze.across_factor
    axles = [factor * x for x in (-outside.front_overhang_mm, 0.0, outside.wheelbase_mm, rear)]
    behind = max([rear, *(t.high_mm[0] for t in shown)])
    yield Chain(side="below", stops_mm=stops_of_mm([*axles, factor * behind]), foot_mm=-floor)
    ends = sorted((axles[0], factor * behind))
    yield Chain(side="below", stops_mm=(ends[0], ends[1]), foot_mm=-floor, words="overall")
    hung = [
        t
        for t in shown
        if t.mounting in (Mounting.REAR_DOOR_LEFT, Mounting.REAR_DOOR_RIGHT, Mounting.HITCH)
    ]
    at_rear: Side = "right" if factor > 0 else "left"
    at_front: Side = "left" if factor > 0 else "right"
    heights = [z for z in up_edges_mm(hung, gaze) if -floor < z < top_mm]
    yield Chain(
        side=at_rear,
        stops_mm=stops_of_mm([-floor, top_mm, *heights], _LEAST_STEP_MM),
        foot_mm=factor * behind,
    )
    yield Chain(
        side=at_front,
        stops_mm=stops_of_mm([-floor, 0.0, roof_mm(content.build.vehicle), top_mm]),
        foot_mm=factor * -outside.front_overhang_mm,
    )
    yield Chain(
        side=at_front,
        stops_mm=(-floor, top_mm),
        foot_mm=factor * -outside.front_overhang_mm,
        words="overall",
    )
