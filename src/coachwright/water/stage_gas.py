"""Take the gas store, its users, alarms and fixed vents of a build to their subjects."""

from collections.abc import Iterator

from coachwright.model.brief import Jurisdiction
from coachwright.model.build import INSIDE, Build, Fitted, Mounting
from coachwright.model.facets import GasStore
from coachwright.model.placement import placed
from coachwright.model.working import Figure
from coachwright.reference import limit
from coachwright.water.assumptions import HOB_FRAC
from coachwright.water.gas import GasDays, GasLoad, gas_days, heating_wh_per_day, vent_mm2
from coachwright.water.model import FixedVents, GasUse, HotWater, Locker
from coachwright.water.vents import free_mm2, plan_m2, vents_needed

_HIGH_IN_ROOF = (Mounting.ROOF, Mounting.CEILING)


def take_lockers(build: Build) -> tuple[Locker, ...]:
    """Return the vents of each gas locker; cylinders in the open air have none."""
    return tuple(
        _locker(build, fitted.name, store)
        for fitted in build.fittings
        if (store := fitted.part.gas_store) is not None and _shut_in(fitted, store)
    )


def _shut_in(fitted: Fitted, store: GasStore) -> bool:
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
    loads = [*_cooking(build), *_hot_water(hot_water)]
    heating, missing = _heating(build)
    gas_kg = sum(store.gas_kg for store in stores)
    burns = [load for load in (*loads, *heating) if load.heat_wh_per_day > 0]
    if any(load.efficiency_frac <= 0 for load in burns):
        missing = missing or "efficiency of what burns gas"
    if not burns:
        missing = missing or "anything that burns gas"
    days = None if missing else gas_days(gas_kg=gas_kg, loads=burns)
    use = GasUse(
        gas_kg=gas_kg,
        cooking_wh_per_day=_heat_wh_per_day(burns, "cooking"),
        hot_water_wh_per_day=_heat_wh_per_day(burns, "warm water"),
        heating_wh_per_day=None if missing else _heat_wh_per_day(burns, "heating"),
        days_d=days.days_d if days else None,
        missing=missing,
    )
    return use, (_figure(days, missing),)


def _heat_wh_per_day(loads: list[GasLoad], what: str) -> float:
    return sum(load.heat_wh_per_day for load in loads if load.what == what)


def _cooking(build: Build) -> Iterator[GasLoad]:
    """Yield the cooking, where something burns gas that heats neither air nor water."""
    if any(
        f.part.gas_appliance and not f.part.heater and not f.part.water_heater
        for f in build.fittings
    ):
        yield GasLoad(
            what="cooking",
            heat_wh_per_day=build.brief.habits.cooking_wh_per_day,
            efficiency_frac=HOB_FRAC,
        )


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


def _heating(build: Build) -> tuple[list[GasLoad], str]:
    loads = []
    for fitted in build.fittings:
        heater = fitted.part.heater
        if heater is None or heater.fuel != "LPG":
            continue
        run_h_per_day = _winter_h_per_day(fitted)
        if run_h_per_day <= 0:
            return [], f"hours that {fitted.name} runs in winter"
        heat = heating_wh_per_day(output_w=heater.output_w, run_h_per_day=run_h_per_day)
        loads.append(
            GasLoad(what="heating", heat_wh_per_day=heat, efficiency_frac=heater.efficiency_frac)
        )
    return loads, ""


def _winter_h_per_day(fitted: Fitted) -> float:
    """Return the hours that a heater runs, by the use of its electrical load."""
    own = {use.mode: use.winter_use_h_per_day for use in fitted.fitting.use}
    load = fitted.part.dc_load
    modes = load.modes if load is not None else ()
    return sum(own.get(mode.name, mode.winter_use_h_per_day) * mode.duty_frac for mode in modes)


def _figure(days: GasDays | None, missing: str) -> Figure:
    return Figure(
        name="water.gas-days",
        label="Days on gas in winter",
        value=days.days_d if days else None,
        unit="d",
        working=days.working if days else None,
        missing=missing,
    )


def take_vents(build: Build) -> FixedVents:
    """Return the fixed vents of the living space."""
    outside = build.vehicle.outside
    area = plan_m2(length_mm=outside.length_mm, width_mm=outside.width_mm)
    unsealed = any(_unsealed(fitted) for fitted in build.fittings)
    needed = vents_needed(area_m2=area, unsealed_burner=unsealed)
    vents = list(_vents(build))
    roof = [m2 for where, m2 in vents if where == "roof"]
    wall = [m2 for where, m2 in vents if where == "wall"]
    wall_will_do = needed is not None and needed.wall_mm2 is not None
    in_roof = bool(roof) or not wall or not wall_will_do
    high_needed = None if needed is None else (needed.roof_mm2 if in_roof else needed.wall_mm2)
    return FixedVents(
        plan_m2=area,
        unsealed_burner=unsealed,
        in_roof=in_roof,
        high_needed_mm2=high_needed,
        low_needed_mm2=None if needed is None else needed.low_mm2,
        high_mm2=free_mm2(areas_m2=roof if in_roof else wall) if vents else None,
        low_mm2=free_mm2(areas_m2=[m2 for where, m2 in vents if where == "low"])
        if vents
        else None,
        status="read" if needed is None else needed.status,
    )


def _unsealed(fitted: Fitted) -> bool:
    if fitted.fitting.mounting not in INSIDE:
        return False
    burner, heater = fitted.part.gas_appliance, fitted.part.heater
    open_heater = heater is not None and heater.fuel != "electric" and not heater.room_sealed
    return open_heater or (burner is not None and not burner.room_sealed)


def _vents(build: Build) -> Iterator[tuple[str, float]]:
    """Yield where each vent that cannot be closed sits, and its free area."""
    low_mm = limit("water.low-vent-height").value
    clear_mm = limit("water.high-vent-over-bed").value
    beds = [placed(fitted).high_mm[2] for fitted in build.having("bed")]
    for fitted in build.fittings:
        area_m2 = _fixed_m2(fitted)
        if area_m2 is None:
            continue
        lower_edge_mm = placed(fitted).low_mm[2]
        if fitted.fitting.mounting in _HIGH_IN_ROOF:
            yield "roof", area_m2
        elif lower_edge_mm <= low_mm:
            yield "low", area_m2
        elif lower_edge_mm - max(beds, default=0.0) >= clear_mm:
            yield "wall", area_m2
        else:
            yield "between", area_m2


def _fixed_m2(fitted: Fitted) -> float | None:
    opening, fan = fitted.part.opening, fitted.part.fan
    if opening is not None and opening.free_vent_m2 is not None:
        return opening.free_vent_m2
    return fan.free_area_m2 if fan is not None and not fan.closable else None


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
