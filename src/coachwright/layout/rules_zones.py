"""Rules of the access zones: the spaces that must stay free around a fitting."""

from collections.abc import Callable, Iterator

from coachwright.layout.model import Layout, PlacedZone
from coachwright.layout.zones import EXIT, MOVING
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source
from coachwright.reference import limit
from coachwright.units import told

_GEOMETRY = Source(key="build-geometry", clause="zones")
_VENTILATION = frozenset({"ventilation"})
_EXITS = frozenset({EXIT})
_SEATS = frozenset({"seat entry", "belt path"})
_LISTED = MOVING | _VENTILATION | _EXITS | _SEATS


def _free(
    wanted: Callable[[str], bool], *, may_be_waived: bool
) -> Callable[[Build, Layout], Iterator[Case]]:
    """Return the cases of the zones of some purposes.

    One that was given up is not judged; where people's safety hangs on it, or where it is always
    kept free, it is judged all the same and shows who gave it up.
    """

    def cases(_build: Build, layout: Layout) -> Iterator[Case]:
        for zone in layout.zones:
            if wanted(zone.purpose):
                yield _zone_case(zone, may_be_waived=may_be_waived and not zone.always)

    return cases


def _zone_case(zone: PlacedZone, *, may_be_waived: bool) -> Case:
    waived = zone.waived
    given_up = ""
    if waived is not None and may_be_waived:
        given_up = f"{zone.purpose}: given up by {waived.role}: {waived.reason}"
    return Case(
        subject=zone.fitting,
        value=zone.depth_mm,
        limit=limit("layout.judged-to").value,
        unit="mm",
        detail=_said(zone),
        not_applicable=given_up,
        accepted=waived,
    )


def _said(zone: PlacedZone) -> str:
    if not zone.intrusions:
        return f"{zone.purpose}: free"
    by = ", ".join(f"{found.name} {told(found.depth_mm, 'mm')}" for found in zone.intrusions)
    return f"{zone.purpose}: blocked by {by} deep; {told(zone.free_frac, 'frac')} free"


def _pairs(_build: Build, layout: Layout) -> Iterator[Case]:
    none = limit("layout.zone-pairs").value
    for pair in layout.zone_pairs:
        one, other = pair.one, pair.other
        yield Case(
            subject=f"{one.fitting} and {other.fitting}",
            value=1,
            limit=none,
            unit="count",
            detail=f"{one.purpose} of {one.fitting} and {other.purpose} of {other.fitting} "
            f"overlap by {told(pair.overlap.volume_l, 'L')}, "
            f"{told(pair.overlap.shift_mm, 'mm')} deep",
        )
    if len(layout.zones) > 1 and not layout.zone_pairs:
        yield Case(subject="zones", value=0, limit=none, unit="count")


ZONE_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.moving-parts-free",
        title="Drawers, doors, lids and trays can move all the way",
        source=_GEOMETRY,
        severity=Severity.STOP,
        cases=_free(MOVING.__contains__, may_be_waived=True),
        remedy="move what stands in the way, or give the zone up with a reason",
    ),
    Rule(
        id="layout.exits-free",
        title="The space before an exit is free",
        source=_GEOMETRY,
        severity=Severity.STOP,
        cases=_free(_EXITS.__contains__, may_be_waived=False),
        remedy="move what stands before the exit",
    ),
    Rule(
        id="layout.ventilation-free",
        title="The air round a fitting that needs it is free",
        source=Source(key="part-maker-data", clause="zones"),
        severity=Severity.CAUTION,
        cases=_free(_VENTILATION.__contains__, may_be_waived=False),
        remedy="move what stands in the air's way; the part's own manual governs",
    ),
    Rule(
        id="layout.seat-entry-free",
        title="The way into a seat and the path of its belt are free",
        source=Source(key="part-maker-data", clause="zones"),
        severity=Severity.CAUTION,
        cases=_free(_SEATS.__contains__, may_be_waived=True),
        remedy="move what stands before the seat, or give the zone up with a reason",
    ),
    Rule(
        id="layout.working-space-free",
        title="The space to use, to clean and to service a fitting is free",
        source=Source(key="part-maker-data", clause="zones"),
        severity=Severity.CAUTION,
        cases=_free(lambda purpose: purpose not in _LISTED, may_be_waived=True),
        remedy="move what stands in it, or give the zone up with a reason",
    ),
    Rule(
        id="layout.zones-shared",
        title="Zones overlap only where both may share",
        source=limit("layout.zone-pairs").source,
        severity=Severity.CAUTION,
        cases=_pairs,
        remedy="move one of the two fittings, or give one of the zones up with a reason",
    ),
)
