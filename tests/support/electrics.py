"""Invented electrical parts for tests, as parsed TOML, and builds that hold them."""

from typing import Any

from tests.support.builds import Data, fitting, part

LFP: Data = {
    "chemistry": "LFP",
    "nominal": "12.8 V",
    "capacity": "100 Ah",
    "charge_limit": "50 A",
    "discharge_limit": "100 A",
    "most_parallel": 2,
    "most_series": 2,
}
AGM: Data = LFP | {"chemistry": "AGM", "nominal": "12 V", "charge_from": "-15 degC"}
INVERTER: Data = {"continuous": "1000 W", "surge": "2000 W", "standby": "10 W"}
PANEL: Data = {
    "rated": "180 W",
    "open_circuit": "24 V",
    "rated_voltage": "20 V",
    "short_circuit": "9.6 A",
    "rated_current": "9 A",
    "voltage_coefficient": "-0.3 %/K",
    "series_fuse": "15 A",
}
CONTROLLER: Data = {"input_limit": "100 V", "charge_limit": "30 A"}
DCDC: Data = {"charge_limit": "30 A"}
SHORE: Data = {"charge_limit": "20 A"}


def load(draw: str, hours: float = 2.0, **fields: Any) -> Data:
    """Return a load with one mode, used as long in both seasons."""
    use = f"{hours} h/day"
    mode = {"name": "on", "draw": draw, "summer_use": use, "winter_use": use}
    return {"modes": [mode]} | fields


def fitted(*facets: tuple[str, str, Data], **changes: Any) -> Data:
    """Return changes for `builds.build`: fittings of these names, each a part with one facet.

    Parts with the same facet and data are one part.  Changes use ``__`` for the dot of a path.
    """
    parts: dict[str, Data] = {}
    fittings = []
    for name, facet, data in facets:
        same = [one for one, made in parts.items() if made.get(facet) == data]
        part_id = same[0] if same else f"{name}-part"
        parts.setdefault(part_id, part(part_id, **{facet: data}))
        fittings.append(fitting(name, part_id))
    paths = {path.replace("__", "."): value for path, value in changes.items()}
    return {"own_parts": list(parts.values()), "fittings": fittings} | paths
