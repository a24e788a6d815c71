"""Rules of bringing parts in and of walking upright."""

from collections.abc import Iterator

from coachwright.layout.assumptions import assumed_mm
from coachwright.layout.model import Layout
from coachwright.layout.model_interior import DoorPass, Headroom
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source, Status
from coachwright.reference import limit
from coachwright.units import told

_PRACTICE = Source(key="shop-practice-interior", status=Status.PRACTICE)
_NO_DOORS = "door openings of the vehicle"


def _judged(layout: Layout) -> Iterator[DoorPass]:
    """Yield the parts that are big, and whatever else passes no door."""
    too_large = {found.name for found in _too_large(layout)}
    for found in layout.interior.loading.passes:
        if found.name in layout.interior.loading.big or found.name in too_large:
            yield found


def _passes_a_door(_build: Build, layout: Layout) -> Iterator[Case]:
    for found in _judged(layout):
        yield Case(
            subject=found.name,
            value=found.spare_mm,
            limit=limit("layout.door-spare").value,
            unit="mm",
            missing="" if found.spare_mm is not None else _NO_DOORS,
            detail=f"its smallest section in the opening of the {found.door}"
            if found.door
            else "its smallest section, turned and rolled in every way",
        )


def _passes_straight(_build: Build, layout: Layout) -> Iterator[Case]:
    too_large = list(_too_large(layout))
    for found in _judged(layout):
        yield Case(
            subject=found.name,
            value=found.straight_spare_mm,
            limit=limit("layout.door-hands").value,
            unit="mm",
            missing="" if found.straight_spare_mm is not None else _NO_DOORS,
            detail=f"square through the {found.straight_door}"
            if found.straight_door
            else "square through its best door, all of its length inside",
            not_applicable="it passes no door at all" if found in too_large else "",
        )


def _loading_order(_build: Build, layout: Layout) -> Iterator[Case]:
    loading = layout.interior.loading
    known = all(found.spare_mm is not None for found in loading.passes)
    steps = {step.name: step for step in loading.steps}
    too_large = {found.name for found in _too_large(layout)}
    for name in loading.big:
        step = steps.get(name)
        detail = "no way in is left for it among the others"
        if step is not None:
            first = f", before {' and '.join(step.before)}" if step.before else ""
            detail = f"as number {loading.steps.index(step) + 1} by the {step.door}{first}"
        yield Case(
            subject=name,
            value=float(step is None),
            limit=limit("layout.loading-stuck").value,
            unit="count",
            missing="" if known else _NO_DOORS,
            detail=detail if known else "",
            not_applicable="it passes no door at all" if name in too_large else "",
        )


def _too_large(layout: Layout) -> Iterator[DoorPass]:
    for found in layout.interior.loading.passes:
        if found.spare_mm is not None and found.spare_mm < 0:
            yield found


def _best(layout: Layout) -> Headroom:
    return max(layout.interior.headrooms, key=lambda headroom: headroom.clear_mm)


def _headroom(build: Build, layout: Layout) -> Iterator[Case]:
    if not layout.interior.headrooms:
        for traveller in build.brief.travellers:
            yield Case(
                subject=traveller.name, value=None, limit=None, unit="mm", missing=_NO_DOORS
            )
        return
    best = _best(layout)
    for traveller in build.brief.travellers:
        yield Case(
            subject=traveller.name,
            value=best.clear_mm,
            limit=traveller.stature_mm + assumed_mm("shoes"),
            unit="mm",
            detail=f"in shoes, {best.way}, up to {best.under}",
        )


def _headroom_ways(build: Build, layout: Layout) -> Iterator[Case]:
    tallest_mm = max(traveller.stature_mm for traveller in build.brief.travellers)
    open_from_mm = assumed_mm("walking-to")
    for headroom in layout.interior.headrooms:
        closed = headroom.clear_mm < open_from_mm
        yield Case(
            subject=headroom.way,
            value=headroom.clear_mm,
            limit=tallest_mm + assumed_mm("shoes"),
            unit="mm",
            detail=f"over {told(headroom.width_mm, 'mm')}, up to {headroom.under}",
            not_applicable=f"no way for people: closed by {headroom.under}" if closed else "",
        )


LOADING_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.part-passes-a-door",
        title="Every part passes a door of the vehicle",
        source=limit("layout.door-spare").source,
        severity=Severity.STOP,
        cases=_passes_a_door,
        holds=">=",
        remedy="build it in pieces inside, or take a smaller one",
    ),
    Rule(
        id="layout.part-passes-straight",
        title="Every part passes a door held square, with room for hands, by common practice",
        source=_PRACTICE,
        severity=Severity.CAUTION,
        cases=_passes_straight,
        holds=">=",
        remedy="try it with a frame of laths, take the door off, or build it in pieces",
    ),
    Rule(
        id="layout.loading-order",
        title="There is an order in which all big parts can be brought in, by common practice",
        source=_PRACTICE,
        severity=Severity.CAUTION,
        cases=_loading_order,
        remedy="build one of them in pieces inside, or leave a way free",
    ),
    Rule(
        id="layout.stands-upright",
        title="Each traveller can stand upright on a way through the van, by common practice",
        source=_PRACTICE,
        severity=Severity.NOTE,
        cases=_headroom,
        holds=">=",
        remedy="take a higher roof, a thinner floor or ceiling, or move what hangs over the way",
    ),
    Rule(
        id="layout.headroom-way",
        title="The tallest traveller walks upright on every way that is open, by common practice",
        source=_PRACTICE,
        severity=Severity.NOTE,
        cases=_headroom_ways,
        holds=">=",
        remedy="raise or shorten what hangs over the way",
    ),
)
