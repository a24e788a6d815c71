"""One kind of day, step by step: who is in, what they give off, what is wanted and drawn."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from coachwright.living.clock import (
    DAY_H,
    STEP_H,
    added_w,
    first_free_h,
    laid_w,
    shape_frac,
)
from coachwright.living.given import STEPS_PER_DAY, Day
from coachwright.living.people import asleep, awake

AFTER_WAKING_H, BREAKFAST_H, BREAKFAST_FRAC = 0.5, 0.5, 0.4
BEFORE_SLEEP_H, DINNER_H = 3.5, 1.0
"""Meals: half an hour after waking, three and a half before sleep. [shop-practice-living]"""
NOON_FROM_H, NOON_LASTS_H = 11.0, 6.0
"""When blinds are shut on hot days. [shop-practice-living]"""
LONGEST_MEAL_USE_H = 2.0
STRONG_W = 400.0
"""From this power on a short use counts as cooking: it runs while a meal is made."""
OFF_DEGC, NEVER_DEGC = -60.0, 99.0
"""Set points of a thermostat that is off."""
G_PER_KG = 1000.0
LATENT_WH_PER_KG = 2.4536e6 / 3600.0
"""Of vapour in the room's air, at 20 °C. [ashrae-psychrometrics]"""


@dataclass(frozen=True, kw_only=True, slots=True)
class Times:
    """When people sleep, are away, and cook; shares of each step."""

    asleep_frac: tuple[float, ...]
    away_frac: tuple[float, ...]
    awake_frac: tuple[float, ...]
    meals_frac: tuple[float, ...]
    after_waking_frac: tuple[float, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Use:
    """A load's energy on one day, at its own terminals.

    Attributes
    ----------
    inside_frac
        Share of it that warms the living space.
    """

    energy_wh: float
    use_h: float
    draw_w: float
    inside_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Wanted:
    """What the people of a day want and give off.

    Attributes
    ----------
    adults_factor
        People, children counted as a share of one.
    met_ratio
        Metabolic rate asleep.
    noon_shut
        Blinds are shut at midday against the sun.
    gain_wh
        Heat of cooking and hot water into the air that no load brings; less than 0 where steam
        takes heat that a load tells.
    vapour_kg
        Of burners and pots.
    shower_kg
        Vapour of showers.
    burner_wh
        Fuel of cooking and hot water.
    light_w
        While it is dark and people are awake.
    """

    adults_factor: float
    met_ratio: float
    day_degc: float
    night_degc: float
    most_degc: float
    noon_shut: bool
    gain_wh: float
    vapour_kg: float
    shower_kg: float
    burner_wh: float
    light_w: float


@cache
def times(
    *,
    asleep_from_h: float,
    asleep_h: float,
    away_from_h: float,
    away_h: float,
    drive_from_h: float = 0.0,
    drive_h: float = 0.0,
) -> Times:
    """Return when people sleep, are away and cook.

    Parameters
    ----------
    asleep_from_h
        From midnight. [h]
    asleep_h
        How long they sleep. [h]
    away_from_h
        When they leave. [h]
    away_h
        How long they are away. [h]
    drive_from_h
        When they drive: nobody is in the living space. [h]
    drive_h
        How long they drive. [h]

    Notes
    -----
    Who is away does not sleep in the vehicle.  Breakfast is half an hour after waking for half
    an hour, dinner three and a half hours before sleep for an hour; a meal that falls into an
    absence or a sleep is made at the first time after it when somebody is in and awake.
    """
    away = tuple(
        max(gone, driving)
        for gone, driving in zip(
            shape_frac(from_h=away_from_h, lasts_h=away_h),
            shape_frac(from_h=drive_from_h, lasts_h=drive_h),
            strict=True,
        )
    )
    sleeping = tuple(
        share * (1.0 - gone)
        for share, gone in zip(
            shape_frac(from_h=asleep_from_h, lasts_h=asleep_h), away, strict=True
        )
    )
    busy = added_w(away, sleeping)
    up = tuple(max(0.0, 1.0 - each) for each in busy)
    woken = (asleep_from_h + asleep_h) % DAY_H
    first = first_free_h(
        wanted_h=(woken + AFTER_WAKING_H) % DAY_H, lasts_h=BREAKFAST_H, taken_frac=busy
    )
    last = first_free_h(
        wanted_h=(asleep_from_h - BEFORE_SLEEP_H) % DAY_H, lasts_h=DINNER_H, taken_frac=busy
    )
    breakfast = shape_frac(from_h=first, lasts_h=BREAKFAST_H)
    dinner = shape_frac(from_h=last, lasts_h=DINNER_H)
    long = BREAKFAST_FRAC * DINNER_H / (1.0 - BREAKFAST_FRAC) / BREAKFAST_H
    return Times(
        asleep_frac=sleeping,
        away_frac=away,
        awake_frac=up,
        meals_frac=tuple(one * long + other for one, other in zip(breakfast, dinner, strict=True)),
        after_waking_frac=breakfast,
    )


def placed_w(use: Use, when: Times) -> tuple[float, ...]:
    """Return when a load draws [W]; the day's sum is its energy.

    Notes
    -----
    A strong load of short use runs while meals are made; what runs longer than people are up
    runs all day; the rest is spread over the hours in which somebody is in and awake.

    References
    ----------
    [shop-practice-living]
    """
    if use.draw_w >= STRONG_W and use.use_h <= LONGEST_MEAL_USE_H:
        return laid_w(energy_wh=use.energy_wh, shape_frac=when.meals_frac)
    if use.use_h > sum(when.awake_frac) * STEP_H:
        return (use.energy_wh / DAY_H,) * STEPS_PER_DAY
    return laid_w(energy_wh=use.energy_wh, shape_frac=when.awake_frac)


def profile(*, when: Times, wanted: Wanted, dc: Sequence[Use], ac: Sequence[Use]) -> Day:
    """Return one kind of day.

    Parameters
    ----------
    when
        People sleep, are away, cook.
    wanted
        What they want and give off.
    dc
        Loads on direct current.
    ac
        Loads behind the inverter.

    Notes
    -----
    Awake: seated at rest at the day's set point; asleep: at the night's.  Warmed to the day's
    temperature while somebody is up, to the night's otherwise; cooled while somebody is in.
    Blinds are shut while somebody sleeps or nobody is in, and on hot days at midday.
    """
    inside = tuple(1.0 - each for each in when.away_frac)
    up = awake(room_degc=wanted.day_degc)
    down = asleep(room_degc=wanted.night_degc, met_ratio=wanted.met_ratio)
    dc_w = added_w(*(placed_w(use, when) for use in dc))
    ac_w = added_w(*(placed_w(use, when) for use in ac))
    warm_w = added_w(
        *(tuple(use.inside_frac * each for each in placed_w(use, when)) for use in (*dc, *ac))
    )

    def of_people_w(awake_w: float, asleep_w: float) -> tuple[float, ...]:
        return tuple(
            wanted.adults_factor * (awake_w * one + asleep_w * other)
            for one, other in zip(when.awake_frac, when.asleep_frac, strict=True)
        )

    shower = laid_w(energy_wh=G_PER_KG * wanted.shower_kg, shape_frac=when.after_waking_frac)
    steam = laid_w(energy_wh=G_PER_KG * wanted.vapour_kg, shape_frac=when.meals_frac)
    return Day(
        sensible_w=of_people_w(up.sensible_w, down.sensible_w),
        latent_g_per_h=of_people_w(up.latent_g_per_h, down.latent_g_per_h),
        co2_l_per_h=of_people_w(up.co2_l_per_h, down.co2_l_per_h),
        gain_w=laid_w(energy_wh=wanted.gain_wh, shape_frac=when.meals_frac),
        vapour_g_per_h=tuple(added_w(shower, steam)),
        occupied_frac=inside,
        asleep_frac=when.asleep_frac,
        heat_degc=tuple(
            wanted.day_degc if each > 0.0 else wanted.night_degc for each in when.awake_frac
        ),
        cool_degc=tuple(wanted.most_degc if each > 0.0 else NEVER_DEGC for each in inside),
        blinds_frac=_blinds_frac(when, noon_shut=wanted.noon_shut),
        dc_w=tuple(dc_w),
        ac_w=tuple(ac_w),
        inside_frac=tuple(
            warm / (one + other) if one + other > 0.0 else 1.0
            for warm, one, other in zip(warm_w, dc_w, ac_w, strict=True)
        ),
        dark_w=tuple(wanted.light_w * each for each in when.awake_frac),
        fuel_burner_w=laid_w(energy_wh=wanted.burner_wh, shape_frac=when.meals_frac),
    )


def _blinds_frac(when: Times, *, noon_shut: bool) -> tuple[float, ...]:
    noon = shape_frac(from_h=NOON_FROM_H, lasts_h=NOON_LASTS_H if noon_shut else 0.0)
    return tuple(
        1.0 if max(sleeping, away, midday) > 0.0 else 0.0
        for sleeping, away, midday in zip(when.asleep_frac, when.away_frac, noon, strict=True)
    )
