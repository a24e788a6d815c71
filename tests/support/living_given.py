"""A plain box of a camper made by hand, for what runs the coupled year."""

from dataclasses import replace
from typing import Any

import numpy as np

from coachwright.living.given import (
    STEPS_PER_DAY,
    Air,
    AirHeater,
    Bank,
    Cooler,
    Day,
    Fridge,
    Frost,
    Given,
    Pattern,
    Seasons,
    Supply,
)
from coachwright.living.given_body import (
    Body,
    Layer,
    Mass,
    Passage,
    Plane,
    Room,
    Surface,
    Window,
)

FOAM = Layer(
    name="foam",
    thickness_mm=40.0,
    conductivity_w_per_m_k=0.035,
    density_kg_per_m3=30.0,
    heat_j_per_kg_k=1400.0,
)
PLY = Layer(
    name="ply",
    thickness_mm=6.0,
    conductivity_w_per_m_k=0.13,
    density_kg_per_m3=500.0,
    heat_j_per_kg_k=1600.0,
)
AWAKE = 96
"""Steps of the day on which somebody is awake: from 7 to 23 o'clock."""


def wall(name: str, area_m2: float, tilt_deg: float, bearing_deg: float = 0.0) -> Surface:
    """Return a surface of foam and ply with a tenth of its area over ribs."""
    level = tilt_deg == 180.0
    return Surface(
        name=name,
        area_m2=area_m2,
        layers=(FOAM, PLY),
        plane=Plane(
            tilt_deg=tilt_deg,
            bearing_deg=bearing_deg,
            sky_frac={0.0: 1.0, 90.0: 0.5}.get(tilt_deg, 0.0),
            sunlit=not level,
        ),
        bridge_w_per_k=0.1 * area_m2 * 5.0,
        bridge_low_w_per_k=0.1 * area_m2 * 3.0,
        bridge_high_w_per_k=0.1 * area_m2 * 8.0,
        bridge_area_m2=0.1 * area_m2,
    )


def day(**fields: Any) -> Day:
    """Return a day of two people: in all day, asleep for eight hours."""
    steps = np.arange(STEPS_PER_DAY)
    asleep = ((steps < 42) | (steps >= 138)).astype(float)

    def row(awake: float, sleeping: float) -> tuple[float, ...]:
        return tuple(float(each) for each in np.where(asleep > 0.0, sleeping, awake))

    made = Day(
        sensible_w=row(150.0, 110.0),
        latent_g_per_h=row(120.0, 70.0),
        co2_l_per_h=row(36.0, 28.0),
        gain_w=row(30.0, 0.0),
        vapour_g_per_h=row(30.0, 0.0),
        occupied_frac=row(1.0, 1.0),
        asleep_frac=row(0.0, 1.0),
        heat_degc=row(20.0, 16.0),
        cool_degc=row(26.0, 26.0),
        blinds_frac=row(0.0, 1.0),
        dc_w=row(25.0, 8.0),
        ac_w=row(0.0, 0.0),
        inside_frac=row(1.0, 1.0),
        dark_w=row(12.0, 0.0),
        fuel_burner_w=row(40.0, 0.0),
    )
    return replace(made, **fields)


def box(**fields: Any) -> Body:
    """Return a box of a camper with a window and a stall in it."""
    made = Body(
        rooms=(
            Room(name="cabin", volume_m3=11.0, leak_per_h=1.0, vapour_buffer_ratio=3.0),
            Room(name="stall", volume_m3=0.9, leak_per_h=0.0),
        ),
        surfaces=(
            wall("roof", 8.0, 0.0),
            wall("left", 8.0, 90.0, 270.0),
            wall("right", 8.0, 90.0, 90.0),
            wall("rear", 3.5, 90.0, 180.0),
            wall("floor", 8.0, 180.0),
            Surface(
                name="partition",
                area_m2=4.0,
                layers=(PLY,),
                plane=Plane(tilt_deg=90.0, sunlit=False),
                outside="cabin",
                room="stall",
            ),
        ),
        windows=(
            Window(
                name="pane",
                area_m2=0.6,
                plane=Plane(tilt_deg=90.0, bearing_deg=90.0, sky_frac=0.5),
                u_w_per_m2k=2.7,
                shgc_frac=0.66,
                transmitted_frac=0.6,
                panes=2,
            ),
        ),
        masses=(Mass(name="furniture", heat_j_per_k=250_000.0, area_m2=12.0),),
        passages=(
            Passage(name="grille", rooms=("cabin", "stall"), conductance_w_per_k=0.0,
                    flow_m3_per_h=30.0),
        ),
    )  # fmt: skip
    return replace(made, **fields)


def bank(**fields: Any) -> Bank:
    """Return a lithium bank of 200 Ah, with changes."""
    made = Bank(
        capacity_ah=200.0,
        charge_v=((0.0, 12.0), (0.1, 12.8), (0.5, 13.1), (0.9, 13.3), (1.0, 13.5)),
        resistance_ohm=0.003,
        charge_limit_a=100.0,
        discharge_limit_a=200.0,
        reserve_frac=0.2,
    )
    return replace(made, **fields)


def cooler(**fields: Any) -> Cooler:
    """Return an air conditioner of 2 kW whose figures do not move with the weather."""
    flat = (1.0, 0.0, 0.0, 0.0, 0.0, 0.0)
    made = Cooler(
        name="cooler",
        rated_w=2000.0,
        rated_input_w=700.0,
        capacity_factor=flat,
        input_factor=flat,
        wet_low_degc=10.0,
        wet_high_degc=25.0,
        dry_low_degc=15.0,
        dry_high_degc=50.0,
        ac=True,
    )
    return replace(made, **fields)


HEATER = AirHeater(
    name="heater",
    most_w=2000.0,
    least_w=500.0,
    draw_most_w=35.0,
    draw_least_w=10.0,
    start_wh=5.0,
    second_room="stall",
    second_frac=0.3,
)


def given(sun_w: Any, **fields: Any) -> Given:
    """Return a box of a camper with everything in it, with changes."""
    one = day()
    made = Given(
        body=box(),
        seasons=Seasons(warm=one, cold=one, driving_warm=one, driving_cold=one),
        pattern=Pattern(parked_d=4.0, drive_h=2.0),
        air=Air(least_m3_per_h=15.0, fan_m3_per_h=120.0, fan_w=12.0, humid_frac=0.65),
        supply=Supply(
            sun_w=sun_w,
            sun_limit_w=400.0,
            drive_w=350.0,
            inverter_w=2000.0,
            inverter_standby_w=8.0,
            inverter_always=False,
            standby_w=3.0,
        ),
        bank=bank(),
        heater=HEATER,
        fridges=(Fridge(name="fridge", draw_w=45.0, duty_frac=0.3, at_degc=25.0),),
        frost=(Frost(name="fresh-tank", place="cabin", ua_w_per_k=3.0, heat_j_per_k=2.0e5),),
    )
    return replace(made, **fields)
