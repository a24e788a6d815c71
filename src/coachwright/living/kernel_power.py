"""Compiled parts of a step: what there is to be had, what is drawn, and the bus at its end."""

# ruff: noqa: PLR2004  # what is compiled takes its arguments by place; halves are halves

from coachwright.living import kernel_model as c
from coachwright.living.compiling import compiled_in
from coachwright.living.kernel_model import Grid, Numbers, State, Tables
from coachwright.living.kernel_physics import bank_gives_w, bank_step, cold_frac, open_circuit_v

_PLENTY_W = 1e30
_FROST_FREE_DEGC = 2.0


@compiled_in
def supply(k: Numbers, t: Tables, state: State, q: Grid, unlimited: int) -> None:
    """Say what there is to be had in this step, and what is around the bank."""
    misc = state.misc
    q[c.CHARGER_W] = 0.0
    if q[c.HOOKED] > 0.0:
        q[c.CHARGER_W] = min(k.hookup_charge_w, k.hookup_w * k.charger_efficiency_frac)
    gives, q[c.SPENT] = _PLENTY_W, 0.0
    if unlimited == 0:
        floor = 1.0 - cold_frac(t.cold_share, misc[c.BANK_DEGC]) * (1.0 - k.bank.reserve_frac)
        if misc[c.CHARGE] <= floor and q[c.HOOKED] <= 0.0:
            q[c.SPENT] = 1.0
        gives = bank_gives_w(k.bank, t, misc[c.CHARGE], misc[c.BANK_DEGC])
    q[c.LEFT] = q[c.SUN_W] + q[c.DRIVE_W] + q[c.CHARGER_W] + gives
    q[c.AROUND] = state.air[k.bank_room] if k.bank_room >= 0 else q[c.OUTSIDE]


@compiled_in
def habits(k: Numbers, t: Tables, state: State, now: Grid, q: Grid) -> None:
    """Sum the loads that do not depend on this step's heat; direct current is served first."""
    dc, ac = 0.0, 0.0
    for place in range(t.fridges.shape[0]):
        duty = t.fridges[place, 1] * (state.air[k.thermostat] - t.fridges[place, 3])
        draw = t.fridges[place, 0] * min(max(duty * t.fridges[place, 2], 0.0), 1.0)
        if t.fridges[place, 4] > 0.5:
            ac += draw
        else:
            dc += draw
    frost = 0.0
    for place in range(t.frost.shape[0]):
        if state.frost[place] < _FROST_FREE_DEGC:
            frost += t.frost[place, 3]
    q[c.FRIDGE_DC], q[c.FRIDGE_AC], q[c.FROST_W] = dc, ac, frost
    q[c.LIGHT_W] = now[c.DARK] * q[c.DARKNESS]
    stands_ac = k.cooler_standby_w if k.cooler_ac == 1 else 0.0
    q[c.STAND_DC] = k.standby_w + k.cooler_standby_w - stands_ac
    wanted = q[c.STAND_DC] + now[c.DC] + q[c.LIGHT_W] + dc + frost
    q[c.DC_FRAC] = 1.0
    if wanted > q[c.LEFT]:
        q[c.DC_FRAC] = max(q[c.LEFT], 0.0) / wanted
    q[c.DC_WANTED] = wanted
    q[c.LEFT] -= wanted * q[c.DC_FRAC]
    q[c.AC_WANTED] = now[c.AC] + ac + stands_ac


@compiled_in
def sockets(k: Numbers, q: Grid) -> None:
    """Serve alternating current: on hook-up before the charger, else through the inverter."""
    wanted = q[c.AC_WANTED]
    q[c.STAND_INVERTER] = 0.0
    if q[c.HOOKED] > 0.0:
        q[c.AC_LEFT] = k.hookup_w - q[c.CHARGER_W] / k.charger_efficiency_frac
        give_way(k, q, wanted)
    else:
        if k.inverter_w > 0.0 and (k.inverter_always == 1 or wanted > 0.0):
            q[c.STAND_INVERTER] = min(k.inverter_standby_w, max(q[c.LEFT], 0.0))
        q[c.LEFT] -= q[c.STAND_INVERTER]
        kept = (k.heater_draw_most_w + k.heater_start_wh * 3600.0 / k.step_s) * k.has_heater
        can = max(q[c.LEFT] - kept, 0.0) * k.inverter_efficiency_frac
        q[c.AC_LEFT] = min(k.inverter_w, can)
    q[c.AC_FRAC] = 1.0
    if wanted > q[c.AC_LEFT]:
        q[c.AC_FRAC] = max(q[c.AC_LEFT], 0.0) / wanted
    take_ac(k, q, wanted * q[c.AC_FRAC])


@compiled_in
def give_way(k: Numbers, q: Grid, wanted_w: float) -> None:
    """On hook-up the charger gives way to a load."""
    if q[c.HOOKED] > 0.0 and wanted_w > q[c.AC_LEFT]:
        freed = min(q[c.CHARGER_W] / k.charger_efficiency_frac, wanted_w - q[c.AC_LEFT])
        q[c.CHARGER_W] -= freed * k.charger_efficiency_frac
        q[c.LEFT] -= freed * k.charger_efficiency_frac
        q[c.AC_LEFT] += freed


