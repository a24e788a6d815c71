"""Rules of charging: cold, limits, alternator, panels, days."""

from collections.abc import Iterator

from coachwright.electrics.model import ControllerArray, Electrics, SeasonBudget
from coachwright.electrics.rules_bank import MAKER
from coachwright.electrics.stage_array import panels
from coachwright.electrics.stage_charging import (
    DRIVING,
    HOOKUP,
    SUN,
    converters,
    shore_chargers,
)
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source
from coachwright.reference import limit
from coachwright.units import told

_US = (Jurisdiction.US,)
_EUROPE = (Jurisdiction.EU, Jurisdiction.UK)
_BRIEF = Source(key="customer-brief")


def _chargers(build: Build) -> Iterator[tuple[str, str, float]]:
    """Yield each charger's name, what it charges from, and its current."""
    for fitted in build.fittings:
        part = fitted.part
        for source, facet in (
            (SUN, part.solar_controller),
            (DRIVING, part.dcdc_charger),
            (HOOKUP, part.shore_charger),
        ):
            if facet is not None:
                yield fitted.name, source, facet.charge_limit_a


def _cold(build: Build, electrics: Electrics) -> Iterator[Case]:
    if any(True for _ in _chargers(build)):
        for battery in electrics.in_cold:
            yield Case(
                subject=battery.name,
                value=battery.battery_degc,
                limit=battery.charge_from_degc,
                unit="degC",
                detail="in the design cold night",
            )


def _each_charger(build: Build, electrics: Electrics) -> Iterator[Case]:
    bank = electrics.bank
    if not electrics.in_cold:
        return
    for name, source, current in _chargers(build):
        yield Case(
            subject=name,
            value=current,
            limit=bank.charge_limit_a if bank else None,
            unit="A",
            missing=electrics.bank_missing,
            detail=f"by {source}",
        )


def _all_chargers(build: Build, electrics: Electrics) -> Iterator[Case]:
    bank = electrics.bank
    currents = [current for _, _, current in _chargers(build)]
    if currents and electrics.in_cold:
        yield Case(
            subject="bank",
            value=sum(currents),
            limit=bank.charge_limit_a if bank else None,
            unit="A",
            missing=electrics.bank_missing,
            detail="all at full current; a device with two sources counts twice",
        )


def _alternator(build: Build, electrics: Electrics) -> Iterator[Case]:
    if converters(build):
        yield Case(
            subject="alternator",
            value=electrics.dcdc_input_a,
            limit=electrics.alternator_share_a,
            unit="A",
            detail="half its rating, less what the vehicle takes",
        )


def _smart(build: Build, electrics: Electrics) -> Iterator[Case]:
    driven = build.brief.stay.drive_h_per_day > 0.0
    if build.vehicle.alternator.smart and electrics.in_cold and driven:
        yield Case(
            subject="alternator",
            value=float(len(converters(build))),
            limit=limit("electrics.smart-converters").value,
            unit="count",
            detail="without one, driving is taken not to charge",
        )


def _controller(build: Build, electrics: Electrics) -> Iterator[Case]:
    for fitted, _ in panels(build):
        without = fitted.name in electrics.panels_without_controller
        yield Case(
            subject=fitted.name,
            value=float(not without),
            limit=limit("electrics.controllers-needed").value,
            unit="count",
        )


def _filled(electrics: Electrics) -> Iterator[ControllerArray]:
    for array in electrics.arrays:
        if array.panels:
            yield array


def _panels_left_over(_build: Build, electrics: Electrics) -> Iterator[Case]:
    for array in _filled(electrics):
        yield Case(
            subject=array.controller,
            value=None if electrics.bank is None else float(array.spare_count),
            limit=limit("electrics.panels-left-over").value,
            unit="count",
            missing=electrics.bank_missing,
            detail=f"{array.series_count} in series make one string",
        )


