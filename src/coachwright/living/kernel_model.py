"""What the compiled kernel is handed: numbers, tables, matrices, and the places in its arrays."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from coachwright.living.columns import EXTREMES, PROFILE, SUMS, USES

Grid = NDArray[np.float64]
Places = NDArray[np.int64]

_P = {name: place for place, name in enumerate(PROFILE)}
GAIN, RADIANT, VAPOUR = _P["gain_air_w"], _P["gain_radiant_w"], _P["vapour_kg_per_s"]
CO2, OCCUPIED, ASLEEP = _P["co2_m3_per_s"], _P["occupied_frac"], _P["asleep_frac"]
HEAT_AT, COOL_AT, BLINDS = _P["heat_degc"], _P["cool_degc"], _P["blinds_frac"]
DC, AC, INSIDE, DARK = _P["dc_w"], _P["ac_w"], _P["inside_frac"], _P["dark_w"]
BURNER, VENT = _P["burner_w"], _P["vent_m3_per_h"]

_S = {name: place for place, name in enumerate(SUMS)}
IN_SUN, IN_DRIVE, IN_HOOKUP = _S["in.sun_wh"], _S["in.drive_wh"], _S["in.hookup_wh"]
IN_GRID, SPILLED = _S["in.grid_wh"], _S["spilled_wh"]
_O = {use: _S[f"out.{use}_wh"] for use in USES}
HEATER, COOLER, FRIDGE, FANS = _O["heater"], _O["cooler"], _O["fridge"], _O["fans"]
LIGHT, DIRECT, ALTERNATING = _O["light"], _O["direct"], _O["alternating"]
INVERTER, STANDBY, PADS, BANK = _O["inverter"], _O["standby"], _O["pads"], _O["bank"]
FROST, CHARGING = _O["frost"], _O["charging"]
LACKS = len(USES)
"""From what a use takes to what it lacks."""
FUEL, BURNT, STARTS = _S["fuel_wh"], _S["burner_wh"], _S["starts_count"]
HEAT, COOL, COOL_LATENT = _S["heat_wh"], _S["cool_wh"], _S["cool_latent_wh"]
HEATER_H, COOLER_H, OCCUPIED_H = _S["heater_h"], _S["cooler_h"], _S["occupied_h"]
COLD_H, HOT_H, ASLEEP_H = _S["cold_h"], _S["hot_h"], _S["asleep_h"]
CO2_ASLEEP, WET, CONDENSED = _S["co2_asleep_ppm_h"], _S["wet_glass_h"], _S["condensed_kg"]
LOCKED, AIR_SUM, FRESH = _S["locked_h"], _S["air_degc_h"], _S["fresh_m3"]
CHARGED, DISCHARGED, STORED = _S["charged_ah"], _S["discharged_ah"], _S["stored_wh"]
HOURS_SUM = _S["hours_h"]
VAPOUR_IN, VAPOUR_CAME, DRIED, VAPOUR_MOVED, CARRIED = (
    _S["vapour_in_kg"],
    _S["vapour_came_kg"],
    _S["vapour_dried_kg"],
    _S["vapour_moved_kg"],
    _S["carried_wh"],
)

_E = {name: place for place, name in enumerate(EXTREMES)}
AIR_LOW, EMPTIEST, BANK_LOW = _E["air_low_degc"], _E["emptiest_frac"], _E["bank_low_degc"]
AIR_HIGH, CO2_MOST, FULLEST = _E["air_high_degc"], _E["co2_most_ppm"], _E["fullest_frac"]
HEAT_MOST, COOL_MOST = _E["heat_most_w"], _E["cool_most_w"]

OUTSIDE_PPM = 420.0
"""Carbon dioxide outside: common practice, no source."""
SUMMED = 64
"""The first places of a step hold what is summed; those below are its other values."""
(
    AIR,
    OUTSIDE,
    DAMP,
    BASE,
    OWN,
    OPENED,
    LEAST,
    FAN_FRAC,
    LEFT,
    AC_LEFT,
    HOOKED,
    DRIVE_W,
    CHARGER_W,
    SUN_W,
    AROUND,
    DC_WANTED,
    DC_FRAC,
    AC_WANTED,
    AC_FRAC,
    LIGHT_W,
    FRIDGE_DC,
    FRIDGE_AC,
    FROST_W,
    STAND_DC,
    STAND_INVERTER,
    BLOWER,
    AC_HEAT,
    SECOND_FRAC,
    WET_ANY,
    BUS_W,
    TAKEN_W,
    COOLS,
    DENSITY,
    DARKNESS,
    SPENT,
    STEP_SIZE,
) = range(SUMMED, SUMMED + 36)

CHARGE, BANK_DEGC, LOSS_W, BANK_HEAT_W, WAS_ON, SHUT, CARRY_W, MISC_SIZE = range(8)

EARLY, EARLY_BETWEEN, LATE, LATE_BETWEEN = range(4)
"""Steps walked in the first and second half of an hour, and the sum of how far between."""


class BankNumbers(NamedTuple):
    """The bank, told by one number each.

    Attributes
    ----------
    step_a
        That would empty it in a step; `empty_ratio` is one over it.
    held_w_per_k
        Heat held, over the length of a step; `warmed_ratio` is one over its sum with the loss.
    """

    step_a: float
    empty_ratio: float
    resistance_ohm: float
    charge_limit_a: float
    discharge_limit_a: float
    coulombic_frac: float
    cut_off_frac: float
    reserve_frac: float
    charge_from_degc: float
    pads_w: float
    ua_w_per_k: float
    held_w_per_k: float
    warmed_ratio: float


class Numbers(NamedTuple):
    """Everything told by one number."""

    step_s: float
    rooms_count: int
    thermostat: int
    losses_room: int
    bank_room: int
    second_room: int
    two_states: int
    flow_w_per_k: float
    flow_kg_per_s: float
    fan_m3_per_h: float
    fan_w: float
    hatch_m3_per_h: float
    humid_frac: float
    free_cooling: int
    has_heater: int
    heater_most_w: float
    heater_least_w: float
    heater_efficiency_frac: float
    heater_draw_most_w: float
    heater_draw_least_w: float
    heater_start_wh: float
    heater_electric: int
    heater_second_frac: float
    has_cooler: int
    cooler_rated_w: float
    cooler_input_w: float
    cooler_wet_low_degc: float
    cooler_wet_high_degc: float
    cooler_dry_low_degc: float
    cooler_dry_high_degc: float
    cooler_cycling_frac: float
    cooler_span_kj_per_kg: float
    cooler_ac: int
    cooler_standby_w: float
    cooler_off_grid: int
    sun_limit_w: float
    sun_efficiency_frac: float
    drive_w: float
    hookup_w: float
    hookup_charge_w: float
    charger_efficiency_frac: float
    inverter_efficiency_frac: float
    inverter_standby_w: float
    inverter_w: float
    inverter_always: int
    standby_w: float
    has_bank: int
    bank: BankNumbers
    comfort_low_degc: float
    comfort_high_degc: float


class Tables(NamedTuple):
    """Look-up tables and what every step reads."""

    saturated: Grid
    by_enthalpy: Grid
    charge_v: Grid
    cold_share: Grid
    capacity: Grid
    input: Grid
    fridges: Grid
    frost: Grid
    room_kg: Grid
    room_m3: Grid
    leak_m3_per_s: Grid
    passage_m3_per_s: Grid
    seen_m2: Grid
    profile: Grid


class Matrices(NamedTuple):
    """The modes of both states of the blinds."""

    stay: Grid
    drive: Grid
    shown: Grid
    swap: Grid
    held: Grid


class Site(NamedTuple):
    """The site's hours."""

    driving: Grid
    humidity: Grid
    dark: Grid
    sun_w: Grid


class Calendar(NamedTuple):
    """What each day that is walked through is."""

    day: Places
    month: Places
    kind: Places
    drive_from: Places
    drive_to: Places
    hook_until: Places
    hook_from: Places


class State(NamedTuple):
    """What is carried from step to step; `misc` by the places above."""

    modes: Grid
    air: Grid
    faces: Grid
    vapour: Grid
    co2: Grid
    water: Grid
    frost: Grid
    misc: Grid


class Sums(NamedTuple):
    """What is summed on the way."""

    month: Grid
    extreme: Grid
    frost_h: Grid
    modes: Grid
    driven: Grid
    let_in: Grid


class Series(NamedTuple):
    """Step by step; empty where not wanted."""

    nodes: Grid
    rooms: Grid
    flows: Grid


class Work(NamedTuple):
    """Space for vectors."""

    before: Grid
    now: Grid
    after: Grid
    light: Grid
    base: Grid
    slope: Grid
    shown: Grid
    let_in: Grid
    small: Grid
    right: Grid
    rates: Grid
    spare: Grid
    step: Grid
    halves: Grid
