"""Rules of the inverter, of shore power and of outlets."""

from collections.abc import Iterator

from coachwright.electrics.model import Electrics, InverterDuty, Supply
from coachwright.electrics.rules_bank import MAKER
from coachwright.electrics.sizing import inverter_wanted_w
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.facets import Outlet
from coachwright.model.finding import Case, Rule, Severity
from coachwright.model.working import Working
from coachwright.reference import limit

_US = (Jurisdiction.US,)
_EUROPE = (Jurisdiction.EU, Jurisdiction.UK)


def _fitted_count(build: Build) -> int:
    return len(tuple(build.having("inverter")))


def _loaded(build: Build, electrics: Electrics) -> InverterDuty | None:
    """Return the duty where an inverter is fitted and something wants it."""
    duty = electrics.inverter
    if duty is None or not duty.largest_load or _fitted_count(build) == 0:
        return None
    return duty


def _needed(build: Build, electrics: Electrics) -> Iterator[Case]:
    names = dict.fromkeys(
        peak.subject for peak in electrics.peaks if peak.supply is Supply.INVERTER
    )
    for name in names:
        yield Case(
            subject=name,
            value=float(_fitted_count(build)),
            limit=limit("electrics.inverters-needed").value,
            unit="count",
        )


def _watts(subject: str, asked_w: float, given_w: float, working: Working | None = None) -> Case:
    return Case(subject=subject, value=asked_w, limit=given_w, unit="W", working=working)


def _single(build: Build, electrics: Electrics) -> Iterator[Case]:
    if (duty := _loaded(build, electrics)) is not None:
        yield _watts(duty.largest_load, duty.largest_load_w, duty.largest_continuous_w)


def _all_at_once(build: Build, electrics: Electrics) -> Iterator[Case]:
    if (duty := _loaded(build, electrics)) is not None:
        yield _watts("inverter", duty.load_w, duty.continuous_w, duty.load_working)


def _margin(build: Build, electrics: Electrics) -> Iterator[Case]:
    if (duty := _loaded(build, electrics)) is not None:
        wanted = inverter_wanted_w(
            load_w=duty.load_w, margin_factor=limit("electrics.inverter-margin").value
        )
        yield _watts("inverter", wanted, duty.continuous_w, duty.load_working)


def _single_start(build: Build, electrics: Electrics) -> Iterator[Case]:
    if (duty := _loaded(build, electrics)) is not None:
        yield _watts(duty.largest_surge, duty.largest_surge_w, duty.largest_rated_surge_w)


def _start_on_top(build: Build, electrics: Electrics) -> Iterator[Case]:
    if (duty := _loaded(build, electrics)) is not None:
        yield _watts("inverter", duty.surge_demand_w, duty.surge_w, duty.surge_working)


def _shore(_build: Build, electrics: Electrics) -> Iterator[Case]:
    shore = electrics.shore
    if shore.demand_w > 0.0:
        yield _watts("shore supply", shore.demand_w, shore.continuous_w, shore.working)


def _ac_outlets(build: Build) -> Iterator[tuple[str, Outlet]]:
    for fitted in build.having("outlet"):
        if fitted.part.outlet is not None and fitted.part.outlet.kind == "AC":
            yield fitted.name, fitted.part.outlet


def _system_protected(build: Build, _electrics: Electrics) -> Iterator[Case]:
    outlets = [outlet for _, outlet in _ac_outlets(build)]
    if outlets:
        yield Case(
            subject="120 V system",
            value=float(sum(outlet.ground_fault_protected for outlet in outlets)),
            limit=limit("electrics.ground-fault-systems").value,
            unit="count",
            detail="protected outlets",
        )


def _outlet_protected(build: Build, _electrics: Electrics) -> Iterator[Case]:
    for name, outlet in _ac_outlets(build):
        yield Case(
            subject=name,
            value=float(outlet.ground_fault_protected),
            limit=limit("electrics.ground-fault-outlets").value,
            unit="count",
        )


