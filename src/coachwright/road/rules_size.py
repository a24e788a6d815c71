"""Rules about overall size, angles and stability."""

from collections.abc import Callable, Iterator

from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source, Status
from coachwright.reference import limit
from coachwright.road.ground_angles import LimitingPoint
from coachwright.road.model import Road
from coachwright.units import told

Cases = Callable[[Build, Road], Iterator[Case]]

_EU = (Jurisdiction.EU,)
_UK = (Jurisdiction.UK,)
_US = (Jurisdiction.US,)
_SHORTEN = "fit something shorter, or hang it elsewhere"
_NARROWER = "fit something narrower, or let it fold flat for driving"
_LOWER = "fit something lower, or let it fold flat for driving"


def _length(limit_id: str) -> Cases:
    def cases(_build: Build, road: Road) -> Iterator[Case]:
        size = road.size
        yield _dimension("length", size.counted_length_mm, size.length_mm, limit_id)

    return cases


def _width(limit_id: str) -> Cases:
    def cases(_build: Build, road: Road) -> Iterator[Case]:
        size = road.size
        yield _dimension("width", size.counted_width_mm, size.width_mm, limit_id)

    return cases


def _height(limit_id: str) -> Cases:
    def cases(_build: Build, road: Road) -> Iterator[Case]:
        size = road.size
        yield _dimension("height", size.counted_height_mm, size.height_mm, limit_id)

    return cases


def _dimension(name: str, counted_mm: float, all_mm: float, limit_id: str) -> Case:
    return Case(
        subject=f"overall {name}",
        value=counted_mm,
        limit=limit(limit_id).value,
        unit="mm",
        detail=f"as counted; {told(all_mm, 'mm')} with everything",
    )


def _overhang(_build: Build, road: Road) -> Iterator[Case]:
    behind = told(road.size.rear_overhang_mm, "mm")
    yield Case(
        subject="rear overhang",
        value=road.size.rear_overhang_frac,
        limit=limit("road.rear-overhang-uk").value,
        unit="frac",
        detail=f"{behind} behind the rear axle, over the wheelbase",
    )


def _angle(subject: str, found: LimitingPoint | None, limit_deg: float) -> Iterator[Case]:
    if found is not None:
        yield Case(
            subject=subject,
            value=found.angle.exact_deg,
            limit=limit_deg,
            unit="deg",
            working=found.angle.working,
            detail=f"limited by {found.point.of}; {told(found.angle.simple_deg, 'deg')} by the "
            "simple form",
        )


def _departure_kept(_build: Build, road: Road) -> Iterator[Case]:
    alone = road.angles.alone
    if alone is not None:
        yield from _angle("departure angle", road.angles.equipped, alone.angle.exact_deg)


def _departure_off_road(_build: Build, road: Road) -> Iterator[Case]:
    least_deg = limit("road.departure-angle-off-road").value
    yield from _angle("departure angle", road.angles.equipped, least_deg)


def _ramp_off_road(_build: Build, road: Road) -> Iterator[Case]:
    least_deg = limit("road.breakover-angle-off-road").value
    yield from _angle("ramp angle", road.angles.between, least_deg)


def _clearance_off_road(_build: Build, road: Road) -> Iterator[Case]:
    if road.angles.lowest_between_mm is not None:
        yield Case(
            subject="clearance between the axles",
            value=road.angles.lowest_between_mm,
            limit=limit("road.clearance-off-road").value,
            unit="mm",
            detail="of what is fitted under the floor; the vehicle's own underside is not known",
        )


def _stability(_build: Build, road: Road) -> Iterator[Case]:
    stable = road.stability
    yield Case(
        subject="vehicle travelling",
        value=stable.travelling.stability_ratio,
        limit=limit("road.stability-factor-lowest-band").value,
        unit="1",
        working=stable.travelling.working,
        detail=f"between {stable.low_ratio:.2f} and {stable.high_ratio:.2f} with the tolerances; "
        "the edge is that of a rating of light passenger vehicles and no limit for a conversion",
    )


