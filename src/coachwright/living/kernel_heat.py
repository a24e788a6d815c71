"""Compiled parts of a step: fresh air, heater and cooler, and what they let in."""

# ruff: noqa: PLR0917  # what is compiled takes its arguments by place; halves are halves

from coachwright.living import kernel_model as c
from coachwright.living.compiling import compiled_in
from coachwright.living.kernel_model import Grid, Matrices, Numbers, State, Sums, Tables, Work
from coachwright.living.kernel_physics import cooling, saturated_ratio
from coachwright.living.kernel_power import give_way, take_ac

LATENT_J_PER_KG = 2.501e6
"""Of evaporation at 0 degC. [ashrae-psychrometrics]"""
FREE_COOLING_BELOW_K = 1.0
"""Fans and hatches begin this much below the temperature at which the cooler would."""
_NOTHING_W = 1e-6
"""Less than this is rounding."""
_CYCLES_PER_H = 12.0


@compiled_in
def known_heat(
    k: Numbers, m: Matrices, state: State, now: Grid, q: Grid, w: Work, shut: int, first: int
) -> None:
    """Let in the heat that is known beforehand, and say what the air would be with it."""
    rooms, home, misc = k.rooms_count, k.thermostat, state.misc
    for place in range(rooms):
        w.let_in[place] = 0.0
    w.let_in[rooms] = now[c.RADIANT]
    served = now[c.DC] * q[c.DC_FRAC] + now[c.AC] * q[c.AC_FRAC]
    own = (q[c.LIGHT_W] + q[c.FRIDGE_DC]) * q[c.DC_FRAC] + q[c.FRIDGE_AC] * q[c.AC_FRAC]
    w.let_in[home] = now[c.GAIN] + misc[c.CARRY_W] + now[c.INSIDE] * served + own
    q[c.CARRIED] = misc[c.CARRY_W]
    misc[c.CARRY_W] = 0.0
    if k.losses_room >= 0:
        w.let_in[k.losses_room] += misc[c.LOSS_W]
    if k.bank_room >= 0:
        w.let_in[k.bank_room] += misc[c.BANK_HEAT_W]
    height = state.modes.shape[0] + home
    base = w.shown[home]
    for place in range(rooms + 1):
        base += m.drive[shut, first + place, height] * w.let_in[place]
    q[c.BASE], q[c.OWN] = base, m.drive[shut, first + home, height]


@compiled_in
def _against_damp_frac(k: Numbers, t: Tables, state: State, now: Grid, q: Grid) -> float:
    """Return the share of the fan's speed that brings the air to the humidity wanted."""
    home, vapour = k.thermostat, state.vapour[k.thermostat]
    aim = k.humid_frac * saturated_ratio(t.saturated, state.air[home])
    if aim <= q[c.DAMP]:
        return 1.0 if vapour > max(aim, q[c.DAMP]) else 0.0
    open_kg_per_s = (t.leak_m3_per_s[home] * 3600.0 + now[c.VENT]) * k.flow_kg_per_s
    gained = t.room_kg[home] / k.step_s * (vapour - aim) + now[c.VAPOUR]
    need = gained / (aim - q[c.DAMP]) - open_kg_per_s
    share: float = min(max(need / (k.fan_m3_per_h * k.flow_kg_per_s), 0.0), 1.0)
    return share


@compiled_in
def fresh_air(k: Numbers, t: Tables, state: State, now: Grid, q: Grid, w: Work) -> None:
    """Open fans and hatches: against damp while people are in, and where it cools for nothing."""
    base, own, outside = q[c.BASE], q[c.OWN], q[c.OUTSIDE]
    least = now[c.VENT] * k.flow_w_per_k
    fan = k.fan_m3_per_h * k.flow_w_per_k if q[c.LEFT] >= k.fan_w else 0.0
    opened, fan_frac = least, 0.0
    if k.humid_frac < 1.0 and now[c.OCCUPIED] > 0.0 and fan > 0.0:
        fan_frac = _against_damp_frac(k, t, state, now, q)
        opened += fan_frac * fan
    air = (base + own * opened * outside) / (1.0 + own * opened)
    aim = now[c.COOL_AT] - FREE_COOLING_BELOW_K
    cools = k.has_cooler == 1 and (k.cooler_off_grid == 1 or q[c.HOOKED] > 0.0)
    if k.free_cooling == 1 and air > aim and outside < air - 0.5:
        hatch = k.hatch_m3_per_h * k.flow_w_per_k
        need = least + hatch + fan
        if outside < aim - 0.1:
            need = min((base - aim) / (own * (aim - outside)), need)
        cooled = (base + own * need * outside) / (1.0 + own * need)
        kept_shut = cools and cooled > now[c.COOL_AT] and outside > aim
        if need > opened and not kept_shut:
            opened, air, fan_frac = need, cooled, 0.0
            if need > least + hatch and fan > 0.0:
                fan_frac = (need - least - hatch) / fan
    q[c.FANS] = fan_frac * k.fan_w
    if fan_frac > 0.0:
        q[c.LEFT] -= q[c.FANS]
        w.let_in[k.thermostat] += q[c.FANS]
        air += own * q[c.FANS] / (1.0 + own * opened)
    q[c.OPENED], q[c.AIR] = opened, air


