"""What the rules on loads compare with what."""

from collections.abc import Iterator

from coachwright.model.build import Build
from coachwright.model.finding import Case
from coachwright.reference import limit
from coachwright.units import told
from coachwright.weights.margins import side_difference_frac
from coachwright.weights.model import LoadCase, Weights

LADEN = ("driver-only", "travelling", "grey-full")
"""Load cases that must stay within the ratings."""


def _laden(weights: Weights) -> Iterator[LoadCase]:
    for name in LADEN:
        yield weights.case(name)


def _gross(build: Build, weights: Weights, limit_id: str) -> Iterator[Case]:
    gross_kg = limit(limit_id).value * build.vehicle.ratings.gross_kg
    for case in _laden(weights):
        yield Case(
            subject=case.label.lower(),
            value=case.total.nominal_kg,
            limit=gross_kg,
            unit="kg",
            detail=case.note,
        )


def gross_us(build: Build, weights: Weights) -> Iterator[Case]:
    """Total of each laden case against the GVWR."""
    yield from _gross(build, weights, "weights.us-gross")


def gross_eu(build: Build, weights: Weights) -> Iterator[Case]:
    """Total of each laden case against the maximum laden mass."""
    yield from _gross(build, weights, "weights.eu-gross")


def _axles(build: Build, weights: Weights, limit_id: str) -> Iterator[Case]:
    ratings = build.vehicle.ratings
    ratio = limit(limit_id).value
    for case in _laden(weights):
        for axle, load, rating_kg in (
            ("front axle", case.front, ratings.front_axle_kg),
            ("rear axle", case.rear, ratings.rear_axle_kg),
        ):
            yield Case(
                subject=f"{axle}, {case.label.lower()}",
                value=load.nominal_kg,
                limit=ratio * rating_kg,
                unit="kg",
                detail=case.note,
            )


def axles_us(build: Build, weights: Weights) -> Iterator[Case]:
    """Each axle of each laden case against its GAWR."""
    yield from _axles(build, weights, "weights.us-axle")


def axles_eu(build: Build, weights: Weights) -> Iterator[Case]:
    """Each axle of each laden case against its permissible mass."""
    yield from _axles(build, weights, "weights.eu-axle")


def gross_bound(build: Build, weights: Weights) -> Iterator[Case]:
    """Upper 95 % bound of each laden total against the rating."""
    gross_kg = limit("weights.bound").value * build.vehicle.ratings.gross_kg
    for case in _laden(weights):
        yield Case(
            subject=case.label.lower(),
            value=case.total.high_kg,
            limit=gross_kg,
            unit="kg",
            detail="upper 95 % bound",
        )


def axle_bound(build: Build, weights: Weights) -> Iterator[Case]:
    """Upper 95 % bound of each laden axle against its rating."""
    ratings = build.vehicle.ratings
    ratio = limit("weights.bound").value
    for case in _laden(weights):
        for axle, load, rating_kg in (
            ("front axle", case.front, ratings.front_axle_kg),
            ("rear axle", case.rear, ratings.rear_axle_kg),
        ):
            yield Case(
                subject=f"{axle}, {case.label.lower()}",
                value=load.high_kg,
                limit=ratio * rating_kg,
                unit="kg",
                detail="upper 95 % bound",
            )


def worst_combination(build: Build, weights: Weights) -> Iterator[Case]:
    """Each axle in the combination of loads that is worst for it."""
    ratings = build.vehicle.ratings
    ratio = limit("weights.worst-combination").value
    front, rear = weights.case("front-axle-worst"), weights.case("rear-axle-worst")
    for axle, load, rating_kg, note in (
        ("front axle", front.front, ratings.front_axle_kg, front.note),
        ("rear axle", rear.rear, ratings.rear_axle_kg, rear.note),
    ):
        yield Case(
            subject=axle,
            value=load.nominal_kg,
            limit=ratio * rating_kg,
            unit="kg",
            detail=note,
        )


def all_seats(build: Build, weights: Weights) -> Iterator[Case]:
    """Vehicle and axles with every travel seat taken, as the statements count."""
    ratings = build.vehicle.ratings
    ratio = limit("weights.eu-axle").value
    case = weights.case("all-seats")
    for subject, load, rating_kg in (
        ("vehicle", case.total, ratings.gross_kg),
        ("front axle", case.front, ratings.front_axle_kg),
        ("rear axle", case.rear, ratings.rear_axle_kg),
    ):
        yield Case(
            subject=subject,
            value=load.nominal_kg,
            limit=ratio * rating_kg,
            unit="kg",
            detail=case.note,
        )


def front_in_use(_build: Build, weights: Weights) -> Iterator[Case]:
    """Front axle where it is loaded least, as a share of that case's total."""
    case = weights.case("front-axle-least")
    share_frac = limit("weights.front-share-in-use").value
    yield Case(
        subject="front axle",
        value=case.front.nominal_kg,
        limit=share_frac * case.total.nominal_kg,
        unit="kg",
        detail="common practice: the legal share, applied to the vehicle as it is used",
    )


def side_balance(_build: Build, weights: Weights) -> Iterator[Case]:
    """Difference of each axle's sides, travelling."""
    case = weights.case("travelling")
    for axle, sides in (("front axle", case.front_sides), ("rear axle", case.rear_sides)):
        heavier = "right" if sides.right_kg > sides.left_kg else "left"
        yield Case(
            subject=axle,
            value=side_difference_frac(left_kg=sides.left_kg, right_kg=sides.right_kg),
            limit=limit("weights.side-difference").value,
            unit="frac",
            detail=f"travelling; the {heavier} side is the heavier",
        )


def ticket_bound(_build: Build, weights: Weights) -> Iterator[Case]:
    """Each reading of the ticket against the model."""
    if weights.ticket is None:
        return
    rows = {row.subject: row for row in weights.ticket.rows}
    for subject in ("vehicle", "front axle", "rear axle"):
        if subject not in rows:
            yield Case(subject=subject, value=None, limit=None, unit="kg", missing="axle readings")
    for row in weights.ticket.rows:
        yield Case(
            subject=row.subject,
            value=abs(row.difference_kg),
            limit=limit("weights.ticket").value * row.bound_kg,
            unit="kg",
            detail=f"weighed {told(row.weighed_kg, 'kg')}, "
            f"predicted {told(row.predicted_kg, 'kg')}",
        )


def declared(_build: Build, weights: Weights) -> Iterator[Case]:
    """Difference on the weighbridge against 5 % of the mass that the model would state."""
    if weights.ticket is None:
        return
    stated_kg = weights.ticket.predicted.total.nominal_kg
    row = weights.ticket.rows[0]
    yield Case(
        subject="vehicle",
        value=abs(row.difference_kg),
        limit=limit("weights.eu-declared").value * stated_kg,
        unit="kg",
        detail="the model's mass, uncorrected, is taken as the one stated",
    )


def contents(build: Build, _weights: Weights) -> Iterator[Case]:
    """Stowed mass in each cabinet against its limit."""
    for fitted in build.having("carcass"):
        carcass = fitted.part.carcass
        if carcass is None or not fitted.fitting.contents_kg:
            continue
        most_kg = carcass.contents_limit_kg
        yield Case(
            subject=fitted.name,
            value=fitted.fitting.contents_kg,
            limit=None if most_kg is None else limit("weights.contents").value * most_kg,
            unit="kg",
            missing="" if most_kg is not None else "the cabinet's limit for its contents",
        )
