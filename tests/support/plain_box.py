"""A box without people: sun, a bank and a load by the clock, for what concerns the bank alone."""

from collections.abc import Sequence

import numpy as np

from coachwright.climate.model import Hours
from coachwright.living.given import (
    STEPS_PER_DAY,
    Air,
    Bank,
    Day,
    Given,
    Pattern,
    Seasons,
    Supply,
)
from coachwright.living.given_body import Body, Layer, Plane, Room, Surface

BANK = Bank(
    capacity_ah=200.0,
    charge_v=((0.0, 13.0), (1.0, 13.4)),
    resistance_ohm=0.02,
    charge_limit_a=500.0,
    discharge_limit_a=500.0,
    coulombic_frac=1.0,
    reserve_frac=0.2,
    cut_off_frac=0.1,
    charge_from_degc=-60.0,
    room="outside",
)
"""Losses in its resistance alone; the open circuit's voltage rises evenly with the charge."""
LOAD_W = (20.0,) * 7 + (90.0,) * 2 + (40.0,) * 8 + (110.0,) * 5 + (20.0,) * 2
"""By the hour of the day."""


def sunny_box(sun_w: Hours, load_w: Sequence[float] = LOAD_W, bank: Bank = BANK) -> Given:
    """Return a box that is never heated or cooled, with a load by the hour of the day."""
    none, always = (0.0,) * STEPS_PER_DAY, (1.0,) * STEPS_PER_DAY
    day = Day(
        sensible_w=none,
        latent_g_per_h=none,
        co2_l_per_h=none,
        gain_w=none,
        vapour_g_per_h=none,
        occupied_frac=none,
        asleep_frac=none,
        heat_degc=tuple(-60.0 * each for each in always),
        cool_degc=tuple(90.0 * each for each in always),
        blinds_frac=none,
        dc_w=tuple(np.repeat(load_w, STEPS_PER_DAY // 24).tolist()),
        ac_w=none,
        inside_frac=none,
        dark_w=none,
        fuel_burner_w=none,
    )
    foam = Layer(
        name="foam",
        thickness_mm=50.0,
        conductivity_w_per_m_k=0.04,
        density_kg_per_m3=30.0,
        heat_j_per_kg_k=1400.0,
    )
    wall = Surface(
        name="wall", area_m2=40.0, layers=(foam,), plane=Plane(tilt_deg=90.0, sunlit=False)
    )
    return Given(
        body=Body(rooms=(Room(name="cabin", volume_m3=10.0),), surfaces=(wall,)),
        seasons=Seasons(warm=day, cold=day, driving_warm=day, driving_cold=day),
        pattern=Pattern(),
        air=Air(),
        supply=Supply(sun_w=sun_w, sun_efficiency_frac=1.0),
        bank=bank,
    )