def _voltage_case(array: ControllerArray, electrics: Electrics) -> Case:
    missing = electrics.bank_missing
    if not missing and array.cold_open_circuit_v is None:
        missing = (
            f"a complete string, or the maker's coefficient: the table ends at {told(-40, 'degC')}"
        )
    by = "the maker's coefficient" if array.by_maker else "the table of the code"
    return Case(
        subject=array.controller,
        value=array.cold_open_circuit_v,
        limit=array.input_limit_v,
        unit="V",
        missing=missing,
        working=array.voltage_working,
        detail=f"by {by}",
    )


def _cold_voltage(_build: Build, electrics: Electrics) -> Iterator[Case]:
    for array in _filled(electrics):
        yield _voltage_case(array, electrics)


def _clipping(_build: Build, electrics: Electrics) -> Iterator[Case]:
    for array in _filled(electrics):
        yield Case(
            subject=array.controller,
            value=array.wanted_a,
            limit=array.charge_limit_a,
            unit="A",
            missing=electrics.bank_missing,
            detail="rated power over the bank's nominal voltage",
        )


def _alike(_build: Build, electrics: Electrics) -> Iterator[Case]:
    for array in _filled(electrics):
        if len(array.panels) > 1:
            yield Case(
                subject=array.controller,
                value=None if electrics.bank is None else array.unlike_frac,
                limit=limit("electrics.panel-spread").value,
                unit="frac",
                missing=electrics.bank_missing,
            )


def _series_fuse(_build: Build, electrics: Electrics) -> Iterator[Case]:
    for array in _filled(electrics):
        if array.parallel_count > 1:
            missing = "" if array.series_fuse_a is not None else "the panels' series-fuse rating"
            yield Case(
                subject=array.controller,
                value=array.reverse_current_a,
                limit=array.series_fuse_a,
                unit="A",
                missing=missing,
                detail=f"{array.parallel_count} strings side by side",
            )


def _days(build: Build, electrics: Electrics) -> Iterator[Case]:
    wanted = build.brief.independence_wanted_d
    if wanted is None:
        return
    for day in (electrics.summer, electrics.winter):
        yield Case(
            subject=str(day.season),
            value=day.independence.days_d,
            limit=wanted,
            unit="d",
            missing=day.missing,
            working=day.independence.working,
            detail="steady estimate with sun",
        )


def _balance(_build: Build, electrics: Electrics) -> Iterator[Case]:
    days: tuple[SeasonBudget, ...] = (electrics.summer, electrics.winter)
    for day in days:
        if day.use.total_wh_per_day > 0.0 and electrics.in_cold:
            yield Case(
                subject=str(day.season),
                value=day.balance_wh_per_day,
                limit=limit("electrics.least-balance").value,
                unit="Wh/day",
                missing=day.missing,
                working=day.balance_working,
                detail="steady estimate over the stay pattern",
            )


def _hooked_up(build: Build, _electrics: Electrics) -> Iterator[Case]:
    if build.brief.stay.hookup_frac > 0.0:
        yield Case(
            subject="hook-up",
            value=float(len(shore_chargers(build))),
            limit=limit("electrics.shore-chargers-needed").value,
            unit="count",
        )


