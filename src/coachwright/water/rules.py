"""Rules of the water services; those of gas, alarms and vents stand beside them."""

from collections.abc import Iterator

from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source, Status
from coachwright.model.part import Part
from coachwright.model.working import Working
from coachwright.reference import limit
from coachwright.units import told
from coachwright.water.model import Water
from coachwright.water.rules_gas import GAS_RULES
from coachwright.water.rules_vents import VENT_RULES

_BRIEF = Source(key="customer-brief", clause="independence wanted")
_PRACTICE = Source(key="shop-practice-water", status=Status.PRACTICE)


def _working(water: Water, name: str) -> Working | None:
    return next((figure.working for figure in water.figures if figure.name == name), None)


def _days_wanted(build: Build, water: Water) -> Iterator[Case]:
    wanted_d = build.brief.independence_wanted_d
    if wanted_d is None:
        return
    stores = water.stores
    missing = "" if stores.days_d is not None else "fresh tank, or the water used in a day"
    detail = f"the {stores.limiting} tank ends them" if stores.limiting else ""
    working = _working(water, "water.days")
    yield Case(
        subject="tanks",
        value=stores.days_d,
        limit=wanted_d,
        unit="d",
        missing=missing,
        working=working,
        detail=detail,
    )


def _toilet_days(build: Build, water: Water) -> Iterator[Case]:
    wanted_d = build.brief.independence_wanted_d
    if wanted_d is None or water.stores.days_toilet_d is None:
        return
    working = _working(water, "water.days-toilet")
    yield Case(
        subject="toilet",
        value=water.stores.days_toilet_d,
        limit=wanted_d,
        unit="d",
        working=working,
    )


def _least_use(build: Build, _water: Water) -> Iterator[Case]:
    use_l_per_day = build.brief.habits.water_l_per_day
    yield Case(
        subject="each traveller",
        value=use_l_per_day,
        limit=limit("water.least-use").value,
        unit="L/day",
    )


def _grey_holds_fresh(build: Build, water: Water) -> Iterator[Case]:
    stores = water.stores
    inside = [f for f in build.fittings if f.part.water_outlet and _drains_inside(f.part)]
    if stores.fresh_l is None or not (inside or stores.grey_l is not None):
        return
    detail = "" if stores.grey_l is not None else "no grey tank is fitted"
    yield Case(
        subject="grey tanks",
        value=stores.grey_l or 0.0,
        limit=stores.grey_needed_l,
        unit="L",
        detail=detail,
    )


def _drains_inside(part: Part) -> bool:
    return part.water_outlet is not None and part.water_outlet.kind != "outside shower"


def _protected(_build: Build, water: Water) -> Iterator[Case]:
    allowed_k = limit("water.least-temperature-span").value
    for exposure in water.frost:
        detail = f"{exposure.place}, {told(exposure.around_degc, 'degC')} round it"
        if exposure.protection:
            detail += f", {exposure.protection}"
        yield Case(
            subject=exposure.name,
            value=exposure.below_freezing_k,
            limit=allowed_k,
            unit="K",
            detail=detail,
        )


def _lasts_the_night(_build: Build, water: Water) -> Iterator[Case]:
    for exposure in water.frost:
        if exposure.kind != "tank" or exposure.below_freezing_k <= 0:
            continue
        working = _working(water, "water.frost-hours")
        shortest = working is not None and working.result == exposure.to_zero_h
        yield Case(
            subject=exposure.name,
            value=exposure.to_zero_h,
            limit=limit("water.cold-night").value,
            unit="h",
            missing=exposure.missing,
            working=working if shortest else None,
        )


def _pump_serves(_build: Build, water: Water) -> Iterator[Case]:
    for flow in water.outlets:
        yield Case(
            subject=flow.outlet,
            value=flow.flow_l_per_min,
            limit=flow.wanted_l_per_min,
            unit="L/min",
            missing=flow.missing,
            working=_working(water, f"water.flow-{flow.outlet}"),
            detail=f"{flow.pump} through {flow.run}" if flow.run else "",
        )


def _pump_draw(_build: Build, water: Water) -> Iterator[Case]:
    for pump in water.pumps:
        missing = "" if pump.stated_w is not None else "draw of the pump"
        yield Case(
            subject=pump.name, value=pump.stated_w, limit=pump.needed_w, unit="W", missing=missing
        )


def _air_gap(_build: Build, water: Water) -> Iterator[Case]:
    for gap in water.gaps:
        missing = "" if gap.gap_mm is not None else "height of the spout above the basin's rim"
        yield Case(
            subject=gap.name, value=gap.gap_mm, limit=gap.needed_mm, unit="mm", missing=missing
        )


