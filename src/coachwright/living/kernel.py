"""The compiled year: one walk through the steps, nothing allocated on the way.

`run` and `walk` take arrays and numbers alone; `simulate` lays them out.  The parts of a step read
and write its row `q` by the places of `kernel_model`; all are compiled into one loop.
"""

# ruff: noqa: PLR0917, PLR2004  # what is compiled takes its arguments by place; halves are halves

import hashlib
from collections.abc import Callable
from types import ModuleType
from typing import Any

from coachwright.living import kernel_damp as damp
from coachwright.living import kernel_flow as flow
from coachwright.living import kernel_heat as heat
from coachwright.living import kernel_model as c
from coachwright.living import kernel_physics as physics
from coachwright.living import kernel_power as power
from coachwright.living.compiling import callable_outside, compiled_in
from coachwright.living.kernel_model import (
    BankNumbers,
    Calendar,
    Grid,
    Matrices,
    Numbers,
    Places,
    Series,
    Site,
    State,
    Sums,
    Tables,
    Work,
)
from coachwright.living.kernel_physics import bank_step, cold_frac, open_circuit_v

across_hour, half, count_hour = flow.hour, flow.half, flow.count_hour
draw_blinds, free_step = flow.draw_blinds, flow.free_step
supply, habits, sockets, bus, served = (
    power.supply,
    power.habits,
    power.sockets,
    power.bus,
    power.served,
)
known_heat, fresh_air, heat_air, cool_air, let_in = (
    heat.known_heat,
    heat.fresh_air,
    heat.heat,
    heat.cool,
    heat.let_in,
)
flows, vapour, fumes, tanks = damp.flows, damp.vapour, damp.fumes, damp.tanks
_SEEN_KG = 1e-6


@compiled_in
def _people(k: Numbers, state: State, now: Grid, q: Grid) -> None:
    """Judge warmth, air and wet faces."""
    air, occupied, asleep = state.air[k.thermostat], now[c.OCCUPIED], now[c.ASLEEP]
    q[c.AIR_SUM], q[c.HOURS_SUM] = air, 1.0
    q[c.OCCUPIED_H], q[c.ASLEEP_H] = occupied, asleep
    q[c.COLD_H] = occupied if air < k.comfort_low_degc else 0.0
    q[c.HOT_H] = occupied if air > k.comfort_high_degc else 0.0
    q[c.CO2_ASLEEP] = asleep * state.co2[k.thermostat]
    if q[c.WET_ANY] > 0.0:
        for face in range(3):
            for place in range(k.rooms_count):
                if state.water[place, face] > _SEEN_KG:
                    q[c.WET + face] = 1.0


@compiled_in
def _sum(k: Numbers, state: State, s: Sums, q: Grid, month: int) -> None:
    """Add the step to its month."""
    total, e = s.month[month], s.extreme[month]
    for place in range(c.SUMMED):
        total[place] += q[place]
    air, misc = state.air[k.thermostat], state.misc
    e[c.AIR_LOW] = min(e[c.AIR_LOW], air)
    e[c.AIR_HIGH] = max(e[c.AIR_HIGH], air)
    e[c.EMPTIEST] = min(e[c.EMPTIEST], misc[c.CHARGE])
    e[c.FULLEST] = max(e[c.FULLEST], misc[c.CHARGE])
    e[c.BANK_LOW] = min(e[c.BANK_LOW], misc[c.BANK_DEGC])
    e[c.CO2_MOST] = max(e[c.CO2_MOST], state.co2[k.thermostat])
    e[c.HEAT_MOST] = max(e[c.HEAT_MOST], q[c.HEAT])
    e[c.COOL_MOST] = max(e[c.COOL_MOST], q[c.COOL])
    for place in range(s.frost_h.shape[1]):
        if state.frost[place] < 0.0:
            s.frost_h[month, place] += k.step_s / 3600.0


