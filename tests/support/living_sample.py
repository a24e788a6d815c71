"""An invented year of a build, for what only shows: smooth curves and nobody's physics."""

import math
from dataclasses import replace

from coachwright.living.model import (
    Change,
    ColdNight,
    Drying,
    Envelope,
    FreshAir,
    HeatingGrade,
    HotDay,
    Living,
    Loss,
    MonthOfYear,
    Picture,
    SiteYear,
    Stands,
)
from coachwright.model.working import Given, Working

WORKING = Working(
    expression="P = UA · ΔT",
    given=(Given(symbol="UA", meaning="heat lost for each kelvin", value=41.5, unit="W/K"),),
    result=1450.0,
    unit="W",
)
LONGEST_D = 21.0


def warmth_frac(month: int) -> float:
    """Return 0 in January and 1 in July."""
    return 0.5 - 0.5 * math.cos(2.0 * math.pi * (month - 1) / 12.0)


def month_of(month: int) -> MonthOfYear:
    """Return one invented month."""
    warm = warmth_frac(month)
    sun = 18_000.0 + 52_000.0 * warm
    out = {
        "heater": 7_400.0 * (1.0 - warm),
        "cooler": 21_000.0 * max(0.0, warm - 0.6),
        "fridge": 9_000.0 + 9_000.0 * warm,
        "fans": 1_500.0 + 2_000.0 * warm,
        "light": 2_600.0 - 1_500.0 * warm,
        "direct": 6_200.0,
        "alternating": 9_400.0,
        "inverter": 3_300.0,
        "standby": 1_900.0,
        "pads": 800.0 * max(0.0, 0.4 - warm),
        "bank": 1_700.0,
    }
    return MonthOfYear(
        month=month,
        in_wh={"sun": sun, "drive": 8_000.0, "hookup": 2_500.0},
        out_wh=out,
        unmet_wh={"alternating": 2_100.0 * max(0.0, 0.5 - warm), "cooler": 0.0},
        spilled_wh=20_000.0 * warm,
        fuel_l=44.0 * (1.0 - warm),
        burner_l=2.1,
        comfort_frac=0.99 - 0.12 * warm,
        occupied_h=430.0,
        cold_h=430.0 * 0.01,
        hot_h=430.0 * 0.12 * warm,
        heater_frac=0.62 * (1.0 - warm),
        cooler_frac=0.3 * max(0.0, warm - 0.6),
        wet_h={
            "glass": 180.0 * (1.0 - warm),
            "rib": 40.0 * (1.0 - warm),
            "lining": 2.0 * (1.0 - warm),
        },
        frost_h={"fresh-tank": 0.0, "grey-tank": 96.0 * max(0.0, 0.5 - warm)},
        co2_most_ppm=2_350.0,
        co2_night_ppm=1_480.0,
        fullest_frac=1.0,
        emptiest_frac=0.18 + 0.4 * warm,
        air_mean_degc=18.0 + 8.0 * warm,
        air_low_degc=11.0 + 7.0 * warm,
        air_high_degc=22.0 + 15.0 * warm,
        bank_low_degc=4.0 + 16.0 * warm,
        bank_locked_h=3.0 * (1.0 - warm),
    )


def stands_of(month: int | None) -> Stands:
    """Return the invented stands of one month, or of the year."""
    warm = 0.5 if month is None else warmth_frac(month)
    return Stands(
        month=month,
        count=365 if month is None else 30,
        p10_d=1.8 + 8.0 * warm,
        p50_d=min(LONGEST_D, 2.9 + 19.0 * warm),
        p90_d=min(LONGEST_D, 4.6 + 24.0 * warm),
        longest_frac=max(0.0, warm - 0.5),
        water_limited_frac=0.4 * warm,
        followed_d=LONGEST_D,
    )


