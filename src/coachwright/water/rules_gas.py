"""Rules of the gas store and of the alarms that go with flames."""

from collections.abc import Iterator

from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source, Status
from coachwright.reference import limit
from coachwright.water.model import Water

_US = (Jurisdiction.US,)
_EUROPE = (Jurisdiction.EU, Jurisdiction.UK)
_NFPA = Source(key="nfpa-1192", status=Status.MEMORY)
_EN_ALARMS = Source(key="en-50194-2", status=Status.PRACTICE)


def _low_vents(_build: Build, water: Water) -> Iterator[Case]:
    for locker in water.lockers:
        missing = "floor area" if locker.low_needed_mm2 is None else ""
        if locker.low_mm2 is None:
            missing = missing or "free area of the low vent"
        yield Case(
            subject=locker.name,
            value=locker.low_mm2,
            limit=locker.low_needed_mm2,
            unit="mm2",
            missing=missing,
        )


def _high_vents(build: Build, water: Water) -> Iterator[Case]:
    """In Europe a locker may do with a low vent alone."""
    for locker in water.lockers:
        if locker.high_mm2 is None and build.brief.jurisdiction is not Jurisdiction.US:
            continue
        missing = "floor area" if locker.high_needed_mm2 is None else ""
        if locker.high_mm2 is None:
            missing = missing or "free area of the high vent"
        yield Case(
            subject=locker.name,
            value=locker.high_mm2,
            limit=locker.high_needed_mm2,
            unit="mm2",
            missing=missing,
        )


def _outside_access(_build: Build, water: Water) -> Iterator[Case]:
    needed = limit("water.outside-access-us").value
    for locker in water.lockers:
        yield Case(
            subject=locker.name, value=float(locker.outside_access), limit=needed, unit="count"
        )


def _containers(build: Build, _water: Water) -> Iterator[Case]:
    stores = [f.part.gas_store for f in build.fittings if f.part.gas_store is not None]
    if stores:
        count = sum(store.cylinders for store in stores)
        yield Case(
            subject="gas store",
            value=float(count),
            limit=limit("water.containers-us").value,
            unit="count",
        )


def _alarms_count() -> float:
    return limit("water.alarms-needed").value


def _gas_alarm(_build: Build, water: Water) -> Iterator[Case]:
    if water.gas is not None:
        yield Case(
            subject="living space",
            value=float("LPG" in water.alarms),
            limit=_alarms_count(),
            unit="count",
        )


def _co_alarm(_build: Build, water: Water) -> Iterator[Case]:
    if water.combustion:
        detail = f"burning: {', '.join(water.combustion)}"
        yield Case(
            subject="living space",
            value=float("CO" in water.alarms),
            limit=_alarms_count(),
            unit="count",
            detail=detail,
        )


GAS_RULES: tuple[Rule, ...] = (
    Rule(
        id="water.locker-low-vent",
        title="The low vent of the gas locker has its share of the floor",
        source=limit("water.locker-low-alone-least").source,
        severity=Severity.STOP,
        cases=_low_vents,
        holds=">=",
        remedy="cut a larger vent at the locker's floor; 100 cm² is a round hole of 113 mm",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="water.locker-high-vent",
        title="The high vent of the gas locker has its share of the floor",
        source=limit("water.locker-split-least").source,
        severity=Severity.STOP,
        cases=_high_vents,
        holds=">=",
        remedy="cut a larger high vent, or close it and have all of the area low",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="water.locker-low-vent-us",
        title="The low vent of the gas compartment has half of two per cent of the floor",
        source=limit("water.locker-us-each").source,
        severity=Severity.CAUTION,
        cases=_low_vents,
        holds=">=",
        remedy="cut a larger vent at the compartment's floor, to the outside only",
        jurisdictions=_US,
    ),
    Rule(
        id="water.locker-high-vent-us",
        title="The high vent of the gas compartment has half of two per cent of the floor",
        source=limit("water.locker-us-each").source,
        severity=Severity.CAUTION,
        cases=_high_vents,
        holds=">=",
        remedy="cut a vent within 12 in of the compartment's ceiling, to the outside only",
        jurisdictions=_US,
    ),
    Rule(
        id="water.locker-outside-access",
        title="The gas compartment opens to the outside only",
        source=limit("water.outside-access-us").source,
        severity=Severity.CAUTION,
        cases=_outside_access,
        holds=">=",
        remedy="close it vapour-tight to the inside and give it a door in the outer skin",
        jurisdictions=_US,
    ),
    Rule(
        id="water.gas-containers",
        title="No more LP-gas containers than the code for manufactured homes allows, as a guide",
        source=limit("water.containers-us").source,
        severity=Severity.CAUTION,
        cases=_containers,
        remedy="carry fewer containers, or show the code that allows more for this vehicle",
        jurisdictions=_US,
    ),
    Rule(
        id="water.gas-alarm-us",
        title="A vehicle with LP gas has an LP-gas alarm (from memory)",
        source=_NFPA,
        severity=Severity.CAUTION,
        cases=_gas_alarm,
        holds=">=",
        remedy="fit an LP-gas alarm low down",
        jurisdictions=_US,
    ),
    Rule(
        id="water.gas-alarm",
        title="A vehicle with LP gas has an LP-gas alarm, by common practice",
        source=_EN_ALARMS,
        severity=Severity.CAUTION,
        cases=_gas_alarm,
        holds=">=",
        remedy="fit an LP-gas alarm to EN 50194-2 low down",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="water.co-alarm-us",
        title="A vehicle with a flame has a carbon-monoxide alarm (from memory)",
        source=_NFPA,
        severity=Severity.CAUTION,
        cases=_co_alarm,
        holds=">=",
        remedy="fit a carbon-monoxide alarm where people sleep",
        jurisdictions=_US,
    ),
    Rule(
        id="water.co-alarm",
        title="A vehicle with a flame has a carbon-monoxide alarm, by common practice",
        source=_EN_ALARMS,
        severity=Severity.CAUTION,
        cases=_co_alarm,
        holds=">=",
        remedy="fit a carbon-monoxide alarm to EN 50291-2 where people sleep",
        jurisdictions=_EUROPE,
    ),
)