def _outlet_behind_breaker(build: Build, _electrics: Electrics) -> Iterator[Case]:
    for name, outlet in _ac_outlets(build):
        yield Case(
            subject=name,
            value=float(outlet.ground_fault_protected),
            limit=limit("electrics.leakage-outlets").value,
            unit="count",
        )


INVERTER_RULES: tuple[Rule, ...] = (
    Rule(
        id="electrics.inverter-needed",
        title="A load behind the inverter has one",
        source=limit("electrics.inverters-needed").source,
        severity=Severity.STOP,
        cases=_needed,
        holds=">=",
        remedy="fit an inverter, or take a load for the battery's voltage or for shore power",
    ),
    Rule(
        id="electrics.inverter-carries-largest-load",
        title="The largest single load is within one inverter's continuous rating",
        source=MAKER,
        severity=Severity.STOP,
        cases=_single,
        remedy="a larger inverter, or a smaller appliance",
    ),
    Rule(
        id="electrics.inverter-carries-all-loads",
        title="All inverter loads of a season at once are within the continuous rating",
        source=MAKER,
        severity=Severity.CAUTION,
        cases=_all_at_once,
        remedy="a larger inverter, or an agreement on what is not run together",
    ),
    Rule(
        id="electrics.inverter-margin",
        title="The inverter's continuous rating is 1.3 times its loads at once",
        source=limit("electrics.inverter-margin").source,
        severity=Severity.CAUTION,
        cases=_margin,
        remedy="a larger inverter, or an agreement on what is not run together",
    ),
    Rule(
        id="electrics.inverter-starts-largest-load",
        title="The hardest single start is within one inverter's surge rating",
        source=MAKER,
        severity=Severity.STOP,
        cases=_single_start,
        remedy="a soft start on the appliance, or an inverter with a higher surge rating",
    ),
    Rule(
        id="electrics.inverter-starts-on-top",
        title="The hardest start on top of all other loads is within the surge rating",
        source=MAKER,
        severity=Severity.CAUTION,
        cases=_start_on_top,
        remedy="a soft start on the appliance, or an agreement on what is not run together",
    ),
    Rule(
        id="electrics.shore-supply-us",
        title="Chargers and AC loads at once fit 80 % of a 30 A supply (from memory)",
        source=limit("electrics.shore-current-us").source,
        severity=Severity.CAUTION,
        cases=_shore,
        remedy="limit the charger's current, or an agreement on what is not run together",
        jurisdictions=_US,
    ),
    Rule(
        id="electrics.shore-supply-europe",
        title="Chargers and AC loads at once fit 80 % of a 16 A supply (from memory)",
        source=limit("electrics.shore-current-europe").source,
        severity=Severity.CAUTION,
        cases=_shore,
        remedy="limit the charger's current, or an agreement on what is not run together",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="electrics.ground-fault-protection",
        title="The 120 V system has ground-fault protection",
        source=limit("electrics.ground-fault-systems").source,
        severity=Severity.STOP,
        cases=_system_protected,
        holds=">=",
        remedy="use outlets or a breaker with ground-fault protection",
        jurisdictions=_US,
    ),
    Rule(
        id="electrics.ground-fault-outlets",
        title="Each AC outlet is ground-fault protected (places from memory)",
        source=limit("electrics.ground-fault-outlets").source,
        severity=Severity.CAUTION,
        cases=_outlet_protected,
        holds=">=",
        remedy="use outlets or a breaker with ground-fault protection",
        jurisdictions=_US,
    ),
    Rule(
        id="electrics.leakage-breaker",
        title="Each AC outlet stands behind a 30 mA double-pole leakage breaker",
        source=limit("electrics.leakage-outlets").source,
        severity=Severity.CAUTION,
        cases=_outlet_behind_breaker,
        holds=">=",
        remedy="fit the breaker, and say on the outlet that it is protected",
        jurisdictions=_EUROPE,
    ),
)