def picture_of(*, days: int, outside_degc: float, cabin_degc: float) -> Picture:
    """Return an invented stretch of ten-minute steps."""
    steps = days * 144
    hours = [step / 6.0 for step in range(steps)]
    swing = [math.sin(2.0 * math.pi * (hour - 9.0) / 24.0) for hour in hours]
    sun = [max(0.0, 410.0 * each) for each in swing]
    return Picture(
        title="invented",
        day=14,
        step_min=10.0,
        nodes_degc={
            "outside": tuple(outside_degc + 4.0 * each for each in swing),
            "cabin": tuple(cabin_degc + 1.5 * each for each in swing),
            "glass": tuple((outside_degc + cabin_degc) / 2.0 + 3.0 * each for each in swing),
            "rib": tuple((outside_degc + cabin_degc) / 2.0 + 1.0 + each for each in swing),
            "stall": tuple(cabin_degc + 6.0 + 2.0 * each for each in swing),
        },
        charge_frac=tuple(0.7 + 0.2 * each for each in swing),
        flows_w={
            "sun": tuple(sun),
            "drive": tuple(0.0 for _ in hours),
            "heater": tuple(-40.0 - 15.0 * (1.0 - each) for each in swing),
            "fridge": tuple(-45.0 if int(hour * 2) % 2 else 0.0 for hour in hours),
            "alternating": tuple(-900.0 if 18.0 <= hour % 24.0 < 18.5 else 0.0 for hour in hours),
        },
        humidity_frac=tuple(0.5 + 0.1 * each for each in swing),
        co2_ppm=tuple(900.0 + 300.0 * each for each in swing),
    )


COLD = ColdNight(
    outside_degc=-12.0,
    need_w=1450.0,
    need_high_w=1710.0,
    heater_w=2000.0,
    reached_degc=21.5,
    reached_low_degc=18.9,
    heat_up_h=1.4,
    fuel_l=2.3,
    battery_wh=310.0,
    picture=picture_of(days=1, outside_degc=-12.0, cabin_degc=18.0),
    working=WORKING,
)
HOT = HotDay(
    outside_degc=37.0,
    hours_h=9.6,
    hours_without_sun_h=6.1,
    duty_frac=0.71,
    reached_degc=27.2,
    without_degc=44.3,
    day_wh=4200.0,
    mild_duty_frac=0.31,
    picture=picture_of(days=1, outside_degc=33.0, cabin_degc=26.0),
    working=WORKING,
)
DRYING = Drying(
    room="shower-stall",
    water_kg=2.5,
    room_degc=41.0,
    hours_h=3.2,
    reachable_degc=63.0,
    hot=True,
    working=WORKING,
)
ENVELOPE = Envelope(
    losses=tuple(
        Loss(
            name=name,
            area_m2=area,
            ua_w_per_k=ua,
            low_w_per_k=low,
            high_w_per_k=high,
            share_frac=ua / 41.5,
        )
        for name, area, ua, low, high in (
            ("roof", 7.9, 7.4, 6.1, 9.2),
            ("walls", 14.2, 13.3, 10.8, 17.4),
            ("floor", 7.5, 5.8, 5.8, 5.8),
            ("doors", 4.1, 4.6, 3.9, 5.6),
            ("glass", 1.9, 7.2, 7.2, 7.2),
            ("leaks", 0.0, 3.2, 3.2, 3.2),
        )
    ),
    ua_w_per_k=41.5,
    ua_low_w_per_k=37.0,
    ua_high_w_per_k=48.4,
    mean_u_w_per_m2k=1.08,
    mean_u_low_w_per_m2k=0.95,
    mean_u_high_w_per_m2k=1.27,
    leak_w_per_k=3.2,
    heat_wh_per_k=88.0,
    working=WORKING,
)
YEAR = SiteYear(
    site="lakeside",
    title="Lakeside, invented",
    origin="synthetic",
    attribution="Invented for tests by nobody",
    caution="The weather is synthetic: made from monthly means, up to 1.2 °C off where checked.",
    months=tuple(month_of(month) for month in range(1, 13)),
    stands=tuple(stands_of(month) for month in range(1, 13)),
    whole_year=stands_of(None),
    cold_night=COLD,
    hot_day=HOT,
    drying=DRYING,
    balance_error_ratio=1e-12,
)
CHANGE = Change(
    name="one more panel",
    nine_of_ten_d=2.4,
    was_nine_of_ten_d=1.8,
    fuel_l=310.0,
    was_fuel_l=312.0,
    comfort_frac=0.955,
    was_comfort_frac=0.954,
)
LIVING = Living(
    envelope=ENVELOPE,
    years=(
        YEAR,
        replace(YEAR, site="hillside", title="Hillside, invented", hot_day=None, drying=None),
    ),
    changes=(CHANGE,),
    missing="",
    figures=(),
    grades=(
        HeatingGrade(
            grade=2,
            wanted=True,
            outside_degc=0.0,
            reached_degc=21.5,
            reached_low_degc=20.1,
            heat_up_h=None,
            working=WORKING,
        ),
    ),
    fresh_air=FreshAir(people_count=2, open_m3_per_h=31.0, needed_m3_per_h=50.0, working=WORKING),
    season_months=(1, 2, 3, 11, 12),
)
WITHOUT = Living(
    envelope=None, years=(), changes=(), missing="the brief names no site", figures=()
)
