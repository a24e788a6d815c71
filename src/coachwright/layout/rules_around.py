"""Rules of the underbody, the sides, ladders and slide-out trays."""

from collections.abc import Callable, Iterator

from coachwright.layout.model import Layout
from coachwright.layout.model_outside import BesideDoor, UnderPlace
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source
from coachwright.reference import limit
from coachwright.units import told

Cases = Callable[[Build, Layout], Iterator[Case]]
_GEOMETRY = Source(key="build-geometry")
_SPARE = "spare wheel"
_WORKPLACE = "a rule for workplaces, taken as a guide"


def _taken(build: Build, layout: Layout) -> Iterator[Case]:
    for place in layout.outside.under:
        yield _taken_case(build, place, [each.zone for each in place.taken if each.use != _SPARE])


def _spare(build: Build, layout: Layout) -> Iterator[Case]:
    if build.vehicle_spare_removed:
        return
    if any(zone.use == _SPARE for zone in build.vehicle.underbody):
        for place in layout.outside.under:
            yield _taken_case(
                build, place, [each.zone for each in place.taken if each.use == _SPARE]
            )


def _taken_case(build: Build, place: UnderPlace, zones: list[str]) -> Case:
    shifts_mm = [each.shift_mm for each in place.taken if each.zone in zones]
    return Case(
        subject=place.name,
        value=max(shifts_mm, default=0.0),
        limit=limit("layout.judged-to").value,
        unit="mm",
        missing="" if build.vehicle.underbody else "what the vehicle has under its floor",
        detail=", ".join(zones),
    )


def _free(_build: Build, layout: Layout) -> Iterator[Case]:
    for place in layout.outside.under:
        yield Case(
            subject=place.name,
            value=place.outside_mm,
            limit=limit("layout.judged-to").value,
            unit="mm",
            missing="the free places under the vehicle's floor" if not place.free_zone else "",
            detail=f"out of the place {place.free_zone!r}" if place.free_zone else "",
        )


def _clearance(_build: Build, layout: Layout) -> Iterator[Case]:
    for place in layout.outside.under:
        yield Case(
            subject=place.name,
            value=place.clearance_mm,
            limit=limit("layout.underbody-clearance").value,
            unit="mm",
            detail="unladen, on the standard tyres",
        )


def _exhaust(build: Build, layout: Layout) -> Iterator[Case]:
    if build.vehicle.fuel.kind == "electric":
        return
    for place in layout.outside.under:
        yield Case(
            subject=place.name,
            value=place.exhaust_mm,
            limit=limit("layout.exhaust-distance").value,
            unit="mm",
            missing="where the vehicle has its exhaust" if place.exhaust_mm is None else "",
        )


def _ladder_as_stated(_build: Build, layout: Layout) -> Iterator[Case]:
    for ladder in layout.outside.ladders:
        yield Case(
            subject=ladder.name,
            value=max(0.0, ladder.bottom_mm - ladder.first_rung_mm),
            limit=limit("layout.ladder-as-stated").value,
            unit="mm",
            detail=f"its lowest edge is {told(ladder.bottom_mm, 'mm')} above the ground, its "
            f"first rung is stated at {told(ladder.first_rung_mm, 'mm')}",
        )


def _ladder_top(_build: Build, layout: Layout) -> Iterator[Case]:
    for ladder in layout.outside.ladders:
        yield Case(
            subject=ladder.name,
            value=ladder.below_roof_mm,
            limit=limit("layout.ladder-below-roof").value,
            unit="mm",
        )


def _ladder_width(_build: Build, layout: Layout) -> Iterator[Case]:
    for ladder in layout.outside.ladders:
        yield Case(
            subject=ladder.name,
            value=ladder.clear_width_mm,
            limit=limit("layout.fixed-ladder-width").value,
            unit="mm",
            detail=_WORKPLACE,
        )


def _tray_opening(_build: Build, layout: Layout) -> Iterator[Case]:
    for tray in layout.outside.trays:
        if tray.leaves:
            spare_mm = tray.spare_mm
            yield Case(
                subject=tray.name,
                value=None if spare_mm is None else max(0.0, -spare_mm),
                limit=limit("layout.judged-to").value,
                unit="mm",
                missing=f"a doorway at the {tray.way}" if spare_mm is None else "",
                detail=f"with what stands on it, through {tray.opening or 'no doorway'}",
            )


def _tray_way(_build: Build, layout: Layout) -> Iterator[Case]:
    for tray in layout.outside.trays:
        yield Case(
            subject=tray.name,
            value=tray.hits[0].shift_mm if tray.hits else 0.0,
            limit=limit("layout.judged-to").value,
            unit="mm",
            detail=", ".join(hit.name for hit in tray.hits),
        )


def _tray_reach(_build: Build, layout: Layout) -> Iterator[Case]:
    for tray in layout.outside.trays:
        if tray.leaves and tray.load:
            yield Case(
                subject=tray.name,
                value=tray.top_mm,
                limit=limit("layout.tray-reach").value,
                unit="mm",
                detail=f"top of {', '.join(tray.load)} above the ground; "
                f"{told(tray.load_kg, 'kg')} on it",
            )


def _door_path(_build: Build, layout: Layout) -> Iterator[Case]:
    gap_mm = limit("layout.sliding-door-gap").value
    for beside in layout.outside.beside_doors:
        if not beside.opens:
            yield _beside(beside, beside.overlap_mm if beside.thickness_mm > gap_mm else 0.0)