@compiled_in
def heat(k: Numbers, m: Matrices, state: State, now: Grid, q: Grid, shut: int, first: int) -> None:
    """Heat towards the set point: between its outputs, on and off below the lower."""
    q[c.BLOWER], q[c.AC_HEAT], q[c.SECOND_FRAC] = 0.0, 0.0, 0.0
    if k.has_heater == 1 and q[c.AIR] < now[c.HEAT_AT]:
        own, stiff = q[c.OWN], 1.0 + q[c.OWN] * q[c.OPENED]
        if k.second_room >= 0:
            share, height = k.heater_second_frac, state.modes.shape[0] + k.thermostat
            q[c.SECOND_FRAC] = share
            own = own * (1.0 - share) + share * m.drive[shut, first + k.second_room, height]
        given = min((now[c.HEAT_AT] - q[c.AIR]) * stiff / own, k.heater_most_w)
        if given >= k.heater_least_w:
            span = max(k.heater_most_w - k.heater_least_w, 1e-9)
            rise = (given - k.heater_least_w) / span
            draw = k.heater_draw_most_w - k.heater_draw_least_w
            q[c.BLOWER] = k.heater_draw_least_w + rise * draw
            q[c.HEATER_H] = 1.0
            q[c.STARTS] = (1.0 - state.misc[c.WAS_ON]) * 3600.0 / k.step_s
        else:
            on = given / k.heater_least_w
            q[c.BLOWER] = on * k.heater_draw_least_w
            q[c.HEATER_H] = on
            q[c.STARTS] = _CYCLES_PER_H * on * (1.0 - on)
        q[c.BLOWER] += q[c.STARTS] * k.heater_start_wh
        q[c.HEAT] = given
        _power_heat(k, q)
        q[c.AIR] += own * q[c.HEAT] / stiff
    state.misc[c.WAS_ON] = 1.0 if q[c.HEATER_H] >= 1.0 else 0.0


@compiled_in
def _power_heat(k: Numbers, q: Grid) -> None:
    """Draw what the heater needs; where it is not to be had there is less heat, or none."""
    if k.heater_electric == 1:
        wanted = q[c.HEAT] / k.heater_efficiency_frac
        give_way(k, q, wanted)
        q[c.AC_HEAT] = min(wanted, max(q[c.AC_LEFT], 0.0)) * (1.0 - q[c.SPENT])
        q[c.LACKS + c.HEATER] = wanted - q[c.AC_HEAT]
        q[c.HEAT] = q[c.AC_HEAT] * k.heater_efficiency_frac
        take_ac(k, q, q[c.AC_HEAT])
    else:
        q[c.FUEL] = q[c.HEAT] / k.heater_efficiency_frac
    if q[c.BLOWER] > q[c.LEFT] + _NOTHING_W:
        q[c.LACKS + c.HEATER] += q[c.BLOWER] + q[c.AC_HEAT]
        take_ac(k, q, -q[c.AC_HEAT])
        q[c.HEAT], q[c.BLOWER], q[c.AC_HEAT], q[c.FUEL] = 0.0, 0.0, 0.0, 0.0
        q[c.HEATER_H], q[c.STARTS] = 0.0, 0.0
    q[c.LEFT] -= q[c.BLOWER]


@compiled_in
def cool(k: Numbers, t: Tables, state: State, now: Grid, q: Grid) -> None:
    """Cool towards the set point, as far as there is power for it."""
    cools = k.has_cooler == 1 and (k.cooler_off_grid == 1 or q[c.HOOKED] > 0.0)
    if cools and q[c.AIR] > now[c.COOL_AT] and q[c.HEAT] <= 0.0:
        stiff, vapour = 1.0 + q[c.OWN] * q[c.OPENED], state.vapour[k.thermostat]
        need = (q[c.AIR] - now[c.COOL_AT]) * stiff / q[c.OWN]
        dry, wet, full, running = cooling(k, t, need, now[c.COOL_AT], vapour, q[c.OUTSIDE])
        wanted, can = full * running, q[c.LEFT]
        if k.cooler_ac == 1:
            give_way(k, q, wanted)
            can = q[c.AC_LEFT]
            if q[c.HOOKED] <= 0.0:
                can = min(can, q[c.LEFT] * k.inverter_efficiency_frac)
                can = can if k.inverter_w >= full else 0.0
        can *= 1.0 - q[c.SPENT]
        share = 1.0
        if wanted > can:
            share = max(can, 0.0) / wanted
            q[c.LACKS + c.COOLER] = wanted * (1.0 - share)
        driest = 0.5 * vapour * t.room_kg[k.thermostat] / k.step_s * LATENT_J_PER_KG
        q[c.COOL], q[c.COOL_LATENT] = dry * share, min(wet * share, driest)
        q[c.COOLER], q[c.COOLER_H] = wanted * share, running * share
        q[c.AIR] -= q[c.OWN] * q[c.COOL] / stiff
        if k.cooler_ac == 1:
            take_ac(k, q, q[c.COOLER])
        else:
            q[c.LEFT] -= q[c.COOLER]


@compiled_in
def let_in(
    k: Numbers, m: Matrices, state: State, s: Sums, q: Grid, w: Work, shut: int, first: int
) -> None:
    """Let the step's heat into the modes and outputs."""
    rooms, home, count = k.rooms_count, k.thermostat, state.modes.shape[0]
    to_second = q[c.HEAT] * q[c.SECOND_FRAC]
    w.let_in[home] += q[c.OPENED] * (q[c.OUTSIDE] - q[c.AIR]) + q[c.HEAT] - to_second - q[c.COOL]
    if k.second_room >= 0:
        w.let_in[k.second_room] += to_second
    for column in range(rooms + 1):
        value = w.let_in[column]
        s.let_in[shut, column] += value
        if value != 0.0:
            for place in range(count):
                state.modes[place] += value * m.drive[shut, first + column, place]
            for place in range(w.shown.shape[0]):
                w.shown[place] += value * m.drive[shut, first + column, count + place]
    for place in range(rooms):
        state.air[place] = w.shown[place]
        for face in range(3):
            state.faces[place, face] = w.shown[rooms + 3 * place + face]
