"""Wet kit in a stall that a register of the heater warms: how warm it gets, how soon it is dry."""

import math
from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.living.model import DRYING_FOLLOWED_H, Drying
from coachwright.living.steady import AIR_HEAT_WH_PER_M3_K
from coachwright.model.working import Given, Working
from coachwright.reference import limit

_RATIO = 0.621945
"""Molar mass of water over that of dry air. [ashrae-psychrometrics]"""
_LATENT_WH_PER_KG = 2454.0 / 3.6
"""Of water at 20 degC: 2454 kJ/kg. [coolprop-water]"""
_LATENT_KJ_PER_KG = 2454.0
_DRY_AIR_KG_PER_M3 = 1.2
_STILL, _BY_SPEED = 0.089, 0.0782
"""Of the evaporation from a wet surface. [ashrae-pools]"""
_FALLING_FRAC, _DRY_FRAC = 0.3, 0.05
"""Share of the water from which on it dries slower, and share at which it counts as dry."""
_ROUNDS = 40
_S_PER_H = 3600.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Stall:
    """The stall and its register.

    Attributes
    ----------
    ua_w_per_k
        Of its walls against the cabin.
    exchange_m3_per_h
        Air that it exchanges with the cabin.
    share_frac
        Of the heater's heat.
    """

    name: str
    ua_w_per_k: float
    exchange_m3_per_h: float
    share_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Around:
    """The cabin that the stall stands in, and the air outside.

    Attributes
    ----------
    loss_w_per_k
        Of the body and its leaks, without fresh air.
    open_m3_per_h, fan_m3_per_h
        Fresh air kept open with the leaks, and what a fan can move besides.
    humid_frac
        Relative humidity above which the fan runs.
    vapour_g_per_h
        Of people in the cabin.
    dew_degc
        Outside.
    """

    cabin_degc: float
    warm_degc: float
    outside_degc: float
    dew_degc: float
    loss_w_per_k: float
    open_m3_per_h: float
    fan_m3_per_h: float
    humid_frac: float
    vapour_g_per_h: float
    heater_w: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Kit:
    """What comes in wet: its water, its wet surface, the speed of the air along it."""

    water_kg: float
    area_m2: float
    speed_m_per_s: float


@dataclass(frozen=True, kw_only=True, slots=True)
class _State:
    stall_degc: float
    stall_kg: float
    heater_w: float
    fresh_m3_per_h: float


def evaporation_g_per_h(
    *, area_m2: float, surface_degc: float, vapour_kpa: float, speed_m_per_s: float
) -> float:
    """Return what evaporates from a wet surface [g/h].

    Parameters
    ----------
    area_m2
        Of the surface. [m2]
    surface_degc
        Its temperature. [degC]
    vapour_kpa
        Pressure of vapour in the air. [kPa]
    speed_m_per_s
        Of the air along it. [m/s]

    Notes
    -----
    m = A (p_s − p) (0.089 + 0.0782 v) / L, kg/s with kPa and kJ/kg; written for pools.

    References
    ----------
    [ashrae-pools], [alduchov-eskridge-1996]

    Examples
    --------
    >>> round(
    ...     evaporation_g_per_h(
    ...         area_m2=1.5, surface_degc=16.0, vapour_kpa=1.403, speed_m_per_s=0.2
    ...     ),
    ...     0,
    ... )
    95.0
    """
    drive_kpa = max(_saturated_kpa(surface_degc) - vapour_kpa, 0.0)
    rate_g_per_h = area_m2 * drive_kpa * (_STILL + _BY_SPEED * speed_m_per_s) / _LATENT_KJ_PER_KG
    return rate_g_per_h * 1000.0 * _S_PER_H


def drying(*, stall: Stall, around: Around, kit: Kit) -> Drying:
    """Return how warm the stall gets and when the kit is dry.

    Parameters
    ----------
    stall
        With its register.
    around
        Cabin and air outside.
    kit
        What hangs in it.

    Raises
    ------
    OutOfRange
        Where there is no water, no surface or no heat into the stall.

    Notes
    -----
    Steady: the register's share of the heater's heat warms the stall's air, goes through its
    walls and with its air into the cabin, and evaporates water from a surface at the wet-bulb
    temperature; the vapour goes into the cabin and with its fresh air outside, a fan helping
    where it gets too humid.  The heater gives what body, fresh air and evaporation take, at most
    its output.  While more than 0.3 of the water is left that holds; then it dries slower, evenly
    with what is left, down to 0.05: t = W / m · (0.7 + 0.3 ln(0.3 / 0.05)), both shares from
    memory.

    References
    ----------
    [ashrae-pools], [ashrae-psychrometrics], [alduchov-eskridge-1996], [energy-balance]
    """
    if kit.water_kg <= 0.0 or kit.area_m2 <= 0.0:
        raise OutOfRange("kit", f"{kit.water_kg} kg on {kit.area_m2} m2", "water and a surface")
    out_w_per_k = stall.ua_w_per_k + AIR_HEAT_WH_PER_M3_K * stall.exchange_m3_per_h
    if out_w_per_k <= 0.0 or stall.share_frac <= 0.0:
        raise OutOfRange("stall", stall.name, "walls or air, and a share of the heat")
    rate_g_per_h = _rate_g_per_h(stall, around, kit, out_w_per_k)
    state = _state(stall, around, out_w_per_k, rate_g_per_h)
    reachable_degc = around.warm_degc + stall.share_frac * around.heater_w / out_w_per_k
    hours = _dry_h(kit.water_kg, rate_g_per_h)
    return Drying(
        room=stall.name,
        water_kg=kit.water_kg,
        room_degc=state.stall_degc,
        hours_h=hours if hours <= DRYING_FOLLOWED_H else None,
        reachable_degc=reachable_degc,
        hot=reachable_degc > limit("living.stall-warm").value,
        working=_working(stall, around, kit, rate_g_per_h, hours),
    )