CHARGING_RULES: tuple[Rule, ...] = (
    Rule(
        id="electrics.cold-charging",
        title="In the design cold night no battery is too cold to be charged",
        source=MAKER,
        severity=Severity.STOP,
        cases=_cold,
        holds=">=",
        remedy="move the battery into heated space, or take one with heating pads",
    ),
    Rule(
        id="electrics.charger-within-bank",
        title="No single charger gives more than the bank may take",
        source=MAKER,
        severity=Severity.STOP,
        cases=_each_charger,
        remedy="a smaller charger or one whose current can be set, or more strings",
    ),
    Rule(
        id="electrics.chargers-within-bank",
        title="All chargers at once give no more than the bank may take",
        source=MAKER,
        severity=Severity.CAUTION,
        cases=_all_chargers,
        remedy="set the chargers' currents, or more strings",
    ),
    Rule(
        id="electrics.alternator-share",
        title="The DC-DC chargers ask no more than half the alternator's rating (from memory)",
        source=limit("electrics.alternator-share").source,
        severity=Severity.CAUTION,
        cases=_alternator,
        remedy="a smaller DC-DC charger, or a larger or second alternator",
    ),
    Rule(
        id="electrics.smart-alternator",
        title="A smart alternator charges through a DC-DC charger",
        source=limit("electrics.smart-converters").source,
        severity=Severity.CAUTION,
        cases=_smart,
        holds=">=",
        remedy="fit a DC-DC charger",
    ),
    Rule(
        id="electrics.hookup-charger",
        title="A build that stands on hook-up has a shore charger",
        source=limit("electrics.shore-chargers-needed").source,
        severity=Severity.CAUTION,
        cases=_hooked_up,
        holds=">=",
        remedy="fit a shore charger",
    ),
    Rule(
        id="electrics.panels-on-controller",
        title="Panels charge through a controller",
        source=limit("electrics.controllers-needed").source,
        severity=Severity.CAUTION,
        cases=_controller,
        holds=">=",
        remedy="fit a charge controller",
    ),
    Rule(
        id="electrics.no-panel-left-over",
        title="Every panel stands in a complete string",
        source=limit("electrics.panels-left-over").source,
        severity=Severity.CAUTION,
        cases=_panels_left_over,
        remedy="change the number of panels, or use panels of a higher voltage",
    ),
    Rule(
        id="electrics.panel-cold-voltage-us",
        title="The panels' voltage in the cold is within the controller's input limit",
        source=limit("electrics.pv-cold-voltage").source,
        severity=Severity.STOP,
        cases=_cold_voltage,
        remedy="a controller with a higher input limit, or fewer panels in a string",
        jurisdictions=_US,
    ),
    Rule(
        id="electrics.panel-cold-voltage",
        title="The panels' voltage in the cold is within what the controller's maker allows",
        source=MAKER,
        severity=Severity.STOP,
        cases=_cold_voltage,
        remedy="a controller with a higher input limit, or fewer panels in a string",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="electrics.controller-clipping",
        title="The controller takes all that the panels give",
        source=MAKER,
        severity=Severity.NOTE,
        cases=_clipping,
        remedy="a larger controller, or live with what is lost in the strongest hours",
    ),
    Rule(
        id="electrics.panels-alike",
        title="Panels on one controller are alike in rated voltage within 5 %",
        source=limit("electrics.panel-spread").source,
        severity=Severity.CAUTION,
        cases=_alike,
        remedy="one kind of panel for each controller",
    ),
    Rule(
        id="electrics.panel-series-fuse-us",
        title="What other strings drive into a faulty one is within the series-fuse rating",
        source=limit("electrics.pv-series-fuse").source,
        severity=Severity.CAUTION,
        cases=_series_fuse,
        remedy="fit a fuse of the panels' series-fuse rating in each string",
        jurisdictions=_US,
    ),
    Rule(
        id="electrics.panel-series-fuse",
        title="What other strings drive into a faulty one is within what the maker allows",
        source=MAKER,
        severity=Severity.CAUTION,
        cases=_series_fuse,
        remedy="fit a fuse of the panels' series-fuse rating in each string",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="electrics.independence-wanted",
        title="The bank lasts for the days of independence that are wanted (steady estimate)",
        source=_BRIEF,
        severity=Severity.CAUTION,
        cases=_days,
        holds=">=",
        remedy="a larger bank, more panels, or less use in the season that falls short",
    ),
    Rule(
        id="electrics.balance-covers-use",
        title="What comes in over the stay pattern covers the use (steady estimate)",
        source=limit("electrics.least-balance").source,
        severity=Severity.CAUTION,
        cases=_balance,
        holds=">=",
        remedy="more panels, longer drives, more hook-up, or less use",
    ),
)
