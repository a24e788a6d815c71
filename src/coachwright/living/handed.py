"""What the kernel is handed: a design's numbers, tables, matrices and calendar."""

from typing import Any

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import DAYS, MONTH_OF_DAY
from coachwright.errors import OutOfRange
from coachwright.living import kernel_model as c
from coachwright.living.coil import coil_span_kj_per_kg
from coachwright.living.columns import PROFILE
from coachwright.living.given import STEPS_PER_DAY, AirHeater, Bank, Day, Given
from coachwright.living.modes import Modes
from coachwright.living.nodes import AIR_J_PER_M3_K, SEA_LEVEL_PA
from coachwright.living.steps import SiteSteps
from coachwright.living.vapour import by_enthalpy_table, saturated_table

Grid = NDArray[np.float64]

_AIR_KG_PER_M3 = 1.2


def room_at(name: str, rooms: dict[str, int], field: str) -> int:
    """Return the place of a room by its name, or say which field names none."""
    if name not in rooms:
        raise OutOfRange(field, name, ", ".join(rooms))
    return rooms[name]


def numbers(
    *,
    given: Given,
    site: SiteSteps,
    rooms: dict[str, int],
    step_min: float,
    blinds: bool,
    altitude_m: float,
) -> c.Numbers:
    """Return what is told by one number each.

    Parameters
    ----------
    given
        The design.
    site
        Where it stands.
    rooms
        Places of the rooms by name.
    step_min
        Length of a step. [min]
    blinds
        Some window has one.
    altitude_m
        Of the site. [m]
    """
    thin = site.pressure_pa / SEA_LEVEL_PA
    bank = given.bank
    told: dict[str, Any] = {
        "step_s": 60.0 * step_min,
        "rooms_count": len(rooms),
        "thermostat": room_at(given.thermostat_room, rooms, "thermostat_room"),
        "bank_room": -1 if bank is None else rooms.get(bank.room, -1),
        "two_states": int(blinds),
        "flow_w_per_k": AIR_J_PER_M3_K * thin / 3600.0,
        "flow_kg_per_s": _AIR_KG_PER_M3 * thin / 3600.0,
        "has_bank": int(bank is not None),
        "bank": bank_numbers(bank, step_s=60.0 * step_min),
        "comfort_low_degc": float(given.comfort_low_degc),
        "comfort_high_degc": float(given.comfort_high_degc),
    }
    told |= _air_numbers(given) | _heater_numbers(given, rooms, altitude_m)
    told |= _cooler_numbers(given) | _supply_numbers(given, rooms)
    return c.Numbers(**told)


def _air_numbers(given: Given) -> dict[str, Any]:
    air = given.air
    return {
        "fan_m3_per_h": float(air.fan_m3_per_h),
        "fan_w": float(air.fan_w),
        "hatch_m3_per_h": float(air.hatch_m3_per_h),
        "humid_frac": float(air.humid_frac),
        "free_cooling": int(air.free_cooling),
    }


def _heater_numbers(given: Given, rooms: dict[str, int], altitude_m: float) -> dict[str, Any]:
    heater = given.heater or AirHeater(name="none", most_w=0.0)
    lost_frac = heater.altitude_frac_per_km * max(altitude_m, 0.0) / 1000.0
    most_w = heater.most_w * max(1.0 - lost_frac, 0.0)
    second = -1
    if heater.second_room and heater.second_frac > 0.0:
        second = room_at(heater.second_room, rooms, "second_room")
    return {
        "has_heater": int(most_w > 0.0),
        "heater_most_w": float(most_w),
        "heater_least_w": float(min(heater.least_w, most_w)),
        "heater_efficiency_frac": float(heater.efficiency_frac),
        "heater_draw_most_w": float(heater.draw_most_w),
        "heater_draw_least_w": float(heater.draw_least_w),
        "heater_start_wh": float(heater.start_wh),
        "heater_electric": int(heater.electric_ac),
        "second_room": second,
        "heater_second_frac": float(heater.second_frac) if second >= 0 else 0.0,
    }


