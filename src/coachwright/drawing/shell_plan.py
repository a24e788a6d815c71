"""The vehicle in plan: its outline, and its walls and doors where a level plane cuts them."""

from collections.abc import Iterator

from coachwright.drawing.drafting import Note
from coachwright.drawing.gaze import Flat, plane
from coachwright.drawing.scene import (
    Arc,
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
from coachwright.drawing.shell_walls import WallBands, insulated, rear_mm, wall_bands
from coachwright.layout.model import Layout
from coachwright.model.build import Build
from coachwright.model.vehicle import Aperture, BaseVehicle

_NOSE: tuple[Point, ...] = ((0.0, 0.0), (0.0, 0.52), (0.06, 0.78), (0.2, 0.93), (0.45, 1.0))
"""The nose: share of the front overhang, share of the half width."""
_LEAF_MM = 45.0
"""Thickness that a sliding door is drawn with."""
_LEAST_MM = 1.0


def body_outline(vehicle: BaseVehicle) -> tuple[Point, ...]:
    """Return the outline of the body from above; the nose is nobody's."""
    half_mm = vehicle.outside.width_mm / 2
    overhang_mm = vehicle.outside.front_overhang_mm
    rear = rear_mm(vehicle)
    right = [(-overhang_mm * (1 - along), half_mm * across) for along, across in _NOSE]
    right += [(rear - 45.0, half_mm), (rear - 12.0, half_mm - 25.0), (rear, half_mm - 60.0)]
    return (*right, *((x, -y) for x, y in reversed(right) if y))


def cut_shell(build: Build, layout: Layout, z_mm: float) -> Iterator[Primitive]:
    """Yield walls and doors cut by a level plane.

    Parameters
    ----------
    build
        For the vehicle and its finishes.
    layout
        For what the finishes take.
    z_mm
        Height of the plane above the load floor. [mm]
    """
    bands = wall_bands(build, layout, z_mm)
    for side, sign in (("left", -1.0), ("right", 1.0)):
        doors = [
            door
            for door in build.vehicle.apertures
            if door.wall == side and door.sill_mm <= z_mm <= door.sill_mm + door.clear_height_mm
        ]
        for start, end in _solid(build.vehicle, doors):
            yield from _wall(build, bands, sign, start, end)
        for door in doors:
            yield from _sliding(bands, door, sign)
    yield from _rear(build, layout, bands)
    yield from _cab(build.vehicle, bands)


def _solid(vehicle: BaseVehicle, doors: list[Aperture]) -> Iterator[Point]:
    """Yield from where to where a side wall runs, with its doors left out."""
    here = vehicle.shell.cab_line_mm
    for door in sorted(doors, key=lambda door: door.from_mm):
        if door.from_mm > here:
            yield here, door.from_mm
        here = max(here, door.from_mm + door.clear_width_mm)
    if here < rear_mm(vehicle):
        yield here, rear_mm(vehicle)


def _wall(
    build: Build, bands: WallBands, sign_factor: float, start_mm: float, end_mm: float
) -> Iterator[Primitive]:
    back = bands.ribbed_mm if insulated(build, "walls") else bands.bare_mm
    for inner, outer, pattern in (
        (bands.finished_mm, back, Pattern.CROSSED),
        (back, bands.outer_mm, Pattern.DIAGONAL),
    ):
        if outer - inner < _LEAST_MM:
            continue
        yield Area(
            points_mm=_band(start_mm, end_mm, sign_factor * inner, sign_factor * outer),
            layer=Layer.SHELL,
            pattern=pattern,
        )
    yield Line(
        start_mm=(start_mm, sign_factor * back),
        end_mm=(end_mm, sign_factor * back),
        layer=Layer.SHELL,
        weight=Weight.FINE,
    )
    yield Polyline(
        points_mm=_band(
            start_mm, end_mm, sign_factor * bands.finished_mm, sign_factor * bands.outer_mm
        ),
        layer=Layer.SHELL,
        weight=Weight.BOLD,
        closed=True,
    )


def _band(
    start_mm: float, end_mm: float, one_mm: float, other_mm: float
) -> tuple[Point, Point, Point, Point]:
    return ((start_mm, one_mm), (end_mm, one_mm), (end_mm, other_mm), (start_mm, other_mm))


def _sliding(bands: WallBands, door: Aperture, sign_factor: float) -> Iterator[Primitive]:
    """Yield a closed side door, and where it stands when it is open."""
    end = door.from_mm + door.clear_width_mm
    outer, bare = sign_factor * bands.outer_mm, sign_factor * bands.bare_mm
    yield Polyline(
        points_mm=_band(door.from_mm, end, bare, outer),
        layer=Layer.SHELL,
        closed=True,
    )
    beside = outer + sign_factor * 25.0
    yield Polyline(
        points_mm=_band(
            end + 30.0, end + 30.0 + door.clear_width_mm, beside, beside + sign_factor * _LEAF_MM
        ),
        layer=Layer.SHELL,
        weight=Weight.FINE,
        closed=True,
        style=Style.DASHED,
    )


def _rear(build: Build, layout: Layout, bands: WallBands) -> Iterator[Primitive]:
    """Yield the rear end: the doors as leaves with their swing, what is beside them as wall."""
    vehicle = build.vehicle
    inner = vehicle.shell.rear_mm - layout.build_up.doors_mm
    outer = rear_mm(vehicle)
    hinge = min(vehicle.rear_end.door_hinge_y_mm, bands.outer_mm)
    doors = [door for door in vehicle.apertures if door.wall == "rear"]
    if not doors:
        yield Polyline(
            points_mm=_band(inner, outer, -bands.outer_mm, bands.outer_mm),
            layer=Layer.SHELL,
            weight=Weight.BOLD,
            closed=True,
        )
        return
    for sign in (-1.0, 1.0):
        yield Area(
            points_mm=_band(inner, outer, sign * hinge, sign * bands.finished_mm),
            layer=Layer.SHELL,
            pattern=Pattern.DIAGONAL,
        )
        yield Polyline(
            points_mm=_band(inner, outer, 0.0, sign * hinge), layer=Layer.SHELL, closed=True
        )
        yield Line(
            start_mm=(outer, sign * hinge),
            end_mm=(outer + hinge, sign * hinge),
            layer=Layer.SHELL,
            weight=Weight.FINE,
            style=Style.DASHED,
        )
        yield Arc(
            centre_mm=(outer, sign * hinge),
            radius_mm=hinge,
            from_deg=270.0 if sign > 0 else 0.0,
            to_deg=360.0 if sign > 0 else 90.0,
            layer=Layer.SHELL,
            style=Style.DASHED,
        )


def _cab(vehicle: BaseVehicle, bands: WallBands) -> Iterator[Primitive]:
    cab = vehicle.shell.cab_line_mm
    yield Line(
        start_mm=(cab, -bands.finished_mm),
        end_mm=(cab, bands.finished_mm),
        layer=Layer.SHELL,
        weight=Weight.FINE,
        style=Style.DASH_DOT,
    )
    half = vehicle.outside.width_mm / 2
    base = -0.38 * vehicle.outside.front_overhang_mm
    bow = ((base + 180.0, 0.86 * half), (base + 20.0, 0.45 * half), (base, 0.0))
    yield Polyline(
        points_mm=(*bow, *((x, -y) for x, y in reversed(bow[:-1]))),
        layer=Layer.VEHICLE,
        weight=Weight.NORMAL,
    )
    for sign in (-1.0, 1.0):
        yield Line(
            start_mm=(base + 180.0, sign * 0.86 * half),
            end_mm=(cab, sign * (half - 70.0)),
            layer=Layer.VEHICLE,
            weight=Weight.FINE,
        )


def front_seats(vehicle: BaseVehicle) -> Iterator[Primitive]:
    """Yield the vehicle's own seats in plan."""
    for seat in vehicle.seats:
        yield from _seat(seat.reference_mm[0], seat.reference_mm[1])


def cut_walls(build: Build, layout: Layout, z_mm: float) -> tuple[Flat, ...]:
    """Return what the side walls take of a plan: they hide what lies below them.

    Parameters
    ----------
    build
        For the vehicle.
    layout
        For what the finishes take.
    z_mm
        Height of the plane above the load floor. [mm]
    """
    bands = wall_bands(build, layout, z_mm)
    front, rear = build.vehicle.shell.cab_line_mm, rear_mm(build.vehicle)
    return (
        plane((front, -bands.outer_mm), (rear, -bands.finished_mm)),
        plane((front, bands.finished_mm), (rear, bands.outer_mm)),
    )


def _seat(x_mm: float, y_mm: float) -> Iterator[Primitive]:
    """Yield a front seat round its reference point: cushion, back and head rest."""
    for start, end, half in ((-360.0, 120.0, 245.0), (120.0, 220.0, 235.0), (145.0, 235.0, 130.0)):
        yield Polyline(
            points_mm=_band(x_mm + start, x_mm + end, y_mm - half, y_mm + half),
            layer=Layer.VEHICLE,
            closed=True,
            filled=True,
        )


def door_notes(build: Build, layout: Layout, z_mm: float) -> tuple[Note, ...]:
    """Return the names of the doors, each pointing at its opening.

    Parameters
    ----------
    build
        For the vehicle.
    layout
        For what the finishes take.
    z_mm
        Height of the plane above the load floor. [mm]
    """
    bands = wall_bands(build, layout, z_mm)
    notes = []
    for door in build.vehicle.apertures:
        if door.wall == "rear":
            rear = rear_mm(build.vehicle)
            place = (rear - 40.0, -bands.bare_mm, rear - 5.0, bands.bare_mm)
        else:
            sign = 1.0 if door.wall == "right" else -1.0
            across = sorted((sign * bands.bare_mm, sign * bands.outer_mm))
            place = (
                door.from_mm + 60.0,
                across[0],
                door.from_mm + door.clear_width_mm - 60.0,
                across[1],
            )
        notes.append(Note(words=door.name, place_mm=place))
    return tuple(notes)
