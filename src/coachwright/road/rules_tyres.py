"""Rules about tyres, speedometer and spare."""

from collections.abc import Iterator

from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source, Status
from coachwright.reference import limit
from coachwright.road.model import Road
from coachwright.units import told

_EUROPE = (Jurisdiction.EU, Jurisdiction.UK)
_SHOWN_AT_100 = f"what the speedometer shows at a true {told(100, 'km/h')} on the placard tyre"


def _axle_load(_build: Build, road: Road) -> Iterator[Case]:
    for axle in road.axles:
        yield Case(
            subject=axle.axle,
            value=axle.load_kg,
            limit=axle.capacity_kg,
            unit="kg",
            missing=axle.missing,
            working=axle.capacity_working,
            detail="travelling, nominal masses",
        )


def _axle_load_bound(_build: Build, road: Road) -> Iterator[Case]:
    for axle in road.axles:
        yield Case(
            subject=axle.axle,
            value=axle.heaviest_kg,
            limit=axle.capacity_kg,
            unit="kg",
            missing=axle.missing,
            working=axle.capacity_working,
            detail="95 % bound, travelling or the axle's worst combination, the heavier",
        )


def _axle_rating(_build: Build, road: Road) -> Iterator[Case]:
    for axle in road.axles:
        yield Case(
            subject=axle.axle,
            value=axle.axle_rating_kg,
            limit=axle.capacity_kg,
            unit="kg",
            missing=axle.missing,
            working=axle.capacity_working,
            detail=f"{axle.tyres} tyres of the kind {road.tyres.kind}, "
            f"rating divided by {axle.divisor_factor:g}",
        )


def _speed_symbol(build: Build, road: Road) -> Iterator[Case]:
    yield Case(
        subject="tyres",
        value=build.vehicle.top_speed_km_per_h,
        limit=road.tyres.top_speed_km_per_h,
        unit="km/h",
        detail=f"speed symbol {road.tyres.speed_symbol}",
    )


def _pressure(_build: Build, road: Road) -> Iterator[Case]:
    for axle in road.axles:
        yield Case(
            subject=axle.axle,
            value=axle.needed_pressure_kpa,
            limit=axle.placard_pressure_kpa,
            unit="kPa",
            missing=axle.pressure_missing,
            working=axle.pressure_working,
            detail="for the axle's heaviest state; never go below the placard",
        )


def _reads_low(_build: Build, road: Road) -> Iterator[Case]:
    if road.tyres.fitting:
        check = road.speedometer.at_top
        yield Case(
            subject=road.tyres.fitting,
            value=check.excess_km_per_h,
            limit=limit("road.speedometer-least-excess").value,
            unit="km/h",
            working=check.working,
            detail=f"at a true {told(check.true_km_per_h, 'km/h')}; {_basis(road)}",
        )


def _reads_high(_build: Build, road: Road) -> Iterator[Case]:
    if road.tyres.fitting:
        check = road.speedometer.at_top
        open_question = (
            not road.speedometer.known and road.tyres.change.ratio < 1 and not check.reads_high
        )
        yield Case(
            subject=road.tyres.fitting,
            value=check.excess_km_per_h,
            limit=check.most_excess_km_per_h,
            unit="km/h",
            missing=_SHOWN_AT_100 if open_question else "",
            working=check.working,
            detail=f"at a true {told(check.true_km_per_h, 'km/h')}; {_basis(road)}",
        )


def _basis(road: Road) -> str:
    if road.speedometer.known:
        return "from what the speedometer shows on the placard tyre, as stated"
    return "the speedometer taken as exact on the placard tyre, as nothing is stated"


def _odometer(_build: Build, road: Road) -> Iterator[Case]:
    if road.tyres.fitting:
        yield Case(
            subject=road.tyres.fitting,
            value=abs(road.tyres.change.ratio - 1),
            limit=limit("road.odometer-share-germany").value,
            unit="frac",
            working=road.tyres.change.working,
            detail="change of the distance counted, if it was exact on the placard tyre",
        )


def _clears(_build: Build, road: Road) -> Iterator[Case]:
    yield Case(
        subject=road.tyres.fitting or "tyres",
        value=road.tyres.dimensions.diameter_mm,
        limit=road.tyres.largest_diameter_mm,
        unit="mm",
        working=road.tyres.dimensions.working,
        detail="overall diameter against the largest that clears the unmodified vehicle",
    )


def _placard(build: Build, road: Road) -> Iterator[Case]:
    if road.tyres.fitting:
        yield Case(
            subject=road.tyres.fitting,
            value=float(road.tyres.placard_differences),
            limit=limit("road.placard-differences").value,
            unit="count",
            detail=f"fitted {road.tyres.size}, placard {build.vehicle.tyre.size.text}",
        )


def _spare_carried(_build: Build, road: Road) -> Iterator[Case]:
    yield Case(
        subject="spare wheel",
        value=0.0 if road.spare.diameter_mm is None else 1.0,
        limit=limit("road.spare-count").value,
        unit="count",
    )


