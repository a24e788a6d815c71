"""Rules of the battery bank."""

from collections.abc import Iterator

from coachwright.electrics.battery import system_voltage
from coachwright.electrics.model import Bank, Electrics, Supply
from coachwright.electrics.rate import capacity_at_ah
from coachwright.electrics.stage_bank import batteries, stated_voltages
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source
from coachwright.reference import limit

MAKER = Source(key="part-maker-data", edition="as entered")
_EUROPE = (Jurisdiction.EU, Jurisdiction.UK)
_LEISURE_H = 20.0
"""Discharge time at which the leisure battery's capacity is stated. [h] [en-1648-2]"""


def _count(subject: str, value: int, limit_id: str, detail: str = "") -> Case:
    return Case(
        subject=subject,
        value=float(value),
        limit=limit(limit_id).value,
        unit="count",
        detail=detail,
    )


def _needed(_build: Build, electrics: Electrics) -> Iterator[Case]:
    drawing = [line for line in electrics.loads if line.supply is not Supply.SHORE]
    if drawing:
        yield _count("bank", len(electrics.in_cold), "electrics.batteries-needed")


def _chemistry(build: Build, _electrics: Electrics) -> Iterator[Case]:
    kinds = {(battery.chemistry, battery.nominal_v) for _, battery in batteries(build)}
    if kinds:
        named = ", ".join(f"{chemistry} {volts:g} V" for chemistry, volts in sorted(kinds))
        yield _count("bank", len(kinds), "electrics.battery-chemistries", named)


def _parts(build: Build, _electrics: Electrics) -> Iterator[Case]:
    parts = {fitted.part.id: fitted.part.name for fitted, _ in batteries(build)}
    if parts:
        named = ", ".join(parts[part] for part in sorted(parts))
        yield _count("bank", len(parts), "electrics.battery-parts", named)


def _left_over(_build: Build, electrics: Electrics) -> Iterator[Case]:
    if electrics.bank is not None:
        detail = f"{electrics.bank.series_count} in series make one string"
        left = electrics.bank.spare_count
        yield _count("bank", left, "electrics.batteries-left-over", detail)


def _parallel(build: Build, electrics: Electrics) -> Iterator[Case]:
    if electrics.bank is not None:
        yield Case(
            subject="bank",
            value=float(electrics.bank.parallel_count),
            limit=float(min(battery.most_parallel for _, battery in batteries(build))),
            unit="count",
        )


def _series(build: Build, electrics: Electrics) -> Iterator[Case]:
    if electrics.bank is not None:
        yield Case(
            subject="bank",
            value=float(electrics.bank.series_count),
            limit=float(min(battery.most_series for _, battery in batteries(build))),
            unit="count",
        )


def _voltage(build: Build, electrics: Electrics) -> Iterator[Case]:
    """Compare what each device is made for with the bank, by class of voltage."""
    bank = electrics.bank
    for stated in stated_voltages(build):
        classes = {
            system_voltage(stated_v=volts, lithium=True).class_v for volts in stated.battery_v
        }
        actual = bank.system_v if bank else None
        fits = actual if actual in classes else next(iter(sorted(classes)), None)
        yield Case(
            subject=stated.name,
            value=fits,
            limit=actual,
            unit="V",
            missing=electrics.bank_missing,
        )


def _load_voltage(_build: Build, electrics: Electrics) -> Iterator[Case]:
    for peak in electrics.peaks:
        if peak.nominal_v > 0.0:
            yield Case(
                subject=peak.subject,
                value=system_voltage(stated_v=peak.nominal_v, lithium=True).class_v,
                limit=electrics.bank.system_v if electrics.bank else None,
                unit="V",
                missing=electrics.bank_missing,
            )


def _discharge_single(_build: Build, electrics: Electrics) -> Iterator[Case]:
    if electrics.largest_single and electrics.in_cold:
        bank = electrics.bank
        yield Case(
            subject=electrics.largest_single,
            value=electrics.largest_single_a,
            limit=bank.discharge_limit_a if bank else None,
            unit="A",
            missing=electrics.bank_missing,
            detail="at the bank's nominal voltage",
        )


def _discharge_all(_build: Build, electrics: Electrics) -> Iterator[Case]:
    if electrics.peaks and electrics.in_cold:
        bank = electrics.bank
        yield Case(
            subject="bank",
            value=electrics.simultaneous_a,
            limit=bank.discharge_limit_a if bank else None,
            unit="A",
            missing=electrics.bank_missing,
            detail="every load of a season at once, at the inverter's cut-off voltage",
        )


