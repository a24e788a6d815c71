"""A small complete build, as parsed TOML, and ways to change it for one test.

The vehicle and the parts are invented and travel inside the sheet, so tests need no catalogue.
"""

import copy
from typing import Any

from coachwright.model.build import Build, BuildSheet, OptionConflict
from coachwright.model.linking import link
from coachwright.model.reading import read_record

Data = dict[str, Any]

VEHICLE: Data = {
    "id": "test-van",
    "name": "Test van",
    "market": "eu",
    "year_from": 2020,
    "year_to": 2030,
    "category": "N1",
    "outside": {
        "wheelbase": "4000 mm",
        "length": "5990 mm",
        "width": "2050 mm",
        "height": "2650 mm",
        "front_overhang": "950 mm",
        "floor_height": "560 mm",
        "track_front": "1800 mm",
        "track_rear": "1780 mm",
    },
    "shell": {
        "cab_line": "1150 mm",
        "rear": "4750 mm",
        "ceiling": "1900 mm",
        "rib_depth": "40 mm",
        "half_widths": [
            {"z": "0 mm", "half_width": "900 mm"},
            {"z": "1000 mm", "half_width": "920 mm"},
            {"z": "1800 mm", "half_width": "780 mm"},
        ],
    },
    "roof": {"x_from": "1100 mm", "x_to": "4700 mm", "half_width": "720 mm", "rails": False},
    "ratings": {
        "gross": "3500 kg",
        "front_axle": "1850 kg",
        "rear_axle": "2100 kg",
        "gross_train": "5500 kg",
    },
    "kerb": {
        "front": "1250 kg",
        "rear": "850 kg",
        "fuel": "90 %",
        "driver": "75 kg",
        "tolerance": "3 %",
        "cg_height": "720 mm",
    },
    "fuel": {
        "kind": "diesel",
        "tank": "90 L",
        "density": "0.84 kg/L",
        "centre": ["1600 mm", "-500 mm", "-200 mm"],
    },
    "tyre": {
        "size": "225/75R16C",
        "kind": "commercial",
        "load_index_single": 118,
        "load_index_dual": 116,
        "speed_symbol": "R",
        "rated_pressure": "525 kPa",
        "front_pressure": "450 kPa",
        "rear_pressure": "500 kPa",
        "wheel_mass": "28 kg",
        "largest_diameter": "775 mm",
    },
    "alternator": {
        "rated": "180 A",
        "vehicle_load": "50 A",
        "idle": "55 %",
        "cruise": "90 %",
        "smart": True,
    },
    "seats": [
        {"name": "driver", "reference": ["650 mm", "-450 mm", "350 mm"], "driver": True},
        {"name": "passenger", "reference": ["650 mm", "450 mm", "350 mm"]},
    ],
    "limits": {
        "roof_moving": "150 kg",
        "roof_standing": "250 kg",
        "rear_door": "60 kg",
        "rear_door_moment": "300 N m",
        "hitch": "100 kg",
    },
    "rear_end": {
        "lowest_x": "5000 mm",
        "lowest_height": "420 mm",
        "door_hinge_y": "780 mm",
        "hitch_x": "5050 mm",
        "hitch_height": "400 mm",
    },
}

SHEET: Data = {
    "format": 1,
    "name": "Test build",
    "own_vehicle": VEHICLE,
    "brief": {
        "jurisdiction": "eu",
        "units": "metric",
        "travellers": [
            {"name": "ada", "mass": "70 kg", "stature": "1700 mm", "seat": "driver"},
            {"name": "ben", "mass": "82 kg", "stature": "1810 mm", "seat": "passenger"},
        ],
        "climate": {
            "cold_night": "-8 degC",
            "hot_day": "34 degC",
            "summer_sun": "5 h/day",
            "winter_sun": "1 h/day",
        },
        "stay": {"parked": "3 d", "drive": "2 h/day", "hookup": "0 %"},
        "habits": {"water": "12 L/day", "hot_water": "4 L/day", "cooking": "600 Wh/day"},
    },
    "fittings": [],
}


def part(part_id: str, **facets: Any) -> Data:
    """Return a part's data: a 1 kg, 100 mm cube unless `body` says otherwise."""
    body = {"size": ["100 mm", "100 mm", "100 mm"], "mass": "1 kg"}
    return {"id": part_id, "name": part_id, "body": body} | facets


def fitting(name: str, part_id: str, **fields: Any) -> Data:
    """Return a fitting's data, at the middle of the floor unless `at` says otherwise."""
    return {"name": name, "part": part_id, "at": ["2000 mm", "0 mm", "0 mm"]} | fields


def changed(data: Data, changes: Data) -> Data:
    """Return a copy of parsed TOML with dotted paths set; None removes a field.

    Examples
    --------
    >>> changed({"a": [{"b": 1}]}, {"a.0.b": 2})
    {'a': [{'b': 2}]}
    """
    result = copy.deepcopy(data)
    for path, value in changes.items():
        *steps, last = path.split(".")
        here: Any = result
        for step in steps:
            here = here[int(step)] if isinstance(here, list) else here.setdefault(step, {})
        if value is None:
            here.pop(last, None)
        elif isinstance(here, list):
            here[int(last)] = copy.deepcopy(value)
        else:
            here[last] = copy.deepcopy(value)
    return result


def sheet(changes: Data | None = None) -> BuildSheet:
    """Return the small sheet with changes; raises AssertionError where they are faulty."""
    found, faults = read_record(BuildSheet, changed(SHEET, changes or {}), "test.toml")
    assert found is not None, faults
    return found


def build(changes: Data | None = None, conflicts: tuple[OptionConflict, ...] = ()) -> Build:
    """Return the small build with changes; raises AssertionError where they are faulty."""
    written = sheet(changes)
    assert written.own_vehicle is not None
    found, faults = link(
        written,
        file="test.toml",
        vehicle=written.own_vehicle,
        parts={},
        conflicts=conflicts,
    )
    assert found is not None, faults
    return found
