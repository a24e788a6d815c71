"""Rules of belted seats and of the ways out."""

from collections.abc import Callable, Iterator

from coachwright.layout.model import Layout
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity
from coachwright.reference import limit
from coachwright.units import told

_US = (Jurisdiction.US,)
_EUROPE = (Jurisdiction.EU, Jurisdiction.UK)
_Cases = Callable[[Build, Layout], Iterator[Case]]


def _seat_entry(_build: Build, layout: Layout) -> Iterator[Case]:
    for seat in layout.interior.seats:
        yield Case(
            subject=seat.name,
            value=seat.entry_mm,
            limit=limit("layout.way-difficult").value,
            unit="mm",
            detail=f"at least so wide from a door, tables put away; it faces {seat.faces}"
            if seat.entry_mm
            else f"no way from a door to the floor before it; it faces {seat.faces}",
        )


def _seat_head(_build: Build, layout: Layout) -> Iterator[Case]:
    for seat in layout.interior.seats:
        yield Case(
            subject=seat.name,
            value=seat.head_mm,
            limit=seat.head_needed_mm,
            unit="mm",
            detail=f"up to {seat.head_under}",
        )


def _seat_table(_build: Build, layout: Layout) -> Iterator[Case]:
    for seat in layout.interior.seats:
        if seat.table_mm is not None:
            yield Case(
                subject=seat.name,
                value=seat.table_mm,
                limit=limit("layout.seat-table").value,
                unit="mm",
                detail=f"from the seating reference point to the edge of {seat.table}",
            )


def _ways_out(limit_id: str) -> _Cases:
    def cases(_build: Build, layout: Layout) -> Iterator[Case]:
        for found in layout.interior.ways_out:
            detail = ", ".join(found.exits) or "none"
            if found.behind:
                detail += f"; only past another exit: {', '.join(found.behind)}"
            yield Case(
                subject=found.bed,
                value=None if found.missing else float(len(found.exits)),
                limit=limit(limit_id).value,
                unit="count",
                missing=found.missing,
                detail="" if found.missing else detail,
            )

    return cases


def _escape_sides(_build: Build, layout: Layout) -> Iterator[Case]:
    short_mm, long_mm = limit("layout.escape-short").value, limit("layout.escape-long").value
    for escape in layout.interior.escapes:
        for side, value, least in (
            ("shorter", escape.short_mm, short_mm),
            ("longer", escape.long_mm, long_mm),
        ):
            yield Case(
                subject=f"{escape.name}, {side} side",
                value=value,
                limit=least,
                unit="mm",
                detail=f"clear opening {told(escape.short_mm, 'mm')} by "
                f"{told(escape.long_mm, 'mm')}",
            )


def _escape_width(_build: Build, layout: Layout) -> Iterator[Case]:
    for escape in layout.interior.escapes:
        yield Case(
            subject=escape.name,
            value=escape.short_mm,
            limit=limit("layout.escape-width").value,
            unit="mm",
            detail="shorter side of the clear opening",
        )


_SEAT_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.seat-reached",
        title="People get from a door to each belted seat",
        source=limit("layout.way-difficult").source,
        severity=Severity.CAUTION,
        cases=_seat_entry,
        holds=">=",
        remedy="move what stands before the seat",
    ),
    Rule(
        id="layout.seat-headroom",
        title="There is headroom over each belted seat (effective headroom, from memory)",
        source=limit("layout.seat-to-reference").source,
        severity=Severity.CAUTION,
        cases=_seat_head,
        holds=">=",
        remedy="move the seat inwards or lower, or what hangs over it",
    ),
    Rule(
        id="layout.seat-table",
        title="A table keeps off the lap of a belted seat, by common practice",
        source=limit("layout.seat-table").source,
        severity=Severity.NOTE,
        cases=_seat_table,
        holds=">=",
        remedy="stow the table while driving, or move it away",
    ),
)

_EXIT_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.ways-out-us",
        title="Every bed has two ways out, none of them past another exit",
        source=limit("layout.ways-out-us").source,
        severity=Severity.CAUTION,
        cases=_ways_out("layout.ways-out-us"),
        holds=">=",
        remedy="clear a way to a second door, or fit an escape window or hatch at the bed",
        jurisdictions=_US,
    ),
    Rule(
        id="layout.ways-out",
        title="Every bed has two ways out, by common practice",
        source=limit("layout.ways-out").source,
        severity=Severity.CAUTION,
        cases=_ways_out("layout.ways-out"),
        holds=">=",
        remedy="clear a way to a second door, or fit an escape window or hatch at the bed",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="layout.escape-opening",
        title="An escape window or hatch opens to 24 by 17 in",
        source=limit("layout.escape-short").source,
        severity=Severity.CAUTION,
        cases=_escape_sides,
        holds=">=",
        remedy="fit a larger one",
        jurisdictions=_US,
    ),
    Rule(
        id="layout.escape-opening-width",
        title="An escape window is wide enough, by a public article on the standard",
        source=limit("layout.escape-width").source,
        severity=Severity.CAUTION,
        cases=_escape_width,
        holds=">=",
        remedy="fit a larger one, or ask whoever inspects the vehicle",
        jurisdictions=_EUROPE,
    ),
)

SEAT_AND_EXIT_RULES: tuple[Rule, ...] = (*_SEAT_RULES, *_EXIT_RULES)
