"""The whole build as binary glTF 2.0 for any 3-D viewer: metres, y up, the front towards +z."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any

from coachwright.drawing.content import Content
from coachwright.drawing.glb_file import Buffer, container
from coachwright.drawing.glb_shapes import (
    MM_PER_M_RATIO,
    Shape,
    in_file_axes_m,
    quads,
    unit_box,
    unit_cylinder,
)
from coachwright.drawing.scene import TRADES, Layer, Point
from coachwright.drawing.shell_section import heights_of_mm
from coachwright.drawing.shell_walls import wall_bands
from coachwright.drawing.things import Corner, Thing

_COLOURS: dict[Layer, tuple[float, float, float, float]] = {
    Layer.SHELL: (0.62, 0.66, 0.7, 0.3),
    Layer.VEHICLE: (0.16, 0.17, 0.18, 1.0),
    Layer.FURNITURE: (0.78, 0.62, 0.42, 1.0),
    Layer.ELECTRICAL: (0.76, 0.28, 0.12, 1.0),
    Layer.PLUMBING: (0.15, 0.4, 0.7, 1.0),
    Layer.GAS: (0.85, 0.68, 0.1, 1.0),
    Layer.AIR: (0.5, 0.28, 0.58, 1.0),
    Layer.ROOF: (0.2, 0.24, 0.34, 1.0),
    Layer.OUTSIDE: (0.2, 0.42, 0.32, 1.0),
    Layer.INTERIOR: (0.6, 0.62, 0.64, 1.0),
}
"""Red, green, blue and cover of each trade."""
_LEAST_MM = 1.0
"""A side of nothing is drawn this long, so that it can be seen and turned into light."""
_TYRE_MM = 215.0
_FILE_AXIS = (2, 0, 1)
"""Axis of the vehicle → axis of the file."""


@dataclass(slots=True)
class _Stock:
    """Shapes that many nodes share, each with the material of a trade."""

    buffer: Buffer = field(default_factory=Buffer)
    meshes: list[dict[str, Any]] = field(default_factory=list)
    _parts: dict[str, dict[str, Any]] = field(default_factory=dict)
    _kept: dict[tuple[str, Layer], int] = field(default_factory=dict)

    def mesh(self, name: str, layer: Layer) -> int:
        """Return the mesh of a shared shape in a trade's colour."""
        key = (name, layer)
        if key not in self._kept:
            if name not in self._parts:
                shape = unit_box() if name == "box" else unit_cylinder(int(name[-1]))
                self._parts[name] = self.buffer.add(shape)
            self._kept[key] = self._add(name, self._parts[name], layer)
        return self._kept[key]

    def own(self, name: str, shape: Shape, layer: Layer) -> int:
        """Return the mesh of a shape of its own."""
        return self._add(name, self.buffer.add(shape), layer)

    def _add(self, name: str, part: dict[str, Any], layer: Layer) -> int:
        material = [*_COLOURS].index(layer)
        self.meshes.append(
            {"name": f"{name} {layer}", "primitives": [{**part, "material": material}]}
        )
        return len(self.meshes) - 1


@dataclass(slots=True)
class _Tree:
    """Nodes; each is kept before its children's numbers are known."""

    nodes: list[dict[str, Any]] = field(default_factory=list)

    def add(self, node: dict[str, Any]) -> int:
        self.nodes.append(node)
        return len(self.nodes) - 1

    def group(self, name: str, children: list[int]) -> int:
        return self.add({"name": name, "children": children})


def glb(content: Content) -> bytes:
    """Return the build as one file; the same build gives the same bytes.

    Parameters
    ----------
    content
        The build with its layout.

    Notes
    -----
    A node for each fitting, named by its reference name, with position number and size in its
    extras, under a node for each trade.  The walls are those of the finished living space.
    """
    stock, tree = _Stock(), _Tree()
    groups = [tree.group("vehicle", list(_vehicle(content, stock, tree)))]
    for layer in TRADES:
        fitted = [
            _node(thing, content, stock, tree)
            for thing in content.things
            if thing.layer is layer and thing.number
        ]
        if fitted:
            groups.append(tree.group(f"{layer}", fitted))
    root = tree.group(content.build.name, groups)
    described = {
        "asset": {"version": "2.0", "generator": content.program},
        "scene": 0,
        "scenes": [{"name": content.build.name, "nodes": [root]}],
        "nodes": tree.nodes,
        "meshes": stock.meshes,
        "materials": [_material(layer) for layer in _COLOURS],
    }
    return container(described, stock.buffer)


