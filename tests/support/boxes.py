"""Boxes of rooms for the coupled year: days without people, a box of air, a small van."""

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import HOURS
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
from coachwright.living.given_body import Body, Layer, Mass, Plane, Room, Surface, Window

_FIELDS = (
    "sensible_w",
    "latent_g_per_h",
    "co2_l_per_h",
    "gain_w",
    "vapour_g_per_h",
    "occupied_frac",
    "asleep_frac",
    "heat_degc",
    "cool_degc",
    "blinds_frac",
    "dc_w",
    "ac_w",
    "inside_frac",
    "dark_w",
    "fuel_burner_w",
)
CLOCK_H = np.arange(STEPS_PER_DAY) / 6.0
PLY = Layer(
    name="plywood",
    thickness_mm=9.0,
    conductivity_w_per_m_k=0.13,
    density_kg_per_m3=500.0,
    heat_j_per_kg_k=1600.0,
)
FOAM = Layer(
    name="foam",
    thickness_mm=25.0,
    conductivity_w_per_m_k=0.0235,
    density_kg_per_m3=30.0,
    heat_j_per_kg_k=1470.0,
)
STEEL = Layer(
    name="steel",
    thickness_mm=0.9,
    conductivity_w_per_m_k=50.0,
    density_kg_per_m3=7800.0,
    heat_j_per_kg_k=450.0,
)


def day(**told: float | Sequence[float] | NDArray[np.float64]) -> Day:
    """Return a day of zeros but for what is told: one value, or one for each step."""
    values: dict[str, Any] = dict.fromkeys(_FIELDS, (0.0,) * STEPS_PER_DAY)
    values |= {"heat_degc": (-60.0,) * STEPS_PER_DAY, "cool_degc": (90.0,) * STEPS_PER_DAY}
    for name, value in told.items():
        row = np.broadcast_to(np.asarray(value, dtype=np.float64), STEPS_PER_DAY)
        values[name] = tuple(row.tolist())
    return Day(**values)


def seasons(same: Day) -> Seasons:
    """Return seasons whose days are all the same."""
    return Seasons(warm=same, cold=same, driving_warm=same, driving_cold=same)


def air_box(*, heat_j_per_k: float, loss_w_per_k: float, **told: Any) -> Given:
    """Return a room of nothing but air, which loses heat by its leaks alone."""
    volume_m3 = heat_j_per_k / (1.2 * 1006.0)
    leak_per_h = loss_w_per_k * 3600.0 / heat_j_per_k
    room = Room(name="cabin", volume_m3=volume_m3, leak_per_h=leak_per_h)
    return box(Body(rooms=(room,), surfaces=()), **told)


def box(body: Body, **told: Any) -> Given:
    """Return a body without people, heater or bank but for what is told."""
    values: dict[str, Any] = {
        "body": body,
        "seasons": seasons(day()),
        "pattern": Pattern(),
        "air": Air(free_cooling=False),
        "supply": Supply(sun_w=np.zeros(HOURS)),
    }
    return Given(**(values | told))


def van_body(rib: float = 0.5) -> Body:
    """Return a small insulated body with two windows, a stall, and furniture."""
    faces = (
        ("left", 9.0, 90.0, 270.0, 0.5),
        ("right", 9.0, 90.0, 90.0, 0.5),
        ("roof", 9.0, 0.0, 0.0, 1.0),
        ("floor", 9.0, 180.0, 0.0, 0.0),
        ("rear", 3.0, 90.0, 180.0, 0.5),
    )
    outer = tuple(
        Surface(
            name=name,
            area_m2=area,
            layers=(STEEL, FOAM, PLY),
            plane=Plane(tilt_deg=tilt, bearing_deg=bearing, sky_frac=sky, sunlit=tilt < 180.0),
            bridge_w_per_k=rib * area,
            bridge_area_m2=0.08 * area,
        )
        for name, area, tilt, bearing, sky in faces
    )
    stall = Surface(
        name="stall wall",
        area_m2=4.0,
        layers=(PLY,),
        plane=Plane(tilt_deg=90.0, sunlit=False),
        outside="stall",
    )
    shell = Surface(
        name="stall shell",
        area_m2=2.0,
        layers=(STEEL, FOAM, PLY),
        plane=Plane(tilt_deg=90.0, bearing_deg=90.0, sky_frac=0.5),
        room="stall",
    )
    blind: dict[str, Any] = {"blind_frac": 0.3, "blind_resistance_m2k_per_w": 0.15}
    side = Plane(tilt_deg=90.0, bearing_deg=270.0, sky_frac=0.5)
    windows = (
        Window(
            name="pane",
            area_m2=1.5,
            plane=side,
            u_w_per_m2k=2.6,
            shgc_frac=0.7,
            transmitted_frac=0.65,
            panes=2,
            **blind,
        ),
        Window(
            name="windscreen",
            area_m2=1.5,
            plane=Plane(tilt_deg=60.0, sky_frac=0.6),
            u_w_per_m2k=5.8,
            shgc_frac=0.65,
            transmitted_frac=0.6,
            **blind,
        ),
    )
    return Body(
        rooms=(Room(name="cabin", volume_m3=13.0), Room(name="stall", volume_m3=1.5)),
        surfaces=(*outer, stall, shell),
        windows=windows,
        masses=(Mass(name="furniture", heat_j_per_k=250e3, area_m2=15.0, sun_frac=0.2),),
    )


