"""Make the four kinds of day from a build's habits, loads and water."""

from dataclasses import replace

import numpy as np

from coachwright.climate.model import MONTH_OF_HOUR, Weather
from coachwright.electrics.model import Electrics, Season, Supply
from coachwright.living.assumed import assumed
from coachwright.living.clock import DAY_H, clock_h
from coachwright.living.day_profiles import (
    G_PER_KG,
    LATENT_WH_PER_KG,
    Times,
    Wanted,
    profile,
    times,
)
from coachwright.living.given import Day, Pattern, Seasons
from coachwright.living.heating import fuel_heat
from coachwright.living.loads_given import burnt_for_water, light_w, standby_w, uses
from coachwright.living.people import CHILD_FRAC, burner_water_kg, steam_kg
from coachwright.living.rooms_given import OUTSIDE, room_of
from coachwright.model.build import Build
from coachwright.water.model import Water

WARM_FROM_DAY, WARM_TO_DAY = 90, 273
"""1 April to 30 September in the north."""


def seasons(build: Build, electrics: Electrics, water: Water, weather: Weather) -> Seasons:
    """Return the kinds of day of a build at a place."""
    standing, moving = when(build, driving=False), when(build, driving=True)

    def day(kind: Times, season: Season) -> Day:
        using = uses(build, electrics, water, season)
        ready = standby_w(build, electrics, Supply.INVERTER)
        made = profile(
            when=kind,
            wanted=wanted(build, electrics, water, weather, season),
            dc=using[Supply.DC],
            ac=using[Supply.INVERTER],
        )
        return made if ready <= 0.0 else _with_ac(made, ready)

    return Seasons(
        warm=day(standing, Season.SUMMER),
        cold=day(standing, Season.WINTER),
        driving_warm=day(moving, Season.SUMMER),
        driving_cold=day(moving, Season.WINTER),
    )


def _with_ac(made: Day, ready_w: float) -> Day:
    return replace(made, ac_w=tuple(each + ready_w for each in made.ac_w))


def when(build: Build, *, driving: bool) -> Times:
    """Return when the people of a build sleep, are away, cook and drive."""
    habits = build.brief.habits
    moves = drives(build) and driving
    return times(
        asleep_from_h=clock_h(habits.asleep_from),
        asleep_h=habits.asleep_h_per_day,
        away_from_h=clock_h(habits.away_from),
        away_h=habits.away_h_per_day,
        drive_from_h=assumed("drive-start").value,
        drive_h=build.brief.stay.drive_h_per_day if moves else 0.0,
    )


def drives(build: Build) -> bool:
    """Say whether the brief tells of days on the road."""
    return build.brief.stay.drive_h_per_day > 0.0


def pattern(build: Build, electrics: Electrics) -> Pattern:
    """Return how the people of a build travel."""
    stay = build.brief.stay
    return Pattern(
        parked_d=stay.parked_d if drives(build) else 0.0,
        drive_from_h=assumed("drive-start").value,
        drive_h=stay.drive_h_per_day,
        hookup_frac=stay.hookup_frac,
        hookup_w=electrics.shore.continuous_w,
    )


def wanted(
    build: Build, electrics: Electrics, water: Water, weather: Weather, season: Season
) -> Wanted:
    """Return what people want and give off on a day of a season."""
    habits, people = build.brief.habits, build.brief.travellers
    steam = steam_kg(pot_wh=habits.cooking_wh_per_day, steam_frac=assumed("pot-steam").value)
    burnt, burner_kg = _hob_wh_and_kg(build)
    for_water = sum(heat for _, heat in burnt_for_water(water))
    return Wanted(
        adults_factor=sum(CHILD_FRAC if each.child else 1.0 for each in people),
        met_ratio=assumed("sleep-work").value,
        day_degc=habits.day_degc,
        night_degc=habits.night_degc,
        most_degc=habits.most_degc,
        noon_shut=season is Season.SUMMER and is_hot(weather),
        gain_wh=burnt - steam * LATENT_WH_PER_KG + _vessels_wh(build, water),
        vapour_kg=steam + burner_kg,
        shower_kg=len(people) * assumed("shower-vapour").value / G_PER_KG * _has_shower(build),
        burner_wh=burnt + for_water,
        light_w=light_w(build, electrics, season),
    )


def is_hot(weather: Weather) -> bool:
    """Say whether the place's warmest month is hot enough to shut the blinds at midday."""
    sums = np.bincount(MONTH_OF_HOUR, weights=weather.air_degc, minlength=12)
    means = sums / np.bincount(MONTH_OF_HOUR, minlength=12)
    return float(means.max()) >= assumed("hot-month").value


def _hob_wh_and_kg(build: Build) -> tuple[float, float]:
    """Return the heat of a gas hob's fuel [Wh] and its water [kg] of a day; 0 without one."""
    hobs = [
        fitted
        for fitted in build.having("gas_appliance")
        if fitted.part.heater is None
        and fitted.part.water_heater is None
        and fitted.part.gas_appliance is not None
        and fitted.part.gas_appliance.running_h_per_day is None
        and room_of(build, fitted) != OUTSIDE
    ]
    if not hobs:
        return 0.0, 0.0
    gas = fuel_heat("LPG")
    burnt = build.brief.habits.cooking_wh_per_day / assumed("pot-share").value
    water_kg = burner_water_kg(
        burnt_wh=burnt, heat_mj_per_kg=gas.heat_mj_per_kg, water_ratio=gas.water_ratio
    )
    return burnt, water_kg


def _vessels_wh(build: Build, water: Water) -> float:
    """Return what vessels heated by fuel lose into the living space in a day [Wh]."""
    lost = 0.0
    for hot, _ in burnt_for_water(water):
        fitted = build.fitted(hot.name)
        if fitted is None or fitted.part.water_heater is None:
            continue
        if room_of(build, fitted) != OUTSIDE:
            lost += fitted.part.water_heater.loss_w * DAY_H
    return lost


def _has_shower(build: Build) -> bool:
    return any(
        fitted.part.water_outlet is not None and fitted.part.water_outlet.kind == "shower"
        for fitted in build.having("water_outlet")
    )


def warm_days(weather: Weather) -> tuple[int, int]:
    """Return the first day of the warm half-year and the first after it, from 0."""
    if weather.place.latitude_deg >= 0.0:
        return WARM_FROM_DAY, WARM_TO_DAY
    return WARM_TO_DAY, WARM_FROM_DAY
