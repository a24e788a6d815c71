"""Take the loads out of a build."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright import reference
from coachwright.electrics.inverter import Demand, demand, inverter_current_a
from coachwright.electrics.loads import DAY_H, daily_use, mode_energy_wh_per_day
from coachwright.electrics.model import (
    Bank,
    DailyUse,
    InverterDuty,
    LoadLine,
    LoadPeak,
    Season,
    Supply,
)
from coachwright.model.build import Build, Fitted
from coachwright.model.facets import AcLoad, DcLoad, Inverter, Mode


@dataclass(frozen=True, kw_only=True, slots=True)
class Loads:
    """Everything that draws, and the inverters' own draw apart from it."""

    lines: tuple[LoadLine, ...]
    inverter_lines: tuple[LoadLine, ...]
    peaks: tuple[LoadPeak, ...]
    efficiency_frac: float


def loads(build: Build) -> Loads:
    """Return every load of a build, line by line, and the most that each draws."""
    lines = (*_fitted_lines(build), *_device_lines(build))
    return Loads(
        lines=lines,
        inverter_lines=tuple(_inverter_lines(build, lines)),
        peaks=tuple(_peaks(build, lines)),
        efficiency_frac=planning_efficiency_frac(build),
    )


def planning_efficiency_frac(build: Build) -> float:
    """Return the lowest efficiency of the inverters; the planning value where there is none."""
    found = [inverter.efficiency_frac for _, inverter in inverters(build)]
    return min(found, default=reference.limit("electrics.planning-efficiency").value)


def inverters(build: Build) -> Iterator[tuple[Fitted, Inverter]]:
    """Yield the inverters of a build."""
    for fitted in build.having("inverter"):
        if fitted.part.inverter is not None:
            yield fitted, fitted.part.inverter


def season_wh_per_day(line: LoadLine, season: Season) -> float:
    """Return a line's energy in one season [Wh/day]."""
    return line.summer_wh_per_day if season is Season.SUMMER else line.winter_wh_per_day


def season_peak_w(peak: LoadPeak, season: Season) -> float:
    """Return the most that a load draws in one season [W]."""
    return peak.summer_w if season is Season.SUMMER else peak.winter_w


def use_of_day(found: Loads, season: Season) -> DailyUse:
    """Return what a day of a season takes out of the battery."""

    def total_wh_per_day(lines: tuple[LoadLine, ...], supply: Supply) -> float:
        return sum(season_wh_per_day(line, season) for line in lines if line.supply is supply)

    return daily_use(
        dc_wh_per_day=total_wh_per_day(found.lines, Supply.DC),
        ac_wh_per_day=total_wh_per_day(found.lines, Supply.INVERTER),
        shore_only_wh_per_day=total_wh_per_day(found.lines, Supply.SHORE),
        efficiency_frac=found.efficiency_frac,
        inverter_standby_wh_per_day=total_wh_per_day(found.inverter_lines, Supply.DC),
    )


def inverter_duty(build: Build, found: Loads, bank: Bank | None) -> InverterDuty | None:
    """Return what the inverters must give; None where nothing wants one and none is fitted."""
    fitted = [inverter for _, inverter in inverters(build)]
    peaks = [peak for peak in found.peaks if peak.supply is Supply.INVERTER]
    if not fitted and not peaks:
        return None
    asked = max((_season_demand(peaks, season) for season in Season), key=lambda one: one.surge_w)
    heavy = max((_season_demand(peaks, season) for season in Season), key=lambda one: one.load_w)
    largest = max(peaks, key=lambda peak: peak.most_w, default=None)
    starts = max(peaks, key=lambda peak: max(peak.surge_w, peak.most_w), default=None)

    def current_a(battery_v: float) -> float:
        return inverter_current_a(
            load_w=min(heavy.load_w, sum(one.continuous_w for one in fitted) or heavy.load_w),
            efficiency_frac=found.efficiency_frac,
            battery_v=battery_v,
        )

    return InverterDuty(
        load_w=heavy.load_w,
        surge_demand_w=asked.surge_w,
        largest_load=largest.subject if largest else "",
        largest_load_w=largest.most_w if largest else 0.0,
        largest_surge=starts.subject if starts else "",
        largest_surge_w=max(starts.surge_w, starts.most_w) if starts else 0.0,
        continuous_w=sum(one.continuous_w for one in fitted),
        surge_w=sum(one.surge_w for one in fitted),
        largest_continuous_w=max((one.continuous_w for one in fitted), default=0.0),
        largest_rated_surge_w=max((one.surge_w for one in fitted), default=0.0),
        efficiency_frac=found.efficiency_frac,
        nominal_current_a=current_a(bank.nominal_v) if bank else None,
        cut_off_current_a=current_a(bank.cut_off_v) if bank else None,
        load_working=heavy.load_working,
        surge_working=asked.surge_working,
    )


