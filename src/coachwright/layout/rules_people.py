"""Rules of beds, toilet, shower and worktops against the people who use them."""

from collections.abc import Callable, Iterator

from coachwright.layout.model import Layout
from coachwright.layout.model_interior import ToiletSpace
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source, Status
from coachwright.reference import limit
from coachwright.units import told

_US = (Jurisdiction.US,)
_GEOMETRY = Source(key="build-geometry")
_SURVEY = Source(key="ansur-ii-2012", edition="2012")
_PRACTICE = Source(key="shop-practice-interior", status=Status.PRACTICE)


def _sleeper_length(_build: Build, layout: Layout) -> Iterator[Case]:
    for sleeper in layout.interior.sleepers:
        yield Case(
            subject=sleeper.traveller,
            value=sleeper.length_mm,
            limit=sleeper.stature_mm,
            unit="mm",
            detail=f"in {sleeper.bed}, lying straight",
        )


def _bedfellows(_build: Build, layout: Layout) -> Iterator[Case]:
    for found in layout.interior.bedfellows:
        whose = "as measured" if found.measured else "95th percentile of men in the survey"
        yield Case(
            subject=found.bed,
            value=found.width_mm,
            limit=found.shoulders_mm,
            unit="mm",
            detail=f"shoulders of {' and '.join(found.travellers)}, {whose}",
        )


def _sitting_up(build: Build, layout: Layout) -> Iterator[Case]:
    measured_mm = {t.name: t.sitting_height_mm for t in build.brief.travellers}
    survey_mm = limit("layout.sitting-height").value
    for space in layout.interior.bed_spaces:
        needed_mm = max(
            (
                measured_mm.get(sleeper.traveller) or survey_mm
                for sleeper in layout.interior.sleepers
                if sleeper.bed == space.name
            ),
            default=survey_mm,
        )
        yield Case(
            subject=space.name,
            value=space.sit_mm,
            limit=needed_mm,
            unit="mm",
            missing=space.missing,
            detail=f"where it is highest, up to {space.under}" if space.under else "",
        )


def _bunk_clearance(_build: Build, layout: Layout) -> Iterator[Case]:
    spaces = layout.interior.bed_spaces
    for space in spaces:
        if space.other_bed or (space.missing and len(spaces) > 1):
            yield Case(
                subject=space.name,
                value=space.least_mm,
                limit=limit("layout.bunk-clearance").value,
                unit="mm",
                missing=space.missing,
                detail=f"up to {space.least_under}; the other bed is {space.other_bed}"
                if space.other_bed
                else "",
            )


def _fall(_build: Build, layout: Layout) -> Iterator[Case]:
    for space in layout.interior.bed_spaces:
        yield Case(
            subject=space.name,
            value=space.top_mm,
            limit=limit("layout.fall-height").value,
            unit="mm",
            missing=space.missing,
            detail="" if space.missing else "top of the mattress above the finished floor",
        )


def _toilet_knees(_build: Build, layout: Layout) -> Iterator[Case]:
    for toilet in layout.interior.toilets:
        room_mm = toilet.knees_open_mm if toilet.knees_open_mm is not None else toilet.knees_mm
        yield Case(
            subject=toilet.name,
            value=room_mm,
            limit=toilet.knees_needed_mm,
            unit="mm",
            missing=toilet.missing,
            not_applicable=_stowed(toilet),
            detail=_reach(toilet),
        )


def _stowed(toilet: ToiletSpace) -> str:
    return f"put away in {toilet.stall}, taken out to be used" if toilet.stowed else ""


def _reach(toilet: ToiletSpace) -> str:
    """Return where the knees of who sits on a toilet are."""
    if toilet.knees_mm is None:
        return ""
    if toilet.reach_mm > 0:
        return (
            f"{told(toilet.knees_mm, 'mm')} inside {toilet.stall}; the knees reach "
            f"{told(toilet.reach_mm, 'mm')} through its open door towards {toilet.in_front}"
        )
    where = f"inside {toilet.stall}" if toilet.stall else f"up to {toilet.in_front}"
    return f"{told(toilet.knees_mm, 'mm')} from its back, {where}"


def _toilet_shoulders(_build: Build, layout: Layout) -> Iterator[Case]:
    for toilet in layout.interior.toilets:
        yield Case(
            subject=toilet.name,
            value=toilet.shoulders_mm,
            limit=toilet.shoulders_needed_mm,
            unit="mm",
            missing=toilet.missing,
            not_applicable=_stowed(toilet),
            detail=f"in {toilet.stall}" if toilet.stall else "",
        )


def _toilet_seat(limit_id: str) -> Callable[[Build, Layout], Iterator[Case]]:
    def cases(_build: Build, layout: Layout) -> Iterator[Case]:
        for toilet in layout.interior.toilets:
            yield Case(
                subject=toilet.name,
                value=toilet.seat_mm,
                limit=limit(limit_id).value,
                unit="mm",
                detail="lid down, above the finished floor",
                not_applicable=_stowed(toilet),
            )

    return cases


def _toilet_side(_build: Build, layout: Layout) -> Iterator[Case]:
    for toilet in layout.interior.toilets:
        yield Case(
            subject=toilet.name,
            value=toilet.side_mm,
            limit=limit("layout.toilet-side").value,
            unit="mm",
            missing=toilet.missing,
            not_applicable=_stowed(toilet),
            detail="from its middle to the nearer side, at the shoulders",
        )


def _shower(build: Build, layout: Layout) -> Iterator[Case]:
    tallest_mm = max(traveller.stature_mm for traveller in build.brief.travellers)
    for shower in layout.interior.showers:
        yield Case(
            subject=shower.name,
            value=shower.clear_mm,
            limit=tallest_mm,
            unit="mm",
            detail=f"barefoot, from the tray up to {shower.under}",
        )