def _cooler_numbers(given: Given) -> dict[str, Any]:
    cooler = given.cooler
    if cooler is None:
        told = {name: 0.0 for name in c.Numbers._fields if name.startswith("cooler_")}
        return {**told, "has_cooler": 0, "cooler_ac": 0, "cooler_off_grid": 0}
    return {
        "has_cooler": 1,
        "cooler_rated_w": float(cooler.rated_w),
        "cooler_input_w": float(cooler.rated_input_w),
        "cooler_wet_low_degc": float(cooler.wet_low_degc),
        "cooler_wet_high_degc": float(cooler.wet_high_degc),
        "cooler_dry_low_degc": float(cooler.dry_low_degc),
        "cooler_dry_high_degc": float(cooler.dry_high_degc),
        "cooler_cycling_frac": float(cooler.cycling_frac),
        "cooler_span_kj_per_kg": coil_span_kj_per_kg(sensible_frac=cooler.sensible_frac),
        "cooler_ac": int(cooler.ac),
        "cooler_standby_w": float(cooler.standby_w),
        "cooler_off_grid": int(cooler.enabled),
    }


def _supply_numbers(given: Given, rooms: dict[str, int]) -> dict[str, Any]:
    supply = given.supply
    return {
        "losses_room": rooms.get(supply.losses_room, -1),
        "sun_limit_w": float(supply.sun_limit_w),
        "sun_efficiency_frac": float(max(supply.sun_efficiency_frac, 0.01)),
        "drive_w": float(supply.drive_w),
        "hookup_w": float(given.pattern.hookup_w),
        "hookup_charge_w": float(supply.hookup_charge_w),
        "charger_efficiency_frac": float(max(supply.charger_efficiency_frac, 0.01)),
        "inverter_efficiency_frac": float(max(supply.inverter_efficiency_frac, 0.01)),
        "inverter_standby_w": float(supply.inverter_standby_w),
        "inverter_w": 1e30 if given.bank is None else float(supply.inverter_w),
        "inverter_always": int(supply.inverter_always),
        "standby_w": float(supply.standby_w),
    }


def bank_numbers(bank: Bank | None, *, step_s: float) -> c.BankNumbers:
    """Return the bank as the kernel takes it; one that does nothing where there is none.

    Parameters
    ----------
    bank
        The bank.
    step_s
        Length of a step. [s]
    """
    if bank is None:
        return c.BankNumbers(1.0, 1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, -99.0, 0.0, 0.0, 1.0, 1.0)
    held_w_per_k = max(bank.heat_j_per_k, 1.0) / step_s
    step_a = bank.capacity_ah * 3600.0 / step_s
    return c.BankNumbers(
        step_a=float(step_a),
        empty_ratio=float(1.0 / step_a),
        resistance_ohm=float(bank.resistance_ohm),
        charge_limit_a=float(bank.charge_limit_a),
        discharge_limit_a=float(bank.discharge_limit_a),
        coulombic_frac=float(bank.coulombic_frac),
        cut_off_frac=float(bank.cut_off_frac),
        reserve_frac=float(bank.reserve_frac),
        charge_from_degc=float(bank.charge_from_degc),
        pads_w=float(bank.pads_w),
        ua_w_per_k=float(bank.ua_w_per_k),
        held_w_per_k=float(held_w_per_k),
        warmed_ratio=float(1.0 / (held_w_per_k + bank.ua_w_per_k)),
    )


def bank_tables(bank: Bank | None) -> tuple[Grid, Grid]:
    """Return open-circuit voltage by charge and capacity share by temperature, evenly spaced."""
    if bank is None:
        return np.full(101, 12.0), np.ones(121)
    charge, volts = np.array(bank.charge_v, dtype=np.float64).T
    at, share = np.array(bank.cold_share_frac, dtype=np.float64).T
    return (
        np.interp(np.linspace(0.0, 1.0, 101), charge, volts),
        np.interp(np.arange(-40.0, 81.0), at, share),
    )


