"""What the rules on payload statements compare with what."""

from collections.abc import Iterator

from coachwright.model.build import Build, Mounting
from coachwright.model.finding import Case
from coachwright.reference import limit
from coachwright.weights.assumptions import limit_kg
from coachwright.weights.europe import front_axle_least
from coachwright.weights.model import Weights
from coachwright.weights.us import least_gross, occc, relabel_threshold


def occc_belts(build: Build, weights: Weights) -> Iterator[Case]:
    """OCCC against 150 lb for each belted seat."""
    capacity = occc(
        gross_kg=build.vehicle.ratings.gross_kg,
        unloaded_kg=weights.statement("us-uvw").mass.nominal_kg,
        belts=weights.seating.belted,
    )
    yield Case(
        subject=f"{weights.seating.belted} belted seats",
        value=capacity.occc_kg,
        limit=capacity.occupants_kg,
        unit="kg",
        working=capacity.working,
        detail="water and cargo use up the same capacity",
    )


def gross_lower(build: Build, weights: Weights) -> Iterator[Case]:
    """GVWR against its lower bound."""
    unloaded_kg = weights.statement("us-uvw").mass.nominal_kg
    stated = weights.statement("us-least-gross")
    cargo_kg = sum(part.mass_kg for part in stated.components if part.name.startswith("cargo"))
    least = least_gross(unloaded_kg=unloaded_kg, cargo_kg=cargo_kg, seats=weights.seating.travel)
    yield Case(
        subject="vehicle",
        value=build.vehicle.ratings.gross_kg,
        limit=limit("weights.us-gross-lower").value * least.least_kg,
        unit="kg",
        working=least.working,
        detail="cargo is the brief's cargo, luggage, contents and full fresh water",
    )


def gross_within_axles(build: Build, weights: Weights) -> Iterator[Case]:
    """GVWR against the sum of the axle ratings."""
    sum_kg = weights.statement("us-axle-sum").mass.nominal_kg
    yield Case(
        subject="vehicle",
        value=build.vehicle.ratings.gross_kg,
        limit=limit("weights.us-axle-sum").value * sum_kg,
        unit="kg",
    )


def relabel(build: Build, weights: Weights) -> Iterator[Case]:
    """Everything that the build fits against the relabel threshold."""
    threshold = relabel_threshold(gross_kg=build.vehicle.ratings.gross_kg)
    yield Case(
        subject="vehicle",
        value=weights.added_kg,
        limit=threshold.threshold_kg,
        unit="kg",
        working=threshold.working,
        detail="counted: every fitting, finish and wheel exchange on the base vehicle, empty; "
        "not counted: fuel, gas, water, contents, people",
    )


def pay_mass(_build: Build, weights: Weights) -> Iterator[Case]:
    """Pay-mass left with every seat taken against 10 (n + L)."""
    least = weights.statement("eu-minimum-pay-mass")
    yield Case(
        subject="vehicle",
        value=weights.statement("eu-pay-mass-left").mass.nominal_kg,
        limit=least.mass.nominal_kg,
        unit="kg",
        working=least.working,
        detail="the overall length is the base vehicle's",
    )


def front_share(build: Build, _weights: Weights) -> Iterator[Case]:
    """Front axle with vehicle and rear axle at their maxima."""
    ratings = build.vehicle.ratings
    found = front_axle_least(gross_kg=ratings.gross_kg, rear_axle_kg=ratings.rear_axle_kg)
    yield Case(
        subject="front axle",
        value=found.front_kg,
        limit=found.least_kg,
        unit="kg",
        working=found.working,
    )


def front_share_towing(build: Build, _weights: Weights) -> Iterator[Case]:
    """Front axle with the coupling load added, where there is a hitch."""
    vehicle = build.vehicle
    hung = any(f.fitting.mounting is Mounting.HITCH for f in build.fittings)
    coupling_kg = vehicle.limits.hitch_kg
    if coupling_kg is None and vehicle.rear_end.hitch_x_mm is None and not hung:
        return
    found = front_axle_least(
        gross_kg=vehicle.ratings.gross_kg,
        rear_axle_kg=vehicle.ratings.rear_axle_kg,
        coupling_kg=coupling_kg or 0.0,
        towing=True,
    )
    yield Case(
        subject="front axle",
        value=found.front_kg,
        limit=found.least_kg,
        unit="kg",
        missing="" if coupling_kg is not None else "the hitch limit of the vehicle",
        working=found.working,
    )


def axles_cover_gross(build: Build, weights: Weights) -> Iterator[Case]:
    """Sum of the axles' masses against the maximum laden mass."""
    yield Case(
        subject="vehicle",
        value=weights.statement("us-axle-sum").mass.nominal_kg,
        limit=limit("weights.eu-axle-sum").value * build.vehicle.ratings.gross_kg,
        unit="kg",
    )


def _licence(build: Build, limit_id: str) -> Case:
    return Case(
        subject="vehicle",
        value=build.vehicle.ratings.gross_kg,
        limit=limit_kg(limit_id),
        unit="kg",
        detail=limit(limit_id).note,
    )


def licence_b(build: Build, _weights: Weights) -> Iterator[Case]:
    """Maximum mass against class B."""
    yield _licence(build, "weights.eu-licence-b")


def licence_b_uk(build: Build, _weights: Weights) -> Iterator[Case]:
    """Maximum mass against category B."""
    yield _licence(build, "weights.uk-licence-b")


def uk_approval(build: Build, weights: Weights) -> Iterator[Case]:
    """Kerbside mass with the added load against the maximum laden mass."""
    laden = weights.statement("uk-approval-laden")
    yield Case(
        subject="vehicle",
        value=laden.mass.nominal_kg,
        limit=limit("weights.uk-approval-gross").value * build.vehicle.ratings.gross_kg,
        unit="kg",
        working=laden.working,
    )
