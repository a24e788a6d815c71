"""The shelf: the parts of the catalogue as a designer looks through them."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.actions.stocking import usual_mounting
from coachwright.catalogue.loading import Catalogue
from coachwright.model.part import FACET_NAMES, Part
from coachwright.units import shown, shown_number

GROUPS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Furniture", ("carcass", "table", "slide_out")),
    ("Beds and seats", ("bed", "seat")),
    ("Batteries", ("battery",)),
    ("Charging", ("solar_panel", "solar_controller", "dcdc_charger", "shore_charger")),
    ("Inverters and outlets", ("inverter", "outlet")),
    ("Water", ("tank", "pump", "water_heater", "water_outlet", "toilet")),
    ("Heat and air", ("heater", "air_conditioner", "fan", "opening")),
    ("Gas and cooking", ("gas_appliance", "gas_store", "ac_load")),
    ("Light", ("light",)),
    ("Safety", ("detector", "extinguisher")),
    ("Outside", ("rear_door_carrier", "hitch_carrier", "roof_rack", "ladder", "awning")),
)
"""How the shelf is sorted; a part stands on every board whose facet it has."""
_ON_SHELL = ("insulation", "lining")
_PLAIN = frozenset({"body", "access", "price", "labour"})


@dataclass(frozen=True, kw_only=True, slots=True)
class ShelfPart:
    """A part on the shelf, as it is shown.

    Attributes
    ----------
    draw
        What it takes in its largest mode; empty where it takes none.
    gives
        Its one leading figure: capacity, power, volume.
    mounting
        What it is usually fixed to.
    """

    id: str
    name: str
    mass: str
    size: str
    draw: str
    gives: str
    price: str
    facets: tuple[str, ...]
    mounting: str


def shelf(
    catalogue: Catalogue, system: str, *, group: str = "", search: str = "", currency: str = ""
) -> tuple[ShelfPart, ...]:
    """Return the parts of one board of the shelf, or all, that hold some words.

    Parameters
    ----------
    catalogue
        The shop's.
    system
        Units shown.
    group
        One of `GROUPS`; empty for all.
    search
        Words that all stand in id, name or description.
    currency
        In which prices are shown; the first known where not given.
    """
    wanted = dict(GROUPS).get(group, FACET_NAMES)
    words = search.lower().split()
    return tuple(
        shelf_part(part, system, currency)
        for part in catalogue.parts()
        if _can_stand(part)
        and any(getattr(part, facet) is not None for facet in wanted)
        and all(word in f"{part.id} {part.name} {part.description}".lower() for word in words)
    )


def alike(catalogue: Catalogue, part: Part) -> tuple[Part, ...]:
    """Return what can take the place of a part: the parts that have its leading facet."""
    names = part.facet_names()
    leading = next((n for _, facets in GROUPS for n in facets if n in names), "")
    return tuple(
        each
        for each in catalogue.parts()
        if leading and getattr(each, leading) is not None and each.id != part.id
    )


def price_minor(part: Part, currency: str) -> int | None:
    """Return what a part sells for in a currency, in its minor unit; None where unknown."""
    known = {} if part.price is None else {m.currency: m.amount_minor for m in part.price.price}
    return known.get(currency)


def shelf_part(part: Part, system: str, currency: str) -> ShelfPart:
    """Return one part as it is shown."""
    sides = [shown_number(side, "mm", system) for side in part.body.size_mm]
    return ShelfPart(
        id=part.id,
        name=part.name,
        mass=shown(part.body.mass_kg, "kg", system),
        size=f"{' × '.join(number for number, _ in sides)} {sides[0][1]}",
        draw=_draw(part, system),
        gives=", ".join(_gives(part, system)),
        price=_price(part, currency),
        facets=tuple(name for name in part.facet_names() if name not in _PLAIN),
        mounting=str(usual_mounting(part)),
    )


def _can_stand(part: Part) -> bool:
    """Say whether a part is fitted somewhere, and not a layer on the shell."""
    return not any(getattr(part, facet) is not None for facet in _ON_SHELL)


def _draw(part: Part, system: str) -> str:
    loads = (part.dc_load, part.ac_load)
    draws = [mode.draw_w for load in loads if load is not None for mode in load.modes]
    return shown(max(draws), "W", system) if draws else ""


def _gives(part: Part, system: str) -> Iterator[str]:
    if part.battery is not None:
        capacity = shown(part.battery.capacity_ah, "Ah", system)
        yield f"{capacity} at {shown(part.battery.nominal_v, 'V', system)}"
    if part.solar_panel is not None:
        yield shown(part.solar_panel.rated_w, "W", system)
    if part.inverter is not None:
        yield shown(part.inverter.continuous_w, "W", system)
    if part.tank is not None:
        yield shown(part.tank.volume_l, "L", system)


def _price(part: Part, currency: str) -> str:
    if part.price is None:
        return ""
    known = {money.currency: money for money in part.price.price}
    money = known.get(currency) or next(iter(known.values()), None)
    return "" if money is None else money.shown()
