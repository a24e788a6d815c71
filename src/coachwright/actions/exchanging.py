"""What can take the place of a fitting, told beside what it is now."""

from dataclasses import dataclass

from coachwright.actions.shelving import ShelfPart, alike, price_minor, shelf_part
from coachwright.catalogue.loading import Catalogue
from coachwright.model.build import Build, Fitted
from coachwright.model.money import Money
from coachwright.model.part import Part
from coachwright.units import shown

_MUST_BE_ALIKE = ("battery", "solar_panel")
"""Facets of parts that work as one with others of their kind."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Offer:
    """A part that could be taken instead.

    Attributes
    ----------
    heavier, dearer
        What it weighs and costs more or less than what is fitted, each, with a sign; empty where
        that is nothing or not known.
    """

    part: ShelfPart
    heavier: str
    dearer: str


def offers(catalogue: Catalogue, fitted: Fitted, system: str, currency: str) -> tuple[Offer, ...]:
    """Return what can take a fitting's place: of the same voltage and giving most first.

    Parameters
    ----------
    catalogue
        The shop's.
    fitted
        What is there now.
    system
        Units shown.
    currency
        In which prices are shown.
    """
    now = fitted.part
    found = sorted(alike(catalogue, now), key=lambda part: _order(part, now))
    return tuple(
        Offer(
            part=shelf_part(part, system, currency),
            heavier=_more(part.body.mass_kg - now.body.mass_kg, system),
            dearer=_dearer(part, now, currency),
        )
        for part in found
    )


def others_alike(build: Build, names: tuple[str, ...]) -> tuple[str, ...]:
    """Return the other fittings of the same part as the first of some."""
    here = build.fitted(names[0]) if names else None
    return tuple(
        fitted.name
        for fitted in build.fittings
        if here is not None and fitted.part.id == here.part.id and fitted.name not in names
    )


def of_one_part(build: Build, names: tuple[str, ...]) -> bool:
    """Say whether fittings are all the same part."""
    return len({fitted.part.id for fitted in build.fittings if fitted.name in names}) == 1


def belong_together(part: Part) -> bool:
    """Say whether several of a part are a bank or a string, in which all should be alike."""
    return any(getattr(part, facet) is not None for facet in _MUST_BE_ALIKE)


def _order(part: Part, now: Part) -> tuple[bool, float, str]:
    if part.battery is not None and now.battery is not None:
        other = part.battery.nominal_v != now.battery.nominal_v
        return other, -part.battery.nominal_v * part.battery.capacity_ah, part.name
    if part.solar_panel is not None:
        return False, -part.solar_panel.rated_w, part.name
    if part.tank is not None:
        return False, -part.tank.volume_l, part.name
    return False, 0.0, part.name


def _more(mass_kg: float, system: str) -> str:
    text = shown(abs(mass_kg), "kg", system)
    if not any(digit in text for digit in "123456789"):
        return ""
    return f"{'−' if mass_kg < 0 else '+'}{text}"


def _dearer(part: Part, now: Part, currency: str) -> str:
    new_minor, old_minor = price_minor(part, currency), price_minor(now, currency)
    if new_minor is None or old_minor is None or new_minor == old_minor:
        return ""
    money = Money(amount_minor=abs(new_minor - old_minor), currency=currency)
    return f"{'−' if new_minor < old_minor else '+'}{money.shown()}"
