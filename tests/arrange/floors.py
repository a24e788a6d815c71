"""Small floors to plan: a straight van of 3600 by 1800 mm, and modules that travel with it."""

from typing import Any

from coachwright.model.build import Build
from tests.support import builds

CAB_MM, REAR_MM = 1150, 4750
STRAIGHT = [
    {"z": "0 mm", "half_width": "900 mm"},
    {"z": "1900 mm", "half_width": "900 mm"},
]
SIDE_DOOR = {
    "name": "sliding door",
    "wall": "right",
    "from": "1300 mm",
    "clear_width": "1200 mm",
    "clear_height": "1700 mm",
    "sill": "0 mm",
}


def cabinet_data(
    part_id: str, length_mm: int, *, width_mm: int = 500, height_mm: int = 900, zone_mm: int = 0
) -> dict[str, Any]:
    """Return a cabinet that stands, unturned, against the left wall; its drawer pulls inwards."""
    facets: dict[str, Any] = {"carcass": {"storage": "100 L"}}
    if zone_mm:
        facets["access"] = {
            "zones": [
                {
                    "purpose": "drawer",
                    "from": ["0 mm", f"{width_mm} mm", "0 mm"],
                    "to": [f"{length_mm} mm", f"{width_mm + zone_mm} mm", f"{height_mm} mm"],
                }
            ]
        }
    body = {"size": [f"{length_mm} mm", f"{width_mm} mm", f"{height_mm} mm"], "mass": "20 kg"}
    return builds.part(part_id, body=body, **facets)


def stands(name: str, part_id: str, x: str, wall: str = "left", **more: Any) -> dict[str, Any]:
    """Return a fitting that stands at a side wall."""
    turn = {"turn": "180 deg"} if wall == "right" else {}
    at = [x, f"against {wall} wall", "against floor"]
    return builds.fitting(name, part_id, at=at, **(turn | more))


def floor_build(
    fittings: list[dict[str, Any]], parts: list[dict[str, Any]], **changes: Any
) -> Build:
    """Return the small van, straight, with these fittings and no doors."""
    return builds.build(
        {
            "own_vehicle.shell.half_widths": STRAIGHT,
            "fittings": fittings,
            "own_parts": parts,
        }
        | changes
    )


def kitchen(**changes: Any) -> Build:
    """Return a galley with a sink, tank and lamp, a bench, and a bed on a chest at the rear."""
    parts = [
        cabinet_data("galley", 1000, zone_mm=450),
        cabinet_data("bench", 1200, height_mm=450),
        cabinet_data("chest", 1000, width_mm=1800, height_mm=400),
        builds.part(
            "sink",
            body={"size": ["400 mm", "400 mm", "150 mm"], "mass": "4 kg"},
            water_outlet={"kind": "tap", "flow": "5 L/min"},
        ),
        builds.part(
            "tank",
            body={"size": ["300 mm", "300 mm", "300 mm"], "mass": "4 kg"},
            tank={"contents": "fresh", "volume": "20 L"},
        ),
        builds.part("lamp", body={"size": ["50 mm", "50 mm", "20 mm"], "mass": "0.1 kg"}),
        builds.part(
            "bed",
            body={"size": ["1900 mm", "1800 mm", "150 mm"], "mass": "40 kg"},
            bed={"length": "1900 mm", "width": "1800 mm", "berths": 2},
        ),
    ]
    fittings = [
        stands("galley", "galley", "1500 mm"),
        builds.fitting(
            "sink",
            "sink",
            at=["flush rear galley 50 mm", "centred on galley 10 mm", "flush top galley"],
            within="galley",
        ),
        builds.fitting(
            "lamp",
            "lamp",
            at=["flush rear galley", "against left wall", "above galley 400 mm"],
            mounting="wall",
        ),
        stands("bench", "bench", "1200 mm", "right"),
        builds.fitting(
            "tank",
            "tank",
            at=["flush front bench 20 mm", "flush right bench 20 mm", "flush bottom bench"],
            within="bench",
        ),
        builds.fitting(
            "chest", "chest", at=["against rear doors", "against centreline", "against floor"]
        ),
        builds.fitting(
            "bed",
            "bed",
            at=["against rear doors", "against centreline", "above chest"],
            on="chest",
        ),
    ]
    return floor_build(fittings, parts, **changes)
