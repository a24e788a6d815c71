"""The 3-D file held against the rules of the glTF 2.0 specification that can be checked here.

Khronos Group, glTF 2.0 Specification (2021): section 4.4 (binary container), 3.6 (buffers, views,
accessors), 3.7 (meshes), 5 (properties).
"""

import json
import struct
from functools import cache
from typing import Any

import pytest

from coachwright.drawing.glb import glb
from coachwright.drawing.glb_shapes import Shape, quads, unit_box, unit_cylinder
from tests.drawing.demos import NAMES, demo

SIZES = {5126: ("f", 4), 5123: ("H", 2)}
COUNTS = {"SCALAR": 1, "VEC3": 3}
each_demo = pytest.mark.parametrize("name", NAMES)


@cache
def _file(name: str) -> tuple[dict[str, Any], bytes]:
    content = glb(demo(name))
    magic, version, length = struct.unpack_from("<III", content)
    assert (magic, version, length) == (0x46546C67, 2, len(content))
    text_length, text_kind = struct.unpack_from("<II", content, 12)
    assert text_kind == 0x4E4F534A
    assert text_length % 4 == 0
    text = content[20 : 20 + text_length]
    start = 20 + text_length
    bytes_length, bytes_kind = struct.unpack_from("<II", content, start)
    assert bytes_kind == 0x004E4942
    assert bytes_length % 4 == 0
    assert start + 8 + bytes_length == len(content)
    described: dict[str, Any] = json.loads(text)
    return described, content[start + 8 :]


def _numbers(described: dict[str, Any], held: bytes, index: int) -> list[tuple[float, ...]]:
    accessor = described["accessors"][index]
    view = described["bufferViews"][accessor["bufferView"]]
    letter, size = SIZES[accessor["componentType"]]
    each = COUNTS[accessor["type"]]
    offset = view["byteOffset"] + accessor.get("byteOffset", 0)
    assert offset % size == 0
    assert accessor["count"] * each * size <= view["byteLength"]
    flat = struct.unpack_from(f"<{accessor['count'] * each}{letter}", held, offset)
    return [tuple(flat[i : i + each]) for i in range(0, len(flat), each)]


@each_demo
def test_views_lie_in_the_buffer_and_do_not_overlap(name: str) -> None:
    described, held = _file(name)
    assert described["asset"]["version"] == "2.0"
    assert [buffer["byteLength"] for buffer in described["buffers"]] == [len(held)]
    end = 0
    for view in described["bufferViews"]:
        assert view["byteOffset"] >= end
        end = view["byteOffset"] + view["byteLength"]
    assert end <= len(held)


@each_demo
def test_places_have_their_bounds_and_indices_their_corners(name: str) -> None:
    described, held = _file(name)
    for mesh in described["meshes"]:
        for part in mesh["primitives"]:
            accessor = described["accessors"][part["attributes"]["POSITION"]]
            places = _numbers(described, held, part["attributes"]["POSITION"])
            for axis in range(3):
                assert min(p[axis] for p in places) == accessor["min"][axis]
                assert max(p[axis] for p in places) == accessor["max"][axis]
            normals = _numbers(described, held, part["attributes"]["NORMAL"])
            assert len(normals) == len(places)
            for normal in normals:
                assert sum(n * n for n in normal) == pytest.approx(1.0, abs=1e-5)
            corners = [int(i[0]) for i in _numbers(described, held, part["indices"])]
            assert len(corners) % 3 == 0
            assert max(corners) < len(places)
            assert 0 <= part["material"] < len(described["materials"])


@each_demo
def test_the_nodes_are_one_tree(name: str) -> None:
    described, _ = _file(name)
    children = [child for node in described["nodes"] for child in node.get("children", [])]
    assert len(children) == len(set(children)) == len(described["nodes"]) - 1
    assert described["scenes"][described["scene"]]["nodes"] == [
        index for index in range(len(described["nodes"])) if index not in children
    ]
    for node in described["nodes"]:
        assert node.get("children") != []
        assert all(side > 0 for side in node.get("scale", [1.0]))


@each_demo
def test_every_fitting_is_a_node_with_its_number(name: str) -> None:
    described, _ = _file(name)
    nodes = {node["name"]: node for node in described["nodes"] if "extras" in node}
    for thing in demo(name).things:
        if thing.number:
            assert nodes[thing.name]["extras"]["position"] == thing.number


def test_a_cabinet_stands_where_the_build_has_it_in_metres_and_y_up() -> None:
    content = demo("four-seats")
    galley = content.thing("galley")
    floor = content.floor_height_mm
    node = next(n for n in _file("four-seats")[0]["nodes"] if n["name"] == "galley")
    middle = [(a + b) / 2 for a, b in zip(galley.low_mm, galley.high_mm, strict=True)]
    assert node["translation"] == pytest.approx(
        [-middle[1] / 1000, (middle[2] + floor) / 1000, -middle[0] / 1000], abs=1e-6
    )
    size = galley.size_mm
    assert node["scale"] == pytest.approx(
        [size[1] / 1000, size[2] / 1000, size[0] / 1000], abs=1e-6
    )


@each_demo
def test_the_wheels_stand_on_the_ground(name: str) -> None:
    wheels = [node for node in _file(name)[0]["nodes"] if "wheel " in node["name"]]
    standing = [n for n in wheels if "arch" not in n["name"]]
    assert len(standing) == 4
    for node in standing:
        assert node["translation"][1] == pytest.approx(node["scale"][1] / 2, abs=1e-6)


@pytest.mark.parametrize("shape", [unit_box(), *(unit_cylinder(axis) for axis in range(3))])
def test_every_triangle_faces_outwards(shape: Shape) -> None:
    for start in range(0, len(shape.indices), 3):
        one, two, three = (shape.places_m[i] for i in shape.indices[start : start + 3])
        u = [b - a for a, b in zip(one, two, strict=True)]
        v = [b - a for a, b in zip(one, three, strict=True)]
        cross = (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])
        middle = [(a + b + c) / 3 for a, b, c in zip(one, two, three, strict=True)]
        assert sum(c * m for c, m in zip(cross, middle, strict=True)) > 0
        for index in shape.indices[start : start + 3]:
            normal = shape.normals_ratio[index]
            assert sum(c * n for c, n in zip(cross, normal, strict=True)) > 0


def test_a_flat_face_has_its_own_normal() -> None:
    face = ((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (1.0, 1.0, 0.0), (0.0, 1.0, 0.0))
    assert set(quads([face]).normals_ratio) == {(0.0, 0.0, 1.0)}


def test_the_same_build_gives_the_same_bytes() -> None:
    assert glb(demo("troubled")) == glb(demo("troubled"))