def _window_path(_build: Build, layout: Layout) -> Iterator[Case]:
    for beside in layout.outside.beside_doors:
        if beside.opens:
            yield _beside(beside, beside.overlap_mm)


def _beside(beside: BesideDoor, overlap_mm: float) -> Case:
    return Case(
        subject=beside.name,
        value=overlap_mm,
        limit=limit("layout.judged-to").value,
        unit="mm",
        detail=f"in the way of the open {beside.door}" if overlap_mm else beside.door,
    )


def _surfaces(limit_id: str) -> Cases:
    def cases(_build: Build, layout: Layout) -> Iterator[Case]:
        for surface in layout.outside.surfaces:
            yield Case(
                subject=surface.name,
                value=surface.height_mm,
                limit=limit(limit_id).value,
                unit="mm",
                detail="above the ground",
            )

    return cases


def _rule(
    rule_id: str,
    title: str,
    source: Source,
    severity: Severity,
    cases: Cases,
    *,
    remedy: str,
    holds: str = "<=",
) -> Rule:
    return Rule(
        id=rule_id,
        title=title,
        source=source,
        severity=severity,
        cases=cases,
        remedy=remedy,
        holds=holds,
    )


_UNDER = (
    _rule(
        "layout.underbody-taken",
        "What hangs under the floor keeps out of the vehicle's own parts",
        _GEOMETRY,
        Severity.STOP,
        _taken,
        remedy="hang it in a place that the vehicle's maker leaves free",
    ),
    _rule(
        "layout.underbody-spare",
        "What hangs under the floor leaves the spare wheel its place",
        _GEOMETRY,
        Severity.CAUTION,
        _spare,
        remedy="hang it elsewhere, or take the spare wheel off and say so in the build",
    ),
    _rule(
        "layout.underbody-free",
        "What hangs under the floor stays in one of the places that are free",
        Source(key="vehicle-maker-data", clause="underbody"),
        Severity.CAUTION,
        _free,
        remedy="move it or choose a smaller one; look under the vehicle first",
    ),
    _rule(
        "layout.underbody-clearance",
        "What hangs under the floor leaves ground clearance",
        limit("layout.underbody-clearance").source,
        Severity.CAUTION,
        _clearance,
        remedy="choose a flatter one or hang it higher",
        holds=">=",
    ),
    _rule(
        "layout.exhaust-distance",
        "What hangs under the floor keeps its distance from the exhaust",
        limit("layout.exhaust-distance").source,
        Severity.CAUTION,
        _exhaust,
        remedy="move it away, or fit a heat shield that the maker of the part accepts",
        holds=">=",
    ),
)
_LADDERS = (
    _rule(
        "layout.ladder-as-stated",
        "A ladder reaches down to the first rung that its record states",
        limit("layout.ladder-as-stated").source,
        Severity.CAUTION,
        _ladder_as_stated,
        remedy="place it lower, or state the height of its first rung as fitted",
    ),
    _rule(
        "layout.ladder-below-roof",
        "A ladder ends no more than about a rung below the roof",
        limit("layout.ladder-below-roof").source,
        Severity.NOTE,
        _ladder_top,
        remedy="fit a longer one, or a handle on the roof",
    ),
    _rule(
        "layout.fixed-ladder-width",
        "A fixed ladder is as wide as at a workplace",
        limit("layout.fixed-ladder-width").source,
        Severity.NOTE,
        _ladder_width,
        remedy="fit a wider one; a rule for workplaces, taken as a guide",
        holds=">=",
    ),
)
_TRAYS = (
    _rule(
        "layout.tray-opening",
        "A slide-out tray passes the doorway with what stands on it",
        _GEOMETRY,
        Severity.STOP,
        _tray_opening,
        remedy="raise it over the sill, make it narrower, or load it lower",
    ),
    _rule(
        "layout.tray-way",
        "A slide-out tray meets nothing on its way out",
        _GEOMETRY,
        Severity.CAUTION,
        _tray_way,
        remedy="move what stands in its way, or hang it where it swings away",
    ),
    _rule(
        "layout.tray-reach",
        "What stands on a tray is no higher than the shoulders of a small woman (our choice)",
        limit("layout.tray-reach").source,
        Severity.NOTE,
        _tray_reach,
        remedy="load it lower, or fit a step",
    ),
    _rule(
        "layout.outside-surface-low",
        "A table or worktop outside is high enough to sit at",
        limit("layout.outside-surface-low").source,
        Severity.NOTE,
        _surfaces("layout.outside-surface-low"),
        remedy="hang it higher",
        holds=">=",
    ),
    _rule(
        "layout.outside-surface-high",
        "A table or worktop outside is low enough to stand at",
        limit("layout.outside-surface-high").source,
        Severity.NOTE,
        _surfaces("layout.outside-surface-high"),
        remedy="hang it lower",
    ),
)
_SIDES = (
    _rule(
        "layout.sliding-door-path",
        "Nothing on the side stands in the way of a sliding door",
        limit("layout.sliding-door-margin").source,
        Severity.CAUTION,
        _door_path,
        remedy="move it behind or above the open door, or choose a flatter one",
    ),
    _rule(
        "layout.sliding-door-window",
        "No window swings out into the way of a sliding door",
        limit("layout.sliding-door-margin").source,
        Severity.CAUTION,
        _window_path,
        remedy="move it, choose one that slides, or fit a catch that holds the door",
    ),
)

AROUND_RULES: tuple[Rule, ...] = (*_UNDER, *_LADDERS, *_TRAYS, *_SIDES)
