"""Small vans for layout: sliding door on the right, rear doors, wheel arches, plain boxes in them.

Half width 900 mm at the floor, 920 mm at 1000 mm, 780 mm from 1800 mm up; cab line 1150 mm, rear
4750 mm, ceiling 1900 mm; sliding door x 1300 to 2500 mm; arches x 3600 to 4400 mm, 700 mm from
the middle, 300 mm high.
"""

from typing import Any

from tests.support.builds import Data, fitting, part

APERTURES = [
    {
        "name": "sliding door",
        "wall": "right",
        "from": "1300 mm",
        "clear_width": "1200 mm",
        "clear_height": "1700 mm",
        "sill": "20 mm",
    },
    {
        "name": "rear doors",
        "wall": "rear",
        "from": "-750 mm",
        "clear_width": "1500 mm",
        "clear_height": "1750 mm",
        "sill": "10 mm",
    },
]
ARCHES = [{"x_from": "3600 mm", "x_to": "4400 mm", "inner_y": "700 mm", "height": "300 mm"}]
DOORS: Data = {"own_vehicle.apertures": APERTURES}
WITH_ARCHES: Data = {"own_vehicle.shell.wheel_arches": ARCHES}
Triple = tuple[float, float, float]
Thing = tuple[Data, Data]
"""A part's data and a fitting's data."""


def lengths(numbers_mm: tuple[float, ...]) -> list[str]:
    return [f"{number!r} mm" for number in numbers_mm]


def thing(
    name: str,
    size_mm: Triple,
    at_mm: Triple | list[str],
    *,
    body: Data | None = None,
    facets: Data | None = None,
    **fields: Any,
) -> Thing:
    """Return a part of its own and its fitting; `fields` go to the fitting."""
    size: Data = {"size": lengths(size_mm), "mass": "1 kg"} | (body or {})
    place = at_mm if isinstance(at_mm, list) else lengths(at_mm)
    return part(name, body=size, **(facets or {})), fitting(name, name, at=place, **fields)


def zone(purpose: str, from_mm: Triple, to_mm: Triple, **more: Any) -> Data:
    """Return a zone as data."""
    return {"purpose": purpose, "from": lengths(from_mm), "to": lengths(to_mm)} | more


def access(*zones: Data) -> Data:
    """Return the facet of some zones."""
    return {"access": {"zones": list(zones)}}


def holding(*things: Thing, doors: bool = False, arches: bool = False, **more: Any) -> Data:
    """Return the changes to the small build that fit some things."""
    changes: Data = {"own_parts": [p for p, _ in things], "fittings": [f for _, f in things]}
    if doors:
        changes |= DOORS
    if arches:
        changes |= WITH_ARCHES
    return changes | more