@compiled_in
def _keep(k: Numbers, state: State, kept: Series, q: Grid, w: Work, at: int) -> None:
    """Keep the step in the series."""
    rooms, nodes = k.rooms_count, kept.nodes[at]
    nodes[0], nodes[1] = q[c.OUTSIDE], state.misc[c.BANK_DEGC]
    for place in range(4 * rooms):
        nodes[2 + place] = w.shown[place]
    for place in range(state.frost.shape[0]):
        nodes[2 + 4 * rooms + place] = state.frost[place]
    for place in range(rooms):
        kept.rooms[at, 3 * place] = state.vapour[place]
        kept.rooms[at, 3 * place + 1] = state.co2[place]
        water = state.water[place, 0] + state.water[place, 1] + state.water[place, 2]
        kept.rooms[at, 3 * place + 2] = water
    for place in range(c.SUMMED):
        kept.flows[at, place] = q[place]
    kept.flows[at, c.SUMMED] = state.misc[c.CHARGE]
    kept.flows[at, c.SUMMED + 1] = q[c.TAKEN_W]
    kept.flows[at, c.SUMMED + 2] = q[c.BUS_W]
    kept.flows[at, c.SUMMED + 3] = q[c.SUN_W]
    kept.flows[at, c.SUMMED + 4] = q[c.AROUND]


@compiled_in
def _step(
    k: Numbers,
    t: Tables,
    m: Matrices,
    state: State,
    s: Sums,
    w: Work,
    now: Grid,
    between_frac: float,
    unlimited: int,
) -> None:
    """Go one step."""
    q, shut = w.step, int(state.misc[c.SHUT])
    first = m.drive.shape[1] - k.rooms_count - 1
    for place in range(c.SUMMED):
        q[place] = 0.0
    free_step(m, state, s, w, shut, between_frac)
    supply(k, t, state, q, unlimited)
    habits(k, t, state, now, q)
    sockets(k, q)
    known_heat(k, m, state, now, q, w, shut, first)
    fresh_air(k, t, state, now, q, w)
    heat_air(k, m, state, now, q, shut, first)
    cool_air(k, t, state, now, q)
    let_in(k, m, state, s, q, w, shut, first)
    flows(k, t, q, w)
    vapour(k, t, state, now, q, w)
    fumes(k, t, state, now, w)
    tanks(k, t, state, q)
    bus(k, t, state, q, unlimited)
    served(k, now, q)
    _people(k, state, now, q)


@compiled_in
def _weather(
    k: Numbers,
    site: Site,
    days: Calendar,
    q: Grid,
    index: int,
    step: int,
    one: int,
    two: int,
    between_frac: float,
) -> None:
    """Say how it is outside in a step, between the middles of two hours, and where it stands."""
    far = 1.0 - between_frac
    q[c.OUTSIDE] = site.driving[one, 0] * far + site.driving[two, 0] * between_frac
    q[c.DAMP] = site.humidity[one] * far + site.humidity[two] * between_frac
    q[c.HOOKED] = 0.0
    if step < days.hook_until[index] or step >= days.hook_from[index]:
        q[c.HOOKED] = 1.0
    q[c.DRIVE_W] = 0.0
    if days.drive_from[index] <= step < days.drive_to[index]:
        q[c.DRIVE_W] = k.drive_w


@compiled_in
def _go_over(
    k: Numbers,
    m: Matrices,
    site: Site,
    state: State,
    s: Sums,
    w: Work,
    want: int,
    last: int,
    here: int,
    then: int,
) -> None:
    """Go over to the other state of the blinds."""
    shut = int(state.misc[c.SHUT])
    count_hour(site, s, w, shut, last, here, then)
    draw_blinds(k, m, state, w, shut, want)
    state.misc[c.SHUT] = float(want)


