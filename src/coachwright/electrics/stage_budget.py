"""Put one season's typical day together."""

from dataclasses import dataclass

from coachwright import reference
from coachwright.electrics.budget import (
    UNKNOWN,
    Balance,
    balance,
    driving_days_frac,
    event_energy_wh_per_day,
    independence,
)
from coachwright.electrics.loads import DAY_H
from coachwright.electrics.model import (
    Bank,
    ChargeLimit,
    DailyUse,
    Independence,
    Season,
    SeasonBudget,
)
from coachwright.electrics.rate import rate_factor
from coachwright.electrics.solar import SunDay, sun_day
from coachwright.electrics.stage_array import outputs
from coachwright.electrics.stage_charging import DRIVING, HOOKUP, charge_limits
from coachwright.model.build import Build
from coachwright.model.site import poorest_month


def sun_tolerance_frac() -> float:
    """Return the half-width of the sun's tolerance."""
    return reference.limit("electrics.sun-tolerance").value


def load_tolerance_frac() -> float:
    """Return the half-width of the loads' tolerance."""
    return reference.limit("electrics.load-tolerance").value


def budget(
    build: Build, season: Season, use: DailyUse, bank: Bank | None, bank_missing: str
) -> SeasonBudget:
    """Return one season's typical day; what cannot be known without a bank stays None."""
    if bank is None:
        return _without_bank(season, use, bank_missing)
    limits = charge_limits(build, bank, season)
    usable = usable_wh(bank, season, use)
    parked = _sun(build, bank, season, with_folding=True)
    driving = _driving_wh_per_day(build, limits, usable + use.total_wh_per_day)
    hookup = _hookup_wh_per_day(build, limits, usable + use.total_wh_per_day)
    average = None
    if parked is not None:
        moving = _sun(build, bank, season, with_folding=False)
        average = _average_wh_per_day(build, parked, moving or parked)
    result = low = high = None
    if average is not None:
        result, low, high = _balances(
            bank,
            use,
            sun_wh_per_day=average,
            driving_wh_per_day=driving,
            hookup_wh_per_day=hookup,
        )
    return SeasonBudget(
        season=season,
        use=use,
        parked_sun_wh_per_day=parked.energy_wh_per_day if parked else None,
        sun_wh_per_day=average,
        driving_wh_per_day=driving,
        hookup_wh_per_day=hookup,
        storage_loss_wh_per_day=result.storage_loss_wh_per_day if result else None,
        balance_wh_per_day=result.balance_wh_per_day if result else None,
        balance_low_wh_per_day=low.balance_wh_per_day if low else None,
        balance_high_wh_per_day=high.balance_wh_per_day if high else None,
        usable_wh=usable,
        independence=_independence(bank, use, usable, parked),
        limits=limits,
        missing="" if parked else f"sun hours in {season}",
        sun_working=parked.working if parked else None,
        balance_working=result.working if result else None,
    )


def usable_wh(bank: Bank, season: Season, use: DailyUse) -> float:
    """Return what a full bank gives in a season at the season's mean draw [Wh]."""
    energy = bank.cold_usable_wh if season is Season.WINTER else bank.usable_wh
    return energy * rate_factor(
        draw_a=use.total_wh_per_day / DAY_H / bank.nominal_v,
        capacity_ah=bank.capacity_ah,
        rated_h=bank.rated_h,
        exponent=bank.exponent,
    )


def _without_bank(season: Season, use: DailyUse, missing: str) -> SeasonBudget:
    return SeasonBudget(
        season=season,
        use=use,
        parked_sun_wh_per_day=None,
        sun_wh_per_day=None,
        driving_wh_per_day=None,
        hookup_wh_per_day=None,
        storage_loss_wh_per_day=None,
        balance_wh_per_day=None,
        balance_low_wh_per_day=None,
        balance_high_wh_per_day=None,
        usable_wh=None,
        independence=UNKNOWN,
        limits=(),
        missing=missing,
    )


