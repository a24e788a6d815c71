"""Take the bank out of a build."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.electrics.battery import (
    Arrangement,
    Points,
    UsableEnergy,
    arrangement,
    battery_degc,
    cold_factor,
    system_voltage,
    usable_energy,
    usual_cold_points,
)
from coachwright.electrics.model import Bank, BatteryInCold
from coachwright.model.build import INSIDE, Build, Fitted
from coachwright.model.facets import Battery

LITHIUM = "LFP"


@dataclass(frozen=True, kw_only=True, slots=True)
class Stated:
    """The system voltage that one device is made for."""

    name: str
    battery_v: tuple[float, ...]


def batteries(build: Build) -> Iterator[tuple[Fitted, Battery]]:
    """Yield the batteries of a build."""
    for fitted in build.having("battery"):
        if fitted.part.battery is not None:
            yield fitted, fitted.part.battery


def stated_voltages(build: Build) -> Iterator[Stated]:
    """Yield what each device on the bank is made for: inverters and chargers.

    A device that does several of these is named once where they agree.
    """
    for fitted in build.fittings:
        part = fitted.part
        stated: list[tuple[float, ...]] = [
            (facet.battery_v,)
            for facet in (part.inverter, part.shore_charger, part.dcdc_charger)
            if facet is not None
        ]
        if part.solar_controller is not None:
            stated.append(part.solar_controller.battery_v)
        for battery_v in dict.fromkeys(stated):
            yield Stated(name=fitted.name, battery_v=battery_v)


def in_cold(build: Build) -> tuple[BatteryInCold, ...]:
    """Return the temperature of each battery in the design cold night."""
    return tuple(
        BatteryInCold(
            name=fitted.name,
            battery_degc=_degc(build, fitted, battery),
            charge_from_degc=battery.charge_from_degc,
        )
        for fitted, battery in batteries(build)
    )


def bank(build: Build, cold: tuple[BatteryInCold, ...]) -> tuple[Bank | None, str]:
    """Return the bank, or None and what is missing for it."""
    found = [battery for _, battery in batteries(build)]
    if not found:
        return None, "a battery"
    if len({(one.chemistry, one.nominal_v) for one in found}) > 1:
        return None, "a bank of one chemistry and voltage"
    joined = arrangement(
        count=len(found), battery_v=found[0].nominal_v, system_v=_wanted_v(build, found[0])
    )
    kinds = len({fitted.part.id for fitted, _ in batteries(build)})
    if joined.parallel_count == 0:
        return None, f"{joined.series_count} batteries in series for the system's voltage"
    if kinds > 1 and joined.series_count > 1:
        return None, "batteries of one kind in series"
    return _bank(build, found, joined, kinds, cold), ""


def _bank(
    build: Build,
    found: list[Battery],
    joined: Arrangement,
    kinds: int,
    cold: tuple[BatteryInCold, ...],
) -> Bank:
    """Return the bank; unlike batteries side by side count as the worst in all but size."""
    first, strings = found[0], joined.parallel_count
    nominal_v = first.nominal_v * joined.series_count
    voltages = system_voltage(stated_v=nominal_v, lithium=first.chemistry == LITHIUM)
    capacity = first.capacity_ah * strings if kinds == 1 else sum(one.capacity_ah for one in found)
    factor = _coldest_factor(found, cold)
    warm = _full(build, found, capacity, nominal_v, 1.0)
    chilled = _full(build, found, capacity, nominal_v, factor)
    return Bank(
        names=tuple(fitted.name for fitted, _ in batteries(build)),
        chemistry=first.chemistry,
        kinds=kinds,
        series_count=joined.series_count,
        parallel_count=strings,
        spare_count=joined.spare_count,
        system_v=voltages.class_v,
        nominal_v=nominal_v,
        charge_v=voltages.charge_v,
        cut_off_v=voltages.cut_off_v,
        capacity_ah=capacity,
        rated_h=max(one.rated_h for one in found),
        exponent=max(one.peukert_exponent for one in found),
        depth_frac=warm.depth_frac,
        charge_limit_a=min(one.charge_limit_a for one in found) * strings,
        discharge_limit_a=min(one.discharge_limit_a for one in found) * strings,
        charge_efficiency_frac=min(one.charge_efficiency_frac for one in found),
        round_trip_frac=min(one.round_trip_frac for one in found),
        cold_degc=min(at.battery_degc for at in cold),
        cold_factor=factor,
        usable_wh=warm.energy_wh,
        cold_usable_wh=chilled.energy_wh,
        charge_locked=any(at.battery_degc < at.charge_from_degc for at in cold),
        usable_working=warm.working,
        cold_working=chilled.working,
    )


def _full(
    build: Build, found: list[Battery], capacity_ah: float, nominal_v: float, share_factor: float
) -> UsableEnergy:
    return usable_energy(
        capacity_ah=capacity_ah,
        nominal_v=nominal_v,
        reserve_frac=build.brief.reserve_frac,
        usable_frac=min(one.usable_frac for one in found),
        cold_factor=share_factor,
    )


def _coldest_factor(found: list[Battery], cold: tuple[BatteryInCold, ...]) -> float:
    return min(
        cold_factor(at_degc=at.battery_degc, points=_points(one))
        for one, at in zip(found, cold, strict=True)
    )


def _wanted_v(build: Build, battery: Battery) -> float:
    """Return the class of the first device that is made for one voltage; else the battery's."""
    lithium = battery.chemistry == LITHIUM
    for stated in stated_voltages(build):
        if len(stated.battery_v) == 1:
            return system_voltage(stated_v=stated.battery_v[0], lithium=lithium).class_v
    return system_voltage(stated_v=battery.nominal_v, lithium=lithium).class_v


def _points(battery: Battery) -> Points:
    own = tuple((point.battery_degc, point.capacity_frac) for point in battery.cold_capacity)
    return own or usual_cold_points(chemistry=battery.chemistry)


def _degc(build: Build, fitted: Fitted, battery: Battery) -> float:
    stated = fitted.fitting.heated_space
    warm = any(True for _ in build.having("heater"))
    inside = fitted.fitting.mounting in INSIDE and warm if stated is None else stated
    return battery_degc(
        night_degc=build.brief.climate.cold_night_degc,
        cabin_degc=build.brief.habits.night_degc,
        in_heated_space=inside,
        heated=battery.heated,
        charge_from_degc=battery.charge_from_degc,
    )
