"""Results of the electrics: loads, bank, inverter, array, charging, the day's budget.

Everything here is a *steady* answer: one typical day of the warm and of the cold half-year.  The
hour-by-hour year takes its place later; the records keep the season apart so that it can.
"""

from dataclasses import dataclass

from coachwright.electrics.model_equipment import (
    Bank,
    BatteryInCold,
    ChargeLimit,
    ControllerArray,
    InverterDuty,
    Season,
    ShoreDemand,
    Supply,
)
from coachwright.model.working import Figure, Working

__all__ = [
    "Bank",
    "BatteryInCold",
    "ChargeLimit",
    "ControllerArray",
    "DailyUse",
    "Electrics",
    "Independence",
    "InverterDuty",
    "LoadLine",
    "LoadPeak",
    "RunTime",
    "Season",
    "SeasonBudget",
    "ShoreDemand",
    "Supply",
]


@dataclass(frozen=True, kw_only=True, slots=True)
class LoadLine:
    """One mode of one load, or its standby draw.

    Attributes
    ----------
    subject
        The fitting's reference name, or the traveller's device.
    draw_w
        At the load's own terminals while it draws.
    summer_wh_per_day, winter_wh_per_day
        At the load's own terminals: draw × duty × hours.
    standby
        Drawn all day, not in use.
    """

    subject: str
    mode: str
    supply: Supply
    draw_w: float
    duty_frac: float
    summer_use_h_per_day: float
    winter_use_h_per_day: float
    summer_wh_per_day: float
    winter_wh_per_day: float
    standby: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class LoadPeak:
    """The most that one load draws at once.

    Attributes
    ----------
    summer_w, winter_w
        Largest mode that is used in the season, standby included; 0 where it is not used.
    most_w
        Largest mode, used or not.
    surge_w
        At start; 0 where it starts softly.
    nominal_v
        For direct-current loads; 0 for others.
    """

    subject: str
    supply: Supply
    summer_w: float
    winter_w: float
    most_w: float
    surge_w: float
    nominal_v: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class DailyUse:
    """What a day takes out of the battery.

    Attributes
    ----------
    dc_wh_per_day
        By direct-current loads, standby included, inverters' own standby not.
    ac_wh_per_day
        At the terminals of the loads behind the inverter.
    inverter_loss_wh_per_day
        Lost in the inverter while it serves them.
    inverter_standby_wh_per_day
        By inverters that are on with nothing connected.
    total_wh_per_day
        Sum of the four: out of the battery.
    shore_only_wh_per_day
        By loads that run on shore power alone; not in the total.
    """

    dc_wh_per_day: float
    ac_wh_per_day: float
    inverter_loss_wh_per_day: float
    inverter_standby_wh_per_day: float
    total_wh_per_day: float
    shore_only_wh_per_day: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Independence:
    """Days parked without shore power or driving until the bank reaches its reserve.

    Attributes
    ----------
    days_d, low_d, high_d
        With sun; the bounds take the tolerances of sun and use together.
    without_sun_d
        As if no sun came at all.
    ends_at_season
        The answer ended at the half-year that the season's sun figure holds for.
    """

    days_d: float | None
    low_d: float | None
    high_d: float | None
    without_sun_d: float | None
    ends_at_season: bool
    working: Working | None
    without_sun_working: Working | None


@dataclass(frozen=True, kw_only=True, slots=True)
class SeasonBudget:
    """One typical day of a season, averaged over the stay pattern.

    Attributes
    ----------
    parked_sun_wh_per_day
        Into the bank on a parked day, folding panels set up.
    sun_wh_per_day, driving_wh_per_day, hookup_wh_per_day
        Into the bank, averaged over parked and driving days: the most that each can bring.
    storage_loss_wh_per_day
        Lost between charging and use.
    usable_wh
        Of the full bank at the season's temperature and its mean draw.
    balance_wh_per_day
        Sun + driving + hook-up − storage loss − use.
    missing
        What is missing where a value is None.
    """

    season: Season
    use: DailyUse
    parked_sun_wh_per_day: float | None
    sun_wh_per_day: float | None
    driving_wh_per_day: float | None
    hookup_wh_per_day: float | None
    storage_loss_wh_per_day: float | None
    balance_wh_per_day: float | None
    balance_low_wh_per_day: float | None
    balance_high_wh_per_day: float | None
    usable_wh: float | None
    independence: Independence
    limits: tuple[ChargeLimit, ...]
    missing: str = ""
    sun_working: Working | None = None
    balance_working: Working | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class RunTime:
    """How long a full bank carries one load.

    Attributes
    ----------
    alone_h
        Clock hours with nothing else on.
    with_others_h
        Clock hours together with what is always on; the rest of the day's loads are off.
    cold_alone_h
        Alone, in the design cold night.
    """

    subject: str
    mode: str
    supply: Supply
    draw_w: float
    duty_frac: float
    alone_h: float
    with_others_h: float
    cold_alone_h: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Electrics:
    """Everything that the electrics say about a build.

    Attributes
    ----------
    bank
        None where there is no battery, or where unlike batteries make it unanswerable.
    bank_missing
        Why `bank` is None.
    base_w
        What is always on, at the bank's terminals: standby draws and the inverter's own.
    alternator_share_a
        What the vehicle's alternator can spare for the house.
    dcdc_input_a
        What the DC-DC chargers ask of the alternator at their full current.
    simultaneous_a
        All loads of one season at once, from the bank at its cut-off voltage.
    largest_single, largest_single_a
        The single load that takes most, at the bank's nominal voltage.
    """

    loads: tuple[LoadLine, ...]
    peaks: tuple[LoadPeak, ...]
    bank: Bank | None
    bank_missing: str
    in_cold: tuple[BatteryInCold, ...]
    base_w: float
    inverter: InverterDuty | None
    arrays: tuple[ControllerArray, ...]
    panels_without_controller: tuple[str, ...]
    shore: ShoreDemand
    alternator_share_a: float
    dcdc_input_a: float
    simultaneous_a: float | None
    largest_single: str
    largest_single_a: float | None
    summer: SeasonBudget
    winter: SeasonBudget
    runtimes: tuple[RunTime, ...]
    figures: tuple[Figure, ...]