@compiled_in
def take_ac(k: Numbers, q: Grid, taken_w: float) -> None:
    """Draw alternating current from what is left of it."""
    q[c.AC_LEFT] -= taken_w
    if q[c.HOOKED] <= 0.0:
        q[c.LEFT] -= taken_w / k.inverter_efficiency_frac


@compiled_in
def bus(k: Numbers, t: Tables, state: State, q: Grid, unlimited: int) -> None:
    """Add up the bus, let the bank take or give, and say where it came from."""
    ac = q[c.AC_WANTED] * q[c.AC_FRAC] + q[c.AC_HEAT] + q[c.COOLER] * k.cooler_ac
    dc = q[c.DC_WANTED] * q[c.DC_FRAC] + q[c.FANS] + q[c.BLOWER] + q[c.STAND_INVERTER]
    dc += q[c.COOLER] * (1 - k.cooler_ac)
    through = 0.0
    if q[c.HOOKED] <= 0.0:
        through = ac / k.inverter_efficiency_frac - ac
        dc += ac + through
    q[c.INVERTER] = q[c.STAND_INVERTER] + through
    q[c.BUS_W] = dc
    net = q[c.SUN_W] + q[c.DRIVE_W] + q[c.CHARGER_W] - dc
    q[c.TAKEN_W] = 0.0
    if k.has_bank == 1 and unlimited == 0:
        _bank(k, t, state, q, net)
    else:
        q[c.IN_GRID] = max(-net, 0.0)
    used = dc + q[c.PADS] + q[c.TAKEN_W] - q[c.IN_GRID]
    q[c.IN_SUN] = min(q[c.SUN_W], used)
    q[c.IN_DRIVE] = min(q[c.DRIVE_W], used - q[c.IN_SUN])
    charger = used - q[c.IN_SUN] - q[c.IN_DRIVE]
    q[c.SPILLED] = q[c.SUN_W] - q[c.IN_SUN]
    q[c.CHARGING] = charger / k.charger_efficiency_frac - charger
    q[c.IN_HOOKUP] = charger + q[c.CHARGING] + ac * q[c.HOOKED]
    lost = q[c.IN_SUN] / k.sun_efficiency_frac - q[c.IN_SUN]
    state.misc[c.LOSS_W] = q[c.INVERTER] + lost + q[c.CHARGING]


@compiled_in
def _bank(k: Numbers, t: Tables, state: State, q: Grid, net_w: float) -> None:
    misc = state.misc
    volts = open_circuit_v(t.charge_v, misc[c.CHARGE])
    charge, degc, taken, pads, loss, locked, amps = bank_step(
        k.bank, volts, misc[c.CHARGE], misc[c.BANK_DEGC], q[c.AROUND], net_w
    )
    misc[c.CHARGE], misc[c.BANK_DEGC] = charge, degc
    misc[c.BANK_HEAT_W] = k.bank.ua_w_per_k * (degc - q[c.AROUND])
    q[c.TAKEN_W], q[c.PADS], q[c.BANK], q[c.LOCKED] = taken, pads, loss, locked
    q[c.CHARGED], q[c.DISCHARGED] = max(amps, 0.0), max(-amps, 0.0)
    q[c.STORED] = amps * volts


@compiled_in
def served(k: Numbers, now: Grid, q: Grid) -> None:
    """Say what each use by habit took, and what it lacked."""
    dc, ac = q[c.DC_FRAC], q[c.AC_FRAC]
    stands_ac = k.cooler_standby_w if k.cooler_ac == 1 else 0.0
    q[c.HEATER] = q[c.BLOWER] + q[c.AC_HEAT]
    q[c.FRIDGE] = q[c.FRIDGE_DC] * dc + q[c.FRIDGE_AC] * ac
    q[c.LIGHT] = q[c.LIGHT_W] * dc
    q[c.DIRECT] = now[c.DC] * dc
    q[c.ALTERNATING] = now[c.AC] * ac
    q[c.STANDBY] = q[c.STAND_DC] * dc + stands_ac * ac
    q[c.FROST] = q[c.FROST_W] * dc
    q[c.BURNT] = now[c.BURNER]
    if dc < 1.0 or ac < 1.0:
        q[c.LACKS + c.FRIDGE] = q[c.FRIDGE_DC] * (1.0 - dc) + q[c.FRIDGE_AC] * (1.0 - ac)
        q[c.LACKS + c.LIGHT] = q[c.LIGHT_W] * (1.0 - dc)
        q[c.LACKS + c.DIRECT] = now[c.DC] * (1.0 - dc)
        q[c.LACKS + c.ALTERNATING] = now[c.AC] * (1.0 - ac)
        q[c.LACKS + c.STANDBY] = q[c.STAND_DC] * (1.0 - dc) + stands_ac * (1.0 - ac)
        q[c.LACKS + c.FROST] = q[c.FROST_W] * (1.0 - dc)
