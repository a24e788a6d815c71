"""Results of the electrics: loads, bank, inverter, array, charging, the day's budget.

Everything here is a *steady* answer: one typical day of the warm and of the cold half-year.  The
hour-by-hour year takes its place later; the records keep the season apart so that it can.
"""

from dataclasses import dataclass
from enum import StrEnum

from coachwright.model.working import Figure, Working


class Season(StrEnum):
    """Half of the year that a steady answer holds for."""

    SUMMER = "summer"
    WINTER = "winter"


class Supply(StrEnum):
    """Where a load gets its power when no shore power is there."""

    DC = "dc"
    INVERTER = "inverter"
    SHORE = "shore only"


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
    surge_w
        At start; not below the larger of the two.
    nominal_v
        For direct-current loads; 0 for others.
    """

    subject: str
    supply: Supply
    summer_w: float
    winter_w: float
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
class Bank:
    """All batteries of the house together.

    Attributes
    ----------
    series_count, parallel_count
        Batteries in one string, and complete strings.
    spare_count
        Batteries that fill no complete string; not counted anywhere.
    system_v
        Class of the system's voltage: 12, 24, 36 or 48 V.
    depth_frac
        Share of the capacity that may be used: the smaller of 1 − reserve and the depth that
        the battery's life is stated for.
    cold_degc
        Temperature of the batteries in the design cold night.
    cold_factor
        Share of the capacity that is left at `cold_degc`.
    usable_wh, cold_usable_wh
        At 25 °C, and in the design cold night.
    charge_locked
        Too cold to be charged in the design cold night.
    """

    names: tuple[str, ...]
    chemistry: str
    kinds: int
    series_count: int
    parallel_count: int
    spare_count: int
    system_v: float
    nominal_v: float
    charge_v: float
    cut_off_v: float
    capacity_ah: float
    rated_h: float
    exponent: float
    depth_frac: float
    charge_limit_a: float
    discharge_limit_a: float
    charge_efficiency_frac: float
    round_trip_frac: float
    resistance_ohm: float | None
    cold_degc: float
    cold_factor: float
    usable_wh: float
    cold_usable_wh: float
    charge_locked: bool
    usable_working: Working
    cold_working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class InverterDuty:
    """What the inverters must give, and what they can.

    Attributes
    ----------
    load_w
        All inverter loads that are used in one season, each in its largest mode, at once.
    surge_demand_w
        The same with the worst single start on top.
    largest_load_w, largest_surge_w
        Of a single load.
    continuous_w, surge_w
        All inverters together.
    largest_continuous_w, largest_rated_surge_w
        Of one inverter.
    nominal_current_a, cut_off_current_a
        From the bank at full load: at its nominal voltage and where the inverter cuts off.
    """

    load_w: float
    surge_demand_w: float
    largest_load: str
    largest_load_w: float
    largest_surge: str
    largest_surge_w: float
    continuous_w: float
    surge_w: float
    largest_continuous_w: float
    largest_rated_surge_w: float
    efficiency_frac: float
    nominal_current_a: float | None
    cut_off_current_a: float | None
    load_working: Working
    surge_working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class ControllerArray:
    """The panels on one charge controller.

    Attributes
    ----------
    series_count, parallel_count
        Panels in one string, and strings side by side.
    cold_open_circuit_v
        Of one string at the design cold night; None where no factor is known that cold.
    by_maker
        The cold voltage rests on the panel maker's coefficient, not on the table.
    circuit_current_a
        1.25 × short-circuit current of all strings.
    reverse_current_a
        Into one faulty string from all others, at 1.25 × short-circuit current.
    series_fuse_a
        What the panels' maker allows; None where the maker says nothing.
    wanted_a
        Rated power over the bank's nominal voltage.
    unlike_frac
        Spread of the panels' rated voltages over the largest.
    """

    controller: str
    panels: tuple[str, ...]
    rated_w: float
    series_count: int
    parallel_count: int
    spare_count: int
    cold_open_circuit_v: float | None
    by_maker: bool
    input_limit_v: float
    circuit_current_a: float
    reverse_current_a: float
    series_fuse_a: float | None
    wanted_a: float | None
    charge_limit_a: float
    unlike_frac: float
    voltage_working: Working | None


@dataclass(frozen=True, kw_only=True, slots=True)
class ChargeLimit:
    """What one source can put into the bank, and what holds it back.

    Attributes
    ----------
    source
        ``"sun"``, ``"driving"`` or ``"hook-up"``.
    offered_a
        What the source could give before any limit of charger or battery.
    charger_a
        Sum of the chargers' own limits.
    current_a
        What reaches the bank.
    limited_by
        In words: ``"charger"``, ``"alternator"``, ``"battery"``, ``"too cold to charge"`` ...
    """

    source: str
    season: Season
    offered_a: float
    charger_a: float
    current_a: float
    power_w: float
    limited_by: str
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
    balance_wh_per_day
        Sun + driving + hook-up − storage loss − use.
    missing
        What is missing where a value is None.
    """

    season: Season
    use: DailyUse
    parked_sun_wh_per_day: float | None
    sun_wh_per_day: float | None
    sun_low_wh_per_day: float | None
    sun_high_wh_per_day: float | None
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
class ShoreDemand:
    """Shore supply against what may run on it at once; volt-amperes counted as watts."""

    supply_w: float
    continuous_w: float
    demand_w: float
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
    charge_time_h: float | None
    summer: SeasonBudget
    winter: SeasonBudget
    runtimes: tuple[RunTime, ...]
    figures: tuple[Figure, ...]
