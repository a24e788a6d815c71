"""What the build gives of what the brief asks for."""

from dataclasses import dataclass
from typing import Literal

from coachwright.model.working import Figure

Facing = Literal["forward", "rearward", "side"]


@dataclass(frozen=True, kw_only=True, slots=True)
class SittingPlace:
    """One sitting place.

    Attributes
    ----------
    name
        ``seat`` of the vehicle, or ``fitting.place``.
    factory
        Comes with the vehicle.
    usable
        A travel seat with a belt.
    evidence
        What shows that seat and anchorage were tested; empty where nothing is stated.
    """

    name: str
    factory: bool
    belt: Literal["none", "lap", "three-point"]
    facing: Facing
    travel_seat: bool
    usable: bool
    evidence: str
    taken_by: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class BedFit:
    """One bed against the longest sleeper who is content with nothing shorter."""

    name: str
    berths: int
    length_mm: float
    longest_stature_mm: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class WantedFacet:
    """A facet that the customer must have, and how many fittings have it."""

    facet: str
    count: int


@dataclass(frozen=True, kw_only=True, slots=True)
class PricedPart:
    """How many of one part are counted in the sum.

    Attributes
    ----------
    name
        The fitting's reference name; of finishes the id of their part, all surfaces together.
    count
        Pieces; of finishes whole sheets, 0 where a sheet's size is not known.
    price_minor
        Of one; None where it is not known in the currency.
    """

    name: str
    count: int
    price_minor: int | None


@dataclass(frozen=True, kw_only=True, slots=True)
class PartsPrice:
    """Sum of the parts' prices in one currency, without tax, labour or vehicle.

    Attributes
    ----------
    price_minor
        None where a price is missing.
    known_minor
        Sum of the prices that are known.
    budget_minor
        None where the brief gives no budget.
    without_price
        Fittings and finishes whose part has no price in the currency.
    items
        What the sum is made of.
    """

    currency: str
    price_minor: int | None
    known_minor: int
    budget_minor: int | None
    without_price: tuple[str, ...]
    items: tuple[PricedPart, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Wishes:
    """What the build gives of what the brief asks for.

    Attributes
    ----------
    smoke_alarms, extinguishers
        Names of the fittings.
    """

    figures: tuple[Figure, ...]
    places: tuple[SittingPlace, ...]
    belted_wanted: int
    belted: int
    berths_wanted: int
    berths: int
    beds: tuple[BedFit, ...]
    must_have: tuple[WantedFacet, ...]
    price: PartsPrice
    smoke_alarms: tuple[str, ...]
    extinguishers: tuple[str, ...]
