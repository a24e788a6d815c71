"""Rules of cookers, vents, alarms, extinguishers and the entry."""

from collections.abc import Callable, Iterator

from coachwright.layout.model import Layout
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity
from coachwright.reference import limit

_US = (Jurisdiction.US,)
_EUROPE = (Jurisdiction.EU, Jurisdiction.UK)
_Cases = Callable[[Build, Layout], Iterator[Case]]


def _cooking_above(_build: Build, layout: Layout) -> Iterator[Case]:
    for cooker in layout.interior.cookers:
        if cooker.stated_mm is None:
            yield Case(
                subject=cooker.name,
                value=cooker.above_mm,
                limit=limit("layout.cooking-above").value,
                unit="mm",
                detail=f"up to {cooker.above}; the cooker states no clearance",
            )


def _cooking_beside(_build: Build, layout: Layout) -> Iterator[Case]:
    for cooker in layout.interior.cookers:
        if cooker.burner:
            yield Case(
                subject=cooker.name,
                value=cooker.beside_mm,
                limit=limit("layout.cooking-beside").value,
                unit="mm",
                detail=f"to {cooker.beside}",
            )


def _low_vents(_build: Build, layout: Layout) -> Iterator[Case]:
    for vent in layout.interior.vents:
        if vent.low:
            yield Case(
                subject=vent.name,
                value=vent.above_floor_mm,
                limit=limit("water.low-vent-height").value,
                unit="mm",
                detail="lower edge above the finished floor",
            )


def _high_vents(_build: Build, layout: Layout) -> Iterator[Case]:
    for vent in layout.interior.vents:
        if not vent.low:
            yield Case(
                subject=vent.name,
                value=vent.over_mattress_mm,
                limit=limit("water.high-vent-over-bed").value,
                unit="mm",
                missing="" if vent.over_mattress_mm is not None else "height of the mattress",
                detail="lower edge above the highest mattress",
            )


def _smoke_alarms(_build: Build, layout: Layout) -> Iterator[Case]:
    for alarm in layout.interior.alarms:
        if "smoke" in alarm.senses:
            yield Case(
                subject=alarm.name,
                value=alarm.below_ceiling_mm,
                limit=limit("layout.smoke-below-ceiling").value,
                unit="mm",
                detail="upper edge below the finished ceiling",
            )


def _gas_alarms(_build: Build, layout: Layout) -> Iterator[Case]:
    for alarm in layout.interior.alarms:
        if "LPG" in alarm.senses:
            yield Case(
                subject=alarm.name,
                value=alarm.above_floor_mm,
                limit=limit("layout.lpg-above-floor").value,
                unit="mm",
                detail="upper edge above the finished floor",
            )


def _co_alarms(_build: Build, layout: Layout) -> Iterator[Case]:
    """Yield the CO alarms; one that senses LP gas too must sit low, as its maker says."""
    for alarm in layout.interior.alarms:
        if "CO" in alarm.senses and "LPG" not in alarm.senses:
            yield Case(
                subject=alarm.name,
                value=alarm.over_mattress_mm,
                limit=limit("layout.co-over-mattress").value,
                unit="mm",
                missing="" if alarm.over_mattress_mm is not None else "height of the mattress",
                detail="lower edge above the lowest mattress",
            )


def _extinguishers(limit_id: str) -> _Cases:
    def cases(_build: Build, layout: Layout) -> Iterator[Case]:
        for found in layout.interior.extinguishers:
            known = found.distance_mm is not None
            yield Case(
                subject=found.name,
                value=found.distance_mm,
                limit=limit(limit_id).value,
                unit="mm",
                missing="" if known else "door openings of the vehicle",
                detail=f"in the plan, to the opening of the {found.door}" if known else "",
            )

    return cases


def _entry_rise(_build: Build, layout: Layout) -> Iterator[Case]:
    entry = layout.interior.entry
    if entry is not None:
        yield Case(
            subject=entry.door,
            value=max(entry.rises_mm),
            limit=limit("layout.step-needed").value,
            unit="mm",
            detail=f"largest rise, over {entry.step}" if entry.step else "no step is fitted",
        )