RULES = (
    Rule(
        id="road.overall-length",
        title="The vehicle is no longer than the European Union allows",
        source=limit("road.overall-length-eu").source,
        severity=Severity.STOP,
        cases=_length("road.overall-length-eu"),
        remedy=_SHORTEN,
        jurisdictions=_EU,
    ),
    Rule(
        id="road.overall-width",
        title="The vehicle is no wider than the European Union allows",
        source=limit("road.overall-width-eu").source,
        severity=Severity.STOP,
        cases=_width("road.overall-width-eu"),
        remedy=_NARROWER,
        jurisdictions=_EU,
    ),
    Rule(
        id="road.overall-height",
        title="The vehicle is no higher than the European Union allows",
        source=limit("road.overall-height-eu").source,
        severity=Severity.STOP,
        cases=_height("road.overall-height-eu"),
        remedy=_LOWER,
        jurisdictions=_EU,
    ),
    Rule(
        id="road.overall-length-uk",
        title="The vehicle is no longer than the United Kingdom allows",
        source=limit("road.overall-length-uk").source,
        severity=Severity.STOP,
        cases=_length("road.overall-length-uk"),
        remedy=_SHORTEN,
        jurisdictions=_UK,
    ),
    Rule(
        id="road.overall-width-uk",
        title="The vehicle is no wider than the United Kingdom allows (limit from memory)",
        source=limit("road.overall-width-uk").source,
        severity=Severity.CAUTION,
        cases=_width("road.overall-width-uk"),
        remedy=_NARROWER,
        jurisdictions=_UK,
    ),
    Rule(
        id="road.rear-overhang-uk",
        title="The rear overhang is no more than 60 % of the wheelbase (limit from memory)",
        source=limit("road.rear-overhang-uk").source,
        severity=Severity.CAUTION,
        cases=_overhang,
        remedy=_SHORTEN,
        jurisdictions=_UK,
    ),
    Rule(
        id="road.overall-width-us",
        title="The vehicle is no wider than commercial vehicles may be on the National Network",
        source=limit("road.overall-width-us").source,
        severity=Severity.NOTE,
        cases=_width("road.overall-width-us"),
        remedy="read the state's law: the federal width does not bind recreational vehicles",
        jurisdictions=_US,
    ),
    Rule(
        id="road.overall-height-us",
        title="The vehicle is no higher than states commonly allow",
        source=limit("road.overall-height-us").source,
        severity=Severity.NOTE,
        cases=_height("road.overall-height-us"),
        remedy="read the state's law: there is no federal height; " + _LOWER,
        jurisdictions=_US,
    ),
    Rule(
        id="road.departure-angle-kept",
        title="What hangs behind leaves the vehicle its departure angle",
        source=Source(key="shop-practice-road", status=Status.PRACTICE),
        severity=Severity.NOTE,
        cases=_departure_kept,
        holds=">=",
        remedy="hang it higher or closer to the doors; tell the customer of ferries and kerbs",
    ),
    Rule(
        id="road.departure-angle-off-road",
        title="The departure angle is that of an off-road vehicle (one of six features)",
        source=limit("road.departure-angle-off-road").source,
        severity=Severity.NOTE,
        cases=_departure_off_road,
        holds=">=",
        remedy="only where off-road use was promised: hang things higher or closer to the doors",
        jurisdictions=_EU,
    ),
    Rule(
        id="road.ramp-angle-off-road",
        title="What hangs between the axles leaves the ramp angle of an off-road vehicle",
        source=limit("road.breakover-angle-off-road").source,
        severity=Severity.NOTE,
        cases=_ramp_off_road,
        holds=">=",
        remedy="only where off-road use was promised: hang things higher or closer to an axle",
        jurisdictions=_EU,
    ),
    Rule(
        id="road.clearance-off-road",
        title="What hangs between the axles leaves the clearance of an off-road vehicle",
        source=limit("road.clearance-off-road").source,
        severity=Severity.NOTE,
        cases=_clearance_off_road,
        holds=">=",
        remedy="only where off-road use was promised: hang things higher",
        jurisdictions=_EU,
    ),
    Rule(
        id="road.stability-factor",
        title="The static stability factor reaches the lowest rating band of light passenger "
        "vehicles (from memory; orientation, not a limit)",
        source=limit("road.stability-factor-lowest-band").source,
        severity=Severity.NOTE,
        cases=_stability,
        holds=">=",
        remedy="bring mass down from the roof and the high cupboards; tell the driver",
    ),
)
