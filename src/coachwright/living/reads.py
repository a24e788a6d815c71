"""What the coupled year reads of a build: nothing else can make it run anew.

A cupboard inside counts with its mass and what is stowed in it, but not with where it stands.
"""

from typing import Any

from coachwright.layout.model import Layout
from coachwright.model.build import INSIDE, Build, Fitted
from coachwright.water.model import Water

_PLACED = frozenset(
    {
        "air_conditioner",
        "battery",
        "cab_divider",
        "enclosure",
        "fan",
        "heater",
        "inverter",
        "opening",
        "solar_panel",
        "tank",
        "warm_air_outlet",
        "water_heater",
    }
)
"""Facets by which it counts where inside a fitting stands: in which room, on which wall."""
_UNREAD_FACETS = {"access", "price", "labour"}
_UNREAD_WORDS = {"description", "maker", "supplier"}
_UNREAD_BRIEF = {"units", "budget", "wanted", "must_have", "jurisdiction", "independence_wanted_d"}


def reads(build: Build, layout: Layout, water: Water) -> tuple[Any, ...]:
    """Return everything that the coupled year reads.

    Parameters
    ----------
    build
        With everything found.
    layout, water
        Of that build.
    """
    return (
        build.brief.model_dump(exclude=_UNREAD_BRIEF),
        build.vehicle,
        tuple(_read_of(fitted) for fitted in build.fittings),
        build.finishes,
        build.water_runs,
        build.vehicle_spare_removed,
        build.sites,
        layout.outside.panels,
        layout.outside.higher,
        water.stores.days_d,
    )


def _read_of(fitted: Fitted) -> dict[str, Any]:
    part = fitted.part
    data: dict[str, Any] = {
        "fitting": fitted.fitting.model_dump(exclude={"at_mm", "turn_deg", "mirror", "note"}),
        "part": part.model_dump(exclude=_UNREAD_FACETS | _UNREAD_WORDS, exclude_none=True),
    }
    if fitted.fitting.mounting not in INSIDE or _PLACED & set(part.facet_names()):
        turned = fitted.fitting.turn_deg, fitted.fitting.mirror
        data["place"] = (fitted.at_mm, *turned)
    return data
