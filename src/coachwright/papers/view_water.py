"""The water sheet: tanks, hot water, flow, frost, disinfection, gas."""

from dataclasses import dataclass

from coachwright.assess import Assessment
from coachwright.model.build import Build
from coachwright.papers.frame import FrameView, frame
from coachwright.papers.table import Pair, Table
from coachwright.papers.wording import (
    NONE,
    ended,
    part_and_position,
    position_of,
    show,
    spoken,
    words_of,
)
from coachwright.water.model import (
    FrostExposure,
    GasUse,
    HotWater,
    OutletFlow,
    Stores,
    TankDose,
    Water,
)


@dataclass(frozen=True, kw_only=True, slots=True)
class WaterView:
    """Everything on the water sheet."""

    frame: FrameView
    stores: tuple[Pair, ...]
    hot_water: Table
    warm_up: Table
    outlets: Table
    pumps: Table
    frost: Table
    doses: Table
    gas: tuple[Pair, ...]
    gas_note: str
    lockers: Table


def water_view(assessment: Assessment) -> WaterView:
    """Return the water sheet of a build."""
    build, water = assessment.build, assessment.water
    system = build.brief.units
    return WaterView(
        frame=frame(build, title="Water sheet", cautions=("water", "gas", "electricity")),
        stores=_stores(water.stores, system),
        hot_water=_hot_water(build, water.hot_water),
        warm_up=_warm_up(build, water.hot_water),
        outlets=_outlets(build, water.outlets),
        pumps=_pumps(build, water),
        frost=_frost(build, water.frost),
        doses=_doses(build, water),
        gas=_gas(water.gas, system) if water.gas else (),
        gas_note=f"Missing: {ended(spoken(build, water.gas.missing))}"
        if water.gas and water.gas.missing
        else "",
        lockers=_lockers(build, water),
    )


def _fitted(value: float | None, unit: str, system: str) -> str:
    return "none fitted" if value is None else show(value, unit, system)


def _stores(stores: Stores, system: str) -> tuple[Pair, ...]:
    return (*_volumes(stores, system), *_days(stores, system))


def _volumes(stores: Stores, system: str) -> tuple[Pair, ...]:
    usable = stores.fresh_usable_l
    return (
        Pair(
            label="Fresh water",
            value=_fitted(stores.fresh_l, "L", system),
            note="" if usable is None else f"usable {show(usable, 'L', system)}",
        ),
        Pair(
            label="Grey water",
            value=_fitted(stores.grey_l, "L", system),
            note="room needed for fresh tank and heater: "
            + show(stores.grey_needed_l, "L", system),
        ),
        Pair(label="In the water heater", value=_fitted(stores.heater_l or None, "L", system)),
        Pair(label="Toilet waste", value=_fitted(stores.waste_l, "L", system)),
        Pair(label="Water in full fresh tanks", value=show(stores.fresh_full_kg, "kg", system)),
        Pair(
            label="Water, fresh tanks and heater full",
            value=show(stores.water_full_kg, "kg", system),
        ),
    )


def _days(stores: Stores, system: str) -> tuple[Pair, ...]:
    limiting = f"the {stores.limiting} tank ends the stay" if stores.limiting else ""
    return (
        Pair(label="Days on the fresh tank", value=_fitted(stores.days_fresh_d, "d", system)),
        Pair(label="Days until grey is full", value=_fitted(stores.days_grey_d, "d", system)),
        Pair(label="Days of water", value=show(stores.days_d, "d", system), note=limiting),
        Pair(
            label="Days until the toilet is full", value=_fitted(stores.days_toilet_d, "d", system)
        ),
    )


def _hot_water(build: Build, heaters: tuple[HotWater, ...]) -> Table:
    system = build.brief.units
    return Table(
        heading="Hot water",
        names=(
            "Water heater",
            "Contents",
            "Set to",
            "Mixed at tap",
            "Heat, one filling",
            "Heat, a day",
            "Of the battery",
            "Fuel, a day",
        ),
        rows=tuple(
            (
                part_and_position(build, heater.name),
                show(heater.volume_l, "L", system),
                show(heater.set_degc, "degC", system),
                show(heater.mixed_l, "L", system),
                show(heater.heat_once_wh, "Wh", system),
                show(heater.day_heat_wh_per_day, "Wh/day", system),
                show(heater.battery_wh_per_day, "Wh/day", system),
                _fuel(heater, system),
            )
            for heater in heaters
        ),
    )


def _fuel(heater: HotWater, system: str) -> str:
    if not heater.fuel:
        return NONE
    if heater.gas_kg_per_day is not None:
        return f"{show(heater.gas_kg_per_day, 'kg/day', system)} {heater.fuel}"
    return f"{show(heater.fuel_l_per_day, 'L/day', system)} {heater.fuel}"


def _warm_up(build: Build, heaters: tuple[HotWater, ...]) -> Table:
    system = build.brief.units
    return Table(
        heading="Warm-up from cold",
        names=("Water heater", "Source", "Into the water", "Time"),
        rows=tuple(
            (
                "" if again else part_and_position(build, heater.name),
                _HEAT_WORDS[source.kind],
                show(source.into_water_w, "W", system),
                "never reaches it"
                if source.warm_up_min is None
                else show(source.warm_up_min, "min", system),
            )
            for heater in heaters
            for again, source in enumerate(heater.sources)
        ),
    )


