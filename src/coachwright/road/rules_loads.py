"""Rules about what hangs on the roof, the doors, the hitch and the sides."""

from collections.abc import Callable, Iterator

from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source
from coachwright.reference import limit
from coachwright.road.model import LadderState, Road, ZoneLoad
from coachwright.units import told

Cases = Callable[[Build, Road], Iterator[Case]]

_VEHICLE = Source(key="vehicle-maker-data")
_PART = Source(key="part-maker-data")
_MOST_NAMED = 3


def _zone_cases(*names: str, missing: str) -> Cases:
    def cases(_build: Build, road: Road) -> Iterator[Case]:
        for zone in road.zones:
            if zone.zone in names and zone.items:
                yield _zone_case(zone, missing)

    return cases


def _zone_case(zone: ZoneLoad, missing: str) -> Case:
    return Case(
        subject=zone.zone,
        value=zone.load_kg,
        limit=zone.limit_kg,
        unit="kg",
        missing=missing if zone.limit_kg is None else "",
        working=zone.working,
        detail=_heaviest(zone),
    )


def _heaviest(zone: ZoneLoad) -> str:
    """Name the heaviest things there; a roof can carry too many to read."""
    by_mass = sorted(zone.items, key=lambda item: item.mass_kg, reverse=True)
    named = [f"{item.name} {told(item.mass_kg, 'kg')}" for item in by_mass[:_MOST_NAMED]]
    more = len(by_mass) - len(named)
    return "; ".join((*named, f"and {more} more") if more else named)


def _door_moment(_build: Build, road: Road) -> Iterator[Case]:
    for moment in road.door_moments:
        if road.zone(moment.zone).items:
            yield Case(
                subject=moment.zone,
                value=moment.load.moment_n_m,
                limit=moment.limit_n_m,
                unit="N m",
                missing="the vehicle maker's limit for the moment on a rear door's hinges"
                if moment.limit_n_m is None
                else "",
                working=moment.load.working,
                detail=f"the load's centre is {told(moment.load.arm_mm, 'mm')} from the hinges",
            )


def _carried(kind: str) -> Cases:
    def cases(_build: Build, road: Road) -> Iterator[Case]:
        for carrier in road.carriers:
            if carrier.kind == kind:
                yield Case(
                    subject=carrier.carrier,
                    value=carrier.load_kg,
                    limit=carrier.limit_kg,
                    unit="kg",
                    working=carrier.working,
                    detail="everything on it, with contents",
                )

    return cases


def _rack_standing(_build: Build, road: Road) -> Iterator[Case]:
    for carrier in road.carriers:
        if carrier.standing_kg is not None:
            yield Case(
                subject=carrier.carrier,
                value=carrier.standing_kg,
                limit=carrier.standing_limit_kg,
                unit="kg",
                detail="everything on it and one person",
            )


def _ladder_load(_build: Build, road: Road) -> Iterator[Case]:
    for ladder in road.ladders:
        yield Case(
            subject=ladder.name,
            value=ladder.person_kg,
            limit=ladder.limit_kg,
            unit="kg",
            missing="the ladder's load limit" if ladder.limit_kg is None else "",
            detail="the heaviest traveller, at least one standard person",
        )


def _ladder(length_of: Callable[[LadderState], float | None], limit_id: str) -> Cases:
    def cases(_build: Build, road: Road) -> Iterator[Case]:
        for ladder in road.ladders:
            length_mm = length_of(ladder)
            if ladder.step and length_mm is None:
                continue
            yield Case(
                subject=ladder.name,
                value=length_mm,
                limit=limit(limit_id).value,
                unit="mm",
                missing="the ladder's rung spacing" if length_mm is None else "",
                detail="a rule for workplaces, taken as a guide",
            )

    return cases


def _stop(rule_id: str, title: str, source: Source, cases: Cases, remedy: str) -> Rule:
    return Rule(
        id=rule_id,
        title=title,
        source=source,
        severity=Severity.STOP,
        cases=cases,
        remedy=remedy,
    )


