"""The energy sheet: loads, bank, charging, the day's budget, how long anything runs."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from coachwright.assess import Assessment
from coachwright.electrics.model import Bank, Electrics, InverterDuty, LoadLine, SeasonBudget
from coachwright.model.build import Build
from coachwright.papers.frame import FrameView, frame
from coachwright.papers.table import Pair, Table, figure_pairs
from coachwright.papers.wording import (
    NONE,
    digits,
    part_and_position,
    part_of,
    position_of,
    show,
    span,
    words_of,
)
from coachwright.units import told


@dataclass(frozen=True, kw_only=True, slots=True)
class EnergyView:
    """Everything on the energy sheet."""

    frame: FrameView
    headline: tuple[Pair, ...]
    basis: str
    budget: Table
    runtimes: Table
    charging: Table
    loads: Table
    bank: tuple[Pair, ...]
    bank_missing: str
    inverter: tuple[Pair, ...]
    arrays: Table
    arrays_missing: str


def energy_view(assessment: Assessment) -> EnergyView:
    """Return the energy sheet of a build."""
    build, electrics = assessment.build, assessment.electrics
    system = build.brief.units
    return EnergyView(
        frame=frame(build, title="Energy sheet", cautions=("electricity",)),
        headline=figure_pairs(build, assessment.headline, "electrics"),
        basis="Steady figures for one typical day of the warm and of the cold half-year. They do "
        "not follow the weather hour by hour; a run of dull days gives less.",
        budget=_budget(electrics, system),
        runtimes=_runtimes(build, electrics),
        charging=_charging(electrics, system),
        loads=_loads(build, electrics),
        bank=_bank(electrics.bank, system) if electrics.bank else (),
        bank_missing=electrics.bank_missing,
        inverter=_inverter(build, electrics.inverter) if electrics.inverter else (),
        arrays=_arrays(build, electrics),
        arrays_missing=_unconnected(build, electrics),
    )


def _per_day(energy_wh_per_day: float | None, system: str) -> str:
    return show(energy_wh_per_day, "Wh/day", system)


def _budget(electrics: Electrics, system: str) -> Table:
    seasons = (electrics.summer, electrics.winter)
    missing = "; ".join(f"{s.season}: {s.missing}" for s in seasons if s.missing)
    return Table(
        heading="The day's budget",
        names=("", "Summer", "Winter"),
        rows=tuple(
            (label, *(text(season, system) for season in seasons)) for label, text in _BUDGET_LINES
        ),
        note=f"Missing – {missing}." if missing else "",
    )


def _days(season: SeasonBudget, system: str) -> str:
    found = season.independence
    text = show(found.days_d, "d", system)
    return f"the whole half-year ({text})" if found.ends_at_season else text


_BUDGET_LINES: tuple[tuple[str, Callable[[SeasonBudget, str], str]], ...] = (
    ("Direct-current loads", lambda s, system: _per_day(s.use.dc_wh_per_day, system)),
    ("Loads behind the inverter", lambda s, system: _per_day(s.use.ac_wh_per_day, system)),
    (
        "Lost in the inverter",
        lambda s, system: _per_day(s.use.inverter_loss_wh_per_day, system),
    ),
    (
        "Inverter on without load",
        lambda s, system: _per_day(s.use.inverter_standby_wh_per_day, system),
    ),
    ("Out of the battery", lambda s, system: _per_day(s.use.total_wh_per_day, system)),
    ("From the sun", lambda s, system: _per_day(s.sun_wh_per_day, system)),
    ("From driving", lambda s, system: _per_day(s.driving_wh_per_day, system)),
    ("From hook-up", lambda s, system: _per_day(s.hookup_wh_per_day, system)),
    ("Lost in storage", lambda s, system: _per_day(s.storage_loss_wh_per_day, system)),
    ("Balance of the day", lambda s, system: _per_day(s.balance_wh_per_day, system)),
    (
        "Balance, 95 % bounds",
        lambda s, system: span(
            s.balance_low_wh_per_day, s.balance_high_wh_per_day, "Wh/day", system
        ),
    ),
    ("Usable in the battery", lambda s, system: show(s.usable_wh, "Wh", system)),
    ("Days without driving or hook-up", _days),
    (
        "Those days, 95 % bounds",
        lambda s, system: span(s.independence.low_d, s.independence.high_d, "d", system),
    ),
    (
        "Those days with no sun at all",
        lambda s, system: show(s.independence.without_sun_d, "d", system),
    ),
    (
        "On shore power only, not in the sum",
        lambda s, system: _per_day(s.use.shore_only_wh_per_day, system),
    ),
)
"""Label → what stands beside it for one season."""


def _runtimes(build: Build, electrics: Electrics) -> Table:
    system = build.brief.units
    runs = electrics.runtimes
    return Table(
        heading="How long can it run",
        names=(
            "Pos.",
            "Load",
            "Mode",
            "Draw, W",
            "Duty, %",
            "Alone",
            "With what is always on",
            "Alone, cold night",
        ),
        rows=tuple(
            (
                *named,
                words_of(run.mode),
                digits(run.draw_w, "W", system),
                digits(run.duty_frac, "frac", system),
                _clock(run.alone_h, system),
                _clock(run.with_others_h, system),
                _clock(run.cold_alone_h, system),
            )
            for named, run in zip(
                _named_once(build, [run.subject for run in runs]), runs, strict=True
            )
        ),
        note="Clock hours from a full battery down to its reserve, with nothing charging it.",
    )


def _named_once(build: Build, subjects: list[str]) -> Iterator[tuple[str, str]]:
    """Yield position and name of each subject; nothing where it is the same as the one above."""
    above = ""
    for subject in subjects:
        same = subject == above
        yield ("", "") if same else (position_of(build, subject), part_of(build, subject))
        above = subject


def _clock(run_h: float, system: str) -> str:
    return _VERY_LONG if run_h > _VERY_LONG_H else show(run_h, "h", system)


def _charging(electrics: Electrics, system: str) -> Table:
    return Table(
        heading="Charging",
        names=(
            "Source",
            "Season",
            "Offered",
            "Chargers",
            "Into the battery",
            "Power",
            "20 % to full",
            "Held back by",
        ),
        rows=tuple(
            (
                limit.source.capitalize(),
                str(limit.season),
                show(limit.offered_a, "A", system),
                show(limit.charger_a, "A", system),
                show(limit.current_a, "A", system),
                show(limit.power_w, "W", system),
                "never" if limit.full_charge_h is None else show(limit.full_charge_h, "h", system),
                limit.limited_by or NONE,
            )
            for season in (electrics.summer, electrics.winter)
            for limit in season.limits
        ),
        note=f"The vehicle's alternator can spare "
        f"{show(electrics.alternator_share_a, 'A', system)}; the chargers on it ask for "
        f"{show(electrics.dcdc_input_a, 'A', system)}. Sun: what the panels give in full sun, in "
        "winter from cooler cells, and hours of full sun; what a day brings is in the day's "
        "budget.",
    )


def _loads(build: Build, electrics: Electrics) -> Table:
    lines = electrics.loads
    return Table(
        heading="Loads",
        names=(
            "Pos.",
            "Load",
            "Mode",
            "Supply",
            "Draw, W",
            "Duty, %",
            "Summer, h/day",
            "Winter, h/day",
            "Summer, Wh/day",
            "Winter, Wh/day",
        ),
        rows=tuple(
            (*named, *_load(line, build.brief.units))
            for named, line in zip(
                _named_once(build, [line.subject for line in lines]), lines, strict=True
            )
        ),
        note="At the load's own terminals; the inverter's losses are in the day's budget.",
    )


def _load(line: LoadLine, system: str) -> tuple[str, ...]:
    return (
        "standby" if line.standby else words_of(line.mode),
        _SUPPLY_WORDS[str(line.supply)],
        digits(line.draw_w, "W", system),
        digits(line.duty_frac, "frac", system),
        digits(line.summer_use_h_per_day, "h/day", system),
        digits(line.winter_use_h_per_day, "h/day", system),
        digits(line.summer_wh_per_day, "Wh/day", system),
        digits(line.winter_wh_per_day, "Wh/day", system),
    )


_VERY_LONG_H = 240.0
_VERY_LONG = "over 10 days"
"""Other loads and the battery's own losses end it sooner; hours would feign a precision."""

