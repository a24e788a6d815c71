"""Some days of a run, told for a drawing."""

from coachwright.living.model import Picture
from coachwright.living.simulate import Run
from coachwright.living.vapour import saturated_pa

_FLOWS = (
    ("sun", "sun_w", 1.0),
    ("drive", "drive_w", 1.0),
    ("hookup", "hookup_w", 1.0),
    ("heater", "heater_w", -1.0),
    ("cooler", "cooler_w", -1.0),
    ("fridge", "fridge_w", -1.0),
    ("fans", "fans_w", -1.0),
    ("light", "light_w", -1.0),
    ("direct", "direct_w", -1.0),
    ("alternating", "alternating_w", -1.0),
    ("inverter", "inverter_w", -1.0),
    ("standby", "standby_w", -1.0),
    ("pads", "pads_w", -1.0),
)
_RATIO = 0.621945
"""Molar mass of water over that of dry air. [ashrae-psychrometrics]"""
_PRESSURE_PA = 101325.0
_FACES = ("glass", "rib", "lining")


def picture(*, run: Run, title: str) -> Picture:
    """Return a run with its series as a picture.

    Parameters
    ----------
    run
        With `series`.
    title
        Of the picture.

    Notes
    -----
    Relative humidity φ = p / p_s at sea level, from the vapour w: p = P w / (0.621945 + w).

    References
    ----------
    [ashrae-psychrometrics]
    """
    home = run.given.thermostat_room
    nodes = {"outside": run.nodes_degc["outside"], home: run.nodes_degc[home]}
    seen = {"glass": bool(run.given.body.windows), "rib": True, "lining": True}
    for face in _FACES:
        if seen[face] and f"{home} {face}" in run.nodes_degc:
            nodes[face] = run.nodes_degc[f"{home} {face}"]
    for room in run.given.body.rooms:
        if room.name != home:
            nodes[room.name] = run.nodes_degc[room.name]
    if run.given.bank is not None:
        nodes["bank"] = run.nodes_degc["bank"]
    vapour = run.rooms[f"{home} vapour"]
    pressure = _PRESSURE_PA * vapour / (_RATIO + vapour)
    humidity = pressure / saturated_pa(at_degc=run.nodes_degc[home])
    return Picture(
        title=title,
        day=run.from_day,
        step_min=run.step_min,
        nodes_degc={name: tuple(values.round(3).tolist()) for name, values in nodes.items()},
        charge_frac=tuple(run.flows_w["charge_frac"].round(3).tolist()) if run.given.bank else (),
        flows_w={
            name: tuple(((run.flows_w[column] * sign).round(3) + 0.0).tolist())
            for name, column, sign in _FLOWS
            if run.flows_w[column].any()
        },
        humidity_frac=tuple(humidity.round(3).tolist()),
        co2_ppm=tuple(run.rooms[f"{home} co2_ppm"].round(3).tolist()),
    )
