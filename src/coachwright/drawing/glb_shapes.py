"""Shapes of the glTF file: a unit box, unit cylinders, and walls drawn along the vehicle.

Everything is in the file's own axes: metres, y up, the front of the vehicle towards +z, its left
side towards +x.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.drawing.things import Corner

_STEPS = 32
MM_PER_M_RATIO = 1000.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Shape:
    """Triangles: corners with their normals, and the corners of each triangle.

    Attributes
    ----------
    places_m
        x, y and z of each corner.
    normals_ratio
        Of length 1.
    """

    places_m: tuple[Corner, ...]
    normals_ratio: tuple[Corner, ...]
    indices: tuple[int, ...]


def in_file_axes_m(point: Corner, ground_mm: float) -> Corner:
    """Return a point of the vehicle in the file's axes.

    Parameters
    ----------
    point
        In the vehicle's axes. [mm]
    ground_mm
        Height of the load floor above the ground. [mm]

    Examples
    --------
    >>> in_file_axes_m((1000.0, 500.0, 100.0), 400.0)
    (-0.5, 0.5, -1.0)
    """
    x, y, z = point
    return (
        -y / MM_PER_M_RATIO,
        (z + ground_mm) / MM_PER_M_RATIO,
        -x / MM_PER_M_RATIO,
    )


def unit_box() -> Shape:
    """Return a box of 1 m round the origin."""
    places: list[Corner] = []
    normals: list[Corner] = []
    indices: list[int] = []
    for axis in range(3):
        first, second = (axis + 1) % 3, (axis + 2) % 3
        for sign in (1.0, -1.0):
            start = len(places)
            normal = [0.0, 0.0, 0.0]
            normal[axis] = sign
            # anticlockwise seen from outside
            for one, other in ((-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5)):
                corner = [0.0, 0.0, 0.0]
                corner[axis] = sign * 0.5
                corner[first], corner[second] = one * sign, other
                places.append((corner[0], corner[1], corner[2]))
                normals.append((normal[0], normal[1], normal[2]))
            indices += [start, start + 1, start + 2, start, start + 2, start + 3]
    return Shape(places_m=tuple(places), normals_ratio=tuple(normals), indices=tuple(indices))


def unit_cylinder(axis: int) -> Shape:
    """Return a cylinder of 1 m round the origin, along an axis of the file.

    Parameters
    ----------
    axis
        0, 1 or 2.
    """
    places: list[Corner] = []
    normals: list[Corner] = []
    indices: list[int] = []
    turns = [2 * math.pi * step / _STEPS for step in range(_STEPS + 1)]
    for turn in turns:
        out = (math.cos(turn), math.sin(turn))
        for end in (-0.5, 0.5):
            places.append(_around(axis, out[0] / 2, out[1] / 2, end))
            normals.append(_around(axis, out[0], out[1], 0.0))
    for step in range(_STEPS):
        low, high = 2 * step, 2 * step + 1
        indices += [low, low + 2, high, high, low + 2, high + 2]
    for end, sign in ((-0.5, -1.0), (0.5, 1.0)):
        hub = len(places)
        places.append(_around(axis, 0.0, 0.0, end))
        normals.append(_around(axis, 0.0, 0.0, sign))
        for turn in turns:
            places.append(_around(axis, math.cos(turn) / 2, math.sin(turn) / 2, end))
            normals.append(_around(axis, 0.0, 0.0, sign))
        for step in range(_STEPS):
            one, other = hub + 1 + step, hub + 2 + step
            indices += [hub, one, other] if sign > 0 else [hub, other, one]
    return Shape(places_m=tuple(places), normals_ratio=tuple(normals), indices=tuple(indices))


def _around(axis: int, first_m: float, second_m: float, along_m: float) -> Corner:
    corner = [0.0, 0.0, 0.0]
    corner[axis], corner[(axis + 1) % 3], corner[(axis + 2) % 3] = along_m, first_m, second_m
    return (corner[0], corner[1], corner[2])


def quads(faces: Sequence[tuple[Corner, Corner, Corner, Corner]]) -> Shape:
    """Return flat faces, each with the normal of its first three corners.

    Parameters
    ----------
    faces
        Corners in the file's axes, anticlockwise seen from the side that is lit.
    """
    places: list[Corner] = []
    normals: list[Corner] = []
    indices: list[int] = []
    for face in faces:
        start = len(places)
        normal = _normal(*face[:3])
        places += face
        normals += [normal] * 4
        indices += [start, start + 1, start + 2, start, start + 2, start + 3]
    return Shape(places_m=tuple(places), normals_ratio=tuple(normals), indices=tuple(indices))


def _normal(one: Corner, two: Corner, three: Corner) -> Corner:
    u = [b - a for a, b in zip(one, two, strict=True)]
    v = [b - a for a, b in zip(one, three, strict=True)]
    cross = (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])
    length = math.hypot(*cross) or 1.0
    return (cross[0] / length, cross[1] / length, cross[2] / length)