def _sun(
    build: Build,
    bank: Bank,
    season: Season,
    *,
    with_folding: bool,
) -> SunDay | None:
    """Return a day's sun; None where panels are fitted but the sun hours are not known."""
    given = outputs(build, bank, season, with_folding=with_folding)
    sun = season_sun(build, season)
    if sun is None and given:
        return None
    most = bank.nominal_v * (0.0 if _locked(bank, season) else bank.charge_limit_a)
    powers = {name: output.power_w for name, output in given.items()}
    return sun_day(
        powers_w=powers,
        limit_w=most,
        sun_h_per_day=sun.sun_h_per_day if sun else 0.0,
        sun_source=sun.source if sun else "brief.climate",
        caution=sun.caution if sun else "",
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class SeasonSun:
    """A season's peak-sun hours, where they come from, and how far they may be off."""

    sun_h_per_day: float
    source: str
    caution: str = ""


def season_sun(build: Build, season: Season) -> SeasonSun | None:
    """Return a season's sun: as the brief states it, else of the poorest month of its sites.

    None where the brief states neither.
    """
    climate, warm = build.brief.climate, season is Season.SUMMER
    stated = climate.summer_sun_h_per_day if warm else climate.winter_sun_h_per_day
    if stated is not None:
        return SeasonSun(sun_h_per_day=stated, source="brief.climate")
    found = poorest_month(build.sites, warm=warm)
    if found is None:
        return None
    return SeasonSun(
        sun_h_per_day=found.sun_h_per_day,
        source=f"{found.site.name}, {found.site.origin} year, mean of {found.month}",
        caution=". ".join(each for each in (found.site.caution, found.site.attribution) if each),
    )


def _locked(bank: Bank, season: Season) -> bool:
    return season is Season.WINTER and bank.charge_locked


def _average_wh_per_day(build: Build, parked: SunDay, moving: SunDay) -> float:
    """Return the sun over parked days and driving days; folding panels work on the former."""
    driven = driving_days_frac(parked_d=build.brief.stay.parked_d)
    if build.brief.stay.drive_h_per_day == 0.0:
        driven = 0.0
    return (1.0 - driven) * parked.energy_wh_per_day + driven * moving.energy_wh_per_day


def _limit_w(limits: tuple[ChargeLimit, ...], source: str) -> float:
    return next(one.power_w for one in limits if one.source == source)


def _driving_wh_per_day(build: Build, limits: tuple[ChargeLimit, ...], room_wh: float) -> float:
    return event_energy_wh_per_day(
        power_w=_limit_w(limits, DRIVING),
        hours_h=build.brief.stay.drive_h_per_day,
        room_wh=room_wh,
        share_frac=driving_days_frac(parked_d=build.brief.stay.parked_d),
    )


def _hookup_wh_per_day(build: Build, limits: tuple[ChargeLimit, ...], room_wh: float) -> float:
    return event_energy_wh_per_day(
        power_w=_limit_w(limits, HOOKUP),
        hours_h=reference.limit("electrics.hookup-hours").value,
        room_wh=room_wh,
        share_frac=build.brief.stay.hookup_frac,
    )


def _balances(
    bank: Bank,
    use: DailyUse,
    *,
    sun_wh_per_day: float,
    driving_wh_per_day: float,
    hookup_wh_per_day: float,
) -> tuple[Balance, Balance, Balance]:
    """Return the balance, and with sun and use at their worst and at their best together."""
    sun_tolerance, load_tolerance = sun_tolerance_frac(), load_tolerance_frac()
    middle, low, high = (
        balance(
            sun_wh_per_day=sun_wh_per_day * (1.0 + sign * sun_tolerance),
            driving_wh_per_day=driving_wh_per_day,
            hookup_wh_per_day=hookup_wh_per_day,
            round_trip_frac=bank.round_trip_frac,
            use_wh_per_day=use.total_wh_per_day * (1.0 - sign * load_tolerance),
        )
        for sign in (0.0, -1.0, 1.0)
    )
    return middle, low, high


def _independence(
    bank: Bank, use: DailyUse, full_wh: float, parked: SunDay | None
) -> Independence:
    return independence(
        usable_wh=full_wh,
        use_wh_per_day=use.total_wh_per_day,
        sun_wh_per_day=parked.energy_wh_per_day if parked else None,
        round_trip_frac=bank.round_trip_frac,
        sun_tolerance_frac=sun_tolerance_frac(),
        load_tolerance_frac=load_tolerance_frac(),
        season_d=reference.limit("electrics.season-length").value,
    )
