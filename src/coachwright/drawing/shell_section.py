"""The shell where an upright plane cuts it: across the vehicle, and along its middle."""

from collections.abc import Iterator

from coachwright.drawing.scene import (
    Area,
    Layer,
    Line,
    Pattern,
    Point,
    Polyline,
    Primitive,
    Style,
    Weight,
)
from coachwright.drawing.shell_walls import (
    SILL_UNDER_MM,
    insulated,
    rear_mm,
    roof_mm,
    skin_mm,
    wall_bands,
)
from coachwright.layout.model import Layout
from coachwright.model.build import Build
from coachwright.model.shell import half_width_mm
from coachwright.model.vehicle import BaseVehicle

_LEAST_MM = 1.0
_SKIN_MM = 8.0
_TURNED_IN_MM = 90.0


def heights_of_mm(vehicle: BaseVehicle) -> tuple[float, ...]:
    """Return the heights at which the walls change their slope, up to the ceiling."""
    ceiling = vehicle.shell.ceiling_mm
    inner = [row.z_mm for row in vehicle.shell.half_widths if 0.0 < row.z_mm < ceiling]
    return (0.0, *inner, ceiling)


def outer_section(vehicle: BaseVehicle) -> tuple[Point, ...]:
    """Return the outline of the body across, from its lower left corner over the roof."""
    skin = skin_mm(vehicle)
    right = [
        (half_width_mm(vehicle.shell, z) + skin, z or -SILL_UNDER_MM)
        for z in heights_of_mm(vehicle)
    ]
    top = roof_mm(vehicle)
    edge = min(vehicle.roof.half_width_mm, right[-1][0] - 30.0)
    right.append((edge, max(right[-1][1], top - vehicle.roof.crown_mm)))
    if top > right[-1][1]:
        right.append((edge * 0.4, top))
    return (*((-y, z) for y, z in right), *reversed(right))


def _inner_section(vehicle: BaseVehicle, walls_mm: float, ceiling_mm: float) -> tuple[Point, ...]:
    """Return an inner outline that stands in from the bare shell by two thicknesses."""
    top = vehicle.shell.ceiling_mm - ceiling_mm
    heights = [z for z in heights_of_mm(vehicle) if z < top]
    # above the ceiling the shell turns in to the roof
    in_mm = _TURNED_IN_MM if ceiling_mm < 0 else 0.0
    right = [(half_width_mm(vehicle.shell, z) - walls_mm, z) for z in heights]
    right.append((half_width_mm(vehicle.shell, top) - walls_mm - in_mm, top))
    return (*((-y, z) for y, z in right), *reversed(right))


def cross_section(build: Build, layout: Layout, x_mm: float) -> Iterator[Primitive]:
    """Yield the shell cut across, seen from behind.

    Parameters
    ----------
    build
        For the vehicle and its finishes.
    layout
        For what the finishes take.
    x_mm
        Where the plane stands. [mm]
    """
    vehicle, up = build.vehicle, layout.build_up
    outer = outer_section(vehicle)
    finished = _inner_section(vehicle, up.walls_mm, up.ceiling_mm)
    ribs = vehicle.shell.rib_depth_mm
    edge = roof_mm(vehicle) - vehicle.roof.crown_mm - vehicle.shell.ceiling_mm
    back = _inner_section(
        vehicle,
        -ribs if insulated(build, "walls") else 0.0,
        -max(0.0, min(ribs, edge - _SKIN_MM)) if insulated(build, "ceiling") else 0.0,
    )
    yield Area(points_mm=(*outer, *reversed(back)), layer=Layer.SHELL, pattern=Pattern.DIAGONAL)
    if up.walls_mm or ribs:
        yield Area(
            points_mm=(*back, *reversed(finished)), layer=Layer.SHELL, pattern=Pattern.CROSSED
        )
    yield from _floor((outer[0][0], outer[-1][0]), (finished[0][0], finished[-1][0]), up.floor_mm)
    yield from _door_in_section(build, layout, x_mm)
    yield Polyline(points_mm=back, layer=Layer.SHELL, weight=Weight.FINE)
    yield Polyline(points_mm=outer, layer=Layer.SHELL, weight=Weight.BOLD)
    inside = tuple((y, max(z, up.floor_mm)) for y, z in finished)
    yield Polyline(points_mm=inside, layer=Layer.SHELL, weight=Weight.BOLD, closed=True)