def _scald(_build: Build, water: Water) -> Iterator[Case]:
    """Yield each heater: a hot store may have a mixing valve that nobody has entered."""
    warmest_degc = limit("water.scald").value
    for heater in water.hot_water:
        reaches_degc = heater.mixes_to_degc
        if reaches_degc is None and heater.set_degc <= warmest_degc:
            reaches_degc = heater.set_degc
        missing = "" if reaches_degc is not None else "mixing valve that limits the tap"
        yield Case(
            subject=heater.name,
            value=reaches_degc,
            limit=warmest_degc,
            unit="degC",
            missing=missing,
        )


def _stored_hot(_build: Build, water: Water) -> Iterator[Case]:
    for heater in water.hot_water:
        yield Case(
            subject=heater.name,
            value=heater.set_degc,
            limit=limit("water.stored-hot").value,
            unit="degC",
        )


WATER_RULES: tuple[Rule, ...] = (
    Rule(
        id="water.days-wanted",
        title="The tanks last the days that the customer wants",
        source=_BRIEF,
        severity=Severity.CAUTION,
        cases=_days_wanted,
        holds=">=",
        remedy="fit a larger tank of the kind that ends the days, or use less water",
    ),
    Rule(
        id="water.toilet-days-wanted",
        title="The toilet lasts the days that the customer wants, by common practice",
        source=_PRACTICE,
        severity=Severity.NOTE,
        cases=_toilet_days,
        holds=">=",
        remedy="carry a second waste tank, or plan where to empty it",
    ),
    Rule(
        id="water.least-use",
        title="The water planned for one person is more than bare survival takes",
        source=limit("water.least-use").source,
        severity=Severity.NOTE,
        cases=_least_use,
        holds=">=",
        remedy="plan with more water for each person; camping without a shower takes "
        f"{told(8, 'L')} to {told(12, 'L')}",
    ),
    Rule(
        id="water.grey-holds-fresh",
        title="The grey tank holds the fresh water and the heater's contents, by common practice",
        source=_PRACTICE,
        severity=Severity.CAUTION,
        cases=_grey_holds_fresh,
        holds=">=",
        remedy="fit a larger grey tank, or empty it before the fresh tank is used up",
    ),
    Rule(
        id="water.frost-protected",
        title="Nothing that holds water stands unprotected in frost, by common practice",
        source=limit("water.least-temperature-span").source,
        severity=Severity.CAUTION,
        cases=_protected,
        remedy="move it inside, heat it, or drain it before a cold night",
    ),
    Rule(
        id="water.frost-lasts-the-night",
        title="A full tank in frost takes longer to freeze than a cold night, by common practice",
        source=limit("water.cold-night").source,
        severity=Severity.NOTE,
        cases=_lasts_the_night,
        holds=">=",
        remedy="insulate the tank, heat it, or drain it; its valves freeze sooner",
    ),
    Rule(
        id="water.pump-serves-outlet",
        title="The pump brings the flow that the outlet is made for",
        source=Source(key="part-maker-data"),
        severity=Severity.CAUTION,
        cases=_pump_serves,
        holds=">=",
        remedy="fit a wider or shorter run, a stronger pump, or an outlet that needs less",
    ),
    Rule(
        id="water.pump-draw-plausible",
        title="The pump's stated draw covers the work at its best point",
        source=Source(key="energy-balance"),
        severity=Severity.NOTE,
        cases=_pump_draw,
        holds=">=",
        remedy="check flow, cut-out, efficiency and draw against the data sheet",
    ),
    Rule(
        id="water.air-gap",
        title="The spout stands two bores, and no less than "
        f"{told(limit('water.air-gap-least').value, 'mm')}, above the basin's rim",
        source=limit("water.air-gap-least").source,
        severity=Severity.CAUTION,
        cases=_air_gap,
        holds=">=",
        remedy="fit a higher spout, or a backflow preventer where the local code allows one",
    ),
    Rule(
        id="water.scald-limit",
        title="No tap gives water that scalds (limit from memory)",
        source=limit("water.scald").source,
        severity=Severity.CAUTION,
        cases=_scald,
        remedy="fit a mixing valve, or enter the one that is fitted",
    ),
    Rule(
        id="water.stored-hot-enough",
        title="Hot water is stored hot enough against legionella (limit from memory)",
        source=limit("water.stored-hot").source,
        severity=Severity.NOTE,
        cases=_stored_hot,
        holds=">=",
        remedy="set the heater higher behind a mixing valve, or empty it when it is not used",
    ),
)

RULES: tuple[Rule, ...] = (*WATER_RULES, *GAS_RULES, *VENT_RULES)
