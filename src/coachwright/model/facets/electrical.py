"""Electrical facets."""

from typing import Literal

from pydantic import Field

from coachwright.model.record import (
    Charge,
    Current,
    CurrentPos,
    Fraction,
    Power,
    PowerPos,
    Record,
    Resistance,
    Temperature,
    TemperatureCoefficient,
    Time,
    TimeUse,
    Voltage,
)


class Mode(Record):
    """One way a load runs, with the usual use of it in each season."""

    name: str
    draw_w: Power
    """Power drawn while it runs in this mode."""
    duty_frac: Fraction = 1.0
    """Share of the time in use that it really draws."""
    summer_use_h_per_day: TimeUse = 0.0
    winter_use_h_per_day: TimeUse = 0.0


class DcLoad(Record):
    """Draws direct current from the house battery."""

    modes: tuple[Mode, ...] = Field(min_length=1)
    surge_w: Power = 0.0
    """Highest power at start; 0 where it equals the running draw."""
    standby_w: Power = 0.0
    """Drawn all day when switched on but idle."""
    nominal_v: Voltage = 12.0


class AcLoad(Record):
    """Draws alternating current, from the inverter or from shore power."""

    modes: tuple[Mode, ...] = Field(min_length=1)
    surge_w: Power = 0.0
    """Highest power at start; 0 where it equals the running draw."""
    standby_w: Power = 0.0
    supply: Literal["inverter", "shore only"] = "inverter"


class ColdCapacity(Record):
    """Share of the rated capacity at one battery temperature."""

    battery_degc: Temperature
    capacity_frac: Fraction


class Battery(Record):
    """Stores energy for the house."""

    chemistry: Literal["LFP", "AGM", "flooded"]
    nominal_v: Voltage
    capacity_ah: Charge
    rated_h: Time = 20.0
    """Discharge time at which the capacity is stated."""
    peukert_exponent: float = Field(default=1.05, ge=1.0, le=1.6)
    usable_frac: Fraction = 0.8
    """Depth of discharge that its life is stated for."""
    charge_limit_a: CurrentPos
    discharge_limit_a: CurrentPos
    most_parallel: int = Field(default=1, ge=1)
    most_series: int = Field(default=1, ge=1)
    resistance_ohm: Resistance | None = None
    charge_from_degc: Temperature = 0.0
    """Coldest battery temperature at which it may be charged."""
    heated: bool = False
    """Has heating pads that keep it above `charge_from_degc`."""
    charge_efficiency_frac: Fraction = 0.99
    """Charge out over charge in (coulombic)."""
    round_trip_frac: Fraction = 0.95
    """Energy out over energy in."""
    cold_capacity: tuple[ColdCapacity, ...] = ()


class SolarPanel(Record):
    """Turns sun into direct current."""

    rated_w: PowerPos
    open_circuit_v: Voltage
    rated_voltage_v: Voltage
    """At the highest power, standard test conditions."""
    short_circuit_a: CurrentPos
    rated_current_a: CurrentPos
    """At the highest power, standard test conditions."""
    power_coefficient_frac_per_k: TemperatureCoefficient = -0.0035
    voltage_coefficient_frac_per_k: TemperatureCoefficient | None = None
    """Of the open-circuit voltage."""
    series_fuse_a: CurrentPos | None = None
    bonded: bool = False
    """Glued flat to the roof, without air behind it."""
    folding: bool = False
    """Carried inside and set up on the ground; not counted while driving."""


class SolarController(Record):
    """Charges the battery from the panels."""

    input_limit_v: Voltage
    charge_limit_a: CurrentPos
    efficiency_frac: Fraction = 0.97
    battery_v: tuple[Voltage, ...] = (12.0,)
    standby_w: Power = 0.0


class DcdcCharger(Record):
    """Charges the house battery from the vehicle's alternator."""

    charge_limit_a: CurrentPos
    """On the house side."""
    battery_v: Voltage = 12.0
    efficiency_frac: Fraction = 0.9


class ShoreCharger(Record):
    """Charges the house battery from shore power."""

    charge_limit_a: CurrentPos
    battery_v: Voltage = 12.0
    efficiency_frac: Fraction = 0.9


class Inverter(Record):
    """Makes alternating current from the house battery."""

    continuous_w: PowerPos
    surge_w: PowerPos
    standby_w: Power
    """Drawn from the battery while it is on and nothing is connected."""
    efficiency_frac: Fraction = 0.9
    """At the usual load, for planning."""
    battery_v: Voltage = 12.0
    output_v: Voltage = 230.0
    sleeps: bool = False
    """Has a search mode that cuts the standby draw."""


class Outlet(Record):
    """A place to plug something in."""

    kind: Literal["AC", "12 V", "USB"]
    limit_a: Current
    ground_fault_protected: bool = False
