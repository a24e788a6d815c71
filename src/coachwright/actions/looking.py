"""Look through the catalogue: what there is, and the few figures that tell it apart."""

from dataclasses import dataclass

from coachwright.catalogue.loading import Catalogue
from coachwright.errors import UnknownName
from coachwright.model.part import FACET_NAMES, Part


@dataclass(frozen=True, kw_only=True, slots=True)
class PartRow:
    """One part in a list.

    Attributes
    ----------
    prices
        To the customer, such as ``"1250.00 EUR"``.
    origin
        Shipped, the shop's own, or in place of a shipped one.
    """

    id: str
    name: str
    mass_kg: float
    facets: tuple[str, ...]
    prices: tuple[str, ...]
    origin: str


@dataclass(frozen=True, kw_only=True, slots=True)
class VehicleRow:
    """One base vehicle in a list."""

    id: str
    name: str
    market: str
    gross_kg: float
    wheelbase_mm: float
    length_mm: float
    height_mm: float
    seats: int
    origin: str


@dataclass(frozen=True, kw_only=True, slots=True)
class StandardRow:
    """One standard build in a list."""

    id: str
    name: str
    vehicle: str
    fittings: int
    options: tuple[str, ...]
    origin: str


_COMMON = frozenset({"body", "price", "labour"})
"""Facets that nearly every part has; they tell nothing apart in a list."""


def part_rows(catalogue: Catalogue, *, facet: str = "", search: str = "") -> tuple[PartRow, ...]:
    """Return the parts that have a facet and hold a text.

    Parameters
    ----------
    catalogue
        Where to look.
    facet
        Name of a facet; empty for every part.
    search
        Words that all stand in id, name, description, maker or supplier, in any case.

    Raises
    ------
    UnknownName
        Where there is no such facet.
    """
    if facet and facet not in FACET_NAMES:
        raise UnknownName("facet", facet, FACET_NAMES)
    return tuple(
        _part_row(part, catalogue)
        for part in catalogue.parts()
        if (not facet or getattr(part, facet) is not None) and _holds(part, search)
    )


def vehicle_rows(catalogue: Catalogue) -> tuple[VehicleRow, ...]:
    """Return every base vehicle, by id."""
    return tuple(
        VehicleRow(
            id=vehicle.id,
            name=vehicle.name,
            market=str(vehicle.market),
            gross_kg=vehicle.ratings.gross_kg,
            wheelbase_mm=vehicle.outside.wheelbase_mm,
            length_mm=vehicle.outside.length_mm,
            height_mm=vehicle.outside.height_mm,
            seats=len(vehicle.seats),
            origin=str(catalogue.origin("vehicles", vehicle.id)),
        )
        for vehicle in catalogue.vehicles()
    )


def standard_rows(catalogue: Catalogue) -> tuple[StandardRow, ...]:
    """Return every standard build, by id."""
    rows = []
    for standard_id in catalogue.standard_ids():
        sheet = catalogue.standard(standard_id)
        own = sheet.own_vehicle.id if sheet.own_vehicle is not None else ""
        rows.append(
            StandardRow(
                id=standard_id,
                name=sheet.name,
                vehicle=sheet.vehicle or own,
                fittings=len(sheet.fittings),
                options=tuple(option.name for option in sheet.offers),
                origin=str(catalogue.origin("standards", standard_id)),
            )
        )
    return tuple(rows)


def _part_row(part: Part, catalogue: Catalogue) -> PartRow:
    return PartRow(
        id=part.id,
        name=part.name,
        mass_kg=part.body.mass_kg,
        facets=tuple(name for name in part.facet_names() if name not in _COMMON),
        prices=() if part.price is None else tuple(price.text() for price in part.price.price),
        origin=str(catalogue.origin("parts", part.id)),
    )


def _holds(part: Part, search: str) -> bool:
    text = f"{part.id} {part.name} {part.description} {part.maker} {part.supplier}".lower()
    return all(word in text for word in search.lower().split())
