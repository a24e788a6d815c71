"""The load case of the statements: every travel seat taken."""

from collections.abc import Mapping

from coachwright.model.brief import Jurisdiction
from coachwright.reference import limit, table
from coachwright.weights import europe
from coachwright.weights.aboard import luggage_point
from coachwright.weights.assumptions import limit_kg
from coachwright.weights.model import Group, LoadCase, MassItem
from coachwright.weights.scales import Scales, statutory_item
from coachwright.weights.seats import seat_places
from coachwright.weights.states import WATER, group_shares_frac

_NOTES = {
    Jurisdiction.US: "full fuel, LP gas and fresh water; 150 lb at every travel seat",
    Jurisdiction.EU: (
        "running order; 68 kg at every travel seat; 7 kg for each and the least pay-mass where "
        "luggage is"
    ),
    Jurisdiction.UK: (
        "full fuel, 90 % of gas and fresh water; 68 kg at every travel seat; 17 kg for each and "
        "10 kg for each metre where luggage is"
    ),
}


def all_seats_case(scales: Scales) -> LoadCase:
    """Return the load case of the jurisdiction's statement with every travel seat taken."""
    jurisdiction = scales.build.brief.jurisdiction
    extra = [
        statutory_item(
            scales, f"statement.{place.name}", scales.seating.occupant_kg, place.reference_mm
        )
        for place in seat_places(scales.build)
        if place.travel
    ]
    if jurisdiction is not Jurisdiction.US:
        extra.append(_luggage(scales, jurisdiction))
    return scales.case(
        "all-seats",
        "Every travel seat taken, as the statements count",
        group_shares_frac(scales.items, _groups_frac(jurisdiction)),
        extra=extra,
        note=_NOTES[jurisdiction],
    )


def _groups_frac(jurisdiction: Jurisdiction) -> Mapping[Group, float]:
    if jurisdiction is Jurisdiction.US:
        return dict.fromkeys(WATER | {Group.FUEL, Group.GAS}, 1.0)
    if jurisdiction is Jurisdiction.UK:
        return {
            Group.FUEL: 1.0,
            Group.GAS: limit("weights.uk-gas-share").value,
            Group.FRESH: limit("weights.uk-water-share").value,
        }
    rows = {row["id"]: row for row in table("weights_empty")}
    running = rows["eu-running-order"]
    return {Group.FUEL: float(running["fuel_frac"]), Group.GAS: float(running["gas_frac"])}


def _luggage(scales: Scales, jurisdiction: Jurisdiction) -> MassItem:
    travel = scales.seating.travel
    length_mm = scales.build.vehicle.outside.length_mm
    if jurisdiction is Jurisdiction.UK:
        load = europe.approval_load(seats=travel, length_mm=length_mm, fresh_kg=0.0, gas_kg=0.0)
        mass_kg = load.luggage_kg + load.seat_extra_kg + load.length_extra_kg
    else:
        pay = europe.minimum_pay_mass(people=travel, length_mm=length_mm)
        mass_kg = travel * limit_kg("weights.eu-occupant-luggage") + pay.least_kg
    return statutory_item(scales, "statement.luggage", mass_kg, luggage_point(scales.build))