def _dry_h(water_kg: float, rate_g_per_h: float) -> float:
    stretch = 1.0 - _FALLING_FRAC + _FALLING_FRAC * math.log(_FALLING_FRAC / _DRY_FRAC)
    return math.inf if rate_g_per_h <= 0.0 else 1000.0 * water_kg / rate_g_per_h * stretch


def _rate_g_per_h(stall: Stall, around: Around, kit: Kit, out_w_per_k: float) -> float:
    """Return the evaporation at which heat and vapour balance, by halving."""
    low, high = 0.0, 1000.0 * around.heater_w * stall.share_frac / _LATENT_WH_PER_KG
    for _ in range(_ROUNDS):
        rate_g_per_h = (low + high) / 2.0
        state = _state(stall, around, out_w_per_k, rate_g_per_h)
        can = evaporation_g_per_h(
            area_m2=kit.area_m2,
            surface_degc=_wet_bulb_degc(state.stall_degc, state.stall_kg),
            vapour_kpa=_vapour_kpa(state.stall_kg),
            speed_m_per_s=kit.speed_m_per_s,
        )
        low, high = (rate_g_per_h, high) if can > rate_g_per_h else (low, rate_g_per_h)
    return low


def _state(stall: Stall, around: Around, out_w_per_k: float, rate_g_per_h: float) -> _State:
    """Return stall and cabin while so much evaporates."""
    outside_kg = _humidity_ratio(_saturated_kpa(around.dew_degc))
    brought_kg = (rate_g_per_h + around.vapour_g_per_h) / 1000.0 / _DRY_AIR_KG_PER_M3
    humid_kg = _humidity_ratio(around.humid_frac * _saturated_kpa(around.cabin_degc))
    wanted = brought_kg / max(humid_kg - outside_kg, 1e-6)
    most = around.open_m3_per_h + around.fan_m3_per_h
    fresh = min(max(wanted, around.open_m3_per_h), most)
    cabin_kg = outside_kg + brought_kg / max(fresh, 1e-6)
    exchanged = max(stall.exchange_m3_per_h, 1e-6) * _DRY_AIR_KG_PER_M3
    evaporation_w = rate_g_per_h / 1000.0 * _LATENT_WH_PER_KG
    rise_k = around.cabin_degc - around.outside_degc
    body_w = (around.loss_w_per_k + AIR_HEAT_WH_PER_M3_K * fresh) * max(rise_k, 0.0)
    heater_w = min(body_w + evaporation_w, around.heater_w)
    left_w = stall.share_frac * heater_w - evaporation_w
    return _State(
        stall_degc=around.cabin_degc + left_w / out_w_per_k,
        stall_kg=cabin_kg + rate_g_per_h / 1000.0 / exchanged,
        heater_w=heater_w,
        fresh_m3_per_h=fresh,
    )


def _saturated_kpa(at_degc: float) -> float:
    """Magnus' form over water, within 0.4 % from −40 to 50 degC."""
    return 0.61094 * math.exp(17.625 * at_degc / (243.04 + at_degc))


def _humidity_ratio(vapour_kpa: float) -> float:
    return _RATIO * vapour_kpa / (101.325 - min(vapour_kpa, 90.0))


def _vapour_kpa(ratio_kg: float) -> float:
    return 101.325 * ratio_kg / (_RATIO + ratio_kg)


def _wet_bulb_degc(air_degc: float, ratio_kg: float) -> float:
    """Return the wet bulb of air, by halving; that of saturated air is its own temperature."""
    low, high = -40.0, air_degc
    for _ in range(_ROUNDS):
        wet_degc = (low + high) / 2.0
        saturated = _humidity_ratio(_saturated_kpa(wet_degc))
        held = (2501.0 - 2.326 * wet_degc) * saturated - 1.006 * (air_degc - wet_degc)
        found = held / (2501.0 + 1.86 * air_degc - 4.186 * wet_degc)
        low, high = (wet_degc, high) if found < ratio_kg else (low, wet_degc)
    return low


def _working(stall: Stall, around: Around, kit: Kit, rate_g_per_h: float, dry_h: float) -> Working:
    return Working(
        expression="t = W / m · (1 − x + x · ln(x / y))",
        given=(
            _given("W", "water in the kit", kit.water_kg, "kg"),
            _given("m", "evaporates at first, by heat and vapour", rate_g_per_h, "g/h"),
            _given("x", "share of the water from which on it dries slower", _FALLING_FRAC, "frac"),
            _given("y", "share of the water that counts as dry", _DRY_FRAC, "frac"),
            _given("A", "wet surface of the kit, within m", kit.area_m2, "m2"),
            _given("f", "share of the heater's heat, within m", stall.share_frac, "frac"),
            _given("V", "air exchanged, within m", stall.exchange_m3_per_h, "m3/h"),
            _given("T", "air outside, within m", around.outside_degc, "degC"),
        ),
        result=min(dry_h, DRYING_FOLLOWED_H),
        unit="h",
        references=("ashrae-pools", "ashrae-psychrometrics", "energy-balance"),
        note="kit that hangs open, with air along all of it; shares x and y from memory. People's "
        "use of a heated stall is at their own and their doctor's judgement.",
    )


def _given(symbol: str, meaning: str, value: float, unit: str) -> Given:
    return Given(symbol=symbol, meaning=meaning, value=value, unit=unit)
