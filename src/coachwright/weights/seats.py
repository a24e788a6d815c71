"""The seats of a build: where people sit and which seats the statements count."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.model.build import Build
from coachwright.model.placement import Point, point_of
from coachwright.model.vehicle import BaseVehicle


@dataclass(frozen=True, kw_only=True, slots=True)
class SeatPlaceFound:
    """One sitting place in the vehicle's axes, z from the load floor.

    Attributes
    ----------
    name
        As a traveller names it: the factory seat, or ``fitting.place``.
    travel
        Meant for use in motion.
    """

    name: str
    reference_mm: Point
    belted: bool
    travel: bool
    driver: bool


def seat_places(build: Build) -> Iterator[SeatPlaceFound]:
    """Yield the vehicle's seats, then the places of fitted seats, in the order of the file."""
    for seat in build.vehicle.seats:
        yield SeatPlaceFound(
            name=seat.name,
            reference_mm=seat.reference_mm,
            belted=seat.belt != "none",
            travel=True,
            driver=seat.driver,
        )
    for fitted in build.having("seat"):
        facet = fitted.part.seat
        for place in facet.places if facet is not None else ():
            yield SeatPlaceFound(
                name=f"{fitted.name}.{place.name}",
                reference_mm=point_of(fitted, place.reference_mm),
                belted=facet is not None and facet.belt != "none" and facet.travel_seat,
                travel=facet is not None and facet.travel_seat,
                driver=False,
            )


def driver_reference(vehicle: BaseVehicle) -> Point:
    """Return the reference point of the driver's seat; the first seat where none is marked."""
    marked = [seat.reference_mm for seat in vehicle.seats if seat.driver]
    return marked[0] if marked else vehicle.seats[0].reference_mm


def driver_seat_names(vehicle: BaseVehicle) -> frozenset[str]:
    """Return the name of the driver's seat, as a set."""
    marked = [seat.name for seat in vehicle.seats if seat.driver]
    return frozenset(marked[:1] or [vehicle.seats[0].name])