def _material(layer: Layer) -> dict[str, Any]:
    colour = _COLOURS[layer]
    made: dict[str, Any] = {
        "name": f"{layer}",
        "pbrMetallicRoughness": {
            "baseColorFactor": list(colour),
            "metallicFactor": 0.0,
            "roughnessFactor": 0.8,
        },
        "doubleSided": True,
    }
    if colour[3] < 1.0:
        made["alphaMode"] = "BLEND"
    return made


def _node(thing: Thing, content: Content, stock: _Stock, tree: _Tree) -> int:
    extras = {
        "position": thing.number,
        "size_mm": [round(side, 1) for side in thing.size_mm],
    }
    boxes = thing.boxes_mm
    if thing.round_axis is not None:
        mesh = stock.mesh(f"cylinder {_FILE_AXIS[thing.round_axis]}", thing.layer)
        boxes = ((thing.low_mm, thing.high_mm),)
    else:
        mesh = stock.mesh("box", thing.layer)
    if len(boxes) == 1:
        placed = _placed(*boxes[0], content)
        return tree.add({"name": thing.name, "mesh": mesh, **placed, "extras": extras})
    children = [
        tree.add({"name": f"{thing.name} {index}", "mesh": mesh, **_placed(*box, content)})
        for index, box in enumerate(boxes, start=1)
    ]
    return tree.add({"name": thing.name, "children": children, "extras": extras})


def _placed(low: Corner, high: Corner, content: Content) -> dict[str, Any]:
    ground = content.floor_height_mm
    middle = ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2)
    sides = [max(_LEAST_MM, b - a) / MM_PER_M_RATIO for a, b in zip(low, high, strict=True)]
    return {
        "translation": [round(number, 6) for number in in_file_axes_m(middle, ground)],
        "scale": [round(sides[axis], 6) for axis in (1, 2, 0)],
    }


def _vehicle(content: Content, stock: _Stock, tree: _Tree) -> Iterator[int]:
    vehicle, up = content.build.vehicle, content.layout.build_up
    for name, shape in _walls(content):
        yield tree.add({"name": name, "mesh": stock.own(name, shape, Layer.SHELL)})
    for thing in content.things:
        if not thing.number:
            box = _placed(thing.low_mm, thing.high_mm, content)
            yield tree.add({"name": thing.name, "mesh": stock.mesh("box", Layer.SHELL), **box})
    half = wall_bands(content.build, content.layout, 0.0).finished_mm
    floor = _placed(
        (vehicle.shell.cab_line_mm, -half, -20.0),
        (vehicle.shell.rear_mm, half, max(0.0, up.floor_mm)),
        content,
    )
    yield tree.add({"name": "floor", "mesh": stock.mesh("box", Layer.SHELL), **floor})
    radius = content.tyre_diameter_mm / 2
    ground = -content.floor_height_mm
    for which, x, track in (
        ("front", 0.0, vehicle.outside.track_front_mm),
        ("rear", vehicle.outside.wheelbase_mm, vehicle.outside.track_rear_mm),
    ):
        for side, sign in (("left", -1.0), ("right", 1.0)):
            middle = sign * track / 2
            wheel = _placed(
                (x - radius, middle - _TYRE_MM / 2, ground),
                (x + radius, middle + _TYRE_MM / 2, ground + 2 * radius),
                content,
            )
            mesh = stock.mesh(f"cylinder {_FILE_AXIS[1]}", Layer.VEHICLE)
            yield tree.add({"name": f"{which} wheel {side}", "mesh": mesh, **wheel})


def _walls(content: Content) -> Iterator[tuple[str, Shape]]:
    """Yield the finished side walls and the ceiling."""
    vehicle, up = content.build.vehicle, content.layout.build_up
    front, rear = vehicle.shell.cab_line_mm, vehicle.shell.rear_mm - up.doors_mm
    ground = content.floor_height_mm
    top = vehicle.shell.ceiling_mm - up.ceiling_mm
    heights = [up.floor_mm, *(z for z in heights_of_mm(vehicle) if up.floor_mm < z < top), top]
    rows = [(wall_bands(content.build, content.layout, z).finished_mm, z) for z in heights]

    def face(one: Point, other: Point) -> tuple[Corner, Corner, Corner, Corner]:
        return (
            in_file_axes_m((front, *one), ground),
            in_file_axes_m((rear, *one), ground),
            in_file_axes_m((rear, *other), ground),
            in_file_axes_m((front, *other), ground),
        )

    for side, sign in (("left", -1.0), ("right", 1.0)):
        strips = [
            face((sign * low[0], low[1]), (sign * high[0], high[1]))
            for low, high in pairwise(rows)
        ]
        yield f"{side} wall", quads(strips)
    half = rows[-1][0]
    yield "ceiling", quads([face((-half, top), (half, top))])
