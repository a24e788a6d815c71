"""The roof and the underbody, both looked at from above so that left and right stay in place."""

from collections.abc import Iterator, Sequence

from coachwright.drawing.casting import Casting, cast
from coachwright.drawing.content import Content
from coachwright.drawing.dimensioning import Chain, stops_of_mm
from coachwright.drawing.drafting import Draft
from coachwright.drawing.gaze import Gaze, from_above
from coachwright.drawing.placing_findings import marks_in
from coachwright.drawing.scene import Layer, Line, Polyline, Primitive, Style, Weight
from coachwright.drawing.shell_plan import body_outline
from coachwright.drawing.shell_walls import rear_mm
from coachwright.drawing.stops import across_edges_mm, up_edges_mm
from coachwright.drawing.things import Thing
from coachwright.drawing.zones import zone_outlines
from coachwright.model.build import Mounting
from coachwright.model.vehicle import BaseVehicle

_ON_ROOF = (
    Mounting.ROOF,
    Mounting.SIDE,
    Mounting.REAR_DOOR_LEFT,
    Mounting.REAR_DOOR_RIGHT,
    Mounting.HITCH,
)
_TYRE_MM = 215.0
"""Width that a tyre is drawn with."""
_LEAST_STEP_MM = 25.0
_LEAST_WIDTH_MM = 180.0
"""Narrower things are not in the chain across; their place is on the setting-out sheet."""


def roof(content: Content) -> Draft:
    """Return the roof plan: what stands on it, and the outline that may carry something."""
    gaze = from_above()
    things = [t for t in content.things if t.mounting in _ON_ROOF]
    vehicle = content.build.vehicle
    return _from_above(
        content,
        gaze,
        things,
        measured=[t for t in things if t.mounting is Mounting.ROOF],
        title="Roof",
        subtitle="seen from above; dash-dotted: the part of the roof that may carry something",
        under=(*_body(vehicle), *_roof_frame(vehicle)),
    )


def under(content: Content) -> Draft:
    """Return the underbody plan: what hangs there, and what is the vehicle's own."""
    gaze = from_above()
    vehicle = content.build.vehicle
    fitted = [t for t in content.things if t.mounting in (Mounting.UNDERBODY, Mounting.HITCH)]
    own = [thing for thing in _own_things(vehicle) if thing.layer is not Layer.ZONE]
    return _from_above(
        content,
        gaze,
        [*own, *fitted],
        measured=fitted,
        title="Underbody",
        subtitle="seen from above through the floor; dash-dotted: free places",
        under=(*_body(vehicle), *_wheels(content), *_free_places(vehicle)),
    )


def _from_above(
    content: Content,
    gaze: Gaze,
    things: Sequence[Thing],
    *,
    measured: Sequence[Thing],
    title: str,
    subtitle: str,
    under: tuple[Primitive, ...],
) -> Draft:
    vehicle = content.build.vehicle
    casting = cast(things, gaze)
    half = vehicle.outside.width_mm / 2
    seen = {tag.thing.name for tag in casting.tags if tag.seen}
    lows = [t.low_mm for t in things]
    highs = [t.high_mm for t in things]
    return Draft(
        title=title,
        subtitle=subtitle,
        primitives=(*under, *_bodies(content, gaze, casting)),
        low_mm=(
            min([-vehicle.outside.front_overhang_mm, *(low[0] for low in lows)]),
            min([-half, *(low[1] for low in lows)]),
        ),
        high_mm=(
            max([rear_mm(vehicle), *(high[0] for high in highs)]),
            max([half, *(high[1] for high in highs)]),
        ),
        front="left",
        tags=casting.tags,
        chains=tuple(_chains(content, gaze, [t for t in measured if t.name in seen], things)),
        marks=marks_in(content, gaze, {thing.name for thing in things}),
    )


def _bodies(content: Content, gaze: Gaze, casting: Casting) -> Iterator[Primitive]:
    yield from casting.far_areas
    yield from casting.areas
    names = {tag.thing.name for tag in casting.tags}
    yield from zone_outlines(content.layout, gaze, names)
    yield from casting.lines


def _body(vehicle: BaseVehicle) -> Iterator[Primitive]:
    yield Polyline(
        points_mm=body_outline(vehicle), layer=Layer.SHELL, closed=True, weight=Weight.NORMAL
    )
    yield Line(
        start_mm=(-vehicle.outside.front_overhang_mm - 60.0, 0.0),
        end_mm=(rear_mm(vehicle) + 60.0, 0.0),
        layer=Layer.SHELL,
        weight=Weight.FINE,
        style=Style.DASH_DOT,
    )