def _spare_fits(_build: Build, road: Road) -> Iterator[Case]:
    if road.spare.difference_frac is not None:
        yield Case(
            subject="spare wheel",
            value=road.spare.difference_frac,
            limit=limit("road.spare-differences").value,
            unit="frac",
            detail=f"spare {road.spare.size}, tyres {road.tyres.size}"
            + ("" if road.spare.full_size else "; a spare for temporary use"),
        )


RULES = (
    Rule(
        id="road.tyres-carry-axle",
        title="The tyres of an axle carry what stands on it when travelling",
        source=Source(key="un-r54", clause="load capacity index"),
        severity=Severity.STOP,
        cases=_axle_load,
        remedy="move or leave out mass, or fit tyres and wheels with a higher load index",
    ),
    Rule(
        id="road.tyres-carry-axle-at-worst",
        title="The tyres of an axle carry its heaviest state with the tolerances of the masses",
        source=Source(key="shop-practice-road", status=Status.PRACTICE),
        severity=Severity.CAUTION,
        cases=_axle_load_bound,
        remedy="weigh the vehicle to narrow the tolerance, move mass, or fit stronger tyres",
    ),
    Rule(
        id="road.tyres-cover-axle-rating-us",
        title="The tyres of an axle together are rated for the axle's gross rating (GAWR)",
        source=limit("road.passenger-tyre-divisor").source,
        severity=Severity.STOP,
        cases=_axle_rating,
        holds="<=",
        remedy="fit tyres with a higher load index; a passenger-car tyre counts for its rating "
        "divided by 1.10",
        jurisdictions=(Jurisdiction.US,),
    ),
    Rule(
        id="road.tyres-cover-axle-rating",
        title="The tyres of an axle together are rated for the axle's permissible mass "
        "(requirement from memory)",
        source=Source(key="eu-458-2011", status=Status.MEMORY),
        severity=Severity.CAUTION,
        cases=_axle_rating,
        remedy="fit tyres with a higher load index, and have the change entered",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="road.tyre-speed-symbol",
        title="The tyre's speed symbol covers the vehicle's top speed (requirement from memory)",
        source=Source(key="un-r54", clause="speed symbol", status=Status.MEMORY),
        severity=Severity.CAUTION,
        cases=_speed_symbol,
        remedy="fit tyres with a higher speed symbol; winter tyres may need a label instead",
    ),
    Rule(
        id="road.tyre-pressure-for-load",
        title="The placard pressure is enough for the axle's heaviest state",
        source=limit("road.pressure-exponent").source,
        severity=Severity.CAUTION,
        cases=_pressure,
        remedy="ask the tyre maker's table for the pressure; never below the placard, never above "
        "what tyre, wheel and valve are made for",
    ),
    Rule(
        id="road.speedometer-never-low",
        title="The speedometer never shows less than the true speed",
        source=limit("road.speedometer-least-excess").source,
        severity=Severity.STOP,
        cases=_reads_low,
        holds=">=",
        remedy=f"state {_SHOWN_AT_100}, or have it matched to the tyres and accept this with the "
        "proof",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="road.speedometer-not-too-high",
        title="The speedometer shows no more than a tenth and 4 km/h above the true speed",
        source=limit("road.speedometer-share").source,
        severity=Severity.STOP,
        cases=_reads_high,
        remedy=f"state {_SHOWN_AT_100}, or have it matched to the tyres and accept this with the "
        "proof",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="road.odometer-germany",
        title="Other tyres change the distance counted by no more than Germany lets an odometer "
        "err",
        source=limit("road.odometer-share-germany").source,
        severity=Severity.CAUTION,
        cases=_odometer,
        remedy="have the odometer matched to the tyres",
        jurisdictions=(Jurisdiction.EU,),
    ),
    Rule(
        id="road.tyre-clears-vehicle",
        title="The tyre is no larger than the largest that clears the unmodified vehicle",
        source=Source(key="vehicle-maker-data"),
        severity=Severity.STOP,
        cases=_clears,
        remedy="fit a smaller tyre; a lift or cut arches need their own approval",
    ),
    Rule(
        id="road.tyre-size-on-placard",
        title="The tyre's size is the one on the placard",
        source=limit("road.placard-differences").source,
        severity=Severity.CAUTION,
        cases=_placard,
        remedy="fit the placard's size, or correct the placard and certify as alterer",
        jurisdictions=(Jurisdiction.US,),
    ),
    Rule(
        id="road.spare-carried",
        title="A spare wheel is carried",
        source=limit("road.spare-count").source,
        severity=Severity.NOTE,
        cases=_spare_carried,
        holds=">=",
        remedy="carry a spare wheel, or a repair kit and a plan for recovery",
    ),
    Rule(
        id="road.spare-fits-tyres",
        title="The spare wheel has nearly the diameter of the tyres",
        source=limit("road.spare-differences").source,
        severity=Severity.CAUTION,
        cases=_spare_fits,
        remedy="carry a spare of the fitted size",
    ),
)