_HEAT_WORDS = {"electric": "electricity", "fuel": "burner", "engine": "engine, driving"}


def _outlets(build: Build, outlets: tuple[OutletFlow, ...]) -> Table:
    system = build.brief.units
    return Table(
        heading="Flow at the outlets",
        names=("Outlet", "Run", "Wanted", "Reached", "Speed in pipe", "Pipe loss", "Height"),
        rows=tuple(
            (
                part_and_position(build, outlet.outlet),
                words_of(outlet.run) if outlet.run else NONE,
                show(outlet.wanted_l_per_min, "L/min", system),
                f"unknown: {spoken(build, outlet.missing)}"
                if outlet.missing
                else show(outlet.flow_l_per_min, "L/min", system),
                show(outlet.speed_m_per_s, "m/s", system),
                show(outlet.loss_kpa, "kPa", system),
                show(outlet.static_kpa, "kPa", system),
            )
            for outlet in outlets
        ),
        note="Each by its worst run and the weakest pump.",
    )


def _pumps(build: Build, water: Water) -> Table:
    system = build.brief.units
    return Table(
        heading="Pumps",
        names=("Pump", "Needs", "States"),
        rows=tuple(
            (
                part_and_position(build, pump.name),
                show(pump.needed_w, "W", system),
                show(pump.stated_w, "W", system),
            )
            for pump in water.pumps
        ),
        note="Power needed at the best point of its curve, and power stated.",
    )


def _frost(build: Build, exposures: tuple[FrostExposure, ...]) -> Table:
    system = build.brief.units
    return Table(
        heading="Frost in the design cold night",
        names=("What", "Stands", "Air round it", "Protected by", "To freezing", "Frozen solid"),
        rows=tuple(
            (
                part_and_position(build, found.name)
                if position_of(build, found.name)
                else f"{words_of(found.name)}, {found.kind}",
                _PLACE_WORDS[found.place],
                show(found.around_degc, "degC", system),
                found.protection or "nothing",
                _until(found.to_zero_h, found, system),
                _until(found.to_solid_h, found, system),
            )
            for found in exposures
        ),
        note="Hours from nightfall, full; unknown where the heat loss is not known.",
    )


_PLACE_WORDS = {"heated": "in heated air", "inside": "inside", "outside": "outside"}


def _until(until_h: float | None, found: FrostExposure, system: str) -> str:
    if until_h is not None:
        return show(until_h, "h", system)
    return "unknown" if found.missing else NONE


def _doses(build: Build, water: Water) -> Table:
    return Table(
        heading="Disinfecting the fresh tanks",
        names=("Tank", "Volume", "Short bath: bleach", "for", "Long bath: bleach", "for"),
        rows=tuple(_dose(build, dose) for dose in water.doses),
        note="Plain household bleach without scent; rinse until it no longer smells.",
    )


def _dose(build: Build, dose: TankDose) -> tuple[str, ...]:
    system = build.brief.units
    strong = show(dose.strong_mg_per_l, "mg/L", system)
    mild = show(dose.mild_mg_per_l, "mg/L", system)
    return (
        part_and_position(build, dose.name),
        show(dose.volume_l, "L", system),
        f"{show(dose.strong_ml, 'mL', system)} ({strong})",
        show(dose.strong_h, "h", system),
        f"{show(dose.mild_ml, 'mL', system)} ({mild})",
        show(dose.mild_h, "h", system),
    )


def _gas(gas: GasUse, system: str) -> tuple[Pair, ...]:
    return (
        Pair(label="LP gas aboard", value=show(gas.gas_kg, "kg", system)),
        Pair(
            label="Days of gas in winter",
            value=show(gas.days_d, "d", system),
            note=_most_days(gas, system),
        ),
        Pair(
            label="Cooking, heat in the pot", value=show(gas.cooking_wh_per_day, "Wh/day", system)
        ),
        Pair(
            label="Hot water, heat in the water",
            value=show(gas.hot_water_wh_per_day, "Wh/day", system),
        ),
        Pair(
            label="Heating, heat in the air on a winter's day",
            value=show(gas.heating_wh_per_day, "Wh/day", system),
        ),
        Pair(
            label="Burned by what runs by itself",
            value=show(gas.running_wh_per_day, "Wh/day", system),
        ),
    )


def _most_days(gas: GasUse, system: str) -> str:
    if gas.days_d is None or gas.most_days_d is None or gas.most_days_d == gas.days_d:
        return ""
    return f"heaters turned down: {show(gas.most_days_d, 'd', system)}"


def _lockers(build: Build, water: Water) -> Table:
    system = build.brief.units
    return Table(
        heading="Gas lockers",
        names=("Locker", "Gas", "Low vent needed", "Low vent", "High vent needed", "High vent"),
        rows=tuple(
            (
                part_and_position(build, locker.name),
                show(locker.gas_kg, "kg", system),
                show(locker.low_needed_mm2, "mm2", system),
                show(locker.low_mm2, "mm2", system),
                "none"
                if locker.high_needed_mm2 == 0
                else show(locker.high_needed_mm2, "mm2", system),
                NONE if locker.high_needed_mm2 == 0 else show(locker.high_mm2, "mm2", system),
            )
            for locker in water.lockers
        ),
    )