def _leisure(_build: Build, electrics: Electrics) -> Iterator[Case]:
    if not electrics.in_cold:
        return
    bank = electrics.bank
    yield Case(
        subject="bank",
        value=None if bank is None else _leisure_ah(bank),
        limit=limit("electrics.leisure-battery").value,
        unit="Ah",
        missing=electrics.bank_missing,
    )


def _leisure_ah(bank: Bank) -> float:
    return capacity_at_ah(
        capacity_ah=bank.capacity_ah,
        rated_h=bank.rated_h,
        exponent=bank.exponent,
        wanted_h=_LEISURE_H,
    )


def _house_voltage(_build: Build, electrics: Electrics) -> Iterator[Case]:
    if electrics.bank is not None:
        yield Case(
            subject="bank",
            value=electrics.bank.system_v,
            limit=limit("electrics.house-voltage").value,
            unit="V",
        )


BANK_RULES: tuple[Rule, ...] = (
    Rule(
        id="electrics.battery-needed",
        title="A build with loads on the battery has one",
        source=limit("electrics.batteries-needed").source,
        severity=Severity.CAUTION,
        cases=_needed,
        holds=">=",
        remedy="fit a battery, or run the loads on shore power alone",
    ),
    Rule(
        id="electrics.bank-of-one-chemistry",
        title="All batteries of the bank have one chemistry and voltage",
        source=limit("electrics.battery-chemistries").source,
        severity=Severity.STOP,
        cases=_chemistry,
        remedy="use one battery of the catalogue throughout",
    ),
    Rule(
        id="electrics.bank-of-one-kind",
        title="All batteries of the bank are the same part",
        source=limit("electrics.battery-parts").source,
        severity=Severity.CAUTION,
        cases=_parts,
        remedy="use one battery of the catalogue throughout",
    ),
    Rule(
        id="electrics.no-battery-left-over",
        title="Every battery stands in a complete string",
        source=limit("electrics.batteries-left-over").source,
        severity=Severity.CAUTION,
        cases=_left_over,
        remedy="add batteries to complete the string, or take the odd ones out",
    ),
    Rule(
        id="electrics.batteries-in-parallel",
        title="No more strings stand side by side than the battery's maker allows",
        source=MAKER,
        severity=Severity.STOP,
        cases=_parallel,
        remedy="use fewer, larger batteries",
    ),
    Rule(
        id="electrics.batteries-in-series",
        title="No more batteries are in series than their maker allows",
        source=MAKER,
        severity=Severity.STOP,
        cases=_series,
        remedy="use batteries of the system's voltage",
    ),
    Rule(
        id="electrics.devices-fit-bank-voltage",
        title="Inverters and chargers are made for the bank's voltage",
        source=MAKER,
        severity=Severity.STOP,
        cases=_voltage,
        holds="==",
        remedy="use devices of one system voltage throughout",
    ),
    Rule(
        id="electrics.loads-fit-bank-voltage",
        title="Direct-current loads are made for the bank's voltage",
        source=MAKER,
        severity=Severity.CAUTION,
        cases=_load_voltage,
        holds="==",
        remedy="feed the load through a converter, or use one for the system's voltage",
    ),
    Rule(
        id="electrics.bank-carries-largest-load",
        title="The largest single load is within the bank's discharge limit",
        source=MAKER,
        severity=Severity.STOP,
        cases=_discharge_single,
        remedy="more strings, a battery with a higher discharge limit, or a higher system voltage",
    ),
    Rule(
        id="electrics.bank-carries-all-loads",
        title="All loads at once are within the bank's discharge limit",
        source=MAKER,
        severity=Severity.CAUTION,
        cases=_discharge_all,
        remedy="more strings, or an agreement on what is not run together",
    ),
    Rule(
        id="electrics.leisure-battery-size",
        title="The leisure battery holds at least 60 Ah at the 20 h rate",
        source=limit("electrics.leisure-battery").source,
        severity=Severity.CAUTION,
        cases=_leisure,
        holds=">=",
        remedy="use a larger battery",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="electrics.house-voltage-in-standard",
        title="The system's voltage is the one that the standard covers today",
        source=limit("electrics.house-voltage").source,
        severity=Severity.NOTE,
        cases=_house_voltage,
        remedy="show with the installer that a 24 or 48 V system meets what applies to it",
        jurisdictions=_EUROPE,
    ),
)