def _roof_frame(vehicle: BaseVehicle) -> Iterator[Primitive]:
    frame, half = vehicle.roof, vehicle.roof.half_width_mm
    yield Polyline(
        points_mm=(
            (frame.x_from_mm, -half),
            (frame.x_to_mm, -half),
            (frame.x_to_mm, half),
            (frame.x_from_mm, half),
        ),
        layer=Layer.ZONE,
        closed=True,
        weight=Weight.NORMAL,
        style=Style.DASH_DOT,
    )


def _own_things(vehicle: BaseVehicle) -> Iterator[Thing]:
    """Yield what the vehicle itself has under its floor."""
    for zone in vehicle.underbody:
        yield Thing(
            name=zone.name,
            number="",
            words=zone.name,
            layer=Layer.ZONE if zone.use == "free" else Layer.VEHICLE,
            boxes_mm=((zone.from_mm, zone.to_mm),),
            low_mm=zone.from_mm,
            high_mm=zone.to_mm,
        )


def _free_places(vehicle: BaseVehicle) -> Iterator[Primitive]:
    for zone in vehicle.underbody:
        if zone.use == "free":
            low, high = zone.from_mm, zone.to_mm
            yield Polyline(
                points_mm=(low[:2], (high[0], low[1]), high[:2], (low[0], high[1])),
                layer=Layer.ZONE,
                closed=True,
                weight=Weight.FINE,
                style=Style.DASH_DOT,
            )


def _wheels(content: Content) -> Iterator[Primitive]:
    vehicle = content.build.vehicle
    outside, radius = vehicle.outside, content.tyre_diameter_mm / 2
    dual = vehicle.tyre.dual_rear
    for x, track, count in (
        (0.0, outside.track_front_mm, 1),
        (outside.wheelbase_mm, outside.track_rear_mm, 2 if dual else 1),
    ):
        for sign in (-1.0, 1.0):
            for number in range(count):
                middle = sign * (track / 2 + (number - (count - 1) / 2) * (_TYRE_MM + 40.0))
                yield Polyline(
                    points_mm=(
                        (x - radius, middle - _TYRE_MM / 2),
                        (x + radius, middle - _TYRE_MM / 2),
                        (x + radius, middle + _TYRE_MM / 2),
                        (x - radius, middle + _TYRE_MM / 2),
                    ),
                    layer=Layer.VEHICLE,
                    closed=True,
                    weight=Weight.NORMAL,
                )
        yield Line(
            start_mm=(x, -outside.width_mm / 2),
            end_mm=(x, outside.width_mm / 2),
            layer=Layer.SHELL,
            weight=Weight.FINE,
            style=Style.DASH_DOT,
        )


def _chains(
    content: Content, gaze: Gaze, measured: Sequence[Thing], things: Sequence[Thing]
) -> Iterator[Chain]:
    vehicle = content.build.vehicle
    outside, half = vehicle.outside, vehicle.outside.width_mm / 2
    front, rear = -outside.front_overhang_mm, rear_mm(vehicle)
    low = min([-half, *(t.low_mm[1] for t in things)])
    high = max([half, *(t.high_mm[1] for t in things)])
    for side, sign, foot in (("above", 1.0, high), ("below", -1.0, low)):
        near = [t for t in measured if sign * (t.low_mm[1] + t.high_mm[1]) >= -1.0]
        if near:
            edges = [front, rear, *across_edges_mm(near, gaze)]
            yield Chain(
                side="above" if side == "above" else "below",
                stops_mm=stops_of_mm(edges, _LEAST_STEP_MM),
                foot_mm=foot,
            )
    yield Chain(side="below", stops_mm=(front, 0.0, outside.wheelbase_mm, rear), foot_mm=low)
    end = max([rear, *(t.high_mm[0] for t in things)])
    yield Chain(side="below", stops_mm=(front, rear), foot_mm=low, words="vehicle")
    if end > rear and any(thing.mounting is Mounting.ROOF for thing in things):
        # only this view has everything that stands out behind
        yield Chain(side="below", stops_mm=(front, end), foot_mm=low, words="overall")
    yield Chain(side="left", stops_mm=(-half, half), foot_mm=front)
    wide = [t for t in measured if t.size_mm[1] >= _LEAST_WIDTH_MM]
    across = [y for y in up_edges_mm(wide, gaze) if -half < y < half]
    if across:
        yield Chain(
            side="right",
            stops_mm=stops_of_mm([-half, 0.0, half, *across], _LEAST_STEP_MM),
            foot_mm=end,
        )