def tables(
    *, given: Given, site: SiteSteps, rooms: dict[str, int], step_min: float, seen_m2: Grid
) -> c.Tables:
    """Return the look-up tables and what every step reads.

    Parameters
    ----------
    given
        The design.
    site
        Where it stands.
    rooms
        Places of the rooms by name.
    step_min
        Length of a step. [min]
    seen_m2
        Faces that are judged for condensation. [m2]
    """
    thin = site.pressure_pa / SEA_LEVEL_PA
    body, cooler = given.body, given.cooler
    passage = np.zeros((len(rooms), len(rooms)))
    for each in body.passages:
        one, other = (rooms[name] for name in each.rooms)
        passage[one, other] += each.flow_m3_per_h / 3600.0
        passage[other, one] += each.flow_m3_per_h / 3600.0
    volume = np.array([max(float(room.volume_m3), 0.01) for room in body.rooms])
    buffer = np.array([float(room.vapour_buffer_ratio) for room in body.rooms])
    volts, share = bank_tables(given.bank)
    flat = (1.0, 0.0, 0.0, 0.0, 0.0, 0.0)
    return c.Tables(
        saturated=saturated_table(pressure_pa=site.pressure_pa),
        by_enthalpy=by_enthalpy_table(pressure_pa=site.pressure_pa),
        charge_v=volts,
        cold_share=share,
        capacity=np.array(cooler.capacity_factor if cooler else flat, dtype=np.float64),
        input=np.array(cooler.input_factor if cooler else flat, dtype=np.float64),
        fridges=_fridges(given),
        frost=_frost(given, rooms),
        room_kg=volume * (1.0 + buffer) * _AIR_KG_PER_M3 * thin,
        room_m3=volume,
        leak_m3_per_s=np.array([r.volume_m3 * r.leak_per_h / 3600.0 for r in body.rooms]),
        passage_m3_per_s=passage,
        seen_m2=np.ascontiguousarray(seen_m2),
        profile=_profiles(given, step_min),
    )


def _fridges(given: Given) -> Grid:
    rows = [
        (
            each.draw_w,
            each.duty_frac,
            1.0 / max(each.at_degc - each.inside_degc, 1e-3),
            each.inside_degc,
            float(each.ac),
        )
        for each in given.fridges
    ]
    return np.array(rows, dtype=np.float64).reshape(len(rows), 5)


def _frost(given: Given, rooms: dict[str, int]) -> Grid:
    rows = [
        (float(rooms.get(each.place, -1)), each.ua_w_per_k, each.heat_j_per_k, each.heated_w)
        for each in given.frost
    ]
    return np.array(rows, dtype=np.float64).reshape(len(rows), 4)


def _profiles(given: Given, step_min: float) -> Grid:
    seasons = given.seasons
    kinds = (seasons.warm, seasons.cold, seasons.driving_warm, seasons.driving_cold)
    return np.ascontiguousarray(np.stack([_profile(each, given, step_min) for each in kinds]))


