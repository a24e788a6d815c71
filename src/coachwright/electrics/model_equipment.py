"""Results for the equipment: bank, inverter, arrays, charging; `model` hands them on."""

from dataclasses import dataclass
from enum import StrEnum

from coachwright.model.working import Working


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
class BatteryInCold:
    """One battery in the design cold night.

    Attributes
    ----------
    battery_degc
        Temperature taken for it.
    charge_from_degc
        Coldest at which it may be charged.
    """

    name: str
    battery_degc: float
    charge_from_degc: float


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
    current_working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class ChargeLimit:
    """What one source can put into the bank, and what holds it back.

    Attributes
    ----------
    offered_a
        What the source could give before any limit of charger or battery.
    charger_a
        Sum of the chargers' own limits.
    current_a
        What reaches the bank.
    limited_by
        In words: ``"charger"``, ``"alternator"``, ``"battery"``, ``"too cold to charge"`` ...
    full_charge_h
        From 20 % to full at that current; None where nothing reaches the bank.
    """

    source: str
    season: Season
    offered_a: float
    charger_a: float
    current_a: float
    power_w: float
    limited_by: str
    full_charge_h: float | None
    working: Working
    full_charge_working: Working | None


@dataclass(frozen=True, kw_only=True, slots=True)
class ShoreDemand:
    """Shore supply against what may run on it at once; volt-amperes counted as watts."""

    supply_w: float
    continuous_w: float
    demand_w: float
    working: Working
