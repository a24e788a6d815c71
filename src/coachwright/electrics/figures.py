"""The headline figures of the electrics, each with its working."""

import re
from collections.abc import Iterator
from dataclasses import replace

from coachwright.electrics.model import (
    Bank,
    ChargeLimit,
    ControllerArray,
    Electrics,
    InverterDuty,
    RunTime,
    SeasonBudget,
)
from coachwright.electrics.stage_budget import load_tolerance_frac, sun_tolerance_frac
from coachwright.model.working import Figure, Working
from coachwright.units import told

_SOURCES = {"sun": "sun", "driving": "driving", "hook-up": "shore"}
_STEADY = "steady estimate"


def figures(made: Electrics) -> Electrics:
    """Return the result with its figures."""
    return replace(
        made,
        figures=(
            *_bank(made.bank, made.bank_missing),
            *_season(made.summer),
            *_season(made.winter),
            *_inverter(made.inverter),
            *(figure for limit in made.summer.limits for figure in _limit(limit)),
            *(figure for array in made.arrays for figure in _array(array)),
            _figure(
                "shore-demand",
                "Shore power asked for, everything at once",
                made.shore.demand_w,
                "W",
                made.shore.working,
            ),
            *_run_times(made.runtimes),
        ),
    )


def _figure(
    name: str,
    label: str,
    value: float | None,
    unit: str,
    working: Working | None = None,
    *,
    low: float | None = None,
    high: float | None = None,
    missing: str = "",
) -> Figure:
    return Figure(
        name=f"electrics.{name}",
        label=label,
        value=value,
        unit=unit,
        working=working if value is not None else None,
        low=low,
        high=high,
        missing=missing if value is None else "",
    )


def _bank(bank: Bank | None, missing: str) -> Iterator[Figure]:
    yield _figure(
        "usable-energy",
        f"Usable energy of the full bank at {told(25, 'degC')}",
        bank.usable_wh if bank else None,
        "Wh",
        bank.usable_working if bank else None,
        missing=missing,
    )
    yield _figure(
        "usable-energy-cold",
        "Usable energy of the full bank in the design cold night",
        bank.cold_usable_wh if bank else None,
        "Wh",
        bank.cold_working if bank else None,
        missing=missing,
    )


def _season(day: SeasonBudget) -> Iterator[Figure]:
    season, missing, use = str(day.season), day.missing, day.use
    load = load_tolerance_frac()
    yield _figure(
        f"daily-use-{season}",
        f"Out of the battery on a {season} day",
        use.total_wh_per_day,
        "Wh/day",
        use.working,
        low=use.total_wh_per_day * (1.0 - load),
        high=use.total_wh_per_day * (1.0 + load),
    )
    sun, parked = sun_tolerance_frac(), day.parked_sun_wh_per_day
    yield _figure(
        f"daily-solar-{season}",
        f"Sun into the battery on a parked {season} day ({_STEADY})",
        parked,
        "Wh/day",
        day.sun_working,
        low=None if parked is None else parked * (1.0 - sun),
        high=None if parked is None else parked * (1.0 + sun),
        missing=missing,
    )
    yield _figure(
        f"daily-balance-{season}",
        f"Daily balance over the stay pattern, {season} ({_STEADY})",
        day.balance_wh_per_day,
        "Wh/day",
        day.balance_working,
        low=day.balance_low_wh_per_day,
        high=day.balance_high_wh_per_day,
        missing=missing,
    )
    yield from _independence(day)


def _independence(day: SeasonBudget) -> Iterator[Figure]:
    days = day.independence
    ends = "; at least, the sun covers the use" if days.ends_at_season else ""
    yield _figure(
        f"independence-{day.season}",
        f"Days of independence, {day.season} ({_STEADY}{ends})",
        days.days_d,
        "d",
        days.working,
        low=days.low_d,
        high=days.high_d,
        missing=day.missing,
    )
    yield _figure(
        f"independence-without-sun-{day.season}",
        f"Days of independence without any sun, {day.season} ({_STEADY})",
        days.without_sun_d,
        "d",
        days.without_sun_working,
        missing=day.missing,
    )


def _inverter(duty: InverterDuty | None) -> Iterator[Figure]:
    if duty is None:
        return
    yield _figure(
        "inverter-load",
        "All inverter loads of a season at once",
        duty.load_w,
        "W",
        duty.load_working,
    )
    yield _figure(
        "inverter-surge",
        "The same while the worst of them starts",
        duty.surge_demand_w,
        "W",
        duty.surge_working,
    )


def _limit(limit: ChargeLimit) -> Iterator[Figure]:
    name = _SOURCES[limit.source]
    yield _figure(
        f"charge-limit-{name}",
        f"Charging by {limit.source}, held back by: {limit.limited_by}",
        limit.current_a,
        "A",
        limit.working,
    )
    yield _figure(
        f"charge-time-{name}",
        f"From 20 % to full by {limit.source} at its limit",
        limit.full_charge_h,
        "h",
        limit.full_charge_working,
        missing=limit.limited_by,
    )


def _array(array: ControllerArray) -> Iterator[Figure]:
    yield _figure(
        f"cold-voltage-of-{_slug(array.controller)}",
        f"Open-circuit voltage at {array.controller} in the design cold night",
        array.cold_open_circuit_v,
        "V",
        array.voltage_working,
        missing="a bank, panels, or the maker's coefficient",
    )
    yield _figure(
        f"circuit-current-of-{_slug(array.controller)}",
        f"Maximum circuit current of the panels at {array.controller}",
        array.circuit_current_a,
        "A",
        array.current_working,
    )


def _run_times(found: tuple[RunTime, ...]) -> Iterator[Figure]:
    """Yield the answer for each load in the mode that takes most."""
    for subject in dict.fromkeys(one.subject for one in found):
        own = [one for one in found if one.subject == subject]
        shortest = min(own, key=lambda one: one.alone_h)
        yield _figure(
            f"runtime-of-{_slug(subject)}",
            f"A full bank runs {subject} ({shortest.mode}) alone",
            shortest.alone_h,
            "h",
            shortest.working,
        )


def _slug(name: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