def _profile(day: Day, given: Given, step_min: float) -> Grid:
    steps = round(1440.0 / step_min)
    column = {name: np.zeros(STEPS_PER_DAY) for name in PROFILE}
    told = {name: np.array(getattr(day, name), dtype=np.float64) for name in _TOLD}
    for name, values in told.items():
        if len(values) != STEPS_PER_DAY:
            raise OutOfRange(name, len(values), f"{STEPS_PER_DAY} values")
    whole = told["sensible_w"] + told["gain_w"]
    column["gain_air_w"] = whole * (1.0 - given.radiant_frac)
    column["gain_radiant_w"] = whole * given.radiant_frac
    column["vapour_kg_per_s"] = (told["latent_g_per_h"] + told["vapour_g_per_h"]) / 3.6e6
    column["co2_m3_per_s"] = told["co2_l_per_h"] / 3.6e6
    for name in _AS_TOLD:
        column[name] = told[name]
    column["burner_w"] = told["fuel_burner_w"]
    vent = np.where(told["occupied_frac"] > 0.0, given.air.least_m3_per_h, 0.0)
    if day.vent_m3_per_h:
        vent = vent + np.array(day.vent_m3_per_h, dtype=np.float64)
    column["vent_m3_per_h"] = vent
    table = np.stack([column[name] for name in PROFILE], axis=1)
    middle = (np.arange(steps) + 0.5) * step_min
    if step_min <= 10.0:  # noqa: PLR2004
        return np.asarray(table[(middle // 10.0).astype(np.int64)])
    return np.asarray(table.reshape(steps, STEPS_PER_DAY // steps, len(PROFILE)).mean(axis=1))


_AS_TOLD = (
    "occupied_frac",
    "asleep_frac",
    "heat_degc",
    "cool_degc",
    "blinds_frac",
    "dc_w",
    "ac_w",
    "inside_frac",
    "dark_w",
)
_TOLD = (
    *_AS_TOLD,
    "sensible_w",
    "gain_w",
    "latent_g_per_h",
    "vapour_g_per_h",
    "co2_l_per_h",
    "fuel_burner_w",
)


def matrices(both: tuple[Modes, ...]) -> c.Matrices:
    """Return the modes of both states of the blinds, side by side.

    Parameters
    ----------
    both
        Open and shut; one alone where there are no blinds.
    """
    kept = max(each.kept for each in both)
    outputs = both[0].shown.shape[0]
    columns = both[0].drive.shape[1]
    stay = np.zeros((2, kept))
    drive = np.zeros((2, columns, kept + outputs))
    shown, held = np.zeros((2, outputs, kept)), np.zeros((2, kept))
    swap = np.zeros((2, kept, kept))
    for place, each in enumerate(both):
        own = each.kept
        stay[place, :own] = each.stay
        drive[place, :, :own] = each.drive[:own].T
        drive[place, :, kept:] = each.drive[own:].T
        shown[place, :, :own] = each.shown
        held[place, :own] = each.held_j_per_k
        if len(both) > 1:
            other = both[1 - place]
            swap[place, : other.kept, :own] = other.into @ each.out_of
    return c.Matrices(stay, drive, shown, swap, held)


def calendar(
    *, given: Given, step_min: float, from_day: int, days: int, off_grid: bool
) -> c.Calendar:
    """Return what each day is that is walked through.

    Parameters
    ----------
    given
        The design.
    step_min
        Length of a step. [min]
    from_day, days
        The first, and how many.
    off_grid
        Never driving and never on hook-up.
    """
    pattern = given.pattern
    day = np.arange(from_day, from_day + days) % DAYS
    low, high = given.warm_from_day % DAYS, given.warm_to_day % DAYS
    warm = (day >= low) & (day < high) if low <= high else (day >= low) | (day < high)
    driving = np.zeros(days, dtype=bool)
    if pattern.parked_d > 0.0 and pattern.drive_h > 0.0 and not off_grid:
        driving = _falls_on(day, 1.0 / (pattern.parked_d + 1.0))
    share_frac = 0.0 if off_grid else min(max(pattern.hookup_frac, 0.0), 1.0)
    per_hour = 60.0 / step_min
    steps = round(24 * per_hour)
    until_h = pattern.hookup_from_h + pattern.hookup_h - 24.0
    until = np.where(_falls_on((day - 1) % DAYS, share_frac), round(until_h * per_hour), 0)
    to_h = pattern.drive_from_h + pattern.drive_h
    drives = np.where(driving, round(pattern.drive_from_h * per_hour), steps)
    begins = round(pattern.hookup_from_h * per_hour)
    return c.Calendar(
        day=day.astype(np.int64),
        month=MONTH_OF_DAY[day].astype(np.int64),
        kind=(np.where(warm, 0, 1) + np.where(driving, 2, 0)).astype(np.int64),
        drive_from=drives.astype(np.int64),
        drive_to=np.where(driving, round(to_h * per_hour), 0).astype(np.int64),
        hook_until=np.maximum(until, 0).astype(np.int64),
        hook_from=np.where(_falls_on(day, share_frac), begins, steps).astype(np.int64),
    )


def _falls_on(day: NDArray[np.int64], share_frac: float) -> NDArray[np.bool_]:
    """Say on which days something falls that falls on a share of them, evenly."""
    return np.asarray(np.floor((day + 1) * share_frac) > np.floor(day * share_frac))
