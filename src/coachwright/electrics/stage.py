"""Take a build apart for the electrics and hand on what comes of it."""

from coachwright.electrics.answers import always_on_w, at_bank_w, run_times
from coachwright.electrics.figures import figures
from coachwright.electrics.inverter import bank_draw_a
from coachwright.electrics.model import (
    Bank,
    Electrics,
    InverterDuty,
    LoadLine,
    Season,
    Supply,
)
from coachwright.electrics.stage_array import array_of, groups, panels
from coachwright.electrics.stage_bank import bank as bank_of
from coachwright.electrics.stage_bank import in_cold
from coachwright.electrics.stage_budget import budget
from coachwright.electrics.stage_charging import alternator_a, converter_demand_a, shore_demand
from coachwright.electrics.stage_loads import (
    Loads,
    inverter_duty,
    loads,
    season_peak_w,
    use_of_day,
)
from coachwright.model.build import Build


def stage(build: Build) -> Electrics:
    """Return everything that the electrics say about a build.

    Parameters
    ----------
    build
        With everything found.

    Returns
    -------
    Electrics
        Loads, bank, inverter, arrays, charging, the budgets of two seasons, figures.
    """
    found = loads(build)
    cold = in_cold(build)
    bank, missing = bank_of(build, cold)
    duty = inverter_duty(build, found, bank)
    summer, winter = (
        budget(build, season, use_of_day(found, season), bank, missing) for season in Season
    )
    dealt = groups(build)
    single = _largest(found)
    made = Electrics(
        loads=(*found.lines, *found.inverter_lines),
        peaks=found.peaks,
        bank=bank,
        bank_missing=missing,
        in_cold=cold,
        base_w=always_on_w(found),
        inverter=duty,
        arrays=tuple(array_of(build, group, bank) for group in dealt),
        panels_without_controller=(
            () if dealt else tuple(fitted.name for fitted, _ in panels(build))
        ),
        shore=shore_demand(build, found.peaks, bank),
        alternator_share_a=alternator_a(build),
        dcdc_input_a=converter_demand_a(build, bank),
        simultaneous_a=_simultaneous_a(found, bank, duty),
        largest_single=single.subject if single else "",
        largest_single_a=_single_a(single, found, bank),
        summer=summer,
        winter=winter,
        runtimes=tuple(run_times(bank, found)) if bank else (),
        figures=(),
    )
    return figures(made)


def _largest(found: Loads) -> LoadLine | None:
    """Return the line that takes most from the bank, used or not."""
    on_bank = [line for line in found.lines if line.supply is not Supply.SHORE]
    return max(on_bank, key=lambda line: at_bank_w(line, found.efficiency_frac), default=None)


def _single_a(line: LoadLine | None, found: Loads, bank: Bank | None) -> float | None:
    if line is None or bank is None:
        return None
    draw = at_bank_w(line, found.efficiency_frac)
    return bank_draw_a(
        dc_w=draw, ac_w=0.0, inverter_w=0.0, efficiency_frac=1.0, battery_v=bank.nominal_v
    )


def _simultaneous_a(found: Loads, bank: Bank | None, duty: InverterDuty | None) -> float | None:
    """Return all loads of the heavier season at once, at the voltage where the inverter stops."""
    if bank is None:
        return None

    def total_w(supply: Supply, season: Season) -> float:
        return sum(season_peak_w(peak, season) for peak in found.peaks if peak.supply is supply)

    return max(
        bank_draw_a(
            dc_w=total_w(Supply.DC, season),
            ac_w=total_w(Supply.INVERTER, season),
            inverter_w=duty.continuous_w if duty else 0.0,
            efficiency_frac=found.efficiency_frac,
            battery_v=bank.cut_off_v,
        )
        for season in Season
    )
