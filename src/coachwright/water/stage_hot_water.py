"""Take the water heaters of a build to their subjects."""

from typing import Literal

from coachwright.model.build import Build, Fitted
from coachwright.model.facets import WaterHeater
from coachwright.model.working import Figure
from coachwright.water.assumptions import COLD_INLET_DEGC, TAP_DEGC
from coachwright.water.fuel import drawn_wh_per_day, fuel_l_per_day, gas_kg_per_day
from coachwright.water.hot_water import (
    DayHeat,
    WarmUp,
    day_heat,
    heat_wh,
    mixed_l,
    warm_up,
)
from coachwright.water.model import HeatSource, HotWater
from coachwright.water.tanks import water_mass

Fuel = Literal["LPG", "diesel", "petrol", ""]


def take_hot_water(build: Build) -> tuple[tuple[HotWater, ...], tuple[Figure, ...]]:
    """Return the water heaters, with their figures."""
    heaters = [(f, f.part.water_heater) for f in build.fittings if f.part.water_heater]
    day = _day(build, sum(heater.loss_w for _, heater in heaters))
    figures = [
        Figure(
            name="water.hot-energy-per-day",
            label="Heat for warm water in a day",
            value=day.heat_wh_per_day,
            unit="Wh/day",
            working=day.working,
        )
    ]
    made = []
    names: set[str] = set()
    for fitted, heater in heaters:
        warmed = [(kind, power, _warm_up(heater, power)) for kind, power in _powers(heater)]
        made.append(_hot_water(build, fitted, heater, warmed))
        for kind, _, up in warmed:
            name = f"water.warm-up-{kind}"
            name = f"{name}-{fitted.name}" if name in names else name
            names.add(name)
            figures.append(_figure(name, f"Warm-up of {fitted.name}, {kind}", up))
    return tuple(made), tuple(figures)


def _day(build: Build, loss_w: float) -> DayHeat:
    return day_heat(
        travellers=len(build.brief.travellers),
        tap_l_per_day=build.brief.habits.hot_water_l_per_day,
        tap_degc=TAP_DEGC,
        cold_degc=COLD_INLET_DEGC,
        loss_w=loss_w,
    )


def _powers(heater: WaterHeater) -> list[tuple[Literal["electric", "fuel", "engine"], float]]:
    powers: list[tuple[Literal["electric", "fuel", "engine"], float]] = [
        ("electric", heater.electric_w),
        ("fuel", heater.fuel_w),
        ("engine", heater.engine_w),
    ]
    return [(kind, power) for kind, power in powers if power > 0]


def _warm_up(heater: WaterHeater, into_water_w: float) -> WarmUp:
    return warm_up(
        mass_kg=water_mass(volume_l=heater.volume_l).water_kg,
        from_degc=COLD_INLET_DEGC,
        to_degc=heater.set_degc,
        into_water_w=into_water_w,
        loss_w=heater.loss_w,
    )


def _hot_water(
    build: Build,
    fitted: Fitted,
    heater: WaterHeater,
    warmed: list[tuple[Literal["electric", "fuel", "engine"], float, WarmUp]],
) -> HotWater:
    heat_wh_per_day = _day(build, heater.loss_w).heat_wh_per_day
    fuel = _fuel(build, fitted) if heater.fuel_w > 0 else ""
    burned = None
    if fuel and heater.efficiency_frac > 0:
        burned = drawn_wh_per_day(
            heat_wh_per_day=heat_wh_per_day, efficiency_frac=heater.efficiency_frac
        )
    return HotWater(
        name=fitted.name,
        volume_l=heater.volume_l,
        set_degc=heater.set_degc,
        mixes_to_degc=heater.mixes_to_degc,
        sources=tuple(
            HeatSource(kind=kind, into_water_w=power, warm_up_min=up.warm_up_min)
            for kind, power, up in warmed
        ),
        heat_once_wh=heat_wh(
            mass_kg=water_mass(volume_l=heater.volume_l).water_kg,
            from_degc=COLD_INLET_DEGC,
            to_degc=heater.set_degc,
        ),
        mixed_l=mixed_l(
            volume_l=heater.volume_l,
            hot_degc=heater.set_degc,
            cold_degc=COLD_INLET_DEGC,
            tap_degc=TAP_DEGC,
        ),
        day_heat_wh_per_day=heat_wh_per_day,
        battery_wh_per_day=_battery_wh_per_day(build, fitted, heater, heat_wh_per_day),
        fuel=fuel,
        efficiency_frac=heater.efficiency_frac,
        gas_kg_per_day=gas_kg_per_day(burned_wh_per_day=burned)
        if burned is not None and fuel == "LPG"
        else None,
        fuel_l_per_day=fuel_l_per_day(burned_wh_per_day=burned, fuel=fuel)
        if burned is not None and fuel in ("diesel", "petrol")
        else None,
    )


def _fuel(build: Build, fitted: Fitted) -> Fuel:
    """Return what the burner burns: LP gas, its air heater's fuel, or the vehicle's."""
    heater = fitted.part.heater
    if fitted.part.gas_appliance is not None or (heater and heater.fuel == "LPG"):
        return "LPG"
    kind = heater.fuel if heater is not None else build.vehicle.fuel.kind
    if kind == "diesel":
        return "diesel"
    return "petrol" if kind == "petrol" else ""


def _battery_wh_per_day(
    build: Build, fitted: Fitted, heater: WaterHeater, heat_wh_per_day: float
) -> float | None:
    if heater.electric_w <= 0:
        return 0.0
    if fitted.part.ac_load is not None:
        if fitted.part.ac_load.supply == "shore only":
            return 0.0
        shares = [f.part.inverter.efficiency_frac for f in build.fittings if f.part.inverter]
        worst = min(shares, default=0.0)
        if worst <= 0:
            return None
        return drawn_wh_per_day(heat_wh_per_day=heat_wh_per_day, efficiency_frac=worst)
    return heat_wh_per_day if fitted.part.dc_load is not None else None


def _figure(name: str, label: str, up: WarmUp) -> Figure:
    missing = "" if up.working else "heat: the source is no larger than the standing loss"
    return Figure(
        name=name,
        label=label,
        value=up.warm_up_min,
        unit="min",
        working=up.working,
        missing=missing,
    )