_LIMITS = (
    _stop(
        "road.roof-load",
        "What is on the roof when moving is within the vehicle maker's limit",
        _VEHICLE,
        _zone_cases("roof", missing="the vehicle maker's roof load limit when moving"),
        "take something off the roof, or find the maker's figure",
    ),
    _stop(
        "road.roof-load-standing",
        "What is on the roof with one person on its deck is within the vehicle maker's limit",
        _VEHICLE,
        _zone_cases("roof standing", missing="the vehicle maker's roof load limit when parked"),
        "keep people off the roof, take something off it, or find the maker's figure",
    ),
    _stop(
        "road.roof-rack-load",
        "What is on a roof rack is within the rack's own limit",
        _PART,
        _carried("roof_rack"),
        "take something off the rack, or fit a stronger one",
    ),
    _stop(
        "road.roof-rack-standing",
        "What is on a roof rack with one person is within the rack's own limit for standing",
        _PART,
        _rack_standing,
        "keep people off the rack, take something off it, or fit a stronger one",
    ),
    _stop(
        "road.rear-door-load",
        "What hangs on a rear door is within the vehicle maker's limit",
        _VEHICLE,
        _zone_cases(
            "rear door left",
            "rear door right",
            missing="the vehicle maker's load limit for a rear door",
        ),
        "move something to the other door or the hitch, or find the maker's figure",
    ),
    _stop(
        "road.rear-door-moment",
        "The moment on a rear door's hinges is within the vehicle maker's limit",
        _VEHICLE,
        _door_moment,
        "hang it closer to the hinges and to the door, or make it lighter",
    ),
    _stop(
        "road.rear-door-carrier-load",
        "What is on a rear-door carrier is within the carrier's own limit",
        _PART,
        _carried("rear_door_carrier"),
        "take something off the carrier, or fit a stronger one",
    ),
    _stop(
        "road.hitch-load",
        "What hangs on the hitch is within the vehicle maker's limit",
        _VEHICLE,
        _zone_cases("hitch", missing="the vehicle maker's limit for the load on the hitch"),
        "carry less on the hitch, or find the maker's figure",
    ),
    _stop(
        "road.hitch-carrier-load",
        "What is on a hitch carrier is within the carrier's own limit",
        _PART,
        _carried("hitch_carrier"),
        "take something off the carrier, or fit a stronger one",
    ),
    _stop(
        "road.side-load",
        "What hangs on a side is within the vehicle maker's limit",
        _VEHICLE,
        _zone_cases(
            "side left", "side right", missing="the vehicle maker's limit for a side or gutter"
        ),
        "ask the vehicle's maker, or spread the fixings as the part's maker says",
    ),
    _stop(
        "road.slide-out-load",
        "What is on a slide-out tray is within the tray's own limit",
        _PART,
        _carried("slide_out"),
        "take something off the tray, or fit a stronger one",
    ),
    _stop(
        "road.ladder-load",
        "A ladder carries the heaviest traveller",
        _PART,
        _ladder_load,
        "fit a stronger ladder, or find its maker's figure",
    ),
)

_LADDERS = (
    Rule(
        id="road.ladder-rungs-not-far-apart",
        title="The rungs of a ladder are no further apart than at a workplace",
        source=limit("road.ladder-rung-most").source,
        severity=Severity.NOTE,
        cases=_ladder(lambda ladder: ladder.rung_spacing_mm, "road.ladder-rung-most"),
        remedy="fit a ladder with closer rungs",
    ),
    Rule(
        id="road.ladder-rungs-not-close",
        title="The rungs of a ladder are no closer than at a workplace",
        source=limit("road.ladder-rung-least").source,
        severity=Severity.NOTE,
        cases=_ladder(lambda ladder: ladder.rung_spacing_mm, "road.ladder-rung-least"),
        holds=">=",
        remedy="fit a ladder with wider spaced rungs",
    ),
    Rule(
        id="road.ladder-first-rung",
        title="The lowest rung of a ladder is no higher than at a workplace",
        source=limit("road.ladder-first-rung").source,
        severity=Severity.NOTE,
        cases=_ladder(lambda ladder: ladder.first_rung_mm, "road.ladder-first-rung"),
        remedy="add a folding step below the lowest rung",
    ),
    Rule(
        id="road.ladder-width",
        title="A ladder is as wide as at a workplace",
        source=limit("road.ladder-width").source,
        severity=Severity.NOTE,
        cases=_ladder(lambda ladder: ladder.clear_width_mm, "road.ladder-width"),
        holds=">=",
        remedy="fit a wider ladder",
    ),
)

RULES = (*_LIMITS, *_LADDERS)
