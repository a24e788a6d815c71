"""Rules of what the customer asked for, and of the seats and alarms that go with it."""

from collections.abc import Callable, Iterator

from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source
from coachwright.model.working import Working
from coachwright.reference import limit
from coachwright.units import told
from coachwright.wishes.model import Wishes
from coachwright.wishes.rules_seats import SEAT_RULES

_US = (Jurisdiction.US,)
_EUROPE = (Jurisdiction.EU, Jurisdiction.UK)


def _brief(clause: str) -> Source:
    return Source(key="customer-brief", clause=clause)


def _working(wishes: Wishes, name: str) -> Working | None:
    return next((figure.working for figure in wishes.figures if figure.name == name), None)


def _berths(_build: Build, wishes: Wishes) -> Iterator[Case]:
    if wishes.berths_wanted > 0:
        yield Case(
            subject="beds",
            value=wishes.berths,
            limit=wishes.berths_wanted,
            unit="count",
            working=_working(wishes, "wishes.berths"),
        )


def _bed_lengths(_build: Build, wishes: Wishes) -> Iterator[Case]:
    longer_mm = limit("wishes.bed-longer").value
    for bed in wishes.beds:
        if bed.longest_stature_mm is not None:
            yield Case(
                subject=bed.name,
                value=bed.length_mm - bed.longest_stature_mm,
                limit=longer_mm,
                unit="mm",
                detail=f"longer than its tallest sleeper, {told(bed.longest_stature_mm, 'mm')}",
            )


def _must_have(_build: Build, wishes: Wishes) -> Iterator[Case]:
    needed = limit("wishes.must-have").value
    for wanted in wishes.must_have:
        yield Case(subject=wanted.facet, value=wanted.count, limit=needed, unit="count")


def _budget(_build: Build, wishes: Wishes) -> Iterator[Case]:
    """Yield the parts against the budget; what is known may be too much already."""
    price = wishes.price
    if price.budget_minor is None:
        return
    over = price.known_minor > price.budget_minor
    missing = ""
    if price.price_minor is None and not over:
        missing = f"price in {price.currency} of {', '.join(price.without_price)}"
    yield Case(
        subject="parts",
        value=price.known_minor,
        limit=price.budget_minor,
        unit=f"money {price.currency}",
        missing=missing,
        detail="parts only, without vehicle, labour and tax",
    )


def _conflicts(build: Build, _wishes: Wishes) -> Iterator[Case]:
    none = limit("wishes.conflicts").value
    for conflict in build.conflicts:
        yield Case(
            subject=f"{conflict.wish} and {conflict.other}",
            value=1,
            limit=none,
            unit="count",
            detail=f"{conflict.kind}: {conflict.cause}",
        )
    if build.options and not build.conflicts:
        yield Case(subject="options", value=0, limit=none, unit="count")


def _smoke_alarms(limit_id: str) -> Callable[[Build, Wishes], Iterator[Case]]:
    def cases(_build: Build, wishes: Wishes) -> Iterator[Case]:
        count, needed = len(wishes.smoke_alarms), limit(limit_id).value
        yield Case(subject="living space", value=count, limit=needed, unit="count")

    return cases


def _extinguishers(limit_id: str) -> Callable[[Build, Wishes], Iterator[Case]]:
    def cases(_build: Build, wishes: Wishes) -> Iterator[Case]:
        count, needed = len(wishes.extinguishers), limit(limit_id).value
        yield Case(subject="living space", value=count, limit=needed, unit="count")

    return cases


WISH_RULES: tuple[Rule, ...] = (
    Rule(
        id="wishes.enough-berths",
        title="There is a berth for everyone who wants one",
        source=_brief("travellers"),
        severity=Severity.STOP,
        cases=_berths,
        holds=">=",
        remedy="fit another bed, or a bed that sleeps more",
    ),
    Rule(
        id="wishes.bed-length",
        title="Each bed is longer than its tallest sleeper, by common practice",
        source=limit("wishes.bed-longer").source,
        severity=Severity.NOTE,
        cases=_bed_lengths,
        holds=">=",
        remedy="fit a longer bed, turn it along the vehicle, or lie across its diagonal",
    ),
    Rule(
        id="wishes.must-have",
        title="What the customer must have is fitted",
        source=limit("wishes.must-have").source,
        severity=Severity.STOP,
        cases=_must_have,
        holds=">=",
        remedy="fit a part that does it, or agree with the customer to leave it out",
    ),
    Rule(
        id="wishes.budget",
        title="The parts cost no more than the budget",
        source=_brief("budget"),
        severity=Severity.CAUTION,
        cases=_budget,
        remedy="exchange the dearest parts, or leave out what is not a must",
    ),
    Rule(
        id="wishes.options-agree",
        title="The options that were chosen can be had together",
        source=limit("wishes.conflicts").source,
        severity=Severity.STOP,
        cases=_conflicts,
        remedy="give up one of the two wishes",
    ),
    Rule(
        id="wishes.smoke-alarm-us",
        title="There is a smoke alarm (from memory)",
        source=limit("wishes.smoke-alarms-us").source,
        severity=Severity.CAUTION,
        cases=_smoke_alarms("wishes.smoke-alarms-us"),
        holds=">=",
        remedy="fit a smoke alarm where people sleep",
        jurisdictions=_US,
    ),
    Rule(
        id="wishes.smoke-alarm",
        title="There is a smoke alarm, by common practice",
        source=limit("wishes.smoke-alarms").source,
        severity=Severity.CAUTION,
        cases=_smoke_alarms("wishes.smoke-alarms"),
        holds=">=",
        remedy="fit a smoke alarm where people sleep",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="wishes.extinguisher-us",
        title="There is a fire extinguisher (from memory)",
        source=limit("wishes.extinguishers-us").source,
        severity=Severity.CAUTION,
        cases=_extinguishers("wishes.extinguishers-us"),
        holds=">=",
        remedy="fit an extinguisher near the main door",
        jurisdictions=_US,
    ),
    Rule(
        id="wishes.extinguisher",
        title="There is a fire extinguisher, by common practice",
        source=limit("wishes.extinguishers").source,
        severity=Severity.CAUTION,
        cases=_extinguishers("wishes.extinguishers"),
        holds=">=",
        remedy="fit an extinguisher near the main door",
        jurisdictions=_EUROPE,
    ),
)

RULES: tuple[Rule, ...] = (*SEAT_RULES, *WISH_RULES)