def _floor(outer: Point, inner: Point, floor_mm: float) -> Iterator[Primitive]:
    """Yield the cut floor: what is under the load floor, and its finishes on it."""
    left, right = outer
    yield Area(
        points_mm=_box(left, right, -SILL_UNDER_MM, 0.0),
        layer=Layer.SHELL,
        pattern=Pattern.DIAGONAL,
    )
    if floor_mm >= _LEAST_MM:
        yield Area(
            points_mm=_box(inner[0], inner[1], 0.0, floor_mm),
            layer=Layer.SHELL,
            pattern=Pattern.CROSSED,
        )
    for height, weight in ((0.0, Weight.NORMAL), (-SILL_UNDER_MM, Weight.BOLD)):
        yield Line(
            start_mm=(left, height), end_mm=(right, height), layer=Layer.SHELL, weight=weight
        )


def _door_in_section(build: Build, layout: Layout, x_mm: float) -> Iterator[Primitive]:
    """Yield the closed side door where the plane passes through its opening."""
    for door in build.vehicle.apertures:
        inside = door.from_mm <= x_mm <= door.from_mm + door.clear_width_mm
        if door.wall == "rear" or not inside:
            continue
        sign = 1.0 if door.wall == "right" else -1.0
        low, high = door.sill_mm, door.sill_mm + door.clear_height_mm
        between = [z for z in heights_of_mm(build.vehicle) if low < z < high]
        bands = [(z, wall_bands(build, layout, z)) for z in (low, *between, high)]
        points = (
            *((sign * band.finished_mm, z) for z, band in bands),
            *((sign * (band.outer_mm - 1.0), z) for z, band in reversed(bands)),
        )
        yield Polyline(
            points_mm=points, layer=Layer.VEHICLE, closed=True, filled=True, weight=Weight.NORMAL
        )


def long_section(build: Build, layout: Layout, across_factor: float) -> Iterator[Primitive]:
    """Yield the shell cut along its middle.

    Parameters
    ----------
    build
        For the vehicle and its finishes.
    layout
        For what the finishes take.
    across_factor
        1.0 where the front lies on the left of the drawing, else -1.0.
    """
    vehicle, up = build.vehicle, layout.build_up
    shell = vehicle.shell
    front, rear, outer = shell.cab_line_mm, shell.rear_mm - up.doors_mm, rear_mm(vehicle)
    top, ceiling = roof_mm(vehicle), shell.ceiling_mm
    ribbed = min(top, ceiling + shell.rib_depth_mm)
    back = ribbed if insulated(build, "ceiling") else ceiling
    bands = (
        (front, outer, -SILL_UNDER_MM, 0.0, Pattern.DIAGONAL),
        (front, rear, 0.0, up.floor_mm, Pattern.CROSSED),
        (front, rear, ceiling - up.ceiling_mm, back, Pattern.CROSSED),
        (front, outer, back, top, Pattern.DIAGONAL),
        (rear, outer, 0.0, back, Pattern.DIAGONAL),
    )
    for start, end, low, high, pattern in bands:
        if high - low >= _LEAST_MM:
            points = _box(across_factor * start, across_factor * end, low, high)
            yield Area(points_mm=points, layer=Layer.SHELL, pattern=pattern)
    inner = _box(across_factor * front, across_factor * rear, up.floor_mm, ceiling - up.ceiling_mm)
    # open towards the cab: along the floor, up the doors, back along the ceiling
    yield Polyline(points_mm=inner, layer=Layer.SHELL, weight=Weight.BOLD)
    around = _box(across_factor * front, across_factor * outer, -SILL_UNDER_MM, top)
    yield Polyline(points_mm=around, layer=Layer.SHELL, weight=Weight.BOLD)
    yield Line(
        start_mm=(across_factor * front, 0.0),
        end_mm=(across_factor * outer, 0.0),
        layer=Layer.SHELL,
    )
    yield Line(
        start_mm=(across_factor * front, -SILL_UNDER_MM),
        end_mm=(across_factor * front, top),
        layer=Layer.SHELL,
        weight=Weight.FINE,
        style=Style.DASH_DOT,
    )


def _box(
    left_mm: float, right_mm: float, low_mm: float, high_mm: float
) -> tuple[Point, Point, Point, Point]:
    return ((left_mm, low_mm), (right_mm, low_mm), (right_mm, high_mm), (left_mm, high_mm))