@compiled_in
def _walk_hour(
    k: Numbers,
    t: Tables,
    m: Matrices,
    site: Site,
    days: Calendar,
    state: State,
    s: Sums,
    kept: Series,
    w: Work,
    unlimited: int,
    keep: int,
    index: int,
    hour: int,
) -> None:
    """Go the steps of an hour."""
    q, misc = w.step, state.misc
    here, year = days.day[index] * 24 + hour, site.driving.shape[0]
    last, then = (here + year - 1) % year, (here + 1) % year
    steps = t.profile.shape[1] // 24
    q[c.SUN_W] = min(site.sun_w[here] * k.sun_efficiency_frac, k.sun_limit_w)
    q[c.DARKNESS] = site.dark[here]
    was_early, shut = False, -1
    for part in range(steps):
        step = hour * steps + part
        now = t.profile[days.kind[index], step]
        want = 1 if (k.two_states == 1 and now[c.BLINDS] > 0.5) else 0
        moment = (part + 0.5) / steps
        early = moment < 0.5
        if want != int(misc[c.SHUT]):
            _go_over(k, m, site, state, s, w, want, last, here, then)
        if shut != want:
            across_hour(m, site, w, want, last, here, then)
        if shut != want or early != was_early:
            half(w, early)
        shut, was_early = want, early
        between = moment + 0.5 if early else moment - 0.5
        one, two = (last, here) if early else (here, then)
        _weather(k, site, days, q, index, step, one, two, between)
        w.halves[c.EARLY if early else c.LATE] += 1.0
        w.halves[c.EARLY_BETWEEN if early else c.LATE_BETWEEN] += between
        _step(k, t, m, state, s, w, now, between, unlimited)
        if keep > 0:
            _sum(k, state, s, q, days.month[index])
            if keep > 1:
                _keep(k, state, kept, q, w, (index * 24 + hour) * steps + part)
    count_hour(site, s, w, int(misc[c.SHUT]), last, here, then)


def _digest(parts: tuple[ModuleType, ...]) -> int:
    """Return a number that changes with any part, so that what was compiled before is not used."""
    made = hashlib.sha256()
    for part in parts:
        for name, each in sorted(vars(part).items()):
            code = getattr(getattr(each, "py_func", None), "__code__", None)
            if code is not None:
                made.update(f"{name} {code.co_consts!r} {code.co_names}".encode() + code.co_code)
            elif isinstance(each, int | float):
                made.update(f"{name} {each}".encode())
    return int.from_bytes(made.digest()[:6], "big")


def _made(digest: int) -> Callable[..., Any]:
    @callable_outside
    def run(
        k: Numbers,
        t: Tables,
        m: Matrices,
        site: Site,
        days: Calendar,
        state: State,
        s: Sums,
        kept: Series,
        w: Work,
        unlimited: int,
        keep: int,
    ) -> int:
        """Walk through the days; `keep` 0 sums nothing, 1 sums, 2 also keeps series."""
        for index in range(len(days.day)):
            for hour in range(24):
                _walk_hour(k, t, m, site, days, state, s, kept, w, unlimited, keep, index, hour)
        return digest

    return run


run = _made(_digest((c, physics, flow, power, heat, damp)))


@callable_outside
def walk(
    bank: BankNumbers,
    charge_v: Grid,
    share: Grid,
    sun_w: Grid,
    draw_w: Grid,
    around_degc: Grid,
    begins: Places,
    first: int,
    last: int,
    most_steps: int,
    start_frac: float,
    lasted: Places,
    lowest: Grid,
) -> None:
    """Follow stands from `begins[first:last]` until the reserve, or for `most_steps`."""
    whole = sun_w.shape[0]
    for stand in range(first, last):
        at = begins[stand] % whole
        charge, degc = start_frac, around_degc[at]
        low = charge
        lasted[stand] = most_steps + 1
        for step in range(most_steps):
            surplus = sun_w[at] - draw_w[at]
            volts = open_circuit_v(charge_v, charge)
            sag = bank.discharge_limit_a * bank.resistance_ohm
            surplus = max(surplus, -bank.discharge_limit_a * (volts - sag))
            charge, degc, _, _, _, _, _ = bank_step(
                bank, volts, charge, degc, around_degc[at], surplus
            )
            low = min(low, charge)
            if charge <= 1.0 - cold_frac(share, degc) * (1.0 - bank.reserve_frac):
                lasted[stand] = step + 1
                break
            at += 1
            if at == whole:
                at = 0
        lowest[stand] = low