def van(**told: Any) -> Given:
    """Return a small van with everything in it, but for what is told."""
    asleep = ((CLOCK_H < 7.0) | (CLOCK_H >= 22.5)).astype(np.float64)
    cooking = (np.abs(CLOCK_H - 18.0) < 0.4).astype(np.float64)
    lived = day(
        sensible_w=150.0 - 30.0 * asleep,
        latent_g_per_h=90.0,
        co2_l_per_h=30.0,
        gain_w=400.0 * cooking,
        vapour_g_per_h=600.0 * cooking,
        occupied_frac=1.0,
        asleep_frac=asleep,
        heat_degc=20.0 - 5.0 * asleep,
        cool_degc=26.0,
        blinds_frac=asleep,
        dc_w=25.0,
        ac_w=60.0 * (np.abs(CLOCK_H - 19.0) < 1.0).astype(np.float64),
        inside_frac=1.0,
        dark_w=25.0 * (1.0 - asleep),
        fuel_burner_w=500.0 * cooking,
    )
    values: dict[str, Any] = {
        "seasons": seasons(lived),
        "pattern": Pattern(parked_d=4.0, drive_h=3.0, hookup_frac=0.1, hookup_w=2000.0),
        "air": Air(
            least_m3_per_h=20.0,
            fan_m3_per_h=300.0,
            fan_w=20.0,
            hatch_m3_per_h=100.0,
            humid_frac=0.75,
        ),
        "supply": Supply(
            sun_w=np.zeros(HOURS),
            drive_w=400.0,
            hookup_charge_w=600.0,
            inverter_w=2000.0,
            inverter_standby_w=15.0,
            standby_w=4.0,
        ),
        "bank": Bank(
            capacity_ah=300.0,
            charge_v=((0.0, 11.7), (0.05, 12.7), (0.2, 13.0), (0.9, 13.3), (1.0, 13.5)),
            resistance_ohm=0.008,
            charge_limit_a=150.0,
            discharge_limit_a=200.0,
            cold_share_frac=((-20.0, 0.48), (0.0, 0.79), (25.0, 1.0)),
            pads_w=60.0,
        ),
        "heater": AirHeater(
            name="heater",
            most_w=2000.0,
            least_w=800.0,
            draw_most_w=30.0,
            draw_least_w=10.0,
            start_wh=5.0,
            altitude_frac_per_km=0.1,
            second_room="stall",
            second_frac=0.2,
        ),
        "cooler": COOLER,
        "fridges": (Fridge(name="fridge", draw_w=60.0, duty_frac=0.35, at_degc=25.0),),
        "frost": (
            Frost(name="tank", place="outside", ua_w_per_k=3.0, heat_j_per_k=314e3, heated_w=40.0),
        ),
    }
    return box(told.pop("body", van_body()), **(values | told))


COOLER = Cooler(
    name="cooler",
    rated_w=3000.0,
    rated_input_w=1100.0,
    capacity_factor=(0.6405, 0.01568, 0.0004531, 0.001615, -0.0001825, 6.614e-05),
    input_factor=(2.287, -0.1732, 0.004745, 0.01662, 0.000484, -0.001306),
    wet_low_degc=12.78,
    wet_high_degc=23.89,
    dry_low_degc=18.0,
    dry_high_degc=46.1,
    ac=True,
)
"""Curves of window units: [energyplus-coils] as the vectors C03 to C05 hold them."""
