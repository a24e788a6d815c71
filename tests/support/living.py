"""Results of the coupled year made by hand, for what reads them: rules, figures, shells."""

from dataclasses import replace
from typing import Any

from coachwright.living.model import (
    ColdNight,
    CoolerSupply,
    Drying,
    Envelope,
    FreshAir,
    HeatingGrade,
    HotDay,
    InverterBay,
    Living,
    Loss,
    MonthOfYear,
    Picture,
    SiteYear,
    Stands,
)
from coachwright.model.working import Given, Working

WORKING = Working(
    expression="x = a",
    given=(Given(symbol="a", meaning="made by hand", value=1.0, unit="1"),),
    result=1.0,
    unit="1",
)
STEPS = 144
PICTURE = Picture(
    title="made by hand",
    day=0,
    step_min=10.0,
    nodes_degc={
        "outside": (0.0,) * STEPS,
        "cabin": (20.0,) * STEPS,
        "glass": (5.0,) * STEPS,
        "rib": (4.0,) * STEPS,
    },
    charge_frac=(0.8,) * STEPS,
    flows_w={"sun": (0.0,) * STEPS, "heater": (-30.0,) * STEPS},
    humidity_frac=(0.5,) * STEPS,
    co2_ppm=(900.0,) * STEPS,
)


def month(number: int, **fields: Any) -> MonthOfYear:
    """Return a month in which nothing is wrong, with changes."""
    made = MonthOfYear(
        month=number,
        in_wh={"sun": 30_000.0, "drive": 5_000.0, "hookup": 0.0},
        out_wh={"heater": 8_000.0, "fridge": 12_000.0, "direct": 9_000.0, "bank": 1_000.0},
        unmet_wh={},
        spilled_wh=2_000.0,
        fuel_l=20.0,
        burner_l=1.0,
        comfort_frac=0.99,
        occupied_h=700.0,
        cold_h=5.0,
        hot_h=2.0,
        heater_frac=0.4,
        cooler_frac=0.0,
        wet_h={"glass": 100.0, "rib": 10.0, "lining": 0.0},
        frost_h={"fresh-tank": 0.0},
        co2_most_ppm=1400.0,
        co2_night_ppm=900.0,
        fullest_frac=1.0,
        emptiest_frac=0.4,
        air_mean_degc=19.0,
        air_low_degc=15.0,
        air_high_degc=27.0,
    )
    return replace(made, **fields)


def stands(number: int | None, p10_d: float, p50_d: float, p90_d: float) -> Stands:
    """Return the stands of a month."""
    return Stands(
        month=number,
        count=30,
        p10_d=p10_d,
        p50_d=p50_d,
        p90_d=p90_d,
        longest_frac=0.0,
        water_limited_frac=0.25,
        followed_d=21.0,
    )


def cold_night(**fields: Any) -> ColdNight:
    """Return a cold night that the heater masters, with changes."""
    made = ColdNight(
        outside_degc=-12.0,
        need_w=1500.0,
        need_high_w=1800.0,
        heater_w=2000.0,
        reached_degc=16.0,
        reached_low_degc=16.0,
        heat_up_h=1.5,
        fuel_l=3.5,
        battery_wh=700.0,
        picture=PICTURE,
        working=WORKING,
    )
    return replace(made, **fields)


def hot_day(**fields: Any) -> HotDay:
    """Return a hot day with an air conditioner, with changes."""
    made = HotDay(
        outside_degc=35.0,
        hours_h=14.0,
        hours_without_sun_h=9.0,
        duty_frac=0.5,
        reached_degc=25.0,
        without_degc=41.0,
        day_wh=9000.0,
        mild_duty_frac=0.3,
        picture=PICTURE,
        working=WORKING,
    )
    return replace(made, **fields)


def drying(**fields: Any) -> Drying:
    """Return a drying of kit in a stall, with changes."""
    made = Drying(
        room="stall",
        water_kg=2.0,
        room_degc=34.0,
        hours_h=6.0,
        reachable_degc=48.0,
        hot=False,
        working=WORKING,
    )
    return replace(made, **fields)


def year(**fields: Any) -> SiteYear:
    """Return a year at a site: January's stays are the shortest, with changes."""
    made = SiteYear(
        site="testville",
        title="Testville",
        origin="measured",
        attribution="made by hand",
        caution="",
        months=tuple(month(number) for number in range(1, 13)),
        stands=tuple(
            stands(number, 2.0 + number, 4.0 + number, 8.0 + number) for number in range(1, 13)
        ),
        whole_year=stands(None, 3.5, 8.0, 15.0),
        cold_night=cold_night(),
        hot_day=hot_day(),
        drying=None,
        balance_error_ratio=1e-12,
        supply=CoolerSupply(
            name="cooler",
            input_w=1500.0,
            through_inverter=True,
            can_give_w=2000.0,
            working=WORKING,
        ),
        bay=InverterBay(
            room="cabin",
            names=("inverter",),
            most_loss_w=200.0,
            flow_m3_per_h=59.0,
            vent_m2=0.05,
            warmest_degc=33.0,
            working=WORKING,
        ),
    )
    return replace(made, **fields)


def envelope(**fields: Any) -> Envelope:
    """Return a heat loss, with changes."""
    made = Envelope(
        losses=(
            Loss(
                name="walls",
                area_m2=20.0,
                ua_w_per_k=30.0,
                low_w_per_k=25.0,
                high_w_per_k=40.0,
                share_frac=0.6,
            ),
        ),
        ua_w_per_k=50.0,
        ua_low_w_per_k=45.0,
        ua_high_w_per_k=60.0,
        mean_u_w_per_m2k=1.3,
        mean_u_low_w_per_m2k=1.1,
        mean_u_high_w_per_m2k=1.6,
        leak_w_per_k=4.0,
        heat_wh_per_k=100.0,
        working=WORKING,
    )
    return replace(made, **fields)


def grade(number: int, **fields: Any) -> HeatingGrade:
    """Return a heating grade that is reached, with changes."""
    made = HeatingGrade(
        grade=number,
        wanted=True,
        outside_degc=0.0 if number < 3 else -15.0,
        reached_degc=30.0,
        reached_low_degc=27.0,
        heat_up_h=3.0 if number == 3 else None,
        working=WORKING,
    )
    return replace(made, **fields)


def fresh_air(**fields: Any) -> FreshAir:
    """Return enough fresh air for two, with changes."""
    made = FreshAir(people_count=2, open_m3_per_h=45.0, needed_m3_per_h=30.0, working=WORKING)
    return replace(made, **fields)


def living(*years: SiteYear, **fields: Any) -> Living:
    """Return what the coupled year says, with changes; one quiet year where none is given."""
    made = Living(
        envelope=envelope(),
        years=years or (year(),),
        changes=(),
        missing="",
        figures=(),
        grades=(grade(2), grade(3)),
        fresh_air=fresh_air(),
    )
    return replace(made, **fields)


def nothing(missing: str = "a site whose weather is known") -> Living:
    """Return what the coupled year says where it could not be computed."""
    return Living(envelope=None, years=(), changes=(), missing=missing, figures=())
