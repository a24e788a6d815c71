"""Water, gas, heat and air facets."""

from typing import Literal

from pydantic import Field

from coachwright.model.record import (
    Area,
    Conductance,
    Energy,
    Flow,
    Fraction,
    FuelUse,
    GasUse,
    LengthNonNeg,
    LengthPos,
    MassPos,
    Power,
    PowerPos,
    Pressure,
    Record,
    Temperature,
    TimeUse,
    Volume,
    VolumePos,
)


class Tank(Record):
    """Holds water or waste; its shell's mass is in the body."""

    contents: Literal["fresh", "grey", "black"]
    volume_l: VolumePos
    unusable_l: Volume = 0.0
    """What the pump or drain leaves behind."""
    heated: bool = False
    loss_w_per_k: Conductance | None = None
    """Heat lost for each kelvin between water and surroundings."""


class Pump(Record):
    """Moves fresh water; its draw is in the part's DC load."""

    open_flow_l_per_min: Flow
    """Against no pressure."""
    cut_out_kpa: Pressure
    """Pressure at which it stops."""
    efficiency_frac: Fraction = 0.35
    """Hydraulic over electrical power, all losses."""


class WaterHeater(Record):
    """Heats and stores water; each source may be absent (0 W)."""

    volume_l: VolumePos
    set_degc: Temperature = 60.0
    electric_w: Power = 0.0
    fuel_w: Power = 0.0
    """Heat into the water from gas or diesel."""
    engine_w: Power = 0.0
    """Heat from the vehicle's coolant while driving."""
    efficiency_frac: Fraction = 0.85
    """Of the burner, on the lower heating value."""
    loss_w: Power = 0.0
    """Standing loss at the set temperature."""
    frost_valve: bool = False
    """Empties itself before it freezes."""
    mixes_to_degc: Temperature | None = None
    """Warmest water at the taps, where a mixing valve limits it."""


class WaterOutlet(Record):
    """A tap or shower."""

    kind: Literal["tap", "shower", "outside shower"]
    flow_l_per_min: Flow
    hot: bool = False
    air_gap_mm: LengthPos | None = None
    """Spout above the rim of the basin."""
    bore_mm: LengthPos = 12.7


class Toilet(Record):
    """A toilet of any kind."""

    kind: Literal["cassette", "dry", "flushing"]
    waste_l: VolumePos
    flush_l: Volume = 0.0
    """Water for one flush, from its own or the fresh tank."""
    flush_tank_l: Volume = 0.0
    """Its own flush-water tank; 0 where it flushes from the fresh tank."""


class Heater(Record):
    """Heats the air; its electrical draw is in the part's DC or AC load."""

    output_w: PowerPos
    least_output_w: Power = 0.0
    fuel: Literal["diesel", "petrol", "LPG", "electric", "wood"]
    efficiency_frac: Fraction = 0.83
    fuel_use_l_per_h: FuelUse | None = None
    room_sealed: bool = True
    draw_w: Power | None = None
    """Electrical, at full output; the largest mode that is not for the start where not given."""
    least_draw_w: Power | None = None
    """Electrical, at the least output; the smallest such mode where not given."""
    start_wh: Energy | None = None
    """Electrical, for each start; two minutes of the mode for the start where not given."""
    full_to_mm: LengthNonNeg = 0.0
    """Height above the sea up to which it gives its full output."""


class WarmAirOutlet(Record):
    """An outlet of the warm-air duct; within a stall or locker it warms that."""

    share_frac: Fraction
    """Of the air heater's heat."""


class Fridge(Record):
    """A cold box whose draw follows the temperature around it.

    Of the modes of its load the one with the largest duty is taken.
    """

    inside_degc: Temperature = 5.0
    around_degc: Temperature
    """Temperature of the cabin for which that mode's duty is stated."""


class AirConditioner(Record):
    """Cools the air; its electrical draw is in the part's AC or DC load."""

    cooling_w: PowerPos
    """At 35 degC outside, 26.7 degC inside."""
    soft_start: bool = False
    input_w: PowerPos | None = None
    """Electrical, at the same point; the largest mode of its load where not given."""
    curve: Literal["room unit", "split", "inverter split"] = "room unit"
    """How capacity and input move with the temperatures."""
    sensible_frac: Fraction | None = None
    """Share of the cooling that cools and does not dry, at the same point."""


class Fan(Record):
    """Moves air through the cabin."""

    flow_l_per_min: Flow
    closable: bool = True
    free_area_m2: Area | None = None


class GasAppliance(Record):
    """Burns LP gas."""

    input_w: PowerPos
    """Heat released, on the lower heating value, at full use."""
    use_kg_per_h: GasUse
    room_sealed: bool = False
    running_h_per_day: TimeUse | None = None
    """At full use on a usual day, for what runs by itself, such as a fridge; a cooker burns what
    the habits say."""


class GasStore(Record):
    """A cylinder, or a locker with its cylinders."""

    gas_kg: MassPos
    """Gas when full."""
    floor_m2: Area | None = None
    low_vent_m2: Area | None = None
    high_vent_m2: Area | None = None
    outside_access: bool = True
    cylinders: int = Field(default=1, ge=1)
