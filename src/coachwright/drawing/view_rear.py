"""The rear of the vehicle, its doors closed and open."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from coachwright.drawing.casting import cast
from coachwright.drawing.content import Content
from coachwright.drawing.dimensioning import Chain, stops_of_mm
from coachwright.drawing.drafting import Draft, Note
from coachwright.drawing.gaze import Flat, forwards, plane
from coachwright.drawing.placing_findings import REAR_DOORS, marks_in
from coachwright.drawing.scene import Area, Layer, Line, Point, Polyline, Primitive, Style, Weight
from coachwright.drawing.shell_section import outer_section
from coachwright.drawing.shell_walls import SILL_UNDER_MM, rear_mm, roof_mm
from coachwright.drawing.stops import across_edges_mm, up_edges_mm
from coachwright.drawing.things import Corner, Thing
from coachwright.model.build import Mounting
from coachwright.model.vehicle import BaseVehicle

_ON_DOORS = {Mounting.REAR_DOOR_LEFT: -1.0, Mounting.REAR_DOOR_RIGHT: 1.0}
_BEHIND = (*_ON_DOORS, Mounting.HITCH)
_TYRE_MM = 215.0
_TURNED_AXIS = (1, 0, 2)
"""Axis of what hangs on a door → its axis with the door square to the body."""
_LEAF_MM = 60.0
_LEAST_STEP_MM = 25.0


def rear(content: Content, *, doors_open: bool) -> Draft:
    """Return the rear view.

    Parameters
    ----------
    content
        The build with its layout.
    doors_open
        The rear doors stand open, with what they carry.
    """
    gaze = forwards()
    vehicle = content.build.vehicle
    things = list(_shown(content, doors_open=doors_open))
    walls = tuple(_walls(content, doors_open=doors_open))
    casting = cast(things, gaze, built_in=False, behind=not doors_open, walls=walls)
    seen = [tag.thing for tag in casting.tags]
    half, floor = vehicle.outside.width_mm / 2, content.floor_height_mm
    wide = max([half, vehicle.rear_end.door_hinge_y_mm + _LEAF_MM, *map(_reach_mm, seen)])
    top = max([roof_mm(vehicle), *(t.high_mm[2] for t in seen)])
    return Draft(
        title=f"Rear, doors {'open' if doors_open else 'closed'}",
        subtitle="seen from behind, unladen; heights from the ground"
        + ("; doors square to the body" if doors_open else ""),
        primitives=(
            *casting.far_areas,
            *_vehicle(content, wide, doors_open=doors_open),
            *_doors(vehicle, doors_open=doors_open),
            *casting.areas,
            *casting.lines,
        ),
        low_mm=(-wide, -floor - 10.0),
        high_mm=(wide, top),
        front="away",
        tags=tuple(tag for tag in casting.tags if tag.seen),
        notes=() if doors_open else _zone_notes(vehicle),
        chains=tuple(_chains(content, seen, wide, top, doors_open=doors_open)),
        marks=marks_in(content, gaze, _judged(seen, doors_open=doors_open)),
        bands=("left", "right"),
    )


def _judged(seen: Sequence[Thing], *, doors_open: bool) -> set[str]:
    """Return what findings are shown of: with closed doors what hangs outside, and the doors."""
    if doors_open:
        return set()
    return {REAR_DOORS, *(thing.name for thing in seen)}


def _reach_mm(thing: Thing) -> float:
    return max(abs(thing.low_mm[1]), abs(thing.high_mm[1]))


def _shown(content: Content, *, doors_open: bool) -> Iterator[Thing]:
    for thing in content.things:
        if thing.inside:
            if doors_open and thing.mounting is not Mounting.CAB:
                yield thing
        elif doors_open and thing.mounting in _ON_DOORS:
            yield _swung(thing, content.build.vehicle)
        else:
            yield thing


def _swung(thing: Thing, vehicle: BaseVehicle) -> Thing:
    """Return what a door carries, where it stands with the door open square to the body."""
    sign = _ON_DOORS[thing.mounting or Mounting.REAR_DOOR_LEFT]
    hinge, end = sign * vehicle.rear_end.door_hinge_y_mm, rear_mm(vehicle)

    def swung(point: Corner) -> Corner:
        return (
            end + sign * (hinge - point[1]),
            hinge + sign * (point[0] - end + _LEAF_MM),
            point[2],
        )

    boxes = tuple(_ordered(swung(low), swung(high)) for low, high in thing.boxes_mm)
    low, high = _ordered(swung(thing.low_mm), swung(thing.high_mm))
    axis = None if thing.round_axis is None else _TURNED_AXIS[thing.round_axis]
    return replace(thing, boxes_mm=boxes, low_mm=low, high_mm=high, round_axis=axis)


def _ordered(one: Corner, other: Corner) -> tuple[Corner, Corner]:
    pairs = [sorted(pair) for pair in zip(one, other, strict=True)]
    return (
        (pairs[0][0], pairs[1][0], pairs[2][0]),
        (pairs[0][1], pairs[1][1], pairs[2][1]),
    )


def _door_top_mm(vehicle: BaseVehicle) -> float:
    if vehicle.rear_end.door_top_mm is not None:
        return vehicle.rear_end.door_top_mm
    doors = [door for door in vehicle.apertures if door.wall == "rear"]
    if doors:
        return doors[0].sill_mm + doors[0].clear_height_mm
    return vehicle.shell.ceiling_mm


def _walls(content: Content, *, doors_open: bool) -> Iterator[Flat]:
    """Yield rear face, bumper and wheels: they hide what stands before them in the vehicle."""
    vehicle = content.build.vehicle
    near = -rear_mm(vehicle)
    half, hinge = vehicle.outside.width_mm / 2, vehicle.rear_end.door_hinge_y_mm
    top, edge = roof_mm(vehicle), _door_top_mm(vehicle)
    low, high = _bumper(vehicle)
    yield plane(low, high, near)
    for low, high in _wheels(content):
        axle = vehicle.outside.wheelbase_mm + content.tyre_diameter_mm / 2
        yield plane(low, high, -axle)
    if not doors_open:
        yield plane((-half, -SILL_UNDER_MM), (half, top), near)
        return
    yield plane((-half, -SILL_UNDER_MM), (half, 0.0), near)
    yield plane((-half, edge), (half, top), near)
    for sign in (-1.0, 1.0):
        across = sorted((sign * hinge, sign * half))
        yield plane((across[0], 0.0), (across[1], edge), near)


def _bumper(vehicle: BaseVehicle) -> tuple[Point, Point]:
    floor, half = vehicle.outside.floor_height_mm, vehicle.outside.width_mm / 2
    lowest = min(vehicle.rear_end.lowest_height_mm - floor, -SILL_UNDER_MM - 40.0)
    return (-half + 60.0, lowest), (half - 60.0, -60.0)


def _wheels(content: Content) -> Iterator[tuple[Point, Point]]:
    """Yield the corners of the rear tyres."""
    vehicle = content.build.vehicle
    outside = vehicle.outside
    count = 2 if vehicle.tyre.dual_rear else 1
    ground = -content.floor_height_mm
    for sign in (-1.0, 1.0):
        for number in range(count):
            shift = (number - (count - 1) / 2) * (_TYRE_MM + 40.0)
            middle = sign * (outside.track_rear_mm / 2 + shift)
            low = (middle - _TYRE_MM / 2, ground)
            # the body covers what stands higher
            top = min(ground + content.tyre_diameter_mm, -SILL_UNDER_MM)
            yield low, (middle + _TYRE_MM / 2, top)


def _vehicle(content: Content, wide_mm: float, *, doors_open: bool) -> Iterator[Primitive]:
    """Yield ground, wheels, body and bumper."""
    vehicle = content.build.vehicle
    floor = content.floor_height_mm
    yield Line(
        start_mm=(-wide_mm, -floor),
        end_mm=(wide_mm, -floor),
        layer=Layer.GROUND,
        weight=Weight.BOLD,
    )
    for low, high in _wheels(content):
        yield _rect(low[0], high[0], low[1], high[1])
    outer = outer_section(vehicle)
    hinge, edge = vehicle.rear_end.door_hinge_y_mm, _door_top_mm(vehicle)
    opening = ((hinge, 0.0), (hinge, edge), (-hinge, edge), (-hinge, 0.0)) if doors_open else ()
    yield Area(points_mm=(*outer, *opening), layer=Layer.BODY)
    if doors_open:
        corners = (outer[0], outer[-1], (outer[-1][0], 0.0), (outer[0][0], 0.0))
        yield Area(points_mm=corners, layer=Layer.BODY)
    yield Polyline(points_mm=outer, layer=Layer.BODY, weight=Weight.BOLD, closed=True)
    low, high = _bumper(vehicle)
    yield _rect(low[0], high[0], low[1], high[1])


def _rect(left_mm: float, right_mm: float, low_mm: float, high_mm: float) -> Polyline:
    return Polyline(
        points_mm=((left_mm, low_mm), (right_mm, low_mm), (right_mm, high_mm), (left_mm, high_mm)),
        layer=Layer.VEHICLE,
        closed=True,
        filled=True,
        weight=Weight.NORMAL,
    )


def _doors(vehicle: BaseVehicle, *, doors_open: bool) -> Iterator[Primitive]:
    hinge, top = vehicle.rear_end.door_hinge_y_mm, _door_top_mm(vehicle)
    if doors_open:
        yield Polyline(
            points_mm=((-hinge, 0.0), (hinge, 0.0), (hinge, top), (-hinge, top)),
            layer=Layer.SHELL,
            closed=True,
            weight=Weight.BOLD,
        )
    width = _LEAF_MM
    for sign in (-1.0, 1.0):
        start, end = (hinge, hinge + width) if doors_open else (0.0, hinge)
        across: Point = (sign * start, sign * end)
        yield Polyline(
            points_mm=((across[0], 0.0), (across[1], 0.0), (across[1], top), (across[0], top)),
            layer=Layer.SHELL,
            closed=True,
            weight=Weight.NORMAL,
        )
    if not doors_open:
        for zone in vehicle.rear_end.zones:
            low, high = zone.from_mm, zone.to_mm
            yield Polyline(
                points_mm=(low, (high[0], low[1]), high, (low[0], high[1])),
                layer=Layer.SHELL,
                closed=True,
                weight=Weight.FINE,
                style=Style.SOLID,
            )


def _zone_notes(vehicle: BaseVehicle) -> tuple[Note, ...]:
    return tuple(
        Note(words=zone.name, place_mm=(*zone.from_mm, *zone.to_mm))
        for zone in vehicle.rear_end.zones
    )


def _chains(
    content: Content, seen: Sequence[Thing], wide_mm: float, top_mm: float, *, doors_open: bool
) -> Iterator[Chain]:
    vehicle = content.build.vehicle
    gaze = forwards()
    floor, half = content.floor_height_mm, vehicle.outside.width_mm / 2
    hinge = vehicle.rear_end.door_hinge_y_mm
    behind = [t for t in seen if t.mounting in _BEHIND]
    heights = [z for z in up_edges_mm(behind, gaze) if -floor < z < top_mm]
    yield Chain(
        side="left",
        stops_mm=stops_of_mm([-floor, 0.0, _door_top_mm(vehicle), top_mm], _LEAST_STEP_MM),
        foot_mm=-wide_mm,
    )
    if heights:
        yield Chain(
            side="right",
            stops_mm=stops_of_mm([-floor, top_mm, *heights], _LEAST_STEP_MM),
            foot_mm=wide_mm,
        )
    yield Chain(side="left", stops_mm=(-floor, top_mm), foot_mm=-wide_mm, words="overall")
    edges = [y for y in across_edges_mm(behind, gaze) if abs(y) < wide_mm]
    if edges:
        yield Chain(
            side="below", stops_mm=stops_of_mm([-hinge, 0.0, hinge, *edges], 8.0), foot_mm=-floor
        )
    yield Chain(side="below", stops_mm=(-half, half), foot_mm=-floor, words="body")
    if doors_open and wide_mm > half:
        yield Chain(side="below", stops_mm=(-wide_mm, wide_mm), foot_mm=-floor, words="doors open")