_SUPPLY_WORDS = {"dc": "battery", "inverter": "inverter", "shore only": "shore only"}


def _bank(bank: Bank, system: str) -> tuple[Pair, ...]:
    return (*_bank_itself(bank, system), *_bank_in_use(bank, system))


def _bank_itself(bank: Bank, system: str) -> tuple[Pair, ...]:
    return (
        Pair(label="Kind", value=bank.chemistry),
        Pair(
            label="Arrangement",
            value=f"{bank.series_count} in series, {bank.parallel_count} in parallel",
            note=f"{bank.spare_count} left over, not counted" if bank.spare_count else "",
        ),
        Pair(label="Nominal voltage", value=show(bank.nominal_v, "V", system)),
        Pair(
            label="Capacity",
            value=show(bank.capacity_ah, "Ah", system),
            note=f"stated for {show(bank.rated_h, 'h', system)}",
        ),
        Pair(label="Charging limit", value=show(bank.charge_limit_a, "A", system)),
        Pair(label="Discharging limit", value=show(bank.discharge_limit_a, "A", system)),
    )


def _bank_in_use(bank: Bank, system: str) -> tuple[Pair, ...]:
    return (
        Pair(label="Share that may be used", value=show(bank.depth_frac, "frac", system)),
        Pair(label=f"Usable at {told(25, 'degC')}", value=show(bank.usable_wh, "Wh", system)),
        Pair(
            label="Usable in the design cold night",
            value=show(bank.cold_usable_wh, "Wh", system),
            note=f"battery at {show(bank.cold_degc, 'degC', system)}, "
            f"{show(bank.cold_factor, 'frac', system)} of the capacity",
        ),
        Pair(
            label="May be charged in the design cold night",
            value="no" if bank.charge_locked else "yes",
        ),
    )


