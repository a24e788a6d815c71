"""Rules of the vents that cannot be closed.

The rows of the table up to 10 m2 were read, those above are from memory: each pair of rules
speaks for its own rows, so that a finding never shows a better source than it has.
"""

from collections.abc import Callable, Iterator
from typing import Literal

from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source, Status
from coachwright.units import told
from coachwright.water.model import FixedVents, Water

_EUROPE = (Jurisdiction.EU, Jurisdiction.UK)
_READ = Source(key="en-721", edition="as quoted by the German inspectorate")
_MEMORY = Source(key="en-721", edition="from memory", status=Status.MEMORY)


def _detail(vents: FixedVents) -> str:
    burner = "a burner takes air from inside" if vents.unsealed_burner else "no open burner"
    return f"plan {told(vents.plan_m2, 'm2')}, {burner}"


def _case(vents: FixedVents, where: str, area_mm2: float | None, needed_mm2: float | None) -> Case:
    missing = "vents that cannot be closed, with their free area" if area_mm2 is None else ""
    if needed_mm2 is None:
        missing = "row of the table for this plan area"
    return Case(
        subject=where,
        value=area_mm2,
        limit=needed_mm2,
        unit="mm2",
        missing=missing,
        detail=_detail(vents),
    )


def _high(status: Literal["read", "memory"]) -> Callable[[Build, Water], Iterator[Case]]:
    def cases(_build: Build, water: Water) -> Iterator[Case]:
        vents = water.vents
        if vents.status == status:
            where = "vents in the roof" if vents.in_roof else "vents high in a wall"
            yield _case(vents, where, vents.high_mm2, vents.high_needed_mm2)

    return cases


def _low(status: Literal["read", "memory"]) -> Callable[[Build, Water], Iterator[Case]]:
    def cases(_build: Build, water: Water) -> Iterator[Case]:
        vents = water.vents
        if vents.status == status:
            yield _case(vents, "vents near the floor", vents.low_mm2, vents.low_needed_mm2)

    return cases


VENT_RULES: tuple[Rule, ...] = (
    Rule(
        id="water.fixed-high-vents",
        title="The high vents that cannot be closed have the area for the plan",
        source=_READ,
        severity=Severity.CAUTION,
        cases=_high("read"),
        holds=">=",
        remedy="fit a roof vent that cannot be closed, or a room-sealed burner",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="water.fixed-low-vents",
        title="The low vents that cannot be closed have the area for the plan",
        source=_READ,
        severity=Severity.CAUTION,
        cases=_low("read"),
        holds=">=",
        remedy="fit a floor vent that cannot be closed, or a room-sealed burner",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="water.fixed-high-vents-large",
        title="The high vents that cannot be closed have the area for a plan over 10 m² "
        "(table from memory)",
        source=_MEMORY,
        severity=Severity.CAUTION,
        cases=_high("memory"),
        holds=">=",
        remedy="fit a roof vent that cannot be closed, or a room-sealed burner",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="water.fixed-low-vents-large",
        title="The low vents that cannot be closed have the area for a plan over 10 m² "
        "(table from memory)",
        source=_MEMORY,
        severity=Severity.CAUTION,
        cases=_low("memory"),
        holds=">=",
        remedy="fit a floor vent that cannot be closed, or a room-sealed burner",
        jurisdictions=_EUROPE,
    ),
)
