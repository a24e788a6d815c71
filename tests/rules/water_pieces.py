"""Parts and changes that the rule cases of the water and gas services are made from."""

from tests.support.builds import Data, fitting, part

Piece = tuple[Data, Data]
"""A part's facets and a fitting's fields."""
US: Data = {"brief.jurisdiction": "us"}
UK: Data = {"brief.jurisdiction": "uk"}
SHORT: Data = {"own_vehicle.outside.length": "4800 mm", "own_vehicle.outside.width": "2000 mm"}
"""Plan area 9.6 m2; that of the small van is 12.3 m2."""


def with_parts(*pieces: Piece, **changes: object) -> Data:
    """Return changes that fit parts: each a part's facets and a fitting's fields."""
    parts, fittings = [], []
    for index, (facets, fields) in enumerate(pieces):
        name = f"piece-{chr(ord('a') + index)}"
        parts.append(part(name, **facets))
        fittings.append(fitting(name, name, **fields))
    return {"own_parts": parts, "fittings": fittings} | changes


def tank(contents: str, volume: str, **more: object) -> Data:
    return {"tank": {"contents": contents, "volume": volume} | more}


def tap(**more: object) -> Data:
    return {"water_outlet": {"kind": "tap", "flow": "5 L/min"} | more}


def store(**more: object) -> Data:
    return {"gas_store": {"gas": "11 kg"} | more}


def heater(**more: object) -> Data:
    return {"water_heater": {"volume": "6 L"} | more}


def vent(area: str) -> Data:
    opening = {"kind": "vent", "clear_width": "200 mm", "clear_height": "200 mm"}
    return {"opening": opening | {"free_vent": area}}


FRESH: Piece = (tank("fresh", "72 L"), {})
PUMP: Data = {"pump": {"open_flow": "10 L/min", "cut_out": "240 kPa"}}
DRAW: Data = {"dc_load": {"modes": [{"name": "running", "draw": "60 W"}]}}
RUN: Data = {"name": "cold", "length": "6 m", "bore": "10 mm", "place": "inside"}
STOVE: Data = {"gas_appliance": {"input": "2 kW", "use": "0.16 kg/h"}}
SEALED: Data = {
    "gas_appliance": {"input": "2 kW", "use": "0.16 kg/h", "room_sealed": True},
}
ROOF: Data = {"mounting": "roof", "at": ["2000 mm", "0 mm", "1950 mm"]}
WALL: Data = {"mounting": "wall", "at": ["2000 mm", "700 mm", "1500 mm"]}
OUTSIDE: Data = {"mounting": "underbody"}
LPG_ALARM: Data = {"detector": {"senses": ["LPG"]}}
CO_ALARM: Data = {"detector": {"senses": ["CO"]}}
RUN_TO_TAP: Data = {"water_runs": [RUN | {"serves": "piece-a"}]}
WEAK: Data = {"pump": {"open_flow": "4 L/min", "cut_out": "240 kPa"}}