def _season_demand(peaks: list[LoadPeak], season: Season) -> Demand:
    used = [peak for peak in peaks if season_peak_w(peak, season) > 0.0]
    return demand(
        draws_w=tuple(season_peak_w(peak, season) for peak in used),
        surges_w=tuple(peak.surge_w for peak in used),
    )


def _facets(fitted: Fitted) -> Iterator[tuple[DcLoad | AcLoad, Supply]]:
    if fitted.part.dc_load is not None:
        yield fitted.part.dc_load, Supply.DC
    if fitted.part.ac_load is not None:
        yield fitted.part.ac_load, Supply(fitted.part.ac_load.supply)


def _fitted_lines(build: Build) -> Iterator[LoadLine]:
    for fitted in build.fittings:
        name = fitted.name
        for load, supply in _facets(fitted):
            for mode in load.modes:
                summer, winter = _use_h_per_day(fitted, mode)
                yield _line(mode, subject=name, supply=supply, summer_h=summer, winter_h=winter)
            if load.standby_w > 0.0:
                yield _standby(name, load.standby_w, supply)
        controller = fitted.part.solar_controller
        if controller is not None and controller.standby_w > 0.0:
            yield _standby(name, controller.standby_w)


def _use_h_per_day(fitted: Fitted, mode: Mode) -> tuple[float, float]:
    for use in fitted.fitting.use:
        if use.mode == mode.name:
            return use.summer_use_h_per_day, use.winter_use_h_per_day
    return mode.summer_use_h_per_day, mode.winter_use_h_per_day


def _device_lines(build: Build) -> Iterator[LoadLine]:
    for device in build.brief.habits.devices:
        hours = device.use_h_per_day
        mode = Mode(name="in use", draw_w=device.draw_w * device.count)
        supply = Supply(device.supply)
        yield _line(mode, subject=device.name, supply=supply, summer_h=hours, winter_h=hours)


def _inverter_lines(build: Build, lines: tuple[LoadLine, ...]) -> Iterator[LoadLine]:
    behind = [line for line in lines if line.supply is Supply.INVERTER]
    awake = any(line.standby for line in behind)
    for fitted, inverter in inverters(build):
        summer, winter = (
            0.0
            if inverter.sleeps and not awake
            else DAY_H * any(season_wh_per_day(line, season) > 0.0 for line in behind)
            for season in Season
        )
        yield _standby(fitted.name, inverter.standby_w, summer_h=summer, winter_h=winter)


def _peaks(build: Build, lines: tuple[LoadLine, ...]) -> Iterator[LoadPeak]:
    ratings = {
        (fitted.name, supply): load
        for fitted in build.fittings
        for load, supply in _facets(fitted)
    }
    for subject, supply in dict.fromkeys((line.subject, line.supply) for line in lines):
        own = [line for line in lines if (line.subject, line.supply) == (subject, supply)]
        load = ratings.get((subject, supply))
        yield LoadPeak(
            subject=subject,
            supply=supply,
            summer_w=max(line.draw_w * (line.summer_use_h_per_day > 0.0) for line in own),
            winter_w=max(line.draw_w * (line.winter_use_h_per_day > 0.0) for line in own),
            most_w=max(line.draw_w for line in own),
            surge_w=0.0 if load is None else load.surge_w,
            nominal_v=load.nominal_v if isinstance(load, DcLoad) else 0.0,
        )


def _standby(
    subject: str,
    draw_w: float,
    supply: Supply = Supply.DC,
    *,
    summer_h: float = DAY_H,
    winter_h: float = DAY_H,
) -> LoadLine:
    return _line(
        Mode(name="standby", draw_w=draw_w),
        subject=subject,
        supply=supply,
        summer_h=summer_h,
        winter_h=winter_h,
        standby=True,
    )


def _line(
    mode: Mode,
    *,
    subject: str,
    supply: Supply,
    summer_h: float,
    winter_h: float,
    standby: bool = False,
) -> LoadLine:
    def energy_wh_per_day(hours_h: float) -> float:
        return mode_energy_wh_per_day(
            draw_w=mode.draw_w, duty_frac=mode.duty_frac, use_h_per_day=hours_h
        )

    return LoadLine(
        subject=subject,
        mode=mode.name,
        supply=supply,
        draw_w=mode.draw_w,
        duty_frac=mode.duty_frac,
        summer_use_h_per_day=summer_h,
        winter_use_h_per_day=winter_h,
        summer_wh_per_day=energy_wh_per_day(summer_h),
        winter_wh_per_day=energy_wh_per_day(winter_h),
        standby=standby,
    )
