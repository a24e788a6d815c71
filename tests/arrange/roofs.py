"""Small roofs to pack, with panels that travel inside the build."""

from typing import Any

from coachwright.model.build import Build
from coachwright.model.part import Part
from tests.support import builds

PANEL: dict[str, Any] = {
    "rated": "100 W",
    "open_circuit": "22 V",
    "rated_voltage": "18 V",
    "short_circuit": "6 A",
    "rated_current": "5.5 A",
}


def panel_data(part_id: str, size: tuple[int, int], watts: int, **more: Any) -> dict[str, Any]:
    """Return a panel of 30 mm and 10 kg."""
    body = {"size": [f"{size[0]} mm", f"{size[1]} mm", "30 mm"], "mass": "10 kg"}
    return builds.part(part_id, body=body, solar_panel=PANEL | {"rated": f"{watts} W"} | more)


def panel(part_id: str, size: tuple[int, int], watts: int, **more: Any) -> Part:
    """Return it as a part."""
    found = builds.sheet({"own_parts": [panel_data(part_id, size, watts, **more)]})
    return found.own_parts[0]


def fan(name: str, x_mm: int, y_mm: int) -> tuple[dict[str, Any], dict[str, Any]]:
    """Return a fan of 400 by 400 mm whose lid sweeps what is above it: fitting and part."""
    part = builds.part(
        "fan",
        body={"size": ["400 mm", "400 mm", "100 mm"], "mass": "5 kg"},
        opening={"kind": "hatch", "clear_width": "350 mm", "clear_height": "350 mm"},
        access={
            "zones": [
                {
                    "purpose": "hatch swing",
                    "from": ["0 mm", "0 mm", "100 mm"],
                    "to": ["400 mm", "400 mm", "400 mm"],
                }
            ]
        },
    )
    at = [f"{x_mm} mm", f"{y_mm} mm", "against roof"]
    return builds.fitting(name, "fan", at=at, mounting="roof"), part


def roof_build(
    changes: dict[str, Any] | None = None, fittings: Any = (), parts: Any = ()
) -> Build:
    """Return the small van with a flat roof from x 1000 to 3050 mm, 1050 mm wide."""
    return builds.build(
        {
            "own_vehicle.roof": {
                "x_from": "1000 mm",
                "x_to": "3050 mm",
                "half_width": "525 mm",
            },
            "fittings": list(fittings),
            "own_parts": list(parts),
        }
        | (changes or {})
    )
