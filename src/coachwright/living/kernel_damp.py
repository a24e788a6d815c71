"""Compiled parts of a step: vapour, carbon dioxide, tanks."""

# ruff: noqa: PLR0917  # what is compiled takes its arguments by place; halves are halves

from coachwright.living import kernel_model as c
from coachwright.living.compiling import compiled_in
from coachwright.living.kernel_heat import LATENT_J_PER_KG
from coachwright.living.kernel_model import Grid, Numbers, State, Tables, Work
from coachwright.living.kernel_physics import saturated_ratio, solve_small

VAPOUR_KG_PER_M2S = 3.0 / 1006.0
"""Vapour to a face for each kilogram per kilogram: film over air's heat. [energyplus-coils]"""
_FROST_FREE_DEGC = 2.0


@compiled_in
def flows(k: Numbers, t: Tables, q: Grid, w: Work) -> None:
    """Say how much fresh air each room has [m3/s]."""
    for place in range(k.rooms_count):
        w.rates[place, 3] = t.leak_m3_per_s[place]
    w.rates[k.thermostat, 3] += q[c.OPENED] / (k.flow_w_per_k * 3600.0)
    q[c.FRESH] = w.rates[k.thermostat, 3] * 3600.0


@compiled_in
def _mixed(
    k: Numbers,
    t: Tables,
    w: Work,
    held: Grid,
    was: Grid,
    outside: float,
    per: float,
    source: float,
) -> None:
    """Lay and solve what rooms hold after a step: stores, fresh air, each other, faces."""
    rooms = k.rooms_count
    for place in range(rooms):
        stored = held[place] / k.step_s
        fresh = w.rates[place, 3] * per
        diagonal = stored + fresh + w.rates[place, 4]
        w.right[place] = stored * was[place] + fresh * outside + w.rates[place, 5]
        for other in range(rooms):
            if other != place:
                through = t.passage_m3_per_s[place, other] * per
                w.small[place, other] = -through
                diagonal += through
        w.small[place, place] = diagonal
    w.right[k.thermostat] += source
    if rooms == 1:
        w.right[0] /= w.small[0, 0]
    else:
        solve_small(w.small, w.right, rooms)


@compiled_in
def vapour(k: Numbers, t: Tables, state: State, now: Grid, q: Grid, w: Work) -> None:
    """Mix the vapour; where it is more than a face holds, or a face is wet, let it settle."""
    rooms, density = k.rooms_count, k.flow_kg_per_s * 3600.0
    dried = q[c.COOL_LATENT] / LATENT_J_PER_KG
    source = now[c.VAPOUR] - dried
    for place in range(rooms):
        w.rates[place, 4], w.rates[place, 5] = 0.0, 0.0
    _mixed(k, t, w, t.room_kg, state.vapour, q[c.DAMP], density, source)
    wet = False
    for place in range(rooms):
        for face in range(3):
            if t.seen_m2[place, face] > 0.0:
                full = saturated_ratio(t.saturated, state.faces[place, face])
                if state.water[place, face] > 0.0 or w.right[place] > full:
                    rate = t.seen_m2[place, face] * VAPOUR_KG_PER_M2S
                    w.rates[place, face] = rate
                    w.rates[place, 4] += rate
                    w.rates[place, 5] += rate * full
                    wet = True
                else:
                    w.rates[place, face] = 0.0
    q[c.WET_ANY] = 1.0 if wet else 0.0
    if wet:
        _mixed(k, t, w, t.room_kg, state.vapour, q[c.DAMP], density, source)
        _settle(k, t, state, q, w)
        _mixed(k, t, w, t.room_kg, state.vapour, q[c.DAMP], density, source)
    came = 0.0
    for place in range(rooms):
        came += w.rates[place, 3] * density * (q[c.DAMP] - w.right[place])
        state.vapour[place] = w.right[place]
    q[c.VAPOUR_IN], q[c.VAPOUR_CAME], q[c.DRIED] = now[c.VAPOUR], came, dried
    q[c.VAPOUR_MOVED] = abs(came) + now[c.VAPOUR] + dried


@compiled_in
def _settle(k: Numbers, t: Tables, state: State, q: Grid, w: Work) -> None:
    """Fix the mass that settles on faces or dries from them; the air follows from it."""
    for place in range(k.rooms_count):
        taken = 0.0
        for face in range(3):
            if w.rates[place, face] > 0.0:
                full = saturated_ratio(t.saturated, state.faces[place, face])
                mass = w.rates[place, face] * (w.right[place] - full) * k.step_s
                mass = max(mass, -state.water[place, face])
                state.water[place, face] += mass
                taken += mass
                q[c.CONDENSED] += max(mass, 0.0) * 3600.0 / k.step_s
        w.rates[place, 4], w.rates[place, 5] = 0.0, -taken / k.step_s


@compiled_in
def fumes(k: Numbers, t: Tables, state: State, now: Grid, w: Work) -> None:
    """Mix the carbon dioxide."""
    for place in range(k.rooms_count):
        w.rates[place, 4], w.rates[place, 5] = 0.0, 0.0
    _mixed(k, t, w, t.room_m3, state.co2, c.OUTSIDE_PPM, 1.0, 1e6 * now[c.CO2])
    for place in range(k.rooms_count):
        state.co2[place] = w.right[place]


@compiled_in
def tanks(k: Numbers, t: Tables, state: State, q: Grid) -> None:
    """Let tanks and runs follow what is round them."""
    for place in range(t.frost.shape[0]):
        spot = int(t.frost[place, 0])
        around = q[c.OUTSIDE] if spot < 0 else state.air[spot]
        warmed = 0.0
        if state.frost[place] < _FROST_FREE_DEGC:
            warmed = t.frost[place, 3] * q[c.DC_FRAC]
        held = t.frost[place, 2] / k.step_s
        gained = held * state.frost[place] + t.frost[place, 1] * around + warmed
        state.frost[place] = gained / (held + t.frost[place, 1])
