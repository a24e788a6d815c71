"""What the water and gas services come to."""

from dataclasses import dataclass
from typing import Literal

from coachwright.model.working import Figure

Place = Literal["heated", "inside", "outside"]
"""Where something stands: in heated air, in the living space, or in the weather."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Stores:
    """The tanks of the build taken together; None where no such tank is fitted.

    Attributes
    ----------
    limiting
        The tank that ends the stay first.
    water_full_kg
        Mass of the water with fresh tanks and water heaters full.
    grey_needed_l
        Fresh and water-heater volume together.
    """

    fresh_l: float | None
    fresh_usable_l: float | None
    grey_l: float | None
    heater_l: float
    waste_l: float | None
    grey_needed_l: float
    days_fresh_d: float | None
    days_grey_d: float | None
    days_d: float | None
    days_toilet_d: float | None
    limiting: Literal["fresh", "grey", ""]
    fresh_full_kg: float
    water_full_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class HeatSource:
    """One source of a water heater.

    Attributes
    ----------
    warm_up_min
        From the cold inlet to the set temperature; None where it never gets there.
    """

    kind: Literal["electric", "fuel", "engine"]
    into_water_w: float
    warm_up_min: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class HotWater:
    """One water heater.

    Attributes
    ----------
    mixed_l
        What its contents give at the tap when mixed with cold water.
    day_heat_wh_per_day
        Warm water for the travellers, and the standing loss of a whole day.
    battery_wh_per_day
        If that heat comes from electricity; 0 where only shore power feeds it, None where it is
        not said what does.
    fuel
        What its burner burns, or empty.
    """

    name: str
    volume_l: float
    set_degc: float
    mixes_to_degc: float | None
    sources: tuple[HeatSource, ...]
    heat_once_wh: float
    mixed_l: float
    day_heat_wh_per_day: float
    battery_wh_per_day: float | None
    fuel: Literal["LPG", "diesel", "petrol", ""]
    efficiency_frac: float
    gas_kg_per_day: float | None
    fuel_l_per_day: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class OutletFlow:
    """What one tap or shower gets, by its worst run and the weakest pump.

    Attributes
    ----------
    missing
        What is missing where `flow_l_per_min` is None.
    pressure_kpa
        At the pump's outlet.
    """

    outlet: str
    run: str
    pump: str
    wanted_l_per_min: float
    flow_l_per_min: float | None
    speed_m_per_s: float | None
    loss_kpa: float | None
    static_kpa: float | None
    pressure_kpa: float | None
    missing: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class PumpCheck:
    """The power a pump needs at its best point against what its part says it draws."""

    name: str
    needed_w: float
    stated_w: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class FrostExposure:
    """A tank, water heater or run on the design cold night.

    Attributes
    ----------
    around_degc
        Air round it.
    protection
        What keeps it from freezing, in words; empty for nothing.
    below_freezing_k
        How far below freezing the air round it is while nothing protects it; 0 otherwise.
    to_zero_h, to_solid_h
        Hours from nightfall, full; None where the heat loss is not known, and where it does not
        freeze.
    """

    name: str
    kind: Literal["tank", "water heater", "run"]
    place: Place
    around_degc: float
    protection: str
    below_freezing_k: float
    to_zero_h: float | None
    to_solid_h: float | None
    missing: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class TankDose:
    """Household bleach for disinfecting one fresh tank."""

    name: str
    volume_l: float
    strong_ml: float
    strong_h: float
    strong_mg_per_l: float
    mild_ml: float
    mild_h: float
    mild_mg_per_l: float


@dataclass(frozen=True, kw_only=True, slots=True)
class OutletGap:
    """Air gap of one outlet: what is needed and what there is."""

    name: str
    needed_mm: float
    gap_mm: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Locker:
    """Vents of one gas locker: what is needed in the build's jurisdiction and what there is.

    Attributes
    ----------
    low_needed_mm2, high_needed_mm2
        None where the floor area is not given; the high one 0 where low vents alone will do.
    """

    name: str
    cylinders: int
    outside_access: bool
    gas_kg: float
    low_needed_mm2: float | None
    low_mm2: float | None
    high_needed_mm2: float | None
    high_mm2: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class GasUse:
    """LP gas aboard and what a winter's day takes of it; None where something is missing.

    Attributes
    ----------
    running_wh_per_day
        Burned by what runs by itself, such as a fridge.
    heating_wh_per_day, days_d
        With air heaters at full output in all of their hours: the most heat, the fewest days.
    most_days_d
        With air heaters turned down in all but the hours of their strongest mode.
    """

    gas_kg: float
    cooking_wh_per_day: float
    running_wh_per_day: float
    hot_water_wh_per_day: float
    heating_wh_per_day: float | None
    days_d: float | None
    most_days_d: float | None
    missing: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class FixedVents:
    """Vents that cannot be closed: what is asked for the plan area and what there is.

    Attributes
    ----------
    unsealed_burner
        A burner inside takes its air from the living space.
    in_roof
        The high vents are counted in the roof; otherwise high in a wall.
    high_needed_mm2, low_needed_mm2
        None where the table has no row.
    high_mm2, low_mm2
        None where no opening of the build states an area that cannot be closed.
    status
        Whether the row of the table was read or is from memory.
    """

    plan_m2: float
    unsealed_burner: bool
    in_roof: bool
    high_needed_mm2: float | None
    low_needed_mm2: float | None
    high_mm2: float | None
    low_mm2: float | None
    status: Literal["read", "memory"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Water:
    """The water and gas services of a build.

    Attributes
    ----------
    gas
        None where no LP gas is aboard.
    combustion
        Fittings that burn something.
    alarms
        What the alarms sense, each once.
    """

    figures: tuple[Figure, ...]
    stores: Stores
    hot_water: tuple[HotWater, ...]
    outlets: tuple[OutletFlow, ...]
    pumps: tuple[PumpCheck, ...]
    frost: tuple[FrostExposure, ...]
    doses: tuple[TankDose, ...]
    gaps: tuple[OutletGap, ...]
    lockers: tuple[Locker, ...]
    gas: GasUse | None
    vents: FixedVents
    combustion: tuple[str, ...]
    alarms: tuple[str, ...]
