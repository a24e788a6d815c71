"""Take the build apart, weigh it in every state, state the payload."""

from collections.abc import Iterator, Sequence

from coachwright.model.build import Build, WeighTicket
from coachwright.weights.aboard import occupant_kg
from coachwright.weights.all_seats import all_seats_case
from coachwright.weights.cases import Axles
from coachwright.weights.figures import figures
from coachwright.weights.itemise import items as itemise
from coachwright.weights.itemise import spare_zone, wheel_sets
from coachwright.weights.margins import margin_left
from coachwright.weights.model import Group, LoadCase, MarginLeft, MassItem, Seating, Weights
from coachwright.weights.scales import Scales
from coachwright.weights.seats import seat_places
from coachwright.weights.statements import ADDED_GROUPS, statements
from coachwright.weights.states import (
    PACKED,
    driving_states,
    group_shares_frac,
    state_shares_frac,
    worst_shares_frac,
)
from coachwright.weights.ticket import Applied, Readings, Wheels, apply_ticket
from coachwright.weights.us import water_line


def stage(build: Build) -> Weights:
    """Return the masses, load cases, payload and statements of a build.

    Parameters
    ----------
    build
        With everything found.

    Returns
    -------
    Weights
        A weighbridge ticket, where the build has one, corrects every load case and statement.
    """
    model_items = itemise(build)
    outside = build.vehicle.outside
    axles = Axles(
        wheelbase_mm=outside.wheelbase_mm,
        track_front_mm=outside.track_front_mm,
        track_rear_mm=outside.track_rear_mm,
    )
    ticket = _ticket(build, model_items, axles)
    scales = Scales(
        build=build,
        items=model_items if ticket is None else (*model_items, *ticket.check.corrections),
        axles=axles,
        weighed=None if ticket is None else ticket.weighed,
        seating=_seating(build),
    )
    cases = tuple(_cases(scales))
    stated = statements(scales)
    left = tuple(_left(build, cases))
    return Weights(
        items=scales.items,
        cases=cases,
        left=left,
        statements=stated,
        seating=scales.seating,
        water_line=water_line(fresh_l=_fresh_l(build)),
        added_kg=scales.group_kg(ADDED_GROUPS),
        ticket=None if ticket is None else ticket.check,
        figures=figures(build, cases, left, stated, scales),
        notes=tuple(_notes(build)),
    )


def _cases(scales: Scales) -> Iterator[LoadCase]:
    for state in driving_states(kerb_fuel_frac=scales.build.vehicle.kerb.fuel_frac):
        yield scales.case(
            state.name, state.label, state_shares_frac(state, scales.items), note=state.note
        )
    for axle, least, label in (
        ("front", False, "Front axle loaded most"),
        ("rear", False, "Rear axle loaded most"),
        ("front", True, "Front axle loaded least"),
    ):
        shares_frac = worst_shares_frac(
            scales.items, wheelbase_mm=scales.axles.wheelbase_mm, axle=axle, least=least
        )
        yield scales.case(
            f"{axle}-axle-{'least' if least else 'worst'}",
            label,
            shares_frac,
            note="each of fuel, gas, water, waste, passengers, luggage, contents and cargo is "
            "aboard or not, whichever is worse; the driver is aboard",
        )
    yield all_seats_case(scales)


def _left(build: Build, cases: Sequence[LoadCase]) -> Iterator[MarginLeft]:
    ratings = build.vehicle.ratings
    for case in cases:
        for subject, limit_kg, load in (
            ("vehicle", ratings.gross_kg, case.total),
            ("front axle", ratings.front_axle_kg, case.front),
            ("rear axle", ratings.rear_axle_kg, case.rear),
        ):
            yield margin_left(subject=subject, case=case.name, limit_kg=limit_kg, load=load)


def _seating(build: Build) -> Seating:
    places = tuple(seat_places(build))
    return Seating(
        belted=sum(place.belted for place in places),
        travel=sum(place.travel for place in places),
        occupant_kg=occupant_kg(build),
    )


def _fresh_l(build: Build) -> float:
    tanks = (fitted.part.tank for fitted in build.having("tank"))
    return sum(
        (tank.volume_l for tank in tanks if tank is not None and tank.contents == "fresh"),
        start=0.0,
    )


def _ticket(build: Build, model_items: Sequence[MassItem], axles: Axles) -> Applied | None:
    ticket = build.ticket
    if ticket is None:
        return None
    return apply_ticket(
        readings=_readings(ticket),
        date=ticket.date.isoformat(),
        items=model_items,
        shares_frac=_ticket_shares_frac(ticket, model_items),
        axles=axles,
        floor_height_mm=build.vehicle.outside.floor_height_mm,
    )


def _readings(ticket: WeighTicket) -> Readings:
    wheels = ticket.wheels
    return Readings(
        total_kg=ticket.total_kg,
        front_kg=ticket.front_kg,
        rear_kg=ticket.rear_kg,
        wheels=None
        if wheels is None
        else Wheels(
            front_left_kg=wheels.front_left_kg,
            front_right_kg=wheels.front_right_kg,
            rear_left_kg=wheels.rear_left_kg,
            rear_right_kg=wheels.rear_right_kg,
        ),
        error_kg=ticket.scale_error_kg,
    )


def _ticket_shares_frac(ticket: WeighTicket, items: Sequence[MassItem]) -> dict[str, float]:
    """Return what was aboard on the weighbridge: heater and flush water go with fresh water."""
    things = PACKED - {Group.DRIVER, Group.PASSENGER} if ticket.cargo_aboard else frozenset()
    other_water_frac = 1.0 if ticket.fresh_frac else 0.0
    shares_frac = group_shares_frac(
        items,
        dict.fromkeys(things, 1.0)
        | {
            Group.FUEL: ticket.fuel_frac,
            Group.GAS: ticket.gas_frac,
            Group.FRESH: ticket.fresh_frac,
            Group.HOT_WATER: other_water_frac,
            Group.FLUSH_WATER: other_water_frac,
            Group.WASTE: ticket.grey_frac,
        },
    )
    aboard = {f"traveller.{name}" for name in ticket.aboard}
    return shares_frac | {item.name: 1.0 for item in items if item.name in aboard}


def _spare_notes(build: Build) -> Iterator[str]:
    if build.vehicle_spare_removed:
        if spare_zone(build.vehicle) is None:
            yield "the vehicle's own spare wheel, now off, is taken to have hung at the rear axle"
    elif build.vehicle.tyre.spare_carried and any(build.having("spare")):
        yield (
            "the vehicle's own spare wheel still counts beside the one that is fitted; where it "
            "is taken off, the build has to say so (vehicle_spare_removed)"
        )


def _notes(build: Build) -> Iterator[str]:
    for traveller in build.brief.travellers:
        if not traveller.seat:
            yield f"{traveller.name} has no seat and is not counted as aboard; the luggage is"
    if any(traveller.luggage_kg for traveller in build.brief.travellers):
        yield "luggage is taken to lie in the middle of the rear third of the living floor"
    if len(wheel_sets(build)) > 1:
        yield f"only the first set of wheels is counted: {wheel_sets(build)[0].name}"
    if wheel_sets(build):
        yield "heights are those on the placard's tyres; the road figures add what others lift"
    yield from _spare_notes(build)
    if build.ticket is not None and build.ticket.aboard and not build.ticket.cargo_aboard:
        yield "luggage and contents are taken not to have been on the weighbridge"
