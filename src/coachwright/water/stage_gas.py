"""Take the gas store, its users and the alarms of a build to their subjects."""

from collections.abc import Iterator

from coachwright.model.brief import Jurisdiction
from coachwright.model.build import INSIDE, Build, Fitted
from coachwright.model.facets import GasAppliance, GasStore
from coachwright.model.working import Figure
from coachwright.reference import limit
from coachwright.water.assumptions import HOB_FRAC
from coachwright.water.gas import (
    GasDays,
    GasLoad,
    burned_wh_per_day,
    gas_days,
    heating_range,
    vent_mm2,
)
from coachwright.water.model import GasUse, HotWater, Locker
from coachwright.water.vents import free_mm2


def take_lockers(build: Build) -> tuple[Locker, ...]:
    """Return the vents of each gas locker; cylinders in the open air have none."""
    return tuple(
        _locker(build, fitted.name, store)
        for fitted in build.fittings
        if (store := fitted.part.gas_store) is not None and _shut_in(build, fitted, store)
    )


def _shut_in(build: Build, fitted: Fitted, store: GasStore) -> bool:
    """Whether a store is a locker, and not a cylinder within another one."""
    for name in (fitted.fitting.on, fitted.fitting.within):
        holder = build.fitted(name)
        if holder is not None and holder.part.gas_store is not None:
            return False
    stated = (store.floor_m2, store.low_vent_m2, store.high_vent_m2)
    return fitted.fitting.mounting in INSIDE or any(value is not None for value in stated)


def _locker(build: Build, name: str, store: GasStore) -> Locker:
    low_needed, high_needed = _needed_mm2(build, store)
    return Locker(
        name=name,
        cylinders=store.cylinders,
        outside_access=store.outside_access,
        gas_kg=store.gas_kg,
        low_needed_mm2=low_needed,
        low_mm2=None if store.low_vent_m2 is None else free_mm2(areas_m2=(store.low_vent_m2,)),
        high_needed_mm2=high_needed,
        high_mm2=None if store.high_vent_m2 is None else free_mm2(areas_m2=(store.high_vent_m2,)),
    )


def _needed_mm2(build: Build, store: GasStore) -> tuple[float | None, float | None]:
    """Return what the low and the high vent need; 0 for a high vent that may be left out."""
    if store.floor_m2 is None:
        return None, None
    if build.brief.jurisdiction is Jurisdiction.US:
        share = limit("water.locker-us-each").value
        each = vent_mm2(floor_m2=store.floor_m2, share_frac=share)
        return each, each
    if store.high_vent_m2 is None:
        low = vent_mm2(
            floor_m2=store.floor_m2,
            share_frac=limit("water.locker-low-alone").value,
            least_mm2=limit("water.locker-low-alone-least").value,
        )
        return low, 0.0
    each = vent_mm2(
        floor_m2=store.floor_m2,
        share_frac=limit("water.locker-split").value,
        least_mm2=limit("water.locker-split-least").value,
    )
    return each, each


def take_gas(
    build: Build, hot_water: tuple[HotWater, ...]
) -> tuple[GasUse | None, tuple[Figure, ...]]:
    """Return the gas aboard and its days, with their figure; None without a store."""
    stores = [f.part.gas_store for f in build.fittings if f.part.gas_store is not None]
    if not stores:
        return None, ()
    gas_kg = sum(store.gas_kg for store in stores)
    steady = [*_cooking(build), *_running(build), *_hot_water(hot_water)]
    most, least, missing = _heating(build)
    burns = _burning(steady, most)
    if any(load.efficiency_frac <= 0 for load in burns):
        missing = missing or "efficiency of what burns gas"
    if not burns:
        missing = missing or "anything that burns gas"
    days = None if missing else gas_days(gas_kg=gas_kg, loads=burns)
    turned_down = None if missing else gas_days(gas_kg=gas_kg, loads=_burning(steady, least))
    use = GasUse(
        gas_kg=gas_kg,
        cooking_wh_per_day=_heat_wh_per_day(burns, "cooking"),
        running_wh_per_day=_heat_wh_per_day(burns, "what runs by itself"),
        hot_water_wh_per_day=_heat_wh_per_day(burns, "warm water"),
        heating_wh_per_day=None if missing else _heat_wh_per_day(burns, "heating"),
        days_d=days.days_d if days else None,
        most_days_d=turned_down.days_d if turned_down else None,
        missing=missing,
    )
    return use, (_figure(days, turned_down, missing),)


def _burning(steady: list[GasLoad], heating: list[GasLoad]) -> list[GasLoad]:
    return [load for load in (*steady, *heating) if load.heat_wh_per_day > 0]