def _inverter(build: Build, inverter: InverterDuty) -> tuple[Pair, ...]:
    system = build.brief.units
    return (
        Pair(label="Continuous rating", value=show(inverter.continuous_w, "W", system)),
        Pair(label="All its loads at once", value=show(inverter.load_w, "W", system)),
        Pair(label="Surge rating", value=show(inverter.surge_w, "W", system)),
        Pair(
            label="Demand with the worst start",
            value=show(inverter.surge_demand_w, "W", system),
            note=part_and_position(build, inverter.largest_surge)
            if inverter.largest_surge
            else "",
        ),
        Pair(
            label="Current from the bank, all its loads on",
            value=show(inverter.nominal_current_a, "A", system),
            note=f"{show(inverter.cut_off_current_a, 'A', system)} where it cuts off",
        ),
        Pair(label="Efficiency", value=show(inverter.efficiency_frac, "frac", system)),
    )


def _arrays(build: Build, electrics: Electrics) -> Table:
    system = build.brief.units
    return Table(
        heading="Solar panels and their controllers",
        names=(
            "Controller",
            "Panels",
            "Rated",
            "Strings",
            "Cold open-circuit voltage",
            "Input limit",
            "Charge limit",
        ),
        rows=tuple(
            (
                part_and_position(build, array.controller),
                str(len(array.panels)),
                show(array.rated_w, "W", system),
                f"{array.series_count} in series, {array.parallel_count} in parallel",
                show(array.cold_open_circuit_v, "V", system),
                show(array.input_limit_v, "V", system),
                show(array.charge_limit_a, "A", system),
            )
            for array in electrics.arrays
        ),
    )


def _unconnected(build: Build, electrics: Electrics) -> str:
    names = ", ".join(
        part_and_position(build, name) for name in electrics.panels_without_controller
    )
    return f"Panels without a charge controller: {names}." if names else ""
