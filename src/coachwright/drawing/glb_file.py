"""The binary container of glTF 2.0: one JSON chunk, one chunk of bytes."""

import json
import struct
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from coachwright.drawing.glb_shapes import Shape

_MAGIC = 0x46546C67
_VERSION = 2
_JSON = 0x4E4F534A
_BYTES = 0x004E4942
_FLOATS = 5126
_SHORTS = 5123
_CORNERS = 34962
_TRIANGLES = 34963
_ALIGNED = 4


@dataclass(slots=True)
class Buffer:
    """Shapes as bytes, with the views and accessors that find them again."""

    content: bytearray = field(default_factory=bytearray)
    views: list[dict[str, Any]] = field(default_factory=list)
    accessors: list[dict[str, Any]] = field(default_factory=list)

    def add(self, shape: Shape) -> dict[str, Any]:
        """Keep a shape; return the part of a mesh that draws it, without its material."""
        low = [min(place[axis] for place in shape.places_m) for axis in range(3)]
        high = [max(place[axis] for place in shape.places_m) for axis in range(3)]
        flat = [_single_m(number) for place in shape.places_m for number in place]
        normals = [number for normal in shape.normals_ratio for number in normal]
        count = len(shape.places_m)
        bounds = {"min": [_single_m(n) for n in low], "max": [_single_m(n) for n in high]}
        place = self._accessor(
            struct.pack(f"<{len(flat)}f", *flat),
            {"componentType": _FLOATS, "count": count, "type": "VEC3", **bounds},
            _CORNERS,
        )
        normal = self._accessor(
            struct.pack(f"<{len(normals)}f", *normals),
            {"componentType": _FLOATS, "count": count, "type": "VEC3"},
            _CORNERS,
        )
        indices = self._accessor(
            struct.pack(f"<{len(shape.indices)}H", *shape.indices),
            {"componentType": _SHORTS, "count": len(shape.indices), "type": "SCALAR"},
            _TRIANGLES,
        )
        return {"attributes": {"POSITION": place, "NORMAL": normal}, "indices": indices}

    def _accessor(self, packed: bytes, accessor: dict[str, Any], target: int) -> int:
        self.views.append(
            {
                "buffer": 0,
                "byteOffset": len(self.content),
                "byteLength": len(packed),
                "target": target,
            }
        )
        self.content += packed
        self.content += b"\0" * (-len(self.content) % _ALIGNED)
        self.accessors.append({"bufferView": len(self.views) - 1, **accessor})
        return len(self.accessors) - 1


def _single_m(length_m: float) -> float:
    """Return a number as the file holds it, so that bounds and places agree to the bit."""
    held: float = struct.unpack("<f", struct.pack("<f", length_m))[0]
    return held


def container(described: Mapping[str, Any], buffer: Buffer) -> bytes:
    """Return the file.

    Parameters
    ----------
    described
        Everything of the JSON chunk but buffers, views and accessors.
    buffer
        The shapes.
    """
    whole = {
        **described,
        "buffers": [{"byteLength": len(buffer.content)}],
        "bufferViews": buffer.views,
        "accessors": buffer.accessors,
    }
    text = json.dumps(whole, ensure_ascii=False, separators=(",", ":")).encode()
    text += b" " * (-len(text) % _ALIGNED)
    chunks = (
        struct.pack("<II", len(text), _JSON) + text,
        struct.pack("<II", len(buffer.content), _BYTES) + bytes(buffer.content),
    )
    length = 12 + sum(len(chunk) for chunk in chunks)
    return struct.pack("<III", _MAGIC, _VERSION, length) + b"".join(chunks)