def _worktops(limit_id: str) -> Callable[[Build, Layout], Iterator[Case]]:
    def cases(_build: Build, layout: Layout) -> Iterator[Case]:
        for worktop in layout.interior.worktops:
            yield Case(
                subject=worktop.name,
                value=worktop.height_mm,
                limit=limit(limit_id).value,
                unit="mm",
                detail="above the finished floor",
            )

    return cases


def _tables(_build: Build, layout: Layout) -> Iterator[Case]:
    for table in layout.interior.tables:
        yield Case(
            subject=table.name,
            value=table.clear_mm,
            limit=limit("layout.table-knees").value,
            unit="mm",
            detail="underside above the finished floor",
        )


_BED_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.sleeper-length",
        title="Each sleeper is no longer than the bed",
        source=_GEOMETRY,
        severity=Severity.CAUTION,
        cases=_sleeper_length,
        holds=">=",
        remedy="fit a longer bed, or turn it along the vehicle",
    ),
    Rule(
        id="layout.bed-shoulders",
        title="Those who share a bed lie side by side on their backs",
        source=_SURVEY,
        severity=Severity.NOTE,
        cases=_bedfellows,
        holds=">=",
        remedy="fit a wider bed, or measure the shoulders of those who sleep in it",
    ),
    Rule(
        id="layout.bed-sitting",
        title="People can sit up somewhere on the bed",
        source=limit("layout.sitting-height").source,
        severity=Severity.NOTE,
        cases=_sitting_up,
        holds=">=",
        remedy="lower the bed, or move what hangs over it",
    ),
    Rule(
        id="layout.bunk-clearance",
        title="A bunk has free height over all of its mattress (limit from memory)",
        source=limit("layout.bunk-clearance").source,
        severity=Severity.CAUTION,
        cases=_bunk_clearance,
        holds=">=",
        remedy="move the upper bed up or the lower one down",
    ),
    Rule(
        id="layout.bed-fall",
        title="A bed is low enough to do without a guard, by common practice",
        source=limit("layout.fall-height").source,
        severity=Severity.NOTE,
        cases=_fall,
        remedy="fit a guard board or a net, and a ladder or step up to it",
    ),
)

_WASHING_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.toilet-knees",
        title="There is room for the knees of who sits on the toilet, doors open",
        source=_SURVEY,
        severity=Severity.CAUTION,
        cases=_toilet_knees,
        holds=">=",
        remedy="turn or move the toilet, or what stands before it",
    ),
    Rule(
        id="layout.toilet-shoulders",
        title="There is room for the shoulders of who sits on the toilet",
        source=_SURVEY,
        severity=Severity.NOTE,
        cases=_toilet_shoulders,
        holds=">=",
        remedy="widen the stall, or move what stands beside the toilet",
    ),
    Rule(
        id="layout.toilet-seat-low",
        title="The toilet is no lower than an accessible one",
        source=limit("layout.toilet-seat-low").source,
        severity=Severity.NOTE,
        cases=_toilet_seat("layout.toilet-seat-low"),
        holds=">=",
        remedy="put it on a plinth",
        jurisdictions=_US,
    ),
    Rule(
        id="layout.toilet-seat-high",
        title="The toilet is no higher than an accessible one",
        source=limit("layout.toilet-seat-high").source,
        severity=Severity.NOTE,
        cases=_toilet_seat("layout.toilet-seat-high"),
        remedy="lower it, or raise the floor before it",
        jurisdictions=_US,
    ),
    Rule(
        id="layout.toilet-side",
        title="The middle of the toilet is as far from the side wall as that of an accessible one",
        source=limit("layout.toilet-side").source,
        severity=Severity.NOTE,
        cases=_toilet_side,
        holds=">=",
        remedy="move it to the middle of a wider stall",
        jurisdictions=_US,
    ),
    Rule(
        id="layout.shower-headroom",
        title="The tallest traveller stands upright in the shower",
        source=_GEOMETRY,
        severity=Severity.NOTE,
        cases=_shower,
        holds=">=",
        remedy="take a flatter tray, let it into the floor, or shower sitting down",
    ),
)

_WORKTOP_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.worktop-low",
        title="The worktop is high enough to stand at, by common practice",
        source=limit("layout.worktop-low").source,
        severity=Severity.NOTE,
        cases=_worktops("layout.worktop-low"),
        holds=">=",
        remedy="raise it, or agree on the height with who cooks",
    ),
    Rule(
        id="layout.worktop-high",
        title="The worktop is low enough to stand at, by common practice",
        source=limit("layout.worktop-high").source,
        severity=Severity.NOTE,
        cases=_worktops("layout.worktop-high"),
        remedy="lower it, or agree on the height with who cooks",
    ),
    Rule(
        id="layout.worktop-accessible",
        title="The worktop is low enough to work at from a wheelchair",
        source=limit("layout.worktop-accessible").source,
        severity=Severity.NOTE,
        cases=_worktops("layout.worktop-accessible"),
        remedy="lower it where the customer needs it so",
        jurisdictions=_US,
    ),
    Rule(
        id="layout.table-knees",
        title="Knees go under the table as under an accessible one",
        source=limit("layout.table-knees").source,
        severity=Severity.NOTE,
        cases=_tables,
        holds=">=",
        remedy="raise the table, or take a thinner top",
        jurisdictions=_US,
    ),
)

PEOPLE_RULES: tuple[Rule, ...] = (*_BED_RULES, *_WASHING_RULES, *_WORKTOP_RULES)