def _heat_wh_per_day(loads: list[GasLoad], what: str) -> float:
    return sum(load.heat_wh_per_day for load in loads if load.what == what)


def _own_burners(build: Build) -> Iterator[GasAppliance]:
    """Yield what burns gas and heats neither air nor water."""
    for fitted in build.fittings:
        part = fitted.part
        if part.gas_appliance and not part.heater and not part.water_heater:
            yield part.gas_appliance


def _cooking(build: Build) -> Iterator[GasLoad]:
    """Yield the cooking, where there is a burner that does not run by itself."""
    if any(burner.running_h_per_day is None for burner in _own_burners(build)):
        yield GasLoad(
            what="cooking",
            heat_wh_per_day=build.brief.habits.cooking_wh_per_day,
            efficiency_frac=HOB_FRAC,
        )


def _running(build: Build) -> Iterator[GasLoad]:
    for burner in _own_burners(build):
        if burner.running_h_per_day is not None:
            burned = burned_wh_per_day(
                input_w=burner.input_w, running_h_per_day=burner.running_h_per_day
            )
            yield GasLoad(what="what runs by itself", heat_wh_per_day=burned, efficiency_frac=1.0)


def _hot_water(hot_water: tuple[HotWater, ...]) -> Iterator[GasLoad]:
    """Yield the warm water: once, by the gas heater that takes most."""
    on_gas = [heater for heater in hot_water if heater.fuel == "LPG"]
    if on_gas:
        most = max(on_gas, key=lambda heater: heater.day_heat_wh_per_day)
        yield GasLoad(
            what="warm water",
            heat_wh_per_day=most.day_heat_wh_per_day,
            efficiency_frac=most.efficiency_frac,
        )


def _heating(build: Build) -> tuple[list[GasLoad], list[GasLoad], str]:
    """Return the most and the least that gas air heaters burn, or what is missing."""
    most: list[GasLoad] = []
    least: list[GasLoad] = []
    for fitted in build.fittings:
        heater = fitted.part.heater
        if heater is None or heater.fuel != "LPG":
            continue
        full_h, other_h = _winter_h_per_day(fitted)
        if full_h + other_h <= 0:
            return [], [], f"hours that {fitted.name} runs in winter"
        heat = heating_range(
            output_w=heater.output_w,
            least_output_w=heater.least_output_w,
            full_h_per_day=full_h,
            other_h_per_day=other_h,
        )
        for loads, heat_wh_per_day in (
            (most, heat.most_wh_per_day),
            (least, heat.least_wh_per_day),
        ):
            load = GasLoad(
                what="heating",
                heat_wh_per_day=heat_wh_per_day,
                efficiency_frac=heater.efficiency_frac,
            )
            loads.append(load)
    return most, least, ""


def _winter_h_per_day(fitted: Fitted) -> tuple[float, float]:
    """Return the hours in the mode that draws most, and in the others."""
    own = {use.mode: use.winter_use_h_per_day for use in fitted.fitting.use}
    load = fitted.part.dc_load
    modes = sorted(load.modes, key=lambda mode: mode.draw_w) if load is not None else []
    hours = [own.get(m.name, m.winter_use_h_per_day) * m.duty_frac for m in modes]
    return (hours[-1], sum(hours[:-1])) if hours else (0.0, 0.0)


def _figure(days: GasDays | None, turned_down: GasDays | None, missing: str) -> Figure:
    ranged = days is not None and turned_down is not None and turned_down.days_d > days.days_d
    return Figure(
        name="water.gas-days",
        label="Days on gas in winter, at least" if ranged else "Days on gas in winter",
        value=days.days_d if days else None,
        unit="d",
        working=days.working if days else None,
        high=turned_down.days_d if turned_down and ranged else None,
        missing=missing,
    )


def take_combustion(build: Build) -> tuple[str, ...]:
    """Return the fittings that burn something."""
    return tuple(fitted.name for fitted in build.fittings if _burns(fitted))


def _burns(fitted: Fitted) -> bool:
    part = fitted.part
    heater, water = part.heater, part.water_heater
    return (
        part.gas_appliance is not None
        or (heater is not None and heater.fuel != "electric")
        or (water is not None and water.fuel_w > 0)
    )


def take_alarms(build: Build) -> tuple[str, ...]:
    """Return what the alarms of the build sense, each once."""
    detectors = (fitted.part.detector for fitted in build.fittings)
    sensed = {senses for detector in detectors if detector for senses in detector.senses}
    return tuple(sorted(sensed))