def _first_step(_build: Build, layout: Layout) -> Iterator[Case]:
    entry = layout.interior.entry
    if entry is not None:
        yield Case(
            subject=entry.door,
            value=entry.rises_mm[0],
            limit=limit("layout.first-step").value,
            unit="mm",
            detail=f"{entry.step} above the ground, unladen"
            if entry.step
            else "floor above the ground, unladen; no step is fitted",
        )


_AIR_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.cooking-above",
        title="There is height over a cooker that states none, by common practice",
        source=limit("layout.cooking-above").source,
        severity=Severity.CAUTION,
        cases=_cooking_above,
        holds=">=",
        remedy="move what hangs over it, or enter the clearance that its maker asks for",
    ),
    Rule(
        id="layout.cooking-beside",
        title="Nothing higher stands close beside a burner, by common practice",
        source=limit("layout.cooking-beside").source,
        severity=Severity.NOTE,
        cases=_cooking_beside,
        holds=">=",
        remedy="move the cooker, or face what stands beside it with sheet metal",
    ),
    Rule(
        id="layout.low-vent-place",
        title="A vent low down that cannot be closed counts: it is near the floor",
        source=limit("water.low-vent-height").source,
        severity=Severity.NOTE,
        cases=_low_vents,
        remedy="move it down, or do not count it as safety ventilation",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="layout.high-vent-place",
        title="A vent high in a wall that cannot be closed counts: it is well above the beds",
        source=limit("water.high-vent-over-bed").source,
        severity=Severity.NOTE,
        cases=_high_vents,
        holds=">=",
        remedy="move it up, or put it in the roof",
        jurisdictions=_EUROPE,
    ),
)

_ALARM_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.smoke-alarm-place",
        title="A smoke alarm sits at the ceiling (from memory)",
        source=limit("layout.smoke-below-ceiling").source,
        severity=Severity.CAUTION,
        cases=_smoke_alarms,
        remedy="move it up, as its maker says",
    ),
    Rule(
        id="layout.gas-alarm-place",
        title="An LP-gas alarm sits near the floor (from memory)",
        source=limit("layout.lpg-above-floor").source,
        severity=Severity.CAUTION,
        cases=_gas_alarms,
        remedy="move it down, as its maker says: the vapour sinks",
    ),
    Rule(
        id="layout.co-alarm-place",
        title="A CO alarm sits no lower than the sleepers, by common practice",
        source=limit("layout.co-over-mattress").source,
        severity=Severity.NOTE,
        cases=_co_alarms,
        holds=">=",
        remedy="move it up, as its maker says",
    ),
    Rule(
        id="layout.extinguisher-place-us",
        title="An extinguisher is near the main door (from memory)",
        source=limit("layout.extinguisher-us").source,
        severity=Severity.CAUTION,
        cases=_extinguishers("layout.extinguisher-us"),
        remedy="move it to the door",
        jurisdictions=_US,
    ),
    Rule(
        id="layout.extinguisher-place",
        title="An extinguisher is near the main door, by common practice",
        source=limit("layout.extinguisher").source,
        severity=Severity.NOTE,
        cases=_extinguishers("layout.extinguisher"),
        remedy="move it to the door",
        jurisdictions=_EUROPE,
    ),
)

_ENTRY_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.entry-rise",
        title="No rise on the way in is so high that a workplace would need a step",
        source=limit("layout.step-needed").source,
        severity=Severity.NOTE,
        cases=_entry_rise,
        holds="<",
        remedy="fit a step, or a second one",
        jurisdictions=_US,
    ),
    Rule(
        id="layout.first-step",
        title="The first step is low enough (from memory)",
        source=limit("layout.first-step").source,
        severity=Severity.NOTE,
        cases=_first_step,
        remedy="fit a step, or a lower one",
        jurisdictions=_EUROPE,
    ),
)

SAFETY_RULES: tuple[Rule, ...] = (*_AIR_RULES, *_ALARM_RULES, *_ENTRY_RULES)
